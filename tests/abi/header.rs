//! The header under strict compilers.

use std::path::PathBuf;
use std::process::Command;

fn top() -> PathBuf {
    beamcraft_tests::generate::top()
}

fn compile(compiler: &str, standard: &str, language: &str, source: &str) {
    let run = Command::new(compiler)
        .args([&format!("-std={standard}"), "-x", language])
        .args(["-Wall", "-Wextra", "-Wpedantic", "-Wpadded", "-Wundef", "-Werror", "-fsyntax-only"])
        .arg(format!("-I{}", top().join("beamcraft-ffi/include").display()))
        .arg(source)
        .output();
    let run = run.unwrap_or_else(|fault| panic!("{compiler}: {fault}"));
    let said = String::from_utf8_lossy(&run.stderr);
    assert!(run.status.success() && said.is_empty(), "{compiler} -std={standard} {source}:\n{said}");
}

#[test]
fn the_header_compiles_alone_and_twice_under_every_standard() {
    let source = top().join("tests/c/header.c").display().to_string();
    for standard in ["c99", "c11", "c17"] {
        compile("gcc", standard, "c", &source);
    }
    for standard in ["c++11", "c++17", "c++20"] {
        compile("g++", standard, "c++", &source);
    }
}

#[test]
fn the_c_compiler_sees_the_same_layout() {
    compile("gcc", "c11", "c", &top().join("tests/c/layout.c").display().to_string());
}
