//! One row of the registry.

use schemars::Schema;
use serde::Serialize;

use super::schema::column_fields;
use crate::columns::{Chunk, ColumnFields};
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
    /// Works rows of columns off, for a calculation of numbers and choices.
    pub(crate) columns: Option<fn(&mut Chunk<'_>)>,
}

impl Calculation {
    /// The fields of the input and output as columns; nothing for a calculation of lists, texts or nested structs.
    pub fn column_fields(&self) -> Option<ColumnFields> {
        self.columns?;
        let (input, output) = ((self.input_schema)(), (self.output_schema)());
        Some(ColumnFields { inputs: column_fields(&input)?, outputs: column_fields(&output)? })
    }
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
///
/// A calculation that works in lanes names the function that does: `…, "What it answers", lanes = mitre_pair_lanes)`.
macro_rules! calculation {
    ($function:ident: $input:ty => $output:ty, $door:ident, $purpose:literal $(, lanes = $lanes:ident)?) => {
        $crate::json::Calculation {
            name: stringify!($function),
            family: $crate::json::family(module_path!()),
            purpose: $purpose,
            door: $crate::json::Door::$door,
            input_schema: $crate::json::schema_of::<$input>,
            output_schema: $crate::json::schema_of::<$output>,
            call: |text| $crate::json::call::<$input, $output, _>(text, $function),
            columns: $crate::json::calculation!(@columns $function: $input => $output, $door $(, $lanes)?),
        }
    };
    (@columns $function:ident: $input:ty => $output:ty, Typed, $lanes:ident) => {
        Some($lanes)
    };
    (@columns $function:ident: $input:ty => $output:ty, Typed) => {
        Some(|chunk| $crate::columns::rows::<$input, $output>(chunk, $function))
    };
    (@columns $function:ident: $input:ty => $output:ty, Document) => {
        None
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
