//! Wall screws and cleat strips, one plan each: which pass, and why the others do not.

use super::{is_beyond, words};
use crate::error::{Allowed, Detail, Error, ErrorCode, Fault};
use crate::fasten::ScrewSize;
use crate::finding::{Caution, CautionText, Grade};
use crate::limits::{FASTENER_LENGTH, faults_at, limited, list_faults};
use crate::plan::{BeamSpec, plan};

/// Whether a variant passes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum VariantOutcome {
    /// Every check of the parts concerned has its demand within its capacity.
    Passes,
    /// At least one has not, or the plan says stop.
    Fails,
}

/// A job and the screws that can be had.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct WallScrewsThatHoldInput {
    /// The job; its wall screw is left aside.
    pub spec: BeamSpec,
    /// Lengths that can be bought, mm; 1 to 40.
    pub lengths_mm: Vec<f64>,
}

/// A wall screw in the plan.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct WallScrewVariant {
    /// Size.
    pub size: ScrewSize,
    /// Length, mm.
    pub length_mm: f64,
    /// Whether it passes.
    pub outcome: VariantOutcome,
    /// Largest demand over capacity of the checks of the wall screws; absent where they have none.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub utilisation: Option<f64>,
    /// Why it does not pass.
    pub reasons: Vec<String>,
}

/// Every size and length, the smallest first.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct WallScrewVariants {
    /// The smallest that passes; absent when none does.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub smallest: Option<WallScrewVariant>,
    /// All of them, by diameter, then by length.
    pub variants: Vec<WallScrewVariant>,
    /// Cautions that travel with the choice.
    pub cautions: Vec<CautionText>,
}

/// A strip that a cleat can be ripped from.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<CleatStrip>))]
pub struct CleatStrip {
    /// Width of the strip, mm.
    pub strip_width_mm: f64,
    /// Thickness, mm.
    pub thickness_mm: f64,
    /// Bevel from a square cut, degrees.
    pub bevel_deg: f64,
}

limited!(CleatStrip { strip_width_mm: BODY_SIZE, thickness_mm: BOARD_THICKNESS, bevel_deg: CLEAT_BEVEL });

/// A job and the strips that can be made.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct CleatsThatHoldInput {
    /// The job; strip and bevel of its cleat are left aside.
    pub spec: BeamSpec,
    /// The strips; 1 to 1000.
    pub strips: Vec<CleatStrip>,
}

/// A strip in the plan.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct CleatVariant {
    /// The strip.
    pub strip: CleatStrip,
    /// Whether it passes.
    pub outcome: VariantOutcome,
    /// By how much the body must be lifted over it, mm; absent when it does not fit.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub lift_mm: Option<f64>,
    /// Largest demand over capacity of the checks of cleat, screws and body; absent where they have none.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub utilisation: Option<f64>,
    /// Why it does not pass.
    pub reasons: Vec<String>,
}

/// Every strip, the least cross-section first.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct CleatVariants {
    /// The least that passes; absent when none does.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub least: Option<CleatVariant>,
    /// All of them, by cross-section, then by lift.
    pub variants: Vec<CleatVariant>,
    /// Cautions that travel with the choice.
    pub cautions: Vec<CautionText>,
}

/// What a plan says about a variant.
struct Said {
    outcome: VariantOutcome,
    utilisation: Option<f64>,
    reasons: Vec<String>,
    lift_mm: Option<f64>,
}

/// Parts that a screw or a cleat decides about; heat and lifting are not theirs.
const STRUCTURE: [&str; 7] = ["cleat seat", "wall screw", "wall half", "cleat lip", "beam half", "body", "glue lines"];

fn is_structure(subject: &str) -> bool {
    STRUCTURE.iter().any(|part| subject.starts_with(part))
}

/// Plans a variant; `parts` says which checks count.
fn said(spec: &BeamSpec, parts: fn(&str) -> bool) -> Result<Said, Error> {
    let plan = plan(spec).map_err(|error| error.within("spec"))?;
    let counted = || plan.checks.iter().filter(|check| parts(&check.subject) && !check.name.starts_with("lift onto"));
    let mut reasons: Vec<String> = counted().filter(|check| is_beyond(check)).map(words).collect();
    let stops = plan.findings.iter().filter(|finding| finding.grade == Grade::Stop && parts(&finding.subject));
    reasons.extend(stops.map(|finding| finding.message.clone()));
    let utilisation = counted().filter_map(|check| check.utilisation).reduce(f64::max);
    if plan.cleat.is_none() {
        reasons.push("The cleat does not fit into the hollow.".to_owned());
    } else if !counted().any(|check| check.subject.starts_with("wall screw") && check.utilisation.is_some()) {
        reasons.push("Nothing is known of the wall screws: the wall with at least two studs was not given.".to_owned());
    }
    reasons.dedup();
    let outcome = if reasons.is_empty() { VariantOutcome::Passes } else { VariantOutcome::Fails };
    let lift_mm = plan.cleat.map(|cleat| cleat.halves.lift_mm);
    Ok(Said { outcome, utilisation, reasons, lift_mm })
}

/// Which wall screws of the table pass the plan's checks with the studs there are, the smallest first.
///
/// # Equation
/// One plan a size and length; a screw passes when every check of the wall screws has its demand within its capacity.
///
/// # Limits
/// One screw a stud, wood screws of the table. Heat and lifting are not the screw's. Detect cables and pipes before drilling.
///
/// # Errors
/// All faults of the spec as in [`plan`]; `out_of_range`, `not_finite` with the place in the list.
///
/// # Source
/// That of the checks: NDS 2018. Checked by `verification/sizing`.
///
/// # Examples
/// ```
/// use beamcraft_core::sizing::{wall_screws_that_hold, WallScrewsThatHoldInput};
/// # #[cfg(feature = "json")] {
/// let spec = beamcraft_core::json::read(include_str!("../../examples/specs/ash_shelf_beam.json"))?;
/// let found = wall_screws_that_hold(&WallScrewsThatHoldInput { spec, lengths_mm: vec![80.0, 90.0, 100.0] })?;
/// assert!(found.variants.iter().any(|screw| !screw.reasons.is_empty()));
/// # }
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn wall_screws_that_hold(input: &WallScrewsThatHoldInput) -> Result<WallScrewVariants, Error> {
    let mut faults = list_faults("lengths_mm", &input.lengths_mm, &FASTENER_LENGTH);
    faults.extend(count_fault("lengths_mm", input.lengths_mm.len(), 40, Allowed::Text("1 to 40 lengths")));
    Error::unless_empty(faults)?;
    let mut lengths = input.lengths_mm.clone();
    lengths.sort_by(f64::total_cmp);
    lengths.dedup();
    let mut variants = Vec::with_capacity(ScrewSize::TABULATED.len() * lengths.len());
    for size in ScrewSize::TABULATED {
        for length_mm in &lengths {
            let mut spec = input.spec.clone();
            (spec.cleat.screws.size, spec.cleat.screws.length_mm) = (*size, *length_mm);
            let Said { outcome, utilisation, reasons, .. } = said(&spec, |subject| subject.starts_with("wall screw"))?;
            variants.push(WallScrewVariant { size: *size, length_mm: *length_mm, outcome, utilisation, reasons });
        }
    }
    let smallest = variants.iter().find(|variant| variant.outcome == VariantOutcome::Passes).cloned();
    let cautions = [Caution::Structure, Caution::Services].map(CautionText::from).into();
    Ok(WallScrewVariants { smallest, variants, cautions })
}

/// Which strips make a cleat that passes the plan's checks of seat, screws, lip and body, the least cross-section first.
///
/// # Equation
/// One plan a strip; it passes when every check of these parts has its demand within its capacity.
///
/// # Limits
/// A steeper bevel holds better against climbing off and asks for more lift; whether there is room to lift is the plan's to say.
///
/// # Errors
/// All faults of the spec as in [`plan`]; `out_of_range`, `not_finite` with the place in the list.
///
/// # Source
/// That of the checks. Checked by `verification/sizing`.
///
/// # Examples
/// ```
/// use beamcraft_core::sizing::{cleats_that_hold, CleatStrip, CleatsThatHoldInput};
/// # #[cfg(feature = "json")] {
/// let spec = beamcraft_core::json::read(include_str!("../../examples/specs/ash_shelf_beam.json"))?;
/// let strips = [80.0, 90.0, 100.0].map(|w| CleatStrip { strip_width_mm: w, thickness_mm: 18.0, bevel_deg: 45.0 });
/// let found = cleats_that_hold(&CleatsThatHoldInput { spec, strips: strips.to_vec() })?;
/// assert_eq!(found.variants.len(), 3);
/// # }
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn cleats_that_hold(input: &CleatsThatHoldInput) -> Result<CleatVariants, Error> {
    let strips = input.strips.iter().enumerate();
    let mut faults: Vec<_> = strips.flat_map(|(k, strip)| faults_at(&format!("strips[{k}]"), strip)).collect();
    faults.extend(count_fault("strips", input.strips.len(), 1_000, Allowed::Text("1 to 1000 strips")));
    Error::unless_empty(faults)?;
    let mut variants = Vec::with_capacity(input.strips.len());
    for strip in &input.strips {
        let mut spec = input.spec.clone();
        let cleat = &mut spec.cleat;
        (cleat.strip_width_mm, cleat.thickness_mm, cleat.bevel_deg) =
            (strip.strip_width_mm, strip.thickness_mm, strip.bevel_deg);
        let Said { outcome, utilisation, reasons, lift_mm } = said(&spec, is_structure)?;
        variants.push(CleatVariant { strip: *strip, outcome, lift_mm, utilisation, reasons });
    }
    let size = |variant: &CleatVariant| variant.strip.strip_width_mm * variant.strip.thickness_mm;
    let lift = |variant: &CleatVariant| variant.lift_mm.unwrap_or(f64::MAX);
    variants.sort_by(|a, b| size(a).total_cmp(&size(b)).then(lift(a).total_cmp(&lift(b))));
    let least = variants.iter().find(|variant| variant.outcome == VariantOutcome::Passes).cloned();
    Ok(CleatVariants { least, variants, cautions: vec![CautionText::from(Caution::Structure)] })
}

/// The fault of an empty or too long list.
fn count_fault(field: &'static str, count: usize, most: usize, allowed: Allowed) -> Option<Detail> {
    (count == 0 || count > most).then(|| Fault::number(ErrorCode::OutOfRange, field, count as f64, allowed, "").into())
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const WALL_SCREWS_THAT_HOLD: crate::json::Calculation = crate::json::calculation!(
    wall_screws_that_hold: WallScrewsThatHoldInput => WallScrewVariants, Document,
    "Which wall screws pass the plan's checks with the studs there are, and why the others do not"
);

/// Registry row.
#[cfg(feature = "json")]
pub(super) const CLEATS_THAT_HOLD: crate::json::Calculation = crate::json::calculation!(
    cleats_that_hold: CleatsThatHoldInput => CleatVariants, Document,
    "Which strips make a cleat that passes the plan's checks, and why the others do not"
);

#[cfg(test)]
#[cfg(feature = "json")]
mod tests {
    use super::*;

    fn ash() -> BeamSpec {
        crate::json::read(include_str!("../../examples/specs/ash_shelf_beam.json")).expect("a spec")
    }

    #[test]
    fn the_screw_of_the_scenario_passes_and_a_thin_one_says_why_not() {
        let found =
            wall_screws_that_hold(&WallScrewsThatHoldInput { spec: ash(), lengths_mm: vec![100.0, 40.0] }).unwrap();
        let of =
            |size, length_mm| found.variants.iter().find(|one| one.size == size && one.length_mm == length_mm).unwrap();
        let thin = of(ScrewSize::No6, 40.0);
        assert!(thin.outcome == VariantOutcome::Fails && !thin.reasons.is_empty(), "{thin:?}");
        let smallest = found.smallest.as_ref().expect("one passes");
        assert!(smallest.length_mm == 100.0 && smallest.utilisation.is_some_and(|used| used <= 1.0), "{smallest:?}");
        // What the list says is what a plan says.
        let mut spec = ash();
        (spec.cleat.screws.size, spec.cleat.screws.length_mm) = (smallest.size, smallest.length_mm);
        let plan = plan(&spec).unwrap();
        assert!(
            plan.checks.iter().filter(|check| check.subject.starts_with("wall screw")).all(|check| !is_beyond(check))
        );
    }

    #[test]
    fn without_a_wall_no_screw_passes() {
        let mut spec = ash();
        spec.site = None;
        let found = wall_screws_that_hold(&WallScrewsThatHoldInput { spec, lengths_mm: vec![100.0] }).unwrap();
        assert!(found.smallest.is_none() && found.variants.iter().all(|one| one.reasons.len() == 1), "{found:?}");
    }

    #[test]
    fn strips_come_by_their_section_and_one_that_does_not_fit_says_so() {
        let strip = |strip_width_mm, bevel_deg| CleatStrip { strip_width_mm, thickness_mm: 18.0, bevel_deg };
        let strips = vec![strip(900.0, 45.0), strip(100.0, 45.0), strip(100.0, 30.0)];
        let found = cleats_that_hold(&CleatsThatHoldInput { spec: ash(), strips }).unwrap();
        let order: Vec<_> = found.variants.iter().map(|one| (one.strip.strip_width_mm, one.strip.bevel_deg)).collect();
        assert_eq!(order, [(100.0, 30.0), (100.0, 45.0), (900.0, 45.0)]);
        assert!(found.variants[2].lift_mm.is_none() && found.variants[2].outcome == VariantOutcome::Fails);
        assert!(found.variants[0].lift_mm < found.variants[1].lift_mm, "a lower bevel needs less lift");
    }

    #[test]
    fn what_is_wrong_is_named_with_its_place() {
        let refused = wall_screws_that_hold(&WallScrewsThatHoldInput { spec: ash(), lengths_mm: vec![80.0, f64::NAN] });
        assert_eq!(refused.expect_err("refused").field(), "lengths_mm[1]");
        let none = cleats_that_hold(&CleatsThatHoldInput { spec: ash(), strips: vec![] }).expect_err("refused");
        assert_eq!((none.code(), none.field()), (ErrorCode::OutOfRange, "strips"));
    }
}
