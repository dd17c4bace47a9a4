//! Solids between two end planes along straight lines.

#![allow(clippy::indexing_slicing, reason = "indices are made with the vertices they point to; the laws test them")]

use super::solid::{FaceSpan, tolerance_of};
use super::{ConvexSolid, Plane, Point3, Vec3};

impl ConvexSolid {
    /// The solid with one long edge on each line (a point and a direction), cut off by two end planes; nothing when the
    /// ends do not cut every line in order, or a number is not usable.
    ///
    /// Seen against the directions, the lines run clockwise: side k lies between lines k and k + 1 and has the k-th plane.
    /// The planes must hold their lines; every plane comes with the tag of its face. Lines that are not parallel must not
    /// cross between the ends: that is the caller's to see to.
    pub(crate) fn along_lines(
        lines: &[(Point3, Vec3)],
        sides: &[(Plane, u32)],
        first: (Plane, u32),
        last: (Plane, u32),
    ) -> Option<Self> {
        let count = lines.len();
        if count < 3 || sides.len() != count {
            return None;
        }
        let mut vertices = Vec::with_capacity(2 * count);
        for (end, side) in [(&first.0, -1.0), (&last.0, 1.0)] {
            for (point, direction) in lines {
                let rise = end.normal().dot(*direction);
                // Every line must run from the first end to the last.
                if side * rise <= 0.0 {
                    return None;
                }
                vertices.push(*point - *direction * (end.signed_distance(*point) / rise));
            }
        }
        if !vertices.iter().all(|vertex| vertex.is_usable()) {
            return None;
        }
        let bounds = vertices.iter().fold((vertices[0], vertices[0]), |(low, high), p| (low.least(*p), high.most(*p)));
        let size = (bounds.1 - bounds.0).magnitude();
        let tolerance = tolerance_of(size, bounds.0.magnitude().max(bounds.1.magnitude()));
        // Ends that meet within the solid leave another shape than this.
        let long = |at: usize| (vertices[count + at] - vertices[at]).dot(lines[at].1);
        if !(0..count).all(|at| long(at) > 4.0 * tolerance * lines[at].1.length()) {
            return None;
        }
        let mut corners = Vec::with_capacity(6 * count);
        let mut faces = Vec::with_capacity(count + 2);
        let (near, far) = (|at: usize| (at % count) as u32, |at: usize| (count + at % count) as u32);
        for (at, (plane, tag)) in sides.iter().enumerate() {
            let start = corners.len();
            corners.extend([near(at), far(at), far(at + 1), near(at + 1)]);
            faces.push(FaceSpan { tag: *tag, plane: *plane, start, end: corners.len() });
        }
        let start = corners.len();
        corners.extend((0..count).map(near));
        faces.push(FaceSpan { tag: first.1, plane: first.0, start, end: corners.len() });
        let start = corners.len();
        corners.extend((0..count).rev().map(far));
        faces.push(FaceSpan { tag: last.1, plane: last.0, start, end: corners.len() });
        Some(Self { vertices, corners, faces, tolerance })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn plane(point: Vec3, normal: Vec3) -> Plane {
        Plane::through(point, normal).unwrap()
    }

    fn beam(first: Vec3, last: Vec3) -> Option<ConvexSolid> {
        let ring = [(0.0, 0.0), (0.0, 2.0), (3.0, 2.0), (3.0, 0.0)];
        let lines = ring.map(|(y, z)| (Vec3::new(5.0, y, z), Vec3::X * 2.0));
        let sides = [(-Vec3::Y, 0), (Vec3::Z, 1), (Vec3::Y, 2), (-Vec3::Z, 3)];
        let sides = sides.map(|(normal, tag)| (plane(lines[tag as usize].0, normal), tag));
        let sides = [sides[0], sides[1], (plane(lines[2].0, Vec3::Y), 2), sides[3]];
        ConvexSolid::along_lines(&lines, &sides, (plane(Vec3::ZERO, first), 4), (plane(Vec3::X * 10.0, last), 5))
    }

    #[test]
    fn lines_between_square_ends_make_the_box() {
        let solid = beam(-Vec3::X, Vec3::X).unwrap();
        assert_eq!(solid.bounds(), (Vec3::ZERO, Vec3::new(10.0, 3.0, 2.0)));
        assert!((solid.volume() - 60.0).abs() < 1e-12);
        for face in solid.faces() {
            assert!(face.area_vector().dot(face.plane.normal()) > 0.0, "{}", face.tag);
            assert!(face.points().all(|point| face.plane.signed_distance(point).abs() < 1e-12));
        }
    }

    #[test]
    fn ends_that_meet_within_are_not_this_shape() {
        assert!(beam(Vec3::new(-1.0, 3.0, 0.0), Vec3::new(1.0, 3.0, 0.0)).is_none());
        assert!(beam(Vec3::Y, Vec3::X).is_none());
        let skewed = beam(Vec3::new(-1.0, 1.0, 0.5), Vec3::new(1.0, 1.0, 0.0)).unwrap();
        // Mean length of the four lines of a parallelogram: 10 less the mean of both insets.
        assert!((skewed.volume() - 6.0 * (10.0 - 2.0 - 1.5)).abs() < 1e-12);
    }
}
