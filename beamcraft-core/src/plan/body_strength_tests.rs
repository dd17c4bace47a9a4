use super::*;
use crate::plan::{BeamSpec, Plan, plan};
use crate::units::factor::STANDARD_GRAVITY_M_S2;
use approx::assert_relative_eq;
use proptest::prelude::*;

fn ash() -> BeamSpec {
    crate::json::read(include_str!("../../examples/specs/ash_shelf_beam.json")).expect("a spec")
}

fn check<'a>(plan: &'a Plan, name: &str) -> &'a Verdict {
    plan.checks.iter().find(|check| check.name == name).expect("a check of that name")
}

/// By hand: studs 315 mm from either end; the push of 200 N at an end, with own weight along the body.
#[test]
fn bending_over_the_outer_stud_is_that_of_a_cantilever() {
    let plan = plan(&ash()).unwrap();
    let own = plan.mass.lifted_kg * STANDARD_GRAVITY_M_S2 / 1830.0;
    let moment = 200.0 * 315.0 + own * 315.0 * 315.0 / 2.0;
    // Front 20 x 185, top and bottom 20 x 195, 82.5 mm above and below the middle.
    let inertia =
        20.0 * 185.0 * 185.0 * 185.0 / 12.0 + 2.0 * (195.0 * 20.0 * 20.0 * 20.0 / 12.0 + 195.0 * 20.0 * 82.5 * 82.5);
    let found = check(&plan, "bending of the body over the studs");
    assert_relative_eq!(found.demand.unwrap(), moment * 92.5 / inertia, max_relative = 1e-9);
    assert_eq!(found.outcome, Outcome::Met);
}

/// By hand: an open section of three walls; the push at the front edge turns about the middle of the seat.
#[test]
fn twisting_of_the_open_body_is_that_of_its_boards() {
    let plan = plan(&ash()).unwrap();
    let walls = 165.0 + 2.0 * 205.0;
    let constant = walls * 20.0 * 20.0 * 20.0 / 3.0;
    let own_n = plan.mass.lifted_kg * STANDARD_GRAVITY_M_S2;
    let own_out = 215.0 - plan.mass.centre_mm[1] - 9.0;
    let torque = own_n * own_out / 1830.0 * 315.0 + 200.0 * (215.0 - 9.0);
    let found = check(&plan, "shear of the body by twisting");
    assert_relative_eq!(found.demand.unwrap(), torque * 20.0 / constant, max_relative = 1e-9);
}

#[test]
fn a_strip_that_is_too_weak_alone_holds_with_the_body() {
    let found = plan(&ash()).unwrap();
    let strip = check(&found, "bending of the wall half between the studs");
    assert!(strip.outcome == Outcome::Met && strip.remark.contains("bend together"), "{strip:?}");
    assert!(found.findings.iter().all(|finding| finding.subject != "wall half"));
}

#[test]
fn without_studs_the_body_is_not_determined() {
    let mut spec = ash();
    spec.site = None;
    let found = plan(&spec).unwrap();
    assert_eq!(check(&found, "the body over the studs").outcome, Outcome::NotDetermined);
    assert_eq!(check(&found, "beam half to the body").outcome, Outcome::NotCovered);
}

#[test]
fn a_closed_body_twists_far_less() {
    let mut spec = ash();
    let crate::plan::LegShape::Rectangular(leg) = &mut spec.body.legs[0];
    let front = leg.boards[0];
    leg.boards.push(crate::shell::LegBoard { face: crate::shell::LongFace::Back, ..front });
    spec.cleat.strip_width_mm = 60.0;
    let open = check(&plan(&ash()).unwrap(), "shear of the body by twisting").demand.unwrap();
    if let Some(closed) = plan(&spec).unwrap().checks.iter().find(|check| check.name == "shear of the body by twisting")
    {
        assert!(closed.demand.unwrap() < 0.3 * open, "{closed:?}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]
    #[test]
    fn more_load_never_raises_a_margin(push in 0.0..900.0_f64, more in 0.0..500.0_f64, top in 0.0..2_000.0_f64) {
        let demands = |push: f64, top: f64| {
            let mut spec = ash();
            (spec.load.front_edge_n, spec.load.on_top_n_per_m2) = (push, top);
            let of_body = |check: &Verdict| ["body", "glue lines", "top", "cleat lip", "beam half"].contains(&check.subject.as_str());
            let checks = plan(&spec).unwrap().checks.into_iter().filter(of_body);
            checks.map(|check| (check.name, check.demand)).collect::<Vec<_>>()
        };
        for (less, greater) in demands(push, top).into_iter().zip(demands(push + more, top + more)) {
            prop_assert_eq!(&less.0, &greater.0);
            prop_assert!(greater.1 >= less.1.map(|demand| demand * (1.0 - 1e-12)), "{:?} {:?}", less, greater);
        }
    }
}
