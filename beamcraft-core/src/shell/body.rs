//! A hollow body of any convex section: straight or tapered, in one leg or along a path, its ends as the walls want them.
//!
//! ```text
//!   plan of a body round a chimney breast          plan of a body in a bay
//!      leg 1 ┌──────────────────┐ leg 3                 leg 2
//!            │ corner 90        │               ╲ ─────────────── ╱
//!            └──────────────────┘          leg 1 ╲  corner 225   ╱ leg 3
//!                  leg 2                     room side below
//! ```

use super::edges::{BodyEdge, BodyJoint, Butts};
use super::features::{self, BodyFeature, FeatureCut};
use super::id::{EdgeId, FaceId, FaceKind};
use super::kernel::{Presence, Shell, ShellFault, Subject, shell_of};
use super::leg::{EndKind, end_fault};
use super::panel::{EdgeJoint, Panel};
use super::run::{EndPlane, Run};
use super::section::{BodySection, Ring};
use super::veneer::{self, VeneerEdge};
use crate::error::{Detail, Error, ErrorCode, Fault};
use crate::finding::Finding;
use crate::geometry::{Frame, MassProperties, Vec3};
use crate::limits::{Limited, limited};
use crate::numeric::real::sin_cos_deg;

/// The section at the right end of a tapered body.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<BodyTaper>))]
pub struct BodyTaper {
    /// Section square to the length at the right end of the line `y = z = 0`; of the same kind as the one on the left, and
    /// every side parallel to the side it runs out of.
    pub section: BodySection,
    /// How far it lies further back than the one on the left, mm; 0 keeps a straight front.
    #[cfg_attr(feature = "json", serde(default))]
    pub back_mm: f64,
    /// How far it lies higher than the one on the left, mm; 0 keeps a straight underside.
    #[cfg_attr(feature = "json", serde(default))]
    pub up_mm: f64,
}

limited!(BodyTaper { back_mm: SECTION_COORDINATE, up_mm: SECTION_COORDINATE });

/// A straight leg of a body.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<BodyLeg>))]
pub struct BodyLeg {
    /// Length along the line `y = z = 0`, the lower front arris of a rectangular section, mm.
    pub length_mm: f64,
    /// Angle in plan to the next leg, inside the body, degrees: 90 for a square outside corner, 270 for a square inside
    /// corner, 180 straight on; required for every leg but the last.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub corner_deg: Option<f64>,
}

limited!(BodyLeg { length_mm: BODY_LENGTH, corner_deg: CORNER_ANGLE });

/// A face that has a board; in a body of several legs, of each leg.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<BodyBoard>))]
pub struct BodyBoard {
    /// Which side of the section.
    pub face: FaceKind,
    /// Thickness of its board, mm.
    pub thickness_mm: f64,
}

limited!(BodyBoard { thickness_mm: BOARD_THICKNESS });

/// An end of a body.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<BodyEnd>))]
pub struct BodyEnd {
    /// What closes it; an open end is cut to the plane of the end, as when it is scribed to a side wall.
    pub kind: EndKind,
    /// Thickness of the return panel, mm; required with one, and given for no open end.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub thickness_mm: Option<f64>,
    /// Angle between the front and the end in plan, inside the body, degrees; 90, the usual square end, if left out.
    #[cfg_attr(feature = "json", serde(default = "square_end"))]
    pub corner_deg: f64,
    /// Angle between the underside and the end seen from the front, inside the body, degrees; 90, plumb, if left out.
    #[cfg_attr(feature = "json", serde(default = "square_end"))]
    pub plumb_deg: f64,
}

limited!(BodyEnd { thickness_mm: BOARD_THICKNESS, corner_deg: END_ANGLE, plumb_deg: PLUMB_ANGLE });

#[cfg(feature = "json")]
fn square_end() -> f64 {
    90.0
}

/// A hollow body by its outer sizes, its boards and their joints.
///
/// Axes: x along the first leg, y to the wall, z up; lengths are measured on the line `y = z = 0`.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<HollowBodyInput>))]
pub struct HollowBodyInput {
    /// Section square to the length; of a tapered body the one at the left end.
    pub section: BodySection,
    /// The other section of a tapered body of one leg.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub taper: Option<BodyTaper>,
    /// The legs from left to right, at each corner mitred to one another through all panels.
    pub legs: Vec<BodyLeg>,
    /// The sides that have a board; a side that is not listed is open.
    pub boards: Vec<BodyBoard>,
    /// The left end of the first leg.
    pub left_end: BodyEnd,
    /// The right end of the last leg.
    pub right_end: BodyEnd,
    /// The joint of all edges that have none of their own; mitres if left out.
    #[cfg_attr(feature = "json", serde(default))]
    pub joint: BodyJoint,
    /// Edges with a joint of their own.
    #[cfg_attr(feature = "json", serde(default))]
    pub edges: Vec<BodyEdge>,
    /// What is cut into the panels after their edges, in this order.
    #[cfg_attr(feature = "json", serde(default))]
    pub features: Vec<BodyFeature>,
    /// Thickness of the face veneer of panels with a core, mm; solid wood if left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub veneer_mm: Option<f64>,
    /// Density of the boards, kg/m³; without it no mass is stated.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub density_kg_m3: Option<f64>,
}

limited!(HollowBodyInput { veneer_mm: VENEER, density_kg_m3: WOOD_DENSITY });

/// Mass of a panel.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct PanelMass {
    /// Which panel.
    pub panel: FaceId,
    /// Its mass, kg.
    pub mass_kg: f64,
}

/// The panels of a hollow body.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct HollowBody {
    /// The legs with their panels, from left to right.
    pub legs: Vec<Shell>,
    /// Volume of wood, mm³.
    pub wood_volume_mm3: f64,
    /// Volume of the hollow, up to the planes of open faces, mm³.
    pub hollow_volume_mm3: f64,
    /// Volume within the outer planes, mm³.
    pub outer_volume_mm3: f64,
    /// Volume, centroid and inertia of the wood of all panels; its surface counts seams from both sides.
    pub wood: MassProperties,
    /// Mass, kg; absent without a density.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub mass_kg: Option<f64>,
    /// Mass of every panel; none without a density.
    pub panel_masses: Vec<PanelMass>,
    /// What each feature took out of each panel, and the wood left over it.
    pub features: Vec<FeatureCut>,
    /// Every edge of every panel with a face veneer; none for solid wood.
    pub veneer: Vec<VeneerEdge>,
    /// Features that come out where they should not.
    pub findings: Vec<Finding>,
}

impl HollowBody {
    /// Every panel, leg by leg.
    pub fn panels(&self) -> impl Iterator<Item = &Panel> + Clone {
        self.legs.iter().flat_map(|leg| &leg.panels)
    }

    /// The panel of a face.
    pub fn panel(&self, id: FaceId) -> Option<&Panel> {
        self.panels().find(|panel| panel.id == id)
    }
}

/// Most legs a body may have.
const LEGS_MAX: usize = 40;

/// The ring of a section; its faults join the others.
fn ring_of(section: &BodySection, path: &str, faults: &mut Vec<Detail>) -> Option<Ring> {
    let found = section.ring();
    found.map_err(|found| faults.extend(found.into_iter().map(|fault| fault.within(path)))).ok()
}

impl BodyEnd {
    /// Thickness of its panel.
    fn board_mm(&self) -> Option<f64> {
        self.thickness_mm.filter(|_| self.kind == EndKind::ReturnPanel)
    }

    const fn plane(&self) -> EndPlane {
        EndPlane { corner_deg: self.corner_deg, plumb_deg: self.plumb_deg }
    }

    fn faults(&self) -> Vec<Detail> {
        let ranges = self.range_faults().into_iter().chain(end_fault(self.kind, self.thickness_mm));
        ranges.map(Detail::from).collect()
    }
}

impl HollowBodyInput {
    /// The faces with boards.
    pub(super) fn board_faces(&self) -> Vec<FaceKind> {
        let ends = [(&self.left_end, FaceKind::LeftEnd), (&self.right_end, FaceKind::RightEnd)];
        let ends = ends.into_iter().filter(|(end, _)| end.kind == EndKind::ReturnPanel).map(|(_, kind)| kind);
        self.boards.iter().map(|board| board.face).chain(ends).collect()
    }

    /// The sections at the left and at the right end, or every fault of the input with its path.
    fn sections(&self) -> Result<(Ring, Ring), Error> {
        let mut faults: Vec<_> = self.range_faults().into_iter().map(Detail::from).collect();
        let left = ring_of(&self.section, "section", &mut faults);
        let right = match &self.taper {
            Some(taper) => {
                faults.extend(taper.range_faults().into_iter().map(|fault| Detail::from(fault).within("taper")));
                let ring = ring_of(&taper.section, "taper.section", &mut faults);
                ring.map(|ring| ring.moved(taper.back_mm, taper.up_mm))
            }
            None => left.clone(),
        };
        if let (Some(left), Some(right)) = (&left, &right) {
            faults.extend(taper_fault(left, right));
        }
        if let Some(left) = &left {
            faults.extend(self.board_faults(&left.names));
            faults.extend(Butts::new(&left.names, &self.board_faces(), &self.joint, &self.edges).faults());
        }
        faults.extend(self.leg_faults());
        for (feature, at) in self.features.iter().zip(0..) {
            faults.extend(feature.faults().into_iter().map(|fault| fault.within(&format!("features[{at}]"))));
        }
        for (end, path) in [(&self.left_end, "left_end"), (&self.right_end, "right_end")] {
            faults.extend(end.faults().into_iter().map(|fault| fault.within(path)));
        }
        Error::unless_empty(faults)?;
        let none = || Fault::plain(ErrorCode::EmptySolid, "section", "a section with an area", "").into();
        left.zip(right).ok_or_else(none)
    }

    fn board_faults(&self, names: &[FaceKind]) -> Vec<Detail> {
        let mut faults = Vec::new();
        for (board, at) in self.boards.iter().zip(0..) {
            let within = |fault: Detail| fault.within(&format!("boards[{at}]"));
            faults.extend(board.range_faults().into_iter().map(|fault| within(fault.into())));
            if !names.contains(&board.face) {
                let sides = names.iter().map(ToString::to_string).collect::<Vec<_>>().join(", ");
                let fault = Detail::inconsistent(
                    "face",
                    board.face.to_string(),
                    &format!("a side of the section: {sides}"),
                    "",
                );
                faults.push(within(fault.with_code(ErrorCode::UnknownName)));
            } else if self.boards.iter().take(at).any(|other| other.face == board.face) {
                let fault = Detail::inconsistent("face", board.face.to_string(), "each side once", "");
                faults.push(within(fault.with_code(ErrorCode::DuplicateField)));
            }
        }
        if self.board_faces().is_empty() {
            faults.push(Detail::inconsistent(
                "boards",
                "no board".to_owned(),
                "at least one side or end with a board",
                "",
            ));
        }
        faults
    }

    fn leg_faults(&self) -> Vec<Detail> {
        let count = self.legs.len();
        let mut faults = Vec::new();
        if !(1..=LEGS_MAX).contains(&count) {
            faults.push(Detail::inconsistent("legs", format!("{count} legs"), "1 to 40 legs", ""));
        }
        if self.taper.is_some() && count > 1 {
            let cure = "one leg, or no taper";
            faults.push(Detail::inconsistent(
                "taper",
                format!("a taper over {count} legs"),
                "a taper of a body of one leg",
                cure,
            ));
        }
        for (leg, number) in self.legs.iter().zip(1..) {
            let within = |fault: Detail| fault.within(&format!("legs[{}]", number - 1));
            faults.extend(leg.range_faults().into_iter().map(|fault| within(fault.into())));
            let fault = match leg.corner_deg {
                None if number < count => {
                    Fault::plain(ErrorCode::MissingField, "corner_deg", "the angle to the next leg", "").into()
                }
                Some(corner) if number == count => {
                    let given = format!("{corner} degrees");
                    Detail::inconsistent(
                        "corner_deg",
                        given,
                        "no corner after the last leg",
                        "give the end its own corner",
                    )
                }
                _ => continue,
            };
            faults.push(within(fault));
        }
        faults
    }

    /// Where each leg stands, and its two end planes.
    fn places(&self) -> Vec<(Frame, EndPlane, EndPlane)> {
        let mut origin = Vec3::ZERO;
        let mut heading_deg = 0.0;
        let mut left = self.left_end.plane();
        let mut places = Vec::with_capacity(self.legs.len());
        for leg in &self.legs {
            let joint = |corner_deg: f64| EndPlane { corner_deg: 0.5 * corner_deg, plumb_deg: 90.0 };
            let right = leg.corner_deg.map_or(self.right_end.plane(), joint);
            let (sine, cosine) = sin_cos_deg(heading_deg);
            let u = Vec3::new(cosine, sine, 0.0);
            let place = Frame { origin_mm: origin, u, v: Vec3::new(-sine, cosine, 0.0), n: Vec3::Z };
            places.push((place, left, right));
            origin = origin + u * leg.length_mm;
            heading_deg += 180.0 - leg.corner_deg.unwrap_or(180.0);
            left = right;
        }
        places
    }

    /// Thickness of the board of a face of a leg.
    pub(super) fn thickness_mm(&self, number: u32, kind: FaceKind) -> Option<f64> {
        match kind {
            FaceKind::LeftEnd => self.left_end.board_mm().filter(|_| number == 1),
            FaceKind::RightEnd => self.right_end.board_mm().filter(|_| number as usize == self.legs.len()),
            kind => self.boards.iter().find(|board| board.face == kind).map(|board| board.thickness_mm),
        }
    }

    /// A fault of the solids with its path.
    fn at_path(&self, number: u32, fault: ShellFault) -> Error {
        let path = match fault.subject {
            Subject::Butts if self.edges.is_empty() => "joint".to_owned(),
            Subject::Butts => "edges".to_owned(),
            Subject::Body => "boards".to_owned(),
            Subject::Face(face) => match (face.kind, self.thickness_mm(number, face.kind)) {
                (FaceKind::LeftEnd, Some(_)) => "left_end.thickness_mm".to_owned(),
                (FaceKind::RightEnd, Some(_)) => "right_end.thickness_mm".to_owned(),
                (FaceKind::LeftEnd | FaceKind::RightEnd, None) => format!("legs[{}].length_mm", number - 1),
                (kind, _) => match self.boards.iter().position(|board| board.face == kind) {
                    Some(at) => format!("boards[{at}].thickness_mm"),
                    None => "section".to_owned(),
                },
            },
        };
        fault.at(path)
    }
}

/// Sides between unlike sections are not plane.
fn taper_fault(left: &Ring, right: &Ring) -> Option<Detail> {
    let allowed = "a section whose sides are parallel to those on the left, in the same order";
    if left.names != right.names {
        return Some(Detail::inconsistent(
            "taper.section",
            format!("{} sides named otherwise", right.names.len()),
            allowed,
            "",
        ));
    }
    let (side, off) = left.twist(right)?;
    let cure = "a side of a taper must be plane: change sizes, not directions";
    Some(Detail::inconsistent("taper.section", format!("{side} is twisted by {off} mm"), allowed, cure))
}

/// Lets the panels of a leg end at those of its neighbours instead of in the plane of an open end.
fn join(shell: &mut Shell, number: u32, count: u32) {
    let own = |kind| FaceId { leg: number, kind };
    let joints = [(own(FaceKind::LeftEnd), number - 1), (own(FaceKind::RightEnd), number + 1)];
    for panel in &mut shell.panels {
        for (end, next) in joints.into_iter().filter(|(_, next)| (1..=count).contains(next)) {
            for edge in panel.edges.iter_mut().filter(|edge| edge.neighbour == end) {
                edge.neighbour = FaceId { leg: next, kind: panel.id.kind };
                edge.id = EdgeId::new(panel.id, edge.neighbour);
                edge.joint = EdgeJoint::Mitred;
                // Both panels are of one thickness, so the seam halves the corner; above 180 the long point lies inside.
                edge.corner_deg = 180.0 - 2.0 * edge.tilt_deg;
            }
        }
    }
}

/// Panels of a hollow body of any convex section, straight, tapered or along a path, with any joints at its edges.
///
/// # Equation
/// ```text
/// panel i = { d_i ≤ t_i } and, for each neighbour j,
///           { d_i / t_i ≤ d_j / t_j } where mitred,   { d_j ≥ t_j − r } where j runs past with a rabbet of depth r
/// wood    = outer volume − hollow volume − features
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | d | depth below an outer plane | mm | |
/// | t | thickness of its board | mm | `thickness_mm` |
/// | r | depth of the rabbet, 0 for a butt | mm | `rabbet_mm` |
///
/// Legs meet in the plane that halves the corner in plan; every panel is mitred there, at an outside corner with the long
/// point and at an inside corner with the short point on the show face.
///
/// # Limits
/// The section is convex and the same in all legs; a taper is for one leg, and its sides are plane. The hollow must reach
/// every face. Panels of two legs are mitred, never butted.
///
/// # Errors
/// `out_of_range`, `not_finite`, `missing_field`, `duplicate_field`, `unknown_name`; `inconsistent` for a section that is not
/// convex, a twisted taper, ends that meet within the body, legs that run into one another, a rabbet through its board, or
/// joints that no order of the panels at a corner explains; `empty_solid` for a panel of which nothing is left;
/// `no_room_inside` when the boards leave no hollow, or one without a part at every face; `empty_cut` and `nothing_left` for
/// a feature that takes nothing, or everything. A feature that comes out where it should not is a finding. All faults of the input come at
/// once.
///
/// # Source
/// Solid geometry, derived in the theory pages; checked by `verification/hollow_body`.
///
/// # Examples
/// ```
/// use beamcraft_core::shell::{
///     BodyBoard, BodyEnd, BodyJoint, BodyLeg, BodySection, EndKind, FaceKind, HollowBodyInput, RegularSection, hollow_body,
/// };
/// // A wrap of six sides round a post: 160 mm across flats, boards of 18 mm.
/// let open = BodyEnd { kind: EndKind::Open, thickness_mm: None, corner_deg: 90.0, plumb_deg: 90.0 };
/// let board = |side| BodyBoard { face: FaceKind::Side(side), thickness_mm: 18.0 };
/// let body = hollow_body(&HollowBodyInput {
///     section: BodySection::Regular(RegularSection { sides: 6, across_flats_mm: 160.0 }),
///     taper: None,
///     legs: vec![BodyLeg { length_mm: 2400.0, corner_deg: None }],
///     boards: (1..=6).map(board).collect(),
///     left_end: open, right_end: open, joint: BodyJoint::default(), edges: vec![],
///     features: vec![], veneer_mm: None, density_kg_m3: Some(680.0),
/// })?;
/// let edge = &body.legs[0].panels[0].edges[0];
/// assert!((edge.tilt_deg - 30.0).abs() < 1e-9);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn hollow_body(input: &HollowBodyInput) -> Result<HollowBody, Error> {
    let (left, right) = input.sections()?;
    let board_faces = input.board_faces();
    let butts = Butts::new(&left.names, &board_faces, &input.joint, &input.edges);
    let count = input.legs.len() as u32;
    let mut legs = Vec::with_capacity(input.legs.len());
    for ((leg, (place, left_end, right_end)), number) in input.legs.iter().zip(input.places()).zip(1..) {
        let run = Run {
            leg: number,
            names: &left.names,
            left: &left.corners,
            right: &right.corners,
            length_mm: leg.length_mm,
            left_end,
            right_end,
        };
        let presence = |kind| match input.thickness_mm(number, kind) {
            Some(thickness_mm) => Presence::Board { thickness_mm },
            None => Presence::Open,
        };
        let (faces, outer) = run.solid(&place, presence).ok_or_else(|| {
            let path = format!("legs[{}].length_mm", number - 1);
            let cure = "a longer leg, squarer ends or a shallower section";
            Error::one(Detail::inconsistent(
                &path,
                format!("{} mm", leg.length_mm),
                "ends that do not meet within the body",
                cure,
            ))
        })?;
        let mut butts = butts.of_leg(number);
        butts
            .retain(|butt| [butt.runs_past, butt.stops].iter().all(|id| input.thickness_mm(number, id.kind).is_some()));
        let mut shell = shell_of(&faces, &butts, Some(outer)).map_err(|fault| input.at_path(number, fault))?;
        join(&mut shell, number, count);
        legs.push(shell);
    }
    apart(&legs)?;
    met(&legs)?;
    let mut findings = Vec::new();
    let features = features::cut(&mut legs, &input.features, &mut findings)?;
    Ok(HollowBody { features, findings, ..whole(legs, input) })
}

/// Legs that are not neighbours must not run into one another; neighbours lie on both sides of their joint.
fn apart(legs: &[Shell]) -> Result<(), Error> {
    let boxes: Vec<(Vec3, Vec3)> = legs.iter().map(|leg| leg.outer.bounds()).collect();
    let near = |(low, high): (Vec3, Vec3), other: (Vec3, Vec3)| {
        let overlap = high.least(other.1) - low.most(other.0);
        overlap.x > 0.0 && overlap.y > 0.0 && overlap.z > 0.0
    };
    for (at, (one, around)) in legs.iter().zip(&boxes).enumerate() {
        for ((other, beside), number) in legs.iter().zip(&boxes).zip(1..).skip(at + 2) {
            if near(*around, *beside) && one.outer.common(&other.outer, 0).is_some() {
                let given = format!("legs {} and {number} run into one another", at + 1);
                return Err(Error::one(Detail::inconsistent(
                    "legs",
                    given,
                    "legs that stay clear of one another",
                    "longer legs",
                )));
            }
        }
    }
    Ok(())
}

/// A mitre needs the panel beyond it: of a very short or flat leg it may be cut away.
fn met(legs: &[Shell]) -> Result<(), Error> {
    let panels = legs.iter().flat_map(|leg| &leg.panels);
    let mitres = panels.flat_map(|panel| panel.edges.iter().filter(|edge| edge.joint == EdgeJoint::Mitred));
    for edge in mitres {
        // Legs count from 1.
        let leg = (edge.neighbour.leg as usize).checked_sub(1).and_then(|at| legs.get(at));
        if leg.and_then(|leg| leg.panel(edge.neighbour)).is_none() {
            let given = format!("the mitre {} without a panel beyond it", edge.id);
            let cure = "longer legs, thinner boards or another joint";
            return Err(Error::one(Detail::inconsistent("legs", given, "legs whose panels reach one another", cure)));
        }
    }
    Ok(())
}

/// The totals of the legs.
fn whole(legs: Vec<Shell>, input: &HollowBodyInput) -> HollowBody {
    let panels = || legs.iter().flat_map(|leg| &leg.panels);
    let wood = MassProperties::sum(legs.iter().map(|leg| &leg.wood));
    let mass = |volume_mm3: f64| input.density_kg_m3.map(|density| 1e-9 * density * volume_mm3);
    let of_panel = |panel: &Panel| mass(panel.mass.volume_mm3).map(|mass_kg| PanelMass { panel: panel.id, mass_kg });
    let veneer = input.veneer_mm.map(|veneer| panels().flat_map(move |panel| veneer::edges(panel, veneer)).collect());
    HollowBody {
        wood_volume_mm3: wood.volume_mm3,
        hollow_volume_mm3: legs.iter().map(|leg| leg.hollow_volume_mm3).sum(),
        outer_volume_mm3: legs.iter().map(|leg| leg.outer_volume_mm3).sum(),
        wood,
        mass_kg: mass(wood.volume_mm3),
        panel_masses: panels().filter_map(of_panel).collect(),
        features: Vec::new(),
        veneer: veneer.unwrap_or_default(),
        findings: Vec::new(),
        legs,
    }
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const HOLLOW_BODY: crate::json::Calculation = crate::json::calculation!(
    hollow_body: HollowBodyInput => HollowBody, Document,
    "Panels of a hollow body of any convex section, straight, tapered or in legs along a path, as solids with sizes and masses"
);
