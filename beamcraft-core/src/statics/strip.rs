//! The screws that hold the wall half of a cleat.

use crate::error::{Allowed, ErrorCode, Fault};
use crate::finding::Caution;
use crate::limits::{Limited, limited};

/// A wall half held by one row of screws, and the forces of the body on it.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<WallStripScrewsInput>))]
pub struct WallStripScrewsInput {
    /// Force down at the contact, N.
    pub vertical_n: f64,
    /// Pull outwards at the contact, N.
    pub horizontal_n: f64,
    /// Contact in front of the wall, mm; the tip of the wall half is the safe choice.
    pub contact_out_mm: f64,
    /// Contact above the lower edge of the wall half, mm.
    pub contact_up_mm: f64,
    /// Row of screws above the lower edge of the wall half, mm.
    pub screw_row_up_mm: f64,
    /// Height of the face that lies against the wall, mm.
    pub strip_height_mm: f64,
    /// Number of screws in the row.
    pub screw_count: u32,
}

limited!(WallStripScrewsInput {
    vertical_n: FORCE,
    horizontal_n: FORCE,
    contact_out_mm: SMALL_LENGTH,
    contact_up_mm: LENGTH,
    screw_row_up_mm: LEVER,
    strip_height_mm: LEVER,
    screw_count: COUNT,
});

/// The edge about which the wall half would tilt.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum StripPivot {
    /// The lower edge presses on the wall.
    LowerEdge,
    /// The pull acts so low that the upper edge presses on the wall.
    UpperEdge,
}

/// Forces of the screws and of the wall on the wall half.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct WallStripScrews {
    /// Tension of all screws together, N.
    pub total_tension_n: f64,
    /// Tension of one screw, equal shares, N.
    pub tension_per_screw_n: f64,
    /// Shear of one screw, equal shares, N.
    pub shear_per_screw_n: f64,
    /// Push of the wall on the edge that bears, N.
    pub bearing_n: f64,
    /// The edge that bears.
    pub pivot: StripPivot,
    /// The caution that belongs to these numbers.
    pub caution: Caution,
}

const BELOW_TOP: Allowed = Allowed::Text("at least 1 mm below the upper edge");

/// Tension and shear of the screws of the wall half, and how its edge bears on the wall.
///
/// Because the contact lies in front of the wall and above the screws, the screws pull more than the body does, often
/// more than twice. A row set high has the better lever.
///
/// # Equation
/// ```text
/// about the lower edge:  T = (V xc + H yb) / ys              B = T − H
/// where B would be negative, about the upper edge:
///                        T = (H (hs − yb) − V xc) / (hs − ys)   B = T − H
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | V, H | forces at the contact, down and out | N | `vertical_n`, `horizontal_n` |
/// | xc, yb | contact in front of the wall, above the lower edge | mm | `contact_out_mm`, `contact_up_mm` |
/// | ys | screw row above the lower edge | mm | `screw_row_up_mm` |
/// | hs | height of the face at the wall | mm | `strip_height_mm` |
/// | T, B | tension of all screws, push of the wall | N | `total_tension_n`, `bearing_n` |
///
/// # Limits
/// Rigid strip flat on the wall, bearing on its very edge: packing behind it, or a lining that crushes under the edge,
/// shortens the lever. Equal shares per screw; how studs share is told by `share_between_supports`.
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` when the screws do not lie at least 1 mm below the upper edge.
///
/// # Source
/// Statics, derived in the theory pages; checked by `verification/cleat`.
///
/// # Examples
/// ```
/// use beamcraft_core::statics::{wall_strip_screws, WallStripScrewsInput};
/// let screws = wall_strip_screws(&WallStripScrewsInput {
///     vertical_n: 400.0, horizontal_n: 250.0, contact_out_mm: 19.0, contact_up_mm: 70.0,
///     screw_row_up_mm: 40.0, strip_height_mm: 70.0, screw_count: 6,
/// })?;
/// assert!((screws.total_tension_n - 627.5).abs() < 1e-9);
/// assert!((screws.bearing_n - 377.5).abs() < 1e-9);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn wall_strip_screws(input: &WallStripScrewsInput) -> Result<WallStripScrews, Fault> {
    input.check_ranges()?;
    let WallStripScrewsInput {
        vertical_n: v,
        horizontal_n: h,
        contact_out_mm: xc,
        contact_up_mm: yb,
        screw_row_up_mm: ys,
        strip_height_mm: hs,
        screw_count,
    } = *input;
    if hs - ys < 1.0 {
        return Err(Fault::number(ErrorCode::Inconsistent, "screw_row_up_mm", ys, BELOW_TOP, "lower the row"));
    }
    // Moment about the screw row that the edge has to take: it decides which edge bears.
    let tilting = v * xc + h * (yb - ys);
    let (pivot, bearing_n) = if tilting >= 0.0 {
        (StripPivot::LowerEdge, tilting / ys)
    } else {
        (StripPivot::UpperEdge, -tilting / (hs - ys))
    };
    let total_tension_n = h + bearing_n;
    let count = f64::from(screw_count);
    Ok(WallStripScrews {
        total_tension_n,
        tension_per_screw_n: total_tension_n / count,
        shear_per_screw_n: v / count,
        bearing_n,
        pivot,
        caution: Caution::Structure,
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const WALL_STRIP_SCREWS: crate::json::Calculation = crate::json::calculation!(
    wall_strip_screws: WallStripScrewsInput => WallStripScrews, Typed,
    "Tension and shear of the screws of a cleat's wall half, and the bearing of its edge on the wall"
);

#[cfg(test)]
#[path = "strip_tests.rs"]
mod tests;
