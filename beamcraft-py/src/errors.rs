//! Errors of the core as Python exceptions.
//!
//! The exception classes are written in Python (`beamcraft/_errors.py`), so that they pickle, subclass and document
//! themselves as exceptions do; here a core error becomes one.

use std::panic::{AssertUnwindSafe, catch_unwind};

use beamcraft_core::error::{Detail, Error, ErrorCode, Result};
use pyo3::prelude::*;
use pyo3::sync::PyOnceLock;

/// `beamcraft._errors.error_of`, looked up once.
static ERROR_OF: PyOnceLock<Py<PyAny>> = PyOnceLock::new();

/// The exception of a core error.
#[cold]
pub(crate) fn raise(py: Python<'_>, error: &Error) -> PyErr {
    exception(py, error).map_or_else(|fault| fault, PyErr::from_value)
}

fn exception<'py>(py: Python<'py>, error: &Error) -> PyResult<Bound<'py, PyAny>> {
    let error_of = ERROR_OF.import(py, "beamcraft._errors", "error_of")?;
    let faults: Vec<_> = error
        .details()
        .iter()
        .map(|fault| {
            let Detail { code, path, given, allowed, cure } = fault;
            (
                *code as u32,
                code.name(),
                path.as_str(),
                given.as_str(),
                allowed.as_str(),
                cure.as_str(),
                fault.to_string(),
            )
        })
        .collect();
    error_of.call1((faults,))
}

/// An exception of one fault of this door.
#[cold]
pub(crate) fn refuse(
    py: Python<'_>,
    code: ErrorCode,
    path: String,
    given: String,
    allowed: String,
    cure: String,
) -> PyErr {
    raise(py, &Error::one(Detail { code, path, given, allowed, cure }))
}

/// Runs a call of the core; a panic becomes an error instead of unwinding into the interpreter.
pub(crate) fn guarded<T>(call: impl FnOnce() -> Result<T>) -> Result<T> {
    catch_unwind(AssertUnwindSafe(call)).unwrap_or_else(|_| {
        Err(Error::one(Detail {
            code: ErrorCode::Panic,
            path: String::new(),
            given: String::new(),
            allowed: String::new(),
            cure: "please report the input".to_owned(),
        }))
    })
}
