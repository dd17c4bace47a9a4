use crate::fasten::LoadsTogether;
use crate::plan::{BeamSpec, LockSpec, Plan, plan};
use crate::verdict::{Outcome, Verdict};
use approx::assert_relative_eq;
use proptest::prelude::*;

fn ash() -> BeamSpec {
    crate::json::read(include_str!("../../examples/specs/ash_shelf_beam.json")).expect("a spec")
}

fn walnut() -> BeamSpec {
    crate::json::read(include_str!("../../examples/specs/walnut_beam.json")).expect("a spec")
}

fn check<'a>(plan: &'a Plan, name: &str) -> &'a Verdict {
    plan.checks.iter().find(|check| check.name == name).unwrap_or_else(|| panic!("no check {name}"))
}

/// By hand: 383.5 N on the stud, 196 mm from seat to front; one piece of 20 × 176 mm.
#[test]
fn the_tipping_of_the_most_loaded_stud_goes_through_one_frame_piece() {
    let plan = plan(&ash()).unwrap();
    let stud = plan.cleat.as_ref().unwrap().load_cases.iter().filter_map(|case| case.worst_stud_n).fold(0.0, f64::max);
    let found = check(&plan, "tipping from the cleat to the front, through one frame piece");
    assert_relative_eq!(found.demand.unwrap(), 6.0 * stud * 196.0 / (20.0 * 176.0 * 176.0), max_relative = 1e-9);
    assert_eq!(found.outcome, Outcome::Met);
}

/// By hand: studs 315 mm from the ends, the weight in the middle, a push of 200 N.
#[test]
fn a_push_on_the_end_does_not_rock_the_body_off_its_seat() {
    let plan = plan(&ash()).unwrap();
    let found = check(&plan, "rocking over the outer stud by a push on the end");
    assert_relative_eq!(found.demand.unwrap(), 200.0 * 315.0, max_relative = 1e-12);
    let own = plan.cleat.as_ref().unwrap().load_cases[0].load_n;
    // The weight lies a hair right of the middle, so the right end is the worse.
    assert_relative_eq!(found.capacity.unwrap(), own * (1515.0 - plan.mass.centre_mm[0]), max_relative = 1e-12);
    assert_eq!(found.outcome, Outcome::Met);
}

#[test]
fn a_push_that_rocks_it_off_is_for_the_lock_or_not_met() {
    let mut spec = ash();
    spec.load.front_edge_n = 400.0;
    let name = "rocking over the outer stud by a push on the end";
    assert_eq!(check(&plan(&spec).unwrap(), name).outcome, Outcome::NotDetermined, "a lock is fitted");
    spec.cleat.lock = LockSpec::None;
    assert_eq!(check(&plan(&spec).unwrap(), name).outcome, Outcome::NotMet);
}

#[test]
fn without_frame_pieces_nobody_says_what_takes_the_tipping() {
    let mut spec = ash();
    spec.frame.piece_thickness_mm = 150.0;
    spec.frame.greatest_spacing_mm = 10.0;
    let plan = plan(&spec).unwrap();
    if plan.frame.is_none() {
        let found = check(&plan, "tipping from the cleat to the front, through one frame piece");
        assert_eq!(found.outcome, Outcome::NotCovered);
    }
}

#[test]
fn a_sharp_narrow_strip_is_pressed_harder() {
    let (thick, mut thin) = (ash(), ash());
    thin.cleat.thickness_mm = 12.0;
    let of = |spec: &BeamSpec| {
        let plan = plan(spec).unwrap();
        ["bearing of the halves on each other", "bending of the lip across the grain", "shear of the lip"]
            .map(|name| check(&plan, name).demand.unwrap())
    };
    for (thick, thin) in of(&thick).into_iter().zip(of(&thin)) {
        assert!(thin > thick, "{thin} {thick}");
    }
}

#[test]
fn a_pull_and_a_knock_that_were_asked_for_are_answered() {
    let mut spec = ash();
    (spec.load.pull_at_top_n, spec.load.knock_from_below_n) = (Some(50.0), Some(50.0));
    let locked = plan(&spec).unwrap();
    assert_eq!(
        check(&locked, "outward pull at the top edge").outcome,
        Outcome::NotDetermined,
        "the lock's own strength"
    );
    assert_eq!(check(&locked, "knock from below at the front edge").outcome, Outcome::Met);
    spec.cleat.lock = LockSpec::None;
    assert_eq!(check(&plan(&spec).unwrap(), "outward pull at the top edge").outcome, Outcome::NotMet);
}

#[test]
fn each_case_says_how_long_it_lasts_and_what_it_uses_of_the_screw() {
    let mut spec = ash();
    let apart = plan(&spec).unwrap();
    let cases = &apart.cleat.as_ref().unwrap().load_cases;
    let factors: Vec<_> = cases.iter().map(|case| case.duration_factor).collect();
    assert_eq!(factors, [0.9, 0.9, 1.0]);
    let most = cases.iter().filter_map(|case| case.screw_utilisation).fold(0.0, f64::max);
    let named = apart.checks.iter().filter(|check| check.name == "lateral and withdrawal at once");
    assert_eq!(named.filter_map(|check| check.utilisation).fold(0.0, f64::max), most);
    spec.load.together = LoadsTogether::AtOnce;
    let at_once = plan(&spec).unwrap();
    let both = at_once.cleat.as_ref().unwrap().load_cases.last().unwrap();
    assert_relative_eq!(both.load_n, cases[1].load_n + 200.0, max_relative = 1e-12);
    assert!(both.screw_utilisation.unwrap() > most);
}

#[test]
fn both_demo_beams_have_an_answer_for_every_part_between_stud_and_front() {
    for spec in [ash(), walnut()] {
        let plan = plan(&spec).unwrap();
        for subject in ["cleat lip", "beam half", "frame", "body", "glue lines", "top", "wall half"] {
            let of_part: Vec<_> = plan.checks.iter().filter(|check| check.subject == subject).collect();
            assert!(!of_part.is_empty(), "{subject}");
            for check in of_part.iter().filter(|check| !check.name.starts_with("lift")) {
                assert_eq!(check.outcome, Outcome::Met, "{} {:?}", spec.name, check);
            }
        }
        assert_eq!(check(&plan, "bearing of the halves on each other").outcome, Outcome::Met);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]
    /// Of the whole plan: more load lowers no demand and raises no capacity, and passes nothing that failed.
    #[test]
    fn more_load_never_raises_a_margin_anywhere(
        push in 1.0..900.0_f64, more in 0.0..500.0_f64, top in 1.0..2_000.0_f64, heavier in 0.0..800.0_f64,
        at_once in any::<bool>(), locked in any::<bool>(),
    ) {
        let planned = |push: f64, top: f64| {
            let mut spec = ash();
            (spec.load.front_edge_n, spec.load.on_top_n_per_m2) = (push, top);
            spec.load.together = if at_once { LoadsTogether::AtOnce } else { LoadsTogether::Apart };
            spec.cleat.lock = if locked { LockSpec::Fitted } else { LockSpec::None };
            plan(&spec).unwrap()
        };
        let (less, greater) = (planned(push, top), planned(push + more, top + heavier));
        let cases = |plan: &Plan| plan.cleat.as_ref().unwrap().load_cases.clone();
        for (a, b) in cases(&less).iter().zip(cases(&greater)) {
            prop_assert!(b.load_n >= a.load_n && b.pull_n >= a.pull_n * (1.0 - 1e-12));
            prop_assert!(b.screw_utilisation.unwrap() >= a.screw_utilisation.unwrap() * (1.0 - 1e-12));
        }
        // Things on top stand nearer to the wall than the body's own weight lies, and so steady the seat; whether a screw reaches
        // does not depend on load.
        let structural = |check: &&Verdict| !["unhooking", "cleat seat"].contains(&check.subject.as_str());
        for check in less.checks.iter().filter(structural) {
            let same = |other: &&Verdict| other.name == check.name && other.subject == check.subject;
            let Some(other) = greater.checks.iter().find(same) else { continue };
            if let (Some(a), Some(b)) = (check.utilisation, other.utilisation) {
                prop_assert!(b >= a * (1.0 - 1e-9), "{:?} {:?}", check, other);
            }
        }
    }
}
