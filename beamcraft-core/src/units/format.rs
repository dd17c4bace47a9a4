//! Lengths written as text, with explicit rounding and what it costs.

use super::exact::ratio;
use crate::error::Fault;
use crate::limits::{Limited, limited};

/// How a length is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum LengthStyle {
    /// Millimetres with decimals: `133.4 mm`.
    Millimetre,
    /// Centimetres with decimals: `13.3 cm`.
    Centimetre,
    /// Metres with decimals: `1.830 m`.
    Metre,
    /// Inches with decimals: `5.25 in`.
    DecimalInch,
    /// Inches with a fraction in lowest terms: `5 1/4"`.
    FractionInch,
    /// Feet, inches and a fraction in lowest terms: `2' 3-1/2"`.
    FeetInch,
}

/// To which mark a length is rounded.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum LengthRounding {
    /// To the nearest mark; halfway goes to the mark farther from zero.
    #[default]
    Nearest,
    /// To the first mark that is not smaller.
    Up,
    /// To the first mark that is not larger.
    Down,
}

/// A length to write.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<WriteLengthInput>))]
pub struct WriteLengthInput {
    /// Length, mm.
    pub length_mm: f64,
    /// How it is written.
    pub style: LengthStyle,
    /// To which mark it is rounded; the nearest unless said otherwise.
    #[cfg_attr(feature = "json", serde(default))]
    pub rounding: LengthRounding,
    /// Digits after the point, for the styles with decimals; 1 unless said otherwise.
    #[cfg_attr(feature = "json", serde(default = "one_decimal"))]
    pub decimals: u32,
    /// Marks to the inch, for the styles with fractions; 16 unless said otherwise (common practice: the marks of a tape).
    #[cfg_attr(feature = "json", serde(default = "sixteenths"))]
    pub denominator: u32,
}

limited!(WriteLengthInput { length_mm: SIGNED_LENGTH, decimals: DECIMALS, denominator: INCH_DENOMINATOR });

#[cfg(feature = "json")]
fn one_decimal() -> u32 {
    1
}

/// Marks to the inch of a common tape.
const fn sixteenths() -> u32 {
    16
}

/// A length as it was written.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct LengthWriting {
    /// Text, which reads back to `written_mm` exactly.
    pub text: String,
    /// Length that the text says, mm.
    pub written_mm: f64,
    /// What rounding lost: the length given minus the length written, mm.
    pub residual_mm: f64,
}

/// Text of a length, rounded to a chosen mark, with the residual.
///
/// # Equation
/// ```text
/// k = length / step, rounded to a whole number       written = k × step       residual = length − written
/// step = 25.4 / denominator  (fractions)             step = unit × 10^−decimals  (decimals)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | length | length to write | mm | `length_mm` |
/// | step | distance between marks | mm | from `style`, `decimals`, `denominator` |
/// | residual | what rounding lost | mm | `residual_mm` |
///
/// # Limits
/// A length closer to a mark than a billionth of a step (or than four units in its last binary place) counts as being on
/// the mark, and the same about halfway: 25.4 mm rounded down is 1 inch although the machine number for 25.4 is
/// a hair below it. Fractions are reduced; the style that is chosen decides which of `decimals` and `denominator` is used.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// Definition of the inch, NIST SP 811 (recalled); the forms are common practice — checked by `verification/lengths`.
///
/// # Examples
/// ```
/// use beamcraft_core::units::{write_length, LengthRounding, LengthStyle, WriteLengthInput};
/// let written = write_length(&WriteLengthInput {
///     length_mm: 700.0,
///     style: LengthStyle::FeetInch,
///     rounding: LengthRounding::Down,
///     decimals: 0,
///     denominator: 16,
/// })?;
/// assert_eq!(written.text, "2' 3-1/2\"");
/// assert_eq!(written.residual_mm, 1.5);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn write_length(input: &WriteLengthInput) -> Result<LengthWriting, Fault> {
    input.check_ranges()?;
    let length_mm = input.length_mm;
    // One step is up/down millimetres.
    let (marks, (up, down)) = match input.style {
        LengthStyle::Millimetre => (10_u64.pow(input.decimals), (1_u32, 1_u32)),
        LengthStyle::Centimetre => (10_u64.pow(input.decimals), (10, 1)),
        LengthStyle::Metre => (10_u64.pow(input.decimals), (1000, 1)),
        LengthStyle::DecimalInch => (10_u64.pow(input.decimals), (127, 5)),
        LengthStyle::FractionInch | LengthStyle::FeetInch => (u64::from(input.denominator), (127, 5)),
    };
    let steps = to_mark(length_mm * (marks as f64 * f64::from(down)) / f64::from(up), input.rounding);
    let count = steps.abs() as u64;
    let magnitude_mm = ratio(u128::from(count) * u128::from(up), u128::from(marks) * u128::from(down));
    let written_mm = if steps < 0.0 { -magnitude_mm } else { magnitude_mm };
    let (whole, part) = (count / marks, count % marks);
    let sign = if steps < 0.0 { "-" } else { "" };
    let body = match input.style {
        LengthStyle::Millimetre => decimal(whole, part, input.decimals, "mm"),
        LengthStyle::Centimetre => decimal(whole, part, input.decimals, "cm"),
        LengthStyle::Metre => decimal(whole, part, input.decimals, "m"),
        LengthStyle::DecimalInch => decimal(whole, part, input.decimals, "in"),
        LengthStyle::FractionInch => inches(whole, part, marks, " "),
        LengthStyle::FeetInch => feet(whole, part, marks),
    };
    Ok(LengthWriting { text: format!("{sign}{body}"), written_mm, residual_mm: length_mm - written_mm })
}

/// The length in inches to the nearest sixteenth, for reports: `5 1/4"`.
///
/// A number that is no length of a workshop is written as it is, in millimetres.
pub fn shop_inches(length_mm: f64) -> String {
    let (style, rounding) = (LengthStyle::FractionInch, LengthRounding::Nearest);
    let input = WriteLengthInput { length_mm, style, rounding, decimals: 0, denominator: sixteenths() };
    write_length(&input).map_or_else(|_| format!("{length_mm} mm"), |written| written.text)
}

/// The whole number that `steps` is rounded to.
fn to_mark(steps: f64, rounding: LengthRounding) -> f64 {
    let slack = (4.0 * f64::EPSILON * steps.abs()).max(1e-9);
    let (low, magnitude) = (steps.floor(), steps.abs());
    let on_low = steps - low <= slack;
    let on_high = low + 1.0 - steps <= slack;
    match rounding {
        LengthRounding::Nearest => {
            let rounded = (magnitude + 0.5 + slack).floor();
            if steps < 0.0 { -rounded } else { rounded }
        }
        LengthRounding::Up if on_low => low,
        LengthRounding::Up => low + 1.0,
        LengthRounding::Down if on_high => low + 1.0,
        LengthRounding::Down => low,
    }
}

fn decimal(whole: u64, part: u64, decimals: u32, unit: &str) -> String {
    if decimals == 0 {
        format!("{whole} {unit}")
    } else {
        format!("{whole}.{part:0>digits$} {unit}", digits = decimals as usize)
    }
}

/// Inches with a fraction in lowest terms; `joint` stands between the two.
fn inches(whole: u64, part: u64, marks: u64, joint: &str) -> String {
    let divisor = common_divisor(part, marks);
    let (up, down) = (part / divisor, marks / divisor);
    match (whole, up) {
        (_, 0) => format!("{whole}\""),
        // Only a hyphen needs the zero in front: 2' 0-1/2".
        (0, _) if joint == " " => format!("{up}/{down}\""),
        _ => format!("{whole}{joint}{up}/{down}\""),
    }
}

fn feet(whole: u64, part: u64, marks: u64) -> String {
    let (feet, rest) = (whole / 12, whole % 12);
    if feet == 0 { inches(rest, part, marks, " ") } else { format!("{feet}' {}", inches(rest, part, marks, "-")) }
}

/// Greatest common divisor; `b` is above zero.
const fn common_divisor(a: u64, b: u64) -> u64 {
    let (mut a, mut b) = (a, b);
    while a != 0 {
        (a, b) = (b % a, a);
    }
    b
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const WRITE_LENGTH: crate::json::Calculation = crate::json::calculation!(
    write_length: WriteLengthInput => LengthWriting, Document,
    "Text of a length in mm, cm, m, decimal or fractional inches or feet and inches, rounded to a chosen mark"
);

#[cfg(test)]
#[path = "format_tests.rs"]
mod tests;
