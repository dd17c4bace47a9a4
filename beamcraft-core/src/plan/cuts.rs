//! Saw settings, panel by panel, in an order in which a referencing edge always exists.

use super::result::PanelSawing;
use crate::error::{Detail, Error, ErrorCode, Result};
use crate::finding::{CautionText, Finding, FindingCode, Grade, Quantity};
use crate::limits;
use crate::saw::{CutCaution, PanelCut, SawSpec, beyond_saw, cuts_of_panel};
use crate::shell::{FaceId, Panel, PanelEdge};

/// Every cut, and the cautions of the cuts in words.
///
/// `boards` is the path of the boards in the spec.
pub(super) fn settings(
    panels: &[Panel],
    saw: &SawSpec,
    boards: &str,
    findings: &mut Vec<Finding>,
) -> Result<(Vec<PanelSawing>, Vec<CautionText>)> {
    let mut sawing = Vec::with_capacity(panels.len());
    let mut cautions: Vec<CautionText> = Vec::new();
    for panel in panels {
        let cuts = cuts_of_panel(panel, saw).ok_or_else(|| too_flat(panel, boards))?;
        findings.extend(cuts.cuts.iter().filter_map(|cut| beyond_saw(cut, &subject(panel.id, cut))));
        for caution in cuts.cautions {
            if !cautions.contains(&caution) {
                cautions.push(caution);
            }
        }
        let (blank_length_mm, blank_width_mm) = (cuts.blank_length_mm, cuts.blank_width_mm);
        sawing.push(PanelSawing { panel: panel.id, blank_length_mm, blank_width_mm, cuts: cuts.cuts });
    }
    findings.extend(about(&sawing));
    Ok((sawing, cautions))
}

fn subject(panel: FaceId, cut: &PanelCut) -> String {
    format!("{panel} at {}", cut.edge)
}

/// Boards of very unequal thickness, or a very sharp corner: nothing cuts that.
fn too_flat(panel: &Panel, boards: &str) -> Error {
    let flattest = panel.edges.iter().max_by(|a, b| a.tilt_deg.abs().total_cmp(&b.tilt_deg.abs()));
    let given = |edge: &PanelEdge| format!("a bevel of {:.1} deg on {} at {}", edge.tilt_deg, panel.id, edge.id);
    Error::one(Detail {
        code: ErrorCode::Inconsistent,
        path: boards.to_owned(),
        given: flattest.map_or_else(|| panel.id.to_string(), given),
        allowed: format!("bevels of at most {} deg", limits::BEVEL.high),
        cure: "boards closer in thickness, a blunter corner, or a butt joint at this edge".to_owned(),
    })
}

/// One finding for each thing to know, naming every cut it is about.
fn about(sawing: &[PanelSawing]) -> Vec<Finding> {
    [
        finding(
            sawing,
            CutCaution::TrappedKeptPiece,
            (Grade::Caution, FindingCode::TrappedPiece),
            "The kept piece is trapped between the fence and a blade that leans over it; it can bind and be thrown back.",
            "Lay the show face up with the blade leaning away from the fence, or move the fence to the other side of the blade.",
        ),
        finding(
            sawing,
            CutCaution::TrappedWaste,
            (Grade::Caution, FindingCode::TrappedPiece),
            "The waste is trapped between the fence and a blade that leans over it; it can bind and be thrown back.",
            "Move the fence to the other side of the blade.",
        ),
        finding(
            sawing,
            CutCaution::LongPointAboveFence,
            (Grade::Note, FindingCode::LongPointRidesFence),
            "The edge that rides the fence or gauge is bevelled already, its long point up.",
            "Use a fence, and a face on the gauge, higher than the board is thick.",
        ),
        finding(
            sawing,
            CutCaution::LongPointUnderFence,
            (Grade::Caution, FindingCode::LongPointRidesFence),
            "The edge that rides the fence or gauge is bevelled already, its long point down on the table; it can creep under.",
            "Close the gap with an auxiliary face that touches the table.",
        ),
    ]
    .into_iter()
    .flatten()
    .collect()
}

fn finding(
    sawing: &[PanelSawing],
    caution: CutCaution,
    (grade, code): (Grade, FindingCode),
    message: &str,
    cure: &str,
) -> Option<Finding> {
    let cuts = sawing.iter().flat_map(|panel| panel.cuts.iter().map(move |cut| (panel.panel, cut)));
    let concerned: Vec<_> = cuts.filter(|(_, cut)| cut.cautions.contains(&caution)).collect();
    let steepest = concerned.iter().map(|(_, cut)| cut.bevel_deg.abs()).reduce(f64::max)?;
    let names: Vec<String> = concerned.iter().map(|(panel, cut)| subject(*panel, cut)).collect();
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
