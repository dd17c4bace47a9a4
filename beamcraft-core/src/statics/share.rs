//! How the supports of a rigid strip share a load: studs, screws along a cleat, two or more people at a beam.

use crate::error::{Detail, Error, ErrorCode, Fault, Result};
use crate::finding::{Caution, CautionText};
use crate::limits::{self, faults_at, limited, list_faults};
use crate::numeric::compensated_sum;

/// A load on a straight, rigid strip and the supports along it.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<ShareBetweenSupportsInput>))]
pub struct ShareBetweenSupportsInput {
    /// Resultant of the loads, N.
    pub load_n: f64,
    /// Where the resultant acts along the strip, mm.
    pub load_at_mm: f64,
    /// Where the supports stand along the strip, mm, from the same zero; any order, at least two.
    pub supports_mm: Vec<f64>,
}

limited!(ShareBetweenSupportsInput { load_n: SIGNED_FORCE, load_at_mm: SIGNED_LENGTH });

/// What one support carries.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SupportShare {
    /// Where the support stands, mm.
    pub at_mm: f64,
    /// Its reaction, N; negative where the strip would lift off it.
    pub share_n: f64,
}

/// The shares of all supports.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct ShareBetweenSupports {
    /// One share for each support, in the order given.
    pub shares: Vec<SupportShare>,
    /// Largest share, N.
    pub greatest_n: f64,
    /// Smallest share, N; negative where the strip would lift off a support.
    pub least_n: f64,
    /// Number of supports that would have to pull the strip down.
    pub lifted_count: u32,
    /// Cautions that belong to these numbers.
    pub cautions: Vec<CautionText>,
}

/// Reactions of the supports of a rigid strip: by where they stand, not in equal parts.
///
/// # Equation
/// ```text
/// R_i = W (1/n + (x − x̄)(x_i − x̄) / Σ (x_j − x̄)²)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | W, x | resultant and where it acts | N, mm | `load_n`, `load_at_mm` |
/// | x_i, x̄ | supports and their mean | mm | `supports_mm` |
///
/// For two supports this is the lever rule, whatever their stiffness. For more, equilibrium alone does not decide: the
/// strip is taken as rigid and the supports as equally stiff, so that the reactions vary linearly along it.
///
/// # Limits
/// A negative share is reported, not redistributed: a support that cannot pull leaves more to the others.
///
/// # Errors
/// `out_of_range`, `not_finite`, each with its path; `missing_field` with fewer than two supports; `inconsistent` when
/// the supports span less than 1 mm.
///
/// # Source
/// Statics, derived in the theory pages; checked by `verification/cleat`.
///
/// # Examples
/// ```
/// use beamcraft_core::statics::{share_between_supports, ShareBetweenSupportsInput};
/// let input = ShareBetweenSupportsInput { load_n: 400.0, load_at_mm: 300.0, supports_mm: vec![0.0, 400.0] };
/// let studs = share_between_supports(&input)?;
/// assert!((studs.shares[1].share_n - 300.0).abs() < 1e-9);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn share_between_supports(input: &ShareBetweenSupportsInput) -> Result<ShareBetweenSupports> {
    let mut faults = faults_at("", input);
    faults.extend(list_faults("supports_mm", &input.supports_mm, &limits::SIGNED_LENGTH));
    Error::unless_empty(faults)?;
    let supports = input.supports_mm.as_slice();
    if supports.len() < 2 {
        let fault = Fault::plain(ErrorCode::MissingField, "supports_mm", "at least two supports", "give every support");
        return Err(Error::one(Detail::from(fault)));
    }
    let (low, high) = supports.iter().fold((f64::MAX, f64::MIN), |(low, high), x| (low.min(*x), high.max(*x)));
    if high - low < 1.0 {
        let fault = Fault::plain(ErrorCode::Inconsistent, "supports_mm", "supports at least 1 mm apart", "");
        return Err(Error::one(Detail::from(fault)));
    }
    let count = supports.len() as f64;
    let mean = compensated_sum(supports.iter().copied()) / count;
    let spread = compensated_sum(supports.iter().map(|x| (x - mean) * (x - mean)));
    let offset = input.load_at_mm - mean;
    let share = |x: f64| input.load_n * (1.0 / count + offset * (x - mean) / spread);
    let shares: Vec<_> = supports.iter().map(|x| SupportShare { at_mm: *x, share_n: share(*x) }).collect();
    let (least_n, greatest_n) =
        shares.iter().fold((f64::MAX, f64::MIN), |(low, high), one| (low.min(one.share_n), high.max(one.share_n)));
    let lifted_count = shares.iter().filter(|one| one.share_n < 0.0).count() as u32;
    Ok(ShareBetweenSupports { shares, greatest_n, least_n, lifted_count, cautions: vec![Caution::Structure.into()] })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const SHARE_BETWEEN_SUPPORTS: crate::json::Calculation = crate::json::calculation!(
    share_between_supports: ShareBetweenSupportsInput => ShareBetweenSupports, Document,
    "How studs or other supports share the load of a rigid strip"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::statics::test_inputs::hostile;
    use proptest::prelude::*;

    fn share(load_n: f64, load_at_mm: f64, supports_mm: &[f64]) -> Result<ShareBetweenSupports> {
        share_between_supports(&ShareBetweenSupportsInput { load_n, load_at_mm, supports_mm: supports_mm.to_vec() })
    }

    #[test]
    fn a_load_beyond_the_last_support_lifts_the_first() {
        let studs = share(300.0, 600.0, &[0.0, 400.0]).expect("allowed");
        assert_eq!(studs.lifted_count, 1);
        assert!((studs.least_n + 150.0).abs() < 1e-9 && (studs.greatest_n - 450.0).abs() < 1e-9);
    }

    #[test]
    fn every_fault_is_named_with_its_path() {
        let faults = share(f64::NAN, 0.0, &[0.0, f64::INFINITY, 3e5]).expect_err("refused");
        let paths: Vec<_> = faults.details().iter().map(|detail| detail.path.as_str()).collect();
        assert_eq!(paths, ["load_n", "supports_mm[1]", "supports_mm[2]"]);
        assert_eq!(share(1.0, 0.0, &[5.0]).expect_err("refused").code(), ErrorCode::MissingField);
        assert_eq!(share(1.0, 0.0, &[5.0, 5.0, 5.0]).expect_err("refused").code(), ErrorCode::Inconsistent);
    }

    proptest! {
        #[test]
        fn forces_and_moments_balance(
            load_n in -1e4..1e4_f64, at in -5000.0..5000.0_f64,
            supports in proptest::collection::vec(-3000.0..3000.0_f64, 2..12),
        ) {
            prop_assume!(supports.iter().any(|x| (x - supports[0]).abs() > 1.0));
            let studs = share(load_n, at, &supports).expect("allowed");
            // The reactions can be far larger than the load when the supports stand close together.
            let scale = 1.0 + studs.shares.iter().map(|one| one.share_n.abs()).sum::<f64>();
            let force: f64 = studs.shares.iter().map(|one| one.share_n).sum();
            let moment: f64 = studs.shares.iter().map(|one| one.share_n * (one.at_mm - at)).sum();
            prop_assert!((force - load_n).abs() <= 1e-9 * scale);
            prop_assert!(moment.abs() <= 1e-9 * scale * 1e4);
        }

        #[test]
        fn hostile_numbers_are_refused_or_give_finite_results(
            load in hostile(), at in hostile(), supports in proptest::collection::vec(hostile(), 0..6),
        ) {
            if let Ok(studs) = share(load, at, &supports) {
                prop_assert!(studs.shares.iter().all(|one| one.share_n.is_finite()));
                prop_assert!(studs.greatest_n >= studs.least_n);
            }
        }
    }
}
