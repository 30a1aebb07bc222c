"""The ranges of a sheet, as one job: what they say, and where each field of it stands."""

import json

from . import cells, fields

SCHEMA = 1
POINTS = ("heel", "pedestal", "jack")
ROUNDED, CLIPPED, SQUARE = ("rounded", "round", "radius"), ("clipped", "clip"), ("square", "")


class Form:
    """A request in the making: a document, the place on the sheet of each of its fields, and what is wrong already."""

    def __init__(self, document):
        self.document = document
        self.places = {}
        self.faults = []

    def put(self, path, value, place):
        """Puts a value where the path leads; objects on the way are made."""
        pointer, here = "", self.document
        for step, following in zip(path, path[1:] + (None,)):
            pointer += f"/{step}"
            self.places.setdefault(pointer, place)
            if following is None:
                value_there = value
            else:
                value_there = [] if isinstance(following, int) else {}
            if isinstance(here, list):
                here.extend([None] * (step + 1 - len(here)))
                if here[step] is None:
                    here[step] = value_there
                here = here[step]
            else:
                here = here.setdefault(step, value_there)
        self.places[pointer] = place

    def take(self, path):
        """Takes a value of the first floor out again."""
        return self.document.pop(path, "")

    def labelled(self, range_name, rows, known):
        """Reads a range of two columns, labels and values; further columns are notes."""
        by_label = {one.label.lower(): one for one in known}
        for row in rows:
            label, value = row[0], row[1] if len(row) > 1 else ""
            one = by_label.get(cells.text(label).rstrip(":").lower())
            if one is not None and not cells.is_empty(value):
                self.put(one.path, one.read(value), one.label)
            elif one is None and not cells.is_empty(label) and not cells.is_empty(value):
                self.faults.append((range_name, f'"{label}" is not a label that is known here.'))
        self.known(known)

    def known(self, known):
        """Every field has its place, also the ones that nothing is said of."""
        for one in known:
            self.places.setdefault("/" + "/".join(str(step) for step in one.path), one.label)

    def table(self, table, rows, shape=None):
        """Reads a range with headings; rows with nothing in them are passed over."""
        columns, rows = self._columns(table, rows)
        things = [(number, row) for number, row in enumerate(rows, 1) if not all(map(cells.is_empty, row))]
        for index, (number, row) in enumerate(things):
            place = f"{table.name}, row {number}"
            form = Form({})
            for column, cell in zip(columns, row):
                if column is not None and not cells.is_empty(cell):
                    form.put(column.path, column.read(cell), f"{place}, {column.label.lower()}")
            for column in table.columns:
                form.places.setdefault("/" + "/".join(column.path), f"{place}, {column.label.lower()}")
            if shape is not None:
                shape(form, place)
            self.put(table.path + (index,), form.document, place)
            base = "/" + "/".join(table.path) + f"/{index}"
            self.places.update({base + pointer: said for pointer, said in form.places.items()})
            self.faults.extend(form.faults)
        self.places.setdefault("/" + "/".join(table.path), table.name)

    def _columns(self, table, rows):
        """The field of each column, and the rows below the headings. One column without a heading is the first field."""
        if not rows:
            return [], []
        by_label = {one.label.lower(): one for one in table.columns}
        headings = [cells.text(cell).lower() for cell in rows[0]]
        columns = [by_label.get(heading) for heading in headings]
        if any(columns):
            for heading, column in zip(rows[0], columns):
                if column is None and not cells.is_empty(heading) and cells.text(heading).lower() not in ("no.", "row"):
                    known = ", ".join(one.label for one in table.columns)
                    self.faults.append((table.name, f'The heading "{heading}" is not known. Headings are: {known}.'))
            return columns, rows[1:]
        if len(rows[0]) == 1:
            return [table.columns[0]], rows
        known = ", ".join(one.label for one in table.columns)
        self.faults.append((table.name, f"The first row has no heading that is known. Headings are: {known}."))
        return [], []

    @property
    def text(self):
        """The document as text: the same for the same cells."""
        return json.dumps(self.document)


def form(boat, members, sheets, openings=(), keep_clear=(), settings=(), parts=()):
    """The form of a whole job."""
    made = Form({"schema": SCHEMA})
    made.places["/deck/bow"] = "Bow corner size"
    made.labelled("Boat", boat, fields.BOAT)
    made.labelled("Settings", settings, fields.SETTINGS)
    made.table(fields.MEMBERS, members)
    made.table(fields.SHEETS, sheets)
    made.table(fields.OPENINGS, openings, opening)
    made.table(fields.KEEP_CLEAR, keep_clear)
    made.table(fields.EXTRA_PARTS, parts)
    bow(made)
    points(made)
    for part in ("deck", "frame"):
        made.document.setdefault(part, {})
    return made


def bow(made):
    """Two cells say how the bow corners are cut; in the job it is one of two fields."""
    how, size = made.take("bow-corners"), made.take("bow-size")
    if how in SQUARE:
        if not cells.is_empty(size):
            made.faults.append(("Bow corners", "A size is given for them: say rounded or clipped."))
    elif how not in ROUNDED + CLIPPED:
        made.faults.append(("Bow corners", f'"{how}" is not known here. They are square, rounded or clipped.'))
    elif cells.is_empty(size):
        made.faults.append(("Bow corner size", f"Bow corners are {how}: give their size."))
    else:
        made.put(("deck", "bow", "radius" if how in ROUNDED else "clip"), size, "Bow corner size")


def points(made):
    """Each load on a small place has a cell of its own; in the job they are a list."""
    given = [(name, made.take(name)) for name in POINTS]
    given = [(name, pounds) for name, pounds in given if not cells.is_empty(pounds)]
    for index, (name, pounds) in enumerate(given):
        place = f"{name.capitalize()}, pounds"
        made.put(("span", "points", index, "preset"), name, place)
        made.put(("span", "points", index, "force", "pounds"), pounds, place)


def opening(form, place):
    """A row with a diameter is a round hole; any other is a rectangle."""
    found = form.document
    shape = "round" if "diameter" in found else "rectangle"
    if shape == "round" and any(name in found for name in ("depth", "width", "corner_radius")):
        form.faults.append((place, "A round opening has a diameter and no other sizes."))
    names = ("x", "y", "diameter") if shape == "round" else ("x", "y", "depth", "width", "corner_radius")
    sizes = {name: found.pop(name) for name in ("x", "y", "diameter", "depth", "width", "corner_radius") if name in found}
    found[shape] = {name: size for name, size in sizes.items() if name in names}
    for name in names:
        form.places[f"/{shape}/{name}"] = form.places.pop(f"/{name}")
    form.places[f"/{shape}"] = place
