//! A frame on the wall or a nailer under a ceiling in place of the cleat: what the body's loads ask of both joints.

use super::body::Body;
use super::holding::actions;
use super::result::{FixingCase, FixingPlan, MassPlan};
use super::spec_fixing::{FixingPlace, FixingSpec};
use super::within;
use crate::cite::{Clause, Source};
use crate::error::Result;
use crate::finding::Finding;
use crate::site::{FrameFixing, FrameFixingInput, FramePlace, WallFrame, frame_fixing};
use crate::verdict::{Outcome, Verdict};

/// Loads the fixing: every case, and the checks of the one that governs. Nothing without at least two studs or joists.
pub(super) fn load(
    body: &Body<'_>,
    fixing: &FixingSpec,
    mass: &MassPlan,
    checks: &mut Vec<Verdict>,
    findings: &mut Vec<Finding>,
) -> Result<Option<FixingPlan>> {
    let supports_mm = supports(body, fixing);
    if supports_mm.len() < 2 {
        let clause = Clause::new(Source::Statics, "frame over its supports");
        let remark = "At least two studs or joists behind the frame were not given.";
        checks.push(Verdict::without_answer(
            "frame to the wall or ceiling",
            "frame",
            Outcome::NotDetermined,
            clause,
            remark,
        ));
        return Ok(None);
    }
    let mut cases = Vec::new();
    let mut worst: Option<(f64, FrameFixing)> = None;
    for action in actions(body, mass) {
        let mut most: Option<f64> = None;
        for along_mm in &action.along_mm {
            let held = frame_fixing(&FrameFixingInput {
                load_n: action.load_n,
                along_mm: *along_mm,
                pull_n: fixing.pull_n,
                supports_mm: supports_mm.clone(),
                frame: place(fixing, action.out_mm),
                support_joint: fixing.support_joint.clone(),
                cross_joint: fixing.cross_joint.clone(),
            })
            .map_err(|error| within(error, "fixing"))?;
            let used = used(&held);
            most = Some(most.map_or(used, |known: f64| known.max(used)));
            // Of cases without an answer the one with the most pull is shown.
            let more = |known: f64, other: &FrameFixing| {
                used > known || (used == known && held.support_withdrawal_n > other.support_withdrawal_n)
            };
            if worst.as_ref().is_none_or(|(known, other)| more(*known, other)) {
                worst = Some((used, held));
            }
        }
        let utilisation = most.filter(|used| *used < f64::MAX);
        cases.push(FixingCase {
            name: action.name.to_owned(),
            load_n: action.load_n,
            out_mm: action.out_mm,
            utilisation,
        });
    }
    let Some((_, held)) = worst else { return Ok(None) };
    for (joint, subject) in [(&held.support, "frame to its supports"), (&held.cross, "body to its frame")] {
        let lines = joint.loads.iter().chain(&joint.requirements).cloned();
        checks.extend(lines.map(|line| Verdict { subject: subject.to_owned(), ..line }));
    }
    findings.extend(held.findings.iter().cloned());
    Ok(Some(FixingPlan { supports_mm, cases, held }))
}

/// How much of its joints a case uses; one without an answer counts as the worst.
fn used(held: &FrameFixing) -> f64 {
    let joints = [&held.support, &held.cross].map(|joint| joint.utilisation.unwrap_or(f64::MAX));
    joints.into_iter().fold(0.0, f64::max)
}

fn place(fixing: &FixingSpec, out_mm: f64) -> FramePlace {
    match &fixing.place {
        FixingPlace::Ledger(ledger) => FramePlace::Wall(WallFrame { out_mm, row_up_mm: ledger.row_up_mm }),
        FixingPlace::Ceiling(ceiling) => FramePlace::Ceiling(*ceiling),
    }
}

/// Joists as given, or the studs behind the body, from its left end.
fn supports(body: &Body<'_>, fixing: &FixingSpec) -> Vec<f64> {
    if !fixing.supports_mm.is_empty() {
        return fixing.supports_mm.clone();
    }
    let Some((site, wall)) = body.checked.spec.site.as_ref().and_then(|site| Some((site, site.wall.as_ref()?))) else {
        return Vec::new();
    };
    let left_mm = site.place.left_end_mm;
    let studs = wall.studs_between(left_mm, left_mm + body.checked.leg.length_mm);
    studs.into_iter().map(|stud| stud - left_mm).collect()
}

#[cfg(test)]
#[cfg(feature = "json")]
mod tests {
    use crate::finding::{FindingCode, Grade};
    use crate::plan::{BeamSpec, plan};
    use crate::verdict::Outcome;

    const JOINTS: &str = r#"
      "support_joint": {
        "standard": "nds_asd", "count": 1, "lateral_n": 0, "withdrawal_n": 0,
        "fastener": {"kind": "lag_screw", "nominal_diameter_mm": 9.525, "root_diameter_mm": 6.731, "head_diameter_mm": 14.3,
                     "length_mm": 100, "tension_capacity_n": 3000},
        "side": {"material": "softwood", "specific_gravity": 0.42, "thickness_mm": 38, "angle_to_grain_deg": 90},
        "main": {"material": "softwood", "specific_gravity": 0.42, "thickness_mm": 89, "angle_to_grain_deg": 0}},
      "cross_joint": {
        "standard": "nds_asd", "count": 8, "lateral_n": 0, "withdrawal_n": 0,
        "fastener": {"kind": "wood_screw", "nominal_diameter_mm": 4.826, "root_diameter_mm": 3.861, "head_diameter_mm": 9.2,
                     "length_mm": 50},
        "side": {"material": "hardwood", "specific_gravity": 0.6, "thickness_mm": 20, "angle_to_grain_deg": 90},
        "main": {"material": "softwood", "specific_gravity": 0.42, "thickness_mm": 60, "angle_to_grain_deg": 90}}"#;

    fn spec(fixing: &str) -> BeamSpec {
        let ash = include_str!("../../examples/specs/ash_shelf_beam.json");
        let text = ash.replacen('{', &format!("{{\"fixing\": {{{fixing}, {JOINTS}}},"), 1);
        crate::json::read(&text).expect("a spec")
    }

    #[test]
    fn a_ledger_takes_the_place_of_the_cleat() {
        let plan = plan(&spec(r#""place": {"ledger": {"row_up_mm": 60}}, "pull_n": 50"#)).unwrap();
        assert!(plan.cleat.is_none() && plan.lift_on.is_none() && plan.hanging.is_empty());
        let fixing = plan.fixing.expect("a fixing");
        assert_eq!(fixing.supports_mm, [315.0, 915.0, 1515.0]);
        // By hand: the push at an end with the weight, share of the first stud, over the arm of 60 mm, and the whole pull.
        let push = &fixing.cases[2];
        let share = fixing.held.shares.greatest_n;
        let pulled = share * push.out_mm / 60.0 + 50.0;
        assert!((fixing.held.support_withdrawal_n - pulled).abs() < 1e-9 * pulled, "{fixing:?}");
        let most = fixing.cases.iter().filter_map(|case| case.utilisation).fold(0.0, f64::max);
        assert_eq!(Some(most), push.utilisation, "the push governs");
        let of = |subject: &str| plan.checks.iter().filter(|check| check.subject == subject).count();
        assert!(of("frame to its supports") > 1 && of("body to its frame") > 0);
    }

    #[test]
    fn under_a_ceiling_the_cross_screws_carry_all_and_smooth_nails_never_pass() {
        let mut spec = spec(r#""place": {"ceiling": {}}, "supports_mm": [200, 800, 1400]"#);
        let held = plan(&spec).unwrap().fixing.expect("a fixing").held;
        assert!(held.cross_lateral_n >= held.shares.greatest_n);
        let nail = r#"{"kind": "smooth_nail", "nominal_diameter_mm": 4.1, "head_diameter_mm": 8.7, "length_mm": 89}"#;
        spec.fixing.as_mut().unwrap().support_joint.fastener = crate::json::read(nail).expect("a nail");
        let nailed = plan(&spec).unwrap();
        assert!(nailed.findings.iter().any(|one| one.grade == Grade::Stop && one.code == FindingCode::CheckFails));
    }

    #[test]
    fn without_studs_or_joists_it_is_not_determined_and_wrong_joints_are_told_with_their_path() {
        let mut bare = spec(r#""place": {"ledger": {"row_up_mm": 60}}"#);
        bare.site = None;
        let plan_without = plan(&bare).unwrap();
        assert!(plan_without.fixing.is_none());
        let open = plan_without.checks.iter().find(|check| check.subject == "frame").expect("a check");
        assert_eq!(open.outcome, Outcome::NotDetermined);
        let mut wrong = spec(r#""place": {"ledger": {"row_up_mm": 60}}"#);
        wrong.fixing.as_mut().unwrap().cross_joint.side.thickness_mm = -1.0;
        assert!(plan(&wrong).unwrap_err().field().starts_with("fixing.cross_joint"));
        wrong.fixing.as_mut().unwrap().pull_n = f64::NAN;
        assert_eq!(plan(&wrong).unwrap_err().field(), "fixing.pull_n");
    }
}
