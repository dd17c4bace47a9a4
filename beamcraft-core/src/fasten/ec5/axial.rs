//! Capacity along the axis: the thread of a screw and the shank of a nail pulling out.

use super::EDGE_MM;
use super::choice::Ec5Fastener;
use crate::error::{Allowed, ErrorCode, Fault};
use crate::limits::{Limited, limited};
use crate::numeric::real::{pow, sin_cos_deg};
use crate::verdict::Outcome;

/// Where the withdrawal strength of a screw comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum Ec5WithdrawalRule {
    /// The equation of the standard for screws of 6 to 12 mm (8.38 to 8.40).
    Equation,
    /// A declared strength (8.40a).
    Declared,
}

/// Screws pulled out of wood.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<Ec5ScrewWithdrawalInput>))]
pub struct Ec5ScrewWithdrawalInput {
    /// Outer diameter of the thread d, mm.
    pub thread_diameter_mm: f64,
    /// Diameter at the thread root d_1, mm.
    pub root_diameter_mm: f64,
    /// Thread in the point-side member l_ef, mm.
    pub thread_length_mm: f64,
    /// Characteristic density of the wood, kg/m3.
    pub density_kg_m3: f64,
    /// Angle between the screw's axis and the grain, degrees; 90 in side grain.
    pub axis_to_grain_deg: f64,
    /// Number of screws that act together; by default 1.
    #[cfg_attr(feature = "json", serde(default = "one"))]
    pub count: u32,
    /// Declared withdrawal strength f_ax,k, MPa; left out the equation of the standard is used.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub declared_mpa: Option<f64>,
    /// Density that the declared strength belongs to, kg/m3; left out the strength holds for the wood as it is.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub declared_density_kg_m3: Option<f64>,
}

limited!(Ec5ScrewWithdrawalInput {
    thread_diameter_mm: FASTENER_DIAMETER,
    root_diameter_mm: FASTENER_DIAMETER,
    thread_length_mm: BEARING_LENGTH,
    density_kg_m3: WOOD_DENSITY,
    axis_to_grain_deg: ANGLE_TO_GRAIN,
    count: COUNT,
    declared_mpa: STRESS,
    declared_density_kg_m3: WOOD_DENSITY
});

#[cfg(feature = "json")]
pub(super) fn one() -> u32 {
    1
}

/// Characteristic withdrawal capacity of screws.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Ec5ScrewWithdrawal {
    /// Where the strength comes from.
    pub rule: Ec5WithdrawalRule,
    /// Withdrawal strength f_ax,k across the grain (8.39 or declared), MPa.
    pub withdrawal_mpa: f64,
    /// Factor k_d for thin screws (8.40); 1 for a declared strength.
    pub k_d: f64,
    /// Factor for the angle of the axis to the grain, 1 / (1.2 cos² + sin²) (8.38).
    pub angle_factor: f64,
    /// Factor for the density, (rho_k / rho_a)^0.8 (8.40a); 1 where it does not apply.
    pub density_factor: f64,
    /// Effective number n^0.9 (8.41).
    pub effective_number: f64,
    /// Capacity of one screw, N.
    pub per_screw_n: f64,
    /// Capacity F_ax,k,Rk of all together, N.
    pub capacity_n: f64,
    /// Least thread in the point-side member, 6 d (8.7.2(3)), mm.
    pub required_thread_mm: f64,
    /// Whether the thread in the member is at least that.
    pub penetration: Outcome,
}

/// Characteristic withdrawal capacity of screws loaded along their axis.
///
/// # Equation
/// ```text
/// F_ax = n_ef f_ax d l_ef k_d / (1.2 cos² α + sin² α)          (8.38)      n_ef = n^0.9    (8.41)
/// f_ax = 0.52 d^−0.5 l_ef^−0.1 ρ^0.8       (8.39)               k_d = min(d / 8, 1)         (8.40)
/// F_ax = n_ef f_ax d l_ef / (1.2 cos² α + sin² α) (ρ / ρ_a)^0.8             (8.40a, declared f_ax)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | d, l_ef | thread diameter, thread in the member | mm | `thread_diameter_mm`, `thread_length_mm` |
/// | ρ, ρ_a | density, density of the declared strength | kg/m³ | `density_kg_m3`, `declared_density_kg_m3` |
/// | α | angle of axis to grain | degree | `axis_to_grain_deg` |
/// | n | number of screws | – | `count` |
///
/// # Limits
/// The equation holds for d from 6 to 12 mm and a root of 0.6 to 0.75 d; other screws need a declared strength. The axis
/// stands at 30° or more to the grain: for end grain the standard gives no value. The head, the screw's tension and the
/// spacing are other checks. A thread shorter than 6 d is reported as not met.
///
/// # Errors
/// `out_of_range`, `not_finite`; `no_published_value` outside those limits.
///
/// # Source
/// EN 1995-1-1 8.7.2 with A1 (equations seen, limits of the diameters and 8.40a recalled). Checked by
/// `verification/ec5_values`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::*;
/// let screw = ec5_screw_withdrawal(&Ec5ScrewWithdrawalInput {
///     thread_diameter_mm: 8.0, root_diameter_mm: 5.4, thread_length_mm: 80.0, density_kg_m3: 350.0,
///     axis_to_grain_deg: 90.0, count: 1, declared_mpa: None, declared_density_kg_m3: None,
/// })?;
/// assert!((screw.capacity_n - 8_233.5).abs() < 1.0);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn ec5_screw_withdrawal(input: &Ec5ScrewWithdrawalInput) -> Result<Ec5ScrewWithdrawal, Fault> {
    input.check_ranges()?;
    let (d, length_mm, density) = (input.thread_diameter_mm, input.thread_length_mm, input.density_kg_m3);
    let unpublished = |field, value, words| {
        Err(Fault::number(
            ErrorCode::NoPublishedValue,
            field,
            value,
            Allowed::Text(words),
            "take the strength from a product declaration",
        ))
    };
    if input.axis_to_grain_deg < LEAST_AXIS_DEG {
        return Err(Fault::number(
            ErrorCode::NoPublishedValue,
            "axis_to_grain_deg",
            input.axis_to_grain_deg,
            Allowed::Text("30 degrees and more; the standard has no value for end grain"),
            "drive the screw into side grain",
        ));
    }
    let (rule, withdrawal_mpa, k_d, density_factor) = if let Some(declared_mpa) = input.declared_mpa {
        let factor = input.declared_density_kg_m3.map_or(1.0, |declared| pow(density / declared, 0.8));
        (Ec5WithdrawalRule::Declared, declared_mpa, 1.0, factor)
    } else {
        if !(6.0 - EDGE_MM..=12.0 + EDGE_MM).contains(&d) {
            return unpublished("thread_diameter_mm", d, "6 mm to 12 mm without a declared strength");
        }
        let slim = input.root_diameter_mm / d;
        if !(0.6 - EDGE_MM..=0.75 + EDGE_MM).contains(&slim) {
            return unpublished("root_diameter_mm", input.root_diameter_mm, "0.6 to 0.75 of the thread's diameter");
        }
        let strength_mpa = 0.52 * pow(d, -0.5) * pow(length_mm, -0.1) * pow(density, 0.8);
        (Ec5WithdrawalRule::Equation, strength_mpa, (d / 8.0).min(1.0), 1.0)
    };
    let (sine, cosine) = sin_cos_deg(input.axis_to_grain_deg);
    let angle_factor = 1.0 / (1.2 * cosine * cosine + sine * sine);
    let effective_number = pow(f64::from(input.count), 0.9);
    let per_screw_n = withdrawal_mpa * d * length_mm * k_d * angle_factor * density_factor;
    let required_thread_mm = 6.0 * d;
    let penetration = if length_mm >= required_thread_mm - EDGE_MM { Outcome::Met } else { Outcome::NotMet };
    Ok(Ec5ScrewWithdrawal {
        rule,
        withdrawal_mpa,
        k_d,
        angle_factor,
        density_factor,
        effective_number,
        per_screw_n,
        capacity_n: effective_number * per_screw_n,
        required_thread_mm,
        penetration,
    })
}

/// Least angle of a screw's axis to the grain that the standard has a value for (8.7.2(4)), degrees.
pub(in crate::fasten) const LEAST_AXIS_DEG: f64 = 30.0;

/// How moist the timber is when the nails are driven.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum Ec5NailTimber {
    /// Dry, as in service.
    Dry,
    /// Near fibre saturation, and drying under load: two thirds of the strength.
    DriesUnderLoad,
}

/// The end of a nail that gives in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum Ec5AxialPart {
    /// The shank at the point is drawn out.
    Point,
    /// The head is drawn through.
    Head,
}

/// A nail pulled along its axis.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<Ec5NailWithdrawalInput>))]
pub struct Ec5NailWithdrawalInput {
    /// Kind of nail.
    pub fastener: Ec5Fastener,
    /// Diameter d, mm.
    pub diameter_mm: f64,
    /// Diameter of the head d_h, mm.
    pub head_diameter_mm: f64,
    /// Penetration at the point, of a ringed nail the ringed part, t_pen, mm.
    pub penetration_mm: f64,
    /// Thickness of the member under the head t, mm.
    pub head_side_mm: f64,
    /// Characteristic density of the wood at the point, kg/m3.
    pub density_kg_m3: f64,
    /// Characteristic density of the wood under the head, kg/m3.
    pub head_side_density_kg_m3: f64,
    /// Moisture of the timber when the nail is driven; dry by default, as indoor joinery is.
    #[cfg_attr(feature = "json", serde(default = "dry"))]
    pub timber: Ec5NailTimber,
    /// Declared withdrawal strength f_ax,k, MPa; left out that of smooth nails is used.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub declared_mpa: Option<f64>,
    /// Declared pull-through strength f_head,k, MPa; left out that of smooth nails is used.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub declared_head_mpa: Option<f64>,
}

limited!(Ec5NailWithdrawalInput {
    diameter_mm: FASTENER_DIAMETER,
    head_diameter_mm: HEAD_DIAMETER,
    penetration_mm: BEARING_LENGTH,
    head_side_mm: BEARING_LENGTH,
    density_kg_m3: WOOD_DENSITY,
    head_side_density_kg_m3: WOOD_DENSITY,
    declared_mpa: STRESS,
    declared_head_mpa: STRESS
});

#[cfg(feature = "json")]
fn dry() -> Ec5NailTimber {
    Ec5NailTimber::Dry
}

/// Characteristic capacity of a nail along its axis.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Ec5NailWithdrawal {
    /// Withdrawal strength f_ax,k (8.25 or declared), MPa.
    pub withdrawal_mpa: f64,
    /// Pull-through strength f_head,k (8.26 or declared), MPa.
    pub head_mpa: f64,
    /// Withdrawal capacity per mm of penetration, f_ax,k d, N per mm.
    pub withdrawal_n_per_mm: f64,
    /// Factor for timber that dries under load (8.3.2(8)).
    pub drying_factor: f64,
    /// Factor for a short penetration (8.3.2(7)); 0 below the least penetration.
    pub penetration_factor: f64,
    /// Capacity at the point, all factors in, N.
    pub point_n: f64,
    /// Capacity at the head, with the shank in the member under it where the nail is smooth, all factors in, N.
    pub head_n: f64,
    /// End that gives in first.
    pub governing_part: Ec5AxialPart,
    /// Capacity F_ax,Rk along the axis, N.
    pub capacity_n: f64,
    /// Least penetration: 8 d for smooth nails, 6 d for others (8.3.1.2), mm.
    pub required_penetration_mm: f64,
    /// Whether the penetration is at least that.
    pub penetration: Outcome,
}

/// Characteristic capacity of a nail along its axis, at the point and at the head.
///
/// # Equation
/// ```text
/// smooth nails    F_ax = min(f_ax d t_pen, f_ax d t + f_head d_h²) k      (8.24)
/// other nails     F_ax = min(f_ax d t_pen, f_head d_h²) k                 (8.23)
/// f_ax = 20·10⁻⁶ ρ²    f_head = 70·10⁻⁶ ρ²    smooth nails without a test  (8.25, 8.26)
/// k: smooth  t_pen / (4 d) − 2 from 8 d to 12 d       others  t_pen / (2 d) − 3 from 6 d to 8 d       above 1
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | d, d_h | diameter, head diameter | mm | `diameter_mm`, `head_diameter_mm` |
/// | t_pen, t | penetration, thickness under the head | mm | `penetration_mm`, `head_side_mm` |
/// | ρ | density at the point, under the head | kg/m³ | `density_kg_m3`, `head_side_density_kg_m3` |
///
/// # Limits
/// Nails across the grain: in end grain they carry nothing along their axis. Smooth nails must not carry permanent or
/// long-term load along their axis. The factor for a short penetration is applied to the whole capacity.
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` for a fastener that is no nail; `no_published_value` for a threaded nail
/// without declared strengths.
///
/// # Source
/// EN 1995-1-1 8.3.2 (equations seen; drying, end grain and permanent load recalled). Checked by
/// `verification/ec5_values`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::*;
/// let nail = ec5_nail_withdrawal(&Ec5NailWithdrawalInput {
///     fastener: Ec5Fastener::RoundNail, diameter_mm: 3.1, head_diameter_mm: 7.0, penetration_mm: 40.0,
///     head_side_mm: 25.0, density_kg_m3: 350.0, head_side_density_kg_m3: 350.0, timber: Ec5NailTimber::Dry,
///     declared_mpa: None, declared_head_mpa: None,
/// })?;
/// assert!((nail.withdrawal_n_per_mm - 7.595).abs() < 1e-3);
/// assert_eq!(nail.governing_part, Ec5AxialPart::Point);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn ec5_nail_withdrawal(input: &Ec5NailWithdrawalInput) -> Result<Ec5NailWithdrawal, Fault> {
    input.check_ranges()?;
    if !input.fastener.is_nail() {
        return Err(Fault::plain(ErrorCode::Inconsistent, "fastener", "a nail", "use the calculation for screws"));
    }
    let smooth = input.fastener.is_smooth_nail();
    let strength = |declared: Option<f64>, field, plain: f64| match declared {
        Some(declared_mpa) => Ok(declared_mpa),
        None if smooth => Ok(plain),
        None => Err(Fault::plain(
            ErrorCode::NoPublishedValue,
            field,
            "a declared strength for threaded nails",
            "take it from a product declaration",
        )),
    };
    let (d, penetration_mm) = (input.diameter_mm, input.penetration_mm);
    let withdrawal_mpa =
        strength(input.declared_mpa, "declared_mpa", 20e-6 * input.density_kg_m3 * input.density_kg_m3)?;
    let head_mpa =
        strength(input.declared_head_mpa, "declared_head_mpa", smooth_head_mpa(input.head_side_density_kg_m3))?;
    let drying_factor = if input.timber == Ec5NailTimber::DriesUnderLoad { 2.0 / 3.0 } else { 1.0 };
    let slender = penetration_mm / d;
    let (least_slender, ramp) = if smooth { (8.0, slender / 4.0 - 2.0) } else { (6.0, slender / 2.0 - 3.0) };
    let penetration_factor = ramp.clamp(0.0, 1.0);
    let factor = drying_factor * penetration_factor;
    // The shank under the head holds only where it is smooth: a ringed shank has bored its way through.
    let shank_n = if smooth { withdrawal_mpa_under_head(input) * d * input.head_side_mm } else { 0.0 };
    let point_n = withdrawal_mpa * d * penetration_mm * factor;
    let head_n = (shank_n + head_mpa * input.head_diameter_mm * input.head_diameter_mm) * factor;
    let (governing_part, capacity_n) = super::least((Ec5AxialPart::Point, point_n), &[(Ec5AxialPart::Head, head_n)]);
    let required_penetration_mm = least_slender * d;
    let met = penetration_mm >= required_penetration_mm - EDGE_MM;
    Ok(Ec5NailWithdrawal {
        withdrawal_mpa,
        head_mpa,
        withdrawal_n_per_mm: withdrawal_mpa * d,
        drying_factor,
        penetration_factor,
        point_n,
        head_n,
        governing_part,
        capacity_n,
        required_penetration_mm,
        penetration: if met { Outcome::Met } else { Outcome::NotMet },
    })
}

/// Withdrawal strength of the shank in the member under the head; a declared one belongs to the wood at the point, and
/// is taken for both.
fn withdrawal_mpa_under_head(input: &Ec5NailWithdrawalInput) -> f64 {
    input.declared_mpa.unwrap_or(20e-6 * input.head_side_density_kg_m3 * input.head_side_density_kg_m3)
}

/// Pull-through strength of a smooth nail's head (8.26), MPa.
pub(super) fn smooth_head_mpa(density_kg_m3: f64) -> f64 {
    70e-6 * density_kg_m3 * density_kg_m3
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const EC5_SCREW_WITHDRAWAL: crate::json::Calculation = crate::json::calculation!(
    ec5_screw_withdrawal: Ec5ScrewWithdrawalInput => Ec5ScrewWithdrawal, Typed,
    "Eurocode 5: withdrawal capacity of screws along their axis"
);

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const EC5_NAIL_WITHDRAWAL: crate::json::Calculation = crate::json::calculation!(
    ec5_nail_withdrawal: Ec5NailWithdrawalInput => Ec5NailWithdrawal, Typed,
    "Eurocode 5: capacity of a nail along its axis, at the point and at the head"
);
