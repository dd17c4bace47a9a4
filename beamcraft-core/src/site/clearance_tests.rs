use super::*;
use crate::setting::ListingStep;
use crate::site::rules::CLEARANCE_RULES;
use crate::statics::test_inputs::hostile;
use proptest::prelude::*;

fn point(kind: ApplianceKind, projection_mm: f64, distance_mm: f64) -> MantelClearanceInput {
    MantelClearanceInput {
        projection_mm,
        distance_from_opening_mm: distance_mm,
        side: OpeningSide::Above,
        appliance: Appliance { kind, listing: None },
        height_above_datum_mm: None,
        rules: vec![MantelRule::IrcSlope, MantelRule::Nfpa211Step, MantelRule::NbcStep],
    }
}

fn masonry(projection_mm: f64, distance_mm: f64) -> MantelClearance {
    mantel_clearance(&point(ApplianceKind::MasonryFireplace, projection_mm, distance_mm)).expect("allowed")
}

fn chart(steps: &[(f64, f64)], datum: ListingDatum) -> ListingChart {
    let steps = steps
        .iter()
        .map(|(depth_mm, least_height_mm)| ListingStep { depth_mm: *depth_mm, least_height_mm: *least_height_mm });
    ListingChart { datum, steps: steps.collect() }
}

#[test]
fn every_rule_of_the_choice_has_its_row() {
    use MantelRule::{GermanOpenFire, IbcSlope, IrcSlope, NbcStep, Nfpa211Step, OntarioStep, SbcLegacy};
    let all = [IrcSlope, Nfpa211Step, NbcStep, IbcSlope, SbcLegacy, OntarioStep, GermanOpenFire];
    assert_eq!(all.len(), CLEARANCE_RULES.len());
    for rule in all {
        assert_eq!(rule.row().expect("in the table").rule, rule);
    }
}

#[test]
fn a_unit_without_its_chart_is_never_a_pass_however_far_away() {
    for kind in [ApplianceKind::ListedUnit, ApplianceKind::GasUnit, ApplianceKind::ElectricUnit] {
        let found = mantel_clearance(&point(kind, 10.0, 5000.0)).expect("allowed");
        assert_eq!(found.outcome, Outcome::NotDetermined);
        assert!(found.answers.iter().all(|answer| answer.outcome == Outcome::NotCovered));
        assert_eq!(found.findings.len(), 1);
        assert_eq!((found.findings[0].grade, found.findings[0].code), (Grade::Caution, FindingCode::ListingGoverns));
    }
    let nothing = mantel_clearance(&point(ApplianceKind::None, 10.0, 0.0)).expect("allowed");
    assert_eq!((nothing.outcome, nothing.listing), (Outcome::NotCovered, None));
    // A fireplace compared with no rule at all has not been compared.
    let mut bare = point(ApplianceKind::MasonryFireplace, 10.0, 5000.0);
    bare.rules.clear();
    assert_eq!(mantel_clearance(&bare).expect("allowed").outcome, Outcome::NotDetermined);
}

#[test]
fn of_a_chart_the_larger_neighbour_holds_and_nothing_beyond_its_end() {
    let mut input = point(ApplianceKind::GasUnit, 75.0, 250.0);
    input.appliance.listing = Some(chart(&[(50.0, 200.0), (100.0, 300.0)], ListingDatum::TopOfOpening));
    let found = mantel_clearance(&input).expect("allowed");
    let listing = found.listing.expect("given");
    assert_eq!((listing.least_height_mm, listing.outcome), (Some(300.0), Outcome::NotMet));
    assert_eq!(found.outcome, Outcome::NotMet);
    input.projection_mm = 50.0;
    assert_eq!(mantel_clearance(&input).expect("allowed").outcome, Outcome::Met);
    input.projection_mm = 101.0;
    assert_eq!(mantel_clearance(&input).expect("allowed").outcome, Outcome::NotDetermined);
    // Measured from somewhere else, the height must be given.
    input.projection_mm = 50.0;
    input.appliance.listing = Some(chart(&[(50.0, 200.0)], ListingDatum::BaseOfAppliance));
    assert_eq!(mantel_clearance(&input).expect("allowed").outcome, Outcome::NotDetermined);
    input.height_above_datum_mm = Some(199.0);
    assert_eq!(mantel_clearance(&input).expect("allowed").outcome, Outcome::NotMet);
    input.side = OpeningSide::Beside;
    assert_eq!(mantel_clearance(&input).expect("allowed").outcome, Outcome::NotDetermined);
}

#[test]
fn no_answer_claims_more_than_a_comparison_and_each_carries_the_caution() {
    for (projection, distance) in [(10.0, 152.4), (10.0, 500.0), (200.0, 200.0)] {
        let found = masonry(projection, distance);
        assert_eq!(found.cautions, [CautionText::from(Caution::Fire)]);
        for text in found.answers.iter().map(|answer| answer.remark.to_lowercase()) {
            assert!(!["safe", "complian", "approved"].iter().any(|word| text.contains(word)), "{text}");
        }
    }
}

#[test]
fn faults_are_named_with_their_paths() {
    let mut input = point(ApplianceKind::ListedUnit, f64::NAN, 10.0);
    input.appliance.listing = Some(chart(&[(100.0, 1.0), (50.0, -1.0)], ListingDatum::TopOfOpening));
    input.rules = vec![MantelRule::IrcSlope, MantelRule::IrcSlope];
    let faults = mantel_clearance(&input).expect_err("refused");
    let paths: Vec<_> = faults.details().iter().map(|detail| detail.path.as_str()).collect();
    let wanted = [
        "projection_mm",
        "appliance.listing.steps[1].least_height_mm",
        "appliance.listing.steps[1].depth_mm",
        "rules[1]",
    ];
    assert_eq!(paths, wanted);
}

proptest! {
    #[test]
    fn the_distance_and_the_projection_of_a_rule_are_inverse_to_each_other(
        p in 0.0..400.0_f64, d in 0.0..600.0_f64, beside in any::<bool>(),
    ) {
        let mut input = point(ApplianceKind::MasonryFireplace, p, d);
        input.side = if beside { OpeningSide::Beside } else { OpeningSide::Above };
        for answer in mantel_clearance(&input).expect("allowed").answers {
            let allowed = match answer.projection_limit.expect("applies") {
                ProjectionLimit::Nothing => false,
                ProjectionLimit::UpTo => p <= answer.greatest_projection_mm.expect("given"),
                ProjectionLimit::NoneByThisRule => true,
            };
            // Random points do not fall within a rounding of the boundary.
            prop_assert_eq!(allowed, answer.outcome == Outcome::Met, "{:?}", answer);
        }
    }

    #[test]
    fn farther_away_or_standing_out_less_is_never_worse(
        p in 0.0..400.0_f64, d in 0.0..600.0_f64, more in 0.0..200.0_f64,
    ) {
        let base = masonry(p, d);
        let (farther, deeper) = (masonry(p, d + more), masonry(p + more, d));
        for k in 0..base.answers.len() {
            let margin = |found: &MantelClearance| found.answers[k].margin_mm.expect("applies");
            prop_assert!(margin(&farther) >= margin(&base));
            prop_assert!(margin(&deeper) <= margin(&base));
        }
    }

    #[test]
    fn hostile_numbers_are_refused_or_give_finite_results(
        p in hostile(), d in hostile(), height in hostile(), steps in proptest::collection::vec((hostile(), hostile()), 0..4),
    ) {
        let mut input = point(ApplianceKind::GasUnit, p, d);
        input.height_above_datum_mm = Some(height);
        if !steps.is_empty() {
            input.appliance.listing = Some(chart(&steps, ListingDatum::TopOfAppliance));
        }
        if let Ok(found) = mantel_clearance(&input) {
            prop_assert!(found.listing.is_none_or(|listing| listing.margin_mm.is_none_or(f64::is_finite)));
        }
        input.appliance = Appliance { kind: ApplianceKind::MasonryFireplace, listing: None };
        if let Ok(found) = mantel_clearance(&input) {
            prop_assert!(found.answers.iter().all(|answer| answer.margin_mm.is_some_and(f64::is_finite)));
        }
    }
}
