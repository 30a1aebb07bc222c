//! Decks whose answers are known beforehand: worked by hand in the trade, from its usual sizes (no publication).
//! The letters tell the decks apart.

use super::inches;
use deck_core::frame::{Frame, FrameSpec};
use deck_core::plan::Plan;
use deck_core::seams::{BoardStock, Rules, SeamProblem, Seams, seams};
use deck_core::{Length, Unit};
use deck_tests::boat::{Boat, Member};

fn stations(plan: &Plan) -> Vec<Length> {
    plan.layouts[0].seams.iter().map(|seam| seam.fore).collect()
}

fn all(texts: &[&str]) -> Vec<Length> {
    texts.iter().map(|text| inches(text)).collect()
}

fn planned(boat: &Boat) -> Plan {
    boat.plan(Unit::Inch).unwrap()
}

/// A: 20 ft by 96, members every 24, flange 2, no gap: five full boards, no rip, 195 screws at 8/8.
#[test]
fn a_five_full_boards() {
    let plan = planned(&Boat::plain(240, 96, 24));
    assert_eq!(stations(&plan), all(&["48", "96", "144", "192"]));
    let layout = &plan.layouts[0];
    assert_eq!((layout.boards.len(), layout.cost.ripped_boards, layout.cost.short_seams), (5, 0, 0));
    assert!(layout.boards.iter().all(|board| board.full_width_of.as_deref() == Some("sheet 0")));
    let sheets = plan.sheets.unwrap();
    assert_eq!((sheets.sheet_count, sheets.proven), (5, true));
    assert_eq!(plan.fasteners.unwrap().count, 195);
    assert!(plan.proven);
}

/// The deck of B: 24 ft by 102, members every 16, flange 1-3/4 centred.
fn deck_b(sheet: &str, gap: &str, bearing: &str, length: &str, tolerance: &str) -> Seams {
    let spec = FrameSpec::regular(Length::ZERO, inches("288"), inches("16"), inches("1-3/4"));
    let frame = Frame::new(&spec).unwrap();
    let stock = vec![BoardStock { label: "sheet".into(), width: inches(sheet) }];
    let rules = Rules::new(inches(bearing)).gap(inches(gap)).end_tolerance(inches(tolerance));
    seams(&SeamProblem::new(&frame, inches(length), stock, rules).best(1000))
}

/// B: with 1/8 gaps full 48s from 0 reach member 16 (at 240) with bearings 1-3/8 and 1/4: refused at 1/2, and allowed
/// at 1/4. Six of them overrun 24 ft by 5/8: on a deck that much longer all six stay full.
#[test]
fn b_gaps_add_up_until_a_seam_does_not_bear() {
    let lenient = deck_b("48", "1/8", "1/4", "288-5/8", "0");
    let full = &lenient.layouts[0];
    assert_eq!((full.boards.len(), full.cost.ripped_boards), (6, 0));
    let fifth = &full.seams[4];
    assert_eq!((fifth.member, fifth.fore, fifth.aft), (16, inches("240-1/2"), inches("240-5/8")));
    assert_eq!((fifth.bearing_fore, fifth.bearing_aft), (inches("1-3/8"), inches("1/4")));
    assert!(deck_b("48", "1/8", "1/2", "288-5/8", "0").layouts.iter().all(|layout| layout.boards.len() > 6));

    let strict = deck_b("48", "1/8", "1/2", "288", "0");
    assert!(strict.proven && strict.layouts[0].boards.len() == 6);
    for layout in &strict.layouts {
        assert!(layout.seams.iter().all(|seam| seam.bearing_fore.min(seam.bearing_aft) >= inches("1/2")));
        let first_five_full = layout.boards.iter().take(5).all(|board| board.full_width_of.is_some());
        assert!(!first_five_full, "five full boards from the bow do not keep the bearing");
        assert!(layout.cost.ripped_boards > 0, "six full sheets overrun");
    }
}

/// B: sheets 1/16 scant cancel gaps of 1/16: on 287-15/16, or on 24 ft with a tolerance of 1/16 or more, all boards are
/// full and all seams end on pitch.
#[test]
fn b_scant_sheets_cancel_the_gap() {
    for (length, tolerance) in [("287-15/16", "0"), ("288", "1/16"), ("288", "1/8")] {
        let found = deck_b("47-15/16", "1/16", "1/2", length, tolerance);
        let layout = &found.layouts[0];
        assert_eq!((layout.boards.len(), layout.cost.ripped_boards), (6, 0), "{length}");
        let pitch: Vec<Length> = layout.seams.iter().map(|seam| seam.aft).collect();
        assert_eq!(pitch, all(&["48", "96", "144", "192", "240"]), "{length}");
    }
    assert!(deck_b("47-15/16", "1/16", "1/2", "288", "0").layouts[0].cost.ripped_boards > 0);
}

/// The stations of C.
const UNEVEN: [&str; 12] =
    ["0", "21-3/4", "42-1/2", "65", "86-7/8", "108", "131-1/4", "152-1/2", "175", "197-3/4", "219", "238"];

/// Every set of seams on members' centres with boards of 48 and below, over two bays at most, found by going through
/// all of them: for each, the number of boards and the width of a board over one bay, where there is just one such.
fn by_going_through_all() -> Vec<(usize, Vec<Length>)> {
    let stations = all(&UNEVEN);
    let last = stations.len() - 1;
    let mut found = Vec::new();
    for chosen in 0_u32..1 << (last - 1) {
        let inner = (1..last).filter(|member| chosen >> (member - 1) & 1 == 1);
        let at: Vec<usize> = std::iter::once(0).chain(inner).chain([last]).collect();
        let widths: Vec<Length> = at.windows(2).map(|pair| stations[pair[1]] - stations[pair[0]]).collect();
        if widths.iter().all(|width| *width <= inches("48")) {
            let single = at.windows(2).filter(|pair| pair[1] - pair[0] == 1);
            found.push((widths.len(), single.map(|pair| stations[pair[1]] - stations[pair[0]]).collect()));
        }
    }
    found
}

/// C: an uneven frame; seams can lie only on centres, as the bearing asked for is half a flange.
#[test]
fn c_six_layouts_of_six_boards() {
    let frame = Frame::new(&FrameSpec::centred(all(&UNEVEN), inches("2"))).unwrap();
    let stock = vec![BoardStock { label: "sheet".into(), width: inches("48") }];
    let found = seams(&SeamProblem::new(&frame, inches("238"), stock, Rules::new(inches("1"))).best(1000));
    let six: Vec<_> = found.layouts.iter().filter(|layout| layout.boards.len() == 6).collect();
    assert!(found.layouts.iter().all(|layout| layout.boards.len() >= 6) && found.proven);
    let single_bay = |layout: &&deck_core::seams::SeamLayout| {
        let bays = layout.boards.iter().filter(|board| board.supports.len() == 2).map(|board| board.width);
        bays.collect::<Vec<Length>>()
    };
    let mut ours: Vec<Vec<Length>> = six.iter().map(single_bay).collect();
    ours.sort();
    let mut known: Vec<Vec<Length>> =
        ["21.75", "22.5", "21.125", "21.25", "22.75", "19"].map(|width| vec![inches(width)]).to_vec();
    known.sort();
    assert_eq!(ours, known);

    let all = by_going_through_all();
    assert_eq!(all.iter().map(|(boards, _)| *boards).min(), Some(6));
    let mut theirs: Vec<Vec<Length>> =
        all.into_iter().filter(|(boards, _)| *boards == 6).map(|(_, bays)| bays).collect();
    theirs.sort();
    assert_eq!(theirs, known);
}

/// G: a member was missed in the readings, so that two lie 50 apart: clear 48, and a 48 board has no bearing.
#[test]
fn g_a_bay_too_wide_is_named() {
    let mut boat = Boat::plain(240, 96, 24);
    let missed = [0, 24, 48, 72, 96, 146, 170, 194, 218, 240];
    boat.members = missed.map(|station| Member { station: station * 64, flange: 0, ends: (None, None) }).to_vec();
    let plan = planned(&boat);
    assert!(plan.layouts.is_empty() && plan.panels.is_empty() && plan.fasteners.is_none());
    let why = plan.no_layout.unwrap();
    let bay = why.bay.unwrap();
    assert_eq!((bay.fore_member, bay.aft_member), (Some(5), Some(6)));
    assert_eq!((bay.from, bay.to, bay.clear), (inches("97"), inches("145"), inches("48")));
    // With 1/2 in of bearing on both flanges a board is 49 wide.
    assert_eq!(why.shortfall, Some(inches("1")));
    assert_eq!(why.sheet.as_deref(), Some("sheet 0"));
    for said in ["member 5", "member 6", "48\" clear", "1\" short", "sheet 0"] {
        assert!(why.reason.contains(said), "{said}: {}", why.reason);
    }
    assert!(!why.mend.is_empty());
    // What does not depend on seams is there.
    assert_eq!((plan.deck.length, plan.frame.len()), (inches("240"), 10));
    assert!(!plan.cautions.is_empty());
}

/// H: flange 1-1/4, 1/4 screws, gap 1/8: two rows want 1-5/8, 3/8 more than there is.
#[test]
fn h_a_narrow_flange_is_laid_out_and_cautioned() {
    let mut boat = Boat::plain(336, 102, 16);
    (boat.flange, boat.gap) = (80, 8);
    let plan = planned(&boat);
    assert_eq!(plan.basis.least_flange, inches("1-5/8"));
    let layout = &plan.layouts[0];
    assert!(!layout.seams.is_empty());
    assert_eq!(layout.cost.short_seams, layout.seams.len());
    assert!(layout.seams.iter().all(|seam| seam.short_by >= inches("3/8")));
    let caution = plan.cautions.iter().find(|caution| caution.id == "narrow-flange").unwrap();
    assert_eq!(caution.about.len(), layout.seams.len());
    for remedy in ["Stagger", "cleat", "sister an angle"] {
        assert!(caution.text.contains(remedy), "{}", caution.text);
    }
    let rows = plan.fasteners.unwrap().rows;
    let at_seams: Vec<Length> = rows.iter().filter(|row| row.seam.is_some()).map(|row| row.short_by).collect();
    assert_eq!(at_seams.len(), 2 * layout.seams.len(), "{rows:#?}");
    assert!(at_seams.iter().all(|short| *short > Length::ZERO));
    // Short rows are laid out like the others: ⌈100 / 8⌉ + 1.
    assert!(rows.iter().all(|row| row.positions.len() == 14));
}

/// H: where wide flanges can be had, a layout on a narrow one ranks behind them, even with fewer boards.
#[test]
fn h_a_narrow_flange_ranks_behind() {
    let mut boat = Boat::plain(96, 96, 16);
    boat.gap = 8;
    for member in &mut boat.members {
        member.flange = if member.station == 48 * 64 { 80 } else { 128 };
    }
    let mut job = boat.job(Unit::Inch).unwrap();
    job.shop.layouts = Some(100);
    let plan = deck_core::plan(&job).unwrap();
    let short: Vec<usize> = plan.layouts.iter().map(|layout| layout.cost.short_seams).collect();
    assert!(short.is_sorted() && short[0] == 0 && short.last() > Some(&0), "{short:?}");
    assert_eq!(plan.layouts[0].boards.len(), 3);
    // Two boards meet on the narrow member at 48.
    let two = plan.layouts.iter().find(|layout| layout.boards.len() == 2).unwrap();
    assert_eq!((two.seams[0].member, two.cost.short_seams, two.seams[0].short_by), (4, 1, inches("3/8")));
}
