"""From what a tape gives to the places of points, with arguments and docs; the compiled part does the work."""

from collections.abc import Mapping, Sequence
from typing import Any, Literal

from . import _deck
from .types import Given, Unit

Fields = Mapping[str, Any]
"""A dict of the job file's fields."""


def survey(
    readings: Sequence[Fields],
    *,
    datum: tuple[str, str] | None = None,
    corners: tuple[str, str, str, str] | None = None,
    known: Sequence[Fields] = (),
    error: Given | None = None,
    traces: Sequence[Fields] = (),
    old_boards: Fields | None = None,
    outline: Sequence[str] | None = None,
    members: Sequence[str | Sequence[str]] = (),
    lie: Literal["measured", "squared"] | None = None,
    shop: Fields | None = None,
    unit: Unit = "in",
) -> _deck.Survey:
    """Find where measured points lie, and which readings are wrong.

    Readings are adjusted by least squares. One that disagrees with the rest is named, with its size, and left out; it is never
    averaged in. Other threads run while it works.

    Parameters
    ----------
    readings : sequence of dict
        Each with a ``kind``; a name that a reading mentions is a point. ``{"kind": "distance", "between": [a, b], "reading"}``;
        ``{"kind": "tie", "of", "from": [a, b], "readings": [from_a, from_b], "side"}``; ``{"kind": "station", "of", "along":
        [a, b], "reading"}``; ``{"kind": "offset", "of", "along": [a, b], "station", "reading"}``, to starboard or aft of the
        line; ``{"kind": "straight", "points": [...]}``; ``{"kind": "square", "at", "between": [a, b]}``. ``name`` and
        ``error`` may be added to each; ``along`` is the datum where it is left out.
    datum : pair of str, optional
        The origin, and the point towards which x runs. None: the port corners, bow and stern, of ``corners``.
    corners : four str, optional
        Bow port, stern port, stern starboard, bow starboard: with them there is advice on squaring.
    known : sequence of dict
        Points whose places are known: ``{"point", "x", "y"}``.
    error : length, optional
        Standard deviation of a reading. None: 1/16 in, common practice, no source.
    traces : sequence of dict
        Edges traced point by point: ``{"name", "points": [[x, y], ...]}``, and for a template ``at`` (where named points lie on
        it), ``scale`` (marks of known distance), ``flipped`` and ``tolerance``.
    old_boards : dict, optional
        ``{"widths", "rows", "members", ...}``: old boards held against the members' stations.
    outline : sequence of str, optional
        Points and traces in order around the deck.
    members : sequence of str, or of pairs of str
        A point on each cross member, or its port and its starboard end.
    lie : str, optional
        ``"measured"``, or ``"squared"``: outline and members as they will lie once the frame is squared.
    shop : dict, optional
        As a job's: how lengths are written.
    unit : str, default "in"
        The unit of bare numbers, of the answer and of messages: ``in``, ``ft``, ``mm``, ``cm`` or ``m``.

    Returns
    -------
    Survey
        Points, readings with residuals and reliability, blunders, squaring, traces, outline, members.

    Raises
    ------
    DeckError
        The call cannot be worked on: a point that no readings hold in place. Its ``errors`` are everything that is wrong.
    TypeError
        An argument is of the wrong type.

    Notes
    -----
    Gauss-Newton; data snooping and reliability after Baarda (1968); circles after Taubin (1991) and Gander, Golub and Strebel
    (1994).

    Examples
    --------
    A frame with a wrong diagonal, and the middles of its ends measured from all corners:

    >>> import deck_py
    >>> def distance(a, b, reading):
    ...     return {"kind": "distance", "between": [a, b], "reading": reading}
    >>> readings = [
    ...     distance("BP", "SP", "20 ft"), distance("BS", "SS", "20 ft"),
    ...     distance("BP", "BS", 100), distance("SP", "SS", 100),
    ...     distance("BP", "SS", 260), distance("BS", "SP", "261-3/8"),
    ...     distance("BM", "BP", 50), distance("BM", "BS", 50), distance("BM", "SP", 245.125), distance("BM", "SS", 245.125),
    ...     distance("SM", "SP", 50), distance("SM", "SS", 50), distance("SM", "BP", 245.125), distance("SM", "BS", 245.125),
    ... ]
    >>> found = deck_py.survey(readings, corners=("BP", "SP", "SS", "BS"))
    >>> len(found.points), len(found.blunders)
    (6, 1)
    >>> found.blunders[0].message
    'Reading 6 (BS to SP) is 1-3/8" too long; without it all else agrees within 1/16".'

    A slip of the pen leaves a point that nothing holds:

    >>> deck_py.survey([distance("BP", "SP", 240), distance("BP", "BSS", 100)], datum=("BP", "SP"))
    Traceback (most recent call last):
      ...
    deck_py.DeckError: /readings/1: Only reading 2 is about "BSS": that does not hold it in place. A point takes two readings at least, from points that are held themselves.
    """
    request = {
        "readings": readings,
        "datum": datum,
        "corners": corners,
        "known": known,
        "error": error,
        "traces": traces,
        "old_boards": old_boards,
        "outline": outline,
        "members": members,
        "lie": lie,
        "shop": {} if shop is None else shop,
        "unit": unit,
    }
    return _deck._survey(request)


# Known by its public name, in tracebacks.
survey.__module__ = "deck_py"
