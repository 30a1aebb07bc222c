//! The best positions of the seams of one member set.
//!
//! With the kind of every board and the stretch of every flange chosen, what is left are straight inequalities between
//! neighbouring seams and costs that are sums of absolute values: a linear programme. The foremost position of each
//! seam (all lower bounds pushed from bow to stern) satisfies every inequality at once, so the programme starts there.

use super::SeamProblem;
use super::layout::{Board, Cost, Seam, SeamEnds, SeamLayout};
use super::pattern::{DiscreteCost, Pattern, least_patterns};
use super::reach::{Ground, rests};
use super::seat::{Lie, breadth};
use super::tolerance::{Errors, tolerance};
use crate::length::Length;
use crate::math::Programme;
use std::cmp::Ordering;

/// A member set at its best positions.
#[derive(Debug, Clone)]
pub(super) struct Placed {
    pub(super) members: Vec<usize>,
    short: usize,
    discrete: DiscreteCost,
    /// Costs in order of weight and then positions, as fractions of `denominator`.
    weights: Vec<i128>,
    denominator: i128,
    /// Where each gap starts, then where the last board ends, in nanometres.
    positions: Vec<i64>,
    /// False where the exact optimum outgrew the arithmetic and the foremost positions stand in.
    pub(super) exact: bool,
}

impl Placed {
    /// Better first.
    pub(super) fn compare(&self, other: &Placed) -> Ordering {
        let scaled = |ours: &Placed, theirs: &Placed| {
            ours.weights.iter().map(|weight| weight.saturating_mul(theirs.denominator)).collect::<Vec<_>>()
        };
        (self.short, self.members.len(), self.discrete)
            .cmp(&(other.short, other.members.len(), other.discrete))
            .then_with(|| scaled(self, other).cmp(&scaled(other, self)))
            .then_with(|| self.members.cmp(&other.members))
    }
}

/// The best positions for a set of members with so many short seams; none where it cannot be better than `worst`.
pub(super) fn best_placing(
    problem: &SeamProblem<'_>,
    ground: &Ground,
    members: &[usize],
    short: usize,
    worst: Option<&Placed>,
) -> Option<Placed> {
    let limit = worst.filter(|worst| (worst.short, worst.members.len()) == (short, members.len()));
    let (discrete, patterns) = least_patterns(ground, members, short, limit.map(|worst| worst.discrete))?;
    patterns
        .iter()
        .filter_map(|pattern| {
            let chain = Chain::new(ground, pattern, None)?;
            let margin =
                problem.errors.as_ref().and_then(|errors| greatest_margin(problem, ground, members, pattern, errors));
            let (chain, margin) = margin.map_or((chain, None), |(chain, margin)| (chain, Some(margin)));
            Some(chain.placed(problem, ground, members, (short, discrete), margin))
        })
        .min_by(Placed::compare)
}

/// Seams in a row, each between two bounds, and each at a distance between two bounds from the one before.
struct Chain {
    /// Foremost positions that satisfy everything; the last is where the deck finishes.
    low: Vec<i64>,
    high: Vec<i64>,
    /// Least and greatest distance from the seam before (the bow counts as a seam).
    step: Vec<(i64, i64)>,
    /// Change of the seam's length over its stretch, in millionths, aft.
    slope: Vec<i128>,
}

/// Slopes of seam lengths are counted in millionths, so that the programme stays in whole numbers.
const SLOPE_SCALE: i128 = 1_000_000;

impl Chain {
    /// `within` are bounds of the seams beside those of their stretches.
    fn new(ground: &Ground, pattern: &Pattern<'_>, within: Option<&[(i64, i64)]>) -> Option<Chain> {
        let narrowed = |(seam, piece): (usize, &&super::seat::Piece)| {
            let (low, high) = within.and_then(|within| within.get(seam)).copied().unwrap_or((piece.low, piece.high));
            (piece.low.max(low), piece.high.min(high))
        };
        let bounds = pattern.pieces.iter().enumerate().map(narrowed).chain([ground.finish]);
        let (mut low, mut high): (Vec<i64>, Vec<i64>) = bounds.unzip();
        let step: Vec<(i64, i64)> =
            pattern.kinds.iter().map(|kind| (ground.gap + kind.width.0, ground.gap + kind.width.1)).collect();
        let mut before = (-ground.gap, -ground.gap);
        for seam in 0..low.len() {
            low[seam] = low[seam].max(before.0 + step[seam].0);
            high[seam] = high[seam].min(before.1 + step[seam].1);
            before = (low[seam], high[seam]);
        }
        for seam in (1..low.len()).rev() {
            low[seam - 1] = low[seam - 1].max(low[seam] - step[seam].1);
            high[seam - 1] = high[seam - 1].min(high[seam] - step[seam].0);
        }
        // Pushing aft may have to be followed once more by pushing what lies behind.
        for seam in 1..low.len() {
            low[seam] = low[seam].max(low[seam - 1] + step[seam].0);
        }
        let slope = pattern.pieces.iter().map(|piece| {
            let [start, end] = piece.breadth.map(i128::from);
            (end - start) * SLOPE_SCALE / i128::from((piece.high - piece.low).max(1))
        });
        let slope = slope.chain([0]).collect();
        low.iter().zip(&high).all(|(low, high)| low <= high).then_some(Chain { low, high, step, slope })
    }

    fn placed(
        &self,
        problem: &SeamProblem<'_>,
        ground: &Ground,
        members: &[usize],
        (short, discrete): (usize, DiscreteCost),
        margin: Option<i64>,
    ) -> Placed {
        let middles: Vec<i64> = members.iter().map(|&member| ground.seats[member].doubled_middle).collect();
        let optimum = Model::new(self, &middles, ground.gap).solve();
        let exact = optimum.is_some();
        let (numerators, denominator) =
            optimum.unwrap_or_else(|| (self.low.iter().copied().map(i128::from).collect(), 1));
        let positions: Vec<i64> = numerators
            .iter()
            .map(|numerator| i64::try_from(numerator.div_euclid(denominator)).unwrap_or(i64::MAX))
            .collect();
        let seam_length: i64 = positions[..members.len()].iter().map(|&at| breadth(problem, at)).sum();
        let [unevenness, shift] = continuous_costs(&numerators, denominator, &middles, ground.gap);
        let finish = numerators.last().map_or(0, |finish| i128::from(ground.finish.1) * denominator - finish);
        let margin = margin.map_or(0, |margin| -i128::from(margin) * denominator);
        let mut weights = vec![margin, unevenness, i128::from(seam_length) * denominator, shift, finish];
        weights.extend(&numerators);
        Placed { members: members.to_vec(), short, discrete, weights, denominator, positions, exact }
    }
}

/// The chain in which every seam keeps the greatest margin that all of them can keep together above the least bearing
/// when every error is at its limit, and that margin; none where there is no seam.
///
/// With the kinds of boards chosen, what errors take is fixed, and a margin narrows each seam's bounds. More margin narrows
/// them further, so halving finds the greatest whole one.
fn greatest_margin(
    problem: &SeamProblem<'_>,
    ground: &Ground,
    members: &[usize],
    pattern: &Pattern<'_>,
    errors: &Errors,
) -> Option<(Chain, i64)> {
    // A ripped board has a sawn width, which is none of the sheets' own.
    let ripped = Length::from_nanometres(-1);
    let widths: Vec<Length> = pattern
        .kinds
        .iter()
        .map(|kind| if kind.ripped { ripped } else { Length::from_nanometres(kind.width.0) })
        .collect();
    let (least, gap) = (problem.rules.least_bearing, problem.rules.gap);
    let bare: Vec<(i64, i64)> = members
        .iter()
        .enumerate()
        .map(|(index, &member)| {
            let member = &problem.frame.members()[member];
            let [fore, aft] = errors.losses(&widths[..=index], member.number);
            let lie = Lie::new(member, &problem.rules);
            ((lie.fore + least + fore).nanometres(), (lie.aft - least - aft - gap).nanometres())
        })
        .collect();
    let keeping = |margin: i64| {
        let within: Vec<(i64, i64)> = bare.iter().map(|&(low, high)| (low + margin, high - margin)).collect();
        Chain::new(ground, pattern, Some(&within))
    };
    // Twice a margin is at most what the narrowest seam's bounds leave, and as much below zero as takes them past every
    // stretch.
    let mut high = bare.iter().map(|(low, high)| (high - low).div_euclid(2)).min()?;
    let reach = |(bare, piece): (&(i64, i64), &&super::seat::Piece)| (bare.0 - piece.low).max(piece.high - bare.1);
    let mut low = -bare.iter().zip(&pattern.pieces).map(reach).max()?.max(-high);
    let mut best = keeping(low)?;
    while low < high {
        let middle = low + (high - low + 1) / 2;
        match keeping(middle) {
            Some(chain) => (low, best) = (middle, chain),
            None => high = middle - 1,
        }
    }
    Some((best, low))
}

/// Unevenness and doubled shift, over the denominator.
fn continuous_costs(numerators: &[i128], denominator: i128, middles: &[i64], gap: i64) -> [i128; 2] {
    let boards = numerators.len();
    let bow = -i128::from(gap) * denominator;
    let at = |seam: usize| if seam == 0 { bow } else { numerators[seam - 1] };
    let width = |board: usize| at(board + 1) - at(board);
    let unevenness = (0..boards).map(|board| (width(board) - width(boards - 1 - board)).abs()).sum();
    let shift =
        middles.iter().zip(numerators).map(|(&middle, at)| (2 * at - i128::from(middle) * denominator).abs()).sum();
    [unevenness, shift]
}

/// The linear programme of a chain. Each group of seams that full boards tie together is one variable: its distance
/// aft of the foremost position.
struct Model<'a> {
    chain: &'a Chain,
    /// Variable of each seam; none where it cannot move.
    variable: Vec<Option<usize>>,
    /// How far each variable can move.
    range: Vec<i64>,
    rows: Vec<(Vec<(usize, i128)>, i128)>,
    objectives: Vec<Vec<(usize, i128)>>,
}

impl<'a> Model<'a> {
    fn new(chain: &'a Chain, middles: &[i64], gap: i64) -> Model<'a> {
        let mut model =
            Model { chain, variable: Vec::new(), range: Vec::new(), rows: Vec::new(), objectives: Vec::new() };
        model.tie();
        model.steps();
        model.even(gap);
        model.lengths();
        model.shift(middles);
        model.foremost();
        model
    }

    fn tie(&mut self) {
        let chain = self.chain;
        for seam in 0..chain.low.len() {
            let range = chain.high[seam] - chain.low[seam];
            let tied = seam > 0 && chain.step[seam].0 == chain.step[seam].1;
            let variable = if range == 0 {
                None
            } else if let Some(before) = self.variable.last().copied().flatten().filter(|_| tied) {
                self.range[before] = self.range[before].min(range);
                Some(before)
            } else {
                self.range.push(range);
                Some(self.range.len() - 1)
            };
            self.variable.push(variable);
        }
        for (variable, &range) in self.range.iter().enumerate() {
            self.rows.push((vec![(variable, 1)], i128::from(range)));
        }
    }

    /// Distances between neighbouring seams, where the seams' own bounds do not keep them already.
    fn steps(&mut self) {
        for seam in 1..self.chain.low.len() {
            let (before, here) = (self.variable[seam - 1], self.variable[seam]);
            if before == here {
                continue;
            }
            let apart = self.chain.low[seam] - self.chain.low[seam - 1];
            let (least, most) = self.chain.step[seam];
            let term = |variable: Option<usize>, factor: i128| variable.map(|variable| (variable, factor));
            let mut bound = |grows: Option<usize>, falls: Option<usize>, room: i64| {
                if grows.is_some_and(|variable| self.range[variable] > room) {
                    let terms = term(grows, 1).into_iter().chain(term(falls, -1)).collect();
                    self.rows.push((terms, i128::from(room)));
                }
            };
            bound(here, before, most - apart);
            bound(before, here, apart - least);
        }
    }

    /// Minimises Σ |qᵢ − qᵢ₋₁| with qᵢ = pᵢ + pₙ₋ᵢ, which is half the unevenness.
    fn even(&mut self, gap: i64) {
        let boards = self.chain.low.len();
        let mut objective = Vec::new();
        let at = |seam: usize| seam.checked_sub(1);
        for pair in 1..=boards / 2 {
            let plus = [at(pair), at(boards - pair)];
            let minus = [at(pair - 1), at(boards + 1 - pair)];
            let low = |seam: Option<usize>| i128::from(seam.map_or(-gap, |seam| self.chain.low[seam]));
            let constant = plus.map(low).iter().sum::<i128>() - minus.map(low).iter().sum::<i128>();
            let terms = self.terms(plus, 1).chain(self.terms(minus, -1)).collect();
            self.absolute(terms, constant, &mut objective);
        }
        self.objectives.push(objective);
    }

    fn terms(&self, seams: [Option<usize>; 2], factor: i128) -> impl Iterator<Item = (usize, i128)> + use<> {
        let variables = seams.map(|seam| seam.and_then(|seam| self.variable[seam]));
        variables.into_iter().flatten().map(move |variable| (variable, factor))
    }

    /// Adds |terms + constant| to an objective.
    ///
    /// With the sign turned so that the constant is zero or more, |e + c| = e + c + 2 max(0, −(e + c)), and the maximum
    /// is a variable of its own where e + c can fall below zero at all.
    fn absolute(&mut self, mut terms: Vec<(usize, i128)>, constant: i128, objective: &mut Vec<(usize, i128)>) {
        if constant < 0 {
            for term in &mut terms {
                term.1 = -term.1;
            }
        }
        let constant = constant.abs();
        objective.extend(&terms);
        let fall: i128 = sum_by_variable(&terms)
            .iter()
            .map(|&(variable, factor)| (-factor).max(0) * i128::from(self.range[variable]))
            .sum();
        if fall > constant {
            self.range.push(0);
            let below = self.range.len() - 1;
            objective.push((below, 2));
            let row = terms.iter().map(|&(variable, factor)| (variable, -factor)).chain([(below, -1)]).collect();
            self.rows.push((row, constant));
        }
    }

    fn lengths(&mut self) {
        let slopes = self.chain.slope.iter().zip(&self.variable);
        let objective = slopes.filter_map(|(&slope, variable)| variable.map(|variable| (variable, slope))).collect();
        self.objectives.push(objective);
    }

    fn shift(&mut self, middles: &[i64]) {
        let mut objective = Vec::new();
        for (seam, &middle) in middles.iter().enumerate() {
            if let Some(variable) = self.variable[seam] {
                let constant = 2 * i128::from(self.chain.low[seam]) - i128::from(middle);
                self.absolute(vec![(variable, 2)], constant, &mut objective);
            }
        }
        self.objectives.push(objective);
    }

    /// The last board as near to the outline's end as can be, then every seam as far forward.
    fn foremost(&mut self) {
        let finish = self.variable.last().copied().flatten();
        self.objectives.push(finish.map(|variable| (variable, -1)).into_iter().collect());
        for variable in self.variable.iter().flatten() {
            self.objectives.push(vec![(*variable, 1)]);
        }
    }

    /// Positions over a common denominator.
    fn solve(&self) -> Option<(Vec<i128>, i128)> {
        if self.range.is_empty() {
            return Some((self.chain.low.iter().copied().map(i128::from).collect(), 1));
        }
        let mut programme = Programme::new(self.range.len());
        for (terms, bound) in &self.rows {
            programme.row(terms, *bound);
        }
        for objective in &self.objectives {
            programme.minimise(objective);
        }
        let optimum = programme.solve()?;
        let place = |(&low, variable): (&i64, &Option<usize>)| {
            i128::from(low) * optimum.denominator + variable.map_or(0, |variable| optimum.numerators[variable])
        };
        Some((self.chain.low.iter().zip(&self.variable).map(place).collect(), optimum.denominator))
    }
}

fn sum_by_variable(terms: &[(usize, i128)]) -> Vec<(usize, i128)> {
    let mut sums: Vec<(usize, i128)> = Vec::with_capacity(terms.len());
    for &(variable, factor) in terms {
        match sums.iter_mut().find(|(known, _)| *known == variable) {
            Some(sum) => sum.1 += factor,
            None => sums.push((variable, factor)),
        }
    }
    sums
}

impl Placed {
    /// The layout in lengths.
    pub(super) fn layout(&self, problem: &SeamProblem<'_>) -> SeamLayout {
        let gap = problem.rules.gap;
        let positions: Vec<Length> = self.positions.iter().map(|&at| Length::from_nanometres(at)).collect();
        let finish = positions.last().copied().unwrap_or_default();
        let seams: Vec<Seam> = self
            .members
            .iter()
            .zip(&positions)
            .enumerate()
            .map(|(index, (&member, &fore))| seam(problem, index, member, fore))
            .collect();
        let fores = std::iter::once(Length::ZERO).chain(positions.iter().map(|&at| at + gap));
        let boards: Vec<Board> = fores
            .zip(&positions)
            .enumerate()
            .map(|(index, (fore, &aft))| {
                let slanted = |seam: Option<&Seam>| seam.is_some_and(|seam| !seam.slant().is_zero());
                let tilted =
                    slanted(seams.get(index)) || slanted(index.checked_sub(1).and_then(|before| seams.get(before)));
                board(problem, index + 1, fore, aft, tilted)
            })
            .collect();
        let mirrored = boards.iter().zip(boards.iter().rev());
        let cost = Cost {
            short_seams: self.short,
            boards: boards.len(),
            narrow_boards: boards.iter().filter(|board| board.narrow).count(),
            ripped_boards: boards.iter().filter(|board| board.full_width_of.is_none()).count(),
            worst_margin: None,
            unevenness: mirrored.map(|(one, other)| (one.width - other.width).abs()).sum(),
            seam_length: seams.iter().filter_map(|seam| seam.length).sum(),
            shift: seams.iter().map(|seam| seam.shift.abs()).sum(),
            finish_short: problem.deck_length - finish,
        };
        let mut layout = SeamLayout { boards, seams, cost, finish };
        if let Some(errors) = &problem.errors {
            let left = tolerance(&layout, problem.rules.least_bearing, errors);
            layout.cost.worst_margin = left.iter().map(super::tolerance::SeamTolerance::margin).min();
        }
        layout
    }
}

fn seam(problem: &SeamProblem<'_>, index: usize, member: usize, fore: Length) -> Seam {
    let (member, rules) = (&problem.frame.members()[member], &problem.rules);
    let aft = fore + rules.gap;
    let lie = Lie::new(member, rules);
    let (bearing_fore, bearing_aft) = (fore - lie.fore, lie.aft - aft);
    let row = rules.edge_in_ply + rules.edge_in_metal;
    let lacking = |bearing: Length| (row - bearing).max(Length::ZERO);
    Seam {
        number: index + 1,
        member: member.number,
        fore,
        aft,
        bearing_fore,
        bearing_aft,
        shift: fore.midpoint(aft) - lie.fore.midpoint(lie.aft),
        short_by: lacking(bearing_fore) + lacking(bearing_aft),
        ends: SeamEnds::new(member, lie.slant(member), lie.along, fore, aft),
        length: problem.outline.map(|_| Length::from_nanometres(breadth(problem, fore.nanometres()))),
        lane: None,
    }
}

/// `tilted` where one of its edges is slanted.
fn board(problem: &SeamProblem<'_>, number: usize, fore: Length, aft: Length, tilted: bool) -> Board {
    let width = aft - fore;
    let full = problem.sheets.iter().find(|sheet| sheet.width == width && !tilted);
    let rules = &problem.rules;
    let bears = |overlap: Length| overlap >= rules.least_bearing && overlap > Length::ZERO;
    let under = problem.frame.members().iter().filter(|member| {
        bears(member.aft.min(aft) - member.fore.max(fore)) && rests(member, rules, problem.deck_length)
    });
    Board {
        number,
        fore,
        aft,
        width,
        full_width_of: full.map(|sheet| sheet.label.clone()),
        narrow: width < rules.preferred_width,
        supports: under.map(|member| member.number).collect(),
        lane: None,
    }
}
