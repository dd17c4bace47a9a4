//! What a plan has beyond its fields.
//!
//! A plan follows from its spec: it is written, pickled and copied as the spec, and computed anew. The same spec gives the
//! same plan to the last bit.

use pyo3::prelude::*;

use crate::generated::{BeamSpec, Plan};
use crate::shown;

#[pymethods]
impl Plan {
    fn __repr__(&self) -> String {
        format!("plan({})", shown::repr(&self.spec))
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<(Bound<'py, PyAny>, (BeamSpec,))> {
        Ok((py.import("beamcraft")?.getattr("plan")?, (self.spec.clone(),)))
    }
}
