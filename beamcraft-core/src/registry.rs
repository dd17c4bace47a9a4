//! Every public calculation by name: what the doors, the verification runners, the generator and the docs walk.

use crate::error::{Detail, Error, ErrorCode, Result, closest};
use crate::export::{gap_histograms_svg, movement_svg, section_svg};
use crate::json::{Calculation, read};
use crate::movement::yearly_movement;
use crate::plan::{ReportLengths, plan};
use crate::tolerance::tolerance_stack;

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
    crate::lifting::CALCULATIONS,
    crate::site::CALCULATIONS,
    crate::plan::CALCULATIONS,
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

/// Reads the input of a calculation, computes, and draws.
type Draw = fn(&str, ReportLengths) -> Result<String>;

/// The calculations whose result has a drawing.
const DRAWINGS: &[(&str, Draw)] = &[
    ("plan", |text, _| Ok(section_svg(&plan(&read(text)?)?))),
    ("yearly_movement", |text, lengths| Ok(movement_svg(&yearly_movement(&read(text)?)?, lengths))),
    ("tolerance_stack", |text, _| Ok(gap_histograms_svg(&tolerance_stack(&read(text)?)?))),
];

/// Computes `name` for a JSON input and draws its result as an SVG sheet.
///
/// | `name` | drawing |
/// |---|---|
/// | `plan` | cross section; lengths as the spec says |
/// | `yearly_movement` | moisture and width of every panel over twelve months |
/// | `tolerance_stack` | histograms of the visible gaps, mm |
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
    fn every_drawing_belongs_to_a_calculation() {
        for (name, draw) in DRAWINGS {
            assert!(find(name).is_ok());
            assert!(draw("{}", ReportLengths::Metric).is_err(), "nothing is drawn of nothing");
        }
        let refused = drawing_svg("pan", "{}", ReportLengths::Metric).expect_err("no such drawing");
        assert!(refused.to_string().contains("plan, yearly_movement, tolerance_stack"), "{refused}");
    }
}
