//! Where the fence, the stop or the marks go: distances from an edge of the board that is there at that moment.

use super::board::{BlankEdge, Board, Flat, Line, Origin};
use super::cut::{KeptPiece, StopMeets, TaperMarks};

/// Angles that differ by less are the same, degrees: those of a solid are rounded in their last digits.
pub(super) const SAME_DEG: f64 = 1e-7;

/// A cut in the plane where distances are measured: the table, or the face that carries the line.
#[derive(Clone, Copy)]
pub(super) struct Trace {
    pub(super) out: Flat,
    /// Offset along `out`, mm.
    pub(super) at: f64,
}

/// The edge that rides fence, gauge or jig.
#[derive(Clone, Copy)]
pub(super) struct Reference<'a> {
    pub(super) board: &'a Board,
    pub(super) index: usize,
    pub(super) line: &'a Line,
}

/// Distances of one cut; those that its kind does not have are absent.
#[derive(Clone, Copy, Default)]
pub(super) struct Distances {
    pub(super) fence_mm: Option<f64>,
    pub(super) marks: Option<TaperMarks>,
    pub(super) stop_mm: Option<f64>,
}

impl<'a> Reference<'a> {
    /// Every edge that still has a length on its outermost arris.
    pub(super) fn all(board: &'a Board) -> impl Iterator<Item = Self> {
        let there = |line: &Line, index| board.side(index, board.outermost_depth(line)).is_some();
        let lines = board.lines.iter().enumerate();
        lines.filter(move |(index, line)| there(line, *index)).map(move |(index, line)| Self { board, index, line })
    }

    /// Offset of the arris that touches the fence, mm.
    fn touch(&self) -> f64 {
        self.board.outermost(self.line)
    }

    /// Least and greatest place of its corners in a direction along it, on both faces, mm.
    fn reach(&self, along: Flat) -> (f64, f64) {
        let sides = self.board.faces().into_iter().filter_map(|depth| self.board.side(self.index, depth));
        let places = sides.flat_map(|side| [along.dot(side.from), along.dot(side.to)]);
        places.fold((f64::MAX, f64::MIN), |(low, high), place| (low.min(place), high.max(place)))
    }

    /// Distances of a cut.
    pub(super) fn distances(&self, kept: KeptPiece, cut: Trace, kerf_at_table_mm: f64) -> Distances {
        let none = Distances::default();
        match kept {
            KeptPiece::BetweenFenceAndBlade => Distances { fence_mm: Some(self.touch() + cut.at), ..none },
            KeptPiece::BeyondTheBlade => Distances { fence_mm: Some(self.touch() - cut.at - kerf_at_table_mm), ..none },
            KeptPiece::OnTheJig => Distances { marks: Some(self.marks(cut)), ..none },
            KeptPiece::OnTheGauge => Distances { stop_mm: Some(self.stop(cut)), ..none },
        }
    }

    /// Distances square to the edge, from its touching arris to the cut, at its farthest corners.
    fn marks(&self, cut: Trace) -> TaperMarks {
        let along = self.line.out.turned();
        // Towards greater u.
        let along = if along.u < 0.0 { Flat::new(-along.u, -along.v) } else { along };
        let (low, high) = self.reach(along);
        let back = -cut.out.dot(self.line.out);
        let mark = |place: f64| self.touch() + (cut.at - place * cut.out.dot(along)) / back;
        TaperMarks { low_end_mm: mark(low), high_end_mm: mark(high) }
    }

    /// Direction along the face of the gauge from the stop towards the blade.
    fn from_stop(&self, out: Flat) -> Flat {
        let along = self.line.out.turned();
        if along.dot(out) < 0.0 { Flat::new(-along.u, -along.v) } else { along }
    }

    /// From the farthest corner of the edge to the blade, along the face of the gauge.
    fn stop(&self, cut: Trace) -> f64 {
        let along = self.from_stop(cut.out);
        let blade = (cut.at - self.touch() * cut.out.dot(self.line.out)) / cut.out.dot(along);
        blade - self.reach(along).0
    }

    /// What the stop meets in a cut with this normal.
    pub(super) fn stop_meets(&self, out: Flat) -> StopMeets {
        let along = self.from_stop(out);
        let ends = self.board.faces().map(|depth| self.end_at(along, depth));
        let place = |end: &Option<(f64, Option<usize>)>| end.map_or(f64::MAX, |(place, _)| place);
        let [show, inner] = ends;
        let (show_at, inner_at) = (place(&show), place(&inner));
        let first = if show_at <= inner_at { show } else { inner };
        let end = first.and_then(|(_, line)| self.board.lines.get(line?));
        let upright = end.is_some_and(|end| end.out.dot(self.line.out).abs() < 1e-9);
        match end.map(|end| end.origin) {
            Some(Origin::Blank(_)) | None => StopMeets::BlankEnd,
            _ if upright && (show_at - inner_at).abs() < 1e-6 => StopMeets::CutEnd,
            _ if show_at <= inner_at => StopMeets::ShowCorner,
            _ => StopMeets::InnerCorner,
        }
    }

    /// The end that meets the stop, at a depth: its place along the edge, and its line.
    fn end_at(&self, along: Flat, depth_mm: f64) -> Option<(f64, Option<usize>)> {
        let side = self.board.side(self.index, depth_mm)?;
        let (from, to) = (along.dot(side.from), along.dot(side.to));
        Some(if from < to { (from, side.before) } else { (to, side.after) })
    }

    /// The edge of the blank that it is.
    pub(super) fn blank_edge(&self) -> Option<BlankEdge> {
        match self.line.origin {
            Origin::Blank(edge) => Some(edge),
            Origin::Panel(_) => None,
        }
    }
}
