//! The Python module `beamcraft`: thin wrappers, no formulas.
//!
//! The classes and functions in `generated` follow from the definitions in the core; the rest of this crate is how values,
//! errors and texts cross the door.

mod array;
mod body;
mod columns;
mod cross;
mod door;
mod errors;
#[rustfmt::skip]
mod generated;
mod html;
mod plan;
mod shown;

use pyo3::prelude::*;

/// Compiled part of the package `beamcraft`.
#[pymodule(gil_used = false)]
mod _native {
    use pyo3::prelude::*;

    #[pymodule_export]
    use crate::columns::columns;
    #[pymodule_export]
    use crate::door::{
        calculations, call, call_json, call_with_progress, drawing_svg, error_codes, find_material, materials,
        parse_length, plan,
    };

    #[pymodule_init]
    fn init(module: &Bound<'_, PyModule>) -> PyResult<()> {
        // Set, not added: what is added becomes part of `__all__`.
        module.setattr("__version__", env!("CARGO_PKG_VERSION"))?;
        module.setattr("_DEBUG_BUILD", cfg!(debug_assertions))?;
        crate::generated::register(module)
    }
}
