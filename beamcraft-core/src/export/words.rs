//! Words for the choices in a plan, the same in the drawing and in the report.

use crate::fasten::ScrewSize;
use crate::finding::Grade;
use crate::finish::{ApplicationMethod, FinishName};
use crate::movement::BoardCut;
use crate::plan::CoatedFaces;
use crate::saw::{BladeSide, CutCaution, CutKind, CutWay, FaceDown, PanelCut, RidingEdge, StopMeets};
use crate::shell::{EdgeCut, EdgeId, EdgeJoint, FaceId, FaceKind, Panel};
use crate::site::LiftManner;
use crate::verdict::{Basis, Outcome};

pub(super) const fn outcome(outcome: Outcome) -> &'static str {
    match outcome {
        Outcome::Met => "met",
        Outcome::NotMet => "not met",
        Outcome::NotCovered => "not covered",
        Outcome::NotDetermined => "not determined",
    }
}

pub(super) const fn basis(basis: Basis) -> &'static str {
    match basis {
        Basis::Clause => "published rule",
        Basis::Derived => "derived",
        Basis::Chosen => "chosen",
    }
}

pub(super) const fn grade(grade: Grade) -> &'static str {
    match grade {
        Grade::Note => "note",
        Grade::Caution => "caution",
        Grade::Stop => "stop",
    }
}

/// Name of a face: `front`, `left end`, `leg 2, top`.
pub(super) fn face(face: FaceId) -> String {
    let kind = match face.kind {
        FaceKind::Front => "front".to_owned(),
        FaceKind::Back => "back".to_owned(),
        FaceKind::Top => "top".to_owned(),
        FaceKind::Bottom => "bottom".to_owned(),
        FaceKind::LeftEnd => "left end".to_owned(),
        FaceKind::RightEnd => "right end".to_owned(),
        FaceKind::Side(number) => format!("side {number}"),
    };
    if face.leg == 1 { kind } else { format!("leg {}, {kind}", face.leg) }
}

/// Both faces of a seam: `front and top`.
pub(super) fn seam(edge: EdgeId) -> String {
    let (first, second) = edge.faces();
    format!("{} and {}", face(first), face(second))
}

pub(super) const fn board_cut(cut: BoardCut) -> &'static str {
    match cut {
        BoardCut::FlatSawn => "flat sawn",
        BoardCut::RiftSawn => "rift sawn",
        BoardCut::QuarterSawn => "quarter sawn",
        BoardCut::RingAngle => "with the ring angle given",
    }
}

pub(super) const fn joint(joint: EdgeJoint) -> &'static str {
    match joint {
        EdgeJoint::Mitred => "mitred",
        EdgeJoint::Stops => "stops at it",
        EdgeJoint::RunsPast => "runs past it",
        EdgeJoint::Open => "open",
    }
}

/// A text with its first letter in upper case.
pub(super) fn sentence(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

pub(super) const fn cut_kind(kind: CutKind) -> &'static str {
    match kind {
        CutKind::Joint => "jointed edge",
        CutKind::FenceRip => "rip",
        CutKind::TaperRip => "taper",
        CutKind::GaugeCut => "cross-cut",
    }
}

/// How the board goes over the saw, with the face that lies down or against the fence.
pub(super) fn way(way: CutWay, face_down: FaceDown) -> String {
    let (down, up) = match face_down {
        FaceDown::ShowFace => ("show face", "inner face"),
        FaceDown::InnerFace => ("inner face", "show face"),
    };
    match way {
        CutWay::FlatOnTable | CutWay::OversizeThenPlane => format!("flat, {down} down"),
        CutWay::OnEdge => format!("on edge, {down} against a tall fence"),
        CutWay::OnWedge => format!("on a wedge, {down} down"),
        CutWay::TrackSaw => format!("track saw, {up} up"),
    }
}

pub(super) const fn riding(riding: RidingEdge) -> &'static str {
    match riding {
        RidingEdge::Square => "",
        RidingEdge::LongPointUp => ", long point up",
        RidingEdge::LongPointDown => ", long point down",
    }
}

pub(super) const fn side(side: BladeSide) -> &'static str {
    match side {
        BladeSide::Left => "left",
        BladeSide::Right => "right",
    }
}

/// The angle of a gauge, with the side at which the board stays longer.
pub(super) fn gauge(gauge_deg: f64, written: &str) -> String {
    if written == "0°" {
        return "gauge square".to_owned();
    }
    let side = if gauge_deg > 0.0 { "the far edge" } else { "the riding edge" };
    format!("gauge {written} off square, longer at {side}")
}

pub(super) const fn stop_meets(meets: StopMeets) -> &'static str {
    match meets {
        StopMeets::BlankEnd => "the blank's end",
        StopMeets::CutEnd => "the other end",
        StopMeets::ShowCorner => "the other end's point on the show face",
        StopMeets::InnerCorner => "the other end's point on the inner face",
        StopMeets::CornerBetween => "the other end's point between the faces",
    }
}

/// How a body gets onto its cleat.
pub(super) const fn lift_manner(manner: LiftManner) -> &'static str {
    match manner {
        LiftManner::Level => "level",
        LiftManner::Tilted => "tilted on the way",
        LiftManner::NotAtAll => "not at all",
        LiftManner::MeetsInPlace => "not at all: it meets something in its place",
    }
}

pub(super) const fn cut(cut: EdgeCut) -> &'static str {
    match cut {
        EdgeCut::Rip => "rip",
        EdgeCut::CrossCut => "cross-cut",
    }
}

/// The face beyond an edge of a panel, by the edge's name.
pub(super) fn beyond(panel: &Panel, edge: &str) -> String {
    let named = panel.edges.iter().find(|one| one.id.to_string() == edge);
    named.map_or_else(|| edge.to_owned(), |one| beside(panel.id, one.neighbour))
}

/// A face as a panel meets it: of its own leg by its name, else the leg.
pub(super) fn beside(own: FaceId, other: FaceId) -> String {
    if own.leg == other.leg { face(FaceId::first_leg(other.kind)) } else { format!("leg {}", other.leg) }
}

/// Where a cut of a panel is: `to the top`, `to leg 2`.
pub(super) fn towards(panel: &Panel, edge: &str) -> String {
    let other = panel.edges.iter().find(|one| one.id.to_string() == edge && one.neighbour.leg != panel.id.leg);
    let article = if other.is_some() { "" } else { "the " };
    format!("to {article}{}", beyond(panel, edge))
}

/// What to take care of in a cut beyond what holds for all, in catchwords.
pub(super) fn cut_cautions(cut: &PanelCut) -> Vec<String> {
    let special = cut.cautions.iter().filter(|one| **one != CutCaution::GuardAndRivingKnife);
    special.map(|one| one.name().replace('_', " ")).collect()
}

pub(super) const fn finish(finish: FinishName) -> &'static str {
    match finish {
        FinishName::OilStain => "oil stain",
        FinishName::SpiritDye => "spirit dye",
        FinishName::WaterDye => "water dye",
        FinishName::WipingVarnish => "wiping varnish",
        FinishName::OilPolyurethane => "oil-based polyurethane varnish",
        FinishName::WaterbornePolyurethane => "water-borne polyurethane",
        FinishName::Shellac => "shellac",
        FinishName::NitrocelluloseLacquer => "nitrocellulose lacquer",
        FinishName::ConversionVarnish => "conversion varnish",
        FinishName::DryingOil => "drying oil",
        FinishName::HardwaxOil => "hard-wax oil",
        FinishName::ExteriorPaint => "exterior paint",
    }
}

pub(super) const fn method(method: ApplicationMethod) -> &'static str {
    match method {
        ApplicationMethod::Brush => "by brush",
        ApplicationMethod::Wipe => "wiped on",
        ApplicationMethod::Roll => "by roller",
        ApplicationMethod::AirAtomisedSpray => "by air-atomised spray",
        ApplicationMethod::AirlessSpray => "by airless spray",
        ApplicationMethod::HvlpSpray => "by HVLP spray",
        ApplicationMethod::ManualElectrostatic => "by electrostatic spray, by hand",
        ApplicationMethod::AutomaticElectrostatic => "by electrostatic spray, automatic",
        ApplicationMethod::RotatingHeadElectrostatic => "by electrostatic spray, rotating head",
        ApplicationMethod::DipOrFlow => "dipped or flow-coated",
    }
}

pub(super) const fn coated(coated: CoatedFaces) -> &'static str {
    match coated {
        CoatedFaces::Show => "on what is seen",
        CoatedFaces::ShowAndInner => "on show and inner faces",
    }
}

/// Name of a screw size.
pub(super) const fn screw(size: ScrewSize) -> &'static str {
    match size {
        ScrewSize::No6 => "No. 6",
        ScrewSize::No7 => "No. 7",
        ScrewSize::No8 => "No. 8",
        ScrewSize::No9 => "No. 9",
        ScrewSize::No10 => "No. 10",
        ScrewSize::No12 => "No. 12",
        ScrewSize::No14 => "No. 14",
        ScrewSize::No16 => "No. 16",
        ScrewSize::No18 => "No. 18",
        ScrewSize::No20 => "No. 20",
        ScrewSize::No24 => "No. 24",
        ScrewSize::Own => "screw",
    }
}
