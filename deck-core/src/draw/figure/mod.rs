//! What is on a sheet of paper: lines, fills and words, in whole micrometres.
//!
//! A [`Figure`] does not know what it shows. Positions on paper are whole [`Micrometres`], counted to the right and down
//! from the upper left corner, so that the bytes that a writer makes of it are the same on every machine. A model in
//! [`Length`](crate::Length) comes to paper through a [`Mapping`], once, with one rounding.
//!
//! Words lie above all lines. A masked text stands on a white patch, so that it can be read on a fine line or a hatch.

mod arrow;
mod dimension;
mod hatch;
mod mapping;
mod overlap;
mod paper;
mod path;
mod place;
mod running;
mod scale;
mod spread;
mod style;
mod table;
mod text;
mod text_width;

pub use dimension::Chain;
pub use hatch::hatch;
pub use mapping::{Direction, Mapping};
pub use overlap::Clash;
pub use paper::{MILLIMETRE, Micrometres, Paper, Point, Rect};
#[cfg(feature = "packet")]
pub(in crate::draw) use path::arc_cubics;
pub use path::{Path, Step, Subpath};
pub use place::{Search, bubble_radius};
pub use running::{Mark, Running, Side};
pub use scale::Scale;
pub use spread::spread;
pub use style::{Line, Tone};
pub use table::{Align, Column, Row, Table};
pub use text::{Anchor, Text, TextSize};
pub use text_width::{fit, width, wrap};

/// A drawing on one sheet of paper.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Figure {
    /// What the sheet shows, in a few words; the writers hand it to readers that cannot see.
    pub title: String,
    /// Width of the sheet.
    pub width: Micrometres,
    /// Height of the sheet.
    pub height: Micrometres,
    /// Lines and fills, the lowest first.
    pub shapes: Vec<Shape>,
    /// Words, above all shapes.
    pub texts: Vec<Text>,
}

/// A line or a filled area.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Shape {
    /// A line along a path.
    Stroke(Path, Line),
    /// The inside of a path, by the even-odd rule.
    Fill(Path, Tone),
}

impl Figure {
    /// An empty sheet.
    pub fn new(title: impl Into<String>, paper: Paper) -> Figure {
        let (width, height) = paper.size();
        Figure { title: title.into(), width, height, shapes: Vec::new(), texts: Vec::new() }
    }

    /// Draws a line along a path.
    pub fn stroke(&mut self, path: Path, line: Line) {
        self.shapes.push(Shape::Stroke(path, line));
    }

    /// Fills the inside of a path.
    pub fn fill(&mut self, path: Path, tone: Tone) {
        self.shapes.push(Shape::Fill(path, tone));
    }

    /// Draws a straight line.
    pub fn line(&mut self, from: Point, to: Point, line: Line) {
        self.stroke(Path::line(from, to), line);
    }

    /// Adds words.
    pub fn text(&mut self, text: Text) {
        self.texts.push(text);
    }

    /// Sets words as a paragraph whose first line's top is at `top_left`; the answer is the height that it took.
    pub fn paragraph(
        &mut self,
        top_left: Point,
        room: Micrometres,
        words: &str,
        size: TextSize,
        bold: bool,
    ) -> Micrometres {
        let lines = wrap(words, size, bold, room);
        let mut top = top_left.y;
        for line in lines {
            let middle = Point::new(top_left.x, top + size.line_height() / 2);
            self.text(Text::new(line, middle, size).bold(bold).level());
            top += size.line_height();
        }
        top - top_left.y
    }

    /// Where words lie on words, or a line runs through words, or words leave the sheet. Empty on a good sheet.
    pub fn overlaps(&self) -> Vec<Clash> {
        overlap::clashes(self)
    }
}
