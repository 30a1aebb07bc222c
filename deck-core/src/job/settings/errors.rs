//! The errors that a plan reckons with, where the job asks for that.

use super::Resolver;
use crate::job::{ErrorSpec, ToleranceSpec};
use crate::length::Length;
use crate::published::{Preset, defaults};
use crate::seams::{Errors, Spread};
use crate::stock::Sheet;

/// How far off things may be, each with a value.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct Tolerance {
    /// Of the reading of a member's station.
    pub measuring: Spread,
    /// Whether readings were chained from member to member.
    pub chained: bool,
    /// Of a sawn board's width.
    pub sawing: Spread,
    /// Of a board's place against the one before it.
    pub setting: Spread,
    /// How much a sheet may be scant.
    pub sheet: Length,
    /// Whether layouts of one cost are ranked by the margin that errors leave.
    pub by_margin: bool,
}

impl Tolerance {
    pub(super) fn resolve(take: &mut Resolver, spec: &ToleranceSpec) -> Tolerance {
        let mut spread = |given: Option<ErrorSpec>, preset: &Preset<Length>| match given {
            Some(error) => error.spread(),
            None => Spread::even(take.length(None, preset)),
        };
        Tolerance {
            measuring: spread(spec.measuring, &defaults::MEASURING),
            sawing: spread(spec.sawing, &defaults::SAWING),
            setting: spread(spec.setting, &defaults::SETTING),
            sheet: take.length(spec.sheet, &defaults::SHEET_SCANT),
            chained: spec.chained.unwrap_or_default(),
            by_margin: spec.by_margin.unwrap_or_default(),
        }
    }

    /// The errors of boards from some sheets, each with the width that a board keeps of it. A width between two factory
    /// edges is as far off as the sheet, one that was measured not at all; trimmed edges are sawn.
    pub(crate) fn errors<'s>(&self, sheets: impl Iterator<Item = (&'s Sheet, Length)>, trimmed: bool) -> Errors {
        let of = |sheet: &Sheet| {
            if trimmed {
                self.sawing
            } else if sheet.measured.is_some() {
                Spread::default()
            } else {
                Spread::scant(self.sheet)
            }
        };
        let full = sheets.map(|(sheet, width)| (width, of(sheet))).collect();
        Errors::new(self.sawing, self.setting).measuring(self.measuring, self.chained).full(full)
    }
}
