//! The length of a screw from what it goes through.

use crate::error::{Allowed, ErrorCode, Fault};
use crate::fasten::catalogue::{SoldLengthSeries, sold_lengths_mm};
use crate::limits::{Limited, limited};
use crate::verdict::Outcome;

/// What a screw goes through and into.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<ScrewLengthInput>))]
pub struct ScrewLengthInput {
    /// Nominal diameter, mm.
    pub nominal_diameter_mm: f64,
    /// Thickness of the member under the head, mm.
    pub side_thickness_mm: f64,
    /// Depth by which the head is sunk below the face, mm; by default it is flush.
    #[cfg_attr(feature = "json", serde(default))]
    pub head_recess_mm: f64,
    /// What lies between the members, such as a wall lining, mm; by default nothing.
    #[cfg_attr(feature = "json", serde(default))]
    pub gap_mm: f64,
    /// Thickness of the member that holds the point, mm.
    pub main_thickness_mm: f64,
    /// Penetration wanted in the main member, mm; left out it is 6 D, the least of the standard (NDS 12.1.5.6).
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub penetration_mm: Option<f64>,
    /// Wood to leave between the point and the far face, mm; 3 by default, so that nothing shows (common practice).
    #[cfg_attr(feature = "json", serde(default = "three_mm"))]
    pub least_cover_mm: f64,
    /// Lengths sold; inch by default.
    #[cfg_attr(feature = "json", serde(default = "inch"))]
    pub series: SoldLengthSeries,
}

limited!(ScrewLengthInput {
    nominal_diameter_mm: FASTENER_DIAMETER,
    side_thickness_mm: BEARING_LENGTH,
    head_recess_mm: SMALL_LENGTH,
    gap_mm: SMALL_LENGTH,
    main_thickness_mm: BEARING_LENGTH,
    penetration_mm: BEARING_LENGTH,
    least_cover_mm: SMALL_LENGTH
});

#[cfg(feature = "json")]
pub(super) fn three_mm() -> f64 {
    3.0
}
#[cfg(feature = "json")]
pub(super) fn inch() -> SoldLengthSeries {
    SoldLengthSeries::Inch
}

/// Length of a screw, exact and as sold.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct ScrewLength {
    /// Length that reaches the wanted penetration, mm.
    pub shortest_mm: f64,
    /// Length that leaves the wanted cover, mm.
    pub longest_mm: f64,
    /// Shortest length sold that reaches the penetration, mm.
    pub sold_length_mm: f64,
    /// Penetration of that length, mm.
    pub penetration_mm: f64,
    /// Wood between its point and the far face, mm; negative when it comes out.
    pub cover_mm: f64,
    /// Whether that length leaves the wanted cover; if not, no length sold does both.
    pub outcome: Outcome,
}

/// Length of a screw from the stack of what it goes through, rounded up to lengths sold.
///
/// # Equation
/// ```text
/// shortest = t_s − recess + g + p      longest = t_s − recess + g + t_m − cover      p = 6 D unless given
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | t_s, g, t_m | side member, gap, main member | mm | `side_thickness_mm`, `gap_mm`, `main_thickness_mm` |
/// | D, p | nominal diameter, penetration | mm | `nominal_diameter_mm`, `penetration_mm` |
///
/// # Limits
/// Straight screws, length counted as what enters the wood. What the joint carries is another question: `choose_screw`.
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` for a head sunk through the side member; `not_supported` when even the
/// longest length sold is too short.
///
/// # Source
/// Geometry; least penetration NDS 2018 12.1.5.6; lengths sold and the cover are common practice without a source.
/// Checked by `verification/choose`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::{ScrewLengthInput, SoldLengthSeries, screw_length};
/// // A No. 8 screw through 3/4 in into 3/4 in.
/// let screw = screw_length(&ScrewLengthInput {
///     nominal_diameter_mm: 4.1656,
///     side_thickness_mm: 19.05,
///     head_recess_mm: 0.0,
///     gap_mm: 0.0,
///     main_thickness_mm: 19.05,
///     penetration_mm: Some(12.0),
///     least_cover_mm: 3.0,
///     series: SoldLengthSeries::Inch,
/// })?;
/// assert_eq!(screw.sold_length_mm, 31.75);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn screw_length(input: &ScrewLengthInput) -> Result<ScrewLength, Fault> {
    input.check_ranges()?;
    let under_head_mm = input.side_thickness_mm - input.head_recess_mm;
    if under_head_mm <= 0.0 {
        return Err(Fault::number(
            ErrorCode::Inconsistent,
            "head_recess_mm",
            input.head_recess_mm,
            Allowed::Text("less than the side member's thickness"),
            "sink the head less deep",
        ));
    }
    let before_mm = under_head_mm + input.gap_mm;
    let shortest_mm = before_mm + input.penetration_mm.unwrap_or(6.0 * input.nominal_diameter_mm);
    let longest_mm = before_mm + input.main_thickness_mm - input.least_cover_mm;
    let sold = sold_lengths_mm(input.series).find(|length_mm| *length_mm >= shortest_mm - SAME_MM);
    let Some(sold_length_mm) = sold else {
        return Err(Fault::number(
            ErrorCode::NotSupported,
            "side_thickness_mm",
            shortest_mm,
            Allowed::Text("a screw no longer than the longest length sold (about 300 mm)"),
            "counterbore the side member, or use another joint",
        ));
    };
    Ok(ScrewLength {
        shortest_mm,
        longest_mm,
        sold_length_mm,
        penetration_mm: sold_length_mm - before_mm,
        cover_mm: before_mm + input.main_thickness_mm - sold_length_mm,
        outcome: if sold_length_mm <= longest_mm + SAME_MM { Outcome::Met } else { Outcome::NotMet },
    })
}

/// How far a length may miss: the conversion from inches rounds.
pub(super) const SAME_MM: f64 = 1e-9;

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const SCREW_LENGTH: crate::json::Calculation = crate::json::calculation!(
    screw_length: ScrewLengthInput => ScrewLength, Typed,
    "Length of a screw from the stack of what it goes through, rounded up to lengths sold"
);

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn stack() -> ScrewLengthInput {
        ScrewLengthInput {
            nominal_diameter_mm: 5.0,
            side_thickness_mm: 18.0,
            head_recess_mm: 0.0,
            gap_mm: 12.5,
            main_thickness_mm: 89.0,
            penetration_mm: None,
            least_cover_mm: 3.0,
            series: SoldLengthSeries::Metric,
        }
    }

    #[test]
    fn lengths_are_rounded_up_to_what_is_sold() {
        let found = screw_length(&stack()).unwrap();
        assert_eq!((found.shortest_mm, found.longest_mm, found.sold_length_mm), (60.5, 116.5, 70.0));
        assert_eq!((found.penetration_mm, found.cover_mm, found.outcome), (39.5, 49.5, Outcome::Met));
        let thin = screw_length(&ScrewLengthInput { main_thickness_mm: 40.0, ..stack() }).unwrap();
        assert_eq!((thin.cover_mm, thin.outcome), (0.5, Outcome::NotMet));
    }

    #[test]
    fn what_no_screw_reaches_is_refused() {
        let sunk = ScrewLengthInput { head_recess_mm: 18.0, ..stack() };
        assert_eq!(screw_length(&sunk).expect_err("refused").field, "head_recess_mm");
        let thick = ScrewLengthInput { side_thickness_mm: 290.0, ..stack() };
        assert_eq!(screw_length(&thick).expect_err("refused").code, ErrorCode::NotSupported);
    }

    proptest! {
        #[test]
        fn the_sold_length_reaches_and_adds_up(side in 5.0..80.0_f64, gap in 0.0..30.0_f64, main in 10.0..100.0_f64, d in 2.0..8.0_f64) {
            for series in [SoldLengthSeries::Inch, SoldLengthSeries::Metric] {
                let input = ScrewLengthInput {
                    nominal_diameter_mm: d, side_thickness_mm: side, gap_mm: gap, main_thickness_mm: main, series, ..stack()
                };
                let found = screw_length(&input).unwrap();
                prop_assert!(found.sold_length_mm >= found.shortest_mm - SAME_MM);
                prop_assert!((found.penetration_mm + found.cover_mm - main).abs() < 1e-9);
            }
        }

        #[test]
        fn hostile_numbers_give_a_fault_or_finite_results(bits in prop::array::uniform7(any::<u64>()), which in any::<u8>()) {
            let number = |k: usize, fair: f64| if which >> k & 1 == 0 { f64::from_bits(bits[k]) } else { fair };
            let input = ScrewLengthInput {
                nominal_diameter_mm: number(0, 1.0),
                side_thickness_mm: number(1, 0.1),
                head_recess_mm: number(2, 0.0),
                gap_mm: number(3, 0.0),
                main_thickness_mm: number(4, 1_000.0),
                penetration_mm: Some(number(5, 0.1)),
                least_cover_mm: number(6, 500.0),
                series: SoldLengthSeries::Inch,
            };
            if let Ok(found) = screw_length(&input) {
                prop_assert!(found.sold_length_mm > 0.0 && found.cover_mm.is_finite() && found.longest_mm.is_finite());
            }
        }
    }
}
