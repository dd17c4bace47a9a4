//! What the seasons and the saw make of the seams: what comes out.

use crate::finding::CautionText;
use crate::movement::{
    BodyMovement, CleatMovement, CrossGrainFight, GlueLineDemand, MitreMovement, SlotLength, YearlyMovement,
};
use crate::shell::EdgeId;
use crate::tolerance::{OverTilt, SawAccuracy, ToleranceStack};

/// The body through the year.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct MovementPlan {
    /// Moisture content of the boards when the body is glued, %.
    pub made_moisture_pct: f64,
    /// Change of the outer size when driest and when wettest, with the strains of the boards.
    pub outer: BodyMovement,
    /// Every panel in each month; absent where only the ends of the year were given.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub year: Option<YearlyMovement>,
    /// Every mitred seam.
    pub seams: Vec<SeamSeasons>,
    /// The cleat; absent where it does not fit or the movement of its wood is not known.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub cleat: Option<CleatSeasons>,
    /// Top and bottom against the returns, whose grain runs front to back; absent without a return.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub returns: Option<CrossGrainFight>,
    /// Slot for a screw at the rear of a return, in the return; absent where the whole depth is glued.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub rear_slot: Option<SlotLength>,
    /// Demand on the glue lines and what warmth makes of the glue.
    pub glue_line: GlueLineDemand,
    /// Least moisture content that a face comes to that keeps the temperature given, %; absent where it is not known.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub warm_face_moisture_pct: Option<f64>,
    /// Cautions that belong to these numbers.
    pub cautions: Vec<CautionText>,
}

/// One mitred seam at the ends of the year.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SeamSeasons {
    /// The seam.
    pub seam: EdgeId,
    /// When driest.
    pub driest: MitreMovement,
    /// When wettest.
    pub wettest: MitreMovement,
    /// Greatest opening at the show edge if the corner is held and the glue holds nothing, mm.
    pub show_opening_mm: f64,
    /// Greatest opening at the heel in the same way, mm.
    pub heel_opening_mm: f64,
}

/// The cleat at the ends of the year.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct CleatSeasons {
    /// When driest.
    pub driest: CleatMovement,
    /// When wettest.
    pub wettest: CleatMovement,
}

/// The seams as the saw makes them.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct TolerancePlan {
    /// Visible gaps at every seam, and which error matters most.
    pub stack: ToleranceStack,
    /// The longest seam across its section, about which saw and over-tilt are asked.
    pub seam: EdgeId,
    /// How exact the tilt must be for the wanted share of seams.
    pub saw: SawAccuracy,
    /// Deliberate over-tilt that would close the wanted share of seams, and its price: a choice to offer.
    pub over_tilt: OverTilt,
}
