//! What goes inside: frame pieces and glue blocks clear of one another, and the order in which all is put together.

use super::body::Body;
use super::cleat::FittedCleat;
use super::result::{FramePlan, SeamBlocks};
use crate::finding::{Finding, FindingCode, Grade, Quantity};
use crate::frame::{
    AssemblyOrder, AssemblyOrderInput, AssemblySeam, FramePieceInput, FrameSpacingInput, GlueBlocksInput, HollowCorner,
    InsideScrew, InsideScrewCheck, InsideScrewsInput, KeepOut, SeamGrain, SeamJoint, assembly_order, frame_piece,
    frame_spacing, glue_blocks, inside_screws,
};
use crate::shell::{EdgeJoint, FaceId, FaceKind};

/// Room behind an open back while the body lies on the bench, mm; a choice.
const BENCH_MM: f64 = 1_000.0;

/// Frame pieces between front, top and bottom, clear of the cleat and its screws.
pub(super) fn frame(body: &Body<'_>, cleat: Option<&FittedCleat>, findings: &mut Vec<Finding>) -> Option<FramePlan> {
    let spec = &body.checked.spec.frame;
    let (front, top) = (body.panel(FaceKind::Front)?, body.panel(FaceKind::Top)?);
    let bottom = body.panel(FaceKind::Bottom)?;
    let leg = body.checked.leg;
    // The flats of the inside, from the sizes of the hollow: a board that runs past another is wider inside than that.
    let high_mm = leg.height_mm - top.thickness_mm - bottom.thickness_mm;
    let deep_mm = leg.depth_mm - front.thickness_mm - body.thickness_mm(FaceKind::Back).unwrap_or(0.0);
    // A piece ends in front of the strip over its whole height, so it is clear of the strip and of screws flush in it.
    let piece = frame_piece(&FramePieceInput {
        front_flat_mm: high_mm,
        wide_flat_mm: deep_mm,
        strip_thickness_mm: body.checked.spec.cleat.thickness_mm,
        clearance_mm: spec.clearance_mm,
    });
    let front_mm = front.thickness_mm;
    let (left, right) = body.hollow_ends(front_mm, front_mm + deep_mm);
    let spacing = frame_spacing(&FrameSpacingInput {
        inner_length_mm: right - left,
        piece_thickness_mm: spec.piece_thickness_mm,
        end_margin_mm: spec.end_margin_mm,
        greatest_spacing_mm: spec.greatest_spacing_mm,
        keep_outs: cleat.map(|cleat| at_screws(body, cleat, left)).unwrap_or_default(),
    });
    let (Ok(piece), Ok(spacing)) = (piece, spacing) else {
        findings.push(no_frame(high_mm, deep_mm, right - left));
        return None;
    };
    findings.extend(spacing.findings);
    let centres_mm: Vec<f64> = spacing.centres_mm.iter().map(|centre| left + centre).collect();
    let blocks = blocks(body, &centres_mm, findings);
    let block_screws = block_screws(body, &blocks, findings);
    Some(FramePlan { piece, thickness_mm: spec.piece_thickness_mm, centres_mm, blocks, block_screws })
}

/// Screws through the blocks of each seam, into the front and into the board above or below.
fn block_screws(body: &Body<'_>, blocks: &[SeamBlocks], findings: &mut Vec<Finding>) -> Vec<InsideScrewCheck> {
    let Some((face_mm, spec)) = body.checked.spec.frame.blocks.and_then(|one| Some((one.face_mm, one.screws?))) else {
        return Vec::new();
    };
    let leg = body.checked.leg;
    let thickness = |kind| body.thickness_mm(kind).unwrap_or(0.0);
    let front = thickness(FaceKind::Front);
    let (low, high) = (thickness(FaceKind::Bottom), leg.height_mm - thickness(FaceKind::Top));
    // The body lies on the bench: an open back is no wall for a driver.
    let back = body.thickness_mm(FaceKind::Back).map_or(leg.depth_mm + BENCH_MM, |back| leg.depth_mm - back);
    let corner = |(out_mm, up_mm): (f64, f64)| HollowCorner { out_mm, up_mm };
    // The middle of the free face of a three-sided block with two faces of a width is half of it from either board.
    let half = 0.5 * face_mm;
    let mut screws = Vec::new();
    for seam in blocks {
        let (_, other) = seam.seam.faces();
        let (up_mm, driven_deg) = if other.kind == FaceKind::Top { (high - half, 90.0) } else { (low + half, 270.0) };
        for (kind, driven_deg) in [(FaceKind::Front, 180.0), (other.kind, driven_deg)] {
            screws.push(InsideScrew {
                name: format!("block at {} into {kind}", seam.seam),
                out_mm: front + half,
                up_mm,
                driven_deg,
                length_mm: spec.length_mm,
                through_mm: (half - spec.sunk_mm).max(0.0),
                panel_thickness_mm: thickness(kind),
                lean_deg: 0.0,
            });
        }
    }
    let found = inside_screws(&InsideScrewsInput {
        free_space: [(front, low), (back, low), (back, high), (front, high)].map(corner).to_vec(),
        driver_length_mm: spec.driver_length_mm,
        bit_length_mm: spec.bit_length_mm,
        driver_radius_mm: spec.driver_radius_mm,
        least_cover_mm: spec.least_cover_mm,
        screws,
    });
    // A block too large for the hollow has its own finding.
    let Ok(found) = found else { return Vec::new() };
    findings.extend(found.findings);
    found.screws
}

/// Where the screws of the wall half stand, from the left inner end.
fn at_screws(body: &Body<'_>, cleat: &FittedCleat, left_mm: f64) -> Vec<KeepOut> {
    let clear = body.checked.spec.frame.screw_clear_mm;
    let (Some(site), Some(marks)) = (&body.checked.spec.site, &cleat.plan.marks) else { return Vec::new() };
    let places = marks.screws.iter().map(|screw| screw.x_mm - site.place.left_end_mm - left_mm);
    places.map(|place| KeepOut { from_mm: place - clear, to_mm: place + clear }).collect()
}

/// Glue blocks behind the front, along its seams with top and bottom, between the frame pieces.
fn blocks(body: &Body<'_>, frame_mm: &[f64], findings: &mut Vec<Finding>) -> Vec<SeamBlocks> {
    let (spec, Some(front)) = (&body.checked.spec.frame, body.panel(FaceKind::Front)) else { return Vec::new() };
    let Some(block) = spec.blocks else { return Vec::new() };
    let (left, right) = body.hollow_ends(front.thickness_mm, front.thickness_mm + block.face_mm);
    let half = 0.5 * spec.piece_thickness_mm;
    let keep_out = |centre: &f64| KeepOut { from_mm: centre - half - left, to_mm: centre + half - left };
    let mut found = Vec::new();
    for kind in [FaceKind::Top, FaceKind::Bottom] {
        let Some(edge) = front.edge(FaceId { leg: body.checked.leg.leg, kind }) else { continue };
        if edge.joint == EdgeJoint::Open {
            continue;
        }
        let placed = glue_blocks(&GlueBlocksInput {
            seam_length_mm: right - left,
            corner_deg: edge.corner_deg,
            face_mm: block.face_mm,
            block_length_mm: block.length_mm,
            end_margin_mm: spec.end_margin_mm,
            greatest_spacing_mm: block.greatest_spacing_mm,
            grain: SeamGrain::Along,
            keep_outs: frame_mm.iter().map(keep_out).collect(),
        });
        match placed {
            Ok(mut blocks) => {
                blocks.centres_mm.iter_mut().for_each(|centre| *centre += left);
                findings.append(&mut blocks.findings);
                found.push(SeamBlocks { seam: edge.id, blocks });
            }
            Err(_) => findings.push(no_blocks(edge.id.to_string(), block.length_mm)),
        }
    }
    found
}

/// The order of assembly; nothing for panels that no seams hold together.
pub(super) fn assembly(
    body: &Body<'_>,
    frame: Option<&FramePlan>,
    findings: &mut Vec<Finding>,
) -> Option<AssemblyOrder> {
    let panels = &body.shell.panels;
    let mut seams = Vec::new();
    for (k, panel) in panels.iter().enumerate() {
        let later = panels.get(k + 1..).unwrap_or_default();
        for edge in panel.edges.iter().filter(|edge| later.iter().any(|other| other.id == edge.neighbour)) {
            let joint = match edge.joint {
                EdgeJoint::Open => continue,
                EdgeJoint::Mitred => SeamJoint::Mitred,
                EdgeJoint::Stops | EdgeJoint::RunsPast => SeamJoint::Butted,
            };
            let (first, second) = (panel.id.to_string(), edge.neighbour.to_string());
            // Of a butt the panel that runs past has its edge beyond the seam; the longer of both faces is on the safe side.
            let length_mm = edge.show_length_mm.max(edge.inner_length_mm);
            seams.push(AssemblySeam { first, second, length_mm, joint });
        }
    }
    let order = assembly_order(&AssemblyOrderInput {
        panels: panels.iter().map(|panel| panel.id.to_string()).collect(),
        seams,
        frame_piece_count: frame.map_or(0, |frame| frame.centres_mm.len() as u32),
        block_count: frame.map_or(0, |frame| frame.blocks.iter().map(|seam| seam.blocks.block_count).sum()),
        pace: body.checked.spec.glue_up,
        last: None,
    });
    let mut order = order.ok()?;
    findings.append(&mut order.findings);
    Some(order)
}

fn no_frame(height_mm: f64, depth_mm: f64, length_mm: f64) -> Finding {
    Finding {
        grade: Grade::Caution,
        code: FindingCode::FrameDoesNotFit,
        subject: "frame".to_owned(),
        message: "No frame piece fits between the boards in front of the cleat.".to_owned(),
        numbers: vec![
            Quantity::new("inside height", height_mm, "mm"),
            Quantity::new("inside depth", depth_mm, "mm"),
            Quantity::new("inside length", length_mm, "mm"),
        ],
        cure: "Thinner frame pieces, a thinner cleat strip, or glue blocks along the seams instead.".to_owned(),
        clause: None,
    }
}

fn no_blocks(seam: String, length_mm: f64) -> Finding {
    Finding {
        grade: Grade::Note,
        code: FindingCode::FrameDoesNotFit,
        subject: seam,
        message: "No glue block fits along this seam between the frame pieces.".to_owned(),
        numbers: vec![Quantity::new("length of a block", length_mm, "mm")],
        cure: "Shorter blocks, or frame pieces farther apart.".to_owned(),
        clause: None,
    }
}
