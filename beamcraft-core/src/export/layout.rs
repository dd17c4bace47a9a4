//! What every sheet of panels has: its frame, a scale of the usual ones, a title with a bar to measure a copy by.

use super::drawn::Drawn;
use super::svg::{Anchor, Fill, LARGE, Line, NORMAL, Paper, SMALL, Sheet, Spot, fitted};
use super::text::{fixed, shortened};
use crate::plan::ReportLengths;

/// Margin of a sheet, mm.
const MARGIN: f64 = 10.0;
/// Longest name in the title of the document.
const MOST_TITLE: usize = 120;
/// Height of the title, mm.
pub(super) const TITLE: f64 = 27.0;

/// A rectangle of the paper.
#[derive(Clone, Copy)]
pub(super) struct Zone {
    pub(super) left: f64,
    pub(super) top: f64,
    pub(super) right: f64,
    pub(super) bottom: f64,
}

impl Zone {
    pub(super) const fn width(self) -> f64 {
        self.right - self.left
    }

    pub(super) const fn height(self) -> f64 {
        self.bottom - self.top
    }
}

/// Numbers N of the scales 1:N: those of ISO 5455, and between 2 and 10 the whole and half steps that fill a sheet.
const SCALES: [f64; 21] = [
    0.1, 0.2, 0.5, 1.0, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0, 100.0, 200.0,
    500.0,
];

/// A scale 1:N.
#[derive(Clone, Copy)]
pub(super) struct Scale {
    ratio: f64,
}

impl Scale {
    /// The largest scale at which something of a size fits some paper, both width and height in mm.
    pub(super) fn fitting((width_mm, height_mm): (f64, f64), (width, height): (f64, f64)) -> Self {
        let fits = |ratio: &f64| width_mm / ratio <= width && height_mm / ratio <= height;
        let least = (width_mm / width).max(height_mm / height);
        Self { ratio: SCALES.into_iter().find(fits).unwrap_or(least) }
    }

    /// Millimetres of paper for one of the body.
    pub(super) const fn of_paper(self) -> f64 {
        1.0 / self.ratio
    }

    /// The scale as it is written: `1:2`, `5:1`.
    pub(super) fn text(self) -> String {
        if self.ratio >= 1.0 {
            format!("1:{}", fixed(self.ratio, 1))
        } else {
            format!("{}:1", fixed(1.0 / self.ratio, 1))
        }
    }
}

/// An empty sheet of the paper that goes with the lengths of a job, with a frame around the zone that is given back.
pub(super) fn framed(job: Drawn<'_>, what: &str, description: &str) -> (Sheet, Zone) {
    let paper = match job.lengths {
        ReportLengths::Metric => Paper::A4,
        ReportLengths::Inches => Paper::Letter,
    };
    let (width, height) = paper.size_mm();
    let title = format!("{what}: {}", shortened(job.name, MOST_TITLE));
    let mut sheet = Sheet::new(paper, &title, description);
    let zone = Zone { left: MARGIN, top: MARGIN, right: width - MARGIN, bottom: height - MARGIN };
    sheet.rectangle(Spot::new(zone.left, zone.top), Spot::new(zone.right, zone.bottom), Line::Outline, Fill::Nothing);
    (sheet, zone)
}

/// What stands at the foot of a sheet.
pub(super) struct Title<'a> {
    /// What the sheet shows.
    pub(super) what: &'a str,
    /// Its scale, where it has one.
    pub(super) scale: Option<Scale>,
    /// A last line: where the sheet's word ends.
    pub(super) remark: &'a str,
}

impl Title<'_> {
    /// Draws the title in the lowest [`TITLE`] millimetres of a zone.
    pub(super) fn draw(&self, sheet: &mut Sheet, job: Drawn<'_>, zone: Zone) {
        let (top, left, lengths) = (zone.bottom - TITLE, zone.left + 3.0, job.lengths);
        sheet.line(Spot::new(zone.left, top), Spot::new(zone.right, top), Line::Outline);
        let bar = zone.right - 58.0;
        let name = if job.name.is_empty() { "Hollow beam" } else { job.name };
        sheet.heading(Spot::new(left, top + 7.0), LARGE, &fitted(name, bar - left - 4.0, 1.1 * LARGE));
        sheet.text(Spot::new(left, top + 13.0), NORMAL, Anchor::Start, self.what);
        let size = match self.scale {
            Some(scale) => format!("{} Scale {} when printed at full size.", lengths.described(), scale.text()),
            None => format!("{} Not to scale.", lengths.described()),
        };
        for (at, line) in [size.as_str(), self.remark].into_iter().enumerate() {
            sheet.text(Spot::new(left, top + 18.0 + 4.5 * at as f64), SMALL, Anchor::Start, line);
        }
        if let Some(scale) = self.scale {
            draw_bar(sheet, lengths, scale.of_paper(), Spot::new(bar, top + 7.0));
        }
    }
}

/// A bar of a round length, to see at which size a copy was printed.
fn draw_bar(sheet: &mut Sheet, lengths: ReportLengths, scale: f64, at: Spot) {
    const METRIC: [f64; 12] = [2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1e3, 2e3, 5e3, 1e4];
    const INCHES: [f64; 12] = [0.125, 0.25, 0.5, 1.0, 2.0, 4.0, 6.0, 12.0, 24.0, 60.0, 120.0, 240.0];
    const LONGEST: f64 = 46.0;
    let fits = |length_mm: &f64| length_mm * scale <= LONGEST;
    let length_mm = match lengths {
        ReportLengths::Metric => METRIC.into_iter().rev().find(fits),
        ReportLengths::Inches => INCHES.into_iter().map(|length| 25.4 * length).rev().find(fits),
    };
    let Some(length_mm) = length_mm else { return };
    let end = at.by(length_mm * scale, 0.0);
    sheet.line(at, end, Line::Outline);
    for place in [at, at.by(0.5 * length_mm * scale, 0.0), end] {
        sheet.line(place.by(0.0, -1.2), place.by(0.0, 1.2), Line::Thin);
    }
    sheet.text(at.by(0.0, -2.2), SMALL, Anchor::Middle, "0");
    sheet.text(end.by(0.0, -2.2), SMALL, Anchor::Middle, &lengths.full(length_mm));
}
