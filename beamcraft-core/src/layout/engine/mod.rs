//! The search behind the layouts: whole numbers in, whole numbers out, no units.
//!
//! A kerf between neighbours is the same as a kerf added to every piece and once to the stock, so that this floor knows
//! no kerf at all: the callers add it. Every search counts steps, never seconds, so that a result is the same on every
//! run and every machine.

pub(crate) mod area_bound;
pub(crate) mod bars;
pub(crate) mod bars_search;
pub(crate) mod fill;
pub(crate) mod finish;
pub(crate) mod master;
pub(crate) mod outside;
pub(crate) mod patterns;
pub(crate) mod ruin;
pub(crate) mod sheets;
pub(crate) mod single;
pub(crate) mod strips;
pub(crate) mod table;
pub(crate) mod tree;
pub(crate) mod watch;
pub(crate) mod worth;

/// A unit to unit generator (splitmix64): the same numbers on every machine. Not for secrets.
pub(crate) struct Dice(u64);

impl Dice {
    pub(crate) fn new(seed: u64) -> Self {
        Self(seed)
    }

    pub(crate) fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// Below `n`; 0 for an empty range.
    pub(crate) fn below(&mut self, n: usize) -> usize {
        if n == 0 { 0 } else { (((self.next() >> 32) * n as u64) >> 32) as usize }
    }

    /// In [0, 1).
    pub(crate) fn unit(&mut self) -> f64 {
        (self.next() >> 11) as f64 * (1.0 / 9_007_199_254_740_992.0)
    }
}

/// Greatest common divisor; of nothing it is 0.
pub(crate) fn common_divisor(values: impl Iterator<Item = i64>) -> i64 {
    values.fold(0, |mut a, mut b| {
        while b != 0 {
            (a, b) = (b, a % b);
        }
        a.abs()
    })
}
