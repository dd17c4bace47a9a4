//! The cuts of a panel in an order in which a referencing edge always exists, each with its set-up.
//!
//! The board is followed from the blank on: each cut takes a piece of its outline away, so that every distance is taken
//! from an edge that is there at that moment.

use core::cmp::Ordering;

use super::board::{BlankEdge, Board, Flat, Line, Origin};
use super::caution::CutCaution;
use super::cut::{
    BladeLean, CutKind, CutSetUp, CutWay, FaceDown, KeptPiece, PanelCut, PassedLimit, SawLimit, StopMeets,
};
use super::fence::RidingEdge;
use super::machine::{BladeSide, SawSpec, ShowFace};
use super::place::{Reference, SAME_DEG, Trace};
use super::ways::{other_ways, takes};
use crate::numeric::real::{atan2_deg, cos_deg};

/// Steeper tapers than this are cut on the gauge; a choice, no published rule.
const STEEPEST_TAPER_DEG: f64 = 20.0;
/// An edge that lies nearer to parallel to the cut does not carry it on the gauge; a choice, no published rule.
const LEAST_TURN_DEG: f64 = 5.0;
/// Rips longer than this want support behind the saw, where none was described; a choice, no published rule.
const LONG_RIP_MM: f64 = 1_200.0;
/// Waste thinner than this at one face is a sliver; a choice, no published rule.
const SLIVER_MM: f64 = 3.0;
/// An edge that meets the gauge with less than this is a poor reference; a choice, no published rule.
const LEAST_RIDING_MM: f64 = 50.0;

/// A panel, its edges by name, and the saw.
pub(super) struct Sawing<'a> {
    pub(super) panel: &'a Board,
    pub(super) names: &'a [String],
    pub(super) saw: &'a SawSpec,
}

/// Size of the blank and every cut.
pub(super) struct Sawn {
    pub(super) blank_length_mm: f64,
    pub(super) blank_width_mm: f64,
    pub(super) cuts: Vec<PanelCut>,
}

/// One way to lay the board for a cut: what rides, which face is down, which side of the blade is kept.
#[derive(Clone, Copy)]
pub(super) struct Lay<'a> {
    pub(super) line: &'a Line,
    pub(super) reference: Reference<'a>,
    pub(super) kept: KeptPiece,
    pub(super) face_down: FaceDown,
    pub(super) fence_side: Option<BladeSide>,
    pub(super) kept_side: BladeSide,
    pub(super) lean: BladeLean,
}

impl Lay<'_> {
    /// Side to which the top of the blade leans.
    pub(super) fn leans(&self) -> Option<BladeSide> {
        match self.lean {
            BladeLean::Upright => None,
            BladeLean::OverKept => Some(self.kept_side),
            BladeLean::AwayFromKept => Some(self.kept_side.other()),
        }
    }

    /// How the riding edge meets the fence.
    pub(super) fn riding(&self) -> RidingEdge {
        let bevel_deg = self.reference.line.bevel_deg;
        if bevel_deg.abs() < SAME_DEG {
            RidingEdge::Square
        } else if (bevel_deg > 0.0) == (self.face_down == FaceDown::InnerFace) {
            RidingEdge::LongPointUp
        } else {
            RidingEdge::LongPointDown
        }
    }
}

/// A lay with the limits it passes and its place among the others: fewer limits, then lower rates from left to right.
struct Candidate<'a> {
    lay: Lay<'a>,
    set_up: CutSetUp,
    passed: Vec<PassedLimit>,
    rates: [f64; 7],
}

impl Candidate<'_> {
    fn rated(self, rates: [f64; 7]) -> Self {
        Self { rates, ..self }
    }

    fn compare(&self, other: &Self) -> Ordering {
        let by_rates = self.rates.partial_cmp(&other.rates).unwrap_or(Ordering::Equal);
        self.passed.len().cmp(&other.passed.len()).then(by_rates)
    }
}

/// Order of the cuts: along the grain, then tapers, then across; each by its bevel.
fn rank(line: &Line) -> u8 {
    let off_grain_deg = atan2_deg(line.out.u.abs(), line.out.v.abs());
    match off_grain_deg {
        _ if off_grain_deg < SAME_DEG => 0,
        _ if off_grain_deg <= STEEPEST_TAPER_DEG => 1,
        _ => 2,
    }
}

impl Sawing<'_> {
    /// The blank and the cuts; nothing when the lines enclose no panel.
    pub(super) fn cuts(&self) -> Option<Sawn> {
        let mut order: Vec<&Line> = self.panel.lines.iter().collect();
        order.sort_by(|a, b| {
            let by_bevel = a.bevel_deg.abs().partial_cmp(&b.bevel_deg.abs());
            rank(a).cmp(&rank(b)).then(by_bevel.unwrap_or(Ordering::Equal))
        });
        let is_square_along = |line: &&Line| rank(line) == 0 && line.bevel_deg.abs() < SAME_DEG;
        let jointed = order.first().copied().filter(is_square_along);
        let (mut board, blank_length_mm, blank_width_mm) = self.blank(jointed)?;
        let mut steps = vec![0; self.panel.lines.len()];
        let mut cuts = Vec::with_capacity(order.len());
        for (line, step) in order.into_iter().zip(1_u32..) {
            let mut cut = if step == 1 && jointed.is_some() {
                self.joint(&mut board, line)
            } else {
                self.cut(&mut board, line, &steps)
            };
            let index = number(line);
            cut.step = step;
            cut.edge_index = index as u32;
            cut.edge = self.names.get(index).cloned().unwrap_or_default();
            cut.show_size_mm = board.show_extent(line.out);
            if let Some(made) = steps.get_mut(index) {
                *made = step;
            }
            cuts.push(cut);
        }
        Some(Sawn { blank_length_mm, blank_width_mm, cuts })
    }

    /// The square-edged blank: the allowance at each long edge but the jointed one, the trim at each end.
    fn blank(&self, jointed: Option<&Line>) -> Option<(Board, f64, f64)> {
        let (low, high) = self.panel.solid()?.bounds();
        let over = |edge: BlankEdge| match (edge, jointed) {
            (BlankEdge::LowEnd | BlankEdge::HighEnd, _) => self.saw.end_trim_mm,
            (_, Some(line)) if line.out.dot(edge.out()) > 0.5 => 0.0,
            _ => self.saw.rip_allowance_mm,
        };
        let (low, high) = (Flat::new(low.x, low.y), Flat::new(high.x, high.y));
        let at = |edge: BlankEdge| over(edge) + edge.out().dot(low).max(edge.out().dot(high));
        let line = |edge: BlankEdge| Line::new(edge.out(), at(edge), 0.0, Origin::Blank(edge));
        let length_mm = at(BlankEdge::LowEnd) + at(BlankEdge::HighEnd);
        let width_mm = at(BlankEdge::LowLongEdge) + at(BlankEdge::HighLongEdge);
        let lines = BlankEdge::ALL.into_iter().map(line).collect();
        Some((Board { thickness_mm: self.panel.thickness_mm, lines }, length_mm, width_mm))
    }

    /// The edge of the blank becomes the edge of the panel.
    fn joint(&self, board: &mut Board, line: &Line) -> PanelCut {
        let edge = if line.out.v > 0.0 { BlankEdge::HighLongEdge } else { BlankEdge::LowLongEdge };
        board.lines.retain(|one| one.origin != Origin::Blank(edge));
        board.lines.push(*line);
        let length = board.edge_length(board.lines.len() - 1);
        PanelCut { rides_blank: Some(edge), rides: self.blank_name(edge), ..plain(line, length) }
    }

    /// One cut, its best set-up, and what the board is afterwards.
    fn cut(&self, board: &mut Board, line: &Line, steps: &[u32]) -> PanelCut {
        let before = board.clone();
        board.lines.push(*line);
        let length = board.edge_length(board.lines.len() - 1);
        let mut cut = plain(line, length);
        let candidates = self.candidates(&before, line, length);
        let Some(best) = candidates.into_iter().min_by(Candidate::compare) else { return cut };
        let Candidate { lay, set_up, passed, .. } = best;
        let reference = lay.reference;
        cut.kind = match lay.kept {
            KeptPiece::OnTheGauge => CutKind::GaugeCut,
            KeptPiece::OnTheJig => CutKind::TaperRip,
            _ => CutKind::FenceRip,
        };
        cut.gauge_deg = match cut.kind {
            CutKind::GaugeCut => gauge(line, reference.line),
            CutKind::TaperRip => taper(line, reference.line).abs(),
            _ => 0.0,
        };
        cut.rides_blank = reference.blank_edge();
        (cut.rides_step, cut.rides) = match reference.line.origin {
            Origin::Blank(edge) => (0, self.blank_name(edge)),
            Origin::Panel(k) => (steps.get(k).copied().unwrap_or(0), self.names.get(k).cloned().unwrap_or_default()),
        };
        cut.riding_bevel_deg = reference.line.bevel_deg;
        cut.kept = lay.kept;
        cut.stop_meets = set_up.stop_mm.map(|_| reference.stop_meets(line.out));
        if passed.is_empty() {
            cut.set_up = Some(set_up);
        } else {
            let mut ways = other_ways(&lay, self.saw, &passed, length, board.show_extent(line.out)).into_iter();
            cut.set_up = ways.next();
            cut.alternatives = ways.collect();
            cut.passed = passed;
        }
        let sliver = thinnest_waste(&before, line) - set_up.kerf_at_table_mm < SLIVER_MM;
        cut.cautions = self.cautions(&cut, sliver);
        cut
    }

    /// Name of the panel's edge that lies nearest an edge of the blank.
    fn blank_name(&self, edge: BlankEdge) -> String {
        let towards = |line: &&Line| line.out.dot(edge.out());
        let beside = self.panel.lines.iter().max_by(|a, b| towards(a).total_cmp(&towards(b)));
        beside.and_then(|line| self.names.get(number(line))).cloned().unwrap_or_default()
    }

    /// Every lay that makes an edge: long edges along the fence or on a jig, what is steeper on the gauge.
    fn candidates<'a>(&self, board: &'a Board, line: &'a Line, length_mm: f64) -> Vec<Candidate<'a>> {
        let mut found = Vec::new();
        if rank(line) < 2 {
            for reference in Reference::all(board) {
                let turn_deg = taper(line, reference.line).abs();
                let opposite = reference.line.out.dot(line.out) < 0.0;
                if turn_deg < SAME_DEG {
                    let kept = if opposite { KeptPiece::BetweenFenceAndBlade } else { KeptPiece::BeyondTheBlade };
                    self.fence_lays(&mut found, reference, line, kept, length_mm);
                } else if opposite && turn_deg <= STEEPEST_TAPER_DEG {
                    self.jig_lays(&mut found, reference, line, length_mm);
                }
            }
        }
        if found.is_empty() {
            for reference in Reference::all(board).filter(|one| taper(line, one.line).abs() >= LEAST_TURN_DEG) {
                self.gauge_lays(&mut found, reference, line, length_mm);
            }
        }
        found
    }

    fn fence_lays<'a>(
        &self,
        found: &mut Vec<Candidate<'a>>,
        reference: Reference<'a>,
        line: &'a Line,
        kept: KeptPiece,
        length_mm: f64,
    ) {
        let machine = &self.saw.machine;
        let sides =
            BladeSide::BOTH.into_iter().filter(|side| *side == BladeSide::Right || machine.rip_left_mm.is_some());
        for (fence_side, face_down) in sides.flat_map(|side| FaceDown::BOTH.map(|face| (side, face))) {
            let beyond = kept == KeptPiece::BeyondTheBlade;
            let kept_side = if beyond { fence_side.other() } else { fence_side };
            let lay = lay(line, reference, kept, face_down, Some(fence_side), kept_side);
            let trapped = lay.leans() == Some(fence_side);
            // Where the maker likes the show face down, a long point on it is cut with the blade towards the fence.
            let likes_down = self.saw.show_face == ShowFace::Down && line.bevel_deg >= SAME_DEG;
            let off_habit =
                if likes_down || line.bevel_deg.abs() < SAME_DEG { self.is_off_habit(face_down) } else { trapped };
            let rates = [beyond, off_habit, trapped, fence_side == BladeSide::Left, false, false, false].map(rate);
            let candidate = self.candidate(lay, length_mm).rated(rates);
            // A strip too narrow to lie at the fence, or a limit passed: the other piece lies there.
            let strip_holds = candidate.set_up.fence_mm.is_some_and(|fence| fence >= machine.narrow_mm);
            if !beyond || (strip_holds && candidate.passed.is_empty()) {
                found.push(candidate);
            }
        }
    }

    fn jig_lays<'a>(&self, found: &mut Vec<Candidate<'a>>, reference: Reference<'a>, line: &'a Line, length_mm: f64) {
        for (kept_side, face_down) in
            BladeSide::BOTH.into_iter().flat_map(|side| FaceDown::BOTH.map(|face| (side, face)))
        {
            let lay = lay(line, reference, KeptPiece::OnTheJig, face_down, None, kept_side);
            let off_square = lay.riding() != RidingEdge::Square;
            let steep_deg = taper(line, reference.line).abs();
            let [square, habit, left] =
                [off_square, self.is_off_habit(face_down), kept_side == BladeSide::Left].map(rate);
            found.push(self.candidate(lay, length_mm).rated([square, habit, steep_deg, left, 0.0, 0.0, 0.0]));
        }
    }

    fn gauge_lays<'a>(&self, found: &mut Vec<Candidate<'a>>, reference: Reference<'a>, line: &'a Line, length_mm: f64) {
        // Seen with the show face up and the riding edge towards the operator, the waste lies to the right when this is
        // positive.
        let to_right = reference.line.out.turned().dot(line.out);
        // Whole millionths of a degree: what differs by rounding is a tie.
        let angle = (1.0e6 * gauge(line, reference.line).abs()).round();
        for face_down in FaceDown::BOTH {
            let waste_right = (to_right > 0.0) == (face_down == FaceDown::InnerFace);
            let kept_side = if waste_right { BladeSide::Left } else { BladeSide::Right };
            let lay = lay(line, reference, KeptPiece::OnTheGauge, face_down, None, kept_side);
            let riding = lay.riding();
            let candidate = self.candidate(lay, length_mm);
            let poor = candidate.set_up.stop_mm.is_some_and(|stop| stop < LEAST_RIDING_MM);
            let [end, bevelled, down] =
                [!reference.line.is_long_edge(), riding != RidingEdge::Square, riding == RidingEdge::LongPointDown]
                    .map(rate);
            // Of a saw whose side was not told the same is used for both ends where it can be: most tilt one way.
            let right = rate(lay.leans() == Some(BladeSide::Right));
            let habit = rate(self.is_off_habit(face_down));
            found.push(candidate.rated([rate(poor), end, bevelled, habit, down, angle, right]));
        }
    }

    fn is_off_habit(&self, face_down: FaceDown) -> bool {
        (self.saw.show_face == ShowFace::Up) != (face_down == FaceDown::InnerFace)
    }

    /// The board flat on the table, with the limits it passes.
    fn candidate<'a>(&self, lay: Lay<'a>, length_mm: f64) -> Candidate<'a> {
        let set_up = flat(&lay, self.saw);
        let passed = self.passed(&lay, &set_up, length_mm);
        Candidate { lay, set_up, passed, rates: [0.0; 7] }
    }

    fn passed(&self, lay: &Lay<'_>, set_up: &CutSetUp, length_mm: f64) -> Vec<PassedLimit> {
        let machine = &self.saw.machine;
        let reach = takes(lay, self.saw);
        let tilts = set_up.blade_tilt_deg <= reach + SAME_DEG;
        let (thickness, on_gauge) = (lay.reference.board.thickness_mm, lay.kept == KeptPiece::OnTheGauge);
        let capacity = lay.fence_side.and_then(|side| machine.rip_capacity_mm(side));
        let angle = gauge(lay.line, lay.reference.line).abs();
        let low_fence =
            machine.highest_fence_mm().filter(|_| lay.fence_side.is_some() && set_up.riding == RidingEdge::LongPointUp);
        let limits = [
            (SawLimit::Tilt, Some(set_up.blade_tilt_deg), Some(reach)),
            (SawLimit::CutHeight, tilts.then_some(thickness), set_up.has_height_mm),
            (SawLimit::RipCapacity, set_up.fence_mm, capacity),
            (SawLimit::CrosscutCapacity, on_gauge.then_some(length_mm), machine.crosscut_mm),
            (SawLimit::GaugeAngle, on_gauge.then_some(angle), machine.max_gauge_deg),
            (SawLimit::FenceHeight, Some(thickness), low_fence),
        ];
        let beyond = |(limit, needed, available): (SawLimit, Option<f64>, Option<f64>)| {
            let (needed, available) = (needed?, available?);
            (needed > available + SAME_DEG).then_some(PassedLimit { limit, needed, available })
        };
        limits.into_iter().filter_map(beyond).collect()
    }

    fn cautions(&self, cut: &PanelCut, sliver: bool) -> Vec<CutCaution> {
        use CutCaution as C;
        let machine = &self.saw.machine;
        let Some(set_up) = &cut.set_up else { return vec![C::GuardAndRivingKnife] };
        let by_rail = set_up.way == CutWay::TrackSaw;
        let flat = matches!(set_up.way, CutWay::FlatOnTable | CutWay::OversizeThenPlane);
        let fence = cut.kind == CutKind::FenceRip && !by_rail && set_up.way != CutWay::OnEdge;
        let rips = matches!(cut.kind, CutKind::FenceRip | CutKind::TaperRip) && !by_rail;
        let trapped = fence && set_up.leans.is_some() && set_up.leans == set_up.fence_side;
        let between = cut.kept == KeptPiece::BetweenFenceAndBlade;
        let at_fence_mm = set_up.fence_mm.unwrap_or(0.0);
        let short = cut.cut_length_mm < machine.short_mm || cut.cut_length_mm < at_fence_mm;
        let tips = machine.outfeed_mm.map_or(cut.cut_length_mm > LONG_RIP_MM, |has| 0.5 * cut.cut_length_mm > has);
        let at_corner =
            matches!(cut.stop_meets, Some(StopMeets::ShowCorner | StopMeets::InnerCorner | StopMeets::CornerBetween));
        let list = [
            (true, C::GuardAndRivingKnife),
            (set_up.blade_tilt_deg > SAME_DEG && !by_rail, C::InsertForTilt),
            (trapped && between, C::TrappedKeptPiece),
            (trapped && !between, C::TrappedWaste),
            (fence && at_fence_mm < machine.narrow_mm, C::NarrowPiece),
            (fence && short, C::ShortPiece),
            (!by_rail && set_up.riding == RidingEdge::LongPointUp, C::LongPointAboveFence),
            (!by_rail && set_up.riding == RidingEdge::LongPointDown, C::LongPointUnderFence),
            (rips && tips, C::OutfeedForLongRip),
            (sliver, C::WedgeSliver),
            (cut.kind == CutKind::GaugeCut && !by_rail, C::StopBlockNotFence),
            (cut.kind == CutKind::GaugeCut && at_corner && !by_rail, C::StopAtCorner),
            (set_up.way == CutWay::OnEdge, C::BoardOnEdge),
            (cut.kind == CutKind::TaperRip && !by_rail, C::ClampedToJig),
            (set_up.way == CutWay::OnWedge, C::WedgeUnderBoard),
            (flat && self.is_off_habit(set_up.face_down), C::TurnedOver),
        ];
        list.into_iter().filter(|(holds, _)| *holds).map(|(_, caution)| caution).collect()
    }
}

fn rate(is: bool) -> f64 {
    f64::from(u8::from(is))
}

/// Number of the panel's edge.
fn number(line: &Line) -> usize {
    match line.origin {
        Origin::Panel(k) => k,
        Origin::Blank(_) => usize::MAX,
    }
}

fn lay<'a>(
    line: &'a Line,
    reference: Reference<'a>,
    kept: KeptPiece,
    face_down: FaceDown,
    fence_side: Option<BladeSide>,
    kept_side: BladeSide,
) -> Lay<'a> {
    // A blade that leans over the kept piece leaves its long point on the table.
    let lean = if line.bevel_deg.abs() < SAME_DEG {
        BladeLean::Upright
    } else if (line.bevel_deg > 0.0) == (face_down == FaceDown::ShowFace) {
        BladeLean::OverKept
    } else {
        BladeLean::AwayFromKept
    };
    Lay { line, reference, kept, face_down, fence_side, kept_side, lean }
}

/// Turn from parallel of a cut against the edge that rides, degrees.
fn taper(line: &Line, riding: &Line) -> f64 {
    atan2_deg(riding.out.cross(line.out), riding.out.dot(line.out).abs())
}

/// Angle of a cut on the gauge from square, degrees; positive when the panel is longer at its far side.
fn gauge(line: &Line, riding: &Line) -> f64 {
    atan2_deg(line.out.dot(riding.out), line.out.cross(riding.out).abs()) + 0.0
}

/// Least thickness of the waste over both faces, where it is thickest along the cut, mm.
fn thinnest_waste(before: &Board, line: &Line) -> f64 {
    let thick = |depth: f64| {
        let reach = before.outline(depth).into_iter().map(|point| line.out.dot(point)).fold(f64::MIN, f64::max);
        reach - line.at_depth(depth)
    };
    before.faces().into_iter().map(thick).fold(f64::MAX, f64::min)
}

/// The board flat on the table.
fn flat(lay: &Lay<'_>, saw: &SawSpec) -> CutSetUp {
    let Line { out, bevel_deg, .. } = *lay.line;
    let thickness = lay.reference.board.thickness_mm;
    let depth = if lay.face_down == FaceDown::ShowFace { 0.0 } else { thickness };
    let kerf_at_table_mm = saw.kerf_mm / cos_deg(bevel_deg);
    let distances = lay.reference.distances(lay.kept, Trace { out, at: lay.line.at_depth(depth) }, kerf_at_table_mm);
    CutSetUp {
        way: CutWay::FlatOnTable,
        face_down: lay.face_down,
        blade_tilt_deg: bevel_deg.abs(),
        lean: lay.lean,
        leans: lay.leans(),
        wedge_deg: 0.0,
        fence_side: lay.fence_side,
        kept_side: Some(lay.kept_side),
        riding: lay.riding(),
        fence_mm: distances.fence_mm,
        marks: distances.marks,
        stop_mm: distances.stop_mm,
        square_first_mm: None,
        kerf_at_table_mm,
        needs_height_mm: thickness,
        has_height_mm: saw.machine.cut_height_at_mm(bevel_deg),
        needs_fence_mm: 0.0,
        planing_mm: 0.0,
    }
}

/// What a cut has before anything is set.
fn plain(line: &Line, cut_length_mm: f64) -> PanelCut {
    PanelCut {
        step: 0,
        edge_index: 0,
        edge: String::new(),
        kind: CutKind::Joint,
        bevel_deg: line.bevel_deg,
        gauge_deg: 0.0,
        rides_step: 0,
        rides_blank: None,
        rides: String::new(),
        riding_bevel_deg: 0.0,
        kept: KeptPiece::BetweenFenceAndBlade,
        stop_meets: None,
        cut_length_mm,
        show_size_mm: 0.0,
        set_up: None,
        passed: Vec::new(),
        alternatives: Vec::new(),
        cautions: Vec::new(),
    }
}
