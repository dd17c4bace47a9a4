//! How exact the saw must be for a wanted share of seams under a given gap.

use crate::error::Fault;
use crate::limits::{Limited, limited};
use crate::numeric::normal::normal_quantile;
use crate::numeric::real::{degrees, radians};

use super::seam::cuttable_pair;
#[cfg(feature = "json")]
use super::seam::{none, square_corner};

/// How the two edges of a seam come by their tilt.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum TiltSetting {
    /// One setting for both: their errors are equal and add up in full.
    OneForBoth,
    /// Set anew for each, or the scatter is from cut to cut: the errors are independent.
    EachAnew,
}

/// A seam, the gap that is allowed, and the share of seams that should keep to it.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<SawAccuracyInput>))]
pub struct SawAccuracyInput {
    /// Thickness of board a, mm.
    pub thickness_a_mm: f64,
    /// Thickness of board b, mm.
    pub thickness_b_mm: f64,
    /// Corner angle between the two show faces, measured inside the body, degrees; a square corner if left out.
    #[cfg_attr(feature = "json", serde(default = "square_corner"))]
    pub corner_deg: f64,
    /// Visible gap that is allowed at the show edge, mm.
    pub gap_mm: f64,
    /// Share of seams that should keep to it; 0.95 if left out, 19 of 20.
    #[cfg_attr(feature = "json", serde(default = "most"))]
    pub share: f64,
    /// How the two edges come by their tilt.
    pub setting: TiltSetting,
    /// Deliberate over-tilt of each edge, degrees; none if left out.
    #[cfg_attr(feature = "json", serde(default = "none"))]
    pub over_tilt_deg: f64,
    /// Standard deviation of everything else that turns the seam (corner, cup), degrees; none if left out.
    #[cfg_attr(feature = "json", serde(default = "none"))]
    pub other_sd_deg: f64,
}

limited!(SawAccuracyInput {
    thickness_a_mm: BOARD_THICKNESS,
    thickness_b_mm: BOARD_THICKNESS,
    corner_deg: CORNER_ANGLE,
    gap_mm: SMALL_LENGTH,
    share: WANTED_SHARE,
    over_tilt_deg: ANGLE_ERROR,
    other_sd_deg: ANGLE_SPREAD,
});

#[cfg(feature = "json")]
fn most() -> f64 {
    0.95
}

/// Whether any saw would do.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum AccuracyReach {
    /// A saw as exact as stated reaches the share.
    Reachable,
    /// Even a perfect saw does not: the other errors, or a deliberate under-tilt, use up the gap.
    OutOfReach,
}

/// How exact the tilt must be.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SawAccuracy {
    /// Length of the seam across the section, mm.
    pub seam_mm: f64,
    /// Divergence at which the gap is reached, beyond the deliberate over-tilt, degrees.
    pub allowed_divergence_deg: f64,
    /// Number of standard deviations that the share stands for, one-sided.
    pub deviations: f64,
    /// Standard deviation of the whole divergence that is allowed, degrees.
    pub total_sd_deg: f64,
    /// Standard deviation of the tilt of one edge that is allowed, degrees.
    pub tilt_sd_deg: f64,
    /// Half-range of an even scatter with that standard deviation, degrees.
    pub tilt_half_range_deg: f64,
    /// Error of tilt that every cut may have when no seam at all may exceed the gap, other errors aside, degrees.
    pub worst_case_deg: f64,
    /// Hidden gap inside that the same share of seams keeps to, mm.
    pub inside_gap_mm: f64,
    /// Whether any saw would do.
    pub reach: AccuracyReach,
}

/// Standard deviation of the tilt that keeps a wanted share of drawn-tight seams under a visible gap.
///
/// # Equation
/// ```text
/// gap ≥ −f D        D = 2 over + e_a + e_b + r        P(−D ≤ gap / f) = share
/// σ_D = (gap / f + 2 over) / z          z = Φ⁻¹(share)
/// σ_tilt = sqrt((σ_D² − σ_r²) / m)      m = 4 (one setting for both), 2 (each anew)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | f | length of the seam | mm | `seam_mm` |
/// | over | deliberate over-tilt of each edge | radian | `over_tilt_deg` |
/// | e_a, e_b | errors of tilt | radian | `tilt_sd_deg` |
/// | r | everything else that turns the seam | radian | `other_sd_deg` |
///
/// # Limits
/// First order, normal errors around the setting aimed at, seams drawn tight with the corner held. A seam counts as kept
/// when it opens inside. `tolerance_stack` answers for other hold and other errors.
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` where the mitre needs a tilt beyond 80°.
///
/// # Source
/// Propagation of variances, derived in the theory pages; checked by `verification/tolerance`.
///
/// # Examples
/// ```
/// use beamcraft_core::tolerance::{SawAccuracyInput, TiltSetting, saw_accuracy};
/// let saw = saw_accuracy(&SawAccuracyInput {
///     thickness_a_mm: 20.0, thickness_b_mm: 20.0, corner_deg: 90.0, gap_mm: 0.1, share: 0.95,
///     setting: TiltSetting::OneForBoth, over_tilt_deg: 0.0, other_sd_deg: 0.0,
/// })?;
/// assert!((saw.tilt_sd_deg - 0.0616).abs() < 0.0001);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn saw_accuracy(input: &SawAccuracyInput) -> Result<SawAccuracy, Fault> {
    input.check_ranges()?;
    let seam_mm = cuttable_pair(input.thickness_a_mm, input.thickness_b_mm, input.corner_deg)?.seam_mm;
    let gap_deg = degrees(input.gap_mm / seam_mm);
    let allowed_divergence_deg = gap_deg + 2.0 * input.over_tilt_deg;
    let deviations = normal_quantile(input.share);
    let total_sd_deg = (allowed_divergence_deg / deviations).max(0.0);
    let left = total_sd_deg * total_sd_deg - input.other_sd_deg * input.other_sd_deg;
    let weight = match input.setting {
        TiltSetting::OneForBoth => 4.0,
        TiltSetting::EachAnew => 2.0,
    };
    let tilt_sd_deg = (left.max(0.0) / weight).sqrt();
    let reach =
        if allowed_divergence_deg < 0.0 || left < 0.0 { AccuracyReach::OutOfReach } else { AccuracyReach::Reachable };
    // What the seams really scatter by: no less than the other errors alone.
    let scatter_deg = total_sd_deg.max(input.other_sd_deg);
    Ok(SawAccuracy {
        seam_mm,
        allowed_divergence_deg,
        deviations,
        total_sd_deg,
        tilt_sd_deg,
        tilt_half_range_deg: tilt_sd_deg * 3.0_f64.sqrt(),
        worst_case_deg: (0.5 * allowed_divergence_deg).max(0.0),
        inside_gap_mm: (seam_mm * radians(2.0 * input.over_tilt_deg + deviations * scatter_deg)).max(0.0),
        reach,
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const SAW_ACCURACY: crate::json::Calculation = crate::json::calculation!(
    saw_accuracy: SawAccuracyInput => SawAccuracy, Typed,
    "How exact the tilt must be for a wanted share of seams under a given gap"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::numeric::normal::normal_share;
    use proptest::prelude::*;

    fn input() -> SawAccuracyInput {
        SawAccuracyInput {
            thickness_a_mm: 20.0,
            thickness_b_mm: 20.0,
            corner_deg: 90.0,
            gap_mm: 0.1,
            share: 0.95,
            setting: TiltSetting::EachAnew,
            over_tilt_deg: 0.0,
            other_sd_deg: 0.0,
        }
    }

    #[test]
    fn errors_larger_than_the_gap_are_told() {
        let other = saw_accuracy(&SawAccuracyInput { other_sd_deg: 1.0, ..input() }).unwrap();
        assert_eq!((other.reach, other.tilt_sd_deg), (AccuracyReach::OutOfReach, 0.0));
        let under = saw_accuracy(&SawAccuracyInput { over_tilt_deg: -1.0, ..input() }).unwrap();
        assert_eq!((under.reach, under.worst_case_deg), (AccuracyReach::OutOfReach, 0.0));
    }

    #[test]
    fn one_setting_must_be_more_exact_by_the_root_of_two() {
        let each = saw_accuracy(&input()).unwrap().tilt_sd_deg;
        let one = saw_accuracy(&SawAccuracyInput { setting: TiltSetting::OneForBoth, ..input() }).unwrap().tilt_sd_deg;
        assert!((each / one - 2.0_f64.sqrt()).abs() < 1e-12);
    }

    proptest! {
        #[test]
        fn the_answer_gives_the_share_back(
            t in 5.0..50.0, gap_mm in 0.01..1.0, share in 0.6..0.999, over_tilt_deg in 0.0..0.5, part in 0.0..0.99,
        ) {
            let base = SawAccuracyInput { thickness_a_mm: t, thickness_b_mm: t, gap_mm, share, over_tilt_deg, ..input() };
            let total_sd_deg = saw_accuracy(&base).unwrap().total_sd_deg;
            let input = SawAccuracyInput { other_sd_deg: f64::min(total_sd_deg * part, 5.0), ..base };
            let saw = saw_accuracy(&input).unwrap();
            let sd = (2.0 * saw.tilt_sd_deg * saw.tilt_sd_deg + input.other_sd_deg * input.other_sd_deg).sqrt();
            let back = normal_share((degrees(gap_mm / saw.seam_mm) + 2.0 * over_tilt_deg) / sd);
            prop_assert!((back - share).abs() < 1e-9, "{} {}", back, share);
        }

        #[test]
        fn any_bits_give_numbers_or_a_fault(bits in prop::array::uniform7(prop::num::f64::ANY), which in 0_usize..8) {
            let mut one = input();
            let fields = [&mut one.thickness_a_mm, &mut one.thickness_b_mm, &mut one.corner_deg, &mut one.gap_mm,
                &mut one.share, &mut one.over_tilt_deg, &mut one.other_sd_deg];
            for (k, field) in fields.into_iter().enumerate() {
                if which == k || which == 7 {
                    *field = bits[k];
                }
            }
            if let Ok(saw) = saw_accuracy(&one) {
                let all = [saw.allowed_divergence_deg, saw.total_sd_deg, saw.tilt_half_range_deg, saw.inside_gap_mm];
                prop_assert!(all.iter().all(|value| value.is_finite()), "{:?}", saw);
            }
        }
    }
}
