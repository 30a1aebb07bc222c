"""Whatever is typed into an input cell: the workbook says what is wrong with it, and shows no error."""

import boats
import pytest
import sheet

RUBBISH = "?!"
FREE = "Deck input words"
SHEETS = ("Measurements", "Shop")


def inputs(book, name):
    """The input cells of a sheet: their places and styles."""
    found = []
    area = book.Sheets.getByName(name)
    for formats in area.getCellFormatRanges():
        if formats.CellStyle.startswith("Deck input"):
            there = formats.RangeAddress
            for row in range(there.StartRow, there.EndRow + 1):
                for column in range(there.StartColumn, there.EndColumn + 1):
                    if not is_behind_another(area, column, row):
                        found.append((column, row, formats.CellStyle))
    return found


def is_behind_another(area, column, row):
    """A cell that is joined to the one before it cannot be reached by hand."""
    cursor = area.createCursorByRange(area.getCellByPosition(column, row))
    cursor.collapseToMergedArea()
    return (cursor.RangeAddress.StartColumn, cursor.RangeAddress.StartRow) != (column, row)


def kept(cell):
    return cell.getFormula()


@pytest.mark.parametrize("name", SHEETS)
def test_rubbish_in_any_input_cell_is_named_and_is_no_error(filled, name):
    book = filled("uneven-22")
    area = book.Sheets.getByName(name)
    normal = sheet.messages(book)
    quiet = []
    tried = 0
    for column, row, style in inputs(book, name):
        cell = area.getCellByPosition(column, row)
        before = kept(cell)
        cell.setString(RUBBISH)
        # One recalculation for each cell: what the last one held comes back together with the next one's rubbish.
        book.enableAutomaticCalculation(True)
        assert sheet.errors(book) == [], f"{name} {column} {row}"
        if style != FREE and sheet.messages(book) == normal:
            quiet.append(cell.AbsoluteName)
        book.enableAutomaticCalculation(False)
        cell.setFormula(before)
        tried += 1
    book.enableAutomaticCalculation(True)
    assert tried > 100
    assert quiet == []
    assert sheet.messages(book) == normal


NUMBERS = (-5, 1e300, 0.1, 0)


@pytest.mark.parametrize("number", NUMBERS)
def test_numbers_of_any_size_are_no_error(filled, number):
    book = filled("plain-20")
    area = book.Sheets.getByName("Measurements")
    for column, row, style in inputs(book, "Measurements")[:60]:
        cell = area.getCellByPosition(column, row)
        before = kept(cell)
        cell.setValue(number)
        assert sheet.errors(book) == [], f"{column} {row}"
        cell.setFormula(before)


def test_formulas_are_locked_and_inputs_open(empty):
    for area in empty.Sheets:
        assert area.isProtected(), area.Name
        formulas = area.queryContentCells(16)
        for cell in formulas.Cells:
            assert cell.CellProtection.IsLocked, cell.AbsoluteName
    for name in SHEETS:
        area = empty.Sheets.getByName(name)
        for column, row, _ in inputs(empty, name):
            assert not area.getCellByPosition(column, row).CellProtection.IsLocked


def test_inputs_have_notes_and_lists(empty):
    area = empty.Sheets.getByName("Measurements")
    noted = {note.Position.Row for note in area.Annotations if note.Position.Column == 1}
    boat = sheet.named(empty, "Boat").RangeAddress
    assert noted >= set(range(boat.StartRow, boat.EndRow + 1))
    unit = sheet.named(empty, "BoatUnit").Validation
    assert unit.ShowList == 1 and unit.getFormula1() == '"in";"ft";"mm";"cm";"m"'


def test_the_demo_boats_stay_within_the_lists(filled):
    """A list that leaves out a word which the library accepts would warn of a right entry."""
    book = filled("uneven-22")
    for name in SHEETS:
        for column, row, _ in inputs(book, name):
            cell = book.Sheets.getByName(name).getCellByPosition(column, row)
            listed = cell.Validation.getFormula1()
            if cell.Validation.ShowList and listed.startswith('"') and cell.getString():
                assert f'"{cell.getString()}"' in listed, cell.AbsoluteName
    assert boats.PLANNED
