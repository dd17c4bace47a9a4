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
        Ok(PyBytes::new(py, &self.made(py, export::panels_stl)?))
    }
}
