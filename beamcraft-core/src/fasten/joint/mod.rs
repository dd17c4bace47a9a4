//! One joint, two standards: the same input read by the American standard or by Eurocode 5, with the same shape of answer.

mod ec5;
mod ec5_requirements;
mod input;
mod lay;
mod nds;
mod result;

pub use input::{
    JointDrive, JointDuration, JointFastener, JointFastenerKind, JointGapLayer, JointInput, JointLayout, JointMember,
    JointServiceClimate, JointStandard,
};
pub use result::{Joint, JointMode, joint};

#[cfg(feature = "json")]
pub(super) use result::JOINT;

#[cfg(test)]
mod tests;
