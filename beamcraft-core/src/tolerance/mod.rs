//! Tolerance: how exact the cuts must be, and how wide a mitred seam will stand open.
//!
//! ```text
//!   over-tilt: closed at the show edge        under-tilt: open at the show edge
//!
//!   ────────────●                             ────────────╮ ╭
//!          a   ╱│                                    a    │╱│
//!   ──────────╱ │  b                          ───────────●  │  b
//!            ╲  │                                        │  │
//! ```
//!
//! Angles and offsets of a seam are counted in the direction in which they open it:
//!
//! | symbol | meaning | unit |
//! |---|---|---|
//! | f | length of the seam across the section | mm |
//! | D | divergence of the two cut faces, positive when they part towards the inside | radian |
//! | o | offset of the two cut faces at the show edge, positive when they stand apart | mm |
//!
//! `D` is the sum of both tilt errors (over-tilt positive), the error of the corner and the slopes of cupped panels at
//! their edges. A positive `D` hides in the body, a negative one stands open where it is seen: a small deliberate
//! over-tilt is therefore a choice to offer. Whether an error of thickness reaches the width of the show face, and with
//! it `o`, depends on which face lies up at the saw.
//!
//! # Sources
//! Plane geometry, derived in the theory pages; doubling of the error at a mitre as on a public router and table-saw page;
//! general tolerances and joint grades from the tables named at each.

mod accuracy;
mod first_order;
mod frame;
mod grade;
mod over_tilt;
mod sample;
mod seam;
mod source;
mod stack;

pub use accuracy::{AccuracyReach, SawAccuracy, SawAccuracyInput, TiltSetting, saw_accuracy};
pub use frame::{ErrorForGap, ErrorForGapInput, FrameError, FrameErrorInput, error_for_gap, frame_error};
pub use grade::{
    GeneralTolerance, GeneralToleranceInput, JointGrade, JointPlace, JointTolerance, JointToleranceInput,
    ToleranceClass, general_tolerance, joint_tolerance,
};
pub use over_tilt::{OverTilt, OverTiltInput, over_tilt};
pub use sample::SampleProgress;
pub use seam::{CutSide, OpenEdge, SeamGap, SeamGapInput, SeamHold, seam_gap};
pub use source::{AngleSource, ErrorDistribution, LengthSource, StackEdge, StackSeam, ToleranceStackInput};
pub use stack::{
    GapFirstOrder, GapHistogram, GapStatistics, SeamTolerance, SourceShare, ToleranceStack, tolerance_stack,
    tolerance_stack_with_progress,
};

/// Registry rows of this module.
#[cfg(feature = "json")]
pub(crate) const CALCULATIONS: &[crate::json::Calculation] = &[
    seam::SEAM_GAP,
    frame::FRAME_ERROR,
    frame::ERROR_FOR_GAP,
    accuracy::SAW_ACCURACY,
    over_tilt::OVER_TILT,
    grade::GENERAL_TOLERANCE,
    grade::JOINT_TOLERANCE,
    stack::TOLERANCE_STACK,
];
