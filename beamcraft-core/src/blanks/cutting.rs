//! How the panels, the frame and the strip of a plan become blanks.

use super::lots::{BlankPriority, BlankUse, GluedBlank, NestedBlank, PlanBlanks, PlanBlanksInput};
use crate::layout::{BoardPart, BoardPartTurn, GroupDirection, GroupPart, PartGroup};
use crate::numeric::real::{cos_deg, tan_deg};
use crate::plan::Plan;
use crate::shell::{EdgeCut, FaceId, FaceKind, Panel, PanelEdge};

/// Sizes closer than this are one size, mm.
const SAME: f64 = 0.01;

/// What one beam of the batch adds.
pub(super) struct Maker<'m> {
    pub(super) input: &'m PlanBlanksInput,
    pub(super) plan: &'m Plan,
    pub(super) count: u32,
    /// Begins every name where there are several beams.
    pub(super) named: String,
    pub(super) made: &'m mut PlanBlanks,
}

impl Maker<'_> {
    fn wood(&self) -> String {
        self.plan.spec.wood.species.clone()
    }

    fn name(&self, words: impl core::fmt::Display) -> String {
        format!("{}{words}", self.named)
    }

    fn part(&mut self, (blank_use, wood, thickness_mm): (BlankUse, &str, f64), part: BoardPart) {
        if let Some(lot) = self.made.lot(blank_use, wood, thickness_mm) {
            lot.parts.push(part);
        }
    }

    /// Staves of a blank of this width: how many and how wide each.
    fn staves(&self, width_mm: f64) -> (u32, f64) {
        let PlanBlanksInput { widest_board_mm: most, joint_allowance_mm: joint, .. } = *self.input;
        if width_mm <= most {
            return (1, width_mm);
        }
        // n staves lose 2 j at each of n − 1 seams.
        let count = ((width_mm - 2.0 * joint) / (most - 2.0 * joint) - 1e-9).ceil().max(2.0);
        (count as u32, (width_mm + 2.0 * joint * (count - 1.0)) / count)
    }

    fn note_glued(&mut self, name: &str, width_mm: f64, (staves, stave_width_mm): (u32, f64)) {
        let seams_mm = (1..staves).map(|k| width_mm * f64::from(k) / f64::from(staves)).collect();
        let name = name.to_owned();
        self.made.glued.push(GluedBlank { name, width_mm, staves, stave_width_mm, seams_mm });
    }

    /// A blank, in staves where no board is wide enough.
    fn blank(&mut self, name: &str, length_mm: f64, width_mm: f64, thickness_mm: f64) {
        let staves = self.staves(width_mm);
        if staves.0 > 1 {
            self.note_glued(name, width_mm, staves);
        }
        let name = if staves.0 > 1 { format!("{name}, stave") } else { name.to_owned() };
        let count = self.count.saturating_mul(staves.0);
        let wood = self.wood();
        self.part((BlankUse::Panels, &wood, thickness_mm), plain(name, length_mm, staves.1, count));
    }
}

fn plain(name: String, length_mm: f64, width_mm: f64, count: u32) -> BoardPart {
    BoardPart { name, length_mm, width_mm, count, turn: BoardPartTurn::AlongGrain, worth: None }
}

/// Panels: first the groups, then the pairs, then the rest.
pub(super) fn panels(maker: &mut Maker<'_>) {
    let plan = maker.plan;
    let mut left: Vec<&Panel> = plan.panels.iter().collect();
    if maker.input.priority != BlankPriority::Yield {
        let fronts: Vec<FaceId> = left.iter().map(|panel| panel.id).filter(|id| id.kind == FaceKind::Front).collect();
        for front in fronts {
            group(maker, &mut left, front);
        }
    }
    while let Some(panel) = left.first().copied() {
        left.remove(0);
        match left.iter().position(|other| nested(maker, panel, other).is_some()) {
            Some(place) => {
                let other = left.remove(place);
                pair(maker, panel, other);
            }
            None => {
                let name = maker.name(panel.id);
                let length_mm = panel.blank_length_mm + maker.input.length_allowance_mm;
                let width_mm = panel.blank_width_mm + maker.input.width_allowance_mm;
                maker.blank(&name, length_mm, width_mm, panel.thickness_mm);
            }
        }
    }
}

/// Left end, front and right end in line, as far as they are there and of one width and thickness.
fn group(maker: &mut Maker<'_>, left: &mut Vec<&Panel>, front: FaceId) {
    let of = |kind: FaceKind| left.iter().copied().find(|panel| panel.id == FaceId { leg: front.leg, kind });
    let Some(middle) = of(FaceKind::Front) else { return };
    let fits = |panel: &Panel| {
        (panel.blank_width_mm - middle.blank_width_mm).abs() < SAME && panel.thickness_mm == middle.thickness_mm
    };
    let members: Vec<&Panel> = [of(FaceKind::LeftEnd), Some(middle), of(FaceKind::RightEnd)]
        .into_iter()
        .flatten()
        .filter(|panel| fits(panel))
        .collect();
    let width_mm = middle.blank_width_mm + maker.input.width_allowance_mm;
    let staves = maker.staves(width_mm);
    if members.len() < 2 || (staves.0 > 1 && maker.input.priority == BlankPriority::Width) {
        return;
    }
    let kerf_mm = maker.plan.spec.saw.kerf_mm;
    let corner = |panel: &&Panel| panel.edge(front).map_or(0.0, |edge| edge.tilt_deg.abs());
    let bevel_deg = members.iter().map(corner).fold(0.0, f64::max);
    let ends = 0.5 * maker.input.length_allowance_mm;
    let last = members.len() - 1;
    let parts = members.iter().enumerate().map(|(k, panel)| {
        let outer = if k == 0 || k == last { ends } else { 0.0 };
        let name = maker.name(panel.id);
        GroupPart { name, length_mm: panel.blank_length_mm + outer, width_mm: staves.1 }
    });
    let parts: Vec<GroupPart> = parts.collect();
    let mut name = maker.name(format_args!("run of {front}"));
    if staves.0 > 1 {
        maker.note_glued(&name, width_mm, staves);
        name.push_str(", stave");
    }
    let (count, wood) = (maker.count.saturating_mul(staves.0), maker.wood());
    if let Some(lot) = maker.made.lot(BlankUse::Panels, &wood, middle.thickness_mm) {
        lot.groups.push(PartGroup {
            name,
            count,
            direction: GroupDirection::AlongGrain,
            loss_mm: Some(kerf_mm / cos_deg(bevel_deg)),
            parts,
        });
    }
    let taken: Vec<FaceId> = members.iter().map(|panel| panel.id).collect();
    left.retain(|panel| !taken.contains(&panel.id));
}

/// The bevel that two panels could share when one is flipped, and the width of both in one blank.
fn nested(maker: &Maker<'_>, one: &Panel, other: &Panel) -> Option<(f64, f64)> {
    let rips = |panel: &'_ Panel| -> Vec<f64> {
        let outward = |edge: &&PanelEdge| edge.cut == EdgeCut::Rip && edge.tilt_deg > 0.0 && edge.gauge_deg == 0.0;
        panel.edges.iter().filter(outward).map(|edge| edge.tilt_deg).collect()
    };
    let theirs = rips(other);
    let shared = |tilt: &f64| theirs.iter().any(|other| (other - tilt).abs() < SAME);
    let bevel_deg = rips(one).into_iter().filter(shared).fold(0.0, f64::max);
    let alike = (one.blank_length_mm - other.blank_length_mm).abs() < SAME && one.thickness_mm == other.thickness_mm;
    // Members of two legs are not mixed up.
    if bevel_deg <= 0.0 || !alike || one.id.leg != other.id.leg {
        return None;
    }
    let kerf_mm = maker.plan.spec.saw.kerf_mm;
    let width_mm = one.blank_width_mm + other.blank_width_mm - one.thickness_mm * tan_deg(bevel_deg)
        + kerf_mm / cos_deg(bevel_deg)
        + maker.input.width_allowance_mm;
    (width_mm <= maker.input.widest_board_mm).then_some((bevel_deg, width_mm))
}

fn pair(maker: &mut Maker<'_>, one: &Panel, other: &Panel) {
    let Some((bevel_deg, width_mm)) = nested(maker, one, other) else { return };
    let (up, down) = (maker.name(one.id), maker.name(other.id));
    let name = maker.name(format_args!("{} with {}", one.id, other.id));
    let square =
        one.blank_width_mm + other.blank_width_mm + 2.0 * maker.input.width_allowance_mm + maker.plan.spec.saw.kerf_mm;
    let length_mm = one.blank_length_mm + maker.input.length_allowance_mm;
    maker.blank(&name, length_mm, width_mm, one.thickness_mm);
    maker.made.nested.push(NestedBlank { name, up, down, bevel_deg, saves_mm: square - width_mm });
}

/// Frame pieces, in their finished size with the allowances.
pub(super) fn frame(maker: &mut Maker<'_>) {
    let plan = maker.plan;
    let Some(frame) = &plan.frame else { return };
    let pieces = u32::try_from(frame.centres_mm.len()).unwrap_or(u32::MAX);
    if pieces == 0 {
        return;
    }
    let part = plain(
        maker.name("frame piece"),
        frame.piece.length_mm + maker.input.length_allowance_mm,
        frame.piece.width_mm + maker.input.width_allowance_mm,
        maker.count.saturating_mul(pieces),
    );
    let wood = maker.wood();
    maker.part((BlankUse::Frame, &wood, frame.thickness_mm), part);
}

/// The strip that is ripped into both halves of the cleat.
pub(super) fn cleat(maker: &mut Maker<'_>) {
    let plan = maker.plan;
    let Some(cleat) = &plan.cleat else { return };
    let spec = &plan.spec.cleat;
    let length_mm = cleat.beam_half_length_mm.max(cleat.wall_half_length_mm) + maker.input.length_allowance_mm;
    let part = plain(maker.name("cleat strip"), length_mm, spec.strip_width_mm, maker.count);
    let wood = spec.species.clone().unwrap_or_else(|| maker.wood());
    maker.part((BlankUse::Cleat, &wood, spec.thickness_mm), part);
}
