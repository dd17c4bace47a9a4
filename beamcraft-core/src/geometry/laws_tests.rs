//! Laws of cutting and of mass, on random and on hostile solids.

use std::collections::HashSet;

use proptest::prelude::*;

use super::{Clip, ConvexSolid, Frame, MassProperties, NoSolid, Plane, Vec3};

const TAGS: [u32; 6] = [0, 1, 2, 3, 4, 5];

/// Panics unless every directed edge stands once beside its reverse and V − E + F = 2.
#[track_caller]
pub(crate) fn assert_closed(solid: &ConvexSolid) {
    let mut edges = HashSet::new();
    for face in solid.faces() {
        assert!(face.corners.len() >= 3);
        for edge in face.edges() {
            assert!(edges.insert(edge), "edge {edge:?} twice in {solid:?}");
        }
    }
    for (from, to) in &edges {
        assert!(edges.contains(&(*to, *from)), "edge {from}-{to} open in {solid:?}");
    }
    let used: HashSet<_> = edges.iter().map(|edge| edge.0).collect();
    assert_eq!(used.len(), solid.vertices().len());
    assert_eq!(edges.len(), 2 * solid.edge_count());
    assert_eq!(solid.vertices().len() + solid.faces().len(), solid.edge_count() + 2);
    for face in solid.faces() {
        let size = solid.tolerance() * 1e3;
        assert!(face.points().all(|point| face.plane.signed_distance(point).abs() < size), "{face:?}");
    }
}

fn vector(low: f64, high: f64) -> impl Strategy<Value = Vec3> {
    (low..high, low..high, low..high).prop_map(|(x, y, z)| Vec3::new(x, y, z))
}

fn direction() -> impl Strategy<Value = Vec3> {
    vector(-1.0, 1.0).prop_filter_map("has a direction", Vec3::normalised)
}

/// A box somewhere, cut by a few planes through its middle half.
fn solid() -> impl Strategy<Value = ConvexSolid> {
    let cuts = prop::collection::vec((vector(0.25, 0.75), direction()), 0..6);
    (vector(-500.0, 500.0), vector(1.0, 2000.0), cuts).prop_filter_map("something is left", |(low, size, cuts)| {
        let place = |share: Vec3| low + Vec3::new(size.x * share.x, size.y * share.y, size.z * share.z);
        let planes = cuts
            .iter()
            .zip(10..)
            .map(|((share, normal), tag)| (Plane::through(place(*share), *normal).expect("a plane"), tag));
        ConvexSolid::cuboid(low, low + size, TAGS).expect("a box").cut(planes)
    })
}

/// Any bit pattern, or a number of ordinary size.
fn any_number() -> impl Strategy<Value = f64> {
    prop_oneof![prop::num::f64::ANY, -10.0..10.0]
}

fn close(a: f64, b: f64, size: f64, tolerance: f64) -> bool {
    (a - b).abs() <= tolerance * size.abs()
}

fn assert_same_mass(a: &MassProperties, b: &MassProperties, tolerance: f64) {
    let reach = a.surface_mm2.sqrt();
    assert!(close(a.volume_mm3, b.volume_mm3, reach * a.surface_mm2, tolerance), "{a:?} {b:?}");
    assert!(close(a.surface_mm2, b.surface_mm2, a.surface_mm2, tolerance), "{a:?} {b:?}");
    // The centroid of a sliver is known to the rounding of its volume only.
    let sliver = reach * a.surface_mm2 / a.volume_mm3;
    assert!((a.centroid_mm - b.centroid_mm).length() <= tolerance * reach * sliver, "{a:?} {b:?}");
    let scale = a.inertia.xx_mm5 + a.inertia.yy_mm5 + a.inertia.zz_mm5;
    let pairs = [
        (a.inertia.xx_mm5, b.inertia.xx_mm5),
        (a.inertia.yy_mm5, b.inertia.yy_mm5),
        (a.inertia.zz_mm5, b.inertia.zz_mm5),
        (a.inertia.xy_mm5, b.inertia.xy_mm5),
        (a.inertia.yz_mm5, b.inertia.yz_mm5),
        (a.inertia.zx_mm5, b.inertia.zx_mm5),
    ];
    for (one, other) in pairs {
        assert!(close(one, other, scale, tolerance * sliver), "{a:?} {b:?}");
    }
}

#[test]
fn a_box_has_the_mass_of_the_handbook() {
    let low = Vec3::new(10.0, -20.0, 5.0);
    let mass = ConvexSolid::cuboid(low, low + Vec3::new(2.0, 3.0, 4.0), TAGS).unwrap().mass_properties();
    assert!((mass.volume_mm3 - 24.0).abs() < 1e-13);
    assert!((mass.surface_mm2 - 52.0).abs() < 1e-13);
    assert!((mass.centroid_mm - Vec3::new(11.0, -18.5, 7.0)).length() < 1e-14);
    // m (b² + c²) / 12
    assert!((mass.inertia.xx_mm5 - 24.0 * 25.0 / 12.0).abs() < 1e-12);
    assert!((mass.inertia.yy_mm5 - 24.0 * 20.0 / 12.0).abs() < 1e-12);
    assert!((mass.inertia.zz_mm5 - 24.0 * 13.0 / 12.0).abs() < 1e-12);
    assert!(mass.inertia.xy_mm5.abs() + mass.inertia.yz_mm5.abs() + mass.inertia.zx_mm5.abs() < 1e-12);
}

#[test]
fn a_corner_tetrahedron_has_the_closed_form() {
    // Corner at the origin, legs 3, 4, 5: V = abc/6, centroid at a quarter, ∫x² = V a²/10, ∫xy = V ab/20.
    let (a, b, c) = (3.0, 4.0, 5.0);
    let planes = [
        Plane::at_offset(-Vec3::X, 0.0).unwrap(),
        Plane::at_offset(-Vec3::Y, 0.0).unwrap(),
        Plane::at_offset(-Vec3::Z, 0.0).unwrap(),
        Plane::of_points(Vec3::X * a, Vec3::Y * b, Vec3::Z * c).unwrap(),
    ];
    let solid = ConvexSolid::from_half_spaces(&planes).unwrap();
    assert_closed(&solid);
    let mass = solid.mass_properties();
    assert!((mass.volume_mm3 - 10.0).abs() < 1e-13);
    assert!((mass.centroid_mm - Vec3::new(0.75, 1.0, 1.25)).length() < 1e-14);
    let about_corner = mass.inertia.about(mass.centroid_mm, mass.volume_mm3);
    assert!((about_corner.xx_mm5 - 10.0 * (b * b + c * c) / 10.0).abs() < 1e-12);
    assert!((about_corner.xy_mm5 + 10.0 * a * b / 20.0).abs() < 1e-12);
    assert!((about_corner.yz_mm5 + 10.0 * b * c / 20.0).abs() < 1e-12);
    let slant = solid.face(3).unwrap();
    // Area of the slant: ½ sqrt(a²b² + b²c² + c²a²).
    assert!((slant.area() - 0.5 * (144.0_f64 + 400.0 + 225.0).sqrt()).abs() < 1e-13);
}

#[test]
fn a_hexagonal_prism_has_the_closed_form() {
    // Circumscribed radius 1, height 2: V = 3√3/2 · 2, I about the axis = m r² 5/12.
    let mut planes: Vec<_> = (0..6)
        .map(|side| {
            let (sine, cosine) = crate::numeric::real::sin_cos_deg(60.0 * f64::from(side));
            Plane::at_offset(Vec3::new(cosine, sine, 0.0), 3.0_f64.sqrt() / 2.0).unwrap()
        })
        .collect();
    planes.push(Plane::at_offset(Vec3::Z, 1.0).unwrap());
    planes.push(Plane::at_offset(-Vec3::Z, 1.0).unwrap());
    let solid = ConvexSolid::from_half_spaces(&planes).unwrap();
    assert_closed(&solid);
    assert_eq!(solid.faces().len(), 8);
    let mass = solid.mass_properties();
    let volume = 3.0 * 3.0_f64.sqrt();
    assert!((mass.volume_mm3 - volume).abs() < 1e-13);
    assert!((mass.inertia.zz_mm5 - volume * 5.0 / 12.0).abs() < 1e-12);
}

#[test]
fn a_plane_within_rounding_of_a_face_never_tears_the_solid() {
    let size = Vec3::new(2000.0, 20.0, 200.0);
    let solid = ConvexSolid::cuboid(Vec3::ZERO, size, TAGS).unwrap();
    for exponent in 6..16_u32 {
        for lean in [Vec3::new(1.0, 1.0, 0.0), Vec3::new(-1.0, 0.0, 1.0), Vec3::new(1.0, 1.0, 1.0)] {
            for side in [-1.0, 1.0] {
                let small = side * crate::numeric::real::pow(10.0, -f64::from(exponent));
                let normal = Vec3::Y + lean * small;
                for at in [Vec3::new(1000.0, 20.0, 100.0), Vec3::new(0.0, 20.0, 0.0), Vec3::new(2000.0, 20.0, 200.0)] {
                    let plane = Plane::through(at, normal).unwrap();
                    let (kept, lost) = (solid.clip(&plane, 9), solid.clip(&plane.flipped(), 9));
                    let volume = |clip: &Clip| match clip {
                        Clip::Whole => solid.volume(),
                        Clip::Empty => 0.0,
                        Clip::Part(part) => {
                            assert_closed(part);
                            part.volume()
                        }
                    };
                    let sum = volume(&kept) + volume(&lost);
                    assert!((sum - solid.volume()).abs() < 1e-9 * solid.volume(), "{plane:?}");
                }
            }
        }
    }
}

#[test]
fn many_cuts_by_nearly_the_same_plane_stay_closed() {
    let mut solid = ConvexSolid::cuboid(Vec3::ZERO, Vec3::new(1000.0, 1000.0, 1000.0), TAGS).unwrap();
    let mut state = 1_u64;
    let mut next = || {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (state >> 11) as f64 / (1_u64 << 53) as f64 - 0.5
    };
    for round in 0..400_u32 {
        let size = crate::numeric::real::pow(10.0, -f64::from(round % 14) - 2.0);
        let normal = Vec3::new(1.0, 2.0, 3.0) + Vec3::new(next(), next(), next()) * size;
        let point = Vec3::new(500.0, 500.0, 500.0) + Vec3::new(next(), next(), next()) * (size * 100.0);
        if let Clip::Part(part) = solid.clip(&Plane::through(point, normal).unwrap(), 10 + round) {
            assert_closed(&part);
            solid = part;
        }
    }
    assert!(solid.volume() > 0.4e9);
}

#[test]
fn what_cannot_be_a_box_is_refused() {
    let one = Vec3::new(1.0, 1.0, 1.0);
    for high in [Vec3::ZERO, -one, Vec3::new(f64::NAN, 1.0, 1.0), Vec3::new(f64::INFINITY, 1.0, 1.0), one * 1e60] {
        assert!(ConvexSolid::cuboid(Vec3::ZERO, high, TAGS).is_none(), "{high:?}");
    }
    // Tiny and huge boxes are boxes, and their mass is a number.
    for size in [1e-300, 1e-30, 1e30, 1e49] {
        let solid = ConvexSolid::cuboid(Vec3::ZERO, one * size, TAGS).unwrap();
        let mass = solid.mass_properties();
        assert!(mass.centroid_mm.is_finite() && mass.inertia.xx_mm5.is_finite(), "{size}");
        assert_closed(&solid);
    }
}

proptest! {
    #[test]
    fn a_cut_solid_is_closed_and_its_face_areas_cancel(solid in solid()) {
        assert_closed(&solid);
        let sum = solid.faces().fold(Vec3::ZERO, |sum, face| sum + face.area_vector());
        prop_assert!(sum.length() < 1e-11 * solid.mass_properties().surface_mm2);
        for face in solid.faces() {
            prop_assert!((face.area_vector() - face.plane.normal() * face.area()).length() < 1e-6 * face.area().max(1e-3));
        }
    }

    #[test]
    fn both_sides_of_a_cut_add_up(solid in solid(), share in vector(0.0, 1.0), normal in direction()) {
        let (low, high) = solid.bounds();
        let size = high - low;
        let point = low + Vec3::new(size.x * share.x, size.y * share.y, size.z * share.z);
        let plane = Plane::through(point, normal).unwrap();
        let whole = solid.mass_properties();
        let parts: Vec<_> = [plane, plane.flipped()]
            .iter()
            .filter_map(|plane| solid.clone().cut([(*plane, 99)]))
            .inspect(assert_closed)
            .map(|part| part.mass_properties())
            .collect();
        let mut sum = MassProperties::sum(&parts);
        sum.surface_mm2 = whole.surface_mm2;
        assert_same_mass(&whole, &sum, 1e-10);
    }

    #[test]
    fn the_order_of_cuts_does_not_matter(
        low in vector(-10.0, 10.0),
        cuts in prop::collection::vec((vector(10.0, 90.0), direction()), 2..5),
    ) {
        let solid = ConvexSolid::cuboid(low, Vec3::new(100.0, 100.0, 100.0), TAGS).unwrap();
        let planes: Vec<_> = cuts.iter().map(|(point, normal)| (Plane::through(*point, *normal).unwrap(), 9)).collect();
        let volume = |solid: Option<ConvexSolid>| solid.map_or(0.0, |solid| solid.volume());
        let forth = volume(solid.clone().cut(planes.iter().copied()));
        let back = volume(solid.cut(planes.iter().rev().copied()));
        prop_assert!((forth - back).abs() < 1e-10 * 1e6);
    }

    #[test]
    fn mass_moves_and_turns_with_the_solid(solid in solid(), origin in vector(-1e3, 1e3), n in direction(), along in direction()) {
        let Some(frame) = Frame::new(origin, n, along) else { return Ok(()) };
        let here = solid.mass_properties();
        let there = solid.in_frame(&frame).unwrap();
        assert_closed(&there);
        let turned = there.mass_properties();
        let back = there.out_of_frame(&frame).unwrap().mass_properties();
        assert_same_mass(&here, &back, 1e-11);
        let reach = here.surface_mm2.sqrt();
        let sliver = reach * here.surface_mm2 / here.volume_mm3;
        prop_assert!((frame.to_world(turned.centroid_mm) - here.centroid_mm).length() < 1e-11 * reach * sliver);
        let trace = |mass: &MassProperties| mass.inertia.xx_mm5 + mass.inertia.yy_mm5 + mass.inertia.zz_mm5;
        prop_assert!(close(trace(&here), trace(&turned), trace(&here), 1e-11 * sliver));
    }

    #[test]
    fn far_from_the_origin_the_mass_is_the_same(solid in solid(), way in direction()) {
        let here = solid.mass_properties();
        let by = way * 1e8;
        let mut there = solid.moved(by).unwrap().mass_properties();
        there.centroid_mm = there.centroid_mm - by;
        // Coordinates near 1e8 resolve 1.5e-8, against sizes of 1 and more.
        assert_same_mass(&here, &there, 1e-6);
    }

    #[test]
    fn half_spaces_of_a_solid_give_it_back(solid in solid()) {
        let planes: Vec<_> = solid.faces().map(|face| face.plane).collect();
        let again = ConvexSolid::from_half_spaces(&planes).unwrap();
        assert_closed(&again);
        let (here, there) = (solid.mass_properties(), again.mass_properties());
        prop_assert!(close(here.volume_mm3, there.volume_mm3, here.surface_mm2.sqrt() * here.surface_mm2, 1e-9));
    }

    #[test]
    fn hostile_numbers_never_tear_a_solid(numbers in prop::collection::vec(any_number(), 24)) {
        let at = |k: usize| Vec3::new(numbers[k], numbers[k + 1], numbers[k + 2]);
        let (low, high) = (at(0).least(at(3)), at(0).most(at(3)));
        let planes: Vec<_> = (2..7).filter_map(|k| Plane::through(at(3 * k), at(3 * ((k + 1) % 8)))).collect();
        let cut = |solid: ConvexSolid| solid.cut(planes.iter().map(|plane| (*plane, 9)));
        if let Some(part) = ConvexSolid::cuboid(low, high, TAGS).and_then(cut) {
            assert_closed(&part);
            let mass = part.mass_properties();
            prop_assert!(mass.centroid_mm.is_finite() && mass.inertia.zz_mm5.is_finite());
        }
        match ConvexSolid::from_half_spaces(&planes) {
            Ok(solid) => assert_closed(&solid),
            Err(NoSolid::Empty | NoSolid::Unbounded) => {}
        }
        let _ = Plane::of_points(at(0), at(3), at(6));
        let _ = Frame::new(at(0), at(3), at(6));
    }

    #[test]
    fn planes_through_old_vertices_never_tear_a_solid(solid in solid(), picks in prop::collection::vec((0_usize..64, 0_usize..64, 0_usize..64, -1e-11..1e-11), 1..6)) {
        let mut solid = solid;
        for (a, b, c, nudge) in picks {
            let vertex = |k: usize| solid.vertices()[k % solid.vertices().len()];
            let Some(plane) = Plane::of_points(vertex(a), vertex(b), vertex(c)) else { continue };
            let Some(plane) = plane.moved(nudge * 1e3) else { continue };
            if let Clip::Part(part) = solid.clip(&plane, 50) {
                assert_closed(&part);
                solid = part;
            }
        }
    }
}
