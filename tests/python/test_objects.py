"""Results as Python objects: equal, pickled, copied, shared between threads and processes."""

import copy
import pickle
import threading
import time
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path
from typing import Any

import pytest
from shapely.geometry import shape

import deck_py


def pieces(plan: deck_py.Plan) -> list[Any]:
    """The plan and everything in it that is an object of ours."""
    return [plan, plan.outline, *plan.panels, *([plan.sheets] if plan.sheets else [])]


def test_objects_survive_pickling_and_copying(demo: Path) -> None:
    for each in pieces(deck_py.plan(demo)):
        for again in (pickle.loads(pickle.dumps(each)), copy.copy(each), copy.deepcopy(each)):
            assert type(again) is type(each)
            assert again == each and repr(again) == repr(each) and again.to_dict() == each.to_dict()
            assert getattr(again, "__geo_interface__", None) == getattr(each, "__geo_interface__", None)


def test_plans_survive_pickling_byte_for_byte(demo: Path) -> None:
    plan = deck_py.plan(demo)
    assert pickle.loads(pickle.dumps(plan)).to_json() == plan.to_json()


def test_what_differs_is_not_equal(small: dict[str, Any]) -> None:
    one = deck_py.plan(small)
    small["deck"]["beam"] = 95
    other = deck_py.plan(small)
    for each, another in zip(pieces(one), pieces(other), strict=True):
        assert each != another and each != each.to_dict() and not each == None  # noqa: E711
    assert one.panels[0] != one.panels[1]
    assert one.panels[0] == one.panels[0]
    with pytest.raises(TypeError):
        hash(one)


def test_objects_cannot_be_changed(small: dict[str, Any]) -> None:
    for each in pieces(deck_py.plan(small)):
        with pytest.raises(AttributeError):
            each.unit = "mm"


def test_units_are_the_jobs(small: dict[str, Any]) -> None:
    metric = deck_py.plan(small | {"unit": "mm", "deck": {"length": 6096, "beam": 2438.4}} | {
        "frame": {"measured_to": "centre", "flange": 50.8, "regular": {"first": 0, "last": 6096, "spacing": 609.6}},
        "stock": [{"label": "3/4 ply", "length": "96 in", "width": "48 in", "thickness": "3/4 in"}],
    })
    inches = deck_py.plan(small)
    assert [each.unit for each in pieces(metric)] == ["mm"] * len(pieces(metric))
    for ours, theirs in zip(metric.panels, inches.panels, strict=True):
        assert shape(ours).bounds == pytest.approx([25.4 * side for side in shape(theirs).bounds])
        assert ours.area == pytest.approx(645.16 * theirs.area)


def test_a_polygons_rings_are_closed_and_run_as_geojson_has_them(demo: Path) -> None:
    plan = deck_py.plan(demo)
    for each in [plan.outline, *plan.panels]:
        polygon = each.__geo_interface__
        assert polygon["type"] == "Polygon"
        assert all(ring[0] == ring[-1] and len(ring) > 3 for ring in polygon["coordinates"])
        assert [ring.is_ccw for ring in (shape(each).exterior, *shape(each).interiors)] == [True] + [False] * (
            len(polygon["coordinates"]) - 1
        )


def test_processes_give_the_same_plans(demo: Path) -> None:
    with ProcessPoolExecutor(1) as pool:
        assert pool.submit(deck_py.plan, demo).result() == deck_py.plan(demo)


def test_other_threads_run_while_a_plan_is_made(small: dict[str, Any]) -> None:
    # A deck of 125 ft and two kinds of sheets: a plan that lasts a second, not milliseconds.
    small |= {"deck": {"length": 1500, "beam": 96}, "gap": 0.125}
    small["frame"]["regular"] = {"first": 0, "last": 1500, "spacing": 20}
    small["stock"].append({"label": "wide", "length": 144, "width": 60, "thickness": "3/4"})
    ticks: list[float] = []
    done = threading.Event()

    def tick() -> None:
        while not done.is_set():
            ticks.append(time.perf_counter())
            time.sleep(0.001)

    thread = threading.Thread(target=tick)
    thread.start()
    try:
        begin = time.perf_counter()
        deck_py.plan(small)
        end = time.perf_counter()
    finally:
        done.set()
        thread.join()
    middle = [at for at in ticks if begin + 0.25 * (end - begin) < at < begin + 0.75 * (end - begin)]
    # Were the interpreter held, the other thread would not move at all in the middle of the call.
    assert len(middle) >= 10, (len(middle), end - begin)
