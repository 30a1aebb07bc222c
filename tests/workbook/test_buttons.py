"""The buttons, pressed: the drawing is on its sheet, the packet beside the workbook, the copy holds values only."""

import math
import time
import zipfile

import boats
import office as offices
import pytest
import sheet
import uno

DRAW, VALUES = "org.deck.sheet:draw", "org.deck.sheet:values"


def press(office, book, address):
    """Sends the address of the button whose label it is, through the window of the workbook."""
    url = uno.createUnoStruct("com.sun.star.util.URL")
    url.Complete = address
    _, url = office.service("com.sun.star.util.URLTransformer").parseStrict(url)
    handler = book.getCurrentController().getFrame().queryDispatch(url, "_self", 0)
    assert handler is not None, address
    handler.dispatch(url, ())


def buttons(book):
    page = book.Sheets.getByName("Drawing").getDrawPage()
    shapes = [page.getByIndex(index) for index in range(page.getCount())]
    return {one.Control.Label: one.Control for one in shapes if one.supportsService("com.sun.star.drawing.ControlShape")}


def drawings(book):
    page = book.Sheets.getByName("Drawing").getDrawPage()
    return [one for one in (page.getByIndex(index) for index in range(page.getCount())) if one.Name == "Plan drawing"]


def same(one, other):
    """Files of the other program keep fifteen digits of a number."""
    return math.isclose(one, other, rel_tol=1e-14) if isinstance(other, float) and isinstance(one, float) else one == other


def said(book):
    return sheet.named(book, "ButtonSays").getCellByPosition(0, 0).getString()


@pytest.fixture
def saved(filled, tmp_path):
    """The uneven boat, saved as its user would."""
    book = filled("uneven-22")
    offices.save_as(book, tmp_path / "Kestrel.ods")
    return book


def test_the_buttons_send_these_addresses(empty):
    found = {control.TargetURL for control in buttons(empty).values()}
    assert found == {DRAW, VALUES}


def test_the_drawing_is_placed_and_the_packet_written(office, saved, tmp_path):
    press(office, saved, DRAW)
    assert len(drawings(saved)) == 1, said(saved)
    drawing = drawings(saved)[0]
    place = sheet.named(saved, "DrawingPlace")
    assert 0 < drawing.Size.Width <= place.Size.Width and 0 < drawing.Size.Height <= place.Size.Height
    # It fills the room in one direction at least.
    assert drawing.Size.Width > 0.95 * place.Size.Width or drawing.Size.Height > 0.95 * place.Size.Height
    packet = tmp_path / "Kestrel-packet.pdf"
    assert packet.read_bytes().startswith(b"%PDF-") and str(packet) in said(saved)
    # Once more: the drawing is replaced and not laid over.
    press(office, saved, DRAW)
    assert len(drawings(saved)) == 1


def test_a_click_on_the_button_does_it(office, tmp_path):
    """The way from a click to the add-in, in a window of its own."""
    from conftest import BUILT

    book = office.desktop.loadComponentFromURL(uno.systemPathToFileUrl(str(BUILT / "quote.ods")), "_blank", 0, ())
    try:
        boats.type_in(book, boats.job("plain-20"))
        offices.save_as(book, tmp_path / "Sandpiper.ods")
        controller = book.getCurrentController()
        controller.setActiveSheet(book.Sheets.getByName("Drawing"))
        controller.setFormDesignMode(False)
        button = buttons(book)["Draw the plan, write the job packet"]
        controller.getControl(button).getAccessibleContext().doAccessibleAction(0)
        waited_for(lambda: said(book))
        assert said(book).startswith("Drawing placed.") and len(drawings(book)) == 1
        assert (tmp_path / "Sandpiper-packet.pdf").exists()
    finally:
        book.close(True)


def waited_for(true):
    """A click is answered when the office comes to it."""
    end = time.monotonic() + 60
    while not true() and time.monotonic() < end:
        time.sleep(0.1)


def test_the_drawing_is_kept_in_the_file(office, saved, tmp_path):
    press(office, saved, DRAW)
    offices.save(saved, tmp_path / "again.ods")
    again = office.open(tmp_path / "again.ods")
    try:
        assert len(drawings(again)) == 1
    finally:
        again.close(True)


def test_without_a_plan_there_is_a_reason(office, saved):
    sheet.named(saved, "Stock").getCellByPosition(1, 1).setString("rubbish")
    press(office, saved, DRAW)
    assert said(saved).startswith("No drawing: Sheets, row 1, length: ") and drawings(saved) == []


def test_a_workbook_that_was_never_saved_gets_its_drawing_and_a_hint(office):
    from conftest import BUILT

    book = office.desktop.loadComponentFromURL(
        uno.systemPathToFileUrl(str(BUILT / "quote.ods")), "_blank", 0, (offices.setting("AsTemplate", True), offices.setting("Hidden", True))
    )
    try:
        press(office, book, VALUES)
        assert said(book).startswith("Save the workbook first")
    finally:
        book.close(True)


def test_the_copy_holds_values_only_and_says_so(office, saved, tmp_path):
    press(office, saved, VALUES)
    path = tmp_path / "Kestrel-values.xlsx"
    assert str(path) in said(saved)
    with zipfile.ZipFile(path) as package:
        sheets = [package.read(name).decode() for name in package.namelist() if name.startswith("xl/worksheets/sheet")]
    assert len(sheets) == 6 and not any("<f" in text.replace("<formula", "") for text in sheets)
    copy = office.open(path)
    try:
        for name in ("Results", "Quote"):
            original = saved.Sheets.getByName(name).getCellRangeByName("A1:H120").getDataArray()
            copied = copy.Sheets.getByName(name).getCellRangeByName("A1:H120").getDataArray()
            assert all(map(same, sum(copied, ()), sum(original, ()))), name
        head = copy.Sheets.getByName("Measurements").getCellRangeByName("A3").getString()
        assert head == "This file holds values only: nothing in it is worked out anew. The workbook that works is Kestrel.ods."
    finally:
        copy.close(True)
