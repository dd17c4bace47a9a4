//! The Johansen modes against an independent limit analysis that knows no modes.

use proptest::prelude::*;

use super::choice::Ec5Fastener;
use super::steel::turn_clamped;
use super::timber::{Ec5DoubleShearInput, Ec5SingleShearInput, johansen_double, johansen_single};

/// A member as a rigid-plastic dowel feels it, walked from where the load enters (the face) inwards.
struct Member {
    /// Bearing resistance per length, N/mm.
    q: f64,
    length_mm: f64,
    end: End,
}

/// What the far end of the member asks of the dowel.
#[derive(Clone, Copy)]
enum End {
    /// The dowel ends: no shear, no moment.
    Free,
    /// The plane of symmetry of a double shear joint: no shear, any moment up to the yield moment.
    Symmetric,
}

/// The greatest moment that the dowel can bring to the face of the member against the load, for a shear at the face,
/// by the static theorem: any pressures between −q and q and moments between −M and M that are in balance will do.
///
/// The part next to the face carries the whole shear at full pressure; what lies beyond is in balance by itself and adds
/// a couple: of two equal and opposite stretches as long as the rest allows, searched on a grid, and never more than M.
/// That no other pressures do better is what [`best_by_slices`] confirms.
fn best_face_moment(member: &Member, hinge_nmm: f64, shear_n: f64, steps: usize) -> Option<f64> {
    let (q, length) = (member.q, member.length_mm);
    if shear_n > q * length * (1.0 + 1e-12) {
        return None;
    }
    // A part of length z next to the face carries the whole shear at pressure +q; what follows is in balance by itself.
    let z = shear_n / q;
    let own_nmm = -0.5 * q * z * z;
    let rest = length - z;
    // Beyond z: either a hinge, or two equal and opposite stretches as long as the rest allows, or the symmetric end.
    let couple_nmm = match member.end {
        End::Free => {
            let mut best: f64 = 0.0;
            for k in 0..=steps {
                // +q over x, −q over x: the couple q x² must fit in the rest.
                let x = 0.5 * rest * k as f64 / steps as f64;
                best = best.max(q * x * x);
            }
            best.min(hinge_nmm)
        }
        End::Symmetric => hinge_nmm,
    };
    Some(couple_nmm + own_nmm)
}

/// The greatest load in equilibrium: the moments that both sides can bring to the plane must balance.
fn collapse_n(sides: [&Member; 2], hinge_nmm: f64) -> f64 {
    let fits = |load_n: f64| {
        let moments = sides.map(|side| best_face_moment(side, hinge_nmm, load_n, 64));
        match moments {
            [Some(one), Some(other)] => one + other >= 0.0,
            _ => false,
        }
    };
    bisect(fits, sides.map(|side| side.q * side.length_mm).into_iter().fold(f64::INFINITY, f64::min))
}

/// The greatest load that fits.
fn bisect(fits: impl Fn(f64) -> bool, most_n: f64) -> f64 {
    if fits(most_n) {
        return most_n;
    }
    let (mut low, mut high) = (0.0, most_n);
    for _ in 0..200 {
        let middle = 0.5 * (low + high);
        if fits(middle) { low = middle } else { high = middle }
    }
    low
}

/// The same, with the pressure left free in every slice: dynamic programming over shears, without any idea of how the
/// pressures lie. Coarse, so that it only confirms the search above.
fn best_by_slices(member: &Member, hinge_nmm: f64, slices: usize) -> Vec<f64> {
    let slice_mm = member.length_mm / slices as f64;
    let step_n = member.q * slice_mm;
    let states = 2 * slices + 1;
    // Least moment at the walked place for every shear, from the far end to the face.
    let mut least = vec![f64::INFINITY; states];
    least[slices] = if matches!(member.end, End::Symmetric) { -hinge_nmm } else { 0.0 };
    for _ in 0..slices {
        let mut next = vec![f64::INFINITY; states];
        for (state, moment) in least.iter().enumerate().filter(|(_, moment)| moment.is_finite()) {
            let shear_n = (state as f64 - slices as f64) * step_n;
            for choice in [-1_isize, 0, 1] {
                let Some(target) = state.checked_add_signed(choice).filter(|target| *target < states) else { continue };
                let moved = moment + shear_n * slice_mm + 0.5 * choice as f64 * step_n * slice_mm;
                if moved <= hinge_nmm {
                    next[target] = next[target].min(moved.max(-hinge_nmm));
                }
            }
        }
        least = next;
    }
    least.split_off(slices).into_iter().map(|moment| -moment).collect()
}

fn collapse_by_slices_n(sides: [&Member; 2], hinge_nmm: f64, slices: usize) -> f64 {
    let tables = sides.map(|side| best_by_slices(side, hinge_nmm, slices));
    let at = |k: usize, load_n: f64| {
        let place = load_n / (sides[k].q * sides[k].length_mm) * slices as f64;
        let below = (place as usize).min(slices - 1);
        let part = (place - below as f64).clamp(0.0, 1.0);
        if part == 0.0 { tables[k][below] } else { tables[k][below] * (1.0 - part) + tables[k][below + 1] * part }
    };
    let most_n = sides.map(|side| side.q * side.length_mm).into_iter().fold(f64::INFINITY, f64::min);
    bisect(|load_n| at(0, load_n) + at(1, load_n) >= 0.0, most_n)
}

fn single(d: f64, moment: f64, (h1, t1): (f64, f64), (h2, t2): (f64, f64)) -> Ec5SingleShearInput {
    Ec5SingleShearInput {
        fastener: Ec5Fastener::Dowel,
        diameter_mm: d,
        yield_moment_nmm: moment,
        head_side_mpa: h1,
        point_side_mpa: h2,
        head_side_mm: t1,
        point_side_mm: t2,
        axial_capacity_n: 0.0,
    }
}

fn all_single(input: &Ec5SingleShearInput) -> [f64; 6] {
    let [c, d, e, f] = johansen_single(input, 1.0, 1.0);
    let bearing = |mpa: f64, mm: f64| mpa * mm * input.diameter_mm;
    let (a, b) = (bearing(input.head_side_mpa, input.head_side_mm), bearing(input.point_side_mpa, input.point_side_mm));
    [a, b, c, d, e, f]
}

fn sides_of(input: &Ec5SingleShearInput) -> [Member; 2] {
    [
        Member { q: input.head_side_mpa * input.diameter_mm, length_mm: input.head_side_mm, end: End::Free },
        Member { q: input.point_side_mpa * input.diameter_mm, length_mm: input.point_side_mm, end: End::Free },
    ]
}

fn least(modes: impl IntoIterator<Item = f64>) -> f64 {
    modes.into_iter().fold(f64::INFINITY, f64::min)
}

/// One joint for each mode of (8.6), so that every mode is known to have been met.
#[test]
fn the_limit_analysis_finds_every_mode_of_single_shear() {
    let cases = [
        single(12.0, 100_000.0, (25.0, 8.0), (25.0, 150.0)),
        single(12.0, 100_000.0, (25.0, 150.0), (25.0, 8.0)),
        single(16.0, 1_000_000.0, (25.0, 40.0), (20.0, 45.0)),
        single(8.0, 25_000.0, (25.0, 30.0), (25.0, 150.0)),
        single(8.0, 25_000.0, (25.0, 150.0), (25.0, 30.0)),
        single(4.0, 6_000.0, (20.0, 80.0), (25.0, 80.0)),
    ];
    for (mode, input) in cases.into_iter().enumerate() {
        let modes = all_single(&input);
        let capacity_n = least(modes);
        assert_eq!(modes[mode], capacity_n, "case {mode}: {modes:?}");
        let [one, other] = sides_of(&input);
        let found_n = collapse_n([&one, &other], input.yield_moment_nmm);
        assert!((found_n / capacity_n - 1.0).abs() < 1e-9, "case {mode}: {found_n} N against {capacity_n} N");
        let sliced_n = collapse_by_slices_n([&one, &other], input.yield_moment_nmm, 400);
        assert!((sliced_n / capacity_n - 1.0).abs() < 0.005, "case {mode}: {sliced_n} N against {capacity_n} N");
    }
}

fn any_single() -> impl Strategy<Value = Ec5SingleShearInput> {
    (2.0..24.0_f64, 0.2..1.0_f64, 8.0..60.0_f64, 8.0..60.0_f64, 0.5..20.0_f64, 0.5..20.0_f64).prop_map(
        |(d, steel, h1, h2, slender1, slender2)| {
            single(d, 300.0 * steel * d * d * d, (h1, slender1 * d), (h2, slender2 * d))
        },
    )
}

fn any_double() -> impl Strategy<Value = Ec5DoubleShearInput> {
    any_single().prop_map(|one| Ec5DoubleShearInput {
        fastener: Ec5Fastener::Dowel,
        diameter_mm: one.diameter_mm,
        yield_moment_nmm: one.yield_moment_nmm,
        outer_mpa: one.head_side_mpa,
        middle_mpa: one.point_side_mpa,
        outer_mm: one.head_side_mm,
        middle_mm: one.point_side_mm,
        axial_capacity_n: 0.0,
    })
}

proptest! {
    #[test]
    fn single_shear_is_the_collapse_load(input in any_single()) {
        let capacity_n = least(all_single(&input));
        let [one, other] = sides_of(&input);
        let found_n = collapse_n([&one, &other], input.yield_moment_nmm);
        prop_assert!((found_n / capacity_n - 1.0).abs() < 1e-9, "{found_n} N against {capacity_n} N");
    }

    #[test]
    fn double_shear_is_the_collapse_load(input in any_double()) {
        let [j, k] = johansen_double(&input, 1.0, 1.0);
        let g = input.outer_mpa * input.outer_mm * input.diameter_mm;
        let h = 0.5 * input.middle_mpa * input.middle_mm * input.diameter_mm;
        let outer = Member { q: input.outer_mpa * input.diameter_mm, length_mm: input.outer_mm, end: End::Free };
        let half = Member {
            q: input.middle_mpa * input.diameter_mm,
            length_mm: 0.5 * input.middle_mm,
            end: End::Symmetric,
        };
        let found_n = collapse_n([&outer, &half], input.yield_moment_nmm);
        let capacity_n = least([g, h, j, k]);
        prop_assert!((found_n / capacity_n - 1.0).abs() < 1e-9, "{found_n} N against {capacity_n} N");
    }

    // A thin plate is a pin at the face, a thick one brings the yield moment to it. The standard's 0.4 of the thin
    // plate's mode a stands for √2 − 1.
    #[test]
    fn steel_plates_are_a_pin_and_a_clamp(input in any_single()) {
        let [timber, _] = sides_of(&input);
        let (q, t, moment) = (timber.q, timber.length_mm, input.yield_moment_nmm);
        let with_plate = |plate_nmm: f64| {
            bisect(|load| best_face_moment(&timber, moment, load, 64).is_some_and(|m| m + plate_nmm >= 0.0), q * t)
        };
        let thin_n = least([(core::f64::consts::SQRT_2 - 1.0) * q * t, (2.0 * moment * q).sqrt()]);
        let thick_n = least([q * t, turn_clamped(q, t, moment), 2.0 * (moment * q).sqrt()]);
        prop_assert!((with_plate(0.0) / thin_n - 1.0).abs() < 1e-9);
        prop_assert!((with_plate(moment) / thick_n - 1.0).abs() < 1e-9);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    // The found load is in equilibrium, so it never exceeds the collapse load; 300 slices come to within 0.5 %.
    #[test]
    fn pressures_left_free_give_the_same(input in any_single()) {
        let capacity_n = least(all_single(&input));
        let [one, other] = sides_of(&input);
        let share = collapse_by_slices_n([&one, &other], input.yield_moment_nmm, 300) / capacity_n;
        prop_assert!(share > 0.995 && share < 1.0 + 1e-9, "{share} for {input:?}");
    }

    #[test]
    fn pressures_left_free_give_the_same_in_double_shear(input in any_double()) {
        let [j, k] = johansen_double(&input, 1.0, 1.0);
        let g = input.outer_mpa * input.outer_mm * input.diameter_mm;
        let h = 0.5 * input.middle_mpa * input.middle_mm * input.diameter_mm;
        let outer = Member { q: input.outer_mpa * input.diameter_mm, length_mm: input.outer_mm, end: End::Free };
        let half = Member {
            q: input.middle_mpa * input.diameter_mm,
            length_mm: 0.5 * input.middle_mm,
            end: End::Symmetric,
        };
        let share = collapse_by_slices_n([&outer, &half], input.yield_moment_nmm, 300) / least([g, h, j, k]);
        prop_assert!(share > 0.99 && share < 1.0 + 1e-9, "{share} for {input:?}");
    }
}
