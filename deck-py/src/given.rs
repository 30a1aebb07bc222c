//! From what Python hands in to a JSON value.
//!
//! Results that go into the next call are taken as they were written, in the call's unit. Exact numbers stay exact: a
//! `Fraction` or a `Decimal` becomes text, which lengths and money are read from. A field that is a float by nature, such as
//! a stiffness, refuses text, and gets the nearest float. What JSON cannot hold, NaN and the infinities, becomes text too
//! and is reported at its place together with everything else that is wrong.

use crate::failure::Failure;
use crate::layout::SeamLayout;
use crate::outline::Outline;
use crate::panel::Panel;
use deck_core::plan::DeckFacts;
use deck_core::{Error, Fault, Faults, Kind, Length, Unit};
use pyo3::exceptions::{PyOverflowError, PyTypeError};
use pyo3::prelude::*;
use pyo3::types::{PyBool, PyFloat, PyInt, PyList, PyMapping, PyString, PyTuple};
use serde_json::{Map, Number, Value};
use std::borrow::Cow;

/// Nested deeper than this no job is; a list that holds itself would have no end.
const MOST_LEVELS: usize = 64;

/// A `Decimal` beyond ten to this power is no tape reading, and written out it could fill the memory.
const MOST_POWERS: i64 = 30;

/// An exact decimal is written with no more places; lengths and money have fewer.
const MOST_PLACES: u32 = 18;

/// A JSON value, and the places where there was a number that it holds as text.
#[derive(Debug)]
pub(crate) struct Given {
    value: Value,
    /// Numbers that JSON cannot hold.
    not_finite: Vec<(String, f64)>,
    /// The floats nearest to exact numbers.
    exact: Vec<(String, f64)>,
}

impl Given {
    /// Reads an object of Python's.
    ///
    /// `document` says what it describes, for messages.
    pub(crate) fn new(object: &Bound<'_, PyAny>, document: &'static str) -> Result<Given, Failure> {
        let mut reader =
            Reader { document, unit: unit(object), pointer: Vec::new(), not_finite: Vec::new(), exact: Vec::new() };
        let value = reader.value(object)?;
        Ok(Given { value, not_finite: reader.not_finite, exact: reader.exact })
    }

    /// The JSON value.
    pub(crate) fn value(&self) -> Value {
        self.value.clone()
    }

    /// What it describes, by one of the core's readers.
    pub(crate) fn read<T>(&self, read: impl Fn(&Value) -> Result<T, Error>) -> Result<T, Error> {
        self.taken(read).map(|(_, made)| made)
    }

    /// What it describes, and the value that it was read from.
    pub(crate) fn taken<T>(&self, read: impl Fn(&Value) -> Result<T, Error>) -> Result<(Cow<'_, Value>, T), Error> {
        let made = read(&self.value);
        let Some(value) = made.as_ref().err().and_then(|error| self.with_floats(error)) else {
            return self.finite(made, || read(&self.value)).map(|made| (Cow::Borrowed(&self.value), made));
        };
        self.finite(read(&value), || read(&value)).map(|made| (Cow::Owned(value), made))
    }

    /// The value with floats where a text for an exact number was refused; none where none was.
    fn with_floats(&self, error: &Error) -> Option<Value> {
        let refused =
            |pointer: &String| error.faults().any(|fault| fault.kind == Kind::WrongType && fault.pointer == *pointer);
        let mut value = None;
        for (pointer, number) in self.exact.iter().filter(|(pointer, _)| refused(pointer)) {
            let whole = value.get_or_insert_with(|| self.value.clone());
            if let (Some(place), Some(number)) = (whole.pointer_mut(pointer), Number::from_f64(*number)) {
                *place = Value::Number(number);
            }
        }
        value
    }

    /// With the numbers that are not finite told beside everything else that is wrong.
    fn finite<T>(&self, made: Result<T, Error>, again: impl FnOnce() -> Result<T, Error>) -> Result<T, Error> {
        let mut faults = Faults::new();
        for (pointer, number) in &self.not_finite {
            let told = made.as_ref().is_err_and(|error| error.faults().any(|fault| fault.pointer == *pointer));
            if let (false, Err(error)) = (told, Length::read_number(*number, Unit::Inch)) {
                faults.push(error.first().clone().at(pointer));
            }
        }
        match made {
            Ok(made) => faults.finish().map(|()| made),
            Err(error) => {
                faults.absorb(error);
                faults.finish().and_then(|()| again())
            }
        }
    }
}

/// Walks through the object and knows where it is.
struct Reader {
    document: &'static str,
    /// The unit that results are wanted in.
    unit: Unit,
    pointer: Vec<String>,
    not_finite: Vec<(String, f64)>,
    exact: Vec<(String, f64)>,
}

impl Reader {
    fn value(&mut self, object: &Bound<'_, PyAny>) -> Result<Value, Failure> {
        if object.is_none() {
            Ok(Value::Null)
        } else if let Ok(flag) = object.cast::<PyBool>() {
            Ok(Value::Bool(flag.is_true()))
        } else if let Ok(text) = object.cast::<PyString>() {
            Ok(Value::String(text.to_str()?.to_owned()))
        } else if let Ok(number) = object.cast::<PyFloat>() {
            Ok(self.float(number.value()))
        } else if object.is_instance_of::<PyInt>() {
            self.integer(object)
        } else if let Ok(fields) = object.cast::<PyMapping>() {
            self.fields(fields)
        } else if object.is_instance_of::<PyList>() || object.is_instance_of::<PyTuple>() {
            self.items(object)
        } else {
            self.number(object)
        }
    }

    fn fields(&mut self, fields: &Bound<'_, PyMapping>) -> Result<Value, Failure> {
        let mut map = Map::new();
        for pair in fields.items()?.iter() {
            let (key, value): (Bound<'_, PyAny>, Bound<'_, PyAny>) = pair.extract()?;
            let Ok(name) = key.cast::<PyString>() else {
                let at = self.place();
                return Err(PyTypeError::new_err(format!("{at}: names of fields are texts, not {}", kind(&key))).into());
            };
            let name = name.to_str()?.to_owned();
            let value = self.within(&name, |reader| reader.value(&value))?;
            map.insert(name, value);
        }
        Ok(Value::Object(map))
    }

    fn items(&mut self, items: &Bound<'_, PyAny>) -> Result<Value, Failure> {
        let mut list = Vec::new();
        for (position, item) in items.try_iter()?.enumerate() {
            let item = item?;
            list.push(self.within(&position.to_string(), |reader| reader.value(&item))?);
        }
        Ok(Value::Array(list))
    }

    fn within(
        &mut self,
        step: &str,
        read: impl FnOnce(&mut Reader) -> Result<Value, Failure>,
    ) -> Result<Value, Failure> {
        if self.pointer.len() == MOST_LEVELS {
            let message = format!("This is nested more than {MOST_LEVELS} levels deep.");
            let fault = Fault::new(Kind::NotJson, "", message, format!("No {} is.", self.document));
            return Err(Error::from(fault.at(&self.place())).into());
        }
        self.pointer.push(step.replace('~', "~0").replace('/', "~1"));
        let value = read(self);
        self.pointer.pop();
        value
    }

    fn place(&self) -> String {
        self.pointer.iter().flat_map(|step| ["/", step]).collect()
    }

    fn integer(&mut self, number: &Bound<'_, PyAny>) -> Result<Value, Failure> {
        if let Ok(number) = number.extract::<i64>() {
            return Ok(number.into());
        }
        match number.extract::<f64>() {
            Ok(number) => Ok(self.float(number)),
            // Above the greatest float; that one is too large for every field as well, and is told so.
            Err(error) if error.is_instance_of::<PyOverflowError>(number.py()) => Ok(self.float(f64::MAX)),
            Err(error) => Err(error.into()),
        }
    }

    fn float(&mut self, number: f64) -> Value {
        Number::from_f64(number).map_or_else(
            || {
                self.not_finite.push((self.place(), number));
                Value::String(number.to_string())
            },
            Value::Number,
        )
    }

    /// The numbers that are not built in: those of `fractions`, `decimal` and `numpy`.
    fn number(&mut self, object: &Bound<'_, PyAny>) -> Result<Value, Failure> {
        let py = object.py();
        if let Some(result) = self.result(object)? {
            return Ok(result);
        }
        if let Some(plain) = plain(object)? {
            return self.value(&plain);
        }
        let numbers = py.import("numbers")?;
        if object.is_instance(&numbers.getattr("Integral")?)? {
            self.integer(&py.get_type::<PyInt>().call1((object,))?)
        } else if object.is_instance(&numbers.getattr("Rational")?)? {
            self.fraction(object)
        } else if object.is_instance(&py.import("decimal")?.getattr("Decimal")?)? {
            self.decimal(object)
        } else if object.is_instance(&numbers.getattr("Real")?)? {
            Ok(self.float(object.extract()?))
        } else {
            let (at, kind, document) = (self.place(), kind(object), self.document);
            Err(PyTypeError::new_err(format!("{at}: a {document} holds no {kind}")).into())
        }
    }

    /// An object of ours that one call answered and another is asked with.
    fn result(&mut self, object: &Bound<'_, PyAny>) -> Result<Option<Value>, Failure> {
        if object.is_instance(&object.py().import("deck_py._record")?.getattr("Record")?)? {
            return self.value(&object.call_method0("to_dict")?).map(Some);
        }
        Ok(if let Ok(panel) = object.cast::<Panel>() {
            Some(panel.get().document.value_in::<deck_core::panels::Panel>(self.unit)?)
        } else if let Ok(layout) = object.cast::<SeamLayout>() {
            Some(layout.get().document.value_in::<deck_core::seams::SeamLayout>(self.unit)?)
        } else if let Ok(outline) = object.cast::<Outline>() {
            Some(outline.get().document.value_in::<DeckFacts>(self.unit)?)
        } else {
            None
        })
    }

    fn fraction(&mut self, number: &Bound<'_, PyAny>) -> Result<Value, Failure> {
        let (above, below) = (number.getattr("numerator")?, number.getattr("denominator")?);
        if below.eq(1)? {
            return self.integer(&above);
        }
        self.is_exact(number)?;
        let decimal = above.extract().ok().zip(below.extract().ok()).and_then(|(above, below)| decimal(above, below));
        Ok(decimal.unwrap_or_else(|| format!("{above}/{below}")).into())
    }

    /// Keeps the nearest float as well.
    fn is_exact(&mut self, number: &Bound<'_, PyAny>) -> Result<(), Failure> {
        match number.extract() {
            Ok(float) => self.exact.push((self.place(), float)),
            // Beyond the greatest float: no field takes it.
            Err(error) if error.is_instance_of::<PyOverflowError>(number.py()) => {}
            Err(error) => return Err(error.into()),
        }
        Ok(())
    }

    fn decimal(&mut self, number: &Bound<'_, PyAny>) -> Result<Value, Failure> {
        let finite: bool = number.call_method0("is_finite")?.extract()?;
        let powers: i64 = if finite { number.call_method0("adjusted")?.extract()? } else { i64::MAX };
        if powers.unsigned_abs() > MOST_POWERS.unsigned_abs() {
            return Ok(self.float(number.extract()?));
        }
        let whole = number.call_method0("to_integral_value")?;
        if whole.eq(number)? {
            return self.integer(&number.py().get_type::<PyInt>().call1((whole,))?);
        }
        self.is_exact(number)?;
        let text: String = number.call_method1("__format__", ("f",))?.extract()?;
        Ok(text.into())
    }
}

/// A fraction as a decimal, where it is one: money is read from no other text.
fn decimal(above: i64, below: i64) -> Option<String> {
    let places = (1..=MOST_PLACES).find(|places| 10_i128.pow(*places) % i128::from(below) == 0)?;
    let whole = i128::from(above).checked_mul(10_i128.pow(places) / i128::from(below))?;
    let one = 10_u128.pow(places);
    let (sign, size) = (if whole < 0 { "-" } else { "" }, whole.unsigned_abs());
    let width = usize::try_from(places).ok()?;
    Some(format!("{sign}{}.{:0width$}", size / one, size % one))
}

/// The unit that a job or a call names; inches where it names none.
fn unit(object: &Bound<'_, PyAny>) -> Unit {
    let word = object.get_item("unit").and_then(|word| word.extract::<String>());
    word.ok().and_then(|word| Unit::from_word(&word)).unwrap_or_default()
}

/// A list or a number of Python's own that an array of `numpy` or `array` is the same as.
fn plain<'py>(object: &Bound<'py, PyAny>) -> PyResult<Option<Bound<'py, PyAny>>> {
    if !object.hasattr("tolist")? {
        return Ok(None);
    }
    let plain = object.call_method0("tolist")?;
    let own = plain.is_exact_instance_of::<PyList>() || plain.is_exact_instance_of::<PyFloat>();
    Ok((own || plain.is_exact_instance_of::<PyInt>()).then_some(plain))
}

/// The name of an object's class.
pub(crate) fn kind(object: &Bound<'_, PyAny>) -> String {
    object.get_type().name().map_or_else(|_| "object".into(), |name| name.to_string())
}
