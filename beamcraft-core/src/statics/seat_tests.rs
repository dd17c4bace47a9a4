use super::*;
use crate::statics::test_inputs::{hostile, solve};
use proptest::prelude::*;

fn seat(weight_n: f64, centre_out_mm: f64, foot_below_mm: f64, bevel_deg: f64, friction: f64) -> CleatSeat {
    let input = CleatSeatInput { weight_n, centre_out_mm, foot_below_mm, bevel_deg, friction, top_above_mm: None };
    cleat_seat(&input).expect("allowed")
}

#[test]
fn a_square_bevel_without_friction_holds_as_long_as_the_centre_is_nearer_than_the_foot() {
    assert_eq!(seat(100.0, 99.0, 100.0, 45.0, 0.0).regime, SeatRegime::SitsAndPressesTop);
    assert_eq!(seat(100.0, 100.0, 100.0, 45.0, 0.0).regime, SeatRegime::Sits);
    assert_eq!(seat(100.0, 101.0, 100.0, 45.0, 0.0).regime, SeatRegime::ClimbsOff);
}

#[test]
fn friction_alone_is_never_a_pass() {
    let jammed = seat(100.0, 500.0, 100.0, 60.0, 1.0);
    assert_eq!((jammed.lock, jammed.regime), (SeatLock::Locked, SeatRegime::HeldByFrictionOnly));
    assert_eq!((jammed.outcome, jammed.greatest_pull_n, jammed.ratio_with_friction), (Outcome::NotMet, None, None));
    assert!(jammed.margin_without_friction_n.expect("known") < 0.0);
    // Friction of 1 is an angle of 45° exactly, so that this stands at the very limit.
    assert_eq!(seat(100.0, 50.0, 100.0, 45.0, 1.0).lock, SeatLock::Locked);
}

#[test]
fn a_weight_behind_the_contact_needs_the_top_of_the_body() {
    let open = seat(100.0, -20.0, 100.0, 45.0, 0.0);
    assert_eq!((open.regime, open.outcome, open.needed_n), (SeatRegime::TipsInward, Outcome::NotDetermined, None));
    let input = CleatSeatInput {
        weight_n: 100.0,
        centre_out_mm: -20.0,
        foot_below_mm: 100.0,
        bevel_deg: 45.0,
        friction: 0.0,
        top_above_mm: Some(40.0),
    };
    let held = cleat_seat(&input).expect("allowed");
    assert_eq!((held.regime, held.outcome), (SeatRegime::TipsInward, Outcome::Met));
    assert!((held.needed_n.expect("known") - 50.0).abs() < 1e-9);
    let short = cleat_seat(&CleatSeatInput { top_above_mm: Some(10.0), ..input }).expect("allowed");
    assert_eq!((short.regime, short.outcome), (SeatRegime::ClimbsOff, Outcome::NotMet));
}

#[test]
fn nothing_hung_gives_no_force_and_the_same_regime() {
    let empty = seat(0.0, 50.0, 100.0, 45.0, 0.0);
    assert_eq!((empty.vertical_n, empty.horizontal_n, empty.design_pull_n), (0.0, 0.0, 0.0));
    assert_eq!(empty.regime, SeatRegime::SitsAndPressesTop);
}

proptest! {
    #[test]
    fn an_independent_linear_system_gives_the_same_forces(
        w in 1.0..5000.0_f64, e in 0.0..600.0_f64, h in 20.0..600.0_f64, x0 in -50.0..50.0_f64, z0 in 0.0..400.0_f64,
    ) {
        // Unknowns: vertical and horizontal force of the seat on the body, push of the wall on the foot; the moments are
        // taken about a point that is neither of them.
        let (contact, foot) = ([20.0 - x0, h - z0], [0.0 - x0, 0.0 - z0]);
        let weight = [20.0 + e - x0, 50.0 - z0];
        let system = [[1.0, 0.0, 0.0], [0.0, -1.0, 1.0], [contact[0], contact[1], -foot[1]]];
        let [vertical, pull, push] = solve(system, [w, 0.0, w * weight[0]]);
        let found = seat(w, e, h, 45.0, 0.2);
        let near = |a: f64, b: f64| (a - b).abs() <= 1e-9 * (1.0 + w * (1.0 + e / h) * 10.0);
        prop_assert!(near(found.vertical_n, vertical));
        prop_assert!(near(found.horizontal_n, pull) && near(found.horizontal_n, push));
    }

    #[test]
    fn with_both_contacts_bearing_the_body_is_in_equilibrium(
        w in 0.0..5000.0_f64, e in -100.0..300.0_f64, h in 20.0..600.0_f64, a in 20.0..300.0_f64, b in 5.0..75.0_f64,
    ) {
        let input = CleatSeatInput {
            weight_n: w, centre_out_mm: e, foot_below_mm: h, bevel_deg: b, friction: 0.0, top_above_mm: Some(a),
        };
        let found = cleat_seat(&input).expect("allowed");
        if found.outcome == Outcome::Met {
            let (foot, top) = (found.foot_bearing_n.expect("known"), found.top_bearing_n.expect("known"));
            let scale = 1.0 + found.pull_without_friction_n + w;
            prop_assert!((foot + top - found.pull_without_friction_n).abs() <= 1e-9 * scale);
            prop_assert!((foot * h - top * a - w * e).abs() <= 1e-9 * scale * (h + a + e.abs()));
        } else {
            prop_assert!(found.foot_bearing_n.is_none());
        }
    }

    #[test]
    fn more_weight_farther_out_or_less_bevel_never_raises_a_margin(
        w in 1.0..1000.0_f64, more in 0.0..1000.0_f64, e in 0.0..400.0_f64, out in 0.0..200.0_f64,
        h in 20.0..400.0_f64, b in 5.0..75.0_f64, flatter in 0.0..40.0_f64, mu in 0.0..1.5_f64,
    ) {
        let base = seat(w, e, h, b, mu);
        let ratio = |other: &CleatSeat| other.ratio_without_friction.expect("in front");
        prop_assert!(ratio(&seat(w, e + out, h, b, mu)) >= ratio(&base));
        prop_assert!(ratio(&seat(w, e, h, (b - flatter).max(5.0), mu)) >= ratio(&base) * (1.0 - 1e-12));
        prop_assert!(seat(w + more, e, h, b, mu).design_pull_n >= base.design_pull_n);
        // Friction may change the regime, never the outcome.
        prop_assert_eq!(seat(w, e, h, b, 0.0).outcome, base.outcome);
        let margin = |other: &CleatSeat| other.margin_without_friction_n.expect("in front");
        prop_assert!(margin(&seat(w, e + out, h, b, mu)) <= margin(&base));
    }

    #[test]
    fn hostile_numbers_are_refused_or_give_finite_results(
        w in hostile(), e in hostile(), h in hostile(), b in hostile(), mu in hostile(), a in hostile(), top in any::<bool>(),
    ) {
        let input = CleatSeatInput {
            weight_n: w, centre_out_mm: e, foot_below_mm: h, bevel_deg: b, friction: mu, top_above_mm: top.then_some(a),
        };
        #[cfg(feature = "json")]
        if let Ok(found) = cleat_seat(&input) {
            prop_assert!(crate::json::write(&found).is_ok());
        }
        #[cfg(not(feature = "json"))]
        let _ = cleat_seat(&input);
    }
}
