//! Can the body be lifted onto its cleat, and what would make it possible?

mod convex;
mod cures;
mod scene;
mod search;
mod slice;

#[cfg(test)]
mod tests;

use crate::error::{Detail, Error, ErrorCode, Fault, Result};
use crate::finding::{Caution, CautionText, Finding, FindingCode, Grade, Quantity};
use crate::hang::CleatHalvesInput;
use crate::limits::{faults_at, limited};
use crate::setting::{Obstruction, OutlinePart, OutlinePoint};
use crate::verdict::Outcome;
use convex::Shift;
pub use cures::{LiftCure, LiftCureKind};
use scene::Scene;
use search::{Found, Pose, Tilting, Way, way_off};

/// A body as it hangs on its cleat, and what is around it.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<LiftOnInput>))]
pub struct LiftOnInput {
    /// The parts of the body as it hangs, without its half of the cleat: boards, frame pieces, mouldings. Each is taken by
    /// its convex outline; give a hollow profile in several parts.
    pub parts: Vec<OutlinePart>,
    /// The strip that the cleat is ripped from; both halves are flush with the back of the body.
    pub strip: CleatHalvesInput,
    /// Upper edge of the beam half above the floor, mm.
    pub beam_half_top_above_floor_mm: f64,
    /// Left end of the beam half from the plumb line, mm.
    pub beam_half_left_mm: f64,
    /// Right end of the beam half from the plumb line, mm.
    pub beam_half_right_mm: f64,
    /// Left end of the wall half from the plumb line, mm.
    pub wall_half_left_mm: f64,
    /// Right end of the wall half from the plumb line, mm.
    pub wall_half_right_mm: f64,
    /// Gap between the back of the body and the wall as it hangs, mm: packing behind the wall half.
    #[cfg_attr(feature = "json", serde(default))]
    pub behind_mm: f64,
    /// Things on the wall around the body.
    #[cfg_attr(feature = "json", serde(default))]
    pub things: Vec<Obstruction>,
    /// Greatest tilt that is tried either way, degrees; 12 is a choice: more is hard to hold.
    #[cfg_attr(feature = "json", serde(default = "twelve"))]
    pub greatest_tilt_deg: f64,
    /// First step between tilts, degrees; where no way is found it is halved twice.
    #[cfg_attr(feature = "json", serde(default = "one"))]
    pub tilt_step_deg: f64,
    /// Free wall left of the body, mm, where its right end is open so that it can be slid on from there; left out when
    /// that end is closed.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub slide_from_left_mm: Option<f64>,
    /// Free wall right of the body, mm, where its left end is open; left out when that end is closed.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub slide_from_right_mm: Option<f64>,
}

limited!(LiftOnInput {
    beam_half_top_above_floor_mm: SIGNED_LENGTH,
    beam_half_left_mm: SIGNED_LENGTH,
    beam_half_right_mm: SIGNED_LENGTH,
    wall_half_left_mm: SIGNED_LENGTH,
    wall_half_right_mm: SIGNED_LENGTH,
    behind_mm: SMALL_LENGTH,
    greatest_tilt_deg: LIFT_TILT,
    tilt_step_deg: TILT_STEP,
    slide_from_left_mm: LENGTH,
    slide_from_right_mm: LENGTH,
});

#[cfg(feature = "json")]
fn twelve() -> f64 {
    12.0
}

#[cfg(feature = "json")]
fn one() -> f64 {
    1.0
}

/// The body at one moment of the way.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct LiftFrame {
    /// Out from where it hangs, mm.
    pub out_mm: f64,
    /// Up from where it hangs, mm.
    pub up_mm: f64,
    /// Tilt about the seat's edge at the wall, before the shift, degrees; positive with the front raised.
    pub tilt_deg: f64,
}

/// Something that moves or stands, as it is with the body in its place.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct LiftShape {
    /// Its name.
    pub name: String,
    /// Whether it moves with the body.
    pub role: LiftRole,
    /// Corners of its convex outline.
    pub outline: Vec<OutlinePoint>,
}

/// Whether a shape moves.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum LiftRole {
    /// Moves with the body.
    Moves,
    /// Stands where it is.
    Stands,
}

/// How the body gets on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum LiftManner {
    /// Level all the way.
    Level,
    /// Tilted on the way.
    Tilted,
    /// Not at all, as far as was looked.
    NotAtAll,
    /// It does not hang there: it meets something in its place.
    MeetsInPlace,
}

/// The way onto the cleat, or what is missing.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct LiftOn {
    /// Whether there is a way.
    pub outcome: Outcome,
    /// How the body gets on.
    pub manner: LiftManner,
    /// The way on, from in front of the cleat into place: straight from frame to frame, or turning at rest; empty without
    /// one.
    pub frames: Vec<LiftFrame>,
    /// How far the top of the body rises at most on this way above where it hangs, mm.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub rise_mm: Option<f64>,
    /// Point about which tilts turn, before the shift.
    pub pivot: OutlinePoint,
    /// Everything that moves, the beam half first, then everything that stands, the wall half first.
    pub shapes: Vec<LiftShape>,
    /// Least headroom above the body under something deeper than it, level all the way, mm.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub least_headroom_level_mm: Option<f64>,
    /// Least headroom that was found with tilting, mm; looked for only where there is no level way.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub least_headroom_tilted_mm: Option<f64>,
    /// Headroom missing for a level way, mm; absent where there is one or no headroom would help.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub missing_mm: Option<f64>,
    /// What would make a level way, each by itself and each tried; empty where there is one already.
    pub cures: Vec<LiftCure>,
    /// Step between tilts that was used, degrees.
    pub tilt_step_deg: f64,
    /// How far the body swings in such a step, mm: a way through less room than this may be missed.
    pub swing_mm: f64,
    /// What stands in the way.
    pub findings: Vec<Finding>,
    /// Cautions that belong to this answer.
    pub cautions: Vec<CautionText>,
}

/// Whether a body can be lifted onto its cleat past everything around it: the way, the least headroom, or what is missing.
///
/// # Equation
/// ```text
/// body B, shifted by t and tilted, meets a thing E  ⇔  t inside E ⊕ (−B)
/// ```
/// Level, the free shifts out and up are found exactly: the sums E ⊕ (−B) of every convex part with wall, wall half and
/// things are cut into upright slabs in which nothing changes order. Of all ways off the cleat the one is taken on which
/// the body's top rises least. Tilts are looked at in steps, and between two of them the body is swept: its outline around
/// both, larger by the bulge r (1 − cos(step/2)). So a way is free at every moment. Where none is found the step is halved
/// twice.
///
/// Off the cleat means: the whole body in front of the wall half. Parts meet only what stands in line with them along the
/// wall. What is missing and each cure are for a level way, and each cure was tried.
///
/// # Limits
/// Motion square to the wall, the body level along it. A way through less room than the body swings in a step of tilt may
/// be missed. Carrying the body on from there, hands and ladders are not part of it.
///
/// # Errors
/// `out_of_range`, `not_finite`, `inconsistent`, `missing_field`, each with its path; what `cleat_halves` refuses.
///
/// # Accuracy
/// Touching is allowed: what overlaps by less than about 1e-4 mm counts as touching. Amounts of cures to 0.01 mm or 0.01
/// degree.
///
/// # Source
/// Geometry, derived in the theory pages; checked by `verification/lift_on` and by independent tests of every frame.
///
/// # Examples
/// ```
/// use beamcraft_core::hang::CleatHalvesInput;
/// use beamcraft_core::setting::{Obstruction, OutlinePart, OutlinePoint, ThingKind};
/// use beamcraft_core::site::{lift_on, LiftManner, LiftOnInput};
/// let corner = |out_mm, above_floor_mm| OutlinePoint { out_mm, above_floor_mm };
/// let board = |name: &str, (o0, z0): (f64, f64), (o1, z1): (f64, f64)| OutlinePart {
///     name: name.to_owned(), left_mm: 0.0, right_mm: 1500.0,
///     outline: vec![corner(o0, z0), corner(o1, z0), corner(o1, z1), corner(o0, z1)],
/// };
/// let mut input = LiftOnInput {
///     parts: vec![board("front", (180.0, 1300.0), (200.0, 1500.0)), board("top", (0.0, 1480.0), (180.0, 1500.0))],
///     strip: CleatHalvesInput { strip_width_mm: 100.0, thickness_mm: 18.0, bevel_deg: 45.0, kerf_mm: 3.0, blunt_mm: 2.0 },
///     beam_half_top_above_floor_mm: 1480.0, beam_half_left_mm: 20.0, beam_half_right_mm: 1480.0,
///     wall_half_left_mm: 30.0, wall_half_right_mm: 1470.0, behind_mm: 0.0,
///     things: vec![Obstruction {
///         name: "soffit".to_owned(), kind: ThingKind::Soffit, left_mm: -500.0, right_mm: 2000.0,
///         bottom_mm: 1514.5, top_mm: 2400.0, projection_mm: 600.0,
///     }],
///     greatest_tilt_deg: 12.0, tilt_step_deg: 1.0, slide_from_left_mm: None, slide_from_right_mm: None,
/// };
/// // The points pass after a rise of t tan b - 2 d = 14 mm; the soffit leaves 14.5 mm.
/// let on = lift_on(&input)?;
/// assert_eq!(on.manner, LiftManner::Level);
/// assert!((on.least_headroom_level_mm.unwrap() - 14.0).abs() < 1e-3);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn lift_on(input: &LiftOnInput) -> Result<LiftOn> {
    check(input)?;
    let scene = scene(input)?;
    let bare = scene.without_things();
    let level_bare = way_off(&bare, Tilting::LEVEL).way();
    let (found, tilting) = match way_off(&scene, Tilting::LEVEL) {
        Found::NoWay => tilted(&scene, input),
        level => (level, first_tilting(input)),
    };
    let is_level = matches!(&found, Found::Way(way) if !is_tilted(way));
    let tilted_bare = if is_level { None } else { way_off(&bare, tilting).way() };
    let needs_cure = !is_level && found != Found::NotInPlace;
    let (missing_mm, cures) = if needs_cure { cures::look_for(input, level_bare.as_ref()) } else { (None, Vec::new()) };
    let mut on = LiftOn {
        outcome: if matches!(found, Found::Way(_)) { Outcome::Met } else { Outcome::NotMet },
        manner: manner(&found),
        frames: Vec::new(),
        rise_mm: None,
        pivot: point(&scene.pivot()),
        shapes: scene.shapes(),
        least_headroom_level_mm: level_bare.as_ref().map(|way| way.rise),
        least_headroom_tilted_mm: tilted_bare.map(|way| way.rise),
        missing_mm,
        cures,
        tilt_step_deg: tilting.step_deg,
        swing_mm: scene.swing(tilting.step_deg),
        findings: Vec::new(),
        cautions: [Caution::Lifting, Caution::Structure].map(CautionText::from).to_vec(),
    };
    if let Found::Way(way) = found {
        on.rise_mm = Some(way.rise.max(0.0));
        // The way was looked for from its end.
        on.frames = way.poses.iter().rev().map(frame).collect();
    }
    on.findings = findings(&on);
    Ok(on)
}

/// A strip or an outline that makes no part.
#[derive(Clone, Copy, Debug, PartialEq)]
enum NoPart {
    Strip(Fault),
    Cleat,
    Outline(usize),
}

fn scene(input: &LiftOnInput) -> Result<Scene> {
    Scene::of(input, &input.strip, &input.things, 0.0).map_err(|no_part| match no_part {
        NoPart::Strip(fault) => Error::from(fault).within("strip"),
        NoPart::Cleat => no_area("strip"),
        NoPart::Outline(k) => no_area(&format!("parts[{k}].outline")),
    })
}

fn no_area(path: &str) -> Error {
    let fault = Fault::plain(ErrorCode::Inconsistent, "", "an outline with an area", "give its corners in order");
    Error::from(fault).within(path)
}

fn check(input: &LiftOnInput) -> Result<()> {
    let mut faults = Vec::new();
    if input.parts.is_empty() {
        faults.push(Fault::plain(ErrorCode::MissingField, "parts", "at least one part", "").into());
    }
    for (k, part) in input.parts.iter().enumerate() {
        faults.extend(part.faults().into_iter().map(|fault| fault.within(&format!("parts[{k}]"))));
    }
    faults.extend(faults_at("strip", &input.strip));
    faults.extend(faults_at("", input));
    let ends = [
        ("beam_half_right_mm", input.beam_half_left_mm, input.beam_half_right_mm),
        ("wall_half_right_mm", input.wall_half_left_mm, input.wall_half_right_mm),
    ];
    for (field, left, right) in ends.into_iter().filter(|(_, left, right)| right <= left) {
        let fault = Fault::plain(ErrorCode::Inconsistent, field, "right of the left end", "swap the ends");
        faults.push(Detail { given: format!("{right} mm, left end {left} mm"), ..fault.into() });
    }
    for (k, thing) in input.things.iter().enumerate() {
        faults.extend(thing.faults().into_iter().map(|fault: Detail| fault.within(&format!("things[{k}]"))));
    }
    Error::unless_empty(faults)
}

fn first_tilting(input: &LiftOnInput) -> Tilting {
    tilting(input, input.tilt_step_deg)
}

/// Steps that do not go beyond the greatest tilt.
fn tilting(input: &LiftOnInput, step_deg: f64) -> Tilting {
    // At most 30 degrees in steps of no less than an eighth: a few hundred.
    Tilting { step_deg, steps: (input.greatest_tilt_deg / step_deg + 1e-9).floor() as i32 }
}

/// How often the step is halved where no way is found.
const HALVINGS: u32 = 2;

/// With tilts, in finer and finer steps.
fn tilted(scene: &Scene, input: &LiftOnInput) -> (Found, Tilting) {
    let mut tilts = first_tilting(input);
    let mut found = way_off(scene, tilts);
    for _ in 0..HALVINGS {
        if found != Found::NoWay || tilts.steps == 0 {
            break;
        }
        tilts = tilting(input, 0.5 * tilts.step_deg);
        found = way_off(scene, tilts);
    }
    (found, tilts)
}

fn is_tilted(way: &Way) -> bool {
    way.poses.iter().any(|pose| pose.tilt_deg != 0.0)
}

fn manner(found: &Found) -> LiftManner {
    match found {
        Found::Way(way) if is_tilted(way) => LiftManner::Tilted,
        Found::Way(_) => LiftManner::Level,
        Found::NoWay => LiftManner::NotAtAll,
        Found::NotInPlace => LiftManner::MeetsInPlace,
    }
}

fn point(shift: &Shift) -> OutlinePoint {
    OutlinePoint { out_mm: shift.out, above_floor_mm: shift.up }
}

fn frame(pose: &Pose) -> LiftFrame {
    LiftFrame { out_mm: pose.shift.out, up_mm: pose.shift.up, tilt_deg: pose.tilt_deg }
}

fn findings(on: &LiftOn) -> Vec<Finding> {
    let (grade, message) = match on.manner {
        LiftManner::Level => return Vec::new(),
        LiftManner::Tilted => (Grade::Caution, "The body goes onto its cleat only when it is tilted on the way."),
        LiftManner::NotAtAll => {
            (Grade::Stop, "No way was found to lift the body onto its cleat past what is around it.")
        }
        LiftManner::MeetsInPlace => (Grade::Stop, "Hung on its cleat, the body would meet something around it."),
    };
    let code = match on.manner {
        LiftManner::MeetsInPlace => FindingCode::MeetsObstruction,
        _ => FindingCode::NoHeadroom,
    };
    let mut numbers: Vec<_> =
        on.missing_mm.map(|missing| Quantity::new("headroom missing", missing, "mm")).into_iter().collect();
    let level = on.least_headroom_level_mm.map(|room| Quantity::new("headroom for a level lift", room, "mm"));
    numbers.extend(level);
    let cures: Vec<String> = on.cures.iter().map(LiftCure::words).collect();
    let cure = match (on.manner, cures.is_empty()) {
        (LiftManner::MeetsInPlace, _) => "Move the body, or what it meets.".to_owned(),
        (LiftManner::Tilted, _) => "Try it dry along the drawn frames with a second person.".to_owned(),
        (_, true) => "Fix it another way: a frame on the wall that the body slides over.".to_owned(),
        (_, false) => format!("{}.", cures.join("; or ")),
    };
    vec![Finding { grade, code, subject: "cleat".to_owned(), message: message.to_owned(), numbers, cure, clause: None }]
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const LIFT_ON: crate::json::Calculation = crate::json::calculation!(
    lift_on: LiftOnInput => LiftOn, Document,
    "Whether a body can be lifted onto its cleat past everything around it: the way, the headroom, or what would help"
);
