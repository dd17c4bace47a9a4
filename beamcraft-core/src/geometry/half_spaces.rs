//! The solid that a set of planes encloses.

use super::{ConvexSolid, Plane, Point3};

/// Why planes enclose no solid.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoSolid {
    /// No point, or nothing with volume, lies inside all of them.
    Empty,
    /// What lies inside all of them has no end.
    Unbounded,
}

/// Tags of the box that the cutting starts from lie above those of any list of planes.
const BOX: u32 = u32::MAX - 5;

impl ConvexSolid {
    /// The solid inside all planes; the tag of a face is the index of its plane.
    ///
    /// The vertices are searched over all triples of planes, so the work grows with the fourth power of their number:
    /// meant for the faces of a body, not for thousands.
    ///
    /// # Errors
    /// [`NoSolid`].
    pub fn from_half_spaces(planes: &[Plane]) -> Result<Self, NoSolid> {
        let (low, high) = vertex_bounds(planes)?;
        let size = (high - low).magnitude();
        // A box well clear of every vertex: what of it is still there at the end has no other bound.
        let margin = Point3::new(size, size, size);
        let tags = [BOX, BOX + 1, BOX + 2, BOX + 3, BOX + 4, BOX + 5];
        let around = Self::cuboid(low - margin, high + margin, tags).ok_or(NoSolid::Empty)?;
        let solid = around.cut(planes.iter().copied().zip(0..)).ok_or(NoSolid::Empty)?;
        if solid.faces().any(|face| face.tag >= BOX) { Err(NoSolid::Unbounded) } else { Ok(solid) }
    }
}

/// Bounds of all the vertices of the set inside all planes.
fn vertex_bounds(planes: &[Plane]) -> Result<(Point3, Point3), NoSolid> {
    let mut bounds: Option<(Point3, Point3)> = None;
    let mut any = false;
    for (at, first) in planes.iter().enumerate() {
        for (next, second) in planes.iter().enumerate().skip(at + 1) {
            for third in planes.iter().skip(next + 1) {
                let Some(point) = Plane::meet(first, second, third) else { continue };
                any = true;
                if planes.iter().all(|plane| is_inside(plane, point)) {
                    let (low, high) = bounds.unwrap_or((point, point));
                    bounds = Some((low.least(point), high.most(point)));
                }
            }
        }
    }
    // Where three planes meet in a point, a set that is not empty has a vertex; where none do, it runs on for ever.
    bounds.ok_or(if any { NoSolid::Empty } else { NoSolid::Unbounded })
}

/// Whether a point lies inside or, within rounding, on a plane.
fn is_inside(plane: &Plane, point: Point3) -> bool {
    plane.signed_distance(point) <= 1e-9 * (point - plane.point()).magnitude()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Vec3;

    fn plane(x: f64, y: f64, z: f64, offset: f64) -> Plane {
        Plane::at_offset(Vec3::new(x, y, z), offset).unwrap()
    }

    #[test]
    fn six_planes_make_a_box_and_five_do_not() {
        let planes = [
            plane(-1.0, 0.0, 0.0, -2.0),
            plane(1.0, 0.0, 0.0, 5.0),
            plane(0.0, -1.0, 0.0, 0.0),
            plane(0.0, 1.0, 0.0, 4.0),
            plane(0.0, 0.0, -1.0, 0.0),
            plane(0.0, 0.0, 1.0, 1.0),
        ];
        let solid = ConvexSolid::from_half_spaces(&planes).unwrap();
        assert_eq!(solid.bounds(), (Vec3::new(2.0, 0.0, 0.0), Vec3::new(5.0, 4.0, 1.0)));
        assert_eq!(solid.face(1).unwrap().plane, planes[1]);
        assert_eq!(ConvexSolid::from_half_spaces(&planes[..5]), Err(NoSolid::Unbounded));
        assert_eq!(ConvexSolid::from_half_spaces(&planes[..2]), Err(NoSolid::Unbounded));
        assert_eq!(ConvexSolid::from_half_spaces(&[]), Err(NoSolid::Unbounded));
    }

    #[test]
    fn planes_that_exclude_one_another_leave_nothing() {
        let planes = [
            plane(-1.0, 0.0, 0.0, 0.0),
            plane(1.0, 0.0, 0.0, -1.0),
            plane(0.0, -1.0, 0.0, 0.0),
            plane(0.0, 1.0, 0.0, 4.0),
            plane(0.0, 0.0, -1.0, 0.0),
            plane(0.0, 0.0, 1.0, 1.0),
        ];
        assert_eq!(ConvexSolid::from_half_spaces(&planes), Err(NoSolid::Empty));
    }
}
