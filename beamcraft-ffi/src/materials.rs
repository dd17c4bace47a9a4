//! The tables of materials: how many, their names, every figure with its source.

use core::ffi::c_char;

use beamcraft_core::error::{ErrorCode, Fault};
use beamcraft_core::wood::{MaterialTable, MaterialValue};

use crate::error::beamcraft_error;
use crate::guard::{Failure, guard};
use crate::pointer::{Place, TextBuffer, text};
use crate::record::unknown_choice;
use crate::status::beamcraft_status;

/// Species of wood: averages of clear wood.
pub const BEAMCRAFT_MATERIALS_SPECIES: u32 = 0;
/// Strength classes of structural timber: characteristic values.
pub const BEAMCRAFT_MATERIALS_STRENGTH_CLASSES: u32 = 1;
/// Sheet goods and glued products.
pub const BEAMCRAFT_MATERIALS_PANELS: u32 = 2;
/// Species combinations of the NDS: specific gravity assigned to graded lumber.
pub const BEAMCRAFT_MATERIALS_NDS_COMBINATIONS: u32 = 3;

fn table_of(table: u32) -> Result<MaterialTable, Failure> {
    match table {
        BEAMCRAFT_MATERIALS_SPECIES => Ok(MaterialTable::Species),
        BEAMCRAFT_MATERIALS_STRENGTH_CLASSES => Ok(MaterialTable::StrengthClasses),
        BEAMCRAFT_MATERIALS_PANELS => Ok(MaterialTable::Panels),
        BEAMCRAFT_MATERIALS_NDS_COMBINATIONS => Ok(MaterialTable::NdsCombinations),
        _ => Err(unknown_choice("table", table, "the constants BEAMCRAFT_MATERIALS_*").into()),
    }
}

/// Gives one value of a table.
///
/// # Safety
/// `out` is NULL or writable; `out_error` is NULL or writable.
unsafe fn value<T>(
    out: *mut T,
    name: &'static str,
    out_error: *mut *mut beamcraft_error,
    of: impl FnOnce() -> Result<T, Failure>,
) -> beamcraft_status {
    let body = || {
        let place = Place::new(out, name)?;
        let value = of()?;
        // SAFETY: the contract of this function.
        unsafe { place.write(value) };
        Ok(())
    };
    // SAFETY: the contract of this function.
    unsafe { guard(out_error, body) }
}

/// Gives one text of a table.
///
/// # Safety
/// `buffer` is NULL or has `capacity` writable bytes; `out_needed` and `out_error` are NULL or writable.
unsafe fn words(
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
    of: impl FnOnce() -> Result<String, Failure>,
) -> beamcraft_status {
    let body = || {
        let place = TextBuffer::new(buffer, capacity, out_needed)?;
        let text = of()?;
        // SAFETY: the contract of this function.
        unsafe { place.write(&text) }
    };
    // SAFETY: the contract of this function.
    unsafe { guard(out_error, body) }
}

/// How many materials a table has, one of BEAMCRAFT_MATERIALS_*.
///
/// # Safety
/// `out_count` is NULL or writable; NULL is refused; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_material_count(
    table: u32,
    out_count: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe { value(out_count, "out_count", out_error, || Ok(table_of(table)?.count())) }
}

/// Name of the material at `index`, counted from 0; the order is fixed within a release. Sheet goods have one row for
/// each thickness that is published.
///
/// # Safety
/// A text buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_material_name(
    table: u32,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = || Ok(table_of(table)?.material(index)?.to_owned());
    // SAFETY: the same contract.
    unsafe { words(buffer, capacity, out_needed, out_error, of) }
}

/// Place of the material of a name: common or botanical name of a species, a class, a panel, a combination or its short
/// form. A name that fits several, or none, is refused with those that fit or the closest one.
///
/// # Safety
/// `name` is NULL or points to `name_length` bytes of UTF-8, NULL is refused; `out_index` is NULL or writable; NULL is
/// refused; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_material_find(
    table: u32,
    name: *const c_char,
    name_length: usize,
    out_index: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = || {
        // SAFETY: the contract of this function.
        let name = unsafe { text(name, name_length, "name", "name_length") }?;
        Ok(table_of(table)?.position(name)?)
    };
    // SAFETY: the same contract.
    unsafe { value(out_index, "out_index", out_error, of) }
}

/// Everything about the material at `index` as a flat JSON object: figures with their units in the names, each with its
/// source and whether it was seen there or recalled. What is not published is left out.
///
/// # Safety
/// A text buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_material_json(
    table: u32,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = || Ok(table_of(table)?.row_json(index)?);
    // SAFETY: the same contract.
    unsafe { words(buffer, capacity, out_needed, out_error, of) }
}

/// One number about the material at `index` by the name it has in beamcraft_material_json, such as "density_12_kg_m3".
/// BEAMCRAFT_E_NO_PUBLISHED_VALUE where nothing is published, BEAMCRAFT_E_WRONG_TYPE where it is a text.
///
/// # Safety
/// `column` is NULL or points to `column_length` bytes of UTF-8, NULL is refused; `out_value` is NULL or writable; NULL
/// is refused; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_material_number(
    table: u32,
    index: usize,
    column: *const c_char,
    column_length: usize,
    out_value: *mut f64,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = || {
        // SAFETY: the contract of this function.
        let column = unsafe { text(column, column_length, "column", "column_length") }?;
        let refused = |code, allowed| Err(Fault::plain(code, "column", allowed, "").into());
        match table_of(table)?.value(index, column)? {
            MaterialValue::Number(number) => Ok(number),
            MaterialValue::Text(_) => refused(ErrorCode::WrongType, "a column of numbers"),
            MaterialValue::Absent => {
                refused(ErrorCode::NoPublishedValue, "a value that is published for this material")
            }
        }
    };
    // SAFETY: the same contract.
    unsafe { value(out_value, "out_value", out_error, of) }
}
