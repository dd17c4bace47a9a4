//! One straight run of a body: a convex section carried from one end plane to the other.
//!
//! ```text
//!   plan          wall                      section, seen from the right end
//!      ╲───────────────────────╱            z ↑   1 ┌──────┐ 2
//!       ╲ corner      corner  ╱               │     │      │      corners run clockwise,
//!        ●───────────────────●  y = 0         │     │      │      side k lies between
//!        │← length, y = z = 0│                │   0 └──────┘ 3    corners k and k + 1
//!                   x →                       └──────→ y
//! ```

use super::id::{FaceId, FaceKind};
use super::kernel::{OuterFace, Presence};
use crate::geometry::{ConvexSolid, Frame, Plane, Point3, Vec3};
use crate::numeric::real::sin_cos_deg;

/// A corner of a section.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Corner {
    pub(super) y: f64,
    pub(super) z: f64,
}

/// The plane of an end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct EndPlane {
    /// Angle between the line `y = z = 0` and the end in plan, inside the body, degrees.
    pub(super) corner_deg: f64,
    /// Angle between that line and the end seen from the front, inside the body, degrees; 90 is plumb.
    pub(super) plumb_deg: f64,
}

/// A run, in its own axes.
pub(super) struct Run<'a> {
    pub(super) leg: u32,
    /// Names of the sides.
    pub(super) names: &'a [FaceKind],
    /// Section square to the run at its left end.
    pub(super) left: &'a [Corner],
    /// Section square to the run at its right end.
    pub(super) right: &'a [Corner],
    /// Length along the line `y = z = 0`.
    pub(super) length_mm: f64,
    pub(super) left_end: EndPlane,
    pub(super) right_end: EndPlane,
}

impl EndPlane {
    /// Normal out of the run and direction of the grain of a panel in the plane, in the axes of the run; `side` is -1 for
    /// the left end and 1 for the right one.
    ///
    /// The grain comes from the front and runs on round the corner: towards the front on the left, away on the right.
    fn directions(self, side: f64) -> (Vec3, Vec3) {
        let (sine, cosine) = sin_cos_deg(self.corner_deg);
        let (plumb_sine, plumb_cosine) = sin_cos_deg(self.plumb_deg);
        let normal = Vec3::new(side * sine * plumb_sine, cosine * plumb_sine, sine * plumb_cosine);
        (normal, Vec3::new(-cosine, side * sine, 0.0))
    }
}

impl Run<'_> {
    /// The faces, sides first, each list in the order of the names, and the solid within them, whose tags are their
    /// indices; nothing when the ends meet within the body or a side is not plane.
    pub(super) fn solid(
        &self,
        place: &Frame,
        presence: impl Fn(FaceKind) -> Presence,
    ) -> Option<(Vec<OuterFace>, ConvexSolid)> {
        let lines = self.lines(place);
        let mut faces = Vec::with_capacity(lines.len() + 2);
        let mut sides = Vec::with_capacity(lines.len());
        for ((name, line), next) in self.names.iter().zip(&lines).zip(lines.iter().cycle().skip(1)) {
            let plane = Plane::through(line.0, line.1.cross(next.0 - line.0))?;
            sides.push((plane, 0));
            let id = FaceId { leg: self.leg, kind: *name };
            faces.push(OuterFace { id, plane, presence: presence(*name), grain: place.u });
        }
        faces.sort_by_key(|face| face.id);
        for (name, side) in self.names.iter().zip(&mut sides) {
            side.1 = faces.iter().position(|face| face.id.kind == *name)? as u32;
        }
        let ends = [
            (FaceKind::LeftEnd, self.left_end, -1.0, Vec3::ZERO),
            (FaceKind::RightEnd, self.right_end, 1.0, Vec3::X * self.length_mm),
        ];
        for (kind, end, side, at) in ends {
            let (normal, grain) = end.directions(side);
            faces.push(OuterFace {
                id: FaceId { leg: self.leg, kind },
                plane: Plane::through(place.to_world(at), place.direction_to_world(normal))?,
                presence: presence(kind),
                grain: place.direction_to_world(grain),
            });
        }
        let &[.., left, right] = faces.as_slice() else { return None };
        let count = sides.len() as u32;
        let solid = ConvexSolid::along_lines(&lines, &sides, (left.plane, count), (right.plane, count + 1))?;
        (self.left == self.right || is_convex(&solid)).then_some((faces, solid))
    }

    /// The arrises along the run: a point of each and its direction.
    fn lines(&self, place: &Frame) -> Vec<(Point3, Vec3)> {
        let line = |(left, right): (&Corner, &Corner)| {
            let run = Vec3::new(self.length_mm, right.y - left.y, right.z - left.z);
            (place.to_world(Vec3::new(0.0, left.y, left.z)), place.direction_to_world(run))
        };
        self.left.iter().zip(self.right).map(line).collect()
    }
}

/// Whether every face is plane and no vertex lies outside it: then the solid is what the planes enclose.
fn is_convex(solid: &ConvexSolid) -> bool {
    let tolerance = solid.tolerance();
    solid.faces().all(|face| {
        solid.vertices().iter().all(|point| face.plane.signed_distance(*point) <= tolerance)
            && face.points().all(|point| face.plane.signed_distance(point) >= -tolerance)
    })
}

#[cfg(test)]
#[path = "run_tests.rs"]
mod tests;
