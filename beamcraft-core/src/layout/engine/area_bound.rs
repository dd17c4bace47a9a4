//! Lower bounds on sheets that hold whatever the cuts: by area, and by dual feasible functions.
//!
//! A dual feasible function f has Σ f(x_i) ≤ 1 whenever Σ x_i ≤ 1. For two of them the sum of f(w_i) g(h_i) is a bound
//! on the number of equal sheets (S. P. Fekete, J. Schepers, "A general framework for bounds for higher-dimensional
//! orthogonal packing problems", Math. Methods of Oper. Res. 60 (2004); recalled).
#![allow(clippy::indexing_slicing, reason = "indices are made from the lengths of the same tables")]

use super::ruin::{Blank, Kind};

/// One function's values, as whole numbers over `scale`.
struct Values {
    of: Vec<i64>,
    scale: i64,
}

fn functions(sizes: &[i64], whole: i64, most: usize) -> Vec<Values> {
    let mut list = vec![Values { of: sizes.to_vec(), scale: whole }];
    for k in 2..=12_i64 {
        let of = sizes.iter().map(|x| {
            let (times, rest) = ((k + 1) * x / whole, (k + 1) * x % whole);
            if rest == 0 { x * k } else { times * whole }
        });
        list.push(Values { of: of.collect(), scale: whole * k });
    }
    let mut steps: Vec<i64> = sizes.iter().flat_map(|x| [*x, whole - x, whole - x + 1]).collect();
    steps.retain(|e| *e > 0 && 2 * e <= whole);
    steps.sort_unstable();
    steps.dedup();
    let stride = steps.len().div_ceil(most).max(1);
    for e in steps.into_iter().step_by(stride) {
        let rounded = sizes.iter().map(|x| {
            if *x > whole - e {
                whole
            } else if *x >= e {
                *x
            } else {
                0
            }
        });
        list.push(Values { of: rounded.collect(), scale: whole });
        let parts = whole / e;
        let counted = sizes.iter().map(|x| if 2 * x > whole { parts - (whole - x) / e } else { i64::from(*x >= e) });
        list.push(Values { of: counted.collect(), scale: parts });
    }
    list
}

/// Cost of the area alone, dearer sheets last.
pub(crate) fn by_area(blanks: &[Blank], kinds: &[Kind], demands: &[u32]) -> i64 {
    let wanted = kinds.iter().zip(demands).map(|(kind, n)| {
        let lying = kind.lying[0];
        i128::from(lying.w) * i128::from(lying.h) * i128::from(*n)
    });
    let mut wanted: i128 = wanted.sum();
    let area = |b: &Blank| i128::from(b.w) * i128::from(b.h);
    let mut order: Vec<&Blank> = blanks.iter().filter(|b| area(b) > 0 && b.limit > 0).collect();
    // Costs up to 1e15 against areas up to 1e16 would not fit a product; the quotient in floating point orders them,
    // and a tie in the last place changes the bound by less than its rounding.
    let rate = |b: &Blank| b.cost as f64 / area(b) as f64;
    order.sort_by(|a, b| rate(a).total_cmp(&rate(b)));
    let mut cost = 0_i128;
    for blank in order {
        let whole = (wanted / area(blank)).min(i128::from(blank.limit));
        wanted -= whole * area(blank);
        cost += whole * i128::from(blank.cost);
        if whole < i128::from(blank.limit) {
            // Rounded down, one less for the order of near ties.
            cost += (wanted * i128::from(blank.cost) + area(blank) - 1) / area(blank);
            break;
        }
    }
    i64::try_from(cost).unwrap_or(i64::MAX)
}

/// Bound on the number of equal sheets for parts that keep their direction; its steps too.
pub(crate) fn by_functions(w: i64, h: i64, kinds: &[Kind], demands: &[u32]) -> (i64, u64) {
    let widths: Vec<i64> = kinds.iter().map(|k| k.lying[0].w).collect();
    let heights: Vec<i64> = kinds.iter().map(|k| k.lying[0].h).collect();
    let most = if kinds.len() > 300 { 12 } else { 60 };
    let (across, along) = (functions(&widths, w, most), functions(&heights, h, most));
    let mut best = 0_i128;
    for f in &across {
        for g in &along {
            let sum = f.of.iter().zip(&g.of).zip(demands);
            let sum: i128 = sum.map(|((a, b), n)| i128::from(*a) * i128::from(*b) * i128::from(*n)).sum();
            let per = i128::from(f.scale) * i128::from(g.scale);
            best = best.max((sum + per - 1) / per.max(1));
        }
    }
    (i64::try_from(best).unwrap_or(i64::MAX), (across.len() * along.len() * kinds.len()) as u64 / 4)
}

/// The least cost, no lower than `bound`, of sheets whose area is enough; `most` when the search for it is too long.
pub(crate) fn cheapest_cover(blanks: &[Blank], area: i128, bound: i64, most: i64) -> i64 {
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
