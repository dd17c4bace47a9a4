//! What moisture does to the mitred corner of a flat frame.

use super::mitre::SeamOpening;
use crate::error::Fault;
use crate::limits::{Limited, limited};
use crate::numeric::real::{atan2_deg, cos_deg, sin_deg};

/// A mitred corner of two equal members lying flat.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<FrameCornerMovementInput>))]
pub struct FrameCornerMovementInput {
    /// Width of each member, mm.
    pub width_mm: f64,
    /// Corner angle between the members, inside the frame, degrees.
    #[cfg_attr(feature = "json", serde(default = "square_corner"))]
    pub corner_deg: f64,
    /// Strain across the width since the mitre was cut, swelling positive.
    pub width_strain: f64,
    /// Strain along the length since then, swelling positive; none when left out, since wood hardly moves along the grain.
    #[cfg_attr(feature = "json", serde(default))]
    pub length_strain: f64,
}

limited!(FrameCornerMovementInput {
    width_mm: LENGTH,
    corner_deg: FRAME_CORNER,
    width_strain: STRAIN,
    length_strain: STRAIN,
});

#[cfg(feature = "json")]
fn square_corner() -> f64 {
    90.0
}

/// The corner after the movement.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct FrameCornerMovement {
    /// Angle of the wedge between the members when the frame keeps its corner, degrees; positive when it opens inside.
    pub opening_deg: f64,
    /// Width of the wedge at its open end, mm.
    pub opening_mm: f64,
    /// Which end of the seam opens: the heel is the inner corner of the frame, the toe the outer.
    pub opens: SeamOpening,
    /// Length of the seam, mm.
    pub seam_mm: f64,
    /// Angle between seam and outer edge of a member after the movement, degrees.
    pub moved_angle_deg: f64,
}

/// Opening of the mitred corner of a flat frame whose members move across their width but not along their length.
///
/// # Equation
/// ```text
/// tan a' = tan(C/2) (1 + ε_w) / (1 + ε_l)        opening = C − 2 a' ≈ − sin C (ε_w − ε_l)
/// seam = w / sin(C/2)                            wedge = 2 seam sin(|opening| / 2)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | C | corner | degree | `corner_deg` |
/// | a' | angle between seam and edge after the movement | degree | `moved_angle_deg` |
/// | ε_w, ε_l | strains across the width and along the length | – | `width_strain`, `length_strain` |
/// | w | width of a member | mm | `width_mm` |
///
/// Drying opens the inner end and leaves the outer closed; swelling opens the outer.
///
/// # Limits
/// Two members of equal width and equal movement. A glued or splined corner holds back part of it.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// Plane geometry, derived in the theory pages; which end opens: a textbook on building construction (seen) — checked by
/// `verification/movement`.
///
/// # Examples
/// ```
/// use beamcraft_core::movement::{frame_corner_movement, FrameCornerMovementInput, SeamOpening};
/// let input = FrameCornerMovementInput { width_mm: 60.0, corner_deg: 90.0, width_strain: -0.01, length_strain: 0.0 };
/// let corner = frame_corner_movement(&input)?;
/// assert!((corner.opening_deg - 0.57).abs() < 0.01 && corner.opens == SeamOpening::Heel);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn frame_corner_movement(input: &FrameCornerMovementInput) -> Result<FrameCornerMovement, Fault> {
    input.check_ranges()?;
    let half_deg = 0.5 * input.corner_deg;
    let (sine, cosine) = (sin_deg(half_deg), cos_deg(half_deg));
    let moved_angle_deg = if input.width_strain == input.length_strain {
        half_deg
    } else {
        atan2_deg(sine * (1.0 + input.width_strain), cosine * (1.0 + input.length_strain))
    };
    let opening_deg = 2.0 * (half_deg - moved_angle_deg);
    let seam_mm = input.width_mm / sine;
    Ok(FrameCornerMovement {
        opening_deg,
        opening_mm: 2.0 * seam_mm * sin_deg(0.5 * opening_deg.abs()),
        opens: SeamOpening::of(opening_deg),
        seam_mm,
        moved_angle_deg,
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const FRAME_CORNER_MOVEMENT: crate::json::Calculation = crate::json::calculation!(
    frame_corner_movement: FrameCornerMovementInput => FrameCornerMovement, Typed,
    "Opening of the mitred corner of a flat frame with moisture"
);

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn corner(corner_deg: f64, width_strain: f64, length_strain: f64) -> FrameCornerMovement {
        let input = FrameCornerMovementInput { width_mm: 60.0, corner_deg, width_strain, length_strain };
        frame_corner_movement(&input).expect("allowed")
    }

    proptest! {
        #[test]
        fn drying_opens_inside_and_swelling_outside(c in 20.0_f64..=170.0, strain in 1e-6_f64..=0.1) {
            prop_assert_eq!(corner(c, -strain, 0.0).opens, SeamOpening::Heel);
            prop_assert_eq!(corner(c, strain, 0.0).opens, SeamOpening::Toe);
            prop_assert_eq!(corner(c, strain, strain).opening_mm, 0.0);
        }

        #[test]
        fn any_numbers_give_finite_answers_or_a_fault(a in any::<f64>(), b in any::<f64>(), c in any::<f64>(), d in any::<f64>()) {
            let input = FrameCornerMovementInput { width_mm: a, corner_deg: b, width_strain: c, length_strain: d };
            if let Ok(found) = frame_corner_movement(&input) {
                prop_assert!(found.opening_mm.is_finite() && found.seam_mm.is_finite());
            }
        }
    }
}
