//! Writes everything that follows from the definitions in the core: structs and functions of the C door, classes,
//! functions and stubs of the Python module, the JSON Schemas and the reference pages.
//!
//! The files are committed plain source, so that a reader, a header generator and a diff see them; `cargo run -p
//! beamcraft-tests --bin generate` rewrites them and a test fails when one is stale.

pub mod c;
pub mod docs;
pub mod figures;
pub mod model;
mod pydoc;
pub mod python;
mod stubs;

use std::path::PathBuf;

use model::Model;

/// A file that is generated: its path from the top of the checkout and its whole text.
#[derive(Clone)]
pub struct GeneratedFile {
    /// Path from the top of the checkout.
    pub path: String,
    /// Whole text.
    pub text: String,
}

impl GeneratedFile {
    /// The file `path` with `text`.
    pub fn new(path: impl Into<String>, text: impl Into<String>) -> Self {
        Self { path: path.into(), text: text.into() }
    }
}

/// Every generated file.
pub fn all() -> Vec<GeneratedFile> {
    let model = Model::of_registry();
    let writers: &[fn(&Model) -> Vec<GeneratedFile>] = &[c::files, docs::files, figures::files, python::files];
    writers.iter().flat_map(|write| write(&model)).collect()
}

/// Top of the checkout.
pub fn top() -> PathBuf {
    PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/.."))
}
