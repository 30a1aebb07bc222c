"""How the old deck comes off, and what is weighed."""

from typing import Literal

from .._record import Record, Records


class ThreePoint(Record):
    """At best, most likely, at worst."""

    low: float
    likely: float
    high: float


class Strips(Record):
    """How the old covering comes off."""

    _says = ("held", "count", "width")

    held: Literal["glued", "stapled", "none"]
    count: int
    width: float
    width_text: str
    length: float
    length_text: str
    cuts: tuple[float, ...]
    """Where the knife runs, from the port edge."""
    area: float
    how: str


class OldFasteners(Record):
    """Old fasteners that come out alike."""

    _says = ("kind", "condition", "method")
    _columns = ("kind", "condition", "method", "count", "minutes", "people", "hours", "how")

    kind: Literal["screw", "bolt"]
    condition: Literal["sound", "seized", "spinning"]
    count: ThreePoint
    method: Literal["back-out", "grind-head", "ring-cut"]
    minutes: ThreePoint
    """For each."""
    people: int
    hours: ThreePoint
    how: str


class SeamTape(Record):
    """Tape over the old seams."""

    _says = ("seams", "length")

    seams: int
    length: float
    length_text: str
    how: str
    beware: str


class OldBoards(Record):
    """The old boards."""

    _says = ("count", "dry_lb", "soaked_most_lb")

    count: int
    width: float
    width_text: str
    length: float
    length_text: str
    thickness: float
    thickness_text: str
    area: float
    dry_lb: float
    soaked_least_lb: float
    soaked_most_lb: float
    heaviest_lb: float
    """One whole board, soaked."""


class Disposal(Record):
    """What goes to the dump."""

    dry_lb: float
    most_lb: float
    covering_lb: float | None
    boards_cubic_feet: float
    covering_cubic_feet: float | None


class StripHours(Record):
    """Hours of a task."""

    _columns = ("task", "hours", "basis")

    task: str
    hours: ThreePoint
    basis: str


class Freed(Record):
    """A slot in an old board, so that what runs through it drops free."""

    _says = ("name", "becomes")
    _columns = ("name", "x", "y", "depth", "width", "becomes")

    name: str
    x: float
    x_text: str
    y: float
    y_text: str
    depth: float
    depth_text: str
    width: float
    width_text: str
    becomes: str | None
    """The opening of the new deck that takes its place."""


class Pit(Record):
    """A pit in the frame, and plain arithmetic on how it grew."""

    _says = ("member", "depth", "left", "years_left")
    _columns = ("member", "wall", "depth", "left", "years", "rate", "years_left", "limits")

    member: int
    wall: float
    wall_text: str
    depth: float
    depth_text: str
    left: float
    left_text: str
    years: float
    rate: float
    """What it grew in a year, on average."""
    rate_text: str
    years_left: float
    water: Literal["fresh", "brackish", "salt"]
    limits: str


class StripOut(Record):
    """How the old deck comes off."""

    _says = ("fastener_count", "total_hours")

    covering: Strips
    fasteners: Records[OldFasteners]
    fasteners_estimated: bool
    """Whether they were not counted."""
    fastener_count: ThreePoint
    stub_height: float
    stub_height_text: str
    tape: SeamTape | None
    boards: OldBoards
    disposal: Disposal
    hours: Records[StripHours]
    total_hours: ThreePoint
    freed: Records[Freed]
    pits: Records[Pit]


class WeightLine(Record):
    """A line of the weight ledger."""

    _says = ("side", "what", "pounds")
    _columns = ("side", "what", "pounds", "soaked_lb", "centre", "basis")

    side: Literal["removed", "added"]
    what: str
    pounds: float
    """Dry."""
    soaked_lb: float | None
    centre: float
    """Station of its centre."""
    centre_text: str
    basis: str


class Weights(Record):
    """What comes off the boat and what goes on: mass only."""

    _says = ("removed_lb", "added_lb", "net_lb")

    lines: Records[WeightLine]
    removed_lb: float
    added_lb: float
    net_lb: float
    net_soaked_lb: float
    net_moment_lb_ft: float
    net_centre: float | None
    net_centre_text: str | None
    missing: tuple[str, ...]
    """What was not weighed."""
    caution: str
