use proptest::prelude::*;

use super::*;
use crate::error::ErrorCode;
use crate::export::{self, body_drawing_svg, drawing_names};
use crate::json::read;
use crate::plan::{BeamSpec, plan};
use crate::saw::CutKind;
use crate::shell::{EdgeJoint, PieceSign};

fn spec(text: &str) -> SawnBodyInput {
    read(text).unwrap()
}

/// The ash beam of the examples as a body by itself.
const BEAM: &str = r#"{
  "name": "Ash shelf beam",
  "body": {"section": {"rectangular": {"height_mm": 185, "depth_mm": 215}}, "legs": [{"length_mm": 1830}],
    "boards": [{"face": "front", "thickness_mm": 20}, {"face": "top", "thickness_mm": 20},
               {"face": "bottom", "thickness_mm": 20}],
    "left_end": {"kind": "return_panel", "thickness_mm": 20}, "right_end": {"kind": "return_panel", "thickness_mm": 20}}
}"#;

/// A beam that tapers in height, in legs round a corner it may not; one with a groove and a sloped front; an L; a wrap.
fn bodies() -> Vec<(&'static str, SawnBodyInput)> {
    let body = |section: &str, legs: &str, faces: &[&str], more: &str| {
        let boards: Vec<String> =
            faces.iter().map(|face| format!(r#"{{"face": "{face}", "thickness_mm": 18}}"#)).collect();
        spec(&format!(
            r#"{{"name": "body", "body": {{"section": {section}, "legs": {legs}, "boards": [{}], {more}}}}}"#,
            boards.join(", ")
        ))
    };
    let returns = r#""left_end": {"kind": "return_panel", "thickness_mm": 18}, "right_end": {"kind": "return_panel", "thickness_mm": 18}"#;
    let open = r#""left_end": {"kind": "open"}, "right_end": {"kind": "open"}"#;
    let three = ["front", "top", "bottom"];
    let taper = r#", "taper": {"section": {"rectangular": {"height_mm": 150, "depth_mm": 180}}}"#;
    let groove =
        r#", "features": [{"edge_groove": {"edge": "front|top", "width_mm": 4, "depth_mm": 6, "from_inside_mm": 9}}]"#;
    vec![
        ("beam", spec(BEAM)),
        (
            "taper",
            body(
                r#"{"rectangular": {"height_mm": 200, "depth_mm": 220}}"#,
                r#"[{"length_mm": 1500}]"#,
                &three,
                &format!("{returns}{taper}"),
            ),
        ),
        (
            "sloped front",
            body(
                r#"{"sloped": {"top_depth_mm": 240, "bottom_depth_mm": 180, "front_height_mm": 200, "back_height_mm": 200}}"#,
                r#"[{"length_mm": 1500}]"#,
                &three,
                returns,
            ),
        ),
        (
            "round an outside and an inside corner",
            body(
                r#"{"rectangular": {"height_mm": 160, "depth_mm": 180}}"#,
                r#"[{"length_mm": 900, "corner_deg": 90}, {"length_mm": 1400, "corner_deg": 270}, {"length_mm": 900}]"#,
                &three,
                returns,
            ),
        ),
        (
            "wrap",
            body(
                r#"{"regular": {"sides": 6, "across_flats_mm": 160}}"#,
                r#"[{"length_mm": 2400}]"#,
                &["side1", "side2", "side3", "side4", "side5", "side6"],
                open,
            ),
        ),
        (
            "groove in a mitre",
            body(
                r#"{"rectangular": {"height_mm": 200, "depth_mm": 220}}"#,
                r#"[{"length_mm": 1500}]"#,
                &three,
                &format!("{returns}{groove}"),
            ),
        ),
    ]
}

#[test]
fn a_rectangular_body_has_the_panels_and_cuts_of_a_plan() {
    let beam: BeamSpec = read(include_str!("../../examples/specs/ash_shelf_beam.json")).unwrap();
    let plan = plan(&beam).unwrap();
    let body = sawn_body(&SawnBodyInput { saw: beam.saw, ..spec(BEAM) }).unwrap();
    assert_eq!(body.panels, plan.panels);
    assert_eq!(body.cuts, plan.cuts);
}

#[test]
fn every_body_has_its_cuts_files_and_drawings() {
    for (name, input) in bodies() {
        let body = sawn_body(&input).unwrap_or_else(|error| panic!("{name}: {error}"));
        assert_eq!(body.panels.len(), body.cuts.len());
        for (panel, sawing) in body.panels.iter().zip(&body.cuts) {
            assert_eq!(panel.id, sawing.panel);
            assert_eq!(panel.edges.len(), sawing.cuts.len(), "{name}: a cut for each edge of {}", panel.id);
        }
        let step = export::panels_step(&body.spec.name, &body.panels);
        assert_eq!(step.matches("MANIFOLD_SOLID_BREP").count(), body.panels.len(), "{name}");
        let added = body.panels.iter().flat_map(|panel| &panel.pieces).filter(|piece| piece.sign == PieceSign::Added);
        assert_eq!(added.count(), body.panels.len());
        assert!(export::panels_stl(&body.panels).len() > 84 && export::panels_gltf("", &body.panels).len() > 84);
        assert!(export::panels_dxf("", &body.panels).ends_with("EOF\n"));
        let names = drawing_names(&body);
        assert!(names.len() >= 2 + 2 * body.panels.len(), "{name}");
        for drawing in &names {
            let svg = body_drawing_svg(&body, drawing).unwrap();
            assert!(svg.contains("</svg>") && !svg.contains("NaN"), "{name}: {drawing}");
        }
    }
}

#[test]
fn a_tapered_end_is_a_compound_cut() {
    let (_, input) = bodies().remove(1);
    let body = sawn_body(&input).unwrap();
    let front = &body.cuts[0];
    // The top falls by 50 over 1500: the front is ripped on a taper of atan(50 / 1500).
    let taper = front.cuts.iter().find(|cut| cut.kind == CutKind::TaperRip).unwrap();
    assert!((taper.gauge_deg - 1.909_152_4).abs() < 0.05, "{}", taper.gauge_deg);
    assert!(front.cuts.iter().all(|cut| cut.set_up.is_some()));
    // It is wider where the body is higher.
    let top = body.panels[0].edge("top".parse().unwrap()).unwrap();
    assert_eq!(body.panels[0].longer_towards(top), "left_end".parse().ok());
}

#[test]
fn legs_meet_in_mitres_and_have_names_of_their_own() {
    let (_, input) = bodies().remove(3);
    let body = sawn_body(&input).unwrap();
    let front = body.panel("leg2.front").unwrap();
    let to_next: Vec<_> = front.edges.iter().filter(|edge| edge.neighbour.leg != 2).collect();
    assert!(to_next.iter().all(|edge| edge.joint == EdgeJoint::Mitred));
    let mut tilts: Vec<f64> = to_next.iter().map(|edge| edge.tilt_deg.round()).collect();
    tilts.sort_by(f64::total_cmp);
    assert_eq!(tilts, [-45.0, 45.0]);
    let refused = body.panel("leg2.frnt").unwrap_err();
    assert!(refused.to_string().contains("did you mean leg2.front?"), "{refused}");
    let refused = body_drawing_svg(&body, "panel_leg2.frnt").unwrap_err();
    assert_eq!(refused.code(), ErrorCode::UnknownName);
}

#[test]
fn faults_of_body_and_saw_come_at_once() {
    let mut input = spec(BEAM);
    input.body.legs[0].length_mm = f64::NAN;
    input.saw.kerf_mm = -1.0;
    let error = sawn_body(&input).unwrap_err();
    let paths: Vec<_> = error.details().iter().map(|detail| detail.path.as_str()).collect();
    assert_eq!(paths, ["body.legs[0].length_mm", "saw.kerf_mm"]);
    // Boards of 2 and 150 mm at a sharp corner: a bevel that no saw cuts.
    let mut input = spec(BEAM);
    input.body.boards[0].thickness_mm = 100.0;
    input.body.boards[1].thickness_mm = 1.0;
    let error = sawn_body(&input).unwrap_err();
    assert_eq!((error.code(), error.field()), (ErrorCode::Inconsistent, "body.boards"));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn any_numbers_give_a_whole_body_or_faults(
        numbers in prop::collection::vec(prop_oneof![prop::num::f64::ANY, 1.0..400.0_f64], 6), at in 0..6_usize,
    ) {
        let mut input = spec(BEAM);
        let number = numbers[at];
        match at {
            0 => input.body.legs[0].length_mm = number,
            1 => input.body.boards[0].thickness_mm = number,
            2 => input.body.left_end.corner_deg = number,
            3 => input.body.right_end.plumb_deg = number,
            4 => input.saw.kerf_mm = number,
            _ => input.body.density_kg_m3 = Some(number),
        }
        match sawn_body(&input) {
            Ok(body) => {
                prop_assert!(crate::json::write(&body).is_ok(), "every number is finite");
                for name in drawing_names(&body) {
                    let svg = body_drawing_svg(&body, &name).unwrap();
                    prop_assert!(!svg.contains("NaN") && !svg.contains("inf\""), "{name}");
                }
            }
            Err(error) => prop_assert!(!error.details().is_empty()),
        }
    }
}
