"""Stubs and types against the module and against real plans; mypy on a program that uses them."""

import subprocess
import sys
import types as python_types
import typing
from dataclasses import is_dataclass
from pathlib import Path
from typing import Any, get_args, get_origin, get_type_hints, is_typeddict

import usage

import deck_py
from deck_py import types

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


def misfits(value: Any, hint: Any, at: str) -> list[str]:
    """Where a value is not what the types say, key by key."""
    if is_typeddict(hint) and isinstance(value, dict):
        hints, needed = get_type_hints(hint), hint.__required_keys__
        wrong = [f"{at}/{key}: not in {hint.__name__}" for key in value.keys() - hints.keys()]
        wrong += [f"{at}/{key}: missing" for key in needed - value.keys()]
        return wrong + [m for key in value.keys() & hints.keys() for m in misfits(value[key], hints[key], f"{at}/{key}")]
    origin, args = get_origin(hint), get_args(hint)
    if origin is list:
        return [m for n, item in enumerate(value) for m in misfits(item, args[0], f"{at}/{n}")]
    if origin in (typing.Union, python_types.UnionType):
        # Each of our unions is one type or None.
        rest = [arg for arg in args if arg is not type(None)]
        assert len(rest) == 1 and len(args) == 2, hint
        return [] if value is None else misfits(value, rest[0], at)
    if origin is typing.Literal:
        return [] if value in args else [f"{at}: {value!r} is not one of {args}"]
    if hint is Any:
        return []
    wanted = (int, float) if hint is float else dict if origin is dict else hint
    if not is_typeddict(hint) and isinstance(value, wanted) and (hint is bool or not isinstance(value, bool)):
        return []
    return [f"{at}: {value!r} is no {hint}"]


def test_real_plans_are_what_the_types_say(demo: Path) -> None:
    plan = deck_py.plan(demo)
    wrong = misfits(plan.layouts, list[types.Layout], "layouts")
    wrong += misfits(plan.no_layout, types.NoLayout | None, "no_layout")
    wrong += misfits(plan.fasteners, types.Fastening | None, "fasteners")
    wrong += misfits(plan.takeoff, types.Takeoff | None, "takeoff")
    stack = deck_py.plan(demo.parent / "stack-24.json")
    assert stack.tolerance is not None and stack.tolerance["weakest"] == 5
    wrong += misfits(stack.layouts, list[types.Layout], "layouts")
    wrong += misfits(stack.tolerance, types.Tolerance | None, "tolerance")
    racked = deck_py.plan(demo.parent / "racked-20.json")
    wrong += misfits(racked.layouts, list[types.Layout], "layouts")
    wrong += misfits(racked.fasteners, types.Fastening | None, "fasteners")
    assert racked.panels[0].taper is not None and racked.panels[4].taper is None
    wrong += misfits(racked.panels[0].taper, types.Taper | None, "taper")
    columns = racked.frame("fasteners")
    assert len(columns["x"]) == len(columns["y"]) and len(set(columns["x"])) > len(racked.frame("seams")["fore"])
    mended = deck_py.plan(demo.parent / "mended-20.json")
    assert mended.narrow_flange is not None and plan.narrow_flange is None
    wrong += misfits(mended.narrow_flange, types.NarrowFlanges | None, "narrow_flange")
    wrong += misfits(mended.takeoff, types.Takeoff | None, "takeoff")
    wrong += misfits(plan.cautions, list[types.Caution], "cautions")
    wrong += misfits(plan.outline.checks, types.Checks, "checks")
    wrong += misfits(plan.outline.shape, list[types.Side], "outline")
    for panel in plan.panels:
        wrong += misfits(panel.shape, list[types.Side], panel.label)
        wrong += misfits(panel.bounds, types.Bounds, panel.label)
        wrong += misfits(panel.openings, list[types.PanelOpening], panel.label)
    if plan.sheets:
        wrong += misfits(plan.sheets.sheets, list[types.Sheet], "sheets")
        wrong += misfits(plan.sheets.unplaced, list[types.Unplaced], "unplaced")
        wrong += misfits(plan.sheets.cost_by_boat, list[types.BoatCost], "cost_by_boat")
    assert wrong == []


def test_the_check_of_types_finds_what_does_not_fit() -> None:
    bay = {"fore_member": 1, "aft_member": "2", "from": 0, "to": 1, "to_text": "", "clear": 1, "x": 1}
    found = misfits({"reason": "", "bay": bay, "sheet": None, "shortfall": True, "mend": []}, types.NoLayout, "")
    assert len(found) == 5, found
