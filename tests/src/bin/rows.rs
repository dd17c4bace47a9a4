//! Writes the verification rows as flat text, for a runner without a TOML reader: `rows OUTFILE`.

use std::process::ExitCode;

use beamcraft_tests::rows;

fn main() -> ExitCode {
    let Some(path) = std::env::args().nth(1) else {
        eprintln!("usage: rows OUTFILE");
        return ExitCode::FAILURE;
    };
    match write(&path) {
        Ok(()) => ExitCode::SUCCESS,
        Err(faults) => {
            eprintln!("{}", faults.join("\n"));
            ExitCode::FAILURE
        }
    }
}

fn write(path: &str) -> Result<(), Vec<String>> {
    let text = rows::flat_text(&rows::read_all()?).map_err(|fault| vec![fault])?;
    std::fs::write(path, text).map_err(|fault| vec![format!("{path}: {fault}")])
}
