//! Specific gravity and density at a moisture content.

use crate::error::Fault;
use crate::limits::{Limited, limited};

/// Density of water, kg/m³: the reference of every specific gravity (FPL-GTR-282, Eq. 4-14).
const WATER_KG_M3: f64 = 1000.0;
/// Share of the basic specific gravity by which the volume shrinks from green to ovendry (FPL-GTR-282, Eq. 4-12).
const SHRINKAGE_SHARE: f64 = 0.265;
/// Moisture content at which the strength tables state specific gravity, %.
pub(super) const TABLE_MOISTURE_PCT: f64 = 12.0;

/// The volume that a specific gravity is stated for; the mass is ovendry in all of them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum GravityBasis {
    /// Volume when green: the basic specific gravity.
    Green,
    /// Volume at 12 % moisture content: the value of the strength tables.
    TwelvePercent,
    /// Volume when ovendry: the value of the NDS.
    Ovendry,
}

/// A wood and its moisture content.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<WoodDensityInput>))]
pub struct WoodDensityInput {
    /// Specific gravity: ovendry mass over the volume that `basis` names, relative to water.
    pub specific_gravity: f64,
    /// The volume that the specific gravity is stated for.
    pub basis: GravityBasis,
    /// Moisture content, % of the ovendry mass.
    pub moisture_pct: f64,
    /// Shrinkage of the volume from green to ovendry, % of the green volume; estimated from the specific gravity when left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub volumetric_shrinkage_pct: Option<f64>,
    /// Fibre saturation point, %; 30 in general use (FPL-GTR-282, chapter 4).
    #[cfg_attr(feature = "json", serde(default = "fibre_saturation"))]
    pub fibre_saturation_pct: f64,
}

limited!(WoodDensityInput {
    specific_gravity: SPECIFIC_GRAVITY,
    moisture_pct: MOISTURE,
    volumetric_shrinkage_pct: VOLUMETRIC_SHRINKAGE,
    fibre_saturation_pct: FIBRE_SATURATION,
});

#[cfg(feature = "json")]
pub(super) fn fibre_saturation() -> f64 {
    30.0
}

/// Specific gravity in each basis, and density.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct WoodDensity {
    /// Density with its water at the moisture content given, kg/m³.
    pub density_kg_m3: f64,
    /// Specific gravity: ovendry mass over the volume at the moisture content given.
    pub specific_gravity_at_moisture: f64,
    /// Basic specific gravity: ovendry mass over green volume.
    pub specific_gravity_green: f64,
    /// Specific gravity: ovendry mass over volume at 12 % moisture content.
    pub specific_gravity_12: f64,
    /// Specific gravity: ovendry mass over ovendry volume.
    pub specific_gravity_ovendry: f64,
    /// Shrinkage of the volume from green to ovendry, given or estimated, % of the green volume.
    pub total_shrinkage_pct: f64,
    /// Shrinkage of the volume from green to the moisture content given, % of the green volume.
    pub shrinkage_pct: f64,
}

/// Density of wood at a moisture content, from a specific gravity on any of the three volumes in use.
///
/// # Equation
/// ```text
/// S_x  = S_0 (1 − x / M_fs), 0 above M_fs                              Eq. 4-9
/// G_x  = G_b / (1 − S_x / 100)                                         Eq. 4-11 (Eq. 4-10 between any two volumes)
/// rho  = 1000 G_x (1 + x / 100)                                        Eq. 4-14
/// S_0  = 26.5 G_b where it is not given                                Eq. 4-12
/// so that G_b = G_m / (1 + 0.265 G_m (1 − m / M_fs)) from the value G_m at moisture m (12 or 0)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | x | moisture content | % | `moisture_pct` |
/// | S_0, S_x | shrinkage of the volume from green to ovendry, to x | % | `total_shrinkage_pct`, `shrinkage_pct` |
/// | M_fs | fibre saturation point | % | `fibre_saturation_pct` |
/// | G_b, G_x | specific gravity on the green volume, at x | – | `specific_gravity_green`, `specific_gravity_at_moisture` |
/// | rho | density including water | kg/m³ | `density_kg_m3` |
///
/// # Limits
/// Averages of a species: a single board differs by some 10 % (handbook, chapter 4, recalled). From 12 % to 12 % no shrinkage enters.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// FPL-GTR-282, Eq. 4-9 to 4-14 (seen); the way back from G_m to G_b is derived from them — checked by `verification/wood`.
///
/// # Examples
/// ```
/// use beamcraft_core::wood::{wood_density, GravityBasis, WoodDensityInput};
/// let ash = wood_density(&WoodDensityInput {
///     specific_gravity: 0.60,
///     basis: GravityBasis::TwelvePercent,
///     moisture_pct: 12.0,
///     volumetric_shrinkage_pct: None,
///     fibre_saturation_pct: 30.0,
/// })?;
/// assert!((ash.density_kg_m3 - 672.0).abs() < 1e-9);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn wood_density(input: &WoodDensityInput) -> Result<WoodDensity, Fault> {
    input.check_ranges()?;
    let saturation_pct = input.fibre_saturation_pct;
    // What is left of the shrinkage at a moisture content, as a share of the whole.
    let left = |moisture_pct: f64| (1.0 - moisture_pct / saturation_pct).max(0.0);
    let given = input.specific_gravity;
    let given_left = match input.basis {
        GravityBasis::Green => 0.0,
        GravityBasis::TwelvePercent => left(TABLE_MOISTURE_PCT),
        GravityBasis::Ovendry => 1.0,
    };
    let total = match input.volumetric_shrinkage_pct {
        Some(percent) => percent / 100.0,
        None => SHRINKAGE_SHARE * given / (1.0 + SHRINKAGE_SHARE * given * given_left),
    };
    // Volumes relative to green; a ratio of equal volumes is exactly 1, so a value comes back as it was given.
    let volume = |left: f64| 1.0 - total * left;
    let gravity = |left: f64| given * (volume(given_left) / volume(left));
    let (moisture_pct, here) = (input.moisture_pct, left(input.moisture_pct));
    let specific_gravity_at_moisture = gravity(here);
    Ok(WoodDensity {
        density_kg_m3: WATER_KG_M3 * specific_gravity_at_moisture * (1.0 + moisture_pct / 100.0),
        specific_gravity_at_moisture,
        specific_gravity_green: gravity(0.0),
        specific_gravity_12: gravity(left(TABLE_MOISTURE_PCT)),
        specific_gravity_ovendry: gravity(1.0),
        total_shrinkage_pct: 100.0 * total,
        shrinkage_pct: 100.0 * total * here,
    })
}

/// Specific gravity at 12 % of a wood whose density with its water at 12 % is known.
pub(super) fn gravity_12_of_density(density_kg_m3: f64) -> f64 {
    density_kg_m3 / (WATER_KG_M3 * (1.0 + TABLE_MOISTURE_PCT / 100.0))
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const WOOD_DENSITY: crate::json::Calculation = crate::json::calculation!(
    wood_density: WoodDensityInput => WoodDensity, Typed,
    "Density and specific gravity of wood at a moisture content"
);

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const BASES: [GravityBasis; 3] = [GravityBasis::Green, GravityBasis::TwelvePercent, GravityBasis::Ovendry];

    fn wood(specific_gravity: f64, basis: GravityBasis, moisture_pct: f64, shrinkage: Option<f64>) -> WoodDensity {
        let (volumetric_shrinkage_pct, fibre_saturation_pct) = (shrinkage, 30.0);
        let input =
            WoodDensityInput { specific_gravity, basis, moisture_pct, volumetric_shrinkage_pct, fibre_saturation_pct };
        wood_density(&input).expect("allowed")
    }

    fn near(a: f64, b: f64) -> bool {
        (a - b).abs() <= 1e-12 * a.abs().max(b.abs())
    }

    #[test]
    fn the_one_step_forms_of_the_handbook_agree() {
        for gravity in [0.31, 0.5, 0.72] {
            for x in [0.0, 6.0, 12.0, 20.0, 30.0] {
                // Eq. 4-13, and Eq. 4-16 with 4-15 from the ovendry density.
                let basic = gravity / (1.0 - 0.265 * gravity * (1.0 - x / 30.0));
                assert!(near(wood(gravity, GravityBasis::Green, x, None).specific_gravity_at_moisture, basic));
                let rho_0 = 1000.0 * gravity;
                let s_0 = 26.5 * rho_0 / (1000.0 + 0.265 * rho_0);
                let rho_x = rho_0 * (1.0 + x / 100.0) * (100.0 - s_0) / (100.0 - s_0 * (1.0 - x / 30.0));
                assert!(near(wood(gravity, GravityBasis::Ovendry, x, None).density_kg_m3, rho_x));
            }
        }
    }

    #[test]
    fn above_fibre_saturation_only_water_is_added() {
        let input = WoodDensityInput {
            specific_gravity: 0.31,
            basis: GravityBasis::Green,
            moisture_pct: 28.0,
            volumetric_shrinkage_pct: Some(6.8),
            fibre_saturation_pct: 22.0,
        };
        let wet = wood_density(&input).expect("allowed");
        assert_eq!((wet.shrinkage_pct, wet.specific_gravity_at_moisture), (0.0, 0.31));
        assert!(near(wet.density_kg_m3, 310.0 * 1.28));
    }

    proptest! {
        #[test]
        fn the_three_bases_say_the_same(gravity in 0.2_f64..1.0, x in 0.0_f64..=30.0, given in proptest::option::of(0.0_f64..=25.0)) {
            let green = wood(gravity, GravityBasis::Green, x, given);
            let twelve = wood(green.specific_gravity_12, GravityBasis::TwelvePercent, x, given);
            let ovendry = wood(green.specific_gravity_ovendry, GravityBasis::Ovendry, x, given);
            prop_assert!(near(green.density_kg_m3, twelve.density_kg_m3) && near(green.density_kg_m3, ovendry.density_kg_m3));
            prop_assert!(near(green.total_shrinkage_pct, twelve.total_shrinkage_pct));
            prop_assert!(green.specific_gravity_green <= green.specific_gravity_12);
            prop_assert!(green.specific_gravity_12 <= green.specific_gravity_ovendry);
        }

        #[test]
        fn a_heavier_wood_stays_heavier_and_a_wetter_one_too(a in 0.05_f64..1.5, b in 0.05_f64..1.5, x in 0.0_f64..=30.0, y in 0.0_f64..=30.0, basis in proptest::sample::select(BASES.to_vec())) {
            let density = |gravity: f64, x: f64| wood(gravity, basis, x, Some(12.0)).density_kg_m3;
            prop_assert!(density(a.min(b), x) <= density(a.max(b), x));
            prop_assert!(density(a, x.min(y)) <= density(a, x.max(y)));
        }

        #[test]
        fn any_bits_give_finite_numbers_or_a_fault(bits: [u64; 4], basis in proptest::sample::select(BASES.to_vec()), field in 0_usize..4) {
            let mut values = [0.5, 12.0, 10.0, 30.0];
            values[field] = f64::from_bits(bits[field]);
            for [specific_gravity, moisture_pct, shrinkage, fibre_saturation_pct] in [values, bits.map(f64::from_bits)] {
                let volumetric_shrinkage_pct = Some(shrinkage);
                let input = WoodDensityInput { specific_gravity, basis, moisture_pct, volumetric_shrinkage_pct, fibre_saturation_pct };
                if let Ok(found) = wood_density(&input) {
                    for value in [found.density_kg_m3, found.specific_gravity_ovendry, found.specific_gravity_green] {
                        prop_assert!(value.is_finite() && value > 0.0);
                    }
                }
            }
        }
    }
}
