//! Schemas: made once from the structs, and read back in the few shapes that inputs have.

use schemars::generate::SchemaSettings;
use schemars::{JsonSchema, Schema};
use serde_json::Value;

use crate::columns::{ColumnField, FieldKind, FieldNeed};
use crate::limits::Limited;

/// JSON Schema (draft 2020-12) of a type.
pub fn schema_of<T: JsonSchema>() -> Schema {
    SchemaSettings::draft2020_12().into_generator().into_root_schema_for::<T>()
}

/// Writes the ranges of the limits table into the schema of an input struct.
///
/// Used as `#[schemars(transform = …)]`, so that a schema cannot say anything else than the checks do.
pub fn ranges<T: Limited>(schema: &mut Schema) {
    let Some(properties) = schema.get_mut("properties").and_then(Value::as_object_mut) else { return };
    for (name, limit) in T::FIELDS {
        if let Some(property) = properties.get_mut(*name).and_then(Value::as_object_mut) {
            property.insert("minimum".to_owned(), Value::from(limit.low));
            property.insert("maximum".to_owned(), Value::from(limit.high));
        }
    }
}

/// The shapes that the inputs of this library have.
#[derive(Clone)]
pub(super) enum Shape<'a> {
    Number,
    Integer,
    Text,
    /// May be left out or null.
    Optional(&'a Value),
    /// A struct.
    Object(&'a Value),
    /// Schema of the items.
    List(&'a Value),
    /// An enumeration, with or without data.
    Choice(&'a [Value]),
}

impl<'a> Shape<'a> {
    /// The shape that `schema` describes; `root` holds the shared definitions.
    pub(super) fn of(root: &'a Value, schema: &'a Value) -> Self {
        if let Some(target) = schema.get("$ref").and_then(Value::as_str) {
            return follow(root, target).map_or(Shape::Text, |found| Shape::of(root, found));
        }
        if let Some([inner, null]) = schema.get("anyOf").and_then(Value::as_array).map(Vec::as_slice)
            && null.get("type").and_then(Value::as_str) == Some("null")
        {
            return Shape::Optional(inner);
        }
        if let Some(choices) = schema.get("oneOf").and_then(Value::as_array) {
            return Shape::Choice(choices);
        }
        match type_name(schema) {
            "number" => Shape::Number,
            "integer" => Shape::Integer,
            "array" => schema.get("items").map_or(Shape::Text, Shape::List),
            "object" => Shape::Object(schema),
            _ => Shape::Text,
        }
    }
}

/// The fields of a flat struct as columns; nothing when one of them is no number and no choice without data.
pub(super) fn column_fields(schema: &Schema) -> Option<Vec<ColumnField>> {
    let root = schema.as_value();
    let required: Vec<&str> =
        root.get("required").and_then(Value::as_array).into_iter().flatten().filter_map(Value::as_str).collect();
    let properties = root.get("properties").and_then(Value::as_object).into_iter().flatten();
    let field = |(name, property): (&String, &Value)| {
        let need = if required.contains(&name.as_str()) { FieldNeed::Required } else { FieldNeed::LeftOut };
        Some(ColumnField { name: name.clone(), kind: column_kind(root, property)?, need })
    };
    properties.map(field).collect()
}

fn column_kind(root: &Value, schema: &Value) -> Option<FieldKind> {
    match Shape::of(root, schema) {
        Shape::Number => Some(FieldKind::Number),
        Shape::Integer => Some(FieldKind::Whole),
        Shape::Optional(inner) => column_kind(root, inner),
        Shape::Choice(choices) => {
            let names = choices.iter().map(|choice| choice.get("const")?.as_str().map(str::to_owned));
            Some(FieldKind::Choice(names.collect::<Option<_>>()?))
        }
        Shape::Text | Shape::Object(_) | Shape::List(_) => None,
    }
}

/// The type of a schema; of an optional number the type without null.
fn type_name(schema: &Value) -> &str {
    match schema.get("type") {
        Some(Value::String(name)) => name,
        Some(Value::Array(names)) => names.iter().filter_map(Value::as_str).find(|name| *name != "null").unwrap_or(""),
        _ => "",
    }
}

fn follow<'a>(root: &'a Value, target: &str) -> Option<&'a Value> {
    root.get("$defs")?.get(target.strip_prefix("#/$defs/")?)
}
