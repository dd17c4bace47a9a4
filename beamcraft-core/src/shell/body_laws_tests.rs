//! Laws of random hollow bodies of every kind.

use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;

use super::body_tests::{OPEN, assert_laws, board, closed, near, shelf, straight};
use super::*;
use crate::error::{Error, ErrorCode};
use crate::numeric::real::sin_cos_deg;

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

/// The same shape in another size.
fn scaled(section: &BodySection, factor: f64) -> BodySection {
    tapered(section, factor, factor)
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
pub(super) fn body() -> impl Strategy<Value = HollowBodyInput> {
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
    let own = edges::edges(&names).into_iter().zip(depths).filter_map(|(edge, depth)| {
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
    let lengths = input.legs.iter().rev().map(|leg| leg.length_mm);
    let corners: Vec<_> = input.legs.iter().rev().skip(1).map(|leg| leg.corner_deg).chain([None]).collect();
    let legs = lengths.zip(corners).map(|(length_mm, corner_deg)| BodyLeg { length_mm, corner_deg }).collect();
    HollowBodyInput { legs, left_end: input.right_end, right_end: input.left_end, ..input.clone() }
}

/// Ways in which a random body may fail.
fn explained(error: &Error) -> bool {
    matches!(error.code(), ErrorCode::NoRoomInside | ErrorCode::EmptySolid)
        || matches!(error.field(), "legs" | "boards" | "section.polygon.corners")
        || error.field().ends_with(".length_mm")
}

#[test]
fn most_random_bodies_can_be_built() {
    let mut runner = TestRunner::deterministic();
    let bodies = (0..300).map(|_| body().new_tree(&mut runner).unwrap().current());
    let built = bodies.filter(|input| hollow_body(input).is_ok()).count();
    assert!(built > 150, "{built} of 300");
}

#[test]
fn far_along_a_path_the_panels_are_the_same() {
    // Straight on after 300 m: coordinates of 3e5 resolve to 6e-11.
    let mut legs = vec![BodyLeg { length_mm: 20_000.0, corner_deg: Some(180.0) }; 15];
    let last = BodyLeg { length_mm: 700.0, corner_deg: None };
    let alone = hollow_body(&HollowBodyInput { legs: vec![last], right_end: closed(15.0), ..shelf() }).unwrap();
    legs.push(last);
    let far = hollow_body(&HollowBodyInput { legs, right_end: closed(15.0), ..shelf() }).unwrap();
    for panel in alone.panels() {
        let twin = far.panel(FaceId { leg: 16, ..panel.id }).unwrap();
        assert!(near(panel.mass.volume_mm3, twin.mass.volume_mm3), "{}", panel.id);
        assert!(
            near(panel.show_length_mm, twin.show_length_mm)
                && near(panel.mass.inertia.xx_mm5, twin.mass.inertia.xx_mm5)
        );
    }
}

#[test]
fn the_thinnest_board_on_the_longest_body_keeps_its_digits() {
    let boards = vec![board(FaceKind::Front, 1.0), board(FaceKind::Top, 150.0), board(FaceKind::Bottom, 1.0)];
    let section = BodySection::Rectangular(RectangularSection { height_mm: 2000.0, depth_mm: 2000.0 });
    let body = hollow_body(&HollowBodyInput { section, boards, legs: straight(20_000.0), ..shelf() }).unwrap();
    assert_laws(&body);
    // The mitre of 1 by 150 runs from the outer to the inner corner: a triangle of 1 × 150 less than its rectangle.
    let front = body.panel(FaceId::first_leg(FaceKind::Front)).unwrap();
    let section_mm2 = 2000.0 - 0.5 * 150.0 - 0.5;
    assert!((front.mass.volume_mm3 / (20_000.0 * section_mm2) - 1.0).abs() < 1e-10);
}

#[test]
fn where_the_section_stands_changes_no_panel() {
    let ring = [(0.0, 0.0), (-20.0, 140.0), (90.0, 210.0), (180.0, 130.0), (150.0, -10.0)];
    let at = |y: f64, z: f64| {
        let corners = ring.map(|(a, b)| SectionCorner { y_mm: a + y, z_mm: b + z }).to_vec();
        let boards = (1..=5).map(|side| board(FaceKind::Side(side), 9.0 + f64::from(side))).collect();
        let section = BodySection::Polygon(PolygonalSection { corners });
        hollow_body(&HollowBodyInput { section, boards, right_end: closed(12.0), ..shelf() }).unwrap()
    };
    let (here, there) = (at(0.0, 0.0), at(1500.0, -1700.0));
    assert_laws(&here);
    for (panel, twin) in here.panels().zip(there.panels()) {
        assert!(near(panel.mass.volume_mm3, twin.mass.volume_mm3) && near(panel.show_width_mm, twin.show_width_mm));
    }
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
            features: vec![],
            veneer_mm: Some(bits[15]),
            density_kg_m3: Some(bits[14]),
        };
        if let Ok(body) = hollow_body(&input) {
            assert_laws(&body);
        }
    }
}
