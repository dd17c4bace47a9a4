//! Volume, centroid and inertia.

use super::{ConvexSolid, FaceView, Point3, Vec3};

/// Inertia about the centroid for a density of one, mm⁵; times a density in kg/mm³ it is kg·mm².
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Inertia {
    /// ∫ (y² + z²), mm⁵.
    pub xx_mm5: f64,
    /// ∫ (z² + x²), mm⁵.
    pub yy_mm5: f64,
    /// ∫ (x² + y²), mm⁵.
    pub zz_mm5: f64,
    /// −∫ x y, mm⁵.
    pub xy_mm5: f64,
    /// −∫ y z, mm⁵.
    pub yz_mm5: f64,
    /// −∫ z x, mm⁵.
    pub zx_mm5: f64,
}

/// Volume, surface, centroid and inertia of a solid.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct MassProperties {
    /// Volume, mm³.
    pub volume_mm3: f64,
    /// Surface, mm².
    pub surface_mm2: f64,
    /// Centroid, mm.
    pub centroid_mm: Point3,
    /// Inertia about the centroid for a density of one.
    pub inertia: Inertia,
}

impl Inertia {
    /// From the second moments about the centroid.
    fn of_moments(xx: f64, yy: f64, zz: f64, xy: f64, yz: f64, zx: f64) -> Self {
        Self { xx_mm5: yy + zz, yy_mm5: zz + xx, zz_mm5: xx + yy, xy_mm5: -xy, yz_mm5: -yz, zx_mm5: -zx }
    }

    /// The same body's inertia about a point at `offset` from its centroid (Huygens, Steiner).
    #[must_use]
    pub fn about(&self, offset: Vec3, volume_mm3: f64) -> Self {
        let Vec3 { x, y, z } = offset;
        Self {
            xx_mm5: self.xx_mm5 + volume_mm3 * (y * y + z * z),
            yy_mm5: self.yy_mm5 + volume_mm3 * (z * z + x * x),
            zz_mm5: self.zz_mm5 + volume_mm3 * (x * x + y * y),
            xy_mm5: self.xy_mm5 - volume_mm3 * x * y,
            yz_mm5: self.yz_mm5 - volume_mm3 * y * z,
            zx_mm5: self.zx_mm5 - volume_mm3 * z * x,
        }
    }
}

impl FaceView<'_> {
    /// Area of the face.
    pub fn area(&self) -> f64 {
        self.area_vector().length()
    }

    /// Area of the face times its outward normal, from the vertices.
    pub fn area_vector(&self) -> Vec3 {
        let mut points = self.points();
        points.next().map_or(Vec3::ZERO, |first| area_vector(first, points))
    }
}

/// Area of a polygon times its normal, from its first corner and the others.
fn area_vector(first: Point3, others: impl Iterator<Item = Point3>) -> Vec3 {
    // About a corner of its own, so that distance from the origin costs no digits.
    let mut sum = Vec3::ZERO;
    let mut before = Vec3::ZERO;
    for point in others {
        let arm = point - first;
        sum = sum + before.cross(arm);
        before = arm;
    }
    sum * 0.5
}

impl ConvexSolid {
    /// Mean of the vertices.
    fn middle(&self) -> Point3 {
        let count = self.vertices.len().max(1) as f64;
        let near = self.vertices.first().copied().unwrap_or_default();
        near + self.vertices.iter().fold(Vec3::ZERO, |sum, vertex| sum + (*vertex - near)) * (1.0 / count)
    }

    /// Volume.
    pub fn volume(&self) -> f64 {
        let middle = self.middle();
        let mut six = 0.0;
        for face in self.faces() {
            let mut points = face.points();
            if let Some(first) = points.next() {
                six += (first - middle).dot(area_vector(first, points)) * 2.0;
            }
        }
        (six / 6.0).max(0.0)
    }

    /// Volume, surface, centroid and inertia, for a density of one.
    ///
    /// # Equation
    /// The solid is cut into tetrahedra from a point inside to triangles of its faces. For one with corners 0, a, b, c:
    /// ```text
    /// V = a · (b × c) / 6        ∫ x = V (a + b + c) / 4
    /// ∫ x xᵀ = V (a aᵀ + b bᵀ + c cᵀ + s sᵀ) / 20,   s = a + b + c
    /// ```
    ///
    /// # Accuracy
    /// All coordinates are taken from the mean of the vertices, so the digits do not depend on the place. Below about
    /// 10⁻¹⁰⁰ mm³ the volume is lost and the centroid is that mean.
    pub fn mass_properties(&self) -> MassProperties {
        let middle = self.middle();
        let mut volume = 0.0;
        let mut surface = 0.0;
        let mut first_moment = Vec3::ZERO;
        let (mut xx, mut yy, mut zz, mut xy, mut yz, mut zx) = (0.0, 0.0, 0.0, 0.0, 0.0, 0.0);
        for face in self.faces() {
            let mut twice_area = Vec3::ZERO;
            let mut points = face.points().map(|point| point - middle);
            let Some(a) = points.next() else { continue };
            let mut b = a;
            for (at, c) in points.enumerate() {
                if at > 0 {
                    // One product serves the area and, as a · (b × c) = a · ((b − a) × (c − a)), the volume.
                    let normal = (b - a).cross(c - a);
                    twice_area = twice_area + normal;
                    let part = a.dot(normal) / 6.0;
                    let s = a + b + c;
                    volume += part;
                    first_moment = first_moment + s * (part / 4.0);
                    let weight = part / 20.0;
                    xx += weight * (a.x * a.x + b.x * b.x + c.x * c.x + s.x * s.x);
                    yy += weight * (a.y * a.y + b.y * b.y + c.y * c.y + s.y * s.y);
                    zz += weight * (a.z * a.z + b.z * b.z + c.z * c.z + s.z * s.z);
                    xy += weight * (a.x * a.y + b.x * b.y + c.x * c.y + s.x * s.y);
                    yz += weight * (a.y * a.z + b.y * b.z + c.y * c.z + s.y * s.z);
                    zx += weight * (a.z * a.x + b.z * b.x + c.z * c.x + s.z * s.x);
                }
                b = c;
            }
            surface += 0.5 * twice_area.length();
        }
        let volume_mm3 = volume.max(0.0);
        let offset = if volume_mm3 > 1e-100 { first_moment * (1.0 / volume_mm3) } else { Vec3::ZERO };
        let Vec3 { x, y, z } = offset;
        MassProperties {
            volume_mm3,
            surface_mm2: surface,
            centroid_mm: (middle + offset).tidy(),
            inertia: Inertia::of_moments(
                xx - volume_mm3 * x * x,
                yy - volume_mm3 * y * y,
                zz - volume_mm3 * z * z,
                xy - volume_mm3 * x * y,
                yz - volume_mm3 * y * z,
                zx - volume_mm3 * z * x,
            ),
        }
    }
}

impl Inertia {
    /// Adds a multiple of another.
    fn add(&mut self, other: &Self, factor: f64) {
        self.xx_mm5 += factor * other.xx_mm5;
        self.yy_mm5 += factor * other.yy_mm5;
        self.zz_mm5 += factor * other.zz_mm5;
        self.xy_mm5 += factor * other.xy_mm5;
        self.yz_mm5 += factor * other.yz_mm5;
        self.zx_mm5 += factor * other.zx_mm5;
    }
}

impl MassProperties {
    /// The properties of what is left when parts are taken out; the surface is still that of the whole.
    pub(crate) fn less(&self, parts: &[Self]) -> Self {
        let near = self.centroid_mm;
        let mut rest = *self;
        let mut first_moment = Vec3::ZERO;
        for part in parts {
            rest.volume_mm3 -= part.volume_mm3;
            first_moment = first_moment - (part.centroid_mm - near) * part.volume_mm3;
        }
        rest.volume_mm3 = rest.volume_mm3.max(0.0);
        let offset = if rest.volume_mm3 > 1e-100 { first_moment * (1.0 / rest.volume_mm3) } else { Vec3::ZERO };
        rest.centroid_mm = (near + offset).tidy();
        rest.inertia = self.inertia.about(offset, self.volume_mm3);
        for part in parts {
            rest.inertia.add(&part.inertia.about(part.centroid_mm - rest.centroid_mm, part.volume_mm3), -1.0);
        }
        rest
    }

    /// The properties of several bodies together; the surface counts where they touch from both sides.
    pub fn sum<'a>(parts: impl IntoIterator<Item = &'a Self> + Clone) -> Self {
        let mut whole = Self::default();
        let Some(near) = parts.clone().into_iter().next().map(|part| part.centroid_mm) else { return whole };
        let mut first_moment = Vec3::ZERO;
        for part in parts.clone() {
            whole.volume_mm3 += part.volume_mm3;
            whole.surface_mm2 += part.surface_mm2;
            first_moment = first_moment + (part.centroid_mm - near) * part.volume_mm3;
        }
        let offset = if whole.volume_mm3 > 1e-100 { first_moment * (1.0 / whole.volume_mm3) } else { Vec3::ZERO };
        whole.centroid_mm = (near + offset).tidy();
        for part in parts {
            let about = part.inertia.about(part.centroid_mm - whole.centroid_mm, part.volume_mm3);
            whole.inertia.add(&about, 1.0);
        }
        whole
    }
}
