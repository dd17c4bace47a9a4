//! How values cross: from Python arguments into fields, and between fields and the core.
//!
//! Flat calculations (numbers and choices only) cross field by field, which takes a few nanoseconds. Everything else
//! crosses as the canonical JSON of the registry: whatever a struct of the core looks like inside, the classes hold exactly
//! what every other door shows, and a fault comes with its path.

use std::fmt;

use beamcraft_core::error::{Detail, Error, ErrorCode, closest};
use beamcraft_core::registry;
use pyo3::exceptions::PyTypeError;
use pyo3::prelude::*;
use pyo3::types::{PyBool, PyByteArray, PyBytes, PyDict, PyString, PyTuple};
use pyo3::{Borrowed, BoundObject, PyClass};
use serde::Serialize;
use serde::ser::{Impossible, Serializer};
use serde_json::{Map, Value};

use crate::errors;
use crate::shown::{self, Record, Show};

/// A keyword argument: given or left out. An explicit `None` is given.
pub(crate) struct Arg<'a, 'py>(Option<Borrowed<'a, 'py, PyAny>>);

impl<'a, 'py> FromPyObject<'a, 'py> for Arg<'a, 'py> {
    type Error = PyErr;

    fn extract(value: Borrowed<'a, 'py, PyAny>) -> PyResult<Self> {
        Ok(Self(Some(value)))
    }
}

impl Arg<'_, '_> {
    /// The default of an argument that has one.
    pub(crate) fn left_out() -> Self {
        Self(None)
    }

    /// The value of a required argument.
    pub(crate) fn read<T: Cross>(self, field: &'static str) -> PyResult<T> {
        match self.0 {
            Some(value) => T::read(value, &Place::Field(field)),
            // The signature makes it required; this says the same in words, should a caller get round it.
            None => Err(PyTypeError::new_err(format!("{field}: missing"))),
        }
    }

    /// The value of an argument, or its default when it is left out.
    pub(crate) fn read_or<T: Cross>(self, field: &'static str, default: impl FnOnce() -> T) -> PyResult<T> {
        self.0.map_or_else(|| Ok(default()), |value| T::read(value, &Place::Field(field)))
    }
}

/// Where a value stands; written out only when it is refused.
pub(crate) enum Place<'a> {
    /// An argument.
    Field(&'static str),
    /// An item of a list.
    Item(&'a Place<'a>, usize),
}

impl fmt::Display for Place<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Place::Field(name) => f.write_str(name),
            Place::Item(list, k) => write!(f, "{list}[{k}]"),
        }
    }
}

/// `field: a number is needed, got str '5 in'`.
#[cold]
pub(crate) fn wrong_type(value: Borrowed<'_, '_, PyAny>, place: &Place<'_>, wanted: &str) -> PyErr {
    let shown = value.repr().map(|text| text.to_string_lossy().chars().take(60).collect::<String>());
    let shown = shown.unwrap_or_default();
    let kind = value.get_type().name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
    let place_text = place.to_string();
    let hint = if place_text.trim_end_matches(|c: char| "[]0123456789".contains(c)).ends_with("_mm")
        && value.is_instance_of::<PyString>()
    {
        "; parse_length() turns a length as text into millimetres"
    } else {
        ""
    };
    PyTypeError::new_err(format!("{place_text}: {wanted} is needed, got {kind} {shown}{hint}"))
}

/// A field type that is read from a Python value.
pub(crate) trait Cross: Sized {
    /// Reads a value.
    fn read(value: Borrowed<'_, '_, PyAny>, place: &Place<'_>) -> PyResult<Self>;
}

impl Cross for f64 {
    #[inline]
    fn read(value: Borrowed<'_, '_, PyAny>, place: &Place<'_>) -> PyResult<Self> {
        // A truth value is a number to Python, never to a person who means a measure.
        if value.is_instance_of::<PyBool>() {
            return Err(wrong_type(value, place, "a number"));
        }
        value.extract().map_err(|fault: PyErr| {
            if fault.is_instance_of::<PyTypeError>(value.py()) { wrong_type(value, place, "a number") } else { fault }
        })
    }
}

impl Cross for u32 {
    fn read(value: Borrowed<'_, '_, PyAny>, place: &Place<'_>) -> PyResult<Self> {
        const WANTED: &str = "a whole number";
        if value.is_instance_of::<PyBool>() {
            return Err(wrong_type(value, place, WANTED));
        }
        value.extract().map_err(|fault: PyErr| {
            let py = value.py();
            if fault.is_instance_of::<PyTypeError>(py) {
                return wrong_type(value, place, WANTED);
            }
            let given = value.str().map(|text| text.to_string_lossy().chars().take(60).collect()).unwrap_or_default();
            let allowed = format!("a whole number, 0 to {}", u32::MAX);
            errors::refuse(py, ErrorCode::OutOfRange, place.to_string(), given, allowed, String::new())
        })
    }
}

impl Cross for String {
    fn read(value: Borrowed<'_, '_, PyAny>, place: &Place<'_>) -> PyResult<Self> {
        text(value, place, "a text")
    }
}

/// The text of a `str`; one that UTF-8 cannot hold (a lone surrogate) is malformed.
fn text(value: Borrowed<'_, '_, PyAny>, place: &Place<'_>, wanted: &str) -> PyResult<String> {
    let py = value.py();
    let Ok(text) = value.cast::<PyString>() else { return Err(wrong_type(value, place, wanted)) };
    text.to_str().map(str::to_owned).map_err(|_| {
        let given = value.repr().map(|text| text.to_string_lossy().into_owned()).unwrap_or_default();
        errors::refuse(
            py,
            ErrorCode::Malformed,
            place.to_string(),
            given,
            "text that UTF-8 can hold".to_owned(),
            String::new(),
        )
    })
}

impl<T: Cross> Cross for Option<T> {
    fn read(value: Borrowed<'_, '_, PyAny>, place: &Place<'_>) -> PyResult<Self> {
        if value.is_none() { Ok(None) } else { T::read(value, place).map(Some) }
    }
}

impl<T: Cross> Cross for Vec<T> {
    fn read(value: Borrowed<'_, '_, PyAny>, place: &Place<'_>) -> PyResult<Self> {
        let text = value.is_instance_of::<PyString>()
            || value.is_instance_of::<PyBytes>()
            || value.is_instance_of::<PyByteArray>();
        let (false, false, Ok(items)) = (text, value.is_instance_of::<PyDict>(), value.try_iter()) else {
            return Err(wrong_type(value, place, "a list"));
        };
        items.enumerate().map(|(k, item)| T::read(item?.as_borrowed(), &Place::Item(place, k))).collect()
    }
}

/// A fixed number of items: a tuple in Python.
#[derive(Clone, Debug, PartialEq)]
#[allow(dead_code, reason = "which shapes the structs have decides whether it is needed")]
pub(crate) struct Fixed<T, const N: usize>(pub(crate) [T; N]);

impl<T: Cross, const N: usize> Cross for Fixed<T, N> {
    fn read(value: Borrowed<'_, '_, PyAny>, place: &Place<'_>) -> PyResult<Self> {
        let items = Vec::<T>::read(value, place)?;
        items.try_into().map(Self).map_err(|_| wrong_type(value, place, &format!("a tuple of {N} items")))
    }
}

impl<'py, T: Clone + IntoPyObject<'py>, const N: usize> IntoPyObject<'py> for Fixed<T, N> {
    type Target = PyTuple;
    type Output = Bound<'py, PyTuple>;
    type Error = PyErr;

    fn into_pyobject(self, py: Python<'py>) -> PyResult<Self::Output> {
        let items: PyResult<Vec<_>> = self
            .0
            .into_iter()
            .map(|item| item.into_pyobject(py).map_err(Into::into).map(|item| item.into_bound().into_any()))
            .collect();
        PyTuple::new(py, items?)
    }
}

impl<T: Record + PyClass<Frozen = pyo3::pyclass::boolean_struct::True> + Sync + Clone> Cross for T {
    fn read(value: Borrowed<'_, '_, PyAny>, place: &Place<'_>) -> PyResult<Self> {
        match value.cast::<T>() {
            Ok(found) => Ok(found.get().clone()),
            Err(_) => Err(wrong_type(value, place, <T as Record>::NAME)),
        }
    }
}

/// A choice among names: text in Python, checked against the list.
pub(crate) trait Choice: Sized + Copy {
    /// Every name.
    const NAMES: &'static [&'static str];
    /// The choice of one of the names.
    fn named(name: &'static str) -> Self;

    /// Reads a name.
    fn read_name(value: Borrowed<'_, '_, PyAny>, place: &Place<'_>) -> PyResult<Self> {
        let wanted = || format!("one of the names {}", Self::NAMES.join(", "));
        if !value.is_instance_of::<PyString>() {
            return Err(wrong_type(value, place, &wanted()));
        }
        let given = text(value, place, "")?;
        match Self::NAMES.iter().find(|name| **name == given) {
            Some(name) => Ok(Self::named(name)),
            None => {
                let cure = closest(&given, Self::NAMES.iter().copied());
                let cure = cure.map(|name| format!("did you mean {name}?")).unwrap_or_default();
                let (path, given, allowed) = (place.to_string(), format!("\"{given}\""), Self::NAMES.join(", "));
                Err(errors::refuse(value.py(), ErrorCode::UnknownName, path, given, allowed, cure))
            }
        }
    }
}

/// A field of a flat struct that is made from a value of the core.
pub(crate) trait OfCore<C> {
    /// The value of the core as a field.
    fn of_core(core: &C) -> Self;
}

/// A field of a flat struct that becomes a value of the core.
pub(crate) trait ToCore<C> {
    /// The field as a value of the core.
    fn to_core(&self) -> Result<C, Error>;
}

macro_rules! same {
    ($($ty:ty),+) => {
        $(impl OfCore<$ty> for $ty {
            #[inline]
            fn of_core(core: &$ty) -> Self { *core }
        }
        impl ToCore<$ty> for $ty {
            #[inline]
            fn to_core(&self) -> Result<$ty, Error> { Ok(*self) }
        })+
    };
}

same!(f64, u32);

impl<C, T: OfCore<C>> OfCore<Option<C>> for Option<T> {
    #[inline]
    fn of_core(core: &Option<C>) -> Self {
        core.as_ref().map(T::of_core)
    }
}

impl<C, T: ToCore<C>> ToCore<Option<C>> for Option<T> {
    #[inline]
    fn to_core(&self) -> Result<Option<C>, Error> {
        self.as_ref().map(T::to_core).transpose()
    }
}

/// Computes a flat calculation: fields to core, the call, core to fields.
///
/// The interpreter is not released: doing so takes longer than the call.
#[inline]
pub(crate) fn compute<I, O, C, R, E>(py: Python<'_>, input: &I, call: fn(&C) -> Result<R, E>) -> PyResult<O>
where
    I: ToCore<C>,
    O: OfCore<R>,
    Error: From<E>,
{
    let result = input.to_core().and_then(|core| errors::guarded(|| Ok(call(&core)?)));
    result.map(|found| O::of_core(&found)).map_err(|fault| errors::raise(py, &fault))
}

/// Computes any calculation by name, with the interpreter released.
pub(crate) fn compute_by_name<I, O>(py: Python<'_>, input: &I, name: &str) -> PyResult<O>
where
    I: Record + Show,
    O: OfJson + Send,
{
    compute_text(py, &shown::to_json(py, input)?, name)
}

/// Computes any calculation by name from JSON text, with the interpreter released.
pub(crate) fn compute_text<O: OfJson + Send>(py: Python<'_>, text: &str, name: &str) -> PyResult<O> {
    let result = py.detach(|| {
        let output = errors::guarded(|| registry::call(name, text))?;
        let value: Option<Value> = serde_json::from_str(&output).ok();
        value.as_ref().and_then(O::of_json).ok_or_else(|| not_of_this_class(&output))
    });
    result.map_err(|fault| errors::raise(py, &fault))
}

/// The classes and the schema they follow from do not belong together: a defect of the build.
#[cold]
fn not_of_this_class(output: &str) -> Error {
    Error::one(Detail {
        code: ErrorCode::NotRepresentable,
        path: String::new(),
        given: output.chars().take(200).collect(),
        allowed: "the fields of the class".to_owned(),
        cure: "a defect of this library; please report the input".to_owned(),
    })
}

/// A field type that is read from the canonical JSON of a result; nothing when it is of another kind.
pub(crate) trait OfJson: Sized {
    /// Reads a value.
    fn of_json(value: &Value) -> Option<Self>;

    /// The value of a field that is left out.
    fn left_out() -> Option<Self> {
        None
    }
}

/// The field `name` of an object.
pub(crate) fn field<T: OfJson>(fields: &Map<String, Value>, name: &str) -> Option<T> {
    fields.get(name).map_or_else(T::left_out, T::of_json)
}

/// The list `name` of an object, which is left out when it is empty.
#[allow(dead_code, reason = "which shapes the structs have decides whether it is needed")]
pub(crate) fn list<T: OfJson>(fields: &Map<String, Value>, name: &str) -> Option<Vec<T>> {
    fields.get(name).map_or_else(|| Some(Vec::new()), Vec::of_json)
}

impl OfJson for f64 {
    fn of_json(value: &Value) -> Option<Self> {
        value.as_f64()
    }
}

impl OfJson for u32 {
    fn of_json(value: &Value) -> Option<Self> {
        value.as_u64().and_then(|number| number.try_into().ok())
    }
}

impl OfJson for String {
    fn of_json(value: &Value) -> Option<Self> {
        value.as_str().map(str::to_owned)
    }
}

impl<T: OfJson> OfJson for Option<T> {
    fn of_json(value: &Value) -> Option<Self> {
        T::of_json(value).map(Some)
    }
    fn left_out() -> Option<Self> {
        Some(None)
    }
}

impl<T: OfJson> OfJson for Vec<T> {
    fn of_json(value: &Value) -> Option<Self> {
        value.as_array()?.iter().map(T::of_json).collect()
    }
}

impl<T: OfJson, const N: usize> OfJson for Fixed<T, N> {
    fn of_json(value: &Value) -> Option<Self> {
        Vec::of_json(value)?.try_into().ok().map(Self)
    }
}

/// The one choice of an externally tagged object, and its data.
pub(crate) fn tagged(value: &Value) -> Option<(&str, &Value)> {
    let fields = value.as_object()?;
    fields.iter().next().filter(|_| fields.len() == 1).map(|(name, content)| (name.as_str(), content))
}

/// Name of a choice of the core, as the JSON door writes it.
pub(crate) fn choice_name<T: Serialize>(choice: &T) -> &'static str {
    choice.serialize(NameOf).unwrap_or("")
}

/// A serializer that only takes the name of a choice without data; nothing is allocated.
struct NameOf;

#[derive(Debug)]
struct NoName;

impl fmt::Display for NoName {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("not a choice without data")
    }
}

impl std::error::Error for NoName {}

impl serde::ser::Error for NoName {
    fn custom<T: fmt::Display>(_: T) -> Self {
        NoName
    }
}

macro_rules! no_name {
    ($($method:ident($($ty:ty),*);)+) => {
        $(fn $method(self, $(_: $ty),*) -> Result<&'static str, NoName> { Err(NoName) })+
    };
}

type NoParts = Impossible<&'static str, NoName>;

impl Serializer for NameOf {
    type Ok = &'static str;
    type Error = NoName;
    type SerializeSeq = NoParts;
    type SerializeTuple = NoParts;
    type SerializeTupleStruct = NoParts;
    type SerializeTupleVariant = NoParts;
    type SerializeMap = NoParts;
    type SerializeStruct = NoParts;
    type SerializeStructVariant = NoParts;

    fn serialize_unit_variant(self, _: &'static str, _: u32, name: &'static str) -> Result<&'static str, NoName> {
        Ok(name)
    }

    no_name! {
        serialize_bool(bool);
        serialize_i8(i8);
        serialize_i16(i16);
        serialize_i32(i32);
        serialize_i64(i64);
        serialize_u8(u8);
        serialize_u16(u16);
        serialize_u32(u32);
        serialize_u64(u64);
        serialize_f32(f32);
        serialize_f64(f64);
        serialize_char(char);
        serialize_str(&str);
        serialize_bytes(&[u8]);
        serialize_none();
        serialize_unit();
        serialize_unit_struct(&'static str);
    }

    fn serialize_some<T: Serialize + ?Sized>(self, _: &T) -> Result<&'static str, NoName> {
        Err(NoName)
    }
    fn serialize_newtype_struct<T: Serialize + ?Sized>(self, _: &'static str, _: &T) -> Result<&'static str, NoName> {
        Err(NoName)
    }
    fn serialize_newtype_variant<T: Serialize + ?Sized>(
        self,
        _: &'static str,
        _: u32,
        _: &'static str,
        _: &T,
    ) -> Result<&'static str, NoName> {
        Err(NoName)
    }
    fn serialize_seq(self, _: Option<usize>) -> Result<NoParts, NoName> {
        Err(NoName)
    }
    fn serialize_tuple(self, _: usize) -> Result<NoParts, NoName> {
        Err(NoName)
    }
    fn serialize_tuple_struct(self, _: &'static str, _: usize) -> Result<NoParts, NoName> {
        Err(NoName)
    }
    fn serialize_tuple_variant(self, _: &'static str, _: u32, _: &'static str, _: usize) -> Result<NoParts, NoName> {
        Err(NoName)
    }
    fn serialize_map(self, _: Option<usize>) -> Result<NoParts, NoName> {
        Err(NoName)
    }
    fn serialize_struct(self, _: &'static str, _: usize) -> Result<NoParts, NoName> {
        Err(NoName)
    }
    fn serialize_struct_variant(self, _: &'static str, _: u32, _: &'static str, _: usize) -> Result<NoParts, NoName> {
        Err(NoName)
    }
}

/// The choice of the core that has a name.
pub(crate) fn choice_of<T: serde::de::DeserializeOwned>(name: &'static str) -> Result<T, Error> {
    use serde::de::IntoDeserializer;
    let found: Result<T, serde::de::value::Error> = T::deserialize(name.into_deserializer());
    found.map_err(|_| {
        Error::one(Detail {
            code: ErrorCode::UnknownName,
            path: String::new(),
            given: format!("\"{name}\""),
            allowed: String::new(),
            cure: String::new(),
        })
    })
}

/// A choice of the core as a field: a name of its list. With `flat`, one that also crosses without JSON.
macro_rules! choice {
    ($name:ident, [$($text:literal),+ $(,)?]) => {
        #[derive(Clone, Copy, Debug, PartialEq)]
        pub(crate) struct $name(&'static str);

        impl $crate::cross::Choice for $name {
            const NAMES: &'static [&'static str] = &[$($text),+];
            fn named(name: &'static str) -> Self { Self(name) }
        }
        impl $crate::cross::Cross for $name {
            fn read(value: pyo3::Borrowed<'_, '_, pyo3::PyAny>, place: &$crate::cross::Place<'_>) -> pyo3::PyResult<Self> {
                <Self as $crate::cross::Choice>::read_name(value, place)
            }
        }
        impl $crate::cross::OfJson for $name {
            fn of_json(value: &serde_json::Value) -> Option<Self> {
                let given = value.as_str()?;
                <Self as $crate::cross::Choice>::NAMES.iter().find(|name| **name == given).map(|name| Self(name))
            }
        }
        impl $crate::shown::Show for $name {
            fn show(&self) -> $crate::shown::Shown { $crate::shown::Shown::Text(self.0.to_owned()) }
        }
        impl<'py> pyo3::IntoPyObject<'py> for $name {
            type Target = pyo3::types::PyString;
            type Output = pyo3::Bound<'py, pyo3::types::PyString>;
            type Error = std::convert::Infallible;
            fn into_pyobject(self, py: pyo3::Python<'py>) -> Result<Self::Output, Self::Error> {
                Ok(pyo3::types::PyString::intern(py, self.0))
            }
        }
    };
    ($name:ident, flat, [$($text:literal),+ $(,)?]) => {
        $crate::cross::choice!($name, [$($text),+]);
        impl $crate::cross::OfCore<beamcraft_core::$name> for $name {
            fn of_core(core: &beamcraft_core::$name) -> Self { Self($crate::cross::choice_name(core)) }
        }
        impl $crate::cross::ToCore<beamcraft_core::$name> for $name {
            fn to_core(&self) -> Result<beamcraft_core::$name, beamcraft_core::error::Error> { $crate::cross::choice_of(self.0) }
        }
    };
    ($name:ident, flat_output, [$($text:literal),+ $(,)?]) => {
        $crate::cross::choice!($name, [$($text),+]);
        impl $crate::cross::OfCore<beamcraft_core::$name> for $name {
            fn of_core(core: &beamcraft_core::$name) -> Self { Self($crate::cross::choice_name(core)) }
        }
    };
}
pub(crate) use choice;
