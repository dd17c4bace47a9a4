//! Hatching of cut wood.

use super::super::text::push;
use super::{Fill, Line, Sheet, Spot, push_track};

/// Direction of hatching, at 45°; neighbours get different ones.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in super::super) enum Hatch {
    /// Rising to the right.
    Rising,
    /// Falling to the right.
    Falling,
}

/// Most lines of one hatching; a part that would need more is hatched wider.
const MOST_LINES: f64 = 400.0;

impl Hatch {
    /// A number that is the same along each line of the hatching.
    fn across(self, spot: Spot) -> f64 {
        match self {
            Self::Rising => spot.x + spot.y,
            Self::Falling => spot.x - spot.y,
        }
    }
}

impl Sheet {
    /// Hatches a convex ring with thin lines `spacing` apart, on one raster for the whole sheet.
    pub(in super::super) fn hatch(&mut self, ring: &[Spot], hatch: Hatch, spacing: f64) {
        let values = || ring.iter().map(|spot| hatch.across(*spot));
        let (low, high) = (values().fold(f64::INFINITY, f64::min), values().fold(f64::NEG_INFINITY, f64::max));
        if !(low.is_finite() && high.is_finite() && spacing > 0.0) {
            return;
        }
        // Lines at 45° that are s apart lie s√2 apart along an axis.
        let step = (spacing * core::f64::consts::SQRT_2).max((high - low) / MOST_LINES);
        let mut track = String::new();
        let mut at = (low / step).floor() + 1.0;
        while at * step < high {
            if let Some(ends) = chord(ring, hatch, at * step) {
                push_track(&mut track, &ends);
            }
            at += 1.0;
        }
        if !track.is_empty() {
            let (fill, line) = (Fill::Nothing.attribute(), Line::Behind.attributes());
            push(&mut self.body, format_args!("<path d=\"{track}\" {fill}{line}/>\n"));
        }
    }
}

/// The part of a hatch line inside a convex ring.
fn chord(ring: &[Spot], hatch: Hatch, value: f64) -> Option<[Spot; 2]> {
    let edges = ring.iter().zip(ring.iter().cycle().skip(1));
    let mut meets = edges.filter_map(|(from, to)| {
        let (start, end) = (hatch.across(*from) - value, hatch.across(*to) - value);
        // Half-open, so that a line through a corner meets one of its edges only.
        if (start < 0.0) == (end < 0.0) {
            return None;
        }
        let share = start / (start - end);
        Some(Spot::new(from.x + share * (to.x - from.x), from.y + share * (to.y - from.y)))
    });
    Some([meets.next()?, meets.next()?])
}

#[cfg(test)]
mod tests {
    use super::super::Paper;
    use super::*;

    #[test]
    fn a_line_through_a_square_is_cut_at_its_sides() {
        let square = [Spot::new(0.0, 0.0), Spot::new(2.0, 0.0), Spot::new(2.0, 2.0), Spot::new(0.0, 2.0)];
        let mut ends = chord(&square, Hatch::Rising, 1.0).unwrap();
        ends.sort_by(|one, other| one.x.total_cmp(&other.x));
        assert_eq!(ends, [Spot::new(0.0, 1.0), Spot::new(1.0, 0.0)]);
        assert_eq!(chord(&square, Hatch::Rising, 5.0), None);
        assert_eq!(chord(&square, Hatch::Falling, 0.0).map(|[a, b]| a.distance(b)), Some(8.0_f64.sqrt()));
    }

    #[test]
    fn hatching_is_bounded_whatever_the_size() {
        let mut sheet = Sheet::new(Paper::A4, "", "");
        let far = 1.0e9;
        sheet.hatch(&[Spot::new(0.0, 0.0), Spot::new(far, 0.0), Spot::new(far, far)], Hatch::Rising, 1.0);
        assert!(sheet.body.matches('M').count() <= 401);
    }
}
