//! The setting of a body: the wall with its studs, what hangs above, the opening and its appliance. Data only.
//!
//! # Datum
//! One frame for everything on the wall: **x** along the wall from a plumb line of the maker's choice, to the right as
//! seen from the room; **z** up from the finished floor; projections **out** from the finished face of the wall. A body
//! is placed in it by its left end and by the height of its bottom. All in mm.
//!
//! Stud positions are to be found and measured: corners, openings and chimney chases break every spacing, and old
//! walls never had one. A spacing only fills in a first guess.

mod fire;
mod outline;
mod survey;
mod wall;

pub use fire::{Appliance, ApplianceKind, FireOpening, ListingChart, ListingDatum, ListingStep};
pub use outline::{OutlinePart, OutlinePoint};
pub use survey::{Backing, BackingKind, SideWall, WallFace, WallStation, WallSurvey};
pub use wall::{BodyPlace, MeasuredStuds, Obstruction, SpacedStuds, StudLayout, StudWood, ThingKind, Wall};
