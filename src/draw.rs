//! Random draws that are the same everywhere and for years: forms, shifts, roofs and faults hang on
//! them, and a record is drawn again from its seed.
//!
//! The generator is PCG XSL RR 128/64 (M. E. O'Neill, "PCG: A Family of Simple Fast Space-Efficient
//! Statistically Good Algorithms for Random Number Generation", Harvey Mudd College HMC-CS-2014-0905),
//! by `rand_pcg`, with the stream that its reference code has. Each draw takes one 64-bit number,
//! whatever the width of a machine word, and scales it by a multiplication (the bias of at most
//! n / 2^64 is let be). Left out: anything secret; who knows the seed knows the form.

use core::ops::{Bound, RangeBounds};
use rand_pcg::Pcg64;
use rand_pcg::rand_core::Rng as _;

/// The stream of the reference code (`PCG_DEFAULT_STREAM`), which every draw here uses.
pub const STREAM: u128 = 0x0a02_bdbf_7bb3_c0a7_ac28_fa16_a64a_bf96;

/// A source of draws.
#[derive(Clone, Debug)]
pub struct Draw(Pcg64);

impl Draw {
    /// The source of a seed.
    pub fn with_seed(seed: u64) -> Draw {
        Draw(Pcg64::new(u128::from(seed), STREAM))
    }

    /// 64 random bits.
    pub fn bits(&mut self) -> u64 {
        self.0.next_u64()
    }

    /// A whole number under `n`; 0 when `n` is 0.
    pub fn below(&mut self, n: u64) -> u64 {
        ((u128::from(self.bits()) * u128::from(n)) >> 64) as u64
    }

    /// A whole number of a range; its start when the range is empty.
    pub fn u32(&mut self, range: impl RangeBounds<u32>) -> u32 {
        let least = match range.start_bound() {
            Bound::Included(a) => u64::from(*a),
            Bound::Excluded(a) => u64::from(*a) + 1,
            Bound::Unbounded => 0,
        };
        let over = match range.end_bound() {
            Bound::Included(b) => u64::from(*b) + 1,
            Bound::Excluded(b) => u64::from(*b),
            Bound::Unbounded => 1 << 32,
        };
        (least + self.below(over.saturating_sub(least))) as u32
    }

    /// One of several, by its number; 0 when there are none.
    pub fn index(&mut self, count: usize) -> usize {
        self.below(count as u64) as usize
    }

    /// One of a list that is not empty.
    pub fn one<T: Copy, const N: usize>(&mut self, of: [T; N]) -> T {
        of[self.index(N)]
    }

    /// A number from 0 up to, not including, 1, in steps of 2^-53.
    pub fn unit(&mut self) -> f64 {
        (self.bits() >> 11) as f64 * (1.0 / (1_u64 << 53) as f64)
    }

    /// Yes or no.
    pub fn coin(&mut self) -> bool {
        self.below(2) == 1
    }

    /// Puts a list in random order (Fisher and Yates, from the end; Knuth, TAOCP 2, algorithm P).
    pub fn shuffle<T>(&mut self, list: &mut [T]) {
        for last in (1..list.len()).rev() {
            let other = self.index(last + 1);
            list.swap(last, other);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// PCG XSL RR 128/64 written from the paper, sharing nothing with the library.
    struct Paper {
        state: u128,
        increment: u128,
    }

    impl Paper {
        const MULTIPLIER: u128 = 0x2360_ed05_1fc6_5da4_4385_df64_9fcc_f645;

        fn new(seed: u128, stream: u128) -> Paper {
            let increment = (stream << 1) | 1;
            let state = seed.wrapping_add(increment).wrapping_mul(Self::MULTIPLIER).wrapping_add(increment);
            Paper { state, increment }
        }

        fn next(&mut self) -> u64 {
            self.state = self.state.wrapping_mul(Self::MULTIPLIER).wrapping_add(self.increment);
            let folded = ((self.state >> 64) as u64) ^ (self.state as u64);
            folded.rotate_right((self.state >> 122) as u32)
        }
    }

    #[test]
    fn the_generator_is_the_one_of_the_paper() {
        for seed in [0, 1, 42, 999_999, u64::MAX] {
            let (mut ours, mut paper) = (Draw::with_seed(seed), Paper::new(u128::from(seed), STREAM));
            for _ in 0..200 {
                assert_eq!(ours.bits(), paper.next(), "seed {seed}");
            }
        }
    }

    /// The reference code's own check values: seed 42, stream 54 (`pcg-c`, check-pcg64.out).
    #[test]
    fn the_library_gives_the_reference_check_values() {
        let mut g = Pcg64::new(42, 54);
        let first: Vec<u64> = (0..6).map(|_| g.next_u64()).collect();
        assert_eq!(
            first,
            [
                0x86b1_da1d_7206_2b68,
                0x1304_aa46_c985_3d39,
                0xa367_0e9e_0dd5_0358,
                0xf909_0e52_9a7d_ae00,
                0xc85b_9fd8_3799_6f2c,
                0x6061_21f8_e391_9196
            ]
        );
    }

    #[test]
    fn draws_stay_in_their_range_and_reach_its_ends() {
        let mut pick = Draw::with_seed(5);
        let mut seen = [false; 4];
        for _ in 0..200 {
            let n = pick.u32(3..=6);
            seen[(n - 3) as usize] = true;
            assert!((0.0..1.0).contains(&pick.unit()));
        }
        assert_eq!(seen, [true; 4]);
        assert_eq!((pick.u32(7..7), pick.index(0), pick.below(1)), (7, 0, 0));
        let mut list: Vec<u32> = (0..30).collect();
        pick.shuffle(&mut list);
        assert_ne!(list, (0..30).collect::<Vec<_>>());
        list.sort_unstable();
        assert_eq!(list, (0..30).collect::<Vec<_>>());
    }
}
