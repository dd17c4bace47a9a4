//! The error object, NULL and the text buffers.

use core::ptr;

use beamcraft::generated::*;
use beamcraft::*;
use beamcraft_core::error::ErrorCode;

use crate::face::text;

fn input() -> beamcraft_mitre_pair_input {
    let mut input = core::mem::MaybeUninit::uninit();
    // SAFETY: room for the struct.
    unsafe { beamcraft_mitre_pair_input_init(input.as_mut_ptr()) };
    // SAFETY: the init function writes the whole struct.
    unsafe { input.assume_init() }
}

/// The error object of a JSON call with three faults.
fn three_faults() -> *mut beamcraft_error {
    let (name, input) = ("mitre_pair", r#"{"thicknes_a_mm": 20, "thickness_b_mm": "about a hand"}"#);
    let (mut needed, mut error) = (7, ptr::null_mut());
    // SAFETY: live texts and writable pointers.
    let status = unsafe {
        beamcraft_call_json(
            name.as_ptr().cast(),
            name.len(),
            input.as_ptr().cast(),
            input.len(),
            ptr::null_mut(),
            0,
            &raw mut needed,
            &raw mut error,
        )
    };
    assert_eq!(status, ErrorCode::UnknownField as u32);
    assert_eq!(needed, 7, "nothing is written on failure");
    error
}

#[test]
fn an_error_object_holds_every_fault_with_all_its_parts() {
    let error = three_faults();
    // SAFETY: a live error object, freed at the end.
    unsafe {
        assert_eq!(beamcraft_error_count(error), 3);
        let part =
            |index, give: unsafe extern "C" fn(*const beamcraft_error, usize, *mut i8, usize, *mut usize) -> u32| {
                text(|buffer, capacity, needed| give(error, index, buffer, capacity, needed))
            };
        assert_eq!(part(0, beamcraft_error_path).as_deref(), Ok("thicknes_a_mm"));
        assert_eq!(part(0, beamcraft_error_cure).as_deref(), Ok("did you mean thickness_a_mm?"));
        assert_eq!(part(1, beamcraft_error_path).as_deref(), Ok("thickness_b_mm"));
        assert_eq!(part(1, beamcraft_error_given).as_deref(), Ok("\"about a hand\""));
        assert!(!part(1, beamcraft_error_allowed).expect("a text").is_empty());
        let message = part(2, beamcraft_error_message).expect("a text");
        assert!(message.starts_with("thickness_a_mm: "), "{message}");
        let whole = text(|buffer, capacity, needed| beamcraft_error_text(error, buffer, capacity, needed));
        assert_eq!(whole.expect("a text").lines().count(), 3);
        let mut code = 0;
        assert_eq!(beamcraft_error_code(error, 2, &raw mut code), BEAMCRAFT_OK);
        assert_eq!(code, ErrorCode::MissingField as u32);
        assert_eq!(beamcraft_error_code(error, 3, &raw mut code), ErrorCode::OutOfRange as u32);
        assert_eq!(part(usize::MAX, beamcraft_error_path), Err(ErrorCode::OutOfRange as u32));
        beamcraft_error_free(error);
    }
}

#[test]
fn null_is_refused_everywhere_and_named() {
    const NULL: u32 = ErrorCode::NullPointer as u32;
    let input = input();
    let mut output = beamcraft_mitre_pair_output::default();
    let (mut needed, mut code) = (0, 0);
    // SAFETY: NULL or live.
    unsafe {
        beamcraft_error_free(ptr::null_mut());
        beamcraft_mitre_pair_input_init(ptr::null_mut());
        assert_eq!(beamcraft_error_count(ptr::null()), 0);
        assert_eq!(beamcraft_error_code(ptr::null(), 0, &raw mut code), NULL);
        for give in [
            beamcraft_error_path,
            beamcraft_error_given,
            beamcraft_error_allowed,
            beamcraft_error_cure,
            beamcraft_error_message,
        ] {
            assert_eq!(give(ptr::null(), 0, ptr::null_mut(), 0, &raw mut needed), NULL);
        }
        assert_eq!(beamcraft_error_text(ptr::null(), ptr::null_mut(), 0, &raw mut needed), NULL);
        assert_eq!(beamcraft_mitre_pair(ptr::null(), &raw mut output, ptr::null_mut()), NULL);
        assert_eq!(beamcraft_mitre_pair(&raw const input, ptr::null_mut(), ptr::null_mut()), NULL);
        for give in [beamcraft_calculation_name, beamcraft_calculation_purpose] {
            assert_eq!(give(0, ptr::null_mut(), 0, ptr::null_mut(), ptr::null_mut()), NULL);
            assert_eq!(give(0, ptr::null_mut(), 1, &raw mut needed, ptr::null_mut()), NULL);
        }
        assert_eq!(beamcraft_calculation_schema(0, 0, ptr::null_mut(), 0, ptr::null_mut(), ptr::null_mut()), NULL);

        let error = three_faults();
        assert_eq!(beamcraft_error_code(error, 0, ptr::null_mut()), NULL);
        assert_eq!(beamcraft_error_path(error, 0, ptr::null_mut(), 4, &raw mut needed), NULL);
        assert_eq!(beamcraft_error_path(error, 0, ptr::null_mut(), 0, ptr::null_mut()), NULL);
        beamcraft_error_free(error);

        let mut error = ptr::null_mut();
        assert_eq!(beamcraft_mitre_pair(ptr::null(), &raw mut output, &raw mut error), NULL);
        let path = text(|buffer, capacity, needed| beamcraft_error_path(error, 0, buffer, capacity, needed));
        assert_eq!(path.as_deref(), Ok("input"));
        beamcraft_error_free(error);
    }
}

#[test]
fn a_refused_call_leaves_the_output_alone() {
    let mut input = input();
    input.thickness_a_mm = 20.0;
    let mut output = beamcraft_mitre_pair_output { seam_mm: 4.25, ..Default::default() };
    let mut error = ptr::null_mut();
    // SAFETY: live structs.
    let status = unsafe { beamcraft_mitre_pair(&raw const input, &raw mut output, &raw mut error) };
    assert_eq!(status, ErrorCode::NotFinite as u32, "a field that was forgotten is refused");
    assert_eq!(output.seam_mm, 4.25);
    // SAFETY: a live error object.
    let path = text(|buffer, capacity, needed| unsafe { beamcraft_error_path(error, 0, buffer, capacity, needed) });
    assert_eq!(path.as_deref(), Ok("thickness_b_mm"));
    // SAFETY: freed once.
    unsafe { beamcraft_error_free(error) };
}

#[test]
fn a_buffer_takes_the_text_whole_or_not_at_all() {
    let error = three_faults();
    // "thicknes_a_mm" and its NUL.
    const NEEDED: usize = 14;
    for capacity in 1..=NEEDED + 2 {
        let mut bytes = [0xAA_u8; NEEDED + 4];
        let mut needed = 0;
        // SAFETY: a live error object and `capacity` writable bytes.
        let status = unsafe { beamcraft_error_path(error, 0, bytes.as_mut_ptr().cast(), capacity, &raw mut needed) };
        assert_eq!(needed, NEEDED);
        if capacity < NEEDED {
            assert_eq!(status, ErrorCode::BufferTooSmall as u32);
            assert_eq!(bytes, [0xAA; NEEDED + 4]);
        } else {
            assert_eq!(status, BEAMCRAFT_OK);
            assert_eq!(&bytes[..NEEDED], b"thicknes_a_mm\0");
            assert!(bytes[NEEDED..].iter().all(|byte| *byte == 0xAA), "nothing behind the text is touched");
        }
    }
    // SAFETY: freed once.
    unsafe { beamcraft_error_free(error) };
}
