//! The grades of abrasive between the first and the last one.

use crate::cite::{Clause, Source};
use crate::error::{Allowed, ErrorCode, Fault};
use crate::limits::{Limited, limited};

/// A grade of coated abrasive.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct AbrasiveGrade {
    /// P grade, the number after the P.
    pub p_grade: u32,
    /// Mean size of the grains, µm.
    pub mean_grain_um: f64,
}

const fn grade(p_grade: u32, mean_grain_um: f64) -> AbrasiveGrade {
    AbrasiveGrade { p_grade, mean_grain_um }
}

/// Every P grade, coarse to fine (ISO 6344 / FEPA P, grade tables on public pages).
const GRADES: [AbrasiveGrade; 28] = [
    grade(12, 1815.0),
    grade(16, 1324.0),
    grade(20, 1000.0),
    grade(24, 764.0),
    grade(30, 642.0),
    grade(36, 538.0),
    grade(40, 425.0),
    grade(50, 336.0),
    grade(60, 269.0),
    grade(80, 201.0),
    grade(100, 162.0),
    grade(120, 125.0),
    grade(150, 100.0),
    grade(180, 82.0),
    grade(220, 68.0),
    grade(240, 58.5),
    grade(280, 52.2),
    grade(320, 46.2),
    grade(360, 40.5),
    grade(400, 35.0),
    grade(500, 30.2),
    grade(600, 25.8),
    grade(800, 21.8),
    grade(1000, 18.3),
    grade(1200, 15.3),
    grade(1500, 12.6),
    grade(2000, 10.3),
    grade(2500, 8.4),
];

const KNOWN: Allowed = Allowed::Text(
    "12, 16, 20, 24, 30, 36, 40, 50, 60, 80, 100, 120, 150, 180, 220, 240, 280, 320, 360, 400, 500, 600, 800, 1000, \
     1200, 1500, 2000, 2500",
);

/// The first and the last grade of a surface.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<SandingStepsInput>))]
pub struct SandingStepsInput {
    /// First P grade, the one that takes out the machine's marks.
    pub start_grit: u32,
    /// Last P grade, not coarser than the first.
    pub final_grit: u32,
}

limited!(SandingStepsInput { start_grit: GRIT, final_grit: GRIT });

/// The shortest run of grades that skips at most one at a time.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SandingSteps {
    /// The grades to sand with, coarse to fine.
    pub steps: Vec<AbrasiveGrade>,
    /// Where the grades come from.
    pub grades_from: Clause,
    /// Where the rule of skipping at most one grade comes from.
    pub rule_from: Clause,
}

/// The fewest sanding steps from one grade to another that skip at most one grade at a time.
///
/// # Equation
/// Every second grade of the P series; where the number of grades is even, the last step goes to the next grade.
///
/// # Limits
/// Skipping no grade is always allowed too. The rule is one of the trade, not a standard. Wood dust harms lungs and can
/// burn: extract at the tool and wear a mask suited to the species.
///
/// # Errors
/// `out_of_range` for a number that is no P grade; `inconsistent` when the last grade is coarser than the first.
///
/// # Source
/// Grades: ISO 6344 / FEPA P grade tables; rule: general finishing guides. Checked by `verification/finish`.
///
/// # Examples
/// ```
/// use beamcraft_core::finish::{sanding_steps, SandingStepsInput};
/// let steps = sanding_steps(&SandingStepsInput { start_grit: 80, final_grit: 220 })?.steps;
/// assert_eq!(steps.iter().map(|step| step.p_grade).collect::<Vec<_>>(), [80, 120, 180, 220]);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn sanding_steps(input: &SandingStepsInput) -> Result<SandingSteps, Fault> {
    input.check_ranges()?;
    let SandingStepsInput { start_grit, final_grit } = *input;
    let place = |field, grit: u32| {
        let fault = Fault::number(ErrorCode::OutOfRange, field, f64::from(grit), KNOWN, "take the nearest grade");
        GRADES.iter().position(|grade| grade.p_grade == grit).ok_or(fault)
    };
    let (first, last) = (place("start_grit", start_grit)?, place("final_grit", final_grit)?);
    let Some(run) = GRADES.get(first..=last).filter(|run| !run.is_empty()) else {
        let allowed = Allowed::Text("a grade not coarser than start_grit");
        let value = f64::from(final_grit);
        return Err(Fault::number(ErrorCode::Inconsistent, "final_grit", value, allowed, "swap the two"));
    };
    let end = run.len() - 1;
    let steps = run.iter().enumerate().filter(|(k, _)| k % 2 == 0 || *k == end).map(|(_, grade)| *grade);
    Ok(SandingSteps {
        steps: steps.collect(),
        grades_from: Clause::new(Source::AbrasiveGrades, "P grades"),
        rule_from: Clause::new(Source::FinishingGuides, ""),
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const SANDING_STEPS: crate::json::Calculation = crate::json::calculation!(
    sanding_steps: SandingStepsInput => SandingSteps, Document,
    "The fewest sanding steps from one P grade to another that skip at most one grade at a time"
);

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn grits(start_grit: u32, final_grit: u32) -> Vec<u32> {
        let found = sanding_steps(&SandingStepsInput { start_grit, final_grit }).expect("allowed");
        found.steps.iter().map(|step| step.p_grade).collect()
    }

    #[test]
    fn the_ends_are_always_there() {
        assert_eq!(grits(120, 120), [120]);
        assert_eq!(grits(120, 150), [120, 150]);
        assert_eq!(grits(80, 180), [80, 120, 180]);
    }

    #[test]
    fn no_grade_and_a_wrong_order_are_told_apart() {
        let code = |start_grit, final_grit| {
            sanding_steps(&SandingStepsInput { start_grit, final_grit }).expect_err("refused").code
        };
        assert_eq!(code(90, 180), ErrorCode::OutOfRange);
        assert_eq!(code(0, u32::MAX), ErrorCode::OutOfRange);
        assert_eq!(code(180, 150), ErrorCode::Inconsistent);
        assert_eq!(code(180, 80), ErrorCode::Inconsistent);
    }

    #[test]
    fn a_finer_grade_has_a_smaller_grain() {
        assert!(GRADES.is_sorted_by(|a, b| a.p_grade < b.p_grade && a.mean_grain_um > b.mean_grain_um));
        for grade in GRADES {
            assert!(KNOWN.to_string().split(", ").any(|word| word == grade.p_grade.to_string()));
        }
    }

    proptest! {
        #[test]
        fn a_step_skips_one_grade_at_most(first in 0..28_usize, last in 0..28_usize) {
            prop_assume!(first <= last);
            let found = grits(GRADES[first].p_grade, GRADES[last].p_grade);
            let places: Vec<_> = found.iter().map(|grit| GRADES.iter().position(|g| g.p_grade == *grit).unwrap()).collect();
            prop_assert_eq!((places.first(), places.last()), (Some(&first), Some(&last)));
            prop_assert!(places.windows(2).all(|pair| (1..=2).contains(&(pair[1] - pair[0]))));
        }

        #[test]
        fn any_numbers_give_steps_or_a_fault(start_grit in 0..3000_u32, final_grit: u32) {
            if let Ok(found) = sanding_steps(&SandingStepsInput { start_grit, final_grit }) {
                prop_assert!(!found.steps.is_empty());
            }
        }
    }
}
