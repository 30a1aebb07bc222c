"""What mends flanges too narrow for two rows of fasteners, and members out of square."""

from typing import Literal

from .._record import Record, Records


class RemedyCheck(Record):
    """Whether a remedy does at a seam, and how much it lacks."""

    remedy: Literal["staggered", "cleat", "angle"]
    does: bool
    lacks: float
    lacks_text: str


class SeamRemedy(Record):
    """A seam whose flange is too narrow for two rows; `sides` are forward and aft of the flange."""

    seam: int
    member: int
    flange: float
    flange_text: str
    needed: float
    needed_text: str
    short_by: float
    short_by_text: str
    checks: Records[RemedyCheck]
    chosen: Literal["staggered", "cleat", "angle"] | None
    sides: tuple[bool, ...]
    leg: float
    leg_text: str


class MendPart(Record):
    """An angle or a cleat along an edge of a board at a seam."""

    seam: int
    member: int
    is_angle: bool
    forward: bool
    panel: str
    length: float
    length_text: str
    screws: int


class NarrowFlanges(Record):
    """What mends flanges that are too narrow for two rows."""

    least_flange: float
    least_flange_text: str
    least_in_ply: float
    least_in_ply_text: str
    least_in_metal: float
    least_in_metal_text: str
    angle_leg: float
    angle_leg_text: str
    spacing: float
    spacing_text: str
    seams: Records[SeamRemedy]
    parts: Records[MendPart]


class Skew(Record):
    """Where a member's ends lie against its middle; plus is aft."""

    port: float
    port_text: str
    starboard: float
    starboard_text: str
    out: float
    """How much further aft the starboard end lies than the port end."""
    out_text: str
    bend: float
    """How far aft of the middle the straight line between the ends passes."""
    bend_text: str
