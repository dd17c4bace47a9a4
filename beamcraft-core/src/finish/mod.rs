//! Finish and glue: film build, coats, litres, cans, grams, and what is published about each class of finish.
//!
//! ```text
//!  wet film   ▓▓▓▓▓▓▓▓▓▓▓▓▓▓▓▓   1 litre over `spread` m²  =  1000 / spread µm
//!  dry film   ████████           what is left: wet film × volume solids
//!  wood       ────────────────
//! ```
//!
//! Film arithmetic holds for finishes that stay on the wood. An oil, a stain or a dye goes into it: there the spread is
//! found by trial, and volume solids say nothing about it. Where nothing is published, the number is asked of the user
//! and never made up. Rags with drying oil heat up by themselves; every class says whether that concerns it.

mod cans;
mod clamp;
mod class;
mod class_table;
mod discs;
mod filler;
mod film;
mod glue;
mod quantity;
mod sanding;
mod solvent;
mod transfer;

pub use cans::{CansOfSize, CansToBuy, CansToBuyInput, cans_to_buy};
pub use clamp::{ClampPressure, ClampedWood, ClampsForSeam, ClampsForSeamInput, clamps_for_seam};
pub use class::{
    FindFinishClassInput, FinishClass, FinishClassFound, FinishClassList, FinishKind, FinishName, FinishRange,
    ListFinishClassesInput, SelfHeatingRags, VocCounting, VocLimit, find_finish_class, list_finish_classes,
};
pub use discs::{SandingDiscs, SandingDiscsInput, sanding_discs};
pub use filler::{SeamFiller, SeamFillerInput, seam_filler};
pub use film::{
    CoatsToFilm, CoatsToFilmInput, FURNITURE_FILM_CEILING_UM, FilmBuild, FilmBuildInput, FilmCeiling, FilmFromSpread,
    FilmFromSpreadInput, ThinnedVolumeSolids, ThinnedVolumeSolidsInput, VolumeSolidsFromFilms,
    VolumeSolidsFromFilmsInput, coats_to_film, film_build, film_from_spread, thinned_volume_solids,
    volume_solids_from_films,
};
pub use glue::{GlueQuantity, GlueQuantityInput, MitreBondArea, MitreBondAreaInput, glue_quantity, mitre_bond_area};
pub use quantity::{
    FigureOrigin, FinishClassQuantity, FinishClassQuantityInput, FinishQuantity, FinishQuantityInput,
    finish_class_quantity, finish_quantity,
};
pub use sanding::{AbrasiveGrade, SandingSteps, SandingStepsInput, sanding_steps};
pub use solvent::{ProductEmission, SolventEmitted, SolventEmittedInput, SolventProduct, VocVerdict, solvent_emitted};
pub use transfer::{ApplicationMethod, FindTransferEfficiencyInput, TransferEfficiency, find_transfer_efficiency};

/// Registry rows of this module.
#[cfg(feature = "json")]
pub(crate) const CALCULATIONS: &[crate::json::Calculation] = &[
    film::FILM_BUILD,
    film::FILM_FROM_SPREAD,
    film::VOLUME_SOLIDS_FROM_FILMS,
    film::THINNED_VOLUME_SOLIDS,
    film::COATS_TO_FILM,
    quantity::FINISH_QUANTITY,
    quantity::FINISH_CLASS_QUANTITY,
    cans::CANS_TO_BUY,
    class::FIND_FINISH_CLASS,
    class::LIST_FINISH_CLASSES,
    transfer::FIND_TRANSFER_EFFICIENCY,
    glue::GLUE_QUANTITY,
    glue::MITRE_BOND_AREA,
    sanding::SANDING_STEPS,
    discs::SANDING_DISCS,
    clamp::CLAMPS_FOR_SEAM,
    filler::SEAM_FILLER,
    solvent::SOLVENT_EMITTED,
];

/// Random inputs that no workshop would give.
#[cfg(test)]
mod hostile {
    use proptest::prelude::*;

    /// Any bit pattern, and often enough a number that an input may hold.
    pub(super) fn number() -> impl Strategy<Value = f64> {
        prop_oneof![
            any::<u64>().prop_map(f64::from_bits),
            0.0..1.0_f64,
            0.0..200.0_f64,
            prop::sample::select(vec![0.0, -0.0, 0.01, 0.1, 0.95, 1.0, 50.0, 100.0, 180.0, 5_000.0, 1e6, 5e-324]),
        ]
    }
}
