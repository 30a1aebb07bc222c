//! How near does the library come to the handbook's tables, over all of their rows?
//!
//! `cargo bench -p deck-benches --bench handbook` reads the data folder `../shared/handbook` beside the repository, or
//! the one that `DECK_HANDBOOK` names, and says so where there is none. A sample of the same rows is typed into
//! `tests/published`. Ends with an error where a figure lies outside what is promised.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::print_stdout,
    reason = "a report for a person; a row that cannot be read is a mistake to be looked at"
)]

use deck_core::published::{FaceGrade, PULL_OUT_TESTS, SpeciesGroup, panel_series, sanded_factors};
use deck_core::span::hold::{Metal, Screw, bearing, pull_over};
use deck_core::span::{
    Axis, Criterion, Layup, Section, SectionPanel, SpanOptions, Stresses, StructuralPanel, span_limits,
};
use deck_core::{Length, Unit};
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

/// The one capacity that is not the file's round figure; see `published/panel_capacities`.
const OWN_FIGURE: (&str, &str, f64) = ("3", "3/8", 44.9);

type Row = BTreeMap<String, String>;

fn main() {
    let folder = std::env::var_os("DECK_HANDBOOK")
        .map_or_else(|| Path::new(env!("CARGO_MANIFEST_DIR")).join("../../shared/handbook"), PathBuf::from);
    if !folder.join("panel_uniform_loads.csv").exists() {
        println!("no handbook at {}: nothing compared", folder.display());
        return;
    }
    let read = |name: &str| rows(&folder.join(name));
    let reports = [
        uniform_loads(&read("panel_uniform_loads.csv")),
        capacities(&read("panel_capacities.csv")),
        grade_factors(&read("panel_factors.csv")),
        form_pressures(&read("plywood_section_inputs.csv"), &read("concrete_form_pressures.csv")),
        even_plies(&read("plywood_section_inputs.csv")),
        screws(&read("screws_in_aluminium.csv")),
        agency(&read("panel_capacities_by_ply_2012.csv")),
    ];
    for (text, _) in &reports {
        println!("{text}");
    }
    assert!(reports.iter().all(|(_, kept)| *kept), "outside what is promised");
}

/// A table's rows by the names of its columns.
fn rows(path: &Path) -> Vec<Row> {
    let text = std::fs::read_to_string(path).unwrap();
    let mut lines = text.lines().map(fields);
    let names = lines.next().unwrap();
    lines.map(|values| names.iter().cloned().zip(values).collect()).collect()
}

/// A line's fields; a field in quotes may hold commas.
fn fields(line: &str) -> Vec<String> {
    let mut fields = vec![String::new()];
    let mut quoted = false;
    for c in line.chars() {
        match c {
            '"' => quoted = !quoted,
            ',' if !quoted => fields.push(String::new()),
            _ => fields.last_mut().unwrap().push(c),
        }
    }
    fields
}

fn number(row: &Row, column: &str) -> f64 {
    row[column].parse().unwrap_or_else(|_| panic!("{row:?}"))
}

fn inches(text: &str) -> Length {
    Length::read(text, Unit::Inch).unwrap().length
}

fn axis(row: &Row) -> Axis {
    if row["strength_axis_vs_supports"] == "across" { Axis::Across } else { Axis::Along }
}

fn load(panel: &StructuralPanel, row: &Row, spans: u32, options: &SpanOptions, criterion: Option<Criterion>) -> f64 {
    let answer = span_limits(panel, inches(&row["support_spacing_in"]), axis(row), spans, options).unwrap();
    let limits = answer.limits().unwrap_or_else(|| panic!("{row:?}: {:?}", answer.no_figure()));
    criterion.map_or(limits.allowable(), |criterion| limits.load(criterion))
}

fn uniform_loads(rows: &[Row]) -> (String, bool) {
    let mut wrong = Vec::new();
    for row in rows {
        let part = row["criterion"].strip_prefix("deflection L/");
        let options = SpanOptions::new().deflection(part.map_or(360.0, |part| part.parse().unwrap()));
        let criterion = match row["criterion"].as_str() {
            "bending" => Criterion::Bending,
            "shear" => Criterion::Shear,
            _ => Criterion::Deflection,
        };
        let panel = StructuralPanel::published(row["panel"].as_str(), row["rating"].as_str());
        let spans = row["spans"].parse().unwrap();
        let psf = load(&panel, row, spans, &options, Some(criterion));
        if ((psf + 0.5).floor() - number(row, "value")).abs() > 0.0 {
            wrong.push(format!("{row:?}: {psf}"));
        }
    }
    let text =
        format!("uniform loads: {} of {} cells exact, halves up {wrong:#?}", rows.len() - wrong.len(), rows.len());
    (text, wrong.is_empty() && !rows.is_empty())
}

fn capacities(rows: &[Row]) -> (String, bool) {
    let (mut equal, mut outside) = (0, Vec::new());
    for row in rows {
        let series = panel_series().iter().find(|series| series.name == row["panel"]).unwrap();
        let found = series.rows.iter().find(|found| found.rating == row["rating"]).unwrap();
        let side = if axis(row) == Axis::Across { Some(found.across) } else { found.along };
        let capacity = side.unwrap().capacity;
        let ours = match row["quantity"].as_str() {
            "EI" => capacity.ei,
            "MR" => capacity.mr,
            _ => capacity.fs,
        };
        let declared =
            (series.table, found.rating) == (OWN_FIGURE.0, OWN_FIGURE.1) && (ours - OWN_FIGURE.2).abs() < 1e-9;
        if (ours - number(row, "value")).abs() < 1e-6 {
            equal += 1;
        } else if !(declared && ours >= number(row, "fit_low") && ours < number(row, "fit_high")) {
            outside.push(format!("{row:?}: {ours}"));
        }
    }
    let text =
        format!("capacities: {equal} of {} equal, the other 44.9 for 45 within its fit {outside:#?}", rows.len());
    (text, outside.is_empty() && equal + 1 == rows.len())
}

fn grade_factors(rows: &[Row]) -> (String, bool) {
    let (mut equal, mut all) = (0, 0);
    for row in rows.iter().filter(|row| row["group"] == "sanded plywood C_C") {
        all += 1;
        let words: Vec<&str> = row["name"].split("; ").collect();
        let group = match words[0] {
            "species group 1" => SpeciesGroup::Group1,
            "species group 2" => SpeciesGroup::Group2,
            "species group 3" => SpeciesGroup::Group3,
            "species group 4" => SpeciesGroup::Group4,
            _ => SpeciesGroup::StructuralI,
        };
        let grade = match words[1] {
            "A-A or A-C" => FaceGrade::Sanded,
            "Marine" => FaceGrade::Marine,
            _ => FaceGrade::Other,
        };
        let found = sanded_factors(group, grade, words[2].contains("along"));
        let ours = found.map(|factors| match words.get(3) {
            Some(&"stiffness") => factors.stiffness,
            Some(&"bending") => factors.bending,
            _ => factors.shear,
        });
        let same = match (ours, row["value"].parse::<f64>().ok()) {
            (Some(ours), Some(printed)) => (ours - printed).abs() < 1e-9,
            (None, None) => true,
            _ => false,
        };
        equal += usize::from(same);
    }
    (format!("factors of group and grade: {equal} of {all} equal"), equal == all && all > 0)
}

/// Sections by panel, thickness, axis and quantity.
fn sections(rows: &[Row]) -> BTreeMap<[String; 4], f64> {
    let key = |row: &Row| ["panel", "thickness", "strength_axis_vs_supports", "quantity"].map(|name| row[name].clone());
    rows.iter().map(|row| (key(row), number(row, "value"))).collect()
}

fn form_pressures(sections_rows: &[Row], rows: &[Row]) -> (String, bool) {
    let sections = sections(sections_rows);
    let (mut worst, mut at) = (0.0_f64, String::new());
    for row in rows {
        let of = |axis: &str, quantity: &str, thickness: &str| {
            sections[&[row["panel"].clone(), thickness.into(), axis.into(), quantity.into()]]
        };
        let stress = |quantity| of("either", quantity, "any");
        let stresses = Stresses {
            e: stress("E for bending deflection"),
            e_shear: stress("E for shear deflection"),
            fb: stress("Fb"),
            fs: stress("Fs rolling"),
        };
        let side = |quantity| of(&row["strength_axis_vs_supports"], quantity, &row["thickness"]);
        let section = Section { i: side("I"), ks: side("KS"), ib_q: side("Ib/Q") };
        let panel = SectionPanel::new(inches(&row["thickness"]), stresses);
        let panel = if axis(row) == Axis::Across { panel.across(section) } else { panel.along(section) };
        let options = SpanOptions::new().deflection(number(row, "deflection_limit_L_over")).support(inches("1-1/2"));
        let psf = load(&StructuralPanel::Sections(panel), row, 3, &options, None);
        let off = (psf / number(row, "value") - 1.0).abs();
        if off > worst {
            (worst, at) = (off, format!("{} {} at {}", row["thickness"], axis(row), row["support_spacing_in"]));
        }
    }
    let text = format!("form pressures: worst of {} is {:.2} % ({at}); promised 2.5 %", rows.len(), worst * 100.0);
    (text, worst < 0.025 && !rows.is_empty())
}

/// No promise: published effective sections are the least over permitted constructions.
fn even_plies(rows: &[Row]) -> (String, bool) {
    let stresses = Stresses { e: 1.0, e_shear: 1.0, fb: 1.0, fs: 1.0 };
    let mut range: BTreeMap<String, (f64, f64)> = BTreeMap::new();
    for row in
        rows.iter().filter(|row| row["panel"].ends_with("Class I") && row["strength_axis_vs_supports"] != "either")
    {
        let section = Layup::even(5, inches(&row["thickness"]), stresses).section(axis(row)).unwrap();
        let ours = match row["quantity"].as_str() {
            "I" => section.i,
            "KS" => section.ks,
            _ => section.ib_q,
        };
        let ratio = ours / number(row, "value");
        let ends = range.entry(format!("{} {}", row["quantity"], axis(row))).or_insert((ratio, ratio));
        *ends = (ends.0.min(ratio), ends.1.max(ratio));
    }
    let ranges: Vec<String> = range.iter().map(|(name, (low, high))| format!("{name} {low:.2} to {high:.2}")).collect();
    (format!("five even plies over published sections, Class I: {}", ranges.join(", ")), !range.is_empty())
}

fn screws(rows: &[Row]) -> (String, bool) {
    let (mut over, mut shear, mut tests) = (0.0_f64, 0.0_f64, 0);
    for row in rows {
        let screw = Screw::published(&row["screw"]).unwrap();
        let metal = |column: &str| Metal::published(&row["alloy"], inches(&row[column])).unwrap();
        let printed = number(row, "value");
        if row["quantity"].starts_with("pull-over") {
            let held = pull_over(&screw, &metal("t_under_head_in")).unwrap();
            over = over.max((held.nominal - printed).abs());
        } else if row["quantity"].starts_with("shear") {
            let edge = screw.diameter.part(3, 2);
            let of = |column| bearing(&screw, &metal(column), edge).unwrap().unwrap().allowable;
            shear = shear.max((of("t_under_head_in").min(of("t_holding_in")) - printed).abs());
        } else {
            let t = inches(&row["t_holding_in"]).as_inches();
            let same = |test: &&deck_core::published::PullOutTest| {
                test.screw == row["screw"] && test.alloy == row["alloy"] && (test.thickness - t).abs() < 1e-6
            };
            tests +=
                usize::from(PULL_OUT_TESTS.iter().find(same).is_some_and(|test| (test.pounds - printed).abs() < 1e-9));
        }
    }
    let listed = rows.iter().filter(|row| row["quantity"].starts_with("pull-out")).count();
    let text = format!(
        "screws: pull-over off by {over:.2} lb at most (promised 2.5), shear by {shear:.2} (promised 6), {tests} of {listed} tests listed"
    );
    (text, over <= 2.5 && shear <= 6.0 && tests == listed && listed > 0)
}

/// The rows that a second agency printed, which later editions lowered in three stiffnesses.
fn agency(rows: &[Row]) -> (String, bool) {
    let (mut equal, mut lowered, mut compared) = (0, 0, 0);
    for row in rows.iter().filter(|row| row["status"] == "VERIFIED") {
        let name = if row["rating"].ends_with("oc") { "OSB single-floor" } else { "OSB rated sheathing" };
        let series = panel_series().iter().find(|series| series.name == name).unwrap();
        let Some(found) = series.rows.iter().find(|found| found.rating == row["rating"]) else { continue };
        let side = if axis(row) == Axis::Across { Some(found.across) } else { found.along };
        let capacity = side.unwrap().capacity;
        let ours = if row["quantity"] == "EI" { capacity.ei } else { capacity.mr };
        compared += 1;
        equal += usize::from((ours - number(row, "value")).abs() < 1e-6);
        lowered += usize::from(ours < number(row, "value") - 1e-6);
    }
    let text =
        format!("second agency, 2008: {equal} of {compared} capacities equal, {lowered} lowered in later editions");
    (text, equal + lowered == compared && lowered == 3)
}
