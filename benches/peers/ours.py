"""This library, asked through the bench program: one question a line, one answer a line."""

import json
import subprocess
from pathlib import Path


class Ours:
    def __init__(self, program: Path, effort: str):
        words = [str(program), "serve", "--effort", effort]
        self.process = subprocess.Popen(words, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)

    def __enter__(self) -> "Ours":
        return self

    def __exit__(self, *_: object) -> None:
        self.process.stdin.close()
        self.process.wait(timeout=60)

    def ask(self, what: str, instance: dict, turned: bool) -> dict | None:
        """The answer, replayed by the program; none where the library cannot do that."""
        question = {"what": what, "instance": instance, "turned": turned}
        self.process.stdin.write(json.dumps(question) + "\n")
        self.process.stdin.flush()
        line = self.process.stdout.readline()
        if not line:
            raise RuntimeError(f"the bench program ended at {instance['name']}")
        answer = json.loads(line)
        return None if "unknown" in answer else answer
