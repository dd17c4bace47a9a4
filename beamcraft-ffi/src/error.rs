//! The error object.

use core::ffi::c_char;

use beamcraft_core::error::{Allowed, Detail, Error, ErrorCode, Fault};

use crate::guard::{Failure, guard_plain};
use crate::pointer::{Place, TextBuffer, handle};
use crate::status::beamcraft_status;

/// Why a call was refused: one or more faults. Never changes, so that any number of threads may read it at once.
pub struct beamcraft_error {
    error: Error,
}

const _: () = {
    const fn shared_by_threads<T: Send + Sync>() {}
    shared_by_threads::<beamcraft_error>();
};

impl beamcraft_error {
    pub(crate) fn new(error: Error) -> Self {
        Self { error }
    }

    fn detail(&self, index: usize) -> Result<&Detail, Fault> {
        let allowed = Allowed::Text("below beamcraft_error_count");
        let beyond = || Fault::number(ErrorCode::OutOfRange, "index", index as f64, allowed, "");
        self.error.details().get(index).ok_or_else(beyond)
    }
}

/// Frees an error object. NULL is allowed and does nothing.
///
/// # Safety
/// `error` is NULL, or came out of a call of this library and was not freed before; nobody uses it any more.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_error_free(error: *mut beamcraft_error) {
    if !error.is_null() {
        // SAFETY: made by `Box::into_raw` and not freed before, by the contract.
        let object = unsafe { Box::from_raw(error) };
        // Plain texts: dropping them cannot panic.
        drop(object);
    }
}

/// How many faults there are: at least 1; 0 for NULL.
///
/// # Safety
/// `error` is NULL or a live error object.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_error_count(error: *const beamcraft_error) -> usize {
    // SAFETY: the contract of this function.
    unsafe { handle(error, "error") }.map_or(0, |object| object.error.details().len())
}

/// Code of the fault at `index`, counted from 0.
///
/// # Safety
/// `error` is NULL or a live error object; `out_code` is NULL or writable. NULL is refused.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_error_code(
    error: *const beamcraft_error,
    index: usize,
    out_code: *mut beamcraft_status,
) -> beamcraft_status {
    guard_plain(|| {
        // SAFETY: the contract of this function.
        let object = unsafe { handle(error, "error") }?;
        let place = Place::new(out_code, "out_code")?;
        let code = object.detail(index)?.code as u32;
        // SAFETY: the contract of this function.
        unsafe { place.write(code) };
        Ok(())
    })
}

/// Gives one text of an error object.
///
/// # Safety
/// `error` is NULL or live; `buffer` is NULL or has `capacity` writable bytes; `out_needed` is NULL or writable.
unsafe fn give(
    error: *const beamcraft_error,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    text: impl FnOnce(&beamcraft_error) -> Result<String, Failure>,
) -> beamcraft_status {
    guard_plain(|| {
        // SAFETY: the contract of this function.
        let object = unsafe { handle(error, "error") }?;
        let place = TextBuffer::new(buffer, capacity, out_needed)?;
        // SAFETY: the contract of this function.
        unsafe { place.write(&text(object)?) }
    })
}

/// Path of the field at fault in the fault at `index`, such as `thickness_a_mm` or `body.legs[0].length_mm`; empty for
/// the whole input.
///
/// # Safety
/// `error` is NULL or a live error object; the rest is a text buffer, see the top of the header.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_error_path(
    error: *const beamcraft_error,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe { give(error, buffer, capacity, out_needed, |object| Ok(object.detail(index)?.path.clone())) }
}

/// What was given, as text with its unit; empty where nothing was given.
///
/// # Safety
/// `error` is NULL or a live error object; the rest is a text buffer, see the top of the header.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_error_given(
    error: *const beamcraft_error,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe { give(error, buffer, capacity, out_needed, |object| Ok(object.detail(index)?.given.clone())) }
}

/// What would have been allowed, in words.
///
/// # Safety
/// `error` is NULL or a live error object; the rest is a text buffer, see the top of the header.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_error_allowed(
    error: *const beamcraft_error,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe { give(error, buffer, capacity, out_needed, |object| Ok(object.detail(index)?.allowed.clone())) }
}

/// What to change, in words; may be empty.
///
/// # Safety
/// `error` is NULL or a live error object; the rest is a text buffer, see the top of the header.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_error_cure(
    error: *const beamcraft_error,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe { give(error, buffer, capacity, out_needed, |object| Ok(object.detail(index)?.cure.clone())) }
}

/// The fault at `index` as one line: path, what was given, what is allowed, what to change.
///
/// # Safety
/// `error` is NULL or a live error object; the rest is a text buffer, see the top of the header.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_error_message(
    error: *const beamcraft_error,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe { give(error, buffer, capacity, out_needed, |object| Ok(object.detail(index)?.to_string())) }
}

/// Every fault as text, one line each.
///
/// # Safety
/// `error` is NULL or a live error object; the rest is a text buffer, see the top of the header.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_error_text(
    error: *const beamcraft_error,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe { give(error, buffer, capacity, out_needed, |object| Ok(object.error.to_string())) }
}
