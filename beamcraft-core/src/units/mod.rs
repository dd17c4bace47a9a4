//! Shop lengths read and written.

use crate::error::Fault;

/// Reads a length.
///
/// # Errors
/// `malformed`.
pub fn parse_length(text: &str) -> Result<f64, Fault> {
    let _ = text;
    Err(Fault::plain(crate::error::ErrorCode::Malformed, "text", "a length with its unit", ""))
}
