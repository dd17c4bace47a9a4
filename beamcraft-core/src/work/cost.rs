//! What a job comes to: lines with quantities and prices as ranges, hours, overhead, profit and tax.

use crate::error::{Allowed, Detail, Error, ErrorCode, Fault};
use crate::limits::{Limited, faults_at, limited};

/// What a line is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum CostKind {
    /// Wood, sheets, hardware: what stays in the work.
    Material,
    /// Glue, abrasives, finish, rags: what is used up.
    Consumable,
    /// Hours.
    Labour,
    /// Transport, hire, disposal.
    Other,
}

impl CostKind {
    const ALL: [Self; 4] = [Self::Material, Self::Consumable, Self::Labour, Self::Other];

    const fn name(self) -> &'static str {
        match self {
            Self::Material => "material",
            Self::Consumable => "consumable",
            Self::Labour => "labour",
            Self::Other => "other",
        }
    }
}

/// Something to pay for.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<CostLine>))]
pub struct CostLine {
    /// What it is.
    pub name: String,
    /// What asked for it, so that every line can be traced.
    #[cfg_attr(feature = "json", serde(default))]
    pub asked_by: String,
    /// What kind of cost.
    pub kind: CostKind,
    /// Unit of the quantity, in words: board foot, piece, litre, hour.
    pub unit: String,
    /// Least quantity needed.
    pub least_quantity: f64,
    /// Greatest quantity needed; the least when left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub greatest_quantity: Option<f64>,
    /// Sold only in whole multiples of this quantity; any quantity when left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub package: Option<f64>,
    /// Least price of one unit.
    pub least_price: f64,
    /// Greatest price of one unit; the least when left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub greatest_price: Option<f64>,
}

limited!(CostLine {
    least_quantity: QUANTITY,
    greatest_quantity: QUANTITY,
    package: PACKAGE,
    least_price: PRICE,
    greatest_price: PRICE,
});

/// What comes on top.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields, default))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<CostRates>))]
pub struct CostRates {
    /// Overhead on material and consumables, as a share on top: buying, storing, carrying.
    pub material_overhead: f64,
    /// Overhead on labour, as a share on top: rent, machines, the hours nobody pays.
    pub labour_overhead: f64,
    /// Profit and risk on everything, as a share on top.
    pub profit: f64,
    /// Tax on the price, as a share on top.
    pub tax: f64,
}

limited!(CostRates { material_overhead: ALLOWANCE, labour_overhead: ALLOWANCE, profit: ALLOWANCE, tax: ALLOWANCE });

/// A whole job.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct JobCostInput {
    /// The lines; 1 to 10 000.
    pub lines: Vec<CostLine>,
    /// What comes on top; nothing unless given.
    #[cfg_attr(feature = "json", serde(default))]
    pub rates: CostRates,
}

/// A line, reckoned.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct CostLineResult {
    /// What it is.
    pub name: String,
    /// What asked for it.
    pub asked_by: String,
    /// What kind of cost.
    pub kind: CostKind,
    /// Unit of the quantity.
    pub unit: String,
    /// Least quantity to buy, in whole packages.
    pub least_bought: f64,
    /// Greatest quantity to buy, in whole packages.
    pub greatest_bought: f64,
    /// Least cost.
    pub least_cost: f64,
    /// Greatest cost.
    pub greatest_cost: f64,
}

/// The sum of one kind.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct CostSubtotal {
    /// What kind of cost.
    pub kind: CostKind,
    /// Least sum.
    pub least_cost: f64,
    /// Greatest sum.
    pub greatest_cost: f64,
}

/// The cost of a job, from the best to the worst case.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct JobCost {
    /// Every line, in the order given.
    pub lines: Vec<CostLineResult>,
    /// Sums of each kind, before anything comes on top.
    pub subtotals: Vec<CostSubtotal>,
    /// Least sum of the lines.
    pub least_net: f64,
    /// Greatest sum of the lines.
    pub greatest_net: f64,
    /// Least overhead.
    pub least_overhead: f64,
    /// Greatest overhead.
    pub greatest_overhead: f64,
    /// Least profit.
    pub least_profit: f64,
    /// Greatest profit.
    pub greatest_profit: f64,
    /// Least tax.
    pub least_tax: f64,
    /// Greatest tax.
    pub greatest_tax: f64,
    /// Least price, everything included.
    pub least_total: f64,
    /// Greatest price, everything included.
    pub greatest_total: f64,
    /// The lines and sums as a table for a spreadsheet: comma-separated values by RFC 4180, one head line.
    pub csv: String,
}

const MOST_LINES: usize = 10_000;

/// What a job comes to, line by line and in all, as a range from the best to the worst case.
///
/// # Equation
/// ```text
/// cost = Σ ceil(quantity / package) package price
/// total = (net + overhead) (1 + profit) (1 + tax)
/// ```
/// Overhead is a share of material and consumables, and another of labour. Other costs bear none.
///
/// # Limits
/// A basis for a quote, in any one currency, not a quote: prices, hours and rates are the user's. Nothing is rounded.
///
/// # Errors
/// `out_of_range`, `not_finite`, `inconsistent` (a greatest value under the least), each with its place.
///
/// # Source
/// Arithmetic. Checked by `verification/cost`.
///
/// # Examples
/// ```
/// use beamcraft_core::work::{job_cost, CostKind, CostLine, CostRates, JobCostInput};
/// let oak = CostLine {
///     name: "oak 4/4".into(), asked_by: "panels".into(), kind: CostKind::Material, unit: "board foot".into(),
///     least_quantity: 11.5, greatest_quantity: Some(15.2), package: Some(1.0), least_price: 8.0, greatest_price: None,
/// };
/// let rates = CostRates { material_overhead: 0.1, ..CostRates::default() };
/// let cost = job_cost(&JobCostInput { lines: vec![oak], rates })?;
/// assert!((cost.least_total - 105.6).abs() < 1e-9 && (cost.greatest_total - 140.8).abs() < 1e-9);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn job_cost(input: &JobCostInput) -> Result<JobCost, Error> {
    check(input)?;
    let lines: Vec<_> = input.lines.iter().map(reckon).collect();
    let sum = |kind, cost: fn(&CostLineResult) -> f64| lines.iter().filter(|line| line.kind == kind).map(cost).sum();
    let subtotals: Vec<_> = CostKind::ALL
        .into_iter()
        .map(|kind| CostSubtotal {
            kind,
            least_cost: sum(kind, |line| line.least_cost),
            greatest_cost: sum(kind, |line| line.greatest_cost),
        })
        .collect();
    let least = Steps::of(&subtotals, &input.rates, |sum| sum.least_cost);
    let greatest = Steps::of(&subtotals, &input.rates, |sum| sum.greatest_cost);
    let csv = table(&lines, &least, &greatest);
    Ok(JobCost {
        lines,
        subtotals,
        least_net: least.net,
        greatest_net: greatest.net,
        least_overhead: least.overhead,
        greatest_overhead: greatest.overhead,
        least_profit: least.profit,
        greatest_profit: greatest.profit,
        least_tax: least.tax,
        greatest_tax: greatest.tax,
        least_total: least.total,
        greatest_total: greatest.total,
        csv,
    })
}

fn check(input: &JobCostInput) -> Result<(), Error> {
    let mut faults = faults_at("rates", &input.rates);
    let count = input.lines.len();
    if count == 0 || count > MOST_LINES {
        let allowed = Allowed::Text("1 to 10 000 lines");
        faults.push(Fault::number(ErrorCode::OutOfRange, "lines", count as f64, allowed, "").into());
    }
    for (k, line) in input.lines.iter().enumerate().take(MOST_LINES) {
        let path = format!("lines[{k}]");
        let found = line.range_faults();
        if found.is_empty() {
            faults.extend(disorder(line).into_iter().flatten().map(|fault| Detail::from(fault).within(&path)));
        } else {
            faults.extend(found.into_iter().map(|fault| Detail::from(fault).within(&path)));
        }
    }
    Error::unless_empty(faults)
}

/// Ranges the wrong way round.
fn disorder(line: &CostLine) -> [Option<Fault>; 2] {
    let order = |field, least: f64, greatest: Option<f64>, allowed| {
        let greatest = greatest.filter(|greatest| *greatest < least)?;
        Some(Fault::number(ErrorCode::Inconsistent, field, greatest, Allowed::Text(allowed), "swap the two"))
    };
    [
        order("greatest_quantity", line.least_quantity, line.greatest_quantity, "at least least_quantity"),
        order("greatest_price", line.least_price, line.greatest_price, "at least least_price"),
    ]
}

fn reckon(line: &CostLine) -> CostLineResult {
    let bought = |quantity: f64| match line.package {
        // A hair over whole packages is whole packages.
        Some(package) => (quantity / package - 1e-9).ceil().max(0.0) * package,
        None => quantity,
    };
    let least_bought = bought(line.least_quantity);
    let greatest_bought = bought(line.greatest_quantity.unwrap_or(line.least_quantity));
    CostLineResult {
        name: line.name.clone(),
        asked_by: line.asked_by.clone(),
        kind: line.kind,
        unit: line.unit.clone(),
        least_bought,
        greatest_bought,
        least_cost: least_bought * line.least_price,
        greatest_cost: greatest_bought * line.greatest_price.unwrap_or(line.least_price),
    }
}

/// From the net sum to the price.
struct Steps {
    net: f64,
    overhead: f64,
    profit: f64,
    tax: f64,
    total: f64,
}

impl Steps {
    fn of(subtotals: &[CostSubtotal], rates: &CostRates, cost: fn(&CostSubtotal) -> f64) -> Self {
        let share = |kind| match kind {
            CostKind::Material | CostKind::Consumable => rates.material_overhead,
            CostKind::Labour => rates.labour_overhead,
            CostKind::Other => 0.0,
        };
        let net: f64 = subtotals.iter().map(cost).sum();
        let overhead: f64 = subtotals.iter().map(|sum| cost(sum) * share(sum.kind)).sum();
        let profit = (net + overhead) * rates.profit;
        let tax = (net + overhead + profit) * rates.tax;
        Self { net, overhead, profit, tax, total: net + overhead + profit + tax }
    }
}

/// Everything as comma-separated values.
fn table(lines: &[CostLineResult], least: &Steps, greatest: &Steps) -> String {
    let head = "kind,name,asked by,unit,least quantity,greatest quantity,least cost,greatest cost";
    let mut rows = vec![head.to_owned()];
    rows.extend(lines.iter().map(|line| {
        let texts = [line.kind.name(), &line.name, &line.asked_by, &line.unit].map(quoted).join(",");
        format!("{texts},{},{},{},{}", line.least_bought, line.greatest_bought, line.least_cost, line.greatest_cost)
    }));
    let sums = [
        ("net", least.net, greatest.net),
        ("overhead", least.overhead, greatest.overhead),
        ("profit", least.profit, greatest.profit),
        ("tax", least.tax, greatest.tax),
        ("total", least.total, greatest.total),
    ];
    rows.extend(sums.map(|(name, least, greatest)| format!("sum,{name},,,,,{least},{greatest}")));
    rows.push(String::new());
    rows.join("\r\n")
}

/// A field of a table: in quotes where it holds what separates fields.
fn quoted(text: &str) -> String {
    if text.contains([',', '"', '\r', '\n']) { format!("\"{}\"", text.replace('"', "\"\"")) } else { text.to_owned() }
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const JOB_COST: crate::json::Calculation = crate::json::calculation!(
    job_cost: JobCostInput => JobCost, Document,
    "What a job comes to, line by line and in all, as a range"
);

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    fn line(kind: CostKind, quantity: f64, price: f64) -> CostLine {
        CostLine {
            name: "screws, 90 mm".to_owned(),
            asked_by: "wall half".to_owned(),
            kind,
            unit: "piece".to_owned(),
            least_quantity: quantity,
            greatest_quantity: None,
            package: None,
            least_price: price,
            greatest_price: None,
        }
    }

    #[test]
    fn whole_packages_are_bought() {
        let boxes = |quantity| CostLine { package: Some(25.0), ..line(CostKind::Material, quantity, 0.2) };
        let lines = vec![boxes(4.0), boxes(25.0), boxes(26.0), boxes(0.0)];
        let found = job_cost(&JobCostInput { lines, rates: CostRates::default() }).expect("allowed");
        assert_eq!(found.lines.iter().map(|line| line.least_bought).collect::<Vec<_>>(), [25.0, 25.0, 50.0, 0.0]);
        assert_relative_eq!(found.least_total, 20.0);
    }

    #[test]
    fn what_separates_fields_is_quoted_in_the_table() {
        let found = job_cost(&JobCostInput {
            lines: vec![CostLine { asked_by: "the \"wall\" half".to_owned(), ..line(CostKind::Material, 4.0, 0.5) }],
            rates: CostRates::default(),
        });
        let csv = found.expect("allowed").csv;
        assert!(csv.contains("material,\"screws, 90 mm\",\"the \"\"wall\"\" half\",piece,4,4,2,2\r\n"), "{csv}");
        assert_eq!(csv.lines().count(), 7);
    }

    #[test]
    fn every_fault_is_named_with_its_place() {
        let swapped = CostLine { greatest_price: Some(1.0), ..line(CostKind::Other, 1.0, 2.0) };
        let lines = vec![line(CostKind::Labour, f64::NAN, -1.0), swapped];
        let rates = CostRates { tax: -0.1, ..CostRates::default() };
        let fault = job_cost(&JobCostInput { lines, rates }).expect_err("refused");
        let paths: Vec<_> = fault.details().iter().map(|detail| detail.path.as_str()).collect();
        assert_eq!(paths, ["rates.tax", "lines[0].least_quantity", "lines[0].least_price", "lines[1].greatest_price"]);
        assert!(job_cost(&JobCostInput { lines: vec![], rates: CostRates::default() }).is_err());
    }

    proptest! {
        #[test]
        fn the_total_is_the_sum_of_its_steps_whatever_the_order(
            amounts in prop::collection::vec((0..4_usize, 0.0..100.0_f64, 0.0..50.0_f64), 1..8), a in 0.0..1.0_f64, b in 0.0..1.0_f64,
        ) {
            let rates = CostRates { material_overhead: a, labour_overhead: b, profit: b, tax: a };
            let mut lines: Vec<_> = amounts.iter().map(|(k, q, p)| line(CostKind::ALL[*k], *q, *p)).collect();
            let found = job_cost(&JobCostInput { lines: lines.clone(), rates }).expect("allowed");
            lines.reverse();
            let turned = job_cost(&JobCostInput { lines, rates }).expect("allowed");
            assert_relative_eq!(found.least_total, turned.least_total, max_relative = 1e-12);
            let sum = found.least_net + found.least_overhead + found.least_profit + found.least_tax;
            assert_relative_eq!(found.least_total, sum, max_relative = 1e-12);
            prop_assert_eq!(found.least_total, found.greatest_total);
        }

        #[test]
        fn any_numbers_give_a_finite_cost_or_an_error(a: f64, b: f64, c: f64, d in 0.0..10.0_f64) {
            let given = CostLine { package: Some(c), greatest_price: Some(d), ..line(CostKind::Material, a, b) };
            if let Ok(found) = job_cost(&JobCostInput { lines: vec![given], rates: CostRates::default() }) {
                prop_assert!(found.greatest_total.is_finite());
            }
        }
    }
}
