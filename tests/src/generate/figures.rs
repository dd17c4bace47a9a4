//! Figures of the book, drawn by the library itself.

use beamcraft_core::export::section_svg;
use beamcraft_core::plan::{BeamSpec, plan};

use super::GeneratedFile;
use super::model::Model;

/// The beam of the guide.
const ASH: &str = include_str!("../../../beamcraft-core/examples/specs/ash_shelf_beam.json");

/// Every figure.
///
/// # Panics
/// When the spec of the guide is no longer a spec that can be planned.
pub fn files(_: &Model) -> Vec<GeneratedFile> {
    let section =
        beamcraft_core::json::read::<BeamSpec>(ASH).and_then(|spec| plan(&spec)).map(|plan| section_svg(&plan));
    match section {
        Ok(svg) => vec![GeneratedFile::new("docs/src/figures/section.svg", svg)],
        Err(error) => panic!("the spec of the guide: {error}"),
    }
}
