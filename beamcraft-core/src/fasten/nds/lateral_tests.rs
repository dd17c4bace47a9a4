use proptest::prelude::*;

use super::*;

const N_PER_LBF: f64 = 4.448_221_615_260_5;
const MPA_PER_PSI: f64 = N_PER_LBF / (25.4 * 25.4);

/// A joint in inches and psi.
fn joint(
    diameter_in: f64,
    bending_psi: f64,
    (main_psi, main_in): (f64, f64),
    (side_psi, side_in): (f64, f64),
    gap_in: f64,
) -> DowelShearInput {
    DowelShearInput {
        yield_diameter_mm: diameter_in * 25.4,
        nominal_diameter_mm: None,
        bending_yield_mpa: bending_psi * MPA_PER_PSI,
        main_bearing_mpa: main_psi * MPA_PER_PSI,
        side_bearing_mpa: side_psi * MPA_PER_PSI,
        main_length_mm: main_in * 25.4,
        side_length_mm: side_in * 25.4,
        gap_mm: gap_in * 25.4,
        max_angle_to_grain_deg: 0.0,
    }
}

fn yields(found: &DowelShear) -> [f64; 6] {
    [found.im_yield_n, found.is_yield_n, found.ii_yield_n, found.iiim_yield_n, found.iiis_yield_n, found.iv_yield_n]
}

fn collapse_n(input: &DowelShearInput) -> f64 {
    yields(&dowel_shear(input).expect("allowed")).into_iter().fold(f64::INFINITY, f64::min)
}

/// NDS Table 12.3.1A, the closed forms of the standard for members that touch, before reduction.
fn standard_forms(input: &DowelShearInput) -> [f64; 6] {
    let (d, fyb) = (input.yield_diameter_mm, input.bending_yield_mpa);
    let (fem, fes, lm, ls) =
        (input.main_bearing_mpa, input.side_bearing_mpa, input.main_length_mm, input.side_length_mm);
    let (re, rt) = (fem / fes, lm / ls);
    let k1 =
        ((re + 2.0 * re * re * (1.0 + rt + rt * rt) + rt * rt * re * re * re).sqrt() - re * (1.0 + rt)) / (1.0 + re);
    let k2 = -1.0 + (2.0 * (1.0 + re) + 2.0 * fyb * (1.0 + 2.0 * re) * d * d / (3.0 * fem * lm * lm)).sqrt();
    let k3 = -1.0 + (2.0 * (1.0 + re) / re + 2.0 * fyb * (2.0 + re) * d * d / (3.0 * fem * ls * ls)).sqrt();
    [
        d * lm * fem,
        d * ls * fes,
        k1 * d * ls * fes,
        k2 * d * lm * fem / (1.0 + 2.0 * re),
        k3 * d * ls * fem / (2.0 + re),
        d * d * (2.0 * fem * fyb / (3.0 * (1.0 + re))).sqrt(),
    ]
}

// AWC TR12, Example 3.1 (seen): a half-inch bolt, both members 1 1/2 in, side member across the grain, gap 1/2 in.
#[test]
fn the_published_example_with_a_gap_comes_out_in_every_mode() {
    let mut bolt = joint(0.5, 45_000.0, (4_800.0, 1.5), (2_550.0, 1.5), 0.5);
    bolt.max_angle_to_grain_deg = 90.0;
    let found = dowel_shear(&bolt).unwrap();
    let printed_lbf = [720.0, 383.0, 202.0, 307.0, 250.0, 350.0];
    let modes = [found.im_n, found.is_n, found.ii_n, found.iiim_n, found.iiis_n, found.iv_n];
    for (mode_n, lbf) in modes.into_iter().zip(printed_lbf) {
        // Printed to whole pounds.
        assert!((mode_n / N_PER_LBF - lbf).abs() < 0.51, "{mode_n} N against {lbf} lbf");
    }
    assert_eq!(found.governing_mode, YieldMode::Ii);
    assert_eq!((found.k_theta, found.reduction_ii), (1.25, 4.5));
}

// NDS 2018 Table 12.3.1B.
#[test]
fn the_reduction_term_follows_the_table() {
    let rd = |yield_in: f64, nominal_in: f64, angle_deg: f64| {
        let mut input = joint(yield_in, 90_000.0, (4_650.0, 2.0), (4_650.0, 1.0), 0.0);
        input.nominal_diameter_mm = Some(nominal_in * 25.4);
        input.max_angle_to_grain_deg = angle_deg;
        let found = dowel_shear(&input).unwrap();
        (found.reduction_rule, found.reduction_i, found.reduction_ii, found.reduction_iii_iv)
    };
    let close = |value: f64, wanted: f64| (value - wanted).abs() < 1e-12;
    let (rule, i, ii, iii) = rd(0.152, 0.19, 90.0);
    assert_eq!(rule, ReductionRule::BelowQuarterInch);
    assert!(close(i, 2.2) && close(ii, 2.2) && close(iii, 2.2));
    // 0.196 in: 10 × 0.196 + 0.5; no K_θ below a quarter inch nominal.
    let (rule, i, ..) = rd(0.196, 0.242, 90.0);
    assert!(rule == ReductionRule::BelowQuarterInch && close(i, 2.46));
    // The quarter-inch lag screw, root 0.173 in: K_D K_θ.
    let (rule, i, ..) = rd(0.173, 0.25, 90.0);
    assert!(rule == ReductionRule::SmallRootOfLargeThread && close(i, 2.23 * 1.25));
    let (rule, i, ii, iii) = rd(0.25, 0.25, 45.0);
    assert_eq!(rule, ReductionRule::QuarterInchAndMore);
    assert!(close(i, 4.0 * 1.125) && close(ii, 3.6 * 1.125) && close(iii, 3.2 * 1.125));
}

#[test]
fn a_yield_diameter_above_the_nominal_one_is_refused() {
    let mut input = joint(0.19, 90_000.0, (4_650.0, 2.0), (4_650.0, 1.0), 0.0);
    input.nominal_diameter_mm = Some(4.0);
    let fault = dowel_shear(&input).expect_err("refused");
    assert_eq!((fault.code, fault.field), (ErrorCode::Inconsistent, "yield_diameter_mm"));
}

// A wide gap makes B² dwarf 4AC; the plain root would lose every digit. Exact limit: P g = 2 M for mode IV.
#[test]
fn a_wide_gap_loses_no_digits() {
    let mut input = joint(0.05, 45_000.0, (80_000.0, 1.0), (80_000.0, 1.0), 0.0);
    input.gap_mm = 500.0;
    let found = dowel_shear(&input).unwrap();
    let hinge_nmm =
        input.bending_yield_mpa * input.yield_diameter_mm * input.yield_diameter_mm * input.yield_diameter_mm / 6.0;
    let limit_n = 2.0 * hinge_nmm / 500.0;
    // The hinges lie P/q inside the wood, here a few millionths of the gap.
    let q = input.main_bearing_mpa * input.yield_diameter_mm;
    let exact_n = 2.0 * hinge_nmm / (500.0 + found.iv_yield_n / q);
    assert!((found.iv_yield_n / exact_n - 1.0).abs() < 1e-12);
    assert!((found.iv_yield_n / limit_n - 1.0).abs() < 1e-3);
}

/// An independent limit analysis: the greatest load in equilibrium with no strength exceeded (static theorem).
///
/// One member is cut into slices. Walking from the dowel's free end to the face, each slice adds a pressure of −q, 0 or
/// +q; the walk keeps, for every shear, the least bending moment that can be reached without passing ±M. It knows no
/// modes, no hinges and no closed form. Gives the least moment at the face for every shear from 0 to q l, in steps of
/// q l / slices; infinite where none is in equilibrium.
fn least_face_moments(q: f64, length_mm: f64, hinge_nmm: f64, slices: usize) -> Vec<f64> {
    let slice_mm = length_mm / slices as f64;
    let step_n = q * slice_mm;
    let states = 2 * slices + 1;
    let shear_n = |state: usize| (state as f64 - slices as f64) * step_n;
    let mut least = vec![f64::INFINITY; states];
    least[slices] = 0.0;
    for _ in 0..slices {
        let mut next = vec![f64::INFINITY; states];
        for (state, moment_nmm) in least.iter().enumerate().filter(|(_, moment)| moment.is_finite()) {
            for choice in [-1.0, 0.0, 1.0] {
                let target = (state as f64 + choice) as usize;
                if state as f64 + choice < 0.0 || target >= states {
                    continue;
                }
                let moved = moment_nmm + shear_n(state) * slice_mm + 0.5 * choice * q * slice_mm * slice_mm;
                // What is reachable between the least and the greatest moment is reachable too (the set is convex),
                // so a moment below −M can be brought up to it; one above +M cannot be brought down.
                if moved <= hinge_nmm {
                    next[target] = next[target].min(moved.max(-hinge_nmm));
                }
            }
        }
        least = next;
    }
    least.split_off(slices)
}

/// The greatest load whose moments in both members and the gap are in equilibrium: P g + A_s(P) + A_m(P) ≤ 0.
fn collapse_by_limit_analysis_n(input: &DowelShearInput, slices: usize) -> f64 {
    let diameter_mm = input.yield_diameter_mm;
    let hinge_nmm = input.bending_yield_mpa * diameter_mm * diameter_mm * diameter_mm / 6.0;
    let (main_q, side_q) = (input.main_bearing_mpa * diameter_mm, input.side_bearing_mpa * diameter_mm);
    let main = least_face_moments(main_q, input.main_length_mm, hinge_nmm, slices);
    let side = least_face_moments(side_q, input.side_length_mm, hinge_nmm, slices);
    let at = |moments: &[f64], most_n: f64, load_n: f64| {
        let position = (load_n / most_n * slices as f64).clamp(0.0, slices as f64);
        let below = (position as usize).min(slices - 1);
        let part = position - below as f64;
        if part == 0.0 { moments[below] } else { moments[below] * (1.0 - part) + moments[below + 1] * part }
    };
    let (main_most_n, side_most_n) = (main_q * input.main_length_mm, side_q * input.side_length_mm);
    let excess = |load_n: f64| load_n * input.gap_mm + at(&main, main_most_n, load_n) + at(&side, side_most_n, load_n);
    let (mut low_n, mut high_n) = (0.0, main_most_n.min(side_most_n));
    if excess(high_n) <= 0.0 {
        return high_n;
    }
    for _ in 0..60 {
        let middle_n = 0.5 * (low_n + high_n);
        if excess(middle_n) <= 0.0 { low_n = middle_n } else { high_n = middle_n }
    }
    low_n
}

fn any_joint() -> impl Strategy<Value = DowelShearInput> {
    (
        1.5..12.0_f64,
        200.0..900.0_f64,
        8.0..60.0_f64,
        8.0..60.0_f64,
        3.0..120.0_f64,
        3.0..120.0_f64,
        0.0..40.0_f64,
        0.0..90.0_f64,
    )
        .prop_map(|(diameter, bending, main, side, main_length, side_length, gap, angle)| DowelShearInput {
            yield_diameter_mm: diameter,
            nominal_diameter_mm: None,
            bending_yield_mpa: bending,
            main_bearing_mpa: main,
            side_bearing_mpa: side,
            main_length_mm: main_length,
            side_length_mm: side_length,
            gap_mm: gap,
            max_angle_to_grain_deg: angle,
        })
}

#[test]
fn the_limit_analysis_finds_every_mode() {
    // One joint for each mode, so that the comparison below is known to have met all of them.
    let cases = [
        (joint(0.5, 45_000.0, (5_000.0, 0.2), (5_000.0, 4.0), 0.0), YieldMode::Im),
        (joint(0.5, 45_000.0, (5_000.0, 4.0), (5_000.0, 0.2), 0.0), YieldMode::Is),
        (joint(0.5, 45_000.0, (4_800.0, 1.5), (4_800.0, 1.5), 0.25), YieldMode::Ii),
        (joint(0.3, 45_000.0, (4_800.0, 1.0), (4_800.0, 4.0), 0.1), YieldMode::Iiim),
        (joint(0.3, 45_000.0, (4_800.0, 4.0), (4_800.0, 1.0), 0.1), YieldMode::Iiis),
        (joint(0.2, 45_000.0, (4_800.0, 4.0), (4_800.0, 4.0), 0.5), YieldMode::Iv),
    ];
    for (input, mode) in cases {
        let found = dowel_shear(&input).unwrap();
        let least_n = collapse_n(&input);
        let named_n = match mode {
            YieldMode::Im => found.im_yield_n,
            YieldMode::Is => found.is_yield_n,
            YieldMode::Ii => found.ii_yield_n,
            YieldMode::Iiim => found.iiim_yield_n,
            YieldMode::Iiis => found.iiis_yield_n,
            YieldMode::Iv => found.iv_yield_n,
        };
        assert_eq!(named_n, least_n, "{mode:?}");
        let limit_n = collapse_by_limit_analysis_n(&input, 400);
        assert!((limit_n / least_n - 1.0).abs() < 0.005, "{mode:?}: {limit_n} N against {least_n} N");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    // 300 slices place a turning point or a hinge to within half a slice. The found load is in equilibrium, so it never
    // exceeds the collapse load; over 600 joints it came to within 0.3 % of it.
    #[test]
    fn the_modes_are_the_collapse_load_of_a_rigid_plastic_dowel(input in any_joint()) {
        let limit_n = collapse_by_limit_analysis_n(&input, 300);
        let modes_n = collapse_n(&input);
        let share = limit_n / modes_n;
        prop_assert!(share > 0.995 && share < 1.0 + 1e-9, "{limit_n} N against {modes_n} N for {input:?}");
    }
}

proptest! {
    #[test]
    fn without_a_gap_they_are_the_equations_of_the_standard(input in any_joint()) {
        let input = DowelShearInput { gap_mm: 0.0, ..input };
        let found = dowel_shear(&input).unwrap();
        for (ours_n, standard_n) in yields(&found).into_iter().zip(standard_forms(&input)) {
            // The standard's k₁ subtracts nearly equal numbers.
            prop_assert!((ours_n / standard_n - 1.0).abs() < 1e-9, "{ours_n} against {standard_n}");
        }
    }

    #[test]
    fn more_wood_or_steel_never_weakens_and_more_gap_never_strengthens(input in any_joint(), factor in 1.0..3.0_f64) {
        let before_n = dowel_shear(&input).unwrap().reference_n;
        let stronger = [
            DowelShearInput { main_length_mm: input.main_length_mm * factor, ..input },
            DowelShearInput { side_length_mm: input.side_length_mm * factor, ..input },
            DowelShearInput { main_bearing_mpa: input.main_bearing_mpa * factor, ..input },
            DowelShearInput { side_bearing_mpa: input.side_bearing_mpa * factor, ..input },
            DowelShearInput { bending_yield_mpa: input.bending_yield_mpa * factor.min(2.0), ..input },
        ];
        for better in stronger {
            prop_assert!(dowel_shear(&better).unwrap().reference_n >= before_n * (1.0 - 1e-12));
        }
        let wider = DowelShearInput { gap_mm: input.gap_mm * factor, ..input };
        let [_, _, before @ ..] = yields(&dowel_shear(&input).unwrap());
        let [_, _, after @ ..] = yields(&dowel_shear(&wider).unwrap());
        for (narrow_n, wide_n) in before.into_iter().zip(after) {
            prop_assert!(wide_n <= narrow_n * (1.0 + 1e-12));
            prop_assert!(wide_n < narrow_n || input.gap_mm * (factor - 1.0) < 1e-9);
        }
    }

    // Where the governing mode changes the capacity does not jump: every load is homogeneous of degree at most 2 in a
    // length, so a relative step of 1e-9 moves it by no more than a few 1e-9.
    #[test]
    fn the_capacity_is_continuous(input in any_joint()) {
        let before_n = dowel_shear(&input).unwrap().reference_n;
        let step = 1.0 + 1e-9;
        for moved in [
            DowelShearInput { main_length_mm: input.main_length_mm * step, ..input },
            DowelShearInput { side_length_mm: input.side_length_mm * step, ..input },
            DowelShearInput { gap_mm: input.gap_mm * step, ..input },
            DowelShearInput { main_bearing_mpa: input.main_bearing_mpa * step, ..input },
        ] {
            prop_assert!((dowel_shear(&moved).unwrap().reference_n / before_n - 1.0).abs() < 1e-8);
        }
    }

    #[test]
    fn turning_the_joint_round_swaps_its_modes(input in any_joint()) {
        let turned = DowelShearInput {
            main_bearing_mpa: input.side_bearing_mpa,
            side_bearing_mpa: input.main_bearing_mpa,
            main_length_mm: input.side_length_mm,
            side_length_mm: input.main_length_mm,
            ..input
        };
        let (one, other) = (dowel_shear(&input).unwrap(), dowel_shear(&turned).unwrap());
        prop_assert!((one.reference_n / other.reference_n - 1.0).abs() < 1e-12);
        prop_assert_eq!(one.im_n, other.is_n);
        prop_assert!((one.iiim_n / other.iiis_n - 1.0).abs() < 1e-12);
    }

    #[test]
    fn hostile_numbers_give_a_fault_or_finite_results(bits in prop::array::uniform9(any::<u64>()), edge in any::<u16>()) {
        let number = |index: usize, low: f64, high: f64| match (edge >> (index % 8)) & 0b11 {
            0 => f64::from_bits(bits[index]),
            1 => low,
            _ => high,
        };
        let input = DowelShearInput {
            yield_diameter_mm: number(0, 1.0, 25.4),
            nominal_diameter_mm: if bits[1] % 2 == 0 { None } else { Some(number(1, 1.0, 25.4)) },
            bending_yield_mpa: number(2, 0.01, 2_000.0),
            main_bearing_mpa: number(3, 0.01, 2_000.0),
            side_bearing_mpa: number(4, 0.01, 2_000.0),
            main_length_mm: number(5, 0.1, 1_000.0),
            side_length_mm: number(6, 0.1, 1_000.0),
            gap_mm: number(7, 0.0, 500.0),
            max_angle_to_grain_deg: number(8, 0.0, 90.0),
        };
        if let Ok(found) = dowel_shear(&input) {
            prop_assert!(yields(&found).into_iter().all(|load_n| load_n.is_finite() && load_n > 0.0));
            prop_assert!(found.reference_n.is_finite() && found.reference_n > 0.0);
        }
    }
}
