"""What fasteners hold: forces in pounds."""

from typing import Literal

from .._record import Record, Records
from .frame import Standing


class Held(Record):
    """What a screw holds in one way."""

    _columns = ("mode", "allowable")

    mode: Literal["pull-over", "pull-out", "head-pull-through", "withdrawal", "bearing"]
    nominal: float
    factor: float
    """What the nominal load is divided by."""
    allowable: float
    clause: str
    standing: Standing


class Distance(Record):
    """A distance, and the least that it should be."""

    what: str
    given: float
    given_text: str
    least: float
    least_text: str
    kept: bool
    source: str
    standing: Standing


class ScrewHold(Record):
    """One screw."""

    _says = ("number", "wall", "edge_in_metal", "edge_in_board")

    number: int
    """Counted from 1; rows name it."""
    wall: float
    wall_text: str
    edge_in_metal: float
    edge_in_metal_text: str
    edge_in_board: float
    edge_in_board_text: str
    uplift: Records[Held]
    """The weakest first."""
    sideways: Records[Held]
    pull_out_formula: Held | None
    pull_out_test: Held | None
    pull_out_why: str
    too_close: Records[Distance]


class RowHold(Record):
    """What a row holds."""

    panel: str
    member: int
    screw: int | None
    """Number of the `ScrewHold`; None where the screws lie off the flange or the board."""
    count: int
    uplift_pounds: float | None
    sideways_pounds: float | None
    uplift_text: str | None
    sideways_text: str | None
    lift_utilisation: float | None
    side_utilisation: float | None


class FastenerSpan(Record):
    """What the fasteners hold."""

    _says = ("screw", "alloy", "rows")

    screw: str
    alloy: str
    screws: Records[ScrewHold]
    rows: Records[RowHold]
    lift_pounds: float | None
    """The lift on each row that the user chose."""
    side_pounds: float | None
    notes: tuple[str, ...]
