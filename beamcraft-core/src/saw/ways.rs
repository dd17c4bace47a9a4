//! Other ways of a cut that the saw does not make with the board flat on the table, each computed in full.

use super::board::{Line, SAME_MM};
use super::cut::{BladeLean, CutSetUp, CutWay, FaceDown, KeptPiece, PassedLimit, SawLimit};
use super::fence::RidingEdge;
use super::machine::{BladeSide, SawSpec};
use super::order::Lay;
use super::place::{Distances, SAME_DEG, Trace};
use crate::limits;
use crate::numeric::real::{cos_deg, tan_deg};

/// Standing higher than this on edge no fence holds a board, where none was described; a choice, no published rule.
const ON_EDGE_MOST_MM: f64 = 600.0;
/// A board on a steeper wedge than this is worse held than one on edge; a choice, no published rule.
const GENTLE_WEDGE_DEG: f64 = 10.0;

/// Largest tilt to the side to which the blade must lean, degrees.
pub(super) fn takes(lay: &Lay<'_>, saw: &SawSpec) -> f64 {
    lay.leans().map_or(saw.max_tilt_deg, |side| saw.tilt_towards(side))
}

/// Ways that make the cut within what the saw has, the better supported first.
///
/// `length_mm` is the length of the cut, `standing_mm` the extent of the board square to it.
pub(super) fn other_ways(
    lay: &Lay<'_>,
    saw: &SawSpec,
    passed: &[PassedLimit],
    length_mm: f64,
    standing_mm: f64,
) -> Vec<CutSetUp> {
    let ways = Ways { lay, saw, reach_deg: takes(lay, saw) };
    // Where the fence, the gauge or the height fail, no other lay of the board on the table helps.
    let tilt_only = passed.iter().all(|one| one.limit == SawLimit::Tilt);
    let wedge = ways.on_wedge().filter(|_| tilt_only);
    let gentle = |way: &CutSetUp| way.wedge_deg <= GENTLE_WEDGE_DEG;
    [
        ways.track_saw().filter(|_| saw.machine.track_saw.is_some()),
        wedge.filter(gentle),
        ways.oversize().filter(|_| tilt_only),
        ways.on_edge(length_mm, standing_mm).filter(|_| tilt_only),
        wedge.filter(|way| !gentle(way)),
        ways.track_saw().filter(|_| saw.machine.track_saw.is_none()),
    ]
    .into_iter()
    .flatten()
    .filter(|way| ways.fence_reaches(way))
    .collect()
}

struct Ways<'a> {
    lay: &'a Lay<'a>,
    saw: &'a SawSpec,
    reach_deg: f64,
}

impl Ways<'_> {
    fn size_deg(&self) -> f64 {
        self.lay.line.bevel_deg.abs()
    }

    fn thickness(&self) -> f64 {
        self.lay.reference.board.thickness_mm
    }

    /// Offset of the long point, mm.
    fn long_point(&self) -> f64 {
        self.lay.reference.board.outermost(self.lay.line)
    }

    fn long_face(&self) -> FaceDown {
        if self.lay.line.bevel_deg < 0.0 { FaceDown::InnerFace } else { FaceDown::ShowFace }
    }

    fn distances(&self, at: f64, kerf_at_table_mm: f64) -> Distances {
        let Line { out, .. } = *self.lay.line;
        self.lay.reference.distances(self.lay.kept, Trace { out, at }, kerf_at_table_mm)
    }

    /// A set-up of the same lay with another tilt, measured at an offset of the cut.
    fn at(&self, way: CutWay, blade_tilt_deg: f64, at: f64, kerf_at_table_mm: f64) -> CutSetUp {
        let Distances { fence_mm, marks, stop_mm } = self.distances(at, kerf_at_table_mm);
        CutSetUp {
            way,
            face_down: self.lay.face_down,
            blade_tilt_deg,
            lean: self.lay.lean,
            leans: self.lay.leans(),
            wedge_deg: 0.0,
            fence_side: self.lay.fence_side,
            kept_side: Some(self.lay.kept_side),
            riding: self.lay.riding(),
            fence_mm,
            marks,
            stop_mm,
            square_first_mm: None,
            kerf_at_table_mm,
            needs_height_mm: self.thickness(),
            has_height_mm: self.saw.machine.cut_height_at_mm(blade_tilt_deg),
            needs_fence_mm: 0.0,
            planing_mm: 0.0,
        }
    }

    /// Flat on a wedge that leans the board by what the blade lacks: on the wedge all is as it would be on the table.
    fn on_wedge(&self) -> Option<CutSetUp> {
        let (size, reach) = (self.size_deg(), self.reach_deg);
        let depth = if self.lay.face_down == FaceDown::ShowFace { 0.0 } else { self.thickness() };
        let on_table = self.at(CutWay::OnWedge, reach, self.lay.line.at_depth(depth), self.saw.kerf_mm / cos_deg(size));
        let way = CutSetUp {
            wedge_deg: size - reach,
            // The cut face is t / cos b long in the plane of the blade, whatever leans.
            needs_height_mm: self.thickness() * cos_deg(reach) / cos_deg(size),
            ..on_table
        };
        Some(way).filter(|_| reach > 0.0 && self.lay.kept != KeptPiece::BeyondTheBlade).filter(reaches)
    }

    /// Flat, the blade as far over as it goes, the long point at its size.
    fn oversize(&self) -> Option<CutSetUp> {
        let (reach, thickness) = (self.reach_deg, self.thickness());
        let at = match self.lay.lean {
            BladeLean::AwayFromKept => self.long_point() - thickness * tan_deg(reach),
            BladeLean::OverKept | BladeLean::Upright => self.long_point(),
        };
        let planing_mm = thickness * (tan_deg(self.size_deg()) - tan_deg(reach));
        let way = self.at(CutWay::OversizeThenPlane, reach, at, self.saw.kerf_mm / cos_deg(reach));
        let lean = if reach > 0.0 { way.lean } else { BladeLean::Upright };
        let leans = way.leans.filter(|_| reach > 0.0);
        let little = planing_mm <= self.saw.machine.planing_mm && self.lay.kept != KeptPiece::BeyondTheBlade;
        Some(CutSetUp { planing_mm, lean, leans, ..way }).filter(|_| little).filter(reaches)
    }

    /// On edge against a tall fence, the blade at the complement.
    fn on_edge(&self, length_mm: f64, standing_mm: f64) -> Option<CutSetUp> {
        let machine = &self.saw.machine;
        let tilt_deg = 90.0 - self.size_deg();
        // The blade leans away from the fence, to a side that reaches this tilt.
        let sides = [BladeSide::Left, BladeSide::Right];
        let leans = sides.into_iter().find(|side| tilt_deg <= self.saw.tilt_towards(*side) + SAME_DEG)?;
        let fence_side = leans.other();
        let run = self.thickness() * tan_deg(self.size_deg());
        let fence = 0.5 * standing_mm;
        let square = self.distances(self.long_point(), self.saw.kerf_mm);
        let square_first_mm = square.fence_mm.or(square.stop_mm);
        let fence_holds = machine.tall_fence_mm.map_or(standing_mm <= ON_EDGE_MOST_MM, |has| fence <= has);
        let stands = length_mm >= machine.on_edge_base_mm && standing_mm > run;
        let there = fence_side == BladeSide::Right || machine.rip_left_mm.is_some();
        let kept = self.lay.kept != KeptPiece::BeyondTheBlade;
        let way = CutSetUp {
            face_down: self.long_face(),
            lean: BladeLean::AwayFromKept,
            leans: Some(leans),
            fence_side: Some(fence_side),
            kept_side: None,
            riding: RidingEdge::Square,
            fence_mm: Some(0.0),
            marks: square.marks,
            stop_mm: None,
            square_first_mm,
            needs_height_mm: run,
            needs_fence_mm: fence,
            ..self.at(CutWay::OnEdge, tilt_deg, self.long_point(), self.saw.kerf_mm / cos_deg(tilt_deg))
        };
        Some(way).filter(|_| fence_holds && stands && there && kept).filter(reaches)
    }

    /// Whether the fence goes as far as it must.
    fn fence_reaches(&self, way: &CutSetUp) -> bool {
        // On edge the fence stands at the blade; the square cut before it is made as the board lay flat.
        let (farthest, side) = match way.way {
            CutWay::OnEdge => (way.square_first_mm, self.lay.fence_side),
            _ => (way.fence_mm, way.fence_side),
        };
        let capacity = side.and_then(|side| self.saw.machine.rip_capacity_mm(side));
        match (farthest, capacity) {
            (Some(needed), Some(has)) => needed <= has + SAME_MM,
            _ => true,
        }
    }

    /// With a saw guided along a rail, the long-point face up; one that was not described tells what it must reach.
    fn track_saw(&self) -> Option<CutSetUp> {
        let size = self.size_deg();
        let has = self.saw.machine.track_saw.map(|saw| saw.cut_depth_at_mm(size));
        let tilts = self.saw.machine.track_saw.map_or(limits::SAW_TILT.high, |saw| saw.max_tilt_deg);
        let up = self.long_face();
        let way = CutSetUp {
            face_down: if up == FaceDown::ShowFace { FaceDown::InnerFace } else { FaceDown::ShowFace },
            lean: if size < SAME_DEG { BladeLean::Upright } else { BladeLean::AwayFromKept },
            leans: None,
            fence_side: None,
            kept_side: None,
            riding: RidingEdge::Square,
            has_height_mm: has,
            ..self.at(CutWay::TrackSaw, size, self.long_point(), self.saw.kerf_mm / cos_deg(size))
        };
        Some(way).filter(|_| size <= tilts + SAME_DEG && self.lay.kept != KeptPiece::BeyondTheBlade).filter(reaches)
    }
}

/// Whether the blade comes high enough, as far as the saw was described.
fn reaches(way: &CutSetUp) -> bool {
    way.has_height_mm.is_none_or(|has| way.needs_height_mm <= has + SAME_MM)
}
