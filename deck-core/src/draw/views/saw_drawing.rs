//! A sheet with its cuts: the saw lines numbered in sawing order, parts, offcuts and waste told apart.

use crate::draw::deck_shape;
use crate::draw::figure::{
    Anchor, Figure, Line, MILLIMETRE, Mapping, Micrometres, Path, Point, Rect, Text, TextSize, Tone, bubble_radius,
    hatch,
};
use crate::draw::views::cuts::{NumberedCut, numbered};
use crate::geometry;
use crate::length::Length;
use crate::nest::{Piece, Tree};
use crate::stock::SawLine;

/// Pitch of the hatch over waste.
const HATCH: Micrometres = 1800;

/// A sheet to be drawn.
pub(super) struct SawDrawing<'a> {
    /// How the sheet lies on paper: its length to the right, its width down.
    pub mapping: Mapping,
    /// Side along the grain.
    pub length: Length,
    /// Side across the grain.
    pub width: Length,
    /// The saw's work.
    pub cuts: &'a Tree,
}

impl SawDrawing<'_> {
    /// Draws waste and offcuts, the sheet's edge, and the saw lines with their numbers.
    pub(super) fn draw(&self, figure: &mut Figure) {
        for piece in self.cuts.walk(self.length, self.width) {
            match piece.tree {
                Tree::Waste { .. } => {
                    figure.stroke(hatch(&Path::rect(self.rect(&piece)), HATCH, false), Line::Fine);
                }
                Tree::Offcut { .. } => figure.fill(Path::rect(self.rect(&piece)), Tone::Pale),
                _ => {}
            }
        }
        let cuts = numbered(self.cuts, self.length, self.width);
        for cut in &cuts {
            let (from, to) = self.line(cut);
            figure.line(from, to, Line::Cut);
        }
        figure.stroke(Path::rect(self.sheet()), Line::Outline);
        for cut in &cuts {
            self.draw_number(figure, cut);
        }
    }

    /// The sheet's edge on paper.
    pub(super) fn sheet(&self) -> Rect {
        self.place(Length::ZERO, Length::ZERO, self.length, self.width)
    }

    /// Where a piece lies on paper.
    pub(super) fn rect(&self, piece: &Piece<'_>) -> Rect {
        self.place(piece.x, piece.y, piece.length, piece.width)
    }

    /// Where a rectangle of the sheet lies on paper.
    pub(super) fn place(&self, x: Length, y: Length, length: Length, width: Length) -> Rect {
        deck_shape::rect(&self.mapping, geometry::Point::new(x, y), geometry::Point::new(x + length, y + width))
    }

    /// The middle of the kerf, from end to end of the piece.
    fn line(&self, numbered: &NumberedCut<'_>) -> (Point, Point) {
        let NumberedCut { cut, piece, .. } = numbered;
        let middle = cut.at + cut.kerf / 2;
        let (from, to) = match cut.cut {
            SawLine::Length => ((piece.x, piece.y + middle), (piece.x + piece.length, piece.y + middle)),
            SawLine::Width => ((piece.x + middle, piece.y), (piece.x + middle, piece.y + piece.width)),
        };
        (self.mapping.point(from.0, from.1), self.mapping.point(to.0, to.1))
    }

    /// The number in a bubble on its line: near the start where there is room, otherwise further along.
    fn draw_number(&self, figure: &mut Figure, cut: &NumberedCut<'_>) {
        const SIZE: TextSize = TextSize::BODY;
        let words = cut.number.to_string();
        let radius = bubble_radius(&words, SIZE) + MILLIMETRE / 4;
        let (from, to) = self.line(cut);
        let along = |percent: i64| {
            Point::new(from.x + (to.x - from.x) * percent / 100, from.y + (to.y - from.y) * percent / 100)
        };
        let free = |middle: Point| {
            figure.has_no_words(Rect::new(middle.x - radius, middle.y - radius, middle.x + radius, middle.y + radius))
        };
        // A search in even steps from the start; where all is taken the middle has to do, and the overlap is told by
        // `Figure::overlaps`.
        let middle =
            [10, 20, 30, 40, 60, 70, 80, 90, 50].map(along).into_iter().find(|&at| free(at)).unwrap_or(along(50));
        figure.bubble(middle, &words, SIZE);
    }

    /// Words in the middle of a part or offcut, within its shape: as many of the lines as there is room for, upright
    /// where it is narrow, and beside it with a leader where there is none.
    pub(super) fn label(
        &self,
        figure: &mut Figure,
        room: Rect,
        within: Option<&Path>,
        lines: &[(String, TextSize, bool)],
    ) {
        let inner = room.inset(MILLIMETRE);
        for count in (1..=lines.len()).rev() {
            let shown = lines.get(..count).unwrap_or_default();
            let width = shown.iter().map(|line| crate::draw::figure::width(&line.0, line.1, line.2)).max().unwrap_or(0);
            let height: Micrometres = shown.iter().map(|line| line.1.line_height()).sum();
            let search = figure.search(inner).strict();
            let search = within.map_or(search, |path| search.within(path));
            let (level, upright) = (search.spot(width, height), search.spot(height, width));
            if let Some(spot) = level {
                return write_level(figure, spot, shown);
            }
            if let Some(spot) = upright {
                return write_upright(figure, spot, shown);
            }
        }
        if let Some((words, _, bold)) = lines.first() {
            self.call_out(figure, room, words, *bold);
        }
    }

    /// Words near a part that has no room for them, and a leader from its middle.
    fn call_out(&self, figure: &mut Figure, room: Rect, words: &str, bold: bool) {
        const SIZE: TextSize = TextSize::LEAST;
        let width = crate::draw::figure::width(words, SIZE, bold);
        let sheet = self.sheet().inset(MILLIMETRE);
        for reach in 1..12 {
            let around = room.inset(-reach * 4 * MILLIMETRE);
            let area = Rect::new(
                around.left.max(sheet.left),
                around.top.max(sheet.top),
                around.right.min(sheet.right),
                around.bottom.min(sheet.bottom),
            );
            let spot = figure.search(area).spot(width + MILLIMETRE, SIZE.height() + MILLIMETRE);
            if let Some(spot) = spot.filter(|spot| !spot.overlaps(room)) {
                let spot = spot.inset(MILLIMETRE / 2);
                let end = Point::new(spot.centre().x, if spot.top > room.bottom { spot.top } else { spot.bottom });
                figure.line(room.centre(), end, Line::Fine);
                figure.text(Text::filling(words, spot, SIZE).bold(bold).masked());
                return;
            }
        }
    }
}

fn write_level(figure: &mut Figure, spot: Rect, lines: &[(String, TextSize, bool)]) {
    let mut top = spot.top;
    for (words, size, bold) in lines {
        let middle = Point::new(spot.centre().x, top + size.line_height() / 2);
        figure.text(Text::centred(&**words, middle, *size).bold(*bold));
        top += size.line_height();
    }
}

fn write_upright(figure: &mut Figure, spot: Rect, lines: &[(String, TextSize, bool)]) {
    let mut left = spot.left;
    for (words, size, bold) in lines {
        let middle = Point::new(left + size.line_height() / 2, spot.centre().y);
        let text = Text::new(&**words, middle, *size).anchor(Anchor::Middle).bold(*bold);
        figure.text(text.upwards(middle));
        left += size.line_height();
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::draw::figure::{Paper, Scale};
    use crate::draw::part_on_sheet::sheet_mapping;

    #[test]
    fn a_strip_too_narrow_for_its_words_is_named_beside_it() {
        let cuts: Tree = serde_json::from_str(
            r#"{"cut": "length", "at": "3/4 in", "kerf": "1/8 in", "children": [{"part": "strip"}, {"offcut": true}]}"#,
        )
        .unwrap();
        let mapping = sheet_mapping(Scale::one_to(16), Point::new(30_000, 50_000));
        let drawing = SawDrawing { mapping, length: Length::inches(96), width: Length::inches(48), cuts: &cuts };
        let mut figure = Figure::new("sheet", Paper::Letter);
        drawing.draw(&mut figure);
        let strip = drawing.place(Length::ZERO, Length::ZERO, Length::inches(96), "3/4 in".parse().unwrap());
        let lines = [("strip".to_string(), TextSize::HEADING, true), ("96 × 3/4".to_string(), TextSize::FIGURE, false)];
        drawing.label(&mut figure, strip, None, &lines);
        let name = figure.texts.iter().find(|text| text.words == "strip").unwrap();
        assert!(!name.bounds().overlaps(strip) && drawing.sheet().holds(name.bounds()));
        assert_eq!(figure.overlaps(), []);
    }
}
