//! Bending yield strength of fasteners.

use super::EDGE_MM;
use crate::cite::Evidence;
use crate::error::{Allowed, ErrorCode, Fault};
use crate::limits::{Limited, limited};
use crate::units::factor::{INCH_MM, PSI_MPA};

/// The steel group of a fastener in the table of bending yield strengths.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum BendingYieldFastener {
    /// Wood screw, common, box or sinker nail, spike; lag screw below 3/8 in: low to medium carbon steel.
    LowCarbon,
    /// Bolt or drift pin; lag screw of 3/8 in and more.
    Bolt,
    /// Nail of hardened steel, such as a post-frame ring shank nail.
    HardenedNail,
}

/// A fastener whose bending yield strength is looked up.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<BendingYieldInput>))]
pub struct BendingYieldInput {
    /// Steel group of the fastener.
    pub fastener: BendingYieldFastener,
    /// Nominal diameter, mm.
    pub diameter_mm: f64,
}

limited!(BendingYieldInput { diameter_mm: FASTENER_DIAMETER });

/// Bending yield strength of a fastener.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct BendingYield {
    /// Bending yield strength, MPa.
    pub bending_yield_mpa: f64,
    /// Largest diameter of the band that the strength belongs to, mm.
    pub band_up_to_mm: f64,
    /// How far this row of the table was checked.
    pub evidence: Evidence,
}

/// One band: diameters above the band before and up to this one.
struct Band {
    up_to_in: f64,
    psi: f64,
    evidence: Evidence,
}

const fn band(up_to_in: f64, psi: f64, evidence: Evidence) -> Band {
    Band { up_to_in, psi, evidence }
}

// NDS 2018 Appendix I, Table I1. The first number of each is the smallest diameter the table covers, in inches.
const LOW_CARBON: (f64, &[Band]) = (
    0.099,
    &[
        band(0.142, 100_000.0, Evidence::Seen),
        band(0.177, 90_000.0, Evidence::Seen),
        band(0.236, 80_000.0, Evidence::Seen),
        band(0.273, 70_000.0, Evidence::Seen),
        band(0.344, 60_000.0, Evidence::Recalled),
        band(0.375, 45_000.0, Evidence::Recalled),
    ],
);
const BOLT: (f64, &[Band]) = (0.375, &[band(1.0, 45_000.0, Evidence::Seen)]);
const HARDENED: (f64, &[Band]) = (
    0.120,
    &[
        band(0.142, 130_000.0, Evidence::Recalled),
        band(0.192, 115_000.0, Evidence::Recalled),
        band(0.207, 100_000.0, Evidence::Recalled),
    ],
);

/// Bending yield strength of a fastener by its diameter.
///
/// # Equation
/// A table: the strength of the band that the nominal diameter lies in.
///
/// # Limits
/// The table's diameters only; the appendix is not mandatory, and a maker's tested value may replace it. The screws of
/// the trade with hardened steel and a thin shank are not in it.
///
/// # Errors
/// `out_of_range`, `not_finite`; `no_published_value` for a diameter that the table does not cover.
///
/// # Source
/// NDS 2018 Appendix I, Table I1; each row says whether it was seen or is recalled.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::{BendingYieldFastener, BendingYieldInput, bending_yield};
/// let screw = BendingYieldInput { fastener: BendingYieldFastener::LowCarbon, diameter_mm: 0.19 * 25.4 };
/// assert!((bending_yield(&screw)?.bending_yield_mpa - 551.6).abs() < 0.1); // 80 000 psi
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn bending_yield(input: &BendingYieldInput) -> Result<BendingYield, Fault> {
    input.check_ranges()?;
    let (from_in, bands) = match input.fastener {
        BendingYieldFastener::LowCarbon => LOW_CARBON,
        BendingYieldFastener::Bolt => BOLT,
        BendingYieldFastener::HardenedNail => HARDENED,
    };
    let diameter_mm = input.diameter_mm;
    let found = bands.iter().find(|band| diameter_mm <= band.up_to_in * INCH_MM + EDGE_MM);
    match found {
        Some(band) if diameter_mm >= from_in * INCH_MM - EDGE_MM => Ok(BendingYield {
            bending_yield_mpa: band.psi * PSI_MPA,
            band_up_to_mm: band.up_to_in * INCH_MM,
            evidence: band.evidence,
        }),
        _ => Err(not_tabulated(input, from_in, bands)),
    }
}

#[cold]
fn not_tabulated(input: &BendingYieldInput, from_in: f64, bands: &[Band]) -> Fault {
    let allowed = Allowed::Range {
        low: from_in * INCH_MM,
        high: bands.last().map_or(from_in, |band| band.up_to_in) * INCH_MM,
        unit: "mm",
    };
    Fault::number(
        ErrorCode::NoPublishedValue,
        "diameter_mm",
        input.diameter_mm,
        allowed,
        "give the maker's bending yield strength instead",
    )
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const BENDING_YIELD: crate::json::Calculation = crate::json::calculation!(
    bending_yield: BendingYieldInput => BendingYield, Typed,
    "Bending yield strength of a nail, screw or bolt by its diameter"
);

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn strength_psi(fastener: BendingYieldFastener, diameter_in: f64) -> Result<f64, ErrorCode> {
        let input = BendingYieldInput { fastener, diameter_mm: diameter_in * 25.4 };
        bending_yield(&input).map(|found| (found.bending_yield_mpa / PSI_MPA).round()).map_err(|fault| fault.code)
    }

    #[test]
    fn the_edge_of_a_band_belongs_to_the_thinner_side() {
        use BendingYieldFastener::{Bolt, HardenedNail, LowCarbon};
        assert_eq!(strength_psi(LowCarbon, 0.142), Ok(100_000.0));
        assert_eq!(strength_psi(LowCarbon, 0.1421), Ok(90_000.0));
        assert_eq!(strength_psi(LowCarbon, 0.177), Ok(90_000.0));
        let typed = BendingYieldInput { fastener: LowCarbon, diameter_mm: 4.4958 };
        assert_eq!(bending_yield(&typed).unwrap().bending_yield_mpa, 90_000.0 * PSI_MPA);
        assert_eq!(strength_psi(LowCarbon, 0.375), Ok(45_000.0));
        assert_eq!(strength_psi(Bolt, 0.375), Ok(45_000.0));
        assert_eq!(strength_psi(HardenedNail, 0.207), Ok(100_000.0));
    }

    #[test]
    fn a_diameter_outside_the_table_has_no_published_value() {
        for (fastener, diameter_in) in [
            (BendingYieldFastener::LowCarbon, 0.092),
            (BendingYieldFastener::LowCarbon, 0.376),
            (BendingYieldFastener::Bolt, 0.3125),
            (BendingYieldFastener::HardenedNail, 0.113),
        ] {
            assert_eq!(strength_psi(fastener, diameter_in), Err(ErrorCode::NoPublishedValue));
        }
    }
    proptest! {
        #[test]
        fn hostile_numbers_give_a_fault_or_a_table_value(bits in any::<u64>(), fair in 1.0..25.4_f64, which in any::<bool>()) {
            let diameter_mm = if which { f64::from_bits(bits) } else { fair };
            for fastener in [
                BendingYieldFastener::LowCarbon,
                BendingYieldFastener::Bolt,
                BendingYieldFastener::HardenedNail,
            ] {
                if let Ok(found) = bending_yield(&BendingYieldInput { fastener, diameter_mm }) {
                    let psi = found.bending_yield_mpa / PSI_MPA;
                    prop_assert!(psi > 44_999.0 && psi < 130_001.0);
                    prop_assert!(diameter_mm <= found.band_up_to_mm + EDGE_MM);
                }
            }
        }
    }
}
