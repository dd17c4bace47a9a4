use super::*;
use crate::numeric::bracketed_root;
use crate::setting::{ListingChart, ListingStep};
use crate::site::rules::{LeastDistance, SlopeDistance, StepDistance};
use crate::site::{MantelClearanceInput, mantel_clearance};
use crate::statics::test_inputs::hostile;
use proptest::prelude::*;

const OPENING: FireOpening = FireOpening { left_mm: 0.0, width_mm: 900.0, top_above_floor_mm: 800.0, face_out_mm: 0.0 };

fn part(left_mm: f64, right_mm: f64, corners: &[(f64, f64)]) -> OutlinePart {
    let point = |(out_mm, above_mm): &(f64, f64)| OutlinePoint { out_mm: *out_mm, above_floor_mm: 800.0 + above_mm };
    OutlinePart { name: "beam".to_owned(), left_mm, right_mm, outline: corners.iter().map(point).collect() }
}

/// A rectangular body over the opening.
fn plain(depth_mm: f64, above_mm: f64) -> OutlinePart {
    let top = above_mm + 150.0;
    part(-300.0, 1200.0, &[(0.0, above_mm), (depth_mm, above_mm), (depth_mm, top), (0.0, top)])
}

fn input(part: OutlinePart, rules: &[MantelRule]) -> BodyClearanceInput {
    BodyClearanceInput {
        parts: vec![part],
        opening: OPENING,
        appliance: Appliance { kind: ApplianceKind::MasonryFireplace, listing: None },
        chart_datum_above_floor_mm: None,
        rules: rules.to_vec(),
        own_rules: vec![],
    }
}

const ALL: [MantelRule; 3] = [MantelRule::IrcSlope, MantelRule::Nfpa211Step, MantelRule::NbcStep];

fn own(name: &str, form: ClearanceForm) -> OwnClearanceRule {
    let text = |text: &str| text.to_owned();
    OwnClearanceRule {
        name: text(name),
        jurisdiction: text("somewhere"),
        publication: text("a book"),
        edition: text("first"),
        section: text("1"),
        form,
    }
}

/// The least margin by walking along every side in many small steps: another way to the same number.
fn walked(input: &BodyClearanceInput, form: ClearanceForm) -> f64 {
    let opening = &input.opening;
    let mut least = f64::INFINITY;
    for part in &input.parts {
        let gap = (opening.left_mm - part.right_mm).max(part.left_mm - opening.left_mm - opening.width_mm).max(0.0);
        for (from, to) in part.sides() {
            for k in 0..=4000 {
                let t = f64::from(k) / 4000.0;
                let p = (from.out_mm + t * (to.out_mm - from.out_mm) - opening.face_out_mm).max(0.0);
                let z =
                    from.above_floor_mm + t * (to.above_floor_mm - from.above_floor_mm) - opening.top_above_floor_mm;
                let side = if z >= 0.0 { OpeningSide::Above } else { OpeningSide::Beside };
                let distance = (gap * gap + z.max(0.0) * z.max(0.0)).sqrt();
                least = least.min(distance - form.least_distance(side, p));
            }
        }
    }
    least
}

fn raised(input: &BodyClearanceInput, by_mm: f64) -> BodyClearanceInput {
    let mut moved = input.clone();
    for point in moved.parts.iter_mut().flat_map(|part| &mut part.outline) {
        point.above_floor_mm += by_mm;
    }
    moved
}

fn moved_out(input: &BodyClearanceInput, by_mm: f64) -> BodyClearanceInput {
    let mut moved = input.clone();
    for point in moved.parts.iter_mut().flat_map(|part| &mut part.outline) {
        point.out_mm += by_mm;
    }
    moved
}

#[test]
fn a_plain_body_over_the_opening_is_its_lower_front_edge() {
    for (depth_mm, above_mm) in [(19.0, 160.0), (30.0, 200.0), (38.1, 152.4), (38.2, 152.4), (200.0, 310.0)] {
        let found = body_clearance(&input(plain(depth_mm, above_mm), &ALL)).unwrap();
        let point = mantel_clearance(&MantelClearanceInput {
            projection_mm: depth_mm,
            distance_from_opening_mm: above_mm,
            side: OpeningSide::Above,
            appliance: Appliance { kind: ApplianceKind::MasonryFireplace, listing: None },
            height_above_datum_mm: None,
            rules: ALL.to_vec(),
        })
        .unwrap();
        assert_eq!(found.outcome, point.outcome, "{depth_mm} {above_mm}");
        for (body, point) in found.answers.iter().zip(&point.answers) {
            assert!((body.margin_mm.unwrap() - point.margin_mm.unwrap()).abs() < 1e-9, "{body:?} {point:?}");
            assert_eq!(body.depth_limit, point.projection_limit);
            let same = |one: Option<f64>, two: Option<f64>| one.zip(two).is_none_or(|(a, b)| (a - b).abs() < 1e-9);
            assert!(same(body.greatest_depth_mm, point.greatest_projection_mm), "{body:?} {point:?}");
            assert!((body.least_height_mm.unwrap() - point.least_distance_mm.unwrap()).abs() < 1e-9);
        }
    }
}

#[test]
fn a_step_takes_effect_at_its_limit() {
    let rule = [MantelRule::NbcStep];
    let at = |depth_mm| body_clearance(&input(plain(depth_mm, 200.0), &rule)).unwrap();
    assert_eq!(at(38.0).outcome, Outcome::Met);
    let over = at(38.001);
    assert_eq!((over.outcome, over.answers[0].required_mm), (Outcome::NotMet, Some(300.0)));
    assert_eq!(over.answers[0].greatest_depth_mm, Some(38.0));
    // A moulding under the beam that stands out less than the threshold counts by the smaller distance.
    let corbel =
        part(0.0, 900.0, &[(0.0, 160.0), (38.0, 160.0), (38.0, 300.0), (200.0, 300.0), (200.0, 450.0), (0.0, 450.0)]);
    let found = body_clearance(&input(corbel, &rule)).unwrap();
    assert_eq!(found.outcome, Outcome::Met);
    // A taper that runs through the threshold needs the greater distance at the very place where it does.
    let taper = part(0.0, 900.0, &[(0.0, 160.0), (100.0, 400.0), (0.0, 400.0)]);
    let found = body_clearance(&input(taper, &rule)).unwrap();
    let point = found.answers[0].point.as_ref().unwrap();
    assert!((point.projection_mm - 38.0).abs() < 1e-5 && (point.above_opening_mm - 251.2).abs() < 1e-4);
}

#[test]
fn a_leg_beside_the_opening_is_measured_sideways() {
    // A leg from the floor to above the opening, 160 mm beside it, standing out 50 mm.
    let leg = part(1060.0, 1200.0, &[(0.0, -800.0), (50.0, -800.0), (50.0, 300.0), (0.0, 300.0)]);
    let found = body_clearance(&input(leg, &ALL)).unwrap();
    let [irc, _, nbc] = found.answers.as_slice() else { panic!("three answers") };
    assert_eq!((irc.required_mm, irc.actual_mm), (Some(304.8), Some(160.0)));
    assert_eq!(irc.greatest_depth_mm, Some(20.0));
    // The step counts above the top only, and there the leg is nearer than 300 mm.
    assert_eq!((nbc.required_mm, nbc.actual_mm), (Some(300.0), Some(160.0)));
    assert_eq!(nbc.point.as_ref().unwrap().side, OpeningSide::Above);
}

#[test]
fn what_stands_before_the_opening_is_at_no_distance_at_all() {
    let low = part(100.0, 200.0, &[(0.0, -100.0), (10.0, -100.0), (10.0, -50.0), (0.0, -50.0)]);
    let found = body_clearance(&input(low, &ALL)).unwrap();
    assert!(found.answers.iter().all(|answer| answer.actual_mm == Some(0.0)));
    assert!(found.answers.iter().all(|answer| answer.depth_limit == Some(ProjectionLimit::Nothing)));
    // Raised to where its lowest point clears the least distance it would do.
    assert_eq!(found.answers[2].least_height_mm, Some(150.0));
}

#[test]
fn own_rules_are_compared_like_those_of_the_table() {
    let mut asked = input(plain(200.0, 700.0), &[]);
    asked.own_rules = vec![
        own("eight hundred", ClearanceForm::AtLeast(LeastDistance { least_mm: 800.0 })),
        own("half", ClearanceForm::Slope(SlopeDistance { least_mm: 100.0, zone_mm: 1000.0, ratio: 2.0 })),
    ];
    let found = body_clearance(&asked).unwrap();
    assert_eq!((found.governing.as_deref(), found.least_margin_mm), (Some("eight hundred"), Some(-100.0)));
    assert_eq!((found.answers[0].evidence, found.answers[0].depth_limit), (None, Some(ProjectionLimit::Nothing)));
    assert_eq!((found.answers[1].greatest_depth_mm, found.answers[1].least_height_mm), (Some(350.0), Some(400.0)));
    let raise = found.findings[0].numbers.iter().find(|number| number.name == "raise by").unwrap();
    assert!((raise.value - 100.0).abs() < 1e-9);
}

#[test]
fn without_a_listing_or_a_rule_nothing_passes() {
    for kind in [ApplianceKind::ListedUnit, ApplianceKind::GasUnit, ApplianceKind::ElectricUnit] {
        let mut asked = input(plain(10.0, 3000.0), &ALL);
        asked.appliance.kind = kind;
        let found = body_clearance(&asked).unwrap();
        assert_eq!((found.outcome, found.governing), (Outcome::NotDetermined, None));
        assert!(found.answers.iter().all(|answer| answer.outcome == Outcome::NotCovered && answer.curve.is_empty()));
        assert_eq!(found.cautions, [CautionText::from(Caution::Fire)]);
    }
    let bare = body_clearance(&input(plain(10.0, 3000.0), &[])).unwrap();
    assert_eq!((bare.outcome, bare.findings.len()), (Outcome::NotDetermined, 1));
}

#[test]
fn a_chart_is_read_for_the_depth_at_the_lowest_point_above_its_datum() {
    let mut asked = input(plain(120.0, 300.0), &[]);
    let steps = vec![ListingStep { depth_mm: 150.0, least_height_mm: 1000.0 }];
    asked.appliance.listing = Some(ListingChart { datum: ListingDatum::BaseOfAppliance, steps });
    assert_eq!(body_clearance(&asked).unwrap().outcome, Outcome::NotDetermined);
    // The body's underside hangs 1100 mm above the floor.
    asked.chart_datum_above_floor_mm = Some(100.0);
    let found = body_clearance(&asked).unwrap();
    assert_eq!((found.outcome, found.listing.unwrap().margin_mm), (Outcome::Met, Some(0.0)));
    assert_eq!(found.governing.as_deref(), Some("appliance's chart"));
    asked.chart_datum_above_floor_mm = Some(101.0);
    assert_eq!(body_clearance(&asked).unwrap().outcome, Outcome::NotMet);
}

#[test]
fn every_fault_is_named_with_its_path() {
    let mut asked = input(plain(120.0, f64::NAN), &[MantelRule::IrcSlope, MantelRule::IrcSlope]);
    asked.parts[0].right_mm = -400.0;
    asked.own_rules = vec![
        own("a", ClearanceForm::Step(StepDistance { least_mm: 2.0, threshold_mm: 1.0, far_mm: 1.0 })),
        own("a", ALL[0].row().unwrap().form),
    ];
    asked.own_rules[1].section.clear();
    let faults = body_clearance(&asked).expect_err("refused");
    let paths: Vec<_> = faults.details().iter().map(|detail| detail.path.as_str()).collect();
    let wanted = [
        "parts[0].right_mm",
        "parts[0].outline[0].above_floor_mm",
        "parts[0].outline[1].above_floor_mm",
        "parts[0].outline[2].above_floor_mm",
        "parts[0].outline[3].above_floor_mm",
        "rules[1]",
        "own_rules[1]",
        "own_rules[0].form.step.far_mm",
        "own_rules[1].section",
    ];
    assert_eq!(paths, wanted);
    asked = input(plain(1.0, 1.0), &ALL);
    asked.parts[0].outline.truncate(2);
    assert_eq!(body_clearance(&asked).expect_err("refused").field(), "parts[0].outline");
    asked.parts.clear();
    assert_eq!(body_clearance(&asked).expect_err("refused").field(), "parts");
}

fn corners() -> impl Strategy<Value = Vec<(f64, f64)>> {
    proptest::collection::vec((0.0..400.0_f64, -100.0..500.0_f64), 3..7)
}

fn any_form() -> impl Strategy<Value = ClearanceForm> {
    let least = 10.0..300.0_f64;
    prop_oneof![
        least.clone().prop_map(|least_mm| ClearanceForm::AtLeast(LeastDistance { least_mm })),
        (least.clone(), 0.0..400.0_f64, 0.5..10.0_f64).prop_map(|(least_mm, more, ratio)| {
            ClearanceForm::Slope(SlopeDistance { least_mm, zone_mm: least_mm + more, ratio })
        }),
        (least, 0.0..200.0_f64, 0.0..400.0_f64).prop_map(|(least_mm, threshold_mm, more)| {
            ClearanceForm::Step(StepDistance { least_mm, threshold_mm, far_mm: least_mm + more })
        }),
    ]
}

fn margin_of(input: &BodyClearanceInput) -> f64 {
    body_clearance(input).unwrap().answers[0].margin_mm.unwrap()
}

proptest! {
    #[test]
    fn the_margin_is_that_of_a_walk_along_the_outline(
        corners in corners(), form in any_form(), left in -800.0..1600.0_f64,
    ) {
        let mut asked = input(part(left, left + 300.0, &corners), &[]);
        asked.own_rules = vec![own("own", form)];
        let (exact, walked) = (margin_of(&asked), walked(&asked, form));
        // A walk in steps never finds less; a slope changes by at most its ratio in a step, a jump is met within one.
        prop_assert!(exact <= walked + 1e-9, "{exact} {walked}");
        let step = 700.0 / 4000.0;
        prop_assert!(exact >= walked - 12.0 * step, "{exact} {walked}");
    }

    #[test]
    fn the_least_height_is_where_a_bracket_finds_no_margin(
        corners in corners(), form in any_form(), left in -800.0..1600.0_f64,
    ) {
        let mut asked = input(part(left, left + 300.0, &corners), &[]);
        asked.own_rules = vec![own("own", form)];
        let found = body_clearance(&asked).unwrap();
        let least = found.answers[0].least_height_mm.unwrap();
        // Margins of the body with its lowest point at a height above the opening.
        let at = |height: f64| margin_of(&raised(&asked, height - found.lowest_mm));
        prop_assert!(at(least + 1e-6) >= -1e-6, "{}", at(least));
        if least > 1e-3 {
            prop_assert!(at(least - 1e-3) < 0.0);
            let bracketed = bracketed_root(|height| at(height) - 1e-9, 0.0, 2000.0);
            if let Some(root) = bracketed {
                prop_assert!((root - least).abs() < 1e-3, "{root} {least}");
            }
        }
        // The curve passes through it.
        let here = found.answers[0].curve.iter().find(|point| point.depth_mm == found.depth_mm).unwrap();
        prop_assert!((here.least_height_mm - least).abs() < 1e-6);
        prop_assert!(found.answers[0].curve.windows(2).all(|pair| pair[0].least_height_mm <= pair[1].least_height_mm + 1e-6));
    }

    #[test]
    fn the_greatest_depth_is_where_the_margin_ends(
        corners in corners(), form in any_form(), left in -800.0..1600.0_f64,
    ) {
        let mut asked = input(part(left, left + 300.0, &corners), &[]);
        asked.own_rules = vec![own("own", form)];
        let found = body_clearance(&asked).unwrap();
        let answer = &found.answers[0];
        let with_depth = |depth: f64| margin_of(&moved_out(&asked, depth - found.depth_mm));
        match answer.depth_limit.unwrap() {
            ProjectionLimit::Nothing => prop_assert!(with_depth(0.0) < 0.0),
            ProjectionLimit::NoneByThisRule => prop_assert!(with_depth(5000.0) >= 0.0),
            ProjectionLimit::UpTo => {
                let most = answer.greatest_depth_mm.unwrap();
                prop_assert!(with_depth((most - 1e-4).max(0.0)) >= 0.0, "{most} {}", with_depth(most));
                prop_assert!(with_depth(most + 1e-3) < 0.0, "{most}");
            }
        }
    }

    #[test]
    fn hostile_numbers_are_refused_or_give_finite_results(
        numbers in proptest::collection::vec(hostile(), 12), k in 0_usize..12, form in 0_usize..3,
    ) {
        let mut asked = input(plain(200.0, 200.0), &ALL);
        let other = (k * 5 + 3) % 12;
        let mut form = ALL[form].row().unwrap().form;
        for at in [k, other] {
            let value = numbers[at];
            match at {
                0 => asked.parts[0].left_mm = value,
                1 => asked.parts[0].right_mm = value,
                2 => asked.parts[0].outline[0].out_mm = value,
                3 => asked.parts[0].outline[1].above_floor_mm = value,
                4 => asked.opening.left_mm = value,
                5 => asked.opening.width_mm = value,
                6 => asked.opening.top_above_floor_mm = value,
                7 => asked.opening.face_out_mm = value,
                8 => asked.chart_datum_above_floor_mm = Some(value),
                9 => form = ClearanceForm::Slope(SlopeDistance { least_mm: 10.0, zone_mm: 20.0, ratio: value }),
                10 => form = ClearanceForm::Slope(SlopeDistance { least_mm: value, zone_mm: numbers[0], ratio: 8.0 }),
                _ => form = ClearanceForm::Step(StepDistance { least_mm: 1.0, threshold_mm: value, far_mm: numbers[1] }),
            }
        }
        asked.own_rules = vec![own("own", form)];
        if let Ok(found) = body_clearance(&asked) {
            prop_assert!(found.least_margin_mm.unwrap().is_finite());
            #[cfg(feature = "json")]
            prop_assert!(crate::json::write(&found).is_ok());
        }
    }
}
