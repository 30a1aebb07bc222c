"""Where the deck is split into boards, or why it cannot be."""

from .._record import Record


class Lane(Record):
    """A row of boards along the boat."""

    row: int
    """Counted from port, from 1."""
    port: float
    port_text: str
    starboard: float
    starboard_text: str


class Seam(Record):
    """A seam, on the flange of a member."""

    _says = ("number", "fore", "member")

    number: int
    """Counted from the bow, from 1: it lies between the board of that number and the next."""
    member: int
    fore: float
    """Where the gap starts."""
    fore_text: str
    aft: float
    """Where the gap ends."""
    aft_text: str
    bearing_fore: float
    """Bearing of the board forward of it."""
    bearing_fore_text: str
    bearing_aft: float
    bearing_aft_text: str
    shift: float
    """How far the middle of the gap lies aft of the middle of the flange."""
    shift_text: str
    short_by: float
    """How much wider the flange would have to be for two rows of fasteners."""
    short_by_text: str
    ends: "SeamEnds | None"
    """Of a seam on a member out of square or bent."""
    length: float | None
    """Athwart; None where no outline was given."""
    length_text: str | None
    lane: Lane | None
    """The row that it lies in, where boards lie along the boat."""


class SeamEnds(Record):
    """A seam on a member out of square or bent; bearings at port, at the centreline and at starboard."""

    along: bool
    slant: float
    slant_text: str
    port: float
    port_text: str
    starboard: float
    starboard_text: str
    bearings_fore: tuple[float, ...]
    bearings_aft: tuple[float, ...]


class Board(Record):
    """A board, from seam to seam."""

    _says = ("number", "fore", "aft", "width")

    number: int
    fore: float
    fore_text: str
    aft: float
    aft_text: str
    width: float
    width_text: str
    full_width_of: str | None
    """The sheet whose full width it keeps; None: it is ripped."""
    narrow: bool
    supports: tuple[int, ...]
    """The members that it rests on."""
    lane: Lane | None
    """The row that it lies in, where boards lie along the boat."""


class LayoutCost(Record):
    """What a layout costs, in order of weight: the first that differs decides."""

    short_seams: int
    boards: int
    narrow_boards: int
    ripped_boards: int
    worst_margin: float | None
    """What errors leave above the least bearing, where seams are chosen by it."""
    worst_margin_text: str | None
    unevenness: float
    unevenness_text: str
    seam_length: float
    seam_length_text: str
    shift: float
    shift_text: str
    finish_short: float
    finish_short_text: str


class Bay(Record):
    """The bay between two neighbouring members."""

    fore_member: int | None
    """None at the bow."""
    aft_member: int | None
    """None at the stern."""
    from_: float
    from_text: str
    to: float
    to_text: str
    clear: float
    clear_text: str


class NoLayout(Record):
    """Why a deck cannot be laid out."""

    _says = ("reason", "sheet", "shortfall")

    reason: str
    bay: Bay | None
    sheet: str | None
    """The widest sheet, where it falls short."""
    shortfall: float | None
    """How much wider that sheet would have to be."""
    shortfall_text: str | None
    mend: tuple[str, ...]
    """What would mend it, each on its own."""
