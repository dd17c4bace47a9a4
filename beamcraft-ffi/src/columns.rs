//! The column door: a calculation of numbers and choices over many rows in one call.

use core::ffi::c_char;
use core::slice;

use beamcraft_core::columns::{Column, ColumnMut, Columns};
use beamcraft_core::error::{Detail, Error, ErrorCode};
use beamcraft_core::registry;

use crate::error::beamcraft_error;
use crate::guard::{Failure, guard};
use crate::pointer::{Place, null, text};
use crate::status::beamcraft_status;

/// The code of nothing in a column of choices or counts: an optional value that a row does not have, a row that is
/// refused, a fault that belongs to no single field.
pub const BEAMCRAFT_ABSENT: u32 = u32::MAX;

/// An input field of a call over columns. The library reads the values in place and keeps no pointer.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct beamcraft_column_input {
    /// Name of the field, UTF-8.
    pub name: *const c_char,
    /// Bytes of the name.
    pub name_length: usize,
    /// Values of a field of numbers; NULL for a field of choices or counts. NaN where an optional field has no value.
    pub numbers: *const f64,
    /// Values of a field of choices (their constants) or counts; NULL for a field of numbers. BEAMCRAFT_ABSENT where an
    /// optional field has no value.
    pub codes: *const u32,
    /// How many values there are: one for each row, or 1 for all of them.
    pub count: usize,
}

/// An output field that is wanted of a call over columns.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct beamcraft_column_output {
    /// Name of the field, UTF-8.
    pub name: *const c_char,
    /// Bytes of the name.
    pub name_length: usize,
    /// Place for a field of numbers, one for each row; NULL for a field of choices or counts. A row that is refused
    /// becomes NaN, and so does an optional output that the row does not have.
    pub numbers: *mut f64,
    /// Place for a field of choices or counts, one for each row; NULL for a field of numbers. A row that is refused
    /// becomes BEAMCRAFT_ABSENT, and so does an optional output that the row does not have.
    pub codes: *mut u32,
}

/// Computes the calculation `name` for `row_count` rows at once. Every calculation with a typed call takes columns; the
/// results are the same bits as those of the typed call, with any number of threads.
///
/// `inputs` are the input fields in any order; a field with an initial value may be left out. `outputs` are the output
/// fields that are wanted. `row_status` (NULL if not wanted) becomes BEAMCRAFT_OK or a BEAMCRAFT_E_* for each row,
/// `row_fault_field` (NULL if not wanted) the place of the field at fault among the fields of the input struct, counted
/// from 0, or BEAMCRAFT_ABSENT. `out_refused` (NULL if not wanted) becomes the number of rows that were refused: they do
/// not make the call fail and leave the other rows alone. The call fails when names, kinds or lengths do not fit; then
/// nothing is written. `threads` is 1 to 64; more than one is worth it above some ten thousand rows.
///
/// Arrays must not overlap, except inputs with one another; what does is refused with BEAMCRAFT_E_INCONSISTENT. With
/// more than one thread the arrays are read and written by threads of the library until the call returns.
///
/// # Safety
/// `name` and the names of the fields are NULL or point to as many bytes of UTF-8 as their lengths say, NULL is refused.
/// `inputs` and `outputs` are NULL or point to as many structs as their counts say; NULL is refused unless the count is 0.
/// Every array is NULL, or aligned and readable for `count` values (inputs) or writable for `row_count` values (outputs,
/// `row_status`, `row_fault_field`). `out_refused` and `out_error` are NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_columns(
    name: *const c_char,
    name_length: usize,
    row_count: usize,
    inputs: *const beamcraft_column_input,
    input_count: usize,
    outputs: *const beamcraft_column_output,
    output_count: usize,
    threads: u32,
    row_status: *mut u32,
    row_fault_field: *mut u32,
    out_refused: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let body = || {
        // SAFETY: the contract of this function.
        let name = unsafe { text(name, name_length, "name", "name_length") }?;
        // SAFETY: the contract of this function.
        let inputs = unsafe { structs(inputs, input_count, "inputs") }?;
        // SAFETY: the contract of this function.
        let outputs = unsafe { structs(outputs, output_count, "outputs") }?;
        apart(inputs, outputs, &[("row_status", row_status), ("row_fault_field", row_fault_field)], row_count)?;
        let (mut columns, mut places) = (Vec::new(), Vec::new());
        for (k, input) in inputs.iter().enumerate() {
            // SAFETY: the contract of this function.
            columns.push(unsafe { input_column(input, k) }?);
        }
        for (k, output) in outputs.iter().enumerate() {
            // SAFETY: the contract of this function; no two of them overlap since `apart`.
            places.push(unsafe { output_column(output, row_count, k) }?);
        }
        // SAFETY: NULL or writable by the contract; apart from everything else since `apart`.
        let status = unsafe { array_mut(row_status, row_count, "row_status") }?;
        // SAFETY: as above.
        let fault_fields = unsafe { array_mut(row_fault_field, row_count, "row_fault_field") }?;
        let call = Columns { rows: row_count, inputs: &columns, outputs: places, status, fault_fields, threads };
        let report = registry::columns(name, call)?;
        if let Ok(place) = Place::new(out_refused, "out_refused") {
            // SAFETY: writable by the contract.
            unsafe { place.write(report.refused) };
        }
        Ok(())
    };
    // SAFETY: the contract of this function.
    unsafe { guard(out_error, body) }
}

#[cold]
fn refused(code: ErrorCode, path: String, given: String, allowed: &str) -> Failure {
    Error::one(Detail { code, path, given, allowed: allowed.to_owned(), cure: String::new() }).into()
}

/// Refuses a count of values that memory cannot have.
fn fits_memory<T>(count: usize, path: &str) -> Result<(), Failure> {
    let bytes = count.checked_mul(size_of::<T>()).filter(|bytes| isize::try_from(*bytes).is_ok());
    bytes.map(|_| ()).ok_or_else(|| {
        refused(ErrorCode::OutOfRange, path.to_owned(), count.to_string(), "a count of values that memory can have")
    })
}

/// An array of structs of the caller.
///
/// # Safety
/// `pointer` is NULL or points to `count` readable structs that nobody changes during the call.
unsafe fn structs<'a, T>(pointer: *const T, count: usize, name: &'static str) -> Result<&'a [T], Failure> {
    if count == 0 {
        return Ok(&[]);
    }
    if pointer.is_null() {
        return Err(null(name).into());
    }
    fits_memory::<T>(count, name)?;
    // SAFETY: not NULL, readable and unchanged by the contract, and no more than memory can have.
    Ok(unsafe { slice::from_raw_parts(pointer, count) })
}

/// An array of the caller that is written; nothing for NULL.
///
/// # Safety
/// `pointer` is NULL or aligned and writable for `count` values, which nobody else uses during the call.
unsafe fn array_mut<'a, T>(pointer: *mut T, count: usize, path: &str) -> Result<Option<&'a mut [T]>, Failure> {
    if pointer.is_null() {
        return Ok(None);
    }
    fits_memory::<T>(count, path)?;
    // SAFETY: not NULL, writable and used by nobody else by the contract, and no more than memory can have.
    Ok(Some(unsafe { slice::from_raw_parts_mut(pointer, count) }))
}

/// Which of the two arrays of a field is given.
fn one_of(numbers: bool, codes: bool, path: &str) -> Result<(), Failure> {
    const ALLOWED: &str = "either numbers or codes, the other NULL";
    match (numbers, codes) {
        (true, false) | (false, true) => Ok(()),
        (false, false) => Err(refused(ErrorCode::NullPointer, path.to_owned(), String::new(), ALLOWED)),
        (true, true) => Err(refused(ErrorCode::Inconsistent, path.to_owned(), String::new(), ALLOWED)),
    }
}

/// # Safety
/// The name is NULL or points to its bytes; the arrays are NULL or aligned and readable for `count` values.
unsafe fn input_column(input: &beamcraft_column_input, k: usize) -> Result<(&str, Column<'_>), Failure> {
    let path = format!("inputs[{k}]");
    // SAFETY: the contract of this function.
    let name = unsafe { text(input.name, input.name_length, "inputs.name", "inputs.name_length") }?;
    one_of(!input.numbers.is_null(), !input.codes.is_null(), &path)?;
    fits_memory::<f64>(input.count, &path)?;
    let column = if input.codes.is_null() {
        // SAFETY: not NULL, aligned and readable by the contract, and no more than memory can have.
        Column::Numbers(unsafe { slice::from_raw_parts(input.numbers, input.count) })
    } else {
        // SAFETY: as above.
        Column::Codes(unsafe { slice::from_raw_parts(input.codes, input.count) })
    };
    Ok((name, column))
}

/// # Safety
/// The name is NULL or points to its bytes; the arrays are NULL or aligned and writable for `rows` values, which nobody
/// else uses during the call.
unsafe fn output_column(
    output: &beamcraft_column_output,
    rows: usize,
    k: usize,
) -> Result<(&str, ColumnMut<'_>), Failure> {
    let path = format!("outputs[{k}]");
    // SAFETY: the contract of this function.
    let name = unsafe { text(output.name, output.name_length, "outputs.name", "outputs.name_length") }?;
    one_of(!output.numbers.is_null(), !output.codes.is_null(), &path)?;
    // SAFETY: the contract of this function.
    let numbers = unsafe { array_mut(output.numbers, rows, &path) }?.map(ColumnMut::Numbers);
    // SAFETY: the contract of this function.
    let codes = unsafe { array_mut(output.codes, rows, &path) }?.map(ColumnMut::Codes);
    match numbers.or(codes) {
        Some(column) => Ok((name, column)),
        None => Err(null("outputs").into()),
    }
}

/// Bytes of an array, from and to; nothing for NULL or an empty one.
fn span<T>(pointer: *const T, count: usize) -> Option<(usize, usize)> {
    let (start, bytes) = (pointer.addr(), count.checked_mul(size_of::<T>())?);
    if pointer.is_null() || bytes == 0 { None } else { Some((start, start.checked_add(bytes)?)) }
}

/// Refuses arrays of which one is written and which overlap: two places for one value.
fn apart(
    inputs: &[beamcraft_column_input],
    outputs: &[beamcraft_column_output],
    marks: &[(&str, *mut u32)],
    rows: usize,
) -> Result<(), Failure> {
    let mut spans = Vec::new();
    for (k, output) in outputs.iter().enumerate() {
        let arrays = [span(output.numbers, rows), span(output.codes, rows)];
        spans.extend(arrays.into_iter().flatten().map(|span| (span, format!("outputs[{k}]"), true)));
    }
    spans.extend(marks.iter().filter_map(|(name, array)| Some((span(*array, rows)?, (*name).to_owned(), true))));
    for (k, input) in inputs.iter().enumerate() {
        let arrays = [span(input.numbers, input.count), span(input.codes, input.count)];
        spans.extend(arrays.into_iter().flatten().map(|span| (span, format!("inputs[{k}]"), false)));
    }
    spans.sort_by_key(|(span, ..)| *span);
    // The array that reaches furthest, and the one that is written and reaches furthest, of those seen so far.
    let mut any: Option<(usize, String)> = None;
    let mut written: Option<(usize, String)> = None;
    for ((start, end), name, is_written) in spans {
        let before = if is_written { &any } else { &written };
        if let Some((_, other)) = before.as_ref().filter(|(reach, _)| start < *reach) {
            let given = format!("an array that overlaps {other}");
            return Err(refused(ErrorCode::Inconsistent, name, given, "arrays apart from one another"));
        }
        let further = |seen: &Option<(usize, String)>| seen.as_ref().is_none_or(|(reach, _)| *reach < end);
        if is_written && further(&written) {
            written = Some((end, name.clone()));
        }
        if further(&any) {
            any = Some((end, name));
        }
    }
    Ok(())
}
