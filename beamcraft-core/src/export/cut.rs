//! Cross sections: what a plane shows of a convex solid.

use crate::geometry::{Clip, ConvexSolid, Plane, Point3};

/// An edge of a cross section.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct SectionEdge {
    /// Where it starts.
    pub(super) from: Point3,
    /// Where it ends.
    pub(super) to: Point3,
    /// Tag of the face that the plane cuts there.
    pub(super) tag: u32,
}

/// Tag of the cut itself; the faces of a panel have tags far below.
const CUT: u32 = u32::MAX;

/// The convex polygon in which a plane cuts a solid, as edges in a ring; empty where it only touches or misses it.
pub(super) fn cross_section(solid: &ConvexSolid, plane: &Plane) -> Vec<SectionEdge> {
    let Clip::Part(part) = solid.clip(plane, CUT) else { return Vec::new() };
    let Some(cut) = part.face(CUT) else { return Vec::new() };
    // The face beyond an edge runs along it the other way round.
    let beyond = |from: u32, to: u32| {
        part.faces().find(|face| face.tag != CUT && face.edges().any(|edge| edge == (to, from))).map(|face| face.tag)
    };
    let ends = cut.points().zip(cut.points().cycle().skip(1));
    let tags = cut.edges().map(|(from, to)| beyond(from, to));
    ends.zip(tags).filter_map(|((from, to), tag)| Some(SectionEdge { from, to, tag: tag? })).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Vec3;

    #[test]
    fn a_box_shows_the_rectangle_and_its_four_faces() {
        let solid = ConvexSolid::cuboid(Vec3::ZERO, Vec3::new(4.0, 2.0, 3.0), [0, 1, 2, 3, 4, 5]).unwrap();
        let plane = Plane::at_offset(Vec3::X, 1.0).unwrap();
        let ring = cross_section(&solid, &plane);
        let mut tags: Vec<_> = ring.iter().map(|edge| edge.tag).collect();
        tags.sort_unstable();
        assert_eq!(tags, [2, 3, 4, 5]);
        for (edge, next) in ring.iter().zip(ring.iter().cycle().skip(1)) {
            assert_eq!(edge.to, next.from);
            assert_eq!(edge.from.x, 1.0);
        }
        let low_y = ring.iter().find(|edge| edge.tag == 2).unwrap();
        assert_eq!((low_y.from.y, low_y.to.y), (0.0, 0.0));
        // Shoelace, the ring seen from outside the part kept: 2 × 3.
        let doubled: f64 = ring.iter().map(|edge| edge.from.y * edge.to.z - edge.to.y * edge.from.z).sum();
        assert!((doubled - 12.0).abs() < 1e-12);
    }

    #[test]
    fn a_plane_that_misses_or_touches_shows_nothing() {
        let solid = ConvexSolid::cuboid(Vec3::ZERO, Vec3::new(1.0, 1.0, 1.0), [0, 1, 2, 3, 4, 5]).unwrap();
        for offset in [-1.0, 0.0, 1.0, 2.0] {
            assert!(cross_section(&solid, &Plane::at_offset(Vec3::X, offset).unwrap()).is_empty(), "{offset}");
        }
    }
}
