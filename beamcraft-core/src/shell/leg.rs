//! A rectangular leg: the straight hollow beam, its ends square or splayed in plan.
//!
//! ```text
//!   plan            wall                          section
//!      ╲─────────────────────────╱  y = depth      z ↑ ┌───────────┐ top
//!       ╲ corner       corner   ╱                    │ │           │
//!        ●─────────────────────●    y = 0            │ │ front     │ open back
//!   (0,0)│← length, front arris│                     │ └───────────┘ bottom
//!        room          x →                           └──────→ y
//! ```

use super::id::{FaceId, FaceKind};
use super::kernel::{ButtJoint, OuterFace, Presence, Shell, Subject, shell_of};
use super::run::{Corner, EndPlane, Run};
use crate::error::{Detail, Error, ErrorCode, Fault};
use crate::geometry::{ConvexSolid, Frame};
use crate::limits::{Limited, limited};
use crate::numeric::real::sin_cos_deg;

/// A face along the length of a leg.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum LongFace {
    /// Towards the room.
    Front,
    /// Towards the wall.
    Back,
    /// Upwards.
    Top,
    /// Downwards.
    Bottom,
}

impl LongFace {
    const fn kind(self) -> FaceKind {
        match self {
            Self::Front => FaceKind::Front,
            Self::Back => FaceKind::Back,
            Self::Top => FaceKind::Top,
            Self::Bottom => FaceKind::Bottom,
        }
    }
}

/// A face along the length that has a board.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<LegBoard>))]
pub struct LegBoard {
    /// Which face.
    pub face: LongFace,
    /// Thickness of its board, mm.
    pub thickness_mm: f64,
}

limited!(LegBoard { thickness_mm: BOARD_THICKNESS });

/// What closes an end.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum EndKind {
    /// A panel that returns from the front to the wall.
    ReturnPanel,
    /// Nothing: the long panels end flush in the plane of the end.
    Open,
}

/// One end of a leg.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<LegEnd>))]
pub struct LegEnd {
    /// What closes it.
    pub kind: EndKind,
    /// Thickness of the return panel, mm; required with one, and given for no open end.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub thickness_mm: Option<f64>,
    /// Angle between the front and the end in plan, inside the body, degrees; 90, the usual square end, if left out.
    #[cfg_attr(feature = "json", serde(default = "square_end"))]
    pub corner_deg: f64,
}

limited!(LegEnd { thickness_mm: BOARD_THICKNESS, corner_deg: END_ANGLE });

#[cfg(feature = "json")]
fn square_end() -> f64 {
    90.0
}

/// A face of a straight leg.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum LegFace {
    /// Towards the room.
    Front,
    /// Towards the wall.
    Back,
    /// Upwards.
    Top,
    /// Downwards.
    Bottom,
    /// The end on the left, seen from the room.
    LeftEnd,
    /// The end on the right, seen from the room.
    RightEnd,
}

impl LegFace {
    const fn kind(self) -> FaceKind {
        match self {
            Self::Front => FaceKind::Front,
            Self::Back => FaceKind::Back,
            Self::Top => FaceKind::Top,
            Self::Bottom => FaceKind::Bottom,
            Self::LeftEnd => FaceKind::LeftEnd,
            Self::RightEnd => FaceKind::RightEnd,
        }
    }
}

/// An edge of a leg where one panel runs past and the other ends at its inner face.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct LegButt {
    /// Face whose panel runs past to the outside.
    pub runs_past: LegFace,
    /// Face whose panel ends at the inner face of the other.
    pub stops: LegFace,
}

/// A straight hollow beam by its outer sizes and its boards.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<Leg>))]
pub struct Leg {
    /// Number of the leg, from 1; it is part of the names of its faces from 2 on.
    #[cfg_attr(feature = "json", serde(default = "first_leg"))]
    pub leg: u32,
    /// Length along the front face, between its outer arrises, mm; splayed ends make the back longer or shorter.
    pub length_mm: f64,
    /// Height, mm.
    pub height_mm: f64,
    /// Depth from the front face to the wall, square to the front, mm.
    pub depth_mm: f64,
    /// The faces along the length that have a board; a face that is not listed is open, as the back usually is.
    pub boards: Vec<LegBoard>,
    /// The end on the left, seen from the room.
    pub left_end: LegEnd,
    /// The end on the right, seen from the room.
    pub right_end: LegEnd,
    /// Edges where one panel runs past the other; all others are mitred.
    #[cfg_attr(feature = "json", serde(default))]
    pub butts: Vec<LegButt>,
}

limited!(Leg { leg: COUNT, length_mm: BODY_LENGTH, height_mm: BODY_SIZE, depth_mm: BODY_SIZE });

#[cfg(feature = "json")]
fn first_leg() -> u32 {
    1
}

/// A thickness belongs to a return panel and to nothing else.
pub(super) fn end_fault(kind: EndKind, thickness_mm: Option<f64>) -> Option<Fault> {
    match (kind, thickness_mm) {
        (EndKind::ReturnPanel, None) => {
            let cure = "give the thickness, or make the end open";
            Some(Fault::plain(ErrorCode::MissingField, "thickness_mm", "a thickness for a return panel", cure))
        }
        (EndKind::Open, Some(_)) => {
            let cure = "leave the thickness out, or make the end a return panel";
            Some(Fault::plain(ErrorCode::Inconsistent, "thickness_mm", "no thickness for an open end", cure))
        }
        _ => None,
    }
}

impl Leg {
    /// Length along the back, mm; zero or less when the ends meet before the wall.
    pub fn back_length_mm(&self) -> f64 {
        let inset = |end: &LegEnd| {
            let (sine, cosine) = sin_cos_deg(end.corner_deg);
            self.depth_mm * cosine / sine
        };
        self.length_mm - inset(&self.left_end) - inset(&self.right_end)
    }

    /// Every fault of the input itself, each with its path.
    fn faults(&self) -> Vec<Detail> {
        let mut faults: Vec<Detail> = self.range_faults().into_iter().map(Detail::from).collect();
        for (at, board) in self.boards.iter().enumerate() {
            let within = |fault: Fault| Detail::from(fault).within(&format!("boards[{at}]"));
            faults.extend(board.range_faults().into_iter().map(within));
            if self.boards.iter().take(at).any(|other| other.face == board.face) {
                let fault = Fault::plain(ErrorCode::DuplicateField, "face", "each face once", "");
                faults.push(within(fault));
            }
        }
        for (end, path) in [(&self.left_end, "left_end"), (&self.right_end, "right_end")] {
            faults.extend(end.range_faults().into_iter().map(|fault| Detail::from(fault).within(path)));
            let fault = end_fault(end.kind, end.thickness_mm);
            faults.extend(fault.map(|fault| Detail::from(fault).within(path)));
        }
        faults
    }

    /// The six faces and the solid within them; nothing when the ends meet.
    fn solid(&self) -> Option<(Vec<OuterFace>, ConvexSolid)> {
        let (depth, height) = (self.depth_mm, self.height_mm);
        let corners = [(0.0, 0.0), (0.0, height), (depth, height), (depth, 0.0)].map(|(y, z)| Corner { y, z });
        let end = |end: &LegEnd| EndPlane { corner_deg: end.corner_deg, plumb_deg: 90.0 };
        let run = Run {
            leg: self.leg,
            names: &[FaceKind::Front, FaceKind::Top, FaceKind::Back, FaceKind::Bottom],
            left: &corners,
            right: &corners,
            length_mm: self.length_mm,
            left_end: end(&self.left_end),
            right_end: end(&self.right_end),
        };
        run.solid(&Frame::BODY, |face| {
            self.thickness_mm(face).map_or(Presence::Open, |thickness_mm| Presence::Board { thickness_mm })
        })
    }

    /// Thickness of the board of a face, mm.
    fn thickness_mm(&self, face: FaceKind) -> Option<f64> {
        let of_end = |end: &LegEnd| end.thickness_mm.filter(|_| end.kind == EndKind::ReturnPanel);
        match face {
            FaceKind::LeftEnd => of_end(&self.left_end),
            FaceKind::RightEnd => of_end(&self.right_end),
            face => self.boards.iter().find(|board| board.face.kind() == face).map(|board| board.thickness_mm),
        }
    }

    /// Path of the field that a fault of the body is about.
    fn path(&self, subject: Subject) -> String {
        let face = match subject {
            Subject::Face(face) => face,
            Subject::Butts => return "butts".to_owned(),
            Subject::Body => return "boards".to_owned(),
        };
        if let Some(at) = self.boards.iter().position(|board| board.face.kind() == face.kind) {
            return format!("boards[{at}].thickness_mm");
        }
        let path = match face.kind {
            FaceKind::Front | FaceKind::Back => "depth_mm",
            FaceKind::Top | FaceKind::Bottom => "height_mm",
            FaceKind::LeftEnd if self.left_end.thickness_mm.is_some() => "left_end.thickness_mm",
            FaceKind::RightEnd if self.right_end.thickness_mm.is_some() => "right_end.thickness_mm",
            FaceKind::LeftEnd | FaceKind::RightEnd | FaceKind::Side(_) => "length_mm",
        };
        path.to_owned()
    }
}

/// Panels of a straight hollow beam, its ends square or splayed.
///
/// # Equation
/// ```text
/// panel i = { d_i ≤ t_i } and, for each mitred neighbour j, { d_i / t_i ≤ d_j / t_j }
/// wood    = outer volume − hollow volume
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | d | depth below an outer plane | mm | |
/// | t | thickness of its board | mm | `thickness_mm` |
///
/// # Limits
/// One straight leg of rectangular section with edges mitred or butted. The hollow must reach every face.
///
/// # Errors
/// `out_of_range`, `not_finite`, `missing_field`, `duplicate_field`; `inconsistent` for an open end with a thickness, ends
/// that meet before the wall, no panel at all, or butts that no order of the panels at a corner explains; `no_room_inside`
/// when the boards leave no hollow. All faults of the input come at once.
///
/// # Source
/// Solid geometry, derived in the theory pages; checked by `verification/shell`.
///
/// # Examples
/// ```
/// use beamcraft_core::shell::{EndKind, Leg, LegBoard, LegEnd, LongFace, shell_panels};
/// let board = |face| LegBoard { face, thickness_mm: 20.0 };
/// let end = LegEnd { kind: EndKind::ReturnPanel, thickness_mm: Some(20.0), corner_deg: 90.0 };
/// let shell = shell_panels(&Leg {
///     leg: 1, length_mm: 1830.0, height_mm: 185.0, depth_mm: 215.0,
///     boards: vec![board(LongFace::Front), board(LongFace::Top), board(LongFace::Bottom)],
///     left_end: end, right_end: end, butts: vec![],
/// })?;
/// assert_eq!(shell.panels.len(), 5);
/// let wood = 1830.0 * 185.0 * 215.0 - 1790.0 * 145.0 * 195.0;
/// assert!((shell.wood_volume_mm3 - wood).abs() < 1e-6);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn shell_panels(input: &Leg) -> Result<Shell, Error> {
    Error::unless_empty(input.faults())?;
    let meet = || {
        Error::one(Detail {
            code: ErrorCode::Inconsistent,
            path: "depth_mm".to_owned(),
            given: format!("{} mm", input.depth_mm),
            allowed: "a depth at which the ends do not meet before the wall".to_owned(),
            cure: "less depth, more length or squarer ends".to_owned(),
        })
    };
    let (faces, outer) = input.solid().ok_or_else(meet)?;
    let id = |face: LegFace| FaceId { leg: input.leg, kind: face.kind() };
    let joint = |butt: &LegButt| ButtJoint { runs_past: id(butt.runs_past), stops: id(butt.stops), rabbet_mm: 0.0 };
    let butts: Vec<_> = input.butts.iter().map(joint).collect();
    shell_of(&faces, &butts, Some(outer)).map_err(|fault| {
        let path = input.path(fault.subject);
        fault.at(path)
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const SHELL_PANELS: crate::json::Calculation = crate::json::calculation!(
    shell_panels: Leg => Shell, Document,
    "Every panel of a straight hollow beam as a solid: sizes, bevels at every edge, area, volume and centroid"
);
