//! What stands beside a sketch.

use super::super::text::degrees;
use super::super::words;
use crate::plan::ReportLengths;
use crate::saw::{BladeSide, CutKind, CutSetUp, CutWay, KeptPiece, PanelCut};
use crate::shell::Panel;

/// `rip to the top`, `cross-cut to leg 2`.
pub(super) fn name(panel: &Panel, cut: &PanelCut) -> String {
    format!("{} {}", words::cut_kind(cut.kind), words::towards(panel, &cut.edge))
}

/// The settings, then what to watch.
pub(super) fn lines(lengths: ReportLengths, cut: &PanelCut) -> Vec<String> {
    let Some(set_up) = &cut.set_up else {
        return vec![match cut.kind {
            CutKind::Joint => "jointed edge: the reference".to_owned(),
            _ => "this saw does not make it; see the findings".to_owned(),
        }];
    };
    let mut lines =
        vec![format!("bevel {}, blade tilt {}", degrees(cut.bevel_deg.abs()), degrees(set_up.blade_tilt_deg))];
    lines.push(words::way(set_up.way, set_up.face_down) + words::riding(set_up.riding));
    if set_up.wedge_deg > 0.0 {
        lines.push(format!("on a wedge of {}", degrees(set_up.wedge_deg)));
    }
    lines.extend(places(lengths, cut, set_up));
    lines.push(format!("leaves a show face of {} {}", size(cut.kind), lengths.full(cut.show_size_mm)));
    lines.extend(mirrored(cut, set_up));
    let cautions = words::cut_cautions(cut);
    if !cautions.is_empty() {
        lines.push(format!("care: {}", cautions.join(", ")));
    }
    lines
}

/// Fence, gauge, stop and marks.
fn places(lengths: ReportLengths, cut: &PanelCut, set_up: &CutSetUp) -> Vec<String> {
    let mut lines = Vec::new();
    if let Some(first) = set_up.square_first_mm {
        lines.push(format!("first cut square at {}", lengths.full(first)));
    }
    if let Some(fence) = set_up.fence_mm {
        let what = if set_up.way == CutWay::TrackSaw { "line" } else { "fence" };
        lines.push(format!("{what} {}", lengths.full(fence)));
    }
    if cut.kind == CutKind::GaugeCut {
        lines.push(words::gauge(cut.gauge_deg, &degrees(cut.gauge_deg.abs())));
    }
    if let Some(stop) = set_up.stop_mm {
        lines.push(format!("stop {}", lengths.full(stop)));
    }
    if let Some(marks) = set_up.marks {
        let first = if set_up.way == CutWay::OnEdge { "first cut square to " } else { "" };
        let (low, high) = (lengths.bare(marks.low_end_mm), lengths.full(marks.high_end_mm));
        lines.push(format!("{first}marks {low} and {high}"));
    }
    lines
}

const fn size(kind: CutKind) -> &'static str {
    match kind {
        CutKind::Joint | CutKind::FenceRip | CutKind::TaperRip => "width",
        CutKind::GaugeCut => "length",
    }
}

/// Where the sketch, which has the kept piece on the right of the blade, is not what the maker sees.
fn mirrored(cut: &PanelCut, set_up: &CutSetUp) -> Option<String> {
    if cut.kept == KeptPiece::BeyondTheBlade {
        return Some("the waste lies at the fence".to_owned());
    }
    let side = set_up.fence_side.or(set_up.kept_side)?;
    (side == BladeSide::Left).then(|| "kept piece left of the blade: seen mirrored".to_owned())
}
