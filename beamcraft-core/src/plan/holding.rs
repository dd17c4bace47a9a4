//! Does it hold? Load cases on the seat, the screws of the wall half, and what follows from them.

use super::body::Body;
use super::body_strength::{BodyAction, body_checks, strip_share};
use super::cleat::FittedCleat;
use super::cleat_strength::cleat_checks;
use super::result::{CleatPlan, FramePlan, LoadCase, MassPlan};
use super::spec::LockSpec;
use super::strength::{StripAction, StripBend, strip_bend_of, strip_checks, unhooking};
use super::within;
use crate::cite::{Clause, Source};
use crate::error::{Fault, Result};
use crate::fasten::{
    BearingRounding, FastenerArrangement, FastenerDirection, LoadDuration, LoadsTogether, MemberMoisture, ScrewJoint,
    ScrewJointInput, TemperatureBand, screw_joint, screw_joint_verdicts,
};
use crate::finding::{Finding, FindingCode, Grade, Quantity};
use crate::hang::CleatHalvesInput;
use crate::setting::Wall;
use crate::shell::FaceKind;
use crate::statics::{
    CleatSeat, CleatSeatInput, SeatRegime, ShareBetweenSupportsInput, WallStripScrews, WallStripScrewsInput,
    cleat_seat, share_between_supports, wall_strip_screws,
};
use crate::units::factor::STANDARD_GRAVITY_M_S2;
use crate::verdict::{Basis, Outcome, Verdict};

/// What acts on the body at once.
pub(super) struct Action {
    pub(super) name: &'static str,
    duration: LoadDuration,
    pub(super) load_n: f64,
    /// From the wall, mm.
    pub(super) out_mm: f64,
    /// From the left end of the front, mm; a load that may come at either end has two.
    pub(super) along_mm: Vec<f64>,
    /// Part of the load that presses on one spot, N; the rest lies along the whole body.
    spot_n: f64,
}

/// What the most loaded stud and its screw take in one case.
struct StudLoad {
    case: usize,
    share_n: f64,
    least_n: f64,
    strip: WallStripScrews,
    input: ScrewJointInput,
    joint: core::result::Result<ScrewJoint, Fault>,
}

/// Loads the cleat: fills in the load cases and adds every check of seat and screws.
pub(super) fn load(
    body: &Body<'_>,
    cleat: FittedCleat,
    frame: Option<&FramePlan>,
    mass: &MassPlan,
    checks: &mut Vec<Verdict>,
    findings: &mut Vec<Finding>,
) -> Result<CleatPlan> {
    let FittedCleat { mut plan, strip } = cleat;
    let actions = actions(body, mass);
    let mut worst: Option<StudLoad> = None;
    let mut others = Vec::new();
    let mut bent: Option<StripBend> = None;
    for (k, action) in actions.iter().enumerate() {
        let seat = seat(body, &plan, &strip, action).map_err(|fault| within(fault, "cleat"))?;
        seat_check(body, action, &seat, checks, findings);
        let mut case = load_case(action, &seat);
        if let Some(stud) = stud_load(body, &plan, &strip, k, action, &seat)? {
            case.worst_stud_n = Some(stud.share_n);
            case.least_stud_n = Some(stud.least_n);
            case.screw_shear_n = Some(stud.strip.shear_per_screw_n);
            case.screw_tension_n = Some(stud.strip.tension_per_screw_n);
            case.screw_utilisation = stud.joint.as_ref().ok().map(|joint| joint.utilisation);
            if worst.as_ref().is_none_or(|known| utilisation(&stud) > utilisation(known)) {
                others.extend(worst.replace(stud));
            } else {
                others.push(stud);
            }
        }
        let on_strip = StripAction {
            spread_n: action.load_n - action.spot_n + hold_down(&seat),
            spot_n: action.spot_n,
            pull_n: seat.design_pull_n,
        };
        if let Some(bend) = strip_bend_of(body, &plan, &strip, &on_strip)? {
            let more = |a: &StripBend, b: &StripBend| StripBend {
                bending_mpa: a.bending_mpa.max(b.bending_mpa),
                shear_mpa: a.shear_mpa.max(b.shear_mpa),
            };
            bent = Some(bent.as_ref().map_or(bend, |known| more(known, &bend)));
        }
        plan.load_cases.push(case);
    }
    match worst {
        Some(worst) => screw_checks(&actions, &worst, &others, checks),
        None => checks.push(Verdict::without_answer(
            "screws of the wall half",
            "wall screws",
            Outcome::NotDetermined,
            Clause::new(Source::Nds2018, "chapter 12"),
            "The wall with at least two studs behind the cleat was not given.",
        )),
    }
    let foot_n = plan.load_cases.iter().map(|case| case.pull_n).fold(0.0, f64::max);
    let foot = Verdict::without_answer(
        "push of the foot on the wall lining",
        "foot",
        Outcome::NotCovered,
        Clause::new(Source::CommonPractice, ""),
        "The demand is never more than the pull of the seat. No published bearing value for gypsum or plaster was found; \
         spread the push or bear on a stud.",
    );
    checks.push(Verdict { demand: Some(foot_n), unit: "N", basis: Basis::Derived, ..foot });
    if let Some(bend) = bent {
        let share = strip_share(body, &plan, &strip)?;
        strip_checks(body, &bend, Some(share), checks, findings);
    }
    checks.extend(rocking(body, &plan, &actions));
    cleat_checks(body, &plan, &strip, frame, checks)?;
    let on_body: Vec<_> = actions.iter().map(|action| on_body(body, action)).collect();
    body_checks(body, &plan, frame, &on_body, checks)?;
    if let Some(own) = actions.first() {
        let seat = seat(body, &plan, &strip, own).map_err(|fault| within(fault, "cleat"))?;
        unhooking(body, &plan, &strip, own.out_mm, &seat, checks);
    }
    Ok(plan)
}

/// An action as the body feels it. The spot stands on the front edge, which is as far from the wall as the body is deep.
fn on_body(body: &Body<'_>, action: &Action) -> BodyAction {
    let spread_n = action.load_n - action.spot_n;
    let turn = action.load_n * action.out_mm - action.spot_n * body.checked.leg.depth_mm;
    let spread_out_mm = if spread_n > 0.0 { (turn / spread_n).max(0.0) } else { 0.0 };
    BodyAction { spread_n, spot_n: action.spot_n, spread_out_mm }
}

/// Does a push on one end lift the other end off the seat? The own weight alone keeps it down.
fn rocking(body: &Body<'_>, plan: &CleatPlan, actions: &[Action]) -> Option<Verdict> {
    let spec = body.checked.spec;
    let (site, marks) = (spec.site.as_ref()?, plan.marks.as_ref()?);
    let own = actions.first()?;
    let centre_mm = *own.along_mm.first()?;
    let studs = marks.screws.iter().map(|screw| screw.x_mm - site.place.left_end_mm);
    let first_mm = studs.clone().reduce(f64::min)?;
    let last_mm = studs.reduce(f64::max)?;
    let push_n = spec.load.front_edge_n;
    // Arm of a push at that end, and of the weight, about the outer stud.
    let sides = [(first_mm, centre_mm - first_mm), (body.checked.leg.length_mm - last_mm, last_mm - centre_mm)];
    let moments = sides.map(|(over_mm, back_mm)| (push_n * over_mm.max(0.0), own.load_n * back_mm.max(0.0)));
    let [left, right] = moments;
    let (turning, holding) = if left.0 * right.1 >= right.0 * left.1 { left } else { right };
    let name = "rocking over the outer stud by a push on the end";
    let clause = Clause::new(Source::Statics, "moments about the outer stud");
    let verdict = Verdict::compare(name, "body", turning, holding, "N*mm", Basis::Derived, clause);
    let remark = "The weight of the body alone keeps its other end down on the seat; the wall half beyond the stud does not help.";
    Some(if verdict.outcome == Outcome::NotMet && spec.cleat.lock == LockSpec::Fitted {
        let remark = format!("{remark} What is missing is for the lock to hold, whose own strength is not checked.");
        Verdict { outcome: Outcome::NotDetermined, ..verdict }.with_remark(remark)
    } else {
        verdict.with_remark(remark)
    })
}

/// The load cases: own weight, things standing on it for years, a push on the front edge at the worst end; the last two at once
/// where the user wants it (no load standard takes a spot and a spread load together).
pub(super) fn actions(body: &Body<'_>, mass: &MassPlan) -> Vec<Action> {
    let (spec, leg) = (body.checked.spec, body.checked.leg);
    let [x, y, _] = mass.centre_mm;
    let own = (mass.lifted_kg * STANDARD_GRAVITY_M_S2, leg.depth_mm - y, x);
    let combine = |name, duration, (extra_n, out_mm): (f64, f64), places: &[f64]| {
        let load_n = own.0 + extra_n;
        // A body without weight has its load where the extra load is.
        let mean = |a: f64, b: f64| if load_n > 0.0 { (own.0 * a + extra_n * b) / load_n } else { b };
        let along_mm = places.iter().map(|place| mean(own.2, *place)).collect();
        Action { name, duration, load_n, out_mm: mean(own.1, out_mm), along_mm, spot_n: 0.0 }
    };
    let mut actions = vec![combine("own weight", LoadDuration::Permanent, (0.0, 0.0), &[x])];
    let stored = body.panel(FaceKind::Top).filter(|_| spec.load.on_top_n_per_m2 > 0.0).map(|top| {
        // The body is upright, so the middle of its outer solid lies under the middle of its top.
        let middle = body.shell.outer.mass_properties().centroid_mm;
        (spec.load.on_top_n_per_m2 * top.show_area_mm2 / 1.0e6, leg.depth_mm - middle.y, middle.x)
    });
    if let Some((stored_n, out_mm, at_mm)) = stored {
        actions.push(combine("own weight and things on top", LoadDuration::Permanent, (stored_n, out_mm), &[at_mm]));
    }
    let push_n = spec.load.front_edge_n;
    if push_n > 0.0 {
        let pushed = |name, beside: Option<(f64, f64, f64)>| {
            let (beside_n, out_mm, at_mm) = beside.unwrap_or_default();
            let extra_n = beside_n + push_n;
            let mean = |a: f64, b: f64| (beside_n * a + push_n * b) / extra_n;
            let ends = [0.0, leg.length_mm].map(|end| mean(at_mm, end));
            let extra = (extra_n, mean(out_mm, leg.depth_mm));
            Action { spot_n: push_n, ..combine(name, LoadDuration::TenYears, extra, &ends) }
        };
        actions.push(pushed("own weight and a push on the front edge", None));
        if stored.is_some() && spec.load.together == LoadsTogether::AtOnce {
            actions.push(pushed("own weight, things on top and a push on the front edge", stored));
        }
    }
    actions
}

/// Equilibrium of the seat. The contact is taken in the middle of the seat, on the safe side of the tip to which it runs
/// when the body tips; the foot bears at its lower arris, as it does when the body tips.
fn seat(
    body: &Body<'_>,
    plan: &CleatPlan,
    strip: &CleatHalvesInput,
    action: &Action,
) -> core::result::Result<CleatSeat, Fault> {
    let contact_up_mm = 0.5 * (plan.wall_half_edge_mm + plan.wall_half_point_mm + strip.blunt_mm);
    cleat_seat(&CleatSeatInput {
        weight_n: action.load_n,
        centre_out_mm: action.out_mm - 0.5 * strip.thickness_mm,
        foot_below_mm: contact_up_mm,
        bevel_deg: strip.bevel_deg,
        friction: body.checked.spec.cleat.friction,
        top_above_mm: Some((body.checked.leg.height_mm - contact_up_mm).max(1.0)),
    })
}

fn seat_check(
    body: &Body<'_>,
    action: &Action,
    seat: &CleatSeat,
    checks: &mut Vec<Verdict>,
    findings: &mut Vec<Finding>,
) {
    let clause = Clause::new(Source::Statics, "seat equilibrium");
    if seat.horizontal_n > 0.0 && !body.has_foot() {
        let remark = "Neither a bottom board nor a return panel reaches the wall below the seat.";
        let name = format!("seat without friction, {}", action.name);
        checks.push(Verdict::without_answer(name, "cleat seat", Outcome::NotMet, clause, remark));
        if !findings.iter().any(|one| one.code == FindingCode::ClimbsOff) {
            findings.push(no_foot(seat));
        }
        return;
    }
    let needed = seat.needed_n.unwrap_or(seat.horizontal_n.max(0.0));
    let verdict = Verdict::compare(
        format!("seat without friction, {}", action.name),
        "cleat seat",
        needed,
        seat.pull_without_friction_n,
        "N",
        Basis::Derived,
        clause,
    );
    let hold_down = hold_down(seat);
    if hold_down <= 0.0 {
        checks.push(verdict.with_remark("Friction is left out: no check passes on it."));
        return;
    }
    let locked = body.checked.spec.cleat.lock == LockSpec::Fitted;
    findings.push(climbing(action, seat, hold_down, locked));
    checks.push(if locked {
        let remark = "The bevel alone does not keep the body on; the lock must hold it down by the demand given here, and its \
                      own strength is not checked.";
        let verdict = Verdict { outcome: Outcome::NotDetermined, capacity: None, utilisation: None, ..verdict };
        Verdict { demand: Some(hold_down), name: format!("hold-down by the lock, {}", action.name), ..verdict }
            .with_remark(remark)
    } else {
        verdict.with_remark("Friction is left out: no check passes on it. A lock would take what is missing.")
    });
}

fn no_foot(seat: &CleatSeat) -> Finding {
    Finding {
        grade: Grade::Stop,
        code: FindingCode::ClimbsOff,
        subject: "cleat seat".to_owned(),
        message: "Nothing of the body bears on the wall below the seat: it tips off under its own weight.".to_owned(),
        numbers: vec![Quantity::new("load", seat.vertical_n, "N")],
        cure:
            "A bottom board or return panels that reach the wall, or blocks behind the front that bear on it low down."
                .to_owned(),
        clause: Some(Clause::new(Source::Statics, "seat equilibrium")),
    }
}

/// Downward force at the seat with which the bevel alone gives the pull that is needed, N; 0 when none is wanted.
fn hold_down(seat: &CleatSeat) -> f64 {
    let needed = seat.needed_n.unwrap_or(0.0);
    let without = seat.pull_without_friction_n;
    // The pull of the seat grows in step with the load on it: W + F gives (W + F) tan b.
    if needed > without && without > 0.0 { seat.vertical_n * (needed / without - 1.0) } else { 0.0 }
}

fn climbing(action: &Action, seat: &CleatSeat, hold_down_n: f64, locked: bool) -> Finding {
    let (code, words) = match seat.regime {
        SeatRegime::ClimbsOff => (FindingCode::ClimbsOff, "climbs up and off the seat, even with the friction given"),
        _ => (FindingCode::HeldByFrictionOnly, "stays on the seat only with the help of friction"),
    };
    Finding {
        grade: if locked { Grade::Caution } else { Grade::Stop },
        code,
        subject: "cleat seat".to_owned(),
        message: format!("Under {} the body {words}.", action.name),
        numbers: vec![
            Quantity::new("pull needed", seat.needed_n.unwrap_or(seat.horizontal_n), "N"),
            Quantity::new("pull of the bevel without friction", seat.pull_without_friction_n, "N"),
            Quantity::new("hold-down that a lock must give at the seat", hold_down_n, "N"),
        ],
        cure: "Fit a removable lock that holds the body down, set the seat higher (narrower strip, close under the top), or \
               take a steeper bevel at the price of more lift."
            .to_owned(),
        clause: Some(Clause::new(Source::Statics, "seat equilibrium")),
    }
}

fn load_case(action: &Action, seat: &CleatSeat) -> LoadCase {
    LoadCase {
        name: action.name.to_owned(),
        duration: action.duration,
        duration_factor: action.duration.factor(),
        load_n: action.load_n,
        out_mm: action.out_mm,
        along_mm: action.along_mm.first().copied().unwrap_or(0.0),
        pull_n: seat.design_pull_n,
        needed_pull_n: seat.needed_n.unwrap_or(seat.horizontal_n.max(0.0)),
        pull_without_friction_n: seat.pull_without_friction_n,
        hold_down_n: hold_down(seat),
        worst_stud_n: None,
        least_stud_n: None,
        screw_shear_n: None,
        screw_tension_n: None,
        screw_utilisation: None,
    }
}

/// The most loaded stud of a case and its screw; nothing without a wall that offers two studs.
fn stud_load(
    body: &Body<'_>,
    plan: &CleatPlan,
    strip: &CleatHalvesInput,
    case: usize,
    action: &Action,
    seat: &CleatSeat,
) -> Result<Option<StudLoad>> {
    let site = body.checked.spec.site.as_ref();
    let Some((site, wall)) = site.and_then(|site| Some((site, site.wall.as_ref()?))) else { return Ok(None) };
    let Some(marks) = plan.marks.as_ref().filter(|marks| marks.screws.len() >= 2) else { return Ok(None) };
    let supports_mm: Vec<f64> = marks.screws.iter().map(|screw| screw.x_mm - site.place.left_end_mm).collect();
    let held_n = action.load_n + hold_down(seat);
    let (mut share_n, mut least_n) = (0.0_f64, f64::MAX);
    for along_mm in &action.along_mm {
        let input =
            ShareBetweenSupportsInput { load_n: held_n, load_at_mm: *along_mm, supports_mm: supports_mm.clone() };
        let shares = share_between_supports(&input).map_err(|error| within(error, "site.wall"))?;
        (share_n, least_n) = (share_n.max(shares.greatest_n), least_n.min(shares.least_n));
    }
    let part = if held_n > 0.0 { share_n / held_n } else { 0.0 };
    // The contact at the point of the wall half, where it runs as the body tips: the longest lever for the screws.
    let strip_screws = wall_strip_screws(&WallStripScrewsInput {
        vertical_n: share_n,
        horizontal_n: part * seat.design_pull_n,
        contact_out_mm: strip.thickness_mm,
        contact_up_mm: plan.halves.blunted_face_mm,
        screw_row_up_mm: body.checked.spec.cleat.screws.row_up_mm,
        strip_height_mm: plan.halves.short_face_mm,
        screw_count: 1,
    })
    .map_err(|fault| within(fault, "cleat"))?;
    let gap_mm = plan.greatest_packing_mm + wall.lining_thickness_mm;
    let input = joint_input(body, wall, strip.thickness_mm, gap_mm, action.duration, &strip_screws);
    let joint = screw_joint(&input);
    Ok(Some(StudLoad { case, share_n, least_n: least_n.min(share_n), strip: strip_screws, joint, input }))
}

fn joint_input(
    body: &Body<'_>,
    wall: &Wall,
    strip_mm: f64,
    gap_mm: f64,
    load_duration: LoadDuration,
    screws: &WallStripScrews,
) -> ScrewJointInput {
    let spec = &body.checked.spec.cleat.screws;
    ScrewJointInput {
        size: spec.size,
        nominal_diameter_mm: None,
        root_diameter_mm: None,
        head_diameter_mm: None,
        screw_length_mm: spec.length_mm,
        thread_length_mm: None,
        tip_length_mm: None,
        bending_yield_mpa: None,
        side_specific_gravity: body.checked.strip.connection_gravity,
        side_thickness_mm: strip_mm,
        // The strip's grain lies level, the load hangs; the stud's grain stands upright.
        side_angle_to_grain_deg: 90.0,
        head_recess_mm: 0.0,
        gap_mm,
        main_specific_gravity: body.checked.stud_gravity,
        main_thickness_mm: wall.stud_depth_mm,
        main_angle_to_grain_deg: 0.0,
        main_direction: FastenerDirection::SideGrain,
        rounding: BearingRounding::Unrounded,
        load_duration,
        fabrication_moisture: MemberMoisture::Dry,
        service_moisture: MemberMoisture::Dry,
        temperature: TemperatureBand::UpTo100F,
        arrangement: FastenerArrangement::SeveralRows,
        lateral_n: screws.shear_per_screw_n,
        withdrawal_n: screws.tension_per_screw_n,
    }
}

/// How much of the screw a case uses; a screw that does not reach counts as the worst.
fn utilisation(stud: &StudLoad) -> f64 {
    stud.joint.as_ref().map_or(f64::MAX, |joint| joint.utilisation)
}

/// All checks of the governing case, and the combined one of the others.
fn screw_checks(actions: &[Action], worst: &StudLoad, others: &[StudLoad], checks: &mut Vec<Verdict>) {
    let name = |stud: &StudLoad| actions.get(stud.case).map_or("", |action| action.name);
    let subject = format!("wall screw in the most loaded stud, {}", name(worst));
    match &worst.joint {
        Ok(joint) => checks.extend(screw_joint_verdicts(&worst.input, joint, &subject)),
        Err(fault) => {
            let clause = Clause::new(Source::Nds2018, "12.1.5.6");
            let verdict = Verdict::without_answer("wall screw", subject, Outcome::NotMet, clause, fault.to_string());
            checks.push(verdict);
        }
    }
    for stud in others {
        let Ok(joint) = &stud.joint else { continue };
        let subject = format!("wall screw in the most loaded stud, {}", name(stud));
        let combined = screw_joint_verdicts(&stud.input, joint, &subject).into_iter().nth(3);
        checks.extend(combined);
    }
}
