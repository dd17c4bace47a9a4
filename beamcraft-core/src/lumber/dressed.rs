//! Dressed sizes of softwood by nominal size.

use crate::cite::{Clause, Source};
use crate::error::{Allowed, ErrorCode, Fault};
use crate::limits::{Limited, limited};
use crate::units::factor::INCH_MM;

/// Whether lumber was dry when it was dressed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum LumberSeasoning {
    /// 19 % moisture or less.
    #[default]
    Dry,
    /// More than 19 % moisture: larger, so that both meet after drying.
    Green,
}

/// A softwood size by its name.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<DressedSizeInput>))]
pub struct DressedSizeInput {
    /// Nominal thickness, mm, the smaller side: 50.8 (2 in) for a 2x4.
    pub nominal_thickness_mm: f64,
    /// Nominal width, mm: 101.6 (4 in) for a 2x4.
    pub nominal_width_mm: f64,
    /// Whether it was dry when dressed.
    #[cfg_attr(feature = "json", serde(default))]
    pub seasoning: LumberSeasoning,
}

limited!(DressedSizeInput { nominal_thickness_mm: NOMINAL_SIZE, nominal_width_mm: NOMINAL_SIZE });

/// The least dressed size.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct DressedSize {
    /// Dressed thickness, mm.
    pub thickness_mm: f64,
    /// Dressed width, mm.
    pub width_mm: f64,
    /// Dressed over nominal cross-section.
    pub section_share: f64,
    /// Where the sizes come from.
    pub clause: Clause,
}

/// A nominal size with its dressed sizes, all in thirty-seconds of an inch.
struct SizeRow {
    nominal: f64,
    dry: f64,
    green: f64,
}

const fn size(nominal: f64, dry: f64, green: f64) -> SizeRow {
    SizeRow { nominal, dry, green }
}

/// Thickness of boards, under 2 in nominal.
const BOARD_THICKNESSES: [SizeRow; 7] = [
    size(12.0, 10.0, 11.0),
    size(16.0, 14.0, 15.0),
    size(20.0, 18.0, 19.0),
    size(24.0, 20.0, 22.0),
    size(32.0, 24.0, 25.0),
    size(40.0, 32.0, 33.0),
    size(48.0, 40.0, 41.0),
];

/// Thickness of dimension lumber, 2 in to 4 1/2 in nominal.
const DIMENSION_THICKNESSES: [SizeRow; 6] = [
    size(64.0, 48.0, 50.0),
    size(80.0, 64.0, 66.0),
    size(96.0, 80.0, 82.0),
    size(112.0, 96.0, 98.0),
    size(128.0, 112.0, 114.0),
    size(144.0, 128.0, 130.0),
];

/// Widths of boards and dimension lumber.
const WIDTHS: [SizeRow; 16] = [
    size(64.0, 48.0, 50.0),
    size(80.0, 64.0, 66.0),
    size(96.0, 80.0, 82.0),
    size(112.0, 96.0, 98.0),
    size(128.0, 112.0, 114.0),
    size(144.0, 128.0, 130.0),
    size(160.0, 144.0, 148.0),
    size(192.0, 176.0, 180.0),
    size(224.0, 208.0, 212.0),
    size(256.0, 232.0, 240.0),
    size(288.0, 264.0, 272.0),
    size(320.0, 296.0, 304.0),
    size(352.0, 328.0, 336.0),
    size(384.0, 360.0, 368.0),
    size(448.0, 424.0, 432.0),
    size(512.0, 488.0, 496.0),
];

const KNOWN_THICKNESS: Allowed =
    Allowed::Text("3/8, 1/2, 5/8, 3/4, 1, 1-1/4, 1-1/2, 2, 2-1/2, 3, 3-1/2, 4, 4-1/2 in, or whole inches from 5 to 24");
const KNOWN_WIDTH: Allowed = Allowed::Text(
    "2, 2-1/2, 3, 3-1/2, 4, 4-1/2, 5, 6, 7, 8, 9, 10, 11, 12, 14, 16 in, or whole inches from 5 for a timber",
);
const KNOWN_BOARD_WIDTH: Allowed = Allowed::Text("2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 14, 16 in for a board");

/// The least dressed size of softwood lumber by nominal size.
///
/// # Equation
/// Looked up; sides of timbers (both nominal sides 5 in and more): 1/2 in less below 7 in, from 7 to 15 in 3/4 in less dry
/// and 1/2 in less green, from 16 in 1 in less dry and 1/2 in less green.
///
/// # Limits
/// Softwood of American sizes. An invoice must show the net size; what is in the rack may be a little larger.
///
/// # Errors
/// `out_of_range`, `not_finite`; `out_of_range` for a size that is not in the standard; `inconsistent` when the thickness is
/// larger than the width.
///
/// # Source
/// PS 20, American Softwood Lumber Standard (tables as reprinted on a public reference page). Checked by
/// `verification/lumber`.
///
/// # Examples
/// ```
/// use beamcraft_core::lumber::{dressed_size, DressedSizeInput, LumberSeasoning};
/// let stud = DressedSizeInput { nominal_thickness_mm: 50.8, nominal_width_mm: 101.6, seasoning: LumberSeasoning::Dry };
/// let found = dressed_size(&stud)?;
/// assert!((found.thickness_mm - 38.1).abs() < 1e-9 && (found.width_mm - 88.9).abs() < 1e-9);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn dressed_size(input: &DressedSizeInput) -> Result<DressedSize, Fault> {
    input.check_ranges()?;
    let DressedSizeInput { nominal_thickness_mm, nominal_width_mm, seasoning } = *input;
    if nominal_thickness_mm > nominal_width_mm {
        let allowed = Allowed::Text("a thickness not larger than the width");
        let value = nominal_thickness_mm;
        return Err(Fault::number(ErrorCode::Inconsistent, "nominal_thickness_mm", value, allowed, "swap the two"));
    }
    let refuse =
        |field, value, allowed| Fault::number(ErrorCode::OutOfRange, field, value, allowed, "give the nominal size");
    let side = |field, value, allowed| timber_side(value, seasoning).ok_or_else(|| refuse(field, value, allowed));
    let (thickness_mm, width_mm) = if nominal_thickness_mm >= 5.0 * INCH_MM - HAIR_MM {
        let thickness = side("nominal_thickness_mm", nominal_thickness_mm, KNOWN_THICKNESS)?;
        (thickness, side("nominal_width_mm", nominal_width_mm, KNOWN_WIDTH)?)
    } else {
        let table = |rows: &[SizeRow], value| look_up(rows, value, seasoning);
        let board = table(&BOARD_THICKNESSES, nominal_thickness_mm);
        let thickness = board.or_else(|| table(&DIMENSION_THICKNESSES, nominal_thickness_mm));
        let thickness =
            thickness.ok_or_else(|| refuse("nominal_thickness_mm", nominal_thickness_mm, KNOWN_THICKNESS))?;
        let known = if board.is_some() { KNOWN_BOARD_WIDTH } else { KNOWN_WIDTH };
        // Boards come in whole inches.
        let whole = board.is_none() || is_whole_inches(nominal_width_mm);
        let width = table(&WIDTHS, nominal_width_mm).filter(|_| whole);
        (thickness, width.ok_or_else(|| refuse("nominal_width_mm", nominal_width_mm, known))?)
    };
    Ok(DressedSize {
        thickness_mm,
        width_mm,
        section_share: thickness_mm * width_mm / (nominal_thickness_mm * nominal_width_mm),
        clause: Clause::new(Source::Ps20, "size tables"),
    })
}

/// Nominal sizes are matched to a hair: inches do not divide the binary millimetre.
const HAIR_MM: f64 = 1e-6;

/// A thirty-second of an inch.
const STEP_MM: f64 = INCH_MM / 32.0;

fn look_up(rows: &[SizeRow], nominal_mm: f64, seasoning: LumberSeasoning) -> Option<f64> {
    let row = rows.iter().find(|row| (row.nominal * STEP_MM - nominal_mm).abs() < HAIR_MM)?;
    Some(STEP_MM * if seasoning == LumberSeasoning::Dry { row.dry } else { row.green })
}

fn is_whole_inches(size_mm: f64) -> bool {
    let inches = size_mm / INCH_MM;
    (inches - inches.round()).abs() * INCH_MM < HAIR_MM
}

/// A side of a timber, whole inches from 5.
fn timber_side(nominal_mm: f64, seasoning: LumberSeasoning) -> Option<f64> {
    let inches = (nominal_mm / INCH_MM).round();
    let off = match (inches, seasoning) {
        (..7.0, _) | (_, LumberSeasoning::Green) => 0.5,
        (..16.0, LumberSeasoning::Dry) => 0.75,
        _ => 1.0,
    };
    is_whole_inches(nominal_mm).then_some((inches - off) * INCH_MM)
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const DRESSED_SIZE: crate::json::Calculation = crate::json::calculation!(
    dressed_size: DressedSizeInput => DressedSize, Document,
    "The least dressed size of softwood lumber by nominal size"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lumber::hostile;
    use proptest::prelude::*;

    fn dressed(thickness_in: f64, width_in: f64, seasoning: LumberSeasoning) -> Result<DressedSize, Fault> {
        dressed_size(&DressedSizeInput {
            nominal_thickness_mm: thickness_in * INCH_MM,
            nominal_width_mm: width_in * INCH_MM,
            seasoning,
        })
    }

    #[test]
    fn sizes_nobody_sells_are_refused_by_field() {
        let field = |t, w| dressed(t, w, LumberSeasoning::Dry).expect_err("no such size").field;
        assert_eq!(field(1.7, 4.0), "nominal_thickness_mm");
        assert_eq!(field(2.0, 4.25), "nominal_width_mm");
        assert_eq!(field(1.0, 2.5), "nominal_width_mm");
        assert_eq!(field(6.0, 6.5), "nominal_width_mm");
        assert_eq!(dressed(4.0, 2.0, LumberSeasoning::Dry).expect_err("swapped").code, ErrorCode::Inconsistent);
    }

    #[test]
    fn a_dimension_of_two_and_a_half_inches_has_its_size() {
        let found = dressed(2.5, 2.5, LumberSeasoning::Green).expect("sold");
        assert!((found.thickness_mm - 2.0625 * INCH_MM).abs() < 1e-9);
    }

    #[test]
    fn green_is_never_smaller_than_dry() {
        for t in [0.375, 0.5, 0.625, 0.75, 1.0, 1.25, 1.5, 2.0, 3.0, 4.0, 6.0, 8.0, 12.0, 16.0] {
            for w in [6.0, 8.0, 10.0, 12.0, 14.0, 16.0] {
                let Ok(dry) = dressed(t, w, LumberSeasoning::Dry) else { continue };
                let green = dressed(t, w, LumberSeasoning::Green).expect("known");
                assert!(green.thickness_mm >= dry.thickness_mm && green.width_mm >= dry.width_mm, "{t} {w}");
                assert!(dry.section_share < 1.0);
            }
        }
    }

    proptest! {
        #[test]
        fn any_numbers_give_a_size_or_a_fault(a in hostile::number(), b in hostile::number()) {
            let input = DressedSizeInput { nominal_thickness_mm: a, nominal_width_mm: b, seasoning: LumberSeasoning::Dry };
            if let Ok(found) = dressed_size(&input) {
                prop_assert!(found.thickness_mm > 0.0 && found.width_mm > 0.0 && found.section_share < 1.0);
            }
        }
    }
}
