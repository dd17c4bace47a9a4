use proptest::prelude::*;

use super::*;

fn at(x_mm: f64, y_mm: f64) -> FastenerPosition {
    FastenerPosition { x_mm, y_mm }
}

fn group(positions: Vec<FastenerPosition>) -> FastenerGroupInput {
    FastenerGroupInput {
        positions,
        force_x_n: 0.0,
        force_y_n: 0.0,
        load_x_mm: 0.0,
        load_y_mm: 0.0,
        moment_nmm: 0.0,
        pull_n: 0.0,
        tipping_nmm: 0.0,
        lower_edge_y_mm: None,
    }
}

#[test]
fn a_load_through_the_middle_is_shared_evenly() {
    let input =
        FastenerGroupInput { force_x_n: 300.0, force_y_n: -400.0, ..group(vec![at(0.0, -50.0), at(0.0, 50.0)]) };
    let found = fastener_group(&input).unwrap();
    for share in &found.shares {
        assert_eq!((share.force_x_n, share.force_y_n, share.lateral_n), (150.0, -200.0, 250.0));
    }
    assert_eq!((found.eccentricity_factor, found.contact), (1.0, StripContact::Unloaded));
}

// Bhandari Example 7.5 (seen): 25 kN, 100 mm from the wall, rows at 25 mm and 150 mm above the edge, two bolts each:
// 8108 N in each upper bolt.
#[test]
fn a_tipping_bracket_pries_on_its_edge() {
    let positions = vec![at(0.0, 25.0), at(50.0, 25.0), at(0.0, 150.0), at(50.0, 150.0)];
    let input = FastenerGroupInput {
        force_y_n: -25_000.0,
        load_x_mm: 25.0,
        tipping_nmm: 2.5e6,
        lower_edge_y_mm: Some(0.0),
        ..group(positions)
    };
    let found = fastener_group(&input).unwrap();
    assert!((found.most_pull_n - 8108.108).abs() < 0.001);
    assert_eq!(found.contact, StripContact::EdgePresses);
    assert!((found.shares[0].lateral_n - 6250.0).abs() < 1e-9);
}

#[test]
fn a_strip_pulled_through_its_middle_lifts_off() {
    let positions = vec![at(0.0, 25.0), at(0.0, 75.0)];
    let input = FastenerGroupInput { pull_n: 100.0, load_y_mm: 50.0, lower_edge_y_mm: Some(0.0), ..group(positions) };
    let found = fastener_group(&input).unwrap();
    assert_eq!(found.contact, StripContact::LiftsOff);
    assert_eq!((found.shares[0].pull_n, found.shares[1].pull_n, found.prying_n), (50.0, 50.0, 0.0));
}

#[test]
fn what_cannot_stand_is_refused() {
    let code = |input: FastenerGroupInput| {
        let error = fastener_group(&input).expect_err("refused");
        (error.code(), error.field().to_owned())
    };
    assert_eq!(code(group(vec![])), (ErrorCode::MissingField, "positions".to_owned()));
    let alone = FastenerGroupInput { moment_nmm: 1.0, ..group(vec![at(5.0, 5.0)]) };
    assert_eq!(code(alone), (ErrorCode::Inconsistent, "positions".to_owned()));
    let edge = FastenerGroupInput { pull_n: 1.0, ..group(vec![at(5.0, 5.0)]) };
    assert_eq!(code(edge.clone()), (ErrorCode::MissingField, "lower_edge_y_mm".to_owned()));
    let low = FastenerGroupInput { lower_edge_y_mm: Some(5.0), ..edge.clone() };
    assert_eq!(code(low), (ErrorCode::Inconsistent, "positions[0].y_mm".to_owned()));
    let below = FastenerGroupInput { lower_edge_y_mm: Some(0.0), load_y_mm: 2.0, ..edge };
    assert_eq!(code(below), (ErrorCode::Inconsistent, "load_y_mm".to_owned()));
    let wild = FastenerGroupInput { force_x_n: f64::NAN, ..group(vec![at(f64::INFINITY, 0.0)]) };
    assert_eq!(fastener_group(&wild).expect_err("refused").details().len(), 2);
}

fn any_group() -> impl Strategy<Value = FastenerGroupInput> {
    (
        prop::collection::vec((-500.0..500.0_f64, 5.0..500.0_f64), 2..12),
        prop::array::uniform4(-5e3..5e3_f64),
        -1e6..1e6_f64,
        0.0..5e3_f64,
        0.0..1e6_f64,
    )
        .prop_map(|(places, [force_x_n, force_y_n, load_x_mm, load_y_mm], moment_nmm, pull_n, tipping_nmm)| {
            FastenerGroupInput {
                positions: places.into_iter().map(|(x, y)| at(x, y)).collect(),
                force_x_n,
                force_y_n,
                load_x_mm,
                load_y_mm: load_y_mm.abs() * 0.1,
                moment_nmm,
                pull_n,
                tipping_nmm,
                lower_edge_y_mm: Some(0.0),
            }
        })
}

proptest! {
    #[test]
    fn the_shares_are_in_equilibrium_with_the_load(input in any_group()) {
        let found = fastener_group(&input).unwrap();
        let sum = |value: &dyn Fn(&FastenerShare) -> f64| found.shares.iter().map(value).sum::<f64>();
        let size = 1.0 + found.shares.iter().map(|share| share.lateral_n + share.pull_n.abs()).sum::<f64>();
        prop_assert!((sum(&|s| s.force_x_n) - input.force_x_n).abs() < 1e-9 * size);
        prop_assert!((sum(&|s| s.force_y_n) - input.force_y_n).abs() < 1e-9 * size);
        let moment = sum(&|s| s.x_mm * s.force_y_n - s.y_mm * s.force_x_n);
        let wanted = input.moment_nmm + input.load_x_mm * input.force_y_n - input.load_y_mm * input.force_x_n;
        prop_assert!((moment - wanted).abs() < 1e-9 * size * 1e4);
        // Away from the wall: forces, and moments about the lower edge.
        prop_assert!((sum(&|s| s.pull_n) - found.prying_n - input.pull_n).abs() < 1e-9 * size);
        let tipping = input.tipping_nmm + input.pull_n * input.load_y_mm;
        prop_assert!((sum(&|s| s.pull_n * s.y_mm) - tipping).abs() < 1e-9 * size * 1e3);
        prop_assert!(found.prying_n >= 0.0);
    }

    // Moving or turning everything together changes no resultant.
    #[test]
    fn the_place_and_the_turn_of_the_whole_do_not_matter(input in any_group(), dx in -100.0..100.0_f64, dy in -100.0..100.0_f64) {
        let flat = FastenerGroupInput { pull_n: 0.0, tipping_nmm: 0.0, lower_edge_y_mm: None, ..input };
        let turned = FastenerGroupInput {
            positions: flat.positions.iter().map(|p| at(dx - p.y_mm, dy + p.x_mm)).collect(),
            force_x_n: -flat.force_y_n,
            force_y_n: flat.force_x_n,
            load_x_mm: dx - flat.load_y_mm,
            load_y_mm: dy + flat.load_x_mm,
            ..flat.clone()
        };
        let (one, other) = (fastener_group(&flat).unwrap(), fastener_group(&turned).unwrap());
        for (a, b) in one.shares.iter().zip(&other.shares) {
            prop_assert!((a.lateral_n - b.lateral_n).abs() < 1e-8 * (1.0 + one.most_lateral_n));
        }
    }

    #[test]
    fn hostile_numbers_give_an_error_or_finite_results(bits in prop::collection::vec(any::<u64>(), 12), which in any::<u16>()) {
        let number = |k: usize, fair: f64| if which >> k & 1 == 0 { f64::from_bits(bits[k]) } else { fair };
        let input = FastenerGroupInput {
            positions: vec![at(number(0, 0.0), number(1, 1.0)), at(number(2, 0.0), number(3, 1.0 + 2e-3))],
            force_x_n: number(4, 1e7),
            force_y_n: number(5, -1e7),
            load_x_mm: number(6, 1e5),
            load_y_mm: number(7, -1e5),
            moment_nmm: number(8, 1e12),
            pull_n: number(9, 1e7),
            tipping_nmm: number(10, 1e12),
            lower_edge_y_mm: Some(number(11, 0.0)),
        };
        if let Ok(found) = fastener_group(&input) {
            for share in &found.shares {
                prop_assert!(share.lateral_n.is_finite() && share.pull_n.is_finite() && share.direction_deg.is_finite());
            }
            prop_assert!(found.eccentricity_factor.is_finite() && found.prying_n.is_finite());
        }
    }
}
