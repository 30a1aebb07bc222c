"""How cells look: one style for each use, so that a shop can change them all in one place."""

from com.sun.star.lang import Locale
from com.sun.star.table import BorderLine2
from com.sun.star.table.CellHoriJustify import CENTER, LEFT, RIGHT
from com.sun.star.table.CellVertJustify2 import TOP
from com.sun.star.util import CellProtection

INK, GREY, RED = 0x202020, 0x606060, 0x9C1C1C
PAPER, BAND, FIELD, HEAD = -1, 0xE8EDF2, 0xFFF8DC, 0x2F4B5F
BOLD, PLAIN = 150.0, 100.0

# name: (parent, properties)
STYLES = {
    "Deck text": {"CharFontName": "DejaVu Sans", "CharHeight": 9.0, "CharColor": INK, "VertJustify": TOP, "ParaIndent": 60},
    "Deck title": {"CharHeight": 16.0, "CharWeight": BOLD, "CharColor": HEAD},
    "Deck heading": {"CharHeight": 10.5, "CharWeight": BOLD, "CharColor": HEAD, "line": "bottom"},
    "Deck column": {"CharWeight": BOLD, "CellBackColor": BAND, "IsTextWrapped": True, "line": "bottom"},
    "Deck column right": {"CharWeight": BOLD, "CellBackColor": BAND, "IsTextWrapped": True, "HoriJustify": RIGHT, "line": "bottom"},
    "Deck label": {},
    "Deck row number": {"CharColor": GREY, "HoriJustify": CENTER},
    "Deck hint": {"CharColor": GREY, "IsTextWrapped": True, "CharHeight": 8.0},
    "Deck message": {"CharColor": RED, "IsTextWrapped": True},
    "Deck message where": {"CharColor": RED, "CharWeight": BOLD},
    "Deck figure": {"HoriJustify": LEFT},
    "Deck figure wrapped": {"HoriJustify": LEFT, "IsTextWrapped": True},
    "Deck count": {"HoriJustify": RIGHT, "format": "0"},
    "Deck decimal": {"HoriJustify": RIGHT, "format": "0.0###"},
    "Deck text right": {"HoriJustify": RIGHT},
    "Deck psf": {"HoriJustify": RIGHT, "format": "0.0"},
    "Deck share": {"HoriJustify": RIGHT, "format": "0%"},
    "Deck weight": {"HoriJustify": RIGHT, "format": "0.0"},
    "Deck hours": {"HoriJustify": RIGHT, "format": "0.00"},
    "Deck money": {"HoriJustify": RIGHT, "format": "#,##0.00"},
    "Deck strong right": {"CharWeight": BOLD, "HoriJustify": RIGHT},
    "Deck quiet": {"CharColor": GREY},
    # As many places as the price has, so that price times quantity is the amount that is printed.
    "Deck price": {"HoriJustify": RIGHT, "format": "#,##0.00##"},
    "Deck sum label": {"CharWeight": BOLD, "HoriJustify": RIGHT, "line": "top"},
    "Deck sum": {"CharWeight": BOLD, "HoriJustify": RIGHT, "format": "#,##0.00", "line": "top"},
    "Deck sum hours": {"CharWeight": BOLD, "HoriJustify": RIGHT, "format": "0.00", "line": "top"},
    "Deck total label": {"CharWeight": BOLD, "CharHeight": 11.0, "HoriJustify": RIGHT, "line": "both"},
    "Deck total": {"CharWeight": BOLD, "CharHeight": 11.0, "HoriJustify": RIGHT, "format": "#,##0.00", "line": "both"},
    # Input: open and coloured. Lengths and words are kept as they are typed, so that 1/2 does not become a day in January.
    "Deck input": {"input": True, "format": "@", "HoriJustify": LEFT},
    "Deck input words": {"input": True, "format": "@", "HoriJustify": LEFT, "IsTextWrapped": True},
    "Deck input number": {"input": True, "format": "General", "HoriJustify": RIGHT},
    "Deck input money": {"input": True, "format": "#,##0.00##", "HoriJustify": RIGHT},
}
# Free text: whatever is typed there is right.
FREE = "Deck input words"


def make(workbook):
    """Makes the styles in the workbook."""
    family = workbook.StyleFamilies.getByName("CellStyles")
    for name, wanted in STYLES.items():
        style = workbook.createInstance("com.sun.star.style.CellStyle")
        family.insertByName(name, style)
        style.ParentStyle = "Default" if name == "Deck text" else "Deck text"
        for prop, value in wanted.items():
            if prop not in ("format", "line", "input"):
                style.setPropertyValue(prop, value)
        if "format" in wanted:
            style.NumberFormat = number_format(workbook, wanted["format"])
        if "line" in wanted:
            lines(style, wanted["line"])
        if wanted.get("input"):
            as_input(style)


def number_format(workbook, code):
    formats, where = workbook.NumberFormats, Locale("en", "US", "")
    key = formats.queryKey(code, where, False)
    return formats.addNew(code, where) if key == -1 else key


def line(colour=0x7C8A96, width=18):
    return BorderLine2(colour, 0, width, 0, 0, width)


def lines(style, where):
    if where in ("top", "both"):
        style.TopBorder = line()
    if where in ("bottom", "both"):
        style.BottomBorder = line()


def as_input(style):
    style.CellBackColor = FIELD
    style.CellProtection = CellProtection(False, False, False, False)
    for side in ("TopBorder", "BottomBorder", "LeftBorder", "RightBorder"):
        style.setPropertyValue(side, line(0xC9BE93, 9))
