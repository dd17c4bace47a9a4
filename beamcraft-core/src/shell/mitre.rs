//! The mitre between two boards of any thickness at any corner.
//!
//! ```text
//!            show face of a
//!   ─────────────────────────────●  long point
//!      t_a                 seam ╱│
//!   ──────────────────────────●  │
//!           inside       heel │  │ show face of b
//!                             │t_b
//! ```
//!
//! The seam runs from the outer corner to the inner corner, so that both cut faces have the same length and the show
//! faces meet in a line. Only for equal thicknesses is it the bisector.

use crate::error::{Allowed, ErrorCode, Fault};
use crate::limits::{Limited, limited};
use crate::numeric::real::{atan2_deg, sin_cos_deg};

/// Two boards that meet along a mitred edge.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<MitrePairInput>))]
pub struct MitrePairInput {
    /// Thickness of board a, mm.
    pub thickness_a_mm: f64,
    /// Thickness of board b, mm.
    pub thickness_b_mm: f64,
    /// Corner angle between the two show faces, measured inside the body, degrees; above 180 an inside corner.
    #[cfg_attr(feature = "json", serde(default = "square_corner"))]
    pub corner_deg: f64,
}

limited!(MitrePairInput { thickness_a_mm: BOARD_THICKNESS, thickness_b_mm: BOARD_THICKNESS, corner_deg: CORNER_ANGLE });

const STRAIGHT: Allowed = Allowed::Text("boards of equal thickness at a straight corner");

#[cfg(feature = "json")]
fn square_corner() -> f64 {
    90.0
}

/// The mitre that brings both show faces together.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct MitrePair {
    /// Angle between the seam and the show face of board a, degrees.
    pub angle_a_deg: f64,
    /// Angle between the seam and the show face of board b, degrees.
    pub angle_b_deg: f64,
    /// Blade tilt from square for board a, degrees; negative when the long point lies on the inner face.
    pub tilt_a_deg: f64,
    /// Blade tilt from square for board b, degrees; negative when the long point lies on the inner face.
    pub tilt_b_deg: f64,
    /// Length of the seam across the section, the same on both boards, mm.
    pub seam_mm: f64,
    /// How much the inner face of board a is shorter than its show face at this edge, mm; negative when longer.
    pub setback_a_mm: f64,
    /// How much the inner face of board b is shorter than its show face at this edge, mm; negative when longer.
    pub setback_b_mm: f64,
}

/// Tilts of the mitre between two boards of any thickness at any corner angle.
///
/// # Equation
/// ```text
/// angle_a = atan2(t_a sin c, t_b + t_a cos c)      tilt_a = 90 − angle_a      angle_a + angle_b = c
/// seam    = t_a / sin angle_a = t_b / sin angle_b   setback_a = t_a / tan angle_a = (t_b + t_a cos c) / sin c
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | t_a, t_b | board thicknesses | mm | `thickness_a_mm`, `thickness_b_mm` |
/// | c | corner angle between the show faces | degree | `corner_deg` |
///
/// # Limits
/// At a corner of exactly 180° there is no seam to find: the boards lie in one plane and must be of equal thickness.
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` for a straight corner between boards of unequal thickness.
///
/// # Source
/// Plane geometry, derived in the theory pages; checked by `verification/mitre`.
///
/// # Examples
/// ```
/// use beamcraft_core::shell::{mitre_pair, MitrePairInput};
/// let seam = mitre_pair(&MitrePairInput { thickness_a_mm: 20.0, thickness_b_mm: 10.0, corner_deg: 135.0 })?;
/// assert!((seam.angle_a_deg - 106.3).abs() < 0.1);
/// assert!((seam.tilt_b_deg - 61.3).abs() < 0.1);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn mitre_pair(input: &MitrePairInput) -> Result<MitrePair, Fault> {
    input.check_ranges()?;
    seam(input.thickness_a_mm, input.thickness_b_mm, input.corner_deg)
}

/// The seam between boards of thickness `t_a` and `t_b`, both positive.
pub(super) fn seam(t_a: f64, t_b: f64, corner_deg: f64) -> Result<MitrePair, Fault> {
    let (sine, cosine) = sin_cos_deg(corner_deg);
    // Along each show face, from the outer corner back to the point above the inner corner, times sin c.
    let (run_a, run_b) = (t_b + t_a * cosine, t_a + t_b * cosine);
    if sine == 0.0 && run_a != 0.0 {
        return Err(Fault::number(ErrorCode::Inconsistent, "thickness_b_mm", t_b, STRAIGHT, "plane one board down"));
    }
    // An inside corner turns the seam round: its angle is measured on the other side of the same line.
    let side = if corner_deg > 180.0 { -1.0 } else { 1.0 };
    let angle =
        |thickness: f64, run: f64| if sine == 0.0 { 90.0 } else { atan2_deg(thickness * sine.abs(), side * run) };
    let (angle_a_deg, angle_b_deg) = (angle(t_a, run_a), angle(t_b, run_b));
    let setback = |run: f64| if sine == 0.0 { 0.0 } else { run / sine };
    let (setback_a_mm, setback_b_mm) = (setback(run_a), setback(run_b));
    Ok(MitrePair {
        angle_a_deg,
        angle_b_deg,
        tilt_a_deg: 90.0 - angle_a_deg,
        tilt_b_deg: 90.0 - angle_b_deg,
        seam_mm: (t_a * t_a + setback_a_mm * setback_a_mm).sqrt(),
        setback_a_mm,
        setback_b_mm,
    })
}

/// Gaps at the show edge and at the heel of faces that stand apart by `offset_mm` at the show edge and by `taper_mm` less
/// at the heel, pushed apart where they would overlap.
pub(crate) fn seam_gaps(offset_mm: f64, taper_mm: f64) -> (f64, f64) {
    let heel_mm = offset_mm - taper_mm;
    let overlap_mm = 0.0_f64.min(offset_mm).min(heel_mm);
    (offset_mm - overlap_mm, heel_mm - overlap_mm)
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const MITRE_PAIR: crate::json::Calculation = crate::json::calculation!(
    mitre_pair: MitrePairInput => MitrePair, Typed,
    "Blade tilts and seam of the mitre between two boards of any thickness at any corner angle"
);

#[cfg(test)]
mod tests {
    use super::*;

    fn pair(thickness_a_mm: f64, thickness_b_mm: f64, corner_deg: f64) -> MitrePair {
        mitre_pair(&MitrePairInput { thickness_a_mm, thickness_b_mm, corner_deg }).expect("allowed")
    }

    #[test]
    fn equal_boards_meet_on_the_bisector() {
        let seam = pair(20.0, 20.0, 90.0);
        assert_eq!((seam.tilt_a_deg, seam.tilt_b_deg), (45.0, 45.0));
        assert_eq!((seam.setback_a_mm, seam.setback_b_mm), (20.0, 20.0));
    }

    #[test]
    fn an_inside_corner_has_its_long_point_on_the_inner_face() {
        let seam = pair(20.0, 20.0, 270.0);
        assert_eq!((seam.tilt_a_deg, seam.tilt_b_deg), (-45.0, -45.0));
        assert_eq!(seam.setback_a_mm, -20.0);
    }

    #[test]
    fn a_straight_corner_needs_equal_boards() {
        assert_eq!(pair(20.0, 20.0, 180.0).tilt_a_deg, 0.0);
        let input = MitrePairInput { thickness_a_mm: 20.0, thickness_b_mm: 19.0, corner_deg: 180.0 };
        assert_eq!(mitre_pair(&input).expect_err("refused").code, ErrorCode::Inconsistent);
    }
}
