//! One sketch: table, blade, fence and the board in section.
//!
//! Everything is worked out in millimetres of the saw: x to the left from the fence, z up from the table.

use super::super::drawn::Drawn;
use super::super::layout::{Scale, Zone};
use super::super::svg::{Anchor, Dimension, Fill, Hatch, Line, NORMAL, Run, SIZES, Sheet, Spot};
use super::super::text::degrees;
use super::from_above;
use crate::numeric::real::{sin_cos_deg, tan_deg};
use crate::saw::{CutKind, CutSetUp, CutWay, FaceDown, KeptPiece, PanelCut};
use crate::shell::Panel;

/// Paper around a sketch for dimensions and angles, mm.
const LEFT: f64 = 10.0;
const RIGHT: f64 = 6.0;
const ABOVE: f64 = 16.0;
const BELOW: f64 = 15.0;
/// Thickness of the table top and of the fence on the paper, mm.
const TABLE: f64 = 2.4;
const FENCE: f64 = 3.2;
/// How much of the waste is drawn, as a share of the board's thickness.
const WASTE: f64 = 1.2;
/// Most of a board's length that is drawn, as a multiple of its thickness.
const LENGTH: f64 = 4.0;

/// A point of the saw: how far left of the fence, how far above the table, mm.
type Place = (f64, f64);

/// The board as it goes over the saw.
struct Board {
    /// Section of the kept piece, once round; what is cut is its last side.
    kept: [Place; 4],
    /// The ends of the show face.
    show: [Place; 2],
    /// The ends of the cut, the one at the table first.
    cut: [Place; 2],
    /// Section of what is cut off, beyond the kerf.
    waste: [Place; 4],
    /// What the right end of the board is.
    ends: Ends,
}

/// How the board ends on the right.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Ends {
    /// Against the fence.
    AtFence,
    /// It goes on.
    BrokenOff,
    /// It stands on edge, one face against the fence.
    OnEdge,
}

pub(super) fn draw(sheet: &mut Sheet, job: Drawn<'_>, panel: &Panel, cut: &PanelCut, zone: Zone) {
    let Some(set_up) = cut.set_up.filter(|set_up| set_up.way != CutWay::TrackSaw) else {
        return in_words(sheet, cut, zone);
    };
    let zone = if cut.kind == CutKind::GaugeCut && set_up.way == CutWay::FlatOnTable {
        let right = zone.right - from_above::WIDTH;
        from_above::draw(sheet, panel, cut, &set_up, Zone { left: right, ..zone });
        Zone { right, ..zone }
    } else {
        zone
    };
    let board = board(job, panel, cut, &set_up);
    let all = board.kept.iter().chain(&board.waste);
    let (left_mm, top_mm) = all.fold((0.0_f64, 0.0_f64), |most, at| (most.0.max(at.0), most.1.max(at.1)));
    let room = (zone.width() - LEFT - RIGHT - FENCE, zone.height() - ABOVE - BELOW);
    let scale = Scale::fitting((left_mm, top_mm), room).of_paper();
    let (across, up) = (room.0 - left_mm * scale, room.1 - top_mm * scale);
    let origin = Spot::new(zone.right - RIGHT - FENCE - 0.5 * across.max(0.0), zone.bottom - BELOW - 0.5 * up.max(0.0));
    let spot = |(x, z): Place| origin.by(-x * scale, -z * scale);
    let table = Zone { left: zone.left + 2.0, right: zone.right - 2.0, top: origin.y, bottom: origin.y + TABLE };
    let saw = Saw { set_up: &set_up, board: &board, table };
    saw.table(sheet, &spot);
    saw.fence(sheet, &spot);
    saw.board(sheet, &spot);
    saw.blade(sheet, &spot, zone.top + 6.0);
    saw.sizes(sheet, job, &spot);
}

/// Where there is no saw table to draw.
fn in_words(sheet: &mut Sheet, cut: &PanelCut, zone: Zone) {
    let lines = match (cut.kind, &cut.set_up) {
        (CutKind::Joint, _) => ["No saw: joint this edge straight and square.", "It rides the fence for the next cut."],
        (_, Some(_)) => ["Saw guided along a rail, the long-point face up.", "Lay the rail on the marks."],
        (_, None) => ["This saw does not make the cut.", "The findings say what would."],
    };
    let middle = Spot::new(0.5 * (zone.left + zone.right), 0.5 * (zone.top + zone.bottom));
    for (line, down) in lines.iter().zip([-2.0, 3.0]) {
        sheet.text(middle.by(0.0, down), NORMAL, Anchor::Middle, line);
    }
}

/// The board of a cut in the saw's own measures.
fn board(job: Drawn<'_>, panel: &Panel, cut: &PanelCut, set_up: &CutSetUp) -> Board {
    let thickness = panel.thickness_mm;
    if set_up.way == CutWay::OnEdge {
        return on_edge(cut, set_up, thickness, job.kerf_mm);
    }
    let run = thickness * tan_deg(cut.bevel_deg);
    let at_fence = cut.kind == CutKind::FenceRip && cut.kept == KeptPiece::BetweenFenceAndBlade;
    let (width, fence_run, ends) = if at_fence {
        (cut.show_size_mm, thickness * tan_deg(cut.riding_bevel_deg), Ends::AtFence)
    } else {
        (cut.show_size_mm.min(LENGTH * thickness + run.abs()), 0.0, Ends::BrokenOff)
    };
    // The end farthest to the right touches the fence.
    let right = (-fence_run).max(0.0);
    let (show, inner) = ([right, right + width], [right + fence_run, right + width - run]);
    let (lower, upper) = match set_up.face_down {
        FaceDown::ShowFace => (show, inner),
        FaceDown::InnerFace => (inner, show),
    };
    let kerf = job.kerf_mm / sin_cos_deg(cut.bevel_deg).1;
    let far = lower[1].max(upper[1]) + kerf + WASTE * thickness;
    // A wedge lifts the side of the blade.
    let (sine, cosine) = sin_cos_deg(set_up.wedge_deg);
    let place = |x: f64, z: f64| (x * cosine - z * sine, x * sine + z * cosine);
    let kept = [place(lower[0], 0.0), place(upper[0], thickness), place(upper[1], thickness), place(lower[1], 0.0)];
    let waste =
        [place(lower[1] + kerf, 0.0), place(upper[1] + kerf, thickness), place(far, thickness), place(far, 0.0)];
    let show = match set_up.face_down {
        FaceDown::ShowFace => [kept[0], kept[3]],
        FaceDown::InnerFace => [kept[1], kept[2]],
    };
    Board { kept, show, cut: [kept[3], kept[2]], waste, ends }
}

/// A board on edge, its long point at the fence and down on the table.
fn on_edge(cut: &PanelCut, set_up: &CutSetUp, thickness: f64, kerf_mm: f64) -> Board {
    let rise = thickness * tan_deg(cut.bevel_deg.abs());
    let high = rise + 3.0 * thickness;
    let kept = [(0.0, high), (thickness, high), (thickness, rise), (0.0, 0.0)];
    let across = kerf_mm / sin_cos_deg(set_up.blade_tilt_deg).1;
    let share = |x: f64| (x - across).max(0.0) / thickness * rise;
    let waste = [(across, 0.0), (thickness, share(thickness)), (thickness, 0.0), (thickness, 0.0)];
    // Towards the fence lies the long point: on the show face, or on the inner one.
    let show = if cut.bevel_deg < 0.0 { [(thickness, rise), (thickness, high)] } else { [(0.0, 0.0), (0.0, high)] };
    Board { kept, show, cut: [(0.0, 0.0), (thickness, rise)], waste, ends: Ends::OnEdge }
}

struct Saw<'a> {
    set_up: &'a CutSetUp,
    board: &'a Board,
    table: Zone,
}

impl Saw<'_> {
    /// The table with the slot of the blade, and the wedge on it.
    fn table(&self, sheet: &mut Sheet, spot: &impl Fn(Place) -> Spot) {
        let Zone { left, right, top, bottom } = self.table;
        let slot = spot(self.board.cut[0]).x;
        for (from, to) in [(left, slot - 3.5), (slot + 3.5, right)] {
            let ring = [Spot::new(from, top), Spot::new(to, top), Spot::new(to, bottom), Spot::new(from, bottom)];
            sheet.ring(&ring, Line::None, Fill::Grey);
            sheet.line(Spot::new(from, top), Spot::new(to, top), Line::Outline);
            sheet.line(Spot::new(from, bottom), Spot::new(to, bottom), Line::Thin);
        }
        if self.set_up.way == CutWay::OnWedge {
            let end = self.board.kept[3];
            let wedge = [spot((0.0, 0.0)), spot((end.0, 0.0)), spot(end)];
            sheet.ring(&wedge, Line::Thin, Fill::Grey);
            sheet.text(spot((0.5 * end.0, 0.0)).by(0.0, TABLE + 4.5), NORMAL, Anchor::Middle, "wedge");
        }
    }

    fn fence(&self, sheet: &mut Sheet, spot: &impl Fn(Place) -> Spot) {
        let foot = spot((0.0, 0.0));
        if self.board.ends == Ends::BrokenOff {
            return;
        }
        let high = self.board.kept.iter().map(|at| spot(*at).y).fold(foot.y, f64::min);
        let ring = [foot, Spot::new(foot.x, high - 4.0), Spot::new(foot.x + FENCE, high - 4.0), foot.by(FENCE, 0.0)];
        sheet.ring(&ring, Line::Outline, Fill::Grey);
        sheet.text(Spot::new(foot.x + 0.5 * FENCE, high - 5.5), NORMAL, Anchor::Middle, "fence");
    }

    /// Kept piece hatched, what is cut off dashed, the show face heavy.
    fn board(&self, sheet: &mut Sheet, spot: &impl Fn(Place) -> Spot) {
        let kept = self.board.kept.map(spot);
        sheet.ring(&self.board.waste.map(spot), Line::Hidden, Fill::White);
        sheet.ring(&kept, Line::None, Fill::White);
        sheet.hatch(&kept, Hatch::Rising, 2.2);
        let [from, to] = self.board.show.map(spot);
        if self.board.ends == Ends::BrokenOff {
            // The kept piece goes on to the right.
            sheet.run(&[kept[0], kept[3], kept[2], kept[1]], Line::Outline);
            sheet.broken(kept[1].by(0.0, -1.5), kept[0]);
        } else {
            sheet.ring(&kept, Line::Outline, Fill::Nothing);
        }
        sheet.line(from, to, Line::Show);
        if self.board.ends != Ends::OnEdge {
            let below = if self.board.show[0].1 > 0.0 { -2.0 } else { TABLE + 4.5 };
            let middle = Spot::new(0.5 * (from.x + to.x), 0.5 * (from.y + to.y));
            sheet.text(middle.by(0.0, below), NORMAL, Anchor::Middle, "show face");
        }
    }

    /// The blade in the kerf, its tilt beside it.
    fn blade(&self, sheet: &mut Sheet, spot: &impl Fn(Place) -> Spot, top: f64) {
        let [foot, head] = self.board.cut.map(spot);
        let length = foot.distance(head).max(f64::MIN_POSITIVE);
        let (x, y) = ((head.x - foot.x) / length, (head.y - foot.y) / length);
        // Up to a little above the board, within the sketch; down below the table.
        let above = (foot.y - head.y + 6.0).min(foot.y - top);
        let reach = |rise: f64| foot.by(-x / y * rise, -rise);
        let (high, low) = (reach(above), reach(-(TABLE + 5.0)));
        // The blade lies in the kerf, on the side of the waste: to the left, or below a board on edge.
        let kerf = spot(self.board.waste[0]).x - foot.x;
        let width = kerf.min(-1.2);
        let side = |at: Spot| at.by(width, 0.0);
        sheet.ring(&[low, high, side(high), side(low)], Line::Outline, Fill::White);
        if self.set_up.blade_tilt_deg > 0.0 {
            // Against the upright.
            let upright = Spot::new(foot.x, high.y - 1.0);
            sheet.line(foot, upright, Line::Centre);
            let away = if high.x < foot.x { Anchor::End } else { Anchor::Start };
            let sign = if high.x < foot.x { -1.0 } else { 1.0 };
            let text = format!("tilt {}", degrees(self.set_up.blade_tilt_deg));
            let beside = if sign < 0.0 { side(high).x } else { high.x };
            sheet.text(Spot::new(beside + sign * 1.5, high.y + 2.0), SIZES, away, &text);
        } else {
            sheet.text(side(high).by(-1.5, 2.0), SIZES, Anchor::End, "square");
        }
    }

    /// The fence distance at the table, and the size that is left above.
    fn sizes(&self, sheet: &mut Sheet, job: Drawn<'_>, spot: &impl Fn(Place) -> Spot) {
        let lengths = job.lengths;
        let foot = spot(self.board.cut[0]);
        if let Some(fence_mm) = self.set_up.fence_mm.filter(|_| self.board.ends == Ends::AtFence) {
            let text = lengths.bare(fence_mm);
            let to = spot((0.0, 0.0));
            let line_at = self.table.bottom + 9.0;
            sheet.dimension(&Dimension { from: foot, to, run: Run::Level, line_at, text: &text, size: SIZES });
        }
    }
}
