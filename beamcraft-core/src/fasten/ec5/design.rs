//! From the characteristic to the design value.

use super::choice::{Ec5LoadDuration, Ec5Material, Ec5ServiceClass, kmod};
use crate::error::Fault;
use crate::limits::{Limited, limited};

/// A characteristic capacity and what it is used for.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<Ec5DesignValueInput>))]
pub struct Ec5DesignValueInput {
    /// Characteristic capacity of one fastener R_k, N.
    pub characteristic_n: f64,
    /// Effective number of fasteners; by default 1.
    #[cfg_attr(feature = "json", serde(default = "one"))]
    pub effective_number: f64,
    /// Material of one member.
    pub first_material: Ec5Material,
    /// Material of the other member; the same for two like members.
    pub second_material: Ec5Material,
    /// Service class.
    pub service_class: Ec5ServiceClass,
    /// Load-duration class of the shortest load.
    pub load_duration: Ec5LoadDuration,
    /// Partial factor gamma_M; by default 1.3, which the standard recommends for connections. The national annex may
    /// choose another.
    #[cfg_attr(feature = "json", serde(default = "recommended"))]
    pub gamma_m: f64,
}

limited!(Ec5DesignValueInput { characteristic_n: FORCE, effective_number: EFFECTIVE_COUNT, gamma_m: PARTIAL_FACTOR });

#[cfg(feature = "json")]
fn one() -> f64 {
    1.0
}

/// The partial factor that the standard recommends for connections (Table 2.3).
pub(in crate::fasten) const RECOMMENDED_GAMMA_M: f64 = 1.3;

#[cfg(feature = "json")]
pub(in crate::fasten) fn recommended() -> f64 {
    RECOMMENDED_GAMMA_M
}

/// Design value of a capacity.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Ec5DesignValue {
    /// k_mod of the first material (Table 3.1).
    pub first_k_mod: f64,
    /// k_mod of the second material (Table 3.1).
    pub second_k_mod: f64,
    /// k_mod of the joint, the geometric mean of both (2.6).
    pub k_mod: f64,
    /// Partial factor that was applied.
    pub gamma_m: f64,
    /// Characteristic capacity of all fasteners, N.
    pub characteristic_n: f64,
    /// Design capacity R_d (2.17), N.
    pub design_n: f64,
}

/// Design value of a connection's capacity by service class, load duration and partial factor.
///
/// # Equation
/// ```text
/// R_d = n_ef k_mod R_k / γ_M      (2.17)      k_mod = √(k_mod,1 k_mod,2)      (2.6)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | R_k | characteristic capacity | N | `characteristic_n` |
/// | n_ef | effective number | – | `effective_number` |
/// | γ_M | partial factor | – | `gamma_m` |
///
/// # Limits
/// Steel parts have their own partial factors. Beside a steel plate give the timber for both materials.
///
/// # Errors
/// `out_of_range`, `not_finite`; `no_published_value` for a panel in a service class it is not made for.
///
/// # Source
/// EN 1995-1-1 2.4.3, Table 2.3, Table 3.1 (timber and OSB/3 seen, other panels and Eq. 2.6 recalled). Checked by
/// `verification/ec5_values`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::*;
/// let dowel = ec5_design_value(&Ec5DesignValueInput {
///     characteristic_n: 6_657.0, effective_number: 1.0, first_material: Ec5Material::Softwood,
///     second_material: Ec5Material::Softwood, service_class: Ec5ServiceClass::ServiceClass1,
///     load_duration: Ec5LoadDuration::ShortTerm, gamma_m: 1.3,
/// })?;
/// assert!((dowel.design_n - 4_609.0).abs() < 1.0);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn ec5_design_value(input: &Ec5DesignValueInput) -> Result<Ec5DesignValue, Fault> {
    input.check_ranges()?;
    let first_k_mod = kmod(input.first_material, input.service_class, input.load_duration)?;
    let second_k_mod = kmod(input.second_material, input.service_class, input.load_duration)?;
    let k_mod = joint_kmod(first_k_mod, second_k_mod);
    let characteristic_n = input.effective_number * input.characteristic_n;
    let design_n = k_mod * characteristic_n / input.gamma_m;
    Ok(Ec5DesignValue { first_k_mod, second_k_mod, k_mod, gamma_m: input.gamma_m, characteristic_n, design_n })
}

/// k_mod of a joint of two materials (2.6).
pub(in crate::fasten) fn joint_kmod(first: f64, second: f64) -> f64 {
    // The root of a square would miss the table's value by its last digit.
    if first == second { first } else { (first * second).sqrt() }
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const EC5_DESIGN_VALUE: crate::json::Calculation = crate::json::calculation!(
    ec5_design_value: Ec5DesignValueInput => Ec5DesignValue, Typed,
    "Eurocode 5: design value of a connection by service class, load duration and partial factor"
);
