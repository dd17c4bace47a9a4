//! Ruin and recreate on trees of cuts, towards a goal that falls with every success.
//!
//! Branches are taken out of a few sheets, the pieces are put back where the free wood stays most together, and the
//! result is kept when it is no worse than some way back (late acceptance). While the goal is "cheaper than the best",
//! pieces may stay out; the search ends with all of them in. Both ideas are published: J. Christiaens, G. Vanden Berghe,
//! "Slack induction by string removals", Transportation Science 54 (2020); J. Gardeyn, T. Wauters, "A goal-driven ruin
//! and recreate heuristic for the 2D variable-sized bin packing problem with guillotine constraints", EJOR 301 (2022)
//! (both recalled).
#![allow(clippy::indexing_slicing, reason = "indices are made from the lengths of the same tables")]

use super::Dice;
use super::tree::{Axis, Lying, Role, Strip};
use super::watch::Watch;

/// A kind of sheet as the search sees it: the trees that an empty one may start from.
#[derive(Clone, Debug)]
pub(crate) struct Blank {
    pub(crate) w: i64,
    pub(crate) h: i64,
    pub(crate) cost: i64,
    pub(crate) limit: u32,
    pub(crate) starts: Vec<Strip>,
}

/// A kind of part.
#[derive(Clone, Debug)]
pub(crate) struct Kind {
    /// One or two positions.
    pub(crate) lying: Vec<Lying>,
    /// What leaving one out costs the search.
    pub(crate) weight: i64,
    /// Stages of cuts that the part itself still needs: a group in line is parted after it is cut out.
    pub(crate) inner_stages: u32,
}

#[derive(Clone, Debug)]
pub(crate) struct Open {
    pub(crate) blank: usize,
    pub(crate) root: Strip,
}

/// A state of the search.
#[derive(Clone, Debug, Default)]
pub(crate) struct State {
    pub(crate) sheets: Vec<Open>,
    /// Kinds of the pieces that are out, one entry a piece.
    pub(crate) out: Vec<u32>,
    pub(crate) cost: i64,
}

pub(crate) struct Ruin<'p> {
    pub(crate) blanks: &'p [Blank],
    pub(crate) kinds: &'p [Kind],
    pub(crate) stages: u32,
    pub(crate) dice: Dice,
    used: Vec<u32>,
    path: Vec<u16>,
    noise: Vec<(f64, u32)>,
}

struct Best {
    sheet: usize,
    path: Vec<u16>,
    across_first: bool,
    lying: Lying,
    score: f64,
}

impl<'p> Ruin<'p> {
    pub(crate) fn new(blanks: &'p [Blank], kinds: &'p [Kind], stages: u32, seed: u64) -> Self {
        let used = vec![0; blanks.len()];
        Self { blanks, kinds, stages, dice: Dice::new(seed), used, path: Vec::new(), noise: Vec::new() }
    }

    fn weight(&self, out: &[u32]) -> i64 {
        out.iter().map(|k| self.kinds[*k as usize].weight).fold(0, i64::saturating_add)
    }

    /// Best place for a piece in the sheets from `from` on. Some places are overlooked at random.
    fn place(&mut self, state: &State, from: usize, kind: u32, blink: f64, watch: &mut Watch<'_>) -> Option<Best> {
        let mut best: Option<Best> = None;
        let mut looked = 0;
        let Self { dice, path, kinds, stages, .. } = self;
        let inner = kinds[kind as usize].inner_stages;
        for (index, open) in state.sheets.iter().enumerate().skip(from) {
            for lying in &kinds[kind as usize].lying {
                looked +=
                    open.root.ways(*lying, 1, stages.saturating_sub(inner), path, &mut |path, across_first, score| {
                        if best.as_ref().is_none_or(|b| score > b.score) && (blink == 0.0 || dice.unit() >= blink) {
                            best = Some(Best { sheet: index, path: path.to_vec(), across_first, lying: *lying, score });
                        }
                    });
            }
        }
        watch.spend(looked * 3);
        best
    }

    /// Opens a sheet for a piece, within the cost that is left.
    fn open_for(&mut self, state: &mut State, kind: u32, goal: i64) -> bool {
        let room = goal.saturating_sub(state.cost);
        let stages = self.stages.saturating_sub(self.kinds[kind as usize].inner_stages);
        let mut fitting: Vec<usize> = Vec::new();
        for (k, blank) in self.blanks.iter().enumerate() {
            let fits = |lying: &Lying| {
                blank.starts.iter().any(|start| {
                    let mut found = false;
                    start.ways(*lying, 1, stages, &mut Vec::new(), &mut |_, _, _| found = true);
                    found
                })
            };
            if blank.cost <= room && self.used[k] < blank.limit && self.kinds[kind as usize].lying.iter().any(fits) {
                fitting.push(k);
            }
        }
        if fitting.is_empty() {
            return false;
        }
        let blank = fitting[self.dice.below(fitting.len())];
        let starts = &self.blanks[blank].starts;
        for _ in 0..8 {
            let root = starts[self.dice.below(starts.len())].clone();
            let mut found = false;
            for lying in &self.kinds[kind as usize].lying {
                root.ways(*lying, 1, stages, &mut Vec::new(), &mut |_, _, _| found = true);
            }
            if found {
                state.sheets.push(Open { blank, root });
                state.cost += self.blanks[blank].cost;
                self.used[blank] += 1;
                return true;
            }
        }
        false
    }

    /// Puts the pieces that are out back where there is a place.
    fn recreate(
        &mut self,
        state: &mut State,
        goal: i64,
        blink: f64,
        undo: &mut Vec<(usize, Strip)>,
        watch: &mut Watch<'_>,
    ) {
        let old_count = state.sheets.len();
        let mode = self.dice.below(8);
        let mut noise = core::mem::take(&mut self.noise);
        noise.clear();
        for k in &state.out {
            let lying = self.kinds[*k as usize].lying[0];
            let (w, h) = (lying.w as f64, lying.h as f64);
            let key = match mode {
                0 => w * h,
                1 => self.kinds[*k as usize].weight as f64,
                2 => self.kinds[*k as usize].weight as f64 / (w * h),
                3 => w,
                4 => h,
                5 => w.max(h),
                6 => w + h,
                _ => 1.0,
            };
            noise.push((key * (0.75 + 0.5 * self.dice.unit()), *k));
        }
        noise.sort_by(|a, b| b.0.total_cmp(&a.0));
        state.out.clear();
        for (_, kind) in &noise {
            let mut place = self.place(state, 0, *kind, blink, watch);
            if place.is_none() && self.open_for(state, *kind, goal) {
                place = self.place(state, state.sheets.len() - 1, *kind, 0.0, watch);
            }
            match place {
                Some(best) => {
                    let root = &mut state.sheets[best.sheet].root;
                    if best.sheet < old_count && !undo.iter().any(|(k, _)| *k == best.sheet) {
                        undo.push((best.sheet, root.clone()));
                    }
                    root.insert(&best.path, best.across_first, best.lying);
                }
                None => state.out.push(*kind),
            }
        }
        self.noise = noise;
    }

    /// Takes branches out of sheets; the sheets as they were go to `undo`.
    fn ruin(&mut self, state: &mut State, undo: &mut Vec<(usize, Strip)>) {
        let count = state.sheets.len();
        if count == 0 {
            return;
        }
        let sheets = 1 + self.dice.below(3.min(count));
        for round in 0..sheets {
            let index = self.dice.below(count);
            if undo.iter().any(|(k, _)| *k == index) {
                continue;
            }
            let root = &mut state.sheets[index].root;
            undo.push((index, root.clone()));
            if round == 0 && self.dice.below(16) == 0 {
                // The whole sheet: it may come back as another kind.
                root.parts(&mut |lying| state.out.push(lying.kind));
                root.clear();
                continue;
            }
            let size = root.size();
            let most = 1 + size / 3;
            let branches = 1 + self.dice.below(most.min(5));
            for _ in 0..branches {
                let size = root.size();
                let mut at = self.dice.below(size);
                root.remove(&mut at, &mut state.out);
            }
        }
    }

    /// Shuts the sheets that hold nothing.
    fn shut_empty(&mut self, state: &mut State) {
        let mut k = 0;
        while k < state.sheets.len() {
            let mut holds = false;
            state.sheets[k].root.parts(&mut |_| holds = true);
            if holds {
                k += 1;
            } else {
                let open = state.sheets.swap_remove(k);
                state.cost -= self.blanks[open.blank].cost;
                self.used[open.blank] -= 1;
            }
        }
    }

    /// Shuts sheets, the poorest filled first in most cases, until the cost is within the goal.
    fn shrink(&mut self, state: &mut State, goal: i64) {
        while state.cost > goal && !state.sheets.is_empty() {
            let fills: Vec<f64> = state
                .sheets
                .iter()
                .map(|open| {
                    let mut area = 0.0;
                    open.root.parts(&mut |lying| area += lying.w as f64 * lying.h as f64);
                    let blank = &self.blanks[open.blank];
                    area / (blank.w as f64 * blank.h as f64).max(1.0) * (0.6 + 0.8 * self.dice.unit())
                })
                .collect();
            let poorest = (0..fills.len()).min_by(|a, b| fills[*a].total_cmp(&fills[*b])).unwrap_or(0);
            let open = state.sheets.swap_remove(poorest);
            open.root.parts(&mut |lying| state.out.push(lying.kind));
            state.cost -= self.blanks[open.blank].cost;
            self.used[open.blank] -= 1;
        }
    }

    fn count_used(&mut self, state: &State) {
        self.used.fill(0);
        for open in &state.sheets {
            self.used[open.blank] += 1;
        }
    }

    /// First layout: sheet after sheet, each piece tried from the largest down.
    pub(crate) fn construct(&mut self, demands: &[u32], watch: &mut Watch<'_>) -> State {
        let mut left = demands.to_vec();
        let mut order: Vec<usize> = (0..left.len()).collect();
        let area = |k: usize| {
            let lying = self.kinds[k].lying[0];
            i128::from(lying.w) * i128::from(lying.h)
        };
        order.sort_by_key(|k| (core::cmp::Reverse(area(*k)), *k));
        let mut state = State::default();
        self.used.fill(0);
        let mut stuck = vec![false; left.len()];
        while let Some(&first) = order.iter().find(|k| left[**k] > 0 && !stuck[**k]) {
            // Among the kinds of sheet the one that gives the most for its cost.
            let mut best: Option<(f64, usize, Strip, Vec<u32>)> = None;
            for (blank_index, blank) in self.blanks.iter().enumerate() {
                if self.used[blank_index] >= blank.limit {
                    continue;
                }
                for start in blank.starts.iter().take(4) {
                    let mut trial =
                        State { sheets: vec![Open { blank: blank_index, root: start.clone() }], ..State::default() };
                    let (mut taken, mut area_in) = (Vec::new(), 0.0);
                    let mut open = left.clone();
                    for &k in &order {
                        while open[k] > 0 {
                            let Some(place) = self.place(&trial, 0, k as u32, 0.0, watch) else { break };
                            trial.sheets[0].root.insert(&place.path, place.across_first, place.lying);
                            area_in += place.lying.w as f64 * place.lying.h as f64;
                            taken.push(k as u32);
                            open[k] -= 1;
                        }
                        if k == first && taken.is_empty() {
                            break;
                        }
                    }
                    if taken.first() != Some(&(first as u32)) {
                        continue;
                    }
                    let rate = area_in / blank.cost.max(1) as f64;
                    if best.as_ref().is_none_or(|(old, ..)| rate > *old)
                        && let Some(done) = trial.sheets.pop()
                    {
                        best = Some((rate, blank_index, done.root, taken));
                    }
                }
            }
            match best {
                None => stuck[first] = true,
                Some((_, blank, root, taken)) => {
                    let mut counts = vec![0_u32; left.len()];
                    for k in &taken {
                        counts[*k as usize] += 1;
                    }
                    // The same sheet again as often as the pieces last.
                    let fresh = self.blanks[blank].limit - self.used[blank];
                    let again = counts.iter().zip(&left).filter(|(n, _)| **n > 0).map(|(n, l)| l / n).min();
                    let times = again.unwrap_or(1).min(fresh).max(1);
                    for (n, l) in counts.iter().zip(left.iter_mut()) {
                        *l -= n * times;
                    }
                    self.used[blank] += times;
                    for _ in 0..times {
                        state.sheets.push(Open { blank, root: root.clone() });
                        state.cost = state.cost.saturating_add(self.blanks[blank].cost);
                    }
                }
            }
        }
        for (k, n) in left.iter().enumerate() {
            state.out.extend(core::iter::repeat_n(k as u32, *n as usize));
        }
        state
    }

    /// Searches from `start`. With all pieces in, the goal is a lower cost down to `enough`; else more weight in.
    /// Returns the best complete state found, or for a goal by weight the best state.
    pub(crate) fn improve(
        &mut self,
        start: State,
        by_weight: bool,
        enough: i64,
        until: u64,
        watch: &mut Watch<'_>,
        patience: u64,
    ) -> State {
        let mut best = start.clone();
        let mut state = start;
        let mut best_weight = self.weight(&best.out);
        let unit = super::common_divisor(self.blanks.iter().map(|b| b.cost)).max(1);
        let mut goal = if by_weight { i64::MAX } else { state.cost - unit };
        self.count_used(&state);
        if !by_weight {
            if !state.out.is_empty() || state.cost <= enough {
                return best;
            }
            self.shrink(&mut state, goal);
        }
        let mut current = self.weight(&state.out);
        let history_length = 200;
        let mut history = vec![current; history_length];
        let (mut iteration, mut since) = (0_usize, 0_u64);
        let mut undo: Vec<(usize, Strip)> = Vec::new();
        while watch.open() && watch.used() < until && since < patience {
            iteration += 1;
            since += 1;
            // A round in which no sheet may be opened looks at no place; it has its price too, or it would never end.
            watch.spend(1 + state.out.len() as u64);
            undo.clear();
            let (old_out, old_cost, old_count) = (state.out.clone(), state.cost, state.sheets.len());
            self.ruin(&mut state, &mut undo);
            // Sheets that were cleared wait as they are; they count as open until the end of the round.
            let mut cleared: Vec<usize> = Vec::new();
            for (index, _) in &undo {
                if state.sheets[*index].root.members.is_empty() {
                    cleared.push(*index);
                }
            }
            let mut freed = 0;
            for index in &cleared {
                let blank = state.sheets[*index].blank;
                freed += self.blanks[blank].cost;
                self.used[blank] -= 1;
                // No free wood, so that nothing is put there; the record stays for the undo.
                state.sheets[*index].root.free = -1;
            }
            state.cost -= freed;
            self.recreate(&mut state, goal, 0.01, &mut undo, watch);
            let new = self.weight(&state.out);
            let late = history[iteration % history_length];
            if new <= current || new <= late {
                for index in &cleared {
                    // Counted again, because `shut_empty` takes them off.
                    let blank = state.sheets[*index].blank;
                    self.used[blank] += 1;
                    state.cost += self.blanks[blank].cost;
                }
                self.shut_empty(&mut state);
                current = new;
            } else {
                for open in state.sheets.drain(old_count..) {
                    self.used[open.blank] -= 1;
                }
                for index in &cleared {
                    self.used[state.sheets[*index].blank] += 1;
                }
                for (index, strip) in undo.drain(..) {
                    state.sheets[index].root = strip;
                }
                state.out = old_out;
                state.cost = old_cost;
            }
            if current < late {
                history[iteration % history_length] = current;
            }
            if by_weight {
                if current < best_weight {
                    best_weight = current;
                    best = state.clone();
                    since = 0;
                    if best_weight <= enough {
                        break;
                    }
                }
            } else if state.out.is_empty() {
                if state.cost < best.cost {
                    best = state.clone();
                    watch.note_value(best.cost);
                    since = 0;
                }
                if best.cost <= enough {
                    break;
                }
                goal = best.cost - unit;
                self.shrink(&mut state, goal);
                current = self.weight(&state.out);
                history.fill(current);
            }
        }
        best
    }
}

/// The starts of a sheet without flaws.
pub(crate) fn plain_starts(w: i64, h: i64, first: Option<Axis>) -> Vec<Strip> {
    match first {
        Some(axis) => vec![Strip { role: Role::Leading, ..Strip::new(axis, w, h) }],
        None => vec![Strip::new(Axis::X, w, h), Strip::new(Axis::Y, w, h)],
    }
}
