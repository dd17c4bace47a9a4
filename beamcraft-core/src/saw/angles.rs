//! Tilt and gauge angle of any straight cut.

use crate::error::{ErrorCode, Fault};
use crate::geometry::Vec3;
use crate::limits::{Limited, limited};
use crate::numeric::real::atan2_deg;

/// A cut and the edge that rides the mitre gauge, both by their normals out of the panel, in the panel's frame.
///
/// Only the directions count, not the lengths.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<SawAnglesInput>))]
pub struct SawAnglesInput {
    /// Component of the cut's normal along the grain.
    pub cut_u: f64,
    /// Component of the cut's normal across the grain.
    pub cut_v: f64,
    /// Component of the cut's normal out of the show face.
    pub cut_n: f64,
    /// Component along the grain of the normal of the edge that rides the gauge.
    pub riding_u: f64,
    /// Component across the grain of the normal of the edge that rides the gauge.
    pub riding_v: f64,
}

limited!(SawAnglesInput {
    cut_u: DIRECTION,
    cut_v: DIRECTION,
    cut_n: DIRECTION,
    riding_u: DIRECTION,
    riding_v: DIRECTION,
});

/// How to set the saw for a cut.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SawAngles {
    /// Blade tilt from square, degrees; positive when the long point lies on the show face.
    pub tilt_deg: f64,
    /// Gauge angle from a cut square to the riding edge, degrees; positive when the panel is longer at the far side, and 90
    /// for a cut along the riding edge.
    pub gauge_deg: f64,
}

/// Blade tilt and gauge angle of a cut, the gauge stated against the edge that rides it.
///
/// # Equation
/// ```text
/// tilt  = atan2(−m_n, √(m_u² + m_v²))
/// gauge = atan2(m · r, |m_u r_v − m_v r_u|)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | m | normal of the cut out of the panel | | `cut_u`, `cut_v`, `cut_n` |
/// | r | normal of the riding edge out of the panel, in the face | | `riding_u`, `riding_v` |
///
/// On a tapered panel the riding edge is not along the grain, and the angle from the grain would be the wrong one.
///
/// # Limits
/// Board flat on the table.
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` for a cut that lies in the plane of the face or a riding edge without a
/// direction.
///
/// # Source
/// Solid geometry, derived in the theory pages; checked by `verification/saw`.
///
/// # Examples
/// ```
/// use beamcraft_core::saw::{SawAnglesInput, saw_angles};
/// // A 45° mitre across a board whose lower edge rides the gauge.
/// let cut = saw_angles(&SawAnglesInput { cut_u: 1.0, cut_v: 0.0, cut_n: -1.0, riding_u: 0.0, riding_v: -1.0 })?;
/// assert_eq!((cut.tilt_deg, cut.gauge_deg), (45.0, 0.0));
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn saw_angles(input: &SawAnglesInput) -> Result<SawAngles, Fault> {
    input.check_ranges()?;
    let plain = |field, allowed| Fault::plain(ErrorCode::Inconsistent, field, allowed, "");
    let flat = plain("cut_u", "a cut that does not lie in the plane of the face");
    let cut = Vec3::new(input.cut_u, input.cut_v, input.cut_n).normalised().ok_or(flat)?;
    let riding = Vec3::new(input.riding_u, input.riding_v, 0.0).normalised();
    let riding = riding.ok_or(plain("riding_u", "a riding edge with a direction"))?;
    let in_face = (cut.x * cut.x + cut.y * cut.y).sqrt();
    // Flatter than this and the direction of the cut in the face is rounding.
    if in_face < 1e-9 {
        return Err(flat);
    }
    Ok(SawAngles {
        tilt_deg: atan2_deg(-cut.z, in_face),
        gauge_deg: atan2_deg(cut.dot(riding), (cut.x * riding.y - cut.y * riding.x).abs()),
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const SAW_ANGLES: crate::json::Calculation = crate::json::calculation!(
    saw_angles: SawAnglesInput => SawAngles, Typed,
    "Blade tilt and gauge angle of any straight cut, the gauge stated against the edge that rides it"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::shell::{EdgeCut, EndKind, FaceKind, Leg, LegBoard, LegEnd, LongFace, shell_panels};
    use proptest::prelude::*;

    fn angles(cut: [f64; 3], riding: [f64; 2]) -> Result<SawAngles, Fault> {
        let ([cut_u, cut_v, cut_n], [riding_u, riding_v]) = (cut, riding);
        saw_angles(&SawAnglesInput { cut_u, cut_v, cut_n, riding_u, riding_v })
    }

    #[test]
    fn the_gauge_is_stated_against_the_riding_edge() {
        // A panel that tapers 1 in 10 at its lower edge, cut square to the grain: the gauge is off by the taper.
        let taper = angles([1.0, 0.0, 0.0], [0.1, -1.0]).unwrap();
        assert!((taper.gauge_deg - 5.710_593_137_499_643).abs() < 1e-12, "atan(1/10)");
        // Both ends of it lean, one longer at the far side and the other shorter.
        let other = angles([-1.0, 0.0, 0.0], [0.1, -1.0]).unwrap();
        assert_eq!(other.gauge_deg, -taper.gauge_deg);
        assert_eq!(angles([0.0, 1.0, 0.0], [0.0, -1.0]).unwrap().gauge_deg, -90.0);
    }

    #[test]
    fn what_has_no_direction_is_refused() {
        assert_eq!(angles([0.0, 0.0, 1.0], [0.0, 1.0]).unwrap_err().field, "cut_u");
        assert_eq!(angles([0.0, 0.0, 0.0], [0.0, 1.0]).unwrap_err().field, "cut_u");
        assert_eq!(angles([1.0, 0.0, 0.0], [0.0, 0.0]).unwrap_err().field, "riding_u");
        assert_eq!(angles([5e-324, 0.0, -5e-324], [0.0, 5e-324]).unwrap().tilt_deg, 45.0);
    }

    #[test]
    fn a_panel_of_a_splayed_beam_has_the_angles_of_its_edges() {
        let board = |face| LegBoard { face, thickness_mm: 20.0 };
        let end = |corner_deg| LegEnd { kind: EndKind::ReturnPanel, thickness_mm: Some(15.0), corner_deg };
        let shell = shell_panels(&Leg {
            leg: 1,
            length_mm: 2000.0,
            height_mm: 180.0,
            depth_mm: 240.0,
            boards: vec![board(LongFace::Front), board(LongFace::Top), board(LongFace::Bottom)],
            left_end: end(93.0),
            right_end: end(84.0),
            butts: vec![],
        })
        .unwrap();
        for panel in
            shell.panels.iter().filter(|panel| !matches!(panel.id.kind, FaceKind::LeftEnd | FaceKind::RightEnd))
        {
            let low = panel.edges.iter().min_by(|a, b| a.outward.y.total_cmp(&b.outward.y)).unwrap().outward;
            for edge in panel.edges.iter().filter(|edge| edge.cut == EdgeCut::CrossCut) {
                let out = edge.outward;
                let cut = angles([out.x, out.y, out.z], [low.x, low.y]).unwrap();
                assert!((cut.tilt_deg - edge.tilt_deg).abs() < 1e-9, "{edge:?}");
                assert!((cut.gauge_deg - edge.gauge_deg).abs() < 1e-9, "{edge:?}");
            }
        }
    }

    proptest! {
        #[test]
        fn only_directions_count(cut in prop::array::uniform3(-1.0..1.0), riding in prop::array::uniform2(-1.0..1.0), k in 0.01..100.0) {
            let (Ok(one), Ok(other)) = (angles(cut, riding), angles(cut.map(|c| c * k), riding.map(|r| r * k))) else {
                return Ok(());
            };
            prop_assert!((one.tilt_deg - other.tilt_deg).abs() < 1e-9 && (one.gauge_deg - other.gauge_deg).abs() < 1e-9);
        }

        #[test]
        fn any_bits_give_numbers_or_a_fault(bits in prop::array::uniform5(prop_oneof![prop::num::f64::ANY, -1.0..1.0])) {
            let [u, v, n, x, y] = bits;
            if let Ok(cut) = angles([u, v, n], [x, y]) {
                prop_assert!(cut.tilt_deg.abs() <= 90.0 && cut.gauge_deg.abs() <= 90.0, "{cut:?}");
            }
        }
    }
}
