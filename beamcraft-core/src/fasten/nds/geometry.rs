//! Spacing, edge and end distances, and what too little of them costs.

use super::{EDGE_MM, is_quarter_inch};
use crate::error::{ErrorCode, Fault};
use crate::fasten::stagger::RowStagger;
use crate::limits::{Limited, limited};
use crate::units::factor::INCH_MM;
use crate::verdict::Outcome;

/// Which way a fastener pushes in the member whose distances are checked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum SpacingLoad {
    /// Across its axis, towards the member's end: the member is in tension.
    TowardsEnd,
    /// Across its axis, away from the member's end: the member is in compression.
    AwayFromEnd,
    /// Along its axis only.
    WithdrawalOnly,
}

/// How easily the member splits, as the table of end distances tells it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum EndDistanceWood {
    /// Softwood.
    Softwood,
    /// Hardwood.
    Hardwood,
}

/// Whether holes are bored for thin fasteners.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum BoredHoles {
    /// Holes are bored.
    Bored,
    /// Driven without holes.
    NotBored,
}

/// What lies on the wood, for the recommended distances of thin fasteners.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum SidePlate {
    /// Wood side member.
    Wood,
    /// Steel side plate.
    Steel,
}

/// Where the distances come from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum SpacingRule {
    /// Required by the standard, for fasteners of 1/4 in and more (NDS 12.5.1).
    Required,
    /// Recommended by its commentary, for thinner ones (NDS Commentary Tables C12.1.5.7, C12.1.6.6).
    Recommended,
}

/// The distances of a fastener or a group of them in one member.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<GeometryFactorInput>))]
pub struct GeometryFactorInput {
    /// Nominal diameter of the fasteners, mm.
    pub nominal_diameter_mm: f64,
    /// Which way the fasteners push.
    pub load: SpacingLoad,
    /// Angle between the load and the grain of this member, degrees; 0 along the grain.
    pub angle_to_grain_deg: f64,
    /// Softwood or hardwood; softwood by default, which asks for more.
    #[cfg_attr(feature = "json", serde(default = "softwood"))]
    pub wood: EndDistanceWood,
    /// Distance along the grain from the nearest fastener to the end of the member, mm.
    pub end_distance_mm: f64,
    /// Distance across the grain to the edge that the load does not push on, mm.
    pub edge_distance_mm: f64,
    /// Distance across the grain to the edge that the load pushes on, mm; needed when the load has a part across the grain.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub loaded_edge_mm: Option<f64>,
    /// Centre spacing in a row along the load, mm; left out for one fastener in a row.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub row_pitch_mm: Option<f64>,
    /// Whether the rows are shifted against each other; matters below 1/4 in only. In line by default, which asks for more.
    #[cfg_attr(feature = "json", serde(default = "RowStagger::in_line"))]
    pub stagger: RowStagger,
    /// Distance between rows, mm; left out for one row.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub between_rows_mm: Option<f64>,
    /// Distance between the outer rows across the grain, mm; left out for one row.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub row_spread_mm: Option<f64>,
    /// Bearing length l: the lesser of the length in the main member and that in all side members, mm.
    pub bearing_length_mm: f64,
    /// Whether holes are bored; matters below 1/4 in only. Not bored by default, which asks for more.
    #[cfg_attr(feature = "json", serde(default = "not_bored"))]
    pub holes: BoredHoles,
    /// Side member; matters below 1/4 in only. Wood by default, which asks for more.
    #[cfg_attr(feature = "json", serde(default = "wood_plate"))]
    pub side: SidePlate,
}

limited!(GeometryFactorInput {
    nominal_diameter_mm: FASTENER_DIAMETER,
    angle_to_grain_deg: ANGLE_TO_GRAIN,
    end_distance_mm: LENGTH,
    edge_distance_mm: LENGTH,
    loaded_edge_mm: LENGTH,
    row_pitch_mm: LENGTH,
    between_rows_mm: LENGTH,
    row_spread_mm: LENGTH,
    bearing_length_mm: BEARING_LENGTH
});

#[cfg(feature = "json")]
fn softwood() -> EndDistanceWood {
    EndDistanceWood::Softwood
}
#[cfg(feature = "json")]
fn not_bored() -> BoredHoles {
    BoredHoles::NotBored
}
#[cfg(feature = "json")]
fn wood_plate() -> SidePlate {
    SidePlate::Wood
}

/// Distances asked for, whether they are kept, and the geometry factor.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct GeometryFactor {
    /// Where the distances come from.
    pub rule: SpacingRule,
    /// End distance for the full capacity (NDS Table 12.5.1A), mm.
    pub end_full_mm: f64,
    /// Least end distance, mm.
    pub end_least_mm: f64,
    /// Whether the end distance is at least the least one.
    pub end_distance: Outcome,
    /// Share of the capacity that the end distance leaves.
    pub end_factor: f64,
    /// Spacing in a row for the full capacity (NDS Table 12.5.1B), mm.
    pub pitch_full_mm: f64,
    /// Least spacing in a row, mm.
    pub pitch_least_mm: f64,
    /// Whether the spacing in a row is at least the least one; met with one fastener in a row.
    pub row_pitch: Outcome,
    /// Share of the capacity that the spacing in a row leaves.
    pub pitch_factor: f64,
    /// Edge distance asked for at the edge that is not pushed on (NDS Table 12.5.1C), mm.
    pub edge_least_mm: f64,
    /// Whether that edge distance is kept.
    pub edge_distance: Outcome,
    /// Edge distance asked for at the edge that is pushed on (NDS Table 12.5.1C), mm; 0 for a load along the grain.
    pub loaded_edge_least_mm: f64,
    /// Whether that edge distance is kept; met for a load along the grain.
    pub loaded_edge: Outcome,
    /// Distance between rows asked for (NDS Table 12.5.1D), mm.
    pub between_rows_least_mm: f64,
    /// Whether the distance between rows is kept; met with one row.
    pub between_rows: Outcome,
    /// Whether the outer rows are at most 5 in apart across the grain (NDS 12.5.1.3); met with one row.
    pub row_spread: Outcome,
    /// Geometry factor C_delta: the lesser of the two shares; 0 where a least distance of them is not kept.
    pub c_delta: f64,
    /// Whether every distance is kept.
    pub outcome: Outcome,
}

/// Distances that fasteners need in a member, and the geometry factor of the ones they have.
///
/// # Equation
/// ```text
/// D ≥ 1/4 in                 along the grain                             across the grain
/// end distance, full         7 D towards (5 D hardwood), 4 D away        4 D      least: half of it
/// spacing in a row           full 4 D, least 3 D                         full 4 D, least 3 D
/// edge                       1.5 D; l/D > 6: at least half between rows  1.5 D, loaded edge 4 D
/// between rows               1.5 D                                       2.5 D to l/D = 2, (5 l + 10 D)/8, 5 D from 6
/// C_Δ = min(actual/full) over end distance and spacing, at most 1        at an angle: end distance by straight line,
///                                                                        the others the greater of both columns
/// withdrawal only (lag screw): edge 1.5 D, end 4 D, spacing 4 D
///
/// D < 1/4 in (recommended)   wood, not bored    wood, bored; steel, not bored    steel, bored
/// edge                       2.5 D              2.5 D                            2.5 D
/// end, towards / away        15 D / 10 D        10 D / 5 D                       5 D / 3 D
/// in a row along / across    15 D / 10 D        10 D / 5 D                       5 D / 2.5 D
/// between rows               5 D                3 D                              2.5 D            staggered: 2.5 D
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | D | nominal diameter | mm | `nominal_diameter_mm` |
/// | l | bearing length | mm | `bearing_length_mm` |
///
/// # Limits
/// One member at a time: the least C_Δ of the members, and of all fasteners of the group, applies to every fastener.
/// For a load across the grain the full spacing in a row is what the attached members need, taken as 4 D. A row is a
/// line of fasteners along the load. Below 1/4 in C_Δ is 1; the standard asks only that the wood must not split, and the
/// distances are those its commentary recommends. Heavy loads must not hang below the middle of a beam by fasteners.
///
/// # Errors
/// `out_of_range`, `not_finite`; `missing_field` for a load with a part across the grain without its loaded edge.
///
/// # Source
/// NDS 2018 12.5.1 with Tables 12.5.1A to C (seen; the hardwood row recalled), D and E (recalled); interpolation in
/// angle from commentary C12.5.1.2 (seen); commentary Tables C12.1.5.7 and C12.1.6.6 (recalled). Checked by
/// `verification/nds_geometry`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::*;
/// // A half-inch bolt 63.5 mm from the end of a softwood tie.
/// let bolt = geometry_factor(&GeometryFactorInput {
///     nominal_diameter_mm: 12.7,
///     load: SpacingLoad::TowardsEnd,
///     angle_to_grain_deg: 0.0,
///     wood: EndDistanceWood::Softwood,
///     end_distance_mm: 63.5,
///     edge_distance_mm: 44.0,
///     loaded_edge_mm: None,
///     row_pitch_mm: None,
///     stagger: RowStagger::InLine,
///     between_rows_mm: None,
///     row_spread_mm: None,
///     bearing_length_mm: 38.1,
///     holes: BoredHoles::Bored,
///     side: SidePlate::Wood,
/// })?;
/// assert!((bolt.c_delta - 5.0 / 7.0).abs() < 1e-9);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn geometry_factor(input: &GeometryFactorInput) -> Result<GeometryFactor, Fault> {
    input.check_ranges()?;
    let across = input.load != SpacingLoad::WithdrawalOnly && input.angle_to_grain_deg > 0.0;
    if across && input.loaded_edge_mm.is_none() {
        return Err(Fault::plain(
            ErrorCode::MissingField,
            "loaded_edge_mm",
            "the edge that the load pushes on, for a load with a part across the grain",
            "give its distance",
        ));
    }
    let large = is_quarter_inch(input.nominal_diameter_mm);
    let asked = if large { required(input, across) } else { recommended(input, across) };
    let kept = |given_mm: Option<f64>, least_mm: f64| match given_mm {
        Some(given_mm) if given_mm < least_mm - EDGE_MM => Outcome::NotMet,
        _ => Outcome::Met,
    };
    let share = |given_mm: Option<f64>, least_mm: f64, full_mm: f64| match given_mm {
        Some(given_mm) if large && given_mm < least_mm - EDGE_MM => 0.0,
        Some(given_mm) if large => (given_mm / full_mm).min(1.0),
        _ => 1.0,
    };
    let end_distance = kept(Some(input.end_distance_mm), asked.end_least_mm);
    let row_pitch = kept(input.row_pitch_mm, asked.pitch_least_mm);
    let edge_distance = kept(Some(input.edge_distance_mm), asked.edge_mm);
    let loaded_edge = if across { kept(input.loaded_edge_mm, asked.loaded_edge_mm) } else { Outcome::Met };
    let between_rows = kept(input.between_rows_mm, asked.between_rows_mm);
    let widest_mm = 5.0 * INCH_MM;
    let row_spread = match input.row_spread_mm {
        Some(spread_mm) if large && spread_mm > widest_mm + EDGE_MM => Outcome::NotMet,
        _ => Outcome::Met,
    };
    let end_factor = share(Some(input.end_distance_mm), asked.end_least_mm, asked.end_full_mm);
    let pitch_factor = share(input.row_pitch_mm, asked.pitch_least_mm, asked.pitch_full_mm);
    let all = [end_distance, row_pitch, edge_distance, loaded_edge, between_rows, row_spread];
    let outcome = if all.contains(&Outcome::NotMet) { Outcome::NotMet } else { Outcome::Met };
    Ok(GeometryFactor {
        rule: if large { SpacingRule::Required } else { SpacingRule::Recommended },
        end_full_mm: asked.end_full_mm,
        end_least_mm: asked.end_least_mm,
        end_distance,
        end_factor,
        pitch_full_mm: asked.pitch_full_mm,
        pitch_least_mm: asked.pitch_least_mm,
        row_pitch,
        pitch_factor,
        edge_least_mm: asked.edge_mm,
        edge_distance,
        loaded_edge_least_mm: if across { asked.loaded_edge_mm } else { 0.0 },
        loaded_edge,
        between_rows_least_mm: asked.between_rows_mm,
        between_rows,
        row_spread,
        c_delta: end_factor.min(pitch_factor),
        outcome,
    })
}

/// Distances asked for.
struct Asked {
    end_full_mm: f64,
    end_least_mm: f64,
    pitch_full_mm: f64,
    pitch_least_mm: f64,
    edge_mm: f64,
    loaded_edge_mm: f64,
    between_rows_mm: f64,
}

/// NDS Tables 12.5.1A to 12.5.1E, for 1/4 in and more.
fn required(input: &GeometryFactorInput, across: bool) -> Asked {
    let d = input.nominal_diameter_mm;
    if input.load == SpacingLoad::WithdrawalOnly {
        return Asked {
            end_full_mm: 4.0 * d,
            end_least_mm: 4.0 * d,
            pitch_full_mm: 4.0 * d,
            pitch_least_mm: 4.0 * d,
            edge_mm: 1.5 * d,
            loaded_edge_mm: 0.0,
            between_rows_mm: 4.0 * d,
        };
    }
    let slender = input.bearing_length_mm / d;
    let along = match (input.load, input.wood) {
        (SpacingLoad::TowardsEnd, EndDistanceWood::Softwood) => 7.0,
        (SpacingLoad::TowardsEnd, EndDistanceWood::Hardwood) => 5.0,
        _ => 4.0,
    };
    let end_full_mm = (along + (4.0 - along) * (input.angle_to_grain_deg / 90.0)) * d;
    let half_between_mm =
        if slender > 6.0 && input.angle_to_grain_deg < 90.0 { 0.5 * input.between_rows_mm.unwrap_or(0.0) } else { 0.0 };
    let rows_across_mm = if slender <= 2.0 {
        2.5 * d
    } else if slender < 6.0 {
        (5.0 * input.bearing_length_mm + 10.0 * d) / 8.0
    } else {
        5.0 * d
    };
    Asked {
        end_full_mm,
        end_least_mm: 0.5 * end_full_mm,
        pitch_full_mm: 4.0 * d,
        pitch_least_mm: 3.0 * d,
        edge_mm: (1.5 * d).max(half_between_mm),
        loaded_edge_mm: 4.0 * d,
        between_rows_mm: if across { rows_across_mm } else { 1.5 * d },
    }
}

/// NDS Commentary Tables C12.1.5.7 and C12.1.6.6, below 1/4 in.
fn recommended(input: &GeometryFactorInput, across: bool) -> Asked {
    let d = input.nominal_diameter_mm;
    // End towards, end away, in a row along, in a row across, between rows.
    let [towards, away, along, cross, rows] = match (input.side, input.holes) {
        (SidePlate::Wood, BoredHoles::NotBored) => [15.0, 10.0, 15.0, 10.0, 5.0],
        (SidePlate::Wood, BoredHoles::Bored) | (SidePlate::Steel, BoredHoles::NotBored) => [10.0, 5.0, 10.0, 5.0, 3.0],
        (SidePlate::Steel, BoredHoles::Bored) => [5.0, 3.0, 5.0, 2.5, 2.5],
    };
    let end = if input.load == SpacingLoad::TowardsEnd { towards } else { away };
    // A row along a load at an angle runs at that angle: the row across the grain asks for less only at 90°.
    let pitch = if across && input.angle_to_grain_deg >= 90.0 { cross } else { along };
    Asked {
        end_full_mm: end * d,
        end_least_mm: end * d,
        pitch_full_mm: pitch * d,
        pitch_least_mm: pitch * d,
        edge_mm: 2.5 * d,
        loaded_edge_mm: 2.5 * d,
        between_rows_mm: if input.stagger == RowStagger::Staggered { 2.5 * d } else { rows * d },
    }
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const GEOMETRY_FACTOR: crate::json::Calculation = crate::json::calculation!(
    geometry_factor: GeometryFactorInput => GeometryFactor, Typed,
    "Spacing, edge and end distances of dowels against the standard, and the geometry factor"
);

#[cfg(test)]
#[path = "geometry_tests.rs"]
mod tests;
