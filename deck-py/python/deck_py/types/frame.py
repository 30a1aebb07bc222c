"""The cross members in place, and the settings that a plan rests on."""

from typing import Literal

from .._record import Record
from .flanges import Skew
from .given import Unit

Standing = Literal["V", "D", "C", "M", "choice"]
"""How sure a figure is: verified, derived, common practice, from memory, or somebody's choice."""


class Member(Record):
    """A cross member with its flange in place."""

    _says = ("number", "fore", "aft", "condition")

    number: int
    station: float
    """The tape reading."""
    station_text: str
    measured_to: Literal["web", "fore-edge", "aft-edge", "centre"]
    """What the reading is to."""
    profile: Literal["C", "Z", "S", "I", "hat", "box"] | None
    faces: Literal["fore", "aft"] | None
    fore: float
    """Station of the flange's fore edge."""
    fore_text: str
    aft: float
    aft_text: str
    skew: Skew | None
    """Of a member that was read at its ends."""
    wall: float | None
    wall_text: str | None
    port_end: float | None
    """From the port edge; None: it reaches the deck edge."""
    port_end_text: str | None
    starboard_end: float | None
    starboard_end_text: str | None
    condition: Literal["sound", "cut", "corroded", "bent"]


class Fastener(Record):
    """The fastener."""

    kind: str
    diameter: float
    diameter_text: str
    length: float
    length_text: str
    threads_per_inch: int
    drill_point: float
    drill_point_text: str


class Basis(Record):
    """The settings that a plan rests on."""

    _says = ("unit", "thickness", "gap", "least_bearing")

    unit: Unit
    fractions: int
    """Finest fraction of an inch that is printed."""
    feet: bool
    thickness: float
    thickness_text: str
    gap: float
    gap_text: str
    least_bearing: float
    least_bearing_text: str
    least_flange: float
    """On which two rows of fasteners fit."""
    least_flange_text: str
    fastener: Fastener
    edge_spacing: float
    edge_spacing_text: str
    field_spacing: float
    field_spacing_text: str
    edge_in_ply: float
    edge_in_ply_text: str
    edge_in_metal: float
    edge_in_metal_text: str
    end_distance: float
    end_distance_text: str
    stagger: bool
    kerf: float
    kerf_text: str
    trim: float
    trim_text: str
    face: Literal["up", "down"]
    paper: Literal["letter", "a4"]


class Assumed(Record):
    """A default that the plan rests on and that no source settles."""

    pointer: str
    """JSON pointer of the setting in the job."""
    setting: str
    value: str
    """As the shop writes it."""
    mark: Standing
    source: str


class Rounded(Record):
    """A length that was not a whole number of nanometres."""

    pointer: str
    given: str
    taken: float
    """Rounded once, half to even."""
    taken_text: str
