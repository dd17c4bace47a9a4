//! The parts of the greatest worth from the sheets there are.
#![allow(clippy::indexing_slicing, reason = "indices are made from the lengths of the same tables")]

use super::common_divisor;
use super::patterns::{COARSER, coarse};
use super::ruin::{Kind, Open, Ruin, State};
use super::sheets::{SheetsAnswer, SheetsProblem, collect};
use super::single::best_single;
use super::strips::{best_strips, strip_work};
use super::table::{Grid, Table};
use super::tree::{Axis, Strip};
use super::watch::Watch;

/// Pieces above which a first layout is not improved.
const MANY: u64 = 100_000;

pub(super) fn most_value(problem: &SheetsProblem, watch: &mut Watch<'_>) -> SheetsAnswer {
    let total: i64 = problem.values.iter().zip(&problem.demands).map(|(v, n)| v.saturating_mul(i64::from(*n))).sum();
    let mut bound = total.min(value_by_area(problem));
    watch.note_bound(bound);
    // Copies beyond what all sheets could hold only slow the search down.
    let room = room_for_each(problem);
    let copies: Vec<u32> = room.iter().zip(&problem.demands).map(|(room, n)| *n.min(room)).collect();
    let sheets: u64 = problem.blanks.iter().map(|b| u64::from(b.limit)).sum();
    let single = problem.blanks.iter().position(|b| b.limit > 0).filter(|_| sheets == 1);
    let at_will = copies == room;
    let mut state = State::default();
    let mut value = i64::MIN;
    if let Some(place) = single.filter(|_| at_will) {
        let blank = &problem.blanks[place];
        let found = repeat_at_will(problem, &copies, (blank.w, blank.h), watch);
        bound = bound.min(found.bound);
        if let Some((tree, worth)) = found.layout.filter(|_| problem.free) {
            (state, value) = (on_one_sheet(place, tree), worth);
            watch.note_value(value);
        }
    }
    if value < bound {
        let wanted: u64 = copies.iter().map(|n| u64::from(*n)).sum();
        let capped: Vec<u32> = copies.iter().map(|n| (*n).min(if wanted > 20_000 { 200 } else { u32::MAX })).collect();
        let mut ruin = Ruin::new(&problem.blanks, &problem.kinds, problem.stages, 11);
        let out_value = |state: &State| -> i64 { state.out.iter().map(|k| problem.values[*k as usize]).sum() };
        let capped_total: i64 = problem.values.iter().zip(&capped).map(|(v, n)| v * i64::from(*n)).sum();
        let start = ruin.construct(&capped, watch);
        let start = if wanted > MANY {
            start
        } else {
            let until = watch.used() + (watch.left() / 12).min(30_000_000);
            ruin.improve(start, true, 0, until, watch, 10_000)
        };
        let reached = capped_total - out_value(&start);
        if reached > value {
            (state, value) = (start, reached);
            watch.note_value(value);
        }
        if let Some(place) = single.filter(|_| !at_will) {
            let blank = &problem.blanks[place];
            let found = problem
                .free
                .then(|| {
                    let (worth, demands) = (&problem.values, &problem.demands);
                    best_single(&problem.kinds, worth, demands, (blank.w, blank.h), value, watch)
                })
                .flatten();
            match found {
                Some(found) => {
                    bound = bound.min(found.bound.max(found.value));
                    if let Some(tree) = found.tree {
                        (state, value) = (on_one_sheet(place, tree), found.value);
                    }
                }
                None => bound = bound.min(repeat_at_will(problem, &copies, (blank.w, blank.h), watch).bound),
            }
        }
        if value < bound && watch.open() && wanted <= MANY {
            // What is left of the steps goes into the search by ruin.
            let mut start = state.clone();
            start.out.clear();
            for (k, n) in open_demands(problem, &start.sheets).into_iter().enumerate() {
                start.out.extend(core::iter::repeat_n(k as u32, n.min(capped[k]) as usize));
            }
            let before = out_value(&start);
            let better = ruin.improve(start, true, before - value.max(0), u64::MAX, watch, 400_000);
            let gain = before - out_value(&better);
            if gain > 0 {
                value += gain;
                state = better;
            }
        }
    }
    let mut answer = collect(state, problem.kinds.len(), value, bound.max(value));
    answer.left = open_demands(problem, &answer.sheets);
    answer
}

fn on_one_sheet(blank: usize, root: Strip) -> State {
    State { sheets: vec![Open { blank, root }], out: Vec::new(), cost: 0 }
}

fn area(kind: &Kind) -> i128 {
    i128::from(kind.lying[0].w) * i128::from(kind.lying[0].h)
}

/// Copies of each kind that the area of all sheets could hold.
fn room_for_each(problem: &SheetsProblem) -> Vec<u32> {
    let all: i128 = problem.blanks.iter().map(|b| i128::from(b.w) * i128::from(b.h) * i128::from(b.limit)).sum();
    let most = |kind: &Kind| u32::try_from(all / area(kind).max(1)).unwrap_or(u32::MAX);
    problem.kinds.iter().map(most).collect()
}

fn open_demands(problem: &SheetsProblem, sheets: &[Open]) -> Vec<u32> {
    let mut left = problem.demands.clone();
    for open in sheets {
        open.root.parts(&mut |lying| left[lying.kind as usize] = left[lying.kind as usize].saturating_sub(1));
    }
    left
}

/// A layout with its value, and a value that no layout exceeds.
struct AtWill {
    layout: Option<(Strip, i64)>,
    bound: i64,
}

/// One sheet with as many copies as it holds. The table over all cuts is exact; where it costs too much, the best
/// pattern of three stages, and the table over sizes that are rounded down as the bound.
fn repeat_at_will(problem: &SheetsProblem, copies: &[u32], (w, h): (i64, i64), watch: &mut Watch<'_>) -> AtWill {
    let closed = copies == room_for_each(problem);
    let grid = if closed {
        Grid::at_will(&problem.kinds, (w, h), 6_000)
    } else {
        Grid::of(&problem.kinds, copies, &[(w, h)], 4_000)
    };
    // Where the values of a line do not rise nothing is looked at: most of the work falls away.
    if let Some(grid) = grid.filter(|grid| grid.steps() / 4 <= watch.left()) {
        let table = Table::new(&grid, &problem.kinds, &problem.values, |_, _| i64::MAX);
        watch.spend(table.steps());
        let value = table.of_sheet(w, h);
        return AtWill { layout: Some((table.tree(Axis::X, w, h), value)), bound: value };
    }
    let lying = || problem.kinds.iter().flat_map(|k| &k.lying);
    let unit = (common_divisor(lying().map(|l| l.w)).max(1), common_divisor(lying().map(|l| l.h)).max(1));
    let work = strip_work(&problem.kinds, w, h, unit) / 4;
    let mut layout: Option<(Strip, i64)> = None;
    if work <= watch.left() / 4 {
        watch.spend(work);
        for axis in [Axis::X, Axis::Y] {
            if let Some((value, tree)) = best_strips(&problem.kinds, &problem.values, (w, h), axis, unit)
                && layout.as_ref().is_none_or(|(_, old)| value > *old)
            {
                layout = Some((tree, value));
            }
        }
    }
    // As fine as half of what is left pays.
    for unit in COARSER {
        let (small, by) = coarse(&problem.kinds, unit);
        let sheet = (w / by.0, h / by.1);
        let Some(grid) = Grid::of(&small, copies, &[sheet], 2_000) else { continue };
        if grid.steps() <= watch.left() / 2 {
            watch.spend(grid.steps());
            let table = Table::new(&grid, &small, &problem.values, |_, _| i64::MAX);
            return AtWill { layout, bound: table.of_sheet(sheet.0, sheet.1) };
        }
    }
    AtWill { layout, bound: i64::MAX }
}

/// Value that the area of all sheets could hold, the best rates first.
fn value_by_area(problem: &SheetsProblem) -> i64 {
    let mut room: i128 = problem.blanks.iter().map(|b| i128::from(b.w) * i128::from(b.h) * i128::from(b.limit)).sum();
    let mut order: Vec<usize> = (0..problem.kinds.len()).collect();
    let rate = |k: usize| problem.values[k] as f64 / area(&problem.kinds[k]) as f64;
    order.sort_by(|a, b| rate(*b).total_cmp(&rate(*a)));
    let mut sum = 0_i128;
    for k in order {
        let each = area(&problem.kinds[k]).max(1);
        let fit = (room / each).min(i128::from(problem.demands[k]));
        sum += fit * i128::from(problem.values[k]);
        room -= fit * each;
        if fit < i128::from(problem.demands[k]) {
            // One more for the order of near ties.
            sum += room * i128::from(problem.values[k]) / each + 1;
            break;
        }
    }
    i64::try_from(sum).unwrap_or(i64::MAX)
}
