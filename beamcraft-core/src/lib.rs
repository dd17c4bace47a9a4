//! Computation for hollow, mitred, wall-hung timber-look beams.
//!
//! A maker's questions, from "may it sit there" to saw settings, boards and screws, each as a pure function from a plain
//! input to a result with its working, and all of them together in one call from a spec to a plan. The book in `docs/`
//! has the guide, the theory and the verification manual.
//!
//! Lengths are in millimetres, forces in newtons, stresses in MPa (N/mm²), masses in kilograms, angles in degrees; the
//! unit is part of each field's name. Nothing panics, nothing reads a clock, a file or the environment, and the same
//! input gives the same bits on every machine.
#![forbid(unsafe_code)]

pub mod bill;
pub mod cite;
#[cfg(feature = "json")]
pub mod columns;
pub mod error;
pub mod export;
pub mod fasten;
pub mod finding;
pub mod finish;
pub mod frame;
pub mod geometry;
pub mod hang;
#[cfg(feature = "json")]
pub mod json;
pub mod lifting;
pub mod limits;
pub mod lumber;
pub mod movement;
pub mod numeric;
pub mod plan;
#[cfg(feature = "json")]
pub mod registry;
pub mod saw;
pub mod setting;
pub mod shell;
pub mod site;
pub mod sizing;
pub mod statics;
pub mod tolerance;
pub mod units;
pub mod verdict;
pub mod wood;
pub mod work;

// The types and functions of every step stand in one flat list for callers; inside the crate the full paths are used.
pub use crate::bill::*;
pub use crate::cite::{Clause, Evidence, Source};
pub use crate::error::{Error, ErrorCode, Fault};
pub use crate::export::*;
pub use crate::fasten::*;
pub use crate::finding::*;
pub use crate::finish::*;
pub use crate::frame::*;
pub use crate::geometry::*;
pub use crate::hang::*;
pub use crate::lifting::*;
pub use crate::lumber::*;
pub use crate::movement::*;
pub use crate::plan::*;
pub use crate::saw::*;
pub use crate::setting::*;
pub use crate::shell::*;
pub use crate::site::*;
pub use crate::sizing::*;
pub use crate::statics::*;
pub use crate::tolerance::*;
pub use crate::units::*;
pub use crate::verdict::*;
pub use crate::wood::*;
pub use crate::work::*;
