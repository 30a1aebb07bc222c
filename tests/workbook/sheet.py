"""What stands in the cells of a workbook."""

ERRORS = 4


def cells(book, sheet, area):
    """The rows of an area, without those that are blank."""
    rows = book.Sheets.getByName(sheet).getCellRangeByName(area).getDataArray()
    return [row for row in rows if any(cell != "" for cell in row)]


def below(book, sheet, heading, columns):
    """The rows below a heading and its column headings, to the first blank one."""
    rows = book.Sheets.getByName(sheet).getCellRangeByName("A1:H200").getDataArray()
    first = next(index for index, row in enumerate(rows) if str(row[0]).startswith(heading)) + 2
    found = []
    for row in rows[first:]:
        if all(cell == "" for cell in row[:columns]):
            break
        found.append(row[:columns])
    return found


def beside(book, sheet, label):
    """The value right of a label."""
    for row in book.Sheets.getByName(sheet).getCellRangeByName("A1:H60").getDataArray():
        for column, cell in enumerate(row):
            if cell == label:
                return next((one for one in row[column + 1 :] if one != ""), "")
    raise AssertionError(f"{label} is not on {sheet}")


def errors(book):
    """Where formulas show an error."""
    found = []
    for sheet in book.Sheets:
        ranges = sheet.queryFormulaCells(ERRORS)
        if ranges.getCount():
            found.append(ranges.RangeAddressesAsString)
    return found


def messages(book):
    """What the workbook says is wrong, on Measurements and on the quote."""
    said = [": ".join(row[:2]) for row in cells(book, "Measurements", "A5:B9") if row[0] != "Nothing"]
    return said + [row[0] for row in cells(book, "Quote", "A9:A9")]


def named(book, name):
    return book.NamedRanges.getByName(name).getReferredCells()


def everything(book):
    """Every cell of every sheet that has content, to compare two states of a workbook."""
    found = {}
    for sheet in book.Sheets:
        cursor = sheet.createCursor()
        cursor.gotoEndOfUsedArea(False)
        address = cursor.RangeAddress
        found[sheet.Name] = sheet.getCellRangeByPosition(0, 0, address.EndColumn, address.EndRow).getDataArray()
    return found
