//! The one table of admissible ranges.
//!
//! Checks, messages, the schemas' `minimum` and `maximum`, the limits page and the random inputs of the tests all read
//! it. A range says what the equations hold for and what a workshop can mean, not what is wise to build.

use crate::error::{Allowed, Detail, ErrorCode, Fault};

/// An admissible range for one kind of quantity.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limit {
    /// What is limited, in words.
    pub name: &'static str,
    /// Unit symbol; empty for a plain number.
    pub unit: &'static str,
    /// Smallest value allowed.
    pub low: f64,
    /// Largest value allowed.
    pub high: f64,
    /// What to change when a value is refused; may be empty.
    pub cure: &'static str,
}

impl Limit {
    /// Whether a value lies within the range; without a branch. Not a number does not.
    #[inline(always)]
    pub const fn admits(&self, value: f64) -> bool {
        (value >= self.low) & (value <= self.high)
    }

    /// Accepts a value within the range.
    ///
    /// # Errors
    /// `not_finite`, `out_of_range`.
    #[inline]
    pub const fn check(&self, field: &'static str, value: f64) -> Result<(), Fault> {
        if self.admits(value) { Ok(()) } else { Err(self.refuse(field, value)) }
    }

    #[cold]
    const fn refuse(&self, field: &'static str, value: f64) -> Fault {
        let code = if value.is_finite() { ErrorCode::OutOfRange } else { ErrorCode::NotFinite };
        let allowed = Allowed::Range { low: self.low, high: self.high, unit: self.unit };
        Fault::number(code, field, value, allowed, self.cure)
    }
}

macro_rules! limits {
    ($($name:ident: $words:literal, $unit:literal, $low:literal, $high:literal, $cure:literal;)+) => {
        $(#[doc = concat!("Range of ", $words, ".")]
        pub const $name: Limit = Limit { name: $words, unit: $unit, low: $low, high: $high, cure: $cure };)+
        /// Every row of the table.
        pub const ALL: &[Limit] = &[$($name,)+];
    };
}

limits! {
    BOARD_THICKNESS: "a board's thickness", "mm", 1.0, 150.0, "leave the face open instead of giving it no thickness";
    BODY_LENGTH: "a body's length", "mm", 10.0, 20_000.0, "join several legs for a longer run";
    BODY_SIZE: "a body's height or depth", "mm", 10.0, 2_000.0, "";
    LENGTH: "a length", "mm", 0.0, 100_000.0, "";
    SIGNED_LENGTH: "a distance that may point either way", "mm", -100_000.0, 100_000.0, "";
    CORNER_ANGLE: "a corner angle between two faces, inside the body", "deg", 10.0, 350.0, "90 is a square corner";
    END_ANGLE: "the plan angle between the front and an end", "deg", 30.0, 150.0, "90 is a square end";
    SLOPE: "a slope from horizontal", "deg", 0.0, 90.0, "";
    POSITIVE_SLOPE: "a slope from horizontal above nothing", "deg", 0.1, 90.0, "";
    BEVEL: "a signed edge bevel from square", "deg", -80.0, 80.0, "";
    SAW_TILT: "the largest tilt of a saw", "deg", 30.0, 60.0, "45 is usual";
    DIRECTION: "a component of a direction", "", -1_000.0, 1_000.0, "only the direction counts; give it length 1";
    CLEAT_BEVEL: "a cleat's bevel from a square cut", "deg", 5.0, 75.0, "45 is usual, 30 needs less lift";
    ANGLE_TO_GRAIN: "an angle between load and grain", "deg", 0.0, 90.0, "";
    KERF: "a saw kerf", "mm", 0.0, 12.0, "";
    SMALL_LENGTH: "a gap, overlap or allowance", "mm", 0.0, 500.0, "";
    FORCE: "a force", "N", 0.0, 1.0e7, "";
    SIGNED_FORCE: "a force that may point either way", "N", -1.0e7, 1.0e7, "";
    MOMENT: "a moment", "N*mm", 0.0, 1.0e12, "";
    SIGNED_MOMENT: "a moment that may turn either way", "N*mm", -1.0e12, 1.0e12, "";
    MASS: "a mass", "kg", 0.0, 1.0e6, "";
    FRICTION: "a coefficient of friction", "", 0.0, 1.5, "0 leaves friction out";
    COUNT: "a number of pieces", "", 1.0, 10_000.0, "";
    SPECIFIC_GRAVITY: "a specific gravity", "", 0.05, 1.5, "";
    MOISTURE: "a moisture content", "%", 0.0, 30.0, "above about 30 % (fibre saturation) the handbook's equations end";
    FIBRE_SATURATION: "a fibre saturation point", "%", 20.0, 35.0, "30 in general use; 22 for western redcedar and redwood";
    VOLUMETRIC_SHRINKAGE: "a shrinkage of the volume from green to ovendry", "%", 0.0, 40.0, "leave it out to have it estimated";
    FASTENER_DIAMETER: "a fastener's diameter", "mm", 1.0, 25.4, "the equations hold up to 1 in";
    POCKET_ANGLE: "an angle of a pocket hole to the board's face", "deg", 5.0, 45.0, "15 is usual";
    FASTENER_LENGTH: "a fastener's length", "mm", 5.0, 1_000.0, "";
    HEAD_DIAMETER: "a fastener head's diameter", "mm", 1.0, 100.0, "";
    BEARING_LENGTH: "a bearing or holding length in a member", "mm", 0.1, 1_000.0, "a member that the dowel does not bear on is no member";
    CONNECTION_CAPACITY: "an adjusted capacity", "N", 0.001, 1.0e7, "a fastener without capacity cannot share a load";
    ROW_COUNT: "a number of fasteners in a row", "", 1.0, 1_000.0, "";
    UNEVENNESS: "a largest share over the even share", "", 1.0, 100.0, "1 for a load through the middle";
    SLIP_MODULUS: "a load/slip modulus of one fastener", "N/mm", 1.0, 1.0e6, "";
    ELASTIC_MODULUS: "a modulus of elasticity", "MPa", 100.0, 300_000.0, "wood along the grain about 10 000, steel 200 000";
    CROSS_SECTION: "an area of a cross-section", "mm2", 1.0, 1.0e7, "";
    STRESS: "a strength or bearing strength", "MPa", 0.01, 2_000.0, "";
    AREA: "an area", "m2", 0.0, 1.0e6, "";
    SPREAD_RATE: "a spread rate", "m2/L", 0.1, 100.0, "";
    COATS: "a number of coats", "", 0.0, 50.0, "";
    FRACTION: "a share", "", 0.0, 1.0, "";
    POSITIVE_FRACTION: "a share above nothing", "", 0.01, 1.0, "";
    PERCENT: "a percentage", "%", 0.0, 100.0, "";
    POSITIVE_PERCENT: "a percentage above nothing", "%", 0.1, 100.0, "";
    FILM: "a film thickness", "um", 0.0, 5_000.0, "";
    POSITIVE_FILM: "a film thickness above nothing", "um", 0.1, 5_000.0, "";
    VOLUME: "a volume", "L", 0.0, 1.0e6, "";
    CAN_SIZE: "the content of a can", "L", 0.01, 1_000.0, "";
    DECIMALS: "a number of digits after the point", "", 0.0, 6.0, "6 digits of a metre are a thousandth of a millimetre";
    INCH_DENOMINATOR: "a number of marks to the inch", "", 1.0, 128.0, "16 is the tape, 32 and 64 are rules";
    LEVER: "a lever arm", "mm", 1.0, 10_000.0, "a couple needs an arm";
    SIGNED_LEVER: "a lever arm that may point either way", "mm", -10_000.0, 10_000.0, "";
    STUD: "a side of a stud", "mm", 10.0, 1_000.0, "a dressed 2x4 has 38.1 mm by 88.9 mm";
    SPACING: "a spacing between centres", "mm", 10.0, 10_000.0, "";
    PERSONS: "a number of lifters", "", 1.0, 12.0, "";
    LIFT_DISTANCE: "a distance of the lifting equation", "mm", 0.0, 5_000.0, "";
    TURN: "an angle of turning", "deg", 0.0, 180.0, "";
    LIFT_RATE: "a number of lifts a minute", "/min", 0.0, 60.0, "";
    SAME_VOLUME: "a difference of volume that does not matter", "L", 0.0, 10.0, "";
    PARTS: "parts by volume", "", 0.0, 1_000.0, "";
    POSITIVE_PARTS: "parts by volume, above nothing", "", 0.01, 1_000.0, "";
    LOSS: "a share that is lost", "", 0.0, 0.95, "";
    ALLOWANCE: "an allowance on top, as a share", "", 0.0, 5.0, "0.1 adds ten parts in a hundred";
    GLUE_SPREAD: "a glue's spread", "g/m2", 1.0, 5_000.0, "";
    LIQUID_DENSITY: "a liquid's density", "kg/L", 0.5, 3.0, "water is 1";
    WOOD_DENSITY: "a density of wood or a wood panel", "kg/m3", 100.0, 1_500.0, "";
    YIELD_MOMENT: "a fastener's yield moment", "N*mm", 1.0, 1.0e8, "";
    PARTIAL_FACTOR: "a partial factor for a material", "", 1.0, 2.0, "1.3 is recommended for connections";
    PLATE_THICKNESS: "a steel plate's thickness", "mm", 0.1, 100.0, "";
    WASHER_AREA: "a washer's bearing area", "mm2", 1.0, 1.0e6, "";
    FASTENER_SPACING: "a spacing between fasteners", "mm", 1.0, 10_000.0, "";
    EFFECTIVE_COUNT: "a number of fasteners, reduced for their row", "", 0.1, 10_000.0, "";
    GRIT: "a P grade of abrasive", "", 12.0, 2_500.0, "";
    WOOD_TEMPERATURE: "the temperature of wood and the air at it", "°C", -20.0, 132.2, "the sorption table reaches from -1.1 to 132.2 C";
    AIR_TEMPERATURE: "an air temperature", "°C", -60.0, 100.0, "";
    DEW_POINT: "a dew point", "°C", -60.0, 60.0, "";
    ROOM_TEMPERATURE: "a room's temperature", "°C", -20.0, 60.0, "";
    WOOD_HUMIDITY: "a relative humidity that wood is in balance with", "%", 0.0, 95.0, "above 95 % no table supports the sorption equation";
    VAPOUR_GAIN: "a gain of vapour pressure indoors", "Pa", 0.0, 3_000.0, "0 for a room without people, plants, cooking or a humidifier";
    RING_ANGLE: "an angle between growth rings and face", "deg", 0.0, 90.0, "0 is flat sawn, 90 is quarter sawn";
    MOVEMENT_COEFFICIENT: "a movement coefficient, share of the size per percent of moisture", "", 0.0, 0.01, "0.0037 is 0.37 % per percent";
    LINEAR_SHRINKAGE: "a shrinkage from green to ovendry", "%", 0.0, 20.0, "";
    FRAME_CORNER: "the corner of a flat frame", "deg", 10.0, 170.0, "90 is a square corner";
    STRAIN: "a share by which a size changes", "", -0.3, 0.3, "1 % is 0.01; swelling is positive";
    MODULUS: "a modulus of elasticity", "MPa", 1.0, 100_000.0, "";
    ANGLE_ERROR: "an angular error", "deg", -10.0, 10.0, "what is further off is another cut, not an error";
    ANGLE_SPREAD: "a scatter of an angle", "deg", 0.0, 5.0, "";
    SIZE_ERROR: "an error of a size", "mm", -50.0, 50.0, "";
    SIZE_SPREAD: "a scatter of a size", "mm", 0.0, 20.0, "";
    PANEL_WIDTH: "a panel's width", "mm", 1.0, 5_000.0, "";
    GENERAL_SIZE: "a size of the general tolerances", "mm", 0.5, 4_000.0, "the tables end there";
    WANTED_SHARE: "a share that is wanted", "", 0.51, 0.9999, "0.95 asks for 19 seams out of 20";
    SIDES: "a number of sides of a ring", "", 3.0, 1_000.0, "";
    SAMPLES: "a number of samples", "", 100.0, 1.0e8, "";
    SEED: "a seed", "", 0.0, 4_294_967_295.0, "";
    THREADS: "a number of threads", "", 1.0, 64.0, "";
    SECOND_MOMENT: "a second moment of area", "mm4", 1.0, 1.0e13, "";
    SUPPORT_STIFFNESS: "a stiffness of a support", "N/mm", 0.1, 1.0e9, "leave it out for a support that does not yield";
    SIGNED_LINE_LOAD: "a load per length that may point either way", "N/mm", -1.0e6, 1.0e6, "";
    SECTION_SIZE: "a size of a part of a cross-section", "mm", 0.001, 10_000.0, "";
    DIFFUSION: "a diffusion coefficient of moisture in wood", "mm2/day", 0.01, 1_000.0, "1e-10 m2/s is 8.64 mm2/day";
    SURFACE_EMISSION: "a passage of moisture through a surface", "mm/day", 1.0e-4, 1.0e4, "leave it out for bare wood in moving air";
    DAYS: "a number of days", "day", 0.0, 100_000.0, "";
    DAYS_ABOVE_NONE: "a time constant", "day", 0.01, 10_000.0, "";
    MOISTURE_DIFFERENCE: "a difference of moisture contents", "%", 0.1, 10.0, "2 is what extension services advise";
    CREEP: "a factor for long-term deflection", "", 1.0, 5.0, "1.5 for dry seasoned lumber (NDS 3.5.2)";
    WOOD_VOLUME: "a volume of wood", "m3", 0.0, 10_000.0, "";
    PRICE: "a price for one unit, in any currency", "", 0.0, 1.0e9, "";
    UNDERSIZE: "a share of pieces that may end undersize", "%", 0.1, 50.0, "5 lets one piece in twenty end thin";
    NOMINAL_SIZE: "a nominal size of softwood", "mm", 9.5, 610.0, "a nominal 2 in is 50.8 mm";
    CLAMP_FORCE: "a force of one clamp", "N", 1.0, 1.0e6, "a spring clamp about 150 N, a heavy bar clamp 30 000 N";
    VOC: "a content of volatile organic compounds", "g/L", 0.0, 2_000.0, "the label or the safety data sheet states it";
    DISC_AREA: "an area that a disc lasts for", "m2", 0.01, 1_000.0, "";
    WORK_HOURS: "a number of hands-on hours", "h", 0.0, 10_000.0, "";
    WAIT_HOURS: "a number of hours by the clock", "h", 0.0, 100_000.0, "a day has 24";
    DAY_HOURS: "an hour of the day, or hours of a day", "h", 0.0, 24.0, "";
    MAKERS: "a number of people", "", 1.0, 100.0, "";
    QUANTITY: "a quantity to buy", "", 0.0, 1.0e9, "";
    PACKAGE: "a quantity in which something is sold", "", 0.001, 1.0e9, "leave it out where any quantity is sold";
    SURFACE_MEASURE: "a surface measure", "ft2", 0.0, 1_000.0, "width in inches times whole feet of length over 12";
    RUN_CORNER: "an outside corner of a run of board", "deg", 30.0, 170.0, "90 is a square corner";
    STOCK_SIZE: "a size of stock or of a part that is cut from it", "mm", 1.0, 100_000.0, "";
    STOCK_PRICE: "a price of one piece of stock", "", 0.0, 1.0e6, "";
    WORTH: "a worth of a part", "", 0.0, 1.0e9, "";
    SEARCH_STEPS: "a budget of search steps, in millions", "", 0.001, 1.0e6, "60 to 100 take about a second";
    BATCH: "a number of equal beams", "", 1.0, 100.0, "";
    CUT_STAGES: "a number of stages of cuts", "", 1.0, 20.0, "2 or 3 is usual";
    GLUE_SHEAR: "a shear on a glue line", "MPa", 0.0, 1_000.0, "";
    GLUE_FILM: "the thickest film that a glue holds in", "mm", 0.001, 5.0, "0.15 is the upper end for stiff glues";
    SAMPLES_OF_PLAN: "a number of samples within a plan", "", 100.0, 1.0e6, "20 000 tell shares to half a percent";
    SECTION_SIDES: "a number of sides of a section", "", 3.0, 24.0, "more sides than this are turned, not built";
    SECTION_COORDINATE: "a coordinate of a corner of a section", "mm", -2_000.0, 2_000.0, "";
    PIECE_LENGTH: "the longest piece or section that a board, a saw or a van takes", "mm", 200.0, 20_000.0, "";
    MEMBER_TWIST: "the twist of a member from end to end", "deg", 0.0, 10.0, "wrap the member in shorter lengths";
    PASSAGE: "the clear width of a passage", "mm", 100.0, 20_000.0, "";
    CUT_WIDTH: "the width or depth of a groove, recess or hole", "mm", 0.1, 2_000.0, "";
    CUT_LENGTH: "the length of a groove or recess", "mm", 0.1, 20_000.0, "";
    EASING: "the radius of an eased arris", "mm", 0.1, 100.0, "";
    VENEER: "the thickness of a face veneer", "mm", 0.1, 10.0, "";
    RABBET: "the depth of a rabbet", "mm", 0.1, 149.0, "";
    PLUMB_ANGLE: "the angle between the underside and an end, seen from the front", "deg", 45.0, 135.0, "90 is plumb";
    BACK_TILT: "a saw's tilt past square to the other side", "deg", 0.0, 60.0, "0 for a saw that tilts one way";
    BLADE_DIAMETER: "a saw blade's diameter", "mm", 50.0, 1_000.0, "254 and 300 are usual";
    GAUGE_RANGE: "the largest angle of a mitre gauge", "deg", 0.0, 89.0, "60 is usual";
    COMPASS: "a direction in a section", "deg", -360.0, 360.0, "0 towards the wall, 90 up";
    SCREW_LEAN: "a screw's lean from square to the face", "deg", 0.0, 80.0, "a pocket screw leans 75";
    MINUTES: "a time of work", "min", 0.1, 10_000.0, "";
    SPREADING: "a speed of spreading glue", "mm/min", 10.0, 100_000.0, "";
    COUNT_FROM_NONE: "a number of pieces, or none", "", 0.0, 10_000.0, "";
    LEAN: "a lean of a wall", "mm/m", -200.0, 200.0, "";
    UNEVENNESS_OFFSET: "an offset of a wall from a straight line", "mm", -200.0, 200.0, "";
    LIFT_TILT: "a greatest tilt while hanging", "deg", 0.0, 30.0, "0 keeps the body level";
    TILT_STEP: "a step between tilts", "deg", 0.5, 5.0, "1 is a start";
    DISTANCE_RATIO: "a distance over the projection allowed there", "", 0.01, 1_000.0, "8 allows one eighth of the distance";
    WITHDRAWAL_PER_LENGTH: "a declared withdrawal value per length of thread", "N/mm", 0.01, 10_000.0, "";
    ULTIMATE_SLIP: "a slip at which a fastener fails", "mm", 0.01, 100.0, "15 mm is where tests of timber joints stop";
    BIMOMENT: "a bimoment", "N*mm2", 0.0, 1.0e15, "";
}

/// A field value that a [`Limit`] can be asked about: a number, or a number that may be left out.
pub trait Limitable {
    /// The number, if one is given.
    fn given(&self) -> Option<f64>;
}

impl Limitable for f64 {
    #[inline(always)]
    fn given(&self) -> Option<f64> {
        Some(*self)
    }
}

impl Limitable for u32 {
    #[inline(always)]
    fn given(&self) -> Option<f64> {
        Some(f64::from(*self))
    }
}

impl Limitable for Option<f64> {
    #[inline(always)]
    fn given(&self) -> Option<f64> {
        *self
    }
}

impl Limitable for Option<u32> {
    #[inline(always)]
    fn given(&self) -> Option<f64> {
        self.map(f64::from)
    }
}

/// An input whose numbers have ranges of the table.
pub trait Limited {
    /// Each limited field with its range, in the order of the struct.
    const FIELDS: &'static [(&'static str, Limit)];

    /// Checks every limited field and stops at the first fault; allocates nothing.
    ///
    /// # Errors
    /// `not_finite`, `out_of_range`.
    fn check_ranges(&self) -> Result<(), Fault>;

    /// Every fault of the limited fields.
    fn range_faults(&self) -> Vec<Fault>;

    /// Whether [`Limited::check_ranges`] finds no fault; without a branch.
    fn is_within_ranges(&self) -> bool;
}

/// Every fault of the limited fields of a part of a document, seen from outside: `path.field`.
pub fn faults_at(path: &str, part: &impl Limited) -> Vec<Detail> {
    part.range_faults().into_iter().map(|fault| Detail::from(fault).within(path)).collect()
}

/// Every fault of a list of numbers that share one range: `path[k]`.
pub fn list_faults(path: &str, values: &[f64], limit: &Limit) -> Vec<Detail> {
    let faults = values.iter().enumerate().filter_map(|(k, value)| Some((k, limit.check("", *value).err()?)));
    faults.map(|(k, fault)| Detail::from(fault).within(&format!("{path}[{k}]"))).collect()
}

/// Ties the fields of an input struct to ranges of the table: `limited!(Input { span_mm: LENGTH, … });`
macro_rules! limited {
    ($type:ty { $($field:ident: $limit:ident),* $(,)? }) => {
        impl $crate::limits::Limited for $type {
            const FIELDS: &'static [(&'static str, $crate::limits::Limit)] =
                &[$((stringify!($field), $crate::limits::$limit),)*];

            #[inline]
            fn check_ranges(&self) -> core::result::Result<(), $crate::error::Fault> {
                $(if let Some(value) = $crate::limits::Limitable::given(&self.$field) {
                    $crate::limits::$limit.check(stringify!($field), value)?;
                })*
                Ok(())
            }

            #[inline(always)]
            fn is_within_ranges(&self) -> bool {
                true $(& match $crate::limits::Limitable::given(&self.$field) {
                    Some(value) => $crate::limits::$limit.admits(value),
                    None => true,
                })*
            }

            fn range_faults(&self) -> Vec<$crate::error::Fault> {
                let mut faults = Vec::new();
                $(if let Some(value) = $crate::limits::Limitable::given(&self.$field) {
                    faults.extend($crate::limits::$limit.check(stringify!($field), value).err());
                })*
                faults
            }
        }
    };
}
pub(crate) use limited;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_range_is_a_range() {
        for limit in ALL {
            assert!(limit.low < limit.high, "{}", limit.name);
            assert!(limit.low.is_finite() && limit.high.is_finite(), "{}", limit.name);
        }
    }

    #[test]
    fn not_a_number_and_infinity_are_refused_by_name() {
        for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            let fault = LENGTH.check("span_mm", value).expect_err("must be refused");
            assert_eq!(fault.code, ErrorCode::NotFinite);
            assert_eq!(fault.field, "span_mm");
        }
        assert_eq!(LENGTH.check("span_mm", -1.0).expect_err("below").code, ErrorCode::OutOfRange);
        assert!(LENGTH.check("span_mm", 5e-324).is_ok());
    }
}
