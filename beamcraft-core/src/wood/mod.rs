//! Wood: species, strength classes and sheet goods, specific gravity and density, moisture, the specific gravities assigned
//! for fastener design.
//!
//! Three specific gravities are in use, and mixing them is the common mistake. All have the ovendry mass above the line; below it
//! stands the volume
//!
//! | symbol | volume | used for | here |
//! |---|---|---|---|
//! | G_b | green | the handbook's basic value | `specific_gravity_green` |
//! | G_12 | at 12 % moisture | weight of dry boards, strength tables | `specific_gravity_12` |
//! | G | ovendry | connections by the NDS | [`Species::connection_gravity`] |
//!
//! [`wood_density`] leads from one to the other and to the density at a moisture content.
//!
//! One data file per publication holds rows and no logic. Every figure of a species carries its source and whether it was
//! seen there or recalled; what was not found is absent, not guessed. Values are averages of clear, straight-grained wood: they
//! serve weight, movement and comparison, and are not design strengths.

mod density;
mod en_338;
mod figures;
mod fpl_gtr_113;
mod fpl_gtr_190;
mod moisture;
mod names;
mod nds;
mod nds_2018;
mod niemz_1993;
mod panel;
mod sheet_goods;
mod species;
mod strength_class;
#[cfg(feature = "json")]
mod table;

pub use density::{GravityBasis, WoodDensity, WoodDensityInput, wood_density};
pub use figures::WoodFigures;
pub use moisture::*;
pub use nds::{
    ConnectionGravity, ConnectionGravityBasis, FindNdsCombinationInput, NdsCombination, NdsMachineGrade,
    find_nds_combination, nds_combinations,
};
pub use panel::{
    FindPanelInput, ListPanelsInput, SheetKind, SheetList, SheetPanel, SheetRange, SheetValues, find_panel, list_panels,
};
pub use species::{
    FindSpeciesInput, ListSpeciesInput, Provenance, Species, SpeciesEntry, SpeciesList, SpeciesOrigin,
    SpeciesProvenance, SpeciesRecord, WoodGroup, find_species, list_species,
};
pub use strength_class::{
    FindStrengthClassInput, ListStrengthClassesInput, StrengthClass, StrengthClassList, find_strength_class,
    list_strength_classes,
};
#[cfg(feature = "json")]
pub use table::{MaterialTable, MaterialValue};

/// Registry rows of this module.
#[cfg(feature = "json")]
pub(crate) const CALCULATIONS: &[crate::json::Calculation] = &[
    species::FIND_SPECIES,
    species::LIST_SPECIES,
    density::WOOD_DENSITY,
    nds::FIND_NDS_COMBINATION,
    strength_class::FIND_STRENGTH_CLASS,
    strength_class::LIST_STRENGTH_CLASSES,
    panel::FIND_PANEL,
    panel::LIST_PANELS,
    EQUILIBRIUM_MOISTURE,
    HUMIDITY_FOR_MOISTURE,
    MOIST_AIR,
    HEATED_AIR_HUMIDITY,
    WARM_FACE_MOISTURE,
    SEASONAL_MOISTURE,
    MOISTURE_PROGRESS,
    SEASONAL_BOARD,
];
