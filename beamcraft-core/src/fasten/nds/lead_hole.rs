//! Holes to bore before a wood screw is driven.

use super::EDGE_MM;
use crate::error::{Allowed, ErrorCode, Fault};
use crate::limits::{Limited, limited};

/// Whether a hole must be bored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum LeadHoleNeed {
    /// The standard asks for a hole.
    Required,
    /// The standard lets the screw be driven without one.
    NotRequired,
}

/// A wood screw and the wood that it is driven into.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<LeadHoleInput>))]
pub struct LeadHoleInput {
    /// Specific gravity of the wood that is bored, from oven-dry mass and volume.
    pub specific_gravity: f64,
    /// Nominal diameter of the screw, mm.
    pub nominal_diameter_mm: f64,
    /// Diameter at the thread root, mm.
    pub root_diameter_mm: f64,
}

limited!(LeadHoleInput {
    specific_gravity: SPECIFIC_GRAVITY,
    nominal_diameter_mm: FASTENER_DIAMETER,
    root_diameter_mm: FASTENER_DIAMETER
});

/// Holes for one wood screw.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct LeadHole {
    /// Hole for the shank of a screw loaded laterally (NDS 12.1.5.3), mm.
    pub lateral_shank_hole_mm: f64,
    /// Hole for the thread of a screw loaded laterally (NDS 12.1.5.3), mm.
    pub lateral_thread_hole_mm: f64,
    /// Whether a screw loaded in withdrawal needs a hole (NDS 12.1.5.2).
    pub withdrawal_thread_hole: LeadHoleNeed,
    /// Hole for the thread of a screw loaded in withdrawal (NDS 12.1.5.2), mm; 0 where none is required.
    pub withdrawal_thread_hole_mm: f64,
}

/// Diameters of the holes to bore for a wood screw, by the density of the wood.
///
/// # Equation
/// | wood | lateral: shank, thread | withdrawal: thread |
/// |---|---|---|
/// | G > 0.6 | D, D_r | 0.90 D_r |
/// | 0.5 < G ≤ 0.6 | 7/8 D, 7/8 D_r | 0.70 D_r |
/// | G ≤ 0.5 | 7/8 D, 7/8 D_r | none required |
///
/// # Limits
/// The standard says "about": choose the nearest drill. A screw that carries both ways takes the hole of the load that
/// matters more; the smaller one holds better, the larger one splits less. The shank hole goes as deep as the shank.
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` when the root is thicker than the screw.
///
/// # Source
/// NDS 2018 12.1.5.2 and 12.1.5.3, seen in a public summary.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::{LeadHoleInput, LeadHoleNeed, lead_hole};
/// let input = LeadHoleInput { specific_gravity: 0.42, nominal_diameter_mm: 4.826, root_diameter_mm: 3.861 };
/// let hole = lead_hole(&input)?;
/// assert_eq!(hole.withdrawal_thread_hole, LeadHoleNeed::NotRequired);
/// assert!((hole.lateral_thread_hole_mm - 3.38).abs() < 0.01);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn lead_hole(input: &LeadHoleInput) -> Result<LeadHole, Fault> {
    input.check_ranges()?;
    let LeadHoleInput { specific_gravity, nominal_diameter_mm, root_diameter_mm } = *input;
    if root_diameter_mm > nominal_diameter_mm + EDGE_MM {
        return Err(Fault::number(
            ErrorCode::Inconsistent,
            "root_diameter_mm",
            root_diameter_mm,
            Allowed::Text("at most the nominal diameter"),
            "the root is the core of the thread, about two thirds of the nominal diameter",
        ));
    }
    let lateral = if specific_gravity > 0.6 { 1.0 } else { 0.875 };
    let (withdrawal_thread_hole, withdrawal) = if specific_gravity > 0.6 {
        (LeadHoleNeed::Required, 0.9)
    } else if specific_gravity > 0.5 {
        (LeadHoleNeed::Required, 0.7)
    } else {
        (LeadHoleNeed::NotRequired, 0.0)
    };
    Ok(LeadHole {
        lateral_shank_hole_mm: lateral * nominal_diameter_mm,
        lateral_thread_hole_mm: lateral * root_diameter_mm,
        withdrawal_thread_hole,
        withdrawal_thread_hole_mm: withdrawal * root_diameter_mm,
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const LEAD_HOLE: crate::json::Calculation = crate::json::calculation!(
    lead_hole: LeadHoleInput => LeadHole, Typed,
    "Diameters of the holes to bore for a wood screw, by the density of the wood"
);

#[cfg(test)]
mod tests {
    use super::*;

    fn holes(specific_gravity: f64) -> LeadHole {
        lead_hole(&LeadHoleInput { specific_gravity, nominal_diameter_mm: 6.0, root_diameter_mm: 4.0 }).unwrap()
    }

    // NDS 12.1.5.2 and 12.1.5.3, edges included.
    #[test]
    fn denser_wood_wants_larger_holes() {
        let (soft, medium, dense) = (holes(0.5), holes(0.6), holes(0.61));
        assert_eq!((soft.withdrawal_thread_hole, soft.withdrawal_thread_hole_mm), (LeadHoleNeed::NotRequired, 0.0));
        assert_eq!((soft.lateral_shank_hole_mm, soft.lateral_thread_hole_mm), (5.25, 3.5));
        assert_eq!((medium.lateral_shank_hole_mm, medium.lateral_thread_hole_mm), (5.25, 3.5));
        assert!((medium.withdrawal_thread_hole_mm - 2.8).abs() < 1e-12);
        assert_eq!((dense.lateral_shank_hole_mm, dense.lateral_thread_hole_mm), (6.0, 4.0));
        assert!((dense.withdrawal_thread_hole_mm - 3.6).abs() < 1e-12);
        assert_eq!(dense.withdrawal_thread_hole, LeadHoleNeed::Required);
    }

    #[test]
    fn a_root_thicker_than_the_screw_and_no_number_are_refused() {
        let input = LeadHoleInput { specific_gravity: 0.5, nominal_diameter_mm: 4.0, root_diameter_mm: 4.5 };
        assert_eq!(lead_hole(&input).expect_err("refused").code, ErrorCode::Inconsistent);
        let input = LeadHoleInput { specific_gravity: f64::INFINITY, ..input };
        assert_eq!(lead_hole(&input).expect_err("refused").field, "specific_gravity");
    }
}
