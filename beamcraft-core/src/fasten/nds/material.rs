//! Dowel bearing strength of what is not solid wood: panels, steel, concrete.

use super::is_quarter_inch;
use crate::cite::Evidence;
use crate::error::{Allowed, ErrorCode, Fault};
use crate::limits::{Limited, limited};
use crate::units::factor::{INCH_MM, PSI_MPA};

/// What a dowel bears on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum DowelMaterial {
    /// Solid or glued laminated wood: its strength follows from the specific gravity, see `dowel_bearing`.
    Wood,
    /// Plywood of Structural I or Marine grade, specific gravity 0.50.
    #[cfg_attr(feature = "json", serde(rename = "plywood_structural_1"))]
    PlywoodStructural1,
    /// Plywood of any other grade, specific gravity 0.42.
    PlywoodOther,
    /// Oriented strand board of any grade, specific gravity 0.50.
    OrientedStrandBoard,
    /// Medium-density fibreboard: the standard publishes no value.
    MediumDensityFibreboard,
    /// Particleboard: the standard publishes no value.
    Particleboard,
    /// Steel plate ASTM A36, at least 1/4 in thick.
    SteelPlateA36,
    /// Sheet steel ASTM A653 grade 33, 3 gage (0.239 in) and thinner.
    SheetSteelA653,
    /// Concrete of at least 2500 psi (17.2 MPa) compressive strength, as main member.
    Concrete,
    /// Masonry: the standard publishes no value.
    Masonry,
}

/// A material other than wood that a dowel bears on.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<DowelBearingMaterialInput>))]
pub struct DowelBearingMaterialInput {
    /// Material.
    pub material: DowelMaterial,
    /// Nominal diameter of the dowel, mm.
    pub diameter_mm: f64,
}

limited!(DowelBearingMaterialInput { diameter_mm: FASTENER_DIAMETER });

/// Bearing strength of a material under a dowel, the same in every direction.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct DowelBearingMaterial {
    /// Bearing strength, MPa.
    pub bearing_mpa: f64,
    /// Specific gravity that the table gives the panel; absent for steel and concrete.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub specific_gravity: Option<f64>,
    /// How far this value was checked.
    pub evidence: Evidence,
}

/// Bearing strength of a wood-based panel, steel or concrete under a dowel.
///
/// # Equation
/// | material | D < 1/4 in | 1/4 in ≤ D ≤ 1 in | psi |
/// |---|---|---|---|
/// | plywood Structural I, Marine (G 0.50) | 4650 | 5600 | NDS Table 12.3.3B |
/// | other plywood (G 0.42) | 3350 | 4700 | |
/// | oriented strand board (G 0.50) | 4650 | 5600 | |
/// | steel plate A36, from 1/4 in | 87 000 | 87 000 | 2.4 F_u / 1.6 |
/// | sheet steel A653 grade 33, to 3 gage | 61 850 | 61 850 | 2.2 F_u / 1.6 |
/// | concrete from 2500 psi, main member | 7500 | 7500 | |
///
/// # Limits
/// The standard publishes no value for fibreboard, particleboard or masonry: give a tested strength to the joint instead.
/// The plate itself, and what an anchor needs in concrete beside bearing, are other checks.
///
/// # Errors
/// `out_of_range`, `not_finite`; `no_published_value` for the materials without one, and for wood, which
/// `dowel_bearing` answers.
///
/// # Source
/// NDS 2018 Table 12.3.3B and the notes of the lateral tables; each value says whether it was seen or is recalled.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::{DowelBearingMaterialInput, DowelMaterial, dowel_bearing_material};
/// let input = DowelBearingMaterialInput { material: DowelMaterial::PlywoodOther, diameter_mm: 3.3 };
/// assert!((dowel_bearing_material(&input)?.bearing_mpa - 23.1).abs() < 0.01); // 3350 psi
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn dowel_bearing_material(input: &DowelBearingMaterialInput) -> Result<DowelBearingMaterial, Fault> {
    input.check_ranges()?;
    material_bearing(input.material, input.diameter_mm).ok_or_else(|| without_value("material"))
}

/// [`dowel_bearing_material`] of a diameter already within its range; nothing where the standard is silent.
pub(super) fn material_bearing(material: DowelMaterial, diameter_mm: f64) -> Option<DowelBearingMaterial> {
    let (thin_psi, thick_psi, specific_gravity, thin_evidence) = match material {
        DowelMaterial::PlywoodStructural1 => (4_650.0, 5_600.0, Some(0.50), Evidence::Seen),
        DowelMaterial::PlywoodOther => (3_350.0, 4_700.0, Some(0.42), Evidence::Seen),
        DowelMaterial::OrientedStrandBoard => (4_650.0, 5_600.0, Some(0.50), Evidence::Recalled),
        DowelMaterial::SteelPlateA36 => (87_000.0, 87_000.0, None, Evidence::Recalled),
        DowelMaterial::SheetSteelA653 => (61_850.0, 61_850.0, None, Evidence::Seen),
        DowelMaterial::Concrete => (7_500.0, 7_500.0, None, Evidence::Recalled),
        DowelMaterial::Wood
        | DowelMaterial::MediumDensityFibreboard
        | DowelMaterial::Particleboard
        | DowelMaterial::Masonry => return None,
    };
    let (psi, evidence) = match (is_quarter_inch(diameter_mm), specific_gravity) {
        (false, _) => (thin_psi, thin_evidence),
        (true, None) => (thick_psi, thin_evidence),
        // The panel values from 1/4 in on are recalled in every row.
        (true, Some(_)) => (thick_psi, Evidence::Recalled),
    };
    Some(DowelBearingMaterial { bearing_mpa: psi * PSI_MPA, specific_gravity, evidence })
}

/// Whether the thickness belongs to the row of the table; panels, wood and concrete have no such limit.
pub(super) fn thickness_fault(material: DowelMaterial, field: &'static str, thickness_mm: f64) -> Option<Fault> {
    let (wrong, words) = match material {
        DowelMaterial::SteelPlateA36 => {
            (thickness_mm < 0.25 * INCH_MM - super::EDGE_MM, "at least 6.35 mm for this row")
        }
        DowelMaterial::SheetSteelA653 => {
            (thickness_mm > 0.239 * INCH_MM + super::EDGE_MM, "at most 6.07 mm (3 gage) for this row")
        }
        _ => (false, ""),
    };
    wrong.then(|| {
        let cure = "choose the other steel, or give its bearing strength";
        Fault::number(ErrorCode::NoPublishedValue, field, thickness_mm, Allowed::Text(words), cure)
    })
}

#[cold]
pub(super) fn without_value(field: &'static str) -> Fault {
    Fault::plain(
        ErrorCode::NoPublishedValue,
        field,
        "a panel, steel or concrete of the table",
        "for wood use its specific gravity; else give a tested bearing strength to the joint",
    )
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const DOWEL_BEARING_MATERIAL: crate::json::Calculation = crate::json::calculation!(
    dowel_bearing_material: DowelBearingMaterialInput => DowelBearingMaterial, Typed,
    "Bearing strength of a wood-based panel, steel or concrete under a dowel"
);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_the_standard_does_not_publish_is_refused() {
        for material in [
            DowelMaterial::Wood,
            DowelMaterial::MediumDensityFibreboard,
            DowelMaterial::Particleboard,
            DowelMaterial::Masonry,
        ] {
            let fault = dowel_bearing_material(&DowelBearingMaterialInput { material, diameter_mm: 4.0 }).unwrap_err();
            assert_eq!((fault.code, fault.field), (ErrorCode::NoPublishedValue, "material"));
        }
        let input = DowelBearingMaterialInput { material: DowelMaterial::Concrete, diameter_mm: f64::NAN };
        assert_eq!(dowel_bearing_material(&input).unwrap_err().code, ErrorCode::NotFinite);
    }

    // The panels' values are the formulas of solid wood at the panel's specific gravity, rounded to 50 psi; above 1/4 in
    // those along the grain (NDS Table 12.3.3).
    #[test]
    fn panels_bear_like_wood_of_their_specific_gravity() {
        for material in
            [DowelMaterial::PlywoodStructural1, DowelMaterial::PlywoodOther, DowelMaterial::OrientedStrandBoard]
        {
            for (diameter_mm, formula) in [(4.0, 16_600.0), (10.0, 11_200.0)] {
                let found = material_bearing(material, diameter_mm).unwrap();
                let gravity: f64 = found.specific_gravity.unwrap();
                let exact_psi = if diameter_mm < 6.0 {
                    formula * crate::numeric::real::pow(gravity, 1.84)
                } else {
                    formula * gravity
                };
                let psi = found.bearing_mpa / PSI_MPA;
                assert!((psi - exact_psi).abs() <= 25.0, "{material:?} {diameter_mm}: {psi} {exact_psi}");
            }
        }
    }

    #[test]
    fn steel_has_a_thickness_range() {
        assert!(thickness_fault(DowelMaterial::SteelPlateA36, "x", 6.35).is_none());
        assert!(thickness_fault(DowelMaterial::SteelPlateA36, "x", 6.0).is_some());
        assert!(thickness_fault(DowelMaterial::SheetSteelA653, "x", 6.35).is_some());
        assert!(thickness_fault(DowelMaterial::SheetSteelA653, "x", 3.0).is_none());
        assert!(thickness_fault(DowelMaterial::Wood, "x", 3.0).is_none());
    }
}
