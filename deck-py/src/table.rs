//! Results as tables in HTML, for notebooks.

use deck_core::Unit;
use deck_core::fasteners::{Fastening, RowKind};
use deck_core::money::Money;
use deck_core::nest::{Fill, Nest, Placement};
use deck_core::quote::Quote;
use deck_core::seams::SeamLayout;
use deck_core::span::{Beam, BeamSpan, Plate, Range};
use deck_core::survey::Survey;

/// A row for each sheet: what it is taken from, the parts on it, and what is left to keep.
pub(crate) fn nest(nest: &Nest) -> String {
    let rows = nest.sheets.iter().enumerate().map(|(index, sheet)| {
        let cells =
            [(index + 1).to_string(), sheet.stock.clone(), parts(&sheet.placements), sheet.offcuts.len().to_string()];
        row("td", &cells)
    });
    let unplaced = nest.unplaced.iter().map(|part| {
        row("td", &["not placed".into(), String::new(), format!("{} × {}", part.count, part.part), part.why.clone()])
    });
    let head = row("th", &["sheet", "from", "parts", "offcuts"].map(str::to_owned));
    format!("<table>{head}{}</table>", rows.chain(unplaced).collect::<String>())
}

/// A row for each line of a quote, and the total.
pub(crate) fn quote(quote: &Quote) -> String {
    let money = |amount: Option<Money>| amount.map(|amount| amount.to_string()).unwrap_or_default();
    let rows = quote.lines.iter().map(|line| {
        let quantity = line.quantity.map(|quantity| quantity.to_string()).unwrap_or_default();
        let cells = [
            line.group.words().to_owned(),
            line.description.clone(),
            quantity,
            line.unit.clone(),
            money(line.rate),
            money(line.amount),
        ];
        row("td", &cells)
    });
    let head = row("th", &["", "what", "quantity", "unit", "rate", "amount"].map(str::to_owned));
    let empty = String::new;
    let total = row("th", &["Total".to_owned(), empty(), empty(), empty(), empty(), quote.total.to_string()]);
    format!("<table>{head}{}{total}</table>", rows.collect::<String>())
}

/// One row for all parts, as they are on one sheet.
pub(crate) fn fill(fill: &Fill) -> String {
    let head = row("th", &["parts", "worth", "at most", "offcuts"].map(str::to_owned));
    let cells =
        [parts(&fill.placements), fill.value.to_string(), fill.bound.to_string(), fill.offcuts.len().to_string()];
    format!("<table>{head}{}</table>", row("td", &cells))
}

/// A row for each board, with the seam aft of it.
pub(crate) fn layout(layout: &SeamLayout, unit: Unit) -> String {
    let names = ["board", "from", "to", "width", "seam on member", "short by"];
    let rows = layout.boards.iter().map(|board| {
        let seam = layout.seams.iter().find(|seam| seam.number == board.number);
        let [member, short] =
            seam.map_or([const { String::new() }; 2], |seam| [seam.member.to_string(), seam.short_by.decimal(unit)]);
        let [fore, aft, width] = [board.fore, board.aft, board.width].map(|length| length.decimal(unit));
        row("td", &[board.number.to_string(), fore, aft, width, member, short])
    });
    format!("<table>{}{}</table>", row("th", &names.map(str::to_owned)), rows.collect::<String>())
}

/// A row for each row of fasteners.
pub(crate) fn fastening(fastening: &Fastening, unit: Unit) -> String {
    let names = ["panel", "member", "kind", "station", "fasteners", "greatest gap"];
    let rows = fastening.rows.iter().map(|each| {
        let kind = if each.kind == RowKind::Edge { "edge" } else { "field" };
        let [station, gap] = [each.station, each.greatest_gap].map(|length| length.decimal(unit));
        let (member, count) = (each.member.to_string(), each.positions.len().to_string());
        row("td", &[each.panel.clone(), member, kind.into(), station, count, gap])
    });
    format!("<table>{}{}</table>", row("th", &names.map(str::to_owned)), rows.collect::<String>())
}

/// A row for each support, and one for each span or overhang with its extremes.
pub(crate) fn beam(beam: &Beam) -> String {
    let head = row("th", &["support at", "reaction", "moment"].map(str::to_owned));
    let supports =
        beam.supports.iter().map(|support| row("td", &[support.at, support.reaction, support.moment].map(figure)));
    let spans_head = row("th", &["from", "length", "moment", "shear", "deflection"].map(str::to_owned));
    let [left, right] = &beam.overhangs;
    let spans = left.iter().chain(&beam.spans).chain(right).map(stretch);
    format!(
        "<table>{head}{}</table><table>{spans_head}{}</table>",
        supports.collect::<String>(),
        spans.collect::<String>()
    )
}

fn stretch(span: &BeamSpan) -> String {
    let range = |range: &Range| format!("{} to {}", figure(range.least.value), figure(range.most.value));
    let [moment, shear, deflection] = [&span.moment, &span.shear, &span.deflection].map(range);
    row("td", &[figure(span.from), figure(span.length), moment, shear, deflection])
}

/// A row for each sort of answer with its extremes, and the reactions.
pub(crate) fn plate(plate: &Plate) -> String {
    let head = row("th", &["", "least", "at", "most", "at"].map(str::to_owned));
    let sorts = [
        ("deflection", &plate.deflection),
        ("moment x", &plate.moment_x),
        ("moment y", &plate.moment_y),
        ("twist", &plate.twist),
    ];
    let place = |[x, y]: [f64; 2]| format!("({}, {})", figure(x), figure(y));
    let rows = sorts.map(|(name, range)| {
        let (least, most) = (range.least, range.most);
        row("td", &[name.into(), figure(least.value), place(least.at), figure(most.value), place(most.at)])
    });
    let reactions: Vec<String> = plate.reactions.iter().map(|reaction| figure(*reaction)).collect();
    let reactions_head = row("th", &["reactions".to_owned()]);
    let reactions = row("td", &[reactions.join(", ")]);
    format!("<table>{head}{}</table><table>{reactions_head}{reactions}</table>", rows.concat())
}

/// The sentences, and a row for each reading.
pub(crate) fn survey(found: &Survey, unit: Unit) -> String {
    let said: Vec<String> = found.summary.iter().map(|sentence| format!("<p>{}</p>", escaped(sentence))).collect();
    let said = said.concat();
    let names = ["reading", "what", "read", "adjusted", "residual", "times its error", "redundancy", "used"];
    let rows = found.readings.iter().map(|each| {
        let read = each.reading.map(|reading| figure(reading.in_unit(unit))).unwrap_or_default();
        let [adjusted, residual] = [each.adjusted, each.residual].map(|length| figure(length.in_unit(unit)));
        let standardised = each.standardised.map(|times| format!("{times:.2}")).unwrap_or_default();
        let used = if each.used { "yes" } else { "no" };
        let redundancy = format!("{:.2}", each.redundancy);
        let (name, what) = (each.name.clone(), each.what.clone());
        row("td", &[name, what, read, adjusted, residual, standardised, redundancy, used.into()])
    });
    let points = found.points.iter().map(|each| {
        let figures = [each.x, each.y, each.x_deviation, each.y_deviation].map(|length| figure(length.in_unit(unit)));
        row("td", &[vec![each.name.clone()], figures.to_vec()].concat())
    });
    let head = row("th", &["point", "x", "y", "± x", "± y"].map(str::to_owned));
    format!(
        "{said}<table>{head}{}</table><table>{}{}</table>",
        points.collect::<String>(),
        row("th", &names.map(str::to_owned)),
        rows.collect::<String>()
    )
}

/// A number to five figures, as a person reads it.
pub(crate) fn figure(value: f64) -> String {
    const FIGURES: i32 = 5;
    if value == 0.0 || !value.is_finite() {
        return if value == 0.0 { "0".into() } else { value.to_string() };
    }
    #[allow(clippy::cast_possible_truncation, reason = "the logarithm of a finite number lies within 400")]
    let whole = value.abs().log10().floor() as i32 + 1;
    let places = usize::try_from(FIGURES - whole).unwrap_or(0);
    if !(-3..=12).contains(&whole) {
        return format!("{value:.4e}");
    }
    let text = format!("{value:.places$}");
    if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').to_owned() } else { text }
}

/// The labels in sawing order, each once with its count.
pub(crate) fn parts(placements: &[Placement]) -> String {
    let mut counts: Vec<(&str, usize)> = Vec::new();
    for placement in placements {
        match counts.iter_mut().find(|(label, _)| *label == placement.part) {
            Some((_, count)) => *count += 1,
            None => counts.push((&placement.part, 1)),
        }
    }
    let texts: Vec<String> = counts.into_iter().map(|(label, count)| format!("{count} × {label}")).collect();
    texts.join(", ")
}

pub(crate) fn row(tag: &str, cells: &[String]) -> String {
    let cells: Vec<String> = cells.iter().map(|cell| format!("<{tag}>{}</{tag}>", escaped(cell))).collect();
    format!("<tr>{}</tr>", cells.concat())
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;")
}
