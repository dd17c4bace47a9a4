//! What is made and how: panels, saw settings, frame pieces, the cleat.

use super::super::text::{degrees, significant};
use super::super::words;
use super::page::{Html, Page};
use crate::frame::{AssemblyStep, DriverRoom};
use crate::hang::CleatMarks;
use crate::plan::{CleatPlan, LoadCase, Plan, ReportLengths};
use crate::shell::{EdgeJoint, Panel, PanelEdge};

/// Sizes and bevels of the panels.
pub(super) fn panels(page: &mut Page, plan: &Plan) {
    let lengths = plan.spec.lengths;
    page.heading("Panels");
    page.remark(
        "Length runs with the grain. Sizes are overall, long point to long point; the show face follows where it is smaller. \
         Bevels are from square; negative: the long point lies on the inner face.",
    );
    let row = |panel: &Panel| {
        let bevels: Vec<Html> = panel.edges.iter().map(|edge| bevel(edge).into()).collect();
        let overall = pair(lengths, panel.blank_length_mm, panel.blank_width_mm);
        let show = pair(lengths, panel.show_length_mm, panel.show_width_mm);
        let show = if show == overall { String::new() } else { format!("show face {show}") };
        [
            words::face(panel.id).into(),
            Html::lines(&[overall.into(), show.into()]),
            lengths.full(panel.thickness_mm).into(),
            Html::lines(&bevels),
        ]
    };
    page.table("", ["panel", "length × width", "thickness", "edges"], plan.panels.iter().map(row));
}

fn pair(lengths: ReportLengths, length_mm: f64, width_mm: f64) -> String {
    format!("{} × {}", lengths.bare(length_mm), lengths.full(width_mm))
}

/// One edge: `top 45° mitred`.
fn bevel(edge: &PanelEdge) -> String {
    let gauge =
        if edge.gauge_deg == 0.0 { String::new() } else { format!(", {} in the face", degrees(edge.gauge_deg)) };
    let joint = words::joint(edge.joint);
    let to = words::face(edge.neighbour);
    match edge.joint {
        EdgeJoint::Open => format!("to the open {to}: {}{gauge}", degrees(edge.tilt_deg)),
        _ => format!("to the {to}: {}{gauge}, {joint}", degrees(edge.tilt_deg)),
    }
}

/// Frame pieces inside.
pub(super) fn frame(page: &mut Page, plan: &Plan) {
    let Some(frame) = &plan.frame else { return };
    let lengths = plan.spec.lengths;
    page.heading("Frame pieces");
    page.paragraph(format!(
        "{} pieces, {} high × {} deep × {} thick.",
        frame.centres_mm.len(),
        lengths.full(frame.piece.width_mm),
        lengths.full(frame.piece.length_mm),
        lengths.full(frame.thickness_mm)
    ));
    let centres: Vec<String> = frame.centres_mm.iter().map(|centre| lengths.full(*centre)).collect();
    page.paragraph(format!("Centres from the left end of the front: {}.", centres.join(", ")));
    for seam in &frame.blocks {
        let centres: Vec<String> = seam.blocks.centres_mm.iter().map(|centre| lengths.full(*centre)).collect();
        page.paragraph(format!(
            "Glue blocks along {}: free face {}, ripped at {}; centres from the left end of the front: {}.",
            seam.seam,
            lengths.full(seam.blocks.free_face_mm),
            degrees(seam.blocks.bevel_deg),
            centres.join(", ")
        ));
    }
    for screw in &frame.block_screws {
        let room = match screw.driver {
            DriverRoom::Fits => "the driver fits",
            DriverRoom::NoRoom => "the driver has no room in line with it",
        };
        page.paragraph(format!(
            "Screw through a {}: {} in the board, {} of wood before the show face, no longer than {}; {room}.",
            screw.name,
            lengths.full(screw.bite_mm),
            lengths.full(screw.cover_mm),
            lengths.full(screw.longest_mm),
        ));
    }
}

/// The order of assembly with its reasons.
pub(super) fn assembly(page: &mut Page, plan: &Plan) {
    let Some(order) = &plan.assembly else { return };
    page.heading("Order of assembly");
    if plan.spec.glue_up.open_time_min.is_none() {
        page.remark("The open time of the glue was not given, so nothing says whether one glue-up is too long for it.");
    }
    let row = |step: &AssemblyStep| {
        let panels = step.panels.join(", ").replace('_', " ");
        let glued = step.seam_length_mm > 0.0;
        let seams = if glued { plan.spec.lengths.full(step.seam_length_mm) } else { String::new() };
        let minutes = if glued { format!("{} min", significant(step.minutes)) } else { String::new() };
        [
            format!("{}. {}", step.step, step.work.words()).into(),
            panels.into(),
            seams.into(),
            minutes.into(),
            step.reason.into(),
        ]
    };
    page.table("", ["step", "panels", "seams", "time", "why"], order.steps.iter().map(row));
}

/// The cleat: halves, heights, marks, load cases.
pub(super) fn cleat(page: &mut Page, plan: &Plan) {
    page.heading("Cleat");
    let Some(cleat) = &plan.cleat else {
        page.paragraph("The cleat does not fit this body; the findings say why and what would help.");
        return;
    };
    halves(page, plan, cleat);
    heights(page, plan, cleat);
    if let Some(marks) = &cleat.marks {
        screws(page, plan, marks);
        lift_rooms(page, plan.spec.lengths, marks);
    }
    load_cases(page, plan.spec.lengths, cleat);
}

fn halves(page: &mut Page, plan: &Plan, cleat: &CleatPlan) {
    let (lengths, spec, halves) = (plan.spec.lengths, &plan.spec.cleat, &cleat.halves);
    let strip = pair(lengths, spec.strip_width_mm, spec.thickness_mm);
    page.paragraph(format!(
        "One strip {strip}, ripped once at {}; both halves come out alike.",
        degrees(spec.bevel_deg)
    ));
    let rows = [
        ("long face as sawn", lengths.full(halves.long_face_mm)),
        ("long face, point blunted", lengths.full(halves.blunted_face_mm)),
        ("short face", lengths.full(halves.short_face_mm)),
        ("fence, long face up, blade leaning away", lengths.full(halves.fence_leaning_away_mm)),
        ("fence, long face down, blade leaning towards", lengths.full(halves.fence_leaning_towards_mm)),
        ("beam half, length", lengths.full(cleat.beam_half_length_mm)),
        ("beam half, from the left end of the front", lengths.full(cleat.beam_half_left_mm)),
        ("wall half, length", lengths.full(cleat.wall_half_length_mm)),
        ("lift to hang the body", lengths.full(halves.lift_mm)),
        ("seat, seen from above", lengths.full(halves.seat_width_mm)),
    ];
    page.table("Halves", ["size", "value"], rows.map(|(name, value)| [name.into(), value.into()]));
}

fn heights(page: &mut Page, plan: &Plan, cleat: &CleatPlan) {
    let lengths = plan.spec.lengths;
    let floor = plan.spec.site.as_ref().map(|site| site.place.bottom_above_floor_mm);
    let rows = [
        ("beam half, upper edge", cleat.beam_half_top_mm),
        ("beam half, lower edge at the wall", cleat.beam_half_bottom_mm),
        ("wall half, point in front", cleat.wall_half_point_mm),
        ("wall half, edge at the wall", cleat.wall_half_edge_mm),
        ("screw row", cleat.screw_row_mm),
        ("wall half, lower edge", cleat.wall_half_bottom_mm),
        ("underside of the body", 0.0),
    ];
    let row = |(name, height_mm): (&str, f64)| {
        let above = floor.map_or_else(String::new, |floor_mm| lengths.full(floor_mm + height_mm));
        [name.into(), lengths.full(height_mm).into(), above.into()]
    };
    page.table("Heights", ["place", "above the underside", "above the floor"], rows.map(row));
}

fn screws(page: &mut Page, plan: &Plan, marks: &CleatMarks) {
    let (lengths, spec) = (plan.spec.lengths, &plan.spec.cleat.screws);
    page.minor_heading("Marks on the wall");
    page.paragraph(format!(
        "Wall half from {} to {} from the plumb line. Screws {} × {}, one in the middle of each stud.",
        lengths.full(marks.left_mm),
        lengths.full(marks.right_mm),
        words::screw(spec.size),
        lengths.full(spec.length_mm)
    ));
    let heads = ["screw", "from the plumb line", "from the left end of the wall half", "to the nearer end"];
    let rows = marks.screws.iter().enumerate().map(|(at, screw)| {
        [
            (at + 1).to_string().into(),
            lengths.full(screw.x_mm).into(),
            lengths.full(screw.along_half_mm).into(),
            lengths.full(screw.end_distance_mm).into(),
        ]
    });
    page.table("Screws", heads, rows);
}

fn lift_rooms(page: &mut Page, lengths: ReportLengths, marks: &CleatMarks) {
    if marks.lift_rooms.is_empty() {
        return;
    }
    let heads = ["above the body", "room", "needed straight up", "needed along the seat", "outcome"];
    let rows = marks.lift_rooms.iter().map(|room| {
        [
            Html::name(&room.name),
            lengths.full(room.room_mm).into(),
            lengths.full(room.straight_up_mm).into(),
            lengths.full(room.along_seat_mm).into(),
            words::outcome(room.outcome).into(),
        ]
    });
    page.table("Room to lift", heads, rows);
}

fn load_cases(page: &mut Page, lengths: ReportLengths, cleat: &CleatPlan) {
    let heads = [
        "load case",
        "load",
        "out from the wall",
        "pull needed",
        "pull of the bevel, no friction",
        "hold-down wanted",
        "worst stud",
        "screw shear",
        "screw tension",
        "duration factor",
        "screw used",
    ];
    let force = |force_n: f64| Html::from(format!("{} N", significant(force_n)));
    let row = |case: &LoadCase| {
        [
            case.name.as_str().into(),
            force(case.load_n),
            lengths.full(case.out_mm).into(),
            force(case.needed_pull_n),
            force(case.pull_without_friction_n),
            force(case.hold_down_n),
            case.worst_stud_n.map(force).unwrap_or_default(),
            case.screw_shear_n.map(force).unwrap_or_default(),
            case.screw_tension_n.map(force).unwrap_or_default(),
            significant(case.duration_factor).as_str().into(),
            case.screw_utilisation.map(|used| Html::from(format!("{:.0} %", 100.0 * used))).unwrap_or_default(),
        ]
    };
    page.table("Load cases", heads, cleat.load_cases.iter().map(row));
}
