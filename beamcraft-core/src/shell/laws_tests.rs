//! Laws of the shell on random bodies, and bodies with known sizes.

use proptest::prelude::*;

use super::*;
use crate::error::ErrorCode;
use crate::geometry::{ConvexSolid, Plane, Vec3};
use crate::numeric::real::sin_cos_deg;

fn face(kind: FaceKind) -> FaceId {
    FaceId::first_leg(kind)
}

fn return_end(thickness_mm: f64, corner_deg: f64) -> LegEnd {
    LegEnd { kind: EndKind::ReturnPanel, thickness_mm: Some(thickness_mm), corner_deg }
}

fn open_end(corner_deg: f64) -> LegEnd {
    LegEnd { kind: EndKind::Open, thickness_mm: None, corner_deg }
}

/// Front, top and bottom of one thickness, open back, return ends.
fn beam(length_mm: f64, height_mm: f64, depth_mm: f64, thickness_mm: f64, left_deg: f64, right_deg: f64) -> Leg {
    let board = |face| LegBoard { face, thickness_mm };
    Leg {
        leg: 1,
        length_mm,
        height_mm,
        depth_mm,
        boards: [LongFace::Front, LongFace::Top, LongFace::Bottom].map(board).to_vec(),
        left_end: return_end(thickness_mm, left_deg),
        right_end: return_end(thickness_mm, right_deg),
        butts: vec![],
    }
}

fn scenario_a() -> Leg {
    beam(1830.0, 185.0, 215.0, 20.0, 90.0, 90.0)
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * a.abs().max(b.abs()).max(1.0)
}

/// Every directed edge once beside its reverse, V − E + F = 2.
#[track_caller]
fn assert_closed(solid: &ConvexSolid) {
    let edges: Vec<_> = solid.faces().flat_map(|face| face.edges().collect::<Vec<_>>()).collect();
    for edge in &edges {
        assert_eq!(edges.iter().filter(|other| *other == edge).count(), 1);
        assert_eq!(edges.iter().filter(|other| **other == (edge.1, edge.0)).count(), 1);
    }
    assert_eq!(solid.vertices().len() + solid.faces().len(), solid.edge_count() + 2);
}

fn solid(panel: &Panel) -> &ConvexSolid {
    panel.blank().expect("a panel has a piece")
}

/// Volume that two panels have in common: the sum over their signed pieces.
fn common_volume(one: &Panel, other: &Panel) -> f64 {
    let sign = |piece: &Piece| if piece.sign == PieceSign::Added { 1.0 } else { -1.0 };
    let pairs = one.pieces.iter().flat_map(|a| other.pieces.iter().map(move |b| (a, b)));
    pairs.map(|(a, b)| sign(a) * sign(b) * a.solid.common(&b.solid, 99).map_or(0.0, |common| common.volume())).sum()
}

/// Both faces of a mitre are the same polygon.
#[track_caller]
fn assert_same_contact(one: &Panel, edge: &PanelEdge, other: &Panel) {
    let back = other.edge(one.id).unwrap_or_else(|| panic!("{} has no edge to {}", other.id, one.id));
    assert_eq!((edge.id, edge.joint), (back.id, back.joint));
    let here = solid(one).face(edge.tag).expect("an edge has a face");
    let there = solid(other).face(back.tag).expect("an edge has a face");
    assert!(near(here.area(), there.area()), "{edge:?} {back:?}");
    assert_eq!(here.corners.len(), there.corners.len(), "{edge:?}");
    for point in here.points() {
        let gap = there.points().map(|other| (other - point).length()).fold(f64::INFINITY, f64::min);
        assert!(gap < 1e-7, "{} gapes by {gap}", edge.id);
    }
}

/// The laws that every shell keeps.
#[track_caller]
fn assert_laws(shell: &Shell) {
    assert_panel_laws(
        &shell.panels.iter().collect::<Vec<_>>(),
        shell.outer_volume_mm3,
        shell.hollow_volume_mm3,
        shell.wood_volume_mm3,
    );
}

/// The laws of all panels of a body.
#[track_caller]
pub(super) fn assert_panel_laws(panels: &[&Panel], outer_mm3: f64, hollow_mm3: f64, wood_mm3: f64) {
    // The wood of thin boards is the small difference of two large volumes.
    assert!((wood_mm3 - (outer_mm3 - hollow_mm3)).abs() < 1e-10 * outer_mm3, "{wood_mm3} {outer_mm3} {hollow_mm3}");
    for (at, one) in panels.iter().enumerate() {
        one.pieces.iter().for_each(|piece| assert_closed(&piece.solid));
        let total = one.show_area_mm2 + one.inner_area_mm2 + one.edge_area_mm2 + one.cut_area_mm2;
        assert!(near(total, one.mass.surface_mm2), "{one:?}");
        let signed =
            |piece: &Piece| if piece.sign == PieceSign::Added { piece.solid.volume() } else { -piece.solid.volume() };
        let volume: f64 = one.pieces.iter().map(signed).sum();
        assert!((volume - one.mass.volume_mm3).abs() < 1e-12 * outer_mm3);
        for other in &panels[at + 1..] {
            let common = common_volume(one, other);
            assert!(common.abs() < 1e-10 * outer_mm3, "{} and {} overlap by {common}", one.id, other.id);
        }
        for edge in one.edges.iter().filter(|edge| edge.joint == EdgeJoint::Mitred) {
            let other = panels.iter().find(|panel| panel.id == edge.neighbour).expect("mitred to a panel");
            // Beside rabbets of different depths the two panels of a mitre reach differently far into a third.
            if [one, other].into_iter().all(|panel| panel.edges.iter().all(|edge| edge.rabbet_mm.is_none())) {
                assert_same_contact(one, edge, other);
            }
        }
    }
}

#[test]
fn the_ash_beam_has_the_sizes_of_its_closed_form() {
    let shell = shell_panels(&scenario_a()).unwrap();
    assert_laws(&shell);
    assert!(near(shell.wood_volume_mm3, 1830.0 * 185.0 * 215.0 - 1790.0 * 145.0 * 195.0));
    assert!(near(shell.centroid_mm.x, 915.0) && near(shell.centroid_mm.z, 92.5));
    let sizes = |kind| {
        let panel = shell.panel(face(kind)).unwrap();
        [panel.show_length_mm, panel.show_width_mm, panel.inner_length_mm, panel.inner_width_mm]
    };
    let expected = [
        (FaceKind::Front, [1830.0, 185.0, 1790.0, 145.0]),
        (FaceKind::Top, [1830.0, 215.0, 1790.0, 195.0]),
        (FaceKind::Bottom, [1830.0, 215.0, 1790.0, 195.0]),
        (FaceKind::LeftEnd, [215.0, 185.0, 195.0, 145.0]),
        (FaceKind::RightEnd, [215.0, 185.0, 195.0, 145.0]),
    ];
    for (kind, numbers) in expected {
        for (found, number) in sizes(kind).into_iter().zip(numbers) {
            assert!(near(found, number), "{kind}: {:?}", sizes(kind));
        }
    }
    let top = shell.panel(face(FaceKind::Top)).unwrap();
    assert_eq!(top.edge(face(FaceKind::Front)).unwrap().tilt_deg, 45.0);
    let wall = top.edge(face(FaceKind::Back)).unwrap();
    assert_eq!((wall.joint, wall.tilt_deg, wall.gauge_deg, wall.cut), (EdgeJoint::Open, 0.0, 0.0, EdgeCut::Rip));
    assert_eq!(top.edge(face(FaceKind::LeftEnd)).unwrap().cut, EdgeCut::CrossCut);
    assert!(top.edge(face(FaceKind::Bottom)).is_none());
}

#[test]
fn the_grain_runs_round_the_corners_with_the_same_way_up() {
    let shell = shell_panels(&scenario_a()).unwrap();
    let frame = |kind| shell.panel(face(kind)).unwrap().frame;
    for kind in [FaceKind::LeftEnd, FaceKind::Front, FaceKind::RightEnd] {
        assert_eq!(frame(kind).v, Vec3::Z, "{kind}");
    }
    assert_eq!(frame(FaceKind::LeftEnd).u, -Vec3::Y);
    assert_eq!(frame(FaceKind::Front).u, Vec3::X);
    assert_eq!(frame(FaceKind::RightEnd).u, Vec3::Y);
    // Unrolled, each panel starts where the one before ends.
    let end = |kind| frame(kind).to_world(Vec3::X * shell.panel(face(kind)).unwrap().show_length_mm);
    assert!((end(FaceKind::LeftEnd) - frame(FaceKind::Front).origin_mm).length() < 1e-9);
    assert!((end(FaceKind::Front) - frame(FaceKind::RightEnd).origin_mm).length() < 1e-9);
}

#[test]
fn splayed_side_walls_give_the_end_mitres_of_half_their_angle() {
    let inch = 25.4;
    let leg = beam(87.0 * inch, 7.25 * inch, 9.5 * inch, 13.0 / 16.0 * inch, 93.0, 87.0);
    let shell = shell_panels(&leg).unwrap();
    assert_laws(&shell);
    let front = shell.panel(face(FaceKind::Front)).unwrap();
    assert!(near(front.edge(face(FaceKind::LeftEnd)).unwrap().tilt_deg, 90.0 - 46.5));
    assert!(near(front.edge(face(FaceKind::RightEnd)).unwrap().tilt_deg, 90.0 - 43.5));
    // The top is cut 3° off square at both ends: it leans left at both.
    let top = shell.panel(face(FaceKind::Top)).unwrap();
    assert!(near(top.edge(face(FaceKind::LeftEnd)).unwrap().gauge_deg, 3.0));
    assert!(near(top.edge(face(FaceKind::RightEnd)).unwrap().gauge_deg, -3.0));
    assert!(near(top.edge(face(FaceKind::LeftEnd)).unwrap().tilt_deg, 45.0));
    // Both ends lean the same way, so the back is as long as the front.
    assert!(near(leg.back_length_mm(), 87.0 * inch));
}

#[test]
fn boards_that_fill_the_body_are_refused_by_name() {
    let refused = |leg: &Leg| {
        let error = shell_panels(leg).expect_err("no room");
        (error.code(), error.field().to_owned())
    };
    let mut leg = scenario_a();
    leg.boards[1].thickness_mm = 150.0;
    leg.boards[2].thickness_mm = 40.0;
    assert_eq!(refused(&leg), (ErrorCode::NoRoomInside, "boards[2].thickness_mm".to_owned()));
    let mut leg = scenario_a();
    leg.length_mm = 45.0;
    leg.left_end = return_end(25.0, 90.0);
    assert_eq!(refused(&leg), (ErrorCode::NoRoomInside, "right_end.thickness_mm".to_owned()));
    let mut leg = scenario_a();
    leg.depth_mm = 20.0;
    assert_eq!(refused(&leg), (ErrorCode::NoRoomInside, "boards[0].thickness_mm".to_owned()));
    // Exactly full is full.
    let mut leg = scenario_a();
    leg.height_mm = 40.0;
    assert_eq!(refused(&leg), (ErrorCode::NoRoomInside, "boards[2].thickness_mm".to_owned()));
}

#[test]
fn what_contradicts_itself_is_refused_all_at_once() {
    let mut leg = scenario_a();
    leg.length_mm = f64::NAN;
    leg.boards[1].thickness_mm = 0.0;
    leg.boards.push(LegBoard { face: LongFace::Top, thickness_mm: 20.0 });
    leg.left_end.thickness_mm = None;
    leg.right_end.kind = EndKind::Open;
    let error = shell_panels(&leg).expect_err("refused");
    let found: Vec<_> = error.details().iter().map(|fault| (fault.code, fault.path.as_str())).collect();
    assert_eq!(
        found,
        [
            (ErrorCode::NotFinite, "length_mm"),
            (ErrorCode::OutOfRange, "boards[1].thickness_mm"),
            (ErrorCode::DuplicateField, "boards[3].face"),
            (ErrorCode::MissingField, "left_end.thickness_mm"),
            (ErrorCode::Inconsistent, "right_end.thickness_mm"),
        ]
    );
    let mut leg = scenario_a();
    leg.boards.clear();
    (leg.left_end, leg.right_end) = (open_end(90.0), open_end(90.0));
    let error = shell_panels(&leg).expect_err("no panel");
    assert_eq!((error.code(), error.field()), (ErrorCode::Inconsistent, "boards"));
    let mut leg = beam(300.0, 185.0, 215.0, 20.0, 40.0, 40.0);
    assert!(leg.back_length_mm() < 0.0);
    assert_eq!(shell_panels(&leg).expect_err("ends meet").field(), "depth_mm");
    leg.depth_mm = 80.0;
    assert_laws(&shell_panels(&leg).unwrap());
}

#[test]
fn one_board_alone_is_a_plain_board() {
    let mut leg = scenario_a();
    leg.boards.truncate(1);
    (leg.left_end, leg.right_end) = (open_end(90.0), open_end(90.0));
    let shell = shell_panels(&leg).unwrap();
    assert_eq!(shell.panels.len(), 1);
    assert!(near(shell.wood_volume_mm3, 1830.0 * 185.0 * 20.0));
    assert!(shell.panels[0].edges.iter().all(|edge| edge.tilt_deg == 0.0 && edge.joint == EdgeJoint::Open));
}

fn butt(runs_past: LegFace, stops: LegFace) -> LegButt {
    LegButt { runs_past, stops }
}

#[test]
fn butted_panels_have_square_edges_and_add_up() {
    let mut leg = scenario_a();
    leg.butts = vec![
        butt(LegFace::Front, LegFace::Top),
        butt(LegFace::Front, LegFace::Bottom),
        butt(LegFace::LeftEnd, LegFace::Top),
        butt(LegFace::LeftEnd, LegFace::Bottom),
        butt(LegFace::RightEnd, LegFace::Top),
        butt(LegFace::RightEnd, LegFace::Bottom),
    ];
    let shell = shell_panels(&leg).unwrap();
    assert_laws(&shell);
    // The top lies between the ends and behind the front.
    let top = shell.panel(face(FaceKind::Top)).unwrap();
    assert!(near(top.show_length_mm, 1790.0) && near(top.show_width_mm, 195.0));
    assert!(near(top.mass.volume_mm3, 1790.0 * 195.0 * 20.0));
    assert!(top.edges.iter().all(|edge| edge.tilt_deg == 0.0));
    let front = shell.panel(face(FaceKind::Front)).unwrap();
    assert_eq!(front.edge(face(FaceKind::Top)).unwrap().joint, EdgeJoint::RunsPast);
    assert!(near(front.show_width_mm, 185.0) && near(front.inner_width_mm, 185.0));
}

#[test]
fn joints_without_an_order_at_a_corner_are_refused() {
    let refused = |butts: Vec<LegButt>| {
        let error = shell_panels(&Leg { butts, ..scenario_a() }).expect_err("a hole in the corner");
        assert_eq!(error.field(), "butts");
        (error.code(), error.details()[0].given.clone())
    };
    // Top past front, both mitred to the left end.
    let (code, given) = refused(vec![butt(LegFace::Top, LegFace::Front)]);
    assert_eq!(code, ErrorCode::Inconsistent);
    assert!(given.starts_with("the corner of front, ") && given.ends_with(", top"), "{given}");
    // Each runs past the next.
    let cycle = vec![
        butt(LegFace::Top, LegFace::Front),
        butt(LegFace::Front, LegFace::LeftEnd),
        butt(LegFace::LeftEnd, LegFace::Top),
    ];
    assert_eq!(refused(cycle).0, ErrorCode::Inconsistent);
    assert_eq!(refused(vec![butt(LegFace::Top, LegFace::Bottom)]).0, ErrorCode::Inconsistent);
    assert_eq!(refused(vec![butt(LegFace::Top, LegFace::Back)]).0, ErrorCode::Inconsistent);
    let twice = vec![butt(LegFace::Top, LegFace::Front), butt(LegFace::Front, LegFace::Top)];
    assert_eq!(refused(twice).0, ErrorCode::DuplicateField);
}

#[test]
#[cfg(feature = "json")]
fn the_json_door_reads_a_leg_and_names_its_faces() {
    let text = r#"{"length_mm": 1830, "height_mm": 185, "depth_mm": 215,
        "boards": [{"face": "front", "thickness_mm": 20}, {"face": "top", "thickness_mm": 20},
                   {"face": "bottom", "thickness_mm": 20}],
        "left_end": {"kind": "return_panel", "thickness_mm": 20}, "right_end": {"kind": "open"},
        "butts": [{"runs_past": "top", "stops": "front"}, {"runs_past": "top", "stops": "left_end"}]}"#;
    let out = crate::registry::call("shell_panels", text).unwrap();
    for part in [r#""id":"front|top""#, r#""joint":"runs_past""#, r#""neighbour":"back""#, r#""cut":"cross_cut""#] {
        assert!(out.contains(part), "{part} in {out}");
    }
    assert_eq!(out, crate::registry::call("shell_panels", text).unwrap());
    let error = crate::registry::call("shell_panels", &text.replace("\"top\", \"stops\"", "\"lid\", \"stops\""))
        .expect_err("no such face");
    assert_eq!(error.field(), "butts[0].runs_past");
}

/// A splayed box: `sides` equal sides leaning outwards, open above and below.
fn splayed_box(sides: u32, slope_deg: f64, thickness_mm: f64, at: Vec3) -> Vec<OuterFace> {
    let (sine, cosine) = sin_cos_deg(slope_deg);
    let mut faces: Vec<_> = (0..sides)
        .map(|side| {
            let (y, x) = sin_cos_deg(360.0 * f64::from(side) / f64::from(sides));
            let out = Vec3::new(x, y, 0.0);
            OuterFace {
                id: face(FaceKind::Side(side + 1)),
                plane: Plane::through(at + out * 300.0, out * sine - Vec3::Z * cosine).unwrap(),
                presence: Presence::Board { thickness_mm },
                grain: Vec3::new(-y, x, 0.0),
            }
        })
        .collect();
    for (kind, z, up) in [(FaceKind::Bottom, 0.0, -1.0), (FaceKind::Top, 120.0, 1.0)] {
        let plane = Plane::through(at + Vec3::Z * z, Vec3::Z * up).unwrap();
        faces.push(OuterFace { id: face(kind), plane, presence: Presence::Open, grain: Vec3::X });
    }
    faces
}

/// Tapered rectangular beam from a1 × b1 to a2 × b2 over a length, along x.
fn tapered(a1: f64, b1: f64, a2: f64, b2: f64, length: f64) -> Vec<OuterFace> {
    let board = Presence::Board { thickness_mm: 15.0 };
    // Each side leans by half the difference of the size across it.
    let side = |kind, out: Vec3, from: f64, to: f64| OuterFace {
        id: face(kind),
        plane: Plane::through(out * (from / 2.0), out * length + Vec3::X * ((from - to) / 2.0)).unwrap(),
        presence: board,
        grain: Vec3::X,
    };
    let end = |kind, x: f64, out: f64| OuterFace {
        id: face(kind),
        plane: Plane::through(Vec3::X * x, Vec3::X * out).unwrap(),
        presence: Presence::Open,
        grain: Vec3::Z,
    };
    vec![
        side(FaceKind::Front, -Vec3::Y, b1, b2),
        side(FaceKind::Back, Vec3::Y, b1, b2),
        side(FaceKind::Top, Vec3::Z, a1, a2),
        side(FaceKind::Bottom, -Vec3::Z, a1, a2),
        end(FaceKind::LeftEnd, 0.0, -1.0),
        end(FaceKind::RightEnd, length, 1.0),
    ]
}

#[test]
fn tapered_beams_have_the_angles_and_volumes_of_an_independent_computation() {
    // Vertex coordinates and face normals by another program; volumes by the prismoidal rule.
    let rows = [
        (tapered(200.0, 150.0, 160.0, 120.0, 2000.0), 90.0043, 0.57292, 48_800_000.0),
        (tapered(300.0, 300.0, 200.0, 200.0, 2500.0), 90.02291, 1.14553, 158_333_333.33),
        (tapered(180.0, 180.0, 180.0, 140.0, 1500.0), 90.0, 0.0, 43_200_000.0),
        (tapered(150.0, 200.0, 100.0, 200.0, 2400.0), 90.0, 0.59681, 60_000_000.0),
    ];
    for (faces, corner, taper, volume) in rows {
        let shell = build_shell(&faces, &[]).unwrap();
        assert_laws(&shell);
        assert!((shell.outer_volume_mm3 - volume).abs() < 0.05);
        // The panel a wide: its edges to top and bottom converge.
        let front = shell.panel(face(FaceKind::Front)).unwrap();
        let edge = front.edge(face(FaceKind::Top)).unwrap();
        assert!((edge.corner_deg - corner).abs() < 1e-4, "{edge:?}");
        assert!((edge.gauge_deg.abs() - taper).abs() < 1e-4, "{edge:?}");
        assert!(near(edge.tilt_deg, 90.0 - edge.corner_deg / 2.0));
    }
}

#[test]
fn the_outer_faces_must_enclose_a_body() {
    let refused = |faces: &[OuterFace]| {
        let error = build_shell(faces, &[]).expect_err("refused");
        (error.code(), error.field().to_owned())
    };
    let faces = splayed_box(4, 70.0, 20.0, Vec3::ZERO);
    assert_eq!(refused(&faces[..5]), (ErrorCode::EmptySolid, String::new()));
    assert_eq!(refused(&faces[..3]), (ErrorCode::Inconsistent, String::new()));
    let mut double = faces.clone();
    double[1].id = double[0].id;
    assert_eq!(refused(&double), (ErrorCode::DuplicateField, "side1".to_owned()));
    let mut beyond = faces.clone();
    beyond[5].plane = beyond[5].plane.moved(1e6).unwrap();
    beyond.push(OuterFace { id: face(FaceKind::Back), plane: faces[5].plane, ..beyond[5] });
    assert_eq!(refused(&beyond), (ErrorCode::EmptySolid, "top".to_owned()));
    let mut grain = faces.clone();
    grain[0].grain = grain[0].plane.normal();
    assert_eq!(refused(&grain), (ErrorCode::Inconsistent, "side1".to_owned()));
    let mut thick = faces;
    thick[2].presence = Presence::Board { thickness_mm: f64::NAN };
    assert_eq!(refused(&thick), (ErrorCode::NotFinite, "side3".to_owned()));
}

/// A leg with any boards, unequal thicknesses and splayed ends.
fn leg() -> impl Strategy<Value = Leg> {
    let sizes = (150.0..3000.0, 60.0..400.0, 60.0..400.0);
    let boards = prop::collection::vec(prop_oneof![3 => (3.0..40.0).prop_map(Some), 1 => Just(None)], 6);
    (sizes, boards, 45.0..135.0, 45.0..135.0).prop_map(|((length_mm, height_mm, depth_mm), boards, left, right)| {
        let long = [LongFace::Front, LongFace::Back, LongFace::Top, LongFace::Bottom];
        let listed = long
            .into_iter()
            .zip(&boards)
            .filter_map(|(face, board)| board.map(|thickness_mm| LegBoard { face, thickness_mm }));
        let end = |board: Option<f64>, corner_deg| board.map_or(open_end(corner_deg), |t| return_end(t, corner_deg));
        Leg {
            leg: 1,
            length_mm,
            height_mm,
            depth_mm,
            boards: listed.collect(),
            left_end: end(boards[4], left),
            right_end: end(boards[5], right),
            butts: vec![],
        }
    })
}

fn mirrored(leg: &Leg) -> Leg {
    Leg { left_end: leg.right_end, right_end: leg.left_end, ..leg.clone() }
}

fn scaled(leg: &Leg, factor: f64) -> Leg {
    let mut leg = leg.clone();
    for size in [&mut leg.length_mm, &mut leg.height_mm, &mut leg.depth_mm] {
        *size *= factor;
    }
    leg.boards.iter_mut().for_each(|board| board.thickness_mm *= factor);
    for end in [&mut leg.left_end, &mut leg.right_end] {
        end.thickness_mm = end.thickness_mm.map(|thickness| thickness * factor);
    }
    leg
}

fn thickness_of(shell: &Shell, id: FaceId) -> f64 {
    shell.panel(id).unwrap().thickness_mm
}

/// Whether the face of a random order runs past, is mitred to, or stops at another.
fn ranked_butts(leg: &Leg, ranks: &[u8]) -> Vec<LegButt> {
    let kinds = [
        (LegFace::Front, FaceKind::Front),
        (LegFace::Back, FaceKind::Back),
        (LegFace::Top, FaceKind::Top),
        (LegFace::Bottom, FaceKind::Bottom),
        (LegFace::LeftEnd, FaceKind::LeftEnd),
        (LegFace::RightEnd, FaceKind::RightEnd),
    ];
    let shell = shell_panels(leg).unwrap();
    let mut butts = vec![];
    for (a, (one, kind)) in kinds.into_iter().enumerate() {
        for (b, (other, beyond)) in kinds.into_iter().enumerate() {
            let opposite = a / 2 == b / 2;
            let both = shell.panel(face(kind)).is_some() && shell.panel(face(beyond)).is_some();
            if both && !opposite && ranks[a] > ranks[b] {
                butts.push(butt(one, other));
            }
        }
    }
    butts
}

proptest! {
    #[test]
    fn every_shell_keeps_the_laws(leg in leg()) {
        match shell_panels(&leg) {
            Ok(shell) => assert_laws(&shell),
            Err(error) => prop_assert!(
                matches!(error.code(), ErrorCode::NoRoomInside | ErrorCode::Inconsistent),
                "{error}"
            ),
        }
    }

    #[test]
    fn a_hollow_by_hand_is_the_hollow_of_the_shell(leg in leg()) {
        // Prism over a trapezoid, by the mean of its parallel sides.
        let Ok(shell) = shell_panels(&leg) else { return Ok(()) };
        let thick = |kind| shell.panel(face(kind)).map_or(0.0, |panel| panel.thickness_mm);
        let (front, back) = (thick(FaceKind::Front), leg.depth_mm - thick(FaceKind::Back));
        let inner = |y: f64| {
            let end = |end: &LegEnd, kind| {
                let (sine, cosine) = sin_cos_deg(end.corner_deg);
                (y * cosine + thick(kind)) / sine
            };
            leg.length_mm - end(&leg.left_end, FaceKind::LeftEnd) - end(&leg.right_end, FaceKind::RightEnd)
        };
        let height = leg.height_mm - thick(FaceKind::Top) - thick(FaceKind::Bottom);
        let hollow = (inner(front) + inner(back)) / 2.0 * (back - front) * height;
        prop_assert!((hollow - shell.hollow_volume_mm3).abs() < 1e-9 * shell.outer_volume_mm3);
    }

    #[test]
    fn every_mitre_agrees_with_the_mitre_of_two_boards(leg in leg()) {
        let Ok(shell) = shell_panels(&leg) else { return Ok(()) };
        for panel in &shell.panels {
            for edge in panel.edges.iter().filter(|edge| edge.joint == EdgeJoint::Mitred) {
                let corner_deg = match (panel.id.kind, edge.neighbour.kind) {
                    (FaceKind::Front, FaceKind::LeftEnd) | (FaceKind::LeftEnd, FaceKind::Front) => leg.left_end.corner_deg,
                    (FaceKind::Front, FaceKind::RightEnd) | (FaceKind::RightEnd, FaceKind::Front) => leg.right_end.corner_deg,
                    (FaceKind::Back, FaceKind::LeftEnd) | (FaceKind::LeftEnd, FaceKind::Back) => 180.0 - leg.left_end.corner_deg,
                    (FaceKind::Back, FaceKind::RightEnd) | (FaceKind::RightEnd, FaceKind::Back) => 180.0 - leg.right_end.corner_deg,
                    _ => 90.0,
                };
                prop_assert!((edge.corner_deg - corner_deg).abs() < 1e-9, "{edge:?}");
                let pair = mitre_pair(&MitrePairInput {
                    thickness_a_mm: panel.thickness_mm,
                    thickness_b_mm: thickness_of(&shell, edge.neighbour),
                    corner_deg,
                }).unwrap();
                prop_assert!((edge.tilt_deg - pair.tilt_a_deg).abs() < 1e-9, "{edge:?} {pair:?}");
            }
        }
    }

    #[test]
    fn the_mirror_swaps_the_ends(leg in leg()) {
        let (Ok(one), Ok(other)) = (shell_panels(&leg), shell_panels(&mirrored(&leg))) else { return Ok(()) };
        let swap = |kind| match kind {
            FaceKind::LeftEnd => FaceKind::RightEnd,
            FaceKind::RightEnd => FaceKind::LeftEnd,
            kind => kind,
        };
        for panel in &one.panels {
            let twin = other.panel(face(swap(panel.id.kind))).unwrap();
            prop_assert!(near(panel.mass.volume_mm3, twin.mass.volume_mm3));
            prop_assert!(near(panel.show_length_mm, twin.show_length_mm));
            prop_assert!((leg.length_mm - panel.mass.centroid_mm.x - twin.mass.centroid_mm.x).abs() < 1e-8);
            for edge in &panel.edges {
                let back = twin.edge(face(swap(edge.neighbour.kind))).unwrap();
                prop_assert!((edge.tilt_deg - back.tilt_deg).abs() < 1e-9);
                prop_assert!((edge.gauge_deg.abs() - back.gauge_deg.abs()).abs() < 1e-9);
            }
        }
    }

    #[test]
    fn a_larger_body_of_the_same_shape_has_the_same_angles(leg in leg(), factor in 1.0..3.0) {
        let (Ok(one), Ok(other)) = (shell_panels(&leg), shell_panels(&scaled(&leg, factor))) else { return Ok(()) };
        prop_assert!(near(one.wood_volume_mm3 * factor * factor * factor, other.wood_volume_mm3));
        for (panel, twin) in one.panels.iter().zip(&other.panels) {
            prop_assert!(near(panel.show_width_mm * factor, twin.show_width_mm));
            prop_assert!(near(panel.show_area_mm2 * factor * factor, twin.show_area_mm2));
            for (edge, back) in panel.edges.iter().zip(&twin.edges) {
                prop_assert!((edge.tilt_deg - back.tilt_deg).abs() < 1e-9);
            }
        }
    }

    #[test]
    fn a_splayed_box_has_the_compound_mitre(sides in 3_u32..11, slope in 20.0..90.0, t in 1.0..25.0) {
        let Ok(shell) = build_shell(&splayed_box(sides, slope, t, Vec3::ZERO), &[]) else { return Ok(()) };
        assert_laws(&shell);
        let corner_deg = 180.0 - 360.0 / f64::from(sides);
        let mitre = compound_mitre(&CompoundMitreInput { slope_deg: slope, corner_deg }).unwrap();
        for panel in &shell.panels {
            for edge in panel.edges.iter().filter(|edge| edge.joint == EdgeJoint::Mitred) {
                prop_assert!((edge.tilt_deg - mitre.tilt_deg).abs() < 1e-8, "{edge:?} {mitre:?}");
                prop_assert!((edge.corner_deg - mitre.dihedral_deg).abs() < 1e-8, "{edge:?} {mitre:?}");
                // A steep seam in a wide side may count as a rip: then the angle is stated from the grain.
                let gauge = if edge.cut == EdgeCut::CrossCut { edge.gauge_deg.abs() } else { 90.0 - edge.gauge_deg.abs() };
                prop_assert!((gauge - mitre.gauge_deg).abs() < 1e-8, "{edge:?} {mitre:?}");
            }
        }
    }

    #[test]
    fn far_from_the_origin_the_panels_are_the_same(sides in 3_u32..9, slope in 30.0..90.0, t in 1.0..20.0, x in -1e6..1e6, y in -1e6..1e6) {
        let Ok(here) = build_shell(&splayed_box(sides, slope, t, Vec3::ZERO), &[]) else { return Ok(()) };
        let there = build_shell(&splayed_box(sides, slope, t, Vec3::new(x, y, 1e6)), &[]).unwrap();
        for (one, other) in here.panels.iter().zip(&there.panels) {
            // Coordinates near 1e6 resolve 1e-10, and shallow corners stretch that.
            prop_assert!((one.mass.volume_mm3 - other.mass.volume_mm3).abs() < 1e-9 * here.outer_volume_mm3);
            prop_assert!((one.show_length_mm - other.show_length_mm).abs() < 1e-6);
            for (edge, back) in one.edges.iter().zip(&other.edges) {
                prop_assert!((edge.tilt_deg - back.tilt_deg).abs() < 1e-9);
            }
        }
    }

    #[test]
    fn butts_in_any_order_add_up(leg in leg(), ranks in prop::collection::vec(0_u8..3, 6)) {
        if shell_panels(&leg).is_err() {
            return Ok(());
        }
        let leg = Leg { butts: ranked_butts(&leg, &ranks), ..leg };
        match shell_panels(&leg) {
            Ok(shell) => assert_laws(&shell),
            Err(error) => prop_assert!(
                error.code() == ErrorCode::EmptySolid
                    || error.details()[0].allowed == "boards that do not reach one another",
                "{error}"
            ),
        }
    }

    #[test]
    fn any_bits_give_panels_or_faults(
        bits in prop::collection::vec(prop_oneof![prop::num::f64::ANY, 1.0..200.0], 10),
        kinds in prop::collection::vec(any::<bool>(), 2),
    ) {
        let end = |open: bool, thickness: f64, corner_deg| LegEnd {
            kind: if open { EndKind::Open } else { EndKind::ReturnPanel },
            thickness_mm: if open { None } else { Some(thickness) },
            corner_deg,
        };
        let long = [LongFace::Front, LongFace::Back, LongFace::Top, LongFace::Bottom];
        let leg = Leg {
            leg: 1,
            length_mm: bits[0],
            height_mm: bits[1],
            depth_mm: bits[2],
            boards: long.into_iter().zip(&bits[3..6]).map(|(face, t)| LegBoard { face, thickness_mm: *t }).collect(),
            left_end: end(kinds[0], bits[6], bits[7]),
            right_end: end(kinds[1], bits[8], bits[9]),
            butts: vec![],
        };
        if let Ok(shell) = shell_panels(&leg) {
            assert_laws(&shell);
        }
    }
}
