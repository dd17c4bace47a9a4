//! Convex solids.

#![allow(clippy::indexing_slicing, reason = "indices are made with the vertices they point to; the laws test them")]

use super::{Frame, Plane, Point3, Vec3};

/// One face as it is stored: a span of the common list of indices.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct FaceSpan {
    pub(super) tag: u32,
    pub(super) plane: Plane,
    pub(super) start: usize,
    pub(super) end: usize,
}

/// A convex solid: vertices, and faces as closed runs of vertex indices, counter-clockwise seen from outside.
///
/// Every face carries a tag of the caller's and the plane it came from.
#[derive(Clone, Debug, PartialEq)]
pub struct ConvexSolid {
    pub(super) vertices: Vec<Point3>,
    pub(super) corners: Vec<u32>,
    pub(super) faces: Vec<FaceSpan>,
    pub(super) tolerance: f64,
}

/// A face of a solid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FaceView<'a> {
    /// The caller's tag.
    pub tag: u32,
    /// The plane the face came from, its normal out of the solid.
    pub plane: Plane,
    /// Indices of its vertices, counter-clockwise seen from outside.
    pub corners: &'a [u32],
    vertices: &'a [Point3],
}

impl<'a> FaceView<'a> {
    /// The corner points, counter-clockwise seen from outside.
    pub fn points(&self) -> impl ExactSizeIterator<Item = Point3> + Clone + use<'a> {
        let vertices = self.vertices;
        self.corners.iter().map(move |corner| vertices[*corner as usize])
    }

    /// The directed edges as pairs of vertex indices.
    pub fn edges(&self) -> impl ExactSizeIterator<Item = (u32, u32)> + Clone + use<'a> {
        let corners = self.corners;
        let last = corners.len().saturating_sub(1);
        (0..corners.len()).map(move |at| (corners[at], corners[if at == last { 0 } else { at + 1 }]))
    }
}

impl ConvexSolid {
    /// The box between two corners; nothing when it has no volume or a number is not usable.
    ///
    /// Tags stand for the faces at low x, high x, low y, high y, low z, high z.
    pub fn cuboid(low: Point3, high: Point3, tags: [u32; 6]) -> Option<Self> {
        let size = high - low;
        let usable = low.is_usable() && high.is_usable();
        if !(usable && size.x > 0.0 && size.y > 0.0 && size.z > 0.0) {
            return None;
        }
        let vertices: Vec<_> = (0..8)
            .map(|bits: u8| {
                let pick = |bit: u8, low, high| if bits & bit == 0 { low } else { high };
                Vec3::new(pick(1, low.x, high.x), pick(2, low.y, high.y), pick(4, low.z, high.z))
            })
            .collect();
        let sides = [
            (-Vec3::X, low, [0, 4, 6, 2]),
            (Vec3::X, high, [1, 3, 7, 5]),
            (-Vec3::Y, low, [0, 1, 5, 4]),
            (Vec3::Y, high, [2, 6, 7, 3]),
            (-Vec3::Z, low, [0, 2, 3, 1]),
            (Vec3::Z, high, [4, 5, 7, 6]),
        ];
        let mut faces = Vec::with_capacity(6);
        let mut corners = Vec::with_capacity(24);
        for ((normal, point, indices), tag) in sides.into_iter().zip(tags) {
            let start = corners.len();
            corners.extend_from_slice(&indices);
            faces.push(FaceSpan { tag, plane: Plane::through(point, normal)?, start, end: corners.len() });
        }
        let tolerance = tolerance_of(size.magnitude(), low.magnitude().max(high.magnitude()));
        Some(Self { vertices, corners, faces, tolerance })
    }

    /// The vertices.
    pub fn vertices(&self) -> &[Point3] {
        &self.vertices
    }

    /// The faces, those of the first solid first, then in the order in which they were cut.
    pub fn faces(&self) -> impl ExactSizeIterator<Item = FaceView<'_>> + Clone {
        self.faces.iter().map(|face| self.view(face))
    }

    /// The first face with a tag.
    pub fn face(&self, tag: u32) -> Option<FaceView<'_>> {
        self.faces().find(|face| face.tag == tag)
    }

    fn view(&self, face: &FaceSpan) -> FaceView<'_> {
        FaceView {
            tag: face.tag,
            plane: face.plane,
            corners: &self.corners[face.start..face.end],
            vertices: &self.vertices,
        }
    }

    /// Number of edges, each counted once.
    pub fn edge_count(&self) -> usize {
        self.corners.len() / 2
    }

    /// Distance from a cutting plane below which a vertex counts as lying on it.
    pub fn tolerance(&self) -> f64 {
        self.tolerance
    }

    /// Corners of the smallest upright box around the solid.
    pub fn bounds(&self) -> (Point3, Point3) {
        let first = self.vertices.first().copied().unwrap_or_default();
        self.vertices.iter().fold((first, first), |(low, high), point| (low.least(*point), high.most(*point)))
    }

    /// Length of the edge that two faces share; zero when they share none.
    pub fn shared_edge(&self, first: &FaceView<'_>, second: &FaceView<'_>) -> f64 {
        first
            .edges()
            .filter(|(from, to)| second.edges().any(|edge| edge == (*to, *from)))
            .map(|(from, to)| (self.vertices[to as usize] - self.vertices[from as usize]).length())
            .sum()
    }

    /// The same solid with other tags.
    #[must_use]
    pub fn retagged(mut self, tag: impl Fn(u32) -> u32) -> Self {
        for face in &mut self.faces {
            face.tag = tag(face.tag);
        }
        self
    }

    /// The solid moved; nothing when it leaves the usable range.
    pub fn moved(&self, by: Vec3) -> Option<Self> {
        self.mapped(|point| point + by, |normal| normal)
    }

    /// The solid in the coordinates of a frame; nothing when it leaves the usable range.
    pub fn in_frame(&self, frame: &Frame) -> Option<Self> {
        self.mapped(|point| frame.to_local(point), |normal| frame.direction_to_local(normal))
    }

    /// The solid whose coordinates were those of a frame; nothing when it leaves the usable range.
    pub fn out_of_frame(&self, frame: &Frame) -> Option<Self> {
        self.mapped(|point| frame.to_world(point), |normal| frame.direction_to_world(normal))
    }

    /// A rigid motion.
    fn mapped(&self, point: impl Fn(Point3) -> Point3, normal: impl Fn(Vec3) -> Vec3) -> Option<Self> {
        let vertices: Vec<_> = self.vertices.iter().map(|vertex| point(*vertex)).collect();
        if !vertices.iter().all(|vertex| vertex.is_usable()) {
            return None;
        }
        let mut faces = self.faces.clone();
        for face in &mut faces {
            face.plane = Plane::through(point(face.plane.point()), normal(face.plane.normal()))?;
        }
        let reach = vertices.iter().map(|vertex| vertex.magnitude()).fold(0.0, f64::max);
        let tolerance = self.tolerance.max(tolerance_of(0.0, reach));
        Some(Self { vertices, corners: self.corners.clone(), faces, tolerance })
    }
}

/// Rounding of a solid of a size, whose coordinates reach so far from the origin.
pub(super) fn tolerance_of(size: f64, reach: f64) -> f64 {
    // Vertices of repeated cuts are good to some 10⁻¹⁴ of the size; three decades above that, and no cut of a workshop.
    (1e-11 * size + 64.0 * f64::EPSILON * reach).max(f64::MIN_POSITIVE)
}

/// A solid as text: vertices and faces.
#[cfg(feature = "json")]
#[derive(serde::Serialize, schemars::JsonSchema)]
struct SolidListing {
    /// Vertices, mm.
    vertices_mm: Vec<Point3>,
    /// Faces.
    faces: Vec<FaceListing>,
}

/// A face as text.
#[cfg(feature = "json")]
#[derive(serde::Serialize, schemars::JsonSchema)]
struct FaceListing {
    /// What the face is, in the list beside the solid.
    tag: u32,
    /// Indices of its vertices, counter-clockwise seen from outside.
    corners: Vec<u32>,
}

#[cfg(feature = "json")]
impl serde::Serialize for ConvexSolid {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let faces = self.faces().map(|face| FaceListing { tag: face.tag, corners: face.corners.to_vec() }).collect();
        let vertices_mm = self.vertices.iter().map(|vertex| vertex.tidy()).collect();
        SolidListing { vertices_mm, faces }.serialize(serializer)
    }
}

#[cfg(feature = "json")]
impl schemars::JsonSchema for ConvexSolid {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "ConvexSolid".into()
    }
    fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
        SolidListing::json_schema(generator)
    }
}
