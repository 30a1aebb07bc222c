//! Words on a sheet.

use super::text_width;
use super::{Micrometres, Point, Rect};

/// The height of type.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct TextSize {
    tenths_of_a_point: i64,
}

impl TextSize {
    /// The least size on a sheet: 8 points.
    pub const LEAST: TextSize = TextSize::points(8);
    /// Running words: 9 points.
    pub const BODY: TextSize = TextSize::points(9);
    /// Figures that a hand sets on a saw or a tape: 10 points.
    pub const FIGURE: TextSize = TextSize::points(10);
    /// A heading within a sheet: 12 points.
    pub const HEADING: TextSize = TextSize::points(12);
    /// What the sheet is: 18 points.
    pub const TITLE: TextSize = TextSize::points(18);

    /// So many points; a point is 1/72 in.
    pub const fn points(points: i64) -> TextSize {
        TextSize { tenths_of_a_point: points * 10 }
    }

    /// The size in tenths of a point.
    pub const fn tenths(self) -> i64 {
        self.tenths_of_a_point
    }

    /// The em: the size as a distance on paper.
    pub const fn em(self) -> Micrometres {
        self.part(1000)
    }

    /// From one line of words to the next.
    pub const fn line_height(self) -> Micrometres {
        self.part(1300)
    }

    /// The height of a line's letters, from the top of the tallest to the foot of the lowest.
    pub const fn height(self) -> Micrometres {
        self.part(RISE) + self.part(FALL)
    }

    /// Half a point smaller.
    #[must_use]
    pub const fn smaller(self) -> TextSize {
        TextSize { tenths_of_a_point: self.tenths_of_a_point - 5 }
    }

    /// So many thousandths of the em, cut to a whole micrometre.
    const fn part(self, thousandths: i64) -> Micrometres {
        // 25 400 µm are 720 tenths of a point.
        self.tenths_of_a_point * 25_400 * thousandths / 720_000
    }
}

/// Which part of the words lies at their place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Anchor {
    /// Their start.
    Start,
    /// Their middle.
    Middle,
    /// Their end.
    End,
}

/// A line of words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Text {
    /// The words.
    pub words: String,
    /// The place of the anchor, on the base line.
    pub at: Point,
    /// What lies there.
    pub anchor: Anchor,
    /// Height of type.
    pub size: TextSize,
    /// Heavy type.
    pub bold: bool,
    /// A quarter turn, so that the words run upwards.
    pub turned: bool,
    /// A white patch behind the words.
    pub masked: bool,
}

/// Height of capitals and figures in thousandths of the em (DejaVu Sans 2.37: 1493 of 2048 units).
const CAPITALS: i64 = 729;
/// What rises above the base line: the tallest of the letters used, `(` and `|` (1556 of 2048 units).
const RISE: i64 = 760;
/// What falls below the base line: `g`, `y` (426 of 2048 units) and the brackets (270).
const FALL: i64 = 210;

impl Text {
    /// Words that start at a place on the base line.
    pub fn new(words: impl Into<String>, at: Point, size: TextSize) -> Text {
        Text { words: words.into(), at, anchor: Anchor::Start, size, bold: false, turned: false, masked: false }
    }

    /// Words with their middle on a place.
    pub fn centred(words: impl Into<String>, middle: Point, size: TextSize) -> Text {
        Text::new(words, middle, size).anchor(Anchor::Middle).level()
    }

    /// Words in the middle of a spot of [`TextSize::height`], their letters from its top to its foot.
    pub fn filling(words: impl Into<String>, spot: Rect, size: TextSize) -> Text {
        let base = Point::new(spot.centre().x, spot.top + size.part(RISE));
        Text::new(words, base, size).anchor(Anchor::Middle)
    }

    /// With another anchor.
    #[must_use]
    pub fn anchor(mut self, anchor: Anchor) -> Text {
        self.anchor = anchor;
        self
    }

    /// In heavy type.
    #[must_use]
    pub fn bold(mut self, bold: bool) -> Text {
        self.bold = bold;
        self
    }

    /// On a white patch.
    #[must_use]
    pub fn masked(mut self) -> Text {
        self.masked = true;
        self
    }

    /// Moved so that the middle of the capitals' height, not the base line, runs through the place.
    #[must_use]
    pub fn level(mut self) -> Text {
        let half = self.size.part(CAPITALS) / 2;
        self.at = if self.turned { self.at.moved(half, 0) } else { self.at.moved(0, half) };
        self
    }

    /// Running upwards, with the middle of the capitals' height through `middle`. Takes the place of [`Text::level`].
    #[must_use]
    pub fn upwards(mut self, middle: Point) -> Text {
        self.turned = true;
        self.at = middle;
        self.level()
    }

    /// How long the words are.
    pub fn width(&self) -> Micrometres {
        text_width::width(&self.words, self.size, self.bold)
    }

    /// The upright rectangle that the words take up, rise and fall included.
    pub fn bounds(&self) -> Rect {
        let width = self.width();
        let before = match self.anchor {
            Anchor::Start => 0,
            Anchor::Middle => width / 2,
            Anchor::End => width,
        };
        let (rise, fall) = (self.size.part(RISE), self.size.part(FALL));
        let Point { x, y } = self.at;
        if self.turned {
            Rect::new(x - rise, y + before - width, x + fall, y + before)
        } else {
            Rect::new(x - before, y - rise, x - before + width, y + fall)
        }
    }

    /// The white patch of a masked text: a little more than its bounds to the sides, a little less above and below.
    pub(in crate::draw) fn patch(&self) -> Rect {
        const SIDE: Micrometres = 400;
        let bounds = self.bounds();
        if self.turned {
            Rect::new(bounds.left, bounds.top - SIDE, bounds.right, bounds.bottom + SIDE)
        } else {
            Rect::new(bounds.left - SIDE, bounds.top, bounds.right + SIDE, bounds.bottom)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn seventy_two_points_are_an_inch() {
        assert_eq!(TextSize::points(72).em(), 25_400);
    }

    #[test]
    fn a_turned_text_is_as_high_as_it_was_wide() {
        let flat = Text::centred("47-15/16\"", Point::new(50_000, 50_000), TextSize::FIGURE);
        let turned = Text::new("47-15/16\"", Point::default(), TextSize::FIGURE)
            .anchor(Anchor::Middle)
            .upwards(Point::new(50_000, 50_000));
        assert_eq!(flat.bounds().width(), turned.bounds().height());
        assert_eq!(flat.bounds().height(), turned.bounds().width());
        assert!((turned.bounds().centre().y - 50_000).abs() <= 1);
    }
}
