//! Areas to coat, litres and cans.

use super::body::Body;
use super::result::FinishPlan;
use super::spec::{CoatedFaces, FinishSpec};
use super::within;
use crate::error::{ErrorCode, Result};
use crate::finding::{Finding, FindingCode, Grade};
use crate::finish::{CansToBuyInput, FinishClassQuantityInput, cans_to_buy, finish_class_quantity};
use crate::numeric::compensated_sum;

/// What to buy; nothing, with a finding, when the class has no published spread rate and none was given.
pub(super) fn buy(body: &Body<'_>, findings: &mut Vec<Finding>) -> Result<Option<FinishPlan>> {
    let Some(spec) = &body.checked.spec.finish else { return Ok(None) };
    let area_m2 = area_m2(body, spec);
    let quantity = finish_class_quantity(&FinishClassQuantityInput {
        finish: spec.class,
        method: spec.method,
        area_m2,
        coats: spec.coats,
        spread_m2_per_l: spec.spread_m2_per_l,
        transfer_efficiency: spec.transfer_efficiency,
        other_loss: spec.other_loss,
    });
    let quantity = match quantity {
        Ok(quantity) => quantity,
        Err(fault) if fault.code == ErrorCode::NoPublishedValue => {
            findings.push(no_spread_rate(spec));
            return Ok(None);
        }
        Err(fault) => return Err(within(fault, "finish")),
    };
    let cans = if spec.can_sizes_l.is_empty() {
        None
    } else {
        let input = CansToBuyInput { needed_l: quantity.most.needed_l, can_sizes_l: spec.can_sizes_l.clone(), ..CANS };
        Some(cans_to_buy(&input).map_err(|error| within(error, "finish"))?)
    };
    Ok(Some(FinishPlan { class: spec.class, area_m2, coats: spec.coats, quantity, cans }))
}

/// Volumes that differ by less than a hundredth of a litre count as the same: the fewer cans win.
const CANS: CansToBuyInput = CansToBuyInput { needed_l: 0.0, can_sizes_l: Vec::new(), same_volume_l: 0.01 };

fn area_m2(body: &Body<'_>, spec: &FinishSpec) -> f64 {
    let areas = body.shell.panels.iter().map(|panel| match spec.coated {
        CoatedFaces::Show => panel.show_area_mm2,
        CoatedFaces::ShowAndInner => panel.show_area_mm2 + panel.inner_area_mm2,
    });
    compensated_sum(areas) / 1.0e6
}

fn no_spread_rate(spec: &FinishSpec) -> Finding {
    Finding {
        grade: Grade::Caution,
        code: FindingCode::NotCovered,
        subject: "finish".to_owned(),
        message: format!("No confirmed spread rate is published for {}.", spec.class.name()),
        numbers: Vec::new(),
        cure: "Give spread_m2_per_l from the product's label or from a trial on scrap.".to_owned(),
        clause: None,
    }
}
