"""The functions of the add-in: their names, what they say of themselves, and their arguments.

This is the one list. The type library and the texts of the function wizard are made from it; the component has a method
for each name.
"""

from dataclasses import dataclass


@dataclass(frozen=True)
class Argument:
    """An argument: its name in the type library, its name in the wizard, and what it is."""

    name: str
    label: str
    about: str


@dataclass(frozen=True)
class Function:
    """A function: its method, its name in a cell, what it gives, its arguments, and whether it gives a block of cells."""

    method: str
    name: str
    about: str
    arguments: tuple
    block: bool


JOB = (
    Argument("boat", "Boat", "Two columns, label and value: Boat, Unit, Deck length, Beam and so on."),
    Argument("members", "Members", "Member stations from the bow aft: one column, or a table with headings such as Station and Flange."),
    Argument("sheets", "Sheets", "A table with the headings Sheet, Length, Width, Thickness, and perhaps Price, Count, Offcut."),
    Argument("openings", "Openings", "Optional. A table with the headings Opening, From bow, From port, and Diameter or Fore and aft and Athwart."),
    Argument("keepClear", "Keep clear", "Optional. Zones without seams: a table with the headings Keep clear, From, To."),
    Argument("settings", "Settings", "Optional. Two columns, label and value: Gap between boards, Kerf, Fastener and so on."),
    Argument("parts", "Parts", "Optional. Small parts from the same sheets: a table with the headings Part, Length, Width, Count, Grain."),
)
ROWS = Argument("rows", "Rows", "Optional. How many rows to give: the spare ones are left blank. Without it, as many as there are.")
UNIT = Argument("unit", "Unit", "Optional. The unit of figures without one: in, ft, mm, cm or m. Without it: in.")
FIRST_FAULT = "Where the job cannot be planned, the first cell says what is wrong or missing."


def of_job(method, name, about, *more):
    return Function(method, name, f"{about} {FIRST_FAULT}", JOB + more + (ROWS,), True)


FUNCTIONS = (
    of_job(
        "seams",
        "DECK.SEAMS",
        "Where the boards meet, a row for each seam: number, member, end of the fore board, the same as written, start of the aft board, bearing fore and aft, length.",
    ),
    of_job(
        "panels",
        "DECK.PANELS",
        "The boards, a row for each: label, length athwart, width, both as written, diagonal, area, weight in pounds.",
    ),
    of_job("sheets", "DECK.SHEETS", "The sheets to buy, a row for each kind: item, description, how many, unit, needed, price, cost."),
    of_job(
        "fasteners",
        "DECK.FASTENERS",
        "Fasteners by kind: kind, needed, spare, boxes, how many a box holds, of the needed those along edges and those in the field.",
    ),
    of_job(
        "costs",
        "DECK.COSTS",
        "Everything to buy, a row for each: item, description, how many, unit, needed, price and cost where the sheets have prices.",
    ),
    of_job(
        "strength",
        "DECK.STRENGTH",
        "What the boards take, in psf: board, axis, by the tables and what governs, by the beam and what governs, use of the load by both. A figure to judge, no rating.",
    ),
    of_job("cautions", "DECK.CAUTIONS", "What to mind on this boat: the caution, what it is about, what it defers to."),
    of_job("assumed", "DECK.ASSUMED", "The settings that were not given and that no source settles: setting, value, source."),
    Function(
        "messages",
        "DECK.MESSAGES",
        "What is wrong or missing, a row for each: where, and what would be accepted. Blank where the job can be planned and laid out.",
        JOB + (ROWS,),
        True,
    ),
    Function(
        "fact",
        "DECK.FACT",
        "One figure of the plan by its name: layout, boards, seams, least bearing, sheets, sheets cost, order proven, fasteners, "
        "weight, area, length, beam, diagonal, diagonals differ at most, members, cautions, faults, version.",
        (Argument("name", "Name", "The figure's name, such as boards."),) + JOB,
        False,
    ),
    Function(
        "spanLimit",
        "DECK.SPANLIMIT",
        "What a panel may carry over supports at a spacing, in psf, from the published tables. A figure to judge, no rating.",
        (
            Argument("series", "Series", "The kind of panel in the words of the tables, such as sanded plywood Group 1 A-A/A-C."),
            Argument("rating", "Rating", "The span rating, or the thickness of sanded plywood, such as 3/4."),
            Argument("spacing", "Spacing", "Distance from member to member."),
            Argument("axis", "Axis", "Optional. How the strength axis lies to the members: along (as boards athwart lie) or across. Without it: along."),
            Argument("spans", "Spans", "Optional. How many equal bays a board covers: 1, 2 or 3. Without it: 3."),
            Argument("wet", "Wet", "Optional. Yes where the boards are wet in service. Without it: yes."),
            Argument("figure", "Figure", "Optional. allowable, deflection, bending, shear, governing or source. Without it: allowable."),
            UNIT,
        ),
        False,
    ),
    Function(
        "length",
        "DECK.LENGTH",
        "A length as a number: reads 7' 10-1/2\", 94 1/2, 2400 mm and the like.",
        (Argument("length", "Length", "The length, as a person writes it."), UNIT),
        False,
    ),
    Function(
        "fraction",
        "DECK.FRACTION",
        "A length as a shop writes it: 94-1/2\", or 7' 10-1/2\". What had to be rounded carries \u2248 and its decimal.",
        (
            Argument("length", "Length", "The length, a number or a text."),
            UNIT,
            Argument("finest", "Finest", "Optional. The finest fraction of an inch: 2, 4, 8, 16, 32 or 64. Without it: 16."),
            Argument("feet", "Feet", "Optional. Yes to write 12 inches and more in feet and inches."),
        ),
        False,
    ),
    Function(
        "nest",
        "DECK.NEST",
        "Parts laid on sheets for a saw that cuts from edge to edge, a row for each part: sheet, stock, part, place along and across the sheet, extents there, turned or not.",
        (
            Argument("parts", "Parts", "A table with the headings Part, Length, Width, and perhaps Count, Grain."),
            Argument("stock", "Stock", "A table with the headings Sheet, Length, Width, and perhaps Price, Count, Offcut."),
            Argument("kerf", "Kerf", "Optional. What the blade takes. Without it: nothing."),
            Argument("trim", "Trim", "Optional. Strip taken off each edge of a sheet first. Without it: nothing."),
            UNIT,
            ROWS,
        ),
        True,
    ),
    Function("version", "DECK.VERSION", "The version of the library and the number of its border.", (), False),
)
