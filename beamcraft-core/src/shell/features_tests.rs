//! Features with known volumes and surfaces, and their laws on random bodies.

use proptest::prelude::*;

use super::body_laws_tests::body;
use super::body_tests::{assert_laws, board, closed, id, near, shelf};
use super::*;
use crate::error::ErrorCode;
use crate::finding::{FindingCode, Grade};
use crate::numeric::real::{sin_cos_deg, tan_deg};

fn with(features: Vec<BodyFeature>) -> HollowBodyInput {
    HollowBodyInput { features, ..shelf() }
}

fn groove(depth_mm: f64) -> EdgeGroove {
    EdgeGroove {
        edge: "front|top".parse().unwrap(),
        width_mm: 4.0,
        depth_mm,
        from_inside_mm: 9.0,
        start_mm: None,
        length_mm: None,
    }
}

fn recess(panel: FaceKind, at: (f64, f64), size: (f64, f64), depth_mm: Option<f64>) -> PanelRecess {
    PanelRecess {
        panel: id(panel),
        from: CutFrom::Inner,
        along_mm: at.0,
        across_mm: at.1,
        length_mm: size.0,
        width_mm: size.1,
        depth_mm,
    }
}

/// Wood less what the features took is what the panels have; no panel overlaps another.
#[track_caller]
fn assert_feature_laws(body: &HollowBody) {
    let taken: f64 = body.features.iter().map(|cut| cut.volume_mm3).sum();
    let whole = body.outer_volume_mm3 - body.hollow_volume_mm3;
    assert!((body.wood_volume_mm3 + taken - whole).abs() < 1e-9 * body.outer_volume_mm3);
    for panel in body.panels() {
        let blank = panel.blank().unwrap();
        let removed: Vec<_> = panel.pieces.iter().filter(|piece| piece.sign == PieceSign::Removed).collect();
        for (at, piece) in removed.iter().enumerate() {
            let inside = blank.common(&piece.solid, 99).map_or(0.0, |common| common.volume());
            assert!((inside - piece.solid.volume()).abs() < 1e-9 * blank.volume());
            for other in &removed[at + 1..] {
                let both = piece.solid.common(&other.solid, 99).map_or(0.0, |common| common.volume());
                assert!(both < 1e-9 * blank.volume(), "{}: {both}", panel.id);
            }
        }
        assert!(panel.mass.inertia.xx_mm5 > 0.0 && panel.mass.inertia.zz_mm5 > 0.0);
        let surface = panel.show_area_mm2 + panel.inner_area_mm2 + panel.edge_area_mm2 + panel.cut_area_mm2;
        assert!(near(surface, panel.mass.surface_mm2));
        // A convex hull of what is left is no larger than the blank: no face has less than nothing.
        let least = -1e-9 * blank.mass_properties().surface_mm2;
        assert!(panel.show_area_mm2 > least && panel.inner_area_mm2 > least && panel.edge_area_mm2 > least);
    }
}

#[test]
fn a_groove_in_a_mitre_says_how_far_it_is_from_the_show_face() {
    let body = hollow_body(&with(vec![BodyFeature::EdgeGroove(groove(8.0))])).unwrap();
    assert_feature_laws(&body);
    assert_eq!(body.findings, []);
    assert_eq!(body.features.len(), 2);
    // The mitre of two boards of 20 is 28.28 long. The outer side of the groove meets it 28.28 − 11 from the arris, so
    // 12.22 below the show face, and rises by 8 / √2 over its depth.
    let mitre = 800.0_f64.sqrt();
    let half = 0.5_f64.sqrt();
    for cut in &body.features {
        assert!(near(cut.volume_mm3, 1830.0 * 4.0 * 8.0));
        assert!(near(cut.left_to_show_mm, (mitre - 11.0) * half - 8.0 * half), "{cut:?}");
        assert!(near(cut.left_to_inner_mm, 20.0 - (mitre - 7.0) * half), "{cut:?}");
        assert!(near(cut.deepest_mm.unwrap(), mitre - 11.0));
    }
    let front = body.panel(id(FaceKind::Front)).unwrap();
    // Two sides and a bottom, and the mouth out of the mitre.
    assert!(near(front.cut_area_mm2, 1830.0 * 20.0));
    assert!(near(front.edge(id(FaceKind::Top)).unwrap().area_mm2, 1830.0 * (mitre - 4.0)));
}

#[test]
fn a_groove_that_comes_out_is_a_stop() {
    let too_deep = hollow_body(&with(vec![BodyFeature::EdgeGroove(groove(18.0))])).unwrap();
    assert_eq!(too_deep.findings.len(), 2);
    for finding in &too_deep.findings {
        assert_eq!((finding.grade, finding.code), (Grade::Stop, FindingCode::BreaksThrough));
        assert!(finding.message.contains("show face") && finding.numbers.len() == 1);
    }
    assert!(too_deep.features.iter().all(|cut| cut.left_to_show_mm == 0.0));
    assert_feature_laws(&too_deep);
    // At the depth that is called the deepest, wood is left only before it.
    let deepest = too_deep.features[0].deepest_mm.unwrap();
    assert!(hollow_body(&with(vec![BodyFeature::EdgeGroove(groove(deepest - 1e-6))])).unwrap().findings.is_empty());
    assert_eq!(hollow_body(&with(vec![BodyFeature::EdgeGroove(groove(deepest + 1e-6))])).unwrap().findings.len(), 2);
    let inside = EdgeGroove { from_inside_mm: 1.0, ..groove(8.0) };
    let inside = hollow_body(&with(vec![BodyFeature::EdgeGroove(inside)])).unwrap();
    assert!(inside.findings.iter().all(|finding| finding.grade == Grade::Caution) && inside.findings.len() == 2);
}

#[test]
fn a_biscuit_slot_starts_where_it_is_told() {
    let slot = EdgeGroove { start_mm: Some(100.0), length_mm: Some(60.0), ..groove(10.0) };
    let body = hollow_body(&with(vec![BodyFeature::EdgeGroove(slot)])).unwrap();
    assert!(near(body.features[0].volume_mm3, 60.0 * 4.0 * 10.0));
    for panel in body.panels().filter(|panel| panel.pieces.len() > 1) {
        let (low, high) = panel.pieces[1].solid.bounds();
        assert!(near(low.x, 100.0) && near(high.x, 160.0), "{}", panel.id);
    }
    // Round a corner between legs the mitre stands upright: the slot is measured from below.
    let legs =
        vec![BodyLeg { length_mm: 600.0, corner_deg: Some(90.0) }, BodyLeg { length_mm: 600.0, corner_deg: None }];
    let upright = EdgeGroove { edge: "front|leg2.front".parse().unwrap(), start_mm: Some(40.0), ..slot };
    let features = vec![BodyFeature::EdgeGroove(upright)];
    let body = hollow_body(&HollowBodyInput { legs, features, ..shelf() }).unwrap();
    assert_feature_laws(&body);
    for panel in body.panels().filter(|panel| panel.pieces.len() > 1) {
        let (low, high) = panel.pieces[1].solid.bounds();
        assert!(near(low.z, 40.0) && near(high.z, 100.0), "{}", panel.id);
    }
}

#[test]
fn recesses_open_the_faces_that_they_reach() {
    // A channel along the underside, an outlet through the front, a notch in the back edge of the top.
    let channel = BodyFeature::Recess(PanelRecess {
        from: CutFrom::Show,
        ..recess(FaceKind::Bottom, (-10.0, 150.0), (2000.0, 17.0), Some(8.0))
    });
    let outlet = BodyFeature::Recess(recess(FaceKind::Front, (900.0, 60.0), (68.0, 68.0), None));
    let notch = BodyFeature::Recess(recess(FaceKind::Top, (500.0, 195.0), (40.0, 50.0), None));
    let body = hollow_body(&with(vec![channel, outlet, notch])).unwrap();
    assert_feature_laws(&body);
    assert_eq!(body.findings, []);
    let volumes: Vec<_> = body.features.iter().map(|cut| cut.volume_mm3).collect();
    assert!(
        near(volumes[0], 1830.0 * 17.0 * 8.0)
            && near(volumes[1], 68.0 * 68.0 * 20.0)
            && near(volumes[2], 40.0 * 20.0 * 20.0)
    );
    assert!(near(body.features[0].left_to_inner_mm, 12.0) && body.features[0].left_to_show_mm == 0.0);
    let front = body.panel(id(FaceKind::Front)).unwrap();
    assert!(near(front.show_area_mm2, 1830.0 * 185.0 - 68.0 * 68.0) && near(front.cut_area_mm2, 4.0 * 68.0 * 20.0));
    let top = body.panel(id(FaceKind::Top)).unwrap();
    assert!(near(top.cut_area_mm2, 20.0 * (40.0 + 2.0 * 20.0)));
    assert!(near(top.edge(id(FaceKind::Back)).unwrap().area_mm2, (1830.0 - 40.0) * 20.0));
}

#[test]
fn grooves_that_cross_are_taken_once() {
    let along = BodyFeature::Recess(recess(FaceKind::Front, (200.0, 90.0), (300.0, 10.0), Some(6.0)));
    let across = BodyFeature::Recess(recess(FaceKind::Front, (300.0, 60.0), (10.0, 80.0), Some(6.0)));
    let body = hollow_body(&with(vec![along.clone(), across.clone()])).unwrap();
    assert_feature_laws(&body);
    let front = body.panel(id(FaceKind::Front)).unwrap();
    let area = 300.0 * 10.0 + 10.0 * 80.0 - 10.0 * 10.0;
    assert!(near(body.features.iter().map(|cut| cut.volume_mm3).sum(), 6.0 * area));
    // The bottom of the cross, and its outline of 2 × (300 + 80).
    assert!(near(front.cut_area_mm2, area + 6.0 * 2.0 * (300.0 + 80.0)), "{}", front.cut_area_mm2);
    let turned = hollow_body(&with(vec![across, along])).unwrap();
    assert!(near(turned.wood_volume_mm3, body.wood_volume_mm3));
    assert!(near(turned.panel(id(FaceKind::Front)).unwrap().cut_area_mm2, front.cut_area_mm2));
}

#[test]
fn a_hole_has_the_volume_of_its_cylinder() {
    let hole = PanelHole {
        panel: id(FaceKind::Top),
        from: CutFrom::Inner,
        along_mm: 700.0,
        across_mm: 100.0,
        diameter_mm: 8.0,
        depth_mm: Some(14.0),
    };
    let body = hollow_body(&with(vec![BodyFeature::Hole(hole)])).unwrap();
    assert_feature_laws(&body);
    let cut = body.features[0];
    assert!(near(cut.volume_mm3, core::f64::consts::PI * 16.0 * 14.0));
    assert!(near(cut.left_to_show_mm, 6.0) && cut.left_to_inner_mm == 0.0);
    let through = hollow_body(&with(vec![BodyFeature::Hole(PanelHole { depth_mm: Some(20.0), ..hole })])).unwrap();
    assert_eq!(through.findings[0].grade, Grade::Stop);
    let meant = hollow_body(&with(vec![BodyFeature::Hole(PanelHole { depth_mm: None, ..hole })])).unwrap();
    assert_eq!(meant.findings, []);
}

#[test]
fn an_eased_arris_takes_the_corner_outside_its_flats() {
    let eased = |radius_mm| BodyFeature::EasedArris(EasedArris { edge: "front|top".parse().unwrap(), radius_mm });
    let body = hollow_body(&with(vec![eased(6.0)])).unwrap();
    assert_feature_laws(&body);
    // Outside a polygon of four tangents round a quarter: r² (1 − 4 tan 11.25°), half of it from each panel.
    let corner = 36.0 * (1.0 - 4.0 * tan_deg(11.25));
    for cut in &body.features {
        assert!(near(cut.volume_mm3, 1830.0 * corner / 2.0), "{cut:?}");
    }
    let front = body.panel(id(FaceKind::Front)).unwrap();
    // The first flat leaves the show face where its tangent does.
    let flat = 6.0 * tan_deg(11.25);
    assert!(near(front.show_area_mm2, 1830.0 * (185.0 - 6.0 + flat)));
    assert!(near(front.cut_area_mm2, 1830.0 * (2.0 * flat + flat)), "{} {flat}", front.cut_area_mm2);
    // At a butt the arris is that of the panel that runs past.
    let edges = vec![BodyEdge {
        edge: "front|top".parse().unwrap(),
        joining: EdgeJoining::Butt,
        runs_past: Some(FaceKind::Front),
        rabbet_mm: None,
    }];
    let body = hollow_body(&HollowBodyInput { edges, ..with(vec![eased(6.0)]) }).unwrap();
    assert_eq!(body.features.len(), 1);
    assert!(near(body.features[0].volume_mm3, 1830.0 * corner));
}

#[test]
fn a_scribed_edge_follows_the_wall() {
    let point = |along_mm, depth_mm| ScribePoint { along_mm, depth_mm };
    let points = vec![point(0.0, 0.0), point(600.0, 6.0), point(1830.0, 2.0)];
    let scribe = ScribedEdge { edge: "back|top".parse().unwrap(), points };
    let body = hollow_body(&with(vec![BodyFeature::ScribedEdge(scribe.clone())])).unwrap();
    assert_feature_laws(&body);
    let area = 600.0 * 3.0 + 1230.0 * 4.0;
    assert!(near(body.features[0].volume_mm3, 20.0 * area));
    let top = body.panel(id(FaceKind::Top)).unwrap();
    assert!(near(top.show_area_mm2, 1830.0 * 215.0 - area));
    // The far corner has gone by 2 mm.
    let taken = &top.pieces.last().unwrap().solid;
    assert!(near(taken.bounds().0.y, 215.0 - 6.0) && near(taken.bounds().1.x, 1830.0));
    let mut back = scribe;
    back.points.swap(0, 1);
    let error = hollow_body(&with(vec![BodyFeature::ScribedEdge(back)])).expect_err("not in order");
    assert_eq!(error.field(), "features[0].scribed_edge.points[0].along_mm");
}

#[test]
fn features_that_cannot_be_are_refused_by_name() {
    let refused = |feature| {
        let error = hollow_body(&with(vec![feature])).expect_err("refused");
        (error.code(), error.field().to_owned())
    };
    let beside = BodyFeature::Recess(recess(FaceKind::Front, (5000.0, 0.0), (10.0, 10.0), None));
    assert_eq!(refused(beside), (ErrorCode::EmptyCut, "features[0]".to_owned()));
    let all = BodyFeature::Recess(recess(FaceKind::Front, (-10.0, -10.0), (3000.0, 300.0), None));
    assert_eq!(refused(all), (ErrorCode::NothingLeft, "features[0]".to_owned()));
    let unknown = BodyFeature::Recess(recess(FaceKind::Back, (0.0, 0.0), (10.0, 10.0), None));
    assert_eq!(refused(unknown), (ErrorCode::UnknownName, "features[0].recess.panel".to_owned()));
    let open = EdgeGroove { edge: "back|top".parse().unwrap(), ..groove(5.0) };
    assert_eq!(
        refused(BodyFeature::EdgeGroove(open)),
        (ErrorCode::UnknownName, "features[0].edge_groove.edge".to_owned())
    );
    let wide = EdgeGroove { width_mm: f64::NAN, ..groove(5.0) };
    assert_eq!(
        refused(BodyFeature::EdgeGroove(wide)),
        (ErrorCode::NotFinite, "features[0].edge_groove.width_mm".to_owned())
    );
    let none = EasedArris { edge: "top|bottom".parse().unwrap(), radius_mm: 3.0 };
    assert_eq!(
        refused(BodyFeature::EasedArris(none)),
        (ErrorCode::UnknownName, "features[0].eased_arris.edge".to_owned())
    );
    let short = ScribedEdge { edge: "back|top".parse().unwrap(), points: vec![] };
    assert_eq!(
        refused(BodyFeature::ScribedEdge(short)),
        (ErrorCode::Inconsistent, "features[0].scribed_edge.points".to_owned())
    );
}

#[test]
fn a_veneer_says_where_its_core_shows() {
    let edges = vec![BodyEdge {
        edge: "front|bottom".parse().unwrap(),
        joining: EdgeJoining::Butt,
        runs_past: Some(FaceKind::Front),
        rabbet_mm: None,
    }];
    let body = hollow_body(&HollowBodyInput { edges, veneer_mm: Some(0.6), ..shelf() }).unwrap();
    let at = |panel, edge: &str| {
        let edge: EdgeId = edge.parse().unwrap();
        body.veneer.iter().find(|found| found.panel == id(panel) && found.edge == edge).copied().unwrap()
    };
    assert_eq!(at(FaceKind::Front, "front|bottom").core, CoreAtEdge::Shows);
    assert_eq!(at(FaceKind::Bottom, "front|bottom").core, CoreAtEdge::Covered);
    assert_eq!(at(FaceKind::Top, "back|top").core, CoreAtEdge::InOpenFace);
    // At a square mitre: the corner of the core lies v √2 from the arris, a round r (√2 − 1), a chamfer c / √2.
    let mitre = at(FaceKind::Front, "front|top");
    assert_eq!(mitre.core, CoreAtEdge::Covered);
    assert!(near(mitre.largest_radius_mm.unwrap(), 0.6 * (2.0 + 2.0_f64.sqrt())));
    assert!(near(mitre.largest_chamfer_mm.unwrap(), 1.2));
    assert_eq!(at(FaceKind::Front, "front|bottom").largest_radius_mm, None);
    assert!(hollow_body(&shelf()).unwrap().veneer.is_empty());
}

proptest! {
    #[test]
    fn the_largest_round_touches_the_core(corner in 40.0..170.0, t_a in 8.0..30.0, t_b in 8.0..30.0, veneer in 0.2..3.0) {
        // In the section: the arris at 0, face a along x, the wood above it; P at the depth of the veneer on the mitre.
        let mitre = mitre_pair(&MitrePairInput { thickness_a_mm: t_a, thickness_b_mm: t_b, corner_deg: corner }).unwrap();
        let section = [(0.0, 0.0), (300.0, 0.0), {
            let (sine, cosine) = sin_cos_deg(corner);
            (300.0 * cosine, 300.0 * sine)
        }];
        let corners = section.map(|(y_mm, z_mm)| SectionCorner { y_mm, z_mm }).to_vec();
        let boards = vec![board(FaceKind::Side(1), t_a), board(FaceKind::Side(3), t_b)];
        let section = BodySection::Polygon(PolygonalSection { corners });
        let input = HollowBodyInput { section, boards, veneer_mm: Some(veneer), ..shelf() };
        let Ok(body) = hollow_body(&input) else { return Ok(()) };
        let found = body.veneer.iter().find(|at| at.panel == id(FaceKind::Side(1)) && at.core == CoreAtEdge::Covered).unwrap();
        let (Some(radius), Some(chamfer)) = (found.largest_radius_mm, found.largest_chamfer_mm) else { return Ok(()) };
        let cot_half = 1.0 / tan_deg(0.5 * corner);
        let p = (veneer / tan_deg(mitre.angle_a_deg), veneer);
let (off, up) = (p.0 - radius * cot_half, p.1 - radius);
        let gap = (off * off + up * up).sqrt() - radius;
        prop_assert!(gap.abs() < 1e-9 * radius.max(1.0), "{gap}");
        // P lies on the line of the chamfer: as far along both faces, x + y cot h = c.
        let (sine, cosine) = sin_cos_deg(0.5 * corner);
        prop_assert!((p.0 * cosine + p.1 * sine - chamfer * cosine).abs() < 1e-9 * chamfer.max(1.0));
    }

    #[test]
    fn features_of_any_body_add_up(
        input in body(),
        cuts in prop::collection::vec((any::<prop::sample::Index>(), 0.0..1.0, 0.0..1.0, 5.0..300.0, 5.0..80.0, 1.0..20.0, 0_u8..3), 1..5),
    ) {
        let Ok(plain) = hollow_body(&input) else { return Ok(()) };
        let panels: Vec<_> = plain.panels().collect();
        let features = cuts.iter().map(|(which, along, across, length, width, depth, kind)| {
            let panel = panels[which.index(panels.len())];
            let (along_mm, across_mm) = (along * panel.blank_length_mm, across * panel.blank_width_mm);
            let from = if *kind == 0 { CutFrom::Show } else { CutFrom::Inner };
            if *kind == 2 {
                let hole = PanelHole { panel: panel.id, from, along_mm, across_mm, diameter_mm: *depth, depth_mm: Some(*width) };
                BodyFeature::Hole(hole)
            } else {
                let depth_mm = (*depth < 18.0).then_some(*depth);
                let (length_mm, width_mm) = (*length, *width);
                BodyFeature::Recess(PanelRecess { panel: panel.id, from, along_mm, across_mm, length_mm, width_mm, depth_mm })
            }
        });
        match hollow_body(&HollowBodyInput { features: features.collect(), ..input.clone() }) {
            Ok(body) => assert_feature_laws(&body),
            Err(error) => prop_assert!(matches!(error.code(), ErrorCode::EmptyCut | ErrorCode::NothingLeft), "{error}"),
        }
    }

    #[test]
    fn grooves_in_any_mitre_stay_below_the_show_face_until_the_depth_they_name(
        input in body(), which in any::<prop::sample::Index>(), from in 0.2..0.8_f64, width in 1.0..3.0_f64, depth in 1.0..15.0,
    ) {
        let Ok(plain) = hollow_body(&input) else { return Ok(()) };
        let mitres: Vec<_> = plain
            .panels()
            .flat_map(|panel| panel.edges.iter().map(move |edge| (panel, edge)))
            .filter(|(_, edge)| edge.joint == EdgeJoint::Mitred && edge.show_length_mm > 1.0)
            .collect();
        prop_assume!(!mitres.is_empty());
        let (panel, edge) = mitres[which.index(mitres.len())];
        let seam = panel.thickness_mm / sin_cos_deg(90.0 - edge.tilt_deg).0;
        let groove = EdgeGroove {
            edge: edge.id,
            width_mm: width,
            depth_mm: depth,
            from_inside_mm: seam * from,
            start_mm: None,
            length_mm: None,
        };
        let features = vec![BodyFeature::EdgeGroove(groove)];
        let body = hollow_body(&HollowBodyInput { features, ..input.clone() });
        let Ok(body) = body else { return Ok(()) };
        assert_feature_laws(&body);
        for cut in &body.features {
            let inside = from * seam - 0.5 * width > 0.0 && from * seam + 0.5 * width < seam;
            if cut.panel == panel.id && inside && cut.deepest_mm.is_some_and(|deepest| depth < deepest - 1e-6) {
                prop_assert!(cut.left_to_show_mm > 0.0, "{cut:?}");
            }
        }
    }
}

#[test]
fn returns_and_features_make_one_body() {
    // An eased arris round the corner of a return, a groove and a hole, all in one body.
    let features = vec![
        BodyFeature::EdgeGroove(groove(6.0)),
        BodyFeature::EasedArris(EasedArris { edge: "front|left_end".parse().unwrap(), radius_mm: 4.0 }),
        BodyFeature::EasedArris(EasedArris { edge: "front|top".parse().unwrap(), radius_mm: 4.0 }),
    ];
    let body = hollow_body(&HollowBodyInput { left_end: closed(20.0), features, ..shelf() }).unwrap();
    assert_feature_laws(&body);
    let plain = hollow_body(&HollowBodyInput { left_end: closed(20.0), ..shelf() }).unwrap();
    assert_laws(&plain);
    assert!(body.wood_volume_mm3 < plain.wood_volume_mm3);
}
