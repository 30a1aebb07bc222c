//! The saw: what its blade eats, and how it may cut.

use crate::error::{Error, Fault, Faults, Kind};
use crate::length::Length;
use serde::{Deserialize, Serialize};

/// How sheets are sawn: edge to edge, each cut through the whole of the piece at hand.
///
/// # Examples
/// ```
/// use deck_core::stock::Saw;
/// let saw = Saw::new().kerf("1/8 in".parse()?).trim("1/4 in".parse()?).stages(2);
/// assert!(saw.check().is_ok());
/// # Ok::<(), deck_core::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Default)]
#[non_exhaustive]
pub struct Saw {
    /// Width that the blade turns to dust at each cut.
    pub kerf: Length,
    /// Strip taken off each of the four edges of a sheet before anything else. It includes the kerf of its own cut.
    pub trim: Length,
    /// Cutting stages allowed: 1 parallel strips only, 2 strips then crosscuts, 3 one more turn of the sheet.
    pub stages: Option<u8>,
    /// Direction of the first saw line, where the saw fixes it.
    pub first: Option<SawLine>,
    /// Smallest offcut worth keeping, length and width.
    pub keep: Option<(Length, Length)>,
}

/// The direction in which a saw line runs on the sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum SawLine {
    /// Along the sheet's length: a rip.
    Length,
    /// Across the sheet's length: a crosscut.
    Width,
}

impl SawLine {
    /// The other direction.
    #[must_use]
    pub fn turned(self) -> SawLine {
        match self {
            SawLine::Length => SawLine::Width,
            SawLine::Width => SawLine::Length,
        }
    }
}

impl Saw {
    /// A saw without kerf, trim or limits.
    pub fn new() -> Saw {
        Saw::default()
    }

    /// With a kerf.
    #[must_use]
    pub fn kerf(mut self, kerf: Length) -> Saw {
        self.kerf = kerf;
        self
    }

    /// With an edge trim.
    #[must_use]
    pub fn trim(mut self, trim: Length) -> Saw {
        self.trim = trim;
        self
    }

    /// With a limit on cutting stages.
    #[must_use]
    pub fn stages(mut self, stages: u8) -> Saw {
        self.stages = Some(stages);
        self
    }

    /// With a fixed first direction.
    #[must_use]
    pub fn first(mut self, first: SawLine) -> Saw {
        self.first = Some(first);
        self
    }

    /// With a smallest offcut worth keeping.
    #[must_use]
    pub fn keep(mut self, length: Length, width: Length) -> Saw {
        self.keep = Some((length, width));
        self
    }

    /// Checks the settings; pointers are relative to the saw.
    ///
    /// # Errors
    /// A negative length, or a number of stages that no saw has.
    pub fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::new();
        let keep = self.keep.map_or([Length::ZERO; 2], |(length, width)| [length, width]);
        for (field, length) in [("kerf", self.kerf), ("trim", self.trim), ("keep", keep[0]), ("keep", keep[1])] {
            if length.is_negative() {
                faults.push(
                    Fault::new(
                        Kind::LengthNegative,
                        length.to_string(),
                        format!("{length} is below zero."),
                        "Zero or more is accepted.",
                    )
                    .within(field),
                );
            }
        }
        if let Some(stages) = self.stages.filter(|stages| !(1..=3).contains(stages)) {
            faults.push(
                Fault::new(
                    Kind::NestStages,
                    stages.to_string(),
                    format!("{stages} is no number of cutting stages."),
                    "Stages are 1, 2 or 3, or not limited.",
                )
                .within("stages"),
            );
        }
        faults.finish()
    }
}
