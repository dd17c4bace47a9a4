//! Cutting parts from sheets by cuts from edge to edge: the whole run from a problem to an answer with its bound.
#![allow(clippy::indexing_slicing, reason = "indices are made from the lengths of the same tables")]

use super::area_bound::{by_area, by_functions};
use super::bars::UNLIMITED;
use super::common_divisor;
use super::master::{Basic, Column, Master, Sense};
use super::ruin::{Blank, Kind, Open, Ruin, State};
use super::single::{AreaCap, best_single};
use super::strips::{best_strips, strip_work};
use super::table::{Grid, Table};
use super::tree::{Axis, Body, Strip};
use super::watch::Watch;

/// What is sought.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Aim {
    /// All parts, from sheets of the least cost.
    AllParts,
    /// The parts of the greatest value from the sheets there are.
    MostValue,
}

pub(crate) struct SheetsProblem {
    pub(crate) blanks: Vec<Blank>,
    pub(crate) kinds: Vec<Kind>,
    pub(crate) demands: Vec<u32>,
    pub(crate) values: Vec<i64>,
    pub(crate) aim: Aim,
    /// Cuts may follow one another to this depth.
    pub(crate) stages: u32,
    /// Whether any way of cutting is allowed and no sheet has flaws, so that an exact search covers all of them.
    pub(crate) free: bool,
}

#[derive(Debug, Default)]
pub(crate) struct SheetsAnswer {
    pub(crate) sheets: Vec<Open>,
    pub(crate) left: Vec<u32>,
    /// Cost for all parts, value for the most value.
    pub(crate) value: i64,
    pub(crate) bound: i64,
}

/// Sheets above which the search works on a few of them at a time.
const WINDOW: usize = 40;

pub(crate) fn solve_sheets(problem: &SheetsProblem, watch: &mut Watch<'_>) -> SheetsAnswer {
    let mut answer = match problem.aim {
        Aim::AllParts => all_parts(problem, watch),
        Aim::MostValue => most_value(problem, watch),
    };
    if answer.left.is_empty() {
        answer.left = vec![0; problem.kinds.len()];
    }
    answer
}

fn collect(state: State, kinds: usize, value: i64, bound: i64) -> SheetsAnswer {
    let mut left = vec![0; kinds];
    for k in &state.out {
        left[*k as usize] += 1;
    }
    SheetsAnswer { sheets: state.sheets, left, value, bound }
}

fn most_value(problem: &SheetsProblem, watch: &mut Watch<'_>) -> SheetsAnswer {
    let total: i64 = problem.values.iter().zip(&problem.demands).map(|(v, n)| v.saturating_mul(i64::from(*n))).sum();
    let sheets: u64 = problem.blanks.iter().map(|b| u64::from(b.limit)).sum();
    let mut ruin = Ruin::new(&problem.blanks, &problem.kinds, problem.stages, 11);
    // Copies beyond what all sheets could hold only slow the search down.
    let all_area: f64 =
        problem.blanks.iter().map(|b| b.w as f64 * b.h as f64 * f64::from(b.limit.min(1_000_000))).sum();
    let copies: Vec<u32> = problem
        .kinds
        .iter()
        .zip(&problem.demands)
        .map(|(kind, n)| {
            let lying = kind.lying[0];
            (*n).min((all_area / (lying.w as f64 * lying.h as f64)).floor().min(1e9) as u32)
        })
        .collect();
    let wanted: u64 = copies.iter().map(|n| u64::from(*n)).sum();
    let endless = copies.iter().zip(&problem.demands).all(|(a, b)| a < b) || wanted > 100_000;
    let capped: Vec<u32> = copies.iter().map(|n| (*n).min(if wanted > 20_000 { 200 } else { u32::MAX })).collect();
    let start = ruin.construct(&capped, watch);
    let out_value = |state: &State| -> i64 { state.out.iter().map(|k| problem.values[*k as usize]).sum() };
    let capped_total: i64 = problem.values.iter().zip(&capped).map(|(v, n)| v * i64::from(*n)).sum();
    let (until, patience) = (watch.used() + (watch.left() / 12).min(30_000_000), 10_000);
    let mut state = if endless { start } else { ruin.improve(start, true, 0, until, watch, patience) };
    let mut value = capped_total - out_value(&state);
    let mut bound = total;
    watch.note_value(value);
    if sheets == 1 {
        if let Some(blank) = problem.blanks.iter().find(|b| b.limit > 0) {
            let (w, h) = (blank.w, blank.h);
            if endless {
                if let Some((tree, best)) = repeat_at_will(problem, &copies, (w, h), watch) {
                    bound = bound.min(best);
                    if problem.free
                        || tree.depth() <= problem.stages
                            && blank.starts.iter().any(|s| s.axis == tree.axis)
                            && problem.free
                    {
                        let place = problem.blanks.iter().position(|b| b.limit > 0).unwrap_or(0);
                        state = State { sheets: vec![Open { blank: place, root: tree }], out: Vec::new(), cost: 0 };
                        value = best;
                        let mut answer = collect(state, problem.kinds.len(), value, bound);
                        answer.left = open_demands(problem, &answer.sheets);
                        return answer;
                    }
                }
            } else {
                let known = if problem.free { value } else { i64::MIN / 4 };
                let found = if problem.free {
                    best_single(&problem.kinds, &problem.values, &problem.demands, (w, h), known, watch)
                } else {
                    None
                };
                if let Some(found) = found {
                    bound = bound.min(found.bound.max(found.value));
                    if let Some(tree) = found.tree {
                        let place = problem.blanks.iter().position(|b| b.limit > 0).unwrap_or(0);
                        state = State { sheets: vec![Open { blank: place, root: tree }], out: Vec::new(), cost: 0 };
                        value = found.value;
                    }
                } else if let Some((_, best)) = repeat_at_will(problem, &copies, (w, h), watch) {
                    bound = bound.min(best);
                }
            }
        }
    } else {
        bound = bound.min(value_by_area(problem));
    }
    if value < bound && watch.open() && !endless {
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
    let mut answer = collect(state, problem.kinds.len(), value, bound.max(value));
    answer.left = open_demands(problem, &answer.sheets);
    answer
}

fn open_demands(problem: &SheetsProblem, sheets: &[Open]) -> Vec<u32> {
    let mut left = problem.demands.clone();
    for open in sheets {
        open.root.parts(&mut |lying| left[lying.kind as usize] = left[lying.kind as usize].saturating_sub(1));
    }
    left
}

fn repeat_at_will(
    problem: &SheetsProblem,
    copies: &[u32],
    (w, h): (i64, i64),
    watch: &mut Watch<'_>,
) -> Option<(Strip, i64)> {
    let grid = Grid::of(&problem.kinds, copies, &[(w, h)], 4_000)?;
    if grid.steps() > watch.left() {
        return None;
    }
    watch.spend(grid.steps());
    let table = Table::new(&grid, &problem.kinds, &problem.values, |_, _| i64::MAX);
    Some((table.tree(Axis::X, w, h), table.of_sheet(w, h)))
}

/// Value that the area of all sheets could hold, the best rates first.
fn value_by_area(problem: &SheetsProblem) -> i64 {
    let mut room: i128 = problem.blanks.iter().map(|b| i128::from(b.w) * i128::from(b.h) * i128::from(b.limit)).sum();
    let area = |k: usize| {
        let lying = problem.kinds[k].lying[0];
        i128::from(lying.w) * i128::from(lying.h)
    };
    let mut order: Vec<usize> = (0..problem.kinds.len()).collect();
    let rate = |k: usize| problem.values[k] as f64 / area(k) as f64;
    order.sort_by(|a, b| rate(*b).total_cmp(&rate(*a)));
    let mut sum = 0_i128;
    for k in order {
        let fit = (room / area(k)).min(i128::from(problem.demands[k]));
        sum += fit * i128::from(problem.values[k]);
        room -= fit * area(k);
        if fit < i128::from(problem.demands[k]) {
            // One more for the order of near ties.
            sum += room * i128::from(problem.values[k]) / area(k) + 1;
            break;
        }
    }
    i64::try_from(sum).unwrap_or(i64::MAX)
}

fn all_parts(problem: &SheetsProblem, watch: &mut Watch<'_>) -> SheetsAnswer {
    let unit = common_divisor(problem.blanks.iter().map(|b| b.cost)).max(1);
    let up = |bound: i64| (bound + unit - 1) / unit * unit;
    let mut bound = up(by_area(&problem.blanks, &problem.kinds, &problem.demands));
    let fixed = problem.kinds.iter().all(|k| k.lying.len() == 1);
    if let [blank] = problem.blanks.as_slice()
        && fixed
        && problem.kinds.len() <= 3_000
    {
        let (sheets, steps) = by_functions(blank.w, blank.h, &problem.kinds, &problem.demands);
        watch.spend(steps);
        bound = bound.max(sheets.saturating_mul(blank.cost));
    }
    watch.note_bound(bound);
    let count: u64 = problem.demands.iter().map(|n| u64::from(*n)).sum();
    let mut ruin = Ruin::new(&problem.blanks, &problem.kinds, problem.stages, 5);
    let mut state = ruin.construct(&problem.demands, watch);
    if !state.out.is_empty() {
        // Not everything fits as it is; perhaps it does when moved about.
        let until = watch.used() + watch.left() / 2;
        state = ruin.improve(state, true, 0, until, watch, 100_000);
        if !state.out.is_empty() {
            let value = state.cost;
            return collect(state, problem.kinds.len(), value, 0);
        }
    }
    watch.note_value(state.cost);
    let area = problem
        .kinds
        .iter()
        .zip(&problem.demands)
        .map(|(kind, n)| i128::from(kind.lying[0].w) * i128::from(kind.lying[0].h) * i128::from(*n));
    let area: i128 = area.sum();
    bound = bound.max(cheapest_cover(&problem.blanks, area, bound, state.cost));
    if state.cost > bound && count <= 400 {
        let until = watch.used() + (watch.left() / 6).min(20_000_000);
        state = improve(problem, &mut ruin, state, bound, until, watch);
    }
    if state.cost > bound
        && watch.open()
        && let Some((lower, base)) = programme(problem, state.cost, watch)
    {
        bound = bound.max(up(lower));
        bound = bound.max(cheapest_cover(&problem.blanks, area, bound, state.cost));
        watch.note_bound(bound);
        // Many alike: the whole part of the programme is a start that no search by single pieces finds.
        if count > 400
            && let Some(base) = base
            && let Some(whole) = complete(problem, base, bound, watch)
            && whole.cost < state.cost
        {
            state = whole;
            watch.note_value(state.cost);
        }
    }
    // The rest of the steps, from several starts for small problems.
    let mut seed = 20;
    while state.cost > bound && watch.open() && seed < 60 {
        let mut ruin = Ruin::new(&problem.blanks, &problem.kinds, problem.stages, seed);
        seed += 1;
        let before = watch.used();
        let until = if state.sheets.len() > WINDOW {
            u64::MAX
        } else {
            watch.used() + watch.left().div_ceil(2).max(40_000_000)
        };
        state = improve(problem, &mut ruin, state, bound, until, watch);
        if watch.used() == before {
            break;
        }
    }
    let value = state.cost;
    collect(state, problem.kinds.len(), value, bound.min(value))
}

/// The least cost, no lower than `bound`, of sheets whose area is enough; `most` when the search for it is too long.
fn cheapest_cover(blanks: &[Blank], area: i128, bound: i64, most: i64) -> i64 {
    struct Cover {
        sorts: Vec<(i128, i64, u32)>,
        area: i128,
        bound: i64,
        best: i64,
        nodes: u32,
    }
    impl Cover {
        /// Chooses how many of the sorts from `k` on.
        fn choose(&mut self, k: usize, covered: i128, cost: i64) {
            self.nodes += 1;
            if cost >= self.best || self.best <= self.bound || self.nodes > 300_000 {
                return;
            }
            let Some(&(each, price, limit)) = self.sorts.get(k) else {
                if covered >= self.area && cost >= self.bound {
                    self.best = cost;
                }
                return;
            };
            for n in 0..=limit {
                let cost = cost.saturating_add(price.saturating_mul(i64::from(n)));
                if cost >= self.best {
                    return;
                }
                self.choose(k + 1, covered + each * i128::from(n), cost);
                if self.nodes > 300_000 {
                    return;
                }
            }
        }
    }
    let sorts = blanks.iter().map(|b| (i128::from(b.w) * i128::from(b.h), b.cost, b.limit)).collect();
    let mut cover = Cover { sorts, area, bound, best: most, nodes: 0 };
    if blanks.iter().any(|b| b.cost <= 0) {
        return bound;
    }
    cover.choose(0, 0, 0);
    if cover.nodes > 300_000 { bound } else { cover.best.max(bound) }
}

/// Puts what a start leaves open into further sheets and improves those.
fn complete(problem: &SheetsProblem, base: State, bound: i64, watch: &mut Watch<'_>) -> Option<State> {
    let mut left = problem.demands.clone();
    let mut used = vec![0_u32; problem.blanks.len()];
    for open in &base.sheets {
        open.root.parts(&mut |l| left[l.kind as usize] = left[l.kind as usize].saturating_sub(1));
        used[open.blank] += 1;
    }
    let blanks: Vec<Blank> = problem
        .blanks
        .iter()
        .zip(&used)
        .map(|(b, used)| Blank {
            limit: if b.limit == UNLIMITED { UNLIMITED } else { b.limit.saturating_sub(*used) },
            ..b.clone()
        })
        .collect();
    let mut rest = Ruin::new(&blanks, &problem.kinds, problem.stages, 6);
    let tail = rest.construct(&left, watch);
    if !tail.out.is_empty() {
        return None;
    }
    let until = watch.used() + watch.left() / 2;
    let inner = SheetsProblem {
        blanks: blanks.clone(),
        kinds: problem.kinds.clone(),
        demands: left,
        values: problem.values.clone(),
        aim: Aim::AllParts,
        stages: problem.stages,
        free: problem.free,
    };
    let tail = improve(&inner, &mut rest, tail, bound - base.cost, until, watch);
    let (mut sheets, cost) = (base.sheets, base.cost + tail.cost);
    sheets.extend(tail.sheets);
    Some(State { sheets, out: Vec::new(), cost })
}

fn improve(
    problem: &SheetsProblem,
    ruin: &mut Ruin<'_>,
    state: State,
    enough: i64,
    until: u64,
    watch: &mut Watch<'_>,
) -> State {
    if state.sheets.len() <= WINDOW + 20 {
        return ruin.improve(state, false, enough, until, watch, u64::MAX);
    }
    let mut state = state;
    let mut idle = 0;
    let mut start = 0;
    while watch.open() && watch.used() < until && state.cost > enough && idle < 40 {
        // A window of sheets, another one each time; the poorest filled among them.
        let fill = |open: &Open| {
            let mut area = 0.0;
            open.root.parts(&mut |l| area += l.w as f64 * l.h as f64);
            area / (problem.blanks[open.blank].w as f64 * problem.blanks[open.blank].h as f64)
        };
        if start == 0 {
            let mut keyed: Vec<(f64, Open)> = state.sheets.drain(..).map(|o| (fill(&o), o)).collect();
            keyed.sort_by(|a, b| a.0.total_cmp(&b.0));
            state.sheets = keyed.into_iter().map(|(_, o)| o).collect();
        }
        let count = WINDOW.min(state.sheets.len());
        let mut window = State::default();
        for k in 0..count {
            let at = if k < count / 3 { 0 } else { ruin.dice.below(state.sheets.len()) };
            let open = state.sheets.swap_remove(at);
            window.cost += problem.blanks[open.blank].cost;
            window.sheets.push(open);
        }
        start = (start + 1) % 4;
        let old = window.cost;
        let mut used = vec![0_u32; problem.blanks.len()];
        for open in &state.sheets {
            used[open.blank] += 1;
        }
        let blanks: Vec<Blank> = problem
            .blanks
            .iter()
            .zip(&used)
            .map(|(b, used)| Blank {
                limit: if b.limit == UNLIMITED { UNLIMITED } else { b.limit - used },
                ..b.clone()
            })
            .collect();
        let seed = ruin.dice.next();
        let mut inner = Ruin::new(&blanks, &problem.kinds, problem.stages, seed);
        let share = (watch.left() / 12).clamp(3_000_000, 30_000_000);
        let until = until.min(watch.used() + share);
        let result = inner.improve(window, false, 0, until, watch, 20_000);
        idle = if result.cost < old { 0 } else { idle + 1 };
        state.cost -= old - result.cost;
        watch.note_value(state.cost);
        state.sheets.extend(result.sheets);
    }
    state
}

/// Cells of a table above which it is too slow to price every column by it.
const PRICED_BY_TABLE: u64 = 40_000_000;
/// Steps of the one large table that a bound may cost.
const BOUND_TABLE: u64 = 600_000_000;

/// Whether fillings can be remembered cell by cell.
fn small_enough(grid: &Grid, kinds: usize) -> bool {
    grid.xs.len() * grid.ys.len() * kinds < 20_000_000
}

/// Kinds with every size divided and rounded down: whatever fits really fits there too.
fn coarse(kinds: &[Kind], unit: i64) -> Vec<Kind> {
    let divide = |l: &super::tree::Lying| super::tree::Lying { w: (l.w / unit).max(1), h: (l.h / unit).max(1), ..*l };
    kinds
        .iter()
        .map(|k| Kind { lying: k.lying.iter().map(divide).collect(), weight: k.weight, inner_stages: k.inner_stages })
        .collect()
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

/// The linear programme over patterns: a bound, and the whole part of its patterns as a start.
fn programme(problem: &SheetsProblem, value: i64, watch: &mut Watch<'_>) -> Option<(i64, Option<State>)> {
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
    let mut patterns: Vec<(usize, Vec<(u32, u32)>, Strip)> = Vec::new();
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
        for unit in [1, 2, 3, 5, 8, 12, 20, 30, 50, 80, 120, 200, 500, 1_000, 2_000, 5_000, 10_000] {
            let small = coarse(&problem.kinds, unit);
            let ends: Vec<(i64, i64)> = sizes.iter().map(|(w, h)| (w / unit, h / unit)).collect();
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

impl Strip {
    /// Stages of cuts, counting every cut.
    pub(crate) fn depth(&self) -> u32 {
        let inner = self.members.iter().map(|m| if let Body::Strip(s) = &m.body { s.depth() } else { 0 }).max();
        let whole = self.members.len() == 1 && self.free == 0;
        u32::from(!whole) + inner.unwrap_or(0)
    }
}
