//! Capacity along the fastener's axis: withdrawal of the thread or shank, and the head pulling through.

use core::f64::consts::PI;

use super::bearing::FastenerDirection;
use super::factors::DowelFastener;
use crate::error::Fault;
use crate::limits::{Limited, limited};
use crate::numeric::real::pow;
use crate::units::factor::{INCH_MM, POUND_FORCE_N, PSI_MPA};
use crate::verdict::Outcome;

/// What the standard says about withdrawal from the grain that the fastener stands in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum EndGrainRule {
    /// Side grain: the full value.
    SideGrain,
    /// End grain with a reduced value: lag screws, factor 0.75.
    EndGrainReduced,
    /// End grain where the standard lets the fastener carry no withdrawal.
    EndGrainNotPermitted,
}

/// A fastener pulled out of wood.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<FastenerWithdrawalInput>))]
pub struct FastenerWithdrawalInput {
    /// Kind of fastener.
    pub fastener: DowelFastener,
    /// Specific gravity of the wood that holds it, from oven-dry mass and volume.
    pub specific_gravity: f64,
    /// Nominal diameter, mm.
    pub nominal_diameter_mm: f64,
    /// Length that holds in the main member, mm: thread with its tip (wood screw), thread without tip (lag screw), shank
    /// (smooth nail), ringed shank (ring shank nail).
    pub holding_length_mm: f64,
    /// Penetration into the main member, mm: tip counted for wood screws and nails, not for lag screws; left out it is
    /// the holding length.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub penetration_mm: Option<f64>,
    /// Grain that the fastener stands in; side grain by default, as in the face of a stud.
    #[cfg_attr(feature = "json", serde(default = "super::bearing::side_grain"))]
    pub direction: FastenerDirection,
}

limited!(FastenerWithdrawalInput {
    specific_gravity: SPECIFIC_GRAVITY,
    nominal_diameter_mm: FASTENER_DIAMETER,
    holding_length_mm: BEARING_LENGTH,
    penetration_mm: BEARING_LENGTH
});

/// Withdrawal capacity of one fastener.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct FastenerWithdrawal {
    /// Reference withdrawal value W in side grain (NDS Eq. 12.2-1 to 12.2-5), N per mm of holding length.
    pub side_grain_n_per_mm: f64,
    /// What the standard says about the grain (NDS 12.2.1.3, 12.2.2.2, 12.2.3.2).
    pub grain_rule: EndGrainRule,
    /// Factor for the grain: 1 in side grain, 0.75 for lag screws in end grain, 0 where it is not permitted.
    pub grain_factor: f64,
    /// Reference withdrawal value of the whole holding length, before any adjustment factor, N.
    pub reference_n: f64,
    /// Least penetration that the standard asks for (NDS 12.1.4.6, 12.1.5.6, 12.1.6.4), mm.
    pub required_penetration_mm: f64,
    /// Whether the penetration is at least that.
    pub penetration: Outcome,
}

/// Reference withdrawal capacity of a wood screw, lag screw or nail.
///
/// # Equation
/// ```text
/// W: lag screw             1800 G^1.5 D^0.75     (12.2-1)     smooth stainless nail   465 G^1.5 D   (12.2-4)
///    wood screw            2850 G² D             (12.2-2)     ring shank nail        1800 G² D      (12.2-5)
///    smooth nail, spike    1380 G^2.5 D          (12.2-3)     lbf per inch of holding length, D in inches
/// reference = W p_t × grain factor
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | G | specific gravity, oven-dry | – | `specific_gravity` |
/// | D | nominal diameter | mm (in inside) | `nominal_diameter_mm` |
/// | p_t | holding length | mm | `holding_length_mm` |
///
/// # Limits
/// Allowable-stress values at normal load duration. Wood screws and nails in end grain carry no withdrawal: the value is
/// 0 and the grain rule says so. The steel's own tension at the thread root (NDS 12.2.1.4, 12.2.2.5) is not looked at.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// NDS 2018 12.2, Eq. 12.2-1 to 12.2-3 seen in public extracts, 12.2-4 and 12.2-5 recalled. Checked by
/// `verification/withdrawal_nds`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::{DowelFastener, FastenerDirection, FastenerWithdrawalInput, fastener_withdrawal};
/// let screw = fastener_withdrawal(&FastenerWithdrawalInput {
///     fastener: DowelFastener::WoodScrew,
///     specific_gravity: 0.42,
///     nominal_diameter_mm: 4.826, // No. 10
///     holding_length_mm: 40.0,
///     penetration_mm: None,
///     direction: FastenerDirection::SideGrain,
/// })?;
/// assert!((screw.reference_n - 669.0).abs() < 1.0);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn fastener_withdrawal(input: &FastenerWithdrawalInput) -> Result<FastenerWithdrawal, Fault> {
    input.check_ranges()?;
    Ok(withdrawal(input))
}

/// [`fastener_withdrawal`] of numbers already within their ranges.
pub(super) fn withdrawal(input: &FastenerWithdrawalInput) -> FastenerWithdrawal {
    let gravity = input.specific_gravity;
    let diameter_in = input.nominal_diameter_mm / INCH_MM;
    let lbf_per_in = match input.fastener {
        DowelFastener::LagScrew => 1_800.0 * pow(gravity, 1.5) * pow(diameter_in, 0.75),
        DowelFastener::WoodScrew => 2_850.0 * gravity * gravity * diameter_in,
        DowelFastener::SmoothNail => 1_380.0 * pow(gravity, 2.5) * diameter_in,
        DowelFastener::SmoothStainlessNail => 465.0 * pow(gravity, 1.5) * diameter_in,
        DowelFastener::RingShankNail => 1_800.0 * gravity * gravity * diameter_in,
    };
    let side_grain_n_per_mm = lbf_per_in * (POUND_FORCE_N / INCH_MM);
    let (grain_rule, grain_factor) = match (input.direction, input.fastener) {
        (FastenerDirection::SideGrain, _) => (EndGrainRule::SideGrain, 1.0),
        (FastenerDirection::EndGrain, DowelFastener::LagScrew) => (EndGrainRule::EndGrainReduced, 0.75),
        (FastenerDirection::EndGrain, _) => (EndGrainRule::EndGrainNotPermitted, 0.0),
    };
    let required_penetration_mm = required_penetration_mm(input.fastener, input.nominal_diameter_mm);
    let penetration_mm = input.penetration_mm.unwrap_or(input.holding_length_mm);
    FastenerWithdrawal {
        side_grain_n_per_mm,
        grain_rule,
        grain_factor,
        reference_n: side_grain_n_per_mm * input.holding_length_mm * grain_factor,
        required_penetration_mm,
        penetration: at_least(penetration_mm, required_penetration_mm),
    }
}

/// Least penetration: four diameters for lag screws, six for wood screws and nails.
fn required_penetration_mm(fastener: DowelFastener, diameter_mm: f64) -> f64 {
    let diameters = if fastener == DowelFastener::LagScrew { 4.0 } else { 6.0 };
    diameters * diameter_mm
}

/// Whether a length reaches what is asked for; a rounding of the last digit does not decide.
fn at_least(length_mm: f64, required_mm: f64) -> Outcome {
    if length_mm >= required_mm - super::EDGE_MM { Outcome::Met } else { Outcome::NotMet }
}

/// Which part of the pull-through equation applies.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum PullThroughRange {
    /// Side member up to 2.5 head diameters thick: the value grows with the thickness.
    ThinSideMember,
    /// Thicker side member: more thickness adds nothing.
    ThickSideMember,
}

/// A fastener head pulled through its side member.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<HeadPullThroughInput>))]
pub struct HeadPullThroughInput {
    /// Specific gravity of the side member, from oven-dry mass and volume.
    pub specific_gravity: f64,
    /// Diameter of the head, mm.
    pub head_diameter_mm: f64,
    /// Net thickness of the side member under the head, mm; a counterbore taken off.
    pub net_side_thickness_mm: f64,
}

limited!(HeadPullThroughInput {
    specific_gravity: SPECIFIC_GRAVITY,
    head_diameter_mm: HEAD_DIAMETER,
    net_side_thickness_mm: BEARING_LENGTH
});

/// Pull-through capacity of one fastener head.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct HeadPullThrough {
    /// Part of the equation that applies.
    pub thickness_range: PullThroughRange,
    /// Thickness that counts: the net thickness, at most 2.5 head diameters, mm.
    pub counted_thickness_mm: f64,
    /// Reference pull-through value W_H (NDS Eq. 12.2-6), before any adjustment factor, N.
    pub reference_n: f64,
}

/// Reference capacity of a round fastener head against pulling through a wood side member.
///
/// # Equation
/// ```text
/// W_H = 690 π D_H G² t_ns             t_ns ≤ 2.5 D_H
/// W_H = 1725 π D_H² G²                t_ns > 2.5 D_H        lbf, inches
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | D_H | head diameter | mm (in inside) | `head_diameter_mm` |
/// | G | specific gravity of the side member | – | `specific_gravity` |
/// | t_ns | net side member thickness | mm (in inside) | `net_side_thickness_mm` |
///
/// # Limits
/// Round heads on wood side members; allowable-stress values at normal load duration. The equation knows no countersink:
/// for a countersunk head take off what the head cuts away when in doubt.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// NDS 2018 12.2.5, Eq. 12.2-6 (recalled; the two parts meet at 2.5 D_H).
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::{HeadPullThroughInput, head_pull_through};
/// let input = HeadPullThroughInput { specific_gravity: 0.5, head_diameter_mm: 9.2, net_side_thickness_mm: 18.0 };
/// assert!(head_pull_through(&input)?.reference_n > 500.0);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn head_pull_through(input: &HeadPullThroughInput) -> Result<HeadPullThrough, Fault> {
    input.check_ranges()?;
    Ok(pull_through(input))
}

/// [`head_pull_through`] of numbers already within their ranges.
pub(super) fn pull_through(input: &HeadPullThroughInput) -> HeadPullThrough {
    let most_mm = 2.5 * input.head_diameter_mm;
    let thickness_range = if input.net_side_thickness_mm > most_mm {
        PullThroughRange::ThickSideMember
    } else {
        PullThroughRange::ThinSideMember
    };
    let counted_thickness_mm = input.net_side_thickness_mm.min(most_mm);
    let gravity = input.specific_gravity;
    // 1725 = 690 × 2.5: the thick part is the thin one at 2.5 head diameters. A product of two lengths: psi to MPa.
    let stress_mpa = 690.0 * PSI_MPA;
    let reference_n = stress_mpa * PI * input.head_diameter_mm * gravity * gravity * counted_thickness_mm;
    HeadPullThrough { thickness_range, counted_thickness_mm, reference_n }
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const FASTENER_WITHDRAWAL: crate::json::Calculation = crate::json::calculation!(
    fastener_withdrawal: FastenerWithdrawalInput => FastenerWithdrawal, Typed,
    "Withdrawal capacity of a wood screw, lag screw or nail, with its least penetration and the end-grain rule"
);

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const HEAD_PULL_THROUGH: crate::json::Calculation = crate::json::calculation!(
    head_pull_through: HeadPullThroughInput => HeadPullThrough, Typed,
    "Capacity of a round fastener head against pulling through its side member"
);

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    const KINDS: [DowelFastener; 5] = [
        DowelFastener::WoodScrew,
        DowelFastener::LagScrew,
        DowelFastener::SmoothNail,
        DowelFastener::SmoothStainlessNail,
        DowelFastener::RingShankNail,
    ];

    fn pulled(fastener: DowelFastener, direction: FastenerDirection) -> FastenerWithdrawalInput {
        FastenerWithdrawalInput {
            fastener,
            specific_gravity: 0.5,
            nominal_diameter_mm: 6.35,
            holding_length_mm: 25.4,
            penetration_mm: None,
            direction,
        }
    }

    // NDS 2018 Table 12.2A (recalled): 1/4 in lag screw in G 0.50, 225 lbf per inch.
    #[test]
    fn end_grain_reduces_lag_screws_and_forbids_the_others() {
        for kind in KINDS {
            let side = fastener_withdrawal(&pulled(kind, FastenerDirection::SideGrain)).unwrap();
            let end = fastener_withdrawal(&pulled(kind, FastenerDirection::EndGrain)).unwrap();
            assert_eq!((side.grain_rule, side.grain_factor), (EndGrainRule::SideGrain, 1.0));
            if kind == DowelFastener::LagScrew {
                assert!((side.reference_n / POUND_FORCE_N - 225.0).abs() < 1e-9);
                assert_eq!(end.grain_rule, EndGrainRule::EndGrainReduced);
                assert!((end.reference_n / side.reference_n - 0.75).abs() < 1e-12);
            } else {
                assert_eq!((end.grain_rule, end.reference_n), (EndGrainRule::EndGrainNotPermitted, 0.0));
            }
        }
    }

    // NDS 12.1.4.6, 12.1.5.6, 12.1.6.4.
    #[test]
    fn the_least_penetration_is_four_or_six_diameters() {
        for kind in KINDS {
            let required_mm = if kind == DowelFastener::LagScrew { 25.4 } else { 38.1 };
            let mut input = pulled(kind, FastenerDirection::SideGrain);
            input.penetration_mm = Some(required_mm);
            let found = fastener_withdrawal(&input).unwrap();
            assert!((found.required_penetration_mm - required_mm).abs() < 1e-9);
            assert_eq!(found.penetration, Outcome::Met);
            input.penetration_mm = Some(required_mm - 0.01);
            assert_eq!(fastener_withdrawal(&input).unwrap().penetration, Outcome::NotMet);
        }
    }

    // NDS Eq. 12.2-6: 690 π D_H G² t in pounds and inches, and 1725 π D_H² G² beyond 2.5 head diameters.
    #[test]
    fn pull_through_grows_up_to_two_and_a_half_heads() {
        let head = |net_side_thickness_mm: f64| {
            let input = HeadPullThroughInput { specific_gravity: 0.5, head_diameter_mm: 10.16, net_side_thickness_mm };
            head_pull_through(&input).unwrap()
        };
        let thin_lbf = 690.0 * PI * 0.4 * 0.25 * 0.75;
        assert!((head(0.75 * 25.4).reference_n / POUND_FORCE_N / thin_lbf - 1.0).abs() < 1e-12);
        let thick_lbf = 1725.0 * PI * 0.16 * 0.25;
        assert!((head(50.8).reference_n / POUND_FORCE_N / thick_lbf - 1.0).abs() < 1e-12);
        assert_eq!(head(25.4).thickness_range, PullThroughRange::ThinSideMember);
        assert_eq!(head(25.41).thickness_range, PullThroughRange::ThickSideMember);
        assert_eq!(head(25.41).reference_n, head(25.4).reference_n);
    }

    proptest! {
        #[test]
        fn withdrawal_grows_with_density_diameter_and_length(g in 0.3..0.8_f64, d in 2.0..12.0_f64, l in 5.0..100.0_f64) {
            for kind in KINDS {
                let at = |specific_gravity, nominal_diameter_mm, holding_length_mm| {
                    let input = FastenerWithdrawalInput {
                        specific_gravity,
                        nominal_diameter_mm,
                        holding_length_mm,
                        ..pulled(kind, FastenerDirection::SideGrain)
                    };
                    fastener_withdrawal(&input).unwrap().reference_n
                };
                let base = at(g, d, l);
                prop_assert!(at(g * 1.1, d, l) > base && at(g, d * 1.1, l) > base);
                prop_assert!((at(g, d, 2.0 * l) / base - 2.0).abs() < 1e-12);
            }
        }

        #[test]
        fn hostile_numbers_give_a_fault_or_finite_results(a in any::<u64>(), b in any::<u64>(), c in any::<u64>(), which in 0_u8..8) {
            let pick = |bit: u8, bits: u64, fair: f64| if which >> bit & 1 == 0 { f64::from_bits(bits) } else { fair };
            for kind in KINDS {
                let input = FastenerWithdrawalInput {
                    specific_gravity: pick(0, a, 0.05),
                    nominal_diameter_mm: pick(1, b, 1.0),
                    holding_length_mm: pick(2, c, 1_000.0),
                    ..pulled(kind, FastenerDirection::SideGrain)
                };
                if let Ok(found) = fastener_withdrawal(&input) {
                    prop_assert!(found.reference_n.is_finite() && found.reference_n > 0.0);
                }
            }
            let input = HeadPullThroughInput {
                specific_gravity: pick(0, a, 1.5),
                head_diameter_mm: pick(1, b, 100.0),
                net_side_thickness_mm: pick(2, c, 0.1),
            };
            if let Ok(found) = head_pull_through(&input) {
                prop_assert!(found.reference_n.is_finite() && found.reference_n > 0.0);
            }
        }
    }
}
