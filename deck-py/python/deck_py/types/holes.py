"""Old holes in the members, and what is bolted down again."""

from typing import Literal

from .._record import Record, Records
from .shapes import Point


class AroundHoles(Record):
    """What a row did to keep clear of old holes in its member."""

    _says = ("moved", "added", "shift")

    holes: int
    moved: int
    added: int
    dropped: int
    reused: int
    """Bolts that go through an old hole again."""
    shift: float
    """In all: the least that there is with that many fasteners."""
    shift_text: str
    greatest_shift: float
    greatest_shift_text: str
    mirrored: bool


class OldHole(Record):
    """A hole of the old deck in a member, and how near a new fastener comes to it."""

    _says = ("member", "y", "diameter", "nearest")

    member: int
    x: float
    x_text: str
    y: float
    y_text: str
    diameter: float
    diameter_text: str
    clear: float
    """Least distance from its middle to that of a new fastener."""
    clear_text: str
    nearest: float | None
    nearest_text: str | None
    reused: bool


class NearSeam(Record):
    """The seam nearest to a hole."""

    number: int
    distance: float
    distance_text: str
    least: float
    least_text: str


class NearMember(Record):
    """The member nearest to a hole, or the one that its bolt goes through."""

    number: int
    through: bool
    distance: float
    """To the nearer edge of its flange."""
    distance_text: str


class HoleFinding(Record):
    """Something wrong with a hole's place."""

    _says = ("rule", "short_by")

    rule: Literal[
        "off-board",
        "in-opening",
        "near-seam",
        "flange-edge",
        "fouls-flange",
        "near-fastener",
        "near-old-hole",
        "no-bolt",
    ]
    short_by: float
    short_by_text: str
    aft: float | None
    """How far aft, or forward below zero, would mend it."""
    aft_text: str | None


class Plate(Record):
    """A plate under the deck."""

    length: float
    length_text: str
    width: float
    width_text: str
    thickness: float
    thickness_text: str
    bolts: int
    """Through one plate."""


class Bolt(Record):
    """A bolt, and what goes on it."""

    _says = ("kind", "diameter")

    kind: str
    diameter: float
    diameter_text: str
    foot: float
    foot_text: str
    washer: float
    washer_text: str
    nut: float
    nut_text: str
    plate: Plate | None


class BoltStack(Record):
    """What a bolt goes through, and the length that it needs."""

    _says = ("needed", "bolt")

    foot: float
    foot_text: str
    board: float
    board_text: str
    tape: float
    tape_text: str
    wall: float
    wall_text: str
    plate: float
    plate_text: str
    washer: float
    washer_text: str
    nut: float
    nut_text: str
    needed: float
    needed_text: str
    bolt: float | None
    """The shortest that is sold and reaches."""
    bolt_text: str | None


class FittedHole(Record):
    """A hole of the old deck on the new one."""

    _says = ("fitting", "number", "x", "y", "panel")
    _columns = ("fitting", "number", "x", "y", "panel", "from_fore", "from_port", "stack.bolt")

    fitting: str
    number: int
    x: float
    x_text: str
    y: float
    y_text: str
    panel: str | None
    from_fore: float | None
    from_fore_text: str | None
    from_port: float | None
    from_port_text: str | None
    seam: NearSeam | None
    member: NearMember | None
    reuses_old_hole: bool
    bolt: Bolt
    stack: BoltStack
    findings: Records[HoleFinding]


class BoltLine(Record):
    """Bolts of one kind and length."""

    _says = ("count", "kind", "length")

    kind: str
    diameter: float
    diameter_text: str
    length: float | None
    """None: no bolt that is sold is long enough."""
    length_text: str | None
    needed: float
    needed_text: str
    count: int
    fittings: tuple[str, ...]


class PlateLine(Record):
    """Plates of one size."""

    _says = ("count", "plate")

    plate: Plate
    count: int
    fittings: tuple[str, ...]


class OldDatum(Record):
    """Where the old deck's datum lies on the new deck."""

    _says = ("at",)

    at: Point
    forward: bool
    to_port: bool
    skew: tuple[float, ...] | None
    """Over the first length aft, the old deck ran the second to starboard."""


class Fittings(Record):
    """What is bolted down again."""

    _says = ("bolts", "plates")

    datum: OldDatum
    holes: Records[FittedHole]
    bolts: Records[BoltLine]
    plates: Records[PlateLine]
