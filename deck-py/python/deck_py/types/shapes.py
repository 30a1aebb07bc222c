"""Outlines, panels and openings: places in deck coordinates, x aft of the bow edge, y to starboard of the port edge."""

from typing import Literal

from .._record import Record, Records


class Point(Record):
    """A point; the texts stand where a person measures to it."""

    x: float
    x_text: str | None
    y: float
    y_text: str | None


class Arc(Record):
    """An arc of at most a half turn."""

    centre: Point
    radius: float
    turn: Literal["left", "right"]


class Edge(Record):
    """What a side of a panel is."""

    kind: Literal["perimeter", "notch", "seam", "joint"]
    rim: Literal["bow", "bow-corner", "port", "starboard", "stern", "notch", "slot", "rim"] | None
    """The part of the outline, on the perimeter."""
    seam: int | None
    """The seam's number, at a seam."""
    member: int | None
    """The member under it, where it is known."""
    joint: int | None
    """The joint's number, at a joint along the boat."""


class Side(Record):
    """One side of a closed path, from its own corner to the next side's."""

    x: float
    y: float
    arc: Arc | None
    """None: it is straight."""
    edge: Edge | str | None
    """What it is: a word on an outline, an `Edge` on a panel, None on an opening."""


class Bounds(Record):
    """The least rectangle around a path, or a piece's place; the texts stand where a person measures it."""

    fore: float
    fore_text: str | None
    aft: float
    aft_text: str | None
    port: float
    port_text: str | None
    starboard: float
    starboard_text: str | None


class Taper(Record):
    """Running figures of a panel's edges from the fore edge of the rectangle that it is sawn from."""

    fore_port: float
    fore_port_text: str
    fore_starboard: float
    fore_starboard_text: str
    aft_port: float
    aft_port_text: str
    aft_starboard: float
    aft_starboard_text: str


class PanelOpening(Record):
    """An opening in a panel."""

    _columns = ("name", "purpose", "framed", "bounds")

    name: str
    purpose: str | None
    shape: Records[Side]
    bounds: Bounds


class Opening(PanelOpening):
    """An opening in the deck."""

    framed: bool
    """Whether its edge is framed underneath."""
    slot: Literal["bow", "stern", "port", "starboard"] | None
    """The edge of the deck to which it is open, where it is a slot."""


class SquareCheck(Record):
    """A rectangle on the deck whose diagonals tell whether the frame is square."""

    fore: float
    fore_text: str
    aft: float
    aft_text: str
    diagonal: float
    """Both diagonals, when it is square."""
    diagonal_text: str
    difference: float
    """A difference of the diagonals …"""
    difference_text: str
    skew: float
    """… means that one side is this far ahead of the other."""
    skew_text: str


class Stack(Record):
    """How far the last seam may be off when boards are sawn and set within the usual errors."""

    worst: float
    worst_text: str
    root_sum_square: float
    root_sum_square_text: str


class Checks(Record):
    """What to measure before the first cut."""

    length: float
    length_text: str
    beam: float
    beam_text: str
    square: SquareCheck | None
    stack: Stack | None
