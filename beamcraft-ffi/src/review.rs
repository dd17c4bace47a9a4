//! What a plan has to say about itself: findings, checks, standing cautions.

use core::ffi::c_char;

use beamcraft_core::finding::Finding;
use beamcraft_core::verdict::Verdict;

use crate::error::beamcraft_error;
use crate::guard::Failure;
use crate::handle::{at, value, words};
use crate::plan::beamcraft_plan;
use crate::record::{bit, unknown_choice};
use crate::status::beamcraft_status;

impl beamcraft_plan {
    fn finding(&self, finding: usize) -> Result<&Finding, Failure> {
        at(&self.plan.findings, finding, "finding", "below beamcraft_plan_finding_count")
    }

    fn check(&self, check: usize) -> Result<&Verdict, Failure> {
        at(&self.plan.checks, check, "check", "below beamcraft_plan_check_count")
    }
}

/// Numbers of one check.
#[derive(Clone, Copy, Debug, Default)]
#[repr(C)]
pub struct beamcraft_check {
    /// Which of the optional fields have a value: a sum of BEAMCRAFT_CHECK_GIVEN_*.
    pub given: u64,
    /// Demand, in the unit of the check. Optional.
    pub demand: f64,
    /// Capacity, in the unit of the check. Optional.
    pub capacity: f64,
    /// Demand over capacity; 1 is the limit. Optional.
    pub utilisation: f64,
    /// What the check says. One of BEAMCRAFT_OUTCOME_*. Only BEAMCRAFT_OUTCOME_MET is a pass.
    pub outcome: u32,
    /// What it rests on. One of BEAMCRAFT_BASIS_*.
    pub basis: u32,
}

/// Bit of demand in `given` of beamcraft_check.
pub const BEAMCRAFT_CHECK_GIVEN_DEMAND: u64 = 1;
/// Bit of capacity in `given` of beamcraft_check.
pub const BEAMCRAFT_CHECK_GIVEN_CAPACITY: u64 = 2;
/// Bit of utilisation in `given` of beamcraft_check.
pub const BEAMCRAFT_CHECK_GIVEN_UTILISATION: u64 = 4;

/// What is checked, in words.
pub const BEAMCRAFT_CHECK_TEXT_NAME: u32 = 0;
/// The part checked.
pub const BEAMCRAFT_CHECK_TEXT_SUBJECT: u32 = 1;
/// Unit of demand and capacity.
pub const BEAMCRAFT_CHECK_TEXT_UNIT: u32 = 2;
/// The governing mode; may be empty.
pub const BEAMCRAFT_CHECK_TEXT_MODE: u32 = 3;
/// The rule and its place.
pub const BEAMCRAFT_CHECK_TEXT_CLAUSE: u32 = 4;
/// What was assumed, or why there is no answer; may be empty.
pub const BEAMCRAFT_CHECK_TEXT_REMARK: u32 = 5;

/// One or two sentences.
pub const BEAMCRAFT_FINDING_TEXT_MESSAGE: u32 = 0;
/// What would help; may be empty.
pub const BEAMCRAFT_FINDING_TEXT_CURE: u32 = 1;
/// The part concerned.
pub const BEAMCRAFT_FINDING_TEXT_SUBJECT: u32 = 2;
/// The rule behind it; may be empty.
pub const BEAMCRAFT_FINDING_TEXT_CLAUSE: u32 = 3;

/// How many findings there are, worst first.
///
/// # Safety
/// `plan` is NULL or a live plan; `out_count` is NULL or writable; NULL is refused; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_finding_count(
    plan: *const beamcraft_plan,
    out_count: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe { value(plan, out_count, "out_count", out_error, |object| Ok(object.plan.findings.len())) }
}

/// How much a finding matters: one of BEAMCRAFT_GRADE_*. With BEAMCRAFT_GRADE_STOP the job does not work as planned.
///
/// # Safety
/// `plan` is NULL or a live plan; `out_grade` is NULL or writable; NULL is refused; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_finding_grade(
    plan: *const beamcraft_plan,
    finding: usize,
    out_grade: *mut u32,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe { value(plan, out_grade, "out_grade", out_error, |object| Ok(object.finding(finding)?.grade as u32)) }
}

/// What a finding is about: one of BEAMCRAFT_FINDING_CODE_*.
///
/// # Safety
/// `plan` is NULL or a live plan; `out_code` is NULL or writable; NULL is refused; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_finding_code(
    plan: *const beamcraft_plan,
    finding: usize,
    out_code: *mut u32,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe { value(plan, out_code, "out_code", out_error, |object| Ok(object.finding(finding)?.code as u32)) }
}

/// One text of a finding. `part` is one of BEAMCRAFT_FINDING_TEXT_*.
///
/// # Safety
/// `plan` is NULL or a live plan; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_finding_text(
    plan: *const beamcraft_plan,
    finding: usize,
    part: u32,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_plan| {
        let finding = object.finding(finding)?;
        Ok(match part {
            BEAMCRAFT_FINDING_TEXT_MESSAGE => finding.message.clone(),
            BEAMCRAFT_FINDING_TEXT_CURE => finding.cure.clone(),
            BEAMCRAFT_FINDING_TEXT_SUBJECT => finding.subject.clone(),
            BEAMCRAFT_FINDING_TEXT_CLAUSE => finding.clause.map(|clause| clause.to_string()).unwrap_or_default(),
            _ => return Err(unknown_choice("part", part, "the constants BEAMCRAFT_FINDING_TEXT_*").into()),
        })
    };
    // SAFETY: the same contract.
    unsafe { words(plan, buffer, capacity, out_needed, out_error, of) }
}

/// How many checks there are.
///
/// # Safety
/// `plan` is NULL or a live plan; `out_count` is NULL or writable; NULL is refused; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_check_count(
    plan: *const beamcraft_plan,
    out_count: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe { value(plan, out_count, "out_count", out_error, |object| Ok(object.plan.checks.len())) }
}

/// Numbers of a check: demand, capacity, utilisation, what it says and what it rests on.
///
/// # Safety
/// `plan` is NULL or a live plan; `out_check` is NULL or writable; NULL is refused; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_check(
    plan: *const beamcraft_plan,
    check: usize,
    out_check: *mut beamcraft_check,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_plan| {
        let check = object.check(check)?;
        Ok(beamcraft_check {
            given: bit(check.demand.as_ref(), BEAMCRAFT_CHECK_GIVEN_DEMAND)
                | bit(check.capacity.as_ref(), BEAMCRAFT_CHECK_GIVEN_CAPACITY)
                | bit(check.utilisation.as_ref(), BEAMCRAFT_CHECK_GIVEN_UTILISATION),
            demand: check.demand.unwrap_or_default(),
            capacity: check.capacity.unwrap_or_default(),
            utilisation: check.utilisation.unwrap_or_default(),
            outcome: check.outcome as u32,
            basis: check.basis as u32,
        })
    };
    // SAFETY: the same contract.
    unsafe { value(plan, out_check, "out_check", out_error, of) }
}

/// One text of a check. `part` is one of BEAMCRAFT_CHECK_TEXT_*.
///
/// # Safety
/// `plan` is NULL or a live plan; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_check_text(
    plan: *const beamcraft_plan,
    check: usize,
    part: u32,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_plan| {
        let check = object.check(check)?;
        Ok(match part {
            BEAMCRAFT_CHECK_TEXT_NAME => check.name.clone(),
            BEAMCRAFT_CHECK_TEXT_SUBJECT => check.subject.clone(),
            BEAMCRAFT_CHECK_TEXT_UNIT => check.unit.to_owned(),
            BEAMCRAFT_CHECK_TEXT_MODE => check.mode.clone(),
            BEAMCRAFT_CHECK_TEXT_CLAUSE => check.clause.to_string(),
            BEAMCRAFT_CHECK_TEXT_REMARK => check.remark.clone(),
            _ => return Err(unknown_choice("part", part, "the constants BEAMCRAFT_CHECK_TEXT_*").into()),
        })
    };
    // SAFETY: the same contract.
    unsafe { words(plan, buffer, capacity, out_needed, out_error, of) }
}

/// How many standing cautions go with the plan. Show them wherever its results are shown.
///
/// # Safety
/// `plan` is NULL or a live plan; `out_count` is NULL or writable; NULL is refused; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_caution_count(
    plan: *const beamcraft_plan,
    out_count: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    // SAFETY: the same contract.
    unsafe { value(plan, out_count, "out_count", out_error, |object| Ok(object.plan.cautions.len())) }
}

/// Text of a standing caution.
///
/// # Safety
/// `plan` is NULL or a live plan; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn beamcraft_plan_caution_text(
    plan: *const beamcraft_plan,
    caution: usize,
    buffer: *mut c_char,
    capacity: usize,
    out_needed: *mut usize,
    out_error: *mut *mut beamcraft_error,
) -> beamcraft_status {
    let of = |object: &beamcraft_plan| {
        let cautions = &object.plan.cautions;
        Ok(at(cautions, caution, "caution", "below beamcraft_plan_caution_count")?.text.to_owned())
    };
    // SAFETY: the same contract.
    unsafe { words(plan, buffer, capacity, out_needed, out_error, of) }
}
