"""Rows of fasteners."""

from typing import Literal

from .._record import Record
from .holes import AroundHoles


class Row(Record):
    """A row of fasteners through one panel into one member."""

    _says = ("panel", "member", "kind", "positions")

    panel: str
    member: int
    kind: Literal["edge", "field"]
    seam: int | None
    station: float
    station_text: str
    slant: "RowSlant | None"
    """Of a row that follows a member out of square; its station is then at the centreline."""
    stations: tuple[float, ...]
    """Of each fastener, where the row is slanted."""
    positions: tuple[float, ...]
    """From the port edge."""
    limit: float
    """Greatest spacing that is allowed."""
    limit_text: str
    greatest_gap: float
    greatest_gap_text: str
    over_limit: bool
    short_by: float
    short_by_text: str
    moved: int
    dropped: int
    around: AroundHoles | None


class RowSlant(Record):
    """Where a row that follows a member out of square crosses the deck's sides."""

    port: float
    port_text: str
    starboard: float
    starboard_text: str
