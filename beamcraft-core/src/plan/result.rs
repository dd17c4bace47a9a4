//! The plan: what comes out.

use super::result_seams::{MovementPlan, TolerancePlan};
use super::sawn_body::panel_named;
use super::spec::BeamSpec;
use crate::error::Result;
use crate::fasten::LoadDuration;
use crate::finding::{CautionText, Finding, Quantity};
use crate::finish::{CansToBuy, FinishClassQuantity, FinishName};
use crate::frame::{AssemblyOrder, FramePiece, GlueBlocks, InsideScrewCheck};
use crate::hang::{CleatHalves, CleatMarks};
use crate::saw::PanelCut;
use crate::shell::{EdgeId, FaceId, Panel};
use crate::site::{BodyClearance, FrameFixing, LiftOn, SiteFit};
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
    /// Saw settings, panel by panel, in the order of the panels.
    pub cuts: Vec<PanelSawing>,
    /// Frame pieces inside; absent when the body has no front, top and bottom to hold them or they do not fit.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub frame: Option<FramePlan>,
    /// The hanging cleat; absent when it does not fit the body.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub cleat: Option<CleatPlan>,
    /// The frame that holds it in place of the cleat; absent where none was asked for, or its studs or joists were not given.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub fixing: Option<FixingPlan>,
    /// How the body sits on the wall as it is; absent when its place was not given.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub site_fit: Option<SiteFit>,
    /// The way onto the cleat; absent without a wall and a cleat on it.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub lift_on: Option<LiftOn>,
    /// The order of hanging, step by step; empty without a cleat.
    pub hanging: Vec<HangingStep>,
    /// Clearance to the opening by each rule, with the greatest depth and the least height; absent when the opening or the
    /// appliance was not given, or nothing heats. The curves are left out: `body_clearance` draws them.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub clearance: Option<BodyClearance>,
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
    /// The order of assembly, with the reason of each step; absent when the panels do not hold together.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub assembly: Option<AssemblyOrder>,
    /// What the maker should know, worst first.
    pub findings: Vec<Finding>,
    /// What was not checked.
    pub not_checked: Vec<&'static str>,
    /// Standing cautions.
    pub cautions: Vec<CautionText>,
}

impl Plan {
    /// The panel with a name, that of its show face, such as `front`.
    ///
    /// # Errors
    /// `unknown_name` where there is none, with the names there are.
    pub fn panel(&self, name: &str) -> Result<&Panel> {
        panel_named(&self.panels, name)
    }
}

/// How one panel is cut from its blank.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct PanelSawing {
    /// The panel.
    pub panel: FaceId,
    /// Length of the square-edged blank along the grain, mm: both ends square, with the trim at each.
    pub blank_length_mm: f64,
    /// Width of the square-edged blank across the grain, mm: edges jointed and parallel, with the allowance at each that is
    /// still to be ripped.
    pub blank_width_mm: f64,
    /// Every cut, in an order in which a referencing edge always exists.
    pub cuts: Vec<PanelCut>,
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
    /// Glue blocks, seam by seam; empty when none were asked for or none fit.
    pub blocks: Vec<SeamBlocks>,
    /// A screw through a block into each board of each seam: room for the driver, and the wood before the show face; empty
    /// when no screws were asked for.
    pub block_screws: Vec<InsideScrewCheck>,
}

/// Glue blocks along one seam.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SeamBlocks {
    /// The seam.
    pub seam: EdgeId,
    /// The blocks; their centres are counted from the left end of the front.
    pub blocks: GlueBlocks,
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
    /// Most packing behind the wall half at a stud, mm; it lies between strip and lining in every screw check.
    pub greatest_packing_mm: f64,
    /// Heights above the floor, screws at the studs, room to lift; absent when the wall was not given.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub marks: Option<CleatMarks>,
    /// Load cases on the seat and what each gives.
    pub load_cases: Vec<LoadCase>,
}

/// A frame that holds the body in place of the cleat.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct FixingPlan {
    /// Studs or joists from the left end of the body, mm.
    pub supports_mm: Vec<f64>,
    /// Load cases and what each uses.
    pub cases: Vec<FixingCase>,
    /// Both joints in the case that governs.
    pub held: FrameFixing,
}

/// One load case on a frame.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct FixingCase {
    /// What stands or pushes on the body, in words.
    pub name: String,
    /// Total load, N.
    pub load_n: f64,
    /// Distance of the load from the wall, mm.
    pub out_mm: f64,
    /// How much of the worse joint it uses; absent where a joint has no answer.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub utilisation: Option<f64>,
}

/// One step of hanging the body.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct HangingStep {
    /// Place in the order, from 1.
    pub order: u32,
    /// Which step it is.
    pub task: HangingTask,
    /// What is done, in words.
    pub what: String,
    /// The numbers it is done with.
    pub numbers: Vec<Quantity>,
}

/// The steps of hanging a body.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum HangingTask {
    /// Find the studs.
    FindStuds,
    /// Draw the level line.
    LevelLine,
    /// Fix the wall half.
    FixWallHalf,
    /// Hang it dry.
    DryHang,
    /// Scribe it to the wall.
    Scribe,
    /// Finish it.
    Finish,
    /// Hang it.
    Hang,
    /// Fit the lock.
    Lock,
    /// Confirm that it is seated at both ends.
    ConfirmSeated,
}

/// One load case on the cleat.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct LoadCase {
    /// What stands or pushes on the body, in words.
    pub name: String,
    /// How long the shortest of its loads lasts, which decides for all of them (NDS 2.3.2).
    pub duration: LoadDuration,
    /// Load duration factor of the screws, C_D.
    pub duration_factor: f64,
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
    /// How much of that screw the case uses, demand over capacity with its duration; the case with the most governs. Absent when
    /// the wall was not given, or the screw does not reach its stud.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub screw_utilisation: Option<f64>,
}

/// Mass and centre of gravity.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct MassPlan {
    /// Density of the panels' wood at the given moisture, kg/m³.
    pub density_kg_m3: f64,
    /// Mass of the panels, kg.
    pub panels_kg: f64,
    /// Mass of the frame pieces, glue blocks and the beam half, kg.
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
