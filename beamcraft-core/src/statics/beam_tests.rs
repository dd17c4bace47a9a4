use super::*;
use crate::statics::test_inputs::hostile;
use proptest::prelude::*;

fn pinned(at_mm: f64) -> BeamSupport {
    BeamSupport { at_mm, stiffness_n_per_mm: None, hold: SupportHold::Pinned }
}

fn beam(length_mm: f64, supports: Vec<BeamSupport>) -> BeamOnSupportsInput {
    BeamOnSupportsInput {
        length_mm,
        modulus_mpa: 10_000.0,
        second_moment_mm4: 1.0e6,
        supports,
        point_loads: vec![],
        line_loads: vec![],
        stations_mm: vec![],
    }
}

#[test]
fn equal_spans_under_an_even_load_share_as_every_table_says() {
    // AISC Manual Table 3-22: three supports 0.375, 1.25, 0.375 w l; moment over the middle w l²/8.
    let mut input = beam(2000.0, vec![pinned(0.0), pinned(1000.0), pinned(2000.0)]);
    input.line_loads = vec![BeamLineLoad { from_mm: 0.0, to_mm: 2000.0, load_n_per_mm: 1.0 }];
    let solved = beam_on_supports(&input).unwrap();
    let shares: Vec<_> = solved.reactions.iter().map(|one| one.reaction_n).collect();
    for (share, table) in shares.iter().zip([375.0, 1250.0, 375.0]) {
        assert!((share - table).abs() < 1e-9, "{shares:?}");
    }
    assert!((solved.greatest_hogging_nmm - 125_000.0).abs() < 1e-6 && solved.greatest_hogging_at_mm == 1000.0);
    // 9/128 w l² at 3/8 of the span.
    assert!((solved.greatest_sagging_nmm - 70_312.5).abs() < 1e-6);
    // 0.0054 w l⁴ / (E I) in the tables, 0.005416 to more figures.
    assert!((solved.greatest_deflection_mm - 0.541_611_2).abs() < 1e-5, "{}", solved.greatest_deflection_mm);
}

#[test]
fn springs_between_nothing_and_rigid_run_from_equal_shares_to_the_table() {
    let share = |stiffness: f64| {
        let spring = |at_mm| BeamSupport { stiffness_n_per_mm: Some(stiffness), ..pinned(at_mm) };
        let mut input = beam(2000.0, vec![spring(0.0), spring(1000.0), spring(2000.0)]);
        input.line_loads = vec![BeamLineLoad { from_mm: 0.0, to_mm: 2000.0, load_n_per_mm: 1.0 }];
        beam_on_supports(&input).unwrap().reactions[1].reaction_n
    };
    assert!((share(0.1) - 2000.0 / 3.0).abs() < 2.0 && (share(1.0e9) - 1250.0).abs() < 0.1);
    assert!(share(10.0) < share(100.0) && share(100.0) < share(1000.0));
}

#[test]
fn clamps_and_overhangs_follow_the_closed_formulas() {
    let clamp = |at_mm| BeamSupport { hold: SupportHold::Clamped, ..pinned(at_mm) };
    let mut fixed = beam(1000.0, vec![clamp(0.0), clamp(1000.0)]);
    fixed.line_loads = vec![BeamLineLoad { from_mm: 0.0, to_mm: 1000.0, load_n_per_mm: 2.0 }];
    let solved = beam_on_supports(&fixed).unwrap();
    // w l²/12 at the clamps, w l⁴/(384 E I) in the middle.
    assert!((solved.greatest_hogging_nmm - 2.0e6 / 12.0).abs() < 1e-6);
    assert!((solved.greatest_deflection_mm - 2.0e12 / (384.0 * 1.0e10)).abs() < 1e-9);
    assert!((solved.reactions[0].moment_nmm + 2.0e6 / 12.0).abs() < 1e-6);
    let mut cantilever = beam(1000.0, vec![clamp(0.0)]);
    cantilever.point_loads = vec![BeamPointLoad { at_mm: 1000.0, load_n: 3.0 }];
    let solved = beam_on_supports(&cantilever).unwrap();
    assert!((solved.greatest_deflection_mm - 3.0e9 / (3.0 * 1.0e10)).abs() < 1e-12);
    // A load on the overhang lifts the far support: P a/l.
    let mut over = beam(1500.0, vec![pinned(0.0), pinned(1000.0)]);
    over.point_loads = vec![BeamPointLoad { at_mm: 1500.0, load_n: 100.0 }];
    let solved = beam_on_supports(&over).unwrap();
    assert!((solved.reactions[0].reaction_n + 50.0).abs() < 1e-12 && solved.lifted_count == 1);
    // P a² (l + a)/(3 E I) at the tip.
    assert!((solved.greatest_deflection_mm - 100.0 * 250_000.0 * 1500.0 / 3.0e10).abs() < 1e-9);
}

#[test]
fn a_beam_that_nothing_holds_is_refused_with_the_place() {
    assert_eq!(beam_on_supports(&beam(100.0, vec![])).unwrap_err().code(), ErrorCode::Unstable);
    assert_eq!(beam_on_supports(&beam(100.0, vec![pinned(5.0)])).unwrap_err().code(), ErrorCode::Unstable);
    let twice = beam(100.0, vec![pinned(5.0), pinned(5.5)]);
    assert_eq!(beam_on_supports(&twice).unwrap_err().code(), ErrorCode::Inconsistent);
    let mut beyond = beam(100.0, vec![pinned(0.0), pinned(100.0)]);
    beyond.point_loads = vec![BeamPointLoad { at_mm: 101.0, load_n: 1.0 }];
    assert_eq!(beam_on_supports(&beyond).unwrap_err().field(), "point_loads[0].at_mm");
}

fn any_beam() -> impl Strategy<Value = BeamOnSupportsInput> {
    let support = (0.0..3000.0_f64, proptest::option::of(1.0..1.0e6_f64));
    let point = (0.0..3000.0_f64, -1000.0..1000.0_f64);
    let line = (0.0..3000.0_f64, 0.0..3000.0_f64, -5.0..5.0_f64);
    (
        proptest::collection::vec(support, 2..7),
        proptest::collection::vec(point, 0..4),
        proptest::collection::vec(line, 0..4),
        1.0e3..1.0e9_f64,
    )
        .prop_map(|(supports, points, lines, second_moment_mm4)| {
            let mut input = beam(3000.0, vec![]);
            input.second_moment_mm4 = second_moment_mm4;
            for (at_mm, stiffness_n_per_mm) in supports {
                if input.supports.iter().all(|one| (one.at_mm - at_mm).abs() >= 1.0) {
                    input.supports.push(BeamSupport { stiffness_n_per_mm, ..pinned(at_mm) });
                }
            }
            input.point_loads = points.into_iter().map(|(at_mm, load_n)| BeamPointLoad { at_mm, load_n }).collect();
            input.line_loads = lines
                .into_iter()
                .map(|(a, b, load_n_per_mm)| BeamLineLoad { from_mm: a.min(b), to_mm: a.max(b), load_n_per_mm })
                .collect();
            input
        })
}

proptest! {
    #[test]
    fn forces_and_moments_close(input in any_beam()) {
        prop_assume!(input.supports.len() >= 2);
        let solved = beam_on_supports(&input).unwrap();
        let sizes = solved.reactions.iter().map(|one| one.reaction_n.abs()).sum::<f64>()
            + input.point_loads.iter().map(|one| one.load_n.abs()).sum::<f64>()
            + input.line_loads.iter().map(|one| (one.load_n_per_mm * (one.to_mm - one.from_mm)).abs()).sum::<f64>();
        let force: f64 = solved.reactions.iter().map(|one| one.reaction_n).sum();
        prop_assert!((force - solved.load_n).abs() <= 1e-9 * sizes);
        let turning: f64 = solved.reactions.iter().map(|one| one.reaction_n * one.at_mm).sum();
        let loads: f64 = input.point_loads.iter().map(|one| one.load_n * one.at_mm).sum::<f64>()
            + input
                .line_loads
                .iter()
                .map(|one| one.load_n_per_mm * (one.to_mm - one.from_mm) * 0.5 * (one.from_mm + one.to_mm))
                .sum::<f64>();
        prop_assert!((turning - loads).abs() <= 1e-9 * sizes * 3000.0);
    }

    #[test]
    fn the_beam_is_where_its_supports_are(input in any_beam()) {
        prop_assume!(input.supports.len() >= 2);
        let mut input = input;
        input.stations_mm = input.supports.iter().map(|one| one.at_mm).collect();
        input.stations_mm.sort_by(f64::total_cmp);
        let solved = beam_on_supports(&input).unwrap();
        let scale = 1e-9 * (1.0 + solved.greatest_deflection_mm.abs());
        for (station, reaction) in solved.stations.iter().zip(&solved.reactions) {
            prop_assert!((station.deflection_mm - reaction.settlement_mm).abs() <= scale);
        }
    }

    #[test]
    fn a_mirrored_beam_has_mirrored_reactions(input in any_beam()) {
        prop_assume!(input.supports.len() >= 2);
        let mut mirror = input.clone();
        mirror.supports.iter_mut().for_each(|one| one.at_mm = 3000.0 - one.at_mm);
        mirror.point_loads.iter_mut().for_each(|one| one.at_mm = 3000.0 - one.at_mm);
        mirror.line_loads.iter_mut().for_each(|one| (one.from_mm, one.to_mm) = (3000.0 - one.to_mm, 3000.0 - one.from_mm));
        prop_assume!(mirror.supports.iter().enumerate().all(|(k, a)| {
            mirror.supports.iter().skip(k + 1).all(|b| (a.at_mm - b.at_mm).abs() >= 1.0)
        }));
        let (there, back) = (beam_on_supports(&input).unwrap(), beam_on_supports(&mirror).unwrap());
        let scale = 1e-6 * (1.0 + there.reactions.iter().map(|one| one.reaction_n.abs()).sum::<f64>());
        for (a, b) in there.reactions.iter().zip(back.reactions.iter().rev()) {
            prop_assert!((a.reaction_n - b.reaction_n).abs() <= scale);
        }
    }

    #[test]
    fn hostile_numbers_are_refused_or_give_finite_results(
        length in hostile(), modulus in hostile(), second in hostile(), stiffness in proptest::option::of(hostile()),
        at in proptest::collection::vec(hostile(), 0..4), loads in proptest::collection::vec((hostile(), hostile(), hostile()), 0..3),
    ) {
        let mut input = beam(length, at.iter().map(|at| BeamSupport { stiffness_n_per_mm: stiffness, ..pinned(*at) }).collect());
        (input.modulus_mpa, input.second_moment_mm4) = (modulus, second);
        input.point_loads = loads.iter().map(|one| BeamPointLoad { at_mm: one.0, load_n: one.1 }).collect();
        input.line_loads =
            loads.iter().map(|one| BeamLineLoad { from_mm: one.0, to_mm: one.1, load_n_per_mm: one.2 }).collect();
        if let Ok(solved) = beam_on_supports(&input) {
            prop_assert!(solved.reactions.iter().all(|one| one.reaction_n.is_finite() && one.settlement_mm.is_finite()));
            prop_assert!(solved.greatest_deflection_mm.is_finite() && solved.greatest_shear_n.is_finite());
            prop_assert!(solved.greatest_sagging_nmm.is_finite() && solved.greatest_hogging_nmm.is_finite());
        }
    }
}
