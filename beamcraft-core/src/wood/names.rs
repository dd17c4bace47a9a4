//! Names found in whatever order and case they are written.

use crate::error::{Detail, Error, ErrorCode, closest};

/// Longest name that is looked at, bytes.
const LONGEST_NAME: usize = 120;

/// The rows a name fits.
pub(super) struct Matches<T> {
    /// Rows one of whose names has the same words.
    pub(super) equal: Vec<T>,
    /// Rows whose name has all the words given, and more.
    pub(super) part: Vec<T>,
}

/// Searches rows by name: the same words in any order and case, or written together.
pub(super) fn search<'a, T: 'a>(
    given: &str,
    rows: impl Iterator<Item = &'a T>,
    names: impl Fn(&'a T) -> Vec<&'static str>,
) -> Matches<&'a T> {
    let mut matches = Matches { equal: Vec::new(), part: Vec::new() };
    if given.len() > LONGEST_NAME {
        return matches;
    }
    let wanted = Words::of(given);
    if wanted.sorted.is_empty() {
        return matches;
    }
    for row in rows {
        let names: Vec<_> = names(row).into_iter().map(Words::of).collect();
        if names.iter().any(|name| name.sorted == wanted.sorted || name.together == wanted.together) {
            matches.equal.push(row);
        } else if names.iter().any(|name| wanted.sorted.iter().all(|word| name.sorted.contains(word))) {
            matches.part.push(row);
        }
    }
    matches
}

/// Words of a name in lower case.
pub(super) struct Words {
    /// In alphabetical order, each once.
    pub(super) sorted: Vec<String>,
    /// As they stand, without anything between them.
    together: String,
}

impl Words {
    pub(super) fn of(name: &str) -> Self {
        // The handbook writes redcedar, most people red cedar.
        let name = name.to_lowercase().replace("redcedar", "red cedar");
        let mut sorted: Vec<_> =
            name.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty()).map(str::to_owned).collect();
        let together = sorted.concat();
        sorted.sort_unstable();
        sorted.dedup();
        Self { sorted, together }
    }
}

/// A name that fits no row, with the closest.
#[cold]
pub(super) fn unknown(given: &str, allowed: &str, known: impl Iterator<Item = &'static str>) -> Error {
    let short: String = given.chars().take(LONGEST_NAME).collect();
    let found = if short.len() == given.len() { closest(&short, known) } else { None };
    fault(&short, allowed.to_owned(), found.map(|name| format!("did you mean {name}?")).unwrap_or_default())
}

/// A name that fits several rows, with all of them.
#[cold]
pub(super) fn several(given: &str, fitting: &[&str]) -> Error {
    fault(given, format!("one of: {}", fitting.join("; ")), "several fit: name one of them".to_owned())
}

fn fault(given: &str, allowed: String, cure: String) -> Error {
    let (code, path) = (ErrorCode::UnknownName, "name".to_owned());
    Error::one(Detail { code, path, given: format!("\"{given}\""), allowed, cure })
}
