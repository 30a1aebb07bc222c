"""The nest on its own: exact arguments, every fault at once, progress, stops and signals."""

import copy
import json
import pickle
import signal
import subprocess
import sys
import threading
import time
from decimal import Decimal
from fractions import Fraction
from types import MappingProxyType
from typing import Any

import pytest
from conftest import ROOT

import deck_py
from deck_py import types
from test_types import STUB, attribute_misfits

REQUEST = ROOT / "tests" / "golden" / "calls" / "nest.json"
STOCK = [{"label": "4 x 8", "length": 96, "width": 48}]
# The search finds fifteen sheets, and no bound yet rules fourteen out.
SIZES = [
    (31, 11, 17), (52, 8, 7), (45, 10, 16), (48, 8, 21), (24, 8, 7), (38, 20, 7),
    (26, 9, 22), (38, 8, 23), (18, 14, 23), (14, 25, 23), (36, 8, 12), (13, 24, 9),
]
# An order that a search works on for long.
LONG = [{"label": f"p{n}", "length": a, "width": b, "count": c} for n, (a, b, c) in enumerate(SIZES)]


def call(request: dict[str, Any], **changes: Any) -> deck_py.Nest:
    return deck_py.nest(**(request | changes))


@pytest.fixture
def request_() -> dict[str, Any]:
    """The golden request, which C and Rust answer as well."""
    return json.loads(REQUEST.read_text(encoding="utf-8"))


def test_the_bytes_are_those_of_rust_and_c(request_: dict[str, Any]) -> None:
    expected = (ROOT / "tests" / "golden" / "expected" / "nest.call.json").read_text(encoding="utf-8")
    nest = call(request_)
    assert nest.to_json() + "\n" == expected
    assert nest.to_dict() == json.loads(expected)
    assert nest.unit == "in" and nest.cost_in == "money"


def test_a_plans_nest_has_the_same_form(small: dict[str, Any]) -> None:
    sheets = deck_py.plan(small).sheets
    assert sheets and json.loads(sheets.to_json()) == sheets.to_dict()


def test_waste_inside_a_part_is_a_sheet() -> None:
    shaped = {"label": "notched", "length": 60, "width": 40, "inside": [{"x": 0, "y": 0, "length": 30, "width": 20}]}
    inside = deck_py.nest([shaped, {"label": "lid", "length": 12, "width": 12}], [STOCK[0] | {"length": 60, "width": 40, "count": 1}])
    assert any(sheet.inside for sheet in inside.sheets)
    assert attribute_misfits(inside, STUB.Nest, "nest") == []


def test_a_nest_is_an_object_like_the_others(request_: dict[str, Any]) -> None:
    nest = call(request_)
    for again in (pickle.loads(pickle.dumps(nest)), copy.copy(nest), copy.deepcopy(nest)):
        assert type(again) is deck_py.Nest and again == nest and again.to_json() == nest.to_json()
        assert repr(again) == repr(nest)
    assert nest != call(request_, kerf=0) and nest != nest.to_dict()
    html = deck_py.nest([{"label": "<a&b>", "length": 40, "width": 20, "count": 2}], STOCK)._repr_html_()
    assert "<td>2 × &lt;a&amp;b&gt;</td>" in html and "<a&b>" not in html
    assert "longer than any sheet" in nest._repr_html_()


@pytest.mark.parametrize(
    "length", [24.5, "24.5", "24 1/2", "2' 1/2\"", Fraction(49, 2), Decimal("24.5"), Decimal("24.50"), "622.3 mm"], ids=repr
)
def test_a_length_may_be_written_in_many_ways(length: Any) -> None:
    nest = deck_py.nest([{"label": "a", "length": length, "width": 24}], STOCK, effort="quick")
    (placed,) = nest.sheets[0].placements
    assert sorted((placed.length, placed.width)) == [24, 24.5]


def test_exact_numbers_never_pass_through_a_float() -> None:
    def length(given: Any, unit: types.Unit) -> float:
        stock = [{"label": "s", "length": "1 m", "width": "1 m", "grain": "none"}]
        nest = deck_py.nest([{"label": "a", "length": given, "width": "1 m"}], stock, unit=unit, effort="quick")
        (placed,) = nest.sheets[0].placements
        return min(placed.length, placed.width)

    # In metres, half a nanometre is the tenth decimal: 1 and 2 are even.
    assert length(Decimal("0.1234567895"), "m") == 0.123456790
    assert length(Decimal("0.1234567905"), "m") == 0.123456790
    assert length(Decimal("0.12345679050000000001"), "m") == 0.123456791
    # A third of an inch is 8 466 666 2/3 nm; as a float of metres it would be rounded twice.
    assert length(Fraction(1, 3), "in") == round(8_466_667 / 25_400_000, 9)
    assert length(Fraction(1, 64), "in") == 1 / 64


def test_every_fault_is_told_with_its_place() -> None:
    with pytest.raises(deck_py.DeckError) as caught:
        deck_py.nest(
            [{"lable": "a", "length": "two", "width": 3}, {"label": "b", "length": float("nan"), "width": Decimal("Infinity")}],
            [{"label": "s", "length": 96, "width": -48}],
            kerf=-1,
            effort="hard",
        )
    pointers = [fault.pointer for fault in caught.value.errors]
    assert pointers == [
        "/parts/0/lable",
        "/parts/0/length",
        "/parts/1/length",
        "/parts/1/width",
        "/stock/0/width",
        "/kerf",
        "/effort",
    ]
    assert caught.value.pointer == "/parts/0/lable" and 'Did you mean "label"?' in str(caught.value)
    assert pickle.loads(pickle.dumps(caught.value)).errors == caught.value.errors


@pytest.mark.parametrize(
    ("pointer", "changes"),
    [
        ("/stages", {"stages": 4}),
        ("/trim", {"trim": 24}),
        ("/unit", {"unit": "furlong"}),
        ("/effort", {"effort": -1}),
        ("/first", {"first": "sideways"}),
        ("/parts/0/count", {"parts": [{"label": "a", "length": 1, "width": 1, "count": None}]}),
        ("/parts/0/label", {"parts": [{"label": 7, "length": 1, "width": 1}]}),
        ("/stock/1/price", {"stock": [STOCK[0] | {"price": 60}, STOCK[0]]}),
    ],
)
def test_a_fault_names_its_place(pointer: str, changes: dict[str, Any]) -> None:
    with pytest.raises(deck_py.DeckError) as caught:
        call({"parts": [], "stock": STOCK}, **changes)
    assert [fault.pointer for fault in caught.value.errors] == [pointer]


@pytest.mark.parametrize(
    "changes",
    [
        {"parts": 5},
        {"parts": "lid"},
        {"stock": {"label": "ply"}},
        {"kerf": [1]},
        {"kerf": True},
        {"keep": 12},
        {"keep": (1, 2, 3)},
        {"stages": "two"},
        {"first": 1},
        {"effort": None, "unit": 3},
        {"effort": True},
        {"progress": 3},
        {"kerf": object()},
        {"parts": [{"label": "a", "length": 1j, "width": 1}]},
        {"parts": [{1: "a"}]},
        {"parts": (part for part in LONG)},
        {"speed": 3},
    ],
    ids=repr,
)
def test_a_wrong_type_is_a_type_error(changes: dict[str, Any]) -> None:
    with pytest.raises(TypeError):
        call({"parts": [], "stock": STOCK}, **changes)


def test_what_is_read_like_a_dict_or_a_list_is_taken() -> None:
    part = MappingProxyType({"label": "a", "length": 10, "width": 10})
    assert deck_py.nest((part,), tuple(STOCK)).sheet_count == 1  # type: ignore[arg-type]
    assert deck_py.nest([], []).sheets == ()


def test_looking_on_changes_nothing() -> None:
    told: list[deck_py.Progress] = []
    nest = deck_py.nest(LONG, STOCK, effort=4_000_000, progress=told.append)
    assert nest == deck_py.nest(LONG, STOCK, effort=4_000_000)
    assert len(told) >= 3 and [each.done for each in told] == sorted(each.done for each in told)
    last = told[-1]
    assert (last.cost, last.bound, last.proven, last.of) == (nest.cost, nest.bound, nest.proven, 4_000_000)
    assert pickle.loads(pickle.dumps(last)) == last and last != told[0]
    with pytest.raises(AttributeError):
        last.done = 0  # type: ignore[misc]


def test_false_stops_with_the_best_answer_so_far() -> None:
    told: list[deck_py.Progress] = []

    def stop(progress: deck_py.Progress) -> bool:
        told.append(progress)
        return len(told) < 2

    nest = deck_py.nest(LONG, STOCK, effort="thorough", progress=stop)
    assert len(told) == 2 and not nest.unplaced and nest.cost == told[-1].cost and not nest.proven


def test_what_progress_raises_comes_out() -> None:
    def fail(progress: deck_py.Progress) -> None:
        raise RuntimeError(f"at {progress.of}")

    begin = time.perf_counter()
    with pytest.raises(RuntimeError, match="at 5000000000"):
        deck_py.nest(LONG, STOCK, effort=5_000_000_000, progress=fail)
    assert time.perf_counter() - begin < 10


def test_other_threads_run_and_one_may_nest_beside_another() -> None:
    ticks: list[float] = []
    done = threading.Event()

    def tick() -> None:
        while not done.is_set():
            ticks.append(time.perf_counter())
            time.sleep(0.001)

    ticker = threading.Thread(target=tick)
    ticker.start()
    found: list[deck_py.Nest] = []
    workers = [threading.Thread(target=lambda: found.append(deck_py.nest(LONG, STOCK, effort=20_000_000))) for _ in "ab"]
    try:
        begin = time.perf_counter()
        for worker in workers:
            worker.start()
        for worker in workers:
            worker.join()
        end = time.perf_counter()
    finally:
        done.set()
        ticker.join()
    assert found[0] == found[1]
    middle = [at for at in ticks if begin + 0.25 * (end - begin) < at < begin + 0.75 * (end - begin)]
    assert len(middle) >= 10, (len(middle), end - begin)


INTERRUPTED = """
import sys
sys.path[:0] = {path!r}
import deck_py
from test_nest import LONG, STOCK
print("begin", flush=True)
try:
    deck_py.nest(LONG, STOCK, effort=10**15)
except KeyboardInterrupt:
    print("interrupted", flush=True)
"""


@pytest.mark.skipif(sys.platform == "win32", reason="sends a POSIX signal")
def test_control_c_stops_a_long_nest_promptly() -> None:
    program = INTERRUPTED.format(path=[str(ROOT / "tests" / "python"), *sys.path])
    child = subprocess.Popen([sys.executable, "-c", program], stdout=subprocess.PIPE, text=True)
    try:
        assert child.stdout and child.stdout.readline() == "begin\n"
        time.sleep(0.5)
        assert child.poll() is None, "the nest has ended of its own"
        begin = time.perf_counter()
        child.send_signal(signal.SIGINT)
        assert child.stdout.readline() == "interrupted\n"
        assert child.wait(30) == 0
        assert time.perf_counter() - begin < 10
    finally:
        child.kill()
        child.wait()
