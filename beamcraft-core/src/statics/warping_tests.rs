use super::*;
use crate::statics::test_inputs::hostile;
use approx::assert_relative_eq;
use proptest::prelude::*;

fn chain(points: &[(f64, f64)], thicknesses: &[f64]) -> OpenWallWarpingInput {
    OpenWallWarpingInput {
        corners: points.iter().map(|(x_mm, y_mm)| SectionPoint { x_mm: *x_mm, y_mm: *y_mm }).collect(),
        thicknesses_mm: thicknesses.to_vec(),
        torque_nmm: 1000.0,
        bimoment_nmm2: 1.0e6,
    }
}

fn channel(b: f64, h: f64, flange: f64, web: f64) -> OpenWallWarpingInput {
    chain(&[(b, -h / 2.0), (0.0, -h / 2.0), (0.0, h / 2.0), (b, h / 2.0)], &[flange, web, flange])
}

fn far(a: (f64, f64), b: (f64, f64)) -> f64 {
    ((b.0 - a.0) * (b.0 - a.0) + (b.1 - a.1) * (b.1 - a.1)).sqrt()
}

/// `∫ S²/t ds` and the largest `S/t`, by adding up very many short pieces of the walls of a channel.
fn added_up(input: &OpenWallWarpingInput, found: &OpenWallWarping) -> (f64, f64) {
    let (mut first, mut energy, mut greatest) = (0.0_f64, 0.0, 0.0_f64);
    let steps = 20_000;
    for ((pair, t), ends) in input.corners.windows(2).zip(&input.thicknesses_mm).zip(found.corners.windows(2)) {
        let length = far((pair[0].x_mm, pair[0].y_mm), (pair[1].x_mm, pair[1].y_mm));
        let ds = length / f64::from(steps);
        for k in 0..steps {
            let share = (f64::from(k) + 0.5) / f64::from(steps);
            let w = ends[0].swept_mm2 + share * (ends[1].swept_mm2 - ends[0].swept_mm2);
            let middle = first + 0.5 * w * t * ds;
            energy += middle * middle / t * ds;
            first += w * t * ds;
            greatest = greatest.max(first.abs() / t);
        }
    }
    (energy, greatest)
}

#[test]
fn stresses_are_those_of_many_short_pieces() {
    let input = channel(205.0, 165.0, 20.0, 18.0);
    let found = open_wall_warping(&input).unwrap();
    let (energy, greatest) = added_up(&input, &found);
    let constant = found.warping_constant_mm6;
    assert_relative_eq!(found.warping_shear_constant_mm4.unwrap(), constant * constant / energy, max_relative = 1e-6);
    assert_relative_eq!(found.greatest_shear_mpa.unwrap(), 1000.0 * greatest / constant, max_relative = 1e-6);
}

#[test]
fn walls_that_meet_in_one_corner_and_straight_strips_do_not_warp() {
    for (points, thicknesses) in
        [(vec![(0.0, 80.0), (0.0, 0.0), (60.0, 0.0)], vec![10.0, 6.0]), (vec![(1.0, 2.0), (31.0, 42.0)], vec![5.0])]
    {
        let found = open_wall_warping(&chain(&points, &thicknesses)).unwrap();
        assert_eq!((found.warping_constant_mm6, found.greatest_stress_mpa), (0.0, None));
    }
    let angle = open_wall_warping(&chain(&[(0.0, 80.0), (0.0, 0.0), (60.0, 0.0)], &[10.0, 6.0])).unwrap();
    assert!(angle.shear_centre.x_mm.abs() < 1e-9 && angle.shear_centre.y_mm.abs() < 1e-9, "the corner itself");
}

#[test]
fn what_is_no_chain_of_walls_is_refused() {
    assert_eq!(open_wall_warping(&chain(&[(0.0, 0.0)], &[])).unwrap_err().code(), ErrorCode::NoSection);
    let doubled = chain(&[(0.0, 0.0), (0.0, 0.0)], &[10.0]);
    assert_eq!(open_wall_warping(&doubled).unwrap_err().field(), "corners[1]");
    let missing = chain(&[(0.0, 0.0), (10.0, 0.0), (10.0, 10.0)], &[10.0]);
    assert_eq!(open_wall_warping(&missing).unwrap_err().code(), ErrorCode::Inconsistent);
    let thick = chain(&[(0.0, 0.0), (10.0, 0.0)], &[f64::NAN]);
    assert_eq!(open_wall_warping(&thick).unwrap_err().field(), "thicknesses_mm[0]");
}

proptest! {
    /// The formulas of the handbooks for a channel with thin walls.
    #[test]
    fn a_channel_is_that_of_the_handbooks(
        b in 10.0..500.0_f64, h in 10.0..500.0_f64, tf in 3.0..40.0_f64, tw in 3.0..40.0_f64,
    ) {
        let found = open_wall_warping(&channel(b, h, tf, tw)).unwrap();
        let whole = h * tw + 6.0 * b * tf;
        prop_assert!((found.shear_centre.x_mm + 3.0 * b * b * tf / whole).abs() < 1e-8 * b);
        let constant = tf * b * b * b * h * h / 12.0 * (3.0 * b * tf + 2.0 * h * tw) / whole;
        prop_assert!((found.warping_constant_mm6 / constant - 1.0).abs() < 1e-8);
    }

    #[test]
    fn it_is_the_same_wherever_it_lies_and_from_whichever_edge_it_is_told(
        points in proptest::collection::vec((-200.0..200.0_f64, -200.0..200.0_f64), 3..7),
        thickness in 3.0..40.0_f64, dx in -900.0..900.0_f64, dy in -900.0..900.0_f64,
    ) {
        let far_apart = points.windows(2).all(|p| far(p[0], p[1]) > 1.0);
        prop_assume!(far_apart);
        let thicknesses = vec![thickness; points.len() - 1];
        let here = open_wall_warping(&chain(&points, &thicknesses)).unwrap();
        let away: Vec<_> = points.iter().rev().map(|(x, y)| (x + dx, y + dy)).collect();
        let there = open_wall_warping(&chain(&away, &thicknesses)).unwrap();
        let scale = here.area_mm2 * 1.0e9;
        prop_assert!((here.warping_constant_mm6 - there.warping_constant_mm6).abs() < 1e-6 * scale);
    }

    #[test]
    fn hostile_numbers_are_refused_or_give_finite_results(
        points in proptest::collection::vec((hostile(), hostile()), 0..6),
        thicknesses in proptest::collection::vec(hostile(), 0..6), torque in hostile(), bimoment in hostile(),
    ) {
        let mut input = chain(&points, &thicknesses);
        (input.torque_nmm, input.bimoment_nmm2) = (torque, bimoment);
        if let Ok(found) = open_wall_warping(&input) {
            let numbers = [
                found.warping_constant_mm6, found.shear_centre.x_mm, found.shear_centre.y_mm,
                found.warping_shear_constant_mm4.unwrap_or(0.0), found.greatest_stress_mpa.unwrap_or(0.0),
                found.greatest_shear_mpa.unwrap_or(0.0),
            ];
            prop_assert!(numbers.iter().all(|number| number.is_finite()), "{:?}", found);
        }
    }
}
