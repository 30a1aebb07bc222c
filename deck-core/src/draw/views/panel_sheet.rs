//! One shape of panel, measured from its own edges: net size, corners, openings, diagonals, strength axis.

use super::panel_tables::{edge_name, round};
use crate::draw::alike::{self, at_origin};
use crate::draw::bow_up::{self, UNPLACED};
use crate::draw::deck_shape;
use crate::draw::desk::{Desk, list};
use crate::draw::figure::{
    Anchor, Chain, Figure, Line, MILLIMETRE, Mapping, Mark, Micrometres, Path, Point, Rect, Running, Side, Text,
    TextSize, Tone,
};
use crate::draw::flow::Flow;
use crate::draw::page::Page;
use crate::draw::sheet_frame::Bow;
use crate::geometry::{self, Bounds};
use crate::length::Length;
use crate::panels::{Axis, Edge, Panel, PanelOpening};

/// The drawing with its figures takes at most this much of the sheet's height.
const HIGHEST: Micrometres = 125 * MILLIMETRE;
/// Room at the right and above for the overall dimensions.
const OVERALL: Micrometres = 10 * MILLIMETRE;

pub(super) fn pages(desk: &Desk<'_>) -> Vec<Page> {
    let groups = alike::panels(&desk.plan.panels);
    let sheets = groups.iter().enumerate().filter_map(|(index, group)| {
        let first = *group.first()?;
        Some(PanelSheet::new(desk, first, group).pages(index + 1))
    });
    sheets.flatten().collect()
}

pub(super) struct PanelSheet<'a> {
    pub desk: &'a Desk<'a>,
    pub panel: &'a Panel,
    pub alike: &'a [&'a Panel],
    /// The panel with its fore edge at station 0 and its port edge at 0.
    pub shape: geometry::Path<Edge>,
    pub openings: Vec<(&'a PanelOpening, geometry::Path<()>, Bounds)>,
}

impl<'a> PanelSheet<'a> {
    fn new(desk: &'a Desk<'a>, panel: &'a Panel, alike: &'a [&'a Panel]) -> PanelSheet<'a> {
        let openings = panel.openings.iter().map(|opening| {
            let shape = at_origin(panel, &opening.shape);
            let bounds = shape.bounds();
            (opening, shape, bounds)
        });
        PanelSheet { desk, panel, alike, shape: at_origin(panel, &panel.shape), openings: openings.collect() }
    }

    fn pages(&self, number: usize) -> Vec<Page> {
        let desk = self.desk;
        let labels: Vec<&str> = self.alike.iter().map(|panel| panel.label.as_str()).collect();
        let title = if labels.len() == 1 { "Panel" } else { "Panels" };
        let mut page = desk.page(format!("panel-{number}"), format!("{title} {}", list(&labels)));
        let many = if labels.len() == 1 { String::new() } else { format!("; {} alike", labels.len()) };
        page.frame = page
            .frame
            .bow(Bow::Up)
            .note(format!("seen from above, face up; net, from the fore edge and the port edge{many}"));
        let body = Page::body(desk.paper);
        let bottom = self.draw(&mut page, Rect { bottom: body.top + HIGHEST, ..body });
        let mut flow = Flow::new(page, Rect { top: bottom, ..body });
        flow.table(&self.facts());
        if let Some(corners) = self.corners() {
            flow.heading("Corners");
            flow.table(&corners);
        }
        if let Some(openings) = self.openings_table() {
            flow.heading("Openings");
            flow.table(&openings);
        }
        flow.finish()
    }

    /// Draws the panel with its figures; the answer is where they end.
    fn draw(&self, page: &mut Page, room: Rect) -> Micrometres {
        let limits = (room.top, room.bottom);
        let left = Running::new(Side::Left, 0, limits).marks(self.stations(&UNPLACED)).depth();
        // Distances below stand upright in the worst case.
        let longest = self.distances(&UNPLACED).iter().map(|mark| figure_width(&mark.words)).max().unwrap_or(0);
        let below = longest + 9 * MILLIMETRE;
        let inner = Rect::new(room.left + left, room.top + OVERALL, room.right - OVERALL, room.bottom - below);
        let size = (self.panel.length, self.panel.width);
        let (mapping, panel) = bow_up::fitted(inner, size, self.desk.ruler.unit());
        page.frame = page.frame.clone().scale(mapping.scale, self.desk.ruler.unit());
        let figure = &mut page.figure;
        self.draw_shape(figure, &mapping, panel);
        let ruler = self.desk.ruler;
        Chain::level(panel.top - 6 * MILLIMETRE, panel.top)
            .start(panel.left)
            .to(panel.right, ruler.both(size.0))
            .draw(figure);
        Chain::upright(panel.right + 6 * MILLIMETRE, panel.right)
            .start(panel.top)
            .to(panel.bottom, ruler.both(size.1))
            .draw(figure);
        Running::new(Side::Left, panel.left, limits).marks(self.stations(&mapping)).draw(figure);
        let distances =
            Running::new(Side::Below, panel.bottom, (room.left, room.right)).marks(self.distances(&mapping));
        distances.draw(figure);
        panel.bottom + distances.depth() + 5 * MILLIMETRE
    }

    fn draw_shape(&self, figure: &mut Figure, mapping: &Mapping, panel: Rect) {
        figure.line(panel.top_left(), panel.bottom_right(), Line::Fine);
        figure.line(Point::new(panel.right, panel.top), Point::new(panel.left, panel.bottom), Line::Fine);
        let mut board = deck_shape::path(mapping, &self.shape);
        for (_, shape, _) in &self.openings {
            let path = deck_shape::path(mapping, shape);
            figure.fill(path.clone(), Tone::White);
            figure.stroke(path.clone(), Line::Thin);
            board.append(path);
        }
        self.draw_centres(figure, mapping);
        figure.stroke(deck_shape::path(mapping, &self.shape), Line::Outline);
        if self.is_shaped() {
            self.draw_corner_numbers(figure, mapping, &board);
        }
        for (opening, _, bounds) in &self.openings {
            figure.write_within(deck_shape::bounds(mapping, bounds), None, &opening.name, TextSize::LEAST, false);
        }
        self.draw_edge_names(figure, panel, &board);
        self.draw_axis(figure, panel, &board);
        let inner = panel.inset(MILLIMETRE);
        // The first size that finds room; the labels stand in the title and in the table as well.
        let _ = [TextSize::TITLE, TextSize::HEADING, TextSize::LEAST]
            .into_iter()
            .any(|size| figure.write_within(inner, Some(&board), &self.label(), size, true));
        let diagonal = self.desk.ruler.both(self.panel.diagonal);
        let tries = [format!("both diagonals {diagonal}"), format!("diagonals {diagonal}")];
        let _ = [inner.cut_bottom(inner.height() / 2).1, inner].into_iter().any(|area| {
            tries.iter().any(|words| figure.write_within(area, Some(&board), words, TextSize::FIGURE, false))
        });
    }

    fn label(&self) -> String {
        let labels: Vec<&str> = self.alike.iter().map(|panel| panel.label.as_str()).collect();
        labels.join(" · ")
    }

    /// True where the panel is more than its rectangle.
    pub(super) fn is_shaped(&self) -> bool {
        self.panel.taper.is_some()
            || self.shape.sides().len() > 4
            || self.shape.sides().iter().any(|side| side.arc.is_some())
    }

    /// Small crosses at the centres of arcs.
    fn draw_centres(&self, figure: &mut Figure, mapping: &Mapping) {
        const ARM: Micrometres = MILLIMETRE;
        let openings = self.openings.iter().flat_map(|(_, shape, _)| shape.sides()).filter_map(|side| side.arc);
        for arc in self.shape.sides().iter().filter_map(|side| side.arc).chain(openings) {
            let at = mapping.point(arc.centre.x, arc.centre.y);
            figure.line(at.moved(-ARM, 0), at.moved(ARM, 0), Line::Fine);
            figure.line(at.moved(0, -ARM), at.moved(0, ARM), Line::Fine);
        }
    }

    /// Numbers of the corners, just inside the shape.
    fn draw_corner_numbers(&self, figure: &mut Figure, mapping: &Mapping, board: &Path) {
        let size = TextSize::LEAST;
        for (index, side) in self.shape.sides().iter().enumerate() {
            let at = mapping.point(side.from.x, side.from.y);
            let around = Rect::spanning(at, at).inset(-2 * size.em());
            let number = (index + 1).to_string();
            // Where a corner is crowded its number may stand a little further off.
            if !figure.write_within(around, Some(board), &number, size, true) {
                figure.write_within(around.inset(-2 * size.em()), Some(board), &number, size, true);
            }
        }
    }

    /// The strength axis as a double arrow with its words, shorter ones on a small panel.
    fn draw_axis(&self, figure: &mut Figure, panel: Rect, board: &Path) {
        let room = panel.inset(2 * MILLIMETRE);
        let level = self.panel.strength_axis == Axis::Athwart;
        let half = if level { room.cut_top(room.height() / 2).1 } else { room.cut_left(room.width() / 2).1 };
        let tries = [half, room]
            .into_iter()
            .flat_map(|area| ["strength axis, face grain", "strength axis", "axis"].map(|words| (area, words)));
        for (area, words) in tries {
            let length = figure_width(words);
            let breadth = 2 * TextSize::LEAST.line_height();
            let (width, height) = if level { (length, breadth) } else { (breadth, length) };
            let spot = figure.search(area).within(board).spot(width, height);
            if let Some(spot) = spot {
                return draw_axis_at(figure, spot, words, level);
            }
        }
    }

    /// What lies at the fore and the aft edge, just inside them.
    fn draw_edge_names(&self, figure: &mut Figure, panel: Rect, board: &Path) {
        let inner = panel.inset(MILLIMETRE / 2);
        let strip = 2 * TextSize::LEAST.em();
        for (room, name) in [(inner.cut_top(strip).1, self.fore_edge()), (inner.cut_bottom(strip).1, self.aft_edge())] {
            figure.write_within(room, Some(board), &name, TextSize::LEAST, false);
        }
    }

    fn fore_edge(&self) -> String {
        format!("fore edge: {}", self.kinds(Length::is_zero))
    }

    fn aft_edge(&self) -> String {
        format!("aft edge: {}", self.kinds(|side| side == self.panel.width))
    }

    /// What the straight edges at a station are, over all panels of the shape.
    fn kinds(&self, at: impl Fn(Length) -> bool) -> String {
        let mut names: Vec<String> = Vec::new();
        for panel in self.alike {
            for (side, to) in panel.shape.walk() {
                let station = side.from.x - panel.bounds.fore;
                let ends = [side.from.x, to.x].map(|x| x - panel.bounds.fore);
                // A slanted edge at a seam reaches the rectangle's edge with one end.
                let slanted = panel.taper.is_some() && matches!(side.edge, Edge::Seam { .. });
                let reaches = if slanted { ends.into_iter().any(&at) } else { ends[0] == ends[1] && at(station) };
                if side.arc.is_none() && reaches {
                    let name = edge_name(side.edge);
                    if !names.contains(&name) {
                        names.push(name);
                    }
                }
            }
        }
        list(&names)
    }

    /// At the left: distances from the fore edge.
    fn stations(&self, mapping: &Mapping) -> Vec<Mark> {
        let at = |x| mapping.point(x, Length::ZERO).y;
        let corners = self.shape.sides().iter().map(|side| side.from.x);
        let openings =
            self.openings.iter().flat_map(|(_, shape, bounds)| centre_or_edges(shape, (bounds.fore, bounds.aft), true));
        self.marks(corners.chain(openings), at)
    }

    /// Below: distances from the port edge.
    fn distances(&self, mapping: &Mapping) -> Vec<Mark> {
        let at = |y| mapping.point(Length::ZERO, y).x;
        let corners = self.shape.sides().iter().map(|side| side.from.y);
        let openings = self
            .openings
            .iter()
            .flat_map(|(_, shape, bounds)| centre_or_edges(shape, (bounds.port, bounds.starboard), false));
        self.marks(corners.chain(openings), at)
    }

    fn marks(&self, lengths: impl Iterator<Item = Length>, at: impl Fn(Length) -> Micrometres) -> Vec<Mark> {
        let mut lengths: Vec<Length> = lengths.collect();
        lengths.sort_unstable();
        lengths.dedup();
        let mark = |length: Length| Mark::new(at(length), self.desk.ruler.text(length)).bold(length.is_zero());
        lengths.into_iter().map(mark).collect()
    }
}

/// Words over a double arrow that fills a spot, or to the left of an upright one.
fn draw_axis_at(figure: &mut Figure, spot: Rect, words: &str, level: bool) {
    let size = TextSize::LEAST;
    if level {
        let arrow = spot.bottom - size.em() / 2;
        figure.double_arrow(Point::new(spot.left, arrow), Point::new(spot.right, arrow), Line::Thin);
        let line = Rect { bottom: spot.top + size.height(), ..spot };
        figure.text(Text::filling(words, line, size).masked());
    } else {
        let arrow = spot.right - size.em() / 2;
        figure.double_arrow(Point::new(arrow, spot.top), Point::new(arrow, spot.bottom), Line::Thin);
        let text = Text::new(words, Point::default(), size).anchor(Anchor::Middle).masked();
        figure.text(text.upwards(Point::new(spot.left + size.em() / 2, spot.centre().y)));
    }
}

/// Where an opening is measured: at the centre of a round one, at both edges otherwise.
fn centre_or_edges(shape: &geometry::Path<()>, edges: (Length, Length), stations: bool) -> Vec<Length> {
    match round(shape) {
        Some(arc) => vec![if stations { arc.centre.x } else { arc.centre.y }],
        None => vec![edges.0, edges.1],
    }
}

fn figure_width(words: &str) -> Micrometres {
    crate::draw::figure::width(words, TextSize::FIGURE, true)
}
