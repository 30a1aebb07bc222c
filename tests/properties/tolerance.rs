//! What errors leave of a bearing, against a simulation and against exhaustive enumeration.

use deck_core::frame::{Frame, FrameSpec, MemberSpec};
use deck_core::seams::{
    BoardStock, Errors, Rules, SeamLayout, SeamProblem, SeamTolerance, Spread, last_board, seams, tolerance,
    width_to_rip,
};
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

/// Splitmix64, from a seed that is fixed.
struct Dice(u64);

const SEED: u64 = 20_261_125;

impl Dice {
    /// Evenly from 0 to 1.
    fn roll(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((mixed ^ (mixed >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn error(&mut self, spread: Spread) -> f64 {
        self.roll() * (spread.under + spread.over).as_inches() - spread.under.as_inches()
    }
}

/// Boards are set one after the other as on the boat; each round gives every seam's two bearings.
fn simulate(layout: &SeamLayout, frame: &Frame, errors: &Errors, gap: f64, least: f64, rounds: u32) -> Vec<[f64; 2]> {
    let mut dice = Dice(SEED);
    let mut short = vec![[0_u32; 2]; layout.seams.len()];
    for _ in 0..rounds {
        // Readings from the bow: of one tape, or of one bay after the other.
        let mut carried = 0.0;
        let flanges: Vec<[f64; 2]> = frame
            .members()
            .iter()
            .map(|member| {
                let reading = dice.error(errors.measuring);
                carried += reading;
                let off = if errors.chained { carried } else { reading };
                [member.fore.as_inches() + off, member.aft.as_inches() + off]
            })
            .collect();
        let mut edge = -gap;
        let mut on: Option<usize> = None;
        for (index, board) in layout.boards.iter().enumerate() {
            let fore = edge + gap + dice.error(errors.setting);
            if let Some(member) = on {
                short[index - 1][1] += u32::from(flanges[member - 1][1] - fore < least);
            }
            edge = fore + board.width.as_inches() + dice.error(errors.board(board.width));
            on = layout.seams.get(index).map(|seam| seam.member);
            if let Some(member) = on {
                short[index][0] += u32::from(edge - flanges[member - 1][0] < least);
            }
        }
    }
    short.into_iter().map(|sides| sides.map(|count| f64::from(count) / f64::from(rounds))).collect()
}

const ROUNDS: u32 = 400_000;

#[test]
fn chances_are_those_of_a_simulation() {
    let frame = Frame::new(&FrameSpec::regular(Length::ZERO, inch("240"), inch("24"), inch("2"))).unwrap();
    let sheets = vec![BoardStock { label: "ply".into(), width: inch("48") }];
    let gap = inch("1/16");
    let found = seams(&SeamProblem::new(&frame, inch("240"), sheets, Rules::new(inch("1/2")).gap(gap)));
    let layout = &found.layouts[0];
    let uneven = Spread { under: inch("1/16"), over: inch("3/16") };
    let plain = Errors::new(Spread::even(inch("1/8")), Spread::even(inch("1/16")))
        .measuring(Spread::even(inch("1/8")), false)
        .full(vec![(inch("48"), Spread::scant(inch("1/16")))]);
    let chained = Errors::new(uneven, uneven.reversed()).measuring(Spread::even(inch("1/16")), true);
    let mut compared = 0;
    for errors in [plain, chained] {
        // Against what is planned, so that chances lie all over from 0 to 1.
        for least in [inch("3/8"), inch("3/4"), inch("15/16")] {
            let told = tolerance(layout, least, &errors);
            let seen = simulate(layout, &frame, &errors, gap.as_inches(), least.as_inches(), ROUNDS);
            for (told, seen) in told.iter().zip(seen) {
                for (chance, share) in [told.fore.chance_short, told.aft.chance_short].into_iter().zip(seen) {
                    // Five deviations of a count.
                    let room = 5.0 * (chance * (1.0 - chance) / f64::from(ROUNDS)).sqrt() + 1e-5;
                    assert!((chance - share).abs() <= room, "{chance} told, {share} seen, {errors:?}");
                    compared += usize::from(chance > 0.001 && chance < 0.999);
                }
            }
        }
    }
    assert!(compared > 20, "{compared}");
}

/// The demo: 24 ft by 8 on 24 in members of 2 in, six full sheets without a gap, each seam planned to bear an inch.
///
/// By hand, at seam 5: forward, five sheets can be 1/16 scant, five settings 1/32 and one reading 1/16 off: 17/32 less, so
/// 15/32. Aft, no sheet is over; six settings and the reading take 1/4: 3/4. The chance forward is the corner of a box of
/// eleven errors that is cut off 1/32 from the worst: (1/32)¹¹ / 11! / ((1/16)¹⁰ · 1/8) = 1 / (4096 · 39 916 800).
#[test]
fn the_demo_is_as_counted_by_hand() {
    let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../examples/jobs/stack-24.json");
    let plan = plan(&Job::from_json(&std::fs::read_to_string(path).unwrap()).unwrap()).unwrap();
    let found = plan.tolerance.as_ref().unwrap();
    assert_eq!(plan.layouts[0].cost.worst_margin, Some(inch("-1/32")));
    let fifth = &found.seams[4];
    assert_eq!((found.weakest, fifth.member), (Some(5), 11));
    assert_eq!((fifth.fore.planned, fifth.fore.worst, fifth.fore.margin), (inch("1"), inch("15/32"), inch("-1/32")));
    assert_eq!((fifth.aft.worst, fifth.aft.margin), (inch("3/4"), inch("1/4")));
    let corner = 1.0 / (4096.0 * 39_916_800.0);
    assert!((fifth.fore.chance_short / corner - 1.0).abs() < 1e-9, "{}", fifth.fore.chance_short);
    assert!(fifth.aft.chance_short.abs() < f64::MIN_POSITIVE, "{}", fifth.aft.chance_short);
    // Squares of half-widths in 1/32: five of 1, five of 1, one of 4: √14; five scant sheets lie 5/32 under on the average.
    let root = 14.0_f64.sqrt() / 32.0 + 5.0 / 32.0;
    assert!((fifth.fore.root_sum_square.as_inches() - (1.0 - root)).abs() < 1e-7);
    let shares = found.shares.as_ref().unwrap();
    assert_eq!((shares.sheets, shares.setting, shares.sawing), (inch("5/16"), inch("5/32"), Length::ZERO));
    // Six sheets and six settings: 9/16 short or 3/16 past; the widest board is what a sheet gives, so none can be left over.
    let last = found.last_board.as_ref().unwrap();
    assert_eq!(
        (last.in_shop.under, last.in_shop.over, last.on_boat),
        (inch("9/16"), inch("3/16"), Spread::even(inch("1/16")))
    );
    assert_eq!((last.pays, last.beyond, last.saves), (true, inch("9/16"), inch("1/2")));
    assert_eq!((last.leave_wide, last.lacks), (inch("48-9/16"), inch("9/16")));
    let caution = plan.cautions.iter().find(|caution| caution.id == "tolerance").unwrap();
    assert_eq!(caution.about.len(), 1);
    assert!(caution.about[0].contains("seam 5 on member 11: fore board"), "{}", caution.about[0]);
    // Sheets are what takes most, and measured ones take nothing.
    let mut measured = plan.job.clone();
    measured.stock[0].measured = Some(deck_core::stock::Measured { length: inch("96"), width: inch("48") });
    let measured = deck_core::plan(&measured).unwrap();
    assert_eq!(measured.layouts[0].cost.worst_margin, Some(inch("1/4")));
    assert!(measured.cautions.iter().all(|caution| caution.id != "tolerance"));
}

#[derive(Debug, Clone)]
struct Case {
    /// Fore edge and width of each flange, in eighths.
    flanges: Vec<(i64, i64)>,
    length: i64,
    sheets: Vec<i64>,
    gap: i64,
    preferred: i64,
    /// Half-widths of reading, saw and setting, and how scant a sheet may be.
    errors: [i64; 4],
    chained: bool,
}

const BEARING: i64 = 3;
const LEAST: i64 = 90;

prop_compose! {
    fn cases()(
        bays in prop::collection::vec(120_i64..200, 2..8),
        flanges in prop::collection::vec(8_i64..16, 8),
        sheets in prop::collection::vec(300_i64..420, 1..3),
        gap in 0_i64..3,
        preferred in 100_i64..220,
        errors in prop::array::uniform4(0_i64..3),
        chained in any::<bool>(),
    ) -> Case {
        let mut fore = 0;
        let mut members = vec![(fore, flanges[0])];
        for (bay, flange) in bays.iter().zip(&flanges[1..]) {
            fore += bay;
            members.push((fore, *flange));
        }
        let (last, flange) = members[members.len() - 1];
        Case { length: last + flange, flanges: members, sheets, gap, preferred, errors, chained }
    }
}

impl Case {
    /// What errors take off the bearing forward of a seam and aft of it, from the boards' widths up to it.
    fn losses(&self, widths: &[i64], member: usize) -> [i64; 2] {
        let [reading, saw, set, scant] = self.errors;
        let sides = |full: i64, sawn: i64| -> i64 {
            widths.iter().map(|width| if self.sheets.contains(width) { full } else { sawn }).sum()
        };
        let boards = i64::try_from(widths.len()).unwrap();
        let readings = reading * if self.chained { i64::try_from(member).unwrap() + 1 } else { 1 };
        [sides(scant, saw) + boards * set + readings, sides(0, saw) + (boards + 1) * set + readings]
    }

    fn margin(&self, members: &[usize], positions: &[i64]) -> i64 {
        let mut start = 0;
        let mut widths = Vec::new();
        let mut least = i64::MAX;
        for (&member, &at) in members.iter().zip(positions) {
            widths.push(at - start);
            start = at + self.gap;
            let (fore, flange) = self.flanges[member];
            let [ahead, behind] = self.losses(&widths, member);
            least = least.min(at - fore - ahead - BEARING).min(fore + flange - start - behind - BEARING);
        }
        least
    }

    /// Boards, narrow and ripped boards, and the greatest margin at that cost, over every set of members and every
    /// eighth of an inch.
    fn walk(&self, members: &mut Vec<usize>, positions: &mut Vec<i64>, best: &mut Option<(usize, usize, usize, i64)>) {
        let start = positions.last().map_or(0, |at| at + self.gap);
        let widest = *self.sheets.iter().max().unwrap();
        let is_board = |from: i64, to: i64| (LEAST..=widest).contains(&(to - from));
        let fore = members.last().copied();
        // The board rests on its seams' members and those between: two at the least.
        if is_board(start, self.length) && self.flanges.len() - fore.unwrap_or(0) >= 2 {
            let mut widths: Vec<i64> = Vec::new();
            let mut from = 0;
            for at in positions.iter().chain([&self.length]) {
                widths.push(at - from);
                from = at + self.gap;
            }
            let narrow = widths.iter().filter(|width| **width < self.preferred).count();
            let ripped = widths.iter().filter(|width| !self.sheets.contains(width)).count();
            let found = (widths.len(), narrow, ripped, -self.margin(members, positions));
            *best = Some(best.map_or(found, |best| best.min(found)));
        }
        if best.is_some_and(|best| members.len() + 1 >= best.0) {
            return;
        }
        for member in fore.map_or(0, |fore| fore + 1)..self.flanges.len() {
            if fore.is_none() && member == 0 {
                continue;
            }
            let (flange, width) = self.flanges[member];
            for at in flange + BEARING..=flange + width - BEARING - self.gap {
                if is_board(start, at) {
                    members.push(member);
                    positions.push(at);
                    self.walk(members, positions, best);
                    positions.pop();
                    members.pop();
                }
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 250, ..ProptestConfig::default() })]

    /// No layout of the same boards and rips keeps more at its worst seam.
    #[test]
    fn the_margin_is_the_greatest_at_equal_cost(case in cases()) {
        let mut spec = FrameSpec::centred([], eighths(8));
        spec.members = case.flanges.iter().map(|&(fore, width)| {
            let mut member = MemberSpec::new(eighths(fore)).flange(eighths(width));
            member.measured_to = Some(deck_core::frame::MeasuredTo::ForeEdge);
            member
        }).collect();
        let frame = Frame::new(&spec).unwrap();
        let sheets: Vec<BoardStock> =
            case.sheets.iter().map(|&width| BoardStock { label: width.to_string(), width: eighths(width) }).collect();
        let rules = Rules::new(eighths(BEARING)).gap(eighths(case.gap)).widths(eighths(LEAST), eighths(case.preferred));
        let [reading, saw, set, scant] = case.errors.map(eighths);
        let errors = Errors::new(Spread::even(saw), Spread::even(set))
            .measuring(Spread::even(reading), case.chained)
            .full(case.sheets.iter().map(|&width| (eighths(width), Spread::scant(scant))).collect());
        let found = seams(&SeamProblem::new(&frame, eighths(case.length), sheets, rules).errors(errors.clone()).best(3));
        let mut best = None;
        case.walk(&mut Vec::new(), &mut Vec::new(), &mut best);
        let Some((boards, narrow, ripped, margin)) = best else { return Ok(()) };
        let layout = &found.layouts[0];
        let cost = &layout.cost;
        prop_assert!((cost.boards, cost.narrow_boards, cost.ripped_boards) <= (boards, narrow, ripped));
        if let (Some(own), true) =
            (cost.worst_margin, (cost.boards, cost.narrow_boards, cost.ripped_boards) == (boards, narrow, ripped))
        {
            prop_assert!(own >= eighths(-margin), "{own:?} and {:?}", eighths(-margin));
        }
        // What is told of each layout is what its own seams leave, and layouts come in the order of their cost.
        for layout in &found.layouts {
            let told = tolerance(layout, eighths(BEARING), &errors).iter().map(SeamTolerance::margin).min();
            prop_assert_eq!(told, layout.cost.worst_margin);
            let mut left = i64::MAX;
            for (index, seam) in layout.seams.iter().enumerate() {
                let widths: Vec<i64> =
                    layout.boards[..=index].iter().map(|board| board.width.nanometres()).collect();
                let full: Vec<i64> = case.sheets.iter().map(|width| width * EIGHTH).collect();
                let exact = Case { sheets: full, errors: case.errors.map(|error| error * EIGHTH), ..case.clone() };
                let [ahead, behind] = exact.losses(&widths, seam.member - 1);
                left = left
                    .min(seam.bearing_fore.nanometres() - ahead)
                    .min(seam.bearing_aft.nanometres() - behind);
            }
            if let Some(told) = told {
                prop_assert_eq!(told.nanometres(), left - BEARING * EIGHTH);
            }
        }
    }
}

#[test]
fn a_board_ripped_on_the_boat_makes_good_what_lies_before_it() {
    let frame = Frame::new(&FrameSpec::regular(Length::ZERO, inch("96"), inch("24"), inch("2"))).unwrap();
    let sheets = vec![BoardStock { label: "ply".into(), width: inch("54") }];
    let found = seams(&SeamProblem::new(&frame, inch("96"), sheets, Rules::new(inch("1/2"))));
    let errors = Errors::new(Spread::even(inch("1/8")), Spread::even(inch("1/32")));
    // Two boards of 48: the second is left as wide as the first saw error, two settings and its own saw line want.
    assert_eq!(width_to_rip(&found.layouts[0], &errors, 2), inch("48-5/16"));
    let last = last_board(&found.layouts[0], &errors, [inch("1"), inch("1")], inch("54")).unwrap();
    assert_eq!((last.in_shop, last.pays, last.lacks), (Spread::even(inch("5/16")), false, Length::ZERO));
    let strict = last_board(&found.layouts[0], &errors, [Length::ZERO, Length::ZERO], inch("54")).unwrap();
    assert_eq!((strict.pays, strict.beyond, strict.saves), (true, inch("5/16"), inch("3/16")));
}
