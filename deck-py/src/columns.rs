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
    /// The same, a number that is a float in every row and in every plan: a column is of one type.
    Real(&'static str),
    /// In the item of the list inside it, at a JSON pointer.
    Inner(&'static str),
    /// The same, always a float.
    InnerReal(&'static str),
    /// What a list of the item's has at the inner item's place, or without such a list the item itself; always a float.
    BesideReal(&'static str, &'static str),
    /// The item's place in its list, from 1.
    Place,
    /// How many items a list of the item's has.
    Count(&'static str),
}
use Cell::{BesideReal, Count, Inner, InnerReal, Own, Place, Real};

/// A list of the plan's JSON, and what of it stands in columns.
struct Table {
    name: &'static str,
    list: &'static str,
    /// A list in each item, with a row for each of its items.
    inside: Option<&'static str>,
    columns: &'static [(&'static str, Cell)],
}

const TABLES: [Table; 15] = [
    Table {
        name: "panels",
        list: "/panels",
        inside: None,
        columns: &[
            ("label", Own("/label")),
            ("board", Own("/board")),
            ("length", Real("/length")),
            ("width", Real("/width")),
            ("diagonal", Real("/diagonal")),
            ("area", Real("/area")),
            ("weight_lb", Real("/weight_lb")),
            ("strength_axis", Own("/strength_axis")),
            ("fore", Real("/bounds/fore")),
            ("aft", Real("/bounds/aft")),
            ("port", Real("/bounds/port")),
            ("starboard", Real("/bounds/starboard")),
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
            ("fore", Real("/fore")),
            ("aft", Real("/aft")),
            ("bearing_fore", Real("/bearing_fore")),
            ("bearing_aft", Real("/bearing_aft")),
            ("shift", Real("/shift")),
            ("short_by", Real("/short_by")),
            ("length", Real("/length")),
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
            ("x", BesideReal("/stations", "/station")),
            ("y", InnerReal("")),
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
            ("x", InnerReal("/x")),
            ("y", InnerReal("/y")),
            ("length", InnerReal("/length")),
            ("width", InnerReal("/width")),
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
            ("needed", Real("/needed/amount")),
            ("spare", Real("/spare/amount")),
            ("buy", Own("/buy")),
            ("unit", Own("/unit")),
            ("price", Real("/price")),
            ("cost", Real("/cost")),
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
            ("table_allowable_psf", Real("/table/allowable_psf")),
            ("table_utilisation", Real("/table/utilisation")),
            ("beam_governing", Own("/beam/governing")),
            ("beam_allowable_psf", Real("/beam/allowable_psf")),
            ("beam_utilisation", Real("/beam/utilisation")),
        ],
    },
    Table {
        name: "tolerance",
        list: "/tolerance/seams",
        inside: None,
        columns: &[
            ("seam", Own("/seam")),
            ("member", Own("/member")),
            ("fore_planned", Real("/fore/planned")),
            ("fore_worst", Real("/fore/worst")),
            ("fore_root_sum_square", Real("/fore/root_sum_square")),
            ("fore_chance_short", Real("/fore/chance_short")),
            ("aft_planned", Real("/aft/planned")),
            ("aft_worst", Real("/aft/worst")),
            ("aft_root_sum_square", Real("/aft/root_sum_square")),
            ("aft_chance_short", Real("/aft/chance_short")),
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
            ("cost", Real("/figures/cost")),
            ("sheet_area", Real("/figures/sheet_area")),
            ("sheets", Own("/figures/sheets")),
            ("boards", Own("/figures/boards")),
            ("seam_length", Real("/figures/seam_length")),
            ("joint_length", Real("/figures/joint_length")),
            ("blocks", Own("/figures/blocks")),
            ("blocking_length", Real("/figures/blocking_length")),
            ("utilisation", Real("/figures/utilisation")),
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
            ("fore", Real("/fore")),
            ("aft", Real("/aft")),
            ("port", Real("/port")),
            ("starboard", Real("/starboard")),
            ("length", Real("/length")),
            ("width", Real("/width")),
        ],
    },
    Table {
        name: "quote",
        list: "/quote/lines",
        inside: None,
        columns: &[
            ("group", Own("/group")),
            ("description", Own("/description")),
            ("quantity", Real("/quantity")),
            ("unit", Own("/unit")),
            ("rate", Real("/rate")),
            ("amount", Real("/amount")),
        ],
    },
    Table {
        name: "labour",
        list: "/quote/labour/tasks",
        inside: None,
        columns: &[
            ("task", Own("/task")),
            ("words", Own("/words")),
            ("low", Real("/low")),
            ("likely", Real("/likely")),
            ("high", Real("/high")),
            ("mean", Real("/mean")),
            ("deviation", Real("/deviation")),
            ("source", Own("/source")),
        ],
    },
    Table {
        name: "old_holes",
        list: "/old_holes",
        inside: None,
        columns: &[
            ("member", Own("/member")),
            ("x", Real("/x")),
            ("y", Real("/y")),
            ("diameter", Real("/diameter")),
            ("clear", Real("/clear")),
            ("nearest", Real("/nearest")),
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
            ("x", Real("/x")),
            ("y", Real("/y")),
            ("panel", Own("/panel")),
            ("from_fore", Real("/from_fore")),
            ("from_port", Real("/from_port")),
            ("seam", Own("/seam/number")),
            ("from_seam", Real("/seam/distance")),
            ("member", Own("/member/number")),
            ("through_member", Own("/member/through")),
            ("needed", Real("/stack/needed")),
            ("bolt", Real("/stack/bolt")),
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
            ("distance", InnerReal("/distance")),
            ("least", InnerReal("/least")),
            ("preferred", InnerReal("/preferred")),
            ("short_by", InnerReal("/short_by")),
        ],
    },
    Table {
        name: "patches",
        list: "/patch/patches",
        inside: None,
        columns: &[
            ("board", Own("/board")),
            ("fore", Real("/bounds/fore")),
            ("aft", Real("/bounds/aft")),
            ("port", Real("/bounds/port")),
            ("starboard", Real("/bounds/starboard")),
            ("plywood", Real("/plywood")),
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
    /// The inner item's place in its list, from 0.
    inside: usize,
    item: &'a Value,
    inner: &'a Value,
}

impl Row<'_> {
    fn value(&self, cell: Cell) -> Value {
        match cell {
            Own(pointer) => self.item.pointer(pointer).cloned().unwrap_or_default(),
            Real(pointer) => real(self.item.pointer(pointer)),
            Inner(pointer) => self.inner.pointer(pointer).cloned().unwrap_or_default(),
            InnerReal(pointer) => real(self.inner.pointer(pointer)),
            BesideReal(list, own) => {
                let beside = self.item.pointer(list).and_then(|list| list.get(self.inside));
                real(beside.or_else(|| self.item.pointer(own)))
            }
            Place => self.place.into(),
            Count(pointer) => self.item.pointer(pointer).and_then(Value::as_array).map_or(0, Vec::len).into(),
        }
    }
}

fn real(value: Option<&Value>) -> Value {
    value.and_then(Value::as_f64).into()
}

fn rows<'a>(plan: &'a Value, table: &Table) -> Vec<Row<'a>> {
    let list = |value: &'a Value, pointer: &str| value.pointer(pointer).and_then(Value::as_array);
    let mut rows = Vec::new();
    for (index, item) in list(plan, table.list).into_iter().flatten().enumerate() {
        let place = index + 1;
        match table.inside {
            None => rows.push(Row { place, inside: 0, item, inner: &Value::Null }),
            Some(name) => {
                let inner = list(item, name).into_iter().flatten().enumerate();
                rows.extend(inner.map(|(inside, inner)| Row { place, inside, item, inner }));
            }
        }
    }
    rows
}
