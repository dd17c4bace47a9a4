//! What the generator knows: every public type and calculation, read from the registry's schemas.

use std::collections::HashSet;

use beamcraft_core::json::{Calculation, Door};
use beamcraft_core::registry;
use serde_json::Value;

/// Everything the doors offer.
pub struct Model {
    /// Types in the order in which they are first met: what a type uses stands before it.
    pub types: Vec<TypeDef>,
    /// Calculations in registry order.
    pub calculations: Vec<CalculationModel>,
}

/// A named type.
pub enum TypeDef {
    /// Named fields.
    Struct(StructDef),
    /// An enumeration without data.
    Choice(ChoiceDef),
    /// An enumeration whose choices each hold one struct.
    Union(UnionDef),
}

/// Whether a type is given by the caller.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Role {
    /// Part of an input: can be constructed.
    Input,
    /// Only ever returned.
    Output,
}

/// A struct.
pub struct StructDef {
    /// Name in the core.
    pub name: String,
    /// Doc comment.
    pub doc: String,
    /// Fields in order.
    pub fields: Vec<Field>,
    /// Given or returned.
    pub role: Role,
}

/// A field of a struct.
pub struct Field {
    /// Name, with its unit.
    pub name: String,
    /// Doc comment: quantity, unit.
    pub doc: String,
    /// Type.
    pub ty: Ty,
    /// Value when it is left out; `None` when it must be given.
    pub default: Option<Value>,
    /// Whether an empty list is left out of the JSON.
    pub skips_empty: bool,
    /// Smallest value allowed, from the limits table.
    pub minimum: Option<f64>,
    /// Largest value allowed, from the limits table.
    pub maximum: Option<f64>,
}

/// Type of a field.
#[derive(Clone, PartialEq, Debug)]
pub enum Ty {
    /// f64.
    Number,
    /// u32.
    Integer,
    /// Text.
    Text,
    /// May be absent.
    Optional(Box<Ty>),
    /// Any number of items.
    List(Box<Ty>),
    /// A fixed number of items.
    Array(Box<Ty>, usize),
    /// A type of the model.
    Named(String),
}

/// An enumeration without data.
pub struct ChoiceDef {
    /// Name in the core.
    pub name: String,
    /// Doc comment.
    pub doc: String,
    /// Choices in order; the number of each is its place.
    pub variants: Vec<Variant>,
}

/// One choice.
pub struct Variant {
    /// Text form.
    pub text: String,
    /// Doc comment.
    pub doc: String,
}

/// An enumeration whose choices hold data.
pub struct UnionDef {
    /// Name in the core.
    pub name: String,
    /// Doc comment.
    pub doc: String,
    /// Choices: text form, doc and type of the content.
    pub variants: Vec<(Variant, Ty)>,
    /// Given or returned.
    pub role: Role,
}

/// A calculation.
pub struct CalculationModel {
    /// The row of the registry.
    pub row: &'static Calculation,
    /// Name of the input struct.
    pub input: String,
    /// Name of the output struct.
    pub output: String,
}

impl CalculationModel {
    /// Whether it has a typed C function.
    pub fn is_typed(&self) -> bool {
        self.row.door == Door::Typed
    }
}

impl TypeDef {
    /// Name in the core.
    pub fn name(&self) -> &str {
        match self {
            TypeDef::Struct(def) => &def.name,
            TypeDef::Choice(def) => &def.name,
            TypeDef::Union(def) => &def.name,
        }
    }
}

impl Model {
    /// Reads the whole registry.
    pub fn of_registry() -> Self {
        let mut reader = Reader { types: Vec::new(), seen: HashSet::new() };
        let calculations = registry::calculations().map(|row| reader.calculation(row)).collect();
        Self { types: reader.types, calculations }
    }

    /// The type of a name.
    pub fn find(&self, name: &str) -> Option<&TypeDef> {
        self.types.iter().find(|def| def.name() == name)
    }

    /// The struct of a name.
    ///
    /// # Panics
    /// When there is none: calculations take and return structs.
    pub fn structure(&self, name: &str) -> &StructDef {
        match self.find(name) {
            Some(TypeDef::Struct(def)) => def,
            _ => panic!("{name} is no struct: a calculation takes and returns structs"),
        }
    }
}

struct Reader {
    types: Vec<TypeDef>,
    seen: HashSet<String>,
}

impl Reader {
    fn calculation(&mut self, row: &'static Calculation) -> CalculationModel {
        let input = self.root(row, (row.input_schema)().as_value(), Role::Input);
        let output = self.root(row, (row.output_schema)().as_value(), Role::Output);
        CalculationModel { row, input, output }
    }

    fn root(&mut self, row: &Calculation, schema: &Value, role: Role) -> String {
        let name = text(schema, "title");
        assert!(!name.is_empty(), "{}: a schema without a title", row.name);
        self.define(&name, schema, schema, role);
        name
    }

    /// Adds a type and, before it, all it uses.
    fn define(&mut self, name: &str, schema: &Value, root: &Value, role: Role) {
        if !self.seen.insert(name.to_owned()) {
            return;
        }
        let def = if let Some(choices) = schema.get("oneOf").and_then(Value::as_array) {
            self.choices(name, schema, choices, root, role)
        } else {
            TypeDef::Struct(self.structure(name, schema, root, role))
        };
        self.types.push(def);
    }

    fn structure(&mut self, name: &str, schema: &Value, root: &Value, role: Role) -> StructDef {
        let required: Vec<&str> =
            schema.get("required").and_then(Value::as_array).into_iter().flatten().filter_map(Value::as_str).collect();
        let properties = schema.get("properties").and_then(Value::as_object);
        let fields = properties.into_iter().flatten().map(|(field, property)| {
            let ty = self.ty(property, root, role);
            let required = required.contains(&field.as_str());
            // A list that is left out of the JSON when it is empty has no default in the schema.
            let skips_empty = !required && matches!(ty, Ty::List(_)) && property.get("default").is_none();
            let default = match (property.get("default"), &ty) {
                _ if required => None,
                (Some(value), _) => Some(value.clone()),
                (None, Ty::Optional(_)) => Some(Value::Null),
                (None, Ty::List(_)) => Some(Value::Array(Vec::new())),
                (None, _) => panic!("{name}.{field}: may be left out, and the schema does not say what it is then"),
            };
            Field {
                name: field.clone(),
                doc: text(property, "description"),
                ty,
                default,
                skips_empty,
                minimum: property.get("minimum").and_then(Value::as_f64),
                maximum: property.get("maximum").and_then(Value::as_f64),
            }
        });
        let fields = fields.collect();
        StructDef { name: name.to_owned(), doc: text(schema, "description"), fields, role }
    }

    fn choices(&mut self, name: &str, schema: &Value, choices: &[Value], root: &Value, role: Role) -> TypeDef {
        let (name, doc) = (name.to_owned(), text(schema, "description"));
        if choices.iter().all(|choice| choice.get("const").is_some()) {
            let variants = choices.iter().map(|c| Variant { text: text(c, "const"), doc: text(c, "description") });
            return TypeDef::Choice(ChoiceDef { name, doc, variants: variants.collect() });
        }
        let variants = choices.iter().map(|choice| {
            let properties = choice.get("properties").and_then(Value::as_object);
            let Some((label, content)) = properties.and_then(|fields| fields.iter().next()) else {
                panic!("{name}: every choice of an enumeration with data holds data");
            };
            let variant = Variant { text: label.clone(), doc: text(choice, "description") };
            (variant, self.ty(content, root, role))
        });
        let variants = variants.collect();
        TypeDef::Union(UnionDef { name, doc, variants, role })
    }

    fn ty(&mut self, schema: &Value, root: &Value, role: Role) -> Ty {
        if let Some(target) = schema.get("$ref").and_then(Value::as_str) {
            let name = target.trim_start_matches("#/$defs/");
            let found = root.get("$defs").and_then(|defs| defs.get(name));
            self.define(name, found.unwrap_or(&Value::Null), root, role);
            return Ty::Named(name.to_owned());
        }
        if let Some([inner, _null]) = schema.get("anyOf").and_then(Value::as_array).map(Vec::as_slice) {
            return Ty::Optional(Box::new(self.ty(inner, root, role)));
        }
        match schema.get("type") {
            Some(Value::Array(names)) => {
                let name = names.iter().filter_map(Value::as_str).find(|name| *name != "null").unwrap_or_default();
                Ty::Optional(Box::new(self.simple(name, schema, root, role)))
            }
            Some(Value::String(name)) => self.simple(name, schema, root, role),
            _ => panic!("a schema of an unknown form: {schema}"),
        }
    }

    fn simple(&mut self, name: &str, schema: &Value, root: &Value, role: Role) -> Ty {
        match name {
            "number" => Ty::Number,
            "integer" => Ty::Integer,
            "string" => Ty::Text,
            "array" => {
                let items = schema.get("items").map_or(Ty::Text, |items| self.ty(items, root, role));
                let least = schema.get("minItems").and_then(Value::as_u64);
                match (least, schema.get("maxItems").and_then(Value::as_u64)) {
                    (Some(low), Some(high)) if low == high => Ty::Array(Box::new(items), low as usize),
                    _ => Ty::List(Box::new(items)),
                }
            }
            _ => panic!("a schema of an unknown type: {schema}"),
        }
    }
}

fn text(schema: &Value, key: &str) -> String {
    schema.get(key).and_then(Value::as_str).unwrap_or_default().to_owned()
}
