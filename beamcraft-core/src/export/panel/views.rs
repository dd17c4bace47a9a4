//! The three views of a panel.

use super::super::cut::cross_section;
use super::super::layout::{Scale, Zone};
use super::super::svg::{Anchor, BALLOON_RADIUS, Dimension, Fill, Hatch, LARGE, Line, NORMAL, Run, SIZES, Sheet, Spot};
use super::super::text::degrees;
use super::super::view::Face;
use crate::geometry::{Clip, ConvexSolid, Plane, Point3, Vec3};
use crate::plan::ReportLengths;
use crate::shell::{Panel, PieceSign};

/// Paper beside a view for numbers, marks and dimensions, mm: left, right, above, below.
const BESIDE: (f64, f64) = (26.0, 34.0);
const AROUND: (f64, f64) = (17.0, 24.0);
/// Paper above and below a section for its name and dimensions, mm.
const SECTION_AROUND: (f64, f64) = (19.0, 13.0);
/// Where along the panel the section across it is taken, as a share: off the middle, where the numbers of the edges are.
const ACROSS_AT: f64 = 0.65;
/// How far outside the outline the number of an edge and the mark of a section stand, mm.
const NUMBER_OUT: f64 = BALLOON_RADIUS + 2.2;
const MARK_OUT: f64 = 8.5;
/// Gap in a section that is shortened, mm of paper.
const BREAK: f64 = 5.0;
/// Tag of the plane at which a section is broken off.
const BROKEN: u32 = u32::MAX - 1;
/// Tag of the sides of what is taken out of a board.
const TAKEN: u32 = u32::MAX - 2;

/// A panel in coordinates of its own: along the grain, across it, out of the show face.
pub(super) struct Views<'a> {
    panel: &'a Panel,
    lengths: ReportLengths,
    /// Extents of the wood along and across the grain, mm.
    length_mm: f64,
    width_mm: f64,
}

/// A corner of a section: in the panel's own axes, and on the paper.
#[derive(Clone, Copy)]
struct Corner {
    local: Vec3,
    spot: Spot,
}

/// One side of a section: where it starts and ends, and the face of the panel that is cut there.
struct Side {
    from: Corner,
    to: Corner,
    tag: u32,
}

impl<'a> Views<'a> {
    pub(super) const fn of(panel: &'a Panel, lengths: ReportLengths) -> Self {
        Self { panel, lengths, length_mm: panel.blank_length_mm, width_mm: panel.blank_width_mm }
    }

    /// Draws all three; gives the scale of the show face.
    pub(super) fn draw(&self, sheet: &mut Sheet, zone: Zone) -> Scale {
        let rooms = SECTION_AROUND.0 + SECTION_AROUND.1;
        let wide = zone.width() - BESIDE.0 - BESIDE.1;
        // The sections get what their thickness asks for, the face the rest.
        let section_height = (0.15 * zone.height()).min(26.0);
        let thickness_mm = self.panel.thickness_mm;
        let detail = Scale::fitting((self.width_mm, thickness_mm), (wide, section_height));
        let section = rooms + thickness_mm * detail.of_paper();
        let face = Zone { bottom: zone.bottom - 2.0 * section, ..zone };
        let room = (wide, face.height() - AROUND.0 - AROUND.1);
        let scale = Scale::fitting((self.length_mm, self.width_mm), room);
        self.face(sheet, scale.of_paper(), face);
        let across = Zone { top: face.bottom, bottom: face.bottom + section, ..zone };
        self.across(sheet, detail, across);
        self.along(sheet, detail, Zone { top: across.bottom, bottom: zone.bottom, ..zone });
        scale
    }

    /// The show face, with what lies behind it, its numbers, marks and overall sizes.
    fn face(&self, sheet: &mut Sheet, scale: f64, zone: Zone) {
        let spare = |room: f64, size_mm: f64| 0.5 * (room - size_mm * scale).max(0.0);
        let left = zone.left + BESIDE.0 + spare(zone.width() - BESIDE.0 - BESIDE.1, self.length_mm);
        let low = zone.bottom - AROUND.1 - spare(zone.height() - AROUND.0 - AROUND.1, self.width_mm);
        let spot = |(u, v): (f64, f64)| Spot::new(left + u * scale, low - v * scale);
        let Some(blank) = self.panel.blank() else { return };
        let view = Face::of(self.panel);
        let ring = |tag: u32| -> Vec<Spot> {
            blank.face(tag).map(|face| face.points().map(|point| spot(view.flat(point))).collect()).unwrap_or_default()
        };
        let outline: Vec<Spot> = view.outline(blank).into_iter().map(spot).collect();
        sheet.ring(&outline, Line::Outline, Fill::White);
        sheet.ring(&ring(Panel::INNER), Line::Hidden, Fill::Nothing);
        for piece in self.panel.pieces.iter().filter(|piece| piece.sign == PieceSign::Removed) {
            if let Some(taken) = blank.common(&piece.solid, BROKEN) {
                let taken: Vec<Spot> = view.outline(&taken).into_iter().map(spot).collect();
                sheet.ring(&taken, Line::Hidden, Fill::Nothing);
            }
        }
        let show = ring(Panel::SHOW);
        sheet.ring(&outline, Line::Outline, Fill::Nothing);
        sheet.ring(&show, Line::Outline, Fill::Nothing);
        self.grain(sheet, &show);
        let bounds = Zone { left, right: left + self.length_mm * scale, top: low - self.width_mm * scale, bottom: low };
        self.marks(sheet, bounds);
        self.sizes(sheet, &show, bounds);
        // Last, so that no line runs through a number.
        self.numbers(sheet, blank, &spot);
    }

    /// A double arrow along the grain.
    fn grain(&self, sheet: &mut Sheet, show: &[Spot]) {
        let Some(box_) = bounds(show) else { return };
        let half = (0.12 * box_.width()).clamp(5.0, 14.0).min(0.4 * box_.width());
        let text_below = box_.height() > 14.0;
        let middle = Spot::new(box_.left + 0.3 * box_.width(), 0.5 * (box_.top + box_.bottom));
        let (from, to) = (middle.by(-half, 0.0), middle.by(half, 0.0));
        sheet.line(from, to, Line::Thin);
        sheet.arrowhead(from, to, 2.5);
        sheet.arrowhead(to, from, 2.5);
        if text_below {
            sheet.text(middle.by(0.0, 4.2), NORMAL, Anchor::Middle, "grain");
        } else if box_.height() > 3.6 && box_.width() > 60.0 {
            sheet.text(to.by(1.5, 1.0), NORMAL, Anchor::Start, "grain");
        }
    }

    /// The number of each edge, outside its middle.
    fn numbers(&self, sheet: &mut Sheet, blank: &ConvexSolid, spot: &impl Fn((f64, f64)) -> Spot) {
        let view = Face::of(self.panel);
        for (at, edge) in self.panel.edges.iter().enumerate() {
            let Some(face) = blank.face(edge.tag) else { continue };
            // The farther side of the edge, as it is seen.
            let out = (edge.outward.x, edge.outward.y);
            let size = (out.0 * out.0 + out.1 * out.1).sqrt();
            if size < 1e-9 {
                continue;
            }
            let points: Vec<(f64, f64)> = face.points().map(|point| view.flat(point)).collect();
            let reach = |point: &(f64, f64)| point.0 * out.0 + point.1 * out.1;
            let far = points.iter().map(reach).fold(f64::NEG_INFINITY, f64::max);
            let near = 1e-6 * (self.length_mm + self.width_mm);
            let side: Vec<_> = points.iter().filter(|point| far - reach(point) <= near).collect();
            let count = side.len() as f64;
            let sum = side.iter().fold((0.0, 0.0), |sum, point| (sum.0 + point.0, sum.1 + point.1));
            let away = NUMBER_OUT / size;
            let centre = spot((sum.0 / count, sum.1 / count)).by(out.0 * away, -out.1 * away);
            sheet.balloon(centre, centre, at + 1);
        }
    }

    /// Where the sections are taken: heavy strokes outside the outline with arrows the way they are seen, and letters.
    fn marks(&self, sheet: &mut Sheet, face: Zone) {
        let x = face.left + ACROSS_AT * face.width();
        for (y, side) in [(face.top - MARK_OUT, -1.0), (face.bottom + MARK_OUT, 1.0)] {
            let at = Spot::new(x, y);
            sheet.line(at, at.by(0.0, -4.0 * side), Line::Show);
            sheet.line(at, at.by(-6.0, 0.0), Line::Thin);
            sheet.arrowhead(at.by(-6.0, 0.0), at, 2.5);
            sheet.text(at.by(1.6, if side < 0.0 { 1.0 } else { 2.0 }), SIZES, Anchor::Start, "A");
        }
        let y = 0.5 * (face.top + face.bottom);
        for (x, side) in [(face.left - MARK_OUT, -1.0), (face.right + MARK_OUT, 1.0)] {
            let at = Spot::new(x, y);
            let end = at.by(4.0 * side, 0.0);
            sheet.line(at, end, Line::Show);
            sheet.line(end, end.by(0.0, -6.0), Line::Thin);
            sheet.arrowhead(end.by(0.0, -6.0), end, 2.5);
            sheet.text(end.by(0.0, 4.6), SIZES, Anchor::Middle, "B");
        }
    }

    /// Length and width of the show face.
    fn sizes(&self, sheet: &mut Sheet, show: &[Spot], face: Zone) {
        let (Some(low), Some(high)) = (
            show.iter().copied().min_by(|one, other| one.x.total_cmp(&other.x)),
            show.iter().copied().max_by(|one, other| one.x.total_cmp(&other.x)),
        ) else {
            return;
        };
        let text = self.lengths.bare(self.panel.show_length_mm);
        let line_at = face.bottom + 19.0;
        sheet.dimension(&Dimension { from: low, to: high, run: Run::Level, line_at, text: &text, size: SIZES });
        let (Some(high), Some(low)) = (
            show.iter().copied().min_by(|one, other| one.y.total_cmp(&other.y)),
            show.iter().copied().max_by(|one, other| one.y.total_cmp(&other.y)),
        ) else {
            return;
        };
        let text = self.lengths.bare(self.panel.show_width_mm);
        let line_at = face.right + 22.0;
        sheet.dimension(&Dimension { from: low, to: high, run: Run::Upright, line_at, text: &text, size: SIZES });
    }

    /// Section across the grain, the show face up, seen towards the near end.
    fn across(&self, sheet: &mut Sheet, scale: Scale, zone: Zone) {
        let size = scale.of_paper();
        let left = zone.left + BESIDE.0 + 0.5 * (zone.width() - BESIDE.0 - BESIDE.1 - self.width_mm * size);
        let top = zone.top + SECTION_AROUND.0;
        let spot = |local: Vec3| Spot::new(left + local.y * size, top - local.z * size);
        let plane = self.plane(Vec3::X, ACROSS_AT * self.length_mm);
        name(sheet, "A–A", scale, zone);
        let drawn = self.section(sheet, None, plane, &spot);
        self.section_sizes(sheet, &drawn);
        self.thickness(sheet, &drawn);
    }

    /// Section along the grain, the show face up, seen from the near edge; shortened where it would leave the sheet.
    fn along(&self, sheet: &mut Sheet, scale: Scale, zone: Zone) {
        let size = scale.of_paper();
        let room = zone.width() - BESIDE.0 - BESIDE.1;
        let whole = self.length_mm * size <= room;
        let paper = if whole { self.length_mm * size } else { room };
        let left = zone.left + BESIDE.0 + 0.5 * (room - paper);
        let top = zone.top + SECTION_AROUND.0;
        let half_mm = 0.5 * (room - BREAK) / size;
        let spot = |local: Vec3| {
            let x = if whole || local.x <= 0.5 * self.length_mm {
                left + local.x * size
            } else {
                left + paper - (self.length_mm - local.x) * size
            };
            Spot::new(x, top - local.z * size)
        };
        let plane = self.plane(Vec3::Y, 0.5 * self.width_mm);
        name(sheet, "B–B", scale, zone);
        let parts = if whole {
            self.section(sheet, None, plane, &spot)
        } else {
            let mut sides = self.section(sheet, self.plane(Vec3::X, half_mm), plane, &spot);
            sides.extend(self.section(sheet, self.plane(-Vec3::X, half_mm - self.length_mm), plane, &spot));
            for x in [left + half_mm * size, left + paper - half_mm * size] {
                sheet.broken(Spot::new(x, top - 2.0), Spot::new(x, top + self.panel.thickness_mm * size + 2.0));
            }
            sides
        };
        self.section_sizes(sheet, &parts);
    }

    /// A plane of the panel's own axes: the normal, and how far along it from the near corner of the blank, mm.
    fn plane(&self, normal: Vec3, at_mm: f64) -> Option<Plane> {
        let frame = &self.panel.frame;
        Plane::through(frame.to_world(normal * at_mm), frame.direction_to_world(normal))
    }

    /// Cuts the panel, the half beyond a plane left out; gives the sides on the paper.
    fn section(
        &self,
        sheet: &mut Sheet,
        kept: Option<Plane>,
        plane: Option<Plane>,
        spot: &impl Fn(Vec3) -> Spot,
    ) -> Vec<Side> {
        let (Some(plane), Some(blank)) = (plane, self.panel.blank()) else { return Vec::new() };
        let mut sides = Vec::new();
        for piece in &self.panel.pieces {
            let solid = match piece.sign {
                PieceSign::Added => Some(piece.solid.clone()),
                PieceSign::Removed => blank.common(&piece.solid, TAKEN),
            };
            let solid = solid.and_then(|solid| match &kept {
                Some(kept) => match solid.clip(kept, BROKEN) {
                    Clip::Part(part) => Some(part),
                    Clip::Whole => Some(solid),
                    Clip::Empty => None,
                },
                None => Some(solid),
            });
            let Some(solid) = solid else { continue };
            let corner = |point: Point3| {
                let local = self.panel.frame.to_local(point);
                Corner { local, spot: spot(local) }
            };
            let ring: Vec<_> = cross_section(&solid, &plane);
            let spots: Vec<Spot> = ring.iter().map(|side| corner(side.from).spot).collect();
            sheet.ring(&spots, Line::None, Fill::White);
            if piece.sign == PieceSign::Added {
                sheet.hatch(&spots, Hatch::Rising, 2.2);
            }
            // Where a groove opens there is no wood.
            let opens = |tag: u32| piece.sign == PieceSign::Removed && tag != TAKEN;
            for side in ring.iter().filter(|side| side.tag != BROKEN && !opens(side.tag)) {
                let side = Side { from: corner(side.from), to: corner(side.to), tag: side.tag };
                let is_show = piece.sign == PieceSign::Added && side.tag == Panel::SHOW;
                sheet.line(side.from.spot, side.to.spot, if is_show { Line::Show } else { Line::Outline });
                if piece.sign == PieceSign::Added {
                    sides.push(side);
                }
            }
        }
        sides
    }

    /// Sizes on the show face above and on the inner face below, and the bevel of each edge beside it.
    fn section_sizes(&self, sheet: &mut Sheet, sides: &[Side]) {
        for (tag, away) in [(Panel::SHOW, -8.0), (Panel::INNER, 8.0)] {
            let Some((low, high)) = ends(sides, tag) else { continue };
            let text = self.lengths.bare((high.local - low.local).length());
            let line_at = low.spot.y + away;
            let (from, to) = (low.spot, high.spot);
            sheet.dimension(&Dimension { from, to, run: Run::Level, line_at, text: &text, size: SIZES });
        }
        let spots: Vec<Spot> = sides.iter().flat_map(|side| [side.from.spot, side.to.spot]).collect();
        let Some(around) = bounds(&spots) else { return };
        for side in sides {
            let Some(at) = self.panel.edges.iter().position(|edge| edge.tag == side.tag) else { continue };
            let Some(edge) = self.panel.edges.get(at) else { continue };
            let middle =
                Spot::new(0.5 * (side.from.spot.x + side.to.spot.x), 0.5 * (side.from.spot.y + side.to.spot.y));
            let (x, sign, anchor) = if middle.x < 0.5 * (around.left + around.right) {
                (around.left, -1.0, Anchor::End)
            } else {
                (around.right, 1.0, Anchor::Start)
            };
            let centre = Spot::new(x + sign * NUMBER_OUT, middle.y);
            sheet.balloon(centre, centre, at + 1);
            let note = centre.by(sign * (BALLOON_RADIUS + 1.2), 1.2);
            sheet.text(note, SIZES, anchor, &degrees(edge.tilt_deg.abs()));
        }
    }

    /// Thickness, beyond the bevel on the right.
    fn thickness(&self, sheet: &mut Sheet, sides: &[Side]) {
        let (Some((_, high)), Some((_, low))) = (ends(sides, Panel::SHOW), ends(sides, Panel::INNER)) else { return };
        let (high, low) = (high.spot, low.spot);
        let text = self.lengths.bare(self.panel.thickness_mm);
        let line_at = high.x.max(low.x) + 25.0;
        sheet.dimension(&Dimension { from: low, to: high, run: Run::Upright, line_at, text: &text, size: SIZES });
    }
}

/// The name of a section and its scale.
fn name(sheet: &mut Sheet, name: &str, scale: Scale, zone: Zone) {
    let at = Spot::new(zone.left + 3.0, zone.top + 5.0);
    sheet.heading(at, LARGE, name);
    sheet.text(at.by(0.0, 5.0), NORMAL, Anchor::Start, &scale.text());
}

/// The corners of a face of the panel that lie farthest to the left and to the right in a section.
fn ends(sides: &[Side], tag: u32) -> Option<(Corner, Corner)> {
    let corners = || sides.iter().filter(|side| side.tag == tag).flat_map(|side| [side.from, side.to]);
    let by_x = |one: &Corner, other: &Corner| one.spot.x.total_cmp(&other.spot.x);
    Some((corners().min_by(by_x)?, corners().max_by(by_x)?))
}

/// The least upright rectangle around points.
fn bounds(spots: &[Spot]) -> Option<Zone> {
    let first = spots.first()?;
    let start = Zone { left: first.x, right: first.x, top: first.y, bottom: first.y };
    Some(spots.iter().fold(start, |zone, at| Zone {
        left: zone.left.min(at.x),
        right: zone.right.max(at.x),
        top: zone.top.min(at.y),
        bottom: zone.bottom.max(at.y),
    }))
}
