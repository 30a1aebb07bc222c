"""Openings against their clearances, and the parts that are sawn for them."""

from typing import Literal

from .._record import Record, Records
from .shapes import Bounds


class OpeningRules(Record):
    """The clearances that openings keep."""

    from_seam: float
    from_seam_text: str
    from_seam_preferred: float
    from_seam_preferred_text: str
    from_edge: float
    from_edge_text: str
    from_flange: float
    from_flange_text: str
    corner_radius: float
    corner_radius_text: str
    corner_radius_preferred: float
    corner_radius_preferred_text: str
    apart: int
    """In thousandths of the smaller opening's smaller side."""


class Against(Record):
    """What a clearance is measured from: a member or a seam by number, an opening by name."""

    kind: Literal["member", "seam", "edge", "opening", "corner"]
    which: int | str | None


class Clearance(Record):
    """One clearance of one opening."""

    _says = ("rule", "distance", "least", "short_by")

    rule: Literal["member", "flange", "seam", "edge", "apart", "corner"]
    against: Against
    distance: float
    """Below zero where they overlap; of corners, their radius."""
    distance_text: str
    least: float
    least_text: str
    preferred: float | None
    preferred_text: str | None
    short_by: float
    short_by_text: str


class Move(Record):
    """How an opening would have to be moved."""

    aft: float
    """Forward below zero."""
    aft_text: str
    starboard: float
    """To port below zero."""
    starboard_text: str
    distance: float
    distance_text: str


class NoPlace(Record):
    """Why an opening finds no place on the deck."""

    reason: str
    rules: tuple[str, ...]
    """Of which one alone, given up, would leave a place."""
    mend: tuple[str, ...]


class CheckedOpening(Record):
    """An opening against every rule, and where it would keep them all."""

    _says = ("name", "holds", "suggestion")

    name: str
    clearances: Records[Clearance]
    holds: bool
    suggestion: Move | None
    no_place: NoPlace | None


class OpeningChecks(Record):
    """Every opening against every rule."""

    _says = ("openings",)

    rules: OpeningRules
    openings: Records[CheckedOpening]
    same_seams: bool | None
    """Whether the seams stay where they are once every opening is moved as suggested."""


class OpeningPart(Record):
    """A part that is sawn for an opening."""

    _says = ("label", "length", "width", "layers")
    _columns = ("label", "kind", "length", "width", "corner_radius", "layers")

    label: str
    opening: str
    kind: Literal["lid", "frame"]
    place: Bounds | None
    """Under the deck; None for a lid."""
    length: float
    length_text: str
    width: float
    width_text: str
    corner_radius: float
    corner_radius_text: str
    layers: int
