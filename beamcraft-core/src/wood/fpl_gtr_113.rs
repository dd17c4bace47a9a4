//! Clear wood of the mahoganies, averages: Wood Handbook, FPL-GTR-113 (1999), Table 4-5b.
//!
//! Shrinkage and movement from the edition of 2010: Tables 4-4 and 13-5.

use super::species::{Species, species_row};
use crate::cite::{Clause, Source};

const STRENGTH: Clause = Clause::new(Source::WoodHandbook1999, "Table 4-5b");
const SHRINKAGE_IMPORTED: Clause = Clause::new(Source::WoodHandbook2010, "Table 4-4");
const MOVEMENT: Clause = Clause::new(Source::WoodHandbook2010, "Table 13-5");

/// One row a species.
pub(super) const ROWS: &[Species] = &[
    species_row! { "Mahogany, true", "Swietenia macrophylla", Hardwood, Imported;
    gravity 0.45 Seen, _, _;
    strength 10300.0 79.3 46.7 _ 8.5 3559.0, STRENGTH;
    shrinkage 3.0 4.1 7.8 SHRINKAGE_IMPORTED Seen, 30.0;
    movement 0.00172 0.00238, "Mahogany", MOVEMENT Recalled;
    nds _;
    "Movement coefficients do not follow from the shrinkage: weak. Strengths converted from psi and lbf." },
    species_row! { "Mahogany, African", "Khaya spp.", Hardwood, Imported;
    gravity 0.42 Seen, _, _;
    strength 9700.0 73.8 44.5 _ 10.3 3692.0, STRENGTH;
    shrinkage 2.5 4.5 8.8 SHRINKAGE_IMPORTED Seen, 30.0;
    movement 0.00141 0.00201, "Khaya", MOVEMENT Recalled;
    nds _;
    "Movement coefficients do not follow from the shrinkage: weak. Strengths converted from psi and lbf." },
];
