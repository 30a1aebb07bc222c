//! A nest as a document of its own, outside every plan.

use super::result::Nest;
use crate::error::{Error, Fault, Kind};
use crate::length::{JsonForm, Unit, with_json_form};

impl Nest {
    /// The nest's JSON with lengths as numbers in that unit: the same bytes from every language and on every machine.
    ///
    /// # Examples
    /// ```
    /// use deck_core::{nest::{nest, Effort, Nest, Part}, stock::{Saw, Sheet}, Unit};
    /// let parts = [Part::new("lid", "24 in".parse()?, "16 in".parse()?)];
    /// let stock = [Sheet::new("4 x 8", "96 in".parse()?, "48 in".parse()?).price("62.50".parse()?)];
    /// let nest = nest(&parts, &stock, &Saw::new(), Effort::Quick)?;
    /// assert_eq!(Nest::from_json(&nest.to_json(Unit::Millimetre), Unit::Millimetre)?, nest);
    /// # Ok::<(), deck_core::Error>(())
    /// ```
    pub fn to_json(&self, unit: Unit) -> String {
        // unreachable: a nest holds texts, finite numbers and lists; none of them fails to be written.
        with_json_form(JsonForm::Number(unit), || serde_json::to_string_pretty(self)).unwrap_or_default()
    }

    /// Reads back what [`Nest::to_json`] wrote in the same unit. A cost that is an area comes back to the 53 bits that a
    /// number in JSON carries; everything else is as it was.
    ///
    /// # Errors
    /// Text that is not a nest's JSON.
    pub fn from_json(text: &str, unit: Unit) -> Result<Nest, Error> {
        with_json_form(JsonForm::Number(unit), || serde_json::from_str(text)).map_err(|error| {
            Fault::new(Kind::NotJson, "", format!("This is not a nest: {error}."), "A nest's JSON, as it was written.")
                .into()
        })
    }
}
