//! `beamcraft.h`: the manual of the C door, made section by section by the header generator.

use std::fmt::Write as _;
use std::fs;
use std::path::{Path, PathBuf};

use super::super::{GeneratedFile, top};
use super::layout::Door;
use super::source;

/// What a caller must know before any function.
const CONVENTIONS: &str = include_str!("conventions.txt");

const TYPED: &str = "\
Typed calls: numbers and choices in structs, nothing allocated on success.

Each calculation has an input struct, an init function that sets its size and initial values, an output
struct and the call itself:

    beamcraft_mitre_pair_input input;
    beamcraft_mitre_pair_output output;
    beamcraft_mitre_pair_input_init(&input);
    input.thickness_a_mm = 20.0;
    input.thickness_b_mm = 20.0;
    status = beamcraft_mitre_pair(&input, &output, NULL);

Every input must go through its init function, once; then fields are set and calls made in any order. A
field without an initial value starts as a value that is refused, so that none is forgotten. Fields named
reserved stay 0. An optional field counts only with its GIVEN constant in `given`, as in
`input.given |= BEAMCRAFT_..._GIVEN_...`. The init function accepts NULL and does nothing; the call refuses
NULL for input and output. The output is written only on success, whole. Input and output must be aligned as
their types are and must not overlap; both belong to the caller, who may place them anywhere.";

pub(super) fn file(door: &Door<'_>) -> GeneratedFile {
    let scratch = Scratch::new();
    let hand = |name: &str| {
        let path = top().join("beamcraft-ffi/src").join(name);
        fs::read_to_string(&path).unwrap_or_else(|fault| panic!("{}: {fault}", path.display()))
    };
    let mut text = format!("{CONVENTIONS}\n{}", opening());
    let mut section = |title: &str, pieces: &[String]| {
        let _ = write!(text, "\n{}\n", banner(title));
        for piece in pieces {
            let _ = write!(text, "\n{}\n", for_readers(scratch.header_of(piece).trim()).trim_end());
        }
    };
    section("Version", &[hand("version.rs")]);
    section("Status", &[hand("status.rs"), source::codes(false)]);
    section("Errors", &[hand("error.rs")]);
    section("Every calculation by name, with JSON in and out", &[hand("json.rs")]);
    section("Tables of materials: every figure with its source", &[hand("materials.rs")]);
    section("Columns: a calculation over many rows in one call", &[hand("columns.rs")]);
    section("The whole job: from a spec to a plan", &[hand("plan.rs")]);
    // With the structs of a panel, which the header generator writes beside what uses them.
    let of_plan = format!("{}\n{}", hand("panel.rs"), source::panelled("plan").replacen("//!", "//", 1));
    section("Panels of a plan: solids, triangles, files and drawings", &[of_plan]);
    section("A body of any form with the cuts of its panels", &[hand("body.rs")]);
    section("Panels of a body: solids, triangles, files and drawings", &[source::panelled("body")]);
    section("What a plan says about itself: findings, checks, cautions", &[hand("review.rs")]);
    if !door.choices.is_empty() {
        section("Choices: numbers of every enumeration used below", &[source::choices(door, false)]);
    }
    section(TYPED, &[]);
    for family in door.families() {
        let calls = door.calls.iter().filter(|call| call.family == family);
        let pieces: Vec<String> = calls.map(|call| without_contracts(&source::call_text(call))).collect();
        section(&format!("Typed calls: {family}"), &pieces);
    }
    text.push_str("\n#ifdef __cplusplus\n}  /* extern \"C\" */\n#endif\n\n#endif  /* BEAMCRAFT_H */\n");
    GeneratedFile::new("beamcraft-ffi/include/beamcraft.h", text)
}

fn opening() -> String {
    let version = env!("CARGO_PKG_VERSION");
    let mut text = String::from(
        "#ifndef BEAMCRAFT_H\n#define BEAMCRAFT_H\n\n#include <stddef.h>\n#include <stdint.h>\n\n\
         #ifdef __cplusplus\nextern \"C\" {\n#endif\n\n",
    );
    text.push_str("/* Version of this header. */\n");
    for (part, number) in ["MAJOR", "MINOR", "PATCH"].iter().zip(version.split('.')) {
        let _ = writeln!(text, "#define BEAMCRAFT_VERSION_{part} {number}");
    }
    let _ = writeln!(text, "#define BEAMCRAFT_VERSION_STRING \"{version}\"");
    text
}

fn banner(title: &str) -> String {
    let rule = "-".repeat(76);
    let body: String =
        title.lines().map(|line| format!(" * {line}")).map(|line| format!("{}\n", line.trim_end())).collect();
    format!("/* {rule}\n{body} * {rule} */")
}

/// The contract is the same for every typed call and stands once at the head of its section.
fn without_contracts(text: &str) -> String {
    let mut kept = String::new();
    let mut skipping = false;
    let mut lines = text.lines().peekable();
    while let Some(line) = lines.next() {
        if line == "///" && lines.peek() == Some(&"/// # Safety") {
            skipping = true;
        }
        skipping &= line.starts_with("///");
        if !skipping {
            kept.push_str(line);
            kept.push('\n');
        }
    }
    kept
}

/// What the header generator wrote, as a person would have laid it out.
fn for_readers(made: &str) -> String {
    let mut text = String::new();
    let mut lines = made.lines();
    while let Some(line) = lines.next() {
        if line.trim() == "/*" {
            let indent = &line[..line.len() - 2];
            let body = lines.by_ref().take_while(|line| line.trim() != "*/").map(str::trim_start);
            let body = body.map(|line| if line == "# Safety" { "Pointers:" } else { line });
            let body: Vec<&str> = body.collect();
            // What an enumeration is about stands above its first choice.
            match body.iter().position(|line| line.is_empty()).map(|at| body.split_at(at)) {
                Some((about, [_, choice @ ..])) if choice.first().is_some_and(|line| line.starts_with("0: ")) => {
                    text.push_str(&remark(indent, about).replacen("/**", "/*", 1).replace("\n *  ", "\n * "));
                    text.push_str(&remark(indent, choice));
                }
                _ => text.push_str(&remark(indent, &body)),
            }
            continue;
        }
        let line = match line.split_once("#define BEAMCRAFT_E_").and_then(|(_, rest)| rest.split_once(' ')) {
            // The page of a code is its upper byte.
            Some((name, number)) => format!("#define BEAMCRAFT_E_{name} {:#06x}", number.parse().unwrap_or(0)),
            None => line.to_owned(),
        };
        let line =
            line.replace("struct beamcraft_", "beamcraft_").replace("typedef beamcraft_", "typedef struct beamcraft_");
        text.push_str(&line);
        text.push('\n');
    }
    // Constants stand in a block.
    let mut blocks: Vec<&str> = Vec::new();
    let mut joined = String::new();
    for block in text.split("\n\n") {
        let is_constant = block.lines().last().is_some_and(|line| line.starts_with("#define"));
        let follows =
            blocks.last().is_some_and(|before| before.lines().last().is_some_and(|l| l.starts_with("#define")));
        if !blocks.is_empty() {
            joined.push_str(if is_constant && follows && block.starts_with("/**") { "\n" } else { "\n\n" });
        }
        joined.push_str(block);
        blocks.push(block);
    }
    joined
}

/// A comment: on one line where it fits, else with a star on every line.
fn remark(indent: &str, body: &[&str]) -> String {
    match body {
        [line] if indent.len() + line.len() <= 110 => format!("{indent}/** {line} */\n"),
        [first, rest @ ..] => {
            let mut text = format!("{indent}/** {first}\n");
            for line in rest {
                let _ = writeln!(text, "{}", format!("{indent} *  {line}").trim_end());
            }
            text.pop();
            text + " */\n"
        }
        [] => String::new(),
    }
}

/// A folder for what the header generator reads; it takes files only.
struct Scratch(PathBuf);

impl Scratch {
    fn new() -> Self {
        let folder = std::env::temp_dir().join(format!("beamcraft-header-{}", std::process::id()));
        let unique = format!("{:?}", std::thread::current().id()).replace(|c: char| !c.is_alphanumeric(), "");
        let folder = folder.join(unique);
        fs::create_dir_all(&folder).unwrap_or_else(|fault| panic!("{}: {fault}", folder.display()));
        Self(folder)
    }

    fn header_of(&self, source: &str) -> String {
        let path = self.0.join("piece.rs");
        fs::write(&path, source).unwrap_or_else(|fault| panic!("{}: {fault}", path.display()));
        header_of(&path)
    }
}

impl Drop for Scratch {
    fn drop(&mut self) {
        // A folder left behind in the system's place for such harms nobody.
        let _ = fs::remove_dir_all(self.0.parent().unwrap_or(&self.0));
    }
}

fn header_of(source: &Path) -> String {
    let mut config = cbindgen::Config {
        language: cbindgen::Language::C,
        no_includes: true,
        usize_is_size_t: true,
        style: cbindgen::Style::Both,
        documentation_style: cbindgen::DocumentationStyle::C,
        line_length: 100,
        ..cbindgen::Config::default()
    };
    config.function.args = cbindgen::Layout::Auto;
    let made = cbindgen::Builder::new().with_src(source).with_config(config).generate();
    let mut bytes = Vec::new();
    made.unwrap_or_else(|fault| panic!("the header generator: {fault}")).write(&mut bytes);
    String::from_utf8(bytes).unwrap_or_else(|fault| panic!("the header generator: {fault}"))
}
