//! Rows along the boat against exhaustive enumeration: the butts of all rows together, and the fewest rows.
//!
//! The enumeration knows nothing of the engine: it takes every layout of every row on a grid of an eighth of an inch
//! (`seams`), and tries every choice of one for each row.

use super::seams::{Case, Cost as SeamCost, eighths, enumerated, frame_and_rules};
use deck_core::arrange::{ArrangeProblem, ArrangeRules, ArrangementKind, Division, Ply, divisions};
use deck_core::job::ArrangeSpec;
use deck_core::nest::{Cost, Effort, Grain, Part, nest};
use deck_core::outline::{Deck, Opening, OpeningShape, Outline, Parametric};
use deck_core::panels::panels;
use deck_core::plan::{Planner, SheetCost};
use deck_core::seams::{BoardStock, NoLayout, SeamProblem, seams};
use deck_core::{Job, Length, Notation, Unit};
use proptest::prelude::*;

/// Widths of rows on which the butts are tried: two or three whole sheets.
const ROW: i64 = 200;

prop_compose! {
    fn frames()(
        bays in prop::collection::vec(120_i64..200, 2..7),
        flanges in prop::collection::vec(7_i64..11, 7),
        stern in 4_i64..12,
        sheet in 300_i64..520,
        gap in 0_i64..2,
        rows in 0_i64..5,
    ) -> Case {
        let mut fore = 0;
        let mut members = vec![(fore, flanges[0])];
        for (bay, flange) in bays.iter().zip(&flanges[1..]) {
            fore += bay;
            members.push((fore, *flange));
        }
        let (last, flange) = members[members.len() - 1];
        Case {
            length: last + flange.min(stern),
            flanges: members,
            sheets: vec![sheet],
            gap,
            tolerance: 0,
            bearing: 3,
            rows,
            least: 90,
            preferred: 130,
            zones: Vec::new(),
        }
    }
}

fn rectangle(length: i64, beam: i64) -> Outline {
    Deck::Parametric(Parametric::new(eighths(length), eighths(beam))).outline().unwrap()
}

fn found(
    case: &Case,
    outline: &Outline,
    openings: &[Opening],
    width: i64,
    stagger: usize,
) -> Result<Vec<Division>, NoLayout> {
    let (frame, rules) = frame_and_rules(case);
    let rules = ArrangeRules::new(rules, eighths(64), eighths(64)).stagger(stagger);
    let sheets = vec![Ply::new("sheet", eighths(case.sheets[0]), eighths(width))];
    let problem = ArrangeProblem::new(&frame, outline, sheets, rules, Notation::new(Unit::Inch)).openings(openings);
    divisions(&problem, ArrangementKind::ForeAndAft)
}

type Sum = (usize, usize, usize, usize, i64);

fn plus(sum: Sum, cost: &SeamCost) -> Sum {
    (sum.0 + cost.0, sum.1 + cost.1, sum.2 + cost.2, sum.3 + cost.3, sum.4 + cost.4)
}

/// The least sum over every choice of one layout for each row whose butts keep apart.
fn least(rows: usize, all: &[(Vec<usize>, SeamCost)], stagger: usize) -> Option<Sum> {
    let apart = |one: &[usize], other: &[usize]| one.iter().all(|a| other.iter().all(|b| a.abs_diff(*b) >= stagger));
    let mut best = None;
    let mut stack: Vec<(Vec<usize>, Sum)> = vec![(Vec::new(), (0, 0, 0, 0, 0))];
    while let Some((chosen, sum)) = stack.pop() {
        if chosen.len() == rows {
            best = Some(best.map_or(sum, |best: Sum| best.min(sum)));
            continue;
        }
        for (index, (members, cost)) in all.iter().enumerate() {
            if chosen.last().is_none_or(|before| apart(&all[*before].0, members)) {
                stack.push(([chosen.as_slice(), &[index]].concat(), plus(sum, cost)));
            }
        }
    }
    best
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, failure_persistence: None, rng_seed: proptest::test_runner::RngSeed::Fixed(21), ..ProptestConfig::default() })]

    #[test]
    fn no_choice_of_butts_is_better(case in frames(), rows in 2_usize..4, stagger in 0_usize..3) {
        let count = i64::try_from(rows).unwrap();
        let outline = rectangle(case.length, count * ROW + (count - 1) * case.gap);
        let all: Vec<(Vec<usize>, SeamCost)> = enumerated(&case, case.flanges.len() + 1).into_iter().collect();
        let theirs = least(rows, &all, stagger);
        let whole = |division: &Division| division.rows.len() == rows && division.rows.iter().all(|row| row.width() == eighths(ROW));
        match found(&case, &outline, &[], ROW, stagger) {
            Ok(divisions) => {
                let ours = divisions.iter().find(|division| whole(division));
                prop_assert_eq!(ours.is_some(), theirs.is_some());
                let (Some(ours), Some(theirs)) = (ours, theirs) else { return Ok(()) };
                prop_assert!(ours.proven);
                for pair in ours.rows.windows(2) {
                    let members = |row: usize| {
                        let seams = ours.layout.seams.iter().filter(move |seam| seam.lane.is_some_and(|lane| lane.row == row));
                        seams.map(|seam| seam.member).collect::<Vec<usize>>()
                    };
                    let (one, other) = (members(pair[0].row), members(pair[1].row));
                    prop_assert!(one.iter().all(|a| other.iter().all(|b| a.abs_diff(*b) >= stagger)));
                }
                let cost = &ours.layout.cost;
                // Positions are rounded down to the nanometre.
                let slack = 4 * i64::try_from(cost.boards).unwrap();
                let ours = (cost.short_seams, cost.boards, cost.narrow_boards, cost.ripped_boards, cost.unevenness.nanometres() - slack);
                prop_assert!(ours <= theirs, "{:?} for {:?}", ours, theirs);
            }
            Err(_) => prop_assert!(theirs.is_none(), "{:?} was not found", theirs),
        }
    }

    /// The fewest rows that openings allow, against a walk over every eighth of an inch.
    #[test]
    fn no_fewer_rows_cover_the_beam(
        beam in 300_i64..900, width in 200_i64..400, gap in 0_i64..2,
        holes in prop::collection::vec((0.0..1.0_f64, 8_i64..260), 0..4),
    ) {
        let case = Case {
            flanges: vec![(0, 16), (192, 16), (384, 16)], length: 400, sheets: vec![768], gap, tolerance: 0, bearing: 4,
            rows: 3, least: 96, preferred: 128, zones: Vec::new(),
        };
        let outline = rectangle(case.length, beam);
        let wood = 2 * case.rows;
        #[allow(clippy::cast_possible_truncation, reason = "a fraction of a beam")]
        let placed: Vec<(i64, i64)> = holes.iter().filter(|(_, size)| *size < beam - 2).map(|(at, size)| {
            let port = 1 + ((beam - 2 - size) as f64 * at) as i64;
            (port, port + size)
        }).collect();
        let opening = |(index, (port, starboard)): (usize, &(i64, i64))| {
            let at = i64::try_from(index).unwrap() * 90 + 20;
            Opening::new(index.to_string(), OpeningShape::Rectangle {
                x: eighths(at), y: eighths(*port), depth: eighths(60), width: eighths(starboard - port), corner_radius: Length::ZERO,
            })
        };
        let openings: Vec<Opening> = placed.iter().enumerate().map(opening).collect();
        let free = |joint: i64| placed.iter().all(|(port, starboard)| joint + gap <= port - wood || joint >= starboard + wood);
        let mut reached: Vec<i64> = vec![-gap];
        let mut theirs = None;
        for rows in 1..=12 {
            if reached.iter().any(|at| (96..=width).contains(&(beam - at - gap))) {
                theirs = Some(rows);
                break;
            }
            let next = (1..beam - gap).filter(|joint| free(*joint));
            reached = next.filter(|joint| reached.iter().any(|at| (96..=width).contains(&(joint - at - gap)))).collect();
        }
        let ours = found(&case, &outline, &openings, width, 0).ok().and_then(|divisions| divisions.iter().map(|division| division.rows.len()).min());
        prop_assert_eq!(ours, theirs);
    }
}

/// A job of eight-foot boards on a frame, with sheets at a price and offcuts of some widths on the rack.
fn job(bays: &[i64], rack: &[i64], lid: Option<i64>) -> Job {
    let mut station = 0;
    let stations: Vec<i64> = std::iter::once(0)
        .chain(bays.iter().map(|bay| {
            station += bay;
            station
        }))
        .collect();
    let members: Vec<serde_json::Value> = stations.iter().map(|at| serde_json::json!({ "station": at })).collect();
    let mut stock =
        vec![serde_json::json!({ "label": "ply", "length": 96, "width": 48, "thickness": "3/4", "price": 60 })];
    for (index, width) in rack.iter().enumerate() {
        stock.push(serde_json::json!({ "label": format!("rack {index}"), "length": 96, "width": width, "thickness": "3/4", "count": 1, "offcut": true }));
    }
    let lids: Vec<serde_json::Value> =
        lid.iter().map(|side| serde_json::json!({ "label": "lid", "length": side, "width": side })).collect();
    let job = serde_json::json!({
        "schema": 1, "name": "rack", "unit": "in", "deck": { "length": station, "beam": 96 },
        "frame": { "measured_to": "centre", "flange": 2, "wall": "1/8", "members": members },
        "stock": stock, "extra_parts": lids, "gap": "1/8",
        "arrange": { "compare": ["athwart"], "seams_by_nest": true },
    });
    Job::from_value(&job).unwrap()
}

fn cents(cost: &SheetCost) -> i128 {
    cost.money.unwrap().ten_thousandths() / 100
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 60, failure_persistence: None, rng_seed: proptest::test_runner::RngSeed::Fixed(22), ..ProptestConfig::default() })]

    /// Every layout of seams nested one by one: none is cheaper than the one that was chosen, and none below the bound.
    #[test]
    fn no_layout_is_cheaper_in_the_nest(
        bays in prop::collection::vec(14_i64..25, 4..9), rack in prop::collection::vec(12_i64..40, 0..3), lid in prop::option::of(8_i64..20),
    ) {
        let job = job(&bays, &rack, lid);
        let plan = Planner::new(&job).effort(Effort::Thorough).plan().unwrap();
        let Some(pricing) = &plan.seams_by_nest else {
            prop_assert!(plan.no_layout.is_some());
            return Ok(());
        };
        let checked = job.check().unwrap();
        let stock = vec![BoardStock { label: "ply".into(), width: Length::inches(48) }];
        let problem = SeamProblem::new(&checked.frame, checked.outline.length(), stock, checked.settings.rules.clone());
        let all = seams(&problem.outline(&checked.outline).best(5000));
        let least_short = all.layouts[0].cost.short_seams;
        let mut least = None;
        for layout in all.layouts.iter().filter(|layout| layout.cost.short_seams == least_short) {
            let boards = panels(&checked.outline, layout, &[], checked.thickness);
            let mut parts: Vec<Part> = boards.iter().map(|board| Part::new(board.label.clone(), board.length, board.width).grain(Grain::Length)).collect();
            parts.extend(lid.map(|side| Part::new("lid", Length::inches(side), Length::inches(side))));
            let found = nest(&parts, &checked.stock, &checked.settings.saw, Effort::Quick).unwrap();
            let Cost::Money(money) = found.cost else { return Err(TestCaseError::fail("priced")) };
            let cost = money.ten_thousandths() / 100;
            prop_assert!(cents(&pricing.bound) <= cost, "{} below the bound {}", cost, cents(&pricing.bound));
            least = Some(least.map_or(cost, |least: i128| least.min(cost)));
        }
        prop_assert!(pricing.every_layout || pricing.proven || pricing.layouts >= 384, "{:?}", pricing);
        prop_assert!(Some(cents(&pricing.by_nest)) <= least, "{:?} for {:?}", pricing, least);
        prop_assert!(cents(&pricing.by_nest) <= cents(&pricing.seams_first));
        prop_assert_eq!(cents(&pricing.by_nest) - cents(&pricing.bound), cents(&pricing.gap));
        let plain = Planner::new(&job.clone().arrange(ArrangeSpec::new())).effort(Effort::Thorough).plan().unwrap();
        prop_assert_eq!(plain.takeoff.unwrap().sheets_cost, pricing.seams_first.money);
    }
}
