//! The published rules for a mantel at a masonry fireplace, as data.

use crate::cite::{Clause, Evidence, Source};
use crate::error::{Detail, ErrorCode, Fault};
use crate::limits::{faults_at, limited};

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
    /// International Building Code, 2111.11: as the residential code, for other buildings.
    IbcSlope,
    /// Standard Building Code, 2114.3.10, a legacy code of the southern United States: mantels 6 in from the opening.
    SbcLegacy,
    /// Ontario Building Code, 9.22.9.3: the step rule of the national code as Ontario adopted it.
    OntarioStep,
    /// German model regulation on firing installations, section 4: 800 mm above and beside the opening of an open fire.
    GermanOpenFire,
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

/// How a rule turns a projection into a distance.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum ClearanceForm {
    /// One distance for everything, above and beside the opening alike.
    AtLeast(LeastDistance),
    /// The projection may grow with the distance.
    Slope(SlopeDistance),
    /// A greater distance above the opening for what stands out more than a threshold.
    Step(StepDistance),
}

/// One distance for everything.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<LeastDistance>))]
pub struct LeastDistance {
    /// Least distance from the opening, mm.
    pub least_mm: f64,
}

limited!(LeastDistance { least_mm: LENGTH });

/// At least a distance; within a zone the projection is at most the distance over a ratio.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<SlopeDistance>))]
pub struct SlopeDistance {
    /// Least distance from the opening, mm.
    pub least_mm: f64,
    /// Distance from which on the rule says nothing, mm.
    pub zone_mm: f64,
    /// Distance over the greatest projection there.
    pub ratio: f64,
}

limited!(SlopeDistance { least_mm: LENGTH, zone_mm: LENGTH, ratio: DISTANCE_RATIO });

/// At least a distance; above the opening a greater one where the projection exceeds a threshold.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<StepDistance>))]
pub struct StepDistance {
    /// Least distance from the opening, mm.
    pub least_mm: f64,
    /// Projection above which the greater distance holds, mm.
    pub threshold_mm: f64,
    /// The greater distance, mm.
    pub far_mm: f64,
}

limited!(StepDistance { least_mm: LENGTH, threshold_mm: LENGTH, far_mm: LENGTH });

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
        form: ClearanceForm::Slope(SlopeDistance { least_mm: 152.4, zone_mm: 304.8, ratio: 8.0 }),
    },
    ClearanceRule {
        rule: MantelRule::Nfpa211Step,
        jurisdiction: "United States",
        clause: Clause::new(Source::Nfpa211, "7-3.3.3"),
        edition: "1988-1996 numbering, quoted second hand; later wording not seen",
        evidence: Evidence::Seen,
        words: "6 in / 12 in above 1-1/2 in rule",
        form: ClearanceForm::Step(StepDistance { least_mm: 152.4, threshold_mm: 38.1, far_mm: 304.8 }),
    },
    ClearanceRule {
        rule: MantelRule::NbcStep,
        jurisdiction: "Canada",
        clause: Clause::new(Source::NbcCanada, "9.22.9.3"),
        edition: "wording seen in the Ontario adoption; number and 2010-2020 recalled",
        evidence: Evidence::Seen,
        words: "150 mm / 300 mm above 38 mm rule",
        form: ClearanceForm::Step(StepDistance { least_mm: 150.0, threshold_mm: 38.0, far_mm: 300.0 }),
    },
    ClearanceRule {
        rule: MantelRule::IbcSlope,
        jurisdiction: "United States, buildings other than small dwellings",
        clause: Clause::new(Source::Ibc, "2111.11"),
        edition: "recalled; the number shifts by one or two between editions",
        evidence: Evidence::Recalled,
        words: "6 in / one-eighth rule",
        form: ClearanceForm::Slope(SlopeDistance { least_mm: 152.4, zone_mm: 304.8, ratio: 8.0 }),
    },
    ClearanceRule {
        rule: MantelRule::SbcLegacy,
        jurisdiction: "United States, where the legacy code still counts",
        clause: Clause::new(Source::StandardBuildingCode, "2114.3.10"),
        edition: "legacy code, a fragment seen",
        evidence: Evidence::Seen,
        words: "6 in rule",
        form: ClearanceForm::AtLeast(LeastDistance { least_mm: 152.4 }),
    },
    ClearanceRule {
        rule: MantelRule::OntarioStep,
        jurisdiction: "Canada, Ontario",
        clause: Clause::new(Source::OntarioCode, "9.22.9.3"),
        edition: "text in the style of O. Reg. 332/12 seen; number recalled",
        evidence: Evidence::Seen,
        words: "150 mm / 300 mm above 38 mm rule",
        form: ClearanceForm::Step(StepDistance { least_mm: 150.0, threshold_mm: 38.0, far_mm: 300.0 }),
    },
    ClearanceRule {
        rule: MantelRule::GermanOpenFire,
        jurisdiction: "Germany; versions of the states differ",
        clause: Clause::new(Source::GermanFiringModel, "section 4"),
        edition: "2007 model recalled; the same 800 mm seen on a handbook page",
        evidence: Evidence::Recalled,
        words: "800 mm above and beside an open fire",
        form: ClearanceForm::AtLeast(LeastDistance { least_mm: 800.0 }),
    },
];

/// Two lengths closer than this are one and the same: an inch in millimetres is rounded in its last digits, and nobody
/// measures a millionth of a millimetre.
pub(super) const SAME_MM: f64 = 1e-6;

/// The least distance over a range of projections, `at_mm + slope · projection`: above `from_mm`, up to `to_mm`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Demand {
    pub(super) from_mm: f64,
    pub(super) to_mm: f64,
    pub(super) at_mm: f64,
    pub(super) slope: f64,
}

/// The greatest projection over the distances: none below `least_mm`, `at_mm + slope · distance` below `until_mm`, any from
/// there on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Allowance {
    pub(super) least_mm: f64,
    pub(super) until_mm: f64,
    pub(super) at_mm: f64,
    pub(super) slope: f64,
}

impl ClearanceForm {
    /// The least distance, range by range of projections, the smallest first; the ranges leave nothing out.
    pub(super) fn demands(self, side: OpeningSide) -> Vec<Demand> {
        let demand = |from_mm, to_mm, at_mm, slope| Demand { from_mm, to_mm, at_mm, slope };
        let (low, high) = (f64::NEG_INFINITY, f64::INFINITY);
        match self {
            ClearanceForm::Slope(SlopeDistance { least_mm, zone_mm, ratio }) => vec![
                demand(low, least_mm / ratio, least_mm, 0.0),
                demand(least_mm / ratio, zone_mm / ratio, 0.0, ratio),
                demand(zone_mm / ratio, high, zone_mm, 0.0),
            ],
            ClearanceForm::Step(StepDistance { least_mm, threshold_mm, far_mm }) if side == OpeningSide::Above => {
                let threshold_mm = threshold_mm + SAME_MM;
                vec![demand(low, threshold_mm, least_mm, 0.0), demand(threshold_mm, high, far_mm, 0.0)]
            }
            ClearanceForm::AtLeast(LeastDistance { least_mm }) | ClearanceForm::Step(StepDistance { least_mm, .. }) => {
                vec![demand(low, high, least_mm, 0.0)]
            }
        }
    }

    /// The same the other way round.
    pub(super) fn allowance(self, side: OpeningSide) -> Allowance {
        match self {
            ClearanceForm::Slope(SlopeDistance { least_mm, zone_mm, ratio }) => {
                Allowance { least_mm, until_mm: zone_mm, at_mm: 0.0, slope: 1.0 / ratio }
            }
            ClearanceForm::Step(StepDistance { least_mm, threshold_mm, far_mm }) if side == OpeningSide::Above => {
                Allowance { least_mm, until_mm: far_mm, at_mm: threshold_mm, slope: 0.0 }
            }
            ClearanceForm::AtLeast(LeastDistance { least_mm }) | ClearanceForm::Step(StepDistance { least_mm, .. }) => {
                Allowance { least_mm, until_mm: least_mm, at_mm: 0.0, slope: 0.0 }
            }
        }
    }

    /// Least distance for a projection, mm.
    pub(super) fn least_distance(self, side: OpeningSide, projection_mm: f64) -> f64 {
        let demands = self.demands(side);
        let holds = demands.iter().find(|demand| projection_mm <= demand.to_mm);
        holds.map_or(0.0, |demand| demand.at_mm + demand.slope * projection_mm)
    }

    /// Greatest projection for a distance.
    pub(super) fn greatest_projection(self, side: OpeningSide, distance_mm: f64) -> Projection {
        let Allowance { least_mm, until_mm, at_mm, slope } = self.allowance(side);
        let reaches = |length: f64| distance_mm >= length - SAME_MM;
        if !reaches(least_mm) {
            Projection::Nothing
        } else if reaches(until_mm) {
            Projection::Unlimited
        } else {
            Projection::UpTo(at_mm + slope * distance_mm)
        }
    }

    /// Every fault of the numbers, with its path.
    pub(super) fn faults(&self) -> Vec<Detail> {
        let (name, mut faults, order) = match self {
            ClearanceForm::AtLeast(form) => ("at_least", faults_at("", form), None),
            ClearanceForm::Slope(form) => {
                ("slope", faults_at("", form), Some(("zone_mm", form.zone_mm, form.least_mm)))
            }
            ClearanceForm::Step(form) => ("step", faults_at("", form), Some(("far_mm", form.far_mm, form.least_mm))),
        };
        if let Some((field, far_mm, least_mm)) = order
            && far_mm < least_mm
        {
            let fault = Fault::plain(ErrorCode::Inconsistent, field, "no less than least_mm", "swap the two");
            faults.push(Detail { given: format!("{far_mm} mm"), ..fault.into() });
        }
        faults.into_iter().map(|fault| fault.within(name)).collect()
    }
}

/// A rule of the user's, copied from its publication.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct OwnClearanceRule {
    /// Name of the rule in the results.
    pub name: String,
    /// Where it applies.
    pub jurisdiction: String,
    /// The publication.
    pub publication: String,
    /// Its edition.
    pub edition: String,
    /// The clause.
    pub section: String,
    /// The rule as numbers.
    pub form: ClearanceForm,
}

impl OwnClearanceRule {
    /// Every fault, with its path: a rule without its origin is hearsay.
    pub fn faults(&self) -> Vec<Detail> {
        let texts = [
            ("name", &self.name),
            ("jurisdiction", &self.jurisdiction),
            ("publication", &self.publication),
            ("edition", &self.edition),
            ("section", &self.section),
        ];
        let empty = texts.into_iter().filter(|(_, text)| text.trim().is_empty());
        let mut faults: Vec<Detail> = empty
            .map(|(field, _)| {
                Fault::plain(ErrorCode::MissingField, field, "a text", "say where the rule stands").into()
            })
            .collect();
        faults.extend(self.form.faults().into_iter().map(|fault| fault.within("form")));
        faults
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
