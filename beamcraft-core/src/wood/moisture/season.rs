//! Twelve months of a room, and the moisture content that wood comes to in each.

use super::air::{HeatedAirHumidityInput, SaturationSurface, heated_air_humidity};
use super::sorption::{EquilibriumMoistureInput, SorptionTable, equilibrium_moisture};
use crate::error::{Detail, Error, ErrorCode, Fault, Result};
use crate::limits::{faults_at, limited};
use crate::numeric::compensated_sum;

/// Months of a year.
const MONTHS: usize = 12;

/// Mean conditions of a room in one month.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<IndoorMonth>))]
pub struct IndoorMonth {
    /// Mean temperature of the room, °C.
    pub temperature_c: f64,
    /// Mean relative humidity of the room, %.
    pub relative_humidity_pct: f64,
}

limited!(IndoorMonth { temperature_c: WOOD_TEMPERATURE, relative_humidity_pct: WOOD_HUMIDITY });

/// A year of conditions measured or known indoors.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct IndoorYear {
    /// Twelve months, January first.
    pub months: Vec<IndoorMonth>,
}

/// Mean conditions outdoors in one month.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<OutdoorMonth>))]
pub struct OutdoorMonth {
    /// Mean outdoor temperature, °C.
    pub temperature_c: f64,
    /// Mean outdoor dew point, °C.
    pub dew_point_c: f64,
}

limited!(OutdoorMonth { temperature_c: DEW_POINT, dew_point_c: DEW_POINT });

/// A year of outdoor air, heated in the room.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<OutdoorYear>))]
pub struct OutdoorYear {
    /// Twelve months, January first.
    pub months: Vec<OutdoorMonth>,
    /// Temperature that the room is heated to, °C; a room without cooling is never colder than outdoors.
    pub room_temperature_c: f64,
    /// Vapour pressure that people, plants, cooking or a humidifier add indoors, Pa; none when left out, the driest case.
    #[cfg_attr(feature = "json", serde(default))]
    pub vapour_gain_pa: f64,
    /// What a dew point below freezing refers to; water, as weather services do (WMO-No. 8, recalled).
    #[cfg_attr(feature = "json", serde(default))]
    pub surface: SaturationSurface,
}

limited!(OutdoorYear { room_temperature_c: ROOM_TEMPERATURE, vapour_gain_pa: VAPOUR_GAIN });

/// Where the air of the year is known.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum YearClimate {
    /// In the room itself.
    Indoor(IndoorYear),
    /// Outdoors, by the weather service; the room heats it.
    Outdoor(OutdoorYear),
}

/// A year in a room.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct SeasonalMoistureInput {
    /// Air of the year.
    pub climate: YearClimate,
}

/// One month of the year indoors.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct MonthMoisture {
    /// Month, 1 to 12.
    pub month: u32,
    /// Temperature indoors, °C.
    pub temperature_c: f64,
    /// Relative humidity indoors, %.
    pub relative_humidity_pct: f64,
    /// Moisture content that wood comes to, %.
    pub moisture_pct: f64,
    /// Whether the point lies in the handbook's table.
    pub table: SorptionTable,
}

/// The year indoors, with its driest and wettest months.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SeasonalMoisture {
    /// Twelve months, January first.
    pub months: Vec<MonthMoisture>,
    /// Driest month, 1 to 12; the first of several.
    pub driest_month: u32,
    /// Moisture content in the driest month, %.
    pub driest_pct: f64,
    /// Wettest month, 1 to 12; the first of several.
    pub wettest_month: u32,
    /// Moisture content in the wettest month, %.
    pub wettest_pct: f64,
    /// Mean of the twelve months, %.
    pub mean_pct: f64,
    /// Difference between the wettest and the driest month, % moisture.
    pub swing_pct: f64,
}

/// Moisture content that wood comes to in each month of a year, and the driest and wettest of them.
///
/// # Equation
/// ```text
/// indoor air:   EMC(T, h) month by month
/// outdoor air:  T_in = max(T_room, T_out),  h = (p_s(T_d) + gain) / p_s(T_in),  EMC(T_in, h)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | T, h | temperature and relative humidity indoors | °C, – | `temperature_c`, `relative_humidity_pct` |
/// | T_out, T_d | outdoor temperature and dew point | °C | `temperature_c`, `dew_point_c` |
/// | T_room | temperature heated to | °C | `room_temperature_c` |
///
/// # Limits
/// The balance of each month's mean. A finished board of furniture thickness lags behind and swings less, so that the driest and
/// wettest months bound its moisture content. No published rate is used for the lag. Otherwise as
/// [`equilibrium_moisture`](super::equilibrium_moisture) and [`heated_air_humidity`](super::heated_air_humidity).
///
/// # Errors
/// `out_of_range`, `not_finite`, `inconsistent`, each with its month; `inconsistent` unless there are twelve.
///
/// # Source
/// FPL-GTR-282, Eq. 4-5 (seen); Hyland-Wexler 1983 (recalled) — checked by `verification/psychrometrics`.
///
/// # Examples
/// ```
/// use beamcraft_core::wood::{seasonal_moisture, IndoorMonth, IndoorYear, SeasonalMoistureInput, YearClimate};
/// let humidity = [25.0, 25.0, 30.0, 35.0, 45.0, 55.0, 60.0, 60.0, 50.0, 40.0, 30.0, 25.0];
/// let months = humidity.map(|relative_humidity_pct| IndoorMonth { temperature_c: 21.1, relative_humidity_pct });
/// let climate = YearClimate::Indoor(IndoorYear { months: months.to_vec() });
/// let year = seasonal_moisture(&SeasonalMoistureInput { climate })?;
/// assert_eq!((year.driest_month, year.wettest_month), (1, 7));
/// assert!((year.driest_pct - 5.4).abs() < 0.05 && (year.wettest_pct - 11.0).abs() < 0.05);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn seasonal_moisture(input: &SeasonalMoistureInput) -> Result<SeasonalMoisture> {
    let months = match &input.climate {
        YearClimate::Indoor(year) => indoor_months(year).map_err(|error| error.within("climate.indoor"))?,
        YearClimate::Outdoor(year) => outdoor_months(year).map_err(|error| error.within("climate.outdoor"))?,
    };
    let (mut driest, mut wettest) = ((0, f64::MAX), (0, f64::MIN));
    for month in &months {
        if month.moisture_pct < driest.1 {
            driest = (month.month, month.moisture_pct);
        }
        if month.moisture_pct > wettest.1 {
            wettest = (month.month, month.moisture_pct);
        }
    }
    Ok(SeasonalMoisture {
        driest_month: driest.0,
        driest_pct: driest.1,
        wettest_month: wettest.0,
        wettest_pct: wettest.1,
        mean_pct: compensated_sum(months.iter().map(|month| month.moisture_pct)) / MONTHS as f64,
        swing_pct: wettest.1 - driest.1,
        months,
    })
}

/// One month indoors; months are numbered from zero here.
fn month(k: usize, temperature_c: f64, relative_humidity_pct: f64) -> core::result::Result<MonthMoisture, Fault> {
    let wood = equilibrium_moisture(&EquilibriumMoistureInput { temperature_c, relative_humidity_pct })?;
    let (month, moisture_pct, table) = (k as u32 + 1, wood.moisture_pct, wood.table);
    Ok(MonthMoisture { month, temperature_c, relative_humidity_pct, moisture_pct, table })
}

/// Twelve answers, or every fault of the months.
fn twelve<T>(
    months: &[T],
    answer: impl Fn(usize, &T) -> core::result::Result<MonthMoisture, Fault>,
) -> Result<Vec<MonthMoisture>> {
    if months.len() != MONTHS {
        return Err(Error::one(Detail {
            code: ErrorCode::Inconsistent,
            path: "months".to_owned(),
            given: format!("{} months", months.len()),
            allowed: "twelve months, January first".to_owned(),
            cure: String::new(),
        }));
    }
    let mut faults = Vec::new();
    let mut found = Vec::with_capacity(MONTHS);
    for (k, given) in months.iter().enumerate() {
        match answer(k, given) {
            Ok(one) => found.push(one),
            Err(fault) => faults.push(Detail::from(fault).within(&format!("months[{k}]"))),
        }
    }
    Error::unless_empty(faults)?;
    Ok(found)
}

fn indoor_months(year: &IndoorYear) -> Result<Vec<MonthMoisture>> {
    twelve(&year.months, |k, given| month(k, given.temperature_c, given.relative_humidity_pct))
}

fn outdoor_months(year: &OutdoorYear) -> Result<Vec<MonthMoisture>> {
    Error::unless_empty(faults_at("", year))?;
    twelve(&year.months, |k, given| {
        let air = heated_air_humidity(&HeatedAirHumidityInput {
            outdoor_temperature_c: given.temperature_c,
            outdoor_dew_point_c: given.dew_point_c,
            room_temperature_c: year.room_temperature_c,
            vapour_gain_pa: year.vapour_gain_pa,
            surface: year.surface,
        })
        .map_err(|fault| Fault { field: month_field(fault.field), ..fault })?;
        month(k, air.indoor_temperature_c, air.relative_humidity_pct)
    })
}

/// Name in a month of a field of a single outdoor state.
fn month_field(field: &'static str) -> &'static str {
    match field {
        "outdoor_temperature_c" => "temperature_c",
        "outdoor_dew_point_c" => "dew_point_c",
        other => other,
    }
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::wood) const SEASONAL_MOISTURE: crate::json::Calculation = crate::json::calculation!(
    seasonal_moisture: SeasonalMoistureInput => SeasonalMoisture, Document,
    "Moisture content that wood comes to in each month of a year"
);

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn indoor(months: Vec<IndoorMonth>) -> Result<SeasonalMoisture> {
        seasonal_moisture(&SeasonalMoistureInput { climate: YearClimate::Indoor(IndoorYear { months }) })
    }

    fn outdoor(months: Vec<OutdoorMonth>, room_temperature_c: f64, vapour_gain_pa: f64) -> Result<SeasonalMoisture> {
        let surface = SaturationSurface::Water;
        let year = OutdoorYear { months, room_temperature_c, vapour_gain_pa, surface };
        seasonal_moisture(&SeasonalMoistureInput { climate: YearClimate::Outdoor(year) })
    }

    #[test]
    fn a_year_without_seasons_does_not_swing() {
        let year = indoor(vec![IndoorMonth { temperature_c: 21.0, relative_humidity_pct: 40.0 }; 12]).expect("allowed");
        assert_eq!((year.swing_pct, year.driest_month, year.wettest_month), (0.0, 1, 1));
        assert!((year.mean_pct - year.driest_pct).abs() < 1e-14);
    }

    #[test]
    fn every_fault_is_told_with_its_month() {
        let mut months = vec![IndoorMonth { temperature_c: 21.0, relative_humidity_pct: 40.0 }; 12];
        months[3].relative_humidity_pct = 99.0;
        months[7].temperature_c = f64::NAN;
        let faults = indoor(months.clone()).expect_err("two faults");
        let paths: Vec<_> = faults.details().iter().map(|detail| detail.path.as_str()).collect();
        assert_eq!(paths, ["climate.indoor.months[3].relative_humidity_pct", "climate.indoor.months[7].temperature_c"]);
        assert_eq!(indoor(months[..11].to_vec()).expect_err("a month short").field(), "climate.indoor.months");
        let cold = vec![OutdoorMonth { temperature_c: 0.0, dew_point_c: 1.0 }; 12];
        assert_eq!(
            outdoor(cold, 20.0, 0.0).expect_err("dew above air").field(),
            "climate.outdoor.months[0].dew_point_c"
        );
        assert_eq!(outdoor(Vec::new(), 200.0, 0.0).expect_err("hot").field(), "climate.outdoor.room_temperature_c");
    }

    #[test]
    fn a_heated_room_is_driest_in_the_coldest_month() {
        let outside = [-9.0, -8.0, -3.0, 4.0, 10.0, 15.0, 17.0, 16.0, 11.0, 6.0, 0.0, -6.0];
        let months = outside.map(|t| OutdoorMonth { temperature_c: t, dew_point_c: t - 4.0 }).to_vec();
        let year = outdoor(months.clone(), 21.0, 0.0).expect("allowed");
        assert_eq!((year.driest_month, year.wettest_month), (1, 7));
        assert!(year.driest_pct < 3.5 && year.wettest_pct > 7.0);
        assert!(outdoor(months, 21.0, 300.0).expect("allowed").mean_pct > year.mean_pct);
    }

    proptest! {
        #[test]
        fn the_year_lies_between_its_months(values in proptest::collection::vec((-20.0_f64..130.0, 0.0_f64..95.0), 12)) {
            let months = values.iter().map(|&(temperature_c, relative_humidity_pct)| IndoorMonth { temperature_c, relative_humidity_pct });
            let year = indoor(months.collect()).expect("allowed");
            prop_assert!(year.months.iter().all(|m| m.moisture_pct >= year.driest_pct && m.moisture_pct <= year.wettest_pct));
            prop_assert!(year.mean_pct >= year.driest_pct - 1e-12 && year.mean_pct <= year.wettest_pct + 1e-12);
        }
    }
}
