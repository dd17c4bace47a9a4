//! The lifting index of one lift.

use crate::error::Fault;
use crate::finding::Caution;
use crate::lifting::tables::frequency_multiplier;
use crate::limits::{Limited, limited};

/// One lift, shared by one or more people.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<LiftingIndexInput>))]
pub struct LiftingIndexInput {
    /// Mass lifted, kg.
    pub mass_kg: f64,
    /// Number of people who lift; each is taken to carry an equal share, which holds only at equal distances from the
    /// centre of mass.
    pub persons: u32,
    /// From the mid-point between the ankles out to the middle of the hands, mm.
    pub reach_mm: f64,
    /// Hands above the floor, mm.
    pub hand_height_mm: f64,
    /// Vertical travel of the hands, mm.
    pub travel_mm: f64,
    /// Angle by which the lifter turns from straight ahead, degrees.
    #[cfg_attr(feature = "json", serde(default))]
    pub turn_deg: f64,
    /// Lifts a minute; 0.2, the default, is the least of the method and stands for hanging one beam.
    #[cfg_attr(feature = "json", serde(default = "rarely"))]
    pub lifts_per_min: f64,
    /// How long the work goes on.
    #[cfg_attr(feature = "json", serde(default = "short_work"))]
    pub duration: LiftDuration,
    /// How well the hands hold; a beam without handles is poor, the default.
    #[cfg_attr(feature = "json", serde(default = "no_handles"))]
    pub coupling: HandCoupling,
    /// Height of the hands where the lift began, mm, for the frequency multiplier; the hand height when left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub origin_height_mm: Option<f64>,
    /// Which of the two printed forms of the equation to use.
    #[cfg_attr(feature = "json", serde(default = "metric_form"))]
    pub form: LiftingForm,
}

limited!(LiftingIndexInput {
    mass_kg: MASS,
    persons: PERSONS,
    reach_mm: LIFT_DISTANCE,
    hand_height_mm: LIFT_DISTANCE,
    travel_mm: LIFT_DISTANCE,
    turn_deg: TURN,
    lifts_per_min: LIFT_RATE,
    origin_height_mm: LIFT_DISTANCE,
});

#[cfg(feature = "json")]
fn rarely() -> f64 {
    0.2
}

#[cfg(feature = "json")]
fn short_work() -> LiftDuration {
    LiftDuration::Short
}

#[cfg(feature = "json")]
fn no_handles() -> HandCoupling {
    HandCoupling::Poor
}

#[cfg(feature = "json")]
fn metric_form() -> LiftingForm {
    LiftingForm::Metric
}

/// How long lifting goes on, with its recovery.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum LiftDuration {
    /// Up to 1 h, then recovery at least as long.
    Short,
    /// More than 1 h up to 2 h, then recovery of 0.3 times the work.
    Moderate,
    /// More than 2 h up to 8 h.
    Long,
}

/// How well the hands hold the load.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum HandCoupling {
    /// Handles or cut-outs on a handy container.
    Good,
    /// A handy container without good handles.
    Fair,
    /// Bulky, long or hard to hold, such as a beam.
    Poor,
}

/// The two printed forms of the equation; their constants are not exact conversions of each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum LiftingForm {
    /// 23 kg, centimetres.
    Metric,
    /// 51 lb, inches.
    UsCustomary,
}

/// The limit of the method that the lift lies beyond.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum LiftLimit {
    /// None: the method applies.
    Within,
    /// The hands reach farther out than 63 cm (25 in).
    Reach,
    /// The hands are higher than 175 cm (70 in).
    HandHeight,
    /// The hands travel more than 175 cm (70 in).
    Travel,
    /// The turn is more than 135°.
    Turn,
    /// The rate is beyond Table 5.
    Rate,
}

/// Where the lift stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum LiftStanding {
    /// Index up to 1, the aim of the method.
    WithinAim,
    /// Index above 1 up to 3: redesign the lift.
    AboveAim,
    /// Index above 3: some experts see raised risk for nearly everybody.
    FarAboveAim,
    /// The method gives no weight for this lift: supports or a hoist.
    OutsideMethod,
}

/// Recommended weight and lifting index, with every multiplier.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct LiftingIndex {
    /// Share of one person, kg.
    pub share_kg: f64,
    /// Load constant LC, kg.
    pub load_constant_kg: f64,
    /// Horizontal multiplier HM.
    pub horizontal_multiplier: f64,
    /// Vertical multiplier VM.
    pub vertical_multiplier: f64,
    /// Distance multiplier DM.
    pub distance_multiplier: f64,
    /// Asymmetric multiplier AM.
    pub asymmetric_multiplier: f64,
    /// Frequency multiplier FM.
    pub frequency_multiplier: f64,
    /// Coupling multiplier CM.
    pub coupling_multiplier: f64,
    /// Recommended weight limit RWL, kg; 0 outside the method.
    pub recommended_kg: f64,
    /// Lifting index LI, share over recommended weight; absent outside the method.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub lifting_index: Option<f64>,
    /// Mass beyond the recommended weights of all lifters together, kg; 0 when there is none.
    pub excess_kg: f64,
    /// Where the lift stands.
    pub standing: LiftStanding,
    /// The first limit of the method that the lift lies beyond.
    pub limit: LiftLimit,
    /// The caution that belongs to these numbers.
    pub caution: Caution,
}

/// Constants of one printed form, lengths in its own unit.
struct Form {
    load_constant_kg: f64,
    unit_mm: f64,
    nearest: f64,
    farthest: f64,
    knuckle: f64,
    per_height: f64,
    highest: f64,
    per_travel: f64,
}

impl LiftingForm {
    const fn constants(self) -> Form {
        match self {
            LiftingForm::Metric => Form {
                load_constant_kg: 23.0,
                unit_mm: 10.0,
                nearest: 25.0,
                farthest: 63.0,
                knuckle: 75.0,
                per_height: 0.003,
                highest: 175.0,
                per_travel: 4.5,
            },
            LiftingForm::UsCustomary => Form {
                load_constant_kg: 51.0 * 0.453_592_37,
                unit_mm: 25.4,
                nearest: 10.0,
                farthest: 25.0,
                knuckle: 30.0,
                per_height: 0.0075,
                highest: 70.0,
                per_travel: 1.8,
            },
        }
    }
}

/// Recommended weight limit and lifting index of one lift, by the revised NIOSH equation.
///
/// Hanging a beam needs control at the end: compute it at the start and at the wall, and go by the lower weight.
///
/// # Equation
/// ```text
/// RWL = LC HM VM DM AM FM CM       LI = share / RWL
/// metric: HM = 25/H   VM = 1 − 0.003 |V − 75|    DM = 0.82 + 4.5/D   AM = 1 − 0.0032 A   LC = 23 kg
/// US:     HM = 10/H   VM = 1 − 0.0075 |V − 30|   DM = 0.82 + 1.8/D   AM = 1 − 0.0032 A   LC = 51 lb
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | H | ankles to hands | cm or in | `reach_mm` |
/// | V | hands above the floor | cm or in | `hand_height_mm` |
/// | D | vertical travel | cm or in | `travel_mm` |
/// | A | turn | degree | `turn_deg` |
/// | FM, CM | Tables 5 and 7 | – | `lifts_per_min`, `duration`, `coupling` |
///
/// H and D below 25 cm (10 in) count as 25 cm (10 in), the multiplier 1. Beyond 63 cm (25 in) of reach, 175 cm (70 in)
/// of height or travel, 135° of turn or the end of Table 5 the multiplier is 0: *outside the method*, and no index.
///
/// # Limits
/// Two-handed, standing, smooth lifts of a stable load on a sound floor, up to 8 h a day. The equation is for one
/// person; equal shares among several are an assumption of this library. Ladders, carrying and one-handed holding are
/// not covered.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Accuracy
/// Full precision; the manual multiplies two-decimal multipliers and prints one decimal.
///
/// # Source
/// `NIOSH 94-110`, pp. 1–18, Tables 5 and 7 (seen); checked by `verification/lifting`.
///
/// # Examples
/// ```
/// use beamcraft_core::lifting::{lifting_index, HandCoupling, LiftDuration, LiftingForm, LiftingIndexInput};
/// let lift = lifting_index(&LiftingIndexInput {
///     mass_kg: 12.0, persons: 1, reach_mm: 250.0, hand_height_mm: 550.0, travel_mm: 900.0, turn_deg: 0.0,
///     lifts_per_min: 3.0, duration: LiftDuration::Short, coupling: HandCoupling::Fair, origin_height_mm: None,
///     form: LiftingForm::Metric,
/// })?;
/// assert!((lift.recommended_kg - 15.7).abs() < 0.05);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn lifting_index(input: &LiftingIndexInput) -> Result<LiftingIndex, Fault> {
    input.check_ranges()?;
    let form = input.form.constants();
    let reach = input.reach_mm / form.unit_mm;
    let height = input.hand_height_mm / form.unit_mm;
    let origin = input.origin_height_mm.unwrap_or(input.hand_height_mm) / form.unit_mm;
    let travel = input.travel_mm / form.unit_mm;
    let none_beyond = |value: f64, limit: f64, multiplier: f64| if value > limit { 0.0 } else { multiplier };
    let horizontal_multiplier = none_beyond(reach, form.farthest, form.nearest / reach.max(form.nearest));
    let vertical_multiplier = none_beyond(height, form.highest, 1.0 - form.per_height * (height - form.knuckle).abs());
    let distance_multiplier = none_beyond(travel, form.highest, 0.82 + form.per_travel / travel.max(form.nearest));
    let asymmetric_multiplier = none_beyond(input.turn_deg, 135.0, 1.0 - 0.0032 * input.turn_deg);
    let low_column = match input.duration {
        LiftDuration::Short => 0,
        LiftDuration::Moderate => 2,
        LiftDuration::Long => 4,
    };
    let frequency_multiplier =
        frequency_multiplier(input.lifts_per_min, if origin < form.knuckle { low_column } else { low_column + 1 });
    // Table 7, p. 18.
    let coupling_multiplier = match input.coupling {
        HandCoupling::Good => 1.0,
        HandCoupling::Fair => {
            if height < form.knuckle {
                0.95
            } else {
                1.0
            }
        }
        HandCoupling::Poor => 0.9,
    };
    let recommended_kg = form.load_constant_kg
        * horizontal_multiplier
        * vertical_multiplier
        * distance_multiplier
        * asymmetric_multiplier
        * frequency_multiplier
        * coupling_multiplier;
    let limit = [
        (horizontal_multiplier, LiftLimit::Reach),
        (vertical_multiplier, LiftLimit::HandHeight),
        (distance_multiplier, LiftLimit::Travel),
        (asymmetric_multiplier, LiftLimit::Turn),
        (frequency_multiplier, LiftLimit::Rate),
    ]
    .into_iter()
    .find_map(|(multiplier, limit)| if multiplier > 0.0 { None } else { Some(limit) })
    .unwrap_or(LiftLimit::Within);
    let persons = f64::from(input.persons);
    let share_kg = input.mass_kg / persons;
    let lifting_index = if limit == LiftLimit::Within { Some(share_kg / recommended_kg) } else { None };
    let standing = match lifting_index {
        None => LiftStanding::OutsideMethod,
        Some(index) if index <= 1.0 => LiftStanding::WithinAim,
        Some(index) if index <= 3.0 => LiftStanding::AboveAim,
        Some(_) => LiftStanding::FarAboveAim,
    };
    Ok(LiftingIndex {
        share_kg,
        load_constant_kg: form.load_constant_kg,
        horizontal_multiplier,
        vertical_multiplier,
        distance_multiplier,
        asymmetric_multiplier,
        frequency_multiplier,
        coupling_multiplier,
        recommended_kg,
        lifting_index,
        excess_kg: (input.mass_kg - persons * recommended_kg).max(0.0),
        standing,
        limit,
        caution: Caution::Lifting,
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const LIFTING_INDEX: crate::json::Calculation = crate::json::calculation!(
    lifting_index: LiftingIndexInput => LiftingIndex, Typed,
    "Recommended weight limit and lifting index of one lift by the revised NIOSH equation"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::statics::test_inputs::hostile;
    use proptest::prelude::*;

    /// Two people hang a 60 lb beam: at the bench.
    const BENCH: LiftingIndexInput = LiftingIndexInput {
        mass_kg: 27.2,
        persons: 2,
        reach_mm: 304.8,
        hand_height_mm: 762.0,
        travel_mm: 609.6,
        turn_deg: 0.0,
        lifts_per_min: 0.2,
        duration: LiftDuration::Short,
        coupling: HandCoupling::Poor,
        origin_height_mm: None,
        form: LiftingForm::UsCustomary,
    };

    fn lift(input: LiftingIndexInput) -> LiftingIndex {
        lifting_index(&input).expect("allowed")
    }

    #[test]
    fn beyond_the_method_there_is_no_index_and_the_limit_is_named() {
        let cases = [
            (LiftingIndexInput { reach_mm: 26.0 * 25.4, ..BENCH }, LiftLimit::Reach),
            (LiftingIndexInput { hand_height_mm: 71.0 * 25.4, ..BENCH }, LiftLimit::HandHeight),
            (LiftingIndexInput { travel_mm: 71.0 * 25.4, ..BENCH }, LiftLimit::Travel),
            (LiftingIndexInput { turn_deg: 136.0, ..BENCH }, LiftLimit::Turn),
            (LiftingIndexInput { lifts_per_min: 16.0, ..BENCH }, LiftLimit::Rate),
        ];
        for (input, limit) in cases {
            let found = lift(input);
            assert_eq!((found.limit, found.standing, found.lifting_index), (limit, LiftStanding::OutsideMethod, None));
            assert_eq!((found.recommended_kg, found.excess_kg), (0.0, BENCH.mass_kg));
        }
    }

    #[test]
    fn near_reach_and_short_travel_count_as_ten_inches() {
        let near = lift(LiftingIndexInput { reach_mm: 8.0 * 25.4, travel_mm: 6.0 * 25.4, ..BENCH });
        assert_eq!((near.horizontal_multiplier, near.distance_multiplier), (1.0, 1.0));
        let metric = LiftingIndexInput { reach_mm: 0.0, travel_mm: 0.0, form: LiftingForm::Metric, ..BENCH };
        assert_eq!((lift(metric).horizontal_multiplier, lift(metric).distance_multiplier), (1.0, 1.0));
    }

    proptest! {
        #[test]
        fn more_mass_reach_turn_or_rate_never_lowers_the_index(
            mass in 0.0..200.0_f64, reach in 0.0..630.0_f64, height in 0.0..1750.0_f64, travel in 0.0..1750.0_f64,
            turn in 0.0..135.0_f64, rate in 0.0..8.0_f64, more in 0.0..100.0_f64, persons in 1_u32..6,
        ) {
            let base = LiftingIndexInput {
                mass_kg: mass, persons, reach_mm: reach, hand_height_mm: height, travel_mm: travel, turn_deg: turn,
                lifts_per_min: rate, form: LiftingForm::Metric, ..BENCH
            };
            let index = |input| lift(input).lifting_index.unwrap_or(f64::INFINITY);
            let whole = index(base);
            prop_assert!(whole.is_finite());
            for worse in [
                LiftingIndexInput { mass_kg: mass + more, ..base },
                LiftingIndexInput { reach_mm: reach + more, ..base },
                LiftingIndexInput { travel_mm: travel + more, ..base },
                LiftingIndexInput { turn_deg: (turn + more).min(180.0), ..base },
                LiftingIndexInput { lifts_per_min: (rate + more).min(60.0), ..base },
                LiftingIndexInput { duration: LiftDuration::Long, ..base },
            ] {
                prop_assert!(index(worse) >= whole * (1.0 - 1e-12));
            }
            let more_people = LiftingIndexInput { persons: persons + 1, ..base };
            let better_held = LiftingIndexInput { coupling: HandCoupling::Good, ..base };
            prop_assert!(index(more_people) <= whole && index(better_held) <= whole);
        }

        #[test]
        fn hostile_numbers_are_refused_or_give_finite_results(
            a in hostile(), b in hostile(), c in hostile(), d in hostile(), e in hostile(), f in hostile(), n in any::<u32>(),
        ) {
            let input = LiftingIndexInput {
                mass_kg: a, persons: n % 16, reach_mm: b, hand_height_mm: c, travel_mm: d, turn_deg: e, lifts_per_min: f,
                ..BENCH
            };
            if let Ok(found) = lifting_index(&input) {
                prop_assert!(found.recommended_kg.is_finite() && found.recommended_kg >= 0.0);
                prop_assert!(found.lifting_index.is_none_or(f64::is_finite) && found.share_kg.is_finite());
            }
        }
    }
}
