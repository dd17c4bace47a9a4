//! May it sit there, and can it be lifted there?

use super::body::Body;
use super::result::MassPlan;
use super::spec::SiteSpec;
use super::within;
use crate::cite::{Clause, Source};
use crate::error::Result;
use crate::finding::{Finding, FindingCode, Grade, Quantity};
use crate::lifting::{HandCoupling, LiftDuration, LiftLimit, LiftingForm, LiftingIndexInput, lifting_index};
use crate::setting::{Appliance, ApplianceKind, FireOpening};
use crate::site::{MantelClearance, MantelClearanceInput, MantelRule, OpeningSide, mantel_clearance};
use crate::verdict::{Basis, Outcome, Verdict};

/// Clearance to heat and the lift, for a body whose place is known.
pub(super) fn look(
    body: &Body<'_>,
    mass: &MassPlan,
    checks: &mut Vec<Verdict>,
    findings: &mut Vec<Finding>,
) -> Result<()> {
    let Some(site) = &body.checked.spec.site else {
        checks.push(heat_unknown("The place on the wall was not given."));
        return Ok(());
    };
    match (&site.opening, &site.appliance) {
        (Some(opening), Some(appliance)) => heat(body, site, opening, appliance, checks, findings)?,
        (_, Some(appliance)) if appliance.kind == ApplianceKind::None => {}
        _ => checks.push(heat_unknown("The opening or the appliance was not given.")),
    }
    lift(body, site, mass, checks, findings)
}

fn heat_unknown(why: &str) -> Verdict {
    let clause = Clause::new(Source::Irc, "R1001.11, M1306.1");
    Verdict::without_answer("clearance to heat", "underside", Outcome::NotDetermined, clause, why)
}

/// The lower front edge against the rules and the chart of the appliance.
fn heat(
    body: &Body<'_>,
    site: &SiteSpec,
    opening: &FireOpening,
    appliance: &Appliance,
    checks: &mut Vec<Verdict>,
    findings: &mut Vec<Finding>,
) -> Result<()> {
    let (distance_from_opening_mm, side) = to_opening(body, site, opening);
    let clearance = mantel_clearance(&MantelClearanceInput {
        projection_mm: (body.checked.leg.depth_mm - opening.face_out_mm).max(0.0),
        distance_from_opening_mm,
        side,
        appliance: appliance.clone(),
        height_above_datum_mm: None,
        rules: vec![MantelRule::IrcSlope, MantelRule::Nfpa211Step, MantelRule::NbcStep],
    })
    .map_err(|error| within(error, "site"))?;
    checks.extend(heat_checks(&clearance, distance_from_opening_mm));
    findings.extend(clearance.findings);
    Ok(())
}

/// Shortest distance of the lower front edge from the opening in the plane of its face, and on which side it lies.
fn to_opening(body: &Body<'_>, site: &SiteSpec, opening: &FireOpening) -> (f64, OpeningSide) {
    let (left, right) = (site.place.left_end_mm, site.place.left_end_mm + body.checked.leg.length_mm);
    let beside = (opening.left_mm - right).max(left - (opening.left_mm + opening.width_mm)).max(0.0);
    let above = site.place.bottom_above_floor_mm - opening.top_above_floor_mm;
    let side = if above >= 0.0 { OpeningSide::Above } else { OpeningSide::Beside };
    let above = above.max(0.0);
    ((above * above + beside * beside).sqrt(), side)
}

fn heat_checks(clearance: &MantelClearance, distance_mm: f64) -> Vec<Verdict> {
    let subject = "lower front edge";
    let mut checks: Vec<_> = clearance
        .answers
        .iter()
        .map(|answer| match answer.least_distance_mm {
            Some(least_mm) => {
                let name = "least distance from the opening, against the distance there is";
                let verdict =
                    Verdict::compare(name, subject, least_mm, distance_mm, "mm", Basis::Clause, answer.clause);
                // The comparison of the rule allows for the rounding of inches.
                Verdict { outcome: answer.outcome, ..verdict }.with_remark(answer.remark.clone())
            }
            None => {
                let name = "distance from the opening";
                Verdict::without_answer(name, subject, answer.outcome, answer.clause, answer.remark.clone())
            }
        })
        .collect();
    if let Some(listing) = &clearance.listing {
        let clause = Clause::new(Source::Irc, "M1306.1");
        let name = "clearance by the appliance's own listing";
        checks.push(Verdict::without_answer(name, subject, listing.outcome, clause, listing.remark.clone()));
    }
    checks
}

/// Hands reach at least this far out when it cannot be measured: 20 cm and half the width of the load, 25 cm below 25 cm
/// above the floor (NIOSH 94-110, p. 8).
fn reach_mm(hand_height_mm: f64, depth_mm: f64) -> f64 {
    let out = if hand_height_mm >= 250.0 { 200.0 } else { 250.0 };
    out + 0.5 * depth_mm
}

/// The lift from the floor to the cleat, by one person and by two.
fn lift(
    body: &Body<'_>,
    site: &SiteSpec,
    mass: &MassPlan,
    checks: &mut Vec<Verdict>,
    findings: &mut Vec<Finding>,
) -> Result<()> {
    let hand_height_mm = site.place.bottom_above_floor_mm;
    let clause = Clause::new(Source::Niosh94110, "p. 7 to 18");
    for (persons, name) in [(1, "lift onto the cleat by one person"), (2, "lift onto the cleat by two people")] {
        let input = LiftingIndexInput {
            mass_kg: mass.lifted_kg,
            persons,
            reach_mm: reach_mm(hand_height_mm, body.checked.leg.depth_mm),
            hand_height_mm,
            travel_mm: hand_height_mm,
            turn_deg: 0.0,
            lifts_per_min: 0.2,
            duration: LiftDuration::Short,
            coupling: HandCoupling::Poor,
            origin_height_mm: None,
            form: LiftingForm::Metric,
        };
        // A place beyond what the table of lifts allows at all is outside the method too.
        let Some(lift) = lifting_index(&input).ok().filter(|lift| lift.limit == LiftLimit::Within) else {
            let why = "The lift lies beyond the reach or height of the method; use props or a hoist.";
            checks.push(Verdict::without_answer(name, "body", Outcome::NotCovered, clause, why));
            continue;
        };
        let verdict = Verdict::compare(name, "body", lift.share_kg, lift.recommended_kg, "kg", Basis::Clause, clause);
        if persons == 1 && verdict.outcome == Outcome::NotMet {
            findings.push(too_heavy(lift.share_kg, lift.recommended_kg));
            continue;
        }
        let remark = "At the cleat, hands under the body, lifted from the floor, no handles; reach by the width of the body. \
                      Ladders and steps are outside the method.";
        checks.push(verdict.with_remark(remark));
    }
    Ok(())
}

fn too_heavy(mass_kg: f64, recommended_kg: f64) -> Finding {
    Finding {
        grade: Grade::Note,
        code: FindingCode::HeavyLift,
        subject: "body".to_owned(),
        message: "Too heavy for one person to lift onto the cleat.".to_owned(),
        numbers: vec![
            Quantity::new("mass", mass_kg, "kg"),
            Quantity::new("recommended limit for one person", recommended_kg, "kg"),
        ],
        cure: "Hang it with a second person, or on props.".to_owned(),
        clause: Some(Clause::new(Source::Niosh94110, "p. 7")),
    }
}
