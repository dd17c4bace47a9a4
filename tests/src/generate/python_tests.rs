use serde_json::json;

use super::super::model::{ChoiceDef, Field, Model, Role, StructDef, Ty, TypeDef, UnionDef, Variant};
use super::super::pydoc::Examples;
use super::super::stubs;
use super::rust;

fn field(name: &str, ty: Ty, default: Option<serde_json::Value>) -> Field {
    let doc = format!("Doc of `{name}`, with \"quotes\".");
    Field { name: name.to_owned(), doc, ty, default, skips_empty: false, minimum: Some(0.5), maximum: Some(1e3) }
}

fn structure(name: &str, fields: Vec<Field>) -> TypeDef {
    let doc = format!("Doc of {name}.");
    TypeDef::Struct(StructDef { name: name.to_owned(), doc, fields, role: Role::Input })
}

fn variant(text: &str) -> Variant {
    Variant { text: text.to_owned(), doc: format!("Doc of {text}.") }
}

fn named(name: &str) -> Ty {
    Ty::Named(name.to_owned())
}

fn union(first: &str, second: &str) -> TypeDef {
    let variants = vec![(variant("first_kind"), named(first)), (variant("second"), named(second))];
    TypeDef::Union(UnionDef {
        name: "Either".to_owned(),
        doc: "Doc of Either.".to_owned(),
        variants,
        role: Role::Input,
    })
}

/// Every shape that a model can have, none of it in the registry.
fn shapes(union: TypeDef) -> Model {
    let choice = ChoiceDef {
        name: "Colour".to_owned(),
        doc: "Doc of Colour.".to_owned(),
        variants: vec![variant("red"), variant("dark_blue")],
    };
    let whole = vec![
        field("type", Ty::Optional(Box::new(named("Colour"))), Some(json!(null))),
        field("class", named("Either"), None),
        field("points", Ty::List(Box::new(Ty::Array(Box::new(Ty::Number), 3))), Some(json!([]))),
        field("colour", named("Colour"), Some(json!("dark_blue"))),
        field("part", named("First"), Some(json!({"size_mm": 2.5}))),
        field("either", named("Either"), Some(json!({"second": {"note": "it's"}}))),
        field("parts", Ty::List(Box::new(named("First"))), None),
        Field { skips_empty: true, ..field("rest", Ty::List(Box::new(Ty::Text)), Some(json!([]))) },
    ];
    let types = vec![
        TypeDef::Choice(choice),
        structure("First", vec![field("size_mm", Ty::Number, None), field("count", Ty::Integer, Some(json!(3)))]),
        structure("Second", vec![field("note", Ty::Text, None)]),
        structure("Nothing", Vec::new()),
        union,
        structure("Whole", whole),
    ];
    Model { types, calculations: Vec::new() }
}

#[test]
fn every_shape_becomes_code_that_parses() {
    let text = rust(&shapes(union("First", "Second")), &Examples::none());
    syn::parse_file(&text).unwrap();
    for wanted in [
        "signature = (*, class_, parts, r#type = Arg::left_out(), points = Arg::left_out(),",
        "text_signature = \"(*, class_, parts, type=None, points=..., colour='dark_blue', part=..., either=..., rest=...)\"",
        "pub(crate) class_: Either,",
        "(\"class\", \"class_\", \"Doc of `class`, with \\\"quotes\\\".\"),",
        "points: points.read_or(\"points\", Vec::new)?,",
        "First { size_mm: 2.5_f64, count: 3 }",
        "Either::Second(Second { note: \"it's\".to_owned() })",
        "\"first_kind\" => OfJson::of_json(content).map(Either::FirstKind),",
        "self.rest.show().unless_empty()",
        "choice!(Colour, [\"red\", \"dark_blue\"]);",
        "module.add_class::<Nothing>()?;",
    ] {
        assert!(text.contains(wanted), "{wanted}\n{text}");
    }
}

#[test]
fn every_shape_has_its_stub() {
    let model = shapes(union("First", "Second"));
    let text = stubs::native(&model, &Examples::none());
    for wanted in [
        "def __new__(cls, *, class_: Either, parts: Iterable[First], type: Colour | None = None, \
         points: Iterable[tuple[float, float, float]] = ..., colour: Colour = 'dark_blue', part: First = ..., \
         either: Either = ..., rest: Iterable[str] = ...) -> Whole: ...",
        "    def points(self) -> list[tuple[float, float, float]]:",
        "    colour : {'red', 'dark_blue'}, default 'dark_blue'\n        Doc of ``colour``, with \"quotes\".\n        \
         Allowed: 0.5 to 1000.",
        "    class_ : First or Second\n",
        "class Nothing:\n    \"\"\"Doc of Nothing.\"\"\"\n",
        "    def __new__(cls) -> Nothing: ...",
    ] {
        assert!(text.contains(wanted), "{wanted}\n{text}");
    }
    let choices = stubs::choices(&model);
    assert!(choices.contains("Either: TypeAlias = Union[First, Second]\n"), "{choices}");
    assert!(choices.contains("from beamcraft._native import First, Second\n"), "{choices}");
    let package = stubs::package(&model);
    assert!(package.contains("    Whole,\n") && package.contains("    \"Whole\",\n"), "{package}");
}

#[test]
#[should_panic(expected = "Either::second: every choice with data holds a struct of its own")]
fn choices_that_a_class_cannot_tell_apart_are_refused() {
    rust(&shapes(union("First", "First")), &Examples::none());
}

#[test]
#[should_panic(expected = "two things of the Python module have this name")]
fn names_that_meet_are_refused() {
    let mut model = shapes(union("First", "Second"));
    model.types.push(structure("call", Vec::new()));
    stubs::package(&model);
}
