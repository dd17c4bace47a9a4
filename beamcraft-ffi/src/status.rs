//! What a call returns.

use core::ffi::c_char;

use crate::generated::codes;

/// What every fallible function returns: BEAMCRAFT_OK, or one of the constants BEAMCRAFT_E_*. The number of a code
/// never changes its meaning; later releases add codes.
pub type beamcraft_status = u32;

/// The call did what it says.
pub const BEAMCRAFT_OK: u32 = 0;

/// Short name of a status in snake case, such as "out_of_range"; "unknown_status" for a number this library does not
/// know. Never NULL; the text is static.
#[unsafe(no_mangle)]
pub extern "C" fn beamcraft_status_name(status: beamcraft_status) -> *const c_char {
    codes::name(status).as_ptr()
}

/// One sentence on what a status means, also for a number this library does not know. Never NULL; the text is static.
#[unsafe(no_mangle)]
pub extern "C" fn beamcraft_status_describe(status: beamcraft_status) -> *const c_char {
    codes::describe(status).as_ptr()
}
