//! How far a fastener slips under load.

use super::choice::{Ec5Fastener, Ec5Hole};
use crate::error::{Allowed, ErrorCode, Fault};
use crate::limits::{Limited, limited};
use crate::numeric::real::pow;

/// What the timber is joined to, as the table of slip moduli asks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum Ec5SlipPartner {
    /// Timber or a panel: the geometric mean of both densities counts.
    Wood,
    /// Steel or concrete: the density of the timber counts, and the modulus doubles (7.1(3)).
    SteelOrConcrete,
}

/// A fastener in one shear plane.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<Ec5SlipModulusInput>))]
pub struct Ec5SlipModulusInput {
    /// Kind of fastener.
    pub fastener: Ec5Fastener,
    /// Whether the holes are predrilled; only nails ask.
    pub hole: Ec5Hole,
    /// Diameter, for screws the effective one, mm.
    pub diameter_mm: f64,
    /// Mean density of the first member, kg/m3.
    pub mean_density_kg_m3: f64,
    /// Mean density of the second member, kg/m3; left out it is that of the first.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub second_mean_density_kg_m3: Option<f64>,
    /// What the first member is joined to; wood by default, the lower modulus.
    #[cfg_attr(feature = "json", serde(default = "wood"))]
    pub partner: Ec5SlipPartner,
    /// Lateral load on one fastener in one shear plane, in service, N; by default none, and no slip is given.
    #[cfg_attr(feature = "json", serde(default))]
    pub load_n: f64,
}

limited!(Ec5SlipModulusInput {
    diameter_mm: FASTENER_DIAMETER,
    mean_density_kg_m3: WOOD_DENSITY,
    second_mean_density_kg_m3: WOOD_DENSITY,
    load_n: FORCE
});

#[cfg(feature = "json")]
fn wood() -> Ec5SlipPartner {
    Ec5SlipPartner::Wood
}

/// Slip modulus of one fastener in one shear plane.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Ec5SlipModulus {
    /// Mean density that entered, kg/m3.
    pub mean_density_kg_m3: f64,
    /// Slip modulus in service K_ser, N/mm.
    pub service_n_per_mm: f64,
    /// Slip modulus at the ultimate limit state K_u = 2/3 K_ser, N/mm.
    pub ultimate_n_per_mm: f64,
    /// Slip that is there before the fastener bears: the clearance of a bolt's hole, mm.
    pub clearance_slip_mm: f64,
    /// Slip under the load given, clearance included, mm; without creep.
    pub slip_mm: f64,
}

/// Slip modulus of a dowel-type fastener, for the stiffness of a connection and the shares of a group.
///
/// # Equation
/// ```text
/// bolts, dowels, screws, predrilled nails    K_ser = ρ_m^1.5 d / 23
/// nails without predrilling                  K_ser = ρ_m^1.5 d^0.8 / 30
/// ρ_m = √(ρ_m,1 ρ_m,2)      beside steel or concrete 2 K_ser with ρ_m of the timber      K_u = 2/3 K_ser
/// slip = F / K_ser + clearance      clearance of a bolt's hole 1 mm
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | ρ_m | mean density | kg/m³ | `mean_density_kg_m3` |
/// | d | diameter | mm | `diameter_mm` |
/// | F | load per fastener and shear plane | N | `load_n` |
///
/// # Limits
/// One shear plane of one fastener, without creep: long-term slip grows by the factor of the service class. The American
/// standard has its own modulus γ for the group action factor: see `group_action_factor`.
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` for a second density beside steel or concrete.
///
/// # Source
/// EN 1995-1-1 7.1, Table 7.1, Eq. 2.1 (seen in course examples; nails without predrilling and the bolt's clearance
/// recalled). Checked by `verification/ec5_values`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::*;
/// let dowel = ec5_slip_modulus(&Ec5SlipModulusInput {
///     fastener: Ec5Fastener::Dowel, hole: Ec5Hole::Predrilled, diameter_mm: 12.0, mean_density_kg_m3: 430.0,
///     second_mean_density_kg_m3: None, partner: Ec5SlipPartner::SteelOrConcrete, load_n: 5_000.0,
/// })?;
/// assert!((dowel.service_n_per_mm - 9_304.35).abs() < 0.01);
/// assert!((dowel.slip_mm - 0.537).abs() < 0.001);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn ec5_slip_modulus(input: &Ec5SlipModulusInput) -> Result<Ec5SlipModulus, Fault> {
    input.check_ranges()?;
    let first = input.mean_density_kg_m3;
    let (mean_density_kg_m3, doubled) = match (input.partner, input.second_mean_density_kg_m3) {
        (Ec5SlipPartner::Wood, second) => {
            let second = second.unwrap_or(first);
            // The root of a square would miss the density by its last digit.
            (if first == second { first } else { (first * second).sqrt() }, 1.0)
        }
        (Ec5SlipPartner::SteelOrConcrete, None) => (first, 2.0),
        (Ec5SlipPartner::SteelOrConcrete, Some(second)) => {
            let words = Allowed::Text("left out beside steel or concrete");
            let cure = "leave it out, or join to wood";
            return Err(Fault::number(ErrorCode::Inconsistent, "second_mean_density_kg_m3", second, words, cure));
        }
    };
    let weight = mean_density_kg_m3 * mean_density_kg_m3.sqrt();
    let driven = input.fastener.is_nail() && input.hole == Ec5Hole::Undrilled;
    let plain = if driven { weight * pow(input.diameter_mm, 0.8) / 30.0 } else { weight * input.diameter_mm / 23.0 };
    let service_n_per_mm = doubled * plain;
    let clearance_slip_mm = if input.fastener == Ec5Fastener::Bolt { BOLT_CLEARANCE_MM } else { 0.0 };
    Ok(Ec5SlipModulus {
        mean_density_kg_m3,
        service_n_per_mm,
        ultimate_n_per_mm: 2.0 / 3.0 * service_n_per_mm,
        clearance_slip_mm,
        slip_mm: if input.load_n > 0.0 { input.load_n / service_n_per_mm + clearance_slip_mm } else { 0.0 },
    })
}

/// Slip of a bolt before it bears: its hole is up to 1 mm wider (7.1, 10.4.3).
const BOLT_CLEARANCE_MM: f64 = 1.0;

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const EC5_SLIP_MODULUS: crate::json::Calculation = crate::json::calculation!(
    ec5_slip_modulus: Ec5SlipModulusInput => Ec5SlipModulus, Typed,
    "Eurocode 5: slip modulus of a fastener in one shear plane, and its slip under load"
);

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn dowel() -> Ec5SlipModulusInput {
        Ec5SlipModulusInput {
            fastener: Ec5Fastener::Dowel,
            hole: Ec5Hole::Predrilled,
            diameter_mm: 12.0,
            mean_density_kg_m3: 420.0,
            second_mean_density_kg_m3: None,
            partner: Ec5SlipPartner::Wood,
            load_n: 0.0,
        }
    }

    #[test]
    fn steel_doubles_it_and_two_woods_meet_in_the_middle() {
        let plain = ec5_slip_modulus(&dowel()).unwrap();
        let steel = Ec5SlipModulusInput { partner: Ec5SlipPartner::SteelOrConcrete, ..dowel() };
        let steel = ec5_slip_modulus(&steel).unwrap();
        assert_eq!(steel.service_n_per_mm, 2.0 * plain.service_n_per_mm);
        let swapped = |first, second| {
            let input =
                Ec5SlipModulusInput { mean_density_kg_m3: first, second_mean_density_kg_m3: Some(second), ..dowel() };
            ec5_slip_modulus(&input).unwrap()
        };
        assert_eq!(swapped(400.0, 700.0), swapped(700.0, 400.0));
        assert_eq!(swapped(420.0, 420.0), plain);
        let both = Ec5SlipModulusInput {
            second_mean_density_kg_m3: Some(400.0),
            partner: Ec5SlipPartner::SteelOrConcrete,
            ..dowel()
        };
        assert_eq!(ec5_slip_modulus(&both).unwrap_err().code, ErrorCode::Inconsistent);
    }

    #[test]
    fn a_bolt_slips_before_it_bears() {
        let bolt = Ec5SlipModulusInput { fastener: Ec5Fastener::Bolt, load_n: 1_000.0, ..dowel() };
        let (bolt, tight) = (ec5_slip_modulus(&bolt).unwrap(), ec5_slip_modulus(&dowel()).unwrap());
        assert!((bolt.slip_mm - 1.0 - 1_000.0 / tight.service_n_per_mm).abs() < 1e-12);
        assert_eq!(tight.slip_mm, 0.0);
    }

    proptest! {
        #[test]
        fn denser_wood_and_thicker_fasteners_slip_less(density in 200.0..900.0_f64, diameter in 2.0..20.0_f64) {
            for fastener in [Ec5Fastener::RoundNail, Ec5Fastener::Screw, Ec5Fastener::Bolt] {
                let at = |mean_density_kg_m3, diameter_mm| {
                    let hole = Ec5Hole::Undrilled;
                    let input = Ec5SlipModulusInput { fastener, hole, mean_density_kg_m3, diameter_mm, ..dowel() };
                    ec5_slip_modulus(&input).unwrap().service_n_per_mm
                };
                prop_assert!(at(density * 1.01, diameter) > at(density, diameter));
                prop_assert!(at(density, diameter * 1.01) > at(density, diameter));
            }
        }

        #[test]
        fn hostile_numbers_give_a_fault_or_a_finite_modulus(bits in prop::array::uniform4(any::<u64>()), which in any::<u8>()) {
            let number = |k: usize, fair: f64| if which >> k & 1 == 0 { f64::from_bits(bits[k]) } else { fair };
            let input = Ec5SlipModulusInput {
                diameter_mm: number(0, 6.0),
                mean_density_kg_m3: number(1, 420.0),
                second_mean_density_kg_m3: Some(number(2, 500.0)),
                load_n: number(3, 100.0),
                ..dowel()
            };
            if let Ok(found) = ec5_slip_modulus(&input) {
                prop_assert!(found.service_n_per_mm.is_finite() && found.service_n_per_mm > 0.0 && found.slip_mm.is_finite());
            }
        }
    }
}
