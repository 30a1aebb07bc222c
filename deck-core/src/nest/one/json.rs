//! A fill as a document of its own.

use super::result::Fill;
use crate::error::{Error, Fault, Kind};
use crate::length::{JsonForm, Unit, with_json_form};

impl Fill {
    /// The fill's JSON with lengths as numbers in that unit: the same bytes from every language and on every machine.
    ///
    /// # Examples
    /// ```
    /// use deck_core::{nest::{fill, Effort, Fill, FillPart}, stock::{Saw, Sheet}, Unit};
    /// let parts = [FillPart::new("lid", "24 in".parse()?, "16 in".parse()?).value("3.50".parse()?)];
    /// let sheet = Sheet::new("offcut", "40 in".parse()?, "30 in".parse()?);
    /// let fill = fill(&sheet, &parts, &Saw::new(), Effort::Quick)?;
    /// assert_eq!(Fill::from_json(&fill.to_json(Unit::Millimetre), Unit::Millimetre)?, fill);
    /// # Ok::<(), deck_core::Error>(())
    /// ```
    pub fn to_json(&self, unit: Unit) -> String {
        // unreachable: a fill holds texts, finite numbers and lists; none of them fails to be written.
        with_json_form(JsonForm::Number(unit), || serde_json::to_string_pretty(self)).unwrap_or_default()
    }

    /// Reads back what [`Fill::to_json`] wrote in the same unit. A worth that is an area comes back to the 53 bits that a
    /// number in JSON carries; everything else is as it was.
    ///
    /// # Errors
    /// Text that is not a fill's JSON.
    pub fn from_json(text: &str, unit: Unit) -> Result<Fill, Error> {
        with_json_form(JsonForm::Number(unit), || serde_json::from_str(text)).map_err(|error| {
            Fault::new(Kind::NotJson, "", format!("This is not a fill: {error}."), "A fill's JSON, as it was written.")
                .into()
        })
    }
}
