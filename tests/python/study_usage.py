"""A study as a typed program uses it: read by ``mypy --strict``, and run."""

from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import Any

import deck_py


def seam_cost(plan: deck_py.Plan) -> dict[str, Any]:
    """Figures of our own beside the usual."""
    figures = deck_py.summary(plan)
    return figures | {"seam_feet": figures["seam_length"] / 12}


def cheapest(job: dict[str, Any], file: Path) -> tuple[dict[str, Any], list[int]]:
    """The variant whose sheets cost least, and how far the study was each time it told."""
    told: list[int] = []

    def look(progress: deck_py.StudyProgress) -> bool:
        told.append(progress.done - progress.failed)
        return progress.of is None or progress.done <= progress.of

    changes: dict[str | tuple[str, ...], list[Any]] = {"/gap": [0, "1/8"]}
    changes["/stock/0/width", "/stock/0/price"] = [(48, 62), (60, 90)]
    tried: deck_py.Variants = deck_py.variants(job, changes)
    with ThreadPoolExecutor(2) as pool:
        study: deck_py.Study = deck_py.study(tried, executor=pool, progress=look, take=seam_cost, file=file)
        columns: dict[str, list[Any]] = study.columns()
    best = columns["cost"].index(min(columns["cost"]))
    return {name: values[best] for name, values in columns.items()}, told


def boards(jobs: Iterator[deck_py.Variant]) -> list[int]:
    """Row by row."""
    return [row["boards"] for row in deck_py.study(jobs)]
