//! Can the body be lifted onto its cleat where it hangs?

use super::body::Body;
use super::cleat::FittedCleat;
use super::result::FramePlan;
use super::spec::SiteSpec;
use super::within;
use crate::error::Result;
use crate::finding::{Finding, FindingCode};
use crate::setting::{BodyPlace, OutlinePart, OutlinePoint};
use crate::shell::{EndKind, FaceKind};
use crate::site::{LiftManner, LiftOn, LiftOnInput, SiteFit, lift_on};

/// Greatest tilt that is tried while hanging, degrees; a choice, more is hard to hold.
const GREATEST_TILT_DEG: f64 = 12.0;

/// The way onto the cleat; nothing without a wall.
pub(super) fn way_on(
    body: &Body<'_>,
    cleat: &FittedCleat,
    frame: Option<&FramePlan>,
    fit: Option<&SiteFit>,
    findings: &mut Vec<Finding>,
) -> Result<Option<LiftOn>> {
    let site = body.checked.spec.site.as_ref();
    let Some((site, marks)) = site.and_then(|site| Some((site, cleat.plan.marks.as_ref()?))) else { return Ok(None) };
    let place = site.place;
    let mut parts = body.outlines_parted(place, 2.0 * cleat.strip.thickness_mm);
    parts.extend(frame.into_iter().flat_map(|frame| frame_parts(body, place, frame)));
    let beam_half_left_mm = place.left_end_mm + cleat.plan.beam_half_left_mm;
    let found = lift_on(&LiftOnInput {
        parts,
        strip: cleat.strip,
        beam_half_top_above_floor_mm: place.bottom_above_floor_mm + cleat.plan.beam_half_top_mm,
        beam_half_left_mm,
        beam_half_right_mm: beam_half_left_mm + cleat.plan.beam_half_length_mm,
        wall_half_left_mm: marks.left_mm,
        wall_half_right_mm: marks.right_mm,
        behind_mm: 0.0,
        things: site.obstructions.clone(),
        greatest_tilt_deg: GREATEST_TILT_DEG,
        tilt_step_deg: 1.0,
        slide_from_left_mm: free_wall(body, site, fit, EndSide::Left),
        slide_from_right_mm: free_wall(body, site, fit, EndSide::Right),
    })
    .map_err(|error| within(error, "cleat"))?;
    // What the body meets in its place was found with the site.
    let known = findings.iter().any(|finding| finding.code == FindingCode::MeetsObstruction);
    if found.manner != LiftManner::MeetsInPlace || !known {
        findings.extend(found.findings.iter().cloned());
    }
    Ok(Some(found))
}

/// A side of the body.
#[derive(Clone, Copy, PartialEq, Eq)]
enum EndSide {
    Left,
    Right,
}

/// Frame pieces, which stand up from the bottom board or hang under the top in front of the cleat.
fn frame_parts<'a>(
    body: &'a Body<'_>,
    place: BodyPlace,
    frame: &'a FramePlan,
) -> impl Iterator<Item = OutlinePart> + 'a {
    let leg = body.checked.leg;
    let front_mm = body.thickness_mm(FaceKind::Front).unwrap_or(0.0);
    let (near, far) = (leg.depth_mm - front_mm - frame.piece.length_mm, leg.depth_mm - front_mm);
    let high = place.bottom_above_floor_mm + body.hollow_top_mm;
    let low = high - frame.piece.width_mm;
    let corner = |out_mm, above_floor_mm| OutlinePoint { out_mm, above_floor_mm };
    frame.centres_mm.iter().map(move |centre| OutlinePart {
        name: "frame piece".to_owned(),
        left_mm: place.left_end_mm + centre - 0.5 * frame.thickness_mm,
        right_mm: place.left_end_mm + centre + 0.5 * frame.thickness_mm,
        outline: vec![corner(near, low), corner(far, low), corner(far, high), corner(near, high)],
    })
}

/// Free wall on a side, from which the body could be slid on, mm: up to the side wall or the nearest thing at its height;
/// nothing where the other end of the body is closed, or nobody looked at the wall.
fn free_wall(body: &Body<'_>, site: &SiteSpec, fit: Option<&SiteFit>, side: EndSide) -> Option<f64> {
    let (leg, survey) = (body.checked.leg, site.survey.as_ref()?);
    let far_end = if side == EndSide::Left { &leg.right_end } else { &leg.left_end };
    if far_end.kind != EndKind::Open {
        return None;
    }
    let (left, right) = (site.place.left_end_mm, site.place.left_end_mm + leg.length_mm);
    let wall = match side {
        EndSide::Left => survey.left_wall.map(|wall| left - wall.corner_at_mm),
        EndSide::Right => survey.right_wall.map(|wall| wall.corner_at_mm - right),
    };
    let things = fit.into_iter().flat_map(|fit| fit.things.iter().zip(&site.obstructions));
    let on_this_side = things.filter(|(gap, thing)| {
        let beyond = if side == EndSide::Left { thing.right_mm <= left } else { thing.left_mm >= right };
        gap.upright_mm < 0.0 && beyond
    });
    on_this_side.map(|(gap, _)| gap.along_mm).chain(wall).reduce(f64::min).map(|room| room.max(0.0))
}
