//! The edges of a panel, one a row, and what to cut it from.

use super::super::drawn::Drawn;
use super::super::layout::Zone;
use super::super::svg::{Anchor, Line, NORMAL, Sheet, Spot, fitted};
use super::super::text::degrees;
use super::super::words;
use crate::plan::ReportLengths;
use crate::shell::{Panel, PanelEdge};

/// Height of a row, mm.
const ROW: f64 = 5.8;
/// Lines of text below the edges.
const NOTES: usize = 3;
/// Where the columns begin, mm from the left of the frame.
const COLUMNS: [f64; 6] = [10.0, 40.0, 66.0, 107.0, 143.0, 167.0];
/// Width of the last column, mm.
const LAST: f64 = 21.0;
const HEADS: [&str; 6] = ["meets", "joint", "bevel, long point on", "cut", "show face", "inner face"];

/// Paper that the table takes, mm.
pub(super) fn height(panel: &Panel) -> f64 {
    ROW * (panel.edges.len() + 1 + NOTES) as f64 + 6.0
}

pub(super) fn draw(sheet: &mut Sheet, job: Drawn<'_>, panel: &Panel, zone: Zone) {
    sheet.line(Spot::new(zone.left, zone.top), Spot::new(zone.right, zone.top), Line::Thin);
    let y = |row: usize| zone.top + 6.0 + ROW * row as f64;
    row(sheet, zone.left, y(0), &HEADS.map(str::to_owned));
    sheet.line(Spot::new(zone.left + 3.0, y(0) + 1.8), Spot::new(zone.right - 3.0, y(0) + 1.8), Line::Thin);
    for (at, edge) in panel.edges.iter().enumerate() {
        let centre = Spot::new(zone.left + 5.5, y(at + 1) - 1.0);
        sheet.balloon(centre, centre, at + 1);
        row(sheet, zone.left, y(at + 1), &cells(panel, edge, job.lengths));
    }
    for (at, note) in notes(job, panel).iter().enumerate() {
        let spot = Spot::new(zone.left + 3.0, y(panel.edges.len() + 1 + at) + 1.0);
        sheet.text(spot, NORMAL, Anchor::Start, &fitted(note, zone.width() - 6.0, NORMAL));
    }
}

fn row(sheet: &mut Sheet, left: f64, y: f64, cells: &[String; 6]) {
    let ends = COLUMNS.into_iter().skip(1).chain([COLUMNS[5] + LAST]);
    for ((column, end), cell) in COLUMNS.into_iter().zip(ends).zip(cells) {
        let room = end - column - 1.0;
        sheet.text(Spot::new(left + column, y), NORMAL, Anchor::Start, &fitted(cell, room, NORMAL));
    }
}

fn cells(panel: &Panel, edge: &PanelEdge, lengths: ReportLengths) -> [String; 6] {
    let bevel = match edge.tilt_deg {
        tilt if tilt.abs() < 0.05 => "square".to_owned(),
        tilt if tilt > 0.0 => format!("{}, show face", degrees(tilt)),
        tilt => format!("{}, inner face", degrees(-tilt)),
    };
    let off = if edge.gauge_deg.abs() < 0.05 { String::new() } else { format!(", {}", degrees(edge.gauge_deg.abs())) };
    let longer = panel.longer_towards(edge).filter(|_| !off.is_empty());
    let longer = longer.map_or_else(String::new, |face| format!(" to {}", words::beside(panel.id, face)));
    [
        words::beside(panel.id, edge.neighbour),
        words::joint(edge.joint).to_owned(),
        bevel,
        format!("{}{off}{longer}", words::cut(edge.cut)),
        lengths.bare(edge.show_length_mm),
        lengths.bare(edge.inner_length_mm),
    ]
}

fn notes(job: Drawn<'_>, panel: &Panel) -> [String; NOTES] {
    let lengths = job.lengths;
    let blank = format!("{} × {}", lengths.bare(panel.blank_length_mm), lengths.full(panel.blank_width_mm));
    let off = panel.edges.iter().any(|edge| edge.gauge_deg.abs() >= 0.05);
    let angle = if off {
        " Angles beside cuts are off square, for a rip off the grain; the board is longer or wider there."
    } else {
        ""
    };
    [
        format!(
            "Cut from {blank}, {} thick, length with the grain; saw and trim allowance come on top.",
            lengths.full(panel.thickness_mm)
        ),
        job.wood.of(1e-9 * panel.mass.volume_mm3),
        format!("Bevels are from square.{angle}"),
    ]
}
