//! The two-part cleat that carries the body on the wall: its halves, their heights, the studs, the room to lift it on.
//!
//! ```text
//!  wall │         │
//!       │  beam   │   its short face lies against the body
//!       │  half  ╱│ ─ ─ point of the wall half
//!       │      ╱  │
//!       │    ╱ b  │   t·tan b = lift; the seat slopes down towards the wall
//!       │  ╱ wall │
//!       │╱   half │ ─ ─ point of the beam half
//!       │         │
//! ```
//!
//! The wall half has its short face against the wall and its long point in front; the beam half the other way round.
//! To take the body off, it must first rise by the overlap of the two points.
//!
//! Cautions: [`Caution::Structure`](crate::finding::Caution::Structure),
//! [`Caution::Lifting`](crate::finding::Caution::Lifting), [`Caution::Services`](crate::finding::Caution::Services).

mod halves;
mod marks;

pub use halves::{CleatHalves, CleatHalvesInput, cleat_halves};
pub(crate) use marks::bottom_board_meets;
pub use marks::{CleatMarks, CleatMarksInput, LiftRoom, StudScrew, cleat_marks};

/// Registry rows of this module.
#[cfg(feature = "json")]
pub(crate) const CALCULATIONS: &[crate::json::Calculation] = &[halves::CLEAT_HALVES, marks::CLEAT_MARKS];
