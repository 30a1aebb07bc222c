//! Demo decks that no sheet reaches across, or whose boards lie along the boat, counted by hand.

use super::inches;
use deck_core::arrange::ArrangementKind;
use deck_core::plan::{Arrangement, ArrangementFigures, Plan};
use deck_core::takeoff::Item;
use deck_core::{Job, Length, plan};
use std::path::Path;

fn planned(name: &str) -> Plan {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("../examples/jobs/{name}.json"));
    plan(&Job::from_json(&std::fs::read_to_string(path).unwrap()).unwrap()).unwrap()
}

fn row(plan: &Plan, kind: ArrangementKind) -> &Arrangement {
    plan.arrangements.iter().find(|row| row.kind == kind).unwrap()
}

fn figures(plan: &Plan, kind: ArrangementKind) -> &ArrangementFigures {
    row(plan, kind).figures.as_ref().unwrap()
}

/// E: 20 ft by 102 on 24s with nothing but 4 by 8 sheets. Nobody asked, and it is laid out all the same.
#[test]
fn e_a_deck_wider_than_its_sheets() {
    let plan = planned("wide-20");
    assert!(plan.no_layout.is_none() && !plan.panels.is_empty());
    // In one piece: 6 short.
    let no = row(&plan, ArrangementKind::Athwart).no_layout.as_ref().unwrap();
    assert_eq!(
        (no.shortfall, no.mend.as_slice()),
        (Some(inches("6")), &["Sheets that give boards 102\" long.".to_owned()][..])
    );
    // Five strips of 48 (240 less four gaps of 1/8, so the last is 47-1/2), each with a filler of 102 - 96 - 1/8.
    let fillers = figures(&plan, ArrangementKind::FillerStrips);
    assert_eq!((fillers.boards, fillers.blocks, fillers.blocking_length), (10, 10, inches("220")));
    assert!(
        row(&plan, ArrangementKind::FillerStrips)
            .detail
            .as_ref()
            .unwrap()
            .starts_with("5 strips, each with a filler 5-7/8\" wide")
    );
    // Five sheets of boards; fillers take 5 x 6 of a sixth, and its other 66 in hold ten blocks 22 x 8.
    assert_eq!(fillers.cost, Some("375.00".parse().unwrap()));
    // Ten boards of about 51 or less by 48: no two come out of one sheet lengthwise, but for the narrow ones.
    let butt = figures(&plan, ArrangementKind::CentreButt);
    assert_eq!((butt.boards, butt.blocks), (10, 10));
    // Rows: two joints of 240, a block in each of ten bays under both.
    let rows = figures(&plan, ArrangementKind::ForeAndAft);
    assert_eq!((rows.joint_length, rows.blocks, rows.blocking_length), (inches("480"), 20, inches("440")));
    assert_eq!(rows.cost, fillers.cost);
    // Alike in cost and sheets, rows have a board fewer.
    assert_eq!((rows.boards, rows.sheets), (9, fillers.sheets));
    let division = plan.division.as_ref().unwrap();
    assert_eq!(division.kind, ArrangementKind::ForeAndAft);
    let caution = plan.cautions.iter().find(|caution| caution.id == "beam-wider-than-sheet").unwrap();
    assert!(caution.about[0].starts_with("No sheet in stock reaches across the deck (102\")."), "{:?}", caution.about);
    // 22 less 3/8 at both ends in three steps of at most 8: four screws a side, eight a block.
    assert_eq!(division.screws, 160);
    let line = |item: Item| plan.takeoff.as_ref().unwrap().lines.iter().find(|line| line.item == item).unwrap();
    assert_eq!((line(Item::Block).buy, line(Item::BlockScrew).buy), (20, 2));
    butts_keep_apart(&plan);
    panels_tile(&plan);
}

fn butts_keep_apart(plan: &Plan) {
    let seams = &plan.layouts[0].seams;
    for one in seams {
        for other in seams {
            let (a, b) = (one.lane.unwrap().row, other.lane.unwrap().row);
            assert!(a.abs_diff(b) != 1 || one.member != other.member, "{one:?} {other:?}");
        }
    }
}

/// Panels, gaps and openings make the deck: what is left between panels is as long as the seams and a gap wide. At a
/// crossing of a seam and a joint both count the same square.
fn panels_tile(plan: &Plan) {
    let panels: i128 = plan.panels.iter().map(|panel| panel.area.square_nanometres()).sum();
    let holes: i128 = plan.openings.iter().map(|opening| opening.shape.area()).sum();
    let gap = i128::from(plan.basis.gap.nanometres());
    let seams: Length = plan.layouts[0].seams.iter().filter_map(|seam| seam.length).sum();
    let joints: Length = plan.division.iter().flat_map(|division| &division.joints).map(|joint| joint.length).sum();
    let gaps = gap * i128::from((seams + joints).nanometres());
    let left = plan.deck.area.square_nanometres() - panels - holes - gaps;
    // Not a thousandth of a square inch, arcs rounded, beside the crossings that are in no seam's length.
    let inch = 25_400_000_i128;
    assert!((left).abs() < inch * inch / 4, "{left}");
}

/// 24 ft by 10 ft on 16s: fillers of 120 - 96 - 1/8, a block in each of eighteen bays, a longer sheet beside them.
#[test]
fn a_ten_foot_beam() {
    let plan = planned("ten-foot-24");
    assert_eq!(plan.arrangements.len(), 4);
    assert!(plan.arrangements.iter().all(|row| row.figures.is_some()));
    // Six full boards and five gaps overrun 288: seven. In one piece they are seven sheets of 10 ft at 104.
    let whole = figures(&plan, ArrangementKind::Athwart);
    assert_eq!((whole.boards, whole.sheets, whole.cost), (7, 7, Some("728.00".parse().unwrap())));
    assert_eq!(plan.arrangements[0].kind, ArrangementKind::Athwart, "no joint runs through the gate");
    let fillers = figures(&plan, ArrangementKind::FillerStrips);
    assert_eq!((fillers.boards, fillers.blocks, fillers.zones_crossed), (14, 18, 1));
    // Seventeen bays of 16 less a flange of 2-1/4, and one of 13-3/4 less that.
    assert_eq!(fillers.blocking_length, inches("13-3/4") * 17 + inches("11-1/2"));
    // Seven strips and six gaps make 288.
    assert_eq!(fillers.joint_length, inches("287-1/4"));
    // 562.50: nine sheets of 8 ft at 62.50, for seven boards, seven fillers 23-7/8 wide (four to a sheet) and 18 blocks.
    assert_eq!((fillers.sheets, fillers.cost), (9, Some("562.50".parse().unwrap())));
    // The strong way across the members: the same load uses up less.
    let rows = figures(&plan, ArrangementKind::ForeAndAft);
    assert!(rows.utilisation.unwrap() < fillers.utilisation.unwrap());
    // Built as the job says, though it is not the first.
    let division = plan.division.as_ref().unwrap();
    assert_eq!(division.kind, ArrangementKind::FillerStrips);
    let ports: Vec<Length> = division.joints.iter().map(|joint| joint.port).collect();
    assert_eq!(ports[..3], [inches("96"), inches("23-7/8"), inches("96")]);
    panels_tile(&plan);
}

/// 24 ft by 8 ft, two rows: the joint ends at the motor notch, and so does its last block.
#[test]
fn boards_along_the_boat() {
    let plan = planned("along-24");
    let division = plan.division.as_ref().unwrap();
    let widths: Vec<Length> = division.rows.iter().map(deck_core::seams::Lane::width).collect();
    assert_eq!(widths, [inches("48"), inches("47-7/8")]);
    // 288 less a notch 20 deep; eleven bays of 22 and 3 of the twelfth.
    let rows = figures(&plan, ArrangementKind::ForeAndAft);
    assert_eq!((rows.joint_length, rows.blocks, rows.blocking_length), (inches("268"), 12, inches("245")));
    // Three boards of 96 do for one row; the other's butts keep off their members and take four.
    assert_eq!((rows.boards, rows.sheets), (7, 7));
    let whole = figures(&plan, ArrangementKind::Athwart);
    assert_eq!((whole.boards, whole.sheets), (6, 6));
    assert!(rows.utilisation.unwrap() < whole.utilisation.unwrap());
    // Nothing to join across a deck that one sheet reaches across.
    let no = row(&plan, ArrangementKind::FillerStrips).no_layout.as_ref().unwrap();
    assert_eq!(no.mend, ["Boards athwart in one piece."]);
    butts_keep_apart(&plan);
    panels_tile(&plan);
}

/// Two bays of 22 make a board of 44, so six boards of six sheets have the best seams. Two boards of one bay each come from
/// the rack's 24s: five sheets then do, though there are seven boards. The cleats fit the strips that are ripped off.
#[test]
fn seams_and_sheets_together_use_the_rack() {
    let plan = planned("rack-22");
    let pricing = plan.seams_by_nest.as_ref().unwrap();
    let money = |cost: &deck_core::plan::SheetCost| cost.money.unwrap().to_string();
    assert_eq!(money(&pricing.seams_first), "711.00", "six sheets at 118.50");
    assert_eq!((money(&pricing.by_nest).as_str(), money(&pricing.bound).as_str()), ("592.50", "592.50"));
    assert!(pricing.proven && plan.proven);
    assert_eq!(plan.layouts[0].boards.len(), 7);
    assert_eq!(plan.takeoff.as_ref().unwrap().sheets_cost, Some("592.50".parse().unwrap()));
    // Without the setting the same job has its six even boards.
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../examples/jobs/rack-22.json");
    let job = Job::from_json(&std::fs::read_to_string(path).unwrap()).unwrap();
    let first = deck_core::plan(&job.arrange(deck_core::job::ArrangeSpec::new())).unwrap();
    assert_eq!(
        (first.layouts[0].boards.len(), first.takeoff.unwrap().sheets_cost),
        (6, Some("711.00".parse().unwrap()))
    );
}
