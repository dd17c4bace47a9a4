//! The whole outline of a body against the rules and the appliance's chart.

use crate::cite::{Clause, Evidence, Source};
use crate::error::{Detail, Error, ErrorCode, Fault, Result};
use crate::finding::{Caution, CautionText, Finding, FindingCode, Grade, Quantity};
use crate::limits::{faults_at, limited};
use crate::setting::{Appliance, ApplianceKind, FireOpening, ListingDatum, OutlinePart, OutlinePoint};
use crate::site::clearance::{
    ListingAnswer, ProjectionLimit, chart_answer, comparison, listing_finding, margin, repeated, together,
    undetermined, verdict_of, why_not_covered,
};
use crate::site::rules::{ClearanceForm, MantelRule, OpeningSide, OwnClearanceRule};
use crate::site::stretch::{Deeper, Nearest, Spot, Stretch};
use crate::verdict::Outcome;

/// A body by its outline, the opening and the rules to compare with.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<BodyClearanceInput>))]
pub struct BodyClearanceInput {
    /// The parts of the body as it hangs: beam, mouldings, legs.
    pub parts: Vec<OutlinePart>,
    /// The opening itself, not its surround.
    pub opening: FireOpening,
    /// What is in the opening, with the chart of its instructions.
    pub appliance: Appliance,
    /// Height of the datum of the chart above the floor, mm; needed where the chart does not measure from the opening.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub chart_datum_above_floor_mm: Option<f64>,
    /// Rules of the table to compare with: those that hold where the body will hang.
    #[cfg_attr(feature = "json", serde(default))]
    pub rules: Vec<MantelRule>,
    /// Rules of the user's, compared in the same way.
    #[cfg_attr(feature = "json", serde(default))]
    pub own_rules: Vec<OwnClearanceRule>,
}

limited!(BodyClearanceInput { chart_datum_above_floor_mm: SIGNED_LENGTH });

/// Where a body comes nearest to what a rule asks for.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct ClearancePoint {
    /// Name of the part.
    pub part: String,
    /// Above or beside the opening.
    pub side: OpeningSide,
    /// How far the place stands out from the face around the opening, mm.
    pub projection_mm: f64,
    /// Height of the place above the top of the opening, mm; negative below it.
    pub above_opening_mm: f64,
    /// Sideways gap between the part and the opening, mm; 0 where the part reaches over it.
    pub beside_opening_mm: f64,
}

/// A depth of the body and the least height that a rule asks for it.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct DepthAndHeight {
    /// How far the body stands out from the face around the opening, mm.
    pub depth_mm: f64,
    /// Least height of its lowest point above the top of the opening, mm.
    pub least_height_mm: f64,
}

/// The body against one rule.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct BodyClearanceAnswer {
    /// Name of the rule.
    pub rule: String,
    /// Where it applies, if adopted there.
    pub jurisdiction: String,
    /// The publication.
    pub publication: String,
    /// Editions read, and recalled; for a rule of the user's, the one that was named.
    pub edition: String,
    /// The clause.
    pub section: String,
    /// How its wording was checked; absent for a rule of the user's, who vouches for it.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub evidence: Option<Evidence>,
    /// What the comparison says.
    pub outcome: Outcome,
    /// Least distance from the opening at the place where the body is nearest to the rule, mm; absent where it does not
    /// apply.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub required_mm: Option<f64>,
    /// Distance of that place from the opening, in the plane of its face, mm.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub actual_mm: Option<f64>,
    /// Actual less required distance, mm; negative when too near.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub margin_mm: Option<f64>,
    /// That place.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub point: Option<ClearancePoint>,
    /// What the rule says to a deeper body at this height, its profile kept and its front moved.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub depth_limit: Option<ProjectionLimit>,
    /// Greatest depth from the face around the opening at this height, mm; only with the limit `up_to`.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub greatest_depth_mm: Option<f64>,
    /// Least height of the lowest point above the top of the opening at this depth, mm; the whole body above the opening.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub least_height_mm: Option<f64>,
    /// Least height against depth, by rising depth; a step lies between two entries of nearly one depth.
    pub curve: Vec<DepthAndHeight>,
    /// The same in words.
    pub remark: String,
}

/// The body against every rule and the chart.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct BodyClearance {
    /// How far the body stands out from the face around the opening, mm.
    pub depth_mm: f64,
    /// Height of its lowest point above the top of the opening, mm; negative below it.
    pub lowest_mm: f64,
    /// One answer for each rule: those of the table in the order given, then the user's.
    pub answers: Vec<BodyClearanceAnswer>,
    /// The answer of the chart; absent for a masonry fireplace without one and where nothing heats.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub listing: Option<ListingAnswer>,
    /// Name of the rule with the least margin, or `appliance's chart`; absent when nothing could be compared.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub governing: Option<String>,
    /// Its margin, mm; negative when too near.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub least_margin_mm: Option<f64>,
    /// All together: met only where every answer that counts is.
    pub outcome: Outcome,
    /// What stands in the way.
    pub findings: Vec<Finding>,
    /// Cautions that belong to these numbers.
    pub cautions: Vec<CautionText>,
}

/// Clearance of a body's whole outline to an opening by named rules: where it is nearest, how much deeper it could be,
/// how low it could hang.
///
/// # Equation
/// ```text
/// d = √(b² + max(0, z)²)        margin = least over the outline of d − d_least(p)
/// along a straight side, between the breakpoints of a rule:  at an end, or at z = b q/√(1 − q²),  q = k dp/dz
/// greatest depth = depth + least of p_most(d) − p         least height: most of √(d_least(p)² − b²) − z
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | p | projection of a point from the face around the opening | mm | `parts[].outline[].out_mm` − `opening.face_out_mm` |
/// | z | height of the point above the top of the opening | mm | from `above_floor_mm` |
/// | b | sideways gap between the part and the opening | mm | from `left_mm`, `right_mm` |
/// | k | distance over projection of a slope rule | | `form.slope.ratio` |
///
/// Sides of the outline are split at the top of the opening and where the rule changes its form; a step takes effect at
/// its limit: what stands out more than the threshold by however little needs the greater distance. A deeper or shallower
/// body is the same profile moved out or in; a higher one is the same body raised, all of it above the opening.
///
/// The rules are named by the caller. With a listed, gas or electric unit none of them counts, its own listing governs,
/// and without its chart the outcome is *not determined*, never a pass. A masonry fireplace without any rule named is
/// *not determined* too. A chart is read for the greatest depth at the lowest point of the body; whether its maker lets a
/// profile be read point by point is for the maker to say.
///
/// # Limits
/// Parts of one outline each along the wall, in front of a plane face. Wood, plywood and fibreboard are combustible
/// whatever their finish. Shields do not change these rules; a hollow body gets no credit and no penalty.
///
/// # Errors
/// `out_of_range`, `not_finite`, `inconsistent`, `missing_field`, `duplicate_field`, each with its path.
///
/// # Accuracy
/// Exact; lengths that differ by less than 1e-6 mm count as equal.
///
/// # Source
/// Those of the rules (`IRC`, `NFPA 211`, `NBC Canada`) and `geometry`, derived in the theory pages; checked by
/// `verification/body_clearance`.
///
/// # Examples
/// ```
/// use beamcraft_core::setting::{Appliance, ApplianceKind, FireOpening, OutlinePart, OutlinePoint};
/// use beamcraft_core::site::{body_clearance, BodyClearanceInput, MantelRule};
/// // A beam of 10 by 6 in. whose underside tapers up towards the front, 11 in. above the opening.
/// let corner = |out: f64, up: f64| OutlinePoint { out_mm: 25.4 * out, above_floor_mm: 25.4 * (41.0 + up) };
/// let beam = OutlinePart {
///     name: "beam".to_owned(), left_mm: 0.0, right_mm: 1500.0,
///     outline: vec![corner(0.0, 0.0), corner(1.0, 0.0), corner(10.0, 3.0), corner(10.0, 6.0), corner(0.0, 6.0)],
/// };
/// let found = body_clearance(&BodyClearanceInput {
///     parts: vec![beam],
///     opening: FireOpening { left_mm: 300.0, width_mm: 900.0, top_above_floor_mm: 762.0, face_out_mm: 0.0 },
///     appliance: Appliance { kind: ApplianceKind::MasonryFireplace, listing: None },
///     chart_datum_above_floor_mm: None, rules: vec![MantelRule::IrcSlope], own_rules: vec![],
/// })?;
/// // Nearest where the taper stands out 1-1/2 in.: 11 in. and a sixth there, where the rule asks for 12.
/// let point = found.answers[0].point.as_ref().unwrap();
/// assert!((point.projection_mm - 38.1).abs() < 1e-9);
/// assert!((found.least_margin_mm.unwrap() + 25.4 * 5.0 / 6.0).abs() < 1e-9);
/// assert!((found.answers[0].least_height_mm.unwrap() - 25.4 * (11.0 + 5.0 / 6.0)).abs() < 1e-9);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn body_clearance(input: &BodyClearanceInput) -> Result<BodyClearance> {
    compare_body(input, Curves::Drawn)
}

/// Whether the curves of depth and height are worked out too.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Curves {
    Drawn,
    LeftOut,
}

/// The comparison without its curves, for a caller that draws none.
///
/// # Errors
/// As [`body_clearance`].
pub(crate) fn body_margins(input: &BodyClearanceInput) -> Result<BodyClearance> {
    compare_body(input, Curves::LeftOut)
}

fn compare_body(input: &BodyClearanceInput, curves: Curves) -> Result<BodyClearance> {
    check(input)?;
    let body = Outline::of(input);
    let not_covered = why_not_covered(input.appliance.kind);
    let answers: Vec<_> = rules(input)
        .map(|(form, answer)| match not_covered {
            Some(why) => BodyClearanceAnswer { remark: format!("a rule for masonry fireplaces: {why}"), ..answer },
            None => body.against(form, answer, curves),
        })
        .collect();
    let listing = listing(input, &body);
    let outcomes = answers.iter().map(|answer| answer.outcome).collect::<Vec<_>>();
    let outcome = together(input.appliance.kind, &outcomes, listing.as_ref());
    let by_rules = answers.iter().filter_map(|answer| Some((answer.rule.as_str(), answer.margin_mm?)));
    let by_chart = listing.iter().filter_map(|answer| Some(("appliance's chart", answer.margin_mm?)));
    let governing = by_rules.chain(by_chart).min_by(|one, other| one.1.total_cmp(&other.1));
    let governing = governing.map(|(name, margin_mm)| (name.to_owned(), margin_mm));
    let mut findings: Vec<_> = answers.iter().filter_map(|answer| too_close(answer, &body)).collect();
    findings.extend(listing.as_ref().and_then(|answer| listing_finding(answer, body.depth_mm)));
    if outcome == Outcome::NotDetermined && input.appliance.kind == ApplianceKind::MasonryFireplace && listing.is_none()
    {
        findings.push(no_rule_named());
    }
    findings.sort_by_key(|finding| core::cmp::Reverse(finding.grade));
    Ok(BodyClearance {
        depth_mm: body.depth_mm,
        lowest_mm: body.lowest_mm,
        answers,
        listing,
        least_margin_mm: governing.as_ref().map(|(_, margin_mm)| *margin_mm),
        governing: governing.map(|(name, _)| name),
        outcome,
        findings,
        cautions: vec![Caution::Fire.into()],
    })
}

fn check(input: &BodyClearanceInput) -> Result<()> {
    let mut faults = Vec::new();
    if input.parts.is_empty() {
        faults.push(Fault::plain(ErrorCode::MissingField, "parts", "at least one part", "").into());
    }
    for (k, part) in input.parts.iter().enumerate() {
        faults.extend(part.faults().into_iter().map(|fault| fault.within(&format!("parts[{k}]"))));
    }
    faults.extend(faults_at("opening", &input.opening));
    if let Some(chart) = &input.appliance.listing {
        faults.extend(chart.faults().into_iter().map(|fault| fault.within("appliance.listing")));
    }
    faults.extend(faults_at("", input));
    faults.extend(repeated("rules", &input.rules));
    let names: Vec<_> = input.own_rules.iter().map(|rule| rule.name.as_str()).collect();
    faults.extend(repeated("own_rules", &names));
    for (k, rule) in input.own_rules.iter().enumerate() {
        faults.extend(rule.faults().into_iter().map(|fault: Detail| fault.within(&format!("own_rules[{k}]"))));
    }
    Error::unless_empty(faults)
}

/// Every rule with an answer that says no more than what it is.
fn rules(input: &BodyClearanceInput) -> impl Iterator<Item = (ClearanceForm, BodyClearanceAnswer)> {
    let published = input.rules.iter().filter_map(|rule| rule.row()).map(|row| {
        let answer = BodyClearanceAnswer {
            rule: row.words.to_owned(),
            jurisdiction: row.jurisdiction.to_owned(),
            publication: row.clause.source.id().to_owned(),
            edition: row.edition.to_owned(),
            section: row.clause.part.to_owned(),
            evidence: Some(row.evidence),
            ..unanswered()
        };
        (row.form, answer)
    });
    let own = input.own_rules.iter().map(|rule| {
        let answer = BodyClearanceAnswer {
            rule: rule.name.clone(),
            jurisdiction: rule.jurisdiction.clone(),
            publication: rule.publication.clone(),
            edition: rule.edition.clone(),
            section: rule.section.clone(),
            ..unanswered()
        };
        (rule.form, answer)
    });
    published.chain(own)
}

const fn unanswered() -> BodyClearanceAnswer {
    BodyClearanceAnswer {
        rule: String::new(),
        jurisdiction: String::new(),
        publication: String::new(),
        edition: String::new(),
        section: String::new(),
        evidence: None,
        outcome: Outcome::NotCovered,
        required_mm: None,
        actual_mm: None,
        margin_mm: None,
        point: None,
        depth_limit: None,
        greatest_depth_mm: None,
        least_height_mm: None,
        curve: Vec::new(),
        remark: String::new(),
    }
}

/// The outline as the rules see it.
struct Outline<'a> {
    sides: Vec<(&'a OutlinePart, Stretch)>,
    depth_mm: f64,
    lowest_mm: f64,
}

/// Depths at which a curve is worked out.
const CURVE_STEPS: u32 = 40;

impl<'a> Outline<'a> {
    fn of(input: &'a BodyClearanceInput) -> Self {
        let opening = &input.opening;
        let spot = |point: OutlinePoint| Spot {
            p_mm: point.out_mm - opening.face_out_mm,
            z_mm: point.above_floor_mm - opening.top_above_floor_mm,
        };
        let mut sides = Vec::new();
        for part in &input.parts {
            let right_mm = opening.left_mm + opening.width_mm;
            let beside_mm = (opening.left_mm - part.right_mm).max(part.left_mm - right_mm).max(0.0);
            sides.extend(part.sides().map(|(from, to)| (part, Stretch { from: spot(from), to: spot(to), beside_mm })));
        }
        let ends = || sides.iter().map(|(_, side)| side.from);
        let depth_mm = ends().map(|spot| spot.p_mm).fold(0.0, f64::max);
        let lowest_mm = ends().map(|spot| spot.z_mm).fold(f64::INFINITY, f64::min);
        Self { sides, depth_mm, lowest_mm }
    }

    fn against(&self, form: ClearanceForm, answer: BodyClearanceAnswer, curves: Curves) -> BodyClearanceAnswer {
        let nearest = self.sides.iter().filter_map(|(part, side)| Some((*part, side, side.nearest(form)?)));
        let nearest = nearest.min_by(|one, other| one.2.margin_mm().total_cmp(&other.2.margin_mm()));
        let Some((part, side, nearest)) = nearest else { return answer };
        let margin_mm = margin(nearest.distance_mm, nearest.required_mm);
        let outcome = verdict_of(margin_mm);
        let deeper = self.sides.iter().map(|(_, side)| side.deeper(form)).fold(Deeper::AnyDepth, Deeper::less);
        let (depth_limit, greatest_depth_mm) = match deeper {
            Deeper::NotAtAll => (ProjectionLimit::Nothing, None),
            Deeper::By(more_mm) => (ProjectionLimit::UpTo, Some((self.depth_mm + more_mm).max(0.0))),
            Deeper::AnyDepth => (ProjectionLimit::NoneByThisRule, None),
        };
        BodyClearanceAnswer {
            outcome,
            required_mm: Some(nearest.required_mm),
            actual_mm: Some(nearest.distance_mm),
            margin_mm: Some(margin_mm),
            point: Some(place(part, side, &nearest)),
            depth_limit: Some(depth_limit),
            greatest_depth_mm,
            least_height_mm: Some(self.least_height(form, 0.0)),
            curve: if curves == Curves::Drawn { self.curve(form) } else { Vec::new() },
            remark: comparison(outcome, margin_mm, &answer.rule),
            ..answer
        }
    }

    /// Least height of the lowest point, the whole body moved out by `out_mm` and above the opening.
    fn least_height(&self, form: ClearanceForm, out_mm: f64) -> f64 {
        let raise_mm = self.sides.iter().map(|(_, side)| side.raise(form, out_mm)).fold(f64::NEG_INFINITY, f64::max);
        (self.lowest_mm + raise_mm).max(0.0)
    }

    /// Least height for depths up to half as much again as the body has, or to where the rule stops asking for more.
    fn curve(&self, form: ClearanceForm) -> Vec<DepthAndHeight> {
        let demands = form.demands(OpeningSide::Above);
        let breaks: Vec<f64> = demands.iter().map(|demand| demand.from_mm).filter(|from| from.is_finite()).collect();
        let last_mm = breaks.iter().copied().fold(1.5 * self.depth_mm, |last, one| last.max(1.25 * one));
        let mut depths: Vec<f64> = (0..=CURVE_STEPS).map(|k| last_mm * f64::from(k) / f64::from(CURVE_STEPS)).collect();
        // On both sides of where the front crosses a break.
        depths.extend(breaks.iter().flat_map(|at| [*at, at + 1e-6 * (1.0 + at)]));
        depths.push(self.depth_mm);
        depths.sort_by(f64::total_cmp);
        depths.dedup();
        let at = |depth_mm: f64| DepthAndHeight {
            depth_mm,
            least_height_mm: self.least_height(form, depth_mm - self.depth_mm),
        };
        depths.into_iter().map(at).collect()
    }
}

fn place(part: &OutlinePart, side: &Stretch, nearest: &Nearest) -> ClearancePoint {
    ClearancePoint {
        part: part.name.clone(),
        side: nearest.side,
        projection_mm: nearest.spot.p_mm.max(0.0),
        above_opening_mm: nearest.spot.z_mm,
        beside_opening_mm: side.beside_mm,
    }
}

/// The chart, read for the greatest depth at the lowest point.
fn listing(input: &BodyClearanceInput, body: &Outline<'_>) -> Option<ListingAnswer> {
    let chart = match (input.appliance.kind, &input.appliance.listing) {
        (ApplianceKind::None, _) | (ApplianceKind::MasonryFireplace, None) => return None,
        (_, None) => return Some(undetermined("the chart of the appliance's instructions was not given")),
        (_, Some(chart)) => chart,
    };
    let top_mm = input.opening.top_above_floor_mm;
    let datum_mm = match chart.datum {
        ListingDatum::TopOfOpening => input.chart_datum_above_floor_mm.or(Some(top_mm)),
        ListingDatum::TopOfAppliance | ListingDatum::BaseOfAppliance => input.chart_datum_above_floor_mm,
    };
    let Some(datum_mm) = datum_mm else {
        return Some(undetermined("the height of the chart's datum above the floor was not given"));
    };
    if body.lowest_mm < 0.0 {
        return Some(undetermined(
            "the chart gives heights above the unit, and the body reaches below the opening's top",
        ));
    }
    Some(chart_answer(chart, body.lowest_mm + top_mm - datum_mm, body.depth_mm))
}

fn too_close(answer: &BodyClearanceAnswer, body: &Outline<'_>) -> Option<Finding> {
    if answer.outcome != Outcome::NotMet {
        return None;
    }
    let (required_mm, actual_mm, point) = (answer.required_mm?, answer.actual_mm?, answer.point.as_ref()?);
    let mut numbers = vec![
        Quantity::new("distance", actual_mm, "mm"),
        Quantity::new("least distance", required_mm, "mm"),
        Quantity::new("projection there", point.projection_mm, "mm"),
    ];
    numbers.extend(answer.least_height_mm.map(|least_mm| Quantity::new("raise by", least_mm - body.lowest_mm, "mm")));
    numbers.extend(
        answer.greatest_depth_mm.map(|most_mm| Quantity::new("or less deep by", body.depth_mm - most_mm, "mm")),
    );
    Some(Finding {
        grade: Grade::Stop,
        code: FindingCode::TooCloseToHeat,
        subject: "body".to_owned(),
        message: format!("The body is {}.", answer.remark),
        numbers,
        cure: "Mount it higher, or make it stand out less.".to_owned(),
        clause: None,
    })
}

fn no_rule_named() -> Finding {
    Finding {
        grade: Grade::Caution,
        code: FindingCode::ListingGoverns,
        subject: "opening".to_owned(),
        message: "No rule was named for the clearance to this opening, so nothing was compared.".to_owned(),
        numbers: Vec::new(),
        cure: "Ask the permit office which rule and edition hold, and name it.".to_owned(),
        clause: Some(Clause::new(Source::Irc, "R1001.11, M1306.1")),
    }
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const BODY_CLEARANCE: crate::json::Calculation = crate::json::calculation!(
    body_clearance: BodyClearanceInput => BodyClearance, Document,
    "Clearance of a body's whole outline to an opening by named rules, greatest depth and least height"
);

#[cfg(test)]
#[path = "body_clearance_tests.rs"]
mod tests;
