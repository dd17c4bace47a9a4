//! The shopping list of a plan, each line traced to what asked for it.

use super::lumber::{LumberNeed, boards};
use super::planned;
use super::seams::{ClampsAtHand, clamps, filler_ml, solvent};
use crate::error::{Allowed, Detail, Error, ErrorCode, Fault, closest};
use crate::finding::{Caution, CautionText};
use crate::finish::{
    CansToBuy, ClampsForSeam, GlueQuantityInput, SandingDiscsInput, SandingStepsInput, SolventEmitted, glue_quantity,
    sanding_discs, sanding_steps,
};
use crate::limits::{faults_at, limited};
use crate::plan::{BeamSpec, LockSpec, Plan, ReportLengths};
use crate::units::factor::FOOT_MM;
use crate::work::{CostKind, CostLine, CostRates, JobCost, JobCostInput, job_cost};

/// How the boards and the small things are bought.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields, default))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<BuyingSpec>))]
pub struct BuyingSpec {
    /// Wood taken beyond a mill's surfacing to get boards flat, mm.
    pub flattening_mm: f64,
    /// Least share of the boards that becomes blanks; 0.5 is a choice for a short list of long parts, no figure is published.
    pub least_yield: f64,
    /// Greatest share of the boards that becomes blanks; 0.8 is a choice.
    pub greatest_yield: f64,
    /// Glue on one glue line, g/m², from the maker; without it no glue is reckoned.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub glue_spread_g_per_m2: Option<f64>,
    /// Share of glue on top for squeeze-out, brush and pot.
    pub glue_waste_share: f64,
    /// First P grade; 80 takes out a planer's marks (common practice).
    pub first_grit: u32,
    /// Last P grade; 180 is common practice before oil and varnish.
    pub last_grit: u32,
    /// Area that one abrasive disc sands, m²; without it no discs are reckoned.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub area_a_disc_m2: Option<f64>,
    /// Share of filler on top that is wiped and sanded off; no figure is published.
    pub filler_waste_share: f64,
    /// The clamps at hand; without them none are counted.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub clamps: Option<ClampsAtHand>,
    /// Volatile organic compounds of the finish by its label, g/L; without them none are summed.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub finish_voc_g_per_l: Option<f64>,
}

limited!(BuyingSpec {
    flattening_mm: SMALL_LENGTH,
    least_yield: POSITIVE_FRACTION,
    greatest_yield: POSITIVE_FRACTION,
    glue_spread_g_per_m2: GLUE_SPREAD,
    glue_waste_share: ALLOWANCE,
    first_grit: GRIT,
    last_grit: GRIT,
    area_a_disc_m2: DISC_AREA,
    filler_waste_share: ALLOWANCE,
    finish_voc_g_per_l: VOC,
});

impl Default for BuyingSpec {
    fn default() -> Self {
        Self {
            flattening_mm: 0.0,
            least_yield: 0.5,
            greatest_yield: 0.8,
            glue_spread_g_per_m2: None,
            glue_waste_share: 0.0,
            first_grit: 80,
            last_grit: 180,
            area_a_disc_m2: None,
            filler_waste_share: 0.0,
            clamps: None,
            finish_voc_g_per_l: None,
        }
    }
}

/// The price of one line.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<LinePrice>))]
pub struct LinePrice {
    /// Id of the line, such as `wall_screws`.
    pub line: String,
    /// Least price of one unit.
    pub least_price: f64,
    /// Greatest price of one unit; the least when left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub greatest_price: Option<f64>,
    /// Sold only in whole multiples of this quantity.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub package: Option<f64>,
}

limited!(LinePrice { least_price: PRICE, greatest_price: PRICE, package: PACKAGE });

/// A job, how its things are bought, and what is known of their prices.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct ShoppingListInput {
    /// The job.
    pub spec: BeamSpec,
    /// How the boards and the small things are bought.
    #[cfg_attr(feature = "json", serde(default))]
    pub buying: BuyingSpec,
    /// Prices of lines, by their id; a line without one is listed without cost.
    #[cfg_attr(feature = "json", serde(default))]
    pub prices: Vec<LinePrice>,
    /// What else the job costs: hours, transport, hire.
    #[cfg_attr(feature = "json", serde(default))]
    pub other_lines: Vec<CostLine>,
    /// What comes on top.
    #[cfg_attr(feature = "json", serde(default))]
    pub rates: CostRates,
}

/// Something to buy.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct ShoppingLine {
    /// Short id, for the prices.
    pub id: String,
    /// What it is.
    pub name: String,
    /// What asked for it.
    pub asked_by: String,
    /// What kind of cost.
    pub kind: CostKind,
    /// Unit of the quantity.
    pub unit: &'static str,
    /// Least quantity.
    pub least_quantity: f64,
    /// Greatest quantity: the one to buy.
    pub greatest_quantity: f64,
}

/// What to buy for a job.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct ShoppingList {
    /// The lines.
    pub lines: Vec<ShoppingLine>,
    /// Boards in detail.
    pub lumber: Vec<LumberNeed>,
    /// Cans for the greatest quantity of finish; absent without sizes of cans in the spec.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub cans: Option<CansToBuy>,
    /// Clamps of the longest mitred seam and the pressure that they reach; absent without clamps at hand.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub clamps: Option<ClampsForSeam>,
    /// What the finish gives off to the air; absent without its label.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub solvent: Option<SolventEmitted>,
    /// Cost of the priced lines and of the other lines; absent when there are none.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub cost: Option<JobCost>,
    /// Ids of lines without a price.
    pub without_price: Vec<String>,
    /// What could not be reckoned, and what to give for it.
    pub not_determined: Vec<&'static str>,
    /// Cautions that travel with what is bought.
    pub cautions: Vec<CautionText>,
}

/// What to buy for a job, as ranges, each line traced to what asked for it, with its cost where prices are given.
///
/// # Equation
/// ```text
/// boards: Σ blank length × blank width × rough thickness / yield        (the blanks of the saw settings)
/// filler: of each seam the share that the stack-up leaves to filler, from the gap that is burnished to the widest filled
/// ```
/// The others as in `rough_thickness`, `lumber_to_buy`, `glue_quantity`, `sanding_steps`, `sanding_discs`, `seam_filler`,
/// `clamps_for_seam`, `finish_class_quantity`, `cans_to_buy`, `solvent_emitted`, `job_cost`.
///
/// # Limits
/// Boards by volume, for buying before the boards are seen; a layout on real boards says what is needed of them. Yields are
/// choices unless given. Only screws of the wall half are counted. Nothing has a price unless it is given.
///
/// # Errors
/// All faults of the spec as in `plan`; `out_of_range` and `not_finite` of the rest; `unknown_name` for a price of a line that
/// is not on the list; `inconsistent` for yields the wrong way round.
///
/// # Source
/// Arithmetic on the plan; sources of the parts as in their calculations. Checked by `verification/bill`.
///
/// # Examples
/// ```
/// use beamcraft_core::bill::{shopping_list, ShoppingListInput};
/// # #[cfg(feature = "json")] {
/// let input: ShoppingListInput = beamcraft_core::json::read(&format!(
///     r#"{{"spec": {}, "prices": [{{"line": "wall_screws", "least_price": 0.4}}]}}"#,
///     include_str!("../../examples/specs/ash_shelf_beam.json"),
/// ))?;
/// let list = shopping_list(&input)?;
/// assert_eq!(list.lines.iter().map(|line| line.id.as_str()).next(), Some("boards_1"));
/// assert!(list.cost.is_some_and(|cost| (cost.least_total - 1.2).abs() < 1e-12), "three screws");
/// # }
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn shopping_list(input: &ShoppingListInput) -> Result<ShoppingList, Error> {
    let mut faults = faults_at("buying", &input.buying);
    faults.extend(input.buying.clamps.iter().flat_map(|clamps| faults_at("buying.clamps", clamps)));
    for (k, price) in input.prices.iter().enumerate() {
        faults.extend(faults_at(&format!("prices[{k}]"), price));
    }
    let plan = planned(&input.spec, faults)?;
    let lumber = boards(&plan, &input.buying).map_err(|error| error.within("buying"))?;
    let mut list = Lines { lines: Vec::new(), not_determined: Vec::new() };
    list.wood(&plan, &lumber);
    list.hardware(&plan);
    list.glue(&plan, &input.buying)?;
    list.abrasives(&plan, &input.buying)?;
    list.filler(&plan, &input.buying)?;
    list.finish(&plan);
    let clamps = input.buying.clamps.as_ref().map(|hand| clamps(&plan, hand)).transpose();
    let clamps = clamps.map_err(|error| error.within("buying"))?.flatten();
    let solvent = solvent(&plan, input.buying.finish_voc_g_per_l)?;
    let Lines { lines, not_determined } = list;
    let cost = cost(input, &lines)?;
    let priced = |line: &&ShoppingLine| !input.prices.iter().any(|price| price.line == line.id);
    let without_price = lines.iter().filter(priced).map(|line| line.id.clone()).collect();
    let mut cautions = vec![CautionText::from(Caution::Dust)];
    cautions.extend(plan.finish.iter().flat_map(|finish| finish.quantity.cautions.iter().cloned()));
    let cans = plan.finish.and_then(|finish| finish.cans);
    Ok(ShoppingList { lines, lumber, cans, clamps, solvent, cost, without_price, not_determined, cautions })
}

/// Lines as they come together.
struct Lines {
    lines: Vec<ShoppingLine>,
    not_determined: Vec<&'static str>,
}

/// Millimetres as they are sold.
fn running(length_mm: f64, lengths: ReportLengths) -> (f64, &'static str) {
    match lengths {
        ReportLengths::Metric => (length_mm / 1000.0, "m"),
        ReportLengths::Inches => (length_mm / FOOT_MM, "ft"),
    }
}

impl Lines {
    fn add(
        &mut self,
        id: &str,
        kind: CostKind,
        name: String,
        asked_by: String,
        unit: &'static str,
        (least, greatest): (f64, f64),
    ) {
        let id = id.to_owned();
        self.lines.push(ShoppingLine {
            id,
            name,
            asked_by,
            kind,
            unit,
            least_quantity: least,
            greatest_quantity: greatest,
        });
    }

    fn wood(&mut self, plan: &Plan, lumber: &[LumberNeed]) {
        let lengths = plan.spec.lengths;
        // As the blanks: a trim at each end.
        let allowance_mm = 2.0 * plan.spec.saw.end_trim_mm;
        for (k, need) in lumber.iter().enumerate() {
            let name = format!("{}, rough {} mm for {} mm", plan.spec.wood.species, need.rough_mm, need.finished_mm);
            let (unit, range) = match lengths {
                ReportLengths::Metric => ("m3", (need.least_m3, need.greatest_m3)),
                ReportLengths::Inches => ("board foot", (need.least_bf, need.greatest_bf)),
            };
            self.add(&format!("boards_{}", k + 1), CostKind::Material, name, need.panels.join(", "), unit, range);
        }
        if let Some(frame) = &plan.frame {
            let pieces = frame.centres_mm.len() as f64;
            let length_mm = pieces * (frame.piece.length_mm + plan.spec.saw.kerf_mm) + allowance_mm;
            let (length, unit) = running(length_mm, lengths);
            let name = format!("wood for frame pieces, {} mm x {} mm", frame.piece.width_mm, frame.thickness_mm);
            let asked_by = format!("{pieces} frame pieces of {:.1} mm", frame.piece.length_mm);
            self.add("frame_wood", CostKind::Material, name, asked_by, unit, (length, length));
        }
        if let Some(cleat) = &plan.cleat {
            let spec = &plan.spec.cleat;
            let (length, unit) = running(cleat.beam_half_length_mm + allowance_mm, lengths);
            let wood = spec.species.as_ref().unwrap_or(&plan.spec.wood.species);
            let name = format!("{wood} strip, {} mm x {} mm", spec.strip_width_mm, spec.thickness_mm);
            self.add("cleat_strip", CostKind::Material, name, "cleat halves".to_owned(), unit, (length, length));
        }
    }

    fn hardware(&mut self, plan: &Plan) {
        let Some(cleat) = &plan.cleat else { return };
        match &cleat.marks {
            Some(marks) => {
                let screws = marks.screws.len() as f64;
                let spec = plan.spec.cleat.screws;
                let name = format!("wood screw {} {} mm long", spec.size.words(), spec.length_mm);
                let asked_by = format!("wall half, {screws} studs");
                self.add("wall_screws", CostKind::Material, name, asked_by, "piece", (screws, screws));
            }
            None => self.not_determined.push("screws of the wall half: give site.wall with its studs"),
        }
        if plan.spec.cleat.lock == LockSpec::Fitted {
            let name = "removable lock: screw or block".to_owned();
            self.add("lock", CostKind::Material, name, "cleat".to_owned(), "piece", (1.0, 1.0));
        }
    }

    fn glue(&mut self, plan: &Plan, buying: &BuyingSpec) -> Result<(), Error> {
        let Some(spread_g_per_m2) = buying.glue_spread_g_per_m2 else {
            self.not_determined.push("glue: give buying.glue_spread_g_per_m2 from the maker");
            return Ok(());
        };
        let glue = glue_quantity(&GlueQuantityInput {
            bond_area_m2: plan.glue.seam_area_m2,
            spread_g_per_m2,
            waste_share: buying.glue_waste_share,
            // Only the mass is read; it does not depend on the density.
            density_kg_per_l: 1.0,
        })?;
        let asked_by = format!("{:.0} mm of mitred seams", plan.glue.seam_length_mm);
        self.add("glue", CostKind::Consumable, "wood glue".to_owned(), asked_by, "g", (glue.net_g, glue.mass_g));
        Ok(())
    }

    fn abrasives(&mut self, plan: &Plan, buying: &BuyingSpec) -> Result<(), Error> {
        let grits = SandingStepsInput { start_grit: buying.first_grit, final_grit: buying.last_grit };
        let steps = sanding_steps(&grits).map_err(|fault| Error::from(fault).within("buying"))?.steps;
        let Some(area_a_disc_m2) = buying.area_a_disc_m2 else {
            self.not_determined.push("abrasive discs: give buying.area_a_disc_m2 from experience");
            return Ok(());
        };
        let area_m2 = plan.panels.iter().map(|panel| panel.show_area_mm2).sum::<f64>() * 1e-6;
        let discs = sanding_discs(&SandingDiscsInput { area_m2, steps: steps.len() as u32, area_a_disc_m2 })?;
        let grades: Vec<_> = steps.iter().map(|step| format!("P{}", step.p_grade)).collect();
        let name = format!("abrasive discs, {} each of {}", discs.discs_a_step, grades.join(", "));
        let count = f64::from(discs.discs);
        let asked_by = format!("{area_m2:.2} m2 of show faces");
        self.add("discs", CostKind::Consumable, name, asked_by, "piece", (count, count));
        Ok(())
    }

    fn filler(&mut self, plan: &Plan, buying: &BuyingSpec) -> Result<(), Error> {
        let Some((least_ml, greatest_ml)) = filler_ml(plan, buying.filler_waste_share)? else {
            self.not_determined.push("filler: give accuracy in the spec, how exact the cuts are");
            return Ok(());
        };
        if greatest_ml > 0.0 {
            let name = "filler mixed from dust of the same boards".to_owned();
            let asked_by = "share of the seams that the stack-up leaves to filler".to_owned();
            self.add("filler", CostKind::Consumable, name, asked_by, "mL", (least_ml, greatest_ml));
        }
        Ok(())
    }

    fn finish(&mut self, plan: &Plan) {
        let Some(finish) = &plan.finish else {
            self.not_determined.push("finish: give it in the spec, with a spread rate where none is published");
            return;
        };
        let range = (finish.quantity.least.needed_l, finish.quantity.most.needed_l);
        let asked_by = format!("{:.2} m2, {} coats", finish.area_m2, finish.coats);
        self.add("finish", CostKind::Consumable, finish.class.name().replace('_', " "), asked_by, "L", range);
    }
}

/// Cost of the priced lines with the other lines; nothing when there is neither.
fn cost(input: &ShoppingListInput, lines: &[ShoppingLine]) -> Result<Option<JobCost>, Error> {
    let mut priced = Vec::new();
    let mut faults = Vec::new();
    for (k, price) in input.prices.iter().enumerate() {
        if input.prices.iter().take(k).any(|earlier| earlier.line == price.line) {
            let allowed = Allowed::Text("one price for each line");
            let fault = Fault { code: ErrorCode::DuplicateField, field: "line", value: None, allowed, cure: "" };
            faults.push(Detail::from(fault).within(&format!("prices[{k}]")));
        }
        match lines.iter().find(|line| line.id == price.line) {
            Some(line) => priced.push(cost_line(line, price)),
            None => faults.push(no_such_line(k, price, lines)),
        }
    }
    Error::unless_empty(faults)?;
    priced.extend(input.other_lines.iter().cloned());
    if priced.is_empty() {
        return Ok(None);
    }
    job_cost(&JobCostInput { lines: priced, rates: input.rates }).map(Some)
}

fn cost_line(line: &ShoppingLine, price: &LinePrice) -> CostLine {
    CostLine {
        name: line.name.clone(),
        asked_by: line.asked_by.clone(),
        kind: line.kind,
        unit: line.unit.to_owned(),
        least_quantity: line.least_quantity,
        greatest_quantity: Some(line.greatest_quantity),
        package: price.package,
        least_price: price.least_price,
        greatest_price: price.greatest_price,
    }
}

#[cold]
fn no_such_line(k: usize, price: &LinePrice, lines: &[ShoppingLine]) -> Detail {
    let names = || lines.iter().map(|line| line.id.as_str());
    Detail {
        code: ErrorCode::UnknownName,
        path: format!("prices[{k}].line"),
        given: format!("\"{}\"", price.line),
        allowed: names().collect::<Vec<_>>().join(", "),
        cure: closest(&price.line, names()).map(|found| format!("did you mean {found}?")).unwrap_or_default(),
    }
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const SHOPPING_LIST: crate::json::Calculation = crate::json::calculation!(
    shopping_list: ShoppingListInput => ShoppingList, Document,
    "What to buy for a job, each line traced to what asked for it, with its cost where prices are given"
);

#[cfg(test)]
#[cfg(feature = "json")]
#[path = "shopping_tests.rs"]
mod tests;
