//! Panels of any convex body from its outer faces: what each board becomes when the joints are cut.
//!
//! ```text
//!        outer plane of j ───────────────●
//!                                      ╱ │        seam of i and j: where the depth below the outer plane,
//!        inner plane of j ──────────●╱   │        as a share of the thickness, is the same for both
//!                     hollow        │    │
//!                                   i's  i's
//!                                 inner  outer plane
//! ```
//!
//! With d the depth below an outer plane and t the thickness, panel i is the part of the outer solid with
//!
//! | condition | for |
//! |---|---|
//! | d_i ≤ t_i | itself |
//! | d_i / t_i ≤ d_j / t_j | each j it is mitred to |
//! | d_j ≥ t_j − r | each j that runs past it with a rabbet of depth r; r is 0 for a butt |
//!
//! The second is a plane through the outer and the inner edge line of i and j, so it holds for unequal thicknesses, for
//! any corner angle, and at corners where three panels meet: their three seams share the line from the outer to the
//! inner corner. Every point of the wood lies in exactly one panel, because exactly one share is the smallest.

use super::carve::carve;
use super::id::{EdgeId, FaceId};
use super::panel::{EdgeJoint, Panel, Seam, measure};
use crate::error::{Detail, Error, ErrorCode};
use crate::geometry::{ConvexSolid, Cutter, MassProperties, NoSolid, Plane, Vec3};
use crate::limits;

/// Whether a face has a board.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Presence {
    /// A board of a thickness.
    Board {
        /// Thickness, mm.
        thickness_mm: f64,
    },
    /// No board: the neighbours end flush in the plane of the face.
    Open,
}

/// A face of the outer solid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OuterFace {
    /// Its name.
    pub id: FaceId,
    /// Its outer plane, the normal out of the body.
    pub plane: Plane,
    /// Whether it has a board.
    pub presence: Presence,
    /// Direction of the grain; what of it lies in the plane counts.
    pub grain: Vec3,
}

/// An edge where one panel runs past and the other ends at its inner face, or in a rabbet cut into it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ButtJoint {
    /// Face whose panel runs past to the outside.
    pub runs_past: FaceId,
    /// Face whose panel ends at the inner face of the other.
    pub stops: FaceId,
    /// Depth of the rabbet below the inner face of the panel that runs past, mm; 0 for a plain butt.
    pub rabbet_mm: f64,
}

/// A face of a shell.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct ShellFace {
    /// Its name.
    pub id: FaceId,
    /// Thickness of its board, mm; absent where the face is open.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub thickness_mm: Option<f64>,
}

/// The panels of a body, with the solids they come from.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Shell {
    /// The faces, in the order of the input; tags of `outer` and `hollow` count in it from 0.
    pub faces: Vec<ShellFace>,
    /// The panels, in the order of their faces.
    pub panels: Vec<Panel>,
    /// Volume of wood, mm³.
    pub wood_volume_mm3: f64,
    /// Volume of the hollow, up to the planes of open faces, mm³.
    pub hollow_volume_mm3: f64,
    /// Volume within the outer planes, mm³.
    pub outer_volume_mm3: f64,
    /// Centroid of the wood, mm.
    pub centroid_mm: Vec3,
    /// The wood of all panels together; its surface counts seams from both sides.
    pub wood: MassProperties,
    /// The solid within the outer planes.
    pub outer: ConvexSolid,
    /// The hollow.
    pub hollow: ConvexSolid,
}

impl Shell {
    /// Adds up the panels again.
    pub(super) fn weigh(&mut self) {
        self.wood = MassProperties::sum(self.panels.iter().map(|panel| &panel.mass));
        self.wood_volume_mm3 = self.wood.volume_mm3;
        self.centroid_mm = self.wood.centroid_mm;
    }

    /// The panel of a face.
    pub fn panel(&self, id: FaceId) -> Option<&Panel> {
        self.panels.iter().find(|panel| panel.id == id)
    }
}

/// What a fault of the body is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Subject {
    Face(FaceId),
    Butts,
    Body,
}

/// A fault of the body, before it has a path.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct ShellFault {
    pub(super) code: ErrorCode,
    pub(super) subject: Subject,
    pub(super) given: String,
    pub(super) allowed: &'static str,
    pub(super) cure: &'static str,
}

impl ShellFault {
    fn of_face(code: ErrorCode, face: FaceId, given: String, allowed: &'static str, cure: &'static str) -> Self {
        Self { code, subject: Subject::Face(face), given, allowed, cure }
    }

    fn of_butts(given: String, allowed: &'static str, cure: &'static str) -> Self {
        Self { code: ErrorCode::Inconsistent, subject: Subject::Butts, given, allowed, cure }
    }

    pub(super) fn at(self, path: String) -> Error {
        let Self { code, given, allowed, cure, .. } = self;
        Error::one(Detail { code, path, given, allowed: allowed.to_owned(), cure: cure.to_owned() })
    }
}

/// More faces than any beam has; the search for vertices grows with the fourth power.
const FACES_MAX: usize = 40;

/// Panels of a convex body given by its outer faces.
///
/// Edges are mitred, so that the show faces of both panels meet in a line, unless `butts` says that one panel runs past.
/// Panels run up to the planes of open faces.
///
/// # Errors
/// `inconsistent` for fewer than four or too many faces, no panel, a grain across its face, a butt between faces that
/// share no edge, a rabbet through its board, or joints at a corner that no order of its panels explains; `duplicate_field` for a face or butt given
/// twice; `out_of_range` for a thickness; `empty_solid` when the planes enclose no solid or a face has no part in it;
/// `no_room_inside` when the boards leave no hollow or one without a part at every face. The path is the face's name.
pub fn build_shell(faces: &[OuterFace], butts: &[ButtJoint]) -> Result<Shell, Error> {
    shell_of(faces, butts, None).map_err(|fault| {
        let path = match fault.subject {
            Subject::Face(face) => face.to_string(),
            Subject::Butts => "butts".to_owned(),
            Subject::Body => String::new(),
        };
        fault.at(path)
    })
}

/// A face that has a board.
#[derive(Clone, Copy)]
struct Board {
    index: u32,
    thickness: f64,
    face: OuterFace,
    /// Its inner plane, the normal out of the hollow.
    inner: Plane,
}

/// The panels; a caller who knows the solid within the faces gives it, with the index of each face as its tag.
pub(super) fn shell_of(
    faces: &[OuterFace],
    butts: &[ButtJoint],
    outer: Option<ConvexSolid>,
) -> Result<Shell, ShellFault> {
    let boards = boards_of(faces)?;
    let outer = match outer {
        Some(outer) => outer,
        None => outer_solid(faces)?,
    };
    let joints = Joints { butts };
    joints.check(&boards, &outer)?;
    let mut cutter = Cutter::default();
    let same = same_shape(&outer, faces, &boards);
    // Where every edge is mitred and the hollow has the shape of the body, the panels are the layers between both.
    let layered = same.is_some() && butts.is_empty();
    let hollow = match same {
        Some(hollow) => hollow,
        None => hollow_solid(&outer, faces, &boards, &mut cutter)?,
    };
    let mut panels = Vec::with_capacity(boards.len());
    for board in &boards {
        let solid = match layered {
            true => layer_of(board, &boards, faces, &outer, &hollow),
            false => None,
        };
        let solid = match solid {
            Some(solid) => solid,
            None => cut_of(board, &boards, &outer, &joints, &mut cutter)?,
        };
        panels.push(panel_of(board, faces, &joints, solid)?);
    }
    for butt in butts.iter().filter(|butt| butt.rabbet_mm > 0.0) {
        cut_rabbet(&mut panels, butt);
    }
    let wood = MassProperties::sum(panels.iter().map(|panel| &panel.mass));
    let thickness = |face: &OuterFace| match face.presence {
        Presence::Board { thickness_mm } => Some(thickness_mm),
        Presence::Open => None,
    };
    Ok(Shell {
        faces: faces.iter().map(|face| ShellFace { id: face.id, thickness_mm: thickness(face) }).collect(),
        wood_volume_mm3: wood.volume_mm3,
        hollow_volume_mm3: hollow.volume(),
        outer_volume_mm3: outer.volume(),
        centroid_mm: wood.centroid_mm,
        wood,
        panels,
        outer,
        hollow,
    })
}

fn boards_of(faces: &[OuterFace]) -> Result<Vec<Board>, ShellFault> {
    let whole =
        |given: String, allowed| ShellFault { subject: Subject::Body, ..ShellFault::of_butts(given, allowed, "") };
    if faces.len() < 4 || faces.len() > FACES_MAX {
        return Err(whole(format!("{} faces", faces.len()), "4 to 40 faces"));
    }
    let mut boards = Vec::with_capacity(faces.len());
    for (face, index) in faces.iter().zip(0_u32..) {
        if faces.iter().take(index as usize).any(|other| other.id == face.id) {
            let given = face.id.to_string();
            return Err(ShellFault::of_face(ErrorCode::DuplicateField, face.id, given, "each face once", ""));
        }
        if let Presence::Board { thickness_mm } = face.presence {
            limits::BOARD_THICKNESS.check("thickness_mm", thickness_mm).map_err(|fault| {
                let given = format!("{thickness_mm} mm");
                ShellFault::of_face(fault.code, face.id, given, "a thickness of 1 mm to 150 mm", fault.cure)
            })?;
            let inner = face.plane.moved(-thickness_mm).ok_or_else(|| no_hollow(face.id))?;
            boards.push(Board { index, thickness: thickness_mm, face: *face, inner });
        }
    }
    if boards.is_empty() { Err(whole("no panel".to_owned(), "at least one face with a board")) } else { Ok(boards) }
}

fn outer_solid(faces: &[OuterFace]) -> Result<ConvexSolid, ShellFault> {
    let planes: Vec<_> = faces.iter().map(|face| face.plane).collect();
    let none = |fault| ShellFault {
        code: ErrorCode::EmptySolid,
        subject: Subject::Body,
        given: match fault {
            NoSolid::Empty => "planes that exclude one another".to_owned(),
            NoSolid::Unbounded => "planes that enclose nothing".to_owned(),
        },
        allowed: "outer planes that enclose a solid",
        cure: "",
    };
    let outer = ConvexSolid::from_half_spaces(&planes).map_err(none)?;
    match missing_face(&outer, faces) {
        None => Ok(outer),
        Some(face) => Err(ShellFault::of_face(
            ErrorCode::EmptySolid,
            face.id,
            "a face without area".to_owned(),
            "a face that bounds the body",
            "its neighbours meet before it",
        )),
    }
}

/// The first face without a part in a solid whose tags are indices of faces.
fn missing_face<'a>(solid: &ConvexSolid, faces: &'a [OuterFace]) -> Option<&'a OuterFace> {
    faces.iter().zip(0..).find(|(_, index)| solid.face(*index).is_none()).map(|(face, _)| face)
}

fn hollow_solid(
    outer: &ConvexSolid,
    faces: &[OuterFace],
    boards: &[Board],
    cutter: &mut Cutter,
) -> Result<ConvexSolid, ShellFault> {
    cutter.start(outer, |tag| tag);
    for board in boards {
        if !cutter.step(&board.inner, board.index) {
            return Err(no_hollow(board.face.id));
        }
    }
    match missing_face(cutter.solid(), faces) {
        None => Ok(cutter.solid().clone()),
        Some(face) => Err(no_hollow(face.id)),
    }
}

fn no_hollow(face: FaceId) -> ShellFault {
    ShellFault::of_face(
        ErrorCode::NoRoomInside,
        face,
        "boards that leave no hollow".to_owned(),
        "boards that leave a hollow with a part at every face",
        "thinner boards or a larger body",
    )
}

/// The board of a face, by the index of the face.
fn board_of(boards: &[Board], index: u32) -> Option<&Board> {
    boards.iter().find(|board| board.index == index)
}

/// The hollow when it has the faces, edges and corners of the body.
fn same_shape(outer: &ConvexSolid, faces: &[OuterFace], boards: &[Board]) -> Option<ConvexSolid> {
    let outside = |tag: u32| faces.get(tag as usize).map(|face| face.plane);
    outer.of_same_shape(|tag| board_of(boards, tag).map(|board| board.inner).or_else(|| outside(tag)))
}

/// A panel between a face of the body and the same face of a hollow of the same shape.
///
/// While all boards grow from nothing to their thickness the hollow keeps that shape, so its face sweeps the points whose
/// share of this board is the smallest.
fn layer_of(
    board: &Board,
    boards: &[Board],
    faces: &[OuterFace],
    outer: &ConvexSolid,
    hollow: &ConvexSolid,
) -> Option<ConvexSolid> {
    let near = outer.vertices().first().copied()?;
    outer.layer(hollow, board.index, (Panel::SHOW, Panel::INNER), |beyond| {
        let plane = match board_of(boards, beyond) {
            Some(other) => seam_plane(board, other, near)?,
            None => faces.get(beyond as usize)?.plane,
        };
        Some((plane, EDGES + beyond))
    })
}

/// The plane of the seam between two boards; its normal points out of the first.
///
/// `d_i / t_i ≤ d_j / t_j`, with `d = n · (p − x)` for a point p of the outer plane with outward normal n.
fn seam_plane(one: &Board, other: &Board, near: Vec3) -> Option<Plane> {
    let (n_i, n_j) = (one.face.plane.normal(), other.face.plane.normal());
    let normal = n_j * one.thickness - n_i * other.thickness;
    // About a point of the body, so that far from the origin no digits are lost.
    let (depth_i, depth_j) = (-one.face.plane.signed_distance(near), -other.face.plane.signed_distance(near));
    let reach = (depth_j * one.thickness - depth_i * other.thickness) / normal.dot(normal);
    Plane::through(near + normal * reach, normal)
}

/// How the faces are joined.
struct Joints<'a> {
    butts: &'a [ButtJoint],
}

/// How a panel meets another.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Meeting {
    Stops,
    Mitred,
    RunsPast,
}

impl Joints<'_> {
    fn between(&self, one: FaceId, other: FaceId) -> Meeting {
        let is = |butt: &ButtJoint, past, stops| butt.runs_past == past && butt.stops == stops;
        if self.butts.iter().any(|butt| is(butt, one, other)) {
            Meeting::RunsPast
        } else if self.butts.iter().any(|butt| is(butt, other, one)) {
            Meeting::Stops
        } else {
            Meeting::Mitred
        }
    }

    /// Depth of the rabbet in `past` that holds the edge of `stops`, mm.
    fn rabbet_mm(&self, past: FaceId, stops: FaceId) -> f64 {
        let held = self.butts.iter().find(|butt| butt.runs_past == past && butt.stops == stops);
        held.map_or(0.0, |butt| butt.rabbet_mm)
    }

    /// Every butt lies on an edge of two boards, once, and every corner has an order.
    fn check(&self, boards: &[Board], outer: &ConvexSolid) -> Result<(), ShellFault> {
        for (at, butt) in self.butts.iter().enumerate() {
            let find = |id: FaceId| boards.iter().find(|board| board.face.id == id);
            let shared = match (find(butt.runs_past), find(butt.stops)) {
                (Some(one), Some(other)) => match (outer.face(one.index), outer.face(other.index)) {
                    (Some(one), Some(other)) => outer.shared_edge(&one, &other) > 0.0,
                    _ => false,
                },
                _ => false,
            };
            let edge = EdgeId::new(butt.runs_past, butt.stops);
            if !shared {
                let allowed = "two faces with boards that share an edge";
                return Err(ShellFault::of_butts(edge.to_string(), allowed, ""));
            }
            if self.butts.iter().take(at).any(|other| EdgeId::new(other.runs_past, other.stops) == edge) {
                let fault = ShellFault::of_butts(edge.to_string(), "each edge once", "");
                return Err(ShellFault { code: ErrorCode::DuplicateField, ..fault });
            }
            let thickness = find(butt.runs_past).map_or(0.0, |board| board.thickness);
            if !(butt.rabbet_mm >= 0.0 && butt.rabbet_mm < thickness) {
                let given = format!("a rabbet of {} mm in a board of {thickness} mm at {edge}", butt.rabbet_mm);
                return Err(ShellFault::of_butts(given, "a rabbet that leaves wood under it", "a shallower rabbet"));
            }
        }
        if self.butts.is_empty() {
            return Ok(());
        }
        for vertex in 0..outer.vertices().len() as u32 {
            let around: Vec<FaceId> = boards
                .iter()
                .filter(|board| outer.face(board.index).is_some_and(|face| face.corners.contains(&vertex)))
                .map(|board| board.face.id)
                .collect();
            self.check_corner(&around)?;
        }
        self.check_overlap(boards, outer)
    }

    /// Three panels tile a corner only when one order, with mitres as ties, says who runs past whom.
    fn check_corner(&self, around: &[FaceId]) -> Result<(), ShellFault> {
        for a in around {
            for b in around {
                for c in around {
                    if a == b || b == c || a == c {
                        continue;
                    }
                    let (ab, bc, ac) = (self.between(*a, *b), self.between(*b, *c), self.between(*a, *c));
                    // a before or beside b, b before or beside c: then a before or beside c, beside only if both are.
                    if ab >= Meeting::Mitred && bc >= Meeting::Mitred && ac != ab.max(bc) {
                        let mut names = [a.to_string(), b.to_string(), c.to_string()];
                        names.sort();
                        return Err(ShellFault::of_butts(
                            format!("the corner of {}", names.join(", ")),
                            "at a corner of three panels one order of who runs past whom, or mitres only",
                            "joints that follow no order leave a hole in the corner",
                        ));
                    }
                }
            }
        }
        Ok(())
    }

    /// The order at the corners covers everything unless boards of faces without a common edge reach one another.
    fn check_overlap(&self, boards: &[Board], outer: &ConvexSolid) -> Result<(), ShellFault> {
        for (at, one) in boards.iter().enumerate() {
            for other in boards.iter().skip(at + 1) {
                let (Some(first), Some(second)) = (outer.face(one.index), outer.face(other.index)) else { continue };
                if outer.shared_edge(&first, &second) > 0.0 {
                    continue;
                }
                let slabs = [one, other].map(|board| (board.inner.flipped(), 0));
                if outer.clone().cut(slabs).is_some_and(|both| both.volume() > 0.0) {
                    let edge = EdgeId::new(one.face.id, other.face.id);
                    let allowed = "boards that do not reach one another";
                    let cure = "mitre every edge, or thinner boards";
                    return Err(ShellFault::of_butts(edge.to_string(), allowed, cure));
                }
            }
        }
        Ok(())
    }
}

/// First of the tags for the edges: this plus the index of the face beyond.
const EDGES: u32 = 2;

/// The body cut down to one panel.
fn cut_of(
    board: &Board,
    boards: &[Board],
    outer: &ConvexSolid,
    joints: &Joints<'_>,
    cutter: &mut Cutter,
) -> Result<ConvexSolid, ShellFault> {
    let id = board.face.id;
    let lost = || {
        ShellFault::of_face(
            ErrorCode::EmptySolid,
            id,
            "a panel without a show face".to_owned(),
            "a face that reaches beyond the boards that run past it",
            "",
        )
    };
    let near = outer.vertices().first().copied().unwrap_or_default();
    cutter.start(outer, |tag| if tag == board.index { Panel::SHOW } else { EDGES + tag });
    let mut some = cutter.step(&board.inner.flipped(), Panel::INNER);
    for other in boards.iter().filter(|other| other.index != board.index) {
        let plane = match joints.between(id, other.face.id) {
            Meeting::Mitred => seam_plane(board, other, near),
            // Into the rabbet, if there is one.
            Meeting::Stops => other.face.plane.moved(joints.rabbet_mm(other.face.id, id) - other.thickness),
            Meeting::RunsPast => continue,
        };
        some = some && cutter.step(&plane.ok_or_else(lost)?, EDGES + other.index);
    }
    let solid = cutter.solid();
    let whole = some && solid.face(Panel::SHOW).is_some() && solid.face(Panel::INNER).is_some();
    if whole { Ok(solid.clone()) } else { Err(lost()) }
}

/// The panel of a board with its edges.
fn panel_of(board: &Board, faces: &[OuterFace], joints: &Joints<'_>, solid: ConvexSolid) -> Result<Panel, ShellFault> {
    let (id, show_index) = (board.face.id, board.index);
    let seams = faces.iter().zip(0..).filter(|(_, index)| *index != show_index).map(|(face, index)| {
        let joint = match (face.presence, joints.between(id, face.id)) {
            (Presence::Open, _) => EdgeJoint::Open,
            (_, Meeting::Mitred) => EdgeJoint::Mitred,
            (_, Meeting::Stops) => EdgeJoint::Stops,
            (_, Meeting::RunsPast) => EdgeJoint::RunsPast,
        };
        let rabbet_mm = match joint {
            EdgeJoint::Stops => joints.rabbet_mm(face.id, id),
            EdgeJoint::RunsPast => joints.rabbet_mm(id, face.id),
            EdgeJoint::Mitred | EdgeJoint::Open => 0.0,
        };
        Seam { tag: EDGES + index, neighbour: face.id, outward: face.plane.normal(), joint, rabbet_mm }
    });
    measure(id, board.thickness, &board.face, solid, seams).ok_or_else(|| {
        ShellFault::of_face(
            ErrorCode::Inconsistent,
            id,
            "a grain across the board".to_owned(),
            "a grain direction that lies in the face",
            "",
        )
    })
}

/// Takes the edge of the panel that stops out of the one that runs past it.
fn cut_rabbet(panels: &mut [Panel], butt: &ButtJoint) {
    let held = panels.iter().find(|panel| panel.id == butt.stops).and_then(Panel::blank).cloned();
    let past = panels.iter_mut().find(|panel| panel.id == butt.runs_past);
    if let (Some(held), Some(past)) = (held, past) {
        carve(past, held.faces().map(|face| face.plane));
    }
}

#[cfg(test)]
#[path = "kernel_tests.rs"]
mod tests;
