//! Computation for hollow, mitred, wall-hung timber-look beams.
#![forbid(unsafe_code)]

pub mod cite;
pub mod error;
pub mod finding;
pub mod geometry;
#[cfg(feature = "json")]
pub mod json;
pub mod limits;
pub mod numeric;
#[cfg(feature = "json")]
pub mod registry;
pub mod shell;
pub mod units;
pub mod verdict;

// The types and functions of every step stand in one flat list for callers; inside the crate the full paths are used.
pub use crate::shell::*;
