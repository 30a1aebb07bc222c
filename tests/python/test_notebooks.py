"""The notebooks run from top to bottom, and print what they were checked in with; DECK_RENEW=1 writes them anew."""

import os
from pathlib import Path
from typing import Any

import nbformat
import pytest
from conftest import ROOT
from nbclient import NotebookClient

NOTEBOOKS = sorted((ROOT / "examples" / "notebooks").glob("*.ipynb"))
# Larger than this, a notebook is no longer read as a text.
MOST_BYTES = 250_000


def printed(notebook: Any) -> list[str]:
    """What the cells put out as text. Pictures differ from one machine's fonts to another's."""
    outputs = [output for cell in notebook.cells if cell.cell_type == "code" for output in cell.outputs]
    return [output.get("text") or output.get("data", {}).get("text/plain", "") for output in outputs]


def test_there_are_notebooks() -> None:
    assert len(NOTEBOOKS) >= 3


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_a_notebook_runs_and_prints_what_it_shows(path: Path) -> None:
    notebook = nbformat.read(path, as_version=4)
    shown = printed(notebook)
    assert path.stat().st_size < MOST_BYTES or "DECK_RENEW" in os.environ
    here = {"metadata": {"path": str(ROOT)}}
    NotebookClient(notebook, timeout=120, kernel_name="python3", record_timing=False, coalesce_streams=True, resources=here).execute()
    if "DECK_RENEW" in os.environ:
        notebook.metadata["language_info"] = {"name": "python"}
        nbformat.write(notebook, path)
        return
    assert shown == printed(notebook)
    assert shown, "checked in without what it prints"
