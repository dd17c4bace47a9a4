//! The best any sheet can hold when pieces may be repeated at will: the dynamic programme over all cuts from edge to
//! edge. Cuts are only needed where piece sizes add up (J. C. Herz 1972; N. Christofides, C. Whitlock 1977; recalled).
#![allow(clippy::indexing_slicing, reason = "tables of a dynamic programme; every index is made from their own sizes")]

use super::ruin::Kind;
use super::tree::{Axis, Body, Lying, Member, Role, Strip};

/// Sums of sizes, up to a length; sorted, with 0 and the ends that are asked for.
pub(crate) fn points(sizes: &[(i64, u32)], ends: &[i64], most: usize) -> Option<Vec<i64>> {
    let length = ends.iter().copied().max().unwrap_or(0);
    let mut sums: Vec<i64> = vec![0];
    for &(size, copies) in sizes {
        if size <= 0 {
            continue;
        }
        let mut last = sums.clone();
        for _ in 0..copies.min(u32::try_from(length / size).unwrap_or(u32::MAX)) {
            let next: Vec<i64> = last.iter().map(|s| s + size).filter(|s| *s <= length).collect();
            if next.is_empty() {
                break;
            }
            let before = sums.len();
            sums.extend(&next);
            sums.sort_unstable();
            sums.dedup();
            if sums.len() > most {
                return None;
            }
            if sums.len() == before {
                break;
            }
            last = next;
        }
    }
    // Where something ends at the far edge no cut further out is needed.
    sums.extend(ends);
    sums.sort_unstable();
    sums.dedup();
    (sums.len() <= most).then_some(sums)
}

/// The axes' points and the tables to go down from one point by another.
pub(crate) struct Grid {
    pub(crate) xs: Vec<i64>,
    pub(crate) ys: Vec<i64>,
    down_x: Vec<u32>,
    down_y: Vec<u32>,
}

fn downs(points: &[i64]) -> Vec<u32> {
    let n = points.len();
    let mut down = vec![0_u32; n * n];
    for i in 0..n {
        let mut at = i;
        for k in 0..=i {
            while points[at] > points[i] - points[k] {
                at -= 1;
            }
            down[i * n + k] = at as u32;
        }
    }
    down
}

impl Grid {
    pub(crate) fn new(xs: Vec<i64>, ys: Vec<i64>) -> Self {
        let (down_x, down_y) = (downs(&xs), downs(&ys));
        Self { xs, ys, down_x, down_y }
    }

    /// Grid for all kinds and sheets, when it has few enough points.
    pub(crate) fn of(kinds: &[Kind], demands: &[u32], sheets: &[(i64, i64)], most: usize) -> Option<Self> {
        let mut sizes: (Vec<_>, Vec<_>) = (Vec::new(), Vec::new());
        for (kind, demand) in kinds.iter().zip(demands) {
            for lying in &kind.lying {
                sizes.0.push((lying.w, *demand));
                sizes.1.push((lying.h, *demand));
            }
        }
        let ends: (Vec<_>, Vec<_>) = sheets.iter().copied().unzip();
        Some(Self::new(points(&sizes.0, &ends.0, most)?, points(&sizes.1, &ends.1, most)?))
    }

    pub(crate) fn down_x(&self, from: usize, by: usize) -> usize {
        self.down_x[from * self.xs.len() + by] as usize
    }

    pub(crate) fn down_y(&self, from: usize, by: usize) -> usize {
        self.down_y[from * self.ys.len() + by] as usize
    }

    pub(crate) fn at_x(&self, x: i64) -> usize {
        self.xs.partition_point(|p| *p <= x).saturating_sub(1)
    }

    pub(crate) fn at_y(&self, y: i64) -> usize {
        self.ys.partition_point(|p| *p <= y).saturating_sub(1)
    }

    /// What one run of the programme costs against the steps of a search, which take longer each.
    pub(crate) fn steps(&self) -> u64 {
        self.work() / 16 + 1
    }

    /// Sums that one run of the programme looks at.
    pub(crate) fn work(&self) -> u64 {
        let (nx, ny) = (self.xs.len() as u64, self.ys.len() as u64);
        nx * ny * (nx + ny) / 4
    }
}

#[derive(Clone, Copy, Debug)]
enum Best {
    Nothing,
    One(Lying),
    AtX(u32),
    AtY(u32),
    /// As the cell one point narrower, or one point lower.
    Narrower,
    Lower,
}

/// Values for every rectangle of the grid.
pub(crate) struct Table<'g> {
    grid: &'g Grid,
    value: Vec<i64>,
    best: Vec<Best>,
}

impl<'g> Table<'g> {
    /// `worth` of one piece of each kind; `cap` bounds each cell by something else that is known.
    pub(crate) fn new(grid: &'g Grid, kinds: &[Kind], worth: &[i64], cap: impl Fn(i64, i64) -> i64) -> Self {
        let (nx, ny) = (grid.xs.len(), grid.ys.len());
        let mut value = vec![0_i64; nx * ny];
        let mut best = vec![Best::Nothing; nx * ny];
        for (kind, worth) in kinds.iter().zip(worth) {
            for lying in &kind.lying {
                let (i, j) = (grid.xs.partition_point(|p| *p < lying.w), grid.ys.partition_point(|p| *p < lying.h));
                if i < nx && j < ny && *worth > value[i * ny + j] {
                    value[i * ny + j] = *worth;
                    best[i * ny + j] = Best::One(*lying);
                }
            }
        }
        for i in 1..nx {
            for j in 1..ny {
                let at = i * ny + j;
                let (mut most, mut how) = (value[at], best[at]);
                // What a smaller rectangle holds this one holds too.
                for (smaller, as_it) in [((i - 1) * ny + j, Best::Narrower), (at - 1, Best::Lower)] {
                    if value[smaller] > most {
                        (most, how) = (value[smaller], as_it);
                    }
                }
                for k in 1..=i {
                    if 2 * grid.xs[k] > grid.xs[i] {
                        break;
                    }
                    let sum = value[k * ny + j] + value[grid.down_x(i, k) * ny + j];
                    if sum > most {
                        (most, how) = (sum, Best::AtX(k as u32));
                    }
                }
                let row = &value[i * ny..(i + 1) * ny];
                for k in 1..=j {
                    if 2 * grid.ys[k] > grid.ys[j] {
                        break;
                    }
                    let sum = row[k] + row[grid.down_y(j, k)];
                    if sum > most {
                        (most, how) = (sum, Best::AtY(k as u32));
                    }
                }
                value[at] = most.min(cap(grid.xs[i], grid.ys[j]));
                best[at] = how;
            }
        }
        Self { grid, value, best }
    }

    pub(crate) fn at(&self, i: usize, j: usize) -> i64 {
        self.value[i * self.grid.ys.len() + j]
    }

    pub(crate) fn of_sheet(&self, w: i64, h: i64) -> i64 {
        self.at(self.grid.at_x(w), self.grid.at_y(h))
    }

    /// Values from combinations that keep to the copies there are: one remembered filling a cell, so that the value is
    /// one that can be reached, not always the best.
    pub(crate) fn limited(grid: &'g Grid, kinds: &[Kind], worth: &[i64], copies: &[u32]) -> Self {
        let (nx, ny, n) = (grid.xs.len(), grid.ys.len(), kinds.len());
        let mut value = vec![0_i64; nx * ny];
        let mut best = vec![Best::Nothing; nx * ny];
        let mut counts = vec![0_u16; nx * ny * n];
        for (k, (kind, worth)) in kinds.iter().zip(worth).enumerate() {
            for lying in kind.lying.iter().filter(|_| copies[k] > 0) {
                let (i, j) = (grid.xs.partition_point(|p| *p < lying.w), grid.ys.partition_point(|p| *p < lying.h));
                if i < nx && j < ny && *worth > value[i * ny + j] {
                    let at = i * ny + j;
                    value[at] = *worth;
                    best[at] = Best::One(*lying);
                    counts[at * n..(at + 1) * n].fill(0);
                    counts[at * n + k] = 1;
                }
            }
        }
        let fits = |counts: &[u16], a: usize, b: usize| {
            let (a, b) = (&counts[a * n..(a + 1) * n], &counts[b * n..(b + 1) * n]);
            a.iter().zip(b).zip(copies).all(|((a, b), most)| u32::from(*a) + u32::from(*b) <= *most)
        };
        for i in 1..nx {
            for j in 1..ny {
                let at = i * ny + j;
                let (mut most, mut how, mut from) = (value[at], best[at], (at, None));
                for (smaller, as_it) in [((i - 1) * ny + j, Best::Narrower), (at - 1, Best::Lower)] {
                    if value[smaller] > most {
                        (most, how, from) = (value[smaller], as_it, (smaller, None));
                    }
                }
                for k in 1..=i {
                    if 2 * grid.xs[k] > grid.xs[i] {
                        break;
                    }
                    let (a, b) = (k * ny + j, grid.down_x(i, k) * ny + j);
                    if value[a] + value[b] > most && fits(&counts, a, b) {
                        (most, how, from) = (value[a] + value[b], Best::AtX(k as u32), (a, Some(b)));
                    }
                }
                for k in 1..=j {
                    if 2 * grid.ys[k] > grid.ys[j] {
                        break;
                    }
                    let (a, b) = (i * ny + k, i * ny + grid.down_y(j, k));
                    if value[a] + value[b] > most && fits(&counts, a, b) {
                        (most, how, from) = (value[a] + value[b], Best::AtY(k as u32), (a, Some(b)));
                    }
                }
                value[at] = most;
                best[at] = how;
                if from.0 != at {
                    for k in 0..n {
                        counts[at * n + k] = counts[from.0 * n + k] + from.1.map_or(0, |b| counts[b * n + k]);
                    }
                }
            }
        }
        Self { grid, value, best }
    }

    /// The tree of cuts behind the value of a sheet.
    pub(crate) fn tree(&self, axis: Axis, w: i64, h: i64) -> Strip {
        self.tree_at((self.grid.at_x(w), self.grid.at_y(h)), axis, w, h)
    }

    fn tree_at(&self, (mut i, mut j): (usize, usize), axis: Axis, w: i64, h: i64) -> Strip {
        let grid = self.grid;
        let mut strip = Strip::new(axis, w, h);
        loop {
            match self.best[i * grid.ys.len() + j] {
                Best::Nothing => {}
                Best::Narrower => {
                    i -= 1;
                    continue;
                }
                Best::Lower => {
                    j -= 1;
                    continue;
                }
                Best::One(lying) => strip.insert(&[], false, lying),
                Best::AtX(k) => {
                    let (k, cut) = (k as usize, grid.xs[k as usize]);
                    let parts = [((k, j), (cut, h)), ((grid.down_x(i, k), j), (w - cut, h))];
                    self.divide(&mut strip, Axis::X, parts);
                }
                Best::AtY(k) => {
                    let (k, cut) = (k as usize, grid.ys[k as usize]);
                    let parts = [((i, k), (w, cut)), ((i, grid.down_y(j, k)), (w, h - cut))];
                    self.divide(&mut strip, Axis::Y, parts);
                }
            }
            return strip;
        }
    }

    fn divide(&self, strip: &mut Strip, cut: Axis, parts: [((usize, usize), (i64, i64)); 2]) {
        if strip.axis == cut {
            let [a, b] = parts.map(|(cell, (w, h))| self.tree_at(cell, cut, w, h));
            strip.free = a.free + b.free;
            strip.members = a.members.into_iter().chain(b.members).collect();
        } else {
            let (extent, inner_extent) = (strip.free, strip.cross);
            let mut inner =
                Strip { axis: cut, cross: extent, members: Vec::new(), free: inner_extent, role: Role::Plain };
            self.divide(&mut inner, cut, parts);
            strip.members.push(Member { extent, body: Body::Strip(Box::new(inner)) });
            strip.free = 0;
        }
    }
}
