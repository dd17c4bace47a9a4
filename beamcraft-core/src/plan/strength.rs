//! What the wall half feels between the studs, and how hard a pull or a knock would unhook the body.

use super::body::Body;
use super::result::CleatPlan;
use super::spec::LockSpec;
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
pub(super) const CLEAR_WOOD_REDUCTION: f64 = 0.2;

/// A modulus for wood of which none is known: over studs that do not yield, the moments do not depend on it.
pub(super) const ANY_MODULUS_MPA: f64 = 10_000.0;

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

/// Studs under a straight part, by their distance from its left end.
pub(super) struct Spans {
    length_mm: f64,
    supports: Vec<BeamSupport>,
    /// Widest gap between studs, mm.
    pub(super) gap_mm: f64,
    /// Middle of that gap, mm.
    pub(super) middle_mm: f64,
}

/// What a part over the studs feels at most.
pub(super) struct OverStuds {
    pub(super) moment_nmm: f64,
    pub(super) shear_n: f64,
    /// Deflection over a share of the span that a limit gives as one over a number: the middle of the widest gap over that
    /// gap, an end over twice its overhang; the greatest of them.
    pub(super) sag_over_span: f64,
}

impl Spans {
    /// Nothing with fewer than two studs under the part.
    pub(super) fn of(length_mm: f64, studs_mm: impl Iterator<Item = f64>) -> Option<Self> {
        let mut supports: Vec<BeamSupport> = Vec::new();
        for at_mm in studs_mm.filter(|at_mm| (0.0..=length_mm).contains(at_mm)) {
            // Screws closer than the beam's least spacing act as one.
            if supports.last().is_none_or(|last| at_mm - last.at_mm >= 1.0) {
                supports.push(BeamSupport { at_mm, stiffness_n_per_mm: None, hold: SupportHold::Pinned });
            }
        }
        if supports.len() < 2 || length_mm < 10.0 {
            return None;
        }
        let gaps = supports.iter().zip(supports.iter().skip(1));
        let gaps = gaps.map(|(a, b)| (b.at_mm - a.at_mm, 0.5 * (a.at_mm + b.at_mm)));
        let widest = |widest: (f64, f64), gap: (f64, f64)| if gap.0 > widest.0 { gap } else { widest };
        let (gap_mm, middle_mm) = gaps.fold((0.0, 0.0), widest);
        Some(Self { length_mm, supports, gap_mm, middle_mm })
    }

    /// The longer of the two ends beyond the outer studs, mm.
    pub(super) fn overhang_mm(&self) -> f64 {
        let (left, right) = self.overhangs_mm();
        left.max(right)
    }

    fn overhangs_mm(&self) -> (f64, f64) {
        let left = self.supports.first().map_or(0.0, |stud| stud.at_mm);
        (left, self.supports.last().map_or(0.0, |stud| self.length_mm - stud.at_mm))
    }

    /// The worst of a load that lies along the part and one that may stand at either end or in the middle of the widest gap.
    pub(super) fn worst(
        &self,
        modulus_mpa: f64,
        second_moment_mm4: f64,
        spread_n: f64,
        spot_n: f64,
    ) -> Result<OverStuds> {
        let (length_mm, middle_mm) = (self.length_mm, self.middle_mm);
        let all = [middle_mm, 0.0, length_mm];
        let places = if spot_n > 0.0 { &all[..] } else { &all[..1] };
        let mut worst = OverStuds { moment_nmm: 0.0, shear_n: 0.0, sag_over_span: 0.0 };
        for at_mm in places {
            let beam = beam_on_supports(&BeamOnSupportsInput {
                length_mm,
                modulus_mpa,
                second_moment_mm4: second_moment_mm4.max(1.0),
                supports: self.supports.clone(),
                point_loads: vec![BeamPointLoad { at_mm: *at_mm, load_n: spot_n }],
                line_loads: vec![BeamLineLoad { from_mm: 0.0, to_mm: length_mm, load_n_per_mm: spread_n / length_mm }],
                stations_mm: all.to_vec(),
            })
            .map_err(|error| error.within("cleat"))?;
            worst.moment_nmm = worst.moment_nmm.max(beam.greatest_sagging_nmm).max(beam.greatest_hogging_nmm);
            worst.shear_n = worst.shear_n.max(beam.greatest_shear_n);
            let (left, right) = self.overhangs_mm();
            for (station, span_mm) in beam.stations.iter().zip([self.gap_mm, 2.0 * left, 2.0 * right]) {
                let share = if span_mm > 1.0 { station.deflection_mm.abs() / span_mm } else { 0.0 };
                worst.sag_over_span = worst.sag_over_span.max(share);
            }
        }
        Ok(worst)
    }
}

/// Stresses of the wall half alone, as a beam over the studs that it crosses; nothing with fewer than two.
///
/// The stiff body takes load off it, which is left out: the safe side.
pub(super) fn strip_bend_of(
    body: &Body<'_>,
    plan: &CleatPlan,
    strip: &CleatHalvesInput,
    action: &StripAction,
) -> Result<Option<StripBend>> {
    let marks = plan.marks.as_ref();
    let spans = marks.and_then(|m| Spans::of(m.length_mm, m.screws.iter().map(|screw| screw.along_half_mm)));
    let Some(spans) = spans else { return Ok(None) };
    let (t, h) = (strip.thickness_mm, plan.halves.short_face_mm);
    let OverStuds { moment_nmm: moment, shear_n: shear, .. } = spans.worst(
        body.checked.strip.modulus_mpa.unwrap_or(ANY_MODULUS_MPA),
        t * h * h * h / 12.0,
        action.spread_n,
        action.spot_n,
    )?;
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
/// Bending is that of strip and body together, of which the strip takes the `share` of its stiffness; shear, which the body does not
/// take off the strip at a screw, is that of the strip alone, an upper bound: beyond it there is no answer.
pub(super) fn strip_checks(
    body: &Body<'_>,
    bend: &StripBend,
    share: Option<f64>,
    checks: &mut Vec<Verdict>,
    findings: &mut Vec<Finding>,
) {
    let wood = &body.checked.strip;
    let parts = [
        (
            "bending of the wall half between the studs",
            ["bending, at most", "bending allowed"],
            bend.bending_mpa,
            wood.rupture_mpa,
            "3.3",
            share,
        ),
        (
            "shear of the wall half at the studs",
            ["shear, at most", "shear allowed"],
            bend.shear_mpa,
            wood.shear_mpa,
            "3.4.2",
            None,
        ),
    ];
    let mut beyond = Vec::new();
    for (name, [at_most, allowed], demand, average, part, share) in parts {
        let clause = Clause::new(Source::Nds2018, part);
        let Some(average) = average else {
            let remark = "This strength is not published for the species here, or was not given for the wood.";
            let open = Verdict::without_answer(name, "wall half", Outcome::NotDetermined, clause, remark);
            checks.push(Verdict { demand: Some(demand), unit: "MPa", ..open });
            continue;
        };
        let capacity = CLEAR_WOOD_REDUCTION * average;
        let (demand, remark) = match share {
            Some(share) if share < 1.0 => (share * demand, TOGETHER),
            _ => (demand, BOUND),
        };
        if demand > capacity {
            beyond.extend([Quantity::new(at_most, demand, "MPa"), Quantity::new(allowed, capacity, "MPa")]);
        }
        let check = Verdict::compare(name, "wall half", demand, capacity, "MPa", Basis::Chosen, clause);
        let check = as_bound(check.with_remark(remark));
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

/// What the bending of the wall half is worth where the body bends with it.
const TOGETHER: &str = "Strip and body bend together over the studs, and the strip takes the share of its stiffness, upright or \
                        outwards, whichever is larger. A body so stiff that it touches only at the studs leaves the strip less. Ungraded wood: one fifth of the handbook's \
                        average of clear wood is a choice.";

/// A check whose demand is an upper bound: what it does not pass is not thereby shown to fail.
pub(super) fn as_bound(check: Verdict) -> Verdict {
    match check.outcome {
        Outcome::NotMet => Verdict { outcome: Outcome::NotDetermined, utilisation: None, ..check },
        _ => check,
    }
}

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
    let load = &body.checked.spec.load;
    let wanted = [
        ("outward pull at the top edge", load.pull_at_top_n, pull, "pulls"),
        ("knock from below at the front edge", load.knock_from_below_n, knock, "knocks"),
    ];
    checks.extend(wanted.map(|(name, wanted, capacity, does)| unhooks(body, name, wanted, capacity.max(0.0), does)));
}

/// One way of unhooking: against what the user wants it to stand, or told without an answer.
fn unhooks(body: &Body<'_>, name: &str, wanted: Option<f64>, capacity: f64, does: &str) -> Verdict {
    let clause = Clause::new(Source::Statics, "seat equilibrium");
    let bevel = "The capacity is the force at which the bevel, without friction and with nothing on top, lets go.";
    let Some(demand) = wanted else {
        let remark =
            format!("{bevel} No published figure says how hard anybody {does}: fit a lock where it can happen.");
        let open = Verdict::without_answer(name, "unhooking", Outcome::NotDetermined, clause, remark);
        return Verdict { capacity: Some(capacity), unit: "N", basis: Basis::Derived, ..open };
    };
    let verdict = Verdict::compare(name, "unhooking", demand, capacity, "N", Basis::Chosen, clause);
    if verdict.outcome == Outcome::NotMet && body.checked.spec.cleat.lock == LockSpec::Fitted {
        let remark = format!("{bevel} Beyond it the lock must hold, whose own strength is not checked.");
        return Verdict { outcome: Outcome::NotDetermined, ..verdict }.with_remark(remark);
    }
    verdict.with_remark(bevel)
}
