//! A group of fasteners with the force on each, as a sheet.

use super::svg::{Anchor, Fill, LARGE, Line, Paper, SMALL, Sheet, Spot};
use super::text::{fixed, significant};
use crate::fasten::{FastenerGroup, FastenerGroupInput, FastenerShare, StripContact};
use crate::numeric::real::sin_cos_deg;
use crate::plan::ReportLengths;

/// Margin of the sheet, mm.
const MARGIN: f64 = 10.0;
/// Upper left corner and height of the view, mm.
const VIEW: (Spot, f64) = (Spot::new(20.0, 42.0), 130.0);
/// Room around the fasteners for their arrows, mm.
const ROOM: f64 = 24.0;
/// Length of the longest arrow, mm.
const ARROW: f64 = 20.0;
/// Shortest arrow that still shows a direction, mm.
const SHORTEST: f64 = 1.5;
/// First line and height of a line of the table, mm.
const TABLE: (f64, f64) = (188.0, 4.6);
/// Columns of the table from the left edge of the view, mm.
const COLUMNS: [f64; 6] = [8.0, 34.0, 62.0, 94.0, 124.0, 158.0];

/// A group of fasteners seen from the front as an SVG sheet: A4 where lengths are metric, US Letter where in inches.
///
/// Where each stands to scale, the lateral force on it as an arrow, the load where it acts, the centroid, and a table of
/// the shares; pulls along the axes stand in the table. `group` must be what
/// [`fastener_group`](crate::fasten::fastener_group) gave for `input`. A load beyond the edge of the view stands at that
/// edge, with its place in words; fasteners without room in the table are counted in its last line.
pub fn fastener_group_svg(input: &FastenerGroupInput, group: &FastenerGroup, lengths: ReportLengths) -> String {
    let paper = match lengths {
        ReportLengths::Metric => Paper::A4,
        ReportLengths::Inches => Paper::Letter,
    };
    let (width, height) = paper.size_mm();
    let description = "Fasteners of a group seen from the front, with the force on each and a table of the forces.";
    let mut sheet = Sheet::new(paper, "Group of fasteners", description);
    let (outer, inner) = (Spot::new(MARGIN, MARGIN), Spot::new(width - MARGIN, height - MARGIN));
    sheet.rectangle(outer, inner, Line::Outline, Fill::Nothing);
    sheet.heading(Spot::new(16.0, 21.0), LARGE, "Group of fasteners");
    sheet.text(Spot::new(16.0, 27.0), SMALL, Anchor::Start, &headline(group));
    sheet.text(Spot::new(16.0, 32.0), SMALL, Anchor::Start, &strip(group));
    let view = View::of(input, group, width - 2.0 * VIEW.0.x);
    view.draw(&mut sheet, input, group, lengths);
    table(&mut sheet, &group.shares, lengths, height - MARGIN - 9.0);
    let caution = "Caution: equal fasteners, a stiff strip, elastic method. An engineer in charge decides.";
    sheet.text(Spot::new(16.0, height - MARGIN - 3.0), SMALL, Anchor::Start, caution);
    sheet.finish()
}

fn headline(group: &FastenerGroup) -> String {
    let most = |index: u32, value_n: f64| format!("{} N on number {}", significant(value_n), index + 1);
    let lateral = most(group.most_lateral, group.most_lateral_n);
    if group.most_pull_n > 0.0 {
        format!("Most lateral force {lateral}; most pull {}.", most(group.most_pull, group.most_pull_n))
    } else {
        format!("Most lateral force {lateral}.")
    }
}

fn strip(group: &FastenerGroup) -> String {
    match group.contact {
        StripContact::Unloaded => "No pull and no tipping.".to_owned(),
        StripContact::EdgePresses => {
            format!("The lower edge presses on the wall with {} N.", significant(group.prying_n))
        }
        StripContact::LiftsOff => "The strip lifts off: the fasteners carry the pull alone.".to_owned(),
    }
}

/// From the group's millimetres to the sheet's.
struct View {
    middle: Spot,
    /// Centre of what is drawn, mm of the group.
    centre: (f64, f64),
    scale: f64,
    /// Half the width and height of the view.
    half: (f64, f64),
    /// Sheet millimetres of arrow for a newton.
    per_n: f64,
}

impl View {
    fn of(input: &FastenerGroupInput, group: &FastenerGroup, width: f64) -> Self {
        let bounds = |value: fn(&FastenerShare) -> f64| {
            let values = group.shares.iter().map(value);
            let (low, high) =
                values.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| (low.min(value), high.max(value)));
            (0.5 * (low + high), high - low)
        };
        let ((x, wide), (y, tall)) = (bounds(|share| share.x_mm), bounds(|share| share.y_mm));
        let half = (0.5 * width, 0.5 * VIEW.1);
        let fit = |room: f64, size: f64| if size > 0.0 { (room - 2.0 * ROOM) / size } else { f64::INFINITY };
        let scale = fit(width, wide).min(fit(VIEW.1, tall)).min(2.0);
        let force = (input.force_x_n * input.force_x_n + input.force_y_n * input.force_y_n).sqrt();
        let most = group.most_lateral_n.max(if force > 0.0 { f64::MIN_POSITIVE } else { 0.0 });
        Self {
            middle: VIEW.0.by(half.0, half.1),
            centre: (x, y),
            scale,
            half,
            per_n: if most > 0.0 { ARROW / most } else { 0.0 },
        }
    }

    /// Place on the sheet; what lies beyond the view stands at its edge.
    fn spot(&self, x_mm: f64, y_mm: f64) -> Spot {
        let within = |value: f64, half: f64| value.clamp(4.0 - half, half - 4.0);
        let (x, y) = ((x_mm - self.centre.0) * self.scale, (y_mm - self.centre.1) * self.scale);
        self.middle.by(within(x, self.half.0), -within(y, self.half.1))
    }

    fn draw(&self, sheet: &mut Sheet, input: &FastenerGroupInput, group: &FastenerGroup, lengths: ReportLengths) {
        let (corner, other) = (self.middle.by(-self.half.0, -self.half.1), self.middle.by(self.half.0, self.half.1));
        sheet.rectangle(corner, other, Line::Behind, Fill::Nothing);
        for (share, number) in group.shares.iter().zip(1_usize..) {
            let spot = self.spot(share.x_mm, share.y_mm);
            let length = share.lateral_n * self.per_n;
            if length >= SHORTEST {
                let (sine, cosine) = sin_cos_deg(share.direction_deg);
                let tip = spot.by(cosine * length, -sine * length);
                sheet.line(spot, tip, Line::Outline);
                sheet.arrowhead(tip, spot, 2.5_f64.min(length));
            }
            sheet.circle(spot, 1.0, Line::Thin, Fill::White);
            // Numbers stand on the side away from the arrow.
            let away = if share.force_y_n > 0.0 { 4.0 } else { -4.0 };
            sheet.balloon(spot.by(-4.0, away), spot, number);
        }
        sheet.centre_of_gravity(self.spot(group.centroid_x_mm, group.centroid_y_mm), 1.6);
        self.load(sheet, input, lengths);
    }

    fn load(&self, sheet: &mut Sheet, input: &FastenerGroupInput, lengths: ReportLengths) {
        let force_n = (input.force_x_n * input.force_x_n + input.force_y_n * input.force_y_n).sqrt();
        if force_n > 0.0 {
            let tip = self.spot(input.load_x_mm, input.load_y_mm);
            let (x, y) = (input.force_x_n / force_n, input.force_y_n / force_n);
            let tail = tip.by(-x * ARROW, y * ARROW);
            sheet.line(tail, tip, Line::Hidden);
            sheet.arrowhead(tip, tail, 3.5);
        }
        let foot = self.middle.by(-self.half.0 + 2.0, self.half.1 - 2.0);
        let mut words = format!(
            "Load (dashed) {} N at x {}, y {}",
            significant(force_n),
            lengths.full(input.load_x_mm),
            lengths.full(input.load_y_mm)
        );
        if input.moment_nmm != 0.0 {
            words.push_str(&format!("; moment {} N·m", significant(input.moment_nmm / 1_000.0)));
        }
        if input.pull_n > 0.0 || input.tipping_nmm > 0.0 {
            let tipping = significant(input.tipping_nmm / 1_000.0);
            words.push_str(&format!("; pull {} N, tipping {tipping} N·m", significant(input.pull_n)));
        }
        sheet.text(foot, SMALL, Anchor::Start, &words);
        let scale = format!("scale {} : 1", fixed(self.scale, 3));
        sheet.text(self.middle.by(self.half.0 - 2.0, self.half.1 - 2.0), SMALL, Anchor::End, &scale);
    }
}

fn table(sheet: &mut Sheet, shares: &[FastenerShare], lengths: ReportLengths, bottom: f64) {
    let row = |sheet: &mut Sheet, y: f64, cells: [&str; 6]| {
        for (cell, x) in cells.into_iter().zip(COLUMNS) {
            sheet.text(Spot::new(VIEW.0.x + x, y), SMALL, Anchor::End, cell);
        }
    };
    let (x, y) = match lengths {
        ReportLengths::Metric => ("x, mm", "y, mm"),
        // Inches carry their mark.
        ReportLengths::Inches => ("x", "y"),
    };
    row(sheet, TABLE.0, ["no.", x, y, "lateral, N", "direction", "pull, N"]);
    let line_y = TABLE.0 + 1.5;
    sheet.line(Spot::new(VIEW.0.x, line_y), Spot::new(VIEW.0.x + COLUMNS[5] + 4.0, line_y), Line::Thin);
    let most = ((bottom - TABLE.0) / TABLE.1) as usize;
    let drawn = if shares.len() > most { most.saturating_sub(1) } else { shares.len() };
    let mut y = TABLE.0;
    for (share, number) in shares.iter().take(drawn).zip(1..) {
        y += TABLE.1;
        let number = format!("{number}");
        let (at_x, at_y) = (lengths.bare(share.x_mm), lengths.bare(share.y_mm));
        let direction = format!("{}°", fixed(share.direction_deg, 1));
        row(sheet, y, [&number, &at_x, &at_y, &significant(share.lateral_n), &direction, &significant(share.pull_n)]);
    }
    if drawn < shares.len() {
        let text = format!("and {} more", shares.len() - drawn);
        sheet.text(Spot::new(VIEW.0.x, y + TABLE.1), SMALL, Anchor::Start, &text);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fasten::{FastenerPosition, fastener_group};

    fn drawn(input: &FastenerGroupInput) -> String {
        fastener_group_svg(input, &fastener_group(input).unwrap(), ReportLengths::Metric)
    }

    fn pair() -> FastenerGroupInput {
        let at = |x_mm| FastenerPosition { x_mm, y_mm: 40.0 };
        FastenerGroupInput {
            positions: vec![at(-30.0), at(30.0)],
            force_x_n: 0.0,
            force_y_n: -100.0,
            load_x_mm: 60.0,
            load_y_mm: 40.0,
            moment_nmm: 0.0,
            pull_n: 80.0,
            tipping_nmm: 500.0,
            lower_edge_y_mm: Some(0.0),
        }
    }

    #[test]
    fn every_fastener_has_an_arrow_of_its_force() {
        let svg = drawn(&pair());
        assert!(svg.starts_with("<svg") && svg.ends_with("</svg>\n"));
        assert!(svg.contains("Most lateral force 150 N on number 2"));
        // 150 N is the longest arrow, 20 mm, downwards; 50 N is a third of it, upwards; the load's is dashed.
        let view = View::of(&pair(), &fastener_group(&pair()).unwrap(), 170.0);
        let spot = view.spot(30.0, 40.0);
        let arrow =
            format!("M{} {}L{} {}", fixed(spot.x, 3), fixed(spot.y, 3), fixed(spot.x, 3), fixed(spot.y + 20.0, 3));
        assert!(svg.contains(&arrow), "{arrow}");
        let spot = view.spot(-30.0, 40.0);
        let arrow = format!("L{} {}", fixed(spot.x, 3), fixed(spot.y - 20.0 / 3.0, 3));
        assert!(svg.contains(&arrow), "{arrow}");
        assert!(svg.contains("Load (dashed) 100 N at x 60 mm, y 40 mm"));
        assert!(svg.contains("-90°") && svg.contains("An engineer in charge decides"));
    }

    #[test]
    fn a_crowd_is_counted_and_one_alone_is_drawn() {
        let row = (0_u32..200).map(|k| FastenerPosition { x_mm: f64::from(k), y_mm: 40.0 }).collect();
        let svg = drawn(&FastenerGroupInput { positions: row, ..pair() });
        assert!(svg.contains("more</text>"));
        let alone = FastenerGroupInput {
            positions: vec![FastenerPosition { x_mm: 0.0, y_mm: 0.0 }],
            force_y_n: 0.0,
            load_x_mm: 1e5,
            pull_n: 0.0,
            tipping_nmm: 0.0,
            ..pair()
        };
        let svg = drawn(&alone);
        assert!(!svg.contains("NaN") && !svg.contains("inf") && svg.contains("No pull and no tipping."));
    }
}
