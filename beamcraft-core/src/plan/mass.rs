//! Mass and centre of gravity of what is lifted.

use super::body::Body;
use super::cleat::FittedCleat;
use super::result::{FramePlan, MassPlan};
use crate::geometry::Vec3;
use crate::numeric::compensated_sum;
use crate::shell::FaceKind;

/// Cubic millimetres in a cubic metre.
const MM3_PER_M3: f64 = 1.0e9;

/// Mass of panels, frame pieces and beam half, each at its own centre.
pub(super) fn of(body: &Body<'_>, frame: Option<&FramePlan>, cleat: Option<&FittedCleat>) -> MassPlan {
    let (density, strip_density) = (body.checked.panels.density_kg_m3, body.checked.strip.density_kg_m3);
    let panels: Vec<(f64, Vec3)> = body
        .shell
        .panels
        .iter()
        .map(|panel| (panel.mass.volume_mm3 * density / MM3_PER_M3, panel.mass.centroid_mm))
        .collect();
    let mut inside = frame.map(|frame| frame_pieces(body, frame, density)).unwrap_or_default();
    inside.extend(frame.into_iter().flat_map(|frame| blocks(body, frame, density)));
    inside.extend(cleat.map(|cleat| beam_half(body, cleat, strip_density)));
    let total = |parts: &[(f64, Vec3)]| compensated_sum(parts.iter().map(|part| part.0));
    let (panels_kg, inside_kg) = (total(&panels), total(&inside));
    let lifted_kg = panels_kg + inside_kg;
    let all = || panels.iter().chain(&inside);
    let mean = |of: fn(&Vec3) -> f64| compensated_sum(all().map(|(mass, at)| mass * of(at))) / lifted_kg;
    MassPlan {
        density_kg_m3: density,
        panels_kg,
        inside_kg,
        lifted_kg,
        centre_mm: [mean(|at| at.x), mean(|at| at.y), mean(|at| at.z)],
    }
}

/// Frame pieces stand behind the front, between bottom and top.
fn frame_pieces(body: &Body<'_>, frame: &FramePlan, density: f64) -> Vec<(f64, Vec3)> {
    let front = body.thickness_mm(FaceKind::Front).unwrap_or(0.0);
    let volume = frame.piece.width_mm * frame.piece.length_mm * frame.thickness_mm;
    let y = front + 0.5 * frame.piece.length_mm;
    let z = body.hollow_top_mm - 0.5 * frame.piece.width_mm;
    frame.centres_mm.iter().map(|x| (volume * density / MM3_PER_M3, Vec3::new(*x, y, z))).collect()
}

/// Glue blocks sit behind the front, in its corners with top and bottom.
fn blocks(body: &Body<'_>, frame: &FramePlan, density: f64) -> Vec<(f64, Vec3)> {
    let Some(spec) = body.checked.spec.frame.blocks else { return Vec::new() };
    let front = body.thickness_mm(FaceKind::Front).unwrap_or(0.0);
    let under_mm = body.thickness_mm(FaceKind::Bottom).unwrap_or(0.0);
    let third = spec.face_mm / 3.0;
    let mut parts = Vec::new();
    for seam in &frame.blocks {
        let (first, second) = seam.seam.faces();
        let at_top = [first, second].iter().any(|face| face.kind == FaceKind::Top);
        let z = if at_top { body.hollow_top_mm - third } else { under_mm + third };
        // Half of a square, its centroid a third of the side from the corner.
        let volume = 0.5 * spec.face_mm * spec.face_mm * spec.length_mm;
        let at = |x: &f64| (volume * density / MM3_PER_M3, Vec3::new(*x, front + third, z));
        parts.extend(seam.blocks.centres_mm.iter().map(at));
    }
    parts
}

/// The beam half: a strip whose lower edge rises from the wall to the front by the bevel.
fn beam_half(body: &Body<'_>, cleat: &FittedCleat, density: f64) -> (f64, Vec3) {
    let plan = &cleat.plan;
    let (t, d) = (cleat.strip.thickness_mm, cleat.strip.blunt_mm);
    let (long, short) = (plan.halves.long_face_mm, plan.halves.short_face_mm);
    // A trapezium less the small triangle that blunting takes off its point; `flat` is that triangle's base.
    let flat = plan.halves.point_flat_mm;
    let (whole, point) = (0.5 * t * (long + short), 0.5 * d * flat);
    let section = whole - point;
    let volume = section * plan.beam_half_length_mm;
    // Centroids of both, in front of the wall and below the upper edge.
    let out = t * (long + 2.0 * short) / (3.0 * (long + short));
    let down = (long * long + long * short + short * short) / (3.0 * (long + short));
    let mean = |of_whole: f64, of_point: f64| (whole * of_whole - point * of_point) / section;
    let x = plan.beam_half_left_mm + 0.5 * plan.beam_half_length_mm;
    let y = body.checked.leg.depth_mm - mean(out, flat / 3.0);
    let z = plan.beam_half_top_mm - mean(down, long - 2.0 * d / 3.0);
    (volume * density / MM3_PER_M3, Vec3::new(x, y, z))
}
