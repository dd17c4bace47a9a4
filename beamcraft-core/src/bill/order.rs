//! The order of work of a beam, from rough boards to the first fire.

use super::planned;
use crate::error::Error;
use crate::finding::{Caution, CautionText};
use crate::finish::FinishName;
use crate::limits::{faults_at, limited};
use crate::plan::{BeamSpec, Plan};
use crate::saw::CutKind;
use crate::work::{FigureBasis, WorkCalendar, WorkCalendarInput, WorkTask, WorkWeek, work_calendar};

/// Hours of handwork. What is left out is assumed, marked so in the tasks, and should be replaced by the shop's own.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields, default))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<WorkHours>))]
pub struct WorkHours {
    /// Wood in the room before it is milled, by the clock, h; 72 is published for architectural woodwork.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub acclimate_h: Option<f64>,
    /// Milling a panel's board flat and to thickness, h; 0.5 is assumed.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub mill_panel_h: Option<f64>,
    /// Setting and making one cut with its test cuts, h; 0.25 is assumed.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub cut_h: Option<f64>,
    /// Dry fit, h; 1 is assumed.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub dry_fit_h: Option<f64>,
    /// Gluing a metre of seam, h; 0.25 is assumed.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub glue_metre_h: Option<f64>,
    /// Glue in clamps and to full strength, by the clock, h; 24 is recalled for common wood glue, its maker's time comes first.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub glue_sets_h: Option<f64>,
    /// Making and fitting one frame piece, h; 0.3 is assumed.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub frame_piece_h: Option<f64>,
    /// Making the cleat and fixing the beam half, h; 1 is assumed.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub cleat_h: Option<f64>,
    /// Sanding a square metre through all grades, h; 1.5 is assumed.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub sand_m2_h: Option<f64>,
    /// Putting one coat on a square metre, h; 0.4 is assumed.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub coat_m2_h: Option<f64>,
    /// From coat to coat, by the clock, h; the slow end of what is published for the class, 24 where nothing is.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub recoat_h: Option<f64>,
    /// From the last coat to full cure, by the clock, h; the slow end of what is published for the class, 720 where nothing is.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub cure_h: Option<f64>,
    /// Marking the wall and fixing the wall half, h; 1.5 is assumed.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub wall_half_h: Option<f64>,
    /// Hanging with two people, h; 1 is assumed.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub hang_h: Option<f64>,
}

limited!(WorkHours {
    acclimate_h: WAIT_HOURS,
    mill_panel_h: WORK_HOURS,
    cut_h: WORK_HOURS,
    dry_fit_h: WORK_HOURS,
    glue_metre_h: WORK_HOURS,
    glue_sets_h: WAIT_HOURS,
    frame_piece_h: WORK_HOURS,
    cleat_h: WORK_HOURS,
    sand_m2_h: WORK_HOURS,
    coat_m2_h: WORK_HOURS,
    recoat_h: WAIT_HOURS,
    cure_h: WAIT_HOURS,
    wall_half_h: WORK_HOURS,
    hang_h: WORK_HOURS,
});

/// A job, the working week and the shop's hours.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct OrderOfWorkInput {
    /// The job.
    pub spec: BeamSpec,
    /// When hands work, and how many; hanging takes two people.
    pub week: WorkWeek,
    /// Hours of handwork.
    #[cfg_attr(feature = "json", serde(default))]
    pub hours: WorkHours,
}

/// The tasks of a job and their calendar.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct OrderOfWork {
    /// The tasks with their reasons; change them and call `work_calendar` again.
    pub tasks: Vec<WorkTask>,
    /// The tasks on the calendar.
    pub calendar: WorkCalendar,
    /// Cautions that travel with the work.
    pub cautions: Vec<CautionText>,
}

/// The order of work of a beam with its waits, and its calendar.
///
/// Boards acclimate; are milled, ripped and cross-cut; the shell is fitted dry and glued; frame and cleat go in; it is sanded
/// and coated; the wall half goes up meanwhile; two people hang it; the first fire waits for the finish to cure.
///
/// # Equation
/// As [`work_calendar`]; hours are counts of the plan (panels, cuts, metres of seam, square metres, coats) times hours each.
///
/// # Limits
/// Hours of handwork are assumptions unless given; times of glue and finish are those of their makers, at the temperature and
/// humidity they ask for. With one person the hanging cannot be planned: `makers` must be two or more, or left out.
///
/// # Errors
/// All faults of the spec as in `plan`; those of [`work_calendar`].
///
/// # Source
/// Acclimation: AWI 200, 3.2.5; finish: classes of finish; the order is common practice. Checked by `verification/bill`.
///
/// # Examples
/// ```
/// use beamcraft_core::bill::{order_of_work, OrderOfWorkInput};
/// # #[cfg(feature = "json")] {
/// let input: OrderOfWorkInput = beamcraft_core::json::read(&format!(
///     r#"{{"spec": {}, "week": {{"start_date": "2026-11-25"}}}}"#,
///     include_str!("../../examples/specs/ash_shelf_beam.json"),
/// ))?;
/// let order = order_of_work(&input)?;
/// assert_eq!(order.calendar.critical_chain.last().map(String::as_str), Some("first_fire"));
/// # }
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn order_of_work(input: &OrderOfWorkInput) -> Result<OrderOfWork, Error> {
    let plan = planned(&input.spec, faults_at("hours", &input.hours))?;
    let tasks = tasks(&plan, &input.hours);
    let calendar = work_calendar(&WorkCalendarInput { week: input.week.clone(), tasks: tasks.clone() })?;
    let mut cautions: Vec<_> = [Caution::Saw, Caution::Dust, Caution::Lifting].map(CautionText::from).into();
    cautions.extend(plan.finish.iter().flat_map(|finish| finish.quantity.cautions.iter().cloned()));
    Ok(OrderOfWork { tasks, calendar, cautions })
}

/// A figure: the user's, or the one that stands in.
fn own_or(given: Option<f64>, stand_in: f64, basis: FigureBasis) -> (f64, FigureBasis) {
    given.map_or((stand_in, basis), |hours| (hours, FigureBasis::Own))
}

fn assumed(given: Option<f64>, stand_in: f64) -> (f64, FigureBasis) {
    own_or(given, stand_in, FigureBasis::Assumed)
}

/// Hands-on hours: so many times hours each.
fn hands(id: &str, name: &str, count: f64, each: (f64, FigureBasis), after: &[&str], reason: String) -> WorkTask {
    WorkTask {
        id: id.to_owned(),
        name: name.to_owned(),
        work_h: count * each.0,
        wait_h: 0.0,
        makers: 1,
        after: after.iter().map(|id| (*id).to_owned()).collect(),
        basis: each.1,
        reason,
    }
}

/// Hours by the clock.
fn waits(id: &str, name: &str, (wait_h, basis): (f64, FigureBasis), after: &[&str], reason: &str) -> WorkTask {
    WorkTask { wait_h, ..hands(id, name, 0.0, (0.0, basis), after, reason.to_owned()) }
}

fn tasks(plan: &Plan, hours: &WorkHours) -> Vec<WorkTask> {
    let panels = plan.panels.len() as f64;
    let cuts = || plan.cuts.iter().flat_map(|panel| &panel.cuts);
    let rips = cuts().filter(|cut| matches!(cut.kind, CutKind::FenceRip | CutKind::TaperRip)).count() as f64;
    let cross_cuts = cuts().filter(|cut| cut.kind == CutKind::GaugeCut).count() as f64;
    let cut = assumed(hours.cut_h, 0.25);
    let seam_m = plan.glue.seam_length_mm / 1000.0;
    let show_m2 = plan.panels.iter().map(|panel| panel.show_area_mm2).sum::<f64>() * 1e-6;
    let acclimate = own_or(hours.acclimate_h, 72.0, FigureBasis::Published);
    let glue_sets = assumed(hours.glue_sets_h, 24.0);
    let mut tasks = vec![
        waits("acclimate", "Boards lie in the room they will hang in", acclimate, &[], "AWI 200, 3.2.5: 72 h at least"),
        hands(
            "mill",
            "Mill the boards flat and to thickness",
            panels,
            assumed(hours.mill_panel_h, 0.5),
            &["acclimate"],
            format!("{panels} panels; let them rest a day between rough and last pass where they move"),
        ),
        hands("rip", "Rip and bevel the long edges", rips, cut, &["mill"], format!("{rips} rips with test cuts")),
        hands(
            "cross_cut",
            "Cut the ends",
            cross_cuts,
            cut,
            &["rip"],
            format!("{cross_cuts} cross-cuts with test cuts"),
        ),
        hands(
            "dry_fit",
            "Put the shell together dry, check diagonals at both ends and the middle",
            1.0,
            assumed(hours.dry_fit_h, 1.0),
            &["cross_cut"],
            "what does not close dry does not close with glue".to_owned(),
        ),
        hands(
            "glue_up",
            "Glue the seams",
            seam_m,
            assumed(hours.glue_metre_h, 0.25),
            &["dry_fit"],
            format!("{seam_m:.2} m of seam; all of it within the glue's open time"),
        ),
        waits(
            "glue_sets",
            "Glue sets in the clamps",
            glue_sets,
            &["glue_up"],
            "about 24 h to full strength (recalled); the maker's time comes first",
        ),
    ];
    let mut before_sanding = "glue_sets";
    if let Some(frame) = &plan.frame {
        let pieces = frame.centres_mm.len() as f64;
        let each = assumed(hours.frame_piece_h, 0.3);
        tasks.push(hands("frame", "Fit the frame pieces", pieces, each, &["glue_sets"], format!("{pieces} pieces")));
        before_sanding = "frame";
    }
    if plan.cleat.is_some() {
        let each = assumed(hours.cleat_h, 1.0);
        let name = "Rip the cleat, fix the beam half";
        tasks.push(hands("cleat", name, 1.0, each, &[before_sanding], "both halves from one strip".to_owned()));
        before_sanding = "cleat";
    }
    let sand = assumed(hours.sand_m2_h, 1.5);
    tasks.push(hands("sand", "Sand the show faces", show_m2, sand, &[before_sanding], format!("{show_m2:.2} m2")));
    let last = coats(plan, hours, &mut tasks);
    if plan.cleat.is_some() {
        let each = assumed(hours.wall_half_h, 1.5);
        let name = "Find studs, mark the line, fix the wall half, hang dry once";
        tasks.push(hands("wall_half", name, 1.0, each, &["cleat"], "can be done while the finish dries".to_owned()));
    }
    let mut hang = hands(
        "hang",
        "Hang, lock, see that both ends sit",
        1.0,
        assumed(hours.hang_h, 1.0),
        &[last.as_str()],
        "two people".to_owned(),
    );
    hang.makers = 2;
    if plan.cleat.is_some() {
        hang.after.push("wall_half".to_owned());
    }
    tasks.push(hang);
    let fire: &[&str] = if plan.finish.is_some() { &["hang", "cured"] } else { &["hang"] };
    let reason = "let the finish cure fully, by its maker's time, before the first fire";
    tasks.push(waits("first_fire", "First fire", (0.0, FigureBasis::Own), fire, reason));
    tasks
}

/// Adds the coats, their drying and the cure; the task after which it may be hung.
fn coats(plan: &Plan, hours: &WorkHours, tasks: &mut Vec<WorkTask>) -> String {
    let Some(finish) = &plan.finish else { return "sand".to_owned() };
    let recoat = recoat_h(finish.class, hours);
    let each = assumed(hours.coat_m2_h, 0.4);
    let mut last = "sand".to_owned();
    for coat in 1..=finish.coats {
        let (id, dry) = (format!("coat_{coat}"), format!("dry_{coat}"));
        let reason = format!("{:.2} m2", finish.area_m2);
        tasks.push(hands(&id, &format!("Coat {coat}"), finish.area_m2, each, &[&last], reason));
        tasks.push(waits(
            &dry,
            &format!("Coat {coat} dries"),
            recoat,
            &[&id],
            "slow end of the class; the label comes first",
        ));
        last = dry;
    }
    let cure = cure_h(finish.class, hours);
    tasks.push(waits("cured", "Finish cures fully", cure, &[&last], "slow end of the class; the label comes first"));
    last
}

fn recoat_h(class: FinishName, hours: &WorkHours) -> (f64, FigureBasis) {
    match class.class().recoat_h {
        Some(range) => own_or(hours.recoat_h, range.high, FigureBasis::Published),
        None => assumed(hours.recoat_h, 24.0),
    }
}

fn cure_h(class: FinishName, hours: &WorkHours) -> (f64, FigureBasis) {
    match class.class().full_cure_days {
        Some(range) => own_or(hours.cure_h, range.high * 24.0, FigureBasis::Published),
        None => assumed(hours.cure_h, 720.0),
    }
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const ORDER_OF_WORK: crate::json::Calculation = crate::json::calculation!(
    order_of_work: OrderOfWorkInput => OrderOfWork, Document,
    "The order of work of a beam with its waits, and its calendar"
);

#[cfg(test)]
#[cfg(feature = "json")]
mod tests {
    use super::*;

    const ASH: &str = include_str!("../../examples/specs/ash_shelf_beam.json");

    fn input(week: &str) -> OrderOfWorkInput {
        crate::json::read(&format!(r#"{{"spec": {ASH}, "week": {week}}}"#)).expect("a job")
    }

    #[test]
    fn hanging_waits_for_the_wall_and_the_finish() {
        let order = order_of_work(&input(r#"{"start_date": "2026-11-25", "makers": 2}"#)).expect("a calendar");
        let at = |id: &str| order.calendar.tasks.iter().find(|task| task.id == id).expect("a task");
        assert!(at("hang").start_h >= at("dry_3").ready_h && at("hang").start_h >= at("wall_half").ready_h);
        assert!(
            at("mill").start_h >= at("acclimate").ready_h && at("acclimate").ready_h - at("acclimate").start_h == 72.0
        );
        assert!(at("first_fire").start_h >= at("cured").ready_h);
        assert!(order.calendar.assumed_count > 5, "{}", order.calendar.assumed_count);
        assert!(order.cautions.iter().any(|caution| caution.about == "lifting"));
    }

    #[test]
    fn one_person_cannot_hang_it() {
        let fault = order_of_work(&input(r#"{"start_date": "2026-11-25", "makers": 1}"#)).expect_err("refused");
        assert!(fault.field().ends_with(".makers"), "{fault}");
    }

    #[test]
    fn own_hours_replace_assumed_ones() {
        let mut job = input(r#"{"start_date": "2026-11-25"}"#);
        job.hours = WorkHours { sand_m2_h: Some(2.0), recoat_h: Some(6.0), ..WorkHours::default() };
        let order = order_of_work(&job).expect("a calendar");
        let task = |id: &str| order.tasks.iter().find(|task| task.id == id).expect("a task");
        assert_eq!((task("sand").basis, task("dry_1").basis), (FigureBasis::Own, FigureBasis::Own));
        assert_eq!((task("dry_1").wait_h, task("mill").basis), (6.0, FigureBasis::Assumed));
        job.hours.cut_h = Some(f64::NAN);
        job.spec.wood.species = "unobtainium".to_owned();
        let fault = order_of_work(&job).expect_err("refused");
        assert_eq!(fault.details().len(), 2, "{fault}");
    }

    #[test]
    fn a_body_without_finish_or_cleat_still_has_an_order() {
        let mut job = input(r#"{"start_date": "2026-11-25"}"#);
        job.spec.finish = None;
        job.spec.cleat.strip_width_mm = 1_900.0;
        let order = order_of_work(&job).expect("a calendar");
        assert!(order.tasks.iter().all(|task| task.id != "cleat" && task.id != "cured"));
    }
}
