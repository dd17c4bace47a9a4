//! Where the fence, the stop or the marks go: distances from an edge of the board that is there at that moment.

use super::board::{BlankEdge, Board, Flat, Line, Origin, SAME_MM};
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

/// A line that may end an edge: where, at each depth below the show face.
struct End {
    line: usize,
    at: f64,
    per_depth: f64,
}

/// A corner of an edge: its place along it, its depth below the show face, and the line that ends the edge there.
#[derive(Clone, Copy)]
struct Corner {
    place: f64,
    depth_mm: f64,
    line: usize,
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
    /// Every edge that still has a length on both faces: an arris alone is no reference.
    pub(super) fn all(board: &'a Board) -> impl Iterator<Item = Self> {
        let lines = board.lines.iter().zip(board.lines_on_both_faces()).enumerate();
        lines.filter(|(_, (_, there))| *there).map(move |(index, (line, _))| Self { board, index, line })
    }

    /// Offset of the arris that touches the fence, mm.
    fn touch(&self) -> f64 {
        self.board.outermost(self.line)
    }

    /// Ends of the edge in a direction along it, as linear functions of the depth; the nearest one bounds it.
    fn ends(&self, along: Flat) -> Vec<End> {
        let (out, at, run) = (self.line.out, self.line.at, self.line.slope);
        let bounding = |(index, line): (usize, &Line)| {
            let ahead = line.out.dot(along);
            let (aside, rise) = (line.out.dot(out), line.slope);
            let end =
                || End { line: index, at: (line.at - aside * at) / ahead, per_depth: (aside * run - rise) / ahead };
            (index != self.index && ahead > 1e-12).then(end)
        };
        self.board.lines.iter().enumerate().filter_map(bounding).collect()
    }

    /// The corner of the edge that lies farthest in a direction along it, on either face or between them.
    fn farthest(&self, along: Flat) -> Corner {
        let ends = self.ends(along);
        let thickness = self.board.thickness_mm;
        let nearest = |depth_mm: f64| {
            let here = ends.iter().map(|end| (end.at + depth_mm * end.per_depth, end.line));
            let nearest = here.min_by(|a, b| a.0.total_cmp(&b.0)).unwrap_or((0.0, self.index));
            Corner { place: nearest.0, depth_mm, line: nearest.1 }
        };
        // The end is farthest on a face, or where one line takes over from another.
        let meet = |a: &End, b: &End| (b.at - a.at) / (a.per_depth - b.per_depth);
        let pairs = ends.iter().enumerate().flat_map(|(k, a)| ends.iter().skip(k + 1).map(move |b| meet(a, b)));
        let between = pairs.filter(|depth| *depth > 0.0 && *depth < thickness);
        let faces = [nearest(0.0), nearest(thickness)];
        let [show, inner] = faces;
        let first = if inner.place > show.place + SAME_MM { inner } else { show };
        let farther = |best: Corner, one: Corner| if one.place > best.place + SAME_MM { one } else { best };
        between.map(nearest).fold(first, farther)
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
        let (low, high) = (-self.farthest(Flat::new(-along.u, -along.v)).place, self.farthest(along).place);
        let back = -cut.out.dot(self.line.out);
        let mark = |place: f64| self.touch() + (cut.at - place * cut.out.dot(along)) / back;
        TaperMarks { low_end_mm: mark(low), high_end_mm: mark(high) }
    }

    /// Direction along the face of the gauge from the stop towards the blade.
    fn stop_to_blade(&self, out: Flat) -> Flat {
        let along = self.line.out.turned();
        if along.dot(out) < 0.0 { Flat::new(-along.u, -along.v) } else { along }
    }

    /// From the farthest corner of the edge to the blade, along the face of the gauge.
    fn stop(&self, cut: Trace) -> f64 {
        let along = self.stop_to_blade(cut.out);
        let blade = (cut.at - self.touch() * cut.out.dot(self.line.out)) / cut.out.dot(along);
        blade + self.farthest(Flat::new(-along.u, -along.v)).place
    }

    /// What the stop meets in a cut with this normal.
    pub(super) fn stop_meets(&self, out: Flat) -> StopMeets {
        let along = self.stop_to_blade(out);
        let corner = self.farthest(Flat::new(-along.u, -along.v));
        let end = self.board.lines.get(corner.line);
        let square = end.is_some_and(|end| end.out.dot(self.line.out).abs() < 1e-9 && end.bevel_deg.abs() < SAME_DEG);
        match end.map(|end| end.origin) {
            Some(Origin::Blank(_)) | None => StopMeets::BlankEnd,
            _ if square => StopMeets::CutEnd,
            _ if corner.depth_mm <= 0.0 => StopMeets::ShowCorner,
            _ if corner.depth_mm >= self.board.thickness_mm => StopMeets::InnerCorner,
            _ => StopMeets::CornerBetween,
        }
    }

    /// The edge of the blank that it is.
    pub(super) fn blank_edge(&self) -> Option<BlankEdge> {
        match self.line.origin {
            Origin::Blank(edge) => Some(edge),
            Origin::Panel(_) => None,
        }
    }
}
