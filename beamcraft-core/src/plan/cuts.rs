//! Saw settings, panel by panel: rips before cross-cuts, square edges before bevelled ones.

use super::body::Body;
use super::checked::LEG;
use super::result::{CutSetting, RipSetting};
use super::spec::ShowFace;
use super::within;
use crate::error::{Detail, Error, ErrorCode, Result};
use crate::finding::{Finding, FindingCode, Grade, Quantity};
use crate::limits;
use crate::saw::{
    BoardSetUp, RidingEdge, RipFenceInput, RipSetUp, TiltSetUpInput, TrappedPiece, rip_fence, tilt_set_up,
};
use crate::shell::{EdgeCut, Panel, PanelEdge};

/// Every cut, in the order in which a referencing edge exists.
pub(super) fn settings(body: &Body<'_>, findings: &mut Vec<Finding>) -> Result<Vec<CutSetting>> {
    let mut cuts = Vec::new();
    for panel in &body.shell.panels {
        for (k, (edge, earlier)) in in_order(panel).into_iter().enumerate() {
            cuts.push(setting(body, panel, k as u32 + 1, edge, earlier)?);
        }
    }
    findings.extend(about(&cuts));
    Ok(cuts)
}

/// The edges of a panel in cutting order, each rip with the bevel of the edge that rides the fence.
fn in_order(panel: &Panel) -> Vec<(&PanelEdge, Riding)> {
    let mut edges: Vec<&PanelEdge> = panel.edges.iter().collect();
    edges.sort_by(|a, b| {
        (kind_rank(a), a.tilt_deg.abs())
            .partial_cmp(&(kind_rank(b), b.tilt_deg.abs()))
            .unwrap_or(core::cmp::Ordering::Equal)
    });
    let mut ripped: Option<f64> = None;
    let mut order = Vec::new();
    for edge in edges {
        let riding = match (edge.cut, ripped) {
            (EdgeCut::CrossCut, _) => Riding::None,
            (EdgeCut::Rip, None) => Riding::SquareEdge,
            (EdgeCut::Rip, Some(bevel_deg)) => Riding::CutEdge(bevel_deg),
        };
        if edge.cut == EdgeCut::Rip {
            ripped = Some(edge.tilt_deg);
        }
        order.push((edge, riding));
    }
    order
}

fn kind_rank(edge: &PanelEdge) -> u8 {
    match edge.cut {
        EdgeCut::Rip => 0,
        EdgeCut::CrossCut => 1,
    }
}

/// What rides the fence.
#[derive(Clone, Copy)]
enum Riding {
    /// No fence: a cross-cut.
    None,
    /// The jointed edge of the blank.
    SquareEdge,
    /// The edge ripped before, with its bevel.
    CutEdge(f64),
}

fn setting(body: &Body<'_>, panel: &Panel, step: u32, edge: &PanelEdge, riding: Riding) -> Result<CutSetting> {
    let spec = &body.checked.spec.saw;
    if edge.tilt_deg.abs() > limits::BEVEL.high {
        return Err(too_flat(panel, edge));
    }
    let tilt = TiltSetUpInput { tilt_deg: edge.tilt_deg, max_tilt_deg: spec.max_tilt_deg };
    let set_up = tilt_set_up(&tilt).map_err(|fault| within(fault, "saw"))?;
    let (show_size_mm, fence_edge_bevel_deg) = match riding {
        Riding::None => (panel.show_length_mm, None),
        // The second rip still takes off the allowance.
        Riding::SquareEdge if is_square(edge) => (panel.show_width_mm + spec.rip_allowance_mm, None),
        Riding::SquareEdge => (panel.show_width_mm + spec.rip_allowance_mm, Some(0.0)),
        Riding::CutEdge(bevel_deg) => (panel.show_width_mm, Some(bevel_deg)),
    };
    let flat = matches!(set_up.set_up, BoardSetUp::Flat | BoardSetUp::OtherFaceDown);
    let rip = match fence_edge_bevel_deg {
        Some(fence_edge_bevel_deg) if flat => {
            let input = RipFenceInput {
                show_width_mm: show_size_mm,
                thickness_mm: panel.thickness_mm,
                fence_edge_bevel_deg,
                cut_bevel_deg: edge.tilt_deg,
                set_up: lean(edge.tilt_deg, spec.show_face),
                kerf_mm: spec.kerf_mm,
            };
            let fence = rip_fence(&input).map_err(|fault| within(fault, "saw"))?;
            Some(RipSetting { set_up: input.set_up, fence })
        }
        _ => None,
    };
    Ok(CutSetting {
        panel: panel.id,
        step,
        edge: edge.id,
        cut: edge.cut,
        bevel_deg: edge.tilt_deg,
        gauge_deg: edge.gauge_deg,
        set_up: set_up.set_up,
        blade_tilt_deg: set_up.saw_tilt_deg,
        wedge_deg: set_up.wedge_deg,
        show_size_mm,
        rip,
    })
}

fn is_square(edge: &PanelEdge) -> bool {
    edge.tilt_deg == 0.0
}

/// Boards of very unequal thickness, or a very sharp corner: nothing cuts that.
fn too_flat(panel: &Panel, edge: &PanelEdge) -> Error {
    Error::one(Detail {
        code: ErrorCode::Inconsistent,
        path: format!("{LEG}.boards"),
        given: format!("a bevel of {:.1} deg on {} at {}", edge.tilt_deg, panel.id, edge.id),
        allowed: format!("bevels of at most {} deg", limits::BEVEL.high),
        cure: "boards closer in thickness, a blunter corner, or a butt joint at this edge".to_owned(),
    })
}

/// The lean that cuts a bevel with the show face as the maker lays it; a board turned over for a bevel with its long point on
/// the inner face lies show face down, so that the blade leans away from the fence.
fn lean(tilt_deg: f64, show_face: ShowFace) -> RipSetUp {
    match (tilt_deg < 0.0, show_face) {
        (false, ShowFace::Up) => RipSetUp::ShowFaceUpBladeAway,
        (false, ShowFace::Down) => RipSetUp::ShowFaceDownBladeTowards,
        (true, _) => RipSetUp::ShowFaceDownBladeAway,
    }
}

/// One finding for each thing to know, naming every cut it is about.
fn about(cuts: &[CutSetting]) -> Vec<Finding> {
    let beyond = |cut: &&CutSetting| matches!(cut.set_up, BoardSetUp::OnEdgeAgainstTallFence | BoardSetUp::JigWedge);
    let rides = |cut: &CutSetting, edge: RidingEdge| cut.rip.is_some_and(|rip| rip.fence.riding_edge == edge);
    let trapped = |cut: &&CutSetting| cut.rip.is_some_and(|rip| rip.fence.trapped_piece == TrappedPiece::KeptPiece);
    let collect = |wanted: &dyn Fn(&&CutSetting) -> bool| cuts.iter().filter(wanted).collect::<Vec<_>>();
    let mut findings = Vec::new();
    findings.extend(finding(
        &collect(&beyond),
        Grade::Caution,
        FindingCode::BeyondTilt,
        "The bevel is more than the saw tilts.",
        "On edge against a tall fence at the complement, with a hold-down and enough width on the table, or flat on a wedge. \
         A long board is not cross-cut on edge: use a jig that leans it, or a track saw.",
    ));
    findings.extend(finding(
        &collect(&trapped),
        Grade::Caution,
        FindingCode::TrappedPiece,
        "The kept piece is trapped between the fence and a blade that leans towards it; it can bind and be thrown back.",
        "Lay the show face up with the blade leaning away from the fence, or move the fence to the other side of the blade.",
    ));
    findings.extend(finding(
        &collect(&|cut| rides(cut, RidingEdge::LongPointUp)),
        Grade::Note,
        FindingCode::LongPointRidesFence,
        "The edge that rides the fence is bevelled already, its long point up.",
        "Use a fence higher than the board is thick.",
    ));
    findings.extend(finding(
        &collect(&|cut| rides(cut, RidingEdge::LongPointDown)),
        Grade::Caution,
        FindingCode::LongPointRidesFence,
        "The edge that rides the fence is bevelled already, its long point down on the table; it can creep under the fence.",
        "Close the gap under the fence with an auxiliary face that touches the table.",
    ));
    findings
}

fn finding(cuts: &[&CutSetting], grade: Grade, code: FindingCode, message: &str, cure: &str) -> Option<Finding> {
    let steepest = cuts.iter().map(|cut| cut.bevel_deg.abs()).reduce(f64::max)?;
    let names: Vec<_> = cuts.iter().map(|cut| format!("{} at {}", cut.panel, cut.edge)).collect();
    Some(Finding {
        grade,
        code,
        subject: names.join(", "),
        message: message.to_owned(),
        numbers: vec![Quantity::new("steepest bevel", steepest, "deg")],
        cure: cure.to_owned(),
        clause: None,
    })
}
