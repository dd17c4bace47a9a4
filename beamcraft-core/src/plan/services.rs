//! Cables, a driver in the hollow, a television above: against what their makers allow.

use super::body::Body;
use super::result::FramePlan;
use super::spec_fixing::{DriverPlace, ServicesSpec, TelevisionPlace};
use crate::cite::{Clause, Source};
use crate::finding::{Finding, FindingCode, Grade, Quantity};
use crate::verdict::{Basis, Outcome, Verdict};

/// Adds the checks of the services that the spec names.
pub(super) fn look(body: &Body<'_>, frame: Option<&FramePlan>, checks: &mut Vec<Verdict>, findings: &mut Vec<Finding>) {
    let Some(services) = body.checked.spec.site.as_ref().and_then(|site| site.services) else { return };
    if services.driver == DriverPlace::InHollow {
        let name = "warmth around the driver in the hollow";
        checks.push(warmth(name, services.hollow_temperature_c, services.driver_limit_c));
    }
    if services.television == TelevisionPlace::Above {
        let name = "warmth at the television above";
        checks.push(warmth(name, services.television_temperature_c, services.television_limit_c));
    }
    findings.extend(chase(&services, frame));
}

/// A measured temperature against the maker's limit; what was not given is asked for.
fn warmth(name: &str, measured_c: Option<f64>, limit_c: Option<f64>) -> Verdict {
    let clause = Clause::new(Source::Given, "limit of its maker");
    match (measured_c, limit_c) {
        (Some(measured_c), Some(limit_c)) => {
            let verdict = Verdict::compare(name, "services", measured_c, limit_c, "°C", Basis::Chosen, clause);
            // A ratio of temperatures says nothing.
            let verdict = Verdict { utilisation: None, ..verdict };
            verdict.with_remark("As measured with the appliance at work; a season or another fire may be warmer.")
        }
        (_, None) => {
            let remark =
                "Its maker's limit is needed and was not given; a closed hollow over heat is warmer than the room.";
            Verdict::without_answer(name, "services", Outcome::NotDetermined, clause, remark)
        }
        (None, Some(_)) => {
            let remark = "Measure there, with the appliance at work for hours: no rule tells this temperature.";
            Verdict::without_answer(name, "services", Outcome::NotDetermined, clause, remark)
        }
    }
}

/// A chase that leaves too little of a frame piece.
fn chase(services: &ServicesSpec, frame: Option<&FramePlan>) -> Option<Finding> {
    let (chase_mm, piece) = (services.cable_chase_mm?, frame?.piece);
    (chase_mm > LARGEST_CHASE * piece.width_mm).then(|| Finding {
        grade: Grade::Caution,
        code: FindingCode::NotCovered,
        subject: "frame".to_owned(),
        message: "The chase for cables takes more than a third of the width of a frame piece, which no check here allows for."
            .to_owned(),
        numbers: vec![
            Quantity::new("chase", chase_mm, "mm"),
            Quantity::new("width of a frame piece", piece.width_mm, "mm"),
        ],
        cure: "A narrower chase at the front in the middle of the height, away from the glue under the top.".to_owned(),
        clause: None,
    })
}

/// Largest chase over the width of a piece; a choice, common practice for holes in small members.
const LARGEST_CHASE: f64 = 1.0 / 3.0;

#[cfg(test)]
#[cfg(feature = "json")]
mod tests {
    use super::*;
    use crate::plan::{BeamSpec, plan};

    fn with(services: ServicesSpec) -> crate::plan::Plan {
        let ash = include_str!("../../examples/specs/ash_shelf_beam.json");
        let mut spec: BeamSpec = crate::json::read(ash).expect("a spec");
        spec.site.as_mut().expect("a site").services = Some(services);
        plan(&spec).expect("allowed")
    }

    fn outcome(plan: &crate::plan::Plan) -> Vec<Outcome> {
        plan.checks.iter().filter(|check| check.subject == "services").map(|check| check.outcome).collect()
    }

    #[test]
    fn the_makers_limit_is_asked_for_and_then_compared() {
        let asked =
            ServicesSpec { driver: DriverPlace::InHollow, television: TelevisionPlace::Above, ..Default::default() };
        assert_eq!(outcome(&with(asked)), [Outcome::NotDetermined; 2]);
        let limits = ServicesSpec { driver_limit_c: Some(45.0), television_limit_c: Some(40.0), ..asked };
        assert_eq!(outcome(&with(limits)), [Outcome::NotDetermined; 2], "nobody measured");
        let measured =
            ServicesSpec { hollow_temperature_c: Some(48.0), television_temperature_c: Some(38.0), ..limits };
        let plan = with(measured);
        assert_eq!(outcome(&plan), [Outcome::NotMet, Outcome::Met]);
        assert!(plan.findings.iter().any(|one| one.subject == "services" && one.grade == Grade::Stop));
    }

    #[test]
    fn a_wide_chase_is_told_and_nothing_asked_is_nothing_said() {
        let wide = with(ServicesSpec { cable_chase_mm: Some(60.0), ..Default::default() });
        assert!(wide.findings.iter().any(|one| one.message.contains("chase")));
        let narrow = with(ServicesSpec { cable_chase_mm: Some(20.0), ..Default::default() });
        assert!(outcome(&narrow).is_empty() && narrow.findings.iter().all(|one| !one.message.contains("chase")));
    }
}
