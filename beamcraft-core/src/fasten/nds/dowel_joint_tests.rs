use proptest::prelude::*;

use super::super::dowel_joint_verdicts::dowel_joint_nds_verdicts;
use super::super::joint::{ScrewJointInput, screw_joint};
use super::*;
use crate::fasten::screws::ScrewSize;

const N_PER_LBF: f64 = 4.448_221_615_260_5;

/// A 16d common nail through 1 1/2 in into Douglas fir.
fn nail() -> DowelJointNdsInput {
    DowelJointNdsInput {
        fastener: DowelFastener::SmoothNail,
        nominal_diameter_mm: 0.162 * 25.4,
        root_diameter_mm: None,
        head_diameter_mm: Some(0.344 * 25.4),
        length_mm: 88.9,
        thread_length_mm: None,
        tip_length_mm: None,
        bending_yield_mpa: None,
        steel_tension_n: None,
        side_material: DowelMaterial::Wood,
        side_specific_gravity: Some(0.50),
        side_bearing_mpa: None,
        side_thickness_mm: 38.1,
        side_angle_to_grain_deg: 0.0,
        head_recess_mm: 0.0,
        gap_mm: 0.0,
        main_material: DowelMaterial::Wood,
        main_specific_gravity: Some(0.50),
        main_bearing_mpa: None,
        main_thickness_mm: 89.0,
        main_angle_to_grain_deg: 0.0,
        main_direction: FastenerDirection::SideGrain,
        rounding: BearingRounding::Nearest50Psi,
        nail_driving: NailDriving::Straight,
        design: NdsDesign::Asd,
        load_duration: LoadDuration::TenYears,
        time_effect: TimeEffect::DeadOnly,
        fabrication_moisture: MemberMoisture::Dry,
        service_moisture: MemberMoisture::Dry,
        temperature: TemperatureBand::UpTo100F,
        arrangement: FastenerArrangement::SeveralRows,
        c_g: 1.0,
        c_delta: 1.0,
        lateral_n: 400.0,
        withdrawal_n: 0.0,
    }
}

/// A 3/8 in lag screw of 4 in through 1 1/2 in.
fn lag() -> DowelJointNdsInput {
    DowelJointNdsInput {
        fastener: DowelFastener::LagScrew,
        nominal_diameter_mm: 9.525,
        root_diameter_mm: Some(0.265 * 25.4),
        head_diameter_mm: None,
        length_mm: 101.6,
        ..nail()
    }
}

// The format conversion of connections is 2.16/φ (NDS Table N1 as once written), and 2.16/0.65 = 3.32.
#[test]
fn lrfd_is_asd_with_other_factors() {
    for (duration, c_d) in [(LoadDuration::Permanent, 0.9), (LoadDuration::TenMinutes, 1.6)] {
        for (time_effect, lambda) in
            [(TimeEffect::DeadOnly, 0.6), (TimeEffect::Storage, 0.7), (TimeEffect::ShortOrImpact, 1.0)]
        {
            let found =
                dowel_joint_nds(&DowelJointNdsInput { load_duration: duration, time_effect, ..nail() }).unwrap();
            let ratio = 3.32 * 0.65 * lambda / c_d;
            assert!((found.lrfd_lateral_n / found.asd_lateral_n / ratio - 1.0).abs() < 1e-12);
            assert!((found.lrfd_withdrawal_n / found.asd_withdrawal_n / ratio - 1.0).abs() < 1e-12);
        }
    }
    let lrfd = dowel_joint_nds(&DowelJointNdsInput { design: NdsDesign::Lrfd, ..nail() }).unwrap();
    assert!((lrfd.lateral_utilisation - 400.0 / lrfd.lrfd_lateral_n).abs() < 1e-12);
}

#[test]
fn group_and_geometry_factor_reduce_the_lateral_value_only() {
    let plain = dowel_joint_nds(&lag()).unwrap();
    let found = dowel_joint_nds(&DowelJointNdsInput { c_g: 0.8, c_delta: 0.5, ..lag() }).unwrap();
    assert!((found.asd_lateral_n / plain.asd_lateral_n - 0.4).abs() < 1e-12);
    assert_eq!(found.asd_withdrawal_n, plain.asd_withdrawal_n);
}

// NDS Table L2: 4 in lag screw has 2 1/2 in of thread, the 3/8 in tip is 7/32 in; Table I1: 45 000 psi from 3/8 in on.
#[test]
fn a_lag_screw_leaves_its_tip_out() {
    let found = dowel_joint_nds(&lag()).unwrap();
    assert!((found.thread_length_mm - 63.5).abs() < 1e-9);
    assert!((found.tip_length_mm - 25.4 * 7.0 / 32.0).abs() < 1e-9);
    assert!((found.penetration_mm - 63.5).abs() < 1e-9);
    assert!((found.holding_length_mm - (63.5 - 25.4 * 7.0 / 32.0)).abs() < 1e-9);
    assert!((found.counted_penetration_mm - found.holding_length_mm).abs() < 1e-9);
    assert!((found.bending_yield_mpa - 310.264).abs() < 0.001);
    assert_eq!(found.reduction_rule, ReductionRule::QuarterInchAndMore);
    let short = DowelJointNdsInput { length_mm: 38.1, side_thickness_mm: 10.0, ..lag() };
    assert!((dowel_joint_nds(&short).unwrap().thread_length_mm - 31.75).abs() < 1e-9);
}

// NDS 12.1.6.3 and 12.5.4: started a third of the length from the end, at 30°.
#[test]
fn a_toe_nail_bears_a_third_of_its_length() {
    let toe = DowelJointNdsInput { nail_driving: NailDriving::ToeNailed, withdrawal_n: 50.0, ..nail() };
    let found = dowel_joint_nds(&toe).unwrap();
    assert!((found.side_bearing_length_mm - 88.9 / 3.0).abs() < 1e-9);
    assert!((found.penetration_mm - 88.9 * (3.0_f64.sqrt() / 2.0 - 1.0 / 3.0)).abs() < 1e-9);
    assert!((found.holding_length_mm - (88.9 - 88.9 / 3.0 / (3.0_f64.sqrt() / 2.0))).abs() < 1e-9);
    assert_eq!((found.c_tn_lateral, found.c_tn_withdrawal), (0.83, 0.67));
    let screw = DowelJointNdsInput { nail_driving: NailDriving::ToeNailed, ..lag() };
    assert_eq!(dowel_joint_nds(&screw).unwrap_err().field, "nail_driving");
    let gap = DowelJointNdsInput { gap_mm: 5.0, ..toe };
    assert_eq!(dowel_joint_nds(&gap).unwrap_err().field, "gap_mm");
}

#[test]
fn steel_and_panels_need_no_specific_gravity_and_wood_does() {
    let plate = DowelJointNdsInput {
        side_material: DowelMaterial::SheetSteelA653,
        side_specific_gravity: None,
        side_thickness_mm: 1.5,
        ..nail()
    };
    let found = dowel_joint_nds(&plate).unwrap();
    assert_eq!((found.pull_through, found.reference_pull_through_n), (Outcome::NotCovered, None));
    let thick = DowelJointNdsInput { side_thickness_mm: 10.0, ..plate };
    assert_eq!(dowel_joint_nds(&thick).unwrap_err().field, "side_thickness_mm");
    let tested = DowelJointNdsInput {
        side_material: DowelMaterial::MediumDensityFibreboard,
        side_bearing_mpa: Some(30.0),
        side_thickness_mm: 18.0,
        ..plate
    };
    assert_eq!(dowel_joint_nds(&tested).unwrap().side_bearing_mpa, 30.0);
    let untested = DowelJointNdsInput { side_bearing_mpa: None, ..tested };
    assert_eq!(dowel_joint_nds(&untested).unwrap_err().field, "side_material");
    let nothing = DowelJointNdsInput { side_specific_gravity: None, ..nail() };
    assert_eq!(dowel_joint_nds(&nothing).unwrap_err().field, "side_specific_gravity");
}

#[test]
fn what_is_not_published_is_refused_or_said() {
    let end = DowelJointNdsInput { main_direction: FastenerDirection::EndGrain, withdrawal_n: 10.0, ..nail() };
    assert_eq!(dowel_joint_nds(&end).unwrap_err().code, ErrorCode::NoPublishedValue);
    let lag_end = DowelJointNdsInput { main_direction: FastenerDirection::EndGrain, withdrawal_n: 10.0, ..lag() };
    let side = dowel_joint_nds(&lag()).unwrap().reference_withdrawal_n;
    let found = dowel_joint_nds(&lag_end).unwrap();
    assert!((found.reference_withdrawal_n / side - 0.75).abs() < 1e-12);
    // A lag screw without a washer given: the pull of its head stays open, and so does the steel.
    assert_eq!((found.pull_through, found.steel_tension), (Outcome::NotDetermined, Outcome::NotDetermined));
    assert_eq!(found.outcome, Outcome::NotDetermined);
    let declared = DowelJointNdsInput { steel_tension_n: Some(5.0), withdrawal_n: 10.0, ..nail() };
    let found = dowel_joint_nds(&declared).unwrap();
    assert_eq!((found.steel_tension, found.steel_utilisation, found.outcome), (Outcome::NotMet, 2.0, Outcome::NotMet));
    let concrete = DowelJointNdsInput { main_material: DowelMaterial::Concrete, withdrawal_n: 10.0, ..nail() };
    assert_eq!(dowel_joint_nds(&concrete).unwrap_err().field, "withdrawal_n");
    let ring = DowelJointNdsInput { fastener: DowelFastener::RingShankNail, ..nail() };
    assert_eq!(dowel_joint_nds(&ring).unwrap_err().field, "thread_length_mm");
    let bare = DowelJointNdsInput { root_diameter_mm: None, ..lag() };
    assert_eq!(dowel_joint_nds(&bare).unwrap_err().field, "root_diameter_mm");
}

proptest! {
    // The joint of a wood screw between wooden members is the one that `screw_joint` answers.
    #[test]
    fn a_wood_screw_is_the_screw_joint(
        length in 30.0..120.0_f64, side in 8.0..25.0_f64, gap in 0.0..15.0_f64, g in 0.3..0.7_f64, angle in 0.0..=90.0_f64, pull in 0.0..200.0_f64
    ) {
        let screw = ScrewJointInput {
            size: ScrewSize::No14,
            nominal_diameter_mm: None,
            root_diameter_mm: None,
            head_diameter_mm: None,
            screw_length_mm: length,
            thread_length_mm: None,
            tip_length_mm: None,
            bending_yield_mpa: None,
            side_specific_gravity: 0.6,
            side_thickness_mm: side,
            side_angle_to_grain_deg: angle,
            head_recess_mm: 0.0,
            gap_mm: gap,
            main_specific_gravity: g,
            main_thickness_mm: 60.0,
            main_angle_to_grain_deg: 0.0,
            main_direction: FastenerDirection::SideGrain,
            rounding: BearingRounding::Unrounded,
            load_duration: LoadDuration::Permanent,
            fabrication_moisture: MemberMoisture::Wet,
            service_moisture: MemberMoisture::Dry,
            temperature: TemperatureBand::UpTo125F,
            arrangement: FastenerArrangement::SeveralRows,
            lateral_n: 100.0,
            withdrawal_n: pull,
        };
        let general = DowelJointNdsInput {
            fastener: DowelFastener::WoodScrew,
            nominal_diameter_mm: 0.242 * 25.4,
            root_diameter_mm: Some(0.196 * 25.4),
            head_diameter_mm: Some(0.48 * 25.4),
            length_mm: length,
            side_specific_gravity: Some(0.6),
            side_thickness_mm: side,
            side_angle_to_grain_deg: angle,
            gap_mm: gap,
            main_specific_gravity: Some(g),
            main_thickness_mm: 60.0,
            rounding: BearingRounding::Unrounded,
            load_duration: LoadDuration::Permanent,
            fabrication_moisture: MemberMoisture::Wet,
            temperature: TemperatureBand::UpTo125F,
            lateral_n: 100.0,
            withdrawal_n: pull,
            ..nail()
        };
        match (screw_joint(&screw), dowel_joint_nds(&general)) {
            (Ok(one), Ok(other)) => {
                let close = |a: f64, b: f64| (a - b).abs() <= 1e-9 * a.abs().max(b.abs());
                prop_assert!(close(one.lateral_capacity_n, other.asd_lateral_n));
                prop_assert!(close(one.withdrawal_capacity_n, other.asd_withdrawal_n));
                prop_assert!(close(one.pull_through_capacity_n, other.asd_pull_through_n.unwrap()));
                prop_assert!(close(one.utilisation, other.utilisation));
                prop_assert_eq!(one.outcome, other.outcome);
                prop_assert_eq!(one.governing_mode, other.governing_mode);
            }
            (one, other) => prop_assert!(one.is_err() && (other.is_err() || pull == 0.0)),
        }
    }

    #[test]
    fn hostile_numbers_give_a_fault_or_finite_results(bits in prop::collection::vec(any::<u64>(), 12), which in any::<u16>(), kind in 0..5_usize) {
        let number = |k: usize, fair: f64| if which >> k & 1 == 0 { f64::from_bits(bits[k]) } else { fair };
        let kinds = [
            DowelFastener::WoodScrew,
            DowelFastener::LagScrew,
            DowelFastener::SmoothNail,
            DowelFastener::SmoothStainlessNail,
            DowelFastener::RingShankNail,
        ];
        let input = DowelJointNdsInput {
            fastener: kinds[kind],
            nominal_diameter_mm: number(0, 6.0),
            root_diameter_mm: Some(number(1, 4.0)),
            length_mm: number(2, 90.0),
            thread_length_mm: Some(number(3, 60.0)),
            tip_length_mm: Some(number(4, 0.0)),
            bending_yield_mpa: Some(number(5, 0.01)),
            side_thickness_mm: number(6, 20.0),
            gap_mm: number(7, 5e-324),
            main_thickness_mm: number(8, 0.2),
            c_g: number(9, 0.01),
            lateral_n: number(10, 1.0e7),
            withdrawal_n: number(11, 5e-324),
            ..nail()
        };
        if let Ok(found) = dowel_joint_nds(&input) {
            prop_assert!(found.asd_lateral_n > 0.0 && found.utilisation.is_finite() && found.combined_utilisation.is_finite());
            prop_assert!(found.holding_length_mm >= 0.0 && found.asd_withdrawal_n.is_finite());
        }
    }
}

// NDS Table 12N, G 0.50, side member 1 1/2 in (the rows of `verification/nds_joint` go through the whole table).
#[test]
fn the_tabulated_nail_comes_out() {
    let found = dowel_joint_nds(&nail()).unwrap();
    assert!((found.reference_lateral_n / N_PER_LBF - 141.0).abs() < 0.5);
    assert_eq!(found.governing_mode, YieldMode::Iv);
}

// Every line's capacity over its factors is a reference value of the joint.
#[test]
fn the_lines_of_a_reviewer_carry_the_working() {
    for design in [NdsDesign::Asd, NdsDesign::Lrfd] {
        let input = DowelJointNdsInput { design, withdrawal_n: 30.0, c_g: 0.9, ..nail() };
        let found = dowel_joint_nds(&input).unwrap();
        let lines = dowel_joint_nds_verdicts(&input, &found, "nails");
        assert_eq!(lines.len(), 8);
        let product = |line: usize| lines[line].factors.iter().map(|factor| factor.value).product::<f64>();
        let yield_n = found.reference_lateral_n * found.reduction;
        assert!((lines[0].capacity.unwrap() / (yield_n * product(0)) - 1.0).abs() < 1e-12);
        assert!((lines[1].capacity.unwrap() / (found.reference_withdrawal_n * product(1)) - 1.0).abs() < 1e-12);
        let pull_n = found.reference_pull_through_n.unwrap();
        assert!((lines[2].capacity.unwrap() / (pull_n * product(2)) - 1.0).abs() < 1e-12);
        assert_eq!(lines[3].outcome, Outcome::NotDetermined);
        assert_eq!(lines[4].utilisation, Some(found.combined_utilisation));
        assert_eq!((lines[5].outcome, lines[6].outcome), (found.penetration, found.stays_inside));
    }
    let plate = DowelJointNdsInput {
        side_material: DowelMaterial::SheetSteelA653,
        side_thickness_mm: 2.0,
        steel_tension_n: Some(100.0),
        withdrawal_n: 30.0,
        ..nail()
    };
    let lines = dowel_joint_nds_verdicts(&plate, &dowel_joint_nds(&plate).unwrap(), "nails");
    assert_eq!((lines[2].outcome, lines[3].utilisation), (Outcome::NotCovered, Some(0.3)));
}
