//! What a hardwood grade promises of a board.

use crate::cite::{Clause, Source};
use crate::error::Fault;
use crate::limits::{Limited, limited};
use crate::units::factor::{FOOT_MM, INCH_MM};

/// A grade of hardwood lumber.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum HardwoodGrade {
    /// FAS, firsts and seconds: graded from the poorer face.
    Fas,
    /// FAS one face: the better face FAS, the poorer face 1 Common.
    FasOneFace,
    /// Selects: as FAS one face, in smaller boards.
    Selects,
    /// No. 1 Common.
    Common1,
    /// No. 2A Common: clear cuttings.
    Common2A,
    /// No. 2B Common: sound cuttings.
    Common2B,
    /// No. 3A Common.
    Common3A,
    /// No. 3B Common: sound cuttings.
    Common3B,
}

/// A board by its face, and the grade it shall be.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<HardwoodGradeInput>))]
pub struct HardwoodGradeInput {
    /// The grade asked about.
    pub grade: HardwoodGrade,
    /// Width of the board, mm.
    pub width_mm: f64,
    /// Length of the board, mm.
    pub length_mm: f64,
    /// Surface measure, whole square feet.
    pub surface_measure_ft2: u32,
}

limited!(HardwoodGradeInput { width_mm: PANEL_WIDTH, length_mm: LENGTH, surface_measure_ft2: SURFACE_MEASURE });

/// Whether a board is large enough for a grade.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum BoardSizeVerdict {
    /// Wide and long enough.
    LargeEnough,
    /// Narrower than the grade allows.
    TooNarrow,
    /// Shorter than the grade allows.
    TooShort,
}

/// What the grade promises of that board.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct HardwoodGradeRule {
    /// Whether the board is large enough for the grade.
    pub size: BoardSizeVerdict,
    /// Least width of a board, mm.
    pub least_width_mm: f64,
    /// Least length of a board, mm.
    pub least_length_mm: f64,
    /// Cutting units needed, 12 in² each.
    pub cutting_units: u32,
    /// Share of the graded face that the cuttings are at least.
    pub clear_share: f64,
    /// Most cuttings that may be counted; absent where their number is free.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub cuttings: Option<u32>,
    /// Cutting units needed when one cutting more is used; absent where the surface measure does not allow it.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub extra_cutting_units: Option<u32>,
    /// Least size of a cutting, in words.
    pub least_cutting: &'static str,
    /// Where the rule comes from.
    pub clause: Clause,
}

/// One grade of the chart.
struct GradeRow {
    least_width_in: f64,
    least_length_ft: f64,
    /// Cutting units a square foot; 12 would be the whole face.
    units: u32,
    /// Cuttings: (surface measure + `first`) / `second`, at most `third`.
    cuttings: Option<(u32, u32, u32)>,
    /// One cutting more: least and greatest surface measure, units a square foot.
    extra: Option<(u32, u32, u32)>,
    least_cutting: &'static str,
}

const UPPER_CUTTING: &str = "4 in by 5 ft, or 3 in by 7 ft";
const SMALL_CUTTING: &str = "3 in by 2 ft";

/// The chart; see the source below.
const fn chart(grade: HardwoodGrade) -> GradeRow {
    const FAS: GradeRow = GradeRow {
        least_width_in: 6.0,
        least_length_ft: 8.0,
        units: 10,
        cuttings: Some((0, 4, 4)),
        extra: Some((6, 15, 11)),
        least_cutting: UPPER_CUTTING,
    };
    const LOW: GradeRow = GradeRow {
        least_width_in: 3.0,
        least_length_ft: 4.0,
        units: 6,
        cuttings: Some((0, 2, 7)),
        extra: Some((2, 7, 8)),
        least_cutting: SMALL_CUTTING,
    };
    match grade {
        HardwoodGrade::Fas | HardwoodGrade::FasOneFace => FAS,
        HardwoodGrade::Selects => GradeRow { least_width_in: 4.0, least_length_ft: 6.0, ..FAS },
        HardwoodGrade::Common1 => GradeRow {
            units: 8,
            cuttings: Some((1, 3, 5)),
            extra: Some((3, 10, 9)),
            least_cutting: "4 in by 2 ft, or 3 in by 3 ft",
            ..LOW
        },
        HardwoodGrade::Common2A | HardwoodGrade::Common2B => LOW,
        HardwoodGrade::Common3A => GradeRow { units: 4, cuttings: None, extra: None, ..LOW },
        HardwoodGrade::Common3B => {
            GradeRow { units: 3, cuttings: None, extra: None, least_cutting: "1-1/2 in wide with 36 in²", ..LOW }
        }
    }
}

impl HardwoodGrade {
    /// Least share of clear (or sound) cuttings on the graded face.
    pub const fn clear_share(self) -> f64 {
        chart(self).units as f64 / 12.0
    }
}

/// What a grade of hardwood promises of a board: cutting units, number of cuttings, least board.
///
/// # Equation
/// ```text
/// units = SM × factor        FAS 10, 1 Common 8, 2 Common 6, 3A 4, 3B 3, of 12 a square foot
/// cuttings: FAS floor(SM / 4) ≤ 4,  1 Common floor((SM + 1) / 3) ≤ 5,  2 Common floor(SM / 2) ≤ 7
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | SM | surface measure | ft² | `surface_measure_ft2` |
///
/// # Limits
/// The share is the least clear area of the graded face, not the yield of a cutting list: parts never tile it. Exceptions for
/// species (walnut, cherry and others), for boards of one to three square feet, for boards over 17 ft and the 97 % rule are
/// left out. The yard's grader decides.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// NHLA grade chart as reprinted by a distributor. Checked by `verification/lumber`.
///
/// # Examples
/// ```
/// use beamcraft_core::lumber::{hardwood_grade, HardwoodGrade, HardwoodGradeInput};
/// let rule = hardwood_grade(&HardwoodGradeInput {
///     grade: HardwoodGrade::Common1, width_mm: 150.0, length_mm: 3000.0, surface_measure_ft2: 8,
/// })?;
/// assert_eq!((rule.cutting_units, rule.cuttings), (64, Some(3)));
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn hardwood_grade(input: &HardwoodGradeInput) -> Result<HardwoodGradeRule, Fault> {
    input.check_ranges()?;
    let row = chart(input.grade);
    let measure = input.surface_measure_ft2;
    let (least_width_mm, least_length_mm) = (row.least_width_in * INCH_MM, row.least_length_ft * FOOT_MM);
    let size = if input.width_mm < least_width_mm - HAIR_MM {
        BoardSizeVerdict::TooNarrow
    } else if input.length_mm < least_length_mm - HAIR_MM {
        BoardSizeVerdict::TooShort
    } else {
        BoardSizeVerdict::LargeEnough
    };
    let extra = row.extra.filter(|(least, greatest, _)| (*least..=*greatest).contains(&measure));
    Ok(HardwoodGradeRule {
        size,
        least_width_mm,
        least_length_mm,
        cutting_units: measure * row.units,
        clear_share: input.grade.clear_share(),
        cuttings: row.cuttings.map(|(add, over, most)| ((measure + add) / over).min(most)),
        extra_cutting_units: extra.map(|(_, _, units)| measure * units),
        least_cutting: row.least_cutting,
        clause: Clause::new(Source::NhlaRules, "grade chart"),
    })
}

/// Inches do not divide the binary millimetre.
const HAIR_MM: f64 = 1e-6;

/// Registry row.
#[cfg(feature = "json")]
pub(super) const HARDWOOD_GRADE: crate::json::Calculation = crate::json::calculation!(
    hardwood_grade: HardwoodGradeInput => HardwoodGradeRule, Document,
    "What a grade of hardwood promises of a board: cutting units, number of cuttings, least board"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lumber::hostile;
    use proptest::prelude::*;

    const GRADES: [HardwoodGrade; 8] = [
        HardwoodGrade::Fas,
        HardwoodGrade::FasOneFace,
        HardwoodGrade::Selects,
        HardwoodGrade::Common1,
        HardwoodGrade::Common2A,
        HardwoodGrade::Common2B,
        HardwoodGrade::Common3A,
        HardwoodGrade::Common3B,
    ];

    #[test]
    fn the_shares_are_the_percentages_of_the_chart() {
        let percent: Vec<_> = GRADES.iter().map(|grade| (grade.clear_share() * 1e4).round() / 1e2).collect();
        assert_eq!(percent, [83.33, 83.33, 83.33, 66.67, 50.0, 50.0, 33.33, 25.0]);
    }

    proptest! {
        #[test]
        fn a_lower_grade_never_asks_for_more(measure in 0..60_u32, width_mm in 70.0..400.0_f64) {
            let rule = |grade| {
                let input = HardwoodGradeInput { grade, width_mm, length_mm: 3e3, surface_measure_ft2: measure };
                hardwood_grade(&input).expect("in range")
            };
            for pair in GRADES.windows(2) {
                prop_assert!(rule(pair[1]).cutting_units <= rule(pair[0]).cutting_units);
                prop_assert!(rule(pair[1]).least_width_mm <= rule(pair[0]).least_width_mm);
            }
        }

        #[test]
        fn any_numbers_give_a_rule_or_a_fault(
            w in hostile::number(), l in hostile::number(), surface_measure_ft2: u32, grade in prop::sample::select(GRADES.to_vec()),
        ) {
            let input = HardwoodGradeInput { grade, width_mm: w, length_mm: l, surface_measure_ft2 };
            if let Ok(found) = hardwood_grade(&input) {
                prop_assert!(found.cutting_units <= 12 * surface_measure_ft2);
            }
        }
    }
}
