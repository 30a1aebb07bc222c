"""The steps of a plan, each on its own, with their arguments and docs; the compiled part does the work."""

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from . import _deck
from .types import Given, GivenSheet, NoLayout, Unit

Fields = Mapping[str, Any]
"""A dict of the job file's fields."""


class SeamLayouts(list[_deck.SeamLayout]):
    """The layouts of seams that were found, best first: a list, and why it is empty where it is.

    Examples
    --------
    >>> import deck_py
    >>> frame = {"measured_to": "centre", "flange": 2, "regular": {"first": 0, "last": 96, "spacing": 24}}
    >>> layouts = deck_py.seams(frame, 96, {"label": "4 x 8", "length": 96, "width": 48}, best=2)
    >>> len(layouts), layouts.proven, layouts.no_layout is None
    (2, True, True)
    """

    no_layout: NoLayout | None
    """Why there is no layout; None where there is one."""
    proven: bool
    """True where nothing better than the first layout exists, or where there is none."""

    def __init__(
        self, layouts: Iterable[_deck.SeamLayout] = (), no_layout: NoLayout | None = None, proven: bool = False
    ) -> None:
        super().__init__(layouts)
        self.no_layout = no_layout
        self.proven = proven

    def __repr__(self) -> str:
        return super().__repr__() if self.no_layout is None else f"SeamLayouts([], no_layout={self.no_layout.reason!r})"


def seams(
    frame: Fields,
    deck_length: Given | None,
    sheet: GivenSheet | Sequence[GivenSheet],
    *,
    gap: Given | None = 0,
    bearing: Given | None = None,
    keep_clear: Sequence[Fields] = (),
    openings: Sequence[Fields] = (),
    fastening: Fields | None = None,
    best: int = 1,
    outline: Fields | _deck.Outline | None = None,
    end_tolerance: Given | None = None,
    saw: Fields | None = None,
    shop: Fields | None = None,
    tolerance: Fields | None = None,
    unit: Unit = "in",
) -> SeamLayouts:
    """Find where a deck splits into boards, so that every seam bears on a cross member.

    Asked with the fields of a job, it finds the layouts of that job's plan. That there is no layout is no error: the list is
    empty then, and its ``no_layout`` says why. Other threads run while it works.

    Parameters
    ----------
    frame : dict
        The cross members, as a job's ``frame``.
    deck_length : length
        Length over all; with an ``outline`` it may be None.
    sheet : dict, or sequence of dict
        The sheet that boards are sawn from, or several of them: each a ``label``, a ``length`` (along the grain) and a
        ``width``, and every other field that a job's sheet has.
    gap : length, default 0
        Gap between boards. None: a job's default, 1/8 in.
    bearing : length, optional
        Least bearing of a board's edge on a flange. None: ``least_bearing`` of ``shop``, or a job's default.
    keep_clear, openings : sequence of dict
        Zones and openings that no seam may cross, as a job's.
    fastening : dict, optional
        The fastener and its edge distances, as a job's: two rows have to fit on a flange.
    best : int, default 1
        How many layouts are wanted, at most 100.
    outline : dict or Outline, optional
        A job's ``deck``, or `Plan.outline`. With it sheets that do not reach across are left out, and the length of seams
        counts. Without it every sheet is taken to reach across with its length.
    end_tolerance, saw, shop : optional
        As a job's: how much shorter the boards may finish, the ``trim`` of sheets, and the widths that boards may have.
    tolerance : dict, optional
        As a job's. With ``by_margin`` true, of layouts that cost the same in boards and rips the one comes first that keeps
        most above the least bearing when every error is at its limit.
    unit : str, default "in"
        The unit of bare numbers, of the answer and of messages: ``in``, ``ft``, ``mm``, ``cm`` or ``m``.

        A length is an int, a float, a `fractions.Fraction`, a `decimal.Decimal`, or a text such as ``"7' 10-1/2\""`` or
        ``"2400 mm"``.

    Returns
    -------
    SeamLayouts
        A list of `SeamLayout`, shape (layouts,), best first, with ``no_layout`` and ``proven``.

    Raises
    ------
    DeckError
        The call cannot be worked on. Its ``errors`` are everything that is wrong, each with the place, such as
        ``/frame/members/3/station``.
    TypeError
        An argument is of the wrong type.

    Notes
    -----
    Where seams may lie are sets of intervals in whole nanometres; of the member sets that do, positions follow from a linear
    programme in exact fractions, costs in the order of `SeamLayout.cost`. The optimum is exact. Derived here, no source.

    Examples
    --------
    Twenty feet on 24 in members from 4 x 8 sheets; then the panels and the fasteners that follow:

    >>> import deck_py
    >>> frame = {"measured_to": "centre", "flange": 2, "regular": {"first": 0, "last": 240, "spacing": 24}}
    >>> ply = {"label": "4 x 8", "length": 96, "width": 48}
    >>> layouts = deck_py.seams(frame, "20 ft", ply)
    >>> layouts
    [SeamLayout(5 boards, seams at 48, 96, 144, 192 in)]
    >>> panels = deck_py.panels({"length": 240, "beam": 96}, layouts[0], thickness="3/4")
    >>> panels[0], panels[0].weight_lb
    (Panel("1": 96 x 48 in), 73.6)
    >>> deck_py.fasteners(panels, frame, fastening={"edge_spacing": 8, "field_spacing": 8, "end_distance": 1})
    Fastening(15 rows, 195 fasteners)

    Where no board reaches from one flange to the next, the list is empty and says why:

    >>> frame["regular"]["spacing"] = 60
    >>> layouts = deck_py.seams(frame, 240, ply)
    >>> len(layouts), layouts.no_layout.shortfall
    (0, 11)
    """
    request = {
        "frame": frame,
        "deck_length": deck_length,
        "sheet": sheet,
        "gap": gap,
        "bearing": bearing,
        "keep_clear": keep_clear,
        "openings": openings,
        "fastening": fastening,
        "best": best,
        "outline": outline,
        "end_tolerance": end_tolerance,
        "saw": saw,
        "shop": shop,
        "tolerance": tolerance,
        "unit": unit,
    }
    return SeamLayouts(*_deck._seams(request))


def panels(
    outline: Fields | _deck.Outline,
    seams: _deck.SeamLayout | Fields | Sequence[_deck.SeamLayout] | Sequence[Fields] | Sequence[Given],
    *,
    gap: Given | None = 0,
    finish: Given | None = None,
    openings: Sequence[Fields] = (),
    thickness: Given | None = None,
    shop: Fields | None = None,
    unit: Unit = "in",
) -> list[_deck.Panel]:
    """Cut the boards in their true shape: what the outline and the openings leave of each strip between two seams.

    Parameters
    ----------
    outline : dict or Outline
        A job's ``deck``, by its measures or corner by corner; or `Plan.outline`.
    seams : SeamLayout, dict or sequence
        A layout, or what `seams` returned, of which the first layout is taken; or a list of seams, such as `Plan.seams`; or
        the stations at which boards end, shape (seams,). An empty list is a deck of one board.
    gap : length, default 0
        Gap aft of each station; a layout has its own. None: a job's default, 1/8 in.
    finish : length, optional
        Where the last board ends. None: where the layout does, or at the stern.
    openings : sequence of dict
        Openings in the deck, as a job's. No seam may cross one.
    thickness : length, optional
        Thickness of the boards; without it no panel has a weight.
    shop : dict, optional
        As a job's: ``fractions`` and ``feet`` say how lengths are written.
    unit : str, default "in"
        The unit of bare numbers, of the answer and of messages. Results in another unit are converted, exactly.

    Returns
    -------
    list of Panel
        The panels, from the bow aft and from port to starboard.

    Raises
    ------
    DeckError
        The call cannot be worked on, or there is no layout. Its ``errors`` are everything that is wrong.
    TypeError
        An argument is of the wrong type.

    Notes
    -----
    Outline, arcs and openings are cut at the seams in whole nanometres. Weight: APA D510F (2020), weights table.

    Examples
    --------
    >>> import deck_py
    >>> deck_py.panels({"length": 92, "beam": 96, "bow": {"radius": 12}}, ["47-15/16"], gap="1/8")
    [Panel("1": 96 x 47.9375 in), Panel("2": 96 x 43.9375 in)]
    """
    if isinstance(seams, SeamLayouts) and not seams:
        # By itself, an empty list would be a deck of one board.
        seams = {"layouts": [], "no_layout": seams.no_layout}
    request = {
        "outline": outline,
        "seams": seams,
        "gap": gap,
        "finish": finish,
        "openings": openings,
        "thickness": thickness,
        "shop": shop,
        "unit": unit,
    }
    return _deck._panels(request)


def fasteners(
    panels: Sequence[_deck.Panel] | Sequence[Fields],
    frame: Fields,
    *,
    outline: Fields | _deck.Outline | None = None,
    fastening: Fields | None = None,
    shop: Fields | None = None,
    unit: Unit = "in",
) -> _deck.Fastening:
    """Place the fasteners: a row along each member under each panel, evenly divided and clear of openings.

    Parameters
    ----------
    panels : sequence of Panel or dict
        What `panels` returned, or `Plan.panels`, shape (panels,).
    frame : dict
        The cross members, as a job's ``frame``.
    outline : dict or Outline, optional
        A job's ``deck``, or `Plan.outline`. It may be left out where all panels of the deck are given.
    fastening : dict, optional
        The fastener, its spacings and its distances, as a job's and with a job's defaults.
    shop : dict, optional
        As a job's: ``fractions`` and ``feet`` say how lengths are written.
    unit : str, default "in"
        The unit of bare numbers, of the answer and of messages. Results in another unit are converted, exactly.

    Returns
    -------
    Fastening
        The rows, and how many fasteners they have.

    Raises
    ------
    DeckError
        The call cannot be worked on. Its ``errors`` are everything that is wrong.
    TypeError
        An argument is of the wrong type.

    Notes
    -----
    ``n = ceil(R / s) + 1`` fasteners to a row over the length R that board and member share, less the end distances. Derived
    here; the distances are the caller's, and the defaults are common practice, no source.

    Examples
    --------
    >>> import deck_py
    >>> panels = deck_py.panels({"length": 48, "beam": 96}, [])
    >>> frame = {"measured_to": "centre", "flange": 2, "members": [{"station": x} for x in (1, 24, 47)]}
    >>> fasteners = deck_py.fasteners(panels, frame, fastening={"edge_spacing": 8, "field_spacing": 16, "end_distance": 1})
    >>> [len(row.positions) for row in fasteners.rows]
    [13, 7, 13]
    """
    request = {
        "panels": panels,
        "frame": frame,
        "outline": outline,
        "fastening": fastening,
        "shop": shop,
        "unit": unit,
    }
    return _deck._fasteners(request)


# Known by their public name, in tracebacks and in pickles.
SeamLayouts.__module__ = seams.__module__ = panels.__module__ = fasteners.__module__ = "deck_py"
