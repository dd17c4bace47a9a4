//! Room for a screw that holds a board across its grain.

use super::board::MovementMethod;
use super::figures::{Direction, method};
use crate::error::{Allowed, ErrorCode, Fault};
use crate::limits::{Limited, limited};

/// A screw across the grain, away from the line where the board is held.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<SlotLengthInput>))]
pub struct SlotLengthInput {
    /// Distance across the grain from the line where the board is held to the screw, mm.
    pub distance_mm: f64,
    /// Movement of the board in that direction, share of the size per percent of moisture.
    pub movement_per_pct: f64,
    /// Shrinkage of the board in that direction from green to ovendry, %; from the coefficient when left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub shrinkage_pct: Option<f64>,
    /// Fibre saturation point, %; 30 in general use (FPL-GTR-282, chapter 4).
    #[cfg_attr(feature = "json", serde(default = "super::figures::fibre_saturation"))]
    pub fibre_saturation_pct: f64,
    /// Moisture content when the screw is driven, %.
    pub fixed_moisture_pct: f64,
    /// Least moisture content in service, %.
    pub driest_moisture_pct: f64,
    /// Greatest moisture content in service, %.
    pub wettest_moisture_pct: f64,
    /// Shank diameter of the screw, mm.
    pub shank_diameter_mm: f64,
    /// Clearance added at each end of the slot, mm; none when left out, the movement alone.
    #[cfg_attr(feature = "json", serde(default))]
    pub clearance_mm: f64,
}

limited!(SlotLengthInput {
    distance_mm: LENGTH,
    movement_per_pct: MOVEMENT_COEFFICIENT,
    shrinkage_pct: LINEAR_SHRINKAGE,
    fibre_saturation_pct: FIBRE_SATURATION,
    fixed_moisture_pct: MOISTURE,
    driest_moisture_pct: MOISTURE,
    wettest_moisture_pct: MOISTURE,
    shank_diameter_mm: FASTENER_DIAMETER,
    clearance_mm: SMALL_LENGTH,
});

/// The slot.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SlotLength {
    /// Length of the slot from end to end, mm.
    pub slot_mm: f64,
    /// Travel of the screw towards the held line, when the board is driest, mm.
    pub shrink_mm: f64,
    /// Travel of the screw away from the held line, when the board is wettest, mm.
    pub swell_mm: f64,
    /// From the screw's centre as driven to the end of the slot towards the held line, mm; the slot is in the part that stays.
    pub towards_mm: f64,
    /// From the screw's centre as driven to the end of the slot away from the held line, mm; the slot is in the part that stays.
    pub away_mm: f64,
    /// Which equation the shrinking follows.
    pub shrink_method: MovementMethod,
    /// Which equation the swelling follows.
    pub swell_method: MovementMethod,
}

const ORDERED: Allowed = Allowed::Text("at least the driest moisture content");

/// Length of the slot that lets a screw follow a board across the grain.
///
/// # Equation
/// ```text
/// x = D ε(M_fixed → M)        shrink = −min(0, x_dry, x_wet)        swell = max(0, x_dry, x_wet)
/// towards = d/2 + shrink + c        away = d/2 + swell + c        slot = towards + away
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | D | distance from the held line | mm | `distance_mm` |
/// | ε | strain, as in [`board_movement`](super::board_movement) | – | – |
/// | d, c | shank diameter, clearance at each end | mm | `shank_diameter_mm`, `clearance_mm` |
///
/// # Limits
/// The slot is in the part that stays (batten, cleat, frame) and the screw sits fast in the board that moves. For a slot in the
/// moving board itself, `towards_mm` and `away_mm` change places. The screw must be let slide: a washer, and not driven hard.
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` when the wettest lies below the driest moisture content.
///
/// # Source
/// FPL-GTR-190, Eq. 13-2 (seen) and 13-3 (recalled form); the rest is arithmetic — checked by `verification/movement`.
///
/// # Examples
/// ```
/// use beamcraft_core::movement::{slot_length, SlotLengthInput};
/// let slot = slot_length(&SlotLengthInput {
///     distance_mm: 200.0,
///     movement_per_pct: 0.00274,
///     shrinkage_pct: None,
///     fibre_saturation_pct: 30.0,
///     fixed_moisture_pct: 8.0,
///     driest_moisture_pct: 6.0,
///     wettest_moisture_pct: 12.0,
///     shank_diameter_mm: 4.0,
///     clearance_mm: 0.5,
/// })?;
/// assert!((slot.slot_mm - (200.0 * 0.00274 * 6.0 + 4.0 + 1.0)).abs() < 1e-9);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn slot_length(input: &SlotLengthInput) -> Result<SlotLength, Fault> {
    input.check_ranges()?;
    let (fixed, dry, wet) = (input.fixed_moisture_pct, input.driest_moisture_pct, input.wettest_moisture_pct);
    if wet < dry {
        return Err(Fault::number(ErrorCode::Inconsistent, "wettest_moisture_pct", wet, ORDERED, "exchange the two"));
    }
    let direction = Direction::new(input.movement_per_pct, input.shrinkage_pct, input.fibre_saturation_pct);
    let travel = |moisture_pct: f64| input.distance_mm * direction.strain(fixed, moisture_pct);
    let (at_dry, at_wet) = (travel(dry), travel(wet));
    let (shrink_mm, swell_mm) = (0.0_f64.max(-at_dry).max(-at_wet), 0.0_f64.max(at_dry).max(at_wet));
    let room_mm = 0.5 * input.shank_diameter_mm + input.clearance_mm;
    let (towards_mm, away_mm) = (room_mm + shrink_mm, room_mm + swell_mm);
    Ok(SlotLength {
        slot_mm: towards_mm + away_mm,
        shrink_mm,
        swell_mm,
        towards_mm,
        away_mm,
        shrink_method: method(fixed, dry),
        swell_method: method(fixed, wet),
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const SLOT_LENGTH: crate::json::Calculation = crate::json::calculation!(
    slot_length: SlotLengthInput => SlotLength, Typed,
    "Length of the slot that lets a screw follow a board across the grain"
);

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn slot(distance_mm: f64, fixed: f64, dry: f64, wet: f64) -> Result<SlotLength, Fault> {
        slot_length(&SlotLengthInput {
            distance_mm,
            movement_per_pct: 0.003,
            shrinkage_pct: None,
            fibre_saturation_pct: 30.0,
            fixed_moisture_pct: fixed,
            driest_moisture_pct: dry,
            wettest_moisture_pct: wet,
            shank_diameter_mm: 4.0,
            clearance_mm: 0.0,
        })
    }

    #[test]
    fn a_screw_on_the_held_line_needs_its_shank_only() {
        assert_eq!(slot(0.0, 8.0, 5.0, 14.0).expect("allowed").slot_mm, 4.0);
    }

    #[test]
    fn a_board_fixed_wetter_than_it_will_be_only_shrinks() {
        let fixed_wet = slot(100.0, 14.0, 6.0, 10.0).expect("allowed");
        assert_eq!((fixed_wet.swell_mm, fixed_wet.away_mm), (0.0, 2.0));
        assert!((fixed_wet.shrink_mm - 2.4).abs() < 1e-12);
        assert_eq!(slot(100.0, 8.0, 9.0, 7.0).expect_err("exchanged").code, ErrorCode::Inconsistent);
    }

    proptest! {
        #[test]
        fn a_wider_swing_needs_a_longer_slot(d in 0.0_f64..=500.0, fixed in 0.0_f64..=30.0, dry in 0.0_f64..=15.0, wet in 15.0_f64..=29.0) {
            let (narrow, wide) = (slot(d, fixed, dry, wet).expect("allowed"), slot(d, fixed, dry, wet + 1.0).expect("allowed"));
            prop_assert!(wide.slot_mm >= narrow.slot_mm && narrow.slot_mm >= 4.0);
        }

        #[test]
        fn any_numbers_give_finite_answers_or_a_fault(a in any::<f64>(), b in any::<f64>(), c in any::<f64>(), d in any::<f64>()) {
            if let Ok(found) = slot(a, b, c, d) {
                prop_assert!(found.slot_mm.is_finite());
            }
        }
    }
}
