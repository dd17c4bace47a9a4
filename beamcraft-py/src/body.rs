//! What a body with its cuts has beyond its fields: drawings, files and triangles, made from what it was computed from.

use beamcraft_core::error::Result;
use beamcraft_core::plan::{SawnBody as Sawn, sawn_body};
use beamcraft_core::{export, json};
use pyo3::prelude::*;
use pyo3::types::PyBytes;

use crate::errors;
use crate::generated::SawnBody;
use crate::plan::{MeshViews, drawing, views};
use crate::shown;

impl SawnBody {
    /// Something made from the body of the core, with the interpreter released.
    fn made<T: Send>(&self, py: Python<'_>, make: impl FnOnce(&Sawn) -> Result<T> + Send) -> PyResult<T> {
        let text = shown::to_json(py, &self.spec)?;
        let made = || make(&sawn_body(&json::read(&text)?)?);
        py.detach(|| errors::guarded(made)).map_err(|fault| errors::raise(py, &fault))
    }
}

#[pymethods]
impl SawnBody {
    /// Names of the drawings: the section, the panels pulled apart, and for each panel a sheet and the set-ups of the saw.
    fn drawing_names(&self, py: Python<'_>) -> PyResult<Vec<String>> {
        self.made(py, |body| Ok(export::drawing_names(body)))
    }

    /// Drawing by its name, such as ``"exploded"``, ``"panel_front"`` or ``"set_ups_front"``, as SVG.
    ///
    /// A notebook shows it as a picture.
    fn drawing<'py>(&self, py: Python<'py>, name: &str) -> PyResult<Bound<'py, PyAny>> {
        drawing(py, &self.made(py, |body| export::body_drawing_svg(body, name))?)
    }

    /// Vertices and triangles of a panel, for ``numpy.asarray`` without a copy.
    ///
    /// The vertices are rows of three floats, in millimetres: along the length, to the wall, up. The triangles are rows of
    /// three places among them, counter-clockwise seen from outside. Both are read-only views.
    fn panel_mesh<'py>(&self, py: Python<'py>, panel: &str) -> PyResult<MeshViews<'py>> {
        views(py, &self.made(py, |body| Ok(export::panel_mesh(body.panel(panel)?)))?)
    }

    /// Solids of the panels as binary STL, in millimetres.
    fn panels_stl<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyBytes>> {
        Ok(PyBytes::new(py, &self.made(py, |body| Ok(export::panels_stl(&body.panels)))?))
    }

    /// Solids of the panels as a STEP file (AP214), in millimetres, one named solid a panel.
    fn panels_step(&self, py: Python<'_>) -> PyResult<String> {
        self.made(py, |body| Ok(export::panels_step(&body.spec.name, &body.panels)))
    }

    /// Show face of every panel and the section as a DXF file (R12), in millimetres.
    fn panels_dxf(&self, py: Python<'_>) -> PyResult<String> {
        self.made(py, |body| Ok(export::panels_dxf(&body.spec.name, &body.panels)))
    }

    /// Solids of the panels as a binary glTF 2.0 file, in metres, one named node a panel.
    fn panels_gltf<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyBytes>> {
        Ok(PyBytes::new(py, &self.made(py, |body| Ok(export::panels_gltf(&body.spec.name, &body.panels)))?))
    }
}
