//! Dowel connections: screws, lag screws, nails and bolts between two members, with or without a gap.
//!
//! Answers how much one fastener carries sideways in one or two shear planes ([`dowel_shear`], [`dowel_double_shear`]), through a
//! hollow member ([`dowel_shear_hollow`]),
//! along its axis ([`fastener_withdrawal`], [`head_pull_through`]) and both at once ([`combined_lateral_withdrawal`]);
//! what it bears on ([`dowel_bearing`], [`dowel_bearing_material`]); which factors apply to it ([`connection_factors`],
//! [`group_action_factor`], [`geometry_factor`]); which hole it wants ([`lead_hole`], [`bored_hole`]); and all of that for a whole wood
//! screw through a cleat and a wall lining into a stud ([`screw_joint`]) or any nail or screw between members of wood,
//! panel, steel or concrete ([`dowel_joint_nds`]). [`fastener_group`] shares an eccentric load out, [`fastener_group_limit`] lets it yield; [`list_fasteners`]
//! is the catalogue; [`choose_screw`], [`screw_length`], [`screw_count`] and [`pocket_screw`] choose from it;
//! [`joint`](fn@joint) takes one input and answers by either standard.
//!
//! ```text
//!    side member   gap     main member (stud)
//!   ├── l_s ──────┤ g ├──────────── l_m ───────────┤
//!  ▐███████████████████████████████████████████████▶▷   screw: head, shank, thread, tapered tip E
//!                 ├─────────────── p ──────────────┤
//! ```
//!
//! | symbol | meaning | unit |
//! |---|---|---|
//! | D, D_r, D_H | nominal, thread root and head diameter | mm |
//! | D_y | diameter in the yield equations | mm |
//! | E | length of the tapered tip | mm |
//! | l_m, l_s | bearing length in the main and the side member | mm |
//! | p | penetration into the main member, tip included | mm |
//! | g | gap between the members: a wall lining that is not counted on | mm |
//! | G | specific gravity, oven-dry mass and volume | – |
//! | F_e, F_yb | dowel bearing strength; bending yield strength | MPa |
//!
//! Two standards: the American one, with allowable-stress values per fastener and load-and-resistance-factor values
//! beside them in whole joints, and Eurocode 5, whose calculations begin with `ec5_` and give characteristic values. They
//! hold only when the spacing, edge and end distances keep the wood from splitting.
//!
//! **Caution.** Holds only for the stated materials, fasteners, studs and loads. Local codes and licensed practice
//! decide, above all where people could hang on the beam, or the wall is bearing, masonry, or in a seismic place.

mod catalogue;
mod centre;
mod choose;
mod combination;
mod ec5;
mod group;
mod joint;
mod nds;
mod screws;
mod stagger;

pub use catalogue::{
    CatalogueFastener, FastenerFamily, FastenerList, ListFastenersInput, SoldLengthSeries, list_fasteners,
    sold_lengths_mm,
};
pub use centre::{FastenerGroupLimit, FastenerGroupLimitInput, FastenerLimitShare, fastener_group_limit};
pub use choose::*;
pub use combination::{LoadCombination, LoadCombinations, LoadCombinationsInput, LoadsTogether, load_combinations};
pub use ec5::*;
pub use group::{FastenerGroup, FastenerGroupInput, FastenerPosition, FastenerShare, StripContact, fastener_group};
pub use joint::*;
pub use nds::*;
pub use screws::{ListWoodScrewsInput, ScrewSize, WoodScrew, WoodScrewList, list_wood_screws, wood_screw};
pub use stagger::RowStagger;

/// Registry rows of this module.
#[cfg(feature = "json")]
pub(crate) const CALCULATIONS: &[crate::json::Calculation] = &[
    DOWEL_BEARING,
    BENDING_YIELD,
    DOWEL_BEARING_MATERIAL,
    DOWEL_SHEAR,
    DOWEL_DOUBLE_SHEAR,
    DOWEL_SHEAR_HOLLOW,
    FASTENER_WITHDRAWAL,
    HEAD_PULL_THROUGH,
    COMBINED_LATERAL_WITHDRAWAL,
    CONNECTION_FACTORS,
    GROUP_ACTION_FACTOR,
    GEOMETRY_FACTOR,
    LEAD_HOLE,
    BORED_HOLE,
    SCREW_JOINT,
    DOWEL_JOINT_NDS,
    SHORT_PENETRATION,
    combination::LOAD_COMBINATIONS,
    screws::LIST_WOOD_SCREWS,
    EC5_EMBEDMENT,
    EC5_YIELD_MOMENT,
    EC5_SCREW_DIAMETER,
    EC5_ROPE_EFFECT,
    EC5_SINGLE_SHEAR,
    EC5_DOUBLE_SHEAR,
    EC5_STEEL_SINGLE_SHEAR,
    EC5_STEEL_CENTRAL_PLATE,
    EC5_STEEL_OUTER_PLATES,
    EC5_SCREW_WITHDRAWAL,
    EC5_NAIL_WITHDRAWAL,
    EC5_HEAD_PULL_THROUGH,
    EC5_WASHER_PULL,
    EC5_COMBINED_LOAD,
    EC5_EFFECTIVE_NUMBER,
    EC5_SPACING,
    EC5_AXIAL_SCREW_SPACING,
    EC5_SPLITTING,
    EC5_SLIP_MODULUS,
    EC5_DESIGN_VALUE,
    EC5_GERMAN_DOWEL,
    JOINT,
    catalogue::LIST_FASTENERS,
    CHOOSE_SCREW,
    SCREW_COUNT,
    SCREW_LENGTH,
    POCKET_SCREW,
    group::FASTENER_GROUP,
    centre::FASTENER_GROUP_LIMIT,
];
