//! Computation for hollow, mitred, wall-hung timber-look beams.
#![forbid(unsafe_code)]

pub mod cite;
pub mod error;
pub mod finding;
pub mod frame;
pub mod hang;
#[cfg(feature = "json")]
pub mod json;
pub mod lifting;
pub mod limits;
pub mod numeric;
#[cfg(feature = "json")]
pub mod registry;
pub mod setting;
pub mod shell;
pub mod site;
pub mod statics;
pub mod units;
pub mod verdict;
