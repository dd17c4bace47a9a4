//! Laws of the Eurocode calculations.

use crate::fasten::stagger::RowStagger;
use proptest::prelude::*;

use super::*;
use crate::error::ErrorCode;

fn any_fastener() -> impl Strategy<Value = Ec5Fastener> {
    prop_oneof![
        Just(Ec5Fastener::RoundNail),
        Just(Ec5Fastener::SquareNail),
        Just(Ec5Fastener::ThreadedNail),
        Just(Ec5Fastener::Screw),
        Just(Ec5Fastener::Bolt),
        Just(Ec5Fastener::Dowel),
    ]
}

fn any_joint() -> impl Strategy<Value = Ec5SingleShearInput> {
    (
        any_fastener(),
        (2.0..24.0_f64, 1_000.0..1e6_f64, 8.0..60.0_f64, 8.0..60.0_f64, 5.0..200.0_f64, 5.0..200.0_f64),
        0.0..2e4_f64,
    )
        .prop_map(|(fastener, (d, moment, h1, h2, t1, t2), axial_capacity_n)| Ec5SingleShearInput {
            fastener,
            diameter_mm: d,
            yield_moment_nmm: moment,
            head_side_mpa: h1,
            point_side_mpa: h2,
            head_side_mm: t1,
            point_side_mm: t2,
            axial_capacity_n,
        })
}

/// Eq. 8.6 as the standard prints it.
fn as_printed(input: &Ec5SingleShearInput) -> [f64; 4] {
    let (h1, d, my) = (input.head_side_mpa, input.diameter_mm, input.yield_moment_nmm);
    let (t1, t2, b) = (input.head_side_mm, input.point_side_mm, input.point_side_mpa / input.head_side_mpa);
    let r = t2 / t1;
    let c =
        h1 * t1 * d / (1.0 + b) * ((b + 2.0 * b * b * (1.0 + r + r * r) + b * b * b * r * r).sqrt() - b * (1.0 + r));
    let brace_d = (2.0 * b * (1.0 + b) + 4.0 * b * (2.0 + b) * my / (h1 * d * t1 * t1)).sqrt() - b;
    let brace_e = (2.0 * b * b * (1.0 + b) + 4.0 * b * (1.0 + 2.0 * b) * my / (h1 * d * t2 * t2)).sqrt() - b;
    [
        c,
        1.05 * h1 * t1 * d / (2.0 + b) * brace_d,
        1.05 * h1 * t2 * d / (1.0 + 2.0 * b) * brace_e,
        1.15 * (2.0 * b / (1.0 + b)).sqrt() * (2.0 * my * h1 * d).sqrt(),
    ]
}

fn modes(found: &Ec5SingleShear) -> [f64; 6] {
    [found.a_n, found.b_n, found.c_n, found.d_n, found.e_n, found.f_n]
}

proptest! {
    #[test]
    fn the_forms_without_loss_are_the_printed_ones(input in any_joint()) {
        let found = ec5_single_shear(&input).unwrap();
        let ours = [found.c_johansen_n, found.d_johansen_n, found.e_johansen_n, found.f_johansen_n];
        for (ours, printed) in ours.into_iter().zip(as_printed(&input)) {
            prop_assert!((ours / printed - 1.0).abs() < 1e-9, "{ours} against {printed}");
        }
    }

    // Every mode but c of (8.6) grows, or stays, with wood and steel; c and with it the least too.
    #[test]
    fn more_wood_or_steel_never_weakens(input in any_joint(), factor in 1.0..3.0_f64) {
        let before = ec5_single_shear(&input).unwrap();
        for better in [
            Ec5SingleShearInput { head_side_mm: input.head_side_mm * factor, ..input },
            Ec5SingleShearInput { point_side_mm: input.point_side_mm * factor, ..input },
            Ec5SingleShearInput { head_side_mpa: input.head_side_mpa * factor, ..input },
            Ec5SingleShearInput { point_side_mpa: input.point_side_mpa * factor, ..input },
            Ec5SingleShearInput { yield_moment_nmm: input.yield_moment_nmm * factor, ..input },
            Ec5SingleShearInput { axial_capacity_n: input.axial_capacity_n * factor, ..input },
        ] {
            let after = ec5_single_shear(&better).unwrap();
            prop_assert!(after.capacity_n >= before.capacity_n * (1.0 - 1e-12));
        }
        for better in [
            Ec5SingleShearInput { yield_moment_nmm: input.yield_moment_nmm * factor, ..input },
            Ec5SingleShearInput { diameter_mm: (input.diameter_mm * factor).min(25.4), ..input },
        ] {
            for (after, before) in modes(&ec5_single_shear(&better).unwrap()).into_iter().zip(modes(&before)) {
                prop_assert!(after >= before * (1.0 - 1e-12));
            }
        }
    }

    // Where the governing mode changes, and where the cap of the rope effect begins, nothing jumps.
    #[test]
    fn the_capacity_is_continuous(input in any_joint()) {
        let before_n = ec5_single_shear(&input).unwrap().capacity_n;
        let step = 1.0 + 1e-9;
        for moved in [
            Ec5SingleShearInput { head_side_mm: input.head_side_mm * step, ..input },
            Ec5SingleShearInput { point_side_mm: input.point_side_mm * step, ..input },
            Ec5SingleShearInput { head_side_mpa: input.head_side_mpa * step, ..input },
            Ec5SingleShearInput { yield_moment_nmm: input.yield_moment_nmm * step, ..input },
            Ec5SingleShearInput { axial_capacity_n: input.axial_capacity_n * step, ..input },
        ] {
            prop_assert!((ec5_single_shear(&moved).unwrap().capacity_n / before_n - 1.0).abs() < 1e-8);
        }
    }

    #[test]
    fn turning_the_joint_round_swaps_its_modes(input in any_joint()) {
        let turned = Ec5SingleShearInput {
            head_side_mpa: input.point_side_mpa,
            point_side_mpa: input.head_side_mpa,
            head_side_mm: input.point_side_mm,
            point_side_mm: input.head_side_mm,
            ..input
        };
        let (one, other) = (ec5_single_shear(&input).unwrap(), ec5_single_shear(&turned).unwrap());
        let [a, b, c, d, e, f] = modes(&other);
        for (one, other) in modes(&one).into_iter().zip([b, a, c, e, d, f]) {
            prop_assert!((one / other - 1.0).abs() < 1e-9, "{one} against {other}");
        }
    }

    // Two planes, outer members alike: the modes j and k are d and f of one plane, h is half of b.
    #[test]
    fn double_shear_is_twice_a_symmetric_half(input in any_joint()) {
        let both = ec5_double_shear(&Ec5DoubleShearInput {
            fastener: input.fastener,
            diameter_mm: input.diameter_mm,
            yield_moment_nmm: input.yield_moment_nmm,
            outer_mpa: input.head_side_mpa,
            middle_mpa: input.point_side_mpa,
            outer_mm: input.head_side_mm,
            middle_mm: input.point_side_mm,
            axial_capacity_n: input.axial_capacity_n,
        })
        .unwrap();
        let one = ec5_single_shear(&input).unwrap();
        prop_assert_eq!([both.g_n, 2.0 * both.h_n, both.j_n, both.k_n], [one.a_n, one.b_n, one.d_n, one.f_n]);
        prop_assert_eq!(both.capacity_n, 2.0 * both.per_plane_n);
    }

    #[test]
    fn a_plate_between_thin_and_thick_lies_on_the_line(input in any_joint(), share in 0.0..1.0_f64) {
        let plate = |plate_mm: f64, hole_clearance_mm: f64| {
            ec5_steel_single_shear(&Ec5SteelSingleShearInput {
                fastener: input.fastener,
                diameter_mm: input.diameter_mm,
                yield_moment_nmm: input.yield_moment_nmm,
                embedment_mpa: input.head_side_mpa,
                timber_mm: input.head_side_mm,
                plate_mm,
                hole_clearance_mm,
                axial_capacity_n: input.axial_capacity_n,
            })
            .unwrap()
        };
        let d = input.diameter_mm;
        let (thin, thick) = (plate(0.5 * d, 0.0), plate(d, 0.0));
        prop_assert_eq!((thin.plate_class, thin.capacity_n), (Ec5PlateClass::Thin, thin.thin_n));
        prop_assert_eq!((thick.plate_class, thick.capacity_n), (Ec5PlateClass::Thick, thick.thick_n));
        prop_assert!(thick.capacity_n >= thin.capacity_n);
        // Continuous at both ends, linear between.
        prop_assert!((plate(0.5 * d * (1.0 + 1e-7), 0.0).capacity_n / thin.capacity_n - 1.0).abs() < 1e-5);
        prop_assert!((plate(d * (1.0 - 1e-7), 0.0).capacity_n / thick.capacity_n - 1.0).abs() < 1e-5);
        let between_n = thin.thin_n + share * (thick.thick_n - thin.thin_n);
        prop_assert!((plate(d * (0.5 + 0.5 * share), 0.0).capacity_n / between_n - 1.0).abs() < 1e-9);
        prop_assert_eq!(plate(2.0 * d, 0.1 * d).plate_class, Ec5PlateClass::Thin);
    }

    #[test]
    fn the_rope_effect_keeps_its_cap(fastener in any_fastener(), johansen_n in 0.0..1e5_f64, axial_capacity_n in 0.0..1e6_f64) {
        let found = ec5_rope_effect(&Ec5RopeEffectInput { fastener, johansen_n, axial_capacity_n }).unwrap();
        prop_assert!(found.rope_n <= found.cap_n && found.rope_n <= found.quarter_n);
        prop_assert!(found.total_n <= 2.0 * johansen_n);
        prop_assert!(fastener != Ec5Fastener::Dowel || found.total_n == johansen_n);
    }

    // Hankinson's limits: along and across the grain come out as they are, and between lies between.
    #[test]
    fn the_embedment_lies_between_its_two_directions(d in 1.0..25.0_f64, density in 200.0..900.0_f64, angle in 0.0..90.0_f64) {
        let at = |material, angle_to_grain_deg| {
            ec5_embedment(&Ec5EmbedmentInput {
                fastener: Ec5Fastener::Bolt,
                hole: Ec5Hole::Predrilled,
                material,
                density_kg_m3: density,
                diameter_mm: d,
                angle_to_grain_deg,
                panel_thickness_mm: None,
            })
            .unwrap()
        };
        let (along, across) = (at(Ec5Material::Softwood, 0.0), at(Ec5Material::Softwood, 90.0));
        prop_assert_eq!(along.at_angle_mpa, along.parallel_mpa);
        prop_assert_eq!(across.at_angle_mpa, across.parallel_mpa / across.k_90);
        let between = at(Ec5Material::Softwood, angle).at_angle_mpa;
        prop_assert!(between <= along.at_angle_mpa * (1.0 + 1e-12) && between >= across.at_angle_mpa * (1.0 - 1e-12));
        // Wood across the grain is weaker in softwood than in hardwood of the same density.
        prop_assert!(at(Ec5Material::Hardwood, 90.0).at_angle_mpa > across.at_angle_mpa);
    }

    #[test]
    fn a_row_is_worth_at_least_one_and_at_most_all(
        fastener in any_fastener(), d in 2.0..24.0_f64, count in 1_u32..40, slender in 7.0..20.0_f64, angle in 0.0..90.0_f64,
    ) {
        let found = ec5_effective_number(&Ec5EffectiveNumberInput {
            fastener,
            hole: Ec5Hole::Undrilled,
            diameter_mm: d,
            count,
            spacing_mm: slender * d,
            stagger: RowStagger::InLine,
            angle_to_grain_deg: angle,
        })
        .unwrap();
        let number = f64::from(count);
        prop_assert!(found.effective_number <= number * (1.0 + 1e-12));
        prop_assert!(found.effective_number >= 1.0 - 1e-12 || !fastener.follows_nail_rules(d));
        prop_assert!(found.effective_number >= found.along_grain * (1.0 - 1e-12));
    }
}

#[test]
fn the_exponent_of_nail_rows_has_no_step() {
    let number = |spacing_mm: f64| {
        let input = Ec5EffectiveNumberInput {
            fastener: Ec5Fastener::RoundNail,
            hole: Ec5Hole::Predrilled,
            diameter_mm: 4.0,
            count: 5,
            spacing_mm,
            stagger: RowStagger::InLine,
            angle_to_grain_deg: 0.0,
        };
        ec5_effective_number(&input)
    };
    for edge_mm in [28.0, 40.0, 56.0] {
        let step = number(edge_mm + 1e-6).unwrap().exponent - number(edge_mm - 1e-6).unwrap().exponent;
        assert!(step.abs() < 1e-6, "{edge_mm} mm");
    }
    assert_eq!(number(15.9).expect_err("too close").code, ErrorCode::NoPublishedValue);
    assert!((number(16.0).unwrap().exponent - 0.5).abs() < 1e-12);
}

// EN 1995-1-1 8.3.2: the ramps start and end where the text says.
#[test]
fn a_short_nail_loses_its_hold_along_a_ramp() {
    let nail = |fastener, slender: f64| {
        ec5_nail_withdrawal(&Ec5NailWithdrawalInput {
            fastener,
            diameter_mm: 4.0,
            head_diameter_mm: 9.0,
            penetration_mm: slender * 4.0,
            head_side_mm: 25.0,
            density_kg_m3: 350.0,
            head_side_density_kg_m3: 350.0,
            timber: Ec5NailTimber::Dry,
            declared_mpa: Some(3.0),
            declared_head_mpa: Some(12.0),
        })
        .unwrap()
    };
    let factors = |fastener, slenders: [f64; 4]| slenders.map(|slender| nail(fastener, slender).penetration_factor);
    assert_eq!(factors(Ec5Fastener::RoundNail, [7.0, 8.0, 10.0, 12.0]), [0.0, 0.0, 0.5, 1.0]);
    assert_eq!(factors(Ec5Fastener::ThreadedNail, [5.0, 6.0, 7.0, 8.0]), [0.0, 0.0, 0.5, 1.0]);
    assert_eq!(nail(Ec5Fastener::RoundNail, 7.9).penetration, crate::verdict::Outcome::NotMet);
    // The shank under a smooth head helps; a ringed one does not.
    assert!(nail(Ec5Fastener::RoundNail, 12.0).head_n > nail(Ec5Fastener::ThreadedNail, 12.0).head_n);
}

#[test]
fn what_the_standard_has_no_value_for_is_refused() {
    let screw = Ec5ScrewWithdrawalInput {
        thread_diameter_mm: 6.0,
        root_diameter_mm: 3.9,
        thread_length_mm: 60.0,
        density_kg_m3: 350.0,
        axis_to_grain_deg: 90.0,
        count: 1,
        declared_mpa: None,
        declared_density_kg_m3: None,
    };
    assert!(ec5_screw_withdrawal(&screw).is_ok());
    let refused = [
        (Ec5ScrewWithdrawalInput { axis_to_grain_deg: 0.0, ..screw }, "axis_to_grain_deg"),
        (Ec5ScrewWithdrawalInput { thread_diameter_mm: 5.0, root_diameter_mm: 3.3, ..screw }, "thread_diameter_mm"),
        (Ec5ScrewWithdrawalInput { root_diameter_mm: 5.0, ..screw }, "root_diameter_mm"),
    ];
    for (input, field) in refused {
        let fault = ec5_screw_withdrawal(&input).expect_err("refused");
        assert_eq!((fault.code, fault.field), (ErrorCode::NoPublishedValue, field));
    }
    let moment =
        Ec5YieldMomentInput { fastener: Ec5Fastener::ThreadedNail, diameter_mm: 4.0, tensile_strength_mpa: 700.0 };
    assert_eq!(ec5_yield_moment(&moment).expect_err("refused").code, ErrorCode::NoPublishedValue);
    let osb = Ec5DesignValueInput {
        characteristic_n: 1_000.0,
        effective_number: 1.0,
        first_material: Ec5Material::Softwood,
        second_material: Ec5Material::Osb34,
        service_class: Ec5ServiceClass::ServiceClass3,
        load_duration: Ec5LoadDuration::Permanent,
        gamma_m: 1.3,
    };
    assert_eq!(ec5_design_value(&osb).expect_err("refused").code, ErrorCode::NoPublishedValue);
}

proptest! {
    #[test]
    fn hostile_numbers_give_a_fault_or_finite_results(
        bits in prop::array::uniform8(any::<u64>()), edges in prop::array::uniform8(0_u8..4), fastener in any_fastener(),
    ) {
        let number = |k: usize, low: f64, high: f64| match edges[k] {
            0 => f64::from_bits(bits[k]),
            1 => low,
            2 => high,
            _ => 0.5 * (low + high),
        };
        let joint = Ec5SingleShearInput {
            fastener,
            diameter_mm: number(0, 1.0, 25.4),
            yield_moment_nmm: number(1, 1.0, 1e8),
            head_side_mpa: number(2, 0.01, 2_000.0),
            point_side_mpa: number(3, 0.01, 2_000.0),
            head_side_mm: number(4, 0.1, 1_000.0),
            point_side_mm: number(5, 0.1, 1_000.0),
            axial_capacity_n: number(6, 0.0, 1e7),
        };
        if let Ok(found) = ec5_single_shear(&joint) {
            prop_assert!(modes(&found).into_iter().all(|mode_n| mode_n.is_finite() && mode_n > 0.0));
        }
        let plates = Ec5SteelOuterPlatesInput {
            fastener,
            diameter_mm: joint.diameter_mm,
            yield_moment_nmm: joint.yield_moment_nmm,
            embedment_mpa: joint.head_side_mpa,
            timber_mm: joint.head_side_mm,
            plate_mm: number(7, 0.1, 100.0),
            hole_clearance_mm: 0.0,
            axial_capacity_n: joint.axial_capacity_n,
        };
        if let Ok(found) = ec5_steel_outer_plates(&plates) {
            prop_assert!(found.capacity_n.is_finite() && found.capacity_n > 0.0);
        }
    }
}
