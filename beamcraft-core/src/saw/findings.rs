//! What a cut that the saw does not reach has to say.

use super::cut::{CutKind, CutSetUp, CutWay, PanelCut, SawLimit};
use crate::finding::{Finding, FindingCode, Grade, Quantity};

/// The finding on a cut that the described saw does not make with the board flat on the table.
pub fn beyond_saw(cut: &PanelCut, subject: &str) -> Option<Finding> {
    if cut.kind == CutKind::Joint || cut.passed.is_empty() {
        return None;
    }
    let mut numbers = Vec::new();
    for passed in &cut.passed {
        let (name, unit) = words(passed.limit);
        numbers.push(Quantity::new(name, passed.needed, unit));
        numbers.push(Quantity::new("the saw has", passed.available, unit));
    }
    let names: Vec<&str> = cut.passed.iter().map(|passed| words(passed.limit).0).collect();
    let ways: Vec<String> = cut.set_up.iter().chain(&cut.alternatives).map(described).collect();
    let tilt_only = cut.passed.iter().all(|passed| passed.limit == SawLimit::Tilt);
    Some(Finding {
        grade: if ways.is_empty() { Grade::Stop } else { Grade::Caution },
        code: if tilt_only { FindingCode::BeyondTilt } else { FindingCode::BeyondSaw },
        subject: subject.to_owned(),
        message: format!("Flat on the table the saw does not make this cut: {}.", names.join(", ")),
        numbers,
        cure: if ways.is_empty() {
            "Another joint at this edge, a thinner board, or another saw.".to_owned()
        } else {
            format!("{}.", ways.join("; or "))
        },
        clause: None,
    })
}

const fn words(limit: SawLimit) -> (&'static str, &'static str) {
    match limit {
        SawLimit::Tilt => ("tilt", "deg"),
        SawLimit::CutHeight => ("cut height", "mm"),
        SawLimit::RipCapacity => ("distance of the fence", "mm"),
        SawLimit::CrosscutCapacity => ("length of the cut on the gauge", "mm"),
        SawLimit::GaugeAngle => ("gauge angle", "deg"),
        SawLimit::FenceHeight => ("height of the fence", "mm"),
    }
}

fn described(way: &CutSetUp) -> String {
    let tilt = way.blade_tilt_deg;
    match way.way {
        CutWay::FlatOnTable => format!("Flat, blade at {tilt:.1} deg"),
        CutWay::OnEdge => format!(
            "On edge, cut square to the long point first, blade at {tilt:.1} deg leaning away from a fence at least {:.0} mm high",
            way.needs_fence_mm
        ),
        CutWay::OnWedge => format!("On a wedge of {:.1} deg, blade at {tilt:.1} deg", way.wedge_deg),
        CutWay::OversizeThenPlane => {
            format!(
                "Flat at {tilt:.1} deg with the long point at its size, then plane {:.1} mm off at the short point",
                way.planing_mm
            )
        }
        CutWay::TrackSaw if way.has_height_mm.is_some() => format!("The track saw at {tilt:.1} deg"),
        CutWay::TrackSaw => {
            format!("A track saw that reaches {:.0} mm deep at {tilt:.1} deg", way.needs_height_mm)
        }
    }
}
