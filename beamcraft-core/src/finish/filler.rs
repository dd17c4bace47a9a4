//! Filler for the seams that stay open.

use crate::error::Fault;
use crate::limits::{Limited, limited};

/// Seams after glue-up, as the tolerance stack-up foretells them.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<SeamFillerInput>))]
pub struct SeamFillerInput {
    /// Length of all seams that show, mm.
    pub seam_length_mm: f64,
    /// Share of the seams that need filler.
    pub share_to_fill: f64,
    /// Width of the gap at the show face where it is filled, mm.
    pub gap_mm: f64,
    /// Depth to which the gap reaches, mm; a seam that is closed inside tapers to nothing there.
    pub depth_mm: f64,
    /// Share on top that is wiped and sanded off; no figure is published.
    #[cfg_attr(feature = "json", serde(default))]
    pub waste_share: f64,
}

limited!(SeamFillerInput {
    seam_length_mm: LENGTH,
    share_to_fill: FRACTION,
    gap_mm: SMALL_LENGTH,
    depth_mm: BOARD_THICKNESS,
    waste_share: ALLOWANCE,
});

/// Filler to mix.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SeamFiller {
    /// Length of seam to fill, mm.
    pub filled_length_mm: f64,
    /// Volume in the seams, ml.
    pub net_ml: f64,
    /// Volume with waste, ml.
    pub volume_ml: f64,
}

/// How much colour-matched filler the open seams take.
///
/// # Equation
/// ```text
/// V = L share (g d / 2) (1 + w)        a wedge: g wide at the show face, nothing at depth d
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | L | length of the seams | mm | `seam_length_mm` |
/// | g, d | gap and its depth | mm | `gap_mm`, `depth_mm` |
/// | w | waste on top | – | `waste_share` |
///
/// # Limits
/// Mix it from the dust of the same boards and the finish that follows, and try it on an offcut: filler takes stain and oil
/// unlike wood. A burnished arris closes small gaps without any.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// Plane geometry (derived). Checked by `verification/clamps`.
///
/// # Examples
/// ```
/// use beamcraft_core::finish::{seam_filler, SeamFillerInput};
/// let filler = seam_filler(&SeamFillerInput {
///     seam_length_mm: 4000.0, share_to_fill: 0.25, gap_mm: 0.2, depth_mm: 20.0, waste_share: 1.0,
/// })?;
/// assert!((filler.volume_ml - 4.0).abs() < 1e-12);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn seam_filler(input: &SeamFillerInput) -> Result<SeamFiller, Fault> {
    input.check_ranges()?;
    let filled_length_mm = input.seam_length_mm * input.share_to_fill;
    let net_ml = filled_length_mm * input.gap_mm * input.depth_mm / 2.0 * 1e-3;
    Ok(SeamFiller { filled_length_mm, net_ml, volume_ml: net_ml * (1.0 + input.waste_share) })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const SEAM_FILLER: crate::json::Calculation = crate::json::calculation!(
    seam_filler: SeamFillerInput => SeamFiller, Typed,
    "How much colour-matched filler the open seams take"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::finish::hostile;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn a_wider_gap_takes_more(gap_mm in 0.0..2.0_f64, more in 0.0..1.0_f64, share in 0.0..1.0_f64) {
            let volume = |gap_mm| {
                let input =
                    SeamFillerInput { seam_length_mm: 3e3, share_to_fill: share, gap_mm, depth_mm: 19.0, waste_share: 0.5 };
                seam_filler(&input).expect("in range").volume_ml
            };
            prop_assert!(volume(gap_mm + more) >= volume(gap_mm));
            prop_assert_eq!(volume(0.0), 0.0);
        }

        #[test]
        fn any_numbers_give_a_finite_volume_or_a_fault(
            a in hostile::number(), b in hostile::number(), c in hostile::number(), d in hostile::number(), e in hostile::number(),
        ) {
            let input =
                SeamFillerInput { seam_length_mm: a, share_to_fill: b, gap_mm: c, depth_mm: d, waste_share: e };
            if let Ok(found) = seam_filler(&input) {
                prop_assert!(found.volume_ml.is_finite() && found.volume_ml >= found.net_ml);
            }
        }
    }
}
