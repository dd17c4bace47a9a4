//! The pieces inside the body: frame pieces and glue blocks, screws driven from inside, and the order of assembly.
//!
//! Symbols and equations stand with each calculation. A section is seen with the front to the left: out towards the wall,
//! and up.

mod assembly;
mod blocks;
mod hollow;
mod piece;
mod screws;
mod section_piece;
mod spacing;

pub use assembly::{
    AssemblyOrder, AssemblyOrderInput, AssemblySeam, AssemblyStep, AssemblyWork, GluePace, SeamJoint, assembly_order,
};
pub use blocks::{GlueBlocks, GlueBlocksInput, SeamGrain, glue_blocks};
pub use hollow::HollowCorner;
pub use piece::{FramePiece, FramePieceInput, frame_piece};
pub use screws::{DriverRoom, InsideScrew, InsideScrewCheck, InsideScrews, InsideScrewsInput, ScrewTip, inside_screws};
pub use section_piece::{ClearedKeepOut, SectionKeepOut, SectionPiece, SectionPieceInput, SectionSide, section_piece};
pub use spacing::{FrameSpacing, FrameSpacingInput, KeepOut, frame_spacing};

/// Registry rows of this module.
#[cfg(feature = "json")]
pub(crate) const CALCULATIONS: &[crate::json::Calculation] = &[
    piece::FRAME_PIECE,
    section_piece::SECTION_PIECE,
    spacing::FRAME_SPACING,
    blocks::GLUE_BLOCKS,
    screws::INSIDE_SCREWS,
    assembly::ASSEMBLY_ORDER,
];
