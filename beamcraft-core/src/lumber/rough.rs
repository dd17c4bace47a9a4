//! Which rough thickness gives a finished thickness.

use crate::cite::{Clause, Source};
use crate::error::{Allowed, ErrorCode, Fault};
use crate::limits::{Limited, limited};

/// Rough thickness of hardwood as it is sold.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum RoughThickness {
    /// 3/8 in.
    ThreeEighthsInch,
    /// 1/2 in.
    HalfInch,
    /// 5/8 in.
    FiveEighthsInch,
    /// 3/4 in.
    ThreeQuarterInch,
    /// 4/4, 1 in.
    FourQuarter,
    /// 5/4, 1 1/4 in.
    FiveQuarter,
    /// 6/4, 1 1/2 in.
    SixQuarter,
    /// 7/4, 1 3/4 in.
    SevenQuarter,
    /// 8/4, 2 in.
    EightQuarter,
    /// 10/4, 2 1/2 in.
    TenQuarter,
    /// 12/4, 3 in.
    TwelveQuarter,
    /// 14/4, 3 1/2 in.
    FourteenQuarter,
    /// 16/4, 4 in.
    SixteenQuarter,
}

/// A rough thickness and what is left of it at least when both faces are surfaced.
struct RoughRow {
    rough: RoughThickness,
    rough_mm: f64,
    surfaced_mm: f64,
}

/// Rough and surfaced thickness in sixteenths of an inch.
const fn row(rough: RoughThickness, rough_sixteenths: f64, surfaced_sixteenths: f64) -> RoughRow {
    RoughRow { rough, rough_mm: rough_sixteenths * 25.4 / 16.0, surfaced_mm: surfaced_sixteenths * 25.4 / 16.0 }
}

/// NHLA thickness table as reprinted on three public pages; 10/4 is recalled.
const ROWS: [RoughRow; 13] = [
    row(RoughThickness::ThreeEighthsInch, 6.0, 3.0),
    row(RoughThickness::HalfInch, 8.0, 5.0),
    row(RoughThickness::FiveEighthsInch, 10.0, 7.0),
    row(RoughThickness::ThreeQuarterInch, 12.0, 9.0),
    row(RoughThickness::FourQuarter, 16.0, 13.0),
    row(RoughThickness::FiveQuarter, 20.0, 17.0),
    row(RoughThickness::SixQuarter, 24.0, 21.0),
    row(RoughThickness::SevenQuarter, 28.0, 24.0),
    row(RoughThickness::EightQuarter, 32.0, 28.0),
    row(RoughThickness::TenQuarter, 40.0, 36.0),
    row(RoughThickness::TwelveQuarter, 48.0, 44.0),
    row(RoughThickness::FourteenQuarter, 56.0, 52.0),
    row(RoughThickness::SixteenQuarter, 64.0, 60.0),
];

/// The thickness a panel shall have.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<RoughThicknessInput>))]
pub struct RoughThicknessInput {
    /// Finished thickness, mm.
    pub finished_mm: f64,
    /// Wood taken beyond a mill's surfacing to get cup, bow and twist out, mm; 0 unless given, since it depends on the length
    /// and the boards.
    #[cfg_attr(feature = "json", serde(default))]
    pub flattening_mm: f64,
}

limited!(RoughThicknessInput { finished_mm: BOARD_THICKNESS, flattening_mm: SMALL_LENGTH });

/// The thinnest rough stock that is enough.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct RoughThicknessFound {
    /// Rough thickness to ask for.
    pub rough: RoughThickness,
    /// The same, mm.
    pub rough_mm: f64,
    /// Least thickness when both faces are surfaced by the mill, mm.
    pub surfaced_mm: f64,
    /// What is left of that above finished thickness and flattening, mm.
    pub spare_mm: f64,
    /// Share of the rough thickness that becomes shavings.
    pub lost_share: f64,
    /// Where the table comes from.
    pub clause: Clause,
}

/// The thinnest rough hardwood that can be planed to a finished thickness.
///
/// # Equation
/// The first row of the thickness table with `surfaced ≥ finished + flattening`.
///
/// # Limits
/// The surfaced figures are the least that grading accepts; real stock varies, and a long cupped board may need the next
/// thickness: measure the boards. Planers and jointers injure hands and throw dust: guard, push blocks, extraction, mask.
///
/// # Errors
/// `out_of_range`, `not_finite`; `out_of_range` when no rough thickness is enough.
///
/// # Source
/// NHLA thickness table (10/4 recalled). Checked by `verification/lumber`.
///
/// # Examples
/// ```
/// use beamcraft_core::lumber::{rough_thickness, RoughThickness, RoughThicknessInput};
/// let found = rough_thickness(&RoughThicknessInput { finished_mm: 19.0, flattening_mm: 0.0 })?;
/// assert_eq!(found.rough, RoughThickness::FourQuarter);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn rough_thickness(input: &RoughThicknessInput) -> Result<RoughThicknessFound, Fault> {
    input.check_ranges()?;
    let needed_mm = input.finished_mm + input.flattening_mm;
    // 3/4 in given as 19.05 must not miss its row by the last digit.
    let found = ROWS.iter().find(|row| row.surfaced_mm >= needed_mm - 1e-9).ok_or_else(|| too_thick(needed_mm))?;
    Ok(RoughThicknessFound {
        rough: found.rough,
        rough_mm: found.rough_mm,
        surfaced_mm: found.surfaced_mm,
        spare_mm: (found.surfaced_mm - needed_mm).max(0.0),
        lost_share: (found.rough_mm - input.finished_mm) / found.rough_mm,
        clause: Clause::new(Source::NhlaRules, "thickness table"),
    })
}

#[cold]
fn too_thick(needed_mm: f64) -> Fault {
    let allowed = Allowed::Text("finished thickness with flattening up to 95.25 mm (16/4 surfaced)");
    Fault::number(ErrorCode::OutOfRange, "finished_mm", needed_mm, allowed, "glue it up from two thicknesses")
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const ROUGH_THICKNESS: crate::json::Calculation = crate::json::calculation!(
    rough_thickness: RoughThicknessInput => RoughThicknessFound, Document,
    "The thinnest rough hardwood that can be planed to a finished thickness"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lumber::hostile;
    use proptest::prelude::*;

    #[test]
    fn the_table_follows_its_pattern() {
        // 3/16 in off up to 6/4, 1/4 in off above.
        for row in &ROWS {
            let off = if row.rough_mm < 1.7 * 25.4 { 3.0 / 16.0 } else { 0.25 };
            assert!((row.rough_mm - row.surfaced_mm - off * 25.4).abs() < 1e-12, "{:?}", row.rough);
        }
        assert!(ROWS.is_sorted_by(|a, b| a.rough_mm < b.rough_mm));
    }

    #[test]
    fn more_than_the_thickest_is_refused_with_a_cure() {
        let fault = rough_thickness(&RoughThicknessInput { finished_mm: 95.0, flattening_mm: 1.0 }).expect_err("none");
        assert_eq!((fault.code, fault.field, fault.value), (ErrorCode::OutOfRange, "finished_mm", Some(96.0)));
    }

    proptest! {
        #[test]
        fn the_next_thinner_would_not_do(finished_mm in 1.0..95.0_f64) {
            let found = rough_thickness(&RoughThicknessInput { finished_mm, flattening_mm: 0.0 }).expect("there is one");
            let thinner = ROWS.iter().rev().find(|row| row.rough_mm < found.rough_mm);
            prop_assert!(found.surfaced_mm >= finished_mm);
            prop_assert!(thinner.is_none_or(|row| row.surfaced_mm < finished_mm));
        }

        #[test]
        fn any_numbers_give_a_thickness_or_a_fault(a in hostile::number(), b in hostile::number()) {
            if let Ok(found) = rough_thickness(&RoughThicknessInput { finished_mm: a, flattening_mm: b }) {
                prop_assert!(found.spare_mm >= 0.0 && found.lost_share < 1.0);
            }
        }
    }
}
