//! A board on its way to being a panel: straight edges with bevels, in the plane of the show face.

use crate::geometry::{ConvexSolid, Plane, Vec3};
use crate::numeric::real::tan_deg;
use crate::shell::Panel;

/// Lengths that differ by less are the same, mm: far below what any saw does, far above the rounding of these sizes.
pub(super) const SAME_MM: f64 = 1e-7;

/// Smallest area of a face that counts as one, mm².
const LEAST_AREA_MM2: f64 = 1e-6;

/// A point or direction in the show face: along the grain, across it, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Flat {
    pub(super) u: f64,
    pub(super) v: f64,
}

impl Flat {
    pub(super) const fn new(u: f64, v: f64) -> Self {
        Self { u, v }
    }

    pub(super) fn dot(self, other: Self) -> f64 {
        self.u * other.u + self.v * other.v
    }

    /// Sine of the turn from this direction to another, counter-clockwise.
    pub(super) fn cross(self, other: Self) -> f64 {
        self.u * other.v - self.v * other.u
    }

    /// Turned by a quarter, counter-clockwise.
    pub(super) fn turned(self) -> Self {
        Self::new(-self.v, self.u)
    }

    fn towards(self, other: Self, share: f64) -> Self {
        Self::new(self.u + share * (other.u - self.u), self.v + share * (other.v - self.v))
    }
}

/// Which edge of the square-edged blank.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum BlankEdge {
    /// The end where the grain begins: least `u`.
    LowEnd,
    /// The end where the grain ends: greatest `u`.
    HighEnd,
    /// The long edge of least `v`.
    LowLongEdge,
    /// The long edge of greatest `v`.
    HighLongEdge,
}

impl BlankEdge {
    pub(super) const ALL: [Self; 4] = [Self::LowEnd, Self::HighEnd, Self::LowLongEdge, Self::HighLongEdge];

    /// Normal out of the blank.
    pub(super) const fn out(self) -> Flat {
        match self {
            Self::LowEnd => Flat::new(-1.0, 0.0),
            Self::HighEnd => Flat::new(1.0, 0.0),
            Self::LowLongEdge => Flat::new(0.0, -1.0),
            Self::HighLongEdge => Flat::new(0.0, 1.0),
        }
    }
}

/// Where an edge of the board comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Origin {
    /// An edge of the panel, by its number.
    Panel(usize),
    /// An edge of the blank.
    Blank(BlankEdge),
}

/// One edge: `out · p ≤ at − depth · tan(bevel)` at each depth below the show face.
#[derive(Clone, Copy, Debug)]
pub(super) struct Line {
    /// Unit normal in the face, out of the board.
    pub(super) out: Flat,
    /// Offset of its arris on the show face, mm.
    pub(super) at: f64,
    /// Signed bevel, degrees; positive with the long point on the show face.
    pub(super) bevel_deg: f64,
    /// Its tangent.
    pub(super) slope: f64,
    pub(super) origin: Origin,
}

impl Line {
    pub(super) fn new(out: Flat, at: f64, bevel_deg: f64, origin: Origin) -> Self {
        Self { out, at, bevel_deg, slope: tan_deg(bevel_deg), origin }
    }

    /// Offset of the edge at a depth below the show face, mm.
    pub(super) fn at_depth(&self, depth_mm: f64) -> f64 {
        self.at - depth_mm * self.slope
    }

    /// Nearer to the grain than to square across it; at 45° it is the end of a board, whatever the rounding.
    pub(super) fn is_long_edge(&self) -> bool {
        self.out.v.abs() > 1.000_001 * self.out.u.abs()
    }
}

/// A corner, and the line that leaves it counter-clockwise; none for the far square that the clipping starts from.
#[derive(Clone, Copy)]
struct Corner {
    point: Flat,
    line: Option<usize>,
}

/// What is left of the board at a moment.
#[derive(Clone, Debug)]
pub(super) struct Board {
    pub(super) thickness_mm: f64,
    pub(super) lines: Vec<Line>,
}

impl Board {
    /// The edges of a panel of a shell; nothing for an edge that lies so flat in the face that no saw cuts it.
    pub(super) fn of_panel(panel: &Panel) -> Option<Self> {
        let solid = panel.blank()?;
        let mut lines = Vec::with_capacity(panel.edges.len());
        for (k, edge) in panel.edges.iter().enumerate() {
            let on = panel.frame.to_local(solid.face(edge.tag)?.points().next()?);
            let size = (edge.outward.x * edge.outward.x + edge.outward.y * edge.outward.y).sqrt();
            if edge.tilt_deg.abs() > crate::limits::BEVEL.high || size <= 0.0 {
                return None;
            }
            let out = Flat::new(edge.outward.x / size, edge.outward.y / size);
            lines.push(Line::new(out, edge.outward.dot(on) / size, edge.tilt_deg, Origin::Panel(k)));
        }
        Some(Self { thickness_mm: panel.thickness_mm, lines })
    }

    /// Depths of the show and of the inner face below the show face, mm.
    pub(super) fn faces(&self) -> [f64; 2] {
        [0.0, self.thickness_mm]
    }

    /// Which lines have a length on both faces.
    pub(super) fn lines_on_both_faces(&self) -> Vec<bool> {
        let [show, inner] = self.faces().map(|depth| self.corners(depth));
        let on_both = |index| [&show, &inner].iter().all(|ring| length_in(ring, index).is_some());
        (0..self.lines.len()).map(on_both).collect()
    }

    fn corners(&self, depth_mm: f64) -> Vec<Corner> {
        // Even a corner as sharp as a chisel lies nearer than this; much farther would cost digits.
        let far = 100.0 * self.lines.iter().map(|line| line.at_depth(depth_mm).abs()).fold(1.0, f64::max);
        let square = [Flat::new(-far, -far), Flat::new(far, -far), Flat::new(far, far), Flat::new(-far, far)];
        let mut corners: Vec<Corner> = Vec::with_capacity(self.lines.len() + square.len());
        corners.extend(square.map(|point| Corner { point, line: None }));
        let mut kept = Vec::with_capacity(corners.capacity());
        for (index, line) in self.lines.iter().enumerate() {
            cut_corners(&corners, line, index, depth_mm, &mut kept);
            core::mem::swap(&mut corners, &mut kept);
        }
        corners
    }

    /// Corners of the board at a depth, counter-clockwise.
    pub(super) fn outline(&self, depth_mm: f64) -> Vec<Flat> {
        self.corners(depth_mm).into_iter().map(|corner| corner.point).collect()
    }

    /// Length of a line on the outline at a depth, mm; nothing where it has none there.
    pub(super) fn length_at(&self, index: usize, depth_mm: f64) -> Option<f64> {
        length_in(&self.corners(depth_mm), index)
    }

    /// Length of a line, the longer of both faces, mm.
    pub(super) fn edge_length(&self, index: usize) -> f64 {
        self.faces().into_iter().filter_map(|depth| self.length_at(index, depth)).fold(0.0, f64::max)
    }

    /// Depth below the show face of the outermost arris of a line, mm.
    pub(super) fn outermost_depth(&self, line: &Line) -> f64 {
        if line.bevel_deg < 0.0 { self.thickness_mm } else { 0.0 }
    }

    /// Offset of the outermost arris of a line, mm.
    pub(super) fn outermost(&self, line: &Line) -> f64 {
        line.at_depth(self.outermost_depth(line))
    }

    /// Extent of the show face in a direction, mm.
    pub(super) fn show_extent(&self, out: Flat) -> f64 {
        let along = self.outline(0.0).into_iter().map(|point| out.dot(point));
        let (low, high) = along.fold((f64::MAX, f64::MIN), |(low, high), x| (low.min(x), high.max(x)));
        (high - low).max(0.0)
    }

    /// What the lines enclose between both faces, in the frame of the panel; nothing without a show and an inner face.
    ///
    /// Two bevels that run against each other can leave a corner between the faces that lies farther out than both.
    pub(super) fn solid(&self) -> Option<ConvexSolid> {
        let side = |line: &Line| {
            let normal = Vec3::new(line.out.u, line.out.v, -line.slope);
            Plane::at_offset(normal, line.at / normal.length())
        };
        let mut planes = self.lines.iter().map(side).collect::<Option<Vec<Plane>>>()?;
        planes.extend([Plane::at_offset(Vec3::Z, 0.0)?, Plane::at_offset(-Vec3::Z, self.thickness_mm)?]);
        let (inner, show) = (planes.len() as u32 - 1, planes.len() as u32 - 2);
        let solid = ConvexSolid::from_half_spaces(&planes).ok()?;
        let has_area = |tag| solid.face(tag).is_some_and(|face| face.area() > LEAST_AREA_MM2);
        (has_area(show) && has_area(inner)).then_some(solid)
    }
}

/// Length of the side of a line on an outline, mm; nothing where it has none.
fn length_in(corners: &[Corner], index: usize) -> Option<f64> {
    let at = corners.iter().position(|corner| corner.line == Some(index))?;
    let (from, to) = (corners.get(at)?.point, corners.get(at + 1).or_else(|| corners.first())?.point);
    let run = Flat::new(to.u - from.u, to.v - from.v);
    Some(run.dot(run).sqrt()).filter(|length| *length > SAME_MM)
}

/// What a line leaves of an outline.
fn cut_corners(corners: &[Corner], line: &Line, index: usize, depth_mm: f64, kept: &mut Vec<Corner>) {
    let at = line.at_depth(depth_mm);
    let beyond = |corner: &Corner| line.out.dot(corner.point) - at;
    kept.clear();
    let next = corners.iter().skip(1).chain(corners.first());
    for (from, to) in corners.iter().zip(next) {
        let (a, b) = (beyond(from), beyond(to));
        let crossing = || from.point.towards(to.point, a / (a - b));
        if a > SAME_MM {
            // Outside; a corner on the line starts its own side at its own turn.
            if b < -SAME_MM {
                kept.push(Corner { point: crossing(), line: from.line });
            }
        } else if b > SAME_MM {
            if a < -SAME_MM {
                kept.push(*from);
                kept.push(Corner { point: crossing(), line: Some(index) });
            } else {
                kept.push(Corner { point: from.point, line: Some(index) });
            }
        } else {
            // A side within the line is the line's own from now on.
            let within = a.abs() <= SAME_MM && b.abs() <= SAME_MM;
            kept.push(Corner { point: from.point, line: if within { Some(index) } else { from.line } });
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn board(lines: &[(f64, f64, f64)]) -> Board {
        let line =
            |(k, (u, v, at)): (usize, &(f64, f64, f64))| Line::new(Flat::new(*u, *v), *at, 0.0, Origin::Panel(k));
        Board { thickness_mm: 20.0, lines: lines.iter().enumerate().map(line).collect() }
    }

    #[test]
    fn a_line_through_a_corner_leaves_no_side_without_length() {
        let half = core::f64::consts::FRAC_1_SQRT_2;
        // A square of 10, then its diagonal: a triangle with three sides.
        let cut =
            board(&[(-1.0, 0.0, 0.0), (1.0, 0.0, 10.0), (0.0, -1.0, 0.0), (0.0, 1.0, 10.0), (half, half, 10.0 * half)]);
        assert_eq!(cut.outline(0.0).len(), 3);
        assert!((cut.solid().unwrap().volume() - 1000.0).abs() < 1e-6);
        assert!(cut.length_at(1, 0.0).is_none() && cut.length_at(3, 0.0).is_none());
        assert!((cut.edge_length(4) - 200.0_f64.sqrt()).abs() < 1e-9);
    }

    #[test]
    fn lines_that_exclude_one_another_leave_nothing() {
        assert_eq!(board(&[(1.0, 0.0, 0.0), (-1.0, 0.0, -5.0)]).solid(), None);
    }
}
