//! Boards as they are sold: tally, rough and dressed sizes, grades, and how much to buy.
//!
//! ```text
//!  rough      ┌──────────────┐   4/4: one inch, sawn
//!             │╭────────────╮│
//!  surfaced   │╰────────────╯│   S2S: 13/16 in at least
//!             └──────────────┘
//! ```
//!
//! Volume is quoted twice throughout: exactly, and as the trade tallies it, because the two differ by several parts in a
//! hundred on a small order.

mod buy;
mod dressed;
mod grade;
mod measure;
mod rough;
mod sawn;
mod strips;
mod target;

pub use buy::{LumberToBuy, LumberToBuyInput, lumber_to_buy};
pub use dressed::{DressedSize, DressedSizeInput, LumberSeasoning, dressed_size};
pub use grade::{BoardSizeVerdict, HardwoodGrade, HardwoodGradeInput, HardwoodGradeRule, hardwood_grade};
pub use measure::{BoardMeasure, BoardMeasureInput, TallyRule, board_measure};
pub use rough::{RoughThickness, RoughThicknessFound, RoughThicknessInput, rough_thickness};
pub use sawn::{SawnClass, SawnSize, SawnSizeInput, sawn_size};
pub use strips::{StripsFromWidth, StripsFromWidthInput, strips_from_width};
pub use target::{TargetRoughSize, TargetRoughSizeInput, target_rough_size};

/// Registry rows of this module.
#[cfg(feature = "json")]
pub(crate) const CALCULATIONS: &[crate::json::Calculation] = &[
    measure::BOARD_MEASURE,
    rough::ROUGH_THICKNESS,
    dressed::DRESSED_SIZE,
    sawn::SAWN_SIZE,
    target::TARGET_ROUGH_SIZE,
    grade::HARDWOOD_GRADE,
    buy::LUMBER_TO_BUY,
    strips::STRIPS_FROM_WIDTH,
];

/// Random inputs that no yard would give.
#[cfg(test)]
mod hostile {
    use proptest::prelude::*;

    /// Any bit pattern, and often enough a number that an input may hold.
    pub(super) fn number() -> impl Strategy<Value = f64> {
        prop_oneof![
            any::<u64>().prop_map(f64::from_bits),
            0.0..1.0_f64,
            1.0..5_000.0_f64,
            prop::sample::select(vec![0.0, -0.0, 25.4, 50.8, 101.6, 304.8, 5e-324, 1e300]),
        ]
    }
}
