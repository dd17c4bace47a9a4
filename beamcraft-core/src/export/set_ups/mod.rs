//! Sketches of the saw set-ups of a panel, one a cut, in the order of the cuts.
//!
//! A rip is seen from behind the saw the way the board is pushed, the fence on the right; a cross-cut from where the maker
//! stands, the kept piece on the right. Only angles and distances that the plan holds are written; the sketch is not to
//! scale where a board is broken off, and the guard is left out so that the blade is seen.

mod from_above;
mod sketch;
mod words;

use super::drawn::Drawn;
use super::layout::{TITLE, Title, Zone, framed};
use super::svg::{Anchor, LARGE, Line, NORMAL, SIZES, Sheet, Spot, fitted, wrapped};
use super::words::face;
use crate::plan::PanelSawing;
use crate::saw::PanelCut;
use crate::shell::{FaceId, Panel};

/// Most sketches on a sheet.
const ON_A_SHEET: usize = 5;
/// Paper above the sketches for the name of the panel, mm.
const HEAD: f64 = 14.0;
/// Paper below them for what holds for every cut, mm.
const NOTES: f64 = 16.0;
/// Width of the text beside a sketch, mm.
const TEXT: f64 = 74.0;

/// The saw set-ups of a panel of a plan or a [`SawnBody`](crate::plan::SawnBody) as SVG sheets of up to five sketches each; none
/// where there is no such panel.
///
/// Each with the board on the table, which face lies down, the blade as it is tilted, the fence and its distance at the
/// table, the face that shows drawn heavy, the gauge angle of a cross-cut, and what to watch. A4 where lengths are metric,
/// US Letter where they are in inches. The sketches replace neither the saw's manual nor its guard.
///
/// ```
/// # #[cfg(feature = "json")] {
/// use beamcraft_core::{export, plan::{BeamSpec, plan}};
/// let spec: BeamSpec = beamcraft_core::json::read(include_str!("../../../examples/specs/ash_shelf_beam.json"))?;
/// let plan = plan(&spec)?;
/// let sheets = export::set_up_svgs(&plan, plan.panels[0].id);
/// // Second rip of the front: 185 less the board of 20 at 45°.
/// assert!(sheets.len() == 1 && sheets[0].contains(">165<") && sheets[0].contains("tilt 45°"));
/// # }
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn set_up_svgs<'a>(of: impl Into<Drawn<'a>>, id: FaceId) -> Vec<String> {
    let job = of.into();
    let Some(panel) = job.panels.iter().find(|panel| panel.id == id) else { return Vec::new() };
    let pages: Vec<&[PanelCut]> = cuts(job, id).chunks(ON_A_SHEET).collect();
    let page = |(at, cuts): (usize, &&[PanelCut])| draw(job, panel, cuts, (at + 1, pages.len()));
    pages.iter().enumerate().map(page).collect()
}

/// The cuts of a panel.
fn cuts(job: Drawn<'_>, id: FaceId) -> &[PanelCut] {
    let of_panel = |sawing: &&PanelSawing| sawing.panel == id;
    job.cuts.iter().find(of_panel).map_or(&[], |sawing| &sawing.cuts)
}

/// How many sheets the set-ups of a panel take.
pub(super) fn sheet_count(job: Drawn<'_>, id: FaceId) -> usize {
    cuts(job, id).len().div_ceil(ON_A_SHEET)
}

fn draw(job: Drawn<'_>, panel: &Panel, cuts: &[PanelCut], (page, pages): (usize, usize)) -> String {
    let what = format!("Saw set-ups, {}", face(panel.id));
    let description = "Sketches of the saw for each cut: blade, fence, board, which face is down.";
    let (mut sheet, frame) = framed(job, &what, description);
    sheet.heading(Spot::new(frame.left + 3.0, frame.top + 8.0), 1.2 * LARGE, &what);
    if pages > 1 {
        let count = format!("sheet {page} of {pages}");
        sheet.text(Spot::new(frame.right - 3.0, frame.top + 8.0), NORMAL, Anchor::End, &count);
    }
    let foot = frame.bottom - TITLE;
    let zone = Zone { top: frame.top + HEAD, bottom: foot - NOTES, ..frame };
    // As high as with four on the sheet when there are fewer.
    let height = zone.height() / cuts.len().max(4) as f64;
    for (at, cut) in cuts.iter().enumerate() {
        let top = zone.top + height * at as f64;
        let row = Zone { top, bottom: top + height, ..zone };
        sheet.line(Spot::new(row.left, row.top), Spot::new(row.right, row.top), Line::Thin);
        beside(&mut sheet, job, panel, cut, Zone { right: row.left + TEXT, ..row });
        sketch::draw(&mut sheet, job, panel, cut, Zone { left: row.left + TEXT, ..row });
    }
    notes(&mut sheet, Zone { top: foot - NOTES, bottom: foot, ..frame });
    let title = Title {
        what: "Saw set-ups in the order of the cuts",
        scale: None,
        remark: "Distances are at the table, from the fence to the blade; the scale of the saw does not hold for a tilted blade.",
    };
    title.draw(&mut sheet, job, frame);
    sheet.finish()
}

/// What to set, in words, beside its sketch.
fn beside(sheet: &mut Sheet, job: Drawn<'_>, panel: &Panel, cut: &PanelCut, zone: Zone) {
    let left = zone.left + 3.0;
    let heading = format!("{}. {}", cut.step, words::name(panel, cut));
    let room = zone.width() - 5.0;
    sheet.heading(Spot::new(left, zone.top + 6.0), 1.1 * SIZES, &fitted(&heading, room, 1.25 * SIZES));
    let lines = words::lines(job.lengths, cut);
    let lines: Vec<String> = lines.iter().flat_map(|line| wrapped(line, room, NORMAL)).collect();
    // A caution that runs out of room closes the ranks: none is left out.
    let step = ((zone.height() - 13.0) / lines.len().max(1) as f64).min(5.0);
    for (at, line) in lines.iter().enumerate() {
        sheet.text(Spot::new(left, zone.top + 12.0 + step * at as f64), NORMAL, Anchor::Start, line);
    }
}

/// What holds for every cut.
fn notes(sheet: &mut Sheet, zone: Zone) {
    sheet.line(Spot::new(zone.left, zone.top), Spot::new(zone.right, zone.top), Line::Thin);
    let lines = [
        "The guard is left out of the sketches, not off the saw: guard and riving knife in place, insert cut at that tilt.",
        "Test each setting in scrap of the same thickness. Fence and mitre gauge are never used together without an offset stop.",
        "Set up with the saw unplugged, by its manual. The sketches replace neither the manual nor training.",
    ];
    for (at, line) in lines.iter().enumerate() {
        sheet.text(Spot::new(zone.left + 3.0, zone.top + 4.6 + 4.6 * at as f64), NORMAL, Anchor::Start, line);
    }
}
