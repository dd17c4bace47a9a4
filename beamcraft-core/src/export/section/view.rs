//! Where the section lies on the paper, and at which scale.

use super::super::layout::{Scale, Zone};
use super::super::svg::Spot;
use super::scene::{Scene, Yz};

/// Paper beside the body for the dimension of its height, mm.
const LEFT: f64 = 26.0;
/// Paper above the body for the lift and the bevels, mm.
const TOP: f64 = 20.0;
/// Paper below the body for the depth, mm.
const BELOW: f64 = 20.0;
/// How far the wall is drawn past the body when nothing asks for more, mm of paper.
pub(super) const WALL_PAST: f64 = 16.0;
/// Distance between dimension lines, mm of paper.
pub(super) const DIMENSION_STEP: f64 = 8.0;
/// Thickness of a wall whose build is not known, mm of paper.
pub(super) const PLAIN_WALL: f64 = 5.0;

/// The section's place and scale.
pub(super) struct View {
    /// Millimetres of paper for one of the body.
    pub(super) scale: f64,
    /// The same scale, as it is written.
    pub(super) written: Scale,
    /// Where the lower front edge of the body lies.
    origin: Spot,
    /// Upper end of what is drawn, on the paper.
    pub(super) top: f64,
    /// Lower end of the wall, on the paper.
    pub(super) bottom: f64,
    /// Rearmost end of the wall, mm from the front.
    pub(super) back_mm: f64,
    /// Foremost end of what is drawn above the body, mm from the front; zero or less.
    pub(super) front_mm: f64,
}

impl View {
    /// The largest scale at which the section and its dimensions fit a zone.
    pub(super) fn fit(scene: &Scene<'_>, zone: Zone) -> Self {
        let wall_mm = scene.wall.map_or(0.0, |wall| wall.lining_thickness_mm + wall.stud_depth_mm);
        let screw_mm = match (scene.cleat, scene.wall) {
            (Some(_), Some(_)) => scene.plan.spec.cleat.screws.length_mm - scene.plan.spec.cleat.thickness_mm,
            _ => 0.0,
        };
        let back_mm = scene.depth_mm + wall_mm.max(screw_mm);
        // What stands out farther than a little more than the body is broken off.
        let reach = |projection_mm: f64| (scene.depth_mm - projection_mm).max(-0.15 * scene.depth_mm);
        let front_mm = scene.obstructions.iter().map(|one| reach(one.projection_mm)).fold(0.0, f64::min);
        let highest = scene.obstructions.iter().map(|one| one.bottom_mm).fold(scene.height_mm, f64::max);
        let upper_mm = (highest - scene.height_mm).max(scene.lift_mm());
        let right = PLAIN_WALL + 3.0 * DIMENSION_STEP + 4.0;
        let width = zone.width() - LEFT - right;
        let height = zone.height() - TOP - BELOW;
        let (model_width, model_height) = (back_mm - front_mm, scene.height_mm + upper_mm);
        let written = Scale::fitting((model_width, model_height), (width, height));
        let scale = written.of_paper();
        // In the middle of what is left over.
        let spare_width = (width - model_width * scale).max(0.0);
        let spare_height = (height - model_height * scale).max(0.0);
        let x = zone.left + LEFT + 0.5 * spare_width - front_mm * scale;
        let y = zone.bottom - BELOW - 0.5 * spare_height;
        let top = y - (scene.height_mm + upper_mm) * scale - WALL_PAST;
        Self { scale, written, origin: Spot::new(x, y), top, bottom: y + 9.0, back_mm, front_mm }
    }

    /// Place of a point of the section on the paper.
    pub(super) fn spot(&self, at: Yz) -> Spot {
        self.origin.by(at.y * self.scale, -at.z * self.scale)
    }

    /// Height on the section of a place on the paper, mm.
    pub(super) fn height_of(&self, y: f64) -> f64 {
        (self.origin.y - y) / self.scale
    }
}
