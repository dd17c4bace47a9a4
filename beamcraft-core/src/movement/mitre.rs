//! What moisture does to the mitre between two boards that meet along their long edges.

use crate::error::Fault;
use crate::limits::{Limited, limited};
use crate::numeric::real::{atan2_deg, cos_deg, degrees, sin_deg};
use crate::shell::{MitrePairInput, mitre_pair};

/// Where a seam opens that is held at its corner.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum SeamOpening {
    /// It stays closed, within a billionth of a degree.
    Closed,
    /// At the heel, inside the body or the frame.
    Heel,
    /// At the toe, on the show edge.
    Toe,
}

/// Angle that is no opening but the last digits of the arithmetic, degrees.
const NO_OPENING_DEG: f64 = 1e-9;

impl SeamOpening {
    /// Side of an opening whose mitre angles leave `missing_deg` of the corner: positive when they do not fill it.
    pub(super) fn of(missing_deg: f64) -> Self {
        if missing_deg > NO_OPENING_DEG {
            SeamOpening::Heel
        } else if missing_deg < -NO_OPENING_DEG {
            SeamOpening::Toe
        } else {
            SeamOpening::Closed
        }
    }
}

/// A mitre along two boards, and the strains of both.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<MitreMovementInput>))]
pub struct MitreMovementInput {
    /// Thickness of board a when the mitre was cut, mm.
    pub thickness_a_mm: f64,
    /// Thickness of board b when the mitre was cut, mm.
    pub thickness_b_mm: f64,
    /// Corner angle between the two show faces, measured inside the body, degrees; above 180 an inside corner.
    #[cfg_attr(feature = "json", serde(default = "square_corner"))]
    pub corner_deg: f64,
    /// Strain of board a across its width since then, swelling positive.
    pub width_strain_a: f64,
    /// Strain of board a through its thickness since then, swelling positive.
    pub thickness_strain_a: f64,
    /// Strain of board b across its width since then, swelling positive.
    pub width_strain_b: f64,
    /// Strain of board b through its thickness since then, swelling positive.
    pub thickness_strain_b: f64,
}

limited!(MitreMovementInput {
    thickness_a_mm: BOARD_THICKNESS,
    thickness_b_mm: BOARD_THICKNESS,
    corner_deg: CORNER_ANGLE,
    width_strain_a: STRAIN,
    thickness_strain_a: STRAIN,
    width_strain_b: STRAIN,
    thickness_strain_b: STRAIN,
});

#[cfg(feature = "json")]
fn square_corner() -> f64 {
    90.0
}

/// The mitre after the movement.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct MitreMovement {
    /// Corner that the two boards make when the seam stays closed, degrees.
    pub free_corner_deg: f64,
    /// Change of that corner, degrees; positive when it becomes more than it was cut for.
    pub corner_change_deg: f64,
    /// The same change to first order in the strains, degrees.
    pub first_order_change_deg: f64,
    /// Width of the wedge at its open end when the body holds the corner as it was, mm.
    pub opening_mm: f64,
    /// Which end of the seam opens then.
    pub opens: SeamOpening,
    /// Length of the seam across the section when the mitre was cut, mm.
    pub seam_mm: f64,
    /// Angle between seam and show face of board a as cut, degrees.
    pub angle_a_deg: f64,
    /// Angle between seam and show face of board b as cut, degrees.
    pub angle_b_deg: f64,
    /// Angle between seam and show face of board a after the movement, degrees.
    pub moved_angle_a_deg: f64,
    /// Angle between seam and show face of board b after the movement, degrees.
    pub moved_angle_b_deg: f64,
}

/// Change of the corner at a long-edge mitre when its boards move differently in width and thickness, and the opening if held.
///
/// # Equation
/// ```text
/// tan a' = tan a (1 + ε_t) / (1 + ε_w)      for each board, a from mitre_pair
/// c' = a' + b'                              corner with the seam closed
/// c' − c ≈ Σ sin a cos a (ε_t − ε_w)        first order; sin c (ε_t − ε_w) for equal boards
/// opening = 2 seam sin(|c − c'| / 2)        corner held at c: heel opens when c' < c, toe when c' > c
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | a, b; a', b' | angles between seam and show face, before and after | degree | `angle_a_deg`, `moved_angle_a_deg` … |
/// | c, c' | corner as cut, and with the seam closed after the movement | degree | `corner_deg`, `free_corner_deg` |
/// | ε_w, ε_t | strains across the width and through the thickness | – | `width_strain_a`, `thickness_strain_a` … |
///
/// The length of a panel plays no part. Flat-sawn boards shrink more across the width than through the thickness: drying turns
/// their corner to more than it was cut for, and in a body held square the show edge opens. Quarter-sawn boards do the reverse.
///
/// # Limits
/// Boards of one ring angle without cup. A glued seam holds such small angles back: then the opening is what the glue line and
/// the boards have to bear, not a gap. Common wood glue softens and creeps in sustained warmth.
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` for a straight corner between boards of unequal thickness.
///
/// # Source
/// Plane geometry, derived in the theory pages; no published number for the opening of a mitre was found — checked by
/// `verification/movement`.
///
/// # Examples
/// ```
/// use beamcraft_core::movement::{mitre_movement, MitreMovementInput, SeamOpening};
/// // Flat-sawn red oak, 4 % drier than when it was cut.
/// let seam = mitre_movement(&MitreMovementInput {
///     thickness_a_mm: 20.0,
///     thickness_b_mm: 20.0,
///     corner_deg: 90.0,
///     width_strain_a: -0.01476,
///     thickness_strain_a: -0.00632,
///     width_strain_b: -0.01476,
///     thickness_strain_b: -0.00632,
/// })?;
/// assert!((seam.corner_change_deg - 0.49).abs() < 0.01 && seam.opens == SeamOpening::Toe);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn mitre_movement(input: &MitreMovementInput) -> Result<MitreMovement, Fault> {
    input.check_ranges()?;
    let corner_deg = input.corner_deg;
    let (thickness_a_mm, thickness_b_mm) = (input.thickness_a_mm, input.thickness_b_mm);
    let cut = mitre_pair(&MitrePairInput { thickness_a_mm, thickness_b_mm, corner_deg })?;
    let moved = |angle_deg: f64, width_strain: f64, thickness_strain: f64| {
        let (sine, cosine) = (sin_deg(angle_deg), cos_deg(angle_deg));
        // Equal strains keep the angle, to the last digit.
        if width_strain == thickness_strain {
            (angle_deg, 0.0)
        } else {
            let turned = atan2_deg(sine * (1.0 + thickness_strain), cosine * (1.0 + width_strain));
            (turned, degrees(sine * cosine * (thickness_strain - width_strain)))
        }
    };
    let (moved_angle_a_deg, first_a) = moved(cut.angle_a_deg, input.width_strain_a, input.thickness_strain_a);
    let (moved_angle_b_deg, first_b) = moved(cut.angle_b_deg, input.width_strain_b, input.thickness_strain_b);
    let corner_change_deg = (moved_angle_a_deg - cut.angle_a_deg) + (moved_angle_b_deg - cut.angle_b_deg);
    Ok(MitreMovement {
        free_corner_deg: corner_deg + corner_change_deg,
        corner_change_deg,
        first_order_change_deg: first_a + first_b,
        opening_mm: 2.0 * cut.seam_mm * sin_deg(0.5 * corner_change_deg.abs()),
        opens: SeamOpening::of(-corner_change_deg),
        seam_mm: cut.seam_mm,
        angle_a_deg: cut.angle_a_deg,
        angle_b_deg: cut.angle_b_deg,
        moved_angle_a_deg,
        moved_angle_b_deg,
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const MITRE_MOVEMENT: crate::json::Calculation = crate::json::calculation!(
    mitre_movement: MitreMovementInput => MitreMovement, Typed,
    "Change of the corner at a long-edge mitre with moisture, and where the seam opens"
);

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn seam(thickness: (f64, f64), corner_deg: f64, a: (f64, f64), b: (f64, f64)) -> MitreMovement {
        mitre_movement(&MitreMovementInput {
            thickness_a_mm: thickness.0,
            thickness_b_mm: thickness.1,
            corner_deg,
            width_strain_a: a.0,
            thickness_strain_a: a.1,
            width_strain_b: b.0,
            thickness_strain_b: b.1,
        })
        .expect("allowed")
    }

    proptest! {
        #[test]
        fn equal_strains_open_nothing(t in 5.0_f64..50.0, u in 5.0_f64..50.0, c in 20.0_f64..170.0, e in -0.2_f64..0.2) {
            let still = seam((t, u), c, (e, e), (e, e));
            prop_assert_eq!((still.opening_mm, still.opens, still.free_corner_deg), (0.0, SeamOpening::Closed, c));
        }

        #[test]
        fn boards_may_change_places(t in 5.0_f64..50.0, u in 5.0_f64..50.0, c in 20.0_f64..170.0, w in -0.1_f64..0.1, v in -0.1_f64..0.1) {
            let (one, other) = (seam((t, u), c, (w, v), (v, w)), seam((u, t), c, (v, w), (w, v)));
            prop_assert!((one.corner_change_deg - other.corner_change_deg).abs() < 1e-12);
        }

        #[test]
        fn small_strains_follow_the_first_order(t in 5.0_f64..50.0, u in 5.0_f64..50.0, c in 20.0_f64..340.0, w in -0.02_f64..0.02, v in -0.02_f64..0.02) {
            prop_assume!((c - 180.0).abs() > 1.0);
            let one = seam((t, u), c, (w, v), (w, v));
            // What is left is of second order: two angles, each at most its strain squared, in radians.
            prop_assert!((one.corner_change_deg - one.first_order_change_deg).abs() <= degrees(2.0 * 4.0 * 0.02 * 0.02));
        }

        #[test]
        fn any_numbers_give_finite_answers_or_a_fault(n in proptest::array::uniform7(any::<f64>())) {
            let input = MitreMovementInput {
                thickness_a_mm: n[0],
                thickness_b_mm: n[1],
                corner_deg: n[2],
                width_strain_a: n[3],
                thickness_strain_a: n[4],
                width_strain_b: n[5],
                thickness_strain_b: n[6],
            };
            if let Ok(found) = mitre_movement(&input) {
                prop_assert!(found.opening_mm.is_finite() && found.free_corner_deg.is_finite());
            }
        }
    }
}
