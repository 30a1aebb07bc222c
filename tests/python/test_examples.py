"""The examples and the docs' examples run, and print what they say."""

import doctest
import runpy
import sys
from pathlib import Path

import pytest
from conftest import ROOT

import deck_py


def test_the_example_prints_the_order(demo: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "argv", ["plan.py", str(demo)])
    runpy.run_path(str(ROOT / "examples" / "python" / "plan.py"), run_name="__main__")
    printed = capsys.readouterr().out
    plan = deck_py.plan(demo)
    lines = plan.takeoff.lines if plan.takeoff else ()
    assert all(line.description in printed for line in lines)
    assert plan.no_layout is None or plan.no_layout.reason in printed
    assert len(printed.splitlines()) >= 1 + len(lines)


def test_the_steps_print_what_they_found(capsys: pytest.CaptureFixture[str]) -> None:
    runpy.run_path(str(ROOT / "examples" / "python" / "steps.py"), run_name="__main__")
    printed = capsys.readouterr().out.splitlines()
    assert printed[0].startswith("SeamLayout(5 boards, seams at ") and printed[-1].startswith("Fastening(15 rows, ")
    assert any(line.endswith("1 openings") for line in printed)


def test_the_docs_examples_run() -> None:
    finder = doctest.DocTestFinder()
    found = [test for name in deck_py.__all__ for test in finder.find(getattr(deck_py, name), name, False) if test.examples]
    assert len(found) >= 3
    for test in found:
        assert doctest.DocTestRunner().run(test).failed == 0, test.name


@pytest.mark.parametrize(("readme", "prints"), [("deck-py/README.md", "Kestrel"), ("README.md", "3/4 ply")])
def test_the_readme_runs(
    readme: str, prints: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    (tmp_path / "examples").symlink_to(ROOT / "examples")
    monkeypatch.chdir(tmp_path)
    blocks = (ROOT / readme).read_text(encoding="utf-8").split("```python\n")[1:]
    assert blocks
    # A reader goes through them in order, and does not import twice.
    names: dict[str, object] = {}
    for block in blocks:
        exec(block.split("```")[0], names)
    assert prints in capsys.readouterr().out
