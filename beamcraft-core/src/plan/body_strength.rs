//! The body over the studs: bending, sag, twist, its seams and its top.
//!
//! The wall half gives way between its screws before the stiff body does, so the body is taken as a beam that bears on the
//! studs only: the safe side for the body. A stud holds it up, and by the pull of the seat and the push of the foot against
//! turning.

use super::body::Body;
use super::result::{CleatPlan, FramePlan};
use super::strength::{ANY_MODULUS_MPA, CLEAR_WOOD_REDUCTION, Spans};
use crate::cite::{Clause, Source};
use crate::error::Result;
use crate::hang::CleatHalvesInput;
use crate::shell::{EdgeJoint, FaceId, FaceKind};
use crate::statics::{
    OpenWallWarping, OpenWallWarpingInput, PartOutline, PartSense, SectionPart, SectionPoint, SectionPropertiesInput,
    SectionRectangle, SectionStressInput, TorsionWall, WallTorsionInput, open_wall_warping, section_stress,
    wall_torsion,
};
use crate::verdict::{Basis, Factor, Outcome, Verdict};

/// Long-term over short-term deflection of dry seasoned wood (NDS 3.5.2).
const CREEP: f64 = 1.5;

/// A span over the sag it may have: what building codes ask of members in general and shelf makers of shelves.
const SAG_LIMIT: f64 = 240.0;

/// Modulus of elasticity over shear modulus of wood, about; common practice.
const SHEAR_STIFFNESS: f64 = 16.0;

/// What acts on the body in one case.
pub(super) struct BodyAction {
    pub(super) spread_n: f64,
    pub(super) spot_n: f64,
    /// Distance of what is spread from the wall, mm; the spot stands on the front edge.
    pub(super) spread_out_mm: f64,
}

/// What the body feels at most over all cases.
#[derive(Default)]
struct Worst {
    moment_nmm: f64,
    shear_n: f64,
    sag_over_span: f64,
    twist: Twist,
}

/// What twisting asks of the body at most over all cases, twice: as if it twisted freely, and as if only the stiffness of its
/// boards against warping held it. Either is left out of the other, so both are on the safe side.
#[derive(Default)]
struct Twist {
    /// Torque of free twisting, N·mm.
    torque_nmm: f64,
    /// By restrained warping; nothing where the boards meet in one corner.
    warping: Option<Warped>,
}

/// What restrained warping asks of the body.
#[derive(Clone, Copy, Default)]
struct Warped {
    torque_nmm: f64,
    bimoment_nmm2: f64,
    /// Drop of the front edge over the span, without the shear of the boards.
    drop_over_span: f64,
}

/// The section of the boards along the body, x from the front to the wall, y up.
struct Section {
    parts: SectionPropertiesInput,
    /// Place of the top among the parts.
    top: Option<u32>,
    walls: Vec<TorsionWall>,
    /// The boards as a chain from one free edge to the other, under a torque and a bimoment of one; nothing where they do not form
    /// one.
    chain: Option<OpenWallWarping>,
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
        let parts = SectionPropertiesInput { parts, reference_modulus_mpa: None };
        Self { parts, top: place, walls, chain: chain(body) }
    }
}

/// The boards of a body that is open at the back, by their midlines from the back of the bottom to the back of the top.
fn chain(body: &Body<'_>) -> Option<OpenWallWarping> {
    let leg = body.checked.leg;
    let front = body.thickness_mm(FaceKind::Front)?;
    let (top, bottom) = (body.thickness_mm(FaceKind::Top), body.thickness_mm(FaceKind::Bottom));
    let (low, high) = (0.5 * bottom.unwrap_or(0.0), leg.height_mm - 0.5 * top.unwrap_or(0.0));
    let corner = |x_mm, y_mm| SectionPoint { x_mm, y_mm };
    let mut corners = Vec::new();
    corners.extend(bottom.map(|_| corner(leg.depth_mm, low)));
    corners.extend([corner(0.5 * front, low), corner(0.5 * front, high)]);
    corners.extend(top.map(|_| corner(leg.depth_mm, high)));
    let thicknesses_mm = bottom.into_iter().chain([front]).chain(top).collect();
    open_wall_warping(&OpenWallWarpingInput { corners, thicknesses_mm, torque_nmm: 1.0, bimoment_nmm2: 1.0 }).ok()
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
    frame: Option<&FramePlan>,
    actions: &[BodyAction],
    checks: &mut Vec<Verdict>,
) -> Result<()> {
    let section = Section::of(body);
    let Some(spans) = body_spans(body, plan) else {
        let clause = Clause::new(Source::Statics, "hollow section over supports");
        let remark = "The wall with at least two studs behind the cleat was not given.";
        checks.push(Verdict::without_answer("the body over the studs", "body", Outcome::NotDetermined, clause, remark));
        return Ok(());
    };
    let worst = worst_of(body, &section, &spans, actions)?;
    bending(body, &section, &worst, checks)?;
    twist(body, &section, &worst.twist, checks)?;
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
    let leg = body.checked.leg;
    // A load turns a section about its shear centre; where that is not known, about the far edge, the safe side.
    let levers = |out_mm: f64| match &section.chain {
        Some(chain) => (leg.depth_mm - out_mm - chain.shear_centre.x_mm).abs(),
        None => out_mm.max(leg.depth_mm - out_mm),
    };
    let mut worst = Worst::default();
    for action in actions {
        let over = spans.worst(modulus, whole.i_minor_mm4, action.spread_n, action.spot_n)?;
        worst.moment_nmm = worst.moment_nmm.max(over.moment_nmm);
        worst.shear_n = worst.shear_n.max(over.shear_n);
        worst.sag_over_span = worst.sag_over_span.max(over.sag_over_span);
        let spread_turn_nmm = action.spread_n * levers(action.spread_out_mm);
        let spot_turn_nmm = action.spot_n * levers(leg.depth_mm);
        // Freely twisting, half a gap, or a whole end, hangs on the nearest stud.
        let per_mm = spread_turn_nmm / leg.length_mm;
        let between = per_mm * 0.5 * spans.gap_mm + 0.5 * spot_turn_nmm;
        let beyond = per_mm * spans.overhang_mm() + spot_turn_nmm;
        worst.twist.torque_nmm = worst.twist.torque_nmm.max(between).max(beyond);
        let constant = section.chain.as_ref().map_or(0.0, |chain| chain.warping_constant_mm6);
        if constant > 0.0 {
            // Held by warping the body twists as a beam bends: the turn times its depth is the deflection.
            let arm = leg.depth_mm;
            let turned = spans.worst(modulus, constant / (arm * arm), spread_turn_nmm / arm, spot_turn_nmm / arm)?;
            let known = worst.twist.warping.unwrap_or_default();
            worst.twist.warping = Some(Warped {
                torque_nmm: known.torque_nmm.max(turned.shear_n * arm),
                bimoment_nmm2: known.bimoment_nmm2.max(turned.moment_nmm * arm),
                drop_over_span: known.drop_over_span.max(turned.sag_over_span),
            });
        }
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
pub(super) fn against_clear_wood(
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
    let warped = section.chain.as_ref().zip(worst.twist.warping);
    let by_warping = warped.and_then(|(chain, warped)| Some(chain.greatest_stress_mpa? * warped.bimoment_nmm2));
    let clause = Clause::new(Source::Nds2018, "3.3");
    let name = "bending of the body over the studs, with warping";
    let demand = greatest + by_warping.unwrap_or(0.0);
    checks.push(against_clear_wood(name, "body", demand, wood.rupture_mpa, clause, UNGRADED));
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
fn twist(body: &Body<'_>, section: &Section, worst: &Twist, checks: &mut Vec<Verdict>) -> Result<()> {
    let wood = &body.checked.panels;
    let free = wall_torsion(&WallTorsionInput {
        walls: section.walls.clone(),
        enclosed_mm2: None,
        torque_nmm: worst.torque_nmm,
        length_mm: 0.0,
        shear_modulus_mpa: None,
    })?;
    let held = section.chain.as_ref().zip(worst.warping);
    let clause = Clause::new(Source::Statics, "torsion of thin walls");
    let by_warping = held.and_then(|(chain, warped)| Some(chain.greatest_shear_mpa? * warped.torque_nmm));
    let (demand, mode) = larger(free.greatest_stress_mpa, by_warping.unwrap_or(0.0));
    let remark = "The whole torque once by free twisting and once by the boards' stiffness against warping, the worse of both; in \
                  truth they share it. Neither the wall nor the frame pieces help. Ungraded wood: one fifth of the handbook's \
                  average of clear wood is a choice.";
    let name = "shear of the body by twisting";
    checks.push(against_clear_wood(name, "body", demand, wood.shear_mpa, clause, remark).with_mode(mode));
    let clause = Clause::new(Source::Vlasov, "open thin-walled bar over supports");
    let name = "drop of the front edge by twisting, over its span, with creep";
    let Some(modulus_mpa) = wood.modulus_mpa else {
        checks.push(no_stiffness(name, clause));
        return Ok(());
    };
    let shear_modulus = modulus_mpa / SHEAR_STIFFNESS;
    let depth = body.checked.leg.depth_mm;
    // A twist per length over half a gap, as a share of that gap; over an end, of twice the end: half of it either way.
    let of_torque = |torque: f64, constant: f64| 0.5 * depth * torque / (shear_modulus * constant);
    let freely = of_torque(worst.torque_nmm, free.torsion_constant_mm4);
    let warping = held.and_then(|(chain, warped)| {
        Some(warped.drop_over_span + of_torque(warped.torque_nmm, chain.warping_shear_constant_mm4?))
    });
    let (demand, mode) = warping.filter(|drop| *drop < freely).map_or((freely, FREE), |drop| (drop, WARPING));
    let drop = Verdict::compare(name, "body", CREEP * demand, 1.0 / SAG_LIMIT, "", Basis::Chosen, clause);
    let remark = "The smaller of two upper bounds: free twisting alone, and the boards' stiffness against warping alone, with their \
                  shear; in truth both help. Each stud holds the body up and, by seat and foot, against turning; the wall between \
                  them and the frame pieces are left out, and so is the give of screws and lining. The shear modulus is a \
                  sixteenth of the modulus of elasticity (common practice). The limit is that of the sag.";
    let creep = Factor { name: "K_cr creep", value: CREEP, clause: Clause::new(Source::Nds2018, "3.5.2") };
    checks.push(drop.with_mode(mode).with_remark(remark).with_factors(vec![creep]));
    Ok(())
}

const FREE: &str = "free twisting";
const WARPING: &str = "restrained warping";

/// The larger of two demands with its mode.
fn larger(free: f64, warping: f64) -> (f64, &'static str) {
    if warping > free { (warping, WARPING) } else { (free, FREE) }
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

#[cfg(test)]
#[cfg(feature = "json")]
#[path = "body_strength_tests.rs"]
mod tests;
