//! One joint, two standards: the same input read by the American standard or by Eurocode 5, with the same shape of answer.

mod ec5;
mod ec5_axial;
mod ec5_requirements;
mod input;
mod kinds;
mod lay;
mod nds;
mod nds_axial;
mod nds_requirements;
mod parts;
mod result;

pub use input::JointInput;
pub use kinds::{
    JointDrive, JointDuration, JointFastenerKind, JointMaterial, JointPocketLoad, JointServiceClimate, JointStandard,
};
pub use parts::{JointFastener, JointGapLayer, JointLayout, JointMember, JointPocket};
pub use result::{Joint, JointMode, joint};

#[cfg(feature = "json")]
pub(super) use result::JOINT;

#[cfg(test)]
mod laws_tests;
#[cfg(test)]
mod tests;
