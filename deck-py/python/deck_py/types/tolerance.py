"""What errors of measuring, sawing and setting leave of the bearings."""

from .._record import Record, Records


class Spread(Record):
    """An error that is evenly spread from below nothing to above it."""

    under: float
    under_text: str
    over: float
    over_text: str


class BearingTolerance(Record):
    """What errors leave of a bearing; `chance_short` is from 0 to 1."""

    planned: float
    planned_text: str
    worst: float
    worst_text: str
    root_sum_square: float
    root_sum_square_text: str
    margin: float
    margin_text: str
    chance_short: float


class SeamTolerance(Record):
    """What errors leave at a seam, to the boards forward and aft of it."""

    seam: int
    member: int
    fore: BearingTolerance
    aft: BearingTolerance


class ErrorShares(Record):
    """How much each sort of error can take off the weakest bearing."""

    measuring: float
    measuring_text: str
    sawing: float
    sawing_text: str
    sheets: float
    setting: float
    setting_text: str


class LastBoard(Record):
    """Whether the last board is better ripped on the boat."""

    board: int
    in_shop: Spread
    in_shop_root_sum_square: Spread
    on_boat: Spread
    saves: float
    saves_text: str
    leave_wide: float
    leave_wide_text: str
    lacks: float
    lacks_text: str
    pays: bool
    beyond: float
    beyond_text: str


class Tolerance(Record):
    """The errors that a plan reckons with, and what they leave at each seam."""

    measuring: Spread
    chained: bool
    sawing: Spread
    setting: Spread
    sheet: float
    sheet_text: str
    by_margin: bool
    least_bearing: float
    least_bearing_text: str
    seams: Records[SeamTolerance]
    weakest: int | None
    shares: ErrorShares | None
    last_board: LastBoard | None
    mend: tuple[str, ...]
