//! The most valuable cut of one sheet with limited copies, exactly: rectangles are built up from parts, side by side
//! and one on the other, the most promising first.
//!
//! The promise of a rectangle is its value and what the rest of the sheet can add at most (K. V. Viswanathan,
//! A. Bagchi, "Best-first search methods for constrained two-dimensional cutting stock problems", Operations Research
//! 41 (1993); recalled). The rest is bounded by the table over all cuts, each cell capped by what its area can hold of
//! the copies there are.
#![allow(clippy::indexing_slicing, reason = "indices are made from the lengths of the same tables")]

use std::collections::{BinaryHeap, HashMap};

use super::ruin::Kind;
use super::table::{Grid, Table};
use super::tree::{Axis, Body, Lying, Member, Strip};
use super::watch::Watch;

#[derive(Clone, Copy)]
enum Made {
    Part(Lying),
    Beside(u32, u32),
    Above(u32, u32),
}

struct Rect {
    w: i64,
    h: i64,
    value: i64,
    made: Made,
}

/// What the search found.
pub(crate) struct Single {
    /// A layout better than the one given, if there is one.
    pub(crate) tree: Option<Strip>,
    pub(crate) value: i64,
    pub(crate) bound: i64,
}

const MOST_RECTANGLES: usize = 1_500_000;

pub(crate) fn best_single(
    kinds: &[Kind],
    worth: &[i64],
    copies: &[u32],
    (w, h): (i64, i64),
    known: i64,
    watch: &mut Watch<'_>,
) -> Option<Single> {
    let grid = Grid::of(kinds, copies, &[(w, h)], 2_500)?;
    if grid.work() > watch.left().min(3_000_000_000) {
        return None;
    }
    watch.spend(grid.work());
    // Fractional knapsack over the areas of the parts that fit.
    let mut by_rate: Vec<usize> = (0..kinds.len()).collect();
    let area = |k: usize| kinds[k].lying[0].w as f64 * kinds[k].lying[0].h as f64;
    by_rate.sort_by(|a, b| {
        (worth[*b] as f64 * area(*a)).total_cmp(&(worth[*a] as f64 * area(*b))).then(a.cmp(b))
    });
    let cap = |x: i64, y: i64| -> i64 {
        let mut room = i128::from(x) * i128::from(y);
        let mut sum = 0_i128;
        for &k in &by_rate {
            if !kinds[k].lying.iter().any(|l| l.w <= x && l.h <= y) {
                continue;
            }
            let lying = kinds[k].lying[0];
            let each = i128::from(lying.w) * i128::from(lying.h);
            let fit = (room / each).min(i128::from(copies[k]));
            sum += fit * i128::from(worth[k]);
            room -= fit * each;
            if fit < i128::from(copies[k]) {
                sum += room * i128::from(worth[k]) / each;
                break;
            }
        }
        i64::try_from(sum).unwrap_or(i64::MAX / 4)
    };
    let table = Table::new(&grid, kinds, worth, cap);
    let (nx, ny) = (grid.xs.len(), grid.ys.len());
    let (top_x, top_y) = (grid.at_x(w), grid.at_y(h));
    // What can be added outside a rectangle in the corner.
    let mut outside = vec![0_i64; nx * ny];
    watch.spend(grid.work() * 2);
    for i in (0..=top_x).rev() {
        for j in (0..=top_y).rev() {
            let mut most = 0;
            for k in i + 1..=top_x {
                let strip = grid.at_x(grid.xs[k] - grid.xs[i]);
                most = most.max(outside[k * ny + j] + table.at(strip, j));
            }
            for k in j + 1..=top_y {
                let strip = grid.at_y(grid.ys[k] - grid.ys[j]);
                most = most.max(outside[i * ny + k] + table.at(i, strip));
            }
            outside[i * ny + j] = most;
        }
    }
    let promise = |x: i64, y: i64, value: i64| {
        let place = grid.xs.partition_point(|p| *p < x) * ny + grid.ys.partition_point(|p| *p < y);
        value + outside.get(place).copied().unwrap_or(0)
    };
    let mut found = Single { tree: None, value: known, bound: table.of_sheet(w, h) };
    watch.note_bound(found.bound);
    let mut rects: Vec<Rect> = Vec::new();
    let mut counts: Vec<u16> = Vec::new();
    let n = kinds.len();
    let mut heap: BinaryHeap<(i64, i64, core::cmp::Reverse<u32>)> = BinaryHeap::new();
    let mut seen: HashMap<Vec<u16>, Vec<(i64, i64)>> = HashMap::new();
    let mut best_rect = None;
    for (k, kind) in kinds.iter().enumerate() {
        for lying in &kind.lying {
            if copies[k] == 0 || lying.w > w || lying.h > h {
                continue;
            }
            let value = worth[k];
            let promise = promise(lying.w, lying.h, value);
            if promise <= found.value {
                continue;
            }
            if value > found.value {
                found.value = value;
                best_rect = Some(rects.len());
            }
            heap.push((promise, value, core::cmp::Reverse(rects.len() as u32)));
            rects.push(Rect { w: lying.w, h: lying.h, value, made: Made::Part(*lying) });
            let start = counts.len();
            counts.resize(start + n, 0);
            counts[start + k] = 1;
        }
    }
    // Closed rectangles in the order of their widths, so that those too wide are skipped at once.
    let mut closed: Vec<u32> = Vec::new();
    let mut sum = vec![0_u16; n];
    let mut complete = true;
    while let Some((top, _, core::cmp::Reverse(index))) = heap.pop() {
        if top <= found.value {
            break;
        }
        found.bound = found.bound.min(top);
        if !watch.spend(closed.len() as u64 / 2 + 20) || rects.len() > MOST_RECTANGLES {
            complete = false;
            found.bound = found.bound.min(top);
            break;
        }
        let (rw, rh) = (rects[index as usize].w, rects[index as usize].h);
        let place = closed.partition_point(|k| rects[*k as usize].w <= rw);
        closed.insert(place, index);
        for at in 0..closed.len() {
            let other = closed[at];
            let (a, b) = (&rects[index as usize], &rects[other as usize]);
            let value = a.value + b.value;
            let (beside, above) = (rw + b.w <= w, rh + b.h <= h);
            if !beside && !above {
                continue;
            }
            let mut fits: Option<bool> = None;
            for (way, possible) in [(0, beside), (1, above)] {
                if !possible {
                    continue;
                }
                let b = &rects[other as usize];
                let (nw, nh) = if way == 0 { (rw + b.w, rh.max(b.h)) } else { (rw.max(b.w), rh + b.h) };
                let promise = promise(nw, nh, value);
                if promise <= found.value {
                    continue;
                }
                if fits.is_none() {
                    let (p, q) = (index as usize * n, other as usize * n);
                    let mut good = true;
                    for k in 0..n {
                        sum[k] = counts[p + k] + counts[q + k];
                        if u32::from(sum[k]) > copies[k] {
                            good = false;
                            break;
                        }
                    }
                    fits = Some(good);
                }
                if fits == Some(false) {
                    break;
                }
                // The same parts in no larger a rectangle are enough.
                let shapes = seen.entry(sum.clone()).or_default();
                if shapes.iter().any(|(x, y)| *x <= nw && *y <= nh) {
                    continue;
                }
                shapes.push((nw, nh));
                if value > found.value {
                    found.value = value;
                    best_rect = Some(rects.len());
                    watch.note_value(value);
                }
                let made = if way == 0 { Made::Beside(index, other) } else { Made::Above(index, other) };
                heap.push((promise, value, core::cmp::Reverse(rects.len() as u32)));
                rects.push(Rect { w: nw, h: nh, value, made });
                counts.extend_from_slice(&sum);
            }
        }
    }
    if complete {
        found.bound = found.value;
    }
    found.tree = best_rect.map(|index| strip_of(&rects, index, Axis::X, w, h));
    Some(found)
}

/// The tree of a rectangle inside a larger one.
fn strip_of(rects: &[Rect], index: usize, axis: Axis, w: i64, h: i64) -> Strip {
    let rect = &rects[index];
    let mut strip = Strip::new(axis, w, h);
    match rect.made {
        Made::Part(lying) => strip.insert(&[], false, lying),
        Made::Beside(a, b) => divide(rects, &mut strip, Axis::X, (a, b), (w, h)),
        Made::Above(a, b) => divide(rects, &mut strip, Axis::Y, (a, b), (w, h)),
    }
    strip
}

fn divide(rects: &[Rect], strip: &mut Strip, cut: Axis, (a, b): (u32, u32), (w, h): (i64, i64)) {
    if strip.axis == cut {
        let at = if cut == Axis::X { rects[a as usize].w } else { rects[a as usize].h };
        let (first, second) = if cut == Axis::X { ((at, h), (w - at, h)) } else { ((w, at), (w, h - at)) };
        let one = strip_of(rects, a as usize, cut, first.0, first.1);
        let two = strip_of(rects, b as usize, cut, second.0, second.1);
        strip.free = one.free + two.free;
        strip.members = one.members.into_iter().chain(two.members).collect();
    } else {
        let extent = strip.free;
        let mut inner = Strip { axis: cut, cross: extent, members: Vec::new(), free: strip.cross };
        divide(rects, &mut inner, cut, (a, b), (w, h));
        strip.members.push(Member { extent, body: Body::Strip(Box::new(inner)) });
        strip.free = 0;
    }
}
