"""The plan drawing on its sheet, the job packet beside the workbook, and a copy of the workbook that holds values only."""

import pathlib

import uno
from com.sun.star.awt import Point, Size
from com.sun.star.beans import PropertyValue

from . import answers, faults, library, plans

RANGES = ("Boat", "Members", "Stock", "Openings", "KeepClear", "Settings", "Parts")
SAID = "ButtonSays"
PLACE = "DrawingPlace"
SHAPE = "Plan drawing"
VIEW = "plan"
NOTE = "ValuesOnly"
VALUES_NOTE = "This file holds values only: nothing in it is worked out anew. The workbook that works is {name}."
FORMULAS = 16
XLSX = "Calc MS Excel 2007 XML"


def draw(context, workbook):
    """Draws the plan on its sheet, and writes the packet where the workbook lies."""
    try:
        plan = answers.desk().plan(contents(workbook, name) for name in RANGES)
        place_drawing(context, workbook, plan.svg(VIEW))
        say(workbook, f"Drawing placed. {packet(workbook, plan)}")
    except plans.NotPlanned as stopped:
        say(workbook, "No drawing: " + faults.line(stopped.faults[0]))
    except (library.Refused, library.Stale, OSError) as problem:
        say(workbook, f"No drawing: {problem}")


def contents(workbook, name):
    return workbook.NamedRanges.getByName(name).getReferredCells().getDataArray()


def say(workbook, text):
    """Writes what came of it beside the button."""
    workbook.NamedRanges.getByName(SAID).getReferredCells().getCellByPosition(0, 0).setString(text)


def place_drawing(context, workbook, svg):
    """Puts the drawing where the sheet keeps room for it, in place of the one before."""
    place = workbook.NamedRanges.getByName(PLACE).getReferredCells()
    page = place.getSpreadsheet().getDrawPage()
    for index in reversed(range(page.getCount())):
        if page.getByIndex(index).Name == SHAPE:
            page.remove(page.getByIndex(index))
    shape = workbook.createInstance("com.sun.star.drawing.GraphicObjectShape")
    page.add(shape)
    shape.Name = SHAPE
    shape.Graphic = graphic(context, svg)
    shape.setPosition(Point(place.Position.X, place.Position.Y))
    shape.setSize(fitting(shape.Graphic, place.Size))


def graphic(context, svg):
    services = context.getServiceManager()
    stream = services.createInstanceWithContext("com.sun.star.io.SequenceInputStream", context)
    stream.initialize((uno.ByteSequence(svg.encode()),))
    provider = services.createInstanceWithContext("com.sun.star.graphic.GraphicProvider", context)
    return provider.queryGraphic((setting("InputStream", stream),))


def fitting(drawing, room):
    """The largest size in the room that keeps the drawing's shape."""
    size = drawing.Size100thMM if drawing.Size100thMM.Width else drawing.SizePixel
    scale = min(room.Width / size.Width, room.Height / size.Height)
    return Size(int(size.Width * scale), int(size.Height * scale))


def beside(workbook, ending):
    """The path of a file beside the workbook; nothing for a workbook that was not saved yet."""
    if not workbook.hasLocation() or not workbook.getURL().startswith("file:"):
        return None
    path = pathlib.Path(uno.fileUrlToSystemPath(workbook.getURL()))
    return path.with_name(path.stem + ending)


def packet(workbook, plan):
    path = beside(workbook, "-packet.pdf")
    if path is None:
        return "Save the workbook first, then press again: the packet is written beside it."
    plan.write_packet(path)
    return f"The packet is {path}."


def save_values(context, workbook):
    """Saves a copy for other programs, with values in place of formulas, and says so in it."""
    path = beside(workbook, "-values.xlsx")
    if path is None:
        say(workbook, "Save the workbook first, then press again: the copy is written beside it.")
        return
    write_values(context, workbook, path)
    say(workbook, f"Values saved as {path}.")


def write_values(context, workbook, path):
    """Writes the copy, made from the workbook as it stands in memory."""
    pipe = context.getServiceManager().createInstanceWithContext("com.sun.star.io.TempFile", context)
    workbook.storeToURL(pipe.Uri, (setting("FilterName", "calc8"),))
    desktop = context.getServiceManager().createInstanceWithContext("com.sun.star.frame.Desktop", context)
    copy = desktop.loadComponentFromURL(pipe.Uri, "_blank", 0, (setting("Hidden", True),))
    try:
        for sheet in copy.Sheets:
            freeze(sheet, workbook.Sheets.getByName(sheet.Name))
        note = copy.NamedRanges.getByName(NOTE).getReferredCells().getCellByPosition(0, 0)
        note.setString(VALUES_NOTE.format(name=pathlib.Path(uno.fileUrlToSystemPath(workbook.getURL())).name))
        copy.storeToURL(uno.systemPathToFileUrl(str(path)), (setting("FilterName", XLSX),))
    finally:
        copy.close(True)


def freeze(sheet, original):
    """Puts values in the place of formulas; buttons go, as nothing answers them there."""
    sheet.unprotect("")
    for found in original.queryContentCells(FORMULAS).RangeAddresses:
        there = (found.StartColumn, found.StartRow, found.EndColumn, found.EndRow)
        values = original.getCellRangeByPosition(*there).getDataArray()
        area = sheet.getCellRangeByPosition(*there)
        area.clearContents(FORMULAS)
        area.setDataArray(values)
    page = sheet.getDrawPage()
    for index in reversed(range(page.getCount())):
        if page.getByIndex(index).supportsService("com.sun.star.drawing.ControlShape"):
            page.remove(page.getByIndex(index))


def setting(name, value):
    return PropertyValue(name, 0, value, 0)
