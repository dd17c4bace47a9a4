//! A plan as files: drawing, solids, report. Pure functions from a [`Plan`](crate::plan::Plan) to text or bytes.
//!
//! | function | gives | for |
//! |---|---|---|
//! | [`section_svg`] | SVG, a sheet of paper at a stated scale | the bench |
//! | [`panels_stl`] | binary STL, millimetres | viewers and printers |
//! | [`report_html`] | one HTML page without script or links, the drawing in it | phone, screen and paper |
//!
//! The same plan gives the same bytes on every machine. Nothing here computes a size of the job: every number comes from
//! the plan, or is measured on its solids.

mod cut;
mod report;
mod section;
mod stl;
mod svg;
mod text;
mod words;

#[cfg(test)]
mod samples;

pub use report::report_html;
pub use section::section_svg;
pub use stl::panels_stl;
