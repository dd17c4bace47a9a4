//! One panel: its solid, its sizes, and every edge as the saw sees it.

use super::id::{EdgeId, FaceId};
use super::kernel::OuterFace;
use crate::geometry::{ConvexSolid, FaceView, Frame, MassProperties, Vec3};
use crate::numeric::real::atan2_deg;

/// How a panel ends at an edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum EdgeJoint {
    /// Mitred to the neighbour: the show faces meet in a line.
    Mitred,
    /// Ends at the inner face of the neighbour, which runs past, or in a rabbet in it.
    Stops,
    /// Runs past the neighbour; the edge shows.
    RunsPast,
    /// Ends in the plane of an open face.
    Open,
}

/// Which cut makes an edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum EdgeCut {
    /// Nearer to the grain than to square across it.
    Rip,
    /// At 45° or more to the grain.
    CrossCut,
}

/// One edge of a panel.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct PanelEdge {
    /// Tag of the face that the edge is on the panel's solids.
    pub tag: u32,
    /// Name of the edge.
    pub id: EdgeId,
    /// Face beyond the edge.
    pub neighbour: FaceId,
    /// How the panel ends there.
    pub joint: EdgeJoint,
    /// Cut that makes it.
    pub cut: EdgeCut,
    /// Angle between the two outer faces, inside the body, degrees.
    pub corner_deg: f64,
    /// Blade tilt from square, degrees; positive when the long point lies on the show face.
    pub tilt_deg: f64,
    /// Angle of the edge in the face from a rip along, or a square cut across, the grain, degrees; positive when the panel
    /// is longer at its far `v` edge (cross-cut) or wider at its far `u` end (rip).
    pub gauge_deg: f64,
    /// Length of the edge on the show face, mm.
    pub show_length_mm: f64,
    /// Length of the edge on the inner face, mm.
    pub inner_length_mm: f64,
    /// Area of the edge, mm².
    pub area_mm2: f64,
    /// Unit normal of the cut out of the panel, in the panel's frame.
    pub outward: Vec3,
    /// Depth of the rabbet along the edge, below the inner face of the panel that runs past, mm; absent without one.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub rabbet_mm: Option<f64>,
}

/// Whether a piece of a panel is wood or has been taken away.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum PieceSign {
    /// Wood.
    Added,
    /// Taken out of the wood.
    Removed,
}

/// A convex piece of a panel.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Piece {
    /// Whether it is wood or has been taken away.
    pub sign: PieceSign,
    /// Its solid, in the axes of the body.
    pub solid: ConvexSolid,
}

/// One panel of a shell.
///
/// Its wood is the sum of its signed convex pieces. The first piece is the board with all its edges cut; rabbets, grooves
/// and scribes are further pieces. On that piece tag 0 is the show face, tag 1 the inner face, and the other tags are
/// those of `edges`. Lengths and widths are those of that piece; areas, volume and moments are of the wood that is left.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Panel {
    /// Name: that of its show face.
    pub id: FaceId,
    /// Thickness, mm.
    pub thickness_mm: f64,
    /// Frame of the panel: `u` along the grain, `v` across it, `n` out of the show face; origin on the plane of the show
    /// face, at the near corner of the blank.
    pub frame: Frame,
    /// Extent of the show face along the grain, mm.
    pub show_length_mm: f64,
    /// Extent of the show face across the grain, mm.
    pub show_width_mm: f64,
    /// Extent of the inner face along the grain, mm.
    pub inner_length_mm: f64,
    /// Extent of the inner face across the grain, mm.
    pub inner_width_mm: f64,
    /// Length of the square-edged blank that holds the panel, along the grain, mm.
    pub blank_length_mm: f64,
    /// Width of the square-edged blank that holds the panel, across the grain, mm.
    pub blank_width_mm: f64,
    /// Area of the show face, mm².
    pub show_area_mm2: f64,
    /// Area of the inner face, mm².
    pub inner_area_mm2: f64,
    /// Area of all edges, mm².
    pub edge_area_mm2: f64,
    /// Area of the surfaces that rabbets, grooves and other cuts have left, mm²; none on a plain board.
    pub cut_area_mm2: f64,
    /// Volume, surface, centroid and inertia of the wood, for a density of one.
    pub mass: MassProperties,
    /// Every edge, in the order of the faces beyond.
    pub edges: Vec<PanelEdge>,
    /// Signed convex pieces.
    pub pieces: Vec<Piece>,
}

impl Panel {
    /// Tag of the show face on the first piece.
    pub const SHOW: u32 = 0;
    /// Tag of the inner face on the first piece.
    pub const INNER: u32 = 1;

    /// The board with all its edges cut, before anything is taken out of it.
    pub fn blank(&self) -> Option<&ConvexSolid> {
        self.pieces.first().map(|piece| &piece.solid)
    }

    /// The edge towards a face.
    pub fn edge(&self, neighbour: FaceId) -> Option<&PanelEdge> {
        self.edges.iter().find(|edge| edge.neighbour == neighbour)
    }

    /// The face towards which a cross-cut off square leaves the panel longer, or a rip off the grain wider; nothing for one
    /// that is neither.
    pub fn longer_towards(&self, cut: &PanelEdge) -> Option<FaceId> {
        let (beside, aside): (_, fn(&PanelEdge) -> f64) = match cut.cut {
            EdgeCut::CrossCut => (EdgeCut::Rip, |edge| edge.outward.y),
            EdgeCut::Rip => (EdgeCut::CrossCut, |edge| edge.outward.x),
        };
        let off = aside(cut);
        if off.abs() < 1e-9 {
            return None;
        }
        // An end that faces one long edge runs out beyond square at the other, and a long edge likewise between two ends.
        self.edges.iter().find(|edge| edge.cut == beside && aside(edge) * off < 0.0).map(|edge| edge.neighbour)
    }
}

/// What lies beyond an edge.
pub(super) struct Seam {
    pub(super) tag: u32,
    pub(super) neighbour: FaceId,
    /// Outer normal of the face beyond.
    pub(super) outward: Vec3,
    pub(super) joint: EdgeJoint,
    /// Depth of the rabbet there; 0 without one.
    pub(super) rabbet_mm: f64,
}

/// Measures a panel; nothing when the grain stands on its face.
pub(super) fn measure(
    id: FaceId,
    thickness_mm: f64,
    face: &OuterFace,
    solid: ConvexSolid,
    seams: impl Iterator<Item = Seam>,
) -> Option<Panel> {
    let normal = face.plane.normal();
    let near = solid.face(Panel::SHOW)?.points().next()?;
    let at_near = Frame::new(near, normal, face.grain)?;
    let (low, high) = extent(&at_near, solid.vertices().iter().copied());
    let frame = Frame { origin_mm: at_near.to_world(Vec3::new(low.x, low.y, 0.0)).tidy(), ..at_near };
    let (show, inner) = (solid.face(Panel::SHOW)?, solid.face(Panel::INNER)?);
    let (show_low, show_high) = extent(&frame, show.points());
    let (inner_low, inner_high) = extent(&frame, inner.points());
    let mut edges = Vec::with_capacity(solid.faces().len());
    for seam in seams {
        if let Some(cut) = solid.face(seam.tag) {
            edges.push(edge_of(id, normal, &frame, &solid, (&show, &inner, &cut), &seam));
        }
    }
    Some(Panel {
        id,
        thickness_mm,
        frame,
        show_length_mm: show_high.x - show_low.x,
        show_width_mm: show_high.y - show_low.y,
        inner_length_mm: inner_high.x - inner_low.x,
        inner_width_mm: inner_high.y - inner_low.y,
        blank_length_mm: high.x - low.x,
        blank_width_mm: high.y - low.y,
        show_area_mm2: show.area(),
        inner_area_mm2: inner.area(),
        edge_area_mm2: edges.iter().map(|edge| edge.area_mm2).sum(),
        cut_area_mm2: 0.0,
        mass: solid.mass_properties(),
        edges,
        pieces: vec![Piece { sign: PieceSign::Added, solid }],
    })
}

/// Bounds of points in the coordinates of a frame.
fn extent(frame: &Frame, points: impl Iterator<Item = Vec3>) -> (Vec3, Vec3) {
    let mut points = points.map(|point| frame.to_local(point));
    let first = points.next().unwrap_or_default();
    points.fold((first, first), |(low, high), point| (low.least(point), high.most(point)))
}

fn edge_of(
    id: FaceId,
    normal: Vec3,
    frame: &Frame,
    solid: &ConvexSolid,
    (show, inner, cut): (&FaceView<'_>, &FaceView<'_>, &FaceView<'_>),
    seam: &Seam,
) -> PanelEdge {
    let outward = frame.direction_to_local(cut.plane.normal()).tidy();
    let Vec3 { x, y, z } = outward;
    let in_face = (x * x + y * y).sqrt();
    // At 45° it is the end of a board, whatever the rounding.
    let kind = if y.abs() > 1.000_001 * x.abs() { EdgeCut::Rip } else { EdgeCut::CrossCut };
    let gauge_deg = match kind {
        EdgeCut::Rip => atan2_deg(-x, y.abs()),
        EdgeCut::CrossCut => atan2_deg(-y, x.abs()),
    };
    PanelEdge {
        tag: seam.tag,
        id: EdgeId::new(id, seam.neighbour),
        neighbour: seam.neighbour,
        joint: seam.joint,
        cut: kind,
        corner_deg: atan2_deg(normal.cross(seam.outward).length(), -normal.dot(seam.outward)),
        tilt_deg: atan2_deg(-z, in_face) + 0.0,
        gauge_deg: gauge_deg + 0.0,
        show_length_mm: solid.shared_edge(show, cut),
        inner_length_mm: solid.shared_edge(inner, cut),
        area_mm2: cut.area(),
        outward,
        rabbet_mm: (seam.rabbet_mm > 0.0).then_some(seam.rabbet_mm),
    }
}
