//! What the caller says about a job: one readable document.
//!
//! Only the body and the wood must be given. What is left out has a default with its reason beside the field, or, where
//! no honest default exists (the studs, the appliance, the finish), leaves the answer that needs it *not determined*.

use crate::limits::limited;
use crate::setting::{Appliance, BodyPlace, FireOpening, Obstruction, Wall};

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
    /// The saw that cuts the bevels.
    #[cfg_attr(feature = "json", serde(default))]
    pub saw: SawSpec,
    /// Frame pieces inside.
    #[cfg_attr(feature = "json", serde(default))]
    pub frame: FrameSpec,
    /// The hanging cleat.
    #[cfg_attr(feature = "json", serde(default))]
    pub cleat: CleatSpec,
    /// Where it hangs; without it nothing that depends on studs, heights or heat is determined.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub site: Option<SiteSpec>,
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
    pub legs: Vec<LegSpec>,
}

/// A straight part of a body.
///
/// Seen from the room: x along the length from left to right, y from the front face to the wall, z up.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<LegSpec>))]
pub struct LegSpec {
    /// Length of the front face between its outer arrises, mm.
    pub length_mm: f64,
    /// Outer section.
    pub section: SectionSpec,
    /// Thickness of every board that does not give its own, mm.
    pub board_thickness_mm: f64,
    /// Faces that differ from the rest: open, or of another thickness. The back is open unless it is listed.
    #[cfg_attr(feature = "json", serde(default))]
    pub faces: Vec<FaceSpec>,
    /// Plan angle between the front face and the left end, inside the body, degrees; 90 is square.
    #[cfg_attr(feature = "json", serde(default = "square"))]
    pub left_corner_deg: f64,
    /// Plan angle between the front face and the right end, inside the body, degrees; 90 is square.
    #[cfg_attr(feature = "json", serde(default = "square"))]
    pub right_corner_deg: f64,
}

limited!(LegSpec {
    length_mm: BODY_LENGTH,
    board_thickness_mm: BOARD_THICKNESS,
    left_corner_deg: END_ANGLE,
    right_corner_deg: END_ANGLE,
});

#[cfg(feature = "json")]
fn square() -> f64 {
    90.0
}

/// Outer section of a leg.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum SectionSpec {
    /// Upright front, level top and bottom.
    Rectangle(RectangleSpec),
}

/// A rectangular outer section.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<RectangleSpec>))]
pub struct RectangleSpec {
    /// Outer height, mm.
    pub height_mm: f64,
    /// Outer depth from the front face to the wall, mm.
    pub depth_mm: f64,
}

limited!(RectangleSpec { height_mm: BODY_SIZE, depth_mm: BODY_SIZE });

/// One face that differs from the rest.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<FaceSpec>))]
pub struct FaceSpec {
    /// Which face.
    pub face: FaceName,
    /// Whether a board closes it.
    #[cfg_attr(feature = "json", serde(default))]
    pub cover: FaceCover,
    /// Thickness of its board, mm; the leg's thickness when left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub thickness_mm: Option<f64>,
}

limited!(FaceSpec { thickness_mm: BOARD_THICKNESS });

/// A face of a leg with a rectangular section.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum FaceName {
    /// Towards the room.
    Front,
    /// Towards the wall.
    Back,
    /// Upper face.
    Top,
    /// Lower face.
    Bottom,
    /// Left end as seen from the room.
    LeftEnd,
    /// Right end as seen from the room.
    RightEnd,
}

/// Whether a face has a board.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum FaceCover {
    /// A board, mitred to its neighbours.
    #[default]
    Board,
    /// Nothing: the boards around it end flush.
    Open,
}

/// The wood of the panels.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<WoodSpec>))]
pub struct WoodSpec {
    /// Common or botanical name of a listed species, such as `white ash`.
    pub species: String,
    /// Moisture content in service, %; 8 is the handbook's recommended average for interior wood in most of the US.
    #[cfg_attr(feature = "json", serde(default = "indoor_moisture"))]
    pub moisture_pct: f64,
}

limited!(WoodSpec { moisture_pct: MOISTURE });

#[cfg(feature = "json")]
fn indoor_moisture() -> f64 {
    8.0
}

/// The saw that cuts the bevels.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields, default))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<SawSpec>))]
pub struct SawSpec {
    /// Width of the cut, mm; 3.2 (1/8 in) is common practice for a full-kerf blade.
    pub kerf_mm: f64,
    /// Largest blade tilt from square, degrees; 45 is common practice.
    pub max_tilt_deg: f64,
    /// Which face lies up when a long edge is bevelled.
    pub show_face: ShowFace,
}

limited!(SawSpec { kerf_mm: KERF, max_tilt_deg: SLOPE });

impl Default for SawSpec {
    fn default() -> Self {
        Self { kerf_mm: 3.2, max_tilt_deg: 45.0, show_face: ShowFace::Up }
    }
}

/// Which way the show face lies on the saw table.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum ShowFace {
    /// Show face up, blade leaning away from the fence.
    #[default]
    Up,
    /// Show face down, blade leaning towards the fence: width free of thickness error, but the piece is trapped.
    Down,
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
    /// Largest distance between the centres of neighbouring pieces, mm; 450 is a choice, no published rule.
    pub largest_spacing_mm: f64,
}

limited!(FrameSpec { piece_thickness_mm: BOARD_THICKNESS, clearance_mm: SMALL_LENGTH, largest_spacing_mm: BODY_SIZE });

impl Default for FrameSpec {
    fn default() -> Self {
        Self { piece_thickness_mm: 20.0, clearance_mm: 1.0, largest_spacing_mm: 450.0 }
    }
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
    /// How much shorter than the inside the wall half is at each end, mm, for side adjustment.
    pub side_play_mm: f64,
    /// Coefficient of friction on the seat, for information only; no check passes on it.
    pub friction: f64,
    /// Species of the strip; that of the panels when left out.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub species: Option<String>,
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
            strip_width_mm: 110.0,
            thickness_mm: 18.0,
            bevel_deg: 45.0,
            blunt_mm: 2.0,
            below_top_mm: 0.0,
            side_play_mm: 20.0,
            friction: 0.3,
            species: None,
            screws: ScrewSpec::default(),
        }
    }
}

/// The screws of the wall half.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields, default))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<ScrewSpec>))]
pub struct ScrewSpec {
    /// Wood screw gauge of ASME B18.6.1, such as `No. 14`.
    pub gauge: String,
    /// Length under the head, mm.
    pub length_mm: f64,
    /// Screws in each stud, side by side in one row.
    pub per_stud: u32,
    /// How far the row lies below the upper point of the wall half, mm; high is better.
    pub below_point_mm: f64,
}

limited!(ScrewSpec { length_mm: FASTENER_LENGTH, per_stud: COUNT, below_point_mm: SMALL_LENGTH });

impl Default for ScrewSpec {
    fn default() -> Self {
        Self { gauge: "No. 14".to_owned(), length_mm: 100.0, per_stud: 1, below_point_mm: 30.0 }
    }
}

/// Where the body hangs, in the frame of the wall: x from a plumb line of the maker's choice, heights from the floor.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct SiteSpec {
    /// Left end and underside of the body on the wall.
    pub place: BodyPlace,
    /// The wall and its studs; without it no screw is checked.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub wall: Option<Wall>,
    /// Things fixed to the wall or the ceiling around the body.
    #[cfg_attr(feature = "json", serde(default))]
    pub obstructions: Vec<Obstruction>,
    /// The opening below or beside the body.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub opening: Option<FireOpening>,
    /// What gives heat.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub appliance: Option<Appliance>,
}

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
}

limited!(LoadSpec { on_top_n_per_m2: FORCE, front_edge_n: FORCE });

impl Default for LoadSpec {
    fn default() -> Self {
        Self { on_top_n_per_m2: 718.0, front_edge_n: 222.0 }
    }
}

/// The finish.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<FinishSpec>))]
pub struct FinishSpec {
    /// A listed class of finish, such as `oil_polyurethane`.
    pub class: String,
    /// Number of coats; the class's least when left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub coats: Option<u32>,
    /// Spread rate of one coat from the product's label, m²/L; the class's lowest published rate when left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub spread_m2_per_l: Option<f64>,
    /// Share of the material that lands on the wood; 1 for a brush or a cloth, for which no published figure exists.
    #[cfg_attr(feature = "json", serde(default = "all_of_it"))]
    pub transfer_efficiency: f64,
    /// Share lost in cans, tools and strainers; the user's number.
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
    other_loss: FRACTION,
});

#[cfg(feature = "json")]
fn all_of_it() -> f64 {
    1.0
}

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
