//! The least move of an opening that breaks a rule.

use super::check::Rule;
use super::curves::curves;
use super::rules::OpeningRules;
use super::site::{Site, Surroundings};
use crate::geometry::Bounds;
use crate::length::Length;
use crate::outline::Opening;
use serde::{Deserialize, Serialize};

/// A nanometre or two from where curves cross, as crossings are rounded.
const NEAR: i64 = 2;

/// How an opening would have to be moved.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Move {
    /// How far aft; forward below zero.
    pub aft: Length,
    /// How far to starboard; to port below zero.
    pub starboard: Length,
    /// How far that is in a straight line.
    pub distance: Length,
}

/// The least move by which an opening keeps every rule of place, with the others where they are; no move at all where it
/// does already. Where there is no such place, the rules of which one alone, left out, would leave one.
///
/// A slot in the deck's edge, or a corner radius, no move mends; neither is looked at.
///
/// # Errors
/// `Err` holds those rules; empty where none of them alone would help.
///
/// # Method
/// The nearest place lies on one of the curves along which the opening just keeps a distance, or where two of them cross;
/// all of these are tried from the nearest on, each to the nanometre. Derived here, no source.
///
/// # Cost
/// For c curves c² log c; c grows with members, seams, sides and openings.
pub fn least_move(
    opening: &Opening,
    others: &[Bounds],
    around: &Surroundings<'_>,
    rules: &OpeningRules,
) -> Result<Move, Vec<Rule>> {
    let site = |without: Option<Rule>| Site::new(opening, others, around, rules, without);
    nearest(&site(None)).ok_or_else(|| {
        let helps = |rule: &Rule| nearest(&site(Some(*rule))).is_some();
        Rule::OF_PLACE.into_iter().filter(helps).collect()
    })
}

fn nearest(site: &Site<'_>) -> Option<Move> {
    if site.fits(Length::ZERO, Length::ZERO) {
        return Some(Move::new(Length::ZERO, Length::ZERO));
    }
    let curves = curves(site);
    let mut places: Vec<(f64, f64)> = curves.iter().flat_map(|curve| curve.feet()).collect();
    for (index, one) in curves.iter().enumerate() {
        let others = curves.iter().take(index);
        places.extend(others.flat_map(|other| one.crossings(*other)));
    }
    let square = |(x, y): &(f64, f64)| x * x + y * y;
    places.retain(|place| square(place).is_finite());
    places.sort_by(|a, b| square(a).total_cmp(&square(b)).then(a.0.total_cmp(&b.0)).then(a.1.total_cmp(&b.1)));
    places.dedup();
    places.into_iter().find_map(|place| beside(site, place))
}

/// The nearest whole nanometres around a place that keep every rule.
fn beside(site: &Site<'_>, (x, y): (f64, f64)) -> Option<Move> {
    let (x, y) = (Length::nearest(x), Length::nearest(y));
    let steps = || (-NEAR..=NEAR).map(Length::from_nanometres);
    let reachable = site.aft.within((x).nanometres() - NEAR, (x).nanometres() + NEAR);
    if reachable.is_empty() {
        return None;
    }
    let mut around: Vec<Move> =
        steps().flat_map(|dx| steps().map(move |dy| (dx, dy))).map(|(dx, dy)| Move::new(x + dx, y + dy)).collect();
    around.sort_by_key(|place| (Move::new(place.aft - x, place.starboard - y).square(), place.aft, place.starboard));
    around.into_iter().find(|place| site.fits(place.aft, place.starboard))
}

impl Move {
    fn new(aft: Length, starboard: Length) -> Move {
        Move { aft, starboard, distance: aft.hypotenuse(starboard) }
    }

    /// True where nothing is moved.
    pub fn is_none(&self) -> bool {
        self.aft.is_zero() && self.starboard.is_zero()
    }

    fn square(&self) -> i128 {
        let square = |length: Length| i128::from(length.nanometres()).pow(2);
        square(self.aft) + square(self.starboard)
    }
}
