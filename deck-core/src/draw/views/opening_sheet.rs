//! The opening sheet: where each opening lies from the deck's edges, its corners, the nearest seam and members, drawn.

use crate::draw::bow_up::UNPLACED;
use crate::draw::deck_shape;
use crate::draw::desk::Desk;
use crate::draw::figure::{
    Align, Column, Figure, Line, MILLIMETRE, Mapping, Mark, Micrometres, Path, Rect, Running, Scale, Side, Table,
    TextSize, Tone,
};
use crate::draw::flow::Flow;
use crate::draw::page::Page;
use crate::draw::sheet_frame::Bow;
use crate::geometry::Bounds;
use crate::length::Length;
use crate::plan::PlacedOpening;

const SIZE: TextSize = TextSize::BODY;
/// The drawing of an opening takes at most this much of the sheet's height, and is not begun with less room.
const HIGHEST: Micrometres = 74 * MILLIMETRE;
const LEAST: Micrometres = 60 * MILLIMETRE;

pub(super) fn pages(desk: &Desk<'_>) -> Vec<Page> {
    if desk.plan.openings.is_empty() {
        return Vec::new();
    }
    let mut page = desk.page("openings", "Openings");
    page.frame = page.frame.bow(Bow::Up).note("seen from above; all distances run from the bow edge and the port edge");
    let mut flow = Flow::new(page, Page::body(desk.paper));
    for opening in &desk.plan.openings {
        let title = opening
            .purpose
            .as_ref()
            .map_or_else(|| opening.name.clone(), |purpose| format!("{}, {purpose}", opening.name));
        flow.drawing(LEAST, |page, room| {
            let height = TextSize::HEADING.line_height();
            page.figure.paragraph(
                crate::draw::figure::Point::new(room.left, room.top),
                room.width(),
                &title,
                TextSize::HEADING,
                true,
            );
            let room = Rect { top: room.top + height + MILLIMETRE, ..room };
            OpeningView::new(desk, opening).draw(page, room)
        });
    }
    flow.finish()
}

struct OpeningView<'a> {
    desk: &'a Desk<'a>,
    opening: &'a PlacedOpening,
    /// What is drawn around it.
    window: Bounds,
}

impl<'a> OpeningView<'a> {
    /// The opening with the members before and behind it, and something to both sides.
    fn new(desk: &'a Desk<'a>, opening: &'a PlacedOpening) -> OpeningView<'a> {
        let (plan, hole) = (desk.plan, opening.bounds);
        let before = plan.frame.iter().filter(|member| member.fore <= hole.fore).map(|member| member.fore).max();
        let behind = plan.frame.iter().filter(|member| member.aft >= hole.aft).map(|member| member.aft).min();
        let side = Length::inches(4);
        let window = Bounds {
            fore: before.unwrap_or(hole.fore - side).max(Length::ZERO),
            aft: behind.unwrap_or(hole.aft + side).min(plan.deck.length),
            port: (hole.port - side).max(Length::ZERO),
            starboard: (hole.starboard + side).min(plan.deck.beam),
        };
        OpeningView { desk, opening, window }
    }

    /// Draws it at the left with its table at the right; the answer is where both end.
    fn draw(&self, page: &mut Page, room: Rect) -> Micrometres {
        let (left, right) = room.cut_right(room.width() * 45 / 100);
        let drawn = self.draw_at(
            &mut page.figure,
            Rect { bottom: room.bottom.min(room.top + HIGHEST), ..left }.cut_right(4 * MILLIMETRE).0,
        );
        let table = self.table();
        let bottom = right.top + table.draw(&mut page.figure, right.top_left(), right.width(), 0..table.rows.len());
        drawn.max(bottom) + 2 * MILLIMETRE
    }

    fn draw_at(&self, figure: &mut Figure, room: Rect) -> Micrometres {
        let limits = (room.top, room.bottom);
        let depth = |side, marks| running(side, 0, limits, marks).depth();
        let left = depth(Side::Left, self.stations(&UNPLACED));
        let longest =
            self.distances(&UNPLACED).iter().map(|mark| crate::draw::figure::width(&mark.words, SIZE, mark.bold)).max();
        let above = longest.unwrap_or(0) + 9 * MILLIMETRE;
        let inner = Rect::new(room.left + left, room.top + above, room.right, room.bottom);
        let (window, unit) = (self.window, self.desk.ruler.unit());
        let scale = Scale::fitting((window.breadth(), window.depth()), (inner.width(), inner.height()), unit);
        let corner = (scale.on_paper(window.port), scale.on_paper(window.fore));
        let origin = inner.top_left().moved(-corner.0, -corner.1);
        let mapping = Mapping { scale, origin, ..UNPLACED };
        let area = deck_shape::bounds(&mapping, &window);
        self.draw_surroundings(figure, &mapping);
        let shape = deck_shape::path(&mapping, &self.opening.shape);
        figure.fill(shape.clone(), Tone::White);
        figure.stroke(shape, Line::Outline);
        let hole = deck_shape::bounds(&mapping, &self.opening.bounds);
        if !figure.write_within(hole, None, &self.size(), SIZE, true) {
            figure.write_within(area.inset(MILLIMETRE), None, &self.size(), SIZE, true);
        }
        running(Side::Left, area.left, (area.top - SIZE.em(), room.bottom), self.stations(&mapping)).draw(figure);
        running(Side::Above, area.top, (room.left, room.right), self.distances(&mapping)).draw(figure);
        area.bottom
    }

    /// Flanges and seams within the window.
    fn draw_surroundings(&self, figure: &mut Figure, mapping: &Mapping) {
        let (plan, window) = (self.desk.plan, self.window);
        let bands = plan.frame.iter().filter_map(|member| {
            let (fore, aft) = (member.fore.max(window.fore), member.aft.min(window.aft));
            (fore < aft).then(|| (member.number, deck_shape::band(mapping, fore, aft, window.port, window.starboard)))
        });
        let bands: Vec<(usize, Rect)> = bands.collect();
        for (_, band) in &bands {
            figure.fill(Path::rect(*band), Tone::Light);
        }
        for seam in plan.layouts.first().into_iter().flat_map(|layout| &layout.seams) {
            if seam.fore > window.fore && seam.fore < window.aft {
                let ends = [window.port, window.starboard].map(|side| mapping.point(seam.fore, side));
                figure.line(ends[0], ends[1], Line::Cut);
            }
        }
        for (number, band) in bands {
            let room = band.cut_right(band.width() / 3).1;
            figure.write_within(room, None, &format!("M{number}"), TextSize::LEAST, false);
        }
        figure.stroke(Path::rect(deck_shape::bounds(mapping, &window)), Line::Fine);
    }

    fn is_round(&self) -> bool {
        self.opening.shape.sides().iter().all(|side| side.arc.is_some())
    }

    fn radius(&self) -> Option<Length> {
        self.opening.shape.sides().iter().find_map(|side| side.arc).map(|arc| arc.radius)
    }

    fn size(&self) -> String {
        let bounds = self.opening.bounds;
        if self.is_round() {
            format!("⌀ {}", self.desk.ruler.text(bounds.breadth()))
        } else {
            self.desk.ruler.size(bounds.breadth(), bounds.depth())
        }
    }

    /// Edges, or the middle of a round one; the flanges' edges beside it; a seam.
    fn stations(&self, mapping: &Mapping) -> Vec<Mark> {
        let (hole, window, plan) = (self.opening.bounds, self.window, self.desk.plan);
        let at = |x: Length| mapping.point(x, Length::ZERO).y;
        let mark = |x: Length, name: &str| Mark::new(at(x), format!("{name}{}", self.desk.ruler.text(x)));
        let mut marks: Vec<Mark> = if self.is_round() {
            vec![mark(hole.fore.midpoint(hole.aft), "centre ").bold(true)]
        } else {
            [hole.fore, hole.aft].map(|x| mark(x, "").bold(true)).to_vec()
        };
        for member in plan.frame.iter().filter(|member| member.aft > window.fore && member.fore < window.aft) {
            let sides = if member.aft <= hole.fore { vec![member.aft] } else { vec![member.fore, member.aft] };
            let sides = sides.into_iter().filter(|x| *x >= window.fore && *x < window.aft);
            marks.extend(sides.map(|x| mark(x, &format!("M{} ", member.number))));
        }
        let seams = plan.layouts.first().into_iter().flat_map(|layout| &layout.seams);
        let seams = seams.filter(|seam| seam.fore > window.fore && seam.fore < window.aft);
        marks.extend(seams.map(|seam| mark(seam.fore, &format!("S{} ", seam.number))));
        marks
    }

    fn distances(&self, mapping: &Mapping) -> Vec<Mark> {
        let hole = self.opening.bounds;
        let mark = |y: Length| Mark::new(mapping.point(Length::ZERO, y).x, self.desk.ruler.text(y)).bold(true);
        if self.is_round() {
            vec![mark(hole.port.midpoint(hole.starboard))]
        } else {
            vec![mark(hole.port), mark(hole.starboard)]
        }
    }

    fn table(&self) -> Table {
        let (ruler, hole, plan) = (self.desk.ruler, self.opening.bounds, self.desk.plan);
        let mut table = Table::new(vec![Column::new("Opening", Align::Left), Column::words(self.opening.name.clone())]);
        let mut say = |name: &str, words: String| table.row([name.to_owned(), words]);
        let panels: Vec<&str> = plan
            .panels
            .iter()
            .filter(|panel| panel.openings.iter().any(|opening| opening.name == self.opening.name))
            .map(|panel| panel.label.as_str())
            .collect();
        if !panels.is_empty() {
            say("in panel", panels.join(", "));
        }
        if self.is_round() {
            say("centre aft", ruler.both(hole.fore.midpoint(hole.aft)));
            say("centre from port", ruler.both(hole.port.midpoint(hole.starboard)));
            say("diameter", ruler.both(hole.breadth()));
        } else {
            say("fore edge aft", ruler.both(hole.fore));
            say("aft edge aft", ruler.both(hole.aft));
            say("port edge", ruler.both(hole.port));
            say("starboard edge", ruler.both(hole.starboard));
            say(
                "corners",
                self.radius().map_or_else(|| "square".to_owned(), |radius| format!("radius {}", ruler.both(radius))),
            );
            if let Some(radius) = self.radius() {
                let inner = (hole.breadth() - radius * 2, hole.depth() - radius * 2);
                say("between corner centres", ruler.size(inner.0, inner.1));
            }
        }
        say("nearest member", self.member());
        say("nearest seam", self.seam());
        say("edge", if self.opening.framed { "framed underneath".into() } else { "not framed".to_owned() });
        table
    }

    fn member(&self) -> String {
        let hole = self.opening.bounds;
        let gap = |fore: Length, aft: Length| (fore - hole.aft).max(hole.fore - aft);
        let nearest = self.desk.plan.frame.iter().min_by_key(|member| gap(member.fore, member.aft));
        nearest.map_or_else(
            || "–".to_owned(),
            |member| {
                let gap = gap(member.fore, member.aft);
                if gap < Length::ZERO {
                    format!("M{} lies under it", member.number)
                } else {
                    format!("M{}, {} off its flange", member.number, self.desk.ruler.text(gap))
                }
            },
        )
    }

    fn seam(&self) -> String {
        let hole = self.opening.bounds;
        let seams = self.desk.plan.layouts.first().into_iter().flat_map(|layout| &layout.seams);
        let gap = |fore: Length, aft: Length| (fore - hole.aft).max(hole.fore - aft);
        let nearest = seams.map(|seam| (gap(seam.fore, seam.aft), seam.number)).min();
        nearest
            .map_or_else(|| "none".to_owned(), |(gap, number)| format!("S{number}, {} away", self.desk.ruler.text(gap)))
    }
}

fn running(side: Side, edge: Micrometres, limits: (Micrometres, Micrometres), marks: Vec<Mark>) -> Running {
    Running::new(side, edge, limits).size(SIZE).marks(marks)
}
