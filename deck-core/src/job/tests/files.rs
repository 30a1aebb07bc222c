//! The jobs in `examples/jobs`.

use crate::frame::CrossMember;
use crate::job::{Checked, Job};
use crate::length::{Length, Unit};
use std::path::{Path, PathBuf};

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../examples/jobs")
}

fn read(name: &str) -> (Job, Checked) {
    let text = std::fs::read_to_string(folder().join(name)).unwrap();
    let job = Job::from_json(&text).unwrap_or_else(|error| panic!("{name}: {error}"));
    let checked = job.check().unwrap();
    (job, checked)
}

fn bays(checked: &Checked) -> Vec<Length> {
    checked.frame.members().windows(2).map(|pair| pair[1].centre() - pair[0].centre()).collect()
}

#[test]
fn every_example_reads_writes_and_reads_again() {
    let mut names: Vec<String> =
        std::fs::read_dir(folder()).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect();
    names.retain(|name| Path::new(name).extension().is_some_and(|suffix| suffix == "json"));
    names.sort();
    assert!(names.len() >= 4, "{names:?}");
    for name in names {
        let (job, _) = read(&name);
        assert_eq!(Job::from_json(&job.to_json()).unwrap(), job, "{name}");
        assert!(job.rounded().is_empty(), "{name}");
    }
}

#[test]
fn the_examples_show_what_they_are_named_for() {
    let (_, plain) = read("plain-20.json");
    assert_eq!(plain.frame.members().len(), 11);
    let (_, uneven) = read("uneven-22.json");
    assert_eq!(uneven.frame.members().len(), 13);
    assert!(bays(&uneven).iter().all(|bay| *bay <= Length::inches(24)));
    // Nothing that a seam must keep clear of lies over all the flanges within a sheet's reach of the bow.
    let clear = |station: Length| {
        uneven
            .openings
            .iter()
            .map(|opening| opening.path().bounds())
            .all(|hole| station < hole.fore || hole.aft < station)
            && uneven.keep_clear.iter().all(|zone| station < zone.from || zone.to < station)
    };
    let stations: Vec<Length> =
        uneven.frame.members().iter().map(CrossMember::centre).filter(|centre| clear(*centre)).collect();
    let ends = [Length::ZERO].into_iter().chain(stations).chain([uneven.outline.length()]).collect::<Vec<_>>();
    assert!(ends.windows(2).all(|pair| pair[1] - pair[0] <= Length::inches(48)), "{ends:?}");
    let (_, narrow) = read("narrow-28.json");
    let flange = narrow.frame.members()[0].flange();
    assert_eq!(narrow.settings.rules.least_flange() - flange, Length::inch_fraction(3, 8));
    let (_, missed) = read("missed-member-20.json");
    assert_eq!(bays(&missed).into_iter().max(), Some(Length::inches(50)));
}

#[test]
fn a_boat_in_inches_is_the_same_boat_in_millimetres() {
    let (mut job, inches) = read("uneven-22.json");
    job.unit = Unit::Millimetre;
    let text = job.to_json();
    assert!(text.contains("6858"), "22' 6\" is 6858 mm: {text}");
    let metric = Job::from_json(&text).unwrap().check().unwrap();
    assert_eq!((&metric.outline, &metric.frame, &metric.openings), (&inches.outline, &inches.frame, &inches.openings));
    assert_eq!(
        (&metric.settings.rules, &metric.settings.schedule),
        (&inches.settings.rules, &inches.settings.schedule)
    );
}
