//! Lists of a plan as columns: what pandas and polars make a data frame of.

use crate::document::python;
use deck_core::{Error, Fault, Kind};
use pyo3::prelude::*;
use pyo3::types::{PyDict, PyList};
use serde_json::Value;

/// Where a column's values stand.
#[derive(Clone, Copy)]
enum Cell {
    /// In the item, at a JSON pointer.
    Own(&'static str),
    /// In the item of the list inside it, at a JSON pointer.
    Inner(&'static str),
    /// The item's place in its list, from 1.
    Place,
    /// How many items a list of the item's has.
    Count(&'static str),
}
use Cell::{Count, Inner, Own, Place};

/// A list of the plan's JSON, and what of it stands in columns.
struct Table {
    name: &'static str,
    list: &'static str,
    /// A list in each item, with a row for each of its items.
    inside: Option<&'static str>,
    columns: &'static [(&'static str, Cell)],
}

const TABLES: [Table; 8] = [
    Table {
        name: "panels",
        list: "/panels",
        inside: None,
        columns: &[
            ("label", Own("/label")),
            ("board", Own("/board")),
            ("length", Own("/length")),
            ("width", Own("/width")),
            ("diagonal", Own("/diagonal")),
            ("area", Own("/area")),
            ("weight_lb", Own("/weight_lb")),
            ("strength_axis", Own("/strength_axis")),
            ("fore", Own("/bounds/fore")),
            ("aft", Own("/bounds/aft")),
            ("port", Own("/bounds/port")),
            ("starboard", Own("/bounds/starboard")),
            ("openings", Count("/openings")),
        ],
    },
    Table {
        name: "seams",
        list: "/layouts/0/seams",
        inside: None,
        columns: &[
            ("number", Own("/number")),
            ("member", Own("/member")),
            ("fore", Own("/fore")),
            ("aft", Own("/aft")),
            ("bearing_fore", Own("/bearing_fore")),
            ("bearing_aft", Own("/bearing_aft")),
            ("shift", Own("/shift")),
            ("short_by", Own("/short_by")),
            ("length", Own("/length")),
        ],
    },
    Table {
        name: "fasteners",
        list: "/fasteners/rows",
        inside: Some("/positions"),
        columns: &[
            ("panel", Own("/panel")),
            ("member", Own("/member")),
            ("kind", Own("/kind")),
            ("seam", Own("/seam")),
            ("x", Own("/station")),
            ("y", Inner("")),
        ],
    },
    Table {
        name: "sheets",
        list: "/sheets/sheets",
        inside: Some("/placements"),
        columns: &[
            ("sheet", Place),
            ("stock", Own("/stock")),
            ("part", Inner("/part")),
            ("x", Inner("/x")),
            ("y", Inner("/y")),
            ("length", Inner("/length")),
            ("width", Inner("/width")),
            ("turned", Inner("/turned")),
        ],
    },
    Table {
        name: "takeoff",
        list: "/takeoff/lines",
        inside: None,
        columns: &[
            ("item", Own("/item")),
            ("description", Own("/description")),
            ("measure", Own("/needed/measure")),
            ("needed", Own("/needed/amount")),
            ("spare", Own("/spare/amount")),
            ("buy", Own("/buy")),
            ("unit", Own("/unit")),
            ("price", Own("/price")),
            ("cost", Own("/cost")),
        ],
    },
    Table {
        name: "span",
        list: "/span/panels",
        inside: None,
        columns: &[
            ("panel", Own("/panel")),
            ("axis", Own("/axis")),
            ("bays", Count("/bays")),
            ("table_governing", Own("/table/governing")),
            ("table_allowable_psf", Own("/table/allowable_psf")),
            ("table_utilisation", Own("/table/utilisation")),
            ("beam_governing", Own("/beam/governing")),
            ("beam_allowable_psf", Own("/beam/allowable_psf")),
            ("beam_utilisation", Own("/beam/utilisation")),
        ],
    },
    Table {
        name: "arrangements",
        list: "/arrangements",
        inside: None,
        columns: &[
            ("rank", Own("/rank")),
            ("kind", Own("/kind")),
            ("built", Own("/built")),
            ("cost", Own("/figures/cost")),
            ("sheet_area", Own("/figures/sheet_area")),
            ("sheets", Own("/figures/sheets")),
            ("boards", Own("/figures/boards")),
            ("seam_length", Own("/figures/seam_length")),
            ("joint_length", Own("/figures/joint_length")),
            ("blocks", Own("/figures/blocks")),
            ("blocking_length", Own("/figures/blocking_length")),
            ("utilisation", Own("/figures/utilisation")),
            ("no_layout", Own("/no_layout/reason")),
        ],
    },
    Table {
        name: "blocks",
        list: "/division/blocks",
        inside: None,
        columns: &[
            ("label", Own("/label")),
            ("joint", Own("/joint")),
            ("fore", Own("/fore")),
            ("aft", Own("/aft")),
            ("port", Own("/port")),
            ("starboard", Own("/starboard")),
            ("length", Own("/length")),
            ("width", Own("/width")),
        ],
    },
];

/// The names of the tables.
pub(crate) fn names() -> Vec<&'static str> {
    TABLES.iter().map(|table| table.name).collect()
}

/// The columns of a table, each a list with a value for each row; none where there is no such table.
pub(crate) fn columns<'py>(py: Python<'py>, plan: &Value, name: &str) -> PyResult<Option<Bound<'py, PyDict>>> {
    let Some(table) = TABLES.iter().find(|table| table.name == name) else { return Ok(None) };
    let rows = rows(plan, table);
    let columns = PyDict::new(py);
    for (name, cell) in table.columns {
        let values = rows.iter().map(|row| python(py, &row.value(*cell))).collect::<PyResult<Vec<_>>>()?;
        columns.set_item(name, PyList::new(py, values)?)?;
    }
    Ok(Some(columns))
}

/// That there is no such table.
pub(crate) fn unknown(name: &str) -> Error {
    let accepted = format!("It is {}.", names().join(", "));
    Fault::new(Kind::UnknownWord, format!("{name:?}"), format!("There are no columns of {name:?}."), accepted).into()
}

struct Row<'a> {
    place: usize,
    item: &'a Value,
    inner: &'a Value,
}

impl Row<'_> {
    fn value(&self, cell: Cell) -> Value {
        match cell {
            Own(pointer) => self.item.pointer(pointer).cloned().unwrap_or_default(),
            Inner(pointer) => self.inner.pointer(pointer).cloned().unwrap_or_default(),
            Place => self.place.into(),
            Count(pointer) => self.item.pointer(pointer).and_then(Value::as_array).map_or(0, Vec::len).into(),
        }
    }
}

fn rows<'a>(plan: &'a Value, table: &Table) -> Vec<Row<'a>> {
    let list = |value: &'a Value, pointer: &str| value.pointer(pointer).and_then(Value::as_array);
    let mut rows = Vec::new();
    for (index, item) in list(plan, table.list).into_iter().flatten().enumerate() {
        let place = index + 1;
        match table.inside {
            None => rows.push(Row { place, item, inner: &Value::Null }),
            Some(inside) => {
                rows.extend(list(item, inside).into_iter().flatten().map(|inner| Row { place, item, inner }));
            }
        }
    }
    rows
}
