//! Every calculation under inputs that nobody would write: within its ranges it answers with finite numbers or says what
//! is wrong; outside them it refuses by name; nothing makes it panic.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "the whole file is a test: it stops, with the reason, at what it does not expect"
)]

use std::collections::HashMap;

use beamcraft_core::error::{Error, ErrorCode};
use beamcraft_core::registry;
use beamcraft_tests::generate::model::{CalculationModel, Field, Model, Ty, TypeDef};
use beamcraft_tests::rows;
use proptest::prelude::*;
use proptest::sample::Index;
use proptest::test_runner::{Config, TestRunner};
use serde_json::{Map, Value, json};

/// A source of choices: proptest's bytes, so that a failing input shrinks.
struct Dice<'a> {
    words: &'a [u64],
    place: usize,
}

impl Dice<'_> {
    fn roll(&mut self) -> u64 {
        let word = self.words.get(self.place % self.words.len()).copied().unwrap_or(0);
        // The same words come round again, but not the same numbers.
        let turn = (self.place / self.words.len()) as u64;
        self.place += 1;
        word.wrapping_add(turn.wrapping_mul(0x9E37_79B9_7F4A_7C15))
    }

    fn below(&mut self, count: usize) -> usize {
        (self.roll() % count.max(1) as u64) as usize
    }

    /// From 0 to 1, both included.
    fn share(&mut self) -> f64 {
        (self.roll() >> 11) as f64 / ((1_u64 << 53) - 1) as f64
    }

    fn within(&mut self, low: f64, high: f64) -> f64 {
        let value = match self.below(8) {
            0 => low,
            1 => high,
            // Just inside an end.
            2 => low + (high - low) * 1e-9 * self.share(),
            // Evenly over the orders of magnitude: most rooms for error lie near zero.
            3 | 4 => low + (high - low) * (0..self.below(10)).fold(self.share(), |share, _| share * 0.1),
            _ => low + (high - low) * self.share(),
        };
        value.clamp(low, high)
    }
}

/// Counts that cost time in proportion, with the most that random inputs ask for.
const COSTLY: &[(&str, f64)] = &[("samples", 2_000.0)];

/// Makes inputs of a calculation, and knows the texts that rows have used.
struct Maker<'a> {
    model: &'a Model,
    texts: Vec<String>,
}

impl Maker<'_> {
    fn structure(&self, name: &str, dice: &mut Dice<'_>, depth: usize) -> Value {
        let mut fields = Map::new();
        for field in &self.model.structure(name).fields {
            // A field with a default is left out now and then.
            if field.default.is_some() && dice.below(3) == 0 {
                continue;
            }
            if let Some(value) = self.value(&field.ty, field, dice, depth) {
                fields.insert(field.name.clone(), value);
            }
        }
        Value::Object(fields)
    }

    fn value(&self, ty: &Ty, field: &Field, dice: &mut Dice<'_>, depth: usize) -> Option<Value> {
        let (low, high) = (field.minimum.unwrap_or(-1e6), field.maximum.unwrap_or(1e6));
        Some(match ty {
            Ty::Number => Value::from(dice.within(low, high)),
            Ty::Integer => {
                let high =
                    COSTLY.iter().find(|(name, _)| *name == field.name).map_or(high, |(_, most)| high.min(*most));
                Value::from(dice.within(low.max(0.0), high).round() as u64)
            }
            Ty::Text => Value::from(self.texts.get(dice.below(self.texts.len() + 1)).map_or("x", String::as_str)),
            Ty::Optional(inner) => {
                return if dice.below(2) == 0 { None } else { self.value(inner, field, dice, depth) };
            }
            Ty::List(inner) => {
                let count = if depth > 6 { 0 } else { dice.below(4) };
                let items = (0..count).filter_map(|_| self.value(inner, field, dice, depth + 1));
                Value::Array(items.collect())
            }
            Ty::Array(inner, count) => {
                Value::Array((0..*count).filter_map(|_| self.value(inner, field, dice, depth + 1)).collect())
            }
            Ty::Named(name) => match self.model.find(name) {
                Some(TypeDef::Struct(_)) => self.structure(name, dice, depth + 1),
                Some(TypeDef::Choice(def)) => Value::from(&*def.variants[dice.below(def.variants.len())].text),
                Some(TypeDef::Union(def)) => {
                    let (choice, content) = &def.variants[dice.below(def.variants.len())];
                    let content = self.value(content, field, dice, depth + 1)?;
                    Value::Object(Map::from_iter([(choice.text.clone(), content)]))
                }
                None => panic!("{name} is not in the model"),
            },
        })
    }
}

fn collect_texts(value: &Value, texts: &mut Vec<String>) {
    match value {
        Value::String(text) => texts.push(text.clone()),
        Value::Array(items) => items.iter().for_each(|item| collect_texts(item, texts)),
        Value::Object(fields) => fields.values().for_each(|field| collect_texts(field, texts)),
        _ => {}
    }
}

/// Inputs that rows have used, by calculation.
fn known_inputs() -> HashMap<String, Vec<Value>> {
    let topics = rows::read_all().unwrap_or_else(|faults| panic!("{}", faults.join("\n")));
    let mut known: HashMap<String, Vec<Value>> = HashMap::new();
    for row in topics.into_iter().flat_map(|topic| topic.rows) {
        known.entry(row.calculation).or_default().push(row.input);
    }
    known
}

/// Numbers are finite by the form of JSON; what is left to ask is that nothing stands for an absent number.
fn sound(value: &Value) -> bool {
    match value {
        Value::Null => false,
        Value::Number(number) => number.as_f64().is_some_and(f64::is_finite),
        Value::Array(items) => items.iter().all(sound),
        Value::Object(fields) => fields.values().all(sound),
        _ => true,
    }
}

/// A search uses the budget that it is given, which may be days: here each gets a small one.
fn keep_search_short(fields: &[Field], input: &mut Value) {
    if fields.iter().any(|field| field.name == "steps_million") {
        input["steps_million"] = Value::from(0.02);
    }
}

/// Calls, and fails the case when the answer is unsound or the error is a defect of the library.
fn call(name: &str, input: &str) -> Result<Result<Value, Error>, TestCaseError> {
    match registry::call(name, input) {
        Ok(text) => {
            let output: Value = serde_json::from_str(&text)
                .map_err(|fault| TestCaseError::fail(format!("{name}: {fault} in {text} from {input}")))?;
            prop_assert!(sound(&output), "{}: {} from {}", name, text, input);
            prop_assert_eq!(registry::call(name, input).ok(), Some(text), "{}: not the same twice", name);
            Ok(Ok(output))
        }
        Err(error) => {
            prop_assert!(!error.details().is_empty() && !error.to_string().is_empty(), "{}: an empty error", name);
            for detail in error.details() {
                let defect = matches!(detail.code, ErrorCode::NotRepresentable | ErrorCode::Panic);
                prop_assert!(!defect, "{}: {} from {}", name, detail, input);
            }
            Ok(Err(error))
        }
    }
}

fn for_each_calculation<S: Strategy>(
    cases: u32,
    strategy: impl Fn() -> S,
    test: impl Fn(&Maker<'_>, &CalculationModel, &[Value], S::Value) -> Result<(), TestCaseError>,
) {
    let model = Model::of_registry();
    let known = known_inputs();
    let mut faults = Vec::new();
    for calculation in &model.calculations {
        let inputs = known.get(calculation.row.name).cloned().unwrap_or_default();
        let mut texts = Vec::new();
        inputs.iter().for_each(|input| collect_texts(input, &mut texts));
        texts.sort();
        texts.dedup();
        let maker = Maker { model: &model, texts };
        let mut runner = TestRunner::new(Config { cases, failure_persistence: None, ..Config::default() });
        if let Err(fault) = runner.run(&strategy(), |value| test(&maker, calculation, &inputs, value)) {
            faults.push(format!("{}: {fault}", calculation.row.name));
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n\n"));
}

fn words() -> impl Strategy<Value = Vec<u64>> {
    prop::collection::vec(any::<u64>(), 16..64)
}

#[test]
fn within_its_ranges_a_calculation_answers_or_says_what_is_wrong() {
    for_each_calculation(96, words, |maker, calculation, _, words| {
        let mut input = maker.structure(&calculation.input, &mut Dice { words: &words, place: 0 }, 0);
        keep_search_short(&maker.model.structure(&calculation.input).fields, &mut input);
        call(calculation.row.name, &input.to_string()).map(|_| ())
    });
}

#[test]
fn a_known_input_with_some_numbers_moved_answers_or_says_what_is_wrong() {
    for_each_calculation(
        96,
        || (any::<Index>(), words()),
        |maker, calculation, inputs, (which, words)| {
            if inputs.is_empty() || maker.model.structure(&calculation.input).fields.is_empty() {
                return Ok(());
            }
            let mut input = which.get(inputs).clone();
            let mut dice = Dice { words: &words, place: 0 };
            let fields = &maker.model.structure(&calculation.input).fields;
            for _ in 0..=dice.below(3) {
                let field = &fields[dice.below(fields.len())];
                if let Some(value) = maker.value(&field.ty, field, &mut dice, 0) {
                    input[&field.name] = value;
                }
            }
            keep_search_short(fields, &mut input);
            call(calculation.row.name, &input.to_string()).map(|_| ())
        },
    );
}

#[test]
fn a_number_outside_its_range_is_refused_by_name() {
    for_each_calculation(
        64,
        || (words(), any::<Index>(), any::<u64>(), any::<bool>()),
        |maker, calculation, inputs, case| {
            let (words, which, bits, above) = case;
            let mut dice = Dice { words: &words, place: 0 };
            let ranged = |field: &&Field| {
                let number = match &field.ty {
                    Ty::Number => true,
                    Ty::Optional(inner) => **inner == Ty::Number,
                    _ => false,
                };
                number && field.minimum.is_some() && field.maximum.is_some()
            };
            let fields: Vec<&Field> = maker.model.structure(&calculation.input).fields.iter().filter(ranged).collect();
            // Without a row there is no input known to be good to start from; that each has one is tested elsewhere.
            if fields.is_empty() || inputs.is_empty() {
                return Ok(());
            }
            let mut input = which.get(inputs).clone();
            let field = fields[dice.below(fields.len())];
            let (low, high) = (field.minimum.unwrap_or_default(), field.maximum.unwrap_or_default());
            // From one step beyond the end to the largest numbers there are.
            let far = f64::from_bits(bits).abs();
            let far = if far.is_finite() { far } else { f64::MAX };
            let value = if above { (high + far).max(high.next_up()) } else { (low - far).min(low.next_down()) };
            let value = value.clamp(f64::MIN, f64::MAX);
            input[&field.name] = Value::from(value);
            let text = input.to_string();
            let answer = call(calculation.row.name, &text)?;
            let named = answer.as_ref().err().is_some_and(|error| {
                let details = error.details().iter();
                details.clone().any(|fault| fault.code == ErrorCode::OutOfRange && fault.path == field.name)
            });
            prop_assert!(named, "{} = {} was not refused by name: {:?} from {}", field.name, value, answer, text);
            Ok(())
        },
    );
}

/// A value of another kind than any field could want in its place.
fn wrong(dice: &mut Dice<'_>) -> Value {
    match dice.below(7) {
        0 => Value::Bool(true),
        1 => json!([[[[[[]]]]]]),
        2 => json!({"no": {"such": {"field": [1, 2, 3]}}}),
        3 => Value::from("x".repeat(1 << dice.below(17))),
        4 => Value::from("\u{0}\u{202e}\u{1f600}"),
        5 => json!([null, -1, {"a": "b"}]),
        _ => Value::from(""),
    }
}

#[test]
fn a_field_of_the_wrong_kind_is_refused_with_its_path() {
    for_each_calculation(
        64,
        || (words(), any::<Index>()),
        |maker, calculation, inputs, (words, which)| {
            let mut dice = Dice { words: &words, place: 0 };
            let fields = &maker.model.structure(&calculation.input).fields;
            if fields.is_empty() || inputs.is_empty() {
                return Ok(());
            }
            let mut input = which.get(inputs).clone();
            let field = &fields[dice.below(fields.len())];
            let value = wrong(&mut dice);
            input[&field.name] = value.clone();
            let text = input.to_string();
            let answer = call(calculation.row.name, &text)?;
            let inner = if let Ty::Optional(inner) = &field.ty { inner } else { &field.ty };
            if *inner == Ty::Text && value.is_string() {
                return Ok(());
            }
            let named = answer
                .as_ref()
                .err()
                .is_some_and(|error| error.details().iter().any(|fault| fault.path.starts_with(&field.name)));
            prop_assert!(named, "{} was not refused by name: {:?} from {:.500}", field.name, answer, text);
            Ok(())
        },
    );
}

#[test]
fn what_is_unknown_missing_or_no_json_is_refused() {
    for_each_calculation(
        16,
        || (any::<Index>(), ".{0,64}"),
        |maker, calculation, inputs, (which, junk)| {
            let name = calculation.row.name;
            if inputs.is_empty() {
                return Ok(());
            }
            let good = which.get(inputs).clone();
            let codes = |answer: Result<Value, Error>| -> Vec<(ErrorCode, String)> {
                let faults = answer.err().into_iter().flat_map(|error| error.details().to_vec());
                faults.map(|fault| (fault.code, fault.path)).collect()
            };

            let mut extra = good.clone();
            extra["no_such_field_mm"] = Value::from(1.0);
            let found = codes(call(name, &extra.to_string())?);
            prop_assert!(found.contains(&(ErrorCode::UnknownField, "no_such_field_mm".to_owned())), "{:?}", found);

            let by_place = Value::Array(good.as_object().unwrap().values().cloned().collect());
            let found = codes(call(name, &by_place.to_string())?);
            prop_assert_eq!(found, [(ErrorCode::WrongType, String::new())], "fields by place");

            let found = codes(call(name, "{}")?);
            for field in maker.model.structure(&calculation.input).fields.iter().filter(|field| field.default.is_none())
            {
                prop_assert!(
                    found.contains(&(ErrorCode::MissingField, field.name.clone())),
                    "{}: {:?}",
                    field.name,
                    found
                );
            }

            for text in ["null", "[]", "1e999", "\"\"", "true"] {
                prop_assert!(call(name, text)?.is_err(), "{} was taken", text);
            }
            let whole = good.to_string();
            let cut = which.index(whole.len());
            let cut = whole.get(..cut).unwrap_or("{");
            for text in [
                "",
                "{",
                "\u{feff}{}",
                &"[".repeat(100_000),
                &r#"{"a":"#.repeat(10_000),
                cut,
                &format!("{whole}{whole}"),
            ] {
                let found = codes(call(name, text)?);
                prop_assert_eq!(found.first().map(|fault| fault.0), Some(ErrorCode::Malformed), "{:.80}", text);
            }
            call(name, &junk)?.ok();
            let _ = registry::find(&junk).is_ok();
            Ok(())
        },
    );
}

#[test]
fn the_dice_reach_both_ends_and_stay_inside() {
    let mut runner = TestRunner::new(Config { failure_persistence: None, ..Config::default() });
    let checked = runner.run(&words(), |words| {
        let mut dice = Dice { words: &words, place: 0 };
        for _ in 0..200 {
            let value = dice.within(-3.0, 7.0);
            prop_assert!((-3.0..=7.0).contains(&value));
        }
        Ok(())
    });
    assert_eq!(checked, Ok(()));
    let ends: Vec<f64> = (0..2).map(|word| Dice { words: &[word], place: 0 }.within(-3.0, 7.0)).collect();
    assert_eq!(ends, [-3.0, 7.0]);
}
