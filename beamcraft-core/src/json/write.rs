//! The canonical writer.

use std::io;

use serde::Serialize;
use serde_json::ser::{CompactFormatter, Formatter, PrettyFormatter, Serializer};

use super::number::format_number;
use crate::error::{Detail, Error, ErrorCode, Result};

/// Canonical JSON text of a value: no spaces, fields in declaration order, numbers by [`format_number`].
///
/// Absent optional values are left out, so `null` never stands for one.
///
/// # Errors
/// `not_representable` when the value holds a number that is not finite: JSON has no text for it, and `null` in its
/// place would lose it in silence.
pub fn write<T: Serialize>(value: &T) -> Result<String> {
    write_with(CompactFormatter, value)
}

/// The same text with line breaks and indentation, for people.
///
/// # Errors
/// As [`write()`].
pub fn write_pretty<T: Serialize>(value: &T) -> Result<String> {
    write_with(PrettyFormatter::new(), value)
}

fn write_with<F: Formatter, T: Serialize>(layout: F, value: &T) -> Result<String> {
    let mut bytes = Vec::new();
    value.serialize(&mut Serializer::with_formatter(&mut bytes, Canonical(layout))).map_err(|fault| refuse(&fault))?;
    String::from_utf8(bytes).map_err(|fault| refuse(&fault))
}

#[cold]
fn refuse(fault: &dyn core::fmt::Display) -> Error {
    Error::one(Detail {
        code: ErrorCode::NotRepresentable,
        path: String::new(),
        given: fault.to_string(),
        allowed: "finite numbers".to_owned(),
        cure: "a defect of this library; please report the input".to_owned(),
    })
}

/// A layout whose numbers and nulls are ours.
struct Canonical<F>(F);

impl<F: Formatter> Formatter for Canonical<F> {
    fn write_f64<W: ?Sized + io::Write>(&mut self, writer: &mut W, value: f64) -> io::Result<()> {
        writer.write_all(format_number(value).as_bytes())
    }

    fn write_null<W: ?Sized + io::Write>(&mut self, _: &mut W) -> io::Result<()> {
        // serde_json turns a number that is not finite into null; an absent option is left out before it gets here.
        Err(io::Error::other("a number that is not finite"))
    }

    fn begin_array<W: ?Sized + io::Write>(&mut self, writer: &mut W) -> io::Result<()> {
        self.0.begin_array(writer)
    }
    fn end_array<W: ?Sized + io::Write>(&mut self, writer: &mut W) -> io::Result<()> {
        self.0.end_array(writer)
    }
    fn begin_array_value<W: ?Sized + io::Write>(&mut self, writer: &mut W, first: bool) -> io::Result<()> {
        self.0.begin_array_value(writer, first)
    }
    fn end_array_value<W: ?Sized + io::Write>(&mut self, writer: &mut W) -> io::Result<()> {
        self.0.end_array_value(writer)
    }
    fn begin_object<W: ?Sized + io::Write>(&mut self, writer: &mut W) -> io::Result<()> {
        self.0.begin_object(writer)
    }
    fn end_object<W: ?Sized + io::Write>(&mut self, writer: &mut W) -> io::Result<()> {
        self.0.end_object(writer)
    }
    fn begin_object_key<W: ?Sized + io::Write>(&mut self, writer: &mut W, first: bool) -> io::Result<()> {
        self.0.begin_object_key(writer, first)
    }
    fn end_object_key<W: ?Sized + io::Write>(&mut self, writer: &mut W) -> io::Result<()> {
        self.0.end_object_key(writer)
    }
    fn begin_object_value<W: ?Sized + io::Write>(&mut self, writer: &mut W) -> io::Result<()> {
        self.0.begin_object_value(writer)
    }
    fn end_object_value<W: ?Sized + io::Write>(&mut self, writer: &mut W) -> io::Result<()> {
        self.0.end_object_value(writer)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_that_are_not_finite_are_refused_not_nulled() {
        for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            assert_eq!(write(&[1.0, value]).expect_err("refused").code(), ErrorCode::NotRepresentable);
        }
        assert_eq!(write(&[1.0, 0.25]).expect("finite"), "[1.0,0.25]");
        assert_eq!(write_pretty(&[1.0]).expect("finite"), "[\n  1.0\n]");
    }
}
