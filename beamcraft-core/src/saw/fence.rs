//! The fence distance of a bevelled rip.

use crate::error::{Allowed, ErrorCode, Fault};
use crate::limits::{Limited, limited};
use crate::numeric::real::{cos_deg, tan_deg};

/// Which face lies up and which way the blade leans; the kept piece lies between the fence and the blade.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum RipSetUp {
    /// Show face up, blade leaning away from the fence: for a bevel with its long point on the show face.
    ShowFaceUpBladeAway,
    /// Show face down, blade leaning towards the fence: for a bevel with its long point on the show face.
    ShowFaceDownBladeTowards,
    /// Show face up, blade leaning towards the fence: for a bevel with its long point on the inner face.
    ShowFaceUpBladeTowards,
    /// Show face down, blade leaning away from the fence: for a bevel with its long point on the inner face.
    ShowFaceDownBladeAway,
}

/// A rip cut with the kept piece between the fence and the blade.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<RipFenceInput>))]
pub struct RipFenceInput {
    /// Width of the show face after the cut, mm.
    pub show_width_mm: f64,
    /// Thickness of the board, mm.
    pub thickness_mm: f64,
    /// Bevel of the edge that rides the fence, degrees; positive when its long point lies on the show face.
    #[cfg_attr(feature = "json", serde(default = "square"))]
    pub fence_edge_bevel_deg: f64,
    /// Bevel of the cut, degrees; positive when its long point lies on the show face.
    pub cut_bevel_deg: f64,
    /// Which face lies up and which way the blade leans.
    pub set_up: RipSetUp,
    /// Kerf of the blade, measured square to it, mm.
    pub kerf_mm: f64,
}

limited!(RipFenceInput {
    show_width_mm: LENGTH,
    thickness_mm: BOARD_THICKNESS,
    fence_edge_bevel_deg: BEVEL,
    cut_bevel_deg: BEVEL,
    kerf_mm: KERF,
});

#[cfg(feature = "json")]
fn square() -> f64 {
    0.0
}

/// Which piece lies between the fence and a blade that leans towards it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum TrappedPiece {
    /// None: the blade is square or leans away from the fence.
    None,
    /// The kept piece: it can bind and be thrown back.
    KeptPiece,
}

/// How the edge that rides the fence meets it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum RidingEdge {
    /// Square: the whole edge rides the fence.
    Square,
    /// The long point rides up: the fence must be higher than the board is thick.
    LongPointUp,
    /// The long point rides down on the table: it must not creep under the fence.
    LongPointDown,
}

/// Fence setting of a bevelled rip.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct RipFence {
    /// Distance from the fence to the blade, measured at the table, mm.
    pub fence_mm: f64,
    /// Width of the show face, mm.
    pub show_width_mm: f64,
    /// Width of the inner face, mm.
    pub inner_width_mm: f64,
    /// Kerf measured along the table, mm.
    pub kerf_at_table_mm: f64,
    /// Change of the show width for each mm that the board is thicker than stated, the fence unmoved.
    pub show_width_per_thickness: f64,
    /// Which piece is trapped between the fence and the blade.
    pub trapped_piece: TrappedPiece,
    /// How the edge that rides the fence meets it.
    pub riding_edge: RidingEdge,
}

/// Fence distance at the table for a rip with bevels on one or both edges.
///
/// # Equation
/// ```text
/// show face up:    fence = W + max(0, −t tan b1) − t tan b2
/// show face down:  fence = W + max(0, −t tan b1)
/// inner width = W − t tan b1 − t tan b2        kerf at the table = k / cos b2
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | W | width of the show face | mm | `show_width_mm` |
/// | t | thickness | mm | `thickness_mm` |
/// | b1 | bevel of the edge on the fence | degree | `fence_edge_bevel_deg` |
/// | b2 | bevel of the cut | degree | `cut_bevel_deg` |
/// | k | kerf | mm | `kerf_mm` |
///
/// With the show face down the width does not depend on the thickness of the board, unless the riding edge bears on its
/// inner arris; with the show face up it does: `show_width_per_thickness`.
///
/// # Limits
/// The kept piece lies between the fence and the blade.
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` when the blade leans against the sign of the bevel, or when one of the two
/// faces would have no width.
///
/// # Source
/// Plane geometry, derived in the theory pages; checked by `verification/saw`.
///
/// # Examples
/// ```
/// use beamcraft_core::saw::{RipFenceInput, RipSetUp, rip_fence};
/// // A face of 6 in. of 3/4 in. board, mitred at 45° on both edges: the fence stands at 5 1/4 in.
/// let rip = rip_fence(&RipFenceInput {
///     show_width_mm: 152.4, thickness_mm: 19.05, fence_edge_bevel_deg: 45.0, cut_bevel_deg: 45.0,
///     set_up: RipSetUp::ShowFaceUpBladeAway, kerf_mm: 3.2,
/// })?;
/// assert!((rip.fence_mm - 133.35).abs() < 1e-9);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn rip_fence(input: &RipFenceInput) -> Result<RipFence, Fault> {
    input.check_ranges()?;
    let RipFenceInput { show_width_mm, thickness_mm, fence_edge_bevel_deg, cut_bevel_deg, set_up, kerf_mm } = *input;
    let (face_up, leans_towards) = match set_up {
        RipSetUp::ShowFaceUpBladeAway => (true, false),
        RipSetUp::ShowFaceDownBladeTowards => (false, true),
        RipSetUp::ShowFaceUpBladeTowards => (true, true),
        RipSetUp::ShowFaceDownBladeAway => (false, false),
    };
    // Seen from the table up, a positive bevel runs away from the fence with the show face up, towards it face down.
    let runs_towards = if face_up { cut_bevel_deg < 0.0 } else { cut_bevel_deg > 0.0 };
    if cut_bevel_deg != 0.0 && runs_towards != leans_towards {
        return Err(Fault::number(
            ErrorCode::Inconsistent,
            "cut_bevel_deg",
            cut_bevel_deg,
            Allowed::Text("a bevel of the sign that this lean of the blade cuts"),
            "choose the set-up with the other lean, or turn the board over",
        ));
    }
    let (edge_run, cut_run) = (tan_deg(fence_edge_bevel_deg), tan_deg(cut_bevel_deg));
    let inner_width_mm = show_width_mm - thickness_mm * edge_run - thickness_mm * cut_run;
    if show_width_mm <= 0.0 || inner_width_mm <= 0.0 {
        return Err(Fault::number(
            ErrorCode::Inconsistent,
            "show_width_mm",
            show_width_mm,
            Allowed::Text("a width at which both faces are left"),
            "a wider panel, a thinner board or less bevel",
        ));
    }
    let up_to_show = (-thickness_mm * edge_run).max(0.0);
    let at_table = if face_up { thickness_mm * cut_run } else { 0.0 };
    let riding_edge = if fence_edge_bevel_deg == 0.0 {
        RidingEdge::Square
    } else if (fence_edge_bevel_deg > 0.0) == face_up {
        RidingEdge::LongPointUp
    } else {
        RidingEdge::LongPointDown
    };
    let trapped = leans_towards && cut_bevel_deg != 0.0;
    Ok(RipFence {
        fence_mm: show_width_mm + up_to_show - at_table,
        show_width_mm,
        inner_width_mm,
        kerf_at_table_mm: kerf_mm / cos_deg(cut_bevel_deg),
        show_width_per_thickness: edge_run.min(0.0) + if face_up { cut_run } else { 0.0 },
        trapped_piece: if trapped { TrappedPiece::KeptPiece } else { TrappedPiece::None },
        riding_edge,
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const RIP_FENCE: crate::json::Calculation = crate::json::calculation!(
    rip_fence: RipFenceInput => RipFence, Typed,
    "Fence distance at the table for a rip with bevels on one or both edges, by face up and lean of the blade"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::{ConvexSolid, Plane, Vec3};
    use crate::numeric::real::sin_cos_deg;
    use proptest::prelude::*;

    const SET_UPS: [RipSetUp; 4] = [
        RipSetUp::ShowFaceUpBladeAway,
        RipSetUp::ShowFaceDownBladeTowards,
        RipSetUp::ShowFaceUpBladeTowards,
        RipSetUp::ShowFaceDownBladeAway,
    ];

    fn rip(show_width_mm: f64, bevels: (f64, f64), set_up: RipSetUp) -> Result<RipFence, Fault> {
        rip_fence(&RipFenceInput {
            show_width_mm,
            thickness_mm: 20.0,
            fence_edge_bevel_deg: bevels.0,
            cut_bevel_deg: bevels.1,
            set_up,
            kerf_mm: 3.0,
        })
    }

    #[test]
    fn the_first_rip_of_a_square_board_and_the_second_of_a_bevelled_one() {
        // First cut from a square edge: face up the fence takes off the run of the bevel, face down nothing.
        let first = rip(150.0, (0.0, 45.0), RipSetUp::ShowFaceUpBladeAway).unwrap();
        assert_eq!(
            (first.fence_mm, first.trapped_piece, first.riding_edge),
            (130.0, TrappedPiece::None, RidingEdge::Square)
        );
        let down = rip(150.0, (45.0, 45.0), RipSetUp::ShowFaceDownBladeTowards).unwrap();
        assert_eq!((down.fence_mm, down.inner_width_mm), (150.0, 110.0));
        assert_eq!((down.trapped_piece, down.riding_edge), (TrappedPiece::KeptPiece, RidingEdge::LongPointDown));
        assert_eq!(down.show_width_per_thickness, 0.0);
        let up = rip(150.0, (45.0, 45.0), RipSetUp::ShowFaceUpBladeAway).unwrap();
        assert_eq!((up.fence_mm, up.riding_edge, up.show_width_per_thickness), (130.0, RidingEdge::LongPointUp, 1.0));
    }

    #[test]
    fn a_lean_that_cannot_cut_the_bevel_is_refused() {
        for (set_up, bevel) in SET_UPS.into_iter().zip([-30.0, -30.0, 30.0, 30.0]) {
            let fault = rip(150.0, (0.0, bevel), set_up).unwrap_err();
            assert_eq!((fault.code, fault.field), (ErrorCode::Inconsistent, "cut_bevel_deg"));
            assert!(rip(150.0, (0.0, -bevel), set_up).is_ok());
            assert!(rip(150.0, (0.0, 0.0), set_up).is_ok());
        }
        let narrow = rip(30.0, (45.0, 45.0), RipSetUp::ShowFaceUpBladeAway).unwrap_err();
        assert_eq!((narrow.code, narrow.field), (ErrorCode::Inconsistent, "show_width_mm"));
    }

    proptest! {
        /// Lays the board on a table, pushes it to a fence at x = 0, cuts it at the answer, and measures the show face.
        #[test]
        fn the_fence_cuts_the_width_asked_for(width in 120.0..400.0, b1 in -50.0..50.0, b2 in -50.0..50.0, which in 0_usize..4) {
            let Ok(set) = rip(width, (b1, b2), SET_UPS[which]) else { return Ok(()) };
            let face_up = matches!(SET_UPS[which], RipSetUp::ShowFaceUpBladeAway | RipSetUp::ShowFaceUpBladeTowards);
            let show_z = if face_up { 20.0 } else { 0.0 };
            let slope = |bevel: f64| if face_up { tan_deg(bevel) } else { -tan_deg(bevel) };
            // The riding edge leans by b1 and touches the fence at its outermost arris.
            let (sine, cosine) = sin_cos_deg(if face_up { b1 } else { -b1 });
            let low_x = if slope(b1) > 0.0 { 20.0 * slope(b1) } else { 0.0 };
            let edge = Plane::through(Vec3::new(low_x, 0.0, 0.0), Vec3::new(-cosine, 0.0, -sine)).unwrap();
            let (sine, cosine) = sin_cos_deg(if face_up { b2 } else { -b2 });
            let blade = Plane::through(Vec3::new(set.fence_mm, 0.0, 0.0), Vec3::new(cosine, 0.0, -sine)).unwrap();
            let board = ConvexSolid::cuboid(Vec3::new(-100.0, 0.0, 0.0), Vec3::new(1000.0, 1.0, 20.0), [0; 6]).unwrap();
            let piece = board.cut([(edge, 1), (blade, 2)]).unwrap();
            prop_assert!(piece.bounds().0.x.abs() < 1e-9, "the board touches the fence");
            let span = |z: f64| {
                let xs: Vec<f64> = piece.vertices().iter().filter(|v| (v.z - z).abs() < 1e-9).map(|v| v.x).collect();
                xs.iter().copied().fold(f64::MIN, f64::max) - xs.iter().copied().fold(f64::MAX, f64::min)
            };
            prop_assert!((span(show_z) - width).abs() < 1e-9, "{set:?}");
            prop_assert!((span(20.0 - show_z) - set.inner_width_mm).abs() < 1e-9, "{set:?}");
        }

        #[test]
        fn a_thicker_board_changes_the_width_as_stated(b1 in -50.0..50.0, b2 in -50.0..50.0, more in -1.0..1.0, which in 0_usize..4) {
            let at = |thickness_mm: f64, show_width_mm: f64| rip_fence(&RipFenceInput {
                show_width_mm, thickness_mm, fence_edge_bevel_deg: b1, cut_bevel_deg: b2, set_up: SET_UPS[which], kerf_mm: 3.0,
            });
            let Ok(set) = at(20.0, 200.0) else { return Ok(()) };
            let other = at(20.0 + more, 200.0 + more * set.show_width_per_thickness).unwrap();
            prop_assert!((other.fence_mm - set.fence_mm).abs() < 1e-9, "{set:?} {other:?}");
        }

        #[test]
        fn any_bits_give_numbers_or_a_fault(bits in prop::array::uniform5(prop_oneof![prop::num::f64::ANY, -100.0..400.0]), which in 0_usize..4) {
            let [show_width_mm, thickness_mm, fence_edge_bevel_deg, cut_bevel_deg, kerf_mm] = bits;
            let input = RipFenceInput {
                show_width_mm, thickness_mm, fence_edge_bevel_deg, cut_bevel_deg, set_up: SET_UPS[which], kerf_mm,
            };
            if let Ok(set) = rip_fence(&input) {
                let all = [set.fence_mm, set.inner_width_mm, set.kerf_at_table_mm, set.show_width_per_thickness];
                prop_assert!(all.iter().all(|value| value.is_finite()) && set.fence_mm > 0.0, "{set:?}");
            }
        }
    }
}
