//! Moist air: saturation, dew point, and outdoor air heated in a room.

use super::sorption::{EquilibriumMoistureInput, equilibrium_moisture};
use crate::error::{Allowed, ErrorCode, Fault};
use crate::limits::{Limited, WOOD_HUMIDITY, limited};
use crate::numeric::bracketed_root;
use crate::numeric::real::{exp, ln};

/// Triple point of water, °C: below it the saturation over ice is the lower one.
const TRIPLE_POINT_C: f64 = 0.01;
/// Coldest place where a dew point is looked for, °C.
const COLDEST_C: f64 = -140.0;

/// What air below freezing is saturated over.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum SaturationSurface {
    /// Supercooled water, as weather services state humidity and dew point at every temperature.
    #[default]
    Water,
    /// Ice, as the tables of building services do below freezing; the dew point is then the frost point.
    Ice,
}

/// Saturation pressure, Pa.
pub(super) fn saturation_pa(temperature_c: f64, surface: SaturationSurface) -> f64 {
    let t = temperature_c + 273.15;
    let exponent = if surface == SaturationSurface::Ice && temperature_c <= TRIPLE_POINT_C {
        -5674.5359 / t
            + 6.392_524_7
            + t * (-0.009_677_843 + t * (6.221_570_1e-7 + t * (2.074_782_5e-9 - t * 9.484_024e-13)))
            + 4.163_501_9 * ln(t)
    } else {
        -5800.2206 / t
            + 1.391_499_3
            + t * (-0.048_640_239 + t * (4.176_476_8e-5 - t * 1.445_209_3e-8))
            + 6.545_967_3 * ln(t)
    };
    exp(exponent)
}

/// Air of a temperature and humidity.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<MoistAirInput>))]
pub struct MoistAirInput {
    /// Temperature of the air, °C.
    pub temperature_c: f64,
    /// Relative humidity, %.
    pub relative_humidity_pct: f64,
    /// What humidity and dew point below freezing refer to; water, as weather services do (WMO-No. 8, recalled).
    #[cfg_attr(feature = "json", serde(default))]
    pub surface: SaturationSurface,
}

limited!(MoistAirInput { temperature_c: AIR_TEMPERATURE, relative_humidity_pct: POSITIVE_PERCENT });

/// Vapour in air.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct MoistAir {
    /// Saturation pressure at the temperature, Pa.
    pub saturation_pressure_pa: f64,
    /// Vapour pressure, Pa.
    pub vapour_pressure_pa: f64,
    /// Dew point (frost point when it is stated over ice and lies below freezing), °C.
    pub dew_point_c: f64,
}

/// Dew point at which `vapour_pa`, at most the saturation pressure of `temperature_c`, saturates the air.
fn dew_point_c(vapour_pa: f64, temperature_c: f64, surface: SaturationSurface) -> f64 {
    let wanted = ln(vapour_pa);
    let excess = |t: f64| ln(saturation_pa(t, surface)) - wanted;
    // No change of sign is left at saturation itself, where the dew point is the temperature.
    bracketed_root(excess, COLDEST_C, temperature_c).unwrap_or(temperature_c)
}

/// Saturation pressure, vapour pressure and dew point of air of a temperature and relative humidity.
///
/// # Equation
/// ```text
/// ln p_s = c1/T + c2 + c3 T + c4 T² + c5 T³ + c6 T⁴ + c7 ln T        T in kelvin, p_s in Pa
/// over water: −5800.2206, 1.3914993, −0.048640239, 4.1764768e−5, −1.4452093e−8, 0, 6.5459673
/// over ice:   −5674.5359, 6.3925247, −0.009677843, 6.2215701e−7, 2.0747825e−9, −9.484024e−13, 4.1635019
/// p = h p_s(T)        p_s(T_d) = p
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | T, T_d | temperature, dew point | °C | `temperature_c`, `dew_point_c` |
/// | h | relative humidity as a share | – | `relative_humidity_pct` / 100 |
/// | p_s, p | saturation and vapour pressure | Pa | `saturation_pressure_pa`, `vapour_pressure_pa` |
///
/// # Limits
/// Water vapour alone; the pressure of dry air raises p_s by less than half a percent. Over water the equation is published
/// for 0 °C to 200 °C; below it is continued, within 0.4 % of the formula of WMO-No. 8 down to −20 °C. Over ice it is published
/// for −100 °C to 0 °C.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// Hyland-Wexler 1983 (recalled) — checked by `verification/psychrometrics` against an independent library.
///
/// # Examples
/// ```
/// use beamcraft_core::wood::{moist_air, MoistAirInput, SaturationSurface};
/// let surface = SaturationSurface::Water;
/// let room = moist_air(&MoistAirInput { temperature_c: 20.0, relative_humidity_pct: 50.0, surface })?;
/// assert!((room.saturation_pressure_pa - 2338.8).abs() < 0.1 && (room.dew_point_c - 9.27).abs() < 0.02);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn moist_air(input: &MoistAirInput) -> Result<MoistAir, Fault> {
    input.check_ranges()?;
    let saturation_pressure_pa = saturation_pa(input.temperature_c, input.surface);
    let vapour_pressure_pa = saturation_pressure_pa * (input.relative_humidity_pct / 100.0);
    let dew_point_c = dew_point_c(vapour_pressure_pa, input.temperature_c, input.surface);
    Ok(MoistAir { saturation_pressure_pa, vapour_pressure_pa, dew_point_c })
}

/// Outdoor air that comes into a heated room.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<HeatedAirHumidityInput>))]
pub struct HeatedAirHumidityInput {
    /// Outdoor temperature, °C.
    pub outdoor_temperature_c: f64,
    /// Outdoor dew point, °C.
    pub outdoor_dew_point_c: f64,
    /// Temperature that the room is heated to, °C; a room without cooling is never colder than outdoors.
    pub room_temperature_c: f64,
    /// Vapour pressure that people, plants, cooking or a humidifier add indoors, Pa; none when left out, the driest case.
    #[cfg_attr(feature = "json", serde(default))]
    pub vapour_gain_pa: f64,
    /// What the dew point below freezing refers to; water, as weather services do (WMO-No. 8, recalled).
    #[cfg_attr(feature = "json", serde(default))]
    pub surface: SaturationSurface,
}

limited!(HeatedAirHumidityInput {
    outdoor_temperature_c: DEW_POINT,
    outdoor_dew_point_c: DEW_POINT,
    room_temperature_c: ROOM_TEMPERATURE,
    vapour_gain_pa: VAPOUR_GAIN,
});

/// Humidity of a room that is aired from outdoors.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct HeatedAirHumidity {
    /// Vapour pressure outdoors, Pa.
    pub outdoor_vapour_pressure_pa: f64,
    /// Relative humidity outdoors, over the same surface as the dew point, %.
    pub outdoor_relative_humidity_pct: f64,
    /// Temperature indoors: the room's, or the outdoor temperature where that is higher, °C.
    pub indoor_temperature_c: f64,
    /// Vapour pressure indoors, Pa.
    pub indoor_vapour_pressure_pa: f64,
    /// Saturation pressure indoors over water, Pa.
    pub indoor_saturation_pressure_pa: f64,
    /// Relative humidity indoors, %.
    pub relative_humidity_pct: f64,
    /// Moisture content that wood comes to indoors, %.
    pub moisture_pct: f64,
}

const BELOW_AIR: Allowed = Allowed::Text("a dew point that is not above the outdoor temperature");
const BELOW_SATURATION: Allowed = Allowed::Text("at most 95 % relative humidity indoors");

/// Relative humidity indoors, and the moisture content of wood there, when outdoor air is heated to room temperature.
///
/// # Equation
/// ```text
/// p_out = p_s(T_d)        p_in = p_out + gain        h = p_in / p_s(T_in)        T_in = max(T_room, T_out)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | T_d, T_out | outdoor dew point and temperature | °C | `outdoor_dew_point_c`, `outdoor_temperature_c` |
/// | T_room, T_in | temperature heated to, temperature indoors | °C | `room_temperature_c`, `indoor_temperature_c` |
/// | p_out, p_in | vapour pressures | Pa | `outdoor_vapour_pressure_pa`, `indoor_vapour_pressure_pa` |
/// | h | relative humidity indoors as a share | – | `relative_humidity_pct` / 100 |
///
/// Heating at constant pressure adds no water and takes none away, so the vapour pressure stays while the saturation
/// pressure rises.
///
/// # Limits
/// A room aired often enough to follow the outdoor vapour pressure, without cooling or drying. Furniture and walls store water
/// and damp the swing of days, not of months. Saturation as in [`moist_air`], wood as in
/// [`equilibrium_moisture`](super::equilibrium_moisture).
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` for a dew point above the outdoor temperature, or when the room would be more
/// humid than 95 %.
///
/// # Source
/// Hyland-Wexler 1983 (recalled) for the saturation pressures; conservation of vapour pressure, derived in the theory pages;
/// FPL-GTR-282, Eq. 4-5 (seen) — checked by `verification/psychrometrics` against an independent library.
///
/// # Examples
/// ```
/// use beamcraft_core::wood::{heated_air_humidity, HeatedAirHumidityInput, SaturationSurface};
/// // A winter day at −5 °C, dew point −8 °C, in a room at 21 °C: dry air, and wood that follows it.
/// let winter = heated_air_humidity(&HeatedAirHumidityInput {
///     outdoor_temperature_c: -5.0,
///     outdoor_dew_point_c: -8.0,
///     room_temperature_c: 21.0,
///     vapour_gain_pa: 0.0,
///     surface: SaturationSurface::Water,
/// })?;
/// assert!(winter.relative_humidity_pct < 15.0 && winter.moisture_pct < 4.0);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn heated_air_humidity(input: &HeatedAirHumidityInput) -> Result<HeatedAirHumidity, Fault> {
    input.check_ranges()?;
    let (outdoor_c, dew_c, surface) = (input.outdoor_temperature_c, input.outdoor_dew_point_c, input.surface);
    if dew_c > outdoor_c {
        let (code, cure) = (ErrorCode::Inconsistent, "air holds no more water than saturation");
        return Err(Fault::number(code, "outdoor_dew_point_c", dew_c, BELOW_AIR, cure));
    }
    let outdoor_vapour_pressure_pa = saturation_pa(dew_c, surface);
    let indoor_temperature_c = input.room_temperature_c.max(outdoor_c);
    let indoor_vapour_pressure_pa = outdoor_vapour_pressure_pa + input.vapour_gain_pa;
    let indoor_saturation_pressure_pa = saturation_pa(indoor_temperature_c, SaturationSurface::Water);
    let relative_humidity_pct = 100.0 * indoor_vapour_pressure_pa / indoor_saturation_pressure_pa;
    if relative_humidity_pct > WOOD_HUMIDITY.high {
        let (code, cure) = (ErrorCode::Inconsistent, "heat more, or let less vapour into the room");
        return Err(Fault::number(code, "room_temperature_c", input.room_temperature_c, BELOW_SATURATION, cure));
    }
    let wood =
        equilibrium_moisture(&EquilibriumMoistureInput { temperature_c: indoor_temperature_c, relative_humidity_pct })?;
    Ok(HeatedAirHumidity {
        outdoor_vapour_pressure_pa,
        outdoor_relative_humidity_pct: 100.0 * outdoor_vapour_pressure_pa / saturation_pa(outdoor_c, surface),
        indoor_temperature_c,
        indoor_vapour_pressure_pa,
        indoor_saturation_pressure_pa,
        relative_humidity_pct,
        moisture_pct: wood.moisture_pct,
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::wood) const MOIST_AIR: crate::json::Calculation = crate::json::calculation!(
    moist_air: MoistAirInput => MoistAir, Typed,
    "Saturation pressure, vapour pressure and dew point of air"
);

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::wood) const HEATED_AIR_HUMIDITY: crate::json::Calculation = crate::json::calculation!(
    heated_air_humidity: HeatedAirHumidityInput => HeatedAirHumidity, Typed,
    "Humidity indoors, and moisture content of wood there, from outdoor temperature and dew point"
);

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const BOTH: [SaturationSurface; 2] = [SaturationSurface::Water, SaturationSurface::Ice];

    fn air(temperature_c: f64, relative_humidity_pct: f64, surface: SaturationSurface) -> MoistAir {
        moist_air(&MoistAirInput { temperature_c, relative_humidity_pct, surface }).expect("allowed")
    }

    fn heated(outdoor_c: f64, dew_c: f64, room_c: f64, vapour_gain_pa: f64) -> Result<HeatedAirHumidity, Fault> {
        heated_air_humidity(&HeatedAirHumidityInput {
            outdoor_temperature_c: outdoor_c,
            outdoor_dew_point_c: dew_c,
            room_temperature_c: room_c,
            vapour_gain_pa,
            surface: SaturationSurface::Water,
        })
    }

    #[test]
    fn supercooled_water_follows_the_weather_services() {
        // WMO-No. 8: e_w = 6.112 exp(17.62 t / (243.12 + t)) hPa (recalled).
        for t in [-20.0, -10.0, -5.0, 0.0, 10.0, 20.0] {
            let expected = 611.2 * exp(17.62 * t / (243.12 + t));
            assert!((saturation_pa(t, SaturationSurface::Water) / expected - 1.0).abs() < 0.004, "{t}");
        }
    }

    #[test]
    fn water_boils_at_about_a_hundred_degrees() {
        assert!((saturation_pa(100.0, SaturationSurface::Water) / 101_325.0 - 1.0).abs() < 0.002);
    }

    #[test]
    fn saturated_air_is_at_its_dew_point() {
        for surface in BOTH {
            assert_eq!(air(15.0, 100.0, surface).dew_point_c, 15.0);
            assert!((air(-15.0, 100.0, surface).dew_point_c + 15.0).abs() < 1e-12);
        }
    }

    #[test]
    fn air_that_cannot_be_is_refused() {
        assert_eq!(heated(5.0, 6.0, 20.0, 0.0).expect_err("too wet outdoors").field, "outdoor_dew_point_c");
        assert_eq!(heated(20.0, 19.9, 20.0, 0.0).expect_err("too wet indoors").code, ErrorCode::Inconsistent);
        assert_eq!(heated(5.0, f64::NAN, 20.0, 0.0).expect_err("no number").code, ErrorCode::NotFinite);
        assert!(heated(30.0, 15.0, 20.0, 0.0).is_ok_and(|hot| hot.indoor_temperature_c == 30.0));
    }

    proptest! {
        #[test]
        fn dew_point_and_saturation_are_inverse(t in -60.0_f64..=100.0, h in 0.1_f64..=100.0) {
            for surface in BOTH {
                let found = air(t, h, surface);
                prop_assert!(found.dew_point_c <= t);
                let back = saturation_pa(found.dew_point_c, surface);
                // At the triple point the published ice and water equations differ by 3e-8.
                prop_assert!((back / found.vapour_pressure_pa - 1.0).abs() < 1e-7);
            }
        }

        #[test]
        fn heating_dries_and_gains_moisten(out in -30.0_f64..=10.0, below in 0.0_f64..=10.0, room in 15.0_f64..=25.0) {
            let plain = heated(out, out - below, room, 0.0).expect("allowed");
            let warmer = heated(out, out - below, room + 1.0, 0.0).expect("allowed");
            prop_assert!(warmer.relative_humidity_pct < plain.relative_humidity_pct);
            prop_assert!(warmer.moisture_pct < plain.moisture_pct);
            let lived_in = heated(out, out - below, room, 100.0).expect("allowed");
            prop_assert!(lived_in.moisture_pct > plain.moisture_pct);
        }

        #[test]
        fn any_numbers_give_finite_answers_or_a_fault(a in any::<f64>(), b in any::<f64>(), c in any::<f64>(), d in any::<f64>()) {
            if let Ok(found) = heated(a, b, c, d) {
                prop_assert!(found.moisture_pct.is_finite() && found.outdoor_relative_humidity_pct.is_finite());
            }
            for surface in BOTH {
                if let Ok(found) = moist_air(&MoistAirInput { temperature_c: a, relative_humidity_pct: b, surface }) {
                    prop_assert!(found.dew_point_c.is_finite() && found.vapour_pressure_pa > 0.0);
                }
            }
        }
    }
}
