//! What the pull of a bent fastener adds to its lateral capacity.

use super::choice::Ec5Fastener;
use crate::error::Fault;
use crate::limits::{Limited, limited};

/// The Johansen part of a mode and what pulls against it.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<Ec5RopeEffectInput>))]
pub struct Ec5RopeEffectInput {
    /// Kind of fastener.
    pub fastener: Ec5Fastener,
    /// Lateral capacity by the Johansen part alone, N.
    pub johansen_n: f64,
    /// Characteristic capacity along the axis, F_ax,Rk, the lower of both ends, N; 0 when it is not known.
    pub axial_capacity_n: f64,
}

limited!(Ec5RopeEffectInput { johansen_n: FORCE, axial_capacity_n: FORCE });

/// Rope effect of a fastener.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Ec5RopeEffect {
    /// A quarter of the capacity along the axis, N.
    pub quarter_n: f64,
    /// Most that may be added, as a share of the Johansen part.
    pub cap_share: f64,
    /// Most that may be added, N.
    pub cap_n: f64,
    /// What is added: the lesser of both, N.
    pub rope_n: f64,
    /// Johansen part and rope effect together, N.
    pub total_n: f64,
}

/// Rope effect: what the pull along a bent fastener adds to its lateral capacity, with its limit.
///
/// # Equation
/// ```text
/// rope = min(F_ax / 4, cap × J)      total = J + rope
/// cap: round nails 15 %, square and grooved nails 25 %, other nails 50 %, screws 100 %, bolts 25 %, dowels 0
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | J | Johansen part of the mode | N | `johansen_n` |
/// | F_ax | capacity along the axis | N | `axial_capacity_n` |
///
/// # Limits
/// Only for modes in which the fastener bends or turns (c to f, j, k and those with steel plates), not for pure bearing.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// EN 1995-1-1 8.2.2(2): screws, bolts and dowels seen, nails recalled. Checked by `verification/ec5_values`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::{Ec5Fastener, Ec5RopeEffectInput, ec5_rope_effect};
/// let input = Ec5RopeEffectInput { fastener: Ec5Fastener::Bolt, johansen_n: 9_330.0, axial_capacity_n: 13_568.0 };
/// assert_eq!(ec5_rope_effect(&input)?.total_n, 11_662.5);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn ec5_rope_effect(input: &Ec5RopeEffectInput) -> Result<Ec5RopeEffect, Fault> {
    input.check_ranges()?;
    let cap_share = input.fastener.rope_cap();
    let quarter_n = 0.25 * input.axial_capacity_n;
    let cap_n = cap_share * input.johansen_n;
    let rope_n = quarter_n.min(cap_n);
    Ok(Ec5RopeEffect { quarter_n, cap_share, cap_n, rope_n, total_n: input.johansen_n + rope_n })
}

/// A Johansen part with its rope effect, N.
pub(super) fn with_rope(johansen_n: f64, axial_capacity_n: f64, cap_share: f64) -> f64 {
    johansen_n + (0.25 * axial_capacity_n).min(cap_share * johansen_n)
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const EC5_ROPE_EFFECT: crate::json::Calculation = crate::json::calculation!(
    ec5_rope_effect: Ec5RopeEffectInput => Ec5RopeEffect, Typed,
    "Eurocode 5: what the pull along a bent fastener adds to its lateral capacity"
);
