//! Lateral and withdrawal load at once.

use crate::error::Fault;
use crate::limits::{Limited, limited};
use crate::numeric::real::atan2_deg;

/// Which equation joins the two loads.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum CombinedLoadRule {
    /// Wood screws and lag screws: squared sine and cosine (NDS Eq. 12.4-1).
    Screws,
    /// Nails and spikes: sine and cosine in first power (NDS Eq. 12.4-2), the more careful one.
    Nails,
}

/// A fastener loaded across and along its axis.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<CombinedLateralWithdrawalInput>))]
pub struct CombinedLateralWithdrawalInput {
    /// Equation that joins the loads.
    pub rule: CombinedLoadRule,
    /// Adjusted lateral capacity Z', N.
    pub lateral_capacity_n: f64,
    /// Adjusted withdrawal capacity W'p of the whole holding length, N; the head pull-through W_H' where that is less.
    pub withdrawal_capacity_n: f64,
    /// Load across the axis, N.
    pub lateral_n: f64,
    /// Load along the axis, pulling out, N.
    pub withdrawal_n: f64,
}

limited!(CombinedLateralWithdrawalInput {
    lateral_capacity_n: CONNECTION_CAPACITY,
    withdrawal_capacity_n: CONNECTION_CAPACITY,
    lateral_n: FORCE,
    withdrawal_n: FORCE
});

/// Capacity at the angle of the resultant.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct CombinedLateralWithdrawal {
    /// Resultant of both loads, N.
    pub resultant_n: f64,
    /// Angle between the resultant and the wood surface, degrees; 0 for a purely lateral load.
    pub angle_deg: f64,
    /// Adjusted capacity Z'_alpha at that angle, N.
    pub capacity_n: f64,
    /// Resultant over capacity; 1 is the limit.
    pub utilisation: f64,
}

/// Capacity of a fastener under lateral and withdrawal load at once.
///
/// # Equation
/// ```text
/// screws: Z'_α = W'p Z' / (W'p cos² α + Z' sin² α)        (12.4-1)
/// nails:  Z'_α = W'p Z' / (W'p cos α + Z' sin α)          (12.4-2)
/// α = atan2(T, V)      utilisation = √(V² + T²) / Z'_α
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | V, T | load across and along the axis | N | `lateral_n`, `withdrawal_n` |
/// | Z', W'p | adjusted capacities | N | `lateral_capacity_n`, `withdrawal_capacity_n` |
///
/// # Limits
/// Both capacities above nothing. The screws' form can use less of the resultant than the larger single load uses of
/// its own capacity: check the single loads beside it. The equations print the withdrawal capacity W'p. A fastener whose
/// head pulls through first holds no more than its head, so give the lesser of the two: a careful reading chosen here, as
/// the whole joints of this library do it.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// NDS 2018 12.4, Eq. 12.4-1 seen in public extracts, 12.4-2 recalled. Checked by `verification/withdrawal_nds`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::{CombinedLateralWithdrawalInput, CombinedLoadRule, combined_lateral_withdrawal};
/// let both = combined_lateral_withdrawal(&CombinedLateralWithdrawalInput {
///     rule: CombinedLoadRule::Screws,
///     lateral_capacity_n: 400.0,
///     withdrawal_capacity_n: 756.8,
///     lateral_n: 100.0,
///     withdrawal_n: 100.0,
/// })?;
/// assert_eq!(both.angle_deg, 45.0);
/// assert!((both.capacity_n - 523.4).abs() < 0.1);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn combined_lateral_withdrawal(input: &CombinedLateralWithdrawalInput) -> Result<CombinedLateralWithdrawal, Fault> {
    input.check_ranges()?;
    Ok(combined(input))
}

/// [`combined_lateral_withdrawal`] of numbers already within their ranges.
pub(super) fn combined(input: &CombinedLateralWithdrawalInput) -> CombinedLateralWithdrawal {
    let CombinedLateralWithdrawalInput { rule, lateral_capacity_n, withdrawal_capacity_n, lateral_n, withdrawal_n } =
        *input;
    let larger_n = lateral_n.max(withdrawal_n);
    // Without a load the direction is taken as lateral; scaling by the larger load keeps tiny loads from vanishing.
    let (cosine, sine, resultant_n) = if larger_n > 0.0 {
        let (across, along) = (lateral_n / larger_n, withdrawal_n / larger_n);
        let length = (across * across + along * along).sqrt();
        (across / length, along / length, larger_n * length)
    } else {
        (1.0, 0.0, 0.0)
    };
    let (across, along) = match rule {
        CombinedLoadRule::Screws => (cosine * cosine, sine * sine),
        CombinedLoadRule::Nails => (cosine, sine),
    };
    let capacity_n = 1.0 / (across / lateral_capacity_n + along / withdrawal_capacity_n);
    CombinedLateralWithdrawal {
        resultant_n,
        angle_deg: atan2_deg(withdrawal_n, lateral_n),
        capacity_n,
        utilisation: resultant_n / capacity_n,
    }
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const COMBINED_LATERAL_WITHDRAWAL: crate::json::Calculation = crate::json::calculation!(
    combined_lateral_withdrawal: CombinedLateralWithdrawalInput => CombinedLateralWithdrawal, Typed,
    "Capacity of a screw or nail under lateral and withdrawal load at once"
);

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn both(rule: CombinedLoadRule, capacities: (f64, f64), loads: (f64, f64)) -> CombinedLateralWithdrawal {
        combined_lateral_withdrawal(&CombinedLateralWithdrawalInput {
            rule,
            lateral_capacity_n: capacities.0,
            withdrawal_capacity_n: capacities.1,
            lateral_n: loads.0,
            withdrawal_n: loads.1,
        })
        .unwrap()
    }

    #[test]
    fn a_load_along_one_axis_meets_the_capacity_of_that_axis() {
        for rule in [CombinedLoadRule::Screws, CombinedLoadRule::Nails] {
            assert!((both(rule, (400.0, 700.0), (100.0, 0.0)).capacity_n - 400.0).abs() < 1e-9);
            assert!((both(rule, (400.0, 700.0), (0.0, 100.0)).capacity_n - 700.0).abs() < 1e-9);
            let idle = both(rule, (400.0, 700.0), (0.0, 0.0));
            assert_eq!((idle.utilisation, idle.angle_deg, idle.resultant_n), (0.0, 0.0, 0.0));
        }
    }

    proptest! {
        // Same as V²/(R Z') + T²/(R W'p) for screws and V/Z' + T/W'p for nails.
        #[test]
        fn the_interaction_forms_agree(z in 1.0..1e4_f64, w in 1.0..1e4_f64, v in 0.1..1e4_f64, t in 0.1..1e4_f64) {
            let resultant = (v * v + t * t).sqrt();
            let screws = both(CombinedLoadRule::Screws, (z, w), (v, t));
            let sum = v * v / (resultant * z) + t * t / (resultant * w);
            prop_assert!((screws.utilisation / sum - 1.0).abs() < 1e-12);
            let nails = both(CombinedLoadRule::Nails, (z, w), (v, t));
            prop_assert!((nails.utilisation / (v / z + t / w) - 1.0).abs() < 1e-12);
            prop_assert!(nails.utilisation >= screws.utilisation);
            prop_assert!((screws.resultant_n / resultant - 1.0).abs() < 1e-12);
        }

        #[test]
        fn hostile_numbers_give_a_fault_or_finite_results(bits in prop::array::uniform4(any::<u64>()), which in 0_u8..81) {
            let number = |index: u8, low: f64, high: f64| match which / 3_u8.pow(u32::from(index)) % 3 {
                0 => f64::from_bits(bits[usize::from(index)]),
                1 => low,
                _ => high,
            };
            for rule in [CombinedLoadRule::Screws, CombinedLoadRule::Nails] {
                let input = CombinedLateralWithdrawalInput {
                    rule,
                    lateral_capacity_n: number(0, 0.001, 1.0e7),
                    withdrawal_capacity_n: number(1, 0.001, 1.0e7),
                    lateral_n: number(2, 5e-324, 1.0e7),
                    withdrawal_n: number(3, 5e-324, 1.0e7),
                };
                if let Ok(found) = combined_lateral_withdrawal(&input) {
                    let numbers = [found.resultant_n, found.angle_deg, found.capacity_n, found.utilisation];
                    prop_assert!(numbers.into_iter().all(f64::is_finite) && found.capacity_n > 0.0, "{found:?}");
                }
            }
        }
    }
}
