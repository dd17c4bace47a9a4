//! What a sheet can hold at most beside and above a rectangle in its corner: strips along it, one after the other, each
//! of the value in the table over all cuts (K. V. Viswanathan, A. Bagchi 1993; recalled).
#![allow(clippy::indexing_slicing, reason = "tables of a dynamic programme; every index is made from their own sizes")]

use super::table::{Grid, ROWS_AT_ONCE, Table};

/// Values for every rectangle of the grid.
pub(crate) struct Outside {
    pub(crate) value: Vec<i64>,
    pub(crate) steps: u64,
}

/// For each point the first one that is no less than its sum with each other; the number of points where none is.
fn ups(points: &[i64]) -> Vec<u32> {
    let n = points.len();
    let mut up = vec![n as u32; n * n];
    for i in 0..n {
        let mut at = i;
        for k in 0..n {
            while at < n && points[at] < points[i] + points[k] {
                at += 1;
            }
            up[i * n + k] = at as u32;
        }
    }
    up
}

/// Where the values along a line rise, with them.
fn rises(values: impl Iterator<Item = i64>) -> Vec<(u32, i64)> {
    let mut last = 0;
    let pairs = values.enumerate().filter_map(|(k, value)| {
        let rises = value > last;
        last = value;
        rises.then_some((k as u32, value))
    });
    pairs.collect()
}

impl Outside {
    /// `table` over `grid`, for the sheet that ends at the points `top`.
    pub(crate) fn of(grid: &Grid, table: &Table<'_>, top: (usize, usize)) -> Self {
        let (nx, ny) = (grid.xs.len(), grid.ys.len());
        let (up_x, up_y) = (ups(&grid.xs), ups(&grid.ys));
        let columns: Vec<_> = (0..ny).map(|j| rises((0..nx).map(|i| table.at(i, j)))).collect();
        let rows: Vec<_> = (0..nx).map(|i| rises((0..ny).map(|j| table.at(i, j)))).collect();
        let (mut value, mut by_columns) = (vec![0_i64; nx * ny], vec![0_i64; nx * ny]);
        let mut looked = 0;
        let mut best = |rises: &[(u32, i64)], beyond: &[i64], up: &[u32], points: &[i64], room: i64| {
            let fitting = &rises[..rises.partition_point(|(k, _)| points[*k as usize] <= room)];
            looked += fitting.len() as u64;
            fitting.iter().map(|(k, strip)| strip + beyond[up[*k as usize] as usize]).max().unwrap_or(0)
        };
        let mut end = top.0 + 1;
        while end > 0 {
            let first = end.saturating_sub(ROWS_AT_ONCE);
            for j in (0..=top.1).rev() {
                for i in (first..end).rev() {
                    let beyond = &by_columns[j * nx..(j + 1) * nx];
                    let beside = best(&columns[j], beyond, &up_x[i * nx..], &grid.xs, grid.xs[top.0] - grid.xs[i]);
                    let beyond = &value[i * ny..(i + 1) * ny];
                    let above = best(&rows[i], beyond, &up_y[j * ny..], &grid.ys, grid.ys[top.1] - grid.ys[j]);
                    // Or nothing lies in a narrow strip, so that what comes next is longer.
                    let wider = if i < top.0 { by_columns[j * nx + i + 1] } else { 0 };
                    let higher = if j < top.1 { value[i * ny + j + 1] } else { 0 };
                    let most = beside.max(above).max(wider).max(higher);
                    value[i * ny + j] = most;
                    by_columns[j * nx + i] = most;
                }
            }
            end = first;
        }
        Self { steps: looked / 8 + value.len() as u64 / 4, value }
    }
}
