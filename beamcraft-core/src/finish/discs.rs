//! Abrasive discs for the sanding steps.

use crate::error::Fault;
use crate::limits::{Limited, limited};

/// An area to sand and how long a disc lasts.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<SandingDiscsInput>))]
pub struct SandingDiscsInput {
    /// Area to sand, m².
    pub area_m2: f64,
    /// Number of sanding steps, each with its own grade.
    pub steps: u32,
    /// Area that one disc sands before it is dull, m²; from experience with this wood, no figure is published.
    pub area_a_disc_m2: f64,
}

limited!(SandingDiscsInput { area_m2: AREA, steps: COUNT, area_a_disc_m2: DISC_AREA });

/// Discs to have in hand.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SandingDiscs {
    /// Discs of each grade.
    pub discs_a_step: u32,
    /// Discs in all.
    pub discs: u32,
    /// Area that is left in the last disc of a step, m².
    pub spare_m2: f64,
}

/// How many abrasive discs the sanding takes.
///
/// # Equation
/// ```text
/// n = steps × ceil(A / a)        no grade is begun with a dull disc
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | A | area | m² | `area_m2` |
/// | a | area a disc lasts for | m² | `area_a_disc_m2` |
///
/// # Limits
/// Whole discs a grade. Wood dust harms lungs and can burn: extract at the tool and wear a mask suited to the species.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// Arithmetic. Checked by `verification/clamps`.
///
/// # Examples
/// ```
/// use beamcraft_core::finish::{sanding_discs, SandingDiscsInput};
/// assert_eq!(sanding_discs(&SandingDiscsInput { area_m2: 1.6, steps: 4, area_a_disc_m2: 0.5 })?.discs, 16);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn sanding_discs(input: &SandingDiscsInput) -> Result<SandingDiscs, Fault> {
    input.check_ranges()?;
    // At most a million square metres over a hundredth, and ten thousand steps: saturates, never wraps.
    let discs_a_step = (input.area_m2 / input.area_a_disc_m2 - 1e-9).ceil().max(0.0) as u32;
    let spare_m2 = (f64::from(discs_a_step) * input.area_a_disc_m2 - input.area_m2).max(0.0);
    Ok(SandingDiscs { discs_a_step, discs: discs_a_step.saturating_mul(input.steps), spare_m2 })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const SANDING_DISCS: crate::json::Calculation = crate::json::calculation!(
    sanding_discs: SandingDiscsInput => SandingDiscs, Typed,
    "How many abrasive discs the sanding takes"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::finish::hostile;
    use proptest::prelude::*;

    #[test]
    fn a_whole_number_of_discs_is_not_rounded_up() {
        let discs =
            |area_m2| sanding_discs(&SandingDiscsInput { area_m2, steps: 1, area_a_disc_m2: 0.1 }).unwrap().discs;
        assert_eq!((discs(0.3), discs(0.31), discs(0.0)), (3, 4, 0));
    }

    proptest! {
        #[test]
        fn any_numbers_give_discs_or_a_fault(a in hostile::number(), b in hostile::number(), steps: u32) {
            if let Ok(found) = sanding_discs(&SandingDiscsInput { area_m2: a, steps, area_a_disc_m2: b }) {
                prop_assert!(found.discs >= found.discs_a_step);
            }
        }
    }
}
