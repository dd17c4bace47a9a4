//! Board feet and cubic metres of a board, exactly and as the trade tallies them.

use crate::error::Fault;
use crate::limits::{Limited, limited};
use crate::units::factor::{BOARD_FOOT_M3, FOOT_MM, INCH_MM, SQUARE_FOOT_M2};

/// How a board is tallied for sale.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum TallyRule {
    /// Hardwood by surface measure: actual width, whole feet of length, rounded to a whole square foot a board, times the
    /// thickness.
    #[default]
    HardwoodSurfaceMeasure,
    /// Softwood by nominal width and thickness, length in even feet, rounded to a hundredth of a board foot.
    SoftwoodNominal,
    /// Nothing rounded; metric practice, and the honest figure for comparing prices.
    Exact,
}

/// Boards of one size.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<BoardMeasureInput>))]
pub struct BoardMeasureInput {
    /// Thickness by which the board is sold, mm: rough for hardwood, nominal for softwood.
    pub thickness_mm: f64,
    /// Width, mm: actual for hardwood, nominal for softwood.
    pub width_mm: f64,
    /// Length, mm.
    pub length_mm: f64,
    /// Number of such boards.
    #[cfg_attr(feature = "json", serde(default = "one_board"))]
    pub boards: u32,
    /// How the boards are tallied.
    #[cfg_attr(feature = "json", serde(default))]
    pub rule: TallyRule,
}

limited!(BoardMeasureInput { thickness_mm: BOARD_THICKNESS, width_mm: PANEL_WIDTH, length_mm: LENGTH, boards: COUNT });

#[cfg(feature = "json")]
fn one_board() -> u32 {
    1
}

/// Volume of the boards.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct BoardMeasure {
    /// Volume of the given sizes, m³.
    pub volume_m3: f64,
    /// Volume of the given sizes, board feet.
    pub exact_bf: f64,
    /// Thickness that is counted, mm; stock under an inch counts as an inch, except in the exact measure.
    pub counted_thickness_mm: f64,
    /// Length that is counted, mm.
    pub counted_length_mm: f64,
    /// Surface measure of all boards, ft²; before rounding it is width × counted length.
    pub surface_measure_ft2: f64,
    /// Volume that is sold, board feet.
    pub tally_bf: f64,
    /// Tally over exact volume; 1 when nothing is rounded, 0 for no volume.
    pub tally_ratio: f64,
}

/// Lengths and areas a hair below a whole number are that number: inches do not divide the binary millimetre.
const HAIR: f64 = 1e-9;

/// Board feet and cubic metres of boards, exactly and by the trade's tally.
///
/// # Equation
/// ```text
/// 1 bf = 1 ft × 1 ft × 1 in        exact: T W L / 12        (T, W in, L ft)
/// hardwood:  SM = round(W floor(L) / 12) a board,  bf = SM max(T, 1)
/// softwood:  bf = max(T, 1) W (L down to an even foot) / 12, to a hundredth
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | T, W, L | thickness, width, length | in, in, ft | `thickness_mm`, `width_mm`, `length_mm` |
/// | SM | surface measure | ft² | `surface_measure_ft2` |
///
/// # Limits
/// A surface measure that lies exactly on the half foot goes up and down by turns from board to board; here the first of
/// equal boards goes up. The softwood rounding rests on a weak secondary source. A yard may tally otherwise: ask.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// Hardwood grading rules as described on public measurement pages; US Navy Engineering Aid manual, chapter 6. Checked by
/// `verification/lumber`.
///
/// # Examples
/// ```
/// use beamcraft_core::lumber::{board_measure, BoardMeasureInput, TallyRule};
/// let board = BoardMeasureInput {
///     thickness_mm: 25.4, width_mm: 158.75, length_mm: 2438.4, boards: 1, rule: TallyRule::HardwoodSurfaceMeasure,
/// };
/// assert_eq!(board_measure(&board)?.tally_bf, 4.0); // 6 1/4 in by 8 ft is 4 1/6, tallied as 4
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn board_measure(input: &BoardMeasureInput) -> Result<BoardMeasure, Fault> {
    input.check_ranges()?;
    let BoardMeasureInput { thickness_mm, width_mm, length_mm, boards, rule } = *input;
    let boards = f64::from(boards);
    let volume_m3 = thickness_mm * width_mm * length_mm * 1e-9 * boards;
    let exact_bf = volume_m3 / BOARD_FOOT_M3;
    let (counted_thickness_mm, counted_length_mm) = match rule {
        TallyRule::HardwoodSurfaceMeasure => (thickness_mm.max(INCH_MM), whole_steps(length_mm, FOOT_MM)),
        TallyRule::SoftwoodNominal => (thickness_mm.max(INCH_MM), whole_steps(length_mm, 2.0 * FOOT_MM)),
        TallyRule::Exact => (thickness_mm, length_mm),
    };
    let a_board_ft2 = width_mm * counted_length_mm * 1e-6 / SQUARE_FOOT_M2;
    let inches = counted_thickness_mm / INCH_MM;
    let (surface_measure_ft2, tally_bf) = match rule {
        TallyRule::HardwoodSurfaceMeasure => {
            let measure = whole_feet_by_turns(a_board_ft2, boards);
            (measure, measure * inches)
        }
        TallyRule::SoftwoodNominal => {
            (a_board_ft2 * boards, (a_board_ft2 * inches * 100.0 + HAIR).round() / 100.0 * boards)
        }
        TallyRule::Exact => (a_board_ft2 * boards, exact_bf),
    };
    let tally_ratio = if exact_bf > 0.0 { (tally_bf / exact_bf).min(f64::MAX) } else { 0.0 };
    Ok(BoardMeasure {
        volume_m3,
        exact_bf,
        counted_thickness_mm,
        counted_length_mm,
        surface_measure_ft2,
        tally_bf,
        tally_ratio,
    })
}

/// A length down to whole steps.
fn whole_steps(length_mm: f64, step_mm: f64) -> f64 {
    (length_mm / step_mm + HAIR).floor() * step_mm
}

/// Square feet of equal boards, each rounded to a whole foot; exact halves go up and down by turns.
fn whole_feet_by_turns(a_board_ft2: f64, boards: f64) -> f64 {
    let floor = (a_board_ft2 + HAIR).floor();
    let over = a_board_ft2 - floor;
    if (over - 0.5).abs() <= HAIR {
        return floor * boards + (boards / 2.0).ceil();
    }
    (floor + if over > 0.5 { 1.0 } else { 0.0 }) * boards
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const BOARD_MEASURE: crate::json::Calculation = crate::json::calculation!(
    board_measure: BoardMeasureInput => BoardMeasure, Typed,
    "Board feet and cubic metres of boards, exactly and by the trade's tally"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lumber::hostile;
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    fn hardwood(width_in: f64, length_ft: f64, boards: u32) -> BoardMeasure {
        let input = BoardMeasureInput {
            thickness_mm: INCH_MM,
            width_mm: width_in * INCH_MM,
            length_mm: length_ft * FOOT_MM,
            boards,
            rule: TallyRule::HardwoodSurfaceMeasure,
        };
        board_measure(&input).expect("a board")
    }

    #[test]
    fn halves_go_up_and_down_by_turns() {
        // 9 in by 6 ft is 4 1/2 ft².
        assert_eq!(hardwood(9.0, 6.0, 1).tally_bf, 5.0);
        assert_eq!(hardwood(9.0, 6.0, 2).tally_bf, 9.0);
        assert_eq!(hardwood(9.0, 6.0, 3).tally_bf, 14.0);
    }

    #[test]
    fn every_whole_foot_counts_in_full() {
        for feet in 1..=40 {
            assert_eq!(hardwood(12.0, f64::from(feet), 1).tally_bf, f64::from(feet));
        }
    }

    #[test]
    fn no_length_is_no_volume() {
        let nothing = hardwood(6.0, 0.0, 5);
        assert_eq!((nothing.tally_bf, nothing.volume_m3, nothing.tally_ratio), (0.0, 0.0, 0.0));
    }

    proptest! {
        #[test]
        fn a_tally_is_off_by_half_a_foot_a_board_at_most(width in 3.0..20.0_f64, feet in 1..16_u32, boards in 1..50_u32) {
            let found = hardwood(width, f64::from(feet), boards);
            prop_assert!((found.tally_bf - found.exact_bf).abs() <= 0.5 * f64::from(boards) + 0.5);
        }

        #[test]
        fn the_exact_measure_is_linear_in_the_boards(t in 10.0..100.0_f64, w in 50.0..400.0_f64, l in 10.0..5e3_f64, boards in 1..99_u32) {
            let measure = |boards| {
                let input = BoardMeasureInput { thickness_mm: t, width_mm: w, length_mm: l, boards, rule: TallyRule::Exact };
                board_measure(&input).expect("a board")
            };
            assert_relative_eq!(measure(boards).tally_bf, f64::from(boards) * measure(1).tally_bf, max_relative = 1e-12);
            assert_relative_eq!(measure(boards).tally_ratio, 1.0);
        }

        #[test]
        fn any_numbers_give_a_finite_measure_or_a_fault(
            a in hostile::number(), b in hostile::number(), c in hostile::number(), boards: u32,
            rule in prop::sample::select(vec![TallyRule::HardwoodSurfaceMeasure, TallyRule::SoftwoodNominal, TallyRule::Exact]),
        ) {
            if let Ok(found) = board_measure(&BoardMeasureInput { thickness_mm: a, width_mm: b, length_mm: c, boards, rule }) {
                prop_assert!(found.tally_bf.is_finite() && found.tally_ratio.is_finite() && found.exact_bf >= 0.0);
            }
        }
    }
}
