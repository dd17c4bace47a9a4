//! Hollow bodies with known sizes, and those that are refused.

use super::laws_tests::assert_panel_laws;
use super::*;
use crate::error::ErrorCode;
use crate::geometry::Vec3;
use crate::numeric::real::atan2_deg;

pub(super) const OPEN: BodyEnd = BodyEnd { kind: EndKind::Open, thickness_mm: None, corner_deg: 90.0, plumb_deg: 90.0 };

pub(super) fn closed(thickness_mm: f64) -> BodyEnd {
    BodyEnd { kind: EndKind::ReturnPanel, thickness_mm: Some(thickness_mm), ..OPEN }
}

pub(super) fn straight(length_mm: f64) -> Vec<BodyLeg> {
    vec![BodyLeg { length_mm, corner_deg: None }]
}

pub(super) fn board(face: FaceKind, thickness_mm: f64) -> BodyBoard {
    BodyBoard { face, thickness_mm }
}

/// Front, top and bottom of 20 mm, open back and ends.
pub(super) fn shelf() -> HollowBodyInput {
    HollowBodyInput {
        section: BodySection::Rectangular(RectangularSection { height_mm: 185.0, depth_mm: 215.0 }),
        taper: None,
        legs: straight(1830.0),
        boards: [FaceKind::Front, FaceKind::Top, FaceKind::Bottom].map(|face| board(face, 20.0)).to_vec(),
        left_end: OPEN,
        right_end: OPEN,
        joint: BodyJoint::default(),
        edges: vec![],
        features: vec![],
        veneer_mm: None,
        density_kg_m3: None,
    }
}

pub(super) fn wrap(section: BodySection, sides: u32, thickness_mm: f64) -> HollowBodyInput {
    let boards = (1..=sides).map(|side| board(FaceKind::Side(side), thickness_mm)).collect();
    HollowBodyInput { section, boards, legs: straight(2400.0), ..shelf() }
}

pub(super) fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * a.abs().max(b.abs()).max(1.0)
}

#[track_caller]
pub(super) fn assert_laws(body: &HollowBody) {
    let panels: Vec<_> = body.panels().collect();
    assert_panel_laws(&panels, body.outer_volume_mm3, body.hollow_volume_mm3, body.wood_volume_mm3);
}

pub(super) fn id(kind: FaceKind) -> FaceId {
    FaceId::first_leg(kind)
}

#[track_caller]
fn refused(input: &HollowBodyInput) -> (ErrorCode, String) {
    let error = hollow_body(input).expect_err("refused");
    (error.code(), error.field().to_owned())
}

#[test]
fn a_rectangular_body_is_the_leg_of_the_same_sizes() {
    let end = |corner_deg| LegEnd { kind: EndKind::ReturnPanel, thickness_mm: Some(18.0), corner_deg };
    let leg = Leg {
        leg: 1,
        length_mm: 1830.0,
        height_mm: 185.0,
        depth_mm: 215.0,
        boards: [LongFace::Front, LongFace::Top, LongFace::Bottom]
            .map(|face| LegBoard { face, thickness_mm: 20.0 })
            .to_vec(),
        left_end: end(93.0),
        right_end: end(87.0),
        butts: vec![],
    };
    let left_end = BodyEnd { corner_deg: 93.0, ..closed(18.0) };
    let right_end = BodyEnd { corner_deg: 87.0, ..closed(18.0) };
    let body = hollow_body(&HollowBodyInput { left_end, right_end, ..shelf() }).unwrap();
    assert_eq!(body.legs, [shell_panels(&leg).unwrap()]);
    assert_laws(&body);
}

#[test]
fn a_hexagonal_wrap_has_bevels_of_thirty_degrees() {
    // Areas by closed form: a regular hexagon has 2√3 times the square of its apothem.
    let section = BodySection::Regular(RegularSection { sides: 6, across_flats_mm: 160.0 });
    let body = hollow_body(&HollowBodyInput { density_kg_m3: Some(680.0), ..wrap(section, 6, 18.0) }).unwrap();
    assert_laws(&body);
    let wood = 2.0 * 3.0_f64.sqrt() * (80.0 * 80.0 - 62.0 * 62.0) * 2400.0;
    assert!(near(body.wood_volume_mm3, wood));
    assert!(near(body.mass_kg.unwrap(), 680e-9 * wood));
    assert_eq!(body.panel_masses.len(), 6);
    for panel in body.panels() {
        assert!(
            near(panel.show_width_mm, 160.0 / 3.0_f64.sqrt()) && near(panel.inner_width_mm, 124.0 / 3.0_f64.sqrt())
        );
        assert!(
            panel.edges.iter().filter(|edge| edge.joint == EdgeJoint::Mitred).all(|edge| near(edge.tilt_deg, 30.0))
        );
    }
}

#[test]
fn sloped_sections_have_the_sizes_of_their_trapezoids() {
    let section =
        SlopedSection { top_depth_mm: 240.0, bottom_depth_mm: 200.0, front_height_mm: 150.0, back_height_mm: 180.0 };
    let body = hollow_body(&HollowBodyInput { section: BodySection::Sloped(section), ..shelf() }).unwrap();
    assert_laws(&body);
    // The box less a triangle before the front and one below the underside, both from the corner (40, 30).
    let area = 240.0 * 180.0 - 0.5 * 180.0 * 40.0 - 0.5 * 240.0 * 30.0;
    assert!(near(body.outer_volume_mm3, area * 1830.0), "{} {}", body.outer_volume_mm3, area * 1830.0);
    let front = body.panel(id(FaceKind::Front)).unwrap();
    assert!(near(front.show_width_mm, (40.0_f64 * 40.0 + 150.0 * 150.0).sqrt()));
    // The corner of front and top is that of its slope, 40 in 150.
    assert!(near(front.edge(id(FaceKind::Top)).unwrap().corner_deg, atan2_deg(150.0, 40.0)));
}

#[test]
fn a_mantel_round_a_chimney_breast_is_mitred_through_every_panel() {
    let leg = |length_mm, corner_deg| BodyLeg { length_mm, corner_deg };
    let legs = vec![leg(400.0, Some(90.0)), leg(1500.0, Some(90.0)), leg(400.0, None)];
    let body = hollow_body(&HollowBodyInput { legs, ..shelf() }).unwrap();
    assert_laws(&body);
    assert_eq!(body.panels().count(), 9);
    // Two legs of 400 less the depth lost at one mitre, one of 1500 at two, by the mean of front and back.
    assert!(near(body.outer_volume_mm3, 185.0 * 215.0 * (2.0 * (400.0 - 107.5) + 1500.0 - 215.0)));
    let front = body.panel(FaceId { leg: 2, kind: FaceKind::Front }).unwrap();
    let corner = front.edge(FaceId { leg: 3, kind: FaceKind::Front }).unwrap();
    assert_eq!((corner.joint, corner.id.to_string().as_str()), (EdgeJoint::Mitred, "leg2.front|leg3.front"));
    assert!(near(corner.tilt_deg, 45.0) && near(corner.corner_deg, 90.0));
    assert!(near(front.show_length_mm, 1500.0) && near(front.inner_length_mm, 1460.0));
    let top = body.panel(FaceId { leg: 2, kind: FaceKind::Top }).unwrap();
    let corner = top.edge(FaceId { leg: 3, kind: FaceKind::Top }).unwrap();
    assert!(near(corner.tilt_deg, 0.0) && near(corner.gauge_deg.abs(), 45.0) && near(corner.corner_deg, 180.0));
    // The first leg runs along x towards the room's right, the second turns to the wall.
    assert!((front.frame.u - Vec3::Y).length() < 1e-12);
}

#[test]
fn a_body_in_a_bay_has_its_short_points_on_the_show_face() {
    let leg = |length_mm, corner_deg| BodyLeg { length_mm, corner_deg };
    let legs = vec![leg(600.0, Some(225.0)), leg(1200.0, Some(225.0)), leg(600.0, None)];
    let body = hollow_body(&HollowBodyInput { legs, ..shelf() }).unwrap();
    assert_laws(&body);
    let pair = mitre_pair(&MitrePairInput { thickness_a_mm: 20.0, thickness_b_mm: 20.0, corner_deg: 225.0 }).unwrap();
    let front = body.panel(FaceId { leg: 2, kind: FaceKind::Front }).unwrap();
    for edge in front.edges.iter().filter(|edge| edge.neighbour.leg != 2) {
        assert!(near(edge.tilt_deg, pair.tilt_a_deg) && near(edge.corner_deg, 225.0), "{edge:?}");
    }
    assert!(near(front.inner_length_mm - front.show_length_mm, -2.0 * pair.setback_a_mm));
}

#[test]
fn a_rabbet_holds_the_panel_that_stops() {
    let edge = |text: &str, past| BodyEdge {
        edge: text.parse().unwrap(),
        joining: EdgeJoining::Rabbet,
        runs_past: Some(past),
        rabbet_mm: Some(8.0),
    };
    let edges = vec![edge("front|top", FaceKind::Front), edge("front|bottom", FaceKind::Front)];
    let body = hollow_body(&HollowBodyInput { edges, ..shelf() }).unwrap();
    assert_laws(&body);
    let front = body.panel(id(FaceKind::Front)).unwrap();
    assert_eq!(front.pieces.len(), 3);
    // The front less two steps of 20 × 8; the top 8 wider than between the inner faces.
    assert!(near(front.mass.volume_mm3, 1830.0 * (185.0 * 20.0 - 2.0 * 20.0 * 8.0)));
    assert!(near(front.inner_area_mm2, 1830.0 * 145.0) && near(front.show_area_mm2, 1830.0 * 185.0));
    assert!(near(front.cut_area_mm2, 2.0 * 1830.0 * (20.0 + 8.0)));
    let top = body.panel(id(FaceKind::Top)).unwrap();
    assert!(near(top.show_width_mm, 215.0 - 12.0) && top.pieces.len() == 1);
    let held = top.edge(id(FaceKind::Front)).unwrap();
    assert_eq!((held.joint, held.rabbet_mm), (EdgeJoint::Stops, Some(8.0)));
    assert_eq!(front.edge(id(FaceKind::Top)).unwrap().rabbet_mm, Some(8.0));
}

#[test]
fn rabbets_that_meet_in_a_corner_count_their_surfaces_once() {
    // Front and top past the left end; the end stands in a rabbet in both.
    let past = |text: &str, past, joining, rabbet_mm| BodyEdge {
        edge: text.parse().unwrap(),
        joining,
        runs_past: Some(past),
        rabbet_mm,
    };
    let edges = vec![
        past("front|top", FaceKind::Front, EdgeJoining::Rabbet, Some(5.0)),
        past("front|left_end", FaceKind::Front, EdgeJoining::Rabbet, Some(6.0)),
        past("top|left_end", FaceKind::Top, EdgeJoining::Rabbet, Some(7.0)),
    ];
    let boards = vec![board(FaceKind::Front, 20.0), board(FaceKind::Top, 20.0)];
    let input = HollowBodyInput { edges, boards, left_end: closed(18.0), ..shelf() };
    let body = hollow_body(&input).unwrap();
    assert_laws(&body);
    // In the front: a step of 20 × 5 for the top over the length, and of 18 × 6 for the end below it (to 7 into the top).
    let front = body.panel(id(FaceKind::Front)).unwrap();
    let under = 185.0 - 20.0;
    let taken = 1830.0 * 20.0 * 5.0 + 18.0 * 6.0 * (under + 7.0) - 18.0 * 5.0 * 7.0;
    assert!(near(front.mass.volume_mm3, 1830.0 * 185.0 * 20.0 - taken), "{} {taken}", front.mass.volume_mm3);
    // Surfaces left: the bottoms and sides of both steps. Over the 18 mm of the end the top's step is 5 deep, and 6 where
    // the end reaches up into it.
    let top_step = 1830.0 * (20.0 + 5.0) - 18.0 * 5.0;
    let end_step = (under + 7.0) * 18.0 + (under + 7.0) * 6.0 - 7.0 * 5.0 - 18.0 * 7.0 + 18.0 * 1.0;
    assert!(near(front.cut_area_mm2, top_step + end_step), "{} {}", front.cut_area_mm2, top_step + end_step);
}

#[test]
fn a_default_joint_is_overridden_edge_by_edge() {
    let order = vec![FaceKind::Front, FaceKind::Top, FaceKind::Bottom];
    let joint = BodyJoint { joining: EdgeJoining::Butt, running_past: order, rabbet_mm: None };
    let edge = BodyEdge {
        edge: "bottom|front".parse().unwrap(),
        joining: EdgeJoining::Mitre,
        runs_past: None,
        rabbet_mm: None,
    };
    let body = hollow_body(&HollowBodyInput { joint: joint.clone(), edges: vec![edge], ..shelf() }).unwrap();
    assert_laws(&body);
    let front = body.panel(id(FaceKind::Front)).unwrap();
    assert_eq!(front.edge(id(FaceKind::Top)).unwrap().joint, EdgeJoint::RunsPast);
    assert_eq!(front.edge(id(FaceKind::Bottom)).unwrap().joint, EdgeJoint::Mitred);

    let short = BodyJoint { running_past: vec![FaceKind::Front], ..joint.clone() };
    assert_eq!(
        refused(&HollowBodyInput { joint: short, ..shelf() }),
        (ErrorCode::Inconsistent, "joint.running_past".to_owned())
    );
    let deep = BodyJoint { rabbet_mm: Some(5.0), ..joint.clone() };
    assert_eq!(
        refused(&HollowBodyInput { joint: deep, ..shelf() }),
        (ErrorCode::Inconsistent, "joint.rabbet_mm".to_owned())
    );
    let through = BodyJoint { joining: EdgeJoining::Rabbet, rabbet_mm: Some(20.0), ..joint };
    assert_eq!(refused(&HollowBodyInput { joint: through, ..shelf() }), (ErrorCode::Inconsistent, "joint".to_owned()));
}

#[test]
fn what_contradicts_itself_is_refused_all_at_once() {
    let corner = |y_mm, z_mm| SectionCorner { y_mm, z_mm };
    let input = HollowBodyInput {
        section: BodySection::Polygon(PolygonalSection {
            corners: vec![corner(0.0, 0.0), corner(0.0, f64::NAN), corner(9e9, 0.0)],
        }),
        legs: vec![BodyLeg { length_mm: 0.0, corner_deg: None }, BodyLeg { length_mm: 500.0, corner_deg: Some(90.0) }],
        left_end: BodyEnd { kind: EndKind::ReturnPanel, plumb_deg: 10.0, ..OPEN },
        density_kg_m3: Some(-1.0),
        ..shelf()
    };
    let error = hollow_body(&input).expect_err("refused");
    let found: Vec<_> = error.details().iter().map(|fault| (fault.code, fault.path.as_str())).collect();
    assert_eq!(
        found,
        [
            (ErrorCode::OutOfRange, "density_kg_m3"),
            (ErrorCode::NotFinite, "section.polygon.corners[1].z_mm"),
            (ErrorCode::OutOfRange, "section.polygon.corners[2].y_mm"),
            (ErrorCode::OutOfRange, "legs[0].length_mm"),
            (ErrorCode::MissingField, "legs[0].corner_deg"),
            (ErrorCode::Inconsistent, "legs[1].corner_deg"),
            (ErrorCode::OutOfRange, "left_end.plumb_deg"),
            (ErrorCode::MissingField, "left_end.thickness_mm"),
        ]
    );
}

#[test]
fn sections_that_are_no_convex_ring_are_refused() {
    let section = |corners: &[(f64, f64)]| {
        let corners = corners.iter().map(|(y_mm, z_mm)| SectionCorner { y_mm: *y_mm, z_mm: *z_mm }).collect();
        wrap(BodySection::Polygon(PolygonalSection { corners }), 3, 10.0)
    };
    let path = "section.polygon.corners".to_owned();
    for corners in [
        // Too few; in a line; an arrow; a star that turns twice; a corner that is none; a side without length.
        &[(0.0, 0.0), (100.0, 0.0)][..],
        &[(0.0, 0.0), (50.0, 0.0), (100.0, 0.0)],
        &[(0.0, 0.0), (100.0, 100.0), (0.0, 200.0), (30.0, 100.0)],
        &[(0.0, 0.0), (100.0, 60.0), (-20.0, 60.0), (80.0, 0.0), (40.0, 110.0)],
        &[(0.0, 0.0), (0.0, 100.0), (50.0, 100.0), (100.0, 100.0), (100.0, 0.0)],
        &[(0.0, 0.0), (0.0, 100.0), (0.0, 100.5), (100.0, 0.0)],
    ] {
        assert_eq!(refused(&section(corners)), (ErrorCode::Inconsistent, path.clone()), "{corners:?}");
    }
    // Either way round is the same body with the same names.
    let triangle = [(0.0, 0.0), (0.0, 200.0), (150.0, 0.0)];
    let one = hollow_body(&section(&triangle)).unwrap();
    assert_laws(&one);
    let other = hollow_body(&section(&[triangle[1], triangle[0], triangle[2]])).unwrap();
    let width = |body: &HollowBody, side| body.panel(id(FaceKind::Side(side))).unwrap().show_width_mm;
    assert!(near(width(&one, 1), 200.0) && near(width(&one, 2), 250.0) && near(width(&one, 3), 150.0));
    assert!(near(width(&other, 1), 200.0) && near(width(&other, 2), 150.0) && near(width(&other, 3), 250.0));
}

#[test]
fn bodies_that_cannot_be_are_refused_by_name() {
    let twisted = BodySection::Sloped(SlopedSection {
        top_depth_mm: 200.0,
        bottom_depth_mm: 215.0,
        front_height_mm: 185.0,
        back_height_mm: 185.0,
    });
    let taper = Some(BodyTaper { section: twisted, back_mm: 0.0, up_mm: 0.0 });
    assert_eq!(refused(&HollowBodyInput { taper, ..shelf() }), (ErrorCode::Inconsistent, "taper.section".to_owned()));
    let thick = vec![board(FaceKind::Front, 20.0), board(FaceKind::Top, 100.0), board(FaceKind::Bottom, 90.0)];
    assert_eq!(
        refused(&HollowBodyInput { boards: thick, ..shelf() }),
        (ErrorCode::NoRoomInside, "boards[2].thickness_mm".to_owned())
    );
    let unknown = vec![board(FaceKind::Side(1), 20.0)];
    assert_eq!(
        refused(&HollowBodyInput { boards: unknown, ..shelf() }),
        (ErrorCode::UnknownName, "boards[0].face".to_owned())
    );
    let leg = |length_mm, corner_deg| BodyLeg { length_mm, corner_deg };
    let short = vec![leg(600.0, Some(90.0)), leg(300.0, Some(90.0)), leg(600.0, None)];
    assert_eq!(
        refused(&HollowBodyInput { legs: short, ..shelf() }),
        (ErrorCode::Inconsistent, "legs[1].length_mm".to_owned())
    );
    // Round to the right four times, and into the first leg.
    let round = vec![leg(900.0, Some(90.0)), leg(900.0, Some(90.0)), leg(900.0, Some(90.0)), leg(1500.0, None)];
    assert_eq!(refused(&HollowBodyInput { legs: round, ..shelf() }), (ErrorCode::Inconsistent, "legs".to_owned()));
}

#[test]
#[cfg(feature = "json")]
fn the_json_door_reads_every_kind_of_section() {
    let text = r#"{"section": {"regular": {"sides": 8, "across_flats_mm": 200}}, "legs": [{"length_mm": 2400}],
        "boards": [{"face": "side1", "thickness_mm": 19}, {"face": "side2", "thickness_mm": 19}],
        "left_end": {"kind": "open"}, "right_end": {"kind": "return_panel", "thickness_mm": 19, "plumb_deg": 91.5},
        "edges": [{"edge": "side1|side2", "joining": "rabbet", "runs_past": "side2", "rabbet_mm": 6}]}"#;
    let out = crate::registry::call("hollow_body", text);
    let error = out.expect_err("a mitred end with a rabbet between the sides has no order");
    assert_eq!(error.field(), "edges");
    let out = crate::registry::call("hollow_body", &text.replace("\"return_panel\", \"thickness_mm\": 19", "\"open\""))
        .unwrap();
    for part in [r#""id":"side1|side2""#, r#""joint":"stops""#, r#""rabbet_mm":6"#, r#""sign":"removed""#] {
        assert!(out.contains(part), "{part} in {out}");
    }
}
