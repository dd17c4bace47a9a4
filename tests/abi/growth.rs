//! Input structs that grow: an older caller's shorter struct, and sizes that nobody has.

use core::ptr;

use beamcraft::generated::*;
use beamcraft::*;
use beamcraft_core::error::ErrorCode;

/// The struct as a program compiled before the last field was added has it; what follows in memory is not its own.
#[repr(C)]
struct Older {
    struct_size: u64,
    thickness_a_mm: f64,
    thickness_b_mm: f64,
    not_a_field: f64,
}

#[test]
fn a_shorter_struct_takes_the_initial_value_of_what_it_lacks() {
    let older = Older { struct_size: 24, thickness_a_mm: 20.0, thickness_b_mm: 20.0, not_a_field: f64::NAN };
    let mut output = beamcraft_mitre_pair_output::default();
    // SAFETY: the struct says its size; the output is live.
    let status = unsafe { beamcraft_mitre_pair((&raw const older).cast(), &raw mut output, ptr::null_mut()) };
    assert_eq!(status, BEAMCRAFT_OK);
    assert_eq!((output.tilt_a_deg, output.tilt_b_deg), (45.0, 45.0), "the corner is square unless said otherwise");
}

#[test]
fn a_size_that_nobody_has_is_refused() {
    for struct_size in [0, 8, 16, 23, 25, 31, 33, 40, 1 << 32, u64::MAX] {
        let older = Older { struct_size, thickness_a_mm: 20.0, thickness_b_mm: 20.0, not_a_field: 90.0 };
        let mut output = beamcraft_mitre_pair_output { seam_mm: 1.5, ..Default::default() };
        // SAFETY: no more than the size is read before it is found to be unknown.
        let status = unsafe { beamcraft_mitre_pair((&raw const older).cast(), &raw mut output, ptr::null_mut()) };
        assert_eq!(status, ErrorCode::StructSize as u32, "{struct_size}");
        assert_eq!(output.seam_mm, 1.5);
    }
}
