//! The classes that are still to be placed, in the order in which they are tried.
//!
//! # Method
//! A tournament tree over the order: each knot holds the least extents below it, so that stretches of classes of which
//! none can fit are passed over at one look. It finds what a walk through the whole order would find.

use super::super::problem::{Problem, Size};

/// The least of each extent among some classes; none of them is smaller in any.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Least {
    along: i64,
    across: i64,
    short: i64,
    long: i64,
}

impl Least {
    /// Of no class: nothing holds it.
    const NONE: Least = Least { along: i64::MAX, across: i64::MAX, short: i64::MAX, long: i64::MAX };

    fn of(size: Size, turns: bool) -> Least {
        let (short, long) = (size.0.min(size.1), size.0.max(size.1));
        let (along, across) = if turns { (short, short) } else { size };
        Least { along, across, short, long }
    }

    fn and(self, other: Least) -> Least {
        Least {
            along: self.along.min(other.along),
            across: self.across.min(other.across),
            short: self.short.min(other.short),
            long: self.long.min(other.long),
        }
    }

    /// True where one of the classes may fit a piece of that size; for a single class, where it does.
    pub(super) fn may_fit(&self, size: Size) -> bool {
        self.along <= size.0
            && self.across <= size.1
            && self.short <= size.0.min(size.1)
            && self.long <= size.0.max(size.1)
    }
}

/// Classes in order, some of them taken out again.
#[derive(Debug, Clone)]
pub(in crate::nest) struct Queue {
    order: Vec<u32>,
    /// A heap: knot 1 is the root, those below knot `k` are `2k` and `2k + 1`; as many places as `ends` end it.
    least: Vec<Least>,
    ends: usize,
}

impl Queue {
    /// The classes in that order.
    pub(in crate::nest) fn new(problem: &Problem, order: Vec<u32>) -> Queue {
        let ends = order.len().next_power_of_two();
        let turning_stock = problem.racks.iter().any(|rack| !rack.grain);
        let single = |&class: &u32| match problem.classes.get(class as usize) {
            Some(class) => Least::of(class.size, turning_stock || !class.locked),
            None => Least::NONE,
        };
        let mut least = vec![Least::NONE; ends];
        least.extend(order.iter().map(single));
        least.resize(2 * ends, Least::NONE);
        let mut queue = Queue { order, least, ends };
        for knot in (1..ends).rev() {
            queue.compare(knot);
        }
        queue
    }

    /// The first place at or behind `from` whose class may fit, by what is said of the least of each extent; with the
    /// class, and the number of looks that it took.
    pub(super) fn next(&self, from: usize, may_fit: impl Fn(&Least) -> bool) -> (Option<(usize, u32)>, u64) {
        let mut looks = 0;
        let mut knot = if from < self.order.len() { self.ends + from } else { 0 };
        while let Some(least) = self.least.get(knot).filter(|_| knot > 0) {
            looks += 1;
            if !may_fit(least) {
                // On to what lies behind all that is below this knot; behind the last there is knot 0.
                while knot % 2 == 1 {
                    knot /= 2;
                }
                knot += usize::from(knot > 0);
            } else if knot < self.ends {
                knot *= 2;
            } else {
                let place = knot - self.ends;
                return (self.order.get(place).map(|&class| (place, class)), looks);
            }
        }
        (None, looks)
    }

    /// The first class that has not been taken out, and its place.
    pub(super) fn first(&self) -> Option<(usize, u32)> {
        self.next(0, |least| *least != Least::NONE).0
    }

    /// Takes a class out.
    pub(super) fn take_out(&mut self, place: usize) {
        let mut knot = self.ends + place;
        if let Some(least) = self.least.get_mut(knot) {
            *least = Least::NONE;
        }
        while knot > 1 {
            knot /= 2;
            if !self.compare(knot) {
                return;
            }
        }
    }

    /// Sets a knot to the least of the two below it. False where it was so already.
    fn compare(&mut self, knot: usize) -> bool {
        let (Some(&one), Some(&other)) = (self.least.get(2 * knot), self.least.get(2 * knot + 1)) else { return false };
        let new = one.and(other);
        match self.least.get_mut(knot) {
            Some(least) if *least != new => {
                *least = new;
                true
            }
            _ => false,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Length;
    use crate::nest::random::SplitMix;
    use crate::nest::{Grain, Part};
    use crate::stock::{Saw, Sheet, SheetGrain};

    /// Whatever is taken out, the queue finds what a walk through the whole order finds.
    #[test]
    fn finds_what_a_walk_through_the_order_finds() {
        let inches = |count: usize| Length::from_nanometres(25_400_000) * i64::try_from(count + 1).unwrap_or(1);
        let mut random = SplitMix::new();
        for round in 0..200 {
            let grains = [Grain::Any, Grain::Length, Grain::Width];
            let parts: Vec<Part> = (0..=random.below(40))
                .map(|_| {
                    let grain = grains[random.below(3)];
                    Part::new("part", inches(random.below(30)), inches(random.below(30))).grain(grain)
                })
                .collect();
            let sheet = Sheet::new("sheet", inches(40), inches(40));
            let sheet = if round % 2 == 0 { sheet } else { sheet.grain(SheetGrain::None) };
            let problem = Problem::new(&parts, &[sheet], &Saw::new());
            let order: Vec<u32> = (0..).take(problem.classes.len()).collect();
            let mut queue = Queue::new(&problem, order.clone());
            let mut gone = vec![false; order.len()];
            for _ in 0..40 {
                let piece = (inches(random.below(40)).nanometres(), inches(random.below(40)).nanometres());
                let from = random.below(order.len() + 1);
                let fits = |class: &u32| {
                    let lies = problem.classes[*class as usize].lies(&problem.racks[0]);
                    lies.into_iter().flatten().any(|size| size.0 <= piece.0 && size.1 <= piece.1)
                };
                let walked = (from..order.len()).find(|&place| !gone[place] && fits(&order[place]));
                let found = queue.next(from, |least| least.may_fit(piece)).0;
                assert_eq!(found, walked.map(|place| (place, order[place])));
                assert_eq!(queue.first().map(|(place, _)| place), gone.iter().position(|gone| !gone));
                let place = random.below(order.len());
                queue.take_out(place);
                gone[place] = true;
            }
        }
    }
}
