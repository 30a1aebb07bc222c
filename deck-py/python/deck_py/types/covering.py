"""Roll goods over the deck."""

from typing import Literal

from .._record import Record, Records

Run = Literal["fore-and-aft", "athwart"]
"""The way a covering runs."""


class CoverTrial(Record):
    """A roll laid one way, as it was tried."""

    _says = ("roll", "run", "seams", "taken")
    _columns = ("roll", "run", "seams", "length", "cost", "why_not", "taken")

    roll: str
    run: Run
    seams: int | None
    length: float | None
    """Running length that this boat takes."""
    length_text: str | None
    cost: float | None
    why_not: str | None
    taken: bool


class CoverPiece(Record):
    """A piece of covering."""

    _says = ("number", "width", "whole")
    _columns = ("number", "from_", "to", "width", "whole")

    number: int
    from_: float
    """Across the run; below zero by the wrap."""
    from_text: str
    to: float
    to_text: str
    width: float
    width_text: str
    whole: bool
    """Whether it is as wide as the roll."""


class CoverSeam(Record):
    """A seam of the covering."""

    number: int
    at: float
    """From the port edge, or from the bow edge."""
    at_text: str
    from_ply_seam: float | None
    from_ply_seam_text: str | None


class RollPiece(Record):
    """A drop on a roll."""

    _says = ("boat", "name", "length")
    _columns = ("boat", "name", "length", "from_", "to")

    boat: str
    name: str
    length: float
    length_text: str
    from_: float
    from_text: str
    to: float
    to_text: str


class RollCut(Record):
    """A roll with its drops."""

    _columns = ("drops", "used", "left")

    drops: Records[RollPiece]
    used: float
    used_text: str
    left: float
    left_text: str


class CutList(Record):
    """How drops are cut off rolls."""

    rolls: Records[RollCut]
    bound: int
    """No cutting takes fewer rolls."""
    proven: bool
    too_long: Records[RollPiece]


class Laid(Record):
    """A covering as it is laid."""

    _says = ("roll", "run", "seams")

    roll: str
    roll_width: float
    roll_width_text: str
    roll_length: float
    roll_length_text: str
    sold_by: float
    sold_by_text: str
    price: float | None
    run: Run
    wrap: float
    wrap_text: str
    pieces: Records[CoverPiece]
    seams: Records[CoverSeam]
    drop: float
    drop_text: str
    cuts: CutList
    length: float
    length_text: str
    buy: int
    """How many of what it is sold by."""
    area: float
    bought: float
    waste_percent: float


class Adhesive(Record):
    """The glue."""

    kind: str
    trowel: str | None
    coverage: tuple[float, ...]
    """Square feet to the US gallon, least and most."""
    can: float
    wait: float
    set: float
    spread: float | None
    source: str


class GlueTiming(Record):
    """How the time is spent: minutes, and square feet."""

    wait: float
    set: float
    window: float
    spread: float | None
    area_in_window: float | None
    stretches: int
    needed: float
    """Square feet to be spread in a minute to do it by halves."""


class Glue(Record):
    """Glue for a covering."""

    _says = ("gallons_least", "gallons_most", "cans")

    adhesive: Adhesive
    area: float
    gallons_least: float
    gallons_most: float
    cans: int
    timing: GlueTiming


class Covering(Record):
    """Roll goods over the deck."""

    _says = ("laid", "reason")

    trials: Records[CoverTrial]
    laid: Laid | None
    reason: str | None
    """Why no roll goes."""
    glue: Glue | None
    reminders: tuple[str, ...]
