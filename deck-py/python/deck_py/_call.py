"""The calls that need no boat, with their arguments and docs; the compiled part does the work."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Literal

from . import _deck
from .types import Effort, Given, GivenPart, GivenSheet, Unit


@dataclass(frozen=True, slots=True, kw_only=True)
class Progress:
    """How far a nest has come, and the best answer so far.

    Examples
    --------
    >>> import deck_py
    >>> told = []
    >>> lids = [{"label": "lid", "length": 40, "width": 20, "count": 4}]
    >>> nest = deck_py.nest(lids, [{"label": "4 x 8", "length": 96, "width": 48}], progress=told.append)
    >>> told[-1].cost == nest.cost, told[-1].proven
    (True, True)
    """

    done: int
    """Steps done."""
    of: int
    """Steps that the effort pays for at most; a proof, or long without anything better, ends the search sooner."""
    unplaced: float
    """Area of the parts that found no place, in the square of the call's unit."""
    cost: float
    """What the sheets cost: money where they have prices, otherwise their area."""
    bound: float
    """No answer that places as much can cost less."""
    proven: bool
    """True once no better answer exists."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FillProgress:
    """How far a fill has come, and the best answer so far.

    Examples
    --------
    >>> import deck_py
    >>> told = []
    >>> lid = {"label": "lid", "length": 24, "width": 20, "count": None}
    >>> fill = deck_py.fill({"label": "rest", "length": 96, "width": 22}, [lid], progress=told.append)
    >>> told[-1].value == fill.value == told[-1].bound
    True
    """

    done: int
    """Steps done."""
    of: int
    """Steps that the effort pays for at most; a proof ends the search sooner."""
    value: float
    """What the best answer so far is worth: the sum of its parts' values, or of their areas."""
    bound: float
    """No set of parts that can be cut from the sheet is worth more."""
    proven: bool
    """True once no better answer exists."""


def nest(
    parts: Sequence[GivenPart],
    stock: Sequence[GivenSheet],
    *,
    kerf: Given = 0,
    trim: Given = 0,
    stages: Literal[1, 2, 3] | None = None,
    first: Literal["length", "width"] | None = None,
    keep: tuple[Given, Given] | None = None,
    effort: Effort = "standard",
    progress: Callable[[Progress], object] | None = None,
    unit: Unit = "in",
) -> _deck.Nest:
    """Lay rectangles out on sheets, so that a saw can cut them out edge to edge.

    Of all ways to do so it looks for the one that leaves the least area unplaced, then costs least. A part that finds no
    place is no error: it is listed under ``unplaced``, with the reason. The same call gives the same answer on every
    machine. Other threads run while it works, and Ctrl-C stops it.

    Parameters
    ----------
    parts : sequence of dict
        What is wanted, shape (parts,). Each has a ``label``, a ``length`` and a ``width``, and may have a ``count`` (1), a
        ``grain`` (``"any"``; ``"length"`` or ``"width"``: which side lies along the sheet's length), and a ``boat``.
        ``inside`` lists the waste in it as dicts of ``x``, ``y``, ``length`` and ``width``. A ``value`` is not looked at.
    stock : sequence of dict
        What there is, shape (kinds,). Each has a ``label``, a ``length`` (along the grain) and a ``width``, and may have a
        ``count`` (None: as many as wanted), a ``price`` (for all bought sheets or for none; then cost is area),
        ``offcut`` (True: costs nothing unless priced), and every other field that a job's sheet has.
    kerf, trim : length
        What the blade eats at each cut, and what comes off each edge of a sheet first, the kerf of that cut included.
    stages : int, optional
        1: parallel strips only; 2: strips, then crosscuts; 3: one more turn of the sheet. None: as many as pay.
    first : str, optional
        Direction of the first saw line: ``"length"`` is a rip.
    keep : pair of lengths, optional
        The smallest offcut worth keeping, length and width.
    effort : str or int, default "standard"
        ``"quick"``, ``"standard"``, ``"thorough"``, or a number of steps. Never a clock.
    progress : callable, optional
        Is handed a `Progress` when the first answer stands, then each million steps (some hundredths of a second), and at
        the end. Where it returns False the search ends with the best answer so far; what it raises ends the search and
        comes out of the call.
    unit : str, default "in"
        The unit of bare numbers, of the answer and of messages: ``in``, ``ft``, ``mm``, ``cm`` or ``m``.

        A length is an int, a float, a `fractions.Fraction`, a `decimal.Decimal`, or a text such as ``"7' 10-1/2\\""`` or
        ``"2400 mm"``. Fractions and decimals never pass through a float; one that is not a whole number of nanometres is
        rounded once, half to even.

    Returns
    -------
    Nest
        The sheets with their placements, cut trees and offcuts, what they cost, and a bound that no answer undercuts.

    Raises
    ------
    DeckError
        The call cannot be worked on. Its ``errors`` are everything that is wrong, each with the place, such as
        ``/parts/0/length``.
    TypeError
        An argument is of the wrong type, or holds something that is neither number, text, list nor dict.

    Notes
    -----
    Constructions by best fit, then ruin and recreate (Schrimpf, Schneider, Stamm-Wilbrandt and Dueck 2000) and slicing
    trees, within the effort. The bound is of areas, of dual-feasible functions (Fekete and Schepers 2004), and of patterns
    made to order (column generation).

    Examples
    --------
    >>> from fractions import Fraction
    >>> import deck_py
    >>> parts = [{"label": "lid", "length": Fraction(49, 2), "width": 16, "count": 6}]
    >>> stock = [{"label": "4 x 8", "length": 96, "width": 48, "price": 62.50}]
    >>> nest = deck_py.nest(parts, stock, kerf="1/8")
    >>> nest
    Nest(1 sheets, 0 kinds of parts not placed, proven)
    >>> nest.cost, nest.sheets[0].placements[0].part
    (62.5, 'lid')

    What is longer than any sheet is listed with the reason:

    >>> deck_py.nest([{"label": "mast", "length": "10 ft", "width": 4}], stock).unplaced[0].why
    '120 in is longer than any sheet in stock (96 in)'
    """
    request = {
        "parts": parts,
        "stock": stock,
        "kerf": kerf,
        "trim": trim,
        "stages": stages,
        "first": first,
        "keep": keep,
        "effort": effort,
        "unit": unit,
    }
    return _deck._nest(request, progress)


def fill(
    sheet: GivenSheet,
    parts: Sequence[GivenPart],
    *,
    kerf: Given = 0,
    trim: Given = 0,
    stages: Literal[1, 2, 3] | None = None,
    first: Literal["length", "width"] | None = None,
    keep: tuple[Given, Given] | None = None,
    effort: Effort = "standard",
    progress: Callable[[FillProgress], object] | None = None,
    unit: Unit = "in",
) -> _deck.Fill:
    """Find the most valuable set of rectangles that a saw can cut out of one sheet, edge to edge.

    The same call gives the same answer on every machine. Other threads run while it works, and Ctrl-C stops it.

    Parameters
    ----------
    sheet : dict
        The sheet or offcut: a ``label``, a ``length`` (along the grain) and a ``width``. Its count and its price do not matter.
    parts : sequence of dict
        What is wanted, shape (parts,), as in `nest`. A ``count`` of None is as many as fit. A ``value`` is given for all parts
        or for none; then a part is worth its area.
    kerf, trim, stages, first, keep, effort, unit
        As in `nest`.
    progress : callable, optional
        Is handed a `FillProgress` each million steps (some hundredths of a second), and at the end. Where it returns False the
        search ends with the best answer so far; what it raises ends the search and comes out of the call.

    Returns
    -------
    Fill
        What the parts are worth, a bound that no answer exceeds, the placements, the tree of cuts and the offcuts.

    Raises
    ------
    DeckError
        The call cannot be worked on. Its ``errors`` are everything that is wrong, each with the place, such as
        ``/parts/0/value``.
    TypeError
        An argument is of the wrong type.

    Notes
    -----
    Copies without limit: dynamic programming over raster points (Scheithauer 1997; Cintra, Miyazawa, Wakabayashi and Xavier
    2008). Limited copies: Lagrangean weights for the bound, then best-first joining of known rectangles (Viswanathan and
    Bagchi 1993; Cung, Hifi and Le Cun 2000).

    Examples
    --------
    >>> import deck_py
    >>> offcut = {"label": "rest", "length": 40, "width": "2 ft"}
    >>> lid = {"label": "lid", "length": 13, "width": 11, "count": None, "value": 2.50}
    >>> side = {"label": "side", "length": 26, "width": 12, "count": 2, "value": 7}
    >>> deck_py.fill(offcut, [lid, side], kerf="1/8")
    Fill(5 parts, worth 17.00, proven)

    A part that does not fit is left out:

    >>> deck_py.fill(offcut, [{"label": "mast", "length": "10 ft", "width": 4}]).placements
    Records()
    """
    request = {
        "sheet": sheet,
        "parts": parts,
        "kerf": kerf,
        "trim": trim,
        "stages": stages,
        "first": first,
        "keep": keep,
        "effort": effort,
        "unit": unit,
    }
    return _deck._fill(request, progress)


# Known by their public name, in tracebacks and in pickles.
Progress.__module__ = nest.__module__ = FillProgress.__module__ = fill.__module__ = "deck_py"
