"""The one call: what goes in, and what comes out."""

import json
from collections import OrderedDict
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from types import MappingProxyType
from typing import Any

import pytest

import deck_py


def test_demo_jobs_are_planned(demo: Path) -> None:
    plan = deck_py.plan(demo)
    assert (plan.no_layout is None) == bool(plan.panels)
    assert bool(plan.layouts) == bool(plan.seams) == (plan.no_layout is None and plan.patch is None)
    assert bool(plan.panels) == (plan.sheets is not None) == (plan.fasteners is not None) == (plan.takeoff is not None)
    assert plan.cautions and plan.version == deck_py.__version__
    assert len(repr(plan)) < 100 and "\n" not in repr(plan)


def test_dict_text_and_path_are_one_job(demo: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    text = demo.read_text(encoding="utf-8")
    plans = [deck_py.plan(job) for job in (demo, str(demo), text, "\ufeff \n" + text, json.loads(text))]
    monkeypatch.chdir(demo.parent)
    plans.append(deck_py.plan(demo.name))
    assert {plan.to_json() for plan in plans} == {plans[0].to_json()}
    assert all(plan == plans[0] for plan in plans)


def test_the_dict_is_what_json_makes_of_the_text(demo: Path) -> None:
    plan = deck_py.plan(demo)
    document = json.loads(plan.to_json())
    assert plan.to_dict() == document
    assert json.dumps(plan.to_dict()) == json.dumps(document)
    for key, value in document.items():
        if key in ("schema", "job", "version", "proven"):
            assert getattr(plan, key, 1) == value
            continue
        part = getattr(plan, {"frame": "members", "deck": "outline"}.get(key, key))
        if isinstance(value, list):
            assert [each.to_dict() for each in part] == value, key
        else:
            assert (part and part.to_dict()) == value, key
    assert plan.checks.to_dict() == document["deck"]["checks"]
    assert [seam.to_dict() for seam in plan.seams] == (document["layouts"][0]["seams"] if document["layouts"] else [])


def test_a_plan_is_read_back_and_made_again(demo: Path) -> None:
    plan = deck_py.plan(demo)
    assert deck_py.Plan.from_json(plan.to_json()) == plan
    assert deck_py.Plan.from_json(plan.to_json()).to_json() == plan.to_json()
    assert deck_py.plan(plan.job).to_json() == plan.to_json()


def test_the_small_boat_by_hand(small: dict[str, Any]) -> None:
    plan = deck_py.plan(small)
    assert [seam.fore for seam in plan.seams] == [48, 96, 144, 192]
    assert plan.seams[0].fore_text == "48\""
    assert [panel.label for panel in plan.panels] == ["1", "2", "3", "4", "5"]
    panel = plan.panels[0]
    assert (panel.length, panel.width, panel.area, panel.weight_lb) == (96, 48, 4608, 73.6)
    assert (panel.strength_axis, panel.board, panel.unit) == ("athwart", 1, "in")
    assert panel.bounds.to_dict() == {"fore": 0, "aft": 48, "port": 0, "starboard": 96}
    assert len(panel.shape) == 4 and not panel.openings
    assert (plan.outline.length, plan.outline.beam, plan.outline.area) == (240, 96, 23040)
    assert plan.sheets is not None and (plan.sheets.sheet_count, plan.sheets.proven) == (5, True)
    assert repr(plan) == 'Plan("Sandpiper": 5 panels, 4 seams, 5 sheets)'
    assert repr(panel) == 'Panel("1": 96 x 48 in)'
    assert repr(plan.outline) == "Outline(240 x 96 in)"
    assert repr(plan.sheets) == "Nest(5 sheets, 0 kinds of parts not placed, proven)"


def test_no_layout_is_a_plan_that_says_why(small: dict[str, Any]) -> None:
    small["frame"]["regular"]["spacing"] = 60
    plan = deck_py.plan(small)
    assert not plan.seams and plan.layouts == plan.panels == []
    assert plan.sheets is plan.fasteners is plan.takeoff is None
    assert plan.no_layout is not None and plan.no_layout.reason
    assert plan.no_layout.bay is not None and plan.no_layout.bay.clear == 58
    assert (plan.no_layout.sheet, plan.no_layout.shortfall) == ("3/4 ply", 11)
    assert plan.cautions and plan.outline.area == 23040
    assert repr(plan) == 'Plan("Sandpiper": no layout)'


def test_names_of_any_kind_leave_the_repr_on_one_line(small: dict[str, Any]) -> None:
    for name in ("", "a\nb", '"', "Ω" * 500, "\x00"):
        small["name"] = name
        assert "\n" not in repr(deck_py.plan(small)) and len(repr(deck_py.plan(small))) < 120


@pytest.mark.parametrize(
    "length",
    [Fraction(189, 2), Decimal("94.5"), Decimal("9.45E+1"), 94.5, "94-1/2", "189/2", "7' 10-1/2\""],
    ids=lambda value: f"{type(value).__name__} {value}",
)
def test_every_way_to_write_a_length(small: dict[str, Any], length: object) -> None:
    small["deck"]["beam"] = length
    assert deck_py.plan(small).outline.beam == 94.5


def test_exact_numbers_do_not_pass_through_floats(small: dict[str, Any]) -> None:
    # As floats both are another number: a seventh is rounded once, by the library, and is told.
    small["deck"]["beam"] = 94 + Fraction(1, 7)
    assert [(each.pointer, each.given) for each in deck_py.plan(small).rounded] == [("/deck/beam", '"659/7"')]
    small["deck"]["beam"] = Decimal("94.000000010000000000001")
    assert deck_py.plan(small).rounded[0].given == '"94.000000010000000000001"'
    # Whole ones are numbers, also where a field takes no text.
    small["deck"]["beam"] = Fraction(96)
    small["fastening"] = {"threads_per_inch": Decimal("20.0")}
    assert deck_py.plan(small).outline.beam == 96


def test_figures_that_are_no_lengths_take_exact_numbers(small: dict[str, Any]) -> None:
    small["stock"][0]["price"] = Fraction(125, 2)
    small["span"] = {
        "panel": {"series": "sanded plywood Group 1 A-A/A-C", "rating": "3/4"},
        "load": {"psf": Fraction(122, 3)},
        "duration": Decimal("1.15"),
    }
    plan = deck_py.plan(small)
    assert plan.takeoff is not None and plan.takeoff.sheets_cost == 312.5
    assert plan.span.load is not None and plan.span.load.psf == 122 / 3
    assert plan.span.service is not None and plan.span.service.duration == 1.15
    # Money is no float: a third of a cent is refused, not rounded.
    small["stock"][0]["price"] = Fraction(125, 3)
    with pytest.raises(deck_py.DeckError) as caught:
        deck_py.plan(small)
    assert [fault.pointer for fault in caught.value.errors] == ["/stock/0/price"]


def test_a_negative_fraction_is_a_negative_length(small: dict[str, Any]) -> None:
    small["gap"] = Fraction(-1, 8)
    with pytest.raises(deck_py.DeckError) as caught:
        deck_py.plan(small)
    assert (caught.value.pointer, caught.value.errors[0].kind) == ("/gap", "LengthNegative")


def test_mappings_and_tuples_are_as_good(small: dict[str, Any]) -> None:
    plan = deck_py.plan(small)
    small["stock"] = tuple(OrderedDict(sheet) for sheet in small["stock"])
    assert deck_py.plan(MappingProxyType(small)) == plan


def test_handed_out_parts_are_copies(small: dict[str, Any]) -> None:
    plan = deck_py.plan(small)
    plan.panels.clear()
    plan.job["deck"]["beam"] = 1
    assert len(plan.panels) == 5 and plan.job["deck"]["beam"] == 96
