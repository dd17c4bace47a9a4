//! The lip of a cleat half: bearing on the seat, bending of the lip across the grain, shear at its root.

use crate::error::{Allowed, ErrorCode, Fault};
use crate::finding::Caution;
use crate::limits::{Limited, limited};
use crate::numeric::real::{sin_cos_deg, tan_deg};

/// A half of a cleat and what presses on its seat.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<CleatLipInput>))]
pub struct CleatLipInput {
    /// Thickness of the strip, mm.
    pub thickness_mm: f64,
    /// Bevel of the seat from a square cut, degrees.
    pub bevel_deg: f64,
    /// How much is taken off the point of each half, mm; 0, the default, leaves them sharp.
    #[cfg_attr(feature = "json", serde(default))]
    pub blunt_mm: f64,
    /// Load on the seat, straight down, N.
    pub vertical_n: f64,
    /// Pull on the seat, out from the wall, N.
    pub horizontal_n: f64,
    /// Length along the strip over which both are spread, mm.
    pub stretch_mm: f64,
}

limited!(CleatLipInput {
    thickness_mm: BOARD_THICKNESS,
    bevel_deg: CLEAT_BEVEL,
    blunt_mm: SMALL_LENGTH,
    vertical_n: FORCE,
    horizontal_n: FORCE,
    stretch_mm: LEVER,
});

/// Stresses of the lip.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct CleatLip {
    /// Width of the seat, along its slope, mm.
    pub seat_mm: f64,
    /// Force square to the seat, N.
    pub square_n: f64,
    /// Largest pressure on the seat, at the tip, MPa: across the grain.
    pub greatest_bearing_mpa: f64,
    /// Largest tension across the grain by bending of the lip, on the side of the wall, MPa.
    pub greatest_tension_mpa: f64,
    /// Distance of that section's inner end from the wall, mm; 0 is the root.
    pub tension_from_wall_mm: f64,
    /// Largest shear in a level section of the lip, MPa: wood rolls across its grain.
    pub greatest_shear_mpa: f64,
    /// Distance of that section's inner end from the wall, mm.
    pub shear_from_wall_mm: f64,
    /// The caution that belongs to these numbers.
    pub caution: Caution,
}

/// Number of level sections looked at, from the root to the tip.
const SECTIONS: u32 = 64;

const SEAT_LEFT: Allowed = Allowed::Text("less than half of the bevel's rise t·tan b");

/// Bearing, bending across the grain and shear of the lip of a cleat half, pressed hardest at its tip.
///
/// A body that leans out presses on the tip of the lip first. The pressure is taken to rise from nothing at the inner end of the
/// seat to its most at the tip: the body leans just so far that the inner end is about to open.
///
/// # Equation
/// ```text
/// x1 = d/tan b     L = t − 2 x1     pressure at x ~ 2 (x − x1)/L²     largest = 2 N cos b/(L s)     N = V cos b + H sin b
/// in the level section from x to the front face, c = t − x thick, with the share F of the load above it:
/// sigma = 6 M/(c² s) − F V/(c s)     M = Σ (H (x' − x) tan b + V (x' − (t + x)/2))     tau = 1.5 F H/(c s)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | t, b, d | thickness, bevel, taken off a point | mm, degree, mm | `thickness_mm`, `bevel_deg`, `blunt_mm` |
/// | V, H | load down, pull out | N | `vertical_n`, `horizontal_n` |
/// | s | length along the strip | mm | `stretch_mm` |
/// | x, x' | from the wall: the section, the pressure above it | mm | – |
///
/// # Limits
/// Grain along the strip, so that all three stresses act across it. Sixty-four sections from the root to the tip; below the root the
/// strip lies against the wall. How long a stretch works together is the user's: around a screw about two strip widths.
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` when the blunted points leave no seat.
///
/// # Source
/// Statics of a wedge by sections, derived in the theory pages; checked by `verification/cleat_lip`.
///
/// # Examples
/// ```
/// use beamcraft_core::statics::{cleat_lip, CleatLipInput};
/// let lip = cleat_lip(&CleatLipInput {
///     thickness_mm: 18.0, bevel_deg: 45.0, blunt_mm: 2.0, vertical_n: 380.0, horizontal_n: 530.0, stretch_mm: 200.0,
/// })?;
/// // All of the load acts 11 1/3 mm from the wall, above the section that starts where the seat does.
/// assert!((lip.greatest_tension_mpa - 0.53).abs() < 0.01);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn cleat_lip(input: &CleatLipInput) -> Result<CleatLip, Fault> {
    input.check_ranges()?;
    let CleatLipInput { thickness_mm: t, bevel_deg, blunt_mm, vertical_n: v, horizontal_n: h, stretch_mm: s } = *input;
    let (sine, cosine) = sin_cos_deg(bevel_deg);
    let slope = tan_deg(bevel_deg);
    let inner = blunt_mm / slope;
    let seat = t - 2.0 * inner;
    if seat < LEAST_SEAT * t {
        return Err(Fault::number(ErrorCode::Inconsistent, "blunt_mm", blunt_mm, SEAT_LEFT, "blunt the points less"));
    }
    let square_n = v * cosine + h * sine;
    let mut lip = CleatLip {
        seat_mm: seat / cosine,
        square_n,
        greatest_bearing_mpa: 2.0 * square_n * cosine / (seat * s),
        greatest_tension_mpa: 0.0,
        tension_from_wall_mm: 0.0,
        greatest_shear_mpa: 0.0,
        shear_from_wall_mm: 0.0,
        caution: Caution::Structure,
    };
    for k in 0..SECTIONS {
        let from_wall = (inner + seat) * f64::from(k) / f64::from(SECTIONS);
        let thick = t - from_wall;
        // Of the pressure, what lies beyond the section: its share, and its distances from the inner end of the seat.
        let below = ((from_wall - inner) / seat).max(0.0);
        let share = 1.0 - below * below;
        let reach = 2.0 / 3.0 * seat * (1.0 - below * below * below);
        let beyond = |x: f64| reach + (inner - x) * share;
        let moment = h * slope * beyond(from_wall) + v * beyond(0.5 * (t + from_wall));
        let tension = (6.0 * moment / thick - share * v) / (thick * s);
        let shear = 1.5 * share * h / (thick * s);
        if tension > lip.greatest_tension_mpa {
            (lip.greatest_tension_mpa, lip.tension_from_wall_mm) = (tension, from_wall);
        }
        if shear > lip.greatest_shear_mpa {
            (lip.greatest_shear_mpa, lip.shear_from_wall_mm) = (shear, from_wall);
        }
    }
    Ok(lip)
}

/// Least seat, as a share of the strip's thickness.
const LEAST_SEAT: f64 = 0.01;

/// Registry row.
#[cfg(feature = "json")]
pub(super) const CLEAT_LIP: crate::json::Calculation = crate::json::calculation!(
    cleat_lip: CleatLipInput => CleatLip, Typed,
    "Bearing, bending across the grain and shear of the lip of a cleat half"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::statics::test_inputs::hostile;
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    fn lip(t: f64, b: f64, d: f64, v: f64, h: f64, s: f64) -> Result<CleatLip, Fault> {
        cleat_lip(&CleatLipInput {
            thickness_mm: t,
            bevel_deg: b,
            blunt_mm: d,
            vertical_n: v,
            horizontal_n: h,
            stretch_mm: s,
        })
    }

    #[test]
    fn points_blunted_away_are_refused() {
        let fault = lip(18.0, 45.0, 9.0, 100.0, 100.0, 200.0).unwrap_err();
        assert_eq!((fault.code, fault.field), (ErrorCode::Inconsistent, "blunt_mm"));
    }

    proptest! {
        /// The forces of very many strips of pressure above a section, one by one.
        #[test]
        fn it_is_what_many_strips_of_pressure_add_up_to(
            t in 10.0..30.0_f64, b in 20.0..60.0_f64, blunt in 0.0..0.3_f64, v in 0.0..500.0_f64, h in 1.0..500.0_f64,
        ) {
            let slope = tan_deg(b);
            let d = blunt * t * slope;
            let found = lip(t, b, d, v, h, 150.0).unwrap();
            let (inner, seat) = (d / slope, t - 2.0 * d / slope);
            let n = 20_000;
            let section = |from: f64| {
                let (mut moment, mut share) = (0.0, 0.0);
                for k in 0..n {
                    let u = (f64::from(k) + 0.5) / f64::from(n);
                    let (x, part) = (inner + u * seat, 2.0 * u / f64::from(n));
                    if x >= from {
                        moment += part * (h * (x - from) * slope + v * (x - 0.5 * (t + from)));
                        share += part;
                    }
                }
                let c = t - from;
                (6.0 * moment / (c * c * 150.0) - share * v / (c * 150.0), 1.5 * share * h / (c * 150.0))
            };
            let (tension, _) = section(found.tension_from_wall_mm);
            let (_, shear) = section(found.shear_from_wall_mm);
            // At the tip of a sharp lip only a sixty-fourth of the strips is left, and one more or less shows.
            prop_assert!((found.greatest_shear_mpa - shear).abs() < 5e-3 * shear);
            if found.greatest_tension_mpa > 0.0 {
                prop_assert!((found.greatest_tension_mpa - tension).abs() < 1e-3 * (tension.abs() + h / (t * 150.0)));
            }
        }

        #[test]
        fn pressure_times_seat_is_the_force_on_it(t in 10.0..30.0_f64, b in 10.0..70.0_f64, h in 0.0..500.0_f64) {
            let found = lip(t, b, 0.0, 300.0, h, 150.0).unwrap();
            assert_relative_eq!(0.5 * found.greatest_bearing_mpa * found.seat_mm * 150.0, found.square_n, max_relative = 1e-9);
        }

        #[test]
        fn more_pull_is_never_less_stress(v in 0.0..500.0_f64, h in 0.0..500.0_f64, more in 0.0..500.0_f64) {
            let (less, greater) = (lip(18.0, 45.0, 2.0, v, h, 200.0).unwrap(), lip(18.0, 45.0, 2.0, v, h + more, 200.0).unwrap());
            prop_assert!(greater.greatest_tension_mpa >= less.greatest_tension_mpa);
            prop_assert!(greater.greatest_shear_mpa >= less.greatest_shear_mpa);
            prop_assert!(greater.greatest_bearing_mpa >= less.greatest_bearing_mpa);
        }

        #[test]
        fn hostile_numbers_are_refused_or_give_finite_results(
            t in hostile(), b in hostile(), d in hostile(), v in hostile(), h in hostile(), s in hostile(),
        ) {
            if let Ok(found) = lip(t, b, d, v, h, s) {
                let numbers = [found.greatest_bearing_mpa, found.greatest_tension_mpa, found.greatest_shear_mpa];
                prop_assert!(numbers.iter().all(|number| number.is_finite() && *number >= 0.0));
            }
        }
    }
}
