"""What the dicts in a plan hold, for type checkers.

Lengths are numbers in the plan's unit. A ``..._text`` beside one is how the shop writes it.
"""

from decimal import Decimal
from fractions import Fraction
from typing import Any, Literal, NotRequired, TypedDict

Unit = Literal["in", "ft", "mm", "cm", "m"]
"""A unit of length."""

Effort = Literal["quick", "standard", "thorough"] | int
"""How long to search: a word, or a number of steps."""

Given = int | float | Fraction | Decimal | str
"""A length as it is handed in: a number in the call's unit, or a text that may name its own."""


class GivenRectangle(TypedDict):
    """A rectangle as it is handed in."""

    x: Given
    y: Given
    length: Given
    width: Given


class GivenPart(TypedDict):
    """A part as it is handed in: a rectangle to be sawn out."""

    label: str
    length: Given
    width: Given
    count: NotRequired[int | None]
    grain: NotRequired[Literal["any", "length", "width"]]
    value: NotRequired[Given | None]
    boat: NotRequired[str | None]
    inside: NotRequired[list[GivenRectangle]]


class GivenMeasure(TypedDict):
    """The size of a sheet as a tape found it."""

    length: Given
    width: Given


class GivenSheet(TypedDict):
    """A sheet or an offcut as it is handed in; ``length`` is the side along the grain."""

    label: str
    length: Given
    width: Given
    measured: NotRequired[GivenMeasure | None]
    thickness: NotRequired[Given | None]
    grain: NotRequired[Literal["length", "none"]]
    count: NotRequired[int | None]
    price: NotRequired[Given | None]
    offcut: NotRequired[bool]
    treatment: NotRequired[Literal["none", "copper", "micronized-copper", "arsenate"] | None]


class GivenCapacity(TypedDict):
    """What a foot of width of a panel bears about an axis: lbf·in², lbf·in and lbf."""

    ei: float
    mr: float
    fs: float


class GivenSection(TypedDict):
    """The section of a foot of width: in⁴, in³ and in²."""

    i: float
    ks: float
    ib_q: float


class GivenStresses(TypedDict):
    """Stiffness and allowable stresses, pounds to the square inch."""

    e: float
    e_shear: float
    fb: float
    fs: float


class GivenPly(TypedDict):
    """One veneer."""

    thickness: Given
    grain: Literal["with", "square"]
    stiffness: NotRequired[float | None]


class GivenPublished(TypedDict):
    """A row of the published tables, in their own words."""

    series: str
    rating: str
    group: NotRequired[Literal["1", "2", "3", "4", "Structural I"] | None]
    grade: NotRequired[Literal["A-A/A-C", "Marine", "other"] | None]


class GivenAxes(TypedDict, total=False):
    """The user's own capacities about either axis."""

    across: GivenCapacity | None
    along: GivenCapacity | None


class GivenSections(TypedDict):
    """The user's own sections and stresses."""

    thickness: Given
    across: NotRequired[GivenSection | None]
    along: NotRequired[GivenSection | None]
    stresses: GivenStresses


class GivenLayup(TypedDict):
    """Plies from face to back, with the stresses of the reference ply."""

    plies: list[GivenPly]
    stresses: GivenStresses
    cross_stiffness: NotRequired[float | None]


GivenPanel = GivenPublished | GivenCapacity | GivenAxes | GivenSections | GivenLayup
"""What a structural panel is known by."""


class GivenBeamLoad(TypedDict):
    """A load on a beam; downward is positive."""

    kind: Literal["uniform", "patch", "point"]
    at: NotRequired[Given | None]
    size: NotRequired[Given | None]
    value: float


class GivenPlateLoad(TypedDict):
    """A load on a plate; downward is positive."""

    kind: Literal["uniform", "patch", "line", "point"]
    at: NotRequired[tuple[Given, Given] | list[Given] | None]
    size: NotRequired[tuple[Given, Given] | list[Given] | None]
    value: float


class GivenSupport(TypedDict):
    """What holds a plate: a line across at ``x``, a line along at ``y``, or a point."""

    kind: Literal["across", "along", "point"]
    x: NotRequired[Given]
    y: NotRequired[Given]
    at: NotRequired[tuple[Given, Given] | list[Given]]
    between: NotRequired[tuple[Given, Given] | list[Given] | None]
    clamped: NotRequired[bool]


class Point(TypedDict):
    """A point: x aft of the bow edge, y to starboard of the port edge."""

    x: float
    y: float


class Arc(TypedDict):
    """An arc of at most a half turn."""

    centre: Point
    radius: float
    turn: Literal["left", "right"]


class Side(Point):
    """One side of a closed path, from its own corner to the next side's."""

    arc: NotRequired[Arc]
    edge: Any
    """What it is: a word on an outline, a dict with its ``kind`` on a panel, None on an opening."""


class Bounds(TypedDict):
    """The least rectangle around a path."""

    fore: float
    aft: float
    port: float
    starboard: float


class PanelOpening(TypedDict):
    """An opening in a panel."""

    name: str
    purpose: str | None
    shape: list[Side]
    bounds: Bounds


class SquareCheck(TypedDict):
    """A rectangle on the deck whose diagonals tell whether the frame is square."""

    fore: float
    fore_text: str
    aft: float
    aft_text: str
    diagonal: float
    diagonal_text: str
    difference: float
    difference_text: str
    skew: float
    skew_text: str


class Stack(TypedDict):
    """How far the last seam may be off when boards are sawn and set within the usual errors."""

    worst: float
    worst_text: str
    root_sum_square: float
    root_sum_square_text: str


class Checks(TypedDict):
    """What to measure before the first cut."""

    length: float
    length_text: str
    beam: float
    beam_text: str
    square: SquareCheck | None
    stack: Stack | None


class Seam(TypedDict):
    """A seam, on the flange of a member."""

    number: int
    member: int
    fore: float
    fore_text: str
    aft: float
    aft_text: str
    bearing_fore: float
    bearing_fore_text: str
    bearing_aft: float
    bearing_aft_text: str
    shift: float
    shift_text: str
    short_by: float
    short_by_text: str
    length: float | None
    length_text: NotRequired[str]


class Board(TypedDict):
    """A board, from seam to seam."""

    number: int
    fore: float
    fore_text: str
    aft: float
    aft_text: str
    width: float
    width_text: str
    full_width_of: str | None
    narrow: bool
    supports: list[int]


class LayoutCost(TypedDict):
    """What a layout costs, in order of weight."""

    short_seams: int
    boards: int
    narrow_boards: int
    ripped_boards: int
    unevenness: float
    unevenness_text: str
    seam_length: float
    seam_length_text: str
    shift: float
    shift_text: str
    finish_short: float
    finish_short_text: str


class Layout(TypedDict):
    """One way to split the deck into boards."""

    boards: list[Board]
    seams: list[Seam]
    cost: LayoutCost
    finish: float
    finish_text: str


# By this form of a TypedDict, as "from" is no name in Python.
_From = TypedDict("_From", {"from": float})


class Bay(_From):
    """The bay between two neighbouring members."""

    fore_member: int | None
    aft_member: int | None
    from_text: str
    to: float
    to_text: str
    clear: float
    clear_text: str


class NoLayout(TypedDict):
    """Why a deck cannot be laid out."""

    reason: str
    bay: Bay | None
    sheet: str | None
    shortfall: float | None
    shortfall_text: NotRequired[str]
    mend: list[str]


class Row(TypedDict):
    """A row of fasteners through one panel into one member."""

    panel: str
    member: int
    kind: Literal["edge", "field"]
    seam: int | None
    station: float
    station_text: str
    positions: list[float]
    limit: float
    limit_text: str
    greatest_gap: float
    greatest_gap_text: str
    over_limit: bool
    short_by: float
    short_by_text: str
    moved: int
    dropped: int


class Fastening(TypedDict):
    """Every row of fasteners, and the count of all."""

    rows: list[Row]
    count: int
    edge_count: int
    field_count: int


class Placement(TypedDict):
    """A part on a sheet: x along its length, y along its width."""

    part: str
    x: float
    y: float
    length: float
    width: float
    turned: bool
    boat: NotRequired[str]


class Rectangle(TypedDict):
    """A rectangle on a sheet."""

    x: float
    y: float
    length: float
    width: float


class Inside(TypedDict):
    """The part in which a sheet is waste: where it lies, and the waste in the part's own coordinates."""

    part: str
    sheet: int
    copy: int
    placement: Placement
    waste: Rectangle
    length: float
    width: float


class Sheet(TypedDict):
    """One sheet, its parts and how to saw it."""

    stock: str
    inside: NotRequired[Inside]
    placements: list[Placement]
    cuts: dict[str, Any]
    offcuts: list[Rectangle]


class Unplaced(TypedDict):
    """Copies of a part that found no place."""

    part: str
    count: int
    why: str


class BoatCost(TypedDict):
    """A boat's share of the cost."""

    boat: str | None
    cost: float


class Amount(TypedDict):
    """A count of pieces, or a length."""

    measure: Literal["count", "length"]
    amount: float
    amount_text: NotRequired[str]


class TakeoffLine(TypedDict):
    """One material to buy."""

    item: Literal["sheet", "offcut", "fastener", "seam-tape", "member-tape", "edge-sealer"]
    description: str
    needed: Amount
    spare: Amount
    buy: int
    unit: str
    holds: Amount | None
    price: float | None
    cost: float | None


class Takeoff(TypedDict):
    """Everything to buy, and what it weighs."""

    lines: list[TakeoffLine]
    sheets_cost: float | None
    deck_weight_lb: float


class Caution(TypedDict):
    """Something to know before acting on a plan."""

    id: str
    source: Literal["standing", "plan"]
    about: list[str]
    text: str
    reason: str
    defers_to: str


class Peak(TypedDict):
    """A value along a beam, and where it is reached."""

    at: float
    value: float


class Range(TypedDict):
    """The least and the greatest value, signs counted."""

    least: Peak
    most: Peak


class BeamSupport(TypedDict):
    """What a support carries: force upward positive, moment over it sagging positive."""

    at: float
    reaction: float
    moment: float


class BeamSpan(_From):
    """What happens along one span or overhang."""

    length: float
    moment: Range
    shear: Range
    deflection: Range


class PlatePeak(TypedDict):
    """A value on a plate, and where it is reached: along the length, along the width."""

    at: list[float]
    value: float


class PlateRange(TypedDict):
    """The least and the greatest value, signs counted."""

    least: PlatePeak
    most: PlatePeak


class PlateError(TypedDict):
    """How far the largest answers may be off by the mesh."""

    deflection: float
    moment_x: float
    moment_y: float


class PlateState(TypedDict):
    """Everything at one place."""

    deflection: float
    slope: list[float]
    moment_x: float
    moment_y: float
    twist: float
    shear: list[float]


class SurveyPoint(TypedDict):
    """A point of a survey in its place."""

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


class SurveyReading(TypedDict):
    """A reading against what the places make of it."""

    name: str
    what: str
    points: list[str]
    number: int
    reading: NotRequired[float]
    reading_text: NotRequired[str]
    error: float
    error_text: str
    adjusted: float
    adjusted_text: str
    residual: float
    residual_text: str
    standardised: NotRequired[float]
    redundancy: float
    least_blunder: NotRequired[float]
    least_blunder_text: NotRequired[str]
    moves: NotRequired[float]
    moves_text: NotRequired[str]
    used: bool


class SurveySuspect(TypedDict):
    """A reading that may be at fault."""

    reading: str
    off: float
    off_text: str
    cause: NotRequired[str]


class SurveyBlunder(TypedDict):
    """A reading that disagrees with the rest."""

    reading: str
    number: int
    off: float
    off_text: str
    deviation: float
    deviation_text: str
    expected: float
    expected_text: str
    told_apart: bool
    suspects: list[SurveySuspect]
    cause: NotRequired[str]
    settle: NotRequired[str]
    message: str


class SurveyTest(TypedDict):
    """Whether the readings agree as well as their errors say."""

    statistic: float
    freedom: int
    probability: float
    passes: bool


class SurveySquaring(TypedDict):
    """How far a frame is out of square, and what brings it back."""

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
    pull: NotRequired[list[str]]
    pull_by: float
    pull_by_text: str
    closure: float
    closure_text: str
    advice: str


class SurveyPiece(TypedDict):
    """A line or an arc of a trace."""

    kind: Literal["line", "arc"]
    points: list[int]
    radius: NotRequired[float]
    radius_text: NotRequired[str]
    centre_x: NotRequired[float]
    centre_x_text: NotRequired[str]
    centre_y: NotRequired[float]
    centre_y_text: NotRequired[str]
    residuals: list[float]
    spread: float
    spread_text: str


class SurveyJoin(TypedDict):
    """Where two pieces of a trace meet."""

    kind: Literal["corner", "tangent", "between"]
    x: float
    x_text: str
    y: float
    y_text: str


class SurveyTrace(TypedDict):
    """A trace as lines and arcs."""

    name: str
    scale: float
    placed_within: NotRequired[float]
    placed_within_text: NotRequired[str]
    tolerance: float
    tolerance_text: str
    pieces: list[SurveyPiece]
    joins: list[SurveyJoin]
    largest_residual: float
    largest_residual_text: str


class SurveyMark(TypedDict):
    """A seam between old boards, or a row of old holes."""

    kind: Literal["seam", "row"]
    number: int
    station: float
    station_text: str
    member: NotRequired[int]
    member_station: NotRequired[float]
    member_station_text: NotRequired[str]
    off: NotRequired[float]
    off_text: NotRequired[str]


class SurveyFinding(TypedDict):
    """Something that the old boards and the members do not agree about."""

    kind: Literal["missing", "doubled", "unscrewed"]
    station: float
    station_text: str
    member: NotRequired[int]
    message: str


class SurveyBoards(TypedDict):
    """The old boards held against the members."""

    tolerance: float
    tolerance_text: str
    flange: float
    flange_text: str
    marks: list[SurveyMark]
    findings: list[SurveyFinding]


class SurveyArc(TypedDict):
    """The arc from a corner to the next one."""

    radius: float
    bulge: Literal["out", "in"]


class SurveyCorner(TypedDict):
    """A corner of an outline, as a job takes it."""

    x: float
    y: float
    arc: NotRequired[SurveyArc]


class SurveyMember(TypedDict):
    """A cross member in its place."""

    points: list[str]
    station: float
    station_text: str
    out_of_square: NotRequired[float]
    out_of_square_text: NotRequired[str]
