"""Rows of fasteners."""

from typing import Literal

from .._record import Record


class Row(Record):
    """A row of fasteners through one panel into one member."""

    _says = ("panel", "member", "kind", "positions")

    panel: str
    member: int
    kind: Literal["edge", "field"]
    seam: int | None
    station: float
    station_text: str
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
