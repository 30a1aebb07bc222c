"""The sheet that shows the plan: the boards, what to buy, what they take, what to mind."""

from . import work
from .pages import UPRIGHT
from .pen import Pen
from .work import JOB

NAME = "Results"
SEAM_ROWS, PANEL_ROWS, FASTENER_ROWS = 12, 12, 2
WIDTH = 8
SPACINGS = ("12 in", "16 in", "20 in", "24 in")

FACTS = (
    ("Boards", "boards", "Deck count"),
    ("Seams", "seams", "Deck count"),
    ("Least bearing", "least bearing", "Deck text right"),
    ("Sheets to buy", "sheets", "Deck count"),
    ("Fewest sheets proven", "order proven", "Deck text right"),
    ("Fasteners", "fasteners", "Deck count"),
    ("New boards weigh, lb, dry", "weight", "Deck weight"),
    ("Diagonal to check", "diagonal", "Deck text right"),
    ("Diagonals may differ by", "diagonals differ at most", "Deck text right"),
    ("Cautions", "cautions", "Deck count"),
)


def make(workbook):
    """Makes the sheet."""
    pen = Pen(workbook, NAME)
    pen.widths(56, 24, 24, 30, 26, 26, 26, 30)
    pen.title("Results", "Worked out from Measurements and Shop. Nothing is typed here.", WIDTH)
    pen.formula(0, 2, 'IF(HasPlan;DECK.FACT("boat";' + JOB + ');"")', "Deck heading", 2)
    pen.formula(2, 2, layout(), "Deck heading", WIDTH - 2)
    row = figures(pen, 4)
    row = seams(pen, row + 1)
    row = panels(pen, row + 1)
    row = to_buy(pen, row + 1)
    row = fasteners(pen, row + 1)
    pen.break_before(row + 1)
    row = strength(pen, row + 1)
    row = limits(pen, row + 1)
    row = cautions(pen, row + 1)
    pen.break_before(row + 1)
    row = assumed(pen, row + 1)
    pen.print_area(UPRIGHT, WIDTH, row, 1)
    pen.protect()


def layout():
    return f'IF(HasPlan;DECK.FACT("layout";{JOB});"No plan: "&$Work.A2&": "&$Work.B2)'


def figures(pen, row):
    """Single figures, two to a line."""
    half = (len(FACTS) + 1) // 2
    for index, (label, name, style) in enumerate(FACTS):
        column, line = (0, row + index) if index < half else (4, row + index - half)
        pen.text(column, line, label, "Deck text", 1 if column == 0 else 2)
        value, across = (1, 1) if column == 0 else (6, 2)
        pen.formula(value, line, f'IF(HasPlan;DECK.FACT("{name}";{JOB});"")', style, across)
    return row + half


def listing(pen, row, title, headings, rows, function, styles, right):
    """A heading, and a block that the function fills where there are boards."""
    pen.text(0, row, title, "Deck heading", WIDTH)
    pen.headings(0, row + 1, headings, right)
    pen.height(row + 1, 9)
    formula = f'IF(HasBoards;DECK.{function}({JOB};{rows});"")'
    pen.block(0, row + 2, len(headings), rows, formula, styles)
    return row + 2 + rows


def seams(pen, row):
    headings = ("Seam", "On member", "Fore board ends", "As written", "Aft board starts", "Bears fore", "Bears aft", "Length")
    styles = ("Deck figure", "Deck count", "Deck decimal", *["Deck text right"], "Deck decimal", "Deck text right", "Deck text right", "Deck decimal")
    return listing(pen, row, "Seams, from the bow aft", headings, SEAM_ROWS, "SEAMS", styles, range(1, 8))


def panels(pen, row):
    headings = ("Board", "Length athwart", "Width", "Length as written", "Width as written", "Diagonal", "Area", "Weight, lb")
    styles = ("Deck figure", "Deck decimal", "Deck decimal", "Deck text right", "Deck text right", "Deck decimal", "Deck weight", "Deck weight")
    return listing(pen, row, "Boards", headings, PANEL_ROWS, "PANELS", styles, range(1, 8))


def to_buy(pen, row):
    """What the take-off counts; the block stands on the sheet behind."""
    pen.text(0, row, "To buy", "Deck heading", WIDTH)
    for column, (text, across, right) in BUY_COLUMNS.items():
        pen.text(column, row + 1, text, "Deck column right" if right else "Deck column", across)
    for line in range(work.COST_ROWS):
        for (column, (_, across, _)), offset, style in zip(BUY_COLUMNS.items(), (0, 1, 2, 3, 4), BUY_STYLES):
            pen.formula(column, row + 2 + line, work.at(work.COSTS + offset, 1 + line, work.NAME), style, across)
    return row + 2 + work.COST_ROWS


BUY_COLUMNS = {0: ("Item", 1, False), 1: ("Description", 3, False), 4: ("Buy", 1, True), 5: ("Unit", 1, False), 6: ("Needed", 2, True)}
BUY_STYLES = ("Deck figure", "Deck figure", "Deck count", "Deck figure", "Deck text right")


def fasteners(pen, row):
    headings = ("Fasteners", "Needed", "Spare", "Boxes", "In a box", "Along edges", "In the field")
    styles = ("Deck figure wrapped", *["Deck count"] * 6)
    return listing(pen, row, "Fasteners by kind", headings, FASTENER_ROWS, "FASTENERS", styles, range(1, 7))


def strength(pen, row):
    headings = ("Board", "Axis", "psf by tables", "Governs", "psf by beam", "Governs", "Load, of tables", "Load, of beam")
    styles = ("Deck figure", "Deck text right", "Deck psf", "Deck text right", "Deck psf", "Deck text right", "Deck share", "Deck share")
    title = "What the boards take: figures to judge, no load rating"
    return listing(pen, row, title, headings, PANEL_ROWS, "STRENGTH", styles, range(1, 8))


def limits(pen, row):
    """The published limits of the shop's panel at usual spacings."""
    pen.text(0, row, "What the shop's panel takes by the tables, laid athwart on three or more equal bays", "Deck heading", WIDTH)
    pen.headings(0, row + 1, ("Members every", "psf", "Governs"), right=(1, 2))
    for line, spacing in enumerate(SPACINGS, row + 2):
        pen.text(0, line, spacing)
        for column, figure, style in ((1, "allowable", "Deck psf"), (2, "governing", "Deck text right")):
            limit = f'DECK.SPANLIMIT(PanelSeries;PanelRating;A{line + 1};"along";3;IF(PanelWet="";"yes";PanelWet);"{figure}")'
            missing = '"no panel"' if column == 1 else '""'
            pen.formula(column, line, f'IF(OR(PanelSeries="";PanelRating="");{missing};{limit})', style)
    return row + 2 + len(SPACINGS)


def cautions(pen, row):
    pen.text(0, row, "What to mind on this boat (the packet has them in full, with the standing ones)", "Deck heading", WIDTH)
    for line in range(work.CAUTION_ROWS):
        text, about = (work.at(work.CAUTIONS + offset, 1 + line, work.NAME) for offset in (0, 1))
        pen.formula(0, row + 1 + line, text, "Deck figure wrapped", 4)
        pen.formula(4, row + 1 + line, f'IF(LEN({about})>150;LEFT({about};150)&" …";{about})', "Deck figure wrapped", 4)
    pen.height(row + 1, 16, work.CAUTION_ROWS)
    return row + 1 + work.CAUTION_ROWS


def assumed(pen, row):
    pen.text(0, row, "Settings that were taken by default and that no source settles", "Deck heading", WIDTH)
    for line in range(work.ASSUMED_ROWS):
        for column, offset, across in ((0, 0, 2), (2, 1, 1), (3, 2, 5)):
            pen.formula(column, row + 1 + line, work.at(work.ASSUMED + offset, 1 + line, work.NAME), "Deck figure", across)
    return row + 1 + work.ASSUMED_ROWS
