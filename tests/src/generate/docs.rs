//! The reference pages of the book, the JSON Schemas and the verification manual.

use std::collections::HashMap;
use std::fmt::Write as _;

use beamcraft_core::cite::{Evidence, Source};
use beamcraft_core::error::ErrorCode;
use beamcraft_core::finding::{Caution, FindingCode, Grade};
use beamcraft_core::json::{Door, format_number, write_pretty};
use beamcraft_core::limits;
use serde_json::Value;

use super::GeneratedFile;
use super::model::{CalculationModel, Field, Model, StructDef, Ty, TypeDef, UnionDef};
use crate::rows::{self, Comparison, Expected, ExpectedValue, Row, Topic};

const NOTICE: &str =
    "<!-- Generated from the definitions in the core by `cargo run -p beamcraft-tests --bin generate`. -->";

/// Every page and schema.
pub fn files(model: &Model) -> Vec<GeneratedFile> {
    let mut files: Vec<GeneratedFile> = families(model).into_iter().map(|family| family_page(model, family)).collect();
    files.push(page("reference/calculations", &calculations(model)));
    files.push(page("reference/types", &types_page(model)));
    files.push(page("reference/errors", &errors()));
    files.push(page("reference/limits", &limits_page()));
    files.push(page("reference/sources", &sources()));
    files.push(page("reference/findings", &findings()));
    files.push(page("verification", &verification()));
    files.push(summary(model));
    for calculation in &model.calculations {
        files.extend(schemas(calculation));
    }
    files
}

fn page(name: &str, body: &str) -> GeneratedFile {
    GeneratedFile::new(format!("docs/src/{name}.md"), format!("{NOTICE}\n\n{}\n", body.trim_end()))
}

/// Families in the order of the registry.
fn families(model: &Model) -> Vec<&'static str> {
    let mut families: Vec<&str> = Vec::new();
    for calculation in &model.calculations {
        if !families.contains(&calculation.row.family) {
            families.push(calculation.row.family);
        }
    }
    families
}

/// The part of the table of contents that lists the reference pages; the rest of it is written by hand.
fn summary(model: &Model) -> GeneratedFile {
    const PATH: &str = "docs/src/SUMMARY.md";
    const HEADING: &str = "# Reference\n";
    let written = std::fs::read_to_string(super::top().join(PATH)).unwrap_or_default();
    let (before, rest) = written.split_once(HEADING).unwrap_or((&written, ""));
    let after = rest.find("\n# ").map_or("", |place| &rest[place..]);
    let mut list = String::from("\n- [Calculations](reference/calculations.md)\n");
    for family in families(model) {
        let _ = writeln!(list, "  - [{family}](reference/{family}.md)");
    }
    for name in ["types", "errors", "findings", "limits", "sources"] {
        let _ = writeln!(list, "- [{}{}](reference/{name}.md)", name[..1].to_uppercase(), &name[1..]);
    }
    GeneratedFile::new(PATH, format!("{before}{HEADING}{list}{after}"))
}

fn calculations(model: &Model) -> String {
    let mut out = String::from(
        "# Calculations\n\nEvery public calculation has one name through every door. *Typed* ones have a C function \
         and a Python function with keywords;\n*document* ones take and return JSON in C and classes in Python. All \
         of them take and return JSON.\n",
    );
    for family in families(model) {
        let _ = write!(out, "\n## {family}\n\n| name | door | what it answers |\n|---|---|---|\n");
        for calculation in model.calculations.iter().filter(|calculation| calculation.row.family == family) {
            let row = calculation.row;
            let _ =
                writeln!(out, "| [`{0}`]({family}.md#{0}) | {1} | {2} |", row.name, door(row.door), cell(row.purpose));
        }
    }
    out
}

fn door(door: Door) -> &'static str {
    match door {
        Door::Typed => "typed",
        Door::Document => "document",
    }
}

fn family_page(model: &Model, family: &str) -> GeneratedFile {
    let mut out = format!("# {family}\n");
    for calculation in model.calculations.iter().filter(|calculation| calculation.row.family == family) {
        let name = calculation.row.name;
        let _ = write!(out, "\n## {name}\n\n{}.\n", calculation.row.purpose.trim_end_matches('.'));
        let _ = write!(
            out,
            "\n*{}* · [input schema](schemas/{name}.input.json) · [output schema](schemas/{name}.output.json)\n",
            door(calculation.row.door)
        );
        let _ = write!(out, "\n### Input of {name}: `{}`\n\n", calculation.input);
        out.push_str(&input_table(model.structure(&calculation.input)));
        let _ = write!(out, "\n### Output of {name}: `{}`\n\n", calculation.output);
        out.push_str(&output_table(model.structure(&calculation.output)));
    }
    page(&format!("reference/{family}"), &out)
}

fn input_table(def: &StructDef) -> String {
    let mut out = intro(&def.doc);
    out.push_str("| field | type | unit | range | default | meaning |\n|---|---|---|---|---|---|\n");
    for field in &def.fields {
        let Field { name, doc, ty, .. } = field;
        let default = field.default.as_ref().map_or("required".to_owned(), |value| match value {
            Value::Null => "left out".to_owned(),
            Value::Object(_) => "its own defaults".to_owned(),
            value => format!("`{}`", compact(value)),
        });
        let cells = [format!("`{name}`"), kind(ty), unit_of(name), range(field), default, cell(doc)];
        let _ = writeln!(out, "| {} |", cells.join(" | "));
    }
    out
}

fn output_table(def: &StructDef) -> String {
    let mut out = intro(&def.doc);
    out.push_str("| field | type | unit | meaning |\n|---|---|---|---|\n");
    for Field { name, doc, ty, .. } in &def.fields {
        let _ = writeln!(out, "| `{name}` | {} | {} | {} |", kind(ty), unit_of(name), cell(doc));
    }
    out
}

/// A doc comment as a paragraph of a page; examples and headings of it belong to the Rust docs.
fn intro(doc: &str) -> String {
    let lines = doc.lines().take_while(|line| !line.starts_with('#') && !line.starts_with("```"));
    let text = lines.collect::<Vec<_>>().join("\n");
    if text.trim().is_empty() { String::new() } else { format!("{}\n\n", plain_links(text.trim())) }
}

/// Text for a cell of a table.
fn cell(text: &str) -> String {
    let line = plain_links(&text.split_whitespace().collect::<Vec<_>>().join(" ")).replace('|', "\\|");
    cell_free(&line)
}

/// Links of the Rust docs (`[Name]`, [`Name`]) lead nowhere in the book: only their text is kept.
fn plain_links(text: &str) -> String {
    let mut out = String::new();
    let mut rest = text;
    while let Some((before, after)) = rest.split_once('[') {
        out.push_str(before);
        match after.split_once(']') {
            Some((inside, tail)) if !tail.starts_with('(') && is_item(inside) => {
                out.push_str(inside);
                rest = tail;
            }
            _ => {
                out.push('[');
                rest = after;
            }
        }
    }
    out.push_str(rest);
    out
}

/// Whether the text between brackets names an item of the Rust docs, not an index such as `[0]`.
fn is_item(text: &str) -> bool {
    let bare = text.trim_matches('`');
    bare.starts_with(|c: char| c.is_ascii_alphabetic()) && bare.chars().all(|c| c.is_alphanumeric() || "_:".contains(c))
}

fn kind(ty: &Ty) -> String {
    match ty {
        Ty::Number => "number".to_owned(),
        Ty::Integer => "whole number".to_owned(),
        Ty::Text => "text".to_owned(),
        Ty::Optional(inner) => format!("{}, optional", kind(inner)),
        Ty::List(inner) => format!("list of {}", kind(inner)),
        Ty::Array(inner, count) => format!("{count} × {}", kind(inner)),
        Ty::Named(name) => format!("[{name}](types.md#{})", name.to_lowercase()),
    }
}

fn range(field: &Field) -> String {
    match (field.minimum, field.maximum) {
        (Some(low), Some(high)) => format!("{} to {}", number(low), number(high)),
        _ => String::new(),
    }
}

/// A number for people: the canonical text without the closing `.0`.
fn number(value: f64) -> String {
    format_number(value).trim_end_matches(".0").to_owned()
}

fn compact(value: &Value) -> String {
    match value {
        Value::Number(value) => value.as_f64().map_or_else(|| value.to_string(), number),
        value => value.to_string(),
    }
}

/// Symbol of the unit that a field's name carries: `mass_kg`, `density_kg_m3`, `spread_m2_per_l`.
pub fn unit_of(field: &str) -> String {
    let (over, under) = field.split_once("_per_").unwrap_or((field, ""));
    // `shear_per_screw_n`: what follows `per` is a thing, the unit stands at the end.
    let (over, under) = if under.contains('_') { (field, "") } else { (over, under) };
    let own = match over.rsplit_once('_') {
        // Written without `per` where the pair is one unit of its own.
        Some((rest, "m3")) if rest.ends_with("_kg") => "kg/m³",
        Some((_, last)) => symbol(last),
        None => "",
    };
    match (own, symbol(under)) {
        (own, "") => own.to_owned(),
        ("", under) => format!("1/{under}"),
        (own, under) => format!("{own}/{under}"),
    }
}

fn symbol(word: &str) -> &'static str {
    const SYMBOLS: &[(&str, &str)] = &[
        ("um", "µm"),
        ("mm", "mm"),
        ("mm2", "mm²"),
        ("mm3", "mm³"),
        ("mm4", "mm⁴"),
        ("mm5", "mm⁵"),
        ("mm6", "mm⁶"),
        ("m", "m"),
        ("m2", "m²"),
        ("m3", "m³"),
        ("inch", "in"),
        ("n", "N"),
        ("nmm", "N·mm"),
        ("nmm2", "N·mm²"),
        ("kpa", "kPa"),
        ("mpa", "MPa"),
        ("g", "g"),
        ("kg", "kg"),
        ("ml", "mL"),
        ("l", "L"),
        ("deg", "°"),
        ("degc", "°C"),
        ("pct", "%"),
        ("s", "s"),
        ("min", "min"),
        ("h", "h"),
    ];
    SYMBOLS.iter().find(|(name, _)| *name == word).map_or("", |(_, symbol)| symbol)
}

fn types_page(model: &Model) -> String {
    let mut out = String::from(
        "# Types\n\nStructs and choices that inputs and outputs are made of. A choice without data is written as its \
         text; a choice with\ndata as an object of one field, `{\"name\": {…}}`.\n",
    );
    let root = |name: &str| model.calculations.iter().find(|row| row.input == name || row.output == name);
    for def in &model.types {
        let _ = write!(out, "\n## {}\n\n", def.name());
        if let Some(row) = root(def.name()) {
            let role = if row.input == def.name() { "Input" } else { "Output" };
            let (family, name) = (row.row.family, row.row.name);
            let _ = writeln!(out, "{role} of [`{name}`]({family}.md#{name}).");
            continue;
        }
        match def {
            TypeDef::Struct(def) if def.role == super::model::Role::Input => out.push_str(&input_table(def)),
            TypeDef::Struct(def) => out.push_str(&output_table(def)),
            TypeDef::Choice(def) => {
                out.push_str(&intro(&def.doc));
                out.push_str("| choice | meaning |\n|---|---|\n");
                for choice in &def.variants {
                    let _ = writeln!(out, "| `{}` | {} |", choice.text, cell(&choice.doc));
                }
            }
            TypeDef::Union(def) => out.push_str(&union_table(def)),
        }
    }
    out
}

fn union_table(def: &UnionDef) -> String {
    let mut out = intro(&def.doc);
    out.push_str("| choice | content | meaning |\n|---|---|---|\n");
    for (choice, content) in &def.variants {
        let _ = writeln!(out, "| `{}` | {} | {} |", choice.text, kind(content), cell(&choice.doc));
    }
    out
}

fn errors() -> String {
    let mut out = String::from(
        "# Errors\n\nAn error says that there is no answer. It holds every fault found, each with its code, the path of \
         the field, the value\ngiven, what is allowed and what to change. The numbers are permanent: a retired one is \
         never given another meaning.\n\n| number | name | meaning |\n|---|---|---|\n",
    );
    for code in ErrorCode::ALL {
        let _ =
            writeln!(out, "| `0x{:04X}` | <a id=\"{1}\"></a>`{1}` | {2} |", *code as u32, code.name(), code.describe());
    }
    out
}

fn limits_page() -> String {
    let mut out = String::from(
        "# Limits\n\nThe ranges that inputs are held to. A value outside is refused, never clamped. A range says what the \
         equations hold for and\nwhat a workshop can mean, not what is wise to build. Both ends are allowed.\n\n\
         | quantity | unit | from | to | when it is refused |\n|---|---|---|---|---|\n",
    );
    for limit in limits::ALL {
        let cells = [cell(limit.name), limit.unit.to_owned(), number(limit.low), number(limit.high), cell(limit.cure)];
        let _ = writeln!(out, "| {} |", cells.join(" | "));
    }
    out
}

fn sources() -> String {
    let mut out = String::from(
        "# Sources\n\nWhere equations, rules and figures come from. *Seen*: read in the publication or in a public extract \
         of it. *Recalled*: from\nmemory, to be confirmed before it is relied upon. *Common practice*: a fact of the \
         trade without a published source.\n*Derived*: follows from geometry or equilibrium, shown in the theory \
         pages.\n\n| id | title | evidence |\n|---|---|---|\n",
    );
    for source in Source::ALL {
        let evidence = match source.evidence() {
            Evidence::Seen => "seen",
            Evidence::Recalled => "recalled",
            Evidence::CommonPractice => "common practice",
            Evidence::Derived => "derived",
        };
        let _ = writeln!(out, "| `{}` | {} | {evidence} |", source.id(), cell(source.title()));
    }
    out
}

fn findings() -> String {
    let mut out = String::from(
        "# Findings and cautions\n\nA finding is not an error: a plan that does not work is returned whole, with the \
         findings that say why. Each carries a grade,\nthe part concerned, the numbers behind it and what would help.\n\n\
         ## Grades\n\n| grade | meaning |\n|---|---|\n",
    );
    for (grade, meaning) in [
        (Grade::Stop, "does not work as planned"),
        (Grade::Caution, "works only with care, or cannot be decided from what was given"),
        (Grade::Note, "good to know"),
    ] {
        let text = serde_json::to_value(grade).ok().and_then(|value| value.as_str().map(str::to_owned));
        let _ = writeln!(out, "| `{}` | {meaning} |", text.unwrap_or_default());
    }
    out.push_str("\n## Codes\n\n| code | what it says |\n|---|---|\n");
    for code in FindingCode::ALL {
        let _ = writeln!(out, "| `{}` | {} |", code.name(), cell(code.describe()));
    }
    out.push_str("\n## Standing cautions\n\nThey travel with the results that they belong to.\n\n| about | caution |\n|---|---|\n");
    for caution in Caution::ALL {
        let _ = writeln!(out, "| `{}` | {} |", caution.name(), cell(caution.text()));
    }
    out
}

fn schemas(calculation: &CalculationModel) -> [GeneratedFile; 2] {
    let row = calculation.row;
    let file = |kind: &str, mut schema: Value| {
        drop_null_defaults(&mut schema);
        let text = write_pretty(&schema).unwrap_or_else(|fault| panic!("{} {kind}: {fault}", row.name));
        GeneratedFile::new(format!("docs/src/reference/schemas/{}.{kind}.json", row.name), text + "\n")
    };
    [file("input", (row.input_schema)().to_value()), file("output", (row.output_schema)().to_value())]
}

/// An optional field is left out rather than null: the canonical writer has no text for null, and needs none.
fn drop_null_defaults(schema: &mut Value) {
    match schema {
        Value::Object(fields) => {
            if fields.get("default").is_some_and(Value::is_null) {
                fields.shift_remove("default");
            }
            fields.values_mut().for_each(drop_null_defaults);
        }
        Value::Array(items) => items.iter_mut().for_each(drop_null_defaults),
        _ => {}
    }
}

/// The verification manual: every row with what the library makes of it.
fn verification() -> String {
    let topics = rows::read_all().unwrap_or_else(|faults| panic!("{}", faults.join("\n")));
    let mut out = String::from(
        "# Verification manual\n\nEach row states a value from outside the library, what the library computes from the same \
         input, and the difference.\nThe rows are plain text in `tests/verification/` and run through Rust, C and \
         Python. *Seen*: the value was read in the\npublication or in a public extract of it. *Recalled*: from memory. \
         *Common practice*: a fact of the trade without a\npublished source. *Derived*: worked from geometry, arithmetic \
         or equilibrium, independently of the code.\n\nExpected and computed values and residuals stand in the unit \
         printed in the source. A tolerance says how exact the\nsource is, not how exact the library is.\n",
    );
    out.push_str(&overview(&topics));
    for topic in &topics {
        let _ = write!(out, "\n## {}\n\n{}\n", topic.name, cell_free(&topic.intro));
        out.push_str(
            "\n| row | calculation | value | expected | computed | residual | tolerance | why | source | evidence |\n",
        );
        out.push_str("|---|---|---|---|---|---|---|---|---|---|\n");
        for row in &topic.rows {
            // A row that has no answer is the verification test's to report; the other pages are written all the same.
            let Ok(found) = row.compare() else { continue };
            for (expected, found) in row.expected.iter().zip(&found) {
                out.push_str(&verification_line(row, expected, found));
            }
        }
        let notes: Vec<_> = topic.rows.iter().filter(|row| !row.note.is_empty()).collect();
        if !notes.is_empty() {
            out.push_str("\nNotes:\n\n");
            for row in notes {
                let _ = writeln!(out, "- `{}`: {}", row.id, cell_free(&row.note));
            }
        }
    }
    out
}

fn overview(topics: &[Topic]) -> String {
    let mut out = String::from(
        "\n| topic | rows | values | seen | recalled | common practice | derived |\n|---|---|---|---|---|---|---|\n",
    );
    for topic in topics {
        let values: usize = topic.rows.iter().map(|row| row.expected.len()).sum();
        let mut counts: HashMap<&str, usize> = HashMap::new();
        topic.rows.iter().for_each(|row| *counts.entry(row.evidence.name()).or_default() += 1);
        let counts =
            ["seen", "recalled", "common practice", "derived"].map(|name| counts.get(name).copied().unwrap_or(0));
        let counts = counts.map(|count| count.to_string()).join(" | ");
        let _ = writeln!(out, "| [{0}](#{0}) | {1} | {values} | {counts} |", topic.name, topic.rows.len());
    }
    out
}

fn verification_line(row: &Row, expected: &Expected, found: &Comparison) -> String {
    let (wanted, computed, residual, tolerance) = match &expected.value {
        ExpectedValue::Number { printed, unit, factor, tolerance } => {
            let own = unit_of(expected.path.rsplit('.').next().unwrap_or_default());
            let unit = if unit.is_empty() { &own } else { unit };
            let value = found.computed.as_f64().unwrap_or_default() / factor;
            let residual = found.residual.unwrap_or_default() / factor;
            let wanted = format!("{} {unit}", number(*printed));
            (wanted.trim_end().to_owned(), significant(value), significant(residual), significant(tolerance / factor))
        }
        ExpectedValue::Text(text) => {
            let computed = found.computed.as_str().unwrap_or_default();
            (format!("`{text}`"), format!("`{computed}`"), String::new(), "equal".to_owned())
        }
    };
    let cells = [
        format!("`{}`", row.id),
        format!("`{}`", row.calculation),
        format!("`{}`", expected.path),
        wanted,
        computed,
        residual,
        tolerance,
        cell(&row.why),
        cell(&row.source),
        row.evidence.name().to_owned(),
    ];
    format!("| {} |\n", cells.join(" | "))
}

/// Seven significant digits, for people; what is only the noise of the last bits reads as such.
fn significant(value: f64) -> String {
    if value == 0.0 {
        return "0".to_owned();
    }
    let rounded: f64 = format!("{value:.6e}").parse().unwrap_or(value);
    if rounded.abs() < 1e-4 || rounded.abs() >= 1e9 { format!("{value:.1e}") } else { number(rounded) }
}

/// Free text that must not open markup: stars of a product, signs of a comparison; code between backticks stays.
fn cell_free(text: &str) -> String {
    let pieces = text
        .split('`')
        .enumerate()
        .map(|(k, piece)| if k % 2 == 1 { piece.to_owned() } else { piece.replace('<', "&lt;").replace('*', "\\*") });
    pieces.collect::<Vec<_>>().join("`")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_field_name_gives_its_unit() {
        let cases = [("span_mm", "mm"), ("load_n", "N"), ("area_mm2", "mm²"), ("can_l", "L"), ("count", "")];
        for (field, unit) in cases {
            assert_eq!(unit_of(field), unit, "{field}");
        }
        assert_eq!(unit_of("moment_nmm"), "N·mm");
        assert_eq!(unit_of("density_kg_per_m3"), "kg/m³");
        assert_eq!(unit_of("density_12_kg_m3"), "kg/m³");
        assert_eq!(unit_of("spread_m2_per_l"), "m²/L");
        assert_eq!(unit_of("lifts_per_min"), "1/min");
        assert_eq!(unit_of("net_l_per_coat"), "L");
        assert_eq!(unit_of("shear_per_screw_n"), "N");
        assert_eq!(unit_of("n"), "");
    }

    #[test]
    fn numbers_read_like_a_book() {
        assert_eq!(significant(1.0 / 3.0), "0.3333333");
        assert_eq!(significant(-2e-16), "-2.0e-16");
        assert_eq!(significant(123_456_789.0), "123456800");
        assert_eq!(number(20.0), "20");
        assert_eq!(number(0.05), "0.05");
    }

    #[test]
    fn rust_links_become_text_and_others_stay() {
        assert_eq!(
            plain_links("see [`Panel`] and [Plan::new], [here](a.md), x[0]"),
            "see `Panel` and Plan::new, [here](a.md), x[0]"
        );
    }

    #[test]
    fn signs_of_arithmetic_do_not_become_markup() {
        assert_eq!(cell("2*4*14 < `a*b` |x|"), "2\\*4\\*14 &lt; `a*b` \\|x\\|");
    }

    #[test]
    fn null_defaults_go_and_others_stay() {
        let mut schema = serde_json::json!({"properties": {"a": {"default": null}, "b": {"default": 1.0}}});
        drop_null_defaults(&mut schema);
        assert_eq!(schema, serde_json::json!({"properties": {"a": {}, "b": {"default": 1.0}}}));
    }
}
