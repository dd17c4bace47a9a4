//! A screw joint's checks as verdicts, for a reviewer.

use super::bearing::FastenerDirection;
use super::is_quarter_inch;
use super::joint::{ScrewJoint, ScrewJointInput};
use super::lateral::ReductionRule;
use crate::cite::{Clause, Source};
use crate::verdict::{Basis, Factor, Outcome, Verdict};

const fn nds(part: &'static str) -> Clause {
    Clause::new(Source::Nds2018, part)
}

/// The checks of a screw joint with their factors and clauses; `subject` names the screws, such as `wall screws`.
///
/// In this order: lateral load, withdrawal, head pull-through, both loads at once, least penetration, far side of the
/// main member, spacing and edge distances, what counts along the axis beside a lateral load. `output` must be what [`screw_joint`](super::screw_joint) gave for `input`.
#[cold]
pub fn screw_joint_verdicts(input: &ScrewJointInput, output: &ScrewJoint, subject: &str) -> Vec<Verdict> {
    let compare = |name: &str, demand: f64, capacity: f64, unit: &'static str, clause: Clause| {
        Verdict::compare(name, subject, demand, capacity, unit, Basis::Clause, clause)
    };
    let n = "N";
    let axial_remark = match input.main_direction {
        FastenerDirection::SideGrain => "The steel's own tension at the thread root (12.2.2.5) is not looked at.",
        FastenerDirection::EndGrain => "In end grain the standard permits a wood screw no withdrawal.",
    };
    let far_side = Clause::new(Source::Geometry, "");
    let least = compare(
        "least penetration, against the penetration there is",
        output.required_penetration_mm,
        output.penetration_mm.min(input.main_thickness_mm),
        "mm",
        nds("12.1.5.6"),
    );
    let inside = Verdict::compare(
        "screw point inside the main member",
        subject,
        output.penetration_mm,
        input.main_thickness_mm,
        "mm",
        Basis::Derived,
        far_side,
    );
    vec![
        compare("lateral load", input.lateral_n, output.lateral_capacity_n, n, lateral_clause(input))
            .with_mode(output.governing_mode.words())
            .with_factors(lateral_factors(output))
            .with_remark(lateral_remark(input)),
        compare("withdrawal", input.withdrawal_n, output.withdrawal_capacity_n, n, nds("12.2.2, Eq. 12.2-2"))
            .with_factors(axial_factors(output))
            .with_remark(axial_remark),
        compare("head pull-through", input.withdrawal_n, output.pull_through_capacity_n, n, nds("12.2.5, Eq. 12.2-6"))
            .with_factors(axial_factors(output)),
        compare("lateral and withdrawal at once", output.resultant_n, output.combined_capacity_n, n, nds("Eq. 12.4-1"))
            .with_remark(format!(
                "Resultant at {:.1}° to the wood surface; along the axis {}.",
                output.angle_deg,
                axial_part(output.withdrawal_capacity_n, output.pull_through_capacity_n)
            )),
        // The comparison carries no tolerance; the joint's own outcome allows for the rounding of inches.
        Verdict { outcome: output.penetration, ..least },
        Verdict { outcome: output.stays_inside, ..inside },
        spacing(output, subject),
        axial_line(subject, input.withdrawal_n, output.withdrawal_capacity_n, output.pull_through_capacity_n),
    ]
}

/// Which part gives in first along the axis.
fn axial_part(withdrawal_n: f64, pull_through_n: f64) -> &'static str {
    if pull_through_n < withdrawal_n { "the head counts, which pulls through first" } else { "the thread counts" }
}

/// What Eq. 12.4-1 is given along the axis: the equation prints the withdrawal capacity, the lesser one is ours.
fn axial_line(subject: &str, load_n: f64, withdrawal_n: f64, pull_through_n: f64) -> Verdict {
    Verdict::compare(
        "pull along the axis beside a lateral load, the lesser of thread and head",
        subject,
        load_n,
        withdrawal_n.min(pull_through_n),
        "N",
        Basis::Derived,
        nds("Eq. 12.4-1, 12.4-2, 12.2"),
    )
    .with_remark(format!(
        "The equation prints the withdrawal capacity W'p; no connection holds more along its axis than its weakest part, \
         so {}.",
        axial_part(withdrawal_n, pull_through_n)
    ))
}

fn lateral_clause(input: &ScrewJointInput) -> Clause {
    if input.gap_mm > 0.0 {
        Clause::new(Source::Tr12, "Table 1-1 (general dowel equations)")
    } else {
        nds("12.3.1, Table 12.3.1A")
    }
}

fn lateral_remark(input: &ScrewJointInput) -> String {
    if input.gap_mm > 0.0 {
        format!("The {} mm between the members are taken as an open gap.", input.gap_mm)
    } else {
        String::new()
    }
}

fn lateral_factors(output: &ScrewJoint) -> Vec<Factor> {
    let reduction = match output.reduction_rule {
        ReductionRule::BelowQuarterInch => "1/R_d reduction term, K_D",
        ReductionRule::SmallRootOfLargeThread => "1/R_d reduction term, K_D K_theta",
        ReductionRule::QuarterInchAndMore => "1/R_d reduction term, by mode, K_theta",
    };
    vec![
        Factor { name: reduction, value: 1.0 / output.reduction, clause: nds("Table 12.3.1B") },
        Factor { name: "C_D load duration", value: output.c_d, clause: nds("11.3.2") },
        Factor { name: "C_M wet service", value: output.c_m_lateral, clause: nds("Table 11.3.3") },
        Factor { name: "C_t temperature", value: output.c_t, clause: nds("Table 11.3.4") },
        Factor { name: "C_eg end grain", value: output.c_eg_lateral, clause: nds("12.5.2") },
    ]
}

fn axial_factors(output: &ScrewJoint) -> Vec<Factor> {
    vec![
        Factor { name: "C_D load duration", value: output.c_d, clause: nds("11.3.2") },
        Factor { name: "C_M wet service", value: output.c_m_withdrawal, clause: nds("Table 11.3.3") },
        Factor { name: "C_t temperature", value: output.c_t, clause: nds("Table 11.3.4") },
    ]
}

fn spacing(output: &ScrewJoint, subject: &str) -> Verdict {
    let (outcome, clause, remark) = if is_quarter_inch(output.nominal_diameter_mm) {
        (
            Outcome::NotDetermined,
            nds("11.3.6, 12.5.1"),
            "From 1/4 in on, the capacity also needs the group factor and the geometry factor, which are taken as 1: keep \
             the full spacing, edge and end distances.",
        )
    } else {
        (
            Outcome::NotCovered,
            nds("12.1.5"),
            "Below 1/4 in the standard gives no distances, only that the wood must not split: bore lead holes.",
        )
    };
    Verdict::without_answer("spacing, edge and end distances", subject, outcome, clause, remark)
}
