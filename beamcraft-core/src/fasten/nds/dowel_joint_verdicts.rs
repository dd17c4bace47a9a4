//! A dowel joint's checks and its distances as verdicts, for a reviewer.

use super::bearing::FastenerDirection;
use super::dowel_joint::{DowelJointNds, DowelJointNdsInput};
use super::factors::DowelFastener;
use super::geometry::{GeometryFactor, GeometryFactorInput, SpacingRule};
use super::lrfd::NdsDesign;
use crate::cite::{Clause, Source};
use crate::units::factor::INCH_MM;
use crate::verdict::{Basis, Factor, Outcome, Verdict};

const fn nds(part: &'static str) -> Clause {
    Clause::new(Source::Nds2018, part)
}

/// The checks of a dowel joint with their factors and clauses; `subject` names the fasteners, such as `wall screws`.
///
/// In this order: lateral load, withdrawal, head pull-through, tension of the steel, both loads at once, least
/// penetration, far side of the main member, what counts along the axis beside a lateral load. `output` must be what [`dowel_joint_nds`](super::dowel_joint_nds) gave for
/// `input`.
#[cold]
pub fn dowel_joint_nds_verdicts(input: &DowelJointNdsInput, output: &DowelJointNds, subject: &str) -> Vec<Verdict> {
    let compare = |name: &str, demand: f64, capacity: f64, clause: Clause| {
        Verdict::compare(name, subject, demand, capacity, "N", Basis::Clause, clause)
    };
    let (lateral_n, withdrawal_n, pull_through_n) = match input.design {
        NdsDesign::Asd => (output.asd_lateral_n, output.asd_withdrawal_n, output.asd_pull_through_n),
        NdsDesign::Lrfd => (output.lrfd_lateral_n, output.lrfd_withdrawal_n, output.lrfd_pull_through_n),
    };
    let lateral_clause = if input.gap_mm > 0.0 {
        Clause::new(Source::Tr12, "Table 1-1 (general dowel equations)")
    } else {
        nds("12.3.1, Table 12.3.1A")
    };
    let axial_remark = match (input.main_direction, input.fastener) {
        (FastenerDirection::SideGrain, _) => "",
        (FastenerDirection::EndGrain, DowelFastener::LagScrew) => "End grain: 0.75 (12.5.2.1).",
        (FastenerDirection::EndGrain, _) => "In end grain the standard permits no withdrawal.",
    };
    let pull_name = "head pull-through";
    let pull_clause = nds("12.2.5, Eq. 12.2-6");
    let pull_through = match (pull_through_n, output.pull_through) {
        (Some(capacity_n), _) => {
            compare(pull_name, input.withdrawal_n, capacity_n, pull_clause).with_factors(axial_factors(input, output))
        }
        (None, Outcome::NotDetermined) => {
            let remark = "Needs the diameter of the round head or washer.";
            Verdict::without_answer(pull_name, subject, Outcome::NotDetermined, pull_clause, remark)
        }
        (None, outcome) => {
            let remark = "The equation is for a wooden side member.";
            Verdict::without_answer(pull_name, subject, outcome, pull_clause, remark)
        }
    };
    let steel_clause = nds("12.2.1.4, 12.2.2.5");
    let steel = match input.steel_tension_n {
        Some(capacity_n) => compare("tension of the steel at the root", input.withdrawal_n, capacity_n, steel_clause)
            .with_remark("Value declared for the fastener."),
        None => Verdict::without_answer(
            "tension of the steel at the root",
            subject,
            Outcome::NotDetermined,
            steel_clause,
            "The standard prints no number: needs the value declared for the fastener.",
        ),
    };
    let combined_clause = if input.fastener.is_nail() { nds("Eq. 12.4-2") } else { nds("Eq. 12.4-1") };
    let both = Verdict::compare(
        "lateral and withdrawal at once",
        subject,
        output.combined_utilisation,
        1.0,
        "",
        Basis::Clause,
        combined_clause,
    );
    let penetration_clause = match input.fastener {
        DowelFastener::LagScrew => nds("12.1.4.6"),
        DowelFastener::WoodScrew => nds("12.1.5.6"),
        _ => nds("12.1.6.4"),
    };
    let least = length(
        "least penetration, against the penetration there is",
        subject,
        output.required_penetration_mm,
        output.counted_penetration_mm,
        output.penetration,
        penetration_clause,
    );
    let inside = length(
        "point inside the main member",
        subject,
        output.penetration_mm,
        input.main_thickness_mm,
        output.stays_inside,
        Clause::new(Source::Geometry, ""),
    );
    vec![
        compare("lateral load", input.lateral_n, lateral_n, lateral_clause)
            .with_mode(output.governing_mode.words())
            .with_factors(lateral_factors(input, output)),
        compare("withdrawal", input.withdrawal_n, withdrawal_n, nds("12.2"))
            .with_factors(withdrawal_factors(input, output))
            .with_remark(axial_remark),
        pull_through,
        steel,
        both,
        least,
        Verdict { basis: Basis::Derived, ..inside },
        axial_line(input, output, subject),
    ]
}

/// What the equation of both loads is given along the axis: it prints the withdrawal capacity, the least one is ours.
fn axial_line(input: &DowelJointNdsInput, output: &DowelJointNds, subject: &str) -> Verdict {
    Verdict::compare(
        "pull along the axis beside a lateral load, the least of thread or shank, head and steel",
        subject,
        input.withdrawal_n,
        output.axial_capacity_n,
        "N",
        Basis::Derived,
        nds("Eq. 12.4-1, 12.4-2, 12.2"),
    )
    .with_remark(
        "The equations print the withdrawal capacity; no connection holds more along its axis than its weakest part.",
    )
}

/// The distances of a group as verdicts: end, spacing in a row, both edges, between rows, spread of the rows.
///
/// `output` must be what [`geometry_factor`](super::geometry_factor) gave for `input`.
#[cold]
pub fn geometry_factor_verdicts(input: &GeometryFactorInput, output: &GeometryFactor, subject: &str) -> Vec<Verdict> {
    let required = output.rule == SpacingRule::Required;
    let clause = |part| if required { nds(part) } else { nds("Commentary Tables C12.1.5.7, C12.1.6.6") };
    let remark = if required { "" } else { "Recommended only: the standard asks that the wood must not split." };
    let line = |name: &str, least_mm: f64, given_mm: f64, outcome: Outcome, part: &'static str| {
        length(name, subject, least_mm, given_mm, outcome, clause(part)).with_remark(remark)
    };
    let share = |value: f64, part: &'static str| {
        let name = "C_delta geometry factor";
        if required { vec![Factor { name, value, clause: nds(part) }] } else { Vec::new() }
    };
    let mut lines = vec![
        line("end distance", output.end_least_mm, input.end_distance_mm, output.end_distance, "Table 12.5.1A")
            .with_factors(share(output.end_factor, "12.5.1.2")),
    ];
    if let Some(pitch_mm) = input.row_pitch_mm {
        lines.push(
            line("spacing in a row", output.pitch_least_mm, pitch_mm, output.row_pitch, "Table 12.5.1B")
                .with_factors(share(output.pitch_factor, "12.5.1.2")),
        );
    }
    lines.push(line(
        "edge distance",
        output.edge_least_mm,
        input.edge_distance_mm,
        output.edge_distance,
        "Table 12.5.1C",
    ));
    if let Some(loaded_mm) = input.loaded_edge_mm
        && output.loaded_edge_least_mm > 0.0
    {
        lines.push(line(
            "loaded edge distance",
            output.loaded_edge_least_mm,
            loaded_mm,
            output.loaded_edge,
            "Table 12.5.1C",
        ));
    }
    if let Some(between_mm) = input.between_rows_mm {
        lines.push(line(
            "distance between rows",
            output.between_rows_least_mm,
            between_mm,
            output.between_rows,
            "Table 12.5.1D",
        ));
    }
    if let Some(spread_mm) = input.row_spread_mm
        && required
    {
        lines.push(line("spread of the rows", spread_mm, 5.0 * INCH_MM, output.row_spread, "12.5.1.3"));
    }
    lines
}

/// A length asked for against the one there is; the outcome is the calculation's own, which allows for the rounding of
/// inches.
fn length(name: &str, subject: &str, asked_mm: f64, given_mm: f64, outcome: Outcome, clause: Clause) -> Verdict {
    let verdict = Verdict::compare(name, subject, asked_mm, given_mm, "mm", Basis::Clause, clause);
    Verdict { outcome, ..verdict }
}

/// Load duration factor, or what stands in its place.
fn duration(input: &DowelJointNdsInput, output: &DowelJointNds) -> Vec<Factor> {
    match input.design {
        NdsDesign::Asd => vec![Factor { name: "C_D load duration", value: output.c_d, clause: nds("11.3.2") }],
        NdsDesign::Lrfd => vec![
            Factor { name: "K_F format conversion", value: output.k_f, clause: nds("Table N1") },
            Factor { name: "phi resistance", value: output.phi, clause: nds("Table N2") },
            Factor { name: "lambda time effect", value: output.time_effect_factor, clause: nds("Table N3") },
        ],
    }
}

fn lateral_factors(input: &DowelJointNdsInput, output: &DowelJointNds) -> Vec<Factor> {
    let mut factors =
        vec![Factor { name: "1/R_d reduction term", value: 1.0 / output.reduction, clause: nds("Table 12.3.1B") }];
    factors.extend(duration(input, output));
    factors.extend([
        Factor { name: "C_M wet service", value: output.c_m_lateral, clause: nds("Table 11.3.3") },
        Factor { name: "C_t temperature", value: output.c_t, clause: nds("Table 11.3.4") },
        Factor { name: "C_g group action", value: output.c_g, clause: nds("11.3.6") },
        Factor { name: "C_delta geometry", value: output.c_delta, clause: nds("12.5.1") },
        Factor { name: "C_eg end grain", value: output.c_eg_lateral, clause: nds("12.5.2") },
        Factor { name: "C_tn toe-nail", value: output.c_tn_lateral, clause: nds("12.5.4") },
    ]);
    factors
}

fn withdrawal_factors(input: &DowelJointNdsInput, output: &DowelJointNds) -> Vec<Factor> {
    let mut factors = duration(input, output);
    factors.extend([
        Factor { name: "C_M wet service", value: output.c_m_withdrawal, clause: nds("Table 11.3.3") },
        Factor { name: "C_t temperature", value: output.c_t, clause: nds("Table 11.3.4") },
        Factor { name: "C_tn toe-nail", value: output.c_tn_withdrawal, clause: nds("12.5.4") },
    ]);
    factors
}

/// Factors of the pull-through value; its wet service factor is that of screws.
fn axial_factors(input: &DowelJointNdsInput, output: &DowelJointNds) -> Vec<Factor> {
    let mut factors = duration(input, output);
    factors.push(Factor { name: "C_M wet service", value: output.c_m_pull_through, clause: nds("Table 11.3.3") });
    factors.push(Factor { name: "C_t temperature", value: output.c_t, clause: nds("Table 11.3.4") });
    factors
}
