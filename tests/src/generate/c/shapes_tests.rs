//! Shapes that a typed calculation may have though the registry holds none of them yet.

use std::path::Path;
use std::process::Command;

use beamcraft_core::registry;
use serde_json::json;

use super::super::model::{CalculationModel, ChoiceDef, Field, Model, Role, StructDef, Ty, TypeDef, Variant};
use super::layout::Door;
use super::{header, proof, source};

fn field(name: &str, ty: Ty, default: Option<serde_json::Value>) -> Field {
    let doc = format!("Value of {name}, mm.");
    Field { name: name.to_owned(), doc, ty, default, minimum: Some(0.0), maximum: Some(9.0), skips_empty: false }
}

fn structure(name: &str, role: Role, fields: Vec<Field>) -> TypeDef {
    TypeDef::Struct(StructDef { name: name.to_owned(), doc: format!("A {name}."), fields, role })
}

fn model() -> Model {
    let named = |name: &str| Ty::Named(name.to_owned());
    let maybe = |ty: Ty| Ty::Optional(Box::new(ty));
    let variants = ["plain", "half_round"].map(|text| Variant { text: text.to_owned(), doc: format!("It is {text}.") });
    let row = registry::find("mitre_pair").expect("a row");
    Model {
        types: vec![
            TypeDef::Choice(ChoiceDef {
                name: "EdgeForm".to_owned(),
                doc: "Form.".to_owned(),
                variants: variants.into(),
            }),
            structure(
                "MadeUpInput",
                Role::Input,
                vec![
                    field("form", named("EdgeForm"), None),
                    field("length_mm", Ty::Number, None),
                    field("count", Ty::Integer, Some(json!(2))),
                    field("other_form", named("EdgeForm"), Some(json!("half_round"))),
                    field("pieces", maybe(Ty::Integer), Some(json!(null))),
                    field("last_form", maybe(named("EdgeForm")), Some(json!(null))),
                    field("depth_mm", maybe(Ty::Number), Some(json!(4.5))),
                    field("centre_mm", Ty::Array(Box::new(Ty::Number), 3), Some(json!([0.0, 1.0, 2.5]))),
                ],
            ),
            structure(
                "MadeUpPart",
                Role::Output,
                vec![field("size_mm", Ty::Number, None), field("form", named("EdgeForm"), None)],
            ),
            structure(
                "MadeUp",
                Role::Output,
                vec![
                    field("count", Ty::Integer, None),
                    field("part", named("MadeUpPart"), None),
                    field("parts", Ty::Array(Box::new(named("MadeUpPart")), 2), None),
                    field("spare", maybe(named("MadeUpPart")), None),
                    field("forms", Ty::Array(Box::new(named("EdgeForm")), 3), None),
                    field("last_form", maybe(named("EdgeForm")), None),
                    field("pull_n", maybe(Ty::Number), None),
                ],
            ),
        ],
        calculations: vec![CalculationModel { row, input: "MadeUpInput".to_owned(), output: "MadeUp".to_owned() }],
    }
}

/// Name and offset of every member.
fn offsets(record: &super::layout::Record) -> Vec<(&str, usize)> {
    record.members.iter().map(|member| (member.name.as_str(), member.offset)).collect()
}

#[test]
fn every_byte_of_a_struct_has_a_name() {
    let model = model();
    let door = Door::of(&model);
    let call = door.calls.first().expect("a call");
    let wanted = [
        ("struct_size", 0),
        ("given", 8),
        ("form", 16),
        ("reserved_1", 20),
        ("length_mm", 24),
        ("count", 32),
        ("other_form", 36),
        ("pieces", 40),
        ("last_form", 44),
        ("depth_mm", 48),
        ("centre_mm", 56),
    ];
    assert_eq!((offsets(&call.input), call.input.size), (wanted.to_vec(), 80));
    let sizes = [(32, 0), (40, 0), (48, 3), (56, 7), (80, 7)];
    assert_eq!(call.input.sizes(), sizes);
    let wanted = [
        ("given", 0),
        ("count", 8),
        ("reserved_1", 12),
        ("part", 16),
        ("parts", 32),
        ("spare", 64),
        ("forms", 80),
        ("last_form", 92),
        ("pull_n", 96),
    ];
    assert_eq!((offsets(&call.output), call.output.size), (wanted.to_vec(), 104));
}

#[test]
fn rust_and_c_read_what_is_written() {
    let model = model();
    let door = Door::of(&model);
    // Formatting fails on a text that is no Rust.
    let files = [source::files(&door), proof::files(&door)].concat();
    let family = files.iter().find(|file| file.path.ends_with("shell.rs")).expect("the family's file");
    for piece in [
        "depth_mm: 4.5",
        "given: BEAMCRAFT_MADE_UP_INPUT_GIVEN_DEPTH_MM",
        "form: u32::MAX",
        "other_form: choices::BEAMCRAFT_EDGE_FORM_HALF_ROUND",
        "centre_mm: [0.0, 1.0, 2.5]",
        "count: 2",
    ] {
        assert!(family.text.contains(piece), "{piece} in\n{}", family.text);
    }
    let folder = std::env::temp_dir().join(format!("beamcraft-shapes-{}", std::process::id()));
    std::fs::create_dir_all(&folder).expect("a folder");
    let layout = files.iter().find(|file| file.path.ends_with("layout.c")).expect("the layout");
    for (name, text) in [("beamcraft.h", &header::file(&door).text), ("layout.c", &layout.text)] {
        std::fs::write(folder.join(name), text).expect("a file");
    }
    let said = compile(&folder);
    std::fs::remove_dir_all(&folder).expect("the folder goes");
    assert_eq!(said, "");
}

fn compile(folder: &Path) -> String {
    let run = Command::new("gcc")
        .args(["-std=c11", "-Wall", "-Wextra", "-Wpedantic", "-Wpadded", "-Werror", "-fsyntax-only", "layout.c"])
        .current_dir(folder)
        .output()
        .expect("gcc runs");
    String::from_utf8_lossy(&run.stderr).into_owned()
}
