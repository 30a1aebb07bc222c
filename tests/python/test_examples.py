"""The examples and the docs' examples run, and print what they say."""

import doctest
import inspect
import operator
import runpy
import sys
from pathlib import Path
from typing import Any

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


PUBLIC = sorted(set(deck_py.__all__) - {"__version__"})
# What says nothing about itself cannot be looked up: what goes in, what comes out, what goes wrong.
SECTIONS = ["Parameters", "Returns", "Raises", "Examples"]


def examples(thing: Any, name: str) -> list[doctest.DocTest]:
    return [test for test in doctest.DocTestFinder().find(thing, name, False) if test.examples]


@pytest.mark.parametrize("name", [*PUBLIC, "types.Record", "types.Records"])
def test_every_public_name_has_an_example_that_runs(name: str) -> None:
    found = examples(operator.attrgetter(name)(deck_py), name)
    assert found and found[0].name == name, "there is no example"
    for test in found:
        assert doctest.DocTestRunner().run(test).failed == 0, test.name


@pytest.mark.parametrize("name", [name for name in PUBLIC if not isinstance(getattr(deck_py, name), type)])
def test_every_function_tells_what_goes_in_and_out(name: str) -> None:
    doc = getattr(deck_py, name).__doc__
    heads = [head for head in SECTIONS if f"{head}\n{'-' * len(head)}\n" in inspect.cleandoc(doc)]
    without = {"job_schema": ["Parameters", "Raises"], "summary": ["Raises"]}.get(name, [])
    assert heads == [head for head in SECTIONS if head not in without]


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
