//! How much rough lumber to buy before the boards are seen.

use super::grade::HardwoodGrade;
use crate::error::{Allowed, ErrorCode, Fault};
use crate::limits::{Limited, limited};
use crate::units::factor::BOARD_FOOT_M3;

/// Net parts and what one expects to get out of the boards.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<LumberToBuyInput>))]
pub struct LumberToBuyInput {
    /// Volume of the parts at rough thickness, m³.
    pub net_m3: f64,
    /// Least share of the boards that becomes parts, from experience with this yard and this kind of list.
    pub least_yield: f64,
    /// Greatest share of the boards that becomes parts.
    pub greatest_yield: f64,
    /// Grade, for comparison: its least clear share as if it were a yield.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub grade: Option<HardwoodGrade>,
    /// Price a cubic metre, in any currency.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub price_per_m3: Option<f64>,
}

limited!(LumberToBuyInput {
    net_m3: WOOD_VOLUME,
    least_yield: POSITIVE_FRACTION,
    greatest_yield: POSITIVE_FRACTION,
    price_per_m3: PRICE,
});

/// Boards to buy, from the best to the worst case.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct LumberToBuy {
    /// Volume at the greatest yield, m³.
    pub least_m3: f64,
    /// Volume at the least yield, m³.
    pub greatest_m3: f64,
    /// Volume at the greatest yield, board feet.
    pub least_bf: f64,
    /// Volume at the least yield, board feet.
    pub greatest_bf: f64,
    /// Volume if the grade's least clear share were the yield, board feet; indicative, in either direction.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub by_grade_bf: Option<f64>,
    /// Cost at the greatest yield.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub least_cost: Option<f64>,
    /// Cost at the least yield.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub greatest_cost: Option<f64>,
}

const ORDER: Allowed = Allowed::Text("at least least_yield");

/// How much rough lumber to buy for a volume of parts, as a range.
///
/// # Equation
/// ```text
/// V_buy = V_net / yield
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | V_net | volume of the parts, at rough thickness | m³ | `net_m3` |
/// | yield | parts over boards | – | `least_yield`, `greatest_yield` |
///
/// # Limits
/// No published yield fits a short list of long parts, so the yields are the user's. A grade's share is the least clear area of
/// a face: parts do not tile it (yield is lower), and most boards are better than their grade asks (yield is higher).
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` when the greatest yield is under the least.
///
/// # Source
/// Arithmetic; shares of the NHLA grade chart. Checked by `verification/lumber`.
///
/// # Examples
/// ```
/// use beamcraft_core::lumber::{lumber_to_buy, LumberToBuyInput};
/// let buy = lumber_to_buy(&LumberToBuyInput {
///     net_m3: 0.028, least_yield: 0.5, greatest_yield: 0.7, grade: None, price_per_m3: Some(2000.0),
/// })?;
/// assert!((buy.greatest_m3 - 0.056).abs() < 1e-12 && buy.least_cost.is_some_and(|cost| (cost - 80.0).abs() < 1e-9));
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn lumber_to_buy(input: &LumberToBuyInput) -> Result<LumberToBuy, Fault> {
    input.check_ranges()?;
    let LumberToBuyInput { net_m3, least_yield, greatest_yield, grade, price_per_m3 } = *input;
    if greatest_yield < least_yield {
        let cure = "swap the two";
        return Err(Fault::number(ErrorCode::Inconsistent, "greatest_yield", greatest_yield, ORDER, cure));
    }
    let (least_m3, greatest_m3) = (net_m3 / greatest_yield, net_m3 / least_yield);
    Ok(LumberToBuy {
        least_m3,
        greatest_m3,
        least_bf: least_m3 / BOARD_FOOT_M3,
        greatest_bf: greatest_m3 / BOARD_FOOT_M3,
        by_grade_bf: grade.map(|grade| net_m3 / BOARD_FOOT_M3 / grade.clear_share()),
        least_cost: price_per_m3.map(|price| price * least_m3),
        greatest_cost: price_per_m3.map(|price| price * greatest_m3),
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const LUMBER_TO_BUY: crate::json::Calculation = crate::json::calculation!(
    lumber_to_buy: LumberToBuyInput => LumberToBuy, Document,
    "How much rough lumber to buy for a volume of parts, as a range"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lumber::hostile;
    use proptest::prelude::*;

    fn input(net_m3: f64, least_yield: f64, greatest_yield: f64) -> LumberToBuyInput {
        LumberToBuyInput { net_m3, least_yield, greatest_yield, grade: None, price_per_m3: None }
    }

    #[test]
    fn yields_the_wrong_way_round_are_told() {
        let fault = lumber_to_buy(&input(1.0, 0.7, 0.5)).expect_err("swapped");
        assert_eq!((fault.code, fault.field), (ErrorCode::Inconsistent, "greatest_yield"));
    }

    proptest! {
        #[test]
        fn the_range_is_a_range(net in 0.0..10.0_f64, a in 0.01..1.0_f64, b in 0.01..1.0_f64) {
            let buy = lumber_to_buy(&input(net, a.min(b), a.max(b))).expect("in range");
            prop_assert!(net <= buy.least_m3 && buy.least_m3 <= buy.greatest_m3);
        }

        #[test]
        fn any_numbers_give_finite_boards_or_a_fault(
            a in hostile::number(), b in hostile::number(), c in hostile::number(), d in hostile::number(),
        ) {
            let given = LumberToBuyInput { price_per_m3: Some(d), grade: Some(HardwoodGrade::Common1), ..input(a, b, c) };
            if let Ok(buy) = lumber_to_buy(&given) {
                prop_assert!(buy.greatest_bf.is_finite() && buy.greatest_cost.is_some_and(f64::is_finite));
            }
        }
    }
}
