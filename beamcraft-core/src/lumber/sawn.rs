//! Sawn European softwood: its size at another moisture and its allowed deviation.

use crate::cite::{Clause, Source};
use crate::error::Fault;
use crate::limits::{Limited, limited};

/// Class of allowed deviation.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum SawnClass {
    /// Sawn.
    #[default]
    T1,
    /// Planed.
    T2,
}

/// A target size of sawn softwood.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<SawnSizeInput>))]
pub struct SawnSizeInput {
    /// Thickness or width that was asked for, at 20 % moisture, mm.
    pub target_mm: f64,
    /// Sawn or planed.
    #[cfg_attr(feature = "json", serde(default))]
    pub class: SawnClass,
    /// Moisture content at which it is measured, %.
    #[cfg_attr(feature = "json", serde(default = "reference_moisture"))]
    pub moisture_pct: f64,
}

limited!(SawnSizeInput { target_mm: PANEL_WIDTH, moisture_pct: MOISTURE });

/// Moisture content the sizes are stated at, %.
const REFERENCE_MOISTURE_PCT: f64 = 20.0;

#[cfg(feature = "json")]
fn reference_moisture() -> f64 {
    REFERENCE_MOISTURE_PCT
}

/// Change of size a percent of moisture, as a share.
const CHANGE_A_PERCENT: f64 = 0.0025;

/// What may be found with a caliper.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SawnSize {
    /// Size at the given moisture, mm.
    pub size_mm: f64,
    /// Allowed below the target, mm.
    pub under_mm: f64,
    /// Allowed above the target, mm.
    pub over_mm: f64,
    /// Least single size at the given moisture, mm.
    pub least_mm: f64,
    /// Greatest single size at the given moisture, mm.
    pub greatest_mm: f64,
    /// Where the deviations come from.
    pub deviation_from: Clause,
    /// Where the change with moisture comes from.
    pub moisture_from: Clause,
}

/// The size of sawn softwood at a moisture, and how much a single piece may be off.
///
/// # Equation
/// ```text
/// size = target (1 + 0.0025 (u - 20))
/// T1: -1/+3 mm up to 100 mm, -2/+4 mm above        T2: ±1 mm up to 100 mm, ±1.5 mm above
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | u | moisture content | % | `moisture_pct` |
///
/// # Limits
/// Softwood, up to fibre saturation. The mean of a parcel may not lie under the target. For the movement of a panel by
/// species and cut use the movement calculations instead.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// EN 1313-1:2010 (preview) and EN 336 (public summaries). Checked by `verification/lumber`.
///
/// # Examples
/// ```
/// use beamcraft_core::lumber::{sawn_size, SawnClass, SawnSizeInput};
/// let found = sawn_size(&SawnSizeInput { target_mm: 100.0, class: SawnClass::T1, moisture_pct: 12.0 })?;
/// assert!((found.size_mm - 98.0).abs() < 1e-12);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn sawn_size(input: &SawnSizeInput) -> Result<SawnSize, Fault> {
    input.check_ranges()?;
    let SawnSizeInput { target_mm, class, moisture_pct } = *input;
    let (under_mm, over_mm) = match (class, target_mm > 100.0) {
        (SawnClass::T1, false) => (1.0, 3.0),
        (SawnClass::T1, true) => (2.0, 4.0),
        (SawnClass::T2, false) => (1.0, 1.0),
        (SawnClass::T2, true) => (1.5, 1.5),
    };
    let scale = 1.0 + CHANGE_A_PERCENT * (moisture_pct - REFERENCE_MOISTURE_PCT);
    Ok(SawnSize {
        size_mm: target_mm * scale,
        under_mm,
        over_mm,
        least_mm: ((target_mm - under_mm) * scale).max(0.0),
        greatest_mm: (target_mm + over_mm) * scale,
        deviation_from: Clause::new(Source::En336, "tolerance classes"),
        moisture_from: Clause::new(Source::En1313, "change of size with moisture"),
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const SAWN_SIZE: crate::json::Calculation = crate::json::calculation!(
    sawn_size: SawnSizeInput => SawnSize, Document,
    "The size of sawn softwood at a moisture, and how much a single piece may be off"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lumber::hostile;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn a_wetter_board_is_larger(target_mm in 10.0..300.0_f64, u in 0.0..29.0_f64) {
            let size = |moisture_pct| {
                sawn_size(&SawnSizeInput { target_mm, class: SawnClass::T2, moisture_pct }).expect("in range")
            };
            prop_assert!(size(u + 1.0).size_mm > size(u).size_mm);
            prop_assert!((size(20.0).size_mm - target_mm).abs() < 1e-12);
        }

        #[test]
        fn any_numbers_give_a_size_or_a_fault(a in hostile::number(), b in hostile::number()) {
            if let Ok(found) = sawn_size(&SawnSizeInput { target_mm: a, class: SawnClass::T1, moisture_pct: b }) {
                prop_assert!(found.least_mm >= 0.0 && found.least_mm <= found.size_mm && found.size_mm <= found.greatest_mm);
            }
        }
    }
}
