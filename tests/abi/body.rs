//! The body handle: the same panels, files and drawings as the core's, seen through pointers.

use core::ptr;

use beamcraft::*;
use beamcraft_core::error::ErrorCode;
use beamcraft_core::plan::{SawnBody, SawnBodyInput, sawn_body};
use beamcraft_core::{export, json, registry};

use crate::face::take_error;
use crate::held::held_body;

/// A front that leans, in two legs round an outside corner, with a groove in a mitre.
const SLOPED: &str = r#"{
  "name": "Corner shelf",
  "body": {
    "section": {"sloped": {"top_depth_mm": 240, "bottom_depth_mm": 180, "front_height_mm": 200, "back_height_mm": 200}},
    "legs": [{"length_mm": 900, "corner_deg": 90}, {"length_mm": 1400}],
    "boards": [{"face": "front", "thickness_mm": 18}, {"face": "top", "thickness_mm": 18},
               {"face": "bottom", "thickness_mm": 18}],
    "left_end": {"kind": "return_panel", "thickness_mm": 18}, "right_end": {"kind": "open"},
    "features": [{"edge_groove": {"edge": "front|top", "width_mm": 4, "depth_mm": 6, "from_inside_mm": 9}}]
  }
}"#;

fn sawn(input: &str) -> SawnBody {
    let input: SawnBodyInput = json::read(input).expect("an input that can be read");
    sawn_body(&input).expect("a body")
}

#[test]
fn json_files_and_drawings_are_those_of_the_core() {
    let (held, body) = (held_body(SLOPED), sawn(SLOPED));
    // SAFETY: a live body, and buffers of the kind that each function wants.
    unsafe {
        let whole = held.text(|p, b, c, n, e| beamcraft_body_json(p, b, c, n, e));
        assert_eq!(whole, registry::call("sawn_body", SLOPED).expect("a body"));
        let part_file = held.text(|p, b, c, n, e| beamcraft_body_panels_step(p, b, c, n, e));
        assert_eq!(part_file, export::panels_step(&body.spec.name, &body.panels));
        let drawing = held.text(|p, b, c, n, e| beamcraft_body_panels_dxf(p, b, c, n, e));
        assert_eq!(drawing, export::panels_dxf(&body.spec.name, &body.panels));
        let solids: Vec<u8> = held.list(|p, b, c, n, e| beamcraft_body_panels_stl(p, b, c, n, e));
        assert_eq!(solids, export::panels_stl(&body.panels));
        let scene: Vec<u8> = held.list(|p, b, c, n, e| beamcraft_body_panels_gltf(p, b, c, n, e));
        assert_eq!(scene, export::panels_gltf(&body.spec.name, &body.panels));
        let count: usize = held.value(|p, o, e| beamcraft_body_drawing_count(p, o, e));
        let names = export::drawing_names(&body);
        assert_eq!(count, names.len());
        for (at, name) in names.iter().enumerate() {
            assert_eq!(held.text(|p, b, c, n, e| beamcraft_body_drawing_name(p, at, b, c, n, e)), *name);
            let (start, length) = (name.as_ptr().cast(), name.len());
            let svg = held.text(|p, b, c, n, e| beamcraft_body_drawing_svg(p, start, length, b, c, n, e));
            assert_eq!(svg, export::body_drawing_svg(&body, name).expect("a drawing"));
        }
    }
}

#[test]
fn panels_edges_pieces_and_triangles_are_those_of_the_core() {
    let (held, body) = (held_body(SLOPED), sawn(SLOPED));
    // SAFETY: a live body, and buffers and places of the kind that each function wants.
    unsafe {
        assert_eq!(held.value(|p, o, e| beamcraft_body_panel_count(p, o, e)), body.panels.len());
        for (at, panel) in body.panels.iter().enumerate() {
            assert_eq!(held.text(|p, b, c, n, e| beamcraft_body_panel_id(p, at, b, c, n, e)), panel.id.to_string());
            let size: beamcraft_panel_size = held.value(|p, o, e| beamcraft_body_panel_size(p, at, o, e));
            assert_eq!((size.show_length_mm, size.volume_mm3), (panel.show_length_mm, panel.mass.volume_mm3));
            assert_eq!(held.value(|p, o, e| beamcraft_body_edge_count(p, at, o, e)), panel.edges.len());
            for (k, edge) in panel.edges.iter().enumerate() {
                let id = held.text(|p, b, c, n, e| beamcraft_body_edge_id(p, at, k, b, c, n, e));
                assert_eq!(id, edge.id.to_string());
                let told: beamcraft_panel_edge = held.value(|p, o, e| beamcraft_body_edge(p, at, k, o, e));
                assert_eq!((told.tilt_deg, told.gauge_deg, told.tag), (edge.tilt_deg, edge.gauge_deg, edge.tag));
            }
            assert_eq!(held.value(|p, o, e| beamcraft_body_piece_count(p, at, o, e)), panel.pieces.len());
            for (k, piece) in panel.pieces.iter().enumerate() {
                let points: Vec<f64> = held.list(|p, b, c, n, e| beamcraft_body_piece_vertices(p, at, k, b, c, n, e));
                assert_eq!(points.len(), 3 * piece.solid.vertices().len());
                let runs: Vec<u32> = held.list(|p, b, c, n, e| beamcraft_body_piece_faces(p, at, k, b, c, n, e));
                let tags: Vec<u32> = held.list(|p, b, c, n, e| beamcraft_body_piece_tags(p, at, k, b, c, n, e));
                assert_eq!(runs.len(), tags.len() + 2 * piece.solid.edge_count());
                let sign: u32 = held.value(|p, o, e| beamcraft_body_piece_sign(p, at, k, o, e));
                assert_eq!(sign == BEAMCRAFT_PIECE_ADDED, k == 0);
            }
            let mesh = export::panel_mesh(panel);
            let points: Vec<f64> = held.list(|p, b, c, n, e| beamcraft_body_panel_vertices(p, at, b, c, n, e));
            assert_eq!(points.len(), 3 * mesh.vertices_mm.len());
            let triangles: Vec<u32> = held.list(|p, b, c, n, e| beamcraft_body_panel_triangles(p, at, b, c, n, e));
            assert_eq!(triangles, mesh.triangles.as_flattened());
            let tags: Vec<u32> = held.list(|p, b, c, n, e| beamcraft_body_panel_triangle_tags(p, at, b, c, n, e));
            assert_eq!(tags, mesh.tags);
        }
    }
}

#[test]
fn what_is_no_body_is_refused_with_its_path() {
    let (mut body, mut error) = (ptr::null_mut(), ptr::null_mut());
    let input = SLOPED.replace("\"length_mm\": 900", "\"length_mm\": 0");
    // SAFETY: a live text and writable pointers.
    let status = unsafe { beamcraft_body_new(input.as_ptr().cast(), input.len(), &raw mut body, &raw mut error) };
    assert_eq!(status, ErrorCode::OutOfRange as u32);
    assert!(body.is_null());
    assert!(take_error(status, error).text.contains("body.legs[0].length_mm"));
    // SAFETY: NULL is refused, and nothing is freed.
    unsafe {
        let mut count = 0;
        let status = beamcraft_body_panel_count(ptr::null(), &raw mut count, ptr::null_mut());
        assert_eq!(status, ErrorCode::NullPointer as u32);
        beamcraft_body_free(ptr::null_mut());
    }
}
