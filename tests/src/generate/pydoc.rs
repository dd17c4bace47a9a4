//! Docs of the Python classes and functions, numpy-style, from the doc comments of the core.

use std::fmt::Write as _;

use beamcraft_core::json::format_number;
use serde_json::Value;

use super::model::{CalculationModel, Field, Model, StructDef, Ty, TypeDef};
use super::python::{MADE_BY_FUNCTION, contents, python_name};
use crate::rows::{self, ExpectedValue, Row};

/// Fields in the order of arguments: the ones that must be given stand first, otherwise as in the struct.
pub(super) fn required_first(fields: &[Field]) -> Vec<&Field> {
    let (required, optional): (Vec<&Field>, Vec<&Field>) = fields.iter().partition(|field| field.default.is_none());
    required.into_iter().chain(optional).collect()
}

/// First line of a doc comment.
pub(super) fn first_line(doc: &str) -> &str {
    doc.lines().next().unwrap_or_default()
}

/// A doc comment as Python reads it: single backquotes are literals there when doubled.
pub(super) fn plain(doc: &str) -> String {
    doc.replace('`', "``")
}

/// A type as annotations write it.
pub(super) fn annotation(ty: &Ty) -> String {
    match ty {
        Ty::Number => "float".to_owned(),
        Ty::Integer => "int".to_owned(),
        Ty::Text => "str".to_owned(),
        Ty::Optional(inner) => format!("{} | None", annotation(inner)),
        Ty::List(inner) => format!("list[{}]", annotation(inner)),
        Ty::Array(inner, count) => format!("tuple[{}]", vec![annotation(inner); *count].join(", ")),
        Ty::Named(name) => name.clone(),
    }
}

/// A type as annotations of arguments write it: any sequence serves as a list.
pub(super) fn argument(ty: &Ty) -> String {
    match ty {
        Ty::Optional(inner) => format!("{} | None", argument(inner)),
        Ty::List(inner) => format!("Iterable[{}]", argument(inner)),
        other => annotation(other),
    }
}

/// A type as the docs say it, choices spelled out.
fn spoken(model: &Model, ty: &Ty) -> String {
    match ty {
        Ty::Number => "float".to_owned(),
        Ty::Integer => "int".to_owned(),
        Ty::Text => "str".to_owned(),
        Ty::Optional(inner) => format!("{} or None", spoken(model, inner)),
        Ty::List(inner) => format!("list of {}", spoken(model, inner)),
        Ty::Array(inner, count) => format!("tuple of {count} {}", spoken(model, inner)),
        Ty::Named(name) => match model.find(name) {
            Some(TypeDef::Choice(def)) => {
                let names: Vec<String> = def.variants.iter().map(|variant| format!("'{}'", variant.text)).collect();
                format!("{{{}}}", names.join(", "))
            }
            Some(TypeDef::Union(def)) => contents(model, def).join(" or "),
            _ => name.clone(),
        },
    }
}

/// A default as Python writes it; `None` where only a class could say it.
pub(super) fn default(model: &Model, ty: &Ty, value: &Value) -> Option<String> {
    match (ty, value) {
        (Ty::Optional(_), Value::Null) => Some("None".to_owned()),
        (Ty::Optional(inner), _) => default(model, inner, value),
        (Ty::Number, Value::Number(number)) => Some(format_number(number.as_f64()?)),
        (Ty::Integer, Value::Number(number)) => Some(number.to_string()),
        (Ty::Text, Value::String(text)) => Some(quoted(text)),
        (Ty::Named(name), Value::String(text)) => {
            matches!(model.find(name), Some(TypeDef::Choice(_))).then(|| quoted(text))
        }
        _ => None,
    }
}

/// A Python string literal of printable text.
pub(super) fn quoted(text: &str) -> String {
    let text = text.replace('\\', "\\\\");
    if text.contains('\'') { format!("\"{}\"", text.replace('"', "\\\"")) } else { format!("'{text}'") }
}

/// A section of fields: name and type, then the doc comment, range and default.
fn section(out: &mut String, model: &Model, title: &str, fields: &[&Field]) {
    if fields.is_empty() {
        return;
    }
    let _ = write!(out, "\n\n{title}\n{}", "-".repeat(title.len()));
    for field in fields {
        let _ = write!(out, "\n{} : {}", python_name(&field.name), spoken(model, &field.ty));
        match &field.default {
            Some(Value::Null) => out.push_str(", optional"),
            Some(value) => {
                let said = default(model, &field.ty, value);
                let _ = write!(out, ", default {}", said.unwrap_or_else(|| value.to_string()));
            }
            None => {}
        }
        let mut lines = plain(&field.doc);
        if let (Some(low), Some(high)) = (field.minimum, field.maximum) {
            let _ = write!(lines, "\nAllowed: {} to {}.", number(low), number(high));
        }
        for line in lines.lines() {
            if line.is_empty() {
                out.push('\n');
            } else {
                let _ = write!(out, "\n    {line}");
            }
        }
    }
}

/// A limit in words: as few digits as it has.
fn number(value: f64) -> String {
    let text = format_number(value);
    text.strip_suffix(".0").map_or(text.clone(), str::to_owned)
}

/// Docs of a class.
pub(super) fn class(model: &Model, def: &StructDef) -> String {
    let mut out = plain(&def.doc);
    let title = if MADE_BY_FUNCTION.contains(&def.name.as_str()) { "Attributes" } else { "Parameters" };
    section(&mut out, model, title, &required_first(&def.fields));
    out
}

/// Docs of a function.
pub(super) fn function(model: &Model, calculation: &CalculationModel, examples: &Examples) -> String {
    let (input, output) = (model.structure(&calculation.input), model.structure(&calculation.output));
    let mut out = format!("{}.", plain(calculation.row.purpose.trim_end_matches('.')));
    section(&mut out, model, "Parameters", &required_first(&input.fields));
    let _ = write!(out, "\n\nReturns\n-------\n{}\n    {}", output.name, plain(first_line(&output.doc)));
    out.push_str("\n\nRaises\n------");
    out.push_str("\nTypeError\n    A value is not of the type that is needed.");
    out.push_str("\nBeamcraftError\n    A value is refused, or the values do not go together; the subclass says what kind of fault it is.");
    if let Some(example) = examples.of(model, calculation) {
        let _ = write!(out, "\n\nExamples\n--------\n{example}");
    }
    out
}

/// Examples from the verification tables: the inputs of the first row of a calculation, its result as computed.
pub(super) struct Examples {
    rows: Vec<Row>,
}

impl Examples {
    /// The rows of every table, in the order of the file names.
    ///
    /// # Panics
    /// When a table cannot be read.
    pub(super) fn of_rows() -> Self {
        let topics = rows::read_all().unwrap_or_else(|faults| panic!("{}", faults.join("\n")));
        Self { rows: topics.into_iter().flat_map(|topic| topic.rows).collect() }
    }

    /// No rows: no examples.
    #[cfg(test)]
    pub(super) fn none() -> Self {
        Self { rows: Vec::new() }
    }

    /// The example of a calculation, if a row of numbers and texts shows one of its numbers.
    fn of(&self, model: &Model, calculation: &CalculationModel) -> Option<String> {
        let of_it = self.rows.iter().filter(|row| row.calculation == calculation.row.name);
        of_it.into_iter().find_map(|row| example(model, calculation, row))
    }
}

fn example(model: &Model, calculation: &CalculationModel, row: &Row) -> Option<String> {
    let fields = &model.structure(&calculation.input).fields;
    let mut arguments = Vec::new();
    for (key, value) in row.input.as_object()? {
        let field = fields.iter().find(|field| &field.name == key)?;
        // A length as text goes through the JSON door only.
        let fits = matches!(
            (&field.ty, value),
            (Ty::Number | Ty::Integer, Value::Number(_)) | (Ty::Text | Ty::Named(_), Value::String(_))
        );
        arguments.push(format!("{}={}", python_name(key), fits.then(|| default(model, &field.ty, value))??));
    }
    let output: Value = serde_json::from_str(&(calculation.row.call)(&row.input_text()).ok()?).ok()?;
    let outputs = &model.structure(&calculation.output).fields;
    let call = format!(">>> import beamcraft\n>>> found = beamcraft.{}({})", row.calculation, arguments.join(", "));
    row.expected.iter().find_map(|expected| {
        let field = outputs.iter().find(|field| field.name == expected.path)?;
        match (&expected.value, &field.ty, output.get(&field.name)?) {
            (ExpectedValue::Text(_), _, Value::String(text)) => {
                Some(format!("{call}\n>>> found.{}\n{}", python_name(&field.name), quoted(text)))
            }
            (ExpectedValue::Number { .. }, Ty::Integer, Value::Number(number)) => {
                Some(format!("{call}\n>>> found.{}\n{number}", python_name(&field.name)))
            }
            (ExpectedValue::Number { .. }, _, Value::Number(number)) => {
                // Four decimals show a number only if it is of that size.
                let value = number.as_f64().filter(|value| value.abs() >= 0.01 && value.abs() < 1e9)?;
                let rounded: f64 = format!("{value:.4}").parse().ok()?;
                Some(format!("{call}\n>>> round(found.{}, 4)\n{}", python_name(&field.name), format_number(rounded)))
            }
            _ => None,
        }
    })
}
