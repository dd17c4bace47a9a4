//! Verification rows: values from outside the library, with the calculation and the input that should reproduce them.
//!
//! `tests/verification/<topic>.toml` holds one table a topic. Rust, C and Python walk the same rows; the verification
//! manual of the book is generated from them. Reading is strict: what a row must have is checked here, for all doors.

use std::collections::HashMap;
use std::fmt::Write as _;
use std::fs;
use std::path::{Path, PathBuf};

use beamcraft_core::json::format_number;
use beamcraft_core::registry;
use serde::Deserialize;
use serde_json::{Map, Value};

/// One file of rows.
pub struct Topic {
    /// Name of the file without its ending.
    pub name: String,
    /// The comment that opens the file: what it checks and where the rows come from.
    pub intro: String,
    /// Rows in the order of the file.
    pub rows: Vec<Row>,
}

/// A value known from outside, with its input.
pub struct Row {
    /// Unique name.
    pub id: String,
    /// Name in the registry.
    pub calculation: String,
    /// Input in the library's own units.
    pub input: Value,
    /// What must come out.
    pub expected: Vec<Expected>,
    /// Why the tolerance is what it is; empty where only texts are compared.
    pub why: String,
    /// Publication and place.
    pub source: String,
    /// How the value was checked.
    pub evidence: Evidence,
    /// Anything else worth knowing, such as how the book rounded.
    pub note: String,
}

/// How far a row's value was checked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
pub enum Evidence {
    /// Read in the publication or in a public extract of it.
    #[serde(rename = "seen")]
    Seen,
    /// From memory.
    #[serde(rename = "recalled")]
    Recalled,
    /// A fact of the trade without a published source.
    #[serde(rename = "common practice")]
    CommonPractice,
    /// Follows from geometry, arithmetic or equilibrium.
    #[serde(rename = "derived")]
    Derived,
}

impl Evidence {
    /// Text form.
    pub fn name(self) -> &'static str {
        match self {
            Evidence::Seen => "seen",
            Evidence::Recalled => "recalled",
            Evidence::CommonPractice => "common practice",
            Evidence::Derived => "derived",
        }
    }
}

/// One value that must come out.
pub struct Expected {
    /// Path in the output, such as `modes[0].value_n`.
    pub path: String,
    /// The value.
    pub value: ExpectedValue,
}

/// A number with its tolerance, or a text.
pub enum ExpectedValue {
    /// A number.
    Number {
        /// As printed, in `unit`.
        printed: f64,
        /// Printed unit; empty when it is the field's own.
        unit: String,
        /// Field unit = printed unit times this.
        factor: f64,
        /// Absolute tolerance, in the field's unit.
        tolerance: f64,
    },
    /// A text that must be equal.
    Text(String),
}

impl ExpectedValue {
    /// The expected number in the field's unit.
    pub fn number(&self) -> Option<f64> {
        match self {
            ExpectedValue::Number { printed, factor, .. } => Some(printed * factor),
            ExpectedValue::Text(_) => None,
        }
    }
}

/// What came of one expected value.
pub struct Comparison {
    /// What came out.
    pub computed: Value,
    /// Computed minus expected in the field's unit; absent for a text.
    pub residual: Option<f64>,
    /// Whether it lies within the tolerance, or the texts are equal.
    pub holds: bool,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    row: Vec<Written>,
}

/// A row as it is written.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Written {
    id: String,
    calculation: String,
    input: toml::Table,
    expect: toml::Table,
    tolerance: Option<Tolerance>,
    #[serde(default)]
    units: HashMap<String, String>,
    source: String,
    evidence: Evidence,
    #[serde(default)]
    note: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Tolerance {
    abs: Option<f64>,
    rel: Option<f64>,
    why: String,
}

/// The folder of the rows.
pub fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("verification")
}

/// Every topic, by name; or everything that is wrong with the files.
///
/// # Errors
/// One text for each fault, each opening with the file and the row.
pub fn read_all() -> Result<Vec<Topic>, Vec<String>> {
    let folder = folder();
    let mut faults = Vec::new();
    let mut paths: Vec<PathBuf> = match fs::read_dir(&folder) {
        Ok(entries) => entries.flatten().map(|entry| entry.path()).collect(),
        Err(fault) => return Err(vec![format!("{}: {fault}", folder.display())]),
    };
    paths.retain(|path| path.extension().is_some_and(|ending| ending == "toml"));
    paths.retain(|path| path.file_name().is_some_and(|name| name != "units.toml"));
    paths.sort();
    let factors = read_factors(&folder.join("units.toml")).unwrap_or_else(|fault| {
        faults.push(fault);
        HashMap::new()
    });
    let mut topics = Vec::new();
    for path in paths {
        let name = path.file_stem().unwrap_or_default().to_string_lossy().into_owned();
        match fs::read_to_string(&path) {
            Ok(text) => topics.push(read_topic(&name, &text, &factors, &mut faults)),
            Err(fault) => faults.push(format!("{name}: {fault}")),
        }
    }
    faults.extend(doubled_ids(&topics));
    if faults.is_empty() { Ok(topics) } else { Err(faults) }
}

fn read_factors(path: &Path) -> Result<HashMap<String, f64>, String> {
    if !path.exists() {
        return Ok(HashMap::new());
    }
    let text = fs::read_to_string(path).map_err(|fault| format!("units: {fault}"))?;
    let factors: HashMap<String, f64> = toml::from_str(&text).map_err(|fault| format!("units: {fault}"))?;
    match factors.iter().find(|(_, factor)| !factor.is_finite() || **factor <= 0.0) {
        Some((unit, _)) => Err(format!("units: the factor of {unit} is no positive number")),
        None => Ok(factors),
    }
}

/// Reads the text of one file; what is wrong goes to `faults`.
pub fn read_topic(name: &str, text: &str, factors: &HashMap<String, f64>, faults: &mut Vec<String>) -> Topic {
    let lines = text.lines().take_while(|line| line.starts_with('#'));
    let intro = lines.map(|line| line.trim_start_matches('#').trim()).collect::<Vec<_>>().join("\n").trim().to_owned();
    if intro.is_empty() {
        faults.push(format!("{name}: opens with no comment on what it checks and where its rows come from"));
    }
    let mut rows = Vec::new();
    match toml::from_str::<File>(text) {
        Ok(file) => {
            for written in file.row {
                let id = written.id.clone();
                match written.read(factors) {
                    Ok(row) => rows.push(row),
                    Err(found) => faults.extend(found.into_iter().map(|fault| format!("{name}, {id}: {fault}"))),
                }
            }
        }
        Err(fault) => faults.push(format!("{name}: {fault}")),
    }
    Topic { name: name.to_owned(), intro, rows }
}

fn doubled_ids(topics: &[Topic]) -> Vec<String> {
    let mut homes: HashMap<&str, &str> = HashMap::new();
    let mut faults = Vec::new();
    for topic in topics {
        for row in &topic.rows {
            if let Some(home) = homes.insert(&row.id, &topic.name) {
                faults.push(format!("{}, {}: the id is also used in {home}", topic.name, row.id));
            }
        }
    }
    faults
}

impl Written {
    fn read(self, factors: &HashMap<String, f64>) -> Result<Row, Vec<String>> {
        let mut faults = Vec::new();
        let kebab = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
        if self.id.is_empty() || !self.id.chars().all(kebab) {
            faults.push("the id is not in small letters, digits and hyphens".to_owned());
        }
        if registry::find(&self.calculation).is_err() {
            faults.push(format!("there is no calculation {}", self.calculation));
        }
        if self.source.trim().is_empty() {
            faults.push("no source".to_owned());
        }
        let mut units = Units { printed: &self.units, factors, used: Vec::new() };
        let input = to_json("", &toml::Value::Table(self.input), &mut units, &mut faults);
        let mut flat = Vec::new();
        flatten("", toml::Value::Table(self.expect), &mut flat);
        let mut expected = Vec::new();
        for (path, value) in flat {
            match expected_value(&path, &value, self.tolerance.as_ref(), &mut units) {
                Ok(value) => expected.push(Expected { path, value }),
                Err(fault) => faults.push(format!("{path}: {fault}")),
            }
        }
        if expected.is_empty() {
            faults.push("expects nothing".to_owned());
        }
        let unused = self.units.keys().filter(|field| !units.used.contains(*field));
        faults.extend(unused.map(|field| format!("a unit is given for {field}, which the row does not hold")));
        let why = self.tolerance.map(|tolerance| tolerance.why).unwrap_or_default();
        if !faults.is_empty() {
            return Err(faults);
        }
        let Self { id, calculation, source, evidence, note, .. } = self;
        Ok(Row { id, calculation, input, expected, why, source, evidence, note })
    }
}

/// Printed units of a row.
struct Units<'a> {
    printed: &'a HashMap<String, String>,
    factors: &'a HashMap<String, f64>,
    used: Vec<String>,
}

impl Units<'_> {
    /// Printed unit and factor of a path: the whole path counts first, then its last field.
    fn of(&mut self, path: &str) -> Result<(String, f64), String> {
        let field = path.rsplit('.').next().unwrap_or_default().split('[').next().unwrap_or_default();
        let Some((key, unit)) = self.printed.get_key_value(path).or_else(|| self.printed.get_key_value(field)) else {
            return Ok((String::new(), 1.0));
        };
        self.used.push(key.clone());
        let factor = self.factors.get(unit).copied().ok_or_else(|| format!("units.toml does not know {unit}"))?;
        Ok((unit.clone(), factor))
    }
}

/// The JSON of an input, its numbers in the library's own units.
fn to_json(path: &str, value: &toml::Value, units: &mut Units<'_>, faults: &mut Vec<String>) -> Value {
    match value {
        toml::Value::String(text) => Value::from(text.as_str()),
        toml::Value::Integer(number) => match units.of(path) {
            Ok((unit, _)) if unit.is_empty() => Value::from(*number),
            Ok((_, factor)) => Value::from(*number as f64 * factor),
            Err(fault) => refuse(path, &fault, faults),
        },
        toml::Value::Float(number) if number.is_finite() => match units.of(path) {
            Ok((_, factor)) => Value::from(number * factor),
            Err(fault) => refuse(path, &fault, faults),
        },
        toml::Value::Array(items) => {
            let items = items.iter().enumerate().map(|(k, item)| to_json(&format!("{path}[{k}]"), item, units, faults));
            Value::Array(items.collect())
        }
        toml::Value::Table(fields) => {
            let fields =
                fields.iter().map(|(name, field)| (name.clone(), to_json(&join(path, name), field, units, faults)));
            Value::Object(fields.collect::<Map<_, _>>())
        }
        other => refuse(path, &format!("{other} is no value of an input"), faults),
    }
}

fn refuse(path: &str, fault: &str, faults: &mut Vec<String>) -> Value {
    faults.push(format!("{path}: {fault}"));
    Value::Null
}

/// Tables and lists of expected values as paths.
fn flatten(path: &str, value: toml::Value, flat: &mut Vec<(String, toml::Value)>) {
    match value {
        toml::Value::Table(fields) => {
            fields.into_iter().for_each(|(name, field)| flatten(&join(path, &name), field, flat));
        }
        toml::Value::Array(items) => {
            items.into_iter().enumerate().for_each(|(k, item)| flatten(&format!("{path}[{k}]"), item, flat));
        }
        leaf => flat.push((path.to_owned(), leaf)),
    }
}

fn join(path: &str, name: &str) -> String {
    if path.is_empty() { name.to_owned() } else { format!("{path}.{name}") }
}

fn expected_value(
    path: &str,
    value: &toml::Value,
    tolerance: Option<&Tolerance>,
    units: &mut Units<'_>,
) -> Result<ExpectedValue, String> {
    let printed = match value {
        toml::Value::String(text) => return Ok(ExpectedValue::Text(text.clone())),
        toml::Value::Float(number) if number.is_finite() => *number,
        toml::Value::Integer(number) => *number as f64,
        other => return Err(format!("{other} is neither a number nor a text")),
    };
    let tolerance = tolerance.ok_or("a number is expected and no tolerance given")?;
    if tolerance.why.trim().is_empty() {
        return Err("the tolerance has no reason".to_owned());
    }
    let (unit, factor) = units.of(path)?;
    let allowed = match (tolerance.abs, tolerance.rel) {
        // As printed: half a unit of the last printed place, for instance.
        (Some(abs), None) => abs * factor,
        (None, Some(rel)) => rel * (printed * factor).abs(),
        _ => return Err("a tolerance is either abs or rel".to_owned()),
    };
    if !allowed.is_finite() || allowed < 0.0 {
        return Err("the tolerance is no number from zero up".to_owned());
    }
    Ok(ExpectedValue::Number { printed, unit, factor, tolerance: allowed })
}

impl Row {
    /// Text of the input, for any door.
    ///
    /// # Panics
    /// Never: what is read holds finite numbers only.
    pub fn input_text(&self) -> String {
        beamcraft_core::json::write(&self.input).unwrap_or_else(|fault| panic!("{}: {fault}", self.id))
    }

    /// Computes the row through the registry and compares.
    ///
    /// # Errors
    /// The library's own error, or the path that the output does not have.
    pub fn compare(&self) -> Result<Vec<Comparison>, String> {
        let text = registry::call(&self.calculation, &self.input_text()).map_err(|fault| fault.to_string())?;
        let output: Value = serde_json::from_str(&text).map_err(|fault| fault.to_string())?;
        self.expected.iter().map(|expected| expected.compare(&output)).collect()
    }
}

impl Expected {
    fn compare(&self, output: &Value) -> Result<Comparison, String> {
        let found = at_path(output, &self.path).ok_or_else(|| format!("{}: not in the output", self.path))?;
        let computed = found.clone();
        match (&self.value, found) {
            (ExpectedValue::Number { printed, factor, tolerance, .. }, Value::Number(number)) => {
                let residual = number.as_f64().unwrap_or(f64::NAN) - printed * factor;
                Ok(Comparison { computed, residual: Some(residual), holds: residual.abs() <= *tolerance })
            }
            (ExpectedValue::Text(wanted), Value::String(text)) => {
                Ok(Comparison { holds: wanted == text, computed, residual: None })
            }
            _ => Err(format!("{}: {found} is of another kind than the expected value", self.path)),
        }
    }
}

/// The value at a path such as `modes[0].value_n`.
pub fn at_path<'a>(value: &'a Value, path: &str) -> Option<&'a Value> {
    path.split('.').try_fold(value, |value, step| {
        let (name, indices) = step.split_once('[').map_or((step, ""), |(name, rest)| (name, rest));
        let value = if name.is_empty() { value } else { value.get(name)? };
        let indices = indices.split('[').filter(|index| !index.is_empty());
        indices.into_iter().try_fold(value, |value, index| value.get(index.strip_suffix(']')?.parse::<usize>().ok()?))
    })
}

/// The rows for a runner without a TOML reader: one line per expected value, fields separated by tabs.
///
/// Fields: id, calculation, input JSON, output path, `number` or `text`, expected value (a number in the field's own
/// unit), absolute tolerance in the field's own unit (`0.0` for a text).
///
/// # Errors
/// An id, path or text that holds a tab or a line break.
pub fn flat_text(topics: &[Topic]) -> Result<String, String> {
    let mut out = String::new();
    for row in topics.iter().flat_map(|topic| &topic.rows) {
        let input = row.input_text();
        for expected in &row.expected {
            let (kind, value, tolerance) = match &expected.value {
                ExpectedValue::Number { printed, factor, tolerance, .. } => {
                    ("number", format_number(printed * factor), format_number(*tolerance))
                }
                ExpectedValue::Text(text) => ("text", text.clone(), "0.0".to_owned()),
            };
            let fields = [&row.id, &row.calculation, &input, &expected.path, kind, &value, &tolerance];
            if fields.iter().any(|field| field.contains(['\t', '\n', '\r'])) {
                return Err(format!("{}: a tab or line break in a field", row.id));
            }
            let _ = writeln!(out, "{}", fields.join("\t"));
        }
    }
    Ok(out)
}
