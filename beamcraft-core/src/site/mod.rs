//! What is around the body: how near the opening it may come by the published rules, and how it meets the wall and the
//! things on it.
//!
//! It reports distances and margins against a *named* rule and edition, and nothing else: no body is called safe or
//! approved here. The order of authority is the law as adopted locally, then the listing and the instructions of the
//! appliance, then the generic rules for masonry fireplaces. Generic rules never stand in for a listing.
//! See [`Caution::Fire`](crate::finding::Caution::Fire).
//!
//! # What is measured
//! | symbol | meaning |
//! |---|---|
//! | d | shortest distance, in the plane of the fireplace's face, from the edge of the *opening* to the combustible point; not from a surround |
//! | p | how far that point stands out from the face |
//!
//! A profile with a chamfer or a corbel is tested point by point, as [`body_clearance`] does for a whole outline; for a
//! rectangular body the lower front edge is enough.

mod body_clearance;
mod clearance;
mod fit;
mod frame_fixing;
mod lift;
mod rules;
mod stretch;

pub(crate) use body_clearance::body_margins;
pub use body_clearance::{
    BodyClearance, BodyClearanceAnswer, BodyClearanceInput, ClearancePoint, DepthAndHeight, body_clearance,
};
pub use clearance::{
    ClearanceAnswer, ListingAnswer, MantelClearance, MantelClearanceInput, ProjectionLimit, mantel_clearance,
};
pub use fit::{
    BackingSpan, EndGap, ScribeStation, SiteFit, SiteFitInput, StudPacking, ThingGap, WallHalfPlace, WayIn, site_fit,
};
pub use frame_fixing::{CeilingFrame, FrameFixing, FrameFixingInput, FramePlace, WallFrame, frame_fixing};
pub use lift::{LiftCure, LiftCureKind, LiftFrame, LiftManner, LiftOn, LiftOnInput, LiftRole, LiftShape, lift_on};
pub use rules::{
    CLEARANCE_RULES, ClearanceForm, ClearanceRule, LeastDistance, MantelRule, OpeningSide, OwnClearanceRule,
    SlopeDistance, StepDistance,
};

/// Registry rows of this module.
#[cfg(feature = "json")]
pub(crate) const CALCULATIONS: &[crate::json::Calculation] = &[
    clearance::MANTEL_CLEARANCE,
    body_clearance::BODY_CLEARANCE,
    fit::SITE_FIT,
    lift::LIFT_ON,
    frame_fixing::FRAME_FIXING,
];
