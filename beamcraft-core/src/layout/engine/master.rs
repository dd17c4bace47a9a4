//! The linear programme over patterns, one column at a time (revised simplex with an explicit inverse).
//!
//! ```text
//! min Σ cost_p x_p    Σ_p a_jp x_p ≥ demand_j     Σ_{p of stock i} x_p ≤ high_i or ≥ low_i     x ≥ 0
//! ```
//!
//! Nothing here is trusted for a proof: bounds are computed from the prices in whole numbers by the caller.
#![allow(clippy::indexing_slicing, reason = "dense linear algebra on tables of this module's own sizes")]

/// Which way a row is bounded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Sense {
    AtLeast,
    AtMost,
}

/// A column that can enter.
#[derive(Clone, Debug)]
pub(crate) struct Column {
    pub(crate) cost: f64,
    pub(crate) rows: Vec<(u32, f64)>,
    /// Shut columns never enter, and leave the basis as fast as they can.
    pub(crate) shut: bool,
}

/// What stands in the basis.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Basic {
    Column(usize),
    /// Surplus or slack of a row.
    Slack(usize),
    /// Shortage of a row, at a high price.
    Short(usize),
    /// What is missing of a column that was taken in advance.
    Owed(usize),
}

#[derive(Clone, Debug)]
pub(crate) struct Master {
    pub(crate) rows: usize,
    senses: Vec<Sense>,
    rhs: Vec<f64>,
    inverse: Vec<f64>,
    pub(crate) basis: Vec<Basic>,
    pub(crate) x: Vec<f64>,
    pub(crate) prices: Vec<f64>,
    pub(crate) columns: Vec<Column>,
    high: f64,
    pub(crate) pivots: u64,
}

const SMALL: f64 = 1e-9;

impl Master {
    pub(crate) fn new(senses: Vec<Sense>, rhs: &[f64], high: f64) -> Self {
        let rows = senses.len();
        let mut inverse = vec![0.0; rows * rows];
        for k in 0..rows {
            inverse[k * rows + k] = 1.0;
        }
        let basis: Vec<_> = senses
            .iter()
            .enumerate()
            .map(|(k, sense)| if *sense == Sense::AtLeast { Basic::Short(k) } else { Basic::Slack(k) })
            .collect();
        // Slightly different demands keep the simplex from standing still.
        let rhs: Vec<_> =
            rhs.iter().enumerate().map(|(k, v)| v + 1e-7 * (1.0 + ((k * 7919) % 101) as f64 / 101.0)).collect();
        let mut master = Self {
            rows,
            senses,
            x: rhs.clone(),
            rhs,
            inverse,
            basis,
            prices: vec![0.0; rows],
            columns: Vec::new(),
            high,
            pivots: 0,
        };
        master.reprice();
        master
    }

    fn basic_cost(&self, basic: Basic) -> f64 {
        match basic {
            Basic::Column(k) if self.columns[k].shut => self.high,
            Basic::Column(k) => self.columns[k].cost,
            Basic::Slack(_) => 0.0,
            Basic::Short(_) | Basic::Owed(_) => self.high,
        }
    }

    /// Prices from the basis afresh.
    pub(crate) fn reprice(&mut self) {
        let n = self.rows;
        self.prices.fill(0.0);
        for k in 0..n {
            let cost = self.basic_cost(self.basis[k]);
            if cost != 0.0 {
                let row = &self.inverse[k * n..(k + 1) * n];
                for (price, v) in self.prices.iter_mut().zip(row) {
                    *price += cost * v;
                }
            }
        }
    }

    pub(crate) fn add(&mut self, column: Column) -> usize {
        self.columns.push(column);
        self.columns.len() - 1
    }

    pub(crate) fn reduced_cost(&self, column: &Column) -> f64 {
        column.cost - column.rows.iter().map(|(row, a)| self.prices[*row as usize] * a).sum::<f64>()
    }

    /// Brings one thing into the basis.
    fn enter(&mut self, entering: Basic, cost: f64, rows: &[(u32, f64)]) -> bool {
        let n = self.rows;
        let mut alpha = vec![0.0; n];
        for &(row, a) in rows {
            let row = row as usize;
            for (k, value) in alpha.iter_mut().enumerate() {
                *value += self.inverse[k * n + row] * a;
            }
        }
        let (mut leave, mut least, mut pivot) = (usize::MAX, f64::INFINITY, 0.0);
        for (k, (&slope, x)) in alpha.iter().zip(&self.x).enumerate() {
            if slope > SMALL {
                let ratio = x.max(0.0) / slope;
                if ratio < least - 1e-12 || (ratio < least + 1e-12 && slope > pivot) {
                    (leave, least, pivot) = (k, ratio, slope);
                }
            }
        }
        if leave == usize::MAX || pivot < 1e-8 {
            return false;
        }
        self.pivots += 1;
        let reduced = cost - rows.iter().map(|(row, a)| self.prices[*row as usize] * a).sum::<f64>();
        for (k, (slope, x)) in alpha.iter().zip(&mut self.x).enumerate() {
            if k != leave {
                *x = (*x - least * slope).max(0.0);
            }
        }
        self.x[leave] = least;
        let (before, rest) = self.inverse.split_at_mut(leave * n);
        let (pivot_row, after) = rest.split_at_mut(n);
        for v in pivot_row.iter_mut() {
            *v /= pivot;
        }
        let clear = |chunk: &mut [f64], factor: f64| {
            if factor.abs() > 1e-14 {
                for (v, p) in chunk.iter_mut().zip(pivot_row.iter()) {
                    *v -= factor * p;
                }
            }
        };
        for (k, chunk) in before.chunks_exact_mut(n).enumerate() {
            clear(chunk, alpha[k]);
        }
        for (k, chunk) in after.chunks_exact_mut(n).enumerate() {
            clear(chunk, alpha[leave + 1 + k]);
        }
        for (price, p) in self.prices.iter_mut().zip(pivot_row.iter()) {
            *price += reduced * p;
        }
        self.basis[leave] = entering;
        if self.pivots.is_multiple_of(128) {
            self.refresh();
        }
        true
    }

    /// Amounts and prices afresh from the inverse.
    fn refresh(&mut self) {
        let n = self.rows;
        for k in 0..n {
            let row = &self.inverse[k * n..(k + 1) * n];
            self.x[k] = row.iter().zip(&self.rhs).map(|(a, b)| a * b).sum::<f64>().max(0.0);
        }
        self.reprice();
    }

    /// Lets slacks enter while that pays, then the best of the columns that are there; true when nothing pays any more.
    pub(crate) fn settle(&mut self, most_pivots: u64) -> bool {
        let until = self.pivots + most_pivots;
        let scale = self.columns.iter().map(|c| c.cost).fold(1.0, f64::max);
        let eps = 1e-9 * scale;
        while self.pivots < until {
            let (mut best, mut entering) = (-eps, None);
            for row in 0..self.rows {
                // A surplus has −1 in its row, a slack +1.
                let reduced = match self.senses[row] {
                    Sense::AtLeast => self.prices[row],
                    Sense::AtMost => -self.prices[row],
                };
                if reduced < best && !self.basis.contains(&Basic::Slack(row)) {
                    (best, entering) = (reduced, Some(Basic::Slack(row)));
                }
            }
            for (k, column) in self.columns.iter().enumerate() {
                if column.shut {
                    continue;
                }
                let reduced = self.reduced_cost(column);
                if reduced < best {
                    (best, entering) = (reduced, Some(Basic::Column(k)));
                }
            }
            let moved = match entering {
                None => return true,
                Some(Basic::Slack(row)) => {
                    let sign = if self.senses[row] == Sense::AtLeast { -1.0 } else { 1.0 };
                    self.enter(Basic::Slack(row), 0.0, &[(row as u32, sign)])
                }
                Some(basic) => {
                    let Basic::Column(k) = basic else { return true };
                    let (cost, rows) = (self.columns[k].cost, core::mem::take(&mut self.columns[k].rows));
                    let moved = self.enter(basic, cost, &rows);
                    self.columns[k].rows = rows;
                    moved
                }
            };
            if !moved {
                return true;
            }
        }
        false
    }

    /// Value of the programme, shortages included at their high price.
    pub(crate) fn value(&self) -> f64 {
        self.basis.iter().zip(&self.x).map(|(basic, x)| self.basic_cost(*basic) * x).sum()
    }

    /// Sum of what is missing.
    pub(crate) fn shortage(&self) -> f64 {
        let missing = self.basis.iter().zip(&self.x).map(|(basic, x)| match basic {
            Basic::Short(_) | Basic::Owed(_) => *x,
            Basic::Column(k) if self.columns[*k].shut => *x,
            _ => 0.0,
        });
        missing.sum()
    }

    /// Takes `times` of a column for good: the demands fall, and what the programme had less of it is owed.
    pub(crate) fn take(&mut self, column: usize, times: f64) {
        let n = self.rows;
        for &(row, a) in &self.columns[column].rows {
            self.rhs[row as usize] -= a * times;
        }
        let Some(place) = self.basis.iter().position(|basic| *basic == Basic::Column(column)) else {
            return;
        };
        self.x[place] -= times;
        if self.x[place] < 0.0 {
            self.x[place] = -self.x[place];
            self.basis[place] = Basic::Owed(column);
            for v in &mut self.inverse[place * n..(place + 1) * n] {
                *v = -*v;
            }
        }
    }
}
