//! Least height against depth by each rule, and where the body is.

use super::svg::{Anchor, Fill, LARGE, Line, NORMAL, Paper, Run, SMALL, Scale, Sheet, Spot, fitted, wrapped};
use super::text::fixed;
use super::words;
use crate::plan::ReportLengths;
use crate::site::{BodyClearance, BodyClearanceAnswer};
use crate::units::factor::INCH_MM;

/// Margin of the sheet, mm.
const MARGIN: f64 = 10.0;
/// Left edge of what is written and drawn, mm.
const LEFT: f64 = 16.0;
/// The chart: left, top, bottom, mm.
const CHART: (f64, f64, f64) = (32.0, 44.0, 150.0);
/// First line of the table and height of a line, mm.
const TABLE: (f64, f64) = (172.0, 10.5);
/// Kinds of lines, so that curves that lie upon one another can be told apart.
const KINDS: [Line; 4] = [Line::Outline, Line::Hidden, Line::Centre, Line::Phantom];

/// The clearance of a body as an SVG sheet: the least height of its lowest point above the opening against its depth, by each
/// rule that counts, with the body itself; A4 where lengths are metric, US Letter where in inches.
///
/// Below the chart each rule stands with its edition, its outcome and its numbers. Where no rule counts, the sheet says why.
pub fn clearance_svg(clearance: &BodyClearance, lengths: ReportLengths) -> String {
    let (paper, unit) = match lengths {
        ReportLengths::Metric => (Paper::A4, Unit { name: "mm", per_mm: 1.0 }),
        ReportLengths::Inches => (Paper::Letter, Unit { name: "in", per_mm: 1.0 / INCH_MM }),
    };
    let (width, height) = paper.size_mm();
    let title = "Clearance to the opening";
    let description = "Least height of the body's lowest point above the opening against its depth, by each rule.";
    let mut sheet = Sheet::new(paper, title, description);
    let (outer, inner) = (Spot::new(MARGIN, MARGIN), Spot::new(width - MARGIN, height - MARGIN));
    sheet.rectangle(outer, inner, Line::Outline, Fill::Nothing);
    sheet.heading(Spot::new(LEFT, 21.0), LARGE, title);
    let depth_and_height = format!(
        "Body: stands out {}, lowest point {} above the opening. Together: {}.",
        lengths.full(clearance.depth_mm),
        lengths.full(clearance.lowest_mm),
        words::outcome(clearance.outcome)
    );
    sheet.text(Spot::new(LEFT, 28.0), SMALL, Anchor::Start, &depth_and_height);
    let cautions = clearance.cautions.iter().flat_map(|caution| wrapped(caution.text, width - 2.0 * LEFT, SMALL));
    for (k, line) in cautions.enumerate() {
        sheet.text(Spot::new(LEFT, 32.5 + 3.5 * k as f64), SMALL, Anchor::Start, &line);
    }
    chart(&mut sheet, clearance, unit, width - 2.0 * MARGIN);
    table(&mut sheet, clearance, lengths, width - LEFT, height - MARGIN - 4.0);
    sheet.finish()
}

/// Unit of lengths on the axes.
#[derive(Clone, Copy)]
struct Unit {
    name: &'static str,
    per_mm: f64,
}

/// Axes, curves, and the body as a circle.
fn chart(sheet: &mut Sheet, clearance: &BodyClearance, unit: Unit, right: f64) {
    let (left, top, bottom) = CHART;
    let points = || clearance.answers.iter().flat_map(|answer| &answer.curve);
    let depths: Vec<f64> = points().map(|point| point.depth_mm).chain([0.0, clearance.depth_mm]).collect();
    let heights: Vec<f64> = points().map(|point| point.least_height_mm).chain([0.0, clearance.lowest_mm]).collect();
    let scaled = |values: &[f64]| Scale::of(&values.iter().map(|value| value * unit.per_mm).collect::<Vec<_>>());
    let (across, up) = (scaled(&depths), scaled(&heights));
    let share = |value_mm: f64, scale: Scale| (value_mm * unit.per_mm - scale.low) / (scale.high() - scale.low);
    let at = |depth_mm: f64, height_mm: f64| {
        Spot::new(left + share(depth_mm, across) * (right - left), bottom - share(height_mm, up) * (bottom - top))
    };
    sheet.rectangle(Spot::new(left, top), Spot::new(right, bottom), Line::Thin, Fill::Nothing);
    for step in 0..=up.count {
        let value = up.low + f64::from(step) * up.step;
        let y = bottom - f64::from(step) / f64::from(up.count) * (bottom - top);
        sheet.line(Spot::new(left, y), Spot::new(right, y), Line::Behind);
        sheet.text(Spot::new(left - 2.0, y + 0.9), SMALL, Anchor::End, &fixed(value, 3));
    }
    for step in 0..=across.count {
        let value = across.low + f64::from(step) * across.step;
        let x = left + f64::from(step) / f64::from(across.count) * (right - left);
        sheet.line(Spot::new(x, top), Spot::new(x, bottom), Line::Behind);
        sheet.text(Spot::new(x, bottom + 4.2), SMALL, Anchor::Middle, &fixed(value, 3));
    }
    let below = Spot::new(0.5 * (left + right), bottom + 9.5);
    sheet.text(below, NORMAL, Anchor::Middle, &format!("depth from the face around the opening, {}", unit.name));
    let beside = Spot::new(LEFT + 4.0, 0.5 * (top + bottom));
    let text = format!("least height above the opening, {}", unit.name);
    sheet.text_run(beside, NORMAL, Anchor::Middle, Run::Upright, &text);
    for (answer, kind) in clearance.answers.iter().zip(KINDS.iter().cycle()) {
        let spots: Vec<Spot> = answer.curve.iter().map(|point| at(point.depth_mm, point.least_height_mm)).collect();
        sheet.run(&spots, *kind);
    }
    let body = at(clearance.depth_mm, clearance.lowest_mm);
    sheet.circle(body, 1.4, Line::Outline, Fill::White);
    sheet.text(body.by(2.2, -1.6), SMALL, Anchor::Start, "the body");
}

/// Two lines a rule, as many as find room, then the chart of the appliance.
fn table(sheet: &mut Sheet, clearance: &BodyClearance, lengths: ReportLengths, right: f64, bottom: f64) {
    let mut y = TABLE.0;
    let room = ((bottom - TABLE.0) / TABLE.1).floor().max(2.0) as usize - 1;
    let shown = clearance.answers.len().min(room.saturating_sub(1));
    for (answer, kind) in clearance.answers.iter().take(shown).zip(KINDS.iter().cycle()) {
        if !answer.curve.is_empty() {
            sheet.line(Spot::new(LEFT, y - 1.0), Spot::new(LEFT + 14.0, y - 1.0), *kind);
        }
        let origin = format!(
            "{}: {}, {} ({}; {}) – {}",
            answer.rule,
            answer.publication,
            answer.section,
            answer.jurisdiction,
            answer.edition,
            words::outcome(answer.outcome)
        );
        let start = LEFT + 17.0;
        sheet.text(Spot::new(start, y), SMALL, Anchor::Start, &fitted(&origin, right - start, SMALL));
        let numbers = fitted(&numbers(answer, lengths), right - start, SMALL);
        sheet.text(Spot::new(start, y + 3.8), SMALL, Anchor::Start, &numbers);
        y += TABLE.1;
    }
    if shown < clearance.answers.len() {
        let more = format!("and {} more rules", clearance.answers.len() - shown);
        sheet.text(Spot::new(LEFT, y), SMALL, Anchor::Start, &more);
        y += TABLE.1;
    }
    if let Some(listing) = &clearance.listing {
        let text = format!("appliance's chart: {} – {}", listing.remark, words::outcome(listing.outcome));
        sheet.text(Spot::new(LEFT, y), SMALL, Anchor::Start, &fitted(&text, right - LEFT, SMALL));
    }
}

/// The numbers of a rule in one line; why there are none where it does not count.
fn numbers(answer: &BodyClearanceAnswer, lengths: ReportLengths) -> String {
    let number = |name: &str, value: Option<f64>| value.map(|value_mm| format!("{name} {}", lengths.full(value_mm)));
    let parts = [
        number("required", answer.required_mm),
        number("actual", answer.actual_mm),
        number("greatest depth at this height", answer.greatest_depth_mm),
        number("least height at this depth", answer.least_height_mm),
    ];
    let parts: Vec<String> = parts.into_iter().flatten().collect();
    if parts.is_empty() { answer.remark.clone() } else { parts.join("; ") }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::setting::{Appliance, ApplianceKind, FireOpening, OutlinePart, OutlinePoint};
    use crate::site::{BodyClearanceInput, MantelRule, body_clearance};

    fn clearance(kind: ApplianceKind) -> BodyClearance {
        let corner = |out_mm, above_floor_mm| OutlinePoint { out_mm, above_floor_mm };
        let outline = vec![corner(0.0, 1200.0), corner(200.0, 1200.0), corner(200.0, 1400.0), corner(0.0, 1400.0)];
        body_clearance(&BodyClearanceInput {
            parts: vec![OutlinePart { name: "<beam>".to_owned(), left_mm: 0.0, right_mm: 1500.0, outline }],
            opening: FireOpening { left_mm: 300.0, width_mm: 900.0, top_above_floor_mm: 800.0, face_out_mm: 0.0 },
            appliance: Appliance { kind, listing: None },
            chart_datum_above_floor_mm: None,
            rules: vec![MantelRule::IrcSlope, MantelRule::NbcStep],
            own_rules: vec![],
        })
        .unwrap()
    }

    #[test]
    fn every_rule_has_its_curve_its_edition_and_the_sheet_its_caution() {
        let found = clearance(ApplianceKind::MasonryFireplace);
        let svg = clearance_svg(&found, ReportLengths::Metric);
        assert_eq!(svg.lines().filter(|line| line.starts_with("<path") && line.matches('L').count() > 20).count(), 2);
        assert!(svg.contains("R1001.11 exception 4") && svg.contains("9.22.9.3") && svg.contains("Local law"));
        assert!(svg.contains("required 304.8 mm; actual 400 mm; least height at this depth 304.8 mm"));
        assert!(clearance_svg(&found, ReportLengths::Inches).contains("least height above the opening, in"));
    }

    #[test]
    fn without_a_rule_that_counts_the_sheet_says_why() {
        let svg = clearance_svg(&clearance(ApplianceKind::ElectricUnit), ReportLengths::Metric);
        assert!(svg.contains("Together: not determined.") && svg.contains("was not given – not determined"));
        assert!(!svg.contains("NaN") && !svg.contains("– met"));
    }

    #[test]
    fn more_rules_than_lines_are_counted() {
        let mut found = clearance(ApplianceKind::MasonryFireplace);
        let one = found.answers[0].clone();
        found.answers.extend(core::iter::repeat_n(one, 30));
        assert!(clearance_svg(&found, ReportLengths::Metric).contains(" more rules"));
    }
}
