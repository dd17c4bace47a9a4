//! Convex polygons of the plane square to the wall: turned, and added to one another.
//!
//! A convex body B moved by t meets the inside of a convex thing E exactly where t lies inside of E ⊕ (−B), the sum of E
//! and B turned over. That sum is convex, and its sides are those of E and of −B in the order of their directions.

#![allow(clippy::indexing_slicing, reason = "indices run round polygons that are never empty; the laws test them")]

use crate::geometry::convex_outline;

/// A point or a shift: out from the wall and up, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Shift {
    pub(super) out: f64,
    pub(super) up: f64,
}

impl Shift {
    pub(super) const fn new(out: f64, up: f64) -> Self {
        Self { out, up }
    }

    fn plus(self, other: Self) -> Self {
        Self::new(self.out + other.out, self.up + other.up)
    }

    fn minus(self, other: Self) -> Self {
        Self::new(self.out - other.out, self.up - other.up)
    }

    /// Twice the area between two directions; positive when the other one lies to the left.
    fn cross(self, other: Self) -> f64 {
        self.out * other.up - self.up * other.out
    }

    /// Whether another one is the same but for what counts as touching.
    pub(super) fn is_near(self, other: Self) -> bool {
        self.minus(other).length() < 1e-4
    }

    fn length(self) -> f64 {
        (self.out * self.out + self.up * self.up).sqrt()
    }
}

/// A turn about a point; positive raises what lies out from it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Turn {
    pub(super) about: Shift,
    pub(super) sine: f64,
    pub(super) cosine: f64,
}

impl Turn {
    fn of(self, point: Shift) -> Shift {
        let arm = point.minus(self.about);
        let turned = Shift::new(self.cosine * arm.out - self.sine * arm.up, self.sine * arm.out + self.cosine * arm.up);
        self.about.plus(turned)
    }
}

/// How much of its size a sum is made smaller, so that touching is no meeting: at 300 mm a few hundred-thousandths of a
/// millimetre.
const TOUCH: f64 = 1e-7;

/// A convex polygon, counter-clockwise, never empty.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Convex {
    corners: Vec<Shift>,
}

impl Convex {
    /// The convex outline of points; nothing when they have no area.
    pub(super) fn around(points: impl IntoIterator<Item = Shift>) -> Option<Self> {
        let outline = convex_outline(points.into_iter().map(|point| (point.out, point.up)).collect());
        let corners: Vec<_> = outline.into_iter().map(|(out, up)| Shift::new(out, up)).collect();
        (corners.len() >= 3).then_some(Self { corners })
    }

    /// An upright box.
    pub(super) fn upright(low: Shift, high: Shift) -> Option<Self> {
        Self::around([low, Shift::new(high.out, low.up), high, Shift::new(low.out, high.up)])
    }

    pub(super) fn corners(&self) -> &[Shift] {
        &self.corners
    }

    /// Its sides, each from corner to corner.
    pub(super) fn sides(&self) -> impl Iterator<Item = (Shift, Shift)> + '_ {
        let count = self.corners.len();
        (0..count).map(move |k| (self.corners[k], self.corners[(k + 1) % count]))
    }

    pub(super) fn turned(&self, turn: Turn) -> Self {
        Self { corners: self.corners.iter().map(|corner| turn.of(*corner)).collect() }
    }

    /// The outline around both.
    pub(super) fn with(&self, other: &Self) -> Self {
        Self::around(self.corners.iter().chain(&other.corners).copied()).unwrap_or_else(|| self.clone())
    }

    /// Corners of the upright box around it.
    pub(super) fn bounds(&self) -> (Shift, Shift) {
        let (low, high) = (Shift::new(f64::INFINITY, f64::INFINITY), Shift::new(f64::NEG_INFINITY, f64::NEG_INFINITY));
        self.corners.iter().fold((low, high), |(low, high), at| {
            (Shift::new(low.out.min(at.out), low.up.min(at.up)), Shift::new(high.out.max(at.out), high.up.max(at.up)))
        })
    }

    /// Distance of its farthest corner from a point.
    pub(super) fn reach(&self, from: Shift) -> f64 {
        self.corners.iter().map(|corner| corner.minus(from).length()).fold(0.0, f64::max)
    }

    /// Where a body may not be shifted to, lest it meet this thing: this ⊕ (−body), larger all round by `grown`, then
    /// smaller by what counts as touching.
    pub(super) fn kept_from(&self, body: &Self, grown: f64) -> Self {
        let turned_over: Vec<_> = body.corners.iter().map(|corner| Shift::new(-corner.out, -corner.up)).collect();
        let mut sum = Self { corners: added(&self.corners, &turned_over) };
        if grown > 0.0 {
            let square = [(-grown, -grown), (grown, -grown), (grown, grown), (-grown, grown)];
            sum.corners = added(&sum.corners, &square.map(|(out, up)| Shift::new(out, up)));
        }
        sum.touching()
    }

    /// Slightly smaller about its middle.
    fn touching(mut self) -> Self {
        let (low, high) = self.bounds();
        let middle = Shift::new(0.5 * (low.out + high.out), 0.5 * (low.up + high.up));
        for corner in &mut self.corners {
            let arm = corner.minus(middle);
            *corner = corner.plus(Shift::new(-TOUCH * arm.out, -TOUCH * arm.up));
        }
        self
    }
}

/// The corners of the sum of two convex polygons: the sides of both in the order of their directions.
fn added(one: &[Shift], other: &[Shift]) -> Vec<Shift> {
    let (start, other_start) = (lowest(one), lowest(other));
    let at = |ring: &[Shift], start: usize, k: usize| ring[(start + k) % ring.len()];
    let mut corners = Vec::with_capacity(one.len() + other.len());
    let (mut i, mut j) = (0, 0);
    while i < one.len() || j < other.len() {
        corners.push(at(one, start, i).plus(at(other, other_start, j)));
        let side = at(one, start, i + 1).minus(at(one, start, i));
        let other_side = at(other, other_start, j + 1).minus(at(other, other_start, j));
        let turn = side.cross(other_side);
        // The side that turns less from the start comes first; parallel sides come together.
        let (first, second) = (j == other.len() || (i < one.len() && turn >= 0.0), i == one.len() || turn <= 0.0);
        i += usize::from(first && i < one.len());
        j += usize::from(second && j < other.len());
    }
    corners
}

/// The lowest corner, of several the leftmost: from there the directions of the sides rise.
fn lowest(ring: &[Shift]) -> usize {
    let mut best = 0;
    for (k, corner) in ring.iter().enumerate() {
        if (corner.up, corner.out) < (ring[best].up, ring[best].out) {
            best = k;
        }
    }
    best
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn polygon() -> impl Strategy<Value = Convex> {
        proptest::collection::vec((-50.0..50.0_f64, -50.0..50.0_f64), 3..9)
            .prop_filter_map("has an area", |points| Convex::around(points.into_iter().map(|(o, u)| Shift::new(o, u))))
    }

    fn holds(polygon: &[Shift], point: Shift, slack: f64) -> bool {
        (0..polygon.len()).all(|k| {
            let (from, to) = (polygon[k], polygon[(k + 1) % polygon.len()]);
            to.minus(from).cross(point.minus(from)) >= -slack * to.minus(from).length()
        })
    }

    #[test]
    fn two_boxes_add_up_to_a_box() {
        let unit = Convex::upright(Shift::new(0.0, 0.0), Shift::new(1.0, 2.0)).unwrap();
        let wide = Convex::upright(Shift::new(5.0, 5.0), Shift::new(8.0, 6.0)).unwrap();
        let sum = Convex { corners: added(unit.corners(), wide.corners()) };
        assert_eq!(sum.bounds(), (Shift::new(5.0, 5.0), Shift::new(9.0, 8.0)));
        assert_eq!(sum.corners().len(), 4);
    }

    proptest! {
        #[test]
        fn the_sum_is_the_outline_of_all_sums_of_corners(one in polygon(), other in polygon()) {
            let sum = added(one.corners(), other.corners());
            let all = one.corners().iter().flat_map(|a| other.corners().iter().map(|b| a.plus(*b)));
            let outline = Convex::around(all.clone()).unwrap();
            prop_assert!(all.clone().all(|point| holds(&sum, point, 1e-9)));
            prop_assert!(sum.iter().all(|point| holds(outline.corners(), *point, 1e-9)));
        }
    }
}
