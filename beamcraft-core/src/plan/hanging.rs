//! The order of hanging, step by step.

use super::result::{CleatPlan, HangingStep, HangingTask, MassPlan};
use super::site::LiftReach;
use super::spec::{BeamSpec, LockSpec};
use crate::finding::Quantity;
use crate::site::{LiftManner, LiftOn, SiteFit};

/// What the sheet is written from.
pub(super) struct Job<'a> {
    pub(super) spec: &'a BeamSpec,
    pub(super) cleat: &'a CleatPlan,
    pub(super) fit: Option<&'a SiteFit>,
    pub(super) lift: Option<&'a LiftOn>,
    pub(super) mass: &'a MassPlan,
    pub(super) reach: LiftReach,
}

/// Every step in its order.
pub(super) fn sheet(job: &Job<'_>) -> Vec<HangingStep> {
    let steps = [
        find_studs(job),
        level_line(job),
        fix_wall_half(job),
        dry_hang(job),
        scribe(job),
        finish(job),
        hang(job),
        lock(job),
        confirm(job),
    ];
    let numbered = steps.into_iter().zip(1..);
    numbered.map(|((task, what, numbers), order)| HangingStep { order, task, what, numbers }).collect()
}

/// A step before it has its number.
type Step = (HangingTask, String, Vec<Quantity>);

fn length(name: &'static str, value_mm: f64) -> Quantity {
    Quantity::new(name, value_mm, "mm")
}

fn find_studs(job: &Job<'_>) -> Step {
    let screws = job.cleat.marks.iter().flat_map(|marks| &marks.screws);
    let numbers = screws.map(|screw| length("stud from the plumb line", screw.x_mm)).collect();
    let what = "Find every stud behind the wall half, probe both edges, and mark its middle. Detect cables and pipes before \
                drilling.";
    (HangingTask::FindStuds, what.to_owned(), numbers)
}

fn level_line(job: &Job<'_>) -> Step {
    let site = job.spec.site.as_ref();
    let mut numbers = Vec::new();
    if let Some(site) = site {
        let line_mm = site.place.bottom_above_floor_mm;
        numbers.push(length("underside above the floor", line_mm));
        let above = site.opening.map(|opening| line_mm - opening.top_above_floor_mm);
        numbers.extend(above.map(|above_mm| length("underside above the top of the opening", above_mm)));
    }
    numbers.push(length("edge of the wall half above that line, at the wall", job.cleat.wall_half_edge_mm));
    let what = "Draw the level line of the underside, measured from the surround as well as from the floor, and carry the \
                edge of the wall half up from it at both ends.";
    (HangingTask::LevelLine, what.to_owned(), numbers)
}

fn fix_wall_half(job: &Job<'_>) -> Step {
    let mut numbers = Vec::new();
    if let Some(marks) = &job.cleat.marks {
        numbers.push(length("left end from the plumb line", marks.left_mm));
        numbers.push(length("right end from the plumb line", marks.right_mm));
    }
    numbers.push(length("screws above the line of the underside", job.cleat.screw_row_mm));
    if job.cleat.greatest_packing_mm > 0.0 {
        numbers.push(length("most packing at a stud", job.cleat.greatest_packing_mm));
    }
    let spacer_mm = job.fit.map_or(0.0, |fit| fit.foot_spacer_mm);
    let spacer = if spacer_mm > 0.0 { " Fix the spacer for the foot of the body too." } else { "" };
    numbers.extend((spacer_mm > 0.0).then(|| length("spacer at the foot", spacer_mm)));
    let what = "Screw the wall half to the studs, long point in front and up, level and straight; pack it where the wall lies \
                back, do not draw it into a hollow.";
    (HangingTask::FixWallHalf, format!("{what}{spacer}"), numbers)
}

fn dry_hang(job: &Job<'_>) -> Step {
    let mut numbers = Vec::new();
    let mut how = "";
    if let Some(lift) = job.lift {
        numbers.extend(lift.rise_mm.map(|rise_mm| length("rise of the top", rise_mm)));
        numbers.extend(lift.least_headroom_level_mm.map(|room_mm| length("headroom for a level lift", room_mm)));
        how = match lift.manner {
            LiftManner::Level => " It goes on level.",
            LiftManner::Tilted => " It goes on only tilted on the way: follow the frames.",
            LiftManner::NotAtAll | LiftManner::MeetsInPlace => {
                " As planned it does not go on; the findings say what would help."
            }
        };
    }
    let what = "Hang the body dry, two people or props. Shift it sideways to its marks, and see that it sits on the whole seat \
                and bears at the foot.";
    (HangingTask::DryHang, format!("{what}{how}"), numbers)
}

fn scribe(job: &Job<'_>) -> Step {
    let allowance_mm = job.fit.map_or(0.0, |fit| fit.scribe_allowance_mm);
    let numbers = if allowance_mm > 0.0 { vec![length("left proud for scribing", allowance_mm)] } else { Vec::new() };
    let what = if allowance_mm > 0.0 {
        "Scribe the back edges along the wall, take the body down and cut to the line, a little under on the inside."
    } else {
        "Look along the back edges for gaps; scribe and cut where there are any. The wall as given is even and plumb."
    };
    (HangingTask::Scribe, what.to_owned(), numbers)
}

fn finish(job: &Job<'_>) -> Step {
    let what = match job.spec.finish {
        Some(_) => "Take it down and finish it. Let the finish cure fully, by its maker's time, before the first fire.",
        None => "Take it down; what is cut for the wall is finished like the rest.",
    };
    (HangingTask::Finish, what.to_owned(), Vec::new())
}

fn hang(job: &Job<'_>) -> Step {
    let numbers = vec![Quantity::new("mass lifted", job.mass.lifted_kg, "kg")];
    let what = match job.reach {
        LiftReach::Within => "Lift it on with two people, one at each end, both on the floor.",
        LiftReach::Outside => {
            "The hands would be higher or farther out than any lifting method covers: raise it on props or a lift at both \
             ends, and slide it onto the seat from there. Nobody holds it up from a ladder."
        }
    };
    (HangingTask::Hang, what.to_owned(), numbers)
}

fn lock(job: &Job<'_>) -> Step {
    let most_n = job.cleat.load_cases.iter().map(|case| case.hold_down_n).fold(0.0, f64::max);
    let numbers =
        if most_n > 0.0 { vec![Quantity::new("hold-down the lock must give", most_n, "N")] } else { Vec::new() };
    let what = match job.spec.cleat.lock {
        LockSpec::Fitted => {
            "Fit the lock that keeps it from being lifted or tipped off; it comes out again with a screwdriver."
        }
        LockSpec::None => {
            "No lock is planned: weight and bevel alone hold the body. A knock from below or a pull at its top edge unhooks it."
        }
    };
    (HangingTask::Lock, what.to_owned(), numbers)
}

fn confirm(job: &Job<'_>) -> Step {
    let site = job.spec.site.as_ref();
    let numbers = site.map(|site| length("underside above the floor, at both ends", site.place.bottom_above_floor_mm));
    let what = "Confirm that it is seated at both ends: the underside on its line left and right, no gap in the seat seen from \
                either end, no rocking when each front corner is pressed.";
    (HangingTask::ConfirmSeated, what.to_owned(), numbers.into_iter().collect())
}
