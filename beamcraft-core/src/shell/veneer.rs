//! Panels of a sheet with a face veneer: where the core shows, and how far an arris may be eased.
//!
//! ```text
//!   arris ●──────────────── show face of a          P: where the veneer of a ends on the mitre
//!         │╲  veneer of a
//!         │ P──────────────                         An easing that goes deeper than P bares the core.
//!         │  ╲   core
//! ```

use super::id::{EdgeId, FaceId};
use super::panel::{EdgeJoint, Panel, PanelEdge};
use crate::numeric::real::{sin_cos_deg, tan_deg};

/// Whether the core of a panel shows at an edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum CoreAtEdge {
    /// The neighbour covers it, or the mitre closes over it.
    Covered,
    /// It shows beside the neighbour's face: needs an edge band.
    Shows,
    /// It shows in an open face or end, against a wall or in sight.
    InOpenFace,
}

/// A veneered panel at one of its edges.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct VeneerEdge {
    /// Which panel.
    pub panel: FaceId,
    /// Which edge of it.
    pub edge: EdgeId,
    /// Whether the core shows.
    pub core: CoreAtEdge,
    /// Largest radius of an eased arris that leaves this panel's veneer whole at a mitre, mm; absent at other edges and at
    /// corners that have no outside arris.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub largest_radius_mm: Option<f64>,
    /// Largest chamfer, measured along both faces, that leaves this panel's veneer whole at a mitre, mm; absent likewise.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub largest_chamfer_mm: Option<f64>,
}

/// Every edge of a panel.
pub(super) fn edges(panel: &Panel, veneer_mm: f64) -> impl Iterator<Item = VeneerEdge> + '_ {
    panel.edges.iter().map(move |edge| {
        let easing = (edge.joint == EdgeJoint::Mitred).then(|| largest_easing(edge, veneer_mm)).flatten();
        VeneerEdge {
            panel: panel.id,
            edge: edge.id,
            core: match edge.joint {
                EdgeJoint::Mitred | EdgeJoint::Stops => CoreAtEdge::Covered,
                EdgeJoint::RunsPast => CoreAtEdge::Shows,
                EdgeJoint::Open => CoreAtEdge::InOpenFace,
            },
            largest_radius_mm: easing.map(|easing| easing.0),
            largest_chamfer_mm: easing.map(|easing| easing.1),
        }
    })
}

/// Largest radius and chamfer at a mitre; nothing without an outside arris, or where the mitre lies so flat in this panel
/// that its core never comes near the arris.
///
/// With α between mitre and show face and h half the corner, the veneer ends at p = v / sin α from the arris. The radius
/// reaches it when `r² cot² h − 2 r p k + p² = 0`, `k = cos α cot h + sin α`; of the two roots the larger is where the
/// round passes it on its way in.
fn largest_easing(edge: &PanelEdge, veneer_mm: f64) -> Option<(f64, f64)> {
    if edge.corner_deg > 179.0 {
        return None;
    }
    let half = 0.5 * edge.corner_deg;
    let mitre_deg = 90.0 - edge.tilt_deg;
    let (sine, cosine) = sin_cos_deg(mitre_deg);
    let cot = 1.0 / tan_deg(half);
    let p = veneer_mm / sine;
    let k = cosine * cot + sine;
    let root = (k * k - cot * cot).max(0.0).sqrt();
    let radius = p * (k + root) / (cot * cot);
    let chamfer = p * sin_cos_deg(mitre_deg - half).1 / sin_cos_deg(half).1;
    (radius > 0.0 && chamfer > 0.0 && radius.is_finite()).then_some((radius, chamfer))
}
