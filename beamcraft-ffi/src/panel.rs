//! What is told of one panel, whichever object it belongs to.

use beamcraft_core::geometry::Point3;
use beamcraft_core::shell::{Panel, PanelEdge, Piece, PieceSign};

use crate::plan::{BEAMCRAFT_PIECE_ADDED, BEAMCRAFT_PIECE_REMOVED, beamcraft_panel_edge, beamcraft_panel_size};

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
