"""What is handed in: lengths, and the dicts of the calls.

A length is a number in the call's unit, or a text that may name its own.
"""

from decimal import Decimal
from fractions import Fraction
from typing import Literal, NotRequired, TypedDict

Unit = Literal["in", "ft", "mm", "cm", "m"]
"""A unit of length."""

Effort = Literal["quick", "standard", "thorough"] | int
"""How long to search: a word, or a number of steps."""

Given = int | float | Fraction | Decimal | str
"""A length as it is handed in: a number in the call's unit, or a text that may name its own."""


GivenNumber = int | float | Fraction | Decimal
"""A figure that is a float by nature, such as a force or a stiffness: an exact number becomes the nearest float."""


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

    ei: GivenNumber
    mr: GivenNumber
    fs: GivenNumber


class GivenSection(TypedDict):
    """The section of a foot of width: in⁴, in³ and in²."""

    i: GivenNumber
    ks: GivenNumber
    ib_q: GivenNumber


class GivenStresses(TypedDict):
    """Stiffness and allowable stresses, pounds to the square inch."""

    e: GivenNumber
    e_shear: GivenNumber
    fb: GivenNumber
    fs: GivenNumber


class GivenPly(TypedDict):
    """One veneer."""

    thickness: Given
    grain: Literal["with", "square"]
    stiffness: NotRequired[GivenNumber | None]


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
    cross_stiffness: NotRequired[GivenNumber | None]


GivenPanel = GivenPublished | GivenCapacity | GivenAxes | GivenSections | GivenLayup
"""What a structural panel is known by."""


class GivenBeamLoad(TypedDict):
    """A load on a beam; downward is positive."""

    kind: Literal["uniform", "patch", "point"]
    at: NotRequired[Given | None]
    size: NotRequired[Given | None]
    value: GivenNumber


class GivenPlateLoad(TypedDict):
    """A load on a plate; downward is positive."""

    kind: Literal["uniform", "patch", "line", "point"]
    at: NotRequired[tuple[Given, Given] | list[Given] | None]
    size: NotRequired[tuple[Given, Given] | list[Given] | None]
    value: GivenNumber


class GivenSupport(TypedDict):
    """What holds a plate: a line across at ``x``, a line along at ``y``, or a point."""

    kind: Literal["across", "along", "point"]
    x: NotRequired[Given]
    y: NotRequired[Given]
    at: NotRequired[tuple[Given, Given] | list[Given]]
    between: NotRequired[tuple[Given, Given] | list[Given] | None]
    clamped: NotRequired[bool]
