"""One line of figures from a plan."""

from typing import Any

from ._deck import Plan

# Floats in every row, also where they are whole: a column is of one type.
_REAL = ("unevenness", "seam_length", "cost", "weight_lb")
_COST = ("short_seams", "narrow_boards", "ripped_boards", "unevenness", "seam_length")
SUMMARY = (
    *("name", "unit", "boards", *_COST, "panels", "fasteners", "sheets", "unplaced", "cost", "cost_in", "proven"),
    *("weight_lb", "cautions", "no_layout"),
)
"""The names of a summary's figures."""


def summary(plan: Plan) -> dict[str, Any]:
    """A plan in one line of figures: the columns of a study.

    Parameters
    ----------
    plan : Plan
        The plan.

    Returns
    -------
    dict
        ``name``, ``unit``; of the best layout ``boards``, ``short_seams``, ``narrow_boards``, ``ripped_boards``,
        ``unevenness`` and ``seam_length`` (lengths in ``unit``); counts of ``panels``, ``fasteners`` and ``sheets``; panels
        ``unplaced``; ``cost`` of the sheets and what it is counted in, ``cost_in``; whether sheets and cost are ``proven``;
        ``weight_lb`` of the new boards; how many ``cautions`` this job triggered; and ``no_layout``, the reason why there is
        none, with None for all that follows from one. A deck that is patched has no layout of its own.

    Examples
    --------
    >>> import deck_py
    >>> job = {
    ...     "schema": 1, "name": "Sandpiper", "unit": "in",
    ...     "deck": {"length": "20 ft", "beam": 96},
    ...     "frame": {"measured_to": "centre", "flange": 2, "regular": {"first": 0, "last": 240, "spacing": 24}},
    ...     "stock": [{"label": "3/4 ply", "length": 96, "width": 48, "thickness": "3/4", "price": 62.5}],
    ...     "gap": 0,
    ... }
    >>> figures = deck_py.summary(deck_py.plan(job))
    >>> figures["boards"], figures["seam_length"], figures["sheets"], figures["cost"]
    (5, 384.0, 5, 312.5)
    """
    figures: dict[str, Any] = dict.fromkeys(SUMMARY)
    whole = plan.to_dict()
    figures |= {"name": whole["job"]["name"], "unit": plan.unit}
    figures["cautions"] = sum(caution["source"] == "plan" for caution in whole["cautions"])
    if whole["no_layout"] is not None:
        return figures | {"no_layout": whole["no_layout"]["reason"]}
    nest = whole["sheets"]
    for best in whole["layouts"][:1]:
        figures |= {name: best["cost"][name] for name in _COST} | {"boards": len(best["boards"])}
    figures |= {name: nest[name] for name in ("cost", "cost_in", "proven") if name in nest}
    figures |= {
        "panels": len(whole["panels"]),
        "fasteners": whole["fasteners"]["count"],
        "sheets": nest["sheet_count"],
        "unplaced": sum(part["count"] for part in nest["unplaced"]),
        "weight_lb": whole["takeoff"]["deck_weight_lb"],
    }
    return figures | {name: float(figures[name]) for name in _REAL if figures[name] is not None}


# Known by its public name, in tracebacks and in pickles.
summary.__module__ = "deck_py"
