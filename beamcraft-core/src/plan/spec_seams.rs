//! What the caller says about the seasons of the room and the exactness of the saw. Both may be left out.

use crate::limits::limited;
use crate::movement::{BoardCut, GlueFamily};
use crate::tolerance::{SeamHold, TiltSetting};
use crate::wood::{IndoorYear, OutdoorYear};

/// The seasons that the body lives through, and how it is glued.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<SeasonsSpec>))]
pub struct SeasonsSpec {
    /// Air of the room through the year, or the moisture contents that it leads to.
    pub climate: SeasonClimate,
    /// Moisture content of the boards when the body is glued, %; that in service when left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub made_moisture_pct: Option<f64>,
    /// How the boards were sawn; flat sawn when left out, which moves most across the width.
    #[cfg_attr(feature = "json", serde(default = "flat_sawn"))]
    pub cut: BoardCut,
    /// Angle between growth rings and wide face, degrees; for `ring_angle` only.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub ring_angle_deg: Option<f64>,
    /// How returns are fastened to top and bottom; glued over the whole depth when left out, as a mitre invites to.
    #[cfg_attr(feature = "json", serde(default))]
    pub returns: ReturnFixing,
    /// Glued part at the front when only that is glued, mm; 50 when left out (common practice, no source).
    #[cfg_attr(feature = "json", serde(default = "front_part"))]
    pub glued_front_mm: f64,
    /// Shank of the screws in the slots at the rear, mm; 4 when left out (common practice, no source).
    #[cfg_attr(feature = "json", serde(default = "shank"))]
    pub slot_shank_mm: f64,
    /// Movement at a return and opening of a seam that are tolerated, mm; 0.3 when left out (chosen, no source).
    #[cfg_attr(feature = "json", serde(default = "tolerated"))]
    pub tolerated_mm: f64,
    /// Glue of the seams; common wood glue when left out, what most shops have open.
    #[cfg_attr(feature = "json", serde(default = "common_glue"))]
    pub glue: GlueFamily,
    /// Greatest temperature that a seam keeps for hours, °C, measured over the hearth with the fire at work; not known when left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub seam_temperature_c: Option<f64>,
}

limited!(SeasonsSpec {
    made_moisture_pct: MOISTURE,
    ring_angle_deg: RING_ANGLE,
    glued_front_mm: BODY_SIZE,
    slot_shank_mm: FASTENER_DIAMETER,
    tolerated_mm: SMALL_LENGTH,
    seam_temperature_c: WOOD_TEMPERATURE,
});

#[cfg(feature = "json")]
fn flat_sawn() -> BoardCut {
    BoardCut::FlatSawn
}

#[cfg(feature = "json")]
fn front_part() -> f64 {
    50.0
}

#[cfg(feature = "json")]
fn shank() -> f64 {
    4.0
}

#[cfg(feature = "json")]
fn tolerated() -> f64 {
    0.3
}

#[cfg(feature = "json")]
fn common_glue() -> GlueFamily {
    GlueFamily::PolyvinylAcetate
}

/// What is known about the room through the year.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum SeasonClimate {
    /// The driest and the wettest moisture content of the wood.
    MoistureRange(MoistureRange),
    /// Twelve months of the room itself.
    Indoor(IndoorYear),
    /// Twelve months outdoors, by the weather service; the room heats the air.
    Outdoor(OutdoorYear),
}

/// The two ends of a year.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<MoistureRange>))]
pub struct MoistureRange {
    /// Least moisture content of the wood, %.
    pub driest_pct: f64,
    /// Greatest moisture content of the wood, %.
    pub wettest_pct: f64,
}

limited!(MoistureRange { driest_pct: MOISTURE, wettest_pct: MOISTURE });

/// How a return is fastened to the top and the bottom.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum ReturnFixing {
    /// Glued over the whole depth.
    #[default]
    GluedAll,
    /// Glued at the front only; screws in slots or a dry spline behind.
    GluedFront,
    /// Not glued: slotted screws or clips alone.
    NotGlued,
}

/// How exact the cuts are, and which gaps the maker lives with. Only test cuts tell: nothing here has a published value.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<AccuracySpec>))]
pub struct AccuracySpec {
    /// Standard deviation of the blade's tilt, degrees.
    pub tilt_sd_deg: f64,
    /// Whether edges of one tilt are cut at one setting of the saw; one setting when left out, common practice.
    #[cfg_attr(feature = "json", serde(default = "one_setting"))]
    pub setting: TiltSetting,
    /// Standard deviation of the width that a fence setting gives, mm; none if left out.
    #[cfg_attr(feature = "json", serde(default))]
    pub width_sd_mm: f64,
    /// Standard deviation of the length that a stop gives, mm; none if left out.
    #[cfg_attr(feature = "json", serde(default))]
    pub length_sd_mm: f64,
    /// Standard deviation of the thickness from board to board, mm; none if left out.
    #[cfg_attr(feature = "json", serde(default))]
    pub thickness_sd_mm: f64,
    /// Standard deviation of the rise of a board's cup, mm; none if left out.
    #[cfg_attr(feature = "json", serde(default))]
    pub cup_sd_mm: f64,
    /// Standard deviation of the bow of a long edge out of its plane, mm; none if left out.
    #[cfg_attr(feature = "json", serde(default))]
    pub bow_sd_mm: f64,
    /// Standard deviation of the corners at glue-up, degrees; none if left out.
    #[cfg_attr(feature = "json", serde(default))]
    pub corner_sd_deg: f64,
    /// What holds the boards at glue-up; drawn tight by clamps when left out.
    #[cfg_attr(feature = "json", serde(default = "drawn_tight"))]
    pub hold: SeamHold,
    /// Deliberate over-tilt of every mitred edge, degrees; none if left out.
    #[cfg_attr(feature = "json", serde(default))]
    pub over_tilt_deg: f64,
    /// Visible gap up to which a seam can be burnished shut, mm; the maker's own threshold.
    pub burnish_gap_mm: f64,
    /// Visible gap up to which filler will do, mm; the maker's own threshold, at least the one for burnishing.
    pub filler_gap_mm: f64,
    /// Share of seams that should need no more than burnishing; 0.95 if left out, 19 of 20.
    #[cfg_attr(feature = "json", serde(default = "most"))]
    pub wanted_share: f64,
    /// Number of samples; 20 000 if left out: shares are then good to about half of a hundredth.
    #[cfg_attr(feature = "json", serde(default = "samples"))]
    pub samples: u32,
    /// Seed of the random numbers; 1 if left out. The same seed gives the same result.
    #[cfg_attr(feature = "json", serde(default = "one"))]
    pub seed: u32,
}

limited!(AccuracySpec {
    tilt_sd_deg: ANGLE_SPREAD,
    width_sd_mm: SIZE_SPREAD,
    length_sd_mm: SIZE_SPREAD,
    thickness_sd_mm: SIZE_SPREAD,
    cup_sd_mm: SIZE_SPREAD,
    bow_sd_mm: SIZE_SPREAD,
    corner_sd_deg: ANGLE_SPREAD,
    over_tilt_deg: ANGLE_ERROR,
    burnish_gap_mm: SMALL_LENGTH,
    filler_gap_mm: SMALL_LENGTH,
    wanted_share: WANTED_SHARE,
    samples: SAMPLES_OF_PLAN,
    seed: SEED,
});

#[cfg(feature = "json")]
fn one_setting() -> TiltSetting {
    TiltSetting::OneForBoth
}

#[cfg(feature = "json")]
fn drawn_tight() -> SeamHold {
    SeamHold::DrawnTight
}

#[cfg(feature = "json")]
fn most() -> f64 {
    0.95
}

#[cfg(feature = "json")]
fn samples() -> u32 {
    20_000
}

#[cfg(feature = "json")]
fn one() -> u32 {
    1
}
