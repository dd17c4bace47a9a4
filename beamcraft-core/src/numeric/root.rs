//! A root between two places where a function has opposite signs.

/// Steps after which the bracket has been halved more often than a number has digits.
const STEPS: u32 = 200;

/// The root of a continuous function between `low` and `high`, to the last digits that the function itself has.
///
/// `None` when the ends are not finite, when the function has the same sign at both, or when it is not a number somewhere.
/// False position with Illinois' correction, and every third step a halving, so that no shape makes it slow.
///
/// # Source
/// M. Dowell, P. Jarratt, BIT 11 (1971) 168–174 (recalled).
pub fn bracketed_root(function: impl Fn(f64) -> f64, low: f64, high: f64) -> Option<f64> {
    let (mut a, mut b) = (low.min(high), low.max(high));
    if !(a.is_finite() && b.is_finite()) {
        return None;
    }
    let (mut at_a, mut at_b) = (function(a), function(b));
    if at_a == 0.0 {
        return Some(a);
    }
    if at_b == 0.0 {
        return Some(b);
    }
    if at_a.is_nan() || at_b.is_nan() || (at_a < 0.0) == (at_b < 0.0) {
        return None;
    }
    // Which end moved last: the weight of the other one is halved when it stays for a second time.
    let mut last_moved_a = None;
    for step in 0..STEPS {
        let secant = (a * at_b - b * at_a) / (at_b - at_a);
        let between = secant > a && secant < b && step % 3 != 2;
        let x = if between { secant } else { 0.5 * a + 0.5 * b };
        if !(x > a && x < b) || b - a <= 2.0 * f64::EPSILON * x.abs() {
            return Some(x.clamp(a, b));
        }
        let at_x = function(x);
        if at_x == 0.0 {
            return Some(x);
        }
        if at_x.is_nan() {
            return None;
        }
        let moves_a = (at_x < 0.0) == (at_a < 0.0);
        let again = last_moved_a == Some(moves_a);
        if moves_a {
            (a, at_a) = (x, at_x);
            at_b *= if again { 0.5 } else { 1.0 };
        } else {
            (b, at_b) = (x, at_x);
            at_a *= if again { 0.5 } else { 1.0 };
        }
        last_moved_a = Some(moves_a);
    }
    Some(0.5 * a + 0.5 * b)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn roots_known_in_closed_form_are_found_to_the_last_digits() {
        let near = |found: Option<f64>, exact: f64| (found.expect("bracketed") - exact).abs() <= 4e-16 * exact.abs();
        assert!(near(bracketed_root(|x| x * x - 2.0, 0.0, 2.0), core::f64::consts::SQRT_2));
        assert!(near(bracketed_root(|x| 2.0 - x * x, 2.0, 0.0), core::f64::consts::SQRT_2));
        // Flat on one side: false position alone would creep.
        let steep = |x: f64| x * x * x * x * x * x * x * x * x * x - 1e-5;
        assert!(near(bracketed_root(steep, 0.0, 10.0), 0.316_227_766_016_837_94));
        assert_eq!(bracketed_root(|x| x, -1.0, 1.0).map(f64::abs), Some(0.0));
        assert_eq!(bracketed_root(|x| x - 1.0, 1.0, 2.0), Some(1.0));
    }

    #[test]
    fn what_brackets_no_root_gives_none() {
        assert_eq!(bracketed_root(|x| x * x + 1.0, -1.0, 1.0), None);
        assert_eq!(bracketed_root(|x| x, f64::NAN, 1.0), None);
        assert_eq!(bracketed_root(|x| x, f64::NEG_INFINITY, 1.0), None);
        assert_eq!(bracketed_root(|_| f64::NAN, -1.0, 1.0), None);
    }

    proptest! {
        #[test]
        fn any_ends_are_survived(low in any::<f64>(), high in any::<f64>(), at in any::<f64>()) {
            if let Some(root) = bracketed_root(|x| x - at, low, high) {
                prop_assert!(root >= low.min(high) && root <= low.max(high));
            }
        }
    }
}
