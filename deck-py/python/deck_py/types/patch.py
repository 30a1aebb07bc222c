"""A deck of which part stays."""

from typing import Literal

from .._record import Record, Records
from .shapes import Bounds, Side


class Rest(Record):
    """What an edge of a patch rests on: a member by number, blocking, or what its old board rested on."""

    kind: Literal["board-edge", "member", "blocking"]
    number: int | None


class PatchEdge(Record):
    """An edge of a patch."""

    _says = ("side", "at", "on")

    side: Literal["fore", "aft", "port", "starboard"]
    at: float
    at_text: str
    on: Rest
    saw_at: float | None
    """Where the old board is sawn; None at an edge of its own."""
    saw_at_text: str | None


class BlockingPiece(Record):
    """A piece of blocking under a joint."""

    _says = ("label", "length", "width")

    label: str
    place: Bounds
    length: float
    length_text: str
    width: float
    width_text: str
    screws_a_side: int


class PatchFacts(Record):
    """What is replaced around one or more damaged places."""

    _says = ("panels", "damage", "plywood")
    _columns = ("board", "panels", "damage", "bounds", "plywood")

    board: str
    panels: tuple[str, ...]
    damage: tuple[str, ...]
    bounds: Bounds
    edges: Records[PatchEdge]
    blocking: Records[BlockingPiece]
    plywood: float


class OldBoard(Record):
    """A board of the old deck."""

    _says = ("label", "bounds")

    label: str
    shape: Records[Side]
    bounds: Bounds


class DamagedPlace(Record):
    """A damaged place."""

    _says = ("name", "bounds")

    name: str
    shape: Records[Side]
    bounds: Bounds


class Patch(Record):
    """What stays of the old deck, and what is replaced."""

    _says = ("patches", "plywood")

    old_boards: Records[OldBoard]
    damage: Records[DamagedPlace]
    patches: Records[PatchFacts]
    plywood: float
    """Of patches and blocking: the least there is."""
    blocking_screws: int
    old_edge_screws: int
