//! A check with its working: demand, capacity, utilisation, governing mode, factors, clause, basis.

use crate::cite::Clause;

/// What a check rests on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum Basis {
    /// A published rule.
    Clause,
    /// Statics or geometry, shown in the theory pages.
    Derived,
    /// The user's number, or a default with its reason.
    Chosen,
}

/// What a check says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum Outcome {
    /// The demand does not exceed the capacity.
    Met,
    /// The demand exceeds the capacity.
    NotMet,
    /// No published rule covers the case.
    NotCovered,
    /// A rule exists, but what it needs was not given.
    NotDetermined,
}

/// One factor of a capacity.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Factor {
    /// Symbol and meaning, such as `C_D load duration`.
    pub name: &'static str,
    /// Its value.
    pub value: f64,
    /// Where it comes from.
    pub clause: Clause,
}

/// One check with its whole working.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Verdict {
    /// What is checked, in words.
    pub name: String,
    /// The part checked, such as `wall screws`.
    pub subject: String,
    /// What the check says.
    pub outcome: Outcome,
    /// What it rests on.
    pub basis: Basis,
    /// Demand, in `unit`.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub demand: Option<f64>,
    /// Capacity, in `unit`; absent where there is none to compare with.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub capacity: Option<f64>,
    /// Unit symbol of demand and capacity.
    pub unit: &'static str,
    /// Demand over capacity; 1 is the limit.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub utilisation: Option<f64>,
    /// The governing mode, in words; empty where there is only one.
    pub mode: String,
    /// Every factor applied.
    pub factors: Vec<Factor>,
    /// The rule, where there is one.
    pub clause: Clause,
    /// What was assumed, or why there is no answer.
    pub remark: String,
}

impl Verdict {
    /// A check of `demand` against `capacity`, both in `unit`.
    ///
    /// A capacity of zero is met by no demand but zero.
    pub fn compare(
        name: impl Into<String>,
        subject: impl Into<String>,
        demand: f64,
        capacity: f64,
        unit: &'static str,
        basis: Basis,
        clause: Clause,
    ) -> Self {
        let outcome = if demand <= capacity { Outcome::Met } else { Outcome::NotMet };
        // A ratio to nothing has no value; the outcome says what there is to say.
        let utilisation = if capacity > 0.0 { Some(demand / capacity) } else { None };
        Self {
            name: name.into(),
            subject: subject.into(),
            outcome,
            basis,
            demand: Some(demand),
            capacity: Some(capacity),
            unit,
            utilisation,
            mode: String::new(),
            factors: Vec::new(),
            clause,
            remark: String::new(),
        }
    }

    /// A check that has no answer, with the reason.
    pub fn without_answer(
        name: impl Into<String>,
        subject: impl Into<String>,
        outcome: Outcome,
        clause: Clause,
        remark: impl Into<String>,
    ) -> Self {
        Self {
            name: name.into(),
            subject: subject.into(),
            outcome,
            basis: Basis::Clause,
            demand: None,
            capacity: None,
            unit: "",
            utilisation: None,
            mode: String::new(),
            factors: Vec::new(),
            clause,
            remark: remark.into(),
        }
    }

    /// The same check with its governing mode.
    #[must_use]
    pub fn with_mode(mut self, mode: impl Into<String>) -> Self {
        self.mode = mode.into();
        self
    }

    /// The same check with the factors applied.
    #[must_use]
    pub fn with_factors(mut self, factors: Vec<Factor>) -> Self {
        self.factors = factors;
        self
    }

    /// The same check with a remark.
    #[must_use]
    pub fn with_remark(mut self, remark: impl Into<String>) -> Self {
        self.remark = remark.into();
        self
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cite::Source;

    #[test]
    fn not_a_number_is_never_a_pass() {
        let clause = Clause::new(Source::Statics, "");
        let verdict = Verdict::compare("pull", "seat", f64::NAN, 1.0, "N", Basis::Derived, clause);
        assert_eq!(verdict.outcome, Outcome::NotMet);
        let verdict = Verdict::compare("pull", "seat", 1.0, 0.0, "N", Basis::Derived, clause);
        assert_eq!(verdict.outcome, Outcome::NotMet);
        assert_eq!(verdict.utilisation, None);
    }
}
