//! What both cut lists share: whole numbers for sizes and prices, and what is said about a layout.

use super::engine::watch::Watch;
use crate::error::{Detail, ErrorCode, Fault};

/// What the value of a layout measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum LayoutMeasure {
    /// Price of the stock that is cut, in the user's currency.
    Price,
    /// Length of the bars that are cut, mm.
    Length,
    /// Area of the boards that are cut, mm².
    Area,
    /// Worth of the parts that are cut, in the user's unit.
    Worth,
}

/// What is known about a layout.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum LayoutProof {
    /// Value and bound meet: there is no better layout.
    Optimal,
    /// A better layout may exist, but none better than the bound.
    WithinGap,
    /// Some parts found no place.
    Incomplete,
}

/// Why the search ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum LayoutEnd {
    /// There was nothing left to look for.
    Finished,
    /// All steps of the budget were spent.
    StepsSpent,
    /// The caller said stop.
    Stopped,
}

/// Value of a layout and what was proven about it.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct LayoutQuality {
    /// What the value measures.
    pub measure: LayoutMeasure,
    /// Value of the layout, in the unit of the measure.
    pub value: f64,
    /// No layout is better than this; absent while parts are missing.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub bound: Option<f64>,
    /// Distance between value and bound in percent of the larger one; absent while parts are missing.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub gap_pct: Option<f64>,
    /// What is known about the layout.
    pub proof: LayoutProof,
    /// Why the search ended.
    pub end: LayoutEnd,
    /// Steps of the search, in millions.
    pub steps_million: f64,
}

/// How many of a kind of stock are cut.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct StockUse {
    /// Name of the stock.
    pub stock: String,
    /// How many.
    pub count: u32,
}

/// Parts that found no place.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct MissingPart {
    /// Name of the part or the group.
    pub name: String,
    /// How many.
    pub count: u32,
}

/// Whole numbers in a millimetre.
const PER_MM: f64 = 1_000.0;
/// Whole numbers in a unit of price or worth.
pub(super) const PER_MONEY: f64 = 100.0;
/// Most parts of one list.
pub(super) const MOST_PARTS: u64 = 50_000;

/// A size in whole micrometres, rounded down: parts that fit always fit, and a row of parts reaches beyond its board by
/// less than a micrometre a part.
pub(super) fn whole(mm: f64) -> i64 {
    (mm * PER_MM + 1e-4).floor() as i64
}

/// The same, rounded up: for what must be kept clear.
pub(super) fn whole_up(mm: f64) -> i64 {
    (mm * PER_MM - 1e-4).ceil() as i64
}

pub(super) fn mm(whole: i64) -> f64 {
    whole as f64 / PER_MM
}

pub(super) fn money(value: f64) -> i64 {
    (value * PER_MONEY).round() as i64
}

/// What a search says about its layout. `scale` turns whole numbers into the unit of the measure.
pub(super) fn quality(
    (measure, scale): (LayoutMeasure, f64),
    (value, bound): (i64, i64),
    missing: bool,
    watch: &Watch<'_>,
) -> LayoutQuality {
    let (least, most) = (value.min(bound) as f64, value.max(bound) as f64);
    let proof = match (missing, value == bound) {
        (true, _) => LayoutProof::Incomplete,
        (_, true) => LayoutProof::Optimal,
        _ => LayoutProof::WithinGap,
    };
    let end = if watch.stopped() {
        LayoutEnd::Stopped
    } else if proof == LayoutProof::Optimal || watch.open() {
        LayoutEnd::Finished
    } else {
        LayoutEnd::StepsSpent
    };
    LayoutQuality {
        measure,
        value: value as f64 * scale,
        bound: (!missing).then_some(bound as f64 * scale),
        gap_pct: (!missing).then_some(if most > 0.0 { 100.0 * (most - least) / most } else { 0.0 }),
        proof,
        end,
        steps_million: watch.used() as f64 / 1e6,
    }
}

/// Steps of a budget given in millions.
pub(super) fn steps(million: f64) -> u64 {
    (million * 1e6) as u64
}

/// Refuses lists that are empty or too long, and prices that are given for some of the stock only.
pub(super) fn list_faults(stock: usize, parts: u64, priced: usize) -> Vec<Detail> {
    let mut faults: Vec<Detail> = Vec::new();
    if stock == 0 {
        faults.push(Fault::plain(ErrorCode::Inconsistent, "stock", "one kind of stock or more", "").into());
    }
    if parts == 0 {
        faults.push(Fault::plain(ErrorCode::Inconsistent, "parts", "one part or more", "").into());
    }
    if parts > MOST_PARTS {
        let cure = "cut the list in two";
        let allowed = crate::error::Allowed::Text("50 000 parts in all");
        faults.push(Fault::number(ErrorCode::OutOfRange, "parts", parts as f64, allowed, cure).into());
    }
    if priced != 0 && priced != stock {
        let allowed = "a price for every kind of stock, or for none";
        faults.push(Fault::plain(ErrorCode::Inconsistent, "stock", allowed, "").into());
    }
    faults
}

/// A part that no kind of stock can hold.
pub(super) fn fits_nothing(path: String, given: String, allowed: String) -> Detail {
    let cure = "join it from shorter or narrower pieces, or give larger stock".to_owned();
    Detail { code: ErrorCode::Inconsistent, path, given, allowed, cure }
}
