//! How often each kind is used by a rectangle: counters side by side in a few machine words.
//!
//! Each counter has one bit more than its limit needs. Two rectangles go together when no sum of counters, moved up so
//! that the limit just stays below that bit, reaches it.

/// How counters lie in words.
#[derive(Debug, Clone)]
pub(super) struct Packing {
    /// Word and lowest bit of each kind's counter.
    places: Vec<(usize, u32)>,
    /// Added to a sum, sets the upper bit of every counter beyond its limit.
    lift: Vec<u64>,
    /// The upper bits.
    upper: Vec<u64>,
}

impl Packing {
    /// Counters with those limits, each below 2³¹.
    pub(super) fn new(limits: impl Iterator<Item = u32>) -> Packing {
        let mut packing = Packing { places: Vec::new(), lift: vec![0], upper: vec![0] };
        let mut used = 0;
        for limit in limits {
            let bits = u32::BITS - limit.leading_zeros() + 1;
            if used + bits > u64::BITS {
                packing.lift.push(0);
                packing.upper.push(0);
                used = 0;
            }
            let word = packing.lift.len() - 1;
            let half = 1_u64 << (bits - 1);
            if let (Some(lift), Some(upper)) = (packing.lift.last_mut(), packing.upper.last_mut()) {
                *lift |= (half - 1 - u64::from(limit)) << used;
                *upper |= half << used;
            }
            packing.places.push((word, used));
            used += bits;
        }
        packing
    }

    /// Words that the counters of one rectangle take.
    pub(super) fn words(&self) -> usize {
        self.lift.len()
    }

    /// One copy of a kind, written into words that are all zero.
    pub(super) fn one(&self, kind: u32, words: &mut [u64]) {
        if let Some(&(word, bit)) = self.places.get(kind as usize)
            && let Some(word) = words.get_mut(word)
        {
            *word |= 1 << bit;
        }
    }

    /// The sum of two rectangles' counters into `sum`; false where a limit is passed.
    #[inline]
    pub(super) fn add(&self, one: &[u64], other: &[u64], sum: &mut [u64]) -> bool {
        let mut beyond = 0;
        for ((((sum, one), other), lift), upper) in sum.iter_mut().zip(one).zip(other).zip(&self.lift).zip(&self.upper)
        {
            *sum = one + other;
            beyond |= (*sum + lift) & upper;
        }
        beyond == 0
    }
}

/// A number that equal counters share and others hardly do.
pub(super) fn hash(words: &[u64]) -> u64 {
    // SplitMix64's mixing, as in `random`.
    words.iter().fold(0x9e37_79b9_7f4a_7c15, |hash, word| {
        let mixed = (hash ^ word).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        (mixed ^ (mixed >> 29)).wrapping_mul(0x94d0_49bb_1331_11eb).rotate_left(31)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limits_are_kept() {
        let packing = Packing::new([1, 2, 5, 0, 1 << 30, 1 << 30, 3].into_iter());
        assert_eq!(packing.words(), 2);
        let one = |kind| {
            let mut words = vec![0; 2];
            packing.one(kind, &mut words);
            words
        };
        let (mut two, mut three) = (vec![0; 2], vec![0; 2]);
        assert!(!packing.add(&one(0), &one(0), &mut two));
        assert!(packing.add(&one(1), &one(1), &mut two));
        assert!(!packing.add(&two, &one(1), &mut three));
        assert!(packing.add(&two, &one(6), &mut three));
        assert!(!packing.add(&one(3), &[0, 0], &mut two));
    }
}
