"""What the workbook has to show of a plan, read off the plan's document field by field."""


def seams(plan):
    found = []
    for seam in plan["layouts"][0]["seams"]:
        row = [seam["number"], seam["member"], seam["fore"], seam["fore_text"], seam["aft"]]
        found.append(tuple(row + [seam["bearing_fore_text"], seam["bearing_aft_text"], seam["length"]]))
    return found


def boards(plan):
    names = ("label", "length", "width", "length_text", "width_text", "diagonal", "area", "weight_lb")
    return [tuple(panel[name] for name in names) for panel in plan["panels"]]


def to_buy(plan):
    found = []
    for line in plan["takeoff"]["lines"]:
        needed = line["needed"].get("amount_text", line["needed"]["amount"])
        found.append((line["item"].replace("-", " ").capitalize(), line["description"], "", "", line["buy"], line["unit"], needed, ""))
    return found


def fasteners(plan):
    line = next(line for line in plan["takeoff"]["lines"] if line["item"] == "fastener")
    placed = plan["fasteners"]
    amounts = (line["needed"]["amount"], line["spare"]["amount"], line["buy"], line["holds"]["amount"])
    assert placed["edge_count"] + placed["field_count"] == line["needed"]["amount"]
    return [(line["description"], *amounts, placed["edge_count"], placed["field_count"])]


def strength(plan):
    if "panels" not in plan["span"]:
        return [(plan["span"]["no_figure"], "", "", "", "", "", "", "")]
    found = []
    for panel in plan["span"]["panels"]:
        table, beam = panel["table"], panel["beam"]
        ways = (table["allowable_psf"], table["governing"], beam["allowable_psf"], beam["governing"])
        found.append((panel["panel"], panel["axis"], *ways, table["utilisation"], beam["utilisation"]))
    return found


def cautions(plan):
    return [(one["text"], "; ".join(one["about"]), one["defers_to"]) for one in plan["cautions"] if one["source"] == "plan"]


def assumed(plan):
    return [(one["setting"], one["value"], one["source"]) for one in plan["assumed"]]


def figures(plan):
    """Single figures by their labels on Results."""
    seams_there = plan["layouts"][0]["seams"]
    bearings = [(seam[side], seam[side + "_text"]) for seam in seams_there for side in ("bearing_fore", "bearing_aft")]
    square = plan["deck"]["checks"]["square"]
    sheets = [line["buy"] for line in plan["takeoff"]["lines"] if line["item"] == "sheet"]
    return {
        "Boards": len(plan["panels"]),
        "Seams": len(seams_there),
        "Least bearing": min(bearings)[1],
        "Sheets to buy": sum(sheets),
        "Fewest sheets proven": "yes" if plan["sheets"]["proven"] else "no",
        "Fasteners": plan["fasteners"]["count"],
        "New boards weigh, lb, dry": plan["takeoff"]["deck_weight_lb"],
        "Diagonal to check": square["diagonal_text"],
        "Diagonals may differ by": square["difference_text"],
        "Cautions": len(cautions(plan)),
    }
