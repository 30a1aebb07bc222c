"""Stubs and types against the module and against real plans; mypy on a program that uses them."""

import __future__
import json
import subprocess
import sys
import types as python_types
import typing
from dataclasses import is_dataclass
from pathlib import Path
from typing import Any, get_args, get_origin, get_type_hints

import pytest
import usage
from conftest import ROOT

import deck_py
from deck_py import types
from deck_py.types import Record, Records

HERE = Path(__file__).parent


def test_a_typed_program_passes_mypy_and_runs(demo: Path, small: dict[str, Any]) -> None:
    assert usage.order(demo)
    assert usage.stations(small) == [48, 96, 144, 192] and usage.stations({}) == []
    assert usage.corners(deck_py.plan(small)) == 20
    told: list[float] = []
    assert usage.sheets_for(18, told) == 3 and told
    assert usage.lids_from_a_rest() == 4
    assert usage.sags() == (True, True)
    assert usage.rows([48, 96, 144, 192]) == 15


def run(*command: str) -> None:
    done = subprocess.run([sys.executable, "-m", *command], capture_output=True, text=True, cwd=HERE)
    assert done.returncode == 0, done.stdout + done.stderr


def test_mypy_strict() -> None:
    run("mypy", "--strict", "usage.py")


def test_the_stubs_are_the_modules() -> None:
    run("mypy.stubtest", "deck_py", "--allowlist", "stubtest_allowed.txt")


def test_every_public_name_has_a_doc() -> None:
    assert sorted(deck_py.__all__) == sorted(name for name in deck_py.__all__ if hasattr(deck_py, name))
    for name in set(deck_py.__all__) - {"__version__"}:
        thing = getattr(deck_py, name)
        assert thing.__doc__, name
        assert not isinstance(thing, type) or thing.__module__ == "deck_py", name
        # The fields of a dataclass have their docs in the source alone.
        for member in vars(thing) if isinstance(thing, type) and not is_dataclass(thing) else ():
            assert member.startswith("_") or getattr(thing, member).__doc__, (name, member)


def misfits(value: Any, hint: Any, at: str, seen: set[tuple[str, str]] | None = None) -> list[str]:
    """Where a value is not what an annotation says, attribute by attribute; `seen` gathers what was there."""
    if get_origin(hint) in (typing.Union, python_types.UnionType):
        options = [option for option in get_args(hint) if option is type(value)] or get_args(hint)
        return min((misfits(value, option, at, seen) for option in options), key=len)
    if get_origin(hint) in (tuple, Records, list) and type(value) is get_origin(hint):
        inner = get_args(hint)
        inner = inner * len(value) if len(inner) == 1 or inner[-1] is ... else inner
        return [m for n, item in enumerate(value) for m in misfits(item, inner[0], f"{at}/{n}", seen)]
    if get_origin(hint) is typing.Literal:
        return [] if value in get_args(hint) else [f"{at}: {value!r} is not one of {get_args(hint)}"]
    if hint is Any or get_origin(hint) is dict and isinstance(value, dict):
        return []
    if isinstance(value, Record) and type(value) is hint:
        return record_misfits(value, at, seen)
    if getattr(hint, "__module__", "") == STUB.__name__ and type(value).__name__ == hint.__name__:
        return attribute_misfits(value, hint, at, seen)
    wanted = (int, float) if hint is float else hint
    if isinstance(wanted, type | tuple) and isinstance(value, wanted) and (hint is bool or not isinstance(value, bool)):
        return []
    return [f"{at}: {value!r} is no {hint}"]


MISSING = object()


def record_misfits(value: Record, at: str, seen: set[tuple[str, str]] | None) -> list[str]:
    """Fields that no annotation names, and annotations that the fields do not fit."""
    kind, keys = type(value), value.to_dict().keys()
    hints = {name: hint for name, hint in get_type_hints(kind).items() if not name.startswith("_")}
    wrong = [f"{at}/{key}: not in {kind.__name__}" for key in keys - {name.removesuffix("_") for name in hints}]
    for name, hint in hints.items():
        if seen is not None and value.to_dict().get(name.removesuffix("_")) is not None:
            seen.add((kind.__name__, name))
        wrong += misfits(getattr(value, name, MISSING), hint, f"{at}/{name}", seen)
    return wrong


def attribute_misfits(value: Any, stub: type, at: str, seen: set[tuple[str, str]] | None = None) -> list[str]:
    """Properties of a compiled class that are not what its stub says."""
    properties = {name: each for name, each in vars(stub).items() if isinstance(each, property)}
    hints = {name: get_type_hints(each.fget, vars(STUB))["return"] for name, each in properties.items()}
    shown = {name: hint for name, hint in hints.items() if name != "__geo_interface__"}
    return [m for name, hint in shown.items() for m in misfits(getattr(value, name), hint, f"{at}/{name}", seen)]


def stub_module() -> python_types.ModuleType:
    """The stub, which is Python as well; names in its annotations may come later."""
    path = Path(deck_py.__file__).with_name("_deck.pyi")
    code = compile(path.read_text(encoding="utf-8"), str(path), "exec", __future__.annotations.compiler_flag)
    module = python_types.ModuleType("deck_py._stub")
    module.__package__ = "deck_py"
    exec(code, vars(module))
    return module


STUB = stub_module()
JOBS = sorted((ROOT / "examples" / "jobs").glob("*.json")) + [
    path for path in sorted((ROOT / "tests" / "golden" / "jobs").glob("*.json")) if not path.stem.startswith("faults")
]


def full_job() -> dict[str, Any]:
    """A job that asks for all there is: what no demo job shows."""
    job: dict[str, Any] = json.loads((ROOT / "examples" / "jobs" / "uneven-22.json").read_text(encoding="utf-8"))
    job["deck"]["beam"] = "102.00000000001"
    job["span"]["points"].append({"name": "post", "force": {"pounds": 300}, "length": 4, "width": 4, "at": {"station": 60, "from_port": 40}})
    job["span"]["fasteners"]["side"] = {"pounds": 50}
    roll = {"label": "carpet", "width": "8' 6\"", "length": "100 ft", "price": 300}
    job["covering"] = {"rolls": [roll], "run": "athwart"}
    return job


# Members too far apart for the tables, a post that no board carries whole, and a roll too short for the boat.
BEYOND = {
    "schema": 1,
    "name": "Shag",
    "unit": "in",
    "deck": {"length": "10 ft", "beam": 96},
    "frame": {"measured_to": "centre", "flange": 2, "regular": {"first": 1, "last": 119, "spacing": 29.5}},
    "stock": [{"label": "ply", "length": 96, "width": 60, "thickness": "3/4"}],
    "gap": 0,
    "span": {
        "panel": {"series": "sanded plywood Group 1 A-A/A-C", "rating": "3/4"},
        "points": [
            {"name": "post", "force": {"pounds": 300}, "length": 4, "width": 4, "at": {"station": 60, "from_port": 40}}
        ],
    },
    "covering": {"rolls": [{"label": "end of a roll", "width": "8 ft", "length": "5 ft"}]},
}


def call(name: str) -> Any:
    """What a golden call answers."""
    text = (ROOT / "tests" / "golden" / "calls" / f"{name}.json").read_text(encoding="utf-8")
    return getattr(deck_py, name)(**json.loads(text))


@pytest.mark.parametrize("path", JOBS, ids=lambda path: path.stem)
def test_real_plans_are_what_the_types_say(path: Path) -> None:
    assert attribute_misfits(deck_py.plan(path), STUB.Plan, "plan") == []


@pytest.mark.parametrize("name", ["nest", "fill", "fasteners", "beam", "plate", "survey"])
def test_answers_are_what_the_types_say(name: str) -> None:
    answer = call(name)
    assert attribute_misfits(answer, vars(STUB)[type(answer).__name__], name) == []


def test_every_field_of_every_kind_is_seen() -> None:
    seen: set[tuple[str, str]] = set()
    for path in JOBS:
        attribute_misfits(deck_py.plan(path), STUB.Plan, "plan", seen)
    for job in (full_job(), BEYOND):
        assert attribute_misfits(deck_py.plan(job), STUB.Plan, "plan", seen) == []
    for name in ("nest", "fill", "beam", "plate", "survey"):
        answer = call(name)
        attribute_misfits(answer, vars(STUB)[type(answer).__name__], name, seen)
    shaped = {"label": "notched", "length": 60, "width": 40, "inside": [{"x": 0, "y": 0, "length": 30, "width": 20}]}
    stock = {"label": "ply", "length": 60, "width": 40, "count": 1}
    inside = deck_py.nest([shaped, {"label": "lid", "length": 12, "width": 12}], [stock], keep=(1, 1))  # type: ignore[list-item]
    assert attribute_misfits(inside, STUB.Nest, "nest", seen) == []
    members = [{"kind": "along", "y": y} for y in (0, 24, 48)]
    heel = {"kind": "patch", "at": (51, 12), "size": (3, 3), "value": 200}
    plate = deck_py.plate(102, 48, dx=9583, dy=29583, torsion=8000, supports=members, loads=[heel])  # type: ignore[arg-type, list-item]
    assert attribute_misfits(plate, STUB.Plate, "plate", seen) == []
    assert misfits(plate.at(20, 8), types.PlateState, "at", seen) == []
    # A frame with one diagonal off by a foot: nothing tells which reading it is.
    sides = [("BP", "SP", 240), ("BS", "SS", 240), ("BP", "BS", 100), ("SP", "SS", 100), ("BP", "SS", 272), ("BS", "SP", 260)]
    doubt = deck_py.survey([{"kind": "distance", "between": [a, b], "reading": read} for a, b, read in sides], datum=("BP", "SP"))
    assert attribute_misfits(doubt, STUB.Survey, "survey", seen) == []
    declared = {
        (kind.__name__, name)
        for kind in (getattr(types, name) for name in types.__all__)
        if isinstance(kind, type) and issubclass(kind, Record)
        for name in get_type_hints(kind)
        if not name.startswith("_")
    }
    assert declared - seen == set(), "declared, and in no result"


def test_the_check_of_types_finds_what_does_not_fit() -> None:
    bay = {"fore_member": 1, "aft_member": "2", "from": 0, "to": 1, "to_text": "", "clear": 1, "x": 1}
    found = types.NoLayout({"reason": "", "bay": bay, "sheet": None, "shortfall": True, "mend": []})
    assert len(misfits(found, types.NoLayout, "")) == 5, misfits(found, types.NoLayout, "")
