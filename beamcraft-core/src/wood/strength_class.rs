//! Strength classes of structural timber.

use super::en_338;
use super::names::{search, several, unknown};
use super::species::{Provenance, WoodGroup};
use crate::cite::{Clause, Evidence, Source};
use crate::error::Result;

/// Characteristic values of a strength class; for design they still need the factors of the design standard.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct StrengthClass {
    /// Name: `C24`, `D40`.
    pub name: &'static str,
    /// Softwood (C) or hardwood (D).
    pub group: WoodGroup,
    /// Characteristic bending strength, MPa.
    pub bending_mpa: f64,
    /// Characteristic tension strength along the grain, MPa.
    pub tension_along_mpa: f64,
    /// Characteristic tension strength across the grain, MPa.
    pub tension_across_mpa: f64,
    /// Characteristic compression strength along the grain, MPa.
    pub compression_along_mpa: f64,
    /// Characteristic compression strength across the grain, MPa.
    pub compression_across_mpa: f64,
    /// Characteristic shear strength, MPa.
    pub shear_mpa: f64,
    /// Mean modulus of elasticity along the grain, MPa.
    pub modulus_mean_mpa: f64,
    /// Fifth percentile of the modulus of elasticity along the grain, MPa.
    pub modulus_fifth_mpa: f64,
    /// Mean modulus of elasticity across the grain, MPa.
    pub modulus_across_mpa: f64,
    /// Mean shear modulus, MPa.
    pub shear_modulus_mpa: f64,
    /// Characteristic density, kg/m³.
    pub density_characteristic_kg_m3: f64,
    /// Mean density, kg/m³.
    pub density_mean_kg_m3: f64,
    /// Where the figures come from.
    pub provenance: Provenance,
}

/// One row of the data file: strengths (bending, tension along and across, compression along and across, shear), moduli (mean,
/// fifth percentile, across, shear), densities (characteristic, mean).
pub(super) const fn class(
    name: &'static str,
    group: WoodGroup,
    strengths: [f64; 6],
    moduli: [f64; 4],
    densities: [f64; 2],
) -> StrengthClass {
    let [bending_mpa, tension_along_mpa, tension_across_mpa, compression_along_mpa, compression_across_mpa, shear_mpa] =
        strengths;
    let [modulus_mean_mpa, modulus_fifth_mpa, modulus_across_mpa, shear_modulus_mpa] = moduli;
    let [density_characteristic_kg_m3, density_mean_kg_m3] = densities;
    let table = match group {
        WoodGroup::Softwood => "Table 1",
        WoodGroup::Hardwood => "Table 3",
    };
    StrengthClass {
        name,
        group,
        bending_mpa,
        tension_along_mpa,
        tension_across_mpa,
        compression_along_mpa,
        compression_across_mpa,
        shear_mpa,
        modulus_mean_mpa,
        modulus_fifth_mpa,
        modulus_across_mpa,
        shear_modulus_mpa,
        density_characteristic_kg_m3,
        density_mean_kg_m3,
        provenance: Provenance { clause: Clause::new(Source::En338, table), evidence: Evidence::Seen },
    }
}

impl StrengthClass {
    /// Every class, softwoods first.
    pub const fn all() -> &'static [StrengthClass] {
        en_338::ROWS
    }

    /// The class of a name, in upper or lower case.
    ///
    /// # Errors
    /// `unknown_name`, with the closest.
    pub fn find(name: &str) -> Result<&'static StrengthClass> {
        let matches = search(name, Self::all().iter(), |row| vec![row.name]);
        match matches.equal.as_slice() {
            [one] => Ok(one),
            [] => Err(unknown(name, "a strength class of EN 338:2016", Self::all().iter().map(|row| row.name))),
            rows => Err(several(name, &rows.iter().map(|row| row.name).collect::<Vec<_>>())),
        }
    }
}

/// A strength class to find.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct FindStrengthClassInput {
    /// Name of the class, such as `C24` or `d40`.
    pub name: String,
}

/// Characteristic values of a strength class by its name.
///
/// # Equation
/// None: figures of the standard.
///
/// # Limits
/// Graded structural timber at 20 °C and 65 % relative humidity, bending strength at a depth of 150 mm. The edition counts: values
/// of 2003 and 2009 differ. Finish lumber is not graded to a class; none may be assumed for it. For design, local codes and
/// licensed practice decide.
///
/// # Errors
/// `unknown_name`, with the closest known name.
///
/// # Source
/// EN 338:2016, Tables 1 and 3 (seen) — checked by `verification/materials`.
///
/// # Examples
/// ```
/// use beamcraft_core::wood::{find_strength_class, FindStrengthClassInput};
/// let stud = find_strength_class(&FindStrengthClassInput { name: "c24".to_owned() })?;
/// assert_eq!((stud.bending_mpa, stud.density_characteristic_kg_m3), (24.0, 350.0));
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn find_strength_class(input: &FindStrengthClassInput) -> Result<StrengthClass> {
    StrengthClass::find(&input.name).copied()
}

/// Which strength classes to list.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct ListStrengthClassesInput {
    /// Hardwoods or softwoods only; both when left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub group: Option<WoodGroup>,
}

/// The list of strength classes.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct StrengthClassList {
    /// Classes in the order of the standard.
    pub classes: Vec<StrengthClass>,
}

/// Every strength class with its characteristic values.
///
/// # Equation
/// None: figures of the standard.
///
/// # Limits
/// Those of [`find_strength_class`].
///
/// # Errors
/// None for an input that reads.
///
/// # Source
/// EN 338:2016, Tables 1 and 3 (seen) — checked by `verification/materials`.
///
/// # Examples
/// ```
/// use beamcraft_core::wood::{list_strength_classes, ListStrengthClassesInput};
/// assert_eq!(list_strength_classes(&ListStrengthClassesInput::default())?.classes.len(), 26);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn list_strength_classes(input: &ListStrengthClassesInput) -> Result<StrengthClassList> {
    let wanted = |row: &&StrengthClass| input.group.is_none_or(|group| group == row.group);
    Ok(StrengthClassList { classes: StrengthClass::all().iter().filter(wanted).copied().collect() })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const FIND_STRENGTH_CLASS: crate::json::Calculation = crate::json::calculation!(
    find_strength_class: FindStrengthClassInput => StrengthClass, Document,
    "Characteristic values of a strength class of structural timber"
);

/// Registry row.
#[cfg(feature = "json")]
pub(super) const LIST_STRENGTH_CLASSES: crate::json::Calculation = crate::json::calculation!(
    list_strength_classes: ListStrengthClassesInput => StrengthClassList, Document,
    "Every strength class of structural timber"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::error::ErrorCode;
    use crate::numeric::real::pow;

    #[test]
    fn figures_follow_the_ratios_of_the_companion_standard() {
        // EN 384:2016 (recalled), to the digits that EN 338 prints.
        for row in StrengthClass::all() {
            let soft = row.group == WoodGroup::Softwood;
            let near = |value: f64, expected: f64, within: f64| {
                assert!((value - expected).abs() <= within, "{}: {value} {expected}", row.name);
            };
            near(row.modulus_across_mpa, row.modulus_mean_mpa / if soft { 30.0 } else { 15.0 }, 5.1);
            near(row.shear_modulus_mpa, row.modulus_mean_mpa / 16.0, 5.1);
            near(row.density_mean_kg_m3, 1.2 * row.density_characteristic_kg_m3, 6.0);
            near(row.compression_along_mpa, 4.3 * pow(row.bending_mpa, 0.5), 0.51);
            near(row.modulus_fifth_mpa, row.modulus_mean_mpa * if soft { 0.67 } else { 0.84 }, 51.0);
        }
    }

    #[test]
    fn names_are_found_in_any_case_and_misses_help() {
        let find = |name: &str| find_strength_class(&FindStrengthClassInput { name: name.to_owned() });
        assert_eq!(find(" d40 ").expect("known").name, "D40");
        for name in ["", "C25", "24", "C24 D40", "💥"] {
            assert_eq!(find(name).expect_err("no class").code(), ErrorCode::UnknownName, "{name}");
        }
    }
}
