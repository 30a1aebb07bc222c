//! Numbers that look random and are the same on every machine.

/// Where the random numbers start. Any value does; a fixed one makes the search repeatable.
const SEED: u64 = 0x7061_6e65_6c73_6177;

/// A small generator of random numbers.
///
/// # Method
/// `SplitMix64`: Steele, Lea and Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014.
#[derive(Debug)]
pub(super) struct SplitMix(u64);

impl SplitMix {
    pub(super) fn new() -> SplitMix {
        SplitMix(SEED)
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// A number below `end`, zero where `end` is.
    pub(super) fn below(&mut self, end: usize) -> usize {
        let product = u128::from(self.next()) * (end as u128);
        // The upper half of the product of a 64-bit number and `end` is below `end`.
        usize::try_from(product >> 64).unwrap_or(0)
    }

    /// A share of the whole: zero or more, and less than one.
    pub(super) fn share(&mut self) -> f64 {
        const STEPS: usize = 1 << 30;
        self.below(STEPS) as f64 / STEPS as f64
    }

    /// How often a tossed coin shows tails before it shows heads.
    pub(super) fn zeros(&mut self) -> u32 {
        self.next().trailing_zeros()
    }
}
