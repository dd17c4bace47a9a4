//! How many screws a load needs.

use crate::error::{Allowed, ErrorCode, Fault};
use crate::fasten::nds::{CombinedLateralWithdrawalInput, CombinedLoadRule, combined_lateral_withdrawal};
use crate::limits::{Limited, limited};
use crate::verdict::Outcome;

/// A load for a row of screws.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<ScrewCountInput>))]
pub struct ScrewCountInput {
    /// Lateral load on all screws together, N.
    pub lateral_n: f64,
    /// Withdrawal load on all screws together, N.
    pub withdrawal_n: f64,
    /// Adjusted lateral capacity of one screw, N.
    pub lateral_capacity_n: f64,
    /// Adjusted withdrawal capacity of one screw, the lesser of thread and head, N.
    pub withdrawal_capacity_n: f64,
    /// Largest share over the even share, from `fastener_group` for an eccentric load; 1 by default.
    #[cfg_attr(feature = "json", serde(default = "one"))]
    pub unevenness: f64,
    /// Least number of screws; 2 by default, so that the part cannot turn (common practice).
    #[cfg_attr(feature = "json", serde(default = "two"))]
    pub least_count: u32,
    /// Length of the part along the row, mm.
    pub row_length_mm: f64,
    /// Distance of the first and the last screw from the ends of the part, mm.
    pub end_distance_mm: f64,
    /// Least spacing of the screws, such as that of `geometry_factor`, mm.
    pub least_spacing_mm: f64,
    /// Largest spacing wanted, mm; left out there is none.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub most_spacing_mm: Option<f64>,
}

limited!(ScrewCountInput {
    lateral_n: FORCE,
    withdrawal_n: FORCE,
    lateral_capacity_n: CONNECTION_CAPACITY,
    withdrawal_capacity_n: CONNECTION_CAPACITY,
    unevenness: UNEVENNESS,
    least_count: ROW_COUNT,
    row_length_mm: LENGTH,
    end_distance_mm: LENGTH,
    least_spacing_mm: SPACING,
    most_spacing_mm: SPACING
});

#[cfg(feature = "json")]
fn one() -> f64 {
    1.0
}
#[cfg(feature = "json")]
fn two() -> u32 {
    2
}

/// Number and spacing of screws.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct ScrewCount {
    /// Screws that the load needs; a real number.
    pub needed: f64,
    /// Screws to drive: that rounded up, at least the least count, and enough for the largest spacing.
    pub count: u32,
    /// Most screws that the row holds at the least spacing.
    pub most_count: u32,
    /// Spacing of that number of screws over the row, mm; 0 for one screw.
    pub spacing_mm: f64,
    /// Use of one screw with that number.
    pub utilisation: f64,
    /// Whether the row holds that number.
    pub outcome: Outcome,
}

/// Number of screws for a load, and their spacing along the part.
///
/// # Equation
/// ```text
/// needed = k max(V/Z', T/W', R/Z'_α)      count = ⌈needed⌉, at least the least count, at least ⌈row/s_max⌉ + 1
/// row = l − 2 e      spacing = row/(count − 1)      most = ⌊row/s_min⌋ + 1
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | V, T | loads across and along the screws | N | `lateral_n`, `withdrawal_n` |
/// | Z', W' | capacities of one screw | N | `lateral_capacity_n`, `withdrawal_capacity_n` |
/// | k | unevenness | – | `unevenness` |
/// | l, e | length of the part, end distance | mm | `row_length_mm`, `end_distance_mm` |
///
/// # Limits
/// Equal screws in one row. The capacities are those of one screw with all factors; below 1/4 in many screws in a row
/// need no group factor, above it take the capacity with the factor and ask again with the number found.
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` when the end distances leave no row, or the largest spacing is less than
/// the least; `not_supported` for more than a million screws.
///
/// # Source
/// Arithmetic on NDS 2018 12.4 (Eq. 12.4-1); the least count is common practice without a source. Checked by
/// `verification/choose`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::{ScrewCountInput, screw_count};
/// let row = screw_count(&ScrewCountInput {
///     lateral_n: 1000.0,
///     withdrawal_n: 0.0,
///     lateral_capacity_n: 300.0,
///     withdrawal_capacity_n: 500.0,
///     unevenness: 1.0,
///     least_count: 2,
///     row_length_mm: 1000.0,
///     end_distance_mm: 50.0,
///     least_spacing_mm: 60.0,
///     most_spacing_mm: None,
/// })?;
/// assert_eq!((row.count, row.spacing_mm), (4, 300.0));
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn screw_count(input: &ScrewCountInput) -> Result<ScrewCount, Fault> {
    input.check_ranges()?;
    let row_mm = input.row_length_mm - 2.0 * input.end_distance_mm;
    if row_mm < 0.0 {
        return Err(Fault::number(
            ErrorCode::Inconsistent,
            "end_distance_mm",
            input.end_distance_mm,
            Allowed::Text("at most half the length of the part"),
            "shorten the end distance",
        ));
    }
    if let Some(most_mm) = input.most_spacing_mm
        && most_mm < input.least_spacing_mm
    {
        return Err(Fault::number(
            ErrorCode::Inconsistent,
            "most_spacing_mm",
            most_mm,
            Allowed::Text("at least the least spacing"),
            "",
        ));
    }
    let both = combined_lateral_withdrawal(&CombinedLateralWithdrawalInput {
        rule: CombinedLoadRule::Screws,
        lateral_capacity_n: input.lateral_capacity_n,
        withdrawal_capacity_n: input.withdrawal_capacity_n,
        lateral_n: input.lateral_n,
        withdrawal_n: input.withdrawal_n,
    })?;
    let single = (input.lateral_n / input.lateral_capacity_n).max(input.withdrawal_n / input.withdrawal_capacity_n);
    let needed = input.unevenness * both.utilisation.max(single);
    let for_spacing = input.most_spacing_mm.map_or(0.0, |most_mm| (row_mm / most_mm - ROUNDING).ceil() + 1.0);
    let wanted = (needed - ROUNDING).ceil().max(f64::from(input.least_count)).max(for_spacing).max(1.0);
    if wanted > MOST {
        return Err(Fault::number(
            ErrorCode::NotSupported,
            "lateral_capacity_n",
            input.lateral_capacity_n,
            Allowed::Text("a capacity that a million screws reach the load with"),
            "take a stronger screw",
        ));
    }
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "between 1 and a million")]
    let (count, most_count) = (wanted as u32, (row_mm / input.least_spacing_mm + ROUNDING).floor() as u32 + 1);
    let gaps = wanted - 1.0;
    Ok(ScrewCount {
        needed,
        count,
        most_count,
        spacing_mm: if gaps > 0.0 { row_mm / gaps } else { 0.0 },
        utilisation: needed / wanted,
        outcome: if count <= most_count { Outcome::Met } else { Outcome::NotMet },
    })
}

/// A rounding of the last digits asks for no further screw.
const ROUNDING: f64 = 1e-9;
const MOST: f64 = 1.0e6;

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const SCREW_COUNT: crate::json::Calculation = crate::json::calculation!(
    screw_count: ScrewCountInput => ScrewCount, Typed,
    "Number of screws for a load, and their spacing along the part"
);

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn row() -> ScrewCountInput {
        ScrewCountInput {
            lateral_n: 900.0,
            withdrawal_n: 0.0,
            lateral_capacity_n: 300.0,
            withdrawal_capacity_n: 400.0,
            unevenness: 1.0,
            least_count: 2,
            row_length_mm: 500.0,
            end_distance_mm: 50.0,
            least_spacing_mm: 100.0,
            most_spacing_mm: None,
        }
    }

    #[test]
    fn the_number_is_rounded_up_and_held_by_the_row() {
        let found = screw_count(&row()).unwrap();
        assert_eq!((found.count, found.most_count, found.spacing_mm, found.outcome), (3, 5, 200.0, Outcome::Met));
        assert!((found.utilisation - 1.0).abs() < 1e-12);
        let uneven = screw_count(&ScrewCountInput { unevenness: 1.7, ..row() }).unwrap();
        assert_eq!((uneven.count, uneven.outcome), (6, Outcome::NotMet));
        let close = screw_count(&ScrewCountInput { most_spacing_mm: Some(100.0), ..row() }).unwrap();
        assert_eq!((close.count, close.spacing_mm), (5, 100.0));
        let idle = screw_count(&ScrewCountInput { lateral_n: 0.0, ..row() }).unwrap();
        assert_eq!((idle.count, idle.utilisation), (2, 0.0));
    }

    #[test]
    fn contradictions_are_refused() {
        let ends = ScrewCountInput { end_distance_mm: 251.0, ..row() };
        assert_eq!(screw_count(&ends).expect_err("refused").field, "end_distance_mm");
        let spacing = ScrewCountInput { most_spacing_mm: Some(50.0), ..row() };
        assert_eq!(screw_count(&spacing).expect_err("refused").field, "most_spacing_mm");
        let weak = ScrewCountInput { lateral_n: 1e7, lateral_capacity_n: 0.001, ..row() };
        assert_eq!(screw_count(&weak).expect_err("refused").code, ErrorCode::NotSupported);
    }

    proptest! {
        #[test]
        fn that_many_screws_hold_and_one_fewer_does_not(v in 1.0..1e4_f64, t in 0.0..1e4_f64, z in 100.0..1e3_f64, w in 100.0..1e3_f64) {
            let input = ScrewCountInput { lateral_n: v, withdrawal_n: t, lateral_capacity_n: z, withdrawal_capacity_n: w, least_count: 1, ..row() };
            let found = screw_count(&input).unwrap();
            prop_assert!(found.utilisation <= 1.0 + 1e-8);
            let fewer = f64::from(found.count) - 1.0;
            prop_assert!(fewer == 0.0 || found.needed > fewer);
            prop_assert!(found.needed >= v / z && found.needed >= t / w);
        }

        #[test]
        fn hostile_numbers_give_a_fault_or_finite_results(bits in prop::array::uniform9(any::<u64>()), which in any::<u16>(), least in any::<u32>()) {
            let number = |k: usize, fair: f64| if which >> k & 1 == 0 { f64::from_bits(bits[k]) } else { fair };
            let input = ScrewCountInput {
                lateral_n: number(0, 1e7),
                withdrawal_n: number(1, 5e-324),
                lateral_capacity_n: number(2, 1e3),
                withdrawal_capacity_n: number(3, 1e7),
                unevenness: number(4, 100.0),
                least_count: if which % 2 == 0 { least } else { 1 },
                row_length_mm: number(5, 1e5),
                end_distance_mm: number(6, 0.0),
                least_spacing_mm: number(7, 10.0),
                most_spacing_mm: Some(number(8, 10.0)),
            };
            if let Ok(found) = screw_count(&input) {
                prop_assert!(found.count >= 1 && found.spacing_mm.is_finite() && found.utilisation.is_finite());
            }
        }
    }
}
