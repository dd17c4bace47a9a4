//! A face of the body that is warmer than the room: over a hearth, above a radiator.

use super::air::{SaturationSurface, saturation_pa};
use super::sorption::{EquilibriumMoistureInput, SorptionTable, equilibrium_moisture};
use crate::error::{Allowed, ErrorCode, Fault, Result};
use crate::finding::{Caution, CautionText};
use crate::limits::{Limited, WOOD_HUMIDITY, limited};

/// A face of wood and the room it is in.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<WarmFaceMoistureInput>))]
pub struct WarmFaceMoistureInput {
    /// Temperature of the room's air, °C.
    pub room_temperature_c: f64,
    /// Relative humidity of the room's air, %.
    pub room_relative_humidity_pct: f64,
    /// Temperature of the wood's face, measured or chosen, °C.
    pub face_temperature_c: f64,
}

limited!(WarmFaceMoistureInput {
    room_temperature_c: ROOM_TEMPERATURE,
    room_relative_humidity_pct: WOOD_HUMIDITY,
    face_temperature_c: WOOD_TEMPERATURE,
});

/// Moisture content at a warm face and elsewhere in the room.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct WarmFaceMoisture {
    /// Vapour pressure in the room and at the face, Pa.
    pub vapour_pressure_pa: f64,
    /// Relative humidity of the air at the face, %.
    pub face_relative_humidity_pct: f64,
    /// Moisture content that wood comes to elsewhere in the room, %.
    pub room_moisture_pct: f64,
    /// Moisture content that wood comes to at the face, %.
    pub face_moisture_pct: f64,
    /// How much drier the face comes to be than wood elsewhere in the room, % moisture; negative when wetter.
    pub drier_by_pct: f64,
    /// Whether the face lies in the handbook's table.
    pub table: SorptionTable,
    /// Cautions that belong to these numbers.
    pub cautions: Vec<CautionText>,
}

const DRY_ENOUGH: Allowed = Allowed::Text("a face at which the air has at most 95 % relative humidity");

/// Moisture content that wood comes to at a face warmer (or colder) than the room's air.
///
/// # Equation
/// ```text
/// h_face = h_room p_s(T_room) / p_s(T_face)        EMC_face = EMC(T_face, h_face)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | T_room, T_face | temperatures | °C | `room_temperature_c`, `face_temperature_c` |
/// | h_room, h_face | relative humidities as shares | – | `room_relative_humidity_pct`, `face_relative_humidity_pct` |
///
/// The air at the face is the room's, warmed at constant vapour pressure.
///
/// # Limits
/// What the face moves towards when it stays warm; a fire of an evening dries a skin, not the board. Inside and outside of the
/// board then differ, which cups it. The temperature itself is not computed here. A low moisture content says nothing about
/// how close wood may come to heat.
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` for a face so cold that the air at it exceeds 95 % relative humidity.
///
/// # Source
/// Hyland-Wexler 1983 (recalled) and FPL-GTR-282, Eq. 4-5 (seen); the step between them is derived in the theory pages —
/// checked by `verification/psychrometrics`.
///
/// # Examples
/// ```
/// use beamcraft_core::wood::{warm_face_moisture, WarmFaceMoistureInput};
/// let input = WarmFaceMoistureInput {
///     room_temperature_c: 21.0,
///     room_relative_humidity_pct: 40.0,
///     face_temperature_c: 50.0,
/// };
/// let hearth = warm_face_moisture(&input)?;
/// assert!(hearth.face_relative_humidity_pct < 10.0 && hearth.face_moisture_pct < 2.5);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn warm_face_moisture(input: &WarmFaceMoistureInput) -> Result<WarmFaceMoisture> {
    input.check_ranges()?;
    let over_water = |temperature_c: f64| saturation_pa(temperature_c, SaturationSurface::Water);
    let room_pct = input.room_relative_humidity_pct;
    let vapour_pressure_pa = room_pct / 100.0 * over_water(input.room_temperature_c);
    let face_relative_humidity_pct = 100.0 * vapour_pressure_pa / over_water(input.face_temperature_c);
    if face_relative_humidity_pct > WOOD_HUMIDITY.high {
        let (code, cure) = (ErrorCode::Inconsistent, "water condenses on a face as cold as this");
        return Err(Fault::number(code, "face_temperature_c", input.face_temperature_c, DRY_ENOUGH, cure).into());
    }
    let at = |temperature_c: f64, relative_humidity_pct: f64| {
        equilibrium_moisture(&EquilibriumMoistureInput { temperature_c, relative_humidity_pct })
    };
    let room = at(input.room_temperature_c, room_pct)?;
    let face = at(input.face_temperature_c, face_relative_humidity_pct)?;
    Ok(WarmFaceMoisture {
        vapour_pressure_pa,
        face_relative_humidity_pct,
        room_moisture_pct: room.moisture_pct,
        face_moisture_pct: face.moisture_pct,
        drier_by_pct: room.moisture_pct - face.moisture_pct,
        table: face.table,
        cautions: vec![Caution::Fire.into()],
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::wood) const WARM_FACE_MOISTURE: crate::json::Calculation = crate::json::calculation!(
    warm_face_moisture: WarmFaceMoistureInput => WarmFaceMoisture, Document,
    "Moisture content that a warm face of the body comes to"
);

#[cfg(test)]
mod tests {
    use super::*;

    fn face(room_c: f64, room_pct: f64, face_c: f64) -> Result<WarmFaceMoisture> {
        warm_face_moisture(&WarmFaceMoistureInput {
            room_temperature_c: room_c,
            room_relative_humidity_pct: room_pct,
            face_temperature_c: face_c,
        })
    }

    #[test]
    fn a_face_as_warm_as_the_room_is_as_moist() {
        let same = face(21.0, 45.0, 21.0).expect("allowed");
        assert!((same.face_relative_humidity_pct - 45.0).abs() < 1e-12 && same.drier_by_pct.abs() < 1e-12);
        assert_eq!(same.cautions.len(), 1);
    }

    #[test]
    fn warmer_is_drier_and_colder_is_wetter() {
        let mut last = f64::MAX;
        for face_c in [15.0, 21.0, 30.0, 50.0, 80.0] {
            let here = face(21.0, 45.0, face_c).expect("allowed").face_moisture_pct;
            assert!(here < last);
            last = here;
        }
        assert_eq!(face(21.0, 60.0, 10.0).expect_err("condenses").field(), "face_temperature_c");
    }
}
