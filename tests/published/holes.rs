//! Openings with lids, rows beside old holes, and fittings: decks worked by hand from the usual sizes (no publication).

use super::inches;
use deck_core::fittings::HoleRule;
use deck_core::openings::Rule;
use deck_core::plan::{OpeningPartKind, Plan};
use deck_core::takeoff::Item;
use deck_core::{Job, Length, plan};

const LIDS: &str = include_str!("../../examples/jobs/lids-28.json");
const HOLES: &str = include_str!("../../examples/jobs/old-holes-20.json");

/// D: 28 ft by 102, members every 16 from 0, notch 30 by 24, bow radii 12, two framed lids 24 by 48.
const D: &str = r#"{
    "schema": 1, "name": "D", "unit": "in",
    "deck": {"length": 336, "beam": 102, "bow": {"radius": 12}, "notch": {"width": 30, "depth": 24}},
    "frame": {"measured_to": "centre", "flange": 2, "wall": "1/8", "regular": {"first": 0, "last": 336, "spacing": 16}},
    "openings": [
        {"name": "fore", "rectangle": {"x": 60, "y": 27, "depth": 24, "width": 48, "corner_radius": 2}, "framed": true},
        {"name": "aft", "rectangle": {"x": 204, "y": 27, "depth": 24, "width": 48, "corner_radius": 2}, "framed": true}
    ],
    "opening_rules": {},
    "stock": [{"label": "ply", "length": 102, "width": 48, "thickness": "3/4"}],
    "gap": 0, "fastening": {"edge_spacing": 8, "field_spacing": 8, "end_distance": 1}
}"#;

fn planned(job: &str) -> Plan {
    plan(&Job::from_json(job).unwrap()).unwrap()
}

/// D: seven full boards from seven sheets. A row has 14 screws (100 in 13 steps of at most 8), four rows a board: 392.
/// Four rows cross a lid: of the six screws in its 48-3/4 two move to its sides and four go. The row at the bow is 12 (the
/// radius takes 10-1/4 at each end), those at 320 and 336 are 12 in two halves of 36.
#[test]
fn d_framed_lids_bow_radii_and_a_notch() {
    let plan = planned(D);
    let layout = &plan.layouts[0];
    let seams: Vec<Length> = layout.seams.iter().map(|seam| seam.fore).collect();
    assert_eq!(seams, ["48", "96", "144", "192", "240", "288"].map(inches));
    assert_eq!((layout.boards.len(), layout.cost.ripped_boards, plan.proven), (7, 0, true));
    assert_eq!(plan.sheets.as_ref().unwrap().sheet_count, 7);
    let fastening = plan.fasteners.as_ref().unwrap();
    assert_eq!((fastening.rows.len(), fastening.count), (30, 392 - 4 * 4 - 2 - 2 - 2));
    let over: Vec<(usize, usize, usize, usize)> = fastening
        .rows
        .iter()
        .filter(|row| row.dropped > 0)
        .map(|row| (row.member, row.positions.len(), row.moved, row.dropped))
        .collect();
    assert_eq!(over, [5, 6, 14, 15].map(|member| (member, 10, 2, 4)));
    let checks = plan.opening_checks.as_ref().unwrap();
    assert!(checks.openings.iter().all(|opening| opening.holds && opening.suggestion.is_none()));
    assert_eq!(checks.same_seams, None);
    let seam = |index: usize| checks.openings[index].clearances.iter().find(|found| found.rule == Rule::Seam).unwrap();
    assert_eq!((seam(0).distance, seam(1).distance), (inches("12"), inches("12")));
    let crossed: Vec<&str> = plan.cautions.iter().map(|caution| caution.id.as_str()).collect();
    assert!(crossed.contains(&"opening-over-member") && !crossed.contains(&"opening-near-flange"));
    // 336 by 102, less the corners (2 · 144 (1 − π/4)), the notch, and the lids with their corners (4 · (1 − π/4) each).
    let corner = 1.0 - std::f64::consts::FRAC_PI_4;
    let area = 336.0 * 102.0 - 288.0 * corner - 720.0 - 2.0 * (1152.0 - 16.0 * corner);
    let boards: f64 = plan.panels.iter().map(|panel| panel.area.number(deck_core::Unit::Inch)).sum();
    assert!((boards - area).abs() < 0.001, "{boards} for {area}");
}

/// The demo: a lid of 47-3/4 by 23-3/4 in its opening, one of 50 by 26 in two layers over the other, four strips of 3 under
/// each: two of 54, and of each side of 24 the 14 between the flanges at 64 and 80; the 3 beyond them are no longer than wide. The sender is moved an
/// inch off the edge.
#[test]
fn lids_and_strips_are_sawn_with_the_boards() {
    let plan = planned(LIDS);
    let lids: Vec<(Length, Length, Length, u32)> = plan
        .opening_parts
        .iter()
        .filter(|part| part.kind == OpeningPartKind::Lid)
        .map(|part| (part.length, part.width, part.corner_radius, part.layers))
        .collect();
    let [length, width, radius] = ["47-3/4", "23-3/4", "1-7/8"].map(inches);
    assert_eq!(lids, [(length, width, radius, 1), (inches("50"), inches("26"), inches("3"), 2)]);
    let strips = |name: &str| {
        let own = plan.opening_parts.iter().filter(|part| part.kind == OpeningPartKind::Frame && part.opening == name);
        own.map(|part| (part.length, part.width)).collect::<Vec<_>>()
    };
    let sizes = ["54", "54", "14", "14"].map(|length| (inches(length), inches("3")));
    assert_eq!(strips("fore locker"), sizes);
    assert_eq!(strips("aft locker"), sizes);
    let nest = plan.sheets.as_ref().unwrap();
    let placed = |label: &str| {
        let all = nest.sheets.iter().flat_map(|sheet| &sheet.placements);
        all.filter(|placement| placement.part == label).count()
    };
    let counts =
        ["lid of fore locker", "lid of aft locker", "frame 4 of aft locker", "helm seat base", "step box side"];
    assert_eq!(counts.map(placed), [1, 2, 1, 2, 4]);
    assert!(nest.unplaced.is_empty());
    let checks = plan.opening_checks.as_ref().unwrap();
    let sender = &checks.openings[2];
    let least = sender.suggestion.unwrap();
    assert_eq!((sender.holds, least.aft, least.starboard), (false, Length::ZERO, inches("1")));
    assert_eq!(checks.same_seams, Some(true));
    // Bays of 14 clear less two on either side hold 10: twelve fit nowhere, unless they may lie nearer or be framed.
    let well = checks.openings[4].no_place.as_ref().unwrap();
    assert_eq!(well.rules, [Rule::Member, Rule::Flange]);
    let slot = plan.cautions.iter().find(|caution| caution.id == "slot-open-to-edge").unwrap();
    assert_eq!(slot.about, ["wiring at the starboard edge"]);
    // The slot is out of the sixth board's edge: 3 by 4, with two corners of radius 1.
    let six = &plan.panels[5];
    let corner = 1.0 - std::f64::consts::FRAC_PI_4;
    assert!((six.area.number(deck_core::Unit::Inch) - (48.0 * 102.0 - 12.0 + 2.0 * corner)).abs() < 0.001);
}

/// Rows of 13 at 7-5/6 with a limit of 8. On member 2 the fourth, at 24-1/2, goes 3/4 to port; the four after it follow by
/// 7/12, 5/12, 1/4 and 1/12, which is 2-1/12 in all, and no mirrored row does it: between the holes and the middle there is
/// only half an inch of slack. Holes at 5 and 91 are in nobody's way.
#[test]
fn a_row_gives_way_to_an_old_hole_by_the_least() {
    let plan = planned(HOLES);
    let rows = |member: usize| {
        let all = &plan.fasteners.as_ref().unwrap().rows;
        all.iter().filter(move |row| row.member == member).collect::<Vec<_>>()
    };
    let row = rows(2)[0];
    let told = row.around.unwrap();
    assert_eq!((told.moved, told.added, told.mirrored), (5, 0, false));
    assert!((told.shift - inches("2-1/12")).abs() <= Length::from_nanometres(8), "{}", told.shift);
    assert!((told.greatest_shift - inches("3/4")).abs() <= Length::from_nanometres(1), "{}", told.greatest_shift);
    assert_eq!(row.positions.len(), 13);
    assert!(!row.over_limit && row.greatest_gap <= inches("8"));
    assert_eq!(rows(4)[0].around, None);
    // Every fastener keeps three diameters of the larger: 3/4, and 15/16 of the 5/16 holes.
    for hole in &plan.old_holes {
        let clear = if hole.member == 8 { inches("15/16") } else { inches("3/4") };
        assert_eq!(hole.clear, clear);
        assert!(hole.nearest.unwrap() >= clear, "{hole:?}");
    }
}

/// The old datum lies 1/2 aft and 1/4 to port of the new one. Rail: foot 1/8, board 3/4, washer 1/16, nut 7/32: 1-5/32, so
/// 1-1/4; through a member 1/32 of tape and 1/8 of wall more: 1-5/16, so 1-1/2. Seat: 3/16 + 3/4 + 1/4 + 1/8 + 17/64 =
/// 1-37/64, so 1-3/4, on two plates.
#[test]
fn holes_of_rails_and_seats_come_to_the_new_panels_with_their_bolts() {
    let plan = planned(HOLES);
    let fittings = plan.fittings.as_ref().unwrap();
    let first = &fittings.holes[0];
    assert_eq!(first.panel.as_deref(), Some("1"));
    let sixteenths = |length: Length| (length.as_inches() * 16.0).round() / 16.0;
    assert_eq!((sixteenths(first.x), sixteenths(first.y)), (10.5, 2.75));
    let lengths: Vec<(usize, Option<Length>)> = fittings.bolts.iter().map(|line| (line.count, line.length)).collect();
    let sold = |text: &str| Some(inches(text));
    assert_eq!(lengths, [(2, sold("1-1/4")), (2, sold("1-1/2")), (4, sold("1-3/4"))]);
    assert_eq!(fittings.plates.iter().map(|line| line.count).collect::<Vec<_>>(), [2]);
    // 47-3/4 is on the seam at 48 and on member 3; 119-1/2 on member 6, in the middle but for a half.
    let rules: Vec<Vec<HoleRule>> =
        fittings.holes.iter().map(|hole| hole.findings.iter().map(|found| found.rule).collect()).collect();
    assert!(rules[1].contains(&HoleRule::NearSeam), "{rules:?}");
    assert!(fittings.holes[1].member.unwrap().through && fittings.holes[3].member.unwrap().through);
    assert!(rules[0].is_empty() && rules[2].is_empty(), "{rules:?}");
    let bought: Vec<(Item, u64)> = plan
        .takeoff
        .as_ref()
        .unwrap()
        .lines
        .iter()
        .filter(|line| matches!(line.item, Item::Bolt | Item::Plate))
        .map(|line| (line.item, line.buy))
        .collect();
    // One spare in each kind and length, as five in a hundred come to less than one.
    assert_eq!(bought, [(Item::Bolt, 3), (Item::Bolt, 3), (Item::Bolt, 5), (Item::Plate, 2)]);
}
