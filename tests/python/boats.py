"""Random boats, and their decks built a second time out of Shapely's own primitives.

Nothing here reads a corner that the library reports: the outline is a box less triangles and less what morphological
opening (a buffer inwards, then outwards) takes off its corners.
"""

import random
from collections.abc import Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any

from shapely import Point, Polygon, box
from shapely.affinity import scale
from shapely.geometry.base import BaseGeometry

# Chords per quarter circle: on a radius of 24 in they lie within 3e-5 in of the arc, a tenth of the library's tolerance.
QUARTER = 512

# Beyond every deck, in any unit used here.
FAR = 100_000.0

Job = dict[str, Any]


@dataclass
class Measures:
    """A boat's measures as plain numbers, in the job's unit."""

    length: float
    beam: float
    taper: tuple[float, float] | None = None
    clip: float = 0
    radius: float = 0
    notch: dict[str, float] | None = None
    openings: list[dict[str, dict[str, float]]] = field(default_factory=list)


def rounded(shape: BaseGeometry, radius: float) -> BaseGeometry:
    """The shape with its convex corners rounded."""
    return shape.buffer(-radius, quad_segs=QUARTER).buffer(radius, quad_segs=QUARTER) if radius else shape


def bow(deck: Measures) -> BaseGeometry:
    """All that lies aft of the bow edge and inboard of the port bow corner, however it is cut."""
    run, rise = (deck.taper[0], (deck.beam - deck.taper[1]) / 2) if deck.taper else (deck.length, 0.0)
    slant = (run**2 + rise**2) ** 0.5
    along = (run / slant, -rise / slant)
    corner = Polygon([(0, rise), (along[0] * FAR, rise + along[1] * FAR), (0, rise + FAR)])
    ends = [(0, rise + deck.clip), (along[0] * deck.clip, rise + along[1] * deck.clip)]
    return rounded(corner, deck.radius).difference(Polygon([(0, rise), *ends]))


def notch_loss(deck: Measures) -> BaseGeometry:
    """What the motor notch takes off the stern."""
    if deck.notch is None:
        return Polygon()
    port = deck.notch.get("from_port", (deck.beam - deck.notch["width"]) / 2)
    starboard, fore = port + deck.notch["width"], deck.length - deck.notch["depth"]
    loss = rounded(box(fore, port, deck.length + FAR, starboard), deck.notch.get("inside_radius", 0))
    radius = deck.notch.get("stern_radius", 0)
    for edge, middle in ((port, port - radius), (starboard, starboard + radius)) if radius else ():
        corner = box(deck.length - radius, min(edge, middle), deck.length, max(edge, middle))
        loss = loss.union(corner.difference(Point(deck.length - radius, middle).buffer(radius, quad_segs=QUARTER)))
    return loss


def outline(deck: Measures) -> BaseGeometry:
    """The deck without its openings."""
    port = bow(deck)
    starboard = scale(port, yfact=-1, origin=(0, deck.beam / 2))
    whole = box(0, 0, deck.length, deck.beam)
    return whole.intersection(port).intersection(starboard).difference(notch_loss(deck))


def opening(spec: dict[str, dict[str, float]]) -> BaseGeometry:
    """One opening."""
    if "round" in spec:
        hole = spec["round"]
        return Point(hole["x"], hole["y"]).buffer(hole["diameter"] / 2, quad_segs=QUARTER)
    hole = spec["rectangle"]
    edge = box(hole["x"], hole["y"], hole["x"] + hole["depth"], hole["y"] + hole["width"])
    return rounded(edge, hole.get("corner_radius", 0))


def arcs(deck: Measures) -> float:
    """No less than the length of all arcs of the outline and the openings."""
    notch = deck.notch or {}
    radii = [deck.radius] * 2 + [notch.get("inside_radius", 0), notch.get("stern_radius", 0)] * 2
    for spec in deck.openings:
        radii += [spec["round"]["diameter"] / 2] * 4 if "round" in spec else [spec["rectangle"].get("corner_radius", 0)] * 4
    return sum(radii) * 1.6


def parts(shape: BaseGeometry) -> list[Polygon]:
    """The polygons of a shape from port to starboard, without slivers that rounding leaves."""
    pieces = getattr(shape, "geoms", [shape])
    whole = [piece for piece in pieces if isinstance(piece, Polygon) and piece.area > 1e-3]
    return sorted(whole, key=lambda piece: piece.bounds[1])


# Each length a tape reads is a whole number of these.
STEP = {"in": Fraction(1, 16), "mm": Fraction(1)}
# A tape's inch, about, in the unit.
INCH = {"in": 1.0, "mm": 25.0}


class Yard:
    """Makes random boats, all of them such that a job can be read."""

    def __init__(self, seed: int) -> None:
        self.random = random.Random(seed)
        self.unit = "in"

    def length(self, least: float, most: float) -> float:
        """A length between two figures in inches, in the unit and on the tape's marks."""
        inches = self.random.uniform(least, most)
        step = STEP[self.unit]
        return float(round(inches * INCH[self.unit] / float(step)) * step)

    def chance(self, of: float) -> bool:
        return self.random.random() < of

    def boats(self) -> Iterator[tuple[Job, Measures]]:
        """Boat after boat, with its job."""
        while True:
            self.unit = self.random.choice(["in", "in", "mm"])
            measures = self.measures()
            yield self.job(measures), measures

    def measures(self) -> Measures:
        deck = Measures(self.length(130, 330), self.length(80, 102))
        if self.chance(0.3):
            deck.taper = (self.length(20, 60), deck.beam - self.length(4, 30))
        bow = self.random.choice(["radius", "radius", "clip", "square"])
        if bow == "radius":
            deck.radius = self.length(2, 16)
        elif bow == "clip":
            deck.clip = self.length(2, 16)
        if self.chance(0.5):
            deck.notch = self.notch(deck)
        for start in self.random.sample([0.3, 0.45, 0.6], self.random.randrange(4)):
            deck.openings.append(self.hole(start * deck.length, deck.beam))
        return deck

    def notch(self, deck: Measures) -> dict[str, float]:
        notch = {"width": self.length(20, 36), "depth": self.length(10, 50)}
        if self.chance(0.5):
            notch["inside_radius"] = self.length(1, 6)
        if self.chance(0.5):
            notch["stern_radius"] = self.length(1, 3)
        if self.chance(0.3):
            notch["from_port"] = self.length(10, 40)
        return notch

    def hole(self, station: float, beam: float) -> dict[str, dict[str, float]]:
        if self.chance(0.5):
            diameter = self.length(1, 10)
            x = round(station + diameter)
            return {"round": {"x": x, "y": float(round(beam * self.random.uniform(0.3, 0.7))), "diameter": diameter}}
        hole = {"x": float(round(station)), "y": float(round(beam * self.random.uniform(0.2, 0.5)))}
        hole |= {"depth": self.length(6, 12), "width": self.length(6, 24)}
        if self.chance(0.5):
            hole["corner_radius"] = self.length(0.5, 2.9)
        return {"rectangle": hole}

    def job(self, deck: Measures) -> Job:
        bow = {"radius": deck.radius} if deck.radius else {"clip": deck.clip} if deck.clip else None
        shape = {"length": deck.length, "beam": deck.beam, "bow": bow, "notch": deck.notch}
        if deck.taper:
            shape["taper"] = {"length": deck.taper[0], "bow_beam": deck.taper[1]}
        inch = INCH[self.unit]
        return {
            "schema": 1,
            "name": "random",
            "unit": self.unit,
            "deck": {name: value for name, value in shape.items() if value is not None},
            "frame": {"measured_to": "centre", "flange": self.length(1.75, 3), "members": self.members(deck.length)},
            "openings": [{"name": f"hole {n}", "framed": True, **spec} for n, spec in enumerate(deck.openings)],
            "stock": [{"label": "ply", "length": 110 * inch, "width": 48 * inch, "thickness": 0.75 * inch}],
            "gap": self.random.choice([0, 0.125, 0.25]) * (1 if self.unit == "in" else 24),
        }

    def members(self, length: float) -> list[dict[str, float]]:
        """Members from bow to stern, their spacing uneven."""
        stations, at = [0.0], 0.0
        while length - at > 26 * INCH[self.unit]:
            at += self.length(12, 24)
            stations.append(at)
        return [{"station": station} for station in [*stations, length]]
