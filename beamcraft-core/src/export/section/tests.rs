//! The sheet, read back.

use super::super::samples;
use super::section_svg;

#[test]
fn dump() {
    if let Ok(folder) = std::env::var("DUMP") {
        for (name, plan) in samples::all().into_iter().chain([("hostile", samples::hostile())]) {
            std::fs::write(format!("{folder}/{}.svg", name.replace(' ', "_")), section_svg(&plan)).unwrap();
        }
    }
}
