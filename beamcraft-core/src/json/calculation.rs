//! One row of the registry.

use schemars::Schema;
use serde::Serialize;

use crate::error::Result;

/// Which doors a calculation has beside the JSON door.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Door {
    /// Flat numbers and choices in and out: also a typed C function and a Python function with keywords.
    Typed,
    /// Lists, texts or nested structs: Python classes and JSON.
    Document,
}

/// A public calculation: its name, what it answers, its schemas and its JSON → JSON call.
#[derive(Clone, Copy)]
pub struct Calculation {
    /// Name, the same through every door.
    pub name: &'static str,
    /// The module that owns it.
    pub family: &'static str,
    /// What it answers, in one line.
    pub purpose: &'static str,
    /// Its doors.
    pub door: Door,
    /// Schema of the input.
    pub input_schema: fn() -> Schema,
    /// Schema of the output.
    pub output_schema: fn() -> Schema,
    /// The JSON door.
    pub call: fn(&str) -> Result<String>,
}

/// Reads the input, computes, writes the output.
pub(crate) fn call<I, O, E>(text: &str, compute: fn(&I) -> core::result::Result<O, E>) -> Result<String>
where
    I: serde::de::DeserializeOwned + schemars::JsonSchema,
    O: Serialize,
    crate::error::Error: From<E>,
{
    let input: I = super::read(text)?;
    super::write(&compute(&input)?)
}

/// A registry row for the function of the same name:
/// `calculation!(mitre_pair: MitrePairInput => MitrePair, Typed, "What it answers")`.
macro_rules! calculation {
    ($function:ident: $input:ty => $output:ty, $door:ident, $purpose:literal) => {
        $crate::json::Calculation {
            name: stringify!($function),
            family: $crate::json::family(module_path!()),
            purpose: $purpose,
            door: $crate::json::Door::$door,
            input_schema: $crate::json::schema_of::<$input>,
            output_schema: $crate::json::schema_of::<$output>,
            call: |text| $crate::json::call::<$input, $output, _>(text, $function),
        }
    };
}
pub(crate) use calculation;

/// `shell` of `beamcraft_core::shell::mitre`.
pub(crate) const fn family(module_path: &'static str) -> &'static str {
    let start = "beamcraft_core::".len();
    let (mut rest, mut end) = (module_path.as_bytes().split_at(start).1, start);
    while let [first, tail @ ..] = rest
        && *first != b':'
    {
        (rest, end) = (tail, end + 1);
    }
    let (head, _) = module_path.split_at(end);
    head.split_at(start).1
}
