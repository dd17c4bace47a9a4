//! Eurocode 5, EN 1995-1-1 section 8: dowel-type fasteners.
//!
//! Characteristic values first, as the standard has them: bearing of the wood ([`ec5_embedment`]), bending of the
//! fastener ([`ec5_yield_moment`]), the Johansen modes of timber joints ([`ec5_single_shear`], [`ec5_double_shear`]) and
//! of joints with steel plates ([`ec5_steel_single_shear`], [`ec5_steel_central_plate`], [`ec5_steel_outer_plates`]), the
//! pull along the axis ([`ec5_screw_withdrawal`], [`ec5_nail_withdrawal`], [`ec5_head_pull_through`],
//! [`ec5_washer_pull`]), rows ([`ec5_effective_number`]), slip ([`ec5_slip_modulus`]), distances ([`ec5_spacing`]) and splitting ([`ec5_splitting`]);
//! then the design value ([`ec5_design_value`]).
//!
//! The clauses were read in an open calculation library, handbooks and course examples that cite them, not in the
//! standard itself; what is recalled is marked in the docs of each calculation. National annexes change partial factors
//! and some rules: the engineer in charge decides which apply.

mod axial;
mod choice;
mod combined;
mod design;
mod embedment;
mod head;
mod moment;
mod number;
mod rope;
mod simplified;
mod slip;
mod spacing;
mod splitting;
mod steel;
mod timber;

pub use axial::{
    Ec5AxialPart, Ec5NailTimber, Ec5NailWithdrawal, Ec5NailWithdrawalInput, Ec5ScrewWithdrawal,
    Ec5ScrewWithdrawalInput, Ec5WithdrawalRule, ec5_nail_withdrawal, ec5_screw_withdrawal,
};
pub use choice::{Ec5Fastener, Ec5Hole, Ec5LoadDuration, Ec5Material, Ec5ServiceClass};
pub use combined::{Ec5CombinedLoad, Ec5CombinedLoadInput, Ec5CombinedRule, ec5_combined_load};
pub use design::{Ec5DesignValue, Ec5DesignValueInput, ec5_design_value};
pub use embedment::{Ec5Embedment, Ec5EmbedmentInput, Ec5EmbedmentRule, ec5_embedment};
pub use head::{
    Ec5HeadPullThrough, Ec5HeadPullThroughInput, Ec5WasherPart, Ec5WasherPull, Ec5WasherPullInput,
    ec5_head_pull_through, ec5_washer_pull,
};
pub use moment::{
    Ec5ScrewDiameter, Ec5ScrewDiameterInput, Ec5ScrewDiameterRule, Ec5YieldMoment, Ec5YieldMomentInput,
    ec5_screw_diameter, ec5_yield_moment,
};
pub use number::{Ec5EffectiveNumber, Ec5EffectiveNumberInput, ec5_effective_number};
pub use rope::{Ec5RopeEffect, Ec5RopeEffectInput, ec5_rope_effect};
pub use simplified::{Ec5GermanDowel, Ec5GermanDowelInput, ec5_german_dowel};
pub use slip::{Ec5SlipModulus, Ec5SlipModulusInput, Ec5SlipPartner, ec5_slip_modulus};
pub use spacing::{
    Ec5AxialScrewFace, Ec5AxialScrewSpacing, Ec5AxialScrewSpacingInput, Ec5JointPartner, Ec5Spacing, Ec5SpacingInput,
    Ec5SpacingTable, ec5_axial_screw_spacing, ec5_spacing,
};
pub use splitting::{Ec5Splitting, Ec5SplittingInput, ec5_splitting};
pub use steel::{
    Ec5PlateClass, Ec5SteelCentralMode, Ec5SteelCentralPlate, Ec5SteelCentralPlateInput, Ec5SteelMode,
    Ec5SteelOuterMode, Ec5SteelOuterPlates, Ec5SteelOuterPlatesInput, Ec5SteelSingleShear, Ec5SteelSingleShearInput,
    ec5_steel_central_plate, ec5_steel_outer_plates, ec5_steel_single_shear,
};
pub use timber::{
    Ec5DoubleShear, Ec5DoubleShearInput, Ec5DoubleShearMode, Ec5SingleShear, Ec5SingleShearInput, Ec5SingleShearMode,
    ec5_double_shear, ec5_single_shear,
};

pub(super) use choice::kmod;
#[cfg(feature = "json")]
pub(super) use design::recommended;
pub(super) use design::{RECOMMENDED_GAMMA_M, joint_kmod};

/// Registry rows of this folder.
#[cfg(feature = "json")]
pub(super) use {
    axial::EC5_NAIL_WITHDRAWAL, axial::EC5_SCREW_WITHDRAWAL, combined::EC5_COMBINED_LOAD, design::EC5_DESIGN_VALUE,
    embedment::EC5_EMBEDMENT, head::EC5_HEAD_PULL_THROUGH, head::EC5_WASHER_PULL, moment::EC5_SCREW_DIAMETER,
    moment::EC5_YIELD_MOMENT, number::EC5_EFFECTIVE_NUMBER, rope::EC5_ROPE_EFFECT, simplified::EC5_GERMAN_DOWEL,
    slip::EC5_SLIP_MODULUS, spacing::EC5_AXIAL_SCREW_SPACING, spacing::EC5_SPACING, splitting::EC5_SPLITTING,
    steel::EC5_STEEL_CENTRAL_PLATE, steel::EC5_STEEL_OUTER_PLATES, steel::EC5_STEEL_SINGLE_SHEAR,
    timber::EC5_DOUBLE_SHEAR, timber::EC5_SINGLE_SHEAR,
};

/// How far a length may miss the edge of a rule: a figure typed in inches rounds, the standard's edges do not.
const EDGE_MM: f64 = 1e-9;

/// The mode with the least load; on a tie the first.
fn least<M: Copy>(first: (M, f64), others: &[(M, f64)]) -> (M, f64) {
    others.iter().fold(first, |least, mode| if mode.1 < least.1 { *mode } else { least })
}

#[cfg(test)]
mod limit_tests;
#[cfg(test)]
mod property_tests;
