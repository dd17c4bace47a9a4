//! From boards with kerfs and flaws to the search in whole numbers, and back.

use super::around::starts_around;
use super::engine::bars::UNLIMITED;
use super::engine::common_divisor;
use super::engine::ruin::{Blank, Kind, Open, plain_starts};
use super::engine::sheets::{Aim, SheetsProblem, solve_sheets};
use super::engine::tree::{Axis, Body, Lying, Strip};
use super::engine::watch::Watch;
use super::fit::{whole, whole_up};

/// A rectangle of a board that no part may touch, from the corner of the usable board.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Flaw {
    pub(super) x: (i64, i64),
    /// The whole width where absent.
    pub(super) y: Option<(i64, i64)>,
}

impl Flaw {
    pub(super) fn of(along_mm: (f64, f64), across_mm: Option<(f64, f64)>) -> Self {
        let kept = |(from, to): (f64, f64)| (whole(from), whole_up(to));
        Self { x: kept(along_mm), y: across_mm.map(kept) }
    }
}

/// A kind of board: its usable size, with the kerf that the last cut may lose beyond its edge.
#[derive(Clone, Debug)]
pub(super) struct Sheet {
    pub(super) w: i64,
    pub(super) h: i64,
    pub(super) cost: i64,
    pub(super) limit: u32,
    pub(super) flaws: Vec<Flaw>,
}

/// A kind of part with its kerf.
#[derive(Clone, Debug)]
pub(super) struct Rect {
    pub(super) w: i64,
    pub(super) h: i64,
    /// The other way round, where that is allowed.
    pub(super) turned: Option<(i64, i64)>,
    pub(super) count: u32,
    pub(super) worth: i64,
    pub(super) inner_stages: u32,
}

impl Rect {
    pub(super) fn fixed(w: i64, h: i64, count: u32) -> Self {
        Self { w, h, turned: None, count, worth: 0, inner_stages: 0 }
    }
}

/// A whole search.
#[derive(Clone, Debug, Default)]
pub(super) struct Task {
    pub(super) sheets: Vec<Sheet>,
    pub(super) parts: Vec<Rect>,
    pub(super) kerf: (i64, i64),
    pub(super) most_worth: Option<MostWorth>,
    pub(super) first: Option<Axis>,
    pub(super) stages: Option<u32>,
}

/// Asks for the greatest worth instead of all parts.
#[derive(Clone, Copy, Debug)]
pub(super) struct MostWorth;

/// What was found: kind of sheet, its tree, how many alike.
pub(super) struct Solved {
    pub(super) sheets: Vec<(usize, Strip, u32)>,
    pub(super) left: Vec<u32>,
    pub(super) value: i64,
    pub(super) bound: i64,
}

/// Stages of cuts where no number is given: deeper trees do not occur.
const ANY_STAGES: u32 = 99;

pub(super) fn solve(task: &Task, watch: &mut Watch<'_>) -> Solved {
    let flawless = task.sheets.iter().all(|sheet| sheet.flaws.is_empty());
    let free = flawless && task.first.is_none() && task.stages.is_none();
    // Only where a trimming cut more does no harm: sizes in their largest common unit.
    let unit = if free { common_unit(&task.parts) } else { (1, 1) };
    let stages = task.stages.unwrap_or(ANY_STAGES);
    let blanks = task
        .sheets
        .iter()
        .map(|sheet| {
            let (w, h) = (sheet.w / unit.0, sheet.h / unit.1);
            let starts = if sheet.flaws.is_empty() {
                plain_starts(w, h, task.first)
            } else {
                starts_around((w, h), &sheet.flaws, task.kerf, task.first)
            };
            Blank { w, h, cost: sheet.cost, limit: sheet.limit, starts }
        })
        .collect();
    let kinds = task.parts.iter().enumerate().map(|(k, part)| {
        let lie = |(w, h): (i64, i64), turned| Lying { kind: k as u32, turned, w: w / unit.0, h: h / unit.1 };
        let turned = part.turned.filter(|sides| *sides != (part.w, part.h)).map(|sides| lie(sides, 1));
        let lying: Vec<Lying> = [lie((part.w, part.h), 0)].into_iter().chain(turned).collect();
        let weight = if task.most_worth.is_some() { part.worth } else { part.w.saturating_mul(part.h) };
        Kind { lying, weight, inner_stages: part.inner_stages }
    });
    let problem = SheetsProblem {
        blanks,
        kinds: kinds.collect(),
        demands: task.parts.iter().map(|part| part.count).collect(),
        values: task.parts.iter().map(|part| part.worth).collect(),
        aim: if task.most_worth.is_some() { Aim::MostValue } else { Aim::AllParts },
        stages,
        free,
    };
    let mut answer = solve_sheets(&problem, watch);
    for open in &mut answer.sheets {
        enlarge(&mut open.root, unit);
    }
    Solved { sheets: alike(answer.sheets), left: answer.left, value: answer.value, bound: answer.bound }
}

/// Largest unit of all sizes along each axis.
fn common_unit(parts: &[Rect]) -> (i64, i64) {
    let sides = || parts.iter().flat_map(|part| [Some((part.w, part.h)), part.turned]).flatten();
    (common_divisor(sides().map(|s| s.0)).max(1), common_divisor(sides().map(|s| s.1)).max(1))
}

/// Sizes of the tree back in whole numbers of the caller; what is free at the ends is measured on the board itself.
fn enlarge(strip: &mut Strip, unit: (i64, i64)) {
    let (along, across) = if strip.axis == Axis::X { unit } else { (unit.1, unit.0) };
    strip.free *= along;
    strip.cross *= across;
    for member in &mut strip.members {
        member.extent *= along;
        match &mut member.body {
            Body::Part(lying) => (lying.w, lying.h) = (lying.w * unit.0, lying.h * unit.1),
            Body::Strip(inner) => enlarge(inner, unit),
            Body::Waste => {}
        }
    }
}

/// Equal boards together.
fn alike(sheets: Vec<Open>) -> Vec<(usize, Strip, u32)> {
    let mut groups: Vec<(usize, Strip, u32)> = Vec::new();
    for open in sheets {
        match groups.iter_mut().find(|group| group.0 == open.blank && group.1 == open.root) {
            Some(group) => group.2 += 1,
            None => groups.push((open.blank, open.root, 1)),
        }
    }
    groups
}

/// A number of boards as the search knows it.
pub(super) fn limit(count: Option<u32>) -> u32 {
    count.unwrap_or(UNLIMITED)
}
