//! Patterns priced by a knapsack, dives into whole numbers, branching on the number of bars of a kind.
//!
//! The bound is that of Gilmore and Gomory, taken from the prices in whole numbers: for prices u with
//! z_i = max { Σ u_j a_j : a fits bar i } every layout costs at least
//! `f Σ u_j d_j + Σ_{limited i} q_i min(0, c_i − f z_i)` with f = min(1, c_i/z_i over the unlimited i).
#![allow(clippy::indexing_slicing, reason = "indices are made from the lengths of the same tables")]

use std::collections::HashSet;

use super::Dice;
use super::bars::{BarsAnswer, Fill, Problem, Rule, UNLIMITED, simple_fill};
use super::fill::{Choice, Effort, best_fills};
use super::finish::Finish;
use super::master::{Basic, Column, Master, Sense};
use super::watch::Watch;

/// Bars that an exact search may fill at the end of a dive, and the nodes it may take.
const LAST_BARS: u32 = 16;
const LAST_NODES: u64 = 30_000;

/// Patterns that are tried at one place of a dive, and those that a whole dive may put back.
const TRIES: u32 = 2;
const MOST_PUT_BACK: u32 = 10;
/// Choices that are taken back when none of those tried is right.
const STEPS_BACK: usize = 10;

#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub(crate) struct Pattern {
    bar: usize,
    pieces: Vec<(u32, u32)>,
}

/// Range of the number of bars of each kind.
#[derive(Clone, Debug)]
struct Node {
    ranges: Vec<(u32, u32)>,
    bound: i64,
}

pub(crate) struct Search<'p> {
    problem: &'p Problem,
    best: BarsAnswer,
    pool: Vec<Pattern>,
    seen: HashSet<Pattern>,
}

/// A linear programme with the meaning of its rows and columns.
#[derive(Clone)]
struct Relaxation {
    master: Master,
    /// Patterns of the columns, by index into the pool.
    patterns: Vec<usize>,
    /// Row of the upper and of the lower number of each kind of bar.
    high_rows: Vec<Option<usize>>,
    low_rows: Vec<Option<usize>>,
    ranges: Vec<(u32, u32)>,
    left: Vec<u32>,
    bars_left: Vec<u32>,
    taken: Vec<(usize, u32)>,
    taken_cost: i64,
    bound: i64,
}

impl<'p> Search<'p> {
    pub(crate) fn new(problem: &'p Problem, best: BarsAnswer) -> Self {
        let mut search = Self { problem, pool: Vec::new(), seen: HashSet::new(), best };
        for fill in search.best.fills.clone() {
            let mut pieces = fill.pieces;
            pieces.sort_unstable();
            search.keep(Pattern { bar: fill.bar, pieces });
        }
        search
    }

    pub(crate) fn into_best(self) -> BarsAnswer {
        self.best
    }

    fn keep(&mut self, pattern: Pattern) -> Option<usize> {
        self.seen.insert(pattern.clone()).then(|| {
            self.pool.push(pattern);
            self.pool.len() - 1
        })
    }

    fn complete(&self) -> bool {
        self.best.left.iter().all(|n| *n == 0)
    }

    fn done(&self) -> bool {
        self.complete() && self.best.cost <= self.best.bound
    }

    pub(crate) fn run(&mut self, watch: &mut Watch<'_>) {
        let ranges: Vec<_> = self.problem.bars.iter().map(|bar| (0, bar.limit)).collect();
        let Some(root) = self.relax(ranges.clone(), watch) else { return };
        self.best.bound = self.best.bound.max(root.bound);
        watch.note_bound(self.best.bound);
        if !self.complete() && root.master.shortage() > 1e-3 {
            // Not all pieces fit into the bars there are: the simple fill stands.
            return;
        }
        let mut dice = Dice::new(1);
        let mut attempt = 0;
        let several = self.problem.bars.len() > 1;
        let first_attempts = if several { 3 } else { u32::MAX };
        while !self.done() && watch.open() && attempt < first_attempts {
            self.dive(root.clone(), attempt, &mut dice, watch);
            attempt += 1;
            if attempt > 4_000 {
                break;
            }
        }
        if several && !self.done() && watch.open() {
            self.branch(root, &mut dice, watch);
        }
    }

    /// Branches on how many bars of a kind are taken; the open node with the lowest bound first.
    fn branch(&mut self, root: Relaxation, dice: &mut Dice, watch: &mut Watch<'_>) {
        let mut open = vec![Node { ranges: root.ranges.clone(), bound: root.bound }];
        drop(root);
        let mut attempt = 3;
        while watch.open() {
            let Some(at) = (0..open.len()).min_by_key(|k| (open[*k].bound, core::cmp::Reverse(*k))) else {
                // Every node is closed.
                if self.complete() {
                    self.best.bound = self.best.cost;
                }
                return;
            };
            let node = open.swap_remove(at);
            self.best.bound = self.best.bound.max(node.bound.min(self.best.cost));
            watch.note_bound(self.best.bound);
            if self.complete() && node.bound >= self.best.cost {
                self.best.bound = self.best.cost;
                return;
            }
            let Some(relaxation) = self.relax(node.ranges.clone(), watch) else { return };
            let bound = relaxation.bound.max(node.bound);
            if self.complete() && bound >= self.best.cost {
                continue;
            }
            let totals = self.totals(&relaxation);
            let split = (0..totals.len())
                .map(|k| (k, (totals[k] - (totals[k] + 0.5).floor()).abs()))
                .max_by(|a, b| a.1.total_cmp(&b.1).then(b.0.cmp(&a.0)))
                .filter(|(_, away)| *away > 1e-3);
            self.dive(relaxation, attempt, dice, watch);
            attempt += 1;
            match split {
                Some((kind, _)) => {
                    let at = totals[kind].floor() as u32;
                    let (low, high) = node.ranges[kind];
                    for range in [(low, at), (at + 1, high)] {
                        if range.0 <= range.1 {
                            let mut ranges = node.ranges.clone();
                            ranges[kind] = range;
                            open.push(Node { ranges, bound });
                        }
                    }
                }
                None => {
                    // Whole numbers of bars and still no layout: try this node again from another side, a few times.
                    let width: u64 = node.ranges.iter().map(|(a, b)| u64::from(b - a)).sum();
                    if attempt > 60 + width.min(20) as u32 {
                        return;
                    }
                    open.push(Node { ranges: node.ranges, bound });
                }
            }
        }
    }

    fn totals(&self, relaxation: &Relaxation) -> Vec<f64> {
        let mut totals = vec![0.0; self.problem.bars.len()];
        for (basic, x) in relaxation.master.basis.iter().zip(&relaxation.master.x) {
            if let Basic::Column(k) = basic {
                totals[self.pool[relaxation.patterns[*k]].bar] += x;
            }
        }
        totals
    }

    fn column(&self, pattern: &Pattern, high: &[Option<usize>], low: &[Option<usize>]) -> Column {
        let mut rows: Vec<(u32, f64)> = pattern.pieces.iter().map(|(k, n)| (*k, f64::from(*n))).collect();
        rows.extend(high[pattern.bar].iter().chain(&low[pattern.bar]).map(|row| (*row as u32, 1.0)));
        Column { cost: self.problem.bars[pattern.bar].cost as f64, rows, shut: false }
    }

    /// Sets the programme up and solves it by pricing.
    fn relax(&mut self, ranges: Vec<(u32, u32)>, watch: &mut Watch<'_>) -> Option<Relaxation> {
        let pieces = self.problem.pieces.len();
        let mut senses = vec![Sense::AtLeast; pieces];
        let mut rhs: Vec<f64> = self.problem.pieces.iter().map(|p| f64::from(p.demand)).collect();
        let (mut high_rows, mut low_rows) = (vec![None; ranges.len()], vec![None; ranges.len()]);
        for (k, (low, high)) in ranges.iter().enumerate() {
            if *high != UNLIMITED {
                high_rows[k] = Some(senses.len());
                senses.push(Sense::AtMost);
                rhs.push(f64::from(*high));
            }
            if *low > 0 {
                low_rows[k] = Some(senses.len());
                senses.push(Sense::AtLeast);
                rhs.push(f64::from(*low));
            }
        }
        let dearest = self.problem.bars.iter().map(|bar| bar.cost).max().unwrap_or(1).max(1) as f64;
        let mut master = Master::new(senses, &rhs, dearest * 50.0);
        let patterns: Vec<usize> = (0..self.pool.len()).collect();
        for k in &patterns {
            master.add(self.column(&self.pool[*k], &high_rows, &low_rows));
        }
        let mut relaxation = Relaxation {
            master,
            patterns,
            high_rows,
            low_rows,
            left: self.problem.pieces.iter().map(|p| p.demand).collect(),
            bars_left: ranges.iter().map(|(_, high)| *high).collect(),
            ranges,
            taken: Vec::new(),
            taken_cost: 0,
            bound: 0,
        };
        self.price(&mut relaxation, Effort::Thorough, watch).then_some(relaxation)
    }

    /// Brings in patterns until none pays, the bound meets the programme's value, or it shows that this programme cannot
    /// lead below the best layout. False: out of steps.
    ///
    /// With little effort the bound of the programme is what its value says when no more patterns are found: good enough
    /// to give a dive up, no proof.
    fn price(&mut self, relaxation: &mut Relaxation, most_effort: Effort, watch: &mut Watch<'_>) -> bool {
        let problem = self.problem;
        let dearest = problem.bars.iter().map(|bar| bar.cost).max().unwrap_or(1).max(1);
        let scale = (1_000_000_000 / dearest).max(1);
        let pivot_steps = (relaxation.master.rows * relaxation.master.rows) as u64 / 16 + 8;
        let kinds: Vec<usize> = (0..problem.bars.len()).filter(|k| relaxation.ranges[*k].1 > 0).collect();
        let capacities: Vec<i64> = kinds.iter().map(|k| problem.bars[*k].length).collect();
        let mut effort = Effort::Quick;
        for _round in 0..20_000 {
            let before = relaxation.master.pivots;
            relaxation.master.settle(5_000);
            let columns = relaxation.master.columns.len() as u64;
            if !watch.spend((relaxation.master.pivots - before + 1) * (pivot_steps + columns / 2)) {
                return false;
            }
            let choices: Vec<Choice> = problem
                .pieces
                .iter()
                .enumerate()
                .filter(|(k, _)| relaxation.left[*k] > 0)
                .map(|(k, piece)| Choice {
                    index: k as u32,
                    size: piece.length,
                    copies: relaxation.left[k],
                    worth: (relaxation.master.prices[k] * scale as f64).min(1e15) as i64,
                })
                .collect();
            let (fills, steps) = best_fills(&choices, &capacities, effort);
            watch.spend(steps);
            // The bound, in whole numbers.
            let worth: i128 = choices
                .iter()
                .map(|c| i128::from(c.worth.max(0)) * i128::from(relaxation.left[c.index as usize]))
                .sum();
            let (mut top, mut under) = (1_i128, 1_i128);
            for (kind, fill) in kinds.iter().zip(&fills) {
                let cost = i128::from(problem.bars[*kind].cost) * i128::from(scale);
                let z = i128::from(fill.bound);
                if relaxation.ranges[*kind].1 == UNLIMITED && z > cost && cost * under < top * z {
                    (top, under) = (cost, z);
                }
            }
            let mut bound = worth * top;
            for (kind, fill) in kinds.iter().zip(&fills) {
                let cost = i128::from(problem.bars[*kind].cost) * i128::from(scale);
                let spare = cost * under - i128::from(fill.bound) * top;
                let (low, high) = relaxation.ranges[*kind];
                bound += spare * i128::from(if spare >= 0 { low } else { high });
            }
            let per = under * i128::from(scale);
            let bound = i64::try_from((bound + per - 1).div_euclid(per)).unwrap_or(i64::MAX);
            relaxation.bound = relaxation.bound.max(bound.saturating_add(relaxation.taken_cost));
            let value = relaxation.master.value() + relaxation.taken_cost as f64;
            if relaxation.bound >= self.best.cost && self.complete() {
                return true;
            }
            if relaxation.master.shortage() < 1e-4 && (value - 1e-4).ceil() <= relaxation.bound as f64 {
                return true;
            }
            let mut entered = false;
            for (kind, fill) in kinds.iter().zip(&fills) {
                let mut pieces = fill.pieces.clone();
                pieces.sort_unstable();
                let pattern = Pattern { bar: *kind, pieces };
                let column = self.column(&pattern, &relaxation.high_rows, &relaxation.low_rows);
                if relaxation.master.reduced_cost(&column) < -1e-7 * dearest as f64 {
                    let index = match self.keep(pattern.clone()) {
                        Some(new) => new,
                        // Known from elsewhere: is it in this programme yet?
                        None => match self.pool.iter().position(|known| *known == pattern) {
                            Some(old) if !relaxation.patterns.contains(&old) => old,
                            _ => continue,
                        },
                    };
                    relaxation.patterns.push(index);
                    relaxation.master.add(column);
                    entered = true;
                }
            }
            let doubtful = fills.iter().any(|fill| fill.bound > fill.worth);
            if entered {
                effort = Effort::Quick;
            } else if doubtful && effort != most_effort {
                effort = most_effort;
            } else {
                if most_effort == Effort::Quick && relaxation.master.shortage() < 1e-4 {
                    // The demands are shaken a little, see the master.
                    relaxation.bound = relaxation.bound.max((value - 2e-3 * dearest as f64).ceil() as i64);
                }
                return true;
            }
        }
        true
    }

    /// Takes patterns one after the other as the programme suggests, pricing anew in between, until all pieces have
    /// their bar or nothing better can come of it. A pattern that spoils the programme is put back and another one taken,
    /// a limited number of times (R. Sadykov, F. Vanderbeck and others, "Primal heuristics for branch and price", INFORMS
    /// J. on Computing 31 (2019); recalled).
    fn dive(&mut self, mut relaxation: Relaxation, attempt: u32, dice: &mut Dice, watch: &mut Watch<'_>) {
        let mut back: Vec<Relaxation> = Vec::new();
        let mut put_back = 0;
        // Later dives look elsewhere: the shares are shaken, the more so the later the dive.
        let mut shake = if attempt == 0 { 0.0 } else { 0.15 + 0.05 * f64::from(attempt.min(12)) };
        loop {
            if !watch.open() || self.hopeless(&relaxation) {
                return;
            }
            // The whole parts cost nothing to take; without any the largest part is rounded up.
            let (whole, parts) = whole_and_parts(&relaxation.master);
            let mut moved = false;
            for (column, times) in whole {
                moved |= self.take(&mut relaxation, column, times) > 0;
            }
            if moved {
                if !self.settle(&mut relaxation, watch) {
                    return;
                }
                continue;
            }
            let mut scored: Vec<(usize, f64)> =
                parts.iter().map(|(k, share)| (*k, share + shake * dice.unit())).collect();
            scored.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
            let (mut tried, mut next) = (0, None);
            for (column, _) in scored {
                let mut taken = relaxation.clone();
                if tried >= TRIES || self.take(&mut taken, column, 1) == 0 {
                    continue;
                }
                if !self.settle(&mut taken, watch) {
                    return;
                }
                if !self.hopeless(&taken) {
                    next = Some(taken);
                    break;
                }
                tried += 1;
            }
            put_back += tried;
            match next {
                Some(taken) => {
                    back.push(relaxation);
                    relaxation = taken;
                }
                None if put_back < MOST_PUT_BACK && tried > 0 => {
                    // What was wrong was chosen some way back.
                    back.truncate(back.len().saturating_sub(dice.below(STEPS_BACK)));
                    let Some(before) = back.pop() else { return };
                    relaxation = before;
                    shake = f64::max(shake, 0.4);
                }
                None => return,
            }
        }
    }

    /// Whether nothing better than the best layout can come of it.
    fn hopeless(&self, relaxation: &Relaxation) -> bool {
        self.complete() && relaxation.bound >= self.best.cost
    }

    /// After patterns were taken: what is left is filled by simple rules, then priced anew. False when the dive is over.
    fn settle(&mut self, relaxation: &mut Relaxation, watch: &mut Watch<'_>) -> bool {
        self.round_off(relaxation, watch);
        self.finish(relaxation, watch);
        if relaxation.left.iter().all(|n| *n == 0) || self.done() {
            return false;
        }
        self.shut_improper(relaxation);
        relaxation.bound = relaxation.taken_cost;
        self.price(relaxation, Effort::Quick, watch)
    }

    /// Takes a pattern as often as the pieces left and the bars left allow, at most `times`.
    fn take(&self, relaxation: &mut Relaxation, column: usize, times: u32) -> u32 {
        let index = relaxation.patterns[column];
        let pattern = &self.pool[index];
        let mut times = times.min(relaxation.bars_left[pattern.bar]);
        for (k, n) in &pattern.pieces {
            times = times.min(relaxation.left[*k as usize] / n);
        }
        if times == 0 {
            return 0;
        }
        for (k, n) in &pattern.pieces {
            relaxation.left[*k as usize] -= n * times;
        }
        if relaxation.bars_left[pattern.bar] != UNLIMITED {
            relaxation.bars_left[pattern.bar] -= times;
        }
        let range = &mut relaxation.ranges[pattern.bar];
        range.0 = range.0.saturating_sub(times);
        if range.1 != UNLIMITED {
            range.1 -= times;
        }
        relaxation.taken_cost += self.problem.bars[pattern.bar].cost * i64::from(times);
        relaxation.taken.push((index, times));
        relaxation.master.take(column, f64::from(times));
        times
    }

    /// Patterns that ask for more pieces than are left cannot be taken whole any more.
    fn shut_improper(&self, relaxation: &mut Relaxation) {
        for (column, index) in relaxation.patterns.iter().enumerate() {
            let pattern = &self.pool[*index];
            let improper = pattern.pieces.iter().any(|(k, n)| relaxation.left[*k as usize] < *n)
                || relaxation.bars_left[pattern.bar] == 0;
            if improper {
                relaxation.master.columns[column].shut = true;
            }
        }
        relaxation.master.reprice();
    }

    /// Whether what is left fits one bar less than in the best layout, exactly, where few equal bars are left.
    fn finish(&mut self, relaxation: &Relaxation, watch: &mut Watch<'_>) {
        let [bar] = self.problem.bars.as_slice() else { return };
        let goal = self.best.cost - bar.cost - relaxation.taken_cost;
        if self.done() || !self.complete() || bar.cost <= 0 || goal <= 0 {
            return;
        }
        let Ok(bars) = u32::try_from(goal / bar.cost) else { return };
        if bars > LAST_BARS || bars > relaxation.bars_left[0] {
            return;
        }
        let finish = Finish::new(&self.problem.pieces, relaxation.left.clone(), bar.length, LAST_NODES);
        let (found, nodes) = finish.into_bars(bars);
        watch.spend(nodes);
        if let Some(contents) = found {
            let last = contents.into_iter().map(|pieces| Fill { bar: 0, pieces, times: 1 });
            self.best.fills = self.taken(relaxation).chain(last).collect();
            self.best.cost -= bar.cost;
            watch.note_value(self.best.cost);
        }
    }

    fn taken<'s>(&'s self, relaxation: &'s Relaxation) -> impl Iterator<Item = Fill> + 's {
        relaxation.taken.iter().map(|(index, times)| Fill {
            bar: self.pool[*index].bar,
            pieces: self.pool[*index].pieces.clone(),
            times: *times,
        })
    }

    /// Fills what is left by the simple rules and keeps the layout if it is the best.
    fn round_off(&mut self, relaxation: &Relaxation, watch: &mut Watch<'_>) {
        for rule in [Rule::LongestFirst, Rule::Fullest] {
            let (fills, cost, left) =
                simple_fill(self.problem, relaxation.left.clone(), relaxation.bars_left.clone(), rule, watch);
            let total = relaxation.taken_cost + cost;
            let fits = left.iter().all(|n| *n == 0);
            if fits && (total < self.best.cost || !self.complete()) {
                self.best.fills = self.taken(relaxation).chain(fills).collect();
                self.best.cost = total;
                self.best.left = left;
                watch.note_value(total);
            }
            if self.done() {
                return;
            }
        }
    }
}

/// Columns with how often, or what part of, each is taken.
type Taken<T> = Vec<(usize, T)>;

/// Columns of the basis with their whole number of times, and those with a part beyond it.
fn whole_and_parts(master: &Master) -> (Taken<u32>, Taken<f64>) {
    let (mut whole, mut parts) = (Vec::new(), Vec::new());
    for (basic, x) in master.basis.iter().zip(&master.x) {
        let Basic::Column(k) = basic else { continue };
        if master.columns[*k].shut {
            continue;
        }
        let floor = (x + 1e-4).floor();
        if floor >= 1.0 {
            whole.push((*k, floor as u32));
        }
        if x - floor > 1e-4 {
            parts.push((*k, x - floor));
        }
    }
    whole.sort_unstable();
    (whole, parts)
}
