//! What mends a flange that is too narrow for the two rows of fasteners at a seam.
//!
//! ```text
//!      a = edge distance in the board, b = in the metal, B = what a board bears
//!   staggered rows      both distances at their least in print: a₀ + b₀ ≤ B on either side
//!   one row, a cleat    a + b ≤ B on one side; the other board is screwed to a cleat beside the flange
//!   sistered angle      beside a flange edge where a + b > B, with a flat leg of max(a − B, b) + b
//! ```

use super::layout::Seam;
use super::rules::Rules;
use crate::length::Length;
use serde::{Deserialize, Serialize};

/// A way to give both boards at a seam their row.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Remedy {
    /// Both rows on the flange, at the least distances in print, on half steps against each other.
    Staggered,
    /// One board has its row on the flange, the other on a cleat beside it.
    Cleat,
    /// An angle beside the member carries the row that lacks its distance.
    Angle,
}

/// Whether a remedy does at a seam.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct RemedyCheck {
    /// The remedy.
    pub remedy: Remedy,
    /// True where it does.
    pub does: bool,
    /// How much it lacks; zero where it does.
    pub lacks: Length,
}

/// A seam whose flange is too narrow, and what mends it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct SeamRemedy {
    /// Number of the seam.
    pub seam: usize,
    /// Number of its member.
    pub member: usize,
    /// Flange under both boards and the gap.
    pub flange: Length,
    /// Flange that two rows take: gap + 2 (a + b).
    pub needed: Length,
    /// How much wider the flange would have to be where the seam lies.
    pub short_by: Length,
    /// Each remedy, in the order in which they are tried.
    pub checks: Vec<RemedyCheck>,
    /// The first that does; none where none does.
    pub chosen: Option<Remedy>,
    /// Sides that an angle or a cleat goes to: forward of the flange, aft of it.
    pub sides: [bool; 2],
    /// Flat leg that an angle takes.
    pub leg: Length,
}

/// What remedies are made of, and the least distances in print.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub struct RemedyRules {
    /// Least edge distance in a board in print.
    pub least_in_ply: Length,
    /// Least edge distance in metal in print.
    pub least_in_metal: Length,
    /// Flat leg of the angle in stock.
    pub leg: Length,
}

impl RemedyRules {
    /// From the least distances in print and the angle's flat leg.
    pub fn new(least_in_ply: Length, least_in_metal: Length, leg: Length) -> RemedyRules {
        RemedyRules { least_in_ply, least_in_metal, leg }
    }
}

/// The remedy for a seam; none where both rows keep their distances.
///
/// # Method
/// As drawn above: the least work first. Derived here; that these three are what a shop does is common practice, no source.
///
/// # Examples
/// The flange of 1-1/4 with quarter-inch screws and a gap of 1/8 is 3/8 short: neither side has the 3/4 of a row, and an
/// angle beside each does it.
/// ```
/// use deck_core::frame::{Frame, FrameSpec};
/// use deck_core::seams::{BoardStock, Remedy, RemedyRules, Rules, SeamProblem, remedy, seams};
/// use deck_core::Length;
/// let (inches, length) = (Length::inches, |text: &str| text.parse::<Length>());
/// let frame = Frame::new(&FrameSpec::regular(inches(0), inches(96), inches(16), length("1-1/4 in")?))?;
/// let sheets = vec![BoardStock { label: "48 x 96".into(), width: inches(48) }];
/// let rules = Rules::new(length("1/2 in")?).gap(length("1/8 in")?).rows(length("3/8 in")?, length("3/8 in")?);
/// let found = seams(&SeamProblem::new(&frame, inches(96), sheets, rules.clone()));
/// let mend = RemedyRules::new(length("3/8 in")?, length("3/8 in")?, inches(1));
/// let mended = remedy(&found.layouts[0].seams[0], &rules, &mend).unwrap();
/// assert_eq!((mended.needed, mended.short_by), (length("1-5/8 in")?, length("3/8 in")?));
/// assert_eq!((mended.chosen, mended.sides), (Some(Remedy::Angle), [true, true]));
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn remedy(seam: &Seam, rules: &Rules, mend: &RemedyRules) -> Option<SeamRemedy> {
    if seam.short_by.is_zero() {
        return None;
    }
    let bearings = [seam.bearing_fore, seam.bearing_aft];
    let (in_ply, in_metal) = (rules.edge_in_ply, rules.edge_in_metal);
    let lacking = |row: Length| bearings.map(|bearing| (row - bearing).max(Length::ZERO));
    let [fore, aft] = lacking(in_ply + in_metal);
    let closest = in_ply.min(mend.least_in_ply) + in_metal.min(mend.least_in_metal);
    let staggered = lacking(closest).into_iter().sum::<Length>();
    // The row on an angle keeps clear of the joint between flange and angle.
    let legs = bearings.map(|bearing| (in_ply - bearing).max(in_metal) + in_metal);
    let short = [!fore.is_zero(), !aft.is_zero()];
    let leg = legs.into_iter().zip(short).filter(|(_, short)| *short).map(|(leg, _)| leg).max().unwrap_or_default();
    let checks: Vec<RemedyCheck> = [
        (Remedy::Staggered, staggered),
        (Remedy::Cleat, fore.min(aft)),
        (Remedy::Angle, (leg - mend.leg).max(Length::ZERO)),
    ]
    .into_iter()
    .map(|(remedy, lacks)| RemedyCheck { remedy, does: lacks.is_zero(), lacks })
    .collect();
    let chosen = checks.iter().find(|check| check.does).map(|check| check.remedy);
    Some(SeamRemedy {
        seam: seam.number,
        member: seam.member,
        flange: seam.bearing_fore + rules.gap + seam.bearing_aft,
        needed: rules.least_flange(),
        short_by: seam.short_by,
        checks,
        chosen,
        sides: if chosen == Some(Remedy::Staggered) { [false, false] } else { short },
        leg,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sixteenths(count: i64) -> Length {
        Length::inch_fraction(count, 16)
    }

    fn seam(fore: i64, aft: i64, row: i64) -> Seam {
        Seam {
            number: 1,
            member: 1,
            fore: Length::ZERO,
            aft: Length::ZERO,
            bearing_fore: sixteenths(fore),
            bearing_aft: sixteenths(aft),
            shift: Length::ZERO,
            short_by: sixteenths((row - fore).max(0) + (row - aft).max(0)),
            ends: None,
            length: None,
            lane: None,
        }
    }

    /// Every place of a row on a grid, on either side: the remedy that is chosen has one, and none tried before it has.
    #[test]
    fn the_remedy_is_the_first_that_finds_places_for_its_rows() {
        // Places of a row from the board's edge, in metal from `from` to `to`, at distances a and b.
        let place = |from: i64, to: i64, a: i64, b: i64| (0..64).any(|at| at >= a && at - from >= b && to - at >= b);
        for (fore, aft) in (4..20).flat_map(|fore| (4..20).map(move |aft| (fore, aft))) {
            for (a, b, least, leg) in [(6, 6, 6, 16), (8, 8, 6, 16), (10, 6, 4, 12), (6, 9, 6, 14)] {
                // The flange starts far on the other side of the gap, so that only its near edge counts.
                let flange = |bearing: i64| place(-64, bearing, a, b);
                let close = |bearing: i64| place(-64, bearing, a.min(least), b.min(least));
                let angle = |bearing: i64| flange(bearing) || place(bearing, bearing + leg, a, b);
                let rules = Rules::new(Length::ZERO).rows(sixteenths(a), sixteenths(b));
                let mend = RemedyRules::new(sixteenths(least), sixteenths(least), sixteenths(leg));
                let found = remedy(&seam(fore, aft, a + b), &rules, &mend);
                assert_eq!(found.is_none(), flange(fore) && flange(aft));
                let Some(found) = found else { continue };
                let expected = if close(fore) && close(aft) {
                    Some(Remedy::Staggered)
                } else if flange(fore) || flange(aft) {
                    Some(Remedy::Cleat)
                } else {
                    (angle(fore) && angle(aft)).then_some(Remedy::Angle)
                };
                assert_eq!(found.chosen, expected, "{fore} {aft} {a} {b} {least} {leg}");
            }
        }
    }
}
