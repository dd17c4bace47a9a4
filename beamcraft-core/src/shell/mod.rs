//! Panels of a hollow body: which boards, with what faces, bevels, long and short points, and what is cut into them?
//!
//! | file | what |
//! |---|---|
//! | `kernel` | panels of any convex body from its outer faces |
//! | `run`, `section` | a convex section carried from one end plane to another |
//! | `leg` | the straight rectangular leg of a plan |
//! | `body`, `edges` | any body: sections, tapers, legs along a path, joints edge by edge |
//! | `carve`, `features`, `veneer` | wood taken out of a panel, and what is left over it |
//! | `mitre`, `compound` | angles of a mitre without a body |
//! | `splice`, `wrap` | bodies too long for one piece; wraps round a member in place |

mod body;
mod carve;
mod compound;
mod edges;
mod features;
mod id;
mod kernel;
mod leg;
mod mitre;
mod panel;
mod run;
mod section;
mod splice;
mod veneer;
mod wrap;

#[cfg(test)]
mod body_laws_tests;
#[cfg(test)]
mod body_tests;
#[cfg(test)]
mod features_tests;
#[cfg(test)]
mod laws_tests;

pub use body::{BodyBoard, BodyEnd, BodyLeg, BodyTaper, HollowBody, HollowBodyInput, PanelMass, hollow_body};
pub use compound::{
    CompoundMitre, CompoundMitreInput, SplayedCorner, SplayedCornerInput, compound_mitre, splayed_corner,
};
pub use edges::{BodyEdge, BodyJoint, EdgeJoining};
pub use features::{
    BodyFeature, CutFrom, EasedArris, EdgeGroove, FeatureCut, PanelHole, PanelRecess, ScribePoint, ScribedEdge,
};
pub use id::{EdgeId, FaceId, FaceKind};
pub use kernel::{ButtJoint, OuterFace, Presence, Shell, ShellFace, build_shell};
pub use leg::{EndKind, Leg, LegBoard, LegButt, LegEnd, LegFace, LongFace, shell_panels};
pub(crate) use mitre::seam_gaps;
pub use mitre::{MitrePair, MitrePairInput, mitre_pair};
pub use panel::{EdgeCut, EdgeJoint, Panel, PanelEdge, Piece, PieceSign};
pub use section::{BodySection, PolygonalSection, RectangularSection, RegularSection, SectionCorner, SlopedSection};
pub use splice::{
    BoardSeam, CarryTurn, JointSleeve, LengthLimit, SplicedBody, SplicedBodyInput, SplicedPanel, spliced_body,
};
pub use veneer::{CoreAtEdge, VeneerEdge};
pub use wrap::{
    JointReach, MemberStand, WrapAction, WrapInPlace, WrapInPlaceInput, WrapJoint, WrapStep, WrappedSides,
    wrap_in_place,
};

/// Registry rows of this module.
#[cfg(feature = "json")]
pub(crate) const CALCULATIONS: &[crate::json::Calculation] = &[
    mitre::MITRE_PAIR,
    compound::COMPOUND_MITRE,
    compound::SPLAYED_CORNER,
    leg::SHELL_PANELS,
    body::HOLLOW_BODY,
    splice::SPLICED_BODY,
    wrap::WRAP_IN_PLACE,
];
