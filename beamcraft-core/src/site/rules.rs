//! The published rules for a mantel at a masonry fireplace, as data.

use crate::cite::{Clause, Evidence, Source};

/// A rule of the table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum MantelRule {
    /// International Residential Code, R1001.11 exception 4: 6 in, and one eighth of the distance within 12 in.
    IrcSlope,
    /// NFPA 211, 7-3.3.3 as quoted in manuals: 6 in, and 12 in above the opening when it stands out more than 1-1/2 in.
    Nfpa211Step,
    /// National Building Code of Canada, 9.22.9.3: 150 mm, and 300 mm above the opening when it stands out more than 38 mm.
    NbcStep,
}

/// On which side of the opening the point lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum OpeningSide {
    /// Above the top of the opening.
    Above,
    /// Beside the opening.
    Beside,
}

/// How a rule turns a projection into a distance; lengths in mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ClearanceForm {
    /// At least `least_mm`; within `zone_mm` the projection is at most the distance over `ratio`.
    Slope {
        /// Least distance.
        least_mm: f64,
        /// Distance from which on the rule says nothing.
        zone_mm: f64,
        /// Distance over projection.
        ratio: f64,
    },
    /// At least `least_mm`; above the opening at least `far_mm` where the projection exceeds `threshold_mm`.
    Step {
        /// Least distance.
        least_mm: f64,
        /// Projection above which the greater distance holds.
        threshold_mm: f64,
        /// The greater distance.
        far_mm: f64,
    },
}

/// One published rule.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ClearanceRule {
    /// The rule.
    pub rule: MantelRule,
    /// Where it applies, if adopted there.
    pub jurisdiction: &'static str,
    /// Publication and place.
    pub clause: Clause,
    /// Editions read, and recalled.
    pub edition: &'static str,
    /// How the wording was checked.
    pub evidence: Evidence,
    /// The rule in short words.
    pub words: &'static str,
    /// The rule as numbers.
    pub form: ClearanceForm,
}

/// The rules for combustible mantels and trim at masonry fireplaces.
///
/// The inch rules are taken in inches: the codes print 152, 305 and 38 mm, which are roundings.
pub const CLEARANCE_RULES: &[ClearanceRule] = &[
    ClearanceRule {
        rule: MantelRule::IrcSlope,
        jurisdiction: "United States",
        clause: Clause::new(Source::Irc, "R1001.11 exception 4"),
        edition: "2009 seen, as R1003.12 of 2000-2003 seen; 2012-2024 recalled",
        evidence: Evidence::Seen,
        words: "6 in / one-eighth rule",
        form: ClearanceForm::Slope { least_mm: 152.4, zone_mm: 304.8, ratio: 8.0 },
    },
    ClearanceRule {
        rule: MantelRule::Nfpa211Step,
        jurisdiction: "United States",
        clause: Clause::new(Source::Nfpa211, "7-3.3.3"),
        edition: "1988-1996 numbering, quoted second hand; later wording not seen",
        evidence: Evidence::Seen,
        words: "6 in / 12 in above 1-1/2 in rule",
        form: ClearanceForm::Step { least_mm: 152.4, threshold_mm: 38.1, far_mm: 304.8 },
    },
    ClearanceRule {
        rule: MantelRule::NbcStep,
        jurisdiction: "Canada",
        clause: Clause::new(Source::NbcCanada, "9.22.9.3"),
        edition: "wording seen in the Ontario adoption; number and 2010-2020 recalled",
        evidence: Evidence::Seen,
        words: "150 mm / 300 mm above 38 mm rule",
        form: ClearanceForm::Step { least_mm: 150.0, threshold_mm: 38.0, far_mm: 300.0 },
    },
];

/// Two lengths closer than this are one and the same: an inch in millimetres is rounded in its last digits, and nobody
/// measures a millionth of a millimetre.
pub(super) const SAME_MM: f64 = 1e-6;

impl ClearanceForm {
    /// Least distance for a projection, mm.
    pub(super) fn least_distance(self, side: OpeningSide, projection_mm: f64) -> f64 {
        match self {
            ClearanceForm::Slope { least_mm, zone_mm, ratio } => (ratio * projection_mm).min(zone_mm).max(least_mm),
            ClearanceForm::Step { least_mm, threshold_mm, far_mm } => {
                let stands_out = side == OpeningSide::Above && projection_mm > threshold_mm + SAME_MM;
                if stands_out { far_mm } else { least_mm }
            }
        }
    }

    /// Greatest projection for a distance.
    pub(super) fn greatest_projection(self, side: OpeningSide, distance_mm: f64) -> Projection {
        let reaches = |length: f64| distance_mm >= length - SAME_MM;
        match self {
            ClearanceForm::Slope { least_mm, .. } | ClearanceForm::Step { least_mm, .. } if !reaches(least_mm) => {
                Projection::Nothing
            }
            ClearanceForm::Slope { zone_mm, ratio, .. } if !reaches(zone_mm) => Projection::UpTo(distance_mm / ratio),
            ClearanceForm::Step { threshold_mm, far_mm, .. } if side == OpeningSide::Above && !reaches(far_mm) => {
                Projection::UpTo(threshold_mm)
            }
            _ => Projection::Unlimited,
        }
    }
}

/// What a rule allows at a distance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Projection {
    Nothing,
    UpTo(f64),
    Unlimited,
}

impl MantelRule {
    /// Its row of the table.
    pub fn row(self) -> Option<&'static ClearanceRule> {
        CLEARANCE_RULES.iter().find(|row| row.rule == self)
    }
}
