//! One row: an input struct read out of the columns, an output struct written into them, by the derived readers and
//! writers of serde, field by field in their order. Neither looks up a name, and nothing is allocated.

use core::fmt;

use serde::de::value::U64Deserializer;
use serde::de::{
    DeserializeOwned, DeserializeSeed, Deserializer, EnumAccess, IntoDeserializer, MapAccess, VariantAccess, Visitor,
};
use serde::ser::{Impossible, Serialize, SerializeStruct, Serializer};

use super::ABSENT;
use super::chunk::{Chunk, Column, ColumnMut, at, set};
use crate::error::{Allowed, ErrorCode, Fault};

/// Works off the rows of a chunk with a calculation.
pub(crate) fn rows<I: DeserializeOwned, O: Serialize>(chunk: &mut Chunk<'_>, compute: fn(&I) -> Result<O, Fault>) {
    chunk.begin();
    for row in 0..chunk.rows {
        chunk.row(row, compute);
    }
}

impl Chunk<'_> {
    /// The input of the first row, for the defaults of what is left out; nothing when that row cannot be read.
    pub(crate) fn default_of<I: DeserializeOwned>(&self) -> Option<I> {
        I::deserialize(Reader { inputs: self.inputs, row: self.start }).ok()
    }

    /// Computes one row of the run.
    pub(super) fn row<I: DeserializeOwned, O: Serialize>(&mut self, row: usize, compute: fn(&I) -> Result<O, Fault>) {
        let read = I::deserialize(Reader { inputs: self.inputs, row: self.start + row });
        let result = read.map_err(|fault| fault.0).and_then(|input| compute(&input)).and_then(|output| {
            output.serialize(Writer { outputs: &mut self.outputs, row, place: 0 }).map_err(|fault| fault.0)
        });
        if let Err(fault) = result {
            self.refuse(row, fault);
        }
    }
}

/// Why a row cannot be read or written.
#[derive(Debug)]
struct RowFault(Fault);

impl fmt::Display for RowFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

impl core::error::Error for RowFault {}

/// The columns are checked against the schemas before the first row: what serde itself refuses is a defect.
const FITTING: &str = "columns that fit the fields";

impl serde::de::Error for RowFault {
    #[cold]
    fn custom<T: fmt::Display>(_: T) -> Self {
        Self(Fault::plain(ErrorCode::WrongType, "", FITTING, ""))
    }
}

impl serde::ser::Error for RowFault {
    #[cold]
    fn custom<T: fmt::Display>(_: T) -> Self {
        Self(Fault::plain(ErrorCode::WrongType, "", FITTING, ""))
    }
}

#[cold]
fn misfit<T>() -> Result<T, RowFault> {
    Err(RowFault(Fault::plain(ErrorCode::WrongType, "", FITTING, "")))
}

/// Reads a struct out of a row.
struct Reader<'a> {
    inputs: &'a [Option<Column<'a>>],
    row: usize,
}

impl<'de> Deserializer<'de> for Reader<'_> {
    type Error = RowFault;

    fn deserialize_any<V: Visitor<'de>>(self, _: V) -> Result<V::Value, RowFault> {
        misfit()
    }

    #[inline]
    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        names: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, RowFault> {
        visitor.visit_map(Fields { inputs: self.inputs, names, row: self.row, place: 0 })
    }

    serde::forward_to_deserialize_any! {
        bool i8 i16 i32 i64 u8 u16 u32 u64 f32 f64 char str string bytes byte_buf option unit unit_struct newtype_struct
        seq tuple tuple_struct map enum identifier ignored_any
    }
}

/// The fields of a row that have a column, by their place.
struct Fields<'a> {
    inputs: &'a [Option<Column<'a>>],
    names: &'static [&'static str],
    row: usize,
    place: usize,
}

impl<'de> MapAccess<'de> for Fields<'_> {
    type Error = RowFault;

    #[inline]
    fn next_key_seed<K: DeserializeSeed<'de>>(&mut self, seed: K) -> Result<Option<K::Value>, RowFault> {
        while let Some(None) = self.inputs.get(self.place) {
            self.place += 1;
        }
        if self.place >= self.inputs.len() {
            return Ok(None);
        }
        let place: U64Deserializer<RowFault> = (self.place as u64).into_deserializer();
        seed.deserialize(place).map(Some)
    }

    #[inline]
    fn next_value_seed<V: DeserializeSeed<'de>>(&mut self, seed: V) -> Result<V::Value, RowFault> {
        let Some(Some(column)) = self.inputs.get(self.place) else { return misfit() };
        let name = self.names.get(self.place).copied().unwrap_or_default();
        self.place += 1;
        seed.deserialize(match column {
            Column::Numbers(values) => Cell::Number(at(values, self.row).unwrap_or(f64::NAN)),
            Column::Codes(values) => Cell::Code(at(values, self.row).unwrap_or(ABSENT), name),
        })
    }
}

/// One value of a row, and of a code the field that it belongs to.
enum Cell {
    Number(f64),
    Code(u32, &'static str),
}

impl<'de> Deserializer<'de> for Cell {
    type Error = RowFault;

    #[inline]
    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, RowFault> {
        match self {
            Cell::Number(value) => visitor.visit_f64(value),
            Cell::Code(value, _) => visitor.visit_u32(value),
        }
    }

    #[inline]
    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, RowFault> {
        match self {
            Cell::Number(value) if value.is_nan() => visitor.visit_none(),
            Cell::Code(ABSENT, _) => visitor.visit_none(),
            _ => visitor.visit_some(self),
        }
    }

    #[inline]
    fn deserialize_enum<V: Visitor<'de>>(
        self,
        _: &'static str,
        choices: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, RowFault> {
        match self {
            Cell::Code(code, _) if (code as usize) < choices.len() => visitor.visit_enum(Code(code)),
            Cell::Code(code, name) => Err(RowFault(unknown_code(name, code, choices.len()))),
            Cell::Number(_) => misfit(),
        }
    }

    serde::forward_to_deserialize_any! {
        bool i8 i16 i32 i64 u8 u16 u32 u64 f32 f64 char str string bytes byte_buf unit unit_struct newtype_struct
        seq tuple tuple_struct map struct identifier ignored_any
    }
}

#[cold]
fn unknown_code(name: &'static str, code: u32, choices: usize) -> Fault {
    let allowed = Allowed::Range { low: 0.0, high: choices.saturating_sub(1) as f64, unit: "" };
    Fault::number(
        ErrorCode::UnknownChoice,
        name,
        f64::from(code),
        allowed,
        "the code of a choice is its place in the list",
    )
}

/// A choice by its place.
struct Code(u32);

impl<'de> EnumAccess<'de> for Code {
    type Error = RowFault;
    type Variant = Self;

    #[inline]
    fn variant_seed<V: DeserializeSeed<'de>>(self, seed: V) -> Result<(V::Value, Self), RowFault> {
        let place: U64Deserializer<RowFault> = u64::from(self.0).into_deserializer();
        Ok((seed.deserialize(place)?, self))
    }
}

impl<'de> VariantAccess<'de> for Code {
    type Error = RowFault;

    #[inline]
    fn unit_variant(self) -> Result<(), RowFault> {
        Ok(())
    }
    fn newtype_variant_seed<T: DeserializeSeed<'de>>(self, _: T) -> Result<T::Value, RowFault> {
        misfit()
    }
    fn tuple_variant<V: Visitor<'de>>(self, _: usize, _: V) -> Result<V::Value, RowFault> {
        misfit()
    }
    fn struct_variant<V: Visitor<'de>>(self, _: &'static [&'static str], _: V) -> Result<V::Value, RowFault> {
        misfit()
    }
}

/// Writes a struct into a row of the run.
struct Writer<'w, 'a> {
    outputs: &'w mut [Option<ColumnMut<'a>>],
    row: usize,
    place: usize,
}

impl SerializeStruct for Writer<'_, '_> {
    type Ok = ();
    type Error = RowFault;

    #[inline]
    fn serialize_field<T: ?Sized + Serialize>(&mut self, name: &'static str, value: &T) -> Result<(), RowFault> {
        if let Some(Some(column)) = self.outputs.get_mut(self.place) {
            value.serialize(CellMut { column, row: self.row, name })?;
        }
        self.place += 1;
        Ok(())
    }

    #[inline]
    fn skip_field(&mut self, name: &'static str) -> Result<(), RowFault> {
        self.serialize_field(name, &None::<()>)
    }

    #[inline]
    fn end(self) -> Result<(), RowFault> {
        Ok(())
    }
}

/// Place of one value of a row.
struct CellMut<'w, 'a> {
    column: &'w mut ColumnMut<'a>,
    row: usize,
    name: &'static str,
}

type NoParts = Impossible<(), RowFault>;

/// Methods of shapes that no flat struct has.
macro_rules! no_shape {
    ($($method:ident($($ty:ty),*) -> $result:ty;)+) => {
        $(fn $method(self, $(_: $ty),*) -> Result<$result, RowFault> { misfit() })+
    };
}

/// What neither a whole output nor a field of it can be.
macro_rules! no_parts {
    () => {
        type SerializeSeq = NoParts;
        type SerializeTuple = NoParts;
        type SerializeTupleStruct = NoParts;
        type SerializeTupleVariant = NoParts;
        type SerializeMap = NoParts;
        type SerializeStructVariant = NoParts;

        no_shape! {
            serialize_bool(bool) -> ();
            serialize_i8(i8) -> ();
            serialize_i16(i16) -> ();
            serialize_i32(i32) -> ();
            serialize_i64(i64) -> ();
            serialize_u8(u8) -> ();
            serialize_u16(u16) -> ();
            serialize_u64(u64) -> ();
            serialize_f32(f32) -> ();
            serialize_char(char) -> ();
            serialize_str(&str) -> ();
            serialize_bytes(&[u8]) -> ();
            serialize_unit() -> ();
            serialize_unit_struct(&'static str) -> ();
            serialize_seq(Option<usize>) -> NoParts;
            serialize_tuple(usize) -> NoParts;
            serialize_tuple_struct(&'static str, usize) -> NoParts;
            serialize_tuple_variant(&'static str, u32, &'static str, usize) -> NoParts;
            serialize_map(Option<usize>) -> NoParts;
            serialize_struct_variant(&'static str, u32, &'static str, usize) -> NoParts;
        }

        fn serialize_newtype_struct<T: ?Sized + Serialize>(self, _: &'static str, _: &T) -> Result<(), RowFault> {
            misfit()
        }
        fn serialize_newtype_variant<T: ?Sized + Serialize>(
            self,
            _: &'static str,
            _: u32,
            _: &'static str,
            _: &T,
        ) -> Result<(), RowFault> {
            misfit()
        }
    };
}

impl Serializer for Writer<'_, '_> {
    type Ok = ();
    type Error = RowFault;
    type SerializeStruct = Self;

    #[inline]
    fn serialize_struct(self, _: &'static str, _: usize) -> Result<Self, RowFault> {
        Ok(self)
    }

    no_parts!();

    no_shape! {
        serialize_u32(u32) -> ();
        serialize_f64(f64) -> ();
        serialize_none() -> ();
        serialize_unit_variant(&'static str, u32, &'static str) -> ();
    }

    fn serialize_some<T: ?Sized + Serialize>(self, _: &T) -> Result<(), RowFault> {
        misfit()
    }
}

impl Serializer for CellMut<'_, '_> {
    type Ok = ();
    type Error = RowFault;
    type SerializeStruct = NoParts;

    #[inline]
    fn serialize_f64(self, value: f64) -> Result<(), RowFault> {
        let ColumnMut::Numbers(values) = self.column else { return misfit() };
        if !value.is_finite() {
            let (allowed, cure) = ("finite numbers", "a defect of this library; please report the input");
            return Err(RowFault(Fault::plain(ErrorCode::NotRepresentable, self.name, allowed, cure)));
        }
        set(values, self.row, value);
        Ok(())
    }

    #[inline]
    fn serialize_u32(self, value: u32) -> Result<(), RowFault> {
        let ColumnMut::Codes(values) = self.column else { return misfit() };
        set(values, self.row, value);
        Ok(())
    }

    #[inline]
    fn serialize_unit_variant(self, _: &'static str, code: u32, _: &'static str) -> Result<(), RowFault> {
        self.serialize_u32(code)
    }

    #[inline]
    fn serialize_none(self) -> Result<(), RowFault> {
        match self.column {
            ColumnMut::Numbers(values) => set(values, self.row, f64::NAN),
            ColumnMut::Codes(values) => set(values, self.row, ABSENT),
        }
        Ok(())
    }

    #[inline]
    fn serialize_some<T: ?Sized + Serialize>(self, value: &T) -> Result<(), RowFault> {
        value.serialize(self)
    }

    fn serialize_struct(self, _: &'static str, _: usize) -> Result<NoParts, RowFault> {
        misfit()
    }

    no_parts!();
}
