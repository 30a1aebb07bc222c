"""The sheet that the tape fills: the boat, its members, openings and zones."""

from deck_sheet import cells, fields

from . import styles
from .pages import ACROSS
from .pen import Pen

NAME = "Measurements"
MEMBER_ROWS, OPENING_ROWS, ZONE_ROWS, PART_ROWS, MESSAGE_ROWS = 30, 12, 6, 6, 5

MESSAGES_ROW = 4
TOP = 11
LABELS, VALUES, NUMBERS, TABLES = 0, 1, 3, 4
LAST_COLUMN = TABLES + 9
OPENINGS_ROW = TOP + MEMBER_ROWS + 3
ZONES_ROW = OPENINGS_ROW + OPENING_ROWS + 3
OWN_ROW = TOP + len(fields.BOAT) + 3
OWN = ("Customer", "Customer's address", "Quote number", "Date", "Made by", "Notes")
END = ZONES_ROW + max(ZONE_ROWS, PART_ROWS) + 2

NOTES = {
    "Unit": "The unit of figures without one, and of what is written on paper: in, ft, mm, cm or m.",
    "Bow corners": "How both bow corners are cut: square, rounded to a radius, or clipped at 45 degrees.",
    "Bow corner size": "The radius, or how far the clip runs from the corner along both sides.",
    "From bow": "Round: station of its middle. Rectangle: station of its fore edge.",
    "From port": "Distance from the port edge: of the middle of a round opening, of the port edge of a rectangle.",
    "Diameter": "For a round opening. Leave the three sizes of a rectangle empty then.",
    "Fore and aft": "For a rectangle: its extent fore and aft.",
    "Athwart": "For a rectangle: its extent from port to starboard.",
    "Corner radius": "For a rectangle: radius of its corners.",
}
CHOICES = {"Bow corners": ("square", "rounded", "clipped")}


def make(workbook, schema):
    """Makes the sheet."""
    pen = Pen(workbook, NAME)
    pen.widths(50, 42, 5, 10, 26, *[23] * 8)
    pen.title(
        "Measurements",
        "Type into the coloured cells. Lengths as on the tape: 22 1/2, 7' 10-1/2\" or 2400 mm; a bare figure is in the boat's unit. Leave empty what was not measured.",
        LAST_COLUMN,
    )
    pen.height(1, 5)
    messages(pen)
    boat(pen, schema)
    own(pen)
    table(pen, schema, fields.MEMBERS, "Members", TOP, MEMBER_ROWS, "Member stations, from the bow aft (or give the regular spacing on the left)")
    table(pen, schema, fields.OPENINGS, "Openings", OPENINGS_ROW, OPENING_ROWS, "Openings")
    table(pen, schema, fields.KEEP_CLEAR, "KeepClear", ZONES_ROW, ZONE_ROWS, "Keep clear of seams")
    table(pen, schema, fields.EXTRA_PARTS, "Parts", ZONES_ROW, PART_ROWS, "Extra parts from the same sheets", TABLES + 4)
    pen.break_before(OPENINGS_ROW - 1)
    pen.print_area(ACROSS, LAST_COLUMN, END)
    pen.protect()


def messages(pen):
    """What is wrong or missing, in full, at the head of the sheet."""
    pen.text(0, MESSAGES_ROW - 1, "What is wrong or missing", "Deck heading", LAST_COLUMN)
    for row in range(MESSAGE_ROWS):
        pen.formula(0, MESSAGES_ROW + row, f"$Work.A{row + 2}", "Deck message where")
        pen.formula(1, MESSAGES_ROW + row, f"$Work.B{row + 2}", "Deck message", LAST_COLUMN - 1)
    pen.height(MESSAGES_ROW, 8, MESSAGE_ROWS)
    pen.formula(0, MESSAGES_ROW, 'IF(HasBoards;"Nothing";$Work.A2)', "Deck message where")


def boat(pen, schema):
    pen.headings(LABELS, TOP, ("Boat", "Measured"))
    for row, one in enumerate(fields.BOAT, TOP + 1):
        pen.text(LABELS, row, one.label)
        note = NOTES.get(one.label) or schema.note(one.path)
        pen.input(VALUES, row, style_of(one), note, CHOICES.get(one.label) or schema.choices(one.path))
    pen.cell(VALUES, TOP + 2).setString("in")
    pen.name_range("BoatUnit", VALUES, TOP + 2)
    pen.name_range("ValuesOnly", 0, 2)
    pen.name_range("Boat", LABELS, TOP + 1, 2, len(fields.BOAT))


def own(pen):
    """What only people read."""
    pen.headings(LABELS, OWN_ROW, ("For the quote", ""))
    for row, label in enumerate(OWN, OWN_ROW + 1):
        pen.text(LABELS, row, label)
        pen.input(VALUES, row, styles.FREE)
        pen.name_range(label.replace("'s ", "").replace(" ", "").replace("address", "Address"), VALUES, row)


def table(pen, schema, table, name, row, rows, title, column=TABLES):
    """A table with headings; the numbers of its rows stand left of the first."""
    pen.text(column, row - 1, title, "Deck heading", len(table.columns))
    pen.headings(column, row, [one.label for one in table.columns])
    if column == TABLES:
        pen.text(NUMBERS, row, "Row", "Deck column")
    for number in range(1, rows + 1):
        if column == TABLES:
            pen.text(NUMBERS, row + number, str(number), "Deck row number")
    for offset, one in enumerate(table.columns):
        inputs = pen.area(column + offset, row + 1, 1, rows)
        inputs.CellStyle = style_of(one)
        choices = schema.choices((*table.path, 0, *one.path))
        if choices:
            pen.choose(inputs, choices)
        note = (NOTES if table is fields.OPENINGS else {}).get(one.label) or schema.note((*table.path, 0, *one.path))
        if note:
            pen.sheet.Annotations.insertNew(pen.cell(column + offset, row).CellAddress, note)
            pen.sheet.Annotations.insertNew(pen.cell(column + offset, row + 1).CellAddress, note)
    pen.height(row, 9)
    pen.name_range(name, column, row, len(table.columns), rows + 1)


def style_of(one):
    """Free text, a number, or a length or word that is kept as it is typed."""
    if one.read is cells.text:
        return styles.FREE if one.path[-1] in ("name", "label", "kind", "purpose") else "Deck input"
    return "Deck input number" if one.read is cells.number else "Deck input"
