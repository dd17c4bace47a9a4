//! Columns against single calls: the same bits, the same refusals, with any number of threads, for every calculation of
//! numbers and choices.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "the whole file is a test: it stops, with the reason, at what it does not expect"
)]

use beamcraft_core::columns::{ABSENT, Column, ColumnField, ColumnMut, Columns, ColumnsReport, FieldKind, FieldNeed};
use beamcraft_core::error::{Error, ErrorCode};
use beamcraft_core::json::{Calculation, Door};
use beamcraft_core::registry;
use proptest::prelude::*;
use proptest::test_runner::{Config, TestRunner};
use serde_json::{Map, Value};

/// A column that the test owns.
#[derive(Clone, Debug, PartialEq)]
enum Owned {
    Numbers(Vec<f64>),
    Codes(Vec<u32>),
}

impl Owned {
    fn column(&self) -> Column<'_> {
        match self {
            Owned::Numbers(values) => Column::Numbers(values),
            Owned::Codes(values) => Column::Codes(values),
        }
    }

    fn column_mut(&mut self) -> ColumnMut<'_> {
        match self {
            Owned::Numbers(values) => ColumnMut::Numbers(values),
            Owned::Codes(values) => ColumnMut::Codes(values),
        }
    }

    /// What nobody would leave in a result.
    fn untouched(field: &ColumnField, rows: usize) -> Self {
        match field.kind {
            FieldKind::Number => Owned::Numbers(vec![f64::NEG_INFINITY; rows]),
            FieldKind::Whole | FieldKind::Choice(_) => Owned::Codes(vec![0xDEAD; rows]),
        }
    }

    /// The bits of a row.
    fn bits(&self, row: usize) -> u64 {
        match self {
            Owned::Numbers(values) => values[row.min(values.len() - 1)].to_bits(),
            Owned::Codes(values) => u64::from(values[row.min(values.len() - 1)]),
        }
    }
}

/// Everything that a call gives.
#[derive(Debug, PartialEq)]
struct Answer {
    outputs: Vec<Owned>,
    status: Vec<u32>,
    fields: Vec<u32>,
    report: ColumnsReport,
}

impl Answer {
    fn bits(&self) -> Vec<Vec<u64>> {
        let rows = 0..self.status.len();
        self.outputs.iter().map(|column| rows.clone().map(|row| column.bits(row)).collect()).collect()
    }
}

fn compute(row: &Calculation, inputs: &[(String, Owned)], rows: usize, threads: u32) -> Result<Answer, Error> {
    let fields = row.column_fields().unwrap();
    let mut outputs: Vec<Owned> = fields.outputs.iter().map(|field| Owned::untouched(field, rows)).collect();
    let (mut status, mut places) = (vec![7; rows], vec![7; rows]);
    let inputs: Vec<_> = inputs.iter().map(|(name, column)| (name.as_str(), column.column())).collect();
    let places_of_outputs = fields.outputs.iter().zip(&mut outputs);
    let report = registry::columns(
        row.name,
        Columns {
            rows,
            inputs: &inputs,
            outputs: places_of_outputs.map(|(field, column)| (field.name.as_str(), column.column_mut())).collect(),
            status: Some(&mut status),
            fault_fields: Some(&mut places),
            threads,
        },
    )?;
    Ok(Answer { outputs, status, fields: places, report })
}

/// Random numbers of a row: fair within the range of the field, or anything at all.
struct Dice(u64);

impl Dice {
    fn roll(&mut self) -> u64 {
        // SplitMix64.
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mixed = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        mixed ^ (mixed >> 31)
    }

    fn below(&mut self, count: u64) -> u64 {
        self.roll() % count
    }

    fn share(&mut self) -> f64 {
        (self.roll() >> 11) as f64 / ((1_u64 << 53) - 1) as f64
    }

    fn number(&mut self, (low, high): (f64, f64), hostile: u64) -> f64 {
        match self.below(40) {
            _ if self.below(40) < hostile => f64::from_bits(self.roll()),
            0 => low,
            1 => high,
            2 if hostile > 0 => f64::NAN,
            _ => (low
                + (high - low) * beamcraft_core::numeric::real::pow(self.share(), f64::from(1 + self.below(3) as u32)))
            .clamp(low, high),
        }
    }

    fn code(&mut self, kind: &FieldKind, (low, high): (f64, f64), hostile: u64) -> u32 {
        match kind {
            _ if self.below(40) < hostile => self.roll() as u32,
            FieldKind::Choice(names) => self.below(names.len() as u64) as u32,
            _ => low.max(0.0) as u32 + self.below((high - low.max(0.0)).min(2_000.0) as u64 + 1) as u32,
        }
    }
}

fn property<'a>(schema: &'a Value, field: &str) -> &'a Value {
    &schema["properties"][field]
}

fn range(property: &Value) -> (f64, f64) {
    let end = |key: &str, other: f64| property.get(key).and_then(Value::as_f64).unwrap_or(other);
    (end("minimum", 0.0), end("maximum", 1e3))
}

/// Whether a field may have no value.
fn is_optional(property: &Value) -> bool {
    property.get("anyOf").is_some() || property.get("type").is_some_and(Value::is_array)
}

/// Inputs of a calculation: some columns, some single values, some left out.
fn inputs(row: &Calculation, dice: &mut Dice, rows: usize) -> Vec<(String, Owned)> {
    let schema = (row.input_schema)();
    let hostile = [0, 0, 1, 4][dice.below(4) as usize];
    let mut made = Vec::new();
    for field in row.column_fields().unwrap().inputs {
        if field.need == FieldNeed::LeftOut && dice.below(3) == 0 {
            continue;
        }
        let range = range(property(schema.as_value(), &field.name));
        let count = if dice.below(4) == 0 { 1 } else { rows };
        let column = match &field.kind {
            FieldKind::Number => Owned::Numbers((0..count).map(|_| dice.number(range, hostile)).collect()),
            kind => Owned::Codes((0..count).map(|_| dice.code(kind, range, hostile)).collect()),
        };
        made.push((field.name, column));
    }
    made
}

/// One row as the JSON door takes it; nothing when JSON cannot say it.
fn json_of(row: &Calculation, inputs: &[(String, Owned)], k: usize) -> Option<Value> {
    let (schema, fields) = ((row.input_schema)(), row.column_fields().unwrap());
    let mut object = Map::new();
    for (name, column) in inputs {
        let optional = is_optional(property(schema.as_value(), name));
        let kind = &fields.inputs.iter().find(|field| field.name == *name).unwrap().kind;
        let value = match (column, kind) {
            (Owned::Numbers(_), _) => {
                let number = f64::from_bits(column.bits(k));
                if optional && number.is_nan() {
                    continue;
                }
                Value::from(serde_json::Number::from_f64(number)?)
            }
            (Owned::Codes(_), kind) => {
                let code = column.bits(k) as u32;
                match kind {
                    _ if optional && code == ABSENT => continue,
                    FieldKind::Choice(names) => Value::from(names.get(code as usize)?.as_str()),
                    _ => Value::from(code),
                }
            }
        };
        object.insert(name.clone(), value);
    }
    Some(Value::Object(object))
}

/// Compares a row of an answer with the single call.
fn check_row(row: &Calculation, inputs: &[(String, Owned)], answer: &Answer, k: usize) {
    let fields = row.column_fields().unwrap();
    let Some(input) = json_of(row, inputs, k) else {
        // Not finite, or no choice: a refusal by whatever is found first.
        assert_ne!(answer.status[k], 0, "{} row {k} must be refused", row.name);
        return;
    };
    let say = |what: &str| format!("{} row {k}: {what}: {input}", row.name);
    match registry::call(row.name, &input.to_string()) {
        Ok(text) => {
            assert_eq!(answer.status[k], 0, "{}", say("is refused"));
            assert_eq!(answer.fields[k], ABSENT);
            let result: Value = serde_json::from_str(&text).unwrap();
            for (field, column) in fields.outputs.iter().zip(&answer.outputs) {
                let wanted = match (result.get(&field.name), &field.kind) {
                    (None, FieldKind::Number) => {
                        assert!(f64::from_bits(column.bits(k)).is_nan(), "{}", say(&field.name));
                        continue;
                    }
                    (None, _) => u64::from(ABSENT),
                    (Some(value), FieldKind::Number) => {
                        let (wanted, got) = (value.as_f64().unwrap(), f64::from_bits(column.bits(k)));
                        // JSON writes no sign of zero.
                        let same = wanted.to_bits() == got.to_bits() || (wanted == 0.0 && got == 0.0);
                        assert!(same, "{}: {got:e} instead of {wanted:e}", say(&field.name));
                        continue;
                    }
                    (Some(value), FieldKind::Whole) => value.as_u64().unwrap(),
                    (Some(value), FieldKind::Choice(names)) => {
                        names.iter().position(|name| *name == value.as_str().unwrap()).unwrap() as u64
                    }
                };
                assert_eq!(column.bits(k), wanted, "{}", say(&field.name));
            }
        }
        Err(error) => {
            assert_eq!(answer.status[k], error.code() as u32, "{}", say(&error.to_string()));
            let place = fields.inputs.iter().position(|field| field.name == error.field());
            assert_eq!(answer.fields[k], place.map_or(ABSENT, |place| place as u32), "{}", say(&error.to_string()));
            for column in &answer.outputs {
                match column {
                    Owned::Numbers(values) => assert!(values[k].is_nan(), "{}", say("left a number")),
                    Owned::Codes(values) => assert_eq!(values[k], ABSENT, "{}", say("left a code")),
                }
            }
        }
    }
}

fn typed() -> impl Iterator<Item = &'static Calculation> {
    registry::calculations().filter(|row| row.door == Door::Typed)
}

#[test]
fn every_calculation_of_numbers_and_choices_takes_columns() {
    assert!(typed().count() > 50);
    for row in registry::calculations() {
        assert_eq!(row.column_fields().is_some(), row.door == Door::Typed, "{}", row.name);
    }
}

#[test]
fn a_row_of_columns_is_a_single_call_bit_for_bit() {
    let mut runner = TestRunner::new(Config { cases: 12, failure_persistence: None, ..Config::default() });
    for row in typed() {
        let law = |(seed, rows): (u64, usize)| {
            let inputs = inputs(row, &mut Dice(seed), rows);
            let answer = compute(row, &inputs, rows, 1).unwrap();
            (0..rows).for_each(|k| check_row(row, &inputs, &answer, k));
            let refused: Vec<usize> = (0..rows).filter(|k| answer.status[*k] != 0).collect();
            prop_assert_eq!(answer.report.refused, refused.len());
            prop_assert_eq!(answer.report.first.map(|(k, _)| k), refused.first().copied());
            Ok(())
        };
        runner.run(&(any::<u64>(), 0..24_usize), law).unwrap();
    }
}

#[test]
fn the_number_of_threads_changes_nothing() {
    // Three chunks, the last one short.
    let rows = 2 * 4096 + 5;
    for row in typed() {
        let inputs = inputs(row, &mut Dice(11), rows);
        let one = compute(row, &inputs, rows, 1).unwrap();
        for threads in [2, 7] {
            let many = compute(row, &inputs, rows, threads).unwrap();
            assert_eq!((&many.status, &many.fields), (&one.status, &one.fields), "{}", row.name);
            assert_eq!(many.bits(), one.bits(), "{}", row.name);
            let faults = |answer: &Answer| answer.report.first.map(|(k, fault)| (k, fault.to_string()));
            assert_eq!((many.report.refused, faults(&many)), (one.report.refused, faults(&one)), "{}", row.name);
        }
        let some = (0..rows).step_by(97).chain([1, 4095, 4096, 8191, 8192, rows - 1]);
        some.for_each(|k| check_row(row, &inputs, &one, k));
    }
}

/// The calculations that work in lanes.
const LANES: [&str; 3] = ["equilibrium_moisture", "dowel_bearing", "dowel_shear"];

#[test]
fn a_row_in_lanes_is_a_single_call_bit_for_bit_whatever_stands_beside_it() {
    let mut runner = TestRunner::new(Config { cases: 60, failure_persistence: None, ..Config::default() });
    for name in LANES {
        let row = registry::find(name).unwrap();
        let law = |(seed, rows): (u64, usize)| {
            let inputs = inputs(row, &mut Dice(seed), rows);
            let answer = compute(row, &inputs, rows, 1).unwrap();
            (0..rows).for_each(|k| check_row(row, &inputs, &answer, k));
            Ok(())
        };
        runner.run(&(any::<u64>(), 60..200_usize), law).unwrap();
    }
}

fn moisture(inputs: &[(&str, Column<'_>)], outputs: Vec<(&str, ColumnMut<'_>)>, threads: u32) -> Result<(), Error> {
    let call = Columns { rows: 3, inputs, outputs, status: None, fault_fields: None, threads };
    registry::columns("equilibrium_moisture", call).map(|_| ())
}

#[test]
fn everything_that_does_not_fit_is_named_at_once() {
    let (mut out, mut short, mut codes) = ([0.0; 3], [0.0; 1], [0; 3]);
    let inputs =
        [("temperature_c", Column::Numbers(&[20.0, 21.0])), ("relative_humidty_pct", Column::Numbers(&[50.0]))];
    let outputs = vec![
        ("moisture_pct", ColumnMut::Numbers(&mut short)),
        ("dissolved_pct", ColumnMut::Codes(&mut codes)),
        ("hydrated", ColumnMut::Numbers(&mut out)),
    ];
    let text = moisture(&inputs, outputs, 0).unwrap_err().to_string();
    let wanted = [
        "threads: got 0, allowed 1 to 64",
        "temperature_c: got 2 values, allowed 1 or 3",
        "relative_humidty_pct: a field is given that the input does not have, allowed temperature_c, \
         relative_humidity_pct; did you mean relative_humidity_pct?",
        "relative_humidity_pct: a required field is not given, wanted: a column of numbers, or one value",
        "outputs.moisture_pct: got 1 value, allowed 3",
        "outputs.dissolved_pct: got codes (whole numbers), allowed numbers",
        "outputs: got \"hydrated\", allowed moisture_pct, dissolved_pct, hydrated_pct, table; did you mean hydrated_pct?",
    ];
    assert_eq!(text.lines().collect::<Vec<_>>(), wanted);
}

#[test]
fn a_column_given_twice_and_an_unknown_calculation_are_refused() {
    let inputs = [
        ("temperature_c", Column::Numbers(&[20.0])),
        ("temperature_c", Column::Numbers(&[20.0])),
        ("relative_humidity_pct", Column::Numbers(&[50.0])),
    ];
    assert_eq!(moisture(&inputs, Vec::new(), 1).unwrap_err().code(), ErrorCode::DuplicateField);
    for (name, code) in [("plan", ErrorCode::NotSupported), ("dowel_sheer", ErrorCode::UnknownName)] {
        let call = Columns { rows: 0, inputs: &[], outputs: Vec::new(), status: None, fault_fields: None, threads: 1 };
        assert_eq!(registry::columns(name, call).unwrap_err().code(), code);
    }
}

#[test]
fn the_first_row_that_is_refused_is_named() {
    let inputs = [
        ("temperature_c", Column::Numbers(&[20.0])),
        ("relative_humidity_pct", Column::Numbers(&[50.0, 120.0, f64::NAN])),
    ];
    let call = Columns { rows: 3, inputs: &inputs, outputs: Vec::new(), status: None, fault_fields: None, threads: 1 };
    let report = registry::columns("equilibrium_moisture", call).unwrap();
    let text = "row[1].relative_humidity_pct: got 120 %, allowed 0 % to 95 %; above 95 % no table supports the sorption \
                equation; 2 rows are refused, this is the first";
    assert_eq!(report.refuse_any().unwrap_err().to_string(), text);
}
