//! Axial and lateral load at once.

use super::choice::Ec5Fastener;
use crate::error::Fault;
use crate::limits::{Limited, limited};

/// Which equation joins the two loads.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum Ec5CombinedRule {
    /// Smooth nails: the shares are added (8.27).
    Linear,
    /// Other nails and screws: the squares of the shares are added (8.28).
    Quadratic,
}

/// A fastener loaded across and along its axis.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<Ec5CombinedLoadInput>))]
pub struct Ec5CombinedLoadInput {
    /// Kind of fastener; decides the equation.
    pub fastener: Ec5Fastener,
    /// Design load along the axis F_ax,Ed, N.
    pub axial_n: f64,
    /// Design load across the axis F_v,Ed, N.
    pub lateral_n: f64,
    /// Design capacity along the axis F_ax,Rd, N.
    pub axial_capacity_n: f64,
    /// Design capacity across the axis F_v,Rd, N.
    pub lateral_capacity_n: f64,
}

limited!(Ec5CombinedLoadInput {
    axial_n: FORCE,
    lateral_n: FORCE,
    axial_capacity_n: CONNECTION_CAPACITY,
    lateral_capacity_n: CONNECTION_CAPACITY
});

/// Use of a fastener under both loads.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Ec5CombinedLoad {
    /// Equation that applies.
    pub rule: Ec5CombinedRule,
    /// Axial load over its capacity.
    pub axial_share: f64,
    /// Lateral load over its capacity.
    pub lateral_share: f64,
    /// Left side of the equation; 1 is the limit.
    pub interaction: f64,
    /// Factor by which both loads are used: the interaction for the linear equation, its root for the quadratic one.
    pub utilisation: f64,
}

/// Use of a fastener under axial and lateral load at once.
///
/// # Equation
/// ```text
/// smooth nails            F_ax/R_ax + F_v/R_v ≤ 1             (8.27)
/// other nails, screws     (F_ax/R_ax)² + (F_v/R_v)² ≤ 1       (8.28)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | F_ax, F_v | design loads | N | `axial_n`, `lateral_n` |
/// | R_ax, R_v | design capacities | N | `axial_capacity_n`, `lateral_capacity_n` |
///
/// # Limits
/// For bolts the standard gives no equation; the quadratic one is used as for screws. A dowel carries nothing along its
/// axis.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// EN 1995-1-1 8.3.3 and 8.7.3 (seen).
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::{Ec5CombinedLoadInput, Ec5Fastener, ec5_combined_load};
/// let screw = ec5_combined_load(&Ec5CombinedLoadInput {
///     fastener: Ec5Fastener::Screw, axial_n: 600.0, lateral_n: 800.0, axial_capacity_n: 1_000.0,
///     lateral_capacity_n: 1_000.0,
/// })?;
/// assert!((screw.utilisation - 1.0).abs() < 1e-12);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn ec5_combined_load(input: &Ec5CombinedLoadInput) -> Result<Ec5CombinedLoad, Fault> {
    input.check_ranges()?;
    let axial_share = input.axial_n / input.axial_capacity_n;
    let lateral_share = input.lateral_n / input.lateral_capacity_n;
    if input.fastener.is_smooth_nail() {
        let interaction = axial_share + lateral_share;
        let rule = Ec5CombinedRule::Linear;
        return Ok(Ec5CombinedLoad { rule, axial_share, lateral_share, interaction, utilisation: interaction });
    }
    let interaction = axial_share * axial_share + lateral_share * lateral_share;
    let rule = Ec5CombinedRule::Quadratic;
    Ok(Ec5CombinedLoad { rule, axial_share, lateral_share, interaction, utilisation: interaction.sqrt() })
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const EC5_COMBINED_LOAD: crate::json::Calculation = crate::json::calculation!(
    ec5_combined_load: Ec5CombinedLoadInput => Ec5CombinedLoad, Typed,
    "Eurocode 5: use of a fastener under axial and lateral load at once"
);
