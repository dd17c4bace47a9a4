//! Saw settings: tilt, gauge angle, and the fence distance for this face up and this lean of the blade.
//!
//! ```text
//!   show face up, blade leaning away          show face down, blade leaning towards
//!
//!   fence│← ─ ─ W ─ ─ →╱                      fence│        ╲
//!        │   show     ╱                            │  inner  ╲
//!        │___________╱                             │__________╲
//!        │← fence  →                               │← ─ ─ W ─ →
//!   ─────┴────────── table                    ─────┴────────── table
//! ```
//!
//! A bevel is measured from square and is positive when the long point lies on the show face. The fence is measured to
//! the blade at the table. The saw's own rip scale does not hold for a tilted blade.
//!
//! # Caution
//! Guard and riving knife in place, an insert that fits the tilt, never fence and gauge together without a stop block,
//! and test cuts in scrap; see [`crate::finding::Caution::Saw`]. A piece between the fence and a blade that leans towards
//! it is trapped; the result says so.

mod angles;
mod board;
mod caution;
mod chart;
mod cut;
mod fence;
mod findings;
mod machine;
mod order;
mod panel_cuts;
mod place;
#[cfg(test)]
mod proof;
mod run;
mod set_up;
mod ways;

pub use angles::{SawAngles, SawAnglesInput, saw_angles};
pub use board::BlankEdge;
pub use caution::CutCaution;
pub use chart::{TiltChart, TiltChartInput, TiltChartRow, tilt_chart};
pub use cut::{
    BladeLean, CutKind, CutSetUp, CutWay, FaceDown, KeptPiece, PanelCut, PassedLimit, SawLimit, StopMeets, TaperMarks,
};
pub use fence::{RidingEdge, RipFence, RipFenceInput, RipSetUp, TrappedPiece, rip_fence};
pub use findings::beyond_saw;
pub use machine::{BladeSide, SawMachine, SawSpec, ShowFace, TrackSaw};
pub use panel_cuts::{PanelCuts, PanelCutsInput, ShowCorner, cuts_of_panel, panel_cuts};
pub use run::{
    CornerMethod, GrainRun, GrainRunInput, RunCorner, RunCornerLoss, RunDirection, RunPiece, RunPiecePlace, RunShape,
    RunWedge, grain_run,
};
pub use set_up::{BoardSetUp, TiltSetUp, TiltSetUpInput, tilt_set_up};

/// Registry rows of this module.
#[cfg(feature = "json")]
pub(crate) const CALCULATIONS: &[crate::json::Calculation] = &[
    fence::RIP_FENCE,
    angles::SAW_ANGLES,
    set_up::TILT_SET_UP,
    panel_cuts::PANEL_CUTS,
    chart::TILT_CHART,
    run::GRAIN_RUN,
];
