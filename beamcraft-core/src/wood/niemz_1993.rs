//! Clear wood of European species, averages: Niemz 1993 for density and strength, Rijsdijk & Laming 1994 for movement.

use super::species::{Species, species_row};
use crate::cite::{Clause, Source};

const STRENGTH: Clause = Clause::new(Source::Niemz1993, "");
const MOVEMENT: Clause = Clause::new(Source::RijsdijkLaming1994, "");

/// One row a species.
pub(super) const ROWS: &[Species] = &[
    species_row! { "Oak, European", "Quercus robur/petraea", Hardwood, Europe;
    gravity _, _, 670.0;
    strength 13000.0 95.0 52.0 _ 11.5 _, STRENGTH;
    shrinkage _, 30.0;
    movement 0.0015 0.0026, "", MOVEMENT Seen;
    nds _;
    "Tangential movement is low against other lists for oak." },
    species_row! { "Beech, European", "Fagus sylvatica", Hardwood, Europe;
    gravity _, _, 690.0;
    strength 14000.0 120.0 60.0 _ 10.0 _, STRENGTH;
    shrinkage _, 30.0;
    movement 0.0019 0.0034, "", MOVEMENT Seen;
    nds _;
    "" },
    species_row! { "Ash, European", "Fraxinus excelsior", Hardwood, Europe;
    gravity _, _, 690.0;
    strength 13000.0 105.0 50.0 _ 13.0 _, STRENGTH;
    shrinkage _, 30.0;
    movement 0.0019 0.0034, "", MOVEMENT Seen;
    nds _;
    "" },
    species_row! { "Spruce, Norway", "Picea abies", Softwood, Europe;
    gravity _, _, 470.0;
    strength 10000.0 68.0 40.0 _ 7.5 _, STRENGTH;
    shrinkage _, 30.0;
    movement 0.0015 0.0032, "", MOVEMENT Seen;
    nds _;
    "" },
    species_row! { "Pine, Scots", "Pinus sylvestris", Softwood, Europe;
    gravity _, _, 520.0;
    strength 11000.0 80.0 45.0 _ 10.0 _, STRENGTH;
    shrinkage _, 30.0;
    movement 0.0015 0.003, "", MOVEMENT Seen;
    nds _;
    "" },
    species_row! { "Larch, European", "Larix decidua", Softwood, Europe;
    gravity _, _, 590.0;
    strength 12000.0 93.0 48.0 _ 9.0 _, STRENGTH;
    shrinkage _, 30.0;
    movement 0.002 0.0044, "", MOVEMENT Seen;
    nds _;
    "Tangential movement is high against other lists for larch." },
];
