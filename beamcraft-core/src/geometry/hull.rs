//! The convex outline of points of a plane.

/// Turns that leave the straight line by less than this area, the square of the unit, are none.
const STRAIGHT: f64 = 1e-9;

/// The corners of the convex outline of points, counter-clockwise; points that are not finite are left out.
pub fn convex_outline(mut points: Vec<(f64, f64)>) -> Vec<(f64, f64)> {
    points.retain(|(x, y)| x.is_finite() && y.is_finite());
    points.sort_by(|one, other| one.0.total_cmp(&other.0).then(one.1.total_cmp(&other.1)));
    let mut ring: Vec<(f64, f64)> = Vec::new();
    let reversed: Vec<_> = points.iter().rev().copied().collect();
    for run in [points, reversed] {
        let start = ring.len();
        for point in run {
            while let [.., a, b] = ring.get(start..).unwrap_or_default() {
                let turn = (b.0 - a.0) * (point.1 - b.1) - (b.1 - a.1) * (point.0 - b.0);
                if turn > STRAIGHT {
                    break;
                }
                ring.pop();
            }
            ring.push(point);
        }
        ring.pop();
    }
    ring
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_outline_of_points_is_convex_and_counter_clockwise() {
        let points = vec![(0.0, 0.0), (2.0, 0.0), (2.0, 1.0), (0.0, 1.0), (1.0, 0.5), (1.0, 0.0), (2.0, 1.0)];
        assert_eq!(convex_outline(points), [(0.0, 0.0), (2.0, 0.0), (2.0, 1.0), (0.0, 1.0)]);
        assert!(convex_outline(Vec::new()).is_empty());
        assert!(convex_outline(vec![(f64::NAN, 0.0)]).is_empty());
    }
}
