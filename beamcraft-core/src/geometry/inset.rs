//! Solids of one shape: the same faces, edges and corners, some planes moved.
//!
//! As long as no face, edge or corner is lost, the corners of the moved solid are where its planes meet, and what lies
//! between both solids falls apart into one layer a face. No plane has to be cut.

#![allow(clippy::indexing_slicing, reason = "indices are made with the vertices they point to; the laws test them")]

use super::solid::FaceSpan;
use super::{ConvexSolid, Plane};

/// Most corners of a solid of forty faces, three at every corner.
const CORNERS_MAX: usize = 76;
/// Most faces.
const FACES_MAX: usize = 40;
/// No face.
const NONE: u8 = u8::MAX;
/// Corners closer to another plane than so many tolerances may be none.
const CLEAR: f64 = 64.0;

/// The faces that meet in each corner.
type Around = [[u8; 3]; CORNERS_MAX];

impl ConvexSolid {
    /// The solid of the same shape with other planes for its faces, by their tags; nothing when another shape, or no solid,
    /// lies within those planes, or when more than three faces meet in a corner.
    ///
    /// A corner of three planes that lies inside all others is a corner of what they enclose. When that holds for every
    /// corner, each has its three neighbours among them, so there are no more.
    pub(crate) fn of_same_shape(&self, plane: impl Fn(u32) -> Option<Plane>) -> Option<Self> {
        let around = self.around()?;
        let mut faces = self.faces.clone();
        for face in &mut faces {
            face.plane = plane(face.tag)?;
        }
        let mut vertices = Vec::with_capacity(self.vertices.len());
        for met in &around[..self.vertices.len()] {
            let [a, b, c] = met.map(|at| faces.get(usize::from(at)));
            let vertex = Plane::meet(&a?.plane, &b?.plane, &c?.plane)?;
            for (face, at) in faces.iter().zip(0_u8..) {
                let distance = face.plane.signed_distance(vertex);
                let on = met.contains(&at);
                if (on && distance.abs() > self.tolerance) || (!on && distance > -CLEAR * self.tolerance) {
                    return None;
                }
            }
            vertices.push(vertex);
        }
        Some(Self { vertices, corners: self.corners.clone(), faces, tolerance: self.tolerance })
    }

    /// The three faces that meet in each corner; nothing where it is another number.
    fn around(&self) -> Option<Around> {
        let mut around = [[NONE; 3]; CORNERS_MAX];
        if self.faces.len() > FACES_MAX || self.vertices.len() > CORNERS_MAX {
            return None;
        }
        for (face, at) in self.faces.iter().zip(0_u8..) {
            for corner in &self.corners[face.start..face.end] {
                let met = around.get_mut(*corner as usize)?;
                *met.iter_mut().find(|one| **one == NONE)? = at;
            }
        }
        let whole = around[..self.vertices.len()].iter().all(|met| !met.contains(&NONE));
        whole.then_some(around)
    }

    /// What lies between a face and the same face of a solid of the same shape further in, closed by a plane to each
    /// neighbour, which comes with its tag for the tag of the neighbour.
    ///
    /// The first face is the outer one, the second the inner one, with the tags given.
    pub(crate) fn layer(
        &self,
        further_in: &Self,
        tag: u32,
        (outer_tag, inner_tag): (u32, u32),
        side: impl Fn(u32) -> Option<(Plane, u32)>,
    ) -> Option<Self> {
        let at = self.faces.iter().position(|face| face.tag == tag)?;
        let (outer, inner) = (self.faces[at], further_in.faces.get(at)?);
        let ring = &self.corners[outer.start..outer.end];
        let count = ring.len();
        let mut vertices = Vec::with_capacity(2 * count);
        for solid in [self, further_in] {
            vertices.extend(ring.iter().map(|corner| solid.vertices[*corner as usize]));
        }
        let mut corners = Vec::with_capacity(6 * count);
        let mut faces = Vec::with_capacity(count + 2);
        corners.extend(0..count as u32);
        faces.push(FaceSpan { tag: outer_tag, plane: outer.plane, start: 0, end: count });
        corners.extend((count as u32..2 * count as u32).rev());
        faces.push(FaceSpan { tag: inner_tag, plane: inner.plane.flipped(), start: count, end: 2 * count });
        for from in 0..count {
            let to = if from + 1 == count { 0 } else { from + 1 };
            let (plane, tag) = side(self.beyond(ring[from], ring[to])?)?;
            let start = corners.len();
            corners.extend([to, from, count + from, count + to].map(|index| index as u32));
            faces.push(FaceSpan { tag, plane, start, end: corners.len() });
        }
        Some(Self { vertices, corners, faces, tolerance: self.tolerance })
    }

    /// Tag of the face beyond an edge of a face.
    fn beyond(&self, from: u32, to: u32) -> Option<u32> {
        let is_beyond = |face: &&FaceSpan| {
            let ring = &self.corners[face.start..face.end];
            let start = ring.iter().position(|corner| *corner == to);
            start.is_some_and(|start| ring[if start + 1 == ring.len() { 0 } else { start + 1 }] == from)
        };
        self.faces.iter().find(is_beyond).map(|face| face.tag)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Vec3;

    fn cube() -> ConvexSolid {
        ConvexSolid::cuboid(Vec3::ZERO, Vec3::new(1.0, 1.0, 1.0), [0, 1, 2, 3, 4, 5]).unwrap()
    }

    fn moved(solid: &ConvexSolid, by: impl Fn(u32) -> f64) -> Option<ConvexSolid> {
        solid.of_same_shape(|tag| solid.face(tag)?.plane.moved(by(tag)))
    }

    #[test]
    fn a_box_within_a_box_has_its_faces() {
        let within = moved(&cube(), |tag| -0.1 * f64::from(tag)).unwrap();
        assert!((within.bounds().0 - Vec3::new(0.0, 0.2, 0.4)).length() < 1e-15);
        assert!((within.bounds().1 - Vec3::new(0.9, 0.7, 0.5)).length() < 1e-15);
        assert!((within.volume() - 0.9 * 0.5 * 0.1).abs() < 1e-15);
        assert!(within.faces().all(|face| face.area_vector().dot(face.plane.normal()) > 0.0));
    }

    #[test]
    fn planes_that_pass_one_another_or_a_corner_leave_another_shape() {
        assert_eq!(moved(&cube(), |_| -0.5), None);
        assert_eq!(moved(&cube(), |_| -0.6), None);
        let diagonal = Plane::through(Vec3::new(0.5, 0.5, 0.5), Vec3::new(1.0, 1.0, 1.0)).unwrap();
        let cut = cube().cut([(diagonal, 9)]).unwrap();
        // A triangle less and less, then gone with its corners.
        assert!(moved(&cut, |tag| if tag == 9 { -0.1 } else { 0.0 }).is_some());
        assert_eq!(moved(&cut, |tag| if tag == 9 { 1.0 } else { 0.0 }), None);
    }

    #[test]
    fn four_faces_at_a_corner_are_cut_instead() {
        let slope = |x: f64, y: f64| Plane::through(Vec3::Z, Vec3::new(x, y, 1.0)).unwrap();
        let floor = Plane::through(Vec3::ZERO, -Vec3::Z).unwrap();
        let planes = [slope(1.0, 0.0), slope(-1.0, 0.0), slope(0.0, 1.0), slope(0.0, -1.0), floor];
        let pyramid = ConvexSolid::from_half_spaces(&planes).unwrap();
        assert_eq!(moved(&pyramid, |_| -0.01), None);
    }

    #[test]
    fn layers_fill_what_lies_between() {
        let (outer, within) = (cube(), moved(&cube(), |tag| -0.05 * f64::from(tag + 1)).unwrap());
        let mut sum = 0.0;
        for tag in 0..6 {
            // The planes of the sides do not matter for the volume.
            let layer =
                outer.layer(&within, tag, (10, 11), |beyond| Some((outer.face(beyond)?.plane, beyond))).unwrap();
            assert_eq!((layer.faces().len(), layer.vertices().len(), layer.edge_count()), (6, 8, 12));
            assert_eq!(layer.face(10).unwrap().plane, outer.face(tag).unwrap().plane);
            sum += layer.volume();
        }
        assert!((sum - (1.0 - within.volume())).abs() < 1e-15);
    }
}
