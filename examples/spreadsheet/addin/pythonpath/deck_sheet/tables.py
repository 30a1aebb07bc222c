"""A plan's parts as rows of cells. Lengths are numbers in the job's unit; where a column says so, as the shop writes them."""


def no_layout(plan):
    """Why there are no boards, as a row; nothing where there are."""
    reason = plan["no_layout"]
    if plan["layouts"]:
        return None
    mend = " ".join(reason["mend"]) if reason else ""
    return f"No layout. {reason['reason'] if reason else ''} {mend}".strip()


def seams(plan):
    """Seam, member, station where the board forward of it ends, the same as written, where the next begins, bearing
    forward and aft as written, length."""
    return [
        [
            seam["number"],
            seam["member"],
            seam["fore"],
            seam["fore_text"],
            seam["aft"],
            seam["bearing_fore_text"],
            seam["bearing_aft_text"],
            seam["length"],
        ]
        for seam in plan["layouts"][0]["seams"]
    ]


def panels(plan):
    """Panel, length athwart, width fore and aft, both as written, diagonal, area, weight in pounds."""
    return [
        [
            panel["label"],
            panel["length"],
            panel["width"],
            panel["length_text"],
            panel["width_text"],
            panel["diagonal"],
            panel["area"],
            panel["weight_lb"],
        ]
        for panel in plan["panels"]
    ]


def take_off(plan, items=None):
    """The lines of the take-off that are of those items: item, description, buy, unit, needed as written, price, cost."""
    lines = plan["takeoff"]["lines"]
    return [
        [
            line["item"].replace("-", " ").capitalize(),
            line["description"],
            line["buy"],
            line["unit"],
            amount(line["needed"]),
            blank(line["price"]),
            blank(line["cost"]),
        ]
        for line in lines
        if items is None or line["item"] in items
    ]


def sheets(plan):
    """The sheets to buy, in the columns of the take-off."""
    return take_off(plan, ("sheet",))


def fasteners(plan):
    """Kind, needed, spare, boxes, fasteners in a box; of the needed, along edges and in the field."""
    placed = plan["fasteners"]
    return [
        [
            line["description"],
            line["needed"]["amount"],
            line["spare"]["amount"],
            line["buy"],
            line["holds"]["amount"],
            placed["edge_count"],
            placed["field_count"],
        ]
        for line in plan["takeoff"]["lines"]
        if line["item"] == "fastener"
    ]


def strength(plan):
    """Panel, axis, psf by the tables, what governs there, psf by the beam on its real bearings, what governs there, use
    of the load by the tables and by the beam."""
    found = plan["span"]
    if "panels" not in found:
        return [[found.get("no_figure", "")]]
    return [[panel["panel"], panel["axis"], *of_way(panel, "table"), *of_way(panel, "beam"), *used(panel)] for panel in found["panels"]]


def of_way(panel, way):
    check = panel.get(way) or {}
    return [blank(check.get("allowable_psf")), check.get("governing") or check.get("no_figure") or ""]


def used(panel):
    return [blank((panel.get(way) or {}).get("utilisation")) for way in ("table", "beam")]


def cautions(plan):
    """What the plan cautions about: the text, what it is about, and what it defers to."""
    triggered = [one for one in plan["cautions"] if one["source"] == "plan"]
    return [[one["text"], "; ".join(one["about"]), one["defers_to"]] for one in triggered]


def assumed(plan):
    """The defaults that were taken and that no source settles: setting, value, source."""
    return [[one["setting"], one["value"], one["source"]] for one in plan["assumed"]]


def nest(answer):
    """Sheet number, stock, part, place of its corner along and across the sheet, its extents there, turned or not."""
    rows = []
    for number, sheet in enumerate(answer["sheets"], 1):
        for part in sheet["placements"]:
            turned = "turned" if part["turned"] else ""
            rows.append([number, sheet["stock"], part["part"], part["x"], part["y"], part["length"], part["width"], turned])
    for part in answer["unplaced"]:
        rows.append(["none", "", part["part"], "", "", "", "", f"{part['count']} not placed: {part['why']}"])
    return rows


def amount(measure):
    """A count as a number, any other measure as written."""
    return measure.get("amount_text", measure["amount"])


def blank(value):
    return "" if value is None else value
