"""Seams, panels and fasteners each on their own: the plan's, chained, in any unit, and refused in words."""

import copy
import json
import pickle
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from conftest import ROOT
from shapely.geometry import shape

import deck_py

CALLS = ROOT / "tests" / "golden" / "calls"
EXPECTED = ROOT / "tests" / "golden" / "expected"
FRAME = {"measured_to": "centre", "flange": 2, "regular": {"first": 0, "last": 240, "spacing": 24}}
PLY = {"label": "4 x 8", "length": 96, "width": 48}


def steps(job: dict[str, Any], outline: Any) -> tuple[deck_py.SeamLayouts, list[deck_py.Panel], deck_py.Fastening | None]:
    """The calls with a job's own fields, each asked with what the one before returned."""
    shared = {"shop": job.get("shop"), "unit": job["unit"]}
    seams = deck_py.seams(
        job["frame"], None, job["stock"], outline=outline, best=job.get("shop", {}).get("layouts", 5), **shared,
        gap=job.get("gap"), saw=job.get("saw"), fastening=job.get("fastening"), end_tolerance=job.get("end_tolerance"),
        keep_clear=job.get("keep_clear", ()), openings=job.get("openings", ()), tolerance=job.get("tolerance"),
    )
    if not seams:
        return seams, [], None
    thickness = job["stock"][0]["thickness"]
    panels = deck_py.panels(outline, seams, openings=job.get("openings", ()), thickness=thickness, **shared)
    fastening = deck_py.fasteners(panels, job["frame"], fastening=job.get("fastening"), outline=outline, **shared)
    return seams, panels, fastening


@pytest.mark.parametrize("planned", [False, True])
def test_each_step_is_the_plans(demo: Path, planned: bool) -> None:
    job, plan = json.loads(demo.read_text(encoding="utf-8")), deck_py.plan(demo)
    if "from" in job["deck"] or "patch" in job or "old_holes" in job:
        pytest.skip("the steps know of no survey and of no old holes, and a deck that is patched has no layout")
    seams, panels, fastening = steps(job, plan.outline if planned else job["deck"])
    assert seams == plan.layouts
    assert (seams.no_layout, seams.proven) == (plan.no_layout, plan.proven)
    assert panels == plan.panels
    assert fastening == plan.fasteners


@pytest.mark.parametrize("name", ["seams", "panels", "fasteners"])
def test_golden_calls_from_python_are_rusts_byte_for_byte(name: str) -> None:
    request = json.loads((CALLS / f"{name}.json").read_text(encoding="utf-8"))
    expected = (EXPECTED / f"{name}.call.json").read_text(encoding="utf-8")
    found = getattr(deck_py, name)(**request)
    if name == "fasteners":
        assert found.to_json() + "\n" == expected
    else:
        answer = json.loads(expected)
        assert [each.to_dict() for each in found] == (answer["layouts"] if name == "seams" else answer)


def test_results_go_into_the_next_call_in_every_form() -> None:
    layouts = deck_py.seams(FRAME, "20 ft", PLY, best=2)
    assert len(layouts) == 2 and layouts[0].stations == [48, 96, 144, 192]
    outline = {"length": 240, "beam": 96}
    forms: list[Any] = [layouts, layouts[0], layouts[0].to_dict(), layouts[0].seams, {"layouts": [layouts[0].to_dict()]}]
    panels = deck_py.panels(outline, layouts[0])
    assert [deck_py.panels(outline, form) for form in forms] == [panels] * len(forms)
    stations = deck_py.panels(outline, layouts[0].stations)
    assert [shape(one).equals(shape(other)) for one, other in zip(stations, panels, strict=True)] == [True] * 5
    assert panels[0].weight_lb is None and deck_py.panels(outline, [], thickness="3/4")[0].weight_lb == 368
    fasteners = deck_py.fasteners(panels, FRAME)
    assert fasteners == deck_py.fasteners([panel.to_dict() for panel in panels], FRAME)
    assert fasteners == deck_py.fasteners(panels, FRAME, outline=outline)
    assert fasteners.count == fasteners.edge_count + fasteners.field_count == sum(len(r.positions) for r in fasteners.rows)


def test_results_in_another_unit_are_converted() -> None:
    layout = deck_py.seams(FRAME, 240, PLY)[0]
    panels = deck_py.panels({"length": 6096, "beam": 2438.4}, layout, unit="mm")
    assert [panel.width for panel in panels] == [1219.2] * 5 and panels[0].unit == "mm"
    metric = FRAME | {"flange": "2 in", "regular": {"first": 0, "last": 6096, "spacing": 609.6}}
    inches = deck_py.fasteners(deck_py.panels({"length": 240, "beam": 96}, layout), FRAME)
    assert deck_py.fasteners(panels, FRAME).to_dict() == inches.to_dict()
    assert deck_py.fasteners(panels, metric, unit="mm").count == inches.count
    outline = deck_py.plan(ROOT / "examples" / "jobs" / "plain-20.json").outline
    metric_outline = deck_py.panels(outline, [], unit="mm")[0]
    assert metric_outline.area == pytest.approx(outline.area * 25.4**2, rel=1e-15)


def test_no_layout_is_a_value() -> None:
    frame = FRAME | {"regular": {"first": 0, "last": 240, "spacing": 60}}
    layouts = deck_py.seams(frame, 240, PLY)
    assert layouts == [] and layouts.proven and layouts.no_layout is not None
    assert layouts.no_layout.reason in repr(layouts)
    with pytest.raises(deck_py.DeckError, match="There is no layout. The bay from member 1") as caught:
        deck_py.panels({"length": 240, "beam": 96}, layouts)
    assert caught.value.pointer == "/seams/layouts"


def test_results_are_objects() -> None:
    layouts = deck_py.seams(FRAME, 240, PLY, best=3)
    fasteners = deck_py.fasteners(deck_py.panels({"length": 240, "beam": 96}, layouts), FRAME)
    for each in (layouts[0], fasteners):
        for again in (pickle.loads(pickle.dumps(each)), copy.copy(each), copy.deepcopy(each)):
            assert again == each and repr(again) == repr(each) and again.to_json() == each.to_json()
        assert json.loads(each.to_json()) == each.to_dict() and each != each.to_dict()
        assert each._repr_html_().startswith("<table><tr><th>")
    again = pickle.loads(pickle.dumps(layouts))
    assert (again, again.no_layout, again.proven) == (layouts, None, layouts.proven) and type(again) is deck_py.SeamLayouts
    assert layouts[0] != layouts[1]
    assert repr(deck_py.seams(FRAME | {"regular": {"first": 0, "last": 40, "spacing": 20}}, 40, PLY)) == "[SeamLayout(1 boards, no seam)]"


def test_exact_arguments() -> None:
    frame = {"measured_to": "centre", "flange": Fraction(2), "members": [{"station": Decimal("0.5")}, {"station": 48}, {"station": "8 ft"}]}
    layout = deck_py.seams(frame, Fraction(192, 2), PLY, gap=Decimal("0.125"), bearing="1/2")[0]
    assert layout.seams[0].aft - layout.seams[0].fore == 0.125
    panels = deck_py.panels({"length": 96, "beam": 96}, [Fraction(1, 3)], unit="ft")
    assert panels[0].width == pytest.approx(1 / 3, abs=1e-9)


def test_every_fault_is_told_with_its_place() -> None:
    with pytest.raises(deck_py.DeckError) as caught:
        deck_py.seams(
            FRAME | {"flnge": 2}, -5, PLY | {"width": 0}, bearing="wide", fastening={"edge_spacing": -1}, best=0
        )
    pointers = [fault.pointer for fault in caught.value.errors]
    assert caught.value.errors[0].accepted.startswith("The fields here are")
    assert pointers == ["/frame/flnge", "/deck_length", "/sheet/width", "/bearing", "/fastening/edge_spacing", "/best"]
    with pytest.raises(deck_py.DeckError) as caught:
        deck_py.panels({"length": 96, "beam": 96}, [60, 48], openings=[{"name": "h", "round": {"x": 48, "y": 9, "diameter": 4}}])
    assert [fault.pointer for fault in caught.value.errors] == ["/seams/1"]
    with pytest.raises(deck_py.DeckError, match="crossed by the seam at 48"):
        deck_py.panels({"length": 96, "beam": 96}, [48], openings=[{"name": "h", "round": {"x": 48, "y": 9, "diameter": 4}}])
    with pytest.raises(deck_py.DeckError) as caught:
        deck_py.fasteners([{"label": "1"}], FRAME, fastening={"stagger": 1})
    assert [fault.pointer for fault in caught.value.errors] == ["/panels/0", "/fastening/stagger"]


@pytest.mark.parametrize(
    "call",
    [
        lambda: deck_py.seams(5, 240, PLY),  # type: ignore[arg-type]
        lambda: deck_py.seams(FRAME, [240], PLY),  # type: ignore[arg-type]
        lambda: deck_py.panels({"length": 96, "beam": 96}, 48),  # type: ignore[arg-type]
        lambda: deck_py.fasteners("all", FRAME),  # type: ignore[arg-type]
        lambda: deck_py.fasteners([], FRAME, speed=3),  # type: ignore[call-arg]
    ],
)
def test_a_wrong_type_is_a_type_error(call: Any) -> None:
    with pytest.raises(TypeError):
        call()
