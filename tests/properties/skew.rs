//! Seams on members out of square or bent, against exhaustive enumeration, and the panels that they cut.

use deck_core::frame::{Frame, FrameSpec, MeasuredTo, MemberSpec};
use deck_core::panels::Panel;
use deck_core::seams::{BoardStock, Rules, SeamProblem, seams};
use deck_core::{Job, Length, plan};
use proptest::prelude::*;

/// Everything is counted in eighths of an inch.
const EIGHTH: i64 = 25_400_000 / 8;

fn eighths(count: i64) -> Length {
    Length::from_nanometres(count * EIGHTH)
}

fn inch(text: &str) -> Length {
    format!("{text} in").parse().unwrap()
}

#[derive(Debug, Clone, Copy)]
struct Member {
    fore: i64,
    flange: i64,
    /// Port end and starboard end against the middle.
    ends: Option<(i64, i64)>,
}

#[derive(Debug, Clone)]
struct Case {
    members: Vec<Member>,
    length: i64,
    sheet: i64,
    gap: i64,
    rows: i64,
    preferred: i64,
}

const BEARING: i64 = 3;
const LEAST: i64 = 90;

prop_compose! {
    fn cases()(
        bays in prop::collection::vec(120_i64..200, 2..7),
        flanges in prop::collection::vec(8_i64..17, 7),
        // The ends are even against each other, so that half of what a member is out is whole.
        ends in prop::collection::vec(prop::option::weighted(0.7, (-4_i64..5, -4_i64..5)), 7),
        sheet in 300_i64..420,
        gap in 0_i64..3,
        rows in 0_i64..6,
        preferred in 100_i64..220,
    ) -> Case {
        let mut fore = 0;
        let mut members = Vec::new();
        for (index, (flange, ends)) in flanges.iter().zip(&ends).enumerate().take(bays.len() + 1) {
            let ends = ends.map(|(port, half)| (port, port + 2 * half)).filter(|(_, starboard)| starboard.abs() <= 8);
            members.push(Member { fore, flange: *flange, ends });
            fore += bays.get(index).copied().unwrap_or(0);
        }
        let last = members[members.len() - 1];
        Case { length: last.fore + last.flange, members, sheet, gap, rows, preferred }
    }
}

impl Member {
    fn moved(self) -> [i64; 3] {
        let (port, starboard) = self.ends.unwrap_or((0, 0));
        [port, 0, starboard]
    }

    /// Least bearings of an edge that slants by so much, forward and aft.
    fn bearings(self, at: i64, gap: i64, slant: i64) -> [i64; 2] {
        let line = [-slant / 2, 0, slant / 2];
        let places = line.iter().zip(self.moved());
        let fore = places.clone().map(|(line, flange)| at + line - (self.fore + flange)).min().unwrap();
        let aft = places.map(|(line, flange)| self.fore + self.flange + flange - (at + gap + line)).min().unwrap();
        [fore, aft]
    }

    /// How much room an edge that slants has for both its sides.
    fn room(self, slant: i64) -> i64 {
        self.bearings(0, 0, slant).iter().sum()
    }
}

impl Case {
    /// The seam lies square where that leaves rows and bearings their room, or as much as along the member.
    fn slant(&self, member: usize) -> i64 {
        let it = self.members[member];
        let (port, starboard) = it.ends.unwrap_or((0, 0));
        let needed = self.gap + 2 * BEARING.max(self.rows);
        let along = starboard - port;
        if it.room(0) >= needed || it.room(0) >= it.room(along) { 0 } else { along }
    }

    fn walk(&self, chosen: &mut Vec<(usize, i64)>, best: &mut Option<(usize, usize, usize, usize)>) {
        let start = chosen.last().map_or(0, |(_, at)| at + self.gap);
        let fore = chosen.last().map(|(member, _)| *member);
        let slant = |member: Option<usize>| member.map_or(0, |member| self.slant(member));
        // The rectangle around a board, from its middle line and the ends of its edges.
        let fits = |from: i64, to: i64, aft: Option<usize>| {
            let (ahead, behind) = (slant(fore), slant(aft));
            let least = [from - ahead / 2, from + ahead / 2].into_iter().min().unwrap();
            let most = [to - behind / 2, to + behind / 2].into_iter().max().unwrap();
            to - from >= LEAST && most - least <= self.sheet
        };
        if fits(start, self.length, None) && self.members.len() - fore.unwrap_or(0) >= 2 {
            let found = self.cost(chosen);
            *best = Some(best.map_or(found, |best| best.min(found)));
        }
        for member in fore.map_or(1, |fore| fore + 1)..self.members.len() {
            let it = self.members[member];
            for at in it.fore..=it.fore + it.flange {
                let bears = it.bearings(at, self.gap, self.slant(member)).iter().all(|bearing| *bearing >= BEARING);
                if bears && fits(start, at, Some(member)) {
                    chosen.push((member, at));
                    self.walk(chosen, best);
                    chosen.pop();
                }
            }
        }
    }

    /// Short seams, boards, narrow boards, ripped boards.
    fn cost(&self, chosen: &[(usize, i64)]) -> (usize, usize, usize, usize) {
        let short = chosen.iter().filter(|(member, at)| {
            let bearings = self.members[*member].bearings(*at, self.gap, self.slant(*member));
            bearings.iter().any(|bearing| *bearing < self.rows)
        });
        let (mut from, mut before) = (0, 0);
        let (mut narrow, mut ripped) = (0, 0);
        let ends = chosen.iter().map(|(member, at)| (*at, self.slant(*member))).chain([(self.length, 0)]);
        for (at, slant) in ends {
            narrow += usize::from(at - from < self.preferred);
            ripped += usize::from(at - from != self.sheet || slant != 0 || before != 0);
            (from, before) = (at + self.gap, slant);
        }
        (short.count(), chosen.len() + 1, narrow, ripped)
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, ..ProptestConfig::default() })]

    /// No layout of the enumeration is better, and the one that is told keeps its bearing at three places of each edge.
    #[test]
    fn seams_on_members_out_of_square_are_as_enumerated(case in cases()) {
        let mut spec = FrameSpec::centred([], eighths(8));
        spec.members = case.members.iter().map(|member| {
            let mut made = MemberSpec::new(eighths(member.fore)).flange(eighths(member.flange));
            made.measured_to = Some(MeasuredTo::ForeEdge);
            match member.ends {
                Some((port, starboard)) => made.sides(eighths(member.fore + port), eighths(member.fore + starboard)),
                None => made,
            }
        }).collect();
        let frame = Frame::new(&spec).unwrap();
        let sheets = vec![BoardStock { label: "ply".into(), width: eighths(case.sheet) }];
        let rules = Rules::new(eighths(BEARING))
            .gap(eighths(case.gap))
            .widths(eighths(LEAST), eighths(case.preferred))
            .rows(eighths(case.rows), Length::ZERO);
        let found = seams(&SeamProblem::new(&frame, eighths(case.length), sheets, rules));
        let mut best = None;
        case.walk(&mut Vec::new(), &mut best);
        let Some(layout) = found.layouts.first() else {
            prop_assert_eq!(best, None);
            prop_assert!(found.no_layout.is_some());
            return Ok(());
        };
        let cost = (layout.cost.short_seams, layout.cost.boards, layout.cost.narrow_boards, layout.cost.ripped_boards);
        if let Some(best) = best {
            prop_assert!(cost <= best, "{:?} and {:?}", cost, best);
        }
        for seam in &layout.seams {
            let member = case.members[seam.member - 1];
            let slant = case.slant(seam.member - 1);
            prop_assert_eq!(seam.slant(), eighths(slant));
            let [fore, aft] = {
                // In nanometres, as the engine is not bound to the grid.
                let exact = Member {
                    fore: member.fore * EIGHTH,
                    flange: member.flange * EIGHTH,
                    ends: member.ends.map(|(port, starboard)| (port * EIGHTH, starboard * EIGHTH)),
                };
                exact.bearings(seam.fore.nanometres(), case.gap * EIGHTH, slant * EIGHTH)
            };
            prop_assert!(fore >= BEARING * EIGHTH && aft >= BEARING * EIGHTH);
            prop_assert_eq!([seam.bearing_fore.nanometres(), seam.bearing_aft.nanometres()], [fore, aft]);
            if let Some(ends) = &seam.ends {
                prop_assert_eq!(ends.bearings_fore.iter().min().copied(), Some(seam.bearing_fore));
                prop_assert_eq!(ends.bearings_aft.iter().min().copied(), Some(seam.bearing_aft));
            }
        }
    }
}

fn demo() -> deck_core::Plan {
    let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../examples/jobs/racked-20.json");
    plan(&Job::from_json(&std::fs::read_to_string(path).unwrap()).unwrap()).unwrap()
}

fn area(panel: &Panel) -> i128 {
    panel.area.square_nanometres()
}

/// The demo, by hand: a seam takes 1/8 + 2 (3/8 + 3/8) = 1-5/8 of flange. Members 3 and 7 are 1/2 out, which leaves a
/// square edge 1-1/2 of their 2: their seams follow them. Member 5 is 1/4 out and member 9 bent by 1/4: 1-3/4 is left, and
/// the seams stay square.
#[test]
fn the_demo_is_as_counted_by_hand() {
    let plan = demo();
    let layout = &plan.layouts[0];
    let lie: Vec<(usize, Length)> = layout.seams.iter().map(|seam| (seam.member, seam.slant())).collect();
    let zero = Length::ZERO;
    assert_eq!(lie, [(3, inch("1/2")), (5, zero), (7, inch("-1/2")), (9, zero)]);
    let skew = plan.frame[8].skew.unwrap();
    assert_eq!((skew.out, skew.bend), (zero, inch("1/4")));
    // Along the member an edge bears alike at both ends; a square one loses half of what the member is out at one end.
    let first = layout.seams[0].ends.as_ref().unwrap();
    assert!(first.along && first.bearings_fore.iter().all(|bearing| *bearing == layout.seams[0].bearing_fore));
    let second = layout.seams[1].ends.as_ref().unwrap();
    assert!(!second.along && second.bearings_fore[0] - second.bearings_fore[2] == inch("1/4"));
    assert!(
        layout.seams.iter().all(|seam| seam.short_by == zero && seam.bearing_fore.min(seam.bearing_aft) >= inch("3/4"))
    );
    // Board 1 is square at the bow: its running figures at the aft edge are a quarter either side of the seam's middle,
    // and it is sawn from a rectangle as wide as the greater.
    let middle = layout.seams[0].fore;
    let taper = plan.panels[0].taper.unwrap();
    assert_eq!((taper.fore_port, taper.fore_starboard), (zero, zero));
    assert_eq!((taper.aft_port, taper.aft_starboard), (middle - inch("1/4"), middle + inch("1/4")));
    assert_eq!(plan.panels[0].width, middle + inch("1/4"));
    assert!(plan.panels.iter().all(|panel| panel.width <= inch("48")));
    assert_eq!(plan.panels[4].taper, None);
    // Panels and gaps make up the deck, to the rounding of corners.
    let boards: i128 = plan.panels.iter().map(area).sum();
    let gaps = i128::from(inch("1/8").nanometres()) * i128::from(inch("96").nanometres()) * 4;
    let deck = plan.deck.area.square_nanometres();
    assert!((deck - boards - gaps).abs() < i128::from(inch("96").nanometres()) * 20, "{}", deck - boards - gaps);
    let ids: Vec<&str> = plan.cautions.iter().map(|caution| caution.id.as_str()).collect();
    assert!(ids.contains(&"out-of-square") && !ids.contains(&"bent-member"));
}

/// Every screw of the demo keeps its distance from the flange's edges and from the board's, wherever on the beam it is.
#[test]
fn screws_follow_the_slanted_flange() {
    let plan = demo();
    let beam = plan.deck.beam;
    let mut slanted = 0;
    for row in &plan.fasteners.as_ref().unwrap().rows {
        let member = plan.frame.iter().find(|member| member.number == row.member).unwrap();
        let panel = plan.panels.iter().find(|panel| panel.label == row.panel).unwrap();
        for &y in &row.positions {
            let x = row.station_at(y, beam).as_inches();
            // Straight between the three readings.
            let [port, middle, starboard] = member.edges().map(|(fore, _)| fore.as_inches());
            let part = y.as_inches() / beam.as_inches();
            let fore = if part < 0.5 {
                port + (middle - port) * 2.0 * part
            } else {
                middle + (starboard - middle) * (2.0 * part - 1.0)
            };
            let edge = |aft: bool| {
                let seam = plan.layouts[0].seams.iter().find(|seam| seam.number == panel.board - usize::from(!aft));
                seam.map_or(if aft { f64::INFINITY } else { f64::NEG_INFINITY }, |seam| {
                    let middle = if aft { seam.fore } else { seam.aft };
                    middle.as_inches() + seam.slant().as_inches() * (part - 0.5)
                })
            };
            let least = 0.375 - 1e-6;
            let where_it_is = || format!("panel {} on M{} at {y:?}", row.panel, row.member);
            if fore > 0.0 && fore + 2.0 < 235.0 {
                assert!(x - fore >= least && fore + 2.0 - x >= least, "metal: {}", where_it_is());
            }
            assert!(x - edge(false) >= least && edge(true) - x >= least, "board: {}", where_it_is());
            slanted += usize::from(row.slant.is_some_and(|slant| slant.port != slant.starboard));
        }
        // Thirteen in a row of 96 at 8: the first and last an inch in.
        assert_eq!((row.positions.len(), row.short_by), (13, Length::ZERO));
    }
    // Rows of 13 on members out of square: two each on 3, 5 and 7, and one on 10.
    assert_eq!(slanted, 7 * 13);
}
