"""Each function in a cell, on plain ranges: what it gives, and what it says of what it cannot use."""

import json
import math
import pathlib
import re

import conftest
import pytest

# The number of a formula whose result is a text, in the office.
STRING = 2

STATIONS = tuple((24.0 * member,) for member in range(11))
BOAT = (
    ("Boat", "Sandpiper"),
    ("Unit", "in"),
    ("Deck length", "20 ft"),
    ("Beam", 96.0),
    ("Stations measured to", "centre"),
    ("Flange width", 2.0),
)
SHEETS = (("Sheet", "Length", "Width", "Thickness"), ("3/4 ply 4 x 8", 96.0, 48.0, "3/4"))
GAP = (("Gap between boards", 0.0),)


@pytest.fixture
def ranges(scratch):
    """The test deck of twenty feet on members every two feet, in cells."""
    put(scratch, "A1", BOAT)
    put(scratch, "D1", STATIONS)
    put(scratch, "F1", SHEETS)
    put(scratch, "K1", GAP)
    return scratch


JOB = "A1:B6;D1:D11;F1:I2;;;K1:L1;"


def put(sheet, corner, rows):
    cell = sheet.getCellRangeByName(corner).CellAddress
    area = sheet.getCellRangeByPosition(cell.Column, cell.Row, cell.Column + len(rows[0]) - 1, cell.Row + len(rows) - 1)
    area.setDataArray(rows)


def value(sheet, formula):
    """A formula's value in a cell of its own; no error is accepted."""
    cell = sheet.getCellRangeByName("A40")
    cell.setFormula("=" + formula)
    assert cell.getError() == 0, f"{formula}: {cell.getError()}"
    return cell.getString() if cell.FormulaResultType2 == STRING else cell.getValue()


def block(sheet, formula, columns=8, rows=6):
    area = sheet.getCellRangeByPosition(0, 50, columns - 1, 50 + rows - 1)
    area.setArrayFormula("=" + formula)
    found = area.getDataArray()
    area.clearContents(1 | 2 | 4 | 16)
    return found


def test_seams_of_the_test_deck(ranges):
    rows = block(ranges, f"DECK.SEAMS({JOB};6)")
    # Five full boards on the members every two feet: by hand.
    assert [row[2] for row in rows[:4]] == [48.0, 96.0, 144.0, 192.0]
    assert [row[1] for row in rows[:4]] == [3.0, 5.0, 7.0, 9.0]
    assert rows[4:] == (("",) * 8,) * 2


def test_panels_sheets_fasteners_and_costs(ranges):
    assert [row[1:3] for row in block(ranges, f"DECK.PANELS({JOB};6)")[:5]] == [(96.0, 48.0)] * 5
    assert block(ranges, f"DECK.SHEETS({JOB};2)", 7, 2)[0][:4] == ("Sheet", "3/4 ply 4 x 8", 5.0, "sheet")
    fasteners = block(ranges, f"DECK.FASTENERS({JOB};1)", 7, 1)[0]
    assert fasteners[1] == 195.0 and fasteners[5] + fasteners[6] == 195.0
    costs = block(ranges, f"DECK.COSTS({JOB};6)", 7)
    assert [row[0] for row in costs if row[0]] == ["Sheet", "Fastener", "Seam tape", "Edge sealer"]


def test_rows_that_do_not_fit_are_told(ranges):
    rows = block(ranges, f"DECK.SEAMS({JOB};3)", 8, 3)
    assert rows[1][0] == 2.0 and rows[2][0] == "and 2 more"
    assert "is no number of rows" in block(ranges, f"DECK.SEAMS({JOB};-1)", 8, 1)[0][0]


def test_facts(ranges):
    assert value(ranges, f'DECK.FACT("boards";{JOB})') == 5
    assert value(ranges, f'DECK.FACT("layout";{JOB})') == "5 boards, 4 seams"
    assert value(ranges, f'DECK.FACT("faults";{JOB})') == 0
    assert value(ranges, f'DECK.FACT("bords";{JOB})').startswith('"bords" is no figure of a plan. Figures are: boat')
    assert value(ranges, "DECK.VERSION()") == "deck 0.1.0, border 1"


def test_a_wrong_station_is_named_by_its_row(ranges):
    ranges.getCellRangeByName("D4").setString("rubbish")
    said = value(ranges, f'DECK.FACT("boards";{JOB})')
    assert said.startswith('Member stations, row 4, station: "rubbish" cannot be read as a length.')
    messages = block(ranges, f"DECK.MESSAGES({JOB};2)", 2, 2)
    assert messages[0][0] == "Member stations, row 4, station" and messages[1] == ("", "")


def test_what_is_missing_is_named(ranges):
    for cell, label in (("B3", "Deck length"), ("B4", "Beam"), ("B1", "Boat")):
        before = ranges.getCellRangeByName(cell).getFormula()
        ranges.getCellRangeByName(cell).setString("")
        assert value(ranges, f'DECK.FACT("boards";{JOB})').startswith(f"{label}: Missing"), label
        ranges.getCellRangeByName(cell).setFormula(before)
    assert value(ranges, 'DECK.FACT("boards";;;)').startswith("Deck length: Missing")


def test_unknown_labels_and_headings_are_named(ranges):
    ranges.getCellRangeByName("A5").setString("Stations mesured to")
    assert 'Boat: "Stations mesured to" is not a label' in value(ranges, f'DECK.FACT("boards";{JOB})')
    ranges.getCellRangeByName("A5").setString("Stations measured to")
    ranges.getCellRangeByName("I1").setString("Thick")
    assert 'Sheets: The heading "Thick" is not known. Headings are: Sheet, Length' in value(ranges, f'DECK.FACT("boards";{JOB})')


LENGTHS = (
    ('"7\' 10-1/2"""', '"in"', 94.5),
    ('"94 1/2"', "", 94.5),
    ('"2400 mm"', '"mm"', 2400.0),
    ('"1 in"', '"mm"', 25.4),
    ("12", '"ft"', 12.0),
    ('"1/64"', "", 0.015625),
)


@pytest.mark.parametrize(("text", "unit", "number"), LENGTHS)
def test_lengths_are_read(scratch, text, unit, number):
    assert value(scratch, f"DECK.LENGTH({text};{unit})") == number


def test_fractions_are_written(scratch):
    assert value(scratch, "DECK.FRACTION(94.5)") == '94-1/2"'
    assert value(scratch, 'DECK.FRACTION(94.5;"in";16;"yes")') == "7' 10-1/2\""
    assert value(scratch, "DECK.FRACTION(47.913)") == '\u224847-15/16" (47.913)'
    assert value(scratch, 'DECK.FRACTION("94.5 in";"mm")') == "2400.3 mm"


@pytest.mark.parametrize("formula", ['DECK.LENGTH("rubbish")', 'DECK.LENGTH("")', 'DECK.LENGTH("1 in";"furlong")', 'DECK.FRACTION(1;"in";7)', "DECK.LENGTH(1E300)", "DECK.LENGTH()"])
def test_what_is_no_length_says_so(scratch, formula):
    said = value(scratch, formula)
    assert isinstance(said, str) and len(said) > 20, said


def test_span_limits_are_the_published_ones(scratch):
    series = '"sanded plywood Group 1 A-A/A-C";"3/4"'
    # Q225J, dry, strength axis along the supports, 24 inches: the library's tables are tested against the print.
    dry = value(scratch, f'DECK.SPANLIMIT({series};24;"along";3;"no")')
    assert math.isclose(dry, 49.88596347871054, rel_tol=1e-12)
    assert value(scratch, f'DECK.SPANLIMIT({series};"2 ft";"along";3;"no";"governing")') == "deflection"
    assert value(scratch, f'DECK.SPANLIMIT({series};24;"along";3;"no";"shear")') == 320.0
    assert value(scratch, f"DECK.SPANLIMIT({series};24)") < dry
    assert "no series" in value(scratch, 'DECK.SPANLIMIT("oak";"3/4";24)')
    assert "is no figure of the limits" in value(scratch, f'DECK.SPANLIMIT({series};24;;;;"weight")')


def test_a_nest_of_a_range_on_a_range(scratch):
    put(scratch, "A1", (("Part", "Length", "Width", "Count"), ("lid", 24.0, 24.0, 8.0)))
    put(scratch, "F1", (("Sheet", "Length", "Width"), ("ply", 96.0, 48.0)))
    rows = block(scratch, "DECK.NEST(A1:D2;F1:H2;0;0;;9)", 8, 9)
    # Eight squares of two feet are one sheet.
    assert {row[0] for row in rows[:8]} == {1.0} and rows[8][0] == ""
    places = {(row[3], row[4]) for row in rows[:8]}
    assert places == {(24.0 * x, 24.0 * y) for x in range(4) for y in range(2)}
    scratch.getCellRangeByName("B2").setString("rubbish")
    assert block(scratch, "DECK.NEST(A1:D2;F1:H2)", 8, 1)[0][0].startswith("Parts, row 1, length: ")


def test_the_wizard_describes_each_function(office):
    wizard = office.service("com.sun.star.sheet.FunctionDescriptions")
    described = {}
    for index in range(wizard.getCount()):
        entry = {one.Name: one.Value for one in wizard.getByIndex(index)}
        if entry["Name"].startswith("DECK."):
            described[entry["Name"]] = entry
    functions = (conftest.SPREADSHEET / "addin/functions.py").read_text()
    assert set(described) == set(re.findall(r'"(DECK\.[A-Z]+)"', functions)) and len(described) == 15
    for name, entry in described.items():
        assert len(entry["Description"]) > 30, name
        assert all(len(argument.Description) > 20 for argument in entry["Arguments"] or ()), name


def test_a_stale_library_is_refused():
    from deck_sheet import built, library

    path = conftest.UNPACKED / built.LIBRARY
    with pytest.raises(library.Stale, match=f"border number {built.ABI} and the add-in needs {built.ABI + 1}"):
        library.Library(path, abi=built.ABI + 1)


def test_twenty_formulas_plan_once():
    from deck_sheet import answers

    ranges = [BOAT, STATIONS, SHEETS, None, None, GAP, None]
    before = answers.desk().planned
    for table in ("seams", "panels", "sheets", "fasteners", "costs"):
        for rows in (None, 3.0, 9.0, 20.0):
            answers.of_plan(table, [*ranges, rows])
    assert answers.desk().planned == before + 1


def test_the_built_package_says_what_it_needs():
    assert json.loads((conftest.BUILT / "rust/plain-20/plan.json").read_text())["version"]
    assert pathlib.Path(conftest.UNPACKED / "description.xml").read_text().count("org.deck.sheet") == 1
