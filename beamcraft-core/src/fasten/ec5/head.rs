//! What stops a fastener from being drawn through the member under its head.

use super::axial::smooth_head_mpa;
use crate::error::Fault;
use crate::limits::{Limited, limited};
use crate::numeric::real::pow;

/// Heads drawn into the member under them.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<Ec5HeadPullThroughInput>))]
pub struct Ec5HeadPullThroughInput {
    /// Diameter of the head or of the washer under it d_h, mm.
    pub head_diameter_mm: f64,
    /// Characteristic density of the member under the head, kg/m3.
    pub density_kg_m3: f64,
    /// Number of screws that act together; by default 1.
    #[cfg_attr(feature = "json", serde(default = "super::axial::one"))]
    pub count: u32,
    /// Declared pull-through strength f_head,k, MPa; left out that of smooth nails is used, a low value.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub declared_mpa: Option<f64>,
    /// Density that the declared strength belongs to, kg/m3; left out the strength holds for the wood as it is.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub declared_density_kg_m3: Option<f64>,
}

limited!(Ec5HeadPullThroughInput {
    head_diameter_mm: HEAD_DIAMETER,
    density_kg_m3: WOOD_DENSITY,
    count: COUNT,
    declared_mpa: STRESS,
    declared_density_kg_m3: WOOD_DENSITY
});

/// Characteristic pull-through capacity of heads.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Ec5HeadPullThrough {
    /// Pull-through strength f_head,k (8.26 or declared), MPa.
    pub head_mpa: f64,
    /// Factor for the density, (rho_k / rho_a)^0.8 (8.40b); 1 where it does not apply.
    pub density_factor: f64,
    /// Effective number n^0.9 (8.41).
    pub effective_number: f64,
    /// Capacity of one head, N.
    pub per_head_n: f64,
    /// Capacity of all together, N.
    pub capacity_n: f64,
}

/// Characteristic capacity of screw heads against being drawn through the member under them.
///
/// # Equation
/// ```text
/// F = n_ef f_head d_h² (ρ / ρ_a)^0.8      (8.40b)      n_ef = n^0.9      without a declared strength f_head = 70·10⁻⁶ ρ²
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | f_head, ρ_a | declared strength and its density | MPa, kg/m³ | `declared_mpa`, `declared_density_kg_m3` |
/// | d_h | head diameter | mm | `head_diameter_mm` |
/// | ρ | density under the head | kg/m³ | `density_kg_m3` |
///
/// # Limits
/// The standard wants a declared strength for screws; the value of smooth nails stands in for it, as some practice has
/// it, and is low.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// EN 1995-1-1 8.7.2(6), Eq. 8.40b; 8.3.2, Eq. 8.26 (seen). Checked by `verification/ec5_values`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::{Ec5HeadPullThroughInput, ec5_head_pull_through};
/// let head = ec5_head_pull_through(&Ec5HeadPullThroughInput {
///     head_diameter_mm: 10.0, density_kg_m3: 350.0, count: 1, declared_mpa: None, declared_density_kg_m3: None,
/// })?;
/// assert!((head.capacity_n - 857.5).abs() < 1e-9);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn ec5_head_pull_through(input: &Ec5HeadPullThroughInput) -> Result<Ec5HeadPullThrough, Fault> {
    input.check_ranges()?;
    let (head_mpa, density_factor) = match (input.declared_mpa, input.declared_density_kg_m3) {
        (Some(declared_mpa), Some(density)) => (declared_mpa, pow(input.density_kg_m3 / density, 0.8)),
        (Some(declared_mpa), None) => (declared_mpa, 1.0),
        (None, _) => (smooth_head_mpa(input.density_kg_m3), 1.0),
    };
    let effective_number = pow(f64::from(input.count), 0.9);
    let per_head_n = head_mpa * input.head_diameter_mm * input.head_diameter_mm * density_factor;
    let capacity_n = effective_number * per_head_n;
    Ok(Ec5HeadPullThrough { head_mpa, density_factor, effective_number, per_head_n, capacity_n })
}

/// What gives in when a bolt is pulled.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum Ec5WasherPart {
    /// The bolt's steel.
    Bolt,
    /// The wood under the washer.
    Washer,
}

/// A bolt pulled along its axis.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<Ec5WasherPullInput>))]
pub struct Ec5WasherPullInput {
    /// Tensile capacity of the bolt, N.
    pub bolt_tension_n: f64,
    /// Area of the washer that bears on the wood, hole taken off, mm2.
    pub washer_area_mm2: f64,
    /// Compressive strength of the wood across the grain f_c,90,k, MPa.
    pub compression_across_mpa: f64,
}

limited!(Ec5WasherPullInput { bolt_tension_n: FORCE, washer_area_mm2: WASHER_AREA, compression_across_mpa: STRESS });

/// Characteristic capacity of a bolt along its axis.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Ec5WasherPull {
    /// Capacity of the wood under the washer, N.
    pub washer_n: f64,
    /// What gives in first.
    pub governing_part: Ec5WasherPart,
    /// Capacity F_ax,Rk, N.
    pub capacity_n: f64,
}

/// Characteristic capacity of a bolt along its axis: its steel, or the wood under the washer.
///
/// # Equation
/// ```text
/// F_ax = min(bolt tension, 3 f_c,90 A)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | f_c,90 | compressive strength across the grain | MPa | `compression_across_mpa` |
/// | A | washer area | mm² | `washer_area_mm2` |
///
/// # Limits
/// A steel plate serves as washer with a circle of min(12 t, 4 d).
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// EN 1995-1-1 8.5.2 (seen). Checked by `verification/ec5_values`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::{Ec5WasherPullInput, ec5_washer_pull};
/// let input = Ec5WasherPullInput { bolt_tension_n: 60_000.0, washer_area_mm2: 1_675.0, compression_across_mpa: 2.7 };
/// assert!((ec5_washer_pull(&input)?.capacity_n - 13_567.5).abs() < 1e-9);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn ec5_washer_pull(input: &Ec5WasherPullInput) -> Result<Ec5WasherPull, Fault> {
    input.check_ranges()?;
    let washer_n = 3.0 * input.compression_across_mpa * input.washer_area_mm2;
    let (governing_part, capacity_n) =
        super::least((Ec5WasherPart::Bolt, input.bolt_tension_n), &[(Ec5WasherPart::Washer, washer_n)]);
    Ok(Ec5WasherPull { washer_n, governing_part, capacity_n })
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const EC5_HEAD_PULL_THROUGH: crate::json::Calculation = crate::json::calculation!(
    ec5_head_pull_through: Ec5HeadPullThroughInput => Ec5HeadPullThrough, Typed,
    "Eurocode 5: capacity of screw heads against being drawn through the member under them"
);

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const EC5_WASHER_PULL: crate::json::Calculation = crate::json::calculation!(
    ec5_washer_pull: Ec5WasherPullInput => Ec5WasherPull, Typed,
    "Eurocode 5: capacity of a bolt along its axis, its steel or the wood under the washer"
);
