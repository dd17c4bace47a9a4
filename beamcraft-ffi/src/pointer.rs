//! Pointers from outside: checked for NULL, read into a value of our own or written once at the end.

use core::ffi::c_char;

use beamcraft_core::error::{Allowed, Detail, Error, ErrorCode, Fault};

use crate::guard::Failure;

const NOT_NULL: &str = "a pointer to live memory";

#[cold]
pub(crate) const fn null(name: &'static str) -> Fault {
    Fault::plain(ErrorCode::NullPointer, name, NOT_NULL, "")
}

/// A place for a result, known not to be NULL.
pub(crate) struct Place<T>(*mut T);

impl<T> Place<T> {
    pub(crate) fn new(pointer: *mut T, name: &'static str) -> Result<Self, Fault> {
        if pointer.is_null() { Err(null(name)) } else { Ok(Self(pointer)) }
    }

    /// # Safety
    /// The pointer is aligned and writable.
    pub(crate) unsafe fn write(self, value: T) {
        // SAFETY: not NULL since `new`; aligned and writable by the contract.
        unsafe { self.0.write(value) };
    }
}

/// The object behind a handle.
///
/// # Safety
/// `pointer` is NULL or a live object that nobody changes or frees during the call.
pub(crate) unsafe fn handle<'a, T>(pointer: *const T, name: &'static str) -> Result<&'a T, Fault> {
    // SAFETY: NULL or live by the contract.
    unsafe { pointer.as_ref() }.ok_or(null(name))
}

/// A text from outside.
///
/// # Safety
/// `pointer` is NULL or points to `length` readable bytes that nobody changes during the call.
pub(crate) unsafe fn text<'a>(
    pointer: *const c_char,
    length: usize,
    name: &'static str,
    length_name: &'static str,
) -> Result<&'a str, Failure> {
    if pointer.is_null() {
        return Err(null(name).into());
    }
    if isize::try_from(length).is_err() {
        let allowed = Allowed::Text("a size that memory can have");
        return Err(Fault::number(ErrorCode::OutOfRange, length_name, length as f64, allowed, "").into());
    }
    // SAFETY: not NULL, `length` bytes readable and unchanged by the contract, and no more than memory can have.
    let bytes = unsafe { core::slice::from_raw_parts(pointer.cast::<u8>(), length) };
    core::str::from_utf8(bytes).map_err(|fault| {
        let given = format!("bytes that are no UTF-8 from place {}", fault.valid_up_to());
        let (allowed, cure) = ("UTF-8".to_owned(), String::new());
        Error::one(Detail { code: ErrorCode::Malformed, path: name.to_owned(), given, allowed, cure }).into()
    })
}

/// The caller's buffer for a list: where, how large, and where to say how much is needed.
pub(crate) struct ArrayBuffer<T> {
    buffer: *mut T,
    capacity: usize,
    out_needed: Place<usize>,
}

impl<T: Copy> ArrayBuffer<T> {
    pub(crate) fn new(buffer: *mut T, capacity: usize, out_needed: *mut usize) -> Result<Self, Fault> {
        let out_needed = Place::new(out_needed, "out_needed")?;
        if buffer.is_null() && capacity > 0 {
            return Err(null("buffer"));
        }
        Ok(Self { buffer, capacity, out_needed })
    }

    /// Writes the items and what closes them if all fit; says in any case how many they are.
    ///
    /// # Safety
    /// `buffer` is aligned and has room for `capacity` items, `out_needed` is writable.
    unsafe fn write_closed(self, items: &[T], end: &[T]) -> Result<(), Failure> {
        let needed = items.len() + end.len();
        // SAFETY: writable by the contract.
        unsafe { self.out_needed.write(needed) };
        if self.capacity == 0 {
            return Ok(());
        }
        if self.capacity < needed {
            return Err(too_small(self.capacity, needed));
        }
        // SAFETY: `capacity` ≥ `needed` items are writable; the items are ours, so nothing overlaps.
        unsafe { self.buffer.copy_from_nonoverlapping(items.as_ptr(), items.len()) };
        // SAFETY: no further than behind the last of the `needed` items.
        let behind = unsafe { self.buffer.add(items.len()) };
        // SAFETY: as above.
        unsafe { behind.copy_from_nonoverlapping(end.as_ptr(), end.len()) };
        Ok(())
    }

    /// Writes the items if all fit; says in any case how many they are.
    ///
    /// # Safety
    /// `buffer` is aligned and has room for `capacity` items, `out_needed` is writable.
    pub(crate) unsafe fn write(self, items: &[T]) -> Result<(), Failure> {
        // SAFETY: the same contract.
        unsafe { self.write_closed(items, &[]) }
    }
}

/// The caller's buffer for a text; it is closed by NUL.
pub(crate) struct TextBuffer(ArrayBuffer<u8>);

impl TextBuffer {
    pub(crate) fn new(buffer: *mut c_char, capacity: usize, out_needed: *mut usize) -> Result<Self, Fault> {
        ArrayBuffer::new(buffer.cast(), capacity, out_needed).map(Self)
    }

    /// Writes the text and a closing NUL if they fit; says in any case how many bytes they need.
    ///
    /// # Safety
    /// `buffer` has `capacity` writable bytes, `out_needed` is writable.
    pub(crate) unsafe fn write(self, text: &str) -> Result<(), Failure> {
        // SAFETY: the same contract.
        unsafe { self.0.write_closed(text.as_bytes(), &[0]) }
    }
}

#[cold]
fn too_small(capacity: usize, needed: usize) -> Failure {
    let (given, allowed) = (capacity.to_string(), format!("{needed} or more"));
    let cure = "call with capacity 0 to ask for the size".to_owned();
    Error::one(Detail { code: ErrorCode::BufferTooSmall, path: "capacity".to_owned(), given, allowed, cure }).into()
}
