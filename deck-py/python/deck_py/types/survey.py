"""What a survey gives: points in their places, readings held against them, traces, and old boards as evidence.

Lengths are numbers in the unit of the survey; a `..._text` beside one is how the shop writes it.
"""

from typing import Literal

from .._record import Record, Records


class SurveyPoint(Record):
    """A point of a survey in its place."""

    _says = ("name", "x", "y")
    _columns = ("name", "x", "y", "x_deviation", "y_deviation")

    name: str
    x: float
    x_text: str
    y: float
    y_text: str
    x_deviation: float
    x_deviation_text: str
    y_deviation: float
    y_deviation_text: str
    correlation: float


class SurveyReading(Record):
    """A reading against what the places make of it."""

    _says = ("name", "what", "reading", "residual", "used")
    _columns = ("name", "what", "reading", "adjusted", "residual", "standardised", "redundancy", "used")

    name: str
    what: str
    points: tuple[str, ...]
    number: int
    reading: float | None
    reading_text: str | None
    error: float
    error_text: str
    adjusted: float
    adjusted_text: str
    residual: float
    residual_text: str
    standardised: float | None
    redundancy: float
    least_blunder: float | None
    least_blunder_text: str | None
    moves: float | None
    moves_text: str | None
    used: bool


class SurveySuspect(Record):
    """A reading that may be at fault."""

    reading: str
    off: float
    off_text: str
    cause: str | None


class SurveyBlunder(Record):
    """A reading that disagrees with the rest."""

    _says = ("reading", "off", "expected")
    _columns = ("reading", "off", "expected", "cause", "settle", "message")

    reading: str
    number: int
    off: float
    off_text: str
    deviation: float
    deviation_text: str
    expected: float
    expected_text: str
    told_apart: bool
    suspects: Records[SurveySuspect]
    cause: str | None
    settle: str | None
    message: str


class SurveyTest(Record):
    """Whether the readings agree as well as their errors say."""

    statistic: float
    freedom: int
    probability: float
    passes: bool


class SurveySquaring(Record):
    """How far a frame is out of square, and what brings it back."""

    _says = ("skew", "pull_by", "advice")
    _columns = ("length", "width", "skew", "skew_deviation", "pull_by", "closure", "advice")

    length: float
    length_text: str
    width: float
    width_text: str
    diagonal_from_bow_port: float
    diagonal_from_bow_port_text: str
    diagonal_from_bow_starboard: float
    diagonal_from_bow_starboard_text: str
    diagonal_when_square: float
    diagonal_when_square_text: str
    skew: float
    skew_text: str
    skew_deviation: float
    skew_deviation_text: str
    skew_first_order: float
    skew_first_order_text: str
    pull: tuple[str, ...] | None
    pull_by: float
    pull_by_text: str
    closure: float
    closure_text: str
    advice: str


class SurveyPiece(Record):
    """A line or an arc of a trace."""

    _says = ("kind", "radius", "spread")
    _columns = ("kind", "radius", "centre_x", "centre_y", "spread")

    kind: Literal["line", "arc"]
    points: tuple[int, ...]
    radius: float | None
    radius_text: str | None
    centre_x: float | None
    centre_x_text: str | None
    centre_y: float | None
    centre_y_text: str | None
    residuals: tuple[float, ...]
    spread: float
    spread_text: str


class SurveyJoin(Record):
    """Where two pieces of a trace meet."""

    kind: Literal["corner", "tangent", "between"]
    x: float
    x_text: str
    y: float
    y_text: str


class SurveyTrace(Record):
    """A trace as lines and arcs."""

    _says = ("name", "largest_residual")
    _columns = ("name", "scale", "tolerance", "largest_residual")

    name: str
    scale: float
    placed_within: float | None
    placed_within_text: str | None
    tolerance: float
    tolerance_text: str
    pieces: Records[SurveyPiece]
    joins: Records[SurveyJoin]
    largest_residual: float
    largest_residual_text: str


class SurveyMark(Record):
    """A seam between old boards, or a row of old holes."""

    _says = ("kind", "number", "station", "member", "off")
    _columns = ("kind", "number", "station", "member", "member_station", "off")

    kind: Literal["seam", "row"]
    number: int
    station: float
    station_text: str
    member: int | None
    member_station: float | None
    member_station_text: str | None
    off: float | None
    off_text: str | None


class SurveyFinding(Record):
    """Something that the old boards and the members do not agree about."""

    kind: Literal["missing", "doubled", "unscrewed"]
    station: float
    station_text: str
    member: int | None
    message: str


class SurveyBoards(Record):
    """The old boards held against the members."""

    tolerance: float
    tolerance_text: str
    flange: float
    flange_text: str
    marks: Records[SurveyMark]
    findings: Records[SurveyFinding]


class SurveyArc(Record):
    """The arc from a corner to the next one."""

    radius: float
    bulge: Literal["out", "in"]


class SurveyCorner(Record):
    """A corner of an outline, as a job takes it."""

    x: float
    y: float
    arc: SurveyArc | None


class SurveyMember(Record):
    """A cross member in its place."""

    points: tuple[str, ...]
    station: float
    station_text: str
    out_of_square: float | None
    out_of_square_text: str | None
