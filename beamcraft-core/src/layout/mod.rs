//! Cut lists: which parts come from which bar or board, cut by cut, with a bound on what any layout must cost.
//!
//! ```text
//!  ┌──────────────┬─────────┬───┐   grain →
//!  │ front        │ end     │   │   rip first: strips along the grain,
//!  ├──────────┬───┴──────┬──┴───┤   then cross-cuts within a strip, then rips again
//!  │ top      │ bottom   │ ░░░░ │   every cut goes from edge to edge of what it divides
//!  └──────────┴──────────┴──────┘
//! ```
//!
//! The search counts steps, never seconds, so that the same input gives the same layout on every run and every machine.
//! The answer carries its value and a bound that was proven; where both meet, no better layout exists.

mod around;
mod bars;
mod boards;
#[cfg(test)]
mod checker;
mod cuts;
pub(crate) mod engine;
mod faults;
mod fit;
mod solve;
mod written;

pub use bars::{
    BarDefect, BarPart, BarPartPlace, BarStock, CutBar, CutListBars, CutListBarsInput, cut_list_bars,
    cut_list_bars_with_progress,
};
pub use boards::{
    BoardDefect, BoardPart, BoardPartPlace, BoardPartTurn, BoardRectangle, BoardStock, CutBoard, CutListBoards,
    CutListBoardsInput, CutOrder, GroupDirection, GroupPart, LayoutAim, LayoutCut, PartGroup, PlacedTurn,
    cut_list_boards, cut_list_boards_with_progress,
};
pub use engine::watch::{LayoutProgress, Watcher};
pub use fit::{LayoutEnd, LayoutMeasure, LayoutProof, LayoutQuality, MissingPart, StockUse};

/// Registry rows of this module.
#[cfg(feature = "json")]
pub(crate) const CALCULATIONS: &[crate::json::Calculation] = &[bars::CUT_LIST_BARS, boards::CUT_LIST_BOARDS];
