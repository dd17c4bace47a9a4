//! Text that may stand in markup, and numbers with a fixed look.

use core::fmt::Write as _;

use crate::plan::ReportLengths;
use crate::units::factor::INCH_MM;
use crate::units::{LengthRounding, LengthStyle, WriteLengthInput, write_length};

/// Marks to the inch in drawings and reports.
const MARKS: u32 = 32;

/// What stands for a number that is none.
const NO_NUMBER: &str = "–";

/// Text as content or attribute of XML and HTML: marked characters escaped, forbidden ones replaced.
///
/// Directional overrides go as well, so that a name cannot turn the line around it.
pub(super) fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            '\t' | '\n' | '\r' => out.push(' '),
            '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' | '\u{fffe}' | '\u{ffff}' => out.push('\u{fffd}'),
            letter if letter.is_control() => out.push('\u{fffd}'),
            letter => out.push(letter),
        }
    }
    out
}

/// The first `most` letters of a text, with an ellipsis where some are left out.
pub(super) fn shortened(text: &str, most: usize) -> String {
    if text.chars().count() <= most {
        return text.to_owned();
    }
    let mut out: String = text.chars().take(most.saturating_sub(1)).collect();
    out.truncate(out.trim_end().len());
    out.push('…');
    out
}

/// A number with at most so many digits after the point, without trailing zeros and without a negative zero.
pub(super) fn fixed(value: f64, decimals: usize) -> String {
    if !value.is_finite() {
        return NO_NUMBER.to_owned();
    }
    let mut text = format!("{value:.decimals$}");
    if text.contains('.') {
        text.truncate(text.trim_end_matches('0').trim_end_matches('.').len());
    }
    if text == "-0" { "0".to_owned() } else { text }
}

/// A number to four significant digits or to whole numbers, whichever says more.
pub(super) fn significant(value: f64) -> String {
    let magnitude = value.abs();
    let decimals = [(1000.0, 0), (100.0, 1), (10.0, 2), (1.0, 3), (0.1, 4)];
    fixed(value, decimals.iter().find(|(from, _)| magnitude >= *from).map_or(5, |(_, decimals)| *decimals))
}

/// An angle in degrees to a tenth.
pub(super) fn degrees(angle_deg: f64) -> String {
    format!("{}°", fixed(angle_deg, 1))
}

/// A share as a percentage.
pub(super) fn percent(share: f64) -> String {
    format!("{} %", fixed(100.0 * share, if share.abs() < 0.1 { 1 } else { 0 }))
}

impl ReportLengths {
    /// A length without its unit where the unit is said once for all: `185`, `7 1/4"`.
    pub(super) fn bare(self, length_mm: f64) -> String {
        match self {
            Self::Metric => fixed(length_mm, 1),
            Self::Inches => {
                let (style, rounding) = (LengthStyle::FeetInch, LengthRounding::Nearest);
                let input = WriteLengthInput { length_mm, style, rounding, decimals: 0, denominator: MARKS };
                let written = write_length(&input).map(|written| written.text);
                // A number that is no length of a workshop is written as it is.
                written.unwrap_or_else(|_| format!("{} mm", fixed(length_mm, 1)))
            }
        }
    }

    /// A length with its unit: `185 mm`, `7 1/4"`.
    pub(super) fn full(self, length_mm: f64) -> String {
        match self {
            Self::Metric => format!("{} mm", fixed(length_mm, 1)),
            Self::Inches => self.bare(length_mm),
        }
    }

    /// A small length or a change: hundredths of a millimetre, thousandths of an inch.
    pub(super) fn fine(self, length_mm: f64) -> String {
        match self {
            Self::Metric => format!("{} mm", fixed(length_mm, 2)),
            Self::Inches => format!("{} in", fixed(length_mm / INCH_MM, 3)),
        }
    }

    /// The same with its sign.
    pub(super) fn signed(self, change_mm: f64) -> String {
        let text = self.fine(change_mm);
        if change_mm > 0.0 && !text.starts_with("0 ") { format!("+{text}") } else { text }
    }

    /// How lengths are written, for the title of a sheet.
    pub(super) const fn described(self) -> &'static str {
        match self {
            Self::Metric => "Lengths in millimetres.",
            Self::Inches => "Lengths in feet and inches, to a thirty-second.",
        }
    }
}

/// Appends formatted text; writing to a `String` cannot fail.
pub(super) fn push(out: &mut String, text: core::fmt::Arguments<'_>) {
    let _ = out.write_fmt(text);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn markup_in_a_name_stays_text() {
        assert_eq!(escaped("<script>'&\"</script>"), "&lt;script&gt;&#39;&amp;&quot;&lt;/script&gt;");
        assert_eq!(escaped("a\nb\u{0}\u{202e}c"), "a b\u{fffd}\u{fffd}c");
        assert_eq!(escaped("Regal über 1 830 ½"), "Regal über 1 830 ½");
    }

    #[test]
    fn small_changes_keep_their_sign_and_unit() {
        assert_eq!(ReportLengths::Metric.signed(0.456), "+0.46 mm");
        assert_eq!(ReportLengths::Metric.signed(-0.456), "-0.46 mm");
        assert_eq!(ReportLengths::Metric.signed(0.001), "0 mm");
        assert_eq!(ReportLengths::Inches.signed(2.54), "+0.1 in");
        assert_eq!(ReportLengths::Inches.fine(0.4), "0.016 in");
    }

    #[test]
    fn numbers_have_no_trailing_zeros_and_are_never_nan() {
        for (value, decimals, text) in [
            (185.0, 1, "185"),
            (38.14, 1, "38.1"),
            (1500.0, 0, "1500"),
            (-0.01, 1, "0"),
            (-2.5, 1, "-2.5"),
            (f64::NAN, 3, "–"),
            (f64::INFINITY, 0, "–"),
        ] {
            assert_eq!(fixed(value, decimals), text);
        }
        assert_eq!(significant(1234.56), "1235");
        assert_eq!(significant(0.123_456), "0.1235");
        assert_eq!(percent(0.0312), "3.1 %");
        assert_eq!(percent(1.5), "150 %");
    }

    #[test]
    fn a_long_text_is_cut_with_an_ellipsis() {
        assert_eq!(shortened("mantel", 6), "mantel");
        assert_eq!(shortened("oak mantel", 5), "oak…");
        assert_eq!(shortened("äöü", 0), "…");
    }

    #[test]
    fn lengths_are_written_as_the_spec_asks() {
        assert_eq!(ReportLengths::Metric.bare(133.35), "133.3");
        assert_eq!(ReportLengths::Metric.full(1830.0), "1830 mm");
        assert_eq!(ReportLengths::Inches.bare(2209.8), "7' 3\"");
        assert_eq!(ReportLengths::Inches.full(20.637_5), "13/16\"");
        assert_eq!(ReportLengths::Inches.full(f64::NAN), "– mm");
    }
}
