//! Earliest dates, float and critical chain of a list of tasks.

use jiff::civil::{Date, Weekday};

use super::clock::{Clock, Minute};
use super::network::Network;
use crate::error::{Allowed, Detail, Error, ErrorCode, Fault};
use crate::limits::{faults_at, limited};

/// A day of the week.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum WorkDay {
    /// Monday.
    Monday,
    /// Tuesday.
    Tuesday,
    /// Wednesday.
    Wednesday,
    /// Thursday.
    Thursday,
    /// Friday.
    Friday,
    /// Saturday.
    Saturday,
    /// Sunday.
    Sunday,
}

impl From<WorkDay> for Weekday {
    fn from(day: WorkDay) -> Self {
        match day {
            WorkDay::Monday => Self::Monday,
            WorkDay::Tuesday => Self::Tuesday,
            WorkDay::Wednesday => Self::Wednesday,
            WorkDay::Thursday => Self::Thursday,
            WorkDay::Friday => Self::Friday,
            WorkDay::Saturday => Self::Saturday,
            WorkDay::Sunday => Self::Sunday,
        }
    }
}

/// Whose figure a duration is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum FigureBasis {
    /// The user's own.
    #[default]
    Own,
    /// A default that stands in until the user gives one; not measured.
    Assumed,
    /// Published, with the source beside it.
    Published,
}

/// Something to do, and what it waits for.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<WorkTask>))]
pub struct WorkTask {
    /// Short id, used by the tasks that wait for it.
    pub id: String,
    /// What is done, in words.
    #[cfg_attr(feature = "json", serde(default))]
    pub name: String,
    /// Hands-on hours, h; only in working hours. 0 for a wait or a milestone.
    #[cfg_attr(feature = "json", serde(default))]
    pub work_h: f64,
    /// Hours by the clock before anything that waits for it may begin, h: glue sets, finish dries, wood acclimates.
    #[cfg_attr(feature = "json", serde(default))]
    pub wait_h: f64,
    /// People it takes at once.
    #[cfg_attr(feature = "json", serde(default = "one_maker"))]
    pub makers: u32,
    /// Ids of the tasks it waits for.
    #[cfg_attr(feature = "json", serde(default))]
    pub after: Vec<String>,
    /// Whose figures the hours are.
    #[cfg_attr(feature = "json", serde(default))]
    pub basis: FigureBasis,
    /// Why it takes that long, or where the figure comes from.
    #[cfg_attr(feature = "json", serde(default))]
    pub reason: String,
}

limited!(WorkTask { work_h: WORK_HOURS, wait_h: WAIT_HOURS, makers: MAKERS });

#[cfg(feature = "json")]
fn one_maker() -> u32 {
    1
}

/// The working week.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<WorkWeek>))]
pub struct WorkWeek {
    /// First day, as 2026-11-25.
    pub start_date: String,
    /// Hour at which work begins, from midnight, h.
    #[cfg_attr(feature = "json", serde(default = "eight"))]
    pub opens_h: f64,
    /// Working hours of a day, h.
    #[cfg_attr(feature = "json", serde(default = "eight"))]
    pub hours_a_day_h: f64,
    /// Days of the week on which work is done.
    #[cfg_attr(feature = "json", serde(default = "monday_to_friday"))]
    pub work_days: Vec<WorkDay>,
    /// Dates on which it is not, as 2026-12-25.
    #[cfg_attr(feature = "json", serde(default))]
    pub days_off: Vec<String>,
    /// People who share the work; without it as many as the tasks could use.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub makers: Option<u32>,
}

limited!(WorkWeek { opens_h: DAY_HOURS, hours_a_day_h: DAY_HOURS, makers: MAKERS });

#[cfg(feature = "json")]
fn eight() -> f64 {
    8.0
}

#[cfg(feature = "json")]
fn monday_to_friday() -> Vec<WorkDay> {
    vec![WorkDay::Monday, WorkDay::Tuesday, WorkDay::Wednesday, WorkDay::Thursday, WorkDay::Friday]
}

/// Tasks and the working week.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct WorkCalendarInput {
    /// When hands work, and how many.
    pub week: WorkWeek,
    /// The tasks; 1 to 1000.
    pub tasks: Vec<WorkTask>,
}

/// Whether a delay of the task delays the end.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum OnCriticalChain {
    /// On the chain that sets the end.
    Critical,
    /// Can wait a little.
    HasFloat,
}

/// A task on the calendar.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct DoneTask {
    /// Its id.
    pub id: String,
    /// What is done, in words.
    pub name: String,
    /// When hands begin, as 2026-11-25T08:00.
    pub start: String,
    /// When hands are done.
    pub end: String,
    /// When what waits for it may begin.
    pub ready: String,
    /// From midnight of the first day to its start, by the clock, h.
    pub start_h: f64,
    /// From midnight of the first day to its end, by the clock, h.
    pub end_h: f64,
    /// From midnight of the first day to when it is ready, by the clock, h.
    pub ready_h: f64,
    /// Working hours by which its start may slip without moving the end, as far as the tasks alone go, h.
    pub float_h: f64,
    /// Whether it is on the chain that sets the end.
    pub chain: OnCriticalChain,
    /// Whose figures its hours are.
    pub basis: FigureBasis,
}

/// The tasks on the calendar.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct WorkCalendar {
    /// The tasks in the order given.
    pub tasks: Vec<DoneTask>,
    /// First day, from whose midnight hours are counted.
    pub first_day: String,
    /// When everything is done, waits included, as 2026-11-25T16:00.
    pub done: String,
    /// From midnight of the first day to then, by the clock, h.
    pub done_h: f64,
    /// Hands-on hours of all people, h.
    pub work_h: f64,
    /// Ids on the chain that sets the end, first to last.
    pub critical_chain: Vec<String>,
    /// Number of tasks whose hours are assumed and should be replaced.
    pub assumed_count: u32,
}

const MOST_TASKS: usize = 1_000;
const MINUTES_AN_HOUR: f64 = 60.0;

/// When each task can be done at the earliest, what may slip, and which chain sets the end.
///
/// # Equation
/// ```text
/// start = max(ready of what it waits for), moved into working hours
/// end   = start + work, in working hours        ready = end + wait, by the clock
/// ```
/// Latest times run back from the end the same way; float is the working time between earliest and latest start. With a
/// number of people, tasks are taken as soon as the people they need are free, the one with the longest way to the end
/// first: a good order, not a proven best one. Hours are rounded up to whole minutes.
///
/// # Limits
/// A task that is begun is finished before the same people begin another. Floats leave the number of people out. Nothing is
/// planned further than a hundred years ahead. Clock changes in spring and autumn are left out.
///
/// # Errors
/// `out_of_range`, `not_finite`, `malformed` (dates), `duplicate_field` (ids), `unknown_name` (what a task waits for),
/// `inconsistent` (tasks in a ring, more people needed than there are), `not_supported` (beyond a hundred years); all
/// with their place.
///
/// # Source
/// Critical path method (Kelley and Walker 1959, recalled). Checked by `verification/calendar`.
///
/// # Examples
/// ```
/// use beamcraft_core::work::{work_calendar, FigureBasis, WorkCalendarInput, WorkDay, WorkTask, WorkWeek};
/// let task = |id: &str, work_h, wait_h, after: &[&str]| WorkTask {
///     id: id.into(), name: String::new(), work_h, wait_h, makers: 1,
///     after: after.iter().map(|id| id.to_string()).collect(), basis: FigureBasis::Own, reason: String::new(),
/// };
/// let week = WorkWeek {
///     start_date: "2026-11-25".into(), opens_h: 8.0, hours_a_day_h: 8.0,
///     work_days: vec![WorkDay::Wednesday, WorkDay::Thursday, WorkDay::Friday], days_off: vec![], makers: None,
/// };
/// let tasks = vec![task("glue", 2.0, 24.0, &[]), task("sand", 1.0, 0.0, &["glue"])];
/// let calendar = work_calendar(&WorkCalendarInput { week, tasks })?;
/// assert_eq!(calendar.done, "2026-11-26T11:00");
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn work_calendar(input: &WorkCalendarInput) -> Result<WorkCalendar, Error> {
    let clock = checked_clock(input)?;
    let names: Vec<_> = input.tasks.iter().map(|task| (task.id.as_str(), task.after.as_slice())).collect();
    let network = Network::new(&names)?;
    let job = Job { network, tasks: input.tasks.iter().map(Span::from).collect(), clock };
    job.calendar(input).ok_or_else(too_far)
}

/// The clock of an input without faults.
fn checked_clock(input: &WorkCalendarInput) -> Result<Clock, Error> {
    let mut faults = Vec::new();
    let clock = week_clock(&input.week, &mut faults);
    let count = input.tasks.len();
    if count == 0 || count > MOST_TASKS {
        let allowed = Allowed::Text("1 to 1000 tasks");
        faults.push(Fault::number(ErrorCode::OutOfRange, "tasks", count as f64, allowed, "").into());
    }
    for (k, task) in input.tasks.iter().enumerate().take(MOST_TASKS) {
        faults.extend(faults_at(&format!("tasks[{k}]"), task));
        if input.week.makers.is_some_and(|makers| task.makers > makers) {
            let allowed = Allowed::Text("no more people than week.makers");
            let fault = Fault::number(ErrorCode::Inconsistent, "makers", f64::from(task.makers), allowed, "get help");
            faults.push(Detail::from(fault).within(&format!("tasks[{k}]")));
        }
    }
    Error::unless_empty(faults)?;
    Ok(clock)
}

/// The clock of a week; what is wrong with it goes to `faults`.
fn week_clock(week: &WorkWeek, faults: &mut Vec<Detail>) -> Clock {
    faults.extend(faults_at("week", week));
    let mut refuse = |fault: Fault| faults.push(Detail::from(fault).within("week"));
    if week.work_days.is_empty() {
        let allowed = Allowed::Text("at least one day of the week");
        refuse(Fault::number(ErrorCode::OutOfRange, "work_days", 0.0, allowed, ""));
    }
    if week.opens_h + week.hours_a_day_h > 24.0 {
        let allowed = Allowed::Text("a day that closes by midnight: opens_h + hours_a_day_h up to 24 h");
        refuse(Fault::number(ErrorCode::Inconsistent, "hours_a_day_h", week.hours_a_day_h, allowed, ""));
    }
    let mut date = |path: &str, text: &str| {
        let date = shop_date(text);
        if date.is_none() {
            faults.push(no_date(path, text));
        }
        date.unwrap_or(Date::ZERO)
    };
    let first_day = date("week.start_date", &week.start_date);
    let days_off = week.days_off.iter().enumerate();
    let mut days_off: Vec<_> = days_off.map(|(k, text)| date(&format!("week.days_off[{k}]"), text)).collect();
    days_off.sort_unstable();
    let opens = whole_minutes(week.opens_h);
    // At least a minute a day, so that work gets done.
    let closes = opens + whole_minutes(week.hours_a_day_h).max(1);
    Clock {
        first_day,
        opens,
        closes,
        work_days: week.work_days.iter().map(|day| Weekday::from(*day)).collect(),
        days_off,
    }
}

/// A date that a shop may mean; the library reads more of them.
fn shop_date(text: &str) -> Option<Date> {
    text.trim().parse().ok().filter(|date: &Date| (1900..=2200).contains(&date.year()))
}

#[cold]
fn no_date(path: &str, text: &str) -> Detail {
    Detail {
        code: ErrorCode::Malformed,
        path: path.to_owned(),
        given: format!("\"{text}\""),
        allowed: "a date from 1900 to 2200 as year-month-day, such as 2026-11-25".to_owned(),
        cure: String::new(),
    }
}

#[cold]
fn too_far() -> Error {
    Error::one(Detail {
        code: ErrorCode::NotSupported,
        path: "tasks".to_owned(),
        given: "work that is not done a hundred years after the start".to_owned(),
        allowed: "work that ends within a hundred years".to_owned(),
        cure: "check hours, hours_a_day_h and days_off".to_owned(),
    })
}

/// Hours in whole minutes, rounded up; a hair over a minute is that minute.
fn whole_minutes(hours: f64) -> Minute {
    // Hours out of range are refused elsewhere, and must not overflow before.
    (hours * MINUTES_AN_HOUR - 1e-6).ceil().clamp(0.0, 1.0e9) as Minute
}

/// A task in minutes.
struct Span {
    work: Minute,
    wait: Minute,
    makers: usize,
}

impl From<&WorkTask> for Span {
    fn from(task: &WorkTask) -> Self {
        let makers = if task.work_h > 0.0 { task.makers as usize } else { 0 };
        Self { work: whole_minutes(task.work_h), wait: whole_minutes(task.wait_h), makers }
    }
}

/// A task's place on the calendar.
#[derive(Clone, Copy)]
struct Place {
    start: Minute,
    end: Minute,
    ready: Minute,
    /// The task that kept it from starting earlier.
    held_by: Option<usize>,
}

/// Tasks, what waits for what, and the clock.
struct Job {
    network: Network,
    tasks: Vec<Span>,
    clock: Clock,
}

impl Job {
    fn calendar(&self, input: &WorkCalendarInput) -> Option<WorkCalendar> {
        let after = self.network.after();
        let places = match input.week.makers {
            Some(makers) => self.shared_places(makers as usize, &after)?,
            None => self.earliest_places()?,
        };
        // Of equals the one that waits for the others.
        let last = *self.network.order.iter().max_by_key(|k| places.get(**k).map(|place| place.ready))?;
        let done = places.get(last)?.ready;
        let chain = chain_to(last, &places);
        let earliest = self.earliest_places()?;
        let alone = earliest.iter().map(|place| place.ready).max()?;
        let floats = self.floats(&earliest, alone, &after)?;

        let hours = |moment: Minute| moment as f64 / MINUTES_AN_HOUR;
        let text = |moment| self.clock.text(moment);
        let mut tasks = Vec::with_capacity(places.len());
        for (k, (task, (place, float))) in input.tasks.iter().zip(places.iter().zip(floats)).enumerate() {
            let on_chain = chain.contains(&k);
            tasks.push(DoneTask {
                id: task.id.clone(),
                name: task.name.clone(),
                start: text(place.start)?,
                end: text(place.end)?,
                ready: text(place.ready)?,
                start_h: hours(place.start),
                end_h: hours(place.end),
                ready_h: hours(place.ready),
                float_h: hours(float),
                chain: if on_chain { OnCriticalChain::Critical } else { OnCriticalChain::HasFloat },
                basis: task.basis,
            });
        }
        let assumed = input.tasks.iter().filter(|task| task.basis == FigureBasis::Assumed);
        Some(WorkCalendar {
            tasks,
            first_day: self.clock.first_day.to_string(),
            done: text(done)?,
            done_h: hours(done),
            work_h: input.tasks.iter().map(|task| task.work_h * f64::from(task.makers)).sum(),
            critical_chain: chain.iter().filter_map(|k| input.tasks.get(*k)).map(|task| task.id.clone()).collect(),
            assumed_count: assumed.count() as u32,
        })
    }

    /// When all that a task waits for is ready, and which of it is last.
    fn freed(&self, k: usize, places: &[Option<Place>]) -> Option<(Minute, Option<usize>)> {
        let mut freed = (self.clock.opens, None);
        for before in self.network.before.get(k)? {
            let ready = (*places.get(*before)?)?.ready;
            if freed.1.is_none() || ready > freed.0 {
                freed = (ready.max(freed.0), Some(*before));
            }
        }
        Some(freed)
    }

    fn place(&self, k: usize, from: Minute, held_by: Option<usize>) -> Option<Place> {
        let span = self.tasks.get(k)?;
        let (start, end) = self.clock.forward(from, span.work)?;
        Some(Place { start, end, ready: end + span.wait, held_by })
    }

    /// Every task as soon as what it waits for is ready.
    fn earliest_places(&self) -> Option<Vec<Place>> {
        let mut places = vec![None; self.tasks.len()];
        for k in &self.network.order {
            let (from, held_by) = self.freed(*k, &places)?;
            *places.get_mut(*k)? = Some(self.place(*k, from, held_by)?);
        }
        places.into_iter().collect()
    }

    /// Every task as soon as people are free for it, the one with the longest way to the end first.
    fn shared_places(&self, makers: usize, after: &[Vec<usize>]) -> Option<Vec<Place>> {
        let tails = self.tails(after)?;
        // When each maker is free, and after which task.
        let mut free: Vec<(Minute, Option<usize>)> = vec![(self.clock.opens, None); makers];
        let mut places = vec![None; self.tasks.len()];
        let mut left: Vec<usize> = self.network.order.clone();
        while !left.is_empty() {
            free.sort_unstable();
            // The first of equals keeps the order given.
            let mut best: Option<(Minute, Minute, usize, Place)> = None;
            for (at, k) in left.iter().enumerate() {
                let Some((from, held_by)) = self.freed(*k, &places) else { continue };
                let need = self.tasks.get(*k)?.makers;
                let hands = need.checked_sub(1).and_then(|last| free.get(last)).copied();
                let (from, held_by) = match hands {
                    Some((moment, task)) if moment > from => (moment, task.or(held_by)),
                    _ => (from, held_by),
                };
                let place = self.place(*k, from, held_by)?;
                let tail = *tails.get(*k)?;
                if best.as_ref().is_none_or(|(start, far, _, _)| (place.start, -tail) < (*start, -*far)) {
                    best = Some((place.start, tail, at, place));
                }
            }
            let (_, _, at, place) = best?;
            let k = left.remove(at);
            let need = self.tasks.get(k)?.makers;
            free.iter_mut().take(need).for_each(|maker| *maker = (place.end, Some(k)));
            *places.get_mut(k)? = Some(place);
        }
        places.into_iter().collect()
    }

    /// Work and waits from each task's start to the end, without nights.
    fn tails(&self, after: &[Vec<usize>]) -> Option<Vec<Minute>> {
        let mut tails = vec![0; self.tasks.len()];
        for k in self.network.order.iter().rev() {
            let behind = after.get(*k)?.iter().filter_map(|next| tails.get(*next)).max().copied().unwrap_or(0);
            let span = self.tasks.get(*k)?;
            *tails.get_mut(*k)? = span.work + span.wait + behind;
        }
        Some(tails)
    }

    /// Working minutes between earliest and latest start.
    fn floats(&self, earliest: &[Place], done: Minute, after: &[Vec<usize>]) -> Option<Vec<Minute>> {
        let mut latest = vec![done; self.tasks.len()];
        let mut floats = vec![0; self.tasks.len()];
        for k in self.network.order.iter().rev() {
            let span = self.tasks.get(*k)?;
            let needed = after.get(*k)?.iter().filter_map(|next| latest.get(*next)).min().copied().unwrap_or(done);
            let start = self.clock.backward(needed - span.wait, span.work)?;
            *latest.get_mut(*k)? = start;
            *floats.get_mut(*k)? = self.clock.between(earliest.get(*k)?.start, start)?;
        }
        Some(floats)
    }
}

/// The tasks that held one another up to `last`, first to last.
fn chain_to(last: usize, places: &[Place]) -> Vec<usize> {
    let mut chain = vec![last];
    let mut now = last;
    while let Some(before) = places.get(now).and_then(|place| place.held_by) {
        chain.push(before);
        now = before;
    }
    chain.reverse();
    chain
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const WORK_CALENDAR: crate::json::Calculation = crate::json::calculation!(
    work_calendar: WorkCalendarInput => WorkCalendar, Document,
    "When each task can be done at the earliest, what may slip, and which chain sets the end"
);

#[cfg(test)]
#[path = "calendar_tests.rs"]
mod tests;
