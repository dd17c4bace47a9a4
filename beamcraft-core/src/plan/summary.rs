//! What a plan says about itself as a whole.

use super::result::FinishPlan;
use super::result_seams::{MovementPlan, TolerancePlan};
use super::spec::BeamSpec;
use crate::finding::{Caution, CautionText, Finding, FindingCode, Grade, Quantity};
use crate::verdict::{Outcome, Verdict};

/// What no step of this version looks at.
const NOT_CHECKED: &[&str] = &[
    "glue lines other than those of top, front and beam half, and the ageing of all of them near heat",
    "the give of screws, lining and lock, and the strength of the lock",
    "how hard anybody will pull at the body or knock it from below; the plan says what would unhook it",
    "heat at the beam, the wall's own strength, hidden cables and pipes, workmanship",
];

/// What nothing in the plan looks at, with what was not given.
pub(super) fn not_checked(movement: Option<&MovementPlan>, tolerance: Option<&TolerancePlan>) -> Vec<&'static str> {
    let mut list = NOT_CHECKED.to_vec();
    if movement.is_none() {
        list.push("seasonal movement, opening of the mitres and the glue in warmth: give the seasons");
    }
    if tolerance.is_none() {
        list.push("visible gaps from the errors of the saw: give the accuracy");
    }
    list
}

/// Standing cautions of everything the plan holds.
pub(super) fn cautions(
    spec: &BeamSpec,
    finish: Option<&FinishPlan>,
    movement: Option<&MovementPlan>,
    of_cuts: Vec<CautionText>,
) -> Vec<CautionText> {
    let mut cautions = vec![
        CautionText::from(Caution::Structure),
        Caution::Fire.into(),
        Caution::Services.into(),
        Caution::Lifting.into(),
        Caution::Saw.into(),
        Caution::Dust.into(),
    ];
    if movement.is_some() {
        cautions.push(Caution::HeldMovement.into());
    }
    if let Some(finish) = finish {
        cautions.extend(finish.quantity.cautions.iter().cloned());
    }
    if spec.finish.is_some() && !cautions.contains(&Caution::Solvents.into()) {
        cautions.push(Caution::Solvents.into());
    }
    let new = of_cuts.into_iter().filter(|caution| !cautions.contains(caution)).collect::<Vec<_>>();
    cautions.extend(new);
    cautions
}

/// One finding for each part with checks that are not met and no finding of their own.
pub(super) fn failed_checks(checks: &[Verdict], findings: &mut Vec<Finding>) {
    // Seat and heat have their own findings, with what would cure them.
    let has_own = |check: &&Verdict| matches!(check.subject.as_str(), "cleat seat" | "body outline");
    let failed: Vec<_> = checks.iter().filter(|c| c.outcome == Outcome::NotMet && !has_own(c)).collect();
    let mut subjects: Vec<&str> = failed.iter().map(|check| check.subject.as_str()).collect();
    subjects.dedup();
    for subject in subjects {
        let of_part: Vec<_> = failed.iter().filter(|check| check.subject == subject).collect();
        let names: Vec<_> = of_part.iter().map(|check| check.name.as_str()).collect();
        let worst = of_part.iter().filter_map(|check| check.utilisation).reduce(f64::max);
        findings.push(Finding {
            grade: Grade::Stop,
            code: FindingCode::CheckFails,
            subject: subject.to_owned(),
            message: format!("Not met: {}.", names.join("; ")),
            numbers: worst.map(|value| Quantity::new("largest utilisation", value, "")).into_iter().collect(),
            cure: "A thicker screw, which also has the larger head; a longer one where it is the thread that gives in; a higher row \
                   of screws; one more screw or stud; less load or a lighter body."
                .to_owned(),
            clause: of_part.first().map(|check| check.clause),
        });
    }
}
