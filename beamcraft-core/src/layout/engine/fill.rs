//! One bar filled to the greatest worth: the knapsack with limited copies.
#![allow(clippy::indexing_slicing, reason = "tables of a dynamic programme; every index is made from their own sizes")]

/// A kind of piece that may go into the bar.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Choice {
    pub(crate) index: u32,
    pub(crate) size: i64,
    pub(crate) copies: u32,
    /// Worth of one piece, a whole number above 0.
    pub(crate) worth: i64,
}

/// The best fill found and a number that no fill can exceed.
#[derive(Clone, Debug, Default)]
pub(crate) struct BestFill {
    pub(crate) worth: i64,
    pub(crate) bound: i64,
    pub(crate) pieces: Vec<(u32, u32)>,
}

/// Cells of the table above which the tree search is taken.
const TABLE: u64 = 3_000_000;
/// Nodes after which a tree search gives up.
const NODES: u64 = 4_000;

/// How hard to look where a table over all lengths would be too large.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Effort {
    /// A tree search that soon gives up.
    Quick,
    /// Two tables over coarser lengths besides: rounded up they give a fill, rounded down a bound.
    Thorough,
}

/// Best fill for each capacity, and the steps it took. Capacities in any order.
pub(crate) fn best_fills(choices: &[Choice], capacities: &[i64], effort: Effort) -> (Vec<BestFill>, u64) {
    let largest = capacities.iter().copied().max().unwrap_or(0).max(0);
    let mut useful: Vec<Choice> = choices
        .iter()
        .filter(|c| c.worth > 0 && c.copies > 0 && c.size > 0 && c.size <= largest)
        .map(|c| Choice { copies: c.copies.min(u32::try_from(largest / c.size).unwrap_or(u32::MAX)), ..*c })
        .collect();
    // Copies in doubling bundles: 1, 2, 4, … and the rest.
    let bundles: u64 = useful.iter().map(|c| u64::from(32 - c.copies.leading_zeros())).sum();
    if (largest as u64).saturating_add(1).saturating_mul(bundles.max(1)) <= TABLE {
        return by_table(&useful, capacities, largest as usize);
    }
    useful.sort_by(|a, b| {
        let (left, right) = (i128::from(b.worth) * i128::from(a.size), i128::from(a.worth) * i128::from(b.size));
        left.cmp(&right).then(b.size.cmp(&a.size)).then(a.index.cmp(&b.index))
    });
    let mut steps = 0;
    let mut fills: Vec<BestFill> = capacities
        .iter()
        .map(|capacity| {
            let mut tree = Tree::new(&useful, NODES);
            tree.search(0, *capacity, 0);
            steps += tree.nodes;
            tree.result(*capacity)
        })
        .collect();
    if effort == Effort::Thorough && fills.iter().any(|fill| fill.bound > fill.worth) {
        let unit = (largest as u64).saturating_mul(bundles).div_ceil(TABLE).max(2) as i64;
        let coarse: Vec<i64> = capacities.iter().map(|c| c / unit).collect();
        let rounded = |up: i64| -> Vec<Choice> {
            useful.iter().map(|c| Choice { size: ((c.size + up) / unit).max(up.min(1)), ..*c }).collect()
        };
        let (short, more) = by_table(&rounded(0), &coarse, (largest / unit) as usize);
        steps += more;
        let (long, more) = by_table(&rounded(unit - 1), &coarse, (largest / unit) as usize);
        steps += more;
        for ((fill, bound), other) in fills.iter_mut().zip(short).zip(long) {
            if other.worth > fill.worth {
                (fill.worth, fill.pieces) = (other.worth, other.pieces);
            }
            fill.bound = fill.bound.min(bound.worth).max(fill.worth);
        }
    }
    (fills, steps)
}

fn by_table(choices: &[Choice], capacities: &[i64], largest: usize) -> (Vec<BestFill>, u64) {
    let width = largest + 1;
    let mut worth = vec![0_i64; width];
    let mut bundles: Vec<(u32, u32, usize)> = Vec::new();
    let mut taken: Vec<Vec<u64>> = Vec::new();
    for choice in choices {
        let (mut left, mut bundle) = (choice.copies, 1);
        while left > 0 {
            let count = bundle.min(left);
            left -= count;
            bundle *= 2;
            let size = choice.size as usize * count as usize;
            if size > largest {
                break;
            }
            let gain = choice.worth * i64::from(count);
            let mut bits = vec![0_u64; width.div_ceil(64)];
            for room in (size..width).rev() {
                let with = worth[room - size] + gain;
                if with > worth[room] {
                    worth[room] = with;
                    bits[room / 64] |= 1 << (room % 64);
                }
            }
            bundles.push((choice.index, count, size));
            taken.push(bits);
        }
    }
    let steps = (bundles.len() * width) as u64 / 16 + 1;
    let fills = capacities
        .iter()
        .map(|capacity| {
            let mut room = (*capacity).max(0) as usize;
            let best = worth.get(room).copied().unwrap_or(0);
            let mut pieces: Vec<(u32, u32)> = Vec::new();
            for (&(index, count, size), bits) in bundles.iter().zip(&taken).rev() {
                if bits[room / 64] >> (room % 64) & 1 == 1 {
                    room -= size;
                    match pieces.last_mut() {
                        Some(last) if last.0 == index => last.1 += count,
                        _ => pieces.push((index, count)),
                    }
                }
            }
            pieces.reverse();
            BestFill { worth: best, bound: best, pieces }
        })
        .collect();
    (fills, steps)
}

/// Depth-first search over the choices in falling order of worth per size.
struct Tree<'c> {
    choices: &'c [Choice],
    counts: Vec<u32>,
    best: i64,
    best_counts: Vec<u32>,
    nodes: u64,
    most: u64,
    smallest_after: Vec<i64>,
}

impl<'c> Tree<'c> {
    fn new(choices: &'c [Choice], most: u64) -> Self {
        let mut smallest_after = vec![i64::MAX; choices.len() + 1];
        for k in (0..choices.len()).rev() {
            smallest_after[k] = smallest_after[k + 1].min(choices[k].size);
        }
        let counts = vec![0; choices.len()];
        Self { choices, best_counts: counts.clone(), counts, best: 0, nodes: 0, most, smallest_after }
    }

    /// What the rest can add at most: pieces cut at will.
    fn rest(&self, from: usize, mut room: i64) -> i64 {
        let mut sum = 0;
        for choice in &self.choices[from..] {
            let fit = (room / choice.size).min(i64::from(choice.copies));
            sum += fit * choice.worth;
            room -= fit * choice.size;
            if fit < i64::from(choice.copies) {
                let part = i128::from(room) * i128::from(choice.worth) / i128::from(choice.size);
                return sum + part as i64;
            }
        }
        sum
    }

    fn search(&mut self, from: usize, room: i64, worth: i64) {
        self.nodes += 1;
        if worth > self.best {
            self.best = worth;
            self.best_counts.clone_from(&self.counts);
        }
        if self.nodes > self.most {
            return;
        }
        for k in from..self.choices.len() {
            if room < self.smallest_after[k] {
                return;
            }
            let choice = self.choices[k];
            if choice.size > room {
                continue;
            }
            if worth + self.rest(k, room) <= self.best {
                return;
            }
            let most = (room / choice.size).min(i64::from(choice.copies));
            for count in (1..=most).rev() {
                self.counts[k] = count as u32;
                self.search(k + 1, room - count * choice.size, worth + count * choice.worth);
                if self.nodes > self.most {
                    break;
                }
            }
            self.counts[k] = 0;
            if self.nodes > self.most {
                return;
            }
        }
    }

    fn result(&self, capacity: i64) -> BestFill {
        let bound = if self.nodes > self.most { self.rest(0, capacity).max(self.best) } else { self.best };
        let pieces = self
            .choices
            .iter()
            .zip(&self.best_counts)
            .filter(|(_, count)| **count > 0)
            .map(|(choice, count)| (choice.index, *count))
            .collect();
        BestFill { worth: self.best, bound, pieces }
    }
}
