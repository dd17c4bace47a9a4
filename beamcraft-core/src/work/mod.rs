//! Order of work: tasks, what each waits for, and when it can be done by working hours and days.
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
mod network;

pub use calendar::{
    DoneTask, FigureBasis, OnCriticalChain, WorkCalendar, WorkCalendarInput, WorkDay, WorkTask, work_calendar,
};

/// Registry rows of this module.
#[cfg(feature = "json")]
pub(crate) const CALCULATIONS: &[crate::json::Calculation] = &[calendar::WORK_CALENDAR];
