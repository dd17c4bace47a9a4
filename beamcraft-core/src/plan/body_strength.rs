//! The body over the studs: bending, sag, twist, its seams, its top, the lip of the cleat and the glue that holds the beam half.
//!
//! The wall half gives way between its screws before the stiff body does, so the body is taken as a beam that bears on the
//! studs only: the safe side for the body.

use super::body::Body;
use super::result::{CleatPlan, FramePlan, LoadCase};
use super::strength::{ANY_MODULUS_MPA, CLEAR_WOOD_REDUCTION, Spans};
use crate::cite::{Clause, Source};
use crate::error::Result;
use crate::hang::CleatHalvesInput;
use crate::shell::{EdgeJoint, FaceId, FaceKind};
use crate::statics::{
    PartOutline, PartSense, SectionPart, SectionPropertiesInput, SectionRectangle, SectionStressInput, TorsionWall,
    WallTorsionInput, section_stress, wall_torsion,
};
use crate::verdict::{Basis, Factor, Outcome, Verdict};

/// Long-term over short-term deflection of dry seasoned wood (NDS 3.5.2).
const CREEP: f64 = 1.5;

/// A span over the sag it may have: what building codes ask of members in general and shelf makers of shelves.
const SAG_LIMIT: f64 = 240.0;

/// Modulus of elasticity over shear modulus of wood, about; common practice.
const SHEAR_STIFFNESS: f64 = 16.0;

/// Strength in rolling shear over shear along the grain, about a third; recalled from the rules for cross-laminated timber.
const ROLLING: f64 = 1.0 / 3.0;

/// What acts on the body in one case.
pub(super) struct BodyAction {
    pub(super) spread_n: f64,
    pub(super) spot_n: f64,
    /// Turning moment of what is spread about the seat, N·mm.
    pub(super) spread_turn_nmm: f64,
    /// Turning moment of the spot about the seat, N·mm.
    pub(super) spot_turn_nmm: f64,
}

/// What the body feels at most over all cases.
#[derive(Default)]
struct Worst {
    moment_nmm: f64,
    shear_n: f64,
    sag_over_span: f64,
    torque_nmm: f64,
    drop_mm: f64,
}

/// The section of the boards along the body, x from the front to the wall, y up.
struct Section {
    parts: SectionPropertiesInput,
    /// Place of the top among the parts.
    top: Option<u32>,
    walls: Vec<TorsionWall>,
    enclosed_mm2: Option<f64>,
}

impl Section {
    fn of(body: &Body<'_>) -> Self {
        let leg = body.checked.leg;
        let thickness = |kind| body.thickness_mm(kind);
        let (front, back) = (thickness(FaceKind::Front), thickness(FaceKind::Back));
        let (top, bottom) = (thickness(FaceKind::Top), thickness(FaceKind::Bottom));
        let (h, d) = (leg.height_mm, leg.depth_mm);
        let (inside_left, inside_right) = (front.unwrap_or(0.0), d - back.unwrap_or(0.0));
        let mut parts = Vec::new();
        let mut walls = Vec::new();
        let mut add = |rectangle: SectionRectangle, wall: TorsionWall| {
            parts.push(SectionPart {
                outline: PartOutline::Rectangle(rectangle),
                modulus_mpa: None,
                sense: PartSense::Solid,
            });
            walls.push(wall);
        };
        // Upright boards over the whole height, level ones between them: one section whatever the joints.
        let midline = |span: f64, a: Option<f64>, b: Option<f64>| span - 0.5 * (a.unwrap_or(0.0) + b.unwrap_or(0.0));
        for (width_mm, left_mm) in [(front, 0.0), (back, inside_right)] {
            if let Some(width_mm) = width_mm {
                let wall = TorsionWall { length_mm: midline(h, top, bottom), thickness_mm: width_mm };
                add(SectionRectangle { left_mm, bottom_mm: 0.0, width_mm, height_mm: h }, wall);
            }
        }
        let mut place = None;
        for (height_mm, bottom_mm, is_top) in [(bottom, 0.0, false), (top, h - top.unwrap_or(0.0), true)] {
            if let Some(height_mm) = height_mm {
                let wall = TorsionWall { length_mm: midline(d, front, back), thickness_mm: height_mm };
                let width_mm = inside_right - inside_left;
                if is_top {
                    place = Some(u32::from(front.is_some()) + u32::from(back.is_some()) + u32::from(bottom.is_some()));
                }
                add(SectionRectangle { left_mm: inside_left, bottom_mm, width_mm, height_mm }, wall);
            }
        }
        let closed = front.and(back).and(top).and(bottom).is_some();
        let enclosed = midline(h, top, bottom) * midline(d, front, back);
        let parts = SectionPropertiesInput { parts, reference_modulus_mpa: None };
        Self { parts, top: place, walls, enclosed_mm2: closed.then_some(enclosed) }
    }
}

/// What of the bending of strip and body, which bend together, the strip takes: the larger share of both directions.
pub(super) fn strip_share(body: &Body<'_>, plan: &CleatPlan, strip: &CleatHalvesInput) -> Result<f64> {
    let section = section_stress(&SectionStressInput {
        section: Section::of(body).parts,
        moment_x_nmm: 0.0,
        moment_y_nmm: 0.0,
        shear_n: 0.0,
        attached: Vec::new(),
        seam_count: 1,
        seam_width_mm: None,
        fastener_n: None,
    })?
    .properties;
    let (t, h) = (strip.thickness_mm, plan.halves.short_face_mm);
    // Woods of unknown stiffness: the strip takes all, the safe side.
    let (Some(strip_e), Some(body_e)) = (body.checked.strip.modulus_mpa, body.checked.panels.modulus_mpa) else {
        return Ok(1.0);
    };
    let share = |of_strip: f64, of_body: f64| strip_e * of_strip / (strip_e * of_strip + body_e * of_body);
    let upright = share(t * h * h * h / 12.0, section.i_minor_mm4);
    let outwards = share(h * t * t * t / 12.0, section.i_minor_mm4);
    Ok(upright.max(outwards))
}

/// Adds every check of the body over the studs.
pub(super) fn body_checks(
    body: &Body<'_>,
    plan: &CleatPlan,
    strip: &CleatHalvesInput,
    frame: Option<&FramePlan>,
    actions: &[BodyAction],
    checks: &mut Vec<Verdict>,
) -> Result<()> {
    let section = Section::of(body);
    cleat_parts(body, plan, strip, checks);
    let Some(spans) = body_spans(body, plan) else {
        let clause = Clause::new(Source::Statics, "hollow section over supports");
        let remark = "The wall with at least two studs behind the cleat was not given.";
        checks.push(Verdict::without_answer("the body over the studs", "body", Outcome::NotDetermined, clause, remark));
        return Ok(());
    };
    let worst = worst_of(body, &section, &spans, actions)?;
    bending(body, &section, &worst, checks)?;
    twist(body, &section, &spans, &worst, checks)?;
    top_between_pieces(body, frame, checks);
    Ok(())
}

/// Studs from the left end of the body.
fn body_spans(body: &Body<'_>, plan: &CleatPlan) -> Option<Spans> {
    let site = body.checked.spec.site.as_ref()?;
    let studs = plan.marks.as_ref()?.screws.iter().map(|screw| screw.x_mm - site.place.left_end_mm);
    Spans::of(body.checked.leg.length_mm, studs)
}

fn worst_of(body: &Body<'_>, section: &Section, spans: &Spans, actions: &[BodyAction]) -> Result<Worst> {
    // Of an unknown stiffness only the sag depends, which is then not told.
    let modulus = body.checked.panels.modulus_mpa.unwrap_or(ANY_MODULUS_MPA);
    let whole = section_stress(&stress_input(section, 0.0, 0.0))?.properties;
    let length_mm = body.checked.leg.length_mm;
    let mut worst = Worst::default();
    for action in actions {
        let over = spans.worst(modulus, whole.i_minor_mm4, action.spread_n, action.spot_n)?;
        worst.moment_nmm = worst.moment_nmm.max(over.moment_nmm);
        worst.shear_n = worst.shear_n.max(over.shear_n);
        worst.sag_over_span = worst.sag_over_span.max(over.sag_over_span);
        // The seat holds against turning at the studs only: half a gap, or a whole end, hangs on the nearest one.
        let per_mm = action.spread_turn_nmm / length_mm;
        let between = per_mm * 0.5 * spans.gap_mm + 0.5 * action.spot_turn_nmm;
        let beyond = per_mm * spans.overhang_mm() + action.spot_turn_nmm;
        worst.torque_nmm = worst.torque_nmm.max(between).max(beyond);
        worst.drop_mm = worst.drop_mm.max(between * 0.5 * spans.gap_mm).max(beyond * spans.overhang_mm());
    }
    Ok(worst)
}

fn stress_input(section: &Section, moment_x_nmm: f64, shear_n: f64) -> SectionStressInput {
    SectionStressInput {
        section: section.parts.clone(),
        moment_x_nmm,
        moment_y_nmm: 0.0,
        shear_n,
        attached: section.top.into_iter().collect(),
        seam_count: 1,
        seam_width_mm: None,
        fastener_n: None,
    }
}

/// A stress against the reduced average of clear wood; not determined where none is published.
fn against_clear_wood(
    name: &str,
    subject: &str,
    demand: f64,
    average: Option<f64>,
    clause: Clause,
    remark: &str,
) -> Verdict {
    let Some(average) = average else {
        let remark = "This strength is not published for the species here, or was not given for the wood.";
        let open = Verdict::without_answer(name, subject, Outcome::NotDetermined, clause, remark);
        return Verdict { demand: Some(demand), unit: "MPa", ..open };
    };
    let capacity = CLEAR_WOOD_REDUCTION * average;
    Verdict::compare(name, subject, demand, capacity, "MPa", Basis::Chosen, clause).with_remark(remark).with_factors(
        vec![Factor {
            name: "reduction of the average of clear wood",
            value: CLEAR_WOOD_REDUCTION,
            clause: Clause::new(Source::CommonPractice, ""),
        }],
    )
}

const UNGRADED: &str = "The body bears on the studs only. Ungraded wood: one fifth of the handbook's average of clear wood is a \
                        choice.";

/// Bending, sag and the seam between top and front.
fn bending(body: &Body<'_>, section: &Section, worst: &Worst, checks: &mut Vec<Verdict>) -> Result<()> {
    let wood = &body.checked.panels;
    let stress = section_stress(&stress_input(section, worst.moment_nmm, worst.shear_n))?;
    let greatest = stress.parts.iter().map(|part| part.greatest_mpa.max(-part.least_mpa)).fold(0.0, f64::max);
    let clause = Clause::new(Source::Nds2018, "3.3");
    let name = "bending of the body over the studs";
    checks.push(against_clear_wood(name, "body", greatest, wood.rupture_mpa, clause, UNGRADED));
    checks.push(sag(wood.modulus_mpa, worst));
    if let Some(width) = seam_width(body, FaceKind::Front, FaceKind::Top) {
        let name = "shear flow in the seam of top and front";
        let clause = Clause::new(Source::Statics, "q = V Q / I");
        let remark = "A glued long-grain seam is as strong as the wood in shear when it is well made; one fifth of that is a \
                      choice. The whole flow is given to this seam.";
        let demand = stress.shear_flow_n_per_mm / width;
        checks.push(against_clear_wood(name, "glue lines", demand, wood.shear_mpa, clause, remark));
    }
    Ok(())
}

/// Sag over the span, or that it is not told for a wood of unknown stiffness.
fn sag(modulus_mpa: Option<f64>, worst: &Worst) -> Verdict {
    let (name, clause) = ("sag of the body over its span, with creep", Clause::new(Source::Nds2018, "3.5.2"));
    if modulus_mpa.is_none() {
        return no_stiffness(name, clause);
    }
    let demand = worst.sag_over_span * CREEP;
    let remark = "All load taken as lasting. One 240th of the span, or of twice an overhang, is what codes ask of members in \
                  general and is a choice here.";
    let creep = Factor { name: "K_cr creep", value: CREEP, clause };
    let limit = Verdict::compare(name, "body", demand, 1.0 / SAG_LIMIT, "", Basis::Chosen, clause);
    limit.with_remark(remark).with_factors(vec![creep])
}

/// A deflection of a wood whose modulus was not given.
fn no_stiffness(name: &str, clause: Clause) -> Verdict {
    let remark = "No modulus of elasticity was given for this wood.";
    Verdict::without_answer(name, "body", Outcome::NotDetermined, clause, remark)
}

/// Width of the glue line of a mitred edge, mm.
fn seam_width(body: &Body<'_>, of: FaceKind, towards: FaceKind) -> Option<f64> {
    let id = FaceId { leg: body.checked.leg.leg, kind: towards };
    let edge = body.panel(of)?.edge(id).filter(|edge| edge.joint == EdgeJoint::Mitred)?;
    Some(edge.area_mm2 / edge.show_length_mm).filter(|width| *width > 0.0 && width.is_finite())
}

/// Shear stress by twisting and how far the front edge drops by it.
fn twist(body: &Body<'_>, section: &Section, spans: &Spans, worst: &Worst, checks: &mut Vec<Verdict>) -> Result<()> {
    let wood = &body.checked.panels;
    let found = wall_torsion(&WallTorsionInput {
        walls: section.walls.clone(),
        enclosed_mm2: section.enclosed_mm2,
        torque_nmm: worst.torque_nmm,
        length_mm: 0.0,
        shear_modulus_mpa: None,
    })?;
    let clause = Clause::new(Source::Statics, "torsion of thin walls");
    let remark = "An upper bound: free twisting between studs, without frame pieces, ends and the foot on the wall, which stiffen \
                  it; beyond it there is no answer. Ungraded wood: one fifth of the handbook's average of clear wood is a \
                  choice.";
    let name = "shear of the body by twisting";
    checks.push(as_bound(against_clear_wood(name, "body", found.greatest_stress_mpa, wood.shear_mpa, clause, remark)));
    let name = "drop of the front edge by twisting, with creep";
    let Some(modulus_mpa) = wood.modulus_mpa else {
        checks.push(no_stiffness(name, clause));
        return Ok(());
    };
    let shear_modulus = modulus_mpa / SHEAR_STIFFNESS;
    let turn_rad = worst.drop_mm / (shear_modulus * found.torsion_constant_mm4);
    let drop_mm = CREEP * turn_rad * body.checked.leg.depth_mm;
    let limit_mm = spans.gap_mm.max(2.0 * spans.overhang_mm()) / SAG_LIMIT;
    let drop = Verdict::compare(name, "body", drop_mm, limit_mm, "mm", Basis::Chosen, clause);
    let remark = "An upper bound: free twisting between studs, without frame pieces, ends and the foot on the wall; beyond it \
                  there is no answer. The shear modulus is a sixteenth of the modulus of elasticity (common practice). The limit \
                  is that of the sag.";
    checks.push(as_bound(drop.with_remark(remark)));
    Ok(())
}

/// A check whose demand is an upper bound: what it does not pass is not thereby shown to fail.
fn as_bound(check: Verdict) -> Verdict {
    let outcome = if check.outcome == Outcome::NotMet { Outcome::NotDetermined } else { check.outcome };
    Verdict { outcome, ..check }
}

/// The top as a board along the grain from one frame piece to the next.
fn top_between_pieces(body: &Body<'_>, frame: Option<&FramePlan>, checks: &mut Vec<Verdict>) {
    let (Some(top), Some(frame)) = (body.panel(FaceKind::Top), frame) else { return };
    let gaps = frame.centres_mm.iter().zip(frame.centres_mm.iter().skip(1)).map(|(a, b)| b - a);
    let span = gaps.fold(0.0, f64::max);
    if span <= 0.0 {
        return;
    }
    let load = &body.checked.spec.load;
    let (width, t) = (top.show_width_mm, top.thickness_mm);
    let spread = load.on_top_n_per_m2 * 1.0e-6 * width;
    let moment = spread * span * span / 8.0 + load.front_edge_n * span / 4.0;
    let demand = 6.0 * moment / (width * t * t);
    let clause = Clause::new(Source::Nds2018, "3.3");
    let remark = "As if front and cleat did not hold it: a board from frame piece to frame piece with the things on top and the \
                  push of the front edge in the middle, on its whole width.";
    let name = "bending of the top between frame pieces";
    checks.push(against_clear_wood(name, "top", demand, body.checked.panels.rupture_mpa, clause, remark));
}

/// Lip of the wall half, and the glue line that holds the beam half to the top.
fn cleat_parts(body: &Body<'_>, plan: &CleatPlan, strip: &CleatHalvesInput, checks: &mut Vec<Verdict>) {
    // A pull is taken over a stretch of strip as long as two strip widths, at the most loaded stud.
    let stretch_mm = (2.0 * body.checked.spec.cleat.strip_width_mm).min(plan.wall_half_length_mm);
    let pulls_n = plan.load_cases.iter().filter_map(stud_pull_n);
    let stress_mpa = pulls_n.reduce(f64::max).map(|pull_n| pull_n / (strip.thickness_mm * stretch_mm));
    if let Some(stress_mpa) = stress_mpa {
        let remark = "The pull of the most loaded stud, over a stretch of two strip widths: a choice. Across the grain wood shears \
                      by rolling, at about a third of its strength along it (recalled); one fifth of that is a choice.";
        let clause = Clause::new(Source::Statics, "shear at the root");
        let average = rolling(body.checked.strip.shear_mpa);
        let name = "shear at the root of the lip";
        checks.push(against_clear_wood(name, "cleat lip", 1.5 * stress_mpa, average, clause, remark));
    }
    checks.push(beam_half_to_top(body, stress_mpa));
}

/// Pull at the most loaded stud in one case, N.
fn stud_pull_n(case: &LoadCase) -> Option<f64> {
    let stud_n = case.worst_stud_n?;
    Some(if case.load_n > 0.0 { case.pull_n * stud_n / case.load_n } else { 0.0 })
}

fn rolling(shear_mpa: Option<f64>) -> Option<f64> {
    shear_mpa.map(|shear| ROLLING * shear)
}

/// What holds the beam half: a glue line under the top, where it lies against it.
fn beam_half_to_top(body: &Body<'_>, stress_mpa: Option<f64>) -> Verdict {
    let bears = body.panel(FaceKind::Top).is_some() && body.checked.spec.cleat.below_top_mm == 0.0;
    let Some(demand) = stress_mpa.filter(|_| bears) else {
        let clause = Clause::new(Source::Nds2018, "12.2.2");
        let remark =
            "Long-grain glue has no allowable in the NDS, and screws into end grain count for nothing in withdrawal.";
        return Verdict::without_answer("beam half to the body", "beam half", Outcome::NotCovered, clause, remark);
    };
    let average = match (body.checked.strip.shear_mpa, body.checked.panels.shear_mpa) {
        (Some(a), Some(b)) => Some(a.min(b)),
        _ => None,
    };
    let remark = "The beam half bears upwards against the top and is glued to it along the grain: the glue line takes the pull \
                  only. A well-made glue line is as strong as the wood; one fifth of its rolling shear is a choice. The NDS has \
                  no allowable for such a line, and screws into end grain count for nothing in withdrawal.";
    let clause = Clause::new(Source::Statics, "shear of a glue line");
    let name = "glue line of the beam half under the top";
    against_clear_wood(name, "beam half", demand, rolling(average), clause, remark)
}

#[cfg(test)]
#[cfg(feature = "json")]
#[path = "body_strength_tests.rs"]
mod tests;
