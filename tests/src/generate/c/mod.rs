//! The C door: structs and functions of every typed calculation, the header, and the files that prove the layout.
//!
//! `plan` turns the model into C structs with every byte accounted for; `source` writes them as Rust, `header` as C (by
//! the header generator, one calculation at a time, so that struct and function stand together), `proof` writes what
//! the tests need: layout assertions for both compilers and a JSON face of every typed function.

mod header;
mod layout;
mod proof;
mod source;

#[cfg(test)]
#[path = "shapes_tests.rs"]
mod tests;

use super::GeneratedFile;
use super::model::Model;
use layout::Door;

/// Enumerations that cross the C door outside of the typed calculations.
const ALSO: [&str; 4] = ["Grade", "FindingCode", "Outcome", "Basis"];

/// Every generated file of the C door.
pub fn files(model: &Model) -> Vec<GeneratedFile> {
    let door = Door::of(model);
    let mut files = source::files(&door);
    files.push(header::file(&door));
    files.extend(proof::files(&door));
    files
}

/// `mitre_pair_input` for `MitrePairInput`.
fn snake(name: &str) -> String {
    let mut text = String::new();
    for (index, letter) in name.char_indices() {
        if letter.is_uppercase() && index > 0 {
            text.push('_');
        }
        text.extend(letter.to_lowercase());
    }
    text
}

/// `NDS_2018` for `NDS 2018`.
fn shout(text: &str) -> String {
    text.chars().map(|letter| if letter.is_alphanumeric() { letter.to_ascii_uppercase() } else { '_' }).collect()
}

/// `MitrePair` for `mitre_pair`: undoes serde's `snake_case`.
fn pascal(text: &str) -> String {
    text.split('_')
        .map(|word| {
            let mut letters = word.chars();
            letters.next().map(|first| first.to_uppercase().chain(letters).collect::<String>()).unwrap_or_default()
        })
        .collect()
}

/// A doc comment, each line behind `indent`.
fn comment(indent: &str, text: &str) -> String {
    let line = |line: &str| if line.is_empty() { format!("{indent}///\n") } else { format!("{indent}/// {line}\n") };
    text.lines().map(line).collect()
}
