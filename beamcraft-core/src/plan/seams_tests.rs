//! The seasons, the saw and woods by numbers within a plan.

use proptest::prelude::*;

use super::{AccuracySpec, BeamSpec, Plan, ReturnFixing, SeasonClimate, plan};
use crate::error::{Error, ErrorCode};
use crate::finding::{FindingCode, Grade};
use crate::json::{read, write};
use crate::movement::{BoardCut, SeamOpening};
use crate::tolerance::{SeamHold, TiltSetting};
use crate::verdict::Outcome;
use crate::wood::{Species, WoodFigures};

const ASH: &str = include_str!("../../examples/specs/ash_shelf_beam.json");
const WALNUT: &str = include_str!("../../examples/specs/walnut_beam.json");

/// A spec of the examples, with as few samples as a test needs.
fn spec(text: &str) -> BeamSpec {
    let mut spec: BeamSpec = read(text).unwrap();
    spec.accuracy.iter_mut().for_each(|accuracy| accuracy.samples = 2_000);
    spec
}

fn planned(text: &str, change: impl FnOnce(&mut BeamSpec)) -> Plan {
    let mut spec = spec(text);
    change(&mut spec);
    plan(&spec).unwrap()
}

fn refused(change: impl FnOnce(&mut BeamSpec)) -> Error {
    let mut spec = spec(ASH);
    change(&mut spec);
    plan(&spec).expect_err("must be refused")
}

fn figures_of(species: &Species) -> WoodFigures {
    WoodFigures {
        density_12_kg_m3: species.density(12.0).unwrap().density_kg_m3,
        group: Some(species.group),
        movement_radial_per_pct: Some(species.movement_radial_per_pct),
        movement_tangential_per_pct: Some(species.movement_tangential_per_pct),
        shrinkage_radial_pct: species.shrinkage_radial_pct,
        shrinkage_tangential_pct: species.shrinkage_tangential_pct,
        shrinkage_volumetric_pct: species.shrinkage_volumetric_pct,
        fibre_saturation_pct: species.fibre_saturation_pct,
        modulus_of_elasticity_mpa: Some(species.modulus_of_elasticity_mpa),
        modulus_of_rupture_mpa: Some(species.modulus_of_rupture_mpa),
        shear_parallel_mpa: species.shear_parallel_mpa,
        compression_perpendicular_mpa: species.compression_perpendicular_mpa,
        source: "a test".to_owned(),
    }
}

#[test]
fn the_walnut_beam_moves_as_worked_by_hand() {
    let movement = planned(WALNUT, |_| ()).movement.unwrap();
    // Table 13-5: 0.00274 tangential, 0.00190 radial; 8 % to 6 % and to 11 %.
    let (dry, wet) = (&movement.outer.driest, &movement.outer.wettest);
    assert!((dry.height_change_mm + 184.15 * 0.00274 * 2.0).abs() < 1e-9);
    assert!((wet.depth_change_mm - 241.3 * 0.00274 * 3.0).abs() < 1e-9);
    // The long seam: both boards across the grain; sin 90° (ε_t − ε_w) to first order, opening 20.6375 √2 times that.
    let long = movement.seams.iter().find(|seam| seam.seam.to_string() == "front|top").unwrap();
    let wedge = (0.00274 - 0.00190) * 2.0;
    assert_eq!(long.driest.opens, SeamOpening::Toe);
    assert!((long.show_opening_mm - 20.6375 * 2.0_f64.sqrt() * wedge).abs() < 2e-3, "{}", long.show_opening_mm);
    // The end of the front: along the grain both hardly move, so that swelling thickness opens the show edge.
    let end = movement.seams.iter().find(|seam| seam.seam.to_string() == "front|left_end").unwrap();
    assert_eq!((end.driest.opens, end.wettest.opens), (SeamOpening::Heel, SeamOpening::Toe));
    // Halves of one strip stay closed on one another; drying lets the body sink.
    let cleat = movement.cleat.unwrap();
    assert!(cleat.driest.seat_gap_mm == 0.0 && cleat.driest.body_rise_mm < 0.0 && cleat.wettest.body_rise_mm > 0.0);
}

#[test]
fn a_return_that_is_glued_over_its_depth_fights_and_the_cures_end_it() {
    let fights = |plan: &Plan| {
        plan.findings.iter().filter(|one| one.code == FindingCode::CrossGrainFight).cloned().collect::<Vec<_>>()
    };
    let glued = planned(WALNUT, |_| ());
    let found = fights(&glued);
    assert_eq!((found.len(), found[0].grade), (1, Grade::Stop));
    assert!(found[0].subject.contains("top|left_end") && found[0].cure.contains("slot"));
    assert!(glued.movement.unwrap().rear_slot.is_none());
    let front = planned(WALNUT, |spec| {
        let seasons = spec.seasons.as_mut().unwrap();
        (seasons.returns, seasons.glued_front_mm) = (ReturnFixing::GluedFront, 30.0);
    });
    assert_eq!(fights(&front)[0].grade, Grade::Note);
    let slot = front.movement.unwrap().rear_slot.unwrap();
    // From the middle of the glued part to the wall: 226.3 mm, 2 % down and 3 % up, half a millimetre at each end.
    let (depth, coefficient) = (front.panels[3].show_length_mm, 0.00274);
    assert!((slot.slot_mm - ((depth - 15.0) * coefficient * 5.0 + 4.0 + 1.0)).abs() < 1e-9);
    let free = planned(WALNUT, |spec| spec.seasons.as_mut().unwrap().returns = ReturnFixing::NotGlued);
    assert!(fights(&free).is_empty() && free.movement.unwrap().glue_line.share_of_wood_shear.is_none());
    let open = planned(WALNUT, |spec| {
        let super::LegShape::Rectangular(leg) = &mut spec.body.legs[0];
        for end in [&mut leg.left_end, &mut leg.right_end] {
            end.kind = crate::shell::EndKind::Open;
            end.thickness_mm = None;
        }
    });
    assert!(fights(&open).is_empty() && open.movement.unwrap().returns.is_none());
}

#[test]
fn common_wood_glue_over_a_hearth_is_told_with_the_temperature_or_the_wish_for_it() {
    let told = |plan: &Plan| plan.findings.iter().find(|one| one.code == FindingCode::GlueLine).cloned();
    let measured = told(&planned(ASH, |_| ())).unwrap();
    assert!(measured.numbers.iter().any(|number| number.value == 40.0));
    let unknown = told(&planned(ASH, |spec| spec.seasons.as_mut().unwrap().seam_temperature_c = None)).unwrap();
    assert!(unknown.cure.starts_with("Measure the temperature"));
    let cool = planned(ASH, |spec| {
        spec.seasons.as_mut().unwrap().seam_temperature_c = None;
        spec.site = None;
    });
    assert!(told(&cool).is_none());
}

#[test]
fn quarter_sawn_boards_move_less_and_turn_the_seam_the_other_way() {
    let flat = planned(WALNUT, |_| ()).movement.unwrap();
    let quarter = planned(WALNUT, |spec| spec.seasons.as_mut().unwrap().cut = BoardCut::QuarterSawn).movement.unwrap();
    assert!(quarter.outer.height_range_mm < 0.75 * flat.outer.height_range_mm);
    assert_eq!((flat.seams[0].driest.opens, quarter.seams[0].driest.opens), (SeamOpening::Toe, SeamOpening::Heel));
}

#[test]
fn months_give_the_ends_of_the_year_and_the_curve() {
    let movement = planned(ASH, |_| ()).movement.unwrap();
    let year = movement.year.unwrap();
    assert_eq!(year.panels.len(), 5);
    let moistures: Vec<_> = year.climate.months.iter().map(|month| month.moisture_pct).collect();
    assert_eq!(movement.outer.driest.moisture_pct, moistures.iter().copied().fold(f64::MAX, f64::min));
    assert_eq!(movement.outer.wettest.moisture_pct, moistures.iter().copied().fold(0.0, f64::max));
    // A face at 40 °C lies far below the driest month of the room.
    assert!(movement.warm_face_moisture_pct.unwrap() < movement.outer.driest.moisture_pct - 2.0);
}

#[test]
fn a_still_room_moves_nothing() {
    let plan = planned(WALNUT, |spec| {
        let range = super::MoistureRange { driest_pct: 8.0, wettest_pct: 8.0 };
        spec.seasons.as_mut().unwrap().climate = SeasonClimate::MoistureRange(range);
    });
    let movement = plan.movement.unwrap();
    assert!(movement.seams.iter().all(|seam| seam.show_opening_mm == 0.0 && seam.heel_opening_mm == 0.0));
    assert_eq!((movement.outer.height_range_mm, movement.returns.unwrap().range_mm), (0.0, 0.0));
}

#[test]
fn what_was_not_given_is_said_not_to_be_checked() {
    let plain = planned(ASH, |spec| (spec.seasons, spec.accuracy) = (None, None));
    assert!(plain.movement.is_none() && plain.tolerance.is_none());
    for word in ["seasons", "accuracy"] {
        assert!(plain.not_checked.iter().any(|text| text.contains(word)), "{word}");
        assert!(!planned(ASH, |_| ()).not_checked.iter().any(|text| text.contains(word)), "{word}");
    }
    let cautioned = |plan: &Plan| plan.cautions.iter().any(|caution| caution.about == "held_movement");
    assert!(!cautioned(&plain) && cautioned(&planned(ASH, |_| ())));
}

#[test]
fn every_mitred_seam_is_stacked_once_with_the_errors_that_reach_it() {
    let plan = planned(ASH, |spec| {
        let accuracy = spec.accuracy.as_mut().unwrap();
        (accuracy.width_sd_mm, accuracy.length_sd_mm, accuracy.thickness_sd_mm) = (0.1, 0.1, 0.1);
        (accuracy.bow_sd_mm, accuracy.hold) = (0.1, SeamHold::HeldByShowFaces);
    });
    let tolerance = plan.tolerance.unwrap();
    let names: Vec<_> = tolerance.stack.seams.iter().map(|seam| seam.name.as_str()).collect();
    let eight = ["front|top", "front|bottom", "front|left_end", "front|right_end", "top|left_end", "top|right_end"];
    assert_eq!(names[..6], eight);
    assert_eq!(names.len(), 8);
    let sources: Vec<_> = tolerance.stack.ranking.iter().map(|source| source.source.as_str()).collect();
    // Front and returns are ripped at one fence setting, top and bottom at another; the returns are cut at one stop.
    let widths = sources.iter().filter(|source| source.starts_with("width")).count();
    let lengths = sources.iter().filter(|source| source.starts_with("length")).count();
    assert_eq!((widths, lengths), (2, 2), "{sources:?}");
    assert!(
        sources.contains(&"width of front, left_end, right_end") && sources.contains(&"length of left_end, right_end")
    );
    assert_eq!(sources.iter().filter(|source| source.starts_with("thickness")).count(), 5);
    assert_eq!(sources.iter().filter(|source| source.starts_with("bow")).count(), 5);
    // Drawn tight, the taper of the long seam: two edges of one setting, two cups and the corner.
    let front_top = &tolerance.stack.seams[0];
    let seam_mm = 20.0 * 2.0_f64.sqrt();
    let radians = core::f64::consts::PI / 180.0;
    let parts: [f64; 4] = [0.2 * radians, 0.05 * radians, 4.0 * 0.1 / 185.0, 4.0 * 0.1 / 215.0];
    let by_hand = seam_mm * parts.iter().map(|part| part * part).sum::<f64>().sqrt();
    assert!((front_top.first_order.taper_sd_mm - by_hand).abs() < 1e-9);
}

#[test]
fn each_edge_set_anew_has_its_own_error() {
    let sources = |setting: TiltSetting| {
        let plan = planned(ASH, |spec| spec.accuracy.as_mut().unwrap().setting = setting);
        let ranking = plan.tolerance.unwrap().stack.ranking;
        ranking.iter().filter(|source| source.source.starts_with("tilt")).count()
    };
    assert_eq!((sources(TiltSetting::OneForBoth), sources(TiltSetting::EachAnew)), (2, 16));
}

#[test]
fn the_over_tilt_that_is_offered_keeps_its_promise() {
    let open = planned(ASH, |spec| spec.accuracy.as_mut().unwrap().samples = 20_000);
    let finding = open.findings.iter().find(|one| one.code == FindingCode::SeamGaps).unwrap();
    assert!(finding.grade == Grade::Caution && finding.message.contains("tilt of the"));
    let offered = open.tolerance.unwrap().over_tilt;
    let closed = planned(ASH, |spec| {
        let accuracy = spec.accuracy.as_mut().unwrap();
        (accuracy.over_tilt_deg, accuracy.samples) = (offered.over_tilt_deg, 20_000);
    });
    assert!(closed.findings.iter().all(|one| one.code != FindingCode::SeamGaps));
    let stack = closed.tolerance.unwrap().stack;
    // The closed form says 95 %; five standard errors of 20 000 samples are 0.8 %.
    let at_nothing = stack.seams.iter().find(|seam| seam.name == "front|top").unwrap();
    assert!(at_nothing.sampled.p50_mm == 0.0 && at_nothing.sampled.p95_mm < 0.02, "{:?}", at_nothing.sampled);
}

#[test]
fn a_wood_by_its_numbers_is_the_wood_by_its_name() {
    let species = Species::find("white ash").unwrap();
    let named = planned(ASH, |_| ());
    let numbered = planned(ASH, |spec| {
        spec.wood.figures = Some(figures_of(species));
        spec.wood.species = "ash of the own yard".to_owned();
    });
    assert!((numbered.mass.lifted_kg - named.mass.lifted_kg).abs() < 1e-9);
    let outcome = |plan: &Plan| plan.checks.iter().map(|check| (check.name.clone(), check.outcome)).collect::<Vec<_>>();
    assert_eq!(outcome(&numbered), outcome(&named));
    let (one, other) = (named.movement.unwrap(), numbered.movement.unwrap());
    assert_eq!(one.outer, other.outer);
    assert_eq!(one.returns.unwrap().tension_held_mpa, other.returns.unwrap().tension_held_mpa);
    assert_eq!(numbered.spec.wood.species, "ash of the own yard");
}

#[test]
fn a_wood_of_which_only_the_density_is_known_leaves_the_rest_open() {
    let bare: WoodFigures = read(r#"{"density_12_kg_m3": 700}"#).unwrap();
    let plan = planned(ASH, |spec| {
        spec.wood.figures = Some(bare.clone());
        spec.wood.species = "an unknown wood".to_owned();
    });
    assert!(plan.movement.is_none() && plan.tolerance.is_some());
    let missing = plan.findings.iter().find(|one| one.subject == "movement").unwrap();
    assert!(missing.code == FindingCode::NotCovered && missing.cure.contains("wood.figures"));
    let bending = plan.checks.iter().find(|check| check.name == "bending of the wall half between the studs").unwrap();
    assert_eq!(bending.outcome, Outcome::NotDetermined);
    // Shrinkage alone is enough for the movement.
    let shrinking = WoodFigures { shrinkage_radial_pct: Some(4.9), shrinkage_tangential_pct: Some(7.8), ..bare };
    let moved = planned(WALNUT, |spec| spec.wood.figures = Some(shrinking)).movement.unwrap();
    assert!((moved.outer.height_range_mm - 184.15 * 0.00274 * 5.0).abs() < 0.01);
}

#[test]
fn a_strip_may_have_numbers_of_its_own() {
    let plan = planned(ASH, |spec| {
        spec.cleat.figures = Some(figures_of(Species::find("yellow-poplar").unwrap()));
    });
    let named = planned(ASH, |spec| spec.cleat.species = Some("yellow-poplar".to_owned()));
    assert!((plan.mass.inside_kg - named.mass.inside_kg).abs() < 1e-9);
    assert_eq!(plan.movement.unwrap().cleat, named.movement.unwrap().cleat);
}

#[test]
fn every_fault_of_seasons_saw_and_figures_comes_at_once_with_its_path() {
    let error = refused(|spec| {
        let seasons = spec.seasons.as_mut().unwrap();
        (seasons.cut, seasons.glued_front_mm, seasons.tolerated_mm) = (BoardCut::RingAngle, 300.0, -1.0);
        if let SeasonClimate::Indoor(year) = &mut seasons.climate {
            year.months[3].temperature_c = f64::NAN;
        }
        let accuracy = spec.accuracy.as_mut().unwrap();
        (accuracy.tilt_sd_deg, accuracy.filler_gap_mm, accuracy.samples) = (50.0, 0.1, 50_000_000);
        spec.wood.figures =
            Some(WoodFigures { density_12_kg_m3: -1.0, ..figures_of(Species::find("white ash").unwrap()) });
        spec.cleat.species = Some("plastic".to_owned());
    });
    let paths: Vec<_> = error.details().iter().map(|detail| detail.path.as_str()).collect();
    for path in [
        "seasons.tolerated_mm",
        "seasons.ring_angle_deg",
        "seasons.climate.indoor.months[3].temperature_c",
        "seasons.glued_front_mm",
        "accuracy.tilt_sd_deg",
        "accuracy.samples",
        "accuracy.filler_gap_mm",
        "wood.figures.density_12_kg_m3",
        "cleat.species",
    ] {
        assert!(paths.contains(&path), "{path} in {paths:?}");
    }
    let exchanged = refused(|spec| {
        let range = super::MoistureRange { driest_pct: 11.0, wettest_pct: 6.0 };
        spec.seasons.as_mut().unwrap().climate = SeasonClimate::MoistureRange(range);
    });
    assert_eq!(
        (exchanged.code(), exchanged.field()),
        (ErrorCode::Inconsistent, "seasons.climate.moisture_range.wettest_pct")
    );
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn odd_seasons_and_saws_give_finite_numbers_or_a_fault(n in prop::array::uniform12(prop::num::f64::ANY), which in 0_usize..13, wide in any::<bool>()) {
        let mut spec = spec(WALNUT);
        let seasons = spec.seasons.as_mut().unwrap();
        let mut range = super::MoistureRange { driest_pct: 6.0, wettest_pct: 11.0 };
        let mut made = 8.0;
        let accuracy: &mut AccuracySpec = spec.accuracy.as_mut().unwrap();
        accuracy.samples = 100;
        if wide {
            accuracy.hold = SeamHold::DrawnTight;
        }
        let fields = [&mut range.driest_pct, &mut range.wettest_pct, &mut made, &mut seasons.glued_front_mm, &mut seasons.slot_shank_mm,
            &mut seasons.tolerated_mm, &mut accuracy.tilt_sd_deg, &mut accuracy.width_sd_mm, &mut accuracy.cup_sd_mm,
            &mut accuracy.corner_sd_deg, &mut accuracy.over_tilt_deg, &mut accuracy.burnish_gap_mm];
        for (k, field) in fields.into_iter().enumerate() {
            if which == k || which == 12 {
                *field = n[k];
            }
        }
        seasons.made_moisture_pct = Some(made);
        seasons.climate = SeasonClimate::MoistureRange(range);
        match plan(&spec) {
            // The writer refuses numbers that are not finite.
            Ok(plan) => prop_assert!(write(&plan).is_ok()),
            Err(error) => prop_assert!(error.details().iter().all(|detail| !detail.path.is_empty())),
        }
    }

    #[test]
    fn a_wider_swing_opens_no_seam_less(dry in 3.0..8.0_f64, wet in 8.0..14.0_f64, more in 0.0..3.0_f64) {
        let opening = |driest_pct: f64, wettest_pct: f64| {
            let plan = planned(WALNUT, |spec| {
                spec.accuracy = None;
                let range = super::MoistureRange { driest_pct, wettest_pct };
                spec.seasons.as_mut().unwrap().climate = SeasonClimate::MoistureRange(range);
            });
            plan.movement.unwrap().seams.iter().map(|seam| seam.show_opening_mm).collect::<Vec<_>>()
        };
        let (narrow, wide) = (opening(dry, wet), opening(dry - more.min(dry - 3.0), wet + more));
        // The two laws of the handbook meet at the ends of 6 % to 14 % to two hundredths of the movement.
        prop_assert!(narrow.iter().zip(&wide).all(|(narrow, wide)| *wide >= 0.97 * *narrow));
    }
}
