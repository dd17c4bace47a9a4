//! Least distances between fasteners and to the ends and edges of a member.

use super::choice::{Ec5Fastener, Ec5Hole};
use crate::error::{Allowed, ErrorCode, Fault};
use crate::limits::{Limited, limited};
use crate::numeric::real::sin_cos_deg;

/// What the timber is joined to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum Ec5JointPartner {
    /// Timber.
    Timber,
    /// A steel plate: nails may stand at 0.7 of the spacing.
    Steel,
    /// A wood panel: nails may stand at 0.85 of the spacing.
    Panel,
}

/// The table that gave the distances.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum Ec5SpacingTable {
    /// Nails and screws to 6 mm, without holes, up to 420 kg/m³ (Table 8.2).
    NailLight,
    /// The same, above 420 up to 500 kg/m³ (Table 8.2).
    NailDense,
    /// Nails and screws to 6 mm, predrilled (Table 8.2).
    NailPredrilled,
    /// Bolts and screws above 6 mm (Table 8.4).
    Bolt,
    /// Dowels (Table 8.5).
    Dowel,
}

/// A fastener whose distances are looked up.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<Ec5SpacingInput>))]
pub struct Ec5SpacingInput {
    /// Kind of fastener.
    pub fastener: Ec5Fastener,
    /// Whether the holes are predrilled; only nails and thin screws ask.
    pub hole: Ec5Hole,
    /// Diameter, for screws the effective one, mm.
    pub diameter_mm: f64,
    /// Characteristic density of the timber, kg/m3.
    pub density_kg_m3: f64,
    /// Angle between force and grain, 0 to 90 degrees, whichever way the force points.
    pub angle_to_grain_deg: f64,
    /// What the timber is joined to; timber by default, the wider spacing.
    #[cfg_attr(feature = "json", serde(default = "timber"))]
    pub partner: Ec5JointPartner,
}

limited!(Ec5SpacingInput {
    diameter_mm: FASTENER_DIAMETER,
    density_kg_m3: WOOD_DENSITY,
    angle_to_grain_deg: ANGLE_TO_GRAIN
});

#[cfg(feature = "json")]
fn timber() -> Ec5JointPartner {
    Ec5JointPartner::Timber
}

/// Least distances of fasteners loaded laterally.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Ec5Spacing {
    /// Table that applies.
    pub table: Ec5SpacingTable,
    /// Spacing along the grain a_1, mm.
    pub a1_mm: f64,
    /// Spacing across the grain a_2, mm.
    pub a2_mm: f64,
    /// Distance to a loaded end a_3,t, mm.
    pub a3_loaded_mm: f64,
    /// Distance to an unloaded end a_3,c, mm.
    pub a3_unloaded_mm: f64,
    /// Distance to a loaded edge a_4,t, mm.
    pub a4_loaded_mm: f64,
    /// Distance to an unloaded edge a_4,c, mm.
    pub a4_unloaded_mm: f64,
    /// Least thickness of timber for nails without predrilling (8.18), mm; 0 where the rule does not apply.
    pub least_timber_mm: f64,
    /// The same in species that split easily (8.19), mm; 0 where the rule does not apply.
    pub least_splitting_timber_mm: f64,
    /// Distance of nails to a loaded edge of a plywood panel (8.3.1.3), mm; 0 where the rule does not apply.
    pub plywood_loaded_edge_mm: f64,
    /// Distance of nails to an unloaded edge of a plywood panel (8.3.1.3), mm; 0 where the rule does not apply.
    pub plywood_unloaded_edge_mm: f64,
    /// Wood of a middle member that must be left, and more, beyond the points of nails driven from both sides so that they
    /// may overlap (8.3.1.1(7)), mm; 0 where the rule does not apply.
    pub overlap_rest_mm: f64,
}

/// Least spacings, end and edge distances of fasteners loaded laterally.
///
/// # Equation
/// | | nails ≤ 420 kg/m³ | nails ≤ 500 kg/m³ | nails predrilled | bolts | dowels |
/// |---|---|---|---|---|---|
/// | a_1 | d < 5: (5 + 5 c) d; else (5 + 7 c) d | (7 + 8 c) d | (4 + c) d | (4 + c) d | (3 + 2 c) d |
/// | a_2 | 5 d | 7 d | (3 + s) d | 4 d | 3 d |
/// | a_3,t | (10 + 5 c) d | (15 + 5 c) d | (7 + 5 c) d | max(7 d, 80 mm) | max(7 d, 80 mm) |
/// | a_3,c | 10 d | 15 d | 7 d | α ≤ 30°: 4 d; else max((1 + 6 s) d, 4 d) | α ≤ 30°: 3 d; else max(a_3,t s, 3 d) |
/// | a_4,t | d < 5: (5 + 2 s) d; else (5 + 5 s) d | (7 + 2 s) d; (7 + 5 s) d | (3 + 2 s) d; (3 + 4 s) d | max((2 + 2 s) d, 3 d) | max((2 + 2 s) d, 3 d) |
/// | a_4,c | 5 d | 7 d | 3 d | 3 d | 3 d |
///
/// c = cos α, s = sin α, α the angle of force to grain, d the diameter. Nails beside steel take 0.7, beside panels 0.85 of a_1
/// and a_2.
///
/// ```text
/// nails without predrilling   timber ≥ max(7 d, (13 d − 30) ρ/400)      species that split easily ≥ max(14 d, (13 d − 30) ρ/200)
/// nails in plywood            loaded edge (3 + 4 s) d                   unloaded edge 3 d
/// nails from both sides       may overlap where t_2 − penetration > 4 d
/// ```
///
/// # Limits
/// Which species split easily is the national choice. Of panels other than plywood the standard has no edge distances. For LVL
/// these are the distances in the wide face; a nail in the edge face takes those of dense timber (an LVL handbook): give
/// more than 420 kg/m³.
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` for nails without predrilling above 500 kg/m³.
///
/// # Source
/// EN 1995-1-1 Tables 8.2, 8.4, 8.5, 8.3.1.1, 8.3.1.2 (seen through a library and a handbook; a_3,c of dowels, Eq. 8.19 and
/// 8.3.1.3 for panels recalled). Checked by `verification/ec5_number` and `verification/ec5_tables`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::*;
/// let dowel = ec5_spacing(&Ec5SpacingInput {
///     fastener: Ec5Fastener::Dowel, hole: Ec5Hole::Predrilled, diameter_mm: 12.0, density_kg_m3: 350.0,
///     angle_to_grain_deg: 0.0, partner: Ec5JointPartner::Timber,
/// })?;
/// assert_eq!((dowel.a1_mm, dowel.a3_loaded_mm), (60.0, 84.0));
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn ec5_spacing(input: &Ec5SpacingInput) -> Result<Ec5Spacing, Fault> {
    input.check_ranges()?;
    let (d, density, angle_deg) = (input.diameter_mm, input.density_kg_m3, input.angle_to_grain_deg);
    let (s, c) = sin_cos_deg(angle_deg);
    let slim = d < 5.0;
    let nail = input.fastener.follows_nail_rules(d);
    let (table, multiples) = match (nail, input.hole, input.fastener) {
        (true, Ec5Hole::Predrilled, _) => {
            let edge = if slim { 3.0 + 2.0 * s } else { 3.0 + 4.0 * s };
            (Ec5SpacingTable::NailPredrilled, [4.0 + c, 3.0 + s, 7.0 + 5.0 * c, 7.0, edge, 3.0])
        }
        (true, Ec5Hole::Undrilled, _) if density <= 420.0 => {
            let (row, edge) = if slim { (5.0 + 5.0 * c, 5.0 + 2.0 * s) } else { (5.0 + 7.0 * c, 5.0 + 5.0 * s) };
            (Ec5SpacingTable::NailLight, [row, 5.0, 10.0 + 5.0 * c, 10.0, edge, 5.0])
        }
        (true, Ec5Hole::Undrilled, _) if density <= 500.0 => {
            let edge = if slim { 7.0 + 2.0 * s } else { 7.0 + 5.0 * s };
            (Ec5SpacingTable::NailDense, [7.0 + 8.0 * c, 7.0, 15.0 + 5.0 * c, 15.0, edge, 7.0])
        }
        (true, Ec5Hole::Undrilled, _) => {
            return Err(Fault::number(
                ErrorCode::Inconsistent,
                "hole",
                density,
                Allowed::Text("predrilled above 500 kg/m3"),
                "bore the holes",
            ));
        }
        (false, _, Ec5Fastener::Dowel) => {
            let loaded_end = 7.0_f64.max(80.0 / d);
            let end = if angle_deg <= 30.0 { 3.0 } else { (loaded_end * s).max(3.0) };
            let edge = (2.0 + 2.0 * s).max(3.0);
            (Ec5SpacingTable::Dowel, [3.0 + 2.0 * c, 3.0, loaded_end, end, edge, 3.0])
        }
        (false, _, _) => {
            let end = if angle_deg <= 30.0 { 4.0 } else { (1.0 + 6.0 * s).max(4.0) };
            let edge = (2.0 + 2.0 * s).max(3.0);
            (Ec5SpacingTable::Bolt, [4.0 + c, 4.0, 7.0_f64.max(80.0 / d), end, edge, 3.0])
        }
    };
    let closer = match (nail, input.partner) {
        (true, Ec5JointPartner::Steel) => 0.7,
        (true, Ec5JointPartner::Panel) => 0.85,
        _ => 1.0,
    };
    let only = |applies: bool, value_mm: f64| if applies { value_mm } else { 0.0 };
    let undrilled = nail && input.hole == Ec5Hole::Undrilled;
    let in_plywood = input.fastener.is_nail() && nail && input.partner == Ec5JointPartner::Panel;
    let [a1, a2, a3_loaded, a3_unloaded, a4_loaded, a4_unloaded] = multiples.map(|multiple| multiple * d);
    Ok(Ec5Spacing {
        table,
        a1_mm: a1 * closer,
        a2_mm: a2 * closer,
        a3_loaded_mm: a3_loaded,
        a3_unloaded_mm: a3_unloaded,
        a4_loaded_mm: a4_loaded,
        a4_unloaded_mm: a4_unloaded,
        least_timber_mm: only(undrilled, (7.0 * d).max((13.0 * d - 30.0) * density / 400.0)),
        least_splitting_timber_mm: only(undrilled, (14.0 * d).max((13.0 * d - 30.0) * density / 200.0)),
        plywood_loaded_edge_mm: only(in_plywood, (3.0 + 4.0 * s) * d),
        plywood_unloaded_edge_mm: only(in_plywood, 3.0 * d),
        overlap_rest_mm: only(input.fastener.is_nail(), 4.0 * d),
    })
}

/// The timber that a screw under a pull stands in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum Ec5AxialScrewFace {
    /// Timber, or the wide face of LVL.
    Timber,
    /// The edge face of LVL, where the layers are seen.
    LvlEdge,
}

/// A screw loaded along its axis.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<Ec5AxialScrewSpacingInput>))]
pub struct Ec5AxialScrewSpacingInput {
    /// Outer diameter of the thread, mm.
    pub thread_diameter_mm: f64,
    /// Face that it goes into; timber by default.
    #[cfg_attr(feature = "json", serde(default = "timber_face"))]
    pub face: Ec5AxialScrewFace,
}

#[cfg(feature = "json")]
fn timber_face() -> Ec5AxialScrewFace {
    Ec5AxialScrewFace::Timber
}

limited!(Ec5AxialScrewSpacingInput { thread_diameter_mm: FASTENER_DIAMETER });

/// Least distances of screws loaded along their axis.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Ec5AxialScrewSpacing {
    /// Spacing in a plane parallel to the grain a_1, mm.
    pub a1_mm: f64,
    /// Spacing perpendicular to that plane a_2, mm.
    pub a2_mm: f64,
    /// Distance of the centre of the thread to the end a_1,CG, mm.
    pub end_mm: f64,
    /// Distance of the centre of the thread to the edge a_2,CG, mm.
    pub edge_mm: f64,
    /// Least thickness of the timber, mm.
    pub least_timber_mm: f64,
    /// Least thread in the point-side member, mm.
    pub least_thread_mm: f64,
}

/// Least spacings, end and edge distances of screws loaded along their axis.
///
/// # Equation
/// ```text
/// timber, LVL wide face   a_1 = 7 d    a_2 = 5 d    a_1,CG = 10 d    a_2,CG = 4 d    timber ≥ 12 d    thread ≥ 6 d
/// LVL edge face           a_1 = 10 d   a_2 = 5 d    a_1,CG = 12 d    a_2,CG = 4 d
/// ```
/// d is the outer diameter of the thread.
///
/// # Limits
/// Screws loaded laterally as well keep the distances of both rules.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// EN 1995-1-1 8.7.2, Table 8.6 (seen); the edge face of LVL from an LVL handbook (seen). Checked by `verification/ec5_tables`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::{Ec5AxialScrewFace, Ec5AxialScrewSpacingInput, ec5_axial_screw_spacing};
/// let screw = Ec5AxialScrewSpacingInput { thread_diameter_mm: 6.0, face: Ec5AxialScrewFace::Timber };
/// assert_eq!(ec5_axial_screw_spacing(&screw)?.a1_mm, 42.0);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn ec5_axial_screw_spacing(input: &Ec5AxialScrewSpacingInput) -> Result<Ec5AxialScrewSpacing, Fault> {
    input.check_ranges()?;
    let d = input.thread_diameter_mm;
    let (a1, end) = match input.face {
        Ec5AxialScrewFace::Timber => (7.0, 10.0),
        Ec5AxialScrewFace::LvlEdge => (10.0, 12.0),
    };
    Ok(Ec5AxialScrewSpacing {
        a1_mm: a1 * d,
        a2_mm: 5.0 * d,
        end_mm: end * d,
        edge_mm: 4.0 * d,
        least_timber_mm: 12.0 * d,
        least_thread_mm: 6.0 * d,
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const EC5_SPACING: crate::json::Calculation = crate::json::calculation!(
    ec5_spacing: Ec5SpacingInput => Ec5Spacing, Typed,
    "Eurocode 5: least spacings, end and edge distances of fasteners loaded laterally"
);

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const EC5_AXIAL_SCREW_SPACING: crate::json::Calculation = crate::json::calculation!(
    ec5_axial_screw_spacing: Ec5AxialScrewSpacingInput => Ec5AxialScrewSpacing, Typed,
    "Eurocode 5: least spacings, end and edge distances of screws loaded along their axis"
);
