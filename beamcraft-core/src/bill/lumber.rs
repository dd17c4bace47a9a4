//! Boards for the panels, one kind of board for each thickness.

use crate::error::Result;
use crate::lumber::{LumberToBuyInput, RoughThickness, RoughThicknessInput, lumber_to_buy, rough_thickness};
use crate::plan::Plan;

use super::shopping::BuyingSpec;

/// Boards of one rough thickness.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct LumberNeed {
    /// Finished thickness, mm.
    pub finished_mm: f64,
    /// Rough thickness to ask for.
    pub rough: RoughThickness,
    /// Rough thickness, mm.
    pub rough_mm: f64,
    /// The panels that come from it, by name.
    pub panels: Vec<String>,
    /// Length of the longest blank with its allowance, mm; no board may be shorter.
    pub longest_mm: f64,
    /// Width of the widest blank with its allowance, mm; glue up where no board is that wide.
    pub widest_mm: f64,
    /// Volume of the blanks with their allowances at rough thickness, m³.
    pub net_m3: f64,
    /// Volume to buy at the greatest yield, m³.
    pub least_m3: f64,
    /// Volume to buy at the least yield, m³.
    pub greatest_m3: f64,
    /// Volume to buy at the greatest yield, board feet, before any tally.
    pub least_bf: f64,
    /// Volume to buy at the least yield, board feet, before any tally.
    pub greatest_bf: f64,
}

/// The blanks of one thickness.
struct Blanks {
    finished_mm: f64,
    panels: Vec<String>,
    longest_mm: f64,
    widest_mm: f64,
    area_mm2: f64,
}

impl Blanks {
    fn join(&mut self, other: Self) {
        self.panels.extend(other.panels);
        self.longest_mm = self.longest_mm.max(other.longest_mm);
        self.widest_mm = self.widest_mm.max(other.widest_mm);
        self.area_mm2 += other.area_mm2;
    }
}

/// Boards for every thickness of the plan's panels, thickest last.
pub(super) fn boards(plan: &Plan, buying: &BuyingSpec) -> Result<Vec<LumberNeed>> {
    let mut kinds: Vec<Blanks> = Vec::new();
    for panel in &plan.panels {
        let (length, width) =
            (panel.blank_length_mm + buying.length_allowance_mm, panel.blank_width_mm + plan.spec.saw.rip_allowance_mm);
        let blank = Blanks {
            finished_mm: panel.thickness_mm,
            panels: vec![panel.id.to_string()],
            longest_mm: length,
            widest_mm: width,
            area_mm2: length * width,
        };
        match kinds.iter_mut().find(|kind| (kind.finished_mm - blank.finished_mm).abs() < SAME_MM) {
            Some(kind) => kind.join(blank),
            None => kinds.push(blank),
        }
    }
    kinds.sort_by(|a, b| a.finished_mm.total_cmp(&b.finished_mm));
    kinds.into_iter().map(|kind| need(kind, buying)).collect()
}

/// Thicknesses closer than this are planed in one setting.
const SAME_MM: f64 = 0.01;

fn need(blanks: Blanks, buying: &BuyingSpec) -> Result<LumberNeed> {
    let finished_mm = blanks.finished_mm;
    let found = rough_thickness(&RoughThicknessInput { finished_mm, flattening_mm: buying.flattening_mm })?;
    let net_m3 = blanks.area_mm2 * found.rough_mm * 1e-9;
    let buy = lumber_to_buy(&LumberToBuyInput {
        net_m3,
        least_yield: buying.least_yield,
        greatest_yield: buying.greatest_yield,
        grade: None,
        price_per_m3: None,
    })?;
    Ok(LumberNeed {
        finished_mm,
        rough: found.rough,
        rough_mm: found.rough_mm,
        panels: blanks.panels,
        longest_mm: blanks.longest_mm,
        widest_mm: blanks.widest_mm,
        net_m3,
        least_m3: buy.least_m3,
        greatest_m3: buy.greatest_m3,
        least_bf: buy.least_bf,
        greatest_bf: buy.greatest_bf,
    })
}
