//! A wood by the user's numbers, for what the tables do not hold.

use super::density::{GravityBasis, WoodDensityInput, gravity_12_of_density, wood_density};
use super::species::WoodGroup;
use crate::error::Fault;
use crate::limits::{Limited, limited};

/// A wood that is not in the tables, by numbers. What is left out leaves the answers that need it *not determined*.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<WoodFigures>))]
pub struct WoodFigures {
    /// Density at 12 % moisture content, its water included, kg/m³.
    pub density_12_kg_m3: f64,
    /// Hardwood or softwood, which decides how stiff it is taken across the grain.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub group: Option<WoodGroup>,
    /// Radial movement between 6 and 14 % moisture, share of the size per percent of moisture; from the shrinkage when left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub movement_radial_per_pct: Option<f64>,
    /// Tangential movement between 6 and 14 % moisture, share of the size per percent of moisture; from the shrinkage when left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub movement_tangential_per_pct: Option<f64>,
    /// Radial shrinkage from green to ovendry, % of the green size.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub shrinkage_radial_pct: Option<f64>,
    /// Tangential shrinkage from green to ovendry, % of the green size.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub shrinkage_tangential_pct: Option<f64>,
    /// Volumetric shrinkage from green to ovendry, % of the green volume; estimated from the density when left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub shrinkage_volumetric_pct: Option<f64>,
    /// Fibre saturation point, %; 30 in general use (FPL-GTR-282, chapter 4).
    #[cfg_attr(feature = "json", serde(default = "super::density::fibre_saturation"))]
    pub fibre_saturation_pct: f64,
    /// Modulus of elasticity in bending along the grain, average of clear wood at 12 %, MPa.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub modulus_of_elasticity_mpa: Option<f64>,
    /// Modulus of rupture in bending, average of clear wood at 12 %, MPa.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub modulus_of_rupture_mpa: Option<f64>,
    /// Shear strength along the grain, average of clear wood at 12 %, MPa.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub shear_parallel_mpa: Option<f64>,
    /// Strength in compression across the grain, average of clear wood at 12 %, MPa.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub compression_perpendicular_mpa: Option<f64>,
    /// Where the numbers come from, for the reader of the plan.
    #[cfg_attr(feature = "json", serde(default))]
    pub source: String,
}

limited!(WoodFigures {
    density_12_kg_m3: WOOD_DENSITY,
    movement_radial_per_pct: MOVEMENT_COEFFICIENT,
    movement_tangential_per_pct: MOVEMENT_COEFFICIENT,
    shrinkage_radial_pct: LINEAR_SHRINKAGE,
    shrinkage_tangential_pct: LINEAR_SHRINKAGE,
    shrinkage_volumetric_pct: VOLUMETRIC_SHRINKAGE,
    fibre_saturation_pct: FIBRE_SATURATION,
    modulus_of_elasticity_mpa: ELASTIC_MODULUS,
    modulus_of_rupture_mpa: STRESS,
    shear_parallel_mpa: STRESS,
    compression_perpendicular_mpa: STRESS,
});

impl WoodFigures {
    /// Density at a moisture content and the specific gravity on every volume, by [`wood_density`].
    ///
    /// # Errors
    /// `out_of_range`, `not_finite`.
    pub fn density(&self, moisture_pct: f64) -> Result<super::density::WoodDensity, Fault> {
        self.check_ranges()?;
        wood_density(&WoodDensityInput {
            specific_gravity: gravity_12_of_density(self.density_12_kg_m3),
            basis: GravityBasis::TwelvePercent,
            moisture_pct,
            volumetric_shrinkage_pct: self.shrinkage_volumetric_pct,
            fibre_saturation_pct: self.fibre_saturation_pct,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn light(density_12_kg_m3: f64) -> WoodFigures {
        WoodFigures {
            density_12_kg_m3,
            group: None,
            movement_radial_per_pct: None,
            movement_tangential_per_pct: None,
            shrinkage_radial_pct: None,
            shrinkage_tangential_pct: None,
            shrinkage_volumetric_pct: None,
            fibre_saturation_pct: 30.0,
            modulus_of_elasticity_mpa: None,
            modulus_of_rupture_mpa: None,
            shear_parallel_mpa: None,
            compression_perpendicular_mpa: None,
            source: String::new(),
        }
    }

    #[test]
    fn what_is_out_of_range_is_refused() {
        assert_eq!(light(f64::NAN).density(12.0).expect_err("refused").field, "density_12_kg_m3");
        assert_eq!(light(600.0).density(80.0).expect_err("refused").field, "moisture_pct");
    }

    proptest! {
        #[test]
        fn at_twelve_percent_the_density_comes_back(density in 100.0_f64..=1500.0) {
            let back = light(density).density(12.0).expect("allowed").density_kg_m3;
            prop_assert!((back - density).abs() < 1e-9);
        }
    }
}
