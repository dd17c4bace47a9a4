//! The order in which a body is put together, with the reason of each step.

use crate::error::{Detail, Error, ErrorCode, Fault, Result};
use crate::finding::{Finding, FindingCode, Grade, Quantity};
use crate::limits::{faults_at, limited};

/// How two panels meet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum SeamJoint {
    /// Mitred: tape across the show faces closes it.
    Mitred,
    /// One ends at the inner face of the other: it wants a clamp.
    Butted,
}

/// A seam between two panels.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<AssemblySeam>))]
pub struct AssemblySeam {
    /// Name of one panel.
    pub first: String,
    /// Name of the other.
    pub second: String,
    /// Length of the seam, mm.
    pub length_mm: f64,
    /// How they meet.
    pub joint: SeamJoint,
}

limited!(AssemblySeam { length_mm: LENGTH });

/// How glue is spread and joints are closed.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields, default))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<GluePace>))]
pub struct GluePace {
    /// Open time of the glue, minutes: that of its maker at the temperature of the shop; without it nothing is split.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub open_time_min: Option<f64>,
    /// Seam on which one person spreads glue in a minute, both faces, mm; 1000 is a choice.
    pub spreading_mm_per_min: f64,
    /// Time to close and align one panel, minutes; 2 is a choice.
    pub closing_min: f64,
}

limited!(GluePace { open_time_min: MINUTES, spreading_mm_per_min: SPREADING, closing_min: MINUTES });

impl Default for GluePace {
    fn default() -> Self {
        Self { open_time_min: None, spreading_mm_per_min: 1000.0, closing_min: 2.0 }
    }
}

/// The panels, their seams, and what goes inside.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<AssemblyOrderInput>))]
pub struct AssemblyOrderInput {
    /// Names of the panels.
    pub panels: Vec<String>,
    /// Their seams.
    pub seams: Vec<AssemblySeam>,
    /// Number of frame pieces, from 0.
    #[cfg_attr(feature = "json", serde(default))]
    pub frame_piece_count: u32,
    /// Number of glue blocks, from 0.
    #[cfg_attr(feature = "json", serde(default))]
    pub block_count: u32,
    /// How glue is spread and joints are closed.
    #[cfg_attr(feature = "json", serde(default))]
    pub pace: GluePace,
    /// Panel to close the body with; the one with the shortest seams if left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub last: Option<String>,
}

limited!(AssemblyOrderInput { frame_piece_count: COUNT_FROM_NONE, block_count: COUNT_FROM_NONE });

/// What is done in a step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum AssemblyWork {
    /// All together without glue.
    DryFit,
    /// Glue, with the panels laid out flat, taped across the seams and folded.
    FoldOnTape,
    /// Glue, with clamps over cauls.
    ClampOverCauls,
    /// Compare the diagonals while the glue is soft.
    CompareDiagonals,
    /// Frame pieces in.
    SetFrame,
    /// Glue blocks in.
    SetBlocks,
}

/// One step with its reason.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct AssemblyStep {
    /// Place in the order, from 1.
    pub step: u32,
    /// What is done.
    pub work: AssemblyWork,
    /// The panels it is about.
    pub panels: Vec<String>,
    /// Seams that are glued, mm.
    pub seam_length_mm: f64,
    /// Time from the first glue to the last clamp, minutes; 0 without glue.
    pub minutes: f64,
    /// Why now, and why so.
    pub reason: &'static str,
}

/// The order of assembly.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct AssemblyOrder {
    /// The steps in order.
    pub steps: Vec<AssemblyStep>,
    /// Panel that closes the body.
    pub last: String,
    /// Number of glue-ups, each to set before the next.
    pub glue_up_count: u32,
    /// What does not work.
    pub findings: Vec<Finding>,
}

const MOST_PANELS: usize = 40;

const DRY: &str =
    "Every joint is seen closed before glue makes it final; a bevel that is off is cut again, not clamped shut.";
const FOLD: &str = "Each panel meets only one other here, so they lie flat, show faces up and edges touching, taped across the \
                    seams; turned over, glued and folded, the tape pulls the long points together.";
const CLAMP: &str = "A panel here meets several others at once or a flat edge: tape alone does not close it. Cauls spread \
                     the clamps, and a block with the angle of the corner keeps them from slipping.";
const DIAGONALS: &str = "Equal diagonals at both ends and in the middle mean square and without twist; they can still be \
                         pushed equal while the glue is soft.";
const FRAME: &str = "After the long seams and before the body is closed: now they hold it square, and driver and hand still \
                     reach them. Glue them to one board only where the grain crosses.";
const BLOCKS: &str = "Once the seams hold: blocks pressed into wet seams push them open.";
const NEXT: &str = "A glue-up of its own: together with the one before it would take longer than the glue stays open.";

/// The order in which a body is glued up, each step with its reason, within the open time of the glue.
///
/// # Equation
/// ```text
/// minutes of a glue-up = sum of seam lengths / spreading + panels added · closing
/// ```
/// | symbol | here |
/// |---|---|
/// | spreading | `spreading_mm_per_min` |
/// | closing | `closing_min` |
///
/// It starts from the panel with the most seam and adds, one by one, the panel with the most seam to those already there.
/// The next panel joins the same glue-up while the open time allows and every panel of it still folds from flat, or
/// begins another. The last panel is the one given, else the one with the least seam.
///
/// # Limits
/// Two hands at a time. The open time is the maker's and shorter in warm, dry air. How long a glue-up must set is told by
/// its maker too.
///
/// # Errors
/// `out_of_range`, `not_finite`, `unknown_name` for a seam of a panel that is not listed, `duplicate_field` for a panel
/// listed twice, `inconsistent` for panels that no seam holds to the others; each with its path.
///
/// # Source
/// Common practice of the trade, no published source; checked by `verification/frame`.
///
/// # Examples
/// ```
/// use beamcraft_core::frame::{AssemblyOrderInput, AssemblySeam, AssemblyWork, GluePace, SeamJoint, assembly_order};
/// let seam = |first: &str, second: &str, length_mm| AssemblySeam {
///     first: first.to_owned(), second: second.to_owned(), length_mm, joint: SeamJoint::Mitred,
/// };
/// let order = assembly_order(&AssemblyOrderInput {
///     panels: ["front", "top", "bottom", "end"].map(str::to_owned).to_vec(),
///     seams: vec![seam("front", "top", 1800.0), seam("front", "bottom", 1800.0), seam("front", "end", 185.0),
///                 seam("top", "end", 215.0), seam("bottom", "end", 215.0)],
///     frame_piece_count: 4, block_count: 0, pace: GluePace::default(), last: None,
/// })?;
/// assert_eq!((order.steps[1].work, order.last.as_str()), (AssemblyWork::FoldOnTape, "end"));
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn assembly_order(input: &AssemblyOrderInput) -> Result<AssemblyOrder> {
    let seams = read(input)?;
    let body = AssembledBody { input, seams };
    let added = body.order()?;
    let glue_ups = body.glue_ups(&added);
    let last = added.last().map(|panel| body.name(*panel)).unwrap_or_default();
    let findings = glue_ups.iter().filter_map(|one| body.too_slow(one)).collect();
    Ok(AssemblyOrder { steps: body.steps(&glue_ups), last, glue_up_count: glue_ups.len() as u32, findings })
}

/// A seam by the numbers of its panels.
struct NumberedSeam {
    ends: [usize; 2],
    length_mm: f64,
    joint: SeamJoint,
}

/// Panels that are glued at one go.
struct GlueUp {
    /// Panels that are added; the first glue-up holds the one to start from as well.
    panels: Vec<usize>,
    seam_length_mm: f64,
    minutes: f64,
    folds: bool,
}

struct AssembledBody<'a> {
    input: &'a AssemblyOrderInput,
    seams: Vec<NumberedSeam>,
}

fn read(input: &AssemblyOrderInput) -> Result<Vec<NumberedSeam>> {
    let mut faults = faults_at("", input);
    faults.extend(faults_at("pace", &input.pace));
    let plain = |code, field, allowed| Detail::from(Fault::plain(code, field, allowed, ""));
    if !(2..=MOST_PANELS).contains(&input.panels.len()) {
        faults.push(plain(ErrorCode::Inconsistent, "panels", "2 to 40 panels"));
    }
    for (k, name) in input.panels.iter().enumerate() {
        if input.panels.iter().take(k).any(|other| other == name) {
            faults.push(plain(ErrorCode::DuplicateField, "", "each panel once").within(&format!("panels[{k}]")));
        }
    }
    let number = |name: &str| input.panels.iter().position(|panel| panel == name);
    let unknown = |field| plain(ErrorCode::UnknownName, field, "the name of a panel in the list");
    let mut seams = Vec::with_capacity(input.seams.len());
    for (k, seam) in input.seams.iter().enumerate() {
        let path = format!("seams[{k}]");
        faults.extend(faults_at(&path, seam));
        match (number(&seam.first), number(&seam.second)) {
            (Some(first), Some(second)) if first != second => {
                seams.push(NumberedSeam { ends: [first, second], length_mm: seam.length_mm, joint: seam.joint });
            }
            (Some(_), Some(_)) => faults.push(plain(ErrorCode::Inconsistent, "second", "another panel").within(&path)),
            (None, _) => faults.push(unknown("first").within(&path)),
            (_, None) => faults.push(unknown("second").within(&path)),
        }
    }
    if input.last.as_ref().is_some_and(|name| number(name).is_none()) {
        faults.push(unknown("last"));
    }
    Error::unless_empty(faults)?;
    Ok(seams)
}

impl AssembledBody<'_> {
    fn name(&self, panel: usize) -> String {
        self.input.panels.get(panel).cloned().unwrap_or_default()
    }

    fn seams_between(&self, panel: usize, others: &[usize]) -> impl Iterator<Item = &NumberedSeam> {
        self.seams.iter().filter(move |seam| {
            let [a, b] = seam.ends;
            (a == panel && others.contains(&b)) || (b == panel && others.contains(&a))
        })
    }

    fn seam_length(&self, panel: usize, others: &[usize]) -> f64 {
        self.seams_between(panel, others).map(|seam| seam.length_mm).sum()
    }

    /// The panels in the order in which they are added.
    fn order(&self) -> Result<Vec<usize>> {
        let all: Vec<usize> = (0..self.input.panels.len()).collect();
        let total = |panel: &usize| self.seam_length(*panel, &all);
        let least = all.iter().copied().rev().min_by(|a, b| total(a).total_cmp(&total(b)));
        let given = self.input.last.as_ref().and_then(|name| self.input.panels.iter().position(|panel| panel == name));
        let last = given.or(least);
        let mut left: Vec<usize> = all.iter().copied().filter(|panel| Some(*panel) != last).collect();
        let mut added: Vec<usize> = Vec::with_capacity(all.len());
        while let Some(next) = self.next(&left, &added) {
            left.retain(|panel| *panel != next);
            added.push(next);
        }
        added.extend(last.filter(|last| self.seams_between(*last, &added).next().is_some()));
        if added.len() == all.len() {
            return Ok(added);
        }
        let allowed = "panels that seams hold together, also before the last one is in";
        Err(Fault::plain(ErrorCode::Inconsistent, "seams", allowed, "another last panel, or the missing seams").into())
    }

    /// The panel with the most seam to those that are there; to start with, the one with the most of all.
    fn next(&self, left: &[usize], added: &[usize]) -> Option<usize> {
        let to: Vec<usize> = if added.is_empty() { (0..self.input.panels.len()).collect() } else { added.to_vec() };
        let held = left.iter().copied().filter(|panel| self.seams_between(*panel, &to).next().is_some());
        // Of equal ones the first in the list.
        held.rev().max_by(|a, b| self.seam_length(*a, &to).total_cmp(&self.seam_length(*b, &to)))
    }

    fn glue_ups(&self, added: &[usize]) -> Vec<GlueUp> {
        let pace = &self.input.pace;
        let mut glue_ups: Vec<GlueUp> = Vec::new();
        for (k, panel) in added.iter().copied().enumerate().skip(1) {
            let there = added.get(..k).unwrap_or_default();
            let seam_length_mm = self.seam_length(panel, there);
            let minutes = seam_length_mm / pace.spreading_mm_per_min + pace.closing_min;
            let folds = self.seams_between(panel, there).count() == 1
                && self.seams_between(panel, there).all(|seam| seam.joint == SeamJoint::Mitred);
            let fits = |one: &GlueUp| {
                one.folds == folds && pace.open_time_min.is_none_or(|open| one.minutes + minutes <= open)
            };
            match glue_ups.last_mut().filter(|one| fits(one)) {
                Some(one) => {
                    one.panels.push(panel);
                    one.seam_length_mm += seam_length_mm;
                    one.minutes += minutes;
                }
                None => {
                    let start = added.first().copied().filter(|_| glue_ups.is_empty());
                    let panels = start.into_iter().chain([panel]).collect();
                    glue_ups.push(GlueUp { panels, seam_length_mm, minutes, folds });
                }
            }
        }
        glue_ups
    }

    fn steps(&self, glue_ups: &[GlueUp]) -> Vec<AssemblyStep> {
        let mut steps: Vec<AssemblyStep> = Vec::new();
        let mut push = |work, panels: &[usize], seam_length_mm, minutes, reason| {
            let panels = panels.iter().map(|panel| self.name(*panel)).collect();
            let step = steps.len() as u32 + 1;
            steps.push(AssemblyStep { step, work, panels, seam_length_mm, minutes, reason });
        };
        let all: Vec<usize> = (0..self.input.panels.len()).collect();
        push(AssemblyWork::DryFit, &all, 0.0, 0.0, DRY);
        let mut there: Vec<usize> = Vec::new();
        for (k, one) in glue_ups.iter().enumerate() {
            let work = if one.folds { AssemblyWork::FoldOnTape } else { AssemblyWork::ClampOverCauls };
            let before = k.checked_sub(1).and_then(|before| glue_ups.get(before));
            let split = before.is_some_and(|before| before.folds == one.folds);
            let reason = match (split, one.folds) {
                (true, _) => NEXT,
                (false, true) => FOLD,
                (false, false) => CLAMP,
            };
            // What holds a body square goes in while it is open.
            if k + 1 == glue_ups.len() && k > 0 {
                self.inside(&mut push, &there);
            }
            push(work, &one.panels, one.seam_length_mm, one.minutes, reason);
            there.extend(&one.panels);
            if there.len() >= 3 {
                push(AssemblyWork::CompareDiagonals, &there, 0.0, 0.0, DIAGONALS);
            }
        }
        if glue_ups.len() == 1 {
            self.inside(&mut push, &there);
        }
        steps
    }

    fn inside(&self, push: &mut impl FnMut(AssemblyWork, &[usize], f64, f64, &'static str), there: &[usize]) {
        if self.input.frame_piece_count > 0 {
            push(AssemblyWork::SetFrame, there, 0.0, 0.0, FRAME);
        }
        if self.input.block_count > 0 {
            push(AssemblyWork::SetBlocks, there, 0.0, 0.0, BLOCKS);
        }
    }

    fn too_slow(&self, one: &GlueUp) -> Option<Finding> {
        let open = self.input.pace.open_time_min.filter(|open| one.minutes > *open)?;
        let names: Vec<String> = one.panels.iter().map(|panel| self.name(*panel)).collect();
        Some(Finding {
            grade: Grade::Caution,
            code: FindingCode::GlueSetsTooSoon,
            subject: names.join(", "),
            message: "The seams of this glue-up take longer than the glue stays open.".to_owned(),
            numbers: vec![
                Quantity::new("time from the first glue to the last clamp", one.minutes, "min"),
                Quantity::new("open time", open, "min"),
                Quantity::new("length of the seams", one.seam_length_mm, "mm"),
            ],
            cure: "A glue with a longer open time, a cooler shop, or a second pair of hands.".to_owned(),
            clause: None,
        })
    }
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const ASSEMBLY_ORDER: crate::json::Calculation = crate::json::calculation!(
    assembly_order: AssemblyOrderInput => AssemblyOrder, Document,
    "The order in which a body is glued up, each step with its reason, within the open time of the glue"
);

#[cfg(test)]
#[path = "assembly_tests.rs"]
mod tests;
