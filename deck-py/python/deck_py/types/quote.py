"""What a job costs, and the hours behind it."""

from typing import Literal

from .._record import Record, Records
from .strip_out import ThreePoint

Group = Literal["materials", "labour", "disposal", "freight", "overhead", "contingency", "tax"]
"""What a line of a quote is for."""


class QuoteLine(Record):
    """A line of a quote; what has no price has no amount."""

    _says = ("group", "description", "amount")
    _columns = ("group", "description", "quantity", "unit", "rate", "amount")

    group: Group
    description: str
    quantity: float | None
    unit: str
    rate: float | None
    """Price of one, or the amount that a percentage is of."""
    amount: float | None


class QuoteSum(Record):
    """The sum of a quote's group."""

    group: Group
    amount: float


class TaskHours(Record):
    """A task with its hours."""

    _says = ("task", "mean", "deviation")
    _columns = ("words", "low", "likely", "high", "mean", "deviation", "source")

    task: str
    words: str
    low: float
    likely: float
    high: float
    mean: float
    deviation: float
    source: str


class Percentiles(Record):
    """Hours that are enough in so many of a hundred such jobs."""

    p50: float
    p80: float
    p90: float


class Labour(Record):
    """Hours, and how sure their sum is."""

    _says = ("mean", "deviation", "charged_hours")

    tasks: Records[TaskHours]
    sums: ThreePoint
    mean: float
    deviation_independent: float
    """Where the tasks share nothing."""
    deviation_shared: float
    """Where they share all."""
    correlation: float
    deviation: float
    distribution: Literal["lognormal", "normal"]
    why: str
    percentiles: Percentiles
    percentiles_independent: Percentiles
    percentiles_shared: Percentiles
    charged: Literal["mean", "p50", "p80", "p90"]
    charged_hours: float
    risk_hours: float
