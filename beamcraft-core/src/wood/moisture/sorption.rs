//! Equilibrium moisture content by the handbook's sorption equation, and the humidity that belongs to it.

#[cfg(feature = "json")]
use crate::columns::{lane_choice, lanes};
use crate::error::{Allowed, ErrorCode, Fault};
use crate::limits::{Limited, WOOD_HUMIDITY, limited};
use crate::numeric::bracketed_root;

/// Temperatures of the handbook's table, °C (30 °F to 270 °F).
const TABLE_TEMPERATURE_C: (f64, f64) = (-1.12, 132.23);
/// Lowest relative humidity of the handbook's table, %.
const TABLE_HUMIDITY_PCT: f64 = 5.0;

/// Whether a point lies in the handbook's table, which was computed with the equation.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum SorptionTable {
    /// −1.1 °C to 132.2 °C and 5 % to 95 % relative humidity.
    Within,
    /// Colder or drier than the table: the equation is extended.
    Extended,
}

/// Air that wood lies in.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<EquilibriumMoistureInput>))]
pub struct EquilibriumMoistureInput {
    /// Temperature of the wood and the air at it, °C.
    pub temperature_c: f64,
    /// Relative humidity of the air, %.
    pub relative_humidity_pct: f64,
}

limited!(EquilibriumMoistureInput { temperature_c: WOOD_TEMPERATURE, relative_humidity_pct: WOOD_HUMIDITY });

/// Moisture content that wood comes to, with its two parts.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct EquilibriumMoisture {
    /// Equilibrium moisture content, % of the ovendry mass.
    pub moisture_pct: f64,
    /// Part held as dissolved water, first term of the equation, %.
    pub dissolved_pct: f64,
    /// Part held as hydrates, second term of the equation, %.
    pub hydrated_pct: f64,
    /// Whether the point lies in the handbook's table.
    pub table: SorptionTable,
}

/// Dissolved and hydrated water, %, at a relative humidity; both grow with it within the admitted temperatures.
#[inline(always)]
fn parts(t: f64, humidity_pct: f64) -> (f64, f64) {
    let w = 349.0 + 1.29 * t + 0.0135 * t * t;
    let k = 0.805 + 0.000736 * t - 0.000_002_73 * t * t;
    let k_1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
    let k_2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
    let a = k * (humidity_pct * 0.01);
    let (one, two) = (k_1 * a, k_1 * k_2 * a * a);
    // One division for the three of the equation, over their common denominator: divisions take most of the time.
    let (free, sites) = (1.0 - a, 1.0 + one + two);
    let common = 1800.0 / (w * free * sites);
    (common * sites * a, common * free * (one + 2.0 * two))
}

/// Equilibrium moisture content, %, of admitted arguments.
fn moisture(temperature_c: f64, relative_humidity_pct: f64) -> f64 {
    let (dissolved, hydrated) = parts(temperature_c, relative_humidity_pct);
    dissolved + hydrated
}

/// Moisture content that wood comes to in air of a temperature and relative humidity.
///
/// # Equation
/// ```text
/// EMC = (1800 / W) [ K h / (1 − K h) + (K1 K h + 2 K1 K2 K² h²) / (1 + K1 K h + K1 K2 K² h²) ]
/// W  = 349 + 1.29 T + 0.0135 T²              K  = 0.805 + 0.000736 T − 0.00000273 T²
/// K1 = 6.27 − 0.00938 T − 0.000303 T²        K2 = 1.91 + 0.0407 T − 0.000293 T²
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | T | temperature | °C | `temperature_c` |
/// | h | relative humidity as a share | – | `relative_humidity_pct` / 100 |
/// | EMC | equilibrium moisture content | % | `moisture_pct` |
///
/// # Limits
/// Table and equation stand for Sitka spruce midway between wetting and drying. Drying wood stays 1 % to 4 % moisture above
/// wetting wood at half humidity; species differ little at low and middle humidity and considerably at high humidity. A tenth
/// of a percent is no meaningful precision for a real board. Above 95 % no table supports the equation: refused.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// FPL-GTR-282, Eq. 4-5 (seen), Table 4-2 — checked by `verification/moisture`.
///
/// # Examples
/// ```
/// use beamcraft_core::wood::{equilibrium_moisture, EquilibriumMoistureInput};
/// let room = equilibrium_moisture(&EquilibriumMoistureInput { temperature_c: 21.1, relative_humidity_pct: 40.0 })?;
/// assert!((room.moisture_pct - 7.7).abs() < 0.05);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
#[inline]
pub fn equilibrium_moisture(input: &EquilibriumMoistureInput) -> Result<EquilibriumMoisture, Fault> {
    input.check_ranges()?;
    Ok(equilibrium(input))
}

/// [`equilibrium_moisture`] of numbers already within their ranges; without a branch.
#[inline(always)]
fn equilibrium(input: &EquilibriumMoistureInput) -> EquilibriumMoisture {
    let (temperature_c, humidity_pct) = (input.temperature_c, input.relative_humidity_pct);
    let (dissolved_pct, hydrated_pct) = parts(temperature_c, humidity_pct);
    let (low, high) = TABLE_TEMPERATURE_C;
    let within = (temperature_c >= low) & (temperature_c <= high) & (humidity_pct >= TABLE_HUMIDITY_PCT);
    EquilibriumMoisture {
        moisture_pct: dissolved_pct + hydrated_pct,
        dissolved_pct,
        hydrated_pct,
        table: if within { SorptionTable::Within } else { SorptionTable::Extended },
    }
}

#[cfg(feature = "json")]
lane_choice!(SorptionTable { Within, Extended });

#[cfg(feature = "json")]
lanes! {
    /// Works rows of [`equilibrium_moisture`] off.
    fn moisture_lanes for equilibrium_moisture: EquilibriumMoistureInput {
        temperature_c: f64,
        relative_humidity_pct: f64,
    } => EquilibriumMoisture {
        moisture_pct: f64,
        dissolved_pct: f64,
        hydrated_pct: f64,
        table: SorptionTable,
    },
    admits = EquilibriumMoistureInput::is_within_ranges, lane = equilibrium
}

/// Moisture content of wood whose air is asked for.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<HumidityForMoistureInput>))]
pub struct HumidityForMoistureInput {
    /// Temperature of the wood and the air at it, °C.
    pub temperature_c: f64,
    /// Moisture content that the wood is to keep, %.
    pub moisture_pct: f64,
}

limited!(HumidityForMoistureInput { temperature_c: WOOD_TEMPERATURE, moisture_pct: MOISTURE });

/// Humidity that keeps wood at its moisture content.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct HumidityForMoisture {
    /// Relative humidity, %.
    pub relative_humidity_pct: f64,
    /// Equilibrium moisture content at 95 % relative humidity and this temperature, the most that can be asked for, %.
    pub greatest_moisture_pct: f64,
}

const REACHABLE: Allowed = Allowed::Text("at most the equilibrium moisture content at 95 % relative humidity");

/// Relative humidity that keeps wood at a moisture content: the inverse of [`equilibrium_moisture`].
///
/// # Equation
/// ```text
/// EMC(T, h) = moisture content, solved for h between 0 and 0.95 by bracketing; EMC rises with h, so there is one root
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | T | temperature | °C | `temperature_c` |
/// | h | relative humidity as a share | – | `relative_humidity_pct` / 100 |
///
/// # Limits
/// Those of [`equilibrium_moisture`].
///
/// # Errors
/// `out_of_range`, also for a moisture content that 95 % relative humidity does not reach; `not_finite`.
///
/// # Source
/// FPL-GTR-282, Eq. 4-5 (seen) — checked by `verification/moisture`.
///
/// # Examples
/// ```
/// use beamcraft_core::wood::{humidity_for_moisture, HumidityForMoistureInput};
/// let air = humidity_for_moisture(&HumidityForMoistureInput { temperature_c: 20.0, moisture_pct: 8.0 })?;
/// assert!((air.relative_humidity_pct - 41.8).abs() < 0.05);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn humidity_for_moisture(input: &HumidityForMoistureInput) -> Result<HumidityForMoisture, Fault> {
    input.check_ranges()?;
    let (temperature_c, wanted) = (input.temperature_c, input.moisture_pct);
    let greatest_moisture_pct = moisture(temperature_c, WOOD_HUMIDITY.high);
    let excess = |humidity_pct: f64| moisture(temperature_c, humidity_pct) - wanted;
    match bracketed_root(excess, WOOD_HUMIDITY.low, WOOD_HUMIDITY.high) {
        Some(relative_humidity_pct) => Ok(HumidityForMoisture { relative_humidity_pct, greatest_moisture_pct }),
        None => {
            let (code, cure) = (ErrorCode::OutOfRange, "let the wood dry");
            Err(Fault::number(code, "moisture_pct", wanted, REACHABLE, cure))
        }
    }
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::wood) const EQUILIBRIUM_MOISTURE: crate::json::Calculation = crate::json::calculation!(
    equilibrium_moisture: EquilibriumMoistureInput => EquilibriumMoisture, Typed,
    "Moisture content that wood comes to in air of a temperature and humidity", lanes = moisture_lanes
);

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::wood) const HUMIDITY_FOR_MOISTURE: crate::json::Calculation = crate::json::calculation!(
    humidity_for_moisture: HumidityForMoistureInput => HumidityForMoisture, Typed,
    "Relative humidity that keeps wood at a moisture content"
);

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn emc(temperature_c: f64, relative_humidity_pct: f64) -> f64 {
        let input = EquilibriumMoistureInput { temperature_c, relative_humidity_pct };
        equilibrium_moisture(&input).expect("allowed").moisture_pct
    }

    /// The handbook's second form of the same equation, with T in °F: a separately rounded fit.
    fn emc_fahrenheit(t: f64, h: f64) -> f64 {
        let w = 330.0 + 0.452 * t + 0.00415 * t * t;
        let k = 0.791 + 0.000463 * t - 0.000_000_844 * t * t;
        let k_1 = 6.34 + 0.000775 * t - 0.0000935 * t * t;
        let k_2 = 1.09 + 0.0284 * t - 0.0000904 * t * t;
        let a = k * h;
        let hydrated = (k_1 * a + 2.0 * k_1 * k_2 * a * a) / (1.0 + k_1 * a + k_1 * k_2 * a * a);
        1800.0 / w * (a / (1.0 - a) + hydrated)
    }

    #[test]
    fn both_unit_forms_of_the_handbook_agree() {
        for fahrenheit in (30..=140).step_by(5) {
            for humidity in (5..=95).step_by(5) {
                let (t, h) = (f64::from(fahrenheit), f64::from(humidity));
                // 0.013 % moisture is the largest difference of the two rounded fits there.
                assert!((emc((t - 32.0) / 1.8, h) - emc_fahrenheit(t, h / 100.0)).abs() < 0.0135, "{t} {h}");
            }
        }
    }

    #[test]
    fn dry_air_leaves_no_water() {
        assert_eq!((emc(-20.0, 0.0), emc(21.0, 0.0), emc(132.2, 0.0)), (0.0, 0.0, 0.0));
    }

    #[test]
    fn what_no_table_supports_is_refused() {
        let at = |temperature_c, relative_humidity_pct| {
            equilibrium_moisture(&EquilibriumMoistureInput { temperature_c, relative_humidity_pct })
        };
        assert_eq!(at(20.0, 95.1).expect_err("too humid").code, ErrorCode::OutOfRange);
        assert_eq!(at(f64::NAN, 50.0).expect_err("no number").field, "temperature_c");
        assert_eq!(at(0.0, 4.9).expect("allowed").table, SorptionTable::Extended);
        assert_eq!(at(-1.1, 5.0).expect("allowed").table, SorptionTable::Within);
        let input = HumidityForMoistureInput { temperature_c: 60.0, moisture_pct: 25.0 };
        assert_eq!(humidity_for_moisture(&input).expect_err("too wet").field, "moisture_pct");
    }

    proptest! {
        #[test]
        fn more_humid_air_makes_wetter_wood(t in -20.0_f64..=132.2, h in 0.0_f64..=94.9, step in 1e-3_f64..=0.1) {
            prop_assert!(emc(t, h + step) > emc(t, h));
        }

        #[test]
        fn the_inverse_comes_back(t in -20.0_f64..=132.2, h in 0.0_f64..=95.0) {
            let input = HumidityForMoistureInput { temperature_c: t, moisture_pct: emc(t, h) };
            let back = humidity_for_moisture(&input).expect("reachable").relative_humidity_pct;
            // Near 132 °C the curve is almost flat, so that the digits of the moisture content decide.
            let tolerance = if t < 100.0 { 1e-10 } else { 1e-7 };
            prop_assert!((back - h).abs() < tolerance, "{} {}", back, h);
        }

        #[test]
        fn any_numbers_give_finite_answers_or_a_fault(t in any::<f64>(), h in any::<f64>()) {
            let input = EquilibriumMoistureInput { temperature_c: t, relative_humidity_pct: h };
            if let Ok(found) = equilibrium_moisture(&input) {
                prop_assert!(found.moisture_pct.is_finite() && found.moisture_pct >= 0.0);
            }
            let _ = humidity_for_moisture(&HumidityForMoistureInput { temperature_c: t, moisture_pct: h });
        }
    }
}
