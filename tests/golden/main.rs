//! Plans and messages of small boats that each show one thing, against files that somebody has looked at.
//!
//! They are our own output: they guard against change and not against being wrong. `DECK_RENEW=1` writes them anew.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "a test that cannot go on has failed")]

use deck_core::job::{
    BeamCall, FastenersCall, FillCall, NestCall, PanelsCall, PlateCall, SeamsCall, SpanLimitsCall, SurveyCall,
};
use deck_core::{Job, Plan, draw, plan};
use std::fmt::Write;
use std::path::{Path, PathBuf};

mod steps;

/// Set to 1, the expected files are written and not compared.
const RENEW: &str = "DECK_RENEW";
/// Lines that are shown around a difference.
const CONTEXT: usize = 3;
/// Differences that are shown of one file.
const SHOWN: usize = 8;

/// The boats, and what each shows.
const BOATS: [(&str, &str); 13] = [
    ("clipped_bow", "both bow corners cut off; a seam that a zone pushes aside"),
    ("odd_end_bay", "the last bay is short, and the last board narrow; strength by the tables, the weak way"),
    ("narrow_flange", "two rows of screws do not fit the flanges at the seams"),
    ("motor_notch", "a notch that splits the last board; rows staggered; openings over members"),
    ("metric", "the same in millimetres, sheets and offcuts priced; strength by the user's own figures, screws"),
    ("lids", "openings against their clearances: a framed lid, one to move, one without a place, a slot"),
    ("old_holes", "rows that give way to old holes; a rail and a seat bolted down again"),
    ("patched", "part of the deck stays: patches on members and blocking"),
    ("wide_bay", "no layout, and why"),
    ("sheet_too_short", "no sheet reaches across: arrangements compared, the first of them built"),
    ("refit", "covering with a seam, strip-out without a count, quote with things that have no price, in millimetres"),
    ("faults_inch", "everything that is wrong with a job, in the order of the file"),
    ("faults_metric", "the same for a shop that reads millimetres"),
];

fn folder(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("golden").join(name)
}

/// The boats that are drawn, and in which views: one of each sort, to keep the folder small.
const DRAWN: [(&str, &[&str]); 10] = [
    ("clipped_bow", &["plan", "panel-1", "fastening-1"]),
    ("motor_notch", &["saw-1"]),
    ("lids", &["cover", "plan"]),
    ("old_holes", &["bolts", "fastening-1"]),
    ("patched", &["plan", "patch"]),
    ("wide_bay", &["plan"]),
    ("odd_end_bay", &["span"]),
    ("metric", &["span"]),
    ("sheet_too_short", &["arrangements", "plan", "fastening-1"]),
    ("refit", &["openings", "covering", "strip-out", "quote"]),
];

/// What comes of a job: the name of each file, and its text.
fn outputs(name: &str, job: &str) -> Vec<(String, String)> {
    let plan = match Job::from_json(job) {
        Err(error) => return vec![(format!("{name}.txt"), format!("{error}\n"))],
        Ok(job) => plan(&job).unwrap(),
    };
    let views = DRAWN.iter().filter(|(boat, _)| *boat == name).flat_map(|(_, views)| *views);
    let drawings = views.map(|view| (format!("{name}.{view}.svg"), draw::svg(&plan, view).unwrap()));
    std::iter::once((format!("{name}.json"), format!("{}\n", plan.to_json()))).chain(drawings).collect()
}

#[test]
fn demo_plans_are_read_back_byte_for_byte() {
    let jobs = Path::new(env!("CARGO_MANIFEST_DIR")).join("../examples/jobs");
    let paths: Vec<PathBuf> = std::fs::read_dir(jobs).unwrap().map(|entry| entry.unwrap().path()).collect();
    assert!(paths.len() >= 4);
    for path in paths {
        let json = plan(&Job::from_json(&std::fs::read_to_string(&path).unwrap()).unwrap()).unwrap().to_json();
        assert_eq!(Plan::from_json(&json).unwrap().to_json(), json, "{}", path.display());
    }
}

#[test]
fn the_readme_shows_the_demo_as_it_is_drawn() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let job = std::fs::read_to_string(root.join("examples/jobs/uneven-22.json")).unwrap();
    let found = draw::svg(&plan(&Job::from_json(&job).unwrap()).unwrap(), "plan").unwrap();
    let path = root.join("examples/pictures/plan.svg");
    if std::env::var(RENEW).is_ok_and(|value| value == "1") {
        std::fs::write(&path, &found).unwrap();
    }
    assert!(std::fs::read_to_string(&path).unwrap() == found, "{RENEW}=1 draws it anew.");
}

/// The lines that differ, with some around them, as a person reads a difference.
fn difference(expected: &str, found: &str) -> String {
    let (expected, found): (Vec<&str>, Vec<&str>) = (expected.lines().collect(), found.lines().collect());
    let ends = |step: &dyn Fn(usize) -> bool| (0..expected.len().min(found.len())).take_while(|at| step(*at)).count();
    let alike = ends(&|at| expected[at] == found[at]);
    let tail = ends(&|at| expected[expected.len() - 1 - at] == found[found.len() - 1 - at]);
    let tail = tail.min(expected.len() - alike).min(found.len() - alike);
    let mut text = String::new();
    let mut say = |sign: char, lines: &[&str]| {
        for line in lines.iter().take(SHOWN) {
            writeln!(text, "  {sign} {line}").unwrap();
        }
        if lines.len() > SHOWN {
            writeln!(text, "  {sign} … and {} lines more", lines.len() - SHOWN).unwrap();
        }
    };
    say(' ', &expected[alike.saturating_sub(CONTEXT)..alike]);
    say('-', &expected[alike..expected.len() - tail]);
    say('+', &found[alike..found.len() - tail]);
    format!("from line {}:\n{text}", alike + 1)
}

#[test]
fn boats_come_out_as_they_were_looked_at() {
    let renew = std::env::var(RENEW).is_ok_and(|value| value == "1");
    let mut wrong = Vec::new();
    for (name, shows) in BOATS {
        let job = std::fs::read_to_string(folder("jobs").join(format!("{name}.json"))).unwrap();
        for (file, found) in outputs(name, &job) {
            let path = folder("expected").join(&file);
            if renew {
                std::fs::write(&path, &found).unwrap();
                continue;
            }
            let expected = std::fs::read_to_string(&path).unwrap_or_default();
            if expected != found {
                wrong.push(format!("{file} ({shows}), {}", difference(&expected, &found)));
            }
        }
    }
    assert!(wrong.is_empty(), "{}\n{RENEW}=1 writes them anew.", wrong.join("\n"));
}

/// Requests of the calls that need no boat: from C and from Python the same files come.
#[test]
fn calls_are_answered_as_they_were_looked_at() {
    let request = |name: &str| std::fs::read_to_string(folder("calls").join(format!("{name}.json"))).unwrap();
    let nest = NestCall::from_json(&request("nest")).unwrap();
    let fill = FillCall::from_json(&request("fill")).unwrap();
    let limits = SpanLimitsCall::from_json(&request("span_limits")).unwrap();
    let answers = [
        ("nest", nest.nest().unwrap().to_json(nest.unit)), //
        ("fill", fill.fill().unwrap().to_json(fill.unit)),
        ("span_limits", limits.span_limits().unwrap().to_json(limits.unit)),
        ("beam", BeamCall::from_json(&request("beam")).unwrap().beam().unwrap().to_json()),
        ("seams", format!("{:#}", SeamsCall::from_json(&request("seams")).unwrap().document().unwrap())),
        ("panels", format!("{:#}", PanelsCall::from_json(&request("panels")).unwrap().document().unwrap())),
        ("fasteners", format!("{:#}", FastenersCall::from_json(&request("fasteners")).unwrap().document().unwrap())),
        ("survey", format!("{:#}", SurveyCall::from_json(&request("survey")).unwrap().document().unwrap())),
        ("plate", PlateCall::from_json(&request("plate")).unwrap().plate().unwrap().to_json()),
    ];
    for (name, answer) in answers {
        let (found, path) = (format!("{answer}\n"), folder("expected").join(format!("{name}.call.json")));
        if std::env::var(RENEW).is_ok_and(|value| value == "1") {
            std::fs::write(&path, &found).unwrap();
        }
        let expected = std::fs::read_to_string(&path).unwrap_or_default();
        assert!(expected == found, "{}\n{RENEW}=1 writes it anew.", difference(&expected, &found));
    }
}

#[test]
fn every_job_is_listed() {
    let mut files: Vec<String> = std::fs::read_dir(folder("jobs"))
        .unwrap()
        .map(|file| file.unwrap().path().file_stem().unwrap().to_string_lossy().into_owned())
        .collect();
    files.sort();
    let mut listed: Vec<String> = BOATS.iter().map(|(name, _)| (*name).to_owned()).collect();
    listed.sort();
    assert_eq!(files, listed);
}

#[test]
fn differences_are_written_out() {
    let told = difference("a\nb\nc\nd\ne\n", "a\nb\nx\nd\ne\n");
    assert_eq!(told, "from line 3:\n    a\n    b\n  - c\n  + x\n");
    assert_eq!(difference("a\n", "a\nb\n"), "from line 2:\n    a\n  + b\n");
}
