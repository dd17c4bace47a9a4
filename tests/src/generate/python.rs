//! Writes the Python door: classes and functions as Rust source; `stubs` writes the stub file to them.
//!
//! A class holds its own fields rather than the core's struct: outputs of the core borrow static texts, keep fields private
//! and cannot be read back, and a class that can be built from its fields pickles, copies and evaluates from its `repr`
//! like any other. Flat calculations cross field by field, all others as canonical JSON.

use std::collections::HashSet;
use std::fmt::Write as _;

use serde_json::Value;

use super::GeneratedFile;
use super::model::{CalculationModel, ChoiceDef, Field, Model, StructDef, Ty, TypeDef, UnionDef};
use super::pydoc::{self, Examples};

/// Calculations whose function is written by hand: it takes the whole input as one argument.
pub(super) const BY_HAND: &[&str] = &["plan"];

/// Classes that only their function makes: they are written, pickled and copied as the input they came from. What that
/// takes is written by hand.
pub(super) const MADE_BY_FUNCTION: &[&str] = &["Plan"];

/// Words that Python keeps for itself.
const PYTHON_WORDS: &[&str] = &[
    "False", "None", "True", "and", "as", "assert", "async", "await", "break", "class", "continue", "def", "del",
    "elif", "else", "except", "finally", "for", "from", "global", "if", "import", "in", "is", "lambda", "nonlocal",
    "not", "or", "pass", "raise", "return", "try", "while", "with", "yield",
];

/// Words that Rust keeps for itself and Python does not.
const RUST_WORDS: &[&str] = &[
    "abstract", "become", "box", "const", "do", "dyn", "enum", "extern", "final", "fn", "gen", "impl", "let", "loop",
    "macro", "match", "mod", "move", "mut", "override", "priv", "pub", "ref", "static", "struct", "trait", "type",
    "typeof", "unsafe", "unsized", "use", "virtual", "where",
];

/// Words that both keep for themselves.
const BOTH_WORDS: &[&str] =
    &["as", "async", "await", "break", "continue", "else", "for", "if", "in", "return", "try", "while", "yield"];

/// The files of the Python door.
pub fn files(model: &Model) -> Vec<GeneratedFile> {
    let examples = Examples::of_rows();
    vec![
        GeneratedFile::new("beamcraft-py/src/generated.rs", rust(model, &examples)),
        GeneratedFile::new("beamcraft-py/python/beamcraft/_native.pyi", super::stubs::native(model, &examples)),
        GeneratedFile::new("beamcraft-py/python/beamcraft/choices.py", super::stubs::choices(model)),
        GeneratedFile::new("beamcraft-py/python/beamcraft/__init__.py", super::stubs::package(model)),
    ]
}

/// A field name as Rust writes it.
fn name(field: &str) -> String {
    if RUST_WORDS.contains(&field) { format!("r#{field}") } else { python_name(field) }
}

/// A field name as Python writes it: a word that Python keeps for itself takes an underscore at its end.
pub(super) fn python_name(field: &str) -> String {
    if PYTHON_WORDS.contains(&field) { format!("{field}_") } else { field.to_owned() }
}

/// A field name as the core writes it.
fn core_name(field: &str) -> String {
    if RUST_WORDS.contains(&field) || BOTH_WORDS.contains(&field) { format!("r#{field}") } else { field.to_owned() }
}

/// A choice's text as the name of a variant in Rust: `left_end` is `LeftEnd`.
fn variant(text: &str) -> String {
    text.split(['_', '-', ' '])
        .map(|word| {
            let mut letters = word.chars();
            letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
        })
        .collect()
}

/// Whether a calculation crosses field by field: typed, and all of it numbers and choices.
fn is_flat(model: &Model, calculation: &CalculationModel) -> bool {
    let flat = |name: &str| model.structure(name).fields.iter().all(|field| is_flat_type(model, &field.ty));
    calculation.is_typed() && flat(&calculation.input) && flat(&calculation.output)
}

fn is_flat_type(model: &Model, ty: &Ty) -> bool {
    match ty {
        Ty::Number | Ty::Integer => true,
        Ty::Optional(inner) => is_flat_type(model, inner),
        Ty::Named(name) => matches!(model.find(name), Some(TypeDef::Choice(_))),
        Ty::Text | Ty::List(_) | Ty::Array(..) => false,
    }
}

/// Names of the structs and choices that cross field by field, into the core and out of it.
struct Flat<'m> {
    into: HashSet<&'m str>,
    out: HashSet<&'m str>,
}

impl<'m> Flat<'m> {
    fn of(model: &'m Model) -> Self {
        let mut flat = Self { into: HashSet::new(), out: HashSet::new() };
        for calculation in functions(model).filter(|calculation| is_flat(model, calculation)) {
            Self::add(model, &calculation.input, &mut flat.into);
            Self::add(model, &calculation.output, &mut flat.out);
        }
        flat
    }

    fn add(model: &'m Model, name: &'m str, set: &mut HashSet<&'m str>) {
        set.insert(name);
        set.extend(model.structure(name).fields.iter().filter_map(|field| match &field.ty {
            Ty::Named(name) => Some(name.as_str()),
            Ty::Optional(inner) => {
                if let Ty::Named(name) = inner.as_ref() {
                    Some(name.as_str())
                } else {
                    None
                }
            }
            _ => None,
        }));
    }
}

/// The classes of a union, one for each choice: the class of an object says which choice it is.
///
/// # Panics
/// When a choice holds something else, or two choices the same.
pub(super) fn contents<'m>(model: &'m Model, def: &'m UnionDef) -> Vec<&'m str> {
    let mut seen = HashSet::new();
    let class = |content: &'m Ty| match content {
        Ty::Named(name) if matches!(model.find(name), Some(TypeDef::Struct(_))) => Some(name.as_str()),
        _ => None,
    };
    let classes = def.variants.iter().map(|(choice, content)| match class(content) {
        Some(class) if seen.insert(class) => class,
        _ => panic!("{}::{}: every choice with data holds a struct of its own", def.name, choice.text),
    });
    classes.collect()
}

/// The functions that are generated.
pub(super) fn functions(model: &Model) -> impl Iterator<Item = &CalculationModel> {
    model.calculations.iter().filter(|calculation| !BY_HAND.contains(&calculation.row.name))
}

/// The classes.
pub(super) fn classes(model: &Model) -> impl Iterator<Item = &StructDef> {
    model.types.iter().filter_map(|def| if let TypeDef::Struct(def) = def { Some(def) } else { None })
}

fn rust_type(ty: &Ty) -> String {
    match ty {
        Ty::Number => "f64".to_owned(),
        Ty::Integer => "u32".to_owned(),
        Ty::Text => "String".to_owned(),
        Ty::Optional(inner) => format!("Option<{}>", rust_type(inner)),
        Ty::List(inner) => format!("Vec<{}>", rust_type(inner)),
        Ty::Array(inner, count) => format!("Fixed<{}, {count}>", rust_type(inner)),
        Ty::Named(name) => name.clone(),
    }
}

fn rust(model: &Model, examples: &Examples) -> String {
    let mut out = String::from(
        "//! Classes and functions of the Python door, one for each struct and calculation of the core.\n\
         //!\n\
         //! Generated by `cargo run -p beamcraft-tests --bin generate`; not edited by hand.\n\
         \n\
         #![allow(clippy::too_many_arguments, reason = \"an argument for each field, all of them keywords in Python\")]\n\
         #![allow(clippy::doc_markdown, clippy::doc_lazy_continuation, reason = \"the docs are read in Python, where they are numpy-style\")]\n\
         #![allow(clippy::needless_pass_by_value, reason = \"arguments are moved out of the interpreter's hands\")]\n\
         #![allow(clippy::large_enum_variant, reason = \"a union holds what its choices hold\")]\n\
         #![allow(rustdoc::all, reason = \"the docs are read in Python, where brackets are no links\")]\n\
         \n\
         use beamcraft_core::error::Error;\n\
         use pyo3::prelude::*;\n\
         use pyo3::types::PyDict;\n\
         use serde_json::Value;\n\
         \n\
         #[allow(unused_imports, reason = \"which of them are needed depends on the shapes of the structs\")]\n\
         use crate::cross::{Arg, Cross, Fixed, OfCore, OfJson, Place, ToCore, choice, compute, compute_by_name, field, list, tagged, wrong_type};\n\
         use crate::html;\n\
         use crate::shown::{self, NewArguments, Record, Show, Shown};\n",
    );
    let flat = Flat::of(model);
    for def in &model.types {
        match def {
            TypeDef::Struct(def) => class(&mut out, model, def, &flat),
            TypeDef::Choice(def) => choice(&mut out, def, &flat),
            TypeDef::Union(def) => union(&mut out, model, def),
        }
    }
    for calculation in functions(model) {
        function(&mut out, model, calculation, examples);
    }
    out.push_str("\n/// Adds every class and function to the module.\n");
    out.push_str("pub(crate) fn register(module: &Bound<'_, PyModule>) -> PyResult<()> {\n");
    for def in classes(model) {
        let _ = writeln!(out, "    module.add_class::<{}>()?;", def.name);
    }
    for calculation in functions(model) {
        let _ = writeln!(out, "    module.add_function(wrap_pyfunction!({}, module)?)?;", calculation.row.name);
    }
    out.push_str("    Ok(())\n}\n");
    out
}

fn choice(out: &mut String, def: &ChoiceDef, flat: &Flat<'_>) {
    let names: Vec<String> = def.variants.iter().map(|variant| format!("{:?}", variant.text)).collect();
    let name = def.name.as_str();
    let form = match (flat.into.contains(name), flat.out.contains(name)) {
        (true, _) => ", flat",
        (false, true) => ", flat_output",
        (false, false) => "",
    };
    let _ = writeln!(out, "\nchoice!({}{form}, [{}]);", def.name, names.join(", "));
}

fn union(out: &mut String, model: &Model, def: &UnionDef) {
    let name = &def.name;
    let classes = contents(model, def);
    let arms = |write: &dyn Fn(&str, &str, &str) -> String| -> String {
        let arms = def.variants.iter().zip(&classes);
        arms.map(|((choice, _), class)| write(&variant(&choice.text), &choice.text, class)).collect()
    };
    let _ = writeln!(out, "\n#[derive(Clone, Debug, PartialEq, IntoPyObject)]\npub(crate) enum {name} {{");
    out.push_str(&arms(&|variant, _, class| format!("    {variant}({class}),\n")));
    let _ = writeln!(out, "}}\n\nimpl Show for {name} {{\n    fn show(&self) -> Shown {{\n        match self {{");
    out.push_str(&arms(&|variant, text, _| {
        format!("            {name}::{variant}(content) => Shown::Tagged({text:?}, Box::new(content.show())),\n")
    }));
    let _ = writeln!(
        out,
        "        }}\n    }}\n}}\n\nimpl Cross for {name} {{\n    \
         fn read(value: Borrowed<'_, '_, PyAny>, place: &Place<'_>) -> PyResult<Self> {{"
    );
    out.push_str(&arms(&|variant, _, class| {
        format!(
            "        if let Ok(found) = value.cast::<{class}>() {{\n            \
             return Ok({name}::{variant}(found.get().clone()));\n        }}\n"
        )
    }));
    let _ = writeln!(
        out,
        "        Err(wrong_type(value, place, \"one of the classes {}\"))\n    }}\n}}\n\n\
         impl OfJson for {name} {{\n    fn of_json(value: &Value) -> Option<Self> {{\n        \
         let (choice, content) = tagged(value)?;\n        match choice {{",
        classes.join(", ")
    );
    out.push_str(&arms(&|variant, text, _| {
        format!("            {text:?} => OfJson::of_json(content).map({name}::{variant}),\n")
    }));
    out.push_str("            _ => None,\n        }\n    }\n}\n");
}

/// A Rust doc comment.
fn doc(out: &mut String, indent: &str, text: &str) {
    for line in text.lines() {
        let space = if line.is_empty() { "" } else { " " };
        let _ = writeln!(out, "{indent}///{space}{line}");
    }
}

/// A default as a Rust expression of the field's type.
fn default(model: &Model, ty: &Ty, value: &Value) -> String {
    match (ty, value) {
        (Ty::Optional(_), Value::Null) => "None".to_owned(),
        (Ty::Optional(inner), _) => format!("Some({})", default(model, inner, value)),
        (Ty::Number, Value::Number(number)) => format!("{:?}_f64", number.as_f64().unwrap_or(f64::NAN)),
        (Ty::Integer, Value::Number(number)) => number.to_string(),
        (Ty::Text, Value::String(text)) => format!("{text:?}.to_owned()"),
        (Ty::List(inner), Value::Array(items)) => {
            let items: Vec<String> = items.iter().map(|item| default(model, inner, item)).collect();
            format!("vec![{}]", items.join(", "))
        }
        (Ty::Array(inner, _), Value::Array(items)) => {
            let items: Vec<String> = items.iter().map(|item| default(model, inner, item)).collect();
            format!("Fixed([{}])", items.join(", "))
        }
        (Ty::Named(name), value) => default_named(model, name, value),
        _ => panic!("a default that does not fit its type: {value} for {ty:?}"),
    }
}

fn default_named(model: &Model, name: &str, value: &Value) -> String {
    match (model.find(name), value) {
        (Some(TypeDef::Choice(_)), Value::String(text)) => format!("<{name} as crate::cross::Choice>::named({text:?})"),
        (Some(TypeDef::Struct(def)), Value::Object(values)) => {
            let fields: Vec<String> = def
                .fields
                .iter()
                .map(|field| {
                    let value = values.get(&field.name).or(field.default.as_ref());
                    let Some(value) = value else { panic!("{name}: a default without {}", field.name) };
                    format!("{}: {}", self::name(&field.name), default(model, &field.ty, value))
                })
                .collect();
            format!("{name} {{ {} }}", fields.join(", "))
        }
        (Some(TypeDef::Union(def)), Value::Object(values)) => {
            let found = def.variants.iter().find_map(|choice| values.get(&choice.0.text).map(|value| (choice, value)));
            let Some(((choice, content), value)) = found else { panic!("{name}: a default of no choice: {value:?}") };
            format!("{name}::{}({})", variant(&choice.text), default(model, content, value))
        }
        _ => panic!("a default that does not fit its type: {value} for {name}"),
    }
}

/// `(*, a, b = Arg::left_out())`, and the same as a reader of the docs sees it.
fn signatures(model: &Model, fields: &[Field]) -> (String, String) {
    if fields.is_empty() {
        return ("()".to_owned(), "()".to_owned());
    }
    let ordered = pydoc::required_first(fields);
    let rust: Vec<String> = ordered
        .iter()
        .map(|field| {
            let default = if field.default.is_some() { " = Arg::left_out()" } else { "" };
            format!("{}{default}", name(&field.name))
        })
        .collect();
    let python: Vec<String> = ordered
        .iter()
        .map(|field| match &field.default {
            Some(value) => format!(
                "{}={}",
                python_name(&field.name),
                pydoc::default(model, &field.ty, value).unwrap_or_else(|| "...".to_owned())
            ),
            None => python_name(&field.name),
        })
        .collect();
    (format!("(*, {})", rust.join(", ")), format!("(*, {})", python.join(", ")))
}

fn class(out: &mut String, model: &Model, def: &StructDef, flat: &Flat<'_>) {
    let StructDef { name: class, fields, .. } = def;
    out.push('\n');
    doc(out, "", &pydoc::class(model, def));
    let _ = writeln!(out, "#[pyclass(frozen, eq, module = \"beamcraft\")]");
    let _ = writeln!(out, "#[derive(Clone, Debug, PartialEq)]\npub(crate) struct {class} {{");
    for field in fields {
        doc(out, "    ", &field.doc);
        let _ = writeln!(out, "    #[pyo3(get)]\n    pub(crate) {}: {},", name(&field.name), rust_type(&field.ty));
    }
    out.push_str("}\n");
    let _ = writeln!(out, "\n#[pymethods]\nimpl {class} {{");
    if !MADE_BY_FUNCTION.contains(&class.as_str()) {
        constructor(out, model, fields);
    }
    let _ = writeln!(
        out,
        "    fn __str__(&self) -> String {{ shown::line(&self.object()) }}\n    \
         fn __copy__(slf: Py<Self>) -> Py<Self> {{ slf }}\n    \
         #[pyo3(signature = (_memo, /))]\n    \
         fn __deepcopy__(slf: Py<Self>, _memo: &Bound<'_, PyAny>) -> Py<Self> {{ slf }}\n    \
         /// {TO_DICT}\n    \
         fn to_dict<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {{ shown::to_dict(py, &self.object()) }}\n    \
         /// {TO_JSON}\n    \
         fn to_json(&self, py: Python<'_>) -> PyResult<String> {{ shown::to_json(py, self) }}\n    \
         fn _repr_html_(&self) -> String {{ html::table(&self.object()) }}\n}}"
    );
    let _ = writeln!(out, "\nimpl Record for {class} {{\n    const NAME: &'static str = {class:?};");
    let _ = writeln!(out, "    const FIELDS: &'static [shown::Field] = &[");
    for field in fields {
        let _ = writeln!(
            out,
            "        ({:?}, {:?}, {:?}),",
            field.name,
            python_name(&field.name),
            pydoc::first_line(&field.doc)
        );
    }
    let values: Vec<String> = fields
        .iter()
        .map(|field| {
            let skip = if field.skips_empty { ".unless_empty()" } else { "" };
            format!("self.{}.show(){skip}", name(&field.name))
        })
        .collect();
    let _ = writeln!(out, "    ];\n    fn values(&self) -> Vec<Shown> {{ vec![{}] }}\n}}", values.join(", "));
    let used = if fields.is_empty() { "_" } else { "" };
    let _ = writeln!(
        out,
        "\nimpl OfJson for {class} {{\n    fn of_json(value: &Value) -> Option<Self> {{\n        \
         let {used}fields = value.as_object()?;\n        Some(Self {{"
    );
    for field in fields {
        let read = if field.skips_empty { "list" } else { "field" };
        let _ = writeln!(out, "            {}: {read}(fields, {:?})?,", name(&field.name), field.name);
    }
    out.push_str("        })\n    }\n}\n");
    if flat.out.contains(class.as_str()) {
        let _ = writeln!(
            out,
            "\nimpl OfCore<beamcraft_core::{class}> for {class} {{\n    \
             fn of_core({used}core: &beamcraft_core::{class}) -> Self {{\n        Self {{"
        );
        for field in fields {
            let (ours, cores) = (name(&field.name), core_name(&field.name));
            let _ = writeln!(out, "            {ours}: OfCore::of_core(&core.{cores}),");
        }
        out.push_str("        }\n    }\n}\n");
    }
    if flat.into.contains(class.as_str()) {
        let _ = writeln!(
            out,
            "\nimpl ToCore<beamcraft_core::{class}> for {class} {{\n    \
             fn to_core(&self) -> Result<beamcraft_core::{class}, Error> {{\n        Ok(beamcraft_core::{class} {{"
        );
        for field in fields {
            let _ = writeln!(out, "            {}: self.{}.to_core()?,", core_name(&field.name), name(&field.name));
        }
        out.push_str("        })\n    }\n}\n");
    }
}

/// The constructor, and what builds on it.
fn constructor(out: &mut String, model: &Model, fields: &[Field]) {
    let (signature, text_signature) = signatures(model, fields);
    let _ = writeln!(out, "    #[new]\n    #[pyo3(signature = {signature}, text_signature = {text_signature:?})]");
    let arguments: Vec<String> =
        pydoc::required_first(fields).iter().map(|field| format!("{}: Arg<'_, '_>", name(&field.name))).collect();
    let _ = writeln!(out, "    fn new({}) -> PyResult<Self> {{\n        Ok(Self {{", arguments.join(", "));
    for field in fields {
        let rust = name(&field.name);
        let read = match &field.default {
            None => format!("read({:?})?", python_name(&field.name)),
            Some(Value::Array(items)) if items.is_empty() => {
                format!("read_or({:?}, Vec::new)?", python_name(&field.name))
            }
            Some(value) => format!("read_or({:?}, || {})?", python_name(&field.name), default(model, &field.ty, value)),
        };
        let _ = writeln!(out, "            {rust}: {rust}.{read},");
    }
    out.push_str("        })\n    }\n");
    let _ = writeln!(
        out,
        "    fn __repr__(&self) -> String {{ shown::repr(self) }}\n    \
         fn __getnewargs_ex__<'py>(slf: &Bound<'py, Self>) -> PyResult<NewArguments<'py>> {{ shown::new_arguments::<Self>(slf.as_any()) }}\n    \
         #[pyo3(signature = (**changes))]\n    \
         fn __replace__<'py>(slf: &Bound<'py, Self>, changes: Option<&Bound<'py, PyDict>>) -> PyResult<Bound<'py, PyAny>> {{ shown::replace::<Self>(slf.as_any(), changes) }}\n    \
         /// {REPLACE}\n    \
         #[pyo3(signature = (**changes))]\n    \
         fn replace<'py>(slf: &Bound<'py, Self>, changes: Option<&Bound<'py, PyDict>>) -> PyResult<Bound<'py, PyAny>> {{ shown::replace::<Self>(slf.as_any(), changes) }}"
    );
}

/// Docs of the methods that every class has.
pub(super) const REPLACE: &str = "Equal object with the fields given changed.";
pub(super) const TO_DICT: &str = "Dict of names, numbers, texts and lists: what the JSON of the object reads as.";
pub(super) const TO_JSON: &str = "Canonical JSON: the same bytes through every door of the library.";

fn function(out: &mut String, model: &Model, calculation: &CalculationModel, examples: &Examples) {
    let fields = &model.structure(&calculation.input).fields;
    let (signature, text_signature) = signatures(model, fields);
    let CalculationModel { input, output, row } = calculation;
    let ordered = pydoc::required_first(fields);
    let arguments: String = ordered.iter().map(|field| format!(", {}: Arg<'_, '_>", name(&field.name))).collect();
    let names: Vec<String> = ordered.iter().map(|field| name(&field.name)).collect();
    let compute = if is_flat(model, calculation) {
        format!("compute(py, &{input}::new({})?, beamcraft_core::{})", names.join(", "), row.name)
    } else {
        format!("compute_by_name(py, &{input}::new({})?, {:?})", names.join(", "), row.name)
    };
    out.push('\n');
    doc(out, "", &pydoc::function(model, calculation, examples));
    let _ = writeln!(
        out,
        "#[pyfunction]\n#[pyo3(signature = {signature}, text_signature = {text_signature:?})]\n\
         fn {}(py: Python<'_>{arguments}) -> PyResult<{output}> {{\n    {compute}\n}}",
        row.name
    );
}

#[cfg(test)]
#[path = "python_tests.rs"]
mod tests;
