//! The most valuable cut of one sheet with limited copies, exactly: rectangles are built up from parts, side by side
//! and one on the other, the most promising first.
//!
//! The promise of a rectangle is its value and what the rest of the sheet can add at most (K. V. Viswanathan,
//! A. Bagchi, "Best-first search methods for constrained two-dimensional cutting stock problems", Operations Research
//! 41 (1993); recalled). The rest is bounded by the table over all cuts, each cell capped by what its area can hold of
//! the copies there are.
#![allow(clippy::indexing_slicing, reason = "indices are made from the lengths of the same tables")]

use std::collections::{BinaryHeap, HashMap};

use super::Dice;
use super::outside::Outside;
use super::ruin::Kind;
use super::table::{Grid, Table};
use super::tree::{Axis, Body, Lying, Member, Role, Strip};
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
    mark: (u64, u64),
    made: Made,
}

/// Index of the first point that is no smaller: by a table where the points are small numbers.
struct Places(Vec<u32>);

impl Places {
    fn new(points: &[i64]) -> Self {
        let last = points.last().copied().unwrap_or(0);
        if last > 2_000_000 {
            return Self(Vec::new());
        }
        let mut at = 0;
        Self(
            (0..=last)
                .map(|x| {
                    while points[at] < x {
                        at += 1;
                    }
                    at as u32
                })
                .collect(),
        )
    }

    fn of(&self, points: &[i64], x: i64) -> usize {
        self.0.get(x as usize).map_or_else(|| points.partition_point(|p| *p < x), |at| *at as usize)
    }
}

/// What the search found.
pub(crate) struct Single {
    /// A layout better than the one given, if there is one.
    pub(crate) tree: Option<Strip>,
    pub(crate) value: i64,
    pub(crate) bound: i64,
}

const MOST_RECTANGLES: usize = 2_000_000;

type CapRow = (Vec<(i64, i64)>, i128, i64, u32);

/// What an area can hold of the copies there are, cut at will: the best rates first, of the parts that fit its sides.
pub(crate) struct AreaCap {
    /// Smallest sides, area, worth, copies; in falling order of worth per area.
    rows: Vec<CapRow>,
}

impl AreaCap {
    pub(crate) fn new(kinds: &[Kind], worth: &[i64], copies: &[u32]) -> Self {
        let mut rows: Vec<_> = kinds
            .iter()
            .zip(worth)
            .zip(copies)
            .filter(|((_, worth), copies)| **worth > 0 && **copies > 0)
            .map(|((kind, worth), copies)| {
                let area = i128::from(kind.lying[0].w) * i128::from(kind.lying[0].h);
                (kind.lying.iter().map(|l| (l.w, l.h)).collect(), area.max(1), *worth, *copies)
            })
            .collect();
        rows.sort_by(|a: &(_, i128, i64, u32), b| (i128::from(b.2) * a.1).cmp(&(i128::from(a.2) * b.1)));
        Self { rows }
    }

    pub(crate) fn of(&self, x: i64, y: i64) -> i64 {
        let mut room = i128::from(x) * i128::from(y);
        let mut sum = 0_i128;
        for (sides, area, worth, copies) in &self.rows {
            if !sides.iter().any(|(w, h)| *w <= x && *h <= y) {
                continue;
            }
            let copies = i128::from(*copies);
            if area * copies <= room {
                sum += copies * i128::from(*worth);
                room -= area * copies;
            } else {
                sum += room * i128::from(*worth) / area;
                break;
            }
        }
        i64::try_from(sum).unwrap_or(i64::MAX / 4)
    }
}

pub(crate) fn best_single(
    kinds: &[Kind],
    worth: &[i64],
    copies: &[u32],
    (w, h): (i64, i64),
    known: i64,
    watch: &mut Watch<'_>,
) -> Option<Single> {
    let grid = Grid::of(kinds, copies, &[(w, h)], 2_500)?;
    if grid.steps() > watch.left() {
        return None;
    }
    let cap = AreaCap::new(kinds, worth, copies);
    let table = Table::new(&grid, kinds, worth, |x, y| cap.of(x, y));
    let outside = Outside::of(&grid, &table, (grid.at_x(w), grid.at_y(h)));
    watch.spend(table.steps() + outside.steps);
    let (place_x, place_y) = (Places::new(&grid.xs), Places::new(&grid.ys));
    let promise = |x: i64, y: i64, value: i64| {
        let place = place_x.of(&grid.xs, x) * grid.ys.len() + place_y.of(&grid.ys, y);
        value + outside.value.get(place).copied().unwrap_or(0)
    };
    let all: i128 = worth.iter().zip(copies).map(|(v, n)| i128::from(*v) * i128::from(*n)).sum();
    let all = i64::try_from(all).unwrap_or(i64::MAX);
    let mut found = Single { tree: None, value: known, bound: table.of_sheet(w, h).min(all) };
    watch.note_bound(found.bound);
    if let Some(n) = grid.xs.len().checked_mul(grid.ys.len()).and_then(|cells| cells.checked_mul(kinds.len()))
        && n < 200_000_000
    {
        // The same table again with shaken worths: each time other fillings are remembered.
        let until = watch.used() + (watch.left() / 5).min(40_000_000);
        let mut dice = Dice::new(9);
        for round in 0..300 {
            let shaken: Vec<i64> = match round {
                0 => worth.to_vec(),
                _ => worth.iter().map(|v| (*v as f64 * 1024.0 * (1.0 + 0.3 * (dice.unit() - 0.5))) as i64).collect(),
            };
            let reached = Table::limited(&grid, kinds, &shaken, copies);
            let tree = reached.tree(Axis::X, w, h);
            let mut value = 0;
            tree.parts(&mut |lying| value += worth[lying.kind as usize]);
            if value > found.value {
                found.value = value;
                found.tree = Some(tree);
                watch.note_value(value);
            }
            if !watch.spend(reached.steps()) || watch.used() > until || found.value >= found.bound {
                break;
            }
        }
    }
    // Copies in lanes of 16 bits: four kinds a word, and a lane's top bit shows that there are too many.
    let words = kinds.len().div_ceil(4);
    let mut slack = vec![0_u64; words];
    let mut marks: Vec<(u64, u64)> = Vec::with_capacity(kinds.len());
    let mut dice = Dice::new(3);
    for (k, lying) in kinds.iter().map(|kind| kind.lying[0]).enumerate() {
        let most = i128::from(w) * i128::from(h) / (i128::from(lying.w) * i128::from(lying.h)).max(1);
        let most = most.min(i128::from(copies[k]));
        if most > 0x3fff {
            return Some(found);
        }
        slack[k / 4] |= (0x7fff - most as u64) << (16 * (k % 4));
        marks.push((dice.next(), dice.next()));
    }
    let mut rects: Vec<Rect> = Vec::new();
    let mut counts: Vec<u64> = Vec::new();
    let mut heap: BinaryHeap<(i64, i64, core::cmp::Reverse<u32>)> = BinaryHeap::new();
    // A sum of random marks stands for the parts in a rectangle: 128 bits, so that two sets never share one in practice.
    let mut seen: HashMap<(u64, u64), Vec<(i64, i64)>> = HashMap::new();
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
            rects.push(Rect { w: lying.w, h: lying.h, value, mark: marks[k], made: Made::Part(*lying) });
            let start = counts.len();
            counts.resize(start + words, 0);
            counts[start + k / 4] = 1 << (16 * (k % 4));
        }
    }
    // Closed rectangles in the order of their widths.
    let mut closed: Vec<u32> = Vec::new();
    let mut complete = true;
    while let Some((top, _, core::cmp::Reverse(index))) = heap.pop() {
        if top <= found.value || found.value >= found.bound {
            break;
        }
        found.bound = found.bound.min(top);
        if !watch.spend(closed.len() as u64 + 20) || rects.len() > MOST_RECTANGLES {
            complete = false;
            break;
        }
        let Rect { w: rw, h: rh, value: own, mark, .. } = rects[index as usize];
        let place = closed.partition_point(|k| rects[*k as usize].w <= rw);
        closed.insert(place, index);
        let mut made_here = 0;
        for &other in &closed {
            let b = &rects[other as usize];
            let value = own + b.value;
            let (b_w, b_h) = (b.w, b.h);
            let sum = (mark.0.wrapping_add(b.mark.0), mark.1.wrapping_add(b.mark.1));
            let mut fits: Option<bool> = None;
            for way in 0..2 {
                let (nw, nh) = if way == 0 { (rw + b_w, rh.max(b_h)) } else { (rw.max(b_w), rh + b_h) };
                if nw > w || nh > h {
                    continue;
                }
                let promise = promise(nw, nh, value);
                if promise <= found.value {
                    continue;
                }
                if fits.is_none() {
                    let (p, q) = (index as usize * words, other as usize * words);
                    let pairs = counts[p..p + words].iter().zip(&counts[q..q + words]).zip(&slack);
                    fits = Some(pairs.fold(0, |over, ((a, b), s)| over | (a + b + s)) & 0x8000_8000_8000_8000 == 0);
                }
                if fits == Some(false) {
                    break;
                }
                // The same parts in no larger a rectangle are enough.
                let shapes = seen.entry(sum).or_default();
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
                rects.push(Rect { w: nw, h: nh, value, mark: sum, made });
                for word in 0..words {
                    let both = counts[index as usize * words + word] + counts[other as usize * words + word];
                    counts.push(both);
                }
                made_here += 1;
            }
        }
        watch.spend(made_here * 40);
    }
    if complete {
        found.bound = found.value;
    }
    if let Some(index) = best_rect {
        found.tree = Some(strip_of(&rects, index, Axis::X, w, h));
    }
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
        let mut inner = Strip { axis: cut, cross: extent, members: Vec::new(), free: strip.cross, role: Role::Plain };
        divide(rects, &mut inner, cut, (a, b), (w, h));
        strip.members.push(Member { extent, body: Body::Strip(Box::new(inner)) });
        strip.free = 0;
    }
}
