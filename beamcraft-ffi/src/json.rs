//! The JSON door: every calculation by name, and the list of them.

use core::ffi::{c_char, c_void};
use core::ops::ControlFlow;

use beamcraft_core::error::{Allowed, ErrorCode, Fault};
use beamcraft_core::json::Calculation;
use beamcraft_core::layout::LayoutProgress;
use beamcraft_core::plan::ReportLengths;
use beamcraft_core::registry;

use crate::error::beamcraft_error;
use crate::guard::{Failure, guard};
use crate::pointer::{TextBuffer, text};
use crate::record::unknown_choice;
use crate::status::beamcraft_status;

/// The schema of what a calculation takes.
pub const BEAMCRAFT_SCHEMA_INPUT: u32 = 0;
/// The schema of what a calculation returns.
pub const BEAMCRAFT_SCHEMA_OUTPUT: u32 = 1;

/// Computes the calculation `name` for a JSON input and gives the JSON of its result: the same bytes for the same input
/// on every machine, no spaces, fields in the order of the schema. All faults of the input are found at once.
///
/// A field whose name ends in `_mm` also takes a shop length as text, such as "7' 3 1/2\"".
///
/// The result is computed in each call, also when capacity is 0: a buffer that is large enough from the start saves
/// half the work.
///
/// # Safety
/// `name` and `input` are NULL or point to as many bytes of UTF-8 as their lengths say, NULL is refused; the rest is a
/// text buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_call_json(
    name: *const c_char,
    name_length: usize,
    input: *const c_char,
    input_length: usize,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let place = Answer { buffer, capacity, out_needed, out_error };
    // SAFETY: the same contract.
    unsafe { answer((name, name_length), (input, input_length), place, |name, input| Ok(registry::call(name, input)?)) }
}

/// Where an answer goes.
struct Answer {
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
}

/// Gives the text that follows from a name and an input.
///
/// # Safety
/// Both texts are NULL or point to as many bytes as their lengths say; `place` is a text buffer, its `out_error` NULL or
/// writable.
unsafe fn answer(
    (name, name_length): (*const c_char, usize),
    (input, input_length): (*const c_char, usize),
    Answer { buffer, capacity, out_needed, out_error }: Answer,
    compute: impl FnOnce(&str, &str) -> Result<String, Failure>,
) -> beamcraft_status {
    let body = || {
        // SAFETY: the contract of this function.
        let name = unsafe { text(name, name_length, "name", "name_length") }?;
        // SAFETY: the contract of this function.
        let input = unsafe { text(input, input_length, "input", "input_length") }?;
        let place = TextBuffer::new(buffer, capacity, out_needed)?;
        let result = compute(name, input)?;
        // SAFETY: the contract of this function.
        unsafe { place.write(&result) }
    };
    // SAFETY: the contract of this function.
    unsafe { guard(out_error, body) }
}

/// What a search tells while it runs: steps spent and steps that may be spent; the best value found and the bound proven
/// so far, NaN before there is one. `user_data` is the pointer given to the call. Returns 0 to go on; anything else
/// stops the search. It is called on the caller's thread, must not unwind and must not call back into the same search.
pub type beamcraft_progress =
    Option<unsafe extern "C" fn(user_data: *mut c_void, steps: u64, budget: u64, value: f64, bound: f64) -> u32>;

/// As [`beamcraft_call_json`] for a calculation that searches, cut_list_bars or cut_list_boards: tells `progress` how far it
/// has come, some times a second; when that says stop, the result is the best found so far, and says so in its `end`.
///
/// The search runs in each call, also when capacity is 0: give a buffer that is large enough from the start.
///
/// # Safety
/// As [`beamcraft_call_json`]; `progress` is NULL or a function that may be called with `user_data` until this call returns.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_call_json_with_progress(
    name: *const c_char,
    name_length: usize,
    input: *const c_char,
    input_length: usize,
    progress: beamcraft_progress,
    user_data: *mut c_void,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let mut watch = |state: &LayoutProgress| {
        let Some(told) = progress else { return ControlFlow::Continue(()) };
        let (value, bound) = (state.value.unwrap_or(f64::NAN), state.bound.unwrap_or(f64::NAN));
        // SAFETY: the contract of this function.
        let answer = unsafe { told(user_data, state.steps, state.budget, value, bound) };
        if answer == 0 { ControlFlow::Continue(()) } else { ControlFlow::Break(()) }
    };
    let compute = |name: &str, input: &str| Ok(registry::call_with_progress(name, input, &mut watch)?);
    let place = Answer { buffer, capacity, out_needed, out_error };
    // SAFETY: the same contract.
    unsafe { answer((name, name_length), (input, input_length), place, compute) }
}

/// Lengths of a drawing in millimetres.
pub const BEAMCRAFT_DRAWING_METRIC: u32 = 0;
/// Lengths of a drawing in inches.
pub const BEAMCRAFT_DRAWING_INCHES: u32 = 1;

/// Computes the calculation `name` for a JSON input and draws its result as an SVG sheet: plan (the cross section, lengths
/// as the spec says), sawn_body (the panels pulled apart), yearly_movement (twelve months), tolerance_stack (histograms of the
/// gaps, mm), fastener_group (the force on each fastener).
///
/// `lengths` is BEAMCRAFT_DRAWING_METRIC or BEAMCRAFT_DRAWING_INCHES.
///
/// # Safety
/// As [`beamcraft_call_json`].
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_drawing_svg(
    name: *const c_char,
    name_length: usize,
    input: *const c_char,
    input_length: usize,
    lengths: u32,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let compute = |name: &str, input: &str| {
        let lengths = match lengths {
            BEAMCRAFT_DRAWING_METRIC => ReportLengths::Metric,
            BEAMCRAFT_DRAWING_INCHES => ReportLengths::Inches,
            _ => return Err(unknown_choice("lengths", lengths, "the constants BEAMCRAFT_DRAWING_*").into()),
        };
        Ok(registry::drawing_svg(name, input, lengths)?)
    };
    let place = Answer { buffer, capacity, out_needed, out_error };
    // SAFETY: the same contract.
    unsafe { answer((name, name_length), (input, input_length), place, compute) }
}

/// How many calculations there are.
#[unsafe(no_mangle)]
pub extern "C" fn beamcraft_calculation_count() -> usize {
    registry::calculations().count()
}

fn row(index: usize) -> Result<&'static Calculation, Failure> {
    let allowed = Allowed::Text("below beamcraft_calculation_count");
    let beyond = || Fault::number(ErrorCode::OutOfRange, "index", index as f64, allowed, "");
    registry::calculations().nth(index).ok_or_else(|| beyond().into())
}

/// Gives a text about the calculation at `index`.
///
/// # Safety
/// `buffer` is NULL or has `capacity` writable bytes; `out_needed` and `out_error` are NULL or writable.
unsafe fn give(
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
    text: impl FnOnce(&'static Calculation) -> Result<String, Failure>,
) -> beamcraft_status {
    let body = || {
        let place = TextBuffer::new(buffer, capacity, out_needed)?;
        let text = text(row(index)?)?;
        // SAFETY: the contract of this function.
        unsafe { place.write(&text) }
    };
    // SAFETY: the contract of this function.
    unsafe { guard(out_error, body) }
}

/// Name of the calculation at `index`, counted from 0; the order is fixed within a release.
///
/// # Safety
/// A text buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_calculation_name(
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe { give(index, buffer, capacity, out_needed, out_error, |row| Ok(row.name.to_owned())) }
}

/// What the calculation at `index` answers, in one line.
///
/// # Safety
/// A text buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_calculation_purpose(
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe { give(index, buffer, capacity, out_needed, out_error, |row| Ok(row.purpose.to_owned())) }
}

/// JSON Schema (draft 2020-12) of what the calculation at `index` takes or returns: fields, units, ranges, defaults.
/// `side` is BEAMCRAFT_SCHEMA_INPUT or BEAMCRAFT_SCHEMA_OUTPUT.
///
/// # Safety
/// A text buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_calculation_schema(
    index: usize,
    side: u32,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let schema = |row: &'static Calculation| {
        let schema = match side {
            BEAMCRAFT_SCHEMA_INPUT => (row.input_schema)(),
            BEAMCRAFT_SCHEMA_OUTPUT => (row.output_schema)(),
            _ => return Err(unknown_choice("side", side, "the constants BEAMCRAFT_SCHEMA_*").into()),
        };
        Ok(format!("{:#}", schema.as_value()))
    };
    // SAFETY: the same contract.
    unsafe { give(index, buffer, capacity, out_needed, out_error, schema) }
}
