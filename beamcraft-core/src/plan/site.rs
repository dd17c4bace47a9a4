//! May it sit there, and can it be lifted there?

use super::body::Body;
use super::cleat::FittedCleat;
use super::result::MassPlan;
use super::spec::SiteSpec;
use super::within;
use crate::cite::{Clause, Source};
use crate::error::Result;
use crate::fasten::wood_screw;
use crate::finding::{Finding, FindingCode, Grade, Quantity};
use crate::lifting::{
    HandCoupling, LiftDuration, LiftLimit, LiftingForm, LiftingIndex, LiftingIndexInput, lifting_index,
};
use crate::setting::{Appliance, ApplianceKind, FireOpening};
use crate::site::{
    BodyClearance, BodyClearanceAnswer, BodyClearanceInput, SiteFit, SiteFitInput, WallHalfPlace, body_margins,
    site_fit,
};
use crate::verdict::{Basis, Factor, Outcome, Verdict};

/// The body on the wall as it is; hands the packing behind the wall half on to the cleat.
pub(super) fn fit(
    body: &Body<'_>,
    mut cleat: Option<&mut FittedCleat>,
    findings: &mut Vec<Finding>,
) -> Result<Option<SiteFit>> {
    let (spec, leg) = (body.checked.spec, body.checked.leg);
    let Some(site) = &spec.site else { return Ok(None) };
    let screws = &spec.cleat.screws;
    let wall_half = site.wall.as_ref().and_then(|wall| {
        let marks = cleat.as_ref()?.plan.marks.as_ref()?;
        Some(WallHalfPlace {
            wall: wall.clone(),
            left_mm: marks.left_mm,
            right_mm: marks.right_mm,
            screw_line_mm: marks.screw_line_mm,
            thickness_mm: spec.cleat.thickness_mm,
            screw_length_mm: screws.length_mm,
            wanted_reach_mm: wood_screw(screws.size).map_or(0.0, |size| LEAST_REACH * size.nominal_diameter_mm),
        })
    });
    let fit = site_fit(&SiteFitInput {
        place: site.place,
        body_length_mm: leg.length_mm,
        body_height_mm: leg.height_mm,
        body_depth_mm: leg.depth_mm,
        left_end_deg: leg.left_end.corner_deg,
        right_end_deg: leg.right_end.corner_deg,
        survey: site.survey.clone(),
        wall_half,
        things: site.obstructions.clone(),
        opening: site.opening,
    })
    .map_err(|error| within(error, "site"))?;
    if let Some(cleat) = cleat.as_mut() {
        cleat.plan.greatest_packing_mm = fit.packing.iter().map(|stud| stud.packing_mm).fold(0.0, f64::max);
    }
    findings.extend(fit.findings.iter().cloned());
    Ok(Some(fit))
}

/// Least reach of a wood screw, in diameters, that counts at all (NDS 12.1.5).
const LEAST_REACH: f64 = 6.0;

/// Clearance to heat and the lift, for a body whose place is known.
pub(super) fn look(
    body: &Body<'_>,
    mass: &MassPlan,
    checks: &mut Vec<Verdict>,
    findings: &mut Vec<Finding>,
) -> Result<(Option<BodyClearance>, LiftReach)> {
    let Some(site) = &body.checked.spec.site else {
        checks.push(heat_unknown("The place on the wall was not given."));
        return Ok((None, LiftReach::Within));
    };
    let clearance = match (&site.opening, &site.appliance) {
        (_, Some(appliance)) if appliance.kind == ApplianceKind::None => None,
        (Some(opening), Some(appliance)) => Some(heat(body, site, opening, appliance)?),
        _ => {
            checks.push(heat_unknown("The opening or the appliance was not given."));
            None
        }
    };
    if let Some(clearance) = &clearance {
        checks.extend(heat_checks(site, clearance));
        findings.extend(clearance.findings.iter().cloned());
    }
    let reach = lift(body, site, mass, checks, findings)?;
    Ok((clearance, reach))
}

/// Whether the lift lies within the reach and height of the lifting method.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum LiftReach {
    /// It does, or nobody knows where the body hangs.
    Within,
    /// It does not.
    Outside,
}

/// The rule that sends to local law and to the listing.
const WHO_DECIDES: Clause = Clause::new(Source::Irc, "R1001.11, M1306.1");

fn heat_unknown(why: &str) -> Verdict {
    Verdict::without_answer("clearance to heat", OUTLINE, Outcome::NotDetermined, WHO_DECIDES, why)
}

/// Subject of the checks on heat.
const OUTLINE: &str = "body outline";

/// Every panel of the body against the rules and the chart of the appliance.
fn heat(body: &Body<'_>, site: &SiteSpec, opening: &FireOpening, appliance: &Appliance) -> Result<BodyClearance> {
    body_margins(&BodyClearanceInput {
        parts: body.outlines(site.place),
        opening: *opening,
        appliance: appliance.clone(),
        chart_datum_above_floor_mm: site.chart_datum_above_floor_mm,
        rules: site.clearance_rules.clone(),
        own_rules: site.own_clearance_rules.clone(),
    })
    .map_err(|error| within(error, "site"))
}

fn heat_checks(site: &SiteSpec, clearance: &BodyClearance) -> Vec<Verdict> {
    let published = site.clearance_rules.iter().filter_map(|rule| rule.row()).map(|row| (row.clause, Basis::Clause));
    let given = site.own_clearance_rules.iter().map(|_| (Clause::new(Source::Given, ""), Basis::Chosen));
    let rules = published.chain(given).zip(&clearance.answers);
    let mut checks: Vec<_> = rules.map(|((clause, basis), answer)| heat_check(answer, clause, basis)).collect();
    if let Some(listing) = &clearance.listing {
        let clause = Clause::new(Source::Irc, "M1306.1");
        let name = "clearance by the appliance's own listing";
        checks.push(Verdict::without_answer(name, OUTLINE, listing.outcome, clause, listing.remark.clone()));
    }
    if checks.is_empty() {
        checks.push(heat_unknown("No rule was named; ask which one holds where the body will hang."));
    }
    checks
}

fn heat_check(answer: &BodyClearanceAnswer, clause: Clause, basis: Basis) -> Verdict {
    let (Some(required_mm), Some(actual_mm), Some(point)) = (answer.required_mm, answer.actual_mm, &answer.point)
    else {
        let name = "distance from the opening";
        return Verdict::without_answer(name, OUTLINE, answer.outcome, clause, answer.remark.clone());
    };
    let name = "least distance from the opening, against the distance there is";
    let verdict = Verdict::compare(name, OUTLINE, required_mm, actual_mm, "mm", basis, clause);
    // The comparison of the rule allows for the rounding of inches.
    let verdict = Verdict { outcome: answer.outcome, ..verdict };
    verdict.with_mode(format!("nearest at the {}", point.part)).with_remark(answer.remark.clone())
}

/// Hands reach at least this far out when it cannot be measured: 20 cm and half the width of the load, 25 cm below 25 cm
/// above the floor (NIOSH 94-110, p. 8); and from before a raised hearth at least to the middle of the body.
fn reach_mm(hand_height_mm: f64, depth_mm: f64, hearth_out_mm: f64) -> f64 {
    let out = if hand_height_mm >= 250.0 { 200.0 } else { 250.0 };
    (out + 0.5 * depth_mm).max(hearth_out_mm - 0.5 * depth_mm)
}

/// The lift from the floor to the cleat, by one person and by two.
fn lift(
    body: &Body<'_>,
    site: &SiteSpec,
    mass: &MassPlan,
    checks: &mut Vec<Verdict>,
    findings: &mut Vec<Finding>,
) -> Result<LiftReach> {
    let mut reach = LiftReach::Within;
    let hand_height_mm = site.place.bottom_above_floor_mm;
    let clause = Clause::new(Source::Niosh94110, "p. 7 to 18");
    for (persons, name) in [(1, "lift onto the cleat by one person"), (2, "lift onto the cleat by two people")] {
        let input = LiftingIndexInput {
            mass_kg: mass.lifted_kg,
            persons,
            reach_mm: reach_mm(hand_height_mm, body.checked.leg.depth_mm, site.hearth_out_mm),
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
            let why = "Outside the method: the lift lies beyond its reach or height; use props or a hoist.";
            checks.push(Verdict::without_answer(name, "body", Outcome::NotCovered, clause, why));
            reach = LiftReach::Outside;
            continue;
        };
        let verdict = Verdict::compare(name, "body", lift.share_kg, lift.recommended_kg, "kg", Basis::Clause, clause);
        if persons == 1 && verdict.outcome == Outcome::NotMet {
            findings.push(too_heavy(lift.share_kg, lift.recommended_kg));
            continue;
        }
        let remark = "At the cleat, hands under the body, lifted from the floor, no handles; reach by the width of the body. \
                      Ladders and steps are outside the method.";
        checks.push(verdict.with_factors(multipliers(&lift)).with_remark(remark));
    }
    Ok(reach)
}

/// Every multiplier of the lifting equation.
fn multipliers(lift: &LiftingIndex) -> Vec<Factor> {
    let factor = |name, value, part| Factor { name, value, clause: Clause::new(Source::Niosh94110, part) };
    vec![
        factor("LC load constant, kg", lift.load_constant_kg, "p. 7"),
        factor("HM reach", lift.horizontal_multiplier, "Table 1"),
        factor("VM height of the hands", lift.vertical_multiplier, "Table 2"),
        factor("DM travel", lift.distance_multiplier, "Table 3"),
        factor("AM turn", lift.asymmetric_multiplier, "Table 4"),
        factor("FM frequency", lift.frequency_multiplier, "Table 5"),
        factor("CM hold", lift.coupling_multiplier, "Table 7"),
    ]
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
