//! What the compiler does not see: floors of the core, rows for every calculation, links of the docs, words that do not
//! belong into the tree.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "the whole file is a test: it stops, with the reason, at what it does not expect"
)]

use std::collections::{BTreeMap, HashMap, HashSet};
use std::fs;
use std::path::{Path, PathBuf};

use beamcraft_core::cite::Source;
use beamcraft_core::error::ErrorCode;
use beamcraft_core::registry;
use beamcraft_tests::{generate, rows};
use syn::visit::{self, Visit};

/// Floor of each module of the core; within floor 0 the second number is the order.
const FLOORS: &[(&str, (u8, u8))] = &[
    ("cite", (0, 0)),
    ("error", (0, 1)),
    ("limits", (0, 2)),
    ("numeric", (0, 3)),
    ("units", (0, 4)),
    ("finding", (0, 5)),
    ("verdict", (0, 5)),
    ("columns", (0, 6)),
    ("json", (0, 7)),
    ("geometry", (1, 0)),
    ("wood", (1, 0)),
    ("setting", (1, 0)),
    ("shell", (2, 0)),
    ("fasten", (2, 0)),
    ("statics", (2, 0)),
    ("saw", (3, 0)),
    ("frame", (3, 0)),
    ("hang", (3, 0)),
    ("movement", (3, 0)),
    ("tolerance", (3, 0)),
    ("lumber", (3, 0)),
    ("stock", (3, 0)),
    ("work", (3, 0)),
    ("finish", (3, 0)),
    ("lifting", (3, 0)),
    ("check", (4, 0)),
    ("site", (4, 0)),
    ("fit", (4, 0)),
    // Searches over the checks, below the plan.
    ("choose", (4, 5)),
    ("plan", (5, 0)),
    // Plans made again with one thing changed.
    ("sizing", (5, 5)),
    // What the plan asks the yard and the calendar for.
    ("bill", (5, 5)),
    ("export", (6, 0)),
    ("registry", (7, 0)),
];

/// Items that any module may name although they stand above or beside it, with the reason.
const WIRING: &[(&str, &str)] = &[
    ("json::Calculation", "type of a registry row, which each module owns"),
    ("json::calculation", "macro that makes a registry row"),
    ("json::ranges", "writes the limits table into a schema"),
];

/// Calculations without a verification row, with the reason.
const WITHOUT_ROW: &[(&str, &str)] = &[];

/// Numbers of inputs without a range, with the reason.
const WITHOUT_RANGE: &[(&str, &str)] = &[("BeamSpec.beamcraft_spec", "a format number, compared with the one known")];

fn top() -> PathBuf {
    generate::top()
}

fn floor(module: &str) -> Option<(u8, u8)> {
    FLOORS.iter().find(|(name, _)| *name == module).map(|(_, floor)| *floor)
}

/// Everything that a source file names inside the crate, as paths below `crate`.
struct Names {
    /// Module path of the place that is read.
    here: Vec<String>,
    found: Vec<Vec<String>>,
    unsafe_code: bool,
}

impl Names {
    fn of_file(source: &str, here: &[String]) -> Result<Self, syn::Error> {
        let mut names = Self { here: here.to_vec(), found: Vec::new(), unsafe_code: false };
        names.visit_file(&syn::parse_file(source)?);
        Ok(names)
    }

    /// Takes a path that starts at `crate`, `self` or `super`.
    fn take(&mut self, steps: &[String]) {
        let Some(first) = steps.first() else { return };
        let mut base = match first.as_str() {
            "crate" => Vec::new(),
            "self" => self.here.clone(),
            "super" => self.here[..self.here.len().saturating_sub(1)].to_vec(),
            _ => return,
        };
        let mut rest = &steps[1..];
        while let Some(step) = rest.first().filter(|step| *step == "super") {
            debug_assert_eq!(step, "super");
            base.pop();
            rest = &rest[1..];
        }
        base.extend(rest.iter().cloned());
        self.found.push(base);
    }

    fn take_tree(&mut self, before: &[String], tree: &syn::UseTree) {
        let with = |name: &syn::Ident| [before, &[name.to_string()]].concat();
        match tree {
            syn::UseTree::Path(path) => self.take_tree(&with(&path.ident), &path.tree),
            syn::UseTree::Name(name) => self.take(&with(&name.ident)),
            syn::UseTree::Rename(name) => self.take(&with(&name.ident)),
            syn::UseTree::Glob(_) => self.take(&[before, &["*".to_owned()]].concat()),
            syn::UseTree::Group(group) => group.items.iter().for_each(|tree| self.take_tree(before, tree)),
        }
    }

    /// Paths in tokens that are not parsed: bodies of macros, attributes, texts such as `with = "crate::…"`.
    fn take_text(&mut self, text: &str) {
        let spaced =
            text.replace("::", " :: ").replace(['(', ')', '<', '>', '{', '}', '[', ']', ',', ';', '"', '='], " ; ");
        let words: Vec<&str> = spaced.split_whitespace().collect();
        for (k, word) in words.iter().enumerate() {
            if !["crate", "$crate", "super", "self"].contains(word) || words.get(k + 1) != Some(&"::") {
                continue;
            }
            if k > 0 && words[k - 1] == "::" {
                continue;
            }
            let steps = words[k..].chunks(2).take_while(|pair| pair[0] != ";" && pair[0] != "::");
            let mut path: Vec<String> = Vec::new();
            for pair in steps {
                path.push(pair[0].trim_start_matches('$').to_owned());
                if pair.get(1) != Some(&"::") {
                    break;
                }
            }
            self.take(&path);
        }
    }
}

fn is_test(attributes: &[syn::Attribute]) -> bool {
    attributes.iter().any(|attribute| {
        attribute.path().is_ident("cfg") && tokens(&attribute.meta).replace(' ', "").contains("(test)")
    })
}

fn tokens(meta: &syn::Meta) -> String {
    match meta {
        syn::Meta::List(list) => format!("({})", list.tokens),
        syn::Meta::NameValue(pair) => match &pair.value {
            syn::Expr::Lit(syn::ExprLit { lit: syn::Lit::Str(text), .. }) => text.value(),
            _ => String::new(),
        },
        _ => String::new(),
    }
}

impl<'ast> Visit<'ast> for Names {
    fn visit_item(&mut self, item: &'ast syn::Item) {
        // Tests may look at anything.
        let attributes: &[syn::Attribute] = match item {
            syn::Item::Mod(item) => &item.attrs,
            syn::Item::Fn(item) => &item.attrs,
            syn::Item::Use(item) => &item.attrs,
            syn::Item::Impl(item) => &item.attrs,
            syn::Item::Const(item) => &item.attrs,
            _ => &[],
        };
        if !is_test(attributes) {
            visit::visit_item(self, item);
        }
    }

    fn visit_item_mod(&mut self, item: &'ast syn::ItemMod) {
        self.here.push(item.ident.to_string());
        visit::visit_item_mod(self, item);
        self.here.pop();
    }

    fn visit_item_use(&mut self, item: &'ast syn::ItemUse) {
        self.take_tree(&[], &item.tree);
    }

    fn visit_path(&mut self, path: &'ast syn::Path) {
        let steps: Vec<String> = path.segments.iter().map(|segment| segment.ident.to_string()).collect();
        if steps.len() > 1 {
            self.take(&steps);
        }
        visit::visit_path(self, path);
    }

    fn visit_macro(&mut self, call: &'ast syn::Macro) {
        self.take_text(&call.tokens.to_string());
        self.unsafe_code |= call.tokens.to_string().split_whitespace().any(|word| word == "unsafe");
        visit::visit_macro(self, call);
    }

    fn visit_attribute(&mut self, attribute: &'ast syn::Attribute) {
        // Links of doc comments are no imports.
        if !attribute.path().is_ident("doc") {
            self.take_text(&tokens(&attribute.meta));
        }
    }

    fn visit_expr_unsafe(&mut self, _: &'ast syn::ExprUnsafe) {
        self.unsafe_code = true;
    }

    fn visit_signature(&mut self, signature: &'ast syn::Signature) {
        self.unsafe_code |= matches!(signature.safety, syn::Safety::Unsafe(_));
        visit::visit_signature(self, signature);
    }

    fn visit_item_impl(&mut self, item: &'ast syn::ItemImpl) {
        self.unsafe_code |= item.unsafety.is_some();
        visit::visit_item_impl(self, item);
    }

    fn visit_item_trait(&mut self, item: &'ast syn::ItemTrait) {
        self.unsafe_code |= item.unsafety.is_some();
        visit::visit_item_trait(self, item);
    }

    fn visit_item_foreign_mod(&mut self, _: &'ast syn::ItemForeignMod) {
        self.unsafe_code = true;
    }
}

/// What is wrong with the imports of a file of the module `here`.
fn wrong_imports(source: &str, here: &[String]) -> Vec<String> {
    let names = match Names::of_file(source, here) {
        Ok(names) => names,
        Err(fault) => return vec![format!("cannot be read: {fault}")],
    };
    let own = here.first().map(String::as_str).unwrap_or_default();
    let Some(own_floor) = floor(own) else { return vec![format!("module {own} has no floor")] };
    let mut faults = Vec::new();
    for path in names.found {
        let target = path.first().map(String::as_str).unwrap_or_default();
        let whole = path.join("::");
        if target == own || WIRING.iter().any(|(item, _)| whole == *item || whole.starts_with(&format!("{item}::"))) {
            continue;
        }
        match floor(target) {
            None => faults.push(format!("crate::{whole}: through the flat re-exports, or a module without a floor")),
            Some(target_floor) if target_floor > own_floor => faults.push(format!("crate::{whole}: points up")),
            Some(target_floor) if target_floor == own_floor => faults.push(format!("crate::{whole}: points sideways")),
            Some(_) => {}
        }
    }
    faults.sort();
    faults.dedup();
    faults
}

/// Source files of the core with their module paths.
fn core_files() -> Vec<(PathBuf, Vec<String>)> {
    let root = top().join("beamcraft-core/src");
    let mut found = Vec::new();
    walk(&root, &mut |path| {
        if path.extension().is_none_or(|ending| ending != "rs") {
            return;
        }
        let inner = path.strip_prefix(&root).unwrap().with_extension("");
        let mut module: Vec<String> = inner.iter().map(|step| step.to_string_lossy().into_owned()).collect();
        module.retain(|step| step != "mod");
        found.push((path.to_owned(), module));
    });
    assert!(found.len() > 10, "the core was not found");
    found
}

fn walk(folder: &Path, visit: &mut dyn FnMut(&Path)) {
    let mut entries: Vec<PathBuf> = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    entries.sort();
    for path in entries {
        if path.is_dir() { walk(&path, visit) } else { visit(&path) }
    }
}

#[test]
fn an_import_only_ever_points_down() {
    let mut faults = Vec::new();
    for (path, module) in core_files() {
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        if module == ["lib"] || name.ends_with("_tests.rs") || name == "tests.rs" {
            continue;
        }
        let source = fs::read_to_string(&path).unwrap();
        let inner = path.strip_prefix(top()).unwrap_or(&path).display().to_string();
        faults.extend(wrong_imports(&source, &module).into_iter().map(|fault| format!("{inner}: {fault}")));
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn the_reader_of_imports_sees_every_form() {
    let here = ["shell".to_owned(), "mitre".to_owned()];
    let cases = [
        ("use crate::saw::x;", "crate::saw::x: points up"),
        ("use crate::{error::Fault, saw::{a, b as c}};", "crate::saw::a: points up"),
        ("fn f() { crate::plan::make(); }", "crate::plan::make: points up"),
        ("fn f(x: &crate::export::Svg) {}", "crate::export::Svg: points up"),
        ("fn f<T: crate::export::Write>() {}", "crate::export::Write: points up"),
        ("use super::super::hang::Cleat;", "crate::hang::Cleat: points up"),
        ("mod inner { use super::super::super::fasten::Screw; }", "crate::fasten::Screw: points sideways"),
        ("fn f() { vec![crate::site::a()]; }", "crate::site::a: points up"),
        ("macro_rules! m { () => { $crate::check::a() }; }", "crate::check::a: points up"),
        ("#[serde(with = \"crate::plan::text\")] struct A;", "crate::plan::text: points up"),
        ("use crate::statics::*;", "crate::statics::*: points sideways"),
        ("pub use crate::MitrePair;", "crate::MitrePair: through the flat re-exports"),
        ("use crate::*;", "crate::*: through the flat re-exports"),
    ];
    for (source, wanted) in cases {
        let faults = wrong_imports(source, &here);
        assert!(faults.iter().any(|fault| fault.starts_with(wanted)), "{source}: {faults:?}");
    }
    for allowed in [
        "use crate::geometry::Plane; use super::panel::Panel; use self::inner::A; mod inner {}",
        "#[schemars(transform = crate::json::ranges::<A>)] struct A; use crate::error::{Allowed, Fault};",
        "#[cfg(test)] mod tests { use crate::plan::Plan; }",
        "const A: crate::json::Calculation = crate::json::calculation!(a: A => B, Typed, \"c\");",
    ] {
        assert_eq!(wrong_imports(allowed, &here), Vec::<String>::new(), "{allowed}");
    }
    assert!(!wrong_imports("use crate::units::inch;", &["limits".to_owned()]).is_empty(), "order within floor 0");
    assert!(wrong_imports("use crate::limits::A;", &["units".to_owned()]).is_empty(), "order within floor 0");
}

#[test]
fn nothing_in_the_core_is_unsafe() {
    let root = fs::read_to_string(top().join("beamcraft-core/src/lib.rs")).unwrap();
    assert!(root.contains("#![forbid(unsafe_code)]"));
    for (path, module) in core_files() {
        let names = Names::of_file(&fs::read_to_string(&path).unwrap(), &module).unwrap();
        assert!(!names.unsafe_code, "{}", path.display());
    }
    for unsafe_source in
        ["fn f() { unsafe {} }", "unsafe fn f() {}", "unsafe impl Send for A {}", "m! { unsafe { a } }"]
    {
        assert!(Names::of_file(unsafe_source, &[]).unwrap().unsafe_code, "{unsafe_source}");
    }
}

#[test]
fn every_calculation_has_a_row() {
    let topics = rows::read_all().unwrap_or_else(|faults| panic!("{}", faults.join("\n")));
    let tried: HashSet<&str> = topics.iter().flat_map(|topic| &topic.rows).map(|row| &*row.calculation).collect();
    let excused: HashMap<&str, &str> = WITHOUT_ROW.iter().copied().collect();
    let names: Vec<&str> = registry::calculations().map(|row| row.name).collect();
    let missing: Vec<_> = names.iter().filter(|name| !tried.contains(*name) && !excused.contains_key(*name)).collect();
    assert!(missing.is_empty(), "without a verification row: {missing:?}");
    for (name, reason) in WITHOUT_ROW {
        assert!(names.contains(name) && !tried.contains(name), "{name} needs no excuse");
        assert!(!reason.is_empty(), "{name}: no reason");
    }
}

#[test]
fn names_of_the_doors_are_unique() {
    let mut names: Vec<&str> = registry::calculations().map(|row| row.name).collect();
    let count = names.len();
    names.sort_unstable();
    names.dedup();
    assert_eq!(names.len(), count, "calculations");
    for row in registry::calculations() {
        assert!(!row.purpose.is_empty() && !row.family.is_empty(), "{}", row.name);
    }
    let errors: HashSet<&str> = ErrorCode::ALL.iter().map(|code| code.name()).collect();
    assert_eq!(errors.len(), ErrorCode::ALL.len(), "error names");
    let sources: HashSet<&str> = Source::ALL.iter().map(|source| source.id()).collect();
    assert_eq!(sources.len(), Source::ALL.len(), "source ids");
    let types = generate::model::Model::of_registry().types;
    let upper: HashSet<String> = types.iter().map(|def| def.name().to_lowercase()).collect();
    assert_eq!(upper.len(), types.len(), "type names");
}

#[test]
fn every_public_field_says_what_it_is() {
    use generate::model::TypeDef;
    let mut silent = Vec::new();
    for def in generate::model::Model::of_registry().types {
        match def {
            TypeDef::Struct(def) => {
                let fields = def.fields.iter().filter(|field| field.doc.trim().is_empty());
                silent.extend(fields.map(|field| format!("{}.{}", def.name, field.name)));
            }
            TypeDef::Choice(def) => {
                let choices = def.variants.iter().filter(|choice| choice.doc.trim().is_empty());
                silent.extend(choices.map(|choice| format!("{}.{}", def.name, choice.text)));
            }
            TypeDef::Union(def) => {
                let choices = def.variants.iter().filter(|(choice, _)| choice.doc.trim().is_empty());
                silent.extend(choices.map(|(choice, _)| format!("{}.{}", def.name, choice.text)));
            }
        }
    }
    assert!(silent.is_empty(), "without a doc comment: {silent:?}");
}

#[test]
fn every_number_of_an_input_has_a_range() {
    use generate::model::{Role, Ty, TypeDef};
    let mut open = Vec::new();
    for def in generate::model::Model::of_registry().types {
        let TypeDef::Struct(def) = def else { continue };
        if def.role != Role::Input {
            continue;
        }
        for field in &def.fields {
            let inner = if let Ty::Optional(inner) = &field.ty { inner } else { &field.ty };
            if matches!(inner, Ty::Number | Ty::Integer) && (field.minimum.is_none() || field.maximum.is_none()) {
                open.push(format!("{}.{}", def.name, field.name));
            }
        }
    }
    let excused: Vec<&str> = WITHOUT_RANGE.iter().map(|(field, _)| *field).collect();
    assert_eq!(open, excused, "numbers without a range, against those with a reason");
}

/// Pages with their text: the book and the pages at the top.
fn pages() -> Vec<PathBuf> {
    let mut pages = vec![top().join("README.md"), top().join("DEVELOPERS.md")];
    walk(&top().join("docs/src"), &mut |path| {
        if path.extension().is_some_and(|ending| ending == "md") {
            pages.push(path.to_owned());
        }
    });
    pages
}

/// Text without fenced code and without code between backticks.
fn prose(text: &str) -> String {
    let mut fenced = false;
    let mut out = String::new();
    for line in text.lines() {
        if line.trim_start().starts_with("```") {
            fenced = !fenced;
            continue;
        }
        if !fenced {
            out.extend(line.split('`').step_by(2));
            out.push('\n');
        }
    }
    out
}

/// Targets of the links and pictures of a page.
fn targets(text: &str) -> Vec<String> {
    let text = prose(text);
    let ends = text.match_indices("](").map(|(place, _)| &text[place + 2..]);
    ends.filter_map(|rest| rest.split_once(')').map(|(target, _)| target.trim().to_owned())).collect()
}

/// Anchors that the headings of a page and its own `id` marks make.
fn anchors(text: &str) -> HashSet<String> {
    let mut found: BTreeMap<String, usize> = BTreeMap::new();
    let mut anchors = HashSet::new();
    let mut fenced = false;
    for line in text.lines() {
        if line.trim_start().starts_with("```") {
            fenced = !fenced;
        }
        if !fenced && line.starts_with('#') {
            let title = line.trim_start_matches('#').trim().to_lowercase();
            let kept = title.chars().filter(|c| c.is_alphanumeric() || " -_".contains(*c));
            let slug: String = kept.map(|c| if c == ' ' { '-' } else { c }).collect();
            let count = found.entry(slug.clone()).or_default();
            anchors.insert(if *count == 0 { slug } else { format!("{slug}-{count}") });
            *count += 1;
        }
        let marks = line.match_indices("id=\"").filter_map(|(place, _)| line[place + 4..].split('"').next());
        anchors.extend(marks.map(str::to_owned));
    }
    anchors
}

fn wrong_links(page: &Path, text: &str) -> Vec<String> {
    let mut faults = Vec::new();
    for target in targets(text) {
        if target.starts_with("https://") || target.starts_with("http://") {
            continue;
        }
        let (file, anchor) = target.split_once('#').map_or((&*target, None), |(file, anchor)| (file, Some(anchor)));
        let other = page.parent().unwrap().join(file);
        if !file.is_empty() && !other.exists() {
            faults.push(format!("{}: {target} does not exist", page.display()));
            continue;
        }
        let Some(anchor) = anchor else { continue };
        let text = if file.is_empty() { text.to_owned() } else { fs::read_to_string(&other).unwrap_or_default() };
        if !anchors(&text).contains(anchor) {
            faults.push(format!("{}: {target} has no such heading", page.display()));
        }
    }
    faults
}

#[test]
fn every_link_of_the_docs_leads_somewhere() {
    let mut faults = Vec::new();
    for page in pages() {
        let text = fs::read_to_string(&page).unwrap_or_else(|fault| panic!("{}: {fault}", page.display()));
        faults.extend(wrong_links(&page, &text));
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn the_reader_of_links_sees_what_is_broken() {
    let page = top().join("README.md");
    let broken = wrong_links(&page, "# A b\n[x](no-such-file.md) [y](#a-b) [z](#c) ![p](docs/none.svg)\n`[q](none)`");
    assert_eq!(broken.len(), 3, "{broken:?}");
    assert_eq!(anchors("# One, two\n## mitre_pair\n## One two\n```\n# no\n```\n").len(), 3);
}

#[test]
fn every_page_of_the_book_is_in_its_table_of_contents() {
    let folder = top().join("docs/src");
    let summary = fs::read_to_string(folder.join("SUMMARY.md")).unwrap();
    let listed: HashSet<PathBuf> = targets(&summary).into_iter().map(|target| folder.join(target)).collect();
    let pages = pages().into_iter().filter(|page| page.starts_with(&folder) && !page.ends_with("SUMMARY.md"));
    let missing: Vec<PathBuf> = pages.filter(|page| !listed.contains(page)).collect();
    assert!(missing.is_empty(), "not in SUMMARY.md: {missing:?}");
}

/// Blocks of a language in a page.
fn blocks(text: &str, language: &str) -> Vec<String> {
    let fence = format!("```{language}\n");
    let pieces = text.split(&fence).skip(1);
    pieces.filter_map(|piece| piece.split_once("\n```").map(|(block, _)| block.to_owned())).collect()
}

#[test]
fn every_spec_in_the_docs_makes_a_plan() {
    let mut count = 0;
    for page in pages() {
        for block in blocks(&fs::read_to_string(&page).unwrap(), "json") {
            if !block.contains("beamcraft_spec") {
                continue;
            }
            count += 1;
            let plan = registry::call("plan", &block);
            assert!(plan.is_ok(), "{}: {}", page.display(), plan.unwrap_err());
        }
    }
    assert!(count >= 2, "the guide shows a small and a full spec; found {count}");
}

/// Text files of the tree; what is built or installed is left out.
fn texts(folder: &Path, visit: &mut dyn FnMut(&Path, &str)) {
    const BUILT: [&str; 9] = [
        ".git",
        "target",
        ".venv",
        "out",
        "hearth-beam",
        "__pycache__",
        "node_modules",
        "book",
        "proptest-regressions",
    ];
    let mut entries: Vec<PathBuf> = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    entries.sort();
    for path in entries {
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        if BUILT.contains(&&*name) || name == "Cargo.lock" || name.starts_with("LICENSE") {
            continue;
        }
        if path.is_dir() {
            texts(&path, visit);
        } else if let Ok(text) = fs::read_to_string(&path) {
            visit(&path, &text);
        }
    }
}

/// What does not belong into a line: a path of one machine, a mark of unfinished work, a test that is switched off.
fn stray(line: &str) -> Option<&'static str> {
    const HOMES: [&str; 8] = ["home", "root", "Users", "work", "workspace", "workspaces", "mnt", "builds"];
    let opens = |place: usize| line[..place].chars().next_back().is_none_or(|c| " \t\"'`(=:,<>[".contains(c));
    for (place, _) in line.match_indices('/').filter(|(place, _)| opens(*place)) {
        let mut steps = line[place + 1..].split('/');
        if let (Some(first), Some(second)) = (steps.next(), steps.next())
            && HOMES.contains(&first)
            && second.starts_with(|c: char| c.is_alphanumeric() || c == '.')
        {
            return Some("a path of one machine");
        }
    }
    if [concat!("TO", "DO"), concat!("FIX", "ME")].iter().any(|mark| line.contains(mark)) {
        return Some("a mark of unfinished work");
    }
    if line.trim_start().starts_with(concat!("#[ign", "ore")) {
        return Some("a test that is switched off");
    }
    None
}

#[test]
fn no_file_holds_what_does_not_belong() {
    let mut faults = Vec::new();
    texts(&top(), &mut |path, text| {
        for (number, line) in text.lines().enumerate() {
            if let Some(what) = stray(line) {
                faults.push(format!("{}:{}: {what}", path.display(), number + 1));
            }
        }
    });
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn a_stray_line_is_seen() {
    let home = ["", "home", "someone", "a.rs"].join("/");
    assert!(stray(&home).is_some() && stray(&format!("path = \"{home}\"")).is_some());
    assert!(stray(&format!("// {}: later", concat!("TO", "DO"))).is_some());
    assert!(stray(concat!("    #[ign", "ore]")).is_some());
    for fine in ["a/home/b", "1/root/2", "the shop/work/order", "// done"] {
        assert_eq!(stray(fine), None, "{fine}");
    }
}
