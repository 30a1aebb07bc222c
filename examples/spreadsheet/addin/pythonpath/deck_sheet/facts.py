"""Single figures of a plan, by the words in which a person asks for them."""

from . import tables


def _first(plan):
    return plan["layouts"][0] if plan["layouts"] else None


def _order_lines(plan, item):
    takeoff = plan["takeoff"]
    return [line for line in takeoff["lines"] if line["item"] == item] if takeoff else []


def _layout(plan):
    return tables.no_layout(plan) or f"{len(plan['panels'])} boards, {len(_first(plan)['seams'])} seams"


FACTS = {
    "boat": lambda plan: plan["job"]["name"],
    "layout": _layout,
    "boards": lambda plan: len(plan["panels"]),
    "seams": lambda plan: len(_first(plan)["seams"]) if _first(plan) else 0,
    "least bearing": lambda plan: _least_bearing(plan),
    "sheets": lambda plan: sum(line["buy"] for line in _order_lines(plan, "sheet")),
    "sheets cost": lambda plan: tables.blank(plan["takeoff"]["sheets_cost"] if plan["takeoff"] else None),
    "order proven": lambda plan: _yes(plan["sheets"] and plan["sheets"]["proven"]),
    "fasteners": lambda plan: plan["fasteners"]["count"] if plan["fasteners"] else 0,
    "weight": lambda plan: tables.blank(plan["takeoff"]["deck_weight_lb"] if plan["takeoff"] else None),
    "area": lambda plan: plan["deck"]["area"],
    "length": lambda plan: plan["deck"]["length"],
    "beam": lambda plan: plan["deck"]["beam"],
    "diagonal": lambda plan: plan["deck"]["checks"]["square"]["diagonal_text"],
    "diagonals differ at most": lambda plan: plan["deck"]["checks"]["square"]["difference_text"],
    "members": lambda plan: len(plan["frame"]),
    "cautions": lambda plan: len(tables.cautions(plan)),
    "version": lambda plan: plan["version"],
}


def _least_bearing(plan):
    if not _first(plan) or not _first(plan)["seams"]:
        return ""
    sides = [(seam[f"bearing_{side}"], seam[f"bearing_{side}_text"]) for seam in _first(plan)["seams"] for side in ("fore", "aft")]
    return min(sides)[1]


def _yes(value):
    return "yes" if value else "no"


def fact(plan, name):
    """A figure, or None where the word is not known."""
    found = FACTS.get(name.strip().lower())
    return None if found is None else found(plan)
