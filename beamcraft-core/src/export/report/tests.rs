//! The page, read back.

use super::super::samples;
use super::report_html;

#[test]
fn dump() {
    if let Ok(folder) = std::env::var("DUMP") {
        for (name, plan) in samples::all().into_iter().chain([("hostile", samples::hostile())]) {
            std::fs::write(format!("{folder}/r_{}.html", name.replace(' ', "_")), report_html(&plan)).unwrap();
        }
    }
}
