//! Computation for hollow, mitred, wall-hung timber-look beams.
#![forbid(unsafe_code)]

pub mod cite;
pub mod error;
pub mod finding;
pub mod limits;
pub mod numeric;
pub mod verdict;
