//! Which joint every edge of a body gets: a default for the body, overridden edge by edge.

use super::id::{EdgeId, FaceId, FaceKind};
use super::kernel::ButtJoint;
use crate::error::{Detail, ErrorCode, Fault};
use crate::limits::{Limited, limited};

/// How two panels are joined along an edge.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum EdgeJoining {
    /// Mitred: the show faces meet in a line, whatever the thicknesses.
    #[default]
    Mitre,
    /// Butted: one panel runs past, the other ends at its inner face.
    Butt,
    /// Rabbeted: one panel runs past with a step cut in its inner face, and the other ends in the step.
    Rabbet,
}

/// The joints of all edges that have none of their own.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<BodyJoint>))]
pub struct BodyJoint {
    /// How the panels are joined.
    pub joining: EdgeJoining,
    /// For butts and rabbets, every face with a board, each running past all that come after it.
    #[cfg_attr(feature = "json", serde(default))]
    pub running_past: Vec<FaceKind>,
    /// Depth of the rabbets below the inner face of the panel that runs past, mm; for rabbets only.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub rabbet_mm: Option<f64>,
}

limited!(BodyJoint { rabbet_mm: RABBET });

/// The joint of one edge; in a body of several legs, of that edge of each leg.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<BodyEdge>))]
pub struct BodyEdge {
    /// The edge by its two faces, such as `front|top`.
    pub edge: EdgeId,
    /// How the panels are joined.
    pub joining: EdgeJoining,
    /// For a butt or a rabbet, the face whose panel runs past to the outside.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub runs_past: Option<FaceKind>,
    /// Depth of the rabbet below the inner face of the panel that runs past, mm; for a rabbet only.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub rabbet_mm: Option<f64>,
}

limited!(BodyEdge { rabbet_mm: RABBET });

/// The edges of a run: of neighbouring sides, and of every side with both ends.
pub(super) fn edges(names: &[FaceKind]) -> Vec<EdgeId> {
    let edge = |one: FaceKind, other: FaceKind| EdgeId::new(FaceId::first_leg(one), FaceId::first_leg(other));
    let next = names.iter().cycle().skip(1);
    let along = names.iter().zip(next).map(|(one, other)| edge(*one, *other));
    let ends = names.iter().flat_map(|name| [FaceKind::LeftEnd, FaceKind::RightEnd].map(|end| edge(*name, end)));
    along.chain(ends).collect()
}

/// Where two boards meet other than in a mitre.
pub(super) struct Butts<'a> {
    /// The edges where two boards meet.
    edges: Vec<EdgeId>,
    boards: &'a [FaceKind],
    default: &'a BodyJoint,
    own: &'a [BodyEdge],
}

impl<'a> Butts<'a> {
    pub(super) fn new(names: &[FaceKind], boards: &'a [FaceKind], default: &'a BodyJoint, own: &'a [BodyEdge]) -> Self {
        let mut edges = edges(names);
        edges.retain(|edge| {
            let (one, other) = edge.faces();
            boards.contains(&one.kind) && boards.contains(&other.kind)
        });
        Self { edges, boards, default, own }
    }

    /// Every fault of the input, with its path.
    pub(super) fn faults(&self) -> Vec<Detail> {
        let mut faults: Vec<_> = self.default.range_faults().into_iter().map(Detail::from).collect();
        let joining = self.default.joining;
        faults.extend(depth_fault(joining, self.default.rabbet_mm));
        faults.extend(self.order_fault());
        let mut faults: Vec<_> = faults.into_iter().map(|fault| fault.within("joint")).collect();
        for (own, at) in self.own.iter().zip(0..) {
            let path = format!("edges[{at}]");
            let found = own.range_faults().into_iter().map(Detail::from);
            let found = found.chain(depth_fault(own.joining, own.rabbet_mm)).chain(self.edge_fault(own, at));
            faults.extend(found.map(|fault| fault.within(&path)));
        }
        faults
    }

    /// Whether the default has the order it needs.
    fn order_fault(&self) -> Option<Detail> {
        let order = &self.default.running_past;
        let listed = || order.iter().map(ToString::to_string).collect::<Vec<_>>().join(", ");
        if self.default.joining == EdgeJoining::Mitre {
            let refused = || Detail::inconsistent("running_past", listed(), "no order where the panels are mitred", "");
            return (!order.is_empty()).then(refused);
        }
        let once = |face: &FaceKind| order.iter().filter(|other| *other == face).count() == 1;
        let all = self.boards.iter().all(once) && order.len() == self.boards.len();
        (!all).then(|| {
            let given = if order.is_empty() { "no order".to_owned() } else { listed() };
            Detail::inconsistent(
                "running_past",
                given,
                "every face with a board, once",
                "list who runs past whom, outermost first",
            )
        })
    }

    fn edge_fault(&self, own: &BodyEdge, at: usize) -> Option<Detail> {
        let (one, other) = own.edge.faces();
        let text = || own.edge.to_string();
        if !self.edges.contains(&own.edge) {
            let cure = "name faces without a leg: the joint holds for every leg";
            return Some(Detail::inconsistent("edge", text(), "an edge of two faces with boards", cure));
        }
        if self.own.iter().take(at).any(|before| before.edge == own.edge) {
            let fault = Detail::inconsistent("edge", text(), "each edge once", "");
            return Some(fault.with_code(ErrorCode::DuplicateField));
        }
        match (own.joining, own.runs_past) {
            (EdgeJoining::Mitre, None) => None,
            (EdgeJoining::Mitre, Some(past)) => Some(Detail::inconsistent(
                "runs_past",
                past.to_string(),
                "no panel that runs past where both are mitred",
                "",
            )),
            (_, None) => Some(Fault::plain(ErrorCode::MissingField, "runs_past", "the face that runs past", "").into()),
            (_, Some(past)) if past == one.kind || past == other.kind => None,
            (_, Some(past)) => Some(Detail::inconsistent("runs_past", past.to_string(), "a face of the edge", "")),
        }
    }

    /// The butts of a leg.
    pub(super) fn of_leg(&self, leg: u32) -> Vec<ButtJoint> {
        let butt = |edge: &EdgeId| {
            let own = self.own.iter().find(|own| own.edge == *edge);
            let (one, other) = edge.faces();
            let (joining, past, rabbet_mm) = match own {
                Some(own) => (own.joining, own.runs_past, own.rabbet_mm),
                None => (self.default.joining, self.first_of(one.kind, other.kind), self.default.rabbet_mm),
            };
            let past = past.filter(|_| joining != EdgeJoining::Mitre)?;
            let stops = if past == one.kind { other.kind } else { one.kind };
            let id = |kind| FaceId { leg, kind };
            Some(ButtJoint { runs_past: id(past), stops: id(stops), rabbet_mm: rabbet_mm.unwrap_or(0.0) })
        };
        self.edges.iter().filter_map(butt).collect()
    }

    /// Which of two faces comes first in the order of the default.
    fn first_of(&self, one: FaceKind, other: FaceKind) -> Option<FaceKind> {
        self.default.running_past.iter().copied().find(|face| *face == one || *face == other)
    }
}

/// A depth belongs to a rabbet and to nothing else.
fn depth_fault(joining: EdgeJoining, rabbet_mm: Option<f64>) -> Option<Detail> {
    match (joining, rabbet_mm) {
        (EdgeJoining::Rabbet, None) => {
            Some(Fault::plain(ErrorCode::MissingField, "rabbet_mm", "the depth of the rabbet", "").into())
        }
        (EdgeJoining::Mitre | EdgeJoining::Butt, Some(depth)) => Some(Detail::inconsistent(
            "rabbet_mm",
            format!("{depth} mm"),
            "a depth for a rabbet only",
            "leave the depth out",
        )),
        _ => None,
    }
}
