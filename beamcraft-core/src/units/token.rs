//! Words, marks and digits of a length.

use super::parse::cure;
use crate::error::{ErrorCode, Fault};

/// A unit of length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Unit {
    Foot,
    Inch,
    Millimetre,
    Centimetre,
    Metre,
}

impl Unit {
    /// Millimetres of the unit, as a fraction of whole numbers.
    pub(super) const fn millimetres(self) -> (u128, u128) {
        match self {
            Unit::Foot => (1524, 5),
            Unit::Inch => (127, 5),
            Unit::Millimetre => (1, 1),
            Unit::Centimetre => (10, 1),
            Unit::Metre => (1000, 1),
        }
    }

    fn of_word(word: &str) -> Option<Self> {
        Some(match word {
            "ft" | "foot" | "feet" => Unit::Foot,
            "in" | "inch" | "inches" => Unit::Inch,
            "mm" | "millimetre" | "millimetres" | "millimeter" | "millimeters" => Unit::Millimetre,
            "cm" | "centimetre" | "centimetres" | "centimeter" | "centimeters" => Unit::Centimetre,
            "m" | "metre" | "metres" | "meter" | "meters" => Unit::Metre,
            _ => return None,
        })
    }
}

/// One token of a length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Token {
    /// A run of decimal digits: its value and how many there are.
    Digits(u128, u32),
    /// A fraction in one character.
    Fraction(u128, u128),
    Point,
    Slash,
    Hyphen,
    Plus,
    /// One space, which may part groups of three digits.
    Space,
    /// More than one.
    Spaces,
    Unit(Unit),
}

/// Longest run of digits: far more than any length needs, and its value still fits.
const MOST_DIGITS: u32 = 30;

/// The tokens of a text.
pub(super) fn tokens(text: &str) -> Result<Vec<Token>, Fault> {
    let mut tokens = Vec::new();
    let mut chars = text.chars().peekable();
    while let Some(first) = chars.next() {
        let token = match first {
            '0'..='9' => {
                let (mut value, mut count) = (u128::from(first.to_digit(10).unwrap_or_default()), 1);
                while let Some(digit) = chars.peek().and_then(|next| next.to_digit(10)) {
                    chars.next();
                    value = value.saturating_mul(10).saturating_add(u128::from(digit));
                    count += 1;
                }
                if count > MOST_DIGITS {
                    return Err(refuse(cure::FEWER_DIGITS));
                }
                Token::Digits(value, count)
            }
            '.' => Token::Point,
            '/' | '\u{2044}' | '\u{2215}' => Token::Slash,
            '-' | '\u{2010}' | '\u{2011}' | '\u{2013}' | '\u{2212}' => Token::Hyphen,
            '+' => Token::Plus,
            // A doubled foot mark is an inch mark.
            '\'' | '\u{2032}' | '\u{2019}' => {
                Token::Unit(if chars.next_if_eq(&first).is_some() { Unit::Inch } else { Unit::Foot })
            }
            '"' | '\u{2033}' | '\u{201D}' => Token::Unit(Unit::Inch),
            space if space.is_whitespace() => {
                let mut token = Token::Space;
                while chars.next_if(|next| next.is_whitespace()).is_some() {
                    token = Token::Spaces;
                }
                token
            }
            letter if letter.is_ascii_alphabetic() => {
                let mut word = String::from(letter.to_ascii_lowercase());
                while let Some(next) = chars.next_if(char::is_ascii_alphabetic) {
                    word.push(next.to_ascii_lowercase());
                }
                // `in.` and `ft.` are the printed abbreviations.
                if word == "in" || word == "ft" {
                    chars.next_if_eq(&'.');
                }
                Token::Unit(Unit::of_word(&word).ok_or_else(|| refuse(cure::UNIT))?)
            }
            ',' => return Err(refuse(cure::COMMA)),
            other => {
                let (numerator, denominator) = one_character(other).ok_or_else(|| refuse(cure::FORM))?;
                Token::Fraction(numerator, denominator)
            }
        };
        tokens.push(token);
    }
    Ok(tokens)
}

/// The fractions that Unicode has as one character.
const fn one_character(character: char) -> Option<(u128, u128)> {
    Some(match character {
        '½' => (1, 2),
        '⅓' => (1, 3),
        '⅔' => (2, 3),
        '¼' => (1, 4),
        '¾' => (3, 4),
        '⅕' => (1, 5),
        '⅖' => (2, 5),
        '⅗' => (3, 5),
        '⅘' => (4, 5),
        '⅙' => (1, 6),
        '⅚' => (5, 6),
        '⅐' => (1, 7),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        '⅑' => (1, 9),
        '⅒' => (1, 10),
        _ => return None,
    })
}

/// A text that is not a length, with what to change.
#[cold]
pub(super) const fn refuse(cure: &'static str) -> Fault {
    Fault::plain(ErrorCode::Malformed, "text", "a length with its unit, such as 5 1/4 in, 2' 3-1/2\" or 133.4 mm", cure)
}
