//! Figures of the book, drawn by the library itself.

use beamcraft_core::plan::ReportLengths;
use beamcraft_core::registry::drawing_svg;

use super::GeneratedFile;
use super::model::Model;

/// The beam of the guide.
const ASH: &str = include_str!("../../../beamcraft-core/examples/specs/ash_shelf_beam.json");

/// Its panels through a year: outdoor means of a cold inland climate, chosen for the figure, heated to 21 °C.
const YEAR: &str = r#"{
    "climate": { "outdoor": { "room_temperature_c": 21, "vapour_gain_pa": 200, "months": [
        { "temperature_c": -6, "dew_point_c": -9 }, { "temperature_c": -5, "dew_point_c": -9 },
        { "temperature_c": 0, "dew_point_c": -5 }, { "temperature_c": 6, "dew_point_c": 0 },
        { "temperature_c": 12, "dew_point_c": 6 }, { "temperature_c": 16, "dew_point_c": 10 },
        { "temperature_c": 18, "dew_point_c": 12 }, { "temperature_c": 17, "dew_point_c": 12 },
        { "temperature_c": 12, "dew_point_c": 9 }, { "temperature_c": 7, "dew_point_c": 4 },
        { "temperature_c": 1, "dew_point_c": -2 }, { "temperature_c": -4, "dew_point_c": -7 } ] } },
    "panels": [
        { "id": "top, flat sawn", "wood": { "species": { "name": "white ash" } }, "cut": "flat_sawn",
          "width_mm": 215, "thickness_mm": 20, "made_moisture_pct": 8 },
        { "id": "front, flat sawn", "wood": { "species": { "name": "white ash" } }, "cut": "flat_sawn",
          "width_mm": 185, "thickness_mm": 20, "made_moisture_pct": 8 },
        { "id": "bottom, quarter sawn", "wood": { "species": { "name": "white ash" } }, "cut": "quarter_sawn",
          "width_mm": 215, "thickness_mm": 20, "made_moisture_pct": 8 } ]
}"#;

/// Four screws of a bracket under a load beside it: the example of the page on screws.
const GROUP: &str = r#"{
    "positions": [
        { "x_mm": 0, "y_mm": 20 }, { "x_mm": 60, "y_mm": 20 }, { "x_mm": 0, "y_mm": 100 }, { "x_mm": 60, "y_mm": 100 }
    ],
    "force_y_n": -600, "load_x_mm": 110, "load_y_mm": 60, "tipping_nmm": 48000, "lower_edge_y_mm": 0
}"#;

/// Every figure.
///
/// # Panics
/// When the spec of the guide is no longer a spec that can be planned.
pub fn files(_: &Model) -> Vec<GeneratedFile> {
    let order = format!(r#"{{"spec": {ASH}, "week": {{"start_date": "2026-11-25", "makers": 2}}}}"#);
    let named = [
        ("section", "plan", ASH),
        ("movement", "yearly_movement", YEAR),
        ("group", "fastener_group", GROUP),
        ("order_of_work", "order_of_work", &order),
    ];
    let drawn = named.into_iter().map(|(name, calculation, input)| {
        match drawing_svg(calculation, input, ReportLengths::Metric) {
            Ok(svg) => GeneratedFile::new(format!("docs/src/figures/{name}.svg"), svg),
            Err(error) => panic!("the figure {name}: {error}"),
        }
    });
    drawn.collect()
}
