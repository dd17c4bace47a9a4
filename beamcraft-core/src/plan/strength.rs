//! What the wall half feels between the studs, and how hard a pull or a knock would unhook the body.

use super::body::Body;
use super::result::CleatPlan;
use crate::cite::{Clause, Source};
use crate::error::Result;
use crate::finding::{Finding, FindingCode, Grade, Quantity};
use crate::hang::CleatHalvesInput;
use crate::statics::{
    BeamLineLoad, BeamOnSupportsInput, BeamPointLoad, BeamSupport, CleatSeat, SupportHold, beam_on_supports,
};
use crate::verdict::{Basis, Factor, Outcome, Verdict};

/// Allowable stress over the average of clear wood, a choice: furniture wood carries no grade stamp. The way from clear
/// wood to an allowable stress (lower fifth of a hundred, about 0.74; long-term load and safety, about 1/2.1; knots and
/// sloping grain, about 0.6) comes out near one fifth.
const CLEAR_WOOD_REDUCTION: f64 = 0.2;

/// A modulus for wood of which none is known: over studs that do not yield, the moments do not depend on it.
const ANY_MODULUS_MPA: f64 = 10_000.0;

/// Stresses of the wall half between the studs.
#[derive(Clone, Copy)]
pub(super) struct StripBend {
    pub(super) bending_mpa: f64,
    pub(super) shear_mpa: f64,
}

/// What of one load case lies along the strip, what presses on one spot, and the pull on it.
pub(super) struct StripAction {
    pub(super) spread_n: f64,
    pub(super) spot_n: f64,
    pub(super) pull_n: f64,
}

/// Stresses of the wall half alone, as a beam over the studs that it crosses; nothing with fewer than two.
///
/// The stiff body takes load off it, which is left out: the safe side. The spot may be at either end or in the middle of
/// the widest gap between studs.
pub(super) fn strip_bend_of(
    body: &Body<'_>,
    plan: &CleatPlan,
    strip: &CleatHalvesInput,
    action: &StripAction,
) -> Result<Option<StripBend>> {
    let Some(marks) = plan.marks.as_ref().filter(|marks| marks.screws.len() >= 2) else { return Ok(None) };
    let length_mm = marks.length_mm;
    let studs: Vec<f64> = marks.screws.iter().map(|screw| screw.along_half_mm).collect();
    // Screws closer than the beam's least spacing act as one.
    let mut supports: Vec<BeamSupport> = Vec::new();
    for at_mm in &studs {
        if supports.last().is_none_or(|last| at_mm - last.at_mm >= 1.0) {
            supports.push(BeamSupport { at_mm: *at_mm, stiffness_n_per_mm: None, hold: SupportHold::Pinned });
        }
    }
    if supports.len() < 2 || length_mm < 10.0 {
        return Ok(None);
    }
    let (t, h) = (strip.thickness_mm, plan.halves.short_face_mm);
    let gaps = studs.iter().zip(studs.iter().skip(1)).map(|(a, b)| (b - a, 0.5 * (a + b)));
    let middle = gaps.fold((0.0, 0.0), |widest: (f64, f64), gap| if gap.0 > widest.0 { gap } else { widest }).1;
    let places: &[f64] = if action.spot_n > 0.0 { &[0.0, middle, length_mm] } else { &[middle] };
    let (mut moment, mut shear) = (0.0_f64, 0.0_f64);
    for at_mm in places {
        let beam = beam_on_supports(&BeamOnSupportsInput {
            length_mm,
            modulus_mpa: body.checked.strip.modulus_mpa.unwrap_or(ANY_MODULUS_MPA),
            second_moment_mm4: (t * h * h * h / 12.0).max(1.0),
            supports: supports.clone(),
            point_loads: vec![BeamPointLoad { at_mm: *at_mm, load_n: action.spot_n }],
            line_loads: vec![BeamLineLoad {
                from_mm: 0.0,
                to_mm: length_mm,
                load_n_per_mm: action.spread_n / length_mm,
            }],
            stations_mm: Vec::new(),
        })
        .map_err(|error| error.within("cleat"))?;
        moment = moment.max(beam.greatest_sagging_nmm).max(beam.greatest_hogging_nmm);
        shear = shear.max(beam.greatest_shear_n);
    }
    let held = action.spread_n + action.spot_n;
    // The pull outwards is spread like the weight.
    let sideways = if held > 0.0 { action.pull_n / held } else { 0.0 };
    Ok(Some(StripBend {
        bending_mpa: 6.0 * moment / (t * h) * (1.0 / h + sideways / t),
        shear_mpa: 1.5 * shear * (1.0 + sideways * sideways).sqrt() / (t * h),
    }))
}

/// Bending and shear of the wall half against reduced averages of clear wood.
///
/// The stresses are upper bounds, because the stiff body is left out: what they pass is met, what they do not pass is not
/// thereby shown to fail, and has no answer.
pub(super) fn strip_checks(body: &Body<'_>, bend: &StripBend, checks: &mut Vec<Verdict>, findings: &mut Vec<Finding>) {
    let wood = &body.checked.strip;
    let parts = [
        (
            "bending of the wall half between the studs",
            ["bending, at most", "bending allowed"],
            bend.bending_mpa,
            wood.rupture_mpa,
            "3.3",
        ),
        (
            "shear of the wall half at the studs",
            ["shear, at most", "shear allowed"],
            bend.shear_mpa,
            wood.shear_mpa,
            "3.4.2",
        ),
    ];
    let mut beyond = Vec::new();
    for (name, [at_most, allowed], demand, average, part) in parts {
        let clause = Clause::new(Source::Nds2018, part);
        let open = |remark: &str| Verdict {
            demand: Some(demand),
            unit: "MPa",
            ..Verdict::without_answer(name, "wall half", Outcome::NotDetermined, clause, remark)
        };
        let Some(average) = average else {
            checks.push(open("This strength is not published for the species here, or was not given for the wood."));
            continue;
        };
        let capacity = CLEAR_WOOD_REDUCTION * average;
        let check = if demand <= capacity {
            Verdict::compare(name, "wall half", demand, capacity, "MPa", Basis::Chosen, clause).with_remark(BOUND)
        } else {
            beyond.extend([Quantity::new(at_most, demand, "MPa"), Quantity::new(allowed, capacity, "MPa")]);
            Verdict { capacity: Some(capacity), basis: Basis::Chosen, ..open(BOUND) }
        };
        checks.push(check.with_factors(vec![Factor {
            name: "reduction of the average of clear wood",
            value: CLEAR_WOOD_REDUCTION,
            clause: Clause::new(Source::CommonPractice, ""),
        }]));
    }
    if !beyond.is_empty() {
        findings.push(Finding {
            grade: Grade::Caution,
            code: FindingCode::NotCovered,
            subject: "wall half".to_owned(),
            message: "Whether the wall half is strong enough between and beyond its screws is not determined: alone, without \
                      the body that stiffens it, it would be stressed beyond what is allowed here."
                .to_owned(),
            numbers: beyond,
            cure: "A thicker strip, a screw nearer to each end, one more stud or less push on the front edge; or an engineer's \
                   judgement of strip and body together."
                .to_owned(),
            clause: None,
        });
    }
}

/// What the stresses of the wall half are worth.
const BOUND: &str = "The demand is an upper bound: the strip is taken alone, without the lip and without the stiff body that \
                     takes load off it; bending upright and outwards add up. Ungraded wood: one fifth of the handbook's \
                     average of clear wood is a choice.";

/// How hard the body must be pulled at its top edge, or knocked from below at its front edge, to come off the bevel.
pub(super) fn unhooking(
    body: &Body<'_>,
    plan: &CleatPlan,
    strip: &CleatHalvesInput,
    out_mm: f64,
    seat: &CleatSeat,
    checks: &mut Vec<Verdict>,
) {
    let leg = body.checked.leg;
    let contact_up = 0.5 * (plan.wall_half_edge_mm + plan.wall_half_point_mm + strip.blunt_mm);
    let (above, below) = ((leg.height_mm - contact_up).max(1.0), contact_up);
    let (w, slope_pull) = (seat.vertical_n, seat.pull_without_friction_n);
    let e = out_mm - 0.5 * strip.thickness_mm;
    let k = leg.depth_mm - 0.5 * strip.thickness_mm;
    // Pull P at the top edge: the foot gives (W e + P a)/h, the seat that and P: all that the bevel has is W tan b.
    let pull = (slope_pull * below - w * e) / (above + below);
    // Knock K at the front edge: what is left of the weight draws in by (W − K) tan b, the top needs (K k − W e)/a.
    let slope = if w > 0.0 { slope_pull / w } else { 0.0 };
    let knock = (w * (slope * above + e) / (slope * above + k)).min(w);
    let mut push = |name: &str, capacity: f64, remark: &str| {
        checks.push(Verdict {
            capacity: Some(capacity.max(0.0)),
            unit: "N",
            basis: Basis::Derived,
            ..Verdict::without_answer(
                name,
                "unhooking",
                Outcome::NotDetermined,
                Clause::new(Source::Statics, "seat equilibrium"),
                remark,
            )
        });
    };
    push(
        "outward pull at the top edge",
        pull,
        "The capacity is the pull at which the bevel, without friction and with nothing on top, lets go. No published \
         figure says how hard anybody pulls: fit a lock where a pull can happen.",
    );
    push(
        "knock from below at the front edge",
        knock,
        "The capacity is the upward force at which the bevel, without friction and with nothing on top, lets go. No \
         published figure says how hard anybody knocks: fit a lock where a knock can happen.",
    );
}
