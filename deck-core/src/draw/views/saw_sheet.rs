//! One sheet as the sawyer sees it: cuts in sawing order, parts with their bow and port, offcuts, and the sum.

use super::cuts::{self, Names};
use super::panel_tables::taper_words;
use super::saw_drawing::SawDrawing;
use super::waste;
use crate::draw::desk::{Desk, count, list};
use crate::draw::figure::{
    Align, Chain, Column, Figure, Line, MILLIMETRE, Micrometres, Path, Point, Rect, Scale, Table, Text, TextSize,
};
use crate::draw::flow::Flow;
use crate::draw::page::Page;
use crate::draw::part_on_sheet::{self, Toward};
use crate::draw::{alike, deck_shape};
use crate::job::Face;
use crate::length::Length;
use crate::nest::{CutSheet, Placement};
use crate::panels::Panel;
use crate::stock::Sheet;

/// Room left of and above the drawing for its overall dimensions and the words on its edges.
const BESIDE: Micrometres = 13 * MILLIMETRE;
/// The drawing takes at most this much of the sheet's height.
const HIGHEST: Micrometres = 105 * MILLIMETRE;

pub(super) fn pages(desk: &Desk<'_>) -> Vec<Page> {
    let Some(nest) = &desk.plan.sheets else { return Vec::new() };
    let groups = alike::sheets(&nest.sheets, &desk.plan.panels);
    let mut before = 0;
    let mut pages = Vec::new();
    for (index, group) in groups.iter().enumerate() {
        if let Some(&first) = group.first() {
            pages.extend(SawSheet::new(desk, first, group).pages(index + 1, before));
        }
        before += group.len();
    }
    pages
}

struct SawSheet<'a> {
    desk: &'a Desk<'a>,
    sheet: &'a CutSheet,
    alike: &'a [&'a CutSheet],
    stock: Option<&'a Sheet>,
    length: Length,
    width: Length,
}

impl<'a> SawSheet<'a> {
    fn new(desk: &'a Desk<'a>, sheet: &'a CutSheet, alike: &'a [&'a CutSheet]) -> SawSheet<'a> {
        let stock = desk.plan.job.stock.iter().find(|stock| stock.label == bought(desk, sheet).stock);
        // Every sheet that is sawn comes from the job's stock, or from a panel on one that does.
        let (length, width) = match &sheet.inside {
            Some(inside) => (inside.length, inside.width),
            None => stock.map_or((Length::ZERO, Length::ZERO), Sheet::size),
        };
        SawSheet { desk, sheet, alike, stock, length, width }
    }

    fn pages(&self, number: usize, before: usize) -> Vec<Page> {
        let desk = self.desk;
        let title = match self.alike.len() {
            1 => format!("Saw sheet {}", before + 1),
            many => format!("Saw sheets {} to {}: saw {many} of these", before + 1, before + many),
        };
        let mut page = desk.page(format!("saw-{number}"), title);
        page.frame = page.frame.note(self.note());
        let body = Page::body(desk.paper);
        let room = Rect::new(body.left + BESIDE, body.top + BESIDE, body.right - BESIDE / 2, body.top + HIGHEST);
        let scale = Scale::fitting((self.length, self.width), (room.width(), room.height()), desk.ruler.unit());
        page.frame = page.frame.scale(scale, desk.ruler.unit());
        let spare = room.width() - scale.on_paper(self.length);
        let drawing = SawDrawing {
            mapping: part_on_sheet::sheet_mapping(scale, room.top_left().moved(spare / 2, 0)),
            length: self.length,
            width: self.width,
            cuts: &self.sheet.cuts,
        };
        self.draw(&mut page.figure, &drawing);
        let below = Rect { top: drawing.sheet().bottom + 9 * MILLIMETRE, ..body };
        let mut flow = Flow::new(page, below);
        self.write(&mut flow);
        flow.finish()
    }

    fn note(&self) -> String {
        let desk = self.desk;
        let face = match desk.plan.basis.face {
            Face::Up => "good face up",
            Face::Down => "good face down: bow up, port at the right",
        };
        let trim = self.trim();
        let trim = if trim.is_zero() { "no trim".to_owned() } else { format!("trim {}", desk.ruler.text(trim)) };
        let kerf = desk.ruler.text(desk.plan.basis.kerf);
        match &self.sheet.inside {
            Some(inside) => format!("{}; {face}; kerf {kerf}; {trim}", waste::from(desk.plan, inside)),
            None => format!("{}; {face}; kerf {kerf}; {trim}", self.sheet.stock),
        }
    }

    /// The edge trim, of which waste inside a part needs none.
    fn trim(&self) -> Length {
        if self.sheet.inside.is_some() { Length::ZERO } else { self.desk.plan.basis.trim }
    }

    /// True where the sheet's edges are those that the factory made.
    fn is_whole(&self) -> bool {
        self.sheet.inside.is_none() && self.stock.is_some_and(|stock| !stock.offcut)
    }

    fn draw(&self, figure: &mut Figure, drawing: &SawDrawing<'_>) {
        self.draw_edges(figure, drawing.sheet());
        for placement in &self.sheet.placements {
            figure.stroke(self.shape(drawing, placement).unwrap_or_default(), Line::Hidden);
        }
        drawing.draw(figure);
        self.draw_grain(figure, drawing.sheet());
        for (index, placement) in self.sheet.placements.iter().enumerate() {
            self.label_part(figure, drawing, index, placement);
        }
        for (index, offcut) in self.sheet.offcuts.iter().enumerate() {
            let room = drawing.place(offcut.x, offcut.y, offcut.length, offcut.width);
            let size = self.desk.ruler.size(offcut.length, offcut.width);
            let lines = [line(offcut_name(index), TextSize::BODY, true), line(size, TextSize::LEAST, false)];
            drawing.label(figure, room, None, &lines);
        }
    }

    /// Overall dimensions, and which edges came from the factory.
    fn draw_edges(&self, figure: &mut Figure, sheet: Rect) {
        let ruler = self.desk.ruler;
        Chain::level(sheet.top - 7 * MILLIMETRE, sheet.top)
            .start(sheet.left)
            .to(sheet.right, ruler.both(self.length))
            .draw(figure);
        Chain::upright(sheet.left - 7 * MILLIMETRE, sheet.left)
            .start(sheet.top)
            .to(sheet.bottom, ruler.both(self.width))
            .draw(figure);
        if !self.is_whole() {
            return;
        }
        let size = TextSize::LEAST;
        let (off, middle) = (size.em() * 8 / 10, sheet.centre());
        let words = "factory edge";
        figure.text(Text::centred(words, Point::new(middle.x, sheet.top - off), size));
        figure.text(Text::centred(words, Point::new(middle.x, sheet.bottom + off), size));
        for x in [sheet.left - off, sheet.right + off] {
            let text = Text::new(words, Point::default(), size).anchor(crate::draw::figure::Anchor::Middle);
            figure.text(text.upwards(Point::new(x, middle.y)));
        }
    }

    fn draw_grain(&self, figure: &mut Figure, sheet: Rect) {
        let level = sheet.bottom + 5500;
        let words = if self.stock.is_some_and(|stock| stock.grain == crate::stock::SheetGrain::None) {
            "no strength axis"
        } else {
            let middle = sheet.left + 55 * MILLIMETRE;
            figure.double_arrow(
                Point::new(middle - 10 * MILLIMETRE, level),
                Point::new(middle + 10 * MILLIMETRE, level),
                Line::Thin,
            );
            "face grain, strength axis"
        };
        figure.text(Text::new(words, Point::new(sheet.left, level), TextSize::LEAST).level());
    }

    /// The panel's own shape and its openings, as they lie on the drawing.
    fn shape(&self, drawing: &SawDrawing<'_>, placement: &Placement) -> Option<Path> {
        let panel = self.panel(&placement.part)?;
        let mapping = part_on_sheet::mapping(panel, placement, self.desk.plan.basis.face, &drawing.mapping);
        let mut path = deck_shape::path(&mapping, &panel.shape);
        for opening in &panel.openings {
            path.append(deck_shape::path(&mapping, &opening.shape));
        }
        Some(path)
    }

    fn label_part(&self, figure: &mut Figure, drawing: &SawDrawing<'_>, index: usize, placement: &Placement) {
        let room = drawing.place(placement.x, placement.y, placement.length, placement.width);
        let face = self.desk.plan.basis.face;
        let shape = self.shape(drawing, placement);
        if self.panel(&placement.part).is_some() {
            draw_bow(figure, room, part_on_sheet::bow(placement.turned, face));
            draw_port(figure, room, part_on_sheet::port(placement.turned, face));
        }
        let size = self.desk.ruler.size(placement.length, placement.width);
        let lines = [line(self.part_name(index), TextSize::HEADING, true), line(size, TextSize::FIGURE, false)];
        drawing.label(figure, room, shape.as_ref(), &lines);
    }

    fn panel(&self, label: &str) -> Option<&'a Panel> {
        self.desk.plan.panels.iter().find(|panel| panel.label == label)
    }

    /// The labels of the panels at a place, sheet by sheet.
    fn part_name(&self, index: usize) -> String {
        let labels: Vec<&str> = self
            .alike
            .iter()
            .filter_map(|sheet| sheet.placements.get(index))
            .map(|placement| &*placement.part)
            .collect();
        match labels.first() {
            Some(label) if self.panel(label).is_none() => (*label).to_owned(),
            _ => format!("{} {}", if labels.len() == 1 { "panel" } else { "panels" }, labels.join(" · ")),
        }
    }

    fn write(&self, flow: &mut Flow) {
        let desk = self.desk;
        let place = |x: Length, y: Length| self.sheet.placements.iter().position(|part| (part.x, part.y) == (x, y));
        let part = |x: Length, y: Length| place(x, y).map_or_else(String::new, |index| self.part_name(index));
        let offcut = |x: Length, y: Length| {
            let index = self.sheet.offcuts.iter().position(|offcut| (offcut.x, offcut.y) == (x, y));
            index.map_or_else(String::new, offcut_name)
        };
        let lines = cuts::numbered(&self.sheet.cuts, self.length, self.width);
        flow.heading(&match lines.len() {
            0 => "No saw line: the whole sheet is one panel".into(),
            cuts => format!("{} in sawing order", count(cuts, "cut", "cuts")),
        });
        flow.paragraph(
            "Sizes are along × across the sheet. The fence is set to the kept piece; left, right, top and bottom are those of \
             the drawing. Hatched: waste. Grey: offcut to keep. Dashed shapes are cut afterwards, from the panel sheet.",
            TextSize::LEAST,
            false,
        );
        flow.table(&cuts::table(desk, &lines, &Names { part: &part, offcut: &offcut }));
        flow.table(&self.parts_table());
        for (index, placement) in self.sheet.placements.iter().enumerate() {
            if let Some(taper) = self.panel(&placement.part).and_then(|panel| panel.taper) {
                let words = format!("{}, then saw the taper: {}.", self.part_name(index), taper_words(desk, &taper));
                flow.paragraph(&words, TextSize::FIGURE, true);
            }
        }
        flow.table(&cuts::sum_table(desk, &self.sheet.cuts, (self.length, self.width), !self.trim().is_zero()));
    }

    /// What each part must measure, its check diagonals, and which of its edges the factory made.
    fn parts_table(&self) -> Table {
        let ruler = self.desk.ruler;
        let mut table = Table::new(vec![
            Column::words("Part"),
            Column::new("Along the sheet", Align::Right),
            Column::new("Across", Align::Right),
            Column::new("Both diagonals", Align::Right),
            Column::words("Factory edges"),
        ])
        .size(Desk::FIGURES);
        for (index, placement) in self.sheet.placements.iter().enumerate() {
            let diagonal = self.panel(&placement.part).map_or_else(String::new, |panel| ruler.text(panel.diagonal));
            table.row([
                self.part_name(index),
                ruler.both(placement.length),
                ruler.both(placement.width),
                diagonal,
                self.factory_edges(placement),
            ]);
        }
        table
    }

    /// The edges of a part that lie on the edge of a bought sheet, by their names on the boat.
    fn factory_edges(&self, placement: &Placement) -> String {
        if !self.is_whole() {
            return "none".to_owned();
        }
        let touching = [
            (Toward::Left, placement.x.is_zero()),
            (Toward::Right, placement.x + placement.length == self.length),
            (Toward::Up, placement.y.is_zero()),
            (Toward::Down, placement.y + placement.width == self.width),
        ];
        let face = self.desk.plan.basis.face;
        let (bow, port) = (part_on_sheet::bow(placement.turned, face), part_on_sheet::port(placement.turned, face));
        let name = |side: Toward| match side {
            side if side == bow => "fore",
            side if side == port => "port",
            side if side == opposite(bow) => "aft",
            _ => "starboard",
        };
        let names: Vec<&str> =
            touching.into_iter().filter(|(_, touches)| *touches).map(|(side, _)| name(side)).collect();
        if names.is_empty() { "none".to_owned() } else { list(&names) }
    }
}

/// The sheet that is bought, or taken from the rack, for what is sawn of a sheet.
fn bought<'a>(desk: &'a Desk<'_>, sheet: &'a CutSheet) -> &'a CutSheet {
    let mut bought = sheet;
    // Each step leads to an earlier sheet of the nest: it ends.
    while let Some(host) = bought.inside.as_ref().and_then(|inside| desk.plan.sheets.as_ref()?.sheets.get(inside.sheet))
    {
        bought = host;
    }
    bought
}

fn opposite(side: Toward) -> Toward {
    match side {
        Toward::Left => Toward::Right,
        Toward::Right => Toward::Left,
        Toward::Up => Toward::Down,
        Toward::Down => Toward::Up,
    }
}

fn line(words: String, size: TextSize, bold: bool) -> (String, TextSize, bool) {
    (words, size, bold)
}

/// `offcut A`, `offcut B`, …
fn offcut_name(index: usize) -> String {
    let letter = char::from(b'A' + u8::try_from(index % 26).unwrap_or(0));
    if index < 26 { format!("offcut {letter}") } else { format!("offcut {letter}{}", index / 26) }
}

/// An arrow along the part's edge that points to the bow, with its word, where the part is large enough.
fn draw_bow(figure: &mut Figure, room: Rect, bow: Toward) {
    const REACH: Micrometres = 7 * MILLIMETRE;
    let size = TextSize::LEAST;
    let word = crate::draw::figure::width("bow", size, false);
    let (across, along) = (word + MILLIMETRE, REACH + size.em() + MILLIMETRE);
    let level = matches!(bow, Toward::Left | Toward::Right);
    let (width, height) = if level { (REACH + word + 2 * MILLIMETRE, size.line_height()) } else { (across, along) };
    let Some(spot) = figure.search(edge_strip(room, bow, height.max(width))).strict().spot(width, height) else {
        return;
    };
    let middle = spot.centre();
    match bow {
        Toward::Up => {
            figure.arrow(Point::new(middle.x, spot.bottom), Point::new(middle.x, spot.bottom - REACH), Line::Thin);
            figure.text(Text::centred("bow", Point::new(middle.x, spot.top + size.em() / 2), size));
        }
        Toward::Down => {
            figure.arrow(Point::new(middle.x, spot.top), Point::new(middle.x, spot.top + REACH), Line::Thin);
            figure.text(Text::centred("bow", Point::new(middle.x, spot.bottom - size.em() / 2), size));
        }
        Toward::Left => {
            figure.arrow(Point::new(spot.right, middle.y), Point::new(spot.right - REACH, middle.y), Line::Thin);
            figure.text(Text::new("bow", Point::new(spot.left, middle.y), size).level());
        }
        Toward::Right => {
            figure.arrow(Point::new(spot.left, middle.y), Point::new(spot.left + REACH, middle.y), Line::Thin);
            figure.text(Text::new("bow", Point::new(spot.right - word, middle.y), size).level());
        }
    }
}

/// The word for port at its edge of the part.
fn draw_port(figure: &mut Figure, room: Rect, port: Toward) {
    let size = TextSize::LEAST;
    let width = crate::draw::figure::width("port", size, false);
    if let Some(spot) = figure.search(edge_strip(room, port, width)).strict().spot(width, size.height()) {
        figure.text(Text::filling("port", spot, size));
    }
}

/// The strip of a rectangle along one of its sides, a millimetre clear of it.
fn edge_strip(room: Rect, side: Toward, depth: Micrometres) -> Rect {
    let inner = room.inset(MILLIMETRE);
    match side {
        Toward::Left => inner.cut_left(depth.min(inner.width())).1,
        Toward::Right => inner.cut_right(depth.min(inner.width())).1,
        Toward::Up => inner.cut_top(depth.min(inner.height())).1,
        Toward::Down => inner.cut_bottom(depth.min(inner.height())).1,
    }
}
