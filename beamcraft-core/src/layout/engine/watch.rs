//! Steps spent, steps left, and the caller who may want to stop.

use core::ops::ControlFlow;

/// How far a search has come.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LayoutProgress {
    /// Steps spent so far.
    pub steps: u64,
    /// Steps that may be spent.
    pub budget: u64,
    /// Best value found so far in the unit of the objective; none before the first layout.
    pub value: Option<f64>,
    /// Proven bound so far in the unit of the objective; none before the first one.
    pub bound: Option<f64>,
}

/// What a caller hands in to follow a search and to stop it.
pub type Watcher<'a> = &'a mut dyn FnMut(&LayoutProgress) -> ControlFlow<()>;

/// Steps between two reports.
const REPORT: u64 = 200_000;

/// The counter that every search asks whether it may go on.
pub(crate) struct Watch<'a> {
    budget: u64,
    used: u64,
    next: u64,
    watcher: Option<Watcher<'a>>,
    stopped: bool,
    scale: f64,
    value: Option<i64>,
    bound: Option<i64>,
}

impl<'a> Watch<'a> {
    /// `scale`: the unit of the objective over the whole number inside.
    pub(crate) fn new(budget: u64, scale: f64, watcher: Option<Watcher<'a>>) -> Self {
        Self { budget, used: 0, next: 0, watcher, stopped: false, scale, value: None, bound: None }
    }

    /// Spends steps; false when the search must end.
    pub(crate) fn spend(&mut self, steps: u64) -> bool {
        self.used = self.used.saturating_add(steps);
        if self.used >= self.next && !self.stopped {
            self.report();
        }
        !self.stopped && self.used < self.budget
    }

    fn report(&mut self) {
        self.next = self.used.saturating_add(REPORT);
        let scale = self.scale;
        let report = LayoutProgress {
            steps: self.used,
            budget: self.budget,
            value: self.value.map(|v| v as f64 * scale),
            bound: self.bound.map(|v| v as f64 * scale),
        };
        if let Some(watcher) = &mut self.watcher
            && watcher(&report).is_break()
        {
            self.stopped = true;
        }
    }

    pub(crate) fn note_value(&mut self, value: i64) {
        self.value = Some(value);
    }

    pub(crate) fn note_bound(&mut self, bound: i64) {
        self.bound = Some(bound);
    }

    pub(crate) fn set_scale(&mut self, scale: f64) {
        self.scale = scale;
    }

    /// Whether steps are left and nobody has said stop.
    pub(crate) fn open(&self) -> bool {
        !self.stopped && self.used < self.budget
    }

    pub(crate) fn used(&self) -> u64 {
        self.used
    }

    pub(crate) fn left(&self) -> u64 {
        self.budget.saturating_sub(self.used)
    }

    pub(crate) fn stopped(&self) -> bool {
        self.stopped
    }

    /// A last report, so that a caller sees the end.
    pub(crate) fn finish(&mut self) {
        if !self.stopped {
            self.report();
        }
    }
}
