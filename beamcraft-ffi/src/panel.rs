//! What is told of one panel, whichever object it belongs to.

use beamcraft_core::error::Error;
use beamcraft_core::geometry::Point3;
use beamcraft_core::shell::{Panel, PanelEdge, Piece, PieceSign};

use crate::guard::Failure;
use crate::handle::{Handle, at};

/// Sizes of a panel. The show face is the one that is seen; long points lie on it wherever the bevel is positive.
#[derive(Clone, Copy, Debug, Default)]
#[repr(C)]
pub struct beamcraft_panel_size {
    /// Extent of the show face along the grain, from long point to long point, mm.
    pub show_length_mm: f64,
    /// Extent of the show face across the grain, from long point to long point, mm.
    pub show_width_mm: f64,
    /// Extent of the inner face along the grain, mm.
    pub inner_length_mm: f64,
    /// Extent of the inner face across the grain, mm.
    pub inner_width_mm: f64,
    /// Thickness, mm.
    pub thickness_mm: f64,
    /// Length of the square-edged blank that holds the panel, along the grain, mm.
    pub blank_length_mm: f64,
    /// Width of the square-edged blank that holds the panel, across the grain, mm.
    pub blank_width_mm: f64,
    /// Volume of the wood, mm³.
    pub volume_mm3: f64,
}

/// One edge of a panel.
#[derive(Clone, Copy, Debug, Default)]
#[repr(C)]
pub struct beamcraft_panel_edge {
    /// Angle between the two outer faces, inside the body, degrees.
    pub corner_deg: f64,
    /// Blade tilt from square, degrees; positive when the long point lies on the show face.
    pub tilt_deg: f64,
    /// Angle of the edge in the face from a rip along, or a square cut across, the grain, degrees; positive when the panel
    /// is longer at its far edge (cross-cut) or wider at its far end (rip).
    pub gauge_deg: f64,
    /// Length of the edge on the show face, mm.
    pub show_length_mm: f64,
    /// Length of the edge on the inner face, mm.
    pub inner_length_mm: f64,
    /// Tag that the edge has among the faces of the panel's first piece, see beamcraft_plan_piece_tags.
    pub tag: u32,
    /// Kept for later: 0.
    pub reserved_1: u32,
}

/// A piece of wood.
pub const BEAMCRAFT_PIECE_ADDED: u32 = 0;
/// A piece that is taken out of the wood.
pub const BEAMCRAFT_PIECE_REMOVED: u32 = 1;

/// A handle with panels: a plan or a body. Its functions are made from one template for both.
pub(crate) trait Panelled: Handle {
    /// Which panels there are, for a caller who asks for another one.
    const BELOW_PANEL_COUNT: &'static str;
    /// Which pieces there are, for a caller who asks for another one.
    const BELOW_PIECE_COUNT: &'static str;

    /// Name of the whole.
    fn name(&self) -> &str;
    /// Its panels.
    fn panels(&self) -> &[Panel];
    /// Names of its drawings.
    fn drawing_names(&self) -> Vec<String>;
    /// A drawing by its name.
    fn drawing_svg(&self, name: &str) -> Result<String, Error>;

    /// The panel at a place.
    fn panel(&self, panel: usize) -> Result<&Panel, Failure> {
        at(self.panels(), panel, "panel", Self::BELOW_PANEL_COUNT)
    }

    /// The piece of a panel at a place.
    fn piece(&self, panel: usize, piece: usize) -> Result<&Piece, Failure> {
        at(&self.panel(panel)?.pieces, piece, "piece", Self::BELOW_PIECE_COUNT)
    }
}

impl From<&Panel> for beamcraft_panel_size {
    fn from(panel: &Panel) -> Self {
        Self {
            show_length_mm: panel.show_length_mm,
            show_width_mm: panel.show_width_mm,
            inner_length_mm: panel.inner_length_mm,
            inner_width_mm: panel.inner_width_mm,
            thickness_mm: panel.thickness_mm,
            blank_length_mm: panel.blank_length_mm,
            blank_width_mm: panel.blank_width_mm,
            volume_mm3: panel.mass.volume_mm3,
        }
    }
}

impl From<&PanelEdge> for beamcraft_panel_edge {
    fn from(edge: &PanelEdge) -> Self {
        Self {
            corner_deg: edge.corner_deg,
            tilt_deg: edge.tilt_deg,
            gauge_deg: edge.gauge_deg,
            show_length_mm: edge.show_length_mm,
            inner_length_mm: edge.inner_length_mm,
            tag: edge.tag,
            reserved_1: 0,
        }
    }
}

/// The sign of a piece as a number.
pub(crate) fn sign(piece: &Piece) -> u32 {
    match piece.sign {
        PieceSign::Added => BEAMCRAFT_PIECE_ADDED,
        PieceSign::Removed => BEAMCRAFT_PIECE_REMOVED,
    }
}

/// Points as three numbers each.
pub(crate) fn numbers(points: &[Point3]) -> Vec<f64> {
    points.iter().flat_map(|point| [point.x, point.y, point.z]).collect()
}

/// Faces of a piece: for each the number of its corners, then the corners.
pub(crate) fn runs(piece: &Piece) -> Vec<u32> {
    piece
        .solid
        .faces()
        .flat_map(|face| core::iter::once(face.corners.len() as u32).chain(face.corners.iter().copied()))
        .collect()
}
