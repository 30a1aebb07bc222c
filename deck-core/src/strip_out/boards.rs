//! The old boards, the tape over their seams, and what goes to the dump.

use super::{OldCovering, StripOutInput};
use crate::length::{Area, Length, Unit};
use crate::money::Figure;
use crate::published::plywood_psf;
use serde::{Deserialize, Serialize};

/// The old boards.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct OldBoards {
    /// How many, at the width that was given.
    pub count: u32,
    /// Their width, fore and aft.
    pub width: Length,
    /// Their length, athwart.
    pub length: Length,
    /// Their thickness.
    pub thickness: Length,
    /// Their area, openings taken out.
    pub area: Area,
    /// Pounds when dry.
    pub dry_lb: f64,
    /// Pounds when soaked, at least.
    pub soaked_least_lb: f64,
    /// Pounds when soaked, at most.
    pub soaked_most_lb: f64,
    /// Pounds of one full board when soaked, at most.
    pub heaviest_lb: f64,
}

impl OldBoards {
    pub(super) fn new(input: &StripOutInput<'_>) -> OldBoards {
        let (area, beam) = (input.covered(), input.outline.beam());
        let psf = plywood_psf(input.thickness);
        let wet = |percent: u32| 1.0 + f64::from(percent) / 100.0;
        let dry = area.number(Unit::Foot) * psf;
        let width = input.board_width.min(input.outline.length());
        let one = Area::of(beam, width).number(Unit::Foot) * psf;
        OldBoards {
            count: u32::try_from(input.outline.length().steps_of(input.board_width).max(1)).unwrap_or(u32::MAX),
            width,
            length: beam,
            thickness: input.thickness,
            area,
            dry_lb: tenth(dry),
            soaked_least_lb: tenth(dry * wet(input.soaked.0)),
            soaked_most_lb: tenth(dry * wet(input.soaked.1)),
            heaviest_lb: tenth(one * wet(input.soaked.1)),
        }
    }
}

/// Tape over the old seams.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct SeamTape {
    /// How many seams.
    pub seams: u32,
    /// Their length in all.
    pub length: Length,
    /// How it comes off.
    pub how: String,
    /// What to beware of.
    pub beware: String,
}

impl SeamTape {
    pub(super) fn new(input: &StripOutInput<'_>, boards: &OldBoards) -> SeamTape {
        let seams = boards.count.saturating_sub(1);
        SeamTape {
            seams,
            length: input.outline.beam() * i64::from(seams),
            how: "Warm the metal from below, never the tape: when the member is hand-hot, lift one end with a scraper and pull \
                  it back low and slowly, warming ahead of the pull."
                .into(),
            beware: "No heat near a fuel line, a tank, a vent or a foam-filled tube: look below first, air the place, and keep \
                     an extinguisher at hand. Old glue smokes before it burns."
                .into(),
        }
    }
}

/// What goes to the dump.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Disposal {
    /// Pounds, everything dry.
    pub dry_lb: f64,
    /// Pounds with the boards soaked, at most.
    pub most_lb: f64,
    /// Pounds of the old covering, where its weight is known.
    pub covering_lb: Option<f64>,
    /// Cubic feet of the boards, stacked flat without gaps.
    pub boards_cubic_feet: Figure,
    /// Cubic feet of the covering, laid flat, where its thickness is known.
    pub covering_cubic_feet: Option<Figure>,
}

impl Disposal {
    pub(super) fn new(input: &StripOutInput<'_>, boards: &OldBoards) -> Disposal {
        let covered = input.covering != OldCovering::None;
        let feet = boards.area.number(Unit::Foot);
        let covering_lb = input.covering_psf.filter(|_| covered).map(|psf| tenth(feet * psf.number()));
        let volume = |thickness: Length| Figure::nearest(feet * thickness.in_unit(Unit::Foot), 1);
        Disposal {
            dry_lb: tenth(boards.dry_lb + covering_lb.unwrap_or(0.0)),
            most_lb: tenth(boards.soaked_most_lb + covering_lb.unwrap_or(0.0)),
            covering_lb,
            boards_cubic_feet: volume(input.thickness),
            covering_cubic_feet: input.covering_thickness.filter(|_| covered).map(volume),
        }
    }
}

fn tenth(pounds: f64) -> f64 {
    (pounds * 10.0).round() / 10.0
}
