//! Moisture: what wood comes to in air of a temperature and humidity, and what humidity a room has.
//!
//! | symbol | meaning | unit |
//! |---|---|---|
//! | T | temperature | °C |
//! | h | relative humidity | – |
//! | EMC | equilibrium moisture content | % of the ovendry mass |
//! | p, p_s | vapour pressure, saturation pressure | Pa |
//! | T_d | dew point | °C |
//!
//! The equations give the balance that wood moves towards. How fast it gets there depends on thickness, finish and end grain; no
//! published rate was found. A monthly balance is an upper bound of the swing that a board really makes, and [`seasonal_board`]
//! follows the board at a rate that the user measured.

mod air;
mod pace;
mod season;
mod sorption;
mod warm_face;

pub use air::{
    HeatedAirHumidity, HeatedAirHumidityInput, MoistAir, MoistAirInput, SaturationSurface, heated_air_humidity,
    moist_air,
};
pub use pace::{
    BoardDiffusion, BoardMonth, MoisturePace, MoistureProgress, MoistureProgressInput, ObservedPace, OpenFaces,
    SeasonalBoard, SeasonalBoardInput, moisture_progress, seasonal_board,
};
pub use season::{
    IndoorMonth, IndoorYear, MonthMoisture, OutdoorMonth, OutdoorYear, SeasonalMoisture, SeasonalMoistureInput,
    YearClimate, seasonal_moisture,
};
pub use sorption::{
    EquilibriumMoisture, EquilibriumMoistureInput, HumidityForMoisture, HumidityForMoistureInput, SorptionTable,
    equilibrium_moisture, humidity_for_moisture,
};
pub use warm_face::{WarmFaceMoisture, WarmFaceMoistureInput, warm_face_moisture};

#[cfg(feature = "json")]
pub(super) use {
    air::{HEATED_AIR_HUMIDITY, MOIST_AIR},
    pace::{MOISTURE_PROGRESS, SEASONAL_BOARD},
    season::SEASONAL_MOISTURE,
    sorption::{EQUILIBRIUM_MOISTURE, HUMIDITY_FOR_MOISTURE},
    warm_face::WARM_FACE_MOISTURE,
};
