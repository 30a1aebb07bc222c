//! How lengths are written on sheets.
//!
//! Places are given by running dimensions, each rounded once, from the datum; no sheet chains them, so that no rounding
//! adds up. A rounded figure carries ≈ and its decimal.

use crate::length::{Length, Notation, Unit};

/// Writes lengths the shop's way.
#[derive(Debug, Clone, Copy)]
pub(super) struct Ruler {
    notation: Notation,
}

impl Ruler {
    pub(super) fn new(notation: Notation) -> Ruler {
        Ruler { notation }
    }

    /// The unit of the shop, for the choice of scales.
    pub(super) fn unit(&self) -> Unit {
        self.notation.unit
    }

    /// A length by itself; where it was rounded, with ≈ and its decimal.
    pub(super) fn text(&self, length: Length) -> String {
        unbroken(&self.notation.text(length))
    }

    /// True where two lengths are printed with the same figure.
    pub(super) fn prints_alike(&self, a: Length, b: Length) -> bool {
        self.notation.round(a) == self.notation.round(b)
    }

    /// The printed figure of several lengths that are printed alike, as near as that figure is.
    pub(super) fn near(&self, length: Length) -> String {
        format!("≈{}", unbroken(&self.notation.figure(length)))
    }

    /// A length in fractions and in decimals: `47-15/16" (47.9375)`. In metric units the two are one.
    pub(super) fn both(&self, length: Length) -> String {
        let text = self.text(length);
        let whole = length.nanometres() % Unit::Inch.nanometres() == 0;
        if !self.notation.unit.is_imperial() || (whole && !self.notation.feet) || text.starts_with('≈') {
            return text;
        }
        format!("{text}{SPACE}({})", length.decimal_places(Unit::Inch, 4))
    }

    /// Length and width of a rectangle.
    pub(super) fn size(&self, length: Length, width: Length) -> String {
        format!("{} × {}", self.text(length), self.text(width))
    }
}

/// A space at which no line is broken: a figure stays on one line with its unit and its decimal.
const SPACE: char = '\u{a0}';

fn unbroken(figure: &str) -> String {
    figure.replace(' ', &SPACE.to_string())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fractions_stand_beside_decimals() {
        let ruler = Ruler::new(Notation::new(Unit::Inch));
        assert_eq!(ruler.both("47-15/16 in".parse().unwrap()), "47-15/16\"\u{a0}(47.9375)");
        assert_eq!(ruler.both(Length::inches(48)), "48\"");
        assert_eq!(ruler.both("1217 mm".parse().unwrap()), "≈47-15/16\"\u{a0}(47.913)");
        let metric = Ruler::new(Notation::new(Unit::Millimetre));
        assert_eq!(metric.both(Length::inches(48)), "1219.2\u{a0}mm");
    }
}
