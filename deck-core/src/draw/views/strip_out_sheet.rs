//! The strip-out sheet: how the old covering, fasteners and boards come off, what they weigh, and what to look at.

use crate::draw::deck_shape;
use crate::draw::deck_sketch::{self, Around, At};
use crate::draw::desk::{Desk, count, list};
use crate::draw::figure::{
    Align, Column, Figure, Line, MILLIMETRE, Mapping, Micrometres, Path, Rect, Table, TextSize, Tone,
};
use crate::draw::flow::Flow;
use crate::draw::page::Page;
use crate::draw::sheet_frame::Bow;
use crate::frame::Condition;
use crate::length::{Length, Unit};
use crate::money::{Figure as Exact, ThreePoint};
use crate::plan::{WeightSide, Weights};
use crate::strip_out::{FastenerLine, Method, OldCondition, OldCovering, OldKind, StripOut};

/// The drawing takes at most this much of the sheet's height.
const HIGHEST: Micrometres = 150 * MILLIMETRE;
/// Cubic metres in a cubic foot: 0.3048³.
const CUBIC_METRES: f64 = 0.028_316_846_592;

pub(super) fn pages(desk: &Desk<'_>) -> Vec<Page> {
    let Some(found) = &desk.plan.strip_out else { return Vec::new() };
    let mut page = desk.page("strip-out", "Strip-out");
    let body = Page::body(desk.paper);
    let words = format!(
        "{}, {} old boards, {} to {} hours, most likely {}",
        fasteners_in_words(found),
        found.boards.count,
        found.total_hours.low,
        found.total_hours.high,
        found.total_hours.likely
    );
    page.frame = page.frame.bow(Bow::Up).note(words);
    let around = around(desk, found);
    let room = Rect { bottom: body.top + HIGHEST, ..body };
    let bottom =
        deck_sketch::draw(desk, &mut page, room, &around, |figure, mapping| draw(desk, found, figure, mapping));
    let mut flow = Flow::new(page, Rect { top: bottom, ..body });
    covering(desk, found, &mut flow);
    freed(desk, found, &mut flow);
    fasteners(desk, found, &mut flow);
    boards(desk, found, &mut flow);
    hours(found, &mut flow);
    weights(desk, &mut flow);
    pits(desk, found, &mut flow);
    flow.finish()
}

fn fasteners_in_words(found: &StripOut) -> String {
    let likely = found.fastener_count.likely;
    if found.fasteners_estimated { format!("about {likely} fasteners") } else { format!("{likely} fasteners") }
}

fn around(desk: &Desk<'_>, found: &StripOut) -> Around {
    let (plan, ruler) = (desk.plan, desk.ruler);
    let left = plan.frame.iter().map(|member| {
        let condition = match member.condition {
            Condition::Sound => "",
            Condition::Cut => ", cut",
            Condition::Corroded => ", corroded",
            Condition::Bent => ", bent",
        };
        let mark = At::new(member.centre(), format!("M{}: {}{condition}", member.number, ruler.text(member.centre())));
        if condition.is_empty() { mark } else { mark.bold() }
    });
    let mut right = Vec::new();
    for (index, freed) in found.freed.iter().enumerate() {
        for station in [freed.x, freed.x + freed.depth] {
            right.push(At::new(station, format!("slot {}: {}", index + 1, ruler.text(station))).bold());
        }
    }
    let mut above = vec![At::new(Length::ZERO, "0 port edge")];
    above.extend(found.covering.cuts.iter().map(|cut| At::new(*cut, ruler.text(*cut))));
    Around { left: left.collect(), right, above }
}

/// Knife lines, and slots to open first.
fn draw(desk: &Desk<'_>, found: &StripOut, figure: &mut Figure, mapping: &Mapping) {
    for cut in &found.covering.cuts {
        let stretch = [mapping.point(Length::ZERO, *cut), mapping.point(desk.plan.deck.length, *cut)];
        figure.line(stretch[0], stretch[1], Line::Hidden);
    }
    for freed in &found.freed {
        let corner = crate::geometry::Point::new(freed.x, freed.y);
        let other = crate::geometry::Point::new(freed.x + freed.depth, freed.y + freed.width);
        let slot = deck_shape::rect(mapping, corner, other);
        figure.fill(Path::rect(slot), Tone::Middle);
        figure.stroke(Path::rect(slot), Line::Thin);
    }
}

fn covering(desk: &Desk<'_>, found: &StripOut, flow: &mut Flow) {
    let strips = &found.covering;
    flow.heading("Old covering");
    let words = match strips.held {
        OldCovering::Glued => format!(
            "Glued: {} of {}, the last takes the rest, each {} long, {} in all. The dashed lines are the knife's; distances \
             above, from the port edge. ",
            count(usize::try_from(strips.count).unwrap_or(0), "strip", "strips"),
            desk.ruler.text(strips.width),
            desk.ruler.text(strips.length),
            desk.area(strips.area)
        ),
        OldCovering::Stapled => format!("Stapled: one piece, {}. ", desk.area(strips.area)),
        OldCovering::None => String::new(),
    };
    flow.paragraph(&format!("{words}{}", strips.how), TextSize::BODY, false);
    if let Some(tape) = &found.tape {
        let seams = count(usize::try_from(tape.seams).unwrap_or(0), "seam", "seams");
        flow.paragraph(
            &format!("Tape over {seams}, {} in all. {}", desk.running_length(tape.length), tape.how),
            TextSize::BODY,
            false,
        );
        flow.paragraph(&tape.beware, TextSize::BODY, true);
    }
}

fn freed(desk: &Desk<'_>, found: &StripOut, flow: &mut Flow) {
    if found.freed.is_empty() {
        return;
    }
    let mut table = Table::new(vec![
        Column::new("Slot", Align::Left),
        Column::words("frees"),
        Column::new("from the bow edge", Align::Left),
        Column::new("from the port edge", Align::Left),
        Column::words("then"),
    ]);
    for (index, freed) in found.freed.iter().enumerate() {
        let ruler = desk.ruler;
        let then = match &freed.becomes {
            Some(opening) => format!("the new board gets the closed hole \"{opening}\""),
            None => "the new board gets no hole here".to_owned(),
        };
        table.row([
            (index + 1).to_string(),
            freed.name.clone(),
            format!("{} to {}", ruler.text(freed.x), ruler.text(freed.x + freed.depth)),
            format!("{} to {}", ruler.text(freed.y), ruler.text(freed.y + freed.width)),
            then,
        ]);
    }
    flow.headed("Saw these slots first, so that what runs through them drops free", &table);
}

fn fasteners(desk: &Desk<'_>, found: &StripOut, flow: &mut Flow) {
    let mut table = Table::new(vec![
        Column::words("Fasteners"),
        Column::new("count", Align::Right),
        Column::new("minutes each", Align::Right),
        Column::new("hours", Align::Right),
        Column::words("how"),
    ]);
    for line in &found.fasteners {
        let two = if line.people > 1 { format!(", {} people", line.people) } else { String::new() };
        table.row([
            format!("{}{two}", kind(line)),
            if found.fasteners_estimated { three(line.count) } else { line.count.likely.to_string() },
            three(line.minutes),
            three(line.hours),
            line.how.clone(),
        ]);
    }
    let words =
        if found.fasteners_estimated { "Fasteners: estimated, nobody has counted or tried them" } else { "Fasteners" };
    flow.headed(words, &table);
    if found.fasteners.iter().any(|line| line.method != Method::BackOut) {
        let stub = desk.ruler.text(found.stub_height);
        flow.paragraph(&format!("A stub stands {stub} above the flange once its board is off."), TextSize::BODY, false);
    }
    if found.fasteners_estimated {
        flow.paragraph(
            "Try ten of them before the price is fixed. A seized one takes 2 to 4 minutes; one that spins, 1 to 1-1/2.",
            TextSize::BODY,
            true,
        );
    }
}

fn kind(line: &FastenerLine) -> String {
    let kind = match line.kind {
        OldKind::Screw => "screws",
        OldKind::Bolt => "bolts",
    };
    let condition = match line.condition {
        OldCondition::Sound => "sound",
        OldCondition::Seized => "seized",
        OldCondition::Spinning => "spinning",
    };
    let method = match line.method {
        Method::BackOut => "back out",
        Method::GrindHead => "grind the head off",
        Method::RingCut => "cut a ring",
    };
    format!("{kind}, {condition}: {method}")
}

/// `0.3 / 0.4 / 0.5`, or one figure where all are alike.
fn three(points: ThreePoint) -> String {
    if points.low == points.high {
        return points.likely.to_string();
    }
    format!("{} / {} / {}", points.low, points.likely, points.high)
}

fn boards(desk: &Desk<'_>, found: &StripOut, flow: &mut Flow) {
    let (boards, disposal) = (&found.boards, &found.disposal);
    let mut table =
        Table::new(vec![Column::words("Old boards, and what goes to the dump"), Column::new("", Align::Right)]);
    let size = format!(
        "{} boards, up to {}, {} thick, {} without openings",
        boards.count,
        desk.ruler.size(boards.length, boards.width),
        desk.ruler.text(boards.thickness),
        desk.area(boards.area)
    );
    table.row([format!("{size}: dry"), desk.mass(boards.dry_lb)]);
    let soaked = format!("{} to {}", desk.mass(boards.soaked_least_lb), desk.mass(boards.soaked_most_lb));
    table.row(["the same, soaked (typical, unconfirmed)".to_owned(), soaked]);
    table.row(["one whole board, soaked: lift it with two people".to_owned(), desk.mass(boards.heaviest_lb)]);
    match disposal.covering_lb {
        Some(pounds) => table.row(["old covering".to_owned(), desk.mass(pounds)]),
        None if found.covering.held == OldCovering::None => {}
        None => table.row(["old covering".to_owned(), "not weighed".to_owned()]),
    }
    table.bold_row([
        "to the dump".to_owned(),
        format!("{} to {}", desk.mass(disposal.dry_lb), desk.mass(disposal.most_lb)),
    ]);
    let mut volume = volume(desk, disposal.boards_cubic_feet);
    if let Some(covering) = disposal.covering_cubic_feet {
        volume = format!("{volume}, covering {}", self::volume(desk, covering));
    }
    table.row(["volume, stacked flat; broken boards take more".to_owned(), volume]);
    flow.headed("Boards and disposal", &table);
}

fn volume(desk: &Desk<'_>, cubic_feet: Exact) -> String {
    if desk.imperial() {
        format!("{cubic_feet} ft³")
    } else {
        format!("{:.2} m³", cubic_feet.number() * CUBIC_METRES)
    }
}

fn hours(found: &StripOut, flow: &mut Flow) {
    let right = |title: &str| Column::new(title, Align::Right);
    let mut table = Table::new(vec![
        Column::new("Hours", Align::Left),
        right("low"),
        right("likely"),
        right("high"),
        Column::words("rest on"),
    ]);
    for line in &found.hours {
        let ThreePoint { low, likely, high, .. } = line.hours;
        table.row([line.task.clone(), low.to_string(), likely.to_string(), high.to_string(), line.basis.clone()]);
    }
    let ThreePoint { low, likely, high, .. } = found.total_hours;
    table.bold_row(["in all".to_owned(), low.to_string(), likely.to_string(), high.to_string(), String::new()]);
    flow.headed("Hours, for planning", &table);
}

fn weights(desk: &Desk<'_>, flow: &mut Flow) {
    let Some(weights) = &desk.plan.weights else { return };
    let mut table = Table::new(vec![
        Column::words("Weight ledger"),
        Column::new("off", Align::Right),
        Column::new("on", Align::Right),
        Column::new("centre, aft of the bow edge", Align::Right),
    ]);
    for line in &weights.lines {
        let mut cells = [line.what.clone(), String::new(), String::new(), desk.ruler.text(line.centre)];
        let column = if line.side == WeightSide::Removed { 1 } else { 2 };
        if let Some(cell) = cells.get_mut(column) {
            *cell = tenths(desk, line.pounds);
        }
        table.row(cells);
    }
    let centre = weights.net_centre.map_or_else(|| "–".to_owned(), |centre| desk.ruler.text(centre));
    table.bold_row([
        "in all, dry".to_owned(),
        tenths(desk, weights.removed_lb),
        tenths(desk, weights.added_lb),
        String::new(),
    ]);
    flow.headed("Weight", &table);
    flow.paragraph(&net(desk, weights, &centre), TextSize::BODY, true);
    flow.paragraph(&format!("Not weighed: {}.", list(&weights.missing)), TextSize::BODY, false);
    flow.paragraph(&weights.caution, TextSize::BODY, false);
}

fn net(desk: &Desk<'_>, weights: &Weights, centre: &str) -> String {
    let side = |pounds: f64| {
        let words = tenths(desk, pounds.abs());
        if pounds < 0.0 { format!("{words} lighter") } else { format!("{words} heavier") }
    };
    let place = match weights.net_centre {
        Some(station) if station >= Length::ZERO && station <= desk.plan.deck.length => {
            format!("; it acts {centre} aft of the bow edge")
        }
        _ => String::new(),
    };
    format!(
        "Net: the boat is {}, with dry old boards{place}; {} where they were soaked as far as they may be.",
        side(weights.net_lb),
        side(weights.net_soaked_lb)
    )
}

/// A mass to a tenth of a pound, or of a kilogram.
fn tenths(desk: &Desk<'_>, pounds: f64) -> String {
    const KILOGRAMS: f64 = 0.453_592_37;
    if desk.imperial() { format!("{pounds:.1} lb") } else { format!("{:.1} kg", pounds * KILOGRAMS) }
}

fn pits(desk: &Desk<'_>, found: &StripOut, flow: &mut Flow) {
    if found.pits.is_empty() {
        return;
    }
    let right = |title: &str| Column::new(title, Align::Right);
    let mut table = Table::new(vec![
        Column::new("Member", Align::Left),
        right("wall"),
        right("pit"),
        right("left"),
        right("in years"),
        right("a year"),
        right("through in"),
        Column::words("read it so"),
    ]);
    let fine = |length: Length| {
        if desk.imperial() {
            format!("{}\u{a0}in", length.decimal_places(Unit::Inch, 4))
        } else {
            format!("{}\u{a0}mm", length.decimal_places(Unit::Millimetre, 3))
        }
    };
    for pit in &found.pits {
        table.row([
            format!("M{}", pit.member),
            fine(pit.wall),
            fine(pit.depth),
            fine(pit.left),
            pit.years.to_string(),
            fine(pit.rate),
            format!("{} years", pit.years_left),
            pit.limits.clone(),
        ]);
    }
    flow.headed("Pits in the frame: what they did so far, drawn on", &table);
}
