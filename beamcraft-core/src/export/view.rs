//! How panels are looked at.

use crate::geometry::{ConvexSolid, Plane, Point3, Vec3};
use crate::shell::Panel;

/// A panel seen from outside, square to its show face, the grain level.
pub(super) struct Face<'a> {
    panel: &'a Panel,
}

impl<'a> Face<'a> {
    pub(super) const fn of(panel: &'a Panel) -> Self {
        Self { panel }
    }

    /// A point along and across the grain, from the near corner of the blank.
    pub(super) fn flat(&self, point: Point3) -> (f64, f64) {
        let local = self.panel.frame.to_local(point);
        (local.x, local.y)
    }

    /// The outline of a solid seen square to the show face.
    pub(super) fn outline(&self, solid: &ConvexSolid) -> Vec<(f64, f64)> {
        hull(solid.vertices().iter().map(|point| self.flat(*point)).collect())
    }
}

/// The convex outline of points, counter-clockwise.
pub(super) fn hull(mut points: Vec<(f64, f64)>) -> Vec<(f64, f64)> {
    points.retain(|(x, y)| x.is_finite() && y.is_finite());
    points.sort_by(|one, other| one.0.total_cmp(&other.0).then(one.1.total_cmp(&other.1)));
    let mut ring: Vec<(f64, f64)> = Vec::new();
    let reversed: Vec<_> = points.iter().rev().copied().collect();
    for run in [points, reversed] {
        let start = ring.len();
        for point in run {
            while let [.., a, b] = ring.get(start..).unwrap_or_default() {
                let turn = (b.0 - a.0) * (point.1 - b.1) - (b.1 - a.1) * (point.0 - b.0);
                if turn > 1e-9 {
                    break;
                }
                ring.pop();
            }
            ring.push(point);
        }
        ring.pop();
    }
    ring
}

/// The plane square across the middle of the longest panel, and the directions to the right and up in it.
pub(super) fn middle_plane(panels: &[Panel]) -> Option<(Plane, Vec3, Vec3)> {
    let longest = panels.iter().max_by(|one, other| one.show_length_mm.total_cmp(&other.show_length_mm))?;
    let along = longest.frame.u;
    let middle = longest.frame.to_world(Vec3::new(0.5 * longest.blank_length_mm, 0.0, 0.0));
    let plane = Plane::through(middle, along)?;
    // Up stays up, unless the panel stands upright.
    let up = [Vec3::Z, Vec3::Y].into_iter().find(|up| up.cross(along).length() > 0.1)?;
    let right = up.cross(along).normalised()?;
    Some((plane, right, along.cross(right)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_outline_of_points_is_convex_and_counter_clockwise() {
        let points = vec![(0.0, 0.0), (2.0, 0.0), (2.0, 1.0), (0.0, 1.0), (1.0, 0.5), (1.0, 0.0), (2.0, 1.0)];
        assert_eq!(hull(points), [(0.0, 0.0), (2.0, 0.0), (2.0, 1.0), (0.0, 1.0)]);
        assert!(hull(Vec::new()).is_empty());
        assert!(hull(vec![(f64::NAN, 0.0)]).is_empty());
    }
}
