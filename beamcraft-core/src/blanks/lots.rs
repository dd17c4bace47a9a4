//! The blanks of a batch, sorted into lots that are cut together.

use super::cutting::{Maker, cleat, frame, panels};
use crate::error::{Error, ErrorCode, Fault, Result};
use crate::layout::{BoardPart, PartGroup};
use crate::limits::{faults_at, limited};
use crate::plan::{BeamSpec, plan};

/// A beam of the batch.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<BatchBeam>))]
pub struct BatchBeam {
    /// Its spec, as for `plan`.
    pub spec: BeamSpec,
    /// How many alike.
    #[cfg_attr(feature = "json", serde(default = "one"))]
    pub count: u32,
}

limited!(BatchBeam { count: BATCH });

#[cfg(feature = "json")]
fn one() -> u32 {
    1
}

/// What comes first where not everything can be had.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum BlankPriority {
    /// Grain that runs on round the ends, then whole boards, then yield: front and returns stay in line even where they
    /// must be glued up.
    #[default]
    MatchedGrain,
    /// Whole boards, then matched grain, then yield: front and returns stay in line only where one board is wide enough.
    Width,
    /// Yield: every panel goes where it fits.
    Yield,
}

/// What a lot is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum BlankUse {
    /// Panels of the bodies: the better face of every blank is the show face.
    Panels,
    /// Frame pieces inside.
    Frame,
    /// Strips for the cleats, ripped into their halves after this.
    Cleat,
}

/// A batch of beams and how its blanks are cut.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<PlanBlanksInput>))]
pub struct PlanBlanksInput {
    /// The beams.
    pub beams: Vec<BatchBeam>,
    /// Widest clear board there is for panels, mm; wider panels are glued up.
    pub widest_board_mm: f64,
    /// Added to the length of every blank, mm; 25 is a choice, a trim cut at either end.
    #[cfg_attr(feature = "json", serde(default = "length_allowance"))]
    pub length_allowance_mm: f64,
    /// Added to the width of every blank for jointing and the second rip, mm; 6 is a choice.
    #[cfg_attr(feature = "json", serde(default = "width_allowance"))]
    pub width_allowance_mm: f64,
    /// Planed off each edge that is glued to the next stave, mm; 1.5 is a choice.
    #[cfg_attr(feature = "json", serde(default = "joint_allowance"))]
    pub joint_allowance_mm: f64,
    /// What comes first.
    #[cfg_attr(feature = "json", serde(default))]
    pub priority: BlankPriority,
}

limited!(PlanBlanksInput {
    widest_board_mm: BODY_SIZE,
    length_allowance_mm: SMALL_LENGTH,
    width_allowance_mm: SMALL_LENGTH,
    joint_allowance_mm: SMALL_LENGTH,
});

#[cfg(feature = "json")]
fn length_allowance() -> f64 {
    25.0
}

#[cfg(feature = "json")]
fn width_allowance() -> f64 {
    6.0
}

#[cfg(feature = "json")]
fn joint_allowance() -> f64 {
    1.5
}

/// Blanks of one use and thickness, as `cut_list_boards` takes them.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct BlankLot {
    /// What they are for.
    pub blank_use: BlankUse,
    /// Wood, as the spec names it.
    pub wood: String,
    /// Finished thickness, mm; what is planed off comes on top.
    pub thickness_mm: f64,
    /// Blanks that may lie anywhere, grain along their length.
    pub parts: Vec<BoardPart>,
    /// Blanks that stay in line in their order.
    pub groups: Vec<PartGroup>,
}

/// A blank that is glued up, because no board is wide enough.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct GluedBlank {
    /// Name of the blank.
    pub name: String,
    /// Width once it is glued, mm.
    pub width_mm: f64,
    /// Number of staves.
    pub staves: u32,
    /// Width of each stave before its edges are jointed, mm.
    pub stave_width_mm: f64,
    /// Seams from the near edge of the blank, mm.
    pub seams_mm: Vec<f64>,
}

/// Two panels in one blank that one bevelled cut parts, the second lying with its show face down.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct NestedBlank {
    /// Name of the blank.
    pub name: String,
    /// Panel with its show face up.
    pub up: String,
    /// Panel with its show face down: that face must be clear too.
    pub down: String,
    /// Bevel of the cut between them from square, degrees.
    pub bevel_deg: f64,
    /// Width of board saved against two square-edged blanks, mm.
    pub saves_mm: f64,
}

/// Blanks of a batch.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct PlanBlanks {
    /// Blanks by use and thickness.
    pub lots: Vec<BlankLot>,
    /// Blanks that are glued up, with their seams.
    pub glued: Vec<GluedBlank>,
    /// Blanks that hold two panels.
    pub nested: Vec<NestedBlank>,
    /// What the maker should know.
    pub notes: Vec<&'static str>,
}

/// Blanks of a batch of beams, by use and thickness, ready for a cut list: with allowances, in matched groups, nested,
/// glued up.
///
/// # Equation
/// ```text
/// blank   L = l + a_l      W = w + a_w
/// staves  n = least whole number with (W + 2 (n − 1) j) / n ≤ B      seams at i W / n
/// group   loss at a corner = k / cos b
/// nested  W = w_1 + w_2 − t tan b + k / cos b + a_w      saved = t tan b − k (1 / cos b − 1) + a_w
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | l, w, t | length, width and thickness of the panel, long point to long point | mm | from the plan |
/// | a_l, a_w, j | allowances | mm | `length_allowance_mm`, `width_allowance_mm`, `joint_allowance_mm` |
/// | B | widest board | mm | `widest_board_mm` |
/// | k, b | kerf and bevel | mm, degree | the spec's saw, the panel's edge |
///
/// # Limits
/// Front and returns of a leg are in line when they are of one width. Only top and bottom, front and back and such pairs
/// of one length and thickness are nested, never a member of a group. Thickness is that of the finished wood.
///
/// # Errors
/// All faults of the specs at once, each with its path; `out_of_range`, `not_finite`; `inconsistent` for no beam at all,
/// and for a joint allowance that no number of staves can meet.
///
/// # Source
/// Plane geometry; the order of matched grain, width and yield is common practice. Checked by `verification/blanks`.
///
/// # Examples
/// ```
/// use beamcraft_core::blanks::{BatchBeam, BlankPriority, PlanBlanksInput, plan_blanks};
/// # #[cfg(feature = "json")] {
/// let spec = beamcraft_core::json::read(include_str!("../../examples/specs/ash_shelf_beam.json"))?;
/// let blanks = plan_blanks(&PlanBlanksInput {
///     beams: vec![BatchBeam { spec, count: 2 }], widest_board_mm: 250.0, length_allowance_mm: 25.0,
///     width_allowance_mm: 6.0, joint_allowance_mm: 1.5, priority: BlankPriority::MatchedGrain,
/// })?;
/// // Left end, front and right end in line, twice.
/// assert_eq!((blanks.lots[0].groups[0].count, blanks.lots[0].groups[0].parts.len()), (2, 3));
/// # }
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn plan_blanks(input: &PlanBlanksInput) -> Result<PlanBlanks> {
    let mut faults = faults_at("", input);
    if input.beams.is_empty() {
        faults.push(Fault::plain(ErrorCode::Inconsistent, "beams", "one beam or more", "").into());
    }
    for (k, beam) in input.beams.iter().enumerate() {
        faults.extend(faults_at(&format!("beams[{k}]"), beam));
    }
    if input.widest_board_mm <= 2.0 * input.joint_allowance_mm {
        let allowed = "less than half the widest board";
        faults.push(Fault::plain(ErrorCode::Inconsistent, "joint_allowance_mm", allowed, "").into());
    }
    Error::unless_empty(faults)?;
    let mut made = PlanBlanks { lots: Vec::new(), glued: Vec::new(), nested: Vec::new(), notes: Vec::new() };
    for (k, beam) in input.beams.iter().enumerate() {
        let plan = plan(&beam.spec).map_err(|error| error.within(&format!("beams[{k}].spec")))?;
        let named = if input.beams.len() > 1 { format!("beam {}, ", k + 1) } else { String::new() };
        let mut maker = Maker { input, plan: &plan, count: beam.count, named, made: &mut made };
        panels(&mut maker);
        frame(&mut maker);
        cleat(&mut maker);
    }
    notes(&mut made);
    Ok(made)
}

fn notes(made: &mut PlanBlanks) {
    made.notes.push("The better face of every panel's blank is its show face; mark it before the first cut.");
    if made.lots.iter().any(|lot| !lot.groups.is_empty()) {
        made.notes.push(
            "Recut the neighbour in a group; do not turn it over: that shows the other face and the match is lost.",
        );
    }
    if !made.nested.is_empty() {
        made.notes.push("A nested pair shares one bevelled cut: the second panel shows the other face of the board.");
    }
    if !made.glued.is_empty() {
        made.notes.push("Keep seams of a glued-up panel away from the lines where it is fixed or bevelled.");
    }
}

impl PlanBlanks {
    /// The lot of a use, a wood and a thickness.
    pub(super) fn lot(&mut self, blank_use: BlankUse, wood: &str, thickness_mm: f64) -> Option<&mut BlankLot> {
        let same = |lot: &BlankLot| lot.blank_use == blank_use && lot.wood == wood && lot.thickness_mm == thickness_mm;
        let place = self.lots.iter().position(same).unwrap_or(self.lots.len());
        if place == self.lots.len() {
            let (parts, groups) = (Vec::new(), Vec::new());
            self.lots.push(BlankLot { blank_use, wood: wood.to_owned(), thickness_mm, parts, groups });
        }
        self.lots.get_mut(place)
    }
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const PLAN_BLANKS: crate::json::Calculation = crate::json::calculation!(
    plan_blanks: PlanBlanksInput => PlanBlanks, Document,
    "Blanks of one beam or a batch, with allowances, matched groups, nested pairs and glued-up panels"
);

#[cfg(test)]
#[cfg(feature = "json")]
#[path = "lots_tests.rs"]
mod tests;
