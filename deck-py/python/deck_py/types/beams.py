"""Solved beams and plates: downward loads, sagging moments and downward deflections are positive."""

from .._record import Record


class Peak(Record):
    """A value along a beam, and where it is reached: a distance from the left tip."""

    _columns = ("value",)

    at: float
    value: float


class Range(Record):
    """The least and the greatest value, signs counted."""

    least: Peak
    most: Peak


class BeamSupport(Record):
    """What a support carries: force upward positive, moment over it sagging positive."""

    at: float
    reaction: float
    moment: float


class BeamSpan(Record):
    """What happens along one span or overhang."""

    from_: float
    length: float
    moment: Range
    shear: Range
    deflection: Range


class PlatePeak(Record):
    """A value on a plate, and where it is reached: along the length, along the width."""

    _columns = ("value",)

    at: tuple[float, ...]
    value: float


class PlateRange(Record):
    """The least and the greatest value, signs counted."""

    least: PlatePeak
    most: PlatePeak


class PlateError(Record):
    """How far the largest answers may be off by the mesh."""

    deflection: float
    moment_x: float
    moment_y: float


class PlateState(Record):
    """Everything at one place."""

    deflection: float
    slope: tuple[float, ...]
    """Along the length and along the width."""
    moment_x: float
    """Bends along the length, per width."""
    moment_y: float
    twist: float
    shear: tuple[float, ...]
