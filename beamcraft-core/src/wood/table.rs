//! The materials as tables: one flat row a material, every figure with its source beside it.
//!
//! | table | a row is | found by |
//! |---|---|---|
//! | `species` | averages of clear wood of a species | common or botanical name |
//! | `strength_classes` | characteristic values of a class of graded timber | `C24`, `D40` |
//! | `panels` | published figures of sheet goods | name with the kind and thickness |
//! | `nds_combinations` | specific gravity assigned to graded lumber | name or short form |

use std::collections::VecDeque;

use serde::Serialize;
use serde_json::{Map, Value};

use super::density::TABLE_MOISTURE_PCT;
use super::names::{search, several, unknown};
use super::nds::{NdsCombination, nds_combinations};
use super::panel::SheetPanel;
use super::species::Species;
use super::strength_class::StrengthClass;
use crate::error::{Allowed, Detail, Error, ErrorCode, Fault, Result, closest};
use crate::json::write;

/// A table of materials.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum MaterialTable {
    /// Species of wood.
    Species,
    /// Strength classes of structural timber.
    StrengthClasses,
    /// Sheet goods and glued products.
    Panels,
    /// Species combinations of the NDS.
    NdsCombinations,
}

/// A value of a table.
#[derive(Clone, Debug, PartialEq)]
pub enum MaterialValue {
    /// A number, in the unit that the column's name ends with.
    Number(f64),
    /// A text: a name, a choice, a source, a remark.
    Text(String),
    /// Nothing was published, or nothing was found.
    Absent,
}

/// A row before its columns are put in order.
type Row = Map<String, Value>;

impl MaterialTable {
    /// Every table.
    pub const ALL: [MaterialTable; 4] =
        [MaterialTable::Species, MaterialTable::StrengthClasses, MaterialTable::Panels, MaterialTable::NdsCombinations];

    /// Name of the table.
    pub const fn name(self) -> &'static str {
        match self {
            MaterialTable::Species => "species",
            MaterialTable::StrengthClasses => "strength_classes",
            MaterialTable::Panels => "panels",
            MaterialTable::NdsCombinations => "nds_combinations",
        }
    }

    /// The table of a name.
    ///
    /// # Errors
    /// `unknown_name`, with all of them.
    pub fn find(name: &str) -> Result<Self> {
        let known = Self::ALL.iter().find(|table| table.name() == name).copied();
        known.ok_or_else(|| {
            unknown(
                name,
                "species, strength_classes, panels, nds_combinations",
                Self::ALL.iter().map(|table| table.name()),
            )
        })
    }

    /// Number of materials.
    pub fn count(self) -> usize {
        match self {
            MaterialTable::Species => Species::all().count(),
            MaterialTable::StrengthClasses => StrengthClass::all().len(),
            MaterialTable::Panels => SheetPanel::all().len(),
            MaterialTable::NdsCombinations => nds_combinations().len(),
        }
    }

    /// Name of the material at a place, counted from 0; the order is fixed within a release.
    ///
    /// # Errors
    /// `out_of_range` for a place beyond the last.
    pub fn material(self, index: usize) -> Result<&'static str> {
        let name = match self {
            MaterialTable::Species => Species::all().nth(index).map(|row| row.name),
            MaterialTable::StrengthClasses => StrengthClass::all().get(index).map(|row| row.name),
            MaterialTable::Panels => SheetPanel::all().get(index).map(|row| row.name),
            MaterialTable::NdsCombinations => nds_combinations().get(index).map(|row| row.name),
        };
        name.ok_or_else(|| beyond(index))
    }

    /// Place of the material of a name: common or botanical, of a class, a panel, a combination or its short form.
    ///
    /// # Errors
    /// `unknown_name`: with all that fit where several do, else with the closest known name.
    pub fn position(self, name: &str) -> Result<usize> {
        let found = match self {
            MaterialTable::Species => Species::find(name)?.name,
            MaterialTable::StrengthClasses => StrengthClass::find(name)?.name,
            MaterialTable::Panels => panel(name)?,
            MaterialTable::NdsCombinations => NdsCombination::find(name)?.name,
        };
        let position = (0..self.count()).find(|index| self.material(*index).is_ok_and(|known| known == found));
        position.ok_or_else(|| beyond(self.count()))
    }

    /// Row at a place as a flat JSON object; what is absent is left out.
    ///
    /// # Errors
    /// `out_of_range` for a place beyond the last.
    pub fn row_json(self, index: usize) -> Result<String> {
        write(&self.row(index)?)
    }

    /// Names of all columns, in the order of the rows' fields. Each ends with its unit.
    ///
    /// # Errors
    /// None.
    pub fn columns(self) -> Result<Vec<String>> {
        let rows = (0..self.count()).map(|index| self.row(index)).collect::<Result<Vec<_>>>()?;
        let mut left: Vec<VecDeque<&str>> = rows.iter().map(|row| row.keys().map(String::as_str).collect()).collect();
        let mut columns = Vec::new();
        // The next column is one that stands first in a row and behind no other column in any; all rows have one order.
        while let Some(next) = left.iter().filter_map(|row| row.front()).find(|head| is_first_everywhere(&left, head)) {
            let next = *next;
            columns.push(next.to_owned());
            for row in left.iter_mut().filter(|row| row.front() == Some(&next)) {
                row.pop_front();
            }
        }
        Ok(columns)
    }

    /// Value of a column for the material at a place.
    ///
    /// # Errors
    /// `out_of_range` for a place beyond the last; `unknown_field` with the closest column.
    pub fn value(self, index: usize, column: &str) -> Result<MaterialValue> {
        match self.row(index)?.get(column) {
            Some(Value::Number(number)) => Ok(MaterialValue::Number(number.as_f64().unwrap_or_default())),
            Some(other) => Ok(MaterialValue::Text(text(other))),
            None => {
                let columns = self.columns()?;
                if columns.iter().any(|known| known == column) {
                    return Ok(MaterialValue::Absent);
                }
                let near = closest(column, columns.iter().map(String::as_str));
                Err(Error::one(Detail {
                    code: ErrorCode::UnknownField,
                    path: "column".to_owned(),
                    given: format!("\"{}\"", column.chars().take(80).collect::<String>()),
                    allowed: format!("a column of the table {}", self.name()),
                    cure: near.map(|name| format!("did you mean {name}?")).unwrap_or_default(),
                }))
            }
        }
    }

    /// Row at a place.
    fn row(self, index: usize) -> Result<Row> {
        let mut row = Row::new();
        match self {
            MaterialTable::Species => {
                let species = Species::all().nth(index).ok_or_else(|| beyond(index))?;
                flatten(&mut row, species)?;
                let (density, connection) = (species.density(TABLE_MOISTURE_PCT)?, species.connection_gravity()?);
                row.insert("density_12_kg_m3".to_owned(), Value::from(density.density_kg_m3));
                row.insert("connection_gravity".to_owned(), Value::from(connection.specific_gravity));
                row.insert("connection_gravity_source".to_owned(), Value::from(connection.clause.to_string()));
            }
            MaterialTable::StrengthClasses => {
                flatten(&mut row, StrengthClass::all().get(index).ok_or_else(|| beyond(index))?)?;
            }
            MaterialTable::Panels => flatten(&mut row, SheetPanel::all().get(index).ok_or_else(|| beyond(index))?)?,
            MaterialTable::NdsCombinations => {
                flatten(&mut row, nds_combinations().get(index).ok_or_else(|| beyond(index))?)?;
            }
        }
        Ok(row)
    }
}

/// Whether no row has the column behind another one.
fn is_first_everywhere(rows: &[VecDeque<&str>], column: &str) -> bool {
    rows.iter().all(|row| row.iter().skip(1).all(|name| *name != column))
}

/// Name of the one panel whose name holds all the words given.
fn panel(name: &str) -> Result<&'static str> {
    let matches = search(name, SheetPanel::all().iter(), |row| vec![row.name]);
    let fitting = if matches.equal.is_empty() { matches.part } else { matches.equal };
    let mut names: Vec<&'static str> = fitting.iter().map(|row| row.name).collect();
    names.dedup();
    match names.as_slice() {
        [one] => Ok(one),
        [] => Err(unknown(name, "a panel of the list", SheetPanel::all().iter().map(|row| row.name))),
        many => Err(several(name, many)),
    }
}

#[cold]
fn beyond(index: usize) -> Error {
    let allowed = Allowed::Text("a place below the number of materials");
    Fault::number(ErrorCode::OutOfRange, "index", index as f64, allowed, "").into()
}

/// Puts the fields of a record into a row.
fn flatten(row: &mut Row, record: &impl Serialize) -> Result<()> {
    // Every record of the tables is an object of numbers, texts, lists and objects.
    let value = serde_json::to_value(record).map_err(|fault| {
        let (code, path) = (ErrorCode::NotRepresentable, String::new());
        Error::one(Detail { code, path, given: fault.to_string(), allowed: "a record".to_owned(), cure: String::new() })
    })?;
    if let Value::Object(fields) = value {
        for (name, value) in fields {
            put(row, &name, value);
        }
    }
    Ok(())
}

/// Puts a field into a row: objects lend their name to what they hold.
fn put(row: &mut Row, name: &str, value: Value) {
    let name = if name == "clause" { "source" } else { name };
    match value {
        Value::Object(fields) => {
            for (inner, value) in fields {
                put(row, &inner_name(name, &inner), value);
            }
        }
        Value::Array(items) => {
            let items: Vec<String> = items.iter().map(text).collect();
            row.insert(name.to_owned(), Value::from(items.join("; ")));
        }
        plain => {
            row.insert(name.to_owned(), plain);
        }
    }
}

/// Name of a field within a field: `shrinkage_source`, `bending_along_low_mpa`.
fn inner_name(outer: &str, inner: &str) -> String {
    let inner = if inner == "clause" { "source" } else { inner };
    match (outer, outer.strip_suffix("_mpa")) {
        ("provenance", _) => inner.to_owned(),
        // The unit stays at the end.
        (_, Some(stem)) => format!("{stem}_{inner}_mpa"),
        (outer, None) => format!("{outer}_{inner}"),
    }
}

/// A value as text.
fn text(value: &Value) -> String {
    match value {
        Value::String(text) => text.clone(),
        Value::Object(fields) => fields.values().map(text).collect::<Vec<_>>().join(" "),
        other => other.to_string(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_row_is_flat_has_a_name_and_a_source_and_is_found() {
        for table in MaterialTable::ALL {
            let columns = table.columns().unwrap();
            assert!(table.count() > 5 && columns[0] == "name", "{columns:?}");
            assert_eq!(MaterialTable::find(table.name()).unwrap(), table);
            for index in 0..table.count() {
                let row = table.row(index).unwrap();
                assert!(row.values().all(|value| !value.is_object() && !value.is_array() && !value.is_null()));
                assert_eq!(row["name"], table.material(index).unwrap());
                let says = |end: &str| row.keys().any(|name| name == end || name.ends_with(&format!("_{end}")));
                assert!(says("source") && says("evidence"), "{:?}", row.keys().collect::<Vec<_>>());
                let position = table.position(table.material(index).unwrap()).unwrap();
                // Panels of one name stand in several rows, one a thickness.
                assert_eq!(table.material(position).unwrap(), table.material(index).unwrap());
            }
            assert_eq!(table.material(table.count()).unwrap_err().code(), ErrorCode::OutOfRange);
        }
    }

    #[test]
    fn columns_keep_the_order_of_every_row() {
        for table in MaterialTable::ALL {
            let columns = table.columns().unwrap();
            for index in 0..table.count() {
                let row = table.row(index).unwrap();
                let places: Vec<_> =
                    row.keys().map(|name| columns.iter().position(|known| known == name).unwrap()).collect();
                assert!(places.is_sorted(), "{} {:?}", table.name(), row.keys().collect::<Vec<_>>());
            }
        }
    }

    #[test]
    fn values_are_those_of_the_records() {
        let table = MaterialTable::Species;
        let ash = table.position("Fraxinus americana").unwrap();
        let value = |column: &str| table.value(ash, column).unwrap();
        // FPL-GTR-190, Tables 4-3 and 13-5.
        assert_eq!(value("movement_tangential_per_pct"), MaterialValue::Number(0.00274));
        assert_eq!(
            value("density_12_kg_m3"),
            MaterialValue::Number(Species::find("white ash").unwrap().density(12.0).unwrap().density_kg_m3)
        );
        assert_eq!(value("movement_evidence"), MaterialValue::Text("seen".to_owned()));
        assert_eq!(value("density_published_kg_m3"), MaterialValue::Absent);
        let miss = table.value(ash, "movement_tangental_per_pct").unwrap_err();
        assert!(
            miss.code() == ErrorCode::UnknownField
                && miss.to_string().contains("did you mean movement_tangential_per_pct?")
        );
        let c24 = MaterialTable::StrengthClasses.position("c24").unwrap();
        assert_eq!(MaterialTable::StrengthClasses.value(c24, "bending_mpa").unwrap(), MaterialValue::Number(24.0));
        assert!(MaterialTable::Panels.columns().unwrap().contains(&"bending_along_low_mpa".to_owned()));
    }

    #[test]
    fn a_miss_helps() {
        let told = |table: MaterialTable, name: &str| table.position(name).unwrap_err().to_string();
        assert!(told(MaterialTable::Species, "whit ash").contains("did you mean Ash, white?"));
        assert!(told(MaterialTable::Species, "ash").contains("several fit"));
        assert!(told(MaterialTable::Panels, "plywood").contains("several fit"));
        assert!(told(MaterialTable::StrengthClasses, "C25").contains("did you mean"));
        assert!(MaterialTable::find("specie").unwrap_err().to_string().contains("did you mean species?"));
    }
}
