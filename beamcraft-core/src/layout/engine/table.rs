//! The best any sheet can hold when pieces may be repeated at will: the dynamic programme over all cuts from edge to
//! edge. Cuts are only needed where piece sizes add up (J. C. Herz 1972; N. Christofides, C. Whitlock 1977; recalled),
//! for pieces without limit only where they add up from both ends (J. Terno, R. Lindemann, G. Scheithauer 1987;
//! recalled), and only where the value rises: a piece that is worth no more than a shorter one is cut as the shorter one.
#![allow(clippy::indexing_slicing, reason = "tables of a dynamic programme; every index is made from their own sizes")]

use std::collections::BTreeMap;

use super::ruin::Kind;
use super::tree::{Axis, Body, Lying, Member, Role, Strip};

/// Sums of sizes, up to a length; sorted, with 0 and the ends that are asked for.
pub(crate) fn points(sizes: &[(i64, u32)], ends: &[i64], length: i64, most: usize) -> Option<Vec<i64>> {
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

/// Of the sums of sizes that may be repeated at will, those that remain when what lies beyond them is pushed to the far
/// end: { largest sum that L − s leaves room for : s a sum }.
///
/// A piece of a layout leaves L − t for some sum t, and may be made so large. What is beside it within such a piece is
/// again a sum, so that both halves of a cut belong to this set. Sums of limited copies are not closed in this way.
fn raster(sums: &[i64], length: i64) -> Vec<i64> {
    let within = |room: i64| sums.partition_point(|s| *s <= room).checked_sub(1).map(|k| sums[k]);
    let mut kept: Vec<i64> = sums.iter().filter(|s| **s <= length).filter_map(|s| within(length - s)).collect();
    kept.sort_unstable();
    kept.dedup();
    kept
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
        let (w, h) = (ends.0.iter().copied().max().unwrap_or(0), ends.1.iter().copied().max().unwrap_or(0));
        Some(Self::new(points(&sizes.0, &ends.0, w, most)?, points(&sizes.1, &ends.1, h, most)?))
    }

    /// Grid for one sheet and pieces without limit, when it has few enough points.
    pub(crate) fn at_will(kinds: &[Kind], (w, h): (i64, i64), most: usize) -> Option<Self> {
        let lying = || kinds.iter().flat_map(|kind| &kind.lying);
        let across: Vec<_> = lying().map(|l| (l.w, u32::MAX)).collect();
        let along: Vec<_> = lying().map(|l| (l.h, u32::MAX)).collect();
        Some(Self::new(raster(&points(&across, &[], w, most)?, w), raster(&points(&along, &[], h, most)?, h)))
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

/// Rows of a table that are filled together.
pub(super) const ROWS_AT_ONCE: usize = 16;

/// What a cell's filling takes of the copies there are.
trait Copies {
    /// Whether the fillings of two cells may be put together.
    fn allow(&self, one: usize, other: usize) -> bool;
    /// A cell is filled as another one, or as two.
    fn keep(&mut self, cell: usize, one: usize, other: Option<usize>);
}

/// As many copies as are wanted.
struct Endless;

impl Copies for Endless {
    fn allow(&self, _: usize, _: usize) -> bool {
        true
    }

    fn keep(&mut self, _: usize, _: usize, _: Option<usize>) {}
}

/// The copies of each kind in the filling of each cell.
struct Counted<'c> {
    copies: &'c [u32],
    of: Vec<u16>,
}

impl Counted<'_> {
    fn cell(&self, cell: usize) -> &[u16] {
        let n = self.copies.len();
        &self.of[cell * n..(cell + 1) * n]
    }
}

impl Copies for Counted<'_> {
    fn allow(&self, one: usize, other: usize) -> bool {
        let pairs = self.cell(one).iter().zip(self.cell(other)).zip(self.copies);
        pairs.fold(true, |fits, ((a, b), most)| fits & (u32::from(*a) + u32::from(*b) <= *most))
    }

    fn keep(&mut self, cell: usize, one: usize, other: Option<usize>) {
        let n = self.copies.len();
        self.of.copy_within(one * n..(one + 1) * n, cell * n);
        for k in other.map_or(0..0, |_| 0..n) {
            self.of[cell * n + k] += other.map_or(0, |other| self.of[other * n + k]);
        }
    }
}

/// The values along one line of cells so far, and the points where they rise.
struct Line<'v> {
    values: &'v [i64],
    rises: &'v [u32],
    /// First cell of the line and the distance to the next.
    cells: (usize, usize),
}

impl Line<'_> {
    fn cell(&self, k: u32) -> usize {
        self.cells.0 + k as usize * self.cells.1
    }

    /// The cut at the point `half` of the way or before that gives more than `most`, where the values rise; the points
    /// on its two sides. `down` leads from each point to what is left beyond it.
    fn best_cut(
        &self,
        (points, half): (&[i64], i64),
        down: &[u32],
        mut most: i64,
        copies: &impl Copies,
        looked: &mut u64,
    ) -> Option<(i64, u32, u32)> {
        let below = self.rises.partition_point(|k| points[*k as usize] <= half);
        *looked += below as u64;
        let mut found = None;
        for &k in &self.rises[..below] {
            let rest = down[k as usize];
            let sum = self.values[k as usize] + self.values[rest as usize];
            if sum > most && copies.allow(self.cell(k), self.cell(rest)) {
                most = sum;
                found = Some((sum, k, rest));
            }
        }
        found
    }
}

/// Values for every rectangle of the grid.
pub(crate) struct Table<'g> {
    grid: &'g Grid,
    value: Vec<i64>,
    best: Vec<Best>,
    /// Sums of two values that were looked at.
    looked: u64,
}

impl<'g> Table<'g> {
    /// `worth` of one piece of each kind; `cap` bounds each cell by something else that is known.
    pub(crate) fn new(grid: &'g Grid, kinds: &[Kind], worth: &[i64], cap: impl Fn(i64, i64) -> i64) -> Self {
        let (mut table, _) = Self::of_parts(grid, kinds.iter().zip(worth));
        table.fill(&mut Endless, cap);
        table
    }

    /// Values from combinations that keep to the copies there are: one remembered filling a cell, so that the value is
    /// one that can be reached, not always the best.
    pub(crate) fn limited(grid: &'g Grid, kinds: &[Kind], worth: &[i64], copies: &[u32]) -> Self {
        let there = kinds.iter().zip(worth).zip(copies).filter(|(_, copies)| **copies > 0);
        let (mut table, cells) = Self::of_parts(grid, there.map(|(part, _)| part));
        table.looked += (table.value.len() * copies.len()) as u64 / 4;
        let mut counted = Counted { copies, of: vec![0; table.value.len() * copies.len()] };
        for (cell, kind) in cells {
            counted.of[cell * copies.len() + kind as usize] = 1;
        }
        table.fill(&mut counted, |_, _| i64::MAX);
        table
    }

    /// Cells that hold one part, and which.
    fn of_parts<'k>(grid: &'g Grid, kinds: impl Iterator<Item = (&'k Kind, &'k i64)>) -> (Self, BTreeMap<usize, u32>) {
        let (nx, ny) = (grid.xs.len(), grid.ys.len());
        let mut table = Self { grid, value: vec![0; nx * ny], best: vec![Best::Nothing; nx * ny], looked: 0 };
        let mut cells = BTreeMap::new();
        for (kind, worth) in kinds {
            for lying in &kind.lying {
                let (i, j) = (grid.xs.partition_point(|p| *p < lying.w), grid.ys.partition_point(|p| *p < lying.h));
                let cell = i * ny + j;
                if i < nx && j < ny && *worth > table.value[cell] {
                    table.value[cell] = *worth;
                    table.best[cell] = Best::One(*lying);
                    cells.insert(cell, lying.kind);
                }
            }
        }
        (table, cells)
    }

    fn fill(&mut self, copies: &mut impl Copies, cap: impl Fn(i64, i64) -> i64) {
        let Self { grid, value, best, looked } = self;
        let (nx, ny) = (grid.xs.len(), grid.ys.len());
        // The columns once more, each in one piece, and where the values along each line rise. Some rows at a time, so
        // that a column is read while it is near.
        let mut columns = vec![0_i64; nx * ny];
        let mut column_rises: Vec<Vec<u32>> = vec![Vec::new(); ny];
        let mut row_rises: Vec<Vec<u32>> = vec![Vec::new(); nx];
        for first in (1..nx).step_by(ROWS_AT_ONCE) {
            for j in 1..ny {
                for i in first..nx.min(first + ROWS_AT_ONCE) {
                    let at = i * ny + j;
                    let (mut most, mut how, mut from) = (value[at], best[at], None);
                    // What a smaller rectangle holds this one holds too.
                    for (smaller, as_it) in [(at - ny, Best::Narrower), (at - 1, Best::Lower)] {
                        if value[smaller] > most {
                            (most, how, from) = (value[smaller], as_it, Some((smaller, None)));
                        }
                    }
                    let line = Line { values: &columns[j * nx..(j + 1) * nx], rises: &column_rises[j], cells: (j, ny) };
                    let (points, down) = ((grid.xs.as_slice(), grid.xs[i] / 2), &grid.down_x[i * nx..]);
                    if let Some((sum, k, rest)) = line.best_cut(points, down, most, copies, looked) {
                        (most, how, from) = (sum, Best::AtX(k), Some((line.cell(k), Some(line.cell(rest)))));
                    }
                    let line = Line { values: &value[i * ny..at], rises: &row_rises[i], cells: (i * ny, 1) };
                    let (points, down) = ((grid.ys.as_slice(), grid.ys[j] / 2), &grid.down_y[j * ny..]);
                    if let Some((sum, k, rest)) = line.best_cut(points, down, most, copies, looked) {
                        (most, how, from) = (sum, Best::AtY(k), Some((line.cell(k), Some(line.cell(rest)))));
                    }
                    if let Some((one, other)) = from {
                        copies.keep(at, one, other);
                    }
                    let worth = most.min(cap(grid.xs[i], grid.ys[j]));
                    value[at] = worth;
                    best[at] = how;
                    columns[j * nx + i] = worth;
                    if worth > columns[j * nx + i - 1] {
                        column_rises[j].push(i as u32);
                    }
                    if worth > value[at - 1] {
                        row_rises[i].push(j as u32);
                    }
                }
            }
        }
    }

    /// What this run of the programme cost against the steps of a search.
    pub(crate) fn steps(&self) -> u64 {
        self.looked / 8 + self.value.len() as u64 / 4 + 1
    }

    pub(crate) fn at(&self, i: usize, j: usize) -> i64 {
        self.value[i * self.grid.ys.len() + j]
    }

    pub(crate) fn of_sheet(&self, w: i64, h: i64) -> i64 {
        self.at(self.grid.at_x(w), self.grid.at_y(h))
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

#[cfg(test)]
#[path = "table_tests.rs"]
mod tests;
