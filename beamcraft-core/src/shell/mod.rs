//! Mitred panels of a hollow body: faces, bevels, long and short points.

mod mitre;

pub use mitre::{MitrePair, MitrePairInput, mitre_pair};

/// Registry rows of this module.
#[cfg(feature = "json")]
pub(crate) const CALCULATIONS: &[crate::json::Calculation] = &[mitre::MITRE_PAIR];
