//! Saw settings where sloping sides meet at a corner: the splayed box, and the sprung moulding cut flat.

use super::mitre::seam;
use crate::error::Fault;
use crate::limits::{Limited, limited};
use crate::numeric::real::{atan2_deg, sin_cos_deg};

/// Two sides of the same slope and thickness that meet at a corner.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<CompoundMitreInput>))]
pub struct CompoundMitreInput {
    /// Slope of the sides from horizontal, degrees; 0 is a flat frame, 90 an upright box.
    pub slope_deg: f64,
    /// Corner angle between neighbouring sides in plan, measured inside, degrees; 180 − 360/N for N equal sides.
    #[cfg_attr(feature = "json", serde(default = "square_corner"))]
    pub corner_deg: f64,
}

limited!(CompoundMitreInput { slope_deg: SLOPE, corner_deg: CORNER_ANGLE });

#[cfg(feature = "json")]
fn square_corner() -> f64 {
    90.0
}

/// Settings for a board that lies flat on the saw.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct CompoundMitre {
    /// Mitre gauge angle from a square cut, degrees; negative at an inside corner.
    pub gauge_deg: f64,
    /// Blade tilt from square for a mitred corner, degrees; negative at an inside corner.
    pub tilt_deg: f64,
    /// Angle between the two side faces, measured inside, degrees.
    pub dihedral_deg: f64,
    /// Blade tilt from square for a butted corner, degrees; the gauge angle is the same.
    pub butt_tilt_deg: f64,
}

/// Gauge angle and blade tilt of a compound mitre between equal sides.
///
/// # Equation
/// ```text
/// tan gauge = cos S / tan (C/2)        sin tilt = sin S · cos (C/2)
/// dihedral  = 180 − 2 tilt             butt tilt = |90 − dihedral|
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | S | slope of the sides from horizontal | degree | `slope_deg` |
/// | C | corner in plan | degree | `corner_deg` |
///
/// A moulding that leans at a spring angle F from the wall is a side of slope S = 90 − F.
///
/// # Limits
/// Board flat on the table, the same thickness and slope on both sides. For two slopes or thicknesses see
/// [`splayed_corner`]. Some gauges count from the fence line: set those to 90 minus the angle given.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// Solid geometry, derived in the theory pages; checked by `verification/compound` against a published chart.
///
/// # Examples
/// ```
/// use beamcraft_core::shell::{compound_mitre, CompoundMitreInput};
/// // A moulding sprung at 38° round a square corner.
/// let cut = compound_mitre(&CompoundMitreInput { slope_deg: 52.0, corner_deg: 90.0 })?;
/// assert!((cut.gauge_deg - 31.62).abs() < 0.005);
/// assert!((cut.tilt_deg - 33.86).abs() < 0.005);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn compound_mitre(input: &CompoundMitreInput) -> Result<CompoundMitre, Fault> {
    input.check_ranges()?;
    let half_deg = input.corner_deg / 2.0;
    let tilt_deg = tilt(input.slope_deg, half_deg);
    let dihedral_deg = 180.0 - 2.0 * tilt_deg;
    Ok(CompoundMitre {
        gauge_deg: gauge(input.slope_deg, half_deg),
        tilt_deg,
        dihedral_deg,
        butt_tilt_deg: (90.0 - dihedral_deg).abs(),
    })
}

fn gauge(slope_deg: f64, half_deg: f64) -> f64 {
    if slope_deg == 0.0 {
        return 90.0 - half_deg;
    }
    let (sine, cosine) = sin_cos_deg(half_deg);
    atan2_deg(sin_cos_deg(slope_deg).1 * cosine, sine)
}

fn tilt(slope_deg: f64, half_deg: f64) -> f64 {
    if slope_deg == 90.0 {
        return 90.0 - half_deg;
    }
    let (sine, cosine) = sin_cos_deg(half_deg);
    let (slope_sine, slope_cosine) = sin_cos_deg(slope_deg);
    // The cosine of the tilt from two squares: an arc sine near 90° would lose half the digits.
    let across = slope_sine * sine;
    atan2_deg(slope_sine * cosine, (slope_cosine * slope_cosine + across * across).sqrt())
}

/// Two sides of any slope and thickness that meet at a corner.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<SplayedCornerInput>))]
pub struct SplayedCornerInput {
    /// Slope of side a from horizontal, degrees; 90 is upright.
    pub slope_a_deg: f64,
    /// Slope of side b from horizontal, degrees; 90 is upright.
    pub slope_b_deg: f64,
    /// Corner angle between the sides in plan, measured inside, degrees.
    #[cfg_attr(feature = "json", serde(default = "square_corner"))]
    pub corner_deg: f64,
    /// Thickness of side a, mm.
    pub thickness_a_mm: f64,
    /// Thickness of side b, mm.
    pub thickness_b_mm: f64,
}

limited!(SplayedCornerInput {
    slope_a_deg: POSITIVE_SLOPE,
    slope_b_deg: POSITIVE_SLOPE,
    corner_deg: CORNER_ANGLE,
    thickness_a_mm: BOARD_THICKNESS,
    thickness_b_mm: BOARD_THICKNESS,
});

/// Settings for both sides of a splayed corner, each flat on the saw.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SplayedCorner {
    /// Angle between the two side faces, measured inside, degrees.
    pub dihedral_deg: f64,
    /// Mitre gauge angle of side a from a square cut, degrees; positive when the side is longer at its upper edge.
    pub gauge_a_deg: f64,
    /// Mitre gauge angle of side b from a square cut, degrees; positive when the side is longer at its upper edge.
    pub gauge_b_deg: f64,
    /// Blade tilt of side a from square, degrees; negative when the long point lies on the inner face.
    pub tilt_a_deg: f64,
    /// Blade tilt of side b from square, degrees; negative when the long point lies on the inner face.
    pub tilt_b_deg: f64,
}

/// Gauge angles and blade tilts where two sides of different slope or thickness meet in a mitre.
///
/// # Equation
/// ```text
/// tan gauge_a  = (sin Sa cos Sb + cos Sa sin Sb cos C) / (sin Sb sin C)       gauge_b with a and b exchanged
/// cos dihedral = sin Sa sin Sb cos C − cos Sa cos Sb                          tilts: see `mitre_pair`
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | Sa, Sb | slopes from horizontal | degree | `slope_a_deg`, `slope_b_deg` |
/// | C | corner in plan | degree | `corner_deg` |
///
/// # Limits
/// Sides widen upwards. Two flat boards have no seam of their own: for those use [`compound_mitre`].
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` for unequal thicknesses when both faces lie in one plane.
///
/// # Source
/// Solid geometry, derived in the theory pages; checked by `verification/compound`.
///
/// # Examples
/// ```
/// use beamcraft_core::shell::{splayed_corner, SplayedCornerInput};
/// let corner = splayed_corner(&SplayedCornerInput {
///     slope_a_deg: 80.0, slope_b_deg: 90.0, corner_deg: 90.0, thickness_a_mm: 20.0, thickness_b_mm: 20.0,
/// })?;
/// assert!(corner.gauge_a_deg.abs() < 1e-9);
/// assert!((corner.gauge_b_deg - 10.0).abs() < 1e-9);
/// assert!((corner.tilt_a_deg - 45.0).abs() < 1e-9);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn splayed_corner(input: &SplayedCornerInput) -> Result<SplayedCorner, Fault> {
    input.check_ranges()?;
    let (sine_a, cosine_a) = sin_cos_deg(input.slope_a_deg);
    let (sine_b, cosine_b) = sin_cos_deg(input.slope_b_deg);
    let (sine, cosine) = sin_cos_deg(input.corner_deg);
    // An inside corner turns the seam upside down; read it upwards again.
    let side = if sine < 0.0 { -1.0 } else { 1.0 };
    let run_a = side * (sine_a * cosine_b + cosine_a * sine_b * cosine);
    let run_b = side * (sine_b * cosine_a + cosine_b * sine_a * cosine);
    let (rise_a, rise_b) = (sine_b * sine.abs(), sine_a * sine.abs());
    // The normals' vector product, by its parts along side a and up its steepest line.
    let cross = (run_a * run_a + rise_a * rise_a).sqrt();
    let within = atan2_deg(cross, sine_a * sine_b * cosine - cosine_a * cosine_b);
    let dihedral_deg = if sine < 0.0 { 360.0 - within } else { within };
    let tilts = seam(input.thickness_a_mm, input.thickness_b_mm, dihedral_deg)?;
    Ok(SplayedCorner {
        dihedral_deg,
        gauge_a_deg: atan2_deg(run_a, rise_a),
        gauge_b_deg: atan2_deg(run_b, rise_b),
        tilt_a_deg: tilts.tilt_a_deg,
        tilt_b_deg: tilts.tilt_b_deg,
    })
}

/// Registry rows.
#[cfg(feature = "json")]
pub(super) const COMPOUND_MITRE: crate::json::Calculation = crate::json::calculation!(
    compound_mitre: CompoundMitreInput => CompoundMitre, Typed,
    "Gauge angle and blade tilt of a compound mitre between equal sloping sides, or of a sprung moulding"
);
#[cfg(feature = "json")]
pub(super) const SPLAYED_CORNER: crate::json::Calculation = crate::json::calculation!(
    splayed_corner: SplayedCornerInput => SplayedCorner, Typed,
    "Gauge angles and blade tilts where two sides of different slope or thickness meet in a mitre"
);

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn mitre(slope_deg: f64, corner_deg: f64) -> CompoundMitre {
        compound_mitre(&CompoundMitreInput { slope_deg, corner_deg }).expect("allowed")
    }

    fn corner(slope_a_deg: f64, slope_b_deg: f64, corner_deg: f64, thickness_b_mm: f64) -> SplayedCorner {
        let input = SplayedCornerInput { slope_a_deg, slope_b_deg, corner_deg, thickness_a_mm: 20.0, thickness_b_mm };
        splayed_corner(&input).expect("allowed")
    }

    #[test]
    fn the_flat_frame_and_the_upright_box_are_exact() {
        for sides in 3..20 {
            let corner_deg = 180.0 - 360.0 / f64::from(sides);
            let (flat, upright) = (mitre(0.0, corner_deg), mitre(90.0, corner_deg));
            let half = 90.0 - corner_deg / 2.0;
            assert_eq!((flat.gauge_deg, flat.tilt_deg, flat.dihedral_deg), (half, 0.0, 180.0));
            assert_eq!((upright.gauge_deg, upright.tilt_deg, upright.dihedral_deg), (0.0, half, corner_deg));
        }
    }

    #[test]
    fn a_butted_square_corner_needs_no_tilt() {
        assert_eq!(mitre(90.0, 90.0).butt_tilt_deg, 0.0);
        assert_eq!(mitre(0.0, 90.0).butt_tilt_deg, 90.0);
    }

    proptest! {
        #[test]
        fn equal_sides_of_a_splayed_corner_are_the_compound_mitre(slope in 0.5..90.0_f64, plan in 10.0..350.0_f64) {
            prop_assume!((plan - 180.0).abs() > 0.5);
            let (one, other) = (mitre(slope, plan), corner(slope, slope, plan, 20.0));
            for gauge in [other.gauge_a_deg, other.gauge_b_deg] {
                prop_assert!((gauge - one.gauge_deg).abs() < 1e-9, "{one:?} {other:?}");
            }
            for tilt in [other.tilt_a_deg, other.tilt_b_deg] {
                prop_assert!((tilt - one.tilt_deg).abs() < 1e-9, "{one:?} {other:?}");
            }
            prop_assert!((other.dihedral_deg - one.dihedral_deg).abs() < 1e-9);
        }

        #[test]
        fn a_splayed_corner_is_the_same_from_both_sides(a in 0.5..90.0, b in 0.5..90.0, plan in 10.0..350.0, t in 1.0..150.0) {
            let input = SplayedCornerInput {
                slope_a_deg: a, slope_b_deg: b, corner_deg: plan, thickness_a_mm: 20.0, thickness_b_mm: t,
            };
            let swapped = SplayedCornerInput {
                slope_a_deg: b, slope_b_deg: a, corner_deg: plan, thickness_a_mm: t, thickness_b_mm: 20.0,
            };
            let (Ok(one), Ok(other)) = (splayed_corner(&input), splayed_corner(&swapped)) else { return Ok(()) };
            prop_assert!((one.dihedral_deg - other.dihedral_deg).abs() < 1e-6);
            prop_assert!((one.gauge_a_deg - other.gauge_b_deg).abs() < 1e-9);
            prop_assert!((one.tilt_a_deg + one.tilt_b_deg - (180.0 - one.dihedral_deg)).abs() < 1e-9);
        }

        #[test]
        fn any_bits_give_numbers_or_a_fault(bits in prop::array::uniform5(prop_oneof![prop::num::f64::ANY, 0.0..200.0])) {
            let [slope_a_deg, slope_b_deg, corner_deg, thickness_a_mm, thickness_b_mm] = bits;
            if let Ok(cut) = compound_mitre(&CompoundMitreInput { slope_deg: slope_a_deg, corner_deg }) {
                let all = [cut.gauge_deg, cut.tilt_deg, cut.dihedral_deg, cut.butt_tilt_deg];
                prop_assert!(all.iter().all(|value| value.is_finite()));
            }
            let input = SplayedCornerInput { slope_a_deg, slope_b_deg, corner_deg, thickness_a_mm, thickness_b_mm };
            if let Ok(cut) = splayed_corner(&input) {
                let all = [cut.gauge_a_deg, cut.gauge_b_deg, cut.tilt_a_deg, cut.tilt_b_deg, cut.dihedral_deg];
                prop_assert!(all.iter().all(|value| value.is_finite()));
            }
        }
    }
}
