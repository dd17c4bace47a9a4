//! A whole joint of one nail, wood screw or lag screw between any two members.

use super::EDGE_MM;
use super::bearing::{BearingRounding, DowelBearingInput, FastenerDirection, bearing};
use super::bending::{BendingYieldFastener, BendingYieldInput, bending_yield};
use super::combined::{CombinedLateralWithdrawalInput, CombinedLoadRule, combined};
use super::factors::{
    ConnectionFactorsInput, DowelFastener, FastenerArrangement, LoadDuration, MemberMoisture, NailDriving,
    TemperatureBand, connection_factors,
};
use super::joint::tapered_bearing_mm;
use super::lateral::{DowelShearInput, ReductionRule, YieldMode, shear};
use super::lrfd::{FORMAT_CONVERSION, NdsDesign, RESISTANCE, TimeEffect};
use super::material::{DowelMaterial, material_bearing, thickness_fault, without_value};
use super::withdrawal::{FastenerWithdrawalInput, HeadPullThroughInput, pull_through, withdrawal};
use crate::error::{Allowed, ErrorCode, Fault};
use crate::fasten::catalogue::{lag_thread_mm, lag_tip_mm, wood_screw_thread_mm};
use crate::limits::{BEARING_LENGTH, Limited, limited};
use crate::numeric::real::cos_deg;
use crate::units::factor::INCH_MM;
use crate::verdict::Outcome;

/// One nail, wood screw or lag screw through a side member and a gap into a main member, with its loads.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<DowelJointNdsInput>))]
pub struct DowelJointNdsInput {
    /// Kind of fastener.
    pub fastener: DowelFastener,
    /// Nominal diameter, mm.
    pub nominal_diameter_mm: f64,
    /// Diameter at the thread root, mm; needed for screws, left out for nails.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub root_diameter_mm: Option<f64>,
    /// Diameter of the round head or washer, mm; left out the pull-through of the head is not determined.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub head_diameter_mm: Option<f64>,
    /// Length from under the head to the point, from the face of a countersunk head, mm.
    pub length_mm: f64,
    /// Length of thread or rings, tip counted, mm; left out: wood screw max(4 D, 2 L/3) (NDS Table L3), lag screw
    /// L/2 + 1/2 in up to 6 in and 1/4 in less than L at most (NDS Table L2), smooth nail the whole length; ring shank
    /// nails need it.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub thread_length_mm: Option<f64>,
    /// Length of the tapered tip, mm; left out it is 2 D, for a lag screw that of NDS Table L2.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub tip_length_mm: Option<f64>,
    /// Bending yield strength, MPa; left out it is the table's for low to medium carbon steel (NDS Table I1).
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub bending_yield_mpa: Option<f64>,
    /// Allowable tension of the steel at the thread root, N, as declared for the fastener; left out it is not looked at.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub steel_tension_n: Option<f64>,
    /// Material of the side member; wood by default.
    #[cfg_attr(feature = "json", serde(default = "wood"))]
    pub side_material: DowelMaterial,
    /// Specific gravity of a wooden side member.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub side_specific_gravity: Option<f64>,
    /// Bearing strength of the side member as tested, MPa; left out it follows from the material.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub side_bearing_mpa: Option<f64>,
    /// Thickness of the side member, mm.
    pub side_thickness_mm: f64,
    /// Angle between the lateral load and the grain of a wooden side member, degrees.
    pub side_angle_to_grain_deg: f64,
    /// Depth by which the head is sunk below the face of the side member, mm; by default it is flush.
    #[cfg_attr(feature = "json", serde(default))]
    pub head_recess_mm: f64,
    /// Gap between the members, such as a wall lining, mm; by default they touch.
    #[cfg_attr(feature = "json", serde(default))]
    pub gap_mm: f64,
    /// Material of the main member; wood by default.
    #[cfg_attr(feature = "json", serde(default = "wood"))]
    pub main_material: DowelMaterial,
    /// Specific gravity of a wooden main member.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub main_specific_gravity: Option<f64>,
    /// Bearing strength of the main member as tested, MPa; left out it follows from the material.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub main_bearing_mpa: Option<f64>,
    /// Thickness of the main member along the fastener, mm.
    pub main_thickness_mm: f64,
    /// Angle between the lateral load and the grain of a wooden main member, degrees.
    pub main_angle_to_grain_deg: f64,
    /// Grain of the main member that the fastener stands in; side grain by default, as in the face of a stud.
    #[cfg_attr(feature = "json", serde(default = "super::bearing::side_grain"))]
    pub main_direction: FastenerDirection,
    /// Whether bearing strengths are rounded to 50 psi like the standard's table; by default not.
    #[cfg_attr(feature = "json", serde(default = "super::bearing::unrounded"))]
    pub rounding: BearingRounding,
    /// How a nail is driven; straight by default.
    #[cfg_attr(feature = "json", serde(default = "super::factors::straight"))]
    pub nail_driving: NailDriving,
    /// Allowable stress or load and resistance factor design; allowable stress by default.
    #[cfg_attr(feature = "json", serde(default = "asd"))]
    pub design: NdsDesign,
    /// Load duration for allowable stress design; permanent by default, the least factor, as for goods that stay on a shelf.
    #[cfg_attr(feature = "json", serde(default = "super::factors::permanent"))]
    pub load_duration: LoadDuration,
    /// Time effect for load and resistance factor design; dead load alone by default, the least factor.
    #[cfg_attr(feature = "json", serde(default = "dead_only"))]
    pub time_effect: TimeEffect,
    /// Moisture of the wood when the joint is made; dry by default, as indoor joinery is.
    #[cfg_attr(feature = "json", serde(default = "super::factors::dry"))]
    pub fabrication_moisture: MemberMoisture,
    /// Moisture of the wood in service; dry by default, as in a heated room.
    #[cfg_attr(feature = "json", serde(default = "super::factors::dry"))]
    pub service_moisture: MemberMoisture,
    /// Temperature of the joint; by default up to 100 °F, as in a room. Beside a hearth it may be more.
    #[cfg_attr(feature = "json", serde(default = "super::factors::room_temperature"))]
    pub temperature: TemperatureBand,
    /// How the fasteners of the joint stand; several rows by default, the lower factor when wet wood dries.
    #[cfg_attr(feature = "json", serde(default = "super::factors::several_rows"))]
    pub arrangement: FastenerArrangement,
    /// Group action factor C_g from `group_action_factor`; 1 by default, as it is below 1/4 in.
    #[cfg_attr(feature = "json", serde(default = "one"))]
    pub c_g: f64,
    /// Geometry factor C_delta from `geometry_factor`; 1 by default, as it is below 1/4 in or with full distances.
    #[cfg_attr(feature = "json", serde(default = "one"))]
    pub c_delta: f64,
    /// Lateral load on this fastener, N; factored for load and resistance factor design.
    pub lateral_n: f64,
    /// Withdrawal load on this fastener, N; factored for load and resistance factor design.
    pub withdrawal_n: f64,
}

limited!(DowelJointNdsInput {
    nominal_diameter_mm: FASTENER_DIAMETER,
    root_diameter_mm: FASTENER_DIAMETER,
    head_diameter_mm: HEAD_DIAMETER,
    length_mm: FASTENER_LENGTH,
    thread_length_mm: BEARING_LENGTH,
    tip_length_mm: SMALL_LENGTH,
    bending_yield_mpa: STRESS,
    steel_tension_n: CONNECTION_CAPACITY,
    side_specific_gravity: SPECIFIC_GRAVITY,
    side_bearing_mpa: STRESS,
    side_thickness_mm: BEARING_LENGTH,
    side_angle_to_grain_deg: ANGLE_TO_GRAIN,
    head_recess_mm: SMALL_LENGTH,
    gap_mm: SMALL_LENGTH,
    main_specific_gravity: SPECIFIC_GRAVITY,
    main_bearing_mpa: STRESS,
    main_thickness_mm: BEARING_LENGTH,
    main_angle_to_grain_deg: ANGLE_TO_GRAIN,
    c_g: POSITIVE_FRACTION,
    c_delta: POSITIVE_FRACTION,
    lateral_n: FORCE,
    withdrawal_n: FORCE
});

#[cfg(feature = "json")]
fn wood() -> DowelMaterial {
    DowelMaterial::Wood
}
#[cfg(feature = "json")]
fn asd() -> NdsDesign {
    NdsDesign::Asd
}
#[cfg(feature = "json")]
fn dead_only() -> TimeEffect {
    TimeEffect::DeadOnly
}
#[cfg(feature = "json")]
fn one() -> f64 {
    1.0
}

/// One joint of a nail, wood screw or lag screw with its whole working.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct DowelJointNds {
    /// Diameter in the yield equations: the thread root of screws, the shank of nails (NDS 12.3.7), mm.
    pub yield_diameter_mm: f64,
    /// Length of thread, rings or holding shank, mm.
    pub thread_length_mm: f64,
    /// Length of the tapered tip, mm.
    pub tip_length_mm: f64,
    /// Depth of the point behind the near face of the main member, mm; of a toe-nail across that face.
    pub penetration_mm: f64,
    /// Penetration that counts: without the tip for lag screws, mm.
    pub counted_penetration_mm: f64,
    /// Least penetration: 4 D lag screws, 6 D others (NDS 12.1.4.6, 12.1.5.6, 12.1.6.4), mm.
    pub required_penetration_mm: f64,
    /// Whether the main member holds at least that much.
    pub penetration: Outcome,
    /// How far the point comes out of the far face of the main member, mm; negative while wood remains.
    pub breakthrough_mm: f64,
    /// Whether the point stays inside the main member.
    pub stays_inside: Outcome,
    /// Bearing length in the side member, mm.
    pub side_bearing_length_mm: f64,
    /// Bearing length in the main member, half the tapered tip taken off (NDS 12.3.5.3), mm.
    pub main_bearing_length_mm: f64,
    /// Length that holds against withdrawal in the main member, mm; 0 when the thread does not reach it.
    pub holding_length_mm: f64,
    /// Bearing strength of the side member at the angle of the load, MPa.
    pub side_bearing_mpa: f64,
    /// Bearing strength of the main member at the angle of the load, MPa.
    pub main_bearing_mpa: f64,
    /// Bending yield strength of the fastener, MPa.
    pub bending_yield_mpa: f64,
    /// Row of the table of reduction terms (NDS Table 12.3.1B).
    pub reduction_rule: ReductionRule,
    /// Factor K_D for small diameters; 1 where the table does not use it.
    pub k_d: f64,
    /// Factor K_theta for the angle to the grain; 1 where the table does not use it.
    pub k_theta: f64,
    /// Reduction term R_d of the governing mode.
    pub reduction: f64,
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
    /// Reference lateral design value Z (TR12 with a gap, NDS 12.3.1 without), N.
    pub reference_lateral_n: f64,
    /// Reference withdrawal value of the holding length (NDS 12.2), N; 0 where the standard permits or publishes none.
    pub reference_withdrawal_n: f64,
    /// Reference head pull-through value W_H (NDS Eq. 12.2-6), N; absent without a head or a wooden side member.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub reference_pull_through_n: Option<f64>,
    /// Load duration factor C_D (NDS 11.3.2).
    pub c_d: f64,
    /// Wet service factor C_M of the lateral value (NDS Table 11.3.3).
    pub c_m_lateral: f64,
    /// Wet service factor C_M of the withdrawal value (NDS Table 11.3.3).
    pub c_m_withdrawal: f64,
    /// Wet service factor C_M of the pull-through value (NDS Table 11.3.3).
    pub c_m_pull_through: f64,
    /// Temperature factor C_t (NDS Table 11.3.4).
    pub c_t: f64,
    /// Group action factor C_g (NDS 11.3.6), as given.
    pub c_g: f64,
    /// Geometry factor C_delta (NDS 12.5.1), as given.
    pub c_delta: f64,
    /// End grain factor C_eg of the lateral value (NDS 12.5.2.2).
    pub c_eg_lateral: f64,
    /// Toe-nail factor C_tn of the lateral value (NDS 12.5.4.2).
    pub c_tn_lateral: f64,
    /// Toe-nail factor C_tn of the withdrawal value (NDS 12.5.4.1).
    pub c_tn_withdrawal: f64,
    /// Format conversion factor K_F of load and resistance factor design (NDS Table N1).
    pub k_f: f64,
    /// Resistance factor phi_z (NDS Table N2).
    pub phi: f64,
    /// Time effect factor lambda (NDS Table N3).
    pub time_effect_factor: f64,
    /// Lateral capacity of allowable stress design, N.
    pub asd_lateral_n: f64,
    /// Lateral capacity of load and resistance factor design, N.
    pub lrfd_lateral_n: f64,
    /// Withdrawal capacity of allowable stress design, N.
    pub asd_withdrawal_n: f64,
    /// Withdrawal capacity of load and resistance factor design, N.
    pub lrfd_withdrawal_n: f64,
    /// Pull-through capacity of allowable stress design, N; absent as its reference value.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub asd_pull_through_n: Option<f64>,
    /// Pull-through capacity of load and resistance factor design, N; absent as its reference value.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub lrfd_pull_through_n: Option<f64>,
    /// Capacity along the axis that stands beside the lateral load: the least of withdrawal, head and steel of the chosen
    /// design, as far as they are known, N.
    pub axial_capacity_n: f64,
    /// Lateral load over the lateral capacity of the chosen design.
    pub lateral_utilisation: f64,
    /// Withdrawal load over the withdrawal capacity of the chosen design.
    pub withdrawal_utilisation: f64,
    /// Withdrawal load over the pull-through capacity; 0 where that is absent.
    pub pull_through_utilisation: f64,
    /// Withdrawal load over the declared tension of the steel; 0 where none is declared.
    pub steel_utilisation: f64,
    /// Both loads at once over the capacity at their angle (NDS Eq. 12.4-1 screws, 12.4-2 nails), with the axial capacity
    /// in place of the withdrawal alone.
    pub combined_utilisation: f64,
    /// Largest of the five utilisations; 1 is the limit.
    pub utilisation: f64,
    /// Whether the head was checked against pulling through: not determined without a head diameter, not covered with a
    /// side member other than wood.
    pub pull_through: Outcome,
    /// Whether the steel was checked in tension (NDS 12.2.1.4, 12.2.2.5): not determined without a declared value.
    pub steel_tension: Outcome,
    /// Whether no utilisation exceeds 1, the penetration suffices and the point stays inside; not determined when a
    /// withdrawal load meets a head or a side member without a pull-through value.
    pub outcome: Outcome,
}

/// Capacity and use of one nail, wood screw or lag screw between members of wood, panel, steel or concrete.
///
/// # Equation
/// ```text
/// l_s = t_s − recess     p = L − l_s − g     l_m = p − E/2     toe-nail: l_s = L/3, p = L cos 30° − L/3
/// Z: dowel_shear with D_y = D_r (screws) or D (nails)     W: fastener_withdrawal     W_H: head_pull_through
/// ASD:  Z C_D C_M C_t C_g C_Δ C_eg C_tn          W p_t C_D C_M C_t C_tn          W_H C_D C_M C_t
/// LRFD: the same with K_F φ λ in place of C_D    K_F = 3.32   φ = 0.65
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | L, E | length, length of the tapered tip | mm | `length_mm`, `tip_length_mm` |
/// | D, D_r | nominal and root diameter | mm | `nominal_diameter_mm`, `root_diameter_mm` |
/// | t_s, g | side member thickness, gap | mm | `side_thickness_mm`, `gap_mm` |
/// | λ | time effect factor | – | `time_effect` |
///
/// # Limits
/// One fastener in single shear. The root is used in the yield equations of screws throughout (NDS 12.3.7.2 would
/// sometimes allow the shank). A toe-nail holds lengthwise by what of it lies behind the joint. Withdrawal is published
/// for wood only; the standard gives no number for the tension of a screw's steel, so that check needs the declared
/// value. A steel plate's own strength, and an anchor's hold in concrete, are not looked at. See the caution of the
/// module.
///
/// # Errors
/// `out_of_range`, `not_finite`; `missing_field` for a screw without root diameter, a ring shank nail without ring
/// length, wood without specific gravity; `inconsistent` for dimensions that contradict each other, toe-nailing of a
/// screw, or toe-nailing over a gap or a recess; `no_published_value` for a material or diameter without value, a
/// withdrawal load in end grain (but lag screws) or in a member that is not wood; `penetration_too_short` when the
/// fastener does not reach the main member, or its thread does not under a withdrawal load.
///
/// # Source
/// NDS 2018 chapters 11 and 12, Appendices I, L and N, AWC TR12, as named at each field. K_F and φ were seen, λ and the
/// toe-nail's lengths are recalled. Checked by `verification/nds_joint`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::*;
/// // A 16d common nail through 1 1/2 in into 2 in of Douglas fir.
/// let nail = dowel_joint_nds(&DowelJointNdsInput {
///     fastener: DowelFastener::SmoothNail,
///     nominal_diameter_mm: 4.1148,
///     root_diameter_mm: None,
///     head_diameter_mm: Some(8.7),
///     length_mm: 88.9,
///     thread_length_mm: None,
///     tip_length_mm: None,
///     bending_yield_mpa: None,
///     steel_tension_n: None,
///     side_material: DowelMaterial::Wood,
///     side_specific_gravity: Some(0.50),
///     side_bearing_mpa: None,
///     side_thickness_mm: 38.1,
///     side_angle_to_grain_deg: 0.0,
///     head_recess_mm: 0.0,
///     gap_mm: 0.0,
///     main_material: DowelMaterial::Wood,
///     main_specific_gravity: Some(0.50),
///     main_bearing_mpa: None,
///     main_thickness_mm: 89.0,
///     main_angle_to_grain_deg: 0.0,
///     main_direction: FastenerDirection::SideGrain,
///     rounding: BearingRounding::Nearest50Psi,
///     nail_driving: NailDriving::Straight,
///     design: NdsDesign::Asd,
///     load_duration: LoadDuration::TenYears,
///     time_effect: TimeEffect::DeadOnly,
///     fabrication_moisture: MemberMoisture::Dry,
///     service_moisture: MemberMoisture::Dry,
///     temperature: TemperatureBand::UpTo100F,
///     arrangement: FastenerArrangement::SeveralRows,
///     c_g: 1.0,
///     c_delta: 1.0,
///     lateral_n: 400.0,
///     withdrawal_n: 0.0,
/// })?;
/// assert!((nail.asd_lateral_n / 4.44822 - 141.0).abs() < 0.5); // lbf, NDS Table 12N
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn dowel_joint_nds(input: &DowelJointNdsInput) -> Result<DowelJointNds, Fault> {
    input.check_ranges()?;
    let dowel = Dowel::of(input)?;
    let factors = connection_factors(&ConnectionFactorsInput {
        fastener: input.fastener,
        nominal_diameter_mm: input.nominal_diameter_mm,
        load_duration: input.load_duration,
        fabrication_moisture: input.fabrication_moisture,
        service_moisture: input.service_moisture,
        temperature: input.temperature,
        arrangement: input.arrangement,
        direction: input.main_direction,
        nail_driving: input.nail_driving,
    })?;
    let lay = JointLay::of(input, &dowel)?;
    let bending_yield_mpa = match input.bending_yield_mpa {
        Some(given_mpa) => given_mpa,
        None => tabulated_bending_yield_mpa(input)?,
    };
    let side = member_bearing(input, &Member::side(input))?;
    let main = member_bearing(input, &Member::main(input))?;
    let lateral = shear(&DowelShearInput {
        yield_diameter_mm: dowel.yield_mm,
        nominal_diameter_mm: Some(input.nominal_diameter_mm),
        bending_yield_mpa,
        main_bearing_mpa: main.0,
        side_bearing_mpa: side.0,
        main_length_mm: lay.main_bearing_mm,
        side_length_mm: lay.side_bearing_mm,
        gap_mm: input.gap_mm,
        max_angle_to_grain_deg: side.1.max(main.1),
    });
    let reference_withdrawal_n = reference_withdrawal_n(input, &lay)?;
    let reference_pull_through_n = match (input.side_material, input.head_diameter_mm, input.side_specific_gravity) {
        (DowelMaterial::Wood, Some(head_diameter_mm), Some(specific_gravity)) => {
            let net_side_thickness_mm = input.side_thickness_mm - input.head_recess_mm;
            let head = HeadPullThroughInput { specific_gravity, head_diameter_mm, net_side_thickness_mm };
            Some(pull_through(&head).reference_n)
        }
        _ => None,
    };

    let lambda = input.time_effect.factor();
    // What takes the place of the load duration factor.
    let strength = FORMAT_CONVERSION * RESISTANCE * lambda / factors.c_d;
    let asd_lateral_n = lateral.reference_n * factors.lateral * input.c_g * input.c_delta;
    let asd_withdrawal_n = reference_withdrawal_n * factors.withdrawal;
    let asd_pull_through_n = reference_pull_through_n.map(|reference_n| reference_n * factors.pull_through);
    let lrfd_lateral_n = asd_lateral_n * strength;
    let lrfd_withdrawal_n = asd_withdrawal_n * strength;
    let lrfd_pull_through_n = asd_pull_through_n.map(|capacity_n| capacity_n * strength);
    let (lateral_capacity_n, withdrawal_capacity_n, pull_through_capacity_n) = match input.design {
        NdsDesign::Asd => (asd_lateral_n, asd_withdrawal_n, asd_pull_through_n),
        NdsDesign::Lrfd => (lrfd_lateral_n, lrfd_withdrawal_n, lrfd_pull_through_n),
    };
    let share = |load_n: f64, capacity_n: f64| if load_n > 0.0 { load_n / capacity_n } else { 0.0 };
    let axial_capacity_n =
        [pull_through_capacity_n, input.steel_tension_n].into_iter().flatten().fold(withdrawal_capacity_n, f64::min);
    let both = combined(&CombinedLateralWithdrawalInput {
        rule: if input.fastener.is_nail() { CombinedLoadRule::Nails } else { CombinedLoadRule::Screws },
        lateral_capacity_n,
        // Without a withdrawal load any capacity above nothing gives the lateral one.
        withdrawal_capacity_n: if axial_capacity_n > 0.0 { axial_capacity_n } else { lateral_capacity_n },
        lateral_n: input.lateral_n,
        withdrawal_n: input.withdrawal_n,
    });
    let lateral_utilisation = share(input.lateral_n, lateral_capacity_n);
    let withdrawal_utilisation = share(input.withdrawal_n, withdrawal_capacity_n);
    let pull_through_utilisation =
        pull_through_capacity_n.map_or(0.0, |capacity_n| share(input.withdrawal_n, capacity_n));
    let steel_utilisation = input.steel_tension_n.map_or(0.0, |capacity_n| share(input.withdrawal_n, capacity_n));
    let utilisation = lateral_utilisation
        .max(withdrawal_utilisation)
        .max(pull_through_utilisation)
        .max(steel_utilisation)
        .max(both.utilisation);

    let met = |holds: bool| if holds { Outcome::Met } else { Outcome::NotMet };
    let required_penetration_mm =
        input.nominal_diameter_mm * if input.fastener == DowelFastener::LagScrew { 4.0 } else { 6.0 };
    let penetration = met(lay.counted_mm >= required_penetration_mm - EDGE_MM);
    let breakthrough_mm = lay.penetration_mm - input.main_thickness_mm;
    let stays_inside = met(breakthrough_mm <= EDGE_MM);
    let pull_through = match pull_through_capacity_n {
        Some(_) => met(pull_through_utilisation <= 1.0),
        None if input.side_material == DowelMaterial::Wood => Outcome::NotDetermined,
        None => Outcome::NotCovered,
    };
    let steel_tension = input.steel_tension_n.map_or(Outcome::NotDetermined, |_| met(steel_utilisation <= 1.0));
    let holds = utilisation <= 1.0 && penetration == Outcome::Met && stays_inside == Outcome::Met;
    let outcome = match (holds, pull_through_capacity_n) {
        (true, None) if input.withdrawal_n > 0.0 => Outcome::NotDetermined,
        (holds, _) => met(holds),
    };
    Ok(DowelJointNds {
        yield_diameter_mm: dowel.yield_mm,
        thread_length_mm: dowel.thread_mm,
        tip_length_mm: dowel.tip_mm,
        penetration_mm: lay.penetration_mm,
        counted_penetration_mm: lay.counted_mm,
        required_penetration_mm,
        penetration,
        breakthrough_mm,
        stays_inside,
        side_bearing_length_mm: lay.side_bearing_mm,
        main_bearing_length_mm: lay.main_bearing_mm,
        holding_length_mm: lay.holding_mm,
        side_bearing_mpa: side.0,
        main_bearing_mpa: main.0,
        bending_yield_mpa,
        reduction_rule: lateral.reduction_rule,
        k_d: lateral.k_d,
        k_theta: lateral.k_theta,
        reduction: lateral.governing_reduction(),
        im_n: lateral.im_n,
        is_n: lateral.is_n,
        ii_n: lateral.ii_n,
        iiim_n: lateral.iiim_n,
        iiis_n: lateral.iiis_n,
        iv_n: lateral.iv_n,
        governing_mode: lateral.governing_mode,
        reference_lateral_n: lateral.reference_n,
        reference_withdrawal_n,
        reference_pull_through_n,
        c_d: factors.c_d,
        c_m_lateral: factors.c_m_lateral,
        c_m_withdrawal: factors.c_m_withdrawal,
        c_m_pull_through: factors.c_m_pull_through,
        c_t: factors.c_t,
        c_g: input.c_g,
        c_delta: input.c_delta,
        c_eg_lateral: factors.c_eg_lateral,
        c_tn_lateral: factors.c_tn_lateral,
        c_tn_withdrawal: factors.c_tn_withdrawal,
        k_f: FORMAT_CONVERSION,
        phi: RESISTANCE,
        time_effect_factor: lambda,
        asd_lateral_n,
        lrfd_lateral_n,
        asd_withdrawal_n,
        lrfd_withdrawal_n,
        asd_pull_through_n,
        lrfd_pull_through_n,
        axial_capacity_n,
        lateral_utilisation,
        withdrawal_utilisation,
        pull_through_utilisation,
        steel_utilisation,
        combined_utilisation: both.utilisation,
        utilisation,
        pull_through,
        steel_tension,
        outcome,
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const DOWEL_JOINT_NDS: crate::json::Calculation = crate::json::calculation!(
    dowel_joint_nds: DowelJointNdsInput => DowelJointNds, Typed,
    "Capacity and use of one nail, wood screw or lag screw between members of wood, panel, steel or concrete"
);

#[path = "dowel_joint_parts.rs"]
mod parts;
use parts::{Dowel, JointLay, Member, member_bearing, reference_withdrawal_n, tabulated_bending_yield_mpa};

#[cfg(test)]
#[path = "dowel_joint_tests.rs"]
mod tests;
