//! A species with what the handbooks say about it, found by its common or botanical name.

use super::density::{GravityBasis, WoodDensity, WoodDensityInput, gravity_12_of_density, wood_density};
use super::names::{Words, search, several, unknown};
use super::nds::ConnectionGravity;
use super::{fpl_gtr_113, fpl_gtr_190, niemz_1993};
use crate::cite::{Clause, Evidence};
use crate::error::{Error, ErrorCode, Fault, Result};

/// Hardwood or softwood, by botany and not by hardness.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum WoodGroup {
    /// Broad-leaved tree.
    Hardwood,
    /// Conifer.
    Softwood,
}

/// Where the tables that a species stands in come from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum SpeciesOrigin {
    /// Grown in North America; handbook tables for domestic woods.
    NorthAmerica,
    /// Brought into North America; handbook tables for imported woods.
    Imported,
    /// Grown in Europe; European tables.
    Europe,
}

/// Where a figure stands and how far it was checked.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Provenance {
    /// Publication and table.
    pub clause: Clause,
    /// Seen there, or recalled.
    pub evidence: Evidence,
}

/// Where the figures of a species come from; absent where the figures are absent.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SpeciesProvenance {
    /// Of strength, stiffness, hardness, specific gravity at 12 % and published density.
    pub strength: Provenance,
    /// Of the green specific gravity.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub specific_gravity_green: Option<Provenance>,
    /// Of the shrinkage values.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub shrinkage: Option<Provenance>,
    /// Of the movement coefficients.
    pub movement: Provenance,
    /// Row of the movement table; several species share the row of their group. Empty where the table goes by species.
    pub movement_row: &'static str,
    /// Of the membership in the NDS species combination.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub nds_combination: Option<Evidence>,
}

/// Averages of clear, straight-grained wood of one species; not design values.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Species {
    /// Common name, noun first: `Ash, white`.
    pub name: &'static str,
    /// Botanical name.
    pub botanical: &'static str,
    /// Hardwood or softwood.
    pub group: WoodGroup,
    /// Which tables it stands in.
    pub origin: SpeciesOrigin,
    /// Basic specific gravity: ovendry mass over green volume.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub specific_gravity_green: Option<f64>,
    /// Specific gravity: ovendry mass over volume at 12 % moisture content.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub specific_gravity_12: Option<f64>,
    /// Air-dry density where the source prints it, kg/m³; see the record's density for every species.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub density_published_kg_m3: Option<f64>,
    /// Modulus of elasticity in bending at 12 %, MPa.
    pub modulus_of_elasticity_mpa: f64,
    /// Modulus of rupture in bending at 12 %, MPa.
    pub modulus_of_rupture_mpa: f64,
    /// Compression strength parallel to grain at 12 %, MPa.
    pub compression_parallel_mpa: f64,
    /// Compression perpendicular to grain, stress at the proportional limit at 12 %, MPa.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub compression_perpendicular_mpa: Option<f64>,
    /// Shear strength parallel to grain at 12 %, MPa.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub shear_parallel_mpa: Option<f64>,
    /// Side hardness (force to press in half a 11.3 mm ball) at 12 %, N.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub side_hardness_n: Option<f64>,
    /// Radial shrinkage from green to ovendry, % of the green size.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub shrinkage_radial_pct: Option<f64>,
    /// Tangential shrinkage from green to ovendry, % of the green size.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub shrinkage_tangential_pct: Option<f64>,
    /// Volumetric shrinkage from green to ovendry, % of the green volume.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub shrinkage_volumetric_pct: Option<f64>,
    /// Fibre saturation point, %: 30 in general use, 22 where only that ties the printed coefficients to the printed shrinkage.
    pub fibre_saturation_pct: f64,
    /// Radial movement between 6 and 14 % moisture, share of the size per percent of moisture.
    pub movement_radial_per_pct: f64,
    /// Tangential movement between 6 and 14 % moisture, share of the size per percent of moisture.
    pub movement_tangential_per_pct: f64,
    /// NDS species combination that the species belongs to.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub nds_combination: Option<&'static str>,
    /// Where the figures come from.
    pub provenance: SpeciesProvenance,
    /// What to know about the figures; empty where there is nothing.
    pub remark: &'static str,
}

/// A value, or nothing: `0.5` or `_`.
macro_rules! value {
    (_) => {
        None
    };
    ($value:expr) => {
        Some($value)
    };
}
pub(super) use value;

/// One row of a data file; `_` stands for a value that is not there.
macro_rules! species_row {
    ($name:literal, $botanical:literal, $group:ident, $origin:ident;
        gravity $green:tt $($green_evidence:ident)?, $twelve:tt, $density:tt;
        strength $elasticity:tt $rupture:tt $parallel:tt $perpendicular:tt $shear:tt $hardness:tt, $strength:ident;
        shrinkage $radial:tt $($tangential:literal $volumetric:literal $shrinkage:ident $shrinkage_evidence:ident)?, $saturation:literal;
        movement $move_radial:literal $move_tangential:literal, $row:literal, $movement:ident $movement_evidence:ident;
        nds $nds:tt;
        $remark:literal
    ) => {
        $crate::wood::Species {
            name: $name,
            botanical: $botanical,
            group: $crate::wood::WoodGroup::$group,
            origin: $crate::wood::SpeciesOrigin::$origin,
            specific_gravity_green: $crate::wood::species::value!($green),
            specific_gravity_12: $crate::wood::species::value!($twelve),
            density_published_kg_m3: $crate::wood::species::value!($density),
            modulus_of_elasticity_mpa: $elasticity,
            modulus_of_rupture_mpa: $rupture,
            compression_parallel_mpa: $parallel,
            compression_perpendicular_mpa: $crate::wood::species::value!($perpendicular),
            shear_parallel_mpa: $crate::wood::species::value!($shear),
            side_hardness_n: $crate::wood::species::value!($hardness),
            shrinkage_radial_pct: $crate::wood::species::value!($radial),
            shrinkage_tangential_pct: $crate::wood::species::first!($(Some($tangential))?),
            shrinkage_volumetric_pct: $crate::wood::species::first!($(Some($volumetric))?),
            fibre_saturation_pct: $saturation,
            movement_radial_per_pct: $move_radial,
            movement_tangential_per_pct: $move_tangential,
            nds_combination: $crate::wood::species::value!($nds),
            provenance: $crate::wood::SpeciesProvenance {
                strength: $crate::wood::Provenance { clause: $strength, evidence: $crate::cite::Evidence::Seen },
                specific_gravity_green: $crate::wood::species::first!($(Some($crate::wood::Provenance {
                    clause: $strength,
                    evidence: $crate::cite::Evidence::$green_evidence,
                }))?),
                shrinkage: $crate::wood::species::first!($(Some($crate::wood::Provenance {
                    clause: $shrinkage,
                    evidence: $crate::cite::Evidence::$shrinkage_evidence,
                }))?),
                movement: $crate::wood::Provenance {
                    clause: $movement,
                    evidence: $crate::cite::Evidence::$movement_evidence,
                },
                movement_row: $row,
                nds_combination: $crate::wood::species::evidence_of_nds!($nds),
            },
            remark: $remark,
        }
    };
}
pub(super) use species_row;

/// The expression, or `None` when there is none.
macro_rules! first {
    () => {
        None
    };
    ($value:expr) => {
        $value
    };
}
pub(super) use first;

/// Which species a combination of the NDS holds was recalled for every row.
macro_rules! evidence_of_nds {
    (_) => {
        None
    };
    ($nds:literal) => {
        Some($crate::cite::Evidence::Recalled)
    };
}
pub(super) use evidence_of_nds;

/// Names of the trade that share no word with the table's, or need another order of reading (common practice).
const TRADE_NAMES: &[(&str, &str)] = &[
    ("cypress", "Baldcypress"),
    ("bald cypress", "Baldcypress"),
    ("tulip poplar", "Yellow-poplar"),
    ("tulipwood", "Yellow-poplar"),
    ("poplar", "Yellow-poplar"),
    ("rock maple", "Maple, sugar (hard)"),
    ("alaska cedar", "Cedar, yellow"),
    ("aromatic cedar", "Cedar, eastern redcedar"),
    ("honduras mahogany", "Mahogany, true"),
    ("khaya", "Mahogany, African"),
    ("english oak", "Oak, European"),
    ("french oak", "Oak, European"),
    ("pecan", "Hickory, pecan"),
];

impl Species {
    /// Every species, one publication after the other.
    pub fn all() -> impl Iterator<Item = &'static Species> + Clone {
        fpl_gtr_190::ROWS.iter().chain(fpl_gtr_113::ROWS).chain(niemz_1993::ROWS)
    }

    /// The species of a common or botanical name.
    ///
    /// Case and the order of words do not matter: `white ash` is `Ash, white`. A shorter name is taken when it holds the noun
    /// (or the genus) and fits one species only.
    ///
    /// # Errors
    /// `unknown_name`: with all that fit where several do (`ash`), else with the closest known name.
    pub fn find(name: &str) -> Result<&'static Species> {
        let trade = TRADE_NAMES.iter().find(|(known, _)| known.eq_ignore_ascii_case(name.trim()));
        let matches = search(trade.map_or(name, |(_, ours)| ours), Self::all(), |row| vec![row.name, row.botanical]);
        let with_noun: Vec<_> = matches.part.iter().copied().filter(|row| row.has_noun_of(name)).collect();
        match (matches.equal.as_slice(), with_noun.as_slice()) {
            ([one], _) | ([], [one]) => Ok(one),
            ([], []) => Err(match matches.part.as_slice() {
                [] => unknown(
                    name,
                    "the common or botanical name of a species of the list",
                    Self::all().flat_map(|row| [row.name, row.botanical]),
                ),
                rows => several(name, &rows.iter().map(|row| row.name).collect::<Vec<_>>()),
            }),
            ([], rows) | (rows, _) => Err(several(name, &rows.iter().map(|row| row.name).collect::<Vec<_>>())),
        }
    }

    /// Whether `given` holds the noun of the common name, or the genus.
    fn has_noun_of(&self, given: &str) -> bool {
        let noun = match self.name.split_once(',') {
            Some((noun, _)) => noun,
            None => self.name.rsplit('-').next().unwrap_or(self.name),
        };
        let genus = self.botanical.split(' ').next().unwrap_or(self.botanical);
        let given = Words::of(given).sorted;
        [noun, genus].into_iter().any(|name| Words::of(name).sorted.iter().all(|word| given.contains(word)))
    }

    /// Specific gravity that the density starts from, and the volume it is stated for.
    ///
    /// The one at 12 % where it is published, else the green one, else the one that a published air-dry density stands for at 12 %.
    fn gravity(&self) -> Option<(f64, GravityBasis)> {
        let at_12 = self.specific_gravity_12.map(|gravity| (gravity, GravityBasis::TwelvePercent));
        let green = || self.specific_gravity_green.map(|gravity| (gravity, GravityBasis::Green));
        let density = || Some((gravity_12_of_density(self.density_published_kg_m3?), GravityBasis::TwelvePercent));
        at_12.or_else(green).or_else(density)
    }

    /// Density at a moisture content, by [`wood_density`] with the species' own shrinkage where it is published.
    ///
    /// # Errors
    /// `out_of_range` or `not_finite` for the moisture content; `no_published_value` for a species without any density.
    pub fn density(&self, moisture_pct: f64) -> core::result::Result<WoodDensity, Fault> {
        const MISSING: Fault = Fault::plain(
            ErrorCode::NoPublishedValue,
            "specific_gravity",
            "a species with a published specific gravity or density",
            "give the density of the boards",
        );
        let (specific_gravity, basis) = self.gravity().ok_or(MISSING)?;
        wood_density(&WoodDensityInput {
            specific_gravity,
            basis,
            moisture_pct,
            volumetric_shrinkage_pct: self.shrinkage_volumetric_pct,
            fibre_saturation_pct: self.fibre_saturation_pct,
        })
    }
}

/// A species to find.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct FindSpeciesInput {
    /// Common or botanical name, such as `white ash` or `Fraxinus americana`.
    pub name: String,
}

/// A species with what follows from its figures.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SpeciesRecord {
    /// Published figures.
    pub species: Species,
    /// Density and specific gravities at 12 % moisture content.
    pub density_12: WoodDensity,
    /// Specific gravity for connections by the NDS.
    pub connection_gravity: ConnectionGravity,
}

/// Figures of a species by its common or botanical name.
///
/// # Equation
/// Density and the specific gravity for connections follow by [`wood_density`](super::wood_density).
///
/// # Limits
/// Averages of clear wood; not design values. `walnut` is enough while one walnut is in the list; `ash` is not.
///
/// # Errors
/// `unknown_name`: with all that fit where several do, else with the closest known name.
///
/// # Source
/// Named with every figure — checked by `verification/wood`.
///
/// # Examples
/// ```
/// use beamcraft_core::wood::{find_species, FindSpeciesInput};
/// let found = find_species(&FindSpeciesInput { name: "white ash".to_owned() })?;
/// assert_eq!(found.species.botanical, "Fraxinus americana");
/// assert!((found.density_12.density_kg_m3 - 672.0).abs() < 1e-9);
/// assert!(find_species(&FindSpeciesInput { name: "ash".to_owned() }).is_err());
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn find_species(input: &FindSpeciesInput) -> Result<SpeciesRecord> {
    let species = Species::find(&input.name)?;
    let density_12 = species.density(super::density::TABLE_MOISTURE_PCT)?;
    Ok(SpeciesRecord { species: *species, density_12, connection_gravity: species.connection_gravity()? })
}

/// Which species to list.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct ListSpeciesInput {
    /// Hardwoods or softwoods only; both when left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub group: Option<WoodGroup>,
}

/// One line of the list of species.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SpeciesEntry {
    /// Common name, noun first.
    pub name: &'static str,
    /// Botanical name.
    pub botanical: &'static str,
    /// Hardwood or softwood.
    pub group: WoodGroup,
    /// Which tables it stands in.
    pub origin: SpeciesOrigin,
    /// Density at 12 % moisture content, kg/m³.
    pub density_12_kg_m3: f64,
    /// Tangential movement, share of the size per percent of moisture.
    pub movement_tangential_per_pct: f64,
}

/// The list of species.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SpeciesList {
    /// One entry a species, by name.
    pub species: Vec<SpeciesEntry>,
}

/// Every species in the tables, by name, with its density and movement.
///
/// # Equation
/// Density by [`wood_density`](super::wood_density) at 12 % moisture content.
///
/// # Limits
/// Averages of clear wood; not design values.
///
/// # Errors
/// None for an input that reads.
///
/// # Source
/// Named with every figure in [`find_species`].
///
/// # Examples
/// ```
/// use beamcraft_core::wood::{list_species, ListSpeciesInput, WoodGroup};
/// let softwoods = list_species(&ListSpeciesInput { group: Some(WoodGroup::Softwood) })?;
/// assert!(softwoods.species.iter().any(|entry| entry.botanical == "Picea abies"));
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn list_species(input: &ListSpeciesInput) -> Result<SpeciesList> {
    let wanted = |row: &&Species| input.group.is_none_or(|group| group == row.group);
    let entry = |row: &Species| {
        Ok::<_, Error>(SpeciesEntry {
            name: row.name,
            botanical: row.botanical,
            group: row.group,
            origin: row.origin,
            density_12_kg_m3: row.density(super::density::TABLE_MOISTURE_PCT)?.density_kg_m3,
            movement_tangential_per_pct: row.movement_tangential_per_pct,
        })
    };
    let mut species = Species::all().filter(wanted).map(entry).collect::<Result<Vec<_>>>()?;
    species.sort_by_key(|entry| entry.name);
    Ok(SpeciesList { species })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const FIND_SPECIES: crate::json::Calculation = crate::json::calculation!(
    find_species: FindSpeciesInput => SpeciesRecord, Document,
    "Published figures of a wood species by its common or botanical name"
);

/// Registry row.
#[cfg(feature = "json")]
pub(super) const LIST_SPECIES: crate::json::Calculation = crate::json::calculation!(
    list_species: ListSpeciesInput => SpeciesList, Document,
    "Every wood species in the tables with its density and movement"
);

#[cfg(test)]
#[path = "species_tests.rs"]
mod tests;
