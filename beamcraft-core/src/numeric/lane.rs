//! Powers and angles without a branch, for columns: the same bits as the functions of [`super::real`], in a narrower range.
//!
//! The algorithms are those of the `libm` crate (FreeBSD's msun) with their main path alone, written so that a compiler
//! can compute several side by side. They are used by single calls and columns alike, so that both have the same bits; the
//! tests hold them against `libm` itself.

use core::f64::consts::{FRAC_1_SQRT_2, PI};

/// The upper half of a number's bits: 20 digits of the mantissa.
#[inline(always)]
fn upper_half(value: f64) -> f64 {
    f64::from_bits(value.to_bits() & 0xFFFF_FFFF_0000_0000)
}

/// From here on, a number's bits are those of a whole number.
const WHOLE: f64 = 4_503_599_627_370_496.0;

/// Where the middle of the interval of m begins and ends in [`pow`].
const MIDDLE: f64 = f64::from_bits(0x3FF3_988F_0000_0000);
const UPPER: f64 = f64::from_bits(0x3FFB_B67A_0000_0000);

/// `base` to the power `exponent`, for a base of 1e-100 to 1e100 and an exponent of 0.001 to 3 either way. The bits are those
/// of `super::real::pow`, but for the exponents 0.5, 1, 2 and -1, which have paths of their own there.
///
/// # Source
/// The main path of `pow` of the `libm` crate, operation for operation; its choices between intervals are selections here.
/// It takes log2 of the base in two pieces, of which the first ends in zeros, times the exponent, and 2 to that power.
#[inline(always)]
#[allow(clippy::excessive_precision, clippy::unreadable_literal, reason = "as the source prints them")]
pub(crate) fn pow(base: f64, exponent: f64) -> f64 {
    // The base is 2^n m: m lies around 1, or around 1.5 in the middle of the interval. Compared as numbers, for which the
    // older vector instructions have a comparison; the ends are √1.5 and √3 to the upper half of their bits.
    let bits = base.to_bits();
    let whole_m = (bits & 0x000F_FFFF_FFFF_FFFF) | 0x3FF0_0000_0000_0000;
    let in_middle = (f64::from_bits(whole_m) >= MIDDLE) & (f64::from_bits(whole_m) < UPPER);
    let is_upper = f64::from_bits(whole_m) >= UPPER;
    let biased = (bits >> 52) + u64::from(is_upper);
    let scaled = whole_m - (u64::from(is_upper) << 52);
    let m = f64::from_bits(scaled);
    let centre = if in_middle { 1.5 } else { 1.0 };

    // s = (m − centre) / (m + centre), in two pieces.
    let u = m - centre;
    let v = 1.0 / (m + centre);
    let s = u * v;
    let s_high = upper_half(s);
    let half = ((scaled >> 1) & 0xFFFF_FFFF_0000_0000) | 0x2000_0000_0000_0000;
    let t_high = f64::from_bits(half + 0x0008_0000_0000_0000 + (u64::from(in_middle) << 50));
    let t_low = m - (t_high - centre);
    let s_low = v * ((u - s_high * t_high) - s_high * t_low);

    // log2 of m.
    let s_2 = s * s;
    let series = 5.99999999999994648725e-01
        + s_2
            * (4.28571428578550184252e-01
                + s_2
                    * (3.33333329818377432918e-01
                        + s_2
                            * (2.72728123808534006489e-01
                                + s_2 * (2.30660745775561754067e-01 + s_2 * 2.06975017800338417784e-01))));
    let r = s_2 * s_2 * series + s_low * (s_high + s);
    let s_2 = s_high * s_high;
    let t_high = upper_half(3.0 + s_2 + r);
    let t_low = r - ((t_high - 3.0) - s_2);
    let u = s_high * t_high;
    let v = s_low * t_high + t_low * s;
    let p_high = upper_half(u + v);
    let p_low = v - (p_high - u);
    let centre_high = if in_middle { 5.84962487220764160156e-01 } else { 0.0 };
    let centre_low = if in_middle { 1.35003920212974897128e-08 } else { 0.0 };
    let z_high = 9.61796700954437255859e-01 * p_high;
    let z_low = -7.02846165095275826516e-09 * p_high + p_low * 9.61796693925975554329e-01 + centre_low;
    // The exponent as a number, without a conversion that the older instructions do not have side by side.
    let n = f64::from_bits(biased | 0x4330_0000_0000_0000) - (WHOLE + 1023.0);
    let log_high = upper_half(((z_high + z_low) + centre_high) + n);
    let log_low = z_low - (((log_high - n) - centre_high) - z_high);

    // exponent × log2 = a whole number + a rest within ±0.5.
    let y_high = upper_half(exponent);
    let p_low = (exponent - y_high) * log_high + exponent * log_low;
    let p_high = y_high * log_high;
    let z = p_low + p_high;
    let size = upper_half(z).abs();
    let raised = size + 0.5;
    let nearest = (raised + WHOLE) - WHOLE;
    let below = if nearest > raised { nearest - 1.0 } else { nearest };
    let whole = if size > 0.5 { below.copysign(z) } else { 0.0 };
    let p_high = p_high - whole;
    let shift = (whole + 1.5 * WHOLE).to_bits() << 52;

    // 2 to the rest.
    let t = upper_half(p_low + p_high);
    let u = t * 6.93147182464599609375e-01;
    let v = (p_low - (t - p_high)) * core::f64::consts::LN_2 + t * -1.90465429995776804525e-09;
    let z = u + v;
    let w = v - (z - u);
    let t = z * z;
    let series = 1.66666666666666019037e-01
        + t * (-2.77777777770155933842e-03
            + t * (6.61375632143793436117e-05 + t * (-1.65339022054652515390e-06 + t * 4.13813679705723846039e-08)));
    let t = z - t * series;
    let r = (z * t) / (t - 2.0) - (w + z * w);
    let z = 1.0 - (r - z);
    f64::from_bits(z.to_bits().wrapping_add(shift))
}

/// Sine and cosine of an angle of −45° to 45°, as `super::real::sin_cos_deg` gives them.
///
/// # Source
/// The kernels of `sin` and `cos` of the `libm` crate; exact at 0°, ±30° (sine) and ±45°.
#[inline(always)]
#[allow(clippy::excessive_precision, clippy::unreadable_literal, reason = "as the source prints them")]
fn octant(angle_deg: f64) -> (f64, f64) {
    let x = angle_deg * (PI / 180.0);
    let z = x * x;
    let w = z * z;
    let r = 8.33333333332248946124e-03
        + z * (-1.98412698298579493134e-04 + z * 2.75573137070700676789e-06)
        + z * w * (-2.50507602534068634195e-08 + z * 1.58969099521155010221e-10);
    let sine = x + z * x * (-1.66666666666666324348e-01 + z * r);
    let r = z * (4.16666666666666019037e-02 + z * (-1.38888888888741095749e-03 + z * 2.48015872894767294178e-05))
        + w * w * (-2.75573143513906633035e-07 + z * (2.08757232129817482790e-09 + z * -1.13596475577881948265e-11));
    let half = 0.5 * z;
    let near_one = 1.0 - half;
    let cosine = near_one + (((1.0 - near_one) - half) + z * r);
    let size = angle_deg.abs();
    let sine = if size == 30.0 { 0.5_f64.copysign(angle_deg) } else { sine };
    let sine = if size == 45.0 { FRAC_1_SQRT_2.copysign(angle_deg) } else { sine };
    let cosine = if size == 45.0 { FRAC_1_SQRT_2 } else { cosine };
    (sine, cosine)
}

/// Sine and cosine of an angle of 0° to 90°, the bits of `super::real::sin_cos_deg`.
#[inline(always)]
pub(crate) fn sin_cos_quarter_deg(angle_deg: f64) -> (f64, f64) {
    // The sum rounds as that of the single call does, which turns over at the same last digit below 45°.
    let is_steep = angle_deg + 45.0 >= 90.0;
    let (sine, cosine) = octant(if is_steep { angle_deg - 90.0 } else { angle_deg });
    if is_steep { (cosine, -sine) } else { (sine, cosine) }
}

/// The nearest whole number, halves away from zero, of a number of 0 to 1e15.
#[inline(always)]
pub(crate) fn round_positive(value: f64) -> f64 {
    let nearest = (value + WHOLE) - WHOLE;
    // A half went to the even number below.
    if value - nearest == 0.5 { nearest + 1.0 } else { nearest }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::numeric::real;

    proptest! {
        #![proptest_config(ProptestConfig { cases: 20_000, ..ProptestConfig::default() })]

        #[test]
        fn a_power_has_the_bits_of_libm(digits in 0..1_u64 << 52, scale in -332_i32..=332, exponent in 0.001..=3.0_f64, turn in 0..6_usize) {
            let base = f64::from_bits(((1023 + scale) as u64) << 52 | digits);
            let exponent = [1.84, 1.45, exponent, -exponent, exponent.sqrt().max(0.001), -3.0][turn];
            let (wanted, found) = (real::pow(base, exponent), pow(base, exponent));
            prop_assert_eq!(found.to_bits(), wanted.to_bits(), "{:e}^{}", base, exponent);
            let near = 1.0 + (base / real::pow(2.0, f64::from(scale)) - 1.5) * 2e-3;
            prop_assert_eq!(pow(near, exponent).to_bits(), real::pow(near, exponent).to_bits(), "{:e}^{}", near, exponent);
        }

        #[test]
        fn an_angle_has_the_bits_of_libm(angle in 0.0..=90.0_f64, small in 0.0..=1.0_f64) {
            for angle in [angle, small * small * small * 1e-3, 45.0 - small * 1e-9, 45.0 - small * 1e-13, 90.0 - small * 1e-9, angle.round()] {
                let (wanted, found) = (real::sin_cos_deg(angle), sin_cos_quarter_deg(angle));
                prop_assert_eq!(found.0.to_bits(), wanted.0.to_bits(), "sine of {}", angle);
                // Of a right angle the zero has another sign or not; it is squared or multiplied.
                prop_assert!(found.1.to_bits() == wanted.1.to_bits() || (found.1 == 0.0 && wanted.1 == 0.0), "cosine of {}", angle);
            }
        }

        #[test]
        fn rounding_is_that_of_the_language(value in 0.0..1e6_f64, halves in 0_u32..2_000_000) {
            for value in [value, f64::from(halves) * 0.5, 0.499_999_999_999_999_94, f64::from(halves) * 0.5 - 1e-10, 1e15 + 0.5] {
                prop_assert_eq!(round_positive(value.abs()), value.abs().round());
            }
        }
    }

    #[test]
    fn the_ends_and_the_round_numbers_have_the_bits_of_libm() {
        for base in [1e-100, 1e100, 1.0, 0.5, 2.0, 4.0, 1.5, 3.0_f64.sqrt(), 1.5_f64.sqrt(), 10.0, 0.05] {
            for exponent in [0.001, 1.45, 1.84, 3.0, 1.0, 2.0, 0.5, -1.0, -0.5, -3.0, 2.5] {
                let (wanted, found) = (real::pow(base, exponent), pow(base, exponent));
                // Squares, roots and reciprocals have a path of their own in libm, which rounds once.
                let tolerance = if [1.0, 2.0, 0.5, -1.0].contains(&exponent) { 1 } else { 0 };
                assert!(
                    found.to_bits().abs_diff(wanted.to_bits()) <= tolerance,
                    "{base}^{exponent}: {found:e} {wanted:e}"
                );
            }
        }
        for angle in [0.0, 5e-324, 1e-300, 1e-9, 15.0, 30.0, 45.0, 60.0, 75.0, 90.0] {
            let (wanted, found) = (real::sin_cos_deg(angle), sin_cos_quarter_deg(angle));
            assert_eq!(found, wanted, "{angle}");
        }
    }
}
