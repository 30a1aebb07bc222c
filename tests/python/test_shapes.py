"""Panels against Shapely (GEOS), which builds the same deck from its measures with boxes, triangles and buffers."""

import itertools
from collections import Counter
from concurrent.futures import ThreadPoolExecutor

import pytest
from boats import FAR, QUARTER, Measures, Yard, arcs, opening, outline, parts
from shapely import Polygon, box, make_valid, unary_union
from shapely.geometry import shape
from shapely.geometry.base import BaseGeometry

import deck_py
from deck_py import types

# The seed of the random boats, and how many of them have to be laid out and compared.
SEED = 20_240_607
COMPARED = 240

# Chords lie within a hundredth of a millimetre of their arc.
TOLERANCE = {"in": 0.01 / 25.4, "mm": 0.01}
# The library's corners are whole nanometres; Shapely's are floating point. Across a side's whole length.
GRAIN = {"in": 2e-7, "mm": 5e-6}


class Boat:
    """A planned boat, and the same deck built by Shapely."""

    def __init__(self, job: dict, measures: Measures) -> None:
        self.plan = deck_py.plan(job)
        self.measures = measures
        if self.plan.seams or self.plan.panels:
            self.outline = outline(measures)
            self.openings = unary_union([opening(spec) for spec in measures.openings])

    @property
    def slack(self) -> float:
        """How much area chords may take off or add, along all arcs of the boat, and rounding along all sides."""
        sides = self.outline.length + self.openings.length + 2 * self.measures.beam * len(self.plan.panels)
        most = max(self.measures.radius, *(self.measures.notch or {"": 0}).values(), 12 * self.measures.beam / 96)
        shapely = most * (3.1416 / 2 / QUARTER) ** 2 / 8
        return arcs(self.measures) * (TOLERANCE[self.plan.unit] + shapely) + sides * GRAIN[self.plan.unit]

    def strip(self, board: dict) -> BaseGeometry:
        """The deck between two seams, without its openings."""
        return self.outline.intersection(box(board.fore, -1, board.aft, self.measures.beam + 1)).difference(self.openings)


def polygon(panel: deck_py.Panel) -> Polygon:
    """The panel in Shapely; a hole that touches the edge is made a notch, and is the only thing to be mended."""
    ours = shape(panel)
    assert isinstance(ours, Polygon) and ours.exterior.is_ccw and all(not ring.is_ccw for ring in ours.interiors)
    assert len(ours.interiors) == len(panel.openings)
    touching = [hole.bounds for hole in panel.openings if not strictly_inside(hole.bounds, panel.bounds)]
    assert ours.is_valid or touching, panel
    return ours if ours.is_valid else make_valid(ours, method="structure", keep_collapsed=False)


def strictly_inside(inner: types.Bounds, outer: types.Bounds) -> bool:
    return outer.fore < inner.fore and inner.aft < outer.aft


@pytest.fixture(scope="module")
def boats() -> list[Boat]:
    jobs = list(itertools.islice(Yard(SEED).boats(), 2 * COMPARED))
    with ThreadPoolExecutor(2) as pool:
        planned = [boat for boat in pool.map(lambda pair: Boat(*pair), jobs) if boat.plan.panels]
    return planned[:COMPARED]


def test_enough_boats_of_every_sort_are_compared(boats: list[Boat]) -> None:
    sorts: Counter[str] = Counter()
    for boat in boats:
        deck, notch = boat.measures, boat.measures.notch or {}
        sorts["in mm"] += boat.plan.unit == "mm"
        sorts["bow radius"] += deck.radius > 0
        sorts["bow clip"] += deck.clip > 0
        sorts["taper with radius"] += deck.taper is not None and deck.radius > 0
        sorts["taper with clip"] += deck.taper is not None and deck.clip > 0
        sorts["notch"] += bool(notch)
        sorts["inside radius"] += "inside_radius" in notch
        sorts["stern radius"] += "stern_radius" in notch
        sorts["round opening"] += any("round" in spec for spec in deck.openings)
        sorts["rectangular opening"] += any("rectangle" in spec for spec in deck.openings)
        sorts["split board"] += any(panel.label.endswith("P") for panel in boat.plan.panels)
    assert len(boats) == COMPARED
    assert min(sorts.values()) >= 10, sorts


def test_outlines_are_the_same(boats: list[Boat]) -> None:
    for boat in boats:
        ours = shape(boat.plan.outline)
        assert ours.is_valid and ours.exterior.is_ccw
        assert ours.symmetric_difference(boat.outline).area <= boat.slack
        assert boat.plan.outline.area == pytest.approx(boat.outline.area, abs=boat.slack)


def test_panels_are_the_strips_of_the_deck(boats: list[Boat]) -> None:
    for boat in boats:
        for board in boat.plan.layouts[0].boards:
            panels = [panel for panel in boat.plan.panels if panel.board == board.number]
            pieces = parts(boat.strip(board))
            assert len(panels) == len(pieces), boat.plan.job
            for panel, piece in zip(panels, pieces):
                ours = polygon(panel)
                assert len(ours.interiors) == len(piece.interiors)
                assert ours.symmetric_difference(piece).area <= boat.slack, (panel, boat.plan.job)
                assert panel.area == pytest.approx(piece.area, abs=boat.slack)
                assert ours.bounds == pytest.approx(piece.bounds, abs=2 * TOLERANCE[boat.plan.unit])


def test_panels_gaps_and_openings_tile_the_deck(boats: list[Boat]) -> None:
    for boat in boats:
        seams, finish = boat.plan.seams, boat.plan.layouts[0].finish
        gaps = [box(seam.fore, -1, seam.aft, FAR) for seam in seams] + [box(finish, -1, boat.measures.length, FAR)]
        rest = [gap.intersection(boat.outline) for gap in gaps if gap.area > 0]
        tiles = [polygon(panel) for panel in boat.plan.panels] + rest + [opening(spec) for spec in boat.measures.openings]
        whole = unary_union(tiles)
        assert whole.symmetric_difference(boat.outline).area <= boat.slack
        # No two of them lie over one another.
        assert sum(tile.area for tile in tiles) - whole.area <= boat.slack
