//! Drawings of a plan by name, and the wood of its panels as triangles.

use core::ffi::c_char;

use beamcraft_core::export;

use crate::error::beamcraft_error;
use crate::panel::numbers;
use crate::plan::{at, beamcraft_plan, items, value, words};
use crate::pointer::text;
use crate::status::beamcraft_status;

/// How many drawings of a plan there are.
///
/// # Safety
/// `plan` is NULL or a live plan; `out_count` is NULL or writable; NULL is refused; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_drawing_count(
    plan: *const beamcraft_plan,
    out_count: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_plan| Ok(export::drawing_names(&object.plan).len());
    // SAFETY: the same contract.
    unsafe { value(plan, out_count, "out_count", out_error, of) }
}

/// Name of a drawing: "section", "exploded", and for every panel such as "front" the sheet "panel_front" and the sketches
/// of the saw "set_ups_front", with "_1", "_2" behind them where they take more than one sheet. `drawing` counts from 0.
///
/// # Safety
/// `plan` is NULL or a live plan; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_drawing_name(
    plan: *const beamcraft_plan,
    drawing: usize,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_plan| {
        let names = export::drawing_names(&object.plan);
        Ok(at(&names, drawing, "drawing", "below beamcraft_plan_drawing_count")?.clone())
    };
    // SAFETY: the same contract.
    unsafe { words(plan, buffer, capacity, out_needed, out_error, of) }
}

/// A drawing by its name as SVG (UTF-8), a sheet of paper with its size in millimetres. A name that the plan has no
/// drawing of is refused, and the error lists those it has.
///
/// # Safety
/// `plan` is NULL or a live plan; `name` is NULL or points to `name_length` bytes; the rest is a text buffer, see the top
/// of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_drawing_svg(
    plan: *const beamcraft_plan,
    name: *const c_char,
    name_length: usize,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_plan| {
        // SAFETY: the contract of this function.
        let name = unsafe { text(name, name_length, "name", "name_length") }?;
        Ok(export::plan_drawing_svg(&object.plan, name)?)
    };
    // SAFETY: the same contract.
    unsafe { words(plan, buffer, capacity, out_needed, out_error, of) }
}

/// Corner points of the triangles of a panel, three numbers each, mm, in the axes of the body: x from the left end of the
/// front along the length, y from the front face to the wall, z up from the underside. Capacity counts numbers, not points.
///
/// # Safety
/// `plan` is NULL or a live plan; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_panel_vertices(
    plan: *const beamcraft_plan,
    panel: usize,
    buffer: *mut f64,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_plan| Ok(numbers(&export::panel_mesh(object.panel(panel)?).vertices_mm));
    // SAFETY: the same contract.
    unsafe { items(plan, buffer, capacity, out_needed, out_error, of) }
}

/// The wood of a panel as triangles: for each three places among the points of beamcraft_plan_panel_vertices,
/// counter-clockwise seen from outside. Pieces that are taken out of the panel are left out; where there are any, the wood
/// is given as convex parts, each a closed surface. Capacity counts numbers, not triangles.
///
/// # Safety
/// `plan` is NULL or a live plan; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_panel_triangles(
    plan: *const beamcraft_plan,
    panel: usize,
    buffer: *mut u32,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_plan| Ok(export::panel_mesh(object.panel(panel)?).triangles.into_flattened());
    // SAFETY: the same contract.
    unsafe { items(plan, buffer, capacity, out_needed, out_error, of) }
}

/// Which face of the panel each triangle belongs to, in the order of beamcraft_plan_panel_triangles: 0 the show face, 1 the
/// inner face, the tag of an edge, or another number on what is left where a piece was taken out.
///
/// # Safety
/// `plan` is NULL or a live plan; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_panel_triangle_tags(
    plan: *const beamcraft_plan,
    panel: usize,
    buffer: *mut u32,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_plan| Ok(export::panel_mesh(object.panel(panel)?).tags);
    // SAFETY: the same contract.
    unsafe { items(plan, buffer, capacity, out_needed, out_error, of) }
}
