//! Bevels that the saw reaches, and the set-ups for those it does not.

use crate::error::Fault;
use crate::limits::{Limited, limited};

/// A bevel and what the saw can tilt to.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<TiltSetUpInput>))]
pub struct TiltSetUpInput {
    /// Blade tilt from square that the edge needs, degrees; negative when the long point lies on the inner face.
    pub tilt_deg: f64,
    /// Largest tilt of the saw from square, degrees; 45, as most saws have, if left out.
    #[cfg_attr(feature = "json", serde(default = "usual_tilt"))]
    pub max_tilt_deg: f64,
}

limited!(TiltSetUpInput { tilt_deg: BEVEL, max_tilt_deg: SAW_TILT });

#[cfg(feature = "json")]
fn usual_tilt() -> f64 {
    45.0
}

/// How the board goes over the saw.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum BoardSetUp {
    /// Flat on the table, as for any bevel with its long point on the show face.
    Flat,
    /// Flat on the table, turned over: the long point lies on the inner face.
    OtherFaceDown,
    /// On edge against a tall fence, the blade at the complement of the bevel.
    OnEdgeAgainstTallFence,
    /// Flat on a wedge that leans the board by what the blade lacks.
    JigWedge,
}

/// The set-up for a bevel.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct TiltSetUp {
    /// How the board goes over the saw.
    pub set_up: BoardSetUp,
    /// Tilt to set on the saw, degrees.
    pub saw_tilt_deg: f64,
    /// Angle of the wedge under the board, degrees; 0 without one.
    pub wedge_deg: f64,
}

/// Tilts that differ by less are the same: a bevel taken from a solid is rounded in its last digits.
const SAME_DEG: f64 = 1e-9;

/// The set-up for a bevel, within or beyond the tilt of the saw.
///
/// # Equation
/// ```text
/// 0 ≤ tilt ≤ max            flat                        saw tilt = tilt
/// −max ≤ tilt < 0           other face down             saw tilt = |tilt|
/// |tilt| > max, 90 − |tilt| ≤ max    on edge            saw tilt = 90 − |tilt|
/// else                      on a wedge of |tilt| − max  saw tilt = max
/// ```
///
/// # Limits
/// Says the angles only. A wide panel on edge needs a tall fence and a hold-down; where that is not safe, use a wedge or
/// another machine.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// Common practice of the trade: the complement on edge; checked by `verification/saw`.
///
/// # Examples
/// ```
/// use beamcraft_core::saw::{BoardSetUp, TiltSetUpInput, tilt_set_up};
/// let cut = tilt_set_up(&TiltSetUpInput { tilt_deg: 61.3, max_tilt_deg: 45.0 })?;
/// assert_eq!(cut.set_up, BoardSetUp::OnEdgeAgainstTallFence);
/// assert!((cut.saw_tilt_deg - 28.7).abs() < 1e-9);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn tilt_set_up(input: &TiltSetUpInput) -> Result<TiltSetUp, Fault> {
    input.check_ranges()?;
    let TiltSetUpInput { tilt_deg, max_tilt_deg } = *input;
    let size = tilt_deg.abs();
    let (set_up, saw_tilt_deg, wedge_deg) = if size <= max_tilt_deg + SAME_DEG {
        let set_up = if tilt_deg < 0.0 { BoardSetUp::OtherFaceDown } else { BoardSetUp::Flat };
        (set_up, size.min(max_tilt_deg), 0.0)
    } else if 90.0 - size <= max_tilt_deg {
        (BoardSetUp::OnEdgeAgainstTallFence, 90.0 - size, 0.0)
    } else {
        (BoardSetUp::JigWedge, max_tilt_deg, size - max_tilt_deg)
    };
    Ok(TiltSetUp { set_up, saw_tilt_deg, wedge_deg })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const TILT_SET_UP: crate::json::Calculation = crate::json::calculation!(
    tilt_set_up: TiltSetUpInput => TiltSetUp, Typed,
    "How to cut a bevel that lies within or beyond the tilt of the saw"
);

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn the_limit_itself_is_within() {
        let set_up = |tilt_deg, max_tilt_deg| tilt_set_up(&TiltSetUpInput { tilt_deg, max_tilt_deg }).unwrap();
        assert_eq!(set_up(45.0, 45.0).set_up, BoardSetUp::Flat);
        assert_eq!(set_up(-45.0, 45.0).set_up, BoardSetUp::OtherFaceDown);
        assert_eq!(set_up(45.5, 45.0).set_up, BoardSetUp::OnEdgeAgainstTallFence);
        assert_eq!(set_up(45.0, 40.0), TiltSetUp { set_up: BoardSetUp::JigWedge, saw_tilt_deg: 40.0, wedge_deg: 5.0 });
        assert_eq!(set_up(-0.0, 45.0).set_up, BoardSetUp::Flat);
    }

    proptest! {
        #[test]
        fn every_set_up_cuts_the_bevel_within_the_saw(tilt_deg in -80.0..80.0, max_tilt_deg in 30.0..60.0) {
            let cut = tilt_set_up(&TiltSetUpInput { tilt_deg, max_tilt_deg }).unwrap();
            prop_assert!(cut.saw_tilt_deg >= 0.0 && cut.saw_tilt_deg <= max_tilt_deg);
            let bevel = match cut.set_up {
                BoardSetUp::Flat => cut.saw_tilt_deg,
                BoardSetUp::OtherFaceDown => -cut.saw_tilt_deg,
                BoardSetUp::OnEdgeAgainstTallFence => (90.0 - cut.saw_tilt_deg).copysign(tilt_deg),
                BoardSetUp::JigWedge => (cut.saw_tilt_deg + cut.wedge_deg).copysign(tilt_deg),
            };
            prop_assert!((bevel - tilt_deg).abs() < 2.0 * SAME_DEG);
        }

        #[test]
        fn any_bits_give_numbers_or_a_fault(tilt_deg in prop::num::f64::ANY, max_tilt_deg in prop::num::f64::ANY) {
            for max_tilt_deg in [max_tilt_deg, 45.0] {
                if let Ok(cut) = tilt_set_up(&TiltSetUpInput { tilt_deg, max_tilt_deg }) {
                    prop_assert!(cut.saw_tilt_deg.is_finite() && cut.wedge_deg.is_finite());
                }
            }
        }
    }
}
