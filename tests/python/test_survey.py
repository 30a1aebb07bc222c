"""The survey from Python: golden bytes, the object, and scipy's least squares on the same readings."""

import json
import math
import pickle

import numpy
import pytest
from conftest import ROOT
from shapely.geometry import shape

import deck_py

CALLS = ROOT / "tests" / "golden" / "calls"
EXPECTED = ROOT / "tests" / "golden" / "expected"


def asked() -> deck_py.Survey:
    return deck_py.survey(**json.loads((CALLS / "survey.json").read_text(encoding="utf-8")))


def test_the_golden_call_is_rusts_byte_for_byte() -> None:
    assert asked().to_json() + "\n" == (EXPECTED / "survey.call.json").read_text(encoding="utf-8")


def test_the_object() -> None:
    found = asked()
    assert pickle.loads(pickle.dumps(found)) == found
    assert repr(found).startswith("Survey(") and "1 left out" in repr(found)
    assert found._repr_svg_().startswith("<svg") and "<table>" in found._repr_html_()
    assert [blunder.reading for blunder in found.blunders] == ["6"]
    assert shape(found).geom_type == "Polygon" and shape(found).is_valid
    assert found.to_dict()["points"] == [point.to_dict() for point in found.points] and found.unit == "in"
    loose = deck_py.survey(
        [{"kind": "distance", "between": ["A", "B"], "reading": 9}], datum=("A", "B"), unit="mm"
    )
    assert loose.test is None and loose.unchecked == ["1"] and shape(loose).geom_type == "MultiPoint"


def test_slips_of_the_pen_are_named() -> None:
    readings = [{"kind": "distance", "between": ["A", "B"], "reading": 9, "side": "port"}]
    with pytest.raises(deck_py.DeckError, match="has no \"side\""):
        deck_py.survey(readings, datum=("A", "B"))
    with pytest.raises(deck_py.DeckError, match="datum"):
        deck_py.survey([{"kind": "distance", "between": ["A", "B"], "reading": 9}])


@pytest.mark.parametrize("seed", range(20))
def test_places_and_deviations_are_those_of_scipy(seed: int) -> None:
    optimize = pytest.importorskip("scipy.optimize")
    random = numpy.random.default_rng(seed)
    true = numpy.array([[0, 0], [240, 0], [240, 96], [0, 96], [120, 48]]) + random.normal(0, 2, (5, 2))
    true -= true[0]
    turn = math.atan2(true[1, 1], true[1, 0])
    true = true @ numpy.array([[math.cos(turn), -math.sin(turn)], [math.sin(turn), math.cos(turn)]])
    pairs = [(a, b) for a in range(5) for b in range(a + 1, 5)]
    read = [round(math.dist(true[a], true[b]) + random.normal(0, 0.04), 4) for a, b in pairs]
    readings = [
        {"kind": "distance", "between": [f"P{a}", f"P{b}"], "reading": reading, "error": "1/16"}
        for (a, b), reading in zip(pairs, read, strict=True)
    ]
    found = deck_py.survey(readings, datum=("P0", "P1"))

    def places(free: numpy.ndarray) -> numpy.ndarray:
        return numpy.array([0, 0, free[0], 0, *free[1:]]).reshape(5, 2)

    def residuals(free: numpy.ndarray) -> list[float]:
        at = places(free)
        return [(math.dist(at[a], at[b]) - reading) * 16 for (a, b), reading in zip(pairs, read, strict=True)]

    start = numpy.delete(true.ravel(), [0, 1, 3])
    solved = optimize.least_squares(residuals, start, xtol=1e-15, ftol=1e-15, gtol=1e-15)
    covariance = numpy.linalg.inv(solved.jac.T @ solved.jac)
    assert not found.blunders
    by_name = {point.name: point for point in found.points}
    ours = numpy.array([[by_name[f"P{n}"].x, by_name[f"P{n}"].y] for n in range(5)])
    assert numpy.abs(ours - places(solved.x)).max() < 1e-6
    deviations = numpy.sqrt(numpy.diag(covariance))
    assert by_name["P1"].x_deviation == pytest.approx(deviations[0], rel=1e-4)
    assert by_name["P4"].y_deviation == pytest.approx(deviations[-1], rel=1e-4)
    assert found.test is not None and found.test.statistic == pytest.approx(2 * solved.cost, rel=1e-4, abs=1e-5)


@pytest.mark.parametrize("seed", range(10))
def test_a_circle_is_that_of_scipy(seed: int) -> None:
    optimize = pytest.importorskip("scipy.optimize")
    random = numpy.random.default_rng(seed)
    angles = numpy.sort(random.uniform(0, 1.6, 9))
    points = numpy.stack([12 - 12 * numpy.sin(angles), 12 - 12 * numpy.cos(angles)], axis=1).round(3)
    points += random.normal(0, 0.02, points.shape)
    trace = {"name": "corner", "points": [[float(x), float(y)] for x, y in points.round(4)], "tolerance": "1/8"}
    found = deck_py.survey(
        [{"kind": "distance", "between": ["A", "B"], "reading": 9}], datum=("A", "B"), traces=[trace]
    )
    (piece,) = found.traces[0].pieces
    given = numpy.array(trace["points"])
    solved = optimize.least_squares(
        lambda c: numpy.hypot(given[:, 0] - c[0], given[:, 1] - c[1]) - c[2], [12, 12, 12], xtol=1e-15, ftol=1e-15
    )
    assert piece.kind == "arc"
    assert [piece.centre_x, piece.centre_y, piece.radius] == pytest.approx(solved.x.tolist(), abs=1e-5)
