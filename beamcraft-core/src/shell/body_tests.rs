//! Laws of hollow bodies of every kind, and bodies with known sizes.

use proptest::prelude::*;

use super::super::laws_tests::assert_panel_laws;
use super::super::section::{PolygonalSection, RectangularSection, RegularSection, SectionCorner, SlopedSection};
use super::super::{EdgeJoining, MitrePairInput, mitre_pair};
use super::*;
use crate::numeric::real::atan2_deg;

const OPEN: BodyEnd = BodyEnd { kind: EndKind::Open, thickness_mm: None, corner_deg: 90.0, plumb_deg: 90.0 };

fn closed(thickness_mm: f64) -> BodyEnd {
    BodyEnd { kind: EndKind::ReturnPanel, thickness_mm: Some(thickness_mm), ..OPEN }
}

fn straight(length_mm: f64) -> Vec<BodyLeg> {
    vec![BodyLeg { length_mm, corner_deg: None }]
}

fn board(face: FaceKind, thickness_mm: f64) -> BodyBoard {
    BodyBoard { face, thickness_mm }
}

/// Front, top and bottom of 20 mm, open back and ends.
fn shelf() -> HollowBodyInput {
    HollowBodyInput {
        section: BodySection::Rectangular(RectangularSection { height_mm: 185.0, depth_mm: 215.0 }),
        taper: None,
        legs: straight(1830.0),
        boards: [FaceKind::Front, FaceKind::Top, FaceKind::Bottom].map(|face| board(face, 20.0)).to_vec(),
        left_end: OPEN,
        right_end: OPEN,
        joint: BodyJoint::default(),
        edges: vec![],
        density_kg_m3: None,
    }
}

fn wrap(section: BodySection, sides: u32, thickness_mm: f64) -> HollowBodyInput {
    let boards = (1..=sides).map(|side| board(FaceKind::Side(side), thickness_mm)).collect();
    HollowBodyInput { section, boards, legs: straight(2400.0), ..shelf() }
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * a.abs().max(b.abs()).max(1.0)
}

#[track_caller]
fn assert_laws(body: &HollowBody) {
    let panels: Vec<_> = body.panels().collect();
    assert_panel_laws(&panels, body.outer_volume_mm3, body.hollow_volume_mm3, body.wood_volume_mm3);
}

fn id(kind: FaceKind) -> FaceId {
    FaceId::first_leg(kind)
}

#[track_caller]
fn refused(input: &HollowBodyInput) -> (ErrorCode, String) {
    let error = hollow_body(input).expect_err("refused");
    (error.code(), error.field().to_owned())
}

#[test]
fn a_rectangular_body_is_the_leg_of_the_same_sizes() {
    use super::super::leg::{Leg, LegBoard, LegEnd, LongFace, shell_panels};
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

/// A convex polygon in a ring of an ellipse, by its turns; large enough for boards.
fn polygon() -> impl Strategy<Value = BodySection> {
    let turns = prop::collection::vec(0.3..1.0, 3..9);
    (turns, 60.0..400.0, 60.0..400.0, 0.0..360.0, any::<bool>()).prop_map(|(turns, high, deep, start, reverse)| {
        let whole: f64 = turns.iter().sum();
        let mut at = start;
        let mut corners: Vec<_> = turns
            .iter()
            .map(|turn| {
                at += 360.0 * turn / whole;
                let (sine, cosine) = sin_cos_deg(at);
                SectionCorner { y_mm: deep * cosine, z_mm: high * sine }
            })
            .collect();
        if reverse {
            corners.reverse();
        }
        BodySection::Polygon(PolygonalSection { corners })
    })
}

fn section() -> impl Strategy<Value = BodySection> {
    let size = || 80.0..400.0;
    prop_oneof![
        (size(), size())
            .prop_map(|(height_mm, depth_mm)| BodySection::Rectangular(RectangularSection { height_mm, depth_mm })),
        (size(), size(), size(), size()).prop_map(
            |(top_depth_mm, bottom_depth_mm, front_height_mm, back_height_mm)| {
                BodySection::Sloped(SlopedSection { top_depth_mm, bottom_depth_mm, front_height_mm, back_height_mm })
            }
        ),
        (3_u32..10, size())
            .prop_map(|(sides, across_flats_mm)| BodySection::Regular(RegularSection { sides, across_flats_mm })),
        polygon(),
    ]
}

/// A section of the same shape in another size, or for a rectangle in other sizes.
fn tapered(section: &BodySection, one: f64, other: f64) -> BodySection {
    match section {
        BodySection::Rectangular(at) => BodySection::Rectangular(RectangularSection {
            height_mm: at.height_mm * one,
            depth_mm: at.depth_mm * other,
        }),
        BodySection::Sloped(at) => BodySection::Sloped(SlopedSection {
            top_depth_mm: at.top_depth_mm * one,
            bottom_depth_mm: at.bottom_depth_mm * one,
            front_height_mm: at.front_height_mm * one,
            back_height_mm: at.back_height_mm * one,
        }),
        BodySection::Regular(at) => {
            BodySection::Regular(RegularSection { across_flats_mm: at.across_flats_mm * one, ..*at })
        }
        BodySection::Polygon(at) => {
            let scaled = |at: &SectionCorner| SectionCorner { y_mm: at.y_mm * one, z_mm: at.z_mm * one };
            BodySection::Polygon(PolygonalSection { corners: at.corners.iter().map(scaled).collect() })
        }
    }
}

fn end() -> impl Strategy<Value = BodyEnd> {
    let kind = prop_oneof![(3.0..25.0).prop_map(closed), Just(OPEN)];
    (kind, 60.0..120.0, 80.0..100.0).prop_map(|(end, corner_deg, plumb_deg)| BodyEnd { corner_deg, plumb_deg, ..end })
}

/// Legs that turn either way.
fn legs() -> impl Strategy<Value = Vec<BodyLeg>> {
    let corner = prop_oneof![60.0..170.0, 190.0..300.0, Just(90.0), Just(180.0), Just(270.0)];
    prop::collection::vec((400.0..3000.0, corner), 1..4).prop_map(|runs| {
        let count = runs.len();
        let leg = |(at, (length_mm, corner))| BodyLeg { length_mm, corner_deg: (at + 1 < count).then_some(corner) };
        runs.into_iter().enumerate().map(leg).collect()
    })
}

/// Any hollow body with mitres, with what the joints are drawn from: a rank for every face and a depth.
fn body() -> impl Strategy<Value = HollowBodyInput> {
    let boards = prop::collection::vec(prop_oneof![4 => (3.0..25.0).prop_map(Some), 1 => Just(None)], 24);
    let taper = prop::option::of((0.7..1.3, 0.7..1.3, -30.0..30.0, -30.0..30.0));
    (section(), taper, legs(), boards, end(), end()).prop_map(|(section, taper, legs, boards, left_end, right_end)| {
        let names = section.ring().map(|ring| ring.names).unwrap_or_default();
        let boards =
            names.into_iter().zip(boards).filter_map(|(face, board)| Some(BodyBoard { face, thickness_mm: board? }));
        let taper = taper.filter(|_| legs.len() == 1).map(|(one, other, back_mm, up_mm)| BodyTaper {
            section: tapered(&section, one, other),
            back_mm,
            up_mm,
        });
        HollowBodyInput { boards: boards.collect(), section, taper, legs, left_end, right_end, ..shelf() }
    })
}

/// Joints that follow from an order of the faces, ties mitred.
fn joined(input: &HollowBodyInput, ranks: &[u8], depths: &[f64]) -> HollowBodyInput {
    let faces = input.board_faces();
    let names = input.section.ring().unwrap().names;
    let rank = |kind| faces.iter().position(|face| *face == kind).map(|at| ranks[at]);
    let thickness = |kind| input.thickness_mm(1, kind).or(input.thickness_mm(input.legs.len() as u32, kind)).unwrap();
    let own = super::super::edges::edges(&names).into_iter().zip(depths).filter_map(|(edge, depth)| {
        let (one, other) = edge.faces();
        let (a, b) = (rank(one.kind)?, rank(other.kind)?);
        let past = if a > b { one.kind } else { other.kind };
        let rabbet = *depth > 0.4;
        (a != b).then(|| BodyEdge {
            edge,
            joining: if rabbet { EdgeJoining::Rabbet } else { EdgeJoining::Butt },
            runs_past: Some(past),
            rabbet_mm: rabbet.then(|| depth * 0.9 * thickness(past)),
        })
    });
    HollowBodyInput { edges: own.collect(), ..input.clone() }
}

fn mirrored(input: &HollowBodyInput) -> HollowBodyInput {
    let count = input.legs.len();
    let lengths = input.legs.iter().rev().map(|leg| leg.length_mm);
    let corners: Vec<_> = input.legs.iter().rev().skip(1).map(|leg| leg.corner_deg).chain([None]).collect();
    let legs = lengths.zip(corners).map(|(length_mm, corner_deg)| BodyLeg { length_mm, corner_deg }).collect();
    assert_eq!(count, input.legs.len());
    HollowBodyInput { legs, left_end: input.right_end, right_end: input.left_end, ..input.clone() }
}

/// Ways in which a random body may fail.
fn explained(error: &Error) -> bool {
    matches!(error.code(), ErrorCode::NoRoomInside | ErrorCode::EmptySolid)
        || matches!(error.field(), "legs" | "boards" | "section.polygon.corners")
        || error.field().ends_with(".length_mm")
}

proptest! {
    #[test]
    fn every_body_keeps_the_laws(input in body()) {
        match hollow_body(&input) {
            Ok(body) => assert_laws(&body),
            Err(error) => prop_assert!(explained(&error), "{error}"),
        }
    }

    #[test]
    fn every_joint_keeps_the_laws(
        input in body(), ranks in prop::collection::vec(0_u8..4, 26), depths in prop::collection::vec(0.0..1.0_f64, 80),
    ) {
        if hollow_body(&input).is_err() {
            return Ok(());
        }
        match hollow_body(&joined(&input, &ranks, &depths)) {
            Ok(body) => assert_laws(&body),
            Err(error) => prop_assert!(
                explained(&error) || error.details()[0].allowed == "boards that do not reach one another",
                "{error}"
            ),
        }
    }

    #[test]
    fn the_mirror_swaps_left_and_right(input in body()) {
        let input = HollowBodyInput { taper: None, ..input };
        let (one, other) = (hollow_body(&input), hollow_body(&mirrored(&input)));
        prop_assert_eq!(one.is_ok(), other.is_ok());
        let (Ok(one), Ok(other)) = (one, other) else { return Ok(()) };
        let count = input.legs.len() as u32;
        for panel in one.panels() {
            let kind = match panel.id.kind {
                FaceKind::LeftEnd => FaceKind::RightEnd,
                FaceKind::RightEnd => FaceKind::LeftEnd,
                kind => kind,
            };
            let twin = other.panel(FaceId { leg: count + 1 - panel.id.leg, kind }).unwrap();
            prop_assert!(near(panel.mass.volume_mm3, twin.mass.volume_mm3));
            prop_assert!(near(panel.show_area_mm2, twin.show_area_mm2) && near(panel.inner_area_mm2, twin.inner_area_mm2));
            let tilts = |panel: &Panel| {
                let mut tilts: Vec<_> = panel.edges.iter().map(|edge| edge.tilt_deg).collect();
                tilts.sort_by(f64::total_cmp);
                tilts
            };
            for (a, b) in tilts(panel).into_iter().zip(tilts(twin)) {
                prop_assert!((a - b).abs() < 1e-8);
            }
        }
    }

    #[test]
    fn the_order_of_the_boards_changes_nothing(input in body()) {
        let mut turned = input.clone();
        turned.boards.reverse();
        prop_assert_eq!(hollow_body(&input).ok(), hollow_body(&turned).ok());
    }

    #[test]
    fn a_larger_body_of_the_same_shape_has_the_same_angles(input in body(), factor in 1.0..3.0_f64) {
        let larger = HollowBodyInput {
            section: scaled(&input.section, factor),
            taper: input.taper.as_ref().map(|taper| BodyTaper {
                section: scaled(&taper.section, factor),
                back_mm: taper.back_mm * factor,
                up_mm: taper.up_mm * factor,
            }),
            legs: input.legs.iter().map(|leg| BodyLeg { length_mm: leg.length_mm * factor, ..*leg }).collect(),
            boards: input.boards.iter().map(|at| board(at.face, at.thickness_mm * factor)).collect(),
            left_end: BodyEnd { thickness_mm: input.left_end.thickness_mm.map(|t| t * factor), ..input.left_end },
            right_end: BodyEnd { thickness_mm: input.right_end.thickness_mm.map(|t| t * factor), ..input.right_end },
            ..input.clone()
        };
        let (Ok(one), Ok(other)) = (hollow_body(&input), hollow_body(&larger)) else { return Ok(()) };
        prop_assert!(near(one.wood_volume_mm3 * factor * factor * factor, other.wood_volume_mm3));
        for (panel, twin) in one.panels().zip(other.panels()) {
            prop_assert!(near(panel.show_area_mm2 * factor * factor, twin.show_area_mm2));
            for (edge, back) in panel.edges.iter().zip(&twin.edges) {
                prop_assert!((edge.tilt_deg - back.tilt_deg).abs() < 1e-8 && (edge.gauge_deg - back.gauge_deg).abs() < 1e-8);
            }
        }
    }

    #[test]
    fn any_bits_give_panels_or_faults(
        bits in prop::collection::vec(prop_oneof![prop::num::f64::ANY, 1.0..300.0], 16), kinds in prop::collection::vec(0_u8..4, 3),
    ) {
        let corner = |at: usize| SectionCorner { y_mm: bits[at], z_mm: bits[at + 1] };
        let section = match kinds[0] {
            0 => BodySection::Rectangular(RectangularSection { height_mm: bits[0], depth_mm: bits[1] }),
            1 => BodySection::Sloped(SlopedSection {
                top_depth_mm: bits[0],
                bottom_depth_mm: bits[1],
                front_height_mm: bits[2],
                back_height_mm: bits[3],
            }),
            2 => BodySection::Regular(RegularSection { sides: bits[0] as u32, across_flats_mm: bits[1] }),
            _ => BodySection::Polygon(PolygonalSection { corners: vec![corner(0), corner(2), corner(4)] }),
        };
        let names = section.ring().map(|ring| ring.names).unwrap_or_default();
        let end = |at: usize, kind| BodyEnd {
            kind: if kind == 0 { EndKind::Open } else { EndKind::ReturnPanel },
            thickness_mm: (kind != 0).then_some(bits[at]),
            corner_deg: bits[at + 1],
            plumb_deg: 90.0,
        };
        let input = HollowBodyInput {
            boards: names.into_iter().zip(&bits[6..9]).map(|(face, t)| board(face, *t)).collect(),
            section,
            taper: None,
            legs: straight(bits[9]),
            left_end: end(10, kinds[1]),
            right_end: end(12, kinds[2]),
            joint: BodyJoint::default(),
            edges: vec![],
            density_kg_m3: Some(bits[14]),
        };
        if let Ok(body) = hollow_body(&input) {
            assert_laws(&body);
        }
    }
}

/// The same shape in another size.
fn scaled(section: &BodySection, factor: f64) -> BodySection {
    tapered(section, factor, factor)
}
