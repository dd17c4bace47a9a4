//! Points and directions.

use core::ops::{Add, Mul, Neg, Sub};

/// Largest magnitude of a coordinate that solids and planes take: fifth powers of it (inertia) are still numbers.
pub const COORDINATE_MAX: f64 = 1e50;

/// A point or a direction in space; in text the list `[x, y, z]`.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize))]
#[cfg_attr(feature = "json", serde(from = "[f64; 3]", into = "[f64; 3]"))]
pub struct Vec3 {
    /// Along the length.
    pub x: f64,
    /// From the front to the wall.
    pub y: f64,
    /// Up.
    pub z: f64,
}

/// A point.
pub type Point3 = Vec3;

#[cfg(feature = "json")]
impl schemars::JsonSchema for Vec3 {
    fn inline_schema() -> bool {
        true
    }
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Vec3".into()
    }
    fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
        <[f64; 3]>::json_schema(generator)
    }
}

impl Vec3 {
    /// The origin.
    pub const ZERO: Self = Self::new(0.0, 0.0, 0.0);
    /// Along the length.
    pub const X: Self = Self::new(1.0, 0.0, 0.0);
    /// From the front to the wall.
    pub const Y: Self = Self::new(0.0, 1.0, 0.0);
    /// Up.
    pub const Z: Self = Self::new(0.0, 0.0, 1.0);

    /// The point or direction (x, y, z).
    #[inline]
    pub const fn new(x: f64, y: f64, z: f64) -> Self {
        Self { x, y, z }
    }

    /// Scalar product.
    #[inline]
    pub fn dot(self, other: Self) -> f64 {
        self.x * other.x + self.y * other.y + self.z * other.z
    }

    /// Vector product.
    #[inline]
    pub fn cross(self, other: Self) -> Self {
        Self::new(
            self.y * other.z - self.z * other.y,
            self.z * other.x - self.x * other.z,
            self.x * other.y - self.y * other.x,
        )
    }

    /// Length.
    #[inline]
    pub fn length(self) -> f64 {
        self.dot(self).sqrt()
    }

    /// Largest magnitude of a coordinate.
    #[inline]
    pub fn magnitude(self) -> f64 {
        self.x.abs().max(self.y.abs()).max(self.z.abs())
    }

    /// The direction with length 1; nothing for a direction without length or not finite.
    pub fn normalised(self) -> Option<Self> {
        let size = self.magnitude();
        // `max` passes over a NaN, so every coordinate is asked.
        if !self.is_finite() || size == 0.0 {
            return None;
        }
        // Scaled first, so that neither tiny nor huge directions lose themselves in the squares.
        let scaled = Self::new(self.x / size, self.y / size, self.z / size);
        let length = scaled.length();
        Some(Self::new(scaled.x / length, scaled.y / length, scaled.z / length))
    }

    /// Whether every coordinate is a number.
    #[inline]
    pub fn is_finite(self) -> bool {
        self.x.is_finite() && self.y.is_finite() && self.z.is_finite()
    }

    /// Whether every coordinate is a number within ±[`COORDINATE_MAX`].
    #[inline]
    pub fn is_usable(self) -> bool {
        self.is_finite() && self.magnitude() <= COORDINATE_MAX
    }

    /// The same point without negative zeros, for output.
    #[inline]
    pub(crate) fn tidy(self) -> Self {
        Self::new(self.x + 0.0, self.y + 0.0, self.z + 0.0)
    }

    /// Smaller coordinate of each pair.
    pub(crate) fn least(self, other: Self) -> Self {
        Self::new(self.x.min(other.x), self.y.min(other.y), self.z.min(other.z))
    }

    /// Larger coordinate of each pair.
    pub(crate) fn most(self, other: Self) -> Self {
        Self::new(self.x.max(other.x), self.y.max(other.y), self.z.max(other.z))
    }
}

impl Add for Vec3 {
    type Output = Self;
    #[inline]
    fn add(self, other: Self) -> Self {
        Self::new(self.x + other.x, self.y + other.y, self.z + other.z)
    }
}

impl Sub for Vec3 {
    type Output = Self;
    #[inline]
    fn sub(self, other: Self) -> Self {
        Self::new(self.x - other.x, self.y - other.y, self.z - other.z)
    }
}

impl Mul<f64> for Vec3 {
    type Output = Self;
    #[inline]
    fn mul(self, factor: f64) -> Self {
        Self::new(self.x * factor, self.y * factor, self.z * factor)
    }
}

impl Neg for Vec3 {
    type Output = Self;
    #[inline]
    fn neg(self) -> Self {
        Self::new(-self.x, -self.y, -self.z)
    }
}

impl From<[f64; 3]> for Vec3 {
    fn from([x, y, z]: [f64; 3]) -> Self {
        Self::new(x, y, z)
    }
}

impl From<Vec3> for [f64; 3] {
    fn from(vector: Vec3) -> Self {
        [vector.x, vector.y, vector.z]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn directions_of_any_size_are_normalised() {
        for size in [1e-310, 1e-200, 1.0, 1e200, 1e308] {
            assert_eq!(Vec3::new(0.0, -size, 0.0).normalised(), Some(-Vec3::Y), "{size}");
        }
        assert_eq!(Vec3::ZERO.normalised(), None);
        assert_eq!(Vec3::new(f64::NAN, 1.0, 0.0).normalised(), None);
        assert_eq!(Vec3::new(f64::INFINITY, 1.0, 0.0).normalised(), None);
    }

    #[test]
    #[cfg(feature = "json")]
    fn a_point_is_a_list_of_three() {
        assert_eq!(serde_json::to_string(&Vec3::new(1.0, 2.5, -3.0)).unwrap(), "[1.0,2.5,-3.0]");
        assert_eq!(serde_json::from_str::<Vec3>("[1,2,3]").unwrap(), Vec3::new(1.0, 2.0, 3.0));
        assert!(serde_json::from_str::<Vec3>("[1,2]").is_err());
    }
}
