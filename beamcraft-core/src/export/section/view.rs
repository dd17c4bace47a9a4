//! Where the section lies on the paper, and at which scale.

use super::super::svg::Spot;
use super::super::text::fixed;
use super::scene::{Scene, Yz};

/// Numbers N of the scales 1:N: those of ISO 5455, and between 2 and 10 the whole and half steps that fill a sheet.
const SCALES: [f64; 21] = [
    0.1, 0.2, 0.5, 1.0, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0, 100.0, 200.0,
    500.0,
];

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

/// A rectangle of the paper.
#[derive(Clone, Copy)]
pub(super) struct Zone {
    pub(super) left: f64,
    pub(super) top: f64,
    pub(super) right: f64,
    pub(super) bottom: f64,
}

/// The section's place and scale.
pub(super) struct View {
    /// Millimetres of paper for one of the body.
    pub(super) scale: f64,
    /// N of the scale 1:N.
    ratio: f64,
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
        let width = zone.right - zone.left - LEFT - right;
        let height = zone.bottom - zone.top - TOP - BELOW;
        let (model_width, model_height) = (back_mm - front_mm, scene.height_mm + upper_mm);
        let fits = |ratio: &f64| model_width / ratio <= width && model_height / ratio <= height;
        let least = (model_width / width).max(model_height / height);
        let ratio = SCALES.into_iter().find(fits).unwrap_or(least);
        let scale = 1.0 / ratio;
        // In the middle of what is left over.
        let spare_width = (width - model_width * scale).max(0.0);
        let spare_height = (height - model_height * scale).max(0.0);
        let x = zone.left + LEFT + 0.5 * spare_width - front_mm * scale;
        let y = zone.bottom - BELOW - 0.5 * spare_height;
        let top = y - (scene.height_mm + upper_mm) * scale - WALL_PAST;
        Self { scale, ratio, origin: Spot::new(x, y), top, bottom: y + 9.0, back_mm, front_mm }
    }

    /// Place of a point of the section on the paper.
    pub(super) fn spot(&self, at: Yz) -> Spot {
        self.origin.by(at.y * self.scale, -at.z * self.scale)
    }

    /// Height on the section of a place on the paper, mm.
    pub(super) fn height_of(&self, y: f64) -> f64 {
        (self.origin.y - y) / self.scale
    }

    /// The scale as it is written: `1:2`, `5:1`.
    pub(super) fn scale_text(&self) -> String {
        if self.ratio >= 1.0 {
            format!("1:{}", fixed(self.ratio, 1))
        } else {
            format!("{}:1", fixed(1.0 / self.ratio, 1))
        }
    }
}
