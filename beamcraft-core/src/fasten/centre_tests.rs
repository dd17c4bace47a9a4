use proptest::prelude::*;

use super::*;
use crate::fasten::group::{FastenerGroupInput, fastener_group};

fn at(x_mm: f64, y_mm: f64) -> FastenerPosition {
    FastenerPosition { x_mm, y_mm }
}

fn group(positions: Vec<FastenerPosition>, ultimate_slip_mm: f64) -> FastenerGroupLimitInput {
    FastenerGroupLimitInput {
        positions,
        capacity_n: 1_000.0,
        slip_modulus_n_per_mm: 2_000.0,
        ultimate_slip_mm,
        force_x_n: 0.0,
        force_y_n: 0.0,
        load_x_mm: 0.0,
        load_y_mm: 0.0,
        moment_nmm: 0.0,
    }
}

#[test]
fn a_load_through_the_middle_is_shared_evenly() {
    let square = vec![at(0.0, 0.0), at(60.0, 0.0), at(60.0, 60.0), at(0.0, 60.0)];
    let input = FastenerGroupLimitInput { force_y_n: -500.0, load_x_mm: 30.0, load_y_mm: 10.0, ..group(square, 100.0) };
    let found = fastener_group_limit(&input).unwrap();
    assert!((found.load_factor - 8.0).abs() < 1e-6, "{}", found.load_factor);
    assert!((found.gain - 1.0).abs() < 1e-6 && (found.effective_count - 4.0).abs() < 1e-6);
    assert_eq!((found.centre_x_mm, found.centre_y_mm), (None, None));
    let one = FastenerGroupLimitInput { force_x_n: 100.0, ..group(vec![at(5.0, 5.0)], 100.0) };
    let one = FastenerGroupLimitInput { load_x_mm: 5.0, load_y_mm: 5.0, ..one };
    assert!((fastener_group_limit(&one).unwrap().load_factor - 10.0).abs() < 1e-6);
}

// Two in a line under a force across it: each carries what statics says, whatever the law.
#[test]
fn a_determinate_pair_gains_nothing() {
    let pair = vec![at(-30.0, 0.0), at(30.0, 0.0)];
    let input = FastenerGroupLimitInput { force_y_n: -100.0, load_x_mm: 60.0, ..group(pair, 100.0) };
    let found = fastener_group_limit(&input).unwrap();
    assert!((found.load_factor - 1_000.0 / 150.0).abs() < 1e-6);
    assert!((found.gain - 1.0).abs() < 1e-6);
    assert_eq!(found.most_slipped, 1);
    assert!((found.shares[0].force_y_n - 1_000.0 / 3.0).abs() < 1e-3, "{:?}", found.shares);
}

// All four at one distance from the centre: 4 R r, and the turn is about the middle.
#[test]
fn a_square_under_a_moment_turns_about_its_middle() {
    let square = vec![at(0.0, 0.0), at(80.0, 0.0), at(80.0, 80.0), at(0.0, 80.0)];
    let input = FastenerGroupLimitInput { moment_nmm: 1_000.0, ..group(square, 100.0) };
    let found = fastener_group_limit(&input).unwrap();
    assert!((found.load_factor - 4.0 * 40.0 * 2.0_f64.sqrt()).abs() < 1e-4);
    assert!((found.centre_x_mm.unwrap() - 40.0).abs() < 1e-6 && (found.centre_y_mm.unwrap() - 40.0).abs() < 1e-6);
    assert_eq!(found.effective_count, 0.0);
}

#[test]
fn what_makes_no_sense_is_refused() {
    let refused = |input: &FastenerGroupLimitInput| {
        let error = fastener_group_limit(input).expect_err("refused");
        (error.details()[0].code, error.details()[0].path.clone())
    };
    let lone = group(vec![at(0.0, 0.0)], 10.0);
    assert_eq!(refused(&lone), (ErrorCode::Inconsistent, "force_y_n".to_owned()));
    let turned = FastenerGroupLimitInput { moment_nmm: 5.0, ..lone.clone() };
    assert_eq!(refused(&turned), (ErrorCode::Inconsistent, "positions".to_owned()));
    assert_eq!(refused(&group(Vec::new(), 10.0)), (ErrorCode::MissingField, "positions".to_owned()));
    let nowhere = FastenerGroupLimitInput { force_y_n: 1.0, ..group(vec![at(f64::NAN, 0.0)], 10.0) };
    assert_eq!(refused(&nowhere), (ErrorCode::NotFinite, "positions[0].x_mm".to_owned()));
}

fn any_positions() -> impl Strategy<Value = Vec<FastenerPosition>> {
    prop::collection::vec((-200.0..200.0_f64, -200.0..200.0_f64).prop_map(|(x, y)| at(x, y)), 2..9)
}

proptest! {
    #[test]
    fn it_balances_the_load_and_lies_between_elastic_and_all_at_capacity(
        positions in any_positions(), fx in -500.0..500.0_f64, fy in -500.0..500.0_f64,
        lx in -400.0..400.0_f64, ly in -400.0..400.0_f64, slip in 0.05..60.0_f64,
    ) {
        prop_assume!(fx.abs() + fy.abs() > 1.0);
        let input = FastenerGroupLimitInput {
            force_x_n: fx, force_y_n: fy, load_x_mm: lx, load_y_mm: ly, ..group(positions.clone(), slip)
        };
        let found = fastener_group_limit(&input).unwrap();
        let sum = |value: fn(&FastenerLimitShare) -> f64| found.shares.iter().map(value).sum::<f64>();
        let factor = found.load_factor;
        let total = sum(|share| share.lateral_n);
        prop_assert!((sum(|share| share.force_x_n) - factor * fx).abs() < 1e-6 * total);
        prop_assert!((sum(|share| share.force_y_n) - factor * fy).abs() < 1e-6 * total);
        let moment = sum(|share| share.x_mm * share.force_y_n - share.y_mm * share.force_x_n);
        prop_assert!((moment - factor * (fy * lx - fx * ly)).abs() < 1e-6 * total * 400.0);
        prop_assert!(found.shares.iter().all(|share| share.lateral_n <= 1_000.0 * (1.0 + 1e-12)));
        let most = found.shares.iter().map(|share| share.slip_mm).fold(0.0, f64::max);
        prop_assert!((most / slip.min(10.0) - 1.0).abs() < 1e-4, "{most} mm of {slip} mm");
        // The elastic method with the capacity is reached wherever the law has room to flatten.
        if slip >= 10.0 {
            prop_assert!(found.gain >= 1.0 - 1e-6, "{}", found.gain);
        }
        prop_assert!(found.effective_count <= positions.len() as f64 * (1.0 + 1e-9));
    }

    // Upper bound theorem: work of the capacities over work of the load, for any centre of rotation.
    #[test]
    fn no_mechanism_gives_less(
        positions in any_positions(), fy in 10.0..500.0_f64, lx in -400.0..400.0_f64,
        centres in prop::collection::vec((-600.0..600.0_f64, -600.0..600.0_f64), 40),
    ) {
        let input = FastenerGroupLimitInput { force_y_n: fy, load_x_mm: lx, ..group(positions.clone(), 100.0) };
        let factor = fastener_group_limit(&input).unwrap().load_factor;
        for (cx, cy) in centres {
            let resisted: f64 = positions.iter().map(|at| 1_000.0 * norm((at.x_mm - cx, at.y_mm - cy))).sum();
            let done = (fy * (lx - cx)).abs();
            prop_assert!(factor * done <= resisted * (1.0 + 1e-6));
        }
    }

    #[test]
    fn small_slips_are_those_of_the_elastic_method(
        positions in any_positions(), fx in -500.0..500.0_f64, fy in -500.0..500.0_f64, lx in -400.0..400.0_f64,
    ) {
        prop_assume!(fx.abs() + fy.abs() > 1.0);
        let input = FastenerGroupLimitInput {
            force_x_n: fx, force_y_n: fy, load_x_mm: lx, ultimate_slip_mm: 0.01,
            capacity_n: 1e6, slip_modulus_n_per_mm: 100.0, ..group(positions.clone(), 1.0)
        };
        let found = fastener_group_limit(&input).unwrap();
        let elastic = fastener_group(&FastenerGroupInput {
            positions, force_x_n: fx, force_y_n: fy, load_x_mm: lx, load_y_mm: 0.0, moment_nmm: 0.0, pull_n: 0.0,
            tipping_nmm: 0.0, lower_edge_y_mm: None,
        }).unwrap();
        prop_assert!((found.load_factor * elastic.most_lateral_n - 1.0).abs() < 1e-4, "{}", found.load_factor);
        prop_assert!((found.elastic_load_factor * elastic.most_lateral_n / 1e6 - 1.0).abs() < 1e-9);
    }

    #[test]
    fn hostile_groups_are_answered_or_refused(
        bits in prop::collection::vec((any::<u64>(), any::<u64>()), 0..5), wild in prop::array::uniform8(any::<u64>()), which in any::<u8>(),
    ) {
        let pick = |k: usize, fair: f64| if which >> k & 1 == 1 { f64::from_bits(wild[k]) } else { fair };
        let tame = |bits: u64| if bits.is_multiple_of(4) { f64::from_bits(bits) } else { (bits % 1_000) as f64 };
        let input = FastenerGroupLimitInput {
            positions: bits.iter().map(|(x, y)| at(tame(*x), tame(*y))).collect(),
            capacity_n: pick(0, 1e7), slip_modulus_n_per_mm: pick(1, 1.0), ultimate_slip_mm: pick(2, 0.01),
            force_x_n: pick(3, 1e7), force_y_n: pick(4, 5e-324), load_x_mm: pick(5, -1e5), load_y_mm: pick(6, 1e5),
            moment_nmm: pick(7, 0.0),
        };
        if let Ok(found) = fastener_group_limit(&input) {
            let numbers = [found.load_factor, found.utilisation, found.gain, found.elastic_load_factor, found.effective_count];
            prop_assert!(numbers.into_iter().all(f64::is_finite), "{found:?} of {input:?}");
            prop_assert!(found.centre_x_mm.is_none_or(f64::is_finite) && found.centre_y_mm.is_none_or(f64::is_finite));
        }
    }
}
