//! Every public calculation by name: what the doors, the verification runners, the generator and the docs walk.

use crate::bill::order_of_work;
use crate::error::{Detail, Error, ErrorCode, Result, closest};
use crate::export::{calendar_svg, cut_list_svg, gap_histograms_svg, movement_svg, section_svg};
use crate::json::{Calculation, read, write};
use crate::layout::{Watcher, cut_list_bars_with_progress, cut_list_boards, cut_list_boards_with_progress};
use crate::movement::yearly_movement;
use crate::plan::{ReportLengths, plan};
use crate::tolerance::tolerance_stack;
use crate::work::work_calendar;

/// The rows of every module, in the order of the floors.
const FAMILIES: &[&[Calculation]] = &[
    crate::units::CALCULATIONS,
    crate::wood::CALCULATIONS,
    crate::shell::CALCULATIONS,
    crate::fasten::CALCULATIONS,
    crate::statics::CALCULATIONS,
    crate::saw::CALCULATIONS,
    crate::frame::CALCULATIONS,
    crate::hang::CALCULATIONS,
    crate::movement::CALCULATIONS,
    crate::tolerance::CALCULATIONS,
    crate::layout::CALCULATIONS,
    crate::finish::CALCULATIONS,
    crate::lumber::CALCULATIONS,
    crate::lifting::CALCULATIONS,
    crate::site::CALCULATIONS,
    crate::work::CALCULATIONS,
    crate::plan::CALCULATIONS,
    crate::blanks::CALCULATIONS,
    crate::sizing::CALCULATIONS,
    crate::bill::CALCULATIONS,
];

/// Every public calculation, in a fixed order.
pub fn calculations() -> impl Iterator<Item = &'static Calculation> {
    FAMILIES.iter().copied().flatten()
}

/// The calculation of a name.
///
/// # Errors
/// `unknown_name`, with the closest known one.
pub fn find(name: &str) -> Result<&'static Calculation> {
    calculations().find(|row| row.name == name).ok_or_else(|| unknown(name))
}

/// Computes `name` for a JSON input and gives the canonical JSON of its output.
///
/// # Errors
/// `unknown_name`; all faults of the input; what the calculation itself refuses.
pub fn call(name: &str, input: &str) -> Result<String> {
    (find(name)?.call)(input)
}

/// Reads the input of a search, searches, and writes what was found.
type Search = fn(&str, Watcher<'_>) -> Result<String>;

/// The calculations that search for a while.
const SEARCHES: &[(&str, Search)] = &[
    ("cut_list_bars", |text, watcher| write(&cut_list_bars_with_progress(&read(text)?, watcher)?)),
    ("cut_list_boards", |text, watcher| write(&cut_list_boards_with_progress(&read(text)?, watcher)?)),
];

/// As [`call`] for a calculation that searches, `cut_list_bars` or `cut_list_boards`: tells `watcher` how far it has come,
/// and gives the best found so far when that breaks off.
///
/// # Errors
/// `unknown_name` for a calculation that does not search; all faults of the input; what the calculation itself refuses.
pub fn call_with_progress(name: &str, input: &str, watcher: Watcher<'_>) -> Result<String> {
    let names = || SEARCHES.iter().map(|(name, _)| *name);
    let (_, search) = SEARCHES.iter().find(|(known, _)| *known == name).ok_or_else(|| unknown_among(name, names()))?;
    search(input, watcher)
}

/// Reads the input of a calculation, computes, and draws.
type Draw = fn(&str, ReportLengths) -> Result<String>;

/// The calculations whose result has a drawing.
const DRAWINGS: &[(&str, Draw)] = &[
    ("plan", |text, _| Ok(section_svg(&plan(&read(text)?)?))),
    ("yearly_movement", |text, lengths| Ok(movement_svg(&yearly_movement(&read(text)?)?, lengths))),
    ("tolerance_stack", |text, _| Ok(gap_histograms_svg(&tolerance_stack(&read(text)?)?))),
    ("work_calendar", |text, lengths| Ok(calendar_svg(&work_calendar(&read(text)?)?, lengths))),
    ("order_of_work", |text, lengths| Ok(calendar_svg(&order_of_work(&read(text)?)?.calendar, lengths))),
    ("cut_list_boards", |text, lengths| Ok(cut_list_svg(&cut_list_boards(&read(text)?)?, lengths))),
];

/// Computes `name` for a JSON input and draws its result as an SVG sheet.
///
/// | `name` | drawing |
/// |---|---|
/// | `plan` | cross section; lengths as the spec says |
/// | `yearly_movement` | moisture and width of every panel over twelve months |
/// | `tolerance_stack` | histograms of the visible gaps, mm |
/// | `work_calendar`, `order_of_work` | tasks as bars over days |
/// | `cut_list_boards` | a page a board: parts, cuts in their order with fence and stop, grain, defects, what is left |
///
/// # Errors
/// `unknown_name` for a calculation without a drawing; all faults of the input; what the calculation itself refuses.
pub fn drawing_svg(name: &str, input: &str, lengths: ReportLengths) -> Result<String> {
    let names = || DRAWINGS.iter().map(|(name, _)| *name);
    let (_, draw) = DRAWINGS.iter().find(|(known, _)| *known == name).ok_or_else(|| unknown_among(name, names()))?;
    draw(input, lengths)
}

#[cold]
fn unknown(name: &str) -> Error {
    unknown_among(name, calculations().map(|row| row.name))
}

#[cold]
fn unknown_among(name: &str, names: impl Iterator<Item = &'static str>) -> Error {
    let names: Vec<_> = names.collect();
    Error::one(Detail {
        code: ErrorCode::UnknownName,
        path: "name".to_owned(),
        given: format!("\"{name}\""),
        allowed: names.join(", "),
        cure: closest(name, names.into_iter()).map(|found| format!("did you mean {found}?")).unwrap_or_default(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_search_gives_what_the_call_gives_and_can_be_stopped() {
        use core::ops::ControlFlow;
        let input = r#"{"stock": [{"name": "b", "length_mm": 2400}], "parts": [{"name": "p", "length_mm": 700, "count": 7}], "kerf_mm": 3}"#;
        let mut calls = 0;
        let mut watch = |_: &crate::layout::LayoutProgress| {
            calls += 1;
            ControlFlow::Continue(())
        };
        assert_eq!(call_with_progress("cut_list_bars", input, &mut watch), call("cut_list_bars", input));
        assert!(calls > 0);
        let stopped = call_with_progress("cut_list_bars", input, &mut |_| ControlFlow::Break(())).expect("a layout");
        assert!(stopped.contains("\"end\":\"stopped\""), "{stopped}");
        let refused = call_with_progress("mitre_pair", "{}", &mut |_| ControlFlow::Break(())).expect_err("no search");
        assert!(refused.to_string().contains("cut_list_bars, cut_list_boards"), "{refused}");
        assert!(SEARCHES.iter().all(|(name, _)| find(name).is_ok()));
    }

    #[test]
    fn every_drawing_belongs_to_a_calculation() {
        for (name, draw) in DRAWINGS {
            assert!(find(name).is_ok());
            assert!(draw("{}", ReportLengths::Metric).is_err(), "nothing is drawn of nothing");
        }
        let refused = drawing_svg("pan", "{}", ReportLengths::Metric).expect_err("no such drawing");
        assert!(refused.to_string().contains("plan, yearly_movement, tolerance_stack, work_calendar"), "{refused}");
    }
}
