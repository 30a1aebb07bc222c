//! Results as JSON documents: read into Python's own types, compared, and pickled as text.

use crate::failure::Failure;
use crate::fastening::Fastening;
use crate::fill::Fill;
use crate::given::Given;
use crate::layout::SeamLayout;
use crate::nest::Nest;
use crate::outline::Outline;
use crate::panel::Panel;
use crate::plan::Plan;
use crate::quote::Quote;
use crate::strength::{beam_again, plate_again};
use crate::survey::Survey;
use deck_core::length::{JsonForm, with_json_form};
use deck_core::{Error, Fault, Kind, Unit};
use pyo3::IntoPyObjectExt;
use pyo3::exceptions::PyValueError;
use pyo3::prelude::*;
use pyo3::types::{PyDict, PyList};
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::Value;

/// A part of a plan's JSON, and the unit of its numbers.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Document {
    pub(crate) value: Value,
    pub(crate) unit: Unit,
}

impl Document {
    pub(crate) fn new(value: Value, unit: Unit) -> Document {
        Document { value, unit }
    }

    /// A value of the core's, with lengths as numbers in that unit.
    pub(crate) fn write<T: Serialize>(value: &T, unit: Unit) -> Result<Document, Error> {
        let written = with_json_form(JsonForm::Number(unit), || serde_json::to_value(value));
        // unreachable: results hold texts, finite numbers and lists; none of them fails to be written.
        let value = written.map_err(|error| Fault::new(Kind::NotJson, "", error.to_string(), ""))?;
        Ok(Document { value, unit })
    }

    /// Its text: the same bytes as from every other language.
    pub(crate) fn text(&self) -> String {
        // unreachable: a JSON value does not fail to be written.
        serde_json::to_string_pretty(&self.value).unwrap_or_default()
    }

    /// Its value with lengths in that unit; `T` is what the core has for it.
    pub(crate) fn value_in<T: Serialize + DeserializeOwned>(&self, unit: Unit) -> Result<Value, Error> {
        if self.unit == unit {
            return Ok(self.value.clone());
        }
        Ok(Document::write(&self.core::<T>()?, unit)?.value)
    }

    /// The part under a key; null where there is none.
    pub(crate) fn part(&self, key: &str) -> Document {
        Document { value: self.value.get(key).cloned().unwrap_or_default(), unit: self.unit }
    }

    /// The part under a key, in Python's own types.
    pub(crate) fn get<'py>(&self, py: Python<'py>, key: &str) -> PyResult<Bound<'py, PyAny>> {
        python(py, self.value.get(key).unwrap_or(&Value::Null))
    }

    /// The part under a key, or each of a list, as an object of that class of `deck_py.types`; None where there is none.
    pub(crate) fn record<'py>(&self, py: Python<'py>, key: &str, class: &str) -> PyResult<Bound<'py, PyAny>> {
        record(py, class, self.value.get(key).unwrap_or(&Value::Null))
    }

    /// The whole, in Python's own types.
    pub(crate) fn python<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        python(py, &self.value)
    }

    /// The core's value that the document was written from.
    pub(crate) fn core<T: DeserializeOwned>(&self) -> Result<T, Error> {
        with_json_form(JsonForm::Number(self.unit), || T::deserialize(&self.value)).map_err(|error| {
            Fault::new(Kind::NotJson, "", format!("This is no such result: {error}."), "It is text that pickle wrote.")
                .into()
        })
    }

    /// What `__reduce__` returns for an object of this class.
    pub(crate) fn reduce<'py>(&self, py: Python<'py>, class: &str) -> PyResult<Reduced<'py>> {
        reduced(py, class, self.unit, &self.value)
    }
}

/// A function, and the arguments with which it makes the object again.
pub(crate) type Reduced<'py> = (Bound<'py, PyAny>, (String, &'static str, String));

/// What `__reduce__` returns for an object of a class that is made again from that value.
pub(crate) fn reduced<'py>(py: Python<'py>, class: &str, unit: Unit, value: &Value) -> PyResult<Reduced<'py>> {
    let restore = py.import("deck_py._deck")?.getattr("_restore")?;
    Ok((restore, (class.to_owned(), unit.symbol(), value.to_string())))
}

/// A value, or each of a list, as an object of that class of `deck_py.types`.
pub(crate) fn record<'py>(py: Python<'py>, class: &str, value: &Value) -> PyResult<Bound<'py, PyAny>> {
    py.import("deck_py._record")?.getattr("made")?.call1((class, python(py, value)?))
}

/// The JSON of what a record holds, in the bytes of every language.
#[pyfunction]
pub(crate) fn _json(fields: &Bound<'_, PyAny>) -> Result<String, Failure> {
    // unreachable: a JSON value does not fail to be written.
    Ok(serde_json::to_string_pretty(&Given::new(fields, "record")?.value()).unwrap_or_default())
}

/// A JSON value in Python's own types.
pub(crate) fn python<'py>(py: Python<'py>, value: &Value) -> PyResult<Bound<'py, PyAny>> {
    match value {
        Value::Null => py.None().into_bound_py_any(py),
        Value::Bool(flag) => flag.into_bound_py_any(py),
        Value::String(text) => text.into_bound_py_any(py),
        Value::Number(number) => match (number.as_i64(), number.as_u64()) {
            (Some(whole), _) => whole.into_bound_py_any(py),
            (None, Some(whole)) => whole.into_bound_py_any(py),
            (None, None) => number.as_f64().into_bound_py_any(py),
        },
        Value::Array(items) => {
            let items = items.iter().map(|item| python(py, item)).collect::<PyResult<Vec<_>>>()?;
            PyList::new(py, items)?.into_bound_py_any(py)
        }
        Value::Object(fields) => {
            let dict = PyDict::new(py);
            for (key, value) in fields {
                dict.set_item(key, python(py, value)?)?;
            }
            dict.into_bound_py_any(py)
        }
    }
}

/// Makes a pickled object again.
#[pyfunction(name = "_restore")]
pub(crate) fn restore<'py>(
    py: Python<'py>,
    class_: &str,
    unit: &str,
    text: &str,
) -> Result<Bound<'py, PyAny>, Failure> {
    let unknown = || PyValueError::new_err(format!("no {class_} in {unit} was pickled by this package"));
    let unit = Unit::from_word(unit).ok_or_else(unknown)?;
    let value: Value = serde_json::from_str(text).map_err(|error| PyValueError::new_err(error.to_string()))?;
    let document = Document::new(value, unit);
    Ok(match class_ {
        "Plan" => Plan::read(text)?.into_bound_py_any(py)?,
        "Panel" => Panel::new(document)?.into_bound_py_any(py)?,
        "Outline" => Outline::new(document)?.into_bound_py_any(py)?,
        "Nest" => Nest::new(document)?.into_bound_py_any(py)?,
        "SeamLayout" => SeamLayout::new(document)?.into_bound_py_any(py)?,
        "Fastening" => Fastening::new(document)?.into_bound_py_any(py)?,
        "Fill" => Fill::new(document)?.into_bound_py_any(py)?,
        "Quote" => Quote::new(document)?.into_bound_py_any(py)?,
        "Survey" => Survey::new(document)?.into_bound_py_any(py)?,
        "Beam" => beam_again(document.value)?.into_bound_py_any(py)?,
        "Plate" => plate_again(document.value)?.into_bound_py_any(py)?,
        _ => return Err(unknown().into()),
    })
}
