//! How much of a coating lands on the work, by method of application.

use crate::cite::{Clause, Source};
use crate::error::Fault;

/// How a finish is put on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum ApplicationMethod {
    /// Brush or pad.
    Brush,
    /// Cloth: wiped on, and the excess wiped off.
    Wipe,
    /// Roller.
    Roll,
    /// Conventional air-atomised spray.
    AirAtomisedSpray,
    /// Airless spray.
    AirlessSpray,
    /// Spray at high volume and low pressure (10 psi or less at the cap).
    HvlpSpray,
    /// Electrostatic spray by hand.
    ManualElectrostatic,
    /// Automatic electrostatic spray without rotating heads.
    AutomaticElectrostatic,
    /// Electrostatic spray from rotating heads.
    RotatingHeadElectrostatic,
    /// Dipping or flow coating.
    DipOrFlow,
}

/// The method that is asked about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct FindTransferEfficiencyInput {
    /// How the finish is put on.
    pub method: ApplicationMethod,
}

/// The published transfer efficiency of a method.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct TransferEfficiency {
    /// How the finish is put on.
    pub method: ApplicationMethod,
    /// Lower published share of the coating that lands on the work; absent where none is published.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub low_share: Option<f64>,
    /// Upper published share of the coating that lands on the work; absent where none is published.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub high_share: Option<f64>,
    /// Where the figures come from; absent where none are published.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub clause: Option<Clause>,
    /// What to know before using them.
    pub remark: &'static str,
}

const REGULATORY: &str = "A figure for reckoning emissions from metal furniture. On a narrow moulding far less lands, on \
    a wide panel more: measured shares run from 5 % to above 65 % with the same gun.";
const AIRLESS: &str = "A figure for reckoning emissions from metal furniture; a case study of wood furniture gives 0.50 to \
    0.60. On a narrow moulding far less lands, on a wide panel more.";
const HVLP: &str = "From a case study of wood furniture. On a narrow moulding far less lands: 7 % to 10 % is reported on \
    small parts.";
const BY_HAND: &str = "No published figure was found for what stays in the tool, the tray and the cloth; give your own \
    from a trial. A rule on wood furniture accepts brush and roller as reaching 65 %.";
const WIPED: &str = "No published figure was found for what stays in the cloth; give your own from a trial.";

impl ApplicationMethod {
    /// The published transfer efficiency of the method, or that there is none.
    pub const fn transfer_efficiency(self) -> TransferEfficiency {
        const EPA: Clause = Clause::new(Source::EpaTransfer, "Table 1");
        const CASES: Clause = Clause::new(Source::FinishingCaseStudies, "");
        let (shares, remark) = match self {
            Self::Brush | Self::Roll => (None, BY_HAND),
            Self::Wipe => (None, WIPED),
            Self::AirAtomisedSpray => (Some((0.25, 0.25, EPA)), REGULATORY),
            Self::AirlessSpray => (Some((0.25, 0.25, EPA)), AIRLESS),
            Self::HvlpSpray => (Some((0.65, 0.80, CASES)), HVLP),
            Self::ManualElectrostatic => (Some((0.60, 0.60, EPA)), REGULATORY),
            Self::AutomaticElectrostatic => (Some((0.70, 0.70, EPA)), REGULATORY),
            Self::RotatingHeadElectrostatic => (Some((0.80, 0.80, EPA)), REGULATORY),
            Self::DipOrFlow => (Some((0.90, 0.90, EPA)), REGULATORY),
        };
        match shares {
            Some((low, high, clause)) => TransferEfficiency {
                method: self,
                low_share: Some(low),
                high_share: Some(high),
                clause: Some(clause),
                remark,
            },
            None => TransferEfficiency { method: self, low_share: None, high_share: None, clause: None, remark },
        }
    }
}

/// The published share of a coating that lands on the work, or that none is published.
///
/// # Equation
/// Transfer efficiency = solids on the work / solids used; a table, not a formula.
///
/// # Limits
/// It depends on the size of the work and on the hand more than on the gun. For brush, roller and cloth no figure is
/// published: the share is left out, and the loss is the user's number. Electrodeposition, which the table also has,
/// does not apply to wood.
///
/// # Errors
/// None beyond those of the doors.
///
/// # Source
/// 40 CFR 60.313 (state copy: Wisconsin NR 440.48 Table 1); high volume, low pressure: state pollution-prevention case
/// study; 65 % by rule: Utah R307-343-5. Checked by `verification/finish`.
///
/// # Examples
/// ```
/// use beamcraft_core::finish::{find_transfer_efficiency, ApplicationMethod, FindTransferEfficiencyInput};
/// let brush = find_transfer_efficiency(&FindTransferEfficiencyInput { method: ApplicationMethod::Brush })?;
/// assert_eq!(brush.low_share, None);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn find_transfer_efficiency(input: &FindTransferEfficiencyInput) -> Result<TransferEfficiency, Fault> {
    Ok(input.method.transfer_efficiency())
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const FIND_TRANSFER_EFFICIENCY: crate::json::Calculation = crate::json::calculation!(
    find_transfer_efficiency: FindTransferEfficiencyInput => TransferEfficiency, Document,
    "The published share of a coating that lands on the work, or that none is published"
);
