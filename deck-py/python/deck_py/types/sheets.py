"""Sheets, the parts on them, and how they are sawn: x along a sheet's length, y along its width."""

from typing import Literal, Union

from .._record import Record, Records


class Rectangle(Record):
    """A rectangle on a sheet."""

    x: float
    y: float
    length: float
    width: float


class Placement(Record):
    """A part on a sheet."""

    part: str
    x: float
    y: float
    length: float
    """Along x, as placed."""
    width: float
    turned: bool
    boat: str | None


class Cut(Record):
    """A saw line through the whole of a piece, and what becomes of the two it leaves."""

    cut: Literal["length", "width"]
    """The direction of the saw line on the sheet: `length` is a rip."""
    at: float
    """The fence setting, from the piece's own origin edge to the near side of the kerf."""
    kerf: float
    children: "tuple[Tree | None, ...]"
    """What lies before the kerf, and what behind it, if anything."""


class Leaf(Record):
    """A piece that is not sawn further: a part, an offcut to keep, or waste."""

    part: str | None
    offcut: bool | None
    waste: bool | None


Tree = Union[Cut, Leaf]
"""What becomes of a piece of a sheet."""


class Inside(Record):
    """The part in which a sheet is waste."""

    part: str
    sheet: int
    """Its place in the nest's sheets, from 0."""
    copy: int
    """Which of that sheet's placements it is, from 0."""
    placement: Placement
    waste: Rectangle
    """In the part's own coordinates."""
    length: float
    width: float


class Sheet(Record):
    """One sheet, its parts and how to saw it."""

    _columns = ("stock", "placements", "offcuts")

    stock: str
    inside: Inside | None
    """Where it comes from, when it is the waste inside a part."""
    placements: Records[Placement]
    """In sawing order."""
    cuts: Tree
    offcuts: Records[Rectangle]


class Unplaced(Record):
    """Copies of a part that found no place."""

    part: str
    count: int
    why: str


class BoatCost(Record):
    """A boat's share of the cost."""

    boat: str | None
    cost: float
