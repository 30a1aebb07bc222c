"""What to buy."""

from typing import Literal

from .._record import Record, Records


class Amount(Record):
    """A count of pieces, a length, or US gallons."""

    _columns = ("amount",)

    measure: Literal["count", "length", "gallons"]
    amount: float
    amount_text: str | None


class TakeoffLine(Record):
    """One material to buy."""

    _says = ("buy", "unit", "description", "cost")
    _columns = ("description", "needed", "spare", "buy", "unit", "holds", "price", "cost")

    item: Literal[
        "sheet",
        "offcut",
        "fastener",
        "seam-tape",
        "member-tape",
        "edge-sealer",
        "block",
        "block-screw",
        "covering",
        "adhesive",
        "angle",
        "cleat",
        "mend-screw",
        "bolt",
        "plate",
    ]
    description: str
    needed: Amount
    spare: Amount
    buy: int
    unit: str
    """What it is sold in."""
    holds: Amount | None
    """What one of these holds."""
    price: float | None
    cost: float | None


class Takeoff(Record):
    """Everything to buy, and what it weighs."""

    lines: Records[TakeoffLine]
    sheets_cost: float | None
    deck_weight_lb: float
    """Of the new boards, dry."""
