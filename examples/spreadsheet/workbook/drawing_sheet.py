"""The sheet with the plan drawing and the two buttons."""

from com.sun.star.awt import Point, Size
from com.sun.star.form.FormButtonType import URL

from .pages import ONE
from .pen import Pen

NAME = "Drawing"
COLUMNS, PLACE_ROW, PLACE_ROWS = 8, 7, 50
BUTTONS = (
    ("Draw the plan, write the job packet", "org.deck.sheet:draw", 0),
    ("Save a copy with values only (.xlsx)", "org.deck.sheet:values", 7200),
)


def make(workbook):
    """Makes the sheet."""
    pen = Pen(workbook, NAME)
    pen.widths(*[23] * COLUMNS)
    pen.title("Drawing", "The button draws the plan as it stands and writes the job packet (PDF) beside the workbook.", COLUMNS)
    for label, address, left in BUTTONS:
        button(pen, label, address, left)
    pen.text(0, 5, "", "Deck figure wrapped", COLUMNS)
    pen.height(5, 10)
    pen.name_range("ButtonSays", 0, 5)
    pen.name_range("DrawingPlace", 0, PLACE_ROW, COLUMNS, PLACE_ROWS)
    pen.print_area(ONE, COLUMNS, PLACE_ROW + PLACE_ROWS)
    pen.protect()


def button(pen, label, address, left):
    """A push button that sends an address of the add-in's."""
    workbook = pen.workbook
    model = workbook.createInstance("com.sun.star.form.component.CommandButton")
    model.Label, model.ButtonType, model.TargetURL = label, URL, address
    model.Printable = False
    shape = workbook.createInstance("com.sun.star.drawing.ControlShape")
    shape.setSize(Size(6800, 900))
    shape.setPosition(Point(left, pen.cell(0, 2).Position.Y + 100))
    shape.setControl(model)
    pen.sheet.getDrawPage().add(shape)
