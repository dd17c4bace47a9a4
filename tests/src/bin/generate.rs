//! Writes every generated file; `--check` writes nothing and fails when one is stale.

use std::fs;
use std::process::ExitCode;

use beamcraft_tests::generate;

fn main() -> ExitCode {
    let check = std::env::args().any(|argument| argument == "--check");
    let mut stale = 0;
    for file in generate::all() {
        let path = generate::top().join(&file.path);
        if fs::read_to_string(&path).is_ok_and(|text| text == file.text) {
            continue;
        }
        stale += 1;
        println!("{} {}", if check { "stale" } else { "written" }, file.path);
        if !check && let Err(fault) = write(&path, &file.text) {
            eprintln!("{}: {fault}", file.path);
            return ExitCode::FAILURE;
        }
    }
    if check && stale > 0 { ExitCode::FAILURE } else { ExitCode::SUCCESS }
}

fn write(path: &std::path::Path, text: &str) -> std::io::Result<()> {
    if let Some(folder) = path.parent() {
        fs::create_dir_all(folder)?;
    }
    fs::write(path, text)
}
