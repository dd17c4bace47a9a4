use proptest::prelude::*;

use super::super::lateral::dowel_shear;
use super::*;

fn any_joint() -> impl Strategy<Value = DowelDoubleShearInput> {
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
        .prop_map(|(diameter, bending, main, side, main_length, side_length, gap, angle)| DowelDoubleShearInput {
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

/// NDS Table 12.3.1A, right column: the closed forms of the standard, before reduction.
fn standard_forms(input: &DowelDoubleShearInput) -> [f64; 4] {
    let (d, fyb) = (input.yield_diameter_mm, input.bending_yield_mpa);
    let (fem, fes, lm, ls) =
        (input.main_bearing_mpa, input.side_bearing_mpa, input.main_length_mm, input.side_length_mm);
    let re = fem / fes;
    let k3 = -1.0 + (2.0 * (1.0 + re) / re + 2.0 * fyb * (2.0 + re) * d * d / (3.0 * fem * ls * ls)).sqrt();
    [
        d * lm * fem,
        2.0 * d * ls * fes,
        2.0 * k3 * d * ls * fem / (2.0 + re),
        2.0 * d * d * (2.0 * fem * fyb / (3.0 * (1.0 + re))).sqrt(),
    ]
}

proptest! {
    #[test]
    fn without_a_gap_they_are_the_equations_of_the_standard(input in any_joint()) {
        let input = DowelDoubleShearInput { gap_mm: 0.0, ..input };
        let found = dowel_double_shear(&input).unwrap();
        let ours = [found.im_yield_n, found.is_yield_n, found.iiis_yield_n, found.iv_yield_n];
        for (ours_n, standard_n) in ours.into_iter().zip(standard_forms(&input)) {
            prop_assert!((ours_n / standard_n - 1.0).abs() < 1e-12, "{ours_n} against {standard_n}");
        }
    }

    // Every mode of two planes carries at least as much as the like mode of one.
    #[test]
    fn two_planes_carry_at_least_what_one_does(input in any_joint()) {
        let double = dowel_double_shear(&input).unwrap();
        let single = dowel_shear(&DowelShearInput {
            yield_diameter_mm: input.yield_diameter_mm,
            nominal_diameter_mm: None,
            bending_yield_mpa: input.bending_yield_mpa,
            main_bearing_mpa: input.main_bearing_mpa,
            side_bearing_mpa: input.side_bearing_mpa,
            main_length_mm: input.main_length_mm,
            side_length_mm: input.side_length_mm,
            gap_mm: input.gap_mm,
            max_angle_to_grain_deg: input.max_angle_to_grain_deg,
        }).unwrap();
        prop_assert!(double.reference_n >= single.reference_n * (1.0 - 1e-12));
        let least = double.im_n.min(double.is_n).min(double.iiis_n).min(double.iv_n);
        prop_assert_eq!(double.reference_n, least);
        prop_assert_eq!(double.im_n, single.im_n);
    }

    #[test]
    fn more_wood_never_weakens(input in any_joint(), factor in 1.0..3.0_f64) {
        let before_n = dowel_double_shear(&input).unwrap().reference_n;
        for better in [
            DowelDoubleShearInput { main_length_mm: input.main_length_mm * factor, ..input },
            DowelDoubleShearInput { side_length_mm: input.side_length_mm * factor, ..input },
            DowelDoubleShearInput { main_bearing_mpa: input.main_bearing_mpa * factor, ..input },
            DowelDoubleShearInput { side_bearing_mpa: input.side_bearing_mpa * factor, ..input },
        ] {
            prop_assert!(dowel_double_shear(&better).unwrap().reference_n >= before_n * (1.0 - 1e-12));
        }
    }

    #[test]
    fn hostile_numbers_give_a_fault_or_finite_results(bits in prop::array::uniform8(any::<u64>()), which in any::<u8>()) {
        let number = |k: usize, fair: f64| if which >> k & 1 == 0 { f64::from_bits(bits[k]) } else { fair };
        let input = DowelDoubleShearInput {
            yield_diameter_mm: number(0, 1.0),
            nominal_diameter_mm: None,
            bending_yield_mpa: number(1, 2_000.0),
            main_bearing_mpa: number(2, 0.01),
            side_bearing_mpa: number(3, 2_000.0),
            main_length_mm: number(4, 1_000.0),
            side_length_mm: number(5, 0.1),
            gap_mm: number(6, 500.0),
            max_angle_to_grain_deg: number(7, 90.0),
        };
        if let Ok(found) = dowel_double_shear(&input) {
            prop_assert!(found.reference_n.is_finite() && found.reference_n > 0.0);
        }
    }
}

#[test]
fn a_yield_diameter_above_the_nominal_one_is_refused() {
    let input = DowelDoubleShearInput {
        yield_diameter_mm: 5.0,
        nominal_diameter_mm: Some(4.0),
        bending_yield_mpa: 600.0,
        main_bearing_mpa: 30.0,
        side_bearing_mpa: 30.0,
        main_length_mm: 30.0,
        side_length_mm: 30.0,
        gap_mm: 0.0,
        max_angle_to_grain_deg: 0.0,
    };
    assert_eq!(dowel_double_shear(&input).expect_err("refused").code, ErrorCode::Inconsistent);
}

/// An independent limit analysis: the least bending moment that a dowel can have at a member's face for every shear from
/// 0 to q l, walking in slices that each press with −q, 0 or +q and never passing ±M. It knows no modes. The walk starts
/// at the dowel's free end, or, by symmetry, in the middle of the main member with no shear and any moment within ±M.
fn least_face_moments(q: f64, length_mm: f64, hinge_nmm: f64, start_nmm: f64, slices: usize) -> Vec<f64> {
    let slice_mm = length_mm / slices as f64;
    let step_n = q * slice_mm;
    let states = 2 * slices + 1;
    let mut least = vec![f64::INFINITY; states];
    least[slices] = start_nmm;
    for _ in 0..slices {
        let mut next = vec![f64::INFINITY; states];
        for (state, moment_nmm) in least.iter().enumerate().filter(|(_, moment)| moment.is_finite()) {
            let shear_n = (state as f64 - slices as f64) * step_n;
            for (target, choice) in [(state.checked_sub(1), -1.0), (Some(state), 0.0), (Some(state + 1), 1.0)] {
                let Some(target) = target.filter(|target| *target < states) else { continue };
                let moved = moment_nmm + shear_n * slice_mm + 0.5 * choice * q * slice_mm * slice_mm;
                if moved <= hinge_nmm {
                    next[target] = next[target].min(moved.max(-hinge_nmm));
                }
            }
        }
        least = next;
    }
    least.split_off(slices)
}

/// The greatest load of both planes that is in equilibrium with no strength exceeded.
fn collapse_by_limit_analysis_n(input: &DowelDoubleShearInput, slices: usize) -> f64 {
    let diameter_mm = input.yield_diameter_mm;
    let hinge_nmm = input.bending_yield_mpa * diameter_mm * diameter_mm * diameter_mm / 6.0;
    let (main_q, side_q) = (input.main_bearing_mpa * diameter_mm, input.side_bearing_mpa * diameter_mm);
    let half_mm = 0.5 * input.main_length_mm;
    let main = least_face_moments(main_q, half_mm, hinge_nmm, -hinge_nmm, slices);
    let side = least_face_moments(side_q, input.side_length_mm, hinge_nmm, 0.0, slices);
    let at = |moments: &[f64], most_n: f64, load_n: f64| {
        let position = (load_n / most_n * slices as f64).clamp(0.0, slices as f64);
        let below = (position as usize).min(slices - 1);
        let part = position - below as f64;
        if part == 0.0 { moments[below] } else { moments[below] * (1.0 - part) + moments[below + 1] * part }
    };
    let (main_most_n, side_most_n) = (main_q * half_mm, side_q * input.side_length_mm);
    let excess = |load_n: f64| load_n * input.gap_mm + at(&main, main_most_n, load_n) + at(&side, side_most_n, load_n);
    let (mut low_n, mut high_n) = (0.0, main_most_n.min(side_most_n));
    if excess(high_n) <= 0.0 {
        return 2.0 * high_n;
    }
    for _ in 0..60 {
        let middle_n = 0.5 * (low_n + high_n);
        if excess(middle_n) <= 0.0 { low_n = middle_n } else { high_n = middle_n }
    }
    2.0 * low_n
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    // 300 slices place a turning point or a hinge to within half a slice.
    #[test]
    fn the_modes_are_the_collapse_load_of_a_rigid_plastic_dowel(input in any_joint()) {
        let found = dowel_double_shear(&input).unwrap();
        let modes_n = found.im_yield_n.min(found.is_yield_n).min(found.iiis_yield_n).min(found.iv_yield_n);
        let share = collapse_by_limit_analysis_n(&input, 300) / modes_n;
        prop_assert!(share > 0.99 && share < 1.0 + 1e-9, "{share} for {input:?}");
    }
}
