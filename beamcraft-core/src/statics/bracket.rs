//! A rigid bracket held to a wall by rows of bolts or screws.

use crate::error::{Allowed, ErrorCode, Fault};
use crate::finding::Caution;
use crate::limits::{Limited, limited};

/// A bracket with one to three rows of bolts and one load.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<BoltRowBracketInput>))]
pub struct BoltRowBracketInput {
    /// Load, N.
    pub load_n: f64,
    /// Lever arm of the load: its distance from the wall when it is parallel to the wall, from the tilting edge when it
    /// pulls away from it, mm.
    pub arm_mm: f64,
    /// Which way the load acts.
    pub direction: BracketLoad,
    /// Distance of the farthest row from the tilting edge, mm.
    pub row1_mm: f64,
    /// Distance of the second row from the tilting edge, mm; leave out when there is one row.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub row2_mm: Option<f64>,
    /// Distance of the third row from the tilting edge, mm; leave out when there are two rows.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub row3_mm: Option<f64>,
    /// Number of bolts in each row.
    pub bolts_per_row: u32,
}

limited!(BoltRowBracketInput {
    load_n: FORCE,
    arm_mm: LENGTH,
    row1_mm: LEVER,
    row2_mm: LEVER,
    row3_mm: LEVER,
    bolts_per_row: COUNT,
});

/// Direction of the load on a bracket.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum BracketLoad {
    /// Along the wall, such as a weight: it shears the bolts.
    AlongWall,
    /// Away from the wall, parallel to the bolts: it pulls all of them.
    AwayFromWall,
}

/// Forces of the bolts.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct BoltRowBracket {
    /// Tension of one bolt of the farthest row, N.
    pub tension_row1_n: f64,
    /// Tension of one bolt of the second row, N.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub tension_row2_n: Option<f64>,
    /// Tension of one bolt of the third row, N.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub tension_row3_n: Option<f64>,
    /// Shear of one bolt, equal shares, N; 0 for a load away from the wall.
    pub shear_per_bolt_n: f64,
    /// Tension of one bolt of the farthest row if the moment were a couple between the first and the last row alone, N;
    /// the larger, more cautious convention; absent with one row or a load away from the wall.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub couple_tension_n: Option<f64>,
    /// Equivalent tension of the farthest row by the greatest shear stress, √(T² + 4 V²), N.
    pub shear_theory_n: f64,
    /// Equivalent tension of the farthest row by the greatest principal stress, (T + √(T² + 4 V²))/2, N.
    pub principal_theory_n: f64,
    /// Number of bolts.
    pub bolt_count: u32,
    /// The caution that belongs to these numbers.
    pub caution: Caution,
}

const DESCENDING: Allowed = Allowed::Text("at least 1 mm nearer to the tilting edge than the row before it");

/// Tension and shear of the bolts of a rigid wall bracket.
///
/// # Equation
/// ```text
/// T_i = P e l_i / (k Σ l²)              load along the wall;  V = P / n
/// T_i = P/n + P e l_i / (k Σ l²)        load away from the wall
/// couple between first and last row:  T = P e / (k (l_1 − l_last))
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | P, e | load and its arm | N, mm | `load_n`, `arm_mm` |
/// | l_i | rows from the tilting edge | mm | `row1_mm`, `row2_mm`, `row3_mm` |
/// | k, n | bolts per row, bolts in all | – | `bolts_per_row`, `bolt_count` |
///
/// # Limits
/// Rigid plate that tilts about its edge, bolts strained in proportion to their distance from it: the convention of the
/// textbooks, which leaves the bearing of the plate on the wall out. Where a ledge carries the load, ignore the shear.
///
/// # Errors
/// `out_of_range`, `not_finite`; `missing_field` for a third row without a second; `inconsistent` when the rows do not
/// come nearer to the edge one by one.
///
/// # Source
/// `Bhandari` Examples 7.5 to 7.8 (seen); checked by `verification/bracket`.
///
/// # Examples
/// ```
/// use beamcraft_core::statics::{bolt_row_bracket, BoltRowBracketInput, BracketLoad};
/// let bolts = bolt_row_bracket(&BoltRowBracketInput {
///     load_n: 25_000.0, arm_mm: 100.0, direction: BracketLoad::AlongWall,
///     row1_mm: 150.0, row2_mm: Some(25.0), row3_mm: None, bolts_per_row: 2,
/// })?;
/// assert!((bolts.tension_row1_n - 8108.108).abs() < 0.01);
/// assert!((bolts.shear_theory_n / (380.0 / 2.5) - 98.022213).abs() < 1e-5);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn bolt_row_bracket(input: &BoltRowBracketInput) -> Result<BoltRowBracket, Fault> {
    input.check_ranges()?;
    let BoltRowBracketInput { load_n, arm_mm, direction, row1_mm, row2_mm, row3_mm, bolts_per_row } = *input;
    if row2_mm.is_none() && row3_mm.is_some() {
        return Err(Fault::plain(ErrorCode::MissingField, "row2_mm", "a second row", "give the rows in order"));
    }
    for (field, outer, inner) in [("row2_mm", Some(row1_mm), row2_mm), ("row3_mm", row2_mm, row3_mm)] {
        if let (Some(outer), Some(inner)) = (outer, inner)
            && outer - inner < 1.0
        {
            return Err(Fault::number(ErrorCode::Inconsistent, field, inner, DESCENDING, "give the farthest first"));
        }
    }
    let square = |row: Option<f64>| row.map_or(0.0, |l| l * l);
    let squares = row1_mm * row1_mm + square(row2_mm) + square(row3_mm);
    let rows = 1 + u32::from(row2_mm.is_some()) + u32::from(row3_mm.is_some());
    let bolt_count = rows * bolts_per_row;
    let (per_row, bolts) = (f64::from(bolts_per_row), f64::from(bolt_count));
    let moment_nmm = load_n * arm_mm;
    let (direct, shear_per_bolt_n) = match direction {
        BracketLoad::AlongWall => (0.0, load_n / bolts),
        BracketLoad::AwayFromWall => (load_n / bolts, 0.0),
    };
    let tension = |row: f64| direct + moment_nmm * row / (per_row * squares);
    let couple_tension_n = match direction {
        BracketLoad::AlongWall => row3_mm.or(row2_mm).map(|last| moment_nmm / (per_row * (row1_mm - last))),
        BracketLoad::AwayFromWall => None,
    };
    let tension_row1_n = tension(row1_mm);
    let shear_theory_n = (tension_row1_n * tension_row1_n + 4.0 * shear_per_bolt_n * shear_per_bolt_n).sqrt();
    Ok(BoltRowBracket {
        tension_row1_n,
        tension_row2_n: row2_mm.map(tension),
        tension_row3_n: row3_mm.map(tension),
        shear_per_bolt_n,
        couple_tension_n,
        shear_theory_n,
        principal_theory_n: 0.5 * (tension_row1_n + shear_theory_n),
        bolt_count,
        caution: Caution::Structure,
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const BOLT_ROW_BRACKET: crate::json::Calculation = crate::json::calculation!(
    bolt_row_bracket: BoltRowBracketInput => BoltRowBracket, Typed,
    "Tension and shear of the bolts of a rigid wall bracket with up to three rows"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::statics::test_inputs::hostile;
    use proptest::prelude::*;

    const EXAMPLE: BoltRowBracketInput = BoltRowBracketInput {
        load_n: 50_000.0,
        arm_mm: 250.0,
        direction: BracketLoad::AlongWall,
        row1_mm: 300.0,
        row2_mm: Some(200.0),
        row3_mm: Some(100.0),
        bolts_per_row: 2,
    };

    #[test]
    fn rows_out_of_order_are_refused() {
        let swapped = BoltRowBracketInput { row2_mm: Some(300.0), ..EXAMPLE };
        assert_eq!(bolt_row_bracket(&swapped).expect_err("refused").field, "row2_mm");
        let hole = BoltRowBracketInput { row2_mm: None, ..EXAMPLE };
        assert_eq!(bolt_row_bracket(&hole).expect_err("refused").code, ErrorCode::MissingField);
    }

    #[test]
    fn the_couple_is_the_more_cautious_convention() {
        let bolts = bolt_row_bracket(&EXAMPLE).expect("allowed");
        assert!(bolts.couple_tension_n.expect("two rows or more") > bolts.tension_row1_n);
        assert_eq!(bolts.bolt_count, 6);
    }

    proptest! {
        #[test]
        fn the_moments_of_the_rows_balance_the_load(
            load_n in 0.0..1e5_f64, arm_mm in 0.0..2000.0_f64, row3 in 1.0..100.0_f64, up in 1.0..100.0_f64,
            further in 1.0..300.0_f64, bolts_per_row in 1_u32..20, away in any::<bool>(),
        ) {
            let direction = if away { BracketLoad::AwayFromWall } else { BracketLoad::AlongWall };
            let rows = [row3 + up + further + 0.1, row3 + up + 0.05, row3 - 0.96];
            prop_assume!(rows[2] >= 1.0);
            let input = BoltRowBracketInput {
                load_n, arm_mm, direction, row1_mm: rows[0], row2_mm: Some(rows[1]), row3_mm: Some(rows[2]), bolts_per_row,
            };
            let bolts = bolt_row_bracket(&input).expect("allowed");
            let tensions = [bolts.tension_row1_n, bolts.tension_row2_n.unwrap(), bolts.tension_row3_n.unwrap()];
            // Only what each bolt has beyond an equal share of a direct pull turns the plate.
            let direct = if away { load_n / f64::from(bolts.bolt_count) } else { 0.0 };
            let turning: f64 = tensions.iter().zip(rows).map(|(t, l)| f64::from(bolts_per_row) * (t - direct) * l).sum();
            prop_assert!((turning - load_n * arm_mm).abs() <= 1e-9 * (1.0 + load_n * (arm_mm + rows[0])));
        }

        #[test]
        fn hostile_numbers_are_refused_or_give_finite_results(
            a in hostile(), b in hostile(), c in hostile(), d in hostile(), e in hostile(), n in any::<u32>(),
            two in any::<bool>(), three in any::<bool>(), away in any::<bool>(),
        ) {
            let direction = if away { BracketLoad::AwayFromWall } else { BracketLoad::AlongWall };
            let input = BoltRowBracketInput {
                load_n: a, arm_mm: b, direction, row1_mm: c, row2_mm: two.then_some(d), row3_mm: three.then_some(e),
                bolts_per_row: n % 20_000,
            };
            if let Ok(bolts) = bolt_row_bracket(&input) {
                prop_assert!(bolts.principal_theory_n.is_finite() && bolts.shear_theory_n.is_finite());
                prop_assert!(bolts.couple_tension_n.is_none_or(f64::is_finite));
            }
        }
    }
}
