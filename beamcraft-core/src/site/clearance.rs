//! A mantel or shelf against the rules and the appliance's chart.

use crate::cite::{Clause, Evidence, Source};
use crate::error::{Detail, Error, ErrorCode, Fault, Result};
use crate::finding::{Caution, CautionText, Finding, FindingCode, Grade, Quantity};
use crate::limits::{faults_at, limited};
use crate::setting::{Appliance, ApplianceKind, ListingChart, ListingDatum};
use crate::site::rules::{ClearanceRule, MantelRule, OpeningSide, Projection, SAME_MM};
use crate::verdict::Outcome;

/// One combustible point of the body near an opening.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<MantelClearanceInput>))]
pub struct MantelClearanceInput {
    /// How far the point stands out from the face around the opening, mm; for a beam its lower front edge.
    pub projection_mm: f64,
    /// Shortest distance of the point from the edge of the opening, in the plane of that face, mm.
    pub distance_from_opening_mm: f64,
    /// On which side of the opening the point lies.
    #[cfg_attr(feature = "json", serde(default = "above"))]
    pub side: OpeningSide,
    /// What is in the opening, with the chart of its instructions.
    pub appliance: Appliance,
    /// Height of the point above the datum of the chart, mm; needed where the chart does not measure from the opening.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub height_above_datum_mm: Option<f64>,
    /// The rules to compare with; the three North American ones for dwellings when left out.
    #[cfg_attr(feature = "json", serde(default = "north_american"))]
    pub rules: Vec<MantelRule>,
}

limited!(MantelClearanceInput {
    projection_mm: LENGTH,
    distance_from_opening_mm: LENGTH,
    height_above_datum_mm: LENGTH,
});

#[cfg(feature = "json")]
fn above() -> OpeningSide {
    OpeningSide::Above
}

#[cfg(feature = "json")]
fn north_american() -> Vec<MantelRule> {
    vec![MantelRule::IrcSlope, MantelRule::Nfpa211Step, MantelRule::NbcStep]
}

/// What a rule allows to stand out at the distance given.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum ProjectionLimit {
    /// Nothing combustible may be so near at all.
    Nothing,
    /// Up to the greatest projection given.
    UpTo,
    /// This rule sets no limit there; others may.
    NoneByThisRule,
}

/// The point against one rule.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct ClearanceAnswer {
    /// The rule.
    pub rule: MantelRule,
    /// Publication and place.
    pub clause: Clause,
    /// Editions read, and recalled.
    pub edition: &'static str,
    /// Where it applies, if adopted there.
    pub jurisdiction: &'static str,
    /// How its wording was checked.
    pub evidence: Evidence,
    /// Least distance for the projection, mm; absent where the rule does not apply.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub least_distance_mm: Option<f64>,
    /// Distance less the least one, mm; negative when too near.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub margin_mm: Option<f64>,
    /// What may stand out at the distance given; absent where the rule does not apply.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub projection_limit: Option<ProjectionLimit>,
    /// Greatest projection at the distance given, mm; only with the limit `up_to`.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub greatest_projection_mm: Option<f64>,
    /// What the comparison says.
    pub outcome: Outcome,
    /// The same in words.
    pub remark: String,
}

/// The point against the chart of the appliance.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct ListingAnswer {
    /// Greatest depth of the chart's step that was used, mm.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub step_depth_mm: Option<f64>,
    /// Least height by the chart, mm.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub least_height_mm: Option<f64>,
    /// Height less the least one, mm; negative when too near.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub margin_mm: Option<f64>,
    /// What the comparison says.
    pub outcome: Outcome,
    /// The same in words.
    pub remark: String,
}

/// The point against the rules and the chart.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct MantelClearance {
    /// One answer for each rule, in the order given.
    pub answers: Vec<ClearanceAnswer>,
    /// The answer of the chart; absent for a masonry fireplace without one and where nothing heats.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub listing: Option<ListingAnswer>,
    /// Largest least distance of the rules that apply, mm.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub least_distance_mm: Option<f64>,
    /// All together: met only where every answer that counts is.
    pub outcome: Outcome,
    /// What stands in the way.
    pub findings: Vec<Finding>,
    /// Cautions that belong to these numbers.
    pub cautions: Vec<CautionText>,
}

/// Distance of a combustible mantel from the opening against named rules, and what they allow the other way round.
///
/// # Equation
/// ```text
/// slope rule   pass ⇔ d ≥ 6 and (d ≥ 12 or p ≤ d/8)      d_least(p) = max(6, min(8 p, 12))          inches
/// step rule    d_least(p) = 6, above the opening 12 where p > 1-1/2                                 inches
///              d_least(p) = 150, above the opening 300 where p > 38                                 mm
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | d | distance from the opening | mm | `distance_from_opening_mm` |
/// | p | projection from the face | mm | `projection_mm` |
///
/// For a listed, gas or electric unit the generic rules are *not covered*: its listing governs, and without its chart
/// the outcome is *not determined*, never a pass. Of a chart, the step at or above the depth is taken, and no less than
/// any shallower step asks for, since a deep shelf has every shallower point too; nothing is read beyond its last step.
///
/// # Limits
/// One point; give every point of a profile. Combustible is wood whatever its finish, plywood and fibreboard. Wall
/// shields do not change these rules. That the underside is hollow, with a thinner skin, is in no source found: no credit
/// and no penalty.
///
/// # Errors
/// `out_of_range`, `not_finite`, `inconsistent`, `missing_field`, each with its path.
///
/// # Accuracy
/// Lengths that differ by less than 1e-6 mm count as equal: an inch in millimetres is rounded in its last digits.
///
/// # Source
/// `IRC` R1001.11 exception 4 and M1306.1, `NFPA 211` 7-3.3.3, `NBC Canada` 9.22.9.3 (each with its evidence in the
/// answer); checked by `verification/clearance`.
///
/// # Examples
/// ```
/// use beamcraft_core::setting::{Appliance, ApplianceKind};
/// use beamcraft_core::site::{mantel_clearance, MantelClearanceInput, MantelRule, OpeningSide};
/// use beamcraft_core::verdict::Outcome;
/// let near = mantel_clearance(&MantelClearanceInput {
///     projection_mm: 1.25 * 25.4, distance_from_opening_mm: 8.0 * 25.4, side: OpeningSide::Above,
///     appliance: Appliance { kind: ApplianceKind::MasonryFireplace, listing: None },
///     height_above_datum_mm: None, rules: vec![MantelRule::IrcSlope],
/// })?;
/// assert_eq!(near.outcome, Outcome::NotMet);
/// assert!((near.answers[0].greatest_projection_mm.unwrap() - 25.4).abs() < 1e-9);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn mantel_clearance(input: &MantelClearanceInput) -> Result<MantelClearance> {
    check(input)?;
    let kind = input.appliance.kind;
    let rows = input.rules.iter().filter_map(|rule| rule.row());
    let answers: Vec<_> = match why_not_covered(kind) {
        None => rows.map(|row| compare(row, input)).collect(),
        Some(why) => rows.map(|row| not_covered(row, why)).collect(),
    };
    let listing = match (kind, &input.appliance.listing) {
        (ApplianceKind::None, _) | (ApplianceKind::MasonryFireplace, None) => None,
        (_, None) => Some(undetermined("the chart of the appliance's instructions was not given")),
        (_, Some(chart)) => Some(read_chart(chart, input)),
    };
    let least = answers.iter().filter_map(|answer| answer.least_distance_mm).reduce(f64::max);
    let outcomes: Vec<_> = answers.iter().map(|answer| answer.outcome).collect();
    let outcome = together(kind, &outcomes, listing.as_ref());
    let mut findings: Vec<_> = answers.iter().filter_map(|answer| too_close(answer, input)).collect();
    findings.extend(listing.as_ref().and_then(|answer| listing_finding(answer, input.projection_mm)));
    findings.sort_by_key(|finding| core::cmp::Reverse(finding.grade));
    Ok(MantelClearance {
        answers,
        listing,
        least_distance_mm: least,
        outcome,
        findings,
        cautions: vec![Caution::Fire.into()],
    })
}

fn check(input: &MantelClearanceInput) -> Result<()> {
    let mut faults = faults_at("", input);
    if let Some(chart) = &input.appliance.listing {
        faults.extend(chart.faults().into_iter().map(|fault| fault.within("appliance.listing")));
    }
    faults.extend(repeated("rules", &input.rules));
    Error::unless_empty(faults)
}

/// Every entry of a list that stands in it before.
pub(super) fn repeated<T: PartialEq>(path: &str, list: &[T]) -> Vec<Detail> {
    let again = list.iter().enumerate().filter(|(k, one)| list.iter().take(*k).any(|earlier| earlier == *one));
    let fault = || Detail::from(Fault::plain(ErrorCode::DuplicateField, "", "each rule once", ""));
    again.map(|(k, _)| fault().within(&format!("{path}[{k}]"))).collect()
}

/// Why the rules for masonry fireplaces do not count for an appliance; nothing where they do.
pub(super) const fn why_not_covered(kind: ApplianceKind) -> Option<&'static str> {
    match kind {
        ApplianceKind::MasonryFireplace => None,
        ApplianceKind::None => Some("nothing that heats is given"),
        _ => Some("the listing and instructions of the unit govern"),
    }
}

/// The margin, with what is less than a rounding set to nought.
pub(super) fn margin(have_mm: f64, need_mm: f64) -> f64 {
    let margin_mm = have_mm - need_mm;
    if margin_mm.abs() < SAME_MM { 0.0 } else { margin_mm }
}

pub(super) fn verdict_of(margin_mm: f64) -> Outcome {
    if margin_mm >= 0.0 { Outcome::Met } else { Outcome::NotMet }
}

fn compare(row: &ClearanceRule, input: &MantelClearanceInput) -> ClearanceAnswer {
    let need_mm = row.form.least_distance(input.side, input.projection_mm);
    let margin_mm = margin(input.distance_from_opening_mm, need_mm);
    let (limit, greatest) = match row.form.greatest_projection(input.side, input.distance_from_opening_mm) {
        Projection::Nothing => (ProjectionLimit::Nothing, None),
        Projection::UpTo(most_mm) => (ProjectionLimit::UpTo, Some(most_mm)),
        Projection::Unlimited => (ProjectionLimit::NoneByThisRule, None),
    };
    let outcome = verdict_of(margin_mm);
    let remark = comparison(outcome, margin_mm, row.words);
    ClearanceAnswer {
        least_distance_mm: Some(need_mm),
        margin_mm: Some(margin_mm),
        projection_limit: Some(limit),
        greatest_projection_mm: greatest,
        outcome,
        remark,
        ..not_covered(row, "")
    }
}

/// A comparison in words that claim no more than it is.
pub(super) fn comparison(outcome: Outcome, margin_mm: f64, rule: &str) -> String {
    let decides = "local adoption and the appliance listing decide";
    match outcome {
        Outcome::Met if margin_mm == 0.0 => format!("at the very limit of the {rule} of the cited text; {decides}"),
        Outcome::Met => format!("meets the {rule} of the cited text; {decides}"),
        _ => format!("nearer than the {rule} of the cited text allows"),
    }
}

fn not_covered(row: &ClearanceRule, why: &str) -> ClearanceAnswer {
    ClearanceAnswer {
        rule: row.rule,
        clause: row.clause,
        edition: row.edition,
        jurisdiction: row.jurisdiction,
        evidence: row.evidence,
        least_distance_mm: None,
        margin_mm: None,
        projection_limit: None,
        greatest_projection_mm: None,
        outcome: Outcome::NotCovered,
        remark: format!("a rule for masonry fireplaces: {why}"),
    }
}

pub(super) fn undetermined(why: &str) -> ListingAnswer {
    ListingAnswer {
        step_depth_mm: None,
        least_height_mm: None,
        margin_mm: None,
        outcome: Outcome::NotDetermined,
        remark: why.to_owned(),
    }
}

fn read_chart(chart: &ListingChart, input: &MantelClearanceInput) -> ListingAnswer {
    if input.side == OpeningSide::Beside {
        return undetermined("the chart gives heights above the unit, not distances beside it");
    }
    let height_mm = match chart.datum {
        ListingDatum::TopOfOpening => input.height_above_datum_mm.or(Some(input.distance_from_opening_mm)),
        ListingDatum::TopOfAppliance | ListingDatum::BaseOfAppliance => input.height_above_datum_mm,
    };
    match height_mm {
        Some(height_mm) => chart_answer(chart, height_mm, input.projection_mm),
        None => undetermined("the height above the datum of the chart was not given"),
    }
}

/// A chart read for a depth at a height above its datum.
pub(super) fn chart_answer(chart: &ListingChart, height_mm: f64, depth_mm: f64) -> ListingAnswer {
    let mut least_mm = 0.0_f64;
    for step in &chart.steps {
        least_mm = least_mm.max(step.least_height_mm);
        if step.depth_mm >= depth_mm - SAME_MM {
            let margin_mm = margin(height_mm, least_mm);
            let outcome = verdict_of(margin_mm);
            let remark = match outcome {
                Outcome::Met => "meets the chart as given; the instructions themselves decide",
                _ => "lower than the chart as given allows",
            };
            return ListingAnswer {
                step_depth_mm: Some(step.depth_mm),
                least_height_mm: Some(least_mm),
                margin_mm: Some(margin_mm),
                outcome,
                remark: remark.to_owned(),
            };
        }
    }
    undetermined("the body stands out farther than the last step of the chart")
}

/// All outcomes together: those of the rules where they count, and that of the chart.
pub(super) fn together(kind: ApplianceKind, rules: &[Outcome], listing: Option<&ListingAnswer>) -> Outcome {
    let counted = rules.iter().copied().filter(|_| kind == ApplianceKind::MasonryFireplace);
    let all = counted.chain(listing.map(|answer| answer.outcome));
    let worst = |one: Outcome, other: Outcome| match (one, other) {
        (Outcome::NotMet, _) | (_, Outcome::NotMet) => Outcome::NotMet,
        (Outcome::Met, open) => open,
        (open, _) => open,
    };
    all.reduce(worst).unwrap_or(match kind {
        ApplianceKind::None => Outcome::NotCovered,
        _ => Outcome::NotDetermined,
    })
}

fn too_close(answer: &ClearanceAnswer, input: &MantelClearanceInput) -> Option<Finding> {
    if answer.outcome != Outcome::NotMet {
        return None;
    }
    let mut numbers = vec![
        Quantity::new("distance", input.distance_from_opening_mm, "mm"),
        Quantity::new("projection", input.projection_mm, "mm"),
    ];
    numbers.extend(answer.least_distance_mm.map(|need_mm| Quantity::new("least distance", need_mm, "mm")));
    numbers.extend(answer.greatest_projection_mm.map(|most_mm| Quantity::new("greatest projection", most_mm, "mm")));
    Some(Finding {
        grade: Grade::Stop,
        code: FindingCode::TooCloseToHeat,
        subject: "body".to_owned(),
        message: format!("The body is {}.", answer.remark),
        numbers,
        cure: "Mount it higher, or make it stand out less.".to_owned(),
        clause: Some(answer.clause),
    })
}

/// What the chart of the appliance has to say to a body of a depth.
pub(super) fn listing_finding(answer: &ListingAnswer, depth_mm: f64) -> Option<Finding> {
    let clause = Some(Clause::new(Source::Irc, "M1306.1"));
    match answer.outcome {
        Outcome::NotDetermined => Some(Finding {
            grade: Grade::Caution,
            code: FindingCode::ListingGoverns,
            subject: "appliance".to_owned(),
            message: format!("The appliance's own instructions decide, and {}.", answer.remark),
            numbers: Vec::new(),
            cure: "Copy the shelf chart of the instructions into the input, or ask its maker.".to_owned(),
            clause,
        }),
        Outcome::NotMet => {
            let mut numbers = vec![Quantity::new("projection", depth_mm, "mm")];
            numbers.extend(answer.least_height_mm.map(|need_mm| Quantity::new("least height", need_mm, "mm")));
            numbers.extend(answer.margin_mm.map(|margin_mm| Quantity::new("margin", margin_mm, "mm")));
            Some(Finding {
                grade: Grade::Stop,
                code: FindingCode::TooCloseToHeat,
                subject: "body".to_owned(),
                message: format!("The body is {}.", answer.remark),
                numbers,
                cure: "Mount it higher, or make it stand out less.".to_owned(),
                clause,
            })
        }
        Outcome::Met | Outcome::NotCovered => None,
    }
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const MANTEL_CLEARANCE: crate::json::Calculation = crate::json::calculation!(
    mantel_clearance: MantelClearanceInput => MantelClearance, Document,
    "Distance of a combustible mantel from the opening against named rules and the appliance's chart"
);

#[cfg(test)]
#[path = "clearance_tests.rs"]
mod tests;
