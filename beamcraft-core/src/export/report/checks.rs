//! What was found, what was checked, and the cautions.

use super::super::text::{percent, significant};
use super::super::words;
use super::page::{Html, Page};
use crate::finding::{Finding, Grade, Quantity};
use crate::plan::{Plan, ReportLengths};
use crate::site::{BodyClearanceAnswer, ProjectionLimit};
use crate::verdict::{Outcome, Verdict};

/// Lengths below this are gaps and changes, which the marks of a tape cannot tell, mm.
const FINE_MM: f64 = 2.0;

/// A quantity in the unit it has; lengths as the spec asks.
pub(super) fn quantity(value: f64, unit: &str, lengths: ReportLengths) -> String {
    match unit {
        "mm" if value.abs() < FINE_MM => lengths.fine(value),
        "mm" => lengths.full(value),
        "deg" => format!("{}°", significant(value)),
        "" => significant(value),
        _ => format!("{} {unit}", significant(value)),
    }
}

/// How many findings and checks of each kind, in one line.
pub(super) fn summary(plan: &Plan) -> String {
    let graded = |grade: Grade| plan.findings.iter().filter(|finding| finding.grade == grade).count();
    let said = |outcome: Outcome| plan.checks.iter().filter(|check| check.outcome == outcome).count();
    let findings = [Grade::Stop, Grade::Caution, Grade::Note].map(|g| format!("{}: {}", words::grade(g), graded(g)));
    let outcomes = [Outcome::NotMet, Outcome::NotDetermined, Outcome::NotCovered, Outcome::Met];
    let checks = outcomes.map(|outcome| format!("{}: {}", words::outcome(outcome), said(outcome)));
    format!("Findings – {}. Checks – {}.", findings.join(", "), checks.join(", "))
}

/// Findings, the worst first.
pub(super) fn findings(page: &mut Page, plan: &Plan) {
    page.heading("What to know before the first cut");
    if plan.findings.is_empty() {
        page.paragraph("Nothing was found that stands in the way. What was not checked is listed at the end.");
    }
    let mut sorted: Vec<&Finding> = plan.findings.iter().collect();
    sorted.sort_by_key(|finding| core::cmp::Reverse(finding.grade));
    for finding in sorted {
        let grade = Html::marked("grade", words::grade(finding.grade));
        let subject = Html::joined(&[grade, " · ".into(), Html::name(&finding.subject)]);
        let numbers = |one: &Quantity| format!("{}: {}", one.name, quantity(one.value, one.unit, plan.spec.lengths));
        let numbers: Vec<String> = finding.numbers.iter().map(numbers).collect();
        let cure = if finding.cure.is_empty() { String::new() } else { format!("What helps: {}", finding.cure) };
        let clause = finding.clause.map_or_else(String::new, |clause| format!("Rule: {clause}"));
        let paragraphs = [
            subject,
            finding.message.as_str().into(),
            numbers.join("; ").into(),
            cure.into(),
            Html::marked("soft", &clause),
        ];
        let count = if clause.is_empty() { 4 } else { 5 };
        page.card(words::grade(finding.grade), paragraphs.get(..count).unwrap_or(&paragraphs));
    }
}

/// The standing cautions.
pub(super) fn cautions(page: &mut Page, plan: &Plan) {
    page.heading("Cautions");
    for caution in &plan.cautions {
        let about = Html::marked("grade", caution.about);
        page.card("caution", &[Html::joined(&[about, ". ".into(), caution.text.into()])]);
    }
}

/// Clearance to the opening by each rule, with what it allows the other way round.
pub(super) fn clearance(page: &mut Page, plan: &Plan) {
    let Some(clearance) = &plan.clearance else { return };
    page.heading("Clearance to the opening");
    let lengths = plan.spec.lengths;
    page.paragraph(format!(
        "Stands out {} from the face around the opening, lowest point {} above its top. Together: {}.",
        lengths.full(clearance.depth_mm),
        lengths.full(clearance.lowest_mm),
        words::outcome(clearance.outcome)
    ));
    if let Some(listing) = &clearance.listing {
        page.paragraph(format!("Appliance's chart – {}: {}.", words::outcome(listing.outcome), listing.remark));
    }
    if clearance.answers.is_empty() {
        return;
    }
    let number = |value: Option<f64>| Html::from(value.map_or_else(String::new, |value_mm| lengths.full(value_mm)));
    let heads = ["rule", "required", "actual", "greatest depth here", "least height for this depth", "outcome"];
    let row = |answer: &BodyClearanceAnswer| {
        let origin = format!("{}, {} ({})", answer.publication, answer.section, answer.jurisdiction);
        let depth = match answer.depth_limit {
            Some(ProjectionLimit::NoneByThisRule) => "no limit by this rule".into(),
            Some(ProjectionLimit::Nothing) => "none at this height".into(),
            Some(ProjectionLimit::UpTo) | None => number(answer.greatest_depth_mm),
        };
        [
            Html::lines(&[Html::name(&answer.rule), Html::name(&origin), Html::name(&answer.edition)]),
            number(answer.required_mm),
            number(answer.actual_mm),
            depth,
            number(answer.least_height_mm),
            words::outcome(answer.outcome).into(),
        ]
    };
    page.table("", heads, clearance.answers.iter().map(row));
}

/// Every check.
pub(super) fn checks(page: &mut Page, plan: &Plan) {
    page.heading("Checks");
    page.remark(
        "Demand over capacity; 100 % is the limit. \"not covered\": no published rule was found; \"not determined\": \
         something that the rule needs was not given. Neither is a pass.",
    );
    let lengths = plan.spec.lengths;
    let number = |value: Option<f64>, unit: &str| {
        Html::from(value.map_or_else(String::new, |value| quantity(value, unit, lengths)))
    };
    let heads = ["check", "part", "demand", "capacity", "used", "outcome", "rule", "working"];
    let row = |check: &Verdict| {
        [
            Html::from(check.name.as_str()),
            Html::name(&check.subject),
            number(check.demand, check.unit),
            number(check.capacity, check.unit),
            check.utilisation.map_or_else(String::new, percent).into(),
            Html::marked(class_of(check.outcome), words::outcome(check.outcome)),
            Html::lines(&[check.clause.to_string().into(), words::basis(check.basis).into()]),
            working(check),
        ]
    };
    page.table("", heads, plan.checks.iter().map(row));
}

/// Governing mode, remark and factors.
fn working(check: &Verdict) -> Html {
    let mode = if check.mode.is_empty() { String::new() } else { format!("governs: {}", check.mode) };
    let factor = |one: &crate::verdict::Factor| format!("{} = {} ({})", one.name, significant(one.value), one.clause);
    let factors: Vec<String> = check.factors.iter().map(factor).collect();
    let folded = if factors.is_empty() { Html::default() } else { Html::folded("factors", &factors) };
    Html::joined(&[Html::lines(&[mode.into(), check.remark.as_str().into()]), folded])
}

const fn class_of(outcome: Outcome) -> &'static str {
    match outcome {
        Outcome::Met => "says met",
        Outcome::NotMet => "says not-met",
        Outcome::NotCovered | Outcome::NotDetermined => "says open",
    }
}
