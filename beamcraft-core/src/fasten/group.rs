//! A group of fasteners under a load that does not pass through its middle.

use crate::cite::{Clause, Source};
use crate::error::{Allowed, Detail, Error, ErrorCode, Fault, Result};
use crate::limits::{faults_at, limited};
use crate::numeric::real::atan2_deg;

/// Where a fastener of a group stands.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<FastenerPosition>))]
pub struct FastenerPosition {
    /// Position to the right, mm.
    pub x_mm: f64,
    /// Position upwards, mm.
    pub y_mm: f64,
}

limited!(FastenerPosition { x_mm: SIGNED_LENGTH, y_mm: SIGNED_LENGTH });

/// A group of equal fasteners, seen from the front, and its load.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<FastenerGroupInput>))]
pub struct FastenerGroupInput {
    /// Where the fasteners stand.
    pub positions: Vec<FastenerPosition>,
    /// Force to the right, in the plane, N.
    #[cfg_attr(feature = "json", serde(default))]
    pub force_x_n: f64,
    /// Force upwards, in the plane, N; a weight is negative.
    #[cfg_attr(feature = "json", serde(default))]
    pub force_y_n: f64,
    /// Where the force acts, to the right, mm.
    #[cfg_attr(feature = "json", serde(default))]
    pub load_x_mm: f64,
    /// Where the force acts, upwards, mm.
    #[cfg_attr(feature = "json", serde(default))]
    pub load_y_mm: f64,
    /// Further moment in the plane, anticlockwise, N·mm.
    #[cfg_attr(feature = "json", serde(default))]
    pub moment_nmm: f64,
    /// Pull away from the wall at the place where the force acts, N.
    #[cfg_attr(feature = "json", serde(default))]
    pub pull_n: f64,
    /// Moment that tips the top of the strip away from the wall, such as weight times its distance from the wall, N·mm.
    #[cfg_attr(feature = "json", serde(default))]
    pub tipping_nmm: f64,
    /// Height of the strip's lower edge, on which it tips, mm; needed with a pull or a tipping moment.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lower_edge_y_mm: Option<f64>,
}

limited!(FastenerGroupInput {
    force_x_n: SIGNED_FORCE,
    force_y_n: SIGNED_FORCE,
    load_x_mm: SIGNED_LENGTH,
    load_y_mm: SIGNED_LENGTH,
    moment_nmm: SIGNED_MOMENT,
    pull_n: FORCE,
    tipping_nmm: MOMENT,
    lower_edge_y_mm: SIGNED_LENGTH
});

/// What one fastener of a group carries.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct FastenerShare {
    /// Position to the right, mm.
    pub x_mm: f64,
    /// Position upwards, mm.
    pub y_mm: f64,
    /// Force on the fastener to the right, N.
    pub force_x_n: f64,
    /// Force on the fastener upwards, N.
    pub force_y_n: f64,
    /// Resultant across the axis, N.
    pub lateral_n: f64,
    /// Direction of the resultant, anticlockwise from the right, degrees.
    pub direction_deg: f64,
    /// Pull along the axis, N.
    pub pull_n: f64,
}

/// How the strip stands on the wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum StripContact {
    /// No pull and no tipping.
    Unloaded,
    /// The lower edge presses on the wall: it pries, and adds to the pull of the fasteners.
    EdgePresses,
    /// The strip lifts off: the fasteners carry the pull alone.
    LiftsOff,
}

/// The shares of a group of fasteners.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct FastenerGroup {
    /// Centroid of the fasteners, to the right, mm.
    pub centroid_x_mm: f64,
    /// Centroid of the fasteners, upwards, mm.
    pub centroid_y_mm: f64,
    /// Sum of the squared distances of the fasteners from the centroid, mm².
    pub polar_sum_mm2: f64,
    /// Moment of the in-plane loads about the centroid, anticlockwise, N·mm.
    pub moment_about_centroid_nmm: f64,
    /// Share of each fastener, in the order given.
    pub shares: Vec<FastenerShare>,
    /// Index of the fastener with the largest lateral force.
    pub most_lateral: u32,
    /// Largest lateral force, N.
    pub most_lateral_n: f64,
    /// Index of the fastener with the largest pull.
    pub most_pull: u32,
    /// Largest pull, N.
    pub most_pull_n: f64,
    /// How the strip stands on the wall.
    pub contact: StripContact,
    /// Force with which the lower edge presses on the wall, N.
    pub prying_n: f64,
    /// Largest lateral force over the force that each would carry if the load passed through the centroid; 1 without
    /// eccentricity.
    pub eccentricity_factor: f64,
    /// What the shares rest on.
    pub clause: Clause,
}

/// Shares of the fasteners of a group under an eccentric load, a pull and a tipping moment.
///
/// # Equation
/// ```text
/// in the plane (elastic method):    M = M_0 + F_y (x_F − x̄) − F_x (y_F − ȳ)      Σr² = Σ (x_i − x̄)² + (y_i − ȳ)²
///   F_xi = F_x/n − M (y_i − ȳ)/Σr²      F_yi = F_y/n + M (x_i − x̄)/Σr²
/// away from the wall, h_i above the lower edge:
///   lower edge presses:   T_i = M_e h_i/Σh²      M_e = M_t + T (y_F − y_e)      prying C = Σ T_i − T
///   lifts off (C < 0):    T_i = T/n + M_c (y_i − ȳ)/Σ(y_i − ȳ)²                M_c = M_t + T (y_F − ȳ)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | F_x, F_y, M_0 | in-plane force and moment | N, N·mm | `force_x_n`, `force_y_n`, `moment_nmm` |
/// | x_F, y_F | where the force acts | mm | `load_x_mm`, `load_y_mm` |
/// | T, M_t | pull and tipping moment | N, N·mm | `pull_n`, `tipping_nmm` |
///
/// # Limits
/// Equal fasteners, a stiff strip, forces in proportion to displacements. Where the most loaded fasteners may yield,
/// `fastener_group_limit` gives the limit load about the instantaneous centre.
/// The pull does not depend on the fasteners' place along the strip: tip in one direction at a time. Local codes and
/// licensed practice decide where people could hang on the beam.
///
/// # Errors
/// `out_of_range`, `not_finite`; `missing_field` without positions, or without the lower edge under a pull; `inconsistent`
/// for a moment on fasteners that all stand in one place, a fastener on or below the lower edge, or a lifted strip whose
/// fasteners stand at one height and cannot hold the moment.
///
/// # Source
/// Statics: equilibrium of a stiff plate on equal springs; checked by `verification/group` (a published bolt group) and
/// by equilibrium in the tests.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::{FastenerGroupInput, FastenerPosition, fastener_group};
/// let at = |x_mm, y_mm| FastenerPosition { x_mm, y_mm };
/// let group = fastener_group(&FastenerGroupInput {
///     positions: vec![at(-30.0, 0.0), at(30.0, 0.0)],
///     force_x_n: 0.0,
///     force_y_n: -100.0,
///     load_x_mm: 60.0,
///     load_y_mm: 0.0,
///     moment_nmm: 0.0,
///     pull_n: 0.0,
///     tipping_nmm: 0.0,
///     lower_edge_y_mm: None,
/// })?;
/// assert_eq!(group.shares[1].force_y_n, -150.0);
/// assert_eq!(group.shares[0].force_y_n, 50.0);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn fastener_group(input: &FastenerGroupInput) -> Result<FastenerGroup> {
    let mut faults = faults_at("", input);
    for (k, position) in input.positions.iter().enumerate() {
        faults.extend(faults_at(&format!("positions[{k}]"), position));
    }
    Error::unless_empty(faults)?;
    if input.positions.is_empty() || input.positions.len() > 10_000 {
        return Err(Fault::plain(ErrorCode::MissingField, "positions", "1 to 10000 fasteners", "add a fastener").into());
    }
    let count = input.positions.len() as f64;
    let centroid_x_mm = input.positions.iter().map(|at| at.x_mm).sum::<f64>() / count;
    let centroid_y_mm = input.positions.iter().map(|at| at.y_mm).sum::<f64>() / count;
    let arms = || input.positions.iter().map(|at| (at.x_mm - centroid_x_mm, at.y_mm - centroid_y_mm));
    let polar_sum_mm2: f64 = arms().map(|(x, y)| x * x + y * y).sum();
    let moment_about_centroid_nmm = input.moment_nmm + input.force_y_n * (input.load_x_mm - centroid_x_mm)
        - input.force_x_n * (input.load_y_mm - centroid_y_mm);
    if polar_sum_mm2 < SMALLEST_SPREAD_MM2 && moment_about_centroid_nmm != 0.0 {
        return Err(Fault::number(
            ErrorCode::Inconsistent,
            "positions",
            polar_sum_mm2,
            Allowed::Text("fasteners that stand apart, for a load with a moment about them"),
            "add a fastener beside, or move the load onto the fastener",
        )
        .into());
    }
    let turn = if polar_sum_mm2 < SMALLEST_SPREAD_MM2 { 0.0 } else { moment_about_centroid_nmm / polar_sum_mm2 };
    let tension = tension(input, centroid_y_mm)?;
    let shares: Vec<FastenerShare> = input
        .positions
        .iter()
        .zip(arms())
        .zip(tension.pulls)
        .map(|((at, (x, y)), pull_n)| {
            let (force_x_n, force_y_n) = (input.force_x_n / count - turn * y, input.force_y_n / count + turn * x);
            FastenerShare {
                x_mm: at.x_mm,
                y_mm: at.y_mm,
                force_x_n,
                force_y_n,
                lateral_n: (force_x_n * force_x_n + force_y_n * force_y_n).sqrt(),
                direction_deg: atan2_deg(force_y_n, force_x_n),
                pull_n,
            }
        })
        .collect();
    let most = |value: fn(&FastenerShare) -> f64| {
        shares.iter().zip(0_u32..).fold(
            (0, 0.0),
            |most: (u32, f64), (share, index)| {
                if value(share) > most.1 { (index, value(share)) } else { most }
            },
        )
    };
    let (most_lateral, most_lateral_n) = most(|share| share.lateral_n);
    let (most_pull, most_pull_n) = most(|share| share.pull_n);
    let even_n = (input.force_x_n * input.force_x_n + input.force_y_n * input.force_y_n).sqrt() / count;
    // Beside a force too small to matter the ratio says nothing.
    let eccentricity_factor = if even_n > 1e-9 * most_lateral_n { most_lateral_n / even_n } else { 1.0 };
    Ok(FastenerGroup {
        centroid_x_mm,
        centroid_y_mm,
        polar_sum_mm2,
        moment_about_centroid_nmm,
        shares,
        most_lateral,
        most_lateral_n,
        most_pull,
        most_pull_n,
        contact: tension.contact,
        prying_n: tension.prying_n,
        eccentricity_factor,
        clause: Clause::new(Source::Statics, "elastic method for groups of fasteners"),
    })
}

/// Fasteners closer together than a thousandth of a millimetre stand in one place.
pub(super) const SMALLEST_SPREAD_MM2: f64 = 1e-6;

/// Pulls along the axes.
struct Tension {
    pulls: Vec<f64>,
    contact: StripContact,
    prying_n: f64,
}

fn tension(input: &FastenerGroupInput, centroid_y_mm: f64) -> Result<Tension> {
    let count = input.positions.len() as f64;
    if input.pull_n == 0.0 && input.tipping_nmm == 0.0 {
        let pulls = vec![0.0; input.positions.len()];
        return Ok(Tension { pulls, contact: StripContact::Unloaded, prying_n: 0.0 });
    }
    let Some(edge_mm) = input.lower_edge_y_mm else {
        return Err(Fault::plain(
            ErrorCode::MissingField,
            "lower_edge_y_mm",
            "the edge on which the strip tips, with a pull or a tipping moment",
            "give its height",
        )
        .into());
    };
    let low: Vec<Detail> = (0..)
        .zip(&input.positions)
        .filter(|(_, at)| at.y_mm - edge_mm < 1.0)
        .map(|(k, at)| {
            let words = Allowed::Text("at least 1 mm above the lower edge");
            let fault = Fault::number(ErrorCode::Inconsistent, "y_mm", at.y_mm, words, "");
            Detail::from(fault).within(&format!("positions[{k}]"))
        })
        .collect();
    Error::unless_empty(low)?;
    let heights = || input.positions.iter().map(|at| at.y_mm - edge_mm);
    let about_edge_nmm = input.tipping_nmm + input.pull_n * (input.load_y_mm - edge_mm);
    let squares: f64 = heights().map(|h| h * h).sum();
    let pulls: Vec<f64> = heights().map(|h| about_edge_nmm * h / squares).collect();
    let prying_n = pulls.iter().sum::<f64>() - input.pull_n;
    if prying_n >= 0.0 {
        return Ok(Tension { pulls, contact: StripContact::EdgePresses, prying_n });
    }
    let about_centroid_nmm = input.tipping_nmm + input.pull_n * (input.load_y_mm - centroid_y_mm);
    let arms = || input.positions.iter().map(|at| at.y_mm - centroid_y_mm);
    let spread_mm2: f64 = arms().map(|y| y * y).sum();
    if spread_mm2 < SMALLEST_SPREAD_MM2 {
        // One height: with the edge lifted nothing resists a moment, unless the pull passes through the row.
        if about_centroid_nmm.abs() > 1e-9 * input.pull_n * (centroid_y_mm - edge_mm) {
            return Err(Fault::number(
                ErrorCode::Inconsistent,
                "load_y_mm",
                input.load_y_mm,
                Allowed::Text("a pull at or above the row of fasteners, or fasteners at two heights"),
                "add a second row",
            )
            .into());
        }
        let pulls = vec![input.pull_n / count; input.positions.len()];
        return Ok(Tension { pulls, contact: StripContact::LiftsOff, prying_n: 0.0 });
    }
    let turn = about_centroid_nmm / spread_mm2;
    let pulls = arms().map(|y| input.pull_n / count + turn * y).collect();
    Ok(Tension { pulls, contact: StripContact::LiftsOff, prying_n: 0.0 })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const FASTENER_GROUP: crate::json::Calculation = crate::json::calculation!(
    fastener_group: FastenerGroupInput => FastenerGroup, Document,
    "Shares of the fasteners of a group under an eccentric load, a pull and a tipping moment"
);

#[cfg(test)]
#[path = "group_tests.rs"]
mod tests;
