//! A deck of which part stays, worked by hand from the usual sizes (no publication).

use super::inches;
use deck_core::patch::Rest;
use deck_core::plan::Plan;
use deck_core::takeoff::{Amount, Item};
use deck_core::{Area, Job, Length, Unit, plan};

const PATCH: &str = include_str!("../../examples/jobs/patch-20.json");

fn planned() -> Plan {
    plan(&Job::from_json(PATCH).unwrap()).unwrap()
}

/// Boards of 48 on members every 24 with flanges of 2; margin 6, gap 1/8, bearing 1/2, strips of 12 at the least, blocking 12.
/// Under the table, 56 to 64 by 40 to 52: forward a strip of 2 would stay, so to the seam at 48; aft to the flange of 71 to
/// 73, which bears from 71-1/2; 34 to 58 athwart on blocking from 49 to 71.
/// By the gate it reaches over the seam at 144: 120 to 144 by 20, and 144 to 167-1/2 by 17 (11 at the seam, and 6).
/// At the transom 36 and 42 leave a strip of 6 between two patches: one from the port edge to 66, 216-1/2 to 240.
#[test]
fn patches_grow_to_members_and_blocking() {
    let plan = planned();
    let patch = plan.patch.as_ref().unwrap();
    let bounds: Vec<[Length; 4]> = patch
        .patches
        .iter()
        .map(|patch| [patch.bounds.fore, patch.bounds.aft, patch.bounds.port, patch.bounds.starboard])
        .collect();
    let expected = [
        ["48", "71-1/2", "34", "58"],
        ["120", "144", "0", "20"],
        ["144", "167-1/2", "0", "17"],
        ["216-1/2", "240", "0", "66"],
    ];
    assert_eq!(bounds, expected.map(|edges| edges.map(inches)));
    let (edge, block) = (Rest::BoardEdge, Rest::Blocking);
    let rests: Vec<Vec<Rest>> =
        patch.patches.iter().map(|patch| patch.edges.iter().map(|edge| edge.on).collect()).collect();
    let expected = [
        [edge, Rest::Member(4), block, block],
        [Rest::Member(6), edge, edge, block],
        [edge, Rest::Member(8), edge, block],
        [Rest::Member(10), edge, edge, block],
    ];
    assert_eq!(rests, expected.map(|rests| rests.to_vec()));
    assert_eq!(patch.patches[3].damage, ["at the transom, port", "at the transom, starboard"]);
    // 23-1/2 · 24 + 2 · 22 · 12, 24 · 20 + 22 · 12, 23-1/2 · 17 + 22 · 12, 23-1/2 · 66 + 22 · 12.
    let plywood: Vec<Area> = patch.patches.iter().map(|patch| patch.plywood).collect();
    let square = |text: &str| Area::of(inches(text), inches("1"));
    assert_eq!(plywood, ["1092", "744", "663-1/2", "1815"].map(square));
    assert_eq!(patch.plywood, square("4314-1/2"));
    // What stays is sawn a gap further out.
    let sawn: Vec<Option<Length>> = patch.patches[0].edges.iter().map(|edge| edge.saw_at).collect();
    assert_eq!(sawn, [None, Some(inches("71-5/8")), Some(inches("33-7/8")), Some(inches("58-1/8"))]);
}

/// Rows of 22, 18, 15 and 64 in steps of at most 8 are 4, 4, 3 and 9 screws, two rows a patch; as many again along each sawn
/// edge on a flange; four a side into each of five blocks of 22.
#[test]
fn a_patch_is_fastened_sawn_and_bought_like_a_deck() {
    let plan = planned();
    let patch = plan.patch.as_ref().unwrap();
    let labels: Vec<&str> = plan.panels.iter().map(|panel| panel.label.as_str()).collect();
    assert_eq!(labels, ["2a", "3a", "4a", "5a"]);
    let fastening = plan.fasteners.as_ref().unwrap();
    assert_eq!((fastening.rows.len(), fastening.count), (8, 2 * (4 + 4 + 3 + 9)));
    assert_eq!((patch.old_edge_screws, patch.blocking_screws), (4 + 4 + 3 + 9, 5 * 8));
    let blocks = patch.patches.iter().flat_map(|patch| &patch.blocking);
    assert!(blocks.clone().all(|piece| (piece.length, piece.width) == (inches("22"), inches("12"))));
    assert_eq!(blocks.count(), 5);
    let sheets = plan.sheets.as_ref().unwrap();
    assert_eq!((sheets.sheet_count, sheets.proven, sheets.unplaced.len()), (1, true, 0));
    let lines = &plan.takeoff.as_ref().unwrap().lines;
    let needed: Vec<Amount> = lines.iter().filter(|line| line.item == Item::Fastener).map(|line| line.needed).collect();
    assert_eq!(needed, [Amount::Count(60), Amount::Count(40)]);
    // Joints: 24 + 2 · 23-1/2, 20 + 24, 17 + 23-1/2, 66 + 23-1/2.
    let tape = lines.iter().find(|line| line.item == Item::SeamTape).unwrap();
    assert_eq!(tape.needed, Amount::Length(inches("245")));
    let cautions: Vec<&str> = plan.cautions.iter().map(|caution| caution.id.as_str()).collect();
    assert!(cautions.contains(&"patch-thickness") && cautions.contains(&"patch-covering"));
    assert!(!cautions.contains(&"patch-probe"));
    assert!(plan.layouts.is_empty() && plan.no_layout.is_none() && plan.proven);
    let weight = plan.takeoff.as_ref().unwrap().deck_weight_lb;
    // 23-1/2 · 24 + 24 · 20 + 23-1/2 · 17 + 23-1/2 · 66 = 2994-1/2 in² at 2.3 lb/ft², each board to a tenth.
    assert!((weight - 2994.5 / 144.0 * 2.3).abs() < 0.21, "{weight}");
    assert_eq!(plan.panels[0].area.number(Unit::Inch), 564.0);
}

/// The same deck with a margin that no patch of the sheets can keep.
#[test]
fn a_patch_that_no_sheet_gives_says_so() {
    let job = PATCH.replace("\"length\": 96, \"width\": 48", "\"length\": 60, \"width\": 48");
    let plan = plan(&Job::from_json(&job).unwrap()).unwrap();
    let reason = plan.no_layout.as_ref().unwrap();
    assert!(reason.reason.starts_with("No patch of old board 5"), "{}", reason.reason);
    assert!(plan.panels.is_empty() && plan.patch.as_ref().unwrap().patches.is_empty());
    assert!(!reason.mend.is_empty());
}
