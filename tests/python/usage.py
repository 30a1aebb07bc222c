"""The package as a typed program uses it: read by ``mypy --strict``, and run."""

from pathlib import Path

import deck_py


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


def corners(plan: deck_py.Plan) -> int:
    """How many corners the panels' edges have, arcs as chords."""
    return sum(len(panel.__geo_interface__["coordinates"][0]) - 1 for panel in plan.panels)
