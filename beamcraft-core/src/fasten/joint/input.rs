//! The joint as the user describes it.

use crate::error::{Detail, ErrorCode, Fault, Result};
use crate::fasten::ec5::{Ec5LoadDuration, Ec5Material, Ec5ServiceClass};
use crate::fasten::nds::{LoadDuration, MemberMoisture, TemperatureBand, TimeEffect};
use crate::limits::{faults_at, limited};

/// The standard that a joint is checked to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum JointStandard {
    /// American standard, allowable stress design: loads are not factored.
    NdsAsd,
    /// American standard, load and resistance factor design: loads are factored.
    NdsLrfd,
    /// Eurocode 5: loads are design values.
    Ec5,
}

/// Kind of fastener in a joint.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum JointFastenerKind {
    /// Wood screw.
    WoodScrew,
    /// Lag screw, also called coach screw.
    LagScrew,
    /// Smooth round nail.
    SmoothNail,
    /// Nail with a ringed shank.
    RingShankNail,
}

impl JointFastenerKind {
    pub(super) const fn is_screw(self) -> bool {
        matches!(self, Self::WoodScrew | Self::LagScrew)
    }
}

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
    /// Diameter of the smooth shank of a screw, mm; left out it is taken as thinner than the thread.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub shank_diameter_mm: Option<f64>,
    /// Diameter of the head, mm.
    pub head_diameter_mm: f64,
    /// Length that enters the wood, mm; heads lie flush or on the face.
    pub length_mm: f64,
    /// Length of the thread or the rings with the point, mm; left out the whole length.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub thread_length_mm: Option<f64>,
    /// Length of the tapered tip, mm; left out 2 diameters (NDS 12.3.5.3).
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
    tension_capacity_n: CONNECTION_CAPACITY
});

/// A member of a joint.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<JointMember>))]
pub struct JointMember {
    /// Material.
    pub material: Ec5Material,
    /// Specific gravity from oven-dry mass and volume; needed by the American standard.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub specific_gravity: Option<f64>,
    /// Characteristic density, kg/m3; needed by Eurocode 5. Neither follows from the other.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub characteristic_density_kg_m3: Option<f64>,
    /// Thickness along the fastener, mm.
    pub thickness_mm: f64,
    /// Angle between the lateral load and the grain, degrees.
    pub angle_to_grain_deg: f64,
}

limited!(JointMember {
    specific_gravity: SPECIFIC_GRAVITY,
    characteristic_density_kg_m3: WOOD_DENSITY,
    thickness_mm: BEARING_LENGTH,
    angle_to_grain_deg: ANGLE_TO_GRAIN
});

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

/// How the fastener goes into the main member.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum JointDrive {
    /// Square through both members into side grain.
    SideGrain,
    /// Square through the side member into end grain.
    EndGrain,
    /// A nail driven at a slant of about 30° from the side member's face.
    ToeNailed,
    /// A screw at a slant through a pocket bored into the side member.
    Pocket,
}

/// How long the governing load acts in sum.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum JointDuration {
    /// For good: own weight, goods stored on a shelf.
    Permanent,
    /// Up to ten years; long-term in Eurocode 5.
    TenYears,
    /// Up to two months; medium-term in Eurocode 5.
    TwoMonths,
    /// Seven days; medium-term in Eurocode 5, whose short term ends before a week.
    SevenDays,
    /// Ten minutes; short-term in Eurocode 5, the lower of the classes that wind is given.
    TenMinutes,
    /// A blow; instantaneous in Eurocode 5.
    Impact,
}

impl JointDuration {
    pub(super) const fn nds(self) -> LoadDuration {
        match self {
            Self::Permanent => LoadDuration::Permanent,
            Self::TenYears => LoadDuration::TenYears,
            Self::TwoMonths => LoadDuration::TwoMonths,
            Self::SevenDays => LoadDuration::SevenDays,
            Self::TenMinutes => LoadDuration::TenMinutes,
            Self::Impact => LoadDuration::Impact,
        }
    }

    pub(super) const fn ec5(self) -> Ec5LoadDuration {
        match self {
            Self::Permanent => Ec5LoadDuration::Permanent,
            Self::TenYears => Ec5LoadDuration::LongTerm,
            Self::TwoMonths | Self::SevenDays => Ec5LoadDuration::MediumTerm,
            Self::TenMinutes => Ec5LoadDuration::ShortTerm,
            Self::Impact => Ec5LoadDuration::Instantaneous,
        }
    }
}

/// How moist the wood is in service.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum JointServiceClimate {
    /// Heated room: dry, service class 1.
    Heated,
    /// Under cover, unheated: service class 2; up to 20 % moisture, which the American standard counts as wet.
    Covered,
    /// Wet, service class 3.
    Wet,
}

impl JointServiceClimate {
    pub(super) const fn nds(self) -> MemberMoisture {
        match self {
            Self::Heated => MemberMoisture::Dry,
            Self::Covered | Self::Wet => MemberMoisture::Wet,
        }
    }

    pub(super) const fn ec5(self) -> Ec5ServiceClass {
        match self {
            Self::Heated => Ec5ServiceClass::ServiceClass1,
            Self::Covered => Ec5ServiceClass::ServiceClass2,
            Self::Wet => Ec5ServiceClass::ServiceClass3,
        }
    }
}

/// How the fasteners stand, least values.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<JointLayout>))]
pub struct JointLayout {
    /// Fasteners in one row along the grain.
    pub in_row: u32,
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

/// A joint of like fasteners through a side member into a main member, with its loads.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<JointInput>))]
pub struct JointInput {
    /// Standard that answers.
    pub standard: JointStandard,
    /// The fastener.
    pub fastener: JointFastener,
    /// Number of fasteners, sharing the load evenly.
    pub count: u32,
    /// Member under the heads.
    pub side: JointMember,
    /// Member that holds the points.
    pub main: JointMember,
    /// Layers between them that are not borne upon; none by default.
    #[cfg_attr(feature = "json", serde(default))]
    pub gaps: Vec<JointGapLayer>,
    /// How the fasteners go into the main member; square into side grain by default.
    #[cfg_attr(feature = "json", serde(default = "side_grain"))]
    pub drive: JointDrive,
    /// Diameter of the hole bored for the thread or nail, mm; left out they are driven without.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lead_hole_mm: Option<f64>,
    /// How they stand; left out distances and rows are not determined.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub layout: Option<JointLayout>,
    /// Lateral load on the whole joint, N.
    pub lateral_n: f64,
    /// Load that pulls the members apart, on the whole joint, N.
    pub withdrawal_n: f64,
    /// Duration of the load; permanent by default, as for goods that stay on a shelf.
    #[cfg_attr(feature = "json", serde(default = "permanent"))]
    pub duration: JointDuration,
    /// Time effect of load and resistance factor design, in place of the duration; dead load alone by default, the least
    /// factor.
    #[cfg_attr(feature = "json", serde(default = "dead_only"))]
    pub time_effect: TimeEffect,
    /// Moisture in service; a heated room by default.
    #[cfg_attr(feature = "json", serde(default = "heated"))]
    pub climate: JointServiceClimate,
    /// Moisture of the wood when the joint is made; dry by default, as indoor joinery is.
    #[cfg_attr(feature = "json", serde(default = "dry"))]
    pub made: MemberMoisture,
    /// Temperature of the joint; by default up to 100 °F, as in a room. Beside a hearth it may be more.
    #[cfg_attr(feature = "json", serde(default = "room_temperature"))]
    pub temperature: TemperatureBand,
    /// Partial factor gamma_M of Eurocode 5; by default the recommended 1.3, a national choice.
    #[cfg_attr(feature = "json", serde(default = "crate::fasten::ec5::recommended"))]
    pub gamma_m: f64,
}

limited!(JointInput {
    count: COUNT,
    lead_hole_mm: FASTENER_DIAMETER,
    lateral_n: FORCE,
    withdrawal_n: FORCE,
    gamma_m: PARTIAL_FACTOR
});

#[cfg(feature = "json")]
fn side_grain() -> JointDrive {
    JointDrive::SideGrain
}
#[cfg(feature = "json")]
fn permanent() -> JointDuration {
    JointDuration::Permanent
}
#[cfg(feature = "json")]
fn dead_only() -> TimeEffect {
    TimeEffect::DeadOnly
}
#[cfg(feature = "json")]
fn heated() -> JointServiceClimate {
    JointServiceClimate::Heated
}
#[cfg(feature = "json")]
fn dry() -> MemberMoisture {
    MemberMoisture::Dry
}
#[cfg(feature = "json")]
fn room_temperature() -> TemperatureBand {
    TemperatureBand::UpTo100F
}

impl JointInput {
    /// Every fault of the input.
    pub(super) fn check(&self) -> Result<()> {
        let mut faults = faults_at("fastener", &self.fastener);
        faults.extend(faults_at("side", &self.side));
        faults.extend(faults_at("main", &self.main));
        for (k, layer) in self.gaps.iter().enumerate() {
            faults.extend(faults_at(&format!("gaps[{k}]"), layer));
        }
        if let Some(layout) = &self.layout {
            faults.extend(faults_at("layout", layout));
            if layout.in_row > self.count {
                faults.push(contradiction("layout.in_row", "at most the number of fasteners"));
            }
            if layout.in_row > 1 && layout.along_grain_mm.is_none() {
                faults.push(missing("layout.along_grain_mm", "the spacing along the grain of a row"));
            }
        }
        faults.extend(faults_at("", self));
        let fastener = &self.fastener;
        let nominal_mm = fastener.nominal_diameter_mm;
        match (fastener.kind.is_screw(), fastener.root_diameter_mm) {
            (true, None) => faults.push(missing("fastener.root_diameter_mm", "the root diameter of a screw")),
            (_, Some(root_mm)) if root_mm > nominal_mm => {
                faults.push(contradiction("fastener.root_diameter_mm", "at most the nominal diameter"));
            }
            _ => {}
        }
        if fastener.head_diameter_mm < nominal_mm {
            faults.push(contradiction("fastener.head_diameter_mm", "at least the nominal diameter"));
        }
        if fastener.thread_length_mm.is_some_and(|thread_mm| thread_mm > fastener.length_mm) {
            faults.push(contradiction("fastener.thread_length_mm", "at most the length"));
        }
        if fastener.tip_length_mm.unwrap_or(2.0 * nominal_mm) > fastener.length_mm {
            faults.push(contradiction("fastener.tip_length_mm", "at most the length"));
        }
        for (path, member) in [("side", &self.side), ("main", &self.main)] {
            let (field, words, absent) = match self.standard {
                JointStandard::NdsAsd | JointStandard::NdsLrfd => (
                    "specific_gravity",
                    "a specific gravity for the American standard",
                    member.specific_gravity.is_none(),
                ),
                JointStandard::Ec5 => (
                    "characteristic_density_kg_m3",
                    "a characteristic density for Eurocode 5",
                    member.characteristic_density_kg_m3.is_none(),
                ),
            };
            if absent {
                faults.push(missing(field, words).within(path));
            }
        }
        crate::error::Error::unless_empty(faults)
    }
}

fn missing(path: &'static str, words: &'static str) -> Detail {
    Fault::plain(ErrorCode::MissingField, path, words, "give it").into()
}

fn contradiction(path: &'static str, words: &'static str) -> Detail {
    Fault::plain(ErrorCode::Inconsistent, path, words, "").into()
}
