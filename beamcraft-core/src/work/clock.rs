//! Working hours on the calendar, as minutes from midnight of the first day.

use jiff::ToSpan;
use jiff::civil::{Date, Weekday};

/// Minutes from midnight of the first day.
pub(super) type Minute = i64;

const MINUTES_A_DAY: Minute = 24 * 60;

/// Nothing is planned further ahead: a hundred years.
const MOST_DAYS: i64 = 36_525;

/// When hands work.
pub(super) struct Clock {
    pub(super) first_day: Date,
    /// Minutes after midnight.
    pub(super) opens: Minute,
    /// Minutes after midnight.
    pub(super) closes: Minute,
    pub(super) work_days: Vec<Weekday>,
    /// Free days, sorted.
    pub(super) days_off: Vec<Date>,
}

impl Clock {
    /// The date of a day counted from the first; none beyond the hundred years.
    pub(super) fn date(&self, day: i64) -> Option<Date> {
        (day.abs() <= MOST_DAYS).then(|| self.first_day.checked_add(day.days()).ok()).flatten()
    }

    fn is_work_day(&self, day: i64) -> Option<bool> {
        let date = self.date(day)?;
        Some(self.work_days.contains(&date.weekday()) && self.days_off.binary_search(&date).is_err())
    }

    /// The working minutes of a day: opening and closing.
    const fn hours(&self, day: i64) -> (Minute, Minute) {
        (day * MINUTES_A_DAY + self.opens, day * MINUTES_A_DAY + self.closes)
    }

    /// The first moment from `from` on at which work can begin.
    pub(super) fn next_start(&self, from: Minute) -> Option<Minute> {
        let mut day = from.div_euclid(MINUTES_A_DAY);
        loop {
            let (opens, closes) = self.hours(day);
            if self.is_work_day(day)? && from < closes {
                return Some(from.max(opens));
            }
            day += 1;
        }
    }

    /// The last moment up to `until` at which work can end.
    fn last_end(&self, until: Minute) -> Option<Minute> {
        let mut day = until.div_euclid(MINUTES_A_DAY);
        loop {
            let (opens, closes) = self.hours(day);
            if self.is_work_day(day)? && until > opens {
                return Some(until.min(closes));
            }
            day -= 1;
        }
    }

    /// Begins as soon as it can: start and end of so many working minutes.
    pub(super) fn forward(&self, from: Minute, work: Minute) -> Option<(Minute, Minute)> {
        if work == 0 {
            return Some((from, from));
        }
        let start = self.next_start(from)?;
        let (mut now, mut left) = (start, work);
        loop {
            let (_, closes) = self.hours(now.div_euclid(MINUTES_A_DAY));
            let step = left.min(closes - now);
            (now, left) = (now + step, left - step);
            if left == 0 {
                return Some((start, now));
            }
            now = self.next_start(now)?;
        }
    }

    /// Ends as late as it may: the latest start of so many working minutes.
    pub(super) fn backward(&self, until: Minute, work: Minute) -> Option<Minute> {
        if work == 0 {
            return Some(until);
        }
        let (mut now, mut left) = (self.last_end(until)?, work);
        loop {
            // The last minute before `now` tells the day, since a day may close at midnight.
            let (opens, _) = self.hours((now - 1).div_euclid(MINUTES_A_DAY));
            let step = left.min(now - opens);
            (now, left) = (now - step, left - step);
            if left == 0 {
                return Some(now);
            }
            now = self.last_end(now)?;
        }
    }

    /// Working minutes between two moments.
    pub(super) fn between(&self, from: Minute, until: Minute) -> Option<Minute> {
        let days = from.div_euclid(MINUTES_A_DAY)..=until.div_euclid(MINUTES_A_DAY);
        let mut sum = 0;
        for day in days {
            let (opens, closes) = self.hours(day);
            if self.is_work_day(day)? {
                sum += (until.min(closes) - from.max(opens)).max(0);
            }
        }
        Some(sum)
    }

    /// A moment as ISO 8601 text to the minute.
    pub(super) fn text(&self, moment: Minute) -> Option<String> {
        let date = self.date(moment.div_euclid(MINUTES_A_DAY))?;
        let minute = moment.rem_euclid(MINUTES_A_DAY);
        Some(format!("{date}T{:02}:{:02}", minute / 60, minute % 60))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use jiff::civil::date;
    use proptest::prelude::*;

    /// Monday to Friday, eight to sixteen; the first day is a Wednesday.
    fn shop() -> Clock {
        use Weekday::{Friday, Monday, Thursday, Tuesday, Wednesday};
        Clock {
            first_day: date(2026, 11, 25),
            opens: 8 * 60,
            closes: 16 * 60,
            work_days: vec![Monday, Tuesday, Wednesday, Thursday, Friday],
            days_off: vec![date(2026, 11, 26)],
        }
    }

    fn texts(clock: &Clock, moments: (Minute, Minute)) -> (String, String) {
        (clock.text(moments.0).unwrap(), clock.text(moments.1).unwrap())
    }

    #[test]
    fn work_stops_at_closing_and_on_days_off() {
        let shop = shop();
        // Wednesday 15:00, three hours: one on Wednesday, Thursday is off, two on Friday.
        let (start, end) = texts(&shop, shop.forward(15 * 60, 180).unwrap());
        assert_eq!((start.as_str(), end.as_str()), ("2026-11-25T15:00", "2026-11-27T10:00"));
        // From Friday's closing on, the next hour is on Monday.
        let (start, _) = texts(&shop, shop.forward(2 * MINUTES_A_DAY + 16 * 60, 60).unwrap());
        assert_eq!(start, "2026-11-30T08:00");
    }

    #[test]
    fn nothing_is_planned_beyond_a_hundred_years() {
        assert_eq!(shop().forward(0, 60 * 8 * 366 * 100), None);
        let never = Clock { work_days: vec![], ..shop() };
        assert_eq!((never.next_start(0), never.last_end(0)), (None, None));
    }

    #[test]
    fn a_day_may_run_from_midnight_to_midnight() {
        let all = Clock {
            opens: 0,
            closes: MINUTES_A_DAY,
            work_days: Weekday::Monday.cycle_forward().take(7).collect(),
            days_off: vec![],
            ..shop()
        };
        assert_eq!(all.forward(100, 5_000), Some((100, 5_100)));
        assert_eq!(all.backward(5_100, 5_000), Some(100));
    }

    proptest! {
        #[test]
        fn back_and_forth_are_inverse_in_working_time(from in -5_000..40_000_i64, work in 1..5_000_i64) {
            let shop = shop();
            let (start, end) = shop.forward(from, work).unwrap();
            prop_assert!(start >= from);
            prop_assert_eq!(shop.between(start, end), Some(work));
            prop_assert_eq!(shop.backward(end, work), Some(start));
        }

        #[test]
        fn later_begun_is_never_earlier_done(from in 0..40_000_i64, later in 0..5_000_i64, work in 0..3_000_i64) {
            let shop = shop();
            prop_assert!(shop.forward(from + later, work).unwrap().1 >= shop.forward(from, work).unwrap().1);
        }
    }
}
