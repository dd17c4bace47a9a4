//! What one error of angle does to an edge, a mitre and a closed ring, and the error that a gap allows.

use crate::error::{Allowed, ErrorCode, Fault};
use crate::limits::{Limited, limited};
use crate::numeric::real::{asin_deg, cos_deg, sin_deg, tan_deg};

/// A ring of equal mitres, all cut with the same error.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<FrameErrorInput>))]
pub struct FrameErrorInput {
    /// Length of the face that is cut: width of a frame member or thickness of a board, mm.
    pub face_mm: f64,
    /// Error of each cut, degrees; positive is over-tilt.
    pub error_deg: f64,
    /// Number of corners of the ring; four, a rectangular frame or box, if left out.
    #[cfg_attr(feature = "json", serde(default = "rectangle"))]
    pub sides: u32,
}

limited!(FrameErrorInput { face_mm: LENGTH, error_deg: ANGLE_ERROR, sides: SIDES });

#[cfg(feature = "json")]
fn rectangle() -> u32 {
    4
}

/// What the error adds up to.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct FrameError {
    /// How far the far end of a square-cut face is out, mm.
    pub far_end_mm: f64,
    /// Length of the mitred seam, mm.
    pub seam_mm: f64,
    /// Opening at the open end of one seam, both its cuts off in the same sense, the corner held, mm; negative inside.
    pub seam_opening_mm: f64,
    /// Divergence of the two faces of one seam, degrees.
    pub divergence_deg: f64,
    /// Angle by which the ring fails to close when every seam is drawn tight, degrees.
    pub closing_error_deg: f64,
}

/// Far end of a face, opening of a mitre and closing error of a ring whose cuts are all off by one angle.
///
/// # Equation
/// ```text
/// far end = w tan e     seam = w / cos(180° / N)     opening = 2 seam sin e     closing error = 2 N e
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | w | length of the face | mm | `face_mm` |
/// | e | error of each cut | degree | `error_deg` |
/// | N | corners of the ring, each with two cuts | | `sides` |
///
/// # Limits
/// A regular ring of members of equal width; the corner of a seam is held while its opening is measured, or drawn tight
/// while the ring's error is. Opening and error carry the sign of `e`.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// Plane trigonometry, derived in the theory pages; checked by `verification/tolerance`.
///
/// # Examples
/// ```
/// use beamcraft_core::tolerance::{FrameErrorInput, frame_error};
/// let frame = frame_error(&FrameErrorInput { face_mm: 100.0, error_deg: 0.5, sides: 4 })?;
/// assert_eq!(frame.closing_error_deg, 4.0);
/// assert!((frame.seam_opening_mm - 2.468237).abs() < 1e-6);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn frame_error(input: &FrameErrorInput) -> Result<FrameError, Fault> {
    input.check_ranges()?;
    let FrameErrorInput { face_mm, error_deg, sides } = *input;
    let seam_mm = face_mm / cos_deg(180.0 / f64::from(sides));
    Ok(FrameError {
        far_end_mm: face_mm * tan_deg(error_deg),
        seam_mm,
        seam_opening_mm: 2.0 * seam_mm * sin_deg(error_deg),
        divergence_deg: 2.0 * error_deg,
        closing_error_deg: 2.0 * f64::from(sides) * error_deg,
    })
}

/// A gap that is allowed, and the cuts that share it.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<ErrorForGapInput>))]
pub struct ErrorForGapInput {
    /// Gap that is allowed at the open end, mm.
    pub gap_mm: f64,
    /// Length of the joint, mm.
    pub joint_mm: f64,
    /// Number of cuts that add up to the gap: two at one mitre, twice the corners when the last joint of a ring takes it all.
    #[cfg_attr(feature = "json", serde(default = "one_mitre"))]
    pub cuts: u32,
}

limited!(ErrorForGapInput { gap_mm: SMALL_LENGTH, joint_mm: LENGTH, cuts: COUNT });

#[cfg(feature = "json")]
fn one_mitre() -> u32 {
    2
}

/// The error of angle that a gap allows.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct ErrorForGap {
    /// Divergence of the two faces that gives the gap, degrees.
    pub total_error_deg: f64,
    /// Error of each cut when all are off alike, degrees.
    pub error_per_cut_deg: f64,
}

/// Error of angle that opens a joint by a given gap, in all and for each cut.
///
/// # Equation
/// ```text
/// total = asin(gap / joint)        per cut = total / cuts
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | gap | gap allowed, square to one face of the joint | mm | `gap_mm` |
/// | joint | length of the joint | mm | `joint_mm` |
///
/// # Limits
/// The worst case, all errors alike and in one sense. For errors that scatter see `saw_accuracy`.
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` for a gap longer than the joint, or a joint of no length.
///
/// # Source
/// As on a public machine-alignment page; checked by `verification/tolerance`.
///
/// # Examples
/// ```
/// use beamcraft_core::tolerance::{ErrorForGapInput, error_for_gap};
/// let octagon = error_for_gap(&ErrorForGapInput { gap_mm: 25.4 / 64.0, joint_mm: 50.8, cuts: 16 })?;
/// assert!((octagon.error_per_cut_deg - 0.028).abs() < 0.0005);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn error_for_gap(input: &ErrorForGapInput) -> Result<ErrorForGap, Fault> {
    input.check_ranges()?;
    let ErrorForGapInput { gap_mm, joint_mm, cuts } = *input;
    // Written so that a joint of no length is refused beside a gap of none.
    if joint_mm <= 0.0 || gap_mm > joint_mm {
        let allowed = Allowed::Text("a joint at least as long as the gap, and of some length");
        return Err(Fault::number(ErrorCode::Inconsistent, "joint_mm", joint_mm, allowed, ""));
    }
    let total_error_deg = asin_deg(gap_mm / joint_mm);
    Ok(ErrorForGap { total_error_deg, error_per_cut_deg: total_error_deg / f64::from(cuts) })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const FRAME_ERROR: crate::json::Calculation = crate::json::calculation!(
    frame_error: FrameErrorInput => FrameError, Typed,
    "Far end of a face, opening of a mitre and closing error of a ring whose cuts are all off by one angle"
);

/// Registry row.
#[cfg(feature = "json")]
pub(super) const ERROR_FOR_GAP: crate::json::Calculation = crate::json::calculation!(
    error_for_gap: ErrorForGapInput => ErrorForGap, Typed,
    "Error of angle that opens a joint by a given gap, in all and for each cut"
);

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_joint_of_no_length_is_refused() {
        for (gap_mm, joint_mm) in [(0.0, 0.0), (2.0, 1.0)] {
            let fault = error_for_gap(&ErrorForGapInput { gap_mm, joint_mm, cuts: 2 }).unwrap_err();
            assert_eq!((fault.code, fault.field), (ErrorCode::Inconsistent, "joint_mm"));
        }
        let whole = error_for_gap(&ErrorForGapInput { gap_mm: 1.0, joint_mm: 1.0, cuts: 1 }).unwrap();
        assert!((whole.total_error_deg - 90.0).abs() < 1e-12);
    }

    proptest! {
        #[test]
        fn the_opening_of_a_seam_gives_its_error_back(face_mm in 1.0..500.0, error_deg in 0.001..5.0, sides in 3_u32..50) {
            let frame = frame_error(&FrameErrorInput { face_mm, error_deg, sides }).unwrap();
            // The chord of the divergence 2e over the seam is 2 seam sin e: two cuts, each with half of it.
            let back = error_for_gap(&ErrorForGapInput {
                gap_mm: 0.5 * frame.seam_opening_mm, joint_mm: frame.seam_mm, cuts: 1,
            }).unwrap();
            prop_assert!((back.error_per_cut_deg - error_deg).abs() < 1e-9);
        }

        #[test]
        fn any_bits_give_numbers_or_a_fault(
            x in prop::num::f64::ANY, y in prop::num::f64::ANY, n in any::<u32>(), near in 0_u32..2000,
        ) {
            for (length, error, count) in [(x, y, n), (x, 0.1, near), (10.0, y, near), (0.0, 0.0, near)] {
                if let Ok(out) = frame_error(&FrameErrorInput { face_mm: length, error_deg: error, sides: count }) {
                    prop_assert!(out.seam_opening_mm.is_finite() && out.far_end_mm.is_finite());
                }
                if let Ok(out) = error_for_gap(&ErrorForGapInput { gap_mm: error, joint_mm: length, cuts: count }) {
                    prop_assert!(out.error_per_cut_deg.is_finite());
                }
            }
        }
    }
}
