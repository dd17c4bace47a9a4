//! The simplified method of the German national annex for dowels.

use super::choice::Ec5Fastener;
use super::embedment::at_angle;
use super::moment::{Ec5YieldMomentInput, ec5_yield_moment};
use crate::error::Fault;
use crate::limits::{Limited, limited};

/// A steel dowel in softwood.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<Ec5GermanDowelInput>))]
pub struct Ec5GermanDowelInput {
    /// Diameter, mm.
    pub diameter_mm: f64,
    /// Tensile strength of the steel f_u,k, MPa; 360 for S235.
    pub tensile_strength_mpa: f64,
    /// Characteristic density of the side members, also of timber beside steel, kg/m3.
    pub side_density_kg_m3: f64,
    /// Angle between force and grain in the side members, degrees.
    pub side_angle_to_grain_deg: f64,
    /// Characteristic density of the middle or other member, kg/m3.
    pub main_density_kg_m3: f64,
    /// Angle between force and grain in the middle or other member, degrees.
    pub main_angle_to_grain_deg: f64,
}

limited!(Ec5GermanDowelInput {
    diameter_mm: FASTENER_DIAMETER,
    tensile_strength_mpa: STRESS,
    side_density_kg_m3: WOOD_DENSITY,
    side_angle_to_grain_deg: ANGLE_TO_GRAIN,
    main_density_kg_m3: WOOD_DENSITY,
    main_angle_to_grain_deg: ANGLE_TO_GRAIN
});

/// Capacities of a dowel by the simplified method, with the thicknesses they need.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Ec5GermanDowel {
    /// Yield moment, N·mm.
    pub yield_moment_nmm: f64,
    /// Embedment strength of the side members, MPa.
    pub side_mpa: f64,
    /// Embedment strength of the middle or other member, MPa.
    pub main_mpa: f64,
    /// Timber to timber: capacity F_v,Rk per shear plane, N.
    pub timber_n: f64,
    /// Timber to timber: thickness needed of a side member, mm.
    pub side_needed_mm: f64,
    /// Timber to timber, single shear: thickness needed of the other member, mm.
    pub other_needed_mm: f64,
    /// Timber to timber, double shear: thickness needed of the middle member, mm.
    pub middle_needed_mm: f64,
    /// The same for a side member, rounded up as tables print it, mm.
    pub side_needed_whole_mm: f64,
    /// The same for the other member in single shear, rounded up, mm.
    pub other_needed_whole_mm: f64,
    /// The same for the middle member, rounded up, mm.
    pub middle_needed_whole_mm: f64,
    /// Side timber with thick steel plates or a steel plate in a slot: capacity per shear plane, N.
    pub steel_thick_n: f64,
    /// Thickness of the timber needed for it, rounded up, mm.
    pub steel_thick_needed_whole_mm: f64,
    /// Side timber with thin steel plates: capacity per shear plane, N.
    pub steel_thin_n: f64,
    /// Thickness of the timber needed for it in single shear, rounded up, mm.
    pub steel_thin_needed_whole_mm: f64,
    /// Thickness needed of timber between two thin steel plates, rounded up, mm.
    pub steel_thin_middle_needed_whole_mm: f64,
}

/// Capacity of a steel dowel in softwood by the simplified method of the German national annex.
///
/// # Equation
/// ```text
/// m_i = √(M_y / (f_h,i d))      β = f_h2 / f_h1      M_y, f_h as in the standard itself
/// timber to timber   F = √(2 β / (1 + β)) √(2 M_y f_h1 d)
///                    t_1 ≥ 1.15 (2 √(β / (1 + β)) + 2) m_1     other t_2 ≥ 1.15 (2 / √(1 + β) + 2) m_2
///                    middle t_2 ≥ 1.15 · 4 / √(1 + β) · m_2
/// steel, thick       F = √2 √(2 M_y f_h1 d)     t ≥ 1.15 · 4 m_1
/// steel, thin        F = √(2 M_y f_h1 d)        t ≥ 1.15 (2 + √2) m_1      between two plates t ≥ 1.15 · 2 √2 m_1
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | d | diameter | mm | `diameter_mm` |
/// | f_h1, f_h2 | embedment strength of side and main member | MPa | `side_mpa`, `main_mpa` |
/// | M_y | yield moment | N·mm | `yield_moment_nmm` |
///
/// # Limits
/// Germany; softwood; γ_M is 1.1 with this method. Where a member is thinner than needed the capacity is scaled by its
/// thickness over the needed one, the smaller ratio of both. Bolts may add a rope effect.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// DIN EN 1995-1-1/NA, NCI to 8.2 (recalled; it reproduces 325 of 343 tabulated capacities and all tabulated thicknesses
/// of a German handbook, the others differ in their last printed figure). Checked by `verification/ec5_german`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::{Ec5GermanDowelInput, ec5_german_dowel};
/// let dowel = ec5_german_dowel(&Ec5GermanDowelInput {
///     diameter_mm: 10.0, tensile_strength_mpa: 360.0, side_density_kg_m3: 350.0, side_angle_to_grain_deg: 0.0,
///     main_density_kg_m3: 350.0, main_angle_to_grain_deg: 0.0,
/// })?;
/// assert!((dowel.timber_n - 4_710.0).abs() < 5.0);
/// assert_eq!(dowel.side_needed_whole_mm, 51.0);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn ec5_german_dowel(input: &Ec5GermanDowelInput) -> Result<Ec5GermanDowel, Fault> {
    input.check_ranges()?;
    let d = input.diameter_mm;
    let moment = Ec5YieldMomentInput {
        fastener: Ec5Fastener::Dowel,
        diameter_mm: d,
        tensile_strength_mpa: input.tensile_strength_mpa,
    };
    let yield_moment_nmm = ec5_yield_moment(&moment)?.yield_moment_nmm;
    let strength = |density, angle_deg| at_angle(0.082 * (1.0 - 0.01 * d) * density, 1.35 + 0.015 * d, angle_deg);
    let side_mpa = strength(input.side_density_kg_m3, input.side_angle_to_grain_deg);
    let main_mpa = strength(input.main_density_kg_m3, input.main_angle_to_grain_deg);
    let beta = main_mpa / side_mpa;
    let two_hinges_n = (2.0 * yield_moment_nmm * side_mpa * d).sqrt();
    let (side_mm, main_mm) = ((yield_moment_nmm / (side_mpa * d)).sqrt(), (yield_moment_nmm / (main_mpa * d)).sqrt());
    let side_needed_mm = 1.15 * (2.0 * (beta / (1.0 + beta)).sqrt() + 2.0) * side_mm;
    let other_needed_mm = 1.15 * (2.0 / (1.0 + beta).sqrt() + 2.0) * main_mm;
    let middle_needed_mm = 1.15 * 4.0 / (1.0 + beta).sqrt() * main_mm;
    let root_2 = core::f64::consts::SQRT_2;
    Ok(Ec5GermanDowel {
        yield_moment_nmm,
        side_mpa,
        main_mpa,
        timber_n: (2.0 * beta / (1.0 + beta)).sqrt() * two_hinges_n,
        side_needed_mm,
        other_needed_mm,
        middle_needed_mm,
        side_needed_whole_mm: side_needed_mm.ceil(),
        other_needed_whole_mm: other_needed_mm.ceil(),
        middle_needed_whole_mm: middle_needed_mm.ceil(),
        steel_thick_n: root_2 * two_hinges_n,
        steel_thick_needed_whole_mm: (1.15 * 4.0 * side_mm).ceil(),
        steel_thin_n: two_hinges_n,
        steel_thin_needed_whole_mm: (1.15 * (2.0 + root_2) * side_mm).ceil(),
        steel_thin_middle_needed_whole_mm: (1.15 * 2.0 * root_2 * side_mm).ceil(),
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const EC5_GERMAN_DOWEL: crate::json::Calculation = crate::json::calculation!(
    ec5_german_dowel: Ec5GermanDowelInput => Ec5GermanDowel, Typed,
    "Eurocode 5, German annex: capacity of a steel dowel by the simplified method and the thicknesses it needs"
);
