//! Order of work and cost: tasks, what each waits for, when it can be done by working hours and days, and what it comes to.
//!
//! ```text
//!  mill   ▓▓▓▓
//!         └─ acclimate ░░░░░░░░░░ (no hands, runs through nights and weekends)
//!                                 ▓▓ rip
//!                                  └ ▓ glue ░░░ ▓ sand ...
//! ```
//!
//! Hands work only in working hours; glue, finish and wood take their time by the clock.

mod calendar;
mod clock;
mod cost;
mod network;

pub use calendar::{
    DoneTask, FigureBasis, OnCriticalChain, WorkCalendar, WorkCalendarInput, WorkDay, WorkTask, WorkWeek, work_calendar,
};
pub use cost::{CostKind, CostLine, CostLineResult, CostRates, CostSubtotal, JobCost, JobCostInput, job_cost};

/// Registry rows of this module.
#[cfg(feature = "json")]
pub(crate) const CALCULATIONS: &[crate::json::Calculation] = &[calendar::WORK_CALENDAR, cost::JOB_COST];
