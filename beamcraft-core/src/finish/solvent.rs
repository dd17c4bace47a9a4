//! Solvent that finishes give off, and the limits on a label.

use crate::error::{Allowed, Detail, Error, ErrorCode, Fault};
use crate::limits::{faults_at, limited};

/// A coating that is used up.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<SolventProduct>))]
pub struct SolventProduct {
    /// What it is.
    pub name: String,
    /// Volume used, L, with what is lost.
    pub volume_l: f64,
    /// Volatile organic compounds as the label states them for the use, g/L.
    pub voc_g_per_l: f64,
    /// Limit that applies to this kind of coating, g/L, counted as the label counts; see the finish classes.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub limit_g_per_l: Option<f64>,
}

limited!(SolventProduct { volume_l: VOLUME, voc_g_per_l: VOC, limit_g_per_l: VOC });

/// Everything that is put on.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct SolventEmittedInput {
    /// The coatings, thinners and cleaners; 1 to 1000.
    pub products: Vec<SolventProduct>,
}

/// A label beside its limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum VocVerdict {
    /// Not above the limit.
    WithinLimit,
    /// Above the limit.
    AboveLimit,
    /// No limit was given.
    NoLimitGiven,
}

/// What one product gives off.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct ProductEmission {
    /// What it is.
    pub name: String,
    /// Mass given off, g.
    pub emitted_g: f64,
    /// The label beside its limit.
    pub verdict: VocVerdict,
}

/// What all products give off.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SolventEmitted {
    /// Product by product, in the order given.
    pub products: Vec<ProductEmission>,
    /// Mass given off in all, g.
    pub emitted_g: f64,
    /// The usual caution.
    pub caution: &'static str,
}

const CAUTION: &str = "Vapour of solvents burns and harms: keep flames and sparks away, air the room, wear a mask made for \
    organic vapour. Limits differ by place and by kind of shop; those of the United States count without water, those of \
    the European Union with it. Rags with drying oil can set themselves on fire: lay them flat outdoors or under water.";

const MOST: usize = 1_000;

/// The mass of volatile organic compounds that finishes give off, and whether a label meets its limit.
///
/// # Equation
/// ```text
/// m = Σ V_i c_i
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | V | volume used | L | `volume_l` |
/// | c | volatile organic compounds | g/L | `voc_g_per_l` |
///
/// # Limits
/// An American label states grams a litre less water and exempt solvents: of a water-borne coating that overstates the mass.
///
/// # Errors
/// `out_of_range` and `not_finite` with the place in the list; `out_of_range` for an empty or too long list.
///
/// # Source
/// Arithmetic; checked by `verification/solvent`.
///
/// # Examples
/// ```
/// use beamcraft_core::finish::{solvent_emitted, SolventEmittedInput, SolventProduct};
/// let varnish = SolventProduct { name: "varnish".into(), volume_l: 0.5, voc_g_per_l: 450.0, limit_g_per_l: Some(450.0) };
/// assert_eq!(solvent_emitted(&SolventEmittedInput { products: vec![varnish] })?.emitted_g, 225.0);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn solvent_emitted(input: &SolventEmittedInput) -> Result<SolventEmitted, Error> {
    let mut faults: Vec<Detail> = Vec::new();
    let count = input.products.len();
    if count == 0 || count > MOST {
        let allowed = Allowed::Text("1 to 1000 products");
        faults.push(Fault::number(ErrorCode::OutOfRange, "products", count as f64, allowed, "").into());
    }
    let places = input.products.iter().enumerate().take(MOST);
    faults.extend(places.flat_map(|(k, product)| faults_at(&format!("products[{k}]"), product)));
    Error::unless_empty(faults)?;
    let products: Vec<_> = input.products.iter().map(emission).collect();
    let emitted_g = products.iter().map(|product| product.emitted_g).sum();
    Ok(SolventEmitted { products, emitted_g, caution: CAUTION })
}

fn emission(product: &SolventProduct) -> ProductEmission {
    let verdict = match product.limit_g_per_l {
        None => VocVerdict::NoLimitGiven,
        Some(limit) if product.voc_g_per_l > limit => VocVerdict::AboveLimit,
        Some(_) => VocVerdict::WithinLimit,
    };
    ProductEmission { name: product.name.clone(), emitted_g: product.volume_l * product.voc_g_per_l, verdict }
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const SOLVENT_EMITTED: crate::json::Calculation = crate::json::calculation!(
    solvent_emitted: SolventEmittedInput => SolventEmitted, Document,
    "The mass of volatile organic compounds that finishes give off, and whether a label meets its limit"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::finish::hostile;
    use proptest::prelude::*;

    fn product(volume_l: f64, voc_g_per_l: f64, limit_g_per_l: Option<f64>) -> SolventProduct {
        SolventProduct { name: "oil".to_owned(), volume_l, voc_g_per_l, limit_g_per_l }
    }

    #[test]
    fn a_label_at_the_limit_is_within_it() {
        let products =
            vec![product(1.0, 275.0, Some(275.0)), product(2.0, 276.0, Some(275.0)), product(1.0, 0.0, None)];
        let found = solvent_emitted(&SolventEmittedInput { products }).expect("in range");
        let verdicts: Vec<_> = found.products.iter().map(|product| product.verdict).collect();
        assert_eq!(verdicts, [VocVerdict::WithinLimit, VocVerdict::AboveLimit, VocVerdict::NoLimitGiven]);
        assert_eq!(found.emitted_g, 827.0);
    }

    #[test]
    fn every_fault_is_named_with_its_place() {
        let products = vec![product(1.0, 1.0, None), product(-1.0, f64::NAN, Some(9e9))];
        let fault = solvent_emitted(&SolventEmittedInput { products }).expect_err("refused");
        let paths: Vec<_> = fault.details().iter().map(|detail| detail.path.as_str()).collect();
        assert_eq!(paths, ["products[1].volume_l", "products[1].voc_g_per_l", "products[1].limit_g_per_l"]);
        assert!(solvent_emitted(&SolventEmittedInput { products: vec![] }).is_err());
    }

    proptest! {
        #[test]
        fn any_numbers_give_a_finite_mass_or_an_error(a in hostile::number(), b in hostile::number(), c in hostile::number()) {
            let products = vec![product(a, b, Some(c)), product(b, a, None)];
            if let Ok(found) = solvent_emitted(&SolventEmittedInput { products }) {
                prop_assert!(found.emitted_g.is_finite() && found.emitted_g >= 0.0);
            }
        }
    }
}
