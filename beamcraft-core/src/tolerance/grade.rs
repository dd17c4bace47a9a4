//! Published tolerances: general tolerances of sizes and angles, and how flush a joint of a grade must be.

use crate::cite::Evidence;
use crate::error::{ErrorCode, Fault};
use crate::limits::{Limited, limited};
use crate::numeric::real::tan_deg;

/// Class of general tolerances.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum ToleranceClass {
    /// Class f.
    Fine,
    /// Class m.
    Medium,
    /// Class c.
    Coarse,
    /// Class v.
    VeryCoarse,
}

/// A size and a class of general tolerances.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<GeneralToleranceInput>))]
pub struct GeneralToleranceInput {
    /// Class of tolerance; wood is often specified at medium or coarse.
    pub tolerance_class: ToleranceClass,
    /// The size; for the angle the shorter leg, mm.
    pub size_mm: f64,
}

limited!(GeneralToleranceInput { size_mm: GENERAL_SIZE });

/// Permissible deviations, each to either side.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct GeneralTolerance {
    /// Deviation of the size, to either side, mm.
    pub linear_mm: f64,
    /// How the deviation of the size was checked.
    pub linear_evidence: Evidence,
    /// Deviation of an angle whose shorter leg is the size, to either side, degrees.
    pub angle_deg: f64,
    /// How the deviation of the angle was checked.
    pub angle_evidence: Evidence,
    /// The deviation of the angle over the length of the leg, mm.
    pub angle_over_leg_mm: f64,
}

/// A row of the linear table: sizes up to, then classes f, m, c, v in mm; 0 where the table has no value.
const LINEAR: [(f64, [f64; 4]); 8] = [
    (3.0, [0.05, 0.1, 0.2, 0.0]),
    (6.0, [0.05, 0.1, 0.3, 0.5]),
    (30.0, [0.1, 0.2, 0.5, 1.0]),
    (120.0, [0.15, 0.3, 0.8, 1.5]),
    (400.0, [0.2, 0.5, 1.2, 2.5]),
    (1_000.0, [0.3, 0.8, 2.0, 4.0]),
    (2_000.0, [0.5, 1.2, 3.0, 6.0]),
    (4_000.0, [0.0, 2.0, 4.0, 8.0]),
];

/// A row of the angular table: shorter leg up to, then classes f, m, c, v in minutes.
const ANGULAR: [(f64, [f64; 4]); 5] = [
    (10.0, [60.0, 60.0, 90.0, 180.0]),
    (50.0, [30.0, 30.0, 60.0, 120.0]),
    (120.0, [20.0, 20.0, 30.0, 60.0]),
    (400.0, [10.0, 10.0, 15.0, 30.0]),
    (f64::INFINITY, [5.0, 5.0, 10.0, 20.0]),
];

/// The row of a size and the column of a class.
fn cell(table: &[(f64, [f64; 4])], size_mm: f64, class: ToleranceClass) -> Option<f64> {
    let (_, row) = table.iter().find(|(up_to, _)| size_mm <= *up_to)?;
    let [fine, medium, coarse, very_coarse] = *row;
    Some(match class {
        ToleranceClass::Fine => fine,
        ToleranceClass::Medium => medium,
        ToleranceClass::Coarse => coarse,
        ToleranceClass::VeryCoarse => very_coarse,
    })
}

/// General tolerance of a size and of an angle, ISO 2768-1.
///
/// # Equation
/// Two tables by range of size and class; `over the leg = size · tan(angle)`.
///
/// # Limits
/// Made for metal parts; used for wood where a drawing says so, at a stated moisture. Two cells of class coarse (sizes to
/// 6 mm, and the angle at legs from 120 to 400 mm) differ between the copy read and the standard as recalled: the
/// recalled ones are given, and marked so, as are angles at legs above 400 mm.
///
/// # Errors
/// `out_of_range`, `not_finite`; `not_supported` where the table has no value (fine above 2 000 mm, very coarse up to 3 mm).
///
/// # Source
/// ISO 2768-1:1989, tables 1 and 3, in a reprint (seen); checked by `verification/tolerance`.
///
/// # Examples
/// ```
/// use beamcraft_core::tolerance::{GeneralToleranceInput, ToleranceClass, general_tolerance};
/// let shelf = general_tolerance(&GeneralToleranceInput { tolerance_class: ToleranceClass::Medium, size_mm: 900.0 })?;
/// assert_eq!(shelf.linear_mm, 0.8);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn general_tolerance(input: &GeneralToleranceInput) -> Result<GeneralTolerance, Fault> {
    input.check_ranges()?;
    let GeneralToleranceInput { tolerance_class: class, size_mm } = *input;
    let no_value = || {
        let allowed = "a class that the table has for this size";
        Fault::plain(ErrorCode::NotSupported, "tolerance_class", allowed, "take medium or coarse")
    };
    let linear_mm = cell(&LINEAR, size_mm, class).filter(|value| *value > 0.0).ok_or_else(no_value)?;
    let angle_deg = cell(&ANGULAR, size_mm, class).ok_or_else(no_value)? / 60.0;
    let recalled = |is_recalled: bool| if is_recalled { Evidence::Recalled } else { Evidence::Seen };
    let coarse = class == ToleranceClass::Coarse;
    Ok(GeneralTolerance {
        linear_mm,
        linear_evidence: recalled(coarse && size_mm <= 6.0),
        angle_deg,
        angle_evidence: recalled(size_mm > 400.0 || (coarse && size_mm > 120.0)),
        angle_over_leg_mm: size_mm * tan_deg(angle_deg),
    })
}

/// Grade of woodwork.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum JointGrade {
    /// The lowest grade.
    Economy,
    /// What most woodwork is specified at.
    Custom,
    /// For feature pieces.
    Premium,
}

/// Where and between what a joint is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum JointPlace {
    /// Mitred or butted in the shop, for use indoors.
    ShopInterior,
    /// Flat wood to wood on site.
    SiteFlat,
    /// Shaped wood to wood on site.
    SiteShaped,
    /// Wood to another material on site.
    SiteOtherMaterial,
}

/// A joint and its grade.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<JointToleranceInput>))]
pub struct JointToleranceInput {
    /// Grade of the work.
    pub grade: JointGrade,
    /// Where and between what the joint is made.
    pub place: JointPlace,
    /// Length of the joint, mm.
    pub joint_mm: f64,
}

limited!(JointToleranceInput { joint_mm: LENGTH });

/// What a grade allows at a joint.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct JointTolerance {
    /// Largest step between the two surfaces, mm.
    pub flushness_mm: f64,
    /// Length over which a gap may extend, 30 % of the joint, mm.
    pub gap_length_mm: f64,
}

/// Largest step and largest length of gap at a joint of a woodwork grade.
///
/// # Equation
/// ```text
/// shop, interior:            0.025 in   0.005 in   0.001 in    (economy, custom, premium)
/// site, flat wood to wood:       –      0.025 in   0.012 in
/// site, shaped:                  –      0.050 in   0.025 in
/// site, other material:      0.100 in   0.075 in   0.050 in
/// gap length = 0.3 · joint
/// ```
///
/// # Limits
/// A standard of the trade, used where a contract says so. The gap's length is stated for one section of it only and is
/// given here as a measure. Gaps are checked by feeler gauge.
///
/// # Errors
/// `out_of_range`, `not_finite`; `not_supported` where the standard has no value for the grade.
///
/// # Source
/// Architectural Woodwork Standards, edition 1 (2009), 4.4.1.8, 6.1.21, 6.1.7.2, 6.1.10 (page copies seen; columns by the
/// order of the rows); checked by `verification/tolerance`.
///
/// # Examples
/// ```
/// use beamcraft_core::tolerance::{JointGrade, JointPlace, JointToleranceInput, joint_tolerance};
/// let input = JointToleranceInput { grade: JointGrade::Custom, place: JointPlace::ShopInterior, joint_mm: 203.2 };
/// assert!((joint_tolerance(&input)?.flushness_mm - 0.127).abs() < 1e-12);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn joint_tolerance(input: &JointToleranceInput) -> Result<JointTolerance, Fault> {
    input.check_ranges()?;
    let [economy, custom, premium] = match input.place {
        JointPlace::ShopInterior => [Some(0.025), Some(0.005), Some(0.001)],
        JointPlace::SiteFlat => [None, Some(0.025), Some(0.012)],
        JointPlace::SiteShaped => [None, Some(0.05), Some(0.025)],
        JointPlace::SiteOtherMaterial => [Some(0.1), Some(0.075), Some(0.05)],
    };
    let inches = match input.grade {
        JointGrade::Economy => economy,
        JointGrade::Custom => custom,
        JointGrade::Premium => premium,
    };
    let inches: f64 = inches.ok_or_else(|| {
        let allowed = "a grade that the standard has for this joint";
        Fault::plain(ErrorCode::NotSupported, "grade", allowed, "take custom or premium")
    })?;
    Ok(JointTolerance { flushness_mm: inches * 25.4, gap_length_mm: 0.3 * input.joint_mm })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const GENERAL_TOLERANCE: crate::json::Calculation = crate::json::calculation!(
    general_tolerance: GeneralToleranceInput => GeneralTolerance, Typed,
    "General tolerance of a size and of an angle by class"
);

/// Registry row.
#[cfg(feature = "json")]
pub(super) const JOINT_TOLERANCE: crate::json::Calculation = crate::json::calculation!(
    joint_tolerance: JointToleranceInput => JointTolerance, Typed,
    "Largest step and largest length of gap at a joint of a woodwork grade"
);

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const CLASSES: [ToleranceClass; 4] =
        [ToleranceClass::Fine, ToleranceClass::Medium, ToleranceClass::Coarse, ToleranceClass::VeryCoarse];

    #[test]
    fn a_cell_without_a_value_is_refused() {
        for (class, size_mm) in [(ToleranceClass::Fine, 2_001.0), (ToleranceClass::VeryCoarse, 3.0)] {
            let fault = general_tolerance(&GeneralToleranceInput { tolerance_class: class, size_mm }).unwrap_err();
            assert_eq!((fault.code, fault.field), (ErrorCode::NotSupported, "tolerance_class"));
        }
        let input = JointToleranceInput { grade: JointGrade::Economy, place: JointPlace::SiteFlat, joint_mm: 100.0 };
        assert_eq!(joint_tolerance(&input).unwrap_err().code, ErrorCode::NotSupported);
    }

    #[test]
    fn a_coarser_class_and_a_longer_size_allow_no_less() {
        for (_, row) in LINEAR {
            let given: Vec<f64> = row.into_iter().filter(|value| *value > 0.0).collect();
            assert!(given.is_sorted());
        }
        for column in 0..4 {
            let given: Vec<f64> = LINEAR.iter().map(|(_, row)| row[column]).filter(|value| *value > 0.0).collect();
            assert!(given.is_sorted());
            assert!(ANGULAR.iter().rev().map(|(_, row)| row[column]).is_sorted());
        }
    }

    #[test]
    fn the_range_ends_where_the_next_begins() {
        let at = |size_mm| {
            general_tolerance(&GeneralToleranceInput { tolerance_class: ToleranceClass::Medium, size_mm }).unwrap()
        };
        assert_eq!((at(400.0).linear_mm, at(400.1).linear_mm), (0.5, 0.8));
        assert_eq!((at(400.0).angle_evidence, at(400.1).angle_evidence), (Evidence::Seen, Evidence::Recalled));
    }

    proptest! {
        #[test]
        fn any_bits_give_numbers_or_a_fault(bits in prop::num::f64::ANY, size in 0.0..5_000.0, class in 0_usize..4) {
            for size_mm in [bits, size] {
                if let Ok(out) = general_tolerance(&GeneralToleranceInput { tolerance_class: CLASSES[class], size_mm }) {
                    prop_assert!(out.linear_mm > 0.0 && out.angle_deg > 0.0 && out.angle_over_leg_mm.is_finite());
                }
                let input = JointToleranceInput {
                    grade: JointGrade::Premium, place: JointPlace::SiteShaped, joint_mm: size_mm,
                };
                if let Ok(out) = joint_tolerance(&input) {
                    prop_assert!(out.gap_length_mm.is_finite());
                }
            }
        }
    }
}
