use proptest::prelude::*;

use super::LengthRounding::{Down, Nearest, Up};
use super::LengthStyle::{Centimetre, DecimalInch, FeetInch, FractionInch, Metre, Millimetre};
use super::{LengthRounding, LengthStyle, LengthWriting, WriteLengthInput, shop_inches, write_length};
use crate::units::parse_length;

const STYLES: [LengthStyle; 6] = [Millimetre, Centimetre, Metre, DecimalInch, FractionInch, FeetInch];

fn write(
    length_mm: f64,
    style: LengthStyle,
    rounding: LengthRounding,
    decimals: u32,
    denominator: u32,
) -> LengthWriting {
    write_length(&WriteLengthInput { length_mm, style, rounding, decimals, denominator }).expect("allowed")
}

#[test]
fn each_style_has_its_layout() {
    for (length_mm, style, decimals, denominator, text) in [
        (133.35, Millimetre, 2, 1, "133.35 mm"),
        (133.35, Millimetre, 0, 1, "133 mm"),
        (1830.0, Millimetre, 1, 1, "1830.0 mm"),
        (133.35, Centimetre, 1, 1, "13.3 cm"),
        (1830.0, Metre, 3, 1, "1.830 m"),
        (133.35, DecimalInch, 2, 1, "5.25 in"),
        (133.35, FractionInch, 0, 16, "5 1/4\""),
        (133.35, FractionInch, 0, 1, "5\""),
        (20.6375, FractionInch, 0, 32, "13/16\""),
        (2209.8, FractionInch, 0, 16, "87\""),
        (2209.8, FeetInch, 0, 16, "7' 3\""),
        (2133.6, FeetInch, 0, 16, "7' 0\""),
        (698.5, FeetInch, 0, 16, "2' 3-1/2\""),
        (622.3, FeetInch, 0, 8, "2' 0-1/2\""),
        (133.35, FeetInch, 0, 16, "5 1/4\""),
        (304.7, FeetInch, 0, 16, "1' 0\""),
        (8.4667, FractionInch, 0, 3, "1/3\""),
        (-133.35, FractionInch, 0, 16, "-5 1/4\""),
        (-698.5, FeetInch, 0, 16, "-2' 3-1/2\""),
        (0.0, FeetInch, 0, 16, "0\""),
        (-0.01, FractionInch, 0, 16, "0\""),
        (-0.01, Millimetre, 1, 16, "0.0 mm"),
    ] {
        assert_eq!(write(length_mm, style, Nearest, decimals, denominator).text, text, "{length_mm} {style:?}");
    }
}

#[test]
fn rounding_says_its_direction_and_its_residual() {
    // 133 mm is 5.2362 in: between 83 and 84 sixteenths.
    let nearest = write(133.0, FractionInch, Nearest, 0, 16);
    assert_eq!((nearest.text.as_str(), nearest.written_mm), ("5 1/4\"", 133.35));
    assert!((nearest.residual_mm + 0.35).abs() < 1e-12);
    assert_eq!(write(133.0, FractionInch, Up, 0, 16).text, "5 1/4\"");
    assert_eq!(write(133.0, FractionInch, Down, 0, 16).text, "5 3/16\"");
    assert_eq!(write(-133.0, FractionInch, Up, 0, 16).text, "-5 3/16\"");
    assert_eq!(write(-133.0, FractionInch, Down, 0, 16).text, "-5 1/4\"");
    // Halfway goes away from zero, on both sides of it.
    assert_eq!(write(0.25, Millimetre, Nearest, 1, 16).text, "0.3 mm");
    assert_eq!(write(-0.25, Millimetre, Nearest, 1, 16).text, "-0.3 mm");
    assert_eq!(write(133.35, Millimetre, Nearest, 1, 16).text, "133.4 mm");
    assert_eq!(write(0.79375, FractionInch, Nearest, 0, 16).text, "1/16\"");
}

#[test]
fn a_length_on_a_mark_stays_on_it_whatever_the_machine_number() {
    for rounding in [Nearest, Up, Down] {
        for sixteenths in -4000_i32..4000 {
            let length_mm = f64::from(sixteenths) / 16.0 * 25.4;
            let written = write(length_mm, FractionInch, rounding, 0, 16);
            assert!(written.residual_mm.abs() < 1e-11, "{length_mm} {rounding:?} {written:?}");
        }
        assert_eq!(write(0.1 + 0.2, Millimetre, rounding, 1, 16).text, "0.3 mm");
    }
}

#[test]
fn what_is_no_length_is_refused() {
    let input = WriteLengthInput { length_mm: 1.0, style: Metre, rounding: Up, decimals: 1, denominator: 16 };
    for length_mm in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e300, -1e6] {
        assert_eq!(write_length(&WriteLengthInput { length_mm, ..input }).expect_err("refused").field, "length_mm");
    }
    for denominator in [0, 129, u32::MAX] {
        assert_eq!(write_length(&WriteLengthInput { denominator, ..input }).expect_err("refused").field, "denominator");
    }
    for decimals in [7, u32::MAX] {
        assert_eq!(write_length(&WriteLengthInput { decimals, ..input }).expect_err("refused").field, "decimals");
    }
}

#[test]
fn reports_say_inches_to_the_sixteenth() {
    assert_eq!(shop_inches(19.0), "3/4\"");
    assert_eq!(shop_inches(2209.8), "87\"");
    assert_eq!(shop_inches(f64::NAN), "NaN mm");
    assert_eq!(shop_inches(250_000.0), "250000 mm");
}

fn any_style() -> impl Strategy<Value = LengthStyle> {
    proptest::sample::select(STYLES.to_vec())
}

fn step_mm(style: LengthStyle, decimals: u32, denominator: u32) -> f64 {
    let decimal = 1.0 / 10_u64.pow(decimals) as f64;
    match style {
        Millimetre => decimal,
        Centimetre => 10.0 * decimal,
        Metre => 1000.0 * decimal,
        DecimalInch => 25.4 * decimal,
        FractionInch | FeetInch => 25.4 / f64::from(denominator),
    }
}

proptest! {
    #[test]
    fn what_is_written_reads_back(length_mm in -1e5_f64..1e5, style in any_style(), decimals in 0_u32..=6, denominator in 1_u32..=128) {
        let step_mm = step_mm(style, decimals, denominator);
        let slack_mm = 1e-9 * step_mm + 1e-10;
        for rounding in [Nearest, Up, Down] {
            let written = write(length_mm, style, rounding, decimals, denominator);
            if written.written_mm.abs() <= 1e5 {
                prop_assert_eq!(parse_length(&written.text).unwrap(), written.written_mm, "{}", written.text);
            }
            prop_assert!((written.written_mm + written.residual_mm - length_mm).abs() <= 1e-10);
            let (low, high) = match rounding {
                Nearest => (-0.5 * step_mm, 0.5 * step_mm),
                Up => (-step_mm, 0.0),
                Down => (0.0, step_mm),
            };
            prop_assert!(written.residual_mm >= low - slack_mm && written.residual_mm <= high + slack_mm, "{:?}", written);
        }
    }

    #[test]
    fn a_longer_length_is_never_written_shorter(a in -1e5_f64..1e5, b in -1e5_f64..1e5, near in -1.0_f64..1.0, style in any_style(), decimals in 0_u32..=6, denominator in 1_u32..=128) {
        for (a, b) in [(a, b), (a, (a + near).clamp(-1e5, 1e5))] {
            for rounding in [Nearest, Up, Down] {
                let low = write(a.min(b), style, rounding, decimals, denominator).written_mm;
                let high = write(a.max(b), style, rounding, decimals, denominator).written_mm;
                prop_assert!(low <= high);
            }
        }
    }

    #[test]
    fn nearest_is_the_same_on_both_sides_of_zero(length_mm in 0.0_f64..1e5, style in any_style(), denominator in 1_u32..=128) {
        let plus = write(length_mm, style, Nearest, 2, denominator);
        let minus = write(-length_mm, style, Nearest, 2, denominator);
        prop_assert_eq!(plus.written_mm, -minus.written_mm);
    }

    #[test]
    fn any_bits_give_a_finite_answer_or_a_fault(bits: u64, style in any_style(), decimals: u32, denominator: u32) {
        let input = WriteLengthInput { length_mm: f64::from_bits(bits), style, rounding: Up, decimals, denominator };
        for input in [input, WriteLengthInput { decimals: decimals % 7, denominator: 1 + denominator % 128, ..input }] {
            if let Ok(written) = write_length(&input) {
                prop_assert!(written.written_mm.is_finite() && written.residual_mm.is_finite());
            }
        }
    }
}
