//! A long-grain mitre whose boards are held on a frame that does not move with them, such as one of plywood.

use super::mitre::{MitreMovementInput, SeamOpening, mitre_movement};
use crate::error::Fault;
use crate::limits::{Limited, limited};
use crate::numeric::real::{cos_deg, sin_deg};
use crate::shell::seam_gaps;

/// A mitre along two boards, each held on a frame at some distance from the seam.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<FramedMitreMovementInput>))]
pub struct FramedMitreMovementInput {
    /// Thickness of board a when the mitre was cut, mm.
    pub thickness_a_mm: f64,
    /// Thickness of board b when the mitre was cut, mm.
    pub thickness_b_mm: f64,
    /// Corner angle between the two show faces, measured inside the body, degrees; above 180 an inside corner.
    #[cfg_attr(feature = "json", serde(default = "square_corner"))]
    pub corner_deg: f64,
    /// Across board a, from the mitre on the show face to the line where the frame holds the board, mm.
    pub held_at_a_mm: f64,
    /// Across board b, from the mitre on the show face to the line where the frame holds the board, mm.
    pub held_at_b_mm: f64,
    /// Strain of board a across its width since the body was made, swelling positive.
    pub width_strain_a: f64,
    /// Strain of board a through its thickness since then, swelling positive.
    pub thickness_strain_a: f64,
    /// Strain of board b across its width since then, swelling positive.
    pub width_strain_b: f64,
    /// Strain of board b through its thickness since then, swelling positive.
    pub thickness_strain_b: f64,
    /// Strain of the frame since then; none when left out: cross-laid panels hardly move, and no movement of them is tabulated here.
    #[cfg_attr(feature = "json", serde(default))]
    pub frame_strain: f64,
}

limited!(FramedMitreMovementInput {
    thickness_a_mm: BOARD_THICKNESS,
    thickness_b_mm: BOARD_THICKNESS,
    corner_deg: CORNER_ANGLE,
    held_at_a_mm: LENGTH,
    held_at_b_mm: LENGTH,
    width_strain_a: STRAIN,
    thickness_strain_a: STRAIN,
    width_strain_b: STRAIN,
    thickness_strain_b: STRAIN,
    frame_strain: STRAIN,
});

#[cfg(feature = "json")]
fn square_corner() -> f64 {
    90.0
}

/// The mitre after the movement, if the glue of the seam held nothing back.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct FramedMitreMovement {
    /// How far the two boards draw apart square to the seam, mm; negative when they press against one another.
    pub offset_mm: f64,
    /// Part of the offset that is board a's, mm.
    pub offset_a_mm: f64,
    /// Part of the offset that is board b's, mm.
    pub offset_b_mm: f64,
    /// What the change of the bevels opens besides, mm; positive at the show edge, negative inside.
    pub taper_mm: f64,
    /// Gap at the show edge, mm.
    pub show_gap_mm: f64,
    /// Gap at the heel, mm.
    pub inside_gap_mm: f64,
    /// How far the boards would overlap at the tighter edge if nothing gave way, mm: boards, glue and frame have to bear it.
    pub pressed_mm: f64,
    /// Which end of the seam the change of the bevels opens.
    pub opens: SeamOpening,
    /// Length of the seam across the section, mm.
    pub seam_mm: f64,
}

/// Opening of a long-grain mitre whose boards are held on a frame that does not move with them, such as one of plywood.
///
/// # Equation
/// ```text
/// o_i   = −cos(b_i) h_i (ε_w,i − ε_f)                       a board that shrinks from its held line draws off the seam
/// taper = ± 2 seam sin(|c' − c| / 2)                        the frame holds the corner; c' by mitre_movement
/// show gap = o − min(0, o, o − taper)      inside gap = o − taper − min(0, o, o − taper)      o = o_a + o_b
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | b | tilt of the mitre from square | degree | by `mitre_pair` |
/// | h | distance from the seam to the held line | mm | `held_at_a_mm`, `held_at_b_mm` |
/// | ε_w, ε_f | strains across the board and of the frame | – | `width_strain_a`, … |
/// | c, c' | corner as cut, and with the seam closed after the movement | degree | `corner_deg` |
///
/// The same boards glued only to one another move together and keep the seam; the frame is what pulls it open. Hence: hold a board on
/// the frame near one mitre only, or in slots, and let the frame pieces be narrow.
///
/// # Limits
/// Glue in the seam holds part of it back: then the numbers are what seam, boards and frame have to bear. Frame pieces of solid wood with
/// their grain the way of the boards' width move as little as plywood.
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` for a straight corner between boards of unequal thickness.
///
/// # Source
/// Plane geometry, derived in the theory pages — checked by `verification/movement`.
///
/// # Examples
/// ```
/// use beamcraft_core::movement::{framed_mitre_movement, FramedMitreMovementInput};
/// // Two boards held 150 mm from their mitre dry by 1 % across, half of that through the thickness.
/// let seam = framed_mitre_movement(&FramedMitreMovementInput {
///     thickness_a_mm: 20.0, thickness_b_mm: 20.0, corner_deg: 90.0, held_at_a_mm: 150.0, held_at_b_mm: 150.0,
///     width_strain_a: -0.01, thickness_strain_a: -0.005, width_strain_b: -0.01, thickness_strain_b: -0.005,
///     frame_strain: 0.0,
/// })?;
/// assert!((seam.offset_mm - 3.0 / 2.0_f64.sqrt()).abs() < 1e-9 && seam.show_gap_mm > seam.inside_gap_mm);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn framed_mitre_movement(input: &FramedMitreMovementInput) -> Result<FramedMitreMovement, Fault> {
    input.check_ranges()?;
    let mitre = mitre_movement(&MitreMovementInput {
        thickness_a_mm: input.thickness_a_mm,
        thickness_b_mm: input.thickness_b_mm,
        corner_deg: input.corner_deg,
        width_strain_a: input.width_strain_a,
        thickness_strain_a: input.thickness_strain_a,
        width_strain_b: input.width_strain_b,
        thickness_strain_b: input.thickness_strain_b,
    })?;
    // The tilt is what the seam's angle with the show face leaves of a right angle; + 0 keeps a still board from -0.
    let drawn = |angle_deg: f64, held_mm: f64, strain: f64| {
        0.0 - cos_deg(90.0 - angle_deg) * held_mm * (strain - input.frame_strain)
    };
    let offset_a_mm = drawn(mitre.angle_a_deg, input.held_at_a_mm, input.width_strain_a);
    let offset_b_mm = drawn(mitre.angle_b_deg, input.held_at_b_mm, input.width_strain_b);
    let offset_mm = offset_a_mm + offset_b_mm;
    let taper_mm = 2.0 * mitre.seam_mm * sin_deg(0.5 * mitre.corner_change_deg);
    let (show_gap_mm, inside_gap_mm) = seam_gaps(offset_mm, taper_mm);
    Ok(FramedMitreMovement {
        offset_mm,
        offset_a_mm,
        offset_b_mm,
        taper_mm,
        show_gap_mm,
        inside_gap_mm,
        pressed_mm: 0.0_f64.max(-offset_mm).max(taper_mm - offset_mm),
        opens: mitre.opens,
        seam_mm: mitre.seam_mm,
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const FRAMED_MITRE_MOVEMENT: crate::json::Calculation = crate::json::calculation!(
    framed_mitre_movement: FramedMitreMovementInput => FramedMitreMovement, Typed,
    "Opening of a long-grain mitre whose boards are held on a frame that does not move, such as one of plywood"
);

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn framed(held: (f64, f64), a: (f64, f64), b: (f64, f64), frame_strain: f64) -> FramedMitreMovement {
        framed_mitre_movement(&FramedMitreMovementInput {
            thickness_a_mm: 20.0,
            thickness_b_mm: 16.0,
            corner_deg: 90.0,
            held_at_a_mm: held.0,
            held_at_b_mm: held.1,
            width_strain_a: a.0,
            thickness_strain_a: a.1,
            width_strain_b: b.0,
            thickness_strain_b: b.1,
            frame_strain,
        })
        .expect("allowed")
    }

    #[test]
    fn boards_held_at_the_seam_keep_the_wedge_only() {
        let held = framed((0.0, 0.0), (-0.01, -0.004), (-0.01, -0.004), 0.0);
        assert_eq!((held.offset_mm, held.opens), (0.0, SeamOpening::Toe));
        assert!((held.show_gap_mm - held.taper_mm).abs() < 1e-15 && held.inside_gap_mm == 0.0);
    }

    #[test]
    fn swelling_boards_press_the_seam() {
        let wet = framed((100.0, 100.0), (0.01, 0.01), (0.01, 0.01), 0.0);
        assert_eq!((wet.show_gap_mm, wet.inside_gap_mm), (0.0, 0.0));
        assert!((wet.pressed_mm + wet.offset_mm).abs() < 1e-15 && wet.pressed_mm > 1.0);
    }

    proptest! {
        #[test]
        fn a_frame_that_moves_along_opens_nothing(h in 0.0_f64..500.0, e in -0.1_f64..0.1) {
            let along = framed((h, h), (e, e), (e, e), e);
            prop_assert_eq!((along.show_gap_mm, along.inside_gap_mm, along.pressed_mm), (0.0, 0.0, 0.0));
        }

        #[test]
        fn any_numbers_give_finite_answers_or_a_fault(n in proptest::array::uniform10(any::<f64>())) {
            let input = FramedMitreMovementInput {
                thickness_a_mm: n[0],
                thickness_b_mm: n[1],
                corner_deg: n[2],
                held_at_a_mm: n[3],
                held_at_b_mm: n[4],
                width_strain_a: n[5],
                thickness_strain_a: n[6],
                width_strain_b: n[7],
                thickness_strain_b: n[8],
                frame_strain: n[9],
            };
            if let Ok(found) = framed_mitre_movement(&input) {
                prop_assert!([found.show_gap_mm, found.inside_gap_mm, found.pressed_mm].iter().all(|gap| *gap >= 0.0));
            }
        }
    }
}
