//! Litres for an area: net, and with what does not reach the work.

use super::class::{FinishName, SelfHeatingRags};
use super::transfer::ApplicationMethod;
use crate::cite::Evidence;
use crate::error::{ErrorCode, Fault};
use crate::finding::CautionText;
use crate::limits::{Limited, limited};

/// An area to be coated at a known spread rate.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<FinishQuantityInput>))]
pub struct FinishQuantityInput {
    /// Area to be coated, m².
    pub area_m2: f64,
    /// Number of coats.
    pub coats: u32,
    /// Spread rate of one coat on this surface, m² per litre.
    pub spread_m2_per_l: f64,
    /// Share of the coating that lands on the work; 1 unless given, because none is published for brush, roller and
    /// cloth. For a spray give the gun's share.
    #[cfg_attr(feature = "json", serde(default = "all_lands"))]
    pub transfer_efficiency: f64,
    /// Share lost otherwise, in cans, tools and cloths; 0 unless given, because no figure is published.
    #[cfg_attr(feature = "json", serde(default))]
    pub other_loss: f64,
}

limited!(FinishQuantityInput {
    area_m2: AREA,
    coats: COATS,
    spread_m2_per_l: SPREAD_RATE,
    transfer_efficiency: POSITIVE_FRACTION,
    other_loss: LOSS,
});

#[cfg(feature = "json")]
fn all_lands() -> f64 {
    1.0
}

/// Litres to have in hand.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct FinishQuantity {
    /// Volume on the work for one coat, L.
    pub net_l_per_coat: f64,
    /// Volume on the work for all coats, L.
    pub net_l: f64,
    /// Volume used for each litre on the work.
    pub use_factor: f64,
    /// Volume needed for one coat, losses included, L.
    pub needed_l_per_coat: f64,
    /// Volume needed for all coats, losses included, L; before it is rounded up to whole cans.
    pub needed_l: f64,
}

/// Litres of finish for an area, net and with losses.
///
/// # Equation
/// ```text
/// net = A n / spread        needed = net / (TE (1 − loss))
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | A | area | m² | `area_m2` |
/// | n | number of coats | – | `coats` |
/// | spread | spread rate of one coat | m²/L | `spread_m2_per_l` |
/// | TE | share that lands on the work | – | `transfer_efficiency` |
/// | loss | share lost otherwise | – | `other_loss` |
///
/// # Limits
/// One spread rate for all coats; on wood the first coat usually takes more. Spraying and oily rags: ventilate, keep
/// away from flame, and spread rags out singly or keep them under water.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// Film arithmetic (area × coats / practical spread rate); checked by `verification/finish`.
///
/// # Examples
/// ```
/// use beamcraft_core::finish::{finish_quantity, FinishQuantityInput};
/// let litres = finish_quantity(&FinishQuantityInput {
///     area_m2: 1.0839, coats: 3, spread_m2_per_l: 10.0, transfer_efficiency: 1.0, other_loss: 0.1,
/// })?;
/// assert!((litres.net_l - 0.3252).abs() < 1e-4 && (litres.needed_l - 0.3613).abs() < 1e-4);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn finish_quantity(input: &FinishQuantityInput) -> Result<FinishQuantity, Fault> {
    input.check_ranges()?;
    let coats = f64::from(input.coats);
    let net_l_per_coat = input.area_m2 / input.spread_m2_per_l;
    let use_factor = 1.0 / (input.transfer_efficiency * (1.0 - input.other_loss));
    let needed_l_per_coat = net_l_per_coat * use_factor;
    Ok(FinishQuantity {
        net_l_per_coat,
        net_l: coats * net_l_per_coat,
        use_factor,
        needed_l_per_coat,
        needed_l: coats * needed_l_per_coat,
    })
}

/// An area to be coated with a class of finish.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<FinishClassQuantityInput>))]
pub struct FinishClassQuantityInput {
    /// Class of finish.
    pub finish: FinishName,
    /// How it is put on.
    pub method: ApplicationMethod,
    /// Area to be coated, m².
    pub area_m2: f64,
    /// Number of coats.
    pub coats: u32,
    /// Spread rate of one coat, m² per litre, from the maker or a trial; needed where none is published for the class.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub spread_m2_per_l: Option<f64>,
    /// Share of the coating that lands on the work, from a trial; the published share of the method unless given.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub transfer_efficiency: Option<f64>,
    /// Share lost otherwise, in cans, tools and cloths; 0 unless given, because no figure is published.
    #[cfg_attr(feature = "json", serde(default))]
    pub other_loss: f64,
}

limited!(FinishClassQuantityInput {
    area_m2: AREA,
    coats: COATS,
    spread_m2_per_l: SPREAD_RATE,
    transfer_efficiency: POSITIVE_FRACTION,
    other_loss: LOSS,
});

/// Where a figure of the working was taken from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum FigureOrigin {
    /// Given by the user.
    Given,
    /// Published, and read in the source.
    Published,
    /// Neither given nor published: left out of the reckoning.
    LeftOut,
}

/// Litres to have in hand, between the ends of the published figures.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct FinishClassQuantity {
    /// Where the spread rate was taken from.
    pub spread_origin: FigureOrigin,
    /// Lower spread rate reckoned with, m² per litre.
    pub spread_low_m2_per_l: f64,
    /// Upper spread rate reckoned with, m² per litre.
    pub spread_high_m2_per_l: f64,
    /// Where the share that lands on the work was taken from; left out means that nothing is taken off.
    pub transfer_origin: FigureOrigin,
    /// Lower share that lands on the work reckoned with.
    pub transfer_low_share: f64,
    /// Upper share that lands on the work reckoned with.
    pub transfer_high_share: f64,
    /// Litres at the favourable ends.
    pub least: FinishQuantity,
    /// Litres at the unfavourable ends: the ones to buy for.
    pub most: FinishQuantity,
    /// Whether rags with the finish heat up by themselves.
    pub self_heating_rags: SelfHeatingRags,
    /// Cautions that travel with the finish.
    pub cautions: Vec<CautionText>,
    /// What to know about the share that lands on the work.
    pub transfer_remark: &'static str,
}

/// Litres of a class of finish for an area, from published figures where there are any and the user's own where not.
///
/// # Equation
/// As [`finish_quantity`], once with the favourable and once with the unfavourable ends of spread rate and transfer.
///
/// # Limits
/// Published spread rates are for smooth wood. A figure that is only recalled is not reckoned with: the spread rate
/// must then be given.
///
/// # Errors
/// `out_of_range`, `not_finite`; `no_published_value` when the spread rate is neither given nor published for the class.
///
/// # Source
/// Film arithmetic; figures as in [`find_finish_class`](super::find_finish_class) and
/// [`find_transfer_efficiency`](super::find_transfer_efficiency). Checked by `verification/finish`.
///
/// # Examples
/// ```
/// use beamcraft_core::error::ErrorCode;
/// use beamcraft_core::finish::{finish_class_quantity, ApplicationMethod, FinishClassQuantityInput, FinishName};
/// let input = FinishClassQuantityInput {
///     finish: FinishName::OilStain, method: ApplicationMethod::Wipe, area_m2: 4.9, coats: 1,
///     spread_m2_per_l: None, transfer_efficiency: None, other_loss: 0.0,
/// };
/// assert_eq!(finish_class_quantity(&input)?.most.needed_l, 1.0);
/// let unknown = FinishClassQuantityInput { finish: FinishName::HardwaxOil, ..input };
/// assert_eq!(finish_class_quantity(&unknown).unwrap_err().code, ErrorCode::NoPublishedValue);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn finish_class_quantity(input: &FinishClassQuantityInput) -> Result<FinishClassQuantity, Fault> {
    input.check_ranges()?;
    let class = input.finish.class();
    let published = class.spread_m2_per_l.filter(|range| range.evidence == Evidence::Seen);
    let (spread_origin, spread_low_m2_per_l, spread_high_m2_per_l) = match (input.spread_m2_per_l, published) {
        (Some(given), _) => (FigureOrigin::Given, given, given),
        (None, Some(range)) => (FigureOrigin::Published, range.low, range.high),
        (None, None) => return Err(NO_SPREAD),
    };
    let by_method = input.method.transfer_efficiency();
    let (transfer_origin, transfer_low_share, transfer_high_share) =
        match (input.transfer_efficiency, by_method.low_share, by_method.high_share) {
            (Some(given), _, _) => (FigureOrigin::Given, given, given),
            (None, Some(low), Some(high)) => (FigureOrigin::Published, low, high),
            _ => (FigureOrigin::LeftOut, 1.0, 1.0),
        };
    let litres = |spread_m2_per_l, transfer_efficiency| {
        finish_quantity(&FinishQuantityInput {
            area_m2: input.area_m2,
            coats: input.coats,
            spread_m2_per_l,
            transfer_efficiency,
            other_loss: input.other_loss,
        })
    };
    Ok(FinishClassQuantity {
        spread_origin,
        spread_low_m2_per_l,
        spread_high_m2_per_l,
        transfer_origin,
        transfer_low_share,
        transfer_high_share,
        least: litres(spread_high_m2_per_l, transfer_high_share)?,
        most: litres(spread_low_m2_per_l, transfer_low_share)?,
        self_heating_rags: class.self_heating_rags,
        cautions: class.self_heating_rags.caution_texts(),
        transfer_remark: by_method.remark,
    })
}

const NO_SPREAD: Fault = Fault::plain(
    ErrorCode::NoPublishedValue,
    "spread_m2_per_l",
    "a spread rate from the maker or a trial",
    "give spread_m2_per_l; no confirmed figure is published for this class",
);

/// Registry row.
#[cfg(feature = "json")]
pub(super) const FINISH_QUANTITY: crate::json::Calculation = crate::json::calculation!(
    finish_quantity: FinishQuantityInput => FinishQuantity, Typed,
    "Litres of finish for an area, net and with losses, for each coat and in all"
);

/// Registry row.
#[cfg(feature = "json")]
pub(super) const FINISH_CLASS_QUANTITY: crate::json::Calculation = crate::json::calculation!(
    finish_class_quantity: FinishClassQuantityInput => FinishClassQuantity, Document,
    "Litres of a class of finish for an area, from published figures or the user's own"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::finish::hostile;
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    const BRUSHED: FinishClassQuantityInput = FinishClassQuantityInput {
        finish: FinishName::OilPolyurethane,
        method: ApplicationMethod::Brush,
        area_m2: 1.5,
        coats: 3,
        spread_m2_per_l: None,
        transfer_efficiency: None,
        other_loss: 0.0,
    };

    #[test]
    fn a_spread_that_is_only_recalled_must_be_given() {
        for finish in [FinishName::SpiritDye, FinishName::Shellac, FinishName::DryingOil, FinishName::ConversionVarnish]
        {
            let asked = FinishClassQuantityInput { finish, ..BRUSHED };
            let fault = finish_class_quantity(&asked).expect_err("refused");
            assert_eq!((fault.code, fault.field), (ErrorCode::NoPublishedValue, "spread_m2_per_l"));
            let told = FinishClassQuantityInput { spread_m2_per_l: Some(8.0), ..asked };
            assert_eq!(finish_class_quantity(&told).unwrap().spread_origin, FigureOrigin::Given);
        }
    }

    #[test]
    fn what_is_left_out_says_so() {
        let brushed = finish_class_quantity(&BRUSHED).unwrap();
        assert_eq!(brushed.transfer_origin, FigureOrigin::LeftOut);
        assert_eq!(brushed.most.net_l, brushed.most.needed_l);
        let sprayed = FinishClassQuantityInput { method: ApplicationMethod::HvlpSpray, ..BRUSHED };
        let sprayed = finish_class_quantity(&sprayed).unwrap();
        assert_eq!((sprayed.transfer_low_share, sprayed.transfer_high_share), (0.65, 0.80));
        assert_eq!(sprayed.transfer_origin, FigureOrigin::Published);
        assert!(sprayed.least.needed_l < sprayed.most.needed_l);
    }

    #[test]
    fn no_coats_take_nothing_and_a_total_loss_is_refused() {
        let none = FinishQuantityInput {
            area_m2: 4.0,
            coats: 0,
            spread_m2_per_l: 10.0,
            transfer_efficiency: 1.0,
            other_loss: 0.0,
        };
        assert_eq!(finish_quantity(&none).unwrap().needed_l, 0.0);
        let lost = FinishQuantityInput { other_loss: 1.0, ..none };
        assert_eq!(finish_quantity(&lost).expect_err("refused").field, "other_loss");
    }

    proptest! {
        #[test]
        fn litres_are_linear_in_area_and_coats_and_inverse_in_spread(
            area_m2 in 0.0..1_000.0_f64, coats in 0..20_u32, spread in 0.1..50.0_f64, factor in 0.1..2.0_f64,
            transfer_efficiency in 0.01..1.0_f64, other_loss in 0.0..0.95_f64,
        ) {
            let litres = |area_m2, coats, spread_m2_per_l| {
                let input =
                    FinishQuantityInput { area_m2, coats, spread_m2_per_l, transfer_efficiency, other_loss };
                finish_quantity(&input).unwrap()
            };
            let base = litres(area_m2, coats, spread);
            assert_relative_eq!(litres(area_m2 * factor, coats, spread).needed_l, factor * base.needed_l, max_relative = 1e-12);
            assert_relative_eq!(litres(area_m2, 2 * coats, spread).needed_l, 2.0 * base.needed_l, max_relative = 1e-12);
            assert_relative_eq!(litres(area_m2, coats, 2.0 * spread).net_l, base.net_l / 2.0, max_relative = 1e-12);
            prop_assert!(base.needed_l >= base.net_l && base.use_factor >= 1.0);
        }

        #[test]
        fn any_numbers_give_finite_litres_or_a_fault(
            a in hostile::number(), b in hostile::number(), c in hostile::number(), d in hostile::number(),
            coats in 0..60_u32, given: bool,
        ) {
            let input = FinishQuantityInput {
                area_m2: a,
                coats,
                spread_m2_per_l: b,
                transfer_efficiency: c,
                other_loss: d,
            };
            if let Ok(litres) = finish_quantity(&input) {
                prop_assert!(litres.needed_l.is_finite() && litres.use_factor.is_finite());
            }
            let input = FinishClassQuantityInput {
                area_m2: a,
                coats,
                spread_m2_per_l: given.then_some(b),
                transfer_efficiency: given.then_some(c),
                other_loss: d,
                ..BRUSHED
            };
            if let Ok(litres) = finish_class_quantity(&input) {
                prop_assert!(litres.most.needed_l.is_finite() && litres.least.needed_l <= litres.most.needed_l);
            }
        }
    }
}
