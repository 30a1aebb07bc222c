"""The printable quote: what is bought and done at the shop's prices, in lines that add up to the total.

Every amount is rounded to cents where it stands, so that what is printed adds up as printed.
"""

from . import shop, work
from .pages import ONE
from .pen import Pen
from .work import JOB

NAME = "Quote"
WIDTH = 7
ITEM, DESCRIPTION, QUANTITY, UNIT, NEEDED, PRICE, AMOUNT = range(WIDTH)
NO_PRICE = "no price"
MATERIALS_ROW = 11
LABOUR_ROW = MATERIALS_ROW + 2 + work.COST_ROWS + shop.OTHER_ROWS + 2
SUMS_ROW = LABOUR_ROW + 2 + len(shop.LABOUR) + 2


def make(workbook):
    """Makes the sheet."""
    pen = Pen(workbook, NAME)
    pen.widths(28, 54, 17, 18, 38, 23, 28)
    head(pen)
    materials(pen)
    labour(pen)
    sums(pen)
    end = foot(pen)
    pen.print_area(ONE, WIDTH, end)
    pen.protect()


def shown(cell):
    """A cell of another sheet; nothing where it is empty."""
    return f'IF({cell}="";"";{cell})'


def head(pen):
    pen.formula(0, 0, 'IF(ShopName="";"Quote";ShopName)', "Deck title", 4)
    pen.formula(4, 0, 'IF(QuoteNumber="";"";"Quote "&QuoteNumber)', "Deck strong right", 3)
    pen.formula(0, 1, shown("ShopAddress"), "Deck text", 4)
    pen.formula(4, 1, shown("Date"), "Deck text right", 3)
    for row, (label, value) in enumerate(HEAD, 3):
        pen.text(0, row, label)
        pen.formula(1, row, value, "Deck figure", WIDTH - 1)
    pen.formula(0, 8, unfinished(), "Deck message", WIDTH)
    pen.height(8, 12)


HEAD = (
    ("For", shown("Customer") + '&IF(CustomerAddress="";"";", "&CustomerAddress)'),
    ("Boat", f'IF(HasPlan;DECK.FACT("boat";{JOB});"")'),
    (
        "Work",
        f'IF(HasBoards;"New plywood deck, "&DECK.FRACTION(DECK.FACT("length";{JOB});BoatUnit)&" by "'
        f'&DECK.FRACTION(DECK.FACT("beam";{JOB});BoatUnit)&": "&DECK.FACT("layout";{JOB});"")',
    ),
    ("Not included", shown("Exclusions")),
)


def unfinished():
    """Why this is no quote yet; nothing where it is one."""
    prices = area(PRICE, MATERIALS_ROW + 2, work.COST_ROWS + shop.OTHER_ROWS)
    return (
        'TEXTJOIN(" ";TRUE();IF(HasBoards;"";"Not a quote yet: the deck is not planned, see Measurements.");'
        f'IF(COUNTIF({prices};"{NO_PRICE}")>0;"Lines without a price, not in the total: "&COUNTIF({prices};"{NO_PRICE}")&".";"");'
        'IF(ISNUMBER(LabourRate);"";"There is no labour rate: labour is not in the total.");'
        'TEXTJOIN("; ";TRUE();Mistyped))'
    )


def area(column, row, rows):
    letter = chr(ord("A") + column)
    return f"{letter}{row + 1}:{letter}{row + rows}"


def materials(pen):
    pen.text(0, MATERIALS_ROW, "Materials", "Deck heading", WIDTH)
    headings = ("Item", "Description", "Buy", "Unit", "Needed", "Price", "Amount")
    pen.headings(0, MATERIALS_ROW + 1, headings, right=(QUANTITY, NEEDED, PRICE, AMOUNT))
    first = MATERIALS_ROW + 2
    for line in range(work.COST_ROWS):
        counted(pen, first + line, 1 + line)
    for line in range(shop.OTHER_ROWS):
        other(pen, first + work.COST_ROWS + line, shop.PRICES_ROW + 1 + line)


def counted(pen, row, behind):
    """A line of the take-off; its price is the sheet's own, or the one on the list."""
    for column, offset, style in ((ITEM, 0, "Deck figure"), (DESCRIPTION, 1, "Deck figure"), (QUANTITY, 2, "Deck count"), (UNIT, 3, "Deck figure"), (NEEDED, 4, "Deck text right")):
        pen.formula(column, row, work.at(work.COSTS + offset, behind, work.NAME), style)
    own = work.at(work.COSTS + 5, behind, work.NAME)
    # Not by MATCH: Calc 7.4 does not find a text that an add-in gave. An item is listed once, or the quote says so.
    listed = f'PriceItems;A{row + 1};PriceOf;">=0"'
    pen.formula(
        PRICE,
        row,
        f'IF(NOT(ISNUMBER(C{row + 1}));"";IF(ISNUMBER({own});{own};IF(COUNTIFS({listed})=0;"{NO_PRICE}";AVERAGEIFS(PriceOf;{listed}))))',
        "Deck price",
    )
    amount(pen, row)


def other(pen, row, typed):
    """A line that the shop adds."""
    text, quantity, unit, price = (work.at(shop.RIGHT + offset, typed) for offset in (0, 2, 3, 4))
    pen.formula(ITEM, row, f'IF({text}="";"";"Other")', "Deck figure")
    pen.formula(DESCRIPTION, row, shown(text), "Deck figure")
    pen.formula(QUANTITY, row, f'IF(AND({text}<>"";ISNUMBER({quantity}));{quantity};"")', "Deck count")
    pen.formula(UNIT, row, f'IF({text}="";"";{shown(unit)})', "Deck figure")
    pen.formula(PRICE, row, f'IF({text}="";"";IF(AND(ISNUMBER({quantity});ISNUMBER({price}));{price};"{NO_PRICE}"))', "Deck price")
    amount(pen, row)


def amount(pen, row):
    one = row + 1
    pen.formula(AMOUNT, row, f'IF(AND(ISNUMBER(C{one});ISNUMBER(F{one}));ROUND(C{one}*F{one};2);"")', "Deck money")


def labour(pen):
    """Hours of each task: low, likely and high as planned, and their mean (low + 4 likely + high) / 6."""
    pen.text(0, LABOUR_ROW, "Labour, hours", "Deck heading", WIDTH)
    pen.text(0, LABOUR_ROW + 1, "Task", "Deck column", 2)
    pen.headings(2, LABOUR_ROW + 1, ("Low", "Likely", "High", "Mean", "Amount"), right=range(5))
    for line in range(len(shop.LABOUR)):
        row, one = LABOUR_ROW + 2 + line, LABOUR_ROW + 3 + line
        task, *hours = (work.at(shop.LEFT + offset, shop.LABOUR_ROW + 1 + line) for offset in range(4))
        pen.formula(0, row, shown(task), "Deck figure", 2)
        for column, cell in enumerate(hours, 2):
            pen.formula(column, row, f'IF(ISNUMBER({cell});{cell};"")', "Deck hours")
        pen.formula(5, row, f'IF(COUNT(C{one}:E{one})=3;ROUND((C{one}+4*D{one}+E{one})/6;2);"")', "Deck hours")
        pen.formula(6, row, f'IF(AND(ISNUMBER(F{one});ISNUMBER(LabourRate));ROUND(F{one}*LabourRate;2);"")', "Deck money")
    row = LABOUR_ROW + 2 + len(shop.LABOUR)
    pen.text(0, row, "Hours in all", "Deck sum label", 2)
    for column in range(2, 6):
        letter = chr(ord("A") + column)
        pen.formula(column, row, f"SUM({letter}{LABOUR_ROW + 3}:{letter}{row})", "Deck sum hours")
    pen.text(6, row, "", "Deck sum")


def percent(name, base):
    return f"IF(ISNUMBER({name});ROUND(({base})*{name}/100;2);0)"


def sums(pen):
    """The sums, each over what stands above it."""
    m, k, b, o, t, x = (f"G{SUMS_ROW + 1 + offset}" for offset in range(6))
    materials_amounts = area(AMOUNT, MATERIALS_ROW + 2, work.COST_ROWS + shop.OTHER_ROWS)
    labour_amounts = area(AMOUNT, LABOUR_ROW + 2, len(shop.LABOUR))
    rows = (
        ('"Materials"', f"ROUND(SUM({materials_amounts});2)"),
        (said("Markup on materials", "Markup"), percent("Markup", m)),
        ('"Labour"', f"ROUND(SUM({labour_amounts});2)"),
        (said("Overhead", "Overhead"), percent("Overhead", f"{m}+{k}+{b}")),
        ('"Before tax"', f"ROUND({m}+{k}+{b}+{o};2)"),
        (said("Tax", "Tax"), percent("Tax", t)),
    )
    for row, (label, formula) in enumerate(rows, SUMS_ROW):
        strong = row == SUMS_ROW + 4
        pen.formula(3, row, label, "Deck sum label" if strong else "Deck text right", 3)
        pen.formula(AMOUNT, row, formula, "Deck sum" if strong else "Deck money")
    row = SUMS_ROW + len(rows)
    pen.formula(3, row, '"Total"', "Deck total label", 3)
    pen.formula(AMOUNT, row, f"ROUND({t}+{x};2)", "Deck total")
    pen.name_range("QuoteTotal", AMOUNT, row)


def said(label, name):
    """What is reckoned, with its percentage where there is one."""
    return f'"{label}"&IF(ISNUMBER({name});" "&{name}&" %";"")'


def foot(pen):
    row = SUMS_ROW + 9
    pen.formula(0, row, 'IF(ISNUMBER(ValidDays);"Valid for "&ValidDays&" days.";"")&IF(Terms="";"";" "&Terms)', "Deck figure wrapped", WIDTH)
    pen.height(row, 12)
    pen.text(0, row + 1, CAUTION, "Deck hint", WIDTH)
    pen.height(row + 1, 8)
    pen.text(0, row + 4, "Customer, date", "Deck sum label", 2)
    pen.text(4, row + 4, "Shop, date", "Deck sum label", 3)
    return row + 6


CAUTION = (
    "An estimate from measurements. Labour is the mean of low, likely and high hours, (low + 4 likely + high) / 6. "
    "No load rating is part of this quote; the boat's capacity label stays as it is."
)
