//! The report.

use crate::plan::Plan;

/// The report.
pub fn report_html(_: &Plan) -> String { String::new() }
