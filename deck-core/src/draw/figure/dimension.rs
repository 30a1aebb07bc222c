//! Dimension lines between neighbouring places, as a chain.
//!
//! A figure stands over the middle of its piece. Where the piece is too short for it, it goes to a second row, where such
//! figures are pushed apart, and a leader joins the two:
//!
//! ```text
//!               1/8"
//!                 \
//!        47-15/16" |    48"
//!     |------------|-|--------|
//! ```

use super::{Anchor, Figure, Line, Micrometres, Point, Text, TextSize, spread};

/// How far an extension line stays away from the place that it extends, and how far it runs past the dimension line.
const CLEAR: Micrometres = 800;
const PAST: Micrometres = 1200;
/// Half the extent of the slanted tick that ends a piece.
const TICK: Micrometres = 900;
/// Space left at each side of a figure within its piece, and between figures of the second row.
const SIDE: Micrometres = 700;

/// Dimensions along one line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Chain {
    /// True for a line from top to bottom, whose figures run upwards.
    pub upright: bool,
    /// Where the line lies: its y, or its x when upright.
    pub at: Micrometres,
    /// Where extension lines start: the edge of what is measured.
    pub from: Micrometres,
    /// The ends of the pieces, in order along the line: one more than there are pieces.
    pub ends: Vec<Micrometres>,
    /// The figures of the pieces.
    pub words: Vec<String>,
    /// Height of type.
    pub size: TextSize,
    /// Limits for the figures of the second row.
    pub limits: (Micrometres, Micrometres),
}

impl Chain {
    /// A level chain.
    pub fn level(at: Micrometres, from: Micrometres) -> Chain {
        Chain {
            upright: false,
            at,
            from,
            ends: Vec::new(),
            words: Vec::new(),
            size: TextSize::FIGURE,
            limits: (Micrometres::MIN / 4, Micrometres::MAX / 4),
        }
    }

    /// A chain from top to bottom.
    pub fn upright(at: Micrometres, from: Micrometres) -> Chain {
        Chain { upright: true, ..Chain::level(at, from) }
    }

    /// Starts the chain.
    #[must_use]
    pub fn start(mut self, at: Micrometres) -> Chain {
        self.ends.push(at);
        self
    }

    /// Goes on to the next end.
    #[must_use]
    pub fn to(mut self, end: Micrometres, words: impl Into<String>) -> Chain {
        self.ends.push(end);
        self.words.push(words.into());
        self
    }

    /// In another size of type.
    #[must_use]
    pub fn size(mut self, size: TextSize) -> Chain {
        self.size = size;
        self
    }

    /// With limits for the figures of the second row.
    #[must_use]
    pub fn limits(mut self, low: Micrometres, high: Micrometres) -> Chain {
        self.limits = (low, high);
        self
    }

    /// How far the chain reaches beyond its line, away from what is measured.
    pub fn depth(&self) -> Micrometres {
        let rows = if self.pieces().all(|piece| self.keeps(&piece)) { 1 } else { 2 };
        self.row(rows) + self.size.em() * 3 / 2
    }

    /// Draws the chain.
    pub fn draw(&self, figure: &mut Figure) {
        let (Some(&first), Some(&last)) = (self.ends.first(), self.ends.last()) else {
            return;
        };
        let out = self.outward();
        figure.line(self.place(first, self.at), self.place(last, self.at), Line::Fine);
        for &end in &self.ends {
            let start = self.from + CLEAR * out;
            figure.line(self.place(end, start), self.place(end, self.at + PAST * out), Line::Fine);
            figure.line(self.place(end - TICK, self.at + TICK), self.place(end + TICK, self.at - TICK), Line::Thin);
        }
        let (inside, lifted): (Vec<Piece<'_>>, Vec<Piece<'_>>) = self.pieces().partition(|piece| self.keeps(piece));
        for piece in inside {
            // A figure longer than its piece stands clear of the ends of the extension lines.
            let lift = if piece.fits(self.size) { 0 } else { self.size.em() / 2 };
            self.write(figure, piece.words, piece.middle, self.row(1) + lift);
        }
        self.draw_second_row(figure, &lifted);
    }

    fn draw_second_row(&self, figure: &mut Figure, lifted: &[Piece<'_>]) {
        let wanted: Vec<_> = lifted.iter().map(|piece| (piece.middle, piece.width(self.size))).collect();
        let places = spread(&wanted, 2 * SIDE, self.limits.0, self.limits.1);
        let out = self.outward();
        let knee = self.at + (self.row(1) + self.size.em() * 6 / 10) * out;
        let foot = self.at + (self.row(2) - self.size.em() * 6 / 10) * out;
        for (piece, place) in lifted.iter().zip(places) {
            figure.line(self.place(piece.middle, self.at), self.place(piece.middle, knee), Line::Fine);
            figure.line(self.place(piece.middle, knee), self.place(place, foot), Line::Fine);
            self.write(figure, piece.words, place, self.row(2));
        }
    }

    fn write(&self, figure: &mut Figure, words: &str, middle: Micrometres, away: Micrometres) {
        let place = self.place(middle, self.at + away * self.outward());
        let text = Text::new(words, place, self.size).anchor(Anchor::Middle);
        figure.text(if self.upright { text.upwards(place) } else { text.level() });
    }

    /// From the line to the middle of a row's figures.
    fn row(&self, row: i64) -> Micrometres {
        let (first, pitch) = (self.size.em() * 8 / 10, self.size.em() * 21 / 10);
        first + (row - 1) * pitch
    }

    /// 1 where the line lies below or to the right of what is measured, −1 otherwise.
    fn outward(&self) -> i64 {
        if self.at >= self.from { 1 } else { -1 }
    }

    fn place(&self, along: Micrometres, across: Micrometres) -> Point {
        if self.upright { Point::new(across, along) } else { Point::new(along, across) }
    }

    /// True where a piece's figure stands over it. A piece without neighbours keeps its figure, however long.
    fn keeps(&self, piece: &Piece<'_>) -> bool {
        self.words.len() == 1 || piece.fits(self.size)
    }

    fn pieces(&self) -> impl Iterator<Item = Piece<'_>> {
        self.ends.windows(2).zip(&self.words).filter_map(|(ends, words)| match *ends {
            [start, end] => Some(Piece { words, middle: start + (end - start) / 2, extent: (end - start).abs() }),
            _ => None,
        })
    }
}

struct Piece<'a> {
    words: &'a str,
    middle: Micrometres,
    extent: Micrometres,
}

impl Piece<'_> {
    fn width(&self, size: TextSize) -> Micrometres {
        super::width(self.words, size, false)
    }

    fn fits(&self, size: TextSize) -> bool {
        self.width(size) + 2 * SIDE <= self.extent
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::draw::figure::Paper;

    #[test]
    fn short_pieces_go_to_the_second_row_and_nothing_overlaps() {
        let mut figure = Figure::new("chain", Paper::A4);
        for upright in [false, true] {
            let chain = Chain { upright, ..Chain::level(20_000, 30_000) };
            let chain = ["48\"", "1/8\"", "1/8\"", "1/4\"", "47-15/16\""]
                .iter()
                .zip([90_000, 91_000, 92_000, 94_000, 150_000])
                .fold(chain.start(50_000), |chain, (words, end)| chain.to(end, *words));
            chain.draw(&mut figure);
        }
        assert_eq!(figure.texts.len(), 10);
        assert_eq!(figure.overlaps(), []);
    }

    #[test]
    fn the_depth_holds_all_figures() {
        let chain = Chain::level(40_000, 50_000).start(50_000).to(51_000, "1/8\"").to(100_000, "48\"");
        let mut figure = Figure::new("chain", Paper::A4);
        chain.draw(&mut figure);
        let top = figure.texts.iter().map(|text| text.bounds().top).min().unwrap();
        assert!(top >= 40_000 - chain.depth(), "{top}");
    }
}
