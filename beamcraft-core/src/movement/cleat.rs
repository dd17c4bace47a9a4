//! What moisture does to the two halves of a hanging cleat: bevel, seat, lift and the height of the body.

use crate::error::Fault;
use crate::limits::{Limited, limited};
use crate::numeric::real::{atan2_deg, cos_deg, sin_cos_deg, sin_deg, tan_deg};

/// Two halves of a bevelled strip, both lying with the grain along the wall, and their strains since they were ripped.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<CleatMovementInput>))]
pub struct CleatMovementInput {
    /// Thickness of the strip when it was ripped, mm.
    pub thickness_mm: f64,
    /// Bevel from a square cut, degrees: the slope of the seat from horizontal.
    pub bevel_deg: f64,
    /// From the screw row of the wall half up to the middle of the seat, mm.
    pub wall_fixed_below_mm: f64,
    /// From the middle of the seat up to where the beam half is held to the body, mm.
    pub beam_fixed_above_mm: f64,
    /// Strain of the wall half across its width since it was ripped, swelling positive.
    pub wall_width_strain: f64,
    /// Strain of the wall half through its thickness since it was ripped, swelling positive.
    pub wall_thickness_strain: f64,
    /// Strain of the beam half across its width since it was ripped, swelling positive.
    pub beam_width_strain: f64,
    /// Strain of the beam half through its thickness since it was ripped, swelling positive.
    pub beam_thickness_strain: f64,
}

limited!(CleatMovementInput {
    thickness_mm: BOARD_THICKNESS,
    bevel_deg: CLEAT_BEVEL,
    wall_fixed_below_mm: LENGTH,
    beam_fixed_above_mm: LENGTH,
    wall_width_strain: STRAIN,
    wall_thickness_strain: STRAIN,
    beam_width_strain: STRAIN,
    beam_thickness_strain: STRAIN,
});

/// Where the two halves touch.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum SeatContact {
    /// Over the whole seat, within a billionth of a degree.
    WholeSeat,
    /// At the front edge, on the point of the wall half: the seat opens towards the wall.
    FrontEdge,
    /// At the wall: the seat opens towards the room.
    WallEdge,
}

/// The cleat after the movement.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct CleatMovement {
    /// Bevel of the wall half after the movement, degrees.
    pub wall_bevel_deg: f64,
    /// Bevel of the beam half after the movement, degrees.
    pub beam_bevel_deg: f64,
    /// Change of the bevel of the wall half, degrees; positive is steeper.
    pub bevel_change_deg: f64,
    /// Angle between the two seats, degrees; positive when that of the wall half is the steeper one.
    pub mismatch_deg: f64,
    /// Where the two halves touch.
    pub contact: SeatContact,
    /// Gap at the open end of the seat, over the whole thickness, mm; blunted points make it smaller.
    pub seat_gap_mm: f64,
    /// How much higher the body hangs, mm; negative when it sinks.
    pub body_rise_mm: f64,
    /// Change of the overlap that the body must be lifted over, mm.
    pub lift_change_mm: f64,
    /// How much thicker the wall half is, mm: room to leave between it and the frame inside.
    pub wall_thicker_mm: f64,
    /// How much thicker the beam half is, mm.
    pub beam_thicker_mm: f64,
}

/// Bevel, seat and height of a hanging cleat when its halves swell or shrink.
///
/// # Equation
/// ```text
/// tan b' = tan b (1 + ε_w) / (1 + ε_t)          for each half
/// gap    = t / cos b · sin |b'_wall − b'_beam|
/// rise   = h_wall ε_w,wall + h_beam ε_w,beam    the seat moves from the screw row, the body from the seat
/// lift   = t tan b ε_w,wall                     change of the overlap
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | b, b' | bevel as ripped and after the movement | degree | `bevel_deg`, `wall_bevel_deg`, `beam_bevel_deg` |
/// | t | thickness of the strip | mm | `thickness_mm` |
/// | ε_w, ε_t | strains across the width and through the thickness | – | `wall_width_strain`, … |
/// | h_wall, h_beam | screw row to seat, seat to the beam half's own fixing | mm | `wall_fixed_below_mm`, `beam_fixed_above_mm` |
///
/// Halves of one strip change alike: the bevel turns, the seat stays closed. It opens where wood or cut of the halves differ.
///
/// # Limits
/// Straight strips of one ring angle, without cup. Along the wall a strip hardly moves (0.1 % to 0.2 % from green to ovendry).
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// Plane geometry, derived in the theory pages — checked by `verification/movement`.
///
/// # Examples
/// ```
/// use beamcraft_core::movement::{cleat_movement, CleatMovementInput, SeatContact};
/// // Both halves from one flat-sawn strip, swollen.
/// let cleat = cleat_movement(&CleatMovementInput {
///     thickness_mm: 18.0, bevel_deg: 45.0, wall_fixed_below_mm: 25.0, beam_fixed_above_mm: 20.0,
///     wall_width_strain: 0.01, wall_thickness_strain: 0.005, beam_width_strain: 0.01, beam_thickness_strain: 0.005,
/// })?;
/// assert!((cleat.body_rise_mm - 0.45).abs() < 1e-12 && cleat.contact == SeatContact::WholeSeat);
/// assert!((cleat.bevel_change_deg - 0.14).abs() < 0.01);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn cleat_movement(input: &CleatMovementInput) -> Result<CleatMovement, Fault> {
    input.check_ranges()?;
    let (sine, cosine) = sin_cos_deg(input.bevel_deg);
    let turned = |width_strain: f64, thickness_strain: f64| {
        // Equal strains keep the bevel, to the last digit.
        if width_strain == thickness_strain {
            input.bevel_deg
        } else {
            atan2_deg(sine * (1.0 + width_strain), cosine * (1.0 + thickness_strain))
        }
    };
    let wall_bevel_deg = turned(input.wall_width_strain, input.wall_thickness_strain);
    let beam_bevel_deg = turned(input.beam_width_strain, input.beam_thickness_strain);
    let mismatch_deg = wall_bevel_deg - beam_bevel_deg;
    let contact = if mismatch_deg > FLAT_DEG {
        SeatContact::FrontEdge
    } else if mismatch_deg < -FLAT_DEG {
        SeatContact::WallEdge
    } else {
        SeatContact::WholeSeat
    };
    Ok(CleatMovement {
        wall_bevel_deg,
        beam_bevel_deg,
        bevel_change_deg: wall_bevel_deg - input.bevel_deg,
        mismatch_deg,
        contact,
        seat_gap_mm: input.thickness_mm / cos_deg(input.bevel_deg) * sin_deg(mismatch_deg.abs()),
        body_rise_mm: input.wall_fixed_below_mm * input.wall_width_strain
            + input.beam_fixed_above_mm * input.beam_width_strain,
        lift_change_mm: input.thickness_mm * tan_deg(input.bevel_deg) * input.wall_width_strain,
        wall_thicker_mm: input.thickness_mm * input.wall_thickness_strain,
        beam_thicker_mm: input.thickness_mm * input.beam_thickness_strain,
    })
}

/// Angle between the seats that is no gap but the last digits of the arithmetic, degrees.
const FLAT_DEG: f64 = 1e-9;

/// Registry row.
#[cfg(feature = "json")]
pub(super) const CLEAT_MOVEMENT: crate::json::Calculation = crate::json::calculation!(
    cleat_movement: CleatMovementInput => CleatMovement, Typed,
    "Bevel, seat and height of a hanging cleat when its halves swell or shrink"
);

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn cleat(bevel_deg: f64, wall: (f64, f64), beam: (f64, f64)) -> CleatMovement {
        cleat_movement(&CleatMovementInput {
            thickness_mm: 18.0,
            bevel_deg,
            wall_fixed_below_mm: 25.0,
            beam_fixed_above_mm: 15.0,
            wall_width_strain: wall.0,
            wall_thickness_strain: wall.1,
            beam_width_strain: beam.0,
            beam_thickness_strain: beam.1,
        })
        .expect("allowed")
    }

    #[test]
    fn a_wall_half_that_swells_alone_bears_on_its_point() {
        let swollen = cleat(45.0, (0.01, 0.004), (0.0, 0.0));
        assert_eq!(swollen.contact, SeatContact::FrontEdge);
        // First order: sin b cos b (ε_w − ε_t) radians over a seat of 18 √2 mm.
        assert!((swollen.seat_gap_mm - 18.0 * 2.0_f64.sqrt() * 0.5 * 0.006).abs() < 1e-3);
        assert_eq!(cleat(45.0, (-0.01, -0.004), (0.0, 0.0)).contact, SeatContact::WallEdge);
    }

    proptest! {
        #[test]
        fn halves_of_one_strip_stay_closed(b in 5.0_f64..75.0, w in -0.1_f64..0.1, t in -0.1_f64..0.1) {
            let same = cleat(b, (w, t), (w, t));
            prop_assert_eq!((same.seat_gap_mm, same.contact), (0.0, SeatContact::WholeSeat));
            let still = cleat(b, (w, w), (0.0, 0.0));
            prop_assert_eq!(still.bevel_change_deg, 0.0);
        }

        #[test]
        fn any_numbers_give_finite_answers_or_a_fault(n in proptest::array::uniform8(any::<f64>())) {
            let input = CleatMovementInput {
                thickness_mm: n[0],
                bevel_deg: n[1],
                wall_fixed_below_mm: n[2],
                beam_fixed_above_mm: n[3],
                wall_width_strain: n[4],
                wall_thickness_strain: n[5],
                beam_width_strain: n[6],
                beam_thickness_strain: n[7],
            };
            if let Ok(found) = cleat_movement(&input) {
                prop_assert!(found.seat_gap_mm.is_finite() && found.body_rise_mm.is_finite());
            }
        }
    }
}
