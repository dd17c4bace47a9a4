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

/// Shear centre in front of the front face, warping constant and twisting constant of the ash body, by the handbook's
/// formulas for a channel: flanges 205 mm, web 165 mm, 20 mm thick.
fn channel() -> (f64, f64, f64) {
    let (b, h, t) = (205.0_f64, 165.0, 20.0);
    let whole = h * t + 6.0 * b * t;
    let in_front = 3.0 * b * b * t / whole - 0.5 * t;
    let warping = t * b * b * b * h * h / 12.0 * (3.0 * b * t + 2.0 * h * t) / whole;
    (in_front, warping, (2.0 * b + h) * t * t * t / 3.0)
}

/// By hand: studs 315 mm from either end; the push of 200 N at an end, with own weight along the body. Bending of a cantilever,
/// and warping of one that twists about its shear centre.
#[test]
fn bending_over_the_outer_stud_is_that_of_a_cantilever() {
    let plan = plan(&ash()).unwrap();
    let own_n = plan.mass.lifted_kg * STANDARD_GRAVITY_M_S2;
    let own = own_n / 1830.0;
    let moment = 200.0 * 315.0 + own * 315.0 * 315.0 / 2.0;
    // Front 20 x 185, top and bottom 20 x 195, 82.5 mm above and below the middle.
    let inertia =
        20.0 * 185.0 * 185.0 * 185.0 / 12.0 + 2.0 * (195.0 * 20.0 * 20.0 * 20.0 / 12.0 + 195.0 * 20.0 * 82.5 * 82.5);
    let (in_front, warping, _) = channel();
    let per_mm = own * (plan.mass.centre_mm[1] + in_front);
    let bimoment = 200.0 * in_front * 315.0 + per_mm * 315.0 * 315.0 / 2.0;
    // The back edges of top and bottom warp most: half the height times what lies between shear centre and edge.
    let greatest = 0.5 * 165.0 * (205.0 - 10.0 - in_front);
    let found = check(&plan, "bending of the body over the studs, with warping");
    let stress = moment * 92.5 / inertia + bimoment * greatest / warping;
    assert_relative_eq!(found.demand.unwrap(), stress, max_relative = 1e-9);
    assert_eq!(found.outcome, Outcome::Met);
}

/// By hand: an open section of three walls; own weight and push turn about the shear centre in front of it.
#[test]
fn twisting_of_the_open_body_is_that_of_its_boards() {
    let plan = plan(&ash()).unwrap();
    let (in_front, _, constant) = channel();
    let own_n = plan.mass.lifted_kg * STANDARD_GRAVITY_M_S2;
    let torque = own_n * (plan.mass.centre_mm[1] + in_front) / 1830.0 * 315.0 + 200.0 * in_front;
    let found = check(&plan, "shear of the body by twisting");
    assert_relative_eq!(found.demand.unwrap(), torque * 20.0 / constant, max_relative = 1e-9);
    assert_eq!(found.mode, "free twisting");
}

/// Held by warping alone, the end turns as a cantilever that goes on over the next span, and drops far less than it may.
#[test]
fn the_front_edge_drops_by_warping_as_worked_by_hand() {
    let spec = ash();
    let plan = plan(&spec).unwrap();
    let found = check(&plan, "drop of the front edge by twisting, over its span, with creep");
    assert_eq!((found.outcome, found.mode.as_str()), (Outcome::Met, "restrained warping"));
    let (in_front, warping, _) = channel();
    let modulus = 12_000.0;
    // The push alone, over one simple span of 600 mm, with half of its ends clamped by the next: between both hand formulas.
    let turn = |span: f64| 200.0 * in_front * 315.0 * 315.0 * (span + 315.0) / (3.0 * modulus * warping);
    let drop = |span: f64| 1.5 * turn(span) * 215.0 / 630.0;
    assert!((drop(400.0)..2.5 * drop(600.0)).contains(&found.demand.unwrap()), "{} {:?}", drop(600.0), found);
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

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]
    #[test]
    fn more_load_never_raises_a_margin(push in 0.0..900.0_f64, more in 0.0..500.0_f64, top in 0.0..2_000.0_f64) {
        let demands = |push: f64, top: f64| {
            let mut spec = ash();
            (spec.load.front_edge_n, spec.load.on_top_n_per_m2) = (push, top);
            let of_body = |check: &Verdict| ["body", "glue lines", "top", "cleat lip", "beam half", "frame"].contains(&check.subject.as_str());
            let checks = plan(&spec).unwrap().checks.into_iter().filter(of_body);
            checks.map(|check| (check.name, check.demand)).collect::<Vec<_>>()
        };
        for (less, greater) in demands(push, top).into_iter().zip(demands(push + more, top + more)) {
            prop_assert_eq!(&less.0, &greater.0);
            prop_assert!(greater.1 >= less.1.map(|demand| demand * (1.0 - 1e-12)), "{:?} {:?}", less, greater);
        }
    }
}
