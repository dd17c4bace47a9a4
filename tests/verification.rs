//! Every verification row through the registry, and the reader's own strictness.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "the whole file is a test: it stops, with the reason, at what it does not expect"
)]

use std::collections::HashMap;

use beamcraft_tests::rows::{self, Topic};
use serde_json::json;

#[test]
fn every_row_holds() {
    let topics = rows::read_all().unwrap_or_else(|faults| panic!("{}", faults.join("\n")));
    assert!(!topics.is_empty(), "there are no rows");
    let mut missed = Vec::new();
    for row in topics.iter().flat_map(|topic| &topic.rows) {
        match row.compare() {
            Ok(comparisons) => {
                for (expected, found) in row.expected.iter().zip(comparisons).filter(|(_, found)| !found.holds) {
                    let wanted = expected.value.number().map_or("another text".to_owned(), |number| number.to_string());
                    let off = found.residual.map_or(String::new(), |residual| format!(", off by {residual}"));
                    missed.push(format!("{}: {} is {}, expected {wanted}{off}", row.id, expected.path, found.computed));
                }
            }
            Err(fault) => missed.push(format!("{}: {fault}", row.id)),
        }
    }
    assert!(missed.is_empty(), "{} rows do not hold:\n{}", missed.len(), missed.join("\n"));
}

fn read(text: &str) -> (Topic, Vec<String>) {
    let factors = HashMap::from([("in".to_owned(), 25.4)]);
    let mut faults = Vec::new();
    (rows::read_topic("made-up", text, &factors, &mut faults), faults)
}

const GOOD: &str = r#"# Two boards.
# Second line.
[[row]]
id = "a-1"
calculation = "mitre_pair"
input = { thickness_a_mm = 0.5, thickness_b_mm = "1/2 in", corner_deg = 90 }
expect = { tilt_a_deg = 45.0, "setback_a_mm" = 0.5 }
tolerance = { abs = 0.001, why = "three decimals" }
units = { thickness_a_mm = "in", setback_a_mm = "in" }
source = "made up"
evidence = "derived"
"#;

#[test]
fn a_row_is_read_with_its_units() {
    let (topic, faults) = read(GOOD);
    assert_eq!(faults, Vec::<String>::new());
    assert_eq!(topic.intro, "Two boards.\nSecond line.");
    let row = &topic.rows[0];
    assert_eq!(row.input, json!({"thickness_a_mm": 12.7, "thickness_b_mm": "1/2 in", "corner_deg": 90}));
    assert_eq!(row.expected[1].value.number(), Some(12.7));
    let text = rows::flat_text(&[topic]).expect("no tabs in it");
    let lines: Vec<Vec<&str>> = text.lines().map(|line| line.split('\t').collect()).collect();
    assert_eq!(lines[1][3..], ["setback_a_mm", "number", "12.7", "0.0254"]);
    assert_eq!(lines[0][2], r#"{"thickness_a_mm":12.7,"thickness_b_mm":"1/2 in","corner_deg":90}"#);
}

#[test]
fn what_a_row_lacks_is_named() {
    let cases = [
        ("# Two boards.\n# Second line.\n", "", "opens with no comment"),
        ("id = \"a-1\"", "id = \"A 1\"", "the id is not"),
        ("mitre_pair", "mitre_pear", "there is no calculation"),
        ("\"made up\"", "\" \"", "no source"),
        ("\"derived\"", "\"guessed\"", "unknown variant"),
        ("abs = 0.001, ", "", "either abs or rel"),
        ("abs = 0.001, ", "abs = 0.001, rel = 0.1, ", "either abs or rel"),
        ("abs = 0.001", "abs = -1.0", "from zero up"),
        ("three decimals", "", "no reason"),
        ("why = \"three decimals\"", "because = \"x\"", "unknown field"),
        ("tolerance = { abs = 0.001, why = \"three decimals\" }", "", "no tolerance given"),
        ("tilt_a_deg = 45.0", "tilt_a_deg = true", "neither a number nor a text"),
        ("corner_deg = 90", "corner_deg = inf", "no value of an input"),
        ("setback_a_mm = \"in\"", "setback_a_mm = \"cubit\"", "does not know cubit"),
        ("thickness_a_mm = \"in\"", "width_mm = \"in\"", "which the row does not hold"),
        ("source =", "sauce = \"\"\nsource =", "unknown field"),
    ];
    for (good, bad, wanted) in cases {
        let text = GOOD.replacen(good, bad, 1);
        assert_ne!(text, GOOD, "{good} is not in the sample");
        let faults = read(&text).1.join("\n");
        assert!(faults.contains(wanted), "{bad}: {faults:?} does not say {wanted:?}");
    }
}

#[test]
fn a_wrong_value_does_not_hold_and_a_missing_path_is_an_error() {
    let row = |text: &str| read(text).0.rows.remove(0);
    let plain = GOOD.replace("\"1/2 in\"", "12.7");
    assert!(row(&plain).compare().expect("computes").iter().all(|found| found.holds));
    let off = row(&plain.replace("45.0", "45.1")).compare().expect("computes");
    assert!(!off[0].holds && (off[0].residual.expect("a number") + 0.1).abs() < 1e-9);
    assert!(row(&plain.replace("tilt_a_deg =", "tilt_c_deg =")).compare().is_err());
    assert!(row(&plain.replace("tilt_a_deg = 45.0", "tilt_a_deg = \"45\"")).compare().is_err());
}

#[test]
fn a_path_reaches_into_lists() {
    let value = json!({"a": [[1, 2], [3, {"b": 4}]]});
    assert_eq!(rows::at_path(&value, "a[1][1].b"), Some(&json!(4)));
    assert_eq!(rows::at_path(&value, "a[0][1]"), Some(&json!(2)));
    for missing in ["a[2]", "a[x]", "a[0", "b", "a.b", ""] {
        assert_eq!(rows::at_path(&value, missing).filter(|_| !missing.is_empty()), None, "{missing}");
    }
}

#[test]
fn ids_are_not_used_twice() {
    let topics = rows::read_all().unwrap_or_else(|faults| panic!("{}", faults.join("\n")));
    let mut ids: Vec<&str> = topics.iter().flat_map(|topic| &topic.rows).map(|row| row.id.as_str()).collect();
    let count = ids.len();
    ids.sort_unstable();
    ids.dedup();
    assert_eq!(ids.len(), count);
}
