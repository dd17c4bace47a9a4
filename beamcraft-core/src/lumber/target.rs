//! The size to saw to, so that hardly any piece ends too thin.

use crate::error::Fault;
use crate::limits::{Limited, limited};
use crate::numeric::normal::normal_quantile;

/// A finished size and everything that takes wood away before it.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<TargetRoughSizeInput>))]
pub struct TargetRoughSizeInput {
    /// Finished size, mm.
    pub finished_mm: f64,
    /// Wood planed off each of the two faces, mm; 0.76 (0.030 in) is a sawmill's published allowance, a hand-fed planer
    /// takes more.
    pub planing_each_face_mm: f64,
    /// Size lost in drying, mm; 0 for dry stock.
    #[cfg_attr(feature = "json", serde(default))]
    pub shrinkage_mm: f64,
    /// Standard deviation of the sawn size, mm.
    #[cfg_attr(feature = "json", serde(default))]
    pub scatter_mm: f64,
    /// Share of pieces that may end undersize, %.
    #[cfg_attr(feature = "json", serde(default = "five_in_a_hundred"))]
    pub undersize_pct: f64,
}

limited!(TargetRoughSizeInput {
    finished_mm: BOARD_THICKNESS,
    planing_each_face_mm: SMALL_LENGTH,
    shrinkage_mm: SMALL_LENGTH,
    scatter_mm: SIZE_SPREAD,
    undersize_pct: UNDERSIZE,
});

#[cfg(feature = "json")]
fn five_in_a_hundred() -> f64 {
    5.0
}

/// The size to saw to.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct TargetRoughSize {
    /// Least rough size that can be planed to the finished one, mm.
    pub critical_mm: f64,
    /// Standard deviations above it.
    pub deviations: f64,
    /// Mean size to saw to, mm.
    pub target_mm: f64,
}

/// The mean rough size that leaves a finished size with at most a given share of pieces too thin.
///
/// # Equation
/// ```text
/// critical = finished + 2 p + shrinkage        target = critical + z s        z = Phi^-1(1 - undersize)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | p | planing a face | mm | `planing_each_face_mm` |
/// | s | scatter of the sawn size | mm | `scatter_mm` |
/// | z | normal quantile | – | `deviations` |
///
/// # Limits
/// Sizes scattered by the normal distribution. Planing wood takes hands off where guards are off; dust harms lungs.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// Oregon State University Extension, EM 8731 (2000), lumber size control. Checked by `verification/lumber`.
///
/// # Examples
/// ```
/// use beamcraft_core::lumber::{target_rough_size, TargetRoughSizeInput};
/// let found = target_rough_size(&TargetRoughSizeInput {
///     finished_mm: 19.0, planing_each_face_mm: 1.5, shrinkage_mm: 0.0, scatter_mm: 0.5, undersize_pct: 5.0,
/// })?;
/// assert!((found.critical_mm - 22.0).abs() < 1e-12 && (found.target_mm - 22.82).abs() < 0.01);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn target_rough_size(input: &TargetRoughSizeInput) -> Result<TargetRoughSize, Fault> {
    input.check_ranges()?;
    let critical_mm = input.finished_mm + 2.0 * input.planing_each_face_mm + input.shrinkage_mm;
    let deviations = normal_quantile(1.0 - input.undersize_pct / 100.0);
    Ok(TargetRoughSize { critical_mm, deviations, target_mm: critical_mm + deviations * input.scatter_mm })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const TARGET_ROUGH_SIZE: crate::json::Calculation = crate::json::calculation!(
    target_rough_size: TargetRoughSizeInput => TargetRoughSize, Typed,
    "The mean rough size that leaves a finished size with few pieces too thin"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lumber::hostile;
    use proptest::prelude::*;

    fn target(scatter_mm: f64, undersize_pct: f64) -> f64 {
        let input = TargetRoughSizeInput {
            finished_mm: 20.0,
            planing_each_face_mm: 1.0,
            shrinkage_mm: 0.5,
            scatter_mm,
            undersize_pct,
        };
        target_rough_size(&input).expect("in range").target_mm
    }

    #[test]
    fn even_saws_need_no_reserve() {
        assert_eq!(target(0.0, 0.1), 22.5);
        assert!((target(1.0, 50.0) - 22.5).abs() < 1e-12);
    }

    proptest! {
        #[test]
        fn a_stricter_share_never_needs_less(s in 0.0..3.0_f64, share in 0.1..50.0_f64, less in 0.1..1.0_f64) {
            prop_assert!(target(s, (share * less).max(0.1)) >= target(s, share) - 1e-12);
        }

        #[test]
        fn any_numbers_give_a_finite_size_or_a_fault(
            a in hostile::number(), b in hostile::number(), c in hostile::number(), d in hostile::number(), e in hostile::number(),
        ) {
            let input = TargetRoughSizeInput {
                finished_mm: a, planing_each_face_mm: b, shrinkage_mm: c, scatter_mm: d, undersize_pct: e,
            };
            if let Ok(found) = target_rough_size(&input) {
                prop_assert!(found.target_mm.is_finite() && found.target_mm >= found.critical_mm - 1e-9);
            }
        }
    }
}
