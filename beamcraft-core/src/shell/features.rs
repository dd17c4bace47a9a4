//! What is cut into the panels after their edges: grooves in mitres, recesses, holes, eased arrises, scribed edges.
//!
//! ```text
//!   groove in a mitre                     recess, in the panel's frame        eased arris
//!   ───────────────────● arris            v ↑  ┌──────────────────┐          ──────╮
//!     show face      ╱ │                    │  │  ┌─────┐ width   │            r   │
//!         depth   ╱╲╱  │ show face          │  │  └─────┘         │                │
//!                ╲╱╱   │                    │  │   length         │
//!   ────────────● from │                    └──┴──────────────────┴→ u
//!              inside  │                      near corner of the blank
//! ```

use super::carve::carve;
use super::id::{EdgeId, FaceId};
use super::kernel::Shell;
use super::panel::{EdgeJoint, Panel, PanelEdge};
use crate::error::{Detail, Error, ErrorCode, Fault};
use crate::finding::{Finding, FindingCode, Grade, Quantity};
use crate::geometry::{ConvexSolid, Plane, Vec3};
use crate::limits::{Limited, limited};
use crate::numeric::real::sin_cos_deg;

/// A groove for a spline, or a slot for a biscuit, in both faces of a mitre and square to them.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<EdgeGroove>))]
pub struct EdgeGroove {
    /// The mitred edge, such as `front|top` or `leg2.front|leg2.top`.
    pub edge: EdgeId,
    /// Width across the mitre, the thickness of the spline, mm.
    pub width_mm: f64,
    /// Depth into each panel, mm.
    pub depth_mm: f64,
    /// Distance of its middle from the inner end of the mitre, along the mitre, mm.
    pub from_inside_mm: f64,
    /// Where it starts, from the end of the mitre at the panel's near side, mm; the whole length if left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub start_mm: Option<f64>,
    /// Its length, mm; to the far end if left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub length_mm: Option<f64>,
}

limited!(EdgeGroove {
    width_mm: CUT_WIDTH,
    depth_mm: CUT_WIDTH,
    from_inside_mm: CUT_WIDTH,
    start_mm: LENGTH,
    length_mm: CUT_LENGTH,
});

/// The face of a panel that something is cut from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum CutFrom {
    /// The face that shows.
    Show,
    /// The face towards the hollow.
    Inner,
}

/// A rectangular recess: a groove, a rabbet along an edge, a notch for a cable, an opening for an outlet, a channel for a
/// strip of lights.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<PanelRecess>))]
pub struct PanelRecess {
    /// Which panel, such as `top` or `leg2.front`.
    pub panel: FaceId,
    /// Which face it is cut from.
    pub from: CutFrom,
    /// Where it starts along the grain, from the near corner of the blank, mm.
    pub along_mm: f64,
    /// Where it starts across the grain, from the near corner of the blank, mm.
    pub across_mm: f64,
    /// Length along the grain, mm.
    pub length_mm: f64,
    /// Width across the grain, mm.
    pub width_mm: f64,
    /// Depth, mm; through the panel if left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub depth_mm: Option<f64>,
}

limited!(PanelRecess {
    along_mm: SIGNED_LENGTH,
    across_mm: SIGNED_LENGTH,
    length_mm: CUT_LENGTH,
    width_mm: CUT_LENGTH,
    depth_mm: CUT_WIDTH,
});

/// A round hole square to the face, as a prism of sixteen sides and the same area.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<PanelHole>))]
pub struct PanelHole {
    /// Which panel, such as `top` or `leg2.front`.
    pub panel: FaceId,
    /// Which face it is drilled from.
    pub from: CutFrom,
    /// Its middle along the grain, from the near corner of the blank, mm.
    pub along_mm: f64,
    /// Its middle across the grain, from the near corner of the blank, mm.
    pub across_mm: f64,
    /// Diameter, mm.
    pub diameter_mm: f64,
    /// Depth, mm; through the panel if left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub depth_mm: Option<f64>,
}

limited!(PanelHole { along_mm: SIGNED_LENGTH, across_mm: SIGNED_LENGTH, diameter_mm: CUT_WIDTH, depth_mm: CUT_WIDTH });

/// An outside arris rounded over, by three flats that touch the radius.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<EasedArris>))]
pub struct EasedArris {
    /// The edge of the body, such as `front|top`.
    pub edge: EdgeId,
    /// Radius, mm.
    pub radius_mm: f64,
}

limited!(EasedArris { radius_mm: EASING });

/// How far an edge is cut back at a place.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<ScribePoint>))]
pub struct ScribePoint {
    /// Place along the edge, from its end at the panel's near side, mm.
    pub along_mm: f64,
    /// Wood to take off there, square to the edge, mm.
    pub depth_mm: f64,
}

limited!(ScribePoint { along_mm: SIGNED_LENGTH, depth_mm: SMALL_LENGTH });

/// An open edge cut to the line of a wall, square to the face.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct ScribedEdge {
    /// The open edge, such as `back|top`.
    pub edge: EdgeId,
    /// The line by its points, from near to far, straight in between; two or more.
    pub points: Vec<ScribePoint>,
}

/// Something cut into the panels of a body.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum BodyFeature {
    /// A groove for a spline, or a slot for a biscuit, in a mitre.
    EdgeGroove(EdgeGroove),
    /// A rectangular recess, notch or opening.
    Recess(PanelRecess),
    /// A round hole.
    Hole(PanelHole),
    /// An arris rounded over.
    EasedArris(EasedArris),
    /// An open edge cut to the line of a wall.
    ScribedEdge(ScribedEdge),
}

/// What a feature has taken out of a panel and what it has left.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct FeatureCut {
    /// Place of the feature in the list, from 0.
    pub feature: u32,
    /// Which panel.
    pub panel: FaceId,
    /// Wood taken out, less what earlier features had taken there, mm³.
    pub volume_mm3: f64,
    /// Least wood left towards the show face, mm; 0 where it is cut from that face or comes out on it.
    pub left_to_show_mm: f64,
    /// Least wood left towards the inner face, mm; 0 where it is cut from that face or comes out on it.
    pub left_to_inner_mm: f64,
    /// For a groove in a mitre, the depth at which it would come out on the show face, mm.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub deepest_mm: Option<f64>,
}

/// A tool at one panel.
struct Tool {
    panel: FaceId,
    /// What it takes lies inside all planes of a list; the lists may overlap.
    cuts: Vec<Vec<Plane>>,
    /// Whether it may come out on the show face, and on the inner face.
    may_open: (Reach, Reach),
    deepest_mm: Option<f64>,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Reach {
    Meant,
    NotMeant,
}

/// Sides of the prism that stands for a round hole.
const HOLE_SIDES: u32 = 16;
/// Flats that stand for a radius.
const FLATS: u32 = 3;

impl BodyFeature {
    /// Every fault of the input, with its path.
    pub(super) fn faults(&self) -> Vec<Detail> {
        let ranges = |of: &dyn Fn() -> Vec<Fault>| of().into_iter().map(Detail::from).collect::<Vec<_>>();
        let (name, faults) = match self {
            Self::EdgeGroove(groove) => ("edge_groove", ranges(&|| groove.range_faults())),
            Self::Recess(recess) => ("recess", ranges(&|| recess.range_faults())),
            Self::Hole(hole) => ("hole", ranges(&|| hole.range_faults())),
            Self::EasedArris(easing) => ("eased_arris", ranges(&|| easing.range_faults())),
            Self::ScribedEdge(scribe) => ("scribed_edge", scribe.faults()),
        };
        faults.into_iter().map(|fault| fault.within(name)).collect()
    }

    /// The tools at all panels concerned, or why there are none.
    fn tools(&self, legs: &[Shell]) -> Result<Vec<Tool>, Detail> {
        match self {
            Self::EdgeGroove(groove) => groove.tools(legs).map_err(|fault| fault.within("edge_groove")),
            Self::Recess(recess) => recess.tool(legs).map(|tool| vec![tool]).map_err(|fault| fault.within("recess")),
            Self::Hole(hole) => hole.tool(legs).map(|tool| vec![tool]).map_err(|fault| fault.within("hole")),
            Self::EasedArris(easing) => easing.tools(legs).map_err(|fault| fault.within("eased_arris")),
            Self::ScribedEdge(scribe) => {
                scribe.tool(legs).map(|tool| vec![tool]).map_err(|fault| fault.within("scribed_edge"))
            }
        }
    }
}

fn panels(legs: &[Shell]) -> impl Iterator<Item = &Panel> + Clone {
    legs.iter().flat_map(|leg| &leg.panels)
}

fn panel_of(legs: &[Shell], id: FaceId) -> Result<&Panel, Detail> {
    let unknown =
        || Detail::inconsistent("panel", id.to_string(), "a face with a board", "").with_code(ErrorCode::UnknownName);
    panels(legs).find(|panel| panel.id == id).ok_or_else(unknown)
}

/// The panels that end at an edge, with that edge.
fn at_edge(legs: &[Shell], id: EdgeId) -> impl Iterator<Item = (&Panel, &PanelEdge)> + Clone {
    panels(legs)
        .flat_map(move |panel| panel.edges.iter().filter(move |edge| edge.id == id).map(move |edge| (panel, edge)))
}

fn no_edge(id: EdgeId, allowed: &str) -> Detail {
    Detail::inconsistent("edge", id.to_string(), allowed, "").with_code(ErrorCode::UnknownName)
}

/// The plane of points with `direction · p = offset`, in the coordinates of a panel; outside is beyond.
fn plane_of(panel: &Panel, direction: Vec3, offset: f64) -> Option<Plane> {
    let point = panel.frame.to_world(direction * (offset / direction.dot(direction)));
    Plane::through(point, panel.frame.direction_to_world(direction))
}

/// The planes of a slab between two offsets along a direction of a panel.
fn slab(panel: &Panel, direction: Vec3, low: f64, high: f64) -> [Option<Plane>; 2] {
    [plane_of(panel, direction, high), plane_of(panel, -direction, -low)]
}

/// Coordinates of some points of a panel along a direction, least and greatest.
fn span(panel: &Panel, direction: Vec3, points: impl Iterator<Item = Vec3>) -> (f64, f64) {
    let along = points.map(|point| panel.frame.to_local(point).dot(direction));
    along.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), at| (low.min(at), high.max(at)))
}

/// Planes that a tool needs; none is missing for numbers that have passed their ranges.
fn all(planes: impl IntoIterator<Item = Option<Plane>>) -> Result<Vec<Plane>, Detail> {
    let none =
        || Detail::inconsistent("", String::new(), "a cut that bounds some wood", "").with_code(ErrorCode::EmptyCut);
    planes.into_iter().collect::<Option<_>>().ok_or_else(none)
}

impl EdgeGroove {
    fn tools(&self, legs: &[Shell]) -> Result<Vec<Tool>, Detail> {
        let tools: Result<Vec<_>, _> = at_edge(legs, self.edge)
            .filter(|(_, edge)| edge.joint == EdgeJoint::Mitred)
            .map(|(panel, edge)| self.tool(panel, edge))
            .collect();
        let tools = tools?;
        if tools.is_empty() { Err(no_edge(self.edge, "a mitred edge of the body")) } else { Ok(tools) }
    }

    fn tool(&self, panel: &Panel, edge: &PanelEdge) -> Result<Tool, Detail> {
        let cut = edge.outward;
        let face = panel.blank().and_then(|blank| blank.face(edge.tag));
        // Along the mitre from inside to the arris, and along the arris towards the far side of the panel.
        let outwards = (Vec3::Z - cut * cut.z).normalised();
        let (Some(face), Some(outwards)) = (face, outwards) else {
            return Err(no_edge(self.edge, "a mitred edge of the body"));
        };
        let arris = forwards(outwards.cross(cut));
        let (inside, outside) = span(panel, outwards, face.points());
        let (near, far) = span(panel, arris, face.points());
        let seam = span(panel, cut, face.points()).0;
        let (low, high) =
            (inside + self.from_inside_mm - 0.5 * self.width_mm, inside + self.from_inside_mm + 0.5 * self.width_mm);
        let start = near + self.start_mm.unwrap_or(0.0);
        let end = self.length_mm.map_or(far, |length| start + length);
        let planes = slab(panel, outwards, low, high)
            .into_iter()
            .chain(slab(panel, cut, seam - self.depth_mm, seam + self.depth_mm))
            .chain(slab(panel, arris, start, end));
        // A point of the mitre at q from the arris lies q · outwards.z below the show face, and rises by −cut.z for each
        // millimetre into the panel.
        let rise = -cut.z;
        let deepest_mm = (rise > 0.0).then(|| ((outside - high) * outwards.z / rise).max(0.0));
        let may_open = (Reach::NotMeant, Reach::NotMeant);
        Ok(Tool { panel: panel.id, cuts: vec![all(planes)?], may_open, deepest_mm })
    }
}

/// A direction of a panel turned along the grain, or across it where it stands square to it.
fn forwards(direction: Vec3) -> Vec3 {
    let back = if direction.x.abs() > 1e-9 { direction.x < 0.0 } else { direction.y < 0.0 };
    if back { -direction } else { direction }
}

impl CutFrom {
    /// The planes of a cut of a depth from the face, and the faces that it opens on purpose.
    fn depth(self, panel: &Panel, depth_mm: Option<f64>) -> ([Option<Plane>; 1], (Reach, Reach)) {
        let thickness = panel.thickness_mm;
        match (self, depth_mm) {
            // Beyond the inner face, so that nothing is left of it.
            (_, None) => ([plane_of(panel, -Vec3::Z, 2.0 * thickness)], (Reach::Meant, Reach::Meant)),
            (Self::Show, Some(depth)) => ([plane_of(panel, -Vec3::Z, depth)], (Reach::Meant, Reach::NotMeant)),
            (Self::Inner, Some(depth)) => {
                ([plane_of(panel, Vec3::Z, depth - thickness)], (Reach::NotMeant, Reach::Meant))
            }
        }
    }
}

impl PanelRecess {
    fn tool(&self, legs: &[Shell]) -> Result<Tool, Detail> {
        let panel = panel_of(legs, self.panel)?;
        let (depth, may_open) = self.from.depth(panel, self.depth_mm);
        let along = slab(panel, Vec3::X, self.along_mm, self.along_mm + self.length_mm);
        let across = slab(panel, Vec3::Y, self.across_mm, self.across_mm + self.width_mm);
        let planes = all(along.into_iter().chain(across).chain(depth))?;
        Ok(Tool { panel: self.panel, cuts: vec![planes], may_open, deepest_mm: None })
    }
}

impl PanelHole {
    fn tool(&self, legs: &[Shell]) -> Result<Tool, Detail> {
        let panel = panel_of(legs, self.panel)?;
        let (depth, may_open) = self.from.depth(panel, self.depth_mm);
        // Of a polygon around a circle of radius a the area is n a² tan(180°/n).
        let (sine, cosine) = sin_cos_deg(180.0 / f64::from(HOLE_SIDES));
        let flat = 0.5 * self.diameter_mm * (core::f64::consts::PI * cosine / (f64::from(HOLE_SIDES) * sine)).sqrt();
        let middle = Vec3::new(self.along_mm, self.across_mm, 0.0);
        let sides = (0..HOLE_SIDES).map(|side| {
            let (sine, cosine) = sin_cos_deg(360.0 * f64::from(side) / f64::from(HOLE_SIDES));
            let out = Vec3::new(cosine, sine, 0.0);
            plane_of(panel, out, out.dot(middle) + flat)
        });
        let planes = all(sides.chain(depth))?;
        Ok(Tool { panel: self.panel, cuts: vec![planes], may_open, deepest_mm: None })
    }
}

impl EasedArris {
    fn tools(&self, legs: &[Shell]) -> Result<Vec<Tool>, Detail> {
        let allowed = "an outside arris of the body, beside a face with a board";
        let found = at_edge(legs, self.edge).find(|(_, edge)| edge.corner_deg < 179.0);
        let (panel, edge) = found.ok_or_else(|| no_edge(self.edge, allowed))?;
        let one = panel.blank().and_then(|blank| blank.face(Panel::SHOW)).map(|face| face.plane);
        let (Some(one), Some(other)) = (one, outer_plane(legs, edge.neighbour)) else {
            return Err(no_edge(self.edge, allowed));
        };
        let flats = self.flats(&one, &other).ok_or_else(|| no_edge(self.edge, allowed))?;
        let may_open = (Reach::Meant, Reach::NotMeant);
        let tool =
            |panel| Tool { panel, cuts: flats.iter().map(|flat| vec![*flat]).collect(), may_open, deepest_mm: None };
        Ok(at_edge(legs, self.edge).map(|(panel, _)| tool(panel.id)).collect())
    }

    /// The planes that touch the radius between two faces; the wood to take off lies inside them.
    fn flats(&self, one: &Plane, other: &Plane) -> Option<Vec<Plane>> {
        let (n, m) = (one.normal(), other.normal());
        // The axis of the radius lies as deep below both faces: two planes, and a third across the arris.
        let across = Plane::through(one.point(), n.cross(m))?;
        let axis = Plane::meet(&one.moved(-self.radius_mm)?, &other.moved(-self.radius_mm)?, &across)?;
        (1..=FLATS)
            .map(|flat| {
                let share = f64::from(flat) / f64::from(FLATS + 1);
                let out = between(n, m, share)?;
                Some(Plane::through(axis + out * self.radius_mm, out)?.flipped())
            })
            .collect()
    }
}

/// A direction turned by a share of the angle from one to another.
fn between(one: Vec3, other: Vec3, share: f64) -> Option<Vec3> {
    let turn = crate::numeric::real::atan2_deg(one.cross(other).length(), one.dot(other));
    let (from, to) = (sin_cos_deg((1.0 - share) * turn).0, sin_cos_deg(share * turn).0);
    (one * from + other * to).normalised()
}

/// The outer plane of a face.
fn outer_plane(legs: &[Shell], id: FaceId) -> Option<Plane> {
    legs.iter().find_map(|leg| {
        let tag = leg.faces.iter().zip(0..).find(|(face, _)| face.id == id).map(|(_, tag)| tag)?;
        leg.outer.face(tag).map(|face| face.plane)
    })
}

impl ScribedEdge {
    fn faults(&self) -> Vec<Detail> {
        let mut faults = Vec::new();
        if self.points.len() < 2 {
            let given = format!("{} points", self.points.len());
            faults.push(Detail::inconsistent("points", given, "two points or more", ""));
        }
        for ((point, at), next) in self.points.iter().zip(0..).zip(self.points.iter().map(Some).skip(1).chain([None])) {
            let path = format!("points[{at}]");
            faults.extend(point.range_faults().into_iter().map(|fault| Detail::from(fault).within(&path)));
            if next.is_some_and(|next| next.along_mm <= point.along_mm) {
                let given = format!("{} mm", point.along_mm);
                let fault = Detail::inconsistent("along_mm", given, "a place before that of the next point", "");
                faults.push(fault.within(&path));
            }
        }
        faults
    }

    fn tool(&self, legs: &[Shell]) -> Result<Tool, Detail> {
        let missing = || no_edge(self.edge, "an open edge of the body");
        let found = at_edge(legs, self.edge).find(|(_, edge)| edge.joint == EdgeJoint::Open);
        let (panel, edge) = found.ok_or_else(missing)?;
        let blank = panel.blank().ok_or_else(missing)?;
        let (show, face) = blank.face(Panel::SHOW).zip(blank.face(edge.tag)).ok_or_else(missing)?;
        // In the face: out of the edge, and along it.
        let out = Vec3::new(edge.outward.x, edge.outward.y, 0.0).normalised().ok_or_else(missing)?;
        let along = forwards(out.cross(Vec3::Z));
        let on_show = || face.points().filter(|point| show.points().any(|other| other == *point));
        let (line, near) = (span(panel, out, on_show()).1, span(panel, along, on_show()).0);
        let mut cuts = Vec::new();
        for (from, to) in self.points.iter().zip(self.points.iter().skip(1)) {
            if from.depth_mm == 0.0 && to.depth_mm == 0.0 {
                continue;
            }
            let run = to.along_mm - from.along_mm;
            // The wall's line, its outside towards the panel: along it by `run` the edge goes back by the difference.
            let inwards = along * (from.depth_mm - to.depth_mm) - out * run;
            let start = along * (near + from.along_mm) + out * (line - from.depth_mm);
            let wall = plane_of(panel, inwards, inwards.dot(start));
            let ends = slab(panel, along, near + from.along_mm, near + to.along_mm);
            cuts.push(all(ends.into_iter().chain([wall]))?);
        }
        let may_open = (Reach::Meant, Reach::Meant);
        Ok(Tool { panel: panel.id, cuts, may_open, deepest_mm: None })
    }
}

/// Cuts all features in their order.
pub(super) fn cut(
    legs: &mut [Shell],
    features: &[BodyFeature],
    findings: &mut Vec<Finding>,
) -> Result<Vec<FeatureCut>, Error> {
    let mut cuts = Vec::new();
    for (feature, number) in features.iter().zip(0_u32..) {
        let path = format!("features[{number}]");
        let at = |fault: Detail| Error::one(fault.within(&path));
        let mut taken = false;
        for tool in feature.tools(legs).map_err(at)? {
            let Some(panel) = legs.iter_mut().flat_map(|leg| &mut leg.panels).find(|panel| panel.id == tool.panel)
            else {
                continue;
            };
            let parts: Vec<_> = tool.cuts.iter().flat_map(|planes| carve(panel, planes.iter().copied())).collect();
            if parts.is_empty() {
                continue;
            }
            taken = true;
            // Rounding of the sums of areas and volumes.
            if panel.mass.volume_mm3 <= 1e-9 * volume(panel.blank())
                || panel.show_area_mm2 <= 1e-9 * panel.mass.surface_mm2
            {
                let given = format!("{} of which nothing is left", panel.id);
                return Err(at(Detail::inconsistent("", given, "a cut that leaves the panel", "a smaller cut")
                    .with_code(ErrorCode::NothingLeft)));
            }
            let cut = FeatureCut {
                feature: number,
                panel: panel.id,
                volume_mm3: parts.iter().map(ConvexSolid::volume).sum(),
                left_to_show_mm: left(panel, &parts, Panel::SHOW),
                left_to_inner_mm: left(panel, &parts, Panel::INNER),
                deepest_mm: tool.deepest_mm,
            };
            findings.extend(breaks(&cut, &parts, &tool));
            cuts.push(cut);
        }
        if !taken {
            let given = "a cut beside the wood that is there".to_owned();
            return Err(at(Detail::inconsistent("", given, "a cut that takes wood out of its panel", "")
                .with_code(ErrorCode::EmptyCut)));
        }
    }
    legs.iter_mut().for_each(Shell::weigh);
    Ok(cuts)
}

fn volume(solid: Option<&ConvexSolid>) -> f64 {
    solid.map_or(0.0, ConvexSolid::volume)
}

/// Least distance of what was taken from a face of the panel, mm.
fn left(panel: &Panel, parts: &[ConvexSolid], tag: u32) -> f64 {
    let Some(face) = panel.blank().and_then(|blank| blank.face(tag)) else { return 0.0 };
    if opens(parts, tag) {
        return 0.0;
    }
    let depths = parts.iter().flat_map(ConvexSolid::vertices).map(|point| -face.plane.signed_distance(*point));
    depths.fold(f64::INFINITY, f64::min).max(0.0)
}

fn opens(parts: &[ConvexSolid], tag: u32) -> bool {
    parts.iter().any(|part| part.face(tag).is_some())
}

/// What comes out where it should not.
fn breaks(cut: &FeatureCut, parts: &[ConvexSolid], tool: &Tool) -> Option<Finding> {
    let shows = opens(parts, Panel::SHOW) && tool.may_open.0 == Reach::NotMeant;
    let inside = opens(parts, Panel::INNER) && tool.may_open.1 == Reach::NotMeant;
    let (grade, face) = match (shows, inside) {
        (true, _) => (Grade::Stop, "show face"),
        (_, true) => (Grade::Caution, "inner face"),
        _ => return None,
    };
    let numbers = tool.deepest_mm.map(|deepest| Quantity::new("depth at which it comes out", deepest, "mm"));
    Some(Finding {
        grade,
        code: FindingCode::BreaksThrough,
        subject: cut.panel.to_string(),
        message: format!("features[{}] comes out on the {face} of {}.", cut.feature, cut.panel),
        numbers: numbers.into_iter().collect(),
        cure: "Cut less deep, narrower, or further from that face.".to_owned(),
        clause: None,
    })
}
