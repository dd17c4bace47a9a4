use proptest::prelude::*;

use super::super::dowel_joint_verdicts::geometry_factor_verdicts;
use super::*;

fn bolt() -> GeometryFactorInput {
    GeometryFactorInput {
        nominal_diameter_mm: 10.0,
        load: SpacingLoad::TowardsEnd,
        angle_to_grain_deg: 0.0,
        wood: EndDistanceWood::Softwood,
        end_distance_mm: 70.0,
        edge_distance_mm: 15.0,
        loaded_edge_mm: Some(40.0),
        row_pitch_mm: Some(40.0),
        stagger: RowStagger::InLine,
        between_rows_mm: Some(50.0),
        row_spread_mm: Some(50.0),
        bearing_length_mm: 40.0,
        holes: BoredHoles::NotBored,
        side: SidePlate::Wood,
    }
}

// NDS Table 12.5.1A.
#[test]
fn end_distances_follow_the_table() {
    let full = |load, wood, angle_to_grain_deg| {
        geometry_factor(&GeometryFactorInput { load, wood, angle_to_grain_deg, ..bolt() }).unwrap().end_full_mm
    };
    use EndDistanceWood::{Hardwood, Softwood};
    use SpacingLoad::{AwayFromEnd, TowardsEnd, WithdrawalOnly};
    assert_eq!(full(TowardsEnd, Softwood, 0.0), 70.0);
    assert_eq!(full(TowardsEnd, Hardwood, 0.0), 50.0);
    assert_eq!(full(AwayFromEnd, Softwood, 0.0), 40.0);
    assert_eq!(full(TowardsEnd, Softwood, 90.0), 40.0);
    assert_eq!(full(TowardsEnd, Softwood, 45.0), 55.0);
    assert_eq!(full(WithdrawalOnly, Softwood, 0.0), 40.0);
}

#[test]
fn the_factor_is_the_lesser_share_and_nothing_below_the_least_distance() {
    let at = |end_distance_mm, pitch| {
        let input = GeometryFactorInput { end_distance_mm, row_pitch_mm: Some(pitch), ..bolt() };
        let found = geometry_factor(&input).unwrap();
        (found.c_delta, found.outcome)
    };
    assert_eq!(at(70.0, 40.0), (1.0, Outcome::Met));
    assert_eq!(at(35.0, 40.0), (0.5, Outcome::Met));
    assert_eq!(at(70.0, 30.0), (0.75, Outcome::Met));
    assert_eq!(at(35.0, 30.0), (0.5, Outcome::Met));
    assert_eq!(at(34.0, 40.0), (0.0, Outcome::NotMet));
    assert_eq!(at(70.0, 29.0), (0.0, Outcome::NotMet));
    assert_eq!(at(500.0, 500.0), (1.0, Outcome::Met));
}

// NDS Tables 12.5.1C and 12.5.1D.
#[test]
fn edges_and_rows_follow_the_slenderness() {
    let with = |bearing_length_mm, angle_to_grain_deg| {
        geometry_factor(&GeometryFactorInput { bearing_length_mm, angle_to_grain_deg, ..bolt() }).unwrap()
    };
    assert_eq!(with(60.0, 0.0).edge_least_mm, 15.0);
    assert_eq!(with(61.0, 0.0).edge_least_mm, 25.0);
    assert_eq!(with(40.0, 0.0).between_rows_least_mm, 15.0);
    assert_eq!(with(20.0, 90.0).between_rows_least_mm, 25.0);
    assert_eq!(with(40.0, 90.0).between_rows_least_mm, 37.5);
    assert_eq!(with(60.0, 90.0).between_rows_least_mm, 50.0);
    assert_eq!(with(40.0, 90.0).loaded_edge_least_mm, 40.0);
    let spread = geometry_factor(&GeometryFactorInput { row_spread_mm: Some(128.0), ..bolt() }).unwrap();
    assert_eq!((spread.row_spread, spread.outcome), (Outcome::NotMet, Outcome::NotMet));
}

#[test]
fn a_load_across_the_grain_needs_its_edge() {
    let input = GeometryFactorInput { angle_to_grain_deg: 30.0, loaded_edge_mm: None, ..bolt() };
    assert_eq!(geometry_factor(&input).expect_err("refused").field, "loaded_edge_mm");
    let along = GeometryFactorInput { loaded_edge_mm: None, ..bolt() };
    assert_eq!(geometry_factor(&along).unwrap().loaded_edge, Outcome::Met);
}

// NDS Commentary Tables C12.1.5.7 and C12.1.6.6 (recalled).
#[test]
fn thin_fasteners_have_recommendations_and_no_factor() {
    let nail = GeometryFactorInput { nominal_diameter_mm: 4.0, ..bolt() };
    let asked = |side, holes| {
        let found = geometry_factor(&GeometryFactorInput { side, holes, ..nail }).unwrap();
        assert_eq!((found.rule, found.c_delta), (SpacingRule::Recommended, 1.0));
        (found.end_least_mm, found.pitch_least_mm, found.between_rows_least_mm)
    };
    assert_eq!(asked(SidePlate::Wood, BoredHoles::NotBored), (60.0, 60.0, 20.0));
    assert_eq!(asked(SidePlate::Wood, BoredHoles::Bored), (40.0, 40.0, 12.0));
    assert_eq!(asked(SidePlate::Steel, BoredHoles::NotBored), (40.0, 40.0, 12.0));
    assert_eq!(asked(SidePlate::Steel, BoredHoles::Bored), (20.0, 20.0, 10.0));
    let close = geometry_factor(&GeometryFactorInput { end_distance_mm: 30.0, ..nail }).unwrap();
    assert_eq!((close.end_distance, close.c_delta), (Outcome::NotMet, 1.0));
}

proptest! {
    #[test]
    fn more_distance_never_costs(end in 0.0..200.0_f64, pitch in 0.0..200.0_f64, more in 0.0..50.0_f64, angle in 0.0..=90.0_f64, d in 3.0..20.0_f64) {
        let at = |end_distance_mm, pitch| {
            let input = GeometryFactorInput {
                nominal_diameter_mm: d, end_distance_mm, row_pitch_mm: Some(pitch), angle_to_grain_deg: angle, ..bolt()
            };
            geometry_factor(&input).unwrap().c_delta
        };
        prop_assert!(at(end + more, pitch + more) >= at(end, pitch));
        prop_assert!((0.0..=1.0).contains(&at(end, pitch)));
    }

    #[test]
    fn hostile_numbers_give_a_fault_or_finite_results(bits in prop::array::uniform9(any::<u64>()), which in any::<u16>()) {
        let number = |k: usize, fair: f64| if which >> k & 1 == 0 { f64::from_bits(bits[k]) } else { fair };
        let input = GeometryFactorInput {
            nominal_diameter_mm: number(0, 25.4),
            angle_to_grain_deg: number(1, 90.0),
            end_distance_mm: number(2, 0.0),
            edge_distance_mm: number(3, 5e-324),
            loaded_edge_mm: Some(number(4, 100.0)),
            row_pitch_mm: Some(number(5, 0.0)),
            stagger: RowStagger::InLine,
            between_rows_mm: Some(number(6, 1e5)),
            row_spread_mm: Some(number(7, 0.0)),
            bearing_length_mm: number(8, 0.1),
            ..bolt()
        };
        if let Ok(found) = geometry_factor(&input) {
            prop_assert!(found.c_delta.is_finite() && found.end_full_mm.is_finite() && found.between_rows_least_mm > 0.0);
        }
    }
}

#[test]
fn every_distance_is_a_line_of_its_own() {
    let input = GeometryFactorInput { angle_to_grain_deg: 90.0, end_distance_mm: 10.0, ..bolt() };
    let lines = geometry_factor_verdicts(&input, &geometry_factor(&input).unwrap(), "bolts");
    let outcomes: Vec<_> = lines.iter().map(|line| line.outcome).collect();
    use Outcome::{Met, NotMet};
    assert_eq!(outcomes, [NotMet, Met, Met, Met, Met, Met]);
    assert_eq!((lines[0].demand, lines[0].capacity, lines[0].factors[0].value), (Some(20.0), Some(10.0), 0.0));
    let nail = GeometryFactorInput { nominal_diameter_mm: 3.0, row_pitch_mm: None, between_rows_mm: None, ..bolt() };
    let lines = geometry_factor_verdicts(&nail, &geometry_factor(&nail).unwrap(), "nails");
    assert_eq!(lines.len(), 2);
    assert!(lines[0].factors.is_empty() && lines[0].remark.starts_with("Recommended"));
}
