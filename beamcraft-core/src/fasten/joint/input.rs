//! The joint as the user describes it.

use super::kinds::{JointDrive, JointDuration, JointPocketLoad, JointServiceClimate, JointStandard};
use super::parts::{JointFastener, JointGapLayer, JointLayout, JointMember, JointPocket};
use crate::error::{Detail, ErrorCode, Fault, Result};
use crate::fasten::ec5::RECOMMENDED_GAMMA_M;
use crate::fasten::nds::{MemberMoisture, TemperatureBand, TimeEffect};
use crate::limits::{faults_at, limited};
use crate::numeric::real::sin_cos_deg;

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
    /// Member that holds the points; in double shear the middle one.
    pub main: JointMember,
    /// Member beyond the main one, which makes the joint one of double shear; left out it is single shear.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub second_side: Option<JointMember>,
    /// Layers between side and main member that are not borne upon, in double shear the same in both planes; none by
    /// default.
    #[cfg_attr(feature = "json", serde(default))]
    pub gaps: Vec<JointGapLayer>,
    /// How the fasteners go into the main member; square into side grain by default.
    #[cfg_attr(feature = "json", serde(default = "side_grain"))]
    pub drive: JointDrive,
    /// The pocket, for a screw driven through one.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub pocket: Option<JointPocket>,
    /// Diameter of the hole bored for the thread or nail, mm; left out they are driven without. Of bolts and dowels
    /// the hole in the wood; left out it is the one that the standard asks for.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lead_hole_mm: Option<f64>,
    /// How much wider than the fastener the holes in steel plates are, mm; by default nothing. From a tenth of the diameter
    /// on Eurocode 5 counts a plate as thin.
    #[cfg_attr(feature = "json", serde(default))]
    pub plate_clearance_mm: f64,
    /// How they stand in the main member, and in the side members unless these have their own; left out distances and
    /// rows are not determined.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub layout: Option<JointLayout>,
    /// How they stand in the side members, where their grain, ends or edges lie otherwise.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub side_layout: Option<JointLayout>,
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
    plate_clearance_mm: SMALL_LENGTH,
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
    /// A joint of one fastener through two members that touch, without loads; dry, at room temperature, its load
    /// permanent, driven square into side grain without a hole, and with the recommended partial factor.
    pub const fn plain(standard: JointStandard, fastener: JointFastener, side: JointMember, main: JointMember) -> Self {
        Self {
            standard,
            fastener,
            count: 1,
            side,
            main,
            second_side: None,
            gaps: Vec::new(),
            drive: JointDrive::SideGrain,
            pocket: None,
            lead_hole_mm: None,
            plate_clearance_mm: 0.0,
            layout: None,
            side_layout: None,
            lateral_n: 0.0,
            withdrawal_n: 0.0,
            duration: JointDuration::Permanent,
            time_effect: TimeEffect::DeadOnly,
            climate: JointServiceClimate::Heated,
            made: MemberMoisture::Dry,
            temperature: TemperatureBand::UpTo100F,
            gamma_m: RECOMMENDED_GAMMA_M,
        }
    }

    /// The members with their paths, from the heads on.
    pub(super) fn members(&self) -> impl Iterator<Item = (&'static str, &JointMember)> {
        let second = self.second_side.as_ref().map(|member| ("second_side", member));
        [("side", &self.side), ("main", &self.main)].into_iter().chain(second)
    }

    /// Number of shear planes.
    pub(super) const fn planes(&self) -> u32 {
        if self.second_side.is_some() { 2 } else { 1 }
    }

    /// The members with how the fasteners stand in them.
    pub(super) fn laid_members(&self) -> impl Iterator<Item = (&'static str, &JointMember, Option<&JointLayout>)> {
        let (main, side) = (self.layout.as_ref(), self.side_layout.as_ref().or(self.layout.as_ref()));
        self.members().map(move |(path, member)| (path, member, if path == "main" { main } else { side }))
    }

    /// Rows of a layout, those not full counted.
    pub(super) const fn rows(&self, layout: &JointLayout) -> u32 {
        self.count.div_ceil(layout.in_row)
    }

    /// Load of all fasteners across and along their axis, N: a pocket screw stands at a slant, and what it gets from both
    /// loads is added up, on the safe side.
    pub(super) fn loads_n(&self) -> (f64, f64) {
        let Some(pocket) = &self.pocket else { return (self.lateral_n, self.withdrawal_n) };
        let (sine, cosine) = sin_cos_deg(pocket.angle_deg);
        let (across_n, along_n) = (self.withdrawal_n * sine, self.withdrawal_n * cosine);
        match pocket.load {
            JointPocketLoad::AcrossSlant => ((self.lateral_n * self.lateral_n + across_n * across_n).sqrt(), along_n),
            JointPocketLoad::PullsScrew => (self.lateral_n * cosine + across_n, self.lateral_n * sine + along_n),
            JointPocketLoad::PressesScrew => (self.lateral_n * cosine + across_n, along_n),
        }
    }

    /// Every fault of the input.
    pub(super) fn check(&self) -> Result<()> {
        let mut faults = faults_at("fastener", &self.fastener);
        for (path, member) in self.members() {
            faults.extend(faults_at(path, member));
            faults.extend(self.member_faults(path, member));
        }
        for (k, layer) in self.gaps.iter().enumerate() {
            faults.extend(faults_at(&format!("gaps[{k}]"), layer));
        }
        for (path, layout) in [("layout", &self.layout), ("side_layout", &self.side_layout)] {
            if let Some(layout) = layout {
                faults.extend(faults_at(path, layout));
                faults.extend(self.layout_faults(layout).into_iter().map(|fault| fault.within(path)));
            }
        }
        if let Some(pocket) = &self.pocket {
            faults.extend(faults_at("pocket", pocket));
        }
        faults.extend(self.drive_fault());
        faults.extend(faults_at("", self));
        self.fastener_faults(&mut faults);
        crate::error::Error::unless_empty(faults)
    }

    fn drive_fault(&self) -> Option<Detail> {
        let screw = self.fastener.kind.is_screw();
        match (self.drive, self.pocket) {
            (JointDrive::Pocket, None) => Some(missing("pocket", "the pocket of a screw driven through one")),
            (JointDrive::Pocket, Some(_)) if !screw => Some(contradiction("drive", "a pocket for a screw")),
            (JointDrive::SideGrain | JointDrive::EndGrain | JointDrive::ToeNailed, Some(_)) => {
                Some(contradiction("pocket", "left out for a fastener that goes through none"))
            }
            (JointDrive::SideGrain, _) => None,
            _ if self.second_side.is_some() => {
                Some(contradiction("second_side", "double shear with a fastener square through side grain"))
            }
            _ if self.fastener.kind.goes_through() => {
                Some(contradiction("drive", "bolts and dowels square through side grain"))
            }
            _ => None,
        }
    }

    fn layout_faults(&self, layout: &JointLayout) -> Vec<Detail> {
        let mut faults = Vec::new();
        if layout.in_row > self.count {
            faults.push(contradiction("in_row", "at most the number of fasteners"));
        }
        if layout.in_row > 1 && layout.along_grain_mm.is_none() {
            faults.push(missing("along_grain_mm", "the spacing along the grain of a row"));
        }
        faults
    }

    fn fastener_faults(&self, faults: &mut Vec<Detail>) {
        let fastener = &self.fastener;
        let nominal_mm = fastener.nominal_diameter_mm;
        match (fastener.kind.is_screw(), fastener.root_diameter_mm) {
            (true, None) => faults.push(missing("fastener.root_diameter_mm", "the root diameter of a screw")),
            (_, Some(root_mm)) if root_mm > nominal_mm + EDGE_MM => {
                faults.push(contradiction("fastener.root_diameter_mm", "at most the nominal diameter"));
            }
            _ => {}
        }
        if fastener.shank_diameter_mm.is_some_and(|shank_mm| shank_mm > nominal_mm + EDGE_MM) {
            faults.push(contradiction("fastener.shank_diameter_mm", "at most the nominal diameter"));
        }
        if fastener.head_diameter_mm < nominal_mm - EDGE_MM {
            faults.push(contradiction("fastener.head_diameter_mm", "at least the nominal diameter"));
        }
        if fastener.thread_length_mm.is_some_and(|thread_mm| thread_mm > fastener.length_mm + EDGE_MM) {
            faults.push(contradiction("fastener.thread_length_mm", "at most the length"));
        }
        if super::lay::tip_mm(fastener) > fastener.length_mm + EDGE_MM {
            faults.push(contradiction("fastener.tip_length_mm", "at most the length"));
        }
    }

    fn member_faults(&self, path: &'static str, member: &JointMember) -> Option<Detail> {
        let (field, words, absent) = match self.standard {
            JointStandard::NdsAsd | JointStandard::NdsLrfd => (
                "specific_gravity",
                "a specific gravity for the American standard",
                member.specific_gravity.is_none() && member.material.is_wooden(),
            ),
            JointStandard::Ec5 => (
                "characteristic_density_kg_m3",
                "a characteristic density for Eurocode 5",
                member.characteristic_density_kg_m3.is_none() && member.material.is_wooden(),
            ),
        };
        if absent {
            return Some(missing(field, words).within(path));
        }
        None
    }
}

/// How far a length may miss another one: a figure typed in inches rounds.
const EDGE_MM: f64 = 1e-9;

fn missing(path: &'static str, words: &'static str) -> Detail {
    Fault::plain(ErrorCode::MissingField, path, words, "give it").into()
}

fn contradiction(path: &'static str, words: &'static str) -> Detail {
    Fault::plain(ErrorCode::Inconsistent, path, words, "").into()
}
