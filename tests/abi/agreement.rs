//! The typed door and the JSON door agree byte for byte: results, codes and messages.

use beamcraft_core::registry;
use beamcraft_tests::rows;
use serde_json::{Map, Value, json};

use crate::face::Refused;
use crate::generated::TYPED;

/// A value in the middle of what a field allows, by its schema.
fn usual(property: &Value, root: &Value) -> Value {
    if let Some(default) = property.get("default").filter(|default| !default.is_null()) {
        return default.clone();
    }
    let variants = choices(property, root);
    if let Some(first) = variants.first() {
        return first.clone();
    }
    let bound = |name: &str| property.get(name).and_then(Value::as_f64);
    let (low, high) = (bound("minimum").unwrap_or(0.0), bound("maximum").unwrap_or(10.0));
    let middle = if low > 0.0 { (low * high).sqrt() } else { (low.max(-20.0) + high.min(50.0)) / 2.0 };
    match kind(property) {
        "integer" => json!(middle.round().clamp(low, high) as u32),
        "array" => {
            let count = property.get("minItems").and_then(Value::as_u64).unwrap_or(0);
            Value::Array((0..count).map(|k| json!(k as f64 + 0.5)).collect())
        }
        _ => json!(middle),
    }
}

fn kind(property: &Value) -> &str {
    match property.get("type") {
        Some(Value::String(name)) => name,
        Some(Value::Array(names)) => names.first().and_then(Value::as_str).unwrap_or(""),
        _ => "",
    }
}

/// The texts of an enumeration.
fn choices(property: &Value, root: &Value) -> Vec<Value> {
    let inner = property.get("anyOf").and_then(|forms| forms.get(0)).unwrap_or(property);
    let Some(name) = inner.get("$ref").and_then(Value::as_str) else { return Vec::new() };
    let target = root.get("$defs").and_then(|defs| defs.get(name.trim_start_matches("#/$defs/")));
    let list = target.and_then(|target| target.get("oneOf")).and_then(Value::as_array);
    list.into_iter().flatten().filter_map(|choice| choice.get("const").cloned()).collect()
}

/// Inputs that walk through every field: its bounds, beyond them, every choice, given and left out.
fn samples(schema: &Value) -> Vec<Value> {
    let properties = schema["properties"].as_object().expect("an object");
    let required: Vec<&str> =
        schema.get("required").and_then(Value::as_array).into_iter().flatten().filter_map(Value::as_str).collect();
    let base: Map<String, Value> =
        properties.iter().map(|(name, property)| (name.clone(), usual(property, schema))).collect();
    let only_required =
        base.clone().into_iter().filter(|(name, _)| required.contains(&name.as_str())).collect::<Map<_, _>>();
    let mut samples = vec![base.clone(), only_required];
    for (name, property) in properties {
        let mut values = choices(property, schema);
        if let (Some(low), Some(high)) = (property["minimum"].as_f64(), property["maximum"].as_f64()) {
            if kind(property) == "integer" {
                values.extend([json!(low as u32), json!(high as u32), json!(high as u32 + 1)]);
            } else {
                let (usual, span) = (usual(property, schema).as_f64().unwrap_or(low), high - low);
                values.extend(
                    [low, high, low - 1.0, high + span, -high, 0.0, usual * 0.9, usual * 1.1].map(|v| json!(v)),
                );
            }
        }
        for value in values {
            let mut changed = base.clone();
            changed.insert(name.clone(), value);
            samples.push(changed);
        }
        if !required.contains(&name.as_str()) {
            let mut changed = base.clone();
            changed.remove(name);
            samples.push(changed);
        }
    }
    samples.into_iter().map(Value::Object).collect()
}

#[test]
fn every_typed_calculation_has_a_typed_function() {
    let typed = registry::calculations().filter(|row| row.door == beamcraft_core::json::Door::Typed);
    let names: Vec<&str> = typed.map(|row| row.name).collect();
    assert_eq!(names, TYPED.iter().map(|(name, _)| *name).collect::<Vec<_>>());
    assert!(!names.is_empty());
}

#[test]
fn both_doors_give_the_same_bytes_and_the_same_refusals() {
    let (mut answers, mut refusals) = (0, 0);
    for (name, face) in TYPED {
        let row = registry::find(name).expect("a row");
        let mut answers_here = 0;
        for input in samples((row.input_schema)().as_value()).into_iter().chain(rows_of(name)) {
            let by_json = (row.call)(&input.to_string());
            let by_struct = face(&input);
            match by_json {
                Ok(text) => {
                    answers_here += 1;
                    assert_eq!(by_struct, Ok(text), "{name} {input}");
                }
                Err(error) => {
                    refusals += 1;
                    let codes: Vec<u32> = error.details().iter().map(|detail| detail.code as u32).collect();
                    let refused = Refused { status: error.code() as u32, codes, text: error.to_string() };
                    assert_eq!(by_struct, Err(refused), "{name} {input}");
                }
            }
        }
        assert!(answers_here > 0, "{name}: no sample was answered");
        answers += answers_here;
    }
    assert!(answers > refusals / 8, "{answers} answers, {refusals} refusals: the samples miss the point");
}

/// The inputs of the verification rows of a calculation, but for shop lengths as text: those exist in JSON only.
fn rows_of(name: &str) -> Vec<Value> {
    let topics = rows::read_all().expect("rows that can be read");
    let rows = topics.into_iter().flat_map(|topic| topic.rows).filter(|row| row.calculation == name);
    let is_length = |(field, value): (&String, &Value)| field.ends_with("_mm") && value.is_string();
    let inputs =
        rows.map(|row| row.input).filter(|input| !input.as_object().is_some_and(|all| all.iter().any(is_length)));
    inputs.collect()
}
