//! Lays a model onto the sheet: a scale, a place for the model's origin, and which way its axes run.

use super::{Micrometres, Point, Scale};
use crate::length::Length;

/// A direction of the model.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Direction {
    /// Along x.
    X,
    /// Against x.
    MinusX,
    /// Along y.
    Y,
    /// Against y.
    MinusY,
}

/// How a model lies on the sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Mapping {
    /// How much smaller it is.
    pub scale: Scale,
    /// Where the model's origin comes to lie.
    pub origin: Point,
    /// The model's direction that runs to the right.
    pub right: Direction,
    /// The model's direction that runs down.
    pub down: Direction,
}

impl Mapping {
    /// The place on paper of a point of the model.
    pub fn point(&self, x: Length, y: Length) -> Point {
        self.origin.moved(self.along(self.right, x, y), self.along(self.down, x, y))
    }

    /// A length on paper.
    pub fn length(&self, length: Length) -> Micrometres {
        self.scale.on_paper(length)
    }

    fn along(&self, direction: Direction, x: Length, y: Length) -> Micrometres {
        match direction {
            Direction::X => self.length(x),
            Direction::MinusX => -self.length(x),
            Direction::Y => self.length(y),
            Direction::MinusY => -self.length(y),
        }
    }

    /// True where a turn from x to y in the model is a turn with the clock on the sheet.
    pub fn keeps_clockwise(&self) -> bool {
        use Direction::{MinusX, MinusY, X, Y};
        matches!((self.right, self.down), (X, Y) | (MinusX, MinusY) | (Y, MinusX) | (MinusY, X))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_deck_with_the_bow_up_turns_the_other_way() {
        let deck = Mapping {
            scale: Scale::one_to(10),
            origin: Point::new(1000, 2000),
            right: Direction::Y,
            down: Direction::X,
        };
        assert_eq!(deck.point(Length::inches(10), Length::inches(100)), Point::new(1000 + 254_000, 2000 + 25_400));
        // From x (down) to y (right) is a turn against the clock.
        assert!(!deck.keeps_clockwise());
        assert!(Mapping { right: Direction::X, down: Direction::Y, ..deck }.keeps_clockwise());
    }
}
