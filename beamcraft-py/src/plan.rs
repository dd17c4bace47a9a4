//! What a plan has beyond its fields.
//!
//! A plan follows from its spec: it is written, pickled and copied as the spec, and computed anew. The same spec gives the
//! same plan to the last bit.

use beamcraft_core::error::Result;
use beamcraft_core::{export, json};
use pyo3::prelude::*;
use pyo3::types::PyBytes;

use crate::errors;
use crate::generated::{BeamSpec, Plan};
use crate::shown;

impl Plan {
    /// Something made from the plan of the core, with the interpreter released.
    fn made<T: Send>(&self, py: Python<'_>, make: fn(&beamcraft_core::Plan) -> T) -> PyResult<T> {
        let text = shown::to_json(py, &self.spec)?;
        let made = || -> Result<T> { Ok(make(&beamcraft_core::plan(&json::read(&text)?)?)) };
        py.detach(|| errors::guarded(made)).map_err(|fault| errors::raise(py, &fault))
    }
}

#[pymethods]
impl Plan {
    fn __repr__(&self) -> String {
        format!("plan({})", shown::repr(&self.spec))
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<(Bound<'py, PyAny>, (BeamSpec,))> {
        Ok((py.import("beamcraft")?.getattr("plan")?, (self.spec.clone(),)))
    }

    /// Drawing of the section for the bench, as SVG at a stated scale.
    fn section_svg(&self, py: Python<'_>) -> PyResult<String> {
        self.made(py, export::section_svg)
    }

    /// Report of the whole job: one HTML page without script or links, with the drawing in it.
    fn report_html(&self, py: Python<'_>) -> PyResult<String> {
        self.made(py, export::report_html)
    }

    /// Solids of the panels as binary STL, in millimetres.
    fn panels_stl<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyBytes>> {
        Ok(PyBytes::new(py, &self.made(py, |plan| export::panels_stl(&plan.panels))?))
    }

    /// Solids of the panels as a STEP file (AP214), in millimetres, one named solid a panel.
    fn panels_step(&self, py: Python<'_>) -> PyResult<String> {
        self.made(py, |plan| export::panels_step(&plan.spec.name, &plan.panels))
    }

    /// Show face of every panel and the section as a DXF file (R12), in millimetres.
    fn panels_dxf(&self, py: Python<'_>) -> PyResult<String> {
        self.made(py, |plan| export::panels_dxf(&plan.spec.name, &plan.panels))
    }

    /// Solids of the panels as a binary glTF 2.0 file, in metres, one named node a panel.
    fn panels_gltf<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyBytes>> {
        Ok(PyBytes::new(py, &self.made(py, |plan| export::panels_gltf(&plan.spec.name, &plan.panels))?))
    }
}
