//! Glue for the bonded area of the joints.

use crate::error::Fault;
use crate::limits::{Limited, limited};
use crate::shell::{MitrePairInput, mitre_pair};

/// A bonded area and how the glue is spread on it.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<GlueQuantityInput>))]
pub struct GlueQuantityInput {
    /// Area of all glue lines, m²; each line counted once, though it has two faces.
    pub bond_area_m2: f64,
    /// Glue on one glue line, both faces together, g/m²; the maker's figure.
    pub spread_g_per_m2: f64,
    /// Share on top for squeeze-out, brush and pot; no published figure was found, so nothing is added unless given.
    #[cfg_attr(feature = "json", serde(default))]
    pub waste_share: f64,
    /// Density of the glue, kg per litre; the maker's figure.
    pub density_kg_per_l: f64,
}

limited!(GlueQuantityInput {
    bond_area_m2: AREA,
    spread_g_per_m2: GLUE_SPREAD,
    waste_share: ALLOWANCE,
    density_kg_per_l: LIQUID_DENSITY,
});

/// Glue to have in hand.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct GlueQuantity {
    /// Glue in the joints, grams.
    pub net_g: f64,
    /// Glue with waste, grams.
    pub mass_g: f64,
    /// Glue with waste, millilitres.
    pub volume_ml: f64,
    /// Wet film in the glue line, µm.
    pub wet_film_um: f64,
}

/// Grams and millilitres of glue for a bonded area.
///
/// # Equation
/// ```text
/// m = A s (1 + w)        V = m / rho        film = s / rho
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | A | area of the glue lines | m² | `bond_area_m2` |
/// | s | spread | g/m² | `spread_g_per_m2` |
/// | w | waste as a share on top | – | `waste_share` |
/// | rho | density | kg/L = g/mL | `density_kg_per_l` |
///
/// # Limits
/// Spread and density are the maker's; one-sided or two-sided spreading is the maker's choice as well. Mitred end grain
/// drinks more than long grain; no published figure says how much.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// Mass and volume of a layer (derived); checked by `verification/finish`.
///
/// # Examples
/// ```
/// use beamcraft_core::finish::{glue_quantity, GlueQuantityInput};
/// let glue = glue_quantity(&GlueQuantityInput {
///     bond_area_m2: 0.5, spread_g_per_m2: 180.0, waste_share: 0.1, density_kg_per_l: 1.08,
/// })?;
/// assert!((glue.mass_g - 99.0).abs() < 1e-9);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn glue_quantity(input: &GlueQuantityInput) -> Result<GlueQuantity, Fault> {
    input.check_ranges()?;
    let net_g = input.bond_area_m2 * input.spread_g_per_m2;
    let mass_g = net_g * (1.0 + input.waste_share);
    Ok(GlueQuantity {
        net_g,
        mass_g,
        volume_ml: mass_g / input.density_kg_per_l,
        wet_film_um: input.spread_g_per_m2 / input.density_kg_per_l,
    })
}

/// Long mitres of one kind.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<MitreBondAreaInput>))]
pub struct MitreBondAreaInput {
    /// Length of one joint along the corner, mm.
    pub length_mm: f64,
    /// Thickness of board a, mm.
    pub thickness_a_mm: f64,
    /// Thickness of board b, mm.
    pub thickness_b_mm: f64,
    /// Corner angle between the two show faces, measured inside the body, degrees.
    #[cfg_attr(feature = "json", serde(default = "square_corner"))]
    pub corner_deg: f64,
    /// Number of such joints.
    #[cfg_attr(feature = "json", serde(default = "one_joint"))]
    pub joints: u32,
}

limited!(MitreBondAreaInput {
    length_mm: LENGTH,
    thickness_a_mm: BOARD_THICKNESS,
    thickness_b_mm: BOARD_THICKNESS,
    corner_deg: CORNER_ANGLE,
    joints: COUNT,
});

#[cfg(feature = "json")]
fn square_corner() -> f64 {
    90.0
}

#[cfg(feature = "json")]
fn one_joint() -> u32 {
    1
}

/// Glue lines of long mitres.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct MitreBondArea {
    /// Width of the glue line across the section, mm.
    pub seam_mm: f64,
    /// Area of the glue line of one joint, m².
    pub joint_area_m2: f64,
    /// Area of the glue lines of all joints, m².
    pub bond_area_m2: f64,
}

/// Area to be glued in long mitres.
///
/// # Equation
/// ```text
/// A = n L seam        equal boards, square corner: seam = t / cos 45°
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | n | number of joints | – | `joints` |
/// | L | length of a joint | mm | `length_mm` |
/// | seam | width of the cut face, from [`mitre_pair`] | mm | `seam_mm` |
///
/// # Limits
/// As for [`mitre_pair`].
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` for a straight corner between boards of unequal thickness.
///
/// # Source
/// Plane geometry, derived in the theory pages; checked by `verification/finish`.
///
/// # Examples
/// ```
/// use beamcraft_core::finish::{mitre_bond_area, MitreBondAreaInput};
/// let bond = mitre_bond_area(&MitreBondAreaInput {
///     length_mm: 1000.0, thickness_a_mm: 20.0, thickness_b_mm: 20.0, corner_deg: 90.0, joints: 2,
/// })?;
/// assert!((bond.bond_area_m2 - 0.056_568_5).abs() < 1e-6);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn mitre_bond_area(input: &MitreBondAreaInput) -> Result<MitreBondArea, Fault> {
    input.check_ranges()?;
    let MitreBondAreaInput { length_mm, thickness_a_mm, thickness_b_mm, corner_deg, joints } = *input;
    let seam_mm = mitre_pair(&MitrePairInput { thickness_a_mm, thickness_b_mm, corner_deg })?.seam_mm;
    let joint_area_m2 = length_mm * seam_mm * 1e-6;
    Ok(MitreBondArea { seam_mm, joint_area_m2, bond_area_m2: f64::from(joints) * joint_area_m2 })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const GLUE_QUANTITY: crate::json::Calculation = crate::json::calculation!(
    glue_quantity: GlueQuantityInput => GlueQuantity, Typed,
    "Grams and millilitres of glue for a bonded area"
);

/// Registry row.
#[cfg(feature = "json")]
pub(super) const MITRE_BOND_AREA: crate::json::Calculation = crate::json::calculation!(
    mitre_bond_area: MitreBondAreaInput => MitreBondArea, Typed,
    "Area to be glued in long mitres of boards of any thickness"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::error::ErrorCode;
    use crate::finish::hostile;
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    #[test]
    fn no_area_takes_no_glue_and_no_density_is_refused() {
        let none =
            GlueQuantityInput { bond_area_m2: 0.0, spread_g_per_m2: 180.0, waste_share: 0.0, density_kg_per_l: 1.1 };
        assert_eq!(glue_quantity(&none).unwrap().volume_ml, 0.0);
        let weightless = GlueQuantityInput { density_kg_per_l: 0.0, ..none };
        assert_eq!(glue_quantity(&weightless).expect_err("refused").code, ErrorCode::OutOfRange);
    }

    #[test]
    fn a_straight_corner_of_unequal_boards_has_no_seam() {
        let input = MitreBondAreaInput {
            length_mm: 100.0,
            thickness_a_mm: 20.0,
            thickness_b_mm: 19.0,
            corner_deg: 180.0,
            joints: 1,
        };
        assert_eq!(mitre_bond_area(&input).expect_err("refused").code, ErrorCode::Inconsistent);
    }

    proptest! {
        #[test]
        fn glue_is_linear_in_the_area(area in 0.0..1e5_f64, spread_g_per_m2 in 1.0..5_000.0_f64, factor in 0.0..10.0_f64) {
            let mass = |bond_area_m2| {
                let input =
                    GlueQuantityInput { bond_area_m2, spread_g_per_m2, waste_share: 0.15, density_kg_per_l: 1.08 };
                glue_quantity(&input).unwrap().mass_g
            };
            assert_relative_eq!(mass(area * factor), factor * mass(area), max_relative = 1e-12);
        }

        #[test]
        fn the_bond_is_the_same_from_either_board(
            a in 1.0..150.0_f64, b in 1.0..150.0_f64, corner_deg in 10.0..170.0_f64, joints in 1..100_u32,
        ) {
            let bond = |thickness_a_mm, thickness_b_mm| {
                let input = MitreBondAreaInput { length_mm: 900.0, thickness_a_mm, thickness_b_mm, corner_deg, joints };
                mitre_bond_area(&input).unwrap()
            };
            assert_relative_eq!(bond(a, b).bond_area_m2, bond(b, a).bond_area_m2, max_relative = 1e-9);
            prop_assert!(bond(a, b).seam_mm >= a.max(b) * (1.0 - 1e-12));
        }

        #[test]
        fn any_numbers_give_finite_glue_or_a_fault(
            a in hostile::number(), b in hostile::number(), c in hostile::number(), d in hostile::number(), joints: u32,
        ) {
            let glue =
                GlueQuantityInput { bond_area_m2: a, spread_g_per_m2: b, waste_share: c, density_kg_per_l: d };
            if let Ok(found) = glue_quantity(&glue) {
                prop_assert!(found.mass_g.is_finite() && found.volume_ml.is_finite() && found.wet_film_um.is_finite());
            }
            let bond =
                MitreBondAreaInput { length_mm: a, thickness_a_mm: b, thickness_b_mm: c, corner_deg: d, joints };
            if let Ok(found) = mitre_bond_area(&bond) {
                prop_assert!(found.bond_area_m2.is_finite() && found.seam_mm.is_finite());
            }
        }
    }
}
