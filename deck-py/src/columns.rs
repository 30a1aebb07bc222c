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

const TABLES: [Table; 10] = [
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
        name: "old_holes",
        list: "/old_holes",
        inside: None,
        columns: &[
            ("member", Own("/member")),
            ("x", Own("/x")),
            ("y", Own("/y")),
            ("diameter", Own("/diameter")),
            ("clear", Own("/clear")),
            ("nearest", Own("/nearest")),
            ("reused", Own("/reused")),
        ],
    },
    Table {
        name: "fitting_holes",
        list: "/fittings/holes",
        inside: None,
        columns: &[
            ("fitting", Own("/fitting")),
            ("number", Own("/number")),
            ("x", Own("/x")),
            ("y", Own("/y")),
            ("panel", Own("/panel")),
            ("from_fore", Own("/from_fore")),
            ("from_port", Own("/from_port")),
            ("seam", Own("/seam/number")),
            ("from_seam", Own("/seam/distance")),
            ("member", Own("/member/number")),
            ("through_member", Own("/member/through")),
            ("needed", Own("/stack/needed")),
            ("bolt", Own("/stack/bolt")),
            ("findings", Count("/findings")),
        ],
    },
    Table {
        name: "opening_clearances",
        list: "/opening_checks/openings",
        inside: Some("/clearances"),
        columns: &[
            ("opening", Own("/name")),
            ("rule", Inner("/rule")),
            ("distance", Inner("/distance")),
            ("least", Inner("/least")),
            ("preferred", Inner("/preferred")),
            ("short_by", Inner("/short_by")),
        ],
    },
    Table {
        name: "patches",
        list: "/patch/patches",
        inside: None,
        columns: &[
            ("board", Own("/board")),
            ("fore", Own("/bounds/fore")),
            ("aft", Own("/bounds/aft")),
            ("port", Own("/bounds/port")),
            ("starboard", Own("/bounds/starboard")),
            ("plywood", Own("/plywood")),
            ("blocking", Count("/blocking")),
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
