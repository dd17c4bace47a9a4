//! The catalogue of published fastener sizes: screws, lag screws, nails, inch and metric.
//!
//! Dimension standards and facts of the trade only. A fastener that is not in it, such as a structural screw with declared
//! strengths, is given to the joints by its own numbers; so is the head of a trim-head screw, which no standard has.

mod lengths;
mod tables;

use tables::{
    LAG_SCREWS, METRIC_COACH_SCREWS, METRIC_NAILS, METRIC_WOOD_SCREWS, NAILS, RING_SHANK_NAILS, THIN_BODY, TRIM_HEAD,
    WASHER_HEAD,
};

pub use lengths::{SoldLengthSeries, sold_lengths_mm};
pub(super) use lengths::{longest_sold_mm, shortest_sold_mm};

use crate::cite::{Evidence, Source};
use crate::error::Fault;
use crate::fasten::nds::{BendingYieldFastener, BendingYieldInput, bending_yield};
use crate::fasten::screws::WOOD_SCREWS;
use crate::units::factor::INCH_MM;

/// A family of fasteners of the catalogue.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum FastenerFamily {
    /// Full-body wood screw by gauge: shank as thick as the thread.
    WoodScrew,
    /// Production wood screw by gauge: body thinner than the thread, not the screw of the American standard's tables.
    ThinBodyWoodScrew,
    /// Tapping screw with hexagon washer head, inch sizes: hardened, wide under the head, for straps, cabinets and metal on
    /// wood.
    WasherHeadScrew,
    /// Trim-head screw by gauge, with a small head that hides: no standard has the head, so measure it. It holds little
    /// against being pulled through.
    TrimHeadScrew,
    /// Lag screw with hexagon head, inch sizes.
    LagScrew,
    /// Common wire nail.
    CommonNail,
    /// Box nail.
    BoxNail,
    /// Sinker nail.
    SinkerNail,
    /// Post-frame ring shank nail of hardened steel.
    PostFrameRingShankNail,
    /// Metric wood screw with full shank.
    MetricWoodScrew,
    /// Metric coach screw with hexagon head.
    MetricCoachScrew,
    /// Metric round wire nail.
    MetricNail,
}

/// One size of the catalogue; what the source does not give is absent.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct CatalogueFastener {
    /// Family.
    pub family: FastenerFamily,
    /// Size as the trade calls it, such as `No. 10`, `16d` or `3/8 in`.
    pub designation: &'static str,
    /// Nominal diameter, mm.
    pub nominal_diameter_mm: f64,
    /// Diameter at the thread root or between the rings, mm.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub root_diameter_mm: Option<f64>,
    /// Diameter of the body where it is thinner than the thread, mm.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub body_diameter_mm: Option<f64>,
    /// Diameter of a round head or of the washer of a washer head, width across the flats of a hexagon head, mm.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub head_size_mm: Option<f64>,
    /// Diameter of a countersunk head of 80 to 82 degrees, at its sharp edge, mm.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub countersunk_head_mm: Option<f64>,
    /// Length, mm; absent where the size is sold in many.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub length_mm: Option<f64>,
    /// Least length of the rings, mm.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub ring_length_mm: Option<f64>,
    /// Length of the tapered tip, mm.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub tip_length_mm: Option<f64>,
    /// Threads per inch.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub threads_per_inch: Option<f64>,
    /// Bending yield strength of low to medium carbon steel, of post-frame nails of hardened steel (NDS Table I1), MPa;
    /// absent where the steel is hardened by no rule of the table, and for metric sizes, whose strength their maker
    /// declares.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub bending_yield_mpa: Option<f64>,
    /// Standard of the dimensions.
    pub source: Source,
    /// How far the diameters and the length were checked; heads, tips and thread counts may be recalled in seen rows.
    pub evidence: Evidence,
}

/// Asks for the catalogue, or one family of it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct ListFastenersInput {
    /// Family; left out it is every family.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub family: Option<FastenerFamily>,
}

/// Sizes of the catalogue.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct FastenerList {
    /// Every size asked for, by family, thin ones first.
    pub rows: Vec<CatalogueFastener>,
}

/// The catalogue of published fastener sizes, whole or by family.
///
/// # Equation
/// A table. The thread of a wood screw is max(4 D, 2 L/3) long, of a lag screw L/2 + 1/2 in, at most 6 in, of a metric
/// screw about 0.6 L.
///
/// # Limits
/// Published dimension standards and facts of the trade. Fasteners with declared strengths are given to the joints by
/// their own numbers: `structural_screw` in `joint`.
///
/// # Errors
/// None.
///
/// # Source
/// ASME B18.6.1, B18.2.1 and B18.6.4, ASTM F1667, NDS 2018 Appendices I and L; metric core diameters and nail sizes recalled. Each row
/// says how far it was checked.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::{FastenerFamily, ListFastenersInput, list_fasteners};
/// let nails = list_fasteners(&ListFastenersInput { family: Some(FastenerFamily::CommonNail) })?;
/// assert!(nails.rows.iter().any(|nail| nail.designation == "16d" && nail.length_mm == Some(88.9)));
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn list_fasteners(input: &ListFastenersInput) -> Result<FastenerList, Fault> {
    let asked = all().filter(|row| input.family.is_none_or(|family| family == row.family));
    let rows = asked.map(|row| CatalogueFastener { bending_yield_mpa: tabulated_bending_mpa(&row), ..row }).collect();
    Ok(FastenerList { rows })
}

/// Every row of the catalogue.
fn all() -> impl Iterator<Item = CatalogueFastener> {
    let wood_screws = WOOD_SCREWS.iter().map(|row| CatalogueFastener {
        root_diameter_mm: Some(row.root_diameter_mm),
        head_size_mm: Some(row.head_diameter_mm),
        tip_length_mm: Some(2.0 * row.nominal_diameter_mm),
        threads_per_inch: Some(f64::from(row.threads_per_inch)),
        ..CatalogueFastener::plain(
            FastenerFamily::WoodScrew,
            row.size.designation(),
            row.nominal_diameter_mm,
            row.source,
            row.evidence,
        )
    });
    let tables = [
        THIN_BODY,
        WASHER_HEAD,
        TRIM_HEAD,
        LAG_SCREWS,
        NAILS,
        RING_SHANK_NAILS,
        METRIC_WOOD_SCREWS,
        METRIC_COACH_SCREWS,
        METRIC_NAILS,
    ];
    wood_screws.chain(tables.into_iter().flatten().copied())
}

impl CatalogueFastener {
    /// A row with a nominal diameter and nothing else.
    const fn plain(
        family: FastenerFamily,
        designation: &'static str,
        nominal_diameter_mm: f64,
        source: Source,
        evidence: Evidence,
    ) -> Self {
        Self {
            family,
            designation,
            nominal_diameter_mm,
            root_diameter_mm: None,
            body_diameter_mm: None,
            head_size_mm: None,
            countersunk_head_mm: None,
            length_mm: None,
            ring_length_mm: None,
            tip_length_mm: None,
            threads_per_inch: None,
            bending_yield_mpa: None,
            source,
            evidence,
        }
    }
}

/// Bending yield strength that NDS Table I1 has for a row.
fn tabulated_bending_mpa(row: &CatalogueFastener) -> Option<f64> {
    let fastener = match row.family {
        FastenerFamily::WoodScrew
        | FastenerFamily::CommonNail
        | FastenerFamily::BoxNail
        | FastenerFamily::SinkerNail => BendingYieldFastener::LowCarbon,
        FastenerFamily::LagScrew if row.nominal_diameter_mm >= 0.375 * INCH_MM - 1e-9 => BendingYieldFastener::Bolt,
        FastenerFamily::LagScrew => BendingYieldFastener::LowCarbon,
        FastenerFamily::PostFrameRingShankNail => BendingYieldFastener::HardenedNail,
        FastenerFamily::ThinBodyWoodScrew
        | FastenerFamily::WasherHeadScrew
        | FastenerFamily::TrimHeadScrew
        | FastenerFamily::MetricWoodScrew
        | FastenerFamily::MetricCoachScrew
        | FastenerFamily::MetricNail => return None,
    };
    let input = BendingYieldInput { fastener, diameter_mm: row.nominal_diameter_mm };
    bending_yield(&input).ok().map(|found| found.bending_yield_mpa)
}

/// Thread of a wood screw with its tip: two thirds of the length, at least 4 D (NDS Table L3).
pub(super) fn wood_screw_thread_mm(nominal_diameter_mm: f64, length_mm: f64) -> f64 {
    (4.0 * nominal_diameter_mm).max(2.0 * length_mm / 3.0).min(length_mm)
}

/// Thread of a lag screw with its tip: half the length and 1/2 in, at most 6 in; short ones have 1/4 in of shank (NDS Table L2).
pub(super) fn lag_thread_mm(length_mm: f64) -> f64 {
    let of_short_mm = (length_mm - 0.25 * INCH_MM).max(0.5 * length_mm);
    (0.5 * length_mm + 0.5 * INCH_MM).min(6.0 * INCH_MM).min(of_short_mm)
}

/// Tapered tip of a lag screw (NDS Table L2): that of its size, between sizes of the next thicker one.
pub(super) fn lag_tip_mm(nominal_diameter_mm: f64) -> f64 {
    let mut tabulated = LAG_SCREWS.iter().filter(|row| row.tip_length_mm.is_some());
    let next = tabulated.clone().find(|row| row.nominal_diameter_mm >= nominal_diameter_mm - 1e-9);
    next.or(tabulated.next_back()).and_then(|row| row.tip_length_mm).unwrap_or(nominal_diameter_mm)
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const LIST_FASTENERS: crate::json::Calculation = crate::json::calculation!(
    list_fasteners: ListFastenersInput => FastenerList, Document,
    "Catalogue of published fastener sizes: screws, lag screws and nails, inch and metric"
);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_row_is_a_fastener() {
        let rows = list_fasteners(&ListFastenersInput::default()).unwrap().rows;
        assert!(rows.len() > 80);
        for row in &rows {
            let name = format!("{:?} {}", row.family, row.designation);
            let d = row.nominal_diameter_mm;
            assert!((2.0..26.0).contains(&d), "{name}");
            assert!(row.root_diameter_mm.is_none_or(|root| root < d && root > 0.5 * d), "{name}");
            assert!(row.body_diameter_mm.is_none_or(|body| body < d), "{name}");
            assert!(row.head_size_mm.is_none_or(|head| head > 1.4 * d && head < 3.0 * d), "{name}");
            assert!(row.length_mm.is_none_or(|length| length > 10.0 * d && length < 60.0 * d), "{name}");
            assert!(row.ring_length_mm.is_none_or(|ring| ring < row.length_mm.unwrap()), "{name}");
        }
        let mut names: Vec<_> =
            rows.iter().map(|row| format!("{:?} {} {:?}", row.family, row.designation, row.length_mm)).collect();
        names.sort();
        names.dedup();
        assert_eq!(names.len(), rows.len());
    }

    // NDS 2018 Table I1: 90 000 psi for 0.162 in, 45 000 psi for lag screws from 3/8 in, 115 000 psi for hardened 0.177 in.
    #[test]
    fn strengths_are_those_of_the_table() {
        let psi = |family, designation| {
            let rows = list_fasteners(&ListFastenersInput { family: Some(family) }).unwrap().rows;
            let row = rows.iter().find(|row| row.designation == designation).unwrap();
            row.bending_yield_mpa.map(|mpa| (mpa / 0.006_894_757_293_168).round())
        };
        assert_eq!(psi(FastenerFamily::CommonNail, "16d"), Some(90_000.0));
        assert_eq!(psi(FastenerFamily::WoodScrew, "No. 10"), Some(80_000.0));
        assert_eq!(psi(FastenerFamily::LagScrew, "3/8 in"), Some(45_000.0));
        assert_eq!(psi(FastenerFamily::LagScrew, "1/4 in"), Some(70_000.0));
        assert_eq!(psi(FastenerFamily::PostFrameRingShankNail, "0.177 in"), Some(115_000.0));
        assert_eq!(psi(FastenerFamily::WasherHeadScrew, "No. 8"), None);
    }

    // A screw's gauge: 0.060 in and 0.013 in a number.
    #[test]
    fn trim_heads_are_numbered_like_wood_screws() {
        let rows = list_fasteners(&ListFastenersInput { family: Some(FastenerFamily::TrimHeadScrew) }).unwrap().rows;
        for row in rows {
            let number: f64 = row.designation.trim_start_matches("No. ").parse().unwrap();
            assert!((row.nominal_diameter_mm / 25.4 - (0.060 + 0.013 * number)).abs() < 1e-9);
            assert_eq!(row.head_size_mm, None);
        }
    }

    // ASTM F1667: the pennyweight of a common nail: 1 in plus a quarter inch a penny, from 6d to 10d (2 in at 6d).
    #[test]
    fn penny_lengths_follow_the_old_rule() {
        let nails = list_fasteners(&ListFastenersInput { family: Some(FastenerFamily::CommonNail) }).unwrap().rows;
        for nail in nails {
            let penny: f64 = nail.designation.trim_end_matches('d').parse().unwrap();
            if penny <= 10.0 {
                assert!((nail.length_mm.unwrap() / 25.4 - (0.5 + 0.25 * penny)).abs() < 1e-9, "{}", nail.designation);
            }
        }
    }

    // ASME B18.2.1: the root from the pitch, D − 2 × 0.385 × pitch, to the thousandths of the table, which are sometimes cut off.
    #[test]
    fn lag_roots_follow_from_the_pitch() {
        for row in LAG_SCREWS.iter().filter(|row| row.designation != "No. 10") {
            let pitch_mm = 25.4 / row.threads_per_inch.unwrap();
            let root_mm = row.nominal_diameter_mm - 2.0 * 0.385 * pitch_mm;
            assert!((root_mm - row.root_diameter_mm.unwrap()).abs() < 0.001 * 25.4, "{}", row.designation);
        }
    }

    #[test]
    fn a_tip_between_sizes_is_that_of_the_next_thicker_one() {
        assert!((lag_tip_mm(6.35) - 25.4 * 5.0 / 32.0).abs() < 1e-12);
        assert!((lag_tip_mm(7.0) - 25.4 * 3.0 / 16.0).abs() < 1e-12);
        assert!((lag_tip_mm(4.0) - 25.4 * 5.0 / 32.0).abs() < 1e-12);
        assert!((lag_tip_mm(25.4) - 25.4 * 11.0 / 16.0).abs() < 1e-12);
    }
}
