//! The wall as it is and what is around the body.

use super::super::lift::lift_svg;
use super::super::words;
use super::page::{Html, Page};
use crate::plan::{Plan, ReportLengths};
use crate::site::{EndGap, SiteFit};

/// Gaps, packing and the line to scribe.
pub(super) fn site(page: &mut Page, plan: &Plan) {
    let Some(fit) = &plan.site_fit else { return };
    let lengths = plan.spec.lengths;
    let says_something = !(fit.things.is_empty() && fit.scribe.is_empty() && fit.backing.is_empty())
        || fit.left_gap.is_some()
        || fit.right_gap.is_some()
        || fit.way_in.is_some();
    if !says_something {
        return;
    }
    page.heading("On the wall");
    things(page, lengths, fit);
    ends(page, lengths, fit);
    if !fit.scribe.is_empty() {
        packing(page, lengths, fit);
        scribe(page, lengths, fit);
    }
    for span in &fit.backing {
        let (from, to) = (lengths.full(span.from_mm), lengths.full(span.to_mm));
        let bites = if span.edge_mm > 0.0 { "lies on the screw line" } else { "misses the screw line" };
        page.paragraph(format!("{} {bites}, from {from} to {to} from the plumb line.", span.name));
    }
}

/// The way onto the cleat and the order of hanging.
pub(super) fn hanging(page: &mut Page, plan: &Plan) {
    let lengths = plan.spec.lengths;
    if let Some(lift) = &plan.lift_on {
        page.heading("Onto the cleat");
        let number =
            |name: &str, value: Option<f64>| value.map(|value_mm| format!("{name} {}", lengths.full(value_mm)));
        let parts = [
            Some(format!("The body goes on: {}", words::lift_manner(lift.manner))),
            number("its top rises", lift.rise_mm),
            number("least headroom under something deeper, level", lift.least_headroom_level_mm),
            number("least headroom found with tilting", lift.least_headroom_tilted_mm),
            number("headroom missing", lift.missing_mm),
        ];
        page.paragraph(format!("{}.", parts.into_iter().flatten().collect::<Vec<_>>().join("; ")));
        page.drawing(&lift_svg(lift, lengths));
    }
    if plan.hanging.is_empty() {
        return;
    }
    page.heading("Order of hanging");
    let rows = plan.hanging.iter().map(|step| {
        let numbers = step.numbers.iter().map(|one| {
            let value = super::checks::quantity(one.value, one.unit, lengths);
            Html::from(format!("{}: {value}", one.name))
        });
        [step.order.to_string().into(), step.what.as_str().into(), Html::lines(&numbers.collect::<Vec<_>>())]
    });
    page.table("", ["step", "what", "numbers"], rows);
}

fn things(page: &mut Page, lengths: ReportLengths, fit: &SiteFit) {
    if fit.things.is_empty() {
        return;
    }
    let gap = |gap_mm: f64| {
        let text = lengths.full(gap_mm.abs());
        Html::from(if gap_mm < 0.0 { format!("{text} over it") } else { text })
    };
    let rows = fit.things.iter().map(|thing| {
        [
            Html::name(&thing.name),
            gap(thing.along_mm),
            gap(thing.upright_mm),
            lengths.full(thing.distance_mm).into(),
            words::outcome(thing.outcome).into(),
        ]
    });
    page.table("Things around the body", ["thing", "gap along the wall", "gap in height", "distance", "clear"], rows);
}

fn ends(page: &mut Page, lengths: ReportLengths, fit: &SiteFit) {
    let end = |page: &mut Page, name: &str, gap: &EndGap| {
        page.paragraph(format!(
            "{name} side wall: gap {} at the front, {} at the wall; an end along it has {}°.",
            lengths.full(gap.front_mm),
            lengths.full(gap.back_mm),
            super::super::text::fixed(gap.fitting_end_deg, 2)
        ));
    };
    if let Some(gap) = &fit.left_gap {
        end(page, "Left", gap);
    }
    if let Some(gap) = &fit.right_gap {
        end(page, "Right", gap);
    }
    if let Some(way) = &fit.way_in {
        let (longest, room) = (lengths.full(way.longest_mm), lengths.full(way.room_mm));
        page.paragraph(format!("Way in: longest side {longest}, room left {room} ({}).", words::outcome(way.outcome)));
    }
}

fn packing(page: &mut Page, lengths: ReportLengths, fit: &SiteFit) {
    if fit.foot_spacer_mm > 0.0 {
        page.paragraph(format!("Spacer at the foot of the body: {}.", lengths.full(fit.foot_spacer_mm)));
    }
    let rows = fit.packing.iter().map(|stud| {
        [
            lengths.full(stud.stud_mm).into(),
            lengths.full(stud.packing_mm).into(),
            lengths.full(stud.reach_mm).into(),
            lengths.full(stud.longer_by_mm).into(),
        ]
    });
    let heads = ["stud, from the plumb line", "packing", "reach of the screw", "screw too short by"];
    page.table("Packing behind the wall half", heads, rows);
}

fn scribe(page: &mut Page, lengths: ReportLengths, fit: &SiteFit) {
    page.paragraph(format!("Leave {} on the back edges for scribing.", lengths.full(fit.scribe_allowance_mm)));
    let rows = fit.scribe.iter().map(|station| {
        [station.along_mm, station.lower_gap_mm, station.upper_gap_mm, station.lower_cut_mm, station.upper_cut_mm]
            .map(|value_mm| Html::from(lengths.full(value_mm)))
    });
    let heads = ["from the left end", "gap, lower edge", "gap, upper edge", "cut, lower edge", "cut, upper edge"];
    page.table("Line to scribe", heads, rows);
}
