//! How much may stand on a body, or push on its front edge, before a check is beyond its capacity.

use super::{is_beyond, words};
use crate::error::Error;
use crate::finding::{Caution, CautionText};
use crate::limits::FORCE;
use crate::plan::{BeamSpec, Plan, plan};
use crate::verdict::Verdict;

/// Which load is looked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum SizedLoad {
    /// Things standing on the whole top for years; `load.on_top_n_per_m2` of the spec.
    OnTop,
    /// A push straight down on the front edge at the worst place; `load.front_edge_n` of the spec.
    FrontEdge,
}

/// A job, and the load that is looked for.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct GreatestLoadInput {
    /// The job; its other loads stay as they are.
    pub spec: BeamSpec,
    /// The load that is looked for; what the spec gives for it is left aside.
    pub load: SizedLoad,
}

/// A check at the greatest load.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct LoadAtLimit {
    /// The check, with its part.
    pub check: String,
    /// Demand over capacity at the greatest load.
    pub utilisation: f64,
}

/// The greatest load, and what governs it.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct GreatestLoad {
    /// The greatest load with every check within its capacity, in `unit`; absent when one is beyond it without any load, or none
    /// is reached at all.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub load: Option<f64>,
    /// Unit of the load.
    pub unit: &'static str,
    /// The check that is beyond its capacity next; empty when none is reached.
    pub governing: String,
    /// Checks at the greatest load, the most used first.
    pub checks: Vec<LoadAtLimit>,
    /// Checks that are beyond their capacity whatever the load, such as the distance to heat: the load does not cure them.
    pub beyond_without_load: Vec<String>,
    /// Checks without an answer: they are not part of this load and must be answered by somebody.
    pub without_answer: Vec<String>,
    /// Cautions that travel with the load.
    pub cautions: Vec<CautionText>,
}

/// The most that may stand on a body, or push on its front edge, with every check of the plan within its capacity.
///
/// # Equation
/// ```text
/// the greatest load with  demand ≤ capacity  for every check that has both, found by halving to a millionth
/// ```
///
/// # Limits
/// What the plan does not check is not part of it, and what it leaves without an answer is listed. Capacities that are choices
/// (a fifth of clear wood) make the load a choice too. A maker who states a capacity states it with its conditions: these
/// studs, these screws, this wood.
///
/// # Errors
/// All faults of the spec as in [`plan`].
///
/// # Source
/// That of the checks. Checked by `verification/sizing` and by planning just below and above the answer.
///
/// # Examples
/// ```
/// use beamcraft_core::sizing::{greatest_load, GreatestLoadInput, SizedLoad};
/// # #[cfg(feature = "json")] {
/// let spec = beamcraft_core::json::read(include_str!("../../examples/specs/ash_shelf_beam.json"))?;
/// let found = greatest_load(&GreatestLoadInput { spec, load: SizedLoad::OnTop })?;
/// assert!(found.load.is_some_and(|load| load > 718.0), "it holds what the spec asks for");
/// # }
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn greatest_load(input: &GreatestLoadInput) -> Result<GreatestLoad, Error> {
    let search = Search { spec: input.spec.clone(), load: input.load };
    let empty = search.plan(0.0)?;
    let already: Vec<String> = empty.checks.iter().filter(|check| is_beyond(check)).map(words).collect();
    let most = FORCE.high;
    let stopped = |plan: &Plan| first_beyond(plan, &already).map(words);
    // Doubles until a check gives way, then halves between.
    let (mut low, mut high) = (0.0, START);
    let mut governing = String::new();
    while high <= most {
        if let Some(check) = stopped(&search.plan(high)?) {
            governing = check;
            break;
        }
        (low, high) = (high, 2.0 * high);
    }
    if !governing.is_empty() {
        while high - low > high * FINE {
            let middle = 0.5 * (low + high);
            match stopped(&search.plan(middle)?) {
                Some(check) => (high, governing) = (middle, check),
                None => low = middle,
            }
        }
    }
    // With a check that fails unloaded there is no load to state, unless no load would ever change it.
    let loaded = search.plan(START)?;
    let cured = |check: &&Verdict| is_beyond(check) && demand_of(&loaded, check) != check.demand;
    let reached = !governing.is_empty() && !empty.checks.iter().any(|check| cured(&check));
    let at_limit = search.plan(low)?;
    Ok(GreatestLoad {
        load: reached.then_some(low),
        unit: search.unit(),
        governing,
        checks: used(&at_limit, &already),
        beyond_without_load: already,
        without_answer: open(&at_limit),
        cautions: vec![CautionText::from(Caution::Structure)],
    })
}

/// First load tried, N or N/m².
const START: f64 = 16.0;

/// Width of the last bracket over its upper end.
const FINE: f64 = 1.0e-6;

/// A spec with its load to be set.
struct Search {
    spec: BeamSpec,
    load: SizedLoad,
}

impl Search {
    fn plan(&self, load: f64) -> Result<Plan, Error> {
        let mut spec = self.spec.clone();
        match self.load {
            SizedLoad::OnTop => spec.load.on_top_n_per_m2 = load,
            SizedLoad::FrontEdge => spec.load.front_edge_n = load,
        }
        plan(&spec).map_err(|error| error.within("spec"))
    }

    const fn unit(&self) -> &'static str {
        match self.load {
            SizedLoad::OnTop => "N/m2",
            SizedLoad::FrontEdge => "N",
        }
    }
}

/// The first check beyond its capacity that was within it without load.
fn first_beyond<'a>(plan: &'a Plan, already: &[String]) -> Option<&'a Verdict> {
    plan.checks.iter().find(|check| is_beyond(check) && !already.contains(&words(check)))
}

/// Demand of the same check in another plan.
fn demand_of(plan: &Plan, check: &Verdict) -> Option<f64> {
    plan.checks.iter().find(|other| words(other) == words(check)).and_then(|other| other.demand)
}

/// Checks by their utilisation, the most used first, without those that are beyond whatever the load.
fn used(plan: &Plan, already: &[String]) -> Vec<LoadAtLimit> {
    let of = |check: &Verdict| Some(LoadAtLimit { check: words(check), utilisation: check.utilisation? });
    let mut used: Vec<_> = plan.checks.iter().filter_map(of).filter(|one| !already.contains(&one.check)).collect();
    used.sort_by(|a, b| b.utilisation.total_cmp(&a.utilisation));
    used
}

/// Checks without an answer.
fn open(plan: &Plan) -> Vec<String> {
    let open = |check: &&Verdict| check.utilisation.is_none() && !is_beyond(check);
    plan.checks.iter().filter(open).map(words).collect()
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const GREATEST_LOAD: crate::json::Calculation = crate::json::calculation!(
    greatest_load: GreatestLoadInput => GreatestLoad, Document,
    "The most that may stand on a body, or push on its front edge, with every check within its capacity"
);

#[cfg(test)]
#[cfg(feature = "json")]
mod tests {
    use super::*;

    fn input(load: SizedLoad) -> GreatestLoadInput {
        let spec = crate::json::read(include_str!("../../examples/specs/ash_shelf_beam.json")).expect("a spec");
        GreatestLoadInput { spec, load }
    }

    #[test]
    fn just_below_it_holds_and_just_above_it_does_not() {
        for load in [SizedLoad::OnTop, SizedLoad::FrontEdge] {
            let input = input(load);
            let found = greatest_load(&input).unwrap();
            let greatest = found.load.expect("a load");
            let search = Search { spec: input.spec, load };
            let beyond = |load: f64| {
                search.plan(load).unwrap().checks.iter().filter(|check| is_beyond(check)).map(words).collect::<Vec<_>>()
            };
            assert_eq!(beyond(greatest * (1.0 - 1e-5)), found.beyond_without_load);
            assert!(beyond(greatest * (1.0 + 1e-5)).contains(&found.governing), "{found:?}");
            assert!(found.checks.first().is_some_and(|check| check.utilisation > 0.999), "{found:?}");
            assert!(found.without_answer.iter().any(|check| check.contains("lining")));
        }
    }

    #[test]
    fn a_heavier_body_may_carry_less() {
        let light = input(SizedLoad::OnTop);
        let mut heavy = light.clone();
        heavy.spec.wood.species = "Hickory, shagbark".to_owned();
        heavy.spec.cleat.species = Some("white ash".to_owned());
        let of = |input: &GreatestLoadInput| greatest_load(input).unwrap().load.unwrap();
        let (light, heavy) = (of(&light), of(&heavy));
        assert!(heavy <= light, "{heavy} {light}");
    }

    #[test]
    fn without_a_wall_nothing_that_depends_on_studs_limits_it() {
        let mut input = input(SizedLoad::OnTop);
        input.spec.site = None;
        let found = greatest_load(&input).unwrap();
        assert!(found.without_answer.iter().any(|check| check.contains("wall screws")), "{found:?}");
    }

    #[test]
    fn a_wrong_spec_is_told_with_its_path() {
        let mut input = input(SizedLoad::FrontEdge);
        input.spec.wood.species = "unobtainium".to_owned();
        assert_eq!(greatest_load(&input).expect_err("refused").field(), "spec.wood.species");
    }
}
