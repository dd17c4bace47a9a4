//! The drawing itself.

use super::super::svg::{Anchor, BALLOON_RADIUS, Dimension, Fill, Hatch, Line, Run, SMALL, Sheet, Spot};
use super::legend::{Legend, Part, reach_mm};
use super::scene::{Above, AtPlane, CutPiece, Mitre, Scene, Yz};
use super::view::{DIMENSION_STEP, PLAIN_WALL, View};
use crate::fasten::wood_screw;
use crate::shell::{FaceKind, PieceSign};

/// Distance between hatch lines of panels, mm.
const PANEL_HATCH: f64 = 2.2;
/// Distance between hatch lines of the cleat, mm.
const CLEAT_HATCH: f64 = 1.4;
/// A hollow narrower than this on the paper has no room for a dimension, mm.
const ROOMY: f64 = 34.0;

/// What draws a section on a sheet.
pub(super) struct Pen<'a> {
    pub(super) sheet: &'a mut Sheet,
    pub(super) scene: &'a Scene<'a>,
    pub(super) view: &'a View,
    pub(super) legend: &'a Legend,
}

impl Pen<'_> {
    /// Draws everything, from the back to the front.
    pub(super) fn draw(&mut self) {
        self.wall();
        for one in &self.scene.obstructions {
            self.obstruction(one);
        }
        self.frame_piece();
        for piece in &self.scene.pieces {
            self.piece(piece);
        }
        self.cleat();
        self.lift();
        for mitre in &self.scene.mitres {
            self.mitre(mitre);
        }
        let [_, y, z] = self.scene.plan.mass.centre_mm;
        let centre = self.at(y, z);
        self.sheet.centre_of_gravity(centre, 1.8);
        self.body_sizes();
        self.cleat_heights();
        self.obstruction_numbers();
    }

    fn at(&self, y_mm: f64, z_mm: f64) -> Spot {
        self.view.spot(Yz::new(y_mm, z_mm))
    }

    fn balloon(&mut self, part: Part, at: Spot, on: Spot) {
        if let Some(number) = self.legend.number(part) {
            self.sheet.balloon(at, on, number);
        }
    }

    /// Lining and stud, or the plain line of a wall whose build is not known.
    fn wall(&mut self) {
        let (depth, top, bottom) = (self.scene.depth_mm, self.view.top, self.view.bottom);
        let face = self.at(depth, 0.0).x;
        let Some(wall) = self.scene.wall else {
            let (low, high) = (Spot::new(face, bottom), Spot::new(face + PLAIN_WALL, top));
            let ring = [low, Spot::new(high.x, low.y), high, Spot::new(low.x, high.y)];
            self.sheet.hatch(&ring, Hatch::Rising, 3.0);
            self.sheet.line(Spot::new(face, bottom), Spot::new(face, top), Line::Outline);
            return;
        };
        let stud = self.at(depth + wall.lining_thickness_mm, 0.0).x;
        let back = self.at(depth + wall.lining_thickness_mm + wall.stud_depth_mm, 0.0).x;
        self.sheet.rectangle(Spot::new(face, bottom), Spot::new(stud, top), Line::None, Fill::Grey);
        for (x, line) in [(face, Line::Outline), (stud, Line::Thin), (back, Line::Thin)] {
            self.sheet.line(Spot::new(x, bottom), Spot::new(x, top), line);
        }
        for y in [top, bottom] {
            self.sheet.broken(Spot::new(face - 2.0, y), Spot::new(back + 2.0, y));
        }
        let in_stud = Spot::new(0.5 * (stud + back), top + 5.0);
        self.balloon(Part::Stud, in_stud, in_stud);
        let on_lining = Spot::new(0.5 * (face + stud), top + 11.5);
        self.balloon(Part::Lining, Spot::new(stud + 7.0, top + 11.5), on_lining);
    }

    fn obstruction(&mut self, one: &Above<'_>) {
        let front_mm = (self.scene.depth_mm - one.projection_mm).max(self.view.front_mm);
        let top_mm = one.top_mm.min(self.view.height_of(self.view.top));
        let low = self.at(front_mm, one.bottom_mm);
        let high = self.at(self.scene.depth_mm, top_mm);
        let (line, fill) = match one.plane {
            AtPlane::Cut => (Line::Outline, Fill::Grey),
            AtPlane::Beside => (Line::Hidden, Fill::Nothing),
        };
        self.sheet.rectangle(low, high, line, fill);
    }

    /// Number of each obstruction, and the room below it.
    fn obstruction_numbers(&mut self) {
        let back = self.at(self.scene.depth_mm, 0.0).x;
        let mut rooms = 0.0;
        for (number, one) in self.scene.obstructions.iter().enumerate() {
            let low = self.at((self.scene.depth_mm - one.projection_mm).max(self.view.front_mm), one.bottom_mm);
            let x = (low.x + 4.0 + 6.0 * number as f64).min(back - 3.0);
            let in_it = Spot::new(x, (self.view.top + 6.0).min(0.5 * (self.view.top + low.y)));
            self.balloon(Part::Obstruction(number), in_it, in_it);
            let gap_mm = one.bottom_mm - self.scene.height_mm;
            if gap_mm > 0.0 {
                // Each in a place of its own, from the wall towards the room.
                let along = (back - 4.0 - 7.0 * rooms).max(low.x + 1.0);
                rooms += 1.0;
                let (from, to) = (Spot::new(along, self.at(0.0, self.scene.height_mm).y), Spot::new(along, low.y));
                let text = self.scene.lengths.bare(gap_mm);
                self.sheet.dimension(&Dimension {
                    from,
                    to,
                    run: Run::Upright,
                    line_at: along,
                    text: &text,
                    size: SMALL,
                });
            }
        }
    }

    fn frame_piece(&mut self) {
        let Some(frame) = &self.scene.plan.frame else { return };
        let front = self.scene.thickness_mm(FaceKind::Front);
        let top = self.scene.height_mm - self.scene.thickness_mm(FaceKind::Top);
        let low = self.at(front, top - frame.piece.width_mm);
        let high = self.at(front + frame.piece.length_mm, top);
        self.sheet.rectangle(low, high, Line::Behind, Fill::Nothing);
        // Halfway along the lower side, clear of centre of gravity and cleat.
        let on = Spot::new(low.x + 0.62 * (high.x - low.x), low.y - 3.2);
        self.balloon(Part::FramePiece, on, on);
    }

    fn piece(&mut self, piece: &CutPiece<'_>) {
        let ring: Vec<Spot> = piece.ring.iter().map(|at| self.view.spot(*at)).collect();
        self.sheet.ring(&ring, Line::None, Fill::White);
        if piece.sign == PieceSign::Added {
            self.sheet.hatch(&ring, hatch_of(piece.panel.id.kind), PANEL_HATCH);
        }
        self.sheet.ring(&ring, Line::Outline, Fill::Nothing);
        for [from, to] in &piece.shows {
            self.sheet.line(self.view.spot(*from), self.view.spot(*to), Line::Show);
        }
        let is_first = piece.panel.pieces.first().is_some_and(|first| first.sign == piece.sign);
        if piece.sign == PieceSign::Added && is_first {
            self.panel_number(piece.panel.id.kind, piece.panel.thickness_mm, &ring);
        }
    }

    /// The number of a panel: on it where there is room, outside where there is none.
    fn panel_number(&mut self, kind: FaceKind, thickness_mm: f64, ring: &[Spot]) {
        let low =
            ring.iter().fold(Spot::new(f64::MAX, f64::MAX), |low, at| Spot::new(low.x.min(at.x), low.y.min(at.y)));
        let high =
            ring.iter().fold(Spot::new(f64::MIN, f64::MIN), |high, at| Spot::new(high.x.max(at.x), high.y.max(at.y)));
        let thickness = thickness_mm * self.view.scale;
        let away = 0.5 * thickness + BALLOON_RADIUS + 3.0;
        let hollow = (self.scene.height_mm - 2.0 * thickness_mm) * self.view.scale;
        let fits = thickness >= 2.0 * BALLOON_RADIUS + 1.0;
        let narrow = self.scene.depth_mm * self.view.scale < ROOMY;
        // Level boards carry it off the middle, where centre of gravity and frame piece are.
        let share = match kind {
            FaceKind::Top if !fits && narrow => 0.2,
            FaceKind::Top if !fits => 0.42,
            FaceKind::Top | FaceKind::Bottom => 0.32,
            _ => 0.5,
        };
        let on = Spot::new(low.x + share * (high.x - low.x), 0.5 * (low.y + high.y));
        let at = match kind {
            _ if fits => on,
            // The lift is drawn above the top.
            FaceKind::Top if narrow => Spot::new(low.x - BALLOON_RADIUS - 2.5, high.y + BALLOON_RADIUS + 3.0),
            FaceKind::Top if hollow > 16.0 => on.by(0.0, away),
            FaceKind::Top => on.by(0.0, -away),
            FaceKind::Bottom => on.by(0.0, away),
            _ => on.by(-away, 0.0),
        };
        self.balloon(Part::Panel(kind), at, on);
    }

    /// Both halves with bevel and blunted points, and the screw.
    fn cleat(&mut self) {
        let Some(cleat) = self.scene.cleat else { return };
        let (depth, thickness) = (self.scene.depth_mm, self.scene.plan.spec.cleat.thickness_mm);
        let (front, flat) = (depth - thickness, cleat.halves.point_flat_mm);
        let short = cleat.halves.short_face_mm;
        let wall_half = [
            self.at(front, cleat.wall_half_bottom_mm),
            self.at(depth, cleat.wall_half_bottom_mm),
            self.at(depth, cleat.wall_half_edge_mm),
            self.at(front + flat, cleat.wall_half_point_mm),
            self.at(front, cleat.wall_half_point_mm),
        ];
        let beam_half = [
            self.at(front, cleat.beam_half_top_mm),
            self.at(depth, cleat.beam_half_top_mm),
            self.at(depth, cleat.beam_half_bottom_mm),
            self.at(depth - flat, cleat.beam_half_bottom_mm),
            self.at(front, cleat.beam_half_top_mm - short),
        ];
        for (ring, hatch) in [(&wall_half, Hatch::Falling), (&beam_half, Hatch::Rising)] {
            self.sheet.ring(ring, Line::None, Fill::White);
            self.sheet.hatch(ring, hatch, CLEAT_HATCH);
            self.sheet.ring(ring, Line::Outline, Fill::Nothing);
        }
        self.screw(front, cleat.screw_row_mm);
        let aside = self.at(front, 0.0).x - 8.0;
        let on = |from: f64, to: f64| self.at(front + 0.3 * thickness, 0.5 * (from + to));
        let on_beam = on(cleat.beam_half_top_mm, cleat.beam_half_top_mm - short);
        let on_wall = on(cleat.wall_half_point_mm, 0.5 * (cleat.screw_row_mm + cleat.wall_half_point_mm));
        // Apart from one another, however small the cleat is drawn.
        let below = on_wall.y.max(on_beam.y + 2.0 * BALLOON_RADIUS + 1.0);
        self.balloon(Part::BeamHalf, Spot::new(aside, on_beam.y), on_beam);
        self.balloon(Part::WallHalf, Spot::new(aside, below), on_wall);
    }

    /// The screw of the wall half, and how far it reaches into the stud.
    fn screw(&mut self, head_mm: f64, row_mm: f64) {
        let screws = &self.scene.plan.spec.cleat.screws;
        let Some(size) = wood_screw(screws.size) else { return };
        let head = self.at(head_mm, row_mm);
        let whole = self.at(head_mm + screws.length_mm, row_mm);
        let shank = 0.5 * size.nominal_diameter_mm * self.view.scale;
        let half_head = 0.5 * size.head_diameter_mm * self.view.scale;
        // Where the wall is not known, no more than its face is drawn.
        let tip = match self.scene.wall {
            Some(_) => whole,
            None => Spot::new(whole.x.min(self.at(self.scene.depth_mm, 0.0).x + PLAIN_WALL), whole.y),
        };
        self.sheet.line(head.by(-3.0, 0.0), tip.by(3.0, 0.0), Line::Centre);
        let strip = (self.scene.cleat.map_or(0.0, |cleat| cleat.halves.short_face_mm)) * self.view.scale;
        if 2.0 * half_head < 0.8 * strip {
            // A flat head of 82° is about as deep as it is wider than the shank.
            let neck = head.x + 1.15 * (half_head - shank);
            let taper = if tip.x < whole.x { 0.0 } else { 4.0 * shank };
            let outline = [
                head.by(0.0, half_head),
                Spot::new(neck, head.y + shank),
                Spot::new(tip.x - taper, head.y + shank),
                tip,
                Spot::new(tip.x - taper, head.y - shank),
                Spot::new(neck, head.y - shank),
                head.by(0.0, -half_head),
            ];
            self.sheet.ring(&outline, Line::Outline, Fill::White);
            self.sheet.line(head.by(-3.0, 0.0), tip.by(3.0, 0.0), Line::Centre);
        }
        let Some(reach_mm) = reach_mm(self.scene) else {
            self.balloon(Part::Screw, head.by(-8.0, 5.0), head.by(1.0, 0.0));
            return;
        };
        let stud = self.at(head_mm + screws.length_mm - reach_mm, row_mm);
        if reach_mm > 0.0 {
            let text = self.scene.lengths.bare(reach_mm);
            let line_at = self.clear_of_heights(tip.y + 7.0);
            self.sheet.dimension(&Dimension {
                from: stud,
                to: tip,
                run: Run::Level,
                line_at,
                text: &text,
                size: SMALL,
            });
        }
        let on = Spot::new(stud.x + 0.5 * (tip.x - stud.x), tip.y);
        self.balloon(Part::Screw, on.by(3.0, -7.0), on);
    }

    /// The place nearest below `y` where a level dimension and its text meet no extension line of the heights.
    fn clear_of_heights(&self, y: f64) -> f64 {
        let Some(cleat) = self.scene.cleat else { return y };
        let lines = [cleat.wall_half_bottom_mm, cleat.screw_row_mm, cleat.wall_half_edge_mm, 0.0];
        let lines = lines.map(|height_mm| self.at(0.0, height_mm).y);
        let clear = |y: &f64| lines.iter().all(|line| *line < y - 4.2 || *line > y + 1.3);
        (0..12).map(|step| y + f64::from(step)).find(clear).unwrap_or(y)
    }

    /// The top raised until the points of the cleat are clear.
    fn lift(&mut self) {
        let (lift_mm, top_mm, depth) = (self.scene.lift_mm(), self.scene.height_mm, self.scene.depth_mm);
        if self.scene.cleat.is_none() {
            return;
        }
        let (front, back) = (self.at(0.0, top_mm + lift_mm), self.at(depth, top_mm + lift_mm));
        self.sheet.line(front, back, Line::Phantom);
        let from = self.at(0.25 * depth, top_mm);
        let to = Spot::new(from.x, front.y);
        let head = (from.y - to.y).min(3.0);
        self.sheet.line(from, Spot::new(to.x, to.y + 0.6 * head), Line::Outline);
        self.sheet.arrowhead(to, from, head);
        let text = format!("lift {}", self.scene.lengths.bare(lift_mm));
        self.sheet.text(to.by(1.0, -1.2), SMALL, Anchor::Start, &text);
    }

    /// The bevel of a seam, outside of its corner.
    fn mitre(&mut self, mitre: &Mitre) {
        let corner = self.view.spot(mitre.at);
        // On the left of the body there is room; on the right the wall begins.
        let anchor = if mitre.outward.y <= 0.0 { Anchor::End } else { Anchor::Start };
        let x = if mitre.outward.y <= 0.0 { corner.x - 1.6 } else { corner.x - 6.0 };
        let count = mitre.notes.len() as f64;
        for (at, note) in mitre.notes.iter().enumerate() {
            let row = 3.2 * at as f64;
            let y =
                if mitre.outward.z >= 0.0 { corner.y - 1.6 - 3.2 * (count - 1.0) + row } else { corner.y + 4.0 + row };
            self.sheet.text(Spot::new(x, y), SMALL, anchor, note);
        }
    }

    /// Outer height and depth, inner height.
    fn body_sizes(&mut self) {
        let (height, depth) = (self.scene.height_mm, self.scene.depth_mm);
        let (low, high, back) = (self.at(0.0, 0.0), self.at(0.0, height), self.at(depth, 0.0));
        let text = self.scene.lengths.bare(height);
        let outer = low.x - 2.0 * DIMENSION_STEP - 2.0;
        self.sheet.dimension(&Dimension {
            from: low,
            to: high,
            run: Run::Upright,
            line_at: outer,
            text: &text,
            size: SMALL,
        });
        let text = self.scene.lengths.bare(depth);
        self.sheet.dimension(&Dimension {
            from: low,
            to: back,
            run: Run::Level,
            line_at: low.y + 15.0,
            text: &text,
            size: SMALL,
        });
        let (front, top, bottom) = (
            self.scene.thickness_mm(FaceKind::Front),
            self.scene.thickness_mm(FaceKind::Top),
            self.scene.thickness_mm(FaceKind::Bottom),
        );
        if top <= 0.0 && bottom <= 0.0 {
            return;
        }
        let strip = if self.scene.cleat.is_some() { self.scene.plan.spec.cleat.thickness_mm } else { 0.0 };
        let room = (depth - front - strip) * self.view.scale;
        let (y_mm, line_at) = if room >= ROOMY {
            let y_mm = front + 0.22 * (depth - front - strip);
            (y_mm, self.at(y_mm, 0.0).x)
        } else {
            (front, low.x - DIMENSION_STEP - 2.0)
        };
        let (from, to) = (self.at(y_mm, bottom), self.at(y_mm, height - top));
        let text = self.scene.lengths.bare(height - top - bottom);
        self.sheet.dimension(&Dimension { from, to, run: Run::Upright, line_at, text: &text, size: SMALL });
    }

    /// Heights of the wall half and its screws from the underside, on the right.
    fn cleat_heights(&mut self) {
        let Some(cleat) = self.scene.cleat else { return };
        let wall = if self.scene.wall.is_some() { 0.0 } else { PLAIN_WALL };
        let back = self.at(self.view.back_mm, 0.0).x + wall;
        let face = self.at(self.scene.depth_mm, 0.0).x;
        let heights = [cleat.wall_half_bottom_mm, cleat.screw_row_mm, cleat.wall_half_edge_mm];
        for (at, height_mm) in heights.into_iter().enumerate() {
            let line_at = back + DIMENSION_STEP * (at + 1) as f64;
            let (from, to) = (Spot::new(face, self.at(0.0, 0.0).y), Spot::new(face, self.at(0.0, height_mm).y));
            let text = self.scene.lengths.bare(height_mm);
            self.sheet.dimension(&Dimension { from, to, run: Run::Upright, line_at, text: &text, size: SMALL });
        }
    }
}

/// Neighbouring boards are hatched in different directions.
const fn hatch_of(kind: FaceKind) -> Hatch {
    match kind {
        FaceKind::Front | FaceKind::Back => Hatch::Rising,
        FaceKind::Top | FaceKind::Bottom | FaceKind::LeftEnd | FaceKind::RightEnd => Hatch::Falling,
        FaceKind::Side(number) => {
            if number % 2 == 1 {
                Hatch::Rising
            } else {
                Hatch::Falling
            }
        }
    }
}
