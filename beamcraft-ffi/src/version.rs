//! Which library this is.

use core::ffi::{CStr, c_char};

/// Number of the binary interface that this header describes; see beamcraft_abi_version.
pub const BEAMCRAFT_ABI_VERSION: u32 = 0;

const VERSION: &CStr = match CStr::from_bytes_with_nul(concat!(env!("CARGO_PKG_VERSION"), "\0").as_bytes()) {
    Ok(text) => text,
    Err(_) => c"",
};

/// Version of the library in use, such as "0.1.0"; compare it with BEAMCRAFT_VERSION_STRING, the version of this
/// header. Never NULL; the text is static.
#[unsafe(no_mangle)]
pub extern "C" fn beamcraft_version() -> *const c_char {
    VERSION.as_ptr()
}

/// Number of the binary interface of the library in use. A program runs with any library that returns the
/// BEAMCRAFT_ABI_VERSION it was compiled with. While the number is 0 the interface may still change with any release.
#[unsafe(no_mangle)]
pub extern "C" fn beamcraft_abi_version() -> u32 {
    BEAMCRAFT_ABI_VERSION
}
