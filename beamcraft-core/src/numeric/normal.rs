//! The normal distribution: density, distribution function and its inverse.
//!
//! The inverse follows M. J. Wichura, "Algorithm AS 241: the percentage points of the normal distribution", Applied
//! Statistics 37 (1988) 477–484 (coefficients recalled; the tests hold them against the distribution function).

use core::f64::consts::{FRAC_1_SQRT_2, PI};

use super::real::{erfc, exp, ln};

/// Density of the standard normal distribution.
#[inline]
pub fn normal_density(z: f64) -> f64 {
    exp(-0.5 * z * z) / (2.0 * PI).sqrt()
}

/// Share of the standard normal distribution below `z`; accurate to the last places in both tails.
#[inline]
pub fn normal_share(z: f64) -> f64 {
    0.5 * erfc(-z * FRAC_1_SQRT_2)
}

/// The value below which the share `p` of the standard normal distribution lies, 0 < p < 1.
///
/// # Accuracy
/// About one part in 10¹⁶ (PPND16 of the source).
pub fn normal_quantile(p: f64) -> f64 {
    let q = p - 0.5;
    if q.abs() <= CENTRE {
        let r = CENTRE * CENTRE - q * q;
        return q * horner(
            r,
            &[
                3.387_132_872_796_366_5,
                133.141_667_891_784_38,
                1_971.590_950_306_551_3,
                13_731.693_765_509_46,
                45_921.953_931_549_87,
                67_265.770_927_008_7,
                33_430.575_583_588_13,
                2_509.080_928_730_122_7,
            ],
        ) / horner(
            r,
            &[
                1.0,
                42.313_330_701_600_91,
                687.187_007_492_057_9,
                5_394.196_021_424_751,
                21_213.794_301_586_597,
                39_307.895_800_092_71,
                28_729.085_735_721_943,
                5_226.495_278_852_854,
            ],
        );
    }
    let root = (-ln(if q < 0.0 { p } else { 1.0 - p })).sqrt();
    let size = if root <= 5.0 {
        horner(
            root - 1.6,
            &[
                1.423_437_110_749_683_5,
                4.630_337_846_156_546,
                5.769_497_221_460_691,
                3.647_848_324_763_204_5,
                1.270_458_252_452_368_4,
                0.241_780_725_177_450_6,
                0.022_723_844_989_269_184,
                7.745_450_142_783_414e-4,
            ],
        ) / horner(
            root - 1.6,
            &[
                1.0,
                2.053_191_626_637_759,
                1.676_384_830_183_803_8,
                0.689_767_334_985_1,
                0.148_103_976_427_480_08,
                0.015_198_666_563_616_457,
                5.475_938_084_995_345e-4,
                1.050_750_071_644_416_9e-9,
            ],
        )
    } else {
        horner(
            root - 5.0,
            &[
                6.657_904_643_501_103,
                5.463_784_911_164_114,
                1.784_826_539_917_291_3,
                0.296_560_571_828_504_87,
                0.026_532_189_526_576_124,
                0.001_242_660_947_388_078_4,
                2.711_555_568_743_487_6e-5,
                2.010_334_399_292_288_1e-7,
            ],
        ) / horner(
            root - 5.0,
            &[
                1.0,
                0.599_832_206_555_888,
                0.136_929_880_922_735_8,
                0.014_875_361_290_850_615,
                7.868_691_311_456_133e-4,
                1.846_318_317_510_054_8e-5,
                1.421_511_758_316_446e-7,
                2.044_263_103_389_939_8e-15,
            ],
        )
    };
    if q < 0.0 { -size } else { size }
}

/// Half-width of the centre, in share; outside it the tail's own approximation holds.
const CENTRE: f64 = 0.425;

/// `coefficients[0] + coefficients[1] x + …`
#[inline]
fn horner(x: f64, coefficients: &[f64]) -> f64 {
    coefficients.iter().rev().fold(0.0, |sum, coefficient| sum * x + coefficient)
}

/// Half-width of the centre of the quick quantile, in share.
const QUICK_CENTRE: f64 = 0.475_75;

/// The quantile for random numbers, to about one part in 10⁹: its centre.
///
/// P. J. Acklam, "An algorithm for computing the inverse normal cumulative distribution function" (2003) (coefficients
/// recalled). The centre is apart so that a caller can do a whole block of it without a branch; beyond
/// [`is_in_quick_tail`] it is wrong, but finite.
#[inline]
pub fn quick_quantile_centre(p: f64) -> f64 {
    let q = p - 0.5;
    let r = q * q;
    let over = ((((-39.696_830_286_653_76 * r + 220.946_098_424_520_5) * r - 275.928_510_446_968_7) * r
        + 138.357_751_867_269)
        * r
        - 30.664_798_066_147_16)
        * r
        + 2.506_628_277_459_239;
    let under = ((((-54.476_098_798_224_06 * r + 161.585_836_858_040_9) * r - 155.698_979_859_886_6) * r
        + 66.801_311_887_719_72)
        * r
        - 13.280_681_552_885_72)
        * r
        + 1.0;
    q * over / under
}

/// Whether [`quick_quantile_tail`] holds for `p`, and the centre does not.
#[inline]
pub fn is_in_quick_tail(p: f64) -> bool {
    (p - 0.5).abs() > QUICK_CENTRE
}

/// The quantile of a share in either tail, to about one part in 10⁹ (same source).
#[inline]
pub fn quick_quantile_tail(p: f64) -> f64 {
    let r = (-2.0 * ln(if p < 0.5 { p } else { 1.0 - p })).sqrt();
    let over = ((((-7.784_894_002_430_293e-3 * r - 0.322_396_458_041_136_5) * r - 2.400_758_277_161_838) * r
        - 2.549_732_539_343_734)
        * r
        + 4.374_664_141_464_968)
        * r
        + 2.938_163_982_698_783;
    let under = (((7.784_695_709_041_462e-3 * r + 0.322_467_129_070_039_8) * r + 2.445_134_137_142_996) * r
        + 3.754_408_661_907_416)
        * r
        + 1.0;
    let low = over / under;
    if p < 0.5 { low } else { -low }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A million shares and the extreme ones.
    fn shares() -> impl Iterator<Item = f64> {
        let tails = (1..300).flat_map(|k| [crate::numeric::real::pow(10.0, -f64::from(k)), 0.07 + 1e-5 * f64::from(k)]);
        (1..20_000).map(|k| f64::from(k) / 20_000.0).chain(tails)
    }

    #[test]
    fn the_quantile_is_the_inverse_of_the_share() {
        for p in shares() {
            let z = normal_quantile(p);
            // A share's relative error is the quantile's absolute one times the hazard, which is below |z| + 1.
            let allowed = p * 1e-14 * (1.0 + z.abs()) * (1.0 + z.abs());
            assert!((normal_share(z) - p).abs() <= allowed, "{p}: {z}");
        }
    }

    #[test]
    fn tabulated_points_come_out() {
        // Percentage points printed in every statistics table.
        for (p, z) in [(0.5, 0.0), (0.95, 1.644_853_6), (0.975, 1.959_964_0), (0.99, 2.326_347_9), (0.999, 3.090_232_3)]
        {
            assert!((normal_quantile(p) - z).abs() < 5e-8, "{p}");
            assert!((normal_quantile(1.0 - p) + z).abs() < 5e-8, "{p}");
        }
        assert!((normal_share(1.0) - 0.841_344_746_1).abs() < 5e-11);
        assert!((normal_density(0.0) - 0.398_942_280_4).abs() < 5e-11);
    }

    #[test]
    fn the_quick_quantile_is_exact_to_nine_figures() {
        for p in shares().filter(|p| *p > 1e-15) {
            let quick = if is_in_quick_tail(p) { quick_quantile_tail(p) } else { quick_quantile_centre(p) };
            let exact = normal_quantile(p);
            // 1.15e-9 is what the source states.
            assert!((quick - exact).abs() <= 1.2e-9 * exact.abs(), "{p}: {quick} {exact}");
            assert!(quick_quantile_centre(p).is_finite());
        }
    }
}
