//! Blanks: what must be cut from boards before the bevels, for one beam or a batch.
//!
//! ```text
//!  matched grain            glued up                       nested
//!  ┌────┬───────┬────┐      ┌──────────────┐ stave         ┌─────────┐╲        one bevelled cut
//!  │left│ front │ rgt│      ├──────────────┤ seam          │ top    ╱ bottom │  serves both, the
//!  └────┴───────┴────┘      └──────────────┘ stave         └───────╱─────────┘  second one flipped
//! ```

mod cutting;
mod lots;

pub use lots::{
    BatchBeam, BlankLot, BlankPriority, BlankUse, GluedBlank, NestedBlank, PlanBlanks, PlanBlanksInput, plan_blanks,
};

/// Registry rows of this module.
#[cfg(feature = "json")]
pub(crate) const CALCULATIONS: &[crate::json::Calculation] = &[lots::PLAN_BLANKS];
