//! Running dimensions: every place by its distance from one datum, so that a hand sets them all off one tape.
//!
//! The figures stand in a row beside the drawing, in order, pushed apart so that none overlap. A leader goes from the
//! place to its figure:
//!
//! ```text
//!     |‾‾‾‾‾‾‾  0
//!     |
//!     |_______  24"
//!     |______/‾ 24-1/8"
//!     |      \_ 24-1/4"
//! ```

use super::{Anchor, Figure, Line, Micrometres, Point, Text, TextSize, spread};

/// The side of the drawing on which the figures stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// To the left; places run from top to bottom.
    Left,
    /// To the right; places run from top to bottom.
    Right,
    /// Above; places run from left to right.
    Above,
    /// Below; places run from left to right.
    Below,
}

/// A place with its figure.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Mark {
    /// The place along the edge.
    pub at: Micrometres,
    /// The figure.
    pub words: String,
    /// In heavy type.
    pub bold: bool,
    /// How far into the drawing the leader starts, counted from the edge; zero at the edge itself.
    pub reach: Micrometres,
}

impl Mark {
    /// A place at the edge.
    pub fn new(at: Micrometres, words: impl Into<String>) -> Mark {
        Mark { at, words: words.into(), bold: false, reach: 0 }
    }

    /// In heavy type.
    #[must_use]
    pub fn bold(mut self, bold: bool) -> Mark {
        self.bold = bold;
        self
    }

    /// With a leader that starts so far inside the drawing.
    #[must_use]
    pub fn reach(mut self, reach: Micrometres) -> Mark {
        self.reach = reach;
        self
    }
}

/// Running dimensions along one side of a drawing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Running {
    /// Which side.
    pub side: Side,
    /// The edge of the drawing: its x for the left and right sides, its y above and below.
    pub edge: Micrometres,
    /// Limits between which the figures stay.
    pub limits: (Micrometres, Micrometres),
    /// Height of type.
    pub size: TextSize,
    /// The places, in any order.
    pub marks: Vec<Mark>,
}

/// From the edge: an upright piece of leader, a slanted one, and a short end before the figure.
const STUB: Micrometres = 1300;
const SLANT: Micrometres = 4200;
const END: Micrometres = 800;
const SPACE: Micrometres = 700;
/// Figures above and below the drawing lie level while none of them is pushed further than this; otherwise all stand.
const LEVEL_PUSH: Micrometres = 5000;

impl Running {
    /// Running dimensions on a side, with figures between two limits.
    pub fn new(side: Side, edge: Micrometres, limits: (Micrometres, Micrometres)) -> Running {
        Running { side, edge, limits, size: TextSize::FIGURE, marks: Vec::new() }
    }

    /// In another size of type.
    #[must_use]
    pub fn size(mut self, size: TextSize) -> Running {
        self.size = size;
        self
    }

    /// With those places.
    #[must_use]
    pub fn marks(mut self, marks: Vec<Mark>) -> Running {
        self.marks = marks;
        self
    }

    /// Adds a place.
    pub fn mark(&mut self, mark: Mark) {
        self.marks.push(mark);
    }

    /// How far the figures reach from the edge.
    pub fn depth(&self) -> Micrometres {
        if self.marks.is_empty() {
            return 0;
        }
        let turned = self.turned(&self.sorted());
        let level_row = !self.beside() && !turned;
        let longest = self.marks.iter().map(|mark| self.width(mark)).max().unwrap_or(0);
        STUB + SLANT + END + SPACE + if level_row { self.size.em() } else { longest }
    }

    /// Draws leaders and figures.
    pub fn draw(&self, figure: &mut Figure) {
        let marks = self.sorted();
        let turned = self.turned(&marks);
        let places = self.places(&marks, turned);
        let out = if matches!(self.side, Side::Left | Side::Above) { -1 } else { 1 };
        let level_row = !self.beside() && !turned;
        for (mark, place) in marks.iter().zip(places) {
            let from = self.edge - mark.reach * out;
            let (knee, foot) = (self.edge + STUB * out, self.edge + (STUB + SLANT) * out);
            figure.line(self.place(mark.at, from), self.place(mark.at, knee), Line::Fine);
            figure.line(self.place(mark.at, knee), self.place(place, foot), Line::Fine);
            figure.line(self.place(place, foot), self.place(place, foot + END * out), Line::Fine);
            let start = foot + (END + SPACE + if level_row { self.size.em() / 2 } else { 0 }) * out;
            figure.text(self.label(mark, self.place(place, start), turned));
        }
    }

    fn label(&self, mark: &Mark, place: Point, turned: bool) -> Text {
        let text = Text::new(&*mark.words, place, self.size).bold(mark.bold);
        match self.side {
            Side::Left => text.anchor(Anchor::End).level(),
            Side::Right => text.level(),
            Side::Above if turned => text.upwards(place),
            Side::Below if turned => text.anchor(Anchor::End).upwards(place),
            Side::Above | Side::Below => text.anchor(Anchor::Middle).level(),
        }
    }

    fn sorted(&self) -> Vec<&Mark> {
        let mut marks: Vec<&Mark> = self.marks.iter().collect();
        marks.sort_by_key(|mark| mark.at);
        marks
    }

    /// True where the figures stand beside the drawing and their places run down it.
    fn beside(&self) -> bool {
        matches!(self.side, Side::Left | Side::Right)
    }

    fn turned(&self, marks: &[&Mark]) -> bool {
        if self.beside() {
            return false;
        }
        let places = self.places(marks, false);
        let pushed = marks.iter().zip(&places).map(|(mark, place)| (place - mark.at).abs()).max().unwrap_or(0);
        let last = marks.last().map_or(0, |mark| self.width(mark)) / 2 + places.last().copied().unwrap_or(0);
        pushed > LEVEL_PUSH || last > self.limits.1
    }

    fn places(&self, marks: &[&Mark], turned: bool) -> Vec<Micrometres> {
        let stacked = self.beside() || turned;
        let extent = |mark: &Mark| if stacked { self.size.em() * 11 / 10 } else { self.width(mark) };
        let gap = if stacked { 0 } else { self.size.em() };
        let wanted: Vec<_> = marks.iter().map(|mark| (mark.at, extent(mark))).collect();
        spread(&wanted, gap, self.limits.0, self.limits.1)
    }

    fn width(&self, mark: &Mark) -> Micrometres {
        super::width(&mark.words, self.size, mark.bold)
    }

    fn place(&self, along: Micrometres, across: Micrometres) -> Point {
        if self.beside() { Point::new(across, along) } else { Point::new(along, across) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::draw::figure::{Paper, Rect};

    fn crowded(side: Side) -> Running {
        let mut running = Running::new(side, 120_000, (20_000, 190_000));
        for step in 0..20 {
            running.mark(Mark::new(60_000 + step * 900, format!("{step}-15/16\"")));
        }
        running
    }

    #[test]
    fn crowded_places_are_pushed_apart_on_every_side() {
        for side in [Side::Left, Side::Right, Side::Above, Side::Below] {
            let mut figure = Figure::new("running", Paper::A4);
            let running = crowded(side);
            running.draw(&mut figure);
            assert_eq!(figure.overlaps(), [], "{side:?}");
            let taken = figure.texts.iter().map(Text::bounds).reduce(Rect::united).unwrap();
            let (near, far) = match side {
                Side::Left => (taken.right, 120_000 - taken.left),
                Side::Right => (240_000 - taken.left, taken.right - 120_000),
                Side::Above => (taken.bottom, 120_000 - taken.top),
                Side::Below => (240_000 - taken.top, taken.bottom - 120_000),
            };
            assert!(near < 120_000 && far <= running.depth(), "{side:?}: {far} in {}", running.depth());
        }
    }

    #[test]
    fn few_figures_above_lie_level() {
        let mut running = Running::new(Side::Above, 60_000, (20_000, 190_000));
        running.mark(Mark::new(150_000, "102\""));
        running.mark(Mark::new(40_000, "0"));
        let mut figure = Figure::new("running", Paper::A4);
        running.draw(&mut figure);
        assert!(figure.texts.iter().all(|text| !text.turned));
        assert_eq!(figure.texts[0].words, "0");
    }
}
