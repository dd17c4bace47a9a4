//! Movement through the year, as a sheet: moisture of the room above, change of every panel's width below.

use super::svg::{Anchor, Fill, LARGE, Line, NORMAL, Paper, Run, SMALL, Scale, Sheet, Spot, fitted};
use super::text::fixed;
use crate::movement::{PanelYear, YearlyMovement};
use crate::plan::ReportLengths;
use crate::units::factor::INCH_MM;

/// Margin of the sheet, mm.
const MARGIN: f64 = 10.0;
/// Left edge of both charts, mm.
const LEFT: f64 = 32.0;
/// Room on the right for the numbers of the curves, mm.
const RIGHT: f64 = 30.0;
/// Upper and lower edge of the chart of moisture, mm.
const MOISTURE: (f64, f64) = (40.0, 92.0);
/// Upper and lower edge of the chart of widths, mm.
const WIDTHS: (f64, f64) = (114.0, 196.0);
/// First line of the table, mm.
const TABLE: f64 = 214.0;
/// Height of a line of the table and least distance of two numbers, mm.
const ROW: f64 = 5.0;
/// Least distance between the numbers of two curves, mm.
const APART: f64 = 3.2;
/// Initials of the months.
const MONTHS: [&str; 12] = ["J", "F", "M", "A", "M", "J", "J", "A", "S", "O", "N", "D"];
/// Kinds of lines, so that curves that cross can be told apart; the numbers at their ends say which is which.
const KINDS: [Line; 4] = [Line::Outline, Line::Hidden, Line::Centre, Line::Phantom];
/// The movement of a body's panels through the year as an SVG sheet: A4 where lengths are metric, US Letter where in inches.
///
/// Above, the moisture content that the wood comes to in each month; below, the change of each panel's width since it was made,
/// with the worst month marked, and a table. Panels that find no room in the table are counted in its last line.
pub fn movement_svg(year: &YearlyMovement, lengths: ReportLengths) -> String {
    let (paper, unit) = match lengths {
        ReportLengths::Metric => (Paper::A4, Unit { name: "mm", per_mm: 1.0, decimals: 2 }),
        ReportLengths::Inches => (Paper::Letter, Unit { name: "in", per_mm: 1.0 / INCH_MM, decimals: 3 }),
    };
    let (width, height) = paper.size_mm();
    let description =
        "Two charts over twelve months: moisture content of wood in the room, and change of each panel's width.";
    let mut sheet = Sheet::new(paper, "Movement through the year", description);
    let (outer, inner) = (Spot::new(MARGIN, MARGIN), Spot::new(width - MARGIN, height - MARGIN));
    sheet.rectangle(outer, inner, Line::Outline, Fill::Nothing);
    sheet.heading(Spot::new(16.0, 21.0), LARGE, "Movement through the year");
    sheet.text(Spot::new(16.0, 28.0), SMALL, Anchor::Start, &worst(year, unit));

    let right = width - RIGHT;
    let moisture: Vec<f64> = year.climate.months.iter().map(|month| month.moisture_pct).collect();
    let chart = Chart { left: LEFT, right, edges: MOISTURE, scale: Scale::of(&moisture) };
    chart.frame(&mut sheet, "Moisture content of the wood, %");
    chart.curve(&mut sheet, &moisture, Line::Outline);

    let curves: Vec<Vec<f64>> = year.panels.iter().map(|panel| unit.changes(panel)).collect();
    // Zero is the width as made and always on the scale.
    let all: Vec<f64> = curves.iter().flatten().copied().chain([0.0]).collect();
    let chart = Chart { left: LEFT, right, edges: WIDTHS, scale: Scale::of(&all) };
    chart.frame(&mut sheet, &format!("Change of width since it was made, {}", unit.name));
    sheet.line(chart.at(0, 0.0), Spot::new(right, chart.at(0, 0.0).y), Line::Behind);
    for ((curve, panel), kind) in curves.iter().zip(&year.panels).zip(KINDS.iter().cycle()) {
        chart.curve(&mut sheet, curve, *kind);
        let month = (panel.worst_month as usize).saturating_sub(1);
        sheet.circle(chart.at(month, panel.worst_mm * unit.per_mm), 1.1, Line::Thin, Fill::White);
    }
    chart.numbers(&mut sheet, &curves);
    table(&mut sheet, &year.panels, unit, (16.0, width - 16.0), height - MARGIN - 5.0);
    sheet.finish()
}

/// Unit of lengths on the sheet.
#[derive(Clone, Copy)]
struct Unit {
    name: &'static str,
    per_mm: f64,
    decimals: usize,
}

impl Unit {
    fn changes(self, panel: &PanelYear) -> Vec<f64> {
        panel.months.iter().map(|month| month.width_change_mm * self.per_mm).collect()
    }

    /// A change with its sign.
    fn signed(self, change_mm: f64) -> String {
        let text = fixed(change_mm * self.per_mm, self.decimals);
        if change_mm > 0.0 && text != "0" { format!("+{text}") } else { text }
    }
}

fn worst(year: &YearlyMovement, unit: Unit) -> String {
    let (panel, change) = (fitted(&year.worst_panel, 60.0, SMALL), unit.signed(year.worst_mm));
    let month = month_name(year.worst_month);
    format!("Greatest change: {panel}, {change} {} in {month}. Open circles: the worst month of each panel.", unit.name)
}

/// Name of a month, 1 to 12.
const fn month_name(month: u32) -> &'static str {
    match month {
        1 => "January",
        2 => "February",
        3 => "March",
        4 => "April",
        5 => "May",
        6 => "June",
        7 => "July",
        8 => "August",
        9 => "September",
        10 => "October",
        11 => "November",
        12 => "December",
        _ => "–",
    }
}

/// A chart over twelve months.
struct Chart {
    left: f64,
    right: f64,
    /// Upper and lower edge.
    edges: (f64, f64),
    scale: Scale,
}

impl Chart {
    /// The place of a value in a month, counted from zero.
    fn at(&self, month: usize, value: f64) -> Spot {
        let (top, bottom) = self.edges;
        let share = (value - self.scale.low) / (self.scale.high() - self.scale.low);
        let x = self.left + (self.right - self.left) * month as f64 / (MONTHS.len() - 1) as f64;
        Spot::new(x, bottom + (top - bottom) * share)
    }

    fn frame(&self, sheet: &mut Sheet, title: &str) {
        let (top, bottom) = self.edges;
        sheet.rectangle(Spot::new(self.left, top), Spot::new(self.right, bottom), Line::Thin, Fill::Nothing);
        sheet.text(Spot::new(self.left, top - 3.0), NORMAL, Anchor::Start, title);
        for step in 0..=self.scale.count {
            let value = self.scale.low + f64::from(step) * self.scale.step;
            let y = self.at(0, value).y;
            sheet.line(Spot::new(self.left, y), Spot::new(self.right, y), Line::Behind);
            let text = fixed(value, 3);
            sheet.text_run(Spot::new(self.left - 2.0, y + 0.9), SMALL, Anchor::End, Run::Level, &text);
        }
        for (month, initial) in MONTHS.iter().enumerate() {
            let x = self.at(month, self.scale.low).x;
            sheet.line(Spot::new(x, bottom), Spot::new(x, bottom + 1.2), Line::Thin);
            sheet.text(Spot::new(x, bottom + 4.6), SMALL, Anchor::Middle, initial);
        }
    }

    fn curve(&self, sheet: &mut Sheet, values: &[f64], line: Line) {
        let spots: Vec<Spot> =
            values.iter().take(MONTHS.len()).enumerate().map(|(k, value)| self.at(k, *value)).collect();
        sheet.run(&spots, line);
    }

    /// The number of each curve beside its end, pushed apart where ends lie close together.
    fn numbers(&self, sheet: &mut Sheet, curves: &[Vec<f64>]) {
        let (top, bottom) = self.edges;
        let end = |curve: &Vec<f64>| {
            Some(self.at(MONTHS.len() - 1, *curve.get(MONTHS.len() - 1)?)).filter(|end| end.y.is_finite())
        };
        let mut ends: Vec<(usize, Spot)> =
            curves.iter().enumerate().filter_map(|(k, curve)| Some((k + 1, end(curve)?))).collect();
        ends.sort_by(|one, other| one.1.y.total_cmp(&other.1.y).then(one.0.cmp(&other.0)));
        let mut free = top - APART;
        for (number, end) in ends {
            let y = end.y.max(free);
            // Below the chart the table says the rest.
            if y > bottom + 10.0 {
                break;
            }
            sheet.line(end.by(0.8, 0.0), Spot::new(self.right + 4.0, y), Line::Thin);
            sheet.text(Spot::new(self.right + 5.0, y + 0.9), SMALL, Anchor::Start, &number.to_string());
            free = y + APART;
        }
    }
}

/// One line a panel, as many as find room.
fn table(sheet: &mut Sheet, panels: &[PanelYear], unit: Unit, (left, right): (f64, f64), bottom: f64) {
    let columns = [right - 78.0, right - 42.0, right];
    let heads = ["narrowest", "widest", "through the year"];
    sheet.text(Spot::new(left, TABLE), SMALL, Anchor::Start, "panel");
    for (x, head) in columns.iter().zip(heads) {
        sheet.text(Spot::new(*x, TABLE), SMALL, Anchor::End, &format!("{head}, {}", unit.name));
    }
    sheet.line(Spot::new(left, TABLE + 1.5), Spot::new(right, TABLE + 1.5), Line::Thin);
    let room = ((bottom - TABLE) / ROW).floor().max(1.0) as usize;
    let shown = if panels.len() > room { room.saturating_sub(1) } else { panels.len() };
    let mut y = TABLE + ROW + 0.5;
    for (k, panel) in panels.iter().take(shown).enumerate() {
        let name = fitted(&format!("{}  {}", k + 1, panel.id), columns[0] - left - 30.0, SMALL);
        sheet.text(Spot::new(left, y), SMALL, Anchor::Start, &name);
        let at = |change_mm: f64, month: u32| {
            format!("{} ({})", unit.signed(change_mm), month_name(month).get(..3).unwrap_or("–"))
        };
        let cells = [
            at(panel.narrowest_mm, panel.narrowest_month),
            at(panel.widest_mm, panel.widest_month),
            fixed(panel.range_mm * unit.per_mm, unit.decimals),
        ];
        for (x, cell) in columns.iter().zip(&cells) {
            sheet.text(Spot::new(*x, y), SMALL, Anchor::End, cell);
        }
        y += ROW;
    }
    if shown < panels.len() {
        sheet.text(Spot::new(left, y), SMALL, Anchor::Start, &format!("and {} more", panels.len() - shown));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::movement::{BoardCut, MovingSpecies, MovingWood, YearPanel, YearlyMovementInput, yearly_movement};
    use crate::wood::{IndoorMonth, IndoorYear, YearClimate};

    fn year(count: usize) -> YearlyMovement {
        let humidity = [25.0, 25.0, 30.0, 35.0, 45.0, 55.0, 60.0, 60.0, 50.0, 40.0, 30.0, 25.0];
        let months = humidity.map(|relative_humidity_pct| IndoorMonth { temperature_c: 21.1, relative_humidity_pct });
        let panel = |k: usize| YearPanel {
            id: format!("panel <{k}>"),
            wood: MovingWood::Species(MovingSpecies { name: "white ash".to_owned() }),
            cut: BoardCut::FlatSawn,
            ring_angle_deg: None,
            width_mm: 150.0 + 10.0 * k as f64,
            thickness_mm: 20.0,
            made_moisture_pct: 8.0,
        };
        let climate = YearClimate::Indoor(IndoorYear { months: months.to_vec() });
        yearly_movement(&YearlyMovementInput { climate, panels: (0..count).map(panel).collect() }).expect("allowed")
    }

    #[test]
    fn the_sheet_says_what_the_numbers_say() {
        let year = year(3);
        let svg = movement_svg(&year, ReportLengths::Metric);
        assert!(svg.contains("width=\"210mm\"") && svg.ends_with("</svg>\n"));
        assert!(svg.contains("panel &lt;2&gt;") && !svg.contains("panel <2>"));
        assert!(
            svg.contains(&format!(
                "{} mm in July",
                Unit { name: "mm", per_mm: 1.0, decimals: 2 }.signed(year.worst_mm)
            ))
        );
        // Every panel's curve and the one of moisture have a spot for each month.
        let curves = svg.lines().filter(|line| line.starts_with("<path") && line.matches('L').count() == 11);
        assert_eq!(curves.count(), 4);
        assert_eq!(svg, movement_svg(&year, ReportLengths::Metric));
    }

    #[test]
    fn inches_are_drawn_on_a_letter() {
        let svg = movement_svg(&year(1), ReportLengths::Inches);
        assert!(svg.contains("width=\"215.9mm\"") && svg.contains("narrowest, in"));
    }

    #[test]
    fn more_panels_than_lines_are_counted() {
        let svg = movement_svg(&year(60), ReportLengths::Metric);
        let shown = (0..60).filter(|k| svg.contains(&format!("  panel &lt;{k}&gt;"))).count();
        assert!(shown > 5 && shown < 60 && svg.contains(&format!("and {} more", 60 - shown)));
    }

    #[test]
    fn a_year_without_numbers_is_drawn_without_curves() {
        let mut empty = year(2);
        empty.climate.months.clear();
        empty.panels[0].months.clear();
        for month in &mut empty.panels[1].months {
            month.width_change_mm = f64::NAN;
        }
        empty.panels[1].worst_mm = f64::INFINITY;
        empty.panels[1].worst_month = 99;
        empty.worst_mm = f64::NAN;
        let svg = movement_svg(&empty, ReportLengths::Metric);
        assert!(!svg.contains("NaN") && !svg.contains("inf") && svg.contains("Movement through the year"));
        let mut huge = year(1);
        huge.panels[0].months[0].width_change_mm = f64::MAX;
        huge.panels[0].months[1].width_change_mm = f64::MIN;
        assert!(!movement_svg(&huge, ReportLengths::Inches).contains("NaN"));
    }
}
