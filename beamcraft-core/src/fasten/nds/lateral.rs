//! Lateral capacity of one dowel between two members, with or without a gap.

use super::{EDGE_MM, is_quarter_inch};
#[cfg(feature = "json")]
use crate::columns::{lane_choice, lanes};
use crate::error::{Allowed, ErrorCode, Fault};
use crate::limits::{Limited, limited};
use crate::units::factor::INCH_MM;

/// The way in which a dowel joint in single shear gives in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum YieldMode {
    /// Mode I_m: the main member is crushed along its whole bearing length.
    Im,
    /// Mode I_s: the side member is crushed along its whole bearing length.
    Is,
    /// Mode II: the dowel stays straight and turns in both members.
    Ii,
    /// Mode III_m: the dowel turns in the main member and bends at one hinge in the side member.
    Iiim,
    /// Mode III_s: the dowel turns in the side member and bends at one hinge in the main member.
    Iiis,
    /// Mode IV: the dowel bends at two hinges, one in each member.
    Iv,
}

impl YieldMode {
    /// The mode in words, for a verdict.
    pub const fn words(self) -> &'static str {
        match self {
            YieldMode::Im => "I_m, bearing of the main member",
            YieldMode::Is => "I_s, bearing of the side member",
            YieldMode::Ii => "II, dowel turns in both members",
            YieldMode::Iiim => "III_m, dowel turns in the main member, one hinge in the side member",
            YieldMode::Iiis => "III_s, dowel turns in the side member, one hinge in the main member",
            YieldMode::Iv => "IV, one hinge in each member",
        }
    }
}

/// Which row of the table of reduction terms applies.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum ReductionRule {
    /// Below 1/4 in: K_D in every mode.
    BelowQuarterInch,
    /// Thread of 1/4 in and more nominal, root below 1/4 in: K_D K_θ in every mode (note 1).
    SmallRootOfLargeThread,
    /// 1/4 in to 1 in: 4, 3.6 and 3.2 times K_θ by mode.
    QuarterInchAndMore,
}

/// A dowel through a side member into a main member.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<DowelShearInput>))]
pub struct DowelShearInput {
    /// Diameter in the yield equations (NDS 12.3.7): the thread root where threads bear, else the full shank, mm.
    pub yield_diameter_mm: f64,
    /// Nominal diameter, mm; left out it is the yield diameter, as for nails and bolts.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub nominal_diameter_mm: Option<f64>,
    /// Bending yield strength of the dowel, MPa.
    pub bending_yield_mpa: f64,
    /// Dowel bearing strength of the main member at the angle of the load, MPa.
    pub main_bearing_mpa: f64,
    /// Dowel bearing strength of the side member at the angle of the load, MPa.
    pub side_bearing_mpa: f64,
    /// Bearing length in the main member, mm; half the tapered tip taken off where it counts (NDS 12.3.5.3).
    pub main_length_mm: f64,
    /// Bearing length in the side member, mm.
    pub side_length_mm: f64,
    /// Gap between the members, such as a wall lining that is not counted on, mm; by default they touch.
    #[cfg_attr(feature = "json", serde(default))]
    pub gap_mm: f64,
    /// Largest angle between the load and the grain of either member, degrees.
    pub max_angle_to_grain_deg: f64,
}

limited!(DowelShearInput {
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

/// Lateral capacity of one dowel in single shear, every mode shown.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct DowelShear {
    /// Row of the table of reduction terms (NDS Table 12.3.1B).
    pub reduction_rule: ReductionRule,
    /// Factor K_D for small diameters; 1 where the table does not use it.
    pub k_d: f64,
    /// Factor K_theta for the angle to the grain; 1 where the table does not use it.
    pub k_theta: f64,
    /// Reduction term R_d of the modes I.
    pub reduction_i: f64,
    /// Reduction term R_d of the mode II.
    pub reduction_ii: f64,
    /// Reduction term R_d of the modes III and IV.
    pub reduction_iii_iv: f64,
    /// Yield load of mode I_m, before reduction (NDS Eq. 12.3-1; TR12 Table 1-1), N.
    pub im_yield_n: f64,
    /// Yield load of mode I_s, before reduction (NDS Eq. 12.3-2; TR12 Table 1-1), N.
    pub is_yield_n: f64,
    /// Yield load of mode II, before reduction (NDS Eq. 12.3-3; TR12 Table 1-1), N.
    pub ii_yield_n: f64,
    /// Yield load of mode III_m, before reduction (NDS Eq. 12.3-4; TR12 Table 1-1), N.
    pub iiim_yield_n: f64,
    /// Yield load of mode III_s, before reduction (NDS Eq. 12.3-5; TR12 Table 1-1), N.
    pub iiis_yield_n: f64,
    /// Yield load of mode IV, before reduction (NDS Eq. 12.3-6; TR12 Table 1-1), N.
    pub iv_yield_n: f64,
    /// Reference design value of mode I_m, N.
    pub im_n: f64,
    /// Reference design value of mode I_s, N.
    pub is_n: f64,
    /// Reference design value of mode II, N.
    pub ii_n: f64,
    /// Reference design value of mode III_m, N.
    pub iiim_n: f64,
    /// Reference design value of mode III_s, N.
    pub iiis_n: f64,
    /// Reference design value of mode IV, N.
    pub iv_n: f64,
    /// Mode with the least reference design value.
    pub governing_mode: YieldMode,
    /// Reference lateral design value Z: the least of the modes, before any adjustment factor, N.
    pub reference_n: f64,
}

impl DowelShear {
    /// Reduction term of the governing mode.
    pub(super) fn governing_reduction(&self) -> f64 {
        match self.governing_mode {
            YieldMode::Im | YieldMode::Is => self.reduction_i,
            YieldMode::Ii => self.reduction_ii,
            YieldMode::Iiim | YieldMode::Iiis | YieldMode::Iv => self.reduction_iii_iv,
        }
    }
}

/// Lateral capacity of one dowel in single shear, with or without a gap between the members.
///
/// # Equation
/// ```text
/// q = F_e D_y per member      M = F_yb D_y³ / 6      I_m: P = q_m l_m      I_s: P = q_s l_s
/// II to IV: A P² + B P + C = 0, taken as P = −2 C / (B + √(B² − 4 A C)), which loses no digits at a wide gap
///
///   mode    A                     B                    C
///   II      1/(4 q_s) + 1/(4 q_m)   l_s/2 + g + l_m/2    −q_s l_s²/4 − q_m l_m²/4
///   III_m   1/(2 q_s) + 1/(4 q_m)   g + l_m/2            −M − q_m l_m²/4
///   III_s   1/(4 q_s) + 1/(2 q_m)   l_s/2 + g            −q_s l_s²/4 − M
///   IV      1/(2 q_s) + 1/(2 q_m)   g                    −2 M
///
/// Z = min over the modes of P / R_d
/// R_d: D_y ≥ 1/4 in: 4 K_θ (I), 3.6 K_θ (II), 3.2 K_θ (III, IV); D_y < 1/4 in: K_D, times K_θ when D ≥ 1/4 in
/// K_θ = 1 + θ/360°      K_D = 2.2 up to 0.17 in, 10 D_y + 0.5 (D_y in inches) from there to 1/4 in
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | D_y, D | yield diameter, nominal diameter | mm | `yield_diameter_mm`, `nominal_diameter_mm` |
/// | F_yb | bending yield strength | MPa | `bending_yield_mpa` |
/// | F_e, l | bearing strength, bearing length of a member | MPa, mm | `main_…`, `side_…` |
/// | g | gap | mm | `gap_mm` |
/// | θ | largest angle of load to grain | degree | `max_angle_to_grain_deg` |
///
/// # Limits
/// Load across the dowel's axis, solid members, one shear plane, allowable-stress values at normal load duration. With
/// no gap the yield loads are those of NDS Table 12.3.1A. Nothing in the gap is counted on, and neither are friction,
/// clamping or the pull of a bent dowel. Spacing and edge distances, and for dowels of 1/4 in and more the group and
/// geometry factors, are the user's to keep. See the caution of the module.
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` when the yield diameter exceeds the nominal one.
///
/// # Source
/// AWC TR12 Table 1-1 (recalled, confirmed by all modes of its Example 3.1, seen); NDS 2018 Tables 12.3.1A and 12.3.1B
/// (seen). Checked by `verification/dowel_nds` and by an independent limit analysis in the tests.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::{DowelShearInput, YieldMode, dowel_shear};
/// // A half-inch bolt through two pieces of 1 1/2 in, parallel to the grain (TR12 Example 3.1).
/// let bolt = dowel_shear(&DowelShearInput {
///     yield_diameter_mm: 12.7,
///     nominal_diameter_mm: None,
///     bending_yield_mpa: 310.26,
///     main_bearing_mpa: 33.095,
///     side_bearing_mpa: 33.095,
///     main_length_mm: 38.1,
///     side_length_mm: 38.1,
///     gap_mm: 0.0,
///     max_angle_to_grain_deg: 0.0,
/// })?;
/// assert_eq!(bolt.governing_mode, YieldMode::Ii);
/// assert!((bolt.reference_n / 4.44822 - 414.0).abs() < 0.5); // lbf
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn dowel_shear(input: &DowelShearInput) -> Result<DowelShear, Fault> {
    input.check_ranges()?;
    if !is_within_nominal(input) {
        return Err(Fault::number(
            ErrorCode::Inconsistent,
            "yield_diameter_mm",
            input.yield_diameter_mm,
            Allowed::Text("at most the nominal diameter"),
            "give the root or the shank diameter",
        ));
    }
    Ok(shear(input))
}

/// Whether the yield diameter is at most the nominal one.
#[inline(always)]
fn is_within_nominal(input: &DowelShearInput) -> bool {
    input.yield_diameter_mm <= input.nominal_diameter_mm.unwrap_or(input.yield_diameter_mm) + EDGE_MM
}

/// Whether [`dowel_shear`] refuses nothing; without a branch.
#[cfg(feature = "json")]
#[inline(always)]
fn is_admitted(input: &DowelShearInput) -> bool {
    input.is_within_ranges() & is_within_nominal(input)
}

/// [`dowel_shear`] of numbers already within their ranges; without a branch.
#[inline(always)]
pub(super) fn shear(input: &DowelShearInput) -> DowelShear {
    let diameter_mm = input.yield_diameter_mm;
    let (main_q, side_q) = (input.main_bearing_mpa * diameter_mm, input.side_bearing_mpa * diameter_mm);
    let (main_mm, side_mm, gap_mm) = (input.main_length_mm, input.side_length_mm, input.gap_mm);
    let hinge_nmm = input.bending_yield_mpa * diameter_mm * diameter_mm * diameter_mm * (1.0 / 6.0);
    // One division for both of 1/(4 q): divisions and roots take most of the time.
    let common = 0.25 / (main_q * side_q);
    let (main_quarter, side_quarter) = (common * side_q, common * main_q);
    // What turning in a member costs, against bending at a hinge in it: a share of A, of B, and of −C.
    let turning = |quarter: f64, q: f64, length_mm: f64| (quarter, 0.5 * length_mm, 0.25 * q * length_mm * length_mm);
    let hinged = |quarter: f64| (2.0 * quarter, 0.0, hinge_nmm);
    let load = |side: (f64, f64, f64), main: (f64, f64, f64)| {
        let (a, b, minus_c) = (side.0 + main.0, side.1 + gap_mm + main.1, side.2 + main.2);
        2.0 * minus_c / (b + (b * b + 4.0 * a * minus_c).sqrt())
    };
    let (side_turning, main_turning) = (turning(side_quarter, side_q, side_mm), turning(main_quarter, main_q, main_mm));
    let (side_hinged, main_hinged) = (hinged(side_quarter), hinged(main_quarter));
    let im_yield_n = main_q * main_mm;
    let is_yield_n = side_q * side_mm;
    let ii_yield_n = load(side_turning, main_turning);
    let iiim_yield_n = load(side_hinged, main_turning);
    let iiis_yield_n = load(side_turning, main_hinged);
    let iv_yield_n = load(side_hinged, main_hinged);

    let reduction = reduction(input);
    let [reduction_i, reduction_ii, reduction_iii_iv] = reduction.terms;
    let [by_i, by_ii, by_iii_iv] = reduction.inverses;
    let (im_n, is_n) = (im_yield_n * by_i, is_yield_n * by_i);
    let ii_n = ii_yield_n * by_ii;
    let (iiim_n, iiis_n, iv_n) = (iiim_yield_n * by_iii_iv, iiis_yield_n * by_iii_iv, iv_yield_n * by_iii_iv);
    // The first of the least.
    let less = |least: (YieldMode, f64), mode: YieldMode, value_n: f64| {
        let is_less = value_n < least.1;
        (if is_less { mode } else { least.0 }, if is_less { value_n } else { least.1 })
    };
    let least = less((YieldMode::Im, im_n), YieldMode::Is, is_n);
    let least = less(least, YieldMode::Ii, ii_n);
    let least = less(least, YieldMode::Iiim, iiim_n);
    let least = less(least, YieldMode::Iiis, iiis_n);
    let (governing_mode, reference_n) = less(least, YieldMode::Iv, iv_n);
    DowelShear {
        reduction_rule: reduction.rule,
        k_d: reduction.k_d,
        k_theta: reduction.k_theta,
        reduction_i,
        reduction_ii,
        reduction_iii_iv,
        im_yield_n,
        is_yield_n,
        ii_yield_n,
        iiim_yield_n,
        iiis_yield_n,
        iv_yield_n,
        im_n,
        is_n,
        ii_n,
        iiim_n,
        iiis_n,
        iv_n,
        governing_mode,
        reference_n,
    }
}

/// The reduction terms of NDS Table 12.3.1B, for the modes I, II, and III with IV.
pub(super) struct Reduction {
    rule: ReductionRule,
    k_d: f64,
    k_theta: f64,
    pub(super) terms: [f64; 3],
    /// One over each.
    inverses: [f64; 3],
}

/// The factors of [`Reduction`] for dowels of a quarter inch and more.
const LARGE: [f64; 3] = [4.0, 3.6, 3.2];

#[inline(always)]
pub(super) fn reduction(input: &DowelShearInput) -> Reduction {
    let diameter_mm = input.yield_diameter_mm;
    let is_large = is_quarter_inch(diameter_mm);
    let has_large_thread = is_quarter_inch(input.nominal_diameter_mm.unwrap_or(diameter_mm));
    let by_angle = 1.0 + 0.25 * (input.max_angle_to_grain_deg / 90.0);
    let k_theta = if is_large | has_large_thread { by_angle } else { 1.0 };
    // The two branches of K_D meet at 0.17 in.
    let by_diameter = diameter_mm * (10.0 / INCH_MM) + 0.5;
    let by_diameter = if by_diameter > 2.2 { by_diameter } else { 2.2 };
    let k_d = if is_large { 1.0 } else { by_diameter };
    let rule = if is_large {
        ReductionRule::QuarterInchAndMore
    } else if has_large_thread {
        ReductionRule::SmallRootOfLargeThread
    } else {
        ReductionRule::BelowQuarterInch
    };
    let product = k_d * k_theta;
    let inverse = 1.0 / product;
    let of = |large: f64| {
        let factor = if is_large { large } else { 1.0 };
        let by = if is_large { 1.0 / large } else { 1.0 };
        (factor * product, by * inverse)
    };
    let (i, ii, iii_iv) = (of(LARGE[0]), of(LARGE[1]), of(LARGE[2]));
    Reduction { rule, k_d, k_theta, terms: [i.0, ii.0, iii_iv.0], inverses: [i.1, ii.1, iii_iv.1] }
}

#[cfg(feature = "json")]
lane_choice!(YieldMode { Im, Is, Ii, Iiim, Iiis, Iv });
#[cfg(feature = "json")]
lane_choice!(ReductionRule { BelowQuarterInch, SmallRootOfLargeThread, QuarterInchAndMore });

#[cfg(feature = "json")]
lanes! {
    /// Works rows of [`dowel_shear`] off.
    fn shear_lanes for dowel_shear: DowelShearInput {
        yield_diameter_mm: f64,
        nominal_diameter_mm: Option<f64>,
        bending_yield_mpa: f64,
        main_bearing_mpa: f64,
        side_bearing_mpa: f64,
        main_length_mm: f64,
        side_length_mm: f64,
        gap_mm: f64,
        max_angle_to_grain_deg: f64,
    } => DowelShear {
        reduction_rule: ReductionRule,
        k_d: f64,
        k_theta: f64,
        reduction_i: f64,
        reduction_ii: f64,
        reduction_iii_iv: f64,
        im_yield_n: f64,
        is_yield_n: f64,
        ii_yield_n: f64,
        iiim_yield_n: f64,
        iiis_yield_n: f64,
        iv_yield_n: f64,
        im_n: f64,
        is_n: f64,
        ii_n: f64,
        iiim_n: f64,
        iiis_n: f64,
        iv_n: f64,
        governing_mode: YieldMode,
        reference_n: f64,
    },
    admits = is_admitted, lane = shear
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const DOWEL_SHEAR: crate::json::Calculation = crate::json::calculation!(
    dowel_shear: DowelShearInput => DowelShear, Typed,
    "Lateral capacity of one dowel in single shear by every yield mode, with or without a gap between the members",
    lanes = shear_lanes
);

#[cfg(test)]
#[path = "lateral_tests.rs"]
mod tests;
