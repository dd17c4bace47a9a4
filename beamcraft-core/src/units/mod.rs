//! Shop lengths read and written, and every conversion factor of the library in one place.
//!
//! Inside the library a length is a number of millimetres. Text such as `5 1/4"` exists only here: [`parse_length`] reads
//! it without guessing a unit, [`write_length`] rounds to marks that a tape or rule has and says how far off the mark is.
//!
//! ```
//! use beamcraft_core::units::{parse_length, shop_inches};
//! assert_eq!(parse_length("5 1/4\"")?, 133.35);
//! assert_eq!(shop_inches(133.0), "5 1/4\"");
//! # Ok::<(), beamcraft_core::error::Fault>(())
//! ```

mod exact;
pub mod factor;
mod format;
mod parse;
mod token;

pub use format::{LengthRounding, LengthStyle, LengthWriting, WriteLengthInput, shop_inches, write_length};
pub use parse::{LengthReading, ReadLengthInput, parse_length, read_length};

/// Registry rows of this module.
#[cfg(feature = "json")]
pub(crate) const CALCULATIONS: &[crate::json::Calculation] = &[parse::READ_LENGTH, format::WRITE_LENGTH];
