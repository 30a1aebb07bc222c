"""What each function answers. Whatever goes wrong comes back as text in the first cell, never as an error of the sheet."""

import functools

from . import cells, facts, faults, fields, job, library, plans, tables

_RANGES = 7
# The rows of each table, and how many columns they have: a block always has that many, also where it is blank or holds a
# message, because a spreadsheet repeats a single cell all over the range of an array formula.
_TABLES = {
    "seams": (tables.seams, 8),
    "panels": (tables.panels, 8),
    "sheets": (tables.sheets, 7),
    "fasteners": (tables.fasteners, 7),
    "costs": (tables.take_off, 7),
    "strength": (tables.strength, 8),
    "cautions": (tables.cautions, 3),
    "assumed": (tables.assumed, 3),
}
_MESSAGE_COLUMNS, _NEST_COLUMNS = 2, 8
_NEED_NO_BOARDS = ("cautions", "assumed")


@functools.cache
def desk():
    """The library and its plans: one for the whole office, made when the first formula asks."""
    return plans.Desk(library.beside_the_add_in())


def of_plan(name, arguments):
    """The rows of a table of the plan."""
    ranges, rows = arguments[:_RANGES], arguments[_RANGES]
    table, columns = _TABLES[name]

    def work():
        plan = desk().plan(ranges).facts
        why = None if name in _NEED_NO_BOARDS else tables.no_layout(plan)
        return [[why]] if why else table(plan)

    return block(work, rows, columns)


def messages(arguments):
    """What is wrong or missing; and why there is no layout."""
    ranges, rows = arguments[:_RANGES], arguments[_RANGES]

    def work():
        try:
            why = tables.no_layout(desk().plan(ranges).facts)
        except plans.NotPlanned as stopped:
            return [list(fault) for fault in stopped.faults]
        return [["Layout", why]] if why else []

    return block(work, rows, _MESSAGE_COLUMNS)


def fact(name, ranges):
    """One figure of the plan."""

    def work():
        asked = cells.text(cells.plain(name)).lower()
        if asked == "faults":
            return fault_count(ranges)
        found = facts.fact(desk().plan(ranges).facts, asked)
        return f'"{name}" is no figure of a plan. Figures are: {", ".join(facts.FACTS)}, faults.' if found is None else found

    return single(work)


def fault_count(ranges):
    try:
        desk().plan(ranges)
    except plans.NotPlanned as stopped:
        return len(stopped.faults)
    return 0


def span_limit(series, rating, spacing, axis, spans, wet, figure, unit):
    """What a panel carries over a spacing."""

    def work():
        request = {
            "panel": {"series": said(series), "rating": said(rating)},
            "spacing": cells.plain(spacing),
            "axis": cells.word(given(axis, "along")),
            "spans": cells.number(given(spans, 3)),
            "wet": cells.yes(given(wet, True)),
            "unit": cells.word(given(unit, "in")),
        }
        answer = desk().deck.ask("span_limits", request)
        return of_limits(answer, cells.text(given(figure, "allowable")).lower())

    return single(work)


def of_limits(answer, figure):
    """A figure of the limits by its name."""
    governing = answer["governing"]
    named = {"allowable": answer[governing], "governing": governing, "source": answer["source"][governing]}
    if figure in named:
        return named[figure]
    if figure in answer["source"]:
        return answer[figure]
    return f'"{figure}" is no figure of the limits. Figures are: allowable, deflection, bending, shear, governing, source.'


def length(value, unit):
    """A length as a number."""
    return single(lambda: read_length(value, unit)["length"])


def fraction(value, unit, finest, feet):
    """A length as the shop writes it."""
    return single(lambda: read_length(value, unit, finest, feet)["text"])


def read_length(value, unit, finest=None, feet=None):
    request = {"length": cells.plain(value), "unit": cells.word(given(unit, "in"))}
    if given(finest, "") != "":
        request["fractions"] = cells.number(cells.plain(finest))
    if given(feet, "") != "":
        request["feet"] = cells.yes(cells.plain(feet))
    return desk().deck.ask("length", request)


def nest(parts, stock, kerf, trim, unit, rows):
    """Parts laid on sheets."""

    def work():
        form = job.Form({})
        form.table(fields.NEST_PARTS, cells.grid(parts))
        form.table(fields.NEST_STOCK, cells.grid(stock))
        form.document.update(kerf=given(kerf, 0), trim=given(trim, 0), unit=cells.word(given(unit, "in")))
        for sheet in form.document.get("stock", []):
            sheet.pop("thickness", None)
        if form.faults:
            raise plans.NotPlanned(faults.told(form))
        try:
            return tables.nest(desk().deck.ask("nest", form.document))
        except library.Refused as refused:
            raise plans.NotPlanned(faults.told(form, refused.faults)) from refused

    return block(work, rows, _NEST_COLUMNS)


def version():
    """Which library answers."""
    return single(lambda: f"deck {library.built.VERSION}, border {library.built.ABI}" if desk() else "")


def said(value):
    """A text as it stands; a whole number as its digits."""
    return cells.text(cells.plain(value))


def given(value, default):
    """An argument, or what holds without it."""
    cell = cells.plain(value)
    return default if cells.is_empty(cell) else cell


def single(work):
    """One cell: what the work gives, or why it gives nothing."""
    try:
        value = work()
    except Exception as problem:  # every failure becomes text in the cell
        return why(problem)
    return float(value) if isinstance(value, int) else value


def block(work, rows, columns):
    """Rows of so many cells; as many rows as were asked for."""
    try:
        made, wanted = work(), rows_asked(rows)
    except Exception as problem:  # every failure becomes text in the first cell
        made, wanted = [[why(problem)]], rows_or_none(rows)
    return squared(made, wanted, columns)


def rows_asked(rows):
    """How many rows are wanted: None for as many as there are."""
    cell = cells.plain(rows)
    if cells.is_empty(cell):
        return None
    if not isinstance(cell, int) or not 1 <= cell <= 10000:
        raise ValueError(f"Rows: {cell} is no number of rows. It is a whole number from 1 to 10000.")
    return cell


def rows_or_none(rows):
    try:
        return rows_asked(rows)
    except ValueError:
        return None


def squared(made, wanted, columns):
    """Rows filled up with blanks to so many columns, and to the number of rows that is wanted."""
    made = made or [[""]]
    if wanted is not None and len(made) > wanted:
        made = made[: wanted - 1] + [[f"and {len(made) - wanted + 1} more"]]
    made = made + [[]] * ((wanted or 0) - len(made))
    return tuple(tuple(shown(cell) for cell in list(row) + [""] * (columns - len(row))) for row in made)


def shown(cell):
    """Numbers are handed over as such, everything else as text."""
    if isinstance(cell, (int, float)) and not isinstance(cell, bool):
        return float(cell)
    return "" if cell is None else str(cell)


def why(problem):
    """What went wrong, in words for a cell."""
    if isinstance(problem, plans.NotPlanned):
        more = len(problem.faults) - 1
        return faults.line(problem.faults[0]) + (f" (and {more} more)" if more else "")
    if isinstance(problem, library.Refused):
        pointer, sentence = problem.faults[0]
        where = pointer.strip("/").replace("/", ", ").replace("_", " ").capitalize()
        return faults.line((where, faults.sentence(sentence)))
    if isinstance(problem, (library.Stale, ValueError, OSError)):
        return str(problem)
    return f"The add-in failed: {type(problem).__name__}: {problem}"
