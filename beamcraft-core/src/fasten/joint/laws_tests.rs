use crate::fasten::stagger::RowStagger;
use proptest::prelude::*;

use super::tests::{lining, member, screws};
use super::*;
use crate::fasten::nds::{FastenerDirection, MemberMoisture};
use crate::verdict::Outcome;

fn any_kind() -> impl Strategy<Value = JointFastenerKind> {
    use JointFastenerKind as Kind;
    prop::sample::select(vec![
        Kind::WoodScrew,
        Kind::LagScrew,
        Kind::StructuralScrew,
        Kind::SmoothNail,
        Kind::StainlessNail,
        Kind::RingShankNail,
        Kind::Bolt,
        Kind::Dowel,
    ])
}

fn any_material() -> impl Strategy<Value = JointMaterial> {
    use JointMaterial as Material;
    prop::sample::select(vec![
        Material::Softwood,
        Material::Softwood,
        Material::Hardwood,
        Material::Lvl,
        Material::Plywood,
        Material::Osb34,
        Material::Osb2Particleboard,
        Material::Hardboard,
        Material::MdfLa,
        Material::Steel,
        Material::Concrete,
        Material::Masonry,
    ])
}

fn any_standard() -> impl Strategy<Value = JointStandard> {
    prop::sample::select(vec![JointStandard::NdsAsd, JointStandard::NdsLrfd, JointStandard::Ec5])
}

proptest! {
    // Whatever is asked: an answer of finite numbers or a fault, and no pass over a load without a capacity.
    #[test]
    fn hostile_joints_are_answered_or_refused(
        kind in any_kind(), which in any::<u32>(), bits in any::<u64>(), standard in any_standard(),
        materials in prop::array::uniform3(any_material()), angles in prop::array::uniform3(0.0..90.0_f64),
        length in 5.0..400.0_f64, diameter in 1.0..25.0_f64, side in 0.1..200.0_f64, gap in 0.0..60.0_f64,
        count in 0_u32..30, in_row in 0_u32..9, drive in 0_usize..6,
    ) {
        let wild = f64::from_bits(bits);
        let on = |bit: u32| which >> bit & 1 == 1;
        let pick = |bit: u32, fair: f64| if on(bit) && which % 3 == 0 { wild } else { fair };
        let maybe = |bit: u32, fair: f64| on(bit).then(|| pick(bit + 1, fair));
        let base = screws(standard);
        let of = |k: usize, thickness_mm: f64| JointMember {
            material: materials[k],
            angle_to_grain_deg: if on(28) { angles[k] } else { 90.0 },
            made: on(29).then_some(MemberMoisture::Wet),
            modulus_mpa: maybe(9, 9_000.0),
            area_mm2: maybe(10, 4_000.0),
            mean_density_kg_m3: maybe(11, 420.0),
            compression_across_mpa: maybe(12, 2.5),
            depth_mm: maybe(13, 150.0),
            ..member(thickness_mm)
        };
        let layout = JointLayout {
            in_row,
            stagger: if on(28) { RowStagger::Staggered } else { RowStagger::InLine },
            along_grain_mm: maybe(14, 60.0),
            across_grain_mm: maybe(15, 40.0),
            loaded_end_mm: maybe(16, 90.0),
            unloaded_end_mm: maybe(17, 50.0),
            loaded_edge_mm: maybe(18, 40.0),
            unloaded_edge_mm: maybe(19, 30.0),
        };
        let drives = [
            JointDrive::SideGrain, JointDrive::SideGrain, JointDrive::SideGrain, JointDrive::EndGrain,
            JointDrive::ToeNailed, JointDrive::Pocket,
        ];
        let pocket = JointPocket {
            angle_deg: pick(20, 15.0),
            shoulder_mm: pick(21, 20.0),
            side_direction: if on(22) { FastenerDirection::EndGrain } else { FastenerDirection::SideGrain },
            main_direction: if on(23) { FastenerDirection::EndGrain } else { FastenerDirection::SideGrain },
            load: [JointPocketLoad::AcrossSlant, JointPocketLoad::PullsScrew, JointPocketLoad::PressesScrew][bits as usize % 3],
        };
        let input = JointInput {
            fastener: JointFastener {
                kind,
                nominal_diameter_mm: pick(0, diameter),
                root_diameter_mm: Some(pick(1, diameter * 0.65)),
                shank_diameter_mm: Some(diameter),
                head_diameter_mm: pick(2, diameter * 2.0),
                length_mm: pick(3, length),
                thread_length_mm: Some(pick(4, length * 0.6)),
                declared_lateral_n: maybe(24, 900.0),
                declared_withdrawal_n_mm: maybe(25, 20.0),
                declared_withdrawal_mpa: maybe(25, 10.0),
                declared_density_kg_m3: maybe(26, 350.0),
                declared_head_mpa: maybe(26, 9.0),
                ..base.fastener
            },
            side: of(0, pick(5, side)),
            main: of(1, 89.0),
            second_side: on(27).then(|| of(2, side)),
            gaps: lining(pick(6, gap)),
            drive: drives[drive],
            pocket: (drives[drive] == JointDrive::Pocket).then_some(pocket),
            layout: on(30).then_some(layout),
            side_layout: on(31).then_some(layout),
            count,
            lateral_n: pick(7, 250.0),
            withdrawal_n: pick(8, 100.0),
            ..base
        };
        if let Ok(found) = joint(&input) {
            let numbers = [
                found.lateral_value_n, found.lateral_capacity_n, found.axial_capacity_n, found.combined_capacity_n,
                found.utilisation, found.slip_modulus_n_per_mm, Some(found.across_n), Some(found.along_n),
            ];
            prop_assert!(numbers.into_iter().flatten().all(f64::is_finite), "{found:?}");
            prop_assert!(found.working.iter().all(|one| one.value.is_finite()));
            prop_assert!(found.modes.iter().all(|mode| mode.value_n.is_finite() && mode.value_n > 0.0));
            for line in found.loads.iter().chain(&found.requirements) {
                let numbers = [line.demand, line.capacity, line.utilisation];
                prop_assert!(numbers.into_iter().flatten().all(f64::is_finite), "{line:?}");
                prop_assert!(line.factors.iter().all(|factor| factor.value.is_finite()));
                // A line without a number says why.
                prop_assert!(line.capacity.is_some() || !line.remark.is_empty(), "{line:?}");
            }
            if found.outcome == Outcome::Met {
                prop_assert!(found.across_n <= 0.0 || found.lateral_capacity_n.is_some());
                prop_assert!(found.along_n <= 0.0 || found.axial_capacity_n.is_some());
                prop_assert!(found.utilisation.is_some_and(|share| share <= 1.0));
            }
        }
    }

    #[test]
    fn more_load_never_helps_and_more_screws_never_hurt(
        standard in any_standard(), lateral in 1.0..2_000.0_f64, pull in 1.0..2_000.0_f64, count in 1_u32..12,
    ) {
        let layout = JointLayout {
            in_row: 1, along_grain_mm: None, across_grain_mm: Some(60.0), loaded_end_mm: Some(200.0),
            stagger: RowStagger::InLine,
            unloaded_end_mm: Some(200.0), loaded_edge_mm: Some(60.0), unloaded_edge_mm: Some(60.0),
        };
        let at = |lateral_n, withdrawal_n, count| {
            let input = JointInput { count, layout: Some(layout), lateral_n, withdrawal_n, ..screws(standard) };
            joint(&input).unwrap()
        };
        let base = at(lateral, pull, count).utilisation.unwrap();
        prop_assert!(at(1.1 * lateral, pull, count).utilisation.unwrap() >= base * (1.0 - 1e-12));
        prop_assert!(at(lateral, 1.1 * pull, count).utilisation.unwrap() >= base * (1.0 - 1e-12));
        prop_assert!(at(lateral, pull, count + 1).utilisation.unwrap() <= base * (1.0 + 1e-12));
    }

    // More thickness or density never weakens, in single and in double shear, by either standard. A single mode may fall
    // with the thickness where another one governs.
    #[test]
    fn denser_and_thicker_wood_never_weakens(
        standard in any_standard(), density in 250.0..450.0_f64, side in 12.0..40.0_f64, main in 20.0..90.0_f64,
        factor in 1.0..1.1_f64, double in any::<bool>(), through in any::<bool>(),
    ) {
        let wood = |thickness_mm: f64, density: f64| JointMember {
            specific_gravity: Some(density / 830.0),
            characteristic_density_kg_m3: Some(density),
            ..member(thickness_mm)
        };
        let at = |side_mm: f64, main_mm: f64, density: f64, length: f64| {
            let base = screws(standard);
            let kind = if through { JointFastenerKind::Dowel } else { JointFastenerKind::WoodScrew };
            let input = JointInput {
                fastener: JointFastener { kind, length_mm: length, thread_length_mm: None, ..base.fastener },
                side: wood(side_mm, density),
                main: wood(main_mm, density),
                second_side: double.then(|| wood(side_mm, density)),
                withdrawal_n: 0.0,
                ..base
            };
            joint(&input).unwrap()
        };
        // The screw ends flush with the far face, so that a thicker last member takes a longer screw.
        let length = |side_mm: f64, main_mm: f64| if double { 2.0 * side_mm + main_mm } else { side_mm + main_mm };
        let base = at(side, main, density, length(side, main));
        let value_n = base.lateral_value_n.unwrap();
        for better in [
            at(side * factor, main, density, length(side * factor, main)),
            at(side, main * factor, density, length(side, main * factor)),
            at(side, main, density * factor, length(side, main)),
        ] {
            prop_assert!(better.lateral_value_n.unwrap() >= value_n * (1.0 - 1e-12));
        }
    }

    // Within a mode a thicker fastener of the same steel carries more; at a quarter inch the American rules change.
    #[test]
    fn a_thicker_nail_of_the_same_steel_carries_more_in_every_mode(
        standard in any_standard(), diameter in 2.0..5.9_f64, factor in 1.0..1.05_f64, side in 15.0..60.0_f64,
    ) {
        let at = |diameter: f64| {
            let nail = JointFastener {
                bending_yield_mpa: Some(600.0), tensile_strength_mpa: Some(600.0), tip_length_mm: Some(0.0),
                ..JointFastener::plain(JointFastenerKind::SmoothNail, diameter, 2.0 * diameter, 120.0)
            };
            let input = JointInput { lateral_n: 10.0, ..JointInput::plain(standard, nail, member(side), member(90.0)) };
            joint(&input).unwrap()
        };
        let (thin, thick) = (at(diameter), at(diameter * factor));
        for (thin, thick) in thin.modes.iter().zip(&thick.modes) {
            prop_assert!(thick.value_n >= thin.value_n * (1.0 - 1e-12), "{} by {standard:?}", thin.name);
        }
    }

    // Where one mode takes over from another nothing jumps.
    #[test]
    fn capacities_are_continuous_where_modes_change(
        standard in any_standard(), side in 5.0..80.0_f64, main in 20.0..120.0_f64, double in any::<bool>(),
    ) {
        let at = |side_mm: f64, main_mm: f64| {
            let dowel = JointFastener {
                tensile_strength_mpa: Some(500.0), ..JointFastener::plain(JointFastenerKind::Dowel, 10.0, 10.0, 300.0)
            };
            let second_side = double.then(|| member(side_mm));
            let input = JointInput { second_side, ..JointInput::plain(standard, dowel, member(side_mm), member(main_mm)) };
            joint(&input).unwrap().lateral_value_n.unwrap()
        };
        let here = at(side, main);
        for there in [at(side * (1.0 + 1e-7), main), at(side, main * (1.0 + 1e-7))] {
            prop_assert!((there / here - 1.0).abs() < 1e-6);
        }
    }

    // Turned round, a joint of three members is the same joint.
    #[test]
    fn double_shear_is_symmetric(standard in any_standard(), first in 10.0..60.0_f64, second in 10.0..60.0_f64, main in 20.0..90.0_f64) {
        let at = |side_mm: f64, second_mm: f64| {
            let dowel = JointFastener {
                tensile_strength_mpa: Some(500.0), ..JointFastener::plain(JointFastenerKind::Dowel, 10.0, 10.0, 300.0)
            };
            let input = JointInput {
                second_side: Some(member(second_mm)), ..JointInput::plain(standard, dowel, member(side_mm), member(main))
            };
            joint(&input).unwrap()
        };
        let (one, other) = (at(first, second), at(second, first));
        prop_assert_eq!(one.modes, other.modes);
        prop_assert_eq!(one.lateral_capacity_n, other.lateral_capacity_n);
    }

    // A pocket of hardly any slant is a screw driven square, and its parts of the load add up to the loads.
    #[test]
    fn the_parts_of_a_load_on_a_slant_are_its_components(slant in 5.0..45.0_f64, v in 0.0..500.0_f64, t in 0.0..500.0_f64) {
        let at = |load| {
            let pocket = JointPocket {
                angle_deg: slant, shoulder_mm: 20.0, side_direction: FastenerDirection::SideGrain,
                main_direction: FastenerDirection::SideGrain, load,
            };
            let input = JointInput {
                drive: JointDrive::Pocket, pocket: Some(pocket), lateral_n: v, withdrawal_n: t,
                ..screws(JointStandard::NdsAsd)
            };
            let found = joint(&input).unwrap();
            (found.across_n, found.along_n)
        };
        let (across, along) = at(JointPocketLoad::AcrossSlant);
        prop_assert!((across * across + along * along - v * v - t * t).abs() <= 1e-9 * (v * v + t * t));
        let (pulled_across, pulled) = at(JointPocketLoad::PullsScrew);
        let (pressed_across, pressed) = at(JointPocketLoad::PressesScrew);
        prop_assert!(pulled >= along && (pressed - along).abs() < 1e-9);
        prop_assert_eq!(pulled_across, pressed_across);
        // Never less than the true resultant of loads in one plane.
        prop_assert!(pulled * pulled + pulled_across * pulled_across >= (v * v + t * t) * (1.0 - 1e-12));
    }
}
