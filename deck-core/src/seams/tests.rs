//! Layouts small enough to verify by hand.

use super::*;
use crate::frame::{Frame, FrameSpec};
use crate::length::Unit;

fn inches(text: &str) -> Length {
    Length::read(text, Unit::Inch).unwrap().length
}

fn sheets(width: &str) -> Vec<BoardStock> {
    vec![BoardStock { label: "ply".into(), width: inches(width) }]
}

fn regular(last: &str, spacing: &str, flange: &str) -> Frame {
    Frame::new(&FrameSpec::regular(Length::ZERO, inches(last), inches(spacing), inches(flange))).unwrap()
}

fn stations(layout: &SeamLayout) -> Vec<f64> {
    layout.seams.iter().map(|seam| seam.fore.as_inches()).collect()
}

#[test]
fn a_full_sheet_is_kept_full_by_moving_the_seam_on_its_flange() {
    // Members every 24, but the sheet is 48-1/2: the flange of 2 lets the seam lie half an inch aft of its middle.
    let frame = regular("96", "24", "2");
    let found = seams(&SeamProblem::new(&frame, inches("97"), sheets("48-1/2"), Rules::new(inches("1/2"))));
    assert_eq!(stations(&found.layouts[0]), [48.5]);
    assert_eq!(found.layouts[0].cost.ripped_boards, 0);
    assert_eq!(found.layouts[0].cost.shift, inches("1/2"));
}

#[test]
fn equal_boards_come_before_centred_seams() {
    let frame = regular("100", "20", "2");
    let found = seams(&SeamProblem::new(&frame, inches("100"), sheets("48"), Rules::new(inches("1/2"))).best(9));
    let best = &found.layouts[0];
    // Three boards: 40 + 20 + 40 is even and centred.
    assert_eq!(stations(best), [40.0, 60.0]);
    assert_eq!((best.cost.unevenness, best.cost.shift), (Length::ZERO, Length::ZERO));
    assert!(found.proven);
}

#[test]
fn a_keep_clear_zone_moves_the_seam() {
    let frame = regular("96", "16", "2");
    let problem = SeamProblem::new(&frame, inches("96"), sheets("66"), Rules::new(inches("1/2")));
    assert_eq!(stations(&seams(&problem).layouts[0]), [48.0]);
    let gate = vec![KeepClear::new("gate", inches("40"), inches("56"))];
    assert_eq!(stations(&seams(&problem.clear(gate)).layouts[0]), [32.5]);
}

#[test]
fn the_wide_bay_is_named() {
    let frame = Frame::new(&FrameSpec::centred([0, 24, 48, 98, 122, 146].map(Length::inches), inches("2"))).unwrap();
    let found = seams(&SeamProblem::new(&frame, inches("146"), sheets("48"), Rules::new(inches("1/2"))));
    let reason = found.no_layout.unwrap();
    let bay = reason.bay.unwrap();
    assert_eq!((bay.fore_member, bay.aft_member, bay.clear), (Some(3), Some(4), inches("48")));
    assert_eq!(reason.shortfall, Some(inches("1")));
    assert_eq!(
        reason.reason,
        "The bay from member 3 to member 4 is 48\" clear; to bear 1/2\" on both flanges a board is 49\" wide, and the \
         widest in stock (ply) gives 48\": 1\" short."
    );
    assert_eq!(
        reason.mend,
        ["Sheets that give boards 49\" wide.", "A cross member, or blocking, at 73\" with a flange of 2\"."]
    );
}

#[test]
fn a_narrow_flange_ranks_behind_and_says_what_it_lacks() {
    let rules = || Rules::new(inches("1/2")).gap(inches("1/8")).rows(inches("3/8"), inches("3/8"));
    let frame = regular("96", "16", "1-1/4");
    let found = seams(&SeamProblem::new(&frame, inches("96"), sheets("48"), rules()));
    let best = &found.layouts[0];
    assert_eq!((best.cost.short_seams, best.cost.boards), (1, 2));
    assert!(best.seams.iter().all(|seam| seam.short_by >= inches("3/8")));
    let wide = regular("96", "16", "1-5/8");
    let found = seams(&SeamProblem::new(&wide, inches("96"), sheets("48"), rules()));
    assert_eq!(found.layouts[0].cost.short_seams, 0);
}

#[test]
fn one_board_needs_no_seam() {
    let frame = regular("40", "20", "2");
    let found = seams(&SeamProblem::new(&frame, inches("40"), sheets("48"), Rules::new(inches("1/2"))));
    assert_eq!((found.layouts[0].boards.len(), found.layouts[0].seams.len()), (1, 0));
    assert_eq!(found.layouts[0].boards[0].supports, [1, 2, 3]);
}

#[test]
fn no_seam_is_short_of_its_bearing() {
    let frame = regular("288", "16", "1-3/4");
    let rules = Rules::new(inches("1/2")).gap(inches("1/8")).rows(inches("3/8"), inches("3/8"));
    let found = seams(&SeamProblem::new(&frame, inches("288"), sheets("48"), rules).best(3));
    for layout in &found.layouts {
        assert!(layout.seams.iter().all(|seam| seam.bearing_fore.min(seam.bearing_aft) >= inches("1/2")));
        assert!(layout.boards.iter().all(|board| board.width <= inches("48")));
    }
}

#[test]
fn flanges_that_no_two_boards_can_share_are_named() {
    let frame = regular("240", "24", "1");
    let rules = Rules::new(inches("1/2")).gap(inches("1/8"));
    let found = seams(&SeamProblem::new(&frame, inches("240"), sheets("48"), rules));
    let reason = found.no_layout.unwrap();
    assert_eq!(
        reason.reason,
        "No flange can carry a seam: two boards that bear 1/2\" each, with a gap of 1/8\", take a flange of 1-1/8\", \
         and the widest is 1\": 1/8\" short."
    );
    assert!(reason.mend.contains(&"Boards laid without a gap.".to_string()));
}
