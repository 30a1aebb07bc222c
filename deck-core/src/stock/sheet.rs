//! A sheet or an offcut, as stock of one size.

use crate::error::{Error, Fault, Faults, Kind};
use crate::length::Length;
use crate::money::Money;
use serde::{Deserialize, Serialize};

/// Sheets of one size. `length` is always the side along the grain, even when it is the shorter.
///
/// # Examples
/// ```
/// use deck_core::{stock::Sheet, Length};
/// let sheet = Sheet::new("3/4 ply", "96 in".parse()?, "48 in".parse()?).count(6).price("62.50".parse()?);
/// assert_eq!(sheet.size(), ("96 in".parse()?, "48 in".parse()?));
/// # Ok::<(), deck_core::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct Sheet {
    /// What the shop calls it.
    pub label: String,
    /// Side along the grain, as sold.
    pub length: Length,
    /// Side across the grain, as sold.
    pub width: Length,
    /// Size as measured, where the bundle was measured; the plan cuts from this size.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub measured: Option<Measured>,
    /// Thickness as sold.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thickness: Option<Length>,
    /// Whether the sheet has a strength axis, along its length.
    #[serde(default, skip_serializing_if = "SheetGrain::is_default")]
    pub grain: SheetGrain,
    /// How many there are; none given: as many as wanted.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub count: Option<u32>,
    /// Price of one sheet.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub price: Option<Money>,
    /// True for a piece on the rack: it costs nothing unless it has a price.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub offcut: bool,
    /// Preservative treatment, for the cautions.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub treatment: Option<Treatment>,
}

/// The size of a sheet as a tape found it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Measured {
    /// Side along the grain.
    pub length: Length,
    /// Side across the grain.
    pub width: Length,
}

/// Whether a sheet has a strength axis.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum SheetGrain {
    /// The strength axis runs along the length.
    #[default]
    Length,
    /// The sheet is alike both ways; any part may be turned on it.
    None,
}

impl SheetGrain {
    fn is_default(&self) -> bool {
        *self == SheetGrain::default()
    }
}

/// Preservative treatment of plywood, as far as the cautions tell it apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Treatment {
    /// Not treated.
    None,
    /// Dissolved copper, such as alkaline copper quaternary or copper azole.
    Copper,
    /// Ground (micronised or dispersed) copper.
    MicronizedCopper,
    /// Chromated copper arsenate.
    Arsenate,
}

impl Sheet {
    /// A sheet to buy, as many as wanted, with no price.
    pub fn new(label: impl Into<String>, length: Length, width: Length) -> Sheet {
        Sheet {
            label: label.into(),
            length,
            width,
            measured: None,
            thickness: None,
            grain: SheetGrain::Length,
            count: None,
            price: None,
            offcut: false,
            treatment: None,
        }
    }

    /// With the size that was measured.
    #[must_use]
    pub fn measured(mut self, length: Length, width: Length) -> Sheet {
        self.measured = Some(Measured { length, width });
        self
    }

    /// With a thickness.
    #[must_use]
    pub fn thickness(mut self, thickness: Length) -> Sheet {
        self.thickness = Some(thickness);
        self
    }

    /// With or without a strength axis.
    #[must_use]
    pub fn grain(mut self, grain: SheetGrain) -> Sheet {
        self.grain = grain;
        self
    }

    /// Only so many of them.
    #[must_use]
    pub fn count(mut self, count: u32) -> Sheet {
        self.count = Some(count);
        self
    }

    /// With a price a sheet.
    #[must_use]
    pub fn price(mut self, price: Money) -> Sheet {
        self.price = Some(price);
        self
    }

    /// A piece on the rack.
    #[must_use]
    pub fn offcut(mut self, offcut: bool) -> Sheet {
        self.offcut = offcut;
        self
    }

    /// With a treatment.
    #[must_use]
    pub fn treatment(mut self, treatment: Treatment) -> Sheet {
        self.treatment = Some(treatment);
        self
    }

    /// Length and width as they are: measured where that was done, nominal otherwise.
    pub fn size(&self) -> (Length, Length) {
        self.measured.map_or((self.length, self.width), |measured| (measured.length, measured.width))
    }

    /// Checks the sizes; pointers are relative to the sheet.
    ///
    /// # Errors
    /// A side of zero or less, or a measured size more than an inch off the nominal one.
    pub fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::new();
        let thickness = self.thickness.map(|thickness| ("thickness", thickness));
        for (field, side) in [("length", self.length), ("width", self.width)].into_iter().chain(thickness) {
            if side <= Length::ZERO {
                faults.push(not_positive(side).within(field));
            }
        }
        if let Some(measured) = self.measured {
            let sides = [("length", measured.length, self.length), ("width", measured.width, self.width)];
            for (field, found, nominal) in sides {
                if found <= Length::ZERO {
                    faults.push(not_positive(found).within(field).within("measured"));
                } else if (found - nominal).abs() > Length::inches(1) {
                    faults.push(
                        Fault::new(
                            Kind::StockMeasuredSize,
                            found.to_string(),
                            format!("{found} is more than an inch off the nominal {nominal}."),
                            "Give the sheet that was measured its own nominal size.",
                        )
                        .within(field)
                        .within("measured"),
                    );
                }
            }
        }
        faults.finish()
    }
}

fn not_positive(side: Length) -> Fault {
    let kind = if side.is_negative() { Kind::LengthNegative } else { Kind::LengthZero };
    Fault::new(kind, side.to_string(), format!("{side} is no size of a sheet."), "A side is above zero.")
}

/// Checks that prices are given for all bought sheets or for none; pointers are relative to the list.
///
/// # Errors
/// The first bought sheet without a price, where another has one.
pub(crate) fn check_prices(sheets: &[Sheet]) -> Result<(), Error> {
    let bought = || sheets.iter().enumerate().filter(|(_, sheet)| !sheet.offcut);
    if bought().all(|(_, sheet)| sheet.price.is_none()) {
        return Ok(());
    }
    match bought().find(|(_, sheet)| sheet.price.is_none()) {
        None => Ok(()),
        Some((index, sheet)) => Err(Fault::new(
            Kind::StockPriceMissing,
            sheet.label.clone(),
            format!("\"{}\" has no price, but other sheets have.", sheet.label),
            "Prices are given for all bought sheets or for none.",
        )
        .within("price")
        .within(index)
        .into()),
    }
}
