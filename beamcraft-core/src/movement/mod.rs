//! Movement: how boards, mitres and joints change with moisture, and what that asks of screws and glue.
//!
//! ```text
//!      p = 0 flat sawn        p = 45 rift          p = 90 quarter sawn
//!    ╭──────────────╮      ╭──────────────╮       ╭──────────────╮
//!    │ ════════════ │      │ ╱ ╱ ╱ ╱ ╱ ╱ ╱│       │ │ │ │ │ │ │ ││      rings on the end of the board
//!    ╰──────────────╯      ╰──────────────╯       ╰──────────────╯
//!     width tangential                             width radial
//! ```
//!
//! | symbol | meaning | unit |
//! |---|---|---|
//! | M | moisture content | % |
//! | C_r, C_t | movement coefficients, radial and tangential | 1/% |
//! | S_r, S_t | shrinkage from green to ovendry, radial and tangential | % |
//! | p | ring angle: between growth rings and wide face | degree |
//! | ε_w, ε_t | strain across the width and through the thickness, swelling positive | – |
//!
//! Along the grain wood hardly moves (0.1 % to 0.2 % from green to ovendry); so whatever ties a board's width to another
//! board's length is pulled apart or pushed together by the seasons.

mod board;
mod body;
mod cleat;
mod fight;
mod figures;
mod frame_corner;
mod framed;
mod glue;
mod mitre;
mod slot;
mod year;

pub(crate) use board::ring_angle;
pub use board::{BoardCut, BoardMovement, BoardMovementInput, MovementMethod, board_movement};
pub use body::{BodyChange, BodyMovement, BodyMovementInput, body_movement};
pub use cleat::{CleatMovement, CleatMovementInput, SeatContact, cleat_movement};
pub(crate) use fight::modulus_across_mpa;
pub use fight::{CrossGrainCure, CrossGrainFight, CrossGrainFightInput, ReturnArrangement, cross_grain_fight};
pub use figures::{MovementFigures, MovingSpecies, MovingWood};
pub use frame_corner::{FrameCornerMovement, FrameCornerMovementInput, frame_corner_movement};
pub use framed::{FramedMitreMovement, FramedMitreMovementInput, framed_mitre_movement};
pub use glue::{GlueFamily, GlueInWarmth, GlueLineDemand, GlueLineDemandInput, glue_line_demand};
pub use mitre::{MitreMovement, MitreMovementInput, SeamOpening, mitre_movement};
pub use slot::{SlotLength, SlotLengthInput, slot_length};
pub use year::{PanelMonth, PanelYear, YearPanel, YearlyMovement, YearlyMovementInput, yearly_movement};

/// Registry rows of this module.
#[cfg(feature = "json")]
pub(crate) const CALCULATIONS: &[crate::json::Calculation] = &[
    board::BOARD_MOVEMENT,
    mitre::MITRE_MOVEMENT,
    frame_corner::FRAME_CORNER_MOVEMENT,
    slot::SLOT_LENGTH,
    fight::CROSS_GRAIN_FIGHT,
    year::YEARLY_MOVEMENT,
    body::BODY_MOVEMENT,
    cleat::CLEAT_MOVEMENT,
    framed::FRAMED_MITRE_MOVEMENT,
    glue::GLUE_LINE_DEMAND,
];
