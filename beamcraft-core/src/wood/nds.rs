//! Specific gravity for connections: assigned by the NDS to a species combination, or derived where it assigns none.

use super::names::{search, several, unknown};
use super::nds_2018;
use super::species::{Species, WoodGroup};
use crate::cite::{Clause, Evidence, Source};
use crate::error::{Fault, Result};

const ASSIGNED: Clause = Clause::new(Source::Nds2018, "Table 12.3.3A");
const DERIVED: Clause = Clause::new(Source::WoodHandbook2021, "Eq. 4-9 to 4-13");

/// Specific gravity of machine-graded lumber of a combination.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct NdsMachineGrade {
    /// Grades it holds for, by the modulus of elasticity in their name.
    pub grades: &'static str,
    /// Specific gravity: ovendry mass over ovendry volume.
    pub specific_gravity: f64,
}

/// A species combination of the NDS with the specific gravity assigned to it.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct NdsCombination {
    /// Name in the standard.
    pub name: &'static str,
    /// Short forms of grade stamps and of the trade.
    pub short_forms: &'static [&'static str],
    /// Hardwood or softwood, which decides end distances.
    pub group: WoodGroup,
    /// Specific gravity of visually graded lumber: ovendry mass over ovendry volume.
    pub specific_gravity: f64,
    /// Values for machine-graded lumber; empty where the table has none.
    pub machine_grades: &'static [NdsMachineGrade],
    /// Where the value stands.
    pub clause: Clause,
    /// How far it was checked.
    pub evidence: Evidence,
}

/// One row of the data file.
pub(super) const fn combination(
    name: &'static str,
    short_forms: &'static [&'static str],
    group: WoodGroup,
    specific_gravity: f64,
    machine_grades: &'static [NdsMachineGrade],
) -> NdsCombination {
    let (clause, evidence) = (ASSIGNED, Evidence::Seen);
    NdsCombination { name, short_forms, group, specific_gravity, machine_grades, clause, evidence }
}

/// One machine grade of the data file.
pub(super) const fn machine(grades: &'static str, specific_gravity: f64) -> NdsMachineGrade {
    NdsMachineGrade { grades, specific_gravity }
}

/// Every species combination, in the order of the standard.
pub const fn nds_combinations() -> &'static [NdsCombination] {
    nds_2018::ROWS
}

impl NdsCombination {
    /// The combination of a name or short form: `Spruce-Pine-Fir`, `spruce pine fir`, `SPF`.
    ///
    /// A part of a name is not taken for the whole, since combinations that share words differ in strength.
    ///
    /// # Errors
    /// `unknown_name`: with all that hold the words given, else with the closest.
    pub fn find(name: &str) -> Result<&'static NdsCombination> {
        let names = |row: &'static NdsCombination| [&[row.name], row.short_forms].concat();
        let matches = search(name, nds_2018::ROWS.iter(), names);
        match (matches.equal.as_slice(), matches.part.as_slice()) {
            ([one], _) => Ok(one),
            ([], []) => {
                let known = nds_2018::ROWS.iter().map(|row| row.name);
                Err(unknown(name, "a species combination of NDS 2018, Table 12.3.3A", known))
            }
            ([], rows) | (rows, _) => Err(several(name, &rows.iter().map(|row| row.name).collect::<Vec<_>>())),
        }
    }
}

/// How a specific gravity for connections was come by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum ConnectionGravityBasis {
    /// Assigned by the NDS to the species combination.
    Assigned,
    /// Not in the NDS table: derived from the handbook's specific gravity.
    Derived,
}

/// Specific gravity for connections by the NDS.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct ConnectionGravity {
    /// Specific gravity: ovendry mass over ovendry volume.
    pub specific_gravity: f64,
    /// How it was come by.
    pub basis: ConnectionGravityBasis,
    /// What the handbook's figures for the species give on the same basis, assigned or not.
    pub derived_specific_gravity: f64,
    /// Species combination, where the value is assigned to one.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub combination: Option<&'static str>,
    /// Table or equations it stands on.
    pub clause: Clause,
}

impl Species {
    /// Specific gravity for connections: the value assigned to the species' combination, else derived.
    ///
    /// Derived means the handbook's specific gravity on the ovendry volume, by [`wood_density`](super::wood_density). The NDS assigns no
    /// value to such a species: a derived one is an average of the species, and a reviewer may ask for a test of the boards. An
    /// assigned value belongs to graded lumber of the whole combination; for boards of one species without a grade stamp the
    /// smaller of the two is the safe one (silver maple is lighter than the mixed maples).
    ///
    /// # Errors
    /// `no_published_value` for a species without any density.
    pub fn connection_gravity(&self) -> core::result::Result<ConnectionGravity, Fault> {
        let derived_specific_gravity = self.density(0.0)?.specific_gravity_ovendry;
        let assigned =
            self.nds_combination.and_then(|name| nds_2018::ROWS.iter().find(|combination| combination.name == name));
        Ok(match assigned {
            Some(found) => ConnectionGravity {
                specific_gravity: found.specific_gravity,
                basis: ConnectionGravityBasis::Assigned,
                derived_specific_gravity,
                combination: Some(found.name),
                clause: found.clause,
            },
            None => ConnectionGravity {
                specific_gravity: derived_specific_gravity,
                basis: ConnectionGravityBasis::Derived,
                derived_specific_gravity,
                combination: None,
                clause: DERIVED,
            },
        })
    }
}

/// A species combination to find.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct FindNdsCombinationInput {
    /// Name or short form, such as `Spruce-Pine-Fir` or `SPF`.
    pub name: String,
}

/// Specific gravity that the NDS assigns to a species combination, for the design of connections.
///
/// # Equation
/// ```text
/// G = ovendry mass / (ovendry volume × density of water)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | G | specific gravity of visually graded lumber | – | `specific_gravity` |
///
/// # Limits
/// Not the specific gravity of the handbook's strength tables, which is on the volume at 12 % and smaller. For lumber whose
/// combination is not known, ask for the grade stamp.
///
/// # Errors
/// `unknown_name`: with all that hold the words given, else with the closest.
///
/// # Source
/// NDS 2018, Table 12.3.3A (seen in two transcriptions; machine grades, Red Pine and Western Juniper in one) — checked by
/// `verification/wood`.
///
/// # Examples
/// ```
/// use beamcraft_core::wood::{find_nds_combination, FindNdsCombinationInput};
/// let studs = find_nds_combination(&FindNdsCombinationInput { name: "SPF".to_owned() })?;
/// assert_eq!((studs.name, studs.specific_gravity), ("Spruce-Pine-Fir", 0.42));
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn find_nds_combination(input: &FindNdsCombinationInput) -> Result<NdsCombination> {
    NdsCombination::find(&input.name).copied()
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const FIND_NDS_COMBINATION: crate::json::Calculation = crate::json::calculation!(
    find_nds_combination: FindNdsCombinationInput => NdsCombination, Document,
    "Specific gravity that the NDS assigns to a species combination, for connections"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::error::ErrorCode;

    #[test]
    fn a_combination_is_found_by_name_and_short_form() {
        for (name, found, gravity) in [
            ("Spruce-Pine-Fir", "Spruce-Pine-Fir", 0.42),
            ("spruce pine fir", "Spruce-Pine-Fir", 0.42),
            ("SPF", "Spruce-Pine-Fir", 0.42),
            ("spf (south)", "Spruce-Pine-Fir (South)", 0.36),
            ("Spruce-Pine-Fir South", "Spruce-Pine-Fir (South)", 0.36),
            ("SPFs", "Spruce-Pine-Fir (South)", 0.36),
            ("HemFir", "Hem-Fir", 0.43),
            ("HF", "Hem-Fir", 0.43),
            ("hem-fir (n)", "Hem-Fir (North)", 0.46),
            ("DF-L", "Douglas Fir-Larch", 0.50),
            ("DFL", "Douglas Fir-Larch", 0.50),
            ("Douglas-fir larch", "Douglas Fir-Larch", 0.50),
            ("southern yellow pine", "Southern Pine", 0.55),
            ("S P", "Southern Pine", 0.55),
        ] {
            let row = NdsCombination::find(name).unwrap_or_else(|error| panic!("{error}"));
            assert_eq!((row.name, row.specific_gravity), (found, gravity), "{name}");
        }
    }

    #[test]
    fn a_part_of_a_name_is_not_taken_for_the_whole() {
        let error = NdsCombination::find("Douglas fir").expect_err("several");
        assert_eq!(error.code(), ErrorCode::UnknownName);
        let text = error.to_string();
        for name in ["Douglas Fir-Larch; ", "Douglas Fir-Larch (North)", "Douglas Fir-South"] {
            assert!(text.contains(name), "{text}");
        }
        assert!(NdsCombination::find("Hem-Fur").expect_err("slip").to_string().contains("did you mean Hem-Fir?"));
        for name in ["", " - ", "zzz", "\u{0}", &"x".repeat(1_000_000)] {
            assert_eq!(NdsCombination::find(name).expect_err("refused").code(), ErrorCode::UnknownName);
        }
    }

    #[test]
    fn every_row_is_found_by_each_of_its_names_alone() {
        for row in nds_combinations() {
            for name in [&[row.name], row.short_forms].concat() {
                assert_eq!(NdsCombination::find(name).map(|found| found.name), Ok(row.name), "{name}");
            }
            assert!((0.3..0.8).contains(&row.specific_gravity));
            assert!(row.machine_grades.iter().all(|grade| grade.specific_gravity >= row.specific_gravity));
        }
    }
}
