//! The American standard for wood construction, chapters 11 and 12, and the general dowel equations with a gap.
//!
//! The standard works in inch and pound; each equation is evaluated in its own units and converted at its edge, so that
//! a reviewer finds the printed constants.

mod bearing;
mod bending;
mod bored_hole;
mod combined;
mod double_shear;
mod dowel_joint;
mod dowel_joint_verdicts;
mod factors;
mod geometry;
mod group_action;
mod hollow_shear;
mod joint;
mod joint_verdicts;
mod lateral;
mod lead_hole;
mod lrfd;
mod material;
mod short_penetration;
mod withdrawal;

pub use bearing::{BearingRounding, DowelBearing, DowelBearingInput, DowelSizeRange, FastenerDirection, dowel_bearing};
pub use bending::{BendingYield, BendingYieldFastener, BendingYieldInput, bending_yield};
pub use bored_hole::{BoredHole, BoredHoleInput, bored_hole};
pub use combined::{
    CombinedLateralWithdrawal, CombinedLateralWithdrawalInput, CombinedLoadRule, combined_lateral_withdrawal,
};
pub use double_shear::{DoubleShearMode, DowelDoubleShear, DowelDoubleShearInput, dowel_double_shear};
pub use dowel_joint::{DowelJointNds, DowelJointNdsInput, dowel_joint_nds};
pub use dowel_joint_verdicts::{dowel_joint_nds_verdicts, geometry_factor_verdicts};
pub use factors::{
    ConnectionFactors, ConnectionFactorsInput, DowelFastener, FastenerArrangement, LoadDuration, MemberMoisture,
    NailDriving, TemperatureBand, connection_factors,
};
pub use geometry::{
    BoredHoles, EndDistanceWood, GeometryFactor, GeometryFactorInput, SidePlate, SpacingLoad, SpacingRule,
    geometry_factor,
};
pub use group_action::{GroupActionFactor, GroupActionFactorInput, SlipJoint, group_action_factor};
pub use hollow_shear::{DowelShearHollow, DowelShearHollowInput, dowel_shear_hollow};
pub use joint::{ScrewJoint, ScrewJointCheck, ScrewJointInput, screw_joint};
pub use joint_verdicts::screw_joint_verdicts;
pub use lateral::{DowelShear, DowelShearInput, ReductionRule, YieldMode, dowel_shear};
pub use lead_hole::{LeadHole, LeadHoleInput, LeadHoleNeed, lead_hole};
pub(super) use lrfd::{FORMAT_CONVERSION, RESISTANCE};
pub use lrfd::{NdsDesign, TimeEffect};
pub use material::{DowelBearingMaterial, DowelBearingMaterialInput, DowelMaterial, dowel_bearing_material};
pub use short_penetration::{ShortPenetration, ShortPenetrationInput, short_penetration};
pub use withdrawal::{
    EndGrainRule, FastenerWithdrawal, FastenerWithdrawalInput, HeadPullThrough, HeadPullThroughInput, PullThroughRange,
    fastener_withdrawal, head_pull_through,
};

#[cfg(feature = "json")]
pub(super) use {
    bearing::DOWEL_BEARING, bending::BENDING_YIELD, bored_hole::BORED_HOLE, combined::COMBINED_LATERAL_WITHDRAWAL,
    double_shear::DOWEL_DOUBLE_SHEAR, dowel_joint::DOWEL_JOINT_NDS, factors::CONNECTION_FACTORS,
    geometry::GEOMETRY_FACTOR, group_action::GROUP_ACTION_FACTOR, hollow_shear::DOWEL_SHEAR_HOLLOW, joint::SCREW_JOINT,
    lateral::DOWEL_SHEAR, lead_hole::LEAD_HOLE, material::DOWEL_BEARING_MATERIAL, short_penetration::SHORT_PENETRATION,
    withdrawal::FASTENER_WITHDRAWAL, withdrawal::HEAD_PULL_THROUGH,
};

/// A quarter inch, the diameter at which the rules change, mm.
const QUARTER_INCH_MM: f64 = 6.35;
/// How far a diameter may miss the edge of a band: the conversion from inches rounds, the standard's edges do not.
const EDGE_MM: f64 = 1e-9;

/// Whether a diameter counts as a quarter inch or more.
#[inline(always)]
fn is_quarter_inch(diameter_mm: f64) -> bool {
    diameter_mm >= QUARTER_INCH_MM - EDGE_MM
}
