//! Planes.

use super::{Point3, Vec3};

/// A plane with an outside: its unit normal points away from what it keeps.
///
/// It holds a point rather than an offset from the origin, so that a plane far away loses no digits.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plane {
    normal: Vec3,
    point: Point3,
}

impl Plane {
    /// The plane through a point; nothing when the normal has no length or a number is not usable.
    pub fn through(point: Point3, normal: Vec3) -> Option<Self> {
        if point.is_usable() { Some(Self { normal: normal.normalised()?, point }) } else { None }
    }

    /// The plane of all points p with `normal · p = offset`, for a normal of length 1 after normalising.
    pub fn at_offset(normal: Vec3, offset: f64) -> Option<Self> {
        Self::through(normal.normalised()? * offset, normal)
    }

    /// The plane of three points, its normal towards the viewer who sees them run counter-clockwise; nothing when they
    /// lie in a line.
    pub fn of_points(a: Point3, b: Point3, c: Point3) -> Option<Self> {
        if !(a.is_usable() && b.is_usable() && c.is_usable()) {
            return None;
        }
        let (first, second) = ((b - a).normalised()?, (c - a).normalised()?);
        let normal = first.cross(second);
        // The sine of the angle at a; below this it is rounding.
        if normal.length() > 1e-12 { Self::through(a, normal) } else { None }
    }

    /// Unit normal, out of what is kept.
    #[inline]
    pub const fn normal(&self) -> Vec3 {
        self.normal
    }

    /// A point of the plane.
    #[inline]
    pub const fn point(&self) -> Point3 {
        self.point
    }

    /// `normal · p`, the same for every point p of the plane.
    pub fn offset(&self) -> f64 {
        self.normal.dot(self.point)
    }

    /// Distance of a point, positive outside.
    #[inline]
    pub fn signed_distance(&self, point: Point3) -> f64 {
        self.normal.dot(point - self.point)
    }

    /// The same plane keeping the other side.
    #[must_use]
    pub fn flipped(&self) -> Self {
        Self { normal: -self.normal, point: self.point }
    }

    /// The plane moved outwards by a distance; nothing when it leaves the usable range.
    pub fn moved(&self, outwards: f64) -> Option<Self> {
        let point = self.point + self.normal * outwards;
        if point.is_usable() { Some(Self { normal: self.normal, point }) } else { None }
    }

    /// The point that three planes have in common; nothing when two of them are parallel or all share a direction.
    pub fn meet(a: &Self, b: &Self, c: &Self) -> Option<Point3> {
        let determinant = a.normal.dot(b.normal.cross(c.normal));
        // Flatter than this and the common point is rounding.
        if determinant.abs() < 1e-12 {
            return None;
        }
        // About a's point, so that only differences of coordinates are multiplied.
        let (db, dc) = (b.normal.dot(b.point - a.point), c.normal.dot(c.point - a.point));
        let sum = c.normal.cross(a.normal) * db + a.normal.cross(b.normal) * dc;
        let point = a.point + sum * (1.0 / determinant);
        if point.is_usable() { Some(point) } else { None }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn three_points_give_the_plane_seen_counter_clockwise() {
        let plane = Plane::of_points(Vec3::ZERO, Vec3::X, Vec3::Y).unwrap();
        assert_eq!(plane.normal(), Vec3::Z);
        assert_eq!(plane.signed_distance(Vec3::new(5.0, 5.0, 2.0)), 2.0);
        assert_eq!(Plane::of_points(Vec3::ZERO, Vec3::X, Vec3::X * 3.0), None);
        assert_eq!(Plane::of_points(Vec3::ZERO, Vec3::X, Vec3::new(f64::NAN, 0.0, 0.0)), None);
    }

    #[test]
    fn far_away_a_distance_keeps_its_digits() {
        let far = Vec3::new(1e9, 2e9, -3e9);
        let plane = Plane::through(far, Vec3::new(1.0, 1.0, 1.0)).unwrap();
        let distance = plane.signed_distance(far + Vec3::new(3.0, 0.0, 0.0));
        assert!((distance - 3.0_f64.sqrt()).abs() < 1e-12);
    }

    #[test]
    fn three_planes_meet_in_a_point() {
        let plane = |normal: Vec3, offset| Plane::at_offset(normal, offset).unwrap();
        let meet = Plane::meet(&plane(Vec3::X, 1.0), &plane(Vec3::Y, 2.0), &plane(-Vec3::Z, 3.0));
        assert_eq!(meet, Some(Vec3::new(1.0, 2.0, -3.0)));
        assert_eq!(Plane::meet(&plane(Vec3::X, 1.0), &plane(Vec3::X, 2.0), &plane(Vec3::Z, 3.0)), None);
        assert!(Plane::at_offset(Vec3::X, 1e60).is_none());
    }
}
