//! Clamps for a glue line: how many, how far apart, and the pressure they reach.

use crate::cite::{Clause, Source};
use crate::error::Fault;
use crate::limits::{Limited, limited};
use crate::units::factor::PSI_MPA;

/// How much pressure a wood wants.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum ClampedWood {
    /// Softwood and soft hardwood such as poplar: 0.69 to 1.03 MPa (100 to 150 psi).
    Soft,
    /// Hardwood: 1.21 to 1.72 MPa (175 to 250 psi).
    Hard,
}

impl ClampedWood {
    /// Lower and upper advised pressure, MPa.
    const fn advised_mpa(self) -> (f64, f64) {
        match self {
            Self::Soft => (100.0 * PSI_MPA, 150.0 * PSI_MPA),
            Self::Hard => (175.0 * PSI_MPA, 250.0 * PSI_MPA),
        }
    }
}

/// A straight glue line and the clamps at hand.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<ClampsForSeamInput>))]
pub struct ClampsForSeamInput {
    /// Length of the glue line, mm.
    pub seam_length_mm: f64,
    /// Width of the glue line across the joint, mm; of a mitre, the cut face.
    pub seam_width_mm: f64,
    /// Distance from the clamp's head to the glue line, mm, with the caul between them.
    pub head_to_seam_mm: f64,
    /// Width of the clamp's head along the seam, mm.
    #[cfg_attr(feature = "json", serde(default))]
    pub head_width_mm: f64,
    /// Force of one clamp square to the glue line, N; of stretched tape, what a spring balance shows.
    pub clamp_force_n: f64,
    /// What is glued.
    pub wood: ClampedWood,
}

limited!(ClampsForSeamInput {
    seam_length_mm: LEVER,
    seam_width_mm: BOARD_THICKNESS,
    head_to_seam_mm: LENGTH,
    head_width_mm: SMALL_LENGTH,
    clamp_force_n: CLAMP_FORCE,
});

/// Whether the pressure is what the wood wants.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum ClampPressure {
    /// Less than advised: the joint must meet without force, and thin glue lines are the work of the fit alone.
    Low,
    /// Within the advised range.
    Advised,
    /// More than advised: glue may be pressed out.
    High,
}

/// The clamps.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct ClampsForSeam {
    /// Greatest distance between clamps that leaves no part of the seam unpressed, mm.
    pub greatest_spacing_mm: f64,
    /// Clamps needed for that distance.
    pub clamps_by_spacing: u32,
    /// Advised pressure, lower end, MPa.
    pub advised_low_mpa: f64,
    /// Advised pressure, upper end, MPa.
    pub advised_high_mpa: f64,
    /// Force on the whole seam at the lower end, N.
    pub force_low_n: f64,
    /// Force on the whole seam at the upper end, N.
    pub force_high_n: f64,
    /// Clamps needed for the lower end.
    pub clamps_by_force: u32,
    /// Pressure with the clamps that the spacing needs, MPa.
    pub reached_mpa: f64,
    /// What that pressure is worth.
    pub reached: ClampPressure,
    /// Where spacing and pressures come from.
    pub clause: Clause,
}

/// How many clamps a seam needs, by spacing and by pressure, and what pressure the spacing alone reaches.
///
/// # Equation
/// ```text
/// spacing ≤ 2 d + h        F = p L w        p_reached = n F_clamp / (L w)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | d | clamp head to glue line | mm | `head_to_seam_mm` |
/// | h | width of the head | mm | `head_width_mm` |
/// | L, w | length and width of the glue line | mm | `seam_length_mm`, `seam_width_mm` |
/// | p | pressure | MPa | `advised_low_mpa`, `advised_high_mpa` |
///
/// The force of a clamp fans out at 45° to each side. A stiff caul spreads it further and saves clamps.
///
/// # Limits
/// The cone is geometry, the pressures are advice; the glue's own sheet governs. Folding a mitre on tape, and cauls held by a
/// few clamps, reach a small part of the advised pressure: that joint lives from its fit, with fresh and straight cuts.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// Trade articles on clamp pressure and on the pressure cone (public copies). Checked by `verification/clamps`.
///
/// # Examples
/// ```
/// use beamcraft_core::finish::{clamps_for_seam, ClampPressure, ClampedWood, ClampsForSeamInput};
/// let tape = clamps_for_seam(&ClampsForSeamInput {
///     seam_length_mm: 1500.0, seam_width_mm: 28.0, head_to_seam_mm: 20.0, head_width_mm: 50.0, clamp_force_n: 60.0,
///     wood: ClampedWood::Hard,
/// })?;
/// assert_eq!((tape.clamps_by_spacing, tape.reached), (17, ClampPressure::Low));
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn clamps_for_seam(input: &ClampsForSeamInput) -> Result<ClampsForSeam, Fault> {
    input.check_ranges()?;
    let ClampsForSeamInput { seam_length_mm, seam_width_mm, head_to_seam_mm, head_width_mm, clamp_force_n, wood } =
        *input;
    let area_mm2 = seam_length_mm * seam_width_mm;
    // A clamp presses at least as far as its seam is deep in wood: a millimetre keeps the count finite.
    let greatest_spacing_mm = (2.0 * head_to_seam_mm + head_width_mm).max(1.0);
    let (advised_low_mpa, advised_high_mpa) = wood.advised_mpa();
    let clamps_by_spacing = whole_clamps(seam_length_mm / greatest_spacing_mm);
    let reached_mpa = f64::from(clamps_by_spacing) * clamp_force_n / area_mm2;
    Ok(ClampsForSeam {
        greatest_spacing_mm,
        clamps_by_spacing,
        advised_low_mpa,
        advised_high_mpa,
        force_low_n: advised_low_mpa * area_mm2,
        force_high_n: advised_high_mpa * area_mm2,
        clamps_by_force: whole_clamps(advised_low_mpa * area_mm2 / clamp_force_n),
        reached_mpa,
        reached: match reached_mpa {
            p if p < advised_low_mpa => ClampPressure::Low,
            p if p > advised_high_mpa => ClampPressure::High,
            _ => ClampPressure::Advised,
        },
        clause: Clause::new(Source::ClampArticles, ""),
    })
}

/// At least one clamp; a hair over a whole number is that number.
fn whole_clamps(clamps: f64) -> u32 {
    // At most 10 m of seam over a millimetre, or 1.5 m² under a newton.
    (clamps - 1e-9).ceil().max(1.0) as u32
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const CLAMPS_FOR_SEAM: crate::json::Calculation = crate::json::calculation!(
    clamps_for_seam: ClampsForSeamInput => ClampsForSeam, Document,
    "How many clamps a seam needs, and what pressure they reach"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::finish::hostile;
    use proptest::prelude::*;

    fn clamps(seam_length_mm: f64, head_to_seam_mm: f64, clamp_force_n: f64) -> ClampsForSeam {
        let input = ClampsForSeamInput {
            seam_length_mm,
            seam_width_mm: 25.0,
            head_to_seam_mm,
            head_width_mm: 0.0,
            clamp_force_n,
            wood: ClampedWood::Soft,
        };
        clamps_for_seam(&input).expect("in range")
    }

    #[test]
    fn the_pressure_reached_is_told_from_the_pressure_advised() {
        assert_eq!(clamps(1000.0, 100.0, 100.0).reached, ClampPressure::Low);
        assert_eq!(clamps(1000.0, 100.0, 4_000.0).reached, ClampPressure::Advised);
        assert_eq!(clamps(1000.0, 100.0, 10_000.0).reached, ClampPressure::High);
    }

    proptest! {
        #[test]
        fn a_wider_caul_never_needs_more_clamps(l in 10.0..5e3_f64, d in 0.0..300.0_f64, more in 0.0..100.0_f64) {
            prop_assert!(clamps(l, d + more, 500.0).clamps_by_spacing <= clamps(l, d, 500.0).clamps_by_spacing);
        }

        #[test]
        fn any_numbers_give_clamps_or_a_fault(
            a in hostile::number(), b in hostile::number(), c in hostile::number(), d in hostile::number(), e in hostile::number(),
        ) {
            let input = ClampsForSeamInput {
                seam_length_mm: a, seam_width_mm: b, head_to_seam_mm: c, head_width_mm: d, clamp_force_n: e,
                wood: ClampedWood::Hard,
            };
            if let Ok(found) = clamps_for_seam(&input) {
                prop_assert!(found.reached_mpa.is_finite() && found.clamps_by_force >= 1 && found.force_high_n.is_finite());
            }
        }
    }
}
