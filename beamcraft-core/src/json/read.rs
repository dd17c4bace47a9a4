//! The strict reader: straight into the struct; only on failure a second walk that names every fault.

use schemars::JsonSchema;
use serde::de::DeserializeOwned;
use serde_json::{Map, Value};

use super::schema::{Shape, schema_of};
use super::tree::Tree;
use crate::error::{Detail, Error, ErrorCode, Result};
use crate::units;

/// Reads an input of a calculation.
///
/// # Errors
/// `malformed` where the text is not JSON; otherwise every `unknown_field`, `missing_field`, `wrong_type`,
/// `unknown_name` and `duplicate_field`, each with its path and the closest known name.
pub fn read<T: DeserializeOwned + JsonSchema>(text: &str) -> Result<T> {
    // The derived readers take a list for a struct, field by field in order; the second walk does not.
    let may_hide_a_list = text.contains('[') || !text.trim_start().starts_with('{');
    match serde_json::from_str(text) {
        Ok(value) if !may_hide_a_list => Ok(value),
        _ => read_slowly(text),
    }
}

/// The second walk: also turns shop lengths into millimetres.
fn read_slowly<T: DeserializeOwned + JsonSchema>(text: &str) -> Result<T> {
    let tree: Tree = serde_json::from_str(text).map_err(|fault| malformed(&fault))?;
    let schema = schema_of::<T>();
    let mut walk = Walk { faults: Vec::new(), root: schema.as_value() };
    let value = walk.convert("", Shape::of(schema.as_value(), schema.as_value()), &tree);
    Error::unless_empty(walk.faults)?;
    // By way of text again: reading from a tree would make a second reader of every type.
    serde_json::from_str(&value.to_string()).map_err(|fault| malformed(&fault))
}

#[cold]
fn malformed(fault: &serde_json::Error) -> Error {
    Error::one(Detail {
        code: ErrorCode::Malformed,
        path: String::new(),
        given: fault.to_string(),
        allowed: "JSON (RFC 8259)".to_owned(),
        cure: String::new(),
    })
}

struct Walk<'a> {
    faults: Vec<Detail>,
    root: &'a Value,
}

impl Walk<'_> {
    fn fault(&mut self, code: ErrorCode, path: &str, given: String, allowed: String, cure: String) -> Value {
        self.faults.push(Detail { code, path: path.to_owned(), given, allowed, cure });
        Value::Null
    }

    fn wrong_type(&mut self, path: &str, tree: &Tree, wanted: &str) -> Value {
        self.fault(ErrorCode::WrongType, path, tree.brief(), wanted.to_owned(), String::new())
    }

    /// The value of `tree` as `shape` wants it; faults are noted on the way.
    fn convert(&mut self, path: &str, shape: Shape<'_>, tree: &Tree) -> Value {
        match (shape, tree) {
            (Shape::Optional(_), Tree::Null) => Value::Null,
            (Shape::Optional(inner), _) => self.convert(path, Shape::of(self.root, inner), tree),
            (Shape::Object(schema), Tree::Object(fields)) => self.object(path, schema, fields),
            (Shape::List(items), Tree::List(list)) => self.list(path, items, list),
            (Shape::Choice(choices), _) => self.choice(path, choices, tree),
            (Shape::Number, Tree::Number(number)) => Value::Number(number.clone()),
            (Shape::Number, Tree::Text(text)) if is_length(path) => self.length(path, text),
            (Shape::Integer, Tree::Number(number)) if number.is_u64() => Value::Number(number.clone()),
            (Shape::Text, Tree::Text(text)) => Value::String(text.clone()),
            (Shape::Object(_), _) => self.wrong_type(path, tree, "an object"),
            (Shape::List(_), _) => self.wrong_type(path, tree, "a list"),
            (Shape::Number, _) if is_length(path) => {
                self.wrong_type(path, tree, "millimetres, or a length as text such as \"5 1/4 in\"")
            }
            (Shape::Number, _) => self.wrong_type(path, tree, "a number"),
            (Shape::Integer, _) => self.wrong_type(path, tree, "a whole number, 0 or above"),
            (Shape::Text, _) => self.wrong_type(path, tree, "a text"),
        }
    }

    fn length(&mut self, path: &str, text: &str) -> Value {
        match units::parse_length(text) {
            Ok(length_mm) => Value::from(length_mm),
            Err(fault) => {
                let detail = Detail { path: path.to_owned(), given: format!("\"{text}\""), ..Detail::from(fault) };
                self.faults.push(detail);
                Value::Null
            }
        }
    }

    fn object(&mut self, path: &str, schema: &Value, fields: &[(String, Tree)]) -> Value {
        let empty = Map::new();
        let known = schema.get("properties").and_then(Value::as_object).unwrap_or(&empty);
        let mut values = Map::new();
        for (name, tree) in fields {
            let inner = join(path, name);
            let Some(property) = known.get(name) else {
                let names = known.keys().map(String::as_str);
                self.fault(
                    ErrorCode::UnknownField,
                    &inner,
                    String::new(),
                    list_of(names.clone()),
                    nearest(name, names),
                );
                continue;
            };
            let value = self.convert(&inner, Shape::of(self.root, property), tree);
            if values.insert(name.clone(), value).is_some() {
                self.fault(ErrorCode::DuplicateField, &inner, String::new(), "once".to_owned(), String::new());
            }
        }
        let required = schema.get("required").and_then(Value::as_array).into_iter().flatten();
        for name in required.filter_map(Value::as_str).filter(|name| !values.contains_key(*name)) {
            let purpose = known.get(name).and_then(|field| field.get("description")).and_then(Value::as_str);
            let purpose = purpose.unwrap_or_default().lines().next().unwrap_or_default().to_owned();
            self.fault(ErrorCode::MissingField, &join(path, name), String::new(), purpose, String::new());
        }
        Value::Object(values)
    }

    fn list(&mut self, path: &str, items: &Value, list: &[Tree]) -> Value {
        let shape = Shape::of(self.root, items);
        let values =
            list.iter().enumerate().map(|(k, tree)| self.convert(&format!("{path}[{k}]"), shape.clone(), tree));
        Value::Array(values.collect())
    }

    fn choice(&mut self, path: &str, choices: &[Value], tree: &Tree) -> Value {
        let names = || choices.iter().filter_map(choice_name);
        match tree {
            Tree::Text(text) if choices.iter().any(|choice| is_plain(choice, text)) => Value::String(text.clone()),
            Tree::Text(text) => {
                let cure = nearest(text, names());
                self.fault(ErrorCode::UnknownName, path, tree.brief(), list_of(names()), cure)
            }
            Tree::Object(fields) if fields.len() == 1 => {
                let found = fields.first().and_then(|(name, inner)| {
                    let content = choices.iter().find_map(|choice| choice.get("properties")?.get(name));
                    content.map(|content| (name, inner, content))
                });
                let Some((name, inner, content)) = found else {
                    let given = fields.first().map_or("", |(name, _)| name);
                    let cure = nearest(given, names());
                    return self.fault(ErrorCode::UnknownName, path, format!("\"{given}\""), list_of(names()), cure);
                };
                let value = self.convert(&join(path, name), Shape::of(self.root, content), inner);
                Value::Object(Map::from_iter([(name.clone(), value)]))
            }
            _ => self.wrong_type(path, tree, &format!("one of {}", list_of(names()))),
        }
    }
}

/// Name of one choice of an enumeration: its text, or the one field that carries its data.
fn choice_name(choice: &Value) -> Option<&str> {
    let plain = choice.get("const").and_then(Value::as_str);
    let data = || choice.get("properties")?.as_object()?.keys().next().map(String::as_str);
    plain.or_else(data)
}

fn is_plain(choice: &Value, text: &str) -> bool {
    choice.get("const").and_then(Value::as_str) == Some(text)
}

/// Whether a path names a length, or an item of a list of lengths such as `centres_mm[0]`.
fn is_length(path: &str) -> bool {
    let field = path.rfind('[').filter(|_| path.ends_with(']')).and_then(|at| path.get(..at)).unwrap_or(path);
    field.ends_with("_mm")
}

fn join(path: &str, name: &str) -> String {
    if path.is_empty() { name.to_owned() } else { format!("{path}.{name}") }
}

fn list_of<'a>(names: impl Iterator<Item = &'a str>) -> String {
    names.collect::<Vec<_>>().join(", ")
}

/// `did you mean …?`, or nothing when no name is close.
fn nearest<'a>(name: &str, known: impl Iterator<Item = &'a str>) -> String {
    crate::error::closest(name, known).map(|found| format!("did you mean {found}?")).unwrap_or_default()
}

#[cfg(test)]
#[path = "read_tests.rs"]
mod tests;
