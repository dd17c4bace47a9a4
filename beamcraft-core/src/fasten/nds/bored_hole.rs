//! Holes to bore for lag screws and nails.

use super::factors::DowelFastener;
use crate::error::{ErrorCode, Fault};
use crate::limits::{Limited, limited};

/// A lag screw or a nail and the wood that it is driven into.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<BoredHoleInput>))]
pub struct BoredHoleInput {
    /// Kind of fastener: a lag screw or a nail.
    pub fastener: DowelFastener,
    /// Specific gravity of the wood that is bored, from oven-dry mass and volume.
    pub specific_gravity: f64,
    /// Nominal diameter, that of the shank, mm.
    pub nominal_diameter_mm: f64,
}

limited!(BoredHoleInput { specific_gravity: SPECIFIC_GRAVITY, nominal_diameter_mm: FASTENER_DIAMETER });

/// Holes for one lag screw or nail.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct BoredHole {
    /// Clearance hole for the unthreaded shank of a lag screw, as deep as the shank is long (NDS 12.1.4.2), mm; 0 for nails.
    pub shank_hole_mm: f64,
    /// Smallest hole for the thread of a lag screw, over at least the thread length (NDS 12.1.4.2), mm; 0 for nails, which
    /// may be driven without.
    pub least_hole_mm: f64,
    /// Largest hole for the thread of a lag screw (NDS 12.1.4.2), or for a nail (NDS 12.1.6.2), mm.
    pub most_hole_mm: f64,
}

/// Diameters of the holes to bore for a lag screw or a nail, by the density of the wood.
///
/// # Equation
/// | wood | lag screw: shank, thread | nail: at most |
/// |---|---|---|
/// | G > 0.6 | D, 0.65 D to 0.85 D | 0.90 D |
/// | 0.5 < G ≤ 0.6 | D, 0.60 D to 0.75 D | 0.75 D |
/// | G ≤ 0.5 | D, 0.40 D to 0.70 D | 0.75 D |
///
/// # Limits
/// The larger share is for the larger diameters. A lag screw of 3/8 in or less that mainly pulls, in wood of G ≤ 0.5, may
/// go without a hole where edge, end and spacing keep the wood from splitting. Wood screws: see `lead_hole`.
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` for a wood screw.
///
/// # Source
/// NDS 2018 12.1.6.2 (seen in a public summary), 12.1.4.2 (shank hole seen, thread holes recalled). Checked by
/// `verification/nds_geometry`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::{BoredHoleInput, DowelFastener, bored_hole};
/// let hole = bored_hole(&BoredHoleInput {
///     fastener: DowelFastener::LagScrew,
///     specific_gravity: 0.42,
///     nominal_diameter_mm: 10.0,
/// })?;
/// assert_eq!((hole.shank_hole_mm, hole.least_hole_mm, hole.most_hole_mm), (10.0, 4.0, 7.0));
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn bored_hole(input: &BoredHoleInput) -> Result<BoredHole, Fault> {
    input.check_ranges()?;
    let (gravity, diameter_mm) = (input.specific_gravity, input.nominal_diameter_mm);
    let (shank, least, most) = match (input.fastener, gravity > 0.6, gravity > 0.5) {
        (DowelFastener::WoodScrew, ..) => {
            return Err(Fault::plain(ErrorCode::Inconsistent, "fastener", "a lag screw or a nail", "use lead_hole"));
        }
        (DowelFastener::LagScrew, true, _) => (1.0, 0.65, 0.85),
        (DowelFastener::LagScrew, false, true) => (1.0, 0.60, 0.75),
        (DowelFastener::LagScrew, false, false) => (1.0, 0.40, 0.70),
        (_, true, _) => (0.0, 0.0, 0.90),
        (_, false, _) => (0.0, 0.0, 0.75),
    };
    Ok(BoredHole {
        shank_hole_mm: shank * diameter_mm,
        least_hole_mm: least * diameter_mm,
        most_hole_mm: most * diameter_mm,
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const BORED_HOLE: crate::json::Calculation = crate::json::calculation!(
    bored_hole: BoredHoleInput => BoredHole, Typed,
    "Diameters of the holes to bore for a lag screw or a nail, by the density of the wood"
);

#[cfg(test)]
mod tests {
    use super::*;

    // NDS 12.1.4.2 and 12.1.6.2, edges included.
    #[test]
    fn denser_wood_wants_larger_holes() {
        let at = |fastener, specific_gravity| {
            let found = bored_hole(&BoredHoleInput { fastener, specific_gravity, nominal_diameter_mm: 10.0 }).unwrap();
            (found.shank_hole_mm, found.least_hole_mm, found.most_hole_mm)
        };
        use DowelFastener::{LagScrew, RingShankNail, SmoothNail};
        assert_eq!(at(LagScrew, 0.5), (10.0, 4.0, 7.0));
        assert_eq!(at(LagScrew, 0.6), (10.0, 6.0, 7.5));
        assert_eq!(at(LagScrew, 0.61), (10.0, 6.5, 8.5));
        assert_eq!(at(SmoothNail, 0.6), (0.0, 0.0, 7.5));
        assert_eq!(at(RingShankNail, 0.61), (0.0, 0.0, 9.0));
    }

    #[test]
    fn wood_screws_and_no_numbers_are_refused() {
        let screw =
            BoredHoleInput { fastener: DowelFastener::WoodScrew, specific_gravity: 0.5, nominal_diameter_mm: 5.0 };
        assert_eq!(bored_hole(&screw).expect_err("refused").code, ErrorCode::Inconsistent);
        let nothing = BoredHoleInput { specific_gravity: f64::NAN, ..screw };
        assert_eq!(bored_hole(&nothing).expect_err("refused").field, "specific_gravity");
    }
}
