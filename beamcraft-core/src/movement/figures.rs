//! How much a wood moves: a species of the tables, or numbers.

use super::board::MovementMethod;
use crate::error::{Error, Result};
use crate::limits::{faults_at, limited};
use crate::wood::{Species, WoodFigures};

/// Moisture contents between which the coefficients hold, % (FPL-GTR-190, chapter 13).
const COEFFICIENT_RANGE_PCT: (f64, f64) = (6.0, 14.0);
/// Moisture content that the coefficients are referred to, %.
const REFERENCE_PCT: f64 = 10.0;

/// A wood that moves.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum MovingWood {
    /// A species of the tables.
    Species(MovingSpecies),
    /// Numbers of the user.
    Figures(MovementFigures),
}

/// A species by its name.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct MovingSpecies {
    /// Common or botanical name, such as `white ash`.
    pub name: String,
}

/// Movement of a wood in numbers.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<MovementFigures>))]
pub struct MovementFigures {
    /// Radial movement between 6 and 14 % moisture, share of the size per percent of moisture.
    pub movement_radial_per_pct: f64,
    /// Tangential movement between 6 and 14 % moisture, share of the size per percent of moisture.
    pub movement_tangential_per_pct: f64,
    /// Radial shrinkage from green to ovendry, %; from the coefficient when left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub shrinkage_radial_pct: Option<f64>,
    /// Tangential shrinkage from green to ovendry, %; from the coefficient when left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub shrinkage_tangential_pct: Option<f64>,
    /// Fibre saturation point, %; 30 in general use (FPL-GTR-282, chapter 4).
    #[cfg_attr(feature = "json", serde(default = "fibre_saturation"))]
    pub fibre_saturation_pct: f64,
}

limited!(MovementFigures {
    movement_radial_per_pct: MOVEMENT_COEFFICIENT,
    movement_tangential_per_pct: MOVEMENT_COEFFICIENT,
    shrinkage_radial_pct: LINEAR_SHRINKAGE,
    shrinkage_tangential_pct: LINEAR_SHRINKAGE,
    fibre_saturation_pct: FIBRE_SATURATION,
});

#[cfg(feature = "json")]
pub(super) fn fibre_saturation() -> f64 {
    30.0
}

impl MovementFigures {
    /// Movement of a wood by the user's numbers; nothing when a direction has neither movement nor shrinkage.
    pub fn of_wood(wood: &WoodFigures) -> Option<Self> {
        let coefficient = |given: Option<f64>, shrinkage_pct: Option<f64>| {
            given.or_else(|| Some(Direction::of_shrinkage(shrinkage_pct?, wood.fibre_saturation_pct).coefficient))
        };
        Some(Self {
            movement_radial_per_pct: coefficient(wood.movement_radial_per_pct, wood.shrinkage_radial_pct)?,
            movement_tangential_per_pct: coefficient(wood.movement_tangential_per_pct, wood.shrinkage_tangential_pct)?,
            shrinkage_radial_pct: wood.shrinkage_radial_pct,
            shrinkage_tangential_pct: wood.shrinkage_tangential_pct,
            fibre_saturation_pct: wood.fibre_saturation_pct,
        })
    }
}

impl MovingWood {
    /// Figures of the wood, and the species when it is one of the tables.
    ///
    /// # Errors
    /// `unknown_name`; `out_of_range` or `not_finite` for numbers.
    pub(crate) fn resolve(&self) -> Result<(MovementFigures, Option<&'static Species>)> {
        match self {
            MovingWood::Species(named) => {
                let species = Species::find(&named.name).map_err(|error| error.within("species"))?;
                let figures = MovementFigures {
                    movement_radial_per_pct: species.movement_radial_per_pct,
                    movement_tangential_per_pct: species.movement_tangential_per_pct,
                    shrinkage_radial_pct: species.shrinkage_radial_pct,
                    shrinkage_tangential_pct: species.shrinkage_tangential_pct,
                    fibre_saturation_pct: species.fibre_saturation_pct,
                };
                Ok((figures, Some(species)))
            }
            MovingWood::Figures(figures) => {
                Error::unless_empty(faults_at("figures", figures))?;
                Ok((*figures, None))
            }
        }
    }
}

/// Movement in one direction of a board.
#[derive(Clone, Copy, Debug)]
pub(super) struct Direction {
    /// Share of the size per percent of moisture.
    pub(super) coefficient: f64,
    /// Shrinkage from green to ovendry, %.
    pub(super) shrinkage_pct: f64,
    /// Fibre saturation point, %.
    pub(super) saturation_pct: f64,
}

impl Direction {
    /// A direction whose shrinkage follows from its coefficient where it is not given.
    #[inline(always)]
    pub(super) fn new(coefficient: f64, shrinkage_pct: Option<f64>, saturation_pct: f64) -> Self {
        // The handbook's coefficients are the shrinkage law referred to 10 %: C = (S/M) / (100 − S (M − 10)/M), solved for S.
        let link = 100.0 * coefficient * saturation_pct / (1.0 + coefficient * (saturation_pct - REFERENCE_PCT));
        Self { coefficient, shrinkage_pct: shrinkage_pct.unwrap_or(link), saturation_pct }
    }

    /// A direction of which only the shrinkage is known, as along the grain.
    pub(super) fn of_shrinkage(shrinkage_pct: f64, saturation_pct: f64) -> Self {
        // The link of `new`, read forwards.
        let share = shrinkage_pct / saturation_pct;
        Self { coefficient: share / (100.0 - share * (saturation_pct - REFERENCE_PCT)), shrinkage_pct, saturation_pct }
    }

    /// Share by which a size changes from one moisture content to another; swelling positive.
    #[inline(always)]
    pub(super) fn strain(&self, from_pct: f64, to_pct: f64) -> f64 {
        // Above fibre saturation the size stays.
        let (from, to) = (from_pct.min(self.saturation_pct), to_pct.min(self.saturation_pct));
        // The handbook's (to − from) / (100 M/S − M + from), times S above and below: a wood without shrinkage stays too.
        let law = (to - from) * self.shrinkage_pct
            / (100.0 * self.saturation_pct - (self.saturation_pct - from) * self.shrinkage_pct);
        let is_linear = method(from_pct, to_pct) == MovementMethod::Coefficient;
        if is_linear { self.coefficient * (to_pct - from_pct) } else { law }
    }
}

/// The method for a pair of moisture contents.
#[inline(always)]
pub(super) fn method(from_pct: f64, to_pct: f64) -> MovementMethod {
    let (low, high) = COEFFICIENT_RANGE_PCT;
    let within = |moisture_pct: f64| (moisture_pct >= low) & (moisture_pct <= high);
    if within(from_pct) & within(to_pct) { MovementMethod::Coefficient } else { MovementMethod::Shrinkage }
}
