//! The covering sheet: roll, run, seam lines, wrap, cut list, glue by halves, what to heed while it cures.

use crate::covering::{Covering, Glue, Laid, Run};
use crate::draw::deck_shape;
use crate::draw::deck_sketch::{self, Around, At};
use crate::draw::desk::{Desk, count};
use crate::draw::figure::{
    Align, Column, Figure, Line, MILLIMETRE, Mapping, Micrometres, Path, Rect, Table, TextSize, hatch,
};
use crate::draw::flow::Flow;
use crate::draw::page::Page;
use crate::draw::sheet_frame::Bow;
use crate::geometry::Point;
use crate::length::Length;
use crate::money::Figure as Exact;

/// The drawing takes at most this much of the sheet's height.
const HIGHEST: Micrometres = 150 * MILLIMETRE;
/// Square metres to the litre for a square foot to the US gallon: 0.3048² / 3.785411784.
const METRES_PER_LITRE: f64 = 0.024_542_391;

pub(super) fn pages(desk: &Desk<'_>) -> Vec<Page> {
    let Some(covering) = &desk.plan.covering else { return Vec::new() };
    let mut page = desk.page("covering", "Covering");
    let body = Page::body(desk.paper);
    let Some(laid) = &covering.laid else { return not_laid(page, body, covering) };
    page.frame = page.frame.bow(Bow::Up).note(note(desk, laid));
    let room = Rect { bottom: body.top + HIGHEST, ..body };
    let around = around(desk, laid);
    let bottom = deck_sketch::draw(desk, &mut page, room, &around, |figure, mapping| draw(desk, laid, figure, mapping));
    let mut flow = Flow::new(page, Rect { top: bottom, ..body });
    pieces(desk, laid, &mut flow);
    cuts(desk, laid, &mut flow);
    trials(desk, covering, &mut flow);
    if let Some(glue) = &covering.glue {
        self::glue(desk, glue, &mut flow);
    }
    flow.heading("While it cures");
    for reminder in &covering.reminders {
        flow.paragraph(&format!("• {reminder}"), TextSize::BODY, false);
    }
    if !desk.plan.openings.is_empty() {
        let names: Vec<&str> = desk.plan.openings.iter().map(|opening| opening.name.as_str()).collect();
        flow.paragraph(&format!("Cut out after laying: {}.", names.join(", ")), TextSize::BODY, true);
    }
    flow.finish()
}

fn not_laid(page: Page, body: Rect, covering: &Covering) -> Vec<Page> {
    let mut flow = Flow::new(page, body);
    flow.heading("No covering is planned");
    flow.paragraph(covering.reason.as_deref().unwrap_or_default(), TextSize::FIGURE, true);
    flow.finish()
}

fn note(desk: &Desk<'_>, laid: &Laid) -> String {
    let seams = match laid.seams.len() {
        0 => "no seam".to_owned(),
        number => count(number, "seam", "seams"),
    };
    format!(
        "{}, {} wide, laid {}; {seams}; wrap {}",
        laid.roll,
        desk.ruler.text(laid.roll_width),
        laid.run.words(),
        desk.ruler.text(laid.wrap)
    )
}

fn around(desk: &Desk<'_>, laid: &Laid) -> Around {
    let (plan, ruler) = (desk.plan, desk.ruler);
    let mut around = Around::default();
    around.left.push(At::new(Length::ZERO, "0 bow edge"));
    let boards = plan.layouts.first().into_iter().flat_map(|layout| &layout.seams);
    around.left.extend(boards.map(|seam| At::new(seam.fore, format!("S{}: {}", seam.number, ruler.text(seam.fore)))));
    around.left.push(At::new(plan.deck.length, ruler.text(plan.deck.length)));
    around.above.push(At::new(Length::ZERO, "0 port edge"));
    around.above.push(At::new(plan.deck.beam, ruler.text(plan.deck.beam)));
    let seams =
        laid.seams.iter().map(|seam| At::new(seam.at, format!("seam {}: {}", seam.number, ruler.text(seam.at))).bold());
    match laid.run {
        Run::ForeAndAft => around.above.extend(seams),
        Run::Athwart => around.right.extend(seams),
    }
    around
}

/// Boards' seams, traffic, the covering's seams, its pieces and the way it runs.
fn draw(desk: &Desk<'_>, laid: &Laid, figure: &mut Figure, mapping: &Mapping) {
    let plan = desk.plan;
    let (length, beam) = (plan.deck.length, plan.deck.beam);
    for seam in plan.layouts.first().into_iter().flat_map(|layout| &layout.seams) {
        figure.line(mapping.point(seam.fore, Length::ZERO), mapping.point(seam.fore, beam), Line::Hidden);
    }
    for zone in plan.job.covering.iter().flat_map(|covering| covering.traffic.iter().flatten()) {
        let clip = |at: Length, most: Length| at.max(Length::ZERO).min(most);
        let corner = Point::new(clip(zone.x, length), clip(zone.y, beam));
        let other = Point::new(clip(zone.x + zone.depth, length), clip(zone.y + zone.width, beam));
        let area = deck_shape::rect(mapping, corner, other);
        figure.stroke(hatch(&Path::rect(area), 3 * MILLIMETRE, false), Line::Fine);
        figure.write_within(area, None, &zone.name, TextSize::LEAST, false);
    }
    let fore_and_aft = laid.run == Run::ForeAndAft;
    for seam in &laid.seams {
        let ends = if fore_and_aft {
            [mapping.point(Length::ZERO, seam.at), mapping.point(length, seam.at)]
        } else {
            [mapping.point(seam.at, Length::ZERO), mapping.point(seam.at, beam)]
        };
        figure.line(ends[0], ends[1], Line::Cut);
    }
    let along = if fore_and_aft { length } else { beam };
    for piece in &laid.pieces {
        let across = if fore_and_aft { beam } else { length };
        let (from, to) = (piece.from.max(Length::ZERO), piece.to.min(across));
        let middle = from.midpoint(to);
        let place = |run: Length| if fore_and_aft { mapping.point(run, middle) } else { mapping.point(middle, run) };
        let (start, end) = (place(along.part(1, 20)), place(along.part(4, 20)));
        figure.arrow(start, end, Line::Thin);
        let room = if fore_and_aft {
            deck_shape::band(mapping, along.part(13, 20), along.part(18, 20), from, to)
        } else {
            deck_shape::band(mapping, from, to, along.part(5, 20), along.part(19, 20))
        };
        let words = format!("piece {}", piece.number);
        let sizes = [TextSize::HEADING, TextSize::LEAST];
        // The first size that finds room; a piece too narrow for both is in the table.
        let _ = sizes.into_iter().any(|size| figure.write_within(room, None, &words, size, true));
    }
}

fn pieces(desk: &Desk<'_>, laid: &Laid, flow: &mut Flow) {
    let right = |title: &str| Column::new(title, Align::Right);
    let edge = if laid.run == Run::ForeAndAft { "from the port edge" } else { "from the bow edge" };
    let mut table = Table::new(vec![
        Column::new("Piece", Align::Left),
        right(edge),
        right("width"),
        right("length"),
        Column::words(""),
    ])
    .size(Desk::FIGURES);
    for piece in &laid.pieces {
        let place = format!("{} to {}", signed(desk, piece.from), desk.ruler.text(piece.to));
        let words = match (piece.whole, laid.seams.is_empty()) {
            (true, _) => "the roll's whole width, both factory edges",
            (false, true) => "trim at the edges",
            (false, false) => "trim to width; a factory edge at the seam",
        };
        table.row([
            piece.number.to_string(),
            place,
            desk.ruler.text(piece.width),
            desk.ruler.text(laid.drop),
            words.to_owned(),
        ]);
    }
    flow.headed("Pieces, wrap included", &table);
    for seam in laid.seams.iter().filter(|seam| seam.from_ply_seam.is_some()) {
        let distance = seam.from_ply_seam.unwrap_or_default();
        let words =
            format!("Seam {} lies {} from the nearest seam of the boards.", seam.number, desk.ruler.text(distance));
        flow.paragraph(&words, TextSize::BODY, false);
    }
}

/// A place before the edge, by the wrap.
fn signed(desk: &Desk<'_>, length: Length) -> String {
    if length.is_negative() { format!("{} before it", desk.ruler.text(length.abs())) } else { desk.ruler.text(length) }
}

fn cuts(desk: &Desk<'_>, laid: &Laid, flow: &mut Flow) {
    let mut table = Table::new(vec![
        Column::new("Roll", Align::Left),
        Column::words("cut off in this order, from the roll's end"),
        Column::new("left", Align::Right),
    ]);
    for (index, roll) in laid.cuts.rolls.iter().enumerate() {
        let drops: Vec<String> = roll
            .drops
            .iter()
            .map(|drop| {
                format!(
                    "{} {}: {}, cut at {}",
                    drop.boat,
                    drop.name,
                    desk.ruler.text(drop.length),
                    desk.ruler.text(drop.to)
                )
            })
            .collect();
        table.row([(index + 1).to_string(), drops.join("; "), desk.ruler.text(roll.left)]);
    }
    flow.headed("Cut list", &table);
    let rolls = count(laid.cuts.rolls.len(), "roll", "rolls");
    let proven =
        if laid.cuts.proven { "; fewer is not possible".to_owned() } else { format!("; at least {}", laid.cuts.bound) };
    let sold = if laid.sold_by == Length::ZERO {
        String::new()
    } else {
        format!("{} × {}", laid.buy, desk.ruler.text(laid.sold_by))
    };
    flow.paragraph(
        &format!(
            "{rolls}{proven}. This boat takes {} and buys {sold}, {} for a deck of {}: {} % over.",
            desk.ruler.text(laid.length),
            desk.area(laid.bought),
            desk.area(laid.area),
            laid.waste_percent
        ),
        TextSize::BODY,
        false,
    );
    for drop in &laid.cuts.too_long {
        let words = format!("{} {}: {} is longer than a roll.", drop.boat, drop.name, desk.ruler.text(drop.length));
        flow.paragraph(&words, TextSize::BODY, true);
    }
}

fn trials(desk: &Desk<'_>, covering: &Covering, flow: &mut Flow) {
    if covering.trials.len() < 2 {
        return;
    }
    let right = |title: &str| Column::new(title, Align::Right);
    let mut table = Table::new(vec![
        Column::words("Rolls and ways that were tried"),
        right("seams"),
        right("running length"),
        right("cost"),
        Column::words(""),
    ]);
    for trial in &covering.trials {
        let words = if trial.taken { "taken".to_owned() } else { trial.why_not.clone().unwrap_or_default() };
        let cells = [
            format!("{}, {}", trial.roll, trial.run.words()),
            trial.seams.map(|seams| seams.to_string()).unwrap_or_default(),
            trial.length.map(|length| desk.running_length(length)).unwrap_or_default(),
            trial.cost.map(|cost| cost.to_string()).unwrap_or_default(),
            words,
        ];
        if trial.taken { table.bold_row(cells) } else { table.row(cells) }
    }
    flow.headed("Why this roll, this way", &table);
}

fn glue(desk: &Desk<'_>, glue: &Glue, flow: &mut Flow) {
    let adhesive = &glue.adhesive;
    let mut table =
        Table::new(vec![Column::new("Glue", Align::Left), Column::words(adhesive.kind.clone())]).size(Desk::FIGURES);
    let mut say = |name: &str, words: String| table.row([name.to_owned(), words]);
    if let Some(trowel) = &adhesive.trowel {
        say("trowel", trowel.clone());
    }
    let (least, most) = adhesive.coverage;
    say("coverage", format!("{}; {}", coverage(desk, least, most), adhesive.source));
    let (low, high) = (desk.volume(glue.gallons_least), desk.volume(glue.gallons_most));
    let can = desk.volume(adhesive.can);
    let cans = count(usize::try_from(glue.cans).unwrap_or(usize::MAX), "can", "cans");
    say("amount", format!("{low} to {high} on {}, wrap included: {cans} of {can}", desk.area(glue.area)));
    let timing = &glue.timing;
    say(
        "first stretch",
        format!(
            "fold half of the covering back, spread the bare half within {} minutes, wait until {} minutes after its last \
             stroke, lay it and roll it before {} minutes after its first",
            timing.window, timing.wait, timing.set
        ),
    );
    let others = if timing.stretches > 2 {
        format!("the same {} times more", timing.stretches - 1)
    } else {
        "the other half the same way".into()
    };
    say("then", others);
    let rate = match (timing.spread, timing.area_in_window) {
        (Some(spread), Some(area)) => format!(
            "the crew spreads {} a minute, {} in {} minutes: {} stretches",
            square(desk, spread),
            square(desk, area),
            timing.window,
            timing.stretches
        ),
        _ => format!(
            "to do it by halves the crew spreads {} a minute; slower than that, take more stretches",
            square(desk, timing.needed)
        ),
    };
    say("pace", rate);
    flow.headed("Glue, half and half; the can goes before these times", &table);
}

fn square(desk: &Desk<'_>, feet: Exact) -> String {
    if desk.imperial() { format!("{feet} ft²") } else { format!("{:.2} m²", feet.number() * 0.092_903_04) }
}

fn coverage(desk: &Desk<'_>, least: Exact, most: Exact) -> String {
    if desk.imperial() {
        return format!("{least} to {most} ft² to the gallon");
    }
    let metric = |feet: Exact| format!("{:.1}", feet.number() * METRES_PER_LITRE);
    format!("{} to {} m² to the litre", metric(least), metric(most))
}
