"""In what manner the boards lie, and what lies under seams along the boat."""

from typing import Literal

from .._record import Record, Records
from .seams import Lane, NoLayout
from .shapes import Bounds

ArrangementKind = Literal["athwart", "filler-strips", "centre-butt", "fore-and-aft"]
"""A manner of laying the boards."""


class ArrangementFigures(Record):
    """What an arrangement takes, in the order in which arrangements are ranked: the first that differs decides."""

    _says = ("cost", "sheets", "boards", "blocks")

    unplaced: int
    """Parts that found no sheet."""
    short_seams: int
    """Seams on flanges that do not take two rows of fasteners."""
    zones_crossed: int
    """Zones kept clear of seams that joints along the boat cross all the same."""
    cost: float | None
    """Of the sheets, where they have prices."""
    sheet_area: float
    """Of the sheets to buy."""
    sheets: int
    boards: int
    seam_length: float
    """Of seams athwart and joints along the boat together."""
    seam_length_text: str
    joint_length: float
    joint_length_text: str
    blocks: int
    blocking_length: float
    blocking_length_text: str
    utilisation: float | None
    """The most that a board's strength is used up, where the job gives a panel's rating and a load."""
    tried: int
    """Divisions of the kind that were nested to find this one."""
    proven: bool
    """True where its seams are the best by their own costs."""


class Arrangement(Record):
    """A manner of laying the boards, with what it takes or why it cannot be."""

    _says = ("kind", "rank", "built", "figures")
    _columns = ("rank", "name", "built", "figures.cost", "figures.sheets", "figures.boards", "figures.blocks", "no_layout.reason")

    kind: ArrangementKind
    name: str
    """In words."""
    rank: int | None
    """Among those that can be, from 1."""
    built: bool
    """Whether the plan builds it."""
    detail: str | None
    """What it looks like."""
    figures: ArrangementFigures | None
    """None where it cannot be."""
    no_layout: NoLayout | None
    """The rule that it does not keep, where it cannot be."""
    bounds: Records[Bounds]
    """The rectangles around its boards."""


class Stretch(Record):
    """From one station to another."""

    fore: float
    fore_text: str
    aft: float
    aft_text: str


class Joint(Record):
    """A seam along the boat: a gap that lies on blocks."""

    _says = ("number", "port", "length")

    number: int
    strip: int | None
    """The strip that it divides, where strips lie athwart."""
    port: float
    """Where the gap starts, from the port edge."""
    port_text: str
    starboard: float
    """Where the gap ends."""
    starboard_text: str
    stretches: Records[Stretch]
    """Where it runs."""
    length: float
    length_text: str


class BlockRow(Record):
    """A row of screws along the boat into a block."""

    from_port: float
    from_port_text: str
    stations: tuple[float, ...]


class Block(Record):
    """A piece of plywood under a joint, between the flanges of two members."""

    _says = ("label", "joint", "length", "width")

    label: str
    """Blocks of one size share it."""
    joint: int
    fore_member: int | None
    """None where the joint starts short of one."""
    aft_member: int | None
    fore: float
    fore_text: str
    aft: float
    aft_text: str
    port: float
    port_text: str
    starboard: float
    starboard_text: str
    length: float
    """Fore and aft: the clear distance that it fills."""
    length_text: str
    width: float
    """Athwart."""
    width_text: str
    trimmed: bool
    """Whether it reaches past the deck's edge, or under an opening."""
    rows: Records[BlockRow]


class Division(Record):
    """How the boards are divided along the boat."""

    _says = ("kind", "rows", "joints", "blocks")

    kind: ArrangementKind
    rows: Records[Lane]
    """Where boards lie along the boat."""
    joints: Records[Joint]
    blocks: Records[Block]
    screws: int
    """Into blocks."""
    screw: str
    block_spacing: float
    block_spacing_text: str
    zones: tuple[str, ...]
    """Zones kept clear of seams that joints cross."""
    rules: tuple[str, ...]
    """What it keeps, and where that comes from."""
    chosen: str
    """How it came to be built."""


class SheetCost(Record):
    """What sheets cost: money where they have prices, otherwise the area of those that are bought."""

    money: float | None
    area: float | None


class SeamPricing(Record):
    """What came of choosing seams by what their boards cost in the nest."""

    _says = ("layouts", "seams_first", "by_nest", "proven")

    layouts: int
    """That were nested."""
    every_layout: bool
    """Whether those are all that there are."""
    seams_first: SheetCost
    """Had the seams been chosen first."""
    by_nest: SheetCost
    """Of the layout that was chosen."""
    bound: SheetCost
    """No layout of boards athwart costs less."""
    gap: SheetCost
    """How far from that the chosen one is."""
    proven: bool
