//! Tables for notebooks: escaped, and with a limited number of rows.

use crate::shown::{Object, Shown, brief, words};

/// Most rows of one table.
const ROWS: usize = 40;
/// Most tables inside one another.
const DEPTH: usize = 3;

/// The object as a table: quantity, value, unit.
pub(crate) fn table(object: &Object) -> String {
    let mut out = String::new();
    write_object(object, 0, &mut out);
    out
}

fn write_object(object: &Object, depth: usize, out: &mut String) {
    out.push_str("<table><caption>");
    escape(object.class, out);
    out.push_str("</caption><thead><tr><th>quantity</th><th>value</th><th>unit</th></tr></thead><tbody>");
    for (name, doc, value) in object.held().take(ROWS) {
        let (label, unit) = words(name);
        out.push_str("<tr><th title=\"");
        escape(doc, out);
        out.push_str("\">");
        escape(&label, out);
        out.push_str("</th><td>");
        write_cell(value, depth + 1, out);
        out.push_str("</td><td>");
        escape(unit, out);
        out.push_str("</td></tr>");
    }
    more(object.held().count(), 3, out);
    out.push_str("</tbody></table>");
}

fn write_cell(value: &Shown, depth: usize, out: &mut String) {
    match value {
        Shown::Object(object) if depth < DEPTH => write_object(object, depth, out),
        Shown::Tagged(name, content) if depth < DEPTH => {
            escape(name, out);
            out.push(' ');
            write_cell(content, depth, out);
        }
        Shown::List(items) if depth < DEPTH && items.iter().any(|item| matches!(item, Shown::Object(_))) => {
            write_rows(items, depth, out);
        }
        other => escape(&brief(other), out),
    }
}

/// Objects of one class, one a row; a column for each field that any of them holds.
fn write_rows(items: &[Shown], depth: usize, out: &mut String) {
    let objects: Vec<&Object> =
        items.iter().filter_map(|item| if let Shown::Object(object) = item { Some(object) } else { None }).collect();
    let Some(first) = objects.first() else { return };
    let shown: Vec<(usize, &str, &str)> = first
        .fields
        .iter()
        .enumerate()
        .filter(|(k, _)| {
            objects.iter().any(|object| !matches!(object.values.get(*k), None | Some(Shown::Absent | Shown::Empty)))
        })
        .map(|(k, (name, _, doc))| (k, *name, *doc))
        .collect();
    out.push_str("<table><thead><tr>");
    for (_, name, doc) in &shown {
        let (label, unit) = words(name);
        out.push_str("<th title=\"");
        escape(doc, out);
        out.push_str("\">");
        escape(&label, out);
        if !unit.is_empty() {
            out.push_str(", ");
            escape(unit, out);
        }
        out.push_str("</th>");
    }
    out.push_str("</tr></thead><tbody>");
    for object in objects.iter().take(ROWS) {
        out.push_str("<tr>");
        for (k, _, _) in &shown {
            out.push_str("<td>");
            if let Some(value) = object.values.get(*k) {
                write_cell(value, depth + 1, out);
            }
            out.push_str("</td>");
        }
        out.push_str("</tr>");
    }
    more(objects.len(), shown.len(), out);
    out.push_str("</tbody></table>");
}

/// A last row that says how many are left out.
fn more(count: usize, columns: usize, out: &mut String) {
    if count > ROWS {
        out.push_str(&format!("<tr><td colspan=\"{columns}\">… {} more</td></tr>", count - ROWS));
    }
}

fn escape(text: &str, out: &mut String) {
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#x27;"),
            c => out.push(c),
        }
    }
}
