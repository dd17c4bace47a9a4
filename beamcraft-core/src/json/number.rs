//! Text of a number: the fewest digits that read back to the same bits.

/// Text of a finite number.
///
/// The shortest digits that read back to the same value; plain notation from 1e-7 up to 1e21, exponent notation
/// outside; always recognisable as a float (`20.0`, never `20`); minus zero is written as `0.0`.
pub fn format_number(value: f64) -> String {
    if value == 0.0 {
        return "0.0".to_owned();
    }
    // `{:e}` gives the shortest digits that round-trip; the layout is ours, so that no library release moves it.
    let text = format!("{value:e}");
    let Some((mantissa, exponent)) = text.split_once('e') else { return text };
    let exponent: i32 = exponent.parse().unwrap_or(0);
    let (sign, mantissa) = mantissa.strip_prefix('-').map_or(("", mantissa), |rest| ("-", rest));
    let digits: String = mantissa.chars().filter(|c| *c != '.').collect();
    if (-7..21).contains(&exponent) { plain(sign, &digits, exponent) } else { format!("{sign}{mantissa}e{exponent}") }
}

/// Digits with the decimal point `exponent + 1` places from their start.
fn plain(sign: &str, digits: &str, exponent: i32) -> String {
    if exponent < 0 {
        let zeros = "0".repeat(exponent.unsigned_abs() as usize - 1);
        return format!("{sign}0.{zeros}{digits}");
    }
    let point = exponent as usize + 1;
    match (digits.get(..point), digits.get(point..)) {
        (Some(whole), Some("")) => format!("{sign}{whole}.0"),
        (Some(whole), Some(rest)) => format!("{sign}{whole}.{rest}"),
        _ => format!("{sign}{digits}{}.0", "0".repeat(point - digits.len())),
    }
}

#[cfg(test)]
mod tests {
    use super::format_number;
    use proptest::prelude::*;

    #[test]
    fn the_layout_is_fixed() {
        let cases = [
            (0.0, "0.0"),
            (-0.0, "0.0"),
            (20.0, "20.0"),
            (-1830.0, "-1830.0"),
            (133.35, "133.35"),
            (0.1, "0.1"),
            (1e-7, "0.0000001"),
            (1.5e-8, "1.5e-8"),
            (1e20, "100000000000000000000.0"),
            (1e21, "1e21"),
            (-2.5e300, "-2.5e300"),
            (5e-324, "5e-324"),
        ];
        for (value, text) in cases {
            assert_eq!(format_number(value), text);
        }
    }

    proptest! {
        #[test]
        fn every_finite_number_reads_back_to_its_bits(bits: u64) {
            let value = f64::from_bits(bits);
            prop_assume!(value.is_finite() && value != 0.0);
            let text = format_number(value);
            let back: f64 = serde_json::from_str(&text).unwrap();
            prop_assert_eq!(back.to_bits(), bits, "{}", text);
            prop_assert!(text.contains('.') || text.contains('e'));
        }
    }
}
