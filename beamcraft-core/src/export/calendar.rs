//! The order of work as a sheet: a bar a task over days, hands-on time black, waits open, the chain that sets the end marked.

use super::svg::{Anchor, Fill, LARGE, Line, Paper, SMALL, Sheet, Spot, fitted};
use super::text::fixed;
use crate::plan::ReportLengths;
use crate::work::{DoneTask, FigureBasis, OnCriticalChain, WorkCalendar};

/// Margin of the sheet, mm.
const MARGIN: f64 = 10.0;
/// Left edge of the bars; names stand before it, mm.
const LEFT: f64 = 74.0;
/// Top of the first bar, mm.
const TOP: f64 = 46.0;
/// Greatest height of a row, mm.
const ROW: f64 = 7.0;
/// Least height of a row that can be read, mm.
const LEAST_ROW: f64 = 3.4;
/// Hours of a day.
const DAY_H: f64 = 24.0;
/// Most lines of days.
const MOST_DAYS: f64 = 28.0;

/// The tasks of a calendar as an SVG sheet: A4 where lengths are metric, US Letter where in inches.
///
/// Each task has a row: black while hands work, open while it waits; a small square marks the chain that sets the end, a star
/// hours that are assumed. Tasks that find no room are counted in the last line.
pub fn calendar_svg(calendar: &WorkCalendar, lengths: ReportLengths) -> String {
    let paper = match lengths {
        ReportLengths::Metric => Paper::A4,
        ReportLengths::Inches => Paper::Letter,
    };
    let (width, height) = paper.size_mm();
    let mut sheet =
        Sheet::new(paper, "Order of work", "Tasks as bars over days, with waits and the chain that sets the end.");
    sheet.rectangle(
        Spot::new(MARGIN, MARGIN),
        Spot::new(width - MARGIN, height - MARGIN),
        Line::Outline,
        Fill::Nothing,
    );
    sheet.heading(Spot::new(16.0, 21.0), LARGE, "Order of work");
    let says = format!(
        "From {}, done {}. Hands-on: {} h. Day 1 is the first day.",
        calendar.first_day,
        calendar.done.replace('T', " "),
        fixed(calendar.work_h, 1),
    );
    sheet.text(Spot::new(16.0, 28.0), SMALL, Anchor::Start, &says);
    let key = "Black: hands work. Open: it waits. Square: sets the end. Star: hours are assumed.";
    sheet.text(Spot::new(16.0, 33.0), SMALL, Anchor::Start, key);

    let bottom = height - MARGIN - 8.0;
    let room = ((bottom - TOP) / LEAST_ROW).floor() as usize;
    let shown = if calendar.tasks.len() > room { room.saturating_sub(1) } else { calendar.tasks.len() };
    let row = ((bottom - TOP) / shown.max(1) as f64).min(ROW);
    let chart = Chart::of(calendar, width - MARGIN - 6.0);
    chart.days(&mut sheet, TOP + row * shown as f64);
    for (k, task) in calendar.tasks.iter().take(shown).enumerate() {
        chart.task(&mut sheet, task, TOP + row * k as f64, row);
    }
    if shown < calendar.tasks.len() {
        let more = format!("and {} more", calendar.tasks.len() - shown);
        sheet.text(Spot::new(16.0, TOP + row * shown as f64 + 3.0), SMALL, Anchor::Start, &more);
    }
    sheet.finish()
}

/// Hours to places on the sheet.
struct Chart {
    first_h: f64,
    last_h: f64,
    right: f64,
}

impl Chart {
    fn of(calendar: &WorkCalendar, right: f64) -> Self {
        let finite = |value: f64| if value.is_finite() { value } else { 0.0 };
        let first = calendar.tasks.iter().map(|task| finite(task.start_h)).fold(f64::MAX, f64::min);
        let first_h = (first.min(finite(calendar.done_h)) / DAY_H).floor() * DAY_H;
        let last_h = ((finite(calendar.done_h) / DAY_H).ceil() * DAY_H).max(first_h + DAY_H);
        Self { first_h, last_h, right }
    }

    fn x(&self, hours: f64) -> f64 {
        LEFT + (self.right - LEFT) * ((hours - self.first_h) / (self.last_h - self.first_h)).clamp(0.0, 1.0)
    }

    /// A line at midnight of every day, or of every so many.
    fn days(&self, sheet: &mut Sheet, bottom: f64) {
        let days = (self.last_h - self.first_h) / DAY_H;
        let step = (days / MOST_DAYS).ceil().max(1.0);
        let mut day = 0.0;
        while day <= days {
            let x = self.x(self.first_h + day * DAY_H);
            sheet.line(Spot::new(x, TOP - 2.0), Spot::new(x, bottom), Line::Behind);
            sheet.text(Spot::new(x, TOP - 3.2), SMALL, Anchor::Start, &fixed(self.first_h / DAY_H + day + 1.0, 0));
            day += step;
        }
        sheet.text(Spot::new(LEFT - 3.0, TOP - 3.2), SMALL, Anchor::End, "day");
    }

    fn task(&self, sheet: &mut Sheet, task: &DoneTask, top: f64, row: f64) {
        let middle = top + row * 0.5;
        let star = if task.basis == FigureBasis::Assumed { " *" } else { "" };
        let name = if task.name.is_empty() { &task.id } else { &task.name };
        let text = format!("{}{star}", fitted(name, LEFT - 24.0, SMALL));
        sheet.text(Spot::new(19.0, middle + 0.9), SMALL, Anchor::Start, &text);
        if task.chain == OnCriticalChain::Critical {
            sheet.rectangle(Spot::new(15.0, middle - 0.9), Spot::new(16.8, middle + 0.9), Line::None, Fill::Black);
        }
        let half = row * 0.28;
        let (start, end, ready) = (self.x(task.start_h), self.x(task.end_h), self.x(task.ready_h));
        let bar = |from: f64, to: f64| (Spot::new(from, middle - half), Spot::new(to, middle + half));
        if ready > end {
            let (from, to) = bar(end, ready);
            sheet.rectangle(from, to, Line::Thin, Fill::White);
        }
        // A task of an hour stays visible on a chart of weeks.
        let (from, to) = bar(start, end.max(start + 0.4));
        sheet.rectangle(from, to, Line::None, Fill::Black);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::work::{WorkCalendarInput, WorkDay, WorkTask, WorkWeek, work_calendar};

    fn calendar(count: usize) -> WorkCalendar {
        let task = |k: usize| WorkTask {
            id: format!("t{k}"),
            name: format!("task <{k}>"),
            work_h: 2.0,
            wait_h: if k.is_multiple_of(2) { 12.0 } else { 0.0 },
            makers: 1,
            after: if k == 0 { vec![] } else { vec![format!("t{}", k - 1)] },
            basis: if k == 1 { FigureBasis::Assumed } else { FigureBasis::Own },
            reason: String::new(),
        };
        let week = WorkWeek {
            start_date: "2026-11-25".to_owned(),
            opens_h: 8.0,
            hours_a_day_h: 8.0,
            work_days: vec![WorkDay::Monday, WorkDay::Wednesday],
            days_off: vec![],
            makers: None,
        };
        work_calendar(&WorkCalendarInput { week, tasks: (0..count).map(task).collect() }).expect("a calendar")
    }

    #[test]
    fn the_sheet_says_when_it_is_done_and_what_is_assumed() {
        let found = calendar(3);
        let svg = calendar_svg(&found, ReportLengths::Metric);
        assert!(svg.contains("width=\"210mm\"") && svg.ends_with("</svg>\n"));
        assert!(svg.contains(&found.done.replace('T', " ")), "{svg}");
        assert!(svg.contains("task &lt;1&gt; *") && !svg.contains("task &lt;2&gt; *"));
        assert_eq!(svg, calendar_svg(&found, ReportLengths::Metric));
    }

    #[test]
    fn more_tasks_than_rows_are_counted() {
        let svg = calendar_svg(&calendar(300), ReportLengths::Inches);
        let shown = (0..300).filter(|k| svg.contains(&format!("task &lt;{k}&gt;"))).count();
        assert!(shown > 40 && shown < 300 && svg.contains(&format!("and {} more", 300 - shown)), "{shown}");
    }

    #[test]
    fn numbers_that_are_none_do_not_reach_the_sheet() {
        let mut broken = calendar(2);
        (broken.done_h, broken.work_h, broken.tasks[0].start_h) = (f64::NAN, f64::INFINITY, f64::NEG_INFINITY);
        broken.tasks[1].ready_h = f64::NAN;
        let svg = calendar_svg(&broken, ReportLengths::Metric);
        assert!(!svg.contains("NaN\"") && !svg.contains("inf\""), "{svg}");
        broken.tasks.clear();
        assert!(calendar_svg(&broken, ReportLengths::Metric).contains("Order of work"));
    }
}
