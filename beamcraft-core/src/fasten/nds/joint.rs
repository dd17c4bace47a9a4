//! A whole wood screw joint: cleat, wall lining, stud.

use super::EDGE_MM;
use super::bearing::{BearingRounding, DowelBearingInput, FastenerDirection, bearing};
use super::bending::{BendingYieldFastener, BendingYieldInput, bending_yield};
use super::combined::{CombinedLateralWithdrawalInput, CombinedLoadRule, combined};
use super::factors::{
    ConnectionFactorsInput, DowelFastener, FastenerArrangement, LoadDuration, MemberMoisture, NailDriving,
    TemperatureBand, factors,
};
use super::lateral::{DowelShear, DowelShearInput, ReductionRule, YieldMode, shear};
use super::withdrawal::{FastenerWithdrawalInput, HeadPullThroughInput, pull_through, withdrawal};
use crate::error::{Allowed, ErrorCode, Fault};
use crate::fasten::catalogue::wood_screw_thread_mm;
use crate::fasten::screws::{ScrewSize, wood_screw};
use crate::limits::{BEARING_LENGTH, Limited, limited};
use crate::verdict::Outcome;

/// One wood screw through a side member and a gap into a main member, with its loads.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<ScrewJointInput>))]
pub struct ScrewJointInput {
    /// Screw size; `own` takes the three diameters from the fields below.
    pub size: ScrewSize,
    /// Nominal diameter, mm; left out it is that of the size.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub nominal_diameter_mm: Option<f64>,
    /// Diameter at the thread root, mm; left out it is that of the size.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub root_diameter_mm: Option<f64>,
    /// Diameter of the head, mm; left out it is that of the size.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub head_diameter_mm: Option<f64>,
    /// Length that enters the wood: from the face of a countersunk head, from under a round one, mm.
    pub screw_length_mm: f64,
    /// Length of the thread with its tip, mm; left out it is the larger of 4 D and two thirds of the length (NDS Table L3).
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub thread_length_mm: Option<f64>,
    /// Length of the tapered tip, mm; left out it is 2 D (NDS 12.3.5.3).
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub tip_length_mm: Option<f64>,
    /// Bending yield strength of the screw, MPa; left out it is the table's (NDS Table I1).
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub bending_yield_mpa: Option<f64>,
    /// Specific gravity of the side member.
    pub side_specific_gravity: f64,
    /// Thickness of the side member, mm.
    pub side_thickness_mm: f64,
    /// Angle between the lateral load and the grain of the side member, degrees.
    pub side_angle_to_grain_deg: f64,
    /// Depth by which the head is sunk below the face of the side member, mm; by default it is flush.
    #[cfg_attr(feature = "json", serde(default))]
    pub head_recess_mm: f64,
    /// Gap between the members, such as a wall lining, mm; by default they touch.
    #[cfg_attr(feature = "json", serde(default))]
    pub gap_mm: f64,
    /// Specific gravity of the main member.
    pub main_specific_gravity: f64,
    /// Thickness of the main member along the screw, mm.
    pub main_thickness_mm: f64,
    /// Angle between the lateral load and the grain of the main member, degrees; 0 for a weight on an upright stud.
    pub main_angle_to_grain_deg: f64,
    /// Grain of the main member that the screw stands in; side grain by default, as in the face of a stud.
    #[cfg_attr(feature = "json", serde(default = "super::bearing::side_grain"))]
    pub main_direction: FastenerDirection,
    /// Whether bearing strengths are rounded to 50 psi like the standard's table; by default not.
    #[cfg_attr(feature = "json", serde(default = "super::bearing::unrounded"))]
    pub rounding: BearingRounding,
    /// Load duration; permanent by default, the least factor, as for goods that stay on a shelf.
    #[cfg_attr(feature = "json", serde(default = "super::factors::permanent"))]
    pub load_duration: LoadDuration,
    /// Moisture of the wood when the joint is made; dry by default, as indoor joinery is.
    #[cfg_attr(feature = "json", serde(default = "super::factors::dry"))]
    pub fabrication_moisture: MemberMoisture,
    /// Moisture of the wood in service; dry by default, as in a heated room.
    #[cfg_attr(feature = "json", serde(default = "super::factors::dry"))]
    pub service_moisture: MemberMoisture,
    /// Temperature of the joint; by default up to 100 °F, as in a room. Beside a hearth it may be more.
    #[cfg_attr(feature = "json", serde(default = "super::factors::room_temperature"))]
    pub temperature: TemperatureBand,
    /// How the screws of the joint stand; several rows by default, the lower factor when wet wood dries.
    #[cfg_attr(feature = "json", serde(default = "super::factors::several_rows"))]
    pub arrangement: FastenerArrangement,
    /// Lateral load on this screw, N.
    pub lateral_n: f64,
    /// Withdrawal load on this screw, N.
    pub withdrawal_n: f64,
}

limited!(ScrewJointInput {
    nominal_diameter_mm: FASTENER_DIAMETER,
    root_diameter_mm: FASTENER_DIAMETER,
    head_diameter_mm: HEAD_DIAMETER,
    screw_length_mm: FASTENER_LENGTH,
    thread_length_mm: BEARING_LENGTH,
    tip_length_mm: SMALL_LENGTH,
    bending_yield_mpa: STRESS,
    side_specific_gravity: SPECIFIC_GRAVITY,
    side_thickness_mm: BEARING_LENGTH,
    side_angle_to_grain_deg: ANGLE_TO_GRAIN,
    head_recess_mm: SMALL_LENGTH,
    gap_mm: SMALL_LENGTH,
    main_specific_gravity: SPECIFIC_GRAVITY,
    main_thickness_mm: BEARING_LENGTH,
    main_angle_to_grain_deg: ANGLE_TO_GRAIN,
    lateral_n: FORCE,
    withdrawal_n: FORCE
});

/// The check of a screw joint that uses most of its capacity.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum ScrewJointCheck {
    /// Lateral load alone.
    Lateral,
    /// Withdrawal load alone.
    Withdrawal,
    /// Head pulling through the side member.
    PullThrough,
    /// Lateral and withdrawal load at once.
    Combined,
}

/// One wood screw joint with its whole working.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct ScrewJoint {
    /// Nominal diameter, mm.
    pub nominal_diameter_mm: f64,
    /// Diameter at the thread root, used in the yield equations (NDS 12.3.7), mm.
    pub root_diameter_mm: f64,
    /// Diameter of the head, mm.
    pub head_diameter_mm: f64,
    /// Length of the thread with its tip, mm.
    pub thread_length_mm: f64,
    /// Length of the tapered tip, mm.
    pub tip_length_mm: f64,
    /// Depth of the tip behind the near face of the main member, mm.
    pub penetration_mm: f64,
    /// Least penetration: 6 D, tip counted (NDS 12.1.5.6), mm.
    pub required_penetration_mm: f64,
    /// Whether the main member holds at least that much of the screw.
    pub penetration: Outcome,
    /// How far the tip comes out of the far face of the main member, mm; negative while wood remains.
    pub breakthrough_mm: f64,
    /// Whether the tip stays inside the main member.
    pub stays_inside: Outcome,
    /// Bearing length in the side member, mm.
    pub side_bearing_length_mm: f64,
    /// Bearing length in the main member, half the tapered tip taken off (NDS 12.3.5.3), mm.
    pub main_bearing_length_mm: f64,
    /// Length of thread, tip counted, inside the main member, mm.
    pub thread_in_main_mm: f64,
    /// Bearing strength of the side member at the angle of the load (NDS Table 12.3.3), MPa.
    pub side_bearing_mpa: f64,
    /// Bearing strength of the main member at the angle of the load (NDS Table 12.3.3), MPa.
    pub main_bearing_mpa: f64,
    /// Bending yield strength of the screw (NDS Table I1 unless given), MPa.
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
    /// Reference withdrawal value W (NDS Eq. 12.2-2), N per mm of thread.
    pub withdrawal_n_per_mm: f64,
    /// Reference withdrawal value of the thread in the main member, N; 0 in end grain, where none is permitted.
    pub reference_withdrawal_n: f64,
    /// Reference head pull-through value W_H (NDS Eq. 12.2-6), N.
    pub reference_pull_through_n: f64,
    /// Load duration factor C_D (NDS 11.3.2).
    pub c_d: f64,
    /// Wet service factor C_M of the lateral value (NDS Table 11.3.3).
    pub c_m_lateral: f64,
    /// Wet service factor C_M of the withdrawal and pull-through values (NDS Table 11.3.3).
    pub c_m_withdrawal: f64,
    /// Temperature factor C_t (NDS Table 11.3.4).
    pub c_t: f64,
    /// End grain factor C_eg of the lateral value (NDS 12.5.2.2).
    pub c_eg_lateral: f64,
    /// Adjusted lateral capacity Z', N.
    pub lateral_capacity_n: f64,
    /// Adjusted withdrawal capacity W'p, N; 0 in end grain, where none is permitted.
    pub withdrawal_capacity_n: f64,
    /// Adjusted head pull-through capacity W_H', N.
    pub pull_through_capacity_n: f64,
    /// Capacity along the axis that stands beside the lateral load: the lesser of thread and head, N; 0 in end grain.
    pub axial_capacity_n: f64,
    /// Resultant of the loads, N.
    pub resultant_n: f64,
    /// Angle between the resultant and the wood surface, degrees.
    pub angle_deg: f64,
    /// Adjusted capacity Z'_alpha at that angle (NDS Eq. 12.4-1), N.
    pub combined_capacity_n: f64,
    /// Lateral load over Z'.
    pub lateral_utilisation: f64,
    /// Withdrawal load over W'p.
    pub withdrawal_utilisation: f64,
    /// Withdrawal load over W_H'.
    pub pull_through_utilisation: f64,
    /// Resultant over Z'_alpha.
    pub combined_utilisation: f64,
    /// Check with the largest utilisation.
    pub governing_check: ScrewJointCheck,
    /// Largest of the four utilisations; 1 is the limit.
    pub utilisation: f64,
    /// Whether no utilisation exceeds 1, the penetration suffices and the tip stays inside.
    pub outcome: Outcome,
}

/// Capacity and use of one wood screw through a side member and a gap into a main member.
///
/// # Equation
/// ```text
/// l_s = t_s − recess      p = L − l_s − g      l_m = p − E/2 (less where the tip comes out of the far side)
/// p_t = thread inside the main member          thread = max(4 D, 2 L/3), at most L
/// Z: dowel_shear with D_y = D_r      W p_t: fastener_withdrawal      W_H: head_pull_through of l_s
/// Z' = Z C_D C_M C_t C_eg      W'p = W p_t C_D C_M C_t      W_H' = W_H C_D C_M C_t
/// Z'_α: Eq. 12.4-1 with min(W'p, W_H') in place of W'p
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | L, E | screw length, length of the tapered tip | mm | `screw_length_mm`, `tip_length_mm` |
/// | D, D_r | nominal and root diameter | mm | by `size`, or given |
/// | t_s, g | side member thickness, gap | mm | `side_thickness_mm`, `gap_mm` |
///
/// # Limits
/// Full-body wood screws, both members wood; the loads are those of this one screw, shared out by the caller. The
/// root is used in the yield equations throughout, as if threads bore in the shear plane (NDS 12.3.7.2 would sometimes
/// allow the shank). A tip that comes out bears only inside the member. The loads of a screw along its axis in end grain
/// are not permitted by the standard. Eq. 12.4-1 prints the withdrawal capacity; a screw whose head pulls through first
/// holds no more than its head, so the lesser of the two enters it. The steel's tension at the root, spacing and edge distances are not looked at.
/// See the caution of the module.
///
/// # Errors
/// `out_of_range`, `not_finite`; `missing_field` when the size is `own` and a diameter is left out; `inconsistent` for a
/// root thicker than the screw, a head thinner than it, a thread or a tip longer than it, or a head sunk through the side
/// member; `no_published_value` for a diameter outside the bending yield table, or a withdrawal load in end grain;
/// `penetration_too_short` when the screw or its thread does not reach the main member.
///
/// # Source
/// NDS 2018 chapters 11 and 12, AWC TR12, as named at each field. Checked by `verification/screw_joint`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::*;
/// // A No. 14 screw of 3 in through an 18 mm ash cleat and 12.5 mm plasterboard into a spruce stud.
/// let joint = screw_joint(&ScrewJointInput {
///     size: ScrewSize::No14,
///     nominal_diameter_mm: None,
///     root_diameter_mm: None,
///     head_diameter_mm: None,
///     screw_length_mm: 76.2,
///     thread_length_mm: None,
///     tip_length_mm: None,
///     bending_yield_mpa: None,
///     side_specific_gravity: 0.60,
///     side_thickness_mm: 18.0,
///     side_angle_to_grain_deg: 90.0,
///     head_recess_mm: 0.0,
///     gap_mm: 12.5,
///     main_specific_gravity: 0.42,
///     main_thickness_mm: 89.0,
///     main_angle_to_grain_deg: 0.0,
///     main_direction: FastenerDirection::SideGrain,
///     rounding: BearingRounding::Unrounded,
///     load_duration: LoadDuration::Permanent,
///     fabrication_moisture: MemberMoisture::Dry,
///     service_moisture: MemberMoisture::Dry,
///     temperature: TemperatureBand::UpTo100F,
///     arrangement: FastenerArrangement::SeveralRows,
///     lateral_n: 200.0,
///     withdrawal_n: 150.0,
/// })?;
/// assert_eq!(joint.governing_mode, YieldMode::Iv);
/// assert!(joint.utilisation < 1.0);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn screw_joint(input: &ScrewJointInput) -> Result<ScrewJoint, Fault> {
    input.check_ranges()?;
    let screw = Screw::of(input)?;
    let lay = Lay::of(input, &screw)?;
    let bending_yield_mpa = match input.bending_yield_mpa {
        Some(given_mpa) => given_mpa,
        None => tabulated_bending_yield_mpa(&screw)?,
    };
    if input.main_direction == FastenerDirection::EndGrain && input.withdrawal_n > 0.0 {
        return Err(withdrawal_in_end_grain(input.withdrawal_n));
    }

    let side = bearing(&DowelBearingInput {
        specific_gravity: input.side_specific_gravity,
        diameter_mm: screw.nominal_mm,
        angle_to_grain_deg: input.side_angle_to_grain_deg,
        direction: FastenerDirection::SideGrain,
        rounding: input.rounding,
    });
    let main = bearing(&DowelBearingInput {
        specific_gravity: input.main_specific_gravity,
        diameter_mm: screw.nominal_mm,
        angle_to_grain_deg: input.main_angle_to_grain_deg,
        direction: input.main_direction,
        rounding: input.rounding,
    });
    let lateral = shear(&DowelShearInput {
        yield_diameter_mm: screw.root_mm,
        nominal_diameter_mm: Some(screw.nominal_mm),
        bending_yield_mpa,
        main_bearing_mpa: main.at_angle_mpa,
        side_bearing_mpa: side.at_angle_mpa,
        main_length_mm: lay.main_bearing_mm,
        side_length_mm: lay.side_bearing_mm,
        gap_mm: input.gap_mm,
        max_angle_to_grain_deg: largest_angle_deg(input),
    });
    let axial = withdrawal(&FastenerWithdrawalInput {
        fastener: DowelFastener::WoodScrew,
        specific_gravity: input.main_specific_gravity,
        nominal_diameter_mm: screw.nominal_mm,
        holding_length_mm: lay.thread_in_main_mm,
        penetration_mm: Some(lay.held_mm),
        direction: input.main_direction,
    });
    let head = pull_through(&HeadPullThroughInput {
        specific_gravity: input.side_specific_gravity,
        head_diameter_mm: screw.head_mm,
        net_side_thickness_mm: lay.side_bearing_mm,
    });
    let factors = factors(&ConnectionFactorsInput {
        fastener: DowelFastener::WoodScrew,
        nominal_diameter_mm: screw.nominal_mm,
        load_duration: input.load_duration,
        fabrication_moisture: input.fabrication_moisture,
        service_moisture: input.service_moisture,
        temperature: input.temperature,
        arrangement: input.arrangement,
        direction: input.main_direction,
        nail_driving: NailDriving::Straight,
    });

    let lateral_capacity_n = lateral.reference_n * factors.lateral;
    let withdrawal_capacity_n = axial.reference_n * factors.withdrawal;
    let pull_through_capacity_n = head.reference_n * factors.pull_through;
    let axial_capacity_n = withdrawal_capacity_n.min(pull_through_capacity_n);
    let both = combined(&CombinedLateralWithdrawalInput {
        rule: CombinedLoadRule::Screws,
        lateral_capacity_n,
        // In end grain there is no withdrawal load, so any capacity above nothing gives the lateral one.
        withdrawal_capacity_n: if axial_capacity_n > 0.0 { axial_capacity_n } else { lateral_capacity_n },
        lateral_n: input.lateral_n,
        withdrawal_n: input.withdrawal_n,
    });
    let share = |load_n: f64, capacity_n: f64| if load_n > 0.0 { load_n / capacity_n } else { 0.0 };
    let checks = [
        (ScrewJointCheck::Lateral, share(input.lateral_n, lateral_capacity_n)),
        (ScrewJointCheck::Withdrawal, share(input.withdrawal_n, withdrawal_capacity_n)),
        (ScrewJointCheck::PullThrough, share(input.withdrawal_n, pull_through_capacity_n)),
        (ScrewJointCheck::Combined, both.utilisation),
    ];
    let [(_, lateral_utilisation), (_, withdrawal_utilisation), (_, pull_through_utilisation), _] = checks;
    let most =
        |most: (ScrewJointCheck, f64), check: (ScrewJointCheck, f64)| if check.1 > most.1 { check } else { most };
    let (governing_check, utilisation) = checks.into_iter().fold((ScrewJointCheck::Lateral, lateral_utilisation), most);
    let breakthrough_mm = lay.penetration_mm - input.main_thickness_mm;
    let stays_inside = if breakthrough_mm <= EDGE_MM { Outcome::Met } else { Outcome::NotMet };
    let all_met = utilisation <= 1.0 && axial.penetration == Outcome::Met && stays_inside == Outcome::Met;
    let DowelShear { im_n, is_n, ii_n, iiim_n, iiis_n, iv_n, .. } = lateral;
    Ok(ScrewJoint {
        nominal_diameter_mm: screw.nominal_mm,
        root_diameter_mm: screw.root_mm,
        head_diameter_mm: screw.head_mm,
        thread_length_mm: screw.thread_mm,
        tip_length_mm: screw.tip_mm,
        penetration_mm: lay.penetration_mm,
        required_penetration_mm: axial.required_penetration_mm,
        penetration: axial.penetration,
        breakthrough_mm,
        stays_inside,
        side_bearing_length_mm: lay.side_bearing_mm,
        main_bearing_length_mm: lay.main_bearing_mm,
        thread_in_main_mm: lay.thread_in_main_mm,
        side_bearing_mpa: side.at_angle_mpa,
        main_bearing_mpa: main.at_angle_mpa,
        bending_yield_mpa,
        reduction_rule: lateral.reduction_rule,
        k_d: lateral.k_d,
        k_theta: lateral.k_theta,
        reduction: lateral.governing_reduction(),
        im_n,
        is_n,
        ii_n,
        iiim_n,
        iiis_n,
        iv_n,
        governing_mode: lateral.governing_mode,
        reference_lateral_n: lateral.reference_n,
        withdrawal_n_per_mm: axial.side_grain_n_per_mm,
        reference_withdrawal_n: axial.reference_n,
        reference_pull_through_n: head.reference_n,
        c_d: factors.c_d,
        c_m_lateral: factors.c_m_lateral,
        c_m_withdrawal: factors.c_m_withdrawal,
        c_t: factors.c_t,
        c_eg_lateral: factors.c_eg_lateral,
        lateral_capacity_n,
        withdrawal_capacity_n,
        pull_through_capacity_n,
        axial_capacity_n,
        resultant_n: both.resultant_n,
        angle_deg: both.angle_deg,
        combined_capacity_n: both.capacity_n,
        lateral_utilisation,
        withdrawal_utilisation,
        pull_through_utilisation,
        combined_utilisation: both.utilisation,
        governing_check,
        utilisation,
        outcome: if all_met { Outcome::Met } else { Outcome::NotMet },
    })
}

/// The largest angle of load to grain; a member that the screw enters along its fibres is loaded across them.
fn largest_angle_deg(input: &ScrewJointInput) -> f64 {
    let main_deg = match input.main_direction {
        FastenerDirection::SideGrain => input.main_angle_to_grain_deg,
        FastenerDirection::EndGrain => 90.0,
    };
    input.side_angle_to_grain_deg.max(main_deg)
}

/// The screw with all its dimensions.
struct Screw {
    nominal_mm: f64,
    root_mm: f64,
    head_mm: f64,
    length_mm: f64,
    thread_mm: f64,
    tip_mm: f64,
}

impl Screw {
    fn of(input: &ScrewJointInput) -> Result<Self, Fault> {
        let row = wood_screw(input.size);
        let nominal_mm = input
            .nominal_diameter_mm
            .or(row.map(|row| row.nominal_diameter_mm))
            .ok_or_else(|| missing("nominal_diameter_mm"))?;
        let root_mm = input
            .root_diameter_mm
            .or(row.map(|row| row.root_diameter_mm))
            .ok_or_else(|| missing("root_diameter_mm"))?;
        let head_mm = input
            .head_diameter_mm
            .or(row.map(|row| row.head_diameter_mm))
            .ok_or_else(|| missing("head_diameter_mm"))?;
        let length_mm = input.screw_length_mm;
        let thread_mm = input.thread_length_mm.unwrap_or_else(|| wood_screw_thread_mm(nominal_mm, length_mm));
        let tip_mm = input.tip_length_mm.unwrap_or(2.0 * nominal_mm);
        let refuse = |field, value, words, cure| {
            Err(Fault::number(ErrorCode::Inconsistent, field, value, Allowed::Text(words), cure))
        };
        if root_mm > nominal_mm + EDGE_MM {
            return refuse(
                "root_diameter_mm",
                root_mm,
                "at most the nominal diameter",
                "the root is the core of the thread",
            );
        }
        if head_mm < nominal_mm - EDGE_MM {
            return refuse("head_diameter_mm", head_mm, "at least the nominal diameter", "");
        }
        if thread_mm > length_mm + EDGE_MM {
            return refuse("thread_length_mm", thread_mm, "at most the screw's length", "");
        }
        if tip_mm > length_mm + EDGE_MM {
            return refuse("tip_length_mm", tip_mm, "at most the screw's length", "a tip of 2 D needs a longer screw");
        }
        Ok(Self { nominal_mm, root_mm, head_mm, length_mm, thread_mm, tip_mm })
    }
}

/// How the screw lies in the members.
struct Lay {
    side_bearing_mm: f64,
    penetration_mm: f64,
    /// The part of the penetration that is inside the main member.
    held_mm: f64,
    main_bearing_mm: f64,
    thread_in_main_mm: f64,
}

impl Lay {
    fn of(input: &ScrewJointInput, screw: &Screw) -> Result<Self, Fault> {
        let side_bearing_mm = input.side_thickness_mm - input.head_recess_mm;
        if side_bearing_mm < BEARING_LENGTH.low {
            return Err(Fault::number(
                ErrorCode::Inconsistent,
                "head_recess_mm",
                input.head_recess_mm,
                Allowed::Text("less than the side member's thickness"),
                "sink the head less deep",
            ));
        }
        let penetration_mm = screw.length_mm - side_bearing_mm - input.gap_mm;
        let held_mm = penetration_mm.min(input.main_thickness_mm);
        let main_bearing_mm = tapered_bearing_mm(held_mm, penetration_mm, screw.tip_mm);
        if main_bearing_mm < BEARING_LENGTH.low {
            return Err(too_short("screw_length_mm", screw.length_mm, "long enough to bear in the main member"));
        }
        let shank_end_mm = screw.length_mm - screw.thread_mm;
        let unthreaded_mm = (shank_end_mm - side_bearing_mm - input.gap_mm).max(0.0);
        let thread_in_main_mm = held_mm - unthreaded_mm;
        if thread_in_main_mm < BEARING_LENGTH.low {
            return Err(too_short("thread_length_mm", screw.thread_mm, "long enough to hold in the main member"));
        }
        Ok(Self { side_bearing_mm, penetration_mm, held_mm, main_bearing_mm, thread_in_main_mm })
    }
}

/// Bearing length of a pointed dowel, of which `held_mm` of its `penetration_mm` lie inside the member.
///
/// The tip counts half (p − E/2, NDS 12.3.5.3). Where the point comes out of the far face, what bears less is only the
/// part of the taper still inside: its loss grows with the square of its length.
pub(super) fn tapered_bearing_mm(held_mm: f64, penetration_mm: f64, tip_mm: f64) -> f64 {
    let taper_mm = (held_mm - (penetration_mm - tip_mm)).clamp(0.0, tip_mm);
    let lost_mm = if taper_mm > 0.0 { 0.5 * taper_mm * (taper_mm / tip_mm) } else { 0.0 };
    held_mm - lost_mm
}

fn tabulated_bending_yield_mpa(screw: &Screw) -> Result<f64, Fault> {
    let input = BendingYieldInput { fastener: BendingYieldFastener::LowCarbon, diameter_mm: screw.nominal_mm };
    match bending_yield(&input) {
        Ok(found) => Ok(found.bending_yield_mpa),
        Err(fault) => Err(Fault { field: "nominal_diameter_mm", ..fault }),
    }
}

#[cold]
fn missing(field: &'static str) -> Fault {
    Fault::plain(
        ErrorCode::MissingField,
        field,
        "a diameter when the size is own",
        "give it, or choose a tabulated size",
    )
}

#[cold]
fn too_short(field: &'static str, value_mm: f64, words: &'static str) -> Fault {
    Fault::number(ErrorCode::PenetrationTooShort, field, value_mm, Allowed::Text(words), "take a longer screw")
}

#[cold]
fn withdrawal_in_end_grain(load_n: f64) -> Fault {
    Fault::number(
        ErrorCode::NoPublishedValue,
        "withdrawal_n",
        load_n,
        Allowed::Text("0 in end grain, where the standard permits no withdrawal"),
        "drive the screw into side grain",
    )
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const SCREW_JOINT: crate::json::Calculation = crate::json::calculation!(
    screw_joint: ScrewJointInput => ScrewJoint, Typed,
    "Capacity and use of one wood screw through a side member and a gap into a main member"
);

#[cfg(test)]
#[path = "joint_tests.rs"]
mod tests;
