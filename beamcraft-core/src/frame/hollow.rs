//! The hollow in section, seen from the left: out from the front, and up.

use crate::error::{Detail, ErrorCode, Fault};
use crate::limits::{faults_at, limited};

/// A corner of the hollow's section.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<HollowCorner>))]
pub struct HollowCorner {
    /// Distance from the front face of the body, towards the wall, mm.
    pub out_mm: f64,
    /// Height above the underside of the body, mm.
    pub up_mm: f64,
}

limited!(HollowCorner { out_mm: SIGNED_LENGTH, up_mm: SIGNED_LENGTH });

/// Most corners of a section.
const CORNERS_MAX: usize = 40;
/// Least area that counts as one, mm².
const LEAST_AREA_MM2: f64 = 1e-6;

impl HollowCorner {
    pub(super) const fn new(out_mm: f64, up_mm: f64) -> Self {
        Self { out_mm, up_mm }
    }

    pub(super) fn dot(self, other: Self) -> f64 {
        self.out_mm * other.out_mm + self.up_mm * other.up_mm
    }

    pub(super) fn cross(self, other: Self) -> f64 {
        self.out_mm * other.up_mm - self.up_mm * other.out_mm
    }

    pub(super) fn plus(self, other: Self, times: f64) -> Self {
        Self::new(self.out_mm + times * other.out_mm, self.up_mm + times * other.up_mm)
    }
}

/// All points with `normal · p ≤ at`; the normal has length 1.
#[derive(Clone, Copy)]
pub(super) struct Wall {
    pub(super) normal: HollowCorner,
    pub(super) at: f64,
}

impl Wall {
    /// Distance of a point inside it, mm.
    pub(super) fn inside(&self, point: HollowCorner) -> f64 {
        self.at - self.normal.dot(point)
    }
}

/// A convex section, its corners counter-clockwise seen with the front to the left.
#[derive(Clone, Debug)]
pub(super) struct Section {
    pub(super) corners: Vec<HollowCorner>,
}

impl Section {
    /// Reads a section that a caller gave.
    pub(super) fn read(corners: &[HollowCorner], path: &str) -> Result<Self, Vec<Detail>> {
        let faults: Vec<Detail> =
            corners.iter().enumerate().flat_map(|(k, corner)| faults_at(&format!("{path}[{k}]"), corner)).collect();
        if !faults.is_empty() {
            return Err(faults);
        }
        let section = Self { corners: corners.to_vec() };
        let walls = section.walls();
        let turns = walls.iter().zip(walls.iter().cycle().skip(1)).all(|(a, b)| a.normal.cross(b.normal) > 1e-9);
        // Each corner inside every wall: a ring that goes round twice has corners outside.
        let all_inside = corners.iter().all(|corner| walls.iter().all(|wall| wall.inside(*corner) > -1e-6));
        let counted = (3..=CORNERS_MAX).contains(&corners.len()) && walls.len() == corners.len();
        if counted && turns && all_inside && section.area() > LEAST_AREA_MM2 {
            return Ok(section);
        }
        let allowed = "3 to 40 corners counter-clockwise round a convex section, seen with the front to the left";
        let fault =
            Fault::plain(ErrorCode::Inconsistent, "", allowed, "turn the order round, or leave corners in line out");
        Err(vec![Detail::from(fault).within(path)])
    }

    /// The lines round it.
    pub(super) fn walls(&self) -> Vec<Wall> {
        let next = self.corners.iter().cycle().skip(1);
        let wall = |(from, to): (&HollowCorner, &HollowCorner)| {
            let run = to.plus(*from, -1.0);
            let length = run.dot(run).sqrt();
            let normal = HollowCorner::new(run.up_mm / length, -run.out_mm / length);
            (length > 1e-9).then(|| Wall { normal, at: normal.dot(*from) })
        };
        self.corners.iter().zip(next).filter_map(wall).collect()
    }

    /// Area, mm².
    pub(super) fn area(&self) -> f64 {
        let next = self.corners.iter().cycle().skip(1);
        0.5 * self.corners.iter().zip(next).map(|(a, b)| a.cross(*b)).sum::<f64>()
    }

    /// What lies inside a wall; nothing when no area is left.
    pub(super) fn cut(&self, wall: &Wall) -> Option<Self> {
        let mut corners = Vec::with_capacity(self.corners.len() + 1);
        for (from, to) in self.corners.iter().zip(self.corners.iter().cycle().skip(1)) {
            let (a, b) = (wall.inside(*from), wall.inside(*to));
            if a >= 0.0 {
                corners.push(*from);
            }
            if (a > 0.0 && b < 0.0) || (a < 0.0 && b > 0.0) {
                corners.push(from.plus(to.plus(*from, -1.0), a / (a - b)));
            }
        }
        Some(Self { corners }).filter(|left| left.corners.len() >= 3 && left.area() > LEAST_AREA_MM2)
    }

    /// Least and greatest coordinates.
    pub(super) fn bounds(&self) -> (HollowCorner, HollowCorner) {
        let start = (HollowCorner::new(f64::MAX, f64::MAX), HollowCorner::new(f64::MIN, f64::MIN));
        self.corners.iter().fold(start, |(low, high), corner| {
            (
                HollowCorner::new(low.out_mm.min(corner.out_mm), low.up_mm.min(corner.up_mm)),
                HollowCorner::new(high.out_mm.max(corner.out_mm), high.up_mm.max(corner.up_mm)),
            )
        })
    }
}
