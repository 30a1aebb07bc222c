//! Arrows: for the bow, the strength axis, the way a board goes in.

use super::{Figure, Line, Micrometres, Path, Point, Tone};

/// Length of an arrow's head.
const HEAD: Micrometres = 3500;
/// Half of its width.
const HALF_WIDTH: Micrometres = 1200;

impl Figure {
    /// Draws an upright or level arrow with a black head at `to`. For a slanted way the head stands along the longer side.
    pub fn arrow(&mut self, from: Point, to: Point, line: Line) {
        self.line(from, to, line);
        self.arrow_head(from, to);
    }

    /// The same with a head at both ends.
    pub fn double_arrow(&mut self, from: Point, to: Point, line: Line) {
        self.arrow(from, to, line);
        self.arrow_head(to, from);
    }

    fn arrow_head(&mut self, from: Point, tip: Point) {
        let (dx, dy) = (tip.x - from.x, tip.y - from.y);
        let corners = if dx.abs() >= dy.abs() {
            let back = tip.x - HEAD * dx.signum();
            [tip, Point::new(back, tip.y - HALF_WIDTH), Point::new(back, tip.y + HALF_WIDTH)]
        } else {
            let back = tip.y - HEAD * dy.signum();
            [tip, Point::new(tip.x - HALF_WIDTH, back), Point::new(tip.x + HALF_WIDTH, back)]
        };
        self.fill(Path::polygon(&corners), Tone::Black);
    }
}
