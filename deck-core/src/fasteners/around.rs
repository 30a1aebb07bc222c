//! Moves the fasteners of a row off old holes in the member.

use super::chain::{Chain, common};
use super::divide::Blocked;
use super::old_hole::AroundHoles;
use crate::length::Length;
use crate::math::IntervalSet;

/// Fasteners that may be added to a row so that its greatest gap stays within the limit.
const MOST_MORE: i64 = 2;

/// A row as it would be without old holes, and what it is held to.
pub(super) struct Task<'a> {
    /// Where fasteners lie in a division with so many steps more than the row needs.
    pub(super) division: &'a dyn Fn(i64) -> Vec<Length>,
    /// Stretches near edges and openings.
    pub(super) blocked: &'a [Blocked],
    /// Stretches near old holes.
    pub(super) holes: &'a [Blocked],
    /// Old holes that a bolt may go through again.
    pub(super) again: &'a [Length],
    /// Where the row may start and end.
    pub(super) ends: (Length, Length),
    /// The deck's beam: a place and its mirror image add up to it.
    pub(super) beam: Length,
    /// Greatest gap that is allowed.
    pub(super) limit: Length,
    /// Least distance from one fastener to the next.
    pub(super) apart: Length,
}

/// The places of a row's fasteners, with what had to be done: fewest fasteners first, then mirrored where that can be,
/// then the least sum of shifts. None where no old hole is in the way.
///
/// A gap that an opening has made wider than the limit is not made wider still. Where no row of up to two more fasteners
/// keeps its gaps, the greatest of them is as little over as can be.
pub(super) fn around(task: &Task<'_>) -> Option<(Vec<Length>, AroundHoles)> {
    let plain = (task.division)(0);
    let hit = |place: &Length| {
        let near = task.holes.iter().any(|(from, to)| from < place && place < to);
        near && !task.again.contains(place)
    };
    if plain.is_empty() || (!plain.iter().any(hit) && task.again.is_empty()) {
        return None;
    }
    let free = task.free();
    for more in 0..=MOST_MORE {
        let wanted = nanometres(&(task.division)(more));
        let row = Wanted::new(task, wanted, &free, 0);
        if let Some((places, mirrored)) = row.best() {
            return Some(task.told(&row.places, &places, mirrored, more));
        }
    }
    let wanted = nanometres(&plain);
    if let Some(over) = task.least_over(&wanted, &free) {
        let row = Wanted::new(task, wanted, &free, over);
        if let Some((places, mirrored)) = row.best() {
            return Some(task.told(&row.places, &places, mirrored, 0));
        }
    }
    let kept: Vec<Length> = plain.iter().copied().filter(|place| !hit(place)).collect();
    let dropped = plain.len() - kept.len();
    let told = AroundHoles { holes: task.holes.len(), dropped, ..AroundHoles::default() };
    Some((kept, told))
}

impl Task<'_> {
    /// Where fasteners may lie.
    fn free(&self) -> IntervalSet {
        let (low, high) = self.ends;
        let mut free = IntervalSet::of(low.nanometres(), high.nanometres());
        for (from, to) in self.blocked {
            free.remove_open(from.nanometres(), to.nanometres());
        }
        let on_edges = free.clone();
        for (from, to) in self.holes {
            free.remove_open(from.nanometres(), to.nanometres());
        }
        // A bolt may go through an old hole, not through one that is too near to an opening.
        for place in self.again {
            free.add_all(&on_edges.within(place.nanometres(), place.nanometres()));
        }
        free
    }

    /// The least that the gaps have to be over what they may be; none where no room is left for the row at all.
    fn least_over(&self, wanted: &[i64], free: &IntervalSet) -> Option<i64> {
        let possible = |over: i64| Wanted::new(self, wanted.to_vec(), free, over).plain().is_possible();
        let (mut low, mut high) = (0, (self.ends.1 - self.ends.0).nanometres());
        if !possible(high) {
            return None;
        }
        while low < high {
            let middle = i64::midpoint(low, high);
            if possible(middle) { high = middle } else { low = middle + 1 }
        }
        Some(high)
    }

    fn told(&self, wanted: &[i64], places: &[i64], mirrored: bool, more: i64) -> (Vec<Length>, AroundHoles) {
        let shifts = || places.iter().zip(wanted).map(|(place, wanted)| (place - wanted).abs());
        let at: Vec<Length> = places.iter().map(|&place| Length::from_nanometres(place)).collect();
        let told = AroundHoles {
            holes: self.holes.len(),
            moved: shifts().filter(|shift| *shift > 0).count(),
            added: usize::try_from(more).unwrap_or(0),
            dropped: 0,
            reused: at.iter().filter(|place| self.again.contains(place)).count(),
            shift: Length::from_nanometres(shifts().sum()),
            greatest_shift: Length::from_nanometres(shifts().max().unwrap_or(0)),
            mirrored,
        };
        (at, told)
    }
}

/// A division, and the gaps that it may have.
struct Wanted<'a> {
    places: Vec<i64>,
    free: &'a IntervalSet,
    ends: (i64, i64),
    limit: i64,
    over: i64,
    steps: Vec<(i64, i64)>,
    beam: i64,
}

impl<'a> Wanted<'a> {
    fn new(task: &Task<'_>, wanted: Vec<i64>, free: &'a IntervalSet, over: i64) -> Wanted<'a> {
        let limit = task.limit.nanometres();
        let step = |pair: &[i64]| {
            let gap = pair[1] - pair[0];
            (task.apart.nanometres().min(gap), gap.max(limit) + over)
        };
        Wanted {
            free,
            ends: (task.ends.0.nanometres(), task.ends.1.nanometres()),
            limit,
            over,
            steps: wanted.windows(2).map(step).collect(),
            beam: task.beam.nanometres(),
            places: wanted,
        }
    }

    /// The places with the least sum of shifts, mirrored where there are such.
    fn best(&self) -> Option<(Vec<i64>, bool)> {
        let mirrored = self.mirrored().map(|places| (places, true));
        mirrored.or_else(|| self.plain().least_shift().map(|places| (places, false)))
    }

    /// Where the first may lie: it stays at the row's end unless a hole is right there.
    fn first(&self, free: &IntervalSet) -> (i64, i64) {
        let wanted = self.places.first().copied().unwrap_or(self.ends.0);
        if !free.within(wanted, wanted).is_empty() {
            return (wanted, wanted);
        }
        (self.ends.0, self.ends.0 + (wanted - self.ends.0).max(self.limit) + self.over)
    }

    /// Where the last may lie.
    fn last(&self, free: &IntervalSet) -> (i64, i64) {
        let wanted = self.places.last().copied().unwrap_or(self.ends.1);
        if !free.within(wanted, wanted).is_empty() {
            return (wanted, wanted);
        }
        (self.ends.1 - (self.ends.1 - wanted).max(self.limit) - self.over, self.ends.1)
    }

    fn plain(&self) -> Chain<'_> {
        let (first, last) = (self.first(self.free), self.last(self.free));
        Chain { wanted: &self.places, free: self.free, first, last, steps: &self.steps }
    }

    /// The port half of a mirrored row, and its image.
    fn mirrored(&self) -> Option<Vec<i64>> {
        let count = self.places.len();
        let image = |place: &i64| self.beam - place;
        let half = self.places.get(..count.div_ceil(2))?;
        let even = self.places.iter().zip(self.places.iter().rev()).all(|(one, other)| image(one) == *other);
        if !even || self.ends.0 + self.ends.1 != self.beam {
            return None;
        }
        let mut both = IntervalSet::new();
        self.free.intervals().iter().for_each(|(low, high)| both.add(image(high), image(low)));
        let free = common(self.free, &both);
        let last = if count % 2 == 1 {
            // An odd row has one on the centreline: with an even beam only.
            (self.beam % 2 == 0).then_some((self.beam / 2, self.beam / 2))?
        } else {
            let (least, most) = *self.steps.get(count / 2 - 1)?;
            (-(most - self.beam).div_euclid(2), (self.beam - least).div_euclid(2))
        };
        let steps = self.steps.get(..half.len() - 1)?;
        let first = self.first(&free);
        // Of a single fastener the first place is the last as well.
        let first = if half.len() == 1 { (first.0.max(last.0), first.1.min(last.1)) } else { first };
        let places = Chain { wanted: half, free: &free, first, last, steps }.least_shift()?;
        let images: Vec<i64> = places.iter().take(count / 2).rev().map(image).collect();
        Some(places.into_iter().chain(images).collect())
    }
}

fn nanometres(places: &[Length]) -> Vec<i64> {
    places.iter().map(|place| place.nanometres()).collect()
}
