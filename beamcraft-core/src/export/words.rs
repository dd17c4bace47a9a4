//! Words for the choices in a plan, the same in the drawing and in the report.

use crate::fasten::ScrewSize;
use crate::finding::Grade;
use crate::finish::{ApplicationMethod, FinishName};
use crate::movement::BoardCut;
use crate::plan::CoatedFaces;
use crate::saw::{BoardSetUp, RipSetUp};
use crate::shell::{EdgeCut, EdgeId, EdgeJoint, FaceId, FaceKind};
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

/// The face beyond an edge of a panel.
pub(super) fn beyond(panel: FaceId, edge: EdgeId) -> String {
    let (first, second) = edge.faces();
    face(if first == panel { second } else { first })
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

pub(super) const fn cut(cut: EdgeCut) -> &'static str {
    match cut {
        EdgeCut::Rip => "rip",
        EdgeCut::CrossCut => "cross-cut",
    }
}

pub(super) const fn board_set_up(set_up: BoardSetUp) -> &'static str {
    match set_up {
        BoardSetUp::Flat => "flat on the table",
        BoardSetUp::OtherFaceDown => "flat, turned over",
        BoardSetUp::OnEdgeAgainstTallFence => "on edge against a tall fence",
        BoardSetUp::JigWedge => "flat on a wedge",
    }
}

pub(super) const fn rip_set_up(set_up: RipSetUp) -> &'static str {
    match set_up {
        RipSetUp::ShowFaceUpBladeAway => "show face up, blade leaning away from the fence",
        RipSetUp::ShowFaceDownBladeTowards => "show face down, blade leaning towards the fence",
        RipSetUp::ShowFaceUpBladeTowards => "show face up, blade leaning towards the fence",
        RipSetUp::ShowFaceDownBladeAway => "show face down, blade leaning away from the fence",
    }
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
