//! The pieces of a joint: fastener, members, layers, layout, pocket.

use super::kinds::{JointFastenerKind, JointMaterial, JointPocketLoad};
use crate::fasten::nds::{FastenerDirection, MemberMoisture};
use crate::fasten::stagger::RowStagger;
use crate::limits::limited;

/// The fastener of a joint, by its own numbers.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<JointFastener>))]
pub struct JointFastener {
    /// Kind.
    pub kind: JointFastenerKind,
    /// Nominal diameter: outer thread diameter of a screw, shank of a nail, mm.
    pub nominal_diameter_mm: f64,
    /// Diameter at the thread root, mm; needed for screws.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub root_diameter_mm: Option<f64>,
    /// Diameter of the smooth shank of a screw, mm; left out it is taken as thinner than the thread. As thick as the thread
    /// it lets the American standard use it where at most a quarter of the bearing length is threaded (NDS 12.3.7.2).
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub shank_diameter_mm: Option<f64>,
    /// Diameter of the head where it bears on the wood, mm: of a washer head or a washer that of the washer, of a trim
    /// head the small head itself, of a dowel its own diameter.
    pub head_diameter_mm: f64,
    /// Length that enters the wood, mm; heads lie flush or on the face.
    pub length_mm: f64,
    /// Length of the thread or the rings with the point, mm; left out that of NDS Tables L2 and L3 for lag and wood screws, the
    /// whole length of the others.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub thread_length_mm: Option<f64>,
    /// Length of the tapered tip, mm; left out that of NDS Table L2 for a lag screw, none for a bolt or dowel, else 2
    /// diameters (NDS 12.3.5.3).
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub tip_length_mm: Option<f64>,
    /// Bending yield strength F_yb, MPa, for the American standard; left out its table for low-carbon steel.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub bending_yield_mpa: Option<f64>,
    /// Tensile strength of the steel f_u, MPa, for Eurocode 5; not needed beside a yield moment.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub tensile_strength_mpa: Option<f64>,
    /// Declared characteristic yield moment M_y,Rk, N·mm, for Eurocode 5.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub yield_moment_nmm: Option<f64>,
    /// Declared characteristic withdrawal strength f_ax,k in this wood, MPa, for Eurocode 5.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub declared_withdrawal_mpa: Option<f64>,
    /// Declared characteristic pull-through strength f_head,k in this wood, MPa, for Eurocode 5.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub declared_head_mpa: Option<f64>,
    /// Density that the two declared strengths of Eurocode 5 belong to, kg/m3; they grow with the 0.8th power of the
    /// density (8.40a, 8.40b). Left out they hold for the wood as it is.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub declared_density_kg_m3: Option<f64>,
    /// Declared lateral value of one fastener in just this joint, N, in place of the yield modes and where the standard has
    /// none: allowable at normal duration for the American standard, characteristic per fastener for Eurocode 5.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub declared_lateral_n: Option<f64>,
    /// Declared withdrawal value per length of thread in this wood, N/mm, at normal duration, for the American standard.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub declared_withdrawal_n_mm: Option<f64>,
    /// Declared head pull-through value in this side member, N, at normal duration, for the American standard.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub declared_pull_through_n: Option<f64>,
    /// Declared least penetration, mm, in place of the standard's.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub declared_penetration_mm: Option<f64>,
    /// Tensile capacity of one fastener by the chosen standard, N: allowable for the American, characteristic for
    /// Eurocode 5; without it the tension of a screw is not determined.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub tension_capacity_n: Option<f64>,
}

limited!(JointFastener {
    nominal_diameter_mm: FASTENER_DIAMETER,
    root_diameter_mm: FASTENER_DIAMETER,
    shank_diameter_mm: FASTENER_DIAMETER,
    head_diameter_mm: HEAD_DIAMETER,
    length_mm: FASTENER_LENGTH,
    thread_length_mm: BEARING_LENGTH,
    tip_length_mm: SMALL_LENGTH,
    bending_yield_mpa: STRESS,
    tensile_strength_mpa: STRESS,
    yield_moment_nmm: YIELD_MOMENT,
    declared_withdrawal_mpa: STRESS,
    declared_head_mpa: STRESS,
    declared_density_kg_m3: WOOD_DENSITY,
    declared_lateral_n: CONNECTION_CAPACITY,
    declared_withdrawal_n_mm: WITHDRAWAL_PER_LENGTH,
    declared_pull_through_n: CONNECTION_CAPACITY,
    declared_penetration_mm: BEARING_LENGTH,
    tension_capacity_n: CONNECTION_CAPACITY
});

/// A member of a joint.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<JointMember>))]
pub struct JointMember {
    /// Material.
    pub material: JointMaterial,
    /// Specific gravity from oven-dry mass and volume; needed by the American standard for wood and plywood.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub specific_gravity: Option<f64>,
    /// Characteristic density, kg/m3; needed by Eurocode 5 for wood and panels. Neither follows from the other.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub characteristic_density_kg_m3: Option<f64>,
    /// Thickness along the fastener, mm.
    pub thickness_mm: f64,
    /// Angle between the lateral load and the grain, degrees; without grain it does not count.
    pub angle_to_grain_deg: f64,
    /// Moisture of this member when the joint is made; left out it is that of the joint.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub made: Option<MemberMoisture>,
    /// Tested bearing (embedment) strength under this dowel in the direction of the load, MPa, in place of the standard's:
    /// that of the yield equations in the American one, a characteristic value of Eurocode 5, there of wood and panels only.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub tested_bearing_mpa: Option<f64>,
    /// Mean density, kg/m3, for the slip of Eurocode 5.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub mean_density_kg_m3: Option<f64>,
    /// Modulus of elasticity along the load, MPa, for the group action factor of the American standard.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub modulus_mpa: Option<f64>,
    /// Gross area across the load, mm2, for that factor; for a load across the grain, thickness times the width of the
    /// group (NDS 11.3.6.3).
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub area_mm2: Option<f64>,
    /// Characteristic compressive strength across the grain f_c,90,k, MPa, for the washers of bolts in Eurocode 5.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub compression_across_mpa: Option<f64>,
    /// Depth of the member in the direction of the load, mm, for splitting across the grain in Eurocode 5.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub depth_mm: Option<f64>,
}

limited!(JointMember {
    specific_gravity: SPECIFIC_GRAVITY,
    characteristic_density_kg_m3: WOOD_DENSITY,
    thickness_mm: BEARING_LENGTH,
    angle_to_grain_deg: ANGLE_TO_GRAIN,
    tested_bearing_mpa: STRESS,
    mean_density_kg_m3: WOOD_DENSITY,
    modulus_mpa: ELASTIC_MODULUS,
    area_mm2: CROSS_SECTION,
    compression_across_mpa: STRESS,
    depth_mm: BODY_SIZE
});

impl JointMember {
    /// A member of a material and thickness with its grain at an angle to the load, and nothing else given.
    pub const fn plain(material: JointMaterial, thickness_mm: f64, angle_to_grain_deg: f64) -> Self {
        Self {
            material,
            specific_gravity: None,
            characteristic_density_kg_m3: None,
            thickness_mm,
            angle_to_grain_deg,
            made: None,
            tested_bearing_mpa: None,
            mean_density_kg_m3: None,
            modulus_mpa: None,
            area_mm2: None,
            compression_across_mpa: None,
            depth_mm: None,
        }
    }

    /// Angle between load and grain that counts, degrees.
    pub(super) fn grain_deg(&self) -> f64 {
        if self.material.is_timber() { self.angle_to_grain_deg } else { 0.0 }
    }
}

/// A layer between the members that the fastener passes without bearing on it.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<JointGapLayer>))]
pub struct JointGapLayer {
    /// What it is, such as `wall lining`.
    pub name: String,
    /// Thickness, mm.
    pub thickness_mm: f64,
}

limited!(JointGapLayer { thickness_mm: SMALL_LENGTH });

/// The pocket that a slanted screw goes through.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<JointPocket>))]
pub struct JointPocket {
    /// Angle between the screw and the face of the board with the pocket, degrees; 15 by default (common practice).
    #[cfg_attr(feature = "json", serde(default = "fifteen_deg"))]
    pub angle_deg: f64,
    /// Wood along the screw between the pocket's shoulder, where the head seats, and the joint, mm.
    pub shoulder_mm: f64,
    /// Grain of the board with the pocket that the screw stands in; end grain by default: the pocket is bored at the
    /// board's end. Side grain for a pocket along its edge.
    #[cfg_attr(feature = "json", serde(default = "end_grain"))]
    pub side_direction: FastenerDirection,
    /// Grain of the main member that the screw goes into; side grain by default.
    #[cfg_attr(feature = "json", serde(default = "side_grain"))]
    pub main_direction: FastenerDirection,
    /// How the lateral load runs to the screw; across its slant by default.
    #[cfg_attr(feature = "json", serde(default = "across_slant"))]
    pub load: JointPocketLoad,
}

limited!(JointPocket { angle_deg: POCKET_ANGLE, shoulder_mm: BEARING_LENGTH });

#[cfg(feature = "json")]
fn fifteen_deg() -> f64 {
    15.0
}
#[cfg(feature = "json")]
fn side_grain() -> FastenerDirection {
    FastenerDirection::SideGrain
}
#[cfg(feature = "json")]
fn end_grain() -> FastenerDirection {
    FastenerDirection::EndGrain
}
#[cfg(feature = "json")]
fn across_slant() -> JointPocketLoad {
    JointPocketLoad::AcrossSlant
}

/// How the fasteners stand in a member, least values.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<JointLayout>))]
pub struct JointLayout {
    /// Fasteners in one row along the grain of the member.
    pub in_row: u32,
    /// Whether the fasteners stand on common lines; by default they do.
    #[cfg_attr(feature = "json", serde(default = "RowStagger::in_line"))]
    pub stagger: RowStagger,
    /// Spacing along the grain, mm; needed with more than one in a row.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub along_grain_mm: Option<f64>,
    /// Spacing across the grain, mm.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub across_grain_mm: Option<f64>,
    /// Distance to a loaded end, mm.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub loaded_end_mm: Option<f64>,
    /// Distance to an unloaded end, mm.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub unloaded_end_mm: Option<f64>,
    /// Distance to a loaded edge, mm.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub loaded_edge_mm: Option<f64>,
    /// Distance to an unloaded edge, mm.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub unloaded_edge_mm: Option<f64>,
}

limited!(JointLayout {
    in_row: COUNT,
    along_grain_mm: FASTENER_SPACING,
    across_grain_mm: FASTENER_SPACING,
    loaded_end_mm: FASTENER_SPACING,
    unloaded_end_mm: FASTENER_SPACING,
    loaded_edge_mm: FASTENER_SPACING,
    unloaded_edge_mm: FASTENER_SPACING
});

impl JointFastener {
    /// A fastener of a kind, diameter, head and length, and nothing else given.
    pub const fn plain(
        kind: JointFastenerKind,
        nominal_diameter_mm: f64,
        head_diameter_mm: f64,
        length_mm: f64,
    ) -> Self {
        Self {
            kind,
            nominal_diameter_mm,
            root_diameter_mm: None,
            shank_diameter_mm: None,
            head_diameter_mm,
            length_mm,
            thread_length_mm: None,
            tip_length_mm: None,
            bending_yield_mpa: None,
            tensile_strength_mpa: None,
            yield_moment_nmm: None,
            declared_withdrawal_mpa: None,
            declared_head_mpa: None,
            declared_density_kg_m3: None,
            declared_lateral_n: None,
            declared_withdrawal_n_mm: None,
            declared_pull_through_n: None,
            declared_penetration_mm: None,
            tension_capacity_n: None,
        }
    }

    /// Diameter at the thread root; of a fastener without thread the nominal one.
    pub(super) fn root_mm(&self) -> f64 {
        self.root_diameter_mm.unwrap_or(self.nominal_diameter_mm)
    }
}
