//! Cutting a convex solid by planes.
//!
//! Every vertex is put inside, on, or outside the plane once; all the rest is topology. An edge that crosses gets one
//! new vertex, shared by its two faces. What is left of the faces has one open rim, which the new face closes. When
//! rounding has made the sides contradict one another (the rim is no simple ring), the plane was within rounding of a
//! face, and the cut is made again with a coarser idea of "on".

#![allow(clippy::indexing_slicing, reason = "indices are made with the vertices they point to; the laws test them")]

use core::mem;

use super::solid::FaceSpan;
use super::{ConvexSolid, Plane, Point3};

/// What a cut leaves of a solid.
#[derive(Clone, Debug, PartialEq)]
pub enum Clip {
    /// All of it: the plane only touches or misses it.
    Whole,
    /// A part, with the cut face as its last face.
    Part(ConvexSolid),
    /// Nothing with volume.
    Empty,
}

/// What a cut into a buffer did.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Outcome {
    Whole,
    Part,
    Empty,
}

/// Where a vertex lies.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Side {
    Inside,
    On,
    Outside,
}

/// A vertex that has no place in the new solid yet.
const UNPLACED: u32 = u32::MAX;

/// Buffers of a cut, kept between cuts.
#[derive(Default)]
struct Clipper {
    distances: Vec<f64>,
    sides: Vec<Side>,
    placed: Vec<u32>,
    crossings: Vec<(u32, u32, u32)>,
    on_plane: Vec<bool>,
    on_edges: Vec<(u32, u32)>,
    rim: Vec<(u32, u32)>,
}

impl ConvexSolid {
    /// Cuts away what lies outside a plane; the new face gets a tag.
    pub fn clip(&self, plane: &Plane, tag: u32) -> Clip {
        let mut part = Self::buffer();
        match Clipper::default().cut(self, plane, tag, &mut part) {
            Outcome::Whole => Clip::Whole,
            Outcome::Part => Clip::Part(part),
            Outcome::Empty => Clip::Empty,
        }
    }

    /// Cuts away what lies outside any of several planes, each with the tag of its new face; nothing when nothing with
    /// volume is left.
    #[must_use]
    pub fn cut(self, planes: impl IntoIterator<Item = (Plane, u32)>) -> Option<Self> {
        let mut cutter = Cutter::over(self);
        planes.into_iter().all(|(plane, tag)| cutter.step(&plane, tag)).then_some(cutter.whole)
    }

    /// What two solids have in common, with the tags of this one and of the cuts the tag given.
    pub fn common(&self, other: &Self, tag: u32) -> Option<Self> {
        self.clone().cut(other.faces().map(|face| (face.plane, tag)))
    }

    /// Without vertices and faces, to be filled.
    const fn buffer() -> Self {
        Self { vertices: Vec::new(), corners: Vec::new(), faces: Vec::new(), tolerance: f64::MIN_POSITIVE }
    }
}

/// Cuts by many planes, with buffers that outlive the solids.
pub(crate) struct Cutter {
    clipper: Clipper,
    whole: ConvexSolid,
    part: ConvexSolid,
}

impl Default for Cutter {
    fn default() -> Self {
        Self::over(ConvexSolid::buffer())
    }
}

impl Cutter {
    fn over(whole: ConvexSolid) -> Self {
        Self { clipper: Clipper::default(), whole, part: ConvexSolid::buffer() }
    }

    /// Takes up a solid with other tags.
    pub(crate) fn start(&mut self, solid: &ConvexSolid, tag: impl Fn(u32) -> u32) {
        let whole = &mut self.whole;
        whole.vertices.clear();
        whole.vertices.extend_from_slice(&solid.vertices);
        whole.corners.clear();
        whole.corners.extend_from_slice(&solid.corners);
        whole.faces.clear();
        whole.faces.extend(solid.faces.iter().map(|face| FaceSpan { tag: tag(face.tag), ..*face }));
        whole.tolerance = solid.tolerance;
    }

    /// Cuts away what lies outside a plane; false when nothing with volume is left.
    pub(crate) fn step(&mut self, plane: &Plane, tag: u32) -> bool {
        match self.clipper.cut(&self.whole, plane, tag, &mut self.part) {
            Outcome::Whole => true,
            Outcome::Part => {
                mem::swap(&mut self.whole, &mut self.part);
                true
            }
            Outcome::Empty => false,
        }
    }

    /// What is left.
    pub(crate) fn solid(&self) -> &ConvexSolid {
        &self.whole
    }
}

/// The directed edges of a ring.
fn around(corners: &[u32]) -> impl Iterator<Item = (u32, u32)> + '_ {
    let next = corners.iter().skip(1).chain(corners.first());
    corners.iter().zip(next).map(|(from, to)| (*from, *to))
}

impl Clipper {
    fn cut(&mut self, solid: &ConvexSolid, plane: &Plane, tag: u32, part: &mut ConvexSolid) -> Outcome {
        self.distances.clear();
        self.distances.extend(solid.vertices.iter().map(|vertex| plane.signed_distance(*vertex)));
        let mut tolerance = solid.tolerance;
        loop {
            let (least, most) = self.classify(tolerance);
            if most <= tolerance {
                return Outcome::Whole;
            }
            if least >= -tolerance {
                return Outcome::Empty;
            }
            if self.try_cut(solid, plane, tag, part) {
                return Outcome::Part;
            }
            // Ends: once the tolerance exceeds every distance, all vertices lie on the plane.
            tolerance *= 16.0;
        }
    }

    /// The side of every vertex; says the least and the greatest distance.
    fn classify(&mut self, tolerance: f64) -> (f64, f64) {
        self.sides.clear();
        let (mut least, mut most) = (f64::INFINITY, f64::NEG_INFINITY);
        for distance in &self.distances {
            (least, most) = (least.min(*distance), most.max(*distance));
            self.sides.push(if *distance > tolerance {
                Side::Outside
            } else if *distance < -tolerance {
                Side::Inside
            } else {
                Side::On
            });
        }
        (least, most)
    }

    /// Whether the sides were consistent; `part` then holds the cut solid.
    fn try_cut(&mut self, solid: &ConvexSolid, plane: &Plane, tag: u32, part: &mut ConvexSolid) -> bool {
        part.vertices.clear();
        part.corners.clear();
        part.faces.clear();
        part.tolerance = solid.tolerance;
        self.placed.clear();
        self.placed.resize(solid.vertices.len(), UNPLACED);
        self.crossings.clear();
        self.on_plane.clear();
        self.on_edges.clear();
        for face in &solid.faces {
            self.cut_face(solid, face, part);
        }
        self.close(plane, tag, part)
    }

    /// Keeps what lies inside of one face.
    fn cut_face(&mut self, solid: &ConvexSolid, face: &FaceSpan, part: &mut ConvexSolid) {
        let corners = &solid.corners[face.start..face.end];
        if !corners.iter().any(|corner| self.sides[*corner as usize] == Side::Inside) {
            return;
        }
        let start = part.corners.len();
        for (from, to) in around(corners) {
            let (side, next) = (self.sides[from as usize], self.sides[to as usize]);
            if side != Side::Outside {
                let index = self.place(solid, from, part);
                part.corners.push(index);
            }
            if matches!((side, next), (Side::Inside, Side::Outside) | (Side::Outside, Side::Inside)) {
                let index = self.cross(solid, from, to, part);
                part.corners.push(index);
            }
        }
        for (from, to) in around(&part.corners[start..]) {
            if self.on_plane[from as usize] && self.on_plane[to as usize] {
                self.on_edges.push((from, to));
            }
        }
        part.faces.push(FaceSpan { start, end: part.corners.len(), ..*face });
    }

    /// Index of an old vertex in the new solid.
    fn place(&mut self, solid: &ConvexSolid, vertex: u32, part: &mut ConvexSolid) -> u32 {
        let place = &mut self.placed[vertex as usize];
        if *place == UNPLACED {
            *place = part.vertices.len() as u32;
            part.vertices.push(solid.vertices[vertex as usize]);
            self.on_plane.push(self.sides[vertex as usize] == Side::On);
        }
        *place
    }

    /// Index of the vertex where an edge crosses the plane; one for both faces of the edge.
    fn cross(&mut self, solid: &ConvexSolid, from: u32, to: u32, part: &mut ConvexSolid) -> u32 {
        let (first, second) = (from.min(to), from.max(to));
        if let Some(found) = self.crossings.iter().find(|crossing| (crossing.0, crossing.1) == (first, second)) {
            return found.2;
        }
        // From the nearer end, so that a small offset from it keeps its digits.
        let closer = self.distances[first as usize].abs() <= self.distances[second as usize].abs();
        let (close, far) = if closer { (first, second) } else { (second, first) };
        let share = self.distances[close as usize] / (self.distances[close as usize] - self.distances[far as usize]);
        let (start, end): (Point3, Point3) = (solid.vertices[close as usize], solid.vertices[far as usize]);
        let index = part.vertices.len() as u32;
        part.vertices.push(start + (end - start) * share);
        self.on_plane.push(true);
        self.crossings.push((first, second, index));
        index
    }

    /// Closes the rim with the new face; false when it is not one simple ring.
    fn close(&mut self, plane: &Plane, tag: u32, part: &mut ConvexSolid) -> bool {
        // An edge whose both faces are kept is no rim.
        let edges = &self.on_edges;
        self.rim.clear();
        self.rim.extend(edges.iter().filter(|(from, to)| !edges.contains(&(*to, *from))));
        let Some((first, mut at)) = self.rim.first().copied() else { return false };
        // The new face runs along the rim the other way round: from the end of each rim edge to its start.
        let start = part.corners.len();
        part.corners.push(first);
        while at != first && part.corners.len() - start < self.rim.len() {
            part.corners.push(at);
            let mut next = self.rim.iter().filter(|(from, _)| *from == at);
            let (Some((_, to)), None) = (next.next(), next.next()) else { return false };
            at = *to;
        }
        let ring = &mut part.corners[start..];
        if at != first || ring.len() != self.rim.len() || ring.len() < 3 {
            return false;
        }
        ring.reverse();
        part.faces.push(FaceSpan { tag, plane: *plane, start, end: part.corners.len() });
        true
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Vec3;

    fn cube() -> ConvexSolid {
        ConvexSolid::cuboid(Vec3::ZERO, Vec3::new(1.0, 1.0, 1.0), [0, 1, 2, 3, 4, 5]).unwrap()
    }

    fn plane(normal: Vec3, offset: f64) -> Plane {
        Plane::at_offset(normal, offset).unwrap()
    }

    #[test]
    fn a_plane_that_only_touches_leaves_the_solid_whole() {
        for offset in [1.0, 1.5, 1.0 + 1e-13, 1.0 - 1e-13] {
            assert_eq!(cube().clip(&plane(Vec3::X, offset), 9), Clip::Whole, "{offset}");
        }
        let corner = Plane::through(Vec3::new(1.0, 1.0, 1.0), Vec3::new(1.0, 1.0, 1.0)).unwrap();
        assert_eq!(cube().clip(&corner, 9), Clip::Whole);
        assert_eq!(cube().clip(&corner.flipped(), 9), Clip::Empty);
        assert_eq!(cube().clip(&plane(Vec3::X, 0.0), 9), Clip::Empty);
    }

    #[test]
    fn a_cut_through_an_edge_makes_a_wedge() {
        let diagonal = Plane::through(Vec3::ZERO, Vec3::new(-1.0, 1.0, 0.0)).unwrap();
        let Clip::Part(wedge) = cube().clip(&diagonal, 9) else { panic!("a part is left") };
        // The faces at low x and high y are gone, though both touch the plane.
        let tags: Vec<_> = wedge.faces().map(|face| face.tag).collect();
        assert_eq!(tags, [1, 2, 4, 5, 9]);
        assert_eq!((wedge.vertices().len(), wedge.edge_count()), (6, 9));
    }

    #[test]
    fn a_cut_keeps_planes_and_tags() {
        let Clip::Part(half) = cube().clip(&plane(Vec3::Z, 0.5), 9) else { panic!("a part is left") };
        assert_eq!(half.bounds(), (Vec3::ZERO, Vec3::new(1.0, 1.0, 0.5)));
        let cut = half.face(9).unwrap();
        assert_eq!(cut.plane.normal(), Vec3::Z);
        assert_eq!(cut.corners.len(), 4);
        assert!(half.face(5).is_none());
    }
}
