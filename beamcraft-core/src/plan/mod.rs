//! The whole job in one pure call: [`BeamSpec`] → [`Plan`].
//!
//! This is the only place that turns the result of one trade step into the input of the next. A spec that contradicts
//! itself is an error, with every fault and its path; a spec that describes something that does not work still gives a
//! whole plan, with findings that say why and what would help.

mod body;
mod body_strength;
mod checked;
mod cleat;
mod cleat_strength;
mod cuts;
mod finish;
mod fixing;
mod hanging;
mod holding;
mod inside;
mod lift;
mod mass;
mod movement;
mod result;
mod result_seams;
mod sawn_body;
mod services;
mod site;
mod spec;
mod spec_fixing;
mod spec_seams;
mod strength;
mod summary;
mod tolerance;

use crate::error::{Error, Result};
pub use result::{
    CleatPlan, FinishPlan, FixingCase, FixingPlan, FramePlan, GluePlan, HangingStep, HangingTask, LoadCase, MassPlan,
    PanelSawing, Plan, SeamBlocks,
};
pub use result_seams::{CleatSeasons, MovementPlan, SeamSeasons, TolerancePlan};
pub use sawn_body::{SawnBody, SawnBodyInput, sawn_body};
pub use spec::{
    BeamSpec, BlockScrewSpec, BlockSpec, BodySpec, CleatSpec, CoatedFaces, FinishSpec, FrameSpec, LegShape, LoadSpec,
    LockSpec, ReportLengths, ScrewSpec, SiteSpec, WoodSpec,
};
pub use spec_fixing::{DriverPlace, FixingPlace, FixingSpec, LedgerSpec, ServicesSpec, TelevisionPlace};
pub use spec_seams::{AccuracySpec, MoistureRange, ReturnFixing, SeasonClimate, SeasonsSpec};

use checked::Checked;

/// Version of both documents.
const FORMAT: u32 = 1;

/// Plans a whole job.
///
/// # Equation
/// Each step has its own, named in the documentation of its calculation: `shell_panels`, `panel_cuts`, `cleat_halves`,
/// `cleat_marks`, `cleat_seat`, `share_between_supports`, `wall_strip_screws`, `screw_joint`, `cleat_lip`, `open_wall_warping`,
/// `frame_fixing`, `frame_piece`, `glue_blocks`, `inside_screws`,
/// `assembly_order`, `site_fit`, `lift_on`, `wood_density`, `finish_class_quantity`, `body_clearance`, `lifting_index`,
/// `yearly_movement`, `body_movement`, `mitre_movement`, `cleat_movement`, `cross_grain_fight`, `slot_length`,
/// `glue_line_demand`, `tolerance_stack`, `saw_accuracy`, `over_tilt`.
///
/// # Limits
/// Bodies of one straight leg of rectangular section. What is not checked is listed in the plan itself.
///
/// # Errors
/// All faults of the spec at once, each with its path.
///
/// # Source
/// Those of the steps; each check in the plan carries its clause.
///
/// # Examples
/// ```
/// use beamcraft_core::plan::{BeamSpec, plan};
/// let spec: BeamSpec = beamcraft_core::json::read(r#"{
///   "beamcraft_spec": 1,
///   "body": {"legs": [{"rectangular": {
///     "length_mm": 1830, "height_mm": 185, "depth_mm": 215,
///     "boards": [{"face": "front", "thickness_mm": 20}, {"face": "top", "thickness_mm": 20},
///                {"face": "bottom", "thickness_mm": 20}],
///     "left_end": {"kind": "return_panel", "thickness_mm": 20},
///     "right_end": {"kind": "return_panel", "thickness_mm": 20}}}]},
///   "wood": {"species": "white ash"}
/// }"#)?;
/// let plan = plan(&spec)?;
/// assert_eq!(plan.panels.len(), 5);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn plan(spec: &BeamSpec) -> Result<Plan> {
    let checked = Checked::of(spec)?;
    let body = body::Body::of(&checked)?;
    let mut findings = Vec::new();
    body.open_ends(&mut findings);
    // A frame takes the place of the cleat.
    let mut cleat = match spec.fixing {
        Some(_) => None,
        None => cleat::fit(&body, &mut findings)?,
    };
    let site_fit = site::fit(&body, cleat.as_mut(), &mut findings)?;
    let frame = inside::frame(&body, cleat.as_ref(), &mut findings);
    let mass = mass::of(&body, frame.as_ref(), cleat.as_ref());
    let mut checks = Vec::new();
    let lift_on = match &cleat {
        Some(fitted) => lift::way_on(&body, fitted, frame.as_ref(), site_fit.as_ref(), &mut findings)?,
        None => None,
    };
    let cleat = match cleat {
        Some(fitted) => Some(holding::load(&body, fitted, frame.as_ref(), &mass, &mut checks, &mut findings)?),
        None => None,
    };
    let fixing = match &spec.fixing {
        Some(fixing) => fixing::load(&body, fixing, &mass, &mut checks, &mut findings)?,
        None => None,
    };
    services::look(&body, frame.as_ref(), &mut checks, &mut findings);
    let (clearance, reach) = site::look(&body, &mass, &mut checks, &mut findings)?;
    let hanging = cleat.as_ref().map_or_else(Vec::new, |cleat| {
        let (fit, lift) = (site_fit.as_ref(), lift_on.as_ref());
        hanging::sheet(&hanging::Job { spec, cleat, fit, lift, mass: &mass, reach })
    });
    let (cuts, cut_cautions) =
        cuts::settings(&body.shell.panels, &spec.saw, &format!("{}.boards", checked::LEG), &mut findings)?;
    let finish = finish::buy(&body, &mut findings)?;
    let movement = movement::through_the_year(&body, cleat.as_ref(), &mut findings)?;
    let tolerance = tolerance::at_the_saw(&body, &mut findings)?;
    let assembly = inside::assembly(&body, frame.as_ref(), &mut findings);
    let cautions = summary::cautions(spec, finish.as_ref(), movement.as_ref(), cut_cautions);
    summary::failed_checks(&checks, &mut findings);
    findings.sort_by_key(|finding| core::cmp::Reverse(finding.grade));
    Ok(Plan {
        beamcraft_plan: FORMAT,
        spec: spec.clone(),
        glue: body.glue(),
        assembly,
        panels: body.shell.panels,
        cuts,
        frame,
        cleat,
        fixing,
        not_checked: summary::not_checked(movement.as_ref(), tolerance.as_ref()),
        movement,
        tolerance,
        site_fit,
        lift_on,
        hanging,
        clearance,
        mass,
        checks,
        finish,
        findings,
        cautions,
    })
}

/// A fault of one part of a spec.
fn within(error: impl Into<Error>, path: &str) -> Error {
    error.into().within(path)
}

/// Registry rows of this module.
#[cfg(feature = "json")]
pub(crate) const CALCULATIONS: &[crate::json::Calculation] = &[
    crate::json::calculation!(
        plan: BeamSpec => Plan, Document,
        "The whole job: panels, saw settings, cleat, checks, finish and findings from one spec"
    ),
    sawn_body::SAWN_BODY,
];

#[cfg(test)]
#[cfg(feature = "json")]
#[path = "plan_tests.rs"]
mod tests;

#[cfg(test)]
#[cfg(feature = "json")]
#[path = "seams_tests.rs"]
mod seams_tests;
