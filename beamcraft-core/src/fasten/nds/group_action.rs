//! How unevenly a row of fasteners shares its load.

use super::is_quarter_inch;
use crate::error::Fault;
use crate::limits::{Limited, limited};
use crate::units::factor::{INCH_MM, POUND_FORCE_PER_INCH_N_MM};

/// What the row of fasteners joins, which decides its load/slip modulus.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum SlipJoint {
    /// Wood to wood: 180 000 D^1.5 lbf/in.
    WoodToWood,
    /// Wood to metal: 270 000 D^1.5 lbf/in.
    WoodToMetal,
}

/// A row of fasteners in the direction of the load.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<GroupActionFactorInput>))]
pub struct GroupActionFactorInput {
    /// Nominal diameter of the fasteners, mm.
    pub nominal_diameter_mm: f64,
    /// Number of fasteners in the row.
    pub fastener_count: u32,
    /// Centre spacing of the fasteners in the row, mm.
    pub spacing_mm: f64,
    /// What the row joins; wood to wood by default, the lower modulus.
    #[cfg_attr(feature = "json", serde(default = "wood_to_wood"))]
    pub joint: SlipJoint,
    /// Load/slip modulus of one fastener, N/mm; left out it is that of the joint.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub slip_modulus_n_per_mm: Option<f64>,
    /// Modulus of elasticity of the main member, MPa.
    pub main_modulus_mpa: f64,
    /// Gross area of the main member across the load, mm²; for a load across its grain, thickness times the width of the
    /// row group (NDS 11.3.6.3).
    pub main_area_mm2: f64,
    /// Modulus of elasticity of the side members, MPa.
    pub side_modulus_mpa: f64,
    /// Sum of the gross areas of the side members across the load, mm².
    pub side_area_mm2: f64,
}

limited!(GroupActionFactorInput {
    nominal_diameter_mm: FASTENER_DIAMETER,
    fastener_count: ROW_COUNT,
    spacing_mm: SPACING,
    slip_modulus_n_per_mm: SLIP_MODULUS,
    main_modulus_mpa: ELASTIC_MODULUS,
    main_area_mm2: CROSS_SECTION,
    side_modulus_mpa: ELASTIC_MODULUS,
    side_area_mm2: CROSS_SECTION
});

#[cfg(feature = "json")]
fn wood_to_wood() -> SlipJoint {
    SlipJoint::WoodToWood
}

/// Group action factor of a row, with its working.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct GroupActionFactor {
    /// Load/slip modulus gamma of one fastener, N/mm.
    pub slip_modulus_n_per_mm: f64,
    /// Ratio R_EA of the lesser to the greater axial stiffness of the members.
    pub stiffness_ratio: f64,
    /// Term u of NDS Eq. 11.3-1.
    pub u: f64,
    /// Term m of NDS Eq. 11.3-1.
    pub m: f64,
    /// Group action factor C_g; 1 for fasteners below 1/4 in and for one fastener.
    pub c_g: f64,
    /// Number of fasteners that share a load evenly and carry as much: n C_g.
    pub effective_count: f64,
}

/// Group action factor of a row of bolts, lag screws or other dowels.
///
/// # Equation
/// ```text
/// C_g = m (1 − m^2n) / (n ((1 + R_EA m^n)(1 + m) − 1 + m^2n)) × (1 + R_EA) / (1 − m)                     (11.3-1)
/// u = 1 + γ (s/2) (1/(E_m A_m) + 1/(E_s A_s))      m = u − √(u² − 1)      R_EA = min/max of E_m A_m, E_s A_s
/// γ = 180 000 D^1.5 wood to wood, 270 000 D^1.5 wood to metal, lbf/in with D in inches
/// C_g = 1 for D < 1/4 in
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | n, s | number and spacing of the fasteners in the row | –, mm | `fastener_count`, `spacing_mm` |
/// | E, A | modulus of elasticity and area of a member | MPa, mm² | `main_…`, `side_…` |
/// | γ | load/slip modulus of one fastener | N/mm | `slip_modulus_n_per_mm` |
///
/// # Limits
/// One row along the load, equal fasteners at equal spacing, members that stretch elastically. Rows less than a quarter
/// of the spacing apart, when staggered, count as one row (NDS 11.3.6.2).
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// NDS 2018 11.3.6, Eq. 11.3-1 (recalled; the modulus γ seen). Checked by `verification/nds_group_action` and in the tests
/// by solving the row of springs between two elastic bars.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::{GroupActionFactorInput, SlipJoint, group_action_factor};
/// let row = group_action_factor(&GroupActionFactorInput {
///     nominal_diameter_mm: 25.4,
///     fastener_count: 4,
///     spacing_mm: 101.6,
///     joint: SlipJoint::WoodToWood,
///     slip_modulus_n_per_mm: None,
///     main_modulus_mpa: 9652.7,
///     main_area_mm2: 6451.6,
///     side_modulus_mpa: 9652.7,
///     side_area_mm2: 3225.8,
/// })?;
/// assert!((row.c_g - 0.84).abs() < 0.005);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn group_action_factor(input: &GroupActionFactorInput) -> Result<GroupActionFactor, Fault> {
    input.check_ranges()?;
    let diameter_in = input.nominal_diameter_mm / INCH_MM;
    let per_in = match input.joint {
        SlipJoint::WoodToWood => 180_000.0,
        SlipJoint::WoodToMetal => 270_000.0,
    };
    let ruled = per_in * diameter_in * diameter_in.sqrt() * POUND_FORCE_PER_INCH_N_MM;
    let slip_modulus_n_per_mm = input.slip_modulus_n_per_mm.unwrap_or(ruled);
    let (main_n, side_n) = (input.main_modulus_mpa * input.main_area_mm2, input.side_modulus_mpa * input.side_area_mm2);
    let stiffness_ratio = main_n.min(side_n) / main_n.max(side_n);
    // u − 1 and 1 − m are kept by themselves: with stiff members both are small beside 1.
    let excess = slip_modulus_n_per_mm * (0.5 * input.spacing_mm) * (1.0 / main_n + 1.0 / side_n);
    let m = 1.0 / (1.0 + excess + (excess * (excess + 2.0)).sqrt());
    let count = f64::from(input.fastener_count);
    // (1 − m^2n)/(1 − m) is the sum of the powers below 2n, which loses no digits when m is near 1.
    let (mut sum, mut power, mut power_n) = (0.0, 1.0, 1.0);
    for k in 0..2 * input.fastener_count {
        if k == input.fastener_count {
            power_n = power;
        }
        sum += power;
        power *= m;
    }
    // (1 + R m^n)(1 + m) − 1 + m^2n, multiplied out so that nothing cancels when m is small.
    let below = m + stiffness_ratio * power_n * (1.0 + m) + power;
    let formula = m * sum * (1.0 + stiffness_ratio) / (count * below);
    let c_g =
        if is_quarter_inch(input.nominal_diameter_mm) && input.fastener_count > 1 { formula.min(1.0) } else { 1.0 };
    Ok(GroupActionFactor {
        slip_modulus_n_per_mm,
        stiffness_ratio,
        u: 1.0 + excess,
        m,
        c_g,
        effective_count: count * c_g,
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const GROUP_ACTION_FACTOR: crate::json::Calculation = crate::json::calculation!(
    group_action_factor: GroupActionFactorInput => GroupActionFactor, Typed,
    "Group action factor of a row of dowels, from the stretch of the members"
);

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn row(count: u32, main_n: f64, side_n: f64, slip: f64, spacing_mm: f64) -> GroupActionFactorInput {
        GroupActionFactorInput {
            nominal_diameter_mm: 12.7,
            fastener_count: count,
            spacing_mm,
            joint: SlipJoint::WoodToWood,
            slip_modulus_n_per_mm: Some(slip),
            main_modulus_mpa: 10_000.0,
            main_area_mm2: main_n / 10_000.0,
            side_modulus_mpa: 10_000.0,
            side_area_mm2: side_n / 10_000.0,
        }
    }

    /// Independent: springs between two elastic bars, the load entering the main bar at fastener 1 and leaving the side
    /// bar at fastener n. Compatibility between neighbours i and i+1: the slip grows by what the side bar stretches
    /// more than the main bar. Shot from a unit force in the first spring, with a second shot for the load (linear).
    fn shared_by_springs(count: usize, main_n: f64, side_n: f64, slip: f64, spacing_mm: f64) -> f64 {
        let shoot = |first: f64, load: f64| {
            let mut forces = vec![first];
            let mut passed = first;
            for _ in 1..count {
                let last = *forces.last().unwrap();
                let main_stretch = (load - passed) * spacing_mm / main_n;
                let side_stretch = passed * spacing_mm / side_n;
                let next = last + slip * (side_stretch - main_stretch);
                passed += next;
                forces.push(next);
            }
            (forces, passed)
        };
        // Forces depend linearly on (first, load); find the first so that they add up to a load of 1.
        let (_, from_first) = shoot(1.0, 0.0);
        let (_, from_load) = shoot(0.0, 1.0);
        let (forces, total) = shoot((1.0 - from_load) / from_first, 1.0);
        assert!((total - 1.0).abs() < 1e-6);
        1.0 / (count as f64 * forces.into_iter().fold(0.0, f64::max))
    }

    proptest! {
        #[test]
        fn it_is_the_most_loaded_spring_between_two_bars(
            count in 2_u32..9, main in 5e6..2e8_f64, side in 5e6..2e8_f64, slip in 500.0..20_000.0_f64, spacing in 25.0..150.0_f64
        ) {
            let found = group_action_factor(&row(count, main, side, slip, spacing)).unwrap();
            let springs = shared_by_springs(count as usize, main, side, slip, spacing);
            prop_assert!((found.c_g / springs - 1.0).abs() < 1e-6, "{} against {springs}", found.c_g);
        }

        #[test]
        fn softer_members_and_more_fasteners_share_less_evenly(
            count in 2_u32..40, main in 5e6..2e8_f64, side in 5e6..2e8_f64, slip in 500.0..20_000.0_f64
        ) {
            let base = group_action_factor(&row(count, main, side, slip, 80.0)).unwrap();
            let more = group_action_factor(&row(count + 1, main, side, slip, 80.0)).unwrap();
            let wider = group_action_factor(&row(count, main, side, slip, 90.0)).unwrap();
            prop_assert!(more.c_g <= base.c_g && wider.c_g <= base.c_g);
            prop_assert!(more.effective_count >= base.effective_count * (1.0 - 1e-12));
            let turned = group_action_factor(&row(count, side, main, slip, 80.0)).unwrap();
            prop_assert!((turned.c_g / base.c_g - 1.0).abs() < 1e-12);
        }

        #[test]
        fn hostile_numbers_give_a_fault_or_a_share(bits in prop::array::uniform7(any::<u64>()), count in any::<u32>(), which in any::<u8>()) {
            let number = |k: usize, fair: f64| if which >> k & 1 == 0 { f64::from_bits(bits[k]) } else { fair };
            let input = GroupActionFactorInput {
                nominal_diameter_mm: number(0, 25.4),
                fastener_count: if which % 3 == 0 { count } else { 1_000 },
                spacing_mm: number(1, 10.0),
                joint: SlipJoint::WoodToMetal,
                slip_modulus_n_per_mm: Some(number(2, 1.0e6)),
                main_modulus_mpa: number(3, 100.0),
                main_area_mm2: number(4, 1.0),
                side_modulus_mpa: number(5, 300_000.0),
                side_area_mm2: number(6, 1.0e7),
            };
            if let Ok(found) = group_action_factor(&input) {
                prop_assert!(found.c_g > 0.0 && found.c_g <= 1.0 && found.u.is_finite() && found.m > 0.0);
            }
        }
    }

    #[test]
    fn small_fasteners_and_single_ones_have_no_group() {
        let small = GroupActionFactorInput { nominal_diameter_mm: 6.0, ..row(10, 1e7, 1e7, 10_000.0, 80.0) };
        assert_eq!(group_action_factor(&small).unwrap().c_g, 1.0);
        assert_eq!(group_action_factor(&row(1, 1e7, 1e7, 10_000.0, 80.0)).unwrap().c_g, 1.0);
    }

    #[test]
    fn stiff_members_share_evenly() {
        let stiff = group_action_factor(&row(12, 1e11, 1e11, 1.0, 10.0)).unwrap();
        assert!(stiff.c_g > 1.0 - 1e-6 && stiff.c_g <= 1.0);
    }
}
