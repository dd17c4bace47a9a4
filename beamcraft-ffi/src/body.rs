//! The body handle: a hollow body of any form with its panels, their cuts, its files and drawings.

use core::ffi::c_char;
use std::sync::OnceLock;

use beamcraft_core::error::Error;
use beamcraft_core::export;
use beamcraft_core::json;
use beamcraft_core::plan::{SawnBody, SawnBodyInput, sawn_body};
use beamcraft_core::shell::Panel;

use crate::error::beamcraft_error;
use crate::guard::{Failure, guard};
use crate::handle::{Handle, words};
use crate::panel::Panelled;
use crate::pointer::{Place, text};
use crate::status::beamcraft_status;

/// A hollow body of any form with its panels and their cuts. Never changes, so that any number of threads may read it at
/// once.
pub struct beamcraft_body {
    body: SawnBody,
    json: OnceLock<Result<String, Error>>,
}

const _: () = {
    const fn shared_by_threads<T: Send + Sync>() {}
    shared_by_threads::<beamcraft_body>();
};

impl Handle for beamcraft_body {
    const NAME: &'static str = "body";
}

impl beamcraft_body {
    fn json(&self) -> Result<&str, Failure> {
        self.json.get_or_init(|| json::write(&self.body)).as_deref().map_err(|error| error.clone().into())
    }
}

impl Panelled for beamcraft_body {
    const BELOW_PANEL_COUNT: &'static str = "below beamcraft_body_panel_count";
    const BELOW_PIECE_COUNT: &'static str = "below beamcraft_body_piece_count";

    fn name(&self) -> &str {
        &self.body.spec.name
    }

    fn panels(&self) -> &[Panel] {
        &self.body.panels
    }

    fn drawing_names(&self) -> Vec<String> {
        export::drawing_names(&self.body)
    }

    fn drawing_svg(&self, name: &str) -> Result<String, Error> {
        export::body_drawing_svg(&self.body, name)
    }
}

/// Makes a body of any form with the cuts of its panels from JSON: the input of "sawn_body". What the saw does not reach
/// is a finding in its JSON; only an input that cannot be read or describes no body is refused, with every fault.
///
/// # Safety
/// `spec` is NULL or points to `spec_length` bytes; `out_body` is NULL or writable; NULL is refused. `out_error` is NULL
/// or writable. The body belongs to the caller and goes back to beamcraft_body_free.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_body_new(
    spec: *const c_char,
    spec_length: usize,
    out_body: *mut *mut beamcraft_body,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let make = || {
        // SAFETY: the contract of this function.
        let spec = unsafe { text(spec, spec_length, "spec", "spec_length") }?;
        let place = Place::new(out_body, "out_body")?;
        let spec: SawnBodyInput = json::read(spec)?;
        let made = beamcraft_body { body: sawn_body(&spec)?, json: OnceLock::new() };
        // SAFETY: the contract of this function.
        unsafe { place.write(Box::into_raw(Box::new(made))) };
        Ok(())
    };
    // SAFETY: the contract of this function.
    unsafe { guard(out_error, make) }
}

/// Frees a body. NULL is allowed and does nothing.
///
/// # Safety
/// `body` is NULL, or came out of this library and was not freed before; nobody uses it any more.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_body_free(body: *mut beamcraft_body) {
    if !body.is_null() {
        // SAFETY: made by `Box::into_raw` and not freed before, by the contract.
        let object = unsafe { Box::from_raw(body) };
        // Plain data: dropping it cannot panic.
        drop(object);
    }
}

/// The body with its panels, cuts, findings and cautions as JSON, byte for byte what beamcraft_call_json gives for
/// "sawn_body" and the same input.
///
/// # Safety
/// `body` is NULL or a live body; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_body_json(
    body: *const beamcraft_body,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe { words(body, buffer, capacity, out_needed, out_error, |object| object.json().map(str::to_owned)) }
}
