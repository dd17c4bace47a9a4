//! The body: its panels, the hollow between them, and seams.

use super::checked::{Checked, LEG};
use super::result::GluePlan;
use super::within;
use crate::error::Result;
use crate::finding::{Finding, FindingCode, Grade};
use crate::geometry::{ConvexSolid, Plane, Vec3, convex_outline};
use crate::numeric::compensated_sum;
use crate::numeric::real::sin_cos_deg;
use crate::setting::{BodyPlace, OutlinePart, OutlinePoint};
use crate::shell::{EdgeJoint, EndKind, FaceId, FaceKind, LegEnd, Panel, PanelEdge, PieceSign, Shell, shell_panels};

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

    /// The outline of every panel as it hangs: what is seen of its wood along the body, whatever was taken out inside.
    pub(super) fn outlines(&self, place: BodyPlace) -> Vec<OutlinePart> {
        self.woods().map(|(panel, solid)| self.outline(place, panel.id.to_string(), solid)).collect()
    }

    /// The same with ends out of square parted at a distance from the wall: such an end lies beside the cleat at the wall, and
    /// before it farther out.
    pub(super) fn outlines_parted(&self, place: BodyPlace, out_mm: f64) -> Vec<OutlinePart> {
        let mut outlines = Vec::new();
        let front = Plane::at_offset(Vec3::Y, self.checked.leg.depth_mm - out_mm);
        for (panel, solid) in self.woods() {
            let name = panel.id.to_string();
            match front.filter(|_| self.is_splayed(panel.id.kind)) {
                Some(front) => {
                    let parts = [front, front.flipped()].map(|side| solid.clone().cut([(side, 0)]));
                    outlines.extend(parts.iter().flatten().map(|part| self.outline(place, name.clone(), part)));
                }
                None => outlines.push(self.outline(place, name, solid)),
            }
        }
        outlines
    }

    /// Whether a face is an end out of square.
    fn is_splayed(&self, kind: FaceKind) -> bool {
        let leg = self.checked.leg;
        match kind {
            FaceKind::LeftEnd => leg.left_end.corner_deg != 90.0,
            FaceKind::RightEnd => leg.right_end.corner_deg != 90.0,
            _ => false,
        }
    }

    /// The wood of every panel.
    fn woods(&self) -> impl Iterator<Item = (&Panel, &ConvexSolid)> {
        let pieces = self.shell.panels.iter().flat_map(|panel| panel.pieces.iter().map(move |piece| (panel, piece)));
        pieces.filter(|(_, piece)| piece.sign == PieceSign::Added).map(|(panel, piece)| (panel, &piece.solid))
    }

    fn outline(&self, place: BodyPlace, name: String, solid: &ConvexSolid) -> OutlinePart {
        let seen = solid.vertices().iter().map(|corner| (corner.y, corner.z)).collect();
        let (low, high) = solid.bounds();
        let corner = |(y, z): (f64, f64)| OutlinePoint {
            out_mm: self.checked.leg.depth_mm - y,
            above_floor_mm: place.bottom_above_floor_mm + z,
        };
        OutlinePart {
            name,
            left_mm: place.left_end_mm + low.x,
            right_mm: place.left_end_mm + high.x,
            outline: convex_outline(seen).into_iter().map(corner).collect(),
        }
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
