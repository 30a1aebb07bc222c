//! Where the old deck's datum lies on the new deck.

use crate::geometry::Point;
use crate::length::Length;
use serde::{Deserialize, Serialize};

/// The datum from which holes were measured on the old deck, as it lies on the new one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[non_exhaustive]
pub struct OldDatum {
    /// Where it lies on the new deck.
    pub at: Point,
    /// True where `x` was measured forward from it, as from a stern edge.
    pub forward: bool,
    /// True where `y` was measured to port from it, as from a starboard edge.
    pub to_port: bool,
    /// How the old deck was turned: its fore-and-aft line runs so far to starboard (to port below zero) over a length aft.
    pub skew: Option<(Length, Length)>,
}

impl OldDatum {
    /// A datum at a point of the new deck, measured aft and to starboard, not turned.
    pub fn new(at: Point) -> OldDatum {
        OldDatum { at, ..OldDatum::default() }
    }

    /// A place of the old deck on the new one; exact where the old deck was not turned, and to the nearest nanometre where
    /// it was.
    ///
    /// # Examples
    /// The old bow edge lay half an inch aft of the new one; the old deck ran 1/4 in to starboard over 20 ft.
    /// ```
    /// use deck_core::{fittings::OldDatum, geometry::Point, Length};
    /// let mut datum = OldDatum::new(Point::new("0.5 in".parse()?, Length::ZERO));
    /// let hole = datum.on_deck(Length::inches(240), Length::inches(6));
    /// assert_eq!(hole, Point::new("240.5 in".parse()?, Length::inches(6)));
    /// datum.skew = Some(("240 in".parse()?, "0.25 in".parse()?));
    /// assert_eq!(datum.on_deck(Length::inches(240), Length::ZERO).y.decimal_places(deck_core::Unit::Inch, 4), "0.25");
    /// # Ok::<(), deck_core::Error>(())
    /// ```
    pub fn on_deck(&self, x: Length, y: Length) -> Point {
        let (aft, starboard) = (if self.forward { -x } else { x }, if self.to_port { -y } else { y });
        let Some((over, to_starboard)) = self.skew else {
            return Point::new(self.at.x + aft, self.at.y + starboard);
        };
        let at = |length: Length| length.nanometres() as f64;
        let (run, rise) = (at(over), at(to_starboard));
        let length = (run * run + rise * rise).sqrt();
        let (along, across) = (run / length, rise / length);
        let moved = |a: f64| Length::nearest(a);
        Point::new(
            self.at.x + moved(at(aft) * along - at(starboard) * across),
            self.at.y + moved(at(aft) * across + at(starboard) * along),
        )
    }
}
