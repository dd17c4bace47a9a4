//! An angled screw in a pocket hole.

use super::length::SAME_MM;
use crate::error::{Allowed, ErrorCode, Fault};
use crate::limits::{BEARING_LENGTH, Limited, limited};
use crate::numeric::real::sin_cos_deg;
use crate::verdict::Outcome;

/// How the board that the pocket screw enters stands to the board with the pocket.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum PocketMate {
    /// Its face lies on the end of the board with the pocket: the point comes nearest to its far face.
    Face,
    /// It runs on in line, show faces flush: the point comes nearest to the show face.
    InLine,
}

/// A pocket hole, its screw and the board that it enters.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<PocketScrewInput>))]
pub struct PocketScrewInput {
    /// Thickness of the board with the pocket, mm.
    pub board_thickness_mm: f64,
    /// Angle between the screw and the board's face, degrees; 15 by default (common practice).
    #[cfg_attr(feature = "json", serde(default = "fifteen_deg"))]
    pub angle_deg: f64,
    /// Depth below the pocket face at which the screw's axis leaves the board, mm; left out it is half the thickness.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub exit_depth_mm: Option<f64>,
    /// Wood along the screw between the pocket's shoulder, where the head seats, and the joint, mm.
    pub shoulder_mm: f64,
    /// Diameter of the pocket, mm; 9.5 by default, the usual stepped drill (common practice).
    #[cfg_attr(feature = "json", serde(default = "three_eighths"))]
    pub pocket_diameter_mm: f64,
    /// Nominal diameter of the screw, mm.
    pub nominal_diameter_mm: f64,
    /// Length of the screw from its seat to its point, mm.
    pub screw_length_mm: f64,
    /// How the other board stands.
    pub mate: PocketMate,
    /// Thickness of a board whose face is met, mm; of a board in line its length along the joint's normal.
    pub mate_depth_mm: f64,
    /// Wood to leave over the point and under the pocket, mm; 3 by default, so that nothing shows (common practice).
    #[cfg_attr(feature = "json", serde(default = "super::length::three_mm"))]
    pub least_cover_mm: f64,
}

limited!(PocketScrewInput {
    board_thickness_mm: BOARD_THICKNESS,
    angle_deg: POCKET_ANGLE,
    exit_depth_mm: BOARD_THICKNESS,
    shoulder_mm: BEARING_LENGTH,
    pocket_diameter_mm: FASTENER_DIAMETER,
    nominal_diameter_mm: FASTENER_DIAMETER,
    screw_length_mm: FASTENER_LENGTH,
    mate_depth_mm: BEARING_LENGTH,
    least_cover_mm: SMALL_LENGTH
});

#[cfg(feature = "json")]
fn fifteen_deg() -> f64 {
    15.0
}
#[cfg(feature = "json")]
fn three_eighths() -> f64 {
    9.525
}

/// How a pocket screw lies.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct PocketScrew {
    /// Depth below the pocket face at which the axis leaves the board, mm.
    pub exit_depth_mm: f64,
    /// Depth below the pocket face of the head's seat, mm.
    pub seat_depth_mm: f64,
    /// Distance of the head's seat from the joint, along the board, mm.
    pub seat_from_joint_mm: f64,
    /// Length of the screw in the other board, along the screw, mm.
    pub bite_mm: f64,
    /// Depth of the point behind the joint, square to it, mm.
    pub point_depth_mm: f64,
    /// Depth of the point below the plane of the pocket face, mm.
    pub point_below_face_mm: f64,
    /// Wood between the point and the face that it comes nearest to, mm; negative when it comes out.
    pub cover_mm: f64,
    /// Whether that cover is at least the wanted one.
    pub cover: Outcome,
    /// Wood between the bottom of the pocket and the show face, mm; negative when the pocket breaks through.
    pub pocket_floor_mm: f64,
    /// Whether that is at least the wanted cover.
    pub pocket_floor: Outcome,
    /// Distance from the joint to the near end of the pocket's opening in the face, mm.
    pub opening_from_mm: f64,
    /// Distance from the joint to the far end of the pocket's opening in the face, mm.
    pub opening_to_mm: f64,
    /// Least bite of a wood screw: 6 D (NDS 12.1.5.6), mm.
    pub required_bite_mm: f64,
    /// Whether the bite is at least that.
    pub bite: Outcome,
    /// Longest screw that leaves the wanted cover, mm; may be shorter than the wood before the joint.
    pub longest_screw_mm: f64,
    /// Whether cover, pocket floor and bite are all as wanted.
    pub outcome: Outcome,
}

/// Exit point, bite and cover of an angled pocket screw, from the boards and the angle.
///
/// ```text
///   pocket face   ___opening___
///   ───────────╱             ╲─────────│────────
///                ╲  pocket     ╲shoulder│            mate
///                   ╲            ╲╌╌╌╌╌╌│╌╌ exit
///                                       │   ╲╌╌╌╌▶ point
///   ────────────────────────────────────│────────  show face
/// ```
/// # Equation
/// ```text
/// seat:  depth = e − s sin α    from joint = s cos α        bite b = L − s
/// point: behind the joint b cos α      below the face e + b sin α
/// cover: face  T − b cos α             in line  min(t − e − b sin α, T − b cos α)
/// floor: t − seat depth − (d/2) cos α
/// opening: to e/tan α + d/(2 sin α)    from e/tan α − d/(2 sin α), at the shoulder s cos α − depth tan α if that is nearer
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | t, T | board thickness, depth of the mate | mm | `board_thickness_mm`, `mate_depth_mm` |
/// | α, e | angle, depth of the exit | degree, mm | `angle_deg`, `exit_depth_mm` |
/// | s, L | shoulder, screw length | mm | `shoulder_mm`, `screw_length_mm` |
/// | d | pocket diameter | mm | `pocket_diameter_mm` |
///
/// # Limits
/// Geometry. No standard gives strengths for pocket screws: treat it as a wood screw at this angle, its thread length in
/// the mate by the grain of the mate; in end grain it carries nothing along its axis. Point and pocket are taken as they
/// are drawn: a drill wanders.
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` when the screw leaves the board through a face or its head seats outside
/// it; `penetration_too_short` when the screw ends before the joint.
///
/// # Source
/// Plane geometry; least bite NDS 2018 12.1.5.6; angle, pocket and cover are common practice without a source. Checked by
/// `verification/choose`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::{PocketMate, PocketScrewInput, pocket_screw};
/// // A 1 1/4 in screw in 3/4 in boards.
/// let pocket = pocket_screw(&PocketScrewInput {
///     board_thickness_mm: 19.05,
///     angle_deg: 15.0,
///     exit_depth_mm: None,
///     shoulder_mm: 16.0,
///     pocket_diameter_mm: 9.525,
///     nominal_diameter_mm: 3.5,
///     screw_length_mm: 31.75,
///     mate: PocketMate::Face,
///     mate_depth_mm: 19.05,
///     least_cover_mm: 3.0,
/// })?;
/// assert!((pocket.cover_mm - 3.84).abs() < 0.01);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn pocket_screw(input: &PocketScrewInput) -> Result<PocketScrew, Fault> {
    input.check_ranges()?;
    let (sine, cosine) = sin_cos_deg(input.angle_deg);
    let thickness_mm = input.board_thickness_mm;
    let exit_depth_mm = input.exit_depth_mm.unwrap_or(0.5 * thickness_mm);
    let refuse = |field, value, words, cure| {
        Err(Fault::number(ErrorCode::Inconsistent, field, value, Allowed::Text(words), cure))
    };
    if exit_depth_mm >= thickness_mm {
        return refuse("exit_depth_mm", exit_depth_mm, "less than the board's thickness", "half of it is usual");
    }
    let seat_depth_mm = exit_depth_mm - input.shoulder_mm * sine;
    if seat_depth_mm <= 0.0 {
        let words = "short enough that the head seats inside the board";
        return refuse("shoulder_mm", input.shoulder_mm, words, "set the collar nearer, or take a smaller angle");
    }
    let bite_mm = input.screw_length_mm - input.shoulder_mm;
    if bite_mm < BEARING_LENGTH.low {
        return Err(Fault::number(
            ErrorCode::PenetrationTooShort,
            "screw_length_mm",
            input.screw_length_mm,
            Allowed::Text("longer than the wood before the joint"),
            "take a longer screw",
        ));
    }
    let radius_mm = 0.5 * input.pocket_diameter_mm;
    let seat_from_joint_mm = input.shoulder_mm * cosine;
    let (point_depth_mm, point_below_face_mm) = (bite_mm * cosine, exit_depth_mm + bite_mm * sine);
    let far_mm = input.mate_depth_mm - point_depth_mm;
    let longest_far_mm = input.shoulder_mm + (input.mate_depth_mm - input.least_cover_mm) / cosine;
    let (cover_mm, longest_screw_mm) = match input.mate {
        PocketMate::Face => (far_mm, longest_far_mm),
        PocketMate::InLine => {
            let longest_mm = input.shoulder_mm + (thickness_mm - input.least_cover_mm - exit_depth_mm) / sine;
            (far_mm.min(thickness_mm - point_below_face_mm), longest_far_mm.min(longest_mm))
        }
    };
    let pocket_floor_mm = thickness_mm - seat_depth_mm - radius_mm * cosine;
    let axis_mm = exit_depth_mm * cosine / sine;
    // Where the shoulder's plane reaches the face before the pocket's wall does, the opening ends at the shoulder.
    let opening_from_mm = if seat_depth_mm > radius_mm * cosine {
        axis_mm - radius_mm / sine
    } else {
        seat_from_joint_mm - seat_depth_mm * sine / cosine
    };
    let required_bite_mm = 6.0 * input.nominal_diameter_mm;
    let met = |holds: bool| if holds { Outcome::Met } else { Outcome::NotMet };
    let cover = met(cover_mm >= input.least_cover_mm - SAME_MM);
    let pocket_floor = met(pocket_floor_mm >= input.least_cover_mm - SAME_MM);
    let bite = met(bite_mm >= required_bite_mm - SAME_MM);
    Ok(PocketScrew {
        exit_depth_mm,
        seat_depth_mm,
        seat_from_joint_mm,
        bite_mm,
        point_depth_mm,
        point_below_face_mm,
        cover_mm,
        cover,
        pocket_floor_mm,
        pocket_floor,
        opening_from_mm,
        opening_to_mm: axis_mm + radius_mm / sine,
        required_bite_mm,
        bite,
        longest_screw_mm,
        outcome: met([cover, pocket_floor, bite].iter().all(|outcome| *outcome == Outcome::Met)),
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const POCKET_SCREW: crate::json::Calculation = crate::json::calculation!(
    pocket_screw: PocketScrewInput => PocketScrew, Typed,
    "Exit point, bite and cover of an angled pocket screw, from the boards and the angle"
);

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::numeric::real::{atan2_deg, sin_deg};

    fn pocket() -> PocketScrewInput {
        PocketScrewInput {
            board_thickness_mm: 19.0,
            angle_deg: 15.0,
            exit_depth_mm: None,
            shoulder_mm: 16.0,
            pocket_diameter_mm: 9.5,
            nominal_diameter_mm: 3.0,
            screw_length_mm: 34.0,
            mate: PocketMate::Face,
            mate_depth_mm: 19.0,
            least_cover_mm: 3.0,
        }
    }

    // A fact of the trade: in 3/4 in boards at 15° the 1 1/4 in screw stays hidden and the 1 1/2 in one shows.
    #[test]
    fn the_usual_screw_for_three_quarter_boards_stays_inside_and_the_next_does_not() {
        let usual = pocket_screw(&PocketScrewInput { screw_length_mm: 31.75, ..pocket() }).unwrap();
        assert_eq!(usual.cover, Outcome::Met);
        let next = pocket_screw(&PocketScrewInput { screw_length_mm: 38.1, ..pocket() }).unwrap();
        assert!(next.cover_mm < 0.0);
    }

    #[test]
    fn a_head_outside_and_a_screw_that_ends_before_the_joint_are_refused() {
        let field = |input: PocketScrewInput| pocket_screw(&input).expect_err("refused").field;
        assert_eq!(field(PocketScrewInput { shoulder_mm: 37.0, screw_length_mm: 60.0, ..pocket() }), "shoulder_mm");
        assert_eq!(field(PocketScrewInput { exit_depth_mm: Some(19.0), ..pocket() }), "exit_depth_mm");
        assert_eq!(field(PocketScrewInput { screw_length_mm: 16.0, ..pocket() }), "screw_length_mm");
    }

    fn any_pocket() -> impl Strategy<Value = PocketScrewInput> {
        (12.0..45.0_f64, 8.0..40.0_f64, 0.3..0.8_f64, 0.2..0.95_f64, 20.0..100.0_f64, 10.0..100.0_f64, any::<bool>())
            .prop_map(|(thickness, angle, exit, shoulder, length, mate, face)| {
                let exit_depth_mm = exit * thickness;
                let shoulder_mm = shoulder * exit_depth_mm / sin_deg(angle);
                PocketScrewInput {
                    board_thickness_mm: thickness,
                    angle_deg: angle,
                    exit_depth_mm: Some(exit_depth_mm),
                    shoulder_mm,
                    screw_length_mm: shoulder_mm + length,
                    mate: if face { PocketMate::Face } else { PocketMate::InLine },
                    mate_depth_mm: mate,
                    ..pocket()
                }
            })
    }

    proptest! {
        // Seat and point lie on one line at the given angle, a screw's length apart.
        #[test]
        fn the_screw_is_straight(input in any_pocket()) {
            let found = pocket_screw(&input).unwrap();
            let (run, rise) =
                (found.seat_from_joint_mm + found.point_depth_mm, found.point_below_face_mm - found.seat_depth_mm);
            prop_assert!(((run * run + rise * rise).sqrt() - input.screw_length_mm).abs() < 1e-9);
            prop_assert!((atan2_deg(rise, run) - input.angle_deg).abs() < 1e-9);
            prop_assert!(found.opening_from_mm < found.opening_to_mm);
        }

        #[test]
        fn the_longest_screw_leaves_exactly_the_cover(input in any_pocket()) {
            let longest = pocket_screw(&input).unwrap().longest_screw_mm;
            // Below 5 mm it is no screw that the table of ranges knows.
            if longest > (input.shoulder_mm + 1.0).max(5.0) {
                let found = pocket_screw(&PocketScrewInput { screw_length_mm: longest, ..input }).unwrap();
                prop_assert!((found.cover_mm - input.least_cover_mm).abs() < 1e-9);
                prop_assert_eq!(found.cover, Outcome::Met);
            }
        }

        #[test]
        fn hostile_numbers_give_a_fault_or_finite_results(bits in prop::array::uniform9(any::<u64>()), which in any::<u16>()) {
            let number = |k: usize, fair: f64| if which >> k & 1 == 0 { f64::from_bits(bits[k]) } else { fair };
            let input = PocketScrewInput {
                board_thickness_mm: number(0, 150.0),
                angle_deg: number(1, 5.0),
                exit_depth_mm: Some(number(2, 100.0)),
                shoulder_mm: number(3, 0.1),
                pocket_diameter_mm: number(4, 25.4),
                nominal_diameter_mm: number(5, 1.0),
                screw_length_mm: number(6, 1_000.0),
                mate: PocketMate::InLine,
                mate_depth_mm: number(7, 0.1),
                least_cover_mm: number(8, 500.0),
            };
            if let Ok(found) = pocket_screw(&input) {
                let numbers = [found.cover_mm, found.opening_from_mm, found.opening_to_mm, found.longest_screw_mm];
                prop_assert!(numbers.into_iter().all(f64::is_finite));
            }
        }
    }
}
