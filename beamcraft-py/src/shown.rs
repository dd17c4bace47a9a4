//! One tree of what an object holds: `repr`, the line for people, the table of a notebook, dicts and JSON all read it.

use beamcraft_core::error::ErrorCode;
use beamcraft_core::json;
use pyo3::IntoPyObjectExt;
use pyo3::prelude::*;
use pyo3::types::{PyDict, PyList, PyTuple};
use serde::ser::{SerializeMap, SerializeSeq};
use serde::{Serialize, Serializer};

use crate::cross::Fixed;
use crate::errors;

/// A value as it is shown.
#[allow(dead_code, reason = "which shapes the structs have decides which of them are needed")]
pub(crate) enum Shown {
    Number(f64),
    Whole(u32),
    Text(String),
    Absent,
    /// An empty list that is left out of the JSON.
    Empty,
    List(Vec<Shown>),
    /// A fixed number of items: a tuple.
    Fixed(Vec<Shown>),
    /// A choice with its data: its name and the data.
    Tagged(&'static str, Box<Shown>),
    Object(Object),
}

impl Shown {
    /// The same, but for an empty list that is left out of the JSON.
    #[allow(dead_code, reason = "which shapes the structs have decides whether it is needed")]
    pub(crate) fn unless_empty(self) -> Self {
        if let Shown::List(items) = &self
            && items.is_empty()
        {
            return Shown::Empty;
        }
        self
    }
}

/// An object of a class.
pub(crate) struct Object {
    pub(crate) class: &'static str,
    pub(crate) fields: &'static [Field],
    pub(crate) values: Vec<Shown>,
}

/// Name in the core and in JSON, name in Python, first line of the docs.
pub(crate) type Field = (&'static str, &'static str, &'static str);

/// A class that follows from a struct of the core.
pub(crate) trait Record {
    /// Name of the class.
    const NAME: &'static str;
    /// Each field.
    const FIELDS: &'static [Field];
    /// The value of each field.
    fn values(&self) -> Vec<Shown>;

    /// The object as it is shown.
    fn object(&self) -> Object {
        Object { class: Self::NAME, fields: Self::FIELDS, values: self.values() }
    }
}

/// A field type that can be shown.
pub(crate) trait Show {
    /// The value as it is shown.
    fn show(&self) -> Shown;
}

impl Show for f64 {
    fn show(&self) -> Shown {
        Shown::Number(*self)
    }
}

impl Show for u32 {
    fn show(&self) -> Shown {
        Shown::Whole(*self)
    }
}

impl Show for String {
    fn show(&self) -> Shown {
        Shown::Text(self.clone())
    }
}

impl<T: Show> Show for Option<T> {
    fn show(&self) -> Shown {
        self.as_ref().map_or(Shown::Absent, Show::show)
    }
}

impl<T: Show> Show for Vec<T> {
    fn show(&self) -> Shown {
        Shown::List(self.iter().map(Show::show).collect())
    }
}

impl<T: Show, const N: usize> Show for Fixed<T, N> {
    fn show(&self) -> Shown {
        Shown::Fixed(self.0.iter().map(Show::show).collect())
    }
}

impl<T: Record> Show for T {
    fn show(&self) -> Shown {
        Shown::Object(self.object())
    }
}

impl Object {
    /// Each field that holds something, with its name, its docs and its value.
    pub(crate) fn held(&self) -> impl Iterator<Item = (&'static str, &'static str, &Shown)> {
        let fields = self.fields.iter().zip(&self.values);
        fields
            .filter(|(_, value)| !matches!(value, Shown::Absent | Shown::Empty))
            .map(|((name, _, doc), value)| (*name, *doc, value))
    }
}

impl Serialize for Object {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(None)?;
        for (name, _, value) in self.held() {
            map.serialize_entry(name, value)?;
        }
        map.end()
    }
}

impl Serialize for Shown {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Shown::Number(value) => serializer.serialize_f64(*value),
            Shown::Whole(value) => serializer.serialize_u32(*value),
            Shown::Text(text) => serializer.serialize_str(text),
            Shown::Absent | Shown::Empty => serializer.serialize_none(),
            Shown::List(items) | Shown::Fixed(items) => {
                let mut list = serializer.serialize_seq(Some(items.len()))?;
                for item in items {
                    list.serialize_element(item)?;
                }
                list.end()
            }
            Shown::Tagged(name, content) => {
                let mut map = serializer.serialize_map(Some(1))?;
                map.serialize_entry(name, content)?;
                map.end()
            }
            Shown::Object(object) => object.serialize(serializer),
        }
    }
}

/// Canonical JSON of an object.
pub(crate) fn to_json<T: Record>(py: Python<'_>, record: &T) -> PyResult<String> {
    let object = record.object();
    if let Some((path, value)) = not_finite(&object, "") {
        let (allowed, cure) = ("a finite number".to_owned(), "JSON has no text for it".to_owned());
        return Err(errors::refuse(py, ErrorCode::NotFinite, path, value.to_string(), allowed, cure));
    }
    json::write(&object).map_err(|fault| errors::raise(py, &fault))
}

/// Path and value of the first number that is not finite: an input may hold one until it is calculated.
fn not_finite(object: &Object, path: &str) -> Option<(String, f64)> {
    object.held().find_map(|(name, _, value)| {
        let inner = if path.is_empty() { name.to_owned() } else { format!("{path}.{name}") };
        not_finite_in(value, &inner)
    })
}

fn not_finite_in(value: &Shown, path: &str) -> Option<(String, f64)> {
    match value {
        Shown::Number(number) if !number.is_finite() => Some((path.to_owned(), *number)),
        Shown::List(items) | Shown::Fixed(items) => {
            items.iter().enumerate().find_map(|(k, item)| not_finite_in(item, &format!("{path}[{k}]")))
        }
        Shown::Tagged(name, content) => not_finite_in(content, &format!("{path}.{name}")),
        Shown::Object(object) => not_finite(object, path),
        _ => None,
    }
}

/// Dict of an object: what its JSON reads as.
pub(crate) fn to_dict<'py>(py: Python<'py>, object: &Object) -> PyResult<Bound<'py, PyDict>> {
    let dict = PyDict::new(py);
    for (name, _, value) in object.held() {
        dict.set_item(name, plain(py, value)?)?;
    }
    Ok(dict)
}

fn plain<'py>(py: Python<'py>, value: &Shown) -> PyResult<Bound<'py, PyAny>> {
    Ok(match value {
        Shown::Number(value) => value.into_bound_py_any(py)?,
        Shown::Whole(value) => value.into_bound_py_any(py)?,
        Shown::Text(text) => text.into_bound_py_any(py)?,
        Shown::Absent | Shown::Empty => py.None().into_bound(py),
        Shown::List(items) | Shown::Fixed(items) => {
            let items: PyResult<Vec<_>> = items.iter().map(|item| plain(py, item)).collect();
            PyList::new(py, items?)?.into_any()
        }
        Shown::Tagged(name, content) => {
            let dict = PyDict::new(py);
            dict.set_item(name, plain(py, content)?)?;
            dict.into_any()
        }
        Shown::Object(object) => to_dict(py, object)?.into_any(),
    })
}

/// Text that evaluates back to an equal object.
pub(crate) fn repr<T: Record>(record: &T) -> String {
    let mut out = String::new();
    repr_object(&record.object(), &mut out);
    out
}

fn repr_object(object: &Object, out: &mut String) {
    out.push_str(object.class);
    out.push('(');
    for (k, ((_, name, _), value)) in object.fields.iter().zip(&object.values).enumerate() {
        if k > 0 {
            out.push_str(", ");
        }
        out.push_str(name);
        out.push('=');
        repr_value(value, out);
    }
    out.push(')');
}

fn repr_value(value: &Shown, out: &mut String) {
    match value {
        Shown::Number(value) if value.is_finite() => out.push_str(&json::format_number(*value)),
        Shown::Number(value) if value.is_nan() => out.push_str("float('nan')"),
        Shown::Number(value) => out.push_str(if *value > 0.0 { "float('inf')" } else { "float('-inf')" }),
        Shown::Whole(value) => out.push_str(&value.to_string()),
        Shown::Text(text) => repr_text(text, out),
        Shown::Absent => out.push_str("None"),
        Shown::Empty => out.push_str("[]"),
        Shown::List(items) => repr_items(items, "[", "]", out),
        Shown::Fixed(items) if items.len() == 1 => repr_items(items, "(", ",)", out),
        Shown::Fixed(items) => repr_items(items, "(", ")", out),
        Shown::Tagged(_, content) => repr_value(content, out),
        Shown::Object(object) => repr_object(object, out),
    }
}

fn repr_items(items: &[Shown], open: &str, close: &str, out: &mut String) {
    out.push_str(open);
    for (k, item) in items.iter().enumerate() {
        if k > 0 {
            out.push_str(", ");
        }
        repr_value(item, out);
    }
    out.push_str(close);
}

/// A Python string literal.
fn repr_text(text: &str, out: &mut String) {
    let quote = if text.contains('\'') && !text.contains('"') { '"' } else { '\'' };
    out.push(quote);
    for c in text.chars() {
        match c {
            '\\' => out.push_str("\\\\"),
            '\n' => out.push_str("\\n"),
            '\r' => out.push_str("\\r"),
            '\t' => out.push_str("\\t"),
            c if c == quote => out.extend(['\\', c]),
            c if c.is_control() => out.push_str(&format!("\\u{:04x}", c as u32)),
            c => out.push(c),
        }
    }
    out.push(quote);
}

/// Unit of a quantity by the end of its field name, longest first.
const UNITS: &[(&str, &str)] = &[
    ("_n_per_mm", "N/mm"),
    ("_n_per_m2", "N/m²"),
    ("_g_per_m2", "g/m²"),
    ("_m2_per_l", "m²/L"),
    ("_kg_per_l", "kg/L"),
    ("_kg_m3", "kg/m³"),
    ("_nmm2", "N·mm²"),
    ("_mm4", "mm⁴"),
    ("_mm3", "mm³"),
    ("_mm2", "mm²"),
    ("_nmm", "N·mm"),
    ("_mpa", "MPa"),
    ("_deg", "°"),
    ("_pct", "%"),
    ("_m3", "m³"),
    ("_m2", "m²"),
    ("_mm", "mm"),
    ("_um", "µm"),
    ("_kg", "kg"),
    ("_l", "L"),
    ("_n", "N"),
    ("_h", "h"),
];

/// A field name as words and unit: `tilt_a_deg` is `tilt a` and `°`.
pub(crate) fn words(name: &str) -> (String, &'static str) {
    let found = UNITS.iter().find_map(|(end, unit)| name.strip_suffix(end).map(|rest| (rest, *unit)));
    let (rest, unit) = found.unwrap_or((name, ""));
    (rest.replace('_', " "), unit)
}

/// A number for people: four decimals at most.
pub(crate) fn rounded(value: f64) -> String {
    if value != 0.0 && (value.abs() < 1e-3 || value.abs() >= 1e9) {
        return format!("{value:.3e}");
    }
    let text = format!("{value:.4}");
    let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

/// Fields in a line for people.
const LINE_FIELDS: usize = 8;

/// The object as one line for people.
pub(crate) fn line(object: &Object) -> String {
    let said: Vec<_> = object.held().filter(|(_, _, value)| !is_empty(value)).collect();
    let mut parts: Vec<String> = said.iter().take(LINE_FIELDS).map(|(name, _, value)| part(name, value)).collect();
    if said.len() > LINE_FIELDS {
        parts.push("…".to_owned());
    }
    if parts.is_empty() { object.class.to_owned() } else { format!("{}: {}", object.class, parts.join(", ")) }
}

fn part(name: &str, value: &Shown) -> String {
    let (label, unit) = words(name);
    let space = if unit.is_empty() || unit == "°" { "" } else { " " };
    match value {
        Shown::List(items) if !items.iter().all(is_number) => format!("{label} ({})", items.len()),
        Shown::Object(object) => format!("{label} ({})", object.class),
        other => format!("{label} {}{space}{unit}", brief(other)),
    }
}

fn is_empty(value: &Shown) -> bool {
    match value {
        Shown::Text(text) => text.is_empty(),
        Shown::List(items) => items.is_empty(),
        _ => false,
    }
}

fn is_number(value: &Shown) -> bool {
    matches!(value, Shown::Number(_) | Shown::Whole(_))
}

/// A value in few words.
pub(crate) fn brief(value: &Shown) -> String {
    match value {
        Shown::Number(value) => rounded(*value),
        Shown::Whole(value) => value.to_string(),
        Shown::Text(text) => text.clone(),
        Shown::Absent | Shown::Empty => String::new(),
        Shown::List(items) | Shown::Fixed(items) if items.len() > 6 => format!("({})", items.len()),
        Shown::List(items) | Shown::Fixed(items) => {
            format!("({})", items.iter().map(brief).collect::<Vec<_>>().join(", "))
        }
        Shown::Tagged(name, content) => format!("{name} {}", brief(content)),
        Shown::Object(object) => line(object),
    }
}

/// The fields of an object as keyword arguments of its class.
pub(crate) fn arguments<'py, T: Record>(object: &Bound<'py, PyAny>) -> PyResult<Bound<'py, PyDict>> {
    let arguments = PyDict::new(object.py());
    for (_, name, _) in T::FIELDS {
        arguments.set_item(name, object.getattr(*name)?)?;
    }
    Ok(arguments)
}

/// What `pickle` and `copy` build an object from.
pub(crate) type NewArguments<'py> = (Bound<'py, PyTuple>, Bound<'py, PyDict>);

/// The arguments that make an equal object.
pub(crate) fn new_arguments<'py, T: Record>(object: &Bound<'py, PyAny>) -> PyResult<NewArguments<'py>> {
    Ok((PyTuple::empty(object.py()), arguments::<T>(object)?))
}

/// A new object with some fields changed.
pub(crate) fn replace<'py, T: Record>(
    object: &Bound<'py, PyAny>,
    changes: Option<&Bound<'py, PyDict>>,
) -> PyResult<Bound<'py, PyAny>> {
    let arguments = arguments::<T>(object)?;
    if let Some(changes) = changes {
        arguments.update(changes.as_mapping())?;
    }
    object.get_type().call((), Some(&arguments))
}
