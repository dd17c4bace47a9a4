//! The linear programme over the patterns of a sheet: what its prices prove, and the whole part of its patterns as a start.
#![allow(clippy::indexing_slicing, reason = "indices are made from the lengths of the same tables")]

use super::bars::UNLIMITED;
use super::common_divisor;
use super::master::{Basic, Column, Master, Sense};
use super::ruin::{Kind, Open, State};
use super::sheets::SheetsProblem;
use super::single::AreaCap;
use super::strips::{best_strips, strip_work};
use super::table::{Grid, Table};
use super::tree::{Axis, Lying, Strip};
use super::watch::Watch;

/// Cells of a table above which it is too slow to price every column by it.
const PRICED_BY_TABLE: u64 = 40_000_000;
/// Steps of the one large table that a bound may cost.
const BOUND_TABLE: u64 = 600_000_000;

/// Whether fillings can be remembered cell by cell.
fn small_enough(grid: &Grid, kinds: usize) -> bool {
    grid.xs.len() * grid.ys.len() * kinds < 20_000_000
}

/// Divisors of the sizes, one after the other, until a table over them costs little enough.
pub(super) const COARSER: [i64; 19] =
    [1, 2, 3, 5, 8, 12, 20, 30, 50, 80, 120, 200, 500, 1_000, 2_000, 5_000, 10_000, 20_000, 50_000];

/// Kinds with every size divided and rounded down, so that whatever fits really fits there too; with the divisors along
/// each axis, which are `unit` or, where that is less, the smallest side: none may vanish.
pub(super) fn coarse(kinds: &[Kind], unit: i64) -> (Vec<Kind>, (i64, i64)) {
    let lying = || kinds.iter().flat_map(|k| &k.lying);
    let by = (lying().map(|l| l.w).fold(unit, i64::min).max(1), lying().map(|l| l.h).fold(unit, i64::min).max(1));
    let divide = |l: &Lying| Lying { w: l.w / by.0, h: l.h / by.1, ..*l };
    let divided = |k: &Kind| Kind { lying: k.lying.iter().map(divide).collect(), ..k.clone() };
    (kinds.iter().map(divided).collect(), by)
}

/// What prices prove: see the module on bars for the formula. `best` holds a value that no filling of a sheet exceeds.
fn proven(problem: &SheetsProblem, worth: &[i64], best: &[i64], scale: i64) -> i64 {
    let total: i128 = worth.iter().zip(&problem.demands).map(|(w, d)| i128::from(*w) * i128::from(*d)).sum();
    let (mut top, mut under) = (1_i128, 1_i128);
    for (blank, z) in problem.blanks.iter().zip(best) {
        let (cost, z) = (i128::from(blank.cost) * i128::from(scale), i128::from(*z));
        if blank.limit == UNLIMITED && z > cost && cost * under < top * z {
            (top, under) = (cost, z);
        }
    }
    let mut sum = total * top;
    for (blank, z) in problem.blanks.iter().zip(best) {
        let spare = i128::from(blank.cost) * i128::from(scale) * under - i128::from(*z) * top;
        if spare < 0 && blank.limit != UNLIMITED {
            sum += spare * i128::from(blank.limit);
        }
    }
    let per = under * i128::from(scale);
    i64::try_from((sum + per - 1).div_euclid(per)).unwrap_or(0)
}

/// A kind of sheet, how many of each kind of part lie on it, and the cuts.
type Pattern = (usize, Vec<(u32, u32)>, Strip);

/// The linear programme over patterns: a bound, and the whole part of its patterns as a start.
pub(super) fn programme(problem: &SheetsProblem, value: i64, watch: &mut Watch<'_>) -> Option<(i64, Option<State>)> {
    let n = problem.kinds.len();
    if n > 600 {
        return None;
    }
    let sizes: Vec<(i64, i64)> = problem.blanks.iter().map(|b| (b.w, b.h)).collect();
    let grid = Grid::of(&problem.kinds, &problem.demands, &sizes, 700)
        .filter(|g| g.work() <= PRICED_BY_TABLE && g.steps() <= watch.left());
    let budget = watch.used() + watch.left() * 2 / 3;
    let limited: Vec<usize> = (0..problem.blanks.len()).filter(|k| problem.blanks[*k].limit != UNLIMITED).collect();
    let mut senses = vec![Sense::AtLeast; n];
    let mut rhs: Vec<f64> = problem.demands.iter().map(|d| f64::from(*d)).collect();
    for k in &limited {
        senses.push(Sense::AtMost);
        rhs.push(f64::from(problem.blanks[*k].limit));
    }
    let dearest = problem.blanks.iter().map(|b| b.cost).max().unwrap_or(1).max(1);
    let mut master = Master::new(senses, &rhs, dearest as f64 * 50.0);
    let mut patterns: Vec<Pattern> = Vec::new();
    let scale = (1_000_000_000 / dearest).max(1);
    let lying = || problem.kinds.iter().flat_map(|k| &k.lying);
    let unit = (common_divisor(lying().map(|l| l.w)).max(1), common_divisor(lying().map(|l| l.h)).max(1));
    let strip_steps: u64 = sizes.iter().map(|(w, h)| strip_work(&problem.kinds, *w, *h, unit)).sum();
    let (mut by_strips, mut proper, mut bound) = (strip_steps <= 20_000_000, false, 0_i64);
    let mut worth: Vec<i64> = Vec::new();
    for _ in 0..4_000 {
        let before = master.pivots;
        master.settle(5_000);
        watch.spend((master.pivots - before + 1) * ((master.rows * master.rows) as u64 / 16 + 8));
        worth = master.prices.iter().take(n).map(|p| (p * scale as f64).clamp(0.0, 1e15) as i64).collect();
        let mut found: Vec<(usize, Strip)> = Vec::new();
        if by_strips {
            watch.spend(strip_steps / 8);
            for (k, (w, h)) in sizes.iter().enumerate() {
                for axis in [Axis::X, Axis::Y] {
                    found.extend(best_strips(&problem.kinds, &worth, (*w, *h), axis, unit).map(|f| (k, f.1)));
                }
            }
        } else if let Some(grid) = grid.as_ref().filter(|_| proper) {
            watch.spend(4 * grid.steps() + (grid.xs.len() * grid.ys.len() * n) as u64 / 6);
            let cap = AreaCap::new(&problem.kinds, &worth, &problem.demands);
            let table = Table::new(grid, &problem.kinds, &worth, |x, y| cap.of(x, y));
            let best: Vec<i64> = problem.blanks.iter().map(|b| table.of_sheet(b.w, b.h)).collect();
            bound = bound.max(proven(problem, &worth, &best, scale));
            watch.note_bound(bound);
            if bound >= value {
                break;
            }
            let table = Table::limited(grid, &problem.kinds, &worth, &problem.demands);
            found.extend(sizes.iter().enumerate().map(|(k, (w, h))| (k, table.tree(Axis::X, *w, *h))));
        } else if let Some(grid) = &grid {
            watch.spend(grid.steps());
            let table = Table::new(grid, &problem.kinds, &worth, |_, _| i64::MAX);
            let best: Vec<i64> = problem.blanks.iter().map(|b| table.of_sheet(b.w, b.h)).collect();
            bound = bound.max(proven(problem, &worth, &best, scale));
            watch.note_bound(bound);
            if bound >= value || (master.shortage() < 1e-4 && (master.value() - 1e-4).ceil() <= bound as f64) {
                if bound >= value || !small_enough(grid, n) {
                    break;
                }
            } else {
                found.extend(sizes.iter().enumerate().map(|(k, (w, h))| (k, table.tree(Axis::X, *w, *h))));
            }
        }
        if !watch.open() || watch.used() > budget {
            break;
        }
        let mut entered = false;
        for (k, tree) in found {
            let blank = &problem.blanks[k];
            if blank.limit == 0 {
                continue;
            }
            let mut counts = vec![0_u32; n];
            tree.parts(&mut |l| counts[l.kind as usize] += 1);
            let pieces: Vec<(u32, u32)> =
                counts.iter().enumerate().filter(|(_, c)| **c > 0).map(|(k, c)| (k as u32, *c)).collect();
            let mut rows: Vec<(u32, f64)> = pieces.iter().map(|(k, c)| (*k, f64::from(*c))).collect();
            if let Some(place) = limited.iter().position(|l| *l == k) {
                rows.push(((n + place) as u32, 1.0));
            }
            let column = Column { cost: blank.cost as f64, rows, shut: false };
            if master.reduced_cost(&column) < -1e-7 * dearest as f64 {
                master.add(column);
                patterns.push((k, pieces, tree));
                entered = true;
            }
        }
        if !entered {
            if by_strips && grid.is_some() {
                by_strips = false;
            } else if !proper && grid.as_ref().is_some_and(|g| small_enough(g, n)) {
                // Now only patterns within the copies there are; the sheet's value is capped by them too.
                proper = true;
                for (column, (_, pieces, _)) in master.columns.iter_mut().zip(&patterns) {
                    column.shut |= pieces.iter().any(|(k, c)| *c > problem.demands[*k as usize]);
                }
                master.reprice();
            } else {
                break;
            }
        }
    }
    if grid.is_none() && !worth.is_empty() {
        // One table for the bound alone, as fine as can be paid.
        for unit in COARSER {
            let (small, by) = coarse(&problem.kinds, unit);
            let ends: Vec<(i64, i64)> = sizes.iter().map(|(w, h)| (w / by.0, h / by.1)).collect();
            let Some(grid) = Grid::of(&small, &problem.demands, &ends, 1_500) else { continue };
            if grid.work() > BOUND_TABLE || grid.steps() > watch.left() {
                continue;
            }
            watch.spend(grid.steps());
            let table = Table::new(&grid, &small, &worth, |_, _| i64::MAX);
            let best: Vec<i64> = ends.iter().map(|(w, h)| table.of_sheet(*w, *h)).collect();
            bound = bound.max(proven(problem, &worth, &best, scale));
            watch.note_bound(bound);
            break;
        }
    }
    if !problem.free {
        return Some((bound, None));
    }
    // Whole numbers of the patterns, as far as the demands go.
    let mut left = problem.demands.clone();
    let mut limits: Vec<u32> = problem.blanks.iter().map(|b| b.limit).collect();
    let mut state = State::default();
    let mut used: Vec<(usize, f64)> = master
        .basis
        .iter()
        .zip(&master.x)
        .filter_map(|(basic, x)| if let Basic::Column(k) = basic { Some((*k, *x)) } else { None })
        .collect();
    used.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
    for (k, x) in used {
        let (blank, pieces, tree) = &patterns[k];
        let mut times = (x + 1e-4).floor() as u32;
        times = times.min(limits[*blank]);
        for (kind, c) in pieces {
            times = times.min(left[*kind as usize] / c);
        }
        for (kind, c) in pieces {
            left[*kind as usize] -= c * times;
        }
        if limits[*blank] != UNLIMITED {
            limits[*blank] -= times;
        }
        for _ in 0..times {
            state.sheets.push(Open { blank: *blank, root: tree.clone() });
            state.cost += problem.blanks[*blank].cost;
        }
    }
    Some((bound, Some(state)))
}
