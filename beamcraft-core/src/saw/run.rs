//! Grain that runs on round the corners: which run of board gives every piece, and what each corner costs.

use crate::error::{Detail, Error, ErrorCode, Fault, Result};
use crate::limits::{faults_at, limited};
use crate::numeric::real::{cos_deg, sin_deg, tan_deg};

/// How neighbours are parted at a corner.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum CornerMethod {
    /// Part on the bevel of the first piece, then recut the next to the same arris: loses k / cos b.
    PartOnBevel,
    /// Part square, then bevel both with the long point at the arris of the parting cut: loses k.
    PartSquare,
    /// Fold over a groove from the inner face that is not cut through: loses nothing.
    Fold,
}

/// Which way the run goes on the board.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum RunDirection {
    /// Along the grain, cut across: return, front, return.
    AlongGrain,
    /// Across the grain, ripped: the sides of a wrap from one wide board.
    AcrossGrain,
}

/// Whether the pieces close a ring.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum RunShape {
    /// First and last piece end free, as at the wall.
    Open,
    /// The last piece meets the first: there the grain cannot match.
    Closed,
}

/// One piece of the run.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<RunPiece>))]
pub struct RunPiece {
    /// Name of the piece.
    pub name: String,
    /// Length of its show face along the run, long point to long point, mm.
    pub show_length_mm: f64,
}

limited!(RunPiece { show_length_mm: BODY_LENGTH });

/// The corner after a piece.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<RunCorner>))]
pub struct RunCorner {
    /// Angle between the show faces, inside the body, degrees; 90 is a square corner.
    #[cfg_attr(feature = "json", serde(default = "square_corner"))]
    pub corner_deg: f64,
    /// How the neighbours are parted.
    pub method: CornerMethod,
}

limited!(RunCorner { corner_deg: RUN_CORNER });

#[cfg(feature = "json")]
fn square_corner() -> f64 {
    90.0
}

/// The pieces that are to share one run of board.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<GrainRunInput>))]
pub struct GrainRunInput {
    /// The pieces from left to right, seen on the show face.
    pub pieces: Vec<RunPiece>,
    /// The corner after each piece but the last; for a closed ring also after the last.
    pub corners: Vec<RunCorner>,
    /// Whether the pieces close a ring.
    pub shape: RunShape,
    /// Which way the run goes on the board.
    pub direction: RunDirection,
    /// Thickness of the board, mm.
    pub thickness_mm: f64,
    /// Width of the board square to the run, the length of a wedge, mm.
    pub width_mm: f64,
    /// Kerf of the blade, mm.
    pub kerf_mm: f64,
    /// Trimmed off each end of the run, mm.
    pub trim_mm: f64,
    /// Length beside the run kept for test cuts, mm.
    pub spare_mm: f64,
    /// Wood left under a groove that is folded over, mm; 0 where tape alone holds the corner.
    #[cfg_attr(feature = "json", serde(default))]
    pub skin_mm: f64,
}

limited!(GrainRunInput {
    thickness_mm: BOARD_THICKNESS,
    width_mm: LENGTH,
    kerf_mm: KERF,
    trim_mm: SMALL_LENGTH,
    spare_mm: LENGTH,
    skin_mm: SMALL_LENGTH,
});

/// Where a piece lies on the run.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct RunPiecePlace {
    /// Name of the piece.
    pub name: String,
    /// Left end of its show face, from the left end of the run, mm.
    pub from_mm: f64,
    /// Right end of its show face, mm.
    pub to_mm: f64,
    /// Bevel of its left end, degrees, the long point on the show face; 0 at a free end.
    pub left_bevel_deg: f64,
    /// Bevel of its right end, degrees, the long point on the show face; 0 at a free end.
    pub right_bevel_deg: f64,
}

/// A wedge that falls off at a corner.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct RunWedge {
    /// How many fall off alike.
    pub count: u32,
    /// Width on the inner face, mm.
    pub back_width_mm: f64,
    /// Height from the inner face to its apex, mm.
    pub height_mm: f64,
    /// Length, mm.
    pub length_mm: f64,
    /// Angle at the apex, degrees.
    pub apex_deg: f64,
    /// What it is good for.
    pub good_for: &'static str,
}

/// What a corner of the run costs.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct RunCornerLoss {
    /// Where the show face of the piece before it ends, from the left end of the run, mm.
    pub at_mm: f64,
    /// Bevel of both pieces, degrees.
    pub bevel_deg: f64,
    /// Lost on the show face between the two pieces, mm.
    pub loss_mm: f64,
    /// What is done, in the order of the cuts.
    pub cuts: Vec<&'static str>,
    /// The wedge that falls off; absent where none is left.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub wedge: Option<RunWedge>,
}

/// A run of board for grain that goes on round the corners.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct GrainRun {
    /// The pieces on the run.
    pub pieces: Vec<RunPiecePlace>,
    /// The corners between them, from left to right; of a ring the last one is where the grain does not match.
    pub corners: Vec<RunCornerLoss>,
    /// Lost at corners on the show face, mm.
    pub loss_mm: f64,
    /// Length of the run between its trimmed ends, mm.
    pub net_length_mm: f64,
    /// Length of board needed, with trim and spare, mm.
    pub run_length_mm: f64,
    /// What must not be done.
    pub rule: &'static str,
}

/// Which run of board gives neighbours whose grain goes on round each corner, and what each corner costs.
///
/// # Equation
/// ```text
/// b = (180 − C) / 2
/// loss: on the bevel k / cos b     square k     fold 0
/// wedge, on the bevel: back 2 t tan b − k / cos b     height t − k / (2 sin b)     apex 2 b
/// wedge, square: two of back t tan b − k / cos b      height t − k / sin b         apex b
/// wedge, fold: back 2 ((t − s) tan b − k / cos b)     height t − s − k / sin b     apex 2 b
/// run = Σ show + Σ loss + 2 trim + spare
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | C, b | corner inside the body, bevel of both pieces | degree | `corner_deg` |
/// | t, k, s | thickness, kerf, skin under a fold | mm | `thickness_mm`, `kerf_mm`, `skin_mm` |
///
/// A wedge is given where both its width and its height are above nothing: a wide kerf in a thin board leaves none.
///
/// # Limits
/// One thickness all round, outside corners. The match is that of the show face; below it the figure may run elsewhere.
/// Where a ring closes there is no match; whether its corners add up to a closed ring is not looked at. Nor is the reach
/// of the saw: a sharp corner wants a bevel beyond the 45° of most, see [`tilt_set_up`](super::tilt_set_up). A fold over a
/// skin stretches its outer fibres, and a thick one breaks.
///
/// # Caution
/// Guard and riving knife in place, an insert that fits the tilt, and test cuts in the spare length; see
/// [`Caution::Saw`](crate::finding::Caution::Saw). A wedge lies loose beside the blade: stand out of its line.
///
/// # Errors
/// `out_of_range`, `not_finite`, each with its path; `inconsistent` when the number of corners does not fit the pieces, a
/// ring has fewer than three pieces, a piece is too short for its bevels, or the skin under a fold is thicker than the board.
///
/// # Source
/// Plane geometry, derived in the theory pages; the three ways are common practice. Checked by
/// `verification/grain_run`.
///
/// # Examples
/// ```
/// use beamcraft_core::saw::*;
/// let piece = |name: &str, show_length_mm| RunPiece { name: name.to_owned(), show_length_mm };
/// let corner = RunCorner { corner_deg: 90.0, method: CornerMethod::PartSquare };
/// let run = grain_run(&GrainRunInput {
///     pieces: vec![piece("left", 215.0), piece("front", 1830.0), piece("right", 215.0)],
///     corners: vec![corner; 2], shape: RunShape::Open, direction: RunDirection::AlongGrain,
///     thickness_mm: 20.0, width_mm: 185.0, kerf_mm: 3.0, trim_mm: 20.0, spare_mm: 300.0, skin_mm: 0.0,
/// })?;
/// assert_eq!(run.net_length_mm, 2266.0);
/// assert_eq!(run.run_length_mm, 2606.0);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn grain_run(input: &GrainRunInput) -> Result<GrainRun> {
    check(input)?;
    let bevel = |k: usize| input.corners.get(k).map(|corner| 0.5 * (180.0 - corner.corner_deg));
    let closing =
        if input.shape == RunShape::Closed { input.pieces.len().checked_sub(1).and_then(bevel) } else { None };
    let mut at = input.trim_mm;
    let mut pieces = Vec::with_capacity(input.pieces.len());
    let mut corners = Vec::with_capacity(input.corners.len());
    for (k, piece) in input.pieces.iter().enumerate() {
        let left = k.checked_sub(1).map_or(closing, bevel).unwrap_or(0.0);
        let right = bevel(k).unwrap_or(0.0);
        let to = at + piece.show_length_mm;
        let inner = piece.show_length_mm - input.thickness_mm * (tan_deg(left) + tan_deg(right));
        if inner <= 0.0 {
            let fault = Fault::plain(
                ErrorCode::Inconsistent,
                "show_length_mm",
                "a piece that its bevels leave an inner face",
                "",
            );
            return Err(Error::one(Detail::from(fault).within(&format!("pieces[{k}]"))));
        }
        pieces.push(RunPiecePlace {
            name: piece.name.clone(),
            from_mm: at,
            to_mm: to,
            left_bevel_deg: left,
            right_bevel_deg: right,
        });
        at = to;
        if let Some(corner) = input.corners.get(k) {
            // A ring is not parted where it closes: both ends of the run are trimmed to their bevel there.
            let parted = k + 1 < input.pieces.len();
            let found = at_corner(input, corner, at, parted);
            at += found.loss_mm;
            corners.push(found);
        }
    }
    let loss_mm = corners.iter().map(|corner| corner.loss_mm).sum();
    Ok(GrainRun {
        pieces,
        corners,
        loss_mm,
        net_length_mm: at - input.trim_mm,
        run_length_mm: at + input.trim_mm + input.spare_mm,
        rule: "Recut the neighbour; do not turn it over instead: that shows the other face of the board and the match is lost.",
    })
}

fn check(input: &GrainRunInput) -> Result<()> {
    let mut faults = faults_at("", input);
    for (k, piece) in input.pieces.iter().enumerate() {
        faults.extend(faults_at(&format!("pieces[{k}]"), piece));
    }
    for (k, corner) in input.corners.iter().enumerate() {
        faults.extend(faults_at(&format!("corners[{k}]"), corner));
    }
    let wanted = input.pieces.len().saturating_sub(if input.shape == RunShape::Closed { 0 } else { 1 });
    if input.pieces.is_empty() || input.corners.len() != wanted {
        let allowed = "a piece, and a corner after each but the last; of a ring also after the last";
        faults.push(Fault::plain(ErrorCode::Inconsistent, "corners", allowed, "").into());
    }
    if input.shape == RunShape::Closed && input.pieces.len() < 3 {
        faults.push(Fault::plain(ErrorCode::Inconsistent, "pieces", "three pieces or more for a ring", "").into());
    }
    if input.skin_mm >= input.thickness_mm {
        faults.push(Fault::plain(ErrorCode::Inconsistent, "skin_mm", "less than the thickness", "").into());
    }
    Error::unless_empty(faults)
}

/// Angles closer than this are one angle.
const SAME_DEG: f64 = 1e-9;

fn at_corner(input: &GrainRunInput, corner: &RunCorner, at_mm: f64, parted: bool) -> RunCornerLoss {
    let GrainRunInput { thickness_mm: t, kerf_mm: k, .. } = *input;
    let bevel_deg = 0.5 * (180.0 - corner.corner_deg);
    let (run, along_table) = (t * tan_deg(bevel_deg), k / cos_deg(bevel_deg));
    if !parted {
        let cuts = vec!["bevel the free ends of the first and the last piece; the grain does not match at this corner"];
        return RunCornerLoss { at_mm, bevel_deg, loss_mm: 0.0, cuts, wedge: None };
    }
    let (loss_mm, cuts, count, back, height, apex_deg) = match corner.method {
        CornerMethod::PartOnBevel => (
            along_table,
            vec![
                "part on the bevel, the long point of the first piece on the show face",
                "recut the next piece with the other bevel, just to its arris on the show face",
            ],
            1,
            2.0 * run - along_table,
            t - 0.5 * k / sin_deg(bevel_deg),
            2.0 * bevel_deg,
        ),
        CornerMethod::PartSquare => (
            k,
            vec![
                "part square",
                "bevel the first piece, just to its arris on the show face",
                "bevel the next piece, just to its arris on the show face",
            ],
            2,
            run - along_table,
            t - k / sin_deg(bevel_deg),
            bevel_deg,
        ),
        CornerMethod::Fold => {
            let deep = t - input.skin_mm;
            (
                0.0,
                vec![
                    "tape the show face over the corner",
                    "cut the groove from the inner face with both bevels, down to the skin",
                    "fold",
                ],
                1,
                2.0 * (deep * tan_deg(bevel_deg) - along_table),
                deep - k / sin_deg(bevel_deg),
                2.0 * bevel_deg,
            )
        }
    };
    let long_grain = input.direction == RunDirection::AcrossGrain;
    // A wedge parted square has a right angle at its back besides the one at its apex.
    let fits_with = |angle_deg: f64| (angle_deg - corner.corner_deg).abs() < SAME_DEG;
    let fits = fits_with(apex_deg) || (corner.method == CornerMethod::PartSquare && fits_with(90.0));
    let wedge = (back > 0.0 && height > 0.0).then_some(RunWedge {
        count,
        back_width_mm: back,
        height_mm: height,
        length_mm: input.width_mm,
        apex_deg,
        good_for: match (long_grain, fits) {
            (true, true) => "long-grained, and fits the inside of the corner: glue blocks along the long seams",
            (true, false) => "long-grained, but does not fit the inside of the corner: cauls and packing",
            (false, true) => {
                "short-grained and weak, but fits the inside of the corner: glue blocks at the end seams only"
            }
            (false, false) => "short-grained, and does not fit the inside of the corner: test pieces only",
        },
    });
    RunCornerLoss { at_mm, bevel_deg, loss_mm, cuts, wedge }
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const GRAIN_RUN: crate::json::Calculation = crate::json::calculation!(
    grain_run: GrainRunInput => GrainRun, Document,
    "Which run of board gives neighbours whose grain goes on round the corners, cut by cut, with losses and wedges"
);

#[cfg(test)]
#[path = "run_tests.rs"]
mod tests;
