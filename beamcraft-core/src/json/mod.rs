//! The JSON door: one canonical writer, one strict reader, and the row type of the registry.
//!
//! Reading refuses unknown, missing, doubled and mistyped fields and names all of them at once, each with its path and
//! the closest known name. A field that ends in `_mm` also takes a shop length as text, such as `"7' 3 1/2\""`.
//! Writing is byte-for-byte the same on every machine; see [`write()`].

mod calculation;
mod number;
mod read;
mod schema;
mod tree;
mod write;

pub use calculation::{Calculation, Door};
pub(crate) use calculation::{calculation, call, family};
pub use number::format_number;
pub use read::read;
pub use schema::{ranges, schema_of};
pub use write::{write, write_pretty};
