use super::*;
use proptest::prelude::*;

fn perfect() -> SeamGapInput {
    SeamGapInput {
        thickness_a_mm: 20.0,
        thickness_b_mm: 20.0,
        corner_deg: 90.0,
        width_a_mm: 180.0,
        width_b_mm: 220.0,
        cut_side_a: CutSide::ShowFaceDown,
        cut_side_b: CutSide::ShowFaceDown,
        hold: SeamHold::HeldByShowFaces,
        tilt_error_a_deg: 0.0,
        tilt_error_b_deg: 0.0,
        corner_error_deg: 0.0,
        size_error_a_mm: 0.0,
        size_error_b_mm: 0.0,
        thickness_error_a_mm: 0.0,
        thickness_error_b_mm: 0.0,
        cup_a_mm: 0.0,
        cup_b_mm: 0.0,
        bow_a_mm: 0.0,
        bow_b_mm: 0.0,
    }
}

const HOLDS: [SeamHold; 3] = [SeamHold::DrawnTight, SeamHold::HeldByShowFaces, SeamHold::HeldByInnerFrame];

#[test]
fn no_error_no_gap() {
    for hold in HOLDS {
        for (thickness_b_mm, corner_deg) in [(20.0, 90.0), (13.0, 90.0), (20.0, 120.0), (20.0, 270.0)] {
            let gap = seam_gap(&SeamGapInput { hold, thickness_b_mm, corner_deg, ..perfect() }).unwrap();
            assert_eq!((gap.show_gap_mm, gap.inside_gap_mm, gap.step_mm), (0.0, 0.0, 0.0));
            assert_eq!(gap.opening, OpenEdge::Closed);
            assert_eq!(gap.closing_corner_deg, corner_deg);
        }
    }
}

#[test]
fn under_tilt_opens_the_show_edge_and_over_tilt_the_inside() {
    for hold in HOLDS {
        let tilted = |error| {
            seam_gap(&SeamGapInput { hold, tilt_error_a_deg: error, tilt_error_b_deg: error, ..perfect() }).unwrap()
        };
        let (under, over) = (tilted(-0.25), tilted(0.25));
        assert_eq!((under.opening, over.opening), (OpenEdge::ShowEdge, OpenEdge::Inside));
        assert_eq!((under.inside_gap_mm, over.show_gap_mm), (0.0, 0.0));
        assert!((under.show_gap_mm - over.inside_gap_mm).abs() < 1e-12);
        assert!((under.closing_corner_deg - 90.5).abs() < 1e-12, "the boards close at a wider corner");
    }
}

#[test]
fn only_show_face_up_lets_thickness_reach_the_width() {
    let thick = |cut_side_a| seam_gap(&SeamGapInput { cut_side_a, thickness_error_a_mm: -0.3, ..perfect() }).unwrap();
    let (up, down) = (thick(CutSide::ShowFaceUp), thick(CutSide::ShowFaceDown));
    assert_eq!((up.width_per_thickness_a, down.width_per_thickness_a), (1.0, 0.0));
    assert!((up.width_error_a_mm + 0.3).abs() < 1e-12);
    // A board too narrow by 0.3 at 45 degrees stands off by 0.3 / sqrt 2 over the whole seam.
    assert!((up.show_gap_mm - 0.3 / 2.0_f64.sqrt()).abs() < 1e-12);
    assert_eq!((up.opening, down.opening), (OpenEdge::BothEdges, OpenEdge::Closed));
}

#[test]
fn show_face_up_on_an_inner_frame_the_error_of_thickness_cancels() {
    // The fence sets the inner width and the frame the inner face: the cut stays where it should, whatever the thickness.
    let input = SeamGapInput {
        hold: SeamHold::HeldByInnerFrame,
        cut_side_a: CutSide::ShowFaceUp,
        thickness_error_a_mm: 0.4,
        ..perfect()
    };
    let gap = seam_gap(&input).unwrap();
    assert!(gap.offset_mm.abs() < 1e-12);
    // The show faces no longer meet: b's arris lies behind by the thickness along both legs of the corner.
    assert!((gap.step_mm - 0.4 * 2.0_f64.sqrt()).abs() < 1e-12);
}

#[test]
fn show_face_up_a_tilt_error_turns_the_cut_about_the_heel() {
    let input = SeamGapInput { cut_side_a: CutSide::ShowFaceUp, tilt_error_a_deg: -0.5, ..perfect() };
    let gap = seam_gap(&input).unwrap();
    // Open at the show edge by the seam times the angle, and touching at the heel, to second order.
    assert!(gap.inside_gap_mm < 2e-5, "{}", gap.inside_gap_mm);
    assert!((gap.show_gap_mm - gap.seam_mm * radians(0.5)).abs() < 2e-5);
}

#[test]
fn a_board_too_long_pushes_its_neighbour_and_leaves_no_gap() {
    let gap = seam_gap(&SeamGapInput { size_error_a_mm: 0.5, ..perfect() }).unwrap();
    assert!(gap.offset_mm < 0.0);
    assert_eq!(gap.opening, OpenEdge::Closed);
}

#[test]
fn a_cup_that_bulges_out_opens_the_inside() {
    let gap = seam_gap(&SeamGapInput { hold: SeamHold::DrawnTight, cup_a_mm: 0.5, ..perfect() }).unwrap();
    assert_eq!(gap.opening, OpenEdge::Inside);
    // Slope of a parabola at its ends: 4 · 0.5 / 180 over a seam of 28.28.
    assert!((gap.inside_gap_mm - 28.284_271 * 4.0 * 0.5 / 180.0).abs() < 1e-5);
}

#[test]
fn what_no_saw_cuts_and_what_is_no_seam_is_refused() {
    let sharp = seam_gap(&SeamGapInput { corner_deg: 10.0, ..perfect() }).unwrap_err();
    assert_eq!((sharp.code, sharp.field), (ErrorCode::Inconsistent, "corner_deg"));
    let nearly_straight = SeamGapInput { corner_deg: 180.0_f64.next_up(), thickness_b_mm: 19.0, ..perfect() };
    assert_eq!(seam_gap(&nearly_straight).unwrap_err().code, ErrorCode::Inconsistent);
    let cupped = SeamGapInput { cup_a_mm: 40.0, ..perfect() };
    assert_eq!(seam_gap(&cupped).unwrap_err().code, ErrorCode::Inconsistent);
}

/// Exact positions of both cut faces, worked with points instead of the linear form.
///
/// The outer corner is the origin, show face a lies along +x and the room above it; board b is a mirror image about the
/// bisector of a square corner, so that only a's side need be drawn.
fn exact_offset(input: &SeamGapInput) -> f64 {
    let tilt = 45.0;
    let (thickness, error) = (input.thickness_a_mm + input.thickness_error_a_mm, input.tilt_error_a_deg);
    // Long point retreats by what the show width lacks.
    let grown = match input.cut_side_a {
        CutSide::ShowFaceDown => 0.0,
        CutSide::ShowFaceUp => thickness * tan_deg(tilt + error) - input.thickness_a_mm * tan_deg(tilt),
    };
    let out = input.bow_a_mm + if input.hold == SeamHold::HeldByInnerFrame { input.thickness_error_a_mm } else { 0.0 };
    // Long point relative to the corner, and its distance from the seam's plane through the corner at 45 degrees.
    let (x, y) = (-(input.size_error_a_mm + grown), out);
    (x + y) / 2.0_f64.sqrt()
}

proptest! {
    #[test]
    fn the_linear_form_is_the_slope_of_the_exact_one(
        size in -0.3..0.3, thick in -0.3..0.3, bow in -0.3..0.3, tilt in -0.2..0.2, up in any::<bool>(), frame in any::<bool>(),
    ) {
        let input = SeamGapInput {
            size_error_a_mm: size, thickness_error_a_mm: thick, bow_a_mm: bow, tilt_error_a_deg: tilt,
            cut_side_a: if up { CutSide::ShowFaceUp } else { CutSide::ShowFaceDown },
            hold: if frame { SeamHold::HeldByInnerFrame } else { SeamHold::HeldByShowFaces },
            ..perfect()
        };
        // What is left is of second order: products of thickness and tilt error, and its square.
        let second = 40.0 * radians(tilt) * radians(tilt) + 2.0 * thick.abs() * radians(tilt.abs());
        prop_assert!((seam_gap(&input).unwrap().offset_mm - exact_offset(&input)).abs() <= second + 1e-12);
    }

    #[test]
    fn boards_never_overlap_and_touch_unless_both_edges_are_open(
        errors in prop::array::uniform4(-1.0..1.0), hold in 0_usize..3, corner_deg in 60.0..300.0, t in 10.0..30.0,
    ) {
        let [tilt, size, thick, bow] = errors;
        let input = SeamGapInput {
            thickness_a_mm: t, thickness_b_mm: t, corner_deg, hold: HOLDS[hold], tilt_error_a_deg: tilt,
            size_error_b_mm: size, thickness_error_a_mm: thick, bow_b_mm: bow, ..perfect()
        };
        let gap = seam_gap(&input).unwrap();
        prop_assert!(gap.show_gap_mm >= 0.0 && gap.inside_gap_mm >= 0.0);
        prop_assert!((gap.show_gap_mm - gap.inside_gap_mm - gap.taper_mm).abs() < 1e-12);
        prop_assert_eq!(gap.opening == OpenEdge::BothEdges, gap.show_gap_mm > CLOSED_MM && gap.inside_gap_mm > CLOSED_MM);
    }

    #[test]
    fn the_two_boards_may_be_named_either_way_round(
        errors in prop::array::uniform6(-1.0..1.0), t_a in 10.0..30.0, t_b in 10.0..30.0, hold in 0_usize..3,
    ) {
        let [tilt_a, tilt_b, size, thick, cup, bow] = errors;
        let input = SeamGapInput {
            thickness_a_mm: t_a, thickness_b_mm: t_b, hold: HOLDS[hold], tilt_error_a_deg: tilt_a, tilt_error_b_deg: tilt_b,
            size_error_a_mm: size, thickness_error_b_mm: thick, cup_a_mm: cup, bow_b_mm: bow,
            cut_side_b: CutSide::ShowFaceUp, ..perfect()
        };
        let mirrored = SeamGapInput {
            thickness_a_mm: t_b, thickness_b_mm: t_a, width_a_mm: input.width_b_mm, width_b_mm: input.width_a_mm,
            cut_side_a: input.cut_side_b, cut_side_b: input.cut_side_a, tilt_error_a_deg: tilt_b, tilt_error_b_deg: tilt_a,
            size_error_a_mm: 0.0, size_error_b_mm: size, thickness_error_a_mm: thick, thickness_error_b_mm: 0.0,
            cup_a_mm: 0.0, cup_b_mm: cup, bow_a_mm: bow, bow_b_mm: 0.0, ..input
        };
        let (one, other) = (seam_gap(&input).unwrap(), seam_gap(&mirrored).unwrap());
        prop_assert!((one.show_gap_mm - other.show_gap_mm).abs() < 1e-9);
        prop_assert!((one.inside_gap_mm - other.inside_gap_mm).abs() < 1e-9);
        prop_assert!((one.step_mm + other.step_mm).abs() < 1e-9);
    }

    #[test]
    fn twice_the_size_has_twice_the_gap(t in 5.0..50.0, tilt in -2.0..2.0, size in -1.0..1.0) {
        let at = |scale: f64| seam_gap(&SeamGapInput {
            thickness_a_mm: t * scale, thickness_b_mm: t * scale, tilt_error_a_deg: tilt, size_error_a_mm: size * scale,
            ..perfect()
        }).unwrap();
        let (one, two) = (at(1.0), at(2.0));
        prop_assert!((two.show_gap_mm - 2.0 * one.show_gap_mm).abs() < 1e-9);
        prop_assert!((two.inside_gap_mm - 2.0 * one.inside_gap_mm).abs() < 1e-9);
    }

    #[test]
    fn any_bits_give_numbers_or_a_fault(
        bits in prop::array::uniform16(prop::num::f64::ANY), which in 0_usize..17, hold in 0_usize..3,
    ) {
        let mut input = SeamGapInput { hold: HOLDS[hold], ..perfect() };
        let fields = [
            &mut input.thickness_a_mm, &mut input.thickness_b_mm, &mut input.corner_deg, &mut input.width_a_mm,
            &mut input.width_b_mm, &mut input.tilt_error_a_deg, &mut input.tilt_error_b_deg, &mut input.corner_error_deg,
            &mut input.size_error_a_mm, &mut input.size_error_b_mm, &mut input.thickness_error_a_mm,
            &mut input.thickness_error_b_mm, &mut input.cup_a_mm, &mut input.cup_b_mm, &mut input.bow_a_mm,
            &mut input.bow_b_mm,
        ];
        for (k, field) in fields.into_iter().enumerate() {
            if which == k || which == 16 {
                *field = bits[k];
            }
        }
        if let Ok(gap) = seam_gap(&input) {
            let all = [gap.seam_mm, gap.divergence_deg, gap.taper_mm, gap.width_error_a_mm, gap.width_error_b_mm,
                gap.offset_mm, gap.show_gap_mm, gap.inside_gap_mm, gap.step_mm, gap.closing_corner_deg];
            prop_assert!(all.iter().all(|value| value.is_finite()), "{:?}", gap);
        }
    }
}
