//! Cutting parts from sheets by cuts from edge to edge: the whole run from a problem to an answer with its bound.
#![allow(clippy::indexing_slicing, reason = "indices are made from the lengths of the same tables")]

use super::area_bound::{by_area, by_functions, cheapest_cover};
use super::bars::UNLIMITED;
use super::common_divisor;
use super::patterns::programme;
use super::ruin::{Blank, Kind, Open, Ruin, State};
use super::watch::Watch;
use super::worth::most_value;

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

pub(super) fn collect(state: State, kinds: usize, value: i64, bound: i64) -> SheetsAnswer {
    let mut left = vec![0; kinds];
    for k in &state.out {
        left[*k as usize] += 1;
    }
    SheetsAnswer { sheets: state.sheets, left, value, bound }
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
