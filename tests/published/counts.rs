//! Screws counted by hand on four decks at three spacings: every row of W between end distances of 1 in has
//! ⌈(W − 2)/s⌉ + 1 (derived from the spacing; worked by hand, no publication).

use deck_core::Unit;
use deck_core::fasteners::RowKind;
use deck_tests::boat::Boat;

/// Length, beam, member spacing; boards, members, edge and field rows; screws at 6/12, 8/8 and 12/12.
const TABLE: [([i64; 3], [usize; 4], [usize; 3]); 4] = [
    ([240, 96, 24], [5, 11, 10, 5], [215, 195, 135]),
    ([240, 96, 16], [5, 16, 10, 10], [260, 260, 180]),
    ([288, 102, 24], [6, 13, 12, 6], [276, 252, 180]),
    ([288, 102, 16], [6, 19, 12, 12], [336, 336, 240]),
];

#[test]
fn twelve_hand_counts() {
    for ([length, beam, spacing], [boards, members, edge_rows, field_rows], counts) in TABLE {
        for ((edge, field), count) in [(6, 12), (8, 8), (12, 12)].into_iter().zip(counts) {
            let mut boat = Boat::plain(length, beam, spacing);
            (boat.screw[1], boat.screw[2]) = (edge * 64, field * 64);
            let plan = boat.plan(Unit::Inch).unwrap();
            let fastening = plan.fasteners.unwrap();
            let rows = |kind: RowKind| fastening.rows.iter().filter(move |row| row.kind == kind);
            assert_eq!((plan.layouts[0].boards.len(), plan.frame.len()), (boards, members));
            assert_eq!((rows(RowKind::Edge).count(), rows(RowKind::Field).count()), (edge_rows, field_rows));
            assert_eq!(fastening.count, count, "{length} x {beam}, members every {spacing}, {edge}/{field}");
            // The formula, written out once more.
            let row = |spacing: i64| usize::try_from((beam - 2 + spacing - 1) / spacing + 1).unwrap();
            assert_eq!(edge_rows * row(edge) + field_rows * row(field), count);
            assert!(fastening.rows.iter().all(|row| !row.over_limit && row.moved == 0 && row.dropped == 0));
        }
    }
}

/// Staggered, each row aft of a seam has one more: 12 seams' rows aft … 195 + 4 on the first deck at 8/8.
#[test]
fn staggering_adds_one_to_each_row_aft_of_a_seam() {
    for ([length, beam, spacing], [boards, ..], [_, eight, _]) in TABLE {
        let mut boat = Boat::plain(length, beam, spacing);
        boat.stagger = true;
        assert_eq!(boat.plan(Unit::Inch).unwrap().fasteners.unwrap().count, eight + boards - 1);
    }
}
