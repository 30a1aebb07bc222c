//! The deck from above as the ground for a sheet on one thing: members, outline, openings, and running figures on three
//! sides. What the sheet is about is drawn in between.

use super::bow_up::{self, UNPLACED};
use super::deck_shape;
use super::desk::Desk;
use super::figure::{
    Figure, Line, MILLIMETRE, Mapping, Mark, Micrometres, Path, Rect, Running, Side, TextSize, Tone, width,
};
use super::page::Page;
use crate::geometry::Limit;
use crate::length::Length;

const SIZE: TextSize = TextSize::BODY;

/// A length from the datum, and what is written at it.
#[derive(Debug, Clone)]
pub(super) struct At {
    pub length: Length,
    pub words: String,
    pub bold: bool,
}

impl At {
    pub(super) fn new(length: Length, words: impl Into<String>) -> At {
        At { length, words: words.into(), bold: false }
    }

    pub(super) fn bold(mut self) -> At {
        self.bold = true;
        self
    }
}

/// Running figures around the deck.
#[derive(Debug, Clone, Default)]
pub(super) struct Around {
    /// Stations, at the left.
    pub left: Vec<At>,
    /// Stations, at the right.
    pub right: Vec<At>,
    /// Distances from the port edge, above.
    pub above: Vec<At>,
}

/// Draws the deck in that room; `under` is drawn on the members and below the openings. The answer is where it ends.
pub(super) fn draw(
    desk: &Desk<'_>,
    page: &mut Page,
    room: Rect,
    around: &Around,
    under: impl FnOnce(&mut Figure, &Mapping),
) -> Micrometres {
    let plan = desk.plan;
    let longest = around.above.iter().map(|mark| width(&mark.words, SIZE, mark.bold)).max().unwrap_or(0);
    let (mapping, deck) = fitted(desk, room, around, longest + 9 * MILLIMETRE);
    // Figures above stand upright where they are crowded; where they lie level, the deck has their room.
    let above = running(Side::Above, deck.top, (room.left, room.right), &around.above, &mapping).depth();
    let (mapping, deck) = fitted(desk, room, around, above + 3 * MILLIMETRE);
    page.frame = page.frame.clone().scale(mapping.scale, desk.ruler.unit());
    let figure = &mut page.figure;
    for member in &plan.frame {
        let breadths = plan.deck.outline.breadths(member.centre(), Limit::Aft);
        let port = member.port_end.or(breadths.first().map(|breadth| breadth.0)).unwrap_or(Length::ZERO);
        let starboard = member.starboard_end.or(breadths.last().map(|breadth| breadth.1)).unwrap_or(plan.deck.beam);
        figure.fill(Path::rect(deck_shape::band(&mapping, member.fore, member.aft, port, starboard)), Tone::Pale);
    }
    under(figure, &mapping);
    for opening in &plan.openings {
        let shape = deck_shape::path(&mapping, &opening.shape);
        figure.fill(shape.clone(), Tone::White);
        figure.stroke(shape, Line::Thin);
    }
    figure.stroke(deck_shape::path(&mapping, &plan.deck.outline), Line::Outline);
    let limits = (deck.top - SIZE.em(), room.bottom);
    running(Side::Left, deck.left, limits, &around.left, &mapping).draw(figure);
    running(Side::Right, deck.right, limits, &around.right, &mapping).draw(figure);
    running(Side::Above, deck.top, (room.left, room.right), &around.above, &mapping).draw(figure);
    deck.bottom + 2 * MILLIMETRE
}

/// The deck below that much room for the figures above, and between those at its sides.
fn fitted(desk: &Desk<'_>, room: Rect, around: &Around, above: Micrometres) -> (Mapping, Rect) {
    let plan = desk.plan;
    let depth = |side, marks: &[At]| running(side, 0, (room.top, room.bottom), marks, &UNPLACED).depth();
    let inner = Rect::new(
        room.left + depth(Side::Left, &around.left),
        room.top + above,
        room.right - depth(Side::Right, &around.right),
        room.bottom - 3 * MILLIMETRE,
    );
    bow_up::fitted(inner, (plan.deck.beam, plan.deck.length), desk.ruler.unit())
}

fn running(side: Side, edge: Micrometres, limits: (Micrometres, Micrometres), marks: &[At], on: &Mapping) -> Running {
    let place = |length: Length| match side {
        Side::Left | Side::Right => on.point(length, Length::ZERO).y,
        Side::Above | Side::Below => on.point(Length::ZERO, length).x,
    };
    let marks = marks.iter().map(|mark| Mark::new(place(mark.length), mark.words.clone()).bold(mark.bold));
    Running::new(side, edge, limits).size(SIZE).marks(marks.collect())
}
