//! Other fixings than a cleat: a frame on the wall or under the ceiling that the body slides over.

use crate::cite::{Clause, Source};
use crate::error::{Error, Result};
use crate::fasten::{Joint, JointDuration, JointFastenerKind, JointInput, joint};
use crate::finding::{Caution, CautionText, Finding, FindingCode, Grade, Quantity};
use crate::limits::{faults_at, limited};
use crate::numeric::real::sin_cos_deg;
use crate::statics::{ShareBetweenSupports, ShareBetweenSupportsInput, share_between_supports};
use crate::verdict::Outcome;

/// A body that slides over a frame, and how both are held.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<FrameFixingInput>))]
pub struct FrameFixingInput {
    /// Weight of body and frame, and what stands on it, N.
    pub load_n: f64,
    /// Place of that load along the body, mm.
    pub along_mm: f64,
    /// Pull at the body away from the frame, such as somebody's hand at its edge, N.
    pub pull_n: f64,
    /// Studs or joists that the frame is screwed to, along the body, mm.
    pub supports_mm: Vec<f64>,
    /// Where the frame is.
    pub frame: FramePlace,
    /// Joint of the frame to one stud or joist; loads of its own that are given there act besides.
    pub support_joint: JointInput,
    /// Joint of the body to the frame, all its cross fasteners together; loads of its own that are given there act besides.
    pub cross_joint: JointInput,
}

limited!(FrameFixingInput { load_n: FORCE, along_mm: SIGNED_LENGTH, pull_n: FORCE });

/// Where a frame is fixed.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum FramePlace {
    /// A ledger or frame on the wall; the body lies on it.
    Wall(WallFrame),
    /// A nailer under joists; the body hangs from it by its cross fasteners.
    Ceiling(CeilingFrame),
}

/// A ledger or frame on the wall.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<WallFrame>))]
pub struct WallFrame {
    /// Distance of the load from the wall, mm.
    pub out_mm: f64,
    /// Height of the screws above the lower edge of the frame, mm: the arm that holds it to the wall.
    pub row_up_mm: f64,
}

limited!(WallFrame { out_mm: LENGTH, row_up_mm: LEVER });

/// A nailer under a ceiling.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<CeilingFrame>))]
pub struct CeilingFrame {
    /// Slope of the ceiling across the body, degrees; 0, the default, is level.
    #[cfg_attr(feature = "json", serde(default))]
    pub slope_deg: f64,
}

limited!(CeilingFrame { slope_deg: SLOPE });

/// A frame and what holds it and the body.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct FrameFixing {
    /// How the load is shared by studs or joists.
    pub shares: ShareBetweenSupports,
    /// Across the fasteners of the most loaded support, N.
    pub support_lateral_n: f64,
    /// Along the fasteners of the most loaded support, pulling, N.
    pub support_withdrawal_n: f64,
    /// Across the cross fasteners, all together, N.
    pub cross_lateral_n: f64,
    /// The joint at the most loaded support.
    pub support: Joint,
    /// The joint of body and frame.
    pub cross: Joint,
    /// Both together.
    pub outcome: Outcome,
    /// What stands in the way and what to see to.
    pub findings: Vec<Finding>,
    /// Cautions that belong to these numbers.
    pub cautions: Vec<CautionText>,
}

/// Whether a frame on the wall or a nailer under joists holds a body that slides over it.
///
/// # Equation
/// ```text
/// wall     at the most loaded stud, S: across S, pulling (S e + p r)/r; cross fasteners: p
/// ceiling  at the most loaded joist, S: pulling S cos a, across S sin a; cross fasteners: load + p
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | S | share of the most loaded support | N | `shares.greatest_n` |
/// | e | distance of the load from the wall | mm | `frame.wall.out_mm` |
/// | r | screws above the lower edge of the frame | mm | `frame.wall.row_up_mm` |
/// | p | pull away from the frame | N | `pull_n` |
/// | a | slope of the ceiling | degree | `frame.ceiling.slope_deg` |
///
/// The whole pull is put on the most loaded support. On the wall the body lies on the frame, and its cross fasteners hold it
/// against a pull alone; under a ceiling they carry all of it across. There is no place for glue here: a fixing by adhesive
/// alone is not covered by the standards of these joints and is never passed. Smooth nails that a lasting load pulls
/// out of the wood do not pass either, whatever their tabulated value.
///
/// # Limits
/// A stiff frame on at least two supports; its own bending is `beam_on_supports`. Every joint by the standard it names.
///
/// # Errors
/// `out_of_range`, `not_finite`, `inconsistent`, each with its path; what `share_between_supports` and `joint` refuse.
///
/// # Source
/// Equilibrium, derived in the theory pages; the joints by `NDS 2018` or `EN 1995-1-1`; no smooth nails and no glue alone in
/// lasting tension is common practice. Checked by `verification/frame_fixing`.
///
/// # Examples
/// ```
/// # #[cfg(feature = "json")] {
/// use beamcraft_core::site::{frame_fixing, FrameFixingInput};
/// let input: FrameFixingInput = beamcraft_core::json::read(r#"{
///   "load_n": 400, "along_mm": 900, "pull_n": 50, "supports_mm": [300, 900, 1500], "frame": {"ceiling": {}},
///   "support_joint": {
///     "standard": "nds_asd", "count": 2, "lateral_n": 0, "withdrawal_n": 0,
///     "fastener": {"kind": "lag_screw", "nominal_diameter_mm": 9.525, "root_diameter_mm": 6.731, "head_diameter_mm": 14.3,
///                  "length_mm": 100, "tension_capacity_n": 3000},
///     "side": {"material": "softwood", "specific_gravity": 0.42, "thickness_mm": 38, "angle_to_grain_deg": 90},
///     "main": {"material": "softwood", "specific_gravity": 0.42, "thickness_mm": 184, "angle_to_grain_deg": 90}},
///   "cross_joint": {
///     "standard": "nds_asd", "count": 8, "lateral_n": 0, "withdrawal_n": 0,
///     "fastener": {"kind": "wood_screw", "nominal_diameter_mm": 4.826, "root_diameter_mm": 3.861, "head_diameter_mm": 9.2,
///                  "length_mm": 50},
///     "side": {"material": "softwood", "specific_gravity": 0.55, "thickness_mm": 20, "angle_to_grain_deg": 90},
///     "main": {"material": "softwood", "specific_gravity": 0.42, "thickness_mm": 60, "angle_to_grain_deg": 90}}
/// }"#)?;
/// let held = frame_fixing(&input)?;
/// // Three joists share the load evenly; the pull comes on top at one.
/// assert!((held.support_withdrawal_n - (400.0 / 3.0 + 50.0)).abs() < 1e-9);
/// assert_eq!(held.cross_lateral_n, 450.0);
/// # }
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn frame_fixing(input: &FrameFixingInput) -> Result<FrameFixing> {
    check(input)?;
    let shares = share_between_supports(&ShareBetweenSupportsInput {
        load_n: input.load_n,
        load_at_mm: input.along_mm,
        supports_mm: input.supports_mm.clone(),
    })?;
    let (support_lateral_n, support_withdrawal_n, cross_lateral_n) = loads(input, shares.greatest_n);
    let support = loaded(&input.support_joint, support_lateral_n, support_withdrawal_n, "support_joint")?;
    let cross = loaded(&input.cross_joint, cross_lateral_n, 0.0, "cross_joint")?;
    let smooth = smooth_nails(input, support_withdrawal_n);
    let outcome = if smooth.is_some() { Outcome::NotMet } else { worse(support.outcome, cross.outcome) };
    let mut findings: Vec<_> = smooth.into_iter().collect();
    findings.extend(lifted_off(&shares));
    findings.extend(fails("frame", &support));
    findings.extend(fails("cross fasteners", &cross));
    Ok(FrameFixing {
        shares,
        support_lateral_n,
        support_withdrawal_n,
        cross_lateral_n,
        support,
        cross,
        outcome,
        findings,
        cautions: [Caution::Structure, Caution::Lifting, Caution::Services].map(CautionText::from).to_vec(),
    })
}

fn check(input: &FrameFixingInput) -> Result<()> {
    let mut faults = faults_at("", input);
    faults.extend(match &input.frame {
        FramePlace::Wall(wall) => faults_at("frame.wall", wall),
        FramePlace::Ceiling(ceiling) => faults_at("frame.ceiling", ceiling),
    });
    Error::unless_empty(faults)
}

/// Across and along the fasteners of the most loaded support, and across the cross fasteners, N.
fn loads(input: &FrameFixingInput, share_n: f64) -> (f64, f64, f64) {
    match input.frame {
        FramePlace::Wall(WallFrame { out_mm, row_up_mm }) => {
            (share_n, share_n * out_mm / row_up_mm + input.pull_n, input.pull_n)
        }
        FramePlace::Ceiling(CeilingFrame { slope_deg }) => {
            let (sine, cosine) = sin_cos_deg(slope_deg);
            (share_n * sine, share_n * cosine + input.pull_n, input.load_n + input.pull_n)
        }
    }
}

/// A joint with loads on top of its own.
fn loaded(given: &JointInput, lateral_n: f64, withdrawal_n: f64, path: &str) -> Result<Joint> {
    let input = JointInput {
        lateral_n: given.lateral_n + lateral_n,
        withdrawal_n: given.withdrawal_n + withdrawal_n,
        ..given.clone()
    };
    joint(&input).map_err(|error| error.within(path))
}

fn worse(one: Outcome, other: Outcome) -> Outcome {
    match (one, other) {
        (Outcome::NotMet, _) | (_, Outcome::NotMet) => Outcome::NotMet,
        (Outcome::Met, open) => open,
        (open, _) => open,
    }
}

/// Smooth nails under a load that lasts and pulls them out.
fn smooth_nails(input: &FrameFixingInput, withdrawal_n: f64) -> Option<Finding> {
    let given = &input.support_joint;
    let lasts = matches!(given.duration, JointDuration::Permanent | JointDuration::TenYears);
    let pulled_n = given.withdrawal_n + withdrawal_n;
    (given.fastener.kind == JointFastenerKind::SmoothNail && lasts && pulled_n > 0.0).then(|| Finding {
        grade: Grade::Stop,
        code: FindingCode::CheckFails,
        subject: "frame".to_owned(),
        message: "Smooth nails creep out of the wood under a pull that lasts.".to_owned(),
        numbers: vec![Quantity::new("lasting pull", pulled_n, "N")],
        cure: "Screws or lag screws.".to_owned(),
        clause: Some(Clause::new(Source::CommonPractice, "")),
    })
}

/// A support that the load lifts off.
fn lifted_off(shares: &ShareBetweenSupports) -> Option<Finding> {
    (shares.least_n < 0.0).then(|| Finding {
        grade: Grade::Caution,
        code: FindingCode::CheckFails,
        subject: "frame".to_owned(),
        message: "The load lies so far to one side that the frame pries at the other.".to_owned(),
        numbers: vec![Quantity::new("least share", shares.least_n, "N")],
        cure: "One more stud or joist on the loaded side.".to_owned(),
        clause: Some(Clause::new(Source::Statics, "")),
    })
}

fn fails(subject: &str, joint: &Joint) -> Option<Finding> {
    let not_met: Vec<&str> = joint
        .loads
        .iter()
        .chain(&joint.requirements)
        .filter(|verdict| verdict.outcome == Outcome::NotMet)
        .map(|verdict| verdict.name.as_str())
        .collect();
    (!not_met.is_empty()).then(|| Finding {
        grade: Grade::Stop,
        code: FindingCode::CheckFails,
        subject: subject.to_owned(),
        message: format!("Not met: {}.", not_met.join("; ")),
        numbers: joint.utilisation.map(|used| Quantity::new("utilisation", used, "")).into_iter().collect(),
        cure: "More or thicker fasteners, one more stud or joist, or less load.".to_owned(),
        clause: None,
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const FRAME_FIXING: crate::json::Calculation = crate::json::calculation!(
    frame_fixing: FrameFixingInput => FrameFixing, Document,
    "Whether a frame on the wall or a nailer under joists holds a body that slides over it"
);

#[cfg(test)]
#[path = "frame_fixing_tests.rs"]
mod tests;
