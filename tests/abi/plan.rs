//! The plan handle: the same plan as the core's, seen through pointers.

use core::ptr;

use beamcraft::generated::choices::*;
use beamcraft::*;
use beamcraft_core::error::ErrorCode;
use beamcraft_core::export;
use beamcraft_core::plan::{BeamSpec, Plan};
use beamcraft_core::{json, registry};

use crate::face::{take_error, text};
use crate::held::held_plan;

const SPECS: [&str; 2] = ["ash_shelf_beam", "walnut_beam"];

fn spec(name: &str) -> String {
    let path = beamcraft_tests::generate::top().join(format!("beamcraft-core/examples/specs/{name}.json"));
    std::fs::read_to_string(path).expect("a spec")
}

fn planned(spec: &str) -> Plan {
    let spec: BeamSpec = json::read(spec).expect("a spec that can be read");
    beamcraft_core::plan::plan(&spec).expect("a plan")
}

#[test]
fn the_json_of_a_plan_has_the_bytes_of_every_other_door() {
    for name in SPECS {
        let spec = spec(name);
        let held = held_plan(&spec);
        // SAFETY: a live plan and the buffer of `text`.
        let text = held.text(|p, b, c, n, e| unsafe { beamcraft_plan_json(p, b, c, n, e) });
        assert_eq!(text, registry::call("plan", &spec).expect("a plan"));
    }
}

#[test]
fn drawing_page_and_solids_are_those_of_the_core() {
    for name in SPECS {
        let spec = spec(name);
        let (held, plan) = (held_plan(&spec), planned(&spec));
        // SAFETY: a live plan, and buffers of the kind that each function wants.
        unsafe {
            let drawing = held.text(|p, b, c, n, e| beamcraft_plan_section_svg(p, b, c, n, e));
            assert_eq!(drawing, export::section_svg(&plan));
            let page = held.text(|p, b, c, n, e| beamcraft_plan_report_html(p, b, c, n, e));
            assert_eq!(page, export::report_html(&plan));
            let solids: Vec<u8> = held.list(|p, b, c, n, e| beamcraft_plan_panels_stl(p, b, c, n, e));
            assert_eq!(solids, export::panels_stl(&plan.panels));
            let part_file = held.text(|p, b, c, n, e| beamcraft_plan_panels_step(p, b, c, n, e));
            assert_eq!(part_file, export::panels_step(&plan.spec.name, &plan.panels));
            let drawing = held.text(|p, b, c, n, e| beamcraft_plan_panels_dxf(p, b, c, n, e));
            assert_eq!(drawing, export::panels_dxf(&plan.spec.name, &plan.panels));
            let scene: Vec<u8> = held.list(|p, b, c, n, e| beamcraft_plan_panels_gltf(p, b, c, n, e));
            assert_eq!(scene, export::panels_gltf(&plan.spec.name, &plan.panels));
        }
    }
}

#[test]
fn mass_panels_and_edges_are_those_of_the_core() {
    for name in SPECS {
        let spec = spec(name);
        let (held, plan) = (held_plan(&spec), planned(&spec));
        // SAFETY: a live plan, and buffers and places of the kind that each function wants.
        unsafe {
            assert_eq!(held.value(|p, o, e| beamcraft_plan_mass_kg(p, o, e)), plan.mass.lifted_kg);
            let centre: [f64; 3] = held.value(|p, o: *mut [f64; 3], e| beamcraft_plan_centre_mm(p, o.cast(), e));
            assert_eq!(centre, plan.mass.centre_mm);
            assert_eq!(held.value(|p, o, e| beamcraft_plan_panel_count(p, o, e)), plan.panels.len());
            for (index, panel) in plan.panels.iter().enumerate() {
                let id = held.text(|p, b, c, n, e| beamcraft_plan_panel_id(p, index, b, c, n, e));
                assert_eq!(id, panel.id.to_string());
                let size: beamcraft_panel_size = held.value(|p, o, e| beamcraft_plan_panel_size(p, index, o, e));
                assert_eq!(
                    [size.show_length_mm, size.show_width_mm, size.inner_length_mm, size.inner_width_mm],
                    [panel.show_length_mm, panel.show_width_mm, panel.inner_length_mm, panel.inner_width_mm]
                );
                assert_eq!(
                    [size.thickness_mm, size.blank_length_mm, size.blank_width_mm, size.volume_mm3],
                    [panel.thickness_mm, panel.blank_length_mm, panel.blank_width_mm, panel.mass.volume_mm3]
                );
                assert_eq!(held.value(|p, o, e| beamcraft_plan_edge_count(p, index, o, e)), panel.edges.len());
                for (at, edge) in panel.edges.iter().enumerate() {
                    let id = held.text(|p, b, c, n, e| beamcraft_plan_edge_id(p, index, at, b, c, n, e));
                    assert_eq!(id, edge.id.to_string());
                    let seen: beamcraft_panel_edge = held.value(|p, o, e| beamcraft_plan_edge(p, index, at, o, e));
                    assert_eq!(
                        [seen.corner_deg, seen.tilt_deg, seen.gauge_deg, seen.show_length_mm, seen.inner_length_mm],
                        [edge.corner_deg, edge.tilt_deg, edge.gauge_deg, edge.show_length_mm, edge.inner_length_mm]
                    );
                    assert_eq!((seen.tag, seen.reserved_1), (edge.tag, 0));
                }
            }
        }
    }
}

/// Signed volume of a closed surface of flat faces, by the divergence theorem.
fn volume(vertices: &[f64], faces: &[u32]) -> f64 {
    let point = |index: u32| [0, 1, 2].map(|axis| vertices[index as usize * 3 + axis]);
    let mut six_volumes = 0.0;
    let mut rest = faces;
    while let Some((count, after)) = rest.split_first() {
        let (corners, after) = after.split_at(*count as usize);
        for pair in corners[1..].windows(2) {
            let [a, b, c] = [point(corners[0]), point(pair[0]), point(pair[1])];
            six_volumes += a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0])
                + a[2] * (b[0] * c[1] - b[1] * c[0]);
        }
        rest = after;
    }
    six_volumes / 6.0
}

#[test]
fn the_solids_are_closed_and_have_the_volume_of_their_panel() {
    for name in SPECS {
        let held = held_plan(&spec(name));
        // SAFETY: a live plan, and buffers and places of the kind that each function wants.
        unsafe {
            for panel in 0..held.value(|p, o, e| beamcraft_plan_panel_count(p, o, e)) {
                let mut sum = 0.0;
                for piece in 0..held.value(|p, o, e| beamcraft_plan_piece_count(p, panel, o, e)) {
                    let vertices: Vec<f64> =
                        held.list(|p, b, c, n, e| beamcraft_plan_piece_vertices(p, panel, piece, b, c, n, e));
                    let faces: Vec<u32> =
                        held.list(|p, b, c, n, e| beamcraft_plan_piece_faces(p, panel, piece, b, c, n, e));
                    let tags: Vec<u32> =
                        held.list(|p, b, c, n, e| beamcraft_plan_piece_tags(p, panel, piece, b, c, n, e));
                    let (mut rest, mut runs) = (faces.as_slice(), 0);
                    let mut directed = std::collections::HashSet::new();
                    while let Some((count, after)) = rest.split_first() {
                        let (corners, after) = after.split_at(*count as usize);
                        for (k, from) in corners.iter().enumerate() {
                            let to = corners[(k + 1) % corners.len()];
                            assert!(directed.insert((*from, to)), "every directed edge once");
                        }
                        (rest, runs) = (after, runs + 1);
                    }
                    assert_eq!(tags.len(), runs);
                    assert!(directed.iter().all(|(from, to)| directed.contains(&(*to, *from))), "closed");
                    let sign: u32 = held.value(|p, o, e| beamcraft_plan_piece_sign(p, panel, piece, o, e));
                    let sign = if sign == BEAMCRAFT_PIECE_ADDED { 1.0 } else { -1.0 };
                    sum += sign * volume(&vertices, &faces);
                }
                let size: beamcraft_panel_size = held.value(|p, o, e| beamcraft_plan_panel_size(p, panel, o, e));
                // Two ways of summing the same terms.
                assert!((sum / size.volume_mm3 - 1.0).abs() < 1e-9, "{sum} {}", size.volume_mm3);
            }
        }
    }
}

#[test]
fn drawings_and_triangles_are_those_of_the_core() {
    for name in SPECS {
        let spec = spec(name);
        let (held, plan) = (held_plan(&spec), planned(&spec));
        let names = export::drawing_names(&plan);
        // SAFETY: a live plan, and buffers and places of the kind that each function wants.
        unsafe {
            assert_eq!(held.value(|p, o, e| beamcraft_plan_drawing_count(p, o, e)), names.len());
            for (index, name) in names.iter().enumerate() {
                let seen = held.text(|p, b, c, n, e| beamcraft_plan_drawing_name(p, index, b, c, n, e));
                assert_eq!(&seen, name);
                let (start, length) = (name.as_ptr().cast(), name.len());
                let svg = held.text(|p, b, c, n, e| beamcraft_plan_drawing_svg(p, start, length, b, c, n, e));
                assert_eq!(svg, export::plan_drawing_svg(&plan, name).expect("a drawing"));
            }
            for (index, panel) in plan.panels.iter().enumerate() {
                let mesh = export::panel_mesh(panel);
                let vertices: Vec<f64> = held.list(|p, b, c, n, e| beamcraft_plan_panel_vertices(p, index, b, c, n, e));
                let wanted: Vec<f64> = mesh.vertices_mm.iter().flat_map(|point| [point.x, point.y, point.z]).collect();
                assert_eq!(vertices, wanted);
                let triangles: Vec<u32> =
                    held.list(|p, b, c, n, e| beamcraft_plan_panel_triangles(p, index, b, c, n, e));
                assert_eq!(triangles.chunks(3).map(<[u32]>::to_vec).collect::<Vec<_>>(), mesh.triangles);
                let tags: Vec<u32> =
                    held.list(|p, b, c, n, e| beamcraft_plan_panel_triangle_tags(p, index, b, c, n, e));
                assert_eq!(tags, mesh.tags);
                let faces: Vec<u32> = triangles.chunks(3).flat_map(|corners| [&[3], corners].concat()).collect();
                let size: beamcraft_panel_size = held.value(|p, o, e| beamcraft_plan_panel_size(p, index, o, e));
                // Two ways of summing the same terms.
                assert!((volume(&vertices, &faces) / size.volume_mm3 - 1.0).abs() < 1e-9);
            }
        }
    }
}

#[test]
fn findings_checks_and_cautions_are_those_of_the_core() {
    for name in SPECS {
        let spec = spec(name);
        let (held, plan) = (held_plan(&spec), planned(&spec));
        // SAFETY: a live plan, and buffers and places of the kind that each function wants.
        unsafe {
            assert_eq!(held.value(|p, o, e| beamcraft_plan_finding_count(p, o, e)), plan.findings.len());
            for (index, finding) in plan.findings.iter().enumerate() {
                let grade: u32 = held.value(|p, o, e| beamcraft_plan_finding_grade(p, index, o, e));
                let wanted = match finding.grade {
                    beamcraft_core::finding::Grade::Note => BEAMCRAFT_GRADE_NOTE,
                    beamcraft_core::finding::Grade::Caution => BEAMCRAFT_GRADE_CAUTION,
                    beamcraft_core::finding::Grade::Stop => BEAMCRAFT_GRADE_STOP,
                };
                assert_eq!(grade, wanted);
                let code: u32 = held.value(|p, o, e| beamcraft_plan_finding_code(p, index, o, e));
                assert_eq!(beamcraft_core::finding::FindingCode::ALL[code as usize], finding.code);
                let part = |part| held.text(|p, b, c, n, e| beamcraft_plan_finding_text(p, index, part, b, c, n, e));
                assert_eq!(part(BEAMCRAFT_FINDING_TEXT_MESSAGE), finding.message);
                assert_eq!(part(BEAMCRAFT_FINDING_TEXT_CURE), finding.cure);
                assert_eq!(part(BEAMCRAFT_FINDING_TEXT_SUBJECT), finding.subject);
                let clause = finding.clause.map(|clause| clause.to_string()).unwrap_or_default();
                assert_eq!(part(BEAMCRAFT_FINDING_TEXT_CLAUSE), clause);
            }
            assert_eq!(held.value(|p, o, e| beamcraft_plan_check_count(p, o, e)), plan.checks.len());
            assert!(!plan.checks.is_empty() && !plan.cautions.is_empty());
            for (index, check) in plan.checks.iter().enumerate() {
                let seen: beamcraft_check = held.value(|p, o, e| beamcraft_plan_check(p, index, o, e));
                let given = |bit: u64, value: f64| if seen.given & bit == 0 { None } else { Some(value) };
                assert_eq!(given(BEAMCRAFT_CHECK_GIVEN_DEMAND, seen.demand), check.demand);
                assert_eq!(given(BEAMCRAFT_CHECK_GIVEN_CAPACITY, seen.capacity), check.capacity);
                assert_eq!(given(BEAMCRAFT_CHECK_GIVEN_UTILISATION, seen.utilisation), check.utilisation);
                let outcomes = ["met", "not_met", "not_covered", "not_determined"];
                let outcome = serde_json::to_value(check.outcome).expect("a text");
                assert_eq!(outcome, outcomes[seen.outcome as usize]);
                assert_eq!(seen.outcome == BEAMCRAFT_OUTCOME_MET, outcome == "met");
                let bases = ["clause", "derived", "chosen"];
                assert_eq!(serde_json::to_value(check.basis).expect("a text"), bases[seen.basis as usize]);
                let part = |part| held.text(|p, b, c, n, e| beamcraft_plan_check_text(p, index, part, b, c, n, e));
                assert_eq!(part(BEAMCRAFT_CHECK_TEXT_NAME), check.name);
                assert_eq!(part(BEAMCRAFT_CHECK_TEXT_SUBJECT), check.subject);
                assert_eq!(part(BEAMCRAFT_CHECK_TEXT_UNIT), check.unit);
                assert_eq!(part(BEAMCRAFT_CHECK_TEXT_MODE), check.mode);
                assert_eq!(part(BEAMCRAFT_CHECK_TEXT_CLAUSE), check.clause.to_string());
                assert_eq!(part(BEAMCRAFT_CHECK_TEXT_REMARK), check.remark);
            }
            assert_eq!(held.value(|p, o, e| beamcraft_plan_caution_count(p, o, e)), plan.cautions.len());
            for (index, caution) in plan.cautions.iter().enumerate() {
                let text = held.text(|p, b, c, n, e| beamcraft_plan_caution_text(p, index, b, c, n, e));
                assert_eq!(text, caution.text);
            }
        }
    }
}

#[test]
fn a_spec_that_is_refused_names_every_fault_and_makes_no_plan() {
    let spec = spec(SPECS[0]).replace("\"length_mm\": 1830", "\"length_mm\": -1").replace("white ash", "white oash");
    let (mut plan, mut error) = (ptr::null_mut(), ptr::null_mut());
    // SAFETY: a live text and writable pointers.
    let status = unsafe { beamcraft_plan_new(spec.as_ptr().cast(), spec.len(), &raw mut plan, &raw mut error) };
    assert!(plan.is_null());
    let refused = take_error(status, error);
    assert_eq!(refused.text, registry::call("plan", &spec).expect_err("refused").to_string());
    assert!(refused.codes.contains(&(ErrorCode::UnknownName as u32)), "{}", refused.text);
}

#[test]
fn null_and_places_beyond_the_end_are_refused() {
    const NULL: u32 = ErrorCode::NullPointer as u32;
    const BEYOND: u32 = ErrorCode::OutOfRange as u32;
    let held = held_plan(&spec(SPECS[0]));
    let (plan, none) = (held.object.cast_const(), ptr::null_mut());
    let (mut mass, mut count, mut number) = (0.0, 0, 0);
    let (mut size, mut edge, mut check) = Default::default();
    // SAFETY: NULL or live everywhere.
    unsafe {
        beamcraft_plan_free(ptr::null_mut());
        assert_eq!(beamcraft_plan_new(ptr::null(), 0, ptr::null_mut(), none), NULL);
        assert_eq!(beamcraft_plan_new(c"{}".as_ptr(), 2, ptr::null_mut(), none), NULL);
        assert_eq!(beamcraft_plan_mass_kg(ptr::null(), &raw mut mass, none), NULL);
        assert_eq!(beamcraft_plan_mass_kg(plan, ptr::null_mut(), none), NULL);
        assert_eq!(beamcraft_plan_centre_mm(plan, ptr::null_mut(), none), NULL);
        assert_eq!(beamcraft_plan_panel_count(ptr::null(), &raw mut count, none), NULL);
        assert_eq!(beamcraft_plan_json(ptr::null(), ptr::null_mut(), 0, &raw mut count, none), NULL);
        assert_eq!(beamcraft_plan_json(plan, ptr::null_mut(), 1, &raw mut count, none), NULL);
        assert_eq!(beamcraft_plan_json(plan, ptr::null_mut(), 0, ptr::null_mut(), none), NULL);
        assert_eq!(beamcraft_plan_section_svg(ptr::null(), ptr::null_mut(), 0, &raw mut count, none), NULL);
        assert_eq!(beamcraft_plan_report_html(plan, ptr::null_mut(), 0, ptr::null_mut(), none), NULL);
        assert_eq!(beamcraft_plan_panels_stl(plan, ptr::null_mut(), 1, &raw mut count, none), NULL);
        assert_eq!(beamcraft_plan_panels_step(plan, ptr::null_mut(), 1, &raw mut count, none), NULL);
        assert_eq!(beamcraft_plan_panels_dxf(ptr::null(), ptr::null_mut(), 0, &raw mut count, none), NULL);
        assert_eq!(beamcraft_plan_panels_gltf(plan, ptr::null_mut(), 0, ptr::null_mut(), none), NULL);
        assert_eq!(beamcraft_plan_piece_vertices(plan, 0, 0, ptr::null_mut(), 9, &raw mut count, none), NULL);
        assert_eq!(beamcraft_plan_panel_triangles(plan, 0, ptr::null_mut(), 9, &raw mut count, none), NULL);
        assert_eq!(beamcraft_plan_panel_vertices(ptr::null(), 0, ptr::null_mut(), 0, &raw mut count, none), NULL);
        assert_eq!(beamcraft_plan_drawing_count(plan, ptr::null_mut(), none), NULL);
        assert_eq!(beamcraft_plan_drawing_svg(plan, ptr::null(), 0, ptr::null_mut(), 0, &raw mut count, none), NULL);
        let (unknown, name) = (ErrorCode::UnknownName as u32, c"panel_frnt".as_ptr());
        assert_eq!(beamcraft_plan_drawing_svg(plan, name, 10, ptr::null_mut(), 0, &raw mut count, none), unknown);
        assert_eq!(beamcraft_plan_piece_vertices(ptr::null(), 0, 0, ptr::null_mut(), 0, &raw mut count, none), NULL);

        for far in [99, usize::MAX] {
            assert_eq!(beamcraft_plan_panel_id(plan, far, ptr::null_mut(), 0, &raw mut count, none), BEYOND);
            assert_eq!(beamcraft_plan_panel_size(plan, far, &raw mut size, none), BEYOND);
            assert_eq!(beamcraft_plan_edge_count(plan, far, &raw mut count, none), BEYOND);
            assert_eq!(beamcraft_plan_edge(plan, 0, far, &raw mut edge, none), BEYOND);
            assert_eq!(beamcraft_plan_edge_id(plan, 0, far, ptr::null_mut(), 0, &raw mut count, none), BEYOND);
            assert_eq!(beamcraft_plan_piece_count(plan, far, &raw mut count, none), BEYOND);
            assert_eq!(beamcraft_plan_piece_sign(plan, 0, far, &raw mut number, none), BEYOND);
            assert_eq!(beamcraft_plan_piece_faces(plan, 0, far, ptr::null_mut(), 0, &raw mut count, none), BEYOND);
            assert_eq!(beamcraft_plan_piece_tags(plan, far, 0, ptr::null_mut(), 0, &raw mut count, none), BEYOND);
            assert_eq!(beamcraft_plan_drawing_name(plan, far, ptr::null_mut(), 0, &raw mut count, none), BEYOND);
            assert_eq!(beamcraft_plan_panel_vertices(plan, far, ptr::null_mut(), 0, &raw mut count, none), BEYOND);
            assert_eq!(beamcraft_plan_panel_triangles(plan, far, ptr::null_mut(), 0, &raw mut count, none), BEYOND);
            assert_eq!(beamcraft_plan_panel_triangle_tags(plan, far, ptr::null_mut(), 0, &raw mut count, none), BEYOND);
            assert_eq!(beamcraft_plan_finding_grade(plan, far, &raw mut number, none), BEYOND);
            assert_eq!(beamcraft_plan_finding_code(plan, far, &raw mut number, none), BEYOND);
            assert_eq!(beamcraft_plan_finding_text(plan, far, 0, ptr::null_mut(), 0, &raw mut count, none), BEYOND);
            assert_eq!(beamcraft_plan_check(plan, far, &raw mut check, none), BEYOND);
            assert_eq!(beamcraft_plan_check_text(plan, far, 0, ptr::null_mut(), 0, &raw mut count, none), BEYOND);
            assert_eq!(beamcraft_plan_caution_text(plan, far, ptr::null_mut(), 0, &raw mut count, none), BEYOND);
        }
        let unknown = ErrorCode::UnknownChoice as u32;
        assert_eq!(beamcraft_plan_check_text(plan, 0, 6, ptr::null_mut(), 0, &raw mut count, none), unknown);
        assert_eq!(beamcraft_plan_finding_text(plan, 0, 4, ptr::null_mut(), 0, &raw mut count, none), unknown);
    }
}

#[test]
fn one_plan_serves_many_threads() {
    let held = held_plan(&spec(SPECS[0]));
    let address = held.object as usize;
    let texts: Vec<String> = std::thread::scope(|scope| {
        let read = || {
            let plan = address as *const beamcraft_plan;
            // SAFETY: the plan lives until all threads have ended.
            text(|b, c, n| unsafe { beamcraft_plan_json(plan, b, c, n, ptr::null_mut()) }).expect("a text")
        };
        let threads: Vec<_> = (0..4).map(|_| scope.spawn(read)).collect();
        threads.into_iter().map(|thread| thread.join().expect("a text")).collect()
    });
    assert!(texts.windows(2).all(|pair| pair[0] == pair[1]));
}
