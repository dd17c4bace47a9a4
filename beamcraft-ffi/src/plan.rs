//! The plan handle: one spec in, the whole job out.

use core::ffi::c_char;
use std::sync::OnceLock;

use beamcraft_core::error::Error;
use beamcraft_core::export;
use beamcraft_core::json;
use beamcraft_core::plan::{BeamSpec, Plan, plan};
use beamcraft_core::shell::Panel;

use crate::error::beamcraft_error;
use crate::guard::{Failure, guard};
use crate::handle::{Handle, value, words};
use crate::panel::Panelled;
use crate::pointer::{Place, text};
use crate::status::beamcraft_status;

/// A whole job: panels, saw settings, cleat, checks, findings. Never changes, so that any number of threads may read it
/// at once.
pub struct beamcraft_plan {
    pub(crate) plan: Plan,
    json: OnceLock<Result<String, Error>>,
}

const _: () = {
    const fn shared_by_threads<T: Send + Sync>() {}
    shared_by_threads::<beamcraft_plan>();
};

impl Handle for beamcraft_plan {
    const NAME: &'static str = "plan";
}

impl beamcraft_plan {
    fn json(&self) -> Result<&str, Failure> {
        self.json.get_or_init(|| json::write(&self.plan)).as_deref().map_err(|error| error.clone().into())
    }
}

impl Panelled for beamcraft_plan {
    const BELOW_PANEL_COUNT: &'static str = "below beamcraft_plan_panel_count";
    const BELOW_PIECE_COUNT: &'static str = "below beamcraft_plan_piece_count";

    fn name(&self) -> &str {
        &self.plan.spec.name
    }

    fn panels(&self) -> &[Panel] {
        &self.plan.panels
    }

    fn drawing_names(&self) -> Vec<String> {
        export::drawing_names(&self.plan)
    }

    fn drawing_svg(&self, name: &str) -> Result<String, Error> {
        export::plan_drawing_svg(&self.plan, name)
    }
}

/// Plans a whole job from a spec in JSON, the document that starts with "beamcraft_spec": 1. A job that does not work
/// is planned all the same, and its findings say why; only a spec that cannot be read or contradicts itself is refused,
/// with every fault.
///
/// # Safety
/// `spec` is NULL or points to `spec_length` bytes; `out_plan` is NULL or writable; NULL is refused. `out_error` is NULL
/// or writable. The plan belongs to the caller and goes back to beamcraft_plan_free.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_new(
    spec: *const c_char,
    spec_length: usize,
    out_plan: *mut *mut beamcraft_plan,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let body = || {
        // SAFETY: the contract of this function.
        let spec = unsafe { text(spec, spec_length, "spec", "spec_length") }?;
        let place = Place::new(out_plan, "out_plan")?;
        let spec: BeamSpec = json::read(spec)?;
        let made = beamcraft_plan { plan: plan(&spec)?, json: OnceLock::new() };
        // SAFETY: the contract of this function.
        unsafe { place.write(Box::into_raw(Box::new(made))) };
        Ok(())
    };
    // SAFETY: the contract of this function.
    unsafe { guard(out_error, body) }
}

/// Frees a plan. NULL is allowed and does nothing.
///
/// # Safety
/// `plan` is NULL, or came out of this library and was not freed before; nobody uses it any more.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_free(plan: *mut beamcraft_plan) {
    if !plan.is_null() {
        // SAFETY: made by `Box::into_raw` and not freed before, by the contract.
        let object = unsafe { Box::from_raw(plan) };
        // Plain data: dropping it cannot panic.
        drop(object);
    }
}

/// The whole plan as JSON, byte for byte what beamcraft_call_json gives for "plan" and the same spec.
///
/// # Safety
/// `plan` is NULL or a live plan; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_json(
    plan: *const beamcraft_plan,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe { words(plan, buffer, capacity, out_needed, out_error, |object| object.json().map(str::to_owned)) }
}

/// Cross section of the body as it hangs, as an SVG drawing (UTF-8) at a stated scale.
///
/// # Safety
/// `plan` is NULL or a live plan; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_section_svg(
    plan: *const beamcraft_plan,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe { words(plan, buffer, capacity, out_needed, out_error, |object| Ok(export::section_svg(&object.plan))) }
}

/// The whole plan as one HTML page (UTF-8) that needs nothing else: findings, drawing, panels, cuts, checks, cautions.
///
/// # Safety
/// `plan` is NULL or a live plan; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_report_html(
    plan: *const beamcraft_plan,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe { words(plan, buffer, capacity, out_needed, out_error, |object| Ok(export::report_html(&object.plan))) }
}

/// Mass of what is lifted: panels, frame pieces and the beam's half of the cleat, kg; finish, glue and screws are left
/// out. Lift and hang with a second person.
///
/// # Safety
/// `plan` is NULL or a live plan; `out_mass_kg` is NULL or writable; NULL is refused; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_mass_kg(
    plan: *const beamcraft_plan,
    out_mass_kg: *mut f64,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe { value(plan, out_mass_kg, "out_mass_kg", out_error, |object| Ok(object.plan.mass.lifted_kg)) }
}

/// Centre of gravity of what is lifted: three numbers, from the left end of the front, from the front face and from the
/// underside, mm.
///
/// # Safety
/// `plan` is NULL or a live plan; `out_centre_mm` is NULL or has room for three numbers; NULL is refused; `out_error` is
/// NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_centre_mm(
    plan: *const beamcraft_plan,
    out_centre_mm: *mut f64,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let out = out_centre_mm.cast::<[f64; 3]>();
    // SAFETY: the same contract.
    unsafe { value(plan, out, "out_centre_mm", out_error, |object| Ok(object.plan.mass.centre_mm)) }
}
