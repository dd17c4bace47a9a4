//! Right-handed frames.

use super::{Point3, Vec3};

/// A right-handed frame of unit directions: `u × v = n`.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Frame {
    /// Point of the body at which the frame's own coordinates are zero, mm.
    pub origin_mm: Point3,
    /// Unit direction of the first coordinate.
    pub u: Vec3,
    /// Unit direction of the second coordinate.
    pub v: Vec3,
    /// Unit direction of the third coordinate.
    pub n: Vec3,
}

impl Frame {
    /// The axes of the body itself.
    pub const BODY: Self = Self { origin_mm: Vec3::ZERO, u: Vec3::X, v: Vec3::Y, n: Vec3::Z };

    /// The frame with the normal `n` whose `u` is as close to `along` as the normal allows; nothing when `along` is
    /// parallel to the normal.
    pub fn new(origin_mm: Point3, n: Vec3, along: Vec3) -> Option<Self> {
        let (n, along) = (n.normalised()?, along.normalised()?);
        let flat = along - n * along.dot(n);
        // The sine of the angle between the two; below this the direction is rounding.
        if flat.length() < 1e-6 || !origin_mm.is_usable() {
            return None;
        }
        let u = flat.normalised()?;
        Some(Self { origin_mm, u, v: n.cross(u), n })
    }

    /// A point in the frame's own coordinates.
    #[inline]
    pub fn to_local(&self, point: Point3) -> Point3 {
        self.direction_to_local(point - self.origin_mm)
    }

    /// A direction in the frame's own coordinates.
    #[inline]
    pub fn direction_to_local(&self, direction: Vec3) -> Vec3 {
        Vec3::new(self.u.dot(direction), self.v.dot(direction), self.n.dot(direction))
    }

    /// A direction given in the frame's own coordinates.
    #[inline]
    pub fn direction_to_world(&self, direction: Vec3) -> Vec3 {
        self.u * direction.x + self.v * direction.y + self.n * direction.z
    }

    /// A point given in the frame's own coordinates.
    #[inline]
    pub fn to_world(&self, point: Point3) -> Point3 {
        self.origin_mm + self.direction_to_world(point)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn there_and_back_is_the_same_point() {
        let frame = Frame::new(Vec3::new(1.0, 2.0, 3.0), Vec3::new(1.0, 1.0, 0.5), Vec3::X).unwrap();
        let point = Vec3::new(-4.0, 5.0, 6.0);
        assert!((frame.to_world(frame.to_local(point)) - point).length() < 1e-14);
        assert!((frame.u.cross(frame.v) - frame.n).length() < 1e-15);
        assert_eq!(Frame::new(Vec3::ZERO, Vec3::X, -Vec3::X), None);
    }
}
