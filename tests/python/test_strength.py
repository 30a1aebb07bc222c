"""What a panel carries, beams and plates: the bytes of Rust and C, another solver, every fault at once, objects."""

import copy
import json
import pickle
import threading
from decimal import Decimal
from fractions import Fraction
from typing import Any

import numpy as np
import pytest
from conftest import ROOT

import deck_py

GOLDEN = ROOT / "tests" / "golden"
PANEL = {"series": "sanded plywood Group 1 A-A/A-C", "rating": "3/4"}
MEMBERS = [{"kind": "along", "y": y} for y in (0, 24, 48)]
BOARD = {"length": 102, "width": 48, "dx": 9583, "dy": 29583, "torsion": 8000, "supports": MEMBERS}
HEEL = {"kind": "patch", "at": (51, 12), "size": (3, 3), "value": 200}


def golden(name: str) -> tuple[dict[str, Any], str]:
    """A request that C and Rust answer as well, and its answer."""
    request = json.loads((GOLDEN / "calls" / f"{name}.json").read_text(encoding="utf-8"))
    return request, (GOLDEN / "expected" / f"{name}.call.json").read_text(encoding="utf-8")


def test_limits_are_those_of_rust_and_c() -> None:
    request, expected = golden("span_limits")
    limits = deck_py.span_limits(**request)
    assert json.dumps(limits, indent=2, ensure_ascii=False) + "\n" == expected


@pytest.mark.parametrize("name", ["beam", "plate"])
def test_the_bytes_are_those_of_rust_and_c(name: str) -> None:
    request, expected = golden(name)
    answer = getattr(deck_py, name)(**request)
    assert answer.to_json() + "\n" == expected
    assert answer.to_dict() == json.loads(expected)


def test_a_place_outside_has_no_answer() -> None:
    plate = deck_py.plate(**BOARD, loads=[HEEL])
    assert plate.at(200, 8) is None and plate.at(float("nan"), 8) is None
    assert plate.at(51, 12) == plate.at(51, 12) and deck_py.beam(**golden("beam")[0]).overhangs[1] is None


def three_moments(spans: np.ndarray, load: float) -> np.ndarray:
    """Moments over the supports of a beam under an even load, by Clapeyron's equations of 1857."""
    inner = len(spans) - 1
    left, right = spans[:-1], spans[1:]
    matrix = np.diag(2 * (left + right)) + np.diag(right[: inner - 1], 1) + np.diag(left[1:], -1)
    inside = np.linalg.solve(matrix, -load * (left**3 + right**3) / 4)
    return np.concatenate([[0.0], inside, [0.0]])


@pytest.mark.parametrize("spans", [[16, 24], [14, 19, 16.5, 22], [24] * 12], ids=str)
def test_a_beam_against_the_three_moment_equation(spans: list[float]) -> None:
    lengths = np.array(spans, dtype=float)
    beam = deck_py.beam(lengths, [{"kind": "uniform", "value": 1.5}], stiffness=1e5)  # type: ignore[arg-type]
    moments = three_moments(lengths, 1.5)
    assert [support.moment for support in beam.supports] == pytest.approx(moments.tolist(), rel=1e-9, abs=1e-9)
    assert sum(beam.reactions) == pytest.approx(1.5 * sum(spans))
    # Twice integrated curvature, by the trapezoidal rule: the sag in the middle of the last span.
    start, length = sum(spans[:-1]), spans[-1]
    x = np.linspace(0, length, 20001)
    bent = np.array([beam.moment_at(start + at) for at in x]) / 1e5
    step = x[1]
    slope = np.concatenate([[0], np.cumsum((bent[1:] + bent[:-1]) / 2)]) * step
    sag = np.concatenate([[0], np.cumsum((slope[1:] + slope[:-1]) / 2)]) * step
    chord = sag[-1] * x / length
    middle = len(x) // 2
    assert beam.deflection_at(start + length / 2) == pytest.approx(chord[middle] - sag[middle], rel=1e-6)


def test_a_long_plate_bends_as_a_beam() -> None:
    plate = deck_py.plate(**BOARD, loads=[{"kind": "uniform", "value": 0.7}])
    beam = deck_py.beam([24, 24], [{"kind": "uniform", "value": 0.7}], stiffness=29583)
    assert plate.deflection.most.value == pytest.approx(beam.spans[0].deflection.most.value, rel=1e-3)
    assert plate.reactions == pytest.approx([102 * reaction for reaction in beam.reactions])


def answers() -> list[Any]:
    return [deck_py.beam(**golden("beam")[0]), deck_py.plate(**BOARD, loads=[HEEL])]


@pytest.mark.parametrize("answer", answers(), ids=lambda answer: type(answer).__name__)
def test_answers_are_objects_like_the_others(answer: Any) -> None:
    for again in (pickle.loads(pickle.dumps(answer)), copy.copy(answer), copy.deepcopy(answer)):
        assert type(again) is type(answer) and again == answer and repr(again) == repr(answer)
        assert again.to_json() == answer.to_json()
    assert answer != answer.to_dict() and json.loads(answer.to_json()) == answer.to_dict()
    assert repr(answer).startswith(f"{type(answer).__name__}(") and len(repr(answer)) < 100
    assert answer._repr_html_().startswith("<table>")
    with pytest.raises(AttributeError):
        answer.reactions = []
    with pytest.raises(TypeError):
        hash(answer)


def test_a_pickled_beam_still_knows_every_place() -> None:
    beam = deck_py.beam([Fraction(33, 2), Decimal("20.25")], [{"kind": "point", "at": 7, "value": 3.1}], stiffness=2.5)
    again = pickle.loads(pickle.dumps(beam))
    for x in (0, 3.3, 7, 20, 36.75):
        assert (again.moment_at(x), again.shear_at(x)) == (beam.moment_at(x), beam.shear_at(x))
        assert (again.slope_at(x), again.deflection_at(x)) == (beam.slope_at(x), beam.deflection_at(x))
    assert beam.moment_at(-1) is None and beam.deflection_at(37) is None


def test_lengths_may_be_written_in_many_ways() -> None:
    plain = deck_py.beam([24, 18.5], [{"kind": "point", "at": 12, "value": 1}])
    for spans in (["2 ft", "18 1/2"], [Fraction(24), Decimal("18.5")], np.array([24, 18.5]), ("609.6 mm", "1' 6-1/2\"")):
        assert deck_py.beam(spans, [{"kind": "point", "at": "1 ft", "value": 1}]) == plain  # type: ignore[arg-type]
    metric = deck_py.span_limits(PANEL, 609.6, axis="along", spans=2, unit="mm")
    inches = deck_py.span_limits(PANEL, "24", axis="along", spans=2)
    assert metric["deflection"] == inches["deflection"] and (metric["spacing"], inches["spacing"]) == (609.6, 24)


def test_exact_numbers_are_taken_everywhere() -> None:
    point = {"kind": "point", "at": Fraction(16, 3), "value": Fraction(65, 2)}
    beam = deck_py.beam([Fraction(100, 7), 16], [point], overhangs=(Fraction(7, 2), Decimal("2.5")), stiffness=Decimal("115000.5"))
    # A length is rounded once, to a nanometre, and never by way of a float: 100/7 in is 362 857 142.857 nm, and 143 of the
    # last three are 14.285 714 291 in.
    assert beam.spans[0].length == 14.285714291
    assert beam.stiffness == 115_000.5 and sum(beam.reactions) == pytest.approx(32.5)
    assert pickle.loads(pickle.dumps(beam)) == beam
    exact = deck_py.plate(
        Fraction(305, 3), 48, dx=Fraction(19167, 2), dy=Decimal("29583.5"), torsion=Fraction(16001, 3), mesh=Fraction(7, 2),
        poisson=(Decimal("0.03"), Fraction(59167, 638900)),
        supports=[{"kind": "along", "y": y} for y in (0, Fraction(49, 2), Decimal("48.0"))],
        loads=[{"kind": "patch", "at": (51, Fraction(49, 4)), "size": (3, 3), "value": Decimal("200.5")}],
    )
    plain = deck_py.plate(
        "101 2/3", 48, dx=9583.5, dy=29583.5, torsion=16001 / 3, mesh=3.5, poisson=(0.03, 59167 / 638900),
        supports=[{"kind": "along", "y": y} for y in (0, 24.5, 48)],
        loads=[{"kind": "patch", "at": (51, 12.25), "size": (3, 3), "value": 200.5}],
    )
    assert exact == plain and pickle.loads(pickle.dumps(exact)) == plain
    panel = {"ei": Decimal("115000.5"), "mr": Fraction(1311, 2), "fs": 300}
    limits = deck_py.span_limits(panel, Fraction(49, 3), axis="along", spans=2, deflection=Fraction(721, 2), duration=Decimal("1.15"))
    assert limits == deck_py.span_limits(
        {"ei": 115_000.5, "mr": 655.5, "fs": 300}, "16 1/3", axis="along", spans=2, deflection=360.5, duration=1.15
    )
    assert limits["spacing"] == 16.333333346


def test_what_is_no_number_is_told_as_such() -> None:
    load = {"kind": "point", "at": 8, "value": 32}
    for stiffness in ("115000", "stiff", 2j, b"1", [1]):
        with pytest.raises(TypeError, match="stiffness"):
            deck_py.beam([16], [load], stiffness=stiffness)
    for value in ("32.5", None, [1]):
        with pytest.raises(deck_py.DeckError) as caught:
            deck_py.beam([16], [load | {"value": value}])
        assert caught.value.errors[0].pointer == "/loads/0/value" and caught.value.errors[0].kind == "WrongType"
    assert pointers(deck_py.beam, [16], [load | {"value": Decimal("NaN")}]) == ["/loads/0/value"]
    assert pointers(deck_py.beam, [16], [load | {"value": Fraction(1, 3)}, {"kind": "point", "at": 17, "value": 1}]) == ["/loads/1/at"]


def pointers(function: Any, *args: Any, **kwargs: Any) -> list[str]:
    with pytest.raises(deck_py.DeckError) as caught:
        function(*args, **kwargs)
    return [fault.pointer for fault in caught.value.errors]


def test_every_fault_is_told_with_its_place() -> None:
    load = {"kind": "uniform", "value": 1}
    assert pointers(deck_py.beam, [16, -1], [load], stiffness=0) == ["/spans/1", "/stiffness"]
    assert pointers(deck_py.beam, [16], [load, load | {"valu": 1}, {"kind": "point", "at": 17, "value": 1}]) == [
        "/loads/1/valu",
        "/loads/2/at",
    ]
    assert pointers(deck_py.beam, [16], [load | {"value": float("nan")}]) == ["/loads/0/value"]
    assert pointers(deck_py.beam, [16, float("inf")], [load]) == ["/spans/1"]
    assert pointers(deck_py.plate, **BOARD | {"torsion": -1, "dx": 0}, loads=[HEEL]) == ["/dx"]
    assert pointers(deck_py.plate, **BOARD, loads=[HEEL | {"at": (51, 49)}]) == ["/loads/0/at/1"]
    assert pointers(deck_py.plate, **BOARD, loads=[], mesh=0.01) == ["/mesh"]
    rating = {"series": PANEL["series"], "ratng": "3/4"}
    assert pointers(deck_py.span_limits, rating, 24, axis="along", spans=2) == ["/panel/ratng"]
    assert pointers(deck_py.span_limits, PANEL, 24, axis="sideways", spans=4, duration=2) == ["/axis"]
    assert pointers(deck_py.span_limits, PANEL, 0, axis="along", spans=4, duration=2) == ["/spacing", "/spans", "/duration"]


@pytest.mark.parametrize(
    "call",
    [
        lambda: deck_py.beam(16, []),
        lambda: deck_py.beam([16], {"kind": "uniform"}),
        lambda: deck_py.beam([16], [], stiffness="stiff"),
        lambda: deck_py.beam([16j], []),
        lambda: deck_py.plate(102, 48, dx=None, dy=1, torsion=1, supports=MEMBERS, loads=[]),
        lambda: deck_py.span_limits("3/4 ply", 24, axis="along", spans=2),
        lambda: deck_py.span_limits(PANEL, 24, axis="along", spans="two"),
        lambda: deck_py.span_limits(PANEL, 24, axis="along"),
    ],
)
def test_a_wrong_type_is_a_type_error(call: Any) -> None:
    with pytest.raises(TypeError):
        call()


def test_threads_solve_beside_each_other() -> None:
    found: list[deck_py.Plate] = []
    workers = [threading.Thread(target=lambda: found.append(deck_py.plate(**BOARD, loads=[HEEL], mesh=2))) for _ in range(4)]
    for worker in workers:
        worker.start()
    for worker in workers:
        worker.join()
    assert len(found) == 4 and all(plate == found[0] for plate in found)
