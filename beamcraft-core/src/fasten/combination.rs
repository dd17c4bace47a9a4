//! Load combinations with the duration of each, by the chosen standard: which one asks most of a joint or a part of wood.

use super::ec5::kmod;
use super::{Ec5LoadDuration, Ec5Material, Ec5ServiceClass, JointStandard, LoadDuration};
use crate::cite::{Clause, Source};
use crate::error::{Error, Fault, Result};
use crate::finding::{Caution, CautionText};
use crate::limits::{faults_at, limited};

/// Whether a load on one spot comes while the spread load is there.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum LoadsTogether {
    /// One or the other, as load standards take a concentrated beside a uniform load (EN 1991-1-1, 6.2.1(3)).
    #[default]
    Apart,
    /// Both at once.
    AtOnce,
}

/// What each load alone does to one part, all in the same direction, and the standard.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<LoadCombinationsInput>))]
pub struct LoadCombinationsInput {
    /// The standard.
    pub standard: JointStandard,
    /// Force in the part by own weight, N.
    pub own_n: f64,
    /// Force by things that stand there for months or years, N; 0, the default, is none.
    #[cfg_attr(feature = "json", serde(default))]
    pub stored_n: f64,
    /// Force by somebody who leans or pushes, N; 0, the default, is none.
    #[cfg_attr(feature = "json", serde(default))]
    pub push_n: f64,
    /// Force by a blow, N; 0, the default, is none.
    #[cfg_attr(feature = "json", serde(default))]
    pub blow_n: f64,
    /// Whether the push comes while things stand there.
    #[cfg_attr(feature = "json", serde(default))]
    pub together: LoadsTogether,
    /// Service class, for Eurocode 5 only; a heated room is 1.
    #[cfg_attr(feature = "json", serde(default = "heated_room"))]
    pub service_class: Ec5ServiceClass,
    /// Material, for Eurocode 5 only.
    #[cfg_attr(feature = "json", serde(default = "softwood"))]
    pub material: Ec5Material,
}

limited!(LoadCombinationsInput { own_n: FORCE, stored_n: FORCE, push_n: FORCE, blow_n: FORCE });

#[cfg(feature = "json")]
fn heated_room() -> Ec5ServiceClass {
    Ec5ServiceClass::ServiceClass1
}

#[cfg(feature = "json")]
fn softwood() -> Ec5Material {
    Ec5Material::Softwood
}

/// One combination.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct LoadCombination {
    /// Its loads, in words.
    pub name: &'static str,
    /// Factor of the own weight.
    pub own_factor: f64,
    /// Factor of what stands there.
    pub stored_factor: f64,
    /// Factor of the push.
    pub push_factor: f64,
    /// Factor of the blow.
    pub blow_factor: f64,
    /// Combined force, N.
    pub force_n: f64,
    /// Factor of strength for the shortest of its loads: C_D, lambda or k_mod.
    pub duration_factor: f64,
    /// Combined force over the duration factor, N: the strength, before that factor, that it asks for.
    pub asked_n: f64,
    /// Rule of the combination.
    pub clause: Clause,
}

/// Every combination, and which one governs.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct LoadCombinations {
    /// Combinations of the loads there are.
    pub combinations: Vec<LoadCombination>,
    /// Place of the one that asks most, from 0.
    pub governing_index: u32,
    /// Its loads, in words.
    pub governing: &'static str,
    /// The strength, before the duration factor, that it asks for, N.
    pub asked_n: f64,
    /// Cautions that belong to these numbers.
    pub cautions: Vec<CautionText>,
}

/// Which combination of own weight, stored things, a push and a blow asks most of wood, whose strength depends on how long a load lasts.
///
/// # Equation
/// ```text
/// asked = Σ factor · force / duration factor        governing: the largest
/// ASD    D | D + stored | D + push | D + stored + blow                              C_D 0.9, 0.9, 1.0, 1.6
/// LRFD   1.4 D | 1.2 D + 1.6 stored | 1.2 D + 1.6 push | 1.2 D + 1.6 (stored + blow)   lambda 0.6, 0.7, 0.8, 1.25
/// EC5    1.35 G | 1.35 G + 1.5 stored | 1.35 G + 1.5 push | G + 0.8 stored + A       k_mod permanent, long, short, instantaneous
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | D, G | own weight | N | `own_n` |
/// | A | blow | N | `blow_n` |
///
/// The shortest load of a combination decides on the duration factor of all of it. What is stored counts as permanent by the American
/// standard, since it lies for more than ten years in sum. With `at_once` the push comes beside the stored things too.
///
/// # Limits
/// Forces that act the same way; what lifts or turns the other way is a case of its own. The blow by Eurocode is an accidental
/// action, whose partial factor of the material is 1.0 in place of 1.3: not applied here. C_D of a blow is that of connections.
///
/// # Errors
/// `out_of_range`, `not_finite`; `no_published_value` for a panel in a service class it is not made for.
///
/// # Source
/// NDS 2018, Table 2.3.2 and Table N3; ASCE 7, 2.3 and 2.4; EN 1990, 6.10 and 6.11; EN 1995-1-1, Table 3.1 (seen, the others
/// recalled). Checked by `verification/load_combinations`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::*;
/// let found = load_combinations(&LoadCombinationsInput {
///     standard: JointStandard::NdsAsd, own_n: 90.0, stored_n: 180.0, push_n: 200.0, blow_n: 0.0,
///     together: LoadsTogether::Apart, service_class: Ec5ServiceClass::ServiceClass1, material: Ec5Material::Softwood,
/// })?;
/// // 270 N for years ask more than 290 N for ten years in sum: 270/0.9 = 300.
/// assert_eq!(found.governing, "own weight and things on it");
/// assert!((found.asked_n - 300.0).abs() < 1e-9);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn load_combinations(input: &LoadCombinationsInput) -> Result<LoadCombinations> {
    Error::unless_empty(faults_at("", input))?;
    let mut combinations = Vec::new();
    for loads in Loads::ALL.iter().filter(|loads| loads.are_there(input)) {
        combinations.push(loads.combined(input)?);
    }
    let (mut governing_index, mut governing, mut asked_n) = (0, "", f64::MIN);
    for (k, combination) in (0..).zip(&combinations) {
        if combination.asked_n > asked_n {
            (governing_index, governing, asked_n) = (k, combination.name, combination.asked_n);
        }
    }
    Ok(LoadCombinations {
        combinations,
        governing_index,
        governing,
        asked_n,
        cautions: vec![Caution::Structure.into()],
    })
}

/// Which loads act beside the own weight.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Loads {
    Own,
    Stored,
    Push,
    StoredAndPush,
    Blow,
}

/// Factors of own weight, stored things, push and blow, and of the duration.
struct Factors {
    of: [f64; 4],
    duration: f64,
    clause: Clause,
}

impl Loads {
    const ALL: [Self; 5] = [Self::Own, Self::Stored, Self::Push, Self::StoredAndPush, Self::Blow];

    const fn name(self) -> &'static str {
        match self {
            Self::Own => "own weight",
            Self::Stored => "own weight and things on it",
            Self::Push => "own weight and a push",
            Self::StoredAndPush => "own weight, things on it and a push",
            Self::Blow => "own weight, things on it and a blow",
        }
    }

    fn are_there(self, input: &LoadCombinationsInput) -> bool {
        match self {
            Self::Own => true,
            Self::Stored => input.stored_n > 0.0,
            Self::Push => input.push_n > 0.0,
            Self::StoredAndPush => {
                input.together == LoadsTogether::AtOnce && input.stored_n > 0.0 && input.push_n > 0.0
            }
            Self::Blow => input.blow_n > 0.0,
        }
    }

    /// 1 for each load that acts beside the own weight.
    const fn acting(self) -> [f64; 3] {
        match self {
            Self::Own => [0.0, 0.0, 0.0],
            Self::Stored => [1.0, 0.0, 0.0],
            Self::Push => [0.0, 1.0, 0.0],
            Self::StoredAndPush => [1.0, 1.0, 0.0],
            Self::Blow => [1.0, 0.0, 1.0],
        }
    }

    fn combined(self, input: &LoadCombinationsInput) -> core::result::Result<LoadCombination, Fault> {
        let Factors { of: [own, stored, push, blow], duration, clause } = match input.standard {
            JointStandard::NdsAsd => self.allowable_stress(),
            JointStandard::NdsLrfd => self.load_and_resistance(),
            JointStandard::Ec5 => self.eurocode(input)?,
        };
        let force_n = own * input.own_n + stored * input.stored_n + push * input.push_n + blow * input.blow_n;
        Ok(LoadCombination {
            name: self.name(),
            own_factor: own,
            stored_factor: stored,
            push_factor: push,
            blow_factor: blow,
            force_n,
            duration_factor: duration,
            asked_n: force_n / duration,
            clause,
        })
    }

    fn allowable_stress(self) -> Factors {
        let [stored, push, blow] = self.acting();
        let duration = match self {
            Self::Own | Self::Stored => LoadDuration::Permanent,
            Self::Push | Self::StoredAndPush => LoadDuration::TenYears,
            Self::Blow => LoadDuration::Impact,
        };
        let clause = Clause::new(Source::Asce7, "2.4.1");
        Factors { of: [1.0, stored, push, blow], duration: duration.factor(), clause }
    }

    fn load_and_resistance(self) -> Factors {
        let live = self.acting().map(|acts| 1.6 * acts);
        let [stored, push, blow] = live;
        // Time effect factor, NDS Table N3: storage 0.7, occupancy 0.8, impact 1.25.
        let (own, duration) = match self {
            Self::Own => (1.4, 0.6),
            Self::Stored => (1.2, 0.7),
            Self::Push | Self::StoredAndPush => (1.2, 0.8),
            Self::Blow => (1.2, 1.25),
        };
        Factors { of: [own, stored, push, blow], duration, clause: Clause::new(Source::Asce7, "2.3.1") }
    }

    fn eurocode(self, input: &LoadCombinationsInput) -> core::result::Result<Factors, Fault> {
        let [stored, push, blow] = self.acting();
        // psi_0 of storage is 1.0, so a stored load beside a push keeps its whole factor; psi_2 of storage is 0.8.
        let (of, part, duration) = match self {
            Self::Own => ([1.35, 0.0, 0.0, 0.0], "6.10", Ec5LoadDuration::Permanent),
            Self::Stored => ([1.35, 1.5, 0.0, 0.0], "6.10", Ec5LoadDuration::LongTerm),
            Self::Push | Self::StoredAndPush => {
                ([1.35, 1.5 * stored, 1.5 * push, 0.0], "6.10", Ec5LoadDuration::ShortTerm)
            }
            Self::Blow => ([1.0, 0.8 * stored, 0.0, blow], "6.11", Ec5LoadDuration::Instantaneous),
        };
        let duration = kmod(input.material, input.service_class, duration)?;
        Ok(Factors { of, duration, clause: Clause::new(Source::En1990, part) })
    }
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const LOAD_COMBINATIONS: crate::json::Calculation = crate::json::calculation!(
    load_combinations: LoadCombinationsInput => LoadCombinations, Document,
    "Load combinations with their durations by the chosen standard, and which one governs"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::statics::test_inputs::hostile;
    use proptest::prelude::*;

    fn input(standard: JointStandard, loads: [f64; 4], together: LoadsTogether) -> LoadCombinationsInput {
        let [own_n, stored_n, push_n, blow_n] = loads;
        LoadCombinationsInput {
            standard,
            own_n,
            stored_n,
            push_n,
            blow_n,
            together,
            service_class: Ec5ServiceClass::ServiceClass1,
            material: Ec5Material::Softwood,
        }
    }

    const STANDARDS: [JointStandard; 3] = [JointStandard::NdsAsd, JointStandard::NdsLrfd, JointStandard::Ec5];

    #[test]
    fn a_panel_in_a_wet_place_has_no_duration_factor() {
        let mut wet = input(JointStandard::Ec5, [10.0, 0.0, 0.0, 0.0], LoadsTogether::Apart);
        (wet.material, wet.service_class) = (Ec5Material::MdfLa, Ec5ServiceClass::ServiceClass3);
        assert_eq!(load_combinations(&wet).unwrap_err().field(), "service_class");
    }

    proptest! {
        #[test]
        fn the_governing_one_asks_most_and_more_load_never_less(
            loads in proptest::array::uniform4(0.0..1e4_f64), more in proptest::array::uniform4(0.0..1e3_f64),
            at_once in any::<bool>(),
        ) {
            let together = if at_once { LoadsTogether::AtOnce } else { LoadsTogether::Apart };
            for standard in STANDARDS {
                let found = load_combinations(&input(standard, loads, together)).unwrap();
                let most = found.combinations.iter().map(|one| one.asked_n).fold(f64::MIN, f64::max);
                prop_assert_eq!(most, found.asked_n);
                prop_assert_eq!(found.combinations[found.governing_index as usize].name, found.governing);
                let heavier = core::array::from_fn(|k| loads[k] + more[k]);
                let heavier = load_combinations(&input(standard, heavier, together)).unwrap();
                prop_assert!(heavier.asked_n >= found.asked_n);
            }
        }

        #[test]
        fn hostile_numbers_are_refused_or_give_finite_results(
            a in hostile(), b in hostile(), c in hostile(), d in hostile(), which in 0_usize..3,
        ) {
            if let Ok(found) = load_combinations(&input(STANDARDS[which], [a, b, c, d], LoadsTogether::AtOnce)) {
                prop_assert!(found.combinations.iter().all(|one| one.asked_n.is_finite() && one.force_n >= 0.0));
            }
        }
    }
}
