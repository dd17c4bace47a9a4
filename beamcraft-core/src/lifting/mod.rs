//! What a person can be asked to lift: the revised NIOSH lifting equation.
//!
//! The equation is a design number for one person's two-handed lift, not a forecast for anybody. Standing on a ladder
//! or steps with a load is outside every published lifting method; see
//! [`Caution::Lifting`](crate::finding::Caution::Lifting).

mod index;
mod tables;

pub use index::{
    HandCoupling, LiftDuration, LiftLimit, LiftStanding, LiftingForm, LiftingIndex, LiftingIndexInput, lifting_index,
};

/// Registry rows of this module.
#[cfg(feature = "json")]
pub(crate) const CALCULATIONS: &[crate::json::Calculation] = &[index::LIFTING_INDEX];
