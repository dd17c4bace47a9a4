//! Splitting by a force across the grain.

use crate::error::{Allowed, ErrorCode, Fault};
use crate::limits::{Limited, limited};

/// A beam that a connection pulls across the grain.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<Ec5SplittingInput>))]
pub struct Ec5SplittingInput {
    /// Thickness of the member b, mm.
    pub width_mm: f64,
    /// Depth of the member h, mm.
    pub depth_mm: f64,
    /// Distance from the loaded edge to the farthest fastener h_e, mm.
    pub loaded_edge_mm: f64,
}

limited!(Ec5SplittingInput { width_mm: BODY_SIZE, depth_mm: BODY_SIZE, loaded_edge_mm: BEARING_LENGTH });

/// Characteristic splitting capacity.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Ec5Splitting {
    /// Splitting capacity F_90,Rk (8.4); to be compared with the shear force on either side of the connection, N.
    pub capacity_n: f64,
}

/// Characteristic splitting capacity of a softwood member loaded across the grain by a connection.
///
/// # Equation
/// ```text
/// F_90,Rk = 14 b √(h_e / (1 − h_e / h))      (8.4, w = 1)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | b, h | thickness, depth | mm | `width_mm`, `depth_mm` |
/// | h_e | loaded edge to the farthest fastener | mm | `loaded_edge_mm` |
///
/// # Limits
/// Softwood, dowel-type fasteners. k_mod and γ_M are still to come.
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` when the fastener lies outside the member.
///
/// # Source
/// EN 1995-1-1 8.1.4, Eq. 8.4 (seen). Checked by `verification/ec5_values`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::{Ec5SplittingInput, ec5_splitting};
/// let input = Ec5SplittingInput { width_mm: 160.0, depth_mm: 180.0, loaded_edge_mm: 120.0 };
/// assert!((ec5_splitting(&input)?.capacity_n - 42_501.0).abs() < 1.0);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn ec5_splitting(input: &Ec5SplittingInput) -> Result<Ec5Splitting, Fault> {
    input.check_ranges()?;
    let Ec5SplittingInput { width_mm, depth_mm, loaded_edge_mm } = *input;
    if loaded_edge_mm >= depth_mm {
        return Err(Fault::number(
            ErrorCode::Inconsistent,
            "loaded_edge_mm",
            loaded_edge_mm,
            Allowed::Text("less than the member's depth"),
            "measure from the edge that the force points to",
        ));
    }
    Ok(Ec5Splitting { capacity_n: 14.0 * width_mm * (loaded_edge_mm / (1.0 - loaded_edge_mm / depth_mm)).sqrt() })
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const EC5_SPLITTING: crate::json::Calculation = crate::json::calculation!(
    ec5_splitting: Ec5SplittingInput => Ec5Splitting, Typed,
    "Eurocode 5: splitting capacity of a member loaded across the grain by a connection"
);
