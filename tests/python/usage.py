"""The package as a typed program uses it: read by ``mypy --strict``, and run."""

from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import deck_py
from deck_py.types import GivenPart, GivenSheet


def order(job: Path) -> list[str]:
    """A line for each thing to buy; the reason where there is nothing to buy."""
    plan: deck_py.Plan = deck_py.plan(job)
    if plan.takeoff is None:
        return [plan.no_layout["reason"]] if plan.no_layout else []
    return [f"{line['buy']} {line['unit']} {line['description']}" for line in plan.takeoff["lines"]]


def stations(job: dict[str, object]) -> list[float]:
    """Where the seams lie, or nothing where the job is wrong."""
    try:
        return [seam["fore"] for seam in deck_py.plan(job).seams]
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


def corners(plan: deck_py.Plan) -> int:
    """How many corners the panels' edges have, arcs as chords."""
    return sum(len(panel.__geo_interface__["coordinates"][0]) - 1 for panel in plan.panels)
