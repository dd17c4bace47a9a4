//! Parts from bars: strips, rails, cleats, anything that is only cut to length.

use super::engine::bars::{Bar, Fill, Piece, UNLIMITED, solve_bars};
use super::engine::watch::{Watch, Watcher};
use super::fit::{
    LayoutMeasure, LayoutQuality, MissingPart, PER_MONEY, StockUse, fits_nothing, list_faults, mm, money, quality,
    steps, whole,
};
use super::solve::{Flaw, Rect, Sheet, Task, solve};
use crate::error::{Error, ErrorCode, Fault, Result};
use crate::finding::{Caution, CautionText};
use crate::limits::{faults_at, limited};

/// A stretch of a bar that must not be used.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<BarDefect>))]
pub struct BarDefect {
    /// Where it begins, from the left end, mm.
    pub from_mm: f64,
    /// Where it ends, from the left end, mm.
    pub to_mm: f64,
}

limited!(BarDefect { from_mm: LENGTH, to_mm: LENGTH });

/// A kind of bar that can be cut.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<BarStock>))]
pub struct BarStock {
    /// Name of the stock.
    pub name: String,
    /// Length, mm.
    pub length_mm: f64,
    /// How many there are; left out for as many as are needed.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub count: Option<u32>,
    /// Price of one, in any currency, compared to a hundredth; left out for all kinds to save length instead of money.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub price: Option<f64>,
    /// Stretches that must not be used; none by default.
    #[cfg_attr(feature = "json", serde(default))]
    pub defects: Vec<BarDefect>,
}

limited!(BarStock { length_mm: STOCK_SIZE, count: COUNT, price: STOCK_PRICE });

/// Equal parts.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<BarPart>))]
pub struct BarPart {
    /// Name of the part.
    pub name: String,
    /// Length, mm.
    pub length_mm: f64,
    /// How many.
    #[cfg_attr(feature = "json", serde(default = "one"))]
    pub count: u32,
}

limited!(BarPart { length_mm: STOCK_SIZE, count: COUNT });

#[cfg(feature = "json")]
pub(super) fn one() -> u32 {
    1
}

/// A list of parts to be cut from bars.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<CutListBarsInput>))]
pub struct CutListBarsInput {
    /// The bars there are.
    pub stock: Vec<BarStock>,
    /// The parts wanted.
    pub parts: Vec<BarPart>,
    /// Kerf of the blade, mm.
    pub kerf_mm: f64,
    /// Cut off each end of a bar before anything else, its kerf included, mm.
    #[cfg_attr(feature = "json", serde(default))]
    pub trim_mm: f64,
    /// Steps that the search may take, in millions; a hundred million take about a second.
    #[cfg_attr(feature = "json", serde(default = "usual_steps"))]
    pub steps_million: f64,
}

limited!(CutListBarsInput { kerf_mm: KERF, trim_mm: SMALL_LENGTH, steps_million: SEARCH_STEPS });

/// About a second on a desk computer; a choice.
#[cfg(feature = "json")]
fn usual_steps() -> f64 {
    100.0
}

/// A part on its bar.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct BarPartPlace {
    /// Name of the part.
    pub name: String,
    /// Where it begins, from the left end of the bar, mm.
    pub from_mm: f64,
    /// Length, mm.
    pub length_mm: f64,
}

/// A bar with the parts that are cut from it.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct CutBar {
    /// Name of the stock.
    pub stock: String,
    /// How many bars are cut alike.
    pub alike: u32,
    /// Length of the bar, mm.
    pub length_mm: f64,
    /// The parts from the left end on, in the order of the cuts.
    pub parts: Vec<BarPartPlace>,
    /// Stretches that must not be used.
    pub defects: Vec<BarDefect>,
    /// Longest piece that is left over, mm.
    pub offcut_mm: f64,
}

/// A layout of parts on bars.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct CutListBars {
    /// Value, bound and what was proven.
    pub quality: LayoutQuality,
    /// How many of each kind of stock are cut.
    pub stock: Vec<StockUse>,
    /// The bars.
    pub bars: Vec<CutBar>,
    /// Parts that found no place, because the stock ran out.
    pub missing: Vec<MissingPart>,
    /// Standing cautions.
    pub cautions: Vec<CautionText>,
}

/// Which parts come from which bar, for the least price or length, and a bound on what any layout needs.
///
/// # Equation
/// ```text
/// least Σ price of the bars cut,   with in every clear stretch of a bar   Σ l + (n − 1) k ≤ L
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | l, n | lengths and number of the parts in the stretch | mm | `parts` |
/// | k | kerf between neighbours | mm | `kerf_mm` |
/// | L | length of the stretch: the bar without its trimmed ends, or up to a defect | mm | `stock`, `trim_mm` |
///
/// The last cut may run off the end of the bar. Cutting patterns are priced by a knapsack and chosen by a linear
/// programme, whose value is the bound; whole numbers come from dives and branching.
///
/// # Limits
/// Only lengths count: section, grain and face are the user's. Sizes are compared to a micrometre, prices to a hundredth.
/// With defects, or with more than 700 different lengths, the bound is that of the material alone.
///
/// # Errors
/// `out_of_range`, `not_finite`, each with its path; `inconsistent` for an empty list, prices for some of the stock
/// only, a defect that ends before it begins, and a part longer than any stretch of stock.
///
/// # Source
/// P. C. Gilmore, R. E. Gomory, "A linear programming approach to the cutting-stock problem", Operations Research 9
/// (1961), recalled; judged on published instances, see the page on layouts.
///
/// # Examples
/// ```
/// use beamcraft_core::layout::*;
/// let list = cut_list_bars(&CutListBarsInput {
///     stock: vec![BarStock { name: "2400".into(), length_mm: 2400.0, count: None, price: None, defects: vec![] }],
///     parts: vec![BarPart { name: "cleat".into(), length_mm: 797.0, count: 6 }],
///     kerf_mm: 3.2, trim_mm: 0.0, steps_million: 1.0,
/// })?;
/// // Three of 797 mm and two kerfs are 2397.4 mm.
/// assert_eq!((list.stock[0].count, list.quality.proof), (2, LayoutProof::Optimal));
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn cut_list_bars(input: &CutListBarsInput) -> Result<CutListBars> {
    cut_list_bars_with(input, None)
}

/// As [`cut_list_bars`], telling how far it has come; when `watcher` breaks off, the best layout so far is given.
///
/// # Errors
/// As [`cut_list_bars`].
pub fn cut_list_bars_with_progress(input: &CutListBarsInput, watcher: Watcher<'_>) -> Result<CutListBars> {
    cut_list_bars_with(input, Some(watcher))
}

fn cut_list_bars_with(input: &CutListBarsInput, watcher: Option<Watcher<'_>>) -> Result<CutListBars> {
    check(input)?;
    let measure = measure(input);
    let mut watch = Watch::new(steps(input.steps_million), measure.1, watcher);
    let mut list = if input.stock.iter().any(|bar| !bar.defects.is_empty()) {
        around_defects(input, measure, &mut watch)
    } else {
        clear(input, measure, &mut watch)
    };
    list.bars.sort_by_key(|bar| input.stock.iter().position(|stock| stock.name == bar.stock));
    watch.finish();
    Ok(list)
}

fn measure(input: &CutListBarsInput) -> (LayoutMeasure, f64) {
    if input.stock.iter().all(|bar| bar.price.is_some()) {
        (LayoutMeasure::Price, 1.0 / PER_MONEY)
    } else {
        (LayoutMeasure::Length, 1e-3)
    }
}

fn cost(bar: &BarStock) -> i64 {
    bar.price.map_or_else(|| whole(bar.length_mm), money)
}

/// Usable length with the kerf that the last cut may lose beyond the end.
fn usable(input: &CutListBarsInput, bar: &BarStock) -> i64 {
    let clear = bar.length_mm - 2.0 * input.trim_mm;
    if clear > 0.0 { whole(clear + input.kerf_mm) } else { 0 }
}

fn clear(input: &CutListBarsInput, measure: (LayoutMeasure, f64), watch: &mut Watch<'_>) -> CutListBars {
    let bars: Vec<Bar> = input
        .stock
        .iter()
        .map(|bar| Bar { length: usable(input, bar), cost: cost(bar), limit: bar.count.unwrap_or(UNLIMITED) })
        .collect();
    let pieces: Vec<Piece> = input
        .parts
        .iter()
        .map(|part| Piece { length: whole(part.length_mm + input.kerf_mm), demand: part.count })
        .collect();
    let answer = solve_bars(&bars, &pieces, watch);
    let cut = answer.fills.iter().map(|fill| cut_bar(input, fill)).collect();
    finish(input, measure, (answer.cost, answer.bound), cut, &answer.left, watch)
}

fn cut_bar(input: &CutListBarsInput, fill: &Fill) -> CutBar {
    let stock = input.stock.get(fill.bar);
    let length_mm = stock.map_or(0.0, |bar| bar.length_mm);
    let mut parts: Vec<BarPartPlace> = Vec::new();
    let mut at = whole(input.trim_mm);
    let mut kinds: Vec<(&BarPart, u32)> =
        fill.pieces.iter().filter_map(|(k, n)| Some((input.parts.get(*k as usize)?, *n))).collect();
    kinds.sort_by(|a, b| b.0.length_mm.total_cmp(&a.0.length_mm));
    for (part, n) in kinds {
        for _ in 0..n {
            parts.push(BarPartPlace { name: part.name.clone(), from_mm: mm(at), length_mm: part.length_mm });
            at += whole(part.length_mm + input.kerf_mm);
        }
    }
    let offcut_mm = (length_mm - input.trim_mm - mm(at)).max(0.0);
    CutBar {
        stock: stock.map(|bar| bar.name.clone()).unwrap_or_default(),
        alike: fill.times,
        length_mm,
        parts,
        defects: Vec::new(),
        offcut_mm,
    }
}

/// Bars with defects as boards one unit wide: the search for boards knows how to keep clear of flaws.
fn around_defects(input: &CutListBarsInput, measure: (LayoutMeasure, f64), watch: &mut Watch<'_>) -> CutListBars {
    let task = Task {
        sheets: input
            .stock
            .iter()
            .map(|bar| Sheet {
                w: usable(input, bar),
                h: 1,
                cost: cost(bar),
                limit: bar.count.unwrap_or(UNLIMITED),
                flaws: bar
                    .defects
                    .iter()
                    .map(|defect| Flaw::of((defect.from_mm - input.trim_mm, defect.to_mm - input.trim_mm), None))
                    .collect(),
            })
            .collect(),
        parts: input
            .parts
            .iter()
            .map(|part| Rect::fixed(whole(part.length_mm + input.kerf_mm), 1, part.count))
            .collect(),
        kerf: (whole(input.kerf_mm), 0),
        ..Task::default()
    };
    let answer = solve(&task, watch);
    let mut cut: Vec<CutBar> = Vec::new();
    for (sheet, root, alike) in &answer.sheets {
        let Some(stock) = input.stock.get(*sheet) else { continue };
        let laid = super::cuts::lay(root, (usable(input, stock), 1), (whole(input.kerf_mm), 0), &|_| None);
        let mut parts: Vec<BarPartPlace> = laid
            .places
            .iter()
            .filter_map(|place| {
                let part = input.parts.get(place.kind as usize)?;
                let from_mm = mm(whole(input.trim_mm) + place.x);
                Some(BarPartPlace { name: part.name.clone(), from_mm, length_mm: part.length_mm })
            })
            .collect();
        parts.sort_by(|a, b| a.from_mm.total_cmp(&b.from_mm));
        let offcut_mm = laid.free.iter().map(|rect| mm(rect.2)).fold(0.0, f64::max);
        cut.push(CutBar {
            stock: stock.name.clone(),
            alike: *alike,
            length_mm: stock.length_mm,
            parts,
            defects: stock.defects.clone(),
            offcut_mm,
        });
    }
    finish(input, measure, (answer.value, answer.bound), cut, &answer.left, watch)
}

fn finish(
    input: &CutListBarsInput,
    measure: (LayoutMeasure, f64),
    numbers: (i64, i64),
    bars: Vec<CutBar>,
    left: &[u32],
    watch: &Watch<'_>,
) -> CutListBars {
    let count_of = |name: &str| bars.iter().filter(|bar| bar.stock == name).map(|bar| bar.alike).sum::<u32>();
    let stock = input
        .stock
        .iter()
        .map(|bar| StockUse { stock: bar.name.clone(), count: count_of(&bar.name) })
        .filter(|used| used.count > 0)
        .collect();
    let missing: Vec<MissingPart> = input
        .parts
        .iter()
        .zip(left)
        .filter(|(_, left)| **left > 0)
        .map(|(part, left)| MissingPart { name: part.name.clone(), count: *left })
        .collect();
    CutListBars {
        quality: quality(measure, numbers, !missing.is_empty(), watch),
        stock,
        bars,
        missing,
        cautions: vec![Caution::Saw.into(), Caution::Dust.into()],
    }
}

fn check(input: &CutListBarsInput) -> Result<()> {
    let mut faults = faults_at("", input);
    for (k, bar) in input.stock.iter().enumerate() {
        faults.extend(faults_at(&format!("stock[{k}]"), bar));
        for (j, defect) in bar.defects.iter().enumerate() {
            let path = format!("stock[{k}].defects[{j}]");
            faults.extend(faults_at(&path, defect));
            if defect.to_mm < defect.from_mm {
                let fault = Fault::plain(ErrorCode::Inconsistent, "to_mm", "no less than from_mm", "");
                faults.push(crate::error::Detail::from(fault).within(&path));
            }
        }
    }
    super::faults::same_names(&mut faults, "stock", input.stock.iter().map(|bar| bar.name.as_str()));
    for (k, part) in input.parts.iter().enumerate() {
        faults.extend(faults_at(&format!("parts[{k}]"), part));
    }
    let count = input.parts.iter().map(|part| u64::from(part.count)).sum();
    let priced = input.stock.iter().filter(|bar| bar.price.is_some()).count();
    faults.extend(list_faults(input.stock.len(), count, priced));
    Error::unless_empty(faults)?;
    let longest = input.stock.iter().map(|bar| clear_length(input, bar)).fold(0.0, f64::max);
    let too_long = |part: &BarPart| whole(part.length_mm) > whole(longest);
    let faults = input.parts.iter().enumerate().filter(|(_, part)| too_long(part)).map(|(k, part)| {
        fits_nothing(
            format!("parts[{k}].length_mm"),
            format!("{} mm", part.length_mm),
            format!("up to {longest} mm, the longest clear stretch of stock"),
        )
    });
    Error::unless_empty(faults.collect())
}

/// Longest stretch of a bar without a defect, mm.
fn clear_length(input: &CutListBarsInput, bar: &BarStock) -> f64 {
    let mut defects: Vec<BarDefect> = bar.defects.clone();
    defects.sort_by(|a, b| a.from_mm.total_cmp(&b.from_mm));
    let (mut at, mut longest) = (input.trim_mm, 0.0_f64);
    let end = bar.length_mm - input.trim_mm;
    for defect in defects {
        longest = longest.max(defect.from_mm.min(end) - at);
        at = at.max(defect.to_mm);
    }
    longest.max(end - at)
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const CUT_LIST_BARS: crate::json::Calculation = crate::json::calculation!(
    cut_list_bars: CutListBarsInput => CutListBars, Document,
    "Which parts come from which bar for the least price or length, with a proven bound"
);

#[cfg(test)]
#[path = "bars_tests.rs"]
mod tests;
