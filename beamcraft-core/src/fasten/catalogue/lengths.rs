//! Lengths that screws are sold in.

use crate::fasten::screws::ScrewSize;

/// A series of lengths that screws are sold in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum SoldLengthSeries {
    /// Inches: by eighths to 1 in, by quarters to 3 in, by halves to 5 in, then 6, 7, 8, 10 and 12 in.
    Inch,
    /// Millimetres: by 5 to 50 (from 20), by 10 to 100, by 20 to 240, then 260, 280 and 300.
    Metric,
}

// Common practice, no source; in eighths of an inch.
const EIGHTHS: &[u32] = &[4, 5, 6, 7, 8, 10, 12, 14, 16, 18, 20, 22, 24, 28, 32, 36, 40, 48, 56, 64, 80, 96];
const METRIC_MM: &[u32] =
    &[20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 120, 140, 160, 180, 200, 220, 240, 260, 280, 300];

/// Lengths of a series, short ones first, mm (common practice of the trade, no source).
pub fn sold_lengths_mm(series: SoldLengthSeries) -> impl Iterator<Item = f64> {
    let (lengths, unit_mm) = match series {
        SoldLengthSeries::Inch => (EIGHTHS, 25.4 / 8.0),
        SoldLengthSeries::Metric => (METRIC_MM, 1.0),
    };
    lengths.iter().map(move |length| f64::from(*length) * unit_mm)
}

/// Shortest and longest length that a gauge is commonly sold in, eighths of an inch (common practice, no source).
const fn sold_eighths(size: ScrewSize) -> (u32, u32) {
    match size {
        ScrewSize::No6 | ScrewSize::No7 => (4, 20),
        ScrewSize::No8 | ScrewSize::No9 => (4, 28),
        ScrewSize::No10 => (5, 32),
        ScrewSize::No12 => (7, 36),
        ScrewSize::No14 => (8, 48),
        ScrewSize::No16 | ScrewSize::No18 => (10, 48),
        ScrewSize::No20 | ScrewSize::No24 => (14, 48),
        ScrewSize::Own => (4, 96),
    }
}

/// Longest length that a gauge is commonly sold in, mm.
pub(in crate::fasten) fn longest_sold_mm(size: ScrewSize) -> f64 {
    f64::from(sold_eighths(size).1) * (25.4 / 8.0)
}

/// Shortest length that a gauge is commonly sold in, mm.
pub(in crate::fasten) fn shortest_sold_mm(size: ScrewSize) -> f64 {
    f64::from(sold_eighths(size).0) * (25.4 / 8.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_rise() {
        for series in [SoldLengthSeries::Inch, SoldLengthSeries::Metric] {
            let lengths: Vec<_> = sold_lengths_mm(series).collect();
            assert!(lengths.len() > 20 && lengths.windows(2).all(|pair| pair[0] < pair[1]));
        }
        assert!(sold_lengths_mm(SoldLengthSeries::Inch).any(|length| (length - 31.75).abs() < 1e-9));
    }
}
