//! Bending of the fastener: yield moment, and the diameter of a screw in the equations.

use super::EDGE_MM;
use super::choice::Ec5Fastener;
use crate::error::{Allowed, ErrorCode, Fault};
use crate::limits::{Limited, limited};
use crate::numeric::real::pow;

/// A fastener whose yield moment is computed.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<Ec5YieldMomentInput>))]
pub struct Ec5YieldMomentInput {
    /// Kind of fastener.
    pub fastener: Ec5Fastener,
    /// Diameter: of a nail, bolt or dowel; side of a square nail; effective diameter of a screw, mm.
    pub diameter_mm: f64,
    /// Tensile strength of the steel or wire, f_u,k, MPa; 600 and more for nails.
    pub tensile_strength_mpa: f64,
}

limited!(Ec5YieldMomentInput { diameter_mm: FASTENER_DIAMETER, tensile_strength_mpa: STRESS });

/// Characteristic yield moment of a fastener.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Ec5YieldMoment {
    /// Factor of the equation: 0.3 for round sections, 0.45 for square and grooved nails.
    pub shape_factor: f64,
    /// Yield moment M_y,Rk (8.14, 8.30), N·mm.
    pub yield_moment_nmm: f64,
}

/// Characteristic yield moment of a nail, screw, bolt or dowel from the strength of its steel.
///
/// # Equation
/// ```text
/// M_y = 0.3 f_u d^2.6      round nails, bolts, dowels, screws      (8.14, 8.30)
/// M_y = 0.45 f_u d^2.6     square and grooved nails                (8.14)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | f_u | tensile strength | MPa | `tensile_strength_mpa` |
/// | d | diameter | mm | `diameter_mm` |
///
/// # Limits
/// Nails of wire of at least 600 MPa. Ringed and threaded nails and hardened screws have declared yield moments: take
/// those.
///
/// # Errors
/// `out_of_range`, `not_finite`; `no_published_value` for a threaded nail and for a smooth nail of wire below 600 MPa.
///
/// # Source
/// EN 1995-1-1 8.3.1.1(4), 8.5.1.1(3), 8.7.1 (seen). Checked by `verification/ec5_values`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::{Ec5Fastener, Ec5YieldMomentInput, ec5_yield_moment};
/// let input = Ec5YieldMomentInput { fastener: Ec5Fastener::Bolt, diameter_mm: 12.0, tensile_strength_mpa: 800.0 };
/// assert!((ec5_yield_moment(&input)?.yield_moment_nmm - 153_491.0).abs() < 1.0);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn ec5_yield_moment(input: &Ec5YieldMomentInput) -> Result<Ec5YieldMoment, Fault> {
    input.check_ranges()?;
    let weak_wire = input.fastener.is_smooth_nail() && input.tensile_strength_mpa < LEAST_WIRE_MPA;
    if weak_wire {
        return Err(Fault::number(
            ErrorCode::NoPublishedValue,
            "tensile_strength_mpa",
            input.tensile_strength_mpa,
            Allowed::Text("at least 600 MPa for the wire of nails"),
            "take the yield moment from a product declaration",
        ));
    }
    let shape_factor = match input.fastener {
        Ec5Fastener::SquareNail => 0.45,
        Ec5Fastener::RoundNail | Ec5Fastener::Screw | Ec5Fastener::Bolt | Ec5Fastener::Dowel => 0.3,
        Ec5Fastener::ThreadedNail => {
            return Err(Fault::plain(
                ErrorCode::NoPublishedValue,
                "fastener",
                "smooth nails, screws, bolts and dowels",
                "take the yield moment from a product declaration",
            ));
        }
    };
    let yield_moment_nmm = shape_factor * input.tensile_strength_mpa * pow(input.diameter_mm, 2.6);
    Ok(Ec5YieldMoment { shape_factor, yield_moment_nmm })
}

/// Least tensile strength of nail wire that the equation holds for (8.3.1.1(4)), MPa.
const LEAST_WIRE_MPA: f64 = 600.0;

/// What decides the diameter of a screw in the equations.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum Ec5ScrewDiameterRule {
    /// The smooth shank, as thick as the thread, reaches at least 4 d into the point-side member.
    SmoothShank,
    /// Otherwise: 1.1 times the thread root.
    ThreadRoot,
}

/// A screw loaded across its axis.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<Ec5ScrewDiameterInput>))]
pub struct Ec5ScrewDiameterInput {
    /// Outer diameter of the thread, mm.
    pub thread_diameter_mm: f64,
    /// Diameter at the thread root, mm.
    pub root_diameter_mm: f64,
    /// Diameter of the smooth shank, mm; left out for a screw threaded to its head.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub shank_diameter_mm: Option<f64>,
    /// How far the smooth shank reaches into the member at the point, mm.
    pub shank_in_point_member_mm: f64,
}

limited!(Ec5ScrewDiameterInput {
    thread_diameter_mm: FASTENER_DIAMETER,
    root_diameter_mm: FASTENER_DIAMETER,
    shank_diameter_mm: FASTENER_DIAMETER,
    shank_in_point_member_mm: LENGTH
});

/// Diameter of a screw in the equations for lateral load.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Ec5ScrewDiameter {
    /// What decides.
    pub rule: Ec5ScrewDiameterRule,
    /// Effective diameter d_ef, mm; up to 6 mm the rules for nails apply, above it those for bolts.
    pub effective_diameter_mm: f64,
}

/// Effective diameter of a screw under lateral load.
///
/// # Equation
/// ```text
/// d_ef = shank diameter     where the shank is as thick as the thread and enters the point-side member by 4 d or more
/// d_ef = 1.1 d_root         otherwise
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | d | shank diameter | mm | `shank_diameter_mm` |
/// | d_root | diameter at the thread root | mm | `root_diameter_mm` |
///
/// # Limits
/// "As thick as the thread" is read as equal to within a tenth of a millimetre.
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` when the root is thicker than the thread.
///
/// # Source
/// EN 1995-1-1 8.7.1 (seen in textbook extracts; the tenth of a millimetre is our reading).
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::{Ec5ScrewDiameterInput, ec5_screw_diameter};
/// let found = ec5_screw_diameter(&Ec5ScrewDiameterInput {
///     thread_diameter_mm: 6.0, root_diameter_mm: 4.0, shank_diameter_mm: Some(4.3), shank_in_point_member_mm: 30.0,
/// })?;
/// assert!((found.effective_diameter_mm - 4.4).abs() < 1e-12);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn ec5_screw_diameter(input: &Ec5ScrewDiameterInput) -> Result<Ec5ScrewDiameter, Fault> {
    input.check_ranges()?;
    if input.root_diameter_mm > input.thread_diameter_mm + EDGE_MM {
        return Err(Fault::number(
            ErrorCode::Inconsistent,
            "root_diameter_mm",
            input.root_diameter_mm,
            Allowed::Text("at most the outer diameter of the thread"),
            "the root is the core of the thread",
        ));
    }
    if let Some(shank_mm) = input.shank_diameter_mm
        && (shank_mm - input.thread_diameter_mm).abs() <= SAME_MM
        && input.shank_in_point_member_mm >= 4.0 * shank_mm - EDGE_MM
    {
        return Ok(Ec5ScrewDiameter { rule: Ec5ScrewDiameterRule::SmoothShank, effective_diameter_mm: shank_mm });
    }
    let effective_diameter_mm = 1.1 * input.root_diameter_mm;
    Ok(Ec5ScrewDiameter { rule: Ec5ScrewDiameterRule::ThreadRoot, effective_diameter_mm })
}

/// Diameters that differ by no more are taken as equal, mm.
const SAME_MM: f64 = 0.1;

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const EC5_YIELD_MOMENT: crate::json::Calculation = crate::json::calculation!(
    ec5_yield_moment: Ec5YieldMomentInput => Ec5YieldMoment, Typed,
    "Eurocode 5: yield moment of a nail, screw, bolt or dowel"
);

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const EC5_SCREW_DIAMETER: crate::json::Calculation = crate::json::calculation!(
    ec5_screw_diameter: Ec5ScrewDiameterInput => Ec5ScrewDiameter, Typed,
    "Eurocode 5: effective diameter of a screw under lateral load"
);
