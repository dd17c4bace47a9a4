use proptest::prelude::*;

use super::*;
use crate::fasten::dowel_shear;

fn any_joint() -> impl Strategy<Value = DowelShearHollowInput> {
    (
        (1.5..12.0_f64, 200.0..900.0_f64, 8.0..60.0_f64, 8.0..60.0_f64),
        (6.0..120.0_f64, 0.0..60.0_f64, 6.0..120.0_f64, 0.0..60.0_f64, 0.0..40.0_f64, 0.0..90.0_f64),
    )
        .prop_map(|((diameter, bending, main, side), (main_mm, main_void, side_mm, side_void, gap, angle))| {
            DowelShearHollowInput {
                yield_diameter_mm: diameter,
                nominal_diameter_mm: None,
                bending_yield_mpa: bending,
                main_bearing_mpa: main,
                side_bearing_mpa: side,
                main_length_mm: main_mm,
                main_void_mm: main_void,
                side_length_mm: side_mm,
                side_void_mm: side_void,
                gap_mm: gap,
                max_angle_to_grain_deg: angle,
            }
        })
}

fn yields(found: &DowelShearHollow) -> [f64; 6] {
    [found.im_yield_n, found.is_yield_n, found.ii_yield_n, found.iiim_yield_n, found.iiis_yield_n, found.iv_yield_n]
}

fn collapse_n(input: &DowelShearHollowInput) -> f64 {
    yields(&dowel_shear_hollow(input).expect("allowed")).into_iter().fold(f64::INFINITY, f64::min)
}

/// The static theorem, as in the tests of `dowel_shear`, walked through far wall, void and near wall: the least moment at
/// the face for every shear from 0 to q l. In the void the shear stays and the moment runs straight.
fn least_face_moments(q: f64, length_mm: f64, void_mm: f64, hinge_nmm: f64, half: usize) -> Vec<f64> {
    let slices = 2 * half;
    let slice_mm = length_mm / slices as f64;
    let step_n = q * slice_mm;
    let states = 2 * slices + 1;
    let shear_n = |state: usize| (state as f64 - slices as f64) * step_n;
    let mut least = vec![f64::INFINITY; states];
    least[slices] = 0.0;
    for slice in 0..slices {
        if slice == half {
            for (state, moment_nmm) in least.iter_mut().enumerate() {
                let moved = *moment_nmm + shear_n(state) * void_mm;
                *moment_nmm = if moved <= hinge_nmm { moved.max(-hinge_nmm) } else { f64::INFINITY };
            }
        }
        let mut next = vec![f64::INFINITY; states];
        for (state, moment_nmm) in least.iter().enumerate().filter(|(_, moment)| moment.is_finite()) {
            for (target, choice) in [(state.checked_sub(1), -1.0), (Some(state), 0.0), (Some(state + 1), 1.0)] {
                let Some(target) = target.filter(|target| *target < states) else { continue };
                let moved = moment_nmm + shear_n(state) * slice_mm + 0.5 * choice * q * slice_mm * slice_mm;
                if moved <= hinge_nmm {
                    next[target] = next[target].min(moved.max(-hinge_nmm));
                }
            }
        }
        least = next;
    }
    least.split_off(slices)
}

/// The greatest load that is in equilibrium with no strength exceeded; it knows no modes.
fn collapse_by_limit_analysis_n(input: &DowelShearHollowInput, half: usize) -> f64 {
    let d = input.yield_diameter_mm;
    let hinge_nmm = input.bending_yield_mpa * d * d * d / 6.0;
    let (main_q, side_q) = (input.main_bearing_mpa * d, input.side_bearing_mpa * d);
    let main = least_face_moments(main_q, input.main_length_mm, input.main_void_mm, hinge_nmm, half);
    let side = least_face_moments(side_q, input.side_length_mm, input.side_void_mm, hinge_nmm, half);
    let slices = 2 * half;
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

fn pin() -> DowelShearHollowInput {
    DowelShearHollowInput {
        yield_diameter_mm: 6.0,
        nominal_diameter_mm: None,
        bending_yield_mpa: 310.0,
        main_bearing_mpa: 30.0,
        side_bearing_mpa: 30.0,
        main_length_mm: 60.0,
        main_void_mm: 0.0,
        side_length_mm: 36.0,
        side_void_mm: 40.0,
        gap_mm: 0.0,
        max_angle_to_grain_deg: 90.0,
    }
}

// A thick pin in thin walls: the shear is used up in the far wall only, and the hinge lies there.
#[test]
fn a_hinge_may_lie_in_the_far_wall() {
    let input = DowelShearHollowInput { side_length_mm: 12.0, side_void_mm: 4.0, main_length_mm: 20.0, ..pin() };
    let found = dowel_shear_hollow(&input).unwrap();
    let q = input.side_bearing_mpa * input.yield_diameter_mm;
    assert!(found.iiim_yield_n > q * 0.5 * input.side_length_mm, "more than the near wall bears");
    let near = Walls { q, length_mm: 12.0, void_mm: 4.0 }.hinged(310.0 * 216.0 / 6.0);
    let turning = Walls { q, length_mm: 20.0, void_mm: 0.0 }.turning();
    let [near_n, far_n] = near.map(|share| share.load_n(&turning, 0.0));
    assert!(far_n < near_n);
    assert_eq!(found.iiim_yield_n, far_n);
}

#[test]
fn a_yield_diameter_above_the_nominal_one_is_refused() {
    let input = DowelShearHollowInput { nominal_diameter_mm: Some(5.0), ..pin() };
    assert_eq!(dowel_shear_hollow(&input).expect_err("refused").code, ErrorCode::Inconsistent);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    // 300 slices place a turning point or a hinge to within half a slice; the found load is in equilibrium, so it never
    // exceeds the collapse load.
    #[test]
    fn the_modes_are_the_collapse_load_of_a_rigid_plastic_dowel(input in any_joint()) {
        let share = collapse_by_limit_analysis_n(&input, 150) / collapse_n(&input);
        prop_assert!(share > 0.99 && share < 1.0 + 1e-9, "{share} for {input:?}");
    }
}

proptest! {
    #[test]
    fn without_a_void_it_is_the_solid_joint(input in any_joint()) {
        let input = DowelShearHollowInput { main_void_mm: 0.0, side_void_mm: 0.0, ..input };
        let (hollow, solid) = (dowel_shear_hollow(&input).unwrap(), dowel_shear(&solid(&input)).unwrap());
        let solid_yields = [
            solid.im_yield_n,
            solid.is_yield_n,
            solid.ii_yield_n,
            solid.iiim_yield_n,
            solid.iiis_yield_n,
            solid.iv_yield_n,
        ];
        for (ours_n, solid_n) in yields(&hollow).into_iter().zip(solid_yields) {
            prop_assert!((ours_n / solid_n - 1.0).abs() < 1e-12);
        }
        prop_assert!((hollow.reference_n / solid.reference_n - 1.0).abs() < 1e-12);
    }

    #[test]
    fn the_capacity_is_continuous(input in any_joint()) {
        let before_n = dowel_shear_hollow(&input).unwrap().reference_n;
        let step = 1.0 + 1e-9;
        for moved in [
            DowelShearHollowInput { main_length_mm: input.main_length_mm * step, ..input },
            DowelShearHollowInput { side_void_mm: input.side_void_mm * step, ..input },
            DowelShearHollowInput { main_void_mm: input.main_void_mm * step, ..input },
            DowelShearHollowInput { side_bearing_mpa: input.side_bearing_mpa * step, ..input },
        ] {
            prop_assert!((dowel_shear_hollow(&moved).unwrap().reference_n / before_n - 1.0).abs() < 1e-8);
        }
    }

    #[test]
    fn hostile_numbers_give_a_fault_or_finite_results(bits in prop::array::uniform11(any::<u64>()), which in any::<u16>()) {
        let number = |index: usize, fair: f64| if which >> index & 1 == 0 { fair } else { f64::from_bits(bits[index]) };
        let input = DowelShearHollowInput {
            yield_diameter_mm: number(0, 1.0),
            nominal_diameter_mm: (bits[10] % 2 == 0).then(|| number(10, 25.4)),
            bending_yield_mpa: number(1, 2_000.0),
            main_bearing_mpa: number(2, 0.01),
            side_bearing_mpa: number(3, 2_000.0),
            main_length_mm: number(4, 1_000.0),
            main_void_mm: number(5, 500.0),
            side_length_mm: number(6, 0.1),
            side_void_mm: number(7, 0.0),
            gap_mm: number(8, 500.0),
            max_angle_to_grain_deg: number(9, 90.0),
        };
        if let Ok(found) = dowel_shear_hollow(&input) {
            prop_assert!(yields(&found).into_iter().all(|load_n| load_n.is_finite() && load_n > 0.0));
            prop_assert!(found.reference_n.is_finite() && found.reference_n > 0.0);
        }
    }
}
