//! The answer, the same shape for both standards.

use super::input::{JointInput, JointStandard};
use super::lay::Lay;
use super::{ec5, nds};
use crate::cite::{Clause, Source};
use crate::error::Result;
use crate::finding::{Caution, CautionText};
use crate::verdict::{Basis, Factor, Outcome, Verdict};

/// One yield mode of a joint.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct JointMode {
    /// The mode in words.
    pub name: &'static str,
    /// Its value for one fastener, N: reference value of the American standard, characteristic value of Eurocode 5.
    pub value_n: f64,
}

/// A joint checked to one standard.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Joint {
    /// Standard that answered.
    pub standard: JointStandard,
    /// Gap between the members, all layers together, mm.
    pub gap_mm: f64,
    /// Depth of the point behind the face of the main member, mm.
    pub penetration_mm: f64,
    /// Every yield mode; empty where the standard does not cover the lateral load.
    pub modes: Vec<JointMode>,
    /// The mode with the least value; empty where there is none.
    pub governing_mode: String,
    /// Lateral value of one fastener before factors, N.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub lateral_value_n: Option<f64>,
    /// Factors from that value to the lateral capacity of the whole joint.
    pub factors: Vec<Factor>,
    /// Lateral capacity of the whole joint, N; absent where it is not covered.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub lateral_capacity_n: Option<f64>,
    /// Capacity of the whole joint against being pulled apart: the least of thread or shank, head and steel as far as
    /// they are covered, N; absent where the withdrawal is not covered.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub axial_capacity_n: Option<f64>,
    /// Capacity at the angle of the resultant, N; absent where a load is not covered or there is none.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub combined_capacity_n: Option<f64>,
    /// Greatest utilisation of all loads; absent where one of them is not covered or without capacity.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub utilisation: Option<f64>,
    /// Checks of the loads, each with its working.
    pub loads: Vec<Verdict>,
    /// Requirements: penetration, far side, lead hole, thickness, distances, each a line of its own.
    pub requirements: Vec<Verdict>,
    /// All together: not met where any line is not met; else without an answer where a load has none; else met. A
    /// requirement without an answer stays visible in its line and is the user's to keep.
    pub outcome: Outcome,
    /// Cautions that belong to these numbers.
    pub cautions: Vec<CautionText>,
}

/// What one standard says about a joint.
pub(super) struct Findings {
    pub modes: Vec<JointMode>,
    pub governing_mode: String,
    pub lateral_value_n: Option<f64>,
    pub factors: Vec<Factor>,
    pub lateral_capacity_n: Option<f64>,
    pub axial_capacity_n: Option<f64>,
    pub combined_capacity_n: Option<f64>,
    pub loads: Vec<Verdict>,
    pub requirements: Vec<Verdict>,
}

/// A joint of screws or nails checked to the chosen standard, every mode, factor and requirement shown.
///
/// # Equation
/// That of the standard: for the American one [`dowel_shear`](crate::fasten::dowel_shear),
/// [`fastener_withdrawal`](crate::fasten::fastener_withdrawal), [`head_pull_through`](crate::fasten::head_pull_through),
/// [`combined_lateral_withdrawal`](crate::fasten::combined_lateral_withdrawal) with
/// [`connection_factors`](crate::fasten::connection_factors); for Eurocode 5 the calculations whose names begin with `ec5_`.
///
/// ```text
/// penetration p = L − t_side − gap      toe-nail: t_side = L/3, p = L cos 30° − L/3
/// NDS ASD:   capacity = n Z C_D C_M C_t C_eg C_tn            EC5:  capacity = n_ef k_mod F_v,Rk / γ_M
/// NDS LRFD:  the same with K_F φ λ in place of C_D
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | L | length of the fastener | mm | `fastener.length_mm` |
/// | n, n_ef | number, effective number | – | `count`, `layout` |
///
/// # Limits
/// Like fasteners in single shear that share the load evenly. A case that a standard does not cover is answered
/// `not_covered`, never as passed: a gap and a slanted fastener in Eurocode 5, end grain in Eurocode 5, a pocket in both.
/// In the American standard the group and the geometry factor, which fasteners of 1/4 in and more have, are taken as 1
/// and reported as not determined. Loads and capacities are comparable only within one standard: allowable stress design
/// takes loads as they are, load and resistance factor design and Eurocode 5 take factored loads. An engineer in charge decides.
///
/// # Errors
/// `out_of_range`, `not_finite`, `inconsistent`; `missing_field` for what the chosen standard needs and was not given;
/// `no_published_value` for a yield strength or moment outside the tables; `penetration_too_short`.
///
/// # Source
/// NDS 2018 chapters 11 and 12, AWC TR12; EN 1995-1-1 section 8. Checked by `verification/joint`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::*;
/// let wood = |thickness_mm| JointMember {
///     material: Ec5Material::Softwood,
///     specific_gravity: None,
///     characteristic_density_kg_m3: Some(350.0),
///     thickness_mm,
///     angle_to_grain_deg: 0.0,
/// };
/// let input = JointInput {
///     standard: JointStandard::Ec5,
///     fastener: JointFastener {
///         kind: JointFastenerKind::SmoothNail,
///         nominal_diameter_mm: 4.0,
///         root_diameter_mm: None,
///         shank_diameter_mm: None,
///         head_diameter_mm: 9.0,
///         length_mm: 100.0,
///         thread_length_mm: None,
///         tip_length_mm: None,
///         bending_yield_mpa: None,
///         tensile_strength_mpa: Some(600.0),
///         yield_moment_nmm: None,
///         declared_withdrawal_mpa: None,
///         declared_head_mpa: None,
///         tension_capacity_n: None,
///     },
///     count: 1,
///     side: wood(40.0),
///     main: wood(80.0),
///     gaps: vec![],
///     drive: JointDrive::SideGrain,
///     lead_hole_mm: None,
///     layout: None,
///     lateral_n: 300.0,
///     withdrawal_n: 0.0,
///     duration: JointDuration::Permanent,
///     time_effect: TimeEffect::DeadOnly,
///     climate: JointServiceClimate::Heated,
///     made: MemberMoisture::Dry,
///     temperature: TemperatureBand::UpTo100F,
///     gamma_m: 1.3,
/// };
/// let found = joint(&input)?;
/// assert_eq!(found.modes.len(), 6);
/// // The same joint over a wall lining: the standard has no rule for the gap.
/// let gaps = vec![JointGapLayer { name: "wall lining".to_owned(), thickness_mm: 12.5 }];
/// let over_lining = joint(&JointInput { gaps, ..input })?;
/// assert_eq!(over_lining.outcome, beamcraft_core::verdict::Outcome::NotCovered);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn joint(input: &JointInput) -> Result<Joint> {
    input.check()?;
    let lay = Lay::of(input)?;
    let found = match input.standard {
        JointStandard::NdsAsd | JointStandard::NdsLrfd => nds::findings(input, &lay)?,
        JointStandard::Ec5 => ec5::findings(input, &lay)?,
    };
    let has = |lines: &[Verdict], outcome| lines.iter().any(|line| line.outcome == outcome);
    let outcome = if has(&found.loads, Outcome::NotMet) || has(&found.requirements, Outcome::NotMet) {
        Outcome::NotMet
    } else if has(&found.loads, Outcome::NotCovered) {
        Outcome::NotCovered
    } else if has(&found.loads, Outcome::NotDetermined) {
        Outcome::NotDetermined
    } else {
        Outcome::Met
    };
    let answered = found.loads.iter().map(|line| line.utilisation);
    let utilisation = answered.collect::<Option<Vec<f64>>>().map(|shares| shares.into_iter().fold(0.0, f64::max));
    Ok(Joint {
        standard: input.standard,
        gap_mm: lay.gap_mm,
        penetration_mm: lay.penetration_mm,
        modes: found.modes,
        governing_mode: found.governing_mode,
        lateral_value_n: found.lateral_value_n,
        factors: found.factors,
        lateral_capacity_n: found.lateral_capacity_n,
        axial_capacity_n: found.axial_capacity_n,
        combined_capacity_n: found.combined_capacity_n,
        utilisation,
        loads: found.loads,
        requirements: found.requirements,
        outcome,
        cautions: vec![CautionText::from(Caution::Structure)],
    })
}

/// Whether the point stays inside the main member.
pub(super) fn far_side(penetration_mm: f64, thickness_mm: f64) -> Verdict {
    let clause = Clause::new(Source::Geometry, "");
    let name = "point inside the main member";
    let line = Verdict::compare(name, nds::SUBJECT, penetration_mm, thickness_mm, "mm", Basis::Derived, clause);
    // A length typed in inches rounds.
    let outcome = if penetration_mm <= thickness_mm + 1e-9 { Outcome::Met } else { Outcome::NotMet };
    Verdict { outcome, ..line }
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const JOINT: crate::json::Calculation = crate::json::calculation!(
    joint: JointInput => Joint, Document,
    "A joint of screws or nails checked to the chosen standard: every mode, factor, capacity and requirement"
);
