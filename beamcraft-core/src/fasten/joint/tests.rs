use super::*;
use crate::error::ErrorCode;
use crate::fasten::nds::{
    BearingRounding, FastenerArrangement, FastenerDirection, LoadDuration, MemberMoisture, ScrewJointInput,
    TemperatureBand, TimeEffect, screw_joint,
};
use crate::fasten::screws::ScrewSize;
use crate::fasten::stagger::RowStagger;
use crate::verdict::Outcome;

pub(super) fn member(thickness_mm: f64) -> JointMember {
    JointMember {
        specific_gravity: Some(0.42),
        characteristic_density_kg_m3: Some(350.0),
        ..JointMember::plain(JointMaterial::Softwood, thickness_mm, 0.0)
    }
}

/// A 6 mm screw of 80 mm through 18 mm into a stud.
pub(super) fn screws(standard: JointStandard) -> JointInput {
    let screw = JointFastener {
        root_diameter_mm: Some(4.0),
        shank_diameter_mm: Some(4.3),
        thread_length_mm: Some(50.0),
        bending_yield_mpa: Some(620.0),
        tensile_strength_mpa: Some(800.0),
        tension_capacity_n: Some(9_000.0),
        ..JointFastener::plain(JointFastenerKind::WoodScrew, 6.0, 12.0, 80.0)
    };
    JointInput {
        lead_hole_mm: Some(3.5),
        lateral_n: 250.0,
        withdrawal_n: 100.0,
        ..JointInput::plain(standard, screw, member(18.0), member(89.0))
    }
}

pub(super) fn lining(thickness_mm: f64) -> Vec<JointGapLayer> {
    vec![JointGapLayer { name: "wall lining".to_owned(), thickness_mm }]
}

pub(super) fn line<'a>(lines: &'a [crate::verdict::Verdict], name: &str) -> &'a crate::verdict::Verdict {
    lines.iter().find(|line| line.name.starts_with(name)).unwrap_or_else(|| panic!("no line {name}"))
}

#[test]
fn the_american_answer_is_that_of_the_whole_screw_joint() {
    let input = JointInput { gaps: lining(12.5), lateral_n: 120.0, ..screws(JointStandard::NdsAsd) };
    let found = joint(&input).unwrap();
    let whole = screw_joint(&ScrewJointInput {
        size: ScrewSize::Own,
        nominal_diameter_mm: Some(6.0),
        root_diameter_mm: Some(4.0),
        head_diameter_mm: Some(12.0),
        screw_length_mm: 80.0,
        thread_length_mm: Some(50.0),
        tip_length_mm: None,
        bending_yield_mpa: Some(620.0),
        side_specific_gravity: 0.42,
        side_thickness_mm: 18.0,
        side_angle_to_grain_deg: 0.0,
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
        arrangement: FastenerArrangement::OneFastenerOrRow,
        lateral_n: 120.0,
        withdrawal_n: 100.0,
    })
    .unwrap();
    let values: Vec<f64> = found.modes.iter().map(|mode| mode.value_n).collect();
    assert_eq!(values, [whole.im_n, whole.is_n, whole.ii_n, whole.iiim_n, whole.iiis_n, whole.iv_n]);
    assert_eq!(found.governing_mode, whole.governing_mode.words());
    assert_eq!(found.lateral_capacity_n, Some(whole.lateral_capacity_n));
    assert_eq!(line(&found.loads, "withdrawal").capacity, Some(whole.withdrawal_capacity_n));
    assert_eq!(line(&found.loads, "head").capacity, Some(whole.pull_through_capacity_n));
    assert_eq!(found.outcome, Outcome::Met);
}

#[test]
fn both_standards_answer_in_one_shape() {
    for standard in [JointStandard::NdsAsd, JointStandard::NdsLrfd, JointStandard::Ec5] {
        let found = joint(&screws(standard)).unwrap();
        assert_eq!(found.modes.len(), 6);
        assert!(found.modes.iter().any(|mode| mode.name == found.governing_mode));
        let least_n = found.modes.iter().map(|mode| mode.value_n).fold(f64::INFINITY, f64::min);
        assert_eq!(found.lateral_value_n, Some(least_n));
        // The capacity is the value times the listed factors.
        let product: f64 = found.factors.iter().map(|factor| factor.value).product();
        assert!((found.lateral_capacity_n.unwrap() / (least_n * product) - 1.0).abs() < 1e-12);
        for name in ["lateral load", "withdrawal", "head", "tension", "lateral and withdrawal"] {
            assert_eq!(line(&found.loads, name).outcome, Outcome::Met, "{standard:?} {name}");
        }
        for name in ["least penetration", "point inside", "lead hole", "spacing"] {
            assert_ne!(line(&found.requirements, name).outcome, Outcome::NotMet, "{standard:?} {name}");
        }
        assert_eq!(found.outcome, Outcome::Met, "{standard:?}: {:?}", found.requirements);
        assert!(found.utilisation.is_some_and(|share| share > 0.0 && share <= 1.0));
        assert!(!found.cautions.is_empty());
    }
}

// NDS 2018 Appendix N: K_F φ λ in place of C_D, 3.32 · 0.65 · λ against 0.9.
#[test]
fn resistance_factor_design_takes_the_place_of_the_load_duration() {
    let asd = joint(&screws(JointStandard::NdsAsd)).unwrap();
    let input = JointInput { time_effect: TimeEffect::OccupancyOrSnow, ..screws(JointStandard::NdsLrfd) };
    let lrfd = joint(&input).unwrap();
    let ratio = 3.32 * 0.65 * 0.8 / 0.9;
    for (factored, allowable) in lrfd.loads.iter().zip(&asd.loads).filter(|(line, _)| !line.factors.is_empty()) {
        let share = factored.capacity.unwrap() / allowable.capacity.unwrap();
        assert!((share / ratio - 1.0).abs() < 1e-12, "{}", factored.name);
    }
    assert_eq!(lrfd.modes, asd.modes);
}

// What a standard has no rule for is said so, and never passes.
#[test]
fn what_is_not_covered_never_passes() {
    let outcome = |input: &JointInput| joint(input).unwrap().outcome;
    let ec5 = || JointInput { withdrawal_n: 0.0, ..screws(JointStandard::Ec5) };
    let nds = || JointInput { lateral_n: 120.0, withdrawal_n: 0.0, ..screws(JointStandard::NdsAsd) };
    let over_lining = joint(&JointInput { gaps: lining(12.5), ..ec5() }).unwrap();
    assert_eq!((over_lining.outcome, over_lining.lateral_capacity_n), (Outcome::NotCovered, None));
    assert!(over_lining.modes.is_empty() && over_lining.utilisation.is_none());
    assert_eq!(outcome(&JointInput { gaps: lining(12.5), ..nds() }), Outcome::Met);
    for drive in [JointDrive::EndGrain, JointDrive::ToeNailed] {
        assert_ne!(outcome(&JointInput { drive, ..ec5() }), Outcome::Met, "{drive:?}");
    }
    assert_eq!(outcome(&JointInput { drive: JointDrive::EndGrain, ..nds() }), Outcome::Met);
    // Withdrawal from end grain: forbidden by the one, without a value in the other.
    let pulled = |standard| JointInput { drive: JointDrive::EndGrain, lateral_n: 0.0, ..screws(standard) };
    assert_eq!(outcome(&pulled(JointStandard::NdsAsd)), Outcome::NotMet);
    assert_eq!(outcome(&pulled(JointStandard::Ec5)), Outcome::NotCovered);
    assert_eq!(outcome(&JointInput { temperature: TemperatureBand::UpTo150F, ..ec5() }), Outcome::NotCovered);
    let board = JointMember { material: JointMaterial::MdfLa, ..member(18.0) };
    assert_eq!(outcome(&JointInput { side: board, ..ec5() }), Outcome::NotCovered);
    assert_eq!(outcome(&JointInput { side: board, ..nds() }), Outcome::NotCovered);
    let unknown = JointFastener { tension_capacity_n: None, ..ec5().fastener };
    let pulled = JointInput { fastener: unknown, ..screws(JointStandard::Ec5) };
    assert_eq!(outcome(&pulled), Outcome::NotDetermined);
    assert_eq!(outcome(&JointInput { count: 4, ..ec5() }), Outcome::NotDetermined);
}

// EN 1995-1-1 8.3.2(1), Table 8.2, 8.3.1.1(2).
#[test]
fn requirements_stand_each_on_its_own_line() {
    let nail = JointFastener {
        kind: JointFastenerKind::SmoothNail,
        nominal_diameter_mm: 3.1,
        head_diameter_mm: 7.0,
        root_diameter_mm: None,
        shank_diameter_mm: None,
        length_mm: 70.0,
        thread_length_mm: None,
        ..screws(JointStandard::Ec5).fastener
    };
    let layout = JointLayout {
        in_row: 2,
        stagger: RowStagger::InLine,
        along_grain_mm: Some(31.0),
        across_grain_mm: Some(15.0),
        loaded_end_mm: Some(46.5),
        unloaded_end_mm: None,
        loaded_edge_mm: Some(15.5),
        unloaded_edge_mm: Some(15.5),
    };
    let input = JointInput {
        fastener: nail,
        count: 4,
        layout: Some(layout),
        lead_hole_mm: None,
        side: member(22.0),
        ..screws(JointStandard::Ec5)
    };
    let found = joint(&input).unwrap();
    let outcome = |name: &str| line(&found.requirements, name).outcome;
    assert_eq!(outcome("kind of nail"), Outcome::NotMet);
    assert_eq!(outcome("spacing along"), Outcome::Met);
    assert_eq!(outcome("spacing across"), Outcome::NotMet);
    assert_eq!(outcome("distance to a loaded end"), Outcome::Met);
    assert_eq!(outcome("distance to an unloaded end"), Outcome::NotDetermined);
    assert_eq!(outcome("distance to a loaded edge"), Outcome::Met);
    assert_eq!(outcome("thickness against splitting, side"), Outcome::Met);
    assert_eq!(outcome("lead hole"), Outcome::Met);
    // Two in a row at 10 d: 2^0.85.
    let row = found.factors.iter().find(|factor| factor.name.starts_with("n_ef/n")).unwrap();
    assert!((row.value - 1.802_500_925_221_660_4 / 2.0).abs() < 1e-12);
    let oak =
        JointMember { material: JointMaterial::Hardwood, characteristic_density_kg_m3: Some(560.0), ..member(22.0) };
    let in_oak = joint(&JointInput { side: oak, ..input.clone() }).unwrap();
    assert_eq!(line(&in_oak.requirements, "lead hole").outcome, Outcome::NotMet);
    assert_eq!(in_oak.outcome, Outcome::NotMet);
    let bored = joint(&JointInput { side: oak, lead_hole_mm: Some(2.4), ..input }).unwrap();
    assert_eq!(line(&bored.requirements, "lead hole").outcome, Outcome::Met);
}

#[test]
fn what_is_missing_or_contradicts_is_named_with_its_path() {
    let faults = |input: &JointInput| {
        let error = joint(input).expect_err("refused");
        error.details().iter().map(|fault| (fault.code, fault.path.clone())).collect::<Vec<_>>()
    };
    let bare = JointMember { characteristic_density_kg_m3: None, specific_gravity: None, ..member(18.0) };
    let input = JointInput { side: bare, ..screws(JointStandard::Ec5) };
    assert_eq!(faults(&input), [(ErrorCode::MissingField, "side.characteristic_density_kg_m3".to_owned())]);
    let input = JointInput { side: bare, ..screws(JointStandard::NdsAsd) };
    assert_eq!(faults(&input), [(ErrorCode::MissingField, "side.specific_gravity".to_owned())]);
    let soft = JointFastener { tensile_strength_mpa: None, ..screws(JointStandard::Ec5).fastener };
    let input = JointInput { fastener: soft, ..screws(JointStandard::Ec5) };
    assert_eq!(faults(&input), [(ErrorCode::MissingField, "fastener.tensile_strength_mpa".to_owned())]);
    let input = JointInput { gaps: lining(70.0), ..screws(JointStandard::NdsAsd) };
    assert_eq!(faults(&input), [(ErrorCode::PenetrationTooShort, "fastener.length_mm".to_owned())]);
    let thick = JointFastener { root_diameter_mm: Some(7.0), ..soft };
    let input = JointInput { fastener: thick, gaps: lining(f64::NAN), ..screws(JointStandard::Ec5) };
    let found = faults(&input);
    assert!(found.contains(&(ErrorCode::NotFinite, "gaps[0].thickness_mm".to_owned())), "{found:?}");
    assert!(found.contains(&(ErrorCode::Inconsistent, "fastener.root_diameter_mm".to_owned())), "{found:?}");
}

// The worked example of docs/src/theory/dowels_ec5.md, evaluated apart with the printed equations, to whole newtons.
#[test]
fn the_worked_example_of_the_theory_page_holds() {
    let found = joint(&screws(JointStandard::Ec5)).unwrap();
    let by_hand = [2_173.0, 7_485.0, 2_807.0, 1_627.0, 3_116.0, 2_208.0];
    for (mode, value_n) in found.modes.iter().zip(by_hand) {
        assert!((mode.value_n - value_n).abs() < 0.51, "{}: {} N against {value_n} N", mode.name, mode.value_n);
    }
    let near = |value_n: Option<f64>, wanted: f64| assert!((value_n.unwrap() - wanted).abs() < 0.51, "{value_n:?}");
    near(found.lateral_value_n, 1_627.0);
    near(found.lateral_capacity_n, 751.0);
    near(line(&found.loads, "withdrawal").capacity, 1_617.0);
    near(line(&found.loads, "head").capacity, 570.0);
    let both = line(&found.loads, "lateral and withdrawal").utilisation.unwrap();
    assert!((both - 0.376).abs() < 5e-4, "{both}");
}

// NDS 12.5.4 and the toe-nail's usual lengths: a third of the nail in the side member, C_tn 0.83 and 0.67.
#[test]
fn a_toe_nail_is_read_by_the_american_standard_only() {
    let nail = JointFastener {
        kind: JointFastenerKind::SmoothNail,
        nominal_diameter_mm: 3.3274,
        root_diameter_mm: None,
        shank_diameter_mm: None,
        head_diameter_mm: 7.14,
        length_mm: 63.5,
        thread_length_mm: None,
        bending_yield_mpa: None,
        ..screws(JointStandard::NdsAsd).fastener
    };
    let toe = JointInput {
        fastener: nail,
        drive: JointDrive::ToeNailed,
        lead_hole_mm: None,
        lateral_n: 100.0,
        withdrawal_n: 20.0,
        side: member(38.1),
        ..screws(JointStandard::NdsAsd)
    };
    let found = joint(&toe).unwrap();
    let side_mm = 63.5 / 3.0;
    assert!((found.penetration_mm - (63.5 * 0.866_025_403_784_438_6 - side_mm)).abs() < 1e-9);
    let factor = |name: &str| found.factors.iter().find(|factor| factor.name.starts_with(name)).unwrap().value;
    assert_eq!(factor("C_tn"), 0.83);
    // Smooth nail: 1380 G^2.5 D per inch of the two thirds behind the joint, in pounds and inches.
    let withdrawal_lbf = 1_380.0 * 0.114_320_266 * 0.131 * (2.0 / 3.0 * 2.5) * 0.9 * 0.67;
    let capacity_n = line(&found.loads, "withdrawal").capacity.unwrap();
    assert!((capacity_n / 4.448_221_615 / withdrawal_lbf - 1.0).abs() < 1e-5, "{capacity_n} N");
    assert_eq!(found.outcome, Outcome::Met, "{:?} {:?}", found.loads, found.requirements);
    let over_lining = joint(&JointInput { gaps: lining(5.0), ..toe.clone() }).unwrap();
    assert_eq!(over_lining.outcome, Outcome::NotCovered);
    let screw = JointFastener { kind: JointFastenerKind::WoodScrew, root_diameter_mm: Some(2.4), ..nail };
    assert_eq!(
        joint(&JointInput { fastener: screw, lead_hole_mm: Some(2.0), ..toe }).unwrap().outcome,
        Outcome::NotCovered
    );
}

// By hand: no head of a screw has a published value on the shoulder of a pocket.
#[test]
fn a_pocket_screw_carries_across_and_needs_a_declared_head_along() {
    use crate::fasten::nds::FastenerDirection;
    let pocket = JointPocket {
        angle_deg: 15.0,
        shoulder_mm: 20.0,
        side_direction: FastenerDirection::EndGrain,
        main_direction: FastenerDirection::SideGrain,
        load: JointPocketLoad::AcrossSlant,
    };
    let across = JointInput {
        drive: JointDrive::Pocket,
        pocket: Some(pocket),
        withdrawal_n: 0.0,
        lateral_n: 40.0,
        fastener: JointFastener {
            length_mm: 60.0,
            thread_length_mm: Some(40.0),
            ..screws(JointStandard::NdsAsd).fastener
        },
        ..screws(JointStandard::NdsAsd)
    };
    let found = joint(&across).unwrap();
    assert_eq!(found.outcome, Outcome::Met, "{:?} {:?}", found.loads, found.requirements);
    assert!((found.penetration_mm - 40.0).abs() < 1e-9);
    let end_grain = found.factors.iter().find(|factor| factor.name.starts_with("C_eg")).unwrap();
    assert_eq!(end_grain.value, 0.67);
    // Pulled apart: the thread holds, the head has no value until one is declared.
    let pulled = JointInput { withdrawal_n: 40.0, ..across.clone() };
    assert_eq!(joint(&pulled).unwrap().outcome, Outcome::NotCovered);
    let declared = JointFastener { declared_pull_through_n: Some(500.0), ..across.fastener };
    let found = joint(&JointInput { fastener: declared, ..pulled.clone() }).unwrap();
    assert_eq!(found.outcome, Outcome::Met, "{:?}", found.loads);
    assert!((found.along_n - 40.0 * 0.965_925_826_289_068_3).abs() < 1e-9);
    // Eurocode 5 has no value for a screw along the grain of the board with the pocket, but one along its edge.
    let ec5 = |side_direction| {
        let pocket = Some(JointPocket { side_direction, ..pocket });
        joint(&JointInput { standard: JointStandard::Ec5, pocket, ..across.clone() }).unwrap().outcome
    };
    assert_eq!(ec5(FastenerDirection::EndGrain), Outcome::NotCovered);
    assert_eq!(ec5(FastenerDirection::SideGrain), Outcome::Met);
    // Into end grain of the main member nothing holds along the axis.
    let into_end = JointPocket { main_direction: FastenerDirection::EndGrain, ..pocket };
    let found = joint(&JointInput { pocket: Some(into_end), fastener: declared, ..pulled }).unwrap();
    assert_eq!((found.axial_capacity_n, found.outcome), (Some(0.0), Outcome::NotMet));
}

#[test]
fn a_structural_screw_is_what_its_maker_declares() {
    for standard in [JointStandard::NdsAsd, JointStandard::Ec5] {
        let base = screws(standard);
        let bare = JointFastener {
            kind: JointFastenerKind::StructuralScrew,
            bending_yield_mpa: None,
            tension_capacity_n: Some(9_000.0),
            ..base.fastener
        };
        let error = joint(&JointInput { fastener: bare, ..base.clone() }).expect_err("no moment");
        assert_eq!(error.details()[0].code, ErrorCode::MissingField);
        let moment = JointFastener { bending_yield_mpa: Some(1_000.0), yield_moment_nmm: Some(10_000.0), ..bare };
        let found = joint(&JointInput { fastener: moment, ..base.clone() }).unwrap();
        assert_eq!(found.outcome, Outcome::NotDetermined, "{:?}", found.loads);
        let whole = JointFastener {
            declared_withdrawal_mpa: Some(12.0),
            declared_head_mpa: Some(10.0),
            declared_density_kg_m3: Some(350.0),
            declared_withdrawal_n_mm: Some(30.0),
            declared_pull_through_n: Some(800.0),
            ..moment
        };
        let found = joint(&JointInput { fastener: whole, ..base.clone() }).unwrap();
        assert_eq!(found.outcome, Outcome::Met, "{:?} {:?}", found.loads, found.requirements);
        // 50 mm of thread, all in the stud: 30 N/mm, or 12 MPa of 6 mm, each with its factors.
        let withdrawal_n = line(&found.loads, "withdrawal").capacity.unwrap();
        let by_hand = if standard == JointStandard::Ec5 { 12.0 * 6.0 * 50.0 * 0.6 / 1.3 } else { 30.0 * 50.0 * 0.9 };
        assert!((withdrawal_n / by_hand - 1.0).abs() < 1e-9, "{withdrawal_n} N");
        let lateral = JointFastener { declared_lateral_n: Some(1_000.0), ..whole };
        let found = joint(&JointInput { fastener: lateral, ..base }).unwrap();
        assert_eq!((found.governing_mode.as_str(), found.lateral_value_n), ("declared value", Some(1_000.0)));
        assert!(found.modes.is_empty());
        // Over a lining the declared value stands in where Eurocode 5 has no rule.
        let gaps = lining(12.5);
        let over = joint(&JointInput { fastener: lateral, gaps, ..screws(standard) }).unwrap();
        assert_eq!(over.lateral_capacity_n, found.lateral_capacity_n);
        assert!(line(&over.loads, "lateral load").remark.contains("layers"));
    }
}

// A tested bearing strength takes the place of the standard's in both.
#[test]
fn a_tested_strength_counts() {
    for standard in [JointStandard::NdsAsd, JointStandard::Ec5] {
        let tested = |tested_bearing_mpa| {
            let main = JointMember { tested_bearing_mpa, ..member(89.0) };
            joint(&JointInput { main, ..screws(standard) }).unwrap().modes
        };
        let (table, weak) = (tested(None), tested(Some(10.0)));
        // Mode of the main member alone: in proportion.
        let of_main = usize::from(standard == JointStandard::Ec5);
        assert!(weak[of_main].value_n < table[of_main].value_n, "{standard:?}");
    }
}

// EN 1995-1-1 Table 8.6, 8.1.4: what stands beside the loads.
#[test]
fn a_pull_and_a_load_across_the_grain_bring_their_own_lines() {
    let cleat = JointMember { angle_to_grain_deg: 90.0, depth_mm: Some(90.0), ..member(18.0) };
    let layout = JointLayout {
        in_row: 1,
        stagger: RowStagger::InLine,
        along_grain_mm: None,
        across_grain_mm: None,
        loaded_end_mm: Some(80.0),
        unloaded_end_mm: Some(80.0),
        loaded_edge_mm: Some(45.0),
        unloaded_edge_mm: Some(45.0),
    };
    let input = JointInput { side: cleat, layout: Some(layout), ..screws(JointStandard::Ec5) };
    let found = joint(&input).unwrap();
    // 14 · 18 √(45 / (1 − 45/90)) · 0.6 / 1.3
    let splitting = line(&found.requirements, "splitting across the grain, side");
    assert!((splitting.capacity.unwrap() - 1_103.392).abs() < 0.01, "{splitting:?}");
    assert_eq!(line(&found.requirements, "thickness of the last member").outcome, Outcome::Met);
    let hardwood = JointMember { material: JointMaterial::Hardwood, ..cleat };
    let found = joint(&JointInput { side: hardwood, ..input.clone() }).unwrap();
    assert_eq!(line(&found.requirements, "splitting").outcome, Outcome::NotCovered);
    let unplaced = joint(&JointInput { layout: None, ..input }).unwrap();
    assert_eq!(line(&unplaced.requirements, "splitting").outcome, Outcome::NotDetermined);
}

// NDS 11.3.6, 12.5.1: without what they need they are open, and the joint with them.
#[test]
fn group_and_geometry_factors_are_asked_for_from_a_quarter_inch_on() {
    let lag = JointFastener {
        kind: JointFastenerKind::LagScrew,
        nominal_diameter_mm: 9.525,
        root_diameter_mm: Some(6.731),
        head_diameter_mm: 14.0,
        length_mm: 101.6,
        thread_length_mm: None,
        bending_yield_mpa: None,
        shank_diameter_mm: None,
        ..screws(JointStandard::NdsAsd).fastener
    };
    let layout = JointLayout {
        in_row: 3,
        stagger: RowStagger::InLine,
        along_grain_mm: Some(38.1),
        across_grain_mm: None,
        loaded_end_mm: Some(66.675),
        unloaded_end_mm: Some(38.1),
        loaded_edge_mm: None,
        unloaded_edge_mm: Some(20.0),
    };
    let stiff = |thickness_mm: f64| JointMember {
        modulus_mpa: Some(9_500.0),
        area_mm2: Some(thickness_mm * 140.0),
        ..member(thickness_mm)
    };
    let input = JointInput {
        fastener: lag,
        count: 3,
        side: stiff(38.1),
        main: stiff(89.0),
        lead_hole_mm: Some(6.0),
        layout: Some(layout),
        lateral_n: 1_000.0,
        withdrawal_n: 0.0,
        ..screws(JointStandard::NdsAsd)
    };
    let found = joint(&input).unwrap();
    assert_eq!(found.outcome, Outcome::Met, "{:?} {:?}", found.loads, found.requirements);
    let factor = |name: &str| found.factors.iter().find(|factor| factor.name.starts_with(name)).unwrap().value;
    assert!(factor("C_g") < 1.0 && factor("C_g") > 0.9);
    assert_eq!(factor("C_delta"), 1.0);
    assert_eq!(line(&found.requirements, "end distance, main").outcome, Outcome::Met);
    // Half the end distance, half the capacity; below that none at all.
    let near = |end_mm: f64| {
        let layout = Some(JointLayout { loaded_end_mm: Some(end_mm), ..layout });
        joint(&JointInput { layout, ..input.clone() }).unwrap()
    };
    let half = near(33.3375).lateral_capacity_n.unwrap() / found.lateral_capacity_n.unwrap();
    assert!((half - 0.5).abs() < 1e-9);
    assert_eq!((near(30.0).lateral_capacity_n, near(30.0).outcome), (Some(0.0), Outcome::NotMet));
    let unplaced = joint(&JointInput { layout: None, ..input.clone() }).unwrap();
    assert_eq!((unplaced.outcome, unplaced.lateral_capacity_n), (Outcome::NotDetermined, None));
    let limp = joint(&JointInput { side: member(38.1), ..input }).unwrap();
    assert_eq!(limp.outcome, Outcome::NotDetermined);
}

/// Six ring shank nails through 18 mm, three in a row.
fn ring_shanks(standard: JointStandard) -> JointInput {
    let nail = JointFastener {
        yield_moment_nmm: Some(3_000.0),
        bending_yield_mpa: Some(620.0),
        ..JointFastener::plain(JointFastenerKind::RingShankNail, 3.0, 6.0, 75.0)
    };
    let layout = JointLayout {
        in_row: 3,
        stagger: RowStagger::InLine,
        along_grain_mm: Some(30.0),
        across_grain_mm: Some(30.0),
        loaded_end_mm: Some(60.0),
        unloaded_end_mm: Some(60.0),
        loaded_edge_mm: Some(20.0),
        unloaded_edge_mm: Some(20.0),
    };
    let plain = JointInput::plain(standard, nail, member(22.0), member(89.0));
    JointInput { count: 6, layout: Some(layout), lateral_n: 300.0, ..plain }
}

// EN 1995-1-1 8.3.1.2(4), recalled: a third, with at least three nails, 10 d deep, no pull, and not wet.
#[test]
fn ring_shank_nails_in_end_grain_carry_a_third_under_conditions() {
    let side = ring_shanks(JointStandard::Ec5);
    let end = JointInput { drive: JointDrive::EndGrain, ..side.clone() };
    let (in_side, in_end) = (joint(&side).unwrap(), joint(&end).unwrap());
    let share = in_end.lateral_capacity_n.unwrap() / in_side.lateral_capacity_n.unwrap();
    assert!((3.0 * share - 1.0).abs() < 1e-12);
    assert_eq!(in_end.modes, in_side.modes);
    let product: f64 = in_end.factors.iter().map(|factor| factor.value).product();
    let whole_n = product * in_end.lateral_value_n.unwrap();
    assert!((whole_n / in_end.lateral_capacity_n.unwrap() - 1.0).abs() < 1e-12);
    let outcome = |input: &JointInput, name: &str| line(&joint(input).unwrap().requirements, name).outcome;
    for name in ["lateral load only", "number", "climate", "penetration"] {
        assert_eq!(outcome(&end, &format!("nails in end grain: {name}")), Outcome::Met, "{name}");
    }
    let layout = JointLayout { in_row: 2, ..end.layout.unwrap() };
    let two = JointInput { count: 2, layout: Some(layout), ..end.clone() };
    assert_eq!(outcome(&two, "nails in end grain: number"), Outcome::NotMet);
    let pulled = JointInput { withdrawal_n: 10.0, ..end.clone() };
    assert_eq!(outcome(&pulled, "nails in end grain: lateral load only"), Outcome::NotMet);
    let wet = JointInput { climate: JointServiceClimate::Wet, ..end.clone() };
    assert_eq!(outcome(&wet, "nails in end grain: climate"), Outcome::NotMet);
    let short = JointInput { fastener: JointFastener { length_mm: 48.0, ..end.fastener }, ..end.clone() };
    assert_eq!(outcome(&short, "nails in end grain: penetration"), Outcome::NotMet);
    let smooth = JointFastener { kind: JointFastenerKind::SmoothNail, ..end.fastener };
    assert_eq!(joint(&JointInput { fastener: smooth, ..end }).unwrap().outcome, Outcome::NotCovered);
}

// EN 1995-1-1 8.3.1.1(8): staggered nails count whole. NDS: the commentary asks for 2.5 D between staggered rows, and close
// staggered rows of thick dowels count as one (11.3.6.2).
#[test]
fn staggered_rows_count_by_their_own_rules() {
    let staggered = |input: &JointInput| {
        let layout = input.layout.map(|layout| JointLayout { stagger: RowStagger::Staggered, ..layout });
        joint(&JointInput { layout, ..input.clone() }).unwrap()
    };
    let factor =
        |found: &Joint, name: &str| found.factors.iter().find(|factor| factor.name.starts_with(name)).unwrap().value;
    let nails = ring_shanks(JointStandard::Ec5);
    assert!(factor(&joint(&nails).unwrap(), "n_ef/n") < 1.0);
    assert_eq!(factor(&staggered(&nails), "n_ef/n"), 1.0);
    let nails = ring_shanks(JointStandard::NdsAsd);
    let between = |found: &Joint| line(&found.requirements, "distance between rows").demand.unwrap();
    assert_eq!((between(&joint(&nails).unwrap()), between(&staggered(&nails))), (15.0, 7.5));
    let stiff = |thickness_mm: f64| JointMember {
        modulus_mpa: Some(9_500.0),
        area_mm2: Some(thickness_mm * 140.0),
        ..member(thickness_mm)
    };
    let bolts = |across_mm: f64, along_mm: f64, in_row: u32, count: u32| {
        let bolt = JointFastener::plain(JointFastenerKind::Bolt, 12.7, 25.0, 100.0);
        let layout = JointLayout {
            in_row,
            along_grain_mm: Some(along_mm),
            across_grain_mm: Some(across_mm),
            ..nails.layout.unwrap()
        };
        let plain = JointInput::plain(JointStandard::NdsAsd, bolt, stiff(38.0), stiff(89.0));
        JointInput { count, layout: Some(layout), lateral_n: 100.0, ..plain }
    };
    let c_g = |found: &Joint| factor(found, "C_g");
    // Two rows of three, 120 mm apart in the row: 40 mm apart they are two rows, 25 mm apart one row of six at 60 mm.
    let (far, near) = (bolts(40.0, 120.0, 3, 6), bolts(25.0, 120.0, 3, 6));
    assert_eq!(c_g(&staggered(&far)), c_g(&joint(&far).unwrap()));
    let one_row = joint(&bolts(25.0, 60.0, 6, 6)).unwrap();
    assert_eq!(c_g(&staggered(&near)), c_g(&one_row));
}

// EN 1995-1-1 8.3.1.3, recalled: 3 d and (3 + 4 sin α) d to the edges of plywood.
#[test]
fn nails_keep_from_the_edges_of_plywood() {
    let plywood = JointMember { material: JointMaterial::Plywood, ..member(18.0) };
    let layout = JointLayout {
        loaded_edge_mm: Some(20.9),
        unloaded_edge_mm: Some(9.0),
        ..ring_shanks(JointStandard::Ec5).layout.unwrap()
    };
    let input = JointInput { side: plywood, side_layout: Some(layout), ..ring_shanks(JointStandard::Ec5) };
    let found = joint(&input).unwrap();
    let edge = |name: &str| line(&found.requirements, name);
    assert_eq!(
        (edge("distance to a loaded edge, side").outcome, edge("distance to a loaded edge, side").demand),
        (Outcome::NotMet, Some(21.0))
    );
    assert_eq!(edge("distance to an unloaded edge, side").outcome, Outcome::Met);
}

// NDS Tables L2 and L3: thread of a 4 in lag screw 2 1/2 in, of a 60 mm wood screw 40 mm.
#[test]
fn a_screw_without_a_stated_thread_has_that_of_the_tables() {
    let capacity = |kind, length_mm: f64, thread_length_mm| {
        let fastener = JointFastener { kind, length_mm, thread_length_mm, ..screws(JointStandard::NdsAsd).fastener };
        let input = JointInput { fastener, lead_hole_mm: None, ..screws(JointStandard::NdsAsd) };
        joint(&input).unwrap().working.iter().find(|one| one.name.starts_with("withdrawal")).unwrap().value
    };
    for (kind, length_mm, thread_mm) in
        [(JointFastenerKind::LagScrew, 101.6, 63.5), (JointFastenerKind::WoodScrew, 60.0, 40.0)]
    {
        let ratio = capacity(kind, length_mm, None) / capacity(kind, length_mm, Some(thread_mm));
        assert!((ratio - 1.0).abs() < 1e-12, "{kind:?}");
        assert!(capacity(kind, length_mm, Some(length_mm)) > capacity(kind, length_mm, Some(20.0)), "{kind:?}");
    }
}
