//! The plan handle: one spec in, the whole job out.

use core::ffi::c_char;
use std::sync::OnceLock;

use beamcraft_core::error::{Allowed, Error, ErrorCode, Fault};
use beamcraft_core::export;
use beamcraft_core::json;
use beamcraft_core::plan::{BeamSpec, Plan, plan};
use beamcraft_core::shell::{Panel, Piece};

use crate::error::beamcraft_error;
use crate::guard::{Failure, guard};
use crate::panel::{numbers, runs, sign};
use crate::pointer::{ArrayBuffer, Place, TextBuffer, handle, text};
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

/// A handle that calls read from.
pub(crate) trait Handle {
    /// Name of the parameter that holds it.
    const NAME: &'static str;
}

impl Handle for beamcraft_plan {
    const NAME: &'static str = "plan";
}

impl beamcraft_plan {
    fn json(&self) -> Result<&str, Failure> {
        self.json.get_or_init(|| json::write(&self.plan)).as_deref().map_err(|error| error.clone().into())
    }

    pub(crate) fn panel(&self, panel: usize) -> Result<&Panel, Failure> {
        at(&self.plan.panels, panel, "panel", "below beamcraft_plan_panel_count")
    }

    fn piece(&self, panel: usize, piece: usize) -> Result<&Piece, Failure> {
        at(&self.panel(panel)?.pieces, piece, "piece", "below beamcraft_plan_piece_count")
    }
}

pub(crate) fn at<'a, T>(
    list: &'a [T],
    index: usize,
    name: &'static str,
    allowed: &'static str,
) -> Result<&'a T, Failure> {
    let beyond = || Fault::number(ErrorCode::OutOfRange, name, index as f64, Allowed::Text(allowed), "");
    list.get(index).ok_or_else(|| beyond().into())
}

/// Sizes of a panel. The show face is the one that is seen; long points lie on it wherever the bevel is positive.
#[derive(Clone, Copy, Debug, Default)]
#[repr(C)]
pub struct beamcraft_panel_size {
    /// Extent of the show face along the grain, from long point to long point, mm.
    pub show_length_mm: f64,
    /// Extent of the show face across the grain, from long point to long point, mm.
    pub show_width_mm: f64,
    /// Extent of the inner face along the grain, mm.
    pub inner_length_mm: f64,
    /// Extent of the inner face across the grain, mm.
    pub inner_width_mm: f64,
    /// Thickness, mm.
    pub thickness_mm: f64,
    /// Length of the square-edged blank that holds the panel, along the grain, mm.
    pub blank_length_mm: f64,
    /// Width of the square-edged blank that holds the panel, across the grain, mm.
    pub blank_width_mm: f64,
    /// Volume of the wood, mm³.
    pub volume_mm3: f64,
}

/// One edge of a panel.
#[derive(Clone, Copy, Debug, Default)]
#[repr(C)]
pub struct beamcraft_panel_edge {
    /// Angle between the two outer faces, inside the body, degrees.
    pub corner_deg: f64,
    /// Blade tilt from square, degrees; positive when the long point lies on the show face.
    pub tilt_deg: f64,
    /// Angle of the edge in the face from a rip along, or a square cut across, the grain, degrees; positive when the panel
    /// is longer at its far edge (cross-cut) or wider at its far end (rip).
    pub gauge_deg: f64,
    /// Length of the edge on the show face, mm.
    pub show_length_mm: f64,
    /// Length of the edge on the inner face, mm.
    pub inner_length_mm: f64,
    /// Tag that the edge has among the faces of the panel's first piece, see beamcraft_plan_piece_tags.
    pub tag: u32,
    /// Kept for later: 0.
    pub reserved_1: u32,
}

/// A piece of wood.
pub const BEAMCRAFT_PIECE_ADDED: u32 = 0;
/// A piece that is taken out of the wood.
pub const BEAMCRAFT_PIECE_REMOVED: u32 = 1;

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

/// Gives one value of an object.
///
/// # Safety
/// `object` is NULL or live; `out` is NULL or writable; `out_error` is NULL or writable.
pub(crate) unsafe fn value<H: Handle, T>(
    object: *const H,
    out: *mut T,
    name: &'static str,
    out_error: *mut *mut beamcraft_error,
    of: impl FnOnce(&H) -> Result<T, Failure>,
) -> beamcraft_status {
    let body = || {
        // SAFETY: the contract of this function.
        let object = unsafe { handle(object, H::NAME) }?;
        let place = Place::new(out, name)?;
        let value = of(object)?;
        // SAFETY: the contract of this function.
        unsafe { place.write(value) };
        Ok(())
    };
    // SAFETY: the contract of this function.
    unsafe { guard(out_error, body) }
}

/// Gives one text of an object.
///
/// # Safety
/// `object` is NULL or live; `buffer` is NULL or has `capacity` writable bytes; the rest is NULL or writable.
pub(crate) unsafe fn words<H: Handle>(
    object: *const H,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
    of: impl FnOnce(&H) -> Result<String, Failure>,
) -> beamcraft_status {
    let body = || {
        // SAFETY: the contract of this function.
        let object = unsafe { handle(object, H::NAME) }?;
        let place = TextBuffer::new(buffer, capacity, out_needed)?;
        let text = of(object)?;
        // SAFETY: the contract of this function.
        unsafe { place.write(&text) }
    };
    // SAFETY: the contract of this function.
    unsafe { guard(out_error, body) }
}

/// Gives a list of numbers of an object.
///
/// # Safety
/// `object` is NULL or live; `buffer` is NULL or has room for `capacity` items; the rest is NULL or writable.
pub(crate) unsafe fn items<H: Handle, T: Copy>(
    object: *const H,
    buffer: *mut T,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
    of: impl FnOnce(&H) -> Result<Vec<T>, Failure>,
) -> beamcraft_status {
    let body = || {
        // SAFETY: the contract of this function.
        let object = unsafe { handle(object, H::NAME) }?;
        let place = ArrayBuffer::new(buffer, capacity, out_needed)?;
        let items = of(object)?;
        // SAFETY: the contract of this function.
        unsafe { place.write(&items) }
    };
    // SAFETY: the contract of this function.
    unsafe { guard(out_error, body) }
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

/// All panels as a binary STL file in mm, one closed surface for each piece; an array buffer of bytes.
///
/// # Safety
/// `plan` is NULL or a live plan; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_panels_stl(
    plan: *const beamcraft_plan,
    buffer: *mut u8,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe {
        items(plan, buffer, capacity, out_needed, out_error, |object| Ok(export::panels_stl(&object.plan.panels)))
    }
}

/// All panels as a STEP file (AP214) in mm, one named solid a panel; a text buffer.
///
/// # Safety
/// `plan` is NULL or a live plan; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_panels_step(
    plan: *const beamcraft_plan,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe {
        words(plan, buffer, capacity, out_needed, out_error, |object| {
            Ok(export::panels_step(&object.plan.spec.name, &object.plan.panels))
        })
    }
}

/// Show face of every panel and the section as a DXF file (R12) in mm; a text buffer.
///
/// # Safety
/// `plan` is NULL or a live plan; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_panels_dxf(
    plan: *const beamcraft_plan,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe {
        words(plan, buffer, capacity, out_needed, out_error, |object| {
            Ok(export::panels_dxf(&object.plan.spec.name, &object.plan.panels))
        })
    }
}

/// All panels as a binary glTF 2.0 file in metres, one named node a panel; an array buffer of bytes.
///
/// # Safety
/// `plan` is NULL or a live plan; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_panels_gltf(
    plan: *const beamcraft_plan,
    buffer: *mut u8,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe {
        items(plan, buffer, capacity, out_needed, out_error, |object| {
            Ok(export::panels_gltf(&object.plan.spec.name, &object.plan.panels))
        })
    }
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

/// How many panels there are.
///
/// # Safety
/// `plan` is NULL or a live plan; `out_count` is NULL or writable; NULL is refused; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_panel_count(
    plan: *const beamcraft_plan,
    out_count: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe { value(plan, out_count, "out_count", out_error, |object| Ok(object.plan.panels.len())) }
}

/// Name of a panel, that of its show face, such as "front" or "left_end". It comes from the spec and stays the same when
/// sizes change. `panel` counts from 0.
///
/// # Safety
/// `plan` is NULL or a live plan; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_panel_id(
    plan: *const beamcraft_plan,
    panel: usize,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_plan| Ok(object.panel(panel)?.id.to_string());
    // SAFETY: the same contract.
    unsafe { words(plan, buffer, capacity, out_needed, out_error, of) }
}

/// Sizes of a panel.
///
/// # Safety
/// `plan` is NULL or a live plan; `out_size` is NULL or writable; NULL is refused; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_panel_size(
    plan: *const beamcraft_plan,
    panel: usize,
    out_size: *mut beamcraft_panel_size,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_plan| Ok(object.panel(panel)?.into());
    // SAFETY: the same contract.
    unsafe { value(plan, out_size, "out_size", out_error, of) }
}

/// How many edges a panel has.
///
/// # Safety
/// `plan` is NULL or a live plan; `out_count` is NULL or writable; NULL is refused; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_edge_count(
    plan: *const beamcraft_plan,
    panel: usize,
    out_count: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe { value(plan, out_count, "out_count", out_error, |object| Ok(object.panel(panel)?.edges.len())) }
}

/// Name of an edge of a panel: the two faces that meet there, such as "front|top".
///
/// # Safety
/// `plan` is NULL or a live plan; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_edge_id(
    plan: *const beamcraft_plan,
    panel: usize,
    edge: usize,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_plan| {
        let edges = &object.panel(panel)?.edges;
        Ok(at(edges, edge, "edge", "below beamcraft_plan_edge_count")?.id.to_string())
    };
    // SAFETY: the same contract.
    unsafe { words(plan, buffer, capacity, out_needed, out_error, of) }
}

/// How a panel ends at one of its edges.
///
/// # Safety
/// `plan` is NULL or a live plan; `out_edge` is NULL or writable; NULL is refused; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_edge(
    plan: *const beamcraft_plan,
    panel: usize,
    edge: usize,
    out_edge: *mut beamcraft_panel_edge,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_plan| {
        let edges = &object.panel(panel)?.edges;
        Ok(at(edges, edge, "edge", "below beamcraft_plan_edge_count")?.into())
    };
    // SAFETY: the same contract.
    unsafe { value(plan, out_edge, "out_edge", out_error, of) }
}

/// How many convex pieces a panel is made of: the first is the board with all its edges cut, the others are added to it
/// or taken out of it.
///
/// # Safety
/// `plan` is NULL or a live plan; `out_count` is NULL or writable; NULL is refused; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_piece_count(
    plan: *const beamcraft_plan,
    panel: usize,
    out_count: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe { value(plan, out_count, "out_count", out_error, |object| Ok(object.panel(panel)?.pieces.len())) }
}

/// Whether a piece is wood or taken out of it: BEAMCRAFT_PIECE_ADDED or BEAMCRAFT_PIECE_REMOVED.
///
/// # Safety
/// `plan` is NULL or a live plan; `out_sign` is NULL or writable; NULL is refused; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_piece_sign(
    plan: *const beamcraft_plan,
    panel: usize,
    piece: usize,
    out_sign: *mut u32,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_plan| Ok(sign(object.piece(panel, piece)?));
    // SAFETY: the same contract.
    unsafe { value(plan, out_sign, "out_sign", out_error, of) }
}

/// Corner points of a piece, three numbers each, mm, in the axes of the body: x from the left end of the front along the
/// length, y from the front face to the wall, z up from the underside. Capacity counts numbers, not points.
///
/// # Safety
/// `plan` is NULL or a live plan; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_piece_vertices(
    plan: *const beamcraft_plan,
    panel: usize,
    piece: usize,
    buffer: *mut f64,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_plan| Ok(numbers(object.piece(panel, piece)?.solid.vertices()));
    // SAFETY: the same contract.
    unsafe { items(plan, buffer, capacity, out_needed, out_error, of) }
}

/// Faces of a piece: for each face the number of its corners, then the places of its corners among the points of
/// beamcraft_plan_piece_vertices, counter-clockwise seen from outside.
///
/// # Safety
/// `plan` is NULL or a live plan; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_piece_faces(
    plan: *const beamcraft_plan,
    panel: usize,
    piece: usize,
    buffer: *mut u32,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_plan| Ok(runs(object.piece(panel, piece)?));
    // SAFETY: the same contract.
    unsafe { items(plan, buffer, capacity, out_needed, out_error, of) }
}

/// Tags of the faces of a piece, in the order of beamcraft_plan_piece_faces. On the first piece of a panel 0 is the show
/// face, 1 the inner face, and the others are the tags of its edges.
///
/// # Safety
/// `plan` is NULL or a live plan; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_piece_tags(
    plan: *const beamcraft_plan,
    panel: usize,
    piece: usize,
    buffer: *mut u32,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_plan| Ok(object.piece(panel, piece)?.solid.faces().map(|face| face.tag).collect());
    // SAFETY: the same contract.
    unsafe { items(plan, buffer, capacity, out_needed, out_error, of) }
}
