//! A straight beam over any number of supports, stiff or springy: reactions, shear, moment, deflection.

use crate::error::{Detail, Error, ErrorCode, Fault, Result};
use crate::finding::{Caution, CautionText};
use crate::limits::{self, faults_at, limited, list_faults};
use crate::statics::beam_solve::Solved;

/// A beam of one section over its supports, with its loads.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<BeamOnSupportsInput>))]
pub struct BeamOnSupportsInput {
    /// Length of the beam, mm; it may reach past its outer supports.
    pub length_mm: f64,
    /// Modulus of elasticity along the beam, MPa.
    pub modulus_mpa: f64,
    /// Second moment of area about the axis of bending, mm⁴.
    pub second_moment_mm4: f64,
    /// Supports from the left end, in any order, at least 1 mm apart.
    pub supports: Vec<BeamSupport>,
    /// Loads at one place.
    #[cfg_attr(feature = "json", serde(default))]
    pub point_loads: Vec<BeamPointLoad>,
    /// Loads spread evenly over a length.
    #[cfg_attr(feature = "json", serde(default))]
    pub line_loads: Vec<BeamLineLoad>,
    /// Further places to report on, mm from the left end.
    #[cfg_attr(feature = "json", serde(default))]
    pub stations_mm: Vec<f64>,
}

limited!(BeamOnSupportsInput {
    length_mm: BODY_LENGTH,
    modulus_mpa: ELASTIC_MODULUS,
    second_moment_mm4: SECOND_MOMENT
});

/// One support of a beam.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<BeamSupport>))]
pub struct BeamSupport {
    /// Distance from the left end of the beam, mm.
    pub at_mm: f64,
    /// Stiffness, such as the load/slip modulus of a screw, N/mm; left out the support does not yield.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub stiffness_n_per_mm: Option<f64>,
    /// Whether it also keeps the beam from turning.
    #[cfg_attr(feature = "json", serde(default))]
    pub hold: SupportHold,
}

limited!(BeamSupport { at_mm: LENGTH, stiffness_n_per_mm: SUPPORT_STIFFNESS });

/// Whether a support keeps the beam from turning.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum SupportHold {
    /// The beam turns freely over it.
    #[default]
    Pinned,
    /// The beam is built in; only at the first and the last support.
    Clamped,
}

/// A load at one place of a beam.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<BeamPointLoad>))]
pub struct BeamPointLoad {
    /// Distance from the left end of the beam, mm.
    pub at_mm: f64,
    /// Load, positive downwards, N.
    pub load_n: f64,
}

limited!(BeamPointLoad { at_mm: LENGTH, load_n: SIGNED_FORCE });

/// A load spread evenly over a part of a beam.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<BeamLineLoad>))]
pub struct BeamLineLoad {
    /// Where it begins, from the left end of the beam, mm.
    pub from_mm: f64,
    /// Where it ends, mm.
    pub to_mm: f64,
    /// Load per length, positive downwards, N/mm.
    pub load_n_per_mm: f64,
}

limited!(BeamLineLoad { from_mm: LENGTH, to_mm: LENGTH, load_n_per_mm: SIGNED_LINE_LOAD });

/// Reaction of one support.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SupportReaction {
    /// Distance from the left end of the beam, mm.
    pub at_mm: f64,
    /// Reaction, positive upwards, N; negative where the support must hold the beam down.
    pub reaction_n: f64,
    /// How far the support yields downwards, mm; 0 for a support that does not yield.
    pub settlement_mm: f64,
    /// Moment with which a clamped support holds the beam, N·mm: the jump of the sagging moment over it; 0 when pinned.
    pub moment_nmm: f64,
}

/// The beam at one place.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct BeamStation {
    /// Distance from the left end, mm.
    pub at_mm: f64,
    /// Shear just right of the place, upwards on what lies right of it counted negative, N.
    pub shear_n: f64,
    /// Moment just right of the place, positive when the beam sags, N·mm.
    pub moment_nmm: f64,
    /// Deflection downwards, mm.
    pub deflection_mm: f64,
}

/// Reactions and extremes of a beam.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct BeamOnSupports {
    /// Reactions, from left to right.
    pub reactions: Vec<SupportReaction>,
    /// Sum of the loads, N.
    pub load_n: f64,
    /// Largest shear in size, N.
    pub greatest_shear_n: f64,
    /// Where it is, mm.
    pub greatest_shear_at_mm: f64,
    /// Largest sagging moment, N·mm; 0 where the beam nowhere sags.
    pub greatest_sagging_nmm: f64,
    /// Where it is, mm.
    pub greatest_sagging_at_mm: f64,
    /// Largest hogging moment in size, N·mm; 0 where the beam nowhere hogs.
    pub greatest_hogging_nmm: f64,
    /// Where it is, mm.
    pub greatest_hogging_at_mm: f64,
    /// Deflection largest in size, downwards positive, mm.
    pub greatest_deflection_mm: f64,
    /// Where it is, mm.
    pub greatest_deflection_at_mm: f64,
    /// Number of supports that must hold the beam down.
    pub lifted_count: u32,
    /// The places asked for, in the order given.
    pub stations: Vec<BeamStation>,
    /// Cautions that belong to these numbers.
    pub cautions: Vec<CautionText>,
}

/// Reactions, shear, moment and deflection of a straight beam over any number of supports.
///
/// # Equation
/// ```text
/// the moments M_j over the supports make the strain energy least:
///   M_(j−1) L_(j−1)/6 + M_j (L_(j−1) + L_j)/3 + M_(j+1) L_j/6 + a_j + E I Σ_i c_i R_i dR_i/dM_j = 0
///   R_i = R0_i + (M_(i+1) − M_i)/L_i − (M_i − M_(i−1))/L_(i−1)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | M_j | moment over support j | N·mm | |
/// | L_j | span right of support j | mm | `supports[].at_mm` |
/// | a_j | E I times the end slopes of both spans as simple beams | N·mm² | |
/// | R0_i, R_i | reaction of simple beams, reaction | N | `reactions[].reaction_n` |
/// | c_i | yield of a support under one newton, 1/stiffness | mm/N | `supports[].stiffness_n_per_mm` |
/// | E, I | modulus, second moment of area | MPa, mm⁴ | `modulus_mpa`, `second_moment_mm4` |
///
/// Without yield this is Clapeyron's theorem of three moments, with it that of five. Reactions come from the moments by
/// equilibrium, so forces and moments close whatever the stiffnesses are.
///
/// # Limits
/// Bernoulli's beam of one section, small deflections; shear deformation is left out (a few per cent for wood at
/// fifteen times its depth). Supports push and pull alike: a negative reaction is reported, not released.
///
/// # Errors
/// `out_of_range`, `not_finite`, each with its path; `unstable` without two supports or a clamped one; `inconsistent`
/// for what lies beyond the beam, supports closer than 1 mm, a line load that ends before it begins, and a clamp
/// between two supports.
///
/// # Accuracy
/// Exact for the model; the place of the largest deflection is searched to about one part in 10⁸.
///
/// # Source
/// Clapeyron's theorem extended to yielding supports, derived in the theory pages; checked by `verification/beams`.
///
/// # Examples
/// ```
/// use beamcraft_core::statics::{beam_on_supports, BeamLineLoad, BeamOnSupportsInput, BeamSupport, SupportHold};
/// let support = |at_mm| BeamSupport { at_mm, stiffness_n_per_mm: None, hold: SupportHold::Pinned };
/// let beam = beam_on_supports(&BeamOnSupportsInput {
///     length_mm: 800.0, modulus_mpa: 10_000.0, second_moment_mm4: 121_500.0,
///     supports: vec![support(0.0), support(800.0)], point_loads: vec![],
///     line_loads: vec![BeamLineLoad { from_mm: 0.0, to_mm: 800.0, load_n_per_mm: 0.5 }], stations_mm: vec![],
/// })?;
/// assert!((beam.greatest_deflection_mm - 2.1947874).abs() < 1e-6);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn beam_on_supports(input: &BeamOnSupportsInput) -> Result<BeamOnSupports> {
    Error::unless_empty(faults(input))?;
    let solved = Solved::of(input);
    let reactions = solved.reactions();
    let mut shear = (0.0_f64, 0.0);
    let mut moments = [(0.0_f64, 0.0), (0.0_f64, 0.0)];
    let mut see = |at_mm: f64, shear_n: f64, moment_nmm: f64| {
        if shear_n.abs() > shear.0.abs() {
            shear = (shear_n, at_mm);
        }
        if moment_nmm > moments[0].0 {
            moments[0] = (moment_nmm, at_mm);
        }
        if moment_nmm < moments[1].0 {
            moments[1] = (moment_nmm, at_mm);
        }
    };
    let pieces = solved.pieces(input);
    for piece in &pieces {
        see(piece.from_mm, piece.shear_n, piece.moment_nmm);
        let (end_shear, end_moment) = piece.at(piece.to_mm - piece.from_mm);
        see(piece.to_mm, end_shear, end_moment);
        if let Some(flat) = piece.flat() {
            let (_, moment) = piece.at(flat);
            see(piece.from_mm + flat, 0.0, moment);
        }
    }
    let (greatest_deflection_mm, greatest_deflection_at_mm) = solved.greatest_deflection(input, &pieces);
    let station = |at_mm: f64| {
        let (shear_n, moment_nmm) = pieces
            .iter()
            .rev()
            .find(|piece| piece.from_mm <= at_mm)
            .or(pieces.first())
            .map_or((0.0, 0.0), |piece| piece.at(at_mm - piece.from_mm));
        BeamStation { at_mm, shear_n, moment_nmm, deflection_mm: solved.deflection(at_mm) }
    };
    let stations = input.stations_mm.iter().map(|at| station(*at)).collect();
    let lifted_count = reactions.iter().filter(|one| one.reaction_n < 0.0).count() as u32;
    let [sagging, hogging] = moments;
    Ok(BeamOnSupports {
        reactions,
        load_n: solved.load_n(),
        greatest_shear_n: shear.0.abs(),
        greatest_shear_at_mm: shear.1,
        greatest_sagging_nmm: sagging.0,
        greatest_sagging_at_mm: sagging.1,
        greatest_hogging_nmm: -hogging.0,
        greatest_hogging_at_mm: hogging.1,
        greatest_deflection_mm,
        greatest_deflection_at_mm,
        lifted_count,
        stations,
        cautions: vec![Caution::Structure.into()],
    })
}

fn faults(input: &BeamOnSupportsInput) -> Vec<Detail> {
    let mut faults = faults_at("", input);
    for (k, one) in input.supports.iter().enumerate() {
        faults.extend(faults_at(&format!("supports[{k}]"), one));
    }
    for (k, one) in input.point_loads.iter().enumerate() {
        faults.extend(faults_at(&format!("point_loads[{k}]"), one));
    }
    for (k, one) in input.line_loads.iter().enumerate() {
        faults.extend(faults_at(&format!("line_loads[{k}]"), one));
    }
    faults.extend(list_faults("stations_mm", &input.stations_mm, &limits::LENGTH));
    if !faults.is_empty() {
        return faults;
    }
    let beyond = |at: f64| at > input.length_mm;
    let mut wrong = |code: ErrorCode, path: String, allowed: &'static str, cure: &'static str| {
        faults.push(Detail { path, ..Fault::plain(code, "", allowed, cure).into() });
    };
    let supports = input.supports.iter().enumerate().map(|(k, one)| (format!("supports[{k}].at_mm"), one.at_mm));
    let points = input.point_loads.iter().enumerate().map(|(k, one)| (format!("point_loads[{k}].at_mm"), one.at_mm));
    let stations = input.stations_mm.iter().enumerate().map(|(k, at)| (format!("stations_mm[{k}]"), *at));
    for (path, _) in supports.chain(points).chain(stations).filter(|(_, at)| beyond(*at)) {
        wrong(ErrorCode::Inconsistent, path, "a place on the beam", "");
    }
    for (k, one) in input.line_loads.iter().enumerate() {
        if beyond(one.to_mm) || one.to_mm < one.from_mm {
            let allowed = "a place on the beam, not before the beginning of the load";
            wrong(ErrorCode::Inconsistent, format!("line_loads[{k}].to_mm"), allowed, "");
        }
    }
    let mut order: Vec<_> = input.supports.iter().collect();
    order.sort_by(|a, b| a.at_mm.total_cmp(&b.at_mm));
    if order.iter().zip(order.iter().skip(1)).any(|(a, b)| b.at_mm - a.at_mm < 1.0) {
        wrong(ErrorCode::Inconsistent, "supports".to_owned(), "supports at least 1 mm apart", "");
    }
    let inner = order.iter().skip(1).take(order.len().saturating_sub(2));
    if inner.into_iter().any(|one| one.hold == SupportHold::Clamped) {
        let cure = "split the beam there: a clamp parts it into two";
        wrong(ErrorCode::Inconsistent, "supports".to_owned(), "a clamp at the first or the last support", cure);
    }
    let held = order.len() >= 2 || order.iter().any(|one| one.hold == SupportHold::Clamped);
    if !held {
        wrong(ErrorCode::Unstable, "supports".to_owned(), "two supports, or a clamped one", "");
    }
    faults
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const BEAM_ON_SUPPORTS: crate::json::Calculation = crate::json::calculation!(
    beam_on_supports: BeamOnSupportsInput => BeamOnSupports, Document,
    "Reactions, shear, moment and deflection of a beam over any number of stiff or yielding supports"
);

#[cfg(test)]
#[path = "beam_tests.rs"]
mod tests;
