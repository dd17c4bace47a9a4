//! The cross section of a body by itself, as a sheet.

use super::cut::{SectionEdge, cross_section};
use super::drawn::Drawn;
use super::layout::{Scale, TITLE, Title, Zone, framed};
use super::svg::{Anchor, BALLOON_RADIUS, Dimension, Fill, Hatch, Line, NORMAL, Run, SIZES, Sheet, Spot, fitted};
use super::text::degrees;
use super::view::middle_plane;
use super::words;
use crate::geometry::{Plane, Point3, Vec3};
use crate::plan::SawnBody;
use crate::shell::{EdgeCut, Panel, PanelEdge, PieceSign};

/// Paper around the view for numbers and sizes, mm.
const AROUND: f64 = 34.0;
/// How far outside its show face the number of a panel stands, mm.
const NUMBER_OUT: f64 = BALLOON_RADIUS + 3.0;
/// How far outside the view its sizes stand, mm.
const SIZES_OUT: f64 = 20.0;
/// Height of a row of the list, mm.
const ROW: f64 = 6.0;
/// Tag of the sides of what is taken out of a board.
const TAKEN: u32 = u32::MAX - 1;

/// The section of a body square across the middle of its longest panel, as an SVG sheet at a scale that is written on it.
///
/// Panels are hatched, show faces drawn heavy, what is taken out of them left white; each has its number and stands in the
/// list with its thickness and the bevels of its long edges. A4 where lengths are metric, US Letter where they are in inches.
pub fn cross_svg(body: &SawnBody) -> String {
    let job = Drawn::from(body);
    let description = "Hollow body cut square across its longest panel: panels with their thicknesses and bevels.";
    let (mut sheet, frame) = framed(job, "Cross section", description);
    let section = Section::of(job.panels);
    let foot = frame.bottom - TITLE;
    let list = 5.0 + ROW * section.panels.len() as f64;
    let scale = section.draw(&mut sheet, job, Zone { bottom: foot - list, ..frame });
    section.list(&mut sheet, job, Zone { top: foot - list, bottom: foot, ..frame });
    let title = Title {
        what: "Cross section",
        scale: Some(scale),
        remark: "Cut square across the middle of the longest panel. Take sizes from the numbers, not from the paper.",
    };
    title.draw(&mut sheet, job, frame);
    sheet.finish()
}

/// A point of the section: to the right and up, mm.
type Flat = (f64, f64);

/// A side of a piece.
struct Side {
    from: Flat,
    to: Flat,
    line: Line,
}

/// A piece of a panel.
struct Piece {
    sign: PieceSign,
    sides: Vec<Side>,
}

/// A panel that the plane cuts.
struct CutPanel<'a> {
    panel: &'a Panel,
    /// Its number among all panels of the body, from 1.
    number: usize,
    pieces: Vec<Piece>,
}

struct Section<'a> {
    panels: Vec<CutPanel<'a>>,
    right: Vec3,
    up: Vec3,
}

impl<'a> Section<'a> {
    fn of(panels: &'a [Panel]) -> Self {
        let Some((plane, right, up)) = middle_plane(panels) else {
            return Self { panels: Vec::new(), right: Vec3::Y, up: Vec3::Z };
        };
        let flat = |point: Point3| (point.dot(right), point.dot(up));
        let cut = |(panel, number): (&'a Panel, usize)| {
            let pieces = pieces(panel, &plane, &flat);
            (!pieces.is_empty()).then_some(CutPanel { panel, number, pieces })
        };
        Self { panels: panels.iter().zip(1..).filter_map(cut).collect(), right, up }
    }

    fn bounds(&self) -> Option<(Flat, Flat)> {
        let sides = self.panels.iter().flat_map(|one| &one.pieces).flat_map(|piece| &piece.sides);
        sides.map(|side| side.from).fold(None, |bounds, at| {
            let (low, high) = bounds.unwrap_or((at, at));
            Some(((f64::min(low.0, at.0), f64::min(low.1, at.1)), (f64::max(high.0, at.0), f64::max(high.1, at.1))))
        })
    }

    fn draw(&self, sheet: &mut Sheet, job: Drawn<'_>, zone: Zone) -> Scale {
        let (low, high) = self.bounds().unwrap_or_default();
        let size = (high.0 - low.0, high.1 - low.1);
        let scale = Scale::fitting(size, (zone.width() - 2.0 * AROUND, zone.height() - 2.0 * AROUND));
        let paper = scale.of_paper();
        let centre = Spot::new(0.5 * (zone.left + zone.right), 0.5 * (zone.top + zone.bottom));
        let spot = |(right, up): Flat| {
            centre.by((right - 0.5 * (low.0 + high.0)) * paper, (0.5 * (low.1 + high.1) - up) * paper)
        };
        for one in &self.panels {
            one.draw(sheet, &spot);
        }
        for one in &self.panels {
            self.number(sheet, one, &spot);
        }
        let (least, most) = (spot(low), spot(high));
        for (run, length, line_at) in
            [(Run::Level, size.0, least.y + SIZES_OUT), (Run::Upright, size.1, most.x + SIZES_OUT)]
        {
            let text = job.lengths.bare(length);
            sheet.dimension(&Dimension { from: least, to: most, run, line_at, text: &text, size: SIZES });
        }
        scale
    }

    /// The number of a panel, outside the middle of its show face.
    fn number(&self, sheet: &mut Sheet, one: &CutPanel<'_>, spot: &impl Fn(Flat) -> Spot) {
        let sides = one.pieces.iter().flat_map(|piece| &piece.sides).filter(|side| side.line == Line::Show);
        let Some(show) = sides.max_by(|a, b| length(a).total_cmp(&length(b))) else { return };
        let middle = spot((0.5 * (show.from.0 + show.to.0), 0.5 * (show.from.1 + show.to.1)));
        let out = (one.panel.frame.n.dot(self.right), one.panel.frame.n.dot(self.up));
        let size = (out.0 * out.0 + out.1 * out.1).sqrt().max(f64::MIN_POSITIVE);
        let at = middle.by(NUMBER_OUT * out.0 / size, -NUMBER_OUT * out.1 / size);
        sheet.balloon(at, at, one.number);
    }

    /// Number, name, thickness and bevels of each panel.
    fn list(&self, sheet: &mut Sheet, job: Drawn<'_>, zone: Zone) {
        sheet.line(Spot::new(zone.left, zone.top), Spot::new(zone.right, zone.top), Line::Thin);
        for (one, row) in self.panels.iter().zip(0_u32..) {
            let centre = Spot::new(zone.left + 6.0, zone.top + 5.0 + ROW * f64::from(row));
            sheet.balloon(centre, centre, one.number);
            let bevels: Vec<String> = one
                .panel
                .edges
                .iter()
                .filter(|edge| edge.cut == EdgeCut::Rip)
                .map(|edge| bevel(one.panel, edge))
                .collect();
            let thick = job.lengths.full(one.panel.thickness_mm);
            let text = format!("{}: {thick} thick; {}", words::face(one.panel.id), bevels.join(", "));
            sheet.text(centre.by(6.0, 1.1), NORMAL, Anchor::Start, &fitted(&text, zone.width() - 16.0, NORMAL));
        }
    }
}

impl CutPanel<'_> {
    fn draw(&self, sheet: &mut Sheet, spot: &impl Fn(Flat) -> Spot) {
        let hatch = if self.number.is_multiple_of(2) { Hatch::Falling } else { Hatch::Rising };
        for piece in &self.pieces {
            let ring: Vec<Spot> = piece.sides.iter().map(|side| spot(side.from)).collect();
            sheet.ring(&ring, Line::None, Fill::White);
            if piece.sign == PieceSign::Added {
                sheet.hatch(&ring, hatch, 2.2);
            }
            for side in &piece.sides {
                sheet.line(spot(side.from), spot(side.to), side.line);
            }
        }
    }
}

/// The pieces of a panel in the plane: the board, then what is taken out of it.
fn pieces(panel: &Panel, plane: &Plane, flat: &impl Fn(Point3) -> Flat) -> Vec<Piece> {
    let Some(blank) = panel.blank() else { return Vec::new() };
    let cut = panel.pieces.iter().filter_map(|piece| {
        let ring = match piece.sign {
            PieceSign::Added => cross_section(&piece.solid, plane),
            PieceSign::Removed => cross_section(&blank.common(&piece.solid, TAKEN)?, plane),
        };
        let line = |tag: u32| match (piece.sign, tag) {
            (PieceSign::Added, Panel::SHOW) => Line::Show,
            // Where a groove opens there is no wood.
            (PieceSign::Removed, tag) if tag != TAKEN => Line::None,
            _ => Line::Outline,
        };
        let side = |edge: &SectionEdge| Side { from: flat(edge.from), to: flat(edge.to), line: line(edge.tag) };
        let sides: Vec<Side> = ring.iter().map(side).collect();
        (!sides.is_empty()).then_some(Piece { sign: piece.sign, sides })
    });
    cut.collect()
}

fn length(side: &Side) -> f64 {
    let (x, y) = (side.to.0 - side.from.0, side.to.1 - side.from.1);
    x * x + y * y
}

fn bevel(panel: &Panel, edge: &PanelEdge) -> String {
    let beyond = words::beside(panel.id, edge.neighbour);
    if edge.tilt_deg.abs() < 0.05 {
        format!("square to {beyond}")
    } else {
        format!("{} to {beyond}", degrees(edge.tilt_deg))
    }
}
