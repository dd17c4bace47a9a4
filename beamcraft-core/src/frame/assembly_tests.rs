use proptest::prelude::*;

use super::*;
use crate::statics::test_inputs::hostile;

fn seam(first: &str, second: &str, length_mm: f64) -> AssemblySeam {
    AssemblySeam { first: first.to_owned(), second: second.to_owned(), length_mm, joint: SeamJoint::Mitred }
}

fn beam() -> AssemblyOrderInput {
    let ends = ["left", "right"];
    let mut seams = vec![seam("front", "top", 1830.0), seam("front", "bottom", 1830.0)];
    for end in ends {
        seams.extend([seam("front", end, 185.0), seam("top", end, 215.0), seam("bottom", end, 215.0)]);
    }
    AssemblyOrderInput {
        panels: ["front", "top", "bottom", "left", "right"].map(str::to_owned).to_vec(),
        seams,
        frame_piece_count: 5,
        block_count: 16,
        pace: GluePace { open_time_min: Some(10.0), ..GluePace::default() },
        last: None,
    }
}

fn works(order: &AssemblyOrder) -> Vec<AssemblyWork> {
    order.steps.iter().map(|step| step.work).collect()
}

#[test]
fn a_beam_folds_round_its_front_and_is_closed_by_its_ends() {
    use AssemblyWork::{ClampOverCauls, CompareDiagonals, DryFit, FoldOnTape, SetBlocks, SetFrame};
    let order = assembly_order(&beam()).unwrap();
    assert_eq!(
        works(&order),
        [DryFit, FoldOnTape, CompareDiagonals, SetFrame, SetBlocks, ClampOverCauls, CompareDiagonals]
    );
    assert_eq!(order.steps[1].panels, ["front", "top", "bottom"]);
    // Two long seams at 1 m a minute and two panels at two minutes; then 2 × 615 mm.
    assert!((order.steps[1].minutes - (3.66 + 4.0)).abs() < 1e-12);
    assert!((order.steps[5].minutes - (1.23 + 4.0)).abs() < 1e-12);
    assert_eq!((order.last.as_str(), order.glue_up_count), ("right", 2));
    assert!(order.findings.is_empty());
}

#[test]
fn a_quick_glue_splits_the_work_and_one_too_quick_is_found() {
    let pace = |minutes| GluePace { open_time_min: Some(minutes), ..GluePace::default() };
    let order = assembly_order(&AssemblyOrderInput { pace: pace(5.0), ..beam() }).unwrap();
    assert_eq!((order.glue_up_count, order.findings.len()), (4, 0));
    let order = assembly_order(&AssemblyOrderInput { pace: pace(3.0), ..beam() }).unwrap();
    let subjects: Vec<_> = order.findings.iter().map(|one| (one.code, one.subject.as_str())).collect();
    assert_eq!(subjects, [(FindingCode::GlueSetsTooSoon, "front, top"), (FindingCode::GlueSetsTooSoon, "bottom")]);
}

#[test]
fn butted_panels_are_clamped_and_a_given_last_panel_is_last() {
    let mut input = beam();
    input.seams[0].joint = SeamJoint::Butted;
    assert_eq!(works(&assembly_order(&input).unwrap())[1], AssemblyWork::ClampOverCauls);
    let order = assembly_order(&AssemblyOrderInput { last: Some("bottom".to_owned()), ..beam() }).unwrap();
    assert_eq!(order.last, "bottom");
}

#[test]
fn what_does_not_hold_together_is_refused_by_path() {
    let fault = |input: &AssemblyOrderInput| {
        let error = assembly_order(input).expect_err("must be refused");
        (error.code(), error.field().to_owned())
    };
    let mut input = beam();
    input.seams[3].second = "lid".to_owned();
    assert_eq!(fault(&input), (ErrorCode::UnknownName, "seams[3].second".to_owned()));
    let mut input = beam();
    input.panels.push("top".to_owned());
    assert_eq!(fault(&input), (ErrorCode::DuplicateField, "panels[5]".to_owned()));
    let mut input = beam();
    input.panels.push("shelf".to_owned());
    assert_eq!(fault(&input), (ErrorCode::Inconsistent, "seams".to_owned()));
    // Without the front nothing holds top and bottom but the ends: they do, so it is possible.
    assert!(assembly_order(&AssemblyOrderInput { last: Some("front".to_owned()), ..beam() }).is_ok());
}

proptest! {
    #[test]
    fn every_panel_is_glued_once_and_to_something_that_is_there(
        lengths in proptest::collection::vec(1.0..3000.0_f64, 10), open in 1.0..40.0_f64, joints in proptest::collection::vec(0..2, 10),
    ) {
        let names = ["a", "b", "c", "d", "e"];
        let pairs = (0..5).flat_map(|a| (a + 1..5).map(move |b| (a, b)));
        let seams = pairs.zip(lengths.iter().zip(&joints)).map(|((a, b), (length, joint))| AssemblySeam {
            joint: if *joint == 0 { SeamJoint::Mitred } else { SeamJoint::Butted }, ..seam(names[a], names[b], *length)
        });
        let pace = GluePace { open_time_min: Some(open), ..GluePace::default() };
        let input = AssemblyOrderInput { panels: names.map(str::to_owned).to_vec(), seams: seams.collect(), pace, ..beam() };
        let order = assembly_order(&input).unwrap();
        let glued = |step: &&AssemblyStep| matches!(step.work, AssemblyWork::FoldOnTape | AssemblyWork::ClampOverCauls);
        let mut panels: Vec<String> = order.steps.iter().filter(glued).flat_map(|step| step.panels.clone()).collect();
        panels.sort();
        prop_assert_eq!(panels, names.map(str::to_owned).to_vec());
        let total: f64 = order.steps.iter().filter(glued).map(|step| step.seam_length_mm).sum();
        prop_assert!((total - lengths.iter().sum::<f64>()).abs() < 1e-6);
        for step in order.steps.iter().filter(glued) {
            prop_assert!(step.minutes <= open || order.findings.iter().any(|one| one.subject == step.panels.join(", ")));
        }
    }

    #[test]
    fn hostile_numbers_are_refused_or_give_minutes(a in hostile(), b in hostile(), c in hostile(), d in hostile()) {
        let pace = GluePace { open_time_min: Some(a), spreading_mm_per_min: b, closing_min: c };
        let input = AssemblyOrderInput { panels: vec!["a".to_owned(), "b".to_owned()], seams: vec![seam("a", "b", d)], pace, ..beam() };
        if let Ok(order) = assembly_order(&input) {
            prop_assert!(order.steps.iter().all(|step| step.minutes.is_finite()));
        }
    }
}
