//! Effective number of fasteners in a row along the grain.

use super::EDGE_MM;
use super::choice::{Ec5Fastener, Ec5Hole};
use crate::error::{Allowed, ErrorCode, Fault};
use crate::fasten::stagger::RowStagger;
use crate::limits::{Limited, limited};
use crate::numeric::real::pow;

/// A row of fasteners along the grain.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<Ec5EffectiveNumberInput>))]
pub struct Ec5EffectiveNumberInput {
    /// Kind of fastener.
    pub fastener: Ec5Fastener,
    /// Whether the holes are predrilled; only nails and thin screws ask.
    pub hole: Ec5Hole,
    /// Diameter, for screws the effective one, mm.
    pub diameter_mm: f64,
    /// Number of fasteners in the row.
    pub count: u32,
    /// Spacing along the grain a_1, mm.
    pub spacing_mm: f64,
    /// Whether they stand on one line; by default they do. Counts for nails and thin screws only.
    #[cfg_attr(feature = "json", serde(default = "RowStagger::in_line"))]
    pub stagger: RowStagger,
    /// Angle between force and grain, degrees; by default 0, the lower number. Matters only to bolts and dowels: nails
    /// are checked with the part of the force along the grain.
    #[cfg_attr(feature = "json", serde(default))]
    pub angle_to_grain_deg: f64,
}

limited!(Ec5EffectiveNumberInput {
    diameter_mm: FASTENER_DIAMETER,
    count: COUNT,
    spacing_mm: FASTENER_SPACING,
    angle_to_grain_deg: ANGLE_TO_GRAIN
});

/// Effective number of a row.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Ec5EffectiveNumber {
    /// Exponent k_ef of nails (Table 8.1); 0.9 for bolts.
    pub exponent: f64,
    /// Effective number for a force along the grain.
    pub along_grain: f64,
    /// Effective number n_ef at the angle of the force.
    pub effective_number: f64,
}

/// Effective number of fasteners in a row along the grain.
///
/// # Equation
/// ```text
/// nails, screws to 6 mm   n_ef = n^k_ef      (8.17)    k_ef: 1 at a_1 ≥ 14 d, 0.85 at 10 d, 0.7 at 7 d, 0.5 at 4 d
///                                                      (predrilled), linear between; staggered: n
/// bolts, dowels, thicker  n_ef = min(n, n^0.9 (a_1 / (13 d))^0.25)   (8.34)    across the grain n, linear between
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | n | number in the row | – | `count` |
/// | a_1 | spacing along the grain | mm | `spacing_mm` |
/// | d | diameter | mm | `diameter_mm` |
///
/// # Limits
/// Several rows: each counts by itself. One fastener counts as one.
///
/// # Errors
/// `out_of_range`, `not_finite`; `no_published_value` for nails closer than 7 d, or than 4 d predrilled.
///
/// # Source
/// EN 1995-1-1 8.3.1.1(8), Table 8.1; 8.5.1.1(4), Eq. 8.34 (seen). Checked by `verification/ec5_number`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::*;
/// let row = ec5_effective_number(&Ec5EffectiveNumberInput {
///     fastener: Ec5Fastener::Dowel, hole: Ec5Hole::Predrilled, diameter_mm: 12.0, count: 5, spacing_mm: 60.0,
///     stagger: RowStagger::InLine, angle_to_grain_deg: 0.0,
/// })?;
/// assert!((row.effective_number - 3.352).abs() < 1e-3);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn ec5_effective_number(input: &Ec5EffectiveNumberInput) -> Result<Ec5EffectiveNumber, Fault> {
    input.check_ranges()?;
    let number = f64::from(input.count);
    let slender = input.spacing_mm / input.diameter_mm;
    if !input.fastener.follows_nail_rules(input.diameter_mm) {
        let (row, across) = (pow(number, 0.9) * pow(slender / 13.0, 0.25), input.angle_to_grain_deg / 90.0);
        let along_grain = if input.count > 1 { number.min(row) } else { 1.0 };
        let effective_number = along_grain * (1.0 - across) + number * across;
        return Ok(Ec5EffectiveNumber { exponent: 0.9, along_grain, effective_number });
    }
    let exponent = if input.stagger == RowStagger::Staggered || input.count == 1 {
        1.0
    } else {
        nail_exponent(slender, input.hole).ok_or_else(|| {
            Fault::number(
                ErrorCode::NoPublishedValue,
                "spacing_mm",
                input.spacing_mm,
                Allowed::Text("at least 7 d, or 4 d in predrilled holes"),
                "space the nails wider or stagger them",
            )
        })?
    };
    let along_grain = pow(number, exponent);
    Ok(Ec5EffectiveNumber { exponent, along_grain, effective_number: along_grain })
}

/// The exponent of Table 8.1.
fn nail_exponent(slender: f64, hole: Ec5Hole) -> Option<f64> {
    if slender >= 14.0 - EDGE_MM {
        Some(1.0)
    } else if slender >= 10.0 {
        Some(0.85 + (slender - 10.0) / 4.0 * 0.15)
    } else if slender >= 7.0 - EDGE_MM {
        Some(0.7 + (slender - 7.0) / 3.0 * 0.15)
    } else if slender >= 4.0 - EDGE_MM && hole == Ec5Hole::Predrilled {
        Some(0.5 + (slender - 4.0) / 3.0 * 0.2)
    } else {
        None
    }
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const EC5_EFFECTIVE_NUMBER: crate::json::Calculation = crate::json::calculation!(
    ec5_effective_number: Ec5EffectiveNumberInput => Ec5EffectiveNumber, Typed,
    "Eurocode 5: effective number of fasteners in a row along the grain"
);
