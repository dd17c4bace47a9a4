//! The plan: what comes out.

use super::spec::BeamSpec;
use crate::finding::{CautionText, Finding};
use crate::hang::{CleatHalves, CleatMarks};
use crate::shell::{EdgeId, FaceId, Panel};
use crate::verdict::Verdict;

/// A whole job, computed from one spec.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Plan {
    /// Format of this document; 1.
    pub beamcraft_plan: u32,
    /// The spec it was computed from, with every default filled in.
    pub spec: BeamSpec,
    /// The panels as solids, in the order of the faces.
    pub panels: Vec<Panel>,
    /// Saw settings, panel by panel, in the order of the cuts.
    pub cuts: Vec<CutSetting>,
    /// Frame pieces inside.
    pub frame: FramePlan,
    /// The hanging cleat.
    pub cleat: CleatPlan,
    /// Mass and centre of gravity of what is lifted.
    pub mass: MassPlan,
    /// Every check, with its working.
    pub checks: Vec<Verdict>,
    /// What to buy for the finish; absent when no finish was given.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub finish: Option<FinishPlan>,
    /// Glue for the mitres.
    pub glue: GluePlan,
    /// What the maker should know, worst first.
    pub findings: Vec<Finding>,
    /// What was not checked.
    pub not_checked: Vec<&'static str>,
    /// Standing cautions.
    pub cautions: Vec<CautionText>,
}

/// One cut of one panel.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct CutSetting {
    /// The panel.
    pub panel: FaceId,
    /// The edge that the cut makes.
    pub edge: EdgeId,
    /// Rip along the grain or cross-cut.
    pub kind: CutKind,
    /// Signed bevel of the edge from square, degrees; positive with the long point on the show face.
    pub bevel_deg: f64,
    /// Blade tilt to set, degrees.
    pub blade_tilt_deg: f64,
    /// Gauge angle from a square cross-cut, degrees; 0 for a rip.
    pub gauge_deg: f64,
    /// Distance from the fence to the blade, measured at the table, mm; only for a rip.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub fence_mm: Option<f64>,
    /// Show-face size that the cut leaves, long point to long point, mm.
    pub show_size_mm: f64,
    /// How the board lies, in words.
    pub set_up: String,
}

/// The two families of cuts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum CutKind {
    /// Along the grain, against the fence.
    Rip,
    /// Across the grain, against the gauge.
    Crosscut,
}

/// Frame pieces inside the body.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct FramePlan {
    /// Number of pieces; 0 when none fits.
    pub count: u32,
    /// Height of a piece: the flat of the inside of the front board less the clearance, mm.
    pub width_mm: f64,
    /// Length of a piece: the flat of the inside of the top and bottom less the strip and the clearance, mm.
    pub length_mm: f64,
    /// Thickness of a piece along the body, mm.
    pub thickness_mm: f64,
    /// Centres of the pieces from the left end of the body, mm.
    pub centres_mm: Vec<f64>,
}

/// The hanging cleat: halves, heights, screws.
///
/// Heights are measured from the underside of the body as it hangs.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct CleatPlan {
    /// The two halves of the strip.
    pub halves: CleatHalves,
    /// Room between the wall half and the bottom board for that rise, mm.
    pub room_below_mm: f64,
    /// Length of the beam half along the body, mm.
    pub beam_half_length_mm: f64,
    /// Length of the wall half, shorter for side adjustment, mm.
    pub wall_half_length_mm: f64,
    /// Left end of the wall half, from the left end of the body, mm.
    pub wall_half_left_mm: f64,
    /// Upper edge of the beam half, mm.
    pub beam_half_top_mm: f64,
    /// Lower point of the beam half, mm.
    pub beam_half_bottom_mm: f64,
    /// Upper point of the wall half, mm.
    pub wall_half_top_mm: f64,
    /// Lower edge of the wall half, mm: the line to mark on the wall.
    pub wall_half_bottom_mm: f64,
    /// Height of the screw row, mm.
    pub screw_row_mm: f64,
    /// Heights above the floor, screws at the studs, room to lift; absent when the wall was not given.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub marks: Option<CleatMarks>,
    /// Load cases on the seat and what each gives.
    pub load_cases: Vec<LoadCase>,
}

/// One load case on the cleat.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct LoadCase {
    /// What stands or pushes on the body, in words.
    pub name: String,
    /// Total load, N.
    pub load_n: f64,
    /// Distance of the load from the wall, mm.
    pub out_mm: f64,
    /// Place of the load along the body, mm.
    pub along_mm: f64,
    /// Horizontal pull on the seat, equal to the push of the foot on the wall, N.
    pub pull_n: f64,
    /// Pull the bevel gives without any friction, N.
    pub pull_without_friction_n: f64,
    /// Hold-down at the seat that would keep the body on without friction, N; 0 when it stays by itself.
    pub hold_down_n: f64,
    /// Load on the most loaded stud, N; absent when the wall was not given.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub worst_stud_n: Option<f64>,
    /// Shear on one screw in that stud, N.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub screw_shear_n: Option<f64>,
    /// Tension in one screw in that stud, N.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub screw_tension_n: Option<f64>,
}

/// Mass and centre of gravity.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct MassPlan {
    /// Density of the panels' wood at the given moisture, kg/m³.
    pub density_kg_m3: f64,
    /// Mass of the panels, kg.
    pub panels_kg: f64,
    /// Mass of the frame pieces and the beam half, kg.
    pub inside_kg: f64,
    /// Mass of what is lifted: panels, frame and beam half, kg; finish, glue and screws are left out.
    pub lifted_kg: f64,
    /// Its centre of gravity: from the left end, from the front face, from the underside, mm.
    pub centre_mm: [f64; 3],
}

/// What to buy for the finish.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct FinishPlan {
    /// Class of finish.
    pub class: String,
    /// Coated area, m².
    pub area_m2: f64,
    /// Number of coats.
    pub coats: u32,
    /// Spread rate used, m²/L.
    pub spread_m2_per_l: f64,
    /// Where the spread rate comes from.
    pub spread_source: String,
    /// Needed with losses, L.
    pub needed_l: f64,
    /// Cans to buy, largest first; empty when no sizes were given.
    pub cans: Vec<CanCount>,
}

/// Cans of one size.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct CanCount {
    /// Content of one can, L.
    pub size_l: f64,
    /// How many.
    pub count: u32,
}

/// Glue for the mitres.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct GluePlan {
    /// Total area of the mitres, one side of each seam, m².
    pub seam_area_m2: f64,
    /// Total length of the seams, mm.
    pub seam_length_mm: f64,
}
