//! What held-back movement asks of a glue line, and what sustained warmth makes of the glue.

use crate::cite::{Clause, Evidence, Source};
use crate::error::{Error, Result};
use crate::finding::{Caution, CautionText, Finding, FindingCode, Grade, Quantity};
use crate::limits::{faults_at, limited};

/// A family of wood glue.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum GlueFamily {
    /// Common white or yellow wood glue, poly(vinyl acetate).
    PolyvinylAcetate,
    /// Water-resisting wood glue of the same base whose chains are linked.
    CrosslinkedPolyvinylAcetate,
    /// Powdered resin glue, urea-formaldehyde.
    UreaFormaldehyde,
    /// Two-part epoxy.
    Epoxy,
    /// Polyurethane that cures with moisture.
    Polyurethane,
    /// Resorcinol and phenol-resorcinol.
    Resorcinol,
}

/// How a glue stands sustained warmth and load.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum GlueInWarmth {
    /// It softens, and creeps under a lasting load.
    SoftensAndCreeps,
    /// Better than common wood glue, without a figure.
    Better,
    /// It loses strength above a temperature that the handbook names.
    WeakensAbove,
    /// It keeps its strength as the wood does.
    Keeps,
    /// No statement was found; the maker's data decide.
    NotStated,
}

/// A glue line that movement is held back by.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<GlueLineDemandInput>))]
pub struct GlueLineDemandInput {
    /// Family of the glue.
    pub glue: GlueFamily,
    /// Greatest temperature that the seam keeps for hours, °C, measured where it will hang; not known when left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub temperature_c: Option<f64>,
    /// Mean shear that the glue line would have to bear, MPa, as from `cross_grain_fight`; not known when left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub shear_mpa: Option<f64>,
    /// Shear strength of the wood along the grain, MPa, as from `find_species`; not known when left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub wood_shear_mpa: Option<f64>,
}

limited!(GlueLineDemandInput { temperature_c: AIR_TEMPERATURE, shear_mpa: GLUE_SHEAR, wood_shear_mpa: STRESS });

/// What is known about a glue line under held-back movement and warmth. Nothing here is a pass.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct GlueLineDemand {
    /// How the glue stands sustained warmth and load.
    pub in_warmth: GlueInWarmth,
    /// Temperature above which the handbook says that it weakens, °C; absent where it names none.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub weakens_above_c: Option<f64>,
    /// Where the statement stands.
    pub clause: Clause,
    /// How far it was checked.
    pub evidence: Evidence,
    /// Demand over the average shear strength of the wood, which bounds what any glue can hold; absent where one is not known.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub share_of_wood_shear: Option<f64>,
    /// What to know.
    pub findings: Vec<Finding>,
    /// Cautions that belong to these numbers.
    pub cautions: Vec<CautionText>,
}

/// Demand on a glue line that holds movement back, beside the wood's own shear, and how the glue stands sustained warmth.
///
/// # Equation
/// ```text
/// share = demand / shear strength of the wood along the grain
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | demand | mean shear of the glue line | MPa | `shear_mpa` |
///
/// # Limits
/// A well-made side-grain bond is about as strong as the wood, and no more; no allowable stress for a shop joint is published, so
/// a small share is no pass. Under a lasting load wood and glue creep. How warm a seam gets over a hearth depends on the fire, the
/// opening and the air above it: measure it where the body will hang, with the appliance at work.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// FPL-GTR-190, chapter 10: strength of side-grain bonds (seen), families of glue in Table 10-1 (recalled) — checked by
/// `verification/movement`.
///
/// # Examples
/// ```
/// use beamcraft_core::movement::{glue_line_demand, GlueFamily, GlueInWarmth, GlueLineDemandInput};
/// let seam = glue_line_demand(&GlueLineDemandInput {
///     glue: GlueFamily::PolyvinylAcetate, temperature_c: None, shear_mpa: Some(4.0), wood_shear_mpa: Some(13.2),
/// })?;
/// assert!(seam.in_warmth == GlueInWarmth::SoftensAndCreeps && seam.findings.len() == 1);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn glue_line_demand(input: &GlueLineDemandInput) -> Result<GlueLineDemand> {
    Error::unless_empty(faults_at("", input))?;
    let (in_warmth, weakens_above_c) = input.glue.in_warmth();
    let share = input.shear_mpa.zip(input.wood_shear_mpa).map(|(demand, strength)| demand / strength);
    let mut findings = Vec::new();
    findings.extend(overloaded(input, share));
    findings.extend(warmth(input, in_warmth, weakens_above_c));
    Ok(GlueLineDemand {
        in_warmth,
        weakens_above_c,
        clause: TABLE,
        evidence: Evidence::Recalled,
        share_of_wood_shear: share,
        findings,
        cautions: vec![Caution::HeldMovement.into()],
    })
}

const TABLE: Clause = Clause::new(Source::WoodHandbook2010, "Table 10-1");

/// 120 °F, the temperature that the handbook names for urea resins, °C.
const UREA_LIMIT_C: f64 = 49.0;

impl GlueFamily {
    const fn in_warmth(self) -> (GlueInWarmth, Option<f64>) {
        match self {
            GlueFamily::PolyvinylAcetate => (GlueInWarmth::SoftensAndCreeps, None),
            GlueFamily::CrosslinkedPolyvinylAcetate => (GlueInWarmth::Better, None),
            GlueFamily::UreaFormaldehyde => (GlueInWarmth::WeakensAbove, Some(UREA_LIMIT_C)),
            GlueFamily::Resorcinol => (GlueInWarmth::Keeps, None),
            GlueFamily::Epoxy | GlueFamily::Polyurethane => (GlueInWarmth::NotStated, None),
        }
    }

    /// Name for people.
    pub const fn name(self) -> &'static str {
        match self {
            GlueFamily::PolyvinylAcetate => "common wood glue (PVA)",
            GlueFamily::CrosslinkedPolyvinylAcetate => "cross-linked PVA",
            GlueFamily::UreaFormaldehyde => "urea-formaldehyde resin",
            GlueFamily::Epoxy => "epoxy",
            GlueFamily::Polyurethane => "polyurethane",
            GlueFamily::Resorcinol => "resorcinol resin",
        }
    }
}

fn overloaded(input: &GlueLineDemandInput, share: Option<f64>) -> Option<Finding> {
    let (demand, strength) = input.shear_mpa.zip(input.wood_shear_mpa)?;
    (share? > 1.0).then(|| Finding {
        grade: Grade::Stop,
        code: FindingCode::GlueLine,
        subject: "glue line".to_owned(),
        message: "Held back in full, the movement asks more of the glue line than the wood beside it holds in shear."
            .to_owned(),
        numbers: vec![
            Quantity::new("shear of the glue line, at most", demand, "MPa"),
            Quantity::new("average shear strength of the wood", strength, "MPa"),
        ],
        cure: "Let the parts slide: glue a short part only and slot the rest.".to_owned(),
        clause: Some(Clause::new(Source::WoodHandbook2010, "chapter 10")),
    })
}

fn warmth(input: &GlueLineDemandInput, in_warmth: GlueInWarmth, weakens_above_c: Option<f64>) -> Option<Finding> {
    let (grade, message) = match (in_warmth, input.temperature_c, weakens_above_c) {
        (GlueInWarmth::Keeps, ..) => return None,
        (GlueInWarmth::WeakensAbove, Some(warm), Some(limit)) if warm > limit => {
            (Grade::Stop, "loses strength at the temperature given")
        }
        (GlueInWarmth::WeakensAbove, Some(_), _) => return None,
        (GlueInWarmth::WeakensAbove, None, _) => (Grade::Caution, "loses strength in warmth"),
        (GlueInWarmth::SoftensAndCreeps, ..) => {
            (Grade::Caution, "softens in sustained warmth and creeps under a lasting load")
        }
        (GlueInWarmth::Better, ..) => {
            (Grade::Note, "stands warmth better than common wood glue, by how much no figure says")
        }
        (GlueInWarmth::NotStated, ..) => (Grade::Note, "has no published statement here on sustained warmth"),
    };
    let mut numbers: Vec<_> =
        input.temperature_c.map(|warm| Quantity::new("temperature kept at the seam", warm, "°C")).into_iter().collect();
    numbers.extend(weakens_above_c.map(|limit| Quantity::new("temperature above which it weakens", limit, "°C")));
    let measure = match input.temperature_c {
        Some(_) => "",
        None => "Measure the temperature where the seam will be, with the fire at work; ",
    };
    Some(Finding {
        grade,
        code: FindingCode::GlueLine,
        subject: "glue line".to_owned(),
        message: format!("The glue, {}, {message}.", input.glue.name()),
        numbers,
        cure: format!(
            "{measure}compare with the maker's data; where it is warm for hours take a glue that does not creep, and splines or \
             screws that hold without it."
        ),
        clause: Some(TABLE),
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const GLUE_LINE_DEMAND: crate::json::Calculation = crate::json::calculation!(
    glue_line_demand: GlueLineDemandInput => GlueLineDemand, Document,
    "Demand on a glue line that holds movement back, and how the glue stands sustained warmth"
);

#[cfg(test)]
mod tests {
    use super::*;

    fn seam(glue: GlueFamily, temperature_c: Option<f64>) -> GlueLineDemand {
        glue_line_demand(&GlueLineDemandInput { glue, temperature_c, shear_mpa: None, wood_shear_mpa: None })
            .expect("allowed")
    }

    #[test]
    fn common_wood_glue_is_never_without_its_caution() {
        for temperature_c in [None, Some(20.0), Some(60.0)] {
            let found = seam(GlueFamily::PolyvinylAcetate, temperature_c).findings;
            assert!(found[0].grade == Grade::Caution && found[0].message.contains("creeps"));
            assert_eq!(found[0].cure.starts_with("Measure"), temperature_c.is_none());
        }
    }

    #[test]
    fn urea_resin_stops_above_its_temperature_only() {
        let grades = [None, Some(40.0), Some(49.0), Some(50.0)]
            .map(|warm| seam(GlueFamily::UreaFormaldehyde, warm).findings.first().map(|finding| finding.grade));
        assert_eq!(grades, [Some(Grade::Caution), None, None, Some(Grade::Stop)]);
    }

    #[test]
    fn a_demand_beyond_the_wood_is_a_stop_and_one_within_it_no_pass() {
        let with = |shear_mpa: f64| GlueLineDemandInput {
            glue: GlueFamily::Resorcinol,
            temperature_c: None,
            shear_mpa: Some(shear_mpa),
            wood_shear_mpa: Some(13.2),
        };
        assert_eq!(glue_line_demand(&with(14.0)).expect("allowed").findings[0].grade, Grade::Stop);
        let within = glue_line_demand(&with(6.6)).expect("allowed");
        assert!(within.findings.is_empty() && within.share_of_wood_shear == Some(0.5));
        assert!(!within.cautions.is_empty());
        assert_eq!(glue_line_demand(&with(f64::NAN)).expect_err("refused").field(), "shear_mpa");
    }
}
