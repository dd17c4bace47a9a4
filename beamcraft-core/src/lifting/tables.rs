//! Tables 5 and 7 of NIOSH Publication 94-110.

/// One row of Table 5: lifts a minute, then the multiplier for short, moderate and long work, each with the hands at
/// the origin below and at or above 30 in (75 cm).
type FrequencyRow = (f64, [f64; 6]);

/// Table 5, p. 15 (seen twice).
const FREQUENCY: [FrequencyRow; 17] = [
    (0.2, [1.00, 1.00, 0.95, 0.95, 0.85, 0.85]),
    (0.5, [0.97, 0.97, 0.92, 0.92, 0.81, 0.81]),
    (1.0, [0.94, 0.94, 0.88, 0.88, 0.75, 0.75]),
    (2.0, [0.91, 0.91, 0.84, 0.84, 0.65, 0.65]),
    (3.0, [0.88, 0.88, 0.79, 0.79, 0.55, 0.55]),
    (4.0, [0.84, 0.84, 0.72, 0.72, 0.45, 0.45]),
    (5.0, [0.80, 0.80, 0.60, 0.60, 0.35, 0.35]),
    (6.0, [0.75, 0.75, 0.50, 0.50, 0.27, 0.27]),
    (7.0, [0.70, 0.70, 0.42, 0.42, 0.22, 0.22]),
    (8.0, [0.60, 0.60, 0.35, 0.35, 0.18, 0.18]),
    (9.0, [0.52, 0.52, 0.30, 0.30, 0.00, 0.15]),
    (10.0, [0.45, 0.45, 0.26, 0.26, 0.00, 0.13]),
    (11.0, [0.41, 0.41, 0.00, 0.23, 0.00, 0.00]),
    (12.0, [0.37, 0.37, 0.00, 0.21, 0.00, 0.00]),
    (13.0, [0.00, 0.34, 0.00, 0.00, 0.00, 0.00]),
    (14.0, [0.00, 0.31, 0.00, 0.00, 0.00, 0.00]),
    (15.0, [0.00, 0.28, 0.00, 0.00, 0.00, 0.00]),
];

/// Frequency multiplier of a column of Table 5, linear between its rows (p. 7).
///
/// Below 0.2 a minute the first row holds. Beyond the last row that is not nought the multiplier is nought at once: the
/// manual gives nothing in between, and a line down to nought would be the less cautious reading.
pub(super) fn frequency_multiplier(lifts_per_min: f64, column: usize) -> f64 {
    let rows = || FREQUENCY.iter().map(|(rate, values)| (*rate, values.get(column).copied().unwrap_or(0.0)));
    let mut below: Option<(f64, f64)> = None;
    for (rate, value) in rows() {
        if lifts_per_min <= rate {
            return match below {
                Some((low, from)) if lifts_per_min < rate => {
                    if value == 0.0 {
                        0.0
                    } else {
                        from + (value - from) * (lifts_per_min - low) / (rate - low)
                    }
                }
                _ => value,
            };
        }
        below = Some((rate, value));
    }
    0.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_rows_come_back_and_fall_with_the_rate() {
        for column in 0..6 {
            for pair in FREQUENCY.windows(2) {
                assert_eq!(frequency_multiplier(pair[0].0, column), pair[0].1[column]);
                assert!(pair[1].0 > pair[0].0 && pair[1].1[column] <= pair[0].1[column]);
            }
            // The hands at or above 30 in are never the worse for it.
            assert!(FREQUENCY.iter().all(|(_, values)| values[column | 1] >= values[column & !1]));
        }
        assert_eq!(frequency_multiplier(0.0, 2), 0.95);
        assert!((frequency_multiplier(4.5, 0) - 0.82).abs() < 1e-12);
    }

    #[test]
    fn beyond_the_last_listed_rate_nothing_is_recommended() {
        assert_eq!(frequency_multiplier(15.0, 1), 0.28);
        assert_eq!(frequency_multiplier(15.1, 1), 0.0);
        assert_eq!(frequency_multiplier(8.0, 4), 0.18);
        assert_eq!(frequency_multiplier(8.1, 4), 0.0);
        assert_eq!(frequency_multiplier(f64::INFINITY, 1), 0.0);
    }
}
