//! What a plan has beyond its fields.
//!
//! A plan follows from its spec: it is written, pickled and copied as the spec, and computed anew. The same spec gives the
//! same plan to the last bit.

use beamcraft_core::error::Result;
use beamcraft_core::export::PanelMesh;
use beamcraft_core::{export, json};
use pyo3::prelude::*;
use pyo3::types::{PyBytes, PyMemoryView};

use crate::errors;
use crate::generated::{BeamSpec, Plan};
use crate::shown;

impl Plan {
    /// Something made from the plan of the core, with the interpreter released.
    fn made<T: Send>(&self, py: Python<'_>, make: fn(&beamcraft_core::Plan) -> T) -> PyResult<T> {
        self.found(py, move |plan| Ok(make(plan)))
    }

    /// The same, of something that the plan may not have.
    fn found<T: Send>(
        &self,
        py: Python<'_>,
        find: impl FnOnce(&beamcraft_core::Plan) -> Result<T> + Send,
    ) -> PyResult<T> {
        let text = shown::to_json(py, &self.spec)?;
        let found = || find(&beamcraft_core::plan(&json::read(&text)?)?);
        py.detach(|| errors::guarded(found)).map_err(|fault| errors::raise(py, &fault))
    }
}

/// A drawing as text that a notebook shows as a picture.
pub(crate) fn drawing<'py>(py: Python<'py>, svg: &str) -> PyResult<Bound<'py, PyAny>> {
    py.import("beamcraft")?.getattr("Drawing")?.call1((svg,))
}

/// Vertices and triangles of a panel as read-only views.
pub(crate) fn views<'py>(py: Python<'py>, mesh: &PanelMesh) -> PyResult<MeshViews<'py>> {
    let vertices: Vec<u8> =
        mesh.vertices_mm.iter().flat_map(|at| [at.x, at.y, at.z]).flat_map(f64::to_ne_bytes).collect();
    let triangles: Vec<u8> = mesh.triangles.iter().flatten().flat_map(|index| index.to_ne_bytes()).collect();
    let vertices = rows_of_three(py, "d", &vertices, mesh.vertices_mm.len())?;
    Ok((vertices, rows_of_three(py, "I", &triangles, mesh.triangles.len())?))
}

/// Vertices and triangles.
pub(crate) type MeshViews<'py> = (Bound<'py, PyAny>, Bound<'py, PyAny>);

/// Rows of three numbers as a read-only view that NumPy takes as an array without a copy.
fn rows_of_three<'py>(py: Python<'py>, format: &str, numbers: &[u8], rows: usize) -> PyResult<Bound<'py, PyAny>> {
    let view = PyMemoryView::from(&PyBytes::new(py, numbers))?;
    // A view has no sides of length 0.
    if rows == 0 { view.call_method1("cast", (format,)) } else { view.call_method1("cast", (format, (rows, 3))) }
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
    fn section_svg<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        drawing(py, &self.made(py, export::section_svg)?)
    }

    /// Names of the drawings: the section, the panels pulled apart, and for each panel a sheet and the set-ups of the saw.
    fn drawing_names(&self, py: Python<'_>) -> PyResult<Vec<String>> {
        self.made(py, |plan| export::drawing_names(plan))
    }

    /// Drawing by its name, such as ``"exploded"``, ``"panel_front"`` or ``"set_ups_front"``, as SVG.
    ///
    /// A notebook shows it as a picture.
    fn drawing<'py>(&self, py: Python<'py>, name: &str) -> PyResult<Bound<'py, PyAny>> {
        drawing(py, &self.found(py, |plan| export::plan_drawing_svg(plan, name))?)
    }

    /// Vertices and triangles of a panel, for ``numpy.asarray`` without a copy.
    ///
    /// The vertices are rows of three floats, in millimetres: along the length, to the wall, up. The triangles are rows of
    /// three places among them, counter-clockwise seen from outside. Both are read-only views.
    fn panel_mesh<'py>(&self, py: Python<'py>, panel: &str) -> PyResult<MeshViews<'py>> {
        views(py, &self.found(py, |plan| Ok(export::panel_mesh(plan.panel(panel)?)))?)
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
