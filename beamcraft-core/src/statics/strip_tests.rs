use super::*;
use crate::statics::test_inputs::{hostile, solve};
use proptest::prelude::*;

const EXAMPLE: WallStripScrewsInput = WallStripScrewsInput {
    vertical_n: 150.0,
    horizontal_n: 100.0,
    contact_out_mm: 12.0,
    contact_up_mm: 60.0,
    screw_row_up_mm: 35.0,
    strip_height_mm: 60.0,
    screw_count: 4,
};

#[test]
fn a_pull_below_the_screws_turns_the_strip_about_its_upper_edge() {
    let low = WallStripScrewsInput { vertical_n: 10.0, contact_up_mm: 5.0, ..EXAMPLE };
    let screws = wall_strip_screws(&low).expect("allowed");
    assert_eq!(screws.pivot, StripPivot::UpperEdge);
    // About the upper edge: T·25 = 100·55 − 10·12.
    assert!((screws.total_tension_n - (5500.0 - 120.0) / 25.0).abs() < 1e-9);
    assert!(screws.bearing_n > 0.0);
}

#[test]
fn a_higher_row_has_the_better_lever() {
    let at = |screw_row_up_mm: f64| {
        wall_strip_screws(&WallStripScrewsInput { screw_row_up_mm, ..EXAMPLE }).expect("allowed").total_tension_n
    };
    assert!(at(20.0) > at(35.0) && at(35.0) > at(50.0));
}

#[test]
fn screws_at_the_upper_edge_are_refused() {
    let refused = wall_strip_screws(&WallStripScrewsInput { screw_row_up_mm: 59.5, ..EXAMPLE }).expect_err("refused");
    assert_eq!((refused.code, refused.field), (ErrorCode::Inconsistent, "screw_row_up_mm"));
}

proptest! {
    #[test]
    fn forces_and_moments_about_any_point_balance(
        v in 0.0..2000.0_f64, h in 0.0..2000.0_f64, xc in 0.0..60.0_f64, yb in 0.0..200.0_f64, ys in 1.0..150.0_f64,
        above in 1.1..100.0_f64, n in 1_u32..40, px in -100.0..100.0_f64, pz in -100.0..300.0_f64,
    ) {
        let hs = ys + above;
        let input = WallStripScrewsInput {
            vertical_n: v, horizontal_n: h, contact_out_mm: xc, contact_up_mm: yb, screw_row_up_mm: ys,
            strip_height_mm: hs, screw_count: n,
        };
        let screws = wall_strip_screws(&input).expect("allowed");
        let edge = if screws.pivot == StripPivot::LowerEdge { 0.0 } else { hs };
        let (tension, shear) = (screws.total_tension_n, screws.shear_per_screw_n * f64::from(n));
        // Forces (x, z) and the points they act at; shear acts on the face at the wall.
        let forces = [([xc, yb], [h, -v]), ([0.0, ys], [-tension, shear]), ([0.0, edge], [screws.bearing_n, 0.0])];
        let moment: f64 = forces.iter().map(|(at, f)| (at[0] - px) * f[1] - (at[1] - pz) * f[0]).sum();
        let scale = 1.0 + tension + v + h;
        prop_assert!(forces.iter().map(|(_, f)| f[0]).sum::<f64>().abs() <= 1e-9 * scale);
        prop_assert!(forces.iter().map(|(_, f)| f[1]).sum::<f64>().abs() <= 1e-9 * scale);
        prop_assert!(moment.abs() <= 1e-9 * scale * 1000.0);
        prop_assert!(screws.bearing_n >= 0.0, "a wall cannot pull");
        // Second computation: tension, bearing and shear from the three equations about that point.
        let system = [[-1.0, 1.0, 0.0], [0.0, 0.0, 1.0], [ys - pz, pz - edge, -px]];
        let load = [-h, v, (xc - px) * v + (yb - pz) * h];
        let [solved_tension, solved_bearing, solved_shear] = solve(system, load);
        prop_assert!((solved_tension - tension).abs() <= 1e-9 * scale * 1000.0);
        prop_assert!((solved_bearing - screws.bearing_n).abs() <= 1e-9 * scale * 1000.0);
        prop_assert!((solved_shear - shear).abs() <= 1e-9 * scale * 1000.0);
    }

    #[test]
    fn more_load_never_eases_the_screws(
        v in 0.0..2000.0_f64, dv in 0.0..500.0_f64, h in 0.0..2000.0_f64, dh in 0.0..500.0_f64,
        xc in 0.0..60.0_f64, yb in 36.0..60.0_f64,
    ) {
        let base = WallStripScrewsInput {
            vertical_n: v, horizontal_n: h, contact_out_mm: xc, contact_up_mm: yb, ..EXAMPLE
        };
        let more = WallStripScrewsInput { vertical_n: v + dv, horizontal_n: h + dh, ..base };
        let (base, more) = (wall_strip_screws(&base).expect("allowed"), wall_strip_screws(&more).expect("allowed"));
        prop_assert!(more.total_tension_n >= base.total_tension_n && more.shear_per_screw_n >= base.shear_per_screw_n);
    }

    #[test]
    fn hostile_numbers_are_refused_or_give_finite_results(
        a in hostile(), b in hostile(), c in hostile(), d in hostile(), e in hostile(), f in hostile(), n in any::<u32>(),
    ) {
        let input = WallStripScrewsInput {
            vertical_n: a, horizontal_n: b, contact_out_mm: c, contact_up_mm: d, screw_row_up_mm: e, strip_height_mm: f,
            screw_count: n % 20_000,
        };
        if let Ok(screws) = wall_strip_screws(&input) {
            prop_assert!(screws.total_tension_n.is_finite() && screws.bearing_n >= 0.0);
            prop_assert!(screws.tension_per_screw_n.is_finite() && screws.shear_per_screw_n.is_finite());
        }
    }
}
