//! The body: its panels, the hollow between them, frame pieces and seams.

use super::checked::{Checked, LEG};
use super::result::{FramePlan, GluePlan};
use super::within;
use crate::error::Result;
use crate::finding::{Finding, FindingCode, Grade, Quantity};
use crate::frame::{FramePieceInput, FrameSpacingInput, frame_piece, frame_spacing};
use crate::numeric::compensated_sum;
use crate::numeric::real::sin_cos_deg;
use crate::shell::{EdgeJoint, EndKind, FaceId, FaceKind, LegEnd, Panel, PanelEdge, Shell, shell_panels};

/// The body with what later steps ask of it.
pub(super) struct Body<'a> {
    pub(super) checked: &'a Checked<'a>,
    pub(super) shell: Shell,
    /// Upper side of the hollow, mm above the underside of the body.
    pub(super) hollow_top_mm: f64,
}

/// A mitred seam with both its panels.
pub(super) struct MitredSeam<'a> {
    pub(super) a: (&'a Panel, &'a PanelEdge),
    pub(super) b: (&'a Panel, &'a PanelEdge),
}

impl<'a> Body<'a> {
    pub(super) fn of(checked: &'a Checked<'a>) -> Result<Self> {
        let shell = shell_panels(checked.leg).map_err(|error| within(error, LEG))?;
        let mut body = Self { checked, shell, hollow_top_mm: checked.leg.height_mm };
        body.hollow_top_mm -= body.thickness_mm(FaceKind::Top).unwrap_or(0.0);
        Ok(body)
    }

    /// The panel of a face, when it has one.
    pub(super) fn panel(&self, kind: FaceKind) -> Option<&Panel> {
        let id = FaceId { leg: self.checked.leg.leg, kind };
        self.shell.panels.iter().find(|panel| panel.id == id)
    }

    /// Thickness of the panel of a face, mm.
    pub(super) fn thickness_mm(&self, kind: FaceKind) -> Option<f64> {
        self.panel(kind).map(|panel| panel.thickness_mm)
    }

    /// Ends of the hollow from `from_mm` to `to_mm` behind the front face, the narrower of both, mm along the body.
    pub(super) fn hollow_ends(&self, from_mm: f64, to_mm: f64) -> (f64, f64) {
        let leg = self.checked.leg;
        let inset = |end: &LegEnd| end_inset(end, from_mm).max(end_inset(end, to_mm));
        (inset(&leg.left_end), leg.length_mm - inset(&leg.right_end))
    }

    /// Frame pieces between front, top and bottom, clear of the cleat.
    pub(super) fn frame(&self, findings: &mut Vec<Finding>) -> Option<FramePlan> {
        let spec = &self.checked.spec.frame;
        let (front, top) = (self.panel(FaceKind::Front)?, self.panel(FaceKind::Top)?);
        let bottom = self.panel(FaceKind::Bottom)?;
        let leg = self.checked.leg;
        // The flats of the inside, from the sizes of the hollow: a board that runs past another is wider inside than that.
        let high_mm = leg.height_mm - top.thickness_mm - bottom.thickness_mm;
        let deep_mm = leg.depth_mm - front.thickness_mm - self.thickness_mm(FaceKind::Back).unwrap_or(0.0);
        let piece = frame_piece(&FramePieceInput {
            front_flat_mm: high_mm,
            wide_flat_mm: deep_mm,
            strip_thickness_mm: self.checked.spec.cleat.thickness_mm,
            clearance_mm: spec.clearance_mm,
        });
        let front_mm = front.thickness_mm;
        let (left, right) = self.hollow_ends(front_mm, front_mm + deep_mm);
        let spacing = frame_spacing(&FrameSpacingInput {
            inner_length_mm: right - left,
            piece_thickness_mm: spec.piece_thickness_mm,
            end_margin_mm: spec.end_margin_mm,
            greatest_spacing_mm: spec.greatest_spacing_mm,
            keep_outs: Vec::new(),
        });
        let (Ok(piece), Ok(spacing)) = (piece, spacing) else {
            findings.push(no_frame(high_mm, deep_mm, right - left));
            return None;
        };
        findings.extend(spacing.findings);
        let centres_mm = spacing.centres_mm.iter().map(|centre| left + centre).collect();
        Some(FramePlan { piece, thickness_mm: spec.piece_thickness_mm, centres_mm })
    }

    /// Whether something of the body reaches the wall at the height of its underside.
    pub(super) fn has_foot(&self) -> bool {
        [FaceKind::Bottom, FaceKind::LeftEnd, FaceKind::RightEnd].into_iter().any(|kind| self.panel(kind).is_some())
    }

    /// Ends that let the inside be seen.
    pub(super) fn open_ends(&self, findings: &mut Vec<Finding>) {
        let leg = self.checked.leg;
        let ends = [(&leg.left_end, "left_end"), (&leg.right_end, "right_end")];
        for (_, subject) in ends.into_iter().filter(|(end, _)| end.kind == EndKind::Open) {
            findings.push(Finding {
                grade: Grade::Note,
                code: FindingCode::OpenEndShowsInside,
                subject: subject.to_owned(),
                message: "This end is open: it shows the ends of the boards and the hollow.".to_owned(),
                numbers: Vec::new(),
                cure: "A return panel, unless a wall stands against this end.".to_owned(),
                clause: None,
            });
        }
    }

    /// Mitred seams, each once, in the order of the panels.
    pub(super) fn mitred_seams(&self) -> Vec<MitredSeam<'_>> {
        let panels = &self.shell.panels;
        let mut seams: Vec<MitredSeam<'_>> = Vec::new();
        for panel in panels {
            for edge in panel.edges.iter().filter(|edge| edge.joint == EdgeJoint::Mitred) {
                let other = panels.iter().find(|other| other.id == edge.neighbour);
                let beyond = other.and_then(|other| Some((other, other.edges.iter().find(|one| one.id == edge.id)?)));
                if let Some(beyond) = beyond.filter(|_| seams.iter().all(|seam| seam.a.1.id != edge.id)) {
                    seams.push(MitredSeam { a: (panel, edge), b: beyond });
                }
            }
        }
        seams
    }

    /// Mitred seams, each counted once.
    pub(super) fn glue(&self) -> GluePlan {
        let edges = || self.shell.panels.iter().flat_map(|panel| &panel.edges).filter(|e| e.joint == EdgeJoint::Mitred);
        // Both panels of a seam have the same cut face, so half of all faces is one side of each seam.
        GluePlan {
            seam_area_m2: 0.5 * compensated_sum(edges().map(|edge| edge.area_mm2)) / 1.0e6,
            seam_length_mm: 0.5 * compensated_sum(edges().map(|edge| edge.show_length_mm)),
        }
    }
}

/// How far the inside of an end lies from the front's arris, at a depth behind the front face, mm.
fn end_inset(end: &LegEnd, depth_mm: f64) -> f64 {
    let (sine, cosine) = sin_cos_deg(end.corner_deg);
    let thickness = match end.kind {
        EndKind::ReturnPanel => end.thickness_mm.unwrap_or(0.0),
        EndKind::Open => 0.0,
    };
    (depth_mm * cosine + thickness) / sine
}

fn no_frame(height_mm: f64, depth_mm: f64, length_mm: f64) -> Finding {
    Finding {
        grade: Grade::Caution,
        code: FindingCode::FrameDoesNotFit,
        subject: "frame".to_owned(),
        message: "No frame piece fits between the boards in front of the cleat.".to_owned(),
        numbers: vec![
            Quantity::new("inside height", height_mm, "mm"),
            Quantity::new("inside depth", depth_mm, "mm"),
            Quantity::new("inside length", length_mm, "mm"),
        ],
        cure: "Thinner frame pieces, a thinner cleat strip, or glue blocks along the seams instead.".to_owned(),
        clause: None,
    }
}
