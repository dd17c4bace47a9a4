//! What is bought and lifted: finish, glue, mass.

use super::super::text::{fixed, significant};
use super::super::words;
use super::page::Page;
use crate::finish::{CansOfSize, FigureOrigin};
use crate::plan::Plan;

/// What to buy for the finish.
pub(super) fn finish(page: &mut Page, plan: &Plan) {
    page.heading("Finish");
    let (Some(finish), Some(spec)) = (&plan.finish, &plan.spec.finish) else {
        page.paragraph("No finish was given, or no quantity could be determined for it.");
        return;
    };
    let quantity = &finish.quantity;
    page.paragraph(format!(
        "{}, {} coats {}, {}: {} m².",
        words::finish(finish.class),
        finish.coats,
        words::method(spec.method),
        words::coated(spec.coated),
        significant(finish.area_m2)
    ));
    page.paragraph(format!(
        "Between {} and {} litres, losses included; buy for the larger.",
        significant(quantity.least.needed_l),
        significant(quantity.most.needed_l)
    ));
    if let Some(cans) = &finish.cans {
        let bought = cans.cans.iter().filter(|can| can.count > 0);
        let can = |can: &CansOfSize| format!("{} × {} L", can.count, fixed(can.size_l, 3));
        let list: Vec<String> = bought.map(can).collect();
        page.paragraph(format!(
            "Cans: {}; {} L in all, {} L left over.",
            list.join(", "),
            fixed(cans.bought_l, 3),
            fixed(cans.leftover_l, 3)
        ));
    }
    page.remark(format!(
        "Spread rate {} to {} m²/L for one coat, {}. {}",
        significant(quantity.spread_low_m2_per_l),
        significant(quantity.spread_high_m2_per_l),
        origin(quantity.spread_origin),
        quantity.transfer_remark
    ));
}

const fn origin(origin: FigureOrigin) -> &'static str {
    match origin {
        FigureOrigin::Given => "as given",
        FigureOrigin::Published => "published",
        FigureOrigin::LeftOut => "left out",
    }
}

/// Glue for the seams, mass and centre of gravity.
pub(super) fn glue_and_mass(page: &mut Page, plan: &Plan) {
    let (lengths, mass, glue) = (plan.spec.lengths, &plan.mass, &plan.glue);
    page.heading("Glue");
    page.paragraph(format!(
        "Mitred seams: {} long in all, {} m², one side counted.",
        lengths.full(glue.seam_length_mm),
        significant(glue.seam_area_m2)
    ));
    page.heading("Mass");
    let kilograms = |mass_kg: f64| format!("{} kg", significant(mass_kg));
    let rows = [
        ("panels", kilograms(mass.panels_kg)),
        ("frame pieces and beam half", kilograms(mass.inside_kg)),
        ("lifted in all", kilograms(mass.lifted_kg)),
        ("density of the panels' wood", format!("{} kg/m³", significant(mass.density_kg_m3))),
    ];
    page.table("", ["what", "value"], rows.map(|(name, value)| [name.into(), value.into()]));
    let [x, y, z] = mass.centre_mm.map(|place_mm| lengths.full(place_mm));
    page.paragraph(format!(
        "Centre of gravity: {x} from the left end, {y} from the front face, {z} above the underside. Finish, glue and screws are left out."
    ));
}
