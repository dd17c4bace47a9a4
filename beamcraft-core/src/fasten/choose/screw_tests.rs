use proptest::prelude::*;

use super::*;

/// Through an 18 mm cleat and 12.5 mm plasterboard into a spruce stud.
fn cleat() -> ChooseScrewInput {
    ChooseScrewInput {
        sizes: vec![],
        lengths_mm: vec![],
        series: SoldLengthSeries::Inch,
        side_specific_gravity: 0.60,
        side_thickness_mm: 18.0,
        side_angle_to_grain_deg: 90.0,
        head_recess_mm: 0.0,
        gap_mm: 12.5,
        main_specific_gravity: 0.42,
        main_thickness_mm: 89.0,
        main_angle_to_grain_deg: 0.0,
        main_direction: FastenerDirection::SideGrain,
        least_cover_mm: 3.0,
        holes: ScrewHoles::Bored,
        load_duration: LoadDuration::Permanent,
        fabrication_moisture: MemberMoisture::Dry,
        service_moisture: MemberMoisture::Dry,
        temperature: TemperatureBand::UpTo100F,
        lateral_n: 200.0,
        withdrawal_n: 150.0,
    }
}

fn kinds(refusal: &ScrewRefusal) -> Vec<ShortcomingKind> {
    refusal.shortcomings.iter().map(|reason| reason.kind).collect()
}

#[test]
fn the_smallest_suitable_screw_comes_first() {
    let found = choose_screw(&cleat()).unwrap();
    let sizes: Vec<_> = found.suitable.iter().map(|screw| (screw.nominal_diameter_mm, screw.length_mm)).collect();
    assert!(sizes.len() > 5 && sizes.windows(2).all(|pair| pair[0] < pair[1]), "{sizes:?}");
    assert!(found.unsuitable.iter().all(|screw| !screw.shortcomings.is_empty()));
    // A screw of 1 in ends in the plasterboard; a thin one is too weak.
    let short = found.unsuitable.iter().find(|screw| screw.length_mm < 26.0).unwrap();
    assert_eq!(kinds(short), [ShortcomingKind::DoesNotReach]);
    assert!(
        found
            .unsuitable
            .iter()
            .any(|screw| screw.size == ScrewSize::No6 && kinds(screw).contains(&ShortcomingKind::Lateral))
    );
}

#[test]
fn a_thin_main_member_leaves_no_cover() {
    let input = ChooseScrewInput {
        sizes: vec![ScrewSize::No8],
        lengths_mm: vec![50.0, 45.0],
        gap_mm: 0.0,
        main_thickness_mm: 30.0,
        lateral_n: 10.0,
        withdrawal_n: 0.0,
        ..cleat()
    };
    let found = choose_screw(&input).unwrap();
    assert_eq!((found.suitable.len(), found.suitable[0].length_mm), (1, 45.0));
    assert!((found.suitable[0].cover_mm - 3.0).abs() < 1e-9);
    assert_eq!(kinds(&found.unsuitable[0]), [ShortcomingKind::Cover]);
}

// NDS 12.1.5.2: no hole is needed in withdrawal up to G 0.5.
#[test]
fn dense_wood_wants_a_hole_in_withdrawal() {
    let at = |main_specific_gravity, withdrawal_n| {
        let holes = ScrewHoles::NotBored;
        let found = choose_screw(&ChooseScrewInput { main_specific_gravity, withdrawal_n, holes, ..cleat() }).unwrap();
        found.suitable.len()
    };
    assert!(at(0.5, 150.0) > 0 && at(0.51, 0.0) > 0);
    assert_eq!(at(0.51, 150.0), 0);
}

// NDS Table I1 ends at 0.375 in: every gauge of the table has a bending strength.
#[test]
fn every_size_of_the_catalogue_is_computed() {
    let input = ChooseScrewInput { lengths_mm: vec![100.0], ..cleat() };
    let found = choose_screw(&input).unwrap();
    assert_eq!(found.suitable.len() + found.unsuitable.len(), ScrewSize::TABULATED.len());
    for refusal in &found.unsuitable {
        assert!(!kinds(refusal).contains(&ShortcomingKind::NotComputed), "{refusal:?}");
    }
}

#[test]
fn every_fault_is_told_at_once() {
    let input = ChooseScrewInput {
        sizes: vec![ScrewSize::No8, ScrewSize::Own],
        lengths_mm: vec![50.0, f64::NAN],
        gap_mm: -1.0,
        ..cleat()
    };
    let error = choose_screw(&input).expect_err("refused");
    let paths: Vec<_> = error.details().iter().map(|detail| detail.path.as_str()).collect();
    assert_eq!(paths, ["gap_mm", "lengths_mm[1]", "sizes[1]"]);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]

    // A smaller load never takes a screw off the list.
    #[test]
    fn a_smaller_load_keeps_every_screw(v in 1.0..600.0_f64, t in 0.0..600.0_f64, part in 0.0..1.0_f64) {
        let list = |share: f64| {
            let found = choose_screw(&ChooseScrewInput { lateral_n: v * share, withdrawal_n: t * share, ..cleat() }).unwrap();
            found.suitable.iter().map(|screw| (screw.size, screw.length_mm)).collect::<Vec<_>>()
        };
        let (full, less) = (list(1.0), list(part));
        prop_assert!(full.iter().all(|screw| less.contains(screw)));
    }

    #[test]
    fn every_suitable_screw_satisfies_its_own_joint(v in 1.0..400.0_f64, t in 0.0..300.0_f64, g in 0.3..0.7_f64, main in 20.0..90.0_f64) {
        let input = ChooseScrewInput { lateral_n: v, withdrawal_n: t, main_specific_gravity: g, main_thickness_mm: main, ..cleat() };
        for screw in choose_screw(&input).unwrap().suitable {
            let joint = screw_joint(&joint_input(&input, screw.size, screw.length_mm)).unwrap();
            prop_assert_eq!(joint.outcome, Outcome::Met);
            prop_assert!(screw.cover_mm >= 3.0 - SAME_MM);
        }
    }

    #[test]
    fn hostile_numbers_give_an_error_or_a_list(bits in prop::collection::vec(any::<u64>(), 8), which in any::<u8>()) {
        let number = |k: usize, fair: f64| if which >> k & 1 == 0 { f64::from_bits(bits[k]) } else { fair };
        let input = ChooseScrewInput {
            lengths_mm: vec![number(0, 60.0)],
            side_thickness_mm: number(1, 18.0),
            head_recess_mm: number(2, 0.0),
            gap_mm: number(3, 0.0),
            main_specific_gravity: number(4, 0.05),
            main_thickness_mm: number(5, 0.1),
            lateral_n: number(6, 1e7),
            withdrawal_n: number(7, 5e-324),
            ..cleat()
        };
        if let Ok(found) = choose_screw(&input) {
            prop_assert_eq!(found.suitable.len() + found.unsuitable.len(), ScrewSize::TABULATED.len());
        }
    }
}
