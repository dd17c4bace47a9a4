//! A deliberate over-tilt: how much of it closes a wanted share of seams at the show edge, and what it costs inside.

use crate::error::Fault;
use crate::limits::{Limited, limited};
use crate::numeric::normal::{normal_quantile, normal_share};
use crate::numeric::real::{degrees, radians};

use super::accuracy::TiltSetting;
use super::seam::cuttable_pair;
#[cfg(feature = "json")]
use super::seam::{none, square_corner};

/// A seam, the scatter of the saw, and the share of seams that should be closed where they are seen.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<OverTiltInput>))]
pub struct OverTiltInput {
    /// Thickness of board a, mm.
    pub thickness_a_mm: f64,
    /// Thickness of board b, mm.
    pub thickness_b_mm: f64,
    /// Corner angle between the two show faces, measured inside the body, degrees; a square corner if left out.
    #[cfg_attr(feature = "json", serde(default = "square_corner"))]
    pub corner_deg: f64,
    /// Standard deviation of the tilt of one edge, degrees; from test cuts.
    pub tilt_sd_deg: f64,
    /// How the two edges come by their tilt.
    pub setting: TiltSetting,
    /// Standard deviation of everything else that turns the seam (corner, cup), degrees; none if left out.
    #[cfg_attr(feature = "json", serde(default = "none"))]
    pub other_sd_deg: f64,
    /// Visible gap that counts as closed, mm; 0 if left out, closed in full.
    #[cfg_attr(feature = "json", serde(default = "none"))]
    pub gap_mm: f64,
    /// Share of seams that should be closed; 0.95 if left out, 19 of 20.
    #[cfg_attr(feature = "json", serde(default = "most"))]
    pub share: f64,
    /// Thickest film in which the glue holds, mm; 0.15 if left out, the upper end for stiff glues (FPL-GTR-190, chapter 10).
    #[cfg_attr(feature = "json", serde(default = "glue_film"))]
    pub glue_film_mm: f64,
}

limited!(OverTiltInput {
    thickness_a_mm: BOARD_THICKNESS,
    thickness_b_mm: BOARD_THICKNESS,
    corner_deg: CORNER_ANGLE,
    tilt_sd_deg: ANGLE_SPREAD,
    other_sd_deg: ANGLE_SPREAD,
    gap_mm: SMALL_LENGTH,
    share: WANTED_SHARE,
    glue_film_mm: GLUE_FILM,
});

#[cfg(feature = "json")]
fn most() -> f64 {
    0.95
}

#[cfg(feature = "json")]
fn glue_film() -> f64 {
    0.15
}

/// The over-tilt with what it gives and what it costs.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct OverTilt {
    /// Over-tilt of each edge, degrees; 0 where the share is reached without.
    pub over_tilt_deg: f64,
    /// Tilt from square to aim at for edge a, the over-tilt included, degrees.
    pub aim_a_deg: f64,
    /// Tilt from square to aim at for edge b, the over-tilt included, degrees.
    pub aim_b_deg: f64,
    /// Length of the seam across the section, mm.
    pub seam_mm: f64,
    /// Standard deviation of the divergence of the two cut faces, degrees.
    pub total_sd_deg: f64,
    /// Share of seams closed without over-tilt.
    pub closed_without: f64,
    /// Share of seams closed with it.
    pub closed_with: f64,
    /// Gap at the heel of a seam cut as aimed at, mm: the price.
    pub inside_gap_mm: f64,
    /// Gap at the heel that the wanted share of seams keeps to, mm.
    pub inside_gap_share_mm: f64,
    /// Share of the seam's length, from the show edge, over which glue can still hold when cut as aimed at.
    pub glued_share: f64,
    /// The same for the gap at the heel that the wanted share of seams keeps to.
    pub glued_share_worst: f64,
}

/// Deliberate over-tilt that closes a wanted share of drawn-tight seams at the show edge, and its price inside.
///
/// # Equation
/// ```text
/// D = 2 over + e        σ_D² = m σ_tilt² + σ_other²        m = 4 (one setting for both), 2 (each anew)
/// over = max(0, (z σ_D − gap / f) / 2)                    z = Φ⁻¹(share)
/// closed = Φ((gap / f + 2 over) / σ_D)                    inside = f · 2 over,  f (2 over + z σ_D)
/// glued = min(1, film / inside)                           the wedge opens in step from the show edge to the heel
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | f | length of the seam | mm | `seam_mm` |
/// | D | divergence of the cut faces, positive when they part towards the inside | radian | – |
/// | over | over-tilt of each edge | radian | `over_tilt_deg` |
/// | σ | standard deviations | radian | `tilt_sd_deg`, `other_sd_deg`, `total_sd_deg` |
///
/// # Limits
/// First order, normal errors around the setting aimed at, seams drawn tight with the corner held. A gap at the heel is not seen, but
/// glue does not bridge it, and boards that cup outwards open the heel as well.
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` where the mitre needs a tilt beyond 80°.
///
/// # Source
/// Propagation of variances, derived in the theory pages; thickness of glue lines: FPL-GTR-190, chapter 10 (seen). Checked by
/// `verification/tolerance`.
///
/// # Examples
/// ```
/// use beamcraft_core::tolerance::{OverTiltInput, TiltSetting, over_tilt};
/// let choice = over_tilt(&OverTiltInput {
///     thickness_a_mm: 20.0, thickness_b_mm: 20.0, corner_deg: 90.0, tilt_sd_deg: 0.1, setting: TiltSetting::OneForBoth,
///     other_sd_deg: 0.0, gap_mm: 0.0, share: 0.95, glue_film_mm: 0.15,
/// })?;
/// // 1.645 standard deviations of 0.2 degrees, shared by both edges: the saw is set to 45.16 degrees.
/// assert!((choice.over_tilt_deg - 0.1645).abs() < 1e-4 && (choice.aim_a_deg - 45.1645).abs() < 1e-4);
/// assert!((choice.inside_gap_mm - 0.162).abs() < 0.001);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn over_tilt(input: &OverTiltInput) -> Result<OverTilt, Fault> {
    input.check_ranges()?;
    let pair = cuttable_pair(input.thickness_a_mm, input.thickness_b_mm, input.corner_deg)?;
    let weight = match input.setting {
        TiltSetting::OneForBoth => 4.0,
        TiltSetting::EachAnew => 2.0,
    };
    let (tilt, other) = (input.tilt_sd_deg, input.other_sd_deg);
    let total_sd_deg = (weight * tilt * tilt + other * other).sqrt();
    let deviations = normal_quantile(input.share);
    let gap_deg = degrees(input.gap_mm / pair.seam_mm);
    let over_tilt_deg = (0.5 * (deviations * total_sd_deg - gap_deg)).max(0.0);
    let closed = |over_deg: f64| match total_sd_deg {
        0.0 => 1.0,
        sd => normal_share((gap_deg + 2.0 * over_deg) / sd),
    };
    let inside = |divergence_deg: f64| pair.seam_mm * radians(divergence_deg);
    let inside_gap_mm = inside(2.0 * over_tilt_deg);
    let inside_gap_share_mm = inside(2.0 * over_tilt_deg + deviations * total_sd_deg);
    let glued = |heel_mm: f64| if heel_mm > input.glue_film_mm { input.glue_film_mm / heel_mm } else { 1.0 };
    Ok(OverTilt {
        over_tilt_deg,
        aim_a_deg: pair.tilt_a_deg + over_tilt_deg,
        aim_b_deg: pair.tilt_b_deg + over_tilt_deg,
        seam_mm: pair.seam_mm,
        total_sd_deg,
        closed_without: closed(0.0),
        closed_with: closed(over_tilt_deg),
        inside_gap_mm,
        inside_gap_share_mm,
        glued_share: glued(inside_gap_mm),
        glued_share_worst: glued(inside_gap_share_mm),
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const OVER_TILT: crate::json::Calculation = crate::json::calculation!(
    over_tilt: OverTiltInput => OverTilt, Typed,
    "Deliberate over-tilt that closes a wanted share of seams at the show edge, and its price inside"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tolerance::{SawAccuracyInput, saw_accuracy};
    use proptest::prelude::*;

    fn input() -> OverTiltInput {
        OverTiltInput {
            thickness_a_mm: 20.0,
            thickness_b_mm: 20.0,
            corner_deg: 90.0,
            tilt_sd_deg: 0.1,
            setting: TiltSetting::OneForBoth,
            other_sd_deg: 0.0,
            gap_mm: 0.0,
            share: 0.95,
            glue_film_mm: 0.15,
        }
    }

    #[test]
    fn an_exact_saw_needs_no_over_tilt() {
        let exact = over_tilt(&OverTiltInput { tilt_sd_deg: 0.0, ..input() }).unwrap();
        assert_eq!((exact.over_tilt_deg, exact.closed_without, exact.inside_gap_mm), (0.0, 1.0, 0.0));
        assert_eq!((exact.glued_share, exact.glued_share_worst), (1.0, 1.0));
        // Half of all seams stand open otherwise, by however little.
        assert!((over_tilt(&input()).unwrap().closed_without - 0.5).abs() < 1e-12);
    }

    proptest! {
        #[test]
        fn the_choice_gives_the_share_and_the_saw_back(
            t in 5.0..50.0, tilt_sd_deg in 0.01..0.5, gap_mm in 0.0..0.05, share in 0.6..0.999, each in any::<bool>(),
        ) {
            let setting = if each { TiltSetting::EachAnew } else { TiltSetting::OneForBoth };
            let one = OverTiltInput { thickness_a_mm: t, thickness_b_mm: t, tilt_sd_deg, gap_mm, share, setting, ..input() };
            let choice = over_tilt(&one).unwrap();
            prop_assert!(choice.closed_with >= share - 1e-9);
            if choice.over_tilt_deg > 0.0 {
                prop_assert!((choice.closed_with - share).abs() < 1e-9);
                // The inverse question gives back the saw that was asked about.
                let back = saw_accuracy(&SawAccuracyInput {
                    thickness_a_mm: t, thickness_b_mm: t, corner_deg: 90.0, gap_mm, share, setting,
                    over_tilt_deg: choice.over_tilt_deg, other_sd_deg: 0.0,
                }).unwrap();
                prop_assert!((back.tilt_sd_deg - tilt_sd_deg).abs() < 1e-9 * tilt_sd_deg.max(1.0));
            }
        }

        #[test]
        fn any_bits_give_numbers_or_a_fault(bits in prop::array::uniform8(prop::num::f64::ANY), which in 0_usize..9) {
            let mut one = input();
            let fields = [&mut one.thickness_a_mm, &mut one.thickness_b_mm, &mut one.corner_deg, &mut one.tilt_sd_deg,
                &mut one.other_sd_deg, &mut one.gap_mm, &mut one.share, &mut one.glue_film_mm];
            for (k, field) in fields.into_iter().enumerate() {
                if which == k || which == 8 {
                    *field = bits[k];
                }
            }
            if let Ok(found) = over_tilt(&one) {
                let all = [found.over_tilt_deg, found.inside_gap_share_mm, found.closed_with, found.glued_share_worst];
                prop_assert!(all.iter().all(|value| value.is_finite()), "{:?}", found);
            }
        }
    }
}
