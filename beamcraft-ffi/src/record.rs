//! Structs from and to C: sizes that are known, defaults for what an older caller does not have, choices by number.
#![allow(dead_code, reason = "which of these the generated calls use depends on the fields of the calculations")]

use beamcraft_core::error::{Allowed, ErrorCode, Fault};

use crate::error::beamcraft_error;
use crate::guard::{Failure, guard};
use crate::pointer::{Place, null};
use crate::status::beamcraft_status;

/// A size of a growing struct that is known, and the optional fields that it holds.
pub(crate) struct Size {
    /// Bytes.
    pub(crate) bytes: u64,
    /// Bits of the `given` mask.
    pub(crate) bits: u64,
}

/// An input struct. It starts with `struct_size`, has no padding, and every bit pattern is a value of it.
///
/// # Safety
/// The implementor is `repr(C)`, holds only numbers, starts with a `u64` size, and no size in `SIZES` exceeds its own.
pub(crate) unsafe trait Input: Copy {
    /// The core's struct.
    type Core;
    /// What the init function gives.
    const INITIAL: Self;
    /// Every size that is known, the smallest first.
    const SIZES: &'static [Size];
    /// The optional fields that are given.
    fn given(&self) -> u64;
    /// The core's struct.
    fn to_core(&self) -> Result<Self::Core, Fault>;
}

/// An output struct.
pub(crate) trait Output: Copy {
    /// The core's struct.
    type Core;
    /// The core's struct as C sees it.
    fn of_core(core: &Self::Core) -> Self;
}

/// Sets up an input struct; does nothing for NULL.
///
/// # Safety
/// `out_input` is NULL or writable.
pub(crate) unsafe fn init<I: Input>(out_input: *mut I) {
    if let Ok(place) = Place::new(out_input, "out_input") {
        // SAFETY: writable by the contract.
        unsafe { place.write(I::INITIAL) };
    }
}

/// Reads an input struct of any known size.
///
/// # Safety
/// `input` is NULL, or aligned and readable for as many bytes as its first field says.
unsafe fn read<I: Input>(input: *const I) -> Result<I, Fault> {
    if input.is_null() {
        return Err(null("input"));
    }
    // SAFETY: every input starts with its size.
    let bytes = unsafe { input.cast::<u64>().read() };
    let Some(size) = I::SIZES.iter().find(|size| size.bytes == bytes) else {
        let allowed = Allowed::Text("a size that the init function of the struct has set");
        let cure = "call the init function before the fields are set";
        return Err(Fault::number(ErrorCode::StructSize, "struct_size", bytes as f64, allowed, cure));
    };
    let mut value = I::INITIAL;
    let target = (&raw mut value).cast::<u8>();
    // SAFETY: `bytes` are readable by the contract and no more than the struct has; it holds numbers only.
    unsafe { target.copy_from_nonoverlapping(input.cast::<u8>(), bytes as usize) };
    if value.given() & !size.bits != 0 {
        let allowed = Allowed::Text("a sum of the GIVEN constants of this struct");
        return Err(Fault::number(ErrorCode::UnknownChoice, "given", value.given() as f64, allowed, ""));
    }
    Ok(value)
}

/// A typed call: reads the input, computes, and on success writes the output.
///
/// # Safety
/// `input` is NULL, or aligned and readable for as many bytes as its first field says; `output` is NULL, or aligned and
/// writable; `out_error` is NULL or writable.
pub(crate) unsafe fn typed<I: Input, O: Output, E: Into<Failure>>(
    input: *const I,
    output: *mut O,
    out_error: *mut *mut beamcraft_error,
    compute: fn(&I::Core) -> Result<O::Core, E>,
) -> beamcraft_status {
    let body = || {
        // SAFETY: the contract of this function.
        let record = unsafe { read(input) }?;
        let place = Place::new(output, "output")?;
        let result = compute(&record.to_core()?).map_err(Into::into)?;
        // SAFETY: the contract of this function.
        unsafe { place.write(O::of_core(&result)) };
        Ok(())
    };
    // SAFETY: the contract of this function.
    unsafe { guard(out_error, body) }
}

/// The value of an optional field.
pub(crate) fn optional<T>(given: u64, bit: u64, value: T) -> Option<T> {
    if given & bit == 0 { None } else { Some(value) }
}

/// The bit of an optional field, where it has a value.
pub(crate) fn bit<T>(value: Option<&T>, bit: u64) -> u64 {
    if value.is_some() { bit } else { 0 }
}

/// Refuses anything but zero in a field kept for later.
pub(crate) fn reserved(field: &'static str, value: u32) -> Result<(), Fault> {
    if value == 0 {
        return Ok(());
    }
    let cure = "call the init function before the fields are set";
    Err(Fault::number(ErrorCode::OutOfRange, field, f64::from(value), Allowed::Text("0"), cure))
}

/// A number that is no constant of its enumeration.
#[cold]
pub(crate) const fn unknown_choice(field: &'static str, value: u32, allowed: &'static str) -> Fault {
    Fault::number(ErrorCode::UnknownChoice, field, value as f64, Allowed::Text(allowed), "")
}
