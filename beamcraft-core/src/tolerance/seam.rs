//! The gap at one mitred seam from the errors of its two edges.

use crate::error::{Allowed, ErrorCode, Fault};
use crate::limits::{BEVEL, Limited, limited};
use crate::numeric::real::{cos_deg, degrees, radians, sin_cos_deg, sin_deg, tan_deg};
use crate::shell::{MitrePair, MitrePairInput, mitre_pair, seam_gaps};

/// Which face of the board lies up at the saw.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum CutSide {
    /// Show face up: the fence sets the inner width, so that errors of thickness and tilt reach the show width.
    ShowFaceUp,
    /// Show face down: the fence sets the show width itself; thickness does not matter to it.
    ShowFaceDown,
}

/// What holds the two boards of a seam in place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum SeamHold {
    /// Nothing but the clamps: the boards slide together until they touch, the corner angle kept; only angles open it.
    DrawnTight,
    /// The show faces stand where they should (taped flat, folded, or against an outer form): sizes count too.
    HeldByShowFaces,
    /// The inner faces sit on a frame: sizes count, and a thicker board stands out further.
    HeldByInnerFrame,
}

/// A mitred seam and the errors of its two edges.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<SeamGapInput>))]
pub struct SeamGapInput {
    /// Thickness of board a as planned, mm.
    pub thickness_a_mm: f64,
    /// Thickness of board b as planned, mm.
    pub thickness_b_mm: f64,
    /// Corner angle between the two show faces, measured inside the body, degrees; a square corner if left out.
    #[cfg_attr(feature = "json", serde(default = "square_corner"))]
    pub corner_deg: f64,
    /// Width of panel a across the direction in which it cups, mm.
    pub width_a_mm: f64,
    /// Width of panel b across the direction in which it cups, mm.
    pub width_b_mm: f64,
    /// Which face of board a lay up at the saw.
    pub cut_side_a: CutSide,
    /// Which face of board b lay up at the saw.
    pub cut_side_b: CutSide,
    /// What holds the boards in place.
    pub hold: SeamHold,
    /// Tilt of edge a beyond what the mitre needs, degrees; positive is over-tilt; none if left out.
    #[cfg_attr(feature = "json", serde(default = "none"))]
    pub tilt_error_a_deg: f64,
    /// Tilt of edge b beyond what the mitre needs, degrees; positive is over-tilt; none if left out.
    #[cfg_attr(feature = "json", serde(default = "none"))]
    pub tilt_error_b_deg: f64,
    /// Error of the corner at which the boards are held, degrees; positive is a wider corner; none if left out.
    #[cfg_attr(feature = "json", serde(default = "none"))]
    pub corner_error_deg: f64,
    /// Width or length of panel a beyond the planned one, as far as it reaches this edge, mm; none if left out.
    #[cfg_attr(feature = "json", serde(default = "none"))]
    pub size_error_a_mm: f64,
    /// Width or length of panel b beyond the planned one, as far as it reaches this edge, mm; none if left out.
    #[cfg_attr(feature = "json", serde(default = "none"))]
    pub size_error_b_mm: f64,
    /// Thickness of board a beyond the planned one, mm; none if left out.
    #[cfg_attr(feature = "json", serde(default = "none"))]
    pub thickness_error_a_mm: f64,
    /// Thickness of board b beyond the planned one, mm; none if left out.
    #[cfg_attr(feature = "json", serde(default = "none"))]
    pub thickness_error_b_mm: f64,
    /// Rise of the cup of panel a over its width, mm; positive when the show face bulges out; none if left out.
    #[cfg_attr(feature = "json", serde(default = "none"))]
    pub cup_a_mm: f64,
    /// Rise of the cup of panel b over its width, mm; positive when the show face bulges out; none if left out.
    #[cfg_attr(feature = "json", serde(default = "none"))]
    pub cup_b_mm: f64,
    /// How far edge a bows out of its plane here, mm; positive outwards; none if left out.
    #[cfg_attr(feature = "json", serde(default = "none"))]
    pub bow_a_mm: f64,
    /// How far edge b bows out of its plane here, mm; positive outwards; none if left out.
    #[cfg_attr(feature = "json", serde(default = "none"))]
    pub bow_b_mm: f64,
}

limited!(SeamGapInput {
    thickness_a_mm: BOARD_THICKNESS,
    thickness_b_mm: BOARD_THICKNESS,
    corner_deg: CORNER_ANGLE,
    width_a_mm: PANEL_WIDTH,
    width_b_mm: PANEL_WIDTH,
    tilt_error_a_deg: ANGLE_ERROR,
    tilt_error_b_deg: ANGLE_ERROR,
    corner_error_deg: ANGLE_ERROR,
    size_error_a_mm: SIZE_ERROR,
    size_error_b_mm: SIZE_ERROR,
    thickness_error_a_mm: SIZE_ERROR,
    thickness_error_b_mm: SIZE_ERROR,
    cup_a_mm: SIZE_ERROR,
    cup_b_mm: SIZE_ERROR,
    bow_a_mm: SIZE_ERROR,
    bow_b_mm: SIZE_ERROR,
});

#[cfg(feature = "json")]
pub(super) fn square_corner() -> f64 {
    90.0
}

#[cfg(feature = "json")]
pub(super) fn none() -> f64 {
    0.0
}

/// Where a seam stands open.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum OpenEdge {
    /// Nowhere.
    Closed,
    /// At the show edge, where it is seen; the boards touch at the heel.
    ShowEdge,
    /// Inside the body; the show edge is closed.
    Inside,
    /// At both edges: the boards do not touch.
    BothEdges,
}

/// The gap of a mitred seam.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SeamGap {
    /// Tilt from square that the mitre needs at edge a, degrees.
    pub tilt_a_deg: f64,
    /// Tilt from square that the mitre needs at edge b, degrees.
    pub tilt_b_deg: f64,
    /// Length of the seam across the section, mm.
    pub seam_mm: f64,
    /// How far edge a is out of square or of its mitre over the length of the seam, seam times the tangent of its tilt error, mm.
    pub edge_a_mm: f64,
    /// How far edge b is out of square or of its mitre over the length of the seam, seam times the tangent of its tilt error, mm.
    pub edge_b_mm: f64,
    /// Angle between the two cut faces, degrees; positive when they part towards the inside.
    pub divergence_deg: f64,
    /// What the divergence alone opens, mm; positive at the show edge (under-tilt), negative inside (over-tilt).
    pub taper_mm: f64,
    /// Change of the show width of board a for each mm that it is thicker than planned, fence unmoved.
    pub width_per_thickness_a: f64,
    /// Change of the show width of board b for each mm that it is thicker than planned, fence unmoved.
    pub width_per_thickness_b: f64,
    /// Error of the show width of board a at this edge, that of thickness and tilt included, mm.
    pub width_error_a_mm: f64,
    /// Error of the show width of board b at this edge, that of thickness and tilt included, mm.
    pub width_error_b_mm: f64,
    /// How far the cut faces stand apart at the show edge before they push one another, mm; negative when they would overlap; 0 when drawn tight.
    pub offset_mm: f64,
    /// Visible gap at the show edge, mm.
    pub show_gap_mm: f64,
    /// Hidden gap at the heel, mm.
    pub inside_gap_mm: f64,
    /// Where the seam stands open.
    pub opening: OpenEdge,
    /// How far the show face of board a stands out past the arris of board b along the seam, mm; negative when it lies behind.
    pub step_mm: f64,
    /// Corner angle at which the seam would close over its whole length, degrees.
    pub closing_corner_deg: f64,
}

/// Largest sum of angular errors, in radians (30°), for which a seam is still one.
pub(super) const LARGEST_DIVERGENCE_RAD: f64 = core::f64::consts::FRAC_PI_6;

/// The mitre of two boards, refused where no saw could cut it: what follows divides by the cosine of the tilt.
pub(super) fn cuttable_pair(thickness_a_mm: f64, thickness_b_mm: f64, corner_deg: f64) -> Result<MitrePair, Fault> {
    let pair = mitre_pair(&MitrePairInput { thickness_a_mm, thickness_b_mm, corner_deg })?;
    if pair.tilt_a_deg.abs() > BEVEL.high || pair.tilt_b_deg.abs() > BEVEL.high {
        let allowed = Allowed::Text("a corner and thicknesses that need no tilt beyond 80 degrees");
        return Err(Fault::number(ErrorCode::Inconsistent, "corner_deg", corner_deg, allowed, "plane one board down"));
    }
    Ok(pair)
}

/// Gaps below this count as closed, mm: far below anything that can be cut, above what rounding leaves.
const CLOSED_MM: f64 = 1e-9;

/// What the errors of one edge do to its seam.
#[derive(Clone, Copy, Debug)]
pub(super) struct EdgeShape {
    /// Opening at the show edge for each mm of a size that is too large; negative.
    pub(super) offset_per_size: f64,
    /// The same for each mm that the edge stands out of its plane.
    pub(super) offset_per_bow: f64,
    /// The same for each mm of thickness.
    pub(super) offset_per_thickness: f64,
    /// The same for each radian of over-tilt, mm.
    pub(super) offset_per_tilt_mm: f64,
    /// Divergence in radians for each mm of cup.
    pub(super) divergence_per_cup: f64,
}

impl EdgeShape {
    /// The edge of a board whose mitre needs `tilt_deg` and has a seam of `seam_mm`.
    ///
    /// With the blade's tilt b the seam makes 90° − b with the show face: a board that is too long by 1 closes it by
    /// cos b, one that stands out by 1 opens it by sin b. Show face up, the inner width is what the fence sets: the show
    /// width grows by tan b for each mm of thickness, and a tilt error turns the cut about the heel instead of the long point.
    pub(super) fn new(tilt_deg: f64, seam_mm: f64, width_mm: f64, side: CutSide, hold: SeamHold) -> Self {
        let (sine, cosine) = sin_cos_deg(tilt_deg);
        let held = if hold == SeamHold::DrawnTight { 0.0 } else { 1.0 };
        let up = if side == CutSide::ShowFaceUp { held } else { 0.0 };
        let on_frame = if hold == SeamHold::HeldByInnerFrame { 1.0 } else { 0.0 };
        Self {
            offset_per_size: -cosine * held,
            offset_per_bow: sine * held,
            offset_per_thickness: sine * (on_frame - up),
            offset_per_tilt_mm: -seam_mm * up,
            // The ends of a parabola of rise h over a width w slope by 4 h / w.
            divergence_per_cup: 4.0 / width_mm,
        }
    }
}

/// Distance between the open ends of two faces of length `seam_mm` that touch at the other end and part by an angle.
pub(super) fn opening_mm(seam_mm: f64, divergence_rad: f64) -> f64 {
    2.0 * seam_mm * sin_deg(0.5 * degrees(divergence_rad))
}

/// Gap of a mitred seam from errors of tilt, corner, size, thickness, cup and bow of its two edges.
///
/// # Equation
/// ```text
/// D = e_a + e_b + c' + 4 h_a / w_a + 4 h_b / w_b            taper = −2 f sin(D / 2)
/// o = Σ ( −cos b (s + x) + sin b (n + y) )                  heel  = o − taper
/// x = t' tan b + e f / cos b  (show face up), 0 (show face down)      y = t'  (on an inner frame), 0 (else)
/// show gap = o − min(0, o, heel)        inside gap = heel − min(0, o, heel)
/// drawn tight: o = 0, so that show gap = max(0, taper) and inside gap = max(0, −taper)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | e | error of tilt, over-tilt positive | radian | `tilt_error_*_deg` |
/// | c' | error of the corner | radian | `corner_error_deg` |
/// | h, w | rise of the cup, width of the panel | mm | `cup_*_mm`, `width_*_mm` |
/// | f | length of the seam | mm | `seam_mm` |
/// | b | tilt of the blade from square | degree | `tilt_*_deg` |
/// | s | error of width or length | mm | `size_error_*_mm` |
/// | t' | error of thickness | mm | `thickness_error_*_mm` |
/// | n | bow out of the plane | mm | `bow_*_mm` |
///
/// # Limits
/// The chord `2 f sin(D/2)` is exact for faces of equal length; the offset and the cup are of first order: an error of
/// tilt counts with the seam's planned length. Wood is taken as stiff: clamps that bend a board close more than this
/// says. Drawn tight, bow and size are taken up by the clamps, and a difference of thickness only shows inside.
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` where the mitre needs a tilt beyond 80° (thin against thick board at a
/// flat corner, or a very sharp one), and where the angular errors together exceed 30°.
///
/// # Source
/// Plane geometry, derived in the theory pages; checked by `verification/tolerance`.
///
/// # Examples
/// ```
/// use beamcraft_core::tolerance::{CutSide, SeamGapInput, SeamHold, OpenEdge, seam_gap};
/// let under = seam_gap(&SeamGapInput {
///     thickness_a_mm: 19.05, thickness_b_mm: 19.05, corner_deg: 90.0, width_a_mm: 180.0, width_b_mm: 220.0,
///     cut_side_a: CutSide::ShowFaceDown, cut_side_b: CutSide::ShowFaceDown, hold: SeamHold::DrawnTight,
///     tilt_error_a_deg: -0.25, tilt_error_b_deg: -0.25, corner_error_deg: 0.0,
///     size_error_a_mm: 0.0, size_error_b_mm: 0.0, thickness_error_a_mm: 0.0, thickness_error_b_mm: 0.0,
///     cup_a_mm: 0.0, cup_b_mm: 0.0, bow_a_mm: 0.0, bow_b_mm: 0.0,
/// })?;
/// assert_eq!(under.opening, OpenEdge::ShowEdge);
/// assert!((under.show_gap_mm - 0.235).abs() < 0.001);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn seam_gap(input: &SeamGapInput) -> Result<SeamGap, Fault> {
    input.check_ranges()?;
    let pair = cuttable_pair(input.thickness_a_mm, input.thickness_b_mm, input.corner_deg)?;
    let a = EdgeErrors {
        shape: EdgeShape::new(pair.tilt_a_deg, pair.seam_mm, input.width_a_mm, input.cut_side_a, input.hold),
        tilt_deg: pair.tilt_a_deg,
        side: input.cut_side_a,
        tilt_error_deg: input.tilt_error_a_deg,
        size_mm: input.size_error_a_mm,
        thickness_mm: input.thickness_error_a_mm,
        cup_mm: input.cup_a_mm,
        bow_mm: input.bow_a_mm,
    };
    let b = EdgeErrors {
        shape: EdgeShape::new(pair.tilt_b_deg, pair.seam_mm, input.width_b_mm, input.cut_side_b, input.hold),
        tilt_deg: pair.tilt_b_deg,
        side: input.cut_side_b,
        tilt_error_deg: input.tilt_error_b_deg,
        size_mm: input.size_error_b_mm,
        thickness_mm: input.thickness_error_b_mm,
        cup_mm: input.cup_b_mm,
        bow_mm: input.bow_b_mm,
    };
    let divergence_rad = a.divergence_rad() + b.divergence_rad() + radians(input.corner_error_deg);
    if divergence_rad.abs() > LARGEST_DIVERGENCE_RAD {
        let allowed = Allowed::Text("errors of tilt, corner and cup that add up to at most 30 degrees");
        let value = input.tilt_error_a_deg;
        return Err(Fault::number(ErrorCode::Inconsistent, "tilt_error_a_deg", value, allowed, ""));
    }
    let (offset_mm, taper_mm) = (a.offset_mm() + b.offset_mm(), 0.0 - opening_mm(pair.seam_mm, divergence_rad));
    let (show_gap_mm, inside_gap_mm) = seam_gaps(offset_mm, taper_mm);
    let opening = match (show_gap_mm > CLOSED_MM, inside_gap_mm > CLOSED_MM) {
        (false, false) => OpenEdge::Closed,
        (true, false) => OpenEdge::ShowEdge,
        (false, true) => OpenEdge::Inside,
        (true, true) => OpenEdge::BothEdges,
    };
    let (width_error_a_mm, width_error_b_mm) = (a.width_error_mm(&pair), b.width_error_mm(&pair));
    Ok(SeamGap {
        tilt_a_deg: pair.tilt_a_deg,
        tilt_b_deg: pair.tilt_b_deg,
        seam_mm: pair.seam_mm,
        edge_a_mm: pair.seam_mm * tan_deg(input.tilt_error_a_deg),
        edge_b_mm: pair.seam_mm * tan_deg(input.tilt_error_b_deg),
        divergence_deg: degrees(divergence_rad),
        taper_mm,
        width_per_thickness_a: a.width_per_thickness(),
        width_per_thickness_b: b.width_per_thickness(),
        width_error_a_mm,
        width_error_b_mm,
        offset_mm,
        show_gap_mm,
        inside_gap_mm,
        opening,
        step_mm: a.stands_out_mm(width_error_a_mm, input.hold) - b.stands_out_mm(width_error_b_mm, input.hold),
        closing_corner_deg: input.corner_deg + input.corner_error_deg - degrees(divergence_rad),
    })
}

/// One edge with its errors.
struct EdgeErrors {
    shape: EdgeShape,
    tilt_deg: f64,
    side: CutSide,
    tilt_error_deg: f64,
    size_mm: f64,
    thickness_mm: f64,
    cup_mm: f64,
    bow_mm: f64,
}

impl EdgeErrors {
    fn divergence_rad(&self) -> f64 {
        radians(self.tilt_error_deg) + self.shape.divergence_per_cup * self.cup_mm
    }

    fn offset_mm(&self) -> f64 {
        self.shape.offset_per_size * self.size_mm
            + self.shape.offset_per_bow * self.bow_mm
            + self.shape.offset_per_thickness * self.thickness_mm
            + self.shape.offset_per_tilt_mm * radians(self.tilt_error_deg)
    }

    fn width_per_thickness(&self) -> f64 {
        if self.side == CutSide::ShowFaceUp { tan_deg(self.tilt_deg) } else { 0.0 }
    }

    fn width_error_mm(&self, pair: &MitrePair) -> f64 {
        let turned = if self.side == CutSide::ShowFaceUp { pair.seam_mm / cos_deg(self.tilt_deg) } else { 0.0 };
        self.size_mm + self.width_per_thickness() * self.thickness_mm + turned * radians(self.tilt_error_deg)
    }

    /// How far the long point stands out along the seam.
    fn stands_out_mm(&self, width_error_mm: f64, hold: SeamHold) -> f64 {
        let (sine, cosine) = sin_cos_deg(self.tilt_deg);
        let out_mm = match hold {
            // Slid together, the long points differ by nothing but what stands out of the plane, which clamps pull flat.
            SeamHold::DrawnTight => return 0.0,
            SeamHold::HeldByShowFaces => self.bow_mm,
            SeamHold::HeldByInnerFrame => self.bow_mm + self.thickness_mm,
        };
        out_mm * cosine + width_error_mm * sine
    }
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const SEAM_GAP: crate::json::Calculation = crate::json::calculation!(
    seam_gap: SeamGapInput => SeamGap, Typed,
    "Signed gap of a mitred seam from errors of tilt, corner, size, thickness, cup and bow"
);

#[cfg(test)]
#[path = "seam_tests.rs"]
mod tests;
