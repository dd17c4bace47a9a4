//! Counter-based random numbers: sample `k` is the same whoever draws it, in whatever order.
//!
//! Philox-4x32 with ten rounds, from its published definition: J. K. Salmon, M. A. Moraes, R. O. Dror, D. E. Shaw,
//! "Parallel random numbers: as easy as 1, 2, 3", SC11 (2011) (recalled; the test vectors of its authors' library below
//! confirm every constant). Not for secrets.

/// Multipliers of the two halves of a round.
const MULTIPLIERS: [u32; 2] = [0xD251_1F53, 0xCD9E_8D57];
/// What the key grows by from round to round: the golden ratio and the square root of three less one.
const WEYL: [u32; 2] = [0x9E37_79B9, 0xBB67_AE85];
/// Rounds; ten are the authors' choice with a margin of safety.
const ROUNDS: usize = 10;

/// Four random words of a counter under a key.
#[inline]
pub fn philox_4x32(counter: [u32; 4], key: [u32; 2]) -> [u32; 4] {
    let [mut c0, mut c1, mut c2, mut c3] = counter;
    let [mut k0, mut k1] = key;
    for round in 0..ROUNDS {
        if round > 0 {
            k0 = k0.wrapping_add(WEYL[0]);
            k1 = k1.wrapping_add(WEYL[1]);
        }
        let first = u64::from(MULTIPLIERS[0]) * u64::from(c0);
        let second = u64::from(MULTIPLIERS[1]) * u64::from(c2);
        (c0, c1, c2, c3) =
            ((second >> 32) as u32 ^ c1 ^ k0, second as u32, (first >> 32) as u32 ^ c3 ^ k1, first as u32);
    }
    [c0, c1, c2, c3]
}

/// A number strictly between 0 and 1 from a word: the middle of one of 2³² equal steps.
#[inline]
pub fn open_unit(word: u32) -> f64 {
    (f64::from(word) + 0.5) * (1.0 / 4_294_967_296.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_published_vectors_come_out() {
        // Known answers of the authors' library, philox4x32 with 10 rounds (recalled).
        let vectors = [
            ([0; 4], [0; 2], [0x6627_e8d5, 0xe169_c58d, 0xbc57_ac4c, 0x9b00_dbd8]),
            ([u32::MAX; 4], [u32::MAX; 2], [0x408f_276d, 0x41c8_3b0e, 0xa20b_c7c6, 0x6d54_51fd]),
            (
                [0x243f_6a88, 0x85a3_08d3, 0x1319_8a2e, 0x0370_7344],
                [0xa409_3822, 0x299f_31d0],
                [0xd16c_fe09, 0x94fd_cceb, 0x5001_e420, 0x2412_6ea1],
            ),
        ];
        for (counter, key, words) in vectors {
            assert_eq!(philox_4x32(counter, key), words);
        }
    }

    #[test]
    fn a_unit_number_never_reaches_its_ends() {
        assert!(open_unit(0) > 0.0 && open_unit(u32::MAX) < 1.0);
        assert_eq!(open_unit(0) + open_unit(u32::MAX), 1.0);
    }

    #[test]
    fn words_are_spread_evenly() {
        // Chi-square over 256 cells of 65 536 words: 255 degrees of freedom, mean 255, deviation sqrt(510) = 22.6. Six
        // deviations either side; the seed is fixed, so the outcome is too.
        let mut cells = [0_u32; 256];
        for k in 0..16_384 {
            for word in philox_4x32([k, 0, 7, 0], [2026, 0]) {
                cells[(word >> 24) as usize] += 1;
            }
        }
        let chi: f64 = cells.iter().map(|n| (f64::from(*n) - 256.0) * (f64::from(*n) - 256.0) / 256.0).sum();
        assert!((119.0..391.0).contains(&chi), "{chi}");
    }
}
