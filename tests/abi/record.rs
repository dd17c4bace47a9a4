//! Numbers from outside that are no choice, no optional field, no zero.

use core::mem::{MaybeUninit, offset_of};
use core::ptr;

use beamcraft::generated::choices::*;
use beamcraft::generated::*;
use beamcraft::*;
use beamcraft_core::error::ErrorCode;

use crate::face::{Refused, take_error};

fn wood() -> beamcraft_wood_density_input {
    let mut input = MaybeUninit::<beamcraft_wood_density_input>::uninit();
    // SAFETY: room for the struct.
    unsafe { beamcraft_wood_density_input_init(input.as_mut_ptr()) };
    // SAFETY: the init function writes the whole struct.
    let mut input = unsafe { input.assume_init() };
    input.specific_gravity = 0.6;
    input.basis = BEAMCRAFT_GRAVITY_BASIS_TWELVE_PERCENT;
    input.moisture_pct = 8.0;
    input
}

fn density(input: &beamcraft_wood_density_input) -> Result<beamcraft_wood_density_output, Refused> {
    let mut output = beamcraft_wood_density_output::default();
    let mut error = ptr::null_mut();
    // SAFETY: live structs and a writable pointer.
    let status = unsafe { beamcraft_wood_density(input, &raw mut output, &raw mut error) };
    if status == BEAMCRAFT_OK { Ok(output) } else { Err(take_error(status, error)) }
}

#[test]
fn a_number_that_is_no_choice_is_refused_by_the_name_of_its_field() {
    for basis in [3, 1000, u32::MAX] {
        let refused = density(&beamcraft_wood_density_input { basis, ..wood() }).expect_err("no such choice");
        assert_eq!(refused.status, ErrorCode::UnknownChoice as u32);
        assert!(refused.text.starts_with("basis: "), "{}", refused.text);
        assert!(refused.text.contains("BEAMCRAFT_GRAVITY_BASIS_*"), "{}", refused.text);
    }
}

#[test]
fn an_optional_field_counts_only_with_its_bit() {
    let without = density(&wood()).expect("allowed");
    let mut input = beamcraft_wood_density_input { volumetric_shrinkage_pct: 5.0, ..wood() };
    assert_eq!(density(&input).expect("allowed").total_shrinkage_pct, without.total_shrinkage_pct);
    input.given = BEAMCRAFT_WOOD_DENSITY_INPUT_GIVEN_VOLUMETRIC_SHRINKAGE_PCT;
    assert_eq!(density(&input).expect("allowed").total_shrinkage_pct, 5.0);
}

#[test]
fn a_bit_that_no_field_has_is_refused() {
    for given in [2, 1 << 63, u64::MAX] {
        let refused = density(&beamcraft_wood_density_input { given, ..wood() }).expect_err("no such field");
        assert_eq!(refused.status, ErrorCode::UnknownChoice as u32);
        assert!(refused.text.starts_with("given: "), "{}", refused.text);
    }
}

#[test]
fn a_shorter_struct_cannot_give_what_it_does_not_hold() {
    let struct_size = offset_of!(beamcraft_wood_density_input, volumetric_shrinkage_pct) as u64;
    let older = beamcraft_wood_density_input { struct_size, ..wood() };
    let given = BEAMCRAFT_WOOD_DENSITY_INPUT_GIVEN_VOLUMETRIC_SHRINKAGE_PCT;
    assert!(density(&older).is_ok());
    let refused = density(&beamcraft_wood_density_input { given, ..older }).expect_err("not in the struct");
    assert_eq!(refused.status, ErrorCode::UnknownChoice as u32);
}

#[test]
fn what_is_kept_for_later_must_be_zero() {
    let refused = density(&beamcraft_wood_density_input { reserved_1: 1, ..wood() }).expect_err("kept for later");
    assert_eq!(refused.status, ErrorCode::OutOfRange as u32);
    assert!(refused.text.starts_with("reserved_1: "), "{}", refused.text);
}
