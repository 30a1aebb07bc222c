"""Which label of a cell, or heading of a column, stands for which field of the job file."""

from dataclasses import dataclass
from typing import Callable

from . import cells


@dataclass(frozen=True)
class Field:
    """A label, the steps to its field in the job, and how its cell is read."""

    label: str
    path: tuple
    read: Callable


def field(label, path, read=cells.length):
    steps = tuple(int(step) if step.isdigit() else step for step in path.split("/"))
    return Field(label, steps, read)


BOAT = (
    field("Boat", "name", cells.text),
    field("Unit", "unit", cells.word),
    field("Deck length", "deck/length"),
    field("Beam", "deck/beam"),
    field("Bow corners", "bow-corners", cells.word),
    field("Bow corner size", "bow-size"),
    field("Taper length", "deck/taper/length"),
    field("Beam at the bow edge", "deck/taper/bow_beam"),
    field("Notch width", "deck/notch/width"),
    field("Notch depth", "deck/notch/depth"),
    field("Notch from port", "deck/notch/from_port"),
    field("Notch inside radius", "deck/notch/inside_radius"),
    field("Notch stern radius", "deck/notch/stern_radius"),
    field("Member profile", "frame/profile", cells.profile),
    field("Flange faces", "frame/faces", cells.word),
    field("Stations measured to", "frame/measured_to", cells.word),
    field("Flange width", "frame/flange"),
    field("Flange wall", "frame/wall"),
    field("Regular: first member", "frame/regular/first"),
    field("Regular: last member", "frame/regular/last"),
    field("Regular: spacing", "frame/regular/spacing"),
)

SETTINGS = (
    field("Gap between boards", "gap"),
    field("Short at the stern", "end_tolerance"),
    field("Fastener", "fastening/kind", cells.text),
    field("Fastener diameter", "fastening/diameter"),
    field("Fastener length", "fastening/length"),
    field("Threads per inch", "fastening/threads_per_inch", cells.number),
    field("Drill point", "fastening/drill_point"),
    field("Edge spacing", "fastening/edge_spacing"),
    field("Field spacing", "fastening/field_spacing"),
    field("Edge distance in ply", "fastening/edge_distance"),
    field("Edge distance in metal", "fastening/edge_distance_metal"),
    field("End distance", "fastening/end_distance"),
    field("Stagger rows", "fastening/stagger", cells.yes),
    field("Spare fasteners, percent", "fastening/spares_percent", cells.number),
    field("Fasteners in a box", "fastening/box", cells.number),
    field("Kerf", "saw/kerf"),
    field("Trim", "saw/trim"),
    field("Cutting stages", "saw/stages", cells.number),
    field("First saw line along", "saw/first", cells.word),
    field("Keep offcuts from, length", "saw/keep/0"),
    field("Keep offcuts from, width", "saw/keep/1"),
    field("Face on the saw", "saw/face", cells.word),
    field("Finest fraction", "shop/fractions", cells.number),
    field("Write feet", "shop/feet", cells.yes),
    field("Least bearing", "shop/least_bearing"),
    field("Preferred bearing", "shop/preferred_bearing"),
    field("Least board width", "shop/least_panel_width"),
    field("Preferred board width", "shop/preferred_panel_width"),
    field("Overhang, bow and stern", "shop/overhang"),
    field("Overhang, sides", "shop/side_overhang"),
    field("Space under the deck", "shop/clearance"),
    field("Spare sheets", "shop/spare_sheets", cells.number),
    field("Coats of sealer", "shop/sealer_coats", cells.number),
    field("Edge that a can seals once", "shop/edge_sealer_coverage"),
    field("Tape width", "shop/tape_width"),
    field("Tape thickness", "shop/tape_thickness"),
    field("Tape in a roll", "shop/tape_roll"),
    field("Barrier on the members", "shop/barrier", cells.yes),
    field("Paper", "shop/paper", cells.word),
    field("Panel series", "span/panel/series", cells.text),
    field("Panel rating", "span/panel/rating", cells.text),
    field("Panel group", "span/panel/group", cells.text),
    field("Panel grade", "span/panel/grade", cells.text),
    field("Wet in service", "span/wet", cells.yes),
    field("Load duration factor", "span/duration", cells.number),
    field("Sag limit, bay over", "span/deflection", cells.number),
    field("Load, psf", "span/load/psf", cells.number),
    field("Heel, pounds", "heel", cells.number),
    field("Pedestal, pounds", "pedestal", cells.number),
    field("Jack, pounds", "jack", cells.number),
    field("Alloy of the members", "span/fasteners/alloy", cells.text),
    field("Screw head", "span/fasteners/head"),
    field("Lift, pounds", "span/fasteners/lift/pounds", cells.number),
)


@dataclass(frozen=True)
class Table:
    """A range with a heading over each column, one thing of the job in each row."""

    name: str
    path: tuple
    columns: tuple


MEMBERS = Table(
    "Member stations",
    ("frame", "members"),
    (
        field("Station", "station"),
        field("Flange", "flange"),
        field("Measured to", "measured_to", cells.word),
        field("Profile", "profile", cells.profile),
        field("Faces", "faces", cells.word),
        field("Wall", "wall"),
        field("Port end", "port_end"),
        field("Starboard end", "starboard_end"),
        field("Condition", "condition", cells.word),
    ),
)

OPENINGS = Table(
    "Openings",
    ("openings",),
    (
        field("Opening", "name", cells.text),
        field("Purpose", "purpose", cells.text),
        field("From bow", "x"),
        field("From port", "y"),
        field("Diameter", "diameter"),
        field("Fore and aft", "depth"),
        field("Athwart", "width"),
        field("Corner radius", "corner_radius"),
        field("Framed", "framed", cells.yes),
    ),
)

KEEP_CLEAR = Table(
    "Keep clear",
    ("keep_clear",),
    (
        field("Keep clear", "name", cells.text),
        field("From", "from"),
        field("To", "to"),
    ),
)

SHEETS = Table(
    "Sheets",
    ("stock",),
    (
        field("Sheet", "label", cells.text),
        field("Length", "length"),
        field("Width", "width"),
        field("Thickness", "thickness"),
        field("Price", "price"),
        field("Count", "count", cells.number),
        field("Offcut", "offcut", cells.yes),
        field("Treatment", "treatment", cells.word),
        field("Measured length", "measured/length"),
        field("Measured width", "measured/width"),
    ),
)

EXTRA_PARTS = Table(
    "Extra parts",
    ("extra_parts",),
    (
        field("Part", "label", cells.text),
        field("Length", "length"),
        field("Width", "width"),
        field("Count", "count", cells.number),
        field("Grain", "grain", cells.word),
    ),
)

NEST_PARTS = Table("Parts", ("parts",), EXTRA_PARTS.columns)
NEST_STOCK = Table(
    "Stock",
    ("stock",),
    tuple(column for column in SHEETS.columns if column.label in ("Sheet", "Length", "Width", "Price", "Count", "Offcut")),
)
