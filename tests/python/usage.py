"""The package as a typed program uses it: read by ``mypy --strict``, and run."""

from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import deck_py
from deck_py.types import GivenBeamLoad, GivenPart, GivenPlateLoad, GivenSheet, GivenSupport


def order(job: Path) -> list[str]:
    """A line for each thing to buy; the reason where there is nothing to buy."""
    plan: deck_py.Plan = deck_py.plan(job)
    if plan.takeoff is None:
        return [plan.no_layout.reason] if plan.no_layout else []
    return [f"{line.buy} {line.unit} {line.description}" for line in plan.takeoff.lines]


def stations(job: dict[str, object]) -> list[float]:
    """Where the seams lie, or nothing where the job is wrong."""
    try:
        return [seam.fore for seam in deck_py.plan(job).seams]
    except deck_py.DeckError as error:
        faults: list[str] = [f"{fault.pointer} {fault.message}" for fault in error.errors]
        assert faults and error.pointer == error.errors[0].pointer
        return []


def sheets_for(lids: int, told: list[float]) -> int:
    """How many sheets so many lids take; how far the search was each time it told."""

    def look(progress: deck_py.Progress) -> bool:
        told.append(progress.done / progress.of)
        return not progress.proven

    parts: list[GivenPart] = [{"label": "lid", "length": Fraction(49, 2), "width": "16", "count": lids, "grain": "length"}]
    stock: list[GivenSheet] = [{"label": "4 x 8", "length": 96, "width": 48, "price": Decimal("62.50")}]
    nest: deck_py.Nest = deck_py.nest(parts, stock, kerf="1/8", stages=2, keep=(24, 12), effort=10_000, progress=look)
    return nest.sheet_count


def lids_from_a_rest() -> int:
    """How many lids an offcut gives."""
    rest: GivenSheet = {"label": "rest", "length": 40, "width": Decimal("24.5")}
    fill: deck_py.Fill = deck_py.fill(rest, [{"label": "lid", "length": 19, "width": "1 ft", "count": None}], kerf="1/8")
    return len(fill.placements)


def sags() -> tuple[bool, bool]:
    """Whether a board sinks under a heel, as a beam and as a plate, by less than its limit."""
    limits = deck_py.span_limits({"ei": 115_000, "mr": 655, "fs": 300}, 24, axis="along", spans=2)
    point: GivenBeamLoad = {"kind": "point", "at": 12, "value": 200}
    beam: deck_py.Beam = deck_py.beam([24, 24], [point], stiffness=limits["capacity"]["ei"])
    members: list[GivenSupport] = [{"kind": "along", "y": y} for y in (0, 24, 48)]
    heel: GivenPlateLoad = {"kind": "patch", "at": (51, 12), "size": (3, 3), "value": 200}
    plate: deck_py.Plate = deck_py.plate(102, 48, dx=9583, dy=29583, torsion=8000, supports=members, loads=[heel])
    sinks = beam.deflection_at(12)
    state = plate.at(51, 12)
    return sinks is not None and 0 < sinks < 1, state is not None and 0 < state.deflection < 1


def rows(stations: list[float]) -> int:
    """How many rows of fasteners a deck with seams at these stations has, from seams to fasteners."""
    frame = {"measured_to": "centre", "flange": 2, "regular": {"first": 0, "last": 240, "spacing": 24}}
    sheet: GivenSheet = {"label": "4 x 8", "length": 96, "width": 48}
    found: deck_py.SeamLayouts = deck_py.seams(frame, Fraction(240), sheet, gap=0)
    if found.no_layout is not None:
        raise ValueError(found.no_layout.reason)
    best: deck_py.SeamLayout = found[0]
    assert best.stations == stations
    panels: list[deck_py.Panel] = deck_py.panels({"length": 240, "beam": 96}, best, thickness="3/4")
    fastening: deck_py.Fastening = deck_py.fasteners(panels, frame)
    return len(fastening.rows)


def corners(plan: deck_py.Plan) -> int:
    """How many corners the panels' edges have, arcs as chords."""
    return sum(len(panel.__geo_interface__["coordinates"][0]) - 1 for panel in plan.panels)
