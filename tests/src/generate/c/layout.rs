//! C structs with every byte accounted for.

use super::super::model::{ChoiceDef, Field, Model, StructDef, Ty, TypeDef};
use super::{ALSO, snake};

/// Everything that crosses the C door by type.
pub(super) struct Door<'a> {
    /// Enumerations, in the order of the model.
    pub(super) choices: Vec<&'a ChoiceDef>,
    /// Typed calculations, in registry order.
    pub(super) calls: Vec<Call>,
}

/// A typed calculation.
pub(super) struct Call {
    /// Name in the registry.
    pub(super) name: &'static str,
    /// The module that owns it.
    pub(super) family: &'static str,
    /// What it answers.
    pub(super) purpose: &'static str,
    /// Structs that no calculation before it has brought; what a struct holds stands before it.
    pub(super) records: Vec<Record>,
    /// The input.
    pub(super) input: Record,
    /// The output.
    pub(super) output: Record,
}

/// A C struct.
#[derive(Clone)]
pub(super) struct Record {
    /// Name in the core.
    pub(super) core: String,
    /// Name in C without prefix.
    pub(super) name: String,
    /// Doc comment in the core.
    pub(super) doc: String,
    /// Members with their places.
    pub(super) members: Vec<Member>,
    /// Whether it is given by the caller.
    pub(super) is_input: bool,
    /// Bytes.
    pub(super) size: usize,
}

/// A member of a C struct.
#[derive(Clone)]
pub(super) struct Member {
    pub(super) name: String,
    pub(super) doc: String,
    pub(super) offset: usize,
    pub(super) content: Content,
}

/// What a member is for.
#[derive(Clone)]
pub(super) enum Content {
    /// `struct_size`.
    Size,
    /// `given`.
    Mask,
    /// Fills up a pair of 32-bit numbers.
    Reserved,
    /// A field of the core; with its bit when it may be absent.
    Field { ty: CType, bit: Option<u32>, field: FieldFacts },
}

/// What the schema says about a field.
#[derive(Clone)]
pub(super) struct FieldFacts {
    pub(super) default: Option<serde_json::Value>,
    pub(super) minimum: Option<f64>,
    pub(super) maximum: Option<f64>,
}

/// Type of a member.
#[derive(Clone)]
pub(super) enum CType {
    /// `double`
    Double,
    /// `uint32_t`, a count.
    Count,
    /// `uint32_t`, a choice of the enumeration of this name.
    Choice(ChoiceRef),
    /// A struct of this C name.
    Nested { name: String, size: usize },
    /// A fixed number of them.
    Array(Box<CType>, usize),
}

/// An enumeration as a field uses it.
#[derive(Clone)]
pub(super) struct ChoiceRef {
    pub(super) core: String,
    pub(super) texts: Vec<String>,
}

impl CType {
    pub(super) fn size(&self) -> usize {
        match self {
            CType::Double => 8,
            CType::Count | CType::Choice(_) => 4,
            CType::Nested { size, .. } => *size,
            CType::Array(item, count) => item.size() * count,
        }
    }

    fn is_word(&self) -> bool {
        match self {
            CType::Count | CType::Choice(_) => true,
            CType::Double | CType::Nested { .. } => false,
            CType::Array(item, _) => item.is_word(),
        }
    }

    /// In Rust.
    pub(super) fn rust(&self) -> String {
        match self {
            CType::Double => "f64".to_owned(),
            CType::Count | CType::Choice(_) => "u32".to_owned(),
            CType::Nested { name, .. } => format!("beamcraft_{name}"),
            CType::Array(item, count) => format!("[{}; {count}]", item.rust()),
        }
    }
}

impl<'a> Door<'a> {
    pub(super) fn of(model: &'a Model) -> Self {
        let mut maker = Maker { model, done: Vec::new(), choices: ALSO.map(str::to_owned).to_vec() };
        let typed = model.calculations.iter().filter(|calculation| calculation.is_typed());
        let calls: Vec<Call> = typed
            .map(|calculation| {
                let before = maker.done.len();
                let input = maker.record(model.structure(&calculation.input), true);
                let output = maker.record(model.structure(&calculation.output), false);
                let (row, records) = (calculation.row, maker.done.split_off(before));
                maker.done.extend(records.iter().cloned());
                Call { name: row.name, family: row.family, purpose: row.purpose, records, input, output }
            })
            .collect();
        let used = maker.choices;
        let choices = model.types.iter().filter_map(|def| match def {
            TypeDef::Choice(choice) if used.contains(&choice.name) => Some(choice),
            _ => None,
        });
        Self { choices: choices.collect(), calls }
    }

    /// Every C struct, each once.
    pub(super) fn records(&self) -> impl Iterator<Item = &Record> {
        self.calls.iter().flat_map(|call| &call.records)
    }

    /// Every family of typed calculations, in order.
    pub(super) fn families(&self) -> Vec<&'static str> {
        let mut families: Vec<&'static str> = Vec::new();
        for call in &self.calls {
            if !families.contains(&call.family) {
                families.push(call.family);
            }
        }
        families
    }
}

struct Maker<'a> {
    model: &'a Model,
    done: Vec<Record>,
    choices: Vec<String>,
}

impl Maker<'_> {
    fn record(&mut self, def: &StructDef, is_input: bool) -> Record {
        if let Some(record) = self.done.iter().find(|record| record.core == def.name) {
            return record.clone();
        }
        let mut layout = Layout { members: Vec::new(), size: 0, reserved: 0 };
        if is_input {
            let doc = "Size of this struct in bytes, as the caller's header knows it; set by the init function.";
            layout.push("struct_size", doc, 8, Content::Size);
        }
        if def.fields.iter().any(|field| matches!(field.ty, Ty::Optional(_))) {
            let doc = "Which of the optional fields have a value: a sum of the GIVEN constants of this struct.";
            layout.push("given", doc, 8, Content::Mask);
        }
        let mut bits = 0..64;
        for field in &def.fields {
            let (ty, is_optional) = match &field.ty {
                Ty::Optional(inner) => (self.ctype(def, field, inner, is_input), true),
                ty => (self.ctype(def, field, ty, is_input), false),
            };
            let bit = if is_optional { bits.next() } else { None };
            let facts = FieldFacts { default: field.default.clone(), minimum: field.minimum, maximum: field.maximum };
            if !ty.is_word() {
                layout.fill();
            }
            layout.push(&field.name, &field.doc, ty.size(), Content::Field { ty, bit, field: facts });
        }
        layout.fill();
        // The function of a calculation often has the name of what it returns; in C both share one name space.
        let name = if is_input { snake(&def.name) } else { format!("{}_output", snake(&def.name)) };
        let (members, size) = (layout.members, layout.size);
        let record = Record { core: def.name.clone(), name, doc: def.doc.clone(), members, is_input, size };
        self.done.push(record.clone());
        record
    }

    fn ctype(&mut self, def: &StructDef, field: &Field, ty: &Ty, is_input: bool) -> CType {
        match ty {
            Ty::Number => CType::Double,
            Ty::Integer => CType::Count,
            Ty::Array(item, count) => CType::Array(Box::new(self.ctype(def, field, item, is_input)), *count),
            Ty::Named(name) => match self.model.find(name) {
                Some(TypeDef::Choice(choice)) => {
                    if !self.choices.contains(name) {
                        self.choices.push(name.clone());
                    }
                    let texts = choice.variants.iter().map(|variant| variant.text.clone()).collect();
                    CType::Choice(ChoiceRef { core: name.clone(), texts })
                }
                Some(TypeDef::Struct(inner)) if !is_input => {
                    let inner = self.record(inner, false);
                    CType::Nested { name: inner.name, size: inner.size }
                }
                _ => panic!("{}.{}: {name} cannot cross the typed C door", def.name, field.name),
            },
            Ty::Text | Ty::Optional(_) | Ty::List(_) => {
                panic!("{}.{}: texts and lists cross only as JSON: make it a Document", def.name, field.name)
            }
        }
    }
}

struct Layout {
    members: Vec<Member>,
    size: usize,
    reserved: usize,
}

impl Layout {
    fn push(&mut self, name: &str, doc: &str, size: usize, content: Content) {
        self.members.push(Member { name: name.to_owned(), doc: doc.to_owned(), offset: self.size, content });
        self.size += size;
    }

    /// Gives a lone 32-bit number its partner.
    fn fill(&mut self) {
        if self.size.is_multiple_of(8) {
            return;
        }
        self.reserved += 1;
        let name = format!("reserved_{}", self.reserved);
        self.push(&name, "Kept for later: 0.", 4, Content::Reserved);
    }
}

impl Record {
    /// Name of the C struct.
    pub(super) fn c_name(&self) -> String {
        format!("beamcraft_{}", self.name)
    }

    /// Name of the constant of an optional field.
    pub(super) fn given_constant(&self, field: &str) -> String {
        format!("BEAMCRAFT_{}_GIVEN_{}", self.name.to_uppercase(), field.to_uppercase())
    }

    /// Its `given` mask, if it has one.
    pub(super) fn has_mask(&self) -> bool {
        self.members.iter().any(|member| matches!(member.content, Content::Mask))
    }

    /// Sizes that an older caller may have: everything that is left out has a default.
    pub(super) fn sizes(&self) -> Vec<(usize, u64)> {
        let mut sizes = vec![(self.size, self.bits_below(self.size))];
        for member in self.members.iter().rev() {
            match &member.content {
                Content::Field { field, .. } if field.default.is_some() => {}
                Content::Reserved => continue,
                _ => break,
            }
            if member.offset.is_multiple_of(8) {
                sizes.push((member.offset, self.bits_below(member.offset)));
            }
        }
        sizes.reverse();
        sizes
    }

    fn bits_below(&self, size: usize) -> u64 {
        let bits = self.members.iter().filter(|member| member.offset < size).map(|member| match member.content {
            Content::Field { bit: Some(bit), .. } => 1u64 << bit,
            _ => 0,
        });
        bits.sum()
    }
}
