//! The way of a load from the wall half into the body: seat and lip, the glue of the beam half, the beam half itself, and the frame
//! piece that takes the tipping to the front.

use super::body::Body;
use super::body_strength::against_clear_wood;
use super::result::{CleatPlan, FramePlan, LoadCase};
use super::strength::as_bound;
use super::within;
use crate::cite::{Clause, Source};
use crate::error::Result;
use crate::hang::CleatHalvesInput;
use crate::shell::FaceKind;
use crate::statics::{CleatLip, CleatLipInput, cleat_lip};
use crate::verdict::{Outcome, Verdict};

/// Strength in rolling shear over shear along the grain, about a third; recalled from the rules for cross-laminated timber.
const ROLLING: f64 = 1.0 / 3.0;

/// Tension across the grain over shear along it, a third: what the NDS gives curved glued laminated timber (5.2.8, recalled).
const ACROSS: f64 = 1.0 / 3.0;

/// Adds every check between wall half and body.
pub(super) fn cleat_checks(
    body: &Body<'_>,
    plan: &CleatPlan,
    strip: &CleatHalvesInput,
    frame: Option<&FramePlan>,
    checks: &mut Vec<Verdict>,
) -> Result<()> {
    // A load is taken over a stretch of strip as long as two strip widths, at the most loaded stud.
    let stretch_mm = (2.0 * body.checked.spec.cleat.strip_width_mm).min(plan.wall_half_length_mm);
    let lip = lip(plan, strip, stretch_mm)?;
    if let Some(lip) = &lip {
        lip_checks(body, lip, checks);
    }
    let pulls_n = plan.load_cases.iter().filter_map(stud_pull_n);
    let stress_mpa = pulls_n.reduce(f64::max).map(|pull_n| pull_n / (strip.thickness_mm * stretch_mm));
    checks.push(beam_half_to_top(body, stress_mpa));
    let worst_n = plan.load_cases.iter().filter_map(|case| case.worst_stud_n).reduce(f64::max);
    if let Some(worst_n) = worst_n {
        to_the_front(body, plan, strip, frame, worst_n, checks);
    }
    Ok(())
}

/// The largest of each stress of the lip over all cases, at the most loaded stud.
fn lip(plan: &CleatPlan, strip: &CleatHalvesInput, stretch_mm: f64) -> Result<Option<CleatLip>> {
    let mut worst: Option<CleatLip> = None;
    for case in &plan.load_cases {
        let (Some(vertical_n), Some(horizontal_n)) = (case.worst_stud_n, stud_pull_n(case)) else { continue };
        let lip = cleat_lip(&CleatLipInput {
            thickness_mm: strip.thickness_mm,
            bevel_deg: strip.bevel_deg,
            blunt_mm: strip.blunt_mm,
            vertical_n,
            horizontal_n,
            stretch_mm: stretch_mm.max(1.0),
        })
        .map_err(|fault| within(fault, "cleat"))?;
        worst = Some(worst.map_or(lip, |known| CleatLip {
            greatest_bearing_mpa: known.greatest_bearing_mpa.max(lip.greatest_bearing_mpa),
            greatest_tension_mpa: known.greatest_tension_mpa.max(lip.greatest_tension_mpa),
            greatest_shear_mpa: known.greatest_shear_mpa.max(lip.greatest_shear_mpa),
            ..lip
        }));
    }
    Ok(worst)
}

/// Pull at the most loaded stud in one case, N.
fn stud_pull_n(case: &LoadCase) -> Option<f64> {
    let stud_n = case.worst_stud_n?;
    Some(if case.load_n > 0.0 { case.pull_n * stud_n / case.load_n } else { 0.0 })
}

fn lip_checks(body: &Body<'_>, lip: &CleatLip, checks: &mut Vec<Verdict>) {
    let wood = &body.checked.strip;
    let clause = Clause::new(Source::Statics, "lip of a cleat half");
    let remark = "At the most loaded stud, over a stretch of two strip widths, a choice, with the pressure rising to the tip of the \
                  lip as when the body leans out. Compression across the grain leaves a dent, not a break; one fifth of the \
                  handbook's average is a choice.";
    let name = "bearing of the halves on each other";
    checks.push(against_clear_wood(name, "cleat lip", lip.greatest_bearing_mpa, wood.across_mpa, clause, remark));
    let remark = "As the bearing. The lip bends like a bracket, which pulls the wood apart across its grain; a third of the shear \
                  strength stands for that (recalled), one fifth of it is a choice.";
    let name = "bending of the lip across the grain";
    let average = wood.shear_mpa.map(|shear| ACROSS * shear);
    checks.push(against_clear_wood(name, "cleat lip", lip.greatest_tension_mpa, average, clause, remark));
    let remark = "As the bearing. Across the grain wood shears by rolling, at about a third of its strength along it (recalled); \
                  one fifth of that is a choice.";
    let name = "shear of the lip";
    checks.push(against_clear_wood(name, "cleat lip", lip.greatest_shear_mpa, rolling(wood.shear_mpa), clause, remark));
}

fn rolling(shear_mpa: Option<f64>) -> Option<f64> {
    shear_mpa.map(|shear| ROLLING * shear)
}

/// What holds the beam half: a glue line under the top, where it lies against it.
fn beam_half_to_top(body: &Body<'_>, stress_mpa: Option<f64>) -> Verdict {
    let bears = body.panel(FaceKind::Top).is_some() && body.checked.spec.cleat.below_top_mm == 0.0;
    let Some(demand) = stress_mpa.filter(|_| bears) else {
        let clause = Clause::new(Source::Nds2018, "12.2.2");
        let remark =
            "Long-grain glue has no allowable in the NDS, and screws into end grain count for nothing in withdrawal.";
        return Verdict::without_answer("beam half to the body", "beam half", Outcome::NotCovered, clause, remark);
    };
    let average = match (body.checked.strip.shear_mpa, body.checked.panels.shear_mpa) {
        (Some(a), Some(b)) => Some(a.min(b)),
        _ => None,
    };
    let remark = "The beam half bears upwards against the top and is glued to it along the grain: the glue line takes the pull \
                  only. A well-made glue line is as strong as the wood; one fifth of its rolling shear is a choice. The NDS has \
                  no allowable for such a line, and screws into end grain count for nothing in withdrawal.";
    let clause = Clause::new(Source::Statics, "shear of a glue line");
    let name = "glue line of the beam half under the top";
    against_clear_wood(name, "beam half", demand, rolling(average), clause, remark)
}

/// From the seat to the front board: the beam half carries the most loaded stud to the nearest frame pieces, and one of them the
/// tipping of that load to the front, by its glue under the top.
fn to_the_front(
    body: &Body<'_>,
    plan: &CleatPlan,
    strip: &CleatHalvesInput,
    frame: Option<&FramePlan>,
    stud_n: f64,
    checks: &mut Vec<Verdict>,
) {
    let clause = Clause::new(Source::Statics, "tipping through a frame piece");
    let name = "tipping from the cleat to the front, through one frame piece";
    let (Some(frame), Some(front_mm)) = (frame, body.thickness_mm(FaceKind::Front)) else {
        let remark = "Without frame pieces only the top's own strength across its grain and the mitres take the tipping to the \
                      front; no allowable for that was found.";
        checks.push(Verdict::without_answer(name, "frame", Outcome::NotCovered, clause, remark));
        return;
    };
    let arm_mm = (body.checked.leg.depth_mm - 0.5 * front_mm - 0.5 * strip.thickness_mm).max(0.0);
    let length_mm = frame.piece.length_mm;
    let demand = 6.0 * stud_n * arm_mm / (frame.thickness_mm * length_mm * length_mm);
    let average = body.checked.panels.shear_mpa.map(|shear| ACROSS * shear);
    let remark = "An upper bound: one piece takes the whole load of the most loaded stud, without the ends, the mitres and its \
                  glue at the front; beyond it there is no answer. Its glue line under the top is pulled apart across the \
                  grain at the back; a third of the shear strength stands for that (recalled), one fifth of it is a choice.";
    checks.push(as_bound(against_clear_wood(name, "frame", demand, average, clause, remark)));
    let ends = [0.0, body.checked.leg.length_mm];
    let held: Vec<f64> = frame.centres_mm.iter().copied().chain(ends).collect();
    let gap_mm = widest_gap(held);
    let height_mm = plan.halves.short_face_mm;
    let demand = 6.0 * (stud_n * gap_mm / 4.0) / (strip.thickness_mm * height_mm * height_mm);
    let remark = "An upper bound: the load of the most loaded stud in the middle of the widest gap between frame pieces and ends, \
                  on the beam half alone without the top it is glued to; beyond it there is no answer. Ungraded wood: one fifth \
                  of the handbook's average of clear wood is a choice.";
    let clause = Clause::new(Source::Nds2018, "3.3");
    let name = "bending of the beam half between frame pieces";
    checks.push(as_bound(against_clear_wood(
        name,
        "beam half",
        demand,
        body.checked.strip.rupture_mpa,
        clause,
        remark,
    )));
}

/// Widest gap between neighbours, mm.
fn widest_gap(mut places: Vec<f64>) -> f64 {
    places.sort_by(f64::total_cmp);
    places.iter().zip(places.iter().skip(1)).map(|(a, b)| b - a).fold(0.0, f64::max)
}

#[cfg(test)]
#[cfg(feature = "json")]
#[path = "cleat_strength_tests.rs"]
mod tests;
