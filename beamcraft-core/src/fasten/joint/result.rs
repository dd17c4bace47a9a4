//! The answer, the same shape for both standards.

use super::input::JointInput;
use super::kinds::JointStandard;
use super::lay::Lay;
use super::{ec5, nds};
use crate::cite::{Clause, Source};
use crate::error::{Detail, Error, Fault, Result};
use crate::finding::{Caution, CautionText, Quantity};
use crate::limits::CONNECTION_CAPACITY;
use crate::verdict::{Basis, Factor, Outcome, Verdict};

/// One yield mode of a joint.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct JointMode {
    /// The mode in words.
    pub name: &'static str,
    /// Its value for one fastener in all its shear planes, N: reference value of the American standard, characteristic
    /// value of Eurocode 5.
    pub value_n: f64,
    /// Reduction term R_d that its yield load was divided by (NDS Table 12.3.1B).
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub reduction: Option<f64>,
    /// Part of the value that is the rope effect, N (EN 1995-1-1 8.2.2(2)).
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub rope_n: Option<f64>,
}

/// A joint checked to one standard.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Joint {
    /// Standard that answered.
    pub standard: JointStandard,
    /// Number of shear planes.
    pub shear_planes: u32,
    /// Gap between the members of one plane, all layers together, along the fastener, mm.
    pub gap_mm: f64,
    /// Depth of the point behind the face of the last member, mm.
    pub penetration_mm: f64,
    /// Load of all fasteners across their axis, N: the lateral load, for a pocket screw what its slant makes of both loads.
    pub across_n: f64,
    /// Load of all fasteners along their axis, N.
    pub along_n: f64,
    /// Intermediate values of one fastener: diameter in the equations, strengths, lengths.
    pub working: Vec<Quantity>,
    /// Every yield mode; empty where the standard does not cover the lateral load, or its value is declared.
    pub modes: Vec<JointMode>,
    /// The mode with the least value; empty where there is none.
    pub governing_mode: String,
    /// Lateral value of one fastener before factors, N.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub lateral_value_n: Option<f64>,
    /// Factors from that value to the lateral capacity of the whole joint.
    pub factors: Vec<Factor>,
    /// Lateral capacity of the whole joint, N: allowable, factored or design value by the standard; absent where it is not
    /// covered.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub lateral_capacity_n: Option<f64>,
    /// Capacity of the whole joint along the fasteners: the least of thread or shank, head and steel as far as they are
    /// covered, N; absent where the withdrawal is not covered.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub axial_capacity_n: Option<f64>,
    /// Capacity at the angle of the resultant, N; absent where a load is not covered or there is none.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub combined_capacity_n: Option<f64>,
    /// Greatest utilisation of all loads; absent where one of them is not covered or without capacity.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub utilisation: Option<f64>,
    /// Slip modulus of one fastener in one shear plane, N/mm: γ of the American standard (11.3.6, from 1/4 in on), K_ser of
    /// Eurocode 5 (Table 7.1, with mean densities given).
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub slip_modulus_n_per_mm: Option<f64>,
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

/// Why a standard gives no number.
#[derive(Clone, Debug)]
pub(super) struct Silence {
    pub outcome: Outcome,
    pub why: String,
}

impl Silence {
    /// The standard has no rule.
    pub(super) fn not_covered(why: impl Into<String>) -> Self {
        Self { outcome: Outcome::NotCovered, why: why.into() }
    }

    /// The standard has a rule, but what it needs was not given.
    pub(super) fn not_determined(why: impl Into<String>) -> Self {
        Self { outcome: Outcome::NotDetermined, why: why.into() }
    }

    /// The line of a check without a number.
    pub(super) fn line(&self, name: &str, clause: Clause) -> Verdict {
        Verdict::without_answer(name, SUBJECT, self.outcome, clause, self.why.clone())
    }
}

/// A number, or why there is none.
pub(super) type Answer<T> = core::result::Result<T, Silence>;

/// What the lines are about.
pub(super) const SUBJECT: &str = "fasteners";

/// What goes with a declared lateral value.
pub(super) const DECLARED: &str =
    "The declared value must hold for just this joint: its members, grain, slant and the layers between.";

/// The capacities across and along the fastener, where both loads act and both capacities can be combined.
pub(super) fn acting_together(loads_n: [f64; 2], capacities_n: [Option<f64>; 2]) -> Option<[f64; 2]> {
    let [Some(lateral_n), Some(axial_n)] = capacities_n else { return None };
    let both_act = loads_n.iter().all(|load| *load > 0.0);
    let range = CONNECTION_CAPACITY.low..=CONNECTION_CAPACITY.high;
    (both_act && range.contains(&lateral_n) && range.contains(&axial_n)).then_some([lateral_n, axial_n])
}

/// A line that compares.
pub(super) fn line(name: &str, demand: f64, capacity: f64, unit: &'static str, clause: Clause) -> Verdict {
    Verdict::compare(name, SUBJECT, demand, capacity, unit, Basis::Clause, clause)
}

/// A line in words.
pub(super) fn words(name: &str, outcome: Outcome, clause: Clause, remark: impl Into<String>) -> Verdict {
    Verdict::without_answer(name, SUBJECT, outcome, clause, remark)
}

/// A least length against the one there is. What was typed in inches rounds.
pub(super) fn least_length(name: &str, least_mm: f64, there_mm: f64, clause: Clause) -> Verdict {
    let outcome = if least_mm <= there_mm + 1e-9 { Outcome::Met } else { Outcome::NotMet };
    Verdict { outcome, ..line(name, least_mm, there_mm, "mm", clause) }
}

/// A fault of a part of the input, with its path.
pub(super) fn at<T>(path: &'static str, result: core::result::Result<T, Fault>) -> Result<T> {
    result.map_err(|fault| Error::one(Detail::from(Fault { field: path, ..fault })))
}

/// The mode with the least value; on a tie the first.
pub(super) fn least_mode(modes: &[JointMode]) -> (&'static str, f64) {
    let least = |least: (&'static str, f64), mode: &JointMode| {
        if mode.value_n < least.1 { (mode.name, mode.value_n) } else { least }
    };
    modes.iter().fold(("", f64::INFINITY), least)
}

/// What one standard says about a joint.
pub(super) struct Findings {
    pub working: Vec<Quantity>,
    pub modes: Vec<JointMode>,
    pub governing_mode: String,
    pub lateral_value_n: Option<f64>,
    pub factors: Vec<Factor>,
    pub lateral_capacity_n: Option<f64>,
    pub axial_capacity_n: Option<f64>,
    pub combined_capacity_n: Option<f64>,
    pub slip_modulus_n_per_mm: Option<f64>,
    pub loads: Vec<Verdict>,
    pub requirements: Vec<Verdict>,
}

/// A joint of screws, nails, bolts or dowels checked to the chosen standard, every mode, factor and requirement shown.
///
/// # Equation
/// That of the standard: for the American one [`dowel_shear`](crate::fasten::dowel_shear),
/// [`dowel_double_shear`](crate::fasten::dowel_double_shear), [`fastener_withdrawal`](crate::fasten::fastener_withdrawal),
/// [`head_pull_through`](crate::fasten::head_pull_through),
/// [`combined_lateral_withdrawal`](crate::fasten::combined_lateral_withdrawal) with
/// [`connection_factors`](crate::fasten::connection_factors), [`group_action_factor`](crate::fasten::group_action_factor)
/// and [`geometry_factor`](crate::fasten::geometry_factor); for Eurocode 5 the calculations whose names begin with `ec5_`.
///
/// ```text
/// penetration p = L − t_side − gap      toe-nail: t_side = L/3, p = L cos 30° − L/3      double shear: − t_main − 2 gap
/// NDS ASD:   capacity = n Z C_D C_M C_t C_g C_Δ C_eg C_tn      EC5:  capacity = n_ef k_mod F_v,Rk / γ_M
/// NDS LRFD:  the same with K_F φ λ in place of C_D
/// pocket at α:  across the axis √(V² + (T sin α)²), along it T cos α; V in the plane of the slant: V cos α + T sin α, and
///               T cos α + V sin α where it pulls on the screw
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | L | length of the fastener | mm | `fastener.length_mm` |
/// | n, n_ef | number, effective number | – | `count`, `layout` |
/// | V, T | lateral load and pull | N | `lateral_n`, `withdrawal_n` |
/// | α | slant of a pocket screw | degree | `pocket.angle_deg` |
///
/// # Limits
/// Like fasteners that share the load as the standard's group rule has it, in one shear plane or two. A case that a
/// standard does not cover is answered `not_covered`, never as passed: a gap, a slanted nail, screws and smooth nails in end grain in Eurocode 5;
/// the head on the shoulder of a pocket, unless its pull-through is declared; bolts along their axis in the American
/// standard. In double shear the lesser side member counts on both sides (NDS 12.3.8). Where the load runs at an angle to
/// the grain, the fasteners are looked at as rows along the grain and across it, and the lesser group factor counts. Below 1/4 in the distances of the American standard
/// are recommendations and stay without an outcome. The strength of steel plates and of members at the joint is not looked
/// at. Loads and capacities are comparable only within one standard: allowable stress design takes loads as they are, load
/// and resistance factor design and Eurocode 5 take factored loads. An engineer in charge decides.
///
/// # Errors
/// `out_of_range`, `not_finite`, `inconsistent`; `missing_field` for what the chosen standard needs and was not given;
/// `no_published_value` for a yield strength or moment outside the tables; `penetration_too_short`.
///
/// # Source
/// NDS 2018 chapters 11 and 12, AWC TR12; EN 1995-1-1 sections 7.1 and 8. What a slant makes of the loads is statics (NDS
/// 12.3.9 checks the same parts). Checked by `verification/joint`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::*;
/// let wood = |thickness_mm| JointMember {
///     characteristic_density_kg_m3: Some(350.0),
///     ..JointMember::plain(JointMaterial::Softwood, thickness_mm, 0.0)
/// };
/// let nail = JointFastener::plain(JointFastenerKind::SmoothNail, 4.0, 9.0, 100.0);
/// let input = JointInput {
///     lateral_n: 300.0,
///     ..JointInput::plain(
///         JointStandard::Ec5,
///         JointFastener { tensile_strength_mpa: Some(600.0), ..nail },
///         wood(40.0),
///         wood(80.0),
///     )
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
    let (across_n, along_n) = input.loads_n();
    Ok(Joint {
        standard: input.standard,
        shear_planes: input.planes(),
        gap_mm: lay.gap_mm,
        penetration_mm: lay.penetration_mm,
        across_n,
        along_n,
        working: found.working,
        modes: found.modes,
        governing_mode: found.governing_mode,
        lateral_value_n: found.lateral_value_n,
        factors: found.factors,
        lateral_capacity_n: found.lateral_capacity_n,
        axial_capacity_n: found.axial_capacity_n,
        combined_capacity_n: found.combined_capacity_n,
        utilisation,
        slip_modulus_n_per_mm: found.slip_modulus_n_per_mm,
        loads: found.loads,
        requirements: found.requirements,
        outcome,
        cautions: vec![CautionText::from(Caution::Structure)],
    })
}

/// Whether the point stays inside the last member.
pub(super) fn far_side(lay: &Lay) -> Verdict {
    let clause = Clause::new(Source::Geometry, "");
    let inside = least_length("point inside the last member", lay.penetration_mm, lay.room_mm, clause);
    Verdict { basis: Basis::Derived, ..inside }
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const JOINT: crate::json::Calculation = crate::json::calculation!(
    joint: JointInput => Joint, Document,
    "A joint of screws, nails, bolts or dowels checked to the chosen standard: every mode, factor, capacity and requirement"
);
