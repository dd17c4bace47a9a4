//! Embedment strength: the bearing of wood and panels under a dowel.

use super::choice::{Ec5Fastener, Ec5Hole, Ec5Material};
use crate::error::{Allowed, ErrorCode, Fault};
use crate::limits::{Limited, limited};
use crate::numeric::real::{pow, sin_cos_deg};

/// The equation that gave an embedment strength.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum Ec5EmbedmentRule {
    /// Nail without predrilling (8.15).
    NailUndrilled,
    /// Nail in a predrilled hole (8.16).
    NailPredrilled,
    /// Bolt, dowel or thick nail in timber (8.31 to 8.33).
    BoltInTimber,
    /// Nail in plywood (8.20).
    NailInPlywood,
    /// Nail in hardboard (8.21).
    NailInHardboard,
    /// Nail in particleboard or OSB (8.22).
    NailInParticleboard,
    /// Bolt in plywood (8.36).
    BoltInPlywood,
    /// Bolt in particleboard or OSB (8.37).
    BoltInParticleboard,
}

/// Wood or panel that a dowel bears on.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<Ec5EmbedmentInput>))]
pub struct Ec5EmbedmentInput {
    /// Kind of fastener.
    pub fastener: Ec5Fastener,
    /// Whether the hole is predrilled; only nails and thin screws ask.
    pub hole: Ec5Hole,
    /// Material of the member.
    pub material: Ec5Material,
    /// Characteristic density, kg/m3.
    pub density_kg_m3: f64,
    /// Diameter, for screws the effective one, mm.
    pub diameter_mm: f64,
    /// Angle between force and grain, degrees; matters only to the rules for bolts in timber.
    pub angle_to_grain_deg: f64,
    /// Thickness of the panel, mm; needed in hardboard, particleboard and OSB.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub panel_thickness_mm: Option<f64>,
}

limited!(Ec5EmbedmentInput {
    density_kg_m3: WOOD_DENSITY,
    diameter_mm: FASTENER_DIAMETER,
    angle_to_grain_deg: ANGLE_TO_GRAIN,
    panel_thickness_mm: BEARING_LENGTH
});

/// Characteristic embedment strength.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Ec5Embedment {
    /// Equation that applies.
    pub rule: Ec5EmbedmentRule,
    /// Strength along the grain; in a panel and under a thin nail the same in every direction, MPa.
    pub parallel_mpa: f64,
    /// Factor k_90 by which the strength across the grain is less (8.33); 1 where the direction does not matter.
    pub k_90: f64,
    /// Strength at the angle of the force, f_h,k (8.31), MPa.
    pub at_angle_mpa: f64,
}

/// Characteristic embedment strength of timber or a panel under a nail, screw, bolt or dowel.
///
/// # Equation
/// ```text
/// nails to 8 mm, screws to 6 mm   f_h = 0.082 ρ d^−0.3   (8.15)    predrilled  0.082 (1 − 0.01 d) ρ   (8.16)
/// bolts, dowels, thicker          f_h0 = 0.082 (1 − 0.01 d) ρ      f_hα = f_h0 / (k_90 sin² α + cos² α)
///                                 k_90 = 1.35 softwood, 1.30 LVL, 0.90 hardwood, each + 0.015 d
/// nail in plywood                 0.11 ρ d^−0.3   (8.20)           bolt  0.11 (1 − 0.01 d) ρ   (8.36)
/// nail in hardboard               30 d^−0.3 t^0.6   (8.21)
/// nail in particleboard, OSB      65 d^−0.7 t^0.1   (8.22)         bolt  50 d^−0.6 t^0.2   (8.37)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | ρ | characteristic density | kg/m³ | `density_kg_m3` |
/// | d | diameter | mm | `diameter_mm` |
/// | α | angle of force to grain | degree | `angle_to_grain_deg` |
/// | t | panel thickness | mm | `panel_thickness_mm` |
///
/// # Limits
/// The head of a nail in a panel is at least 2 d wide. Hardwood and every wood of 500 kg/m³ and more is predrilled for
/// nails. Fibreboard has no equation here, hardboard none under bolts.
///
/// # Errors
/// `out_of_range`, `not_finite`; `missing_field` without the thickness of a panel that needs it; `no_published_value`
/// where the standard has no equation; `inconsistent` for a nail without a predrilled hole in hardwood or above
/// 500 kg/m³.
///
/// # Source
/// EN 1995-1-1 8.3.1.1 and 8.5.1 (seen through a library, handbooks and course examples); 8.3.1.3, 8.5.1.3 for panels
/// and the need of predrilling recalled. Checked by `verification/ec5_values`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::*;
/// // A 3.1 mm nail in LVL of 480 kg/m³.
/// let nail = ec5_embedment(&Ec5EmbedmentInput {
///     fastener: Ec5Fastener::RoundNail,
///     hole: Ec5Hole::Undrilled,
///     material: Ec5Material::Lvl,
///     density_kg_m3: 480.0,
///     diameter_mm: 3.1,
///     angle_to_grain_deg: 90.0,
///     panel_thickness_mm: None,
/// })?;
/// assert!((nail.at_angle_mpa - 28.03).abs() < 0.01);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn ec5_embedment(input: &Ec5EmbedmentInput) -> Result<Ec5Embedment, Fault> {
    input.check_ranges()?;
    use Ec5EmbedmentRule as Rule;
    let Ec5EmbedmentInput { fastener, hole, material, density_kg_m3: density, diameter_mm: d, .. } = *input;
    let like_nail = fastener.follows_nail_rules(d);
    let slender = 1.0 - 0.01 * d;
    let panel = |rule, strength_mpa| Ok(flat(rule, strength_mpa));
    match material {
        Ec5Material::Softwood | Ec5Material::Hardwood | Ec5Material::Lvl if like_nail => {
            if hole == Ec5Hole::Predrilled {
                return Ok(flat(Rule::NailPredrilled, 0.082 * slender * density));
            }
            let dense = material == Ec5Material::Hardwood || density > DENSEST_UNDRILLED_KG_M3;
            if dense {
                return Err(Fault::number(
                    ErrorCode::Inconsistent,
                    "hole",
                    density,
                    Allowed::Text("predrilled in hardwood and above 500 kg/m3"),
                    "bore the hole",
                ));
            }
            Ok(flat(Rule::NailUndrilled, 0.082 * density * pow(d, -0.3)))
        }
        Ec5Material::Softwood | Ec5Material::Hardwood | Ec5Material::Lvl => {
            let base = match material {
                Ec5Material::Hardwood => 0.90,
                Ec5Material::Lvl => 1.30,
                _ => 1.35,
            };
            let k_90 = base + 0.015 * d;
            let parallel_mpa = 0.082 * slender * density;
            Ok(Ec5Embedment {
                rule: Rule::BoltInTimber,
                parallel_mpa,
                k_90,
                at_angle_mpa: at_angle(parallel_mpa, k_90, input.angle_to_grain_deg),
            })
        }
        Ec5Material::Plywood if like_nail => panel(Rule::NailInPlywood, 0.11 * density * pow(d, -0.3)),
        Ec5Material::Plywood => panel(Rule::BoltInPlywood, 0.11 * slender * density),
        Ec5Material::Hardboard if like_nail => {
            panel(Rule::NailInHardboard, 30.0 * pow(d, -0.3) * pow(thickness(input)?, 0.6))
        }
        Ec5Material::Osb34 | Ec5Material::Osb2Particleboard if like_nail => {
            panel(Rule::NailInParticleboard, 65.0 * pow(d, -0.7) * pow(thickness(input)?, 0.1))
        }
        Ec5Material::Osb34 | Ec5Material::Osb2Particleboard => {
            panel(Rule::BoltInParticleboard, 50.0 * pow(d, -0.6) * pow(thickness(input)?, 0.2))
        }
        Ec5Material::Hardboard | Ec5Material::MdfLa => Err(Fault::plain(
            ErrorCode::NoPublishedValue,
            "material",
            "timber, LVL, plywood, OSB, particleboard; hardboard under nails",
            "take the strength from a test or a product declaration",
        )),
    }
}

/// Above this characteristic density a nail needs a predrilled hole (8.3.1.1(2)), kg/m3.
const DENSEST_UNDRILLED_KG_M3: f64 = 500.0;

/// Strength at an angle to the grain (8.31).
pub(super) fn at_angle(parallel_mpa: f64, k_90: f64, angle_deg: f64) -> f64 {
    let (sine, cosine) = sin_cos_deg(angle_deg);
    parallel_mpa / (k_90 * sine * sine + cosine * cosine)
}

fn flat(rule: Ec5EmbedmentRule, strength_mpa: f64) -> Ec5Embedment {
    Ec5Embedment { rule, parallel_mpa: strength_mpa, k_90: 1.0, at_angle_mpa: strength_mpa }
}

fn thickness(input: &Ec5EmbedmentInput) -> Result<f64, Fault> {
    input.panel_thickness_mm.ok_or_else(|| {
        Fault::plain(ErrorCode::MissingField, "panel_thickness_mm", "the thickness of the panel", "give it")
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const EC5_EMBEDMENT: crate::json::Calculation = crate::json::calculation!(
    ec5_embedment: Ec5EmbedmentInput => Ec5Embedment, Typed,
    "Eurocode 5: embedment strength of timber or a panel under a nail, screw, bolt or dowel"
);
