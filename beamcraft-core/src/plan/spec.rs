//! What the caller says about a job: one readable document.
//!
//! Only the body and the wood must be given. What is left out has a default with its reason beside the field, or, where
//! no honest default exists (the studs, the appliance, the finish), leaves the answer that needs it *not determined*.

use crate::fasten::{LoadsTogether, ScrewSize};
use crate::finish::{ApplicationMethod, FinishName};
use crate::frame::GluePace;
use crate::limits::limited;
use crate::saw::SawSpec;
use crate::setting::{Appliance, BodyPlace, FireOpening, Obstruction, Wall, WallSurvey};
use crate::shell::Leg;
use crate::site::{MantelRule, OwnClearanceRule};
use crate::wood::WoodFigures;

use super::spec_fixing::{FixingSpec, ServicesSpec};
use super::spec_seams::{AccuracySpec, SeasonsSpec};

/// Everything a plan is computed from.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct BeamSpec {
    /// Format of this document; 1.
    pub beamcraft_spec: u32,
    /// Name of the job.
    #[cfg_attr(feature = "json", serde(default))]
    pub name: String,
    /// How lengths are written in drawings and reports.
    #[cfg_attr(feature = "json", serde(default))]
    pub lengths: ReportLengths,
    /// The hollow body.
    pub body: BodySpec,
    /// The wood of the panels.
    pub wood: WoodSpec,
    /// The seasons of the room and the glue; without it no movement is determined.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub seasons: Option<SeasonsSpec>,
    /// How exact the cuts are; without it no gap is determined.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub accuracy: Option<AccuracySpec>,
    /// The saw that cuts the bevels.
    #[cfg_attr(feature = "json", serde(default))]
    pub saw: SawSpec,
    /// Frame pieces inside.
    #[cfg_attr(feature = "json", serde(default))]
    pub frame: FrameSpec,
    /// The hanging cleat.
    #[cfg_attr(feature = "json", serde(default))]
    pub cleat: CleatSpec,
    /// A frame on the wall or a nailer under a ceiling that the body slides over, in place of the cleat.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub fixing: Option<FixingSpec>,
    /// Where it hangs; without it nothing that depends on studs, heights or heat is determined.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub site: Option<SiteSpec>,
    /// How the body is glued up: the open time of the glue and the pace of the work.
    #[cfg_attr(feature = "json", serde(default))]
    pub glue_up: GluePace,
    /// What the body shall carry.
    #[cfg_attr(feature = "json", serde(default))]
    pub load: LoadSpec,
    /// The finish; without it no quantity is determined.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub finish: Option<FinishSpec>,
}

/// How lengths are written.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum ReportLengths {
    /// Millimetres to a tenth.
    #[default]
    Metric,
    /// Feet and inches to a thirty-second.
    Inches,
}

/// A hollow body: one or more legs.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct BodySpec {
    /// The legs in order from left to right; this version computes bodies of one leg.
    pub legs: Vec<LegShape>,
}

/// A leg by the form of its section.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum LegShape {
    /// Upright front, level top and bottom.
    Rectangular(Leg),
}

/// The wood of the panels.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<WoodSpec>))]
pub struct WoodSpec {
    /// Common or botanical name of a listed species, such as `white ash`; any name where figures are given.
    pub species: String,
    /// The wood by numbers, for one that is not listed; nothing is then looked up.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub figures: Option<WoodFigures>,
    /// Moisture content in service, %; 8 is the handbook's recommended average for interior wood in most of the US.
    #[cfg_attr(feature = "json", serde(default = "indoor_moisture"))]
    pub moisture_pct: f64,
}

limited!(WoodSpec { moisture_pct: MOISTURE });

#[cfg(feature = "json")]
fn indoor_moisture() -> f64 {
    8.0
}

/// Frame pieces inside the body.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields, default))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<FrameSpec>))]
pub struct FrameSpec {
    /// Thickness of a frame piece along the body, mm.
    pub piece_thickness_mm: f64,
    /// How much shorter than the space a piece is cut, mm; a piece that binds pushes the mitres open.
    pub clearance_mm: f64,
    /// Distance from each inner end to the nearest piece, mm; 30 leaves room for glue at the end mitres.
    pub end_margin_mm: f64,
    /// Greatest distance between the centres of neighbouring pieces, mm; 450 is a choice, no published rule.
    pub greatest_spacing_mm: f64,
    /// Distance to keep from the middle of each wall screw to a frame piece, mm; 15 is a choice, room for a head that stands
    /// proud of the strip.
    pub screw_clear_mm: f64,
    /// Glue blocks along the long seams behind the front; none when left out.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub blocks: Option<BlockSpec>,
}

limited!(FrameSpec {
    piece_thickness_mm: BOARD_THICKNESS,
    clearance_mm: SMALL_LENGTH,
    end_margin_mm: LENGTH,
    greatest_spacing_mm: SPACING,
    screw_clear_mm: SMALL_LENGTH,
});

impl Default for FrameSpec {
    fn default() -> Self {
        Self {
            piece_thickness_mm: 20.0,
            clearance_mm: 1.0,
            end_margin_mm: 30.0,
            greatest_spacing_mm: 450.0,
            screw_clear_mm: 15.0,
            blocks: None,
        }
    }
}

/// Glue blocks along the long seams.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields, default))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<BlockSpec>))]
pub struct BlockSpec {
    /// Width of each glued face of a block, mm; 20 is a choice.
    pub face_mm: f64,
    /// Length of a block along the seam, mm; 60 is a choice.
    pub length_mm: f64,
    /// Greatest distance between the centres of neighbours, mm; 250 is a choice.
    pub greatest_spacing_mm: f64,
    /// Screws through the blocks, besides glue; none when left out.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub screws: Option<BlockScrewSpec>,
}

limited!(BlockSpec { face_mm: BOARD_THICKNESS, length_mm: BOARD_THICKNESS, greatest_spacing_mm: SPACING });

impl Default for BlockSpec {
    fn default() -> Self {
        Self { face_mm: 20.0, length_mm: 60.0, greatest_spacing_mm: 250.0, screws: None }
    }
}

/// Screws through the glue blocks into both boards of a seam, driven from inside while the back is open.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<BlockScrewSpec>))]
pub struct BlockScrewSpec {
    /// Length of a screw, mm.
    pub length_mm: f64,
    /// How deep its head is sunk into the block, mm.
    #[cfg_attr(feature = "json", serde(default))]
    pub sunk_mm: f64,
    /// Length of the driver without its bit, along the screw, mm; of an angle driver the height of its head.
    pub driver_length_mm: f64,
    /// Length of the bit that stands out of the driver, mm; 50 is a common size.
    #[cfg_attr(feature = "json", serde(default = "usual_bit"))]
    pub bit_length_mm: f64,
    /// Half the width of the driver, mm.
    pub driver_radius_mm: f64,
    /// Least wood to leave between tip and show face, mm; 3 is a choice, no published rule.
    #[cfg_attr(feature = "json", serde(default = "usual_cover"))]
    pub least_cover_mm: f64,
}

limited!(BlockScrewSpec {
    length_mm: FASTENER_LENGTH,
    sunk_mm: SMALL_LENGTH,
    driver_length_mm: SMALL_LENGTH,
    bit_length_mm: SMALL_LENGTH,
    driver_radius_mm: SMALL_LENGTH,
    least_cover_mm: SMALL_LENGTH,
});

#[cfg(feature = "json")]
fn usual_bit() -> f64 {
    50.0
}
#[cfg(feature = "json")]
fn usual_cover() -> f64 {
    3.0
}

/// The bevelled two-part strip that carries the body.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields, default))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<CleatSpec>))]
pub struct CleatSpec {
    /// Width of the strip that is ripped into the two halves, mm.
    pub strip_width_mm: f64,
    /// Thickness of the strip, mm.
    pub thickness_mm: f64,
    /// Bevel from a square cut, degrees.
    pub bevel_deg: f64,
    /// How much is taken off each sharp point, mm; saves twice as much lift and cures the feather edges.
    pub blunt_mm: f64,
    /// Gap between the inside of the top and the beam half, mm.
    pub below_top_mm: f64,
    /// How much shorter than the beam half the wall half is, mm, for side adjustment.
    pub side_play_mm: f64,
    /// Coefficient of friction on the seat, for information only; no check passes on it.
    pub friction: f64,
    /// Species of the strip; the wood of the panels when it and the figures are left out.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub species: Option<String>,
    /// The wood of the strip by numbers, for one that is not listed.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub figures: Option<WoodFigures>,
    /// The removable lock that keeps the body from being lifted or tipped off the seat.
    pub lock: LockSpec,
    /// The screws of the wall half.
    pub screws: ScrewSpec,
}

limited!(CleatSpec {
    strip_width_mm: BODY_SIZE,
    thickness_mm: BOARD_THICKNESS,
    bevel_deg: CLEAT_BEVEL,
    blunt_mm: SMALL_LENGTH,
    below_top_mm: SMALL_LENGTH,
    side_play_mm: SMALL_LENGTH,
    friction: FRICTION,
});

impl Default for CleatSpec {
    fn default() -> Self {
        Self {
            strip_width_mm: 90.0,
            thickness_mm: 18.0,
            bevel_deg: 45.0,
            blunt_mm: 2.0,
            below_top_mm: 0.0,
            side_play_mm: 20.0,
            friction: 0.3,
            species: None,
            figures: None,
            lock: LockSpec::None,
            screws: ScrewSpec::default(),
        }
    }
}

/// A removable lock against unhooking.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum LockSpec {
    /// Weight and bevel alone keep the body on.
    #[default]
    None,
    /// A screw or block that can be taken out again; the hold-down it must give is reported, its strength is the user's.
    Fitted,
}

/// The screws of the wall half: one in each stud that it crosses.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields, default))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<ScrewSpec>))]
pub struct ScrewSpec {
    /// Wood screw gauge; `own` is not for plans, which need the table's diameters.
    pub size: ScrewSize,
    /// Length that enters the wood, mm.
    pub length_mm: f64,
    /// How far the row lies above the lower edge of the wall half, mm; high is better.
    pub row_up_mm: f64,
    /// Least distance of a screw from an end of the wall half, mm.
    pub end_distance_mm: f64,
}

limited!(ScrewSpec { length_mm: FASTENER_LENGTH, row_up_mm: LEVER, end_distance_mm: SMALL_LENGTH });

impl Default for ScrewSpec {
    fn default() -> Self {
        Self { size: ScrewSize::No14, length_mm: 90.0, row_up_mm: 20.0, end_distance_mm: 40.0 }
    }
}

/// Where the body hangs, in the frame of the wall: x from a plumb line of the maker's choice, heights from the floor.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<SiteSpec>))]
pub struct SiteSpec {
    /// Left end and underside of the body on the wall.
    pub place: BodyPlace,
    /// The wall and its studs; without it no screw is checked.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub wall: Option<Wall>,
    /// The wall as measured: its face, side walls, the way in, blocking; without it the wall is taken as even and plumb.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub survey: Option<WallSurvey>,
    /// Things fixed to the wall or the ceiling around the body.
    #[cfg_attr(feature = "json", serde(default))]
    pub obstructions: Vec<Obstruction>,
    /// Cables, drivers and a television in or above the body.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub services: Option<ServicesSpec>,
    /// The opening below or beside the body.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub opening: Option<FireOpening>,
    /// What gives heat.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub appliance: Option<Appliance>,
    /// How far a raised hearth that nobody can stand on reaches out from the wall, mm; lifters stand before it. 0, the
    /// default, is none.
    #[cfg_attr(feature = "json", serde(default))]
    pub hearth_out_mm: f64,
    /// Height of the datum of the appliance's chart above the floor, mm; needed where the chart does not measure from the
    /// top of the opening.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub chart_datum_above_floor_mm: Option<f64>,
    /// Rules of the table that hold where the body will hang; without any, a masonry opening is *not determined*.
    #[cfg_attr(feature = "json", serde(default))]
    pub clearance_rules: Vec<MantelRule>,
    /// Rules of the user's, compared in the same way.
    #[cfg_attr(feature = "json", serde(default))]
    pub own_clearance_rules: Vec<OwnClearanceRule>,
}

limited!(SiteSpec { hearth_out_mm: LENGTH, chart_datum_above_floor_mm: SIGNED_LENGTH });

/// What the body shall carry. No code gives a live load for a mantel or a shelf on a wall: these are the user's.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields, default))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<LoadSpec>))]
pub struct LoadSpec {
    /// Things standing on the top for years, N/m²; 718 (15 lbf/ft²) is what ANSI/KCMA A161.1 puts on cabinet shelves.
    pub on_top_n_per_m2: f64,
    /// A push straight down on the front edge at the worst place, N; 222 (50 lbf) is a choice, no published rule.
    pub front_edge_n: f64,
    /// Whether the push comes while things stand on the top.
    pub together: LoadsTogether,
    /// A pull outwards at the top edge that the body shall stay on under, N; left out, the plan says what would unhook it.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub pull_at_top_n: Option<f64>,
    /// A knock upwards at the front edge that the body shall stay on under, N; left out, the plan says what would unhook it.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub knock_from_below_n: Option<f64>,
}

limited!(LoadSpec { on_top_n_per_m2: FORCE, front_edge_n: FORCE, pull_at_top_n: FORCE, knock_from_below_n: FORCE });

impl Default for LoadSpec {
    fn default() -> Self {
        Self {
            on_top_n_per_m2: 718.0,
            front_edge_n: 222.0,
            together: LoadsTogether::Apart,
            pull_at_top_n: None,
            knock_from_below_n: None,
        }
    }
}

/// The finish.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<FinishSpec>))]
pub struct FinishSpec {
    /// Class of finish.
    pub class: FinishName,
    /// How it is put on.
    pub method: ApplicationMethod,
    /// Number of coats.
    pub coats: u32,
    /// Spread rate of one coat from the product's label, m²/L; the published range of the class when left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub spread_m2_per_l: Option<f64>,
    /// Share of the material that lands on the wood, from a trial; the published share of the method when left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub transfer_efficiency: Option<f64>,
    /// Share lost otherwise, in cans, tools and cloths; 0 unless given, because no figure is published.
    #[cfg_attr(feature = "json", serde(default))]
    pub other_loss: f64,
    /// Sizes of can that can be bought, L.
    #[cfg_attr(feature = "json", serde(default))]
    pub can_sizes_l: Vec<f64>,
    /// Which faces are coated.
    #[cfg_attr(feature = "json", serde(default))]
    pub coated: CoatedFaces,
}

limited!(FinishSpec {
    coats: COATS,
    spread_m2_per_l: SPREAD_RATE,
    transfer_efficiency: POSITIVE_FRACTION,
    other_loss: LOSS,
});

/// Which faces are coated.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum CoatedFaces {
    /// What is seen.
    #[default]
    Show,
    /// Show and inner faces alike, so that both sides of a board take up moisture at the same rate.
    ShowAndInner,
}
