use super::*;
use proptest::prelude::*;

fn task(id: &str, work_h: f64, wait_h: f64, after: &[&str]) -> WorkTask {
    WorkTask {
        id: id.to_owned(),
        name: String::new(),
        work_h,
        wait_h,
        makers: 1,
        after: after.iter().map(|id| (*id).to_owned()).collect(),
        basis: FigureBasis::Own,
        reason: String::new(),
    }
}

/// Around the clock, so that hours add up by hand.
fn endless(tasks: Vec<WorkTask>) -> WorkCalendarInput {
    use WorkDay::{Friday, Monday, Saturday, Sunday, Thursday, Tuesday, Wednesday};
    let week = WorkWeek {
        start_date: "2026-11-25".to_owned(),
        opens_h: 0.0,
        hours_a_day_h: 24.0,
        work_days: vec![Monday, Tuesday, Wednesday, Thursday, Friday, Saturday, Sunday],
        days_off: vec![],
        makers: None,
    };
    WorkCalendarInput { week, tasks }
}

fn shop(tasks: Vec<WorkTask>) -> WorkCalendarInput {
    use WorkDay::{Friday, Monday, Thursday, Tuesday, Wednesday};
    let work_days = vec![Monday, Tuesday, Wednesday, Thursday, Friday];
    with(endless(tasks), |week| *week = WorkWeek { opens_h: 8.0, hours_a_day_h: 8.0, work_days, ..week.clone() })
}

/// The same tasks in another week.
fn with(mut input: WorkCalendarInput, change: impl FnOnce(&mut WorkWeek)) -> WorkCalendarInput {
    change(&mut input.week);
    input
}

fn shared_by(makers: u32, tasks: Vec<WorkTask>) -> WorkCalendarInput {
    with(endless(tasks), |week| week.makers = Some(makers))
}

#[test]
fn the_longer_of_two_ways_is_critical() {
    let tasks = vec![
        task("rip", 2.0, 0.0, &[]),
        task("glue", 1.0, 24.0, &["rip"]),
        task("cleat", 3.0, 0.0, &["rip"]),
        task("hang", 1.0, 0.0, &["glue", "cleat"]),
    ];
    let found = work_calendar(&endless(tasks)).unwrap();
    assert_eq!(found.critical_chain, ["rip", "glue", "hang"]);
    assert_eq!(found.done_h, 28.0);
    let floats: Vec<_> = found.tasks.iter().map(|task| task.float_h).collect();
    assert_eq!(floats, [0.0, 0.0, 22.0, 0.0]);
}

#[test]
fn a_wait_over_the_weekend_costs_no_working_hours() {
    // Friday 27 November, one hour to closing.
    let tasks = vec![task("glue", 8.0, 24.0, &[]), task("sand", 1.0, 0.0, &["glue"])];
    let found = work_calendar(&with(shop(tasks), |week| week.start_date = "2026-11-27".to_owned())).unwrap();
    assert_eq!(found.tasks[0].ready, "2026-11-28T16:00");
    assert_eq!((found.tasks[1].start.as_str(), found.done.as_str()), ("2026-11-30T08:00", "2026-11-30T09:00"));
    assert_eq!(found.tasks[0].float_h, 0.0);
}

#[test]
fn one_maker_does_one_thing_after_the_other() {
    let tasks = vec![task("a", 3.0, 0.0, &[]), task("b", 2.0, 10.0, &[]), task("c", 1.0, 0.0, &["a", "b"])];
    let both = work_calendar(&endless(tasks.clone())).unwrap();
    assert_eq!(both.done_h, 13.0);
    // The long wait first: b from 0 to 2, a from 2 to 5, c when the wait is over.
    let alone = work_calendar(&shared_by(1, tasks)).unwrap();
    assert_eq!(alone.tasks.iter().map(|task| task.start_h).collect::<Vec<_>>(), [2.0, 0.0, 12.0]);
    assert_eq!(alone.critical_chain, ["b", "c"]);
}

#[test]
fn the_maker_who_is_busy_is_on_the_chain() {
    let tasks = vec![task("a", 5.0, 0.0, &[]), task("b", 4.0, 0.0, &[])];
    let found = work_calendar(&shared_by(1, tasks)).unwrap();
    assert_eq!((found.done_h, found.critical_chain), (9.0, vec!["a".to_owned(), "b".to_owned()]));
}

#[test]
fn a_lift_waits_for_two() {
    let mut hang = task("hang", 1.0, 0.0, &[]);
    hang.makers = 2;
    let tasks = vec![hang.clone(), task("a", 2.0, 0.0, &[])];
    let found = work_calendar(&shared_by(2, tasks)).unwrap();
    assert_eq!((found.done_h, found.work_h), (3.0, 4.0));
    let fault = work_calendar(&shared_by(1, vec![hang])).expect_err("one is not two");
    assert_eq!((fault.code(), fault.field()), (ErrorCode::Inconsistent, "tasks[0].makers"));
}

#[test]
fn what_is_wrong_is_named_with_its_place() {
    let refused = |input| work_calendar(&input).expect_err("refused");
    let fault = refused(endless(vec![task("a", 1.0, 0.0, &["glew"]), task("glue", 1.0, 0.0, &[])]));
    assert_eq!((fault.code(), fault.field()), (ErrorCode::UnknownName, "tasks[0].after[0]"));
    assert!(fault.to_string().contains("did you mean glue?"), "{fault}");
    let fault = refused(endless(vec![task("a", 1.0, 0.0, &[]), task("a", 1.0, 0.0, &[])]));
    assert_eq!((fault.code(), fault.field()), (ErrorCode::DuplicateField, "tasks[1].id"));
    let fault = refused(endless(vec![task("a", 1.0, 0.0, &["b"]), task("b", 1.0, 0.0, &["a"])]));
    assert_eq!(fault.code(), ErrorCode::Inconsistent);
    assert!(fault.to_string().contains("a, b"), "{fault}");
    let fault = refused(endless(vec![]));
    assert_eq!(fault.field(), "tasks");
    let wrong = with(endless(vec![task("a", -1.0, 0.0, &[])]), |week| {
        week.start_date = "25.11.2026".to_owned();
        week.days_off = vec!["2026-13-01".to_owned()];
    });
    let fault = refused(wrong);
    let paths: Vec<_> = fault.details().iter().map(|detail| detail.path.as_str()).collect();
    assert_eq!(paths, ["week.start_date", "week.days_off[0]", "tasks[0].work_h"]);
    let one = || shop(vec![task("a", 1.0, 0.0, &[])]);
    let huge = with(one(), |week| week.opens_h = 1e300);
    assert_eq!(refused(huge).field(), "week.opens_h");
    let late = with(one(), |week| (week.opens_h, week.hours_a_day_h) = (16.0, 9.0));
    assert_eq!(refused(late).field(), "week.hours_a_day_h");
    assert_eq!(refused(with(one(), |week| week.work_days.clear())).field(), "week.work_days");
    let long = shop((0..99).map(|k| task(&format!("t{k}"), 1_000.0, 0.0, &[])).collect());
    let slow = with(long, |week| (week.hours_a_day_h, week.makers) = (0.1, Some(1)));
    assert_eq!(refused(slow).code(), ErrorCode::NotSupported);
}

/// Tasks that wait for any of those before them.
fn networks() -> impl Strategy<Value = Vec<WorkTask>> {
    prop::collection::vec((0..40_u32, 0..60_u32, prop::collection::vec(any::<prop::sample::Index>(), 0..3)), 1..12)
        .prop_map(|rows| {
            let tasks = rows.into_iter().enumerate().map(|(k, (work, wait, before))| {
                let after: Vec<_> =
                    before.iter().filter(|_| k > 0).map(|index| format!("t{}", index.index(k.max(1)))).collect();
                let after: Vec<_> = after.iter().map(String::as_str).collect();
                task(&format!("t{k}"), f64::from(work) / 4.0, f64::from(wait), &after)
            });
            tasks.collect()
        })
}

proptest! {
    #[test]
    fn nothing_begins_before_what_it_waits_for(tasks in networks(), makers in prop::option::of(1..3_u32)) {
        let input = with(shop(tasks), |week| week.makers = makers);
        let found = work_calendar(&input).unwrap();
        for (task, done) in input.tasks.iter().zip(&found.tasks) {
            for before in &task.after {
                let before = found.tasks.iter().find(|other| other.id == *before).unwrap();
                prop_assert!(done.start_h >= before.ready_h);
            }
            prop_assert!(done.float_h >= 0.0 && done.ready_h <= found.done_h);
        }
    }

    #[test]
    fn no_more_people_work_than_there_are(tasks in networks(), makers in 1..3_u32) {
        let found = work_calendar(&shared_by(makers, tasks)).unwrap();
        for at in found.tasks.iter().map(|task| task.start_h) {
            let busy = found.tasks.iter().filter(|task| task.start_h <= at && at < task.end_h).count();
            prop_assert!(busy <= makers as usize, "{busy} at {at}");
        }
    }

    #[test]
    fn without_nights_the_end_is_the_longest_way(tasks in networks()) {
        // Independent: the longest path, by recursion over the names.
        fn ready(k: usize, tasks: &[WorkTask]) -> f64 {
            let before = tasks[k].after.iter().map(|id| ready(id[1..].parse().unwrap(), tasks)).fold(0.0, f64::max);
            before + tasks[k].work_h + tasks[k].wait_h
        }
        let longest = (0..tasks.len()).map(|k| ready(k, &tasks)).fold(0.0, f64::max);
        let found = work_calendar(&endless(tasks)).unwrap();
        prop_assert!((found.done_h - longest).abs() < 1e-9);
    }

    #[test]
    fn a_slip_within_the_float_does_not_move_the_end(tasks in networks(), at: prop::sample::Index) {
        let found = work_calendar(&endless(tasks.clone())).unwrap();
        let k = at.index(tasks.len());
        let mut slipped = tasks;
        // Around the clock a slip is work that takes longer.
        slipped[k].work_h += found.tasks[k].float_h;
        prop_assert!((work_calendar(&endless(slipped.clone())).unwrap().done_h - found.done_h).abs() < 1e-9);
        slipped[k].work_h += 1.0;
        prop_assert!(work_calendar(&endless(slipped)).unwrap().done_h > found.done_h + 0.5);
    }

    #[test]
    fn any_numbers_give_a_calendar_or_an_error(work_h: f64, wait_h: f64, opens_h: f64, hours in 0.0..24.0_f64, text in ".{0,12}") {
        let tasks = vec![task("a", work_h, wait_h, &[]), task(&text, 1.0, 2.0, &["a"])];
        let _ = work_calendar(&with(shop(tasks.clone()), |week| (week.opens_h, week.hours_a_day_h) = (opens_h, hours)));
        let _ = work_calendar(&with(shop(tasks), |week| week.start_date = text));
    }
}
