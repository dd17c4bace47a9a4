//! Lengths read from text.

use super::exact::ratio;
use super::token::{Token, Unit, refuse, tokens};
use crate::error::{Allowed, ErrorCode, Fault};
use crate::limits::SIGNED_LENGTH;

/// What to change in a text that is refused.
pub(super) mod cure {
    pub(crate) const EMPTY: &str = "the text is empty";
    pub(crate) const TOO_LONG: &str = "a length needs no more than 120 bytes";
    pub(crate) const FORM: &str = "write a number and its unit, nothing else";
    pub(crate) const NO_UNIT: &str = "add the unit after the number: mm, cm, m, in or ft; it is never guessed";
    pub(crate) const NO_INCH: &str = "mark the inches as well: 7' 3\" or 7 ft 3 in";
    pub(crate) const UNIT: &str = "known units are mm, cm, m, in (\") and ft (')";
    pub(crate) const TWO_UNITS: &str = "give one unit; only feet may be followed by inches";
    pub(crate) const COMMA: &str = "write decimals with a point and thousands with a space";
    pub(crate) const GROUPS: &str = "thousands may be set apart in metric lengths only";
    pub(crate) const ZERO: &str = "a fraction cannot have zero below its line";
    pub(crate) const IMPROPER: &str = "the fraction beside a whole number must be less than 1";
    pub(crate) const WHOLE_FEET: &str = "feet followed by inches must be a whole number";
    pub(crate) const TWELVE: &str = "inches that follow feet must be less than 12";
    pub(crate) const FEWER_DIGITS: &str = "write fewer digits: at most 20 after the point";
    pub(crate) const NUMBER: &str = "begin with a number, such as 5 1/4, 13/16 or 133.4";
}

/// Longest text that is looked at, bytes.
const LONGEST_TEXT: usize = 120;
/// Most digits after a point.
const MOST_DECIMALS: u32 = 20;
/// Largest whole number in any part of a length: keeps every product below 2¹²⁷.
const LARGEST_WHOLE: u128 = 999_999_999;

/// A text to read as a length.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct ReadLengthInput {
    /// Length with its unit, such as `5 1/4"`, `2' 3-1/2"`, `13/16 in`, `133.4 mm`, `1 830 mm`.
    pub text: String,
}

/// A length that was read.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct LengthReading {
    /// Length, mm.
    pub length_mm: f64,
}

/// Length of a text, mm: shop fractions, feet and inches, decimals; never without a unit.
///
/// # Equation
/// ```text
/// length = (12 feet + inches) × 127 / 5       length = metres × 1000 = centimetres × 10
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | feet, inches, … | the numbers in the text | as written | `text` |
/// | length | its value | mm | `length_mm` |
///
/// # Forms
/// | text | read as |
/// |---|---|
/// | `5 1/4"`, `5-1/4 in`, `5¼ inches`, `5 1⁄4 in.`, `5.25 IN` | 133.35 mm |
/// | `13/16"`, `17/16 in`, `½ in` | a fraction alone, also above 1 |
/// | `2' 3-1/2"`, `2'-3 1/2"`, `2 ft 3.5 in`, `2′ 3½″`, `2’ 3½”`, `2' 3 1/2''` | 698.5 mm |
/// | `133.4 mm`, `18.3 cm`, `1.83 m`, `1 830 mm` (any single space) | metric |
/// | `-1/16"`, `−1.5 mm` | the sign stands first and holds for the whole |
///
/// # Limits
/// Refused rather than guessed: a number without unit, a decimal comma, two units other than feet and inches, a fraction of
/// 1 or more beside a whole number, 12 or more inches beside feet, thousands set apart in inches, exponents. A text of
/// more than 120 bytes and more than 20 decimals are refused as well.
///
/// # Errors
/// `malformed` with what to change; `out_of_range` beyond ±100 m.
///
/// # Accuracy
/// The number closest to the exact value: one rounding in all.
///
/// # Source
/// Definition of the inch, NIST SP 811 (recalled); the forms are common practice — checked by `verification/lengths`.
///
/// # Examples
/// ```
/// use beamcraft_core::units::{read_length, ReadLengthInput};
/// let read = read_length(&ReadLengthInput { text: "2' 3-1/2\"".to_owned() })?;
/// assert_eq!(read.length_mm, 698.5);
/// assert!(read_length(&ReadLengthInput { text: "27.5".to_owned() }).is_err());
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn read_length(input: &ReadLengthInput) -> Result<LengthReading, Fault> {
    Ok(LengthReading { length_mm: parse_length(&input.text)? })
}

/// Length of a text, mm. The forms are those of [`read_length`].
///
/// # Errors
/// `malformed`, `out_of_range`.
pub fn parse_length(text: &str) -> Result<f64, Fault> {
    if text.len() > LONGEST_TEXT {
        return Err(refuse(cure::TOO_LONG));
    }
    let text = text.trim();
    if text.is_empty() {
        return Err(refuse(cure::EMPTY));
    }
    let tokens = tokens(text)?;
    let length_mm = Reader { rest: &tokens }.length()?;
    SIGNED_LENGTH.check("text", length_mm)?;
    Ok(length_mm)
}

/// A number as a quotient, and how it was written.
#[derive(Clone, Copy)]
struct Amount {
    numerator: u128,
    denominator: u128,
    grouping: Grouping,
}

#[derive(Clone, Copy, PartialEq)]
enum Grouping {
    None,
    Thousands,
}

impl Amount {
    /// This many of `unit`, mm.
    fn of(self, unit: Unit) -> Result<f64, Fault> {
        if self.grouping == Grouping::Thousands && matches!(unit, Unit::Inch | Unit::Foot) {
            return Err(refuse(cure::GROUPS));
        }
        let (up, down) = unit.millimetres();
        Ok(ratio(self.numerator * up, self.denominator * down))
    }
}

/// Reads tokens from the front.
struct Reader<'a> {
    rest: &'a [Token],
}

impl Reader<'_> {
    fn length(&mut self) -> Result<f64, Fault> {
        let sign = if self.take(Token::Hyphen) {
            -1.0
        } else {
            self.take(Token::Plus);
            1.0
        };
        self.skip_spaces();
        let first = self.amount()?;
        let unit = self.unit(cure::NO_UNIT)?;
        self.skip_spaces();
        let magnitude_mm = match (unit, self.rest) {
            (_, []) => first.of(unit)?,
            (Unit::Foot, _) => self.inches_after(first)?,
            (_, _) => return Err(refuse(cure::TWO_UNITS)),
        };
        // Adding zero turns minus zero into zero.
        Ok(sign * magnitude_mm + 0.0)
    }

    /// Feet, then inches to the end of the text.
    fn inches_after(&mut self, feet: Amount) -> Result<f64, Fault> {
        self.take(Token::Hyphen);
        self.skip_spaces();
        let inches = self.amount()?;
        let unit = self.unit(cure::NO_INCH)?;
        self.skip_spaces();
        if unit != Unit::Inch || !self.rest.is_empty() {
            return Err(refuse(cure::TWO_UNITS));
        }
        if feet.denominator != 1 {
            return Err(refuse(cure::WHOLE_FEET));
        }
        if inches.numerator >= 12 * inches.denominator {
            return Err(refuse(cure::TWELVE));
        }
        let grouping = feet.grouping;
        let numerator = 12 * feet.numerator * inches.denominator + inches.numerator;
        Amount { numerator, denominator: inches.denominator, grouping }.of(Unit::Inch)
    }

    fn amount(&mut self) -> Result<Amount, Fault> {
        let (mut numerator, mut grouping) = (0, Grouping::None);
        match *self.rest {
            [Token::Fraction(numerator, denominator), ref rest @ ..] => {
                self.rest = rest;
                return Ok(Amount { numerator, denominator, grouping });
            }
            [Token::Digits(up, _), Token::Slash, Token::Digits(down, _), ref rest @ ..] => {
                self.rest = rest;
                return fraction(up, down);
            }
            [Token::Digits(value, count), ref rest @ ..] => {
                self.rest = rest;
                numerator = within(value)?;
                if count <= 3 {
                    while let Some(group) = self.group() {
                        numerator = within(1000 * numerator + group)?;
                        grouping = Grouping::Thousands;
                    }
                }
            }
            // A point may stand first: .5 in.
            [Token::Point, Token::Digits(..), ..] => {}
            _ => return Err(refuse(cure::NUMBER)),
        }
        if let [Token::Point, Token::Digits(value, count), ref rest @ ..] = *self.rest {
            self.rest = rest;
            if count > MOST_DECIMALS {
                return Err(refuse(cure::FEWER_DIGITS));
            }
            let denominator = 10_u128.pow(count);
            return Ok(Amount { numerator: numerator * denominator + value, denominator, grouping });
        }
        let (up, down) = match *self.rest {
            [Token::Fraction(up, down), ref rest @ ..]
            | [Token::Space | Token::Spaces | Token::Hyphen, Token::Fraction(up, down), ref rest @ ..]
            | [
                Token::Space | Token::Spaces | Token::Hyphen,
                Token::Digits(up, _),
                Token::Slash,
                Token::Digits(down, _),
                ref rest @ ..,
            ] => {
                self.rest = rest;
                (up, down)
            }
            _ => return Ok(Amount { numerator, denominator: 1, grouping }),
        };
        let part = fraction(up, down)?;
        if part.numerator >= part.denominator {
            return Err(refuse(cure::IMPROPER));
        }
        let numerator = numerator * part.denominator + part.numerator;
        Ok(Amount { numerator, denominator: part.denominator, grouping })
    }

    /// The next three digits after one space, if they are not the top of a fraction.
    fn group(&mut self) -> Option<u128> {
        match *self.rest {
            [Token::Space, Token::Digits(..), Token::Slash, ..] => None,
            [Token::Space, Token::Digits(value, 3), ref rest @ ..] => {
                self.rest = rest;
                Some(value)
            }
            _ => None,
        }
    }

    /// The unit that must follow a number.
    fn unit(&mut self, missing: &'static str) -> Result<Unit, Fault> {
        self.skip_spaces();
        match *self.rest {
            [Token::Unit(unit), ref rest @ ..] => {
                self.rest = rest;
                Ok(unit)
            }
            [] => Err(refuse(missing)),
            _ => Err(refuse(cure::FORM)),
        }
    }

    fn take(&mut self, token: Token) -> bool {
        match *self.rest {
            [first, ref rest @ ..] if first == token => {
                self.rest = rest;
                true
            }
            _ => false,
        }
    }

    fn skip_spaces(&mut self) {
        if !self.take(Token::Space) {
            self.take(Token::Spaces);
        }
    }
}

fn fraction(up: u128, down: u128) -> Result<Amount, Fault> {
    if down == 0 {
        return Err(refuse(cure::ZERO));
    }
    Ok(Amount { numerator: within(up)?, denominator: within(down)?, grouping: Grouping::None })
}

/// A whole number that is not beyond every length.
fn within(value: u128) -> Result<u128, Fault> {
    if value <= LARGEST_WHOLE {
        return Ok(value);
    }
    let allowed = Allowed::Text("numbers of at most nine digits");
    Err(Fault::number(ErrorCode::OutOfRange, "text", value as f64, allowed, "no length of a workshop is that long"))
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const READ_LENGTH: crate::json::Calculation = crate::json::calculation!(
    read_length: ReadLengthInput => LengthReading, Document,
    "Length of a text such as 5 1/4 in, 2' 3-1/2\" or 133.4 mm"
);

#[cfg(test)]
#[path = "parse_tests.rs"]
mod tests;
