//! One panel as a sheet: its show face, a section across the grain and one along it, and every edge in a table.

mod table;
mod views;

use super::drawn::Drawn;
use super::layout::{TITLE, Title, Zone, framed};
use super::svg::{Anchor, LARGE, NORMAL, Spot};
use super::words;
use crate::shell::FaceId;
use views::Views;

/// Paper above the views for the name of the panel, mm.
const HEAD: f64 = 14.0;

/// A panel of a plan or a [`SawnBody`](crate::plan::SawnBody) as an SVG sheet: what its saw and its bench need; nothing where
/// there is no such panel.
///
/// The show face square to the eye with the grain level, a section across the grain (A–A) and one along it (B–B, shortened
/// where it is long) with the show face up: long-point and short-point sizes, thickness, and each edge by its number with
/// bevel, angle in the face and lengths on both faces. A4 where lengths are metric, US Letter where they are in inches.
///
/// ```
/// # #[cfg(feature = "json")] {
/// use beamcraft_core::{export, plan::{BeamSpec, plan}};
/// let spec: BeamSpec = beamcraft_core::json::read(include_str!("../../../examples/specs/ash_shelf_beam.json"))?;
/// let plan = plan(&spec)?;
/// let sheet = export::panel_svg(&plan, plan.panels[0].id).unwrap_or_default();
/// // Long points 1830 apart, short points two boards of 20 less.
/// assert!(sheet.contains(">1830<") && sheet.contains(">1790<"));
/// # }
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn panel_svg<'a>(of: impl Into<Drawn<'a>>, id: FaceId) -> Option<String> {
    let job = of.into();
    let at = job.panels.iter().position(|panel| panel.id == id)?;
    let panel = job.panels.get(at)?;
    let name = words::face(panel.id);
    let what = format!("Panel {name}");
    let description = "One panel: show face, sections across and along the grain, bevel of every edge, dimensions.";
    let (mut sheet, frame) = framed(job, &what, description);
    sheet.heading(Spot::new(frame.left + 3.0, frame.top + 8.0), 1.2 * LARGE, &what);
    let count = format!("{} of {}", at + 1, job.panels.len());
    sheet.text(Spot::new(frame.right - 3.0, frame.top + 8.0), NORMAL, Anchor::End, &count);
    let foot = frame.bottom - TITLE;
    let table = table::height(panel);
    let views = Views::of(panel, job.lengths);
    let scale = views.draw(&mut sheet, Zone { top: frame.top + HEAD, bottom: foot - table, ..frame });
    table::draw(&mut sheet, job, panel, Zone { top: foot - table, bottom: foot, ..frame });
    let title = Title {
        what: "Seen square to its show face; the grain runs level",
        scale: Some(scale),
        remark: "The scale is that of the show face; sections are larger. Take sizes from the numbers, not from the paper.",
    };
    title.draw(&mut sheet, job, frame);
    Some(sheet.finish())
}
