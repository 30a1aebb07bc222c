"""What people write for a length, read by the library and by Python's own fractions: the same nanometres."""

from decimal import Decimal
from fractions import Fraction
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

import deck_py

NANOMETRES = {"in": 25_400_000, "ft": 304_800_000, "mm": 1_000_000, "cm": 10_000_000, "m": 1_000_000_000}
SPELT = {
    "in": ["in", '"', "″", "”", " in", " inches"],
    "ft": ["ft", "'", "′", " ft", " feet"],
    "mm": ["mm", " mm"],
    "cm": ["cm", " cm"],
    "m": ["m", " m"],
}
# Below a kilometre, which is the library's limit, in any unit; above nothing.
LEAST, MOST = Fraction(1), Fraction(900 * 10**9)


def nanometres(length: Any, unit: str) -> int:
    """A part as long as that, put on a sheet as long: how long it came out."""
    sheet = {"label": "sheet", "length": length, "width": "1 mm"}
    part = {"label": "part", "length": length, "width": "1 mm", "count": 1}
    placed = deck_py.fill(sheet, [part], unit=unit, effort="quick").placements[0].length
    # The number is the shortest that names the float, and nanometres are far coarser than floats.
    return round(Fraction(repr(placed)) * NANOMETRES[unit])


whole = st.integers(0, 800)
fractions = st.builds(lambda a, b: (f"{a}/{b}", Fraction(a, b)), st.integers(0, 999), st.integers(1, 128))
decimals = st.decimals(0, 800, places=None, allow_nan=False).filter(lambda number: -number.as_tuple().exponent <= 12)
mixed = st.builds(lambda a, gap, f: (f"{a}{gap}{f[0]}", a + f[1]), whole, st.sampled_from([" ", "-", " - ", "  "]), fractions)
figures = st.one_of(
    whole.map(lambda number: (str(number), Fraction(number))),
    decimals.map(lambda number: (f"{number:f}", Fraction(number))),
    fractions,
    mixed,
)


@st.composite
def written(draw: st.DrawFn) -> tuple[str, str, Fraction]:
    """A length as text, the unit of the call, and what it is in nanometres."""
    call = draw(st.sampled_from(sorted(NANOMETRES)))
    if draw(st.booleans()):
        feet, (inches, value) = draw(whole), draw(figures)
        between = draw(st.sampled_from(["", " ", "-", " - "]))
        text = f"{feet}{draw(st.sampled_from(SPELT['ft']))}{between}{inches}{draw(st.sampled_from(['', *SPELT['in']]))}"
        return text, call, feet * NANOMETRES["ft"] + value * NANOMETRES["in"]
    text, value = draw(figures)
    unit = draw(st.sampled_from([None, *NANOMETRES]))
    return text + (draw(st.sampled_from(SPELT[unit])) if unit else ""), call, value * NANOMETRES[unit or call]


@settings(max_examples=1500, deadline=None, derandomize=True)
@given(written())
def test_text_is_read_as_fractions_read_it(case: tuple[str, str, Fraction]) -> None:
    text, unit, expected = case
    if LEAST <= round(expected) <= MOST:
        # Both round half to even.
        assert nanometres(text, unit) == round(expected), text


numbers = st.one_of(
    st.integers(1, 800),
    st.floats(1e-4, 800),
    st.fractions(Fraction(1, 10**3), 800, max_denominator=10**6),
    st.decimals(Decimal("0.001"), 800, allow_nan=False, places=9),
)


@settings(max_examples=500, deadline=None, derandomize=True)
@given(numbers, st.sampled_from(sorted(NANOMETRES)))
def test_numbers_are_taken_exactly(number: Any, unit: str) -> None:
    exact = Fraction(repr(number)) if isinstance(number, float) else Fraction(number)
    expected = round(exact * NANOMETRES[unit])
    if LEAST <= expected <= MOST:
        assert nanometres(number, unit) == expected
