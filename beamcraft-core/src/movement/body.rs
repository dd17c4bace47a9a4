//! Outer size of a hollow body through the year.

use super::board::{BoardCut, directions, ring_angle};
use super::figures::{Direction, MovingWood};
use crate::error::{Detail, Error, ErrorCode, Result};
use crate::limits::{faults_at, limited};

/// A body whose boards run with the grain along it, and the moisture contents it lives at.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<BodyMovementInput>))]
pub struct BodyMovementInput {
    /// Wood of the boards.
    pub wood: MovingWood,
    /// How the boards were sawn.
    pub cut: BoardCut,
    /// Angle between growth rings and wide face, degrees; for `ring_angle` only.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub ring_angle_deg: Option<f64>,
    /// Length along the grain as made, mm.
    pub length_mm: f64,
    /// Height across the grain of front and returns as made, mm.
    pub height_mm: f64,
    /// Depth across the grain of top and bottom as made, mm.
    pub depth_mm: f64,
    /// Moisture content when made, %.
    pub made_moisture_pct: f64,
    /// Least moisture content in service, %.
    pub driest_moisture_pct: f64,
    /// Greatest moisture content in service, %.
    pub wettest_moisture_pct: f64,
    /// Shrinkage along the grain from green to ovendry, %; 0.2 is the high end of normal wood (0.1 to 0.2).
    #[cfg_attr(feature = "json", serde(default = "along_the_grain"))]
    pub along_shrinkage_pct: f64,
}

limited!(BodyMovementInput {
    ring_angle_deg: RING_ANGLE,
    length_mm: LENGTH,
    height_mm: BODY_SIZE,
    depth_mm: BODY_SIZE,
    made_moisture_pct: MOISTURE,
    driest_moisture_pct: MOISTURE,
    wettest_moisture_pct: MOISTURE,
    along_shrinkage_pct: LINEAR_SHRINKAGE,
});

#[cfg(feature = "json")]
fn along_the_grain() -> f64 {
    0.2
}

/// Change of a body's outer size at one moisture content.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct BodyChange {
    /// Moisture content, %.
    pub moisture_pct: f64,
    /// Strain of its boards across the width, swelling positive.
    pub width_strain: f64,
    /// Strain of its boards through the thickness, swelling positive.
    pub thickness_strain: f64,
    /// Strain of its boards along the grain, swelling positive.
    pub along_strain: f64,
    /// Change of the length, mm; swelling positive.
    pub length_change_mm: f64,
    /// Change of the height, mm; swelling positive.
    pub height_change_mm: f64,
    /// Change of the depth, mm; swelling positive.
    pub depth_change_mm: f64,
}

/// Outer size of a body through the year.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct BodyMovement {
    /// Change when driest.
    pub driest: BodyChange,
    /// Change when wettest.
    pub wettest: BodyChange,
    /// Movement of the length between both, mm.
    pub length_range_mm: f64,
    /// Movement of the height between both, mm.
    pub height_range_mm: f64,
    /// Movement of the depth between both, mm.
    pub depth_range_mm: f64,
    /// Change of the depth that a return with its grain front to back makes when driest, mm: what the top fights with.
    pub return_driest_mm: f64,
    /// The same when wettest, mm.
    pub return_wettest_mm: f64,
}

/// Change of a hollow body's length, height and depth at its driest and wettest.
///
/// # Equation
/// ```text
/// height, depth: size · ε across the width     length: size · ε along the grain     by board_movement from the moisture when made
/// along the grain: the law of shrinkage with S = 0.1 % to 0.2 %
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | ε | strain | – | `width_strain`, `along_strain` |
///
/// # Limits
/// Boards of one wood and cut that reach balance with the air: the greatest change that can come. The depth is that of top and bottom
/// left free; returns glued to them hold it back (`cross_grain_fight`). In an alcove leave room for the greatest length and height.
///
/// # Errors
/// `out_of_range`, `not_finite`, `unknown_name`, each with its path; `missing_field` or `inconsistent` for the ring angle;
/// `inconsistent` when wettest lies below driest.
///
/// # Source
/// Those of [`board_movement`](super::board_movement); along the grain: American Wood Council (seen) — checked by
/// `verification/movement`.
///
/// # Examples
/// ```
/// use beamcraft_core::movement::{body_movement, BoardCut, BodyMovementInput, MovingSpecies, MovingWood};
/// let body = body_movement(&BodyMovementInput {
///     wood: MovingWood::Species(MovingSpecies { name: "white ash".to_owned() }),
///     cut: BoardCut::FlatSawn, ring_angle_deg: None, length_mm: 1830.0, height_mm: 185.0, depth_mm: 215.0,
///     made_moisture_pct: 8.0, driest_moisture_pct: 6.0, wettest_moisture_pct: 11.0, along_shrinkage_pct: 0.2,
/// })?;
/// assert!((body.height_range_mm - 185.0 * 0.00274 * 5.0).abs() < 1e-9 && body.length_range_mm < 0.7);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn body_movement(input: &BodyMovementInput) -> Result<BodyMovement> {
    let mut faults = faults_at("", input);
    let figures = input.wood.resolve();
    let figures = figures.map_err(|error| faults.extend(error.within("wood").details().iter().cloned()));
    let angle = ring_angle(input.cut, input.ring_angle_deg).map_err(|fault| faults.push(fault.into()));
    let (dry, wet) = (input.driest_moisture_pct, input.wettest_moisture_pct);
    if wet < dry {
        faults.push(Detail {
            code: ErrorCode::Inconsistent,
            path: "wettest_moisture_pct".to_owned(),
            given: format!("{wet} %"),
            allowed: "at least the driest moisture content".to_owned(),
            cure: "exchange the two".to_owned(),
        });
    }
    Error::unless_empty(faults)?;
    // Both are there when nothing was at fault.
    let ((figures, _), angle_deg) = match (figures, angle) {
        (Ok(figures), Ok(angle_deg)) => (figures, angle_deg),
        _ => (input.wood.resolve()?, ring_angle(input.cut, input.ring_angle_deg)?),
    };
    let (width, thickness) = directions(&figures, angle_deg);
    let along = Direction::of_shrinkage(input.along_shrinkage_pct, figures.fibre_saturation_pct);
    let made = input.made_moisture_pct;
    let at = |moisture_pct: f64| {
        let [width_strain, thickness_strain, along_strain] =
            [width, thickness, along].map(|direction| direction.strain(made, moisture_pct));
        BodyChange {
            moisture_pct,
            width_strain,
            thickness_strain,
            along_strain,
            length_change_mm: input.length_mm * along_strain,
            height_change_mm: input.height_mm * width_strain,
            depth_change_mm: input.depth_mm * width_strain,
        }
    };
    let (driest, wettest) = (at(dry), at(wet));
    Ok(BodyMovement {
        driest,
        wettest,
        length_range_mm: wettest.length_change_mm - driest.length_change_mm,
        height_range_mm: wettest.height_change_mm - driest.height_change_mm,
        depth_range_mm: wettest.depth_change_mm - driest.depth_change_mm,
        return_driest_mm: input.depth_mm * driest.along_strain,
        return_wettest_mm: input.depth_mm * wettest.along_strain,
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const BODY_MOVEMENT: crate::json::Calculation = crate::json::calculation!(
    body_movement: BodyMovementInput => BodyMovement, Document,
    "Change of a hollow body's length, height and depth at its driest and wettest"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::movement::MovingSpecies;
    use proptest::prelude::*;

    fn ash(made: f64, dry: f64, wet: f64) -> BodyMovementInput {
        BodyMovementInput {
            wood: MovingWood::Species(MovingSpecies { name: "white ash".to_owned() }),
            cut: BoardCut::FlatSawn,
            ring_angle_deg: None,
            length_mm: 1830.0,
            height_mm: 185.0,
            depth_mm: 215.0,
            made_moisture_pct: made,
            driest_moisture_pct: dry,
            wettest_moisture_pct: wet,
            along_shrinkage_pct: 0.2,
        }
    }

    #[test]
    fn every_fault_is_told_with_its_path() {
        let wrong = BodyMovementInput {
            wood: MovingWood::Species(MovingSpecies { name: "brick".to_owned() }),
            cut: BoardCut::RingAngle,
            height_mm: f64::NAN,
            ..ash(8.0, 11.0, 6.0)
        };
        let error = body_movement(&wrong).expect_err("four faults");
        let paths: Vec<_> = error.details().iter().map(|detail| detail.path.as_str()).collect();
        assert_eq!(paths, ["height_mm", "wood.species.name", "ring_angle_deg", "wettest_moisture_pct"]);
    }

    proptest! {
        #[test]
        fn a_body_that_stays_at_its_moisture_does_not_move(m in 0.0_f64..=30.0) {
            let still = body_movement(&ash(m, m, m)).expect("allowed");
            prop_assert_eq!((still.length_range_mm, still.height_range_mm, still.depth_range_mm), (0.0, 0.0, 0.0));
            prop_assert_eq!(still.driest.height_change_mm, 0.0);
        }

        #[test]
        fn it_moves_more_across_than_along(made in 4.0_f64..15.0, dry in 3.0_f64..8.0, more in 0.5_f64..8.0) {
            let body = body_movement(&ash(made, dry, dry + more)).expect("allowed");
            prop_assert!(body.height_range_mm / 185.0 > 5.0 * body.length_range_mm / 1830.0);
            prop_assert!(body.length_range_mm > 0.0);
        }
    }
}
