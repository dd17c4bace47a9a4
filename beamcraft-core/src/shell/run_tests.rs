//! A run is the solid that its planes enclose.

use proptest::prelude::*;

use super::*;

/// A regular polygon about a centre, clockwise from the right end.
fn polygon(sides: usize, radius: f64, turn_deg: f64, at: (f64, f64)) -> Vec<Corner> {
    let corner = |side: usize| {
        let (sine, cosine) = sin_cos_deg(turn_deg - 360.0 * side as f64 / sides as f64);
        Corner { y: at.0 + radius * cosine, z: at.1 + radius * sine }
    };
    (0..sides).map(corner).collect()
}

fn names(count: usize) -> Vec<FaceKind> {
    (1..=count as u32).map(FaceKind::Side).collect()
}

fn built(run: &Run<'_>, place: &Frame) -> Option<(Vec<OuterFace>, ConvexSolid)> {
    run.solid(place, |_| Presence::Open)
}

proptest! {
    #[test]
    fn a_run_is_what_its_planes_enclose(
        sides in 3_usize..9,
        sizes in (20.0..300.0, 0.5..2.0, 0.0..120.0),
        shift in (-50.0..50.0, -50.0..50.0),
        length_mm in 50.0..3000.0,
        corners in (45.0..135.0, 45.0..135.0),
        plumbs in (80.0..100.0, 80.0..100.0),
        turn in 0.0..360.0,
        far in -1e5..1e5,
    ) {
        let (radius, taper, turned) = sizes;
        let left = polygon(sides, radius, turned, (0.0, 0.0));
        let right = polygon(sides, radius * taper, turned, shift);
        let names = names(sides);
        let end = |corner_deg, plumb_deg| EndPlane { corner_deg, plumb_deg };
        let run = Run {
            leg: 1,
            names: &names,
            left: &left,
            right: &right,
            length_mm,
            left_end: end(corners.0, plumbs.0),
            right_end: end(corners.1, plumbs.1),
        };
        let (sine, cosine) = sin_cos_deg(turn);
        let place = Frame::new(Vec3::new(far, -far, 0.0), Vec3::Z, Vec3::new(cosine, sine, 0.0)).unwrap();
        let Some((faces, solid)) = built(&run, &place) else { return Ok(()) };
        let planes: Vec<_> = faces.iter().map(|face| face.plane).collect();
        let slow = ConvexSolid::from_half_spaces(&planes).map_err(|fault| TestCaseError::fail(format!("{fault:?}")))?;
        prop_assert_eq!(solid.vertices().len(), slow.vertices().len());
        prop_assert_eq!(solid.faces().len(), slow.faces().len());
        for point in solid.vertices() {
            let gap = slow.vertices().iter().map(|other| (*other - *point).length()).fold(f64::INFINITY, f64::min);
            prop_assert!(gap < 1e-6, "{gap}");
        }
        for face in slow.faces() {
            let twin = solid.face(face.tag).unwrap();
            prop_assert!((twin.area() - face.area()).abs() <= 1e-8 * solid.mass_properties().surface_mm2);
            prop_assert!(twin.area_vector().dot(face.plane.normal()) > 0.0);
        }
    }

    #[test]
    fn a_run_that_is_refused_has_ends_that_meet_or_sides_that_are_not_plane(
        depth in 50.0..600.0, length_mm in 20.0..400.0, corner in 20.0..160.0, plumb in 30.0..150.0,
    ) {
        let ring = [(0.0, 0.0), (0.0, 100.0), (depth, 100.0), (depth, 0.0)].map(|(y, z)| Corner { y, z });
        let names = names(4);
        let end = EndPlane { corner_deg: corner, plumb_deg: plumb };
        let run = Run { leg: 1, names: &names, left: &ring, right: &ring, length_mm, left_end: end, right_end: end };
        // Both ends run out by the same at a corner of the section.
        let (sine, cosine) = sin_cos_deg(corner);
        let (plumb_sine, plumb_cosine) = sin_cos_deg(plumb);
        let shortest = ring.iter().map(|at| length_mm - 2.0 * (at.y * cosine / sine + at.z * plumb_cosine / plumb_sine));
        let shortest = shortest.fold(f64::INFINITY, f64::min);
        prop_assume!(shortest.abs() > 1e-6);
        prop_assert_eq!(built(&run, &Frame::BODY).is_some(), shortest > 0.0);
    }
}

#[test]
fn a_twisted_side_is_refused() {
    let left = [(0.0, 0.0), (0.0, 100.0), (80.0, 100.0), (80.0, 0.0)].map(|(y, z)| Corner { y, z });
    let mut right = left;
    right[1].y = 5.0;
    let names = names(4);
    let end = EndPlane { corner_deg: 90.0, plumb_deg: 90.0 };
    let run =
        Run { leg: 1, names: &names, left: &left, right: &right, length_mm: 500.0, left_end: end, right_end: end };
    assert!(built(&run, &Frame::BODY).is_none());
    // Lines that would cross before the end make no solid either.
    let crossed = left.map(|at| Corner { y: 20.0 - at.y, z: 20.0 - at.z });
    let run = Run { right: &crossed, ..run };
    assert!(built(&run, &Frame::BODY).is_none());
}
