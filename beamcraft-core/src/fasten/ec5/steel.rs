//! Joints of timber with steel plates.

use super::choice::Ec5Fastener;
use super::rope::with_rope;
use super::{EDGE_MM, least};
use crate::error::Fault;
use crate::limits::{Limited, limited};

/// How a steel plate holds the fastener.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum Ec5PlateClass {
    /// Thin, up to half the diameter: the fastener may turn in the hole.
    Thin,
    /// Between: interpolated.
    Between,
    /// Thick, the diameter and more with a tight hole: the fastener is clamped.
    Thick,
}

/// How much of the thick plate's value a plate is given: 0 thin, 1 thick.
fn thick_share(plate_mm: f64, diameter_mm: f64, hole_clearance_mm: f64) -> (Ec5PlateClass, f64) {
    // A loose hole cannot clamp the fastener, however thick the plate (8.2.3(1)).
    let loose = hole_clearance_mm >= 0.1 * diameter_mm;
    if loose || plate_mm <= 0.5 * diameter_mm + EDGE_MM {
        (Ec5PlateClass::Thin, 0.0)
    } else if plate_mm >= diameter_mm - EDGE_MM {
        (Ec5PlateClass::Thick, 1.0)
    } else {
        (Ec5PlateClass::Between, plate_mm / (0.5 * diameter_mm) - 1.0)
    }
}

/// What holds of thick and thin, mixed.
fn mixed(thin_n: f64, thick_n: f64, share: f64) -> f64 {
    thin_n * (1.0 - share) + thick_n * share
}

/// Turning in the timber, clamped in the steel: f_h t d [√(2 + 4 M_y / (f_h d t²)) − 1], without loss of digits.
pub(super) fn turn_clamped(q: f64, t_mm: f64, moment_nmm: f64) -> f64 {
    let slenderness = moment_nmm / (q * t_mm * t_mm);
    q * t_mm * (1.0 + 4.0 * slenderness) / ((2.0 + 4.0 * slenderness).sqrt() + 1.0)
}

/// Factor of the modes with two hinges; with the root of 4 it makes the 2.3 of the standard.
const TWO_HINGES: f64 = 1.15;

/// Mode of a single-shear joint of timber and a steel plate.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum Ec5SteelMode {
    /// Mode a, thin plate: the fastener turns in the timber.
    A,
    /// Mode b, thin plate: one hinge in the timber.
    B,
    /// Mode c, thick plate: the timber is crushed along its whole thickness.
    C,
    /// Mode d, thick plate: the fastener turns in the timber, hinge at the plate.
    D,
    /// Mode e, thick plate: hinges in the timber and at the plate.
    E,
}

/// A fastener through a steel plate into timber.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<Ec5SteelSingleShearInput>))]
pub struct Ec5SteelSingleShearInput {
    /// Kind of fastener; limits the rope effect.
    pub fastener: Ec5Fastener,
    /// Diameter, for screws the effective one, mm.
    pub diameter_mm: f64,
    /// Characteristic yield moment M_y,Rk, N·mm.
    pub yield_moment_nmm: f64,
    /// Embedment strength of the timber f_h,k at the angle of the force, MPa.
    pub embedment_mpa: f64,
    /// Thickness of the timber or penetration into it t_1, mm.
    pub timber_mm: f64,
    /// Thickness of the plate, mm.
    pub plate_mm: f64,
    /// Hole diameter less fastener diameter, mm; from a tenth of the diameter on the plate counts as thin.
    pub hole_clearance_mm: f64,
    /// Characteristic capacity along the axis F_ax,Rk, N; by default 0, no rope effect.
    #[cfg_attr(feature = "json", serde(default))]
    pub axial_capacity_n: f64,
}

limited!(Ec5SteelSingleShearInput {
    diameter_mm: FASTENER_DIAMETER,
    yield_moment_nmm: YIELD_MOMENT,
    embedment_mpa: STRESS,
    timber_mm: BEARING_LENGTH,
    plate_mm: PLATE_THICKNESS,
    hole_clearance_mm: SMALL_LENGTH,
    axial_capacity_n: FORCE
});

/// Characteristic lateral capacity of one fastener between a steel plate and timber, every mode shown.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Ec5SteelSingleShear {
    /// How the plate holds the fastener (8.2.3(1)).
    pub plate_class: Ec5PlateClass,
    /// Share of the thick plate's value in the result, 0 to 1.
    pub thick_share: f64,
    /// Mode a, thin plate (8.9), N.
    pub a_n: f64,
    /// Mode b, thin plate, with rope effect (8.9), N.
    pub b_n: f64,
    /// Mode c, thick plate (8.10), N.
    pub c_n: f64,
    /// Mode d, thick plate, with rope effect (8.10), N.
    pub d_n: f64,
    /// Mode e, thick plate, with rope effect (8.10), N.
    pub e_n: f64,
    /// Governing mode if the plate were thin.
    pub thin_mode: Ec5SteelMode,
    /// Capacity if the plate were thin, N.
    pub thin_n: f64,
    /// Governing mode if the plate were thick.
    pub thick_mode: Ec5SteelMode,
    /// Capacity if the plate were thick, N.
    pub thick_n: f64,
    /// Characteristic lateral capacity F_v,Rk of this plate, N.
    pub capacity_n: f64,
}

/// Characteristic lateral capacity of a fastener between a steel plate and timber in single shear.
///
/// # Equation
/// ```text
/// thin (t_s ≤ d/2):   a  0.4 f_h t_1 d        b  1.15 √(2 M_y f_h d) + rope
/// thick (t_s ≥ d):    c  f_h t_1 d            d  f_h t_1 d [√(2 + 4 M_y / (f_h d t_1²)) − 1] + rope
///                     e  2.3 √(M_y f_h d) + rope
/// between: linear between the two least values        rope = min(F_ax / 4, cap × Johansen part)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | f_h, t_1 | embedment strength, thickness of the timber | MPa, mm | `embedment_mpa`, `timber_mm` |
/// | t_s | plate thickness | mm | `plate_mm` |
/// | d, M_y | diameter, yield moment | mm, N·mm | `diameter_mm`, `yield_moment_nmm` |
///
/// # Limits
/// The plate itself is checked to the rules for steel, a loaded end also for block shear (Annex A). Printings of the
/// standard differ in the letters c to e.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// EN 1995-1-1 8.2.3, Eq. 8.9 and 8.10 (seen; that a clearance of 0.1 d makes a plate thin is recalled). Checked by
/// `verification/ec5_shear`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::*;
/// let dowel = ec5_steel_single_shear(&Ec5SteelSingleShearInput {
///     fastener: Ec5Fastener::Dowel, diameter_mm: 12.0, yield_moment_nmm: 76_745.0, embedment_mpa: 28.9,
///     timber_mm: 40.0, plate_mm: 12.0, hole_clearance_mm: 1.0, axial_capacity_n: 0.0,
/// })?;
/// assert_eq!(dowel.thick_mode, Ec5SteelMode::D);
/// assert!((dowel.capacity_n - 8_294.0).abs() < 1.0);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn ec5_steel_single_shear(input: &Ec5SteelSingleShearInput) -> Result<Ec5SteelSingleShear, Fault> {
    input.check_ranges()?;
    use Ec5SteelMode as Mode;
    let (q, t_mm, moment_nmm) = (input.embedment_mpa * input.diameter_mm, input.timber_mm, input.yield_moment_nmm);
    let roped = |johansen_n| with_rope(johansen_n, input.axial_capacity_n, input.fastener.rope_cap());
    let a_n = 0.4 * q * t_mm;
    let b_n = roped(TWO_HINGES * (2.0 * moment_nmm * q).sqrt());
    let c_n = q * t_mm;
    let d_n = roped(turn_clamped(q, t_mm, moment_nmm));
    let e_n = roped(2.0 * TWO_HINGES * (moment_nmm * q).sqrt());
    let (thin_mode, thin_n) = least((Mode::A, a_n), &[(Mode::B, b_n)]);
    let (thick_mode, thick_n) = least((Mode::C, c_n), &[(Mode::D, d_n), (Mode::E, e_n)]);
    let (plate_class, thick_share) = thick_share(input.plate_mm, input.diameter_mm, input.hole_clearance_mm);
    let capacity_n = mixed(thin_n, thick_n, thick_share);
    Ok(Ec5SteelSingleShear {
        plate_class,
        thick_share,
        a_n,
        b_n,
        c_n,
        d_n,
        e_n,
        thin_mode,
        thin_n,
        thick_mode,
        thick_n,
        capacity_n,
    })
}

/// Mode of a joint with a steel plate in the middle.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum Ec5SteelCentralMode {
    /// Mode f: the timber is crushed along its whole thickness.
    F,
    /// Mode g: the fastener turns in the timber, hinge at the plate.
    G,
    /// Mode h: hinges in the timber and at the plate.
    H,
}

/// A fastener through two timber members with a steel plate between them.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<Ec5SteelCentralPlateInput>))]
pub struct Ec5SteelCentralPlateInput {
    /// Kind of fastener; limits the rope effect.
    pub fastener: Ec5Fastener,
    /// Diameter, for screws the effective one, mm.
    pub diameter_mm: f64,
    /// Characteristic yield moment M_y,Rk, N·mm.
    pub yield_moment_nmm: f64,
    /// Embedment strength of the timber f_h,1,k at the angle of the force, MPa.
    pub embedment_mpa: f64,
    /// Thickness of the thinner timber member t_1, mm.
    pub timber_mm: f64,
    /// Characteristic capacity along the axis F_ax,Rk, N; by default 0, no rope effect.
    #[cfg_attr(feature = "json", serde(default))]
    pub axial_capacity_n: f64,
}

limited!(Ec5SteelCentralPlateInput {
    diameter_mm: FASTENER_DIAMETER,
    yield_moment_nmm: YIELD_MOMENT,
    embedment_mpa: STRESS,
    timber_mm: BEARING_LENGTH,
    axial_capacity_n: FORCE
});

/// Characteristic lateral capacity per shear plane of one fastener through a steel plate in the middle.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Ec5SteelCentralPlate {
    /// Mode f per shear plane (8.11), N.
    pub f_n: f64,
    /// Mode g per shear plane with rope effect (8.11), N.
    pub g_n: f64,
    /// Mode h per shear plane with rope effect (8.11), N.
    pub h_n: f64,
    /// Mode with the least capacity.
    pub governing_mode: Ec5SteelCentralMode,
    /// Characteristic lateral capacity F_v,Rk per shear plane, N.
    pub per_plane_n: f64,
    /// Both shear planes together, N.
    pub capacity_n: f64,
}

/// Characteristic lateral capacity of a fastener through two timber members with a steel plate between them.
///
/// # Equation
/// ```text
/// f  f_h t_1 d        g  f_h t_1 d [√(2 + 4 M_y / (f_h d t_1²)) − 1] + rope        h  2.3 √(M_y f_h d) + rope
/// ```
/// Symbols as in [`ec5_steel_single_shear`]; per shear plane, for a plate of any thickness.
///
/// # Limits
/// The plate itself is checked to the rules for steel, a loaded end also for block shear (Annex A).
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// EN 1995-1-1 8.2.3, Eq. 8.11 (seen). Checked by `verification/ec5_shear`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::*;
/// let dowel = ec5_steel_central_plate(&Ec5SteelCentralPlateInput {
///     fastener: Ec5Fastener::Dowel, diameter_mm: 12.0, yield_moment_nmm: 76_745.0, embedment_mpa: 28.9,
///     timber_mm: 40.0, axial_capacity_n: 0.0,
/// })?;
/// assert_eq!(dowel.governing_mode, Ec5SteelCentralMode::G);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn ec5_steel_central_plate(input: &Ec5SteelCentralPlateInput) -> Result<Ec5SteelCentralPlate, Fault> {
    input.check_ranges()?;
    use Ec5SteelCentralMode as Mode;
    let (q, t_mm, moment_nmm) = (input.embedment_mpa * input.diameter_mm, input.timber_mm, input.yield_moment_nmm);
    let roped = |johansen_n| with_rope(johansen_n, input.axial_capacity_n, input.fastener.rope_cap());
    let f_n = q * t_mm;
    let g_n = roped(turn_clamped(q, t_mm, moment_nmm));
    let h_n = roped(2.0 * TWO_HINGES * (moment_nmm * q).sqrt());
    let (governing_mode, per_plane_n) = least((Mode::F, f_n), &[(Mode::G, g_n), (Mode::H, h_n)]);
    Ok(Ec5SteelCentralPlate { f_n, g_n, h_n, governing_mode, per_plane_n, capacity_n: 2.0 * per_plane_n })
}

/// Mode of a timber member between two steel plates.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum Ec5SteelOuterMode {
    /// Mode j, thin plates: the timber is crushed along its whole thickness.
    J,
    /// Mode k, thin plates: hinges in the timber.
    K,
    /// Mode l, thick plates: the timber is crushed along its whole thickness.
    L,
    /// Mode m, thick plates: hinges in the timber and at the plates.
    M,
}

/// A fastener through a timber member between two steel plates.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<Ec5SteelOuterPlatesInput>))]
pub struct Ec5SteelOuterPlatesInput {
    /// Kind of fastener; limits the rope effect.
    pub fastener: Ec5Fastener,
    /// Diameter, for screws the effective one, mm.
    pub diameter_mm: f64,
    /// Characteristic yield moment M_y,Rk, N·mm.
    pub yield_moment_nmm: f64,
    /// Embedment strength of the timber f_h,2,k at the angle of the force, MPa.
    pub embedment_mpa: f64,
    /// Thickness of the timber t_2, mm.
    pub timber_mm: f64,
    /// Thickness of a plate, mm.
    pub plate_mm: f64,
    /// Hole diameter less fastener diameter, mm; from a tenth of the diameter on the plates count as thin.
    pub hole_clearance_mm: f64,
    /// Characteristic capacity along the axis F_ax,Rk, N; by default 0, no rope effect.
    #[cfg_attr(feature = "json", serde(default))]
    pub axial_capacity_n: f64,
}

limited!(Ec5SteelOuterPlatesInput {
    diameter_mm: FASTENER_DIAMETER,
    yield_moment_nmm: YIELD_MOMENT,
    embedment_mpa: STRESS,
    timber_mm: BEARING_LENGTH,
    plate_mm: PLATE_THICKNESS,
    hole_clearance_mm: SMALL_LENGTH,
    axial_capacity_n: FORCE
});

/// Characteristic lateral capacity per shear plane of one fastener through timber between two steel plates.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Ec5SteelOuterPlates {
    /// How the plates hold the fastener (8.2.3(1)).
    pub plate_class: Ec5PlateClass,
    /// Share of the thick plates' value in the result, 0 to 1.
    pub thick_share: f64,
    /// Modes j and l, bearing of the timber, per shear plane (8.12, 8.13), N.
    pub j_l_n: f64,
    /// Mode k, thin plates, per shear plane with rope effect (8.12), N.
    pub k_n: f64,
    /// Mode m, thick plates, per shear plane with rope effect (8.13), N.
    pub m_n: f64,
    /// Governing mode if the plates were thin.
    pub thin_mode: Ec5SteelOuterMode,
    /// Capacity per shear plane if the plates were thin, N.
    pub thin_n: f64,
    /// Governing mode if the plates were thick.
    pub thick_mode: Ec5SteelOuterMode,
    /// Capacity per shear plane if the plates were thick, N.
    pub thick_n: f64,
    /// Characteristic lateral capacity F_v,Rk per shear plane of these plates, N.
    pub per_plane_n: f64,
    /// Both shear planes together, N.
    pub capacity_n: f64,
}

/// Characteristic lateral capacity of a fastener through a timber member between two steel plates.
///
/// # Equation
/// ```text
/// thin (t_s ≤ d/2):   j  0.5 f_h t_2 d        k  1.15 √(2 M_y f_h d) + rope
/// thick (t_s ≥ d):    l  0.5 f_h t_2 d        m  2.3 √(M_y f_h d) + rope
/// between: linear between the two least values; per shear plane
/// ```
/// Symbols as in [`ec5_steel_single_shear`]; t_2 is the thickness of the timber between the plates.
///
/// # Limits
/// The plates themselves are checked to the rules for steel, a loaded end also for block shear (Annex A).
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// EN 1995-1-1 8.2.3, Eq. 8.12 and 8.13 (seen). Checked by `verification/ec5_shear`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::*;
/// let dowel = ec5_steel_outer_plates(&Ec5SteelOuterPlatesInput {
///     fastener: Ec5Fastener::Dowel, diameter_mm: 12.0, yield_moment_nmm: 76_745.0, embedment_mpa: 28.9,
///     timber_mm: 71.0, plate_mm: 12.0, hole_clearance_mm: 1.0, axial_capacity_n: 0.0,
/// })?;
/// assert_eq!(dowel.thick_mode, Ec5SteelOuterMode::M);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn ec5_steel_outer_plates(input: &Ec5SteelOuterPlatesInput) -> Result<Ec5SteelOuterPlates, Fault> {
    input.check_ranges()?;
    use Ec5SteelOuterMode as Mode;
    let (q, moment_nmm) = (input.embedment_mpa * input.diameter_mm, input.yield_moment_nmm);
    let roped = |johansen_n| with_rope(johansen_n, input.axial_capacity_n, input.fastener.rope_cap());
    let j_l_n = 0.5 * q * input.timber_mm;
    let k_n = roped(TWO_HINGES * (2.0 * moment_nmm * q).sqrt());
    let m_n = roped(2.0 * TWO_HINGES * (moment_nmm * q).sqrt());
    let (thin_mode, thin_n) = least((Mode::J, j_l_n), &[(Mode::K, k_n)]);
    let (thick_mode, thick_n) = least((Mode::L, j_l_n), &[(Mode::M, m_n)]);
    let (plate_class, thick_share) = thick_share(input.plate_mm, input.diameter_mm, input.hole_clearance_mm);
    let per_plane_n = mixed(thin_n, thick_n, thick_share);
    Ok(Ec5SteelOuterPlates {
        plate_class,
        thick_share,
        j_l_n,
        k_n,
        m_n,
        thin_mode,
        thin_n,
        thick_mode,
        thick_n,
        per_plane_n,
        capacity_n: 2.0 * per_plane_n,
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const EC5_STEEL_SINGLE_SHEAR: crate::json::Calculation = crate::json::calculation!(
    ec5_steel_single_shear: Ec5SteelSingleShearInput => Ec5SteelSingleShear, Typed,
    "Eurocode 5: lateral capacity of a fastener between a steel plate and timber, thin or thick"
);

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const EC5_STEEL_CENTRAL_PLATE: crate::json::Calculation = crate::json::calculation!(
    ec5_steel_central_plate: Ec5SteelCentralPlateInput => Ec5SteelCentralPlate, Typed,
    "Eurocode 5: lateral capacity of a fastener through two timber members with a steel plate between them"
);

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const EC5_STEEL_OUTER_PLATES: crate::json::Calculation = crate::json::calculation!(
    ec5_steel_outer_plates: Ec5SteelOuterPlatesInput => Ec5SteelOuterPlates, Typed,
    "Eurocode 5: lateral capacity of a fastener through timber between two steel plates"
);
