//! What the caller says about another fixing than the cleat, and about services in the body.

use crate::fasten::JointInput;
use crate::limits::limited;
use crate::site::CeilingFrame;

/// A frame that the body slides over, and both joints.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<FixingSpec>))]
pub struct FixingSpec {
    /// Where the frame is.
    pub place: FixingPlace,
    /// Joists or studs from the left end of the body, mm; the studs of the wall behind it when left out.
    #[cfg_attr(feature = "json", serde(default))]
    pub supports_mm: Vec<f64>,
    /// Pull at the body away from the frame, such as somebody's hand at its edge, N; 0, the default, is none.
    #[cfg_attr(feature = "json", serde(default))]
    pub pull_n: f64,
    /// Joint of the frame to one stud or joist; the loads of the plan act besides those given there.
    pub support_joint: JointInput,
    /// Joint of the body to the frame, all its cross fasteners together; the loads of the plan act besides those given there.
    pub cross_joint: JointInput,
}

limited!(FixingSpec { pull_n: FORCE });

/// Where a frame is fixed.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum FixingPlace {
    /// On the wall; the body lies on it.
    Ledger(LedgerSpec),
    /// Under joists; the body hangs from it by its cross fasteners.
    Ceiling(CeilingFrame),
}

/// A ledger or frame on the wall.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<LedgerSpec>))]
pub struct LedgerSpec {
    /// Height of the screws above the lower edge of the frame, mm: the arm that holds it to the wall.
    pub row_up_mm: f64,
}

limited!(LedgerSpec { row_up_mm: LEVER });

/// Cables, drivers and a television. Their makers say what warmth they stand; what is not given is asked for, never assumed.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields, default))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<ServicesSpec>))]
pub struct ServicesSpec {
    /// A driver or transformer of lights.
    pub driver: DriverPlace,
    /// Highest temperature around the driver that its maker allows, °C.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub driver_limit_c: Option<f64>,
    /// Highest temperature in the hollow for hours, °C, measured where it hangs with the appliance at work.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub hollow_temperature_c: Option<f64>,
    /// A television above the body.
    pub television: TelevisionPlace,
    /// Highest temperature at the television that its maker allows, °C.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub television_limit_c: Option<f64>,
    /// Highest temperature at the television for hours, °C, measured there with the appliance at work.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub television_temperature_c: Option<f64>,
    /// Width of a chase for cables through the frame pieces, mm; none when left out.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub cable_chase_mm: Option<f64>,
}

limited!(ServicesSpec {
    driver_limit_c: AIR_TEMPERATURE,
    hollow_temperature_c: AIR_TEMPERATURE,
    television_limit_c: AIR_TEMPERATURE,
    television_temperature_c: AIR_TEMPERATURE,
    cable_chase_mm: SMALL_LENGTH,
});

impl Default for ServicesSpec {
    fn default() -> Self {
        Self {
            driver: DriverPlace::None,
            driver_limit_c: None,
            hollow_temperature_c: None,
            television: TelevisionPlace::None,
            television_limit_c: None,
            television_temperature_c: None,
            cable_chase_mm: None,
        }
    }
}

/// Where a driver of lights is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum DriverPlace {
    /// There is none, or it is elsewhere.
    #[default]
    None,
    /// In the closed hollow of the body.
    InHollow,
}

/// Whether a television hangs above the body.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum TelevisionPlace {
    /// There is none.
    #[default]
    None,
    /// Above the body.
    Above,
}
