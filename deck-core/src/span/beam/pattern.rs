//! The worst of all ways in which a live load may lie on some spans and not on others.

use super::piece::Bent;
use super::result::{Beam, Peak, Range};
use super::segment::{Segment, segments};
use super::{BeamLoad, BeamProblem, check, solve};
use crate::error::{Error, Fault, Kind};

/// Every span's live load is looked at on every span; more spans than this is not a deck.
const MOST_SPANS: usize = 200;
/// Intervals shorter than this part of a stretch come from the rounding of zeros that coincide.
const SHORTEST: f64 = 1e-12;

/// A worst value, where it is reached, and which stretches carry the live load for it.
#[derive(Debug, Clone, PartialEq, Default, serde::Serialize)]
#[non_exhaustive]
pub struct WorstPeak {
    /// Distance from the left tip of the beam.
    pub at: f64,
    /// The value there.
    pub value: f64,
    /// The stretches that carry live load: 0 is the left overhang, 1 the first span, the last the right overhang.
    pub loaded: Vec<usize>,
}

/// The least and the greatest value over all patterns.
#[derive(Debug, Clone, PartialEq, Default, serde::Serialize)]
#[non_exhaustive]
pub struct WorstRange {
    /// The least.
    pub least: WorstPeak,
    /// The greatest.
    pub most: WorstPeak,
}

/// The worst at a support.
#[derive(Debug, Clone, PartialEq, Default, serde::Serialize)]
#[non_exhaustive]
pub struct WorstSupport {
    /// Distance from the left tip of the beam.
    pub at: f64,
    /// Force of the support, upward positive.
    pub reaction: WorstRange,
    /// Moment over it, sagging positive.
    pub moment: WorstRange,
}

/// The worst along a span or an overhang.
#[derive(Debug, Clone, PartialEq, Default, serde::Serialize)]
#[non_exhaustive]
pub struct WorstSpan {
    /// Its left end, from the left tip of the beam.
    pub from: f64,
    /// Its length.
    pub length: f64,
    /// Moments, sagging positive.
    pub moment: WorstRange,
    /// Shears.
    pub shear: WorstRange,
    /// Deflections, downward positive.
    pub deflection: WorstRange,
}

/// The worst of all patterns of the live load.
#[derive(Debug, Clone, PartialEq, Default, serde::Serialize)]
#[non_exhaustive]
pub struct BeamWorst {
    /// The supports, from the left.
    pub supports: Vec<WorstSupport>,
    /// The spans, from the left.
    pub spans: Vec<WorstSpan>,
    /// The left and the right overhang, where there is one.
    pub overhangs: [Option<WorstSpan>; 2],
}

impl BeamProblem {
    /// The worst of all patterns: the dead loads act always, the live loads on any choice of spans and overhangs.
    ///
    /// # Method
    /// Exact, without trying the `2^n` patterns. Answers add up, so the worst at one place takes the live load of each
    /// span whose own part there has the wanted sign. That choice changes only where such a part is zero, so each
    /// stretch is cut at those zeros, and every choice that occurs is solved for its own extremes.
    ///
    /// # Cost
    /// Grows with the square of the number of spans: about ten solutions a span.
    ///
    /// # Errors
    /// As [`BeamProblem::solve`]; more than 200 spans.
    ///
    /// # Examples
    /// Loads on the outer spans alone bend them most:
    /// ```
    /// use deck_core::span::{BeamLoad, BeamProblem};
    /// let board = BeamProblem::new(&[16.0, 16.0, 16.0]);
    /// let worst = board.worst(&[], &[BeamLoad::uniform(1.0)])?;
    /// let most = &worst.spans[0].moment.most;
    /// assert_eq!(most.loaded, [1, 3]);
    /// assert!((most.value - 25.92).abs() < 1e-9);
    /// # Ok::<(), deck_core::Error>(())
    /// ```
    pub fn worst(&self, dead: &[BeamLoad], live: &[BeamLoad]) -> Result<BeamWorst, Error> {
        check::problem(self)?;
        check::loads(self, dead, "dead")?;
        check::loads(self, live, "live")?;
        if self.spans.len() > MOST_SPANS {
            let message = format!("There are {} spans.", self.spans.len());
            let accepted = format!("Patterns are tried on at most {MOST_SPANS}.");
            return Err(Fault::new(Kind::TooMany, self.spans.len().to_string(), message, accepted)
                .within("spans")
                .into());
        }
        Ok(Patterns::new(self, dead, live).worst())
    }
}

/// Everything that the choice of a pattern rests on.
struct Patterns<'a> {
    problem: &'a BeamProblem,
    dead: Vec<Segment>,
    live: Vec<Segment>,
    /// The answer to the dead loads alone, and to each stretch's live load alone.
    dead_beam: Beam,
    parts: Vec<Beam>,
}

/// A quantity that varies along a stretch.
struct Along {
    /// Its zeros on a stretch.
    zeros: fn(&Bent) -> Vec<f64>,
    /// Its value at a place.
    value: fn(&Beam, f64) -> Option<f64>,
    /// Its extremes on a stretch.
    range: fn(&Bent) -> Range,
}

const MOMENT: Along = Along { zeros: Bent::moment_zeros, value: Beam::moment_at, range: Bent::moments };
const SHEAR: Along = Along { zeros: Bent::shear_zeros, value: Beam::shear_at, range: Bent::shears };
const DEFLECTION: Along = Along { zeros: Bent::sag_zeros, value: Beam::deflection_at, range: Bent::sags };

impl<'a> Patterns<'a> {
    fn new(problem: &'a BeamProblem, dead: &[BeamLoad], live: &[BeamLoad]) -> Patterns<'a> {
        let (dead, live) = (segments(problem, dead), segments(problem, live));
        let bare = segments(problem, &[]);
        let part = |index: usize| {
            let mut one = bare.clone();
            one[index].clone_from(&live[index]);
            solve::solve(problem, &one)
        };
        let parts = (0..live.len()).map(part).collect();
        Patterns { problem, dead_beam: solve::solve(problem, &dead), parts, dead, live }
    }

    fn worst(&self) -> BeamWorst {
        let supports = (0..self.dead_beam.supports.len()).map(|index| self.support(index)).collect();
        let mut spans: Vec<WorstSpan> = (0..self.live.len()).map(|index| self.stretch(index)).collect();
        let overhang = |span: Option<WorstSpan>| span.filter(|span| span.length > 0.0);
        let right = overhang(spans.pop());
        let left = overhang((!spans.is_empty()).then(|| spans.remove(0)));
        BeamWorst { supports, spans, overhangs: [left, right] }
    }

    fn support(&self, index: usize) -> WorstSupport {
        let at = self.dead_beam.supports[index].at;
        let range = |value: &dyn Fn(&Beam) -> f64| {
            let sum = |sign: f64| {
                let wanted = |part: &Beam| sign * value(part) > 0.0;
                let loaded = self.choose(wanted);
                let live: f64 = loaded.iter().map(|&part| value(&self.parts[part])).sum();
                WorstPeak { at, value: value(&self.dead_beam) + live, loaded }
            };
            WorstRange { least: sum(-1.0), most: sum(1.0) }
        };
        WorstSupport {
            at,
            reaction: range(&|beam| beam.supports[index].reaction),
            moment: range(&|beam| beam.supports[index].moment),
        }
    }

    fn stretch(&self, index: usize) -> WorstSpan {
        let Segment { start: from, length, .. } = self.live[index];
        let deflection = {
            let mut range = self.range(index, &DEFLECTION);
            range.least.value /= self.problem.stiffness;
            range.most.value /= self.problem.stiffness;
            range
        };
        WorstSpan { from, length, moment: self.range(index, &MOMENT), shear: self.range(index, &SHEAR), deflection }
    }

    fn range(&self, index: usize, along: &Along) -> WorstRange {
        if self.live[index].length <= 0.0 {
            return WorstRange::default();
        }
        let worst = |sign: f64| {
            let peaks = self.choices(index, along, sign).into_iter().map(|loaded| {
                let range = (along.range)(&self.with(&loaded).bent[index]);
                let Peak { at, value } = if sign > 0.0 { range.most } else { range.least };
                WorstPeak { at, value, loaded }
            });
            let better =
                |best: WorstPeak, peak: WorstPeak| if sign * peak.value > sign * best.value { peak } else { best };
            peaks.reduce(better).unwrap_or_default()
        };
        WorstRange { least: worst(-1.0), most: worst(1.0) }
    }

    /// The choices of live loads that are worst somewhere on a stretch, each once.
    fn choices(&self, index: usize, along: &Along, sign: f64) -> Vec<Vec<usize>> {
        let Segment { start, length, .. } = self.live[index];
        let mut cuts: Vec<f64> = self.parts.iter().flat_map(|part| (along.zeros)(&part.bent[index])).collect();
        cuts.extend([start, start + length]);
        cuts.sort_by(f64::total_cmp);
        let middles = cuts.windows(2).filter(|pair| pair[1] - pair[0] > SHORTEST * length);
        let choose = |x: f64| self.choose(|part| (along.value)(part, x).is_some_and(|value| sign * value > 0.0));
        let mut choices: Vec<Vec<usize>> = middles.map(|pair| choose(pair[0].midpoint(pair[1]))).collect();
        choices.sort();
        choices.dedup();
        choices
    }

    fn choose(&self, wanted: impl Fn(&Beam) -> bool) -> Vec<usize> {
        (0..self.parts.len()).filter(|&part| wanted(&self.parts[part])).collect()
    }

    /// The answer with live load on some stretches.
    fn with(&self, loaded: &[usize]) -> Beam {
        let mut segments = self.dead.clone();
        for &index in loaded {
            segments[index].loads.extend_from_slice(&self.live[index].loads);
            segments[index].on_left += self.live[index].on_left;
        }
        solve::solve(self.problem, &segments)
    }
}
