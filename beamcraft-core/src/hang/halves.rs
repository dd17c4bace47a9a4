//! The two halves of a cleat ripped from one strip.

use crate::error::{Allowed, ErrorCode, Fault};
use crate::limits::{Limited, limited};
use crate::numeric::real::{sin_cos_deg, tan_deg};

/// A strip and the bevelled rip that parts it into the two halves of a cleat.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<CleatHalvesInput>))]
pub struct CleatHalvesInput {
    /// Width of the strip before the rip, mm.
    pub strip_width_mm: f64,
    /// Thickness of the strip, mm.
    pub thickness_mm: f64,
    /// Bevel of the rip from a square cut, degrees.
    pub bevel_deg: f64,
    /// Kerf of the blade, square to it, mm.
    pub kerf_mm: f64,
    /// How much of each long face is taken off to blunt its point, mm; 0, the default, leaves the points sharp.
    #[cfg_attr(feature = "json", serde(default))]
    pub blunt_mm: f64,
}

limited!(CleatHalvesInput {
    strip_width_mm: LENGTH,
    thickness_mm: BOARD_THICKNESS,
    bevel_deg: CLEAT_BEVEL,
    kerf_mm: KERF,
    blunt_mm: SMALL_LENGTH,
});

/// Sizes of the two equal halves.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct CleatHalves {
    /// Width of the long face of each half with a sharp point, as it leaves the saw, mm.
    pub long_face_mm: f64,
    /// Width of the long face of each half once its point is blunted, mm.
    pub blunted_face_mm: f64,
    /// Width of the short face of each half, mm.
    pub short_face_mm: f64,
    /// Fence distance at the table, long face up and the blade leaning away from the fence, mm.
    pub fence_leaning_away_mm: f64,
    /// Fence distance at the table, long face down and the blade leaning towards the fence, mm.
    pub fence_leaning_towards_mm: f64,
    /// How far the body must rise before the points pass each other, mm.
    pub lift_mm: f64,
    /// Length of the seat along the slope, mm.
    pub seat_length_mm: f64,
    /// Width of the seat seen from above, mm.
    pub seat_width_mm: f64,
    /// Thickness of the flat on a blunted point, mm; 0 for a feather edge.
    pub point_flat_mm: f64,
    /// Height of the two halves together when hung, mm.
    pub pair_height_mm: f64,
}

const POINTS_MEET: Allowed = Allowed::Text("less than half of the bevel's rise t·tan b");
const WIDE_ENOUGH: Allowed =
    Allowed::Text("more than the bevel's rise and the kerf along the table, t·tan b + k/cos b");

/// Sizes of the two equal halves of a cleat, the fence for the rip, and the lift they ask for.
///
/// "The middle of the strip" is not where the fence goes: with the blade tilted, the halves come out equal only at the
/// distances given here.
///
/// # Equation
/// ```text
/// long  = (w + t tan b − k/cos b)/2        short = (w − t tan b − k/cos b)/2
/// lift  = t tan b − 2 d                    seat = lift/sin b     seen from above: lift/tan b
/// flat  = d/tan b                          hung pair = w − k/cos b
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | w, t | strip width and thickness | mm | `strip_width_mm`, `thickness_mm` |
/// | b | bevel from a square cut | degree | `bevel_deg` |
/// | k | kerf | mm | `kerf_mm` |
/// | d | taken off each point | mm | `blunt_mm` |
///
/// # Limits
/// Both halves from one strip, ripped once; for strips of unequal thickness the smaller counts. Blunting cures feather
/// edges and saves lift at the price of the seat.
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` when the strip is too narrow for the rip or the blunted points would
/// leave no seat.
///
/// # Source
/// Geometry, derived in the theory pages; checked by `verification/cleat`.
///
/// # Examples
/// ```
/// use beamcraft_core::hang::{cleat_halves, CleatHalvesInput};
/// let halves = cleat_halves(&CleatHalvesInput {
///     strip_width_mm: 120.0, thickness_mm: 18.0, bevel_deg: 45.0, kerf_mm: 0.0, blunt_mm: 3.0,
/// })?;
/// assert_eq!((halves.long_face_mm, halves.short_face_mm), (69.0, 51.0));
/// assert_eq!((halves.lift_mm, halves.point_flat_mm), (12.0, 3.0));
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn cleat_halves(input: &CleatHalvesInput) -> Result<CleatHalves, Fault> {
    input.check_ranges()?;
    let CleatHalvesInput { strip_width_mm, thickness_mm, bevel_deg, kerf_mm, blunt_mm } = *input;
    let (sine, cosine) = sin_cos_deg(bevel_deg);
    let slope = tan_deg(bevel_deg);
    let rise = thickness_mm * slope;
    let kerf_along = kerf_mm / cosine;
    let short_face_mm = 0.5 * (strip_width_mm - rise - kerf_along);
    if short_face_mm <= 0.0 {
        let cure = "widen the strip or lower the bevel";
        return Err(Fault::number(ErrorCode::Inconsistent, "strip_width_mm", strip_width_mm, WIDE_ENOUGH, cure));
    }
    let lift_mm = rise - 2.0 * blunt_mm;
    if lift_mm <= 0.0 {
        return Err(Fault::number(
            ErrorCode::Inconsistent,
            "blunt_mm",
            blunt_mm,
            POINTS_MEET,
            "leave more of the points",
        ));
    }
    let long_face_mm = 0.5 * (strip_width_mm + rise - kerf_along);
    Ok(CleatHalves {
        long_face_mm,
        blunted_face_mm: long_face_mm - blunt_mm,
        short_face_mm,
        fence_leaning_away_mm: short_face_mm,
        fence_leaning_towards_mm: long_face_mm,
        lift_mm,
        seat_length_mm: lift_mm / sine,
        seat_width_mm: lift_mm / slope,
        point_flat_mm: blunt_mm / slope,
        pair_height_mm: strip_width_mm - kerf_along,
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const CLEAT_HALVES: crate::json::Calculation = crate::json::calculation!(
    cleat_halves: CleatHalvesInput => CleatHalves, Typed,
    "Sizes of the two halves of a bevelled cleat, the fence for the rip, and the lift they ask for"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::statics::test_inputs::hostile;
    use proptest::prelude::*;

    fn halves(w: f64, t: f64, b: f64, k: f64, d: f64) -> Result<CleatHalves, Fault> {
        let input = CleatHalvesInput { strip_width_mm: w, thickness_mm: t, bevel_deg: b, kerf_mm: k, blunt_mm: d };
        cleat_halves(&input)
    }

    #[test]
    fn a_strip_too_narrow_or_points_blunted_away_are_refused() {
        assert_eq!(halves(20.0, 20.0, 45.0, 3.0, 0.0).expect_err("refused").field, "strip_width_mm");
        assert_eq!(halves(100.0, 20.0, 45.0, 3.0, 10.0).expect_err("refused").field, "blunt_mm");
    }

    proptest! {
        #[test]
        fn the_strip_is_used_up_on_both_faces_and_the_seat_closes(
            w in 150.0..600.0_f64, t in 5.0..40.0_f64, b in 5.0..60.0_f64, k in 0.0..6.0_f64, share in 0.0..0.49_f64,
        ) {
            let d = share * t * tan_deg(b);
            let found = halves(w, t, b, k, d).expect("allowed");
            // On each face lie the long face of one half, the kerf and the short face of the other.
            let used = found.long_face_mm + found.short_face_mm + k / crate::numeric::real::cos_deg(b);
            prop_assert!((used - w).abs() < 1e-9 * w);
            // The seat from the point of one half to the point of the other, by Pythagoras.
            let seat = (found.seat_width_mm * found.seat_width_mm + found.lift_mm * found.lift_mm).sqrt();
            prop_assert!((seat - found.seat_length_mm).abs() < 1e-9 * (1.0 + seat));
            prop_assert!((found.seat_width_mm + 2.0 * found.point_flat_mm - t).abs() < 1e-9 * t);
            prop_assert!(found.pair_height_mm <= w);
            // Blunter points never ask for more lift.
            let sharp = halves(w, t, b, k, 0.0).expect("allowed");
            prop_assert!(found.lift_mm <= sharp.lift_mm && found.seat_length_mm <= sharp.seat_length_mm);
        }

        #[test]
        fn hostile_numbers_are_refused_or_give_finite_results(
            w in hostile(), t in hostile(), b in hostile(), k in hostile(), d in hostile(),
        ) {
            if let Ok(found) = halves(w, t, b, k, d) {
                prop_assert!(found.seat_length_mm.is_finite() && found.seat_length_mm > 0.0);
                prop_assert!(found.short_face_mm > 0.0 && found.long_face_mm.is_finite());
            }
        }
    }
}
