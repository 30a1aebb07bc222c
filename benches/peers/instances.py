"""The published instances, as the bench program reads them; the fields are described where the data lies."""

import json
from pathlib import Path


def read(folder: Path, file: str) -> list[dict]:
    """Every instance of a file; none, with a word about it, where the folder is not there."""
    if not folder.exists():
        print(f"No figures from {file}: the folder {folder} is not there.\n")
        return []
    return json.loads((folder / file).read_text())


def pieces(instance: dict) -> list[tuple[int, int]]:
    """Sizes, one for each copy."""
    return [(item["w"], item["h"]) for item in instance["items"] for _ in range(item.get("demand", 1))]


def bounds(instance: dict, key: str) -> tuple[int | None, int | None]:
    """Least and most that the figure under a key can be."""
    known = instance.get("known", {}).get(key, {})
    opt = known.get("opt")
    return (known.get("lb", opt), known.get("ub", opt))
