use proptest::prelude::*;

use super::{cure, parse_length};
use crate::error::ErrorCode;

fn mm(text: &str) -> f64 {
    parse_length(text).unwrap_or_else(|fault| panic!("{text}: {fault}"))
}

#[test]
fn one_length_has_many_spellings() {
    for text in [
        "5 1/4\"",
        "5-1/4\"",
        "5 1/4 in",
        "5-1/4 in.",
        "5 1/4 inches",
        "5.25 in",
        "5.25IN",
        "5¼\"",
        "5 ¼ inch",
        "5-¼″",
        "5 1\u{2044}4”",
        "5 1\u{2215}4 ''",
        "21/4 in",
        "  5   1/4\t\"  ",
        "+5 1/4\"",
        "5\u{a0}1/4\u{202f}in",
        "5\u{2010}1/4 in",
        "0' 5 1/4\"",
        "0 ft 5.25 in",
        "133.35 mm",
        "13.335 cm",
        "0.13335 m",
        "133.350000 millimetres",
    ] {
        assert_eq!(mm(text), 133.35, "{text}");
    }
    for text in [
        "2' 3-1/2\"",
        "2'-3 1/2\"",
        "2' - 3 1/2\"",
        "2'3½\"",
        "2′ 3½″",
        "2’ 3½”",
        "2' 3 1/2''",
        "2' 3 1/2′′",
        "2ft 3.5in",
        "2 ft. 3-1/2 in.",
        "2 feet 3 1/2 inches",
        "2 foot 7/2 in",
        "27 1/2 in",
        "698.5 mm",
    ] {
        assert_eq!(mm(text), 698.5, "{text}");
    }
    for text in ["1830 mm", "1 830 mm", "1\u{a0}830 mm", "1\u{2009}830mm", "1\u{202f}830.0 mm", "1.83 m", "183 cm"] {
        assert_eq!(mm(text), 1830.0, "{text}");
    }
    assert_eq!(mm("7' 3\""), 2209.8);
    assert_eq!(mm("7'"), 2133.6);
    assert_eq!(mm("7 1/2 ft"), 2286.0);
    assert_eq!(mm("13/16\""), 20.6375);
    assert_eq!(mm(".5 in"), 12.7);
    assert_eq!(mm("1/3 in"), 25.4 / 3.0);
    assert_eq!(mm("½ m"), 500.0);
    assert_eq!(mm("-1/16\""), -1.5875);
    assert_eq!(mm("\u{2212}2' 3-1/2\""), -698.5);
    assert_eq!(mm("- 1.5 mm"), -1.5);
    assert_eq!(mm("-0 mm").to_bits(), 0.0_f64.to_bits());
}

#[test]
fn what_would_need_a_guess_is_refused_with_what_to_change() {
    for (text, cure) in [
        ("", cure::EMPTY),
        (" \u{a0}\n", cure::EMPTY),
        ("5", cure::NO_UNIT),
        ("5 1/4", cure::NO_UNIT),
        ("1 830", cure::NO_UNIT),
        ("7' 3", cure::NO_INCH),
        ("1/0 in", cure::ZERO),
        ("5 1/0\"", cure::ZERO),
        ("5 5/4\"", cure::IMPROPER),
        ("5 in in", cure::TWO_UNITS),
        ("5 mm in", cure::TWO_UNITS),
        ("5 mm 3 in", cure::TWO_UNITS),
        ("3\" 2'", cure::TWO_UNITS),
        ("2' 3' ", cure::TWO_UNITS),
        ("2' 3\" 4\"", cure::TWO_UNITS),
        ("2' 30 mm", cure::TWO_UNITS),
        ("5 in wide", cure::UNIT),
        ("5 yd", cure::UNIT),
        ("1e3 mm", cure::UNIT),
        ("NaN mm", cure::UNIT),
        ("inf mm", cure::UNIT),
        ("5,25 in", cure::COMMA),
        ("1,830 mm", cure::COMMA),
        ("1 830 in", cure::GROUPS),
        ("2' 3 125\"", cure::TWELVE),
        ("2.5' 3\"", cure::WHOLE_FEET),
        ("2' 12\"", cure::TWELVE),
        ("mm", cure::NUMBER),
        ("\"", cure::NUMBER),
        ("--5 mm", cure::NUMBER),
        ("/4 in", cure::NUMBER),
        ("2' x", cure::UNIT),
        ("2' \"", cure::NUMBER),
        ("5. in", cure::FORM),
        ("5.2.5 in", cure::FORM),
        ("5 / 4 in", cure::FORM),
        ("5 1/4 1/4 in", cure::FORM),
        ("5.5 1/4 in", cure::FORM),
        ("12 34 mm", cure::FORM),
        ("1  830 mm", cure::FORM),
        ("1830 000 mm", cure::FORM),
        ("5 mm;", cure::FORM),
        ("٥ mm", cure::FORM),
        ("5\u{200b} mm", cure::FORM),
        ("0.123456789012345678901 mm", cure::FEWER_DIGITS),
        ("1111111111111111111111111111111 mm", cure::FEWER_DIGITS),
    ] {
        let fault = parse_length(text).expect_err(text);
        assert_eq!((fault.code, fault.field, fault.cure), (ErrorCode::Malformed, "text", cure), "{text:?}");
    }
    let huge = "9".repeat(1_000_000) + " mm";
    assert_eq!(parse_length(&huge).expect_err("huge").cure, cure::TOO_LONG);
}

#[test]
fn lengths_beyond_every_workshop_are_out_of_range() {
    for text in ["100.001 m", "-100001 mm", "999999999999 mm", "9999999999/3 in", "1/99999999999999 in", "400'"] {
        assert_eq!(parse_length(text).expect_err(text).code, ErrorCode::OutOfRange, "{text}");
    }
    assert_eq!(mm("100 m"), 100_000.0);
}

proptest! {
    #[test]
    fn no_text_panics_and_what_is_read_is_finite(text in "\\PC{0,40}") {
        if let Ok(length_mm) = parse_length(&text) {
            prop_assert!(length_mm.is_finite());
        }
    }

    #[test]
    fn texts_made_of_its_own_marks_never_panic(text in "[0-9 .,/'\"½⅛⁄′″’”−a-z+-]{0,24}") {
        if let Ok(length_mm) = parse_length(&text) {
            prop_assert!(length_mm.is_finite() && length_mm.abs() <= 100_000.0);
        }
    }

    #[test]
    fn a_plain_millimetre_text_is_read_as_the_number_it_shows(millimetres in -1e5_f64..1e5) {
        let text = format!("{millimetres:.12} mm");
        prop_assert_eq!(mm(&text), format!("{millimetres:.12}").parse::<f64>().unwrap() + 0.0);
    }

    #[test]
    fn feet_and_inches_are_twelve_inches_and_inches(feet in 0_u32..300, inches in 0_u32..12, up in 0_u32..64) {
        let long = format!("{feet}' {inches} {up}/64\"");
        let short = format!("{} {up}/64 in", 12 * feet + inches);
        prop_assert_eq!(mm(&long), mm(&short));
        let exact = f64::from(64 * (12 * feet + inches) + up) * 127.0 / 320.0;
        prop_assert_eq!(mm(&long), exact);
        prop_assert_eq!(mm(&format!("-{long}")), -exact + 0.0);
    }
}
