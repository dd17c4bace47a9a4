//! A plan as files: drawing, solids, report; and results of other calculations as drawings: the movement of a year, the gaps of a
//! stack-up, the clearance to an opening, a calendar of work, a group of fasteners. Pure functions to text or bytes.
//!
//! | function | gives | for |
//! |---|---|---|
//! | [`section_svg`] | SVG, a sheet of paper at a stated scale | the bench |
//! | [`cross_svg`] | SVG, a sheet: the section of a body without a wall | the bench |
//! | [`panel_svg`] | SVG, a sheet: one panel with every edge | the bench |
//! | [`exploded_svg`] | SVG, a sheet: the panels pulled apart | assembly |
//! | [`set_up_svgs`] | SVG, sheets: the saw for every cut of a panel | the saw |
//! | [`plan_drawing_svg`], [`body_drawing_svg`] | any of these by its name | other languages |
//! | [`movement_svg`] | SVG, two charts over twelve months | the choice of a cut and a season |
//! | [`panels_stl`] | binary STL, millimetres | viewers and printers |
//! | [`panels_step`] | STEP AP214, millimetres, one named solid a panel | other CAD programs |
//! | [`panels_gltf`] | binary glTF 2.0, metres, one named node a panel | viewers and scenes |
//! | [`panel_mesh`] | triangles of one panel in memory | macros and scenes |
//! | [`panels_dxf`] | DXF R12, millimetres: show faces and section | drawing programs |
//! | [`cut_list_svg`] | SVG, a page a board with its cuts in order | the saw |
//! | [`cut_list_dxf`] | DXF R12, millimetres: boards, parts, cuts | drawing programs |
//! | [`calendar_svg`] | SVG, bars over days | the shop's wall |
//! | [`fastener_group_svg`] | SVG, a group of fasteners with the force on each | the bench, a reviewer |
//! | [`gap_histograms_svg`] | SVG, histograms of a tolerance stack-up | the bench |
//! | [`clearance_svg`] | SVG, least height against depth by each rule | the talk about the place |
//! | [`lift_svg`] | SVG, the way onto the cleat frame by frame | the wall |
//! | [`report_html`] | one HTML page without script or links, the drawing in it | phone, screen and paper |
//!
//! ```
//! use beamcraft_core::{export, plan::{BeamSpec, plan}};
//! # #[cfg(feature = "json")] {
//! let spec: BeamSpec = beamcraft_core::json::read(include_str!("../../examples/specs/ash_shelf_beam.json"))?;
//! let plan = plan(&spec)?;
//! assert!(export::section_svg(&plan).contains("lift 14"));
//! assert!(export::report_html(&plan).starts_with("<!DOCTYPE html>"));
//! // Five panels of six faces, each a rectangle or trapezium of two triangles.
//! assert_eq!(export::panels_stl(&plan.panels).len(), 84 + 50 * 5 * 6 * 2);
//! # }
//! # Ok::<(), beamcraft_core::error::Error>(())
//! ```
//!
//! The same plan gives the same bytes on every machine. Nothing here computes a size of the job: every number comes from
//! the plan, or is measured on its solids.

mod calendar;
mod clearance;
mod cross;
mod cut;
mod cut_list;
mod drawings;
mod drawn;
mod dxf;
mod exploded;
mod gaps;
mod gltf;
mod group;
mod layout;
mod lift;
mod mesh;
mod movement;
mod panel;
mod remains;
mod report;
mod section;
mod set_ups;
mod step;
mod stl;
mod svg;
mod text;
mod view;
mod words;

#[cfg(test)]
mod read_back;
#[cfg(test)]
mod samples;

pub use calendar::calendar_svg;
pub use clearance::clearance_svg;
pub use cross::cross_svg;
pub use cut_list::{cut_list_dxf, cut_list_svg};
pub use drawings::{body_drawing_svg, drawing_names, plan_drawing_svg};
pub use drawn::Drawn;
pub use dxf::panels_dxf;
pub use exploded::exploded_svg;
pub use gaps::gap_histograms_svg;
pub use gltf::panels_gltf;
pub use group::fastener_group_svg;
pub use lift::lift_svg;
pub use mesh::{PanelMesh, panel_mesh};
pub use movement::movement_svg;
pub use panel::panel_svg;
pub use report::report_html;
pub use section::section_svg;
pub use set_ups::set_up_svgs;
pub use step::panels_step;
pub use stl::panels_stl;
