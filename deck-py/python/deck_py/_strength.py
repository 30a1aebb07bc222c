"""What a panel carries, beams and plates, with their arguments and docs; the compiled part does the work."""

from collections.abc import Sequence
from typing import Any, Literal

from . import _deck
from .types import Given, GivenBeamLoad, GivenNumber, GivenPanel, GivenPlateLoad, GivenSupport, Unit


def span_limits(
    panel: GivenPanel,
    spacing: Given,
    *,
    axis: Literal["across", "along"],
    spans: Literal[1, 2, 3],
    support: Given | None = None,
    clear_span: Given | None = None,
    deflection: GivenNumber = 360,
    wet: bool = False,
    duration: GivenNumber = 1.0,
    width: Given | None = None,
    unit: Unit = "in",
) -> dict[str, Any]:
    """Uniform loads that a panel takes on equal spans, by deflection, bending and shear.

    Figures from published tables and formulas, for a person to judge. They are no load rating.

    Parameters
    ----------
    panel : dict
        One of: ``{"series", "rating"}``, the words of the published tables, for sanded plywood also ``"group"`` and
        ``"grade"``; the user's own ``{"ei", "mr", "fs"}`` about the axis that is asked about (lbf·in², lbf·in and lbf to a
        foot of width), or such ones under ``"across"`` and ``"along"``; sections, ``{"thickness", "across", "along",
        "stresses"}`` with ``{"i", "ks", "ib_q"}`` and ``{"e", "e_shear", "fb", "fs"}``; or ``{"plies", "stresses"}``, each
        ply ``{"thickness", "grain"}``, from face to back.
    spacing : length
        Of the supports, centre to centre.
    axis : str
        How the strength axis lies to the supports: ``"across"`` them is the strong way, ``"along"`` them the weak way.
    spans : int
        1, 2 or 3 equal spans; 3 stands for three or more.
    support : length, optional
        Bearing width. None: the published tables' own, 1-1/2 in under 48 in of spacing, 3-1/2 in from there.
    clear_span : length, optional
        Where the bearings at its two ends differ. None: the spacing less one support.
    deflection : float, default 360
        Largest sag as a part of the spacing: 360 stands for l/360.
    wet : bool, default False
        Moisture content of 16 percent or more. A deck over water is wet; tables are dry.
    duration : float, default 1.0
        Load duration factor: 0.9 permanent, 1 normal, 1.15 two months, 1.25 seven days, 1.6 wind.
    width : length, optional
        Of the board, where it is a narrow strip.
    unit : str, default "in"
        The unit of bare lengths, of those in the answer and of messages.

        A length is an int, a float, a `fractions.Fraction`, a `decimal.Decimal` or a text; fractions and decimals never pass
        through a float. Every other figure is a float by nature: an exact number becomes the nearest one, and a text is a
        `TypeError` or a `DeckError`.

    Returns
    -------
    dict
        ``deflection``, ``bending`` and ``shear``: allowable uniform loads in psf, unrounded; ``governing``: the one that is
        lowest; ``source``: a dict of the clause and figures behind each; ``capacity``, ``factors``, ``notes``, ``caution``.
        Where there is no figure, such as outside the table: ``no_figure`` with the reason in place of all those.

    Raises
    ------
    DeckError
        The call cannot be worked on. Its ``errors`` are everything that is wrong, each with the place.
    TypeError
        An argument is of the wrong type.

    Notes
    -----
    APA Technical Note Q225J (December 2024). Shear deflection of sections and plies as in Peurifoy and Oberlender,
    Formwork for Concrete Structures.

    Examples
    --------
    >>> import deck_py
    >>> panel = {"series": "sanded plywood Group 1 A-A/A-C", "rating": "3/4"}
    >>> limits = deck_py.span_limits(panel, 24, axis="along", spans=2, wet=True)
    >>> limits["governing"], round(limits["deflection"])
    ('deflection', 54)

    Outside the table there is no figure:

    >>> deck_py.span_limits(panel, 26, axis="along", spans=2)["no_figure"]
    'no figure: ask a licensed engineer. A spacing of 26 in is outside the table (12 in to 24 in).'
    """
    request = {
        "panel": panel,
        "spacing": spacing,
        "axis": axis,
        "spans": spans,
        "support": support,
        "clear_span": clear_span,
        "deflection": deflection,
        "wet": wet,
        "duration": duration,
        "width": width,
        "unit": unit,
    }
    return _deck._span_limits(request)


def beam(
    spans: Sequence[Given],
    loads: Sequence[GivenBeamLoad],
    *,
    overhangs: tuple[Given, Given] | None = None,
    stiffness: GivenNumber = 1.0,
    ends: tuple[Literal["simple", "fixed"], Literal["simple", "fixed"]] = ("simple", "simple"),
    unit: Unit = "in",
) -> _deck.Beam:
    """Moments, shears, reactions and deflections of a continuous beam.

    Any consistent units will do: with inches, pounds and lbf·in² deflections come out in inches. Downward loads, sagging
    moments and downward deflections are positive; places are distances from the left tip.

    Parameters
    ----------
    spans : sequence of lengths
        Between the supports from the left, shape (supports - 1,). May be an array.
    loads : sequence of dict
        Each ``{"kind", "at", "size", "value"}``. ``"uniform"``: force per length, over everything, or over ``size`` with its
        middle ``at``. ``"patch"``: a force spread over ``size``. ``"point"``: a force.
    overhangs : pair of lengths, optional
        Beyond the first and the last support. None: none.
    stiffness : float, default 1.0
        Bending stiffness EI, force × length².
    ends : pair of str
        How the first and the last support hold the beam: ``"simple"`` or ``"fixed"``.
    unit : str, default "in"
        The unit in which lengths that are texts are taken.

        Places are reckoned in floats. A Fraction or a Decimal, as a text, is first rounded once to a whole nanometre of that
        unit, half to even; forces and stiffness become the nearest float.

    Returns
    -------
    Beam
        Supports with reactions and moments, spans and overhangs with their extremes, and what happens at any place.

    Raises
    ------
    DeckError
        The call cannot be worked on: a span of zero or less, a load outside the beam. Its ``errors`` are everything that is
        wrong, each with the place, such as ``/loads/0/at``.
    TypeError
        An argument is of the wrong type.

    Notes
    -----
    Direct stiffness with Euler-Bernoulli beams (Gere and Weaver, Analysis of Framed Structures, 1965). Extremes are roots of
    the derivative, not samples. Shear deflection is not included.

    Examples
    --------
    A board on three members, walked on in the middle of the first bay:

    >>> import deck_py
    >>> beam = deck_py.beam([16, 16], [{"kind": "point", "at": 8, "value": 32}], stiffness=115_000)
    >>> [round(reaction, 6) for reaction in beam.reactions]
    [13.0, 22.0, -3.0]
    >>> round(beam.moment_at(8), 6)
    104.0

    The last member has to hold the board down. A load beyond the tip is an error:

    >>> deck_py.beam([16], [{"kind": "point", "at": 20, "value": 1}])
    Traceback (most recent call last):
      ...
    deck_py.DeckError: /loads/0/at: A load covers 20 to 20, which is not all on the beam of 16. It lies between 0 and 16, from the left tip.
    """
    request = {
        "spans": spans,
        "loads": loads,
        "overhangs": overhangs,
        "stiffness": stiffness,
        "ends": ends,
        "unit": unit,
    }
    return _deck._beam(request)


def plate(
    length: Given,
    width: Given,
    *,
    dx: GivenNumber,
    dy: GivenNumber,
    torsion: GivenNumber,
    poisson: tuple[GivenNumber, GivenNumber] = (0, 0),
    supports: Sequence[GivenSupport],
    loads: Sequence[GivenPlateLoad],
    mesh: Given | None = None,
    unit: Unit = "in",
) -> _deck.Plate:
    """Deflections, moments and reactions of a rectangular orthotropic plate.

    Places are distances from a corner, along the length and along the width. Downward loads, sagging moments and downward
    deflections are positive. Forces are of any one unit, and rigidities follow from it and from ``unit``.

    Parameters
    ----------
    length, width : length
        The plate's sides.
    dx, dy : float
        Bending rigidities along the length and along the width, force × length (stiffness EI per width).
    torsion : float
        H = dx νy + 2 Dxy of Timoshenko. No published one of plywood was found; half of the root of dx dy is an assumption
        without a source: try half and double of it as well.
    poisson : pair of float, default (0, 0)
        νx and νy; dx νy equals dy νx.
    supports : sequence of dict
        Each a line ``{"kind": "across", "x"}`` or ``{"kind": "along", "y"}``, perhaps with ``"between"`` two places and with
        ``"clamped"``, or ``{"kind": "point", "at"}``. They hold both ways. An edge without a support is free.
    loads : sequence of dict
        Each ``{"kind", "at", "size", "value"}``. ``"uniform"``: force per area, over everything, or over the rectangle ``size``
        with its middle ``at``. ``"patch"``: a force spread over it. ``"line"``: force per length, one number of ``size`` being
        zero. ``"point"``: a force.
    mesh : length, optional
        The largest side of an element. None: about two hundred elements, and the answer tells its own error.
    unit : str, default "in"
        The unit of bare lengths and of those in the answer.

        Places are reckoned in floats. A Fraction or a Decimal, as a text, is first rounded once to a whole nanometre, half to
        even; forces, rigidities and Poisson's ratios become the nearest float.

    Returns
    -------
    Plate
        The extremes of deflection, moments and twist, the reactions, and what happens at any place.

    Raises
    ------
    DeckError
        The call cannot be worked on: supports that let the plate move, a load that is not on it. Its ``errors`` are everything
        that is wrong, each with the place, such as ``/supports/0/x``.
    TypeError
        An argument is of the wrong type.

    Notes
    -----
    Kirchhoff's thin plate (Timoshenko and Woinowsky-Krieger 1959) by the bicubic elements of Bogner, Fox and Schmit (1965).
    Shear deflection is not included. Under a point load there is no finite moment: use a patch.

    Examples
    --------
    A heel in the middle of a bay of a board on three members:

    >>> import deck_py
    >>> members = [{"kind": "along", "y": y} for y in (0, 24, 48)]
    >>> heel = {"kind": "patch", "at": (51, 12), "size": (3, 3), "value": 200}
    >>> plate = deck_py.plate(102, 48, dx=9583, dy=29583, torsion=8000, supports=members, loads=[heel])
    >>> round(sum(plate.reactions), 6), round(plate.deflection.most.value, 3)
    (200.0, 0.078)

    A board on one member is not held:

    >>> deck_py.plate(102, 48, dx=9583, dy=29583, torsion=8000, supports=members[:1], loads=[heel])
    Traceback (most recent call last):
      ...
    deck_py.DeckError: /supports: The supports let the plate move as a whole. Two parallel lines hold it, or lines and points that do not lie on one line, or a clamped line.
    """
    request = {
        "length": length,
        "width": width,
        "dx": dx,
        "dy": dy,
        "torsion": torsion,
        "poisson": poisson,
        "supports": supports,
        "loads": loads,
        "mesh": mesh,
        "unit": unit,
    }
    return _deck._plate(request)


# Known by their public name, in tracebacks.
span_limits.__module__ = beam.__module__ = plate.__module__ = "deck_py"
