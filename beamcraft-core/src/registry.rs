//! Every public calculation by name: what the doors, the verification runners, the generator and the docs walk.

use crate::bill::order_of_work;
use crate::columns::{self, Columns, ColumnsReport};
use crate::error::{Detail, Error, ErrorCode, Result, unknown_name};
use crate::export::{
    calendar_svg, clearance_svg, cut_list_svg, exploded_svg, fastener_group_svg, gap_histograms_svg, lift_svg,
    movement_svg, section_svg,
};
use crate::fasten::{FastenerGroupInput, fastener_group};
use crate::json::{Calculation, read, write};
use crate::layout::{Watcher, cut_list_bars_with_progress, cut_list_boards, cut_list_boards_with_progress};
use crate::movement::yearly_movement;
use crate::plan::{ReportLengths, plan, sawn_body};
use crate::site::{body_clearance, lift_on};
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
    crate::finish::CALCULATIONS,
    crate::lumber::CALCULATIONS,
    crate::layout::CALCULATIONS,
    crate::lifting::CALCULATIONS,
    crate::site::CALCULATIONS,
    crate::work::CALCULATIONS,
    crate::plan::CALCULATIONS,
    crate::sizing::CALCULATIONS,
    crate::bill::CALCULATIONS,
    crate::blanks::CALCULATIONS,
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

/// Computes `name` over columns: every input field a column or one value, every wanted output field a column.
///
/// # Shape
/// Input columns hold as many values as there are rows, or one for all rows; output columns hold as many as there are rows.
/// Fields with a default may be left out, as in a single call. What a column holds and what stands for nothing:
/// [`crate::columns`].
///
/// # Errors
/// `unknown_name`; `not_supported` for a calculation of lists, texts or nested structs; `unknown_field`, `missing_field`,
/// `wrong_type`, `duplicate_field`, `column_length` for columns that do not fit, all of them at once. Rows that are refused are
/// no error: they are counted in the report, and their status is the number of the code.
///
/// # Examples
/// ```
/// use beamcraft_core::columns::{Column, ColumnMut, Columns};
/// use beamcraft_core::registry;
/// let humidity_pct = [40.0, 65.0, 120.0];
/// let (mut moisture_pct, mut status) = ([0.0; 3], [0; 3]);
/// let report = registry::columns("equilibrium_moisture", Columns {
///     rows: 3,
///     inputs: &[("temperature_c", Column::Numbers(&[21.1])), ("relative_humidity_pct", Column::Numbers(&humidity_pct))],
///     outputs: vec![("moisture_pct", ColumnMut::Numbers(&mut moisture_pct))],
///     status: Some(&mut status),
///     fault_fields: None,
///     threads: 1,
/// })?;
/// assert!((moisture_pct[0] - 7.7).abs() < 0.05);
/// assert_eq!((report.refused, status), (1, [0, 0, 0x0101]));
/// assert!(moisture_pct[2].is_nan());
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn columns(name: &str, call: Columns<'_>) -> Result<ColumnsReport> {
    let row = find(name)?;
    match (row.columns, row.column_fields()) {
        (Some(work), Some(fields)) => columns::run(&fields, work, call),
        _ => Err(Error::one(Detail {
            code: ErrorCode::NotSupported,
            path: "name".to_owned(),
            given: format!("\"{name}\""),
            allowed: "a calculation of numbers and choices".to_owned(),
            cure: "lists, texts and nested structs do not fit into columns: call it once for each row".to_owned(),
        })),
    }
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
    let (_, search) =
        SEARCHES.iter().find(|(known, _)| *known == name).ok_or_else(|| unknown_name("name", name, names()))?;
    search(input, watcher)
}

/// Reads the input of a calculation, computes, and draws.
type Draw = fn(&str, ReportLengths) -> Result<String>;

/// The calculations whose result has a drawing.
const DRAWINGS: &[(&str, Draw)] = &[
    ("plan", |text, _| Ok(section_svg(&plan(&read(text)?)?))),
    ("sawn_body", |text, _| Ok(exploded_svg(&sawn_body(&read(text)?)?))),
    ("yearly_movement", |text, lengths| Ok(movement_svg(&yearly_movement(&read(text)?)?, lengths))),
    ("tolerance_stack", |text, _| Ok(gap_histograms_svg(&tolerance_stack(&read(text)?)?))),
    ("work_calendar", |text, lengths| Ok(calendar_svg(&work_calendar(&read(text)?)?, lengths))),
    ("order_of_work", |text, lengths| Ok(calendar_svg(&order_of_work(&read(text)?)?.calendar, lengths))),
    ("body_clearance", |text, lengths| Ok(clearance_svg(&body_clearance(&read(text)?)?, lengths))),
    ("lift_on", |text, lengths| Ok(lift_svg(&lift_on(&read(text)?)?, lengths))),
    ("fastener_group", |text, lengths| {
        let input: FastenerGroupInput = read(text)?;
        Ok(fastener_group_svg(&input, &fastener_group(&input)?, lengths))
    }),
    ("cut_list_boards", |text, lengths| Ok(cut_list_svg(&cut_list_boards(&read(text)?)?, lengths))),
];

/// Computes `name` for a JSON input and draws its result as an SVG sheet.
///
/// | `name` | drawing |
/// |---|---|
/// | `plan` | cross section; lengths as the spec says |
/// | `sawn_body` | the panels pulled apart; lengths as the spec says |
/// | `yearly_movement` | moisture and width of every panel over twelve months |
/// | `tolerance_stack` | histograms of the visible gaps, mm |
/// | `work_calendar`, `order_of_work` | tasks as bars over days |
/// | `body_clearance` | least height against depth by each rule, and where the body is |
/// | `lift_on` | the section on its way onto the cleat, frame by frame |
/// | `fastener_group` | where the fasteners stand, the force on each |
/// | `cut_list_boards` | a page a board: parts, cuts in their order with fence and stop, grain, defects, what is left |
///
/// # Errors
/// `unknown_name` for a calculation without a drawing; all faults of the input; what the calculation itself refuses.
pub fn drawing_svg(name: &str, input: &str, lengths: ReportLengths) -> Result<String> {
    let names = || DRAWINGS.iter().map(|(name, _)| *name);
    let (_, draw) =
        DRAWINGS.iter().find(|(known, _)| *known == name).ok_or_else(|| unknown_name("name", name, names()))?;
    draw(input, lengths)
}

#[cold]
fn unknown(name: &str) -> Error {
    unknown_name("name", name, calculations().map(|row| row.name))
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
        assert!(
            refused.to_string().contains("plan, sawn_body, yearly_movement, tolerance_stack, work_calendar"),
            "{refused}"
        );
        let words = refused.to_string();
        assert!(DRAWINGS.iter().all(|(name, _)| words.contains(name)), "{words}");
    }
}
