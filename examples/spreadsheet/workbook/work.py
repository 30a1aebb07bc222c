"""The sheet behind the others, where the functions answer in blocks; the others show what stands here."""

from . import measurements, shop
from .pen import Pen

NAME = "Work"
JOB = "Boat;Members;Stock;Openings;KeepClear;Settings;Parts"
MESSAGE_ROWS = measurements.MESSAGE_ROWS
CAUTION_ROWS, COST_ROWS, ASSUMED_ROWS = 10, 8, 24

MESSAGES, CAUTIONS, COSTS, ASSUMED, FLAGS, MISTYPED = 0, 3, 7, 15, 19, 22


def make(workbook):
    """Makes the sheet."""
    pen = Pen(workbook, NAME)
    flags(pen)
    pen.headings(MESSAGES, 0, ("Where", "What is wrong"))
    pen.block(MESSAGES, 1, 2, MESSAGE_ROWS, f"DECK.MESSAGES({JOB};{MESSAGE_ROWS})", ("Deck text",) * 2)
    block(pen, CAUTIONS, ("Caution", "About", "Defers to"), CAUTION_ROWS, "CAUTIONS", "HasPlan")
    block(pen, COSTS, ("Item", "Description", "Buy", "Unit", "Needed", "Price", "Cost"), COST_ROWS, "COSTS", "HasBoards")
    block(pen, ASSUMED, ("Setting", "Value", "Source"), ASSUMED_ROWS, "ASSUMED", "HasPlan")
    mistyped(pen)
    pen.protect()
    pen.sheet.IsVisible = False


def block(pen, column, headings, rows, function, when):
    pen.headings(column, 0, headings)
    formula = f'IF({when};DECK.{function}({JOB};{rows});"")'
    pen.block(column, 1, len(headings), rows, formula, ("Deck text",) * len(headings))


def flags(pen):
    """Whether there is a plan, and whether it has boards."""
    pen.headings(FLAGS, 0, ("Flag", "Value"))
    rows = (
        ("Faults", f'DECK.FACT("faults";{JOB})', "Faults"),
        ("Has a plan", "IF(ISNUMBER(Faults);Faults=0;FALSE())", "HasPlan"),
        ("Boards", f'IF(HasPlan;DECK.FACT("boards";{JOB});0)', "Boards"),
        ("Has boards", "IF(ISNUMBER(Boards);Boards>0;FALSE())", "HasBoards"),
    )
    for row, (label, _, name) in enumerate(rows, 1):
        pen.text(FLAGS, row, label)
        pen.name_range(name, FLAGS + 1, row)
    for row, (_, formula, _) in enumerate(rows, 1):
        pen.formula(FLAGS + 1, row, formula)


def mistyped(pen):
    """Each number of the quote that is none: its name, or nothing."""
    pen.headings(MISTYPED, 0, ("Not a number",))
    for count, (label, cell) in enumerate(numbers(), 1):
        pen.formula(MISTYPED, count, f'IF(ISBLANK({cell});"";IF(ISNUMBER({cell});IF({cell}<0;"{label} is below zero";"");"{label} is no number"))')
    for row, (task, *_) in enumerate(shop.LABOUR, shop.LABOUR_ROW + 1):
        count += 1
        pen.formula(MISTYPED, count, hours_fault(task, row))
    for row in range(1, shop.PRICE_ROWS + 1):
        count += 1
        item = at(shop.LEFT, shop.PRICES_ROW + row)
        pen.formula(MISTYPED, count, f'IF({item}="";"";IF(COUNTIF(PriceItems;{item})>1;{item}&" has two prices";""))')
    pen.name_range("Mistyped", MISTYPED, 1, 1, count)


def hours_fault(task, row):
    """Hours that are not all there, or not in order; nothing for a task without any."""
    low, likely, high = (at(column, row) for column in range(shop.LEFT + 1, shop.LEFT + 4))
    return (
        f'IF(COUNT({low};{likely};{high})=0;"";IF(COUNT({low};{likely};{high})<3;"{task}: low, likely and high hours are needed";'
        f'IF(AND({low}<={likely};{likely}<={high});"";"{task}: hours are not in order")))'
    )


def numbers():
    """Every cell of the shop's sheet that the quote reckons with, by the words for it."""
    for label, name, _, _ in shop.NUMBERS:
        yield label, name
    for row in range(1, shop.PRICE_ROWS + 1):
        yield f"Price {row}", at(shop.LEFT + 2, shop.PRICES_ROW + row)
    for row in range(1, shop.OTHER_ROWS + 1):
        yield f"Other materials, row {row}, quantity", at(shop.RIGHT + 2, shop.PRICES_ROW + row)
        yield f"Other materials, row {row}, price", at(shop.RIGHT + 4, shop.PRICES_ROW + row)
    for row, (task, *_) in enumerate(shop.LABOUR, 1):
        for column, name in enumerate(("low", "likely", "high"), shop.LEFT + 1):
            yield f"{task}, {name} hours", at(column, shop.LABOUR_ROW + row)


def at(column, row, sheet=shop.NAME):
    """A cell in the words of a formula."""
    return f"${sheet}.${chr(ord('A') + column)}${row + 1}"
