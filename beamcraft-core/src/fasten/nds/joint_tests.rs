use proptest::prelude::*;

use super::super::joint_verdicts::screw_joint_verdicts;
use super::*;

/// A No. 14 screw of 3 in through an 18 mm ash cleat and 12.5 mm plasterboard into a spruce stud.
fn cleat_on_stud() -> ScrewJointInput {
    ScrewJointInput {
        size: ScrewSize::No14,
        nominal_diameter_mm: None,
        root_diameter_mm: None,
        head_diameter_mm: None,
        screw_length_mm: 76.2,
        thread_length_mm: None,
        tip_length_mm: None,
        bending_yield_mpa: None,
        side_specific_gravity: 0.60,
        side_thickness_mm: 18.0,
        side_angle_to_grain_deg: 90.0,
        head_recess_mm: 0.0,
        gap_mm: 12.5,
        main_specific_gravity: 0.42,
        main_thickness_mm: 89.0,
        main_angle_to_grain_deg: 0.0,
        main_direction: FastenerDirection::SideGrain,
        rounding: BearingRounding::Unrounded,
        load_duration: LoadDuration::Permanent,
        fabrication_moisture: MemberMoisture::Dry,
        service_moisture: MemberMoisture::Dry,
        temperature: TemperatureBand::UpTo100F,
        arrangement: FastenerArrangement::SeveralRows,
        lateral_n: 200.0,
        withdrawal_n: 150.0,
    }
}

// Generic No. 10 screw, 2 1/2 in, through 23/32 in plywood into Douglas fir-larch, NDS 2024 equations in an open
// repository (seen): lengths, every mode in newtons, and the withdrawal of the ruled thread length.
#[test]
fn a_published_screw_through_plywood_comes_out_in_every_mode() {
    let input = ScrewJointInput {
        size: ScrewSize::No10,
        screw_length_mm: 63.5,
        side_specific_gravity: 0.42,
        side_thickness_mm: 18.25625,
        gap_mm: 0.0,
        main_specific_gravity: 0.50,
        rounding: BearingRounding::Nearest50Psi,
        ..cleat_on_stud()
    };
    let joint = screw_joint(&input).unwrap();
    let near =
        |value: f64, printed: f64, within: f64| assert!((value - printed).abs() < within, "{value} against {printed}");
    near(joint.main_bearing_length_mm, 40.41775, 1e-9);
    near(joint.thread_in_main_mm, 42.3333, 1e-3);
    near(joint.im_n, 2274.04, 0.01);
    near(joint.ii_n, 713.98, 0.01);
    near(joint.iiim_n, 767.25, 0.01);
    near(joint.iiis_n, 386.75, 0.01);
    near(joint.iv_n, 476.05, 0.01);
    near(joint.reference_withdrawal_n, 1003.63, 0.02);
    assert_eq!(joint.governing_mode, YieldMode::Iiis);
}

// By hand: p = 76.2 − 18 − 12.5 = 45.7; E = 2 × 6.1468; l_m = 45.7 − 6.1468; 6 D = 36.88; thread 2/3 × 76.2 = 50.8, all of
// p inside it; W = 2850 × 0.42² × 0.242 = 121.66 lbf/in = 21.306 N/mm.
#[test]
fn a_cleat_through_plasterboard_is_laid_out_as_by_hand() {
    let joint = screw_joint(&cleat_on_stud()).unwrap();
    assert!((joint.penetration_mm - 45.7).abs() < 1e-9);
    assert!((joint.main_bearing_length_mm - 39.5532).abs() < 1e-9);
    assert!((joint.required_penetration_mm - 36.8808).abs() < 1e-9);
    assert!((joint.thread_in_main_mm - 45.7).abs() < 1e-9);
    assert!((joint.withdrawal_n_per_mm - 21.306).abs() < 1e-3);
    assert!((joint.withdrawal_capacity_n - 0.9 * 21.306 * 45.7).abs() < 0.1);
    assert!((joint.breakthrough_mm + 43.3).abs() < 1e-9);
    assert_eq!((joint.penetration, joint.stays_inside, joint.outcome), (Outcome::Met, Outcome::Met, Outcome::Met));
    let touching = screw_joint(&ScrewJointInput { gap_mm: 0.0, ..cleat_on_stud() }).unwrap();
    assert!(joint.lateral_capacity_n < touching.lateral_capacity_n);
}

#[test]
fn a_short_screw_is_computed_and_marked() {
    let joint = screw_joint(&ScrewJointInput { screw_length_mm: 60.0, ..cleat_on_stud() }).unwrap();
    assert_eq!((joint.penetration, joint.outcome), (Outcome::NotMet, Outcome::NotMet));
    let fault =
        screw_joint(&ScrewJointInput { screw_length_mm: 32.0, ..cleat_on_stud() }).expect_err("no bearing left");
    assert_eq!((fault.code, fault.field), (ErrorCode::PenetrationTooShort, "screw_length_mm"));
}

#[test]
fn a_point_that_comes_out_bears_and_holds_only_inside() {
    let thin = ScrewJointInput { main_thickness_mm: 38.0, ..cleat_on_stud() };
    let joint = screw_joint(&thin).unwrap();
    assert!((joint.breakthrough_mm - 7.7).abs() < 1e-9);
    assert_eq!((joint.stays_inside, joint.outcome), (Outcome::NotMet, Outcome::NotMet));
    assert!((joint.thread_in_main_mm - 38.0).abs() < 1e-9);
    assert!(joint.main_bearing_length_mm < 38.0 && joint.main_bearing_length_mm > 37.0);
    // The bearing length moves without a jump as the point passes the far face.
    let at = |thickness_mm: f64| {
        screw_joint(&ScrewJointInput { main_thickness_mm: thickness_mm, ..thin }).unwrap().main_bearing_length_mm
    };
    assert!((at(45.7) - at(45.7 + 1e-6)).abs() < 1e-5 && (at(45.7) - at(45.7 - 1e-6)).abs() < 1e-5);
}

#[test]
fn end_grain_carries_sideways_only() {
    let end = ScrewJointInput { main_direction: FastenerDirection::EndGrain, withdrawal_n: 0.0, ..cleat_on_stud() };
    let joint = screw_joint(&end).unwrap();
    assert_eq!((joint.withdrawal_capacity_n, joint.c_eg_lateral), (0.0, 0.67));
    assert_eq!(joint.combined_capacity_n, joint.lateral_capacity_n);
    assert_eq!(joint.outcome, Outcome::Met);
    let fault = screw_joint(&ScrewJointInput { withdrawal_n: 1.0, ..end }).expect_err("refused");
    assert_eq!((fault.code, fault.field), (ErrorCode::NoPublishedValue, "withdrawal_n"));
}

#[test]
fn a_screw_outside_the_table_needs_its_own_numbers() {
    let own = ScrewJointInput { size: ScrewSize::Own, nominal_diameter_mm: Some(6.0), ..cleat_on_stud() };
    let fault = screw_joint(&own).expect_err("root is missing");
    assert_eq!((fault.code, fault.field), (ErrorCode::MissingField, "root_diameter_mm"));
    let own = ScrewJointInput { root_diameter_mm: Some(4.0), head_diameter_mm: Some(12.0), ..own };
    let joint = screw_joint(&own).unwrap();
    assert_eq!((joint.nominal_diameter_mm, joint.root_diameter_mm), (6.0, 4.0));
    let thin = ScrewJointInput {
        nominal_diameter_mm: Some(2.0),
        root_diameter_mm: Some(1.5),
        head_diameter_mm: Some(4.0),
        ..own
    };
    let fault = screw_joint(&thin).expect_err("below the bending yield table");
    assert_eq!((fault.code, fault.field), (ErrorCode::NoPublishedValue, "nominal_diameter_mm"));
    assert!(screw_joint(&ScrewJointInput { bending_yield_mpa: Some(600.0), ..thin }).is_ok());
    for (wrong, field) in [
        (ScrewJointInput { root_diameter_mm: Some(7.0), ..own }, "root_diameter_mm"),
        (ScrewJointInput { head_diameter_mm: Some(5.0), ..own }, "head_diameter_mm"),
        (ScrewJointInput { thread_length_mm: Some(80.0), ..own }, "thread_length_mm"),
        (ScrewJointInput { tip_length_mm: Some(80.0), ..own }, "tip_length_mm"),
        (ScrewJointInput { head_recess_mm: 18.0, ..own }, "head_recess_mm"),
    ] {
        let fault = screw_joint(&wrong).expect_err(field);
        assert_eq!((fault.code, fault.field), (ErrorCode::Inconsistent, field));
    }
}

#[test]
fn verdicts_say_what_the_joint_says() {
    for (lateral_n, withdrawal_n) in [(200.0, 150.0), (0.0, 0.0), (2_000.0, 0.0), (100.0, 5_000.0)] {
        let input = ScrewJointInput { lateral_n, withdrawal_n, ..cleat_on_stud() };
        let joint = screw_joint(&input).unwrap();
        let verdicts = screw_joint_verdicts(&input, &joint, "wall screws");
        assert_eq!(verdicts.len(), 8);
        let failed = verdicts.iter().any(|verdict| verdict.outcome == Outcome::NotMet);
        assert_eq!(failed, joint.outcome == Outcome::NotMet);
        let lateral = &verdicts[0];
        assert_eq!(lateral.clause.to_string(), "AWC TR12, Table 1-1 (general dowel equations)");
        // The governing yield load times every factor is the capacity.
        let product: f64 = lateral.factors.iter().map(|factor| factor.value).product();
        let yield_n = joint.reference_lateral_n * joint.reduction;
        assert!((yield_n * product / lateral.capacity.unwrap() - 1.0).abs() < 1e-12);
        let axial: f64 = verdicts[1].factors.iter().map(|factor| factor.value).product();
        assert!((joint.reference_withdrawal_n * axial / verdicts[1].capacity.unwrap() - 1.0).abs() < 1e-12);
        let worst = verdicts[..4].iter().filter_map(|verdict| verdict.utilisation).fold(0.0, f64::max);
        assert!((worst - joint.utilisation).abs() < 1e-12);
        assert_eq!(verdicts[6].outcome, Outcome::NotCovered);
    }
    let thick = ScrewJointInput { size: ScrewSize::No18, screw_length_mm: 101.6, ..cleat_on_stud() };
    let joint = screw_joint(&thick).unwrap();
    assert_eq!(screw_joint_verdicts(&thick, &joint, "")[6].outcome, Outcome::NotDetermined);
}

#[cfg(feature = "json")]
#[test]
fn the_json_door_fills_in_the_defaults() {
    let text = r#"{"size":"no_14","screw_length_mm":76.2,"side_specific_gravity":0.6,"side_thickness_mm":18,
        "side_angle_to_grain_deg":90,"gap_mm":12.5,"main_specific_gravity":0.42,"main_thickness_mm":89,
        "main_angle_to_grain_deg":0,"lateral_n":200,"withdrawal_n":150}"#;
    let through_door = (SCREW_JOINT.call)(text).unwrap();
    assert_eq!(through_door, crate::json::write(&screw_joint(&cleat_on_stud()).unwrap()).unwrap());
    assert!(through_door.contains(r#""governing_mode":"iv""#), "{through_door}");
    let fault = (SCREW_JOINT.call)(&text.replace("no_14", "no_13")).unwrap_err();
    assert_eq!(fault.field(), "size");
}

fn any_size() -> impl Strategy<Value = ScrewSize> {
    prop::sample::select(vec![
        ScrewSize::No6,
        ScrewSize::No10,
        ScrewSize::No14,
        ScrewSize::No18,
        ScrewSize::No24,
        ScrewSize::Own,
    ])
}

proptest! {
    #[test]
    fn a_denser_stud_holds_more(low in 0.3..0.7_f64, more in 0.0..0.3_f64) {
        let at = |gravity: f64| screw_joint(&ScrewJointInput { main_specific_gravity: gravity, ..cleat_on_stud() }).unwrap();
        let (soft, dense) = (at(low), at(low + more));
        prop_assert!(dense.lateral_capacity_n >= soft.lateral_capacity_n);
        prop_assert!(dense.withdrawal_capacity_n >= soft.withdrawal_capacity_n);
    }

    #[test]
    fn a_wider_gap_holds_less(gap in 0.0..20.0_f64, more in 0.0..20.0_f64) {
        let at = |gap_mm: f64| {
            screw_joint(&ScrewJointInput { gap_mm, screw_length_mm: 101.6, ..cleat_on_stud() }).unwrap()
        };
        prop_assert!(at(gap + more).lateral_capacity_n <= at(gap).lateral_capacity_n * (1.0 + 1e-12));
        prop_assert!(at(gap + more).withdrawal_capacity_n <= at(gap).withdrawal_capacity_n * (1.0 + 1e-12));
    }

    #[test]
    fn hostile_numbers_give_a_fault_or_finite_results(
        bits in prop::array::uniform32(any::<u64>()),
        picks in prop::array::uniform32(0_u8..12),
        size in any_size(),
        end_grain in any::<bool>(),
    ) {
        // Mostly a value within reason or at the edge of its range; now and then any bit pattern.
        let number = |index: usize, low: f64, likely: f64, high: f64| match picks[index] {
            0 => f64::from_bits(bits[index]),
            1 => low,
            2 => high,
            _ => likely,
        };
        let maybe = |index: usize, low: f64, likely: f64, high: f64| {
            if bits[index] % 3 == 0 { None } else { Some(number(index, low, likely, high)) }
        };
        let input = ScrewJointInput {
            size,
            nominal_diameter_mm: maybe(0, 1.0, 6.0, 25.4),
            root_diameter_mm: maybe(1, 1.0, 4.0, 25.4),
            head_diameter_mm: maybe(2, 1.0, 12.0, 100.0),
            screw_length_mm: number(3, 5.0, 80.0, 1_000.0),
            thread_length_mm: maybe(4, 0.1, 40.0, 1_000.0),
            tip_length_mm: maybe(5, 0.0, 10.0, 500.0),
            bending_yield_mpa: maybe(6, 0.01, 500.0, 2_000.0),
            side_specific_gravity: number(7, 0.05, 0.6, 1.5),
            side_thickness_mm: number(8, 0.1, 18.0, 1_000.0),
            side_angle_to_grain_deg: number(9, 0.0, 45.0, 90.0),
            head_recess_mm: number(10, 0.0, 2.0, 500.0),
            gap_mm: number(11, 0.0, 12.5, 500.0),
            main_specific_gravity: number(12, 0.05, 0.4, 1.5),
            main_thickness_mm: number(13, 0.1, 89.0, 1_000.0),
            main_angle_to_grain_deg: number(14, 0.0, 45.0, 90.0),
            main_direction: if end_grain { FastenerDirection::EndGrain } else { FastenerDirection::SideGrain },
            lateral_n: number(15, 0.0, 100.0, 1.0e7),
            withdrawal_n: number(16, 0.0, 100.0, 1.0e7),
            ..cleat_on_stud()
        };
        if let Ok(joint) = screw_joint(&input) {
            let numbers = [
                joint.nominal_diameter_mm, joint.root_diameter_mm, joint.head_diameter_mm, joint.thread_length_mm,
                joint.tip_length_mm, joint.penetration_mm, joint.breakthrough_mm, joint.side_bearing_length_mm,
                joint.main_bearing_length_mm, joint.thread_in_main_mm, joint.side_bearing_mpa, joint.main_bearing_mpa,
                joint.reduction, joint.im_n, joint.is_n, joint.ii_n, joint.iiim_n, joint.iiis_n, joint.iv_n,
                joint.reference_lateral_n, joint.withdrawal_n_per_mm, joint.reference_withdrawal_n,
                joint.reference_pull_through_n, joint.lateral_capacity_n, joint.withdrawal_capacity_n,
                joint.pull_through_capacity_n, joint.resultant_n, joint.angle_deg, joint.combined_capacity_n,
                joint.lateral_utilisation, joint.withdrawal_utilisation, joint.pull_through_utilisation,
                joint.combined_utilisation, joint.utilisation,
            ];
            prop_assert!(numbers.into_iter().all(f64::is_finite), "{joint:?} of {input:?}");
            prop_assert!(joint.main_bearing_length_mm <= input.main_thickness_mm);
            prop_assert!(joint.thread_in_main_mm <= joint.thread_length_mm + 1e-9);
            prop_assert_eq!(screw_joint_verdicts(&input, &joint, "x").len(), 8);
        }
    }
}
