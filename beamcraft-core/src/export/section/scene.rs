//! What the section shows, in the axes of the body: y from the front face to the wall, z up from the underside.

use super::super::cut::{SectionEdge, cross_section};
use super::super::text::degrees;
use super::super::words;
use crate::geometry::{Plane, Vec3};
use crate::plan::{CleatPlan, LegShape, Plan, ReportLengths};
use crate::setting::{Obstruction, Wall};
use crate::shell::{EdgeId, EdgeJoint, FaceKind, Panel, PanelEdge, PieceSign};

/// A point of the section: y and z, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Yz {
    pub(super) y: f64,
    pub(super) z: f64,
}

impl Yz {
    pub(super) const fn new(y: f64, z: f64) -> Self {
        Self { y, z }
    }
}

impl From<Vec3> for Yz {
    fn from(point: Vec3) -> Self {
        Self { y: point.y, z: point.z }
    }
}

/// A piece of a panel that the plane cuts.
pub(super) struct CutPiece<'a> {
    pub(super) panel: &'a Panel,
    pub(super) sign: PieceSign,
    pub(super) ring: Vec<Yz>,
    /// The sides of the ring that are show faces.
    pub(super) shows: Vec<[Yz; 2]>,
}

/// A mitred seam in the section.
pub(super) struct Mitre {
    /// Its outer end.
    pub(super) at: Yz,
    /// From the inner to the outer end, not of unit length.
    pub(super) outward: Yz,
    /// What to write: one bevel for both boards, or one for each.
    pub(super) notes: Vec<String>,
}

/// Something that stands out from the wall near the body.
pub(super) struct Above<'a> {
    pub(super) name: &'a str,
    /// Underside above the underside of the body, mm.
    pub(super) bottom_mm: f64,
    pub(super) top_mm: f64,
    pub(super) projection_mm: f64,
    pub(super) plane: AtPlane,
}

/// Whether a thing stands where the section is.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum AtPlane {
    Cut,
    Beside,
}

/// The section and what is around it.
pub(super) struct Scene<'a> {
    pub(super) plan: &'a Plan,
    pub(super) lengths: ReportLengths,
    pub(super) height_mm: f64,
    pub(super) depth_mm: f64,
    pub(super) pieces: Vec<CutPiece<'a>>,
    pub(super) mitres: Vec<Mitre>,
    pub(super) wall: Option<&'a Wall>,
    /// Underside of the body above the floor, mm.
    pub(super) above_floor_mm: Option<f64>,
    pub(super) cleat: Option<&'a CleatPlan>,
    pub(super) obstructions: Vec<Above<'a>>,
}

impl<'a> Scene<'a> {
    pub(super) fn of(plan: &'a Plan) -> Self {
        let (length_mm, height_mm, depth_mm) = outer_sizes(plan);
        let site = plan.spec.site.as_ref();
        let mut scene = Self {
            plan,
            lengths: plan.spec.lengths,
            height_mm,
            depth_mm,
            pieces: Vec::new(),
            mitres: Vec::new(),
            wall: site.and_then(|site| site.wall.as_ref()),
            above_floor_mm: site.map(|site| site.place.bottom_above_floor_mm),
            cleat: plan.cleat.as_ref(),
            obstructions: Vec::new(),
        };
        let middle_mm = 0.5 * length_mm;
        if let Some(plane) = Plane::at_offset(Vec3::X, middle_mm) {
            scene.cut(&plane);
        }
        if let Some(site) = site {
            let left = site.place.left_end_mm;
            let beside = |one: &&Obstruction| one.right_mm > left && one.left_mm < left + length_mm;
            let near = |one: &&Obstruction| scene.is_near(one, site.place.bottom_above_floor_mm);
            let found = site.obstructions.iter().filter(beside).filter(near).map(|one| Above {
                name: &one.name,
                bottom_mm: one.bottom_mm - site.place.bottom_above_floor_mm,
                top_mm: one.top_mm - site.place.bottom_above_floor_mm,
                projection_mm: one.projection_mm,
                plane: if one.left_mm <= left + middle_mm && one.right_mm >= left + middle_mm {
                    AtPlane::Cut
                } else {
                    AtPlane::Beside
                },
            });
            let found = found.collect();
            scene.obstructions = found;
        }
        scene
    }

    /// Whether a thing is close enough above the underside of the body to be drawn.
    fn is_near(&self, one: &Obstruction, underside_mm: f64) -> bool {
        let gap_mm = one.bottom_mm - underside_mm - self.height_mm;
        one.projection_mm > 0.0 && one.top_mm > underside_mm && gap_mm <= 0.8 * self.height_mm + self.lift_mm()
    }

    /// How far the body is lifted when it is hung, mm; 0 without a cleat.
    pub(super) fn lift_mm(&self) -> f64 {
        self.cleat.map_or(0.0, |cleat| cleat.halves.lift_mm)
    }

    /// Thickness of the board of a face, mm; 0 without one.
    pub(super) fn thickness_mm(&self, kind: FaceKind) -> f64 {
        self.plan.panels.iter().find(|panel| panel.id.kind == kind).map_or(0.0, |panel| panel.thickness_mm)
    }

    fn cut(&mut self, plane: &Plane) {
        let mut seams: Vec<Seam<'a>> = Vec::new();
        for panel in &self.plan.panels {
            for piece in &panel.pieces {
                let edges = cross_section(&piece.solid, plane);
                if edges.is_empty() {
                    continue;
                }
                if piece.sign == PieceSign::Added {
                    seams.extend(seams_of(panel, &edges));
                }
                self.pieces.push(CutPiece {
                    panel,
                    sign: piece.sign,
                    ring: edges.iter().map(|edge| edge.from.into()).collect(),
                    shows: edges
                        .iter()
                        .filter(|edge| edge.tag == Panel::SHOW && piece.sign == PieceSign::Added)
                        .map(|edge| [edge.from.into(), edge.to.into()])
                        .collect(),
                });
            }
        }
        self.mitres = mitres(&seams);
    }
}

/// Length, height and depth of the body, mm.
fn outer_sizes(plan: &Plan) -> (f64, f64, f64) {
    match plan.spec.body.legs.first() {
        Some(LegShape::Rectangular(leg)) => (leg.length_mm, leg.height_mm, leg.depth_mm),
        None => (0.0, 0.0, 0.0),
    }
}

/// One board's side of a mitred seam.
struct Seam<'a> {
    panel: &'a Panel,
    id: EdgeId,
    tilt_deg: f64,
    outer: Yz,
    inner: Yz,
}

fn seams_of<'a>(panel: &'a Panel, edges: &[SectionEdge]) -> Vec<Seam<'a>> {
    let mitred = panel.edges.iter().filter(|edge| edge.joint == EdgeJoint::Mitred);
    let seam = |edge: &PanelEdge| {
        let cut = edges.iter().find(|one| one.tag == edge.tag)?;
        let show = edges.iter().find(|one| one.tag == Panel::SHOW)?;
        let (outer, inner) =
            if show.from == cut.to || show.to == cut.to { (cut.to, cut.from) } else { (cut.from, cut.to) };
        Some(Seam { panel, id: edge.id, tilt_deg: edge.tilt_deg, outer: outer.into(), inner: inner.into() })
    };
    mitred.filter_map(seam).collect()
}

/// One note for each seam, from both its sides.
fn mitres(seams: &[Seam<'_>]) -> Vec<Mitre> {
    let mut out = Vec::new();
    for (k, seam) in seams.iter().enumerate() {
        if seams.iter().take(k).any(|earlier| earlier.id == seam.id) {
            continue;
        }
        let sides: Vec<_> = seams.iter().filter(|other| other.id == seam.id).collect();
        let bevels: Vec<_> = sides.iter().map(|side| degrees(side.tilt_deg)).collect();
        let same = bevels.iter().all(|bevel| bevels.first() == Some(bevel));
        let notes = if same {
            bevels.into_iter().take(1).collect()
        } else {
            sides.iter().map(|side| format!("{} {}", words::face(side.panel.id), degrees(side.tilt_deg))).collect()
        };
        let outward = Yz::new(seam.outer.y - seam.inner.y, seam.outer.z - seam.inner.z);
        out.push(Mitre { at: seam.outer, outward, notes });
    }
    out
}
