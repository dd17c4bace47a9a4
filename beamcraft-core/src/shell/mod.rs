//! Mitred panels of a hollow body: faces, bevels, long and short points.

mod compound;
mod id;
mod kernel;
mod leg;
mod mitre;
mod panel;

#[cfg(test)]
mod laws_tests;

pub use compound::{
    CompoundMitre, CompoundMitreInput, SplayedCorner, SplayedCornerInput, compound_mitre, splayed_corner,
};
pub use id::{EdgeId, FaceId, FaceKind};
pub use kernel::{ButtJoint, OuterFace, Presence, Shell, ShellFace, build_shell};
pub use leg::{EndKind, Leg, LegBoard, LegButt, LegEnd, LegFace, LongFace, shell_panels};
pub(crate) use mitre::seam_gaps;
pub use mitre::{MitrePair, MitrePairInput, mitre_pair};
pub use panel::{EdgeCut, EdgeJoint, Panel, PanelEdge, Piece, PieceSign};

/// Registry rows of this module.
#[cfg(feature = "json")]
pub(crate) const CALCULATIONS: &[crate::json::Calculation] =
    &[mitre::MITRE_PAIR, compound::COMPOUND_MITRE, compound::SPLAYED_CORNER, leg::SHELL_PANELS];
