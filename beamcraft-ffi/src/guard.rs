//! The guard that every entry passes: a panic becomes a status, a refusal becomes a status and, if wanted, an error
//! object.

use std::panic::{AssertUnwindSafe, catch_unwind};

use beamcraft_core::error::{Detail, Error, ErrorCode, Fault};

use crate::error::beamcraft_error;
use crate::status::{BEAMCRAFT_OK, beamcraft_status};

/// Why a call is refused. A fault allocates nothing until the caller asks for an error object.
pub(crate) enum Failure {
    /// One fault.
    Fault(Fault),
    /// One or more faults with their paths.
    Error(Error),
}

impl From<Fault> for Failure {
    fn from(fault: Fault) -> Self {
        Self::Fault(fault)
    }
}

impl From<Error> for Failure {
    fn from(error: Error) -> Self {
        Self::Error(error)
    }
}

impl Failure {
    fn code(&self) -> ErrorCode {
        match self {
            Failure::Fault(fault) => fault.code,
            Failure::Error(error) => error.code(),
        }
    }

    fn into_error(self) -> Error {
        match self {
            Failure::Fault(fault) => fault.into(),
            Failure::Error(error) => error,
        }
    }
}

/// Runs `body`; on failure stores an error object for the caller.
///
/// # Safety
/// `out_error` is NULL or writable.
pub(crate) unsafe fn guard(
    out_error: *mut *mut beamcraft_error,
    body: impl FnOnce() -> Result<(), Failure>,
) -> beamcraft_status {
    let failure = match catch_unwind(AssertUnwindSafe(body)) {
        Ok(Ok(())) => None,
        Ok(Err(failure)) => Some(failure),
        Err(payload) => {
            // What was thrown may itself panic while it is dropped.
            let dropped = catch_unwind(AssertUnwindSafe(move || drop(payload)));
            core::mem::forget(dropped);
            Some(Failure::Error(Error::one(Detail {
                code: ErrorCode::Panic,
                path: String::new(),
                given: String::new(),
                allowed: String::new(),
                cure: "a defect of this library; please report the input".to_owned(),
            })))
        }
    };
    let status = failure.as_ref().map_or(BEAMCRAFT_OK, |failure| failure.code() as u32);
    if !out_error.is_null() {
        let object = match failure {
            Some(failure) => Box::into_raw(Box::new(beamcraft_error::new(failure.into_error()))),
            None => core::ptr::null_mut(),
        };
        // SAFETY: not NULL, and writable by the contract of this function.
        unsafe { out_error.write(object) };
    }
    status
}

/// Runs `body` for a function that has no error object.
pub(crate) fn guard_plain(body: impl FnOnce() -> Result<(), Failure>) -> beamcraft_status {
    // SAFETY: NULL is allowed.
    unsafe { guard(core::ptr::null_mut(), body) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::error::{beamcraft_error_count, beamcraft_error_free};

    #[test]
    fn a_panic_becomes_a_status_and_an_error_object() {
        let mut object = core::ptr::null_mut();
        // SAFETY: `object` is writable.
        let status = unsafe { guard(&raw mut object, || panic!("on purpose")) };
        assert_eq!(status, ErrorCode::Panic as u32);
        // SAFETY: a live error object.
        assert_eq!(unsafe { beamcraft_error_count(object) }, 1);
        // SAFETY: freed once.
        unsafe { beamcraft_error_free(object) };
    }

    #[test]
    fn a_panic_whose_payload_panics_in_turn_stays_inside() {
        struct Spiteful;
        impl Drop for Spiteful {
            fn drop(&mut self) {
                panic!("while dropped");
            }
        }
        let status = guard_plain(|| std::panic::panic_any(Spiteful));
        assert_eq!(status, ErrorCode::Panic as u32);
    }

    #[test]
    fn success_clears_what_the_caller_left_in_the_error_pointer() {
        let mut object = core::ptr::without_provenance_mut(8);
        // SAFETY: `object` is writable.
        assert_eq!(unsafe { guard(&raw mut object, || Ok(())) }, BEAMCRAFT_OK);
        assert!(object.is_null());
    }
}
