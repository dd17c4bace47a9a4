//! The cross section of the body as it hangs, as a sheet for the bench.
//!
//! Cut at mid length and seen from the right end, so that the wall is on the right. The panels are cut from their
//! solids; nothing is drawn that the plan does not hold.

mod draw;
mod legend;
mod scene;
mod view;

#[cfg(test)]
mod tests;

use super::layout::{Zone, framed};
use crate::plan::Plan;
use draw::Pen;
use legend::Legend;
use scene::Scene;
use view::View;

/// The cross section of a plan's body at mid length as an SVG sheet, at a scale that is written on it.
///
/// A4 where lengths are metric, US Letter where they are in inches. Panels are hatched, show faces drawn heavy; with
/// bevels, sizes, both halves of the cleat, the lift they need, the screw and its reach into the stud, heights from the
/// underside and above the floor, the centre of gravity, and whatever stands out from the wall close above.
pub fn section_svg(plan: &Plan) -> String {
    let scene = Scene::of(plan);
    let description = "Hollow beam cut at mid length, seen from the right end: panels, cleat, wall and dimensions.";
    let (mut sheet, frame) = framed(plan.into(), "Cross section", description);
    let mut legend = Legend::of(&scene);
    let zone = Zone { bottom: frame.bottom - legend.height(), ..frame };
    let view = View::fit(&scene, zone);
    Pen { sheet: &mut sheet, scene: &scene, view: &view, legend: &mut legend }.draw();
    legend.draw(&mut sheet, &scene, &view, Zone { top: zone.bottom, ..frame });
    sheet.finish()
}
