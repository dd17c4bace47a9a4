//! What stands beside a sketch.

use super::super::text::degrees;
use super::super::words;
use crate::plan::{CutSetting, Plan, ShowFace};
use crate::saw::{BoardSetUp, RidingEdge, RipSetUp, TrappedPiece};
use crate::shell::{EdgeCut, Panel};

/// Which face of the board lies on the table, or against the fence when it stands on edge.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Down {
    /// The show face.
    Show,
    /// The inner face.
    Inner,
}

/// The face that lies down, by the set-up of a rip or the way the maker lays the board.
pub(super) fn down(plan: &Plan, cut: &CutSetting) -> Down {
    let show_up = match cut.rip.map(|rip| rip.set_up) {
        Some(RipSetUp::ShowFaceUpBladeAway | RipSetUp::ShowFaceUpBladeTowards) => true,
        Some(RipSetUp::ShowFaceDownBladeTowards | RipSetUp::ShowFaceDownBladeAway) => false,
        // On edge the long point stands at the fence.
        None if cut.set_up == BoardSetUp::OnEdgeAgainstTallFence => cut.bevel_deg < 0.0,
        None if cut.bevel_deg < 0.0 => false,
        // A wedge lifts the side of the blade, which leans away: the long point is up.
        None if cut.set_up == BoardSetUp::JigWedge => true,
        None => plan.spec.saw.show_face == ShowFace::Up,
    };
    if show_up { Down::Inner } else { Down::Show }
}

/// Whether the board lies flat on the table, where the mitre gauge can hold it.
pub(super) fn is_flat(cut: &CutSetting) -> bool {
    matches!(cut.set_up, BoardSetUp::Flat | BoardSetUp::OtherFaceDown)
}

/// `rip to the top`.
pub(super) fn name(cut: &CutSetting) -> String {
    format!("{} to the {}", words::cut(cut.cut), words::beyond(cut.panel, cut.edge))
}

/// The settings, then what to watch.
pub(super) fn lines(plan: &Plan, panel: &Panel, cut: &CutSetting) -> Vec<String> {
    let lengths = plan.spec.lengths;
    let mut lines = vec![format!("bevel {}, blade tilt {}", degrees(cut.bevel_deg.abs()), degrees(cut.blade_tilt_deg))];
    let lies = match (down(plan, cut), cut.set_up) {
        (Down::Show, BoardSetUp::OnEdgeAgainstTallFence) => "on edge, show face against the fence",
        (Down::Inner, BoardSetUp::OnEdgeAgainstTallFence) => "on edge, inner face against the fence",
        (Down::Show, _) => "show face down",
        (Down::Inner, _) => "show face up",
    };
    lines.push(lies.to_owned());
    if cut.set_up == BoardSetUp::JigWedge {
        lines.push(format!("on a wedge of {}", degrees(cut.wedge_deg)));
    }
    match (cut.rip, cut.cut) {
        (Some(rip), _) => lines.push(format!("fence {}", lengths.full(rip.fence.fence_mm))),
        (None, EdgeCut::CrossCut) if is_flat(cut) => lines.push(gauge(panel, cut)),
        (None, EdgeCut::CrossCut) => {}
        (None, EdgeCut::Rip) if cut.bevel_deg == 0.0 => lines.push("jointed edge: the reference".to_owned()),
        (None, EdgeCut::Rip) => {}
    }
    let kind = match cut.cut {
        EdgeCut::Rip => "width",
        EdgeCut::CrossCut => "length",
    };
    lines.push(format!("leaves a show face of {kind} {}", lengths.full(cut.show_size_mm)));
    if let Some(rip) = cut.rip {
        lines.extend(warnings(rip.fence.trapped_piece, rip.fence.riding_edge).map(str::to_owned));
    }
    if cut.set_up == BoardSetUp::OnEdgeAgainstTallFence {
        lines.push("hold-down; a long board: jig or track saw".to_owned());
    }
    lines
}

fn gauge(panel: &Panel, cut: &CutSetting) -> String {
    let end = panel.edges.iter().find(|edge| edge.id == cut.edge);
    match end.and_then(|end| panel.longer_towards(end)) {
        Some(longer) => {
            format!("gauge {} off square, longer at the {}", degrees(cut.gauge_deg.abs()), words::face(longer))
        }
        None => "gauge square".to_owned(),
    }
}

/// What binds or creeps.
fn warnings(trapped: TrappedPiece, riding: RidingEdge) -> impl Iterator<Item = &'static str> {
    let trapped = match trapped {
        TrappedPiece::KeptPiece => Some("caution: the kept piece is trapped"),
        TrappedPiece::None => None,
    };
    let riding = match riding {
        RidingEdge::LongPointUp => Some("long point up at the fence: high fence"),
        RidingEdge::LongPointDown => Some("caution: long point may creep under fence"),
        RidingEdge::Square => None,
    };
    trapped.into_iter().chain(riding)
}
