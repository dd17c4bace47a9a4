use super::*;
use crate::setting::{MeasuredStuds, SpacedStuds, StudLayout, StudWood, ThingKind};
use crate::statics::test_inputs::hostile;
use proptest::prelude::*;

fn example() -> CleatMarksInput {
    CleatMarksInput {
        place: BodyPlace { left_end_mm: 0.0, bottom_above_floor_mm: 1300.0 },
        body_length_mm: 1830.0,
        body_height_mm: 185.0,
        halves: CleatHalvesInput {
            strip_width_mm: 120.0,
            thickness_mm: 18.0,
            bevel_deg: 45.0,
            kerf_mm: 3.0,
            blunt_mm: 0.0,
        },
        beam_half_up_mm: 95.0,
        beam_half_left_mm: 40.0,
        beam_half_length_mm: 1750.0,
        side_play_mm: 20.0,
        bottom_board_mm: Some(20.0),
        screw_row_up_mm: 25.0,
        screw_end_mm: 30.0,
        wall: Wall {
            studs: StudLayout::Measured(MeasuredStuds { centres_mm: vec![200.0, 805.0, 1395.0] }),
            stud_width_mm: 38.0,
            stud_depth_mm: 89.0,
            stud_wood: StudWood::default(),
            lining_thickness_mm: 12.5,
        },
        obstructions: vec![],
    }
}

fn above(room_mm: f64, projection_mm: f64) -> CleatMarksInput {
    let duct = Obstruction {
        name: "duct".to_owned(),
        kind: ThingKind::BoxedDuct,
        left_mm: 400.0,
        right_mm: 600.0,
        bottom_mm: 1300.0 + 185.0 + room_mm,
        top_mm: 2400.0,
        projection_mm,
    };
    CleatMarksInput { obstructions: vec![duct], ..example() }
}

fn codes(marks: &CleatMarks) -> Vec<(Grade, FindingCode)> {
    marks.findings.iter().map(|finding| (finding.grade, finding.code)).collect()
}

#[test]
fn a_workable_cleat_has_no_findings_and_carries_its_cautions() {
    let marks = cleat_marks(&example()).expect("allowed");
    assert!(marks.findings.is_empty(), "{:?}", marks.findings);
    assert_eq!(marks.cautions.len(), 3);
    assert_eq!(marks.wall_edge_mm, 1395.0);
    assert_eq!((marks.left_mm, marks.right_mm), (50.0, 1780.0));
    let screws: Vec<_> = marks.screws.iter().map(|screw| screw.x_mm).collect();
    assert_eq!(screws, [200.0, 805.0, 1395.0]);
}

#[test]
fn blunting_keeps_the_body_on_its_line() {
    let mut input = example();
    input.halves.blunt_mm = 3.0;
    let marks = cleat_marks(&input).expect("allowed");
    // The seat meets the wall where the sharp point would be: 3 mm below the blunted edge.
    assert_eq!(marks.wall_edge_mm, 1392.0);
    assert!((marks.point_mm - (1392.0 + 18.0 - 3.0)).abs() < 1e-9);
}

#[test]
fn headroom_is_told_from_a_straight_lift_and_from_a_slide_along_the_seat() {
    // A deep obstruction asks for the whole lift of 18 mm.
    let low = cleat_marks(&above(15.0, 200.0)).expect("allowed");
    assert_eq!(codes(&low), [(Grade::Stop, FindingCode::NoHeadroom)]);
    assert!((low.lift_rooms[0].missing_mm - 3.0).abs() < 1e-9);
    assert!(cleat_marks(&above(18.0, 200.0)).expect("allowed").findings.is_empty());
    // One that stands out 10 mm is passed after a rise of 10 mm at 45 degrees.
    let slide = cleat_marks(&above(12.0, 10.0)).expect("allowed");
    assert_eq!(codes(&slide), [(Grade::Caution, FindingCode::NoHeadroom)]);
    assert!((slide.lift_rooms[0].along_seat_mm - 10.0).abs() < 1e-9);
    assert_eq!(codes(&cleat_marks(&above(9.0, 10.0)).expect("allowed")), [(Grade::Stop, FindingCode::NoHeadroom)]);
    // Blunting both points by half of what is missing helps as promised.
    let mut blunted = above(15.0, 200.0);
    blunted.halves.blunt_mm = 1.5;
    assert!(cleat_marks(&blunted).expect("allowed").findings.is_empty());
}

#[test]
fn an_obstruction_beside_or_below_is_no_matter_and_one_behind_the_body_is_a_stop() {
    let mut input = above(0.0, 50.0);
    input.obstructions[0].left_mm = 1830.0;
    input.obstructions[0].right_mm = 2000.0;
    assert!(cleat_marks(&input).expect("allowed").findings.is_empty());
    let mut input = above(0.0, 50.0);
    input.obstructions[0].bottom_mm = 1400.0;
    assert_eq!(codes(&cleat_marks(&input).expect("allowed")), [(Grade::Stop, FindingCode::MeetsObstruction)]);
    input.obstructions[0].bottom_mm = 900.0;
    input.obstructions[0].top_mm = 1300.0;
    assert!(cleat_marks(&input).expect("allowed").findings.is_empty());
}

#[test]
fn missed_studs_and_a_cleat_that_does_not_fit_are_told() {
    let mut input = example();
    input.wall.studs = StudLayout::Measured(MeasuredStuds { centres_mm: vec![805.0, 60.0] });
    assert_eq!(codes(&cleat_marks(&input).expect("allowed")), [(Grade::Stop, FindingCode::StudsMissed)]);
    let mut input = example();
    // Lower edge of the wall half 0.6 mm above the bottom board.
    input.beam_half_up_mm = 70.0;
    assert_eq!(codes(&cleat_marks(&input).expect("allowed")), [(Grade::Stop, FindingCode::CleatDoesNotFit)]);
    input.bottom_board_mm = None;
    assert!(cleat_marks(&input).expect("allowed").findings.is_empty());
    input.beam_half_up_mm = 40.0;
    assert_eq!(codes(&cleat_marks(&input).expect("allowed")), [(Grade::Stop, FindingCode::CleatDoesNotFit)]);
    input.beam_half_up_mm = 150.0;
    assert_eq!(codes(&cleat_marks(&input).expect("allowed")), [(Grade::Stop, FindingCode::CleatDoesNotFit)]);
}

#[test]
fn every_fault_is_named_with_its_path() {
    let mut input = above(10.0, f64::NAN);
    input.place.left_end_mm = f64::INFINITY;
    input.halves.thickness_mm = 0.0;
    input.wall.stud_width_mm = -1.0;
    let faults = cleat_marks(&input).expect_err("refused");
    let paths: Vec<_> = faults.details().iter().map(|detail| detail.path.as_str()).collect();
    let wanted = ["place.left_end_mm", "halves.thickness_mm", "wall.stud_width_mm", "obstructions[0].projection_mm"];
    assert_eq!(paths, wanted);
    let mut input = example();
    input.screw_row_up_mm = 60.0;
    input.side_play_mm = 20.0;
    input.beam_half_length_mm = 1800.0;
    let faults = cleat_marks(&input).expect_err("refused");
    let paths: Vec<_> = faults.details().iter().map(|detail| detail.path.as_str()).collect();
    assert_eq!(paths, ["beam_half_length_mm", "screw_row_up_mm"]);
}

proptest! {
    #[test]
    fn sliding_out_along_the_seat_clears_every_point_of_the_path(
        projection in 0.1..60.0_f64, bevel in 10.0..60.0_f64, blunt in 0.0..1.0_f64,
    ) {
        let mut input = above(0.0, projection);
        input.halves.bevel_deg = bevel;
        input.halves.blunt_mm = blunt;
        input.halves.strip_width_mm = 160.0;
        let Ok(marks) = cleat_marks(&input) else { return Ok(()) };
        let (halves, room) = (marks.halves, &marks.lift_rooms[0]);
        // Walk the path: at each offset under the obstruction the body must have risen by the slope, up to the lift.
        let steps = 2000;
        let highest = (0..=steps)
            .map(|k| 80.0 * f64::from(k) / f64::from(steps))
            .filter(|out| *out < projection)
            .map(|out| (out * tan_deg(bevel)).min(halves.lift_mm))
            .fold(0.0, f64::max);
        prop_assert!(room.along_seat_mm >= highest - 1e-9);
        prop_assert!(room.along_seat_mm <= highest + 80.0 / f64::from(steps) * tan_deg(bevel) + 1e-9);
        prop_assert!(room.along_seat_mm <= room.straight_up_mm);
    }

    #[test]
    fn hostile_numbers_are_refused_or_give_finite_marks(
        numbers in proptest::collection::vec(hostile(), 12), spaced in any::<bool>(), k in 0_usize..12,
    ) {
        let mut input = above(10.0, 50.0);
        // One or two hostile numbers among sound ones reach deeper than all at once.
        let other = (k * 5 + 3) % 12;
        for at in [k, other] {
            let value = numbers[at];
            match at {
                0 => input.place.left_end_mm = value,
                1 => input.place.bottom_above_floor_mm = value,
                2 => input.body_length_mm = value,
                3 => input.halves.thickness_mm = value,
                4 => input.halves.bevel_deg = value,
                5 => input.beam_half_up_mm = value,
                6 => input.beam_half_length_mm = value,
                7 => input.side_play_mm = value,
                8 => input.screw_row_up_mm = value,
                9 => input.obstructions[0].bottom_mm = value,
                10 => input.obstructions[0].projection_mm = value,
                _ => input.wall.studs = StudLayout::Measured(MeasuredStuds { centres_mm: vec![value, numbers[0], 100.0] }),
            }
        }
        if spaced {
            input.wall.studs = StudLayout::Spaced(SpacedStuds { first_mm: numbers[1], spacing_mm: numbers[2] });
        }
        if let Ok(marks) = cleat_marks(&input) {
            prop_assert!(marks.lower_edge_mm.is_finite() && marks.length_mm > 0.0);
            prop_assert!(marks.screws.iter().all(|screw| screw.end_distance_mm >= 0.0));
            #[cfg(feature = "json")]
            prop_assert!(crate::json::write(&marks).is_ok());
        }
    }
}
