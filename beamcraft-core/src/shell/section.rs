//! The section of a body: a convex polygon with a name for every side.
//!
//! ```text
//!   rectangular        sloped              regular (6)          corners
//!   z ↑ ┌──top──┐      ┌──top───┐            ╱‾‾‾╲             side k lies between
//!     front    back    ╲        │    side 1 │     │            corners k and k + 1
//!       └bottom─┘       ╲___────┘            ╲___╱
//!       → y          front leans back,     side 1 faces the room,
//!                    underside rises       the others follow over the top
//! ```

use super::id::FaceKind;
use super::run::Corner;
use crate::error::Detail;
use crate::limits::{Limited, limited};
use crate::numeric::real::{atan2_deg, sin_cos_deg};

/// A section with plumb front and back and level top and bottom.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<RectangularSection>))]
pub struct RectangularSection {
    /// Height, mm.
    pub height_mm: f64,
    /// Depth from front to back, mm.
    pub depth_mm: f64,
}

limited!(RectangularSection { height_mm: BODY_SIZE, depth_mm: BODY_SIZE });

/// A section with a level top and a plumb back, whose front leans or whose underside slopes, or both.
///
/// Its foremost corner lies at y = 0, its lowest at z = 0. So lengths, and the corners between legs, are measured on the level
/// line plumb under the foremost corner at the height of the lowest: under a front that leans in below there is no wood there.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<SlopedSection>))]
pub struct SlopedSection {
    /// Depth of the top from front to back, mm.
    pub top_depth_mm: f64,
    /// Depth of the underside from front to back, measured level, mm; less than at the top for a front that leans in below.
    pub bottom_depth_mm: f64,
    /// Height of the front, measured plumb, mm.
    pub front_height_mm: f64,
    /// Height of the back, mm; more than at the front for an underside that rises to the room.
    pub back_height_mm: f64,
}

limited!(SlopedSection {
    top_depth_mm: BODY_SIZE,
    bottom_depth_mm: BODY_SIZE,
    front_height_mm: BODY_SIZE,
    back_height_mm: BODY_SIZE,
});

/// A section with equal sides and equal corners, such as a hexagonal or octagonal post; `side1` faces the room.
///
/// Its first side lies at y = 0, its lowest corner at z = 0.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<RegularSection>))]
pub struct RegularSection {
    /// Number of sides.
    pub sides: u32,
    /// Size across flats, mm: twice the distance from the middle to a side, also for an odd number of sides.
    pub across_flats_mm: f64,
}

limited!(RegularSection { sides: SECTION_SIDES, across_flats_mm: BODY_SIZE });

/// A corner of a section.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<SectionCorner>))]
pub struct SectionCorner {
    /// Distance behind the line that lengths are measured on, mm.
    pub y_mm: f64,
    /// Height above that line, mm.
    pub z_mm: f64,
}

limited!(SectionCorner { y_mm: SECTION_COORDINATE, z_mm: SECTION_COORDINATE });

/// A section given by its corners; side k, named `side1`, `side2`, …, lies between corners k and k + 1.
///
/// It stays where its corners are: the line y = z = 0, on which lengths are measured, may lie on it, in it or beside it.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct PolygonalSection {
    /// The corners in order, either way round; every inside angle below 179°.
    pub corners: Vec<SectionCorner>,
}

/// The section of a hollow body, seen from its right end: `y` to the wall, `z` up.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum BodySection {
    /// Plumb front and back, level top and bottom; sides `front`, `top`, `back`, `bottom`.
    Rectangular(RectangularSection),
    /// Level top and plumb back, a leaning front or a sloping underside; sides `front`, `top`, `back`, `bottom`.
    Sloped(SlopedSection),
    /// Equal sides and corners; sides `side1` (towards the room), `side2`, … over the top.
    Regular(RegularSection),
    /// Any convex polygon; sides `side1`, `side2`, ….
    Polygon(PolygonalSection),
}

/// A section as a ring: side k lies between corners k and k + 1, clockwise seen from the right end.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Ring {
    pub(super) corners: Vec<Corner>,
    pub(super) names: Vec<FaceKind>,
}

/// Most corners a section may have.
const CORNERS_MAX: usize = 24;
/// Shortest side of a section, mm: below it no board has a face to show.
const SIDE_MIN_MM: f64 = 1.0;
/// Least and most turn from one side to the next, degrees: flatter is no arris, sharper no joint.
const TURN_DEG: (f64, f64) = (1.0, 170.0);
/// How far a side of a tapered body may be from plane, mm: rounding, and nothing that can be measured.
const TWIST_MAX_MM: f64 = 1e-10;

impl BodySection {
    /// The ring, or every fault of the input with its path.
    pub(super) fn ring(&self) -> Result<Ring, Vec<Detail>> {
        match self {
            Self::Rectangular(section) => ranged(section, "rectangular").map(|()| section.ring()),
            Self::Sloped(section) => ranged(section, "sloped").map(|()| section.ring()),
            Self::Regular(section) => ranged(section, "regular").map(|()| section.ring()),
            Self::Polygon(section) => section.ring().map_err(|faults| within(faults, "polygon")),
        }
    }
}

fn ranged(section: &impl Limited, name: &str) -> Result<(), Vec<Detail>> {
    let faults: Vec<_> = section.range_faults().into_iter().map(Detail::from).collect();
    if faults.is_empty() { Ok(()) } else { Err(within(faults, name)) }
}

fn within(faults: Vec<Detail>, prefix: &str) -> Vec<Detail> {
    faults.into_iter().map(|fault| fault.within(prefix)).collect()
}

/// Front, top, back and bottom, from the lower corner of the front on.
fn four_sided(corners: [(f64, f64); 4]) -> Ring {
    Ring {
        corners: corners.map(|(y, z)| Corner { y, z }).to_vec(),
        names: vec![FaceKind::Front, FaceKind::Top, FaceKind::Back, FaceKind::Bottom],
    }
}

fn numbered(corners: Vec<Corner>) -> Ring {
    let names = (1..=corners.len() as u32).map(FaceKind::Side).collect();
    Ring { corners, names }
}

impl RectangularSection {
    fn ring(&self) -> Ring {
        let (height, depth) = (self.height_mm, self.depth_mm);
        four_sided([(0.0, 0.0), (0.0, height), (depth, height), (depth, 0.0)])
    }
}

impl SlopedSection {
    /// The foremost arris lies at y = 0, the lowest at z = 0.
    fn ring(&self) -> Ring {
        let depth = self.top_depth_mm.max(self.bottom_depth_mm);
        let height = self.front_height_mm.max(self.back_height_mm);
        four_sided([
            (depth - self.bottom_depth_mm, height - self.front_height_mm),
            (depth - self.top_depth_mm, height),
            (depth, height),
            (depth, height - self.back_height_mm),
        ])
    }
}

impl RegularSection {
    /// The first side lies at y = 0, the lowest corner at z = 0.
    fn ring(&self) -> Ring {
        let (half_turn, across) = (180.0 / f64::from(self.sides), self.across_flats_mm);
        let radius = 0.5 * across / sin_cos_deg(half_turn).1;
        let corner = |k: u32| {
            let (sine, cosine) = sin_cos_deg(half_turn * (2.0 * f64::from(k) - 1.0));
            Corner { y: 0.5 * across - radius * cosine, z: radius * sine }
        };
        let mut corners: Vec<_> = (0..self.sides).map(corner).collect();
        let lowest = corners.iter().map(|corner| corner.z).fold(0.0, f64::min);
        corners.iter_mut().for_each(|corner| corner.z -= lowest);
        numbered(corners)
    }
}

impl PolygonalSection {
    fn ring(&self) -> Result<Ring, Vec<Detail>> {
        let count = self.corners.len();
        if !(3..=CORNERS_MAX).contains(&count) {
            return Err(vec![Detail::inconsistent("corners", format!("{count} corners"), "3 to 24 corners", "")]);
        }
        let mut faults = Vec::new();
        for (corner, at) in self.corners.iter().zip(0..) {
            let path = format!("corners[{at}]");
            faults.extend(corner.range_faults().into_iter().map(|fault| Detail::from(fault).within(&path)));
        }
        if !faults.is_empty() {
            return Err(faults);
        }
        let mut ring = numbered(self.corners.iter().map(|at| Corner { y: at.y_mm, z: at.z_mm }).collect());
        if ring.turns().map(|turn| turn.0).sum::<f64>() > 0.0 {
            ring.reverse();
        }
        ring.check().map(|()| ring)
    }
}

impl Ring {
    /// The same sides the other way round.
    fn reverse(&mut self) {
        self.corners.reverse();
        // Side k now lies between what were corners n − 1 − k and n − 2 − k.
        self.names.reverse();
        self.names.rotate_left(1);
    }

    /// Vectors of the sides.
    fn sides(&self) -> impl Iterator<Item = (f64, f64)> + Clone + '_ {
        let next = self.corners.iter().cycle().skip(1);
        self.corners.iter().zip(next).map(|(from, to)| (to.y - from.y, to.z - from.z))
    }

    /// Turn at the start of each side, counter-clockwise positive, degrees, and the length of the side.
    fn turns(&self) -> impl Iterator<Item = (f64, f64)> + '_ {
        let before = self.sides().cycle().skip(self.corners.len() - 1);
        before.zip(self.sides()).map(|(one, other)| {
            let turn = atan2_deg(one.0 * other.1 - one.1 * other.0, one.0 * other.0 + one.1 * other.1);
            (turn, (other.0 * other.0 + other.1 * other.1).sqrt())
        })
    }

    /// Whether the ring turns clockwise all the way, once round.
    fn check(&self) -> Result<(), Vec<Detail>> {
        let mut faults = Vec::new();
        let mut whole = 0.0;
        for ((turn, length), name) in self.turns().zip(&self.names) {
            whole += turn;
            if length < SIDE_MIN_MM {
                faults.push(Detail::inconsistent(
                    "corners",
                    format!("{name} is {length} mm long"),
                    "sides of 1 mm or more",
                    "",
                ));
            }
            if !(TURN_DEG.0..=TURN_DEG.1).contains(&-turn) {
                let given = format!("an inside angle of {} degrees where {name} begins", 180.0 + turn);
                faults.push(Detail::inconsistent(
                    "corners",
                    given,
                    "inside angles of 10 to 179 degrees",
                    "leave out corners that are none",
                ));
            }
        }
        if faults.is_empty() && (whole + 360.0).abs() > 1e-6 {
            faults.push(Detail::inconsistent(
                "corners",
                "sides that cross one another".to_owned(),
                "corners in order, once round",
                "",
            ));
        }
        if faults.is_empty() { Ok(()) } else { Err(faults) }
    }

    /// The first side that would not be plane between this ring and another, and by how much, mm; or nothing.
    pub(super) fn twist(&self, other: &Self) -> Option<(FaceKind, f64)> {
        self.sides().zip(other.sides()).zip(&self.names).find_map(|((one, two), name)| {
            let length = (one.0 * one.0 + one.1 * one.1).sqrt();
            let off = (one.0 * two.1 - one.1 * two.0) / length;
            let along = one.0 * two.0 + one.1 * two.1;
            // Sums of sizes up to 2000 mm round to about 10⁻¹² mm.
            (off.abs() > TWIST_MAX_MM || along <= 0.0).then_some((*name, off.abs()))
        })
    }

    pub(super) fn moved(mut self, back_mm: f64, up_mm: f64) -> Self {
        for corner in &mut self.corners {
            corner.y += back_mm;
            corner.z += up_mm;
        }
        self
    }
}
