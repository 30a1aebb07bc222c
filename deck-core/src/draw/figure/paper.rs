//! The sheet, and places on it.

/// A distance on paper, in micrometres. A4 and Letter both are whole numbers of them.
pub type Micrometres = i64;

/// Micrometres in a millimetre.
pub const MILLIMETRE: Micrometres = 1000;

/// The sheets of paper that a shop's printer holds.
///
/// # Method
/// Letter is 8-1/2 by 11 in (ANSI/ASME Y14.1, size A), A4 is 210 by 297 mm (ISO 216).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Paper {
    /// Letter, upright.
    #[default]
    Letter,
    /// Letter, lying.
    LetterLandscape,
    /// A4, upright.
    A4,
    /// A4, lying.
    A4Landscape,
}

impl Paper {
    /// Width and height.
    pub const fn size(self) -> (Micrometres, Micrometres) {
        match self {
            Paper::Letter => (215_900, 279_400),
            Paper::LetterLandscape => (279_400, 215_900),
            Paper::A4 => (210_000, 297_000),
            Paper::A4Landscape => (297_000, 210_000),
        }
    }

    /// The same sheet lying on its long side.
    #[must_use]
    pub const fn landscape(self) -> Paper {
        match self {
            Paper::Letter | Paper::LetterLandscape => Paper::LetterLandscape,
            Paper::A4 | Paper::A4Landscape => Paper::A4Landscape,
        }
    }

    /// The same sheet standing on its short side.
    #[must_use]
    pub const fn portrait(self) -> Paper {
        match self {
            Paper::Letter | Paper::LetterLandscape => Paper::Letter,
            Paper::A4 | Paper::A4Landscape => Paper::A4,
        }
    }

    /// The whole sheet.
    pub const fn area(self) -> Rect {
        let (width, height) = self.size();
        Rect { left: 0, top: 0, right: width, bottom: height }
    }
}

/// A place on paper, to the right and down from the upper left corner.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub struct Point {
    /// Distance from the left edge.
    pub x: Micrometres,
    /// Distance from the upper edge.
    pub y: Micrometres,
}

impl Point {
    /// A place by its distances from the left and the upper edge.
    pub const fn new(x: Micrometres, y: Micrometres) -> Point {
        Point { x, y }
    }

    /// The place so far to the right and down.
    #[must_use]
    pub const fn moved(self, right: Micrometres, down: Micrometres) -> Point {
        Point { x: self.x + right, y: self.y + down }
    }
}

/// An upright rectangle on paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Rect {
    /// Left edge.
    pub left: Micrometres,
    /// Upper edge.
    pub top: Micrometres,
    /// Right edge.
    pub right: Micrometres,
    /// Lower edge.
    pub bottom: Micrometres,
}

impl Rect {
    /// A rectangle by its edges.
    pub const fn new(left: Micrometres, top: Micrometres, right: Micrometres, bottom: Micrometres) -> Rect {
        Rect { left, top, right, bottom }
    }

    /// The upright rectangle between two places, in whatever order.
    pub fn spanning(a: Point, b: Point) -> Rect {
        Rect::new(a.x.min(b.x), a.y.min(b.y), a.x.max(b.x), a.y.max(b.y))
    }

    /// Width.
    pub const fn width(self) -> Micrometres {
        self.right - self.left
    }

    /// Height.
    pub const fn height(self) -> Micrometres {
        self.bottom - self.top
    }

    /// The middle.
    pub const fn centre(self) -> Point {
        Point::new(self.left + self.width() / 2, self.top + self.height() / 2)
    }

    /// The upper left corner.
    pub const fn top_left(self) -> Point {
        Point::new(self.left, self.top)
    }

    /// The lower right corner.
    pub const fn bottom_right(self) -> Point {
        Point::new(self.right, self.bottom)
    }

    /// The rectangle with each edge moved inward (outward below zero).
    #[must_use]
    pub const fn inset(self, by: Micrometres) -> Rect {
        Rect::new(self.left + by, self.top + by, self.right - by, self.bottom - by)
    }

    /// What is left and what was cut off: a strip of that height from the top.
    pub const fn cut_top(self, height: Micrometres) -> (Rect, Rect) {
        let at = self.top + height;
        (Rect { top: at, ..self }, Rect { bottom: at, ..self })
    }

    /// What is left and what was cut off: a strip of that height from the bottom.
    pub const fn cut_bottom(self, height: Micrometres) -> (Rect, Rect) {
        let at = self.bottom - height;
        (Rect { bottom: at, ..self }, Rect { top: at, ..self })
    }

    /// What is left and what was cut off: a strip of that width from the left.
    pub const fn cut_left(self, width: Micrometres) -> (Rect, Rect) {
        let at = self.left + width;
        (Rect { left: at, ..self }, Rect { right: at, ..self })
    }

    /// What is left and what was cut off: a strip of that width from the right.
    pub const fn cut_right(self, width: Micrometres) -> (Rect, Rect) {
        let at = self.right - width;
        (Rect { right: at, ..self }, Rect { left: at, ..self })
    }

    /// The least rectangle that holds both.
    #[must_use]
    pub fn united(self, other: Rect) -> Rect {
        Rect::new(
            self.left.min(other.left),
            self.top.min(other.top),
            self.right.max(other.right),
            self.bottom.max(other.bottom),
        )
    }

    /// True where the two share more than a border.
    pub const fn overlaps(self, other: Rect) -> bool {
        self.left < other.right && other.left < self.right && self.top < other.bottom && other.top < self.bottom
    }

    /// True where the other lies within this one.
    pub const fn holds(self, other: Rect) -> bool {
        self.left <= other.left && other.right <= self.right && self.top <= other.top && other.bottom <= self.bottom
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn strips_tile_what_they_are_cut_from() {
        let page = Paper::Letter.area();
        let (rest, strip) = page.cut_bottom(20 * MILLIMETRE);
        assert_eq!(rest.height() + strip.height(), page.height());
        assert_eq!(rest.bottom, strip.top);
        assert!(!rest.overlaps(strip) && page.holds(rest));
    }

    #[test]
    fn turning_a_sheet_swaps_its_sides() {
        for paper in [Paper::Letter, Paper::A4] {
            let (width, height) = paper.size();
            assert_eq!(paper.landscape().size(), (height, width));
            assert_eq!(paper.landscape().portrait(), paper);
        }
    }
}
