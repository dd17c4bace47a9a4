//! Quotients of whole numbers, rounded once.

/// The number closest to `numerator / denominator`, ties to even.
///
/// `denominator` is above zero and below 2¹²⁷; a numerator of less than 2¹²⁷ keeps the quotient far from the ends of
/// the range of `f64`.
pub(super) fn ratio(numerator: u128, denominator: u128) -> f64 {
    if numerator == 0 {
        return 0.0;
    }
    let (mut quotient, mut rest, mut scale) = (numerator / denominator, numerator % denominator, 1.0);
    // Two bits more than an f64 holds: one to round by, one that says whether anything is left below it.
    while quotient < 1 << 55 {
        rest <<= 1;
        quotient <<= 1;
        scale *= 0.5;
        if rest >= denominator {
            rest -= denominator;
            quotient |= 1;
        }
    }
    if rest != 0 {
        quotient |= 1;
    }
    quotient as f64 * scale
}

#[cfg(test)]
mod tests {
    use super::ratio;
    use proptest::prelude::*;

    #[test]
    fn quotients_are_the_closest_numbers() {
        for (n, d, want) in [(1, 3, 1.0 / 3.0), (2667, 20, 133.35), (127, 5, 25.4), (1, 10, 0.1), (7, 1, 7.0)] {
            assert_eq!(ratio(n, d), want, "{n}/{d}");
        }
        assert_eq!(ratio(0, 7), 0.0);
    }

    proptest! {
        #[test]
        fn small_numbers_divide_as_the_processor_does(n in 0_u64..1 << 53, d in 1_u64..1 << 53) {
            prop_assert_eq!(ratio(u128::from(n), u128::from(d)), n as f64 / d as f64);
        }

        #[test]
        fn decimals_read_as_the_standard_library_reads_them(digits in 0_u64.., places in 0_u32..20) {
            let text = format!("{digits}e-{places}");
            prop_assert_eq!(ratio(u128::from(digits), 10_u128.pow(places)), text.parse::<f64>().unwrap());
        }
    }
}
