//! Movement of every panel of a body through the year.

use std::collections::HashSet;

use super::board::{BoardCut, directions, ring_angle};
use super::figures::{Direction, MovingWood};
use crate::error::{Detail, Error, ErrorCode, Result};
use crate::finding::{Caution, CautionText};
use crate::limits::{faults_at, limited};
use crate::wood::{SeasonalMoisture, SeasonalMoistureInput, YearClimate, seasonal_moisture};

/// A panel that lives through the year.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<YearPanel>))]
pub struct YearPanel {
    /// Name of the panel, such as `top`; each once.
    pub id: String,
    /// Its wood.
    pub wood: MovingWood,
    /// How it was sawn.
    pub cut: BoardCut,
    /// Angle between growth rings and wide face, degrees; for `ring_angle` only.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub ring_angle_deg: Option<f64>,
    /// Width across the grain when made, mm.
    pub width_mm: f64,
    /// Thickness when made, mm.
    pub thickness_mm: f64,
    /// Moisture content when made, %.
    pub made_moisture_pct: f64,
}

limited!(YearPanel {
    ring_angle_deg: RING_ANGLE,
    width_mm: LENGTH,
    thickness_mm: BOARD_THICKNESS,
    made_moisture_pct: MOISTURE,
});

/// A body's panels and the year of their room.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct YearlyMovementInput {
    /// Air of the year.
    pub climate: YearClimate,
    /// Panels, at least one.
    pub panels: Vec<YearPanel>,
}

/// A panel in one month.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct PanelMonth {
    /// Month, 1 to 12.
    pub month: u32,
    /// Moisture content that the panel comes to, %.
    pub moisture_pct: f64,
    /// Change of the width since it was made, mm; swelling positive.
    pub width_change_mm: f64,
    /// Change of the thickness since it was made, mm; swelling positive.
    pub thickness_change_mm: f64,
    /// Strain across the width, for `mitre_movement`.
    pub width_strain: f64,
    /// Strain through the thickness, for `mitre_movement`.
    pub thickness_strain: f64,
}

/// A panel through the year.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct PanelYear {
    /// Name of the panel.
    pub id: String,
    /// Twelve months, January first.
    pub months: Vec<PanelMonth>,
    /// Month in which it is narrowest, 1 to 12; the first of several.
    pub narrowest_month: u32,
    /// Change of the width then, mm.
    pub narrowest_mm: f64,
    /// Month in which it is widest, 1 to 12; the first of several.
    pub widest_month: u32,
    /// Change of the width then, mm.
    pub widest_mm: f64,
    /// Movement of the width through the year, mm.
    pub range_mm: f64,
    /// Month in which the width differs most from the width as made, 1 to 12; the first of several.
    pub worst_month: u32,
    /// Change of the width then, mm.
    pub worst_mm: f64,
}

/// A body through the year.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct YearlyMovement {
    /// Moisture of the year.
    pub climate: SeasonalMoisture,
    /// Panels, in the order given.
    pub panels: Vec<PanelYear>,
    /// Panel whose width differs most from the width as made; the first of several.
    pub worst_panel: String,
    /// Month in which it does, 1 to 12.
    pub worst_month: u32,
    /// Change of its width then, mm.
    pub worst_mm: f64,
    /// Cautions that belong to these numbers.
    pub cautions: Vec<CautionText>,
}

/// Change of every panel's width and thickness in each month of a year, with the worst month.
///
/// # Equation
/// ```text
/// M_k by seasonal_moisture        ε by board_movement from the moisture content when made to M_k        change = size · ε
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | M_k | moisture content in month k | % | `moisture_pct` |
/// | ε | strain across the width or through the thickness | – | `width_strain`, `thickness_strain` |
///
/// # Limits
/// Panels in balance with each month's mean: the greatest swing that can come. Thick, finished boards lag and swing less.
///
/// # Errors
/// `out_of_range`, `not_finite`, `unknown_name`, each with its panel; those of [`seasonal_moisture`]; `missing_field` without a
/// panel; `duplicate_field` for a name given twice; `missing_field` or `inconsistent` for a ring angle.
///
/// # Source
/// Those of [`seasonal_moisture`] and [`board_movement`](super::board_movement) — checked by `verification/movement`.
///
/// # Examples
/// ```
/// use beamcraft_core::movement::{
///     yearly_movement, BoardCut, MovingSpecies, MovingWood, YearPanel, YearlyMovementInput,
/// };
/// use beamcraft_core::wood::{IndoorMonth, IndoorYear, YearClimate};
/// let humidity = [25.0, 25.0, 30.0, 35.0, 45.0, 55.0, 60.0, 60.0, 50.0, 40.0, 30.0, 25.0];
/// let months = humidity.map(|relative_humidity_pct| IndoorMonth { temperature_c: 21.1, relative_humidity_pct });
/// let top = YearPanel {
///     id: "top".to_owned(),
///     wood: MovingWood::Species(MovingSpecies { name: "black walnut".to_owned() }),
///     cut: BoardCut::FlatSawn,
///     ring_angle_deg: None,
///     width_mm: 241.3,
///     thickness_mm: 20.6,
///     made_moisture_pct: 8.0,
/// };
/// let climate = YearClimate::Indoor(IndoorYear { months: months.to_vec() });
/// let year = yearly_movement(&YearlyMovementInput { climate, panels: vec![top] })?;
/// assert_eq!(year.worst_month, 7);
/// assert!((year.worst_mm - 241.3 * 0.00274 * 2.97).abs() < 0.02);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn yearly_movement(input: &YearlyMovementInput) -> Result<YearlyMovement> {
    let mut faults = Vec::new();
    let mut climate = None;
    match seasonal_moisture(&SeasonalMoistureInput { climate: input.climate.clone() }) {
        Ok(found) => climate = Some(found),
        Err(error) => faults.extend(error.details().iter().cloned()),
    }
    if input.panels.is_empty() {
        faults.push(detail(ErrorCode::MissingField, "panels".to_owned(), String::new(), "at least one panel"));
    }
    let (mut names, mut moving) = (HashSet::new(), Vec::with_capacity(input.panels.len()));
    for (k, panel) in input.panels.iter().enumerate() {
        let path = format!("panels[{k}]");
        if !names.insert(panel.id.as_str()) {
            let given = format!("\"{}\"", panel.id.chars().take(80).collect::<String>());
            faults.push(detail(
                ErrorCode::DuplicateField,
                format!("{path}.id"),
                given,
                "a name that no other panel has",
            ));
        }
        match panel.directions() {
            Ok(directions) => moving.push((panel, directions)),
            Err(found) => faults.extend(found.into_iter().map(|fault| fault.within(&path))),
        }
    }
    Error::unless_empty(faults)?;
    // Without a fault there is a climate and at least one panel; an empty year would be told above.
    let climate = match climate {
        Some(climate) => climate,
        None => seasonal_moisture(&SeasonalMoistureInput { climate: input.climate.clone() })?,
    };
    let panels: Vec<_> = moving.into_iter().map(|(panel, directions)| panel.year(directions, &climate)).collect();
    let mut worst = (String::new(), 0, 0.0_f64);
    for panel in &panels {
        if worst.1 == 0 || panel.worst_mm.abs() > worst.2.abs() {
            worst = (panel.id.clone(), panel.worst_month, panel.worst_mm);
        }
    }
    let (worst_panel, worst_month, worst_mm) = worst;
    let cautions = vec![Caution::HeldMovement.into()];
    Ok(YearlyMovement { climate, panels, worst_panel, worst_month, worst_mm, cautions })
}

#[cold]
fn detail(code: ErrorCode, path: String, given: String, allowed: &str) -> Detail {
    Detail { code, path, given, allowed: allowed.to_owned(), cure: String::new() }
}

impl YearPanel {
    /// How it moves across the width and through the thickness, or everything that is wrong with it.
    fn directions(&self) -> core::result::Result<(Direction, Direction), Vec<Detail>> {
        let mut faults = faults_at("", self);
        let figures =
            self.wood.resolve().map_err(|error| faults.extend(error.within("wood").details().iter().cloned()));
        let angle = ring_angle(self.cut, self.ring_angle_deg).map_err(|fault| faults.push(fault.into()));
        match (figures, angle) {
            (Ok((figures, _)), Ok(angle_deg)) if faults.is_empty() => Ok(directions(&figures, angle_deg)),
            _ => Err(faults),
        }
    }

    fn year(&self, (width, thickness): (Direction, Direction), climate: &SeasonalMoisture) -> PanelYear {
        let months: Vec<_> = climate
            .months
            .iter()
            .map(|month| {
                let width_strain = width.strain(self.made_moisture_pct, month.moisture_pct);
                let thickness_strain = thickness.strain(self.made_moisture_pct, month.moisture_pct);
                PanelMonth {
                    month: month.month,
                    moisture_pct: month.moisture_pct,
                    width_change_mm: self.width_mm * width_strain,
                    thickness_change_mm: self.thickness_mm * thickness_strain,
                    width_strain,
                    thickness_strain,
                }
            })
            .collect();
        // The first month that no other exceeds.
        let first_by = |better: &dyn Fn(f64, f64) -> bool| {
            months.iter().fold((0, 0.0), |(month, change), next| {
                let wins = month == 0 || better(next.width_change_mm, change);
                if wins { (next.month, next.width_change_mm) } else { (month, change) }
            })
        };
        let (narrowest_month, narrowest_mm) = first_by(&|next, best| next < best);
        let (widest_month, widest_mm) = first_by(&|next, best| next > best);
        let (worst_month, worst_mm) = first_by(&|next, best| next.abs() > best.abs());
        let (id, range_mm) = (self.id.clone(), widest_mm - narrowest_mm);
        PanelYear {
            id,
            months,
            narrowest_month,
            narrowest_mm,
            widest_month,
            widest_mm,
            range_mm,
            worst_month,
            worst_mm,
        }
    }
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const YEARLY_MOVEMENT: crate::json::Calculation = crate::json::calculation!(
    yearly_movement: YearlyMovementInput => YearlyMovement, Document,
    "Change of every panel's width and thickness in each month of a year"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::movement::MovingSpecies;
    use crate::wood::{EquilibriumMoistureInput, IndoorMonth, IndoorYear, equilibrium_moisture};

    fn climate(humidity: [f64; 12]) -> YearClimate {
        let month = |relative_humidity_pct| IndoorMonth { temperature_c: 21.0, relative_humidity_pct };
        YearClimate::Indoor(IndoorYear { months: humidity.map(month).to_vec() })
    }

    fn panel(id: &str, width_mm: f64, made_moisture_pct: f64) -> YearPanel {
        YearPanel {
            id: id.to_owned(),
            wood: MovingWood::Species(MovingSpecies { name: "white ash".to_owned() }),
            cut: BoardCut::FlatSawn,
            ring_angle_deg: None,
            width_mm,
            thickness_mm: 20.0,
            made_moisture_pct,
        }
    }

    #[test]
    fn a_panel_made_in_its_room_does_not_move_in_a_still_year() {
        let air = EquilibriumMoistureInput { temperature_c: 21.0, relative_humidity_pct: 40.0 };
        let made = equilibrium_moisture(&air).expect("allowed").moisture_pct;
        let input = YearlyMovementInput { climate: climate([40.0; 12]), panels: vec![panel("top", 215.0, made)] };
        let year = yearly_movement(&input).expect("allowed");
        assert_eq!((year.worst_mm, year.worst_month, year.panels[0].range_mm), (0.0, 1, 0.0));
    }

    #[test]
    fn the_widest_panel_is_the_worst_in_the_month_farthest_from_its_making() {
        let humidity = [30.0, 31.0, 35.0, 40.0, 45.0, 50.0, 55.0, 54.0, 50.0, 45.0, 38.0, 29.0];
        let panels = vec![panel("front", 185.0, 8.0), panel("top", 215.0, 8.0), panel("bottom", 215.0, 8.0)];
        let year = yearly_movement(&YearlyMovementInput { climate: climate(humidity), panels }).expect("allowed");
        assert_eq!(
            (year.worst_panel.as_str(), year.panels[0].narrowest_month, year.panels[0].widest_month),
            ("top", 12, 7)
        );
        assert!(year.worst_month == 7 || year.worst_month == 12);
    }

    #[test]
    fn every_fault_is_told_with_its_panel() {
        let mut wrong = panel("top", f64::NAN, 8.0);
        wrong.wood = MovingWood::Species(MovingSpecies { name: "granite".to_owned() });
        wrong.cut = BoardCut::RingAngle;
        let mut months = climate([40.0; 12]);
        if let YearClimate::Indoor(year) = &mut months {
            year.months.pop();
        }
        let input = YearlyMovementInput { climate: months, panels: vec![panel("top", 200.0, 8.0), wrong] };
        let error = yearly_movement(&input).expect_err("five faults");
        let paths: Vec<_> = error.details().iter().map(|detail| detail.path.as_str()).collect();
        assert_eq!(
            paths,
            [
                "climate.indoor.months",
                "panels[1].id",
                "panels[1].width_mm",
                "panels[1].wood.species.name",
                "panels[1].ring_angle_deg"
            ]
        );
        let none = YearlyMovementInput { climate: climate([40.0; 12]), panels: Vec::new() };
        assert_eq!(yearly_movement(&none).expect_err("no panel").code(), ErrorCode::MissingField);
    }
}
