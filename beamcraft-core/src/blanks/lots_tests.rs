use proptest::prelude::*;

use super::*;
use crate::layout::{BoardStock, CutListBoardsInput, CutOrder, LayoutAim, cut_list_boards};

fn ash() -> BeamSpec {
    crate::json::read(include_str!("../../examples/specs/ash_shelf_beam.json")).expect("the spec of the guide")
}

fn walnut() -> BeamSpec {
    crate::json::read(include_str!("../../examples/specs/walnut_beam.json")).expect("the second spec")
}

fn input(beams: Vec<BatchBeam>) -> PlanBlanksInput {
    PlanBlanksInput {
        beams,
        widest_board_mm: 250.0,
        length_allowance_mm: 25.0,
        width_allowance_mm: 6.0,
        joint_allowance_mm: 1.5,
        priority: BlankPriority::MatchedGrain,
    }
}

fn batch(count: u32) -> PlanBlanksInput {
    input(vec![BatchBeam { spec: ash(), count }])
}

/// Panels that the blanks hold, with their numbers.
fn held(blanks: &PlanBlanks) -> u32 {
    let lots = blanks.lots.iter().filter(|lot| lot.blank_use == BlankUse::Panels);
    let single = |lot: &BlankLot| {
        lot.parts.iter().filter(|part| !part.name.contains(" with ")).map(|part| part.count).sum::<u32>()
    };
    let pairs = |lot: &BlankLot| {
        lot.parts.iter().filter(|part| part.name.contains(" with ")).map(|part| 2 * part.count).sum::<u32>()
    };
    let grouped = |lot: &BlankLot| lot.groups.iter().map(|group| group.count * group.parts.len() as u32).sum::<u32>();
    lots.map(|lot| single(lot) + pairs(lot) + grouped(lot)).sum()
}

#[test]
fn every_panel_is_in_one_blank() {
    for priority in [BlankPriority::MatchedGrain, BlankPriority::Width, BlankPriority::Yield] {
        for count in [1, 3] {
            let blanks = plan_blanks(&PlanBlanksInput { priority, ..batch(count) }).expect("allowed");
            assert_eq!(held(&blanks), 5 * count, "{priority:?}");
        }
    }
}

#[test]
fn front_and_returns_lie_in_line_with_the_loss_of_their_corner() {
    let blanks = plan_blanks(&batch(1)).expect("allowed");
    let group = &blanks.lots[0].groups[0];
    let names: Vec<&str> = group.parts.iter().map(|part| part.name.as_str()).collect();
    assert_eq!(names, ["left_end", "front", "right_end"]);
    // 1830 mm between long points, no allowance inside the run; 45 degrees cost the kerf times root two.
    assert_eq!(group.parts[1].length_mm, 1830.0);
    let kerf = ash().saw.kerf_mm;
    assert!((group.loss_mm.expect("a loss") - kerf * 2.0_f64.sqrt()).abs() < 1e-9);
    assert!(
        plan_blanks(&PlanBlanksInput { priority: BlankPriority::Yield, ..batch(1) })
            .expect("allowed")
            .lots
            .iter()
            .all(|lot| lot.groups.is_empty())
    );
}

#[test]
fn a_narrow_board_makes_staves() {
    let narrow = PlanBlanksInput { widest_board_mm: 100.0, ..batch(1) };
    let blanks = plan_blanks(&narrow).expect("allowed");
    // 185 + 6 = 191 mm: two staves that lose 3 mm at their seam.
    let run = blanks.glued.iter().find(|glued| glued.name.contains("front")).expect("glued up");
    assert_eq!((run.staves, run.stave_width_mm, run.seams_mm.as_slice()), (2, 97.0, [95.5].as_slice()));
    for glued in &blanks.glued {
        assert!(glued.stave_width_mm <= 100.0 && glued.seams_mm.len() + 1 == glued.staves as usize);
    }
    let width = plan_blanks(&PlanBlanksInput { priority: BlankPriority::Width, ..narrow }).expect("allowed");
    assert!(width.lots.iter().all(|lot| lot.groups.is_empty()), "whole boards come first");
}

#[test]
fn top_and_bottom_share_a_bevel_where_a_board_is_wide_enough() {
    let none = plan_blanks(&batch(1)).expect("allowed");
    assert!(none.nested.is_empty(), "250 mm are too narrow");
    let blanks = plan_blanks(&PlanBlanksInput { widest_board_mm: 600.0, ..batch(1) }).expect("allowed");
    let pair = blanks.nested.first().expect("a pair");
    let (spec, t) = (ash(), 20.0);
    // At 45 degrees: the thickness is saved, less what the slanted kerf costs, and one allowance.
    let saved = t - spec.saw.kerf_mm * (2.0_f64.sqrt() - 1.0) + 6.0;
    assert!((pair.saves_mm - saved).abs() < 1e-9, "{pair:?}");
    let names = ["left_end", "right_end", "front"];
    assert!(!names.contains(&pair.up.as_str()) && !names.contains(&pair.down.as_str()), "never a member of a group");
}

#[test]
fn a_batch_of_two_kinds_is_named_and_can_be_laid_out() {
    let two = input(vec![BatchBeam { spec: ash(), count: 2 }, BatchBeam { spec: walnut(), count: 1 }]);
    let two = PlanBlanksInput { widest_board_mm: 300.0, ..two };
    let blanks = plan_blanks(&two).expect("allowed");
    assert!(blanks.lots.iter().flat_map(|lot| &lot.parts).all(|part| part.name.starts_with("beam ")));
    for lot in blanks.lots {
        let stock = BoardStock {
            name: "board".to_owned(),
            length_mm: 4_000.0,
            width_mm: 320.0,
            count: None,
            price: None,
            defects: Vec::new(),
        };
        let list = cut_list_boards(&CutListBoardsInput {
            stock: vec![stock],
            parts: lot.parts,
            groups: lot.groups,
            aim: LayoutAim::AllParts,
            order: CutOrder::CrossCutFirst,
            stages: Some(3),
            kerf_mm: 3.2,
            trim_end_mm: 20.0,
            trim_edge_mm: 3.0,
            steps_million: 0.2,
        })
        .expect("allowed");
        assert!(list.missing.is_empty());
    }
}

#[test]
fn contradictions_are_refused() {
    let mut wrong = batch(0);
    wrong.joint_allowance_mm = 130.0;
    let refused = plan_blanks(&wrong).expect_err("refused").to_string();
    assert!(refused.contains("beams[0].count") && refused.contains("joint_allowance_mm"), "{refused}");
    assert!(plan_blanks(&input(vec![])).expect_err("refused").to_string().contains("one beam or more"));
    let mut spec = ash();
    spec.wood.species = "no such tree".to_owned();
    let refused = plan_blanks(&input(vec![BatchBeam { spec, count: 1 }])).expect_err("refused").to_string();
    assert!(refused.contains("beams[0].spec."), "{refused}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(12))]

    #[test]
    fn any_number_is_taken_or_refused(bits in prop::array::uniform4(any::<u64>()), sane in prop::array::uniform4(any::<bool>())) {
        let usual = [120.0, 25.0, 6.0, 1.5];
        let value = |k: usize| if sane[k] { usual[k] } else { f64::from_bits(bits[k]) };
        let any = PlanBlanksInput {
            widest_board_mm: value(0),
            length_allowance_mm: value(1),
            width_allowance_mm: value(2),
            joint_allowance_mm: value(3),
            ..batch(1)
        };
        if let Ok(blanks) = plan_blanks(&any) {
            for part in blanks.lots.iter().flat_map(|lot| &lot.parts) {
                prop_assert!(part.length_mm.is_finite() && part.width_mm > 0.0);
            }
            for glued in &blanks.glued {
                prop_assert!(glued.stave_width_mm <= any.widest_board_mm + 1e-6, "{:?}", glued);
            }
        }
    }
}
