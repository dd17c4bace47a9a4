//! Lateral capacity of one dowel through a main member between two equal side members.

use super::EDGE_MM;
use super::lateral::{DowelShearInput, ReductionRule, shear};
use crate::error::{Allowed, ErrorCode, Fault};
use crate::limits::{Limited, limited};

/// The way in which a dowel joint in double shear gives in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum DoubleShearMode {
    /// Mode I_m: the main member is crushed along its whole bearing length.
    Im,
    /// Mode I_s: both side members are crushed along their whole bearing length.
    Is,
    /// Mode III_s: the dowel turns in the side members and bends at a hinge for each of them in the main member.
    Iiis,
    /// Mode IV: the dowel bends at two hinges in each shear plane.
    Iv,
}

/// A dowel through a main member between two equal side members.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<DowelDoubleShearInput>))]
pub struct DowelDoubleShearInput {
    /// Diameter in the yield equations (NDS 12.3.7): the thread root where threads bear, else the full shank, mm.
    pub yield_diameter_mm: f64,
    /// Nominal diameter, mm; left out it is the yield diameter, as for nails and bolts.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub nominal_diameter_mm: Option<f64>,
    /// Bending yield strength of the dowel, MPa.
    pub bending_yield_mpa: f64,
    /// Dowel bearing strength of the main member at the angle of the load, MPa.
    pub main_bearing_mpa: f64,
    /// Dowel bearing strength of the side members at the angle of the load, MPa.
    pub side_bearing_mpa: f64,
    /// Bearing length in the main member, which the dowel crosses whole, mm.
    pub main_length_mm: f64,
    /// Bearing length in each side member; of unequal ones the lesser, mm.
    pub side_length_mm: f64,
    /// Gap in each shear plane, mm; by default the members touch.
    #[cfg_attr(feature = "json", serde(default))]
    pub gap_mm: f64,
    /// Largest angle between the load and the grain of any member, degrees.
    pub max_angle_to_grain_deg: f64,
}

limited!(DowelDoubleShearInput {
    yield_diameter_mm: FASTENER_DIAMETER,
    nominal_diameter_mm: FASTENER_DIAMETER,
    bending_yield_mpa: STRESS,
    main_bearing_mpa: STRESS,
    side_bearing_mpa: STRESS,
    main_length_mm: BEARING_LENGTH,
    side_length_mm: BEARING_LENGTH,
    gap_mm: SMALL_LENGTH,
    max_angle_to_grain_deg: ANGLE_TO_GRAIN
});

/// Lateral capacity of one dowel in double shear, every mode shown; loads of both shear planes together.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct DowelDoubleShear {
    /// Row of the table of reduction terms (NDS Table 12.3.1B).
    pub reduction_rule: ReductionRule,
    /// Factor K_D for small diameters; 1 where the table does not use it.
    pub k_d: f64,
    /// Factor K_theta for the angle to the grain; 1 where the table does not use it.
    pub k_theta: f64,
    /// Reduction term R_d of the modes I.
    pub reduction_i: f64,
    /// Reduction term R_d of the modes III and IV.
    pub reduction_iii_iv: f64,
    /// Yield load of mode I_m, before reduction (NDS Eq. 12.3-7), N.
    pub im_yield_n: f64,
    /// Yield load of mode I_s, before reduction (NDS Eq. 12.3-8), N.
    pub is_yield_n: f64,
    /// Yield load of mode III_s, before reduction (NDS Eq. 12.3-9; TR12 Table 1-1), N.
    pub iiis_yield_n: f64,
    /// Yield load of mode IV, before reduction (NDS Eq. 12.3-10; TR12 Table 1-1), N.
    pub iv_yield_n: f64,
    /// Reference design value of mode I_m, N.
    pub im_n: f64,
    /// Reference design value of mode I_s, N.
    pub is_n: f64,
    /// Reference design value of mode III_s, N.
    pub iiis_n: f64,
    /// Reference design value of mode IV, N.
    pub iv_n: f64,
    /// Mode with the least reference design value.
    pub governing_mode: DoubleShearMode,
    /// Reference lateral design value Z of both planes: the least of the modes, before any adjustment factor, N.
    pub reference_n: f64,
}

/// Lateral capacity of one dowel in double shear, with or without gaps beside the main member.
///
/// # Equation
/// ```text
/// q = F_e D_y per member      I_m: P = q_m l_m      I_s: P = 2 q_s l_s
/// III_s, IV: twice the single-shear yield load of `dowel_shear`      Z = min over the modes of P / R_d
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | D_y, D | yield diameter, nominal diameter | mm | `yield_diameter_mm`, `nominal_diameter_mm` |
/// | F_e, l | bearing strength, bearing length of a member | MPa, mm | `main_…`, `side_…` |
/// | g | gap in each plane | mm | `gap_mm` |
///
/// The modes II and III_m cannot form: the dowel is held on both sides of the main member.
///
/// # Limits
/// Symmetrical joints; for unequal side members the lesser length and strength give the careful value (NDS 12.3.8). Load
/// across the dowel's axis, allowable-stress values at normal load duration. Spacing, edge and end distances are the
/// user's to keep. See the caution of the module.
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` when the yield diameter exceeds the nominal one.
///
/// # Source
/// NDS 2018 Table 12.3.1A, Eq. 12.3-7 to 12.3-10, Table 12.3.1B (seen); AWC TR12 Table 1-1 for the gap (recalled).
/// Checked by `verification/nds_double_shear`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::{DoubleShearMode, DowelDoubleShearInput, dowel_double_shear};
/// // A half-inch bolt through three pieces of 1 1/2 in, G 0.50, along the grain (NDS Table 12F: 1050 lbf).
/// let bolt = dowel_double_shear(&DowelDoubleShearInput {
///     yield_diameter_mm: 12.7,
///     nominal_diameter_mm: None,
///     bending_yield_mpa: 310.26,
///     main_bearing_mpa: 38.61,
///     side_bearing_mpa: 38.61,
///     main_length_mm: 38.1,
///     side_length_mm: 38.1,
///     gap_mm: 0.0,
///     max_angle_to_grain_deg: 0.0,
/// })?;
/// assert_eq!(bolt.governing_mode, DoubleShearMode::Im);
/// assert!((bolt.reference_n / 4.44822 - 1050.0).abs() < 1.0); // lbf
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn dowel_double_shear(input: &DowelDoubleShearInput) -> Result<DowelDoubleShear, Fault> {
    input.check_ranges()?;
    if let Some(nominal_mm) = input.nominal_diameter_mm
        && input.yield_diameter_mm > nominal_mm + EDGE_MM
    {
        return Err(Fault::number(
            ErrorCode::Inconsistent,
            "yield_diameter_mm",
            input.yield_diameter_mm,
            Allowed::Text("at most the nominal diameter"),
            "give the root or the shank diameter",
        ));
    }
    let plane = DowelShearInput {
        yield_diameter_mm: input.yield_diameter_mm,
        nominal_diameter_mm: input.nominal_diameter_mm,
        bending_yield_mpa: input.bending_yield_mpa,
        main_bearing_mpa: input.main_bearing_mpa,
        side_bearing_mpa: input.side_bearing_mpa,
        main_length_mm: input.main_length_mm,
        side_length_mm: input.side_length_mm,
        gap_mm: input.gap_mm,
        max_angle_to_grain_deg: input.max_angle_to_grain_deg,
    };
    let single = shear(&plane);
    let (im_yield_n, is_yield_n) = (single.im_yield_n, 2.0 * single.is_yield_n);
    let (iiis_yield_n, iv_yield_n) = (2.0 * single.iiis_yield_n, 2.0 * single.iv_yield_n);
    let modes = [
        (DoubleShearMode::Im, single.im_n),
        (DoubleShearMode::Is, 2.0 * single.is_n),
        (DoubleShearMode::Iiis, 2.0 * single.iiis_n),
        (DoubleShearMode::Iv, 2.0 * single.iv_n),
    ];
    let [(_, im_n), (_, is_n), (_, iiis_n), (_, iv_n)] = modes;
    let least =
        |least: (DoubleShearMode, f64), mode: (DoubleShearMode, f64)| if mode.1 < least.1 { mode } else { least };
    let (governing_mode, reference_n) = modes.into_iter().fold((DoubleShearMode::Im, im_n), least);
    Ok(DowelDoubleShear {
        reduction_rule: single.reduction_rule,
        k_d: single.k_d,
        k_theta: single.k_theta,
        reduction_i: single.reduction_i,
        reduction_iii_iv: single.reduction_iii_iv,
        im_yield_n,
        is_yield_n,
        iiis_yield_n,
        iv_yield_n,
        im_n,
        is_n,
        iiis_n,
        iv_n,
        governing_mode,
        reference_n,
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const DOWEL_DOUBLE_SHEAR: crate::json::Calculation = crate::json::calculation!(
    dowel_double_shear: DowelDoubleShearInput => DowelDoubleShear, Typed,
    "Lateral capacity of one dowel in double shear by every yield mode, with or without gaps"
);

#[cfg(test)]
#[path = "double_shear_tests.rs"]
mod tests;
