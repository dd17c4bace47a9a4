//! What is read from a handle, and given to the caller: one value, a text, a list.

use core::ffi::c_char;

use beamcraft_core::error::{Allowed, ErrorCode, Fault};

use crate::error::beamcraft_error;
use crate::guard::{Failure, guard};
use crate::pointer::{ArrayBuffer, Place, TextBuffer, handle};
use crate::status::beamcraft_status;

/// A handle that calls read from.
pub(crate) trait Handle {
    /// Name of the parameter that holds it.
    const NAME: &'static str;
}

/// The item of a list at a place that came from outside.
pub(crate) fn at<'a, T>(
    list: &'a [T],
    index: usize,
    name: &'static str,
    allowed: &'static str,
) -> Result<&'a T, Failure> {
    let beyond = || Fault::number(ErrorCode::OutOfRange, name, index as f64, Allowed::Text(allowed), "");
    list.get(index).ok_or_else(|| beyond().into())
}

/// Gives one value of an object.
///
/// # Safety
/// `object` is NULL or live; `out` is NULL or writable; `out_error` is NULL or writable.
pub(crate) unsafe fn value<H: Handle, T>(
    object: *const H,
    out: *mut T,
    name: &'static str,
    out_error: *mut *mut beamcraft_error,
    of: impl FnOnce(&H) -> Result<T, Failure>,
) -> beamcraft_status {
    let body = || {
        // SAFETY: the contract of this function.
        let object = unsafe { handle(object, H::NAME) }?;
        let place = Place::new(out, name)?;
        let value = of(object)?;
        // SAFETY: the contract of this function.
        unsafe { place.write(value) };
        Ok(())
    };
    // SAFETY: the contract of this function.
    unsafe { guard(out_error, body) }
}

/// Gives one text of an object.
///
/// # Safety
/// `object` is NULL or live; `buffer` is NULL or has `capacity` writable bytes; the rest is NULL or writable.
pub(crate) unsafe fn words<H: Handle>(
    object: *const H,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
    of: impl FnOnce(&H) -> Result<String, Failure>,
) -> beamcraft_status {
    let body = || {
        // SAFETY: the contract of this function.
        let object = unsafe { handle(object, H::NAME) }?;
        let place = TextBuffer::new(buffer, capacity, out_needed)?;
        let text = of(object)?;
        // SAFETY: the contract of this function.
        unsafe { place.write(&text) }
    };
    // SAFETY: the contract of this function.
    unsafe { guard(out_error, body) }
}

/// Gives a list of numbers of an object.
///
/// # Safety
/// `object` is NULL or live; `buffer` is NULL or has room for `capacity` items; the rest is NULL or writable.
pub(crate) unsafe fn items<H: Handle, T: Copy>(
    object: *const H,
    buffer: *mut T,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
    of: impl FnOnce(&H) -> Result<Vec<T>, Failure>,
) -> beamcraft_status {
    let body = || {
        // SAFETY: the contract of this function.
        let object = unsafe { handle(object, H::NAME) }?;
        let place = ArrayBuffer::new(buffer, capacity, out_needed)?;
        let items = of(object)?;
        // SAFETY: the contract of this function.
        unsafe { place.write(&items) }
    };
    // SAFETY: the contract of this function.
    unsafe { guard(out_error, body) }
}
