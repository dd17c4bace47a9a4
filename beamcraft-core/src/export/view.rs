//! How panels are looked at.

use crate::geometry::{ConvexSolid, Plane, Point3, Vec3, convex_outline};
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
        convex_outline(solid.vertices().iter().map(|point| self.flat(*point)).collect())
    }
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
