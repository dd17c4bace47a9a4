use core::ops::ControlFlow;

use proptest::prelude::*;

use super::*;
use crate::layout::{LayoutEnd, LayoutProof, checker};

fn stock(name: &str, length_mm: f64, width_mm: f64) -> BoardStock {
    BoardStock { name: name.to_owned(), length_mm, width_mm, count: None, price: None, defects: Vec::new() }
}

fn part(name: &str, length_mm: f64, width_mm: f64, count: u32) -> BoardPart {
    BoardPart { name: name.to_owned(), length_mm, width_mm, count, turn: BoardPartTurn::AlongGrain, worth: None }
}

fn input(stock: Vec<BoardStock>, parts: Vec<BoardPart>) -> CutListBoardsInput {
    CutListBoardsInput {
        stock,
        parts,
        groups: Vec::new(),
        aim: LayoutAim::AllParts,
        order: CutOrder::Free,
        stages: None,
        kerf_mm: 3.0,
        trim_end_mm: 0.0,
        trim_edge_mm: 0.0,
        steps_million: 1.0,
    }
}

fn checked(input: &CutListBoardsInput) -> CutListBoards {
    let list = cut_list_boards(input).expect("allowed");
    let wrong = checker::boards(input, &list);
    assert!(wrong.is_empty(), "{wrong:#?}\n{input:?}\n{list:?}");
    list
}

#[test]
fn four_quarters_with_their_kerfs_fill_a_sheet() {
    let list = checked(&input(vec![stock("sheet", 2003.0, 1003.0)], vec![part("quarter", 1000.0, 500.0, 4)]));
    assert_eq!((list.boards.len(), list.boards[0].alike, list.boards[0].cuts.len()), (1, 1, 3));
    assert_eq!(list.quality.proof, LayoutProof::Optimal);
    assert!(list.boards[0].offcuts.is_empty());
    let wider = checked(&input(vec![stock("sheet", 2003.0, 1003.0)], vec![part("quarter", 1000.0, 500.001, 4)]));
    assert_eq!(wider.stock[0].count, 2, "a micrometre more does not fit");
}

#[test]
fn grain_keeps_a_part_from_being_turned() {
    let sheet = || vec![stock("sheet", 1000.0, 600.0)];
    let mut list = input(sheet(), vec![part("door", 600.0, 1000.0, 1)]);
    let refused = cut_list_boards(&list).expect_err("too wide as it lies").to_string();
    assert!(refused.contains("parts[0]") && refused.contains("1000 mm x 600 mm (sheet)"), "{refused}");
    list.parts[0].turn = BoardPartTurn::EitherWay;
    let list = checked(&list);
    assert_eq!(list.boards[0].parts[0].turn, PlacedTurn::Turned);
    assert!(list.boards[0].cuts.is_empty(), "it is the whole sheet");
}

#[test]
fn the_order_of_cuts_is_kept() {
    let parts = || vec![part("a", 700.0, 120.0, 3), part("b", 450.0, 90.0, 4), part("c", 300.0, 150.0, 5)];
    for order in [CutOrder::RipFirst, CutOrder::CrossCutFirst, CutOrder::Free] {
        for stages in [None, Some(2), Some(3)] {
            let list = CutListBoardsInput { order, stages, ..input(vec![stock("board", 1500.0, 400.0)], parts()) };
            let list = checked(&list);
            assert!(list.missing.is_empty(), "{order:?} {stages:?}");
        }
    }
}

#[test]
fn one_stage_takes_full_widths_only() {
    let one = CutListBoardsInput {
        stages: Some(1),
        ..input(
            vec![BoardStock { count: Some(1), ..stock("board", 1000.0, 200.0) }],
            vec![part("a", 300.0, 200.0, 3), part("b", 50.0, 100.0, 1)],
        )
    };
    let list = checked(&one);
    assert_eq!(list.missing, vec![MissingPart { name: "b".to_owned(), count: 1 }], "a narrower part needs a rip too");
}

#[test]
fn a_group_stays_in_line_and_in_order() {
    let member = |name: &str, length_mm, width_mm| GroupPart { name: name.to_owned(), length_mm, width_mm };
    let mut list = input(vec![stock("board", 2440.0, 200.0)], vec![part("block", 150.0, 60.0, 6)]);
    list.groups = vec![
        PartGroup {
            name: "wrap".to_owned(),
            count: 2,
            direction: GroupDirection::AlongGrain,
            loss_mm: Some(5.5),
            parts: vec![member("left", 215.0, 185.0), member("front", 1500.0, 185.0), member("right", 215.0, 180.0)],
        },
        PartGroup {
            name: "pair".to_owned(),
            count: 1,
            direction: GroupDirection::AcrossGrain,
            loss_mm: None,
            parts: vec![member("upper", 300.0, 60.0), member("lower", 300.0, 70.0)],
        },
    ];
    let answer = checked(&list);
    assert!(answer.missing.is_empty());
    let names: Vec<&str> =
        answer.boards[0].parts.iter().filter(|p| p.group.is_some()).map(|p| p.name.as_str()).take(3).collect();
    assert_eq!(names, ["left", "front", "right"]);
    list.groups[0].loss_mm = Some(1.0);
    assert!(cut_list_boards(&list).expect_err("refused").to_string().contains("groups[0].loss_mm"));
}

#[test]
fn parts_lie_around_a_knot() {
    let knot = BoardDefect { from_mm: 900.0, to_mm: 1000.0, near_mm: 80.0, far_mm: 120.0 };
    let board = BoardStock { count: Some(1), defects: vec![knot], ..stock("board", 2000.0, 200.0) };
    // Above and below the knot 80 mm are left, beside it 900 mm and 1000 mm.
    let list = checked(&input(
        vec![board.clone()],
        vec![part("long", 2000.0, 75.0, 1), part("left", 890.0, 117.0, 1), part("right", 990.0, 117.0, 1)],
    ));
    assert!(list.missing.is_empty(), "{list:?}");
    let both = checked(&input(vec![board], vec![part("side", 890.0, 200.0, 2)]));
    assert!(both.missing.is_empty());
}

#[test]
fn the_greatest_worth_is_found_and_proven() {
    let one = BoardStock { count: Some(1), ..stock("sheet", 100.0, 100.0) };
    let mut list =
        input(vec![one], vec![part("large", 60.0, 60.0, 1), part("strip", 100.0, 40.0, 2), part("bit", 40.0, 30.0, 9)]);
    list.kerf_mm = 0.0;
    list.aim = LayoutAim::MostWorth;
    list.parts[0].worth = Some(10.0);
    list.parts[1].worth = Some(6.0);
    list.parts[2].worth = Some(1.0);
    let answer = checked(&list);
    // The large one, a strip and two bits beside it; nothing else reaches 18.
    assert_eq!((answer.quality.value, answer.quality.proof), (18.0, LayoutProof::Optimal));
    list.stock[0].count = None;
    assert!(cut_list_boards(&list).expect_err("refused").to_string().contains("stock[0].count"));
}

#[test]
fn prices_decide_between_boards() {
    let priced = |name: &str, l, w, price| BoardStock { price: Some(price), ..stock(name, l, w) };
    let list = checked(&input(
        vec![priced("small", 1000.0, 200.0, 10.0), priced("large", 2003.0, 200.0, 25.0)],
        vec![part("a", 1000.0, 200.0, 2)],
    ));
    assert_eq!((list.quality.value, list.quality.proof), (20.0, LayoutProof::Optimal));
    let free = checked(&input(vec![priced("on hand", 1000.0, 200.0, 0.0)], vec![part("a", 500.0, 100.0, 3)]));
    assert_eq!(free.quality.value, 0.0);
}

#[test]
fn empty_lists_are_refused_and_part_of_the_faults() {
    let refused = cut_list_boards(&input(vec![], vec![])).expect_err("refused").to_string();
    assert!(refused.contains("one kind of stock") && refused.contains("one part or more"), "{refused}");
    let mut list = input(vec![stock("b", 100.0, 100.0)], vec![part("a", 10.0, 10.0, 1)]);
    list.groups = vec![PartGroup {
        name: "g".into(),
        count: 1,
        direction: GroupDirection::AlongGrain,
        loss_mm: None,
        parts: vec![],
    }];
    list.stock[0].defects = vec![BoardDefect { from_mm: 5.0, to_mm: 1.0, near_mm: 0.0, far_mm: 1.0 }];
    let refused = cut_list_boards(&list).expect_err("refused").to_string();
    assert!(refused.contains("groups[0].parts") && refused.contains("stock[0].defects[0].to_mm"), "{refused}");
}

#[test]
fn a_search_tells_how_far_it_has_come_and_can_be_stopped() {
    let parts =
        (0..40).map(|k| part(&format!("p{k}"), 200.0 + f64::from(k * 37 % 211), 50.0 + f64::from(k * 53 % 97), 2));
    let long =
        CutListBoardsInput { steps_million: 1_000.0, ..input(vec![stock("b", 2440.0, 1220.0)], parts.collect()) };
    let mut calls = 0;
    let list = cut_list_boards_with_progress(&long, &mut |progress| {
        calls += 1;
        assert_eq!(progress.budget, 1_000_000_000);
        ControlFlow::Break(())
    })
    .expect("allowed");
    assert_eq!((calls, list.quality.end), (1, LayoutEnd::Stopped));
    assert!(checker::boards(&long, &list).is_empty());
}

#[test]
fn ten_thousand_parts_are_laid_out() {
    let parts =
        (0..100).map(|k| part(&format!("p{k}"), 150.0 + f64::from(k * 37 % 211), 50.0 + f64::from(k * 53 % 97), 100));
    let list = checked(&input(vec![stock("b", 2440.0, 1220.0)], parts.collect()));
    assert!(list.missing.is_empty());
    assert!(list.quality.gap_pct.expect("whole") < 12.0, "{:?}", list.quality);
}

fn any_list() -> impl Strategy<Value = CutListBoardsInput> {
    let defect = (0.0..1800.0_f64, 0.0..300.0_f64, 0.0..350.0_f64, 0.0..120.0_f64);
    let stock = (800.0..2000.0_f64, 150.0..400.0_f64, prop::option::of(1_u32..5), prop::collection::vec(defect, 0..4));
    let part = (20.0..800.0_f64, 10.0..150.0_f64, 1_u32..5, prop::bool::ANY);
    let member = (20.0..300.0_f64, 10.0..100.0_f64);
    let group = (1_u32..3, prop::bool::ANY, prop::option::of(0.0..4.0_f64), prop::collection::vec(member, 1..4));
    let rules = (
        0..3_usize,
        prop::option::of(1_u32..5),
        0.0..6.0_f64,
        0.0..4.0_f64,
        0.0..4.0_f64,
        prop::bool::ANY,
        prop::bool::ANY,
    );
    (prop::collection::vec(stock, 1..4), prop::collection::vec(part, 0..7), prop::collection::vec(group, 0..3), rules)
        .prop_map(|(stock, parts, groups, (order, stages, kerf_mm, trim_end_mm, trim_edge_mm, priced, flawed))| {
            CutListBoardsInput {
                stock: stock
                    .into_iter()
                    .enumerate()
                    .map(|(k, (length_mm, width_mm, count, defects))| BoardStock {
                        count,
                        price: priced.then_some(length_mm * 0.01 + k as f64),
                        defects: defects
                            .into_iter()
                            .filter(|_| flawed)
                            .map(|(x, w, y, h)| BoardDefect { from_mm: x, to_mm: x + w, near_mm: y, far_mm: y + h })
                            .collect(),
                        ..tests::stock(&format!("s{k}"), length_mm, width_mm)
                    })
                    .collect(),
                parts: parts
                    .into_iter()
                    .enumerate()
                    .map(|(k, (l, w, n, turn))| BoardPart {
                        turn: if turn { BoardPartTurn::EitherWay } else { BoardPartTurn::AlongGrain },
                        ..tests::part(&format!("p{k}"), l, w, n)
                    })
                    .collect(),
                groups: groups
                    .into_iter()
                    .enumerate()
                    .map(|(k, (count, along, beyond, members))| PartGroup {
                        name: format!("g{k}"),
                        count,
                        direction: if along { GroupDirection::AlongGrain } else { GroupDirection::AcrossGrain },
                        loss_mm: beyond.map(|beyond| kerf_mm + beyond),
                        parts: members
                            .into_iter()
                            .enumerate()
                            .map(|(j, (length_mm, width_mm))| GroupPart {
                                name: format!("g{k}m{j}"),
                                length_mm,
                                width_mm,
                            })
                            .collect(),
                    })
                    .collect(),
                aim: LayoutAim::AllParts,
                order: [CutOrder::Free, CutOrder::RipFirst, CutOrder::CrossCutFirst][order],
                stages,
                kerf_mm,
                trim_end_mm,
                trim_edge_mm,
                steps_million: 0.05,
            }
        })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn every_layout_keeps_the_rules(list in any_list()) {
        if let Ok(answer) = cut_list_boards(&list) {
            let wrong = checker::boards(&list, &answer);
            prop_assert!(wrong.is_empty(), "{:#?}\n{:#?}", wrong, answer);
        }
    }

    #[test]
    fn the_greatest_worth_keeps_the_rules(list in any_list()) {
        let mut list = CutListBoardsInput { aim: LayoutAim::MostWorth, ..list };
        for (k, board) in list.stock.iter_mut().enumerate() {
            board.count = Some(1 + k as u32 % 2);
        }
        if let Ok(answer) = cut_list_boards(&list) {
            let wrong = checker::boards(&list, &answer);
            prop_assert!(wrong.is_empty(), "{:#?}\n{:#?}", wrong, answer);
        }
    }

    #[test]
    fn fewer_rules_never_need_more_than_the_bound_says(list in any_list()) {
        let tight = cut_list_boards(&list);
        let loose = cut_list_boards(&CutListBoardsInput { stages: None, order: CutOrder::Free, kerf_mm: 0.5 * list.kerf_mm, ..list });
        if let (Ok(tight), Ok(loose)) = (tight, loose)
            && let (Some(bound), true) = (loose.quality.bound, tight.missing.is_empty())
        {
            prop_assert!(tight.quality.value >= bound - 1e-6, "{:?} {:?}", tight.quality, loose.quality);
        }
    }

    #[test]
    fn any_number_is_taken_or_refused(
        bits in prop::array::uniform9(any::<u64>()),
        sane in prop::collection::vec(prop::bool::weighted(0.8), 9),
    ) {
        let usual = [2000.0, 300.0, 10.0, 400.0, 90.0, 3.2, 5.0, 2.0, 7.0];
        let value = |k: usize| if sane[k] { usual[k] } else { f64::from_bits(bits[k]) };
        let mut list = input(vec![BoardStock { price: Some(value(2)), ..stock("s", value(0), value(1)) }], vec![part("p", value(3), value(4), 4)]);
        list.stock[0].defects = vec![BoardDefect { from_mm: value(3), to_mm: value(0), near_mm: value(7), far_mm: value(4) }];
        list.parts[0].worth = Some(value(8));
        (list.kerf_mm, list.trim_end_mm, list.trim_edge_mm) = (value(5), value(6), value(7));
        list.steps_million = 0.05;
        for aim in [LayoutAim::AllParts, LayoutAim::MostWorth] {
            list.aim = aim;
            list.stock[0].count = Some(2);
            if let Ok(answer) = cut_list_boards(&list) {
                prop_assert!(answer.quality.value.is_finite());
                prop_assert!(checker::boards(&list, &answer).is_empty());
            }
        }
    }
}
