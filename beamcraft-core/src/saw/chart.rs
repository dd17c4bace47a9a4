//! The tilt chart: compound settings over a grid.

use crate::error::{Allowed, Detail, Error, ErrorCode, Fault, Result};
use crate::limits::{CORNER_ANGLE, SLOPE, list_faults};
use crate::shell::{CompoundMitre, CompoundMitreInput, compound_mitre};

/// Slopes and corners of a chart.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct TiltChartInput {
    /// Slopes of the sides from horizontal, degrees; a row each.
    pub slopes_deg: Vec<f64>,
    /// Corner angles in plan, measured inside, degrees; a column each; 180 − 360/N for N equal sides.
    pub corners_deg: Vec<f64>,
}

/// A row of a chart.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct TiltChartRow {
    /// Slope of the sides from horizontal, degrees.
    pub slope_deg: f64,
    /// Settings for each corner, in the order asked for.
    pub settings: Vec<CompoundMitre>,
}

/// A chart of compound settings.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct TiltChart {
    /// Corner angles of the columns, degrees.
    pub corners_deg: Vec<f64>,
    /// A row for each slope.
    pub rows: Vec<TiltChartRow>,
}

/// Most entries of a chart.
const ENTRIES_MAX: usize = 100_000;

/// Compound settings of splayed sides over a grid of slopes and corner angles.
///
/// # Equation
/// That of [`compound_mitre`], for every pair.
///
/// # Limits
/// Equal sides, board flat on the table; at most 100 000 entries. Whether the saw tilts that far is not looked at.
///
/// # Caution
/// Guard and riving knife in place, an insert that fits the tilt, and test cuts in scrap; see
/// [`Caution::Saw`](crate::finding::Caution::Saw).
///
/// # Errors
/// `out_of_range`, `not_finite`, each with its path; `out_of_range` for too many entries.
///
/// # Source
/// Solid geometry, derived in the theory pages; checked by `verification/tilt_chart` against a
/// published chart.
///
/// # Examples
/// ```
/// use beamcraft_core::saw::{TiltChartInput, tilt_chart};
/// let chart = tilt_chart(&TiltChartInput { slopes_deg: vec![5.0, 10.0], corners_deg: vec![108.0, 90.0] })?;
/// assert!((chart.rows[0].settings[0].gauge_deg - 35.9).abs() < 0.006);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn tilt_chart(input: &TiltChartInput) -> Result<TiltChart> {
    let entries = input.slopes_deg.len().saturating_mul(input.corners_deg.len());
    if entries > ENTRIES_MAX {
        let allowed = Allowed::Text("at most 100 000 entries");
        let fault =
            Fault::number(ErrorCode::OutOfRange, "slopes_deg", entries as f64, allowed, "fewer slopes or corners");
        return Err(Error::one(Detail::from(fault)));
    }
    let mut faults = list_faults("slopes_deg", &input.slopes_deg, &SLOPE);
    faults.extend(list_faults("corners_deg", &input.corners_deg, &CORNER_ANGLE));
    Error::unless_empty(faults)?;
    let mut rows = Vec::with_capacity(input.slopes_deg.len());
    for &slope_deg in &input.slopes_deg {
        let settings =
            input.corners_deg.iter().map(|&corner_deg| compound_mitre(&CompoundMitreInput { slope_deg, corner_deg }));
        rows.push(TiltChartRow { slope_deg, settings: settings.collect::<core::result::Result<_, _>>()? });
    }
    Ok(TiltChart { corners_deg: input.corners_deg.clone(), rows })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const TILT_CHART: crate::json::Calculation = crate::json::calculation!(
    tilt_chart: TiltChartInput => TiltChart, Document,
    "Compound settings of splayed sides over a grid of slopes and corner angles"
);

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn every_entry_is_the_compound_mitre_of_its_row_and_column() {
        let input = TiltChartInput { slopes_deg: vec![5.0, 40.0, 90.0], corners_deg: vec![90.0, 120.0] };
        let chart = tilt_chart(&input).unwrap();
        assert_eq!(chart.corners_deg, input.corners_deg);
        for (row, &slope_deg) in chart.rows.iter().zip(&input.slopes_deg) {
            assert_eq!(row.slope_deg, slope_deg);
            for (setting, &corner_deg) in row.settings.iter().zip(&input.corners_deg) {
                assert_eq!(*setting, compound_mitre(&CompoundMitreInput { slope_deg, corner_deg }).unwrap());
            }
        }
    }

    #[test]
    fn too_many_entries_are_refused_and_so_is_each_number_outside() {
        let input = TiltChartInput { slopes_deg: vec![10.0; 1001], corners_deg: vec![90.0; 100] };
        let error = tilt_chart(&input).unwrap_err();
        assert_eq!((error.code(), error.field()), (ErrorCode::OutOfRange, "slopes_deg"));
        let error =
            tilt_chart(&TiltChartInput { slopes_deg: vec![10.0, 91.0], corners_deg: vec![f64::NAN] }).unwrap_err();
        let found: Vec<_> = error.details().iter().map(|detail| (detail.code, detail.path.to_string())).collect();
        let wanted = [(ErrorCode::OutOfRange, "slopes_deg[1]"), (ErrorCode::NotFinite, "corners_deg[0]")];
        assert_eq!(found, wanted.map(|(code, field)| (code, field.to_owned())));
    }

    proptest! {
        #[test]
        fn any_bits_give_a_whole_chart_or_faults_with_their_paths(
            slopes_deg in prop::collection::vec(prop_oneof![prop::num::f64::ANY, 0.0..90.0], 0..4),
            corners_deg in prop::collection::vec(prop_oneof![prop::num::f64::ANY, 10.0..350.0], 0..4),
        ) {
            match tilt_chart(&TiltChartInput { slopes_deg: slopes_deg.clone(), corners_deg: corners_deg.clone() }) {
                Ok(chart) => {
                    prop_assert_eq!(chart.rows.len(), slopes_deg.len());
                    for row in &chart.rows {
                        prop_assert_eq!(row.settings.len(), corners_deg.len());
                        prop_assert!(row.settings.iter().all(|one| one.gauge_deg.is_finite() && one.tilt_deg.is_finite()));
                    }
                }
                Err(error) => prop_assert!(error.field().contains('['), "{}", error),
            }
        }
    }
}
