//! A JSON value as read: fields in their order, doubled fields kept, so that none is lost in silence.

use core::fmt;

use serde::de::{Deserialize, Deserializer, MapAccess, SeqAccess, Visitor};

/// A JSON value.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Tree {
    Null,
    Bool(bool),
    Number(serde_json::Number),
    Text(String),
    List(Vec<Tree>),
    Object(Vec<(String, Tree)>),
}

impl Tree {
    /// The value as a short text for a message.
    pub(super) fn brief(&self) -> String {
        match self {
            Tree::Null => "null".to_owned(),
            Tree::Bool(value) => value.to_string(),
            Tree::Number(value) => value.to_string(),
            Tree::Text(value) if value.chars().count() > 60 => {
                format!("\"{}…\"", value.chars().take(60).collect::<String>())
            }
            Tree::Text(value) => format!("\"{value}\""),
            Tree::List(items) => format!("a list of {}", items.len()),
            Tree::Object(fields) => format!("an object of {} fields", fields.len()),
        }
    }
}

impl<'de> Deserialize<'de> for Tree {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(TreeVisitor)
    }
}

struct TreeVisitor;

impl<'de> Visitor<'de> for TreeVisitor {
    type Value = Tree;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a JSON value")
    }

    fn visit_unit<E>(self) -> Result<Tree, E> {
        Ok(Tree::Null)
    }
    fn visit_bool<E>(self, value: bool) -> Result<Tree, E> {
        Ok(Tree::Bool(value))
    }
    fn visit_i64<E>(self, value: i64) -> Result<Tree, E> {
        Ok(Tree::Number(value.into()))
    }
    fn visit_u64<E>(self, value: u64) -> Result<Tree, E> {
        Ok(Tree::Number(value.into()))
    }
    fn visit_f64<E: serde::de::Error>(self, value: f64) -> Result<Tree, E> {
        serde_json::Number::from_f64(value).map(Tree::Number).ok_or_else(|| E::custom("number is not finite"))
    }
    fn visit_str<E>(self, value: &str) -> Result<Tree, E> {
        Ok(Tree::Text(value.to_owned()))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Tree, A::Error> {
        let mut list = Vec::new();
        while let Some(item) = items.next_element()? {
            list.push(item);
        }
        Ok(Tree::List(list))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut entries: A) -> Result<Tree, A::Error> {
        let mut fields = Vec::new();
        while let Some(entry) = entries.next_entry()? {
            fields.push(entry);
        }
        Ok(Tree::Object(fields))
    }
}
