//! Glue blocks along a seam.

use super::spacing::{FrameSpacingInput, KeepOut, frame_spacing};
use crate::error::{Error, Result};
use crate::finding::{Finding, FindingCode, Grade, Quantity};
use crate::limits::{faults_at, limited};
use crate::numeric::real::sin_deg;

/// How the grain of the boards runs against the seam.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum SeamGrain {
    /// Along the seam, as at the long edges of a beam: block and boards move together.
    #[default]
    Along,
    /// Across the seam, as at a return: a block with its grain along the seam holds boards that move across it.
    Across,
}

/// A seam and the blocks to glue into it.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<GlueBlocksInput>))]
pub struct GlueBlocksInput {
    /// Length of the seam inside, mm.
    pub seam_length_mm: f64,
    /// Angle between the boards, inside the body, degrees; 90 if left out.
    #[cfg_attr(feature = "json", serde(default = "square_corner"))]
    pub corner_deg: f64,
    /// Width of each glued face of a block, mm; 20 is a choice.
    #[cfg_attr(feature = "json", serde(default = "usual_face"))]
    pub face_mm: f64,
    /// Length of a block along the seam, mm; 60 is a choice.
    #[cfg_attr(feature = "json", serde(default = "usual_length"))]
    pub block_length_mm: f64,
    /// From each end of the seam to the nearer end of the first and last block, mm.
    #[cfg_attr(feature = "json", serde(default))]
    pub end_margin_mm: f64,
    /// Greatest distance between the centres of neighbours, mm; 250 is a choice.
    #[cfg_attr(feature = "json", serde(default = "usual_spacing"))]
    pub greatest_spacing_mm: f64,
    /// How the grain of the boards runs against the seam.
    #[cfg_attr(feature = "json", serde(default))]
    pub grain: SeamGrain,
    /// Where no block may sit, along the seam: frame pieces, cleat, screws.
    #[cfg_attr(feature = "json", serde(default))]
    pub keep_outs: Vec<KeepOut>,
}

limited!(GlueBlocksInput {
    seam_length_mm: BODY_LENGTH,
    corner_deg: FRAME_CORNER,
    face_mm: BOARD_THICKNESS,
    block_length_mm: BOARD_THICKNESS,
    end_margin_mm: LENGTH,
    greatest_spacing_mm: SPACING,
});

#[cfg(feature = "json")]
fn square_corner() -> f64 {
    90.0
}
#[cfg(feature = "json")]
fn usual_face() -> f64 {
    20.0
}
#[cfg(feature = "json")]
fn usual_length() -> f64 {
    60.0
}
#[cfg(feature = "json")]
fn usual_spacing() -> f64 {
    250.0
}

/// Longest block across the grain of the boards that passes without a finding, mm; a choice, no published rule.
const SHORT_BLOCK_MM: f64 = 60.0;

/// Glue blocks of a seam: places, section, glued area.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct GlueBlocks {
    /// Centres of the blocks from the beginning of the seam, mm.
    pub centres_mm: Vec<f64>,
    /// Number of blocks.
    pub block_count: u32,
    /// Width of the free face of a block, mm.
    pub free_face_mm: f64,
    /// Bevel from square at which blocks are ripped off a square edge, the free face between two glued ones, degrees.
    pub bevel_deg: f64,
    /// Glued area of one block, both faces, mm².
    pub glued_each_mm2: f64,
    /// Glued area of all blocks, mm².
    pub glued_mm2: f64,
    /// Length of strip for all blocks, without kerfs, mm.
    pub strip_length_mm: f64,
    /// What stands in the way.
    pub findings: Vec<Finding>,
}

/// Glue blocks along a seam, evenly where nothing is in the way.
///
/// # Equation
/// ```text
/// free face = 2 w sin(c/2)        bevel = c/2        glued = 2 w l        places as in frame_spacing
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | w | width of a glued face | mm | `face_mm` |
/// | c | angle between the boards | degree | `corner_deg` |
/// | l | length of a block | mm | `block_length_mm` |
///
/// # Limits
/// Three-sided blocks with equal glued faces. How many blocks a seam needs is no matter of a published rule.
///
/// # Errors
/// `out_of_range`, `not_finite`, each with its path; `inconsistent` when blocks are longer than their spacing or a keep-out
/// ends before it begins; `no_room_inside` when no place is left.
///
/// # Source
/// Plane geometry; common practice of the trade. Checked by `verification/frame`.
///
/// # Examples
/// ```
/// use beamcraft_core::frame::{GlueBlocksInput, SeamGrain, glue_blocks};
/// let blocks = glue_blocks(&GlueBlocksInput {
///     seam_length_mm: 1790.0, corner_deg: 90.0, face_mm: 20.0, block_length_mm: 60.0, end_margin_mm: 30.0,
///     greatest_spacing_mm: 250.0, grain: SeamGrain::Along, keep_outs: vec![],
/// })?;
/// assert_eq!((blocks.block_count, blocks.glued_each_mm2), (8, 2400.0));
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn glue_blocks(input: &GlueBlocksInput) -> Result<GlueBlocks> {
    Error::unless_empty(faults_at("", input))?;
    let spacing = frame_spacing(&FrameSpacingInput {
        inner_length_mm: input.seam_length_mm,
        piece_thickness_mm: input.block_length_mm,
        end_margin_mm: input.end_margin_mm,
        greatest_spacing_mm: input.greatest_spacing_mm,
        keep_outs: input.keep_outs.clone(),
    })?;
    let each = 2.0 * input.face_mm * input.block_length_mm;
    let count = f64::from(spacing.piece_count);
    let mut findings: Vec<Finding> =
        spacing.findings.into_iter().map(|one| Finding { subject: "glue blocks".to_owned(), ..one }).collect();
    if input.grain == SeamGrain::Across && input.block_length_mm > SHORT_BLOCK_MM {
        findings.push(across(input.block_length_mm));
    }
    Ok(GlueBlocks {
        centres_mm: spacing.centres_mm,
        block_count: spacing.piece_count,
        free_face_mm: 2.0 * input.face_mm * sin_deg(0.5 * input.corner_deg),
        bevel_deg: 0.5 * input.corner_deg,
        glued_each_mm2: each,
        glued_mm2: each * count,
        strip_length_mm: input.block_length_mm * count,
        findings,
    })
}

fn across(length_mm: f64) -> Finding {
    Finding {
        grade: Grade::Caution,
        code: FindingCode::CrossGrainFight,
        subject: "glue blocks".to_owned(),
        message: "The grain of the boards crosses the seam: a long block holds them while they move across it."
            .to_owned(),
        numbers: vec![
            Quantity::new("length of a block", length_mm, "mm"),
            Quantity::new("short enough", SHORT_BLOCK_MM, "mm"),
        ],
        cure: "Several short blocks with gaps, or blocks with their grain as the boards have it.".to_owned(),
        clause: None,
    }
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const GLUE_BLOCKS: crate::json::Calculation = crate::json::calculation!(
    glue_blocks: GlueBlocksInput => GlueBlocks, Document,
    "Glue blocks along a seam: places clear of keep-outs, section, glued area"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::error::ErrorCode;
    use crate::statics::test_inputs::hostile;
    use proptest::prelude::*;

    fn seam() -> GlueBlocksInput {
        GlueBlocksInput {
            seam_length_mm: 1000.0,
            corner_deg: 90.0,
            face_mm: 20.0,
            block_length_mm: 50.0,
            end_margin_mm: 0.0,
            greatest_spacing_mm: 250.0,
            grain: SeamGrain::Along,
            keep_outs: vec![],
        }
    }

    #[test]
    fn a_square_corner_takes_a_half_square() {
        let blocks = glue_blocks(&seam()).unwrap();
        assert!((blocks.free_face_mm - 800.0_f64.sqrt()).abs() < 1e-12, "the diagonal of 20 by 20");
        assert_eq!((blocks.bevel_deg, blocks.block_count, blocks.strip_length_mm), (45.0, 5, 250.0));
    }

    #[test]
    fn long_blocks_across_the_grain_are_cautioned() {
        let across = GlueBlocksInput { grain: SeamGrain::Across, block_length_mm: 100.0, ..seam() };
        assert_eq!(glue_blocks(&across).unwrap().findings[0].code, FindingCode::CrossGrainFight);
        assert!(glue_blocks(&GlueBlocksInput { block_length_mm: 40.0, ..across }).unwrap().findings.is_empty());
    }

    #[test]
    fn a_seam_without_room_is_refused() {
        let full = GlueBlocksInput { keep_outs: vec![KeepOut { from_mm: 0.0, to_mm: 1000.0 }], ..seam() };
        assert_eq!(glue_blocks(&full).unwrap_err().code(), ErrorCode::NoRoomInside);
        let long = GlueBlocksInput { greatest_spacing_mm: 40.0, ..seam() };
        assert_eq!(glue_blocks(&long).unwrap_err().code(), ErrorCode::Inconsistent);
    }

    proptest! {
        #[test]
        fn hostile_numbers_are_refused_or_give_blocks(n in proptest::collection::vec(hostile(), 8)) {
            let input = GlueBlocksInput {
                seam_length_mm: n[0], corner_deg: n[1], face_mm: n[2], block_length_mm: n[3], end_margin_mm: n[4],
                greatest_spacing_mm: n[5], grain: SeamGrain::Across, keep_outs: vec![KeepOut { from_mm: n[6], to_mm: n[7] }],
            };
            if let Ok(blocks) = glue_blocks(&input) {
                prop_assert!(blocks.glued_mm2.is_finite() && blocks.free_face_mm > 0.0);
            }
        }
    }
}
