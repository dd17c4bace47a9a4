//! The tables of materials through the C door.

use core::ptr;

use beamcraft::*;
use beamcraft_core::error::ErrorCode;
use beamcraft_core::wood::MaterialTable;

use crate::face::{Refused, take_error, text};

const TABLES: [(u32, MaterialTable); 4] = [
    (BEAMCRAFT_MATERIALS_SPECIES, MaterialTable::Species),
    (BEAMCRAFT_MATERIALS_STRENGTH_CLASSES, MaterialTable::StrengthClasses),
    (BEAMCRAFT_MATERIALS_PANELS, MaterialTable::Panels),
    (BEAMCRAFT_MATERIALS_NDS_COMBINATIONS, MaterialTable::NdsCombinations),
];

fn count(table: u32) -> Result<usize, Refused> {
    let (mut count, mut error) = (0, ptr::null_mut());
    // SAFETY: writable pointers.
    let status = unsafe { beamcraft_material_count(table, &raw mut count, &raw mut error) };
    if status == BEAMCRAFT_OK { Ok(count) } else { Err(take_error(status, error)) }
}

fn find(table: u32, name: &str) -> Result<usize, Refused> {
    let (mut index, mut error) = (0, ptr::null_mut());
    // SAFETY: a live text, writable pointers.
    let status =
        unsafe { beamcraft_material_find(table, name.as_ptr().cast(), name.len(), &raw mut index, &raw mut error) };
    if status == BEAMCRAFT_OK { Ok(index) } else { Err(take_error(status, error)) }
}

fn number(table: u32, index: usize, column: &str) -> Result<f64, Refused> {
    let (mut value, mut error) = (f64::NAN, ptr::null_mut());
    let (name, length) = (column.as_ptr().cast(), column.len());
    // SAFETY: a live text, writable pointers.
    let status = unsafe { beamcraft_material_number(table, index, name, length, &raw mut value, &raw mut error) };
    if status == BEAMCRAFT_OK { Ok(value) } else { Err(take_error(status, error)) }
}

fn name(table: u32, index: usize) -> Result<String, Refused> {
    let mut error = ptr::null_mut();
    // SAFETY: a buffer of that capacity, writable pointers.
    let result = text(|b, c, n| unsafe { beamcraft_material_name(table, index, b, c, n, &raw mut error) });
    result.map_err(|status| take_error(status, error))
}

fn json(table: u32, index: usize) -> Result<String, Refused> {
    let mut error = ptr::null_mut();
    // SAFETY: a buffer of that capacity, writable pointers.
    let result = text(|b, c, n| unsafe { beamcraft_material_json(table, index, b, c, n, &raw mut error) });
    result.map_err(|status| take_error(status, error))
}

#[test]
fn every_material_is_counted_named_and_told() {
    for (number, table) in TABLES {
        let count = count(number).expect("a table");
        assert_eq!(count, table.count());
        for index in [0, count / 2, count - 1] {
            assert_eq!(name(number, index).expect("there"), table.material(index).expect("there"));
            assert_eq!(json(number, index).expect("there"), table.row_json(index).expect("there"));
        }
        assert_eq!(name(number, count).expect_err("beyond").status, ErrorCode::OutOfRange as u32);
        assert_eq!(json(number, usize::MAX).expect_err("beyond").status, ErrorCode::OutOfRange as u32);
    }
}

#[test]
fn figures_are_found_by_name_and_misses_help() {
    let ash = find(BEAMCRAFT_MATERIALS_SPECIES, "white ash").expect("known");
    // FPL-GTR-190, Table 13-5.
    assert_eq!(number(BEAMCRAFT_MATERIALS_SPECIES, ash, "movement_tangential_per_pct"), Ok(0.00274));
    let miss = find(BEAMCRAFT_MATERIALS_SPECIES, "whit ash").expect_err("a slip");
    assert!(miss.status == ErrorCode::UnknownName as u32 && miss.text.contains("did you mean Ash, white?"));
    let told = |column: &str| number(BEAMCRAFT_MATERIALS_SPECIES, ash, column).expect_err("no number").status;
    assert_eq!(told("botanical"), ErrorCode::WrongType as u32);
    assert_eq!(told("density_published_kg_m3"), ErrorCode::NoPublishedValue as u32);
    assert_eq!(told("density"), ErrorCode::UnknownField as u32);
}

#[test]
fn unknown_tables_and_null_are_refused() {
    assert_eq!(count(4).expect_err("no such table").status, ErrorCode::UnknownChoice as u32);
    assert_eq!(find(9, "oak").expect_err("no such table").status, ErrorCode::UnknownChoice as u32);
    // SAFETY: NULL is refused before anything is read or written.
    let status = unsafe { beamcraft_material_count(0, ptr::null_mut(), ptr::null_mut()) };
    assert_eq!(status, ErrorCode::NullPointer as u32);
    // SAFETY: as above.
    let status = unsafe { beamcraft_material_find(0, ptr::null(), 3, ptr::null_mut(), ptr::null_mut()) };
    assert_eq!(status, ErrorCode::NullPointer as u32);
}
