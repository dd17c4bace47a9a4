//! The report: everything a maker takes to the bench and everything a reviewer wants to follow, on one page.
//!
//! One HTML file with its style and its drawing inside: no script, no link, no font from elsewhere. Readable on a phone,
//! on a dark screen, and printed on A4 or Letter. What was found and the cautions come first.

mod checks;
mod page;
mod sawing;
mod seams;
mod site;
mod supply;
mod work;

#[cfg(test)]
mod tests;

use super::section::section_svg;
use super::text::shortened;
use crate::plan::{LegShape, Plan};
use page::{Html, Page};

const STYLE: &str = include_str!("style.css");

/// Longest name in the title of the document; the heading has it whole.
const MOST_TITLE: usize = 120;

/// A plan as one self-contained HTML page.
///
/// Findings with their cures and the standing cautions come first, then the cross section, panels, saw settings, frame,
/// cleat with marks and load cases, the body through the year, gaps at the seams, every check with its clause and factors, finish, glue, mass, and what was not
/// checked. Outcomes are written in words: `met`, `not met`, `not covered`, `not determined`.
pub fn report_html(plan: &Plan) -> String {
    let mut page = Page::default();
    let name = if plan.spec.name.is_empty() { "Hollow beam" } else { &plan.spec.name };
    page.title(&Html::name(name));
    page.remark(sizes(plan));
    page.paragraph(checks::summary(plan));
    checks::findings(&mut page, plan);
    checks::cautions(&mut page, plan);
    page.heading("Cross section");
    page.drawing(&section_svg(plan));
    work::panels(&mut page, plan);
    sawing::cuts(&mut page, plan);
    work::frame(&mut page, plan);
    work::assembly(&mut page, plan);
    work::cleat(&mut page, plan);
    site::site(&mut page, plan);
    site::hanging(&mut page, plan);
    checks::clearance(&mut page, plan);
    seams::movement(&mut page, plan);
    seams::tolerance(&mut page, plan);
    checks::checks(&mut page, plan);
    supply::finish(&mut page, plan);
    supply::glue_and_mass(&mut page, plan);
    page.heading("Not checked");
    page.list(plan.not_checked.iter().copied());
    page.finish(&shortened(name, MOST_TITLE), STYLE)
}

/// Outer sizes and wood in one line.
fn sizes(plan: &Plan) -> String {
    let lengths = plan.spec.lengths;
    let legs = plan.spec.body.legs.iter().map(|shape| match shape {
        LegShape::Rectangular(leg) => format!(
            "{} long, {} high, {} deep",
            lengths.full(leg.length_mm),
            lengths.full(leg.height_mm),
            lengths.full(leg.depth_mm)
        ),
    });
    let legs: Vec<String> = legs.collect();
    format!("{}; {}. {}", legs.join("; "), plan.spec.wood.species, lengths.described())
}
