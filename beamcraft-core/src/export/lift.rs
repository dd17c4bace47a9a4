//! The way onto the cleat, frame by frame.

use super::svg::{Anchor, Fill, Hatch, LARGE, Line, Paper, SMALL, Sheet, Spot, fitted, wrapped};
use super::text::fixed;
use super::words;
use crate::numeric::real::sin_cos_deg;
use crate::plan::ReportLengths;
use crate::setting::OutlinePoint;
use crate::site::{LiftFrame, LiftOn, LiftRole, LiftShape};

/// Margin of the sheet, mm.
const MARGIN: f64 = 10.0;
/// Left edge of what is written, mm.
const LEFT: f64 = 16.0;
/// Upper and lower edge of the drawing, mm.
const VIEW: (f64, f64) = (48.0, 182.0);
/// First line of the table and height of a line, mm.
const TABLE: (f64, f64) = (192.0, 4.4);
/// Most frames that are drawn one over the other.
const DRAWN: usize = 6;
/// How much of the wall and of a thing above is shown around the body, mm.
const AROUND_MM: f64 = 40.0;

/// The way of a body onto its cleat as an SVG sheet: the section past wall, cleat and things, in its place and at frames on
/// the way, with the frames as numbers; A4 where lengths are metric, US Letter where in inches.
///
/// Seen along the wall from the left, the wall on the left. What is not in line with one another is drawn over one another.
/// Without a way the body is drawn in its place, and below it what would help.
pub fn lift_svg(lift: &LiftOn, lengths: ReportLengths) -> String {
    let paper = match lengths {
        ReportLengths::Metric => Paper::A4,
        ReportLengths::Inches => Paper::Letter,
    };
    let (width, height) = paper.size_mm();
    let description = "Cross section of a body on its way onto a hanging cleat, past the wall and what is on it.";
    let mut sheet = Sheet::new(paper, "Onto the cleat", description);
    let (outer, inner) = (Spot::new(MARGIN, MARGIN), Spot::new(width - MARGIN, height - MARGIN));
    sheet.rectangle(outer, inner, Line::Outline, Fill::Nothing);
    sheet.heading(Spot::new(LEFT, 21.0), LARGE, "Onto the cleat");
    let mut notes = vec![answer(lift, lengths)];
    notes.extend(lift.cautions.iter().flat_map(|caution| wrapped(caution.text, width - 2.0 * LEFT, SMALL)));
    for (k, note) in notes.iter().enumerate() {
        sheet.text(Spot::new(LEFT, 27.5 + 4.0 * k as f64), SMALL, Anchor::Start, note);
    }
    if let Some(view) = View::of(lift, width) {
        view.draw(&mut sheet, lift);
    }
    table(&mut sheet, lift, lengths, width - LEFT, height - MARGIN - 3.0);
    sheet.finish()
}

/// Manner and numbers in one line.
fn answer(lift: &LiftOn, lengths: ReportLengths) -> String {
    let number = |name: &str, value: Option<f64>| value.map(|value_mm| format!("{name} {}", lengths.full(value_mm)));
    let parts = [
        Some(words::lift_manner(lift.manner).to_owned()),
        number("rise", lift.rise_mm),
        number("least headroom level", lift.least_headroom_level_mm),
        number("least headroom tilted", lift.least_headroom_tilted_mm),
        number("headroom missing", lift.missing_mm),
    ];
    parts.into_iter().flatten().collect::<Vec<_>>().join("; ")
}

/// Where the section lies on the sheet.
struct View {
    scale: f64,
    /// Spot of the wall's line at the lower edge of the view.
    origin: Spot,
    low_mm: f64,
    high_mm: f64,
    right_mm: f64,
}

impl View {
    fn of(lift: &LiftOn, paper_mm: f64) -> Option<Self> {
        let moving = lift.shapes.iter().filter(|shape| shape.role == LiftRole::Moves);
        let corners: Vec<OutlinePoint> = moving
            .flat_map(|shape| frames(lift).into_iter().flat_map(|frame| moved(shape, lift.pivot, &frame)))
            .collect();
        let most = |pick: fn(&OutlinePoint) -> f64| corners.iter().map(pick).reduce(f64::max);
        let low_mm = -most(|corner| -corner.above_floor_mm)? - AROUND_MM;
        let (high_mm, right_mm) =
            (most(|corner| corner.above_floor_mm)? + AROUND_MM, most(|corner| corner.out_mm)? + AROUND_MM);
        let room = (paper_mm - 2.0 * LEFT - 8.0, VIEW.1 - VIEW.0);
        let scale = (room.0 / right_mm).min(room.1 / (high_mm - low_mm));
        let is_size = scale.is_finite() && scale > 0.0;
        is_size.then_some(Self { scale, origin: Spot::new(LEFT + 8.0, VIEW.1), low_mm, high_mm, right_mm })
    }

    fn spot(&self, corner: OutlinePoint) -> Spot {
        let up = corner.above_floor_mm.clamp(self.low_mm, self.high_mm) - self.low_mm;
        self.origin.by(corner.out_mm.min(self.right_mm) * self.scale, -up * self.scale)
    }

    fn ring(&self, corners: impl IntoIterator<Item = OutlinePoint>) -> Vec<Spot> {
        corners.into_iter().map(|corner| self.spot(corner)).collect()
    }

    fn draw(&self, sheet: &mut Sheet, lift: &LiftOn) {
        let top = self.origin.by(0.0, -(self.high_mm - self.low_mm) * self.scale);
        let wall = [self.origin.by(-6.0, 0.0), self.origin, top, top.by(-6.0, 0.0)];
        sheet.ring(&wall, Line::None, Fill::Grey);
        sheet.line(self.origin, top, Line::Outline);
        for shape in lift.shapes.iter().filter(|shape| shape.role == LiftRole::Stands) {
            sheet.ring(&self.ring(shape.outline.iter().copied()), Line::Outline, Fill::Grey);
        }
        let moving = distinct(lift);
        let frames = frames(lift);
        let steps = frames.len().div_ceil(DRAWN).max(1);
        for frame in frames.iter().step_by(steps) {
            for shape in &moving {
                sheet.ring(&self.ring(moved(shape, lift.pivot, frame)), Line::Phantom, Fill::Nothing);
            }
        }
        for (k, shape) in moving.into_iter().enumerate() {
            let ring = self.ring(shape.outline.iter().copied());
            // The beam half comes first.
            if k == 0 {
                sheet.hatch(&ring, Hatch::Rising, 1.4);
            }
            sheet.ring(&ring, Line::Outline, Fill::Nothing);
        }
    }
}

/// What moves, of several alike only the first, such as frame pieces one behind the other.
fn distinct(lift: &LiftOn) -> Vec<&LiftShape> {
    let moving: Vec<_> = lift.shapes.iter().filter(|shape| shape.role == LiftRole::Moves).collect();
    let is_first = |k: usize, shape: &LiftShape| !moving.iter().take(k).any(|earlier| earlier.outline == shape.outline);
    moving.iter().enumerate().filter(|(k, shape)| is_first(*k, shape)).map(|(_, shape)| *shape).collect()
}

/// The frames of the way; without one the place where the body hangs.
fn frames(lift: &LiftOn) -> Vec<LiftFrame> {
    let hung = LiftFrame { out_mm: 0.0, up_mm: 0.0, tilt_deg: 0.0 };
    if lift.frames.is_empty() { vec![hung] } else { lift.frames.clone() }
}

/// The corners of a shape at a frame.
fn moved(shape: &LiftShape, pivot: OutlinePoint, frame: &LiftFrame) -> Vec<OutlinePoint> {
    let (sine, cosine) = sin_cos_deg(frame.tilt_deg);
    let place = |corner: &OutlinePoint| {
        let (out, up) = (corner.out_mm - pivot.out_mm, corner.above_floor_mm - pivot.above_floor_mm);
        OutlinePoint {
            out_mm: pivot.out_mm + cosine * out - sine * up + frame.out_mm,
            above_floor_mm: pivot.above_floor_mm + sine * out + cosine * up + frame.up_mm,
        }
    };
    shape.outline.iter().map(place).collect()
}

/// The frames in the order of hanging, or what would help.
fn table(sheet: &mut Sheet, lift: &LiftOn, lengths: ReportLengths, right: f64, bottom: f64) {
    let mut y = TABLE.0;
    let mut line = |cells: [&str; 4]| {
        if y < bottom {
            for (x, cell) in [LEFT, LEFT + 20.0, LEFT + 55.0, LEFT + 90.0].into_iter().zip(cells) {
                sheet.text(Spot::new(x, y), SMALL, Anchor::Start, &fitted(cell, right - x, SMALL));
            }
        }
        y += TABLE.1;
    };
    if lift.frames.is_empty() {
        for finding in &lift.findings {
            line([&finding.message, "", "", ""]);
            for part in finding.cure.split("; ") {
                line([part, "", "", ""]);
            }
        }
        return;
    }
    line(["frame", "out", "up", "tilt, front raised"]);
    for (k, frame) in lift.frames.iter().enumerate() {
        let (out, up) = (lengths.full(frame.out_mm), lengths.full(frame.up_mm));
        line([&(k + 1).to_string(), &out, &up, &format!("{}°", fixed(frame.tilt_deg, 2))]);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::json::read;
    use crate::plan::{BeamSpec, plan};

    fn lift(room_mm: f64) -> LiftOn {
        let mut spec: BeamSpec = read(include_str!("../../examples/specs/ash_shelf_beam.json")).unwrap();
        let site = spec.site.as_mut().unwrap();
        site.obstructions[0].name = "<duct>".to_owned();
        site.obstructions[0].bottom_mm = 1350.0 + 185.0 + room_mm;
        plan(&spec).unwrap().lift_on.unwrap()
    }

    #[test]
    fn the_way_is_drawn_and_its_frames_are_written() {
        let found = lift(45.0);
        let svg = lift_svg(&found, ReportLengths::Metric);
        assert!(svg.contains("level; rise 14 mm") && svg.contains("front raised") && svg.contains("second person"));
        let shapes = distinct(&found).len();
        assert!(svg.matches("stroke-dasharray=\"6 0.75 0.12 0.75 0.12 0.75\"").count() >= 2 * shapes);
        assert!(!svg.contains("NaN"));
        assert!(lift_svg(&found, ReportLengths::Inches).contains("width=\"215.9mm\""));
    }

    #[test]
    fn without_a_way_the_cures_are_written() {
        let svg = lift_svg(&lift(3.0), ReportLengths::Metric);
        assert!(svg.contains("not at all") && svg.contains("mm lower and check the heat again"), "{svg}");
        assert!(svg.contains("take &quot;&lt;duct&gt;&quot; away"));
    }
}
