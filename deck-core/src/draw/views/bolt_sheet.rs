//! What is bolted down again: where each hole lies on the deck and on its panel, which bolt it takes, what to get.

use crate::draw::bow_up;
use crate::draw::deck_shape;
use crate::draw::desk::{Desk, count, list};
use crate::draw::figure::{
    Align, Column, Figure, Line, MILLIMETRE, Mapping, Micrometres, Path, Point, Rect, Table, Text, TextSize, Tone,
    width,
};
use crate::draw::flow::Flow;
use crate::draw::page::Page;
use crate::draw::sheet_frame::Bow;
use crate::fittings::{FittedHole, HoleRule};
use crate::geometry::Limit;
use crate::length::Length;
use crate::plan::PlanFittings;

/// The drawing takes at most this much of the sheet's height.
const HIGHEST: Micrometres = 120 * MILLIMETRE;
/// Half the size of the cross that stands for a hole.
const CROSS: Micrometres = 900;

pub(super) fn pages(desk: &Desk<'_>) -> Vec<Page> {
    let Some(fittings) = desk.plan.fittings.as_ref().filter(|fittings| !fittings.holes.is_empty()) else {
        return Vec::new();
    };
    let mut page = desk.page("bolts", "Bolts of rails, seats and consoles");
    page.frame = page.frame.bow(Bow::Up).note(format!(
        "{}; from the bow edge and the port edge of the new deck",
        count(fittings.holes.len(), "hole", "holes")
    ));
    let body = Page::body(desk.paper);
    let bottom = draw(desk, fittings, &mut page, Rect { bottom: body.top + HIGHEST, ..body });
    let mut flow = Flow::new(page, Rect { top: bottom, ..body });
    flow.paragraph(&datum(desk, fittings), TextSize::FIGURE, false);
    let names = numbered(fittings);
    let names: Vec<String> = names.iter().enumerate().map(|(index, name)| format!("F{}: {name}", index + 1)).collect();
    flow.paragraph(&format!("{}.", names.join("; ")), TextSize::FIGURE, true);
    flow.headed("Get", &to_get(desk, fittings));
    flow.headed("Holes", &holes_table(desk, fittings));
    flow.paragraph(
        "Under \"its fore\" and \"its port\": from the panel's own fore and port edge. M: distance to the nearer edge of the \
         flange. S: to the seam.",
        TextSize::LEAST,
        false,
    );
    flow.finish()
}

/// Draws the deck with a cross for each hole; the answer is where it ends.
fn draw(desk: &Desk<'_>, fittings: &PlanFittings, page: &mut Page, room: Rect) -> Micrometres {
    let plan = desk.plan;
    let inner = Rect::new(room.left, room.top + 2 * MILLIMETRE, room.right, room.bottom);
    let (mapping, deck) = bow_up::fitted(inner, (plan.deck.beam, plan.deck.length), desk.ruler.unit());
    page.frame = page.frame.clone().scale(mapping.scale, desk.ruler.unit());
    let figure = &mut page.figure;
    for member in &plan.frame {
        let breadths = plan.deck.outline.breadths(member.centre(), Limit::Aft);
        let port = member.port_end.or(breadths.first().map(|breadth| breadth.0)).unwrap_or(Length::ZERO);
        let starboard = member.starboard_end.or(breadths.last().map(|breadth| breadth.1)).unwrap_or(plan.deck.beam);
        let band = deck_shape::band(&mapping, member.fore, member.aft, port, starboard);
        figure.fill(Path::rect(band), Tone::Light);
    }
    for panel in &plan.panels {
        figure.stroke(deck_shape::path(&mapping, &panel.shape), Line::Thin);
    }
    figure.stroke(deck_shape::path(&mapping, &plan.deck.outline), Line::Outline);
    for opening in plan.openings.iter().filter(|opening| opening.slot.is_none()) {
        let shape = deck_shape::path(&mapping, &opening.shape);
        figure.fill(shape.clone(), Tone::White);
        figure.stroke(shape, Line::Thin);
    }
    for hole in &fittings.holes {
        // A hole off the deck is in the table only: there is no telling how far off the sheet it lies.
        if hole.panel.is_some() {
            cross(figure, mapping.point(hole.x, hole.y));
        }
    }
    names(figure, fittings, &mapping);
    deck.bottom + 4 * MILLIMETRE
}

fn cross(figure: &mut Figure, at: Point) {
    figure.line(at.moved(-CROSS, 0), at.moved(CROSS, 0), Line::Hidden);
    figure.line(at.moved(0, -CROSS), at.moved(0, CROSS), Line::Hidden);
    figure.stroke(Path::circle(at, CROSS * 2 / 3), Line::Fine);
}

/// Each fitting's number beside its first hole on a board.
fn names(figure: &mut Figure, fittings: &PlanFittings, mapping: &Mapping) {
    for (index, name) in numbered(fittings).iter().enumerate() {
        let first = fittings.holes.iter().find(|hole| hole.fitting == *name && hole.panel.is_some());
        let Some(hole) = first else { continue };
        let at = mapping.point(hole.x, hole.y);
        let around = Rect::spanning(at, at).inset(-7 * MILLIMETRE);
        let words = format!("F{}", index + 1);
        let (width, height) = (width(&words, TextSize::LEAST, true), TextSize::LEAST.height());
        // Clear of the crosses as well, which are fine lines; a fitting without room for its number is found by the table.
        let spot = figure.search(around).strict().spot(width, height);
        if let Some(spot) = spot {
            figure.text(Text::filling(words, spot, TextSize::LEAST).bold(true).masked());
        }
    }
}

/// The fittings' names in the order of their numbers.
fn numbered(fittings: &PlanFittings) -> Vec<&str> {
    let mut names: Vec<&str> = Vec::new();
    for hole in &fittings.holes {
        if !names.contains(&hole.fitting.as_str()) {
            names.push(&hole.fitting);
        }
    }
    names
}

fn datum(desk: &Desk<'_>, fittings: &PlanFittings) -> String {
    let (datum, ruler) = (&fittings.datum, desk.ruler);
    let skew = datum.skew.map(|(over, rise)| {
        let side = if rise.is_negative() { "port" } else { "starboard" };
        format!("; the old deck ran {} to {side} over {}", ruler.text(rise.abs()), ruler.text(over))
    });
    format!(
        "Holes come from the old deck, whose datum lies {} {} of the new bow edge and {} to {} of the new port edge, \
         read {} and to {}{}. Drill from above, through the board's holes into the members; bed every bolt.",
        ruler.text(datum.at.x.abs()),
        if datum.at.x.is_negative() { "forward" } else { "aft" },
        ruler.text(datum.at.y.abs()),
        if datum.at.y.is_negative() { "port" } else { "starboard" },
        if datum.forward { "forward" } else { "aft" },
        if datum.to_port { "port" } else { "starboard" },
        skew.unwrap_or_default(),
    )
}

fn to_get(desk: &Desk<'_>, fittings: &PlanFittings) -> Table {
    let ruler = desk.ruler;
    let mut table = Table::new(vec![
        Column::words("Part"),
        Column::new("size", Align::Left),
        Column::new("count", Align::Right),
        Column::words("for"),
    ])
    .size(Desk::FIGURES);
    for line in &fittings.bolts {
        let length = match line.length {
            Some(length) => ruler.text(length),
            None => format!("{} AT LEAST, NOT ON THE LIST", ruler.text(line.needed)),
        };
        let size = format!("{} × {length}", ruler.text(line.diameter));
        let cells = [format!("{}, nut, washers", line.kind), size, line.count.to_string(), list(&line.fittings)];
        if line.length.is_some() { table.row(cells) } else { table.bold_row(cells) }
    }
    for line in &fittings.plates {
        let plate = line.plate;
        let [length, width, thickness] = [plate.length, plate.width, plate.thickness].map(|size| ruler.text(size));
        let size = format!("{length} × {width} × {thickness}");
        table.row(["backing plate".to_owned(), size, line.count.to_string(), list(&line.fittings)]);
    }
    table
}

fn holes_table(desk: &Desk<'_>, fittings: &PlanFittings) -> Table {
    let mut table = Table::new(vec![
        Column::new("Hole", Align::Left),
        Column::new("from bow", Align::Right),
        Column::new("from port", Align::Right),
        Column::new("panel", Align::Left),
        Column::new("its fore", Align::Right),
        Column::new("its port", Align::Right),
        Column::words("bolt, and what is near"),
    ])
    .size(TextSize::LEAST);
    let names = numbered(fittings);
    for hole in &fittings.holes {
        let number = names.iter().position(|name| *name == hole.fitting).map_or(0, |index| index + 1);
        let on_panel = |length: Option<Length>| length.map_or_else(String::new, |length| short(desk, length));
        let cells = [
            format!("F{number}, {}", hole.number),
            short(desk, hole.x),
            short(desk, hole.y),
            hole.panel.clone().unwrap_or_else(|| "NONE".to_owned()),
            on_panel(hole.from_fore),
            on_panel(hole.from_port),
            near(desk, hole),
        ];
        if hole.findings.is_empty() { table.row(cells) } else { table.bold_row(cells) }
    }
    table
}

/// The shop's figure alone, with ≈ where it was rounded: there is no room for decimals.
fn short(desk: &Desk<'_>, length: Length) -> String {
    let words = desk.ruler.text(length);
    if words.contains('(') { desk.ruler.near(length) } else { words }
}

/// The bolt, the nearest seam and member, and what is wrong.
fn near(desk: &Desk<'_>, hole: &FittedHole) -> String {
    let bolt = hole.stack.bolt.map_or_else(|| "none".to_owned(), |bolt| short(desk, bolt));
    let mut words = vec![format!("bolt {bolt} (stack {})", short(desk, hole.stack.needed))];
    words.extend(hole.member.map(|near| match near.through {
        true if hole.reuses_old_hole => format!("through M{}, its old hole", near.number),
        true => format!("through M{}", near.number),
        false => format!("M{} {} off", near.number, short(desk, near.distance)),
    }));
    words.extend(hole.seam.map(|near| format!("S{} {} off", near.number, short(desk, near.distance))));
    for found in &hole.findings {
        let what = match found.rule {
            HoleRule::OffBoard => "NO BOARD HERE",
            HoleRule::InOpening => "IN AN OPENING",
            HoleRule::NearSeam => "TOO NEAR TO SEAM",
            HoleRule::FlangeEdge => "TOO NEAR TO FLANGE'S EDGE",
            HoleRule::FoulsFlange => "FOULS FLANGE BELOW",
            HoleRule::NearFastener => "TOO NEAR TO A FASTENER",
            HoleRule::NearOldHole => "TOO NEAR TO AN OLD HOLE",
            HoleRule::NoBolt => "NO BOLT SO LONG",
        };
        let by = match found.short_by {
            none if none.is_zero() => String::new(),
            lacks => format!(", short by {}", short(desk, lacks)),
        };
        words.push(format!("{what}{by}"));
    }
    words.join("; ")
}
