//! What stands under the drawing: the list of parts, the heights, the title.

use super::super::layout::{TITLE, Title, Zone};
use super::super::svg::{Anchor, Line, SMALL, Sheet, Spot, fitted};
use super::super::text::{fixed, shortened};
use super::super::words;
use super::scene::{AtPlane, Scene};
use super::view::View;
use crate::shell::FaceKind;

/// Height of a row, mm.
const ROW: f64 = 5.2;
/// Space above the rows, mm.
const HEAD: f64 = 9.0;

/// What a number in the drawing stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Part {
    /// A panel, by its face.
    Panel(FaceKind),
    /// The half of the cleat on the body.
    BeamHalf,
    /// The half of the cleat on the wall.
    WallHalf,
    /// The screw of the wall half.
    Screw,
    /// The frame piece behind the section.
    FramePiece,
    /// The lining of the wall.
    Lining,
    /// The stud.
    Stud,
    /// A thing on the wall, by its place in the list.
    Obstruction(usize),
}

/// The numbered parts and the heights of a section.
pub(super) struct Legend {
    rows: Vec<(Part, String)>,
    heights: Vec<[String; 3]>,
}

impl Legend {
    pub(super) fn of(scene: &Scene<'_>) -> Self {
        Self { rows: rows(scene), heights: heights(scene) }
    }

    /// Number of a part in the drawing; nothing when it is not in the list.
    pub(super) fn number(&self, part: Part) -> Option<usize> {
        self.rows.iter().position(|row| row.0 == part).map(|at| at + 1)
    }

    /// Paper it takes, mm.
    pub(super) fn height(&self) -> f64 {
        // Two rows below the parts explain lines and signs.
        let count = (self.rows.len() + 2).max(self.heights.len() + 1);
        TITLE + HEAD + ROW * count as f64
    }

    pub(super) fn draw(&self, sheet: &mut Sheet, scene: &Scene<'_>, view: &View, zone: Zone) {
        sheet.line(Spot::new(zone.left, zone.top), Spot::new(zone.right, zone.top), Line::Thin);
        let middle = zone.left + 0.56 * (zone.right - zone.left);
        self.draw_parts(sheet, zone, middle - 3.0);
        self.draw_heights(sheet, Zone { left: middle, ..zone });
        let title = Title {
            what: "Cross section at mid length, seen from the right end",
            scale: Some(view.written),
            remark: "Take sizes from the numbers, not from the paper. No approval of structure or fire safety: see the cautions of the report.",
        };
        title.draw(sheet, scene.plan.into(), zone);
    }

    fn draw_parts(&self, sheet: &mut Sheet, zone: Zone, right: f64) {
        let text_at = zone.left + 12.0;
        let room = right - text_at;
        let row = |at: usize| zone.top + HEAD - 2.0 + ROW * at as f64;
        for (at, (_, text)) in self.rows.iter().enumerate() {
            let centre = Spot::new(zone.left + 6.0, row(at));
            sheet.balloon(centre, centre, at + 1);
            sheet.text(Spot::new(text_at, row(at) + 0.9), SMALL, Anchor::Start, &fitted(text, room, SMALL));
        }
        let (show, centre) = (row(self.rows.len()), row(self.rows.len() + 1));
        sheet.line(Spot::new(zone.left + 2.5, show), Spot::new(zone.left + 9.5, show), Line::Show);
        sheet.text(Spot::new(text_at, show + 0.9), SMALL, Anchor::Start, "show face; angles are bevels from square");
        sheet.centre_of_gravity(Spot::new(zone.left + 6.0, centre), 1.6);
        sheet.text(Spot::new(text_at, centre + 0.9), SMALL, Anchor::Start, "centre of gravity of what is lifted");
    }

    fn draw_heights(&self, sheet: &mut Sheet, zone: Zone) {
        let columns = [zone.left, zone.right - 24.0, zone.right - 2.0];
        let anchors = [Anchor::Start, Anchor::End, Anchor::End];
        for (at, cells) in self.heights.iter().enumerate() {
            let y = zone.top + HEAD - 1.1 + ROW * at as f64;
            for ((x, anchor), cell) in columns.into_iter().zip(anchors).zip(cells) {
                sheet.text(Spot::new(x, y), SMALL, anchor, cell);
            }
            if at == 0 {
                sheet.line(Spot::new(zone.left, y + 1.5), Spot::new(zone.right - 2.0, y + 1.5), Line::Thin);
            }
        }
    }
}

/// The numbered parts from the front to the wall, with their sizes.
fn rows(scene: &Scene<'_>) -> Vec<(Part, String)> {
    let size = |length_mm: f64| scene.lengths.bare(length_mm);
    let mut rows: Vec<(Part, String)> = Vec::new();
    for piece in &scene.pieces {
        let part = Part::Panel(piece.panel.id.kind);
        if !rows.iter().any(|row| row.0 == part) {
            let (name, thickness) = (words::face(piece.panel.id), size(piece.panel.thickness_mm));
            rows.push((part, format!("{name} board, {thickness} thick")));
        }
    }
    if let Some(frame) = &scene.plan.frame {
        let (width, length) = (size(frame.piece.width_mm), size(frame.piece.length_mm));
        rows.push((
            Part::FramePiece,
            format!("frame piece behind: {width} high, {length} deep, {} thick", size(frame.thickness_mm)),
        ));
    }
    if let Some(cleat) = scene.cleat {
        let (spec, halves) = (&scene.plan.spec.cleat, &cleat.halves);
        let (thickness, bevel) = (size(spec.thickness_mm), fixed(spec.bevel_deg, 1));
        let faces = format!("faces {} and {}", size(halves.blunted_face_mm), size(halves.short_face_mm));
        rows.push((Part::BeamHalf, format!("beam half of cleat: {thickness} thick, {bevel}°, {faces}")));
        rows.push((Part::WallHalf, format!("wall half of cleat: the same, points blunted by {}", size(spec.blunt_mm))));
        rows.push((Part::Screw, screw_row(scene)));
    }
    if let Some(wall) = scene.wall {
        if wall.lining_thickness_mm > 0.0 {
            rows.push((Part::Lining, format!("lining, {}", size(wall.lining_thickness_mm))));
        }
        let sizes = (size(wall.stud_width_mm), size(wall.stud_depth_mm));
        rows.push((Part::Stud, format!("stud behind the lining, {} × {}", sizes.0, sizes.1)));
    }
    for (at, one) in scene.obstructions.iter().enumerate() {
        let gap_mm = one.bottom_mm - scene.height_mm;
        let place = match one.plane {
            AtPlane::Cut => "",
            AtPlane::Beside => ", not at mid length",
        };
        let out = size(one.projection_mm);
        let gap = if gap_mm >= 0.0 {
            format!("{} above the body", size(gap_mm))
        } else {
            "in the way of the body".to_owned()
        };
        rows.push((Part::Obstruction(at), format!("{}: {gap}, {out} out{place}", shortened(one.name, 24))));
    }
    rows
}

fn screw_row(scene: &Scene<'_>) -> String {
    let screws = &scene.plan.spec.cleat.screws;
    let name = format!("screw {} × {}", words::screw(screws.size), scene.lengths.bare(screws.length_mm));
    match reach_mm(scene) {
        Some(reach_mm) if reach_mm > 0.0 => format!("{name}, {} into the stud", scene.lengths.bare(reach_mm)),
        Some(_) => format!("{name}, does not reach the stud"),
        None => format!("{name}; studs not given"),
    }
}

/// How far the screw reaches into the stud, mm; nothing when the wall is not known.
pub(super) fn reach_mm(scene: &Scene<'_>) -> Option<f64> {
    let (spec, wall) = (&scene.plan.spec.cleat, scene.wall?);
    Some(spec.screws.length_mm - spec.thickness_mm - wall.lining_thickness_mm)
}

/// Heights from the top down, from the underside of the body and from the floor.
fn heights(scene: &Scene<'_>) -> Vec<[String; 3]> {
    let mut places = vec![("top of the body", scene.height_mm), ("underside of the body", 0.0)];
    if let Some(cleat) = scene.cleat {
        places.extend([
            ("wall half, point in front", cleat.wall_half_point_mm),
            ("wall half, edge at the wall", cleat.wall_half_edge_mm),
            ("screw row", cleat.screw_row_mm),
            ("wall half, lower edge", cleat.wall_half_bottom_mm),
        ]);
    }
    places.sort_by(|one, other| other.1.total_cmp(&one.1));
    let floor = if scene.above_floor_mm.is_some() { "above floor" } else { "" };
    let mut rows = vec![["Heights".to_owned(), "above underside".to_owned(), floor.to_owned()]];
    rows.extend(places.into_iter().map(|(name, height_mm)| {
        let above_floor = scene.above_floor_mm.map(|floor_mm| scene.lengths.bare(floor_mm + height_mm));
        [name.to_owned(), scene.lengths.bare(height_mm), above_floor.unwrap_or_default()]
    }));
    rows
}
