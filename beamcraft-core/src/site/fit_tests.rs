use super::*;
use crate::setting::{BackingKind, MeasuredStuds, SpacedStuds, StudLayout, StudWood, WallStation};
use crate::statics::test_inputs::hostile;
use proptest::prelude::*;

fn survey(stations: &[(f64, f64)], lean_mm_per_m: f64) -> WallSurvey {
    let station = |(along_mm, behind_mm): &(f64, f64)| WallStation { along_mm: *along_mm, behind_mm: *behind_mm };
    WallSurvey {
        face: WallFace::Gypsum,
        stations: stations.iter().map(station).collect(),
        lean_mm_per_m,
        left_wall: None,
        right_wall: None,
        narrowest_way_in_mm: None,
        backing: vec![],
    }
}

fn half() -> WallHalfPlace {
    WallHalfPlace {
        wall: Wall {
            studs: StudLayout::Measured(MeasuredStuds { centres_mm: vec![200.0, 800.0, 1400.0] }),
            stud_width_mm: 38.0,
            stud_depth_mm: 89.0,
            stud_wood: StudWood::default(),
            lining_thickness_mm: 12.5,
        },
        left_mm: 100.0,
        right_mm: 1500.0,
        screw_line_mm: 1400.0,
        thickness_mm: 18.0,
        screw_length_mm: 80.0,
        wanted_reach_mm: 45.0,
    }
}

fn example() -> SiteFitInput {
    SiteFitInput {
        place: BodyPlace { left_end_mm: 0.0, bottom_above_floor_mm: 1300.0 },
        body_length_mm: 1600.0,
        body_height_mm: 200.0,
        body_depth_mm: 200.0,
        left_end_deg: 90.0,
        right_end_deg: 90.0,
        survey: Some(survey(&[(0.0, 5.0), (800.0, 0.0), (1600.0, 10.0)], 0.0)),
        wall_half: Some(half()),
        things: vec![],
        opening: None,
    }
}

fn thing(kind: ThingKind, left_mm: f64, right_mm: f64, bottom_mm: f64, top_mm: f64, projection_mm: f64) -> Obstruction {
    Obstruction { name: "thing".to_owned(), kind, left_mm, right_mm, bottom_mm, top_mm, projection_mm }
}

#[test]
fn packing_fills_the_hollows_and_shortens_the_reach() {
    let fit = site_fit(&example()).unwrap();
    // The face stands out most at 800; at 200 it lies 3.75 mm behind, at 1400 7.5 mm.
    let packing: Vec<_> = fit.packing.iter().map(|stud| stud.packing_mm).collect();
    assert_eq!(packing, [3.75, 0.0, 7.5]);
    // 80 - 18 - 12.5 = 49.5 mm without packing.
    let reach: Vec<_> = fit.packing.iter().map(|stud| stud.reach_mm).collect();
    assert_eq!(reach, [45.75, 49.5, 42.0]);
    assert_eq!(fit.packing[2].longer_by_mm, 3.0);
    assert_eq!(fit.findings[0].code, FindingCode::ScrewTooShort);
    assert_eq!(fit.foot_spacer_mm, 0.0);
}

#[test]
fn a_lean_wants_packing_above_or_a_spacer_below() {
    let mut input = example();
    input.survey = Some(survey(&[], 20.0));
    let back = site_fit(&input).unwrap();
    assert!(back.packing.iter().all(|stud| (stud.packing_mm - 2.0).abs() < 1e-12));
    assert_eq!(back.foot_spacer_mm, 0.0);
    // The upper back edge stands 4 mm off the wall, 200 mm up.
    assert!((back.scribe[0].upper_gap_mm - 4.0).abs() < 1e-12 && back.scribe[0].lower_gap_mm == 0.0);
    input.survey = Some(survey(&[], -20.0));
    let front = site_fit(&input).unwrap();
    assert!(front.packing.iter().all(|stud| stud.packing_mm == 0.0));
    assert!((front.foot_spacer_mm - 2.0).abs() < 1e-12);
    assert!((front.scribe[1].lower_gap_mm - 4.0).abs() < 1e-12 && front.scribe[1].upper_gap_mm == 0.0);
    input.survey = Some(survey(&[(0.0, 7.0)], 0.0));
    assert!(site_fit(&input).unwrap().scribe.is_empty(), "an even wall leaves nothing to scribe");
}

#[test]
fn side_walls_out_of_square_ask_for_ends_of_their_angle() {
    let mut input = example();
    let mut walls = survey(&[], 0.0);
    // Splayed 3 degrees in plan: the front is narrower on the left, wider on the right.
    walls.left_wall = Some(SideWall { corner_at_mm: -20.0, corner_deg: 87.0 });
    walls.right_wall = Some(SideWall { corner_at_mm: 1605.0, corner_deg: 93.0 });
    input.survey = Some(walls);
    let fit = site_fit(&input).unwrap();
    let (left, right) = (fit.left_gap.unwrap(), fit.right_gap.unwrap());
    let splay = 200.0 * 0.052_407_779_283_041_2; // tan 3 degrees
    assert!((left.back_mm - 20.0).abs() < 1e-9 && (left.front_mm - (20.0 - splay)).abs() < 1e-9, "{left:?}");
    assert!((right.back_mm - 5.0).abs() < 1e-9 && (right.front_mm - (5.0 + splay)).abs() < 1e-9, "{right:?}");
    assert_eq!((left.fitting_end_deg, right.fitting_end_deg), (93.0, 87.0));
    // Ends of those angles leave the same gap all along.
    (input.left_end_deg, input.right_end_deg) = (93.0, 87.0);
    let fit = site_fit(&input).unwrap();
    let (left, right) = (fit.left_gap.unwrap(), fit.right_gap.unwrap());
    assert!((left.back_mm - left.front_mm).abs() < 1e-9 && (right.back_mm - right.front_mm).abs() < 1e-9);
    input.body_length_mm = 1620.0;
    let stop = site_fit(&input).unwrap().findings.remove(0);
    assert_eq!((stop.grade, stop.subject.as_str()), (Grade::Stop, "right_end"));
}

#[test]
fn the_way_in_is_for_the_longest_side() {
    let mut input = example();
    input.left_end_deg = 100.0;
    let mut narrow = survey(&[], 0.0);
    narrow.narrowest_way_in_mm = Some(1630.0);
    input.survey = Some(narrow);
    let way = site_fit(&input).unwrap().way_in.unwrap();
    // 1600 + 200 tan 10 degrees.
    assert!((way.longest_mm - 1_635.265_396_141_692_8).abs() < 1e-9 && way.outcome == Outcome::NotMet);
    let squares = way.swing_flat_mm * way.swing_flat_mm - way.longest_mm * way.longest_mm;
    assert!((squares - 40_000.0).abs() < 1e-6);
    input.left_end_deg = 80.0;
    assert_eq!(site_fit(&input).unwrap().way_in.unwrap().outcome, Outcome::Met);
}

#[test]
fn things_are_met_cleared_or_covered() {
    let mut input = example();
    input.things = vec![
        thing(ThingKind::BoxedDuct, 400.0, 600.0, 1540.0, 2400.0, 90.0),
        thing(ThingKind::Casing, 1630.0, 1700.0, 0.0, 1260.0, 20.0),
        thing(ThingKind::Moulding, -100.0, 30.0, 1400.0, 1450.0, 15.0),
        thing(ThingKind::Outlet, 700.0, 780.0, 1350.0, 1430.0, 0.0),
        thing(ThingKind::Television, 300.0, 1300.0, 1700.0, 2300.0, 60.0),
    ];
    let fit = site_fit(&input).unwrap();
    let distances: Vec<_> = fit.things.iter().map(|gap| gap.distance_mm).collect();
    // The casing lies 30 mm aside and 40 mm below: 50 mm away.
    assert_eq!(distances, [40.0, 50.0, 0.0, 0.0, 200.0]);
    let found: Vec<_> = fit.findings.iter().map(|finding| (finding.grade, finding.code)).collect();
    let wanted = [
        (Grade::Stop, FindingCode::MeetsObstruction),
        (Grade::Stop, FindingCode::ScrewTooShort),
        (Grade::Caution, FindingCode::NeedsSpecialist),
        (Grade::Note, FindingCode::NeedsSpecialist),
    ];
    assert_eq!(found, wanted);
    assert_eq!(fit.findings[0].numbers[1].value, 30.0);
    assert_eq!(fit.cautions.len(), 2);
}

#[test]
fn a_body_before_the_opening_is_a_stop_and_stone_wants_a_template() {
    let mut input = example();
    input.opening = Some(FireOpening { left_mm: 300.0, width_mm: 800.0, top_above_floor_mm: 1310.0, face_out_mm: 0.0 });
    let mut stone = survey(&[(0.0, 0.0), (1600.0, 8.0)], 0.0);
    stone.face = WallFace::Stone;
    input.survey = Some(stone);
    let found = site_fit(&input).unwrap().findings;
    assert_eq!(found[0].subject, "opening");
    assert!(found.iter().any(|finding| finding.code == FindingCode::UnevenWall && finding.cure.contains("template")));
}

#[test]
fn blocking_is_used_where_the_screw_line_meets_it() {
    let mut input = example();
    let backing = |bottom_mm, top_mm, left_mm| Backing {
        name: "blocking".to_owned(),
        kind: BackingKind::Blocking,
        left_mm,
        right_mm: 2000.0,
        bottom_mm,
        top_mm,
        thickness_mm: 38.0,
    };
    let mut survey = survey(&[], 0.0);
    survey.backing =
        vec![backing(1350.0, 1490.0, 300.0), backing(1410.0, 1490.0, 300.0), backing(1350.0, 1490.0, 1600.0)];
    input.survey = Some(survey);
    let spans = site_fit(&input).unwrap().backing;
    assert_eq!((spans[0].from_mm, spans[0].to_mm, spans[0].edge_mm), (300.0, 1500.0, 50.0));
    assert_eq!(
        spans.iter().map(|span| span.outcome).collect::<Vec<_>>(),
        [Outcome::Met, Outcome::NotMet, Outcome::NotMet]
    );
}

#[test]
fn every_fault_is_named_with_its_path() {
    let mut input = example();
    input.body_length_mm = -1.0;
    input.survey.as_mut().unwrap().lean_mm_per_m = f64::NAN;
    input.wall_half.as_mut().unwrap().right_mm = 0.0;
    input.wall_half.as_mut().unwrap().wall.stud_width_mm = 0.0;
    input.things = vec![thing(ThingKind::Other, 10.0, 0.0, 0.0, 1.0, 1.0)];
    let faults = site_fit(&input).expect_err("refused");
    let paths: Vec<_> = faults.details().iter().map(|detail| detail.path.as_str()).collect();
    let wanted = [
        "body_length_mm",
        "survey.lean_mm_per_m",
        "wall_half.wall.stud_width_mm",
        "wall_half.right_mm",
        "things[0].right_mm",
    ];
    assert_eq!(paths, wanted);
}

proptest! {
    #[test]
    fn the_scribed_edge_touches_the_wall_everywhere_and_is_cut_no_more_than_it_must(
        offsets in proptest::collection::vec(-30.0..30.0_f64, 1..8), lean in -50.0..50.0_f64,
    ) {
        let stations: Vec<_> = offsets.iter().enumerate().map(|(k, w)| (250.0 * k as f64 - 100.0, *w)).collect();
        let mut input = example();
        input.survey = Some(survey(&stations, lean));
        let fit = site_fit(&input).unwrap();
        for station in &fit.scribe {
            for (gap, cut) in [(station.lower_gap_mm, station.lower_cut_mm), (station.upper_gap_mm, station.upper_cut_mm)] {
                prop_assert!(gap >= -1e-9 && cut >= -1e-9);
                prop_assert!((gap + cut - fit.scribe_allowance_mm).abs() < 1e-9);
            }
        }
        let least = fit.scribe.iter().map(|one| one.lower_gap_mm.min(one.upper_gap_mm)).fold(f64::MAX, f64::min);
        prop_assert!(fit.scribe.is_empty() || least.abs() < 1e-9);
        // A straight wall half packed at the studs lies before the wall everywhere.
        let plumb = (lean * 0.1).max(0.0);
        for stud in &fit.packing {
            prop_assert!(stud.packing_mm >= plumb - 1e-9);
        }
    }

    #[test]
    fn shifting_the_plumb_line_changes_nothing(by in -5000.0..5000.0_f64) {
        let mut input = example();
        input.things = vec![thing(ThingKind::Casing, 1630.0, 1700.0, 0.0, 1260.0, 20.0)];
        let fit = site_fit(&input).unwrap();
        input.place.left_end_mm += by;
        for station in &mut input.survey.as_mut().unwrap().stations {
            station.along_mm += by;
        }
        let half = input.wall_half.as_mut().unwrap();
        (half.left_mm, half.right_mm) = (half.left_mm + by, half.right_mm + by);
        half.wall.studs = StudLayout::Spaced(SpacedStuds { first_mm: 200.0 + by, spacing_mm: 600.0 });
        (input.things[0].left_mm, input.things[0].right_mm) = (1630.0 + by, 1700.0 + by);
        let moved = site_fit(&input).unwrap();
        prop_assert!((fit.things[0].distance_mm - moved.things[0].distance_mm).abs() < 1e-9);
        for (one, other) in fit.packing.iter().zip(&moved.packing) {
            prop_assert!((one.packing_mm - other.packing_mm).abs() < 1e-9);
        }
    }

    #[test]
    fn hostile_numbers_are_refused_or_give_finite_results(
        numbers in proptest::collection::vec(hostile(), 12), k in 0_usize..12,
    ) {
        let mut input = example();
        input.things = vec![thing(ThingKind::Other, 0.0, 10.0, 0.0, 1.0, 1.0)];
        let mut survey = survey(&[(0.0, 1.0), (numbers[0], numbers[1])], 0.0);
        let other = (k * 5 + 3) % 12;
        for at in [k, other] {
            let value = numbers[at];
            match at {
                0 | 1 => survey.left_wall = Some(SideWall { corner_at_mm: numbers[0], corner_deg: numbers[1] }),
                2 => survey.lean_mm_per_m = value,
                3 => survey.narrowest_way_in_mm = Some(value),
                4 => input.body_length_mm = value,
                5 => input.place.left_end_mm = value,
                6 => input.left_end_deg = value,
                7 => input.wall_half.as_mut().unwrap().screw_line_mm = value,
                8 => input.wall_half.as_mut().unwrap().left_mm = value,
                9 => input.things[0].left_mm = value,
                10 => input.things[0].top_mm = value,
                _ => survey.stations.truncate(1),
            }
        }
        if k > 3 {
            survey.stations.truncate(1);
        }
        input.survey = Some(survey);
        if let Ok(fit) = site_fit(&input) {
            prop_assert!(fit.scribe_allowance_mm.is_finite() && fit.foot_spacer_mm.is_finite());
            #[cfg(feature = "json")]
            prop_assert!(crate::json::write(&fit).is_ok());
        }
    }
}
