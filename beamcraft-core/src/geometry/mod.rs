//! Planes, convex solids, clipping and mass properties: what exactly is left of a board after straight cuts?
//!
//! A solid is convex, closed, and bounded by plane faces. Every face keeps the plane it came from and a tag of the
//! caller's, so that a face is known by where it came from and not by what happened to survive. Lengths are in
//! millimetres, but nothing here depends on the unit.
//!
//! ```text
//!              normal
//!                ↑        outside: removed
//!   ─────────────┼─────────────────────────  plane
//!                         inside: kept
//! ```
//!
//! # Accuracy
//! A vertex closer to a cutting plane than the solid's [`ConvexSolid::tolerance`] counts as lying on it. That distance
//! is 10⁻¹¹ of the size of the solid the cutting began with, plus what the numbers themselves can resolve far from the
//! origin. Vertices of a cut are shared by the faces beside it, so a solid is closed whatever the rounding.

mod clip;
mod frame;
mod half_spaces;
mod hull;
mod inset;
mod mass;
mod plane;
mod prism;
mod solid;
mod vec3;

#[cfg(test)]
mod laws_tests;

pub use clip::Clip;
pub(crate) use clip::Cutter;
pub use frame::Frame;
pub use half_spaces::NoSolid;
pub use hull::convex_outline;
pub use mass::{Inertia, MassProperties};
pub use plane::Plane;
pub use solid::{ConvexSolid, FaceView};
pub use vec3::{COORDINATE_MAX, Point3, Vec3};
