//! The kinds that a joint is described with.

use crate::fasten::ec5::{Ec5Fastener, Ec5LoadDuration, Ec5Material, Ec5ServiceClass};
use crate::fasten::nds::{DowelFastener, DowelMaterial, LoadDuration, MemberMoisture};

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
    /// Structural screw by its declared values: hardened steel and threads of its own, which no equation for wood screws
    /// covers; what is not declared is not determined.
    StructuralScrew,
    /// Smooth round nail of bright or galvanised steel.
    SmoothNail,
    /// Smooth round nail of stainless steel.
    StainlessNail,
    /// Nail with a ringed shank.
    RingShankNail,
    /// Bolt with washers, through all members.
    Bolt,
    /// Smooth steel dowel without head, through all members.
    Dowel,
}

impl JointFastenerKind {
    pub(super) const fn is_screw(self) -> bool {
        matches!(self, Self::WoodScrew | Self::LagScrew | Self::StructuralScrew)
    }

    pub(super) const fn is_nail(self) -> bool {
        matches!(self, Self::SmoothNail | Self::StainlessNail | Self::RingShankNail)
    }

    /// Whether it goes through all members instead of standing in the last one.
    pub(super) const fn goes_through(self) -> bool {
        matches!(self, Self::Bolt | Self::Dowel)
    }

    /// As the American standard groups it; bolts share the factors of lag screws.
    pub(super) const fn nds(self) -> DowelFastener {
        match self {
            Self::WoodScrew | Self::StructuralScrew => DowelFastener::WoodScrew,
            Self::LagScrew | Self::Bolt | Self::Dowel => DowelFastener::LagScrew,
            Self::SmoothNail => DowelFastener::SmoothNail,
            Self::StainlessNail => DowelFastener::SmoothStainlessNail,
            Self::RingShankNail => DowelFastener::RingShankNail,
        }
    }

    pub(super) const fn ec5(self) -> Ec5Fastener {
        match self {
            Self::WoodScrew | Self::LagScrew | Self::StructuralScrew => Ec5Fastener::Screw,
            Self::SmoothNail | Self::StainlessNail => Ec5Fastener::RoundNail,
            Self::RingShankNail => Ec5Fastener::ThreadedNail,
            Self::Bolt => Ec5Fastener::Bolt,
            Self::Dowel => Ec5Fastener::Dowel,
        }
    }
}

/// What a member of a joint is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum JointMaterial {
    /// Solid or glued laminated timber of softwood.
    Softwood,
    /// Solid or glued laminated timber of hardwood.
    Hardwood,
    /// Laminated veneer lumber.
    Lvl,
    /// Plywood; in the American standard Structural I or Marine from a specific gravity of 0.50 on, else any other grade.
    Plywood,
    /// Oriented strand board; in Eurocode 5 grade 3 or 4.
    #[cfg_attr(feature = "json", serde(rename = "osb_3_4"))]
    Osb34,
    /// Oriented strand board of grade 2, or particleboard P4 or P5.
    #[cfg_attr(feature = "json", serde(rename = "osb_2_particleboard"))]
    Osb2Particleboard,
    /// Hardboard.
    Hardboard,
    /// Medium density fibreboard MDF.LA.
    MdfLa,
    /// Steel plate or sheet. The American standard: A36 from 1/4 in on, A653 grade 33 up to 3 gage (6.07 mm).
    Steel,
    /// Concrete of at least 2500 psi (17.2 MPa), as main member of the American standard.
    Concrete,
    /// Masonry: neither standard has a value; the American one takes a tested bearing strength instead.
    Masonry,
}

impl JointMaterial {
    /// Whether it is solid, glued laminated or veneer lumber.
    pub(super) const fn is_timber(self) -> bool {
        matches!(self, Self::Softwood | Self::Hardwood | Self::Lvl)
    }

    /// Whether it is a wood-based panel.
    pub(super) const fn is_panel(self) -> bool {
        matches!(self, Self::Plywood | Self::Osb34 | Self::Osb2Particleboard | Self::Hardboard | Self::MdfLa)
    }

    /// Whether it is wood or made of it.
    pub(super) const fn is_wooden(self) -> bool {
        self.is_timber() || self.is_panel()
    }

    /// As Eurocode 5 names it; nothing for what is no wood.
    pub(super) const fn ec5(self) -> Option<Ec5Material> {
        Some(match self {
            Self::Softwood => Ec5Material::Softwood,
            Self::Hardwood => Ec5Material::Hardwood,
            Self::Lvl => Ec5Material::Lvl,
            Self::Plywood => Ec5Material::Plywood,
            Self::Osb34 => Ec5Material::Osb34,
            Self::Osb2Particleboard => Ec5Material::Osb2Particleboard,
            Self::Hardboard => Ec5Material::Hardboard,
            Self::MdfLa => Ec5Material::MdfLa,
            Self::Steel | Self::Concrete | Self::Masonry => return None,
        })
    }

    /// The row of the American standard's table of bearing strengths; nothing where the standard is silent. Wood has a
    /// formula instead.
    pub(super) fn nds(self, specific_gravity: f64, thickness_mm: f64) -> Option<DowelMaterial> {
        match self {
            Self::Softwood | Self::Hardwood | Self::Lvl => Some(DowelMaterial::Wood),
            Self::Plywood if specific_gravity >= 0.5 => Some(DowelMaterial::PlywoodStructural1),
            Self::Plywood => Some(DowelMaterial::PlywoodOther),
            Self::Osb34 => Some(DowelMaterial::OrientedStrandBoard),
            Self::Steel if thickness_mm >= THICK_STEEL_MM - EDGE_MM => Some(DowelMaterial::SteelPlateA36),
            Self::Steel if thickness_mm <= THIN_STEEL_MM + EDGE_MM => Some(DowelMaterial::SheetSteelA653),
            Self::Concrete => Some(DowelMaterial::Concrete),
            Self::Osb2Particleboard | Self::Hardboard | Self::MdfLa | Self::Steel | Self::Masonry => None,
        }
    }
}

/// A quarter inch, from which the row of plates holds, and 3 gage, to which that of sheets does, mm.
const THICK_STEEL_MM: f64 = 6.35;
const THIN_STEEL_MM: f64 = 6.0706;
/// How far a thickness may miss an edge of the table: the conversion from inches rounds.
const EDGE_MM: f64 = 1e-9;

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

/// How a lateral load runs to a pocket screw.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum JointPocketLoad {
    /// Square to the plane in which the screw slants: along the width of the board with the pocket.
    AcrossSlant,
    /// Through the board's thickness, so that it pulls on the screw.
    PullsScrew,
    /// Through the board's thickness, so that it presses the screw in.
    PressesScrew,
}
