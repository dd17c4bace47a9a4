//! The one error type and the permanent table of its codes.
//!
//! Small calculations return a [`Fault`]: `Copy`, three words and a number, so that a call in a loop allocates nothing
//! even when it fails. Whole documents (a spec, a JSON input) return an [`Error`], which holds *all* faults found, each
//! with its path. A fault turns into an error with `?`.

use core::fmt;

macro_rules! codes {
    ($($variant:ident = $number:literal, $name:literal, $describe:literal;)+) => {
        /// What is wrong, as a number that never changes its meaning.
        ///
        /// Pages: `0x01` input, `0x02` geometry, `0x03` wood, `0x04` fastening, `0x05` statics, `0x0E` the C and Python doors,
        /// `0x0F` a defect of this library. A retired number stays reserved.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
        #[repr(u32)]
        #[non_exhaustive]
        pub enum ErrorCode { $(#[doc = $describe] $variant = $number,)+ }

        impl ErrorCode {
            /// Every code, in the order of its number.
            pub const ALL: &'static [ErrorCode] = &[$(ErrorCode::$variant,)+];

            /// Short name in snake case, the same through every door.
            pub const fn name(self) -> &'static str {
                match self { $(ErrorCode::$variant => $name,)+ }
            }

            /// One sentence on what the code means.
            pub const fn describe(self) -> &'static str {
                match self { $(ErrorCode::$variant => $describe,)+ }
            }

            /// The code of a number, if there is one.
            pub const fn from_number(number: u32) -> Option<Self> {
                match number { $($number => Some(ErrorCode::$variant),)+ _ => None }
            }
        }
    };
}

codes! {
    OutOfRange = 0x0101, "out_of_range", "a number lies outside the range that is allowed for it";
    NotFinite = 0x0102, "not_finite", "a number is infinite or not a number";
    UnknownField = 0x0103, "unknown_field", "a field is given that the input does not have";
    MissingField = 0x0104, "missing_field", "a required field is not given";
    WrongType = 0x0105, "wrong_type", "a field holds a value of another type than the one required";
    DuplicateField = 0x0106, "duplicate_field", "a field or an id is given more than once";
    UnknownName = 0x0107, "unknown_name", "a name (species, calculation, choice) is not in its list";
    Malformed = 0x0108, "malformed", "a text cannot be read as JSON, as a length or as UTF-8";
    Inconsistent = 0x0109, "inconsistent", "two or more values, each allowed, contradict one another";
    NotSupported = 0x010A, "not_supported", "the input describes something that this version does not compute";
    EmptySolid = 0x0201, "empty_solid", "the planes leave no solid, or one without volume";
    NoRoomInside = 0x0202, "no_room_inside", "the boards fill the body: no hollow is left inside";
    EmptyCut = 0x0210, "empty_cut", "a feature takes no wood out of the panel it is cut into";
    NothingLeft = 0x0211, "nothing_left", "a feature takes away the whole of a panel or of its show face";
    NoPublishedValue = 0x0301, "no_published_value", "the material has no published value for a property that is needed";
    PenetrationTooShort = 0x0401, "penetration_too_short", "the fastener does not reach the member that should hold it";
    NoSection = 0x0501, "no_section", "the parts of a cross-section leave no area, or none around its own centroid";
    Unstable = 0x0502, "unstable", "the supports do not hold the part: it can fall or turn freely";
    NullPointer = 0x0E01, "null_pointer", "a pointer that must not be NULL is NULL";
    StructSize = 0x0E02, "struct_size", "the size field of a struct is not one this library knows";
    UnknownChoice = 0x0E03, "unknown_choice", "a number is not one of the constants of its enumeration";
    BufferTooSmall = 0x0E04, "buffer_too_small", "the caller's buffer is too small; the size needed is reported";
    ColumnLength = 0x0E10, "column_length", "a column has neither one value nor as many as there are rows";
    NotRepresentable = 0x0F01, "not_representable", "a result is not a finite number; please report it";
    Panic = 0x0F02, "panic", "an unexpected failure inside the library; please report it";
}

impl ErrorCode {
    /// The word before what would have been allowed; of a field that is not there it is a description.
    const fn before_allowed(self) -> &'static str {
        match self {
            Self::MissingField => "wanted:",
            _ => "allowed",
        }
    }
}

/// What would have been allowed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Allowed {
    /// A closed range with its unit.
    Range {
        /// Smallest value allowed.
        low: f64,
        /// Largest value allowed.
        high: f64,
        /// Unit symbol; empty for a plain number.
        unit: &'static str,
    },
    /// In words.
    Text(&'static str),
}

impl fmt::Display for Allowed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Allowed::Range { low, high, unit } => {
                write_number(f, *low, unit)?;
                f.write_str(" to ")?;
                write_number(f, *high, unit)
            }
            Allowed::Text(text) => f.write_str(text),
        }
    }
}

/// `value unit`, without a space before a missing unit.
fn write_number(f: &mut fmt::Formatter<'_>, value: f64, unit: &str) -> fmt::Result {
    // Hundreds of digits help nobody.
    let size = value.abs();
    if size.is_finite() && (size >= 1e15 || (size > 0.0 && size < 1e-9)) {
        write!(f, "{value:e}")?;
    } else {
        write!(f, "{value}")?;
    }
    if unit.is_empty() { Ok(()) } else { write!(f, " {unit}") }
}

/// A number with its unit, as faults print it.
struct Number(f64, &'static str);

impl fmt::Display for Number {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write_number(f, self.0, self.1)
    }
}

/// One fault of a small calculation: `Copy`, nothing allocated.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fault {
    /// What is wrong.
    pub code: ErrorCode,
    /// The field of the input that is at fault.
    pub field: &'static str,
    /// The value given, where it is a number.
    pub value: Option<f64>,
    /// What is allowed.
    pub allowed: Allowed,
    /// What to change.
    pub cure: &'static str,
}

impl Fault {
    /// A fault about a number.
    #[cold]
    pub const fn number(
        code: ErrorCode,
        field: &'static str,
        value: f64,
        allowed: Allowed,
        cure: &'static str,
    ) -> Self {
        Self { code, field, value: Some(value), allowed, cure }
    }

    /// A fault about something that is not one number.
    #[cold]
    pub const fn plain(code: ErrorCode, field: &'static str, allowed: &'static str, cure: &'static str) -> Self {
        Self { code, field, value: None, allowed: Allowed::Text(allowed), cure }
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: ", self.field)?;
        if let Some(value) = self.value {
            let unit = if let Allowed::Range { unit, .. } = self.allowed { unit } else { "" };
            f.write_str("got ")?;
            write_number(f, value, unit)?;
            f.write_str(", ")?;
        } else {
            write!(f, "{}, ", self.code.describe())?;
        }
        write!(f, "{} {}", self.code.before_allowed(), self.allowed)?;
        if self.cure.is_empty() { Ok(()) } else { write!(f, "; {}", self.cure) }
    }
}

impl core::error::Error for Fault {}

/// One fault of a whole document, with the path to it.
#[derive(Clone, Debug, PartialEq)]
pub struct Detail {
    /// What is wrong.
    pub code: ErrorCode,
    /// Path of the field, such as `body.legs[0].length_mm`; empty for the whole input.
    pub path: String,
    /// The value given, as text; empty where nothing was given.
    pub given: String,
    /// What is allowed, as text.
    pub allowed: String,
    /// What to change, as text; may be empty.
    pub cure: String,
}

impl From<Fault> for Detail {
    fn from(fault: Fault) -> Self {
        let unit = if let Allowed::Range { unit, .. } = fault.allowed { unit } else { "" };
        let given = fault.value.map(|value| Number(value, unit).to_string()).unwrap_or_default();
        Self {
            code: fault.code,
            path: fault.field.to_owned(),
            given,
            allowed: fault.allowed.to_string(),
            cure: fault.cure.to_owned(),
        }
    }
}

impl Detail {
    /// A contradiction at a path, in words.
    pub(crate) fn inconsistent(path: &str, given: String, allowed: &str, cure: &str) -> Self {
        Self {
            code: ErrorCode::Inconsistent,
            path: path.to_owned(),
            given,
            allowed: allowed.to_owned(),
            cure: cure.to_owned(),
        }
    }

    /// The same words under another code.
    #[must_use]
    pub(crate) fn with_code(self, code: ErrorCode) -> Self {
        Self { code, ..self }
    }

    /// The same fault seen from one level further out: `prefix.path`.
    #[must_use]
    pub fn within(mut self, prefix: &str) -> Self {
        self.path = match (prefix.is_empty(), self.path.is_empty()) {
            (true, _) => self.path,
            (false, true) => prefix.to_owned(),
            (false, false) if self.path.starts_with('[') => format!("{prefix}{}", self.path),
            (false, false) => format!("{prefix}.{}", self.path),
        };
        self
    }
}

impl fmt::Display for Detail {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(if self.path.is_empty() { "input" } else { &self.path })?;
        if self.given.is_empty() {
            write!(f, ": {}", self.code.describe())?;
        } else {
            write!(f, ": got {}", self.given)?;
        }
        if !self.allowed.is_empty() {
            write!(f, ", {} {}", self.code.before_allowed(), self.allowed)?;
        }
        if self.cure.is_empty() { Ok(()) } else { write!(f, "; {}", self.cure) }
    }
}

/// All faults of an input, in the order in which its fields stand.
///
/// One word wide; never empty.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("{}", .0.iter().map(ToString::to_string).collect::<Vec<_>>().join("\n"))]
pub struct Error(#[allow(clippy::box_collection, reason = "keeps a Result one word wide")] Box<Vec<Detail>>);

/// Result of a calculation over a whole document.
pub type Result<T> = core::result::Result<T, Error>;

impl Error {
    /// An error of one fault.
    #[cold]
    pub fn one(detail: Detail) -> Self {
        Self(Box::new(vec![detail]))
    }

    /// An error of all the faults, or nothing when there are none.
    ///
    /// # Errors
    /// The faults, if there are any.
    pub fn unless_empty(details: Vec<Detail>) -> Result<()> {
        if details.is_empty() { Ok(()) } else { Err(Self(Box::new(details))) }
    }

    /// Every fault.
    pub fn details(&self) -> &[Detail] {
        &self.0
    }

    /// Code of the first fault.
    pub fn code(&self) -> ErrorCode {
        self.0.first().map_or(ErrorCode::Panic, |detail| detail.code)
    }

    /// Path of the first fault.
    pub fn field(&self) -> &str {
        self.0.first().map_or("", |detail| detail.path.as_str())
    }

    /// The same faults seen from one level further out.
    #[must_use]
    pub fn within(self, prefix: &str) -> Self {
        Self(Box::new(self.0.into_iter().map(|detail| detail.within(prefix)).collect()))
    }
}

impl From<Fault> for Error {
    fn from(fault: Fault) -> Self {
        Self::one(fault.into())
    }
}

/// The words of a name in alphabetical order.
fn in_order(name: &str) -> String {
    let lower = name.to_lowercase();
    let mut words: Vec<_> = lower.split(|c: char| c == ',' || c.is_whitespace()).filter(|w| !w.is_empty()).collect();
    words.sort_unstable();
    words.join(" ")
}

/// The known name closest to `name`, if one is close enough to be a slip of the pen.
pub fn closest<'a>(name: &str, known: impl Iterator<Item = &'a str>) -> Option<&'a str> {
    let (plain, sorted) = (name.to_lowercase(), in_order(name));
    // Words may stand the other way round: "white ash" for "Ash, white".
    let rate = |candidate: &str| {
        let as_it_is = strsim::jaro_winkler(&plain, &candidate.to_lowercase());
        as_it_is.max(strsim::jaro_winkler(&sorted, &in_order(candidate)))
    };
    let rated = known.map(|candidate| (rate(candidate), candidate));
    let best = rated.max_by(|a, b| a.0.total_cmp(&b.0))?;
    // Below this, a suggestion is more often wrong than right.
    if best.0 >= 0.75 { Some(best.1) } else { None }
}

/// A name that is none of the known ones, with the nearest of those.
#[cold]
pub(crate) fn unknown_name<'a>(path: &str, name: &str, known: impl Iterator<Item = &'a str>) -> Error {
    let known: Vec<&str> = known.collect();
    Error::one(Detail {
        code: ErrorCode::UnknownName,
        path: path.to_owned(),
        given: format!("\"{name}\""),
        allowed: known.join(", "),
        cure: closest(name, known.into_iter()).map(|near| format!("did you mean {near}?")).unwrap_or_default(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_code_has_its_own_number_name_and_text() {
        let mut numbers: Vec<u32> = ErrorCode::ALL.iter().map(|code| *code as u32).collect();
        assert!(numbers.is_sorted(), "codes are listed by number");
        numbers.dedup();
        assert_eq!(numbers.len(), ErrorCode::ALL.len());
        for code in ErrorCode::ALL {
            assert_eq!(ErrorCode::from_number(*code as u32), Some(*code));
            assert!(!code.name().is_empty() && !code.describe().is_empty());
        }
        assert_eq!(ErrorCode::from_number(0), None);
    }

    #[test]
    fn a_fault_prints_field_value_range_and_cure() {
        let allowed = Allowed::Range { low: 3.0, high: 60.0, unit: "mm" };
        let fault = Fault::number(ErrorCode::OutOfRange, "thickness_mm", 0.0, allowed, "leave the face open instead");
        let text = "thickness_mm: got 0 mm, allowed 3 mm to 60 mm; leave the face open instead";
        assert_eq!(fault.to_string(), text);
        assert_eq!(Error::from(fault).to_string(), text);
        assert_eq!(Error::from(fault).within("legs[0]").field(), "legs[0].thickness_mm");
    }

    #[test]
    fn a_number_of_hundreds_of_digits_is_printed_short() {
        let allowed = Allowed::Range { low: 10.0, high: 20000.0, unit: "mm" };
        let fault = Fault::number(ErrorCode::OutOfRange, "length_mm", 1e300, allowed, "");
        let text = "length_mm: got 1e300 mm, allowed 10 mm to 20000 mm";
        assert_eq!((fault.to_string().as_str(), Error::from(fault).to_string().as_str()), (text, text));
    }

    #[test]
    fn a_slip_is_found_whichever_way_round_the_words_stand() {
        let known = ["Ash, white", "Ash, European", "Oak, white", "Walnut, black"];
        assert_eq!(closest("whit ash", known.into_iter()), Some("Ash, white"));
        assert_eq!(closest("Blak walnut", known.into_iter()), Some("Walnut, black"));
        assert_eq!(closest("titanium", known.into_iter()), None);
    }

    #[test]
    fn an_error_is_one_word() {
        assert_eq!(size_of::<Error>(), size_of::<usize>());
    }
}
