//! Saw settings: a table for each panel, in the order of its cuts.

use super::super::text::degrees;
use super::super::words;
use super::page::{Html, Page};
use crate::plan::{PanelSawing, Plan, ReportLengths};
use crate::saw::{BladeLean, CutKind, CutSetUp, CutWay, PanelCut};
use crate::shell::Panel;

/// Saw settings, panel by panel.
pub(super) fn cuts(page: &mut Page, plan: &Plan) {
    page.heading("Saw settings, panel by panel in the order of the cuts");
    page.remark(
        "Start from a blank with square ends and jointed, parallel long edges. Fence distances are measured at the table, from \
         the fence to the blade; stops along the gauge to the kept side of the blade; the saw's own scale is not valid with a \
         tilted blade. The kerf is always in the waste. Make a test cut in scrap of the same thickness.",
    );
    if plan.spec.saw.machine.leans.is_none() {
        page.remark(
            "The side to which the saw tilts was not given, so either is used; most saws tilt one way. Give it, and every set-up \
             keeps to it.",
        );
    }
    for (sawing, panel) in plan.cuts.iter().zip(&plan.panels) {
        table(page, plan.spec.lengths, sawing, panel);
    }
}

fn table(page: &mut Page, lengths: ReportLengths, sawing: &PanelSawing, panel: &Panel) {
    let title = format!(
        "{}, from a blank {} × {}",
        words::sentence(&words::face(sawing.panel)),
        lengths.bare(sawing.blank_length_mm),
        lengths.full(sawing.blank_width_mm)
    );
    let row = |cut: &PanelCut| {
        [
            format!("{}. {} {}", cut.step, words::cut_kind(cut.kind), words::towards(panel, &cut.edge)).into(),
            Html::lines(&[lies(cut).into(), rides(panel, cut).into()]),
            cut.set_up.as_ref().map_or_else(String::new, |set_up| blade(cut, set_up)).into(),
            Html::lines(&cut.set_up.as_ref().map_or_else(Vec::new, |set_up| places(lengths, cut, set_up))),
            lengths.full(cut.show_size_mm).into(),
            words::cut_cautions(cut).join(", ").into(),
        ]
    };
    let heads = ["cut", "board", "blade", "fence, stop or marks", "leaves", "take care"];
    page.table(&title, heads, sawing.cuts.iter().map(row));
}

fn lies(cut: &PanelCut) -> String {
    let Some(set_up) = &cut.set_up else {
        return match cut.kind {
            CutKind::Joint => "nothing to cut: this edge of the blank is the reference".to_owned(),
            _ => "this saw does not make it; see the findings".to_owned(),
        };
    };
    words::way(set_up.way, set_up.face_down)
}

fn rides(panel: &Panel, cut: &PanelCut) -> String {
    if cut.kind == CutKind::Joint {
        return String::new();
    }
    let name = words::beyond(panel, &cut.rides);
    let edge = match cut.rides_blank {
        Some(_) => format!("the blank's edge beside the {name} rides"),
        None => format!("the edge to the {name} rides"),
    };
    match &cut.set_up {
        Some(set_up) if set_up.way != CutWay::TrackSaw => edge + words::riding(set_up.riding),
        _ => edge,
    }
}

fn blade(cut: &PanelCut, set_up: &CutSetUp) -> String {
    let tilt = degrees(set_up.blade_tilt_deg);
    if set_up.lean == BladeLean::Upright || set_up.way == CutWay::TrackSaw {
        return tilt;
    }
    let way = match (cut.kind, set_up.way) {
        (CutKind::FenceRip, _) | (_, CutWay::OnEdge) => {
            if set_up.leans == set_up.fence_side {
                "towards the fence"
            } else {
                "away from the fence"
            }
        }
        _ => match set_up.lean {
            BladeLean::OverKept => "over the kept piece",
            _ => "away from the kept piece",
        },
    };
    let side = set_up.leans.map_or("", words::side);
    let wedge =
        if set_up.wedge_deg == 0.0 { String::new() } else { format!(", on a wedge of {}", degrees(set_up.wedge_deg)) };
    format!("{tilt}, leaning {side}, {way}{wedge}")
}

fn places(lengths: ReportLengths, cut: &PanelCut, set_up: &CutSetUp) -> Vec<Html> {
    let mut lines = Vec::new();
    if let Some(first) = set_up.square_first_mm {
        lines.push(format!("first cut square at {}", lengths.full(first)));
    }
    if let Some(fence) = set_up.fence_mm {
        let side = set_up.fence_side.map_or_else(String::new, |side| format!(", {} of the blade", words::side(side)));
        let what = if set_up.way == CutWay::TrackSaw { "line" } else { "fence" };
        lines.push(format!("{what} at {}{side}", lengths.full(fence)));
    }
    if cut.kind == CutKind::GaugeCut {
        lines.push(words::gauge(cut.gauge_deg, &degrees(cut.gauge_deg.abs())));
    }
    if let (Some(stop), Some(meets)) = (set_up.stop_mm, cut.stop_meets) {
        lines.push(format!("stop at {} from {}", lengths.full(stop), words::stop_meets(meets)));
    }
    if let Some(marks) = set_up.marks {
        let (low, high) = (lengths.full(marks.low_end_mm), lengths.full(marks.high_end_mm));
        let first = if set_up.way == CutWay::OnEdge { "first cut square to the long point: " } else { "" };
        lines.push(format!(
            "{first}taper of {}; marks at {low} where the grain begins, {high} where it ends",
            degrees(cut.gauge_deg.abs())
        ));
    }
    if let Some(kept) = set_up.kept_side {
        lines.push(format!("keep the {} piece", words::side(kept)));
    }
    if set_up.planing_mm > 0.0 {
        lines.push(format!("then plane {} off at the short point", lengths.full(set_up.planing_mm)));
    }
    lines.into_iter().map(Html::from).collect()
}
