//! Every public calculation by name: what the doors, the verification runners, the generator and the docs walk.

use crate::error::{Detail, Error, ErrorCode, Result, closest};
use crate::json::Calculation;

/// The rows of every module, in the order of the floors.
const FAMILIES: &[&[Calculation]] = &[
    crate::units::CALCULATIONS,
    crate::wood::CALCULATIONS,
    crate::shell::CALCULATIONS,
    crate::fasten::CALCULATIONS,
    crate::statics::CALCULATIONS,
    crate::saw::CALCULATIONS,
    crate::frame::CALCULATIONS,
    crate::hang::CALCULATIONS,
    crate::movement::CALCULATIONS,
    crate::tolerance::CALCULATIONS,
    crate::finish::CALCULATIONS,
    crate::lifting::CALCULATIONS,
    crate::site::CALCULATIONS,
    crate::plan::CALCULATIONS,
];

/// Every public calculation, in a fixed order.
pub fn calculations() -> impl Iterator<Item = &'static Calculation> {
    FAMILIES.iter().copied().flatten()
}

/// The calculation of a name.
///
/// # Errors
/// `unknown_name`, with the closest known one.
pub fn find(name: &str) -> Result<&'static Calculation> {
    calculations().find(|row| row.name == name).ok_or_else(|| unknown(name))
}

/// Computes `name` for a JSON input and gives the canonical JSON of its output.
///
/// # Errors
/// `unknown_name`; all faults of the input; what the calculation itself refuses.
pub fn call(name: &str, input: &str) -> Result<String> {
    (find(name)?.call)(input)
}

#[cold]
fn unknown(name: &str) -> Error {
    let names: Vec<_> = calculations().map(|row| row.name).collect();
    Error::one(Detail {
        code: ErrorCode::UnknownName,
        path: "name".to_owned(),
        given: format!("\"{name}\""),
        allowed: names.join(", "),
        cure: closest(name, names.into_iter()).map(|found| format!("did you mean {found}?")).unwrap_or_default(),
    })
}
