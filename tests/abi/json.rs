//! The JSON door of C.

use core::ffi::{c_char, c_void};
use core::ptr;

use beamcraft::*;
use beamcraft_core::error::ErrorCode;
use beamcraft_core::plan::ReportLengths;
use beamcraft_core::registry;

use crate::face::{Refused, take_error, text};

/// The text that a function gives, or what its error object says.
fn told(
    mut give: impl FnMut(*mut c_char, usize, *mut usize, *mut *mut beamcraft_error) -> beamcraft_status,
) -> Result<String, Refused> {
    let mut error = ptr::null_mut();
    let result = text(|buffer, capacity, needed| give(buffer, capacity, needed, &raw mut error));
    result.map_err(|status| take_error(status, error))
}

fn call(name: &[u8], input: &[u8]) -> Result<String, Refused> {
    let (name, name_length, input, input_length) =
        (name.as_ptr().cast(), name.len(), input.as_ptr().cast(), input.len());
    // SAFETY: live texts, a buffer of that capacity, writable pointers.
    told(|b, c, n, e| unsafe { beamcraft_call_json(name, name_length, input, input_length, b, c, n, e) })
}

#[test]
fn a_result_has_the_bytes_of_the_core() {
    let input = r#"{"thickness_a_mm":19.0,"thickness_b_mm":"3/4 in"}"#;
    assert_eq!(call(b"mitre_pair", input.as_bytes()), Ok(registry::call("mitre_pair", input).expect("allowed")));
}

#[test]
fn what_cannot_be_read_is_named() {
    let refused = call(b"mitre_pear", b"{}").expect_err("no such calculation");
    assert_eq!(refused.status, ErrorCode::UnknownName as u32);
    assert!(refused.text.contains("did you mean mitre_pair?"), "{}", refused.text);
    for (name, input) in
        [(&b"mitre_pair"[..], &b"{"[..]), (b"mitre_pair", b""), (b"mitre_pair", b"\xff"), (b"\xc3", b"{}")]
    {
        let refused = call(name, input).expect_err("not to be read");
        assert_eq!(refused.status, ErrorCode::Malformed as u32);
    }
    assert!(call(b"mitre_pair\0", b"{}").is_err(), "a NUL within the length is part of the name");
}

/// Counts its calls and says stop when it has been called as often as its user wanted.
unsafe extern "C" fn count(user_data: *mut c_void, steps: u64, budget: u64, _value: f64, _bound: f64) -> u32 {
    // SAFETY: the pointer that the test below gives, and nobody else holds meanwhile.
    let counts = unsafe { &mut *user_data.cast::<[u64; 2]>() };
    assert!(steps <= budget.saturating_mul(10));
    counts[0] += 1;
    u32::from(counts[0] >= counts[1])
}

#[test]
fn a_search_tells_how_far_it_has_come_and_can_be_stopped() {
    let input = r#"{"stock": [{"name": "b", "length_mm": 2400}], "parts": [{"name": "p", "length_mm": 700, "count": 7}], "kerf_mm": 3}"#;
    let search = |name: &str, progress: beamcraft_progress, counts: &mut [u64; 2]| {
        let user_data: *mut c_void = ptr::from_mut(counts).cast();
        let (name, name_length, input, input_length) =
            (name.as_ptr().cast(), name.len(), input.as_ptr().cast(), input.len());
        // SAFETY: live texts, a buffer of that capacity, writable pointers, a function that takes this pointer.
        told(|b, c, n, e| unsafe {
            beamcraft_call_json_with_progress(name, name_length, input, input_length, progress, user_data, b, c, n, e)
        })
    };
    let wanted = registry::call("cut_list_bars", input).expect("allowed");
    let mut counts = [0, u64::MAX];
    assert_eq!(search("cut_list_bars", Some(count), &mut counts), Ok(wanted.clone()));
    assert!(counts[0] > 0);
    assert_eq!(search("cut_list_bars", None, &mut counts), Ok(wanted), "nobody need watch");
    let stopped = search("cut_list_bars", Some(count), &mut [0, 1]).expect("a layout all the same");
    assert!(stopped.contains("\"end\":\"stopped\""), "{stopped}");
    let refused = search("mitre_pair", None, &mut counts).expect_err("no search");
    assert_eq!(refused.status, ErrorCode::UnknownName as u32);
}

fn draw(name: &str, input: &str, lengths: u32) -> Result<String, Refused> {
    let (name, name_length, input, input_length) =
        (name.as_ptr().cast(), name.len(), input.as_ptr().cast(), input.len());
    // SAFETY: live texts, a buffer of that capacity, writable pointers.
    told(|b, c, n, e| unsafe { beamcraft_drawing_svg(name, name_length, input, input_length, lengths, b, c, n, e) })
}

#[test]
fn a_drawing_is_that_of_the_core() {
    let spec = include_str!("../../beamcraft-core/examples/specs/walnut_beam.json");
    let wanted = registry::drawing_svg("plan", spec, ReportLengths::Inches).expect("a good spec");
    assert!(wanted.contains("<svg"));
    assert_eq!(draw("plan", spec, BEAMCRAFT_DRAWING_INCHES), Ok(wanted));
    let refused = draw("mitre_pair", "{}", BEAMCRAFT_DRAWING_METRIC).expect_err("no drawing");
    assert_eq!(refused.status, ErrorCode::UnknownName as u32);
    assert!(refused.text.contains("yearly_movement"), "{}", refused.text);
    assert_eq!(draw("plan", spec, 7).expect_err("no such lengths").status, ErrorCode::UnknownChoice as u32);
    assert!(draw("plan", "{}", BEAMCRAFT_DRAWING_METRIC).is_err());
}

#[test]
fn null_and_lengths_that_memory_cannot_have_are_refused() {
    let (name, mut needed) = ("mitre_pair", 0);
    let call = |name: *const c_char, length, input: *const c_char, needed| {
        // SAFETY: NULL or live; the absurd length is refused before anything is read.
        unsafe { beamcraft_call_json(name, 10, input, length, ptr::null_mut(), 0, needed, ptr::null_mut()) }
    };
    let name = name.as_ptr().cast();
    let needed = &raw mut needed;
    assert_eq!(call(ptr::null(), 2, c"{}".as_ptr(), needed), ErrorCode::NullPointer as u32);
    assert_eq!(call(name, 0, ptr::null(), needed), ErrorCode::NullPointer as u32);
    assert_eq!(call(name, 2, c"{}".as_ptr(), ptr::null_mut()), ErrorCode::NullPointer as u32);
    assert_eq!(call(name, usize::MAX, c"{}".as_ptr(), needed), ErrorCode::OutOfRange as u32);
}

#[test]
fn the_list_of_calculations_is_the_registry() {
    assert_eq!(beamcraft_calculation_count(), registry::calculations().count());
    for (index, row) in registry::calculations().enumerate() {
        let none = ptr::null_mut();
        // SAFETY: a buffer of that capacity; no error object wanted.
        unsafe {
            let name = text(|b, c, n| beamcraft_calculation_name(index, b, c, n, none));
            assert_eq!(name.as_deref(), Ok(row.name));
            let purpose = text(|b, c, n| beamcraft_calculation_purpose(index, b, c, n, none));
            assert_eq!(purpose.as_deref(), Ok(row.purpose));
            for (side, schema) in
                [(BEAMCRAFT_SCHEMA_INPUT, (row.input_schema)()), (BEAMCRAFT_SCHEMA_OUTPUT, (row.output_schema)())]
            {
                let text = text(|b, c, n| beamcraft_calculation_schema(index, side, b, c, n, none)).expect("a schema");
                assert_eq!(&serde_json::from_str::<serde_json::Value>(&text).expect("JSON"), schema.as_value());
            }
        }
    }
    let (mut needed, none) = (0, ptr::null_mut());
    // SAFETY: writable pointers.
    unsafe {
        let beyond = beamcraft_calculation_count();
        assert_eq!(
            beamcraft_calculation_name(beyond, ptr::null_mut(), 0, &raw mut needed, none),
            ErrorCode::OutOfRange as u32
        );
        assert_eq!(
            beamcraft_calculation_schema(0, 2, ptr::null_mut(), 0, &raw mut needed, none),
            ErrorCode::UnknownChoice as u32
        );
    }
}
