"""The filling of one sheet: the bytes of Rust and C, exact arguments, every fault at once, progress and stops."""

import copy
import json
import pickle
from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest
from conftest import ROOT

import deck_py

GOLDEN = ROOT / "tests" / "golden"
REST = {"label": "rest", "length": 96, "width": 48}
# Limited copies of sizes that do not go into the sheet evenly: a search works on them for long.
SIZES = [(31, 17, 4), (29, 13, 5), (23, 19, 4), (41, 11, 3), (37, 27, 2), (53, 14, 3), (17, 9, 4), (21, 16, 4)]
LONG = [{"label": f"p{n}", "length": a, "width": b, "count": c} for n, (a, b, c) in enumerate(SIZES)]


@pytest.fixture
def request_() -> dict[str, Any]:
    """The golden request, which C and Rust answer as well."""
    return json.loads((GOLDEN / "calls" / "fill.json").read_text(encoding="utf-8"))


def test_the_bytes_are_those_of_rust_and_c(request_: dict[str, Any]) -> None:
    expected = (GOLDEN / "expected" / "fill.call.json").read_text(encoding="utf-8")
    fill = deck_py.fill(**request_)
    assert fill.to_json() + "\n" == expected
    assert fill.to_dict() == json.loads(expected)


def test_a_fill_is_an_object_like_the_others(request_: dict[str, Any]) -> None:
    fill = deck_py.fill(**request_)
    for again in (pickle.loads(pickle.dumps(fill)), copy.copy(fill), copy.deepcopy(fill)):
        assert type(again) is deck_py.Fill and again == fill and again.to_json() == fill.to_json()
        assert repr(again) == repr(fill)
    assert fill != deck_py.fill(**request_ | {"kerf": 0, "trim": 0}) and fill != fill.to_dict()
    html = deck_py.fill(REST, [{"label": "<a&b>", "length": 40, "width": 20, "count": 2}])._repr_html_()
    assert "<td>2 × &lt;a&amp;b&gt;</td>" in html and "<a&b>" not in html


def test_exact_arguments_and_values() -> None:
    part = {"label": "a", "length": Fraction(49, 2), "width": Decimal("24.0"), "count": None, "value": Decimal("2.50")}
    fill = deck_py.fill(REST | {"length": "2' 1/2\"", "width": "4 ft"}, [part])
    assert (fill.value, fill.bound, fill.proven, fill.value_in, len(fill.placements)) == (5, 5, True, "value", 2)
    area = deck_py.fill(REST, [{"label": "a", "length": 96, "width": 48}])
    assert (area.value, area.value_in, area.unit) == (96 * 48, "area", "in")


def test_every_fault_is_told_with_its_place() -> None:
    with pytest.raises(deck_py.DeckError) as caught:
        deck_py.fill(
            REST | {"width": -1},
            [{"label": "a", "length": "two", "width": 3}, {"label": "b", "length": 2, "width": 1, "colour": "red"}],
            kerf=-1,
            effort="hard",
        )
    pointers = [fault.pointer for fault in caught.value.errors]
    assert pointers == ["/sheet/width", "/parts/0/length", "/parts/1/colour", "/kerf", "/effort"]
    with pytest.raises(deck_py.DeckError) as caught:
        deck_py.fill(REST, [{"label": "a", "length": 2, "width": 3, "value": 1}, {"label": "b", "length": 2, "width": 1}])
    assert caught.value.pointer == "/parts/1/value"


@pytest.mark.parametrize("changes", [{"sheet": 5}, {"parts": "lid"}, {"keep": 12}, {"progress": 3}, {"speed": 3}], ids=repr)
def test_a_wrong_type_is_a_type_error(changes: dict[str, Any]) -> None:
    with pytest.raises(TypeError):
        deck_py.fill(**{"sheet": REST, "parts": []} | changes)


def test_looking_on_changes_nothing() -> None:
    told: list[deck_py.FillProgress] = []
    fill = deck_py.fill(REST, LONG, effort=3_000_000, progress=told.append)
    assert fill == deck_py.fill(REST, LONG, effort=3_000_000)
    assert told and [each.done for each in told] == sorted(each.done for each in told)
    last = told[-1]
    assert (last.value, last.bound, last.proven) == (fill.value, fill.bound, fill.proven)
    assert pickle.loads(pickle.dumps(last)) == last


def test_false_stops_and_what_is_raised_comes_out() -> None:
    told: list[deck_py.FillProgress] = []

    def stop(progress: deck_py.FillProgress) -> bool:
        told.append(progress)
        return False

    fill = deck_py.fill(REST, LONG, effort="thorough", progress=stop)
    assert told and fill.value <= fill.bound and fill.placements

    def fail(progress: deck_py.FillProgress) -> None:
        raise RuntimeError("enough")

    with pytest.raises(RuntimeError, match="enough"):
        deck_py.fill(REST, LONG, progress=fail)
