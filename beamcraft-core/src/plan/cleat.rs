//! The cleat in the body: where its halves sit, and the marks on the wall.

use super::body::Body;
use super::result::CleatPlan;
use super::within;
use crate::error::{Detail, Error, ErrorCode, Result};
use crate::finding::{Finding, FindingCode, Grade, Quantity};
use crate::hang::{CleatHalvesInput, CleatMarksInput, bottom_board_meets, cleat_halves, cleat_marks};
use crate::shell::FaceKind;

/// The cleat with what the load checks ask of it.
pub(super) struct FittedCleat {
    pub(super) plan: CleatPlan,
    pub(super) strip: CleatHalvesInput,
}

/// Fits the cleat; nothing, with a finding, when the strip cannot be ripped or does not go into the hollow.
pub(super) fn fit(body: &Body<'_>, findings: &mut Vec<Finding>) -> Result<Option<FittedCleat>> {
    let (spec, leg) = (body.checked.spec, body.checked.leg);
    let strip = CleatHalvesInput {
        strip_width_mm: spec.cleat.strip_width_mm,
        thickness_mm: spec.cleat.thickness_mm,
        bevel_deg: spec.cleat.bevel_deg,
        kerf_mm: spec.saw.kerf_mm,
        blunt_mm: spec.cleat.blunt_mm,
    };
    let halves = cleat_halves(&strip).map_err(|fault| {
        let field = if fault.field == "kerf_mm" { "saw" } else { "cleat" };
        within(fault, field)
    })?;
    let (left, right) = body.hollow_ends(leg.depth_mm - strip.thickness_mm, leg.depth_mm);
    let left = (left + spec.frame.clearance_mm).max(0.0);
    let right = (right - spec.frame.clearance_mm).min(leg.length_mm);
    let beam_half_top_mm = body.hollow_top_mm - spec.cleat.below_top_mm;
    let beam_half_bottom_mm = beam_half_top_mm - halves.blunted_face_mm;
    let wall_half_edge_mm = beam_half_bottom_mm - strip.blunt_mm;
    let wall_half_bottom_mm = wall_half_edge_mm - halves.short_face_mm;
    let floor_mm = body.thickness_mm(FaceKind::Bottom).unwrap_or(0.0);
    let play = spec.cleat.side_play_mm;
    if wall_half_bottom_mm < floor_mm || right - left <= play || body.panel(FaceKind::Back).is_some() {
        findings.push(no_cleat(body, halves.pair_height_mm, right - left));
        return Ok(None);
    }
    let row_up_mm = spec.cleat.screws.row_up_mm;
    // The strip's statics want a millimetre of wood above the row.
    if halves.short_face_mm - row_up_mm < 1.0 {
        return Err(Error::one(Detail {
            code: ErrorCode::Inconsistent,
            path: "cleat.screws.row_up_mm".to_owned(),
            given: format!("{row_up_mm} mm"),
            allowed: format!("at least 1 mm less than the short face of the wall half, {:.1} mm", halves.short_face_mm),
            cure: "lower the row or take a wider strip".to_owned(),
        }));
    }
    let mut plan = CleatPlan {
        halves,
        beam_half_length_mm: right - left,
        wall_half_length_mm: right - left - play,
        beam_half_left_mm: left,
        beam_half_top_mm,
        beam_half_bottom_mm,
        wall_half_point_mm: wall_half_bottom_mm + halves.blunted_face_mm,
        wall_half_edge_mm,
        wall_half_bottom_mm,
        screw_row_mm: wall_half_bottom_mm + row_up_mm,
        greatest_packing_mm: 0.0,
        marks: None,
        load_cases: Vec::new(),
    };
    if let Some((site, wall)) = spec.site.as_ref().and_then(|site| Some((site, site.wall.as_ref()?))) {
        let marks = cleat_marks(&CleatMarksInput {
            place: site.place,
            body_length_mm: leg.length_mm,
            body_height_mm: leg.height_mm,
            halves: strip,
            beam_half_up_mm: beam_half_bottom_mm,
            beam_half_left_mm: left,
            beam_half_length_mm: right - left,
            side_play_mm: play,
            bottom_board_mm: body.thickness_mm(FaceKind::Bottom),
            screw_row_up_mm: row_up_mm,
            screw_end_mm: spec.cleat.screws.end_distance_mm,
            wall: wall.clone(),
            obstructions: site.obstructions.clone(),
        });
        let marks = marks.map_err(|error| within(error, "cleat"))?;
        // What the body meets in its place, and the room to lift it on, are found with its whole section later.
        let later = [FindingCode::MeetsObstruction, FindingCode::NoHeadroom];
        let here = marks.findings.iter().filter(|finding| !later.contains(&finding.code));
        findings.extend(here.cloned());
        plan.marks = Some(marks);
    } else if let Some(floor_mm) = body.thickness_mm(FaceKind::Bottom) {
        findings.extend(bottom_board_meets(wall_half_bottom_mm - floor_mm, halves.lift_mm));
    }
    Ok(Some(FittedCleat { plan, strip }))
}

fn no_cleat(body: &Body<'_>, pair_height_mm: f64, length_mm: f64) -> Finding {
    let closed = body.panel(FaceKind::Back).is_some();
    let (message, cure) = if closed {
        ("The back is closed: no cleat can be hung behind it.", "Leave the back open.")
    } else {
        (
            "The two halves of the cleat do not fit into the hollow.",
            "A narrower strip, a lower bevel, less side play, or a higher or longer body.",
        )
    };
    Finding {
        grade: Grade::Stop,
        code: FindingCode::CleatDoesNotFit,
        subject: "cleat".to_owned(),
        message: message.to_owned(),
        numbers: vec![
            Quantity::new("height of the two halves together", pair_height_mm, "mm"),
            Quantity::new("upper side of the hollow", body.hollow_top_mm, "mm"),
            Quantity::new("inside length at the back", length_mm, "mm"),
        ],
        cure: cure.to_owned(),
        clause: None,
    }
}
