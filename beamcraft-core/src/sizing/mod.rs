//! Sizes and loads that pass every check of a plan: which wall screws, which cleat, how much may stand on it.
//!
//! Each answer is a plan made again with one thing changed, so that it says what the plan says.

mod load;
mod variant;

pub use load::{GreatestLoad, GreatestLoadInput, LoadAtLimit, SizedLoad, greatest_load};
pub use variant::{
    CleatStrip, CleatVariant, CleatVariants, CleatsThatHoldInput, VariantOutcome, WallScrewVariant, WallScrewVariants,
    WallScrewsThatHoldInput, cleats_that_hold, wall_screws_that_hold,
};

use crate::verdict::{Outcome, Verdict};

/// Whether a check is not met, or its demand beyond its capacity, whatever the check makes of that.
fn is_beyond(check: &Verdict) -> bool {
    let beyond = matches!((check.demand, check.capacity), (Some(demand), Some(capacity)) if demand > capacity);
    beyond || check.outcome == Outcome::NotMet
}

/// The check in words, with its part.
fn words(check: &Verdict) -> String {
    format!("{} ({})", check.name, check.subject)
}

/// Registry rows of this module.
#[cfg(feature = "json")]
pub(crate) const CALCULATIONS: &[crate::json::Calculation] =
    &[load::GREATEST_LOAD, variant::WALL_SCREWS_THAT_HOLD, variant::CLEATS_THAT_HOLD];
