//! What a short penetration costs a tabulated lateral value.

use super::EDGE_MM;
use super::factors::DowelFastener;
use crate::error::{Allowed, ErrorCode, Fault};
use crate::limits::{Limited, limited};

/// A fastener whose lateral value was read from a table.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<ShortPenetrationInput>))]
pub struct ShortPenetrationInput {
    /// Kind of fastener.
    pub fastener: DowelFastener,
    /// Nominal diameter, mm.
    pub nominal_diameter_mm: f64,
    /// Penetration into the main member, mm: tip counted for wood screws and nails, not for lag screws.
    pub penetration_mm: f64,
    /// Lateral value of the table, N.
    pub tabulated_n: f64,
}

limited!(ShortPenetrationInput {
    nominal_diameter_mm: FASTENER_DIAMETER,
    penetration_mm: BEARING_LENGTH,
    tabulated_n: FORCE
});

/// A tabulated lateral value made good for a short penetration.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct ShortPenetration {
    /// Penetration that the table rests on: 8 D lag screws, 10 D others, mm.
    pub full_penetration_mm: f64,
    /// Least penetration: 4 D lag screws, 6 D others, mm.
    pub required_penetration_mm: f64,
    /// Share of the tabulated value that is left, at most 1.
    pub factor: f64,
    /// Lateral value for this penetration, before any adjustment factor, N.
    pub reference_n: f64,
}

/// Factor of a tabulated lateral value for a penetration shorter than the table's.
///
/// # Equation
/// ```text
/// lag screw:          p/(8 D)    4 D ≤ p < 8 D
/// wood screw, nail:   p/(10 D)   6 D ≤ p < 10 D        1 beyond
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | p | penetration | mm | `penetration_mm` |
/// | D | nominal diameter | mm | `nominal_diameter_mm` |
///
/// # Limits
/// For values read from the standard's lateral tables only. The yield equations take the real bearing length and know no
/// such factor: do not apply both.
///
/// # Errors
/// `out_of_range`, `not_finite`; `penetration_too_short` below the least penetration.
///
/// # Source
/// Footnotes of the NDS lateral tables, for nails seen in use, else recalled. Checked by `verification/nds_joint`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::{DowelFastener, ShortPenetrationInput, short_penetration};
/// let nail = ShortPenetrationInput {
///     fastener: DowelFastener::SmoothNail,
///     nominal_diameter_mm: 4.0,
///     penetration_mm: 30.0,
///     tabulated_n: 600.0,
/// };
/// assert_eq!(short_penetration(&nail)?.factor, 0.75);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn short_penetration(input: &ShortPenetrationInput) -> Result<ShortPenetration, Fault> {
    input.check_ranges()?;
    let (least, full) = if input.fastener == DowelFastener::LagScrew { (4.0, 8.0) } else { (6.0, 10.0) };
    let (required_penetration_mm, full_penetration_mm) =
        (least * input.nominal_diameter_mm, full * input.nominal_diameter_mm);
    if input.penetration_mm < required_penetration_mm - EDGE_MM {
        return Err(Fault::number(
            ErrorCode::PenetrationTooShort,
            "penetration_mm",
            input.penetration_mm,
            Allowed::Text("at least 4 diameters for lag screws, 6 for wood screws and nails"),
            "take a longer fastener",
        ));
    }
    let factor = (input.penetration_mm / full_penetration_mm).min(1.0);
    Ok(ShortPenetration {
        full_penetration_mm,
        required_penetration_mm,
        factor,
        reference_n: input.tabulated_n * factor,
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const SHORT_PENETRATION: crate::json::Calculation = crate::json::calculation!(
    short_penetration: ShortPenetrationInput => ShortPenetration, Typed,
    "Factor of a tabulated lateral value for a penetration shorter than the table's"
);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_factor_runs_from_the_least_to_the_full_penetration() {
        let at = |fastener, penetration_mm| {
            let input =
                ShortPenetrationInput { fastener, nominal_diameter_mm: 10.0, penetration_mm, tabulated_n: 1000.0 };
            short_penetration(&input).map(|found| found.reference_n).map_err(|fault| fault.code)
        };
        use DowelFastener::{LagScrew, RingShankNail, WoodScrew};
        assert_eq!(at(LagScrew, 40.0), Ok(500.0));
        assert_eq!(at(LagScrew, 80.0), Ok(1000.0));
        assert_eq!(at(LagScrew, 39.0), Err(ErrorCode::PenetrationTooShort));
        assert_eq!(at(WoodScrew, 60.0), Ok(600.0));
        assert_eq!(at(RingShankNail, 500.0), Ok(1000.0));
        assert_eq!(at(WoodScrew, 59.0), Err(ErrorCode::PenetrationTooShort));
        assert_eq!(at(WoodScrew, f64::NAN), Err(ErrorCode::NotFinite));
    }
}
