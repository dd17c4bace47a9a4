//! One cut of a panel as it comes out: what to set, what else would do, what to take care of.

use super::board::BlankEdge;
use super::caution::CutCaution;
use super::fence::RidingEdge;
use super::machine::BladeSide;

/// What kind of cut makes an edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum CutKind {
    /// No cut: the jointed edge of the blank is this edge, and the reference for what follows.
    Joint,
    /// Ripped along the fence, parallel to the edge that rides it.
    FenceRip,
    /// Ripped on a taper jig that carries the board at an angle to the blade.
    TaperRip,
    /// Cut across on the mitre gauge or a sled.
    GaugeCut,
}

/// How the board goes over the saw.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum CutWay {
    /// Flat on the table.
    FlatOnTable,
    /// On edge against a tall fence, the blade at the complement of the bevel: first cut square to the long point, then stood
    /// on that edge with the long-point face against the fence and the blade leaning away from it.
    OnEdge,
    /// On a wedge that leans the board by what the blade lacks; distances are measured on the wedge.
    OnWedge,
    /// Flat with the blade as far over as it goes, the long point at its size, then planed to the bevel.
    OversizeThenPlane,
    /// With a saw guided along a rail on the board, the long-point face up; distances are measured on that face, to the line
    /// of the long point.
    TrackSaw,
}

/// Which face lies on the table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum FaceDown {
    /// The show face.
    ShowFace,
    /// The inner face.
    InnerFace,
}

impl FaceDown {
    pub(super) const BOTH: [Self; 2] = [Self::InnerFace, Self::ShowFace];
}

/// Where the kept piece lies during a cut; the kerf is always in the waste.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum KeptPiece {
    /// Between the fence and the blade.
    BetweenFenceAndBlade,
    /// Beyond the blade: the waste lies at the fence.
    BeyondTheBlade,
    /// Held by the gauge; the waste falls free.
    OnTheGauge,
    /// Clamped to the taper jig; the waste falls free.
    OnTheJig,
}

/// Which way the top of the blade leans, seen from the kept piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum BladeLean {
    /// Upright.
    Upright,
    /// Away from the kept piece: its long point lies up.
    AwayFromKept,
    /// Over the kept piece: its long point lies on the table.
    OverKept,
}

/// What the stop meets.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum StopMeets {
    /// The end of the blank: a first cut, with the trim left at the other end.
    BlankEnd,
    /// An end cut before, square and upright to the gauge.
    CutEnd,
    /// The corner of an end cut before, on the show face.
    ShowCorner,
    /// The corner of an end cut before, on the inner face.
    InnerCorner,
    /// The corner of an end cut before, between the two faces.
    CornerBetween,
}

/// Which limit of the saw a cut passes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum SawLimit {
    /// Tilt of the blade, degrees.
    Tilt,
    /// Cut height at that tilt, mm.
    CutHeight,
    /// Distance of the fence from the blade, mm.
    RipCapacity,
    /// Length of a cut on the gauge, mm.
    CrosscutCapacity,
    /// Angle of the gauge, degrees.
    GaugeAngle,
    /// Height of the fence under a long point that rides up, mm.
    FenceHeight,
}

/// A limit that a cut passes.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct PassedLimit {
    /// Which limit.
    pub limit: SawLimit,
    /// What the cut needs, mm or degrees.
    pub needed: f64,
    /// What the saw has, mm or degrees.
    pub available: f64,
}

/// Distances that place a board on a taper jig, or a rail on a board: from the riding edge to the cut, square to that edge.
///
/// A mark may lie beyond the board; the line through both counts.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct TaperMarks {
    /// At the farthest corner of the riding edge where the grain begins (least `u`), mm.
    pub low_end_mm: f64,
    /// At the farthest corner of the riding edge where the grain ends (greatest `u`), mm.
    pub high_end_mm: f64,
}

/// Everything to set for one cut in one way.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct CutSetUp {
    /// How the board goes over the saw.
    pub way: CutWay,
    /// Face on the table; for a board on edge, the face against the tall fence.
    pub face_down: FaceDown,
    /// Blade tilt to set, degrees from upright.
    pub blade_tilt_deg: f64,
    /// Which way the blade leans, seen from the kept piece.
    pub lean: BladeLean,
    /// Side to which the top of the blade leans; absent with the blade upright and for a track saw.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub leans: Option<BladeSide>,
    /// Angle of the wedge under the board, degrees; 0 without one.
    pub wedge_deg: f64,
    /// Side of the blade where the fence stands; absent on gauge and jig.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub fence_side: Option<BladeSide>,
    /// Side of the blade where the kept piece lies, the kerf on the other; absent on edge and for a track saw.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub kept_side: Option<BladeSide>,
    /// How the riding edge meets the fence or gauge.
    pub riding: RidingEdge,
    /// Distance from the fence to the near side of the blade, at the table, mm; for a track saw from the riding edge to the
    /// line; absent on gauge and jig.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub fence_mm: Option<f64>,
    /// Marks for the jig or rail of a taper, on the face that lies down, or up for a track saw; for a board on edge those of
    /// the square cut to the long point that comes first.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub marks: Option<TaperMarks>,
    /// Distance along the face of the gauge from the stop to the kept side of the blade, at the table, mm; for a track saw to
    /// the line, along the riding edge; absent without a gauge.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub stop_mm: Option<f64>,
    /// For a board on edge, the fence or stop distance of the square cut to the long point that comes first, mm; a taper has
    /// marks instead.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub square_first_mm: Option<f64>,
    /// Kerf measured along the table, square to the cut, mm.
    pub kerf_at_table_mm: f64,
    /// Cut height or depth it needs, mm.
    pub needs_height_mm: f64,
    /// Cut height or depth the saw has at that tilt, mm; absent when the saw was not described that far.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub has_height_mm: Option<f64>,
    /// Height of the tall fence it needs, to the middle of the standing board, mm; 0 without one.
    pub needs_fence_mm: f64,
    /// What is left to plane off at the short point, mm; 0 without planing.
    pub planing_mm: f64,
}

/// One cut of a panel with everything to set.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct PanelCut {
    /// Place in the order of the cuts, from 1.
    pub step: u32,
    /// Number of the edge in the input, from 0.
    pub edge_index: u32,
    /// Name of the edge.
    pub edge: String,
    /// What kind of cut.
    pub kind: CutKind,
    /// Signed bevel from square, degrees; positive with the long point on the show face.
    pub bevel_deg: f64,
    /// Angle in the face against the edge that rides, degrees. On the gauge from a square cut, positive when the panel is
    /// longer at its far side; on a taper jig from parallel; 0 along the fence.
    pub gauge_deg: f64,
    /// Step that made the edge which rides the fence, gauge or jig; 0 for an edge of the blank.
    pub rides_step: u32,
    /// Edge of the blank that rides, or that becomes the jointed edge; absent when an edge cut before rides.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub rides_blank: Option<BlankEdge>,
    /// Name of the edge that rides; of an edge of the blank, that of the panel's edge nearest it.
    pub rides: String,
    /// Bevel of the edge that rides, degrees.
    pub riding_bevel_deg: f64,
    /// Where the kept piece lies.
    pub kept: KeptPiece,
    /// What the stop meets; absent without a gauge.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub stop_meets: Option<StopMeets>,
    /// Length of the cut in the board as it is then, the longer of both faces, mm.
    pub cut_length_mm: f64,
    /// Extent of the show face square to the cut that is left after it, mm.
    pub show_size_mm: f64,
    /// What to set; absent for the jointed edge, and where the saw makes the cut in no way.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub set_up: Option<CutSetUp>,
    /// Limits of the saw that the cut passes with the board flat on the table.
    pub passed: Vec<PassedLimit>,
    /// Other ways of a cut that passes a limit, the better supported first.
    pub alternatives: Vec<CutSetUp>,
    /// What to take care of.
    pub cautions: Vec<CutCaution>,
}
