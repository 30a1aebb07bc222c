//! A screw: its diameter, threads and head.

use crate::error::{Error, Fault, Faults, Kind};
use crate::length::{Length, Unit};
use crate::published::SCREWS;
use crate::span::options::figure;
use crate::span::words::unknown;
use serde::{Deserialize, Serialize};

/// How a screw is threaded.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "lowercase")]
pub enum Thread {
    /// Spaced threads, as tapping screws have.
    #[default]
    Spaced,
    /// Machine threads (UNC).
    Machine,
}

/// A screw.
///
/// # Examples
/// ```
/// use deck_core::span::hold::Screw;
/// let screw = Screw::published("1/4-20")?.head("1/2 in".parse()?);
/// assert_eq!(screw.diameter, "1/4 in".parse()?);
/// # Ok::<(), deck_core::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct Screw {
    /// Its designation, such as `#10-16`.
    pub name: String,
    /// Nominal diameter.
    pub diameter: Length,
    /// Threads to the inch.
    pub threads: f64,
    /// How it is threaded.
    #[serde(default)]
    pub thread: Thread,
    /// Diameter of its head, or of the washer under it.
    pub head: Length,
}

impl Screw {
    /// A screw of the user's own, with spaced threads.
    pub fn new(name: impl Into<String>, diameter: Length, threads: f64, head: Length) -> Screw {
        Screw { name: name.into(), diameter, threads, thread: Thread::Spaced, head }
    }

    /// A screw by its designation, with the hex washer head that the pull-over table implies. Where the table implies
    /// none, the head is as wide as the shank: give its own with [`Screw::head`].
    ///
    /// # Errors
    /// A designation that is not published here.
    pub fn published(name: &str) -> Result<Screw, Error> {
        let Some(size) = SCREWS.iter().find(|size| size.name == name) else {
            let names: Vec<&str> = SCREWS.iter().map(|size| size.name).collect();
            return Err(unknown("screw", name, &names).within("screw").into());
        };
        // The one published size with machine threads.
        let thread = if size.name == "1/4-20" { Thread::Machine } else { Thread::Spaced };
        let inches = |figure: f64| Length::nearest(figure * Unit::Inch.nanometres() as f64);
        let (diameter, head) = (inches(size.diameter), inches(size.washer_head.unwrap_or(size.diameter)));
        Ok(Screw { name: name.into(), diameter, threads: size.threads, thread, head })
    }

    /// With another head.
    #[must_use]
    pub fn head(mut self, diameter: Length) -> Screw {
        self.head = diameter;
        self
    }

    /// With machine or spaced threads.
    #[must_use]
    pub fn thread(mut self, thread: Thread) -> Screw {
        self.thread = thread;
        self
    }

    /// Checks the sizes; pointers are relative to the screw.
    ///
    /// # Errors
    /// A diameter of zero or less, a head narrower than the shank, threads outside 4 to 100 to the inch.
    pub fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::new();
        if self.diameter <= Length::ZERO {
            let message = format!("{} is no diameter.", self.diameter);
            let fault =
                Fault::new(Kind::FastenerSize, self.diameter.to_string(), message, "More than zero is accepted.");
            faults.push(fault.within("diameter"));
        } else if self.head < self.diameter {
            let message = format!("A head of {} is narrower than the shank, {}.", self.head, self.diameter);
            let accepted = "A head as wide as the shank or wider is accepted.";
            faults.push(Fault::new(Kind::FastenerSize, self.head.to_string(), message, accepted).within("head"));
        }
        faults.take(figure(self.threads, 4.0, 100.0).map_err(|error| error.within("threads")));
        faults.finish()
    }
}
