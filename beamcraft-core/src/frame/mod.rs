//! The pieces inside the body that hold its boards square: their size, and where they go along it.
//!
//! Symbols and equations stand with each calculation. How pieces, cleat and screws share the hollow is not told here.

mod piece;
mod spacing;

pub use piece::{FramePiece, FramePieceInput, frame_piece};
pub use spacing::{FrameSpacing, FrameSpacingInput, KeepOut, frame_spacing};

/// Registry rows of this module.
#[cfg(feature = "json")]
pub(crate) const CALCULATIONS: &[crate::json::Calculation] = &[piece::FRAME_PIECE, spacing::FRAME_SPACING];
