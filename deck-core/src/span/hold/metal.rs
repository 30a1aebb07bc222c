//! A screw in an aluminium part: the part tears over the head, or along the shank.

use super::held::{Held, Mode};
use super::screw::Screw;
use crate::error::{Error, Fault, Faults, Kind};
use crate::length::Length;
use crate::published::{ALLOYS, METAL_EDGE_FULL, METAL_EDGE_LEAST, SCREW_SAFETY_FACTOR, Standing};
use crate::span::options::figure;
use crate::span::words::unknown;
use serde::{Deserialize, Serialize};

/// An aluminium part: its alloy's strengths and its thickness.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct Metal {
    /// Alloy and temper, such as `6061-T6`.
    pub alloy: String,
    /// Thickness.
    pub thickness: Length,
    /// Tensile yield, ksi.
    pub yield_ksi: f64,
    /// Tensile ultimate, ksi.
    pub ultimate_ksi: f64,
    /// How sure the strengths are.
    #[serde(default = "given")]
    pub standing: Standing,
    /// Where they come from.
    #[serde(default = "the_user")]
    pub source: String,
}

fn given() -> Standing {
    Standing::Choice
}

fn the_user() -> String {
    "the user's own strengths".into()
}

impl Metal {
    /// A part of a published alloy; see [`ALLOYS`].
    ///
    /// # Errors
    /// An alloy that is not published here.
    pub fn published(alloy: &str, thickness: Length) -> Result<Metal, Error> {
        let Some(row) = ALLOYS.iter().find(|row| row.name == alloy) else {
            let names: Vec<&str> = ALLOYS.iter().map(|row| row.name).collect();
            return Err(unknown("alloy", alloy, &names).within("alloy").into());
        };
        Ok(Metal {
            alloy: alloy.into(),
            thickness,
            yield_ksi: row.yield_ksi,
            ultimate_ksi: row.ultimate_ksi,
            standing: row.standing,
            source: row.source.into(),
        })
    }

    /// A part with strengths of the user's own, ksi.
    pub fn new(alloy: impl Into<String>, thickness: Length, yield_ksi: f64, ultimate_ksi: f64) -> Metal {
        Metal { alloy: alloy.into(), thickness, yield_ksi, ultimate_ksi, standing: given(), source: the_user() }
    }

    /// Checks the figures; pointers are relative to the part.
    ///
    /// # Errors
    /// A thickness of zero or less, strengths outside 1 to 200 ksi.
    pub fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::new();
        if self.thickness <= Length::ZERO {
            let message = format!("{} is no thickness.", self.thickness);
            let fault =
                Fault::new(Kind::LengthZero, self.thickness.to_string(), message, "More than zero is accepted.");
            faults.push(fault.within("thickness"));
        }
        faults.take(figure(self.yield_ksi, 1.0, 200.0).map_err(|error| error.within("yield_ksi")));
        faults.take(figure(self.ultimate_ksi, 1.0, 200.0).map_err(|error| error.within("ultimate_ksi")));
        faults.finish()
    }

    /// The alloy without a word on the product: `6061-T6 extrusion` is `6061-T6`.
    pub(super) fn base(&self) -> &str {
        self.alloy.split(' ').next().unwrap_or("")
    }

    /// The weaker of two standings: a figure is no surer than what goes into it.
    pub(super) fn no_surer_than(&self, standing: Standing) -> Standing {
        if self.standing == Standing::Memory { Standing::Memory } else { standing }
    }

    pub(super) fn named(&self) -> String {
        format!("{} ({})", self.alloy, self.source)
    }
}

/// Thousands of pounds to pounds.
pub(super) const KIP: f64 = 1000.0;

/// Pull-over: an aluminium part under the head tears over it.
///
/// # Method
/// Aluminum Design Manual 2015, as a screw maker's technical pages (2021) give it: `Rn = (1 + 1.7 t/Dw) Dw t Fty`, over 3.0.
///
/// # Errors
/// Sizes or strengths that cannot be; pointers to `/screw` and `/metal`.
///
/// # Examples
/// ```
/// use deck_core::span::hold::{Metal, Screw, pull_over};
/// let held = pull_over(&Screw::published("#12-14")?, &Metal::published("6061-T6", "1/16 in".parse()?)?)?;
/// assert_eq!(held.nominal.round(), 1140.0);
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn pull_over(screw: &Screw, metal: &Metal) -> Result<Held, Error> {
    sound(screw, metal)?;
    let (t, head) = (metal.thickness.as_inches(), screw.head.as_inches());
    let nominal = (1.0 + 1.7 * t / head) * head * t * metal.yield_ksi * KIP;
    let clause = format!("Rn = (1 + 1.7 t/Dw) Dw t Fty, Aluminum Design Manual 2015; {}", metal.named());
    Ok(Held::new(Mode::PullOver, nominal, SCREW_SAFETY_FACTOR, clause, metal.no_surer_than(Standing::Verified)))
}

/// Bearing: the hole tears along an aluminium part, `edge` from the screw's centre to the part's edge in that direction.
///
/// None where the edge is closer than 1.5 diameters.
///
/// # Method
/// Aluminum Design Manual 2015, as a screw maker's technical pages (2021) give it: `Rn = 1.5 D t Ftu`, over 3.0, with an
/// edge distance of 1.5 D. From 2 D the factor is 2 and between it is the edge distance in diameters: that part is from
/// memory.
///
/// # Errors
/// Sizes or strengths that cannot be; pointers to `/screw` and `/metal`.
pub fn bearing(screw: &Screw, metal: &Metal, edge: Length) -> Result<Option<Held>, Error> {
    sound(screw, metal)?;
    let diameters = edge.as_inches() / screw.diameter.as_inches();
    if diameters < METAL_EDGE_LEAST - 1e-9 {
        return Ok(None);
    }
    let factor = diameters.clamp(METAL_EDGE_LEAST, METAL_EDGE_FULL);
    let nominal = factor * screw.diameter.as_inches() * metal.thickness.as_inches() * metal.ultimate_ksi * KIP;
    let standing = if factor > METAL_EDGE_LEAST + 1e-9 { Standing::Memory } else { Standing::Verified };
    let clause = format!("Rn = {factor:.2} D t Ftu, Aluminum Design Manual 2015; {}", metal.named());
    Ok(Some(Held::new(Mode::Bearing, nominal, SCREW_SAFETY_FACTOR, clause, metal.no_surer_than(standing))))
}

pub(super) fn sound(screw: &Screw, metal: &Metal) -> Result<(), Error> {
    let mut faults = Faults::new();
    faults.take(screw.check().map_err(|error| error.within("screw")));
    faults.take(metal.check().map_err(|error| error.within("metal")));
    faults.finish()
}
