use super::*;
use crate::fasten::{JointFastener, JointMaterial, JointMember, JointStandard, TimeEffect};
use crate::statics::test_inputs::hostile;
use proptest::prelude::*;

fn member(thickness_mm: f64) -> JointMember {
    JointMember {
        specific_gravity: Some(0.42),
        characteristic_density_kg_m3: Some(350.0),
        ..JointMember::plain(JointMaterial::Softwood, thickness_mm, 90.0)
    }
}

/// Screws of 6 by 80 mm through 18 mm of wood.
fn screws(count: u32, standard: JointStandard) -> JointInput {
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
        count,
        lead_hole_mm: Some(3.5),
        duration: JointDuration::Permanent,
        time_effect: TimeEffect::DeadOnly,
        ..JointInput::plain(standard, screw, member(18.0), member(89.0))
    }
}

fn fixing(frame: FramePlace, standard: JointStandard) -> FrameFixingInput {
    FrameFixingInput {
        load_n: 300.0,
        along_mm: 800.0,
        pull_n: 60.0,
        supports_mm: vec![200.0, 800.0, 1400.0],
        frame,
        support_joint: screws(2, standard),
        cross_joint: screws(6, standard),
    }
}

const WALL: FramePlace = FramePlace::Wall(WallFrame { out_mm: 120.0, row_up_mm: 60.0 });
const CEILING: FramePlace = FramePlace::Ceiling(CeilingFrame { slope_deg: 0.0 });

#[test]
fn on_the_wall_the_load_shears_and_levers_and_the_cross_screws_take_the_pull() {
    for standard in [JointStandard::NdsAsd, JointStandard::Ec5] {
        let held = frame_fixing(&fixing(WALL, standard)).unwrap();
        // 100 N at each stud, at twice the arm of the screws: 200 N of tension, and the pull.
        assert!((held.support_lateral_n - 100.0).abs() < 1e-9 && (held.support_withdrawal_n - 260.0).abs() < 1e-9);
        assert_eq!(held.cross_lateral_n, 60.0);
        assert_ne!(held.support.outcome, Outcome::NotMet);
        assert_eq!(held.cautions.len(), 3);
    }
}

#[test]
fn under_a_slope_the_share_splits_and_the_cross_screws_carry_all() {
    let slope = FramePlace::Ceiling(CeilingFrame { slope_deg: 30.0 });
    let held = frame_fixing(&fixing(slope, JointStandard::NdsAsd)).unwrap();
    assert!((held.support_lateral_n - 50.0).abs() < 1e-9);
    assert!((held.support_withdrawal_n - (50.0 * 3.0_f64.sqrt() + 60.0)).abs() < 1e-9);
    assert_eq!(held.cross_lateral_n, 360.0);
}

#[test]
fn smooth_nails_never_hold_a_lasting_pull() {
    let mut input = fixing(CEILING, JointStandard::NdsAsd);
    input.load_n = 1.0;
    input.pull_n = 0.0;
    input.support_joint.fastener.kind = JointFastenerKind::SmoothNail;
    let held = frame_fixing(&input).unwrap();
    assert_eq!((held.outcome, held.findings[0].grade), (Outcome::NotMet, Grade::Stop));
    assert!(held.findings[0].message.contains("creep"));
}

#[test]
fn too_much_load_is_a_stop_with_what_is_not_met() {
    let mut input = fixing(CEILING, JointStandard::NdsAsd);
    input.load_n = 50_000.0;
    let held = frame_fixing(&input).unwrap();
    assert_eq!(held.outcome, Outcome::NotMet);
    let subjects: Vec<_> = held.findings.iter().map(|finding| finding.subject.as_str()).collect();
    assert_eq!(subjects, ["frame", "cross fasteners"]);
    // Beyond the last stud the frame pries.
    let mut aside = fixing(WALL, JointStandard::NdsAsd);
    aside.along_mm = 3000.0;
    assert!(frame_fixing(&aside).unwrap().findings.iter().any(|finding| finding.message.contains("pries")));
}

#[test]
fn faults_are_named_with_their_paths() {
    let mut input = fixing(FramePlace::Wall(WallFrame { out_mm: -1.0, row_up_mm: 0.0 }), JointStandard::NdsAsd);
    input.pull_n = f64::NAN;
    let faults = frame_fixing(&input).expect_err("refused");
    let paths: Vec<_> = faults.details().iter().map(|detail| detail.path.as_str()).collect();
    assert_eq!(paths, ["pull_n", "frame.wall.out_mm", "frame.wall.row_up_mm"]);
    let mut input = fixing(WALL, JointStandard::NdsAsd);
    input.cross_joint.side.thickness_mm = 0.0;
    assert_eq!(frame_fixing(&input).expect_err("refused").field(), "cross_joint.side.thickness_mm");
}

proptest! {
    #[test]
    fn more_load_never_lowers_a_utilisation(load in 0.0..5_000.0_f64, more in 0.0..5_000.0_f64, ceiling in any::<bool>()) {
        let mut input = fixing(if ceiling { CEILING } else { WALL }, JointStandard::NdsAsd);
        input.load_n = load;
        let light = frame_fixing(&input).unwrap();
        input.load_n = load + more;
        let heavy = frame_fixing(&input).unwrap();
        let used = |joint: &Joint| joint.utilisation.unwrap_or(0.0);
        prop_assert!(used(&heavy.support) >= used(&light.support) - 1e-12);
        prop_assert!(used(&heavy.cross) >= used(&light.cross) - 1e-12);
    }

    #[test]
    fn hostile_numbers_are_refused_or_give_finite_results(
        numbers in proptest::collection::vec(hostile(), 6), k in 0_usize..6,
    ) {
        let mut input = fixing(WALL, JointStandard::NdsAsd);
        for at in [k, (k * 5 + 3) % 6] {
            let value = numbers[at];
            match at {
                0 => input.load_n = value,
                1 => input.along_mm = value,
                2 => input.supports_mm[1] = value,
                3 => input.frame = FramePlace::Wall(WallFrame { out_mm: value, row_up_mm: numbers[0] }),
                4 => input.frame = FramePlace::Ceiling(CeilingFrame { slope_deg: value }),
                _ => input.support_joint.withdrawal_n = value,
            }
        }
        if let Ok(held) = frame_fixing(&input) {
            prop_assert!(held.support_withdrawal_n.is_finite());
            #[cfg(feature = "json")]
            prop_assert!(crate::json::write(&held).is_ok());
        }
    }
}
