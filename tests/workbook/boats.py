"""Demo jobs, typed into the workbook's cells as a person would."""

import json
import pathlib

ROOT = pathlib.Path(__file__).resolve().parents[2]
JOBS = ROOT / "examples/jobs"
PLANNED = ("plain-20", "narrow-28", "uneven-22")
NOT_LAID_OUT = "missed-member-20"

# What stands in the job file in another form than in cells.
HANDLED = ("schema",)


def job(name):
    """A demo job as plain data."""
    return json.loads((JOBS / f"{name}.json").read_text())


def type_in(workbook, document):
    """Types a job into an empty workbook; nothing of the job is left out."""
    from deck_sheet import fields

    left = Left(document)
    labelled(workbook, "Boat", fields.BOAT, left, bow_cells(document, left))
    labelled(workbook, "Settings", fields.SETTINGS, left, point_cells(document, left))
    for name, table in (
        ("Members", fields.MEMBERS),
        ("Openings", fields.OPENINGS),
        ("KeepClear", fields.KEEP_CLEAR),
        ("Stock", fields.SHEETS),
        ("Parts", fields.EXTRA_PARTS),
    ):
        rows(workbook, name, table, left)
    assert not left.paths(), f"not typed in: {left.paths()}"


class Left:
    """The values of a job that are not typed in yet, by their paths."""

    def __init__(self, document):
        self._values = dict(leaves(document))
        for name in HANDLED:
            self._values.pop((name,), None)

    def take(self, path):
        return self._values.pop(tuple(path), None)

    def paths(self):
        return sorted(map(str, self._values))


def leaves(node, path=()):
    if isinstance(node, dict):
        for name, inner in node.items():
            yield from leaves(inner, (*path, name))
    elif isinstance(node, list):
        for index, inner in enumerate(node):
            yield from leaves(inner, (*path, index))
    else:
        yield path, node


def bow_cells(document, left):
    bow = document["deck"].get("bow", {})
    for kind, word in (("radius", "rounded"), ("clip", "clipped")):
        if kind in bow:
            return {"Bow corners": word, "Bow corner size": left.take(("deck", "bow", kind))}
    return {}


def point_cells(document, left):
    cells = {}
    for index, point in enumerate(document.get("span", {}).get("points", ())):
        left.take(("span", "points", index, "preset"))
        cells[f"{point['preset'].capitalize()}, pounds"] = left.take(("span", "points", index, "force", "pounds"))
    return cells


def labelled(workbook, name, known, left, special):
    """Types values beside their labels."""
    area = workbook.NamedRanges.getByName(name).getReferredCells()
    by_label = {one.label: special.get(one.label, left.take(one.path)) for one in known}
    for row, (label, *_) in enumerate(area.getDataArray()):
        if by_label.get(label) is not None:
            put(area.getCellByPosition(1, row), by_label[label])


def rows(workbook, name, table, left):
    """Types a list of things into the rows below the headings."""
    area = workbook.NamedRanges.getByName(name).getReferredCells()
    for index in range(area.Rows.getCount() - 1):
        for column, one in enumerate(table.columns):
            for path in paths(table, one, index):
                value = left.take(path)
                if value is not None:
                    put(area.getCellByPosition(column, index + 1), value)


def paths(table, column, index):
    """Where a column's value may stand in the job: in an opening, inside its shape."""
    base = (*table.path, index)
    yield (*base, *column.path)
    if table.name == "Openings":
        yield (*base, "round", *column.path)
        yield (*base, "rectangle", *column.path)


def put(cell, value):
    """Types into a cell: cells of numbers keep numbers, the others what was typed."""
    if isinstance(value, bool):
        cell.setString("yes" if value else "no")
    elif isinstance(value, (int, float)) and "number" in cell.CellStyle:
        cell.setValue(value)
    else:
        cell.setString(str(value))
