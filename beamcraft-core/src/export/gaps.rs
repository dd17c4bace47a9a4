//! The gaps of a stack-up as histograms: the worst seam of each body, then the seams.

use super::svg::{Anchor, Fill, LARGE, Line, NORMAL, Paper, SMALL, Sheet, Spot, fitted};
use super::text::{fixed, percent};
use crate::tolerance::{GapHistogram, GapStatistics, ToleranceStack};

/// Histograms on a sheet: two columns of four.
const FIGURES: usize = 8;
const COLUMNS: usize = 2;
/// Size of a histogram with its texts, mm.
const CELL: (f64, f64) = (92.0, 64.0);
/// Size of its bars, mm.
const PLOT: (f64, f64) = (82.0, 34.0);
/// Upper left corner of the first one on the sheet, mm.
const START: Spot = Spot::new(15.0, 28.0);

/// Histograms of the visible gaps of a stack-up as SVG: the worst seam of each body, then up to seven seams in their order.
///
/// The first bar holds the closed seams too. It is cut off where it is taller than the others, with its share written on
/// it; the others are drawn to one scale within a histogram.
pub fn gap_histograms_svg(stack: &ToleranceStack) -> String {
    let description = "Histograms of the visible gap at the show edge, with median and 95th percentile";
    let mut sheet = Sheet::new(Paper::A4, "Visible gaps", description);
    sheet.heading(Spot::new(START.x, 16.0), LARGE, "Visible gap at the show edge, mm");
    let drawn = stack.seams.len().min(FIGURES - 1);
    let left_out = match stack.seams.len() - drawn {
        0 => String::new(),
        more => format!("; {more} further seams are not drawn"),
    };
    let samples = stack.samples;
    let note = format!("{samples} samples; the first bar holds closed seams too{left_out}");
    sheet.text(Spot::new(START.x, 22.0), SMALL, Anchor::Start, &note);
    let worst = ("worst seam of each body", &stack.worst, &stack.worst_histogram);
    let seams = stack.seams.iter().map(|seam| (seam.name.as_str(), &seam.sampled, &seam.histogram));
    for (k, (name, gap, histogram)) in core::iter::once(worst).chain(seams).take(FIGURES).enumerate() {
        let (column, row) = ((k % COLUMNS) as f64, (k / COLUMNS) as f64);
        draw(&mut sheet, START.by(column * CELL.0, row * CELL.1), name, gap, histogram, samples);
    }
    sheet.finish()
}

fn draw(sheet: &mut Sheet, at: Spot, name: &str, gap: &GapStatistics, histogram: &GapHistogram, samples: u32) {
    sheet.heading(at.by(0.0, 4.0), NORMAL, &fitted(name, PLOT.0, NORMAL));
    let shares = format!(
        "burnish {}, fill {}, reject {}",
        percent(gap.burnishable_share),
        percent(gap.fillable_share),
        percent(gap.reject_share)
    );
    sheet.text(at.by(0.0, 8.5), SMALL, Anchor::Start, &shares);
    let base = at.by(0.0, 12.0 + PLOT.1);
    sheet.line(base, base.by(PLOT.0, 0.0), Line::Outline);
    // What is empty to the right of the last sample is not drawn.
    let filled = histogram.counts.iter().rposition(|count| *count > 0).map_or(1, |last| last + 1);
    let bar = PLOT.0 / filled as f64;
    let tallest = histogram.counts.iter().skip(1).fold(0, |most, count| most.max(*count));
    let tallest = if tallest == 0 { samples } else { tallest };
    for (k, count) in histogram.counts.iter().take(filled).enumerate().filter(|(_, count)| **count > 0) {
        let height = PLOT.1 * (f64::from(*count) / f64::from(tallest)).min(1.0);
        let left = base.by(bar * k as f64, 0.0);
        sheet.rectangle(left, left.by(bar, -height), Line::Thin, Fill::Grey);
        if *count > tallest {
            let share = percent(f64::from(*count) / f64::from(samples));
            sheet.text(left.by(bar + 1.0, 2.0 - PLOT.1), SMALL, Anchor::Start, &share);
        }
    }
    let end_mm = histogram.bin_mm * filled as f64;
    sheet.text(base.by(0.0, 3.5), SMALL, Anchor::Start, "0");
    sheet.text(base.by(PLOT.0, 3.5), SMALL, Anchor::End, &fixed(end_mm, 2));
    if end_mm > 0.0 {
        for (label, value_mm, line) in [("50 %", gap.p50_mm, Line::Hidden), ("95 %", gap.p95_mm, Line::Centre)] {
            let x = PLOT.0 * (value_mm / end_mm).min(1.0);
            sheet.line(base.by(x, 0.0), base.by(x, -PLOT.1), line);
            let drop = if line == Line::Centre { 7.0 } else { 10.5 };
            let text = format!("{label}: {}", fixed(value_mm, 3));
            sheet.text(base.by(x.clamp(12.0, PLOT.0 - 12.0), drop), SMALL, Anchor::Middle, &text);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tolerance::{
        AngleSource, CutSide, ErrorDistribution, SeamHold, StackEdge, StackSeam, ToleranceStackInput, tolerance_stack,
    };

    fn stack(seams: usize, spread_deg: f64) -> ToleranceStack {
        let edge = StackEdge {
            panel: "front".to_owned(),
            thickness_mm: 20.0,
            width_mm: 180.0,
            cut_side: CutSide::ShowFaceDown,
            tilt_sources: vec!["tilt".to_owned()],
            size_sources: vec![],
            size_share: 1.0,
            thickness_sources: vec![],
            cup_sources: vec![],
            bow_sources: vec![],
        };
        let seam = |k: usize| StackSeam {
            name: format!("front|<{k}>"),
            a: edge.clone(),
            b: edge.clone(),
            corner_deg: 90.0,
            corner_sources: vec![],
            hold: SeamHold::DrawnTight,
            over_tilt_deg: 0.0,
        };
        tolerance_stack(&ToleranceStackInput {
            seams: (0..seams).map(seam).collect(),
            angle_sources: vec![AngleSource {
                name: "tilt".to_owned(),
                distribution: ErrorDistribution::Normal,
                spread_deg,
                bias_deg: 0.0,
            }],
            length_sources: vec![],
            burnish_gap_mm: 0.1,
            filler_gap_mm: 0.3,
            samples: 2_000,
            seed: 1,
            threads: 1,
        })
        .unwrap()
    }

    /// Figures that show how much is burnished shut.
    fn burnished(svg: &str) -> usize {
        super::super::read_back::texts(svg).iter().filter(|(text, _)| text.starts_with("burnish ")).count()
    }

    #[test]
    fn every_seam_has_its_figure_up_to_a_sheet() {
        let svg = gap_histograms_svg(&stack(2, 0.1));
        assert_eq!(burnished(&svg), 3);
        assert!(svg.contains("front|&lt;1&gt;") && !svg.contains("not drawn"));
        let many = gap_histograms_svg(&stack(20, 0.1));
        assert_eq!(burnished(&many), FIGURES);
        assert!(many.contains("; 13 further seams are not drawn"));
    }

    #[test]
    fn a_body_without_gaps_has_one_bar_and_no_percentiles() {
        let svg = gap_histograms_svg(&stack(1, 0.0));
        assert!(svg.contains("burnish 100 %") && !svg.contains("95 %:"));
        assert!(!svg.contains("NaN") && !svg.contains("inf"));
    }
}
