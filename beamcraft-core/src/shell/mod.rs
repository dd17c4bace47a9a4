//! Mitred panels of a hollow body: faces, bevels, long and short points.

mod body;
mod carve;
mod compound;
mod edges;
mod id;
mod kernel;
mod leg;
mod mitre;
mod panel;
mod run;
mod section;

#[cfg(test)]
mod laws_tests;

pub use body::{BodyBoard, BodyEnd, BodyLeg, BodyTaper, HollowBody, HollowBodyInput, PanelMass, hollow_body};
pub use compound::{
    CompoundMitre, CompoundMitreInput, SplayedCorner, SplayedCornerInput, compound_mitre, splayed_corner,
};
pub use edges::{BodyEdge, BodyJoint, EdgeJoining};
pub use id::{EdgeId, FaceId, FaceKind};
pub use kernel::{ButtJoint, OuterFace, Presence, Shell, ShellFace, build_shell};
pub use leg::{EndKind, Leg, LegBoard, LegButt, LegEnd, LegFace, LongFace, shell_panels};
pub use mitre::{MitrePair, MitrePairInput, mitre_pair};
pub use panel::{EdgeCut, EdgeJoint, Panel, PanelEdge, Piece, PieceSign};
pub use section::{BodySection, PolygonalSection, RectangularSection, RegularSection, SectionCorner, SlopedSection};

/// Registry rows of this module.
#[cfg(feature = "json")]
pub(crate) const CALCULATIONS: &[crate::json::Calculation] =
    &[mitre::MITRE_PAIR, compound::COMPOUND_MITRE, compound::SPLAYED_CORNER, leg::SHELL_PANELS, body::HOLLOW_BODY];
