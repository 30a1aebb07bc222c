"""The sheet of what holds for the shop: settings, sheets in stock, prices, labour, terms."""

from deck_sheet import fields

from . import measurements, styles
from .pages import ACROSS
from .pen import LINE, Pen

NAME = "Shop"
TOP = 3
STOCK_ROWS, PRICE_ROWS, OTHER_ROWS = 8, 6, 6
LEFT, RIGHT = 3, 8
PRICES_ROW = TOP + STOCK_ROWS + 4
LABOUR_ROW = PRICES_ROW + PRICE_ROWS + 4
LAST_COLUMN = LEFT + len(fields.SHEETS.columns)

PRICED = (("Fastener", "box"), ("Seam tape", "roll"), ("Edge sealer", "can"))

# Hours, low, likely and high: planning figures of common practice, no source. They are there to be replaced.
LABOUR = (
    ("Measure, photograph, label", 0.5, 1, 2),
    ("Battery, fuel and controls off", 1, 2, 4),
    ("Furniture, top, rails, trim, console off", 2, 3, 5),
    ("Old covering off", 0.5, 1.5, 3),
    ("Old fasteners and boards out", 1.5, 3, 8),
    ("Frame repair, old holes", 1, 2, 6),
    ("Square the frame, tape the members", 0.5, 1, 2),
    ("Saw the boards", 1, 2, 4),
    ("Seal edges", 0.5, 1, 2),
    ("Lay and fasten the boards", 2, 3, 5),
    ("Fill and sand", 0.5, 1.5, 3),
    ("Cover, let it cure", 2, 4, 8),
    ("Refit furniture, rails, console", 3, 5, 9),
    ("Test and clean", 1, 2, 3),
    ("Disposal", 0.5, 1, 2),
)

TERMS = (
    ("Labour rate, an hour", "LabourRate", "Deck input money", "What an hour of labour is charged at."),
    ("Markup, percent", "Markup", "Deck input number", "Added to the sum of the materials."),
    ("Overhead, percent", "Overhead", "Deck input number", "Added to materials, markup and labour."),
    ("Tax, percent", "Tax", "Deck input number", "On everything before it. Leave empty where there is none."),
    ("Quote valid, days", "ValidDays", "Deck input number", "Printed on the quote."),
    ("Shop", "ShopName", styles.FREE, None),
    ("Shop's address", "ShopAddress", styles.FREE, None),
    ("Terms", "Terms", styles.FREE, None),
    ("Not included", "Exclusions", styles.FREE, None),
)
NUMBERS = TERMS[:5]


def make(workbook, schema):
    """Makes the sheet."""
    pen = Pen(workbook, NAME)
    pen.widths(54, 60, 5, 62, *[22] * 7, 34, 34)
    pen.title(
        "Shop",
        "What holds for every boat. A setting that is left empty takes the library's default; Results lists the defaults that no source settles.",
        LAST_COLUMN,
    )
    settings(pen, schema)
    measurements.table(pen, schema, fields.SHEETS, "Stock", TOP + 1, STOCK_ROWS, "Sheets to buy, and offcuts on the rack", LEFT)
    prices(pen)
    others(pen)
    labour(pen)
    terms(pen)
    pen.height(TOP + 1, LINE)
    pen.print_area(ACROSS, LAST_COLUMN, TOP + len(fields.SETTINGS) + 2)
    pen.protect()


def settings(pen, schema):
    pen.headings(0, TOP, ("Setting", "Value"))
    for row, one in enumerate(fields.SETTINGS, TOP + 1):
        pen.text(0, row, one.label)
        note = schema.note(one.path) or NOTES.get(one.label)
        pen.input(1, row, measurements.style_of(one), note, schema.choices(one.path))
        if one.label in NAMED:
            pen.name_range(NAMED[one.label], 1, row)
    pen.name_range("Settings", 0, TOP + 1, 2, len(fields.SETTINGS))


NAMED = {"Panel series": "PanelSeries", "Panel rating": "PanelRating", "Wet in service": "PanelWet"}


NOTES = {
    "Keep offcuts from, length": "Smallest offcut worth keeping: its length.",
    "Keep offcuts from, width": "Smallest offcut worth keeping: its width.",
    "Heel, pounds": "A person's weight on a heel. Left empty: the plan gives limits only.",
    "Pedestal, pounds": "The weight on a seat pedestal's plate.",
    "Jack, pounds": "The weight on a jack under the boat's equipment.",
    "Lift, pounds": "The pull that a row of fasteners has to hold.",
    "Load, psf": "The load spread over the deck that you choose. No rule sets one for a private pontoon boat.",
}


def prices(pen):
    pen.text(LEFT, PRICES_ROW - 1, "Prices of what is not a sheet", "Deck heading", 3)
    pen.headings(LEFT, PRICES_ROW, ("Item", "Unit", "Price"), right=(2,))
    for row in range(PRICE_ROWS):
        item, unit = PRICED[row] if row < len(PRICED) else ("", "")
        for column, text in enumerate((item, unit)):
            pen.input(LEFT + column, PRICES_ROW + 1 + row, styles.FREE)
            pen.cell(LEFT + column, PRICES_ROW + 1 + row).setString(text)
        pen.input(LEFT + 2, PRICES_ROW + 1 + row, "Deck input money", "Price of one unit.", least=0)
    pen.name_range("PriceItems", LEFT, PRICES_ROW + 1, 1, PRICE_ROWS)
    pen.name_range("PriceOf", LEFT + 2, PRICES_ROW + 1, 1, PRICE_ROWS)


def others(pen):
    """What the take-off does not count."""
    pen.text(RIGHT, PRICES_ROW - 1, "Other materials: covering, glue, trim", "Deck heading", 5)
    pen.text(RIGHT, PRICES_ROW, "Description", "Deck column", 2)
    pen.headings(RIGHT + 2, PRICES_ROW, ("Quantity", "Unit", "Price"), right=(0, 2))
    for row in range(PRICES_ROW + 1, PRICES_ROW + 1 + OTHER_ROWS):
        pen.input(RIGHT, row, styles.FREE, across=2)
        pen.input(RIGHT + 2, row, "Deck input number", "How many are bought.", least=0)
        pen.input(RIGHT + 3, row, styles.FREE)
        pen.input(RIGHT + 4, row, "Deck input money", "Price of one unit.", least=0)


def labour(pen):
    pen.text(LEFT, LABOUR_ROW - 1, "Labour hours (usual figures, no source: put in your own)", "Deck heading", 4)
    pen.headings(LEFT, LABOUR_ROW, ("Task", "Low", "Likely", "High"), right=(1, 2, 3))
    for row, (task, *hours) in enumerate(LABOUR, LABOUR_ROW + 1):
        pen.input(LEFT, row, styles.FREE)
        pen.cell(LEFT, row).setString(task)
        for column, (value, name) in enumerate(zip(hours, ("lowest", "likely", "highest")), LEFT + 1):
            pen.input(column, row, "Deck input number", f"The {name} hours that the task may take.", least=0)
            pen.cell(column, row).setValue(value)


def terms(pen):
    pen.text(RIGHT, LABOUR_ROW - 1, "Rates and terms", "Deck heading", 5)
    pen.text(RIGHT, LABOUR_ROW, "Rate or term", "Deck column", 2)
    pen.text(RIGHT + 2, LABOUR_ROW, "Value", "Deck column", 3)
    for row, (label, name, style, note) in enumerate(TERMS, LABOUR_ROW + 1):
        pen.text(RIGHT, row, label, "Deck text", 2)
        pen.input(RIGHT + 2, row, style, note, least=None if style == styles.FREE else 0, across=3)
        pen.name_range(name, RIGHT + 2, row)
