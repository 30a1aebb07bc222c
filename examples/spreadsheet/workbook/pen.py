"""Writes on one sheet: texts, formulas, input cells with their notes and lists."""

from com.sun.star.sheet.ConditionOperator import GREATER_EQUAL
from com.sun.star.sheet.ValidationAlertStyle import WARNING
from com.sun.star.sheet.ValidationType import DECIMAL, LIST
from com.sun.star.table import CellAddress, CellRangeAddress

SHOW_LIST = 1
# Millimetres.
LINE = 4.8


class Pen:
    """A sheet and what is written on it."""

    def __init__(self, workbook, name):
        self.workbook = workbook
        workbook.Sheets.insertNewByName(name, workbook.Sheets.getCount())
        self.sheet = workbook.Sheets.getByName(name)
        self.name = name
        self.sheet.getCellRangeByPosition(0, 0, 30, 300).CellStyle = "Deck text"
        self.height(0, 8)
        self.height(1, LINE, 200)

    def cell(self, column, row):
        return self.sheet.getCellByPosition(column, row)

    def area(self, column, row, columns, rows):
        return self.sheet.getCellRangeByPosition(column, row, column + columns - 1, row + rows - 1)

    def widths(self, *millimetres):
        for column, width in enumerate(millimetres):
            self.sheet.Columns.getByIndex(column).Width = int(width * 100)

    def height(self, row, millimetres, rows=1):
        for one in range(row, row + rows):
            self.sheet.Rows.getByIndex(one).Height = int(millimetres * 100)

    def text(self, column, row, text, style="Deck text", across=1):
        """A text, in cells that are joined where it goes across several."""
        area = self.area(column, row, across, 1)
        area.CellStyle = style
        if across > 1:
            area.merge(True)
        self.cell(column, row).setString(text)

    def formula(self, column, row, formula, style="Deck figure", across=1):
        area = self.area(column, row, across, 1)
        area.CellStyle = style
        if across > 1:
            area.merge(True)
        self.cell(column, row).setFormula("=" + formula)

    def block(self, column, row, columns, rows, formula, styles):
        """A formula that fills a block of cells; a style for each column."""
        self.area(column, row, columns, rows).setArrayFormula("=" + formula)
        for offset, style in enumerate(styles):
            self.area(column + offset, row, 1, rows).CellStyle = style

    def title(self, text, hint, across):
        self.text(0, 0, text, "Deck title")
        self.text(0, 1, hint, "Deck hint", across)

    def headings(self, column, row, texts, right=()):
        for offset, text in enumerate(texts):
            self.text(column + offset, row, text, "Deck column right" if offset in right else "Deck column")

    def input(self, column, row, style, note=None, choices=(), least=None, across=1):
        """An input cell: open, coloured, with a note and perhaps a list to choose from."""
        area = self.area(column, row, across, 1)
        area.CellStyle = style
        if across > 1:
            area.merge(True)
        cell = self.cell(column, row)
        if note:
            self.sheet.Annotations.insertNew(cell.CellAddress, note)
        if choices:
            self.choose(cell, choices)
        elif least is not None:
            self.at_least(cell, least)

    def choose(self, cells, choices):
        """A list to choose from; another word is warned of, and the formulas say what they make of it."""
        rule = cells.Validation
        rule.Type = LIST
        rule.ShowList = SHOW_LIST
        rule.setFormula1(";".join(f'"{choice}"' for choice in choices))
        self.warn(cells, rule, "One of: " + ", ".join(choices))

    def at_least(self, cells, least):
        rule = cells.Validation
        rule.Type = DECIMAL
        rule.setOperator(GREATER_EQUAL)
        rule.setFormula1(str(least))
        self.warn(cells, rule, f"A number from {least} up.")

    def warn(self, cells, rule, text):
        rule.ErrorAlertStyle = WARNING
        rule.ErrorMessage = text
        rule.ShowErrorMessage = True
        rule.IgnoreBlankCells = True
        cells.Validation = rule

    def name_range(self, name, column, row, columns=1, rows=1):
        """A name for a range, so that formulas say what they read."""
        address = self.area(column, row, columns, rows).AbsoluteName
        self.workbook.NamedRanges.addNewByName(name, address, CellAddress(), 0)

    def break_before(self, row):
        """A new page starts here."""
        self.sheet.Rows.getByIndex(row).IsStartOfNewPage = True

    def print_area(self, page, columns, rows, repeat=None):
        self.sheet.setPrintAreas((self.area(0, 0, columns, rows).RangeAddress,))
        self.sheet.PageStyle = page
        if repeat is not None:
            self.sheet.setTitleRows(CellRangeAddress(self.area(0, 0, 1, 1).RangeAddress.Sheet, 0, 0, 0, repeat))
            self.sheet.setPrintTitleRows(True)

    def protect(self):
        """Formulas cannot be overwritten by chance; there is no password."""
        self.sheet.protect("")
