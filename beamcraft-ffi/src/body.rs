//! The body handle: a hollow body of any form with its panels, their cuts, its files and drawings.

use core::ffi::c_char;
use std::sync::OnceLock;

use beamcraft_core::error::Error;
use beamcraft_core::export;
use beamcraft_core::json;
use beamcraft_core::plan::{SawnBody, SawnBodyInput, sawn_body};
use beamcraft_core::shell::{Panel, Piece};

use crate::error::beamcraft_error;
use crate::guard::{Failure, guard};
use crate::panel::{numbers, runs, sign};
use crate::plan::{Handle, at, beamcraft_panel_edge, beamcraft_panel_size, items, value, words};
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

    fn panel(&self, panel: usize) -> Result<&Panel, Failure> {
        at(&self.body.panels, panel, "panel", "below beamcraft_body_panel_count")
    }

    fn piece(&self, panel: usize, piece: usize) -> Result<&Piece, Failure> {
        at(&self.panel(panel)?.pieces, piece, "piece", "below beamcraft_body_piece_count")
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

/// All panels as a binary STL file in mm, one closed surface for each piece; an array buffer of bytes.
///
/// # Safety
/// `body` is NULL or a live body; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_body_panels_stl(
    body: *const beamcraft_body,
    buffer: *mut u8,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe {
        items(body, buffer, capacity, out_needed, out_error, |object| Ok(export::panels_stl(&object.body.panels)))
    }
}

/// All panels as a STEP file (AP214) in mm, one named solid a panel; a text buffer.
///
/// # Safety
/// `body` is NULL or a live body; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_body_panels_step(
    body: *const beamcraft_body,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe {
        words(body, buffer, capacity, out_needed, out_error, |object| {
            Ok(export::panels_step(&object.body.spec.name, &object.body.panels))
        })
    }
}

/// Show face of every panel and the section as a DXF file (R12) in mm; a text buffer.
///
/// # Safety
/// `body` is NULL or a live body; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_body_panels_dxf(
    body: *const beamcraft_body,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe {
        words(body, buffer, capacity, out_needed, out_error, |object| {
            Ok(export::panels_dxf(&object.body.spec.name, &object.body.panels))
        })
    }
}

/// All panels as a binary glTF 2.0 file in metres, one named node a panel; an array buffer of bytes.
///
/// # Safety
/// `body` is NULL or a live body; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_body_panels_gltf(
    body: *const beamcraft_body,
    buffer: *mut u8,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe {
        items(body, buffer, capacity, out_needed, out_error, |object| {
            Ok(export::panels_gltf(&object.body.spec.name, &object.body.panels))
        })
    }
}

/// How many panels there are.
///
/// # Safety
/// `body` is NULL or a live body; `out_count` is NULL or writable; NULL is refused; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_body_panel_count(
    body: *const beamcraft_body,
    out_count: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe { value(body, out_count, "out_count", out_error, |object| Ok(object.body.panels.len())) }
}

/// Name of a panel, that of its show face, such as "front" or "leg2.side3". It comes from the input and stays the same when
/// sizes change. `panel` counts from 0.
///
/// # Safety
/// `body` is NULL or a live body; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_body_panel_id(
    body: *const beamcraft_body,
    panel: usize,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_body| Ok(object.panel(panel)?.id.to_string());
    // SAFETY: the same contract.
    unsafe { words(body, buffer, capacity, out_needed, out_error, of) }
}

/// Sizes of a panel.
///
/// # Safety
/// `body` is NULL or a live body; `out_size` is NULL or writable; NULL is refused; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_body_panel_size(
    body: *const beamcraft_body,
    panel: usize,
    out_size: *mut beamcraft_panel_size,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_body| Ok(object.panel(panel)?.into());
    // SAFETY: the same contract.
    unsafe { value(body, out_size, "out_size", out_error, of) }
}

/// How many edges a panel has.
///
/// # Safety
/// `body` is NULL or a live body; `out_count` is NULL or writable; NULL is refused; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_body_edge_count(
    body: *const beamcraft_body,
    panel: usize,
    out_count: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe { value(body, out_count, "out_count", out_error, |object| Ok(object.panel(panel)?.edges.len())) }
}

/// Name of an edge of a panel: the two faces that meet there, such as "front|top".
///
/// # Safety
/// `body` is NULL or a live body; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_body_edge_id(
    body: *const beamcraft_body,
    panel: usize,
    edge: usize,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_body| {
        let edges = &object.panel(panel)?.edges;
        Ok(at(edges, edge, "edge", "below beamcraft_body_edge_count")?.id.to_string())
    };
    // SAFETY: the same contract.
    unsafe { words(body, buffer, capacity, out_needed, out_error, of) }
}

/// How a panel ends at one of its edges.
///
/// # Safety
/// `body` is NULL or a live body; `out_edge` is NULL or writable; NULL is refused; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_body_edge(
    body: *const beamcraft_body,
    panel: usize,
    edge: usize,
    out_edge: *mut beamcraft_panel_edge,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_body| {
        let edges = &object.panel(panel)?.edges;
        Ok(at(edges, edge, "edge", "below beamcraft_body_edge_count")?.into())
    };
    // SAFETY: the same contract.
    unsafe { value(body, out_edge, "out_edge", out_error, of) }
}

/// How many convex pieces a panel is made of: the first is the board with all its edges cut, the others are added to it
/// or taken out of it.
///
/// # Safety
/// `body` is NULL or a live body; `out_count` is NULL or writable; NULL is refused; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_body_piece_count(
    body: *const beamcraft_body,
    panel: usize,
    out_count: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe { value(body, out_count, "out_count", out_error, |object| Ok(object.panel(panel)?.pieces.len())) }
}

/// Whether a piece is wood or taken out of it: BEAMCRAFT_PIECE_ADDED or BEAMCRAFT_PIECE_REMOVED.
///
/// # Safety
/// `body` is NULL or a live body; `out_sign` is NULL or writable; NULL is refused; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_body_piece_sign(
    body: *const beamcraft_body,
    panel: usize,
    piece: usize,
    out_sign: *mut u32,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_body| Ok(sign(object.piece(panel, piece)?));
    // SAFETY: the same contract.
    unsafe { value(body, out_sign, "out_sign", out_error, of) }
}

/// Corner points of a piece, three numbers each, mm, in the axes of the body: x from the left end of the front along the
/// length, y from the front face to the wall, z up from the underside. Capacity counts numbers, not points.
///
/// # Safety
/// `body` is NULL or a live body; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_body_piece_vertices(
    body: *const beamcraft_body,
    panel: usize,
    piece: usize,
    buffer: *mut f64,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_body| Ok(numbers(object.piece(panel, piece)?.solid.vertices()));
    // SAFETY: the same contract.
    unsafe { items(body, buffer, capacity, out_needed, out_error, of) }
}

/// Faces of a piece: for each face the number of its corners, then the places of its corners among the points of
/// beamcraft_body_piece_vertices, counter-clockwise seen from outside.
///
/// # Safety
/// `body` is NULL or a live body; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_body_piece_faces(
    body: *const beamcraft_body,
    panel: usize,
    piece: usize,
    buffer: *mut u32,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_body| Ok(runs(object.piece(panel, piece)?));
    // SAFETY: the same contract.
    unsafe { items(body, buffer, capacity, out_needed, out_error, of) }
}

/// Tags of the faces of a piece, in the order of beamcraft_body_piece_faces. On the first piece of a panel 0 is the show
/// face, 1 the inner face, and the others are the tags of its edges.
///
/// # Safety
/// `body` is NULL or a live body; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_body_piece_tags(
    body: *const beamcraft_body,
    panel: usize,
    piece: usize,
    buffer: *mut u32,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_body| Ok(object.piece(panel, piece)?.solid.faces().map(|face| face.tag).collect());
    // SAFETY: the same contract.
    unsafe { items(body, buffer, capacity, out_needed, out_error, of) }
}

/// Corner points of the triangles of a panel, three numbers each, mm, in the axes of the body: x from the left end of the
/// front along the length, y from the front face to the wall, z up from the underside. Capacity counts numbers, not points.
///
/// # Safety
/// `body` is NULL or a live body; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_body_panel_vertices(
    body: *const beamcraft_body,
    panel: usize,
    buffer: *mut f64,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_body| Ok(numbers(&export::panel_mesh(object.panel(panel)?).vertices_mm));
    // SAFETY: the same contract.
    unsafe { items(body, buffer, capacity, out_needed, out_error, of) }
}

/// The wood of a panel as triangles: for each three places among the points of beamcraft_body_panel_vertices,
/// counter-clockwise seen from outside. Pieces that are taken out of the panel are left out; where there are any, the wood
/// is given as convex parts, each a closed surface. Capacity counts numbers, not triangles.
///
/// # Safety
/// `body` is NULL or a live body; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_body_panel_triangles(
    body: *const beamcraft_body,
    panel: usize,
    buffer: *mut u32,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_body| Ok(export::panel_mesh(object.panel(panel)?).triangles.into_flattened());
    // SAFETY: the same contract.
    unsafe { items(body, buffer, capacity, out_needed, out_error, of) }
}

/// Which face of the panel each triangle belongs to, in the order of beamcraft_body_panel_triangles: 0 the show face, 1 the
/// inner face, the tag of an edge, or another number on what is left where a piece was taken out.
///
/// # Safety
/// `body` is NULL or a live body; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_body_panel_triangle_tags(
    body: *const beamcraft_body,
    panel: usize,
    buffer: *mut u32,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_body| Ok(export::panel_mesh(object.panel(panel)?).tags);
    // SAFETY: the same contract.
    unsafe { items(body, buffer, capacity, out_needed, out_error, of) }
}

/// How many drawings of a body there are.
///
/// # Safety
/// `body` is NULL or a live body; `out_count` is NULL or writable; NULL is refused; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_body_drawing_count(
    body: *const beamcraft_body,
    out_count: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_body| Ok(export::drawing_names(&object.body).len());
    // SAFETY: the same contract.
    unsafe { value(body, out_count, "out_count", out_error, of) }
}

/// Name of a drawing: "section", "exploded", and for every panel such as "front" the sheet "panel_front" and the sketches
/// of the saw "set_ups_front", with "_1", "_2" behind them where they take more than one sheet. `drawing` counts from 0.
///
/// # Safety
/// `body` is NULL or a live body; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_body_drawing_name(
    body: *const beamcraft_body,
    drawing: usize,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_body| {
        let names = export::drawing_names(&object.body);
        Ok(at(&names, drawing, "drawing", "below beamcraft_body_drawing_count")?.clone())
    };
    // SAFETY: the same contract.
    unsafe { words(body, buffer, capacity, out_needed, out_error, of) }
}

/// A drawing by its name as SVG (UTF-8), a sheet of paper with its size in millimetres. A name that the body has no
/// drawing of is refused, and the error lists those it has.
///
/// # Safety
/// `body` is NULL or a live body; `name` is NULL or points to `name_length` bytes; the rest is a text buffer, see the top
/// of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_body_drawing_svg(
    body: *const beamcraft_body,
    name: *const c_char,
    name_length: usize,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_body| {
        // SAFETY: the contract of this function.
        let name = unsafe { text(name, name_length, "name", "name_length") }?;
        Ok(export::body_drawing_svg(&object.body, name)?)
    };
    // SAFETY: the same contract.
    unsafe { words(body, buffer, capacity, out_needed, out_error, of) }
}
