"""What boards take on their supports, and what fasteners hold: figures for a person to judge.

Loads are pounds to the square foot and forces pounds; a ``..._text`` beside one is in the job's units. A utilisation is the
user's load over what is allowed.
"""

from typing import Literal

from .._record import Record, Records
from .frame import Standing
from .holds import FastenerSpan

Axis = Literal["across", "along"]
"""How the strength axis lies to the supports: the strong way, or the weak way."""

Criterion = Literal["deflection", "bending", "shear"]


class Service(Record):
    """Wet or dry, load duration and limit of sag."""

    wet: bool
    duration: float
    deflection: float
    """360 stands for l/360."""


class Load(Record):
    """The uniform load that the user chose."""

    _columns = ("psf", "name")

    psf: float
    name: str
    source: str
    standing: Standing


class PointLoad(Record):
    """A load that stands on a small rectangle."""

    _says = ("name", "pounds", "length", "width")
    _columns = ("name", "force_text", "length", "width", "station", "from_port", "no_figure", "source")

    name: str
    pounds: float | None
    """The force that the user chose; None: limits only."""
    length: float
    """What it covers athwart."""
    length_text: str
    width: float
    width_text: str
    source: str
    standing: Standing
    force_text: str | None
    station: float | None
    """Where its middle stands; None: at the worst place of each board."""
    station_text: str | None
    from_port: float | None
    from_port_text: str | None
    no_figure: str | None
    """Why there is no figure for it at its place on any board."""


class Limit(Record):
    """A limit by one criterion."""

    _columns = ("value",)

    value: float
    """The load, psf, or the force, pounds."""
    value_text: str
    utilisation: float | None
    where: str
    clause: str
    """The equation or method, its figures and where they come from."""


class Limits(Record):
    """The limits by each criterion."""

    deflection: Limit
    bending: Limit
    shear: Limit


class UniformCheck(Record):
    """What uniform load a board takes by one method."""

    _says = _columns = ("allowable_text", "governing", "utilisation")

    limits: Limits
    governing: Criterion
    allowable_psf: float
    allowable_text: str
    utilisation: float | None
    standing: Standing


class PointCheck(Record):
    """What may stand on a small place of a board."""

    _says = ("name", "zone", "allowable_text", "governing", "utilisation")
    _columns = ("name", "zone", "allowable_text", "governing", "utilisation", "standing")

    name: str
    zone: Literal["anywhere", "away-from-edges", "placed"]
    limits: Limits
    governing: Criterion
    allowable_pounds: float
    allowable_text: str
    utilisation: float | None
    standing: Standing


class Bearing(Record):
    """The part of a flange that a board bears on."""

    _says = ("member", "fore", "aft")

    member: int
    fore: float
    fore_text: str
    aft: float
    aft_text: str
    width: float
    width_text: str
    port: float
    port_text: str
    starboard: float
    starboard_text: str


class SpanBay(Record):
    """Between two bearings."""

    fore_member: int
    aft_member: int
    spacing: float
    """From the middle of one bearing to that of the next."""
    spacing_text: str
    clear: float
    clear_text: str


class SpacingLimit(Record):
    """How far apart the members may stand."""

    axis: Axis
    spacing: float | None
    spacing_text: str | None
    why: str


class Blocking(Record):
    """Blocking in one bay."""

    fore_member: int
    aft_member: int
    count: int
    spacing: float
    spacing_text: str
    text: str


class PanelSpan(Record):
    """A board on its supports."""

    _says = ("panel", "axis", "bays", "no_figure")
    _columns = (
        *("panel", "axis", "bays", "table.allowable_text", "table.governing", "table.utilisation"),
        *("beam.allowable_text", "beam.governing", "beam.utilisation", "no_figure"),
    )

    panel: str
    axis: Axis
    supports: Records[Bearing]
    bays: Records[SpanBay]
    overhangs: tuple[float, ...]
    """How far it reaches past its first and its last bearing."""
    no_figure: str | None
    """Why there is no figure by the table."""
    table: UniformCheck | None
    """By the published tables' equations: what decides."""
    beam: UniformCheck | None
    """Of the continuous beam on the true supports."""
    differ: str | None
    """Why the two differ."""
    other_way: float | None
    """The load by the table if the board lay the other way."""
    other_way_text: str | None
    points: Records[PointCheck]
    no_points: str | None
    spacing: Records[SpacingLimit]
    blocking: Records[Blocking]


class Enough(Record):
    """A published panel, and a way to lay it, that carries the uniform load."""

    _columns = ("series", "rating", "axis", "allowable_text")

    series: str
    rating: str
    axis: Axis
    allowable_psf: float
    allowable_text: str


class Sag(Record):
    """How the worst board sags, on a grid of places."""

    _says = ("panel", "load", "greatest")

    panel: str
    load: str
    station: float | None
    station_text: str | None
    from_port: float | None
    from_port_text: str | None
    fore: float
    fore_text: str
    aft: float
    aft_text: str
    port: float
    port_text: str
    starboard: float
    starboard_text: str
    micrometres: tuple[tuple[int, ...], ...]
    """Rows from fore to aft, each from port to starboard, evenly divided."""
    greatest: float
    greatest_text: str


class Span(Record):
    """What the boards take on their own supports, and what their fasteners hold."""

    _says = ("panel", "load_text", "panels", "no_figure")

    no_figure: str | None
    """Why there is no figure at all."""
    panel: str | None
    """What the boards are taken to be."""
    service: Service | None
    load: Load | None
    """None: limits only."""
    load_text: str | None
    points: Records[PointLoad]
    rule: str | None
    """Whose choice the loads are."""
    panels: Records[PanelSpan]
    enough: Records[Enough]
    fasteners: FastenerSpan | None
    picture: Sag | None
    notes: tuple[str, ...]
    caution: str
