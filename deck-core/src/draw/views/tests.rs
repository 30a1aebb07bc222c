use crate::draw::figure::{Clash, Figure, Shape, TextSize};
use crate::draw::{figures, sheet_frame, svg, views};
use crate::error::Kind;
use crate::job::{Job, Paper};
use crate::plan::{Plan, plan};
use std::sync::LazyLock;

const UNEVEN: &str = include_str!("../../../../examples/jobs/uneven-22.json");
const NARROW: &str = include_str!("../../../../examples/jobs/narrow-28.json");
const PLAIN: &str = include_str!("../../../../examples/jobs/plain-20.json");
const STACK: &str = include_str!("../../../../examples/jobs/stack-24.json");
const RACKED: &str = include_str!("../../../../examples/jobs/racked-20.json");
const MENDED: &str = include_str!("../../../../examples/jobs/mended-20.json");
const MISSED: &str = include_str!("../../../../examples/jobs/missed-member-20.json");
const LIDS: &str = include_str!("../../../../examples/jobs/lids-28.json");
const PATCH: &str = include_str!("../../../../examples/jobs/patch-20.json");
const HOLES: &str = include_str!("../../../../examples/jobs/old-holes-20.json");

/// Trims on every edge, the good face down, openings, sixteenths that must be rounded, a name longer than its place.
const TRIMMED: &str = r#"{
    "schema": 1, "name": "A boat whose name is longer than the foot of a sheet has room for, from Häfen & Söhne <Marina>",
    "unit": "in",
    "deck": {"length": "28 ft", "beam": 102, "bow": {"radius": 12}, "notch": {"width": 30, "depth": 24, "inside_radius": 3}},
    "frame": {"measured_to": "centre", "flange": "1-3/4", "wall": "1/8", "regular": {"first": 0, "last": 336, "spacing": 16}},
    "openings": [
        {"name": "fore locker", "rectangle": {"x": 50, "y": 26, "depth": 24, "width": 48, "corner_radius": 2}, "framed": true},
        {"name": "sender", "round": {"x": 210, "y": 30, "diameter": 6}}
    ],
    "stock": [{"label": "3/4 ply", "length": 103, "width": 49, "thickness": "3/4", "price": 110}],
    "gap": "1/16", "saw": {"kerf": "1/8", "trim": "1/4", "keep": [24, 6], "face": "down"},
    "span": {"panel": {"series": "sanded plywood Group 1 A-A/A-C", "rating": "3/4"}}
}"#;

const METRIC: &str = r#"{
    "schema": 1, "name": "Möwe", "unit": "mm",
    "deck": {"length": 6000, "beam": 2440, "bow": {"clip": 200}},
    "frame": {"measured_to": "centre", "flange": 50, "wall": 3, "regular": {"first": 0, "last": 6000, "spacing": 400}},
    "openings": [{"name": "Tank", "round": {"x": 1000, "y": 600, "diameter": 120}}],
    "stock": [{"label": "Birke 18", "length": 2500, "width": 1250, "thickness": 18, "price": 70}],
    "gap": 2, "saw": {"kerf": 3, "keep": [300, 20]}, "shop": {"paper": "a4"},
    "span": {
        "panel": {"across": {"ei": 300000, "mr": 700, "fs": 250}, "along": {"ei": 110000, "mr": 400, "fs": 160}},
        "load": {"kpa": 4}, "points": [{"name": "Kiste voller Flaschen", "length": 400, "width": 300, "force": {"newtons": 9000}}],
        "fasteners": {"alloy": "6061-T6 extrusion", "head": 12, "lift": {"newtons": 90000}}
    }
}"#;

/// A deck from one narrow board, in feet, and sheets without a strength axis.
const DINGHY: &str = r#"{
    "schema": 1, "name": "Dinghy", "unit": "in",
    "deck": {"length": "90-7/32", "beam": "46-5/16"},
    "frame": {"measured_to": "centre", "flange": 2, "wall": "1/8",
        "members": [{"station": 1}, {"station": "14-1/3"}, {"station": "31-2/3"}, {"station": 60}, {"station": 89}]},
    "stock": [{"label": "bare", "length": 48, "width": 96, "grain": "none", "thickness": "3/4"}],
    "gap": "1/8", "saw": {"kerf": "1/8"}, "shop": {"feet": true},
    "span": {"panel": {"series": "sanded plywood Group 1 A-A/A-C", "rating": "3/4"}, "load": {"preset": "assembly"}}
}"#;

/// Two parts to a sheet, offcuts, and a notch that leaves narrow arms.
const ARMS: &str = r#"{
    "schema": 1, "name": "Arms", "unit": "in",
    "deck": {"length": "12 ft", "beam": 46, "notch": {"width": 40, "depth": 30, "inside_radius": 2}},
    "frame": {"measured_to": "centre", "flange": 2, "wall": "1/8", "regular": {"first": 0, "last": 144, "spacing": 12}},
    "stock": [{"label": "3/4 ply", "length": 96, "width": 48, "thickness": "3/4", "price": 60},
        {"label": "rack", "length": 60, "width": 24, "thickness": "3/4", "offcut": true, "count": 1}],
    "gap": "1/8", "saw": {"kerf": "1/8", "keep": [12, 6]}
}"#;

const REFIT: &str = include_str!("../../../../examples/jobs/refit-24.json");
const REFIT_METRIC: &str = include_str!("../../../../tests/golden/jobs/refit.json");

const JOBS: [&str; 16] = [
    UNEVEN,
    NARROW,
    PLAIN,
    MISSED,
    LIDS,
    HOLES,
    PATCH,
    TRIMMED,
    METRIC,
    DINGHY,
    ARMS,
    STACK,
    RACKED,
    MENDED,
    REFIT,
    REFIT_METRIC,
];

fn planned(job: &str) -> Plan {
    plan(&Job::from_json(job).unwrap()).unwrap()
}

/// Every sheet of every job on both papers, drawn once.
static SHEETS: LazyLock<Vec<Figure>> = LazyLock::new(|| {
    let plans = JOBS.map(planned);
    let papers = [Paper::Letter, Paper::A4];
    plans.iter().flat_map(|plan| papers.map(|paper| figures(plan, paper))).flatten().collect()
});

fn each_sheet(check: impl Fn(&Figure)) {
    SHEETS.iter().for_each(check);
}

#[test]
fn nothing_overlaps_on_any_sheet() {
    each_sheet(|figure| assert_eq!(figure.overlaps(), Vec::<Clash>::new(), "{}", figure.title));
}

#[test]
fn words_are_large_enough_and_off_the_margin() {
    each_sheet(|figure| {
        let margin = sheet_frame::MARGIN - 1000;
        let inner = crate::draw::figure::Rect::new(0, 0, figure.width, figure.height).inset(margin);
        for text in &figure.texts {
            assert!(text.size >= TextSize::LEAST, "{}: {}", figure.title, text.words);
            assert!(inner.holds(text.bounds()), "{}: {}", figure.title, text.words);
        }
    });
}

#[test]
fn lines_stay_on_the_sheet() {
    each_sheet(|figure| {
        let sheet = crate::draw::figure::Rect::new(0, 0, figure.width, figure.height);
        for shape in &figure.shapes {
            let (Shape::Stroke(path, _) | Shape::Fill(path, _)) = shape;
            assert!(path.bounds().is_none_or(|bounds| sheet.holds(bounds)), "{}", figure.title);
        }
    });
}

#[test]
fn each_view_is_a_well_formed_drawing() {
    for job in JOBS {
        let plan = planned(job);
        let names = views(&plan);
        assert_eq!(names.first().map(String::as_str), Some("cover"));
        assert!(names.iter().any(|name| name == "plan"));
        let written: Vec<String> = figures(&plan, plan.basis.paper).iter().map(svg::write).collect();
        assert_eq!(written.len(), names.len());
        for drawing in &written {
            assert_well_formed(drawing);
        }
        let last = names.len() - 1;
        assert_eq!(svg(&plan, &names[last]).unwrap(), written[last]);
    }
}

/// Tags are closed in order, attributes are quoted, and nothing that XML reserves stands bare.
fn assert_well_formed(xml: &str) {
    let mut open: Vec<&str> = Vec::new();
    let mut rest = xml;
    while let Some(start) = rest.find('<') {
        let (text, tag) = rest.split_at(start);
        assert!(!text.contains('>') && !bare_ampersand(text), "{text}");
        let end = tag.find('>').unwrap();
        let inside = &tag[1..end];
        rest = &tag[end + 1..];
        assert!(!inside.contains('<') && !bare_ampersand(inside) && inside.matches('"').count() % 2 == 0, "{inside}");
        let name = inside.trim_start_matches('/').split([' ', '/']).next().unwrap();
        if inside.starts_with('/') {
            assert_eq!(open.pop(), Some(name));
        } else if !inside.ends_with('/') {
            open.push(name);
        }
    }
    assert!(open.is_empty(), "{open:?}");
}

fn bare_ampersand(text: &str) -> bool {
    let named = ["&amp;", "&lt;", "&gt;", "&quot;", "&#39;"];
    text.match_indices('&').any(|(at, _)| !named.iter().any(|name| text[at..].starts_with(name)))
}

#[test]
fn an_unknown_view_is_told_which_there_are() {
    let error = svg(&planned(PLAIN), "panel-9").unwrap_err();
    assert_eq!(error.first().kind, Kind::UnknownView);
    assert!(error.to_string().contains("saw-1"), "{error}");
}

#[test]
fn every_panel_is_drawn_sawn_and_fastened() {
    for job in [UNEVEN, NARROW, PLAIN, TRIMMED, METRIC, ARMS] {
        let plan = planned(job);
        let sheets = figures(&plan, Paper::Letter);
        let says = |title: &str, words: &str| {
            let told = |figure: &&Figure| figure.title.contains(title);
            sheets.iter().filter(told).any(|figure| figure.texts.iter().any(|text| has_word(&text.words, words)))
        };
        for panel in &plan.panels {
            for title in [": Plan", ": Panel", ": Saw sheet", ": Fastening"] {
                assert!(says(title, &panel.label), "panel {} on {title} of {}", panel.label, plan.job.name);
            }
        }
    }
}

fn has_word(text: &str, word: &str) -> bool {
    text.split([' ', '·', ',']).any(|part| part == word)
}

#[test]
fn every_cut_and_every_fastener_is_on_paper() {
    for job in JOBS {
        let plan = planned(job);
        let sheets = figures(&plan, plan.basis.paper);
        let texts = sheets.iter().flat_map(|figure| &figure.texts);
        let words: Vec<String> = texts.map(|text| text.words.replace('\u{a0}', " ")).collect();
        let notation = plan.basis.notation();
        for row in plan.fasteners.iter().flat_map(|fastening| &fastening.rows) {
            let all = row.positions.iter().map(|&y| notation.text(y));
            for figure in all.chain([notation.text(row.station)]) {
                assert!(words.iter().any(|text| text.contains(&figure)), "{figure} of {}", plan.job.name);
            }
        }
        for caution in &plan.cautions {
            let start = caution.text.split(' ').next().unwrap();
            assert!(words.iter().any(|text| text.starts_with(start)), "{}", caution.text);
        }
    }
}

#[test]
fn the_sheet_on_strength_has_every_check_its_load_and_its_caution() {
    for job in [UNEVEN, METRIC, DINGHY] {
        let plan = planned(job);
        let sheets = figures(&plan, Paper::Letter);
        let strength = sheets.iter().filter(|figure| figure.title.contains(": Strength"));
        let words: Vec<String> = strength.flat_map(|figure| &figure.texts).map(|text| text.words.clone()).collect();
        let all = words.join(" ").replace('\u{a0}', " ");
        assert!(all.contains("no rule was applied"), "{}", plan.job.name);
        assert!(all.contains(&plan.span.caution[..40]), "{}", plan.job.name);
        for panel in &plan.span.panels {
            let ratios = panel.utilisations();
            assert!(ratios.iter().all(|(_, ratio)| words.contains(&format!("{ratio:.2}"))), "{ratios:?}");
        }
        assert!(!all.to_lowercase().contains(" safe"), "{all}");
    }
    assert!(!views(&planned(PLAIN)).contains(&"span".to_owned()));
}

#[test]
fn a_deck_without_a_layout_says_why() {
    let plan = planned(MISSED);
    assert_eq!(views(&plan).last().map(String::as_str), Some("plan"));
    let sheets = figures(&plan, Paper::Letter);
    let words = |figure: &Figure| figure.texts.iter().map(|text| text.words.clone()).collect::<Vec<_>>().join(" ");
    let reason = plan.no_layout.as_ref().unwrap().reason.clone();
    assert!(words(&sheets[0]).contains(&reason), "{}", words(&sheets[0]));
    assert!(words(sheets.last().unwrap()).contains("No layout"));
}

#[test]
fn the_sheets_on_the_rest_of_the_job_say_what_the_plan_holds() {
    for job in [REFIT, REFIT_METRIC] {
        let plan = planned(job);
        let sheets = figures(&plan, Paper::Letter);
        let all = |title: &str| {
            let told = sheets.iter().filter(|figure| figure.title.contains(title));
            let words: Vec<String> = told.flat_map(|figure| &figure.texts).map(|text| text.words.clone()).collect();
            words.join(" ").replace('\u{a0}', " ")
        };
        let quote = plan.quote.as_ref().unwrap();
        let page = all(": Quote");
        for line in quote.lines.iter().filter_map(|line| line.amount).chain([quote.total]) {
            assert!(page.contains(&line.to_string()), "{line} of {}", plan.job.name);
        }
        let strip = plan.strip_out.as_ref().unwrap();
        let page = all(": Strip-out");
        for cut in &strip.covering.cuts {
            assert!(page.contains(&plan.basis.notation().text(*cut)), "{cut}");
        }
        assert!(page.contains("capacity label is not recomputed"), "{page}");
        let laid = plan.covering.as_ref().unwrap().laid.as_ref().unwrap();
        let page = all(": Covering");
        for length in laid.seams.iter().map(|seam| seam.at).chain([laid.drop, laid.roll_width]) {
            assert!(page.contains(&plan.basis.notation().text(length)), "{length}");
        }
        let page = all(": Openings");
        for opening in &plan.openings {
            assert!(page.contains(&opening.name), "{}", opening.name);
        }
        for words in ["safe ", "safely", "safe."] {
            assert!(!all("").to_lowercase().contains(words), "{words}");
        }
    }
    assert!(
        !views(&planned(PLAIN))
            .iter()
            .any(|view| ["quote", "covering", "strip-out", "openings"].contains(&view.as_str()))
    );
}

#[cfg(feature = "packet")]
#[test]
fn a_packet_has_the_same_bytes_twice() {
    let plan = planned(UNEVEN);
    for paper in [Paper::Letter, Paper::A4] {
        let first = crate::draw::packet(&plan, paper).unwrap();
        assert_eq!(first, crate::draw::packet(&planned(UNEVEN), paper).unwrap());
    }
}
