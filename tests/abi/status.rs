//! Codes and versions: the same in the core, in the library and in the header.

use core::ffi::CStr;

use beamcraft::*;
use beamcraft_core::error::ErrorCode;

fn static_text(pointer: *const core::ffi::c_char) -> &'static str {
    assert!(!pointer.is_null());
    // SAFETY: static and closed by NUL.
    unsafe { CStr::from_ptr(pointer) }.to_str().expect("UTF-8")
}

fn header() -> String {
    let path = beamcraft_tests::generate::top().join("beamcraft-ffi/include/beamcraft.h");
    std::fs::read_to_string(path).expect("the header")
}

/// The value of a macro of the header.
fn macro_of<'a>(header: &'a str, name: &str) -> &'a str {
    let lead = format!("#define {name} ");
    header.lines().find_map(|line| line.strip_prefix(&lead)).unwrap_or_else(|| panic!("no {name}"))
}

#[test]
fn every_code_of_the_core_has_its_constant_name_and_text() {
    let header = header();
    for code in ErrorCode::ALL {
        let number = *code as u32;
        assert_eq!(static_text(beamcraft_status_name(number)), code.name());
        assert_eq!(static_text(beamcraft_status_describe(number)), code.describe());
        let constant = format!("BEAMCRAFT_E_{}", code.name().to_uppercase());
        assert_eq!(macro_of(&header, &constant), format!("{number:#06x}"));
    }
    assert_eq!(header.matches("#define BEAMCRAFT_E_").count(), ErrorCode::ALL.len());
}

#[test]
fn success_and_unknown_numbers_have_a_name_too() {
    assert_eq!(static_text(beamcraft_status_name(BEAMCRAFT_OK)), "ok");
    for number in [1, 0x0100, 0x01FF, u32::MAX] {
        assert_eq!(static_text(beamcraft_status_name(number)), "unknown_status");
        assert!(!static_text(beamcraft_status_describe(number)).is_empty());
    }
}

#[test]
fn every_version_macro_agrees_with_the_manifest_and_the_library() {
    let header = header();
    let manifest = std::fs::read_to_string(beamcraft_tests::generate::top().join("Cargo.toml")).expect("the manifest");
    let manifest: toml::Table = manifest.parse().expect("TOML");
    let version = manifest["workspace"]["package"]["version"].as_str().expect("a version");
    let parts = ["MAJOR", "MINOR", "PATCH"].map(|part| macro_of(&header, &format!("BEAMCRAFT_VERSION_{part}")));
    assert_eq!(parts.join("."), version);
    assert_eq!(macro_of(&header, "BEAMCRAFT_VERSION_STRING"), format!("\"{version}\""));
    assert_eq!(static_text(beamcraft_version()), version);
    assert_eq!(macro_of(&header, "BEAMCRAFT_ABI_VERSION"), beamcraft_abi_version().to_string());
}
