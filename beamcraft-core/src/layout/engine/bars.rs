//! Cutting pieces from bars: the problem, simple fills, and the whole run from a problem to an answer with its bound.
#![allow(clippy::indexing_slicing, reason = "indices are made from the lengths of the same tables")]

use super::bars_search::Search;
use super::common_divisor;
use super::fill::{Choice, Effort, best_fills};
use super::watch::Watch;

/// No limit on the number of bars.
pub(crate) const UNLIMITED: u32 = u32::MAX;

/// A kind of bar.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Bar {
    pub(crate) length: i64,
    pub(crate) cost: i64,
    pub(crate) limit: u32,
}

/// A kind of piece.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Piece {
    pub(crate) length: i64,
    pub(crate) demand: u32,
}

/// So many bars cut alike.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Fill {
    pub(crate) bar: usize,
    pub(crate) pieces: Vec<(u32, u32)>,
    pub(crate) times: u32,
}

/// A layout with its value and what was proven about it.
#[derive(Clone, Debug, Default)]
pub(crate) struct BarsAnswer {
    pub(crate) fills: Vec<Fill>,
    pub(crate) cost: i64,
    pub(crate) bound: i64,
    /// Pieces of each kind that found no bar.
    pub(crate) left: Vec<u32>,
}

/// The problem in its smallest numbers: kinds of different length in falling order.
#[derive(Clone, Debug)]
pub(crate) struct Problem {
    pub(crate) bars: Vec<Bar>,
    pub(crate) pieces: Vec<Piece>,
}

impl Problem {
    /// Sum of the lengths wanted.
    pub(crate) fn wanted(&self) -> i128 {
        self.pieces.iter().map(|p| i128::from(p.length) * i128::from(p.demand)).sum()
    }

    /// Cost of the wood alone when bars could be cut at will.
    fn material_bound(&self) -> i64 {
        let mut by_price: Vec<_> = self.bars.iter().filter(|bar| bar.length > 0 && bar.limit > 0).collect();
        by_price.sort_by(|a, b| {
            (i128::from(a.cost) * i128::from(b.length)).cmp(&(i128::from(b.cost) * i128::from(a.length)))
        });
        let (mut wanted, mut cost) = (self.wanted(), 0_i128);
        for bar in by_price {
            let length = i128::from(bar.length);
            let whole = (wanted / length).min(i128::from(bar.limit));
            wanted -= whole * length;
            cost += whole * i128::from(bar.cost);
            if bar.limit == UNLIMITED || whole < i128::from(bar.limit) {
                cost += (wanted * i128::from(bar.cost) + length - 1) / length;
                break;
            }
        }
        i64::try_from(cost).unwrap_or(i64::MAX)
    }

    /// The bound of Martello and Toth for bars of one kind: pieces above `L − k` stand alone, those above the half
    /// need a bar each, and the rest must fit beside them.
    fn pairing_bound(&self) -> i64 {
        let [bar] = self.bars.as_slice() else { return 0 };
        let mut best = 0_i128;
        for limit in self.pieces.iter().map(|p| p.length).filter(|l| 2 * l <= bar.length).chain([0]) {
            let (mut alone, mut halves, mut halves_sum, mut small) = (0_i128, 0_i128, 0_i128, 0_i128);
            for piece in &self.pieces {
                let (length, count) = (i128::from(piece.length), i128::from(piece.demand));
                if piece.length > bar.length - limit {
                    alone += count;
                } else if 2 * piece.length > bar.length {
                    halves += count;
                    halves_sum += count * length;
                } else if piece.length >= limit {
                    small += count * length;
                }
            }
            let room = halves * i128::from(bar.length) - halves_sum;
            let more = (small - room).max(0);
            best = best.max(alone + halves + (more + i128::from(bar.length) - 1) / i128::from(bar.length).max(1));
            if self.pieces.len() > 2_000 && limit == 0 {
                break;
            }
        }
        i64::try_from(best * i128::from(bar.cost)).unwrap_or(i64::MAX)
    }
}

/// How a bar is filled by the simple rule.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Rule {
    /// The longest piece that fits, again and again.
    LongestFirst,
    /// The fullest bar.
    Fullest,
}

/// Kind of bar, what is in it, its price and the length filled.
type Cheapest = (usize, Vec<(u32, u32)>, i128, i128);

/// Fills bars one kind of fill at a time until nothing is left or no bar is.
pub(crate) fn simple_fill(
    problem: &Problem,
    mut left: Vec<u32>,
    mut bars_left: Vec<u32>,
    rule: Rule,
    watch: &mut Watch<'_>,
) -> (Vec<Fill>, i64, Vec<u32>) {
    let (mut fills, mut cost) = (Vec::new(), 0_i64);
    let mut first = 0;
    loop {
        while first < left.len() && left[first] == 0 {
            first += 1;
        }
        if first == left.len() {
            break;
        }
        let kinds: Vec<usize> = (0..problem.bars.len()).filter(|k| bars_left[*k] > 0).collect();
        let candidates: Vec<(usize, Vec<(u32, u32)>)> = match rule {
            Rule::LongestFirst => {
                watch.spend((left.len() - first) as u64 / 8 + 1);
                kinds.iter().map(|k| (*k, longest_first(problem, &left, first, problem.bars[*k].length))).collect()
            }
            Rule::Fullest => {
                // A little more for long pieces: they are the hard ones later.
                let choices: Vec<_> = problem
                    .pieces
                    .iter()
                    .zip(&left)
                    .enumerate()
                    .filter(|(_, (_, left))| **left > 0)
                    .map(|(k, (piece, left))| Choice {
                        index: k as u32,
                        size: piece.length,
                        copies: *left,
                        worth: piece.length.saturating_mul(1_000).saturating_add(
                            (i128::from(piece.length) * 20 / i128::from(problem.pieces[0].length.max(1))) as i64
                                * piece.length,
                        ),
                    })
                    .collect();
                let capacities: Vec<_> = kinds.iter().map(|k| problem.bars[*k].length).collect();
                let (found, steps) = best_fills(&choices, &capacities, Effort::Quick);
                watch.spend(steps);
                kinds.iter().copied().zip(found.into_iter().map(|f| f.pieces)).collect()
            }
        };
        // Cheapest wood first; of equal ones the longer bar.
        let mut best: Option<Cheapest> = None;
        for (kind, pieces) in candidates {
            let filled: i128 =
                pieces.iter().map(|(k, n)| i128::from(problem.pieces[*k as usize].length) * i128::from(*n)).sum();
            if filled == 0 {
                continue;
            }
            let price = i128::from(problem.bars[kind].cost);
            let better = best.as_ref().is_none_or(|(_, _, cost, length)| {
                let (ours, theirs) = (price * length, cost * filled);
                ours < theirs || (ours == theirs && filled > *length)
            });
            if better {
                best = Some((kind, pieces, price, filled));
            }
        }
        let Some((kind, pieces, ..)) = best else { break };
        let mut times = pieces.iter().map(|(k, n)| left[*k as usize] / (*n).max(1)).min().unwrap_or(1).max(1);
        if rule == Rule::Fullest {
            times = times.min(1 + times / 2);
        }
        if bars_left[kind] != UNLIMITED {
            times = times.min(bars_left[kind]);
            bars_left[kind] -= times;
        }
        for (k, n) in &pieces {
            left[*k as usize] -= n * times;
        }
        cost = cost.saturating_add(problem.bars[kind].cost.saturating_mul(i64::from(times)));
        fills.push(Fill { bar: kind, pieces, times });
    }
    // A short fill may fit a cheaper bar.
    for fill in &mut fills {
        let length: i64 = fill.pieces.iter().map(|(k, n)| problem.pieces[*k as usize].length * i64::from(*n)).sum();
        for (kind, bar) in problem.bars.iter().enumerate() {
            let old = problem.bars[fill.bar];
            let enough = bars_left[kind] == UNLIMITED || bars_left[kind] >= fill.times;
            if bar.length >= length && bar.cost < old.cost && enough {
                if bars_left[kind] != UNLIMITED {
                    bars_left[kind] -= fill.times;
                }
                if bars_left[fill.bar] != UNLIMITED {
                    bars_left[fill.bar] += fill.times;
                }
                cost -= (old.cost - bar.cost) * i64::from(fill.times);
                fill.bar = kind;
            }
        }
    }
    (fills, cost, left)
}

fn longest_first(problem: &Problem, left: &[u32], first: usize, capacity: i64) -> Vec<(u32, u32)> {
    let (mut room, mut pieces, mut k) = (capacity, Vec::new(), first);
    while k < left.len() {
        let length = problem.pieces[k].length;
        if length > room {
            // Lengths fall, so the next that fits is found by halving.
            k += problem.pieces[k..].partition_point(|p| p.length > room);
            continue;
        }
        let count = i64::from(left[k]).min(room / length.max(1));
        if count > 0 {
            pieces.push((k as u32, count as u32));
            room -= count * length;
        }
        k += 1;
    }
    pieces
}

/// Solves the problem as far as the steps reach.
pub(crate) fn solve_bars(bars: &[Bar], pieces: &[Piece], watch: &mut Watch<'_>) -> BarsAnswer {
    let mut answer = BarsAnswer { left: vec![0; pieces.len()], ..BarsAnswer::default() };
    let longest = bars.iter().filter(|bar| bar.limit > 0).map(|bar| bar.length).max().unwrap_or(0);
    // Kinds of equal length are one kind.
    let mut order: Vec<usize> =
        (0..pieces.len()).filter(|k| pieces[*k].demand > 0 && pieces[*k].length <= longest).collect();
    order.sort_by_key(|k| (-pieces[*k].length, *k));
    for (k, piece) in pieces.iter().enumerate() {
        if piece.length > longest {
            answer.left[k] = piece.demand;
        }
    }
    if order.is_empty() {
        return answer;
    }
    let unit = common_divisor(order.iter().map(|k| pieces[*k].length)).max(1);
    let price_unit = common_divisor(bars.iter().map(|bar| bar.cost)).max(1);
    let mut kinds: Vec<Piece> = Vec::new();
    let mut members: Vec<Vec<usize>> = Vec::new();
    for k in order {
        let piece = Piece { length: pieces[k].length / unit, demand: pieces[k].demand };
        match kinds.last_mut() {
            Some(last) if last.length == piece.length => {
                last.demand = last.demand.saturating_add(piece.demand);
                members.last_mut().into_iter().for_each(|m| m.push(k));
            }
            _ => {
                kinds.push(piece);
                members.push(vec![k]);
            }
        }
    }
    let bars: Vec<Bar> = bars
        .iter()
        .map(|bar| Bar { length: bar.length / unit, cost: bar.cost / price_unit, limit: bar.limit })
        .collect();
    let problem = Problem { bars, pieces: kinds };
    watch.set_scale(price_unit as f64);
    let inner = solve_kinds(&problem, watch);
    // Back to the kinds of the caller, piece by piece in their order.
    let mut open: Vec<Vec<(usize, u32)>> =
        members.iter().map(|m| m.iter().map(|k| (*k, pieces[*k].demand)).rev().collect()).collect();
    for fill in inner.fills {
        let mut times = fill.times;
        while times > 0 {
            // As many alike as the caller's kinds allow.
            let mut alike = times;
            let mut given: Vec<(u32, u32)> = Vec::new();
            for (k, n) in &fill.pieces {
                let stack = &open[*k as usize];
                let mut wanted = *n;
                for (kind, left) in stack.iter().rev() {
                    if wanted == 0 {
                        break;
                    }
                    let part = wanted.min(*left);
                    if part > 0 {
                        given.push((*kind as u32, part));
                        alike = alike.min(left / part);
                        wanted -= part;
                    }
                }
            }
            let alike = alike.max(1);
            for (k, _) in &fill.pieces {
                let stack = &mut open[*k as usize];
                let members = &members[*k as usize];
                for (kind, part) in given.iter().filter(|(kind, _)| members.contains(&(*kind as usize))) {
                    if let Some(entry) = stack.iter_mut().find(|(member, _)| *member == *kind as usize) {
                        entry.1 -= (part * alike).min(entry.1);
                    }
                }
                stack.retain(|(_, left)| *left > 0);
            }
            answer.fills.push(Fill { bar: fill.bar, pieces: given, times: alike });
            times -= alike.min(times);
        }
    }
    for stack in open {
        for (kind, left) in stack {
            answer.left[kind] += left;
        }
    }
    answer.cost = inner.cost.saturating_mul(price_unit);
    answer.bound = inner.bound.saturating_mul(price_unit);
    answer
}

/// Most kinds of pieces for which the linear programme is set up.
const MOST_ROWS: usize = 700;
/// Bars in a part of a large problem that is solved again by itself.
const WINDOW: usize = 24;

fn solve_kinds(problem: &Problem, watch: &mut Watch<'_>) -> BarsAnswer {
    let demands: Vec<u32> = problem.pieces.iter().map(|p| p.demand).collect();
    let limits: Vec<u32> = problem.bars.iter().map(|bar| bar.limit).collect();
    let bound = problem.material_bound().max(problem.pairing_bound());
    watch.note_bound(bound);
    let (fills, cost, left) = simple_fill(problem, demands.clone(), limits.clone(), Rule::LongestFirst, watch);
    let mut best = BarsAnswer { fills, cost, bound, left };
    let better = |new: &(Vec<Fill>, i64, Vec<u32>), old: &BarsAnswer| {
        let weight = |left: &[u32]| -> i128 {
            left.iter().zip(&problem.pieces).map(|(n, p)| i128::from(*n) * i128::from(p.length)).sum()
        };
        (weight(&new.2), new.1) < (weight(&old.left), old.cost)
    };
    watch.note_value(best.cost);
    let whole = |best: &BarsAnswer| best.left.iter().all(|n| *n == 0);
    if whole(&best) && best.cost <= best.bound {
        return best;
    }
    if problem.pieces.len() <= 400 && watch.open() {
        let second = simple_fill(problem, demands, limits, Rule::Fullest, watch);
        if better(&second, &best) {
            best = BarsAnswer { fills: second.0, cost: second.1, bound, left: second.2 };
            watch.note_value(best.cost);
        }
    }
    if whole(&best) && best.cost <= best.bound {
        return best;
    }
    if problem.pieces.len() <= MOST_ROWS {
        let mut search = Search::new(problem, best);
        search.run(watch);
        return search.into_best();
    }
    by_windows(problem, best, watch)
}

/// Improves a large layout by solving a few bars at a time again; bars are taken in turn, the emptiest among each.
fn by_windows(problem: &Problem, mut best: BarsAnswer, watch: &mut Watch<'_>) -> BarsAnswer {
    let mut dice = super::Dice::new(7);
    let mut used = vec![0_u32; problem.bars.len()];
    let mut fills: Vec<Fill> = Vec::new();
    for fill in best.fills.drain(..) {
        used[fill.bar] += fill.times;
        for _ in 0..fill.times.min(1_000) {
            fills.push(Fill { times: 1, ..fill.clone() });
        }
        if fill.times > 1_000 {
            fills.push(Fill { times: fill.times - 1_000, ..fill });
        }
    }
    let length_of = |fill: &Fill| -> i64 {
        fill.pieces.iter().map(|(k, n)| problem.pieces[*k as usize].length * i64::from(*n)).sum()
    };
    let mut idle = 0;
    while watch.open() && best.cost > best.bound && idle < 60 {
        // The emptiest bars and some others.
        let mut order: Vec<usize> = (0..fills.len()).filter(|k| fills[*k].times == 1).collect();
        if order.len() < 2 {
            break;
        }
        order.sort_by_key(|k| length_of(&fills[*k]) - problem.bars[fills[*k].bar].length);
        let empties = (WINDOW / 3).min(order.len());
        let mut chosen: Vec<usize> = order[order.len() - empties..].to_vec();
        while chosen.len() < WINDOW.min(order.len()) {
            let k = order[dice.below(order.len())];
            if !chosen.contains(&k) {
                chosen.push(k);
            }
        }
        chosen.sort_unstable_by(|a, b| b.cmp(a));
        let taken: Vec<Fill> = chosen.iter().map(|k| fills.swap_remove(*k)).collect();
        let mut counts: Vec<(u32, u32)> = Vec::new();
        for (k, n) in taken.iter().flat_map(|fill| fill.pieces.iter().copied()) {
            counts.push((k, n));
        }
        counts.sort_unstable();
        let mut merged: Vec<(u32, u32)> = Vec::new();
        for (k, n) in counts {
            match merged.last_mut() {
                Some(last) if last.0 == k => last.1 += n,
                _ => merged.push((k, n)),
            }
        }
        for fill in &taken {
            used[fill.bar] -= 1;
        }
        let bars = problem.bars.iter().zip(&used).map(|(bar, used)| Bar {
            limit: if bar.limit == UNLIMITED { UNLIMITED } else { bar.limit - used },
            ..*bar
        });
        let part = Problem {
            bars: bars.collect(),
            pieces: merged.iter().map(|(k, n)| Piece { demand: *n, ..problem.pieces[*k as usize] }).collect(),
        };
        let old: i64 = taken.iter().map(|fill| problem.bars[fill.bar].cost).sum();
        // A piece of the budget, so that no window eats all of it.
        let share = (watch.left() / 8).clamp(200_000, 20_000_000);
        let mut inner = Watch::new(share, 1.0, None);
        let start = BarsAnswer {
            fills: taken
                .iter()
                .map(|fill| Fill {
                    pieces: fill
                        .pieces
                        .iter()
                        .map(|(k, n)| (merged.partition_point(|(m, _)| m < k) as u32, *n))
                        .collect(),
                    ..fill.clone()
                })
                .collect(),
            cost: old,
            bound: 0,
            left: vec![0; merged.len()],
        };
        let mut search = Search::new(&part, start);
        search.run(&mut inner);
        watch.spend(inner.used() + fills.len() as u64 / 4);
        let result = search.into_best();
        idle = if result.cost < old { 0 } else { idle + 1 };
        best.cost -= old - result.cost;
        watch.note_value(best.cost);
        for fill in result.fills {
            used[fill.bar] += fill.times;
            for _ in 0..fill.times {
                let pieces = fill.pieces.iter().map(|(k, n)| (merged[*k as usize].0, *n)).collect();
                fills.push(Fill { bar: fill.bar, pieces, times: 1 });
            }
        }
    }
    best.fills = fills;
    best
}
