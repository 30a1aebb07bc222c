//! Patches small enough to verify by hand, and against going through every rectangle on a grid.

use super::*;
use crate::frame::{Frame, FrameSpec};
use crate::geometry::{Bounds, Path, Point, Side};
use crate::length::{Area, Length};
use proptest::prelude::*;

fn inches(count: i64) -> Length {
    Length::inches(count)
}

fn rectangle([fore, aft, port, starboard]: [i64; 4]) -> Path<()> {
    let corner = |x: i64, y: i64| Side { from: Point::new(inches(x), inches(y)), arc: None, edge: () };
    Path::new(vec![corner(fore, port), corner(aft, port), corner(aft, starboard), corner(fore, starboard)])
}

fn frame(centres: &[i64]) -> Frame {
    Frame::new(&FrameSpec::centred(centres.iter().map(|x| inches(*x)), inches(4))).unwrap()
}

fn rules(anywhere: bool) -> PatchRules {
    let sheet = SheetSize { athwart: inches(96), along: inches(48) };
    let mut rules = PatchRules::new(inches(6), inches(1), inches(8), vec![sheet]);
    rules.least_strip = inches(12);
    rules.anywhere = anywhere;
    rules
}

fn found(patched: Patched) -> Vec<Patch> {
    match patched {
        Patched::Patches(patches) => patches,
        Patched::TooLarge { .. } => panic!("{patched:?}"),
    }
}

fn told(patch: &Patch) -> [(i64, Rest); 4] {
    patch.edges.map(|edge| (edge.at.nanometres() / 25_400_000, edge.on))
}

/// A board of 48 by 96 on members at 0, 24 and 48 with flanges of 4.
fn one(damages: &[[i64; 4]], rules: &PatchRules) -> Patched {
    let board = OldBoard::new("1", rectangle([0, 48, 0, 96]));
    let damages: Vec<Damage> = damages.iter().map(|at| Damage::new("rot", rectangle(*at))).collect();
    patch(&[board], &damages, &frame(&[0, 24, 48]), rules)
}

#[test]
fn edges_land_on_the_flange_and_on_blocking() {
    // Rot from 8 to 14 aft, 40 to 50 athwart. Aft of 20: on the flange from 22 to 26, an inch of bearing: 23. The fore edge
    // would lie at 2, which leaves no strip: the board's own edge. Sides at 34 and 56, on blocking between the flanges.
    let patches = found(one(&[[8, 14, 40, 50]], &rules(false)));
    let expected = [(0, Rest::BoardEdge), (23, Rest::Member(2)), (34, Rest::Blocking), (56, Rest::Blocking)];
    assert_eq!(told(&patches[0]), expected);
    // 23 by 22, and two pieces of 8 from 2 to 22.
    assert_eq!(patches[0].plywood, Area::of(inches(1), inches(23 * 22 + 2 * 8 * 20)));
    let pieces: Vec<(Length, Length)> =
        patches[0].blocking.iter().map(|piece| (piece.depth(), piece.breadth())).collect();
    assert_eq!(pieces, [(inches(20), inches(8)), (inches(20), inches(8))]);
}

#[test]
fn a_patch_from_side_to_side_needs_no_blocking_and_may_be_the_cheaper() {
    // Rot over 80 of the 96: strips of 2 would be left at the sides, so the patch goes to both.
    let patches = found(one(&[[8, 14, 8, 88]], &rules(false)));
    let expected = [(0, Rest::BoardEdge), (23, Rest::Member(2)), (0, Rest::BoardEdge), (96, Rest::BoardEdge)];
    assert_eq!(told(&patches[0]), expected);
    assert!(patches[0].blocking.is_empty());
}

#[test]
fn two_places_share_a_patch_where_that_takes_less() {
    // Each alone is 22 by 23 with 320 of blocking: 826, 1652 together. 30 to 44 and 48 to 62: no strip of 12 between 50 and 42.
    let near = found(one(&[[8, 14, 30, 44], [8, 14, 48, 62]], &rules(false)));
    assert_eq!((near.len(), near[0].damages.clone()), (1, vec![0, 1]));
    // Far apart: two patches. 14 apart past the margins: one takes 46 + 14 by 23 and 320: fewer than twice 320.
    let far = found(one(&[[8, 14, 24, 26], [8, 14, 70, 72]], &rules(false)));
    assert_eq!(far.len(), 2);
    let between = found(one(&[[8, 14, 24, 26], [8, 14, 51, 53]], &rules(false)));
    // 14 by 23 + 320 = 642 each; together 41 by 23 + 320 = 1263 < 1284.
    assert_eq!((between.len(), between[0].plywood), (1, Area::of(inches(1), inches(1263))));
}

#[test]
fn with_blocking_anywhere_the_patch_shrinks_to_the_margin() {
    let patches = found(one(&[[36, 38, 40, 50]], &rules(true)));
    let board_edge = told(&found(one(&[[36, 38, 40, 50]], &rules(false)))[0]);
    assert_eq!(board_edge[..2], [(25, Rest::Member(2)), (48, Rest::BoardEdge)]);
    // Aft of 44 no strip of 12 is left; forward 30 would do on blocking: 18 by 22, 8 by 22 under the joint, 16 a side.
    let expected = [(25, Rest::Member(2)), (48, Rest::BoardEdge)];
    assert_eq!(told(&patches[0])[..2], expected);
}

#[test]
fn what_reaches_over_an_old_seam_is_patched_on_both_sides_of_it() {
    let boards = [OldBoard::new("1", rectangle([0, 48, 0, 96])), OldBoard::new("2", rectangle([48, 96, 0, 96]))];
    let damage = [Damage::new("rot", rectangle([44, 52, 40, 50]))];
    let patches = found(patch(&boards, &damage, &frame(&[0, 24, 48, 72, 96]), &rules(false)));
    let edges: Vec<[(i64, Rest); 2]> = patches.iter().map(|patch| [told(patch)[0], told(patch)[1]]).collect();
    assert_eq!(edges[0], [(25, Rest::Member(2)), (48, Rest::BoardEdge)]);
    assert_eq!(edges[1], [(48, Rest::BoardEdge), (71, Rest::Member(4))]);
}

#[test]
fn no_edge_runs_through_an_opening() {
    let mut board = OldBoard::new("1", rectangle([0, 48, 0, 96]));
    let [fore, aft, port, starboard] = [4, 18, 54, 70].map(inches);
    board.clear = vec![Bounds { fore, aft, port, starboard }];
    let damage = [Damage::new("rot", rectangle([8, 14, 40, 50]))];
    let patches = found(patch(&[board], &damage, &frame(&[0, 24, 48]), &rules(false)));
    // At 56 it would run through the hatch from 54 to 70.
    assert_eq!(told(&patches[0])[3], (70, Rest::Blocking));
}

#[test]
fn a_patch_that_no_sheet_holds_is_told() {
    let mut small = rules(false);
    small.sheets = vec![SheetSize { athwart: inches(96), along: inches(20) }];
    assert!(matches!(one(&[[8, 14, 40, 50]], &small), Patched::TooLarge { board: 0, .. }));
}

/// A case in whole inches: the board's depth and breadth, members, damaged rectangles, least strip, margin, whether edges
/// athwart may lie on blocking, the sheet.
#[derive(Debug, Clone)]
struct Case {
    size: (i64, i64),
    members: Vec<i64>,
    damages: Vec<[i64; 4]>,
    strip: i64,
    margin: i64,
    anywhere: bool,
    sheet: (i64, i64),
}

/// Half the flange, the bearing, and half the blocking of a case.
const HALF: i64 = 2;
const BEARING: i64 = 1;
const BLOCK: i64 = 3;

impl Case {
    fn flanges(&self) -> impl Iterator<Item = (i64, i64)> {
        self.members.iter().map(|x| (x - HALF, x + HALF))
    }

    /// What an edge athwart rests on that is sawn at a station: 0 member, 1 blocking.
    fn lands(&self, x: i64) -> Option<i64> {
        if self.flanges().any(|(fore, aft)| fore + BEARING <= x && x <= aft - BEARING) {
            return Some(0);
        }
        let clear = self.flanges().all(|(fore, aft)| x + BEARING <= fore || x - BEARING >= aft);
        (self.anywhere && clear).then_some(1)
    }

    /// Every rectangle around a damaged one that keeps the rules, with its plywood.
    fn rectangles(&self, damage: [i64; 4]) -> Vec<(i64, [i64; 4])> {
        let (depth, breadth) = self.size;
        let mut all = Vec::new();
        let fores = (0..=damage[0]).filter(|x| *x == 0 || (*x <= damage[0] - self.margin && *x >= self.strip));
        for fore in fores {
            let afts = (damage[1]..=depth)
                .filter(|x| *x == depth || (*x >= damage[1] + self.margin && depth - x >= self.strip));
            for aft in afts {
                let (Some(one), Some(other)) = (
                    if fore == 0 { Some(0) } else { self.lands(fore) },
                    if aft == depth { Some(0) } else { self.lands(aft) },
                ) else {
                    continue;
                };
                for port in (0..=damage[2]).filter(|y| *y == 0 || (*y <= damage[2] - self.margin && *y >= self.strip)) {
                    for starboard in (damage[3]..=breadth)
                        .filter(|y| *y == breadth || (*y >= damage[3] + self.margin && breadth - y >= self.strip))
                    {
                        let (run, across) = (aft - fore, starboard - port);
                        if across > self.sheet.0 || run > self.sheet.1 {
                            continue;
                        }
                        let mut cost = run * across;
                        for (on, x) in [(one, fore), (other, aft)] {
                            cost += on * self.under_joint(x) * across;
                        }
                        let covered: i64 = self.flanges().map(|(from, to)| (to.min(aft) - from.max(fore)).max(0)).sum();
                        for sawn in [port != 0, starboard != breadth] {
                            cost += i64::from(sawn) * (run - covered) * 2 * BLOCK;
                        }
                        all.push((cost, [fore, aft, port, starboard]));
                    }
                }
            }
        }
        all.sort_unstable();
        all
    }

    /// Extent of the blocking under a joint athwart: up to the flanges.
    fn under_joint(&self, x: i64) -> i64 {
        let fore = self.flanges().map(|(_, aft)| aft).filter(|aft| *aft <= x).max().unwrap_or(i64::MIN / 4);
        let aft = self.flanges().map(|(fore, _)| fore).filter(|fore| *fore >= x).min().unwrap_or(i64::MAX / 4);
        (x + BLOCK).min(aft) - (x - BLOCK).max(fore)
    }

    /// The least plywood over every partition and every choice of rectangles.
    fn least(&self) -> Option<i64> {
        let count = self.damages.len();
        let rectangles: Vec<Vec<(i64, [i64; 4])>> = (0..1_usize << count)
            .map(|set| {
                let chosen = (0..count).filter(|place| set >> place & 1 == 1).map(|place| self.damages[place]);
                let around = chosen.reduce(|a, b| [a[0].min(b[0]), a[1].max(b[1]), a[2].min(b[2]), a[3].max(b[3])]);
                around.map(|damage| self.rectangles(damage)).unwrap_or_default()
            })
            .collect();
        let mut best = None;
        self.extend(&rectangles, 0, &mut Vec::new(), 0, &mut best);
        best
    }

    fn extend(
        &self,
        all: &[Vec<(i64, [i64; 4])>],
        covered: usize,
        chosen: &mut Vec<[i64; 4]>,
        cost: i64,
        best: &mut Option<i64>,
    ) {
        if covered + 1 == all.len() {
            *best = Some(best.map_or(cost, |best: i64| best.min(cost)));
            return;
        }
        for set in (1..all.len()).filter(|set| set & covered == 0 && set & 1 << covered.trailing_ones() != 0) {
            for (more, rectangle) in &all[set] {
                if best.is_some_and(|best| cost + more >= best) {
                    break;
                }
                let apart = |other: &[i64; 4]| {
                    let along = (other[0] - rectangle[1]).max(rectangle[0] - other[1]);
                    let across = (other[2] - rectangle[3]).max(rectangle[2] - other[3]);
                    along.max(across) >= self.strip
                };
                if chosen.iter().all(apart) {
                    chosen.push(*rectangle);
                    self.extend(all, covered | set, chosen, cost + more, best);
                    chosen.pop();
                }
            }
        }
    }
}

prop_compose! {
    fn cases()(depth in 16..30_i64, breadth in 16..36_i64)(
        bays in proptest::collection::vec(7..14_i64, 4),
        first in -1..2_i64,
        places in proptest::collection::vec((0..100_i64, 1..6_i64, 0..100_i64, 1..8_i64), 1..4),
        strip in 2..6_i64,
        margin in 1..4_i64,
        anywhere in any::<bool>(),
        sheet in prop_oneof![3 => Just((36, 30)), 1 => Just((18, 30)), 1 => Just((36, 14))],
        size in Just((depth, breadth)),
    ) -> Case {
        let mut members = vec![first];
        for bay in bays {
            let next = members.last().unwrap() + bay;
            if next - HALF < size.0 {
                members.push(next);
            }
        }
        let stretch = |at: i64, run: i64, whole: i64| {
            let from = (whole - run) * at / 100;
            (from, from + run)
        };
        let damages = places.iter().map(|&(x, run, y, across)| {
            let ((fore, aft), (port, starboard)) = (stretch(x, run, size.0), stretch(y, across, size.1));
            [fore, aft, port, starboard]
        });
        Case { size, members, damages: damages.collect(), strip, margin, anywhere, sheet }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 40, ..ProptestConfig::default() })]

    #[test]
    fn no_choice_of_rectangles_takes_less_plywood(case in cases()) {
        let board = OldBoard::new("1", rectangle([0, case.size.0, 0, case.size.1]));
        let damages: Vec<Damage> = case.damages.iter().map(|at| Damage::new("rot", rectangle(*at))).collect();
        let sheets = vec![SheetSize { athwart: inches(case.sheet.0), along: inches(case.sheet.1) }];
        let mut rules = PatchRules::new(inches(case.margin), inches(BEARING), inches(2 * BLOCK), sheets);
        rules.least_strip = inches(case.strip);
        rules.anywhere = case.anywhere;
        let patched = patch(&[board], &damages, &frame(&case.members), &rules);
        let ours = match &patched {
            Patched::TooLarge { .. } => None,
            Patched::Patches(patches) => {
                let all: i128 = patches.iter().map(|patch| patch.plywood.square_nanometres()).sum();
                Some(i64::try_from(all / Area::of(inches(1), inches(1)).square_nanometres()).unwrap())
            }
        };
        prop_assert_eq!(ours, case.least(), "{:?}", patched);
        if let Patched::Patches(patches) = patched {
            let mut replaced: Vec<usize> = patches.iter().flat_map(|patch| patch.damages.clone()).collect();
            replaced.sort_unstable();
            prop_assert_eq!(replaced, (0..damages.len()).collect::<Vec<_>>());
        }
    }
}
