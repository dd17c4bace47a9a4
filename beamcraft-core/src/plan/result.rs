//! The plan: what comes out.

use super::result_seams::{MovementPlan, TolerancePlan};
use super::spec::BeamSpec;
use crate::finding::{CautionText, Finding};
use crate::finish::{CansToBuy, FinishClassQuantity, FinishName};
use crate::frame::FramePiece;
use crate::hang::{CleatHalves, CleatMarks};
use crate::saw::{BoardSetUp, RipFence, RipSetUp};
use crate::shell::{EdgeCut, EdgeId, FaceId, Panel};
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
    /// Frame pieces inside; absent when the body has no front, top and bottom to hold them or they do not fit.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub frame: Option<FramePlan>,
    /// The hanging cleat; absent when it does not fit the body.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub cleat: Option<CleatPlan>,
    /// The body through the year; absent when no seasons were given, or no movement of the wood.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub movement: Option<MovementPlan>,
    /// The seams as the saw makes them; absent when no accuracy was given, or no seam is mitred.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub tolerance: Option<TolerancePlan>,
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
    /// Place in the order of this panel's cuts, from 1.
    pub step: u32,
    /// The edge that the cut makes.
    pub edge: EdgeId,
    /// Rip along the grain or cross-cut.
    pub cut: EdgeCut,
    /// Signed bevel of the edge from square, degrees; positive with the long point on the show face.
    pub bevel_deg: f64,
    /// Gauge angle from a square cross-cut, degrees; 0 for a rip along the grain.
    pub gauge_deg: f64,
    /// How the board goes over the saw.
    pub set_up: BoardSetUp,
    /// Blade tilt to set, degrees.
    pub blade_tilt_deg: f64,
    /// Angle of the wedge under the board, degrees; 0 without one.
    pub wedge_deg: f64,
    /// Size of the show face that the cut leaves, mm: width of a rip, length of a cross-cut; the first rip of a panel still
    /// leaves the allowance for the second.
    pub show_size_mm: f64,
    /// Fence of a bevelled rip; absent for a cross-cut, for the jointed reference edge, and on edge or on a wedge.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub rip: Option<RipSetting>,
}

/// Fence and lean of a rip.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct RipSetting {
    /// Which face lies up and which way the blade leans.
    pub set_up: RipSetUp,
    /// The fence with its working.
    pub fence: RipFence,
}

/// Frame pieces inside the body.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct FramePlan {
    /// Size of a piece: its width along the height of the front, its length from the front board towards the wall.
    pub piece: FramePiece,
    /// Thickness of a piece along the body, mm.
    pub thickness_mm: f64,
    /// Centres of the pieces from the left end of the front, mm, from left to right.
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
    /// Length of the beam half along the body, mm.
    pub beam_half_length_mm: f64,
    /// Length of the wall half, shorter for side adjustment, mm.
    pub wall_half_length_mm: f64,
    /// From the left end of the front to the left end of the beam half, mm.
    pub beam_half_left_mm: f64,
    /// Upper edge of the beam half, mm.
    pub beam_half_top_mm: f64,
    /// Lower edge of the beam half, at the wall, mm.
    pub beam_half_bottom_mm: f64,
    /// Point of the wall half, in front, mm.
    pub wall_half_point_mm: f64,
    /// Upper edge of the wall half where it touches the wall, mm.
    pub wall_half_edge_mm: f64,
    /// Lower edge of the wall half, mm.
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
    /// Pull to design the wall half for: the larger of what is needed and what the bevel gives, N.
    pub pull_n: f64,
    /// Pull that equilibrium needs at the seat, N.
    pub needed_pull_n: f64,
    /// Pull the bevel gives without any friction, N.
    pub pull_without_friction_n: f64,
    /// Hold-down at the seat that would keep the body on without friction, N; 0 when it stays by itself.
    pub hold_down_n: f64,
    /// Load on the most loaded stud, N; absent when the wall was not given.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub worst_stud_n: Option<f64>,
    /// Load on the least loaded stud, N; negative where its screw must hold the wall half down; absent when the wall was not
    /// given.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub least_stud_n: Option<f64>,
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
    pub class: FinishName,
    /// Coated area, m².
    pub area_m2: f64,
    /// Number of coats.
    pub coats: u32,
    /// Litres with their working, between the ends of the published figures.
    pub quantity: FinishClassQuantity,
    /// Cans for the most that may be needed; absent when no sizes were given.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub cans: Option<CansToBuy>,
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
